package plating_test

import (
	"encoding/json"
	"fmt"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// plain is a coat of simple figures: 1 mg/C, 10 g/cm³, all current deposits.
func plain(name, bath, metal string, j, seconds, area float64) plating.Layer {
	return plating.Layer{Name: name, Area: units.Area(area), CurrentDensity: units.CurrentDensity(j),
		Time:         units.Duration(seconds),
		Distribution: plating.Distribution{MinToAverage: 0.5},
		Bath: plating.OperatingBath{Name: bath, Metal: metal, Deposit: faraday.Deposit{Equivalent: 1e-6,
			Density: 10000}, Fine: 0.8, Efficiency: plating.ConstantEfficiency(1), Content: 10, Volume: 0.01}}
}

// TestIndependentTotals sums a job of four coats by hand: two of gold from one
// bath, copper between them, and gold from a bath of another name.
func TestIndependentTotals(t *testing.T) {
	layers := []plating.Layer{
		plain("one", "gold", "Au", 100, 100, 0.02),
		plain("two", "copper", "Cu", 200, 50, 0.02),
		plain("three", "gold", "Au", 50, 400, 0.01),
		plain("four", "other gold", "Au", 10, 1000, 0.02),
	}
	res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 2, Area: 0.01}}, Layers: layers})
	if err != nil {
		t.Fatal(err)
	}
	// Charge j·A·t, mass 1 mg/C, mean 1e-6·j·t/1e4.
	charge := []float64{200, 200, 200, 200}
	mean := []float64{1e-6, 1e-6, 2e-6, 1e-6}
	is := func(what string, got, want float64) {
		t.Helper()
		if relative(got, want) > 1e-12 {
			t.Errorf("%s: %v, by hand %v", what, got, want)
		}
	}
	is("charge", float64(res.Charge), 800)
	is("time", float64(res.Time), 1550)
	is("area", float64(res.Area), 0.02)
	if len(res.Metals) != 2 || res.Metals[0].Metal != "Au" || res.Metals[1].Metal != "Cu" {
		t.Fatalf("metals %+v", res.Metals)
	}
	gold, copper := res.Metals[0], res.Metals[1]
	is("mean of gold", float64(gold.Average), mean[0]+mean[2]+mean[3])
	is("thinnest of gold", float64(gold.Thinnest), (mean[0]+mean[2]+mean[3])/2)
	is("mass of gold", float64(gold.Mass), 600e-6)
	is("fine mass of gold", float64(gold.FineMass), 480e-6)
	is("mean of copper", float64(copper.Average), mean[1])
	is("fine mass of copper", float64(copper.FineMass), 160e-6)
	for i, l := range res.Layers {
		is("charge of "+l.Layer.Name, float64(l.Result.Charge), charge[i])
	}
	// The bath holds 100 g; the third coat finds 160 mg less in it.
	is("left for one", float64(res.Layers[0].Result.MetalLeft), 0.1-160e-6)
	is("left for three", float64(res.Layers[2].Result.MetalLeft), 0.1-320e-6)
	is("drawn by one", float64(res.Layers[0].Result.Drawn), 160e-6/0.1)
	is("drawn by three", float64(res.Layers[2].Result.Drawn), 320e-6/0.1)
	is("drawn by four", float64(res.Layers[3].Result.Drawn), 160e-6/0.1)
	is("left for four", float64(res.Layers[3].Result.MetalLeft), 0.1-160e-6)
	var text []string
	for _, n := range res.Layers[0].Before {
		text = append(text, n.Text)
	}
	if len(text) != 0 {
		t.Errorf("notes on the first coat: %v", text)
	}
}

