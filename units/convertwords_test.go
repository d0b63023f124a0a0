package units_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestPropertyConvertWords: the longest unit at the end counts, every word of the quantity is
// kept, and what is no unit is told with those that are.
func TestPropertyConvertWords(t *testing.T) {
	for words, want := range map[string][2]string{
		"25 µin µm": {"25 µin", "0.635 µm"}, "1 h 20 min s": {"1 h 20 min", "4800 s"}, "3600 C A h": {"3600 C", "1 A·h"},
		"12 A h C": {"12 A h", "43200 C"}, "8 g/L dwt / US gal": {"8 g/L", "19.472610388045108 dwt/US gal"},
		"4 1/2 in mm": {"4 1/2 in", "114.3 mm"}, "0.35 %": {"0.35", "35 %"},
	} {
		quantity, answer, err := units.ConvertWords(strings.Fields(words))
		if err != nil || quantity != want[0] || answer != want[1] {
			t.Errorf("%s: %q, %q, %v", words, quantity, answer, err)
		}
	}
	for words, c := range map[string]struct {
		reason error
		say    string
	}{
		"": {units.ErrSyntax, "need a quantity and a unit"}, "µm": {units.ErrSyntax, "need a quantity and a unit"},
		"25 µin furlong": {units.ErrUnknownUnit, `"furlong": unknown unit; accepted: m,`},
		"25 furlong µm":  {units.ErrUnknownUnit, `unknown unit "furlong"`},
		"5 A µm":         {units.ErrWrongKind, "is one of current"}, "1 h 1 h s": {units.ErrSyntax, "falling order"},
	} {
		var e *units.ParseError
		quantity, answer, err := units.ConvertWords(strings.Fields(words))
		if quantity+answer != "" || !errors.As(err, &e) || !errors.Is(err, c.reason) ||
			!strings.Contains(err.Error(), c.say) {
			t.Errorf("%q: %q, %q, %v", words, quantity, answer, err)
		}
	}
}

// A quantity and the unit it is wanted in, as spoken.
func ExampleConvertWords() {
	fmt.Println(units.ConvertWords([]string{"5", "L", "US", "gal"}))
	// Output:
	// 5 L 1.320860261790742 US gal <nil>
}
