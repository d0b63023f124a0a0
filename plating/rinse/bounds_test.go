package rinse_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestPropertyErrorsLeaveNoFigure: a figure never comes with an error, except
// beside a *units.RangeError, and is finite; no argument makes a panic.
func TestPropertyErrorsLeaveNoFigure(t *testing.T) {
	beside := func(err error) bool {
		var r *units.RangeError
		return errors.As(err, &r)
	}
	cascade := rinse.Counterflow{Stages: 3, Water: 10, DragIn: 1, DragOut: 1}
	series := rinse.RinseSeries{Water: []rinse.Flow{5, 6}, DragIn: 1, DragOut: 1}
	tank := rinse.RinseTank{Bath: 10, Start: 1, Volume: 1, DragOut: 0.01, Water: 0.01}
	running := rinse.Running{Bath: 10, Start: 1, Volume: 1, Water: 0.01, DragIn: 0.001, DragOut: 0.001}
	recovery := rinse.Recovery{Bath: 10, DragOut: 1, DragIn: 0.5, Evaporation: 3, Tanks: 2, Return: 2}
	batch := rinse.Batch{Bath: 10, Volume: 1, DragOut: 0.01, DragIn: 0.01, Evaporation: 0.02, Loads: 5}
	hung := rinse.Hanging{Height: 0.1, Time: 20, Viscosity: 0.001, Density: 1000}
	pulled := rinse.Withdrawal{Speed: 0.05, Viscosity: 0.001, Density: 1000, Tension: 0.07}
	curve := rinse.DrainCurve{Drainable: 1e-5, Held: 1e-6, Constant: 10}
	for _, c := range []struct {
		name string
		fn   any
		args []any
	}{
		{"Counterflow.Ratio", rinse.Counterflow.Ratio, []any{cascade}},
		{"Counterflow.Tanks", rinse.Counterflow.Tanks, []any{cascade, 10.0}},
		{"DragOut", rinse.WetLoad.DragOut, []any{rinse.WetLoad{Area: 0.1, Shape: rinse.VerticalWell, Drain: 10,
			Thickness: rinse.Thin}}},
		{"Left", rinse.DrainCurve.Left, []any{curve, 10.0}},
		{"Saved", rinse.DrainCurve.Saved, []any{curve, 5.0, 20.0}},
		{"FitDrips", rinse.FitDrips, []any{5.0, []units.Volume{4e-6, 2e-6, 1.1e-6}}},
		{"Film", rinse.Withdrawal.Film, []any{pulled}},
		{"DrainedFilm", rinse.Hanging.DrainedFilm, []any{hung}},
		{"LeftOnPart", rinse.LeftOnPart, []any{0.01, 1e-5, 0.1}},
		{"Spray.Ratio", rinse.Spray.Ratio, []any{rinse.Spray{Film: 1e-5, Water: 1e-4, Mixing: 0.3}}},
		{"SprayWaterFor", rinse.SprayWaterFor, []any{20.0, 1e-5, 0.3}},
		{"NewFlow", rinse.NewFlow, []any{0.01, 60.0}},
		{"Over", rinse.Recovery.Over, []any{recovery, 3600.0}},
		{"Cycle", rinse.Batch.Cycle, []any{batch}},
		{"Running.Ratio", rinse.Running.Ratio, []any{running}},
		{"Steady", rinse.Running.Steady, []any{running}},
		{"Constant", rinse.Running.Constant, []any{running}},
		{"Running.After", rinse.Running.After, []any{running, 60.0}},
		{"Running.TimeTo", rinse.Running.TimeTo, []any{running, 0.95}},
		{"Series.Ratio", rinse.RinseSeries.Ratio, []any{series}},
		{"SplitWater", rinse.SplitWater, []any{10.0, 3, 1.0, 1.5}},
		{"SeriesWaterFor", rinse.SeriesWaterFor, []any{1000.0, 3, 1.0, 1.5}},
		{"Tank.After", rinse.RinseTank.After, []any{tank, 9}},
		{"LoadsTo", rinse.RinseTank.LoadsTo, []any{tank, 3.0}},
		{"Tank.TimeTo", rinse.RinseTank.TimeTo, []any{tank, 3.0, 60.0}},
		{"Balance", rinse.RinseTank.Balance, []any{tank, 9}},
		{"WaterFor", rinse.WaterFor, []any{1000.0, 3, 1.0, 1.5}},
		{"RatioFor", rinse.RatioFor, []any{10.0, 0.01}},
	} {
		if testdata.WrongCalls(t, beside, c.name, c.fn, c.args...) == 0 {
			t.Errorf("%s refuses nothing", c.name)
		}
	}
	for what, call := range map[string]func() (float64, error){
		"water below the steady content": func() (float64, error) { d, err := running.TimeTo(0.5); return float64(d), err },
		"less than one, spray": func() (float64, error) {
			w, err := rinse.SprayWaterFor(0.99, 1e-5,
				0.3)
			return float64(w), err
		},
		"less than one, counterflow": func() (float64, error) {
			w, err := rinse.WaterFor(0.99, 2, 1,
				1)
			return float64(w), err
		},
		"richer than the bath": func() (float64, error) {
			r, err := rinse.RatioFor(10, 10.01)
			return float64(r),
				err
		},
		"a content never reached": func() (float64, error) { n, err := tank.LoadsTo(5); return float64(n), err },
		"no water": func() (float64, error) {
			r, err := rinse.RinseSeries{}.Ratio()
			return float64(r),
				err
		},
		"back in time": func() (float64, error) { v, err := curve.Saved(20, 5); return float64(v), err },
	} {
		if v, err := call(); v != 0 || err == nil {
			t.Errorf("%s: %v, %v", what, v, err)
		}
	}
}

