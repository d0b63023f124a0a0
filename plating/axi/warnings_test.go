package axi_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func has(s *ProfileSolution, c current.WarningCode) bool {
	for _, w := range s.Warnings {
		if w.Code == c && w.String() != "" {
			return true
		}
	}
	return false
}

// TestPropertyEdgeWarning: the greatest primary current density at an edge
// grows with the mesh, like h^(-1/3), and is warned of; the value at a stated
// distance settles, and so does the greatest one with kinetics.
func TestPropertyEdgeWarning(t *testing.T) {
	at := func(p Revolved, o ProfileOptions) (top, off float64) {
		s := solve(t, alone(p), o)
		if (p.Law.Model == current.Primary) != has(s, current.InfiniteEdge) {
			t.Errorf("%v: warnings %v", p.Law.Model, s.Warnings)
		}
		in, err := s.Parts[0].Between(1.9, 1.900001) // 0.1 from the edge
		if err != nil {
			t.Fatal(err)
		}
		return float64(s.Parts[0].Whole.Max), float64(in.Mean)
	}
	rod := Revolved{Profile: Rod(1, -1, 1)}
	t0, o0 := at(rod, order(8, 2))
	t1, o1 := at(rod, order(8, 5))
	if t1/t0 < 3 {
		t.Errorf("greatest value %g, then %g: an infinite one should grow by 64^(1/3)", t0, t1)
	}
	near(t, "at 0.1 a from the edge", o1, o0, 5e-6)
	rod.Law = current.LinearLaw(0.3)
	t0, _ = at(rod, order(8, 2))
	t1, _ = at(rod, order(8, 5))
	near(t, "with kinetics", t1, t0, 1e-5)
}

// TestPropertyZeroCorner: a primary recess ends in a zero, which is said.
func TestPropertyZeroCorner(t *testing.T) {
	p := cup()
	p.Parts[0].Law = current.Law{}
	s := solve(t, p, ProfileOptions{})
	if !has(s, current.ZeroCorner) || !has(s, current.InfiniteEdge) || has(s, current.Reversed) {
		t.Errorf("warnings %v", s.Warnings)
	}
}

// TestPropertyNarrowGap: a part 0.5 mm from the wall of the tank is refined for,
// and warned of when constant panels cannot follow.
func TestPropertyNarrowGap(t *testing.T) {
	testdata.SlowOnly(t)
	p := ProfileProblem{Bath: Tank(20, 60*mm, 120*mm).With(WallSegment{Segment: TankSurface, Kind: current.Anode}),
		Parts: []Revolved{{Profile: Tube(50*mm, 59.5*mm, 40*mm, 60*mm), Law: butlerVolmer(1)}}, Drive: current.ByVoltage(1)}
	s := solve(t, p, ProfileOptions{MaxUnknowns: 2000, Order: 6, Levels: 1})
	if has(s, current.NarrowGap) {
		t.Errorf("warnings %v", s.Warnings)
	}
	if s.Checks.RowSum > 1e-10 {
		t.Errorf("row sum off by %.1e", s.Checks.RowSum)
	}
	c := solve(t, p, panels(60))
	if !has(c, current.NarrowGap) {
		t.Error("constant panels longer than the gap give no warning")
	}
	if c.Checks.RowSum > 1e-10 { // the integrals hold all the same
		t.Errorf("row sum off by %.1e", c.Checks.RowSum)
	}
	near(t, "total", float64(c.Current), float64(s.Current), 2e-2)
	// Likewise the floor of a half space.
	bath := OpenWithFarAnode(20)
	bath.Extent = HalfSpace
	low := ProfileProblem{Bath: bath, Parts: []Revolved{{Profile: Rod(10*mm, 0.3*mm, 10*mm), Law: butlerVolmer(1)}},
		Drive: current.ByVoltage(0.5)}
	if s := solve(t, low, panels(40)); !has(s, current.NarrowGap) {
		t.Error("no warning of a gap above the floor")
	}
	if s := solve(t, low, single); has(s, current.NarrowGap) {
		t.Errorf("warnings %v", s.Warnings)
	}
}

