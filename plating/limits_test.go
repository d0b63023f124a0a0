package plating_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestOneSidedWindow: with one end given only that end is checked.
func TestOneSidedWindow(t *testing.T) {
	l := hardGold(t)
	l.Bath.Efficiency = plating.ConstantEfficiency(0.6)
	for _, c := range []struct {
		window plating.CurrentDensityWindow
		want   plating.Warnings
		text   string
	}{
		{plating.CurrentDensityWindow{Low: 0.6 * dm2}, plating.WarnDensityLow, "0.60 A/dm² and more"},
		{plating.CurrentDensityWindow{Low: 0.4 * dm2}, 0, ""},
		{plating.CurrentDensityWindow{High: 0.4 * dm2}, plating.WarnDensityHigh, "up to 0.40 A/dm²"},
		{plating.CurrentDensityWindow{High: 0.6 * dm2}, 0, ""},
		{plating.CurrentDensityWindow{}, plating.WarnWindowUnknown, "no current density window"},
	} {
		l.Bath.Window = c.window
		r, err := plating.Estimate(&l)
		if err != nil || r.Warnings != c.want {
			t.Errorf("%v: %b %v, want %b", c.window, r.Warnings, err, c.want)
		}
		if text := fmt.Sprint(plating.Notes(&l, &r)); !strings.Contains(text, c.text) {
			t.Errorf("%v: %s, want %q", c.window, text, c.text)
		}
	}
}

// TestHugeJob: sums that overflow are an error, not an infinity.
func TestHugeJob(t *testing.T) {
	job := handsJob(t)
	job.Parts = []plating.Item{{Count: 1, Area: 1}}
	for i := range job.Layers {
		l := &job.Layers[i]
		l.MinThickness, l.CountBelow, l.CurrentDensity, l.Time = 0, false, 1e154, 1e154
		l.Bath.Content = 0
	}
	if _, err := plating.EstimateSystem(job); !errors.Is(err, units.ErrOutOfRange) {
		t.Errorf("two layers of 1e308 C: %v", err)
	}
}

// TestPropertyJobWorking: the working of a job's layers and of its area.
func TestPropertyJobWorking(t *testing.T) {
	job := handsJob(t)
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 0.3 * dm2, Efficiency: 0.4},
		plating.EfficiencyPoint{CurrentDensity: 1.2 * dm2, Efficiency: 0.28})
	if err != nil {
		t.Fatal(err)
	}
	job.Layers[1].Bath.Efficiency = curve
	res, err := plating.EstimateSystem(job)
	if err != nil {
		t.Fatal(err)
	}
	steps, err := res.Layers[1].Working()
	if err != nil {
		t.Fatal(err)
	}
	checkSteps(t, steps)
	if steps[0].Result.Symbol != "s_min" || steps[1].Result.Symbol != "η" {
		t.Errorf("the first steps are %q and %q", steps[0].Formula, steps[1].Formula)
	}
	area, err := plating.LoadAreaWorking(job.Parts...)
	if err != nil || area.Result.SI != float64(res.Area) {
		t.Errorf("%v %v", area, err)
	}
	got, err := area.Recompute()
	if err != nil || relative(got, float64(res.Area)) > 1e-15 {
		t.Errorf("%v %v", got, err)
	}
	if _, err := plating.LoadAreaWorking(); err == nil {
		t.Error("no parts: no error")
	}
	if h := res.Hazards(); h != plating.HazardCyanide|plating.HazardAcid|plating.HazardCobalt {
		t.Errorf("hazards %b", h)
	}
}

