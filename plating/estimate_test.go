package plating_test

import (
	"errors"
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

const dm2 = units.AmperePerSquareDecimetre

// hardGold is a layer of the demo workshop with everything given but the time.
func hardGold(t testing.TB) plating.Layer {
	t.Helper()
	d, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	d.Density = 17.3 * units.GramPerCubicCentimetre
	return plating.Layer{
		Name: "hard gold",
		Bath: plating.OperatingBath{
			Name: "gold, acid cyanide, cobalt hardened", Metal: "Au", Deposit: d, Fine: 0.997,
			Efficiency: plating.ConstantEfficiency(0.35),
			Window:     plating.CurrentDensityWindow{Low: 0.3 * dm2, High: 1.2 * dm2},
			Volts:      plating.VoltageWindow{Low: 2, High: 3},
			Temperature: plating.TemperatureWindow{Low: units.Celsius(32), High: units.Celsius(42),
				Set: units.Celsius(38)},
			Content: 8 * units.GramPerLitre, Volume: 5 * units.Litre, MaxThickness: 5 * units.Micrometre,
			Hazards: plating.HazardCyanide | plating.HazardAcid, PH: plating.PHWindow{Low: 4, High: 4.6},
			Source: "demo data",
		},
		Area:         105 * units.SquareCentimetre,
		Distribution: plating.Distribution{MinToAverage: 0.6, Basis: "given"},
		MinThickness: 1 * units.Micrometre, CurrentDensity: 0.5 * dm2,
	}
}

func relative(got, want float64) float64 {
	if got == want {
		return 0
	}
	return math.Abs(got-want) / math.Max(math.Abs(got), math.Abs(want))
}

// TestIndependentEstimate does the same job in exact rational arithmetic, by
// another route: charge per area from moles, not from the equivalent.
func TestIndependentEstimate(t *testing.T) {
	rat := func(v float64) *big.Rat { return new(big.Rat).SetFloat64(v) }
	mul := func(xs ...*big.Rat) *big.Rat {
		p := big.NewRat(1, 1)
		for _, x := range xs {
			p.Mul(p, x)
		}
		return p
	}
	over := func(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }
	elementary, _ := new(big.Rat).SetString("1.602176634e-19")
	avogadro, _ := new(big.Rat).SetString("6.02214076e23")
	f := mul(elementary, avogadro)
	gold, _ := new(big.Rat).SetString("0.196966570")

	rng := rand.New(rand.NewPCG(1, 2))
	worst := 0.0
	for range 2000 {
		l := hardGold(t)
		l.MinThickness = units.Length(math.Exp(rng.Float64()*6-16)) * units.Metre
		l.CurrentDensity = units.CurrentDensity(math.Exp(3 + rng.Float64()*7))
		l.Area = units.Area(math.Exp(rng.Float64()*9 - 9))
		l.Distribution.MinToAverage = units.Ratio(0.05 + 0.95*rng.Float64())
		l.Bath.Efficiency = plating.ConstantEfficiency(units.Efficiency(0.01 + 0.99*rng.Float64()))
		l.Bath.Deposit.Density = units.Density(5000 + 15000*rng.Float64())
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Fatal(err)
		}
		eff, _ := l.Bath.Efficiency.At(l.CurrentDensity)
		mean := over(rat(float64(l.MinThickness)), rat(float64(l.Distribution.MinToAverage)))
		mass := mul(mean, rat(float64(l.Area)), rat(float64(l.Bath.Deposit.Density)))
		charge := over(mul(over(mass, gold), f), rat(float64(eff)))
		current := mul(rat(float64(l.CurrentDensity)), rat(float64(l.Area)))
		for _, c := range []struct {
			what string
			got  float64
			want *big.Rat
		}{
			{"mean", float64(r.Average), mean}, {"mass", float64(r.Mass), mass}, {"charge", float64(r.Charge), charge},
			{"current", float64(r.Current), current}, {"time", float64(r.Time), over(charge, current)},
			{"fine mass", float64(r.FineMass), mul(mass, rat(float64(l.Bath.Fine)))},
		} {
			want, _ := c.want.Float64()
			if d := relative(c.got, want); d > worst {
				worst = d
			} else if d > 2e-15 {
				t.Fatalf("%s: %v, exact %v", c.what, c.got, want)
			}
		}
	}
	if worst > 2e-15 {
		t.Errorf("worst relative difference %.3g; need 2e-15", worst)
	}
}

