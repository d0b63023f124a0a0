package alloys_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"github.com/shopspring/decimal"
)

// TestPropertyTextLimits holds the lengths of texts, numbers and exponents that
// the readers take: the longest is read, one more is refused.
func TestPropertyTextLimits(t *testing.T) {
	padded := func(n int) string { return "Au 1000" + strings.Repeat(" ", n-len("Au 1000")) }
	digits := func(n int) string { return "Au 1000." + strings.Repeat("0", n-len("1000.")) }
	for _, c := range []struct {
		what, text string
		ok         bool
	}{
		{"2000 bytes", padded(2000), true}, {"2001 bytes", padded(2001), false},
		{"a number of 60", digits(60), true}, {"a number of 61", digits(61), false},
		{"exponent 400", "Au 1000, Cu 0e400", true}, {"exponent 401", "Au 1000, Cu 0e401", false},
		{"exponent -400", "Au 1000, Cu 1e-400", true}, {"exponent -401", "Au 1000, Cu 1e-401", false},
		{"no exponent", "Au 1000, Cu 0e", false}, {"no digits", "Au .", false}, {"point first", "Au 1000, Cu .0", true},
		{"no symbol", "1000", false}, {"a sign", "Au 1000, Cu -0", false}, {"symbol alone", "Au", false},
		{"nothing between commas", "Au 1000,, Cu 0", false},
	} {
		if _, err := alloys.ParseComposition(c.text); (err == nil) != c.ok {
			t.Errorf("%s: %v", c.what, err)
		}
	}
	// A part for each element with a weight is the most there can be.
	elements := faraday.Elements()
	parts := func(n int) (string, []alloys.ElementShare) {
		var text []string
		var list []alloys.ElementShare
		for i := range n {
			symbol, share := elements[i%len(elements)].Symbol, units.MassFraction(0)
			if i == 0 {
				share = 1
			}
			text = append(text, fmt.Sprintf("%s %g", symbol, float64(share)*1000))
			list = append(list, alloys.ElementShare{Symbol: symbol, Share: share})
		}
		return strings.Join(text, ", "), list
	}
	for n, ok := range map[int]bool{len(elements): true, 84: true, 85: false} {
		text, list := parts(n)
		_, errText := alloys.ParseComposition(text)
		_, errList := alloys.NewComposition(list...)
		if (errText == nil) != ok || (errList == nil) != ok {
			t.Errorf("%d parts: %v, %v", n, errText, errList)
		}
		if !ok && strings.Contains(errList.Error(), "given twice") {
			t.Errorf("%d parts: %v", n, errList)
		}
	}
	for text, ok := range map[string]bool{"18 ct": true, "18 kt K": false, "18 K kt": false, "18": true} {
		if _, err := alloys.ParseKarat(text); (err == nil) != ok {
			t.Errorf("%s: %v", text, err)
		}
	}
	// Decimals have at most 60 places and 120 digits.
	series, err := alloys.NewSeries("own", "Au", decimal.NewFromInt(750))
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		what string
		d    decimal.Decimal
		long bool
	}{
		{"60 places", decimal.RequireFromString("800." + strings.Repeat("0", 59) + "1"), false},
		{"61 places", decimal.RequireFromString("800." + strings.Repeat("0", 60) + "1"), true},
		{"tens to the 60th", decimal.New(1, 60), false}, {"to the 61st", decimal.New(1, 61), true},
		{"399 bits", decimal.NewFromBigInt(decimal.NewFromInt(2).Pow(decimal.NewFromInt(399)).BigInt(), -60), false},
		{"401 bits", decimal.NewFromBigInt(decimal.NewFromInt(2).Pow(decimal.NewFromInt(400)).BigInt(), -60), true},
	} {
		_, err := alloys.MarkFor(c.d, series)
		var v *units.ValueError
		if got := errors.As(err, &v) && strings.HasPrefix(v.Need, "at most 60 places"); got != c.long {
			t.Errorf("%s: %v", c.what, err)
		}
	}
}

