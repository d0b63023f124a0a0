package axi_test

import (
	"fmt"
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestIndependentFarPotential counts the current by the potential far away:
// I = 4πκR (V - φ), less terms in 1/R².
func TestIndependentFarPotential(t *testing.T) {
	for _, p := range []Revolved{{Profile: Rod(1, -1, 1)}, {Profile: spheroid(1, 0.2)}, {Profile: Rod(1, -1, 1),
		Law: current.LinearLaw(1)}} {
		s := solve(t, alone(p), single)
		for _, at := range []Point{{3e4, 0}, {0, 3e4}, {2e4, -2e4}} {
			phi, err := s.Potential(at)
			if err != nil {
				t.Fatal(err)
			}
			far := math.Hypot(float64(at.R), float64(at.Z))
			near(t, "current", 4*math.Pi*far*(1-float64(phi)), float64(s.Current), 1e-8)
		}
	}
}

// TestIndependentPotential: the potential in the bath between concentric
// spheres, near the surface as well.
func TestIndependentPotential(t *testing.T) {
	bath := Electrolyte{Conductivity: 20, Extent: Vessel, Shape: Ball(50*mm, 0),
		Walls: []WallSegment{{Kind: current.Anode}}}
	s := solve(t, ProfileProblem{Bath: bath, Parts: []Revolved{{Profile: Ball(10*mm, 0)}}, Drive: current.ByVoltage(1)},
		single)
	for _, r := range []float64{10.0001, 10.01, 11, 20, 40, 49.9, 49.9999} {
		phi, err := s.Potential(Point{units.Length(r * 1e-3 * 0.6), units.Length(r * 1e-3 * 0.8)})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "potential", 1+float64(phi), 1+(1/10.0-1/r)/(1/10.0-1/50.0), 1e-9)
	}
	for _, r := range []units.Length{0, 5 * mm, 60 * mm} {
		if v, err := s.Potential(Point{r, 0}); err == nil {
			t.Errorf("potential %v at r = %v, which is not in the bath", v, r)
		}
	}
}

// TestIndependentHole: a blind hole with its mouth at a fixed potential, linear
// kinetics on its wall, insulating floor, against the exact series
//
//	θ = Σ 2 Bi J0(μ r/a) cosh(μ z/a) / ((Bi²+μ²) J0(μ) cosh(μ D/a)),  μ J1(μ) = Bi J0(μ)
//
// and, for a narrow hole, against the one-dimensional formula: the ratio of
// bottom to mouth is 1/cosh ν with ν² = 4D²/(κρd), off by about Bi.
// Source: [Derived], by separation of variables.
func TestIndependentHole(t *testing.T) {
	const a, kappa = 1e-3, 20.0
	for _, row := range []struct{ aspect, nu float64 }{{10, 1}, {10, 2}, {5, 2}, {2.5, 1}, {1, 1}} {
		depth := row.aspect * 2 * a
		rho := 4 * depth * depth / (kappa * 2 * a * row.nu * row.nu)
		bath := Tank(kappa, a, units.Length(depth)).
			With(WallSegment{Segment: TankSide, Kind: current.Cathode,
				Law: current.LinearLaw(units.AreaResistance(rho))}).
			With(WallSegment{Segment: TankSurface, Kind: current.Anode})
		s := solve(t, ProfileProblem{Bath: bath, Drive: current.ByVoltage(1)}, order(10, 3))
		wall := s.Walls[0]
		bi := a / (kappa * rho)
		var roots [400]float64
		for k := range roots {
			roots[k] = robinRoot(bi, k)
		}
		exact := func(z float64) float64 {
			sum := 0.0
			for _, mu := range roots {
				ratio := math.Exp(mu*(z-depth)/a) * (1 + math.Exp(-2*mu*z/a)) / (1 + math.Exp(-2*mu*depth/a))
				sum += 2 * bi / (bi*bi + mu*mu) * ratio
			}
			return sum / rho
		}
		near(t, "bottom", float64(wall.Whole.Min), exact(0), 1e-9)
		for _, x := range wall.Samples {
			if z := float64(x.At.Z); z < 0.97*depth {
				near(t, "wall", float64(x.Density), exact(z), 1e-7)
			}
		}
		oneD := 1 / math.Cosh(row.nu)
		near(t, "narrow hole", float64(wall.Whole.Min)*rho, oneD, 0.6*bi+1e-6)
	}
}

// robinRoot returns root k of μ J1(μ) = Bi J0(μ), between the zeros of J1 and J0.
func robinRoot(bi float64, k int) float64 {
	lo, hi := math.Max(1e-12, (float64(k)+0.25)*math.Pi-0.5), (float64(k)+0.75)*math.Pi+0.05
	if k == 0 {
		lo, hi = 1e-12, 2.404825557695773
	}
	f := func(x float64) float64 { return x*math.J1(x) - bi*math.J0(x) }
	for range 100 {
		if mid := 0.5 * (lo + hi); f(lo)*f(mid) <= 0 {
			hi = mid
		} else {
			lo = mid
		}
	}
	return 0.5 * (lo + hi)
}

