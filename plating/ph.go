package plating

import (
	"strconv"

	"example.com/laydown/units"
)

// A PH is a pH. It has no unit. The zero value is "not given"; no bath here
// works at pH 0.
//
//	pH = -log₁₀ a(H⁺)
//
// Concentrated caustic reads above 14; 16 is the most that is taken.
type PH float64

// String writes the pH with three digits.
func (p PH) String() string { return strconv.FormatFloat(float64(p), 'g', 3, 64) }

// MarshalText writes the pH without loss.
//
// Errors: a [*units.ValueError] for a pH that is not given or cannot be.
func (p PH) MarshalText() ([]byte, error) {
	if err := units.Finite("pH", units.Ratio(p)); err != nil {
		return nil, err
	}
	if !(p > 0 && p <= 16) { // what is not given is left out
		return nil, &units.ValueError{Field: "pH", Value: p.String(), Need: "above 0 and at most 16, or nothing at all",
			Err: units.ErrOutOfRange}
	}
	return strconv.AppendFloat(nil, float64(p), 'g', -1, 64), nil
}

// UnmarshalText reads a plain number above 0 and at most 16.
//
// Errors: a [*units.ValueError].
func (p *PH) UnmarshalText(text []byte) error {
	if p == nil {
		return units.Missing("pH to read into", "a pointer to one")
	}
	v, err := strconv.ParseFloat(string(text), 64)
	if err != nil || !(v > 0 && v <= 16) {
		return &units.ValueError{Field: "pH", Value: units.Clip(string(text)),
			Need: "a number above 0 and at most 16, as 4.4", Err: units.ErrOutOfRange}
	}
	*p = PH(v)
	return nil
}

// A PHWindow is the range of pH that a bath is kept in. The zero window is "not
// given"; with High alone the low end is not given, and dangers are judged by the
// low end.
type PHWindow struct {
	Low  PH `json:"low,omitzero"`
	High PH `json:"high,omitzero"`
}

// Given reports whether the pH is known at all.
func (w PHWindow) Given() bool { return w.Low != 0 || w.High != 0 }

// String writes "4 to 4.6", "4.4" or "not given".
func (w PHWindow) String() string {
	switch {
	case !w.Given():
		return "not given"
	case w.Low == 0:
		return "up to " + w.High.String()
	case w.Low == w.High || w.High == 0:
		return w.Low.String()
	}
	return w.Low.String() + " to " + w.High.String()
}

// lowest returns the lowest pH that is known of: the high end where it stands
// alone, 0 where none is given.
func (w PHWindow) lowest() PH {
	if w.Low == 0 {
		return w.High
	}
	return w.Low
}

// Check returns a [*units.ValueError] for a pH that cannot be, or the ends the
// wrong way round.
func (w PHWindow) Check() error {
	for _, p := range []PH{w.Low, w.High} {
		if !(p >= 0 && p <= 16) {
			return &units.ValueError{Field: "pH", Value: p.String(), Need: "above 0 and at most 16",
				Err: units.ErrOutOfRange}
		}
	}
	if w.Low != 0 && w.High != 0 && w.Low > w.High {
		return &units.ValueError{Field: "pH", Value: w.Low.String() + " to " + w.High.String(),
			Need: "the low end first", Err: units.ErrInconsistent}
	}
	return nil
}
