package ledger_test

import (
	"math"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestIndependentEntryUncertainty: what an entry is uncertain by adds its square to the
// variance of the metal, whatever the entry, and is never taken off. The same entry
// without its uncertainty is the second way to the figure.
func TestIndependentEntryUncertainty(t *testing.T) {
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	variance := func(b ledger.Account, e ledger.Event) float64 {
		t.Helper()
		l, err := ledger.New(b, opened)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := l.Post(ledger.Entry{When: opened.Add(time.Hour), Event: e}); err != nil {
			t.Fatal(err)
		}
		return math.Pow(float64(l.State().MetalUncertainty), 2)
	}
	gold := goldBath()
	const u = 0.3 * units.Gram
	for name, c := range map[string]struct {
		with, without ledger.Event
		want          float64
	}{
		"addition": {ledger.Addition{Metal: 5 * units.Gram, Uncertainty: u}, ledger.Addition{Metal: 5 * units.Gram},
			math.Pow(float64(u), 2)},
		"correction": {ledger.Correction{Metal: -2 * units.Gram, Uncertainty: u, Reason: "a spill"},
			ledger.Correction{Metal: -2 * units.Gram, Reason: "a spill"}, math.Pow(float64(u), 2)},
		"weighing": {ledger.Load{Charge: 12 * units.AmpereMinute, Weighed: units.Gram, WeighedUncertainty: u},
			ledger.Load{Charge: 12 * units.AmpereMinute, Weighed: units.Gram}, math.Pow(0.996*float64(u), 2)},
		"drag-out": {ledger.Load{Weighed: units.Gram, DragOut: 10 * units.Millilitre,
			DragOutUncertainty: 5 * units.Millilitre},
			ledger.Load{Weighed: units.Gram, DragOut: 10 * units.Millilitre},
			math.Pow((40-0.996)/5*5e-3*1e-3, 2)}, // g/L of the bath behind the deposit, times 5 mL, in kg
	} {
		got := variance(gold, c.with) - variance(gold, c.without)
		if !(math.Abs(got/c.want-1) < 1e-6) {
			t.Errorf("%s: the variance grows by %g kg², want %g", name, got, c.want)
		}
	}
}

// TestIndependentApart: how far an analysis lies from the book, in their combined
// uncertainties, by hand; the alarm comes beyond two either way.
func TestIndependentApart(t *testing.T) {
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	bath := goldBath()
	for lab, want := range map[units.MassConcentration]float64{7.5: -0.5 / math.Hypot(0.1, 0.2),
		8.5: 0.5 / math.Hypot(0.1, 0.2),
		8:   0, 9.1: 1.1 / math.Hypot(0.1, 0.2)} {
		l, err := ledger.New(bath, opened)
		if err != nil {
			t.Fatal(err)
		}
		r, err := l.Post(ledger.Entry{When: opened.Add(time.Hour), Event: ledger.Analysis{Content: lab, Uncertainty: 0.2}})
		if err != nil {
			t.Fatal(err)
		}
		if got := float64(r.Comparison.Apart); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: %v apart, want %v", lab, got, want)
		}
		// 0.1 g/L against 0.2: four fifths of the book count, a fifth of the analysis.
		if got, want := float64(l.State().Content), 0.8*8+0.2*float64(lab); math.Abs(got-want) > 1e-9 {
			t.Errorf("%v: the book goes on with %v g/L, want %v", lab, got, want)
		}
	}
}

// TestIndependentForecastDate: the day of the next addition is counted on the calendar,
// over the end of a month with 31 days, of a February and of a year.
func TestIndependentForecastDate(t *testing.T) {
	for _, day := range []time.Time{time.Date(2026, 3, 30, 8, 0, 0, 0, time.UTC), time.Date(2026, 4, 29, 8, 0, 0, 0,
		time.UTC),
		time.Date(2028, 2, 28, 8, 0, 0, 0, time.UTC), time.Date(2026, 12, 30, 8, 0, 0, 0, time.UTC)} {
		l, err := ledger.New(goldBath(), day.AddDate(0, 0, -8))
		if err != nil {
			t.Fatal(err)
		}
		for _, back := range []int{-7, 0} {
			if _, err := l.Post(ledger.Entry{When: day.AddDate(0, 0, back),
				Event: ledger.Load{Charge: 7 * units.AmpereMinute}}); err != nil {
				t.Fatal(err)
			}
		}
		f, err := l.Forecast(ledger.Plan{Salt: formula("KAu(CN)2"), Next: 1})
		if err != nil {
			t.Fatal(err)
		}
		// Seven ampere-minutes from the first load to the last, in seven days: one a day.
		if math.Abs(float64(f.PerDay/units.AmpereMinute)-1) > 1e-9 {
			t.Fatalf("%v a day", f.PerDay)
		}
		days := float64(f.Next[0].Charge / units.AmpereMinute)
		whole := math.Floor(days)
		want := day.AddDate(0, 0, int(whole)).Add(time.Duration((days - whole) * float64(24*time.Hour)))
		if got := f.Next[0].When; got.Sub(want).Abs() > time.Minute || days < 3 {
			t.Errorf("%.2f days after %s: %s, want %s", days, day.Format(time.DateOnly), got, want)
		}
	}
}
