package alloys

import (
	"fmt"
	"math"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// SumTolerance is how far the shares of a composition may sum from 1: one
// thousandth of a per mille, so that 583.333 with 416.667 passes and a slip of
// a tenth of a per mille does not. Shares are kept as given, not scaled.
const SumTolerance = 1e-6

// maxParts bounds a composition; no alloy has so many parts.
const maxParts = 84

// A ElementShare is one element of a composition with its share of the mass.
type ElementShare struct {
	Symbol string // Au
	Share  units.MassFraction
}

// A MolePart is one element with its share of the amount of substance.
type MolePart struct {
	Symbol string // Au
	Share  units.MoleFraction
}

// A PermillePart is one element with its share of the mass in per mille, as
// alloys are printed.
type PermillePart struct {
	Symbol string // Au
	Share  Fineness
}

// A MassPart is one element with its mass: what is weighed out or was found.
type MassPart struct {
	Symbol string // Au
	Mass   units.Mass
}

// A Composition says which elements an alloy is made of, by mass. It does not
// change once made. Two compositions are compared with [Composition.Equal].
// The zero Composition is none: [Composition.IsZero].
type Composition struct {
	parts []ElementShare // shares above zero, in the order given
}

// NewComposition makes a composition of mass fractions. Parts of share zero are dropped.
//
// Errors: a [*SumError] when the shares do not sum to 1 within [SumTolerance],
// a [*faraday.ElementError] for an unknown symbol, a [*units.ValueError] for no
// parts, for a share outside 0 to 1 and for an element given twice.
//
// Source: [ISO9202] (fineness is a share of the mass).
func NewComposition(parts ...ElementShare) (Composition, error) {
	c, total, err := gather(parts)
	if err != nil {
		return Composition{}, err
	}
	if !sumsToOne(total) {
		return Composition{}, &SumError{Sum: total, Parts: append([]ElementShare(nil), parts...)}
	}
	return c, nil
}

// sumsToOne leaves room for the rounding of a sum that lies on the limit.
func sumsToOne(total float64) bool { return math.Abs(total-1) <= SumTolerance*(1+1e-6) }

// gather checks parts one by one and sums them.
func gather(parts []ElementShare) (Composition, float64, error) {
	if len(parts) == 0 {
		return Composition{}, 0, bad("composition", "of no parts", "one element at least, as Au 1000", units.ErrNotPositive)
	}
	if len(parts) > maxParts {
		return Composition{}, 0, bad("composition", fmt.Sprintf("of %d parts", len(parts)), "each element once",
			units.ErrInconsistent)
	}
	c := Composition{parts: make([]ElementShare, 0, len(parts))}
	shares := make([]float64, 0, len(parts))
	for i, p := range parts {
		if _, err := faraday.Lookup(p.Symbol); err != nil {
			return Composition{}, 0, err
		}
		if err := units.Fraction("share of "+p.Symbol, p.Share); err != nil {
			return Composition{}, 0, err
		}
		for _, earlier := range parts[:i] {
			if earlier.Symbol == p.Symbol {
				return Composition{}, 0, bad("share of "+p.Symbol, "given twice", "each element once", units.ErrInconsistent)
			}
		}
		if p.Share > 0 {
			c.parts = append(c.parts, p)
		}
		shares = append(shares, float64(p.Share))
	}
	return c, sum(shares), nil
}

// FromPermille makes a composition of shares in per mille, as 750 for gold in
// 18 karat. Errors: those of [NewComposition].
//
// Source: [ISO9202].
func FromPermille(parts ...PermillePart) (Composition, error) {
	list := make([]ElementShare, len(parts))
	for i, p := range parts {
		list[i] = ElementShare{p.Symbol, p.Share.MassFraction()}
	}
	return NewComposition(list...)
}

// FromMasses makes the composition of a melt of the given masses.
//
//	w_i = m_i / Σ m
//
//	m_i  Mass  of each element, ≥ 0, one of them > 0 [kg]
//
// Errors: a [*units.ValueError] for a negative or unbounded mass, no mass at
// all or an element given twice, a [*faraday.ElementError] for an unknown symbol.
//
// Source: [ISO9202].
func FromMasses(parts ...MassPart) (Composition, error) {
	total, err := totalMass(parts)
	if err != nil {
		return Composition{}, err
	}
	list := make([]ElementShare, len(parts))
	for i, p := range parts {
		list[i] = ElementShare{p.Symbol, units.MassFraction(p.Mass / total)}
	}
	return NewComposition(list...)
}

// totalMass checks masses and sums them.
func totalMass(parts []MassPart) (units.Mass, error) {
	list := make([]float64, len(parts))
	for i, p := range parts {
		if err := units.NonNegative("mass of "+units.Clip(p.Symbol), p.Mass); err != nil {
			return 0, err
		}
		list[i] = float64(p.Mass)
	}
	total := units.Mass(sum(list))
	if err := units.Positive("sum of the masses", total); err != nil {
		return 0, err
	}
	return total, nil
}

// FromMoles makes a composition of mole fractions, as phase diagrams and
// analyses in atomic per cent give them.
//
//	w_i = x_i M_i / Σ(x_j M_j)
//
//	x_i  Share  mole fraction, 0 ≤ x ≤ 1, summing to 1 within SumTolerance
//	M_i         standard atomic weight [kg/mol]
//
// Atomic weights are good to a few parts in 1e5 (lead: 5e-3). Errors: those of [NewComposition].
//
// Source: [IUPAC2021].
func FromMoles(parts ...MolePart) (Composition, error) {
	c, _, err := fromMoles(parts, false)
	return c, err
}

// FromMolesWorking shows how [FromMoles] computes.
func FromMolesWorking(parts ...MolePart) ([]working.Step, error) {
	_, steps, err := fromMoles(parts, true)
	return steps, err
}

func fromMoles(parts []MolePart, show bool) (Composition, []working.Step, error) {
	asParts := make([]ElementShare, len(parts))
	for i, p := range parts {
		asParts[i] = ElementShare{p.Symbol, units.MassFraction(p.Share)}
	}
	checked, total, err := gather(asParts)
	if err != nil {
		return Composition{}, nil, err
	}
	if !sumsToOne(total) {
		return Composition{}, nil, &SumError{Sum: total, Moles: append([]MolePart(nil), parts...)}
	}
	products := make([]float64, len(checked.parts))
	var terms []working.Term
	var forms []string
	for i, p := range checked.parts {
		e, err := faraday.Lookup(p.Symbol)
		if err != nil {
			return Composition{}, nil, err
		}
		products[i] = float64(p.Share) * float64(e.Weight.Value)
		if show {
			terms = append(terms, working.Of("x_"+p.Symbol, "mole fraction of "+e.Name, units.MoleFraction(p.Share)),
				working.Of("M_"+p.Symbol, "atomic weight of "+e.Name, e.Weight.Value))
			forms = append(forms, "x_"+p.Symbol+"·M_"+p.Symbol)
		}
	}
	mean := units.MolarMass(sum(products))
	c := Composition{parts: make([]ElementShare, len(checked.parts))}
	for i, p := range checked.parts {
		c.parts[i] = ElementShare{p.Symbol, units.MassFraction(products[i] / float64(mean))}
	}
	if !show {
		return c, nil, nil
	}
	meanTerm := working.Of("M", "mean molar mass", mean)
	steps := []working.Step{{Formula: "M = " + strings.Join(forms, " + "), Terms: terms, Result: meanTerm,
		Source: "IUPAC2021"}}
	for i, p := range c.parts {
		steps = append(steps, working.Step{Formula: "w_" + p.Symbol + " = " + forms[i] + "/M",
			Terms:  []working.Term{terms[2*i], terms[2*i+1], meanTerm},
			Result: working.Of("w_"+p.Symbol, "mass fraction of "+p.Symbol, p.Share), Source: "IUPAC2021"})
	}
	return c, steps, nil
}

// Moles returns the composition in mole fractions, in the order of the parts.
//
//	x_i = (w_i / M_i) / Σ(w_j / M_j)
//
//	w_i  Share  mass fraction
//	M_i         standard atomic weight [kg/mol]
//
// It returns nil for the zero Composition.
//
// Source: [IUPAC2021].
func (c Composition) Moles() []MolePart { list, _ := c.moles(false); return list }

// MolesWorking shows how [Composition.Moles] computes.
func (c Composition) MolesWorking() []working.Step { _, steps := c.moles(true); return steps }

func (c Composition) moles(show bool) ([]MolePart, []working.Step) {
	if c.IsZero() {
		return nil, nil
	}
	quotients := make([]float64, len(c.parts))
	var terms []working.Term
	var forms []string
	for i, p := range c.parts {
		e, err := faraday.Lookup(p.Symbol)
		if err != nil {
			return nil, nil // cannot be: every part was looked up when c was made
		}
		quotients[i] = float64(p.Share) / float64(e.Weight.Value)
		if show {
			terms = append(terms, working.Of("w_"+p.Symbol, "mass fraction of "+e.Name, p.Share),
				working.Of("M_"+p.Symbol, "atomic weight of "+e.Name, e.Weight.Value))
			forms = append(forms, "w_"+p.Symbol+"/M_"+p.Symbol)
		}
	}
	n := sum(quotients)
	list := make([]MolePart, len(c.parts))
	for i, p := range c.parts {
		list[i] = MolePart{p.Symbol, units.MoleFraction(quotients[i] / n)}
	}
	if !show {
		return list, nil
	}
	nTerm := working.Constant("N", "amount in a kilogram of alloy", n, "mol/kg")
	steps := []working.Step{{Formula: "N = " + strings.Join(forms, " + "), Terms: terms, Result: nTerm,
		Source: "IUPAC2021"}}
	for i, p := range list {
		steps = append(steps, working.Step{Formula: "x_" + p.Symbol + " = (" + forms[i] + ")/N",
			Terms:  []working.Term{terms[2*i], terms[2*i+1], nTerm},
			Result: working.Of("x_"+p.Symbol, "mole fraction of "+p.Symbol, p.Share), Source: "IUPAC2021"})
	}
	return list, steps
}

// Share returns the mass fraction of an element, zero when it is not in the composition.
func (c Composition) Share(symbol string) units.MassFraction {
	for _, p := range c.parts {
		if p.Symbol == symbol {
			return p.Share
		}
	}
	return 0
}

// Fineness returns the share of an element in per mille: of "Au" the fineness of a gold alloy.
//
// Source: [ISO9202].
func (c Composition) Fineness(symbol string) Fineness { return NewFineness(c.Share(symbol)) }

// Karat returns the share of gold in 24ths.
//
// Source: [FinenessMarks].
func (c Composition) Karat() Karat { return Karat(float64(c.Share("Au")) * 24) }

// Parts returns the elements and their mass fractions in the order given to the constructor.
func (c Composition) Parts() []ElementShare { return append([]ElementShare(nil), c.parts...) }

// IsZero reports whether c is the zero Composition: none.
func (c Composition) IsZero() bool { return len(c.parts) == 0 }

// Equal reports whether c and d hold the same elements with the same shares,
// to the last bit, in whatever order.
func (c Composition) Equal(d Composition) bool {
	if len(c.parts) != len(d.parts) {
		return false
	}
	for _, p := range c.parts {
		if d.Share(p.Symbol) != p.Share {
			return false
		}
	}
	return true
}
