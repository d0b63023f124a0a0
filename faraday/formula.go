package faraday

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// A Formula is a neutral chemical formula such as KAu(CN)2 or NiSO4·6H2O: what
// atoms one unit of a salt holds. Make one with [ParseFormula]. It cannot be
// changed afterwards; its zero value holds no atoms.
type Formula struct {
	text  string
	parts []formulaPart
	atoms []formulaAtom // in the order of their first appearance
}

// A formulaPart stands between two dots: a number and what it multiplies.
type formulaPart struct {
	multiplier float64
	nodes      []formulaNode
}

// A formulaNode is an element or a bracketed group, with its count.
type formulaNode struct {
	element int // index in elementTable, -1 for a group
	group   []formulaNode
	count   int
}

// A formulaAtom is an element of a formula with its count in one unit.
type formulaAtom struct {
	element int // index in elementTable
	count   float64
}

// String returns the formula as it was read, with plain digits, a raised dot
// before water of crystallisation and no spaces.
func (f Formula) String() string { return f.text }

// IsZero reports whether the formula holds no atoms, as the zero Formula.
func (f Formula) IsZero() bool { return len(f.atoms) == 0 }

// Equal reports whether both are written the same, apart from dots, digits and
// spaces. NaCl and ClNa are not equal, though they hold the same atoms.
func (f Formula) Equal(other Formula) bool { return f.text == other.text }

// MarshalText returns the text of the formula, "" for the zero Formula.
func (f Formula) MarshalText() ([]byte, error) { return []byte(f.text), nil }

// UnmarshalText reads what [ParseFormula] reads, and "" as the zero Formula.
// On an error it leaves f as it was.
func (f *Formula) UnmarshalText(text []byte) error {
	if f == nil {
		return units.Missing("formula to read into", "a pointer to one")
	}
	if len(text) == 0 {
		*f = Formula{}
		return nil
	}
	read, err := ParseFormula(string(text))
	if err != nil {
		return err
	}
	*f = read
	return nil
}

// Elements returns the elements of the formula in the order they first appear.
func (f Formula) Elements() []Element {
	list := make([]Element, len(f.atoms))
	for i, a := range f.atoms {
		list[i] = elementTable[a.element]
	}
	return list
}

// Count returns how many atoms of an element one unit of the formula holds,
// zero when it holds none or the symbol is unknown. Water of crystallisation
// counts: CaSO4·0.5H2O holds 4.5 atoms of oxygen.
func (f Formula) Count(symbol string) float64 {
	for _, a := range f.atoms {
		if elementTable[a.element].Symbol == symbol {
			return a.count
		}
	}
	return 0
}

// MolarMass returns the mass of one mole of the formula, zero for the zero
// Formula.
//
//	M = Σ Nᵢ·Aᵢ
//
//	Nᵢ  atoms of element i in one unit of the formula
//	Aᵢ  atomic weight of element i [kg/mol]
//
// The weights are the standard ones, and the abridged ones where the standard
// is an interval (H, C, N, O, S, Cl and a few more). Tables with older weights
// differ in the fifth digit; [Formula.MolarMassUncertainty] says how much means
// anything.
//
// Source: [IUPAC2021].
func (f Formula) MolarMass() units.MolarMass {
	var sum float64
	for _, a := range f.atoms {
		sum += a.count * float64(elementTable[a.element].Weight.Value)
	}
	return units.MolarMass(sum)
}

// MolarMassUncertainty returns the standard uncertainty of the molar mass.
//
//	u = √(Σ (Nᵢ·Uᵢ)² / 3)
//
//	Nᵢ  atoms of element i in one unit of the formula
//	Uᵢ  uncertainty printed beside the atomic weight of element i [kg/mol]
//
// The printed uncertainty is taken as half the width of a rectangle in which
// any weight is as likely as another; hence the 3. It covers the natural spread
// of the isotopes, not the purity of a salt, which is nearly always worse.
//
// Source: [IUPAC2021] (weights); the rectangle after [IUPACUncertainty2018].
func (f Formula) MolarMassUncertainty() units.MolarMass {
	var sum float64
	for _, a := range f.atoms {
		part := a.count * float64(elementTable[a.element].Weight.Uncertainty)
		sum += part * part
	}
	return units.MolarMass(math.Sqrt(sum / 3))
}

