package shape

import (
	"math"
	"strconv"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Drilled is a piece with holes in it.
//
// When the piece is a [Plate], [Disc] or [Ring] the holes are held against it:
// each must fit on the face, the discs of all must be less than the face, the
// counted faces must be the same, a through hole must be as deep as the plate is
// thick and a blind one less (unless the plate's edges are left out with a zero
// thickness). Where the holes lie is not known, so holes that overlap or cut the
// edge are not found out. Of any other piece only the resulting area is checked.
type Drilled struct {
	Piece Body
	Holes []Hole
}

// Area returns the area of the piece with the change by each hole.
//
//	A = B + H1 + H2 + …
//
//	B  Piece  area without holes, > 0 [m²]
//	H  Holes  [Hole.Change] of each entry [m²]
//
// Exact as its parts. Errors: those of the piece and of the holes; a
// [*units.ValueError] that wraps [units.ErrInconsistent] for a missing piece,
// for holes that do not fit the piece, and for holes that leave no area.
//
// Source: [Derived].
func (d Drilled) Area() (units.Area, error) {
	sum, err := areaOf(d.Piece)
	if err != nil {
		return 0, err
	}
	changes, err := d.changes()
	if err != nil {
		return 0, err
	}
	before := sum
	for _, c := range changes {
		sum += c
	}
	if sum <= 0 {
		return 0, contradiction("holes change the area by", sum-before, "a loss less than the piece's "+before.String())
	}
	return total("drilled area", float64(sum))
}

// changes returns what each hole adds, after holding all against the piece.
func (d Drilled) changes() ([]units.Area, error) {
	list := make([]units.Area, len(d.Holes))
	discs := 0.
	for i, h := range d.Holes {
		c, err := h.Change()
		if err != nil {
			return nil, err
		}
		list[i] = c
		discs += h.number() * math.Pi * float64(h.Diameter) * float64(h.Diameter) / 4
	}
	flat, known := flatOf(d.Piece)
	if !known || len(d.Holes) == 0 {
		return list, nil
	}
	for _, h := range d.Holes {
		if err := flat.take(h); err != nil {
			return nil, err
		}
	}
	if discs >= flat.face {
		return nil, contradiction("area of all hole mouths", units.Area(discs), "less than the face of "+
			units.Area(flat.face).String())
	}
	return list, nil
}

// A flat is what a hole has to fit into.
type flat struct {
	widest    units.Length // a hole must be smaller
	thickness units.Length // 0: not known
	face      float64      // area of one face
	faces     Faces
}

// flatOf returns the flat part behind a piece, if it is one.
func flatOf(p Body) (flat, bool) {
	switch p := p.(type) {
	case Plate:
		return flat{min(p.Length, p.Width), p.Thickness, float64(p.Length) * float64(p.Width), p.Faces}, true
	case Disc:
		return flat{p.Diameter, p.Thickness, math.Pi * float64(p.Diameter) * float64(p.Diameter) / 4, p.Faces}, true
	case Ring:
		o, i := float64(p.Outer), float64(p.Inner)
		return flat{(p.Outer - p.Inner) / 2, p.Thickness, math.Pi * (o + i) * (o - i) / 4, p.Faces}, true
	}
	return flat{}, false
}

// sameLength is the relative difference up to which two lengths, perhaps typed
// in different units, count as one.
const sameLength = 1e-6

// take checks that a hole fits the flat part.
func (f flat) take(h Hole) error {
	if float64(h.Diameter) >= (1-sameLength)*float64(f.widest) {
		return contradiction("hole diameter", h.Diameter, "less than the metal it is drilled in, "+f.widest.String())
	}
	if h.Faces != f.faces {
		return &units.ValueError{Field: "hole faces", Value: h.Faces.String(),
			Need: f.faces.String() + ", as the drilled piece", Err: units.ErrInconsistent}
	}
	if f.thickness == 0 || h.Depth == 0 {
		return nil
	}
	off := float64(h.Depth - f.thickness)
	if h.Blind && off >= 0 {
		return contradiction("blind hole depth", h.Depth, "less than the thickness of "+f.thickness.String())
	}
	if !h.Blind && math.Abs(off) > sameLength*float64(f.thickness) {
		return contradiction("through hole depth", h.Depth, "the thickness of "+f.thickness.String())
	}
	return nil
}

// Working returns the steps of the piece, one for each entry of Holes, and the
// sum, with the errors of [Drilled.Area].
func (d Drilled) Working() ([]working.Step, error) {
	a, err := d.Area()
	if err != nil {
		return nil, err
	}
	steps, err := d.Piece.Working()
	if err != nil {
		return nil, err
	}
	b, err := areaOf(d.Piece)
	if err != nil {
		return nil, err
	}
	terms := []working.Term{working.Of("B", "area without holes", b)}
	var formula strings.Builder
	formula.WriteString("B")
	for i, h := range d.Holes {
		s, err := h.Working()
		if err != nil {
			return nil, err
		}
		steps = append(steps, s)
		symbol := "H" + strconv.Itoa(i+1)
		formula.WriteString(" + " + symbol)
		terms = append(terms, working.Term{Symbol: symbol, Meaning: s.Result.Meaning, Value: s.Result.Value,
			SI: s.Result.SI})
	}
	return append(steps, step("area with holes", formula.String(), srcDerived, "", a, terms...)...), nil
}
