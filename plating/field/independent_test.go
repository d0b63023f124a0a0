package field

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// dense returns the matrices of both layers without compression, and the panels.
func dense(t *testing.T, p MeshProblem) (g, k *mat.Dense, c *cell) {
	t.Helper()
	c, err := p.assemble(&MeshOptions{Equation: Direct})
	if err != nil {
		t.Fatal(err)
	}
	newTree(c.p)
	c.p.rules()
	n := c.p.len()
	if n > 2000 {
		t.Fatal("too large for a dense factorisation")
	}
	g, k = mat.NewDense(n, n, nil), mat.NewDense(n, n, nil)
	for i := range n {
		for j := range n {
			a, b := layers(&c.p.tri[j], c.p.n[j], c.p.at[i])
			g.Set(i, j, a/fourPi)
			k.Set(i, j, b/fourPi)
		}
	}
	return g, k, c
}

// The same equations with analytic integrals everywhere, no compression and a
// direct factorisation.
func TestIndependentDense(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(cube(12, 1, r3.Vec{}, 2).surface("", current.Cathode))
	g, k, c := dense(t, p)
	n := c.p.len()
	rhs := mat.NewVecDense(n, nil)
	// First kind: G·q = -1 for φ∞ = 1 and φ = 0; the current density is -q.
	for i := range n {
		rhs.SetVec(i, 1)
	}
	var q mat.VecDense
	if err := q.SolveVec(g, rhs); err != nil {
		t.Fatal(err)
	}
	s := solve(t, p, MeshOptions{})
	compare := func(name string, s *MeshSolution, tol float64) {
		worst := 0.0
		for i := range n {
			worst = max(worst, math.Abs(float64(s.Surfaces[0].Density[c.p.local[i]])/q.AtVec(i)-1))
		}
		t.Logf("%s: largest local difference from dense %.1e", name, worst)
		if !(worst < tol) {
			t.Errorf("%s: largest local difference %.1e, want %.0e", name, worst, tol)
		}
	}
	compare("single layer", s, 5e-4)
	compare("direct", solve(t, p, MeshOptions{Equation: Direct}), 5e-4)
	compare("tight", solve(t, p, MeshOptions{Tolerance: 1e-7}), 3e-4)
	for i := range n {
		sum := 0.0
		for j := range n {
			sum += k.At(i, j)
		}
		if math.Abs(sum-0.5) > 1e-10 {
			t.Fatalf("row %d of the exact double layer sums to %.12f", i, sum)
		}
	}
}

// Linear kinetics in a tank, dense against compressed, panel by panel: the
// thinnest spot must not depend on the compression.
func TestIndependentTank(t *testing.T) {
	p := hung(10, 6, 2)
	p.Surfaces[0].Law = butlerVolmer(200, 2) // nearly linear
	g, k, c := dense(t, p)
	n := c.p.len()
	s := solve(t, p, MeshOptions{})
	// Put the solution into the exact equations: the residual in volts.
	phi, q := make([]float64, n), make([]float64, n)
	for i := range n {
		r := s.result(int(c.p.surface[i]))
		phi[i] = float64(r.Potential[c.p.local[i]])
		q[i] = -float64(r.Density[c.p.local[i]]) / 20
	}
	worst := 0.0
	for i := range n {
		sum, row := 0.0, 0.0
		for j := range n {
			sum += k.At(i, j)*phi[j] - g.At(i, j)*q[j]
			row += k.At(i, j)
		}
		worst = max(worst, math.Abs(sum-row*phi[i]))
	}
	t.Logf("residual in the exact equations %.1e V of 2 V", worst)
	if !(worst < 1e-4) {
		t.Errorf("residual %.1e V in the exact equations", worst)
	}
}

// result returns a surface or wall by its number.
func (s *MeshSolution) result(k int) *MeshResult {
	if k < len(s.Surfaces) {
		return &s.Surfaces[k]
	}
	return &s.Walls[k-len(s.Surfaces)]
}

