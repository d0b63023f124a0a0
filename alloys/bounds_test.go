package alloys_test

import (
	"errors"
	"math"
	"math/big"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// TestPropertyBounds holds the ends of the ranges that the comments state: what
// is at an end that counts is taken, the next value is refused.
func TestPropertyBounds(t *testing.T) {
	sums := func(rest float64) error {
		_, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.75}, alloys.ElementShare{Symbol: "Ag",
			Share: units.MassFraction(rest)})
		return err
	}
	parsed := func(text string) error { _, err := alloys.ParseComposition(text); return err }
	between := func(to units.MassFraction) error { _, err := alloys.BlendTo(0.01, 0.585, 0.75, to); return err }
	melted := func(total units.Mass) error {
		_, err := alloys.ToComposition(alloys.Lot{Mass: 0.01, Composition: parse(t, "Au 500, Cu 500")},
			parse(t, "Au 250, Cu 750"), total)
		return err
	}
	marked := func(k alloys.Karat) error { _, err := alloys.MarkedFineness(k); return err }
	weighed := func(m units.Mass, places int32) error {
		_, err := alloys.NewWeighed(m, alloys.PerGram, places)
		return err
	}
	assayed := func(rho units.Density) error {
		_, err := alloys.ShareFromDensity("Au", "Ag", rho, alloys.DensityOptions{})
		return err
	}
	for _, c := range []struct {
		what string
		err  error
		ok   bool
	}{
		{"shares of 1 + 0.9e-6", sums(0.25 + 0.9e-6), true}, {"shares of 1 + 1.1e-6", sums(0.25 + 1.1e-6), false},
		{"shares of 1 - 0.9e-6", sums(0.25 - 0.9e-6), true}, {"shares of 1 - 1.1e-6", sums(0.25 - 1.1e-6), false},
		{"a share of exponent -60", parsed("Au 999, Cu 1, Ag 1e-60"), true}, {"shares on z", parsed("Zn 200, Cu rest"),
			true},
		{"as poor as the poorer", between(0.585), true}, {"poorer", between(0.5849), false},
		{"as rich as the richer", between(0.75), true}, {"richer", between(0.7501), false},
		{"the least melt", melted(0.02), true}, {"less than that", melted(0.0199), false},
		{"18.0000000005 karat", marked(18 + 5e-10), true}, {"18.0000000015 karat", marked(18 + 1.5e-9), false},
		{"0 places", weighed(1, 0), true}, {"-1 place", weighed(1, -1), false},
		{"12 places", weighed(1, 12), true}, {"13 places", weighed(1, 13), false},
		{"a billion tonnes", weighed(1e12, 4), true}, {"more", weighed(1.001e12, 4), false},
		{"as dense as gold", assayed(19300), true}, {"as light as silver", assayed(10500), true},
		{"denser", assayed(19301), false}, {"lighter", assayed(10499), false},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: %v", c.what, c.err)
		}
	}
	// 1e-40 kg is nothing, whatever the places.
	if w, err := alloys.NewWeighed(1e-39, alloys.PerGram, 12); err != nil || !w.Amount.IsZero() {
		t.Errorf("%v, %v", w, err)
	}
	// Longer texts than any composition has are refused, whole.
	if _, err := alloys.ParseComposition(strings.Repeat(" ", 100_000) + "Au 1000"); err == nil {
		t.Error("a text of 100 kB is read")
	}
	if _, err := alloys.ParseComposition("Au \xff750, Cu rest"); err == nil {
		t.Error("bytes that are no text are read")
	}
}

// TestPropertyTrace: five per mille of an element do not decide the stated
// uncertainty, more do.
func TestPropertyTrace(t *testing.T) {
	for text, want := range map[string]units.Ratio{
		"Au 1000": 0.005, "Au 995, Fe 5": 0.005, "Au 994.9, Fe 5.1": 0.05, "Au 500, Ag 500": 0.01, "Ag 925, Cu 75": 0.01,
		"Au 750, Ag 125, Cu 125": 0.015, "Au 750, Ni 250": 0.03, "Au 700, Ag 295, Fe 5": 0.01, "Au 700, Ag 294, Fe 6": 0.05,
	} {
		if d, err := alloys.Density(parse(t, text), alloys.DensityOptions{}); err != nil || d.Relative != want {
			t.Errorf("%s: %v, %v, want %v", text, d.Relative, err, want)
		}
	}
}

// TestIndependentShareRange: the range of an assay by density is that of the
// mixing rule at the ends of its uncertainty, cut at 0 and 1.
func TestIndependentShareRange(t *testing.T) {
	for _, c := range []struct {
		first, second string
		a, b, rel     float64
	}{{"Au", "Ag", 19300, 10500, 0.01}, {"Ag", "Au", 10500, 19300, 0.01}, {"Au", "Fe", 19300, 7870, 0.05}} {
		for _, rho := range []float64{min(c.a, c.b) * 1.001, 12000, 15000, max(c.a, c.b) * 0.999} {
			// The share by volume is straight in the density.
			share := func(rho float64) float64 {
				v := min(1, max(0, (rho-c.b)/(c.a-c.b)))
				return v * c.a / (v*c.a + (1-v)*c.b)
			}
			got, err := alloys.ShareFromDensity(c.first, c.second, units.Density(rho), alloys.DensityOptions{})
			if err != nil {
				t.Errorf("%+v at %v: %v", c, rho, err)
				continue
			}
			low, high := share(rho*(1-c.rel)), share(rho*(1+c.rel))
			for what, pair := range map[string][2]float64{"share": {float64(got.Share), share(rho)},
				"low": {float64(got.Low), min(low, high)}, "high": {float64(got.High), max(low, high)}} {
				if math.Abs(pair[0]-pair[1]) > 1e-9 {
					t.Errorf("%s in %s at %v: %s %v, want %v", c.first, c.second, rho, what, pair[0], pair[1])
				}
			}
		}
	}
}

