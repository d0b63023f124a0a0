package units_test

import (
	"errors"
	"slices"
	"testing"

	"example.com/laydown/units"
)

// TestPropertyInEveryUnit: a quantity is so many of each unit of its kind that
// the text of a number and that unit reads back to.
func TestPropertyInEveryUnit(t *testing.T) {
	kinds := 0
	for _, q := range tools() {
		if q.in == nil {
			continue // temperatures, and plain numbers
		}
		kinds++
		for _, u := range q.kind.Units() {
			one, err := q.parse("1 " + u)
			if err != nil {
				t.Fatal(err)
			}
			many, err := q.parse("7.25 " + u)
			if err != nil {
				t.Fatal(err)
			}
			if got := q.in(many, one); got < 7.25*(1-1e-14) || got > 7.25*(1+1e-14) {
				t.Errorf("7.25 %s are %v of it", u, got)
			}
		}
	}
	if kinds < 20 {
		t.Errorf("only %d kinds", kinds)
	}
}

// TestPropertyUnknownTarget: an unknown unit is answered with the units of the
// kinds that can read the text, each once, or of all kinds.
func TestPropertyUnknownTarget(t *testing.T) {
	for text, c := range map[string]struct{ in, out []string }{
		"5 mg":     {[]string{"g", "mg", "ozt"}, []string{"m", "A", "V"}},
		"3 A/dm2":  {[]string{"A/dm²", "A/ft²"}, []string{"g", "A", "m"}},
		"nonsense": {[]string{"g", "A/dm²", "V", "m", "s"}, nil},
	} {
		_, err := units.Convert(text, "furlong")
		var p *units.ParseError
		if !errors.As(err, &p) || !errors.Is(err, units.ErrUnknownUnit) {
			t.Errorf("%s: %v", text, err)
			continue
		}
		for _, u := range c.in {
			if !slices.Contains(p.Accepted, u) {
				t.Errorf("%s: %s is not in %v", text, u, p.Accepted)
			}
		}
		for _, u := range c.out {
			if slices.Contains(p.Accepted, u) {
				t.Errorf("%s: %s is in %v", text, u, p.Accepted)
			}
		}
		seen := map[string]bool{}
		for _, u := range p.Accepted {
			if seen[u] {
				t.Errorf("%s: %s twice", text, u)
			}
			seen[u] = true
		}
	}
}

// TestPropertyMixedFractions: a whole number goes before a proper fraction only.
func TestPropertyMixedFractions(t *testing.T) {
	for text, want := range map[string]float64{"4 1/2 mg": 4.5e-6, "4 7/8 mg": 4.875e-6, "1/2 mg": 0.5e-6,
		"7/2 mg": 3.5e-6,
		"7/7 mg": 1e-6, "1 / 2 mg": -1, "4 2/2 mg": -1, "4 3/2 mg": -1, "4 0/2 mg": -1, "4 01/2 mg": -1, "1/0 mg": -1} {
		m, err := units.ParseMass(text)
		if (err == nil) != (want > 0) || err == nil && float64(m) != want && (float64(m)-want > 1e-20 ||
			want-float64(m) > 1e-20) {
			t.Errorf("%s: %v, %v", text, m, err)
		}
	}
}
