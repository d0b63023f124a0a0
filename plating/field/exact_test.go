package field

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
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
	at    func(k int) MeshProblem     // mesh k of three
	total func(*MeshSolution) float64 // what is compared
	exact float64                     // its exact value
	tol   three                       // relative error allowed on each mesh
	order float64                     // least order of convergence
	local func(x r3.Vec) float64      // exact density on the first surface; 0 where it is not compared
	rms   three                       // relative error allowed, root mean square over the area
	o     MeshOptions
}

func amperes(s *MeshSolution) float64 { return float64(s.Current) }

// meshes returns how many of the three meshes to run.
func meshes() int {
	if !testdata.Slow() {
		return 2
	}
	return 3
}

// run solves the meshes of a case and returns the solutions.
func (c *exactCase) run(t *testing.T) (out []*MeshSolution) {
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
func scatter(r *MeshResult, exact func(r3.Vec) float64) float64 {
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

// Elliptic sheet 2:1: C = a/K(1 - b²/a²), density over mean ½/√(1-x²/a²-y²/b²).
// Source: [DLMF], 19.33.6 with c = 0.
func TestReferenceEllipticSheet(t *testing.T) {
	testdata.SlowOnly(t)
	const a, b = 2.0, 1.0
	exact := a / completeK(b*b/a/a)
	near2(t, "closed form", exact, 0.92742197457, 1e-11)
	(&exactCase{name: "sheet 2:1", total: capacitance, exact: exact, tol: three{4.3e-3, 1.1e-3, 2.7e-4}, rms: three{0.02,
		8e-3, 3.5e-3}, order: 0.9,
		at: func(k int) MeshProblem {
			s := disc([]int{9, 18, 36}[k], 1, 2).stretched(a, b, 1).surface("sheet", current.Cathode)
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
		at: func(k int) MeshProblem {
			return one(sphere([]int{6, 12, 24}[k], 1, r3.Vec{}).stretched(1, 1, c).surface("", current.Cathode))
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
	for _, o := range []MeshOptions{{}, {Galerkin: true}} {
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
		at: func(k int) MeshProblem {
			return MeshProblem{Conductivity: 20, Surfaces: channel(0.02, 0.02, 0.03, 0.02, []int{8, 16, 32}[k],
				current.LinearLaw(1e-3)), Drive: current.ByVoltage(1)}
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
	pair := func(k int, other current.Kind) MeshProblem {
		n := []int{6, 12, 18}[k]
		return one(sphere(n, 1, r3.Vec{}).surface("a", current.Cathode), sphere(n, 1, r3.Vec{X: d}).surface("b", other))
	}
	(&exactCase{name: "two cathodes", total: capacitance, exact: 2 * (c11 + c12), tol: three{0.011, 2.8e-3, 1e-3},
		rms: three{0.018, 5.2e-3, 2.5e-3}, order: 0.9,
		at: func(k int) MeshProblem { return pair(k, current.Cathode) }, local: density(1)}).run(t)
	half := density(-1)
	(&exactCase{name: "cathode and anode", total: capacitance, exact: (c11 - c12) / 2, tol: three{0.03, 7.6e-3, 2.8e-3},
		rms: three{0.015, 4.4e-3, 2e-3}, order: 0.9,
		at:    func(k int) MeshProblem { return pair(k, current.Anode) },
		local: func(x r3.Vec) float64 { return half(x) / 2 }}).run(t)
}

// haring makes a cell with two cathodes at the ends, 50 mm and 250 mm from the
// faces of one anode across it. A square hole of 5 mm through the anode, in a
// corner of a quarter of the cell, joins the halves of the bath, which otherwise
// would be two. What the hole does to the currents goes like the third power
// of its width: it is 3e-5 here and below what the meshes show.
func haring(n int, law current.Law, volts float64) MeshProblem {
	const near, far, wide, hole, thick = 0.05, 0.25, 0.05, 0.005, 0.01
	across := []float64{0}
	for i := range n + 1 {
		across = append(across, hole+(wide-hole)*math.Pow(float64(i)/float64(n), 1.5))
	}
	x := append(graded(n, -near, 0, 1.5)[:n], 0, thick/2)
	x = append(x, graded(2*n, thick, thick+far, 2)...)
	mesh := filled(x, across, across, func(x, y, z float64) bool {
		return x < 0 || x > thick || y < hole &&
			z < hole
	}).inverted().surface("", current.Insulator)
	mesh.Vessel = true
	const tiny = 1e-12
	end := func(at float64) func(r3.Vec) bool { return func(v r3.Vec) bool { return math.Abs(v.X-at) < tiny } }
	wall := func(v r3.Vec) bool { return min(v.Y, v.Z, wide-v.Y, wide-v.Z) < tiny }
	first, second := subsetOf(mesh, end(-near)), subsetOf(mesh, end(thick+far))
	anode := subsetOf(mesh, func(v r3.Vec) bool { return !wall(v) && v.X > -tiny && v.X < thick+tiny })
	rest := subsetOf(mesh, wall)
	first.Kind, first.Name, first.Law = current.Cathode, "near", law
	second.Kind, second.Name, second.Law = current.Cathode, "far", law
	anode.Kind, anode.Name = current.Anode, "anode"
	return MeshProblem{Conductivity: 20, Surfaces: []Boundary{first, second, anode, rest},
		Drive: current.ByVoltage(units.Voltage(volts))}
}

// Haring-Blum cell, P = L2/L1 = 5. Linear: M = j1/j2 = (P+Wa)/(1+Wa). Tafel:
// P/M - 1 = ξ·ln M with ξ = κ·b/(j1·L1). Source: [Derived], Ohm's law in
// series with the kinetics.
func TestReferenceHaringBlum(t *testing.T) {
	testdata.SlowOnly(t)
	const kappa, l1, p = 20.0, 0.05, 5.0
	ratio := func(s *MeshSolution) float64 { return float64(s.Surfaces[0].Mean() / s.Surfaces[1].Mean()) }
	for _, c := range []struct {
		name         string
		law          current.Law
		volts, j1, m float64
		tol, rms     three
	}{
		{"linear, Wa = 0.1", current.LinearLaw(0.1 * l1 / kappa), 1, 1 / (1.1 * l1 / kappa), 5.1 / 1.1, three{0.09, 0.035,
			0.0115}, three{0.05, 0.016, 6.3e-3}},
		{"linear, Wa = 1", current.LinearLaw(l1 / kappa), 1, 1 / (2 * l1 / kappa), 3, three{0.085, 0.032, 0.011},
			three{0.024, 8.2e-3, 3e-3}},
		{"Tafel, xi = 1", tafel(1, 0.25), 0.25*math.Log(100) + 0.25, 100, 2.5714135816, three{0.065, 0.024, 8e-3},
			three{0.024, 8.3e-3, 3.1e-3}},
	} {
		if c.law.Model == current.Tafel { // the figure solves its equation
			near2(t, "closed form", p/c.m-1, math.Log(c.m), 1e-9)
		}
		e := exactCase{name: c.name, total: ratio, exact: c.m, tol: c.tol, rms: c.rms, order: 0.85,
			at:    func(k int) MeshProblem { return haring([]int{4, 7, 12}[k], c.law, c.volts) },
			local: func(r3.Vec) float64 { return c.j1 }}
		e.run(t)
	}
}

// A wedge cell of plane walls (anode 63.5 mm, cathode 101.67 mm at 38.65
// degrees), primary, by the conformal map: total, and density over mean along
// the cathode. Source: [Derived]; the density in 25 digits by a separate program.
func TestReferenceWedgeCellMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	const a, short, long, depth = 0.0635, 0.0476, 0.127, 0.03
	at := func(k int) MeshProblem {
		n := []int{8, 16, 28}[k]
		g := graded(n, 0, 1, 2)
		mesh := boxMesh(g, graded(max(2, n/6), 0, 1, 1), g).moved(func(v r3.Vec) r3.Vec {
			return r3.Vec{X: a * v.X, Y: depth * v.Y, Z: v.Z * (short + (long-short)*v.X)}
		}).inverted().surface("", current.Insulator)
		mesh.Vessel = true
		onTop := func(v r3.Vec) bool { return math.Abs(v.Z-short-(long-short)/a*v.X) < 1e-9 }
		cathode, anode := subsetOf(mesh, onTop), subsetOf(mesh, func(v r3.Vec) bool { return v.Z == 0 })
		rest := subsetOf(mesh, func(v r3.Vec) bool { return v.Z != 0 && !onTop(v) })
		anode.Kind, cathode.Kind = current.Anode, current.Cathode
		return MeshProblem{Conductivity: 1, Surfaces: []Boundary{cathode, anode, rest}, Drive: current.ByVoltage(1)}
	}
	table := [][2]float64{{0.05, 2.833749992}, {0.1, 2.134836794}, {0.2, 1.528528256}, {0.3, 1.183906323}, {0.4,
		0.927646365}, {0.5, 0.713977933},
		{0.6, 0.526012348}, {0.7, 0.357641582}, {0.8, 0.208467358}, {0.9, 0.082990998}, {0.95, 0.033044613}}
	const w = 0.787776231779 // the corners lie at 0, 1, 1+w and infinity of the half plane
	near2(t, "shape factor", completeK(1/(1+w))/completeK(w/(1+w)), 0.947006505298, 1e-11)
	wedge := exactCase{name: "wedge", total: amperes, exact: 0.947006505298 * depth, tol: three{0.025, 7.1e-3, 2.6e-3},
		order: 0.85, at: at}
	for k, s := range wedge.run(t) {
		r, worst := &s.Surfaces[0], 0.0
		for _, c := range table {
			worst = max(worst, math.Abs(interpolate(r, c[0]*a)/float64(r.Mean())/c[1]-1))
		}
		if t.Logf("largest error of the density over the mean %.1e", worst); !(worst <= three{0.4, 0.063, 0.031}[k]) {
			t.Errorf("density over mean off by %.1e on mesh %d", worst, k)
		}
	}
}

// Conditioning: panels drawn to the edges of a cube raise the condition number of
// the single layer from 1e2 to 1e4. The steps of GMRES must not follow it.
func TestPropertyTrapConditioning(t *testing.T) {
	testdata.SlowOnly(t)
	for name, at := range map[string]func(exponent float64) MeshProblem{
		"bath without end": func(e float64) MeshProblem { return one(cube(14, 1, r3.Vec{}, e).surface("", current.Cathode)) },
		"tank":             func(e float64) MeshProblem { return hung(10, 6, e) },
	} {
		var steps []int
		for _, e := range []float64{1, 2, 3} {
			steps = append(steps, solve(t, at(e), MeshOptions{}).Work.Krylov)
		}
		t.Logf("%s: %v steps at grading 1, 2, 3", name, steps)
		if steps[1] > 3*steps[0]/2 || steps[2] > 5*steps[0]/2 || steps[2] > 90 {
			t.Errorf("%s: %v steps at grading 1, 2, 3", name, steps)
		}
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
	// Which panels are looked at hangs on their order.
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

// Warnings on both sides of their limits.
func TestPropertyWarningLimits(t *testing.T) {
	for _, row := range []struct {
		checks MeshChecks
		tol    float64 // of the operator
		want   string
	}{
		{MeshChecks{}, 1e-5, ""},
		{MeshChecks{CurrentImbalance: 0.009}, 1e-5, ""},
		{MeshChecks{CurrentImbalance: 0.011}, 1e-5, "differ by 1.1 %"},
		{MeshChecks{CurrentImbalance: -0.011}, 1e-5, "differ by 1.1 %"},
		{MeshChecks{RowSum: 0.9e-4}, 1e-5, ""},
		{MeshChecks{RowSum: 1.1e-4}, 1e-5, "row sums"},
		{MeshChecks{RowSum: 1.1e-4}, 1e-7, "row sums"},
		{MeshChecks{RowSum: 0.9e-4}, 1e-7, ""},
		{MeshChecks{RowSum: 0.9e-3}, 1e-4, ""},
		{MeshChecks{RowSum: 1.1e-3}, 1e-4, "row sums"},
		{MeshChecks{Operator: 1.9e-4}, 1e-5, ""},
		{MeshChecks{Operator: 2.1e-4}, 1e-5, "operator is off"},
		{MeshChecks{Operator: 2.1e-4}, 1e-4, ""},
	} {
		w := (&MeshSolution{Checks: row.checks}).warnings(&model{op: &operator{tol: row.tol}})
		switch {
		case row.want == "" && len(w) > 0, row.want != "" && (len(w) != 1 || !strings.Contains(w[0].Text, row.want)):
			t.Errorf("%+v at tolerance %g: %v, want %q", row.checks, row.tol, w, row.want)
		}
	}
	for kind, want := range map[current.Kind]int{current.Cathode: 1, current.Anode: 0} {
		s := MeshSolution{Surfaces: []MeshResult{{Name: "bob", Kind: kind, Minimum: MeshSpot{Unresolved: true}}}}
		if w := s.warnings(&model{op: &operator{tol: 1e-5}}); len(w) != want || want > 0 && (w[0].Surface != "bob" ||
			!strings.Contains(w[0].Text, "one panel")) {
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
