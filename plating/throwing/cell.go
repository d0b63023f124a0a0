package throwing

import (
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A HaringBlumCell is the trough of a test of throwing power: two equal cathodes at the ends of a trough and
// one anode between them that the current passes on both sides.
type HaringBlumCell struct {
	Near, Far units.Length // from the anode to the cathodes, 0 < Near < Far
}

// Ratio returns the ratio of distances, which is that of the currents without
// polarisation.
//
//	K = P = L2/L1
//
//	L1  c.Near  > 0 [m]
//	L2  c.Far   > L1 [m]
//
// Errors: a [*units.ValueError] for a distance out of range.
//
// Source: [ThrowingZinc1952].
func (c HaringBlumCell) Ratio() (units.Ratio, error) {
	if err := units.Positive("distance to the near cathode", c.Near); err != nil {
		return 0, err
	}
	if err := units.Positive("distance to the far cathode", c.Far); err != nil {
		return 0, err
	}
	if !(c.Far > c.Near) {
		return 0, &units.ValueError{Field: "distance to the far cathode", Value: c.Far.String(),
			Need: "more than to the near one, " + c.Near.String(), Err: units.ErrInconsistent}
	}
	p, err := finite("distance ratio", units.Ratio(float64(c.Far)/float64(c.Near)))
	if err != nil {
		return 0, err
	}
	return p, checkCell(p)
}

// Wagner returns the Wagner number of the cell, by the distance to its near
// cathode: the one that [LinearRatio] and [TafelRatio] take.
//
//	Wa = κ·r/L1
//
//	κ   conductivity  of the bath, > 0 [S/m]
//	r   slope         dη/dj of the polarisation; for Tafel kinetics b/j1, with the
//	                  slope b in volts for a factor e and the near current density [Ω·m²]
//	L1  c.Near        > 0 [m]
//
// Errors: those of [faraday.WagnerNumber] and [HaringBlumCell.Ratio].
//
// Source: [IUPACGoldBook], current distribution (C01456).
func (c HaringBlumCell) Wagner(conductivity units.Conductivity, slope units.AreaResistance) (units.Ratio, error) {
	if _, err := c.Ratio(); err != nil {
		return 0, err
	}
	return faraday.WagnerNumber(conductivity, slope, c.Near)
}

// LinearRatio returns the ratio of current densities, near over far, of two
// cathodes with linear polarisation.
//
//	M = (P + Wa)/(1 + Wa)
//
//	P   primary  ratio without polarisation, far over near distance, > 1
//	Wa  wagner   κ r/L1, by the near distance, ≥ 0
//
// P at Wa = 0, towards 1 for a large Wa. Each cathode has the solution between it
// and the anode to itself; anode polarisation is left out.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived]: both paths have the same voltage,
// j1 (L1/κ + r) = j2 (L2/κ + r).
func LinearRatio(primary, wagner units.Ratio) (units.Ratio, error) {
	if err := checkPrimary(primary); err != nil {
		return 0, err
	}
	if err := units.NonNegative("Wagner number", wagner); err != nil {
		return 0, err
	}
	return 1 + (primary-1)/(1+wagner), nil
}

// LinearWagner returns the Wagner number that a measured ratio of current
// densities stands for: the inverse of [LinearRatio].
//
//	Wa = (P - M)/(M - 1)
//
//	P  primary  > 1
//	M  ratio    near over far, 1 < M ≤ P
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived], as for [LinearRatio].
func LinearWagner(primary, ratio units.Ratio) (units.Ratio, error) {
	if err := checkMeasured(primary, ratio); err != nil {
		return 0, err
	}
	return finite("Wagner number", (primary-ratio)/(ratio-1))
}

// TafelRatio returns the ratio of current densities, near over far, of two
// cathodes with Tafel polarisation: the root M of
//
//	P/M - 1 = ξ ln M
//
//	P  primary  ratio without polarisation, far over near distance, > 1
//	ξ  wagner   κ b/(j1 L1), b in volts for a factor e, j1 and L1 of the near
//	            cathode, ≥ 0
//
// Unlike linear polarisation it depends on the current: the more, the less even.
// The root is found to a few parts in 1e16.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived]: both paths have the same voltage,
// j1 L1/κ + b ln j1 = j2 L2/κ + b ln j2.
func TafelRatio(primary, wagner units.Ratio) (units.Ratio, error) {
	if err := checkPrimary(primary); err != nil {
		return 0, err
	}
	if err := units.NonNegative("Wagner number", wagner); err != nil {
		return 0, err
	}
	p, xi := float64(primary), float64(wagner)
	// f(u) = P e^-u - 1 - ξ u falls and is convex in u = ln M, so that Newton
	// from u = 0, where f > 0, rises to the root without passing it.
	u := 0.0
	for range 200 {
		e := p * math.Exp(-u)
		next := u + (e-1-xi*u)/(e+xi)
		if !(next > u) {
			break
		}
		u = next
	}
	return units.Ratio(min(max(math.Exp(u), 1), p)), nil
}

// TafelWagner returns the Wagner number that a measured ratio of current
// densities stands for: the inverse of [TafelRatio].
//
//	ξ = (P/M - 1)/ln M
//
//	P  primary  > 1
//	M  ratio    near over far, 1 < M ≤ P
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived], as for [TafelRatio].
func TafelWagner(primary, ratio units.Ratio) (units.Ratio, error) {
	if err := checkMeasured(primary, ratio); err != nil {
		return 0, err
	}
	return finite("Wagner number", (primary-ratio)/ratio/units.Ratio(math.Log(float64(ratio))))
}

// MetalRatio returns the ratio of deposited masses for a ratio of current
// densities: the two differ when the current efficiency does.
//
//	M = J η1/η2
//
//	J   current    current densities, near over far, > 0
//	η1  near, η2 far  current efficiency at each, 0 < η ≤ 1
//
// A bath whose efficiency falls with current density throws better than its
// currents say; hexavalent chromium, whose efficiency rises, much worse.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func MetalRatio(current units.Ratio, near, far units.Efficiency) (units.Ratio, error) {
	if err := units.Positive("ratio of current densities", current); err != nil {
		return 0, err
	}
	if err := units.PositiveFraction("efficiency at the near cathode", near); err != nil {
		return 0, err
	}
	if err := units.PositiveFraction("efficiency at the far cathode", far); err != nil {
		return 0, err
	}
	return positive("metal ratio", current*units.Ratio(float64(near)/float64(far)))
}

func checkPrimary(p units.Ratio) error {
	if err := units.Positive("primary ratio", p); err != nil {
		return err
	}
	if !(p > 1) {
		return &units.ValueError{Field: "primary ratio", Value: p.String(), Need: "near over far, above 1",
			Err: units.ErrOutOfRange}
	}
	return nil
}

func checkMeasured(p, m units.Ratio) error {
	if err := checkPrimary(p); err != nil {
		return err
	}
	if err := units.Positive("ratio of current densities", m); err != nil {
		return err
	}
	if !(m > 1 && m <= p) {
		return &units.ValueError{Field: "ratio of current densities", Value: m.String(),
			Need: "above 1 and at most the primary ratio, " + p.String(), Err: units.ErrOutOfRange}
	}
	return nil
}
