package plating_test

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

func strike(t testing.TB) plating.Layer {
	l := hardGold(t)
	l.Name, l.Role = "gold strike", plating.RoleStrike
	l.Bath.Efficiency = plating.ConstantEfficiency(0.1)
	l.Bath.Window = plating.CurrentDensityWindow{Low: 1 * dm2, High: 5 * dm2}
	l.MinThickness, l.CurrentDensity, l.Time = 0, 3*dm2, 20*units.Second
	l.Area = 0
	return l
}

func handsJob(t testing.TB) plating.System {
	gold := hardGold(t)
	gold.Area, gold.CountBelow = 0, true
	return plating.System{
		Name: "clock hands", Substrate: "stainless steel",
		Parts: []plating.Item{
			{Name: "minute hand", Count: 12, Area: 4.7 * units.SquareCentimetre},
			{Name: "hour hand", Count: 12, Area: 4 * units.SquareCentimetre},
		},
		Layers: []plating.Layer{strike(t), gold},
	}
}

// TestPropertyJobSums: the job is the sum of its layers, and the strike counts.
func TestPropertyJobSums(t *testing.T) {
	job := handsJob(t)
	res, err := plating.EstimateSystem(job)
	if err != nil {
		t.Fatal(err)
	}
	if got := res.Area.In(units.SquareCentimetre); math.Abs(got-104.4) > 1e-9 {
		t.Errorf("area %v, want 104.4 cm²", got)
	}
	promise := job.Layers[1].MinThickness
	if len(res.Metals) != 1 || relative(float64(res.Metals[0].Thinnest), float64(promise)) > 1e-14 {
		t.Errorf("metals %+v: the thinnest spots of both layers together must be the minimum thickness %v",
			res.Metals, promise)
	}
	if res.Layers[1].Below != res.Layers[0].Result.Thinnest {
		t.Errorf("counted from below: %v, the strike has %v", res.Layers[1].Below, res.Layers[0].Result.Thinnest)
	}
	var time units.Duration
	var mass units.Mass
	for _, l := range res.Layers {
		time += l.Result.Time
		mass += l.Result.FineMass
	}
	if res.Time != time || relative(float64(res.Metals[0].FineMass), float64(mass)) > 1e-15 {
		t.Error("totals are not the sums of the layers")
	}
	// Without CountBelow the finish carries the minimum thickness alone and takes longer.
	job.Layers[1].CountBelow = false
	alone, err := plating.EstimateSystem(job)
	if err != nil {
		t.Fatal(err)
	}
	if !(alone.Layers[1].Result.Time > res.Layers[1].Result.Time) || alone.Layers[1].Below != 0 {
		t.Error("leaving the strike out of the minimum thickness must take longer")
	}
	// A layer of another metal in between ends the count.
	nickel := job.Layers[0]
	nickel.Bath.Metal = "Ni"
	job.Layers = []plating.Layer{job.Layers[0], nickel, job.Layers[1]}
	job.Layers[2].CountBelow = true
	split, err := plating.EstimateSystem(job)
	if err != nil {
		t.Fatal(err)
	}
	if split.Layers[2].Below != 0 {
		t.Errorf("gold under nickel counted: %v", split.Layers[2].Below)
	}
}

func TestJobDoesNotChangeItsInput(t *testing.T) {
	job := handsJob(t)
	if _, err := plating.EstimateSystem(job); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(job, handsJob(t)) {
		t.Error("EstimateSystem changed the job it was given")
	}
}

func TestPlaceNotes(t *testing.T) {
	for _, c := range []struct {
		first, second plating.Hazard
		role          plating.Role
		want          string
	}{
		{plating.HazardCyanide, plating.HazardAcid, plating.RoleUnder, "frees hydrogen cyanide"},
		{plating.HazardAcid, plating.HazardCyanide, plating.RoleUnder, "frees hydrogen cyanide"},
		{plating.HazardAcid | plating.HazardNickel, plating.HazardCyanide | plating.HazardHot, plating.RoleUnder,
			"frees hydrogen cyanide"},
		{plating.HazardCyanide, plating.HazardCyanide | plating.HazardAcid, plating.RoleUnder,
			"frees hydrogen cyanide"},
		{plating.HazardAcid, plating.HazardAcid | plating.HazardCyanide, plating.RoleUnder, "lowers its pH"},
		{plating.HazardCyanide, plating.HazardCyanide, plating.RoleUnder, ""},
		{plating.HazardNickel | plating.HazardAcid, plating.HazardAcid, plating.RoleUnder, ""},
		{0, 0, plating.RoleStrike, "go on at once"},
	} {
		job := handsJob(t)
		job.Layers[0].Role = c.role
		job.Layers[0].Bath.Hazards, job.Layers[1].Bath.Hazards = c.first, c.second
		job.Layers[0].Bath.Name, job.Layers[1].Bath.Name = "first", "second"
		job.Layers[0].Bath.PH, job.Layers[1].Bath.PH = plating.PHWindow{}, plating.PHWindow{}
		res, err := plating.EstimateSystem(job)
		if err != nil {
			t.Fatal(err)
		}
		text := fmt.Sprint(res.Layers[1].Before)
		if live := strings.Contains(fmt.Sprint(res.Layers[0].Before),
			"current on before the piece"); live != (c.role == plating.RoleStrike) {
			t.Errorf("role %v, live entry named: %v", c.role, live)
		}
		if c.want == "" && strings.Contains(text, "cyanide") || !strings.Contains(text, c.want) {
			t.Errorf("%b then %b: %s, want %q", c.first, c.second, text, c.want)
		}
	}
}

