package field

import (
	"context"
	"errors"
	"runtime"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestPropertyTrapOverlap: bodies that cut each other are refused also where
// every electrode is primary and no row sums tell, and beside a sheet; sheets
// too close to each other as well.
func TestPropertyTrapOverlap(t *testing.T) {
	at := func(n int, radius float64, centre r3.Vec) Boundary {
		return sphere(n, radius, centre).surface("other", current.Cathode)
	}
	sheet := func(z float64) Boundary {
		s := disc(6, 1, 1).surface("sheet", current.Cathode)
		s.Vertices = append([]r3.Vec(nil), s.Vertices...)
		for i := range s.Vertices {
			s.Vertices[i] = r3.Add(s.Vertices[i], r3.Vec{X: 5, Z: z})
		}
		s.Sheet = true
		return s
	}
	for name, c := range map[string]struct {
		list []Boundary
		want error
	}{
		"two balls, a shallow cut":        {[]Boundary{ball(8, 1), at(8, 1, r3.Vec{X: 1.9})}, current.ErrOverlap},
		"two balls, a deep cut":           {[]Boundary{ball(8, 1), at(8, 1, r3.Vec{X: 1.5})}, current.ErrOverlap},
		"a small ball through a skin":     {[]Boundary{ball(10, 1), at(4, 0.1, r3.Vec{X: 0.99})}, current.ErrOverlap},
		"a ball in a ball, a sheet apart": {[]Boundary{ball(8, 1), at(8, 0.4, r3.Vec{}), sheet(0)}, current.ErrOverlap},
		"two sheets a hair apart":         {[]Boundary{sheet(0), sheet(1e-6)}, ErrGap},
		"two balls apart":                 {[]Boundary{ball(8, 1), at(8, 1, r3.Vec{X: 2.6})}, nil},
		"two balls and two sheets apart": {[]Boundary{ball(8, 1), at(8, 1, r3.Vec{X: 0, Y: 2.6}), sheet(0), sheet(0.8)},
			nil},
	} {
		p := one(c.list...)
		_, err := Solve(context.Background(), p, MeshOptions{})
		var m *MeshError
		switch {
		case c.want == nil && err != nil:
			t.Errorf("%s: %v", name, err)
		case c.want != nil && (!errors.Is(err, c.want) || !errors.As(err, &m) || m.Surface == ""):
			t.Errorf("%s: %v, want %v with a name", name, err, c.want)
		}
	}
}

// TestPropertyWallsAreCountedFirst: walls cut into millions of panels are refused
// before one is laid.
func TestPropertyWallsAreCountedFirst(t *testing.T) {
	p := hung(4, 6, 2)
	p.Box.Panel = units.Length(1e-5 * (p.Box.High.X - p.Box.Low.X))
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	cost, err := Estimate(p, MeshOptions{})
	runtime.ReadMemStats(&after)
	var big *CostError
	if !errors.As(err, &big) || cost.Unknowns < 1_000_000 || cost != big.Cost {
		t.Errorf("cost %+v, %v", cost, err)
	}
	if grown := after.TotalAlloc - before.TotalAlloc; grown > 10<<20 {
		t.Errorf("%d MB to find out", grown>>20)
	}
	if _, err := Solve(context.Background(), p, MeshOptions{}); !errors.Is(err, current.ErrTooLarge) {
		t.Errorf("solve: %v", err)
	}
}
