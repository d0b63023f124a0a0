package axi

import (
	"context"
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestPropertyTrapContacts: metal of the two rails in contact, a part a hair
// outside a round vessel, and a needle's tip are refused; a plate far too thin
// for its panels is warned of.
func TestPropertyTrapContacts(t *testing.T) {
	const mm = units.Millimetre
	law := current.LinearLaw(1e-3)
	solve := func(p ProfileProblem) (*ProfileSolution, error) {
		return Solve(context.Background(), p, ProfileOptions{Order: 4, Levels: 1})
	}
	bath := Tank(10, 60*mm, 100*mm)
	bath.Walls = []WallSegment{{Segment: TankSide, Kind: current.Anode, Law: law}}
	ledge := NewProfile(Point{R: 60 * mm, Z: 40 * mm}).LineTo(Point{R: 40 * mm, Z: 40 * mm},
		Point{R: 40 * mm, Z: 60 * mm}, Point{R: 60 * mm, Z: 60 * mm})
	if _, err := solve(ProfileProblem{Bath: bath, Parts: []Revolved{{Profile: ledge, Law: law}},
		Drive: current.ByVoltage(1)}); !errors.Is(err, ErrShort) {
		t.Errorf("a ledge on the anode: %v", err)
	}
	bath.Walls = []WallSegment{{Segment: TankSide, Kind: current.Anode}, {Segment: TankBottom, Kind: current.Cathode}}
	if _, err := solve(ProfileProblem{Bath: bath, Drive: current.ByVoltage(1)}); !errors.Is(err, ErrShort) {
		t.Errorf("bottom against side: %v", err)
	}
	bath.Walls[0].Law, bath.Walls[1].Law = law, law
	if _, err := solve(ProfileProblem{Bath: bath, Drive: current.ByVoltage(1)}); err != nil {
		t.Errorf("bottom against side, polarised: %v", err)
	}

	const r = 500 * mm
	ball := NewProfile(Point{}).ArcAround(Point{Z: r}, 180)
	round := Electrolyte{Conductivity: 10, Extent: Vessel, Shape: ball,
		Walls: []WallSegment{{Segment: 0, Kind: current.Anode}}}
	for gap, want := range map[units.Length]error{0.5 * mm: ErrOutside, -20 * mm: nil} {
		wire := Torus(r+gap+0.1*mm, r, 0.2*mm)
		if _, err := solve(ProfileProblem{Bath: round, Parts: []Revolved{{Profile: wire}},
			Drive: current.ByVoltage(1)}); !errors.Is(err, want) {
			t.Errorf("a wire %v outside: %v, want %v", gap, err, want)
		}
	}

	needle := NewProfile(Point{}).OvalUp(Point{R: 10 * mm, Z: 10 * mm}).LineTo(Point{Z: 10 * mm})
	if err := needle.Check(); !errors.Is(err, ErrProfile) {
		t.Errorf("a needle: %v", err)
	}

	// However thin: refused, right, or warned of.
	for _, h := range []units.Length{1e-10, 1e-9, 1e-8} {
		s, err := solve(ProfileProblem{Bath: OpenWithFarAnode(10), Parts: []Revolved{{Profile: Rod(20*mm, 15*mm, 15*mm+h)}},
			Drive: current.ByVoltage(1)})
		if err != nil {
			continue
		}
		warned := false
		for _, w := range s.Warnings {
			warned = warned || w.Code == current.RoughShape
		}
		const disc = 8 * 0.02 * 10 // 8·a·κ
		if off := float64(s.Current)/disc - 1; !warned && (off > 1e-3 || off < -1e-3) {
			t.Errorf("%v thick: %v, a disc takes %v A; row sums off by %v and no warning", h, s.Current,
				disc, s.Checks.RowSum)
		}
	}
}

// TestPropertyManySegments: a profile of thousands of chords is refused at once,
// with a hint.
func TestPropertyManySegments(t *testing.T) {
	p := NewProfile(Point{Z: -1})
	for k := 1; k < 20_000; k++ {
		sin, cos := math.Sincos(math.Pi * (float64(k)/20_000 - 0.5))
		p.steps = append(p.steps, step{end: Point{R: units.Length(cos), Z: units.Length(sin)}})
	}
	p = p.LineTo(Point{Z: 1})
	begin := time.Now()
	_, err := Solve(context.Background(), ProfileProblem{Bath: OpenWithFarAnode(1), Parts: []Revolved{{Profile: p}},
		Drive: current.ByVoltage(1)}, ProfileOptions{})
	if !errors.Is(err, current.ErrTooLarge) || !strings.Contains(err.Error(), "arcs") ||
		time.Since(begin) > time.Second {
		t.Errorf("%v after %v", err, time.Since(begin))
	}
	few := NewProfile(Point{Z: -1})
	for k := 1; k < 300; k++ {
		sin, cos := math.Sincos(math.Pi * (float64(k)/300 - 0.5))
		few = few.LineTo(Point{R: units.Length(cos), Z: units.Length(sin)})
	}
	_, err = Solve(context.Background(), ProfileProblem{Bath: OpenWithFarAnode(1),
		Parts: []Revolved{{Profile: few.LineTo(Point{Z: 1})}}, Drive: current.ByVoltage(1)}, ProfileOptions{})
	if !errors.Is(err, current.ErrTooLarge) || !strings.Contains(err.Error(), "arc") {
		t.Errorf("300 chords: %v", err)
	}
}