func TestCautions(t *testing.T) {
	if got := len(plating.Cautions(0)); got != 2 {
		t.Errorf("%d cautions for any bath, want hydrogen and waste", got)
	}
	all := plating.HazardCyanide | plating.HazardAcid | plating.HazardCaustic | plating.HazardNickel |
		plating.HazardHot |
		plating.HazardAmmonia | plating.HazardChromate | plating.HazardFluoride | plating.HazardNitric
	text := strings.ToLower(fmt.Sprint(plating.Cautions(all)))
	for _, word := range []string{"hydrogen cyanide", "cyanide", "caustic", "acid", "ammonia", "nickel", "chromium",
		"fluoride", "brown fume", "mist", "waste", "local codes"} {
		if !strings.Contains(text, word) {
			t.Errorf("cautions do not name %s", word)
		}
	}
	for _, c := range plating.Cautions(all) {
		if c.Do == "" || c.Source == "" {
			t.Errorf("%v: says not what to do, or no source", c)
		}
	}
}

// TestJobErrors: each wrong job names what is wrong.
func TestJobErrors(t *testing.T) {
	for want, change := range map[string]func(*plating.System){
		"parts none":              func(j *plating.System) { j.Parts = nil },
		"layers none":             func(j *plating.System) { j.Layers = nil },
		"count of minute hand 0":  func(j *plating.System) { j.Parts[0].Count = 0 },
		"count of minute hand -3": func(j *plating.System) { j.Parts[0].Count = -3 },
		"area of hour hand":       func(j *plating.System) { j.Parts[1].Area = -1 },
		"area of part 2": func(j *plating.System) {
			j.Parts[1] = plating.Item{Count: 1,
				Area: units.Area(math.NaN())}
		},
		"area of the load": func(j *plating.System) {
			j.Parts[1].Area = math.MaxFloat64
			j.Parts[0].Area = math.MaxFloat64
		},
		"gold strike: ratio": func(j *plating.System) {
			j.Layers[0].Distribution.MinToAverage = 1.5
		},
		"hard gold: minimum thickness 0.010 µm": func(j *plating.System) {
			j.Layers[1].MinThickness = 10 * units.Nanometre
		},
	} {
		job := handsJob(t)
		change(&job)
		_, err := plating.EstimateSystem(job)
		var value *units.ValueError
		if err == nil || !strings.Contains(err.Error(), want) || !errors.As(err, &value) {
			t.Errorf("want %q: %v", want, err)
		}
	}
}

func TestSpread(t *testing.T) {
	got, err := plating.Spread(plating.Item{Count: 2, Area: 3}, plating.Item{Count: 1, Area: 12}, plating.Item{Count: 9,
		Area: 6})
	if err != nil || got != 4 {
		t.Errorf("%v %v, want 4", got, err)
	}
	if _, err := plating.Spread(); err == nil {
		t.Error("no parts: no error")
	}
}

