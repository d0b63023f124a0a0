package shape

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Sphere is a whole ball: a finial ball, a bead.
type Sphere struct {
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
}

// Area returns the area of the sphere.
//
//	A = π d²
//
//	d  Diameter  > 0 [m]
//
// Exact. Errors: a [*units.ValueError] for a diameter that is not finite or not
// above zero, and for an area that a float64 cannot hold.
//
// Source: [OpenStaxPrealgebra].
func (s Sphere) Area() (units.Area, error) {
	if err := units.Positive("sphere diameter", s.Diameter); err != nil {
		return 0, err
	}
	return total("sphere area", math.Pi*float64(s.Diameter)*float64(s.Diameter))
}

// Working returns the calculation of [Sphere.Area], with the same errors.
func (s Sphere) Working() ([]working.Step, error) {
	a, err := s.Area()
	if err != nil {
		return nil, err
	}
	return step("area of the sphere", "π·d²", srcPrealg, "", a,
		working.Of("d", "diameter", s.Diameter)), nil
}

// A Cap is a dome cut from a sphere: one side of a pendulum bob, a domed
// button. Its width is given by the rim (BaseDiameter) or by the whole sphere
// (SphereDiameter), one of the two. The flat base plates too; OpenBase leaves
// it out, as for the two halves of a hollow or lens-shaped bob.
type Cap struct {
	BaseDiameter units.Length `json:"base_diameter" rule:"positive" in:"mm"` // of the rim, or 0
	// of the sphere the dome is cut from, or 0
	SphereDiameter units.Length `json:"sphere_diameter" rule:"positive" in:"mm"`
	Height         units.Length `json:"height" with:"must" rule:"positive" in:"mm"` // from the plane of the rim to the crown
	OpenBase       bool         `json:"open_base"`                                  // the base does not plate
}

func (c Cap) check() error {
	if err := firstOf(
		units.NonNegative("cap base diameter", c.BaseDiameter),
		units.NonNegative("cap sphere diameter", c.SphereDiameter),
		units.Positive("cap height", c.Height)); err != nil {
		return err
	}
	switch {
	case c.BaseDiameter == 0 && c.SphereDiameter == 0:
		return &units.ValueError{Field: "cap base diameter", Value: c.BaseDiameter.String(),
			Need: "a value above zero, or one for the sphere diameter", Err: units.ErrNotPositive}
	case c.BaseDiameter > 0 && c.SphereDiameter > 0:
		return contradiction("cap sphere diameter", c.SphereDiameter, "zero when the base diameter is given")
	case c.SphereDiameter > 0 && c.Height > c.SphereDiameter:
		return contradiction("cap height", c.Height, "at most the sphere diameter of "+c.SphereDiameter.String())
	}
	return nil
}

// Area returns the area of the dome, with its base as far as it plates.
//
//	by the rim:     A = π (d²/4 + h²) + π d²/4
//	by the sphere:  A = π D h + π h (D - h)
//
//	d  BaseDiameter    diameter of the rim, > 0 [m]
//	D  SphereDiameter  diameter of the sphere, ≥ h [m]
//	h  Height          > 0 [m]; more than half the sphere is allowed
//
// The last term is the base, left out when OpenBase. Both forms are one, since
// d²/4 = h (D - h). Exact. Errors: a [*units.ValueError] for a dimension that
// is not finite or below zero, for a zero height, and for an area that a float64
// cannot hold; one that wraps [units.ErrInconsistent] when both diameters are
// given or the height is more than the sphere.
//
// Source: [SchoolGeometry].
func (c Cap) Area() (units.Area, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	h := float64(c.Height)
	var dome, base float64
	if d := float64(c.BaseDiameter); d > 0 {
		base = math.Pi * d * d / 4
		dome = math.Pi * (d*d/4 + h*h)
	} else {
		d := float64(c.SphereDiameter)
		base = math.Pi * h * (d - h)
		dome = math.Pi * d * h
	}
	if c.OpenBase {
		base = 0
	}
	return total("cap area", dome+base)
}

// Working returns the calculation of [Cap.Area], with the same errors.
func (c Cap) Working() ([]working.Step, error) {
	a, err := c.Area()
	if err != nil {
		return nil, err
	}
	formula, base := "π·(d²/4 + h²)", " + π·d²/4"
	width := working.Of("d", "diameter of the rim", c.BaseDiameter)
	if c.SphereDiameter > 0 {
		formula, base = "π·D·h", " + π·h·(D - h)"
		width = working.Of("D", "diameter of the sphere", c.SphereDiameter)
	}
	if !c.OpenBase {
		formula += base
	}
	return step("area of the cap", formula, srcSchool, "", a, width,
		working.Of("h", "height", c.Height)), nil
}

// A Torus is a ring of round section: a bezel rim, a split ring closed up.
type Torus struct {
	// of the circle through the middle of the section
	CentreDiameter units.Length `json:"centre_diameter" with:"must" rule:"positive" in:"mm"`
	TubeDiameter   units.Length `json:"tube_diameter" with:"must" rule:"positive" in:"mm"` // of the section
}

func (t Torus) check() error {
	if err := firstOf(
		units.Positive("torus centre diameter", t.CentreDiameter),
		units.Positive("torus tube diameter", t.TubeDiameter)); err != nil {
		return err
	}
	if t.TubeDiameter > t.CentreDiameter {
		return contradiction("torus tube diameter", t.TubeDiameter,
			"at most the centre diameter of "+t.CentreDiameter.String()+": the ring would run into itself")
	}
	return nil
}

// Area returns the area of the torus.
//
//	A = π² D d
//
//	D  CentreDiameter  ≥ d [m]; a rim of outer diameter G has D = G - d
//	d  TubeDiameter    > 0 [m]
//
// Exact, by the theorem of the centroid: the section's circumference π d times
// the way π D of its middle. Errors: a [*units.ValueError] for a dimension that
// is not finite or not above zero and for an area that a float64 cannot hold;
// one that wraps [units.ErrInconsistent] when the section is wider than the ring.
//
// Source: [SchoolGeometry].
func (t Torus) Area() (units.Area, error) {
	if err := t.check(); err != nil {
		return 0, err
	}
	return total("torus area", math.Pi*math.Pi*float64(t.CentreDiameter)*float64(t.TubeDiameter))
}

// Working returns the calculation of [Torus.Area], with the same errors.
func (t Torus) Working() ([]working.Step, error) {
	a, err := t.Area()
	if err != nil {
		return nil, err
	}
	return step("area of the torus", "π²·D·d", srcSchool, "", a,
		working.Of("D", "diameter of the centre circle", t.CentreDiameter),
		working.Of("d", "diameter of the section", t.TubeDiameter)), nil
}