// TestPropertyThinSheetOfMetal: the two sides of thin metal are no gap of bath,
// and a disc 1/1000 thick tends to the sheet.
func TestPropertyThinMetal(t *testing.T) {
	last := math.Inf(1)
	for _, thick := range []units.Length{0.1, 0.01, 0.001} {
		s := solve(t, alone(Revolved{Profile: Rod(1, -thick/2, thick/2)}), order(8, 2))
		d := capacity(s)*math.Pi/2 - 1
		if d < 0 || d > last/4 || s.Checks.Unknowns > 260 {
			t.Errorf("thickness %v: %.2e above the sheet, %d unknowns", thick, d, s.Checks.Unknowns)
		}
		last = d
	}
}

// TestPropertyUnresolved: a recess that the mesh does not resolve is said so.
func TestPropertyUnresolved(t *testing.T) {
	slot := NewProfile(Point{0, 50 * mm}).LineTo(Point{15 * mm, 50 * mm}, Point{15 * mm, 90 * mm},
		Point{2 * mm, 90 * mm}, Point{2 * mm, 55 * mm}, Point{0, 55 * mm})
	p := cup()
	p.Parts[0].Profile = slot
	p.Parts[0].Law.Exchange /= 2 // so that the Tafel law holds on the floor of the recess
	if s := solve(t, p, ProfileOptions{Panelling: Constant, Panels: 40}); !has(s, current.Unresolved) {
		t.Errorf("warnings %v, min error %g", s.Warnings, s.Parts[0].MinError)
	}
	if s := solve(t, p, ProfileOptions{}); has(s, current.Unresolved) {
		t.Errorf("warnings %v, min error %g", s.Warnings, s.Parts[0].MinError)
	}
}

// TestPropertyTafel: a Tafel law whose reverse reaction counts at the least current
// density is refused, one where it begins to count is warned of, and where it
// does not count both laws give the same distribution.
func TestPropertyTafel(t *testing.T) {
	cell := func(law current.Law) ProfileProblem {
		p := hung()
		p.Parts[0].Law = law
		p.Drive = current.ByCurrent(0.05)
		return p
	}
	full := func(j0 units.CurrentDensity) current.Law {
		return current.Law{Model: current.ButlerVolmer, Exchange: j0, Anodic: 0.5, Cathodic: 0.5, Temperature: 298.15}
	}
	least := func(s *ProfileSolution) float64 { return float64(s.Parts[0].Whole.Min) }
	mean := float64(solve(t, cell(full(1e-3)), order(6, 1)).Parts[0].Whole.Mean)
	for _, c := range []struct {
		part    float64 // exchange current density, as part of the mean
		refused bool
		warned  bool
	}{{1e-4, false, false}, {0.05, false, false}, {0.2, false, true}, {0.7, true, false}, {3, true, false}, {30, true,
		false}} {
		j0 := units.CurrentDensity(c.part * mean)
		law := current.TafelCathode(j0, 0.5, 298.15)
		s, err := Solve(t.Context(), cell(law), order(6, 1))
		var refused *current.TafelError
		if errors.As(err, &refused) != c.refused {
			t.Errorf("j0 %.3g of the mean: %v", c.part, err)
			continue
		}
		if c.refused {
			if refused.Exchange != j0 || refused.Least <= 0 || !strings.Contains(err.Error(), "Butler-Volmer") {
				t.Errorf("%+v", refused)
			}
			continue
		}
		if has(s, current.TafelLow) != c.warned {
			t.Errorf("j0 %.3g of the mean: %v", c.part, s.Warnings)
		}
		b := solve(t, cell(full(j0)), order(6, 1))
		if d := least(s)/least(b) - 1; d < -1e-9 || d > 1.2*float64(law.Neglected(s.Parts[0].Whole.Min))+1e-6 {
			t.Errorf("j0 %.3g of the mean: the least current density is %.3g above that of the full law", c.part, d)
		}
	}
}

// Warnings and refusals on both sides of their limits.