func TestTrial(t *testing.T) {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	// A made-up piece that took 35 % of 10 A·min: 122.4849 mg a minute and ampere at 100 %.
	gain := 0.35 * 10 * 60 * float64(gold.Equivalent)
	tr := plating.Trial{Before: 10 * units.Gram, After: 10*units.Gram + units.Mass(gain), Current: 1,
		Time: 10 * units.Minute, Resolution: 0.1 * units.Milligram}
	r, err := tr.Efficiency(gold)
	if err != nil {
		t.Fatal(err)
	}
	if relative(float64(r.Efficiency), 0.35) > 1e-12 || r.Charge != 600 {
		t.Errorf("%+v, want 35 %%", r)
	}
	// Two readings with a rectangular error of half a digit each.
	if want := 1e-7 / math.Sqrt(12) * math.Sqrt2 / gain; relative(float64(r.Relative), want) > 1e-9 {
		t.Errorf("uncertainty %v, want %v", r.Relative, want)
	}
	steps, err := tr.EfficiencyWorking(gold)
	if err != nil {
		t.Fatal(err)
	}
	checkSteps(t, steps)
	// More than Faraday's law allows: the value comes with a RangeError.
	tr.After += units.Mass(3 * gain)
	r, err = tr.Efficiency(gold)
	var over *units.RangeError
	if !errors.As(err, &over) || !(r.Efficiency > 1) {
		t.Errorf("over 100 %%: %v %v", r.Efficiency, err)
	}
	for name, change := range map[string]func(*plating.Trial){
		"gain":    func(tr *plating.Trial) { tr.After = tr.Before },
		"before":  func(tr *plating.Trial) { tr.Before = -1 },
		"after":   func(tr *plating.Trial) { tr.After = units.Mass(math.Inf(1)) },
		"current": func(tr *plating.Trial) { tr.Current = 0 },
		"time":    func(tr *plating.Trial) { tr.Time = units.Duration(math.NaN()) },
		"balance": func(tr *plating.Trial) { tr.Resolution = -1 },
	} {
		bad := plating.Trial{Before: 10 * units.Gram, After: 11 * units.Gram, Current: 1, Time: 600}
		change(&bad)
		if _, err := bad.Efficiency(gold); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := tr.Efficiency(faraday.Deposit{}); err == nil {
		t.Error("no deposit: no error")
	}
}

func TestWords(t *testing.T) {
	got := []string{plating.RoleStrike.String(), plating.RoleUnder.String(), plating.RoleFinish.String(),
		plating.SeverityInfo.String(), plating.SeverityCaution.String(), plating.SeverityWarning.String(),
		plating.SeverityStop.String(),
		plating.Note{Severity: plating.SeverityStop, Text: "a", Do: "b", Source: "c"}.String()}
	want := []string{"strike", "underplate", "finish", "info", "caution", "warning", "stop", "stop: B. A. [c]"}
	if d := cmp.Diff(want, got); d != "" {
		t.Error(d)
	}
}

func ExampleEstimateSystem() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	bezels := plating.System{
		Name:  "bezels of carriage clocks",
		Parts: []plating.Item{{Name: "bezel", Count: 6, Area: 47 * units.SquareCentimetre}},
		Layers: []plating.Layer{
			{
				Name: "gold strike", Role: plating.RoleStrike,
				Bath: plating.OperatingBath{Metal: "Au", Deposit: gold,
					Efficiency: plating.ConstantEfficiency(0.1)},
				Distribution:   plating.Distribution{MinToAverage: 0.6},
				CurrentDensity: 2 * units.AmperePerSquareDecimetre, Time: 20 * units.Second,
			},
			{
				Name: "gold",
				Bath: plating.OperatingBath{Metal: "Au", Deposit: gold,
					Efficiency: plating.ConstantEfficiency(0.9)},
				Distribution:   plating.Distribution{MinToAverage: 0.6},
				CurrentDensity: 0.3 * units.AmperePerSquareDecimetre, MinThickness: 2.5 * units.Micrometre,
				CountBelow: true,
			},
		},
	}
	res, err := plating.EstimateSystem(bezels)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range res.Layers {
		fmt.Println(l.Layer.Name, l.Result.Current.Text(units.Ampere, 2), l.Result.Time)
	}
	m := res.Metals[0]
	fmt.Println(m.Metal, m.Thinnest.Text(units.Micrometre, 2), m.FineMass.Text(units.Gram, 2))
	// Output:
	// gold strike 5.64 A 20 s
	// gold 0.85 A 24 min 4 s
	// Au 2.50 µm 2.27 g
}

func ExampleLoadArea() {
	a, err := plating.LoadArea(
		plating.Item{Name: "minute hand", Count: 12, Area: 4.7 * units.SquareCentimetre},
		plating.Item{Name: "hour hand", Count: 12, Area: 4 * units.SquareCentimetre})
	fmt.Println(a.Text(units.SquareCentimetre, 1), err)
	// Output: 104.4 cm² <nil>
}

func ExampleSpread() {
	k, err := plating.Spread(plating.Item{Name: "finial", Count: 2, Area: 33 * units.SquareCentimetre},
		plating.Item{Name: "hand", Count: 10, Area: 4.4 * units.SquareCentimetre})
	fmt.Printf("%.1f %v\n", float64(k), err)
	// Output: 7.5 <nil>
}

func ExampleTrial_Efficiency() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	panel := plating.Trial{Before: 12.3456 * units.Gram, After: 12.4318 * units.Gram,
		Current: 0.2 * units.Ampere, Time: 10 * units.Minute, Resolution: 0.1 * units.Milligram}
	r, err := panel.Efficiency(gold)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Efficiency.Percent(1), "from", r.Gain.Text(units.Milligram, 1))
	// Output: 35.2 % from 86.2 mg
}

func ExampleNewEfficiencyCurve() {
	c, err := plating.NewEfficiencyCurve(
		plating.EfficiencyPoint{CurrentDensity: 0.3 * units.AmperePerSquareDecimetre, Efficiency: 0.40},
		plating.EfficiencyPoint{CurrentDensity: 1.2 * units.AmperePerSquareDecimetre, Efficiency: 0.28})
	if err != nil {
		fmt.Println(err)
		return
	}
	eff, within := c.At(0.6 * units.AmperePerSquareDecimetre)
	fmt.Println(eff.Percent(0), within)
	// Output: 36 % true
}

func ExampleCautions() {
	for _, c := range plating.Cautions(plating.HazardNickel) {
		fmt.Println(strings.ReplaceAll(c.Text, ". ", ".\n"))
	}
	// Output:
	// Nickel is a strong skin sensitiser.
	// Its salts cause cancer (IARC group 1).
	// Nickel against the skin causes allergy.
	// Current makes hydrogen, which burns, and mist, which you breathe.
	// They are hazardous waste.
	// Safety data sheets, local codes and licensed practice decide over this sheet.
}