// TestPropertyOneBath: one name and one metal is one tank, which has one
// content and one volume; what has no name, or another metal, is another tank.
func TestPropertyOneBath(t *testing.T) {
	for _, c := range []struct {
		what         string
		name, metal  string
		content, vol float64
		refused      bool
		shared       bool
	}{
		{"the same tank", "gold", "Au", 10, 0.01, false, true},
		{"another content", "gold", "Au", 11, 0.01, true, false},
		{"another volume", "gold", "Au", 10, 0.02, true, false},
		{"another metal", "gold", "Ag", 11, 0.02, false, false},
		{"another name", "more gold", "Au", 11, 0.02, false, false},
		{"the first has no name", "", "Au", 11, 0.01, false, false},
	} {
		first, second := plain("one", "gold", "Au", 100, 100, 0.02), plain("two", c.name, c.metal, 100, 100, 0.02)
		if c.name == "" {
			first.Bath.Name = ""
		}
		second.Bath.Content, second.Bath.Volume = units.MassConcentration(c.content), units.Volume(c.vol)
		res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
			Layers: []plating.Layer{first, second}})
		if (err != nil) != c.refused {
			t.Errorf("%s: %v", c.what, err)
			continue
		}
		if err != nil {
			continue
		}
		loads := 1.0
		if c.shared {
			loads = 2
		}
		if got := float64(res.Layers[1].Result.Drawn); relative(got, loads*160e-6/(c.content*c.vol)) > 1e-9 {
			t.Errorf("%s: drawn %v, want that of %g loads", c.what, got, loads)
		}
	}
	// A bath that the load before has emptied stays empty, and the share is more than all.
	first := plain("one", "gold", "Au", 100, 100, 0.02)
	first.Bath.Content, first.Bath.Volume = 0.3, 0.001
	res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
		Layers: []plating.Layer{first, first}})
	if err != nil || relative(float64(res.Layers[1].Result.Drawn), 320e-6/0.3e-3) > 1e-9 ||
		!res.Layers[1].Result.Warnings.Has(plating.WarnBathEmpty) {
		t.Errorf("%+v, %v", res.Layers[1].Result, err)
	}
	// 5 % of three loads passes a limit of 10 % with the third.
	first.Bath.Content = 160e-6 / 0.04 / 0.001
	res, err = plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
		Layers: []plating.Layer{first, first, first}})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []bool{false, false, true} {
		if got := res.Layers[i].Result.Warnings.Has(plating.WarnBathDrawn); got != want {
			t.Errorf("load %d: drawn beyond the limit %v, want %v", i+1, got, want)
		}
	}
}

// TestPropertyBelowCounts: a layer below counts on the same area alone, and a
// promise that it meets is refused.
func TestPropertyBelowCounts(t *testing.T) {
	top := plain("two", "more gold", "Au", 100, 0, 0.02)
	top.MinThickness, top.CountBelow = 1e-6, true
	for area, counts := range map[float64]bool{0.02: true, 0.02 * (1 + 1e-10): true, 0.02 * (1 - 1e-10): true,
		0.02 * (1 + 1e-8): false, 0.02 * (1 - 1e-8): false, 0.01: false, 0.03: false} {
		res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
			Layers: []plating.Layer{plain("one", "gold", "Au", 100, 100, area), top}})
		if err != nil || (res.Layers[1].Below > 0) != counts {
			t.Errorf("%v m²: below %v, %v, want it to count: %v", area, res.Layers[1].Below, err, counts)
		}
	}
	for seconds, ok := range map[float64]bool{199.9: true, 200.001: false} { // 200 s lay the 1 µm at the thinnest spot
		_, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
			Layers: []plating.Layer{plain("one", "gold", "Au", 100, seconds, 0.02), top}})
		if (err == nil) != ok {
			t.Errorf("%v s below: %v", seconds, err)
		}
	}
	// An area beyond the load's is noted, with both.
	res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
		Layers: []plating.Layer{plain("one", "gold", "Au", 100, 100, 0.03),
			plain("two", "gold", "Au", 100, 100, 0.02)}})
	if err != nil {
		t.Fatal(err)
	}
	if n := res.Layers[0].Before; len(n) != 1 ||
		n[0].Text != "the layer's area of 300 cm² is more than the load has, 200 cm²" {
		t.Errorf("%+v", n)
	}
	if n := res.Layers[1].Before; len(n) != 0 {
		t.Errorf("%+v", n)
	}
}

