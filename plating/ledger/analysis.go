package ledger

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// An Estimate is a content with its standard uncertainty.
type Estimate struct {
	Content     units.MassConcentration
	Uncertainty units.MassConcentration
}

// A Comparison holds what an analysis said beside what the book said.
type Comparison struct {
	Book   Estimate    // before the analysis
	Lab    Estimate    // the analysis itself
	Both   Estimate    // what the book goes on with
	Weight units.Ratio // of the analysis in it, 0 to 1

	// Apart is analysis less book in units of their combined uncertainty.
	// Beyond 2 either way something is wrong that the uncertainties do not
	// cover: a load not booked, a meter, the efficiency, the sample.
	Apart units.Ratio

	// Efficiency is the cathode efficiency that would have made the book agree,
	// were nothing else to blame; 0 when no computed charge passed since the
	// last analysis, or when the figure is none that can be.
	Efficiency            units.Efficiency
	EfficiencyUncertainty units.Efficiency
}

// Combine averages two independent contents by their uncertainties.
//
//	k = u₁²/(u₁² + u₂²)
//	c = (1 - k)·c₁ + k·c₂
//	u = u₁·u₂/√(u₁² + u₂²)
//
//	c₁, u₁  first   content and its standard uncertainty, ≥ 0 [kg/m³]
//	c₂, u₂  second  the same; not both uncertainties zero
//	k               weight of the second
//
// That is the mean with weights of one over the variance, which has the least
// uncertainty of all weighted means. It is right only if both uncertainties
// are honest: look at how far the two lie apart before you believe the mean.
//
// Errors: a [*units.ValueError] for a value that is negative or not finite, and
// when both uncertainties are zero or together beyond float64.
//
// Source: [WeightedMean].
func Combine(first, second Estimate) (Estimate, units.Ratio, error) {
	for _, v := range []struct {
		field string
		value units.MassConcentration
	}{{"first content", first.Content}, {"uncertainty of the first content", first.Uncertainty},
		{"second content", second.Content}, {"uncertainty of the second content", second.Uncertainty}} {
		if err := units.NonNegative(v.field, v.value); err != nil {
			return Estimate{}, 0, err
		}
	}
	u := math.Hypot(float64(first.Uncertainty), float64(second.Uncertainty))
	if u == 0 {
		return Estimate{}, 0, &units.ValueError{Field: "uncertainties", Value: "both zero", Need: "at least one above zero",
			Err: units.ErrNotPositive}
	}
	if err := units.Finite("uncertainties together", units.MassConcentration(u)); err != nil {
		return Estimate{}, 0, err
	}
	k := square(float64(first.Uncertainty) / u)
	e := Estimate{Content: units.MassConcentration((1-k)*float64(first.Content) + k*float64(second.Content)),
		Uncertainty: units.MassConcentration(float64(first.Uncertainty) / u * float64(second.Uncertainty))}
	if err := units.Finite("combined content", e.Content); err != nil {
		return Estimate{}, 0, err
	}
	return e, units.Ratio(k), nil
}

// CombineWorking shows the calculation of [Combine].
//
// Errors: as there.
//
// Source: [WeightedMean].
func CombineWorking(first, second Estimate) ([]working.Step, error) {
	e, k, err := Combine(first, second)
	if err != nil {
		return nil, err
	}
	u1, u2 := working.Of("u₁", "uncertainty of the first", first.Uncertainty), working.Of("u₂",
		"uncertainty of the second", second.Uncertainty)
	weight := working.Of("k", "weight of the second", k)
	return []working.Step{
		{Formula: "k = u₁²/(u₁² + u₂²)", Terms: []working.Term{u1, u2}, Result: weight, Source: "WeightedMean"},
		{Formula: "c = (1 - k)·c₁ + k·c₂", Terms: []working.Term{weight, working.Of("c₁", "first content", first.Content),
			working.Of("c₂", "second content", second.Content)}, Result: working.Of("c", "combined content", e.Content),
			Source: "WeightedMean"},
		{Formula: "u = u₁·u₂/√(u₁² + u₂²)", Terms: []working.Term{u1, u2},
			Result: working.Of("u", "its standard uncertainty", e.Uncertainty), Source: "WeightedMean"},
	}, nil
}

// imply finds the efficiency that makes the book agree with the analysis.
//
//	η' = η + (m - c·V)/(w·ε·Q)
//
// with the book's metal m, the analysed content c, the volume V and the charge
// Q of the computed loads since the last analysis.
func (cmp *Comparison) imply(b *Account, c *core) {
	perEfficiency := b.fine() * float64(b.Equivalent) * c.computedCharge
	if perEfficiency == 0 {
		return
	}
	eff := float64(b.Efficiency.Value) + (c.metal-float64(cmp.Lab.Content)*c.volume)/perEfficiency
	if !(eff > 0 && eff <= 1) {
		return
	}
	u := units.Efficiency(math.Sqrt(c.varianceThen+square(c.volume*float64(cmp.Lab.Uncertainty))) / perEfficiency)
	if units.Finite("uncertainty", u) != nil {
		return // an analysis that says nothing
	}
	cmp.Efficiency, cmp.EfficiencyUncertainty = units.Efficiency(eff), u
}