// TestBoundaries: each flag turns exactly at its limit.
func TestBoundaries(t *testing.T) {
	for name, c := range map[string]struct {
		flag plating.Warnings
		set  func(l *plating.Layer, x float64)
		at   float64
		over bool // the flag stands above the limit, not below
	}{
		"gas": {plating.WarnGas, func(l *plating.Layer, x float64) {
			l.Bath.Efficiency = plating.ConstantEfficiency(units.Efficiency(x))
		}, 0.5, false},
		"uneven": {plating.WarnUneven, func(l *plating.Layer, x float64) {
			l.Distribution.MinToAverage = units.Ratio(
				x)
		}, 0.5, false},
		"short": {plating.WarnTimeShort, func(l *plating.Layer, x float64) {
			l.MinThickness, l.Time = 0, units.Duration(x)
		}, 10, false},
		"low": {plating.WarnDensityLow, func(l *plating.Layer, x float64) {
			l.CurrentDensity = units.CurrentDensity(x)
		}, 30, false},
		"high": {plating.WarnDensityHigh, func(l *plating.Layer, x float64) {
			l.CurrentDensity = units.CurrentDensity(x)
		}, 120, true},
		"cold": {plating.WarnTemperatureLow, func(l *plating.Layer, x float64) {
			l.Bath.Temperature.Set = units.Temperature(x)
		}, 305.15, false},
		"hot": {plating.WarnTemperatureHigh, func(l *plating.Layer, x float64) {
			l.Bath.Temperature.Set = units.Temperature(x)
		}, 315.15, true},
		"thick": {plating.WarnTooThick, func(l *plating.Layer, x float64) {
			l.MinThickness,
				l.Distribution.MinToAverage = units.Length(x), 1
		}, 5e-6, true},
		"unsure": {plating.WarnRatioUnsure, func(l *plating.Layer, x float64) {
			l.Distribution.Uncertainty = units.Ratio(x)
		}, 0.05 * (1 - 1e-9), true},
		"drawn": {plating.WarnBathDrawn, func(l *plating.Layer, x float64) { l.Bath.DrawLimit = units.Ratio(x) },
			drawnShare(t), false},
	} {
		for _, side := range []float64{-1, 1} {
			l := hardGold(t)
			c.set(&l, c.at*(1+side*1e-6))
			r, err := plating.Estimate(&l)
			if err != nil {
				t.Fatal(name, err)
			}
			if got, want := r.Warnings.Has(c.flag), (side > 0) == c.over; got != want {
				t.Errorf("%s: a millionth to side %v of %v the flag is %v", name, side, c.at, got)
			}
		}
	}
}

func drawnShare(t *testing.T) float64 {
	l := hardGold(t)
	r, err := plating.Estimate(&l)
	if err != nil {
		t.Fatal(err)
	}
	return float64(r.Drawn)
}

// TestHazardCautions: each hazard brings its own caution and no other's.
func TestHazardCautions(t *testing.T) {
	plain := len(plating.Cautions(0))
	for hazard, word := range map[plating.Hazard]string{
		plating.HazardCyanide: "A fraction of a gram", plating.HazardAcid: "Acid burns",
		plating.HazardCaustic: "Hot caustic blinds",
		plating.HazardNickel:  "Nickel is a strong", plating.HazardHot: "A hot bath",
		plating.HazardAmmonia:  "Ammonia harms",
		plating.HazardChromate: "Hexavalent chromium", plating.HazardFluoride: "Fluoride burns",
		plating.HazardNitric: "Nitric acid may set fire",
		plating.HazardCobalt: "Cobalt sulfate", plating.HazardSulfite: "Acid frees sulfur dioxide",
		plating.HazardHydrogenChloride: "The fume burns",
		plating.HazardBoric:            "Boric acid may harm", plating.HazardLead: "Lead gathers",
		plating.HazardFluoborate: "Fluoboric acid may free",
	} {
		got := plating.Cautions(hazard)
		if len(got) != plain+1 || !strings.HasPrefix(got[0].Text, word) {
			t.Errorf("%b: %v, want one that starts %q", hazard, got, word)
		}
	}
}

