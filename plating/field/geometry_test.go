package field

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
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

// A gap of less than half a panel is refused, a wider one is not.
func TestPropertyTrapGap(t *testing.T) {
	testdata.SlowOnly(t)
	pair := func(gap float64) error {
		a := cube(5, 1, r3.Vec{}, 1).surface("a", current.Cathode) // panels of 0.2
		b := cube(5, 1, r3.Vec{X: 1 + gap}, 1).surface("b", current.Anode)
		_, err := Solve(t.Context(), one(a, b), MeshOptions{Equation: Direct})
		return err
	}
	if err := pair(0.05); !errors.Is(err, ErrGap) {
		t.Errorf("gap of a quarter panel: %v, want %v", err, ErrGap)
	}
	if err := pair(0.3); err != nil {
		t.Errorf("gap of one and a half panels: %v", err)
	}
	// The package lays finer panels itself where a part comes near a wall.
	// Eight panels across the face are too few for the little primary current in
	// the gap, whose sign is then refused; with some polarisation they do.
	c := cube(8, 0.04, r3.Vec{X: .022, Y: .05, Z: .05}, 1).surface("c", current.Cathode) // 2 mm from the wall
	c.Law = current.LinearLaw(1e-3)
	box := &Box{High: r3.Vec{X: .1, Y: .1, Z: .1}, Walls: []Wall{{Face: HighX, Kind: current.Anode}}}
	p := MeshProblem{Conductivity: 20, Box: box, Surfaces: []Boundary{c}, Drive: current.ByCurrent(1)}
	s := solve(t, p, MeshOptions{})
	p.Surfaces[0].Law = current.Law{}
	if _, err := Solve(t.Context(), p, MeshOptions{}); !errors.Is(err, ErrSign) {
		t.Errorf("a primary part with large panels in a narrow gap: %v, want %v", err, ErrSign)
	}
	if n := len(s.Walls[LowX].Density); n < 400 {
		t.Errorf("%d panels on the near wall", n)
	}
}

// A corner on the middle of a neighbour's edge is a hole of no width: refused
// within a surface and between two that form one body.
func TestPropertyTrapTJunction(t *testing.T) {
	refused := func(name string, p MeshProblem) {
		for _, m := range []Equation{Automatic, Direct} {
			_, err := Solve(t.Context(), p, MeshOptions{Equation: m})
			var e *MeshError
			if !errors.As(err, &e) || !errors.Is(err, ErrOpen) || e.Triangle < 0 || e.Surface == "" || e.Detail == "" ||
				e.Need == "" {
				t.Errorf("%s, method %d: %v", name, m, err)
			}
		}
	}
	s := cube(4, 1, r3.Vec{}, 1).surface("cube", current.Cathode)
	c := s.Triangles[7]
	s.Vertices = append(s.Vertices, between(s.Vertices[c[0]], s.Vertices[c[1]]))
	mid := int32(len(s.Vertices) - 1)
	s.Triangles[7] = [3]int32{c[0], mid, c[2]}
	s.Triangles = append(s.Triangles, [3]int32{mid, c[1], c[2]})
	refused("in one surface", one(s))

	whole := cube(4, 1, r3.Vec{}, 1).surface("", current.Cathode)
	top := func(v r3.Vec) bool { return v.Z == 0.5 }
	lid, rest := subsetOf(whole, top), subsetOf(whole, func(v r3.Vec) bool { return !top(v) })
	lid.Name, rest.Name = "lid", "rest"
	if _, err := Solve(t.Context(), one(lid, rest), MeshOptions{}); err != nil {
		t.Errorf("two surfaces that fit: %v", err)
	}
	refused("a finer lid", one(lid.refined(), rest))
}

