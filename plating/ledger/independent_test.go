package ledger_test

import (
	"math"
	"math/big"
	"math/rand/v2"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestIndependentBalance works random histories out in exact fractions and
// holds metal and volume against the book's.
func TestIndependentBalance(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range 300 {
		l := randomLedger(rng, 1+rng.IntN(40))
		metal, volume := exactHistory(t, l)
		s := l.State()
		for _, v := range []struct{ got, want float64 }{{float64(s.Metal), metal}, {float64(s.Volume), volume}} {
			off := math.Abs(v.got-v.want) / math.Max(math.Abs(v.want), 1e-3*float64(s.Balance.Through()))
			worst = max(worst, off)
			if off > 1e-12 {
				t.Fatalf("book %.17g, exact %.17g", v.got, v.want)
			}
		}
	}
	t.Logf("worst difference %.2g", worst)
}

func exactHistory(t *testing.T, l *ledger.Ledger) (metal, volume float64) {
	r := func(x float64) *big.Rat { return new(big.Rat).SetFloat64(x) }
	mul := func(a ...*big.Rat) *big.Rat {
		p := big.NewRat(1, 1)
		for _, x := range a {
			p.Mul(p, x)
		}
		return p
	}
	b := l.Account()
	fine := r(1)
	if b.Fine != 0 {
		fine = r(float64(b.Fine))
	}
	dissolving := b.Equivalent
	if b.Anode.Equivalent != 0 {
		dissolving = b.Anode.Equivalent
	}
	v := r(float64(b.Volume))
	m := mul(r(float64(b.Content)), v)
	for _, rec := range l.Records() {
		switch e := rec.Entry.Event.(type) {
		case ledger.Load:
			m.Add(m, mul(r(float64(e.DragIn)), r(float64(e.DragInContent))))
			v.Add(v, r(float64(e.DragIn)))
			if e.Weighed > 0 {
				m.Sub(m, mul(fine, r(float64(e.Weighed))))
			} else {
				m.Sub(m, mul(fine, r(float64(b.Equivalent)), r(float64(b.Efficiency.Value)), r(float64(e.Charge))))
			}
			m.Add(m, mul(r(float64(b.Anode.Share)), r(float64(dissolving)), r(float64(b.Anode.Efficiency.Value)),
				r(float64(e.Charge))))
			left := new(big.Rat).Sub(v, r(float64(e.DragOut)))
			m.Mul(m, new(big.Rat).Quo(left, v))
			v = left
		case ledger.Evaporation:
			v.Sub(v, r(float64(e.Volume)))
		case ledger.Addition:
			if e.SaltMass > 0 {
				salt := must(faraday.MetalContent(e.Salt, b.Metal))
				m.Add(m, mul(r(float64(salt)), r(float64(e.SaltMass))))
			}
			m.Add(m, r(float64(e.Metal)))
			m.Add(m, mul(r(float64(e.Solution)), r(float64(e.SolutionContent))))
			v.Add(v, r(float64(e.Solution)))
			v.Add(v, r(float64(e.Water)))
		case ledger.Correction:
			m.Add(m, r(float64(e.Metal)))
			v.Add(v, r(float64(e.Volume)))
		case ledger.Analysis:
			k := r(float64(rec.Comparison.Weight))
			keep := new(big.Rat).Sub(r(1), k)
			m.Mul(m, keep)
			m.Add(m, mul(k, r(float64(e.Content)), v))
		default:
			t.Fatalf("%T", e)
		}
		// Numbers grow with every product: round to far below a float64.
		m, v = short(m), short(v)
	}
	metal, _ = m.Float64()
	volume, _ = v.Float64()
	return metal, volume
}

func short(x *big.Rat) *big.Rat {
	r, _ := new(big.Float).SetPrec(200).SetRat(x).Rat(nil)
	return r
}

// TestIndependentUncertainty draws true baths, lets them live through a history
// and compares how far the book is off with the uncertainty it states.
func TestIndependentUncertainty(t *testing.T) {
	n := 20000
	if !testdata.Slow() {
		n = 2000
	}
	for name, b := range map[string]ledger.Account{"gold": goldBath(), "nickel": nickelBath()} {
		rng := rand.New(rand.NewPCG(7, 8))
		var metal, content, metalU, contentU, bias float64
		for range n {
			offM, offC, s := livedThrough(rng, b)
			metal += offM * offM
			bias += offM
			content += offC * offC
			metalU += float64(s.MetalUncertainty)
			contentU += float64(s.ContentUncertainty)
		}
		k := float64(n)
		tol := 5 / math.Sqrt(2*k) // a standard deviation of n draws, and the terms of second order
		near(t, name+": metal", metalU/k, math.Sqrt(metal/k), tol)
		near(t, name+": content", contentU/k, math.Sqrt(content/k), tol)
		if got := math.Abs(bias/k) / (metalU / k); got > 5/math.Sqrt(k)+0.01 {
			t.Errorf("%s: the book is off by %.3f uncertainties in the mean", name, got)
		}
	}
}

// livedThrough makes one true bath, posts what a shop would see of it and returns book less truth.
func livedThrough(rng *rand.Rand, b ledger.Account) (metal, content float64, s ledger.State) {
	between := func(r ledger.EfficiencyRange) float64 {
		return float64(r.Low) + rng.Float64()*float64(r.High-r.Low)
	}
	eff, anodeEff := between(b.Efficiency), 0.0
	if b.Anode.Soluble() {
		anodeEff = between(b.Anode.Efficiency)
	}
	v := float64(b.Volume) + rng.NormFloat64()*float64(b.VolumeUncertainty)
	m := (float64(b.Content) + rng.NormFloat64()*float64(b.ContentUncertainty)) * v
	fine := float64(b.Fine)
	if fine == 0 {
		fine = 1
	}
	l := must(ledger.New(b, day(0)))
	post := func(e ledger.Event) { must(l.Post(ledger.Entry{When: day(1), Event: e})) }
	charge := 0.04 * float64(b.Content) * float64(b.Volume) / (float64(b.Equivalent) * float64(b.Efficiency.Value))
	dragOut, dragU := 0.01*float64(b.Volume), 0.002*float64(b.Volume)
	load := func() {
		m += charge * float64(b.Equivalent) * (float64(b.Anode.Share)*anodeEff - fine*eff)
		d := dragOut + rng.NormFloat64()*dragU
		m -= m / v * d
		v -= dragOut // the level is topped up from sight, below
		post(ledger.Load{Charge: units.Charge(charge), DragOut: units.Volume(dragOut),
			DragOutUncertainty: units.Volume(dragU)})
		v += dragOut
		post(ledger.Addition{Water: units.Volume(dragOut)})
	}
	u := 0.01 * float64(b.Content)
	analyse := func() {
		post(ledger.Analysis{Content: units.MassConcentration(m/v + rng.NormFloat64()*u),
			Uncertainty: units.MassConcentration(u)})
	}
	weighed := 0.03 * m
	for range 4 {
		load()
	}
	analyse()
	m -= weighed * fine
	wu := 0.0005 * float64(b.Content) * float64(b.Volume)
	post(ledger.Load{Charge: units.Charge(weighed / float64(b.Equivalent) * 1.2), Weighed: units.Mass(weighed +
		rng.NormFloat64()*wu), WeighedUncertainty: units.Mass(wu)})
	m += weighed / float64(b.Equivalent) * 1.2 * float64(b.Equivalent) * float64(b.Anode.Share) * anodeEff
	add := 0.1 * float64(b.Content) * float64(b.Volume)
	m += add + rng.NormFloat64()*wu
	post(ledger.Addition{Metal: units.Mass(add), Uncertainty: units.Mass(wu)})
	load()
	load()
	analyse()
	load()
	s = l.State()
	return float64(s.Metal) - m, float64(s.Content) - m/v, s
}

// TestIndependentUniform samples the efficiency range.
func TestIndependentUniform(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 9))
	for _, r := range []ledger.EfficiencyRange{{Value: 0.35, Low: 0.25, High: 0.45}, {Value: 0.3, Low: 0.3, High: 0.6},
		{Value: 0.9, Low: 0.5, High: 1}} {
		var sum float64
		const n = 200000
		for range n {
			d := float64(r.Low) + rng.Float64()*float64(r.High-r.Low) - float64(r.Value)
			sum += d * d
		}
		near(t, "spread", float64(must(r.Uncertainty())), math.Sqrt(sum/n), 0.01)
	}
}