// TestAllHazards: name, metal and temperature give away what the list forgot.
func TestAllHazards(t *testing.T) {
	for _, c := range []struct {
		bath plating.OperatingBath
		want plating.Hazard
	}{
		{plating.OperatingBath{Name: "gold, acid cyanide, cobalt hardened"},
			plating.HazardCyanide | plating.HazardAcid | plating.HazardCobalt},
		{plating.OperatingBath{Name: "strip, nitric acid"}, plating.HazardNitric | plating.HazardAcid},
		{plating.OperatingBath{Name: "silver, cyanide-free"}, 0},
		{plating.OperatingBath{Name: "copper, non-cyanide"}, 0},
		{plating.OperatingBath{Name: "gold, sulfite, free of cyanide"}, plating.HazardSulfite},
		{plating.OperatingBath{Name: "gold, no cyanide, acid"}, plating.HazardAcid},
		{plating.OperatingBath{Name: "copper, cyanide, free cyanide 12 g/L"}, plating.HazardCyanide},
		{plating.OperatingBath{Metal: "Ni"}, plating.HazardNickel},
		{plating.OperatingBath{Name: "Nickel, Watts type"}, plating.HazardNickel},
		{plating.OperatingBath{Name: "copper, fluoborate"}, plating.HazardFluoborate | plating.HazardFluoride |
			plating.HazardAcid},
		{plating.OperatingBath{Temperature: plating.TemperatureWindow{Set: units.Celsius(46)}}, plating.HazardHot},
		{plating.OperatingBath{Temperature: plating.TemperatureWindow{Set: units.Celsius(45)}}, 0},
		{plating.OperatingBath{Hazards: plating.HazardAmmonia, Name: "palladium"}, plating.HazardAmmonia},
	} {
		if got := c.bath.AllHazards(); got != c.want {
			t.Errorf("%q %s: %b, want %b", c.bath.Name, c.bath.Metal, got, c.want)
		}
	}
}

// TestOneBathTwice: layers in one named bath find what the one before left.
func TestOneBathTwice(t *testing.T) {
	job := handsJob(t)
	l := job.Layers[1]
	l.CountBelow = false
	l.Bath.Volume = 0.8 * units.Litre
	job.Layers = []plating.Layer{l, l, l}
	res, err := plating.EstimateSystem(job)
	if err != nil {
		t.Fatal(err)
	}
	one := res.Layers[0].Result
	for k, lr := range res.Layers {
		r := lr.Result
		if relative(float64(r.Drawn), float64(k+1)*float64(one.Drawn)) > 1e-12 {
			t.Errorf("layer %d: drawn %v, want %d times %v", k+1, r.Drawn, k+1, one.Drawn)
		}
		if want := 8 - float64(k+1)*one.FineMass.In(units.Gram)/0.8; relative(r.ContentLeft.In(units.GramPerLitre),
			want) > 1e-12 {
			t.Errorf("layer %d: %v left, want %v g/L", k+1, r.ContentLeft, want)
		}
	}
	if res.Layers[0].Result.Warnings.Has(plating.WarnBathDrawn) ||
		!res.Layers[2].Result.Warnings.Has(plating.WarnBathDrawn) {
		t.Errorf("drawn %v and %v of a limit of 10 %%", one.Drawn, res.Layers[2].Result.Drawn)
	}
}

// TestNoMetalName: layers without a metal are neither added up nor counted, an
// unknown one is refused, and a layer on another area does not count.
func TestNoMetalName(t *testing.T) {
	job := handsJob(t)
	job.Layers[0].Bath.Metal, job.Layers[1].Bath.Metal, job.Layers[1].CountBelow = "", "", false
	res, err := plating.EstimateSystem(job)
	if err != nil || len(res.Metals) != 2 {
		t.Errorf("%d totals, %v; two layers of unnamed metal are two", len(res.Metals), err)
	}
	job.Layers[1].CountBelow = true
	if _, err := plating.EstimateSystem(job); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("count below without a metal: %v", err)
	}
	job = handsJob(t)
	job.Layers[0].Bath.Metal = "Unobtainium"
	var unknown *faraday.ElementError
	if _, err := plating.EstimateSystem(job); !errors.As(err, &unknown) {
		t.Errorf("unknown metal: %v", err)
	}
	job = handsJob(t)
	job.Layers[0].Area = 10 * units.SquareCentimetre
	res, err = plating.EstimateSystem(job)
	if err != nil || res.Layers[1].Below != 0 {
		t.Errorf("a strike on a tenth of the area counts for %v, %v", res.Layers[1].Below, err)
	}
	job.Layers[0].Area = 10 * units.SquareMetre
	res, err = plating.EstimateSystem(job)
	if err != nil || !strings.Contains(fmt.Sprint(res.Layers[0].Before), "more than the load has") {
		t.Errorf("an area beyond the load: %v %v", res.Layers[0].Before, err)
	}
}

