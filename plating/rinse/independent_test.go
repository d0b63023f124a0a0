package rinse_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
)

// TestIndependentCounterflowSimulated settles random lines of one to six tanks
// and holds every tank against the formula to 1e-9.
func TestIndependentCounterflowSimulated(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	worst := 0.0
	for i := 0; i < 120; i++ {
		n := 1 + i%6
		in, out := 0.1+r.Float64(), 0.1+r.Float64()
		if i%3 == 0 {
			out = in
		}
		q := math.Max(0, out-in) + in*math.Exp(5*r.Float64()-2)
		if i%10 == 0 {
			q, out = in, in // r = 1
		}
		l := steadyLine(n, q, in, out, nil)
		l.settle(t)
		c := rinse.Counterflow{Stages: n, Water: rinse.Flow(q) * lh, DragIn: rinse.Flow(in) * lh,
			DragOut: rinse.Flow(out) * lh}
		row := must(c.Tanks(8 * gL))(t)
		for k := range row {
			near(t, fmt.Sprintf("%+v tank %d", c, k+1), row[k].In(gL), l.content(k), 1e-9)
			worst = math.Max(worst, math.Abs(row[k].In(gL)/l.content(k)-1))
		}
		near(t, "ratio", float64(must(c.Ratio())(t)), 8/l.content(n-1), 1e-9)
	}
	t.Logf("worst relative difference %.1e", worst)
}

// TestIndependentSeriesSimulated does the same for tanks with water of their own.
func TestIndependentSeriesSimulated(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for i := 0; i < 60; i++ {
		n := 1 + i%4
		in, out := 0.1+r.Float64(), 0.1+r.Float64()
		own := make([]float64, n)
		s := rinse.RinseSeries{DragIn: rinse.Flow(in) * lh, DragOut: rinse.Flow(out) * lh}
		for k := range own {
			own[k] = math.Exp(4*r.Float64() - 2)
			if k == 0 {
				own[k] += math.Max(0, out-in)
			}
			s.Water = append(s.Water, rinse.Flow(own[k])*lh)
		}
		l := steadyLine(n, 0, in, out, own)
		l.settle(t)
		near(t, fmt.Sprintf("%+v", s), float64(must(s.Ratio())(t)), 8/l.content(n-1), 1e-9)
	}
}

// TestIndependentTankSimulated follows single tanks load by load: content,
// balance, the first load that reaches a content.
func TestIndependentTankSimulated(t *testing.T) {
	r := rand.New(rand.NewSource(5))
	for i := 0; i < 200; i++ {
		tank := rinse.RinseTank{Bath: 8 * gL, Volume: units.Volume(1+20*r.Float64()) * litre, DragOut: units.Volume(1+
			60*r.Float64()) * mL}
		if i%2 == 1 {
			tank.Water = units.Volume(3*r.Float64()) * litre
		}
		if i%3 == 1 {
			tank.Start = units.MassConcentration(r.Float64()) * gL / 100
		}
		v := vat{tank.Volume.In(litre), tank.Start.In(gL) * tank.Volume.In(litre)}
		d, w := tank.DragOut.In(litre), tank.Water.In(litre)
		began := v.grams
		aim := must(tank.After(37))(t) * 0.999
		onWork, over, reached := 0.0, 0.0, -1
		if tank.Start >= aim {
			reached = 0
		}
		for load := 1; load <= 300; load++ {
			v.pour(d, d*8)
			v.pour(w, 0)
			over += v.take(w)
			onWork += v.take(d)
			content := v.grams / v.litres
			if reached < 0 && content >= aim.In(gL) {
				reached = load
			}
			if load%50 != 1 {
				continue
			}
			near(t, fmt.Sprintf("%+v after %d", tank, load), must(tank.After(load))(t).In(gL), content, 1e-9)
			b := must(tank.Balance(load))(t)
			near(t, "on work", b.OnWork.In(units.Gram), onWork, 1e-9)
			near(t, "in", b.In.In(units.Gram), float64(load)*d*8, 1e-12)
			if w > 0 {
				near(t, "overflow", b.Overflow.In(units.Gram), over, 1e-9)
			}
			if gain := v.grams - began; math.Abs(b.Kept.In(units.Gram)-gain) > 1e-9*b.In.In(units.Gram) {
				t.Errorf("kept %v, simulated %g", b.Kept, gain)
			}
		}
		if aim < tank.Start { // the tank gets cleaner: nothing to reach
			continue
		}
		if got := must(tank.LoadsTo(aim))(t); got != reached {
			t.Errorf("%+v: %d loads to %v, simulated %d", tank, got, aim, reached)
		}
	}
}

