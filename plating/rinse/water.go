package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// WaterFor returns the fresh water that a counterflow row needs for a ratio of
// bath to last rinse.
//
//	1 + r + r² + ... + r^(n-1) + r^n·D/D_in = R, Q = r·D
//
//	R     ratio    C₀/C_n, 1 or more
//	n     stages   1 to 20
//	D_in  dragIn   > 0 [m³/s]
//	D     dragOut  zero means as dragIn [m³/s]
//
// The root of the exact polynomial, to the last digits of a float64 also where
// r is near one. When the work takes on more than it brings, D - D_in of water
// is needed in any case to keep the first tank full, and the ratio may then
// come out better than asked.
//
// A printed short form is Q = D·[R^(1/n) + 1/n]. Its sign is wrong: the series
// of the exact root begins r = R^(1/n) - 1/n. At 1000:1 in two tanks it gives
// 32.1 where 31.1 does. It errs on the side of too much water.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: polynomial [Derived]; form with the wrong sign [CounterflowNote].
func WaterFor(ratio units.Ratio, stages int, dragIn, dragOut Flow) (Flow, error) {
	if err := first(units.Positive("rinse ratio", ratio), units.Positive("drag-in", dragIn), units.NonNegative("drag-out",
		dragOut)); err != nil {
		return 0, err
	}
	c := Counterflow{Stages: stages, Water: dragIn + dragOut, DragIn: dragIn, DragOut: dragOut}
	if err := c.check(); err != nil {
		return 0, err
	}
	if ratio < 1 {
		return 0, bad("rinse ratio", ratio.String(), "1 or more: content of the bath over content of the rinse",
			units.ErrOutOfRange)
	}
	b := float64(dragIn) / float64(c.out())
	r := math.Max(solveExcess(float64(ratio)-1, b, stages), 1-b)
	q := Flow(r * float64(c.out()))
	if !numbers(q) {
		return 0, tooFar("rinse water")
	}
	return q, nil
}

// solveExcess finds r ≥ 0 with excess(r, b, n) = want ≥ 0. The function rises
// from zero and is convex, so Newton's steps from above come down to the root
// and never cross it; bisection takes over should rounding spoil a step.
func solveExcess(want, b float64, n int) float64 {
	if want == 0 {
		return 0
	}
	low, high := 0.0, math.Pow(want*b, 1/float64(n)) // since excess ≥ r^n/b
	r := high
	for range 200 {
		f, slope := excess(r, b, n)
		if f > want {
			high = r
		} else {
			low = r
		}
		next := r - (f-want)/slope
		if !(next > low && next < high) {
			next = (low + high) / 2
		}
		if math.Abs(next-r) <= 1e-16*r {
			return next
		}
		r = next
	}
	return r
}

// WaterForWorking shows that the water of [WaterFor] meets the ratio, with the
// same errors. Where water is set by keeping the first tank full, the ratio
// shown is the better one that comes of it.
func WaterForWorking(ratio units.Ratio, stages int, dragIn, dragOut Flow) ([]working.Step, error) {
	q, err := WaterFor(ratio, stages, dragIn, dragOut)
	if err != nil {
		return nil, err
	}
	c := Counterflow{Stages: stages, Water: q, DragIn: dragIn, DragOut: dragOut}
	reached, err := c.Ratio()
	if err != nil {
		return nil, err
	}
	r := working.Number("r", "water over drag-out, the root of this equation", float64(q)/float64(c.out()))
	d := working.Of("D", "drag-out of every rinse", c.out())
	return []working.Step{
		{Formula: "R = " + seriesText(stages), Source: "Derived", Result: working.Number("R", "bath over last rinse",
			float64(reached)),
			Terms: []working.Term{r, d, working.Of("D_in", "drag-in from the bath", dragIn)}},
		{Formula: "Q = r·D", Source: "Definition", Result: working.Of("Q", "fresh water", q), Terms: []working.Term{r, d}},
	}, nil
}

// RatioFor returns the ratio that brings the last rinse to a content.
//
//	R = C₀/C
//
//	C₀  bath   content of the bath, > 0 [kg/m³]
//	C   final  content allowed in the last rinse, > 0 and ≤ C₀ [kg/m³]
//
// [Limits] and [Criteria] list published figures to start from.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Definition].
func RatioFor(bath, final units.MassConcentration) (units.Ratio, error) {
	if err := first(units.Positive("content of the bath", bath), units.Positive("content allowed in the last rinse",
		final)); err != nil {
		return 0, err
	}
	if final > bath {
		return 0, bad("content allowed in the last rinse", final.String(), "no more than the bath's "+bath.String(),
			units.ErrInconsistent)
	}
	r := units.Ratio(float64(bath) / float64(final))
	return finite("rinse ratio", r)
}