// TestRatioUnsure: the uncertainty of the ratio shows as a range.
func TestRatioUnsure(t *testing.T) {
	l := hardGold(t)
	l.Distribution.Uncertainty = 0.1
	r, err := plating.Estimate(&l)
	if err != nil {
		t.Fatal(err)
	}
	if text := fmt.Sprint(plating.Notes(&l, &r)); !strings.Contains(text, "from 0.900 µm to 1.100 µm") ||
		!strings.Contains(text, "plate 1.2 times") {
		t.Error(text)
	}
}

func ExampleConstantEfficiency() {
	eff, within := plating.ConstantEfficiency(0.35).At(0.5 * units.AmperePerSquareDecimetre)
	fmt.Println(eff, within)
	// Output: 35 % true
}

func ExampleLoadAreaWorking() {
	step, err := plating.LoadAreaWorking(plating.Item{Name: "minute hand", Count: 12,
		Area: 4.7 * units.SquareCentimetre},
		plating.Item{Name: "hour hand", Count: 12, Area: 4 * units.SquareCentimetre})
	fmt.Println(step.Formula, "=", step.Result.Value, err)
	// Output: A = k_1·A_1 + k_2·A_2 = 104.4 cm² <nil>
}

func ExampleTrial_EfficiencyWorking() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	panel := plating.Trial{Before: 12.3456 * units.Gram, After: 12.4318 * units.Gram, Current: 0.2 * units.Ampere,
		Time: 10 * units.Minute}
	steps, err := panel.EfficiencyWorking(gold)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(steps[1].Formula, "=", steps[1].Result.Value)
	// Output: η = m/(ε·I·t) = 35.188 %
}

func ExampleLayerResult_Working() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	bath := plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9)}
	even := plating.Distribution{MinToAverage: 1}
	res, err := plating.EstimateSystem(plating.System{
		Parts: []plating.Item{{Name: "finial", Count: 1, Area: 33 * units.SquareCentimetre}},
		Layers: []plating.Layer{
			{Name: "strike", Role: plating.RoleStrike, Bath: bath, Distribution: even,
				CurrentDensity: 1 * units.AmperePerSquareDecimetre, Time: 20 * units.Second},
			{Name: "gold", Bath: bath, Distribution: even, CurrentDensity: 0.3 * units.AmperePerSquareDecimetre,
				MinThickness: 1 * units.Micrometre, CountBelow: true},
		}})
	if err != nil {
		fmt.Println(err)
		return
	}
	steps, err := res.Layers[1].Working()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(steps[0].Formula, "=", steps[0].Result.Value)
	// Output: s_min = s_all - s_below = 0.809609 µm
}

func ExampleNotes() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	l := plating.Layer{
		Bath: plating.OperatingBath{Metal: "Au", Deposit: gold, Efficiency: plating.ConstantEfficiency(0.9),
			Content: 8 * units.GramPerLitre, Volume: 5 * units.Litre,
			Window: plating.CurrentDensityWindow{Low: 0.1 * units.AmperePerSquareDecimetre,
				High: 0.4 * units.AmperePerSquareDecimetre},
			Source: "demo data"},
		Area: 33 * units.SquareCentimetre, Distribution: plating.Distribution{MinToAverage: 0.7},
		MinThickness: 1 * units.Micrometre, CurrentDensity: 0.6 * units.AmperePerSquareDecimetre,
	}
	r, err := plating.Estimate(&l)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range plating.Notes(&l, &r) {
		fmt.Println(n.Severity, "-", n.Text)
	}
	// Output: warning - 0.60 A/dm² is above the bath's window of 0.10 A/dm² to 0.40 A/dm²
}

