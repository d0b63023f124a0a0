package faraday

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// NewEquivalent returns the electrochemical equivalent of a metal.
//
//	ε = M / (n·F)
//
//	M  molar      molar mass, > 0 [kg/mol]
//	n  electrons  taken up by one atom, 1 to 8
//	F             Faraday constant, 96485.33212… C/mol (exact)
//
// As exact as the molar mass: gold 2e-8, silver 2e-6, nickel 7e-6, zinc 3e-4,
// lead 5e-3 (relative). The valence belongs to the bath, not to the metal: see
// [Element.Valences].
//
// Errors: a [*units.ValueError] for a molar mass or valence out of range.
//
// Source: [SI2019], [OpenStaxChem2e] section 17.7.
func NewEquivalent(molar units.MolarMass, electrons int) (units.Equivalent, error) {
	if err := units.Positive("molar mass", molar); err != nil {
		return 0, err
	}
	if electrons < 1 || electrons > 8 {
		return 0, &units.ValueError{Field: "valence", Value: fmt.Sprint(electrons),
			Need: "a whole number of electrons from 1 to 8", Err: units.ErrOutOfRange}
	}
	return units.Equivalent(float64(molar) / (float64(electrons) * FaradayConstant)), nil
}

// Mass returns the mass that a steady current deposits.
//
//	m = ε·η·I·t
//
//	ε  eq   electrochemical equivalent, > 0 [kg/C]
//	η  eff  current efficiency, 0 < η ≤ 1
//	I  i    current, ≥ 0 [A]
//	t  t    time, ≥ 0 [s]
//
// Faraday's law has no range: what limits the result is the efficiency, which
// has to be measured or taken from a published band.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func Mass(eq units.Equivalent, i units.Current, t units.Duration, eff units.Efficiency) (units.Mass, error) {
	if err := units.NonNegative("current", i); err != nil {
		return 0, err
	}
	if err := units.NonNegative("time", t); err != nil {
		return 0, err
	}
	return MassOfCharge(eq, i.For(t), eff)
}

// MassOfCharge returns the mass that a charge deposits, however it came.
//
//	m = ε·η·Q
//
//	ε  eq   electrochemical equivalent, > 0 [kg/C]
//	η  eff  current efficiency, 0 < η ≤ 1
//	Q  q    charge, ≥ 0 [C]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func MassOfCharge(eq units.Equivalent, q units.Charge, eff units.Efficiency) (units.Mass, error) {
	if err := checkLaw(eq, eff); err != nil {
		return 0, err
	}
	if err := units.NonNegative("charge", q); err != nil {
		return 0, err
	}
	return finite("mass", units.Mass(float64(eq)*float64(eff)*float64(q)))
}

// Charge returns the charge that deposits a mass.
//
//	Q = m / (ε·η)
//
//	m  m    mass of the deposit, ≥ 0 [kg]
//	ε  eq   electrochemical equivalent, > 0 [kg/C]
//	η  eff  current efficiency, 0 < η ≤ 1
//
// The efficiency divides here and multiplies in [Mass]: a poorer bath needs
// more charge for the same metal.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func Charge(eq units.Equivalent, m units.Mass, eff units.Efficiency) (units.Charge, error) {
	if err := checkLaw(eq, eff); err != nil {
		return 0, err
	}
	if err := units.NonNegative("mass", m); err != nil {
		return 0, err
	}
	return finite("charge", units.Charge(float64(m)/(float64(eq)*float64(eff))))
}

// Time returns how long a current takes to deposit a mass.
//
//	t = m / (ε·η·I)
//
//	m  m    mass of the deposit, ≥ 0 [kg]
//	ε  eq   electrochemical equivalent, > 0 [kg/C]
//	η  eff  current efficiency, 0 < η ≤ 1
//	I  i    current, > 0 [A]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func Time(eq units.Equivalent, m units.Mass, i units.Current, eff units.Efficiency) (units.Duration, error) {
	q, err := Charge(eq, m, eff)
	if err != nil {
		return 0, err
	}
	return q.At(i)
}

