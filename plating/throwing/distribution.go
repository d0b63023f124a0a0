package throwing

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// TwoLevels returns the distribution of a part of which one share lies far from
// the anode, or in the shade, and the rest near.
//
//	r = 1/(f + (1 - f) M)
//
//	r            thinnest over average thickness
//	M  metal     thickness near over far, ≥ 1
//	f  farShare  share of the area that is far, 0 < f ≤ 1
//
// For a part with two levels it is exact; for a gradual one take M between the
// ends and a small f, which is on the safe side. M for the part is that of the
// cell only when the part's distances to the anode have the cell's ratio and its
// size: go by way of the Wagner number ([LinearWagner], then [LinearRatio] with
// Wa times the cell's near distance over the part's).
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func TwoLevels(metal, farShare units.Ratio) (plating.Distribution, error) {
	if err := units.Positive("metal ratio", metal); err != nil {
		return plating.Distribution{}, err
	}
	if metal < 1 {
		return plating.Distribution{}, &units.ValueError{Field: "metal ratio", Value: metal.String(),
			Need: "thick over thin, 1 or more", Err: units.ErrOutOfRange}
	}
	if err := units.PositiveFraction("share of the area that is far", farShare); err != nil {
		return plating.Distribution{}, err
	}
	r, err := positive("ratio of thinnest to average", 1/(farShare+(1-farShare)*metal))
	if err != nil {
		return plating.Distribution{}, err
	}
	return plating.Distribution{MinToAverage: min(r, 1),
			Basis: fmt.Sprintf("by rule: metal %.3g:1 near to far, %s of the area far", float64(metal), farShare.Percent(-1))},
		nil
}

// FromReadings returns the distribution of thicknesses that were measured at
// places that stand for equal areas.
//
//	r = min(s)/mean(s)
//
//	s  thickness  one reading for each place, > 0 [m]
//
// The thinnest of a few readings is seldom the thinnest spot: look for that first
// and measure there.
//
// Errors: a [*units.ValueError] for fewer than three readings or one that is not
// above zero.
//
// Source: [Definition].
func FromReadings(thickness []units.Length) (plating.Distribution, error) {
	if len(thickness) < 3 {
		return plating.Distribution{}, &units.ValueError{Field: "number of readings", Value: fmt.Sprint(len(thickness)),
			Need: "three or more, the thinnest spot among them", Err: units.ErrOutOfRange}
	}
	least, mean := thickness[0], 0.0
	for i, s := range thickness {
		if err := units.Positive(fmt.Sprintf("reading %d", i+1), s); err != nil {
			return plating.Distribution{}, err
		}
		least = min(least, s)
		mean += float64(s) / float64(len(thickness))
	}
	r, err := positive("ratio of thinnest to average", units.Ratio(float64(least)/mean))
	if err != nil {
		return plating.Distribution{}, err
	}
	return plating.Distribution{MinToAverage: min(r, 1), Basis: fmt.Sprintf("measured at %d places", len(thickness))}, nil
}

// Distribution returns what the thinnest spot of a part with such recesses is to
// its mean, when the rest of the part has the current density of the mouth.
//
//	r = B/(1 - f + f W)
//
//	B  t.Bottom   bottom over mouth, 0 < B ≤ 1
//	W  t.Mean     walls over mouth, 0 < W ≤ 1
//	f  wallShare  share of the plated area that lies in recesses, 0 ≤ f ≤ 1
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func (t Throw) Distribution(wallShare units.Ratio) (plating.Distribution, error) {
	if err := units.PositiveFraction("ratio of bottom to mouth", t.Bottom); err != nil {
		return plating.Distribution{}, err
	}
	if err := units.PositiveFraction("ratio of walls to mouth", t.Mean); err != nil {
		return plating.Distribution{}, err
	}
	if err := units.Fraction("share of the area in recesses", wallShare); err != nil {
		return plating.Distribution{}, err
	}
	r, err := positive("ratio of thinnest to average", t.Bottom/(1-wallShare+wallShare*t.Mean))
	if err != nil {
		return plating.Distribution{}, err
	}
	return plating.Distribution{MinToAverage: min(r, 1),
		Basis: fmt.Sprintf("by rule: recess whose bottom gets %s of the mouth, %s of the area in recesses",
			t.Bottom.Percent(-1), wallShare.Percent(-1))}, nil
}
