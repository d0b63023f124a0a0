package plating_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// TestPropertyNotesHoldDangers: the notes of a layer begin with what is wrong
// with its bath, a held efficiency is said, and much gas has its code.
func TestPropertyNotesHoldDangers(t *testing.T) {
	notes := func(change func(*plating.Layer)) map[string]plating.Note {
		l := hardGold(t)
		change(&l)
		r, err := plating.Estimate(&l)
		if err != nil {
			t.Fatal(err)
		}
		found := map[string]plating.Note{}
		for i, n := range plating.Notes(&l, &r) {
			if i == 0 {
				found["first"] = n
			}
			found[n.Code] = n
			if strings.Contains(n.Text, "its end value") {
				found["held"] = n
			}
		}
		return found
	}
	safe := notes(func(*plating.Layer) {})
	if _, stop := safe[plating.CodeGoldCyanideAcid]; stop {
		t.Errorf("%+v", safe)
	}
	if n := safe[plating.CodeLowEfficiency]; !strings.HasPrefix(n.Text, "35 % of the current") {
		t.Errorf("35 %%: %+v", n)
	}
	if n := notes(func(l *plating.Layer) { l.Bath.PH.Low = 2 })["first"]; n.Code != plating.CodeGoldCyanideAcid ||
		n.Severity != plating.SeverityStop {
		t.Errorf("pH 2: %+v", n)
	}
	clean := func(l *plating.Layer) { l.Bath.Efficiency = plating.ConstantEfficiency(0.9) }
	if _, gas := notes(clean)[plating.CodeLowEfficiency]; gas {
		t.Error("90 % is called gas")
	}
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 60, Efficiency: 0.4},
		plating.EfficiencyPoint{CurrentDensity: 100, Efficiency: 0.3})
	if err != nil {
		t.Fatal(err)
	}
	if n := notes(func(l *plating.Layer) { l.Bath.Efficiency = curve })["held"]; !strings.HasPrefix(n.Text,
		"0.50 A/dm² is outside") ||
		!strings.Contains(n.Text, "40 %") {
		t.Errorf("held: %+v", n)
	}
	if n, held := notes(func(l *plating.Layer) { l.Bath.Efficiency, l.CurrentDensity = curve, 80 })["held"]; held {
		t.Errorf("between the points: %+v", n)
	}
}

// TestPropertyBathAsSolution: salt and valence of a bath go to its review; a
// valence that is given counts, else the one that fits the deposit.
func TestPropertyBathAsSolution(t *testing.T) {
	salt, err := faraday.ParseFormula("KAu(CN)4")
	if err != nil {
		t.Fatal(err)
	}
	b := hardGold(t).Bath
	if s := b.Solution(); len(s.Salts) != 0 || s.Valence != 1 {
		t.Errorf("%+v", s)
	}
	b.Salt = salt
	if s := b.Solution(); len(s.Salts) != 1 || s.Salts[0].String() != salt.String() ||
		!s.AllHazards().Has(plating.HazardCyanide) {
		t.Errorf("%+v", s)
	}
	for given, want := range map[int]int{0: 1, 1: 1, 3: 3} {
		b.Valence = given
		if s := b.Solution(); s.Valence != want {
			t.Errorf("valence %d given: %d", given, s.Valence)
		}
	}
	b.Valence, b.Deposit.Equivalent = 0, b.Deposit.Equivalent/3
	if s := b.Solution(); s.Valence != 3 {
		t.Errorf("a third of the equivalent: %d", s.Valence)
	}
	b.Deposit.Equivalent *= 1.2
	if s := b.Solution(); s.Valence != 0 {
		t.Errorf("an equivalent that fits none: %d", s.Valence)
	}
}

// TestPropertyDangersCounted: the error of a deadly solution gives the first
// danger and counts the others.
func TestPropertyDangersCounted(t *testing.T) {
	note := func(text string) plating.Note {
		return plating.Note{Severity: plating.SeverityStop, Text: text, Do: "Do not", Source: "x"}
	}
	one := (&plating.DangerError{Notes: []plating.Note{note("first")}}).Error()
	three := (&plating.DangerError{Notes: []plating.Note{note("first"), note("second"), note("third")}}).Error()
	none := (&plating.DangerError{}).Error()
	if !strings.Contains(one, "First") && !strings.Contains(one, "first") || strings.Contains(one, "more") ||
		!strings.Contains(three, "2 more") || strings.Contains(three, "second") || none == "" {
		t.Errorf("%q, %q, %q", one, three, none)
	}
	line := plating.TankLine([]plating.Note{{Text: "A.", Source: "K1, K2"}, {Text: "B",
		Source: "common practice, no source"},
		{Text: "C", Source: "K2"}, {Text: "D", Source: "from memory, unverified"}})
	if line != "A. B. C. D. [K1; K2; common practice, no source; from memory, unverified]" {
		t.Errorf("%q", line)
	}
	if w := plating.Vessel(200).String(); w == plating.VesselGlass.String() || w == "" {
		t.Errorf("an unknown vessel is called %q", w)
	}
	// A fluoborate says the danger of fluoride once, by its own line.
	both := plating.Solution{Hazards: plating.HazardFluoride | plating.HazardFluoborate}
	alone := plating.Solution{Hazards: plating.HazardFluoride}
	if a, b := len(alone.AtTank()), len(both.AtTank()); a != 1 || b == 0 ||
		both.AtTank()[0].Text == alone.AtTank()[0].Text {
		t.Errorf("%+v, %+v", alone.AtTank(), both.AtTank())
	}
	// The text of an unknown hazard is cut at 40 bytes.
	for n, cut := range map[int]bool{40: false, 41: true} {
		_, err := plating.ParseHazard(strings.Repeat("x", n))
		var v *units.ValueError
		if !errors.As(err, &v) || strings.Contains(v.Value, "…") != cut || strings.Count(v.Value, "x") != 40 {
			t.Errorf("%d: %v", n, err)
		}
		if h, err := plating.ParseHazard(strings.Repeat("x", n)); h != 0 || err == nil {
			t.Errorf("%d: %v", n, h)
		}
	}
	// Steps of a coat that nothing below counts for begin with the coat's own.
	l := hardGold(t)
	res, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.01}},
		Layers: []plating.Layer{l}})
	if err != nil {
		t.Fatal(err)
	}
	steps, err := res.Layers[0].Working()
	if err != nil || len(steps) == 0 || strings.Contains(steps[0].Formula, "s_below") {
		t.Errorf("%v, %v", steps, err)
	}
	// Gold salts: cyanide groups, not all of the carbon.
	for text, valence := range map[string]string{"KAu(CN)2": "gold(I)", "KAu(CN)4": "gold(III)", "Na3Au(SO3)2": ""} {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		s := plating.Solution{Metal: "Au", Valence: 5, Hazards: plating.HazardCyanide, Salts: []faraday.Formula{f},
			PH: plating.PHWindow{Low: 7}}
		said := ""
		for _, n := range s.Review() {
			if n.Code == plating.CodeWrongSalt {
				said = n.Text
			}
		}
		if (said == "") != (valence == "") || valence != "" && (!strings.Contains(said, "holds "+valence) ||
			!strings.Contains(said, "gold(V)")) {
			t.Errorf("%s: %q", text, said)
		}
	}
}
