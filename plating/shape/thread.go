package shape

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Thread is the wall of a metric screw thread, in place of the plain wall of
// the same diameter; it has no ends. A threaded rod is a Thread and two discs.
// The basic profile is the same for a bolt and for its nut, so a Thread stands
// for the wall of a tapped hole as well.
type Thread struct {
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"` // major diameter: 4 mm of an M4
	Pitch    units.Length `json:"pitch" with:"must" rule:"positive" in:"mm"`    // from crest to crest along the axis
	Length   units.Length `json:"length" with:"must" rule:"positive" in:"mm"`   // of the threaded stretch, along the axis
}

// The basic profile over one pitch P: two flanks of 60° between them, whose
// sharp triangle has the height H = √3/2 P, cut off by H/8 at the crest and by
// H/4 at the root. The cuts leave a flat of P/8 and one of P/4; what is left of
// each flank is 5/8 H deep, 5/16 P long along the axis, and so
// 5/16 P / sin 30° = 5/8 P along its slope.
//
// Source: [ISO68-1].
const (
	threadHeight  = 0.866025403784438646763723170752936183 // H/P = √3/2
	threadCrest   = threadHeight / 8                       // cut at the crest, over P
	threadRoot    = threadHeight / 4                       // cut at the root, over P
	threadDepth   = threadHeight - threadCrest - threadRoot
	crestFlat     = 1. / 8 // over P
	rootFlat      = 1. / 4 // over P
	flankAlong    = 5. / 8 // along the slope, one flank, over P
	crestWeight   = crestFlat + flankAlong
	rootWeight    = rootFlat + flankAlong
	threadFormula = "π·(3/4·d + 7/8·e)·L"
)

func (t Thread) check() error {
	if err := firstOf(
		units.Positive("thread diameter", t.Diameter),
		units.Positive("thread pitch", t.Pitch),
		units.Positive("thread length", t.Length)); err != nil {
		return err
	}
	if !(t.minor() > 0) {
		return contradiction("thread pitch", t.Pitch,
			"less than 0.92 of the diameter of "+t.Diameter.String()+", or nothing is left at the root")
	}
	return nil
}

func (t Thread) minor() float64 {
	return float64(t.Diameter) - 2*threadDepth*float64(t.Pitch)
}

// MinorDiameter returns the diameter at the root of the basic profile.
//
//	d1 = d - 2 · 5/8 H = d - 5√3/8 P
//
//	d  Diameter  major diameter, > 0 [m]
//	P  Pitch     > 0, less than 0.92 d [m]
//
// Exact for the basic profile. Errors: a [*units.ValueError] for a dimension
// that is not finite or not above zero, and one that wraps
// [units.ErrInconsistent] for a pitch that leaves no core.
//
// Source: [ISO68-1].
func (t Thread) MinorDiameter() (units.Length, error) {
	if t.Length == 0 {
		t.Length = 1 // any length will do
	}
	if err := t.check(); err != nil {
		return 0, err
	}
	return units.Length(t.minor()), nil
}

// Factor returns the area of the thread over that of the plain wall of the
// major diameter: the thread allowance.
//
//	k = 3/4 + 7/8 d1/d = 13/8 - 35√3/64 P/d
//
// Symbols, accuracy and errors as for [Thread.Area]; the length drops out. At
// P = d/6 it is 1.467; a fine thread tends to 13/8 = 1.625.
//
// Source: [Derived], from the profile of [ISO68-1].
func (t Thread) Factor() (units.Ratio, error) {
	d1, err := t.MinorDiameter()
	if err != nil {
		return 0, err
	}
	return units.Ratio(crestWeight + rootWeight*float64(d1)/float64(t.Diameter)), nil
}

// Area returns the area of crest, root and flanks.
//
//	A = π (3/4 d + 7/8 d1) L,   d1 = d - 5√3/8 P
//
//	d   Diameter  major diameter, > 0 [m]
//	d1            minor diameter, at the root [m]
//	P   Pitch     > 0, less than 0.92 d [m]
//	L   Length    along the axis, > 0 [m]
//
// It follows by taking each turn for a closed ring (no helix): per pitch the
// crest has π d P/8, the root π d1 P/4, and each of the two flanks, a frustum of
// slant 5/8 P, has π (d + d1)/2 · 5/8 P. Together π P (3/4 d + 7/8 d1), L/P
// times.
//
// The helix makes the flanks a little larger, crest and root not: the formula is
// too low by less than 3/8 (P/(π d1))² of itself, which is 0.5 % at P = d/4 and
// 0.16 % at P = d/6. The profile is the basic one, with sharp edges; a rounded
// root and the tolerances of real threads change the area by more than that
// (common practice, no source). A length that is no whole number of pitches is
// right too, since a cut across a screw thread meets all phases of the profile.
//
// Errors: a [*units.ValueError] for a dimension that is not finite or not above
// zero and for an area that a float64 cannot hold; one that wraps
// [units.ErrInconsistent] for a pitch that leaves no core.
//
// Source: [Derived], from the profile of [ISO68-1].
func (t Thread) Area() (units.Area, error) {
	if err := t.check(); err != nil {
		return 0, err
	}
	mean := crestWeight*float64(t.Diameter) + rootWeight*t.minor()
	return total("thread area", math.Pi*mean*float64(t.Length))
}

// Working returns the calculation of [Thread.Area] in two steps, the minor
// diameter and the area, with the same errors.
func (t Thread) Working() ([]working.Step, error) {
	a, err := t.Area()
	if err != nil {
		return nil, err
	}
	d1 := working.Of("e", "minor diameter", units.Length(t.minor()))
	steps := []working.Step{{
		Formula: "e = d - 5·√3/8·P",
		Terms: []working.Term{
			working.Of("d", "major diameter", t.Diameter),
			working.Of("P", "pitch", t.Pitch)},
		Result: d1,
		Source: srcThread,
	}}
	return append(steps, step("area of the thread", threadFormula, srcDerived,
		"Each turn is taken for a closed ring.", a,
		working.Of("d", "major diameter", t.Diameter), d1,
		working.Of("L", "length", t.Length))...), nil
}
