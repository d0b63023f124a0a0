package faraday

import (
	"math"

	"example.com/laydown/units"
)

// In this file, sequence.go and currentlog.go a current is positive when it deposits
// (the work is the cathode) and negative when it strips. That is the sign of
// the meter on a plating line, and the reverse of [ButlerVolmer].

// A SplitCharge is a charge in two parts: what deposited and what stripped,
// both as sizes, ≥ 0.
type SplitCharge struct {
	Deposited units.Charge
	Stripped  units.Charge
}

// Net returns the charge that is left for the coat, if both ways have the same
// current efficiency. They seldom have: where it matters, take
// [MassOfCharge] of each part with its own.
func (s SplitCharge) Net() units.Charge { return s.Deposited - s.Stripped }

// Gross returns the charge that passed, either way: what an ampere-hour meter
// without sign shows.
func (s SplitCharge) Gross() units.Charge { return s.Deposited + s.Stripped }

// A Ramp is a current that changes evenly from one value to another, as at the
// start of a run or while the work is lowered into the bath.
type Ramp struct {
	From, To units.Current  // ≥ 0
	Time     units.Duration // > 0
}

// Charge returns the charge of the whole ramp.
//
//	Q = (I₁ + I₂)/2·t
//
//	I₁  r.From  current at the start, ≥ 0 [A]
//	I₂  r.To    current at the end, ≥ 0 [A]
//	t   r.Time  > 0 [s]
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [Definition] (the area of a trapezium).
func (r Ramp) Charge() (units.Charge, error) {
	mean, err := r.Mean()
	if err != nil {
		return 0, err
	}
	return finite("charge", mean.For(r.Time))
}

// Mean returns the steady current with the same charge, (I₁ + I₂)/2.
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [Definition].
func (r Ramp) Mean() (units.Current, error) {
	if err := units.NonNegative("current at the start", r.From); err != nil {
		return 0, err
	}
	if err := units.NonNegative("current at the end", r.To); err != nil {
		return 0, err
	}
	if err := units.Positive("time of the ramp", r.Time); err != nil {
		return 0, err
	}
	return r.From/2 + r.To/2, nil
}

// A Pulse is a current that jumps between two values over and over, the higher
// one first. With no off time or with a base as high as the peak it is a steady
// current.
type Pulse struct {
	Peak units.Current  // > 0
	Base units.Current  // 0 ≤ Base ≤ Peak; 0 for a pause
	On   units.Duration // of the peak, > 0
	Off  units.Duration // of the base, ≥ 0
}

// Check returns a [*units.ValueError] unless all fields are in range.
func (p Pulse) Check() error {
	if err := units.Positive("peak current", p.Peak); err != nil {
		return err
	}
	if err := units.NonNegative("base current", p.Base); err != nil {
		return err
	}
	if p.Base > p.Peak {
		return &units.ValueError{Field: "base current", Value: p.Base.String(),
			Need: "at most the peak current of " + p.Peak.String(), Err: units.ErrInconsistent}
	}
	if err := units.Positive("on time", p.On); err != nil {
		return err
	}
	if err := units.NonNegative("off time", p.Off); err != nil {
		return err
	}
	return units.Finite("period", p.Period())
}

// Period returns the time from one pulse to the next, t₁ + t₂.
func (p Pulse) Period() units.Duration { return p.On + p.Off }

// Duty returns the share of the time that the peak current flows.
//
//	d = t₁/(t₁ + t₂)
//
//	t₁  p.On   > 0 [s]
//	t₂  p.Off  ≥ 0 [s]
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [Definition].
func (p Pulse) Duty() (units.Ratio, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	return units.Ratio(float64(p.On) / float64(p.Period())), nil
}

// Mean returns the steady current with the same charge over whole periods.
//
//	I = d·Ip + (1 - d)·Ib
//
//	d   [Pulse.Duty]
//	Ip  p.Peak  > 0 [A]
//	Ib  p.Base  0 ≤ Ib ≤ Ip [A]
//
// The coat follows the mean current as far as the efficiency is that of steady
// current; the grain and the limiting current follow the peak.
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [Definition].
func (p Pulse) Mean() (units.Current, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	period := float64(p.Period())
	return finite("mean current", units.Current(float64(p.Peak)*(float64(p.On)/period)+
		float64(p.Base)*(float64(p.Off)/period)))
}

