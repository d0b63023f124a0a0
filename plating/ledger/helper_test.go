package ledger_test

import (
	"bytes"
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func day(n float64) time.Time {
	return time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC).Add(time.Duration(n * 24 * float64(time.Hour)))
}

func formula(s string) faraday.Formula { return must(faraday.ParseFormula(s)) }

func equivalent(symbol string, n int) units.Equivalent {
	return must(faraday.NewEquivalent(must(faraday.Lookup(symbol)).Weight.Value, n))
}

// goldBath is the hard gold of the clock workshop, with insoluble anodes.
func goldBath() ledger.Account {
	return ledger.Account{
		Name: "gold, acid cyanide, cobalt hardened", Metal: "Au",
		Volume: 5 * units.Litre, VolumeUncertainty: 0.05 * units.Litre,
		Content: 8 * units.GramPerLitre, ContentUncertainty: 0.1 * units.GramPerLitre,
		Equivalent: equivalent("Au", 1), Fine: 0.996,
		Efficiency: ledger.EfficiencyRange{Value: 0.35, Low: 0.30, High: 0.40},
		Salts:      []faraday.Formula{formula("KAu(CN)2")},
		Low:        7 * units.GramPerLitre, High: 9 * units.GramPerLitre, Due: 500 * units.AmpereMinute, Life: 5,
		Source: "demo data",
	}
}

// nickelBath has soluble anodes for most of the current.
func nickelBath() ledger.Account {
	return ledger.Account{
		Name: "nickel, Watts type", Metal: "Ni", Volume: 20 * units.Litre, VolumeUncertainty: 0.2 * units.Litre,
		Content: 75 * units.GramPerLitre, ContentUncertainty: 1 * units.GramPerLitre, Equivalent: equivalent("Ni", 2),
		Efficiency: ledger.EfficiencyRange{Value: 0.95, Low: 0.93, High: 0.97},
		Anode:      ledger.Anode{Share: 0.9, Efficiency: ledger.EfficiencyRange{Value: 0.98, Low: 0.96, High: 1}},
		Salts:      []faraday.Formula{formula("NiSO4.6H2O"), formula("NiSO4.7H2O")},
		Low:        60 * units.GramPerLitre, High: 90 * units.GramPerLitre, Source: "demo data",
	}
}

// randomEvent makes an event that often, not always, fits the bath.
func randomEvent(rng *rand.Rand, b ledger.Account, s ledger.State) ledger.Event {
	u := rng.Float64
	part := func(most float64) units.Volume { return units.Volume(u() * most * float64(s.Volume)) }
	full := b.Equivalent.Of(1) // a coulomb
	switch rng.IntN(8) {
	case 0:
		return ledger.Evaporation{Volume: part(0.1)}
	case 1:
		return ledger.Addition{Salt: b.Salts[rng.IntN(len(b.Salts))],
			SaltMass: units.Mass(u() * 0.3 * float64(s.Metal+1e-3)), Water: part(0.1), Uncertainty: units.Mass(u() * 1e-5)}
	case 2:
		return ledger.Addition{Metal: units.Mass(u() * 0.1 * float64(s.Metal+1e-3)), Solution: part(0.05),
			SolutionContent: units.MassConcentration(u() * 100)}
	case 3:
		return ledger.Analysis{Content: units.MassConcentration(float64(s.Content) * (0.9 + 0.2*u())),
			Uncertainty: units.MassConcentration(float64(b.Content) * (0.005 + 0.02*u())), Reset: rng.IntN(5) == 0}
	case 4:
		return ledger.Correction{Metal: units.Mass((u() - 0.5) * 0.05 * float64(s.Metal)), Volume: part(0.05) - part(0.05),
			Uncertainty: units.Mass(u() * 1e-5), Reason: "spill at the edge, \"wiped up\" <b>"}
	default:
		l := ledger.Load{Charge: units.Charge(u() * 0.2 * float64(s.Metal) / float64(full)), DragOut: part(0.02),
			DragOutUncertainty: part(0.002)}
		if rng.IntN(2) == 0 {
			l.DragIn, l.DragInContent = part(0.02), units.MassConcentration(u()*float64(s.Content)*0.1)
		}
		if rng.IntN(3) == 0 {
			l.Weighed = units.Mass(u() * float64(full) * float64(l.Charge))
			l.WeighedUncertainty = units.Mass(u() * 1e-6)
		}
		return l
	}
}

// randomLedger posts n entries that fit.
func randomLedger(rng *rand.Rand, n int) *ledger.Ledger {
	b := goldBath()
	if rng.IntN(2) == 0 {
		b = nickelBath()
		if rng.IntN(2) == 0 { // an alloy, from anodes of the counted metal
			b.Fine, b.Anode.Equivalent = 0.9, 0.8*b.Equivalent
		}
	}
	return randomOf(rng, b, n)
}

// smallBath has a short first line.
func smallBath() ledger.Account {
	return ledger.Account{Name: "Ag", Metal: "Ag", Volume: 1, Content: 30, Equivalent: 1e-6,
		Efficiency: ledger.EfficiencyRange{Value: 0.5},
		Salts:      []faraday.Formula{formula("AgCN")}}
}

func randomOf(rng *rand.Rand, b ledger.Account, n int) *ledger.Ledger {
	l := must(ledger.New(b, day(0)))
	at := 0.0
	for l.Len() < n {
		at += rng.Float64()
		note := ""
		if rng.IntN(3) == 0 {
			note = "12 Zeiger, µ-fein\nzweite Zeile"
		}
		l.Post(ledger.Entry{When: day(at), Event: randomEvent(rng, b, l.State()), Note: note})
	}
	return l
}

func bytesOf(l *ledger.Ledger) []byte {
	var b bytes.Buffer
	must(l.WriteTo(&b))
	return b.Bytes()
}

// same holds two books against each other to the last bit.
func same(t *testing.T, what string, got, want *ledger.Ledger) {
	t.Helper()
	a, b := must(json.Marshal(got.State())), must(json.Marshal(want.State()))
	if !bytes.Equal(a, b) {
		t.Fatalf("%s: state\n%s\nwant\n%s", what, a, b)
	}
	if !bytes.Equal(bytesOf(got), bytesOf(want)) {
		t.Fatalf("%s: the text differs", what)
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.15g, want %.15g within %g relative", what, got, want, tol)
	}
}

func recompute(t *testing.T, steps ...working.Step) {
	t.Helper()
	if len(steps) == 0 {
		t.Error("no steps")
	}
	for _, s := range steps {
		got, err := s.Recompute()
		if err != nil {
			t.Errorf("%s: %v", s.Formula, err)
			continue
		}
		if math.Abs(got-s.Result.SI) > 1e-12*math.Abs(s.Result.SI)+1e-18 {
			t.Errorf("%s: recomputed %.17g, shown %.17g", s.Formula, got, s.Result.SI)
		}
	}
}
