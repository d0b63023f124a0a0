package coat_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

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
