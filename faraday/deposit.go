package faraday

import "example.com/laydown/units"

// A Deposit is what a bath lays down: the mass that a unit of charge brings,
// and the density that the mass has once it is there. Both belong to the bath;
// a bright hardened gold is lighter than bulk gold by a tenth.
type Deposit struct {
	Equivalent units.Equivalent // > 0
	Density    units.Density    // > 0, of the deposit and not of the bulk metal
}

// NewDeposit returns the deposit of a pure element with its bulk density. Pass
// valence 0 for the element's usual one.
//
//	ε = M / (n·F)
//
// Errors: an [*ElementError] for an unknown symbol; a [*units.ValueError] when
// the element has no usual valence or no density here.
//
// Source: [IUPAC2021], [CRC95].
func NewDeposit(symbol string, valence int) (Deposit, error) {
	e, err := Lookup(symbol)
	if err != nil {
		return Deposit{}, err
	}
	if valence == 0 {
		if valence = e.UsualValence(); valence == 0 {
			return Deposit{}, &units.ValueError{Field: "valence of " + symbol, Value: "not given",
				Need: "a valence, since this library has no usual one for it", Err: units.ErrOutOfRange}
		}
	}
	if err := e.CheckValence(valence); err != nil {
		return Deposit{}, err
	}
	eq, err := NewEquivalent(e.Weight.Value, valence)
	if err != nil {
		return Deposit{}, err
	}
	if e.Density == 0 {
		return Deposit{}, &units.ValueError{Field: "density of " + symbol, Value: "not given",
			Need: "a density, since this library has none for it", Err: units.ErrOutOfRange}
	}
	return Deposit{Equivalent: eq, Density: e.Density}, nil
}

// Check returns a [*units.ValueError] unless equivalent and density are above zero.
func (d Deposit) Check() error {
	if err := units.Positive("electrochemical equivalent", d.Equivalent); err != nil {
		return err
	}
	return units.Positive("density of the deposit", d.Density)
}

// Growth returns how fast the coat grows where a current density stands.
//
//	v = ε·η·j/ρ
//
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//	j  j             current density, ≥ 0 [A/m²]
//	ρ  d.Density     [kg/m³]
//
// It is the local speed at the local current density; with the mean current
// density of a part it is the mean speed.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) Growth(j units.CurrentDensity, eff units.Efficiency) (units.Speed, error) {
	if err := d.checkWith(eff); err != nil {
		return 0, err
	}
	if err := units.NonNegative("current density", j); err != nil {
		return 0, err
	}
	return finite("growth", units.Speed(float64(d.Equivalent)*float64(eff)*float64(j)/float64(d.Density)))
}

// Thickness returns the thickness after a time at a current density.
//
//	s = ε·η·j·t/ρ
//
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//	j  j             current density, ≥ 0 [A/m²]
//	t  t             time, ≥ 0 [s]
//	ρ  d.Density     [kg/m³]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) Thickness(j units.CurrentDensity, t units.Duration, eff units.Efficiency) (units.Length, error) {
	v, err := d.Growth(j, eff)
	if err != nil {
		return 0, err
	}
	if err := units.NonNegative("time", t); err != nil {
		return 0, err
	}
	return finite("thickness", v.For(t))
}

// TimeFor returns how long a thickness takes at a current density.
//
//	t = ρ·s/(ε·η·j)
//
//	ρ  d.Density     [kg/m³]
//	s  s             thickness, ≥ 0 [m]
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//	j  j             current density, > 0 [A/m²]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) TimeFor(s units.Length, j units.CurrentDensity, eff units.Efficiency) (units.Duration, error) {
	if err := d.checkWith(eff); err != nil {
		return 0, err
	}
	if err := units.NonNegative("thickness", s); err != nil {
		return 0, err
	}
	if err := units.Positive("current density", j); err != nil {
		return 0, err
	}
	return finite("time", units.Duration(float64(d.Density)*float64(s)/(float64(d.Equivalent)*float64(eff)*float64(j))))
}

