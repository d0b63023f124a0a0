package alloys_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/big"
	"math/rand"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"github.com/google/go-cmp/cmp"
)

// Compositions as printed, of which six are half a per cent and more off 100 %: [WhiteGold]. A
// printed sum that is off must be refused, with the sum in the error.
func TestReferenceWhiteGold(t *testing.T) {
	columns := map[string]string{"au": "Au", "pd": "Pd", "ag": "Ag", "cu": "Cu", "zn": "Zn", "ni": "Ni", "other": "Fe"}
	checked(t, "whitegold.csv", func(t *testing.T, row testdata.Row) float64 {
		if row.Text("check") == "karat_from_gold" {
			return float64(alloys.Fineness(row.Float("au") * 10).Karat())
		}
		var parts []alloys.PermillePart
		for column, symbol := range columns {
			if row.Has(column) {
				parts = append(parts, alloys.PermillePart{Symbol: symbol, Share: alloys.Fineness(row.Float(column) * 10)})
			}
		}
		c, err := alloys.FromPermille(parts...)
		var off *alloys.SumError
		switch {
		case errors.As(err, &off):
			if !c.IsZero() || len(off.Parts) != len(parts) {
				t.Error("a refused composition is not zero, or its parts are not in the error")
			}
			return off.Sum * 100
		case err != nil:
			t.Fatal(err)
		case row.Misprint():
			t.Errorf("%s was accepted", c)
		}
		return 100
	})
}

// A second way to mole fractions: whole numbers of atoms in a compound, with
// the abridged atomic weights in exact fractions.
func TestIndependentMoles(t *testing.T) {
	weights := map[string]*big.Rat{"Au": big.NewRat(19697, 100), "Ag": big.NewRat(10787, 100), "Cu": big.NewRat(63546,
		1000)}
	compounds := []map[string]int64{{"Au": 1, "Cu": 3}, {"Au": 3, "Cu": 1}, {"Au": 1, "Ag": 1}, {"Au": 2, "Ag": 3,
		"Cu": 5}}
	for _, atoms := range compounds {
		all, mass := new(big.Rat), new(big.Rat)
		for symbol, n := range atoms {
			all.Add(all, big.NewRat(n, 1))
			mass.Add(mass, new(big.Rat).Mul(weights[symbol], big.NewRat(n, 1)))
		}
		var moles []alloys.MolePart
		for symbol, n := range atoms {
			x, _ := new(big.Rat).Quo(big.NewRat(n, 1), all).Float64()
			moles = append(moles, alloys.MolePart{Symbol: symbol, Share: units.MoleFraction(x)})
		}
		c := must(alloys.FromMoles(moles...))(t)
		for symbol, n := range atoms {
			w, _ := new(big.Rat).Quo(new(big.Rat).Mul(weights[symbol], big.NewRat(n, 1)), mass).Float64()
			near(t, fmt.Sprint(atoms, symbol), float64(c.Share(symbol)), w, 5e-5) // abridged against full weights
		}
	}
}

func TestPropertyMolesAndBack(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for i := 0; i < 300; i++ {
		c := random(t, r)
		var total float64
		for _, m := range c.Moles() {
			total += float64(m.Share)
		}
		near(t, "sum of mole fractions", total, 1, 1e-12)
		back := must(alloys.FromMoles(c.Moles()...))(t)
		var all float64
		for _, p := range c.Parts() {
			all += float64(p.Share)
		}
		for _, p := range c.Parts() {
			near(t, c.String(), float64(back.Share(p.Symbol)), float64(p.Share)/all, 1e-12)
		}
	}
}

// random returns a composition of one to five metals.
func random(t *testing.T, r *rand.Rand) alloys.Composition {
	t.Helper()
	symbols := []string{"Au", "Ag", "Cu", "Zn", "Ni", "Pd", "Pt", "Co"}
	r.Shuffle(len(symbols), func(i, j int) { symbols[i], symbols[j] = symbols[j], symbols[i] })
	var parts []alloys.MassPart
	for _, s := range symbols[:1+r.Intn(5)] {
		parts = append(parts, alloys.MassPart{Symbol: s, Mass: units.Mass(r.Float64()+1e-3) * units.Gram})
	}
	return must(alloys.FromMasses(parts...))(t)
}