// Two equations for one problem.
func TestIndependentFormulations(t *testing.T) {
	testdata.SlowOnly(t)
	p := one(sphere(12, 1, r3.Vec{}).stretched(1, 1, 2).surface("a", current.Cathode),
		cube(12, 1, r3.Vec{X: 3}, 2).surface("b", current.Anode))
	a := solve(t, p, MeshOptions{Equation: SingleLayer})
	b := solve(t, p, MeshOptions{Equation: Direct})
	c := solve(t, p, MeshOptions{Galerkin: true})
	near2(t, "current, direct", float64(b.Current), float64(a.Current), 1e-3)
	near2(t, "current, averaged", float64(c.Current), float64(a.Current), 2e-3)
	t.Logf("currents %.6f %.6f %.6f", a.Current, b.Current, c.Current)
}

// Reciprocity: a current through one electrode and the potential of another,
// currentless one can change places.
func TestIndependentReciprocity(t *testing.T) {
	testdata.SlowOnly(t)
	box := &Box{High: r3.Vec{X: .2, Y: .1, Z: .1}, Panel: 0.0125, Walls: []Wall{{Face: LowX, Kind: current.Cathode}}}
	resistance := func(driven int) float64 {
		a := cube(8, 0.03, r3.Vec{X: .08, Y: .03, Z: .04}, 1.5).surface("a", current.Floating)
		b := sphere(8, 0.012, r3.Vec{X: .15, Y: .06, Z: .06}).surface("b", current.Floating)
		s := []Boundary{a, b}
		s[driven].Kind = current.Anode
		r := solve(t, MeshProblem{Conductivity: 20, Box: box, Surfaces: s, Drive: current.ByCurrent(1)}, MeshOptions{})
		return float64(r.Surfaces[1-driven].Metal) / float64(r.Current)
	}
	ab, ba := resistance(0), resistance(1)
	t.Logf("R_ab %.6f, R_ba %.6f ohm", ab, ba)
	near2(t, "reciprocal resistance", ab, ba, 5e-3)
}

// The current balance is not forced; it closes as the mesh gets finer.
func TestIndependentBalance(t *testing.T) {
	testdata.SlowOnly(t)
	a := solve(t, hung(8, 4, 1.5), MeshOptions{}).Checks.CurrentImbalance
	b := solve(t, hung(16, 10, 1.5), MeshOptions{}).Checks.CurrentImbalance
	if a == 0 || math.Abs(b) > 0.6*math.Abs(a) || math.Abs(b) > 5e-3 {
		t.Errorf("imbalance %.2e, then %.2e", a, b)
	}
}

// A held current and a held voltage are two ways to one solution.
func TestIndependentDrive(t *testing.T) {
	p := hung(8, 5, 1.5)
	a := solve(t, p, MeshOptions{})
	p.Drive = current.ByCurrent(a.Current)
	b := solve(t, p, MeshOptions{})
	near2(t, "voltage", float64(b.CellVoltage), 2, 1e-6)
	near2(t, "minimum", float64(b.Surfaces[0].Minimum.Density), float64(a.Surfaces[0].Minimum.Density), 1e-5)
	if a.Surfaces[0].Metal != 0 || a.Walls[LowX].Metal != 2*units.Volt {
		t.Errorf("metals at %v and %v, want the cathode at 0 and the anode at 2 V", a.Surfaces[0].Metal, a.Walls[LowX].Metal)
	}
}

// The same worker count gives the same bits; another one the same digits.
func TestIndependentWorkers(t *testing.T) {
	p := hung(6, 4, 1.5)
	a := solve(t, p, MeshOptions{Workers: 2})
	b := solve(t, p, MeshOptions{Workers: 2})
	c := solve(t, p, MeshOptions{Workers: 3})
	for k, j := range a.Surfaces[0].Density {
		if j != b.Surfaces[0].Density[k] {
			t.Fatalf("triangle %d: %v, then %v", k, j, b.Surfaces[0].Density[k])
		}
		near2(t, "three workers", float64(c.Surfaces[0].Density[k]), float64(j), 1e-6)
	}
}

func TestIndependentCancel(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	seen := 0
	_, err := Solve(ctx, hung(16, 8, 1.5), MeshOptions{Progress: func(stage string, done, total int) {
		if done < seen && stage == "operator" || done > total {
			t.Errorf("%s: %d of %d after %d", stage, done, total, seen)
		}
		if seen = done; done > total/3 {
			cancel()
		}
	}})
	if err != context.Canceled {
		t.Errorf("error %v, want %v", err, context.Canceled)
	}
}