// TestIndependentSensitivity: with one common source of error alone, the
// uncertainty is the slope of the whole book against it, found by reopening
// the book with that figure a little changed.
func TestIndependentSensitivity(t *testing.T) {
	rng := rand.New(rand.NewPCG(17, 18))
	for range 200 {
		b := nickelBath()
		b.VolumeUncertainty, b.ContentUncertainty = 0, 0
		b.Efficiency, b.Anode.Efficiency = ledger.EfficiencyRange{Value: 0.9}, ledger.EfficiencyRange{Value: 0.8}
		var events []ledger.Event
		for range 1 + rng.IntN(8) {
			u := rng.Float64
			switch rng.IntN(5) {
			case 0:
				events = append(events, ledger.Analysis{Content: units.MassConcentration(70 + 10*u()), Uncertainty: 1e-12,
					Reset: true})
			case 1:
				events = append(events, ledger.Addition{Metal: units.Mass(0.2 * u()), Water: units.Volume(0.004 * u())})
			case 2:
				events = append(events, ledger.Evaporation{Volume: units.Volume(0.001 * u())})
			default:
				events = append(events, ledger.Load{Charge: units.Charge(3e5 * u()), DragOut: units.Volume(0.002 * u()),
					DragIn: units.Volume(0.001 * u())})
			}
		}
		last := func(b ledger.Account) ledger.State {
			l := must(ledger.New(b, day(0)))
			for _, e := range events {
				must(l.Post(ledger.Entry{When: day(1), Event: e}))
			}
			return l.State()
		}
		for name, source := range map[string]struct {
			shift  func(*ledger.Account, float64)
			unsure func(*ledger.Account) float64
		}{
			"volume": {func(b *ledger.Account, d float64) { b.Volume += units.Volume(d * 1e-6) },
				func(b *ledger.Account) float64 { b.VolumeUncertainty = 1e-6; return 1 }},
			"cathode": {func(b *ledger.Account, d float64) { b.Efficiency.Value += units.Efficiency(d * 1e-5) },
				func(b *ledger.Account) float64 {
					b.Efficiency.Low, b.Efficiency.High = 0.9-1e-5, 0.9+1e-5
					return math.Sqrt(3)
				}},
			"anode": {func(b *ledger.Account, d float64) { b.Anode.Efficiency.Value += units.Efficiency(d * 1e-5) },
				func(b *ledger.Account) float64 {
					b.Anode.Efficiency.Low, b.Anode.Efficiency.High = 0.8-1e-5, 0.8+1e-5
					return math.Sqrt(3)
				}},
		} {
			up, down, wide := b, b, b
			source.shift(&up, 1)
			source.shift(&down, -1)
			k := source.unsure(&wide)
			s, plus, minus := last(wide), last(up), last(down)
			for _, v := range []struct {
				what                string
				stated, plus, minus float64
			}{{"metal", float64(s.MetalUncertainty), float64(plus.Metal), float64(minus.Metal)},
				{"content", float64(s.ContentUncertainty), float64(plus.Content), float64(minus.Content)}} {
				want := math.Abs(v.plus-v.minus) / 2
				if math.Abs(v.stated*k-want) > 1e-5*want+1e-9 {
					t.Fatalf("%s by %s: stated %g, by difference %g", v.what, name, v.stated*k, want)
				}
			}
		}
	}
}