// TestPropertyHazardTable: each row says its words, danger, remedy and source, and
// its own word gives it away; words read back, and none stands twice.
func TestPropertyHazardTable(t *testing.T) {
	refs, err := os.ReadFile("../testdata/REFERENCES.md")
	if err != nil {
		t.Fatal(err)
	}
	seen := map[string]bool{}
	var all plating.Hazard
	for _, row := range plating.HazardTable() {
		if row.Word == "" || row.Short == "" || row.Do == "" || row.Why == "" || row.Source == "" || len(row.Names)+
			len(row.Tokens) == 0 {
			t.Errorf("incomplete: %+v", row)
		}
		if h, err := plating.ParseHazard(row.Word); err != nil || h != row.Flag {
			t.Errorf("%s reads back as %s, %v", row.Word, h, err)
		}
		if row.Word != "toxic metal" && row.Word != "oxidiser" && row.Word != "organic" &&
			!plating.NamedHazards(row.Word).Has(row.Flag) {
			t.Errorf("the word %q does not give it away", row.Word)
		}
		if len(row.Short) > 130 || len(strings.Split(row.Short, ". ")) > 1 {
			t.Errorf("the line for the tank is long: %s", row.Short)
		}
		if seen[row.Word] || all&row.Flag != 0 {
			t.Errorf("%s twice", row.Word)
		}
		seen[row.Word], all = true, all|row.Flag
		for _, key := range strings.Split(row.Source, ", ") {
			if row.Source == origin.Memory || row.Source == origin.Practice {
				break
			}
			if !strings.Contains(string(refs), "**["+key+"]**") {
				t.Errorf("%s cites %s, which has no entry", row.Word, key)
			}
		}
	}
	for _, c := range plating.Clashes() {
		if c.A == 0 || c.B == 0 || c.Makes == "" || c.Source != origin.Memory && !strings.Contains(string(refs), "**["+
			c.Source+"]**") {
			t.Errorf("%+v", c)
		}
	}
	raw, err := json.Marshal(all)
	var back plating.Hazard
	if err != nil || json.Unmarshal(raw, &back) != nil || back != all {
		t.Errorf("%s reads back as %v, %v", raw, back, err)
	}
}

// solution is an acid gold cyanide bath that nothing is wrong with.
func solution() plating.Solution {
	salt, _ := faraday.ParseFormula("KAu(CN)2")
	return plating.Solution{Name: "gold, acid cyanide", Metal: "Au", Valence: 1,
		PH: plating.PHWindow{Low: 4, High: 4.6}, Salts: []faraday.Formula{salt},
		Anode: "platinised titanium", Vessel: plating.VesselPlastic}
}

