package axi_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// A meshCase is a problem solved on three meshes by either method, with the
// order of convergence that the constant panels should show.
type meshCase struct {
	name  string
	p     ProfileProblem
	exact float64 // of the total; 0: take the finest high-order solution
	total func(*ProfileSolution) float64
	order float64 // of constant panels in their number
	big   float64 // error allowed to 350 constant panels
}

func meshCases() []meshCase {
	sheet := Revolved{Profile: NewProfile(Point{0, 0}).LineTo(Point{1, 0}), Sheet: true}
	amps := func(s *ProfileSolution) float64 { return float64(s.Current) }
	spheres := ProfileProblem{Bath: Electrolyte{Conductivity: 20, Extent: Vessel, Shape: Ball(50*mm, 0),
		Walls: []WallSegment{{Kind: current.Anode}}},
		Parts: []Revolved{{Profile: Ball(10*mm, 0), Law: tafel(0.05, 1)}}, Drive: current.ByVoltage(0.5)}
	return []meshCase{
		{"sphere", alone(Revolved{Profile: Ball(1, 0)}), 1, capacity, 2, 1e-5},
		{"prolate 2:1", alone(Revolved{Profile: spheroid(1, 2)}), 1.3151907222041, capacity, 2, 1e-5},
		{"oblate 1:5", alone(Revolved{Profile: spheroid(1, 0.2)}), 0.71547277542178, capacity, 2, 1e-5},
		{"disc sheet", alone(sheet), 2 / math.Pi, capacity, 3, 1e-7},
		{"concentric spheres, Tafel", spheres, concentric[3].current, amps, 2, 3e-5},
		{"closed cylinder h = 2a", alone(Revolved{Profile: Rod(1, -1, 1)}), 0, capacity, 3, 1e-6},
		{"hung cylinder, Butler-Volmer", hung(), 0, amps, 2, 1e-5},
		{"recessed cup, Tafel", cup(), 0, amps, 2, 1.5e-4},
	}
}

// TestReferenceThreeMeshes solves each case with constant panels on three
// meshes and with high-order panels on three, and looks at the errors and at
// the order. Where no exact value is known, the finest high-order solution
// stands for it, and the constant panels, another formulation of the
// unknowns with no polynomial in common, converge to it.
func TestReferenceThreeMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	for _, c := range meshCases() {
		t.Run(c.name, func(t *testing.T) {
			exact := c.exact
			if exact == 0 {
				exact = c.total(solve(t, c.p, finest))
			}
			var e, n [3]float64
			for i, count := range []int{88, 176, 352} {
				s := solve(t, c.p, panels(count))
				e[i], n[i] = math.Abs(c.total(s)/exact-1), float64(s.Checks.Unknowns)
			}
			slope := math.Log(e[0]/e[2]) / math.Log(n[2]/n[0])
			t.Logf("constant: %.1e %.1e %.1e, order %.2f", e[0], e[1], e[2], slope)
			if slope < c.order-0.35 {
				t.Errorf("constant panels converge with order %.2f, want %.1f", slope, c.order)
			}
			if e[2] > c.big {
				t.Errorf("352 constant panels: error %.1e, allowed %.1e", e[2], c.big)
			}
			var h [3]float64
			for i, p := range []int{4, 6, 8} {
				s := solve(t, c.p, order(p, 2))
				h[i], n[i] = math.Abs(c.total(s)/exact-1), float64(s.Checks.Unknowns)
			}
			t.Logf("high order: %.1e %.1e %.1e with %.0f %.0f %.0f unknowns", h[0], h[1], h[2], n[0], n[1], n[2])
			const floor = 2e-10 // below it, rounding and what is left of the edges decide
			for i := 1; i < 3; i++ {
				if h[i] > math.Max(h[i-1]/5, floor) {
					t.Errorf("error %.1e at order %d after %.1e at order %d: less than a factor 5", h[i],
						4+2*i, h[i-1], 2+2*i)
				}
			}
			if h[2] > 1e-8 {
				t.Errorf("order 8: error %.1e, allowed 1e-8", h[2])
			}
		})
	}
}

// TestReferenceRecess: the least current density of the cup and of the hung
// cylinder, against the finest solution.
func TestReferenceRecess(t *testing.T) {
	long(t)
	for _, p := range []ProfileProblem{hung(), cup()} {
		least := func(o ProfileOptions) float64 { return float64(solve(t, p, o).Parts[0].Whole.Min) }
		best := least(finest)
		for _, row := range []struct {
			o   ProfileOptions
			tol float64
		}{{panels(352), 3e-3}, {order(6, 2), 2e-6}, {single, 1e-7}, {order(10, 3), 1e-9}} {
			near(t, p.Parts[0].Name, least(row.o), best, row.tol)
		}
	}
}

