package ledger_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyBalanceCloses: a thousand random histories, after every entry.
func TestPropertyBalanceCloses(t *testing.T) {
	testdata.SlowOnly(t)
	rng := rand.New(rand.NewPCG(11, 12))
	worst, entries := 0.0, 0
	for range 1000 {
		l := randomLedger(rng, 1+rng.IntN(60))
		for _, r := range l.Records() {
			entries++
			off := math.Abs(float64(r.After.Balance.Gap())) / float64(r.After.Balance.Through())
			if worst = max(worst, off); off > 1e-9 {
				t.Fatalf("gap %g of %v", off, r.After.Balance)
			}
		}
		same(t, "written and read", must(ledger.Open(reader(bytesOf(l)))), l)
	}
	t.Logf("%d entries, worst gap %.2g of the metal through the book", entries, worst)
}

// TestPropertyDilution: dragging out and topping up n times leaves (1-d/V)^n.
func TestPropertyDilution(t *testing.T) {
	b := goldBath()
	l := must(ledger.New(b, day(0)))
	d := 20 * units.Millilitre
	for n := 1; n <= 200; n++ {
		must(l.Post(ledger.Entry{When: day(0), Event: ledger.Load{DragOut: d}}))
		must(l.Post(ledger.Entry{When: day(0), Event: ledger.Addition{Water: d}}))
		near(t, "content", float64(l.State().Content), float64(b.Content)*math.Pow(1-float64(d)/float64(b.Volume),
			float64(n)), 1e-12)
	}
}

// TestPropertyAnodes: with anodes that give what the deposit takes the content
// stands still; with more it rises, with less it falls, whatever the charge.
func TestPropertyAnodes(t *testing.T) {
	b := nickelBath()
	for _, share := range []units.Ratio{0, 0.5, 0.95 / 0.98, 1} {
		b.Anode.Share = share
		if share == 0 {
			b.Anode = ledger.Anode{}
		}
		l := must(ledger.New(b, day(0)))
		must(l.Post(ledger.Entry{When: day(0), Event: ledger.Load{Charge: 3000 * units.AmpereMinute}}))
		moved := float64(l.State().Metal) - float64(b.Content)*float64(b.Volume)
		net := float64(must(b.Rates()).Net)
		near(t, "moved", moved, -net*180000, 1e-9)
		switch {
		case share == 1 && !(moved > 0), share < 0.96 && !(moved < 0), share > 0.96 && share < 1 && math.Abs(moved) > 1e-12:
			t.Errorf("share %v: moved by %g", share, moved)
		}
		b.Anode.Efficiency = nickelBath().Anode.Efficiency
	}
}

// TestPropertyReplenish: posting what is advised reaches target and mark.
func TestPropertyReplenish(t *testing.T) {
	rng := rand.New(rand.NewPCG(21, 22))
	for range 500 {
		l := randomLedger(rng, 1+rng.IntN(20))
		b := l.Account()
		for _, salt := range b.Salts {
			again := must(ledger.Open(reader(bytesOf(l))))
			r, err := again.ByAnalysis(salt)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "share", float64(r.Metal), float64(r.SaltMass)*float64(r.Share), 1e-12)
			if e := r.Addition(); e.SaltMass > 0 || e.Water > 0 {
				must(again.Post(ledger.Entry{When: day(100), Event: e}))
			}
			s := again.State()
			if r.Over > 0 {
				if r.SaltMass != 0 || s.Content < b.Content*(1-1e-12) {
					t.Errorf("over by %v, yet salt %v, content %v", r.Over, r.SaltMass, s.Content)
				}
			} else {
				near(t, "content", float64(s.Content), float64(b.Content), 1e-12)
			}
			near(t, "content said", float64(s.Content), float64(r.Content), 1e-12)
			near(t, "volume", float64(s.Volume), math.Max(float64(b.Volume), float64(l.State().Volume)), 1e-12)

			n := ledger.Need{Metal: l.State().Metal, Volume: l.State().Volume, Mark: b.Volume, Target: b.Content}
			f, err := ledger.ReplenishBySolution(n, 4*b.Content)
			if err != nil {
				t.Fatal(err)
			}
			if f.Over == 0 {
				near(t, "content by solution", float64(f.Content), float64(b.Content), 1e-12)
			}
			if f.Water < 0 || f.DrawOff < 0 || f.Water > 0 && f.DrawOff > 1e-12 {
				t.Errorf("feed %+v", f)
			}
		}
	}
}