// TestIndependentRowSimulated: still rinses in a row, by the simulation and by
// the negative binomial distribution. With equal tanks, the film behind tank k
// after N loads is the chance that the k-th success comes within N + k - 1
// trials of chance d/(V + d).
func TestIndependentRowSimulated(t *testing.T) {
	const volume, drag, loads = 2.0, 0.02, 40
	tank := rinse.RinseTank{Bath: 8 * gL, DragOut: drag * litre}
	row := must(tank.Row([]units.Volume{volume * litre, volume * litre, volume * litre}, loads))(t)
	vats := []vat{{volume, 0}, {volume, 0}, {volume, 0}}
	for range loads {
		film := drag * 8
		for k := range vats {
			vats[k].pour(drag, film)
			film = vats[k].take(drag)
		}
	}
	p := drag / (volume + drag)
	for k := range vats {
		near(t, "simulated", row[k].In(gL), vats[k].grams/volume, 1e-9)
		chance, term := 0.0, math.Pow(p, float64(k+1))
		for j := 0; j < loads; j++ { // j failures before the success k+1
			chance += term
			term *= (1 - p) * float64(k+1+j) / float64(j+1)
		}
		near(t, "negative binomial", row[k].In(gL), 8*chance, 1e-9)
	}
	near(t, "first of the row", row[0], must(rinse.RinseTank{Bath: 8 * gL, Volume: volume * litre,
		DragOut: drag * litre}.After(loads))(t), 1e-12)
}

// TestIndependentRunningIntegrated integrates the balance of a running rinse
// by Runge and Kutta's fourth-order rule.
func TestIndependentRunningIntegrated(t *testing.T) {
	run := rinse.Running{Bath: 8 * gL, Start: 0.5 * gL, Volume: 30 * litre, Water: 60 * lh, DragIn: 0.4 * lh,
		DragOut: 0.3 * lh}
	grams := 0.5 * 30.0
	rate := func(g float64) float64 { // g/h; litres in and out an hour balance
		c := g / 30
		return 0.4*8 - 0.3*c - (60+0.4-0.3)*c
	}
	const step = 1.0 / 20000 // h
	for i := 1; i <= 40000; i++ {
		k1 := rate(grams)
		k2 := rate(grams + step/2*k1)
		k3 := rate(grams + step/2*k2)
		k4 := rate(grams + step*k3)
		grams += step / 6 * (k1 + 2*k2 + 2*k3 + k4)
		if i%8000 == 0 {
			at := units.Duration(float64(i)*step) * units.Hour
			near(t, at.String(), must(run.After(at))(t).In(gL), grams/30, 1e-9)
			near(t, "time to it", float64(must(run.TimeTo(units.MassConcentration(grams/30)*gL))(t)), float64(at), 1e-6)
		}
	}
	near(t, "steady", must(run.Steady())(t).In(gL), 8*0.4/60.4, 1e-12)
}

// TestIndependentRecoverySimulated runs a bath that loses drag-out and
// evaporation and takes both back from its drag-out tanks, turn by turn.
func TestIndependentRecoverySimulated(t *testing.T) {
	for tanks := 1; tanks <= 4; tanks++ {
		for k, evaporation := range []float64{0, 0.05, 0.9, 4, 0.5, 0.02} {
			const drag = 0.3
			wet := []float64{0, 0, 0, 0, drag, 0.31}[k] // drag-in; the last one brings more than leaves
			back := math.Max(0, evaporation+drag-wet)
			l := steadyLine(tanks, back, drag, drag, nil)
			l.settle(t)
			l.off, l.dragged = 0, 0
			for range 100 {
				l.turn()
			}
			r := rinse.Recovery{Bath: 8 * gL, DragOut: drag * lh, DragIn: rinse.Flow(wet) * lh,
				Evaporation: rinse.Flow(evaporation) * lh, Tanks: tanks}
			o := must(r.Over(100 * units.Hour))(t)
			near(t, "dragged", o.Dragged.In(units.Gram), 100*drag*8, 1e-12)
			near(t, "lost", o.Lost.In(units.Gram), l.dragged, 1e-9)
			near(t, "back", o.Back.In(units.Gram), l.off, 1e-9)
			if evaporation == 0 {
				near(t, "a cold bath keeps n/(n+1)", float64(o.Share), float64(tanks)/float64(tanks+1), 1e-12)
			}
		}
	}
}

