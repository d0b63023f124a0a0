package field

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/kinetics"
	"example.com/laydown/testdata"
)

// Exact cases on three meshes each. The closed forms are evaluated here, from
// their definitions; figures with many digits beside them were computed by a
// separate program in 25 digits. The errors allowed are those that each mesh
// gave when the test was written, and a third more; the order of convergence
// is in the number of panels.

type three = [3]float64

// An exactCase is a case with an exact value of the total, and where there is
// one of the current density at a place.
type exactCase struct {
	name  string
	at    func(k int) Problem     // mesh k of three
	total func(*Solution) float64 // what is compared
	exact float64                 // its exact value
	tol   three                   // relative error allowed on each mesh
	order float64                 // least order of convergence
	local func(x r3.Vec) float64  // exact density on the first surface; 0 where it is not compared
	rms   three                   // relative error allowed, root mean square over the area
	o     Options
}

func amperes(s *Solution) float64 { return float64(s.Current) }

// meshes returns how many of the three meshes to run.
func meshes() int {
	if !testdata.Slow() {
		return 2
	}
	return 3
}

// run solves the meshes of a case and returns the solutions.
func (c *exactCase) run(t *testing.T) (out []*Solution) {
	t.Helper()
	var n []int
	var errs, local []float64
	for k := range meshes() {
		s := solve(t, c.at(k), c.o)
		out = append(out, s)
		n = append(n, s.Work.Unknowns)
		errs = append(errs, c.total(s)/c.exact-1)
		if !(math.Abs(errs[k]) <= c.tol[k]) {
			t.Errorf("%s: error %.2e on %d panels, want at most %.1e", c.name, errs[k], n[k], c.tol[k])
		}
		if c.local == nil {
			continue
		}
		local = append(local, scatter(&s.Surfaces[0], c.local))
		if !(local[k] <= c.rms[k]) {
			t.Errorf("%s: local error %.2e on %d panels, want at most %.1e", c.name, local[k], n[k], c.rms[k])
		}
	}
	p := order(n, errs)
	t.Logf("%s: panels %v, errors %.1e, order N^-%.2f, local %.1e", c.name, n, errs, p, local)
	if !(p >= c.order) {
		t.Errorf("%s: order N^-%.2f, want at least N^-%.2f", c.name, p, c.order)
	}
	return out
}

// scatter returns the root mean square of the relative error of the density.
func scatter(r *Result, exact func(r3.Vec) float64) float64 {
	sum, area := 0.0, 0.0
	for k, x := range r.Centroid {
		if want := exact(x); want != 0 {
			d := float64(r.Density[k])/want - 1
			sum += d * d * float64(r.Area[k])
			area += float64(r.Area[k])
		}
	}
	return math.Sqrt(sum / area)
}

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
func (s strip) problem(n int, depth float64) Problem {
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
	whole := boxMesh(x, graded(max(3, n/5), 0, depth, 1.5), z).inverted().surface("", Insulator)
	whole.Vessel = true
	low := func(v r3.Vec) bool { return v.Z == 0 && v.X < s.a }
	floor, top := subsetOf(whole, low), subsetOf(whole, func(v r3.Vec) bool { return v.Z > s.h*(1-1e-12) })
	rest := subsetOf(whole, func(v r3.Vec) bool { return !low(v) && v.Z <= s.h*(1-1e-12) })
	floor.Kind, top.Kind = Cathode, Anode
	return Problem{Tank: Tank{Conductivity: 1}, Surfaces: []Surface{floor, top, rest}, Drive: Drive{Voltage: 1}}
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
			at:    func(k int) Problem { return c.problem([]int{5, 10, 20}[k], depth) },
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

// Elliptic sheet 2:1: C = a/K(1 - b²/a²), density over mean ½/√(1-x²/a²-y²/b²).
// Source: [DLMF], 19.33.6 with c = 0.
func TestReferenceEllipticSheet(t *testing.T) {
	testdata.SlowOnly(t)
	const a, b = 2.0, 1.0
	exact := a / completeK(b*b/a/a)
	near2(t, "closed form", exact, 0.92742197457, 1e-11)
	(&exactCase{name: "sheet 2:1", total: capacitance, exact: exact, tol: three{4.3e-3, 1.1e-3, 2.7e-4}, rms: three{0.02,
		8e-3, 3.5e-3}, order: 0.9,
		at: func(k int) Problem {
			s := disc([]int{9, 18, 36}[k], 1, 2).stretched(a, b, 1).surface("sheet", Cathode)
			s.Sheet = true
			return one(s)
		},
		local: func(x r3.Vec) float64 {
			if q := x.X*x.X/(a*a) + x.Y*x.Y/(b*b); q < 0.9 {
				return 2 * exact / (a * b * math.Sqrt(1-q)) // both sides
			}
			return 0
		}}).run(t)
}

// The thinnest body: an oblate spheroid 1:100. Source: [DLMF], 19.33.6;
// [Britannica11], Electrostatics, eq. 9.
func TestReferenceThinSpheroid(t *testing.T) {
	testdata.SlowOnly(t)
	const c = 0.01
	e := math.Sqrt(1 - c*c)
	exact := e / math.Asin(e)
	near2(t, "closed form", exact, 0.64066661893414, 1e-13)
	(&exactCase{name: "oblate 1:100", total: capacitance, exact: exact, tol: three{0.015, 3.8e-3, 9.6e-4},
		rms: three{0.063, 0.019, 5.4e-3}, order: 0.9,
		at: func(k int) Problem {
			return one(sphere([]int{6, 12, 24}[k], 1, r3.Vec{}).stretched(1, 1, c).surface("", Cathode))
		},
		local: func(x r3.Vec) float64 {
			if q := x.X*x.X + x.Y*x.Y; q < 0.9 {
				return exact / math.Sqrt(1-q+q*c*c) // on the smooth surface below or above
			}
			return 0
		}}).run(t)
}

// Sphere: total and density.
func TestReferenceSphereLocal(t *testing.T) {
	testdata.SlowOnly(t)
	for _, o := range []Options{{}, {Galerkin: true}} {
		(&exactCase{name: fmt.Sprint("sphere, averaged ", o.Galerkin), total: capacitance, exact: 1, tol: three{0.015, 3.6e-3,
			9.1e-4}, rms: three{0.01, 2.7e-3, 7e-4}, order: 0.95,
			at: primarySphere, local: func(r3.Vec) float64 { return 1 }, o: o}).run(t)
	}
}

// Two plates that fill a channel: j = V/(L/κ + ρ) everywhere.
func TestReferencePlateCellMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	j := 1 / (0.03/20 + 1e-3)
	(&exactCase{name: "plates", total: amperes, exact: j * 0.04 * 0.02, tol: three{0.033, 9.4e-3, 2.7e-3},
		rms: three{0.035, 0.01, 2.8e-3}, order: 0.9,
		at: func(k int) Problem {
			return Problem{Tank: Tank{Conductivity: 20}, Surfaces: channel(0.02, 0.02, 0.03, 0.02, []int{8, 16, 32}[k],
				kinetics.LinearLaw(1e-3)), Drive: Drive{Voltage: 1}}
		},
		local: func(r3.Vec) float64 { return j }}).run(t)
}

