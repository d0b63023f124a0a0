package axi_test

import (
	"context"
	"errors"
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyMirror: a problem symmetrical about a height has a symmetrical
// solution, and the sense in which a profile is drawn does not matter.
func TestPropertyMirror(t *testing.T) {
	testdata.SlowOnly(t)
	s := solve(t, hung(), single)
	x := s.Parts[0].Samples
	for i := range x {
		k := len(x) - 1 - i
		near(t, "mirror", float64(x[i].Density), float64(x[k].Density), 1e-8)
	}
	back := hung()
	back.Parts[0].Profile = NewProfile(Point{0, 70 * mm}).LineTo(Point{10 * mm, 70 * mm}, Point{10 * mm, 50 * mm},
		Point{0, 50 * mm})
	r := solve(t, back, single)
	near(t, "drawn backwards", float64(r.Current), float64(s.Current), 1e-12)
	ring := hung()
	ring.Parts = append(ring.Parts, Revolved{Profile: Torus(30*mm, 60*mm, 4*mm), Law: butlerVolmer(1)})
	other := hung()
	other.Parts = append(other.Parts, Revolved{Profile: NewProfile(Point{32 * mm, 60 * mm}).ArcAround(
		Point{30 * mm, 60 * mm},
		-180).ArcAround(Point{30 * mm, 60 * mm}, -180), Law: butlerVolmer(1)})
	near(t, "ring drawn backwards", float64(solve(t, other, single).Current), float64(solve(t, ring, single).Current),
		1e-7)
}

// TestPropertyScaling: all lengths and ρκ times f leave the ratios alone and
// multiply the current of a given voltage by f.
func TestPropertyScaling(t *testing.T) {
	cell := func(f units.Length) ProfileProblem {
		return ProfileProblem{Bath: Tank(20, 60*mm*f, 120*mm*f).With(WallSegment{Segment: TankSide,
			Kind: current.Anode}), Parts: []Revolved{{Profile: Rod(10*mm*f, 50*mm*f, 70*mm*f),
			Law: current.LinearLaw(units.AreaResistance(1e-3 * float64(f)))}}, Drive: current.ByVoltage(1)}
	}
	a := solve(t, cell(1), single)
	for _, f := range []units.Length{1e-6, 0.37, 25, 1e4} {
		b := solve(t, cell(f), single)
		near(t, "current", float64(b.Current)/float64(f), float64(a.Current), 1e-10)
		near(t, "least to mean", b.Parts[0].Whole.MinToAverage(), a.Parts[0].Whole.MinToAverage(), 1e-9)
	}
}

// TestPropertyWagner: primary is the limit of a small Wagner number, uniform
// that of a large one.
func TestPropertyWagner(t *testing.T) {
	long(t)
	at := func(law current.Law) *ProfileSolution {
		p := cup()
		p.Parts[0].Law = law
		return solve(t, p, order(10, 5))
	}
	primary := at(current.Law{})
	last := math.Inf(1)
	for _, rho := range []units.AreaResistance{1e-6, 1e-8, 1e-10} {
		s := at(current.LinearLaw(rho))
		d := math.Abs(float64(s.Current/primary.Current) - 1)
		if !(d < last/20) {
			t.Errorf("ρ = %g: %.1e from the primary total, after %.1e", float64(rho), d, last)
		}
		last = d
	}
	if last > 1e-6 {
		t.Errorf("%.1e from the primary total at the smallest Wagner number", last)
	}
	for _, rho := range []units.AreaResistance{10, 1e4} {
		s := at(current.LinearLaw(rho))
		w := s.Parts[0].Whole
		if spread := float64(w.Max-w.Min) / float64(w.Mean); spread > 0.1/float64(rho) {
			t.Errorf("ρ = %g: spread %.1e", float64(rho), spread)
		}
		near(t, "mean", float64(w.Mean)*float64(rho), 0.6, 1e-2/float64(rho))
	}
}

// TestPropertyMonotone: more polarisation makes the coat more even.
func TestPropertyMonotone(t *testing.T) {
	last := 0.0
	for _, rho := range []units.AreaResistance{1e-5, 1e-4, 1e-3, 1e-2} {
		p := cup()
		p.Parts[0].Law = current.LinearLaw(rho)
		r := solve(t, p, single).Parts[0].Whole.MinToAverage()
		if r <= last {
			t.Errorf("ρ = %g: least to mean %g after %g", float64(rho), r, last)
		}
		last = r
	}
}

// TestPropertyReciprocity: what a volt on one part does to the current of
// another is what a volt on the other does to the first.
func TestPropertyReciprocity(t *testing.T) {
	testdata.SlowOnly(t)
	for _, laws := range [][2]current.Law{{}, {current.LinearLaw(1e-3), current.LinearLaw(3e-4)}, {{},
		current.LinearLaw(1e-3)}} {
		with := func(a, b units.Voltage) *ProfileSolution {
			return solve(t, ProfileProblem{Bath: OpenWithFarAnode(20), Drive: current.ByVoltage(0), Parts: []Revolved{
				{Name: "rod", Profile: Rod(10*mm, 0, 20*mm), Law: laws[0], Bias: a},
				{Name: "ring", Profile: Torus(25*mm, 10*mm, 5*mm), Law: laws[1], Bias: b}}}, order(10, 3))
		}
		ab := float64(with(1, 0).Parts[1].Current)
		ba := float64(with(0, 1).Parts[0].Current)
		near(t, "reciprocity", ab, ba, 3e-8)
	}
}

// TestPropertyDrive: voltage and current control are inverse to each other,
// for every law, floating and robbing parts included.
func TestPropertyDrive(t *testing.T) {
	long(t)
	for _, law := range []current.Law{{}, current.LinearLaw(1e-3), tafel(0.03, 0.01), butlerVolmer(2)} {
		p := cup()
		p.Parts[0].Law = law
		p.Parts = append(p.Parts, Revolved{Name: "robber", Profile: Torus(25*mm, 76*mm, 3*mm), Law: law},
			Revolved{Name: "washer", Profile: Torus(30*mm, 30*mm, 6*mm), Kind: current.Floating, Law: butlerVolmer(1)},
			Revolved{Name: "shield", Profile: Tube(20*mm, 22*mm, 45*mm, 55*mm), Kind: current.Insulator})
		p.Drive = current.ByVoltage(1.3)
		a := solve(t, p, order(6, 2))
		p.Drive = current.ByCurrent(a.Current)
		b := solve(t, p, order(6, 2))
		near(t, law.Model.String()+", voltage", float64(b.Voltage), 1.3, 1e-8)
		if law.Model != current.Primary { // there it is zero in the corner
			near(t, law.Model.String()+", least", float64(b.Parts[0].Whole.Min), float64(a.Parts[0].Whole.Min), 1e-7)
		}
		if f := math.Abs(float64(a.Parts[2].Current / a.Current)); f > 1e-9 {
			t.Errorf("net current of the floating part: %.1e", f)
		}
		if a.Checks.Iterations > 25 {
			t.Errorf("%v: %d iterations", law.Model, a.Checks.Iterations)
		}
	}
}

// TestPropertyChecks: row sums, balance and residual of a mixed problem, by
// both methods, and the bath without a far anode.
func TestPropertyChecks(t *testing.T) {
	p := ProfileProblem{Bath: Open(20), Drive: current.ByCurrent(2), Parts: []Revolved{
		{Name: "bob", Profile: Rod(10*mm, 0, 20*mm), Law: tafel(0.04, 0.5)},
		{Name: "anode", Profile: Torus(60*mm, 10*mm, 8*mm), Kind: current.Anode, Law: butlerVolmer(20)}}}
	for _, row := range []struct {
		o       ProfileOptions
		balance float64
	}{{ProfileOptions{}, 1e-9}, {panels(200), 1e-9}} {
		c := solve(t, p, row.o).Checks
		if c.RowSum > 1e-11 || c.Residual > 1e-11 || math.Abs(c.Balance) > row.balance {
			t.Errorf("row sum %.1e, residual %.1e, balance %.1e", c.RowSum, c.Residual, c.Balance)
		}
	}
	s := solve(t, p, ProfileOptions{})
	near(t, "current", float64(s.Current), 2, 1e-9)
	near(t, "anode", float64(s.Parts[1].Current), -2, 1e-9)
	near(t, "area", float64(s.Parts[0].Area), float64(p.Parts[0].Profile.Area()), 1e-12)
}

// TestPropertyWorkers: the result does not depend on the number of goroutines.
func TestPropertyWorkers(t *testing.T) {
	one, seven := single, single
	one.Workers, seven.Workers = 1, 7
	a, b := solve(t, cup(), one), solve(t, cup(), seven)
	for i, x := range a.Parts[0].Samples {
		near(t, "density", float64(b.Parts[0].Samples[i].Density), float64(x.Density), 1e-12)
	}
}

// TestPropertyStretches: stretches add up to the whole.
func TestPropertyStretches(t *testing.T) {
	part := solve(t, cup(), single).Parts[0]
	whole := part.Whole
	var area, current float64
	cuts := []units.Length{0, 7 * mm, 15 * mm, 16 * mm, 41 * mm, 60.5 * mm, 1}
	for i := 1; i < len(cuts); i++ {
		s, err := part.Between(cuts[i-1], cuts[i])
		if err != nil {
			t.Fatal(err)
		}
		area += float64(s.Area)
		current += float64(s.Current)
		if s.Min < whole.Min || s.Max > whole.Max || s.Mean < s.Min || s.Mean > s.Max {
			t.Errorf("%v to %v: %v %v %v outside the whole", cuts[i-1], cuts[i], s.Min, s.Mean, s.Max)
		}
	}
	near(t, "area", area, float64(whole.Area), 1e-11)
	near(t, "current", current, float64(whole.Current), 1e-9)
	for _, bad := range [][2]units.Length{{1, 0}, {units.Length(math.NaN()), 1}, {2, 3}} {
		if _, err := part.Between(bad[0], bad[1]); err == nil {
			t.Errorf("stretch %v accepted", bad)
		}
	}
}

// TestPropertyZones: the area of a zone of a spheroid, cut across its arc, and
// the current through it, which is proportional to the height of the zone.
// Source of the latter: [DLMF], 19.33.5: q ∝ 1/√(r²/a⁴ + z²/c⁴).
func TestPropertyZones(t *testing.T) {
	prof := spheroid(1, 2)
	part := solve(t, alone(Revolved{Profile: prof}), single).Parts[0]
	low, high := prof.Length()*0.2, prof.Length()*0.65
	z, err := part.Between(low, high)
	if err != nil {
		t.Fatal(err)
	}
	height := float64(prof.Place(high).Z - prof.Place(low).Z)
	near(t, "share", z.PartOfWhole, height/4, 1e-9)
	// 2 E(m = 3/4), a quarter of the perimeter
	near(t, "length", float64(NewProfile(Point{0, -2}).OvalAcross(Point{1, 0}).Length()), 2.4221120551, 1e-9)
}

// TestPropertyLeastBetweenNodes: the least value is that of the polynomial, not
// of the nearest node: it does not move with the nodes.
func TestPropertyLeastBetweenNodes(t *testing.T) {
	testdata.SlowOnly(t)
	p := hung()
	p.Parts[0].Profile = Rod(10*mm, 20*mm, 50*mm)
	prof := p.Parts[0].Profile
	var least [2]float64
	for i, o := range []ProfileOptions{order(8, 3), order(14, 3)} {
		z, err := solve(t, p, o).Parts[0].Between(prof.Corner(1), prof.Corner(2))
		if err != nil {
			t.Fatal(err)
		}
		least[i] = float64(z.Min)
	}
	near(t, "least on the side", least[0], least[1], 1e-8)
}

func TestPropertyCancel(t *testing.T) {
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := Solve(ctx, cup(), ProfileOptions{}); !errors.Is(err, context.Canceled) {
		t.Errorf("cancelled: %v", err)
	}
}

// TestPropertyRecessShare: the floor of a primary cup takes a small share of the
// current, and that share is right to six digits: the solution is as exact
// relative to the local flux as to the total.
func TestPropertyRecessShare(t *testing.T) {
	testdata.SlowOnly(t)
	p := cup()
	p.Parts[0].Law = current.Law{}
	floor := func(o ProfileOptions) float64 {
		s := solve(t, p, o)
		prof := p.Parts[0].Profile
		in, err := s.Parts[0].Between(prof.Corner(4), prof.Corner(5))
		if err != nil {
			t.Fatal(err)
		}
		return in.PartOfWhole
	}
	share := floor(single)
	if share > 2e-3 {
		t.Errorf("share of the floor %g", share)
	}
	near(t, "share of the floor", share, floor(finest), 1e-6)
}

// TestPropertyMasked: a masked segment takes no current, and masking is not
// the same as cutting the part off there.
func TestPropertyMasked(t *testing.T) {
	p := hung()
	p.Parts[0].Masked = []int{1}
	s := solve(t, p, single)
	prof := p.Parts[0].Profile
	if _, err := s.Parts[0].Between(prof.Corner(1), prof.Corner(2)); err == nil {
		t.Error("figures for a masked stretch")
	}
	near(t, "area", float64(s.Parts[0].Area), 2*math.Pi*1e-4, 1e-12)
	for _, x := range s.Parts[0].Samples {
		if x.S > prof.Corner(1) && x.S < prof.Corner(2) && x.Density != 0 {
			t.Fatalf("current %v at %v on the mask", x.Density, x.S)
		}
	}
	if open := solve(t, hung(), single); s.Current >= open.Current {
		t.Errorf("masked %v, open %v", s.Current, open.Current)
	}
}

// TestPropertyGaussRule: gonum's rule of 26 points was found not to sum to one;
// the library's own is used instead. A sphere of order 16, which needs
// 26 points next to a node, would show it.
func TestPropertyGaussRule(t *testing.T) {
	near(t, "C", capacity(solve(t, alone(Revolved{Profile: Ball(1, 0)}), order(16, 1))), 1, 1e-12)
}
