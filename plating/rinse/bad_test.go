package rinse_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
)

// A calculation is a sound set of inputs, whose float fields the test spoils
// one by one, with everything that is computed from it.
type calculation struct {
	name string
	in   any
	run  func(in any) []error
	zero map[string]bool // fields that may be zero
}

type pair struct {
	Bath, Final units.MassConcentration
}
type waterInput struct {
	Ratio           units.Ratio
	DragIn, DragOut rinse.Flow
}
type splitInput struct{ Total, DragIn, DragOut rinse.Flow }
type partInput struct {
	Content units.MassConcentration
	Film    units.Volume
	Area    units.Area
}
type drips struct {
	Interval    units.Duration
	A, B, C     units.Volume
	From, Until units.Duration
}
type flowInput struct {
	Volume units.Volume
	Every  units.Duration
}

func calculations() []calculation {
	e := func(list ...error) []error { return list }
	get := func(_ any, err error) error { return err }
	return []calculation{
		{"load", rinse.WetLoad{Area: 1, Shape: rinse.VerticalWell, Drain: 10}, func(in any) []error {
			l := in.(rinse.WetLoad)
			_, err := l.DragOut()
			_, err2 := l.DragOutWorking()
			return e(err, err2)
		}, map[string]bool{"Drain": true}},
		{"withdrawal", rinse.Withdrawal{Speed: 0.001, Viscosity: 0.001, Density: 1000, Tension: 0.07},
			func(in any) []error {
				w := in.(rinse.Withdrawal)
				_, err := w.Film()
				_, err2 := w.FilmWorking()
				return e(err, err2)
			}, nil},
		{"hanging", rinse.Hanging{Height: 0.1, Time: 10, Viscosity: 0.001, Density: 1000}, func(in any) []error {
			p := in.(rinse.Hanging)
			_, err := p.DrainedFilm()
			_, err2 := p.DrainedFilmWorking()
			return e(err, err2)
		}, nil},
		{"drain curve", rinse.DrainCurve{Drainable: 1, Held: 1, Constant: 5}, func(in any) []error {
			c := in.(rinse.DrainCurve)
			_, err := c.Left(3)
			_, err2 := c.LeftWorking(3)
			_, err3 := c.Saved(1, 2)
			return e(err, err2, err3)
		}, map[string]bool{"Drainable": true, "Held": true}},
		{"drips", drips{5, 3, 2, 1.4, 1, 2}, func(in any) []error {
			d := in.(drips)
			_, err := rinse.FitDrips(d.Interval, d.A, d.B, d.C)
			_, err2 := rinse.DrainCurve{Drainable: 1, Constant: 5}.Saved(d.From, d.Until)
			if err == nil {
				err = err2
			}
			return e(err)
		}, map[string]bool{"A": true, "B": true, "C": true, "From": true}},
		{"flow", flowInput{1, 60}, func(in any) []error {
			f := in.(flowInput)
			_, err := rinse.NewFlow(f.Volume, f.Every)
			return e(err)
		}, map[string]bool{"Volume": true}},
		{"tank", rinse.RinseTank{Bath: 8, Start: 0.01, Volume: 2e-3, DragOut: 2e-5, Water: 1e-3}, func(in any) []error {
			k := in.(rinse.RinseTank)
			_, a := k.After(10)
			_, b := k.AfterWorking(10)
			_, c := k.Balance(10)
			_, d := k.Balance(1e6)
			_, f := k.TimeTo(0.02, 60)
			return e(a, b, c, d, f)
		}, map[string]bool{"Start": true, "Water": true}},
		{"running", rinse.Running{Bath: 8, Start: 0.01, Volume: 2e-3, Water: 1e-5, DragIn: 1e-6, DragOut: 1e-6},
			func(in any) []error {
				r := in.(rinse.Running)
				_, a := r.After(10)
				_, b := r.AfterWorking(10)
				_, c := r.Constant()
				_, d := r.TimeTo(0.011)
				return e(a, b, c, d)
			}, map[string]bool{"Start": true, "Water": true, "DragOut": true}},
		{"counterflow", rinse.Counterflow{Stages: 3, Water: 1e-5, DragIn: 1e-6, DragOut: 1e-6}, func(in any) []error {
			c := in.(rinse.Counterflow)
			_, a := c.Ratio()
			_, b := c.Tanks(8)
			_, d := c.Working(8)
			return e(a, b, d)
		}, map[string]bool{"Water": true, "DragOut": true}},
		{"water", waterInput{1000, 1, 1}, func(in any) []error {
			w := in.(waterInput)
			_, a := rinse.WaterFor(w.Ratio, 2, w.DragIn, w.DragOut)
			_, b := rinse.WaterForWorking(w.Ratio, 2, w.DragIn, w.DragOut)
			_, c := rinse.SeriesWaterFor(w.Ratio, 2, w.DragIn, w.DragOut)
			return e(a, b, c)
		}, map[string]bool{"DragOut": true}},
		{"split", splitInput{10, 1, 1}, func(in any) []error {
			s := in.(splitInput)
			_, a := rinse.SplitWater(s.Total, 3, s.DragIn, s.DragOut)
			series := rinse.RinseSeries{Water: []rinse.Flow{s.Total, s.Total}, DragIn: s.DragIn, DragOut: s.DragOut}
			_, b := series.Ratio()
			_, c := series.Working()
			return e(a, b, c)
		}, map[string]bool{"Total": true, "DragOut": true}},
		{"contents", pair{8, 0.04}, func(in any) []error {
			p := in.(pair)
			return e(get(rinse.RatioFor(p.Bath, p.Final)))
		}, nil},
		{"part", partInput{1, 1, 1}, func(in any) []error {
			p := in.(partInput)
			_, a := rinse.LeftOnPart(p.Content, p.Film, p.Area)
			_, b := rinse.LeftOnPartWorking(p.Content, p.Film, p.Area)
			return e(a, b)
		}, map[string]bool{"Content": true, "Film": true}},
		{"spray", rinse.Spray{Film: 1, Water: 3, Mixing: 0.3}, func(in any) []error {
			s := in.(rinse.Spray)
			_, a := s.Ratio()
			_, b := s.Working()
			return e(a, b)
		}, map[string]bool{"Water": true}},
		{"recovery", rinse.Recovery{Bath: 8, DragOut: 1, Evaporation: 1, Tanks: 2, Return: 1}, func(in any) []error {
			r := in.(rinse.Recovery)
			_, a := r.Over(10)
			_, b := r.Working(10)
			return e(a, b)
		}, map[string]bool{"Evaporation": true, "Return": true, "DragIn": true}},
		{"batch", rinse.Batch{Bath: 8, Volume: 3e-3, DragOut: 2e-5, Evaporation: 1e-5, Loads: 10}, func(in any) []error {
			b := in.(rinse.Batch)
			_, c := b.Cycle()
			_, d := b.Working()
			return e(c, d)
		}, map[string]bool{"Evaporation": true, "DragIn": true}},
	}
}

