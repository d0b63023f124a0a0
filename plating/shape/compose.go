package shape

import (
	"strconv"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// areaOf asks a piece for its area; a missing piece is an error. It holds the
// answer of a foreign piece to the minimum thickness of [Body].
func areaOf(p Body) (units.Area, error) {
	if p == nil {
		return 0, &units.ValueError{Field: "piece", Value: "none",
			Need: "a body such as a Plate or a Sphere", Err: units.ErrInconsistent}
	}
	a, err := p.Area()
	if err != nil {
		return 0, err
	}
	return a, units.Positive("piece area", a)
}

// Sum returns the area of all parts together: [Assembly] in one call. What one
// part hides of another is not taken off: see [Less] and [Masked].
//
//	A = A1 + A2 + …
//
// Errors: as for [Assembly.Area].
//
// Source: [Derived].
func Sum(parts ...Body) (units.Area, error) { return Assembly(parts).Area() }

// An Assembly is several parts plated together.
type Assembly []Body

// Area returns the sum of the parts' areas.
//
//	A = A1 + A2 + …
//
// Errors: the first error of a part; a [*units.ValueError] for an assembly
// without parts, a missing part, and a sum that a float64 cannot hold.
//
// Source: [Derived].
func (s Assembly) Area() (units.Area, error) {
	if len(s) == 0 {
		return 0, &units.ValueError{Field: "number of parts", Value: "0",
			Need: "one part or more", Err: units.ErrNotPositive}
	}
	sum := 0.
	for _, p := range s {
		a, err := areaOf(p)
		if err != nil {
			return 0, err
		}
		sum += float64(a)
	}
	return total("sum of areas", sum)
}

// Working returns the steps of each part and the sum, with the errors of
// [Assembly.Area].
func (s Assembly) Working() ([]working.Step, error) {
	a, err := s.Area()
	if err != nil {
		return nil, err
	}
	var steps []working.Step
	var terms []working.Term
	var formula strings.Builder
	for i, p := range s {
		t, err := p.Working()
		if err != nil {
			return nil, err
		}
		steps = append(steps, t...)
		term, err := termOf(p, "A"+strconv.Itoa(i+1), t)
		if err != nil {
			return nil, err
		}
		terms = append(terms, term)
		if i > 0 {
			formula.WriteString(" + ")
		}
		formula.WriteString(term.Symbol)
	}
	return append(steps, step("area of all parts", formula.String(), srcDerived, "", a, terms...)...), nil
}

// termOf makes a term of a piece's area, with the meaning of its last step.
func termOf(p Body, symbol string, steps []working.Step) (working.Term, error) {
	a, err := areaOf(p)
	meaning := "area of the part"
	if n := len(steps); n > 0 {
		meaning = steps[n-1].Result.Meaning
	}
	return working.Of(symbol, meaning, a), err
}

// Times is a number of equal pieces.
type Times struct {
	Count int
	Piece Body
}

// Area returns the area of all copies.
//
//	A = N B
//
//	N  Count  > 0
//	B  Piece  area of one, > 0 [m²]
//
// Errors: those of the piece; a [*units.ValueError] for a Count that is not
// above zero, a missing piece, and an area that a float64 cannot hold.
//
// Source: [Derived].
func (t Times) Area() (units.Area, error) {
	if t.Count <= 0 {
		return 0, &units.ValueError{Field: "number of pieces", Value: strconv.Itoa(t.Count),
			Need: "one or more", Err: units.ErrNotPositive}
	}
	b, err := areaOf(t.Piece)
	if err != nil {
		return 0, err
	}
	return total("area of all pieces", float64(t.Count)*float64(b))
}

// Working returns the steps of one piece and the product, with the errors of
// [Times.Area].
func (t Times) Working() ([]working.Step, error) {
	a, err := t.Area()
	if err != nil {
		return nil, err
	}
	steps, err := t.Piece.Working()
	if err != nil {
		return nil, err
	}
	b, err := termOf(t.Piece, "B", steps)
	if err != nil {
		return nil, err
	}
	return append(steps, step("area of "+strconv.Itoa(t.Count)+" pieces", "N·B", srcDerived, "", a,
		working.Number("N", "number of pieces", float64(t.Count)), b)...), nil
}

// A Known is a piece whose area comes from elsewhere: a drawing, a mesh, an
// earlier job. It lets such an area stand among the others.
type Known struct {
	Value  units.Area
	What   string // for the working: "area of the cast case, from its mesh"; may be empty
	Source string // for the working; may be empty
}

// Area returns the value as given.
//
//	A = a
//
//	a  Value  > 0 [m²]
//
// Errors: a [*units.ValueError] for a value that is not finite or not above zero.
//
// Source: [Derived]: nothing is computed.
func (k Known) Area() (units.Area, error) {
	if err := units.Positive("known area", k.Value); err != nil {
		return 0, err
	}
	return k.Value, nil
}

// Working returns one step that repeats the value, with the errors of [Known.Area].
func (k Known) Working() ([]working.Step, error) {
	a, err := k.Area()
	if err != nil {
		return nil, err
	}
	what, source := k.What, k.Source
	if what == "" {
		what = "known area"
	}
	if source == "" {
		source = "given"
	}
	return step(what, "a", source, "", a, working.Of("a", "area as given", k.Value)), nil
}
