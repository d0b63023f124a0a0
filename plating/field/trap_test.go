package field

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
)

// Coplanar panels: a tree that mixes faces lets the compression stop early.
// The row sum and the local minimum tell; the total does not.
func TestPropertyTrapCoplanar(t *testing.T) {
	testdata.SlowOnly(t)
	for _, n := range []int{12, 16} {
		p := hung(n, n/2, 2)
		loose, tight := solve(t, p, MeshOptions{}), solve(t, p, MeshOptions{Tolerance: 1e-7})
		if loose.Checks.RowSum > 5e-5 {
			t.Errorf("%d panels: row sums off by %.1e", loose.Work.Unknowns, loose.Checks.RowSum)
		}
		for k, j := range tight.Surfaces[0].Density {
			if d := math.Abs(float64(loose.Surfaces[0].Density[k]/j) - 1); d > 1e-3 {
				t.Fatalf("triangle %d: %v at tolerance 1e-5, %v at 1e-7", k, loose.Surfaces[0].Density[k], j)
			}
		}
	}
}

// The tolerance shows in the local flux before it shows in the total.
func TestPropertyTrapTolerance(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(ball(26, 1))
	local := func(tol float64) (total, worst float64) {
		s := solve(t, p, MeshOptions{Tolerance: tol})
		for _, j := range s.Surfaces[0].Density {
			worst = max(worst, math.Abs(float64(j)-1))
		}
		return capacitance(s), worst
	}
	t3, w3 := local(1e-3)
	t5, w5 := local(1e-5)
	_, w7 := local(1e-7)
	t.Logf("local errors %.2e, %.2e, %.2e at tolerances 1e-3, 1e-5, 1e-7", w3, w5, w7)
	near2(t, "total at 1e-3", t3, t5, 5e-4)
	if math.Abs(w5-w7) > 3e-4 {
		t.Errorf("local error %.2e at 1e-5, %.2e at 1e-7: the default tolerance shows", w5, w7)
	}
	if w3 < w5 {
		t.Errorf("local error %.2e at 1e-3 below %.2e at 1e-5", w3, w5)
	}
}

// Where one quadrature rule hands over to the next neither may jump.
func TestPropertyTrapQuadrature(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var worst [2]float64
	for range 3000 {
		v := func() r3.Vec { return r3.Vec{X: rng.NormFloat64(), Y: rng.NormFloat64(), Z: rng.NormFloat64()} }
		p := &panels{}
		p.add(triangle{v(), v(), v()}, 0, 0)
		p.finish()
		p.rules()
		d := r3.Unit(v())
		for k, far := range []float64{nearRule, farRule} {
			x := r3.Add(p.at[0], r3.Scale(far*p.diam[0]*1.001, d))
			g, w := p.atNear(0, x)
			a, b := p.atMiddle(0, x)
			if k == 1 {
				a, b = p.far[0].atFar(x)
			}
			e := max(math.Abs(a/g-1), math.Abs(b-w)*far*p.diam[0]/g)
			worst[k] = max(worst[k], e)
		}
	}
	t.Logf("jumps %.1e from the integral to seven points, %.1e to the moments", worst[0], worst[1])
	if worst[0] > 2e-5 || worst[1] > 2e-4 {
		t.Errorf("jumps %.1e and %.1e", worst[0], worst[1])
	}
}

// The averaged equation gives a lower bound; a careless outer rule breaks it.
func TestPropertyTrapLowerBound(t *testing.T) {
	testdata.SlowOnly(t)
	last := 0.0
	for _, n := range []int{6, 10, 16} {
		c := capacitance(solve(t, one(cube(n, 1, r3.Vec{}, 2.5).surface("", current.Cathode)), MeshOptions{Galerkin: true,
			Tolerance: 1e-6}))
		if !(c > last && c < 0.66068) {
			t.Errorf("n = %d: %.7f after %.7f", n, c, last)
		}
		last = c
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
	if len(f.Warnings) == 0 || f.Warnings[0].Surface != "bezel" {
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

// Deep in a recess the current is a small part of the whole; it must not hang
// on the tolerance of the iteration.
func TestPropertyTrapRecess(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(cup(12, 0.3, 0.6).surface("cup", current.Cathode))
	a := solve(t, p, MeshOptions{})
	b := solve(t, p, MeshOptions{Tolerance: 1e-7, Converged: 1e-9})
	floor := r3.Vec{X: 0.5, Y: 0.5, Z: 0.1}
	x, y := a.Surfaces[0].Density[a.Surfaces[0].nearest(floor)], b.Surfaces[0].Density[b.Surfaces[0].nearest(floor)]
	part := float64(x / a.Surfaces[0].Mean())
	t.Logf("floor over mean %.3e, off by %.1e", part, float64(x/y)-1)
	near2(t, "floor", float64(x), float64(y), 1e-2)
	if !(part > 0 && part < 0.1) {
		t.Errorf("floor over mean %.3e", part)
	}
}

// A file in single precision scatters the normals of a flat face: a tilted cube
// read from one must fare as well as one in full.
func TestPropertyTrapSinglePrecision(t *testing.T) {
	testdata.SlowOnly(t)
	turn := func(v r3.Vec) r3.Vec {
		v = r3.NewRotation(0.4, r3.Vec{X: 1, Y: 0.3, Z: 0.2}).Rotate(v)
		return r3.Add(v, r3.Vec{X: 0.31, Y: 0.17, Z: 0.23})
	}
	single := func(x float64) float64 { return float64(float32(1e3*x)) / 1e3 } // millimetres, as files hold
	var full, short MeshProblem
	for k, p := range []*MeshProblem{&full, &short} {
		*p = hung(12, 6, 2)
		p.Box = nil
		p.Drive = current.ByCurrent(1)
		s := &p.Surfaces[0]
		seen := map[r3.Vec]r3.Vec{}
		for i, v := range s.Vertices {
			w, ok := seen[v]
			if !ok {
				if w = turn(v); k == 1 {
					w = r3.Vec{X: single(w.X), Y: single(w.Y), Z: single(w.Z)}
				}
				seen[v] = w
			}
			s.Vertices[i] = w
		}
	}
	one := MeshOptions{Workers: 1} // memory comes in pieces, of which each worker may leave one half full
	a, b := solve(t, full, one), solve(t, short, one)
	if a.Checks.RowSum > 5e-5 || b.Checks.RowSum > 1e-4 ||
		float64(b.Work.OperatorBytes) > 1.1*float64(a.Work.OperatorBytes) {
		t.Errorf("row sums off by %.1e in full and %.1e in single precision, %d and %d bytes", a.Checks.RowSum,
			b.Checks.RowSum, a.Work.OperatorBytes, b.Work.OperatorBytes)
	}
	for i, j := range a.Surfaces[0].Density {
		if d := math.Abs(float64(b.Surfaces[0].Density[i]/j) - 1); d > 1e-3 {
			t.Fatalf("triangle %d: %v in full, %v in single precision", i, j, b.Surfaces[0].Density[i])
		}
	}
}