// TestReferenceDragOutEnds: both ends of each printed figure, as figure, as
// text, as volume on an area, and in the steps.
func TestReferenceDragOutEnds(t *testing.T) {
	// US gallons on 1000 ft², in m.
	const one = 231 * 0.0254 * 0.0254 * 0.0254 / (1000 * 0.3048 * 0.3048)
	printed := map[rinse.Drainage][2]float64{rinse.VerticalWell: {0.4, 0.4}, rinse.VerticalPoor: {2, 2},
		rinse.VerticalVeryPoor: {4, 4},
		rinse.HorizontalWell:   {0.8, 0.8}, rinse.HorizontalVeryPoor: {10, 10}, rinse.CupVeryPoor: {8, 24}}
	if len(rinse.Figures()) != len(printed) {
		t.Errorf("%d figures", len(rinse.Figures()))
	}
	for _, f := range rinse.Figures() {
		p := printed[f.Shape]
		near(t, f.Shape.String()+" low", float64(f.Low), p[0]*one, 1e-12)
		near(t, f.Shape.String()+" high", float64(f.High), p[1]*one, 1e-12)
		text := fmt.Sprintf("%.1f US gal/1000 ft²", p[0])
		if p[1] > p[0] {
			text = "8 to 24 or more US gal/1000 ft²"
		}
		if f.Open != (p[1] > p[0]) || f.Printed != text {
			t.Errorf("%s: open %v, %q, want %q", f.Shape, f.Open, f.Printed, text)
		}
		for drain, factor := range map[units.Duration]float64{0: 1, 40: 0.5, 2.5: 2, 10: 1} {
			l := rinse.WetLoad{Area: 3, Shape: f.Shape, Drain: drain}
			c, err := l.DragOut()
			steps, stepsErr := l.DragOutWorking()
			pools := p[0] >= 4 && f.Shape != rinse.HorizontalWell
			if pools {
				factor = 1
			}
			var outside *units.RangeError
			if beyond := drain == 2.5 && !pools; errors.As(err, &outside) != beyond ||
				errors.As(stepsErr, &outside) != beyond {
				t.Errorf("%s after %v: %v", f.Shape, drain, err)
			}
			near(t, "low", float64(c.Low), p[0]*one*3*factor, 1e-12)
			near(t, "high", float64(c.High), p[1]*one*3*factor, 1e-12)
			want := 1
			if p[1] > p[0] {
				want = 2
			}
			if len(steps) != want {
				t.Errorf("%s: %d steps, want %d", f.Shape, len(steps), want)
			} else if want == 2 && (steps[0].Result.Meaning != "carried out, at least" ||
				steps[1].Result.Meaning != "carried out, at most as printed") {
				t.Errorf("%s: %q, %q", f.Shape, steps[0].Result.Meaning, steps[1].Result.Meaning)
			}
			switch asked := drain != 0; {
			case !asked && c.Seen != origin.Published, asked && pools && !strings.Contains(c.Note, "Tip the part"),
				asked && !pools && c.Seen != origin.FromMemory:
				t.Errorf("%s after %v: %v, %q", f.Shape, drain, c.Seen, c.Note)
			}
		}
		if pools := p[0] >= 4; f.Shape.Pools() != pools {
			t.Errorf("%s pools: %v", f.Shape, f.Shape.Pools())
		}
	}
	for drain, within := range map[units.Duration]bool{3: true, 2.999: false, 60: true, 60.001: false} {
		_, err := rinse.WetLoad{Area: 1, Shape: rinse.VerticalWell, Drain: drain}.DragOut()
		if (err == nil) != within {
			t.Errorf("%v: %v", drain, err)
		}
	}
	for _, s := range []rinse.Drainage{rinse.NoShape, rinse.CupVeryPoor + 1, 200} {
		if c, err := (rinse.WetLoad{Area: 1, Shape: s}).DragOut(); err == nil || c != (rinse.Carried{}) {
			t.Errorf("shape %d: %+v", s, c)
		}
	}
	for _, k := range []rinse.Thickness{rinse.Syrupy + 1, 200} {
		if c, err := (rinse.WetLoad{Area: 1, Shape: rinse.VerticalWell, Thickness: k}).DragOut(); err == nil ||
			c != (rinse.Carried{}) {
			t.Errorf("thickness %d: %+v", k, c)
		}
	}
}

