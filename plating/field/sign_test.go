package field

import (
	"errors"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// deepCup is a cup with a bore of 10 mm and a depth of 28 mm.
func deepCup(t *testing.T, size units.Length) Boundary {
	t.Helper()
	const mm = units.Millimetre
	m, err := mesh.Cup(20*mm, 30*mm, 10*mm, 28*mm, mesh.Grid{Size: size})
	if err != nil {
		t.Fatal(err)
	}
	return Boundary{Name: "cup", Kind: current.Cathode, Vertices: m.Vertices, Triangles: m.Triangles}
}

// TestPropertySignRefused: on the floor of a deep primary cup with panels that
// are too large the numbers say that the cathode dissolves, which cannot be. Both
// equations say so and both are refused, with the number of panels, the place
// and the remedy.
func TestPropertySignRefused(t *testing.T) {
	for _, o := range []MeshOptions{{Galerkin: true}, {}, {Equation: Direct, Galerkin: true}} {
		s, err := Solve(t.Context(), one(deepCup(t, 4*units.Millimetre)), o)
		var e *SignError
		if !errors.As(err, &e) || !errors.Is(err, ErrSign) || s != nil {
			t.Fatalf("%+v: solution %v, %v; want a *SignError", o, s, err)
		}
		if e.Panels < 20 || e.Panels > 300 || !(e.Density < 0) || !(e.Mean > 0) || e.Surface != "cup" ||
			!(math.Hypot(e.At.X, e.At.Y) < 5.01e-3) {
			t.Errorf("%+v: %+v", o, e)
		}
		want := "averaged equation"
		if o.Galerkin {
			want = "equation at the centroids"
		}
		for _, text := range []string{"panels", " mm", "smaller panels", want} {
			if !strings.Contains(err.Error(), text) {
				t.Errorf("%+v: %q does not say %q", o, err, text)
			}
		}
	}
}

// TestPropertySignKept: what may be is not refused. A shallow cup plates on its
// floor; kinetics even out the deep one; floating metal dissolves at one end.
func TestPropertySignKept(t *testing.T) {
	const mm = units.Millimetre
	m, err := mesh.Cup(20*mm, 30*mm, 10*mm, 4*mm, mesh.Grid{Size: 4 * mm})
	if err != nil {
		t.Fatal(err)
	}
	shallow := Boundary{Name: "cup", Kind: current.Cathode, Vertices: m.Vertices, Triangles: m.Triangles}
	polarised := deepCup(t, 4*mm)
	polarised.Law = current.LinearLaw(0.1)
	floating := sphere(6, 0.01, vec(0.06, 0, 0)).surface("bezel", current.Floating)
	part := sphere(6, 0.01, vec(0, 0, 0)).surface("bob", current.Cathode)
	anode := sphere(6, 0.01, vec(0.12, 0, 0)).surface("anode", current.Anode)
	for name, p := range map[string]MeshProblem{
		"a shallow cup":  one(shallow),
		"kinetics":       one(polarised),
		"floating metal": one(part, floating, anode),
	} {
		s, err := Solve(t.Context(), p, MeshOptions{})
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if name == "floating metal" {
			least := units.CurrentDensity(0)
			for _, j := range s.Surfaces[1].Density {
				least = min(least, j)
			}
			if !(least < 0) {
				t.Errorf("%s: least density %v, want one that dissolves", name, least)
			}
		}
	}
}

// TestPropertySignLimits: the limits themselves, on figures made up: any panel of
// the wrong sign beyond rounding counts, except one along a narrow line, where
// the panels around it count.
func TestPropertySignLimits(t *testing.T) {
	box := cube(4, 1, vec(0, 0, 0), 1).surface("bob", current.Cathode)
	lined := cube(4, 1, vec(0, 0, 0), 1).inverted().surface("pot", current.Cathode) // all edges narrow
	lined.Vessel = true
	wide := cube(8, 1, vec(0, 0, 0), 1).inverted().surface("pot", current.Cathode)
	wide.Vessel = true
	inner := func(f *Boundary) int { // the panel nearest to the middle of a face
		at, least := -1, 1.0
		for k := range f.Triangles {
			c := f.corners(k)
			x := centroid(&c)
			if off := norm(r3.Sub(x, vec(0, 0, 0.5))); off < least {
				at, least = k, off
			}
		}
		return at
	}
	for _, row := range []struct {
		name     string
		f        *Boundary
		panel    int
		kind     current.Kind
		law      current.Law
		value    float64 // the mean is 1
		rest     float64 // of all others
		refused  bool
		floating bool
	}{
		{"even", &box, 5, current.Cathode, current.Law{}, 1, 1, false, false},
		{"rounding", &box, 5, current.Cathode, current.Law{}, -0.9e-5, 1, false, false},
		{"one panel", &box, 5, current.Cathode, current.Law{}, -1.2e-5, 1, true, false},
		{"an anode", &box, 5, current.Anode, current.Law{}, -1, -1, false, false},
		{"kinetics", &box, 5, current.Cathode, current.LinearLaw(1), -1, 1, false, false},
		{"floating metal about", &box, 5, current.Cathode, current.Law{}, -1, 1, false, true},
		{"along a narrow line", &lined, 0, current.Cathode, current.Law{}, -1e-2, 1, false, false},
		{"all along a narrow line", &lined, 0, current.Cathode, current.Law{}, -50, 1, true, false},
		{"next to the line", &lined, inner(&lined), current.Cathode, current.Law{}, -1e-2, 1, false, false},
		{"all next to the line", &lined, inner(&lined), current.Cathode, current.Law{}, -50, 1, true, false},
		{"away from the line", &wide, inner(&wide), current.Cathode, current.Law{}, -1e-2, 1, true, false},
	} {
		c := &cell{p: &panels{}}
		f := *row.f
		f.Kind, f.Law = row.kind, row.law
		c.surfaces = []Boundary{f}
		if row.floating {
			c.surfaces = append(c.surfaces, Boundary{Kind: current.Floating})
		}
		r := MeshResult{Name: f.Name, Kind: f.Kind, Density: make([]units.CurrentDensity, len(f.Triangles))}
		for k := range f.Triangles {
			c.p.add(f.corners(k), 0, int32(k))
			r.Density[k] = units.CurrentDensity(row.rest)
		}
		c.p.finish()
		r.Density[row.panel] = units.CurrentDensity(row.value)
		err := c.signs(&MeshSolution{Surfaces: []MeshResult{r}}, c.seams(), false, 1e-5)
		var e *SignError
		if errors.As(err, &e) != row.refused || e != nil && (e.Panels < 1 || e.Triangle != row.panel) {
			t.Errorf("%s: %v, want refused %v", row.name, err, row.refused)
		}
	}
}

func vec(x, y, z float64) r3.Vec { return r3.Vec{X: x, Y: y, Z: z} }