// TestPropertySolutions: each deadly or harmful edit of a solution is found with
// its own code, and each safe neighbour passes.
func TestPropertySolutions(t *testing.T) {
	salts := func(list ...string) []faraday.Formula {
		var all []faraday.Formula
		for _, text := range list {
			f, err := faraday.ParseFormula(text)
			if err != nil {
				t.Fatal(err)
			}
			all = append(all, f)
		}
		return all
	}
	ph := func(low, high plating.PH) plating.PHWindow { return plating.PHWindow{Low: low, High: high} }
	edits := []struct {
		name string
		edit func(*plating.Solution)
		code string // "" for a safe neighbour
	}{
		{"as it is", func(*plating.Solution) {}, ""},
		{"pH 3 to 4", func(s *plating.Solution) { s.PH = ph(3, 4) }, ""},
		{"pH 2.99", func(s *plating.Solution) { s.PH = ph(2.99, 4) }, plating.CodeGoldCyanideAcid},
		{"pH 1", func(s *plating.Solution) { s.PH = ph(1, 1) }, plating.CodeGoldCyanideAcid},
		{"pH 0.5 to 2", func(s *plating.Solution) { s.PH = ph(0.5, 2) }, plating.CodeGoldCyanideAcid},
		{"pH not given", func(s *plating.Solution) { s.PH = plating.PHWindow{} }, plating.CodePHNotGiven},
		{"only the high end of the pH", func(s *plating.Solution) { s.PH = ph(0, 4) }, plating.CodePHNotGiven},
		{"valence not given, pH 1", func(s *plating.Solution) { s.PH, s.Valence = ph(1, 1), 0 },
			plating.CodeGoldCyanideAcid},
		{"gold(III), pH 1, its own salt", func(s *plating.Solution) {
			s.PH, s.Valence, s.Salts = ph(1, 2), 3,
				salts("KAu(CN)4")
		}, ""},
		{"gold(III), pH 1, the salt of gold(I)", func(s *plating.Solution) { s.PH, s.Valence = ph(1, 2), 3 },
			plating.CodeWrongSalt},
		{"gold(I), the salt of gold(III)", func(s *plating.Solution) { s.Salts = salts("KAu(CN)4") },
			plating.CodeWrongSalt},
		{"gold(I), chloride of gold(III)", func(s *plating.Solution) { s.Salts = salts("HAuCl4·3H2O") },
			plating.CodeWrongSalt},
		{"gold(I), AuCN", func(s *plating.Solution) { s.Salts = salts("AuCN") }, ""},
		{"gold(I), NaAu(CN)2", func(s *plating.Solution) { s.Salts = salts("NaAu(CN)2") }, ""},
		{"potassium cyanide into acid", func(s *plating.Solution) { s.Salts = salts("KAu(CN)2", "KCN") },
			plating.CodeWrongSalt},
		{"silver in acid cyanide", func(s *plating.Solution) { s.Metal, s.Salts = "Ag", nil },
			plating.CodeCyanideInAcid},
		{"copper in acid cyanide", func(s *plating.Solution) { s.Metal, s.Salts = "Cu", nil },
			plating.CodeCyanideInAcid},
		{"silver cyanide at pH 12", func(s *plating.Solution) {
			s.Name, s.Metal, s.Salts, s.PH, s.Anode = "silver, cyanide", "Ag", salts("KAg(CN)2", "KCN"), ph(12, 13),
				"silver, bagged"
		}, ""},
		{"silver cyanide at pH 5", func(s *plating.Solution) {
			s.Name, s.Metal, s.Salts, s.PH, s.Anode = "silver, cyanide", "Ag", nil, ph(5, 13), ""
		}, plating.CodeCyanideInAcid},
		{"copper cyanide salt into acid copper", func(s *plating.Solution) {
			s.Name, s.Metal, s.Salts, s.PH, s.Anode = "copper, acid sulfate", "Cu", salts("CuCN"), ph(0.5, 1), ""
		}, plating.CodeCyanideInAcid},
		{"sulfite with acid", func(s *plating.Solution) { s.Name, s.Salts, s.PH = "gold, sulfite", nil, ph(3, 4) },
			plating.CodePoisonGas},
		{"sulfite at pH 9", func(s *plating.Solution) { s.Name, s.Salts, s.PH = "gold, sulfite", nil, ph(8, 10) }, ""},
		{"sulfide with acid", func(s *plating.Solution) {
			*s = plating.Solution{Name: "liver of sulfur with sulfuric acid"}
		}, plating.CodePoisonGas},
		{"sulfide alone", func(s *plating.Solution) { *s = plating.Solution{Name: "liver of sulfur"} }, ""},
		{"bleach with acid", func(s *plating.Solution) { *s = plating.Solution{Name: "bleach, hydrochloric acid"} },
			plating.CodePoisonGas},
		{"bleach with ammonia", func(s *plating.Solution) { *s = plating.Solution{Name: "bleach, ammonia"} },
			plating.CodePoisonGas},
		{"bleach alone", func(s *plating.Solution) { *s = plating.Solution{Name: "bleach"} }, ""},
		{"peroxide in cyanide", func(s *plating.Solution) { *s = plating.Solution{Name: "cyanide stripper, peroxide"} },
			plating.CodePoisonGas},
		{"nitric acid with alcohol",
			func(s *plating.Solution) { *s = plating.Solution{Name: "nitric acid in alcohol"} }, plating.CodePoisonGas},
		{"nitric acid in water", func(s *plating.Solution) { *s = plating.Solution{Name: "nitric acid in water"} }, ""},
		{"chromic acid with acetone",
			func(s *plating.Solution) { *s = plating.Solution{Name: "chromic acid, acetone"} }, plating.CodePoisonGas},
		{"fluoride in glass", func(s *plating.Solution) {
			*s = plating.Solution{Name: "ammonium bifluoride", Vessel: plating.VesselGlass}
		}, plating.CodeVessel},
		{"fluoborate in glass", func(s *plating.Solution) {
			*s = plating.Solution{Name: "fluoboric acid",
				Vessel: plating.VesselGlass}
		}, plating.CodeVessel},
		{"fluoride in plastic", func(s *plating.Solution) {
			*s = plating.Solution{Name: "ammonium bifluoride", Vessel: plating.VesselPlastic}
		}, ""},
		{"acid in glass", func(s *plating.Solution) { s.Vessel = plating.VesselGlass }, ""},
		{"acid in steel", func(s *plating.Solution) { s.Vessel = plating.VesselSteel }, plating.CodeVessel},
		{"acid in aluminium", func(s *plating.Solution) { s.Vessel = plating.VesselAluminium }, plating.CodeVessel},
		{"hydrochloric acid in stainless steel", func(s *plating.Solution) {
			*s = plating.Solution{Name: "hydrochloric acid", Vessel: plating.VesselStainless}
		}, plating.CodeVessel},
		{"caustic in aluminium", func(s *plating.Solution) {
			*s = plating.Solution{Name: "caustic soda", Vessel: plating.VesselAluminium}
		}, plating.CodeVessel},
		{"caustic in steel", func(s *plating.Solution) {
			*s = plating.Solution{Name: "caustic soda",
				Vessel: plating.VesselSteel}
		}, ""},
		{"stainless steel anode in acid gold", func(s *plating.Solution) { s.Anode = "stainless steel 316" },
			plating.CodeAnode},
		{"stainless steel anode in alkaline gold", func(s *plating.Solution) {
			s.Name, s.PH, s.Anode = "gold, cyanide", ph(10, 11), "stainless steel 316"
		}, ""},
		{"copper anode in gold", func(s *plating.Solution) { s.Anode = "copper sheet" }, plating.CodeAnode},
		{"bare titanium anode", func(s *plating.Solution) { s.Anode = "titanium" }, plating.CodeAnode},
		{"graphite anode", func(s *plating.Solution) { s.Anode = "graphite" }, ""},
		{"lead anode in gold", func(s *plating.Solution) { s.Anode = "lead" }, plating.CodeAnode},
		{"lead anode in sulfuric acid", func(s *plating.Solution) {
			*s = plating.Solution{Name: "sulfuric acid", Anode: "lead or graphite, none that dissolves"}
		}, ""},
		{"lead anode in hydrochloric acid", func(s *plating.Solution) {
			*s = plating.Solution{Name: "hydrochloric acid",
				Anode: "lead"}
		}, plating.CodeAnode},
		{"platinised titanium in fluoborate", func(s *plating.Solution) {
			*s = plating.Solution{Name: "copper, fluoborate", Metal: "Cu", Anode: "platinised titanium"}
		}, plating.CodeAnode},
		{"graphite in hydrochloric acid: chlorine", func(s *plating.Solution) {
			*s = plating.Solution{Name: "nickel, hydrochloric acid strike", Metal: "Ni", Anode: "graphite"}
		}, plating.CodeAnode},
		{"nickel anode in nickel", func(s *plating.Solution) {
			*s = plating.Solution{Name: "nickel, hydrochloric acid strike", Metal: "Ni", Anode: "nickel"}
		}, ""},
		{"tin of an alloy", func(s *plating.Solution) {
			*s = plating.Solution{Name: "bronze, acid", Metal: "Cu", With: []string{"Sn"}, Anode: "tin and copper"}
		}, ""},
	}
	for _, e := range edits {
		s := solution()
		e.edit(&s)
		notes := s.Review()
		found := false
		for _, n := range notes {
			found = found || n.Code == e.code
			if n.Text == "" || n.Do == "" || n.Source == "" || n.Severity < plating.SeverityWarning ||
				!strings.Contains(n.Text,
					": ") {
				t.Errorf("%s: incomplete: %+v", e.name, n)
			}
		}
		if e.code == "" && len(notes) != 0 || e.code != "" && !found {
			t.Errorf("%s: %v, want %q", e.name, notes, e.code)
		}
		deadly := false
		for _, n := range notes {
			deadly = deadly || n.Severity == plating.SeverityStop
		}
		if err := plating.Deadly(s); (err != nil) != deadly {
			t.Errorf("%s: Deadly says %v", e.name, err)
		}
	}
}

