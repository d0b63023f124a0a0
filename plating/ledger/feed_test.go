package ledger_test

import (
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestIndependentByCharge: the advice by the meter, worked out from the grams of the meter,
// with the solution below its mark and above it.
func TestIndependentByCharge(t *testing.T) {
	b := goldBath()
	salt := b.Salts[0]
	for _, c := range []struct {
		events        []ledger.Event
		volume, after float64 // L
	}{
		{[]ledger.Event{ledger.Evaporation{Volume: 200 * units.Millilitre}}, 4.8, 5},
		{[]ledger.Event{ledger.Addition{Water: 300 * units.Millilitre}}, 5.3, 5.3},
		{nil, 5, 5},
	} {
		l := book(t, b, append(c.events, ledger.Load{Charge: 100 * units.AmpereMinute})...)
		r := must(l.ByCharge(salt))
		// 196.96657 g/mol, 96485.33212 C/mol, 6000 C, a cathode of 35 %, 99.6 % of gold
		grams := 196.96657 / 96485.33212 * 6000 * 0.35 * 0.996
		share := float64(must(faraday.MetalContent(salt, "Au")))
		near(t, "metal", float64(r.Metal/units.Gram), grams, 1e-6)
		near(t, "salt", float64(r.SaltMass/units.Gram), grams/share, 1e-6)
		near(t, "share", float64(r.Share), share, 1e-15)
		near(t, "volume", float64(r.Volume/units.Litre), c.after, 1e-12)
		if math.Abs(float64(r.Water/units.Litre)-(c.after-c.volume)) > 1e-12 {
			t.Errorf("water %v", r.Water)
		}
		near(t, "content", float64(r.Content), 40/c.after, 1e-9) // back where it was
		if r.Salt.String() != salt.String() || r.Over != 0 {
			t.Errorf("%+v", r)
		}
	}
	rates := must(b.Rates())
	near(t, "rates", float64(rates.Net), float64(rates.Deposit-rates.Anode), 1e-15)
	none := formula("NaCl")
	_, err := book(t, b).ByCharge(none)
	wantField(t, "salt", err, "metal content", units.ErrNotPositive)
}

// TestIndependentFeed feeds by solution and holds the metal and the volume of the bath
// against what was poured: under the mark, at the mark, over it, and with too much metal.
func TestIndependentFeed(t *testing.T) {
	for name, c := range map[string]struct {
		need    ledger.Need
		feed    units.MassConcentration
		drawOff bool
	}{
		"under the mark": {ledger.Need{Metal: 0.03, Volume: 0.0048, Mark: 0.005, Target: 8}, 100, false},
		"at the mark":    {ledger.Need{Metal: 0.03, Volume: 0.0049, Mark: 0.005, Target: 8}, 100, false},
		"over the mark":  {ledger.Need{Metal: 0.03, Volume: 0.005, Mark: 0.005, Target: 8}, 100, true},
		"thin feed":      {ledger.Need{Metal: 0.03, Volume: 0.005, Mark: 0.005, Target: 8}, 10, true},
		"full already":   {ledger.Need{Metal: 0.03, Volume: 0.006, Mark: 0.005, Target: 8}, 100, true},
		"nothing lacks":  {ledger.Need{Metal: 0.04, Volume: 0.0049, Mark: 0.005, Target: 8}, 100, false},
		"too much":       {ledger.Need{Metal: 0.06, Volume: 0.0049, Mark: 0.005, Target: 8}, 100, false},
	} {
		f, err := ledger.ReplenishBySolution(c.need, c.feed)
		if err != nil {
			t.Fatal(name, err)
		}
		full := math.Max(float64(c.need.Volume), float64(c.need.Mark))
		poured := float64(f.Solution) * float64(c.feed)
		near(t, name+": metal", float64(f.Metal), poured, 1e-12)
		near(t, name+": volume", float64(f.Volume), float64(c.need.Volume+f.Solution+f.Water), 1e-12)
		near(t, name+": content", float64(f.Content), (float64(c.need.Metal)+poured)/float64(f.Volume), 1e-12)
		if f.Over > 0 {
			near(t, name+": over", float64(f.Over), float64(c.need.Metal)-8*full, 1e-12)
			if f.Solution != 0 {
				t.Errorf("%s: %+v", name, f)
			}
		} else {
			near(t, name+": target", float64(f.Content), 8, 1e-12)
		}
		if got := float64(f.Volume) - full; math.Abs(got-float64(f.DrawOff)) > 1e-12 || (f.DrawOff > 0) != c.drawOff {
			t.Errorf("%s: %v to draw off, %g over the mark", name, f.DrawOff, got)
		}
	}
	// A feed of next to nothing, or next to nothing above the target, is more than any volume.
	_, err := ledger.ReplenishBySolution(ledger.Need{Volume: 1e-3, Mark: 1, Target: 1}, 5e-324)
	wantField(t, "thin feed", err, "content of the feed solution", units.ErrInconsistent)
	_, err = ledger.ReplenishBySolution(ledger.Need{Metal: 0, Volume: 1e300, Mark: 1e300, Target: 1},
		units.MassConcentration(math.Nextafter(1, 2)))
	wantField(t, "feed", err, "content after feeding", units.ErrNotFinite)
}

// TestPropertyTargetOfTheBath: additions aim at the target of the bath, not at its opening content.
func TestPropertyTargetOfTheBath(t *testing.T) {
	b := goldBath()
	b.Target = 8.75
	r := must(book(t, b).ByAnalysis(b.Salts[0]))
	near(t, "metal", float64(r.Metal), 0.75*float64(b.Volume), 1e-12)
	near(t, "content", float64(r.Content), 8.75, 1e-12)
	b.Target = 7.5
	r = must(book(t, b).ByAnalysis(b.Salts[0]))
	near(t, "over", float64(r.Over), 0.5*float64(b.Volume), 1e-12)
}

// TestPropertyNoFigureBesideAnError: where there is an error there is no figure.
func TestPropertyNoFigureBesideAnError(t *testing.T) {
	bad := ledger.EfficiencyRange{Value: 2}
	rich := nickelBath()
	rich.Anode.Share = 1
	broken := nickelBath()
	broken.Volume = 0
	for name, figure := range map[string]func() (float64, error){
		"spread":    func() (float64, error) { u, err := bad.Uncertainty(); return float64(u), err },
		"soluble":   func() (float64, error) { s, err := ledger.ShareByArea(-1, 2); return float64(s), err },
		"insoluble": func() (float64, error) { s, err := ledger.ShareByArea(1, -1); return float64(s), err },
		"no area":   func() (float64, error) { s, err := ledger.ShareByArea(0, 0); return float64(s), err },
		"rich":      func() (float64, error) { s, err := rich.SaltPerCharge(rich.Salts[0]); return float64(s), err },
		"broken":    func() (float64, error) { s, err := broken.SaltPerCharge(broken.Salts[0]); return float64(s), err },
		"salt": func() (float64, error) {
			b := nickelBath()
			s, err := b.SaltPerCharge(formula("NaCl"))
			return float64(s), err
		},
		"content": func() (float64, error) {
			e, k, err := ledger.Combine(ledger.Estimate{Content: -1, Uncertainty: 1}, ledger.Estimate{Uncertainty: 1})
			return float64(e.Content) + float64(k), err
		},
		"both exact": func() (float64, error) {
			e, k, err := ledger.Combine(ledger.Estimate{Content: 1}, ledger.Estimate{Content: 2})
			return float64(e.Content) + float64(k), err
		},
		"too far": func() (float64, error) { // the two uncertainties together are no number
			e, k, err := ledger.Combine(ledger.Estimate{Content: 1, Uncertainty: math.MaxFloat64},
				ledger.Estimate{Content: 2, Uncertainty: math.MaxFloat64})
			return float64(e.Content) + float64(e.Uncertainty) + float64(k), err
		},
	} {
		v, err := figure()
		if v != 0 || err == nil {
			t.Errorf("%s: %g, %v", name, v, err)
		}
		if name == "both exact" {
			wantField(t, name, err, "uncertainties", units.ErrNotPositive)
		}
	}
	for name, err := range map[string]error{
		"range": second(bad.UncertaintyWorking()), "rates": second(broken.RatesWorking()),
		"salt": second(rich.SaltPerChargeWorking(rich.Salts[0])),
	} {
		if err == nil {
			t.Errorf("%s: a working with no figure", name)
		}
	}
}

// TestPropertyWorkingSteps: the anodes have a step of their own where they dissolve, and
// a salt where it is to be added.
func TestPropertyWorkingSteps(t *testing.T) {
	gold, nickel := goldBath(), nickelBath()
	for name, c := range map[string]struct {
		bath ledger.Account
		want []string
	}{
		"insoluble": {gold, []string{"a = w·ε·η", "k = a - b"}},
		"soluble":   {nickel, []string{"a = w·ε·η", "b = s·εa·ηa", "k = a - b"}},
	} {
		steps := must(c.bath.RatesWorking())
		if len(steps) != len(c.want) {
			t.Fatalf("%s: %d steps", name, len(steps))
		}
		for i, s := range steps {
			if s.Formula != c.want[i] {
				t.Errorf("%s: %q, want %q", name, s.Formula, c.want[i])
			}
		}
	}
	need := ledger.Need{Metal: 0.04, Volume: 0.005, Mark: 0.005, Target: 8} // nothing lacks
	for metal, n := range map[units.Mass]int{0.03: 5, 0.04: 3, 0.05: 3} {
		need.Metal = metal
		if got := len(must(ledger.ReplenishWorking(need, "Au", gold.Salts[0]))); got != n {
			t.Errorf("%v in the bath: %d steps, want %d", metal, got, n)
		}
	}
}

func second(_ any, err error) error { return err }
