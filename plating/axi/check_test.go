package axi_test

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

var (
	nan = math.NaN()
	inf = math.Inf(1)
)

// TestPropertyBadProblem: each contradiction is refused with its reason.
func TestPropertyBadProblem(t *testing.T) {
	for _, row := range []struct {
		name   string
		change func(*ProfileProblem)
		want   error
	}{
		{"no conductivity", func(p *ProfileProblem) { p.Bath.Conductivity = 0 }, units.ErrNotPositive},
		{"negative conductivity", func(p *ProfileProblem) { p.Bath.Conductivity = -1 }, units.ErrNotPositive},
		{"NaN conductivity", func(p *ProfileProblem) { p.Bath.Conductivity = units.Conductivity(nan) },
			units.ErrNotFinite},
		{"unknown extent", func(p *ProfileProblem) { p.Bath.Extent = 9 }, units.ErrOutOfRange},
		{"far anode in a tank", func(p *ProfileProblem) { p.Bath.FarAnode = true }, units.ErrInconsistent},
		{"walls without vessel", func(p *ProfileProblem) { p.Bath.Extent = Unbounded }, units.ErrInconsistent},
		{"no drive", func(p *ProfileProblem) { p.Drive = current.Drive{} }, units.ErrNotPositive},
		{"no current", func(p *ProfileProblem) { p.Drive = current.ByCurrent(0) }, units.ErrNotPositive},
		{"negative current", func(p *ProfileProblem) { p.Drive = current.ByCurrent(-1) }, units.ErrNotPositive},
		{"NaN voltage", func(p *ProfileProblem) { p.Drive = current.ByVoltage(units.Voltage(nan)) },
			units.ErrNotFinite},
		{"no anode", func(p *ProfileProblem) { p.Bath.Walls = nil }, ErrNoElectrode},
		{"no cathode", func(p *ProfileProblem) {
			p.Parts[0].Kind, p.Parts[0].Law = current.Insulator, current.Law{}
		}, ErrNoElectrode},
		{"a law on an insulator", func(p *ProfileProblem) { p.Parts[0].Kind = current.Insulator },
			units.ErrInconsistent},
		{"no parts", func(p *ProfileProblem) { p.Parts = nil }, ErrNoElectrode},
		{"masked all over", func(p *ProfileProblem) { p.Parts[0].Masked = []int{0, 1, 2, 3, 4} }, ErrNoElectrode},
		{"mask beyond", func(p *ProfileProblem) { p.Parts[0].Masked = []int{5} }, units.ErrOutOfRange},
		{"unknown kind", func(p *ProfileProblem) { p.Parts[0].Kind = 7 }, units.ErrOutOfRange},
		{"bad law", func(p *ProfileProblem) { p.Parts[0].Law = current.LinearLaw(-1) }, units.ErrNotPositive},
		{"Tafel of the wrong side", func(p *ProfileProblem) { p.Bath.Walls[0].Law = tafel(0.05, 1) },
			units.ErrInconsistent},
		{"NaN bias", func(p *ProfileProblem) { p.Parts[0].Bias = units.Voltage(nan) }, units.ErrNotFinite},
		{"biased float", func(p *ProfileProblem) {
			p.Parts = append(p.Parts, Revolved{Profile: Torus(40*mm, 20*mm, 2*mm), Kind: current.Floating, Bias: 1})
		}, units.ErrInconsistent},
		{"wall segment beyond", func(p *ProfileProblem) { p.Bath.Walls[0].Segment = 3 }, units.ErrOutOfRange},
		{"wall twice", func(p *ProfileProblem) {
			p.Bath = p.Bath.With(WallSegment{Segment: TankSide,
				Kind: current.Anode})
		}, units.ErrOutOfRange},
		{"insulating wall", func(p *ProfileProblem) { p.Bath.Walls[0].Kind = current.Insulator },
			units.ErrInconsistent},
		{"tank of no radius", func(p *ProfileProblem) { p.Bath.Shape = Tank(1, 0, 1).Shape }, units.ErrNotPositive},
		{"tank upside down", func(p *ProfileProblem) { p.Bath.Shape = Tank(1, 1, -1).Shape }, ErrProfile},
		{"outside", func(p *ProfileProblem) { p.Parts[0].Profile = Rod(10*mm, 130*mm, 150*mm) }, ErrOutside},
		{"through the wall", func(p *ProfileProblem) { p.Parts[0].Profile = Rod(70*mm, 30*mm, 50*mm) }, ErrOutside},
		{"touching the bottom", func(p *ProfileProblem) { p.Parts[0].Profile = Rod(10*mm, 0, 50*mm) }, ErrOutside},
		{"touching the side", func(p *ProfileProblem) { p.Parts[0].Profile = Torus(55*mm, 50*mm, 10*mm) }, ErrOutside},
		{"open", func(p *ProfileProblem) {
			p.Parts[0].Profile = NewProfile(Point{0, 50 * mm}).LineTo(Point{10 * mm, 50 * mm}, Point{10 * mm, 60 * mm})
		}, ErrProfile},
		{"meets the axis on the way", func(p *ProfileProblem) {
			p.Parts[0].Profile = NewProfile(Point{0, 50 * mm}).LineTo(Point{10 * mm, 55 * mm}, Point{0, 60 * mm},
				Point{10 * mm, 65 * mm}, Point{0, 70 * mm})
		}, ErrProfile},
		{"overlapping", func(p *ProfileProblem) {
			p.Parts = append(p.Parts, Revolved{Name: "second", Profile: Rod(5*mm, 70*mm, 90*mm)}, Revolved{Name: "third",
				Profile: Rod(6*mm, 85*mm, 95*mm)})
		}, current.ErrOverlap},
		{"one in another", func(p *ProfileProblem) {
			p.Parts = append(p.Parts, Revolved{Profile: Rod(5*mm, 51*mm, 53*mm)})
		}, current.ErrOverlap},
		{"touching", func(p *ProfileProblem) { p.Parts = append(p.Parts, Revolved{Profile: Rod(5*mm, 40*mm, 50*mm)}) },
			current.ErrOverlap},
		{"sheet with kinetics", func(p *ProfileProblem) {
			p.Parts[0] = Revolved{Profile: NewProfile(Point{0, 50 * mm}).LineTo(Point{10 * mm, 50 * mm}), Sheet: true,
				Law: tafel(0.05, 1)}
		}, ErrProfile},
		{"insulating sheet", func(p *ProfileProblem) {
			p.Parts = append(p.Parts, Revolved{Profile: NewProfile(Point{20 * mm, 50 * mm}).LineTo(Point{20 * mm, 80 * mm}),
				Sheet: true, Kind: current.Insulator})
		}, ErrProfile},
		{"below the floor", func(p *ProfileProblem) {
			p.Bath = OpenWithFarAnode(1)
			p.Bath.Extent = HalfSpace
			p.Parts[0].Profile = Ball(10*mm, 5*mm)
		}, ErrOutside},
	} {
		p := cup()
		row.change(&p)
		s, err := Solve(context.Background(), p, ProfileOptions{})
		var v *units.ValueError
		if s != nil || !errors.Is(err, row.want) || !errors.As(err, &v) {
			t.Errorf("%s: %v, want %v", row.name, err, row.want)
		}
		if err2 := p.Check(); err2 == nil || err != nil && err2.Error() != err.Error() {
			t.Errorf("%s: Check says %v, Solve %v", row.name, err2, err)
		}
	}
}

