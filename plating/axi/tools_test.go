package axi_test

import (
	"context"
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

const mm = units.Millimetre

func solve(t testing.TB, p ProfileProblem, o ProfileOptions) *ProfileSolution {
	t.Helper()
	s, err := Solve(context.Background(), p, o)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// near fails when got is further than tol, relative to want, from want.
func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if d := math.Abs(got-want) / math.Abs(want); !(d <= tol) {
		t.Errorf("%s: got %.12g, want %.12g: relative difference %.2e, allowed %.1e", what, got, want, d, tol)
	}
}

// tafel returns a cathodic Tafel law of scale b [V for a factor e].
func tafel(b float64, exchange units.CurrentDensity) current.Law {
	l := current.TafelCathode(exchange, 1, units.Celsius(25))
	l.Cathodic = l.Volt() / b
	return l
}

func butlerVolmer(exchange units.CurrentDensity) current.Law {
	return current.Law{Model: current.ButlerVolmer, Exchange: exchange, Anodic: 0.5, Cathodic: 0.5,
		Temperature: units.Celsius(25)}
}

// alone is a part in a bath without end, at 1 V, with unit conductivity: its
// current over 4π is its capacitance as a length.
func alone(p Revolved) ProfileProblem {
	return ProfileProblem{Bath: OpenWithFarAnode(1), Parts: []Revolved{p}, Drive: current.ByVoltage(1)}
}

func capacity(s *ProfileSolution) float64 { return float64(s.Current) / (4 * math.Pi) }

func spheroid(a, c units.Length) Profile {
	return NewProfile(Point{0, -c}).OvalAcross(Point{a, 0}).OvalUp(Point{0, c})
}

// hung is a cylinder hung in a cylindrical tank, Butler-Volmer on both electrodes.
func hung() ProfileProblem {
	return ProfileProblem{Bath: Tank(20, 60*mm, 120*mm).With(WallSegment{Segment: TankSide, Name: "side",
		Kind: current.Anode,
		Law:  butlerVolmer(5)}),
		Parts: []Revolved{{Name: "cylinder", Profile: Rod(10*mm, 50*mm, 70*mm), Law: butlerVolmer(1)}},
		Drive: current.ByVoltage(1)}
}

// cup is a cup with a recess 24 mm wide and 20 mm deep in a tank, Tafel kinetics.
func cup() ProfileProblem {
	p := NewProfile(Point{0, 50 * mm}).LineTo(Point{15 * mm, 50 * mm}, Point{15 * mm, 74 * mm}, Point{12 * mm, 74 * mm},
		Point{12 * mm, 54 * mm}, Point{0, 54 * mm})
	return ProfileProblem{Bath: Tank(20, 60*mm, 120*mm).With(WallSegment{Segment: TankSide, Name: "side",
		Kind: current.Anode}),
		Parts: []Revolved{{Name: "cup", Profile: p, Law: tafel(0.05, 1)}}, Drive: current.ByVoltage(0.6)}
}

// quick and its like are the settings of the convergence tests.
var (
	quick  = ProfileOptions{Panelling: Constant, NoEstimate: true}
	single = ProfileOptions{NoEstimate: true}
	finest = ProfileOptions{Order: 12, Levels: 4, MaxUnknowns: 2000, NoEstimate: true}
)

func panels(n int) ProfileOptions { o := quick; o.Panels = n; return o }

func order(p, levels int) ProfileOptions { o := single; o.Order, o.Levels = p, levels; return o }

// long leaves a test of more than a second out of go test -short.
func long(t *testing.T) {
	t.Helper()
	testdata.SlowOnly(t)
}
