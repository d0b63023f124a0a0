package axi_test

import (
	"context"
	"errors"
	"math"
	"testing"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/units"
)

// TestPropertyBadProfile: each broken profile is refused with its reason.
func TestPropertyBadProfile(t *testing.T) {
	n := units.Length(nan)
	for _, row := range []struct {
		name string
		p    Profile
		want error
	}{
		{"zero", Profile{}, ErrProfile},
		{"NaN start", NewProfile(Point{n, 0}).LineTo(Point{1, 1}), units.ErrNotFinite},
		{"NaN end", NewProfile(Point{0, 0}).LineTo(Point{1, n}), units.ErrNotFinite},
		{"infinite", NewProfile(Point{0, 0}).LineTo(Point{units.Length(inf), 0}), units.ErrNotFinite},
		{"huge", NewProfile(Point{0, 0}).LineTo(Point{1e300, 0}), units.ErrOutOfRange},
		{"negative R", NewProfile(Point{0, 0}).LineTo(Point{-1, 0}), units.ErrNegative},
		{"zero length", NewProfile(Point{1, 0}).LineTo(Point{1, 0}), units.ErrNotPositive},
		{"arc through three points of a line", NewProfile(Point{0, 0}).ArcVia(Point{1, 0}, Point{2, 0}), ErrProfile},
		{"arc through one point", NewProfile(Point{1, 0}).ArcVia(Point{1, 0}, Point{1, 0}), ErrProfile},
		{"arc below the axis", NewProfile(Point{1, 0}).ArcVia(Point{0.1, 0.51961524}, Point{0.1, -0.51961524}),
			units.ErrNegative},
		{"full circle", NewProfile(Point{2, 0}).ArcAround(Point{1, 0}, 360), units.ErrNotFinite},
		{"NaN turn", NewProfile(Point{2, 0}).ArcAround(Point{1, 0}, nan), units.ErrNotFinite},
		{"flat oval", NewProfile(Point{1, 0}).OvalUp(Point{2, 0}), ErrProfile},
		{"along the axis", NewProfile(Point{0, 0}).LineTo(Point{0, 1}), ErrProfile},
		{"bow tie", NewProfile(Point{1, 0}).LineTo(Point{2, 1}, Point{2, 0}, Point{1, 1}, Point{1, 0}), ErrCrossing},
		{"fold", NewProfile(Point{0, 0}).LineTo(Point{2, 0}, Point{1, 0}), ErrCrossing},
		{"line through arc", NewProfile(Point{0, 0}).ArcAround(Point{0, 1}, 180).LineTo(Point{3, 1}, Point{0.2, 0.5}),
			ErrCrossing},
		{"arc over arc", NewProfile(Point{2, 0}).ArcAround(Point{1, 0}, 170).ArcAround(Point{1, 0}, -100), ErrCrossing},
		{"oval through line", NewProfile(Point{0, 0}).OvalAcross(Point{1, 1}).LineTo(Point{1, 2}, Point{0.9, 0}),
			ErrCrossing},
	} {
		err := row.p.Check()
		var v *units.ValueError
		if !errors.Is(err, row.want) || !errors.As(err, &v) {
			t.Errorf("%s: %v, want %v", row.name, err, row.want)
			continue
		}
		if v.Field == "" || v.Value == "" || v.Need == "" {
			t.Errorf("%s: error without field, value or remedy: %v", row.name, err)
		}
		p := cup()
		p.Parts[0].Profile = row.p
		if _, err := Solve(context.Background(), p, ProfileOptions{}); !errors.Is(err, row.want) {
			t.Errorf("%s, solved: %v, want %v", row.name, err, row.want)
		}
		if row.p.Length() < 0 || row.p.Area() < 0 {
			t.Errorf("%s: length or area below zero", row.name)
		}
	}
}

// TestPropertyMoved: a ring moved out and up keeps its length, its area follows
// Pappus, and upside down twice is as before.
func TestPropertyMoved(t *testing.T) {
	const mm = units.Millimetre
	ring := Torus(30*mm, 5*mm, 4*mm)
	moved := ring.Moved(10*mm, 3*mm)
	if math.Abs(float64(moved.Length()/ring.Length())-1) > 1e-12 ||
		math.Abs(float64(moved.Area()/ring.Area())-40.0/30) > 1e-12 {
		t.Errorf("length %v and %v, area %v and %v", ring.Length(), moved.Length(), ring.Area(), moved.Area())
	}
	bob := NewProfile(Point{}).CapTo(Point{R: 20 * mm, Z: 3 * mm}).ArcVia(Point{R: 22 * mm, Z: 5 * mm},
		Point{R: 20 * mm, Z: 7 * mm}).
		OvalAcross(Point{R: 10 * mm, Z: 12 * mm}).LineTo(Point{Z: 12 * mm})
	if err := bob.Check(); err != nil {
		t.Fatal(err)
	}
	turned := bob.UpsideDown(6 * mm)
	if err := turned.Check(); err != nil || math.Abs(float64(turned.Area()/bob.Area())-1) > 1e-12 {
		t.Errorf("upside down: %v, area %v and %v", err, turned.Area(), bob.Area())
	}
	back := turned.UpsideDown(6 * mm)
	for i := range 50 {
		s := units.Length(float64(i) / 50 * float64(bob.Length()))
		a, b, c := bob.Place(s), back.Place(s), turned.Place(s)
		if math.Abs(float64(a.R-b.R))+math.Abs(float64(a.Z-b.Z)) > 1e-12 || math.Abs(float64(a.Z+c.Z-12*mm)) > 1e-12 ||
			math.Abs(float64(a.R-c.R)) > 1e-12 {
			t.Fatalf("at %v: %v, back %v, turned %v", s, a, b, c)
		}
	}
}