// TestIndependentManyLoads holds the balance of very many loads, where a closed
// form takes over, against adding load by load.
func TestIndependentManyLoads(t *testing.T) {
	for _, tank := range []rinse.RinseTank{
		{Bath: 10, Start: 1, Volume: 1, DragOut: 2e-6, Water: 3e-6}, {Bath: 10, Volume: 2, DragOut: 1e-5},
		{Bath: 8, Start: 6, Volume: 0.5, DragOut: 1e-6, Water: 4e-6}} {
		for _, loads := range []int{99_999, 100_000, 100_001, 400_000} {
			c, sum := float64(tank.Start), 0.0
			v, d, w := float64(tank.Volume), float64(tank.DragOut), float64(tank.Water)
			for range loads {
				c = (c*v + d*float64(tank.Bath)) / (v + d + w)
				sum += c
			}
			b, err := tank.Balance(loads)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "in", float64(b.In), float64(loads)*d*float64(tank.Bath), 1e-12)
			near(t, "on the work", float64(b.OnWork), d*sum, 1e-9)
			near(t, "over the rim", float64(b.Overflow), w*sum, 1e-9)
			near(t, "kept", float64(b.Kept), v*(c-float64(tank.Start)), 1e-8)
			near(t, "all", float64(b.OnWork+b.Overflow+b.Kept), float64(b.In), 1e-9)
		}
	}
}

// TestPropertyLoadsToIsFirst: the load before the one returned has not reached
// the content, also where the content is met to the last digit.
func TestPropertyLoadsToIsFirst(t *testing.T) {
	for _, tank := range []rinse.RinseTank{{Bath: 10, Volume: 1, DragOut: 0.01}, {Bath: 10, Start: 2, Volume: 1,
		DragOut: 0.2, Water: 0.1},
		{Bath: 3, Volume: 7, DragOut: 0.003, Water: 0.001}} {
		for n := 1; n < 30; n++ {
			exact := must(tank.After(n))(t)
			if got := must(tank.LoadsTo(exact))(t); got != n {
				t.Errorf("%+v: %d loads to the content after %d", tank, got, n)
			}
			between := (exact + must(tank.After(n-1))(t)) / 2
			if got := must(tank.LoadsTo(between))(t); got != n {
				t.Errorf("%+v: %d loads to a content between %d and %d", tank, got, n-1, n)
			}
		}
		if n := must(tank.LoadsTo(max(tank.Start, 1e-30)))(t); tank.Start > 0 && n != 0 {
			t.Errorf("%d loads to the start", n)
		}
	}
}