// TestPropertySolveForEach solves for time, then for thickness, then for
// current density, and comes back to the start; with a constant and a curve.
func TestPropertySolveForEach(t *testing.T) {
	curve, err := plating.NewEfficiencyCurve(
		plating.EfficiencyPoint{CurrentDensity: 0.3 * dm2, Efficiency: 0.40},
		plating.EfficiencyPoint{CurrentDensity: 0.6 * dm2, Efficiency: 0.36},
		plating.EfficiencyPoint{CurrentDensity: 1.2 * dm2, Efficiency: 0.28})
	if err != nil {
		t.Fatal(err)
	}
	for name, eff := range map[string]plating.EfficiencyCurve{"constant": plating.ConstantEfficiency(0.35),
		"curve": curve} {
		for _, j := range []units.CurrentDensity{0.1 * dm2, 0.3 * dm2, 0.31 * dm2, 0.6 * dm2, 0.9 * dm2,
			1.2 * dm2, 2 * dm2} {
			l := hardGold(t)
			l.Bath.Efficiency = eff
			l.CurrentDensity = j
			forTime, err := plating.Estimate(&l)
			if err != nil {
				t.Fatal(err)
			}
			reached := l
			reached.MinThickness, reached.Time = 0, forTime.Time
			forThickness, err := plating.Estimate(&reached)
			if err != nil {
				t.Fatal(err)
			}
			if d := relative(float64(forThickness.Thinnest), float64(l.MinThickness)); d > 1e-14 {
				t.Errorf("%s, %v: thickness comes back %.3g off", name, j, d)
			}
			deadline := l
			deadline.CurrentDensity, deadline.Time = 0, forTime.Time
			forCurrent, err := plating.Estimate(&deadline)
			if err != nil {
				t.Fatal(err)
			}
			if d := relative(float64(forCurrent.CurrentDensity), float64(j)); d > 1e-13 {
				t.Errorf("%s, %v: current density comes back as %v", name, j, forCurrent.CurrentDensity)
			}
			within := name == "constant" || (j >= 0.3*dm2 && j <= 1.2*dm2)
			if got := !forTime.Warnings.Has(plating.WarnEfficiencyHeld); got != within {
				t.Errorf("%s, %v: within the curve %v, want %v", name, j, got, within)
			}
		}
	}
}

// TestIndependentCurveRoot compares the closed form with a scan and bisection,
// on random curves.
func TestIndependentCurveRoot(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 4))
	for n := range 500 {
		var points []plating.EfficiencyPoint
		j := 0.0
		for range 2 + rng.IntN(5) {
			j += 5 + 60*rng.Float64()
			points = append(points, plating.EfficiencyPoint{CurrentDensity: units.CurrentDensity(j),
				Efficiency: units.Efficiency(0.02 + 0.98*rng.Float64())})
		}
		curve, err := plating.NewEfficiencyCurve(points...)
		if err != nil {
			t.Fatal(err)
		}
		l := hardGold(t)
		l.Bath.Efficiency, l.CurrentDensity = curve, 0
		l.Time = units.Duration(60 + 6000*rng.Float64())
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Fatal(err)
		}
		need := float64(l.Bath.Deposit.Density) * float64(l.MinThickness) / float64(
			l.Distribution.MinToAverage) / float64(l.Bath.Deposit.Equivalent) / float64(l.Time)
		f := func(j float64) float64 {
			eff, _ := curve.At(units.CurrentDensity(j))
			return float64(eff)*j - need
		}
		step := j / 4e4
		low := 0.0
		for f(low+step) < 0 {
			low += step
		}
		high := low + step
		for range 80 {
			if mid := (low + high) / 2; f(mid) < 0 {
				low = mid
			} else {
				high = mid
			}
		}
		// A scan of finite step may jump over a narrow peak: then the closed form is lower and reaches the need.
		got := float64(r.CurrentDensity)
		if relative(got, high) > 1e-9 && !(got < high && math.Abs(f(got)) < 1e-9*need) {
			t.Fatalf("case %d: %v, by bisection %v (η·j off by %v)", n, got, high, f(got))
		}
	}
}

