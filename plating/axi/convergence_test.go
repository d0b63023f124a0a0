package axi_test

import (
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
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
	sheet := Body{Profile: NewProfile(Point{0, 0}).LineTo(Point{1, 0}), Sheet: true}
	amps := func(s *ProfileSolution) float64 { return float64(s.Current) }
	spheres := ProfileProblem{Bath: Electrolyte{Conductivity: 20, Extent: Vessel, Shape: Ball(50*mm, 0),
		Walls: []WallSegment{{Kind: current.Anode}}},
		Parts: []Body{{Profile: Ball(10*mm, 0), Law: tafel(0.05, 1)}}, Drive: current.ByVoltage(0.5)}
	return []meshCase{
		{"sphere", alone(Body{Profile: Ball(1, 0)}), 1, capacity, 2, 1e-5},
		{"prolate 2:1", alone(Body{Profile: spheroid(1, 2)}), 1.3151907222041, capacity, 2, 1e-5},
		{"oblate 1:5", alone(Body{Profile: spheroid(1, 0.2)}), 0.71547277542178, capacity, 2, 1e-5},
		{"disc sheet", alone(sheet), 2 / math.Pi, capacity, 3, 1e-7},
		{"concentric spheres, Tafel", spheres, concentric[3].current, amps, 2, 3e-5},
		{"closed cylinder h = 2a", alone(Body{Profile: Rod(1, -1, 1)}), 0, capacity, 3, 1e-6},
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
					t.Errorf("error %.1e at order %d after %.1e at order %d: less than a factor 5", h[i], 4+2*i, h[i-1], 2+2*i)
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