// TestPropertyBadNumbers puts NaN, infinities, negatives, zeros and numbers of
// absurd size into every field: a typed error, or a finite answer, and never a
// panic.
func TestPropertyBadNumbers(t *testing.T) {
	fields := 0
	for _, c := range calculations() {
		for _, err := range c.run(c.in) {
			if err != nil {
				t.Errorf("%s: the sound case fails: %v", c.name, err)
			}
		}
		typ := reflect.TypeOf(c.in)
		for i := range typ.NumField() {
			if typ.Field(i).Type.Kind() != reflect.Float64 {
				continue
			}
			fields++
			for _, v := range append(bads, 0, 1e300, math.MaxFloat64, 1e-300, 5e-324) {
				in := reflect.New(typ).Elem()
				in.Set(reflect.ValueOf(c.in))
				in.Field(i).SetFloat(v)
				name := fmt.Sprintf("%s.%s = %g", c.name, typ.Field(i).Name, v)
				for _, err := range c.run(in.Interface()) {
					must := v-v != 0 || v < 0 || (v == 0 && !c.zero[typ.Field(i).Name])
					var ranged *units.RangeError
					switch {
					case err == nil && must:
						t.Errorf("%s: accepted", name)
					case err != nil && !errors.As(err, &ranged):
						refused(t, name, err, nil)
					}
				}
			}
		}
	}
	if fields < 50 {
		t.Errorf("only %d fields were tried", fields)
	}
}

