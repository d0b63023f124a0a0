package faraday

import (
	"math"

	"example.com/laydown/units"
)

// A Segment is a constant current for a time.
type Segment struct {
	Current units.Current  // > 0 deposits, < 0 strips, 0 is a pause
	Time    units.Duration // > 0
}

// A Sequence is one segment after the other, as a programmed supply runs them.
type Sequence []Segment

// Time returns the time of all segments.
//
// Errors: a [*units.ValueError] for no segment or one out of range.
//
// Source: [Definition].
func (q Sequence) Time() (units.Duration, error) {
	if len(q) == 0 {
		return 0, &units.ValueError{Field: "sequence", Value: "empty", Need: "one segment or more", Err: units.ErrNotPositive}
	}
	var sum units.Duration
	for i, s := range q {
		if err := units.Finite(numbered("current of segment", i), s.Current); err != nil {
			return 0, err
		}
		if err := units.Positive(numbered("time of segment", i), s.Time); err != nil {
			return 0, err
		}
		sum += s.Time
	}
	return finite("time", sum)
}

// Charge returns the charge of all segments.
//
//	Qd = Σ I·t over I > 0
//	Qs = Σ |I|·t over I < 0
//
// Errors: a [*units.ValueError] for no segment or one out of range.
//
// Source: [Definition].
func (q Sequence) Charge() (SplitCharge, error) {
	if _, err := q.Time(); err != nil {
		return SplitCharge{}, err
	}
	var sum SplitCharge
	for _, s := range q {
		if s.Current > 0 {
			sum.Deposited += s.Current.For(s.Time)
		} else {
			sum.Stripped += units.Current(math.Abs(float64(s.Current))).For(s.Time)
		}
	}
	return sum.finite()
}

// Mean returns the steady current with the same net charge in the same time;
// it is negative when more was stripped than deposited.
//
//	I = (Qd - Qs)/Σ t
//
// Errors: a [*units.ValueError] for no segment or one out of range.
//
// Source: [Definition].
func (q Sequence) Mean() (units.Current, error) {
	charge, err := q.Charge()
	if err != nil {
		return 0, err
	}
	total, err := q.Time()
	if err != nil {
		return 0, err
	}
	return charge.Net().PerTime(total)
}