// TestPropertyNotesHoldFigures: notes name the figures that they are about.
func TestPropertyNotesHoldFigures(t *testing.T) {
	note := func(change func(*plating.Layer), want ...string) {
		t.Helper()
		l := plain("one", "gold", "Au", 100, 100, 0.02)
		l.Bath.Window = plating.CurrentDensityWindow{Low: 10, High: 1000}
		change(&l)
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Fatal(err)
		}
		var all []string
		for _, n := range plating.Notes(&l, &r) {
			all = append(all, n.String())
		}
		for _, w := range want {
			if !strings.Contains(strings.ToLower(strings.Join(all, "\n")), strings.ToLower(w)) {
				t.Errorf("%q is not in\n%s", w, strings.Join(all, "\n"))
			}
		}
	}
	type L = plating.Layer
	note(func(l *L) { l.Distribution.MinToAverage, l.MinThickness, l.Time = 0.4, 1e-6, 0 },
		"the mean must be 2.5 times the minimum thickness")
	note(func(l *L) { l.Bath.Temperature = plating.TemperatureWindow{Low: 300, Set: 290, High: 310} },
		fmt.Sprintf("set to %s, below its range from %s", units.Temperature(290), units.Temperature(300)))
	note(func(l *L) { l.Bath.Temperature = plating.TemperatureWindow{Low: 300, Set: 320, High: 310} },
		fmt.Sprintf("set to %s, above its range to %s", units.Temperature(320), units.Temperature(310)))
	note(func(l *L) { l.Bath.InsolubleAnode = true }, "does not replace the 160.0 mg of")
	note(func(l *L) { l.Bath.InsolubleAnode, l.Time, l.Bath.Content = true, 10000, 1000 },
		"does not replace the 16.00 g of")
	note(func(l *L) { l.Bath.InsolubleAnode, l.Time, l.Bath.Content = true, 626, 1000 },
		"does not replace the 1.00 g of")
	note(func(l *L) { l.Bath.Content, l.Bath.Volume = 0.1, 0.001 }, "takes 160.0 mg of Au and the bath holds 100.0 mg")
	note(func(l *L) { l.Bath.Content, l.Bath.Volume, l.Bath.Metal = 0.32, 0.001, "" },
		"takes 50.0 % of the bath's metal, more than the limit of 10 %")
	note(func(l *L) { l.Time, l.MinThickness = 100, 0.7e-6 }, "the thinnest spot gets 0.500 µm, the minimum "+
		"thickness is 0.700 µm")
	note(func(l *L) { l.Bath.MaxThickness = 0.5e-6 }, "a mean of 1.00 µm is more than the 0.50 µm",
		"[the bath as given]")
	note(func(l *L) { l.Bath.MaxThickness, l.Bath.Source = 0.5e-6, "own trials" }, "own trials")
	note(func(l *L) { l.Bath.Efficiency = plating.ConstantEfficiency(0.25) }, "25 % of the current deposits metal")
	note(func(l *L) { l.Time = 5 }, "5.0 s is hard to time")
	note(func(l *L) { l.Distribution.Uncertainty, l.MinThickness = 0.1, 0.5e-6 }, "plate 1.2 times as long",
		"known to 10 %", "from 0.450 µm to 0.550 µm")
	note(func(l *L) { l.Distribution.Uncertainty, l.MinThickness = 0.49, 0.5e-6 }, "plate 20 times as long")
}

