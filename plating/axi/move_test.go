package axi_test

import (
	"math"
	"testing"

	"example.com/laydown/plating/axi"
	"example.com/laydown/units"
)

// TestPropertyMoved: a ring moved out and up keeps its length, its area follows
// Pappus, and upside down twice is as before.
func TestPropertyMoved(t *testing.T) {
	const mm = units.Millimetre
	ring := axi.Torus(30*mm, 5*mm, 4*mm)
	moved := ring.Moved(10*mm, 3*mm)
	if math.Abs(float64(moved.Length()/ring.Length())-1) > 1e-12 ||
		math.Abs(float64(moved.Area()/ring.Area())-40.0/30) > 1e-12 {
		t.Errorf("length %v and %v, area %v and %v", ring.Length(), moved.Length(), ring.Area(), moved.Area())
	}
	bob := axi.NewProfile(axi.Point{}).CapTo(axi.Point{R: 20 * mm, Z: 3 * mm}).ArcVia(axi.Point{R: 22 * mm, Z: 5 * mm},
		axi.Point{R: 20 * mm, Z: 7 * mm}).
		OvalAcross(axi.Point{R: 10 * mm, Z: 12 * mm}).LineTo(axi.Point{Z: 12 * mm})
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