// Charge returns the charge over a time that starts with a pulse and may end
// within one.
//
//	Q = k·(Ip·t₁ + Ib·t₂) + Ip·min(r, t₁) + Ib·(r - min(r, t₁))
//
//	k   whole periods in the time
//	r   rest of the time behind them [s]
//	t₁  p.On, t₂  p.Off [s]
//	Ip  p.Peak, Ib  p.Base [A]
//
// Exact for a broken last period. Edges are taken as upright: a supply that
// needs a good part of the on time to rise gives less.
//
// Errors: a [*units.ValueError] for a field out of range or a time that is
// negative or not finite.
//
// Source: [Definition].
func (p Pulse) Charge(total units.Duration) (units.Charge, error) {
	if err := p.Check(); err != nil {
		return 0, err
	}
	on, off, err := cycles(p.On, p.Off, total)
	if err != nil {
		return 0, err
	}
	return finite("charge", p.Peak.For(on)+p.Base.For(off))
}

// Reverse is a current that deposits and strips in turn, the deposit first.
type Reverse struct {
	Forward      units.Current  // deposits, > 0
	ForwardTime  units.Duration // > 0
	Backward     units.Current  // strips, as a size, ≥ 0
	BackwardTime units.Duration // ≥ 0
}

// Check returns a [*units.ValueError] unless all fields are in range and a
// cycle leaves something on the work.
func (r Reverse) Check() error {
	if err := units.Positive("forward current", r.Forward); err != nil {
		return err
	}
	if err := units.Positive("forward time", r.ForwardTime); err != nil {
		return err
	}
	if err := units.NonNegative("backward current", r.Backward); err != nil {
		return err
	}
	if err := units.NonNegative("backward time", r.BackwardTime); err != nil {
		return err
	}
	on, off := r.Forward.For(r.ForwardTime), r.Backward.For(r.BackwardTime)
	if err := units.Positive("forward charge", on); err != nil {
		return err
	}
	if err := units.NonNegative("backward charge", off); err != nil {
		return err
	}
	if off >= on {
		return &units.ValueError{Field: "backward charge", Value: off.String(),
			Need: "less than the forward charge of " + on.String() + ", else nothing is plated", Err: units.ErrInconsistent}
	}
	return units.Finite("cycle", r.Cycle())
}

// Cycle returns the time of a forward and a backward stretch.
func (r Reverse) Cycle() units.Duration { return r.ForwardTime + r.BackwardTime }

// Mean returns the steady current with the same net charge over whole cycles.
//
//	I = (I₁·t₁ - I₂·t₂)/(t₁ + t₂)
//
//	I₁  r.Forward   t₁  r.ForwardTime
//	I₂  r.Backward  t₂  r.BackwardTime
//
// Net as in [SplitCharge.Net]: with one efficiency for both ways.
//
// Errors: a [*units.ValueError] for a field out of range or a net charge that
// is not above zero.
//
// Source: [Definition].
func (r Reverse) Mean() (units.Current, error) {
	if err := r.Check(); err != nil {
		return 0, err
	}
	net := r.Forward.For(r.ForwardTime) - r.Backward.For(r.BackwardTime)
	return net.PerTime(r.Cycle())
}

// Charge returns the charge each way over a time that starts forward and may
// end within a cycle.
//
//	Qd = I₁·(k·t₁ + min(r, t₁))
//	Qs = I₂·(k·t₂ + r - min(r, t₁))
//
//	k   whole cycles in the time
//	r   rest of the time behind them [s]
//	I₁  r.Forward, t₁  r.ForwardTime
//	I₂  r.Backward, t₂  r.BackwardTime
//
// Exact for a broken last cycle.
//
// Errors: a [*units.ValueError] for a field out of range, a cycle without net
// charge, or a time that is negative or not finite.
//
// Source: [Definition].
func (r Reverse) Charge(total units.Duration) (SplitCharge, error) {
	if err := r.Check(); err != nil {
		return SplitCharge{}, err
	}
	on, off, err := cycles(r.ForwardTime, r.BackwardTime, total)
	if err != nil {
		return SplitCharge{}, err
	}
	return SplitCharge{Deposited: r.Forward.For(on), Stripped: r.Backward.For(off)}.finite()
}

// cycles divides a total time into the time of the first and of the second
// stretch of a cycle that repeats.
func cycles(first, second, total units.Duration) (a, b units.Duration, err error) {
	if err := units.NonNegative("total time", total); err != nil {
		return 0, 0, err
	}
	period := float64(first) + float64(second)
	rest := math.Mod(float64(total), period)
	// rest is exact, so this quotient is whole but for its own rounding.
	whole := math.Round((float64(total) - rest) / period)
	started := min(rest, float64(first))
	return units.Duration(whole*float64(first) + started), units.Duration(whole*float64(second) + (rest - started)), nil
}

// finite passes the charges on unless one of them, or their sum, overflowed.
func (s SplitCharge) finite() (SplitCharge, error) {
	if err := units.Finite("charge", s.Gross()); err != nil {
		return SplitCharge{}, err
	}
	return s, nil
}
