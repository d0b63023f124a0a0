package coat_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

const dm2 = units.AmperePerSquareDecimetre

func goldBath(t testing.TB) *plating.OperatingBath {
	t.Helper()
	d, err := faraday.DepositOf("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	return &plating.OperatingBath{Metal: "Au", Deposit: d, Fine: 0.997, Efficiency: plating.ConstantEfficiency(0.9)}
}

// bar is a rod along z cut into n rings of equal area, whose density rises
// from 1 at the bottom to 3 at the top, in A/dm².
func bar(n int) coat.Surface {
	s := coat.Surface{Basis: "made up", MinError: 0.01}
	for i := range n {
		x := (float64(i) + 0.5) / float64(n)
		s.Patches = append(s.Patches, coat.Patch{At: r3.Vec{X: 0.01, Z: 0.1 * x}, Normal: r3.Vec{X: 1},
			Area:    units.Area(1e-3 / float64(n)),
			Density: units.CurrentDensity(1+2*x) * dm2})
	}
	return s
}

func relative(got, want float64) float64 { return math.Abs(got-want) / math.Abs(want) }

// TestIndependentLay compares with the integrals of a density that rises
// linearly from 1 to 3 A/dm².
func TestIndependentLay(t *testing.T) {
	b := goldBath(t)
	s := bar(1000)
	c, err := coat.Lay(s, b, 10*units.Minute)
	if err != nil {
		t.Fatal(err)
	}
	per, err := b.Deposit.Thickness(1*dm2, 10*units.Minute, 0.9) // for 1 A/dm²
	if err != nil {
		t.Fatal(err)
	}
	for what, pair := range map[string][2]float64{
		"mean":    {float64(c.Average), 2 * float64(per)},
		"min":     {float64(c.Min), 1.001 * float64(per)},
		"max":     {float64(c.Max), 2.999 * float64(per)},
		"ratio":   {float64(c.MinToAverage), 1.001 / 2},
		"current": {float64(c.Current), 0.2},
		"mass":    {float64(c.Mass), 0.2 * 600 * 0.9 * float64(b.Deposit.Equivalent)},
		"fine":    {float64(c.FineMass), 0.997 * 0.2 * 600 * 0.9 * float64(b.Deposit.Equivalent)},
		"p05":     {float64(c.P05), 1.1 * float64(per)},
		"p95":     {float64(c.P95), 2.9 * float64(per)},
	} {
		if d := relative(pair[0], pair[1]); d > 2e-3 && strings.HasPrefix(what, "p") || d > 1e-12 && !strings.HasPrefix(what,
			"p") {
			t.Errorf("%s: %v, want %v", what, pair[0], pair[1])
		}
	}
	// Thinner than twice the unit: the lower half.
	a, err := c.Below(s, 2*per)
	if err != nil || relative(float64(a), 0.5e-3) > 1e-9 {
		t.Errorf("below: %v %v", a, err)
	}
	// Above the unit: the mean of (x - 1) over 1..3 is 1, on the whole area.
	away, err := c.GivenAway(s, b, per)
	if want := 0.997 * float64(b.Deposit.Density) * float64(per) * 1e-3; err != nil || relative(float64(away),
		want) > 1e-9 {
		t.Errorf("given away: %v, want %v, %v", away, want, err)
	}
	d, err := c.Distribution(s)
	if err != nil || d.MinToAverage != c.MinToAverage || d.Basis != "made up" || d.Uncertainty != 0.01 {
		t.Errorf("%+v %v", d, err)
	}
}

// TestPropertyTimeKeepsTheMinThickness: after TimeFor the thinnest spot has the
// promise, with a constant efficiency and with a curve that moves the thinnest
// spot to where the current is largest.
func TestPropertyTimeKeepsTheMinThickness(t *testing.T) {
	b := goldBath(t)
	steep, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 1 * dm2, Efficiency: 0.9},
		plating.EfficiencyPoint{CurrentDensity: 3 * dm2, Efficiency: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	for name, curve := range map[string]plating.EfficiencyCurve{"constant": b.Efficiency, "steep": steep} {
		b.Efficiency = curve
		s := bar(200)
		least := 2.5 * units.Micrometre
		time, err := coat.TimeFor(s, b, least)
		if err != nil {
			t.Fatal(err)
		}
		c, err := coat.Lay(s, b, time)
		if err != nil {
			t.Fatal(err)
		}
		if relative(float64(c.Min), float64(least)) > 1e-12 {
			t.Errorf("%s: %v, promised %v", name, c.Min, least)
		}
		if thinAtTop := c.MinPatch == 199; thinAtTop != (name == "steep") {
			t.Errorf("%s: thinnest patch %d", name, c.MinPatch)
		}
		if c.EfficiencyHeld != 0 {
			t.Errorf("%s: %v held", name, c.EfficiencyHeld)
		}
		// The whole job agrees with plating.Estimate where the efficiency is constant.
		if name == "constant" {
			dist, _ := c.Distribution(s)
			r, err := plating.Estimate(&plating.Layer{Bath: *b, Area: c.PartArea, Distribution: dist, MinThickness: least,
				CurrentDensity: 2 * dm2})
			if err != nil || relative(float64(r.Time), float64(time)) > 1e-12 || relative(float64(r.Mass),
				float64(c.Mass)) > 1e-12 {
				t.Errorf("Estimate: %v and %v, %v", r.Time, time, err)
			}
		}
	}
}

func TestSelectors(t *testing.T) {
	s := bar(100)
	count := func(sel coat.Selector) int {
		n := 0
		for _, p := range s.Patches {
			if sel(p) {
				n++
			}
		}
		return n
	}
	upper := coat.InBox(r3.Vec{X: -1, Y: -1, Z: 0.05}, r3.Vec{X: 1, Y: 1, Z: 1})
	edge := [][2]r3.Vec{{{X: 0.01, Y: -1, Z: 0}, {X: 0.01, Y: 1, Z: 0}}}
	for name, c := range map[string]struct{ got, want int }{
		"box":       {count(upper), 50},
		"not":       {count(coat.Not(upper)), 50},
		"facing x":  {count(coat.Facing(r3.Vec{X: 2}, 1)), 100},
		"facing 45": {count(coat.Facing(r3.Vec{X: 1, Y: 1}, 45)), 100},
		"facing z":  {count(coat.Facing(r3.Vec{Z: 1}, 89)), 0},
		"no way":    {count(coat.Facing(r3.Vec{}, 180)), 0},
		"away":      {count(coat.AwayFrom(edge, 20*units.Millimetre)), 80},
		"both":      {count(coat.Both(upper, coat.AwayFrom(edge, 60*units.Millimetre))), 40},
	} {
		if c.got != c.want {
			t.Errorf("%s: %d, want %d", name, c.got, c.want)
		}
	}
	marked, err := s.Mark(upper)
	if err != nil {
		t.Fatal(err)
	}
	b := goldBath(t)
	all, _ := coat.Lay(s, b, 600)
	some, err := coat.Lay(marked, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	if some.MinPatch != 50 || !(some.Min > all.Min) || some.Average != all.Average || relative(float64(some.Area),
		0.5e-3) > 1e-12 {
		t.Errorf("significant half: patch %d, %v of %v", some.MinPatch, some.Area, some.PartArea)
	}
	if _, err := s.Mark(coat.Facing(r3.Vec{Z: 1}, 10)); err == nil {
		t.Error("nothing selected: no error")
	}
}

// TestPropertySum: two positions, turned end for end, half the time each, give
// an even coat; and the share of the time weighs.
func TestPropertySum(t *testing.T) {
	up, down := bar(50), bar(50)
	for i := range down.Patches {
		down.Patches[i].Density = 4*dm2 - up.Patches[i].Density
	}
	even, err := coat.Sum([]coat.Surface{up, down}, []units.Ratio{0.5, 0.5})
	if err != nil {
		t.Fatal(err)
	}
	for i, p := range even.Patches {
		if relative(float64(p.Density), float64(2*dm2)) > 1e-12 {
			t.Fatalf("patch %d: %v", i, p.Density)
		}
	}
	if up.Patches[0].Density == even.Patches[0].Density {
		t.Error("Sum changed its input")
	}
	quarter, err := coat.Sum([]coat.Surface{up, down}, []units.Ratio{0.25, 0.75})
	if err != nil || relative(float64(quarter.Patches[0].Density), 0.25*float64(up.Patches[0].Density)+
		0.75*float64(down.Patches[0].Density)) > 1e-12 {
		t.Errorf("%v %v", quarter.Patches[0].Density, err)
	}
	other := bar(49)
	for name, call := range map[string]func() error{
		"none":    func() error { _, err := coat.Sum(nil, nil); return err },
		"shares":  func() error { _, err := coat.Sum([]coat.Surface{up, down}, []units.Ratio{0.5, 0.4}); return err },
		"count":   func() error { _, err := coat.Sum([]coat.Surface{up, down}, []units.Ratio{1}); return err },
		"patches": func() error { _, err := coat.Sum([]coat.Surface{up, other}, []units.Ratio{0.5, 0.5}); return err },
		"nan": func() error {
			_, err := coat.Sum([]coat.Surface{up, down}, []units.Ratio{units.Ratio(math.NaN()), 1})
			return err
		},
	} {
		var value *units.ValueError
		if err := call(); !errors.As(err, &value) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

func TestCompare(t *testing.T) {
	b := goldBath(t)
	steep, flat := bar(100), bar(100)
	for i := range flat.Patches {
		flat.Patches[i].Density = 2 * dm2
	}
	bare := bar(100)
	bare.Patches[0].Density = 0
	out, err := coat.Compare([]coat.Way{{Name: "as it hangs", Surface: steep}, {Name: "even", Surface: flat},
		{Name: "robbed", Surface: flat, Robbed: 0.2}, {Name: "hidden spot", Surface: bare}}, b, 2*units.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	if !(out[1].SavedMass > 0 && out[1].SavedTime > 0 && math.Abs(float64(out[1].MinToAverage)-1) < 1e-12) {
		t.Errorf("an even coat saves nothing: %+v", out[1])
	}
	if relative(float64(out[2].Robbed), float64(out[2].FineMass)) > 1e-12 { // as much current, at the same efficiency
		t.Errorf("robbed %v, part %v", out[2].Robbed, out[2].FineMass)
	}
	if out[3].Err == nil || out[3].Time != 0 {
		t.Errorf("a spot without current: %+v", out[3])
	}
	metal, time := coat.Best(out)
	if fmt.Sprint(metal, time) != "[even] [even robbed]" {
		t.Errorf("best: %v %v", metal, time)
	}
	if _, err := coat.Compare(nil, b, 1e-6); err == nil {
		t.Error("no ways: no error")
	}
	if _, err := coat.Compare([]coat.Way{{Name: "hidden", Surface: bare}}, b, 1e-6); err == nil {
		t.Error("first way fails: no error")
	}
	if _, err := coat.Compare([]coat.Way{{Name: "x", Surface: flat, Robbed: -1}}, b, 1e-6); err == nil {
		t.Error("negative robber: no error")
	}
}

func TestBadInput(t *testing.T) {
	b := goldBath(t)
	for name, change := range map[string]func(*coat.Surface){
		"none":      func(s *coat.Surface) { s.Patches = nil },
		"marks":     func(s *coat.Surface) { s.Significant = []bool{true} },
		"all false": func(s *coat.Surface) { s.Significant = make([]bool, len(s.Patches)) },
		"area":      func(s *coat.Surface) { s.Patches[3].Area = 0 },
		"density":   func(s *coat.Surface) { s.Patches[3].Density = units.CurrentDensity(math.NaN()) },
		"place":     func(s *coat.Surface) { s.Patches[3].At.Y = math.Inf(1) },
		"normal":    func(s *coat.Surface) { s.Patches[3].Normal.Y = math.NaN() },
		"huge":      func(s *coat.Surface) { s.Patches[3].Density = 1e308; s.Patches[3].Area = 1e200 },
	} {
		s := bar(10)
		change(&s)
		if _, err := coat.Lay(s, b, 600); err == nil {
			t.Errorf("%s: no error", name)
		}
	}
	s := bar(10)
	for _, time := range []units.Duration{-1, units.Duration(math.NaN()), units.Duration(math.Inf(1))} {
		if _, err := coat.Lay(s, b, time); err == nil {
			t.Errorf("time %v: no error", float64(time))
		}
	}
	if _, err := coat.Lay(s, &plating.OperatingBath{}, 1); err == nil {
		t.Error("no bath: no error")
	}
	for _, least := range []units.Length{0, -1, units.Length(math.NaN())} {
		if _, err := coat.TimeFor(s, b, least); err == nil {
			t.Errorf("least %v: no error", float64(least))
		}
	}
	c, _ := coat.Lay(s, b, 600)
	other := bar(3)
	if _, err := c.Below(other, 1e-6); err == nil {
		t.Error("another surface: no error")
	}
	if _, err := c.GivenAway(other, b, 1e-6); err == nil {
		t.Error("another surface: no error")
	}
	// Current that leaves the metal dissolves and counts as no coat.
	s.Patches[0].Density = -1
	c, err := coat.Lay(s, b, 600)
	if err != nil || c.Min != 0 || c.Dissolving != s.Patches[0].Area {
		t.Errorf("%v %v %v", c.Min, c.Dissolving, err)
	}
	if _, err := c.Distribution(s); err == nil {
		t.Error("ratio zero: no error")
	}
	if got := coat.Where(s, 99); got != "nowhere on the part" {
		t.Error(got)
	}
}

func ExampleTimeFor() {
	gold, err := faraday.DepositOf("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	bath := plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9)}
	bob := coat.Surface{Basis: "measured on a trial piece", Patches: []coat.Patch{
		{At: r3.Vec{Z: 0}, Normal: r3.Vec{Z: -1}, Area: 20 * units.SquareCentimetre,
			Density: 0.2 * units.AmperePerSquareDecimetre},
		{At: r3.Vec{Z: 0.02}, Normal: r3.Vec{Z: 1}, Area: 20 * units.SquareCentimetre,
			Density: 0.4 * units.AmperePerSquareDecimetre},
	}}
	t, err := coat.TimeFor(bob, &bath, 1*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := coat.Lay(bob, &bath, t)
	fmt.Println(t, "thinnest", coat.Where(bob, c.MinPatch), err)
	fmt.Println(c.Min, "of", c.Average, "in the mean, ratio", c.MinToAverage.Percent(0))
	// Output:
	// 8 min 45 s thinnest at the bottom, facing down <nil>
	// 1 µm of 1.5 µm in the mean, ratio 67 %
}
