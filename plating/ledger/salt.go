package ledger

import (
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// checkSalt questions the water of crystallisation in a formula: what stands
// behind a dot and holds nothing but hydrogen and oxygen must be a multiple of
// H2O. NiSO4·7H2 and NiSO4·7H20, with a nought for the O, are slips of the pen
// that would be counted with another metal content. Double and basic salts hold
// other elements behind their dots and pass.
func checkSalt(field string, f faraday.Formula) error {
	parts := strings.Split(f.String(), "·")
	for _, p := range parts[1:] {
		water, err := faraday.ParseFormula(strings.TrimLeft(p, "0123456789./"))
		if err != nil {
			return err
		}
		other := false
		for _, e := range water.Elements() {
			other = other || e.Symbol != "H" && e.Symbol != "O"
		}
		if !other && water.Count("H") != 2*water.Count("O") {
			return &units.ValueError{Field: field, Value: f.String(), Err: units.ErrInconsistent,
				Need: "water behind the dot as a number of H2O, as in NiSO4·7H2O, where this has " + p + "; mind O and 0"}
		}
	}
	return nil
}