// TestPropertyScaling: area scales current, charge and mass and leaves time and
// thickness; promise scales time.
func TestPropertyScaling(t *testing.T) {
	l := hardGold(t)
	one, err := plating.Estimate(&l)
	if err != nil {
		t.Fatal(err)
	}
	big := l
	big.Area *= 3
	three, err := plating.Estimate(&big)
	if err != nil {
		t.Fatal(err)
	}
	for what, pair := range map[string][2]float64{
		"current": {float64(three.Current), 3 * float64(one.Current)}, "charge": {float64(three.Charge),
			3 * float64(one.Charge)},
		"mass": {float64(three.Mass), 3 * float64(one.Mass)}, "time": {float64(three.Time), float64(one.Time)},
		"mean": {float64(three.Average), float64(one.Average)},
	} {
		if relative(pair[0], pair[1]) > 1e-14 {
			t.Errorf("%s: %v, want %v", what, pair[0], pair[1])
		}
	}
	thick := l
	thick.MinThickness *= 2
	double, err := plating.Estimate(&thick)
	if err != nil {
		t.Fatal(err)
	}
	if relative(float64(double.Time), 2*float64(one.Time)) > 1e-14 {
		t.Errorf("double promise: %v, want twice %v", double.Time, one.Time)
	}
}

// TestPracticeHardGold is a plausibility check, common practice, no source: a
// benchtop hard-gold bath near 38 °C lays about 1 µm in about 10 minutes. At
// 35 % and 17.3 g/cm³ that asks for a current density of its usual window.
func TestPracticeHardGold(t *testing.T) {
	l := hardGold(t)
	l.Distribution.MinToAverage, l.CurrentDensity, l.Time = 1, 0, 10*units.Minute
	r, err := plating.Estimate(&l)
	if err != nil {
		t.Fatal(err)
	}
	if j := r.CurrentDensity.In(dm2); j < 0.2 || j > 0.8 {
		t.Errorf("1 µm in 10 min asks for %.2f A/dm²; a benchtop bath runs near 0.4", j)
	}
}

