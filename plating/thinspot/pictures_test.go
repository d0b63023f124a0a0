package thinspot

import (
	"image/color"
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	return 0.2126*float64(r) + 0.7152*float64(g) + 0.0722*float64(b)
}

// TestPropertyRamp: lightness rises all along the scale, in equal steps by half or more,
// so that grey paper and every eye can read it.
func TestPropertyRamp(t *testing.T) {
	r := ColourScale{Low: 1, High: 3}
	last := -1.0
	for k := range 101 {
		l := luminance(r.Colour(1 + 2*float64(k)/100))
		if l <= last {
			t.Fatalf("step %d is not lighter than the one before", k)
		}
		last = l
	}
	if r.Colour(-5) != r.Colour(1) || r.Colour(9) != r.Colour(3) || (ColourScale{Low: 2, High: 2}).Colour(2).A != 255 {
		t.Error("outside the scale")
	}
}

// TestPropertyHiddenSpot: the wall of a deep recess is seen from no side, its floor and the
// outside each from one; the picture says so instead of speaking of a ring.
func TestPropertyHiddenSpot(t *testing.T) {
	cup, err := mesh.Cup(40*units.Millimetre, 30*units.Millimetre, 20*units.Millimetre, 25*units.Millimetre,
		mesh.Grid{Size: 2 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	body := boxOf(cup.Vertices)
	low := body.low
	for _, s := range []struct {
		name       string
		at, normal r3.Vec
		views      int
	}{
		{"wall of the recess", r3.Vec{X: 0.01 * math.Cos(0.3), Y: 0.01 * math.Sin(0.3), Z: low.Z + 0.012},
			r3.Vec{X: -math.Cos(0.3), Y: -math.Sin(0.3)}, 0},
		{"floor of the recess", r3.Vec{X: 0.002, Y: 0.001, Z: low.Z + 0.005}, r3.Vec{Z: 1}, 1},
		{"outer wall, towards the front", r3.Vec{X: 0.001, Y: -0.02, Z: low.Z + 0.01}, r3.Vec{X: 0.05, Y: -1}, 1},
	} {
		seen := 0
		for _, v := range sides() {
			if render(cup, make([]color.RGBA, len(cup.Triangles)), v, 460, body.middle, 0.041).ring(s.at, s.normal) {
				seen++
			}
		}
		if seen != s.views {
			t.Errorf("%s: seen in %d views, want %d", s.name, seen, s.views)
		}
	}
}