// TestIndependentFilm computes the film's own numbers again, and the end of
// the law's range.
func TestIndependentFilm(t *testing.T) {
	for _, w := range []rinse.Withdrawal{{Speed: 0.05, Viscosity: 0.001, Density: 1000, Tension: 0.07},
		{Speed: 0.2, Viscosity: 0.0034, Density: 1300, Tension: 0.08}} {
		f, err := w.Film()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "Ca", float64(f.Capillary), float64(w.Viscosity)*float64(w.Speed)/float64(w.Tension), 1e-12)
		// Re from the same depth by momentum over drag: ρU² over μU/h.
		momentum := float64(w.Density) * float64(w.Speed) * float64(w.Speed)
		drag := float64(w.Viscosity) * float64(w.Speed) / float64(f.Depth)
		near(t, "Re", float64(f.Reynolds), momentum/drag, 1e-12)
	}
	for ca, within := range map[float64]bool{0.00999: true, 0.01001: false, 0.015: false} {
		w := rinse.Withdrawal{Speed: units.Speed(ca * 0.07 / 0.001), Viscosity: 0.001, Density: 1000, Tension: 0.07}
		f, err := w.Film()
		var outside *units.RangeError
		if errors.As(err, &outside) == within || f.Depth == 0 {
			t.Errorf("Ca %v: %v, %v", ca, f, err)
		}
	}
}

// TestIndependentWorstDrip: the largest distance from the fitted curve is what
// the curve itself says of each interval.
func TestIndependentWorstDrip(t *testing.T) {
	for _, drips := range [][]units.Volume{{4e-6, 2.4e-6, 0.9e-6, 0.7e-6}, {4e-6, 1.5e-6, 1.4e-6}, {3e-6, 2.9e-6, 2.2e-6,
		2.1e-6}} {
		fit := must(rinse.FitDrips(5, drips...))(t)
		worst, squares := 0.0, func(c rinse.DrainCurve) float64 {
			sum := 0.0
			for i, v := range drips {
				d := float64(v) - float64(c.Drainable)*(math.Exp(-5*float64(i)/float64(c.Constant))-
					math.Exp(-5*float64(i+1)/float64(c.Constant)))
				sum += d * d
			}
			return sum
		}
		for i, v := range drips {
			left := func(k int) float64 {
				return float64(fit.Curve.Drainable) * math.Exp(-5*float64(k)/float64(fit.Curve.Constant))
			}
			worst = max(worst, math.Abs(float64(v)-(left(i)-left(i+1))))
		}
		near(t, "worst", float64(fit.Worst), worst, 1e-9)
		// No neighbour fits better.
		best := squares(fit.Curve)
		for _, f := range [][2]float64{{1.001, 1}, {0.999, 1}, {1, 1.001}, {1, 0.999}, {1.001, 1.001}, {0.999, 0.999}} {
			c := fit.Curve
			c.Drainable, c.Constant = c.Drainable*units.Volume(f[0]), c.Constant*units.Duration(f[1])
			if squares(c) < best {
				t.Errorf("%v: %v fits better", drips, c)
			}
		}
	}
}