// TestPropertyWorkingGoesByWhatIsGiven: the steps start from the two that are given,
// and end with the metal in the bath where it is known.
func TestPropertyWorkingGoesByWhatIsGiven(t *testing.T) {
	const left = "m_left = c·V - m_fine; c_left = m_left/V"
	common := "I = j·A; Q = I·t; m = ρ·s·A; m_fine = w·m"
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 10, Efficiency: 0.5},
		plating.EfficiencyPoint{CurrentDensity: 100, Efficiency: 0.9}, plating.EfficiencyPoint{CurrentDensity: 200,
			Efficiency: 0.7})
	if err != nil {
		t.Fatal(err)
	}
	line := "η = η₁ + (η₂ - η₁)·(j - j₁)/(j₂ - j₁)"
	for _, c := range []struct {
		change func(*plating.Layer)
		want   []string
	}{
		{func(*plating.Layer) {}, []string{"s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.MinThickness = 0.1e-6 }, []string{"s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.MinThickness, l.Time = 1e-6, 0 }, []string{"s = s_min/r; t = ρ·s/(ε·η·j)",
			common, left}},
		{func(l *plating.Layer) { l.MinThickness, l.CurrentDensity = 1e-6, 0 },
			[]string{"s = s_min/r; j = ρ·s/(ε·η·t)", common, left}},
		{func(l *plating.Layer) { l.Bath.Content = 0 }, []string{"s = ε·η·j·t/ρ; s_min = r·s", common}},
		{func(l *plating.Layer) { l.Bath.Volume = 0 }, []string{"s = ε·η·j·t/ρ; s_min = r·s", common}},
		{func(l *plating.Layer) { l.Bath.Content = 0.001 }, []string{"s = ε·η·j·t/ρ; s_min = r·s", common}},
		{func(l *plating.Layer) { l.Bath.Content = 0.9 }, []string{"s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 150 },
			[]string{line, "s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 10 },
			[]string{line, "s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 200 },
			[]string{line, "s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 201 },
			[]string{"s = ε·η·j·t/ρ; s_min = r·s", common, left}},
		{func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 9 },
			[]string{"s = ε·η·j·t/ρ; s_min = r·s", common, left}},
	} {
		l := plain("one", "gold", "Au", 100, 100, 0.02)
		c.change(&l)
		steps, err := plating.Working(&l)
		if err != nil {
			t.Error(err)
			continue
		}
		var got []string
		for _, s := range steps {
			got = append(got, s.Formula)
		}
		if text := strings.Join(got, "; "); text != strings.Join(c.want, "; ") {
			t.Errorf("%s, want %s", text, strings.Join(c.want, "; "))
		}
		checkSteps(t, steps)
	}
}

// TestPropertyRulesAtLimits holds the limits of the rules for solutions: pH
// 9.2, 6, 5 and 3, valence, and what is not given.
func TestPropertyRulesAtLimits(t *testing.T) {
	salt := func(text string) []faraday.Formula {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		return []faraday.Formula{f}
	}
	ph := func(low, high plating.PH) plating.PHWindow { return plating.PHWindow{Low: low, High: high} }
	const cyanide, acid = plating.HazardCyanide, plating.HazardAcid
	type S = plating.Solution
	for _, c := range []struct {
		s    S
		code string
	}{
		{S{Metal: "Ag", Hazards: cyanide, PH: ph(9.2, 12)}, ""},
		{S{Metal: "Ag", Hazards: cyanide, PH: ph(9.19, 12)}, plating.CodeCyanideInAcid},
		{S{Metal: "Ag", Hazards: cyanide, PH: ph(0, 9.19)}, plating.CodeCyanideInAcid},
		{S{Metal: "Ag", Hazards: cyanide}, ""},
		{S{Metal: "Ag", Hazards: cyanide, PH: ph(5.99, 12)}, plating.CodeCyanideInAcid},
		{S{Metal: "", Hazards: cyanide, PH: ph(7, 8)}, plating.CodeCyanideInAcid},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide, PH: ph(6, 7)}, ""},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide, PH: ph(7, 8)}, ""},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(3, 4)}, ""},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(2.99, 4)}, plating.CodeGoldCyanideAcid},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(0, 2.9)}, plating.CodeGoldCyanideAcid},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(0, 3)}, plating.CodePHNotGiven},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(2, 0)}, plating.CodeGoldCyanideAcid},
		{S{Metal: "Au", Valence: 1, Hazards: cyanide | acid, PH: ph(4, 0)}, ""},
		{S{Metal: "Au", Valence: 3, Hazards: cyanide | acid, PH: ph(1, 2)}, ""},
		{S{Metal: "Au", Valence: 3, Hazards: cyanide | acid}, ""},
		{S{Metal: "", Hazards: cyanide | acid, PH: ph(4, 5)}, ""},
		{S{Metal: "Au", Valence: 1, PH: ph(4, 5)}, plating.CodeUnsaidCyanide},
		{S{Metal: "Au", Valence: 1, PH: ph(6, 7)}, ""},
		{S{Metal: "Au", Valence: 3, PH: ph(1, 2)}, ""},
		{S{Metal: "Au", Valence: 2, PH: ph(1, 2)}, ""},
		{S{Metal: "Au", PH: ph(4, 5)}, ""},
		{S{Metal: "Ag", Valence: 1, PH: ph(4, 5)}, ""},
		{S{Metal: "Au", Valence: 1, Hazards: plating.HazardSulfite, PH: ph(7, 9)}, ""},
		{S{Metal: "Cu", Valence: 1, PH: ph(10, 11)}, plating.CodeUnsaidCyanide},
		{S{Metal: "Cu", Valence: 2, PH: ph(10, 11)}, ""},
		{S{Metal: "Cu", Valence: 1, Hazards: cyanide, PH: ph(10, 11)}, ""},
		{S{Metal: "Cu", Valence: 1, Hazards: cyanide, PH: ph(9, 11)}, plating.CodeCyanideInAcid},
		{S{Metal: "Cu", Valence: 1, Hazards: cyanide}, ""},
		{S{Metal: "Au", Hazards: plating.HazardSulfite, PH: ph(5, 6)}, ""},
		{S{Metal: "Au", Hazards: plating.HazardSulfite, PH: ph(4.99, 6)}, plating.CodePoisonGas},
		{S{Metal: "Au", Hazards: plating.HazardSulfite | acid}, plating.CodePoisonGas},
		{S{Metal: "Au", Hazards: plating.HazardSulfide | acid, PH: ph(5.5, 6)}, plating.CodePoisonGas},
		{S{Metal: "Au", Hazards: plating.HazardSulfide, PH: ph(6, 7)}, ""},
		{S{Metal: "Au", Valence: 1, Salts: salt("KAu(CN)4"), PH: ph(6, 7)}, plating.CodeWrongSalt},
		{S{Metal: "Au", Valence: 3, Salts: salt("KAu(CN)4"), PH: ph(1, 2)}, ""},
		{S{Metal: "Au", Salts: salt("KAu(CN)4"), PH: ph(6, 7)}, ""},
		{S{Metal: "Ag", Valence: 1, Salts: salt("KAu(CN)4"), PH: ph(10, 11)}, ""},
		{S{Metal: "Au", Valence: 1, Salts: salt("AuCl3"), PH: ph(6, 7)}, plating.CodeWrongSalt},
		{S{Metal: "Au", Valence: 3, Salts: salt("NaAuCl4·2H2O"), PH: ph(1, 2)}, ""},
		{S{Metal: "Au", Valence: 3, Salts: salt("HAuCl4·4H2O"), PH: ph(1, 2)}, ""},
		{S{Metal: "Au", Valence: 3, Salts: salt("KAu(CN)2"), PH: ph(1, 2)}, plating.CodeWrongSalt},
		{S{Metal: "Au", Valence: 1, Salts: salt("KCN"), PH: ph(10, 11)}, ""},
		{S{Metal: "Au", Valence: 1, Salts: salt("KCN"), PH: ph(4, 5)}, plating.CodeWrongSalt},
		{S{Metal: "Ni", Valence: 2, Salts: salt("NiSO4·6H2O"), PH: ph(4, 5)}, ""},
	} {
		var got []string
		for _, n := range c.s.Review() {
			if n.Severity == plating.SeverityStop {
				got = append(got, n.Code)
			}
		}
		if c.code == "" && len(got) > 0 || c.code != "" && (len(got) == 0 || got[0] != c.code) {
			t.Errorf("%+v: %v, want %q", c.s, got, c.code)
		}
		// Readers of books let pass what is only not given.
		known := plating.KnownDeadly(c.s)
		if question := c.code == plating.CodePHNotGiven || c.code == plating.CodeUnsaidCyanide; (known != nil) !=
			(c.code != "" && !question) {
			t.Errorf("%+v: known deadly %v", c.s, known)
		}
	}
	for _, c := range []struct {
		s    S
		want plating.Hazard
	}{
		{S{PH: ph(6, 7)}, 0}, {S{PH: ph(5.99, 7)}, acid}, {S{PH: ph(0, 5.9)}, acid}, {S{PH: ph(0.5, 0)}, acid},
		{S{}, 0},
		{S{PH: ph(12.9, 14)}, 0}, {S{PH: ph(13, 14)}, plating.HazardCaustic}, {S{PH: ph(0, 13)}, plating.HazardCaustic},
		{S{Temperature: units.Celsius(45)}, 0}, {S{Temperature: units.Celsius(45.1)}, plating.HazardHot},
		{S{Metal: "Ni"}, plating.HazardNickel}, {S{Metal: "Au", With: []string{"Co"}}, plating.HazardCobalt},
		{S{Salts: salt("KAg(CN)2")}, cyanide}, {S{Salts: salt("NiSO4")}, plating.HazardNickel},
		{S{Salts: salt("NiF2")}, plating.HazardNickel | plating.HazardFluoride},
		{S{Hazards: plating.HazardNitric}, plating.HazardNitric | acid},
	} {
		if got := c.s.AllHazards(); got != c.want {
			t.Errorf("%+v: %s, want %s", c.s, got, c.want)
		}
	}
	// What is said of a wrong salt names both valences.
	s := S{Metal: "Au", Valence: 1, Salts: salt("KAu(CN)4"), PH: ph(6, 7)}
	if n := s.Review(); len(n) != 1 || !strings.Contains(n[0].Text, "holds gold(III), the bath deposits gold(I)") {
		t.Errorf("%+v", n)
	}
	if _, err := plating.ParseHazard(strings.Repeat("a", 1000)); err == nil || len(err.Error()) > 600 {
		t.Errorf("%v", err)
	}
	h := plating.HazardCyanide
	if err := json.Unmarshal([]byte(`["acid"]`), &h); err != nil || h != acid {
		t.Errorf("read over another: %s, %v", h, err)
	}
}