// MassFraction returns the share of an element in the mass of the formula,
// zero when the formula does not hold it. For the metal of a salt ask
// [MetalContent], which refuses a salt without it.
//
//	w = N·A / M
//
//	N  atoms of the element in one unit of the formula
//	A  its atomic weight [kg/mol]
//	M  molar mass of the formula [kg/mol]
//
// Errors: an [*ElementError] for an unknown symbol, a [*units.ValueError] for
// the zero Formula.
//
// Source: [IUPAC2021]; [Definition].
func (f Formula) MassFraction(symbol string) (units.MassFraction, error) {
	e, err := Lookup(symbol)
	if err != nil {
		return 0, err
	}
	if err := f.check("formula"); err != nil {
		return 0, err
	}
	return units.MassFraction(f.Count(symbol) * float64(e.Weight.Value) / float64(f.MolarMass())), nil
}

// MassFractionOf returns the share of a group of atoms in the mass of the
// formula, as that of CN in KCN or of H2O in CuSO4·5H2O.
//
//	w = N·Mg / M
//
//	N   how often the formula shows the group
//	Mg  molar mass of the group [kg/mol]
//	M   molar mass of the formula [kg/mol]
//
// It finds the group where it is written, its symbols side by side with their
// counts: CN in K2Cu(CN)3 three times, SO3 in Ni(SO3NH2)2 twice, and no CN in
// (NH4)2C2O4. It does not know bonds: it finds CN in the cyanate KCNO too. A
// group of one element is counted wherever it stands.
//
// Errors: a [*units.ValueError] when either formula is the zero Formula, the
// group has water of its own, or the formula does not show the group.
//
// Source: [IUPAC2021]; [Definition].
func (f Formula) MassFractionOf(group Formula) (units.MassFraction, error) {
	if err := f.check("formula"); err != nil {
		return 0, err
	}
	if err := group.check("group"); err != nil {
		return 0, err
	}
	if len(group.parts) > 1 {
		return 0, &units.ValueError{Field: "group", Value: group.text, Need: "a group without a dot, such as CN or H2O",
			Err: units.ErrOutOfRange}
	}
	n := f.occurrences(group)
	if n == 0 {
		return 0, &units.ValueError{Field: "group in " + f.text, Value: "0 × " + group.text,
			Need: "a group that the formula shows, spelled as there", Err: units.ErrNotPositive}
	}
	return units.MassFraction(n * float64(group.MolarMass()) / float64(f.MolarMass())), nil
}

// occurrences counts how often the formula shows the nodes of a group.
func (f Formula) occurrences(group Formula) float64 {
	pattern := group.parts[0].nodes
	for len(pattern) == 1 && pattern[0].element < 0 && pattern[0].count == 1 {
		pattern = pattern[0].group // (CN) is CN
	}
	if len(pattern) == 1 && pattern[0].element >= 0 {
		return f.Count(elementTable[pattern[0].element].Symbol) / float64(pattern[0].count)
	}
	var n float64
	for _, part := range f.parts {
		n += part.multiplier * occurrencesIn(part.nodes, pattern)
	}
	return n
}

func occurrencesIn(nodes, pattern []formulaNode) float64 {
	var n float64
	for i := 0; i < len(nodes); i++ {
		if len(nodes)-i >= len(pattern) && sameNodes(nodes[i:i+len(pattern)], pattern) {
			n++
			i += len(pattern) - 1
			continue
		}
		if nodes[i].element < 0 {
			n += float64(nodes[i].count) * occurrencesIn(nodes[i].group, pattern)
		}
	}
	return n
}

func sameNodes(a, b []formulaNode) bool {
	if len(a) != len(b) {
		return false
	}
	for i := range a {
		if a[i].element != b[i].element || a[i].count != b[i].count || !sameNodes(a[i].group, b[i].group) {
			return false
		}
	}
	return true
}

// check refuses the zero Formula.
func (f Formula) check(field string) error {
	if !f.IsZero() {
		return nil
	}
	return &units.ValueError{Field: field, Value: "(empty)", Need: "one made by ParseFormula, such as KAu(CN)2",
		Err: units.ErrNotPositive}
}

// A FormulaError reports text that is not a formula: where, and why.
type FormulaError struct {
	Text   string // what was read, cut to 200 characters
	Offset int    // characters (not bytes) before the trouble
	Reason string // what is wrong there and what would do
}

// Error returns text, place and reason in one line. It counts characters from 1.
func (e *FormulaError) Error() string {
	return fmt.Sprintf("formula %q, character %d: %s", e.Text, e.Offset+1, e.Reason)
}
