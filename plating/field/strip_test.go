package field

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
)

// A strip of half width a on the floor of an insulating channel of half width
// b under a plane electrode at height h, by half. Source: [Derived], [DLMF] 20
// and 22.2: u = sn(K·x/b) with the nome exp(-π·h/b) maps the channel onto the
// half plane; the electrodes then are |u| < w = sn(K·a/b) and |u| > 1/k; u/w
// turns them into the sides of a rectangle with the modulus λ = k²w².
type strip struct{ a, b, h float64 }

// theta returns the four theta functions at z for the nome q.
func theta(z, q float64) (t1, t2, t3, t4 float64) {
	t3, t4 = 1, 1
	for n := range 40 {
		p, s := math.Pow(q, (float64(n)+0.5)*(float64(n)+0.5)), 1-2*float64(n%2)
		t1 += 2 * s * p * math.Sin(float64(2*n+1)*z)
		t2 += 2 * p * math.Cos(float64(2*n+1)*z)
		if n > 0 {
			p = math.Pow(q, float64(n*n))
			t3 += 2 * p * math.Cos(float64(2*n)*z)
			t4 += 2 * s * p * math.Cos(float64(2*n)*z)
		}
	}
	return t1, t2, t3, t4
}

// completeK returns the complete elliptic integral of the first kind of the
// parameter 1 - m1, by the arithmetic-geometric mean. Source: [DLMF], 19.8(i).
func completeK(m1 float64) float64 {
	a, b := 1.0, math.Sqrt(m1)
	for range 30 {
		a, b = (a+b)/2, math.Sqrt(a*b)
	}
	return math.Pi / (2 * a)
}

// jacobi returns sn, cn and dn at K·x/b, and K.
func (s strip) jacobi(x float64) (sn, cn, dn, k float64) {
	q := math.Exp(-math.Pi * s.h / s.b)
	_, o2, o3, o4 := theta(0, q)
	t1, t2, t3, t4 := theta(math.Pi*x/(2*s.b), q)
	return o3 / o2 * t1 / t4, o4 / o2 * t2 / t4, o4 / o3 * t3 / t4, math.Pi / 2 * o3 * o3
}

// factor returns I/(κ·V) a depth of half the strip.
func (s strip) factor() float64 {
	w, _, _, _ := s.jacobi(s.a)
	_, o2, o3, _ := theta(0, math.Exp(-math.Pi*s.h/s.b))
	lambda := math.Pow(o2/o3, 4) * w * w
	return completeK(1-lambda) / completeK(lambda)
}

// density returns the current density at x for κ = V = 1.
func (s strip) density(x float64) float64 {
	w, _, _, _ := s.jacobi(s.a)
	_, o2, o3, _ := theta(0, math.Exp(-math.Pi*s.h/s.b))
	lambda := math.Pow(o2/o3, 4) * w * w
	sn, cn, dn, k := s.jacobi(x)
	u := sn / w
	return k / s.b * cn * dn / (w * completeK(lambda) * math.Sqrt((1-u*u)*(1-lambda*u*u)))
}

// problem makes half of the channel, 0 < x < b, n panels on the strip.
func (s strip) problem(n int, depth float64) MeshProblem {
	var x []float64
	for i := range n {
		x = append(x, s.a*(1-math.Pow(1-float64(i)/float64(n), 2)))
	}
	m := int(math.Round(float64(n) * math.Sqrt((s.b-s.a)/s.a)))
	for i := range m + 1 {
		x = append(x, s.a+(s.b-s.a)*math.Pow(float64(i)/float64(m), 2))
	}
	var z []float64
	for i := range n + 1 {
		z = append(z, s.h*math.Pow(float64(i)/float64(n), 1.5))
	}
	whole := boxMesh(x, graded(max(3, n/5), 0, depth, 1.5), z).inverted().surface("", current.Insulator)
	whole.Vessel = true
	low := func(v r3.Vec) bool { return v.Z == 0 && v.X < s.a }
	floor, top := subsetOf(whole, low), subsetOf(whole, func(v r3.Vec) bool { return v.Z > s.h*(1-1e-12) })
	rest := subsetOf(whole, func(v r3.Vec) bool { return !low(v) && v.Z <= s.h*(1-1e-12) })
	floor.Kind, top.Kind = current.Cathode, current.Anode
	return MeshProblem{Conductivity: 1, Surfaces: []Boundary{floor, top, rest}, Drive: current.ByVoltage(1)}
}

// Three strips in channels: total and density against the conformal map.
func TestReferenceStripsInChannel(t *testing.T) {
	testdata.SlowOnly(t)
	const depth = 2.0
	for _, c := range []struct {
		strip
		factor          float64
		j0, j5, j9, j99 float64 // density over mean at x/a = 0, 0.5, 0.9, 0.99
		tol, rms        three
	}{
		{strip{1, 2, 1}, math.Sqrt2, 0.736057314423, 0.790458897352, 1.32079105549, 3.85780745963, three{4e-3, 1.1e-3,
			4.2e-4}, three{0.045, 0.027, 0.0135}},
		{strip{1, 4, 2}, 0.932199927283, 0.667479581678, 0.752491634976, 1.41695477273, 4.30750884549, three{0.018, 4.8e-3,
			1.5e-3}, three{0.058, 0.032, 0.016}},
		{strip{1, 10, 5}, 0.613565486558, 0.641994537931, 0.738193039264, 1.45287285561, 4.47646221162, three{0.055, 0.016,
			4.8e-3}, three{0.11, 0.045, 0.022}},
	} {
		near2(t, "shape factor", c.strip.factor(), c.factor, 1e-11)
		for x, want := range map[float64]float64{0: c.j0, 0.5: c.j5, 0.9: c.j9, 0.99: c.j99} {
			near2(t, fmt.Sprint("closed form at ", x), c.density(x)*c.a/c.factor, want, 1e-10)
		}
		e := exactCase{name: fmt.Sprint(c.strip), total: amperes, exact: c.factor * depth, tol: c.tol, rms: c.rms,
			order: 0.85,
			at:    func(k int) MeshProblem { return c.problem([]int{5, 10, 20}[k], depth) },
			local: func(x r3.Vec) float64 {
				if x.X > 0.95*c.a {
					return 0
				}
				return c.density(x.X)
			}}
		if s := e.run(t); testdata.Slow() {
			r := &s[2].Surfaces[0]
			for x, want := range map[float64]float64{0.5: c.j5, 0.9: c.j9} {
				near2(t, fmt.Sprint("density over mean at ", x), interpolate(r, x)/float64(r.Mean()), want, 0.02)
			}
		}
	}
}