// TestIndependentBatchSimulated pours a drag-out tank back by hand until every
// round is like the last.
func TestIndependentBatchSimulated(t *testing.T) {
	for _, loads := range []int{1, 7, 60, 500} {
		for k, evaporation := range []float64{0, 0.004, 0.2, 0.01, 0} {
			const volume, drag = 3.0, 0.02
			wet := []float64{0, 0, 0, drag, drag}[k]
			b := rinse.Batch{Bath: 8 * gL, Volume: volume * litre, DragOut: drag * litre, DragIn: units.Volume(wet) * litre,
				Evaporation: units.Volume(evaporation) * litre, Loads: loads}
			v := vat{volume, 0}
			poured := math.Min(volume, float64(loads)*math.Max(0, evaporation+drag-wet))
			var full, lost, back float64
			for round := 0; round < 60000/loads+20; round++ {
				lost = 0
				for range loads {
					v.pour(drag, drag*8)
					lost += v.take(drag)
				}
				full = v.grams / v.litres
				if poured >= volume {
					back, v.grams = v.grams, 0
				} else {
					back = v.take(poured)
					v.pour(poured, 0)
				}
			}
			c := must(b.Cycle())(t)
			near(t, "full", c.Full.In(gL), full, 1e-9)
			near(t, "lost", c.Lost.In(units.Gram), lost, 1e-9)
			near(t, "back", c.Back.In(units.Gram), back, 1e-9)
			near(t, "sum", float64(c.Lost+c.Back), float64(c.Dragged), 1e-9)
			steps, err := b.Working()
			recompute(t, steps, err)
		}
	}
}

// TestIndependentWaterTable solves the polynomial in 200-bit arithmetic by
// bisection and holds the table of water for a ratio against it.
func TestIndependentWaterTable(t *testing.T) {
	for _, ratio := range []float64{1 + 1e-9, 1.5, 3, 100, 1000, 2001, 5000, 10000, 1e12} {
		for n := 1; n <= 6; n++ {
			for _, b := range []float64{1, 0.25, 3} { // drag-in over drag-out
				low, high := big.NewFloat(0).SetPrec(200), big.NewFloat(ratio*b+1).SetPrec(200)
				for range 150 {
					mid := new(big.Float).SetPrec(200).Add(low, high)
					mid.Quo(mid, big.NewFloat(2))
					if bigRatio(mid, b, n).Cmp(big.NewFloat(ratio)) > 0 {
						high = mid
					} else {
						low = mid
					}
				}
				want, _ := low.Float64()
				want = math.Max(want, 1-b)
				got := must(rinse.WaterFor(units.Ratio(ratio), n, rinse.Flow(b), 1))(t)
				near(t, fmt.Sprintf("ratio %g, %d tanks, drag-in %g", ratio, n, b), float64(got), want, 4e-15)
			}
		}
	}
}

// bigRatio is C₀/C_n from the balances of the tanks, last to first: what comes
// into tanks i to n on the work leaves with the water of tank i and the last film.
func bigRatio(r *big.Float, b float64, n int) *big.Float {
	f := func(x float64) *big.Float { return big.NewFloat(x).SetPrec(200) }
	content := f(1) // of tank n, in units of itself
	for range n - 1 {
		up := f(0).Mul(r, content) // C_(i-1) = r·C_i + C_n
		content = up.Add(up, f(1))
	}
	// first tank: b·C₀ = (r + b - 1)·C₁ + C_n
	sum := f(0).Add(r, f(0).Sub(f(b), f(1)))
	sum.Mul(sum, content)
	sum.Add(sum, f(1))
	return sum.Quo(sum, f(b))
}
