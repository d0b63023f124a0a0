package field

import (
	"fmt"
	"math"
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