// TestPropertyRefusals: what each error says.
func TestPropertyRefusals(t *testing.T) {
	tank := rinse.RinseTank{Bath: 8 * gL, Volume: 2 * litre, DragOut: 20 * mL}
	for name, c := range map[string]struct{ err, reason error }{
		"no shape":      {get(rinse.WetLoad{Area: 1}.DragOut()), units.ErrOutOfRange},
		"unknown shape": {get(rinse.WetLoad{Area: 1, Shape: 77}.DragOut()), units.ErrOutOfRange},
		"unknown class": {get(rinse.WetLoad{Area: 1, Shape: 1, Thickness: 9}.DragOut()), units.ErrOutOfRange},
		"no stages":     {get(rinse.Counterflow{Water: 1, DragIn: 1}.Ratio()), units.ErrOutOfRange},
		"21 stages":     {get(rinse.Counterflow{Stages: 21, Water: 1, DragIn: 1}.Ratio()), units.ErrOutOfRange},
		"first tank dry": {get(rinse.Counterflow{Stages: 2, Water: 1, DragIn: 1, DragOut: 3}.Ratio()),
			units.ErrInconsistent},
		"series dry": {get(rinse.RinseSeries{Water: []rinse.Flow{1, 9}, DragIn: 1, DragOut: 3}.Ratio()),
			units.ErrInconsistent},
		"split dry":         {get(rinse.SplitWater(1, 2, 1, 3)), units.ErrInconsistent},
		"no series":         {get(rinse.RinseSeries{DragIn: 1}.Ratio()), units.ErrOutOfRange},
		"bad water":         {get(rinse.RinseSeries{Water: []rinse.Flow{1, -1}, DragIn: 1}.Ratio()), units.ErrNegative},
		"ratio below one":   {get(rinse.WaterFor(0.9, 2, 1, 0)), units.ErrOutOfRange},
		"series below one":  {get(rinse.SeriesWaterFor(0.9, 2, 1, 0)), units.ErrOutOfRange},
		"spray below one":   {get(rinse.SprayWaterFor(0.9, 1, 0.5)), units.ErrOutOfRange},
		"mixing over one":   {get(rinse.Spray{Film: 1, Water: 1, Mixing: 1.1}.Ratio()), units.ErrOutOfRange},
		"spray flood":       {get(rinse.Spray{Film: 1e-9, Water: 1, Mixing: 1}.Ratio()), units.ErrNotFinite},
		"dirtier than bath": {get(rinse.RatioFor(1, 2)), units.ErrInconsistent},
		"start over bath": {get(rinse.RinseTank{Bath: 8, Start: 9, Volume: 1, DragOut: 0.1}.After(1)),
			units.ErrInconsistent},
		"running over bath": {get(rinse.Running{Bath: 8, Start: 9, Volume: 1, DragIn: 0.1}.After(1)),
			units.ErrInconsistent},
		"minus loads":     {get(tank.After(-1)), units.ErrOutOfRange},
		"too many loads":  {get(tank.Balance(2_000_000_000)), units.ErrOutOfRange},
		"never reached":   {get(tank.LoadsTo(8 * gL)), units.ErrOutOfRange},
		"too far off":     {get(rinse.RinseTank{Bath: 8, Volume: 1, DragOut: 1e-14}.LoadsTo(7)), units.ErrOutOfRange},
		"time never":      {get(rinse.Running{Bath: 8, Volume: 1, Water: 1, DragIn: 1}.TimeTo(5)), units.ErrOutOfRange},
		"no volumes":      {get(tank.Row(nil, 4)), units.ErrOutOfRange},
		"bad volume":      {get(tank.Row([]units.Volume{1, 0}, 4)), units.ErrNotPositive},
		"row loads":       {get(tank.Row([]units.Volume{1}, 1e9)), units.ErrOutOfRange},
		"one drip":        {get(rinse.FitDrips(5, 1)), units.ErrOutOfRange},
		"growing drips":   {get(rinse.FitDrips(5, 1, 2, 3)), units.ErrInconsistent},
		"even drips":      {get(rinse.FitDrips(5, 2, 2, 2)), units.ErrInconsistent},
		"all at once":     {get(rinse.FitDrips(5, 2, 0)), units.ErrInconsistent},
		"no drips":        {get(rinse.FitDrips(5, 0, 0)), units.ErrNotPositive},
		"times backwards": {get(rinse.DrainCurve{Drainable: 1, Constant: 1}.Saved(3, 2)), units.ErrInconsistent},
		"no room": {get(rinse.Recovery{Bath: 8, DragOut: 1, Evaporation: 1, Tanks: 1, Return: 2.1}.Over(1)),
			units.ErrInconsistent},
		"return from none":  {get(rinse.Recovery{Bath: 8, DragOut: 1, Return: 0.5}.Over(1)), units.ErrInconsistent},
		"21 drag-out tanks": {get(rinse.Recovery{Bath: 8, DragOut: 1, Tanks: 21}.Over(1)), units.ErrOutOfRange},
		"no loads":          {get(rinse.Batch{Bath: 8, Volume: 1, DragOut: 0.1}.Cycle()), units.ErrOutOfRange},
	} {
		if c.err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		refused(t, name, c.err, c.reason)
	}
	// Outside a published range the value comes with the error.
	var ranged *units.RangeError
	c, err := rinse.WetLoad{Area: 1, Shape: 1, Drain: 300}.DragOut()
	if !errors.As(err, &ranged) || c.Low <= 0 {
		t.Errorf("drain time of 300 s: %v, %v", c, err)
	}
	f, err := rinse.Withdrawal{Speed: 1, Viscosity: 0.05, Density: 1000, Tension: 0.07}.Film()
	if !errors.As(err, &ranged) || f.Depth <= 0 {
		t.Errorf("quick withdrawal: %v, %v", f, err)
	}
}

func get[T any](_ T, err error) error { return err }