// TestIndependentTafelHole: the same with Tafel kinetics on wall: bottom over
// mouth is cos²θ with √2 θ/cos θ = ν, ν formed with the slope at the mouth.
// Source: [Derived], first integral of u″ = ν² exp u, one-dimensional.
func TestIndependentTafelHole(t *testing.T) {
	const a, kappa, b = 1e-3, 20.0, 0.05
	for _, aspect := range []float64{5, 10} {
		depth := aspect * 2 * a
		for _, nu := range []float64{0.5, 1, 2} {
			mouth := nu * nu * b * kappa * 2 * a / (4 * depth * depth)
			bath := Tank(kappa, a, units.Length(depth)).
				With(WallSegment{Segment: TankSide, Kind: current.Cathode,
					Law: tafel(b, units.CurrentDensity(mouth/100))}).
				With(WallSegment{Segment: TankSurface, Kind: current.Anode})
			s := solve(t, ProfileProblem{Bath: bath, Drive: current.ByVoltage(units.Voltage(b * math.Log(100)))},
				single)
			lo, hi := 0.0, math.Pi/2
			for range 100 {
				if th := 0.5 * (lo + hi); math.Sqrt2*th < nu*math.Cos(th) {
					lo = th
				} else {
					hi = th
				}
			}
			want := math.Pow(math.Cos(lo), 2)
			near(t, "bottom over mouth", float64(s.Walls[0].Whole.Min)/mouth, want, nu*nu/(aspect*aspect)/8+1e-6)
		}
	}
}

// TestIndependentImage: the half space against a bath without end that holds
// the part and its mirror image.
func TestIndependentImage(t *testing.T) {
	for _, law := range []current.Law{{}, tafel(0.05, 1)} {
		bath := OpenWithFarAnode(20)
		two := ProfileProblem{Bath: bath, Parts: []Revolved{{Profile: Ball(10*mm, 15*mm), Law: law},
			{Profile: Ball(10*mm, -15*mm),
				Law: law}}, Drive: current.ByVoltage(0.5)}
		bath.Extent = HalfSpace
		one := ProfileProblem{Bath: bath, Parts: two.Parts[:1], Drive: two.Drive}
		a, b := solve(t, one, order(14, 3)), solve(t, two, order(14, 3))
		near(t, "current", float64(a.Current), float64(b.Parts[0].Current), 1e-9)
		near(t, "least", float64(a.Parts[0].Whole.Min), float64(b.Parts[0].Whole.Min), 1e-7)
		// Standing on the floor as a dome: half of the whole ball.
		dome := Revolved{Profile: NewProfile(Point{10 * mm, 0}).ArcAround(Point{0, 0}, 90), Law: law}
		c := solve(t, ProfileProblem{Bath: bath, Parts: []Revolved{dome}, Drive: two.Drive}, single)
		d := solve(t, ProfileProblem{Bath: OpenWithFarAnode(20), Parts: []Revolved{{Profile: Ball(10*mm, 0), Law: law}},
			Drive: two.Drive}, single)
		near(t, "dome", 2*float64(c.Current), float64(d.Current), 1e-10)
	}
}

// TestIndependentStem: a rod hung through the surface is half of a rod of twice
// the length, hung in a tank twice as deep.
func TestIndependentStem(t *testing.T) {
	half := NewProfile(Point{0, 60 * mm}).LineTo(Point{5 * mm, 60 * mm}, Point{5 * mm, 100 * mm})
	law := tafel(0.05, 1)
	a := solve(t, ProfileProblem{Bath: Tank(20, 50*mm, 100*mm).With(WallSegment{Segment: TankSide,
		Kind: current.Anode}), Parts: []Revolved{{Profile: half, Law: law}}, Drive: current.ByVoltage(0.5)}, single)
	b := solve(t, ProfileProblem{Bath: Tank(20, 50*mm, 200*mm).With(WallSegment{Segment: TankSide,
		Kind: current.Anode}),
		Parts: []Revolved{{Profile: Rod(5*mm, 60*mm, 140*mm), Law: law}}, Drive: current.ByVoltage(0.5)}, single)
	near(t, "current", 2*float64(a.Current), float64(b.Current), 1e-8)
	near(t, "least", float64(a.Parts[0].Whole.Min), float64(b.Parts[0].Whole.Min), 1e-6)
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
		bowl := Revolved{Profile: NewProfile(Point{0, -1}).ArcAround(Point{0, 0}, row.degrees), Sheet: true}
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
		(&exactCase{name: fmt.Sprint("torus, wire ", row.thick), p: alone(Revolved{Profile: Torus(1, 0,
			units.Length(row.thick))}), total: capacity, exact: exact,
			constant: row.constant, slope: 1.7, high: row.high, levels: 2}).run(t)
	}
}
