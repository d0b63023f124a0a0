package plating

import (
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A Trial is a piece that was weighed, plated and weighed again, to learn the
// bath's efficiency.
type Trial struct {
	Before, After units.Mass     // dry, at the same temperature
	Current       units.Current  // held constant
	Time          units.Duration // current on
	Resolution    units.Mass     // of the balance: its last digit; 0 when not given
}

// A TrialResult is what a trial piece tells.
type TrialResult struct {
	Gain       units.Mass
	Charge     units.Charge
	Efficiency units.Efficiency
	Relative   units.Ratio // standard uncertainty of the efficiency from the two weighings alone; 0 without Resolution
}

// Efficiency returns the current efficiency that a trial piece showed.
//
//	η = (m₂ - m₁)/(ε·I·t)
//	u = d/(√6·(m₂ - m₁))
//
//	m₁, m₂  Before, After  masses, ≥ 0, m₂ > m₁ [kg]
//	ε       d.Equivalent   [kg/C]
//	I       Current        > 0 [A]
//	t       Time           > 0 [s]
//	d       Resolution     last digit of the balance [kg]
//	u       Relative       standard uncertainty of η, relative
//
// Each reading is uncertain by d/√12, the difference of two by d/√6. Let the
// gain be at least 100 digits of the balance. Amperes, minutes and dryness
// bring errors of their own.
//
// Errors: a [*units.ValueError] for a field out of range or a piece that did
// not gain; with the value, a [*units.RangeError] for an efficiency over 1.
//
// Source: [OpenStaxChem2e] section 17.7, [Derived].
func (tr Trial) Efficiency(d faraday.Deposit) (TrialResult, error) {
	if err := units.NonNegative("mass before", tr.Before); err != nil {
		return TrialResult{}, err
	}
	if err := units.NonNegative("mass after", tr.After); err != nil {
		return TrialResult{}, err
	}
	if err := units.NonNegative("resolution of the balance", tr.Resolution); err != nil {
		return TrialResult{}, err
	}
	if err := units.Positive("current", tr.Current); err != nil {
		return TrialResult{}, err
	}
	if err := units.Positive("time", tr.Time); err != nil {
		return TrialResult{}, err
	}
	gain := tr.After - tr.Before
	if gain <= 0 {
		return TrialResult{}, &units.ValueError{Field: "gain in mass", Value: gain.String(),
			Need: "a piece that is heavier after plating", Err: units.ErrNotPositive}
	}
	if err := d.Check(); err != nil {
		return TrialResult{}, err
	}
	r := TrialResult{Gain: gain, Charge: tr.Current.For(tr.Time),
		Relative: units.Ratio(float64(tr.Resolution) / (math.Sqrt(6) * float64(gain)))}
	if err := units.Finite("uncertainty of the efficiency", r.Relative); err != nil {
		return TrialResult{}, err
	}
	eff, err := faraday.Efficiency(d.Equivalent, gain, r.Charge)
	r.Efficiency = eff
	if err != nil && eff == 0 {
		return TrialResult{}, err
	}
	return r, err
}