// TestPropertyEnds holds the ends of ranges: on them is allowed where the
// comments say so, beyond them is not.
func TestPropertyEnds(t *testing.T) {
	ratio := func(r float64) error { _, err := rinse.SprayWaterFor(units.Ratio(r), 1e-5, 0.3); return err }
	water := func(r float64) error { _, err := rinse.WaterFor(units.Ratio(r), 2, 1, 1); return err }
	series := func(r float64) error { _, err := rinse.SeriesWaterFor(units.Ratio(r), 2, 1, 1); return err }
	back := func(b rinse.Flow) error {
		_, err := rinse.Recovery{Bath: 10, DragOut: 1, DragIn: 0.5, Evaporation: 3, Tanks: 1, Return: b}.Over(60)
		return err
	}
	full := func(q rinse.Flow) error { // the work takes on 2 and brings 1: 1 keeps the tank full
		_, err := rinse.Counterflow{Stages: 2, Water: q, DragIn: 1, DragOut: 2}.Ratio()
		return err
	}
	start := func(c units.MassConcentration) error {
		_, err := rinse.RinseTank{Bath: 10, Start: c, Volume: 1, DragOut: 0.01, Water: 0.01}.After(1)
		return err
	}
	fresh := func(c units.MassConcentration) error {
		_, err := rinse.Running{Bath: 10, Start: c, Volume: 1, Water: 0.01, DragIn: 0.001}.After(1)
		return err
	}
	loads := func(n int) error {
		_, err := rinse.Batch{Bath: 10, Volume: 1, DragOut: 0.001, Evaporation: 0.001, Loads: n}.Cycle()
		return err
	}
	after := func(n int) error { _, err := rinse.RinseTank{Bath: 10, Volume: 1, DragOut: 0.001}.After(n); return err }
	row := func(tanks, n int) error {
		_, err := rinse.RinseTank{Bath: 10, DragOut: 0.001}.Row(make([]units.Volume, tanks), n)
		var v *units.ValueError
		if errors.As(err, &v) && strings.HasPrefix(v.Field, "volume of the tank") {
			return nil // the counts are in order
		}
		return err
	}
	final := func(c units.MassConcentration) error { _, err := rinse.RatioFor(10, c); return err }
	dilute := func(d, w units.Volume) error {
		_, err := rinse.RinseTank{Bath: 10, Volume: 1, DragOut: d, Water: w}.After(1)
		return err
	}
	for _, c := range []struct {
		what string
		err  error
		ok   bool
	}{
		{"spray to 1", ratio(1), true}, {"below 1", ratio(0.999), false}, {"rinse to 1", water(1), true}, {"below",
			water(0.999), false},
		{"series to 1", series(1), true}, {"below", series(0.999), false},
		{"return of the room", back(3.5), true}, {"more", back(3.5001), false}, {"none said", back(0), true},
		{"just full", full(1), true}, {"not full", full(0.9999), false},
		{"as rich as the bath", start(10), true}, {"richer", start(10.001), false},
		{"running, as rich", fresh(10), true}, {"running, richer", fresh(10.001), false},
		{"1 load", loads(1), true}, {"0 loads", loads(0), false}, {"a million", loads(1_000_000), true}, {"more",
			loads(1_000_001), false},
		{"no load yet", after(0), true}, {"-1", after(-1), false}, {"1e9", after(1_000_000_000), true}, {"over",
			after(1_000_000_001), false},
		{"1 rinse", row(1, 1), true}, {"20", row(20, 1), true}, {"21", row(21, 1), false}, {"none", row(0, 1), false},
		{"no loads", row(1, 0), true}, {"1e7", row(1, 10_000_000), true}, {"over", row(1, 10_000_001), false}, {"-1", row(1,
			-1), false},
		{"the bath itself", final(10), true}, {"more than the bath", final(10.001), false},
		{"a billion volumes", dilute(5e8, 5e8), true}, {"more", dilute(6e8, 5e8), false},
		{"water the most", dilute(1e8, 1e9), false}, {"a drop of 1e-15", dilute(1.01e-15, 0), true}, {"less",
			dilute(0.99e-15, 0), false},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: %v", c.what, c.err)
		}
	}
	running := rinse.Running{Bath: 10, Start: 1, Volume: 1, Water: 0.01, DragIn: 0.001}
	if d, err := running.TimeTo(running.Start); d != 0 || err != nil {
		t.Errorf("to the start: %v, %v", d, err)
	}
	if d, err := running.TimeTo(must(running.Steady())(t)); err == nil {
		t.Errorf("to the steady content: %v", d)
	}
	for f, unit := range map[rinse.Flow]string{rinse.LitrePerHour / 10: " L/h", rinse.LitrePerHour * 0.0999: " mL/h",
		-rinse.LitrePerHour / 10: " L/h", -rinse.LitrePerHour * 0.0999: " mL/h", rinse.LitrePerHour * 0.15: " L/h"} {
		if !strings.HasSuffix(f.String(), unit) || unit == " L/h" && strings.HasSuffix(f.String(), "mL/h") {
			t.Errorf("%g: %s, want%s", float64(f), f, unit)
		}
	}
	// Errors count from one, in the words of the caller.
	var v *units.ValueError
	if _, err := (rinse.RinseSeries{Water: []rinse.Flow{1, -1}, DragIn: 1}).Ratio(); !errors.As(err, &v) ||
		v.Field != "water of rinse 2" {
		t.Errorf("%v", err)
	}
	if _, err := rinse.FitDrips(5, 4e-6, 3e-6, -1); !errors.As(err, &v) || v.Field != "drip 3" {
		t.Errorf("%v", err)
	}
	if _, err := (rinse.Counterflow{Stages: 2, Water: 0.5, DragIn: 1, DragOut: 2}).Ratio(); !errors.As(err, &v) ||
		!strings.HasPrefix(v.Need, "at least "+rinse.Flow(1).String()) {
		t.Errorf("%v", err)
	}
	// Steps for many terms say which is which.
	steps := must(rinse.RinseSeries{Water: []rinse.Flow{5, 6, 7}, DragIn: 1, DragOut: 2}.Working())(t)
	for _, term := range steps[0].Terms {
		if n := term.Symbol[len(term.Symbol)-1:]; !strings.HasSuffix(term.Meaning, " "+n) {
			t.Errorf("%s means %q", term.Symbol, term.Meaning)
		}
	}
}