// CurrentDensityFor returns the current density that builds a thickness in a
// given time.
//
//	j = ρ·s/(ε·η·t)
//
//	ρ  d.Density     [kg/m³]
//	s  s             thickness, ≥ 0 [m]
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//	t  t             time, > 0 [s]
//
// Whether the bath can be run at it is another question.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) CurrentDensityFor(s units.Length, t units.Duration, eff units.Efficiency) (units.CurrentDensity,
	error) {
	if err := d.checkWith(eff); err != nil {
		return 0, err
	}
	if err := units.NonNegative("thickness", s); err != nil {
		return 0, err
	}
	if err := units.Positive("time", t); err != nil {
		return 0, err
	}
	return finite("current density",
		units.CurrentDensity(float64(d.Density)*float64(s)/(float64(d.Equivalent)*float64(eff)*float64(t))))
}

// AreaFor returns the area that a charge covers to a thickness.
//
//	A = ε·η·Q/(ρ·s)
//
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//	Q  q             charge, ≥ 0 [C]
//	ρ  d.Density     [kg/m³]
//	s  s             average thickness, > 0 [m]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (exercise with unknown area).
func (d Deposit) AreaFor(q units.Charge, s units.Length, eff units.Efficiency) (units.Area, error) {
	m, err := MassOfCharge(d.Equivalent, q, eff)
	if err != nil {
		return 0, err
	}
	if err := units.Positive("density of the deposit", d.Density); err != nil {
		return 0, err
	}
	if err := units.Positive("thickness", s); err != nil {
		return 0, err
	}
	return finite("area", units.Area(float64(m)/(float64(d.Density)*float64(s))))
}

// ChargeFor returns the charge that covers an area to a thickness.
//
//	Q = ρ·s·A/(ε·η)
//
//	ρ  d.Density     [kg/m³]
//	s  s             average thickness, ≥ 0 [m]
//	A  a             area, ≥ 0 [m²]
//	ε  d.Equivalent  [kg/C]
//	η  eff           current efficiency, 0 < η ≤ 1
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) ChargeFor(s units.Length, a units.Area, eff units.Efficiency) (units.Charge, error) {
	m, err := d.MassFor(s, a)
	if err != nil {
		return 0, err
	}
	return Charge(d.Equivalent, m, eff)
}

// MassFor returns the mass of a coat.
//
//	m = ρ·s·A
//
//	ρ  d.Density  [kg/m³]
//	s  s          average thickness, ≥ 0 [m]
//	A  a          area, ≥ 0 [m²]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func (d Deposit) MassFor(s units.Length, a units.Area) (units.Mass, error) {
	if err := units.Positive("density of the deposit", d.Density); err != nil {
		return 0, err
	}
	if err := units.NonNegative("thickness", s); err != nil {
		return 0, err
	}
	if err := units.NonNegative("area", a); err != nil {
		return 0, err
	}
	return finite("mass", d.Density.Of(s.Over(a)))
}

// ThicknessOf returns the average thickness of a weighed coat.
//
//	s = m/(ρ·A)
//
//	m  m          mass of the coat, ≥ 0 [kg]
//	ρ  d.Density  [kg/m³]
//	A  a          area, > 0 [m²]
//
// Weighing gives the mean. The thinnest spot may have half of it.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func (d Deposit) ThicknessOf(m units.Mass, a units.Area) (units.Length, error) {
	if err := units.Positive("density of the deposit", d.Density); err != nil {
		return 0, err
	}
	if err := units.NonNegative("mass", m); err != nil {
		return 0, err
	}
	if err := units.Positive("area", a); err != nil {
		return 0, err
	}
	return finite("thickness", units.Length(float64(m)/(float64(d.Density)*float64(a))))
}

func (d Deposit) checkWith(eff units.Efficiency) error {
	if err := d.Check(); err != nil {
		return err
	}
	return units.PositiveFraction("current efficiency", eff)
}