func TestPropertyEqualAndOrder(t *testing.T) {
	a := parse(t, "Au 750, Ag 125, Cu 125")
	b := must(alloys.FromPermille(alloys.PermillePart{Symbol: "Cu", Share: 125}, alloys.PermillePart{Symbol: "Au",
		Share: 750}, alloys.PermillePart{Symbol: "Ag", Share: 125}))(t)
	c := must(alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.75}, alloys.ElementShare{Symbol: "Ag",
		Share: 0.125},
		alloys.ElementShare{Symbol: "Cu", Share: 0.125}, alloys.ElementShare{Symbol: "Ni", Share: 0}))(t)
	if diff := cmp.Diff(a, b); diff != "" {
		t.Error(diff)
	}
	if !a.Equal(c) || !c.Equal(a) || !cmp.Equal(a, c) {
		t.Error("a share of zero makes a difference")
	}
	if a.Equal(parse(t, "Au 750, Ag 125.0001, Cu rest")) || a.Equal(parse(t, "Au 750, Ag 250")) ||
		a.Equal(alloys.Composition{}) {
		t.Error("different compositions are equal")
	}
	if got := len(c.Parts()); got != 3 {
		t.Errorf("a share of zero was kept: %d parts", got)
	}
	parts := a.Parts()
	parts[0].Share = 0
	if a.Share("Au") != 0.75 {
		t.Error("Parts gave away the inside of the composition")
	}
	given := []alloys.ElementShare{{Symbol: "Au", Share: 1}}
	d := must(alloys.NewComposition(given...))(t)
	given[0].Share = 0.5
	if d.Share("Au") != 1 {
		t.Error("New kept the caller's slice")
	}
}

func TestPropertyZeroComposition(t *testing.T) {
	var c alloys.Composition
	if !c.IsZero() || c.String() != "no composition" || c.Moles() != nil || c.Share("Au") != 0 || c.Karat() != 0 ||
		!c.Equal(alloys.Composition{}) {
		t.Error("the zero Composition is not none")
	}
	type job struct{ Alloy alloys.Composition }
	text := must(json.Marshal(job{}))(t)
	back := job{Alloy: parse(t, "Au 1000")}
	if err := json.Unmarshal(text, &back); err != nil || !back.Alloy.IsZero() {
		t.Errorf("%s read back as %v, %v", text, back.Alloy, err)
	}
}

func TestPropertySumTolerance(t *testing.T) {
	for share, ok := range map[alloys.Fineness]bool{416.667: true, 416.666: true, 416.668: true, 416.6: false,
		416.7: false, 416.6655: false} {
		_, err := alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: 583.333}, alloys.PermillePart{Symbol: "Cu",
			Share: share})
		if (err == nil) != ok {
			t.Errorf("583.333 with %g: %v", float64(share), err)
		}
	}
}

func TestBadCompositions(t *testing.T) {
	for _, v := range badNumbers {
		if c, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: units.MassFraction(v)}); err == nil ||
			!c.IsZero() {
			t.Errorf("share %v was accepted", v)
		}
		if _, err := alloys.FromMasses(alloys.MassPart{Symbol: "Au", Mass: units.Mass(v)}, alloys.MassPart{Symbol: "Cu",
			Mass: 1}); err == nil {
			t.Errorf("mass %v was accepted", v)
		}
		if _, err := alloys.FromMoles(alloys.MolePart{Symbol: "Au", Share: units.MoleFraction(v)}); err == nil {
			t.Errorf("mole fraction %v was accepted", v)
		}
	}
	_, err := alloys.NewComposition()
	isError(t, "no parts", err, units.ErrNotPositive)
	_, err = alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.5}, alloys.ElementShare{Symbol: "Au",
		Share: 0.5})
	isError(t, "gold twice", err, units.ErrInconsistent)
	_, err = alloys.FromMoles(alloys.MolePart{Symbol: "Au", Share: 0.5}, alloys.MolePart{Symbol: "Cu", Share: 0.4})
	isError(t, "moles short", err, units.ErrInconsistent)
	var off *alloys.SumError
	if !errors.As(err, &off) || len(off.Moles) != 2 || off.Parts != nil || math.Abs(off.Sum-0.9) > 1e-15 {
		t.Errorf("moles short: %#v", off)
	}
	_, err = alloys.FromMasses(alloys.MassPart{Symbol: "Au"})
	isError(t, "no mass", err, units.ErrNotPositive)
	_, err = alloys.FromMasses(alloys.MassPart{Symbol: "Au", Mass: math.MaxFloat64}, alloys.MassPart{Symbol: "Cu",
		Mass: math.MaxFloat64})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.NewComposition(alloys.ElementShare{Symbol: "Gold", Share: 1})
	var unknown *faraday.ElementError
	if !errors.As(err, &unknown) || !strings.Contains(err.Error(), "Au") {
		t.Errorf("unknown element: %v", err)
	}
	_, err = alloys.NewComposition(make([]alloys.ElementShare, 1000)...)
	isError(t, "a thousand parts", err, units.ErrInconsistent)
	_, err = alloys.ParseComposition("Au 75, Ag 25")
	if err == nil || !strings.Contains(err.Error(), "per cent") {
		t.Errorf("percentages without their sign: %v", err)
	}
}

