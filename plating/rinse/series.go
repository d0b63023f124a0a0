package rinse

import (
	"fmt"
	"math"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A RinseSeries is a row of running rinses that each have water of their own.
type RinseSeries struct {
	Water   []Flow // of each tank, the first first; each ≥ 0; 1 to 20 tanks
	DragIn  Flow   // bath that the work brings into the first tank, > 0
	DragOut Flow   // what the work takes on from every tank; zero means as DragIn
}

// drags returns what the work brings into each tank.
func drags(tanks int, dragIn, dragOut Flow) []float64 {
	list := make([]float64, tanks)
	for i := range list {
		if list[i] = float64(dragOut); i == 0 || dragOut == 0 {
			list[i] = float64(dragIn)
		}
	}
	return list
}

func checkDrags(tanks int, dragIn, dragOut Flow) error {
	return first(whole("rinses in series", tanks, 1, mostStages), units.Positive("drag-in", dragIn),
		units.NonNegative("drag-out", dragOut))
}

// Ratio returns how many times weaker than the bath the last rinse is in the
// long run.
//
//	C₀/C_n = Π(1 + Q_i/D_i)
//
//	Q_i  Water  of each tank, ≥ 0 [m³/s]
//	D_i         brought into each tank: DragIn for the first, DragOut for the others [m³/s]
//
// Errors: a [*units.ValueError] for a value out of range, or when the first
// tank gets less than the work carries out of it.
//
// Source: [RinsingLessWater] for one tank, [Derived].
func (s RinseSeries) Ratio() (units.Ratio, error) {
	if err := checkDrags(len(s.Water), s.DragIn, s.DragOut); err != nil {
		return 0, err
	}
	for i, q := range s.Water {
		if err := units.NonNegative(fmt.Sprintf("water of rinse %d", i+1), q); err != nil {
			return 0, err
		}
	}
	if err := (Counterflow{Stages: 1, Water: s.Water[0], DragIn: s.DragIn, DragOut: s.DragOut}).check(); err != nil {
		return 0, err
	}
	d := drags(len(s.Water), s.DragIn, s.DragOut)
	r := 1.0
	for i, q := range s.Water {
		r *= 1 + float64(q)/d[i]
	}
	if !numbers(r) {
		return 0, tooFar("rinse ratio")
	}
	return units.Ratio(r), nil
}

// Working shows how [RinseSeries.Ratio] computes, with the same errors.
func (s RinseSeries) Working() ([]working.Step, error) {
	ratio, err := s.Ratio()
	if err != nil {
		return nil, err
	}
	d := drags(len(s.Water), s.DragIn, s.DragOut)
	var factors []string
	var terms []working.Term
	for i, q := range s.Water {
		factors = append(factors, fmt.Sprintf("(1 + Q_%d/D_%d)", i+1, i+1))
		terms = append(terms, working.Of(fmt.Sprintf("Q_%d", i+1), fmt.Sprintf("water of rinse %d", i+1), q),
			working.Of(fmt.Sprintf("D_%d", i+1), fmt.Sprintf("brought into rinse %d", i+1), Flow(d[i])))
	}
	return []working.Step{{Formula: "R = " + strings.Join(factors, "·"), Source: "Derived", Terms: terms,
		Result: working.Number("R", "bath over last rinse", float64(ratio))}}, nil
}

// SplitWater shares an amount of water among rinses in series so that the last
// rinse is as clean as that water can make it.
//
//	Q_i + D_i = λ where Q_i > 0, and D_i ≥ λ where Q_i = 0
//
// The product of 1 + Q_i/D_i is largest when water and drag-in together are
// the same everywhere: with equal drag every tank gets the same. The same
// water in counterflow does far better: see [Counterflow].
//
// Errors: a [*units.ValueError] for a value out of range, or when the work
// carries out more than total and drag-in bring.
//
// Source: [Derived].
func SplitWater(total Flow, tanks int, dragIn, dragOut Flow) ([]Flow, error) {
	if err := first(checkDrags(tanks, dragIn, dragOut), units.NonNegative("rinse water", total)); err != nil {
		return nil, err
	}
	if err := (Counterflow{Stages: 1, Water: total, DragIn: dragIn, DragOut: dragOut}).check(); err != nil {
		return nil, err
	}
	return fill(float64(total), drags(tanks, dragIn, dragOut)), nil
}

// fill pours water over steps of the heights d until it is used up: the level
// is the λ of SplitWater. Only the first step may differ from the others.
func fill(total float64, d []float64) []Flow {
	q := make([]Flow, len(d))
	one, rest := d[0], d[len(d)-1]
	n := float64(len(d))
	switch {
	case len(d) == 1 || total <= rest-one: // all of it fits over the lower first step
		q[0] = Flow(total)
	case total <= (n-1)*(one-rest): // the first step stays dry
		for i := 1; i < len(d); i++ {
			q[i] = Flow(total / (n - 1))
		}
	default:
		each := (total + one - rest) / n // over every step but the first
		q[0] = Flow(each + rest - one)
		for i := 1; i < len(d); i++ {
			q[i] = Flow(each)
		}
	}
	return q
}

// SeriesWaterFor returns the least water, tank by tank, that brings rinses in
// series to a ratio of bath to last rinse.
//
//	λ = (R·Π D_i)^(1/n), Q_i = λ - D_i
//
//	R    ratio  1 or more
//	D_i         brought into each tank [m³/s]
//
// The product runs over the tanks that get water; a first tank whose D is
// above λ gets none. Where the work takes on more than it brings, the first
// tank gets what it needs to stay full.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func SeriesWaterFor(ratio units.Ratio, tanks int, dragIn, dragOut Flow) ([]Flow, error) {
	if err := first(checkDrags(tanks, dragIn, dragOut), units.Positive("rinse ratio", ratio)); err != nil {
		return nil, err
	}
	if ratio < 1 {
		return nil, bad("rinse ratio", ratio.String(), "1 or more: content of the bath over content of the rinse",
			units.ErrOutOfRange)
	}
	d := drags(tanks, dragIn, dragOut)
	one, rest, n := d[0], d[tanks-1], float64(tanks)
	logR := math.Log(float64(ratio))
	q := make([]Flow, tanks)
	if tanks > 1 && math.Log(one/rest) >= logR/(n-1) { // λ over the others alone does not reach the first
		for i := 1; i < tanks; i++ {
			q[i] = Flow(rest * math.Expm1(logR/(n-1)))
		}
	} else {
		q[0] = Flow(one * math.Expm1((logR+(n-1)*math.Log(rest/one))/n))
		for i := 1; i < tanks; i++ {
			q[i] = Flow(math.Max(0, rest*math.Expm1((logR+math.Log(one/rest))/n)))
		}
		if tanks > 1 && rest > one && float64(q[0]) < rest-one { // λ below the drag-out: the level rules
			clear(q)
		}
	}
	if need := dragOut - dragIn; q[0] < need {
		q[0] = need
	}
	if !numbers(q...) {
		return nil, tooFar("rinse water")
	}
	return q, nil
}