// TestPropertyEstimate: the error estimate is not below the true error.
func TestPropertyEstimate(t *testing.T) {
	long(t)
	for _, c := range meshCases() {
		exact := c.exact
		if exact == 0 {
			exact = c.total(solve(t, c.p, finest))
		}
		for _, o := range []ProfileOptions{{}, {Order: 6}, {Panelling: Constant, Panels: 100}} {
			s := solve(t, c.p, o)
			real := math.Abs(c.total(s)/exact - 1)
			t.Logf("%s: true %.1e, estimate %.1e", c.name, real, s.Checks.CurrentError)
			if real > s.Checks.CurrentError+1e-11 {
				t.Errorf("%s, %+v: true error %.1e above the estimate %.1e", c.name, o, real, s.Checks.CurrentError)
			}
		}
	}
}

type three = [3]float64

// An exactCase is a cell with an exact total, solved with three numbers of
// unknowns by constant panels and with three by high orders. The errors allowed
// are those seen when the test was written, and half as much again.
type exactCase struct {
	name     string
	p        ProfileProblem
	total    func(*ProfileSolution) float64
	exact    float64
	constant three   // error allowed with 88, 176 and 352 panels
	slope    float64 // least order in the number of constant panels
	high     three   // error allowed at the orders 4, 6 and 8
	levels   int
}

func amps(s *ProfileSolution) float64 { return float64(s.Current) }

func (c *exactCase) run(t *testing.T) {
	t.Helper()
	var e, n []float64
	for i, count := range []int{88, 176, 352} {
		if i == 2 && !testdata.Slow() {
			break
		}
		s := solve(t, c.p, panels(count))
		e, n = append(e, math.Abs(c.total(s)/c.exact-1)), append(n, float64(s.Checks.Unknowns))
		if !(e[i] <= c.constant[i]) {
			t.Errorf("%s: error %.1e with %.0f constant panels, allowed %.1e", c.name, e[i], n[i], c.constant[i])
		}
	}
	last := len(e) - 1
	slope := math.Log(e[0]/e[last]) / math.Log(n[last]/n[0])
	if !(slope >= c.slope) {
		t.Errorf("%s: constant panels converge with order %.2f, want at least %.2f", c.name, slope, c.slope)
	}
	var h, m []float64
	for i, p := range []int{4, 6, 8} {
		s := solve(t, c.p, order(p, c.levels))
		h, m = append(h, math.Abs(c.total(s)/c.exact-1)), append(m, float64(s.Checks.Unknowns))
		if !(h[i] <= c.high[i]) {
			t.Errorf("%s: error %.1e at order %d, allowed %.1e", c.name, h[i], p, c.high[i])
		}
	}
	t.Logf("%s: constant %.1e with %.0f, order %.2f; high order %.1e with %.0f", c.name, e, n, slope, h, m)
}

// Disc in an insulating plane. Primary: R = 1/(4κa). Source: half of the free
// disc, [DLMF] 19.33.6.
func TestReferenceDiscInPlaneMeshes(t *testing.T) {
	bath := OpenWithFarAnode(1)
	bath.Extent = HalfSpace
	disc := Revolved{Profile: NewProfile(Point{0, 0}).LineTo(Point{1, 0}), Sheet: true}
	(&exactCase{name: "primary", p: ProfileProblem{Bath: bath, Parts: []Revolved{disc}, Drive: current.ByVoltage(1)},
		total: amps, exact: 4,
		constant: three{1.7e-6, 2.4e-7, 3.3e-8}, slope: 2.6, high: three{1.4e-6, 2.3e-8, 6e-10}, levels: 2}).run(t)
	for _, row := range []struct {
		wa             float64
		constant, high three
	}{
		{0.1, three{2.1e-5, 5.3e-6, 1.3e-6}, three{1.5e-8, 4.2e-9, 7e-10}},
		{1, three{1.8e-5, 4.4e-6, 1.1e-6}, three{4.4e-8, 8e-11, 8e-11}},
		{10, three{3.5e-6, 8.4e-7, 2.1e-7}, three{6.5e-9, 3e-11, 3e-11}},
	} {
		wide := discLinear(row.wa, 60)
		want := wide + (wide-discLinear(row.wa, 30))/15 // the series converges like n^-4
		if row.wa == 1 {
			near(t, "the series at Wa = 1", want, 1/0.5859195938, 2e-10)
		}
		disc.Law = current.LinearLaw(units.AreaResistance(row.wa))
		(&exactCase{name: fmt.Sprint("Wa = ", row.wa), p: ProfileProblem{Bath: bath, Parts: []Revolved{disc},
			Drive: current.ByVoltage(1)},
			total: amps, exact: want,
			constant: row.constant, slope: 1.6, high: row.high, levels: 5}).run(t)
	}
}

