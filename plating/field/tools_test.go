package field

import (
	"context"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// one builds a problem of unit conductivity and voltage in an unbounded bath.
func one(s ...Boundary) MeshProblem {
	return MeshProblem{Conductivity: 1, Surfaces: s, Drive: current.ByVoltage(1)}
}

func solve(t testing.TB, p MeshProblem, o MeshOptions) *MeshSolution {
	t.Helper()
	s, err := Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// capacitance returns the length C = I/(4πκV).
func capacitance(s *MeshSolution) float64 {
	return float64(s.Current) / (4 * math.Pi * float64(s.CellVoltage))
}

// butlerVolmer returns the symmetric law j = 2·j0·sinh(η/b).
func butlerVolmer(j0, b float64) current.Law {
	l := current.Law{Model: current.ButlerVolmer, Exchange: units.CurrentDensity(j0), Temperature: 298.15}
	l.Anodic = l.Volt() / b
	l.Cathodic = l.Anodic
	return l
}

// tafel returns the cathodic law j = j0·exp(-η/b).
func tafel(j0, b float64) current.Law {
	l := current.Law{Temperature: 298.15}
	return current.TafelCathode(units.CurrentDensity(j0), l.Volt()/b, 298.15)
}

// hung is the case of the tank with which the method was chosen: a cube of
// 20 mm with graded edges in a cubic tank of 100 mm between two anode walls at
// 2 V, κ = 20 S/m, j = 2·j0·sinh(η/50 mV), j0 = 1 A/m².
func hung(n, walls int, exponent float64) MeshProblem {
	s := cube(n, 0.02, r3.Vec{}, exponent).surface("cube", current.Cathode)
	s.Law = butlerVolmer(1, 0.05)
	c := r3.Vec{X: .05, Y: .05, Z: .05}
	box := &Box{Low: r3.Scale(-1, c), High: c, Walls: []Wall{{Face: LowX, Kind: current.Anode},
		{Face: HighX, Kind: current.Anode}},
		Panel: units.Length(0.1/float64(walls) + 1e-9)}
	return MeshProblem{Conductivity: 20, Box: box, Surfaces: []Boundary{s}, Drive: current.ByVoltage(2)}
}

// order returns the order of convergence in the number of panels from the
// errors on the first and last of some meshes.
func order(n []int, err []float64) float64 {
	k := len(n) - 1
	return math.Log(math.Abs(err[0]/err[k])) / math.Log(float64(n[k])/float64(n[0]))
}

// ladder solves a case on several meshes and checks the relative error on the
// finest and the order of convergence.
func ladder(t *testing.T, exact, tol, least float64, make func(k int) MeshProblem, value func(*MeshSolution) float64,
	o MeshOptions) {
	t.Helper()
	var n []int
	var errs []float64
	for k := range 3 {
		s := solve(t, make(k), o)
		n = append(n, s.Work.Unknowns)
		errs = append(errs, value(s)/exact-1)
	}
	p := order(n, errs)
	t.Logf("panels %v, errors %.2e, order N^-%.2f", n, errs, p)
	if e := math.Abs(errs[2]); !(e <= tol) {
		t.Errorf("error %.2e on the finest mesh, want at most %.1e", e, tol)
	}
	if !(p >= least) {
		t.Errorf("order N^-%.2f, want at least N^-%.2f", p, least)
	}
}

// near2 fails unless two values agree within a relative tolerance.
func near2(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.8g, want %.8g within %.1e (off by %.1e)", what, got, want, tol, math.Abs(got/want-1))
	}
}

// interpolate returns the density at |x| on a strip, linear between the
// columns of panels next to it.
func interpolate(r *MeshResult, x float64) float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	var jl, jh, nl, nh float64
	for k, c := range r.Centroid {
		q, j := c.X, float64(r.Density[k])
		switch {
		case q <= x && q > lo+1e-9:
			lo, jl, nl = q, j, 1
		case q <= x && q > lo-1e-9:
			jl, nl = jl+j, nl+1
		case q > x && q < hi-1e-9:
			hi, jh, nh = q, j, 1
		case q > x && q < hi+1e-9:
			jh, nh = jh+j, nh+1
		}
	}
	return jl/nl + (jh/nh-jl/nl)*(x-lo)/(hi-lo)
}
