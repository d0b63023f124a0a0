package faraday

import (
	"math"
	"strconv"

	"gonum.org/v1/gonum/integrate"

	"example.com/laydown/units"
)

// A CurrentReading is one line of a logged current.
type CurrentReading struct {
	At      units.Duration // the logger's clock, from any start
	Current units.Current  // > 0 deposits, < 0 strips
}

// A Gap is a step between two samples that is longer than it should be.
type Gap struct {
	From, To units.Duration // times of the samples on both sides

	// Charge is what the straight line between the two samples makes of the gap:
	// a guess, included in the total. Take it off if the current was off.
	Charge units.Charge
}

// A LoggedCharge is what a log of currents amounts to.
type LoggedCharge struct {
	SplitCharge
	Time units.Duration // from the first sample to the last
	Mean units.Current  // net charge over time
	Gaps []Gap          // nil when no step was too long or none was looked for
}

// InGaps returns the net charge that stands on the straight lines across gaps.
func (l LoggedCharge) InGaps() units.Charge {
	var sum units.Charge
	for _, g := range l.Gaps {
		sum += g.Charge
	}
	return sum
}

// IntegrateLog returns the charge of a logged current whose steps need not be
// equal, by the trapezium rule.
//
//	Q = Σ (Iₖ + Iₖ₊₁)/2·(tₖ₊₁ - tₖ)
//
//	Iₖ  Current  of sample k, > 0 deposits, < 0 strips [A]
//	tₖ  At       of sample k [s]
//
// Between samples the current is taken to run straight. A step in which it
// changes sign is cut where the line crosses zero, so that Deposited and
// Stripped are told apart within the step. Steps longer than maxGap (by more
// than the rounding of the clock's readings) are reported, each with the charge
// that its straight line stands for, and stay in the total; with maxGap 0 no
// step is looked at. Exact for a current made of straight pieces; it cannot see
// a pulse that falls between two samples.
//
// Errors: a [*units.ValueError] for fewer than two samples, a value that is not
// finite, times that do not rise from sample to sample, or a negative maxGap.
//
// Source: [Definition] (the area under straight lines).
func IntegrateLog(samples []CurrentReading, maxGap units.Duration) (LoggedCharge, error) {
	if err := units.NonNegative("largest step", maxGap); err != nil {
		return LoggedCharge{}, err
	}
	if len(samples) < 2 {
		return LoggedCharge{}, &units.ValueError{Field: "samples", Value: strconv.Itoa(len(samples)),
			Need: "two or more", Err: units.ErrOutOfRange}
	}
	var log LoggedCharge
	t := make([]float64, 0, len(samples)+8)
	up, down := make([]float64, 0, len(samples)+8), make([]float64, 0, len(samples)+8)
	add := func(at, current float64) {
		t, up, down = append(t, at), append(up, max(current, 0)), append(down, max(-current, 0))
	}
	for k, s := range samples {
		if err := units.Finite(numbered("time of sample", k), s.At); err != nil {
			return LoggedCharge{}, err
		}
		if err := units.Finite(numbered("current of sample", k), s.Current); err != nil {
			return LoggedCharge{}, err
		}
		if k > 0 {
			before := samples[k-1]
			if s.At <= before.At {
				return LoggedCharge{}, &units.ValueError{Field: numbered("time of sample", k), Value: exactText(s.At),
					Need: "a time after that of the sample before, " + exactText(before.At), Err: units.ErrInconsistent}
			}
			if err := units.Finite("time from the first sample to "+numbered("sample", k), s.At-samples[0].At); err != nil {
				return LoggedCharge{}, err
			}
			if maxGap > 0 && s.At-before.At > maxGap+rounding(maxGap, before.At, s.At) {
				log.Gaps = append(log.Gaps, gapBetween(before, s))
			}
			if (s.Current < 0) != (before.Current < 0) && s.Current != 0 && before.Current != 0 {
				add(zeroCrossing(before, s), 0)
			}
		}
		add(float64(s.At), float64(s.Current))
	}
	// The times rise and the lengths agree: Trapezoidal has no cause to panic.
	log.Deposited = units.Charge(integrate.Trapezoidal(t, up))
	log.Stripped = units.Charge(integrate.Trapezoidal(t, down))
	if _, err := log.finite(); err != nil {
		return LoggedCharge{}, err
	}
	for _, g := range log.Gaps {
		if err := units.Finite("charge in a gap", g.Charge); err != nil {
			return LoggedCharge{}, err
		}
	}
	log.Time = samples[len(samples)-1].At - samples[0].At
	var err error
	if log.Mean, err = log.Net().PerTime(log.Time); err != nil {
		return LoggedCharge{}, err
	}
	return log, nil
}

// zeroCrossing returns when the straight line from a to b, of opposite signs,
// is zero: between their times, both ends possible by rounding.
func zeroCrossing(a, b CurrentReading) float64 {
	// Divided by the larger, neither current overflows nor vanishes.
	larger := max(math.Abs(float64(a.Current)), math.Abs(float64(b.Current)))
	ia, ib := float64(a.Current)/larger, float64(b.Current)/larger
	at := float64(a.At) + (float64(b.At)-float64(a.At))*(ia/(ia-ib))
	return min(max(at, float64(a.At)), float64(b.At))
}

// rounding is what a step of the clock may be off by, because 0.3 s - 0.2 s is
// not quite 0.1 s in binary, the less so the larger the clock's reading.
func rounding(step, from, to units.Duration) units.Duration {
	reading := max(math.Abs(float64(from)), math.Abs(float64(to)))
	return units.Duration(1e-9*float64(step) + 4e-16*reading)
}

func gapBetween(a, b CurrentReading) Gap {
	mean := a.Current/2 + b.Current/2
	return Gap{From: a.At, To: b.At, Charge: mean.For(b.At - a.At)}
}

// numbered names element i of a list, counting from 1.
func numbered(field string, i int) string { return field + " " + strconv.Itoa(i+1) }

// exactText writes a time in seconds; String rounds to whole seconds, which
// would hide a step back of a fraction.
func exactText(t units.Duration) string { return t.Text(units.Second, -1) }