// TestWarnings sets off each flag alone.
func TestWarnings(t *testing.T) {
	for flag, change := range map[plating.Warnings]func(*plating.Layer){
		plating.WarnDensityLow:    func(l *plating.Layer) { l.CurrentDensity = 0.2 * dm2 },
		plating.WarnDensityHigh:   func(l *plating.Layer) { l.CurrentDensity = 1.3 * dm2 },
		plating.WarnWindowUnknown: func(l *plating.Layer) { l.Bath.Window = plating.CurrentDensityWindow{} },
		plating.WarnBathDrawn:     func(l *plating.Layer) { l.Bath.Volume = 0.2 * units.Litre },
		plating.WarnBathEmpty: func(l *plating.Layer) {
			l.Bath.Volume, l.Bath.Content = 50*units.Millilitre, 3*units.GramPerLitre
		},
		plating.WarnUnusual:            func(l *plating.Layer) { l.Bath.Volume = 25 * units.CubicMetre },
		plating.WarnMetalUnknown:       func(l *plating.Layer) { l.Bath.Content = 0 },
		plating.WarnTooThick:           func(l *plating.Layer) { l.MinThickness = 4 * units.Micrometre },
		plating.WarnMinThicknessMissed: func(l *plating.Layer) { l.Time = 5 * units.Minute },
		plating.WarnUneven:             func(l *plating.Layer) { l.Distribution.MinToAverage = 0.4 },
		plating.WarnTimeShort:          func(l *plating.Layer) { l.MinThickness = 10 * units.Nanometre },
		plating.WarnTemperatureLow:     func(l *plating.Layer) { l.Bath.Temperature.Set = units.Celsius(20) },
		plating.WarnTemperatureHigh:    func(l *plating.Layer) { l.Bath.Temperature.Set = units.Celsius(60) },
		plating.WarnAnodeInsoluble:     func(l *plating.Layer) { l.Bath.InsolubleAnode = true },
	} {
		l := hardGold(t)
		l.Bath.Efficiency = plating.ConstantEfficiency(0.6) // no gas flag
		if r, err := plating.Estimate(&l); err != nil || r.Warnings != 0 {
			t.Fatalf("the plain layer: warnings %b, %v", r.Warnings, err)
		}
		change(&l)
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Errorf("flag %b: %v", flag, err)
			continue
		}
		if r.Warnings != flag {
			t.Errorf("flag %b: got %b", flag, r.Warnings)
		}
		notes := plating.Notes(&l, &r)
		if len(notes) != 1 || notes[0].Text == "" || notes[0].Do == "" || notes[0].Source == "" {
			t.Errorf("flag %b: notes %v", flag, notes)
		}
	}
	l := hardGold(t)
	if r, _ := plating.Estimate(&l); r.Warnings != plating.WarnGas {
		t.Errorf("35 %% efficiency: flags %b", r.Warnings)
	}
	// On the limit is within.
	l.CurrentDensity = l.Bath.Window.High
	if r, _ := plating.Estimate(&l); r.Warnings.Has(plating.WarnDensityHigh) {
		t.Error("the upper end of the window is flagged")
	}
	l = hardGold(t)
	r, _ := plating.Estimate(&l)
	l.Time = r.Time
	if r, _ := plating.Estimate(&l); r.Warnings.Has(plating.WarnMinThicknessMissed) {
		t.Error("the computed time misses its own promise")
	}
}

// floats calls f for every float64 field inside v, with its path.
func floats(v reflect.Value, path string, f func(reflect.Value, string)) {
	switch v.Kind() {
	case reflect.Float64:
		if v.CanSet() {
			f(v, path)
		}
	case reflect.Struct:
		for i := range v.NumField() {
			floats(v.Field(i), path+"."+v.Type().Field(i).Name, f)
		}
	}
}