// TestPropertyStepsNameTheirLots: symbols and words of a step count the lots alike.
func TestPropertyStepsNameTheirLots(t *testing.T) {
	lots := []alloys.Lot{{Mass: 0.01, Composition: parse(t, "Au 750, Cu 250")}, {Mass: 0.02, Composition: parse(t,
		"Au 585, Ag 415")},
		{Mass: 0.03, Composition: parse(t, "Ag 925, Cu 75")}}
	steps, err := alloys.BlendWorking(lots...)
	if err != nil {
		t.Fatal(err)
	}
	seen := 0
	for _, s := range steps {
		for _, term := range s.Terms {
			if sign, n, found := strings.Cut(term.Symbol, "_"); found && len(n) == 1 && n >= "0" && n <= "9" {
				seen++
				if !strings.HasSuffix(term.Meaning, "lot "+n) {
					t.Errorf("%s_%s means %q", sign, n, term.Meaning)
				}
			}
		}
	}
	if seen < 12 {
		t.Errorf("only %d terms", seen)
	}
	lots[1].Mass = -1
	if _, err := alloys.Blend(lots...); err == nil || !strings.Contains(err.Error(), "lot 2") {
		t.Errorf("%v", err)
	}
	// The least melt is shown only where nobody asks for another.
	stock, target := alloys.Lot{Mass: 0.01, Composition: parse(t, "Au 500, Cu 500")}, parse(t, "Au 250, Cu 750")
	for total, shown := range map[units.Mass]bool{0: true, 0.02: false, 0.03: false} {
		steps, err := alloys.ToCompositionWorking(stock, target, total)
		if err != nil {
			t.Fatal(err)
		}
		if got := steps[0].Formula == "M = m·w/w'"; got != shown {
			t.Errorf("%v: %s first", total, steps[0].Formula)
		}
		a, err := alloys.ToComposition(stock, target, total)
		if limited := total <= 0.02; err != nil || (a.Limiting == "Au") != limited || limited && a.Add[0].Mass != 0 {
			t.Errorf("%v: %+v, %v", total, a, err)
		}
	}
}

// TestPropertyNotesOfMarks: what is second hand says so, the note of a stamp
// goes by its verdict, and an unknown term is answered with those that there are.
func TestPropertyNotesOfMarks(t *testing.T) {
	general, err := alloys.FinenessSeries(alloys.ListGeneral, "Au")
	if err != nil || general.Seen != origin.SecondHand {
		t.Errorf("general list: %v, %v", general.Seen, err)
	}
	kingdom, err := alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au")
	if err != nil || kingdom.Seen == origin.SecondHand {
		t.Errorf("the list of one kingdom: %v, %v", kingdom.Seen, err)
	}
	_, err = alloys.FTCTerm("gold dust")
	var names []string
	for _, term := range alloys.FTCTerms() {
		names = append(names, term.Name)
	}
	if err == nil || !strings.Contains(err.Error(), "one of "+strings.Join(names, ", ")) {
		t.Errorf("%v", err)
	}
	// A sum near 100 ‰ is a composition in per cent without its sign, others are not.
	for sum, hint := range map[float64]bool{100: true, 108: true, 92: true, 112: false, 88: false, 500: false} {
		_, err := alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: alloys.Fineness(sum)})
		if err == nil || strings.Contains(err.Error(), "per cent needs its sign") != hint {
			t.Errorf("a sum of %v ‰: %v", sum, err)
		}
	}
	// The text in an error is cut at 40 characters.
	for n, cut := range map[int]bool{40: false, 41: true} {
		_, err := alloys.ParseKarat(strings.Repeat("x", n))
		if err == nil || strings.Contains(err.Error(), "…") != cut || !strings.Contains(err.Error(),
			strings.Repeat("x", 40)) || strings.Contains(err.Error(), strings.Repeat("x", 41)) {
			t.Errorf("%d characters: %v", n, err)
		}
	}
	// A range by density is said in the step as it is returned.
	d, err := alloys.ShareFromDensity("Au", "Ag", 15000, alloys.DensityOptions{})
	if err != nil {
		t.Fatal(err)
	}
	steps, err := alloys.ShareFromDensityWorking("Au", "Ag", 15000, alloys.DensityOptions{})
	if err != nil || !strings.Contains(steps[0].Note, "from "+d.Low.Percent(1)+" to "+d.High.Percent(1)) {
		t.Errorf("%v, %v", steps, err)
	}
}
