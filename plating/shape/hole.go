package shape

import (
	"math"
	"strconv"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Hole is a round hole in a flat face. It takes discs off the faces and adds
// its own wall. The zero values of the options are the usual hole: it goes
// through a plate whose two faces plate, and its wall plates.
//
// A Hole is not a [Body]: what it changes may be less than nothing. Put it
// into a [Drilled].
type Hole struct {
	Diameter units.Length `json:"diameter" with:"must" rule:"positive" in:"mm"`
	// of the wall: the plate's thickness, or the depth of a blind hole; may be 0 when Bare
	Depth units.Length `json:"depth" rule:"positive" in:"mm"`
	Count int          `json:"count" rule:"1..1000000"` // equal holes; 0 counts as one
	Blind bool         `json:"blind"`                   // ends inside the metal, with a flat floor
	Bare  bool         `json:"bare"`                    // nothing plates inside: plugged, or too narrow for the current
	// which faces of the plate are counted: as in the Plate, Disc or Ring
	Faces Faces `json:"faces"`
}

func (h Hole) check() (faces float64, err error) {
	faces, err = h.Faces.count("hole")
	if err == nil && h.Count < 0 {
		err = &units.ValueError{Field: "hole count", Value: strconv.Itoa(h.Count),
			Need: "one or more, or 0 for one", Err: units.ErrNegative}
	}
	if err = firstOf(err, units.Positive("hole diameter", h.Diameter)); err != nil {
		return 0, err
	}
	if h.Bare {
		return faces, units.NonNegative("hole depth", h.Depth)
	}
	return faces, units.Positive("hole depth", h.Depth)
}

// number returns how many holes there are.
func (h Hole) number() float64 { return float64(max(h.Count, 1)) }

// lost returns how many face discs one hole takes away for good: a through hole
// one a counted face; a blind one the one at its mouth, and none when its floor,
// which has the same size, plates instead.
func (h Hole) lost(faces float64) float64 {
	switch {
	case !h.Blind:
		return faces
	case h.Bare:
		return 1
	}
	return 0
}

// walls returns how many walls one hole adds: one, or none when bare.
func (h Hole) walls() float64 {
	if h.Bare {
		return 0
	}
	return 1
}

// Change returns what the holes add to the area of the plate: above zero when
// the walls have more than the lost discs, below zero otherwise. A through hole
// in a plate changes nothing when its diameter is twice its depth.
//
//	ΔA = N (w π d t - n π d²/4)
//
//	N  Count     number of equal holes, ≥ 1
//	d  Diameter  > 0 [m]
//	t  Depth     > 0, or ≥ 0 when Bare [m]
//	w  Bare      walls that plate: 1, or 0 when Bare
//	n            discs lost: through 2 (1 with OneFace); blind 1 when Bare,
//	             else 0, for the flat floor makes up for the mouth
//
// Exact for square edges and a flat floor. The floor left by a drill is a cone:
// one of 118° has 1.167 times the disc (1/sin 59°), the countersink of a hole
// likewise. How far current reaches into a hole is another matter: a narrow one
// is nearer to Bare.
//
// Errors: a [*units.ValueError] for a dimension that is not finite or not above
// zero, a negative Count, unknown Faces, and a change that a float64 cannot hold.
//
// Source: [Derived], from the areas of [Cylinder] and [Disc].
func (h Hole) Change() (units.Area, error) {
	faces, err := h.check()
	if err != nil {
		return 0, err
	}
	d, t := float64(h.Diameter), float64(h.Depth)
	a := units.Area(h.number() * (h.walls()*math.Pi*d*t - h.lost(faces)*math.Pi*d*d/4))
	if err := units.Finite("hole area", a); err != nil {
		return 0, err
	}
	return a, nil
}

// Working returns the calculation of [Hole.Change], with the same errors.
func (h Hole) Working() (working.Step, error) {
	a, err := h.Change()
	if err != nil {
		return working.Step{}, err
	}
	faces, _ := h.check()
	return working.Step{
		Formula: "H = N·(w·π·d·t - n·π·d²/4)",
		Terms: []working.Term{
			working.Number("N", "number of holes", h.number()),
			working.Number("w", "walls that plate", h.walls()),
			working.Of("d", "diameter", h.Diameter),
			working.Of("t", "depth", h.Depth),
			working.Number("n", "discs lost", h.lost(faces))},
		Result: working.Of("H", "change by holes", a),
		Source: srcDerived,
	}, nil
}