// TestPropertyByCharge: feeding by the meter after every load keeps a bath
// without drag-out where it was; the hydrate does not matter for the metal.
func TestPropertyByCharge(t *testing.T) {
	b := goldBath()
	l := must(ledger.New(b, day(0)))
	for range 20 {
		must(l.Post(ledger.Entry{When: day(0), Event: ledger.Load{Charge: 40 * units.AmpereMinute}}))
		r := must(l.ByCharge(b.Salts[0]))
		must(l.Post(ledger.Entry{When: day(0), Event: r.Addition()}))
		if l.State().SinceAddition != 0 {
			t.Fatal("the meter was not set back")
		}
	}
	near(t, "content", float64(l.State().Content), float64(b.Content), 1e-12)

	nickel := nickelBath()
	nickel.Anode = ledger.Anode{}
	six, seven := must(nickel.SaltPerCharge(formula("NiSO4.6H2O"))), must(nickel.SaltPerCharge(formula("NiSO4.7H2O")))
	near(t, "hydrates", float64(seven)/float64(six),
		float64(formula("NiSO4.7H2O").MolarMass())/float64(formula("NiSO4.6H2O").MolarMass()), 1e-12)
}

// TestPropertyForecast follows the forecast load by load: the low alarm comes
// with the load that passes the charge foretold, and each refill lasts as long.
func TestPropertyForecast(t *testing.T) {
	b := goldBath()
	l := must(ledger.New(b, day(0)))
	load := ledger.Load{Charge: 5 * units.AmpereMinute}
	i := 0
	post := func() {
		must(l.Post(ledger.Entry{When: day(float64(i) / 4), Event: load}))
		i++
	}
	for range 5 {
		post()
	}
	f := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 3}))
	if f.Loads != 5 || len(f.Next) != 3 {
		t.Fatalf("%+v", f)
	}
	near(t, "charge a day", float64(f.PerDay), float64(20*units.AmpereMinute), 1e-9)
	near(t, "rate", float64(f.PerCharge), float64(must(b.Rates()).Net), 1e-12)
	start := l.State()
	for k, n := range f.Next {
		for !l.State().Alarms.Has(ledger.AlarmLow) {
			post()
		}
		passed := l.State().Charge - start.Charge
		if passed < n.Charge || passed > n.Charge+units.Charge(1+k)*load.Charge {
			t.Errorf("addition %d at %v, foretold %v", k+1, passed, n.Charge)
		}
		near(t, "day", n.When.Sub(start.When).Hours()/24, float64(n.Charge)/float64(f.PerDay), 1e-3)
		must(l.Post(ledger.Entry{When: day(float64(i) / 4), Event: must(l.ByAnalysis(b.Salts[0])).Addition()}))
	}
	due := must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 1, FeedAt: 7.99 * units.GramPerLitre}))
	post()
	due = must(l.Forecast(ledger.Plan{Salt: b.Salts[0], Next: 1, FeedAt: 7.999 * units.GramPerLitre}))
	if due.Next[0].Charge != 0 {
		t.Errorf("due now, foretold %v", due.Next[0].Charge)
	}
	near(t, "salt when due", float64(due.Next[0].SaltMass), float64(must(l.ByAnalysis(b.Salts[0])).SaltMass), 1e-9)

	rich := nickelBath()
	rich.Anode.Share = 1
	r := must(ledger.New(rich, day(0)))
	must(r.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: 100 * units.AmpereMinute}}))
	up := must(r.Forecast(ledger.Plan{Salt: rich.Salts[0], Next: 2}))
	if len(up.Next) != 0 || up.High <= 0 || up.PerCharge >= 0 {
		t.Errorf("a bath that grows richer: %+v", up)
	}
	must(r.Post(ledger.Entry{When: day(2), Event: ledger.Load{Charge: up.High * 1.000001}}))
	if !r.State().Alarms.Has(ledger.AlarmHigh) {
		t.Error("no high alarm at the charge foretold")
	}
}

