package axi

import (
	"math"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestReferenceCornerExponents: the exponents of a primary current density next to a
// corner with angle w of bath: π/w - 1 between electrodes, π/(2w) - 1 beside
// an insulator; and the power that makes them whole.
// Source: [Derived], separation of variables in a wedge.
func TestReferenceCornerExponents(t *testing.T) {
	for _, row := range []struct {
		degrees  float64
		a, b     role
		grade    grade
		power    int
		exponent float64
	}{
		{90, primary, primary, regular, 1, 1},
		{90, primary, insulates, regular, 1, 0},
		{90, polarises, insulates, regular, 1, 1},
		{90, polarises, polarises, sharp, 2, 1},
		{180, primary, primary, regular, 1, 0},
		{180, primary, insulates, sharp, 2, -0.5},
		{180, polarises, insulates, sharp, 2, 0},
		{270, primary, primary, sharp, 3, -1.0 / 3},
		{270, primary, insulates, sharp, 3, -2.0 / 3},
		{270, polarises, polarises, sharp, 3, -1.0 / 3},
		{360, primary, primary, sharp, 2, -0.5},
		{240, primary, primary, sharp, 4, -0.25},
		{233, primary, primary, sharp, 3, 180.0/233 - 1},
	} {
		c := gradeOf(row.degrees*math.Pi/180, row.a, row.b, false)
		if c.grade != row.grade || c.power != row.power {
			t.Errorf("%g degrees, %v and %v: %+v, want grade %v, power %v", row.degrees, row.a, row.b,
				c, row.grade, row.power)
		}
		if row.a == primary && math.Abs(c.exponent-row.exponent) > 1e-12 && row.degrees != 180 {
			t.Errorf("%g degrees: exponent %g, want %g", row.degrees, c.exponent, row.exponent)
		}
	}
}

// TestPropertyEquilibrium: next to equilibrium the current density keeps its digits.
func TestPropertyEquilibrium(t *testing.T) {
	law := current.Law{Model: current.ButlerVolmer, Exchange: 3, Anodic: 0.4, Cathodic: 0.6,
		Temperature: units.Celsius(25)}
	for _, eta := range []float64{1e-18, 1e-12, -1e-9, 1e-6} {
		j, slope := rate(law, eta)
		x := eta / law.Volt()
		want := 3 * (x + 0.5*(0.16-0.36)*x*x) // two terms of the series
		if math.Abs(j/want-1) > 1e-9*math.Abs(eta)*1e6+1e-15 || math.Abs(slope*law.Volt()/3-1) > 1e-4 {
			t.Errorf("η = %g: j = %.17g, want %.17g", eta, j, want)
		}
	}
	for _, eta := range []float64{0.02, 0.03, -0.3} { // the two forms agree where they meet
		a, _ := rate(law, eta)
		b, _ := law.Current(eta)
		if math.Abs(a/b-1) > 1e-14 {
			t.Errorf("η = %g: %g and %g", eta, a, b)
		}
	}
}

// TestPropertyGauss: Gauss's rules integrate all powers that they should.
func TestPropertyGauss(t *testing.T) {
	for n := 1; n <= 40; n++ {
		r := gauss(n)
		for k := range 2 * n {
			sum := 0.0
			for i, x := range r.x {
				sum += r.w[i] * math.Pow(x, float64(k))
			}
			if math.Abs(sum*float64(k+1)-1) > 5e-14 {
				t.Errorf("%d points, power %d: %.17g of the integral", n, k, sum*float64(k+1))
			}
		}
	}
}

// TestPropertyCoarser: the solution that the estimate compares with is coarser
// in order and at the edges.
func TestPropertyCoarser(t *testing.T) {
	o, err := checkOptions(ProfileOptions{})
	if err != nil {
		t.Fatal(err)
	}
	if c := o.coarser(); c.Order >= o.Order || c.Levels >= o.Levels || c.Panels >= o.Panels {
		t.Errorf("%+v is not coarser than %+v", c, o)
	}
}

// TestPropertyPreimage: the distance to a curve continued into the complex
// plane vanishes at the preimage; for a point of the curve it is its own s.
func TestPropertyPreimage(t *testing.T) {
	arc, _ := arcThrough(vec{1, 0}, vec{0.8, 0.9}, vec{0, 1.1})
	oval, _ := ovalFrom(vec{0, -2}, vec{1, 0}, true)
	line := curve{a: vec{0.3, 0}, b: vec{1.3, 2}, length: math.Sqrt(5)}
	for _, c := range []curve{arc, oval, line} {
		for _, f := range []float64{0.1, 0.5, 0.93} {
			s := f * c.length
			p := c.preimage(c.at(s))
			if math.Abs(real(p)-s) > 1e-7 || math.Abs(imag(p)) > 1e-7 {
				t.Errorf("s = %g: preimage %v", s, p)
			}
			if n := c.at(s).minus(c.at(s + 1e-6)).norm(); math.Abs(n/(1e-6*c.speed(s))-1) > 1e-4 {
				t.Errorf("speed %g, moved %g", c.speed(s), n)
			}
		}
	}
}

// TestPropertyHoleMesh: in a deep narrow hole no panel is longer than the hole is wide.
func TestPropertyHoleMesh(t *testing.T) {
	slot := NewProfile(Point{0, 50}).LineTo(Point{15, 50}, Point{15, 150}, Point{2, 150}, Point{2, 55}, Point{0, 55})
	m, err := build(ProfileProblem{Bath: OpenWithFarAnode(1), Parts: []Revolved{{Profile: slot}},
		Drive: current.ByVoltage(1)})
	if err != nil {
		t.Fatal(err)
	}
	o, err := checkOptions(ProfileOptions{})
	if err != nil {
		t.Fatal(err)
	}
	ms, err := newMesh(m, o)
	if err != nil {
		t.Fatal(err)
	}
	for _, p := range ms.panels {
		if pc := m.pieces[p.piece]; pc.segment == 3 && (p.sb-p.sa)*m.size > 4.001 {
			t.Errorf("panel of %.1f in a hole 4 wide", (p.sb-p.sa)*m.size)
		}
	}
}
