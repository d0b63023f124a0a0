package shape

import (
	"math"
	"strconv"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Sides says which walls of a tube plate.
type Sides uint8

// The zero value takes both walls. Inside a long narrow tube little plates
// without an inner anode (common practice, no source): OutsideOnly is then nearer
// the truth.
const (
	BothSides Sides = iota
	OutsideOnly
	InsideOnly
)

// String returns the choice in words.
func (s Sides) String() string {
	switch s {
	case BothSides:
		return "outside and inside"
	case OutsideOnly:
		return "outside only"
	case InsideOnly:
		return "inside only"
	}
	return "unknown sides (" + strconv.Itoa(int(s)) + ")"
}

// A Tube is a round pipe: a chime tube, a ferrule, a hand collet. Both walls and
// the rings at both ends plate; Sides and OpenEnds take some away.
type Tube struct {
	Outer    units.Length `json:"outer" with:"must" rule:"positive" in:"mm"` // diameters
	Inner    units.Length `json:"inner" with:"must" rule:"positive" in:"mm"`
	Length   units.Length `json:"length" with:"must" rule:"positive" in:"mm"`
	Sides    Sides        `json:"sides"`
	OpenEnds int          `json:"open_ends" rule:"0..2"` // 0, 1 or 2 end rings that do not plate
}

func (t Tube) check() (n float64, err error) {
	n, err = ends("tube", t.OpenEnds)
	if err == nil && t.Sides > InsideOnly {
		err = &units.ValueError{Field: "tube sides", Value: strconv.Itoa(int(t.Sides)),
			Need: "BothSides, OutsideOnly or InsideOnly", Err: units.ErrOutOfRange}
	}
	return n, firstOf(err,
		bore("tube", t.Outer, t.Inner),
		units.Positive("tube length", t.Length))
}

// around returns the sum of the diameters whose walls plate, and its formula.
func (t Tube) around() (float64, string) {
	switch t.Sides {
	case OutsideOnly:
		return float64(t.Outer), "D"
	case InsideOnly:
		return float64(t.Inner), "d"
	}
	return float64(t.Outer) + float64(t.Inner), "(D + d)"
}

// Area returns the area of the walls and end rings that plate.
//
//	A = π (D + d) L + n π (D² - d²)/4
//
//	D  Outer     outer diameter, > d; left out of the first sum for InsideOnly [m]
//	d  Inner     inner diameter, > 0; left out of the first sum for OutsideOnly [m]
//	L  Length    > 0 [m]
//	n  OpenEnds  end rings that plate: 2 less OpenEnds
//
// Exact for square ends. Errors: as for [Cylinder.Area], for unknown Sides, and
// one that wraps [units.ErrInconsistent] when the bore is not smaller than the
// tube.
//
// Source: [OpenStaxPrealgebra] for the walls, [SchoolGeometry] for the rings.
func (t Tube) Area() (units.Area, error) {
	n, err := t.check()
	if err != nil {
		return 0, err
	}
	o, i := float64(t.Outer), float64(t.Inner)
	around, _ := t.around()
	return total("tube area", math.Pi*around*float64(t.Length)+n*math.Pi*(o+i)*(o-i)/4)
}

// Working returns the calculation of [Tube.Area], with the same errors.
func (t Tube) Working() ([]working.Step, error) {
	a, err := t.Area()
	if err != nil {
		return nil, err
	}
	n, _ := t.check()
	_, walls := t.around()
	return step("area of the tube", "π·"+walls+"·L + n·π·(D + d)·(D - d)/4", srcSchool,
		"Walls: "+t.Sides.String()+".", a,
		working.Of("D", "outer diameter", t.Outer),
		working.Of("d", "inner diameter", t.Inner),
		working.Of("L", "length", t.Length),
		working.Number("n", "end rings that plate", n)), nil
}