func TestPropertyBadOptions(t *testing.T) {
	for _, o := range []ProfileOptions{{Panelling: 5}, {Order: 2}, {Order: 40}, {Order: -1}, {Levels: 99}, {Panels: 3},
		{Panels: 1e9}, {MaxUnknowns: 2001}, {Workers: -1}} {
		if _, err := Solve(context.Background(), cup(), o); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%+v: %v", o, err)
		}
	}
	var e *SolveError
	_, err := Solve(context.Background(), cup(), ProfileOptions{MaxUnknowns: 50})
	if !errors.Is(err, current.ErrTooLarge) || !errors.As(err, &e) || e.Unknowns <= 50 || !strings.Contains(err.Error(),
		"unknowns") {
		t.Errorf("too many unknowns: %v", err)
	}
}

// FuzzSolve draws a four-cornered body somewhere in a tank: an answer or a typed
// error, no panic, and an answer that is finite and balanced.
func FuzzSolve(f *testing.F) {
	f.Add(0.0, 0.05, 0.01, 0.05, 0.01, 0.07, 0.0, 0.07, 0.1)
	f.Add(0.02, 0.05, 0.03, 0.05, 0.02, 0.07, 0.02, 0.05, 1.0)
	f.Fuzz(func(t *testing.T, a, b, c, d, e, g, h, i, amps float64) {
		l := func(v float64) units.Length { return units.Length(v) }
		p := ProfileProblem{Bath: Tank(20, 60*mm, 120*mm).With(WallSegment{Segment: TankSide, Kind: current.Anode}),
			Drive: current.ByCurrent(units.Current(amps)),
			Parts: []Revolved{{Profile: NewProfile(Point{l(a), l(b)}).LineTo(Point{l(c), l(d)},
				Point{l(e), l(g)}, Point{l(h), l(i)}), Law: butlerVolmer(1)}}}
		s, err := Solve(context.Background(), p, ProfileOptions{Order: 4, Levels: 1, MaxUnknowns: 300,
			NoEstimate: true})
		var v *units.ValueError
		var se *SolveError
		switch {
		case err == nil:
			if j := float64(s.Parts[0].Whole.Mean); math.IsNaN(j) || math.IsInf(j, 0) {
				t.Errorf("mean %v", j)
			}
		case !errors.As(err, &v) && !errors.As(err, &se):
			t.Errorf("untyped error %v", err)
		}
	})
}

// A sheet that closes in itself is refused; one closed by the axis is the body
// that it encloses. A wall all covered by a part is no electrode.
func TestPropertyClosedSheetAndCoveredWall(t *testing.T) {
	if err := alone(Revolved{Profile: Torus(1, 0, 0.5), Sheet: true}).Check(); !errors.Is(err, ErrProfile) ||
		!strings.Contains(err.Error(), "closed sheet") {
		t.Errorf("a closed sheet: %v", err)
	}
	near(t, "a ball of sheet", capacity(solve(t, alone(Revolved{Profile: Ball(1, 0), Sheet: true}), single)), 1, 1e-11)
	bath := Tank(20, 60*mm, 100*mm).With(WallSegment{Segment: TankBottom, Name: "bottom",
		Kind: current.Cathode}).With(WallSegment{Segment: TankSurface, Kind: current.Anode})
	lid := Revolved{Name: "plate", Profile: NewProfile(Point{0, 20 * mm}).LineTo(Point{60 * mm, 20 * mm})}
	p := ProfileProblem{Bath: bath, Parts: []Revolved{lid}, Drive: current.ByVoltage(1)}
	if err := p.Check(); !errors.Is(err, ErrNoElectrode) || !strings.Contains(err.Error(), "wall bottom") ||
		!strings.Contains(err.Error(), "covered") {
		t.Errorf("a wall under a plate: %v", err)
	}
	p.Bath.Walls = p.Bath.Walls[1:] // covered as well, but an insulator
	near(t, "plates 80 mm apart", float64(solve(t, p, single).Current), 20*math.Pi*0.06*0.06/0.08, 1e-9)
}