// TestPropertyAdding: what is said at an amount of cyanide salt goes by the bath.
func TestPropertyAdding(t *testing.T) {
	formula := func(text string) faraday.Formula {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	for _, c := range []struct {
		s            plating.Solution
		salt, source string
		do           string
	}{
		{plating.Solution{Metal: "Au", Valence: 1, PH: plating.PHWindow{Low: 4}}, "KAu(CN)2", "GoldCyanidePatent",
			"below pH 3"},
		{plating.Solution{Metal: "Au", PH: plating.PHWindow{Low: 4}}, "KAu(CN)2", "GoldCyanidePatent", "below pH 3"},
		{plating.Solution{Metal: "Au", Valence: 3, PH: plating.PHWindow{Low: 1}}, "KAu(CN)4", "AuricCyanide",
			"read the label"},
		{plating.Solution{Metal: "Au", Valence: 1, PH: plating.PHWindow{Low: 7}}, "KAu(CN)2", "KCNSheet",
			"away from every acid"},
		{plating.Solution{Metal: "Au", Valence: 3, PH: plating.PHWindow{Low: 7}}, "KAu(CN)4", "KCNSheet",
			"away from every acid"},
		{plating.Solution{Metal: "Ag"}, "KAg(CN)2", "KCNSheet", "away from every acid"},
		{plating.Solution{Metal: "Ni", PH: plating.PHWindow{Low: 4}}, "NiSO4", "NickelHealth", "NICKEL SALTS"},
		{plating.Solution{Metal: "Ag"}, "NaCl", "", ""},
	} {
		n := c.s.Adding(formula(c.salt))
		if n.Source != c.source || !strings.Contains(n.Do, c.do) || c.source != "" && n.Text == "" {
			t.Errorf("%s of valence %d, %s: %+v", c.s.Metal, c.s.Valence, c.salt, n)
		}
	}
	for _, c := range []struct {
		s    plating.Solution
		want string
	}{
		{plating.Solution{Metal: "Au", Valence: 1, Hazards: plating.HazardCyanide, PH: plating.PHWindow{Low: 4}},
			"CYANIDE IN ACID"},
		{plating.Solution{Metal: "Au", Valence: 3, Hazards: plating.HazardCyanide, PH: plating.PHWindow{Low: 1}},
			"GOLD(III) CYANIDE"},
		{plating.Solution{Metal: "Au", Valence: 1, Hazards: plating.HazardCyanide, PH: plating.PHWindow{Low: 7}},
			"CYANIDE: keep"},
		{plating.Solution{Metal: "Ni", PH: plating.PHWindow{Low: 4}}, "ACID"},
	} {
		notes := c.s.AtTank()
		if len(notes) == 0 || !strings.HasPrefix(notes[0].Text, c.want) {
			t.Errorf("%+v: %+v", c.s, notes)
			continue
		}
		acids := 0
		for _, n := range notes {
			if strings.HasPrefix(n.Text, "ACID:") {
				acids++
			}
		}
		if said := c.want == "CYANIDE IN ACID" || c.want == "CYANIDE: keep"; (acids == 0) != said {
			t.Errorf("%+v: acid is said %d times", c.s, acids)
		}
	}
}

// TestPropertyAnodes: which anode words name what dissolves, and which deny it.
func TestPropertyAnodes(t *testing.T) {
	for text, want := range map[string]string{
		"Steel": "a steel anode", "stainless": "a stainless steel anode", "platinised titanium": "",
		"titanium, mixed oxide":     "",
		"titanium with mixed oxide": "", "bare titanium": "a bare titanium anode", "steelworks": "", "unleaded": "",
		"lead": "a lead anode", "not lead, platinum": "", "no steel": "", "copper, none of steel": "a copper anode",
		"gold": "", "gold, never copper": "", "leaden lead": "a lead anode",
	} {
		s := solution()
		s.Anode = text
		var got []string
		for _, n := range s.Review() {
			got = append(got, n.Text)
		}
		if want == "" && len(got) > 0 || want != "" && (len(got) != 1 || !strings.HasPrefix(got[0], want)) {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
	// An insoluble anode without a name frees chlorine from chloride as any other.
	s := plating.Solution{Metal: "Ni", Hazards: plating.HazardHydrogenChloride | plating.HazardAcid, Insoluble: true}
	named := s
	named.Anode = "nickel"
	if len(s.Review()) == 0 || len(named.Review()) != 0 {
		t.Errorf("%+v, %+v", s.Review(), named.Review())
	}
}
