package shape

import (
	"math"
	"strconv"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A HeadStyle is the form of a screw head.
type HeadStyle uint8

// The zero value is the cheese head.
const (
	CheeseHead      HeadStyle = iota // a cylinder
	PanHead                          // a dome
	CountersunkHead                  // a flat top and a cone down to the shank
)

// String returns the style in words.
func (s HeadStyle) String() string {
	switch s {
	case CheeseHead:
		return "cheese head"
	case PanHead:
		return "pan head"
	case CountersunkHead:
		return "countersunk head"
	}
	return "unknown head (" + strconv.Itoa(int(s)) + ")"
}

// A ScrewHead is the head of a loose screw: what it adds to its shank. A whole
// screw is the head, a [Cylinder] with one open end for the plain shank, and a
// [Thread]. For a screw that stays in the work, [ScrewHead.Covers] is what the
// head hides.
type ScrewHead struct {
	Style    HeadStyle    `json:"style"`
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"` // of the head
	Height   units.Length `json:"height" with:"must" rule:"positive" in:"mm"`   // of the head, along the axis
	// diameter of the shank, whose disc under the head does not plate; 0: none
	Shank units.Length `json:"shank" rule:"positive" in:"mm"`
}

func (s ScrewHead) check() error {
	if s.Style > CountersunkHead {
		return &units.ValueError{Field: "screw head style", Value: strconv.Itoa(int(s.Style)),
			Need: "CheeseHead, PanHead or CountersunkHead", Err: units.ErrOutOfRange}
	}
	if err := firstOf(
		units.Positive("screw head diameter", s.Diameter),
		units.Positive("screw head height", s.Height),
		units.NonNegative("screw shank diameter", s.Shank)); err != nil {
		return err
	}
	if s.Shank >= s.Diameter {
		return contradiction("screw shank diameter", s.Shank, "less than the head's "+s.Diameter.String())
	}
	if s.Style == PanHead && s.Height > s.Diameter/2 {
		return contradiction("pan head height", s.Height, "at most half the head's diameter, "+(s.Diameter/2).String())
	}
	return nil
}

// Area returns the area of the head without the disc where the shank joins it.
//
//	cheese:       A = π D²/4 + π D h + π (D² - d²)/4
//	pan:          A = π (D²/4 + h²) + π (D² - d²)/4
//	countersunk:  A = π D²/4 + π (D + d)/2 √(((D - d)/2)² + h²)
//
//	D  Diameter  of the head, > d [m]
//	h  Height    of the head, > 0; for a pan head at most D/2 [m]
//	d  Shank     diameter of the shank, ≥ 0 [m]
//
// Top, side and underside, in this order (the cone is its own underside). Exact
// for these bodies. A pan head is taken for a dome (a [Cap]); one that bulges
// beyond the dome, as most do, lies between it and the cheese head of the same
// size, since of two convex bodies the one inside the other has less surface.
// The slot is left out: a slot of depth t and width b adds about 2 t (D - b) to a
// cheese head.
//
// Errors: a [*units.ValueError] for a dimension that is not finite or not above
// zero (Shank: below zero), an unknown Style, and an area that a float64 cannot
// hold; one that wraps [units.ErrInconsistent] for a shank as wide as the head
// and for a pan head higher than a half ball.
//
// Source: [Derived], from the areas of [Cylinder], [Cap], [Cone] and [Ring].
func (s ScrewHead) Area() (units.Area, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	d, k, n := float64(s.Diameter), float64(s.Height), float64(s.Shank)
	under := math.Pi * (d + n) * (d - n) / 4
	var a float64
	switch s.Style {
	case CheeseHead:
		a = math.Pi*d*d/4 + math.Pi*d*k + under
	case PanHead:
		a = math.Pi*(d*d/4+k*k) + under
	case CountersunkHead:
		a = math.Pi*d*d/4 + slope(s.Diameter, s.Shank, s.Height)
	}
	return total("screw head area", a)
}

// Covers returns the area that the head hides of the work while the screw is in:
// the disc of the head's diameter, the hole included.
//
//	A = π D²/4
//
//	D  Diameter  of the head, > 0 [m]
//
// Use it in [Masked] for work without the hole counted, as a plate that is
// plated with its screws in. Errors: as for [ScrewHead.Area].
//
// Source: [Derived], from the area of [Disc].
func (s ScrewHead) Covers() (units.Area, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	return Disc{Diameter: s.Diameter, Faces: OneFace}.Area()
}

// Working returns the calculation of [ScrewHead.Area], with the same errors.
func (s ScrewHead) Working() ([]working.Step, error) {
	a, err := s.Area()
	if err != nil {
		return nil, err
	}
	const under = " + π·(D + d)·(D - d)/4"
	formula := "π·D²/4 + π·D·h" + under
	switch s.Style {
	case PanHead:
		formula = "π·(D²/4 + h²)" + under
	case CountersunkHead:
		formula = "π·D²/4 + " + slopeFormula
	}
	return step("area of the "+s.Style.String(), formula, srcDerived, "The slot is left out.", a,
		working.Of("D", "diameter of the head", s.Diameter),
		working.Of("h", "height of the head", s.Height),
		working.Of("d", "diameter of the shank", s.Shank)), nil
}
