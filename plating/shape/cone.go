package shape

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Cone is a straight taper: the spire of a finial, a tapered pillar, a
// drip. With a TopDiameter it is a frustum (a cone cut off), without one it
// ends in a point. Base and top plate; OpenBase and OpenTop leave them out.
type Cone struct {
	BaseDiameter units.Length `json:"base_diameter" with:"must" rule:"positive" in:"mm"`
	TopDiameter  units.Length `json:"top_diameter" rule:"positive" in:"mm"`       // 0: a point
	Height       units.Length `json:"height" with:"must" rule:"positive" in:"mm"` // along the axis, not along the slope
	OpenBase     bool         `json:"open_base"`                                  // the base does not plate
	OpenTop      bool         `json:"open_top"`                                   // the flat top does not plate
}

func (c Cone) check() error {
	return firstOf(
		units.Positive("cone base diameter", c.BaseDiameter),
		units.NonNegative("cone top diameter", c.TopDiameter),
		units.Positive("cone height", c.Height))
}

// Area returns the area of the slope, with base and top as far as they plate.
//
//	A = π (D + d)/2 √(((D - d)/2)² + h²) + π D²/4 + π d²/4
//
//	D  BaseDiameter  > 0 [m]; its disc is left out when OpenBase
//	d  TopDiameter   ≥ 0 [m]; its disc is left out when OpenTop
//	h  Height        along the axis, > 0 [m]; from a slant height s it is
//	                 √(s² - ((D - d)/2)²)
//
// Exact. Either end may be the wider one. Errors: a [*units.ValueError] for a
// dimension that is not finite or not above zero (TopDiameter: below zero), and
// for an area that a float64 cannot hold.
//
// Source: [NCERT10].
func (c Cone) Area() (units.Area, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	a := slope(c.BaseDiameter, c.TopDiameter, c.Height)
	if b := float64(c.BaseDiameter); !c.OpenBase {
		a += math.Pi * b * b / 4
	}
	if t := float64(c.TopDiameter); !c.OpenTop {
		a += math.Pi * t * t / 4
	}
	return total("cone area", a)
}

// slope returns the area of a conical wall between two diameters.
func slope(base, top, height units.Length) float64 {
	b, t, h := float64(base), float64(top), float64(height)
	half := (b - t) / 2
	return math.Pi * (b + t) / 2 * math.Sqrt(half*half+h*h)
}

// slopeFormula is slope as working shows it.
const slopeFormula = "π·(D + d)/2·√(((D - d)/2)² + h²)"

// Working returns the calculation of [Cone.Area], with the same errors.
func (c Cone) Working() ([]working.Step, error) {
	a, err := c.Area()
	if err != nil {
		return nil, err
	}
	formula := slopeFormula
	if !c.OpenBase {
		formula += " + π·D²/4"
	}
	if !c.OpenTop && c.TopDiameter > 0 {
		formula += " + π·d²/4"
	}
	return step("area of the cone", formula, srcFrustum, "", a,
		working.Of("D", "diameter of the base", c.BaseDiameter),
		working.Of("d", "diameter of the top", c.TopDiameter),
		working.Of("h", "height along the axis", c.Height)), nil
}
