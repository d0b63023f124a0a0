package alloys

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A DensityAssay is the share of the first of two metals, as read from a density.
type DensityAssay struct {
	Share     units.MassFraction // of the first metal
	Low, High units.MassFraction // its range by the stated uncertainty of mixing alone, within 0 to 1
}

// ShareFromDensity returns the mass fraction of the first of two metals in an
// alloy of both, from its density: [Density] for two metals, the other way.
//
//	w = (1/ρ - 1/ρ_b) / (1/ρ_a - 1/ρ_b)
//
//	ρ    rho     density of the alloy, between those of the metals [kg/m³]
//	ρ_a  first   density of the first metal [kg/m³]
//	ρ_b  second  density of the second metal [kg/m³]
//
// It holds for two known metals without pores. One per cent in the density
// moves a gold-silver share by 12 to 22 per mille: read Low and High, which do
// not hold the error of weighing. A hidden third metal spoils it.
//
// Errors: a [*units.ValueError] for one metal named twice, metals of one
// density, a density that is not above zero, or one not between those of the
// metals; a [*faraday.ElementError] for an unknown symbol.
//
// Source: [MixingRule].
func ShareFromDensity(first, second string, rho units.Density, o DensityOptions) (DensityAssay, error) {
	a, _, err := shareFromDensity(first, second, rho, o, false)
	return a, err
}

// ShareFromDensityWorking shows how [ShareFromDensity] computes, with the same errors.
func ShareFromDensityWorking(first, second string, rho units.Density, o DensityOptions) ([]working.Step, error) {
	_, steps, err := shareFromDensity(first, second, rho, o, true)
	return steps, err
}

func shareFromDensity(first, second string, rho units.Density, o DensityOptions, show bool) (DensityAssay,
	[]working.Step, error) {
	if first == second {
		return DensityAssay{}, nil, bad("second metal", units.Clip(second), "another than the first", units.ErrInconsistent)
	}
	if err := o.check(); err != nil {
		return DensityAssay{}, nil, err
	}
	rhoA, err := o.element(first)
	if err != nil {
		return DensityAssay{}, nil, err
	}
	rhoB, err := o.element(second)
	if err != nil {
		return DensityAssay{}, nil, err
	}
	w, err := inverseMix("density of the alloy", rho, rhoA, rhoB)
	if err != nil {
		return DensityAssay{}, nil, err
	}
	// any share but a trace names the system
	s := systemOf(Composition{parts: []ElementShare{{first, 0.5}, {second, 0.5}}})
	end := func(r units.Density) units.MassFraction {
		v := (1/float64(r) - 1/float64(rhoB)) / (1/float64(rhoA) - 1/float64(rhoB))
		return units.MassFraction(math.Max(0, math.Min(1, v)))
	}
	low, high := end(rho*units.Density(1-s.relative)), end(rho*units.Density(1+s.relative))
	if low > high {
		low, high = high, low
	}
	if !show {
		return DensityAssay{Share: w, Low: low, High: high}, nil, nil
	}
	step := working.Step{Formula: "w = (1/ρ - 1/ρ_b)/(1/ρ_a - 1/ρ_b)",
		Terms: []working.Term{working.Of("ρ", "density of the alloy", rho), working.Of("ρ_a", "density of "+first, rhoA),
			working.Of("ρ_b", "density of "+second, rhoB)},
		Result: working.Of("w", "mass fraction of "+first, w), Source: "MixingRule",
		Note: "By the uncertainty of mixing from " + low.Percent(1) + " to " + high.Percent(1) + "."}
	return DensityAssay{Share: w, Low: low, High: high}, []working.Step{step}, nil
}

// inverseMix returns the share of the constituent a in a mixture of density rho.
func inverseMix(field string, rho, a, b units.Density) (units.MassFraction, error) {
	if err := units.Positive(field, rho); err != nil {
		return 0, err
	}
	if a == b {
		return 0, bad("densities of the constituents", "both "+a.String(), "two that differ", units.ErrInconsistent)
	}
	w := (1/float64(rho) - 1/float64(b)) / (1/float64(a) - 1/float64(b))
	if w-w != 0 || w < -1e-12 || w > 1+1e-12 {
		return 0, bad(field, rho.String(), "a density from "+min(a, b).String()+" to "+max(a, b).String(),
			units.ErrOutOfRange)
	}
	return units.MassFraction(math.Max(0, math.Min(1, w))), nil
}
