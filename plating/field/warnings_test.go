package field

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Warnings on both sides of their limits.
func TestPropertyWarningLimits(t *testing.T) {
	for _, row := range []struct {
		checks MeshChecks
		tol    float64 // of the operator
		want   string
		code   current.WarningCode
	}{
		{MeshChecks{}, 1e-5, "", 0},
		{MeshChecks{CurrentImbalance: 0.009}, 1e-5, "", 0},
		{MeshChecks{CurrentImbalance: 0.011}, 1e-5, "differ by 1.1 %", current.Unbalanced},
		{MeshChecks{CurrentImbalance: -0.011}, 1e-5, "differ by 1.1 %", current.Unbalanced},
		{MeshChecks{RowSum: 0.9e-4}, 1e-5, "", 0},
		{MeshChecks{RowSum: 1.1e-4}, 1e-5, "row sums", current.RoughShape},
		{MeshChecks{RowSum: 1.1e-4}, 1e-7, "row sums", current.RoughShape},
		{MeshChecks{RowSum: 0.9e-4}, 1e-7, "", 0},
		{MeshChecks{RowSum: 0.9e-3}, 1e-4, "", 0},
		{MeshChecks{RowSum: 1.1e-3}, 1e-4, "row sums", current.RoughShape},
		{MeshChecks{Operator: 1.9e-4}, 1e-5, "", 0},
		{MeshChecks{Operator: 2.1e-4}, 1e-5, "operator is off", current.LooseApproximation},
		{MeshChecks{Operator: 2.1e-4}, 1e-4, "", 0},
	} {
		w := (&MeshSolution{Checks: row.checks}).warnings(&model{op: &operator{tol: row.tol}})
		switch {
		case row.want == "" && len(w) > 0, row.want != "" && (len(w) != 1 || !strings.Contains(w[0].Text, row.want) ||
			w[0].Code != row.code):
			t.Errorf("%+v at tolerance %g: %v, want %q", row.checks, row.tol, w, row.want)
		}
	}
	for kind, want := range map[current.Kind]int{current.Cathode: 1, current.Anode: 0} {
		s := MeshSolution{Surfaces: []MeshResult{{Name: "bob", Kind: kind, Minimum: MeshSpot{Unresolved: true}}}}
		if w := s.warnings(&model{op: &operator{tol: 1e-5}}); len(w) != want || want > 0 && (w[0].Surface != "bob" ||
			w[0].Code != current.Unresolved || !strings.Contains(w[0].Text, "one panel")) {
			t.Errorf("%v with an unresolved spot: %v", kind, w)
		}
	}
	// A channel far too coarse says so of itself.
	s := solve(t, strip{1, 10, 5}.problem(5, 0.5), MeshOptions{})
	said := false
	for _, w := range s.Warnings {
		said = said || strings.Contains(w.Text, "too coarse")
	}
	if !said || math.Abs(s.Checks.CurrentImbalance) < 0.01 {
		t.Errorf("a channel of %d panels, imbalance %.1e: %v", s.Work.Unknowns, s.Checks.CurrentImbalance, s.Warnings)
	}
}

// A least spot is unresolved where a neighbour differs by more than a tenth, or
// where a cathode seems to dissolve.
func TestPropertyUnresolvedSpot(t *testing.T) {
	s := cube(2, 1, r3.Vec{}, 1).surface("bob", current.Cathode)
	near, far := -1, -1 // one that shares a corner with triangle 0, one that does not
	first := s.corners(0)
	for k := 1; k < len(s.Triangles); k++ {
		if c := s.corners(k); share(&first, &c) {
			near = k
		} else {
			far = k
		}
	}
	spot := func(kind current.Kind, s *Boundary, least, at, value float64) MeshSpot {
		r := MeshResult{Kind: kind, Density: make([]units.CurrentDensity, 48), Centroid: make([]r3.Vec, 48)}
		for k := range r.Density {
			r.Density[k] = units.CurrentDensity(least + 0.09*math.Abs(least))
		}
		r.Density[0] = units.CurrentDensity(least)
		r.Density[int(at)] = units.CurrentDensity(value)
		r.minimum(s)
		return r.Minimum
	}
	for _, row := range []struct {
		name             string
		kind             current.Kind
		s                *Boundary
		least, at, value float64
		want             bool
	}{
		{"even", current.Cathode, &s, 1, float64(near), 1.09, false},
		{"a neighbour a little higher", current.Cathode, &s, 1, float64(near), 1.11, true},
		{"one far off much higher", current.Cathode, &s, 1, float64(far), 5, false},
		{"a cathode that dissolves", current.Cathode, &s, -1, float64(near), -0.95, true},
		{"a cathode without current", current.Cathode, &s, 0, float64(near), 0, true},
		{"an anode dissolves", current.Anode, &s, -1, float64(near), -0.95, false},
		{"an anode, uneven", current.Anode, &s, -1, float64(near), -0.85, true},
		{"a wall", current.Cathode, &Boundary{}, 1, float64(near), 5, false},
	} {
		if got := spot(row.kind, row.s, row.least, row.at, row.value); got.Unresolved != row.want || got.Triangle != 0 ||
			float64(got.Density) != row.least {
			t.Errorf("%s: %+v", row.name, got)
		}
	}
	// The comparison of two meshes adds the change of the minimum.
	of := func(least float64, unresolved bool) *MeshSolution {
		return &MeshSolution{Surfaces: []MeshResult{{Name: "bob", Kind: current.Cathode, Total: 1,
			Density:  []units.CurrentDensity{units.CurrentDensity(least)},
			Centroid: make([]r3.Vec, 1), Minimum: MeshSpot{Density: units.CurrentDensity(least), Unresolved: unresolved}}}}
	}
	for _, row := range []struct {
		coarse, fine           float64
		onCoarse, onFine, want bool
	}{
		{1, 1, false, false, false}, {0.92, 1, false, false, false}, {1.08, 1, false, false, false}, {0.88, 1, false, false,
			true}, {1.12, 1, false, false, true},
		{1, 1, true, false, false}, {1, 1, false, true, true}, {1, math.NaN(), false, false, true}, {1, 0, false, false,
			true},
	} {
		d, err := Compare(of(row.coarse, row.onCoarse), of(row.fine, row.onFine))
		if err != nil || len(d) != 1 || d[0].Unresolved != row.want {
			t.Errorf("%+v: %+v, %v", row, d, err)
		}
	}
}