// TestIndependentSumOfLots holds the mass of a melt against exact arithmetic,
// with lots so unlike that a plain sum loses the small ones.
func TestIndependentSumOfLots(t *testing.T) {
	gold := parse(t, "Au 1000")
	small := []float64{4e-8, 4e-8, 4e-8, 4e-8, 4e-8, 4e-8, 4e-8, 4e-8, 4e-8} // each is lost in the last digit of 1e9
	for _, masses := range [][]float64{append([]float64{1e9}, small...), append(append([]float64{0.1}, small...), 1e9,
		1e9),
		append(append([]float64{}, small...), 1e9), {0.1, 0.2, 0.3, 0.4}} {
		exact := new(big.Float).SetPrec(300)
		var lots []alloys.Lot
		for _, m := range masses {
			exact.Add(exact, big.NewFloat(m))
			lots = append(lots, alloys.Lot{Mass: units.Mass(m), Composition: gold})
		}
		want, _ := exact.Float64()
		melt, err := alloys.Blend(lots...)
		if err != nil || float64(melt.Mass) != want {
			t.Errorf("%v: %.17g, %v, want %.17g", masses, float64(melt.Mass), err, want)
		}
	}
}

// TestPropertyEmptyLots: a lot without mass brings nothing into a melt.
func TestPropertyEmptyLots(t *testing.T) {
	gold, none := parse(t, "Au 750, Ag 250"), parse(t, "Pd 1000")
	melt, err := alloys.Blend(alloys.Lot{Mass: 0.01, Composition: gold}, alloys.Lot{Composition: none})
	if err != nil || melt.Composition.Share("Pd") != 0 || len(melt.Composition.Parts()) != 2 {
		t.Errorf("%v, %v", melt, err)
	}
	steps, err := alloys.BlendWorking(alloys.Lot{Mass: 0.01, Composition: gold}, alloys.Lot{Composition: none},
		alloys.Lot{Mass: 0.01, Composition: none})
	if err != nil {
		t.Fatal(err)
	}
	for _, s := range steps[1:] {
		for _, term := range s.Terms {
			if term.Symbol == "w_2" || term.Symbol == "m_2" {
				t.Errorf("%s names %s of the empty lot", s.Formula, term.Symbol)
			}
		}
	}
	// A stock without mass limits nothing, and nothing of it is too much.
	a, err := alloys.ToComposition(alloys.Lot{Composition: none}, gold, 0.01)
	if err != nil || a.Limiting != "" || a.Total != 0.01 || a.Add[0].Mass != 0.0075 {
		t.Errorf("%+v, %v", a, err)
	}
}

// TestPropertyErrorsName: errors name the value, what would do, and the lowest mark.
func TestPropertyErrorsName(t *testing.T) {
	series, err := alloys.NewSeries("own", "Ag", decimal.NewFromInt(999), decimal.NewFromInt(800),
		decimal.NewFromInt(925))
	if err != nil {
		t.Fatal(err)
	}
	var below *alloys.BelowSeriesError
	if _, err := alloys.MarkFor(decimal.NewFromInt(700), series); !errors.As(err, &below) ||
		below.Lowest.String() != "800" {
		t.Errorf("%v", err)
	}
	_, err = alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: 75},
		alloys.PermillePart{Symbol: "Cu", Share: 25})
	if err == nil || !strings.Contains(err.Error(), "Au 75, Cu 25") || !strings.Contains(err.Error(), "sum to 100 ‰") ||
		!strings.Contains(err.Error(), "per cent needs its sign") {
		t.Errorf("%v", err)
	}
	_, err = alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: 700})
	if err == nil || strings.Contains(err.Error(), "per cent") {
		t.Errorf("%v", err)
	}
	_, err = alloys.FromMoles(alloys.MolePart{Symbol: "Au", Share: 0.5}, alloys.MolePart{Symbol: "Cu", Share: 0.25})
	if err == nil || !strings.Contains(err.Error(), "Au 500, Cu 250") {
		t.Errorf("%v", err)
	}
	iron := alloys.Lot{Mass: 0.01, Composition: parse(t, "Fe 1000")}
	if _, err = alloys.ToComposition(iron, parse(t, "Au 1000"), 0); err == nil ||
		!strings.Contains(err.Error(), "need a target that has it") {
		t.Errorf("%v", err)
	}
	var v *units.ValueError
	if _, err = alloys.ShareFromDensity("Au", "Ag", 9000, alloys.DensityOptions{}); !errors.As(err, &v) ||
		!strings.HasPrefix(v.Need, "a density from 10.5") {
		t.Errorf("%v", err)
	}
	// Of several wrong symbols the first in the alphabet is named, on every run.
	for range 20 {
		_, err = alloys.Density(parse(t, "Au 1000"), alloys.DensityOptions{Elements: map[string]units.Density{"Xx": 1,
			"Aa": 1, "Zz": 1}})
		if err == nil || !strings.Contains(err.Error(), `"Aa"`) {
			t.Fatalf("%v", err)
		}
	}
}