// TestPropertyAnalysis: never less sure afterwards; between the two; a reset
// takes the analysis; the efficiency that is implied is the true one.
func TestPropertyAnalysis(t *testing.T) {
	rng := rand.New(rand.NewPCG(31, 32))
	for range 300 {
		l := randomLedger(rng, 1+rng.IntN(10))
		before := l.State()
		u := float64(before.Content) * (0.001 + 0.05*rng.Float64())
		c := float64(before.Content) * (0.9 + 0.2*rng.Float64())
		reset := rng.IntN(2) == 0
		r := must(l.Post(ledger.Entry{When: day(100), Event: ledger.Analysis{Content: units.MassConcentration(c),
			Uncertainty: units.MassConcentration(u), Reset: reset}}))
		s := l.State()
		low, high := min(c, float64(before.Content)), max(c, float64(before.Content))
		if got := float64(s.Content); got < low*(1-1e-12) || got > high*(1+1e-12) {
			t.Errorf("content %g outside %g to %g", got, low, high)
		}
		if reset {
			near(t, "reset", float64(s.Content), c, 1e-12)
			near(t, "reset uncertainty", float64(s.ContentUncertainty), u, 1e-9)
			continue
		}
		if s.ContentUncertainty > before.ContentUncertainty*(1+1e-9) || float64(s.ContentUncertainty) > u*(1+1e-9) {
			t.Errorf("less sure after an analysis: %v, book %v, analysis %g", s.ContentUncertainty, before.ContentUncertainty,
				u)
		}
		want, k, err := ledger.Combine(r.Comparison.Book, r.Comparison.Lab)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "combined", float64(s.Content), float64(want.Content), 1e-12)
		near(t, "combined uncertainty", float64(s.ContentUncertainty), float64(want.Uncertainty), 1e-9)
		near(t, "weight", float64(r.Comparison.Weight), float64(k), 1e-12)
		if s.Alarms.Has(ledger.AlarmDisagree) != (math.Abs(float64(r.Comparison.Apart)) > 2) {
			t.Error("disagreement not told")
		}
	}

	b := goldBath()
	b.Fine = 0
	l := must(ledger.New(b, day(0)))
	q := 200 * units.AmpereMinute
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: q}}))
	truth := (float64(b.Content)*float64(b.Volume) - 0.41*float64(b.Equivalent)*float64(q)) / float64(b.Volume)
	r := must(l.Post(ledger.Entry{When: day(2), Event: ledger.Analysis{Content: units.MassConcentration(truth),
		Uncertainty: 0.01 * units.GramPerLitre}}))
	near(t, "implied efficiency", float64(r.Comparison.Efficiency), 0.41, 1e-12)
	if !r.After.Alarms.Has(0) || r.Comparison.EfficiencyUncertainty <= 0 {
		t.Error("no uncertainty of the implied efficiency")
	}
}

// TestPropertyAlarms walks a bath through each.
func TestPropertyAlarms(t *testing.T) {
	b := goldBath()
	b.Level = 4.8 * units.Litre
	b.Life = 0.2
	for want, events := range map[ledger.Alarms][]ledger.Event{
		0:                       {ledger.Load{DragIn: units.Millilitre}},
		ledger.AlarmLow:         {ledger.Correction{Metal: -6 * units.Gram, Reason: "spill"}},
		ledger.AlarmPerhapsLow:  {ledger.Correction{Metal: -4.5 * units.Gram, Reason: "spill"}},
		ledger.AlarmHigh:        {ledger.Addition{Metal: 6 * units.Gram}},
		ledger.AlarmPerhapsHigh: {ledger.Addition{Metal: 4.5 * units.Gram}},
		ledger.AlarmLevel | ledger.AlarmPerhapsHigh:                  {ledger.Evaporation{Volume: 0.5 * units.Litre}},
		ledger.AlarmAnalysisDue | ledger.AlarmLow | ledger.AlarmLife: {ledger.Load{Charge: 500 * units.AmpereMinute}},
		ledger.AlarmDisagree: {ledger.Analysis{Content: 7.5 * units.GramPerLitre, Uncertainty: 0.05 * units.GramPerLitre}},
	} {
		l := must(ledger.New(b, day(0)))
		for _, e := range events {
			must(l.Post(ledger.Entry{When: day(1), Event: e}))
		}
		if got := l.State().Alarms; got != want {
			t.Errorf("alarms %v, want %v (%v)", got, want, l.State().Content)
		}
		if n := len(want.Texts()); (n == 0) != (want.String() == "none") {
			t.Errorf("%d texts, string %q", n, want)
		}
	}
}

// TestPropertyGuess: an opening content without uncertainty does not outweigh
// the first analysis; the second is averaged as ever.
func TestPropertyGuess(t *testing.T) {
	b := goldBath()
	b.ContentUncertainty = 0
	l := must(ledger.New(b, day(0)))
	must(l.Post(ledger.Entry{When: day(1), Event: ledger.Load{Charge: 20 * units.AmpereMinute}}))
	first := must(l.Post(ledger.Entry{When: day(2), Event: ledger.Analysis{Content: 7 * units.GramPerLitre,
		Uncertainty: 0.1 * units.GramPerLitre}}))
	near(t, "content", float64(l.State().Content), 7, 1e-12)
	near(t, "uncertainty", float64(l.State().ContentUncertainty), 0.1, 1e-3)
	if c := first.Comparison; c.Weight != 1 || c.Efficiency != 0 || l.State().Alarms&ledger.AlarmDisagree != 0 {
		t.Errorf("weight %v, efficiency %v, alarms %v", c.Weight, c.Efficiency, l.State().Alarms)
	}
	second := must(l.Post(ledger.Entry{When: day(3), Event: ledger.Analysis{Content: 7.1 * units.GramPerLitre,
		Uncertainty: 0.1 * units.GramPerLitre}}))
	if w := second.Comparison.Weight; !(w > 0.4 && w < 0.6) {
		t.Errorf("weight of the second analysis %v", w)
	}
}