// TestPropertyLeastWater: no other sharing of the water brings a better ratio,
// and none with less water the same one.
func TestPropertyLeastWater(t *testing.T) {
	for _, d := range [][2]rinse.Flow{{1, 1}, {1, 3}, {3, 1}, {1, 1.01}, {1.01, 1}, {0.1, 5}, {50, 0.1}} {
		for _, want := range []units.Ratio{1, 1.2, 3, 50, 3000} {
			for tanks := 1; tanks <= 3; tanks++ {
				q := must(rinse.SeriesWaterFor(want, tanks, d[0], d[1]))(t)
				reached := must(rinse.RinseSeries{Water: q, DragIn: d[0], DragOut: d[1]}.Ratio())(t)
				full := d[1] > d[0] && q[0] <= (d[1]-d[0])*(1+1e-9) // keeping the first tank full rules
				if float64(reached) < float64(want)*(1-1e-9) || !full && float64(reached) > float64(want)*(1+1e-9) {
					t.Errorf("%v for %v in %d: %v reach %v", d, want, tanks, q, reached)
				}
				total := rinse.Flow(0)
				for _, v := range q {
					total += v
				}
				split := must(rinse.SplitWater(total, tanks, d[0], d[1]))(t)
				best := must(rinse.RinseSeries{Water: split, DragIn: d[0], DragOut: d[1]}.Ratio())(t)
				if float64(best) < float64(reached)*(1-1e-9) {
					t.Errorf("%v for %v in %d: %v is better than %v", d, want, tanks, q, split)
				}
				for from := range tanks {
					for to := range tanks {
						moved := append([]rinse.Flow(nil), split...)
						step := moved[from] / 1000
						if from == to || step == 0 || from == 0 && moved[0]-step < d[1]-d[0] {
							continue
						}
						moved[from], moved[to] = moved[from]-step, moved[to]+step
						other := must(rinse.RinseSeries{Water: moved, DragIn: d[0], DragOut: d[1]}.Ratio())(t)
						if float64(other) > float64(best)*(1+1e-9) {
							t.Errorf("%v for %v in %d: %v is better than %v", d, want, tanks, moved, split)
						}
					}
				}
			}
		}
	}
}
