package ledger_test

import (
	"math/rand/v2"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestPropertyWorking recomputes every shown calculation.
func TestPropertyWorking(t *testing.T) {
	rng := rand.New(rand.NewPCG(91, 92))
	for range 200 {
		for _, b := range []ledger.Account{goldBath(), nickelBath()} {
			recompute(t, must(b.RatesWorking())...)
			for _, salt := range b.Salts {
				steps := must(b.SaltPerChargeWorking(salt))
				recompute(t, steps...)
				near(t, "salt for a charge", steps[len(steps)-1].Result.SI, float64(must(b.SaltPerCharge(salt))), 1e-15)
				n := ledger.Need{Metal: units.Mass(rng.Float64()), Volume: units.Volume(rng.Float64() * 0.02), Mark: 0.01,
					Target: units.MassConcentration(rng.Float64() * 100)}
				recompute(t, must(ledger.ReplenishWorking(n, b.Metal, salt))...)
			}
			recompute(t, must(b.Efficiency.UncertaintyWorking()))
		}
		e := func() ledger.Estimate {
			return ledger.Estimate{Content: units.MassConcentration(rng.Float64()),
				Uncertainty: units.MassConcentration(rng.Float64())}
		}
		recompute(t, must(ledger.CombineWorking(e(), e()))...)
	}
	recompute(t, must(ledger.EfficiencyRange{Value: 0.4}.UncertaintyWorking()))
	for _, c := range []struct {
		a    ledger.Anode
		want string
	}{{ledger.Anode{}, "insoluble"}, {ledger.Anode{Share: 1}, "soluble"}, {ledger.Anode{Share: 0.6},
		"soluble for 60 % of the current"}} {
		if c.a.String() != c.want || c.a.Soluble() != (c.a.Share > 0) {
			t.Errorf("%q, want %q", c.a, c.want)
		}
	}
	near(t, "share", float64(must(ledger.ShareByArea(3, 1))), 0.75, 1e-15)
}