// TestBadInput puts every bad number into every field: a typed error that names
// a value, or a finite result; never NaN, never a panic.
func TestBadInput(t *testing.T) {
	bad := []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, -1e-300, 0, 5e-324, 1e-300, 1e300, math.MaxFloat64,
		1.0000001, 2}
	count := 0
	base := hardGold(t)
	floats(reflect.ValueOf(&base).Elem(), "Layer", func(v reflect.Value, path string) {
		keep := v.Float()
		defer v.SetFloat(keep)
		for _, x := range bad {
			v.SetFloat(x)
			count++
			r, err := plating.Estimate(&base)
			checkErr := base.Check()
			if checkErr != nil && err == nil {
				t.Errorf("%s = %v: Check says %v, Estimate says nothing", path, x, checkErr)
			}
			if err != nil {
				var value *units.ValueError
				if !errors.As(err, &value) || value.Field == "" || value.Need == "" {
					t.Errorf("%s = %v: error %v is not a full ValueError", path, x, err)
				}
				if r != (plating.LayerEstimate{}) {
					t.Errorf("%s = %v: a result beside the error", path, x)
				}
				continue
			}
			if x != x || math.IsInf(x, 0) || x < 0 {
				t.Errorf("%s = %v: no error", path, x)
			}
			floats(reflect.ValueOf(&r).Elem(), "Result", func(w reflect.Value, name string) {
				if f := w.Float(); f-f != 0 || f < 0 {
					t.Errorf("%s = %v: %s is %v", path, x, name, f)
				}
			})
		}
	})
	if count < 200 {
		t.Errorf("only %d cases", count)
	}
	l := hardGold(t)
	l.Bath.Efficiency = plating.EfficiencyCurve{}
	if _, err := plating.Estimate(&l); err == nil || !strings.Contains(err.Error(), "efficiency") {
		t.Errorf("no efficiency: %v", err)
	}
	for _, eff := range []units.Efficiency{-0.1, 1.01, units.Efficiency(math.NaN()), units.Efficiency(math.Inf(1))} {
		l.Bath.Efficiency = plating.ConstantEfficiency(eff)
		if _, err := plating.Estimate(&l); err == nil {
			t.Errorf("efficiency %v: no error", float64(eff))
		}
	}
	l = hardGold(t)
	l.CurrentDensity = 0
	if _, err := plating.Estimate(&l); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("one of three given: %v", err)
	}
}

// TestEfficiencyCurveErrors names the point that is wrong.
func TestEfficiencyCurveErrors(t *testing.T) {
	p := func(j units.CurrentDensity, eff units.Efficiency) plating.EfficiencyPoint {
		return plating.EfficiencyPoint{CurrentDensity: j, Efficiency: eff}
	}
	nan := math.NaN()
	for want, points := range map[string][]plating.EfficiencyPoint{
		"0 points":            nil,
		"1 points":            {p(1, 0.5)},
		"point 1":             {p(0, 0.5), p(2, 0.5)},
		"point 2":             {p(1, 0.5), p(1, 0.6)},
		"point 3":             {p(1, 0.5), p(2, 0.6), p(3, 1.2)},
		"not a finite number": {p(units.CurrentDensity(nan), 0.5), p(2, 0.5)},
	} {
		c, err := plating.NewEfficiencyCurve(points...)
		if err == nil || !strings.Contains(err.Error(), want) || !c.IsZero() {
			t.Errorf("%s: %v", want, err)
		}
	}
	points := []plating.EfficiencyPoint{p(1, 0.5), p(3, 0.7)}
	c, err := plating.NewEfficiencyCurve(points...)
	if err != nil {
		t.Fatal(err)
	}
	points[0].Efficiency = 1
	c.Points()[0].Efficiency = 1
	for j, want := range map[units.CurrentDensity]units.Efficiency{0.5: 0.5, 1: 0.5, 2: 0.6, 3: 0.7, 4: 0.7} {
		if got, within := c.At(j); math.Abs(float64(got-want)) > 1e-15 || within != (j >= 1 && j <= 3) {
			t.Errorf("at %v: %v %v, want %v", j, got, within, want)
		}
	}
}

// TestPropertyWorking recomputes every shown step from its own formula.
func TestPropertyWorking(t *testing.T) {
	cases := map[string]func(*plating.Layer){
		"time":      func(*plating.Layer) {},
		"thickness": func(l *plating.Layer) { l.MinThickness, l.Time = 0, 10*units.Minute },
		"current":   func(l *plating.Layer) { l.CurrentDensity, l.Time = 0, 10*units.Minute },
		"no bath":   func(l *plating.Layer) { l.Bath.Content = 0 },
		"empty":     func(l *plating.Layer) { l.Bath.Volume = units.Millilitre },
	}
	for name, change := range cases {
		l := hardGold(t)
		change(&l)
		steps, err := plating.Working(&l)
		if err != nil {
			t.Fatal(err)
		}
		if len(steps) < 6 {
			t.Errorf("%s: only %d steps", name, len(steps))
		}
		checkSteps(t, steps)
		if text := working.Text(steps); !strings.Contains(text, "OpenStaxChem2e") ||
			!strings.Contains(text, "η = 35 %") {
			t.Errorf("%s: text lacks source or numbers:\n%s", name, text)
		}
	}
}