// The least current density is called unresolved when it changed by more than a
// hundredth from the coarser solution, and the currents unbalanced when they
// miss a thousandth.
func TestPropertyWarningLimits(t *testing.T) {
	var low, high, even, uneven float64 // nearest to the limits
	high, uneven = 1, 1
	for _, n := range []int{50, 60, 100, 200, 240} {
		s := solve(t, cup(), ProfileOptions{Panelling: Constant, Panels: n})
		e, b := s.Parts[0].MinError, math.Abs(s.Checks.Balance)
		if has(s, current.Unresolved) != (e > 0.01) {
			t.Errorf("%d panels: the least value changed by %.2g, warnings %v", n, e, s.Warnings)
		}
		if has(s, current.Unbalanced) != (b > 1e-3) {
			t.Errorf("%d panels: balance %.2g, warnings %v", n, b, s.Warnings)
		}
		if e > 0.01 {
			high = min(high, e)
		} else {
			low = max(low, e)
		}
		if b > 1e-3 {
			uneven = min(uneven, b)
		} else {
			even = max(even, b)
		}
	}
	if low < 0.007 || high > 0.014 || even < 7e-4 || uneven > 1.4e-3 { // else the test tests nothing
		t.Errorf("limits are between %.2g and %.2g, and between %.2g and %.2g", low, high, even, uneven)
	}
	alone := solve(t, hung(), ProfileOptions{Panelling: Constant, Panels: 8}) // the same on both meshes, and wrong
	if w := fmt.Sprint(alone.Warnings); !has(alone, current.Unresolved) || !strings.Contains(w, "single panel") ||
		alone.Parts[0].MinError > 0.01 {
		t.Errorf("a part of single panels: change %.2g, %v", alone.Parts[0].MinError, alone.Warnings)
	}
}

// A cathode beside one at a far lower potential dissolves in places, an anode
// beside a far higher one plates; with less bias neither does.
func TestPropertyReversed(t *testing.T) {
	testdata.SlowOnly(t)
	for _, row := range []struct {
		kind current.Kind
		bias units.Voltage
		want bool
	}{{current.Cathode, 0, false}, {current.Cathode, -0.8, false}, {current.Cathode, -0.9, true},
		{current.Anode, 0, false}, {current.Anode, -0.2, false}, {current.Anode,
			-0.3, true}} {
		p := hung()
		p.Parts = append(p.Parts, Revolved{Name: "second", Profile: Torus(25*mm, 60*mm, 4*mm), Kind: row.kind,
			Law: butlerVolmer(1), Bias: row.bias})
		s := solve(t, p, single)
		if has(s, current.Reversed) != row.want {
			t.Errorf("%v with a bias of %v: from %v to %v and from %v to %v, warnings %v", row.kind, row.bias,
				s.Parts[0].Whole.Min, s.Parts[0].Whole.Max, s.Parts[1].Whole.Min, s.Parts[1].Whole.Max, s.Warnings)
		}
	}
}

// An exponent is held at 640; a law driven so far is said to be.
func TestPropertyOverflowedLaw(t *testing.T) {
	for volts, want := range map[units.Voltage]bool{1: false, 1e200: false, 1e243: true} {
		p := hung()
		p.Parts[0].Law = butlerVolmer(1e-30)
		p.Bath.Walls[0].Law = current.Law{}
		p.Drive = current.ByVoltage(volts)
		if s := solve(t, p, order(6, 1)); has(s, current.OverflowedLaw) != want {
			t.Errorf("%v: warnings %v", volts, s.Warnings)
		}
	}
	// The cathodic side runs at an exponent of some 35; the anodic coefficient is none of its business.
	p := hung()
	p.Bath.Walls[0].Law = current.Law{}
	law := butlerVolmer(1e-15)
	law.Anodic, law.Cathodic = 4, 0.02
	p.Parts[0].Law, p.Drive = law, current.ByVoltage(50)
	if s := solve(t, p, order(6, 1)); has(s, current.OverflowedLaw) {
		t.Errorf("a large anodic coefficient: warnings %v", s.Warnings)
	}
}
