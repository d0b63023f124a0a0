package shape

import (
	"math"
	"strconv"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Body is a part, or parts put together, whose plated area is known. Every
// body of this package is one, as a value; a type of your own may be one too.
type Body interface {
	// Area returns the area that plates: finite and above zero, or an error.
	Area() (units.Area, error)
	// Working returns the calculation step by step. The result of the last
	// step is Area.
	Working() ([]working.Step, error)
}

// Faces says how many faces of a flat part plate.
type Faces uint8

// The zero value takes both faces.
const (
	BothFaces Faces = iota // front and back
	OneFace                // the back is stopped off, soldered down, or does not count
)

// String returns the choice in words.
func (f Faces) String() string {
	switch f {
	case BothFaces:
		return "both faces"
	case OneFace:
		return "one face"
	}
	return "unknown faces (" + strconv.Itoa(int(f)) + ")"
}

// count returns how many faces plate.
func (f Faces) count(body string) (float64, error) {
	switch f {
	case BothFaces:
		return 2, nil
	case OneFace:
		return 1, nil
	}
	return 0, &units.ValueError{Field: body + " faces", Value: strconv.Itoa(int(f)),
		Need: "BothFaces or OneFace", Err: units.ErrOutOfRange}
}

// ends returns how many of two ends plate when open of them do not.
func ends(body string, open int) (float64, error) {
	if open < 0 || open > 2 {
		return 0, &units.ValueError{Field: body + " open ends", Value: strconv.Itoa(open),
			Need: "0, 1 or 2", Err: units.ErrOutOfRange}
	}
	return float64(2 - open), nil
}

// total lets a computed area through when it is a finite number above zero.
func total(field string, a float64) (units.Area, error) {
	if a > 0 && a <= math.MaxFloat64 {
		return units.Area(a), nil
	}
	e := &units.ValueError{Field: field, Value: units.Area(a).String(),
		Need: "dimensions whose squares a float64 can hold, from 1e-150 m to 1e150 m", Err: units.ErrNotPositive}
	if a-a != 0 {
		e.Err = units.ErrNotFinite
	}
	return 0, e
}

// contradiction reports a value that does not fit the others.
func contradiction[Q units.Quantity](field string, v Q, need string) error {
	return &units.ValueError{Field: field, Value: v.String(), Need: need, Err: units.ErrInconsistent}
}

// firstOf returns the first error, or nil.
func firstOf(errs ...error) error {
	for _, err := range errs {
		if err != nil {
			return err
		}
	}
	return nil
}

// step makes the usual one-step working: A = formula.
func step(meaning, formula, source, note string, a units.Area, terms ...working.Term) []working.Step {
	return []working.Step{{
		Formula: "A = " + formula,
		Terms:   terms,
		Result:  working.Of("A", meaning, a),
		Source:  source,
		Note:    note,
	}}
}

// Keys of the sources, as in testdata/REFERENCES.md. Derived means that the
// comment beside the formula says how it follows.
const (
	srcDerived = "Derived"
	srcPrealg  = "OpenStaxPrealgebra"
	srcFrustum = "NCERT10"
	srcSchool  = "SchoolGeometry"
	srcThread  = "ISO68-1"
)