func ExampleSolution_Review() {
	s := plating.Solution{Name: "gold, acid cyanide strike", Metal: "Au", Valence: 1, PH: plating.PHWindow{Low: 1,
		High: 2}}
	for _, n := range s.Review() {
		fmt.Println(n.Severity, n.Code)
	}
	s.PH = plating.PHWindow{Low: 3.4, High: 3.8}
	fmt.Println(len(s.Review()))
	// Output:
	// stop gold-cyanide-acid
	// 0
}

func ExampleNamedHazards() {
	fmt.Println(plating.NamedHazards("silver, KCN based"))
	fmt.Println(plating.NamedHazards("gold sulfite, free of cyanide"))
	// Output:
	// cyanide
	// sulfite
}

func ExampleDeadly() {
	err := plating.Deadly(plating.Solution{Name: "bleach with hydrochloric acid"})
	fmt.Println(strings.ReplaceAll(err.Error(), ". ", ".\n"))
	// Output:
	// STOP: hypochlorite and acid in one solution: together they make chlorine, which kills.
	// Do not mix or run it.
	// Correct the list of hazards if one of the two is wrong [Hypochlorite]
}

func ExampleTankLine() {
	s := plating.Solution{Name: "hydrochloric acid pickle"}
	fmt.Println(plating.TankLine(s.AtTank()))
	// Output: HYDROCHLORIC ACID: goggles and gloves on, extraction on; acid and fume burn skin and lungs. [HClSheet]
}