// Current returns the steady current that deposits a mass in a given time.
//
//	I = m / (ε·η·t)
//
//	m  m    mass of the deposit, ≥ 0 [kg]
//	ε  eq   electrochemical equivalent, > 0 [kg/C]
//	η  eff  current efficiency, 0 < η ≤ 1
//	t  t    time, > 0 [s]
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func Current(eq units.Equivalent, m units.Mass, t units.Duration, eff units.Efficiency) (units.Current, error) {
	q, err := Charge(eq, m, eff)
	if err != nil {
		return 0, err
	}
	return q.PerTime(t)
}

// Efficiency returns the share of a charge that deposited a weighed mass.
//
//	η = m / (ε·Q)
//
//	m  m   mass gained by the trial piece, ≥ 0 [kg]
//	ε  eq  electrochemical equivalent, > 0 [kg/C]
//	Q  q   charge that passed, > 0 [C]
//
// A result over 1 cannot be: the piece was wet, the ampere-minutes were read
// wrong, metal came without current, or the valence is another one. Then the
// value is returned with a [*units.RangeError].
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func Efficiency(eq units.Equivalent, m units.Mass, q units.Charge) (units.Efficiency, error) {
	if err := units.Positive("electrochemical equivalent", eq); err != nil {
		return 0, err
	}
	if err := units.NonNegative("mass", m); err != nil {
		return 0, err
	}
	if err := units.Positive("charge", q); err != nil {
		return 0, err
	}
	eff, err := finite("current efficiency", units.Efficiency(float64(m)/(float64(eq)*float64(q))))
	if err != nil {
		return 0, err
	}
	if eff > 1 {
		return eff, &units.RangeError{Field: "current efficiency", Value: eff.String(), Low: "0 %", High: "100 %",
			Source: "OpenStaxChem2e"}
	}
	return eff, nil
}

// A ValenceResult tells which valence a weighed deposit speaks for.
type ValenceResult struct {
	Exact   float64 // electrons per atom from the numbers given
	Nearest int     // the whole number next to it
	Off     float64 // (Exact - Nearest)/Nearest: how far the numbers miss it
}

// Valence returns the number of electrons per atom from a weighed deposit.
//
//	n = η·Q·M / (F·m)
//
//	η  eff    current efficiency, 0 < η ≤ 1
//	Q  q      charge that passed, > 0 [C]
//	M  molar  molar mass of the metal, > 0 [kg/mol]
//	F         Faraday constant [C/mol]
//	m  m      mass deposited, > 0 [kg]
//
// Look at Off before you believe Nearest: an efficiency of 95 % taken for
// 100 % makes it 0.05, half-way between two valences makes it useless.
//
// Errors: a [*units.ValueError] for an argument out of range; with the exact
// figure, a [*units.RangeError] when the nearest whole number is not 1 to 8.
//
// Source: [OpenStaxChem2e] section 17.7.
func Valence(molar units.MolarMass, m units.Mass, q units.Charge, eff units.Efficiency) (ValenceResult, error) {
	if err := units.Positive("molar mass", molar); err != nil {
		return ValenceResult{}, err
	}
	if err := units.Positive("mass", m); err != nil {
		return ValenceResult{}, err
	}
	if err := units.Positive("charge", q); err != nil {
		return ValenceResult{}, err
	}
	if err := units.PositiveFraction("current efficiency", eff); err != nil {
		return ValenceResult{}, err
	}
	n, err := finite("valence", units.Ratio(float64(eff)*float64(q)*float64(molar)/(FaradayConstant*float64(m))))
	if err != nil {
		return ValenceResult{}, err
	}
	r := ValenceResult{Exact: float64(n)}
	nearest := math.Round(r.Exact)
	if nearest < 1 || nearest > 8 {
		return r, &units.RangeError{Field: "valence", Value: fmt.Sprintf("%.4g", r.Exact), Low: "1", High: "8",
			Source: "OpenStaxChem2e"}
	}
	r.Nearest = int(nearest)
	r.Off = (r.Exact - nearest) / nearest
	return r, nil
}

// checkLaw checks the two arguments that nearly every form of the law has.
func checkLaw(eq units.Equivalent, eff units.Efficiency) error {
	if err := units.Positive("electrochemical equivalent", eq); err != nil {
		return err
	}
	return units.PositiveFraction("current efficiency", eff)
}

// finite passes a result on unless it overflowed.
func finite[Q units.Quantity](field string, v Q) (Q, error) {
	if err := units.Finite(field, v); err != nil {
		return 0, err
	}
	return v, nil
}