// Two equal spheres, by images: a charge a at the middle of each, then the image
// -a·q/(d-p) at a²/(d-p) of the last one, p from its own centre. Source:
// [Derived]; the sums are the series in bispherical coordinates, C11 =
// a·sinh β·Σ 1/sinh (2n-1)β, C12 = -a·sinh β·Σ 1/sinh 2nβ, cosh β = d/2a.
func TestIndependentTwoSpheres(t *testing.T) {
	testdata.SlowOnly(t)
	const d = 2.5
	var place, charge []float64 // images, alternately in the first and in the second sphere
	for p, q := 0.0, 1.0; math.Abs(q) > 1e-18; p, q = 1/(d-p), -q/(d-p) {
		place, charge = append(place, p), append(charge, q)
	}
	var own, other float64
	for k, q := range charge {
		if k%2 == 0 {
			own += q
		} else {
			other += q
		}
	}
	beta := math.Acosh(d / 2)
	var c11, c12 float64
	for n := 1.0; n < 60; n++ {
		c11 += math.Sinh(beta) / math.Sinh((2*n-1)*beta)
		c12 -= math.Sinh(beta) / math.Sinh(2*n*beta)
	}
	near2(t, "series against images, own", c11, own, 1e-13)
	near2(t, "series against images, other", c12, other, 1e-13)
	// The field of the images of a sphere at 0 held at 1 and one at d held at v.
	density := func(v float64) func(r3.Vec) float64 {
		return func(x r3.Vec) float64 {
			x = r3.Unit(x)
			sum := 0.0
			for k, q := range charge {
				first, second := r3.Vec{X: place[k]}, r3.Vec{X: d - place[k]}
				if k%2 == 1 {
					first, second = second, first
				}
				for _, c := range []struct {
					at r3.Vec
					q  float64
				}{{first, q}, {second, v * q}} {
					r := r3.Sub(x, c.at)
					sum += c.q * r3.Dot(r, x) / math.Pow(norm(r), 3)
				}
			}
			return sum
		}
	}
	pair := func(k int, other Kind) Problem {
		n := []int{6, 12, 18}[k]
		return one(sphere(n, 1, r3.Vec{}).surface("a", Cathode), sphere(n, 1, r3.Vec{X: d}).surface("b", other))
	}
	(&exactCase{name: "two cathodes", total: capacitance, exact: 2 * (c11 + c12), tol: three{0.011, 2.8e-3, 1e-3},
		rms: three{0.018, 5.2e-3, 2.5e-3}, order: 0.9,
		at: func(k int) Problem { return pair(k, Cathode) }, local: density(1)}).run(t)
	half := density(-1)
	(&exactCase{name: "cathode and anode", total: capacitance, exact: (c11 - c12) / 2, tol: three{0.03, 7.6e-3, 2.8e-3},
		rms: three{0.015, 4.4e-3, 2e-3}, order: 0.9,
		at: func(k int) Problem { return pair(k, Anode) }, local: func(x r3.Vec) float64 { return half(x) / 2 }}).run(t)
}
