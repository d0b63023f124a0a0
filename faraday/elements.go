package faraday

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/laydown/units"
)

// An Element is a chemical element with what plating asks of it. The zero
// Element is none.
type Element struct {
	Symbol string // as in formulas: Au
	Name   string // in English: gold
	Number int    // of protons
	Weight AtomicWeight

	// Density is that of the solid bulk metal at 295 K (of the liquid for
	// mercury), from [CRC95]; zero where this library has none. A deposit can
	// be lighter by a tenth and more.
	Density units.Density

	valences string
}

// An AtomicWeight is a standard atomic weight of [IUPAC2021].
type AtomicWeight struct {
	Low, High           units.MolarMass // ends of the interval in normal materials; both zero when a single value is given
	Value               units.MolarMass // the value to calculate with: the abridged one where the standard is an interval
	Uncertainty         units.MolarMass // of Value
	Abridged            units.MolarMass // to five digits at most
	AbridgedUncertainty units.MolarMass
}

// Interval reports whether the standard is an interval, because the element's
// isotopes vary between normal materials.
func (w AtomicWeight) Interval() bool { return w.Low != 0 }

// Relative returns the relative uncertainty of the value.
func (w AtomicWeight) Relative() float64 {
	if w.Value == 0 {
		return 0
	}
	return float64(w.Uncertainty) / float64(w.Value)
}

// Valences returns how many electrons an atom takes up on deposition, the
// usual number first; none for an element that is not plated. The valence
// belongs to the bath: gold takes one electron from cyanide and sulfite baths
// and three from chloride, copper one from cyanide and two from sulfate.
func (e Element) Valences() []int {
	list := make([]int, len(e.valences))
	for i := range list {
		list[i] = int(e.valences[i] - '0')
	}
	return list
}

// CheckValence returns a [*units.ValueError] for a number of electrons that the
// metal is not deposited with: 2 or 8 for gold would count twice or eight times too
// little of it. An element without valences of its own here takes 1 to 8.
func (e Element) CheckValence(n int) error {
	need := "1 to 8"
	if e.valences != "" {
		var list []string
		for _, v := range e.Valences() {
			if v == n {
				return nil
			}
			list = append(list, strconv.Itoa(v))
		}
		need = strings.Join(list, " or ")
	} else if n >= 1 && n <= 8 {
		return nil
	}
	return &units.ValueError{Field: "valence of " + units.Clip(e.Symbol), Value: strconv.Itoa(n), Need: need,
		Err: units.ErrOutOfRange}
}

// UsualValence returns the first of [Element.Valences], 0 when there is none.
func (e Element) UsualValence() int {
	if e.valences == "" {
		return 0
	}
	return int(e.valences[0] - '0')
}

// Lookup returns the element with a symbol, as "Au".
//
// Errors: an [*ElementError] for an unknown symbol, or one of an element
// without a standard atomic weight.
//
// Source: [IUPAC2021].
func Lookup(symbol string) (Element, error) {
	for i := range elementTable {
		if elementTable[i].Symbol == symbol {
			return elementTable[i], nil
		}
	}
	return Element{}, &ElementError{Symbol: symbol}
}

// Elements returns all elements that have a standard atomic weight, by number.
//
// Source: [IUPAC2021].
func Elements() []Element { return append([]Element(nil), elementTable[:]...) }

// An ElementError reports a symbol that names no element with a standard
// atomic weight.
type ElementError struct{ Symbol string }

// Error returns the symbol and what would do.
func (e *ElementError) Error() string {
	s := units.Clip(e.Symbol)
	for i := range elementTable {
		if strings.EqualFold(elementTable[i].Symbol, s) || strings.EqualFold(elementTable[i].Name, s) {
			return fmt.Sprintf("element %q: unknown; did you mean %s", s, elementTable[i].Symbol)
		}
	}
	return fmt.Sprintf("element %q: unknown; need a symbol such as Au, Ag, Ni, one that has a standard atomic weight", s)
}

// CheckDensity returns a [*units.ValueError] for a density of a deposit that can
// only be a slip of the point or the unit: deposits are lighter than the bulk by
// some tenths at most, and hardly ever heavier.
//
//	½ < ρ/ρ_bulk < 3/2
//
//	ρ       density of the deposit               [kg/m³]
//	ρ_bulk  that of the bulk metal or mixture    [kg/m³]; 0: not known, nothing is refused
//
// The bounds are common practice, no source. of names the metal for the message.
func CheckDensity(rho, bulk units.Density, of string) error {
	if err := units.Positive("density of the deposit", rho); err != nil {
		return err
	}
	if bulk == 0 || rho > 0.5*bulk && rho < 1.5*bulk {
		return nil
	}
	return &units.ValueError{Field: "density of the deposit", Value: rho.Text(units.GramPerCubicCentimetre, -1),
		Need: "half to one and a half times the " + bulk.Text(units.GramPerCubicCentimetre, 2) + " of " + of,
		Err:  units.ErrOutOfRange}
}
