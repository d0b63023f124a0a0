package rinse_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
)

// TestIndependentTwoStageWater solves 1 + r + r²·D/D_in = R, also where the
// ratio is one or two: water that two rinses need.
func TestIndependentTwoStageWater(t *testing.T) {
	for _, d := range [][2]float64{{1, 1}, {2, 1}, {1, 1.2}, {3, 0.5}} {
		for _, ratio := range []float64{1, 1.5, 2, 3, 100, 1e6} {
			c := d[1] / d[0]
			r := (math.Sqrt(1+4*c*(ratio-1)) - 1) / (2 * c)
			want := max(r*d[1], d[1]-d[0], 0)
			q, err := rinse.WaterFor(units.Ratio(ratio), 2, rinse.Flow(d[0]), rinse.Flow(d[1]))
			if err != nil || math.Abs(float64(q)-want) > 1e-9*max(want, 1e-3) {
				t.Errorf("%v to %v: %v, %v, want %v", d, ratio, float64(q), err, want)
			}
			steps, err := rinse.WaterForWorking(units.Ratio(ratio), 2, rinse.Flow(d[0]), rinse.Flow(d[1]))
			recompute(t, steps, err)
			last := steps[len(steps)-1].Result
			if say := rinse.Flow(want); want > 0 && !strings.HasPrefix(last.Value, strings.Fields(say.String())[0][:1]) {
				t.Errorf("%v to %v: the steps end with %s, want %s", d, ratio, last.Value, say)
			}
		}
	}
}

// TestPropertyRecoveryEnds: no drag-out tank keeps nothing, endless return keeps
// all, and the steps say only what there is.
func TestPropertyRecoveryEnds(t *testing.T) {
	over := func(r rinse.Recovery) (rinse.Recovered, []string) {
		t.Helper()
		o, err := r.Over(1)
		if err != nil {
			t.Fatal(err)
		}
		steps, err := r.Working(1)
		recompute(t, steps, err)
		var formulas []string
		for _, s := range steps {
			formulas = append(formulas, s.Formula)
		}
		return o, formulas
	}
	o, f := over(rinse.Recovery{Bath: 10, DragOut: 1, DragIn: 0.5, Evaporation: 3})
	if o.Share != 0 || o.Back != 0 || o.Lost != o.Dragged || len(f) != 1 {
		t.Errorf("no tank: %+v, %q", o, f)
	}
	o, f = over(rinse.Recovery{Bath: 10, DragOut: 1, DragIn: 0.5, Evaporation: 3, Tanks: 1})
	if math.Abs(float64(o.Share)-3.5/4.5) > 1e-12 || len(f) < 2 || !strings.Contains(strings.Join(f, "; "),
		"B_most = max(0, E + D - D_in)") {
		t.Errorf("one tank, wet work: %+v, %q", o, f)
	}
	o, f = over(rinse.Recovery{Bath: 10, DragOut: 1, Evaporation: 3, Tanks: 1})
	if math.Abs(float64(o.Share)-4.0/5) > 1e-12 || !strings.Contains(strings.Join(f, "; "), "B_most = E + D") {
		t.Errorf("one tank, dry work: %+v, %q", o, f)
	}
	o, err := rinse.Recovery{Bath: 10, DragOut: 1e-200, Evaporation: 1, Tanks: 3}.Over(1)
	if err != nil || o.Share != 1 || o.Back != o.Dragged || o.Lost != 0 {
		t.Errorf("endless return: %+v, %v", o, err)
	}
	for tanks, ok := range map[int]bool{-1: false, 0: true, 1: true, 20: true, 21: false} {
		_, err := rinse.Recovery{Bath: 10, DragOut: 1, Evaporation: 3, Tanks: tanks}.Over(1)
		var v *units.ValueError
		if (err == nil) != ok || !ok && (!errors.As(err, &v) || v.Need != "a whole number from 0 to 20") {
			t.Errorf("%d tanks: %v", tanks, err)
		}
	}
}

// TestPropertyZeros: what is not given or unknown is zero or none, and
// nothing happens in no time and with no load.
func TestPropertyZeros(t *testing.T) {
	want := map[rinse.Thickness]float64{rinse.AsPrinted: 0, rinse.Thin: 0.001, rinse.Medium: 0.002, rinse.Syrupy: 0.005,
		rinse.Syrupy + 1: 0, 200: 0}
	for k, v := range want {
		if got := float64(k.Viscosity()); math.Abs(got-v) > 1e-15 {
			t.Errorf("%s: %v Pa·s, want %v", k, got, v)
		}
	}
	for _, s := range []rinse.Drainage{rinse.CupVeryPoor + 1, 200} {
		if s.String() != rinse.NoShape.String() {
			t.Errorf("shape %d: %q", s, s)
		}
	}
	curve := rinse.DrainCurve{Drainable: 1e-5, Held: 1e-6, Constant: 10}
	if v, err := curve.Saved(10, 10); v != 0 || err != nil {
		t.Errorf("saved in no time: %v, %v", v, err)
	}
	tank := rinse.RinseTank{Bath: 10, Start: 1, Volume: 1, DragOut: 0.01, Water: 0.01}
	if b, err := tank.Balance(0); b != (rinse.MetalBalance{}) || err != nil {
		t.Errorf("no load: %+v, %v", b, err)
	}
	if b, err := tank.Balance(-1); b != (rinse.MetalBalance{}) || err == nil {
		t.Errorf("-1 load: %+v", b)
	}
	if c, err := tank.After(0); c != tank.Start || err != nil {
		t.Errorf("no load: %v, %v", c, err)
	}
	if n, err := tank.LoadsTo(4); err != nil || n == 0 {
		t.Errorf("%v, %v", n, err)
	}
	if n, err := tank.LoadsTo(5); n != 0 || err == nil {
		t.Errorf("the content it tends to: %v loads", n)
	}
	batch := rinse.Batch{Bath: 10, Volume: 1, DragOut: 0.01, Evaporation: 0.02, Loads: 5}
	dry, err := batch.Working()
	recompute(t, dry, err)
	batch.DragIn = 0.01
	wet, err := batch.Working()
	recompute(t, wet, err)
	if dry[0].Formula != "B = min(V, N·(E + d))" || wet[0].Formula == dry[0].Formula {
		t.Errorf("%s, %s", dry[0].Formula, wet[0].Formula)
	}
}