// discLinear returns the current of the disc of radius 1 with linear kinetics
// at κ = V = 1, in oblate coordinates. With r² = (1+ξ²)(1-η²), z = ξη,
//
//	V - φ = Σ b_n P_2n(η) M_n(ξ), M_n(0) = 1, M_n'(0) = -(2/π)·(4ⁿ n!²/(2n)!)²
//
// on the disc ξ = 0, η = √(1-r²), and j = -Σ b_n P_2n(η) M_n'(0)/η; with
// V - Σ b_n P_2n = Wa·j, times η and P_2m, integrated over η. The total is 4·b_0.
// Source: [Derived], Laplace's equation separated; [DLMF], 14.12 for Q at ξ = 0.
func discLinear(wa float64, n int) float64 {
	points := 2*n + 2 // exact for the products of polynomials below
	slope := make([]float64, n)
	f := 1.0
	for k := range slope {
		if k > 0 {
			f *= float64(2*k) / float64(2*k-1)
		}
		slope[k] = 2 / math.Pi * f * f
	}
	a, rhs := mat.NewDense(n, n, nil), mat.NewVecDense(n, nil)
	p := make([]float64, 2*n)
	for i := range points { // Gauss-Legendre by Newton's method, moved to 0..1
		y := math.Cos(math.Pi * (float64(i) + 0.75) / (float64(points) + 0.5))
		var d float64
		for range 6 {
			p0, p1 := 1.0, y
			for k := 2; k <= points; k++ {
				p0, p1 = p1, (float64(2*k-1)*y*p1-float64(k-1)*p0)/float64(k)
			}
			d = float64(points) * (y*p1 - p0) / (y*y - 1)
			y -= p1 / d
		}
		x, w := (1+y)/2, 1/((1-y*y)*d*d)
		p[0], p[1] = 1, x
		for k := 2; k < 2*n; k++ {
			p[k] = (float64(2*k-1)*x*p[k-1] - float64(k-1)*p[k-2]) / float64(k)
		}
		for r := range n {
			rhs.SetVec(r, rhs.AtVec(r)+w*x*p[2*r])
			for c := range n {
				a.Set(r, c, a.At(r, c)+w*p[2*r]*p[2*c]*(x+wa*slope[c]))
			}
		}
	}
	var b mat.VecDense
	if err := b.SolveVec(a, rhs); err != nil {
		return math.NaN()
	}
	return 4 * b.AtVec(0)
}

// Spheroids: C as in [DLMF], 19.33.5 and 19.33.6.
func TestReferenceSpheroidMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	for _, row := range []struct {
		c, exact, slope float64
		constant, high  three
	}{
		{5, 2.1370231229200, 1.7, three{8e-5, 2e-5, 5e-6}, three{1e-12, 1e-12, 1e-12}},
		{0.5, 0.82699334313269, 1.7, three{8e-5, 2e-5, 5e-6}, three{1e-12, 1e-12, 1e-12}},
		{0.01, 0.64066661893414, 1.7, three{8e-5, 2e-5, 5e-6}, three{1e-12, 1e-12, 1e-12}},
	} {
		(&exactCase{name: fmt.Sprint("spheroid 1:", row.c), p: alone(Revolved{Profile: spheroid(1, units.Length(row.c))}),
			total: capacity, exact: row.exact,
			constant: row.constant, slope: row.slope, high: row.high, levels: 2}).run(t)
	}
}

// Concentric cylinders of 10 and 50 mm between insulating ends, 30 mm long.
func TestReferenceConcentricCylinderMeshes(t *testing.T) {
	part := NewProfile(Point{10 * mm, 0}).LineTo(Point{10 * mm, 30 * mm})
	bath := Tank(20, 50*mm, 30*mm).With(WallSegment{Segment: TankSide, Kind: current.Anode})
	near(t, "closed form, primary", concentric[0].cylinder, 20/(0.01*math.Log(5)), 1e-11)
	near(t, "closed form, linear", concentric[1].cylinder, 1/(0.01*math.Log(5)/20+5e-4), 1e-11)
	for i, row := range concentric {
		(&exactCase{name: fmt.Sprint("cylinders ", i), p: ProfileProblem{Bath: bath,
			Parts: []Revolved{{Profile: part, Law: row.law}},
			Drive: current.ByVoltage(row.volts)}, total: amps,
			exact:    row.cylinder * 2 * math.Pi * 0.01 * 0.03,
			constant: three{2.4e-3, 7.7e-4, 2.6e-4}, slope: 1.5, high: three{1.7e-6, 1.4e-8, 1e-9}, levels: 2}).run(t)
	}
}
