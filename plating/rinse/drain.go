package rinse

import (
	"fmt"
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A DrainCurve says how much liquid is still on a rack while it drips over
// its bath.
type DrainCurve struct {
	Drainable units.Volume   // what would still run off at time zero, ≥ 0
	Held      units.Volume   // what never runs off, ≥ 0
	Constant  units.Duration // time in which the drainable part falls to 1/e, > 0
}

func (c DrainCurve) check(t units.Duration) error {
	return first(units.NonNegative("drainable volume", c.Drainable), units.NonNegative("held volume", c.Held),
		units.Positive("time constant", c.Constant), units.NonNegative("drain time", t))
}

// Left returns the liquid left on the rack after a time.
//
//	V = V₁·exp(-t/T) + V₂
//
//	V₁  Drainable  ≥ 0 [m³]
//	V₂  Held       ≥ 0 [m³]
//	T   Constant   > 0 [s]
//	t   t          time over the bath, ≥ 0 [s]
//
// At time zero V₁ + V₂ is on the rack. A curve through drip volumes, not a
// law: a flat film drains more slowly at late times ([Hanging.DrainedFilm]).
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [RinsingManualD].
func (c DrainCurve) Left(t units.Duration) (units.Volume, error) {
	if err := c.check(t); err != nil {
		return 0, err
	}
	v := units.Volume(float64(c.Drainable)*math.Exp(-float64(t)/float64(c.Constant)) + float64(c.Held))
	return finite("volume left", v)
}

// LeftWorking shows how [DrainCurve.Left] computes, with the same errors.
func (c DrainCurve) LeftWorking(t units.Duration) ([]working.Step, error) {
	v, err := c.Left(t)
	if err != nil {
		return nil, err
	}
	return []working.Step{{Formula: "V = V₁·exp(-t/T) + V₂", Source: "RinsingManualD",
		Terms: []working.Term{working.Of("V₁", "drainable at the start", c.Drainable), working.Of("t", "drain time", t),
			working.Of("T", "time constant", c.Constant), working.Of("V₂", "held for good", c.Held)},
		Result: working.Of("V", "left on the rack", v)}}, nil
}

// Saved returns the liquid that runs back into the bath when the drain time
// is drawn out from one time to a later one.
//
//	ΔV = V₁·(exp(-t₁/T) - exp(-t₂/T))
//
//	V₁  Drainable  ≥ 0 [m³]
//	t₁  from       ≥ 0 [s]
//	t₂  to         ≥ t₁ [s]
//	T   Constant   > 0 [s]
//
// Errors: a [*units.ValueError] for a value out of range or times the wrong
// way round.
//
// Source: [RinsingManualD].
func (c DrainCurve) Saved(from, to units.Duration) (units.Volume, error) {
	if err := first(c.check(from), c.check(to)); err != nil {
		return 0, err
	}
	if to < from {
		return 0, bad("drain times", from.String()+" to "+to.String(), "the shorter one first", units.ErrInconsistent)
	}
	gone := -math.Expm1(-(float64(to) - float64(from)) / float64(c.Constant))
	return units.Volume(float64(c.Drainable) * math.Exp(-float64(from)/float64(c.Constant)) * gone), nil
}

// A DrainFit is a curve found from drips.
type DrainFit struct {
	Curve DrainCurve   // Held is zero: drips do not tell it
	Worst units.Volume // largest distance of a measured drip from the curve's
}

// FitDrips finds the drain curve from the volumes that drip off in successive
// equal intervals, the first from time zero: hold a graduate under the rack
// and change it every so many seconds.
//
//	v_i = V₁·(1 - q)·q^i, q = exp(-Δ/T)
//
//	Δ    interval  > 0 [s]
//	v_i  drips     of interval 0, 1, 2 ..., two or more, each ≥ 0 [m³]
//
// Least squares on the drips; two of them are met exactly. What stays on the
// rack for good does not drip: weigh the rack wet and dry for Held.
//
// Errors: a [*units.ValueError] for fewer than two drips, a value out of range,
// or drips that do not get smaller.
//
// Source: [RinsingManualD]; fit [Derived].
func FitDrips(interval units.Duration, drips ...units.Volume) (DrainFit, error) {
	if err := units.Positive("drip interval", interval); err != nil {
		return DrainFit{}, err
	}
	if len(drips) < 2 {
		return DrainFit{}, bad("drips", fmt.Sprint(len(drips)), "two or more successive drip volumes", units.ErrOutOfRange)
	}
	largest := 0.0
	for i, v := range drips {
		if err := units.NonNegative(fmt.Sprintf("drip %d", i+1), v); err != nil {
			return DrainFit{}, err
		}
		largest = math.Max(largest, float64(v))
	}
	if largest == 0 {
		return DrainFit{}, bad("drips", "all zero", "at least one that is not", units.ErrNotPositive)
	}
	scaled := make([]float64, len(drips))
	for i, v := range drips {
		scaled[i] = float64(v) / largest
	}
	q := bestDecay(scaled)
	// At the ends there is no curve: nothing decays, or all is gone in one interval.
	if !(q > 1e-9 && q < 1-1e-6) {
		return DrainFit{}, bad("drips", fmt.Sprint(drips),
			"volumes that get smaller from drip to drip and do not vanish at once", units.ErrInconsistent)
	}
	a, _ := decayFit(scaled, q)
	fit := DrainFit{Curve: DrainCurve{Drainable: units.Volume(a / (1 - q) * largest),
		Constant: units.Duration(-float64(interval) / math.Log(q))}}
	for i, v := range scaled {
		fit.Worst = units.Volume(math.Max(float64(fit.Worst), math.Abs(v-a*math.Pow(q, float64(i)))*largest))
	}
	if fit.Curve.check(0) != nil {
		return DrainFit{}, tooFar("drain curve")
	}
	return fit, nil
}

// decayFit returns the best first drip for a decay q, and the slope of the sum
// of squares along q, up to a positive factor.
func decayFit(v []float64, q float64) (a, slope float64) {
	var vp, pp, vd, pd float64 // with p = q^i and d = dp/dq = i·q^(i-1)
	p, d := 1.0, 0.0
	for _, x := range v {
		vp, pp, vd, pd = vp+x*p, pp+p*p, vd+x*d, pd+p*d
		p, d = p*q, d*q+p
	}
	a = vp / pp
	return a, a * (a*pd - vd)
}

// bestDecay finds the q between 0 and 1 with the least sum of squares: a scan
// for the interval, then bisection on the slope.
func bestDecay(v []float64) float64 {
	const steps = 2000
	best, at := math.Inf(1), 0
	for i := 0; i <= steps; i++ {
		q := float64(i) / steps
		a, _ := decayFit(v, q)
		sum, p := 0.0, 1.0
		for _, x := range v {
			sum, p = sum+(x-a*p)*(x-a*p), p*q
		}
		if sum < best {
			best, at = sum, i
		}
	}
	low, high := math.Max(0, float64(at-1)/steps), math.Min(1, float64(at+1)/steps)
	for range 200 {
		mid := (low + high) / 2
		if _, slope := decayFit(v, mid); slope < 0 {
			low = mid
		} else {
			high = mid
		}
	}
	return (low + high) / 2
}
