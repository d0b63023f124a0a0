package shape

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Plate is a flat rectangle: a dial plate, a clock hand as its blank, a test
// panel. Its edges plate with it; a zero Thickness leaves them out. With
// OneFace one face and all four edges plate.
type Plate struct {
	Length    units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	Width     units.Length `json:"width" with:"must" rule:"positive" in:"mm"`
	Thickness units.Length `json:"thickness" rule:"positive" in:"mm"` // 0: edges left out
	Faces     Faces        `json:"faces"`
}

func (p Plate) check() (faces float64, err error) {
	faces, err = p.Faces.count("plate")
	return faces, firstOf(err,
		units.Positive("plate length", p.Length),
		units.Positive("plate width", p.Width),
		units.NonNegative("plate thickness", p.Thickness))
}

// Area returns the area of faces and edges.
//
//	A = n L W + 2 (L + W) t
//
//	n  Faces      faces that plate, 2 or 1
//	L  Length     > 0 [m]
//	W  Width      > 0 [m]
//	t  Thickness  ≥ 0 [m]; 0 leaves the edges out
//
// Exact for square edges; a rounded edge has less. Errors: a
// [*units.ValueError] for a dimension that is not finite or not above zero
// (Thickness: below zero), for unknown Faces, and for an area that a float64
// cannot hold.
//
// Source: [OpenStaxPrealgebra].
func (p Plate) Area() (units.Area, error) {
	n, err := p.check()
	if err != nil {
		return 0, err
	}
	l, w, t := float64(p.Length), float64(p.Width), float64(p.Thickness)
	return total("plate area", n*l*w+2*(l+w)*t)
}

// Working returns the calculation of [Plate.Area], with the same errors.
func (p Plate) Working() ([]working.Step, error) {
	a, err := p.Area()
	if err != nil {
		return nil, err
	}
	n, _ := p.check()
	note := ""
	if p.Thickness == 0 {
		note = "The edges are left out: no thickness is given."
	}
	return step("area of the plate", "n·L·W + 2·(L + W)·t", srcPrealg, note, a,
		working.Number("n", "faces that plate", n),
		working.Of("L", "length", p.Length),
		working.Of("W", "width", p.Width),
		working.Of("t", "thickness", p.Thickness)), nil
}

// A Disc is a flat round: a chapter disc, a flat pendulum bob, a coin. Its rim
// plates with it; a zero Thickness leaves the rim out. Disc{Diameter: d,
// Faces: OneFace} is the plain circle, as for the spot under a screw head.
type Disc struct {
	Diameter  units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
	Thickness units.Length `json:"thickness" rule:"positive" in:"mm"` // 0: rim left out
	Faces     Faces        `json:"faces"`
}

func (d Disc) check() (faces float64, err error) {
	faces, err = d.Faces.count("disc")
	return faces, firstOf(err,
		units.Positive("disc diameter", d.Diameter),
		units.NonNegative("disc thickness", d.Thickness))
}

// Area returns the area of faces and rim.
//
//	A = n π d²/4 + π d t
//
//	n  Faces      faces that plate, 2 or 1
//	d  Diameter   > 0 [m]
//	t  Thickness  ≥ 0 [m]; 0 leaves the rim out
//
// Exact for a square rim. Errors: as for [Plate.Area].
//
// Source: [OpenStaxPrealgebra].
func (d Disc) Area() (units.Area, error) {
	n, err := d.check()
	if err != nil {
		return 0, err
	}
	w, t := float64(d.Diameter), float64(d.Thickness)
	return total("disc area", n*math.Pi*w*w/4+math.Pi*w*t)
}

// Working returns the calculation of [Disc.Area], with the same errors.
func (d Disc) Working() ([]working.Step, error) {
	a, err := d.Area()
	if err != nil {
		return nil, err
	}
	n, _ := d.check()
	return step("area of the disc", "n·π·d²/4 + π·d·t", srcPrealg, "", a,
		working.Number("n", "faces that plate", n),
		working.Of("d", "diameter", d.Diameter),
		working.Of("t", "thickness", d.Thickness)), nil
}

// A Ring is a flat washer: a chapter ring, a flat bezel, a spacer. The edges
// of rim and hole plate with it; a zero Thickness leaves them out.
type Ring struct {
	Outer     units.Length `json:"outer" with:"must" rule:"positive" in:"mm"` // diameters
	Inner     units.Length `json:"inner" with:"must" rule:"positive" in:"mm"`
	Thickness units.Length `json:"thickness" rule:"positive" in:"mm"` // 0: edges left out
	Faces     Faces        `json:"faces"`
}

func (r Ring) check() (faces float64, err error) {
	faces, err = r.Faces.count("ring")
	return faces, firstOf(err,
		bore("ring", r.Outer, r.Inner),
		units.NonNegative("ring thickness", r.Thickness))
}

// bore checks the two diameters of a ring or tube.
func bore(body string, outer, inner units.Length) error {
	if err := firstOf(units.Positive(body+" outer diameter", outer),
		units.Positive(body+" inner diameter", inner)); err != nil {
		return err
	}
	if inner >= outer {
		return contradiction(body+" inner diameter", inner, "less than the outer diameter of "+outer.String())
	}
	return nil
}

// Area returns the area of faces and edges.
//
//	A = n π (D² - d²)/4 + π (D + d) t
//
//	n  Faces      faces that plate, 2 or 1
//	D  Outer      outer diameter, > d [m]
//	d  Inner      diameter of the hole, > 0 [m]
//	t  Thickness  ≥ 0 [m]; 0 leaves the edges out
//
// Exact for square edges. The difference of squares is taken as (D + d)(D - d),
// so that a narrow ring loses no digits. Errors: as for [Plate.Area], and one
// that wraps [units.ErrInconsistent] when the hole is not smaller than the ring.
//
// Source: [SchoolGeometry].
func (r Ring) Area() (units.Area, error) {
	n, err := r.check()
	if err != nil {
		return 0, err
	}
	o, i, t := float64(r.Outer), float64(r.Inner), float64(r.Thickness)
	return total("ring area", n*math.Pi*(o+i)*(o-i)/4+math.Pi*(o+i)*t)
}

// Working returns the calculation of [Ring.Area], with the same errors.
func (r Ring) Working() ([]working.Step, error) {
	a, err := r.Area()
	if err != nil {
		return nil, err
	}
	n, _ := r.check()
	return step("area of the ring", "n·π·(D + d)·(D - d)/4 + π·(D + d)·t", srcSchool, "", a,
		working.Number("n", "faces that plate", n),
		working.Of("D", "outer diameter", r.Outer),
		working.Of("d", "inner diameter", r.Inner),
		working.Of("t", "thickness", r.Thickness)), nil
}