func TestPropertyCompositionText(t *testing.T) {
	want := parse(t, "Au 583, Ag 104, Cu 313")
	for _, text := range []string{"Au 583, Ag 104, Cu rest", "Au 58.3 %, Ag 10.4%,Cu balance", "Au583;Ag104 ‰;Cu bal.",
		" Cu 313 , Ag 1.04e2, Au 583.0 "} {
		if got := parse(t, text); !got.Equal(want) {
			t.Errorf("%q is %v", text, got)
		}
	}
	if got := want.String(); got != "Au 583, Ag 104, Cu 313" {
		t.Errorf("String: %s", got)
	}
	for _, text := range []string{"", ",", "Au", "750", "Au 750,", "Au 750,,Ag 250", "Au 58,3, Cu rest",
		"Au rest, Cu rest", "Au 1000, Cu rest", "Au 1200, Cu rest",
		"Au -5, Cu rest", "Au NaN", "Au Inf", "Au 0x3e8", "Au 1_000", "Au 1e999999999, Cu rest", "Au +1000",
		"Au 750 ppm, Cu rest", "Xx 1000", "au 1000", "Au 750 Ag 250",
		"Au 1e-400", "Au 1000\xff", strings.Repeat("Au 1,", 1000), "Au " + strings.Repeat("1", 100)} {
		c, err := alloys.ParseComposition(text)
		if err == nil || !c.IsZero() {
			t.Errorf("%.40q was read as %v", text, c)
		}
		c = want
		if text != "" && (c.UnmarshalText([]byte(text)) == nil || !c.Equal(want)) {
			t.Errorf("%.40q: UnmarshalText changed the value", text)
		}
	}
	r := rand.New(rand.NewSource(2))
	for i := 0; i < 300; i++ {
		c := random(t, r)
		text := must(c.MarshalText())(t)
		if back := parse(t, string(text)); !back.Equal(c) {
			t.Errorf("%s read back as %v", text, back)
		}
	}
	tiny := must(alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 1}, alloys.ElementShare{Symbol: "Co",
		Share: 5e-324}))(t)
	if back := parse(t, string(must(tiny.MarshalText())(t))); !back.Equal(tiny) {
		t.Error("the smallest share does not read back")
	}
}

func FuzzParseComposition(f *testing.F) {
	for _, s := range []string{"Au 750, Ag 125, Cu 125", "Au 750, Ag rest", "Au 75 %; Cu bal.", "Au 1e3",
		"Au 333.333, Ag 333.333, Cu 333.333", "Au750,Co 2.5e-1, Ni rest"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		c, err := alloys.ParseComposition(text)
		if err != nil {
			if !c.IsZero() {
				t.Fatal("a composition with an error")
			}
			return
		}
		var total float64
		for _, p := range c.Parts() {
			total += float64(p.Share)
		}
		if !(math.Abs(total-1) <= 1.1e-6) {
			t.Fatalf("%q sums to %v", text, total)
		}
		out, err := c.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		back, err := alloys.ParseComposition(string(out))
		if err != nil || !back.Equal(c) {
			t.Fatalf("%q: %s read back as %v, %v", text, out, back, err)
		}
		if _, err := alloys.ParseComposition(c.String()); err != nil && !errors.Is(err, units.ErrInconsistent) {
			t.Fatalf("String %q: %v", c.String(), err) // six digits may miss the sum, nothing else
		}
	})
}
