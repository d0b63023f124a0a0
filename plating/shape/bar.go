package shape

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Cylinder is a solid round bar: a pillar, an arbor, a weight. Both ends
// plate; OpenEnds counts those that do not, as where a ball is soldered on.
type Cylinder struct {
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
	Length   units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	OpenEnds int          `json:"open_ends" rule:"0..2"` // 0, 1 or 2 ends that do not plate
}

func (c Cylinder) check() (n float64, err error) {
	n, err = ends("cylinder", c.OpenEnds)
	return n, firstOf(err,
		units.Positive("cylinder diameter", c.Diameter),
		units.Positive("cylinder length", c.Length))
}

// Area returns the area of wall and ends.
//
//	A = π d L + n π d²/4
//
//	d  Diameter  > 0 [m]
//	L  Length    > 0 [m]
//	n  OpenEnds  ends that plate: 2 less OpenEnds
//
// Exact for square ends. Errors: a [*units.ValueError] for a dimension that is
// not finite or not above zero, for OpenEnds other than 0, 1 or 2, and for an
// area that a float64 cannot hold.
//
// Source: [OpenStaxPrealgebra].
func (c Cylinder) Area() (units.Area, error) {
	n, err := c.check()
	if err != nil {
		return 0, err
	}
	d, l := float64(c.Diameter), float64(c.Length)
	return total("cylinder area", math.Pi*d*l+n*math.Pi*d*d/4)
}

// Working returns the calculation of [Cylinder.Area], with the same errors.
func (c Cylinder) Working() ([]working.Step, error) {
	a, err := c.Area()
	if err != nil {
		return nil, err
	}
	n, _ := c.check()
	return step("area of the cylinder", "π·d·L + n·π·d²/4", srcPrealg, "", a,
		working.Of("d", "diameter", c.Diameter),
		working.Of("L", "length", c.Length),
		working.Number("n", "ends that plate", n)), nil
}

// A HexBar is a hexagonal bar: a standoff pillar, a nut blank. Both ends plate;
// OpenEnds counts those that do not.
type HexBar struct {
	AcrossFlats units.Length `json:"across_flats" with:"must" rule:"positive" in:"mm"`
	Length      units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	OpenEnds    int          `json:"open_ends" rule:"0..2"` // 0, 1 or 2 ends that do not plate
}

func (b HexBar) check() (n float64, err error) {
	n, err = ends("hexagonal bar", b.OpenEnds)
	return n, firstOf(err,
		units.Positive("hexagonal bar width across flats", b.AcrossFlats),
		units.Positive("hexagonal bar length", b.Length))
}

// Area returns the area of the six flats and the ends.
//
//	A = 2√3 w L + n (√3/2) w²
//
//	w  AcrossFlats  > 0 [m]; the side of the hexagon is w/√3, so six sides
//	                make 2√3 w
//	L  Length       > 0 [m]
//	n  OpenEnds     ends that plate: 2 less OpenEnds
//
// Exact for sharp corners; a chamfer takes a little off. Errors: as for
// [Cylinder.Area].
//
// Source: [SchoolGeometry].
func (b HexBar) Area() (units.Area, error) {
	n, err := b.check()
	if err != nil {
		return 0, err
	}
	w, l := float64(b.AcrossFlats), float64(b.Length)
	root := math.Sqrt(3)
	return total("hexagonal bar area", 2*root*w*l+n*root/2*w*w)
}

// Working returns the calculation of [HexBar.Area], with the same errors.
func (b HexBar) Working() ([]working.Step, error) {
	a, err := b.Area()
	if err != nil {
		return nil, err
	}
	n, _ := b.check()
	return step("area of the hexagonal bar", "2·√3·w·L + n·√3/2·w²", srcSchool, "", a,
		working.Of("w", "width across flats", b.AcrossFlats),
		working.Of("L", "length", b.Length),
		working.Number("n", "ends that plate", n)), nil
}

// A Wire is a round wire of any course: a hairpin, a suspension, a rack hook.
type Wire struct {
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
	Length   units.Length `json:"length" with:"must" rule:"positive" in:"mm"` // along the centreline
}

func (w Wire) check() error {
	return firstOf(units.Positive("wire diameter", w.Diameter),
		units.Positive("wire length", w.Length))
}

// Area returns the area of the wire's wall.
//
//	A = π d L
//
//	d  Diameter  > 0 [m]
//	L  Length    along the centreline, > 0 [m]
//
// Exact for the wall, also of a bent wire, as long as no bend is tighter than
// the wire's own radius (what the outer side of a bend gains the inner side
// loses). The two ends are left out: they would add d/(2 L) of the result.
// Errors: a [*units.ValueError] for a dimension that is not finite or not above
// zero, and for an area that a float64 cannot hold.
//
// Source: [OpenStaxPrealgebra] for the straight wire; the bend by the theorem
// of the centroid, as for [Torus.Area].
func (w Wire) Area() (units.Area, error) {
	if err := w.check(); err != nil {
		return 0, err
	}
	return total("wire area", math.Pi*float64(w.Diameter)*float64(w.Length))
}

// Working returns the calculation of [Wire.Area], with the same errors.
func (w Wire) Working() ([]working.Step, error) {
	a, err := w.Area()
	if err != nil {
		return nil, err
	}
	return step("area of the wire", "π·d·L", srcPrealg, "The two ends are left out.", a,
		working.Of("d", "diameter", w.Diameter),
		working.Of("L", "length along the centreline", w.Length)), nil
}
