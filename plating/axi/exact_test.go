package axi_test

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

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
	disc := Body{Profile: NewProfile(Point{0, 0}).LineTo(Point{1, 0}), Sheet: true}
	(&exactCase{name: "primary", p: ProfileProblem{Bath: bath, Parts: []Body{disc}, Drive: current.ByVoltage(1)},
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
		(&exactCase{name: fmt.Sprint("Wa = ", row.wa), p: ProfileProblem{Bath: bath, Parts: []Body{disc},
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
		(&exactCase{name: fmt.Sprint("spheroid 1:", row.c), p: alone(Body{Profile: spheroid(1, units.Length(row.c))}),
			total: capacity, exact: row.exact,
			constant: row.constant, slope: row.slope, high: row.high, levels: 2}).run(t)
	}
}

// A bowl without thickness, part of a ball of radius 1 out to the angle α:
// C = (α + sin α)/π. With the potential on the ball Σ A_n P_n(cos θ) and P_n
// = (√2/π) ∫ cos (n+½)u / √(cos u - cos θ) du from 0 to θ, it is 1 out to α
// when Σ A_n cos (n+½)u = cos u/2 there, and the charge Σ (2n+1) A_n P_n is 0
// beyond when the sum is 0 there; C = A_0 = (2/π) ∫ cos² u/2 du from 0 to α.
// Source: [Derived]; the limits are those of the disc and of the ball.
func TestIndependentBowl(t *testing.T) {
	for _, row := range []struct {
		degrees        float64
		constant, high three
	}{
		{30, three{1.7e-6, 6e-7, 1.7e-7}, three{1.8e-6, 3.5e-8, 1e-9}},
		{90, three{3.8e-5, 9.5e-6, 2.4e-6}, three{1.3e-6, 2.4e-8, 7e-10}},
		{165, three{2.3e-4, 5.7e-5, 1.5e-5}, three{3.3e-8, 6e-10, 1e-10}},
	} {
		a := row.degrees * math.Pi / 180
		bowl := Body{Profile: NewProfile(Point{0, -1}).ArcAround(Point{0, 0}, row.degrees), Sheet: true}
		(&exactCase{name: fmt.Sprint("bowl of ", row.degrees, " degrees"), p: alone(bowl), total: capacity, exact: (a +
			math.Sin(a)) / math.Pi,
			constant: row.constant, slope: 1.4, high: row.high, levels: 3}).run(t)
	}
}

// A ring of round wire, radii R and a: in toroidal coordinates, cosh μ = R/a,
//
//	C = (2/π) √(R²-a²) [Q₋½/P₋½ + 2 Σ Q(n-½)/P(n-½)] of cosh μ
//
// from the expansion of a constant, [DLMF] 14.19.6 with μ = 0, and the value of
// each term far away. Source: [Derived]; P and Q by [DLMF] 14.19.4 and 14.19.5.
func TestIndependentTorus(t *testing.T) {
	for _, row := range []struct {
		thick          float64
		constant, high three
	}{
		{1, three{4.8e-5, 1.3e-5, 3e-6}, three{4e-10, 2e-12, 1e-12}},
		{0.2, three{4.5e-6, 1.2e-6, 2.9e-7}, three{8e-11, 1e-12, 1e-12}},
	} {
		x := 2 / row.thick // R = 1
		y := math.Sqrt(x*x - 1)
		sum := 0.0
		for n := range 40 {
			const steps, top = 8000, 100.0 // the trapezoidal rule: both integrands are periodic or die out
			var p, q float64
			for k := range steps {
				p += math.Pow(x+y*math.Cos(2*math.Pi*float64(k)/steps), -float64(n)-0.5) / steps
				q += math.Pow(x+y*math.Cosh(top*2*(float64(k)-steps/2)/steps), -float64(n)-0.5) * top / steps
			}
			if n > 0 {
				q *= 2
			}
			sum += q / p
		}
		exact := 2 / math.Pi * y / x * sum
		(&exactCase{name: fmt.Sprint("torus, wire ", row.thick), p: alone(Body{Profile: Torus(1, 0,
			units.Length(row.thick))}), total: capacity, exact: exact,
			constant: row.constant, slope: 1.7, high: row.high, levels: 2}).run(t)
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
			Parts: []Body{{Profile: part, Law: row.law}},
			Drive: current.ByVoltage(row.volts)}, total: amps,
			exact:    row.cylinder * 2 * math.Pi * 0.01 * 0.03,
			constant: three{2.4e-3, 7.7e-4, 2.6e-4}, slope: 1.5, high: three{1.7e-6, 1.4e-8, 1e-9}, levels: 2}).run(t)
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
		p.Parts = append(p.Parts, Body{Name: "second", Profile: Torus(25*mm, 60*mm, 4*mm), Kind: row.kind,
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

// Floating metal that lets no current through, to the last bit, has no potential.
func TestPropertySingular(t *testing.T) {
	p := hung()
	p.Bath.Conductivity = 1e300
	p.Parts = append(p.Parts, Body{Name: "ring", Profile: Torus(40*mm, 30*mm, 4*mm), Kind: current.Floating,
		Law: butlerVolmer(1e-30)})
	for _, o := range []ProfileOptions{{}, single, quick} {
		s, err := Solve(context.Background(), p, o)
		var e *SolveError
		if s != nil || !errors.Is(err, ErrSingular) || !errors.As(err, &e) || e.Unknowns == 0 {
			t.Errorf("nothing fixes the ring: %v", err)
		}
	}
}

// A sheet that closes in itself is refused; one closed by the axis is the body
// that it encloses. A wall all covered by a part is no electrode.
func TestPropertyClosedSheetAndCoveredWall(t *testing.T) {
	if err := alone(Body{Profile: Torus(1, 0, 0.5), Sheet: true}).Check(); !errors.Is(err, ErrProfile) ||
		!strings.Contains(err.Error(), "closed sheet") {
		t.Errorf("a closed sheet: %v", err)
	}
	near(t, "a ball of sheet", capacity(solve(t, alone(Body{Profile: Ball(1, 0), Sheet: true}), single)), 1, 1e-11)
	bath := Tank(20, 60*mm, 100*mm).With(WallSegment{Segment: TankBottom, Name: "bottom",
		Kind: current.Cathode}).With(WallSegment{Segment: TankSurface, Kind: current.Anode})
	lid := Body{Name: "plate", Profile: NewProfile(Point{0, 20 * mm}).LineTo(Point{60 * mm, 20 * mm})}
	p := ProfileProblem{Bath: bath, Parts: []Body{lid}, Drive: current.ByVoltage(1)}
	if err := p.Check(); !errors.Is(err, ErrNoElectrode) || !strings.Contains(err.Error(), "wall bottom") ||
		!strings.Contains(err.Error(), "covered") {
		t.Errorf("a wall under a plate: %v", err)
	}
	p.Bath.Walls = p.Bath.Walls[1:] // covered as well, but an insulator
	near(t, "plates 80 mm apart", float64(solve(t, p, single).Current), 20*math.Pi*0.06*0.06/0.08, 1e-9)
}
