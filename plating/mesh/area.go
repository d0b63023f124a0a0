package mesh

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Area returns the area of a surface.
//
//	A = Σ |(b - a) × (c - a)| / 2
//
//	a, b, c  corners of each triangle [m]
//
// Exact for the triangles, to about one part in 1e15. Triangles inscribed in a
// curved surface have less area than it. A mesh need not be closed. A face that
// lies twice counts twice, the wall of an enclosed cavity counts too, and so does
// what one body covers of another: ask [Check] first, or use [NewMeasuredPart], which does.
//
// Errors: a [*FaultError] for an empty mesh, an index without a vertex, a coordinate
// that is not finite or too large, and an area of zero.
//
// Source: [Geometry].
func Area(m Mesh) (units.Area, error) {
	if err := m.sound(); err != nil {
		return 0, err
	}
	a := m.area()
	if !(a > 0) {
		return 0, about(ErrEmpty, "triangles with an area", "area of %d triangles is zero", len(m.Triangles))
	}
	return units.Area(a), nil
}

// area sums without checks.
func (m Mesh) area() float64 {
	var sum adder
	for i := range m.Triangles {
		sum.add(r3.Norm(m.cross2(i)) / 2)
	}
	return sum.value()
}

// Volume returns the volume that a closed surface encloses; below zero when
// its outside is inside.
//
//	V = Σ a·(b × c) / 6
//
//	a, b, c  corners of each triangle, from one point on the surface [m]
//
// Exact for the triangles, to about one part in 1e14. Of an open surface, and of
// bodies that cross, the number means nothing: ask [Check].
//
// Errors: a [*FaultError] as for [Area], but a volume may be zero.
//
// Source: [Geometry].
func Volume(m Mesh) (units.Volume, error) {
	if err := m.sound(); err != nil {
		return 0, err
	}
	return units.Volume(m.volume()), nil
}

// volume sums without checks.
func (m Mesh) volume() float64 {
	var sum adder
	from := m.Vertices[m.Triangles[0][0]]
	for i := range m.Triangles {
		sum.add(m.volumeOf(i, from))
	}
	return sum.value()
}

// volumeOf returns the signed volume between a point and triangle i.
func (m Mesh) volumeOf(i int, from r3.Vec) float64 {
	a, b, c := m.Corners(i)
	return r3.Dot(r3.Sub(a, from), r3.Cross(r3.Sub(b, from), r3.Sub(c, from))) / 6
}

// An adder sums with a second word for what rounding loses.
type adder struct{ sum, lost float64 }

func (s *adder) add(v float64) {
	t := s.sum + v
	if math.Abs(s.sum) >= math.Abs(v) {
		s.lost += s.sum - t + v
	} else {
		s.lost += v - t + s.sum
	}
	s.sum = t
}

func (s *adder) value() float64 { return s.sum + s.lost }

// A MeasuredPart is the area of a mesh as a piece that can stand among the bodies of
// package shape. [NewMeasuredPart] makes one. The zero MeasuredPart has no area and says so.
type MeasuredPart struct {
	what      string
	faces     int
	area      float64
	enclosed  float64
	cavities  int
	fromSheet bool
}

// NewMeasuredPart checks a mesh and returns its plated area as a piece: the whole
// surface less the walls of enclosed cavities, where no solution comes.
//
//	A = N a - B
//
//	N  number of triangles
//	a  their mean area [m²]
//	B  area of the walls of enclosed cavities [m²]
//
// What names the part in the working, as in "pendulum bob, from its mesh".
// Open says that the mesh may be open, as one face of a sheet is; its area is
// then that of the faces as they are.
//
// Errors: those of [Check]; a [*FaultError] for a mesh with faces that lie twice,
// with edges of more than two triangles, with surfaces turned inside out, with
// triangles that cut through others or lie on them ([ErrCrossing]), and, unless
// open, with holes: [Repair] says what can be done.
//
// Source: [Geometry].
func NewMeasuredPart(m Mesh, what string, open bool) (MeasuredPart, error) {
	r, err := Check(m)
	if err != nil {
		return MeasuredPart{}, err
	}
	if err := r.refuse(open); err != nil {
		return MeasuredPart{}, err
	}
	if what == "" {
		what = "area of the part, from its mesh"
	}
	p := MeasuredPart{what: what, faces: r.Triangles, area: float64(r.Area), enclosed: float64(r.EnclosedArea),
		cavities: r.Enclosed, fromSheet: r.OpenEdges > 0}
	return p, nil
}

// Area returns the plated area.
//
//	A = N a - B
//
// with the letters of [NewMeasuredPart].
//
// Errors: a [*FaultError] for the zero MeasuredPart.
//
// Source: [Geometry].
func (p MeasuredPart) Area() (units.Area, error) {
	if p.faces == 0 {
		return 0, about(ErrEmpty, "a part made by NewMeasuredPart", "a part without a mesh")
	}
	return units.Area(p.area - p.enclosed), nil
}

// Working returns the calculation of [MeasuredPart.Area], with the same errors.
func (p MeasuredPart) Working() ([]working.Step, error) {
	a, err := p.Area()
	if err != nil {
		return nil, err
	}
	s := working.Step{
		Formula: "A = N·a",
		Terms: []working.Term{
			working.Number("N", "number of triangles", float64(p.faces)),
			working.Of("a", "mean area of a triangle", units.Area(p.area/float64(p.faces))),
		},
		Result: working.Of("A", p.what, a),
		Source: "Geometry",
	}
	if p.cavities > 0 {
		s.Formula = "A = N·a - B"
		s.Terms = append(s.Terms, working.Of("B", "walls of enclosed cavities", units.Area(p.enclosed)))
		s.Note = strconv.Itoa(p.cavities) + " enclosed, where no solution comes"
	}
	if p.fromSheet {
		s.Note = "the mesh is open: its faces are counted as they are"
	}
	return []working.Step{s}, nil
}

func itoa(i int) string { return strconv.Itoa(i) }