func ExampleSolution_Adding() {
	salt, err := faraday.ParseFormula("KAu(CN)2")
	s := plating.Solution{Name: "gold, acid cyanide", Metal: "Au", Valence: 1}
	fmt.Println(strings.ReplaceAll(s.Adding(salt).Do, "; ", ";\n"), err)
	// Output:
	// POISON: read the pH first and add nothing below pH 3;
	// weigh it with gloves on, dissolve it in water, extraction on <nil>
}

func ExampleKnownDeadly() {
	s := plating.Solution{Name: "gold, acid cyanide", Metal: "Au", Valence: 1} // nobody read its pH
	fmt.Println("to run it:", plating.Deadly(s) != nil)
	fmt.Println("to read of it:", plating.KnownDeadly(s) != nil)
	// Output:
	// to run it: true
	// to read of it: false
}

func ExampleParseHazard() {
	h, err := plating.ParseHazard("nitric")
	fmt.Println(h, err)
	_, err = plating.ParseHazard("spicy")
	fmt.Printf("%.60s ...\n", err)
	// Output:
	// nitric <nil>
	// hazard "spicy": out of range; need one of cyanide, fluoride, ...
}

func ExampleSaltHazards() {
	for _, text := range []string{"KAu(CN)2", "NiSO4.6H2O", "NaOH", "NaCl"} {
		salt, err := faraday.ParseFormula(text)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: %v\n", text, plating.SaltHazards(salt))
	}
	// Output:
	// KAu(CN)2: cyanide
	// NiSO4.6H2O: nickel
	// NaOH: caustic
	// NaCl: none
}

func ExampleUnsaid() {
	fmt.Println(plating.Unsaid(plating.HazardHot, "silver, free cyanide"))
	// Output: cyanide
}

func ExampleFrontCautions() {
	for _, n := range plating.FrontCautions(plating.HazardCyanide | plating.HazardAcid) {
		fmt.Println(strings.ReplaceAll(n.Do, ". ", ".\n"))
	}
	// Output:
	// Never let acid and cyanide meet: not in a tank, a rinse, a drain or a waste drum.
	// Never work alone.
	// Arrange first aid for cyanide with a doctor first.
	// Wear goggles, gloves and apron.
	// Pour acid and caustic into cold water, never water into them.
	// Switch the extraction on before the current.
	// Keep flame and spark away.
	// Pour nothing down the drain: collect rinse water and old baths, recover the metal.
}
