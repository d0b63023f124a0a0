package bath

import (
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Range is one figure of a bath as it is known: a band, where it comes from,
// and how it was seen. The zero value is "not given". With only High it is an
// upper limit, with only Low a lower one.
type Range[Q units.Quantity] struct {
	Low    Q
	High   Q
	Set    Q           // the value in use, of a bath that stands in a tank; 0: the middle
	Source string      // key in testdata/REFERENCES.md, or [origin.Memory]; "" takes that of the bath
	Seen   origin.Seen // how it was seen
	Note   string      // as printed, or how it was calculated
}

// Given reports whether the figure is known at all.
func (r Range[Q]) Given() bool { return r.Low != 0 || r.High != 0 }

// Mid returns the middle of the band, half of an upper limit, a lower limit
// itself, and 0 when nothing is given. Of a temperature, whose zero lies far below any
// bath, an upper limit is itself. It is a place to start from, not a measured mean.
func (r Range[Q]) Mid() Q {
	switch {
	case r.High == 0:
		return r.Low
	case r.Low == r.High:
		return r.Low
	}
	// Half of 60 °C above absolute zero is far below freezing.
	if _, heat := any(r.High).(units.Temperature); heat && r.Low == 0 {
		return r.High
	}
	return r.Low + (r.High-r.Low)/2
}

// Point returns the value in use: Set, or the middle of the band.
func (r Range[Q]) Point() Q {
	if r.Set != 0 {
		return r.Set
	}
	return r.Mid()
}

// Holds reports whether v lies in the band. What is not given holds everything.
func (r Range[Q]) Holds(v Q) bool {
	return v >= r.Low*(1-tolerance) && (r.High == 0 || v <= r.High*(1+tolerance))
}

// tolerance keeps a value that was computed to sit on an end from falling
// outside by rounding.
const tolerance = 1e-12

// String writes the band without its source: "1 to 4", "up to 8.6", "not given".
func (r Range[Q]) String() string {
	switch {
	case !r.Given():
		return "not given"
	case r.High == 0:
		return "from " + r.Low.String()
	case r.Low == 0:
		return "up to " + r.High.String()
	case r.Low == r.High:
		return r.Low.String()
	}
	return r.Low.String() + " to " + r.High.String()
}

// Text writes the band with how it was seen: "3 to 4 A/dm² (from memory)".
func (r Range[Q]) Text() string {
	if !r.Given() {
		return r.String()
	}
	return r.String() + " (" + r.Origin() + ")"
}

// Origin writes how the band was seen, with the key where there is one.
func (r Range[Q]) Origin() string { return origin.Text(r.Seen, r.Source) }

// Check returns a [*units.ValueError] for an end that is negative or no number, or
// ends the wrong way round. What is not given passes.
func (r Range[Q]) Check(field string) error {
	if err := units.NonNegative("low end of the "+field, r.Low); err != nil {
		return err
	}
	if err := units.NonNegative("high end of the "+field, r.High); err != nil {
		return err
	}
	if err := units.NonNegative(field+" in use", r.Set); err != nil {
		return err
	}
	if r.High != 0 && r.Low > r.High {
		return &units.ValueError{Field: field, Value: r.Low.String() + " to " + r.High.String(), Need: "the low end first",
			Err: units.ErrInconsistent}
	}
	return nil
}

// Sense returns a [*units.ValueError] for an end that no shop has: see package sense.
func (r Range[Q]) Sense(l sense.Limit[Q]) error {
	if err := l.CheckAs("low end of the "+l.Field, r.Low); err != nil {
		return err
	}
	return l.CheckAs("high end of the "+l.Field, r.High)
}

// outside returns a [*units.RangeError] when v is given and not in the band.
func (r Range[Q]) outside(field string, v Q) error {
	// Zero means not given, and what is not given lies outside nothing.
	if v == 0 || r.Holds(v) {
		return nil
	}
	low, high := r.Low.String(), r.High.String()
	if r.High == 0 {
		high = "no upper end"
	}
	return &units.RangeError{Field: field, Value: v.String(), Low: low, High: high, Source: r.Source}
}

// Words are a remark with its origin.
type Words struct {
	Text   string
	Source string
	Seen   origin.Seen
}

// String writes the remark with how it was seen.
func (w Words) String() string {
	if w.Text == "" {
		return "not given"
	}
	return w.Text + " (" + origin.Text(w.Seen, w.Source) + ")"
}
