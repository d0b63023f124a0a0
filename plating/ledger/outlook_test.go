package ledger_test

import (
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestIndependentPlanned follows a forecast by hand: the first addition makes good what is
// lacking by then, each further one what lies between the feeding content and the target.
func TestIndependentPlanned(t *testing.T) {
	b := goldBath()
	b.Target = 8.5
	q := 30 * units.AmpereMinute
	l := book(t, b, ledger.Load{Charge: q, DragOut: 3 * units.Millilitre}, ledger.Load{Charge: q})
	const at = 7.25
	f := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 3, FeedAt: at}))
	share := float64(must(faraday.MetalContent(b.Salts[0], "Au")))
	volume, metal := 5., float64(l.State().Metal/units.Gram) // L, g
	rate := float64(f.PerCharge/units.GramPerAmpereMinute) * 1
	for i, n := range f.Next {
		passed := float64(n.Charge / units.AmpereMinute)
		near(t, "content by then", (metal-rate*passed)/volume, at, 1e-9)
		near(t, "metal", float64(n.Metal/units.Gram), (8.5-at)*volume, 1e-9)
		near(t, "salt", float64(n.SaltMass/units.Gram), (8.5-at)*volume/share, 1e-9)
		metal += float64(n.Metal / units.Gram)
		if i > 0 && n.Charge <= f.Next[i-1].Charge {
			t.Error("no charge between two additions")
		}
	}
	// Past the feeding content already: due now, with all that is lacking.
	late := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 2, FeedAt: 8.4}))
	near(t, "due", float64(late.Next[0].Metal/units.Gram), 8.5*volume-float64(l.State().Metal/units.Gram), 1e-9)
	near(t, "the next", float64(late.Next[1].Metal/units.Gram), (8.5-8.4)*volume, 1e-9)
	near(t, "the next charge", float64(late.Next[1].Charge/units.AmpereMinute)*rate, (8.5-8.4)*volume, 1e-9)
	if late.Next[0].Charge != 0 {
		t.Errorf("due in %v", late.Next[0].Charge)
	}
}

// TestIndependentMeanOfLast: the mean is that of the last loads, the older ones left out.
func TestIndependentMeanOfLast(t *testing.T) {
	b := goldBath()
	load := func(weighed, charge float64) ledger.Event {
		return ledger.Load{Charge: units.Charge(charge) * units.AmpereMinute, Weighed: units.Mass(weighed) * units.Gram}
	}
	l := book(t, b, load(0.1, 100), load(0.4, 20), ledger.Addition{Water: units.Millilitre}, load(0.6, 10))
	for n, want := range map[int]float64{0: 1.1 / 130, 1: 0.6 / 10, 2: 1. / 30, 3: 1.1 / 130, 9: 1.1 / 130} {
		f := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 1, Loads: n}))
		near(t, "metal for a charge", float64(f.PerCharge/units.GramPerAmpereMinute), 0.996*want, 1e-12)
		if wantLoads := map[int]int{1: 1, 2: 2}[n]; f.Loads != max(wantLoads, 3*min(1, n/3)) && n != 0 {
			t.Errorf("%d loads of %d", f.Loads, n)
		}
	}
	// The last two: ten ampere-minutes in the two days between them.
	f := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 1, Loads: 2}))
	near(t, "a day", float64(f.PerDay/units.AmpereMinute), 5, 1e-12)
}

// TestPropertyForecastLimits: a hundred additions are foretold and one more is not; loads of
// one moment give no day; little charge is enough; what is no number is refused.
func TestPropertyForecastLimits(t *testing.T) {
	b := goldBath()
	salt := b.Salts[0]
	l := book(t, b, ledger.Load{Charge: 30 * units.AmpereMinute})
	if f := must(l.Forecast(ledger.Plan{Salt: salt, Next: 100})); len(f.Next) != 100 || f.PerDay != 0 ||
		!f.Next[0].When.IsZero() {
		t.Errorf("%d foretold, %v a day", len(f.Next), f.PerDay)
	}
	_, err := l.Forecast(ledger.Plan{Salt: salt, Next: 101})
	says(t, "101", err, "additions to foretell", "a number from 1 to 100")
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}))
	if f := must(l.Forecast(ledger.Plan{Salt: salt, Next: 1})); f.PerDay != 0 || !f.Next[0].When.IsZero() {
		t.Errorf("two loads of one moment: %v a day, next %v", f.PerDay, f.Next[0].When)
	}
	little, err := book(t, b, ledger.Load{Charge: 0.5}).Forecast(ledger.Plan{Salt: salt, Next: 1})
	if err != nil || little.Loads != 1 {
		t.Errorf("half a coulomb: %+v, %v", little, err)
	}
	for _, c := range []struct {
		load  ledger.Load
		field string
	}{
		{ledger.Load{Charge: 5e-324, DragOut: units.Millilitre}, "metal lost for a unit of charge"},
		{ledger.Load{Charge: 5e-324, DragIn: units.Millilitre, DragInContent: 5}, "metal lost for a unit of charge"},
		{ledger.Load{Charge: 1e5, Weighed: 1e-310}, "charge to the next addition"},
	} {
		_, err := book(t, b, c.load).Forecast(ledger.Plan{Salt: salt, Next: 1})
		wantField(t, c.field, err, c.field, units.ErrNotFinite)
	}
}

// TestIndependentHigh: a bath that grows richer reaches its high alarm after the charge that
// what is lacking takes; one that stands still, has none, or is above it has no such charge.
func TestIndependentHigh(t *testing.T) {
	thin := nickelBath()
	thin.Content, thin.ContentUncertainty, thin.Low, thin.High = 0.5, 0, 0.1, 0.9 // g/L
	thin.Anode.Share, thin.Anode.Efficiency = 1, ledger.EfficiencyRange{Value: 0.99}
	still := thin
	still.Anode.Efficiency = ledger.EfficiencyRange{Value: 0.95}
	still.Efficiency = ledger.EfficiencyRange{Value: 0.95}
	unwatched := thin
	unwatched.High = 0
	q := 10 * units.AmpereMinute
	for name, c := range map[string]struct {
		bath   ledger.Account
		events []ledger.Event
		some   bool
	}{
		"richer": {thin, nil, true}, "still": {still, nil, false}, "unwatched": {unwatched, nil, false},
		"above": {thin, []ledger.Event{ledger.Addition{Metal: 9 * units.Gram}}, false},
	} {
		l := book(t, c.bath, append(c.events, ledger.Load{Charge: q})...)
		f := must(l.Forecast(ledger.Plan{Salt: c.bath.Salts[0], Next: 2}))
		if len(f.Next) != 0 || math.Signbit(float64(f.High)) {
			t.Errorf("%s: %+v", name, f)
		}
		if !c.some {
			if f.High != 0 {
				t.Errorf("%s: high after %v", name, f.High)
			}
			continue
		}
		gain := 0.04 * float64(equivalent("Ni", 2)) // kg for a coulomb
		near(t, name, float64(f.High), (0.9*0.02-float64(l.State().Metal))/gain, 1e-9)
	}
	l := book(t, still, ledger.Load{Charge: q})
	if f := must(l.Forecast(ledger.Plan{Salt: still.Salts[0], Next: 2})); f.PerCharge != 0 {
		t.Errorf("loses %v", f.PerCharge)
	}
	_, err := still.SaltPerCharge(still.Salts[0])
	says(t, "salt of a bath that stands still", err, "metal drawn for a unit of charge",
		"metal drawn for a unit of charge 0.000000 g/(A·min): not above zero")
}