// The largest density of a primary solution grows at an edge with every
// refinement; a percentile and the density at a place settle.
func TestPropertyTrapEdge(t *testing.T) {
	testdata.SlowOnly(t)
	top := func(n int) (most, high, middle float64) {
		s := solve(t, one(cube(n, 1, r3.Vec{}, 1).surface("", current.Cathode)), MeshOptions{})
		r := &s.Surfaces[0]
		for _, j := range r.Density {
			most = max(most, float64(j))
		}
		p, err := r.Percentile(0.5)
		if err != nil {
			t.Fatal(err)
		}
		return most, float64(p), float64(r.Density[r.nearest(r3.Vec{X: 0.5, Y: 0.05})])
	}
	m1, h1, c1 := top(10)
	m2, h2, c2 := top(30)
	if !(m2 > 1.3*m1) {
		t.Errorf("largest density %.4g, then %.4g: no edge singularity", m1, m2)
	}
	near2(t, "median", h2, h1, 0.03)
	near2(t, "at the middle", c2, c1, 0.02)
}

// Floating metal is no insulator, and the warning says which end dissolves.
func TestPropertyTrapFloating(t *testing.T) {
	at := func(kind current.Kind) *MeshSolution {
		mid := sphere(8, 0.01, r3.Vec{X: .05, Y: .05, Z: .05}).surface("bezel", kind)
		if kind == current.Floating {
			mid.Law = butlerVolmer(1, 0.05)
		}
		box := &Box{High: r3.Vec{X: .1, Y: .1, Z: .1}, Walls: []Wall{{Face: LowX, Kind: current.Anode},
			{Face: HighX, Kind: current.Cathode}}}
		return solve(t, MeshProblem{Conductivity: 20, Box: box, Surfaces: []Boundary{mid}, Drive: current.ByVoltage(5)},
			MeshOptions{})
	}
	f, i := at(current.Floating), at(current.Insulator)
	r := &f.Surfaces[0]
	if len(f.Warnings) == 0 || f.Warnings[0].Surface != "bezel" || f.Warnings[0].Code != current.Bipolar {
		t.Errorf("warnings %v, want one of the bezel", f.Warnings)
	}
	if math.Abs(float64(r.Total)) > 1e-9 {
		t.Errorf("net current %v", r.Total)
	}
	plating := r.Density[r.nearest(r3.Vec{X: .04, Y: .05, Z: .05})]
	dissolving := r.Density[r.nearest(r3.Vec{X: .06, Y: .05, Z: .05})]
	if !(plating > 0 && dissolving < 0) {
		t.Errorf("%v at the end to the anode, %v at the other; want the first to plate", plating, dissolving)
	}
	if !(f.Current > 1.005*i.Current) {
		t.Errorf("current %v past metal, %v past an insulator", f.Current, i.Current)
	}
}

// A gap that is narrow for its panels and metal that is thin for them are said once for
// each surface, however many panels show it.
func TestPropertyGeometrySaidOnce(t *testing.T) {
	notes := func(s ...Boundary) map[string]int {
		p := one(s...)
		c, err := p.assemble(&MeshOptions{})
		if err != nil {
			t.Fatal(err)
		}
		tree := newTree(c.p)
		c.p.rules()
		list, err := c.geometry(tree)
		if err != nil {
			t.Fatal(err)
		}
		count := map[string]int{}
		for _, w := range list {
			count[w.Surface+", "+w.Code.String()]++
		}
		return count
	}
	left := cube(5, 1, r3.Vec{}, 1).surface("left", current.Cathode) // panels of 0.2
	for gap, want := range map[float64]map[string]int{
		0.12:  {}, // more than half a panel
		0.086: {"left, narrow gap": 1, "right, narrow gap": 1},
	} {
		right := cube(5, 1, r3.Vec{X: 1 + gap}, 1).surface("right", current.Cathode)
		if got := notes(left, right); !reflect.DeepEqual(got, want) {
			t.Errorf("a gap of %g: %v, want %v", gap, got, want)
		}
	}
	dial := cube(5, 1, r3.Vec{}, 1).stretched(1, 1, 0.03).surface("dial", current.Cathode)
	if got, want := notes(dial), map[string]int{"dial, thin metal": 1}; !reflect.DeepEqual(got, want) {
		t.Errorf("a thin dial: %v, want %v", got, want)
	}
}
