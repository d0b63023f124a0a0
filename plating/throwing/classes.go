package throwing

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A Class is a kind of shape for which the trade has a feeling how uneven a
// coat comes out. Common practice, no source: use it to see whether an estimate
// is worth a measurement, not in place of one.
type Class uint8

// The classes, from even to uneven. The zero Class is none.
const (
	SmoothRound   Class = iota + 1 // balls, beads, finial balls hung free
	RodOrTube                      // pillars, arbors, tubes: the outside
	FlatSheet                      // dial plates, flat bobs: corners and edges take more
	ShallowRelief                  // bezels, engraved and stepped faces, recesses shallower than half their width
	OpenWork                       // pierced hands, fretwork: inner edges shade each other
	OpenRecess                     // bells, cups, sunk rims as deep as half to once their width
	DeepRecess                     // deeper than wide, bores: no rule of thumb
)

// String returns the class in words.
func (c Class) String() string {
	switch c {
	case SmoothRound:
		return "smooth round body"
	case RodOrTube:
		return "rod or tube, outside"
	case FlatSheet:
		return "flat sheet"
	case ShallowRelief:
		return "shallow relief"
	case OpenWork:
		return "open work"
	case OpenRecess:
		return "open recess"
	case DeepRecess:
		return "deep recess"
	}
	return fmt.Sprintf("unknown class (%d)", uint8(c))
}

// Band returns from where to where the ratio of thinnest to average thickness lies
// as a rule on racked parts of a class, anodes on both sides, in a bath that
// throws neither badly nor especially well.
//
//	smooth round body      0.75 to 0.95
//	rod or tube, outside   0.65 to 0.90
//	flat sheet             0.50 to 0.80
//	shallow relief         0.40 to 0.70
//	open work              0.35 to 0.65
//	open recess            0.10 to 0.40
//	deep recess            none: compute it as a [Recess], or measure
//
// The bands are wide on purpose. They are this library's own reading of common
// practice, no source.
//
// Errors: a [*units.ValueError] for a class without a band or an unknown one.
//
// Source: [Practice].
func (c Class) Band() (low, high units.Ratio, err error) {
	switch c {
	case SmoothRound:
		return 0.75, 0.95, nil
	case RodOrTube:
		return 0.65, 0.90, nil
	case FlatSheet:
		return 0.50, 0.80, nil
	case ShallowRelief:
		return 0.40, 0.70, nil
	case OpenWork:
		return 0.35, 0.65, nil
	case OpenRecess:
		return 0.10, 0.40, nil
	case DeepRecess:
		return 0, 0, &units.ValueError{Field: "class of shape", Value: c.String(),
			Need: "a calculation with Recess or a mesh, or a measurement: no rule of thumb holds", Err: units.ErrOutOfRange}
	}
	return 0, 0, &units.ValueError{Field: "class of shape", Value: c.String(), Need: "SmoothRound to OpenRecess",
		Err: units.ErrOutOfRange}
}

// Distribution returns the low end of the class's band for an estimate, which
// errs towards more gold and a coat that is thick enough. The basis says what it
// is: common practice, no source. No uncertainty is given: the low end is the
// safe side already.
//
// Errors: those of [Class.Band].
//
// Source: [Practice].
func (c Class) Distribution() (plating.Distribution, error) {
	low, high, err := c.Band()
	if err != nil {
		return plating.Distribution{}, err
	}
	return plating.Distribution{MinToAverage: low,
		Basis: fmt.Sprintf("rule of thumb for the class %q, %.2f to %.2f, low end taken; common practice, no source",
			c.String(), float64(low), float64(high))}, nil
}
