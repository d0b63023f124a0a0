package shape

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Masked is a piece of which a measured area is covered: with lacquer, wax or
// tape, or by a clamp.
type Masked struct {
	Piece   Body
	Covered units.Area // 0: nothing
}

// Area returns what is left open.
//
//	A = B - C
//
//	B  Piece    area without the mask, > 0 [m²]
//	C  Covered  ≥ 0, less than B [m²]
//
// The mask must lie wholly on the piece's counted area; this is not checked.
// When little is left open, an error of the mask is a large one of the rest.
//
// Errors: those of the piece; a [*units.ValueError] for a covered area that is
// not finite or below zero, and one that wraps [units.ErrInconsistent] for a
// missing piece or a mask that leaves nothing open.
//
// Source: [Derived].
func (m Masked) Area() (units.Area, error) {
	if err := units.NonNegative("masked area", m.Covered); err != nil {
		return 0, err
	}
	return subtract("masked area", m.Piece, m.Covered)
}

// subtract takes an area off a piece and refuses to leave nothing.
func subtract(field string, p Body, off units.Area) (units.Area, error) {
	b, err := areaOf(p)
	if err != nil {
		return 0, err
	}
	if off >= b {
		return 0, contradiction(field, off, "less than the piece's "+b.String())
	}
	return b - off, nil
}

// Working returns the steps of the piece and the difference, with the errors of
// [Masked.Area].
func (m Masked) Working() ([]working.Step, error) {
	a, err := m.Area()
	if err != nil {
		return nil, err
	}
	steps, err := m.Piece.Working()
	if err != nil {
		return nil, err
	}
	b, err := termOf(m.Piece, "B", steps)
	if err != nil {
		return nil, err
	}
	return append(steps, step("area left open", "B - C", srcDerived, "", a, b,
		working.Of("C", "covered area", m.Covered))...), nil
}

// A Less is a piece without what another shape covers of it: the spot where a
// pillar stands, the two discs where a ball is soldered to a rod. Several spots
// are an [Assembly] or a [Times].
type Less struct {
	Piece Body
	Off   Body // what is taken away, such as a Disc with OneFace
}

// Area returns the difference of the two areas.
//
//	A = B - C
//
//	B  Piece  > 0 [m²]
//	C  Off    > 0, less than B [m²]
//
// The shape taken off must lie wholly on the piece; this is not checked.
//
// Errors: those of both pieces; a [*units.ValueError] that wraps
// [units.ErrInconsistent] for a missing piece or when nothing is left.
//
// Source: [Derived].
func (l Less) Area() (units.Area, error) {
	c, err := areaOf(l.Off)
	if err != nil {
		return 0, err
	}
	return subtract("area taken off", l.Piece, c)
}

// Working returns the steps of both pieces and the difference, with the errors
// of [Less.Area].
func (l Less) Working() ([]working.Step, error) {
	a, err := l.Area()
	if err != nil {
		return nil, err
	}
	steps, err := l.Piece.Working()
	if err != nil {
		return nil, err
	}
	b, err := termOf(l.Piece, "B", steps)
	if err != nil {
		return nil, err
	}
	off, err := l.Off.Working()
	if err != nil {
		return nil, err
	}
	c, err := termOf(l.Off, "C", off)
	if err != nil {
		return nil, err
	}
	steps = append(steps, off...)
	return append(steps, step("area that remains", "B - C", srcDerived, "", a, b, c)...), nil
}