func checkSteps(t *testing.T, steps []working.Step) {
	t.Helper()
	for _, s := range steps {
		got, err := s.Recompute()
		if err != nil {
			t.Error(err)
		} else if relative(got, s.Result.SI) > 1e-12 {
			t.Errorf("%s: shown %v, recomputed %v", s.Formula, s.Result.SI, got)
		}
		if s.Source == "" || s.Result.Meaning == "" {
			t.Errorf("%s: no source or meaning", s.Formula)
		}
	}
}

// TestNoAllocation: the core of a single layer allocates nothing.
func TestNoAllocation(t *testing.T) {
	l := hardGold(t)
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 10, Efficiency: 0.4},
		plating.EfficiencyPoint{CurrentDensity: 100, Efficiency: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	for name, eff := range map[string]plating.EfficiencyCurve{"constant": plating.ConstantEfficiency(0.35),
		"curve": curve} {
		l.Bath.Efficiency = eff
		for range 2 {
			if n := testing.AllocsPerRun(100, func() {
				if _, err := plating.Estimate(&l); err != nil {
					t.Fatal(err)
				}
			}); n != 0 {
				t.Errorf("%s: %v allocations", name, n)
			}
			l.Time, l.CurrentDensity = 10*units.Minute, 0
		}
		l.Time, l.CurrentDensity = 0, 0.5*dm2
	}
}

func ExampleEstimate() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	gold.Density = 17.3 * units.GramPerCubicCentimetre // hardened deposits are lighter than bulk gold
	hands := plating.Layer{
		Bath: plating.OperatingBath{
			Metal: "Au", Deposit: gold, Fine: 0.997,
			Efficiency: plating.ConstantEfficiency(0.35),
			Window: plating.CurrentDensityWindow{Low: 0.3 * units.AmperePerSquareDecimetre,
				High: 1.2 * units.AmperePerSquareDecimetre},
			Content: 8 * units.GramPerLitre, Volume: 5 * units.Litre,
		},
		Area:           105 * units.SquareCentimetre, // 24 clock hands
		Distribution:   plating.Distribution{MinToAverage: 0.6, Basis: "measured on trial pieces"},
		MinThickness:   1 * units.Micrometre,
		CurrentDensity: 0.5 * units.AmperePerSquareDecimetre,
	}
	r, err := plating.Estimate(&hands)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Current.Text(units.Ampere, 2), "for", r.Time)
	fmt.Println(r.FineMass.Text(units.Milligram, 0), "of gold")
	for _, n := range plating.Notes(&hands, &r) {
		fmt.Println(strings.ReplaceAll(n.String(), ". ", ".\n"))
	}
	// Output:
	// 0.53 A for 13 min 27 s
	// 302 mg of gold
	// info: Extraction on; bake hardened steel afterwards.
	// 35 % of the current deposits metal; the rest makes hydrogen.
	// [common practice, no source]
}

func ExampleWorking() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := plating.Working(&plating.Layer{
		Bath:         plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9)},
		Area:         2 * units.SquareDecimetre,
		Distribution: plating.Distribution{MinToAverage: 0.5},
		MinThickness: 1 * units.Micrometre, CurrentDensity: 0.3 * units.AmperePerSquareDecimetre,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(steps[0].Text())
	fmt.Print(steps[2].Text())
	// Output:
	// average thickness: 2 µm
	//   s = s_min/r  [Definition]
	//     s_min = 1 µm (minimum thickness at the thinnest spot)
	//     r = 0.5 (thinnest over average thickness)
	// current: 600 mA
	//   I = j·A  [Definition]
	//     j = 0.3 A/dm² (mean current density)
	//     A = 200 cm² (plated area of the load)
}
