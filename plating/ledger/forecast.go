package ledger

import (
	"fmt"
	"math"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A Plan says what to forecast.
type Plan struct {
	Salt  faraday.Formula
	Loads int // looked back on for the mean; 0 means all
	Next  int // additions to foretell, 1 to 100
	// FeedAt is the content at which the bath is fed; 0 means its low alarm.
	FeedAt units.MassConcentration
}

// A Forecast carries the mean of past loads on.
type Forecast struct {
	Loads       int // that the mean is of
	WithDragOut int // of these, the loads that give a drag-out; the others count as if none left the bath
	// metal lost for a unit of charge, drag-out and anodes counted; below zero the bath grows richer
	PerCharge units.Equivalent
	PerDay    units.Charge // mean charge a day; 0 when the loads do not span any time
	Next      []Planned    // empty when the bath does not grow poorer
	// charge from now to the high alarm when the bath grows richer; 0 when that is never or not watched
	High units.Charge
}

// A Planned addition.
type Planned struct {
	Charge   units.Charge // from now; 0 when due
	When     time.Time    // zero when the charge a day is not known
	Metal    units.Mass   // from FeedAt back to the target; the first one from what is there by then
	SaltMass units.Mass
}

// Forecast foretells the next additions from the mean of past loads.
//
//	k = Σ(out - back)/Σq
//	Q₁ = (m - c₁·V)/k
//	Q₂ = (c₂ - c₁)·V/k
//
//	out - back  deposit and drag-out less anodes and drag-in of each load [kg]
//	q           charge of each load [C]
//	k           PerCharge  metal lost for a unit of charge [kg/C]
//	m           metal now [kg]
//	c₁, c₂      content at which to feed, target content, c₁ < c₂ [kg/m³]
//	V           mark: the volume is taken to be kept [m³]
//	Q₁, Q₂      charge to the first addition, and from each to the next [C]
//
// Days follow from the charge between the first and the last of those loads and
// the time between them. It is as good as the coming work is like the past.
//
// Errors: a [*units.ValueError] for a number out of range, a feeding content
// that is zero or not below the target, and a book without charge in its loads;
// those of [faraday.MetalContent].
//
// Source: [Definition].
func (l *Ledger) Forecast(p Plan) (Forecast, error) {
	if l == nil {
		return Forecast{}, units.Missing("book", "one that is opened")
	}
	if p.Next < 1 || p.Next > 100 {
		return Forecast{}, &units.ValueError{Field: "additions to foretell", Value: fmt.Sprint(p.Next),
			Need: "a number from 1 to 100", Err: units.ErrOutOfRange}
	}
	if p.Loads < 0 {
		return Forecast{}, &units.ValueError{Field: "loads to look back on", Value: fmt.Sprint(p.Loads),
			Need: "zero for all, or a number above it", Err: units.ErrNegative}
	}
	at, target := p.FeedAt, l.bath.Aim()
	if at == 0 {
		at = l.bath.Low
	}
	if err := units.Positive("content to feed at", at); err != nil {
		return Forecast{}, err
	}
	if at >= target {
		return Forecast{}, &units.ValueError{Field: "content to feed at", Value: at.String(),
			Need: "less than the target, " + target.String(), Err: units.ErrInconsistent}
	}
	share, err := faraday.MetalContent(p.Salt, l.bath.Metal)
	if err != nil {
		return Forecast{}, err
	}
	f, err := l.mean(p.Loads)
	if err != nil {
		return Forecast{}, err
	}
	v, k := float64(l.bath.Volume), float64(f.PerCharge)
	if k <= 0 {
		if room := float64(l.bath.High)*v - l.core.metal; k < 0 && l.bath.High > 0 && room > 0 {
			f.High = units.Charge(room / -k)
		}
		return f, nil
	}
	charge := max(0, (l.core.metal-float64(at)*v)/k)
	lack := float64(target)*v - (l.core.metal - charge*k)
	for range p.Next {
		n := Planned{Charge: units.Charge(charge), Metal: units.Mass(lack), SaltMass: units.Mass(lack / float64(share))}
		if err := units.Finite("charge to the next addition", n.Charge); err != nil {
			return Forecast{}, err
		}
		n.When = after(l.latest, charge, float64(f.PerDay))
		f.Next = append(f.Next, n)
		lack = float64(target-at) * v
		charge += lack / k
	}
	return f, nil
}

// after returns when a charge will have passed; the zero time when nobody can tell.
func after(now time.Time, charge, perDay float64) time.Time {
	const most = 200 * 365 // days, more than a time.Duration holds is no forecast
	days := charge / perDay
	if !(days <= most) {
		return time.Time{}
	}
	return now.Add(time.Duration(days * 24 * float64(time.Hour))).Round(time.Minute)
}

// mean averages the last loads, those without a charge among them: their
// drag-out is lost as well.
func (l *Ledger) mean(loads int) (Forecast, error) {
	var f Forecast
	var lost, charge total
	var first, last time.Time
	early := 0.0 // charge of the earliest load: its time is where counting starts
	for i := len(l.records) - 1; i >= 0 && (loads == 0 || f.Loads < loads); i-- {
		r := &l.records[i]
		load, ok := r.Entry.Event.(Load)
		if !ok || !r.counts() {
			continue
		}
		for _, m := range []units.Mass{r.Deposited, r.DraggedOut, -r.FromAnode, -r.DraggedIn} {
			lost.add(float64(m))
		}
		charge.add(float64(load.Charge))
		if load.DragOut > 0 {
			f.WithDragOut++
		}
		if f.Loads++; f.Loads == 1 {
			last = r.Entry.When
		}
		first, early = r.Entry.When, float64(load.Charge)
	}
	q := charge.value()
	if q <= 0 {
		return f, &units.ValueError{Field: "charge of the loads", Value: units.Charge(q).String(),
			Need: "at least one load with a charge in the book", Err: units.ErrNotPositive}
	}
	f.PerCharge = units.Equivalent(lost.value() / q)
	if days := last.Sub(first).Hours() / 24; days > 0 {
		f.PerDay = units.Charge((q - early) / days)
	}
	if math.IsInf(float64(f.PerCharge), 0) {
		return f, units.Finite("metal lost for a unit of charge", f.PerCharge)
	}
	return f, nil
}
