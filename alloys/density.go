package alloys

import (
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// DensityOptions change where densities come from. The zero value takes the
// elements of package faraday and computes.
type DensityOptions struct {
	// Measured, when not zero, is the density of the alloy or deposit itself:
	// it is taken as it is, and nothing is computed.
	Measured units.Density
	// MeasuredRelative is the relative uncertainty of Measured; zero when unknown.
	MeasuredRelative units.Ratio
	// Elements replaces the density of single elements, by symbol.
	Elements map[string]units.Density
}

// A DensityEstimate is a density with what it is worth.
type DensityEstimate struct {
	Value    units.Density
	Relative units.Ratio // stated uncertainty: the density lies within Value·(1 ± Relative)
	Measured bool        // given by the caller, not computed
	System   string      // what the uncertainty was chosen for
}

// Low returns the lower end of the stated range.
func (d DensityEstimate) Low() units.Density { return d.Value - units.Density(d.Relative)*d.Value }

// High returns the upper end of the stated range.
func (d DensityEstimate) High() units.Density { return d.Value + units.Density(d.Relative)*d.Value }

// A system is a group of alloys whose densities miss ideal mixing by about the
// same. The first that holds all elements of a composition counts.
type system struct {
	name     string
	symbols  string // parted by blanks, one at the start and end
	relative units.Ratio
}

// trace is the share up to which an element does not decide the system: five
// per mille of anything move the volume by about 1 %, and the excess volume by
// a small part of that.
const trace = 0.005

// systemOf chooses the stated uncertainty. The figures round up what the
// published rows show: pure metals differ by 0.3 to 0.5 % between handbooks
// (gold 19.26 to 19.32, silver 10.45 to 10.53); gold-silver was measured
// -0.3 to +0.8 % off ideal mixing; sterling 0.6 %; gold-copper 0.9 % below at
// 900 to 917 and, from memory, 1.3 % at 750, where copper and gold order; the
// nickel white 14 karat of the named alloys 2.7 %. Beyond these metals no
// published row was found, and 5 % is this library's own caution.
func systemOf(c Composition) system {
	var store [8]string // on the stack, as a rule
	symbols := store[:0]
	for _, p := range c.parts {
		if p.Share > trace {
			symbols = append(symbols, p.Symbol)
		}
	}
	if len(symbols) == 1 {
		return system{name: "one metal", relative: 0.005}
	}
	list := [...]system{
		{"gold-silver", " Au Ag ", 0.01},
		{"silver-copper", " Ag Cu ", 0.01},
		{"gold-silver-copper", " Au Ag Cu ", 0.015},
		{"gold with zinc, nickel or palladium", " Au Ag Cu Zn Ni Pd ", 0.03},
	}
	for _, s := range list {
		all := true
		for _, symbol := range symbols {
			all = all && strings.Contains(s.symbols, " "+symbol+" ")
		}
		if all {
			return s
		}
	}
	return system{name: "metals without a published row", relative: 0.05}
}

// Density estimates the density of an alloy by ideal mixing: the metals keep
// their volumes.
//
//	ρ = 1 / Σ(w_i/ρ_i)
//
//	w_i  Share           mass fraction of each element
//	ρ_i  options or table  density of each element [kg/m³]
//
// The stated uncertainty goes by the metals: 0.5 % for one metal, 1 % for
// gold-silver and silver-copper, 1.5 % for gold-silver-copper, 3 % with zinc,
// nickel or palladium, 5 % with anything else. Elements up to 5 ‰ do not count
// in that. It holds for cast and wrought metal. An electrodeposit is often
// lighter, hard gold by a tenth: give its measured density, which overrides.
//
// Errors: a [*units.ValueError] for the zero Composition, an element without a
// density, or a density that is not above zero.
//
// Source: [MixingRule], [MetallurgyOfGold], [GoldCopperDensity], [NamedAlloyDensity], [CRC95].
func Density(c Composition, o DensityOptions) (DensityEstimate, error) {
	d, _, err := density(c, o, false)
	return d, err
}

// DensityWorking shows how [Density] computes; no step for a measured density.
// Errors: those of Density.
func DensityWorking(c Composition, o DensityOptions) ([]working.Step, error) {
	_, steps, err := density(c, o, true)
	return steps, err
}

func density(c Composition, o DensityOptions, show bool) (DensityEstimate, []working.Step, error) {
	if o.Measured != 0 {
		if err := units.Positive("measured density", o.Measured); err != nil {
			return DensityEstimate{}, nil, err
		}
		if err := units.Fraction("uncertainty of the measured density", o.MeasuredRelative); err != nil {
			return DensityEstimate{}, nil, err
		}
		return DensityEstimate{Value: o.Measured, Relative: o.MeasuredRelative, Measured: true, System: "measured"}, nil,
			nil
	}
	if c.IsZero() {
		return DensityEstimate{}, nil, noComposition("composition")
	}
	if err := o.check(); err != nil {
		return DensityEstimate{}, nil, err
	}
	var store [8]float64
	volumes := store[:0]
	var forms []string
	var terms []working.Term
	for _, p := range c.parts {
		rho, err := o.element(p.Symbol)
		if err != nil {
			return DensityEstimate{}, nil, err
		}
		volumes = append(volumes, float64(p.Share)/float64(rho))
		if show {
			forms = append(forms, "w_"+p.Symbol+"/ρ_"+p.Symbol)
			terms = append(terms, working.Of("w_"+p.Symbol, "mass fraction of "+p.Symbol, p.Share),
				working.Of("ρ_"+p.Symbol, "density of "+p.Symbol, rho))
		}
	}
	s := systemOf(c)
	d := DensityEstimate{Value: units.Density(1 / sum(volumes)), Relative: s.relative, System: s.name}
	if err := units.Positive("density by mixing", d.Value); err != nil {
		return DensityEstimate{}, nil, err
	}
	if !show {
		return d, nil, nil
	}
	step := working.Step{Formula: "ρ = 1/(" + strings.Join(forms, " + ") + ")", Terms: terms,
		Result: working.Of("ρ", "density by ideal mixing", d.Value), Source: "MixingRule",
		Note: "Stated uncertainty " + d.Relative.Percent(1) + " (" + d.System + ")."}
	return d, []working.Step{step}, nil
}

// check refuses densities for symbols that are no element: a slip of the pen
// would go unseen otherwise.
func (o DensityOptions) check() error {
	var first error
	wrong := ""
	for symbol := range o.Elements {
		if _, err := faraday.Lookup(symbol); err != nil && (first == nil || symbol < wrong) {
			first, wrong = err, symbol
		}
	}
	return first
}

// element returns the density of an element: the caller's, or the table's.
func (o DensityOptions) element(symbol string) (units.Density, error) {
	if rho, found := o.Elements[symbol]; found {
		if err := units.Positive("density of "+symbol, rho); err != nil {
			return 0, err
		}
		return rho, nil
	}
	e, err := faraday.Lookup(symbol)
	if err != nil {
		return 0, err
	}
	if e.Density == 0 {
		return 0, bad("density of "+symbol, "not in the table",
			"one in DensityOptions.Elements, or a measured density of the alloy", units.ErrNotPositive)
	}
	return e.Density, nil
}

func noComposition(field string) error {
	return bad(field, "none", "one made by New, FromPermille or ParseComposition", units.ErrNotPositive)
}
