package ledger_test

import (
	"math"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// pureGold is a gold bath of a volume and contents that a float64 holds exactly.
func pureGold() ledger.Account {
	b := goldBath()
	b.Volume, b.VolumeUncertainty, b.Fine = 1./256, 0, 0
	b.Content, b.ContentUncertainty = 8, 0.25
	b.Efficiency = ledger.EfficiencyRange{Value: 0.35}
	b.Low, b.High, b.Due, b.Life = 0, 0, 0, 0
	return b
}

// TestIndependentImplied finds the efficiency that an analysis implies by opening books of
// other efficiencies until one agrees, and its uncertainty by moving each of the two
// contents that it hangs on by its own.
func TestIndependentImplied(t *testing.T) {
	const (
		q = 100 * units.AmpereMinute
		u = 0.125 // of the analyses, g/L
	)
	first := func(c float64) ledger.Event {
		return ledger.Analysis{Content: units.MassConcentration(c), Uncertainty: u, Reset: true}
	}
	// What the book of a bath of an efficiency holds behind a load of q.
	behind := func(eff units.Efficiency, content float64) float64 {
		b := pureGold()
		b.Efficiency.Value, b.Content = eff, units.MassConcentration(content)
		return float64(book(t, b, ledger.Load{Charge: q}).State().Content)
	}
	solve := func(content, lab float64) float64 {
		low, high := 0.0001, 1.0
		for range 60 {
			if mid := (low + high) / 2; behind(units.Efficiency(mid), content) > lab {
				low = mid
			} else {
				high = mid
			}
		}
		return low
	}
	const opening, lab = 8, 6.71
	want := solve(opening, lab)
	byLab, byOpening := solve(opening, lab-u)-want, solve(opening+0.25, lab)-want
	c := must(book(t, pureGold(), ledger.Load{Charge: q}).Post(ledger.Entry{When: day(9),
		Event: ledger.Analysis{Content: lab, Uncertainty: u}})).Comparison
	near(t, "efficiency", float64(c.Efficiency), want, 1e-9)
	near(t, "its uncertainty", float64(c.EfficiencyUncertainty), math.Hypot(byLab, byOpening), 1e-6)

	// A second time: what counts is the load since the first analysis, and the uncertainty behind it.
	byFirst := solve(7.5+u, lab-0.5) - solve(7.5, lab-0.5)
	byLab = solve(7.5, lab-0.5-u) - solve(7.5, lab-0.5)
	l := book(t, pureGold(), ledger.Load{Charge: q}, first(7.5), ledger.Load{Charge: q})
	c = must(l.Post(ledger.Entry{When: day(9), Event: ledger.Analysis{Content: lab - 0.5, Uncertainty: u}})).Comparison
	near(t, "efficiency since the first", float64(c.Efficiency), solve(7.5, lab-0.5), 1e-9)
	near(t, "its uncertainty", float64(c.EfficiencyUncertainty), math.Hypot(byLab, byFirst), 1e-6)
}

// TestPropertyNoImplied: no efficiency is implied without a computed charge, nor one that no cathode has.
func TestPropertyNoImplied(t *testing.T) {
	load := ledger.Load{Charge: 20 * units.AmpereMinute}
	weighed := load
	weighed.Weighed = units.Gram
	for name, c := range map[string]struct {
		before  []ledger.Event
		content units.MassConcentration
		u       units.MassConcentration
		implied bool
	}{
		"a load":           {[]ledger.Event{load}, 7.5, 0.1, true},
		"no load":          {nil, 7.5, 0.1, false},
		"a weighed load":   {[]ledger.Event{weighed}, 7.5, 0.1, false},
		"over one":         {[]ledger.Event{load}, 7, 0.1, false},
		"below zero":       {[]ledger.Event{load}, 8.5, 0.1, false},
		"analysed already": {[]ledger.Event{load, ledger.Analysis{Content: 7.5, Uncertainty: 0.1}}, 7.5, 0.1, false},
		"says nothing":     {[]ledger.Event{load}, 7.5, 1e300, false},
	} {
		r := must(book(t, pureGold(), c.before...).Post(ledger.Entry{When: day(9),
			Event: ledger.Analysis{Content: c.content, Uncertainty: c.u}}))
		if got := r.Comparison; (got.Efficiency != 0) != c.implied || (got.EfficiencyUncertainty != 0) != c.implied {
			t.Errorf("%s: %v ± %v", name, got.Efficiency, got.EfficiencyUncertainty)
		}
	}
	// All of the charge: 1 is an efficiency that can be.
	b := pureGold()
	b.Efficiency.Value = 1
	l := book(t, b, load)
	r := must(l.Post(ledger.Entry{When: day(9), Event: ledger.Analysis{Content: l.State().Content, Uncertainty: 0.1}}))
	if r.Comparison.Efficiency != 1 {
		t.Errorf("implied %v, want 1", r.Comparison.Efficiency)
	}
}

// TestPropertyTwoApart: two uncertainties apart is no disagreement, a little more is; what
// the book goes on with is told with its uncertainty.
func TestPropertyTwoApart(t *testing.T) {
	b := pureGold()
	b.Content, b.ContentUncertainty = 8, 3 // with 4 of the analysis: 5
	for _, c := range []struct {
		content units.MassConcentration
		alarm   bool
	}{{18, false}, {units.MassConcentration(math.Nextafter(18, 19)), true}, {17, false}, {19, true}} {
		l := book(t, b)
		r := must(l.Post(ledger.Entry{When: day(1), Event: ledger.Analysis{Content: c.content, Uncertainty: 4}}))
		if l.State().Alarms.Has(ledger.AlarmDisagree) != c.alarm {
			t.Errorf("%v apart: alarms %v", r.Comparison.Apart, l.State().Alarms)
		}
		s := l.State()
		if both := r.Comparison.Both; both.Content != s.Content || both.Uncertainty != s.ContentUncertainty ||
			math.Abs(float64(both.Uncertainty)-3*4/5.) > 1e-12 {
			t.Errorf("both %+v, the book %v ± %v", both, s.Content, s.ContentUncertainty)
		}
	}
}