// A closed surface marked as a sheet is what its outside is: nothing flows
// inside, whichever way its triangles are turned.
func TestPropertyClosedSheet(t *testing.T) {
	body := solve(t, one(ball(8, 1)), MeshOptions{})
	turned := sphere(8, 1, r3.Vec{}).inverted().surface("ball", current.Cathode)
	for _, s := range []Boundary{ball(8, 1), turned} {
		s.Sheet = true
		sheet := solve(t, one(s), MeshOptions{})
		near2(t, "current of the sheet", float64(sheet.Current), float64(body.Current), 1e-6)
		if len(sheet.Warnings) > 0 {
			t.Errorf("warnings %v", sheet.Warnings)
		}
		s.Vessel = true
		if _, err := Solve(t.Context(), one(s), MeshOptions{}); !errors.Is(err, units.ErrInconsistent) ||
			!strings.Contains(err.Error(), "a sheet and a vessel") {
			t.Errorf("a sheet that is a vessel: %v", err)
		}
	}
}

// Row sums are the last guard against bodies that cut each other between the
// panels that are looked at one by one: here a thorn of few panels.
func TestPropertyRowSumRefusal(t *testing.T) {
	testdata.SlowOnly(t)
	u := r3.Unit(r3.Vec{X: 1, Y: 1, Z: 1})
	thorn := func(height float64) MeshProblem { // a small ball with one corner drawn out towards the middle of a large one
		a := sphere(24, 0.25, r3.Scale(1.4, u)).moved(func(v r3.Vec) r3.Vec {
			off := norm(r3.Sub(v, r3.Scale(1.15, u)))
			return r3.Sub(v, r3.Scale(height*math.Exp(-off*off*1e4), u))
		})
		return one(ball(6, 1), a.surface("thorn", current.Cathode))
	}
	if _, err := Solve(t.Context(), thorn(0.05), MeshOptions{Equation: Direct}); err != nil {
		t.Errorf("a thorn that keeps clear: %v", err)
	}
	// Which panels are looked at depends on their order.
	var e *MeshError
	var err error
	for turn := range 8 {
		p := thorn(0.6)
		if _, err := Solve(t.Context(), p, MeshOptions{}); !errors.Is(err, current.ErrOverlap) {
			t.Errorf("a thorn in the ball, single layer: %v", err)
		}
		tri := p.Surfaces[1].Triangles
		p.Surfaces[1].Triangles = append(append([][3]int32{}, tri[turn:]...), tri[:turn]...)
		_, err = Solve(t.Context(), p, MeshOptions{Equation: Direct})
		if !errors.As(err, &e) || !errors.Is(err, current.ErrOverlap) || e.Surface != "thorn" {
			t.Fatalf("a thorn in the ball: %v", err)
		}
		if strings.Contains(e.Detail, "row sum") {
			break
		}
	}
	if !strings.Contains(e.Detail, "row sum") {
		t.Errorf("a thorn in the ball was never left to the row sums: %v", err)
	}
	// The limits themselves, on rows made up.
	p := &panels{surface: []int32{0, 0, 1}, local: []int32{0, 1, 0}}
	c := &cell{p: p, surfaces: []Boundary{{Name: "a"}, {Name: "b"}}}
	for _, row := range []struct {
		c       []float64
		sum     float64
		refused string
	}{
		{[]float64{0.5, 0.5, 0.5}, 0, ""},
		{[]float64{0.5, 0.491, 0.508}, 0.009, ""},
		{[]float64{0.5, 0.489, 0.508}, 0.011, "a"},
		{[]float64{0.5, 0.491, 0.511}, 0.011, "b"},
		{[]float64{1.5, 0.5, 0.5}, 1, "a"},
	} {
		sum, err := (&model{p: p, c: row.c}).rowSums(c)
		if math.Abs(sum-row.sum) > 1e-12 || (err != nil) != (row.refused != "") || err != nil && (!errors.As(err, &e) ||
			e.Surface != row.refused) {
			t.Errorf("rows %v: %g, %v; want %g and %q", row.c, sum, err, row.sum, row.refused)
		}
		if sum, err := (&model{p: p, c: row.c, single: true}).rowSums(c); sum != 0 || err != nil {
			t.Errorf("single layer: %g, %v", sum, err)
		}
	}
}
