package plating_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// TestPropertyManyCoats: all coats of one metal below count, a bath that is
// drawn empty stays at nothing, and what is unknown of a bath stays unknown.
func TestPropertyManyCoats(t *testing.T) {
	parts := []plating.Item{{Count: 1, Area: 0.02}}
	top := plain("top", "more gold", "Au", 100, 0, 0.02)
	top.MinThickness, top.CountBelow = 2e-6, true
	below := plain("one", "gold", "Au", 100, 100, 0.02) // 0.5 µm at the thinnest spot
	res, err := plating.EstimateSystem(plating.System{Parts: parts, Layers: []plating.Layer{below, below, below, top}})
	if err != nil || relative(float64(res.Layers[3].Below), 1.5e-6) > 1e-12 {
		t.Errorf("three coats below: %v, %v", res.Layers[3].Below, err)
	}
	for part, counts := range map[float64]bool{0.5e-9: true, 1.5e-9: false} {
		other := below
		other.Area *= units.Area(1 + part)
		res, err := plating.EstimateSystem(plating.System{Parts: parts, Layers: []plating.Layer{other, top}})
		if err != nil || (res.Layers[1].Below > 0) != counts {
			t.Errorf("areas that differ by %v: %v, %v", part, res.Layers[1].Below, err)
		}
	}
	// 0.3 g: each load takes 0.16 g.
	drawn := below
	drawn.Bath.Content, drawn.Bath.Volume = 0.3, 0.001
	res, err = plating.EstimateSystem(plating.System{Parts: parts, Layers: []plating.Layer{drawn, drawn, drawn, drawn}})
	if err != nil {
		t.Fatal(err)
	}
	for i, left := range []float64{0.3, 0.14, 0.3e-9, 0.3e-9} {
		if got := float64(res.Layers[i].Layer.Bath.Content); relative(got, left) > 1e-6 {
			t.Errorf("load %d finds %v kg/m³, want %v", i+1, got, left)
		}
		if want := float64(i+1) * 160e-6 / 0.3e-3; relative(float64(res.Layers[i].Result.Drawn), want) > 1e-9 {
			t.Errorf("load %d: drawn %v, want %v", i+1, res.Layers[i].Result.Drawn, want)
		}
	}
	for _, unknown := range []func(*plating.OperatingBath){func(b *plating.OperatingBath) { b.Volume = 0 },
		func(b *plating.OperatingBath) { b.Content = 0 }} {
		l := below
		unknown(&l.Bath)
		res, err := plating.EstimateSystem(plating.System{Parts: parts, Layers: []plating.Layer{l, l}})
		if err != nil || res.Layers[1].Layer.Bath.Content != l.Bath.Content || res.Layers[1].Result.Drawn != 0 ||
			res.Layers[1].Result.MetalLeft != 0 {
			t.Errorf("%+v, %v", res.Layers[1].Result, err)
		}
	}
	low := below
	low.Bath.Window = plating.CurrentDensityWindow{Low: 0.1, High: 0.5}
	if r, err := plating.Estimate(&low); err != nil || !r.Warnings.Has(plating.WarnDensityHigh) {
		t.Errorf("100 A/m² in a window up to 0.5: %v, %v", r.Warnings, err)
	}
}

// TestPropertyWordsAtEnds: numerals, pH, vessels, anodes and salts at the ends
// of what their readers know.
func TestPropertyWordsAtEnds(t *testing.T) {
	formula := func(text string) []faraday.Formula {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		return []faraday.Formula{f}
	}
	wrong := func(valence int, salt string) string {
		s := plating.Solution{Metal: "Au", Valence: valence, Salts: formula(salt), PH: plating.PHWindow{Low: 7}}
		for _, n := range s.Review() {
			if n.Code == plating.CodeWrongSalt {
				return n.Text
			}
		}
		return ""
	}
	for valence, numeral := range map[int]string{2: "II", 4: "IV", 7: "VII", 8: "VIII", 9: "9", -1: "-1"} {
		if got := wrong(valence, "KAu(CN)2"); !strings.Contains(got,
			"holds gold(I), the bath deposits gold("+numeral+")") {
			t.Errorf("valence %d: %q", valence, got)
		}
	}
	for _, c := range []struct {
		salt    string
		valence int
	}{{"Au2Cl6", 3}, {"AuClC2H6S", 1}, {"KAuCl4", 3}, {"AuCN", 1}} {
		if got := wrong(c.valence, c.salt); got != "" {
			t.Errorf("%s in gold of valence %d: %q", c.salt, c.valence, got)
		}
		if got := wrong(4-c.valence, c.salt); got == "" {
			t.Errorf("%s in gold of valence %d passes", c.salt, 4-c.valence)
		}
	}
	for p, want := range map[plating.PH]string{3.456: "3.46", 4: "4", 10.25: "10.2", 13.77: "13.8", 4.6: "4.6"} {
		if p.String() != want {
			t.Errorf("pH %v: %s, want %s", float64(p), p, want)
		}
	}
	known := len(plating.VesselWords())
	for v := range 256 {
		if word := plating.Vessel(v).String(); word == "" || v > known+1 && word != plating.Vessel(255).String() {
			t.Errorf("vessel %d: %q", v, word)
		}
	}
	for text, want := range map[string]string{"none of steel, copper": "a copper anode",
		"not lead; copper": "a copper anode",
		"no steel. Copper": "a copper anode", "alead": "", "zlead": "", "leada": "", "leadz": "",
		"lead1": "a lead anode"} {
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
	two := &plating.DangerError{Notes: []plating.Note{{Text: "a", Do: "b", Source: "c"}, {Text: "d", Do: "e",
		Source: "f"}}}
	if !strings.HasSuffix(two.Error(), "(and 1 more)") {
		t.Errorf("%q", two.Error())
	}
}

// TestPropertyTexts: pH and vessels read back what they write, refuse what is
// none, cut long texts in errors, and coats without a name are counted.
func TestPropertyTexts(t *testing.T) {
	for text, want := range map[string]plating.PH{"4.4": 4.4, "16": 16, "0.01": 0.01, "16.01": 0, "0": 0, "-1": 0,
		"NaN": 0,
		"Inf": 0, "acid": 0, "": 0, "4,4": 0} {
		got := plating.PH(7)
		err := got.UnmarshalText([]byte(text))
		if want == 0 {
			if err == nil || got != 7 {
				t.Errorf("pH %q: %v, %v", text, got, err)
			}
			continue
		}
		back, backErr := got.MarshalText()
		if err != nil || got != want || backErr != nil || string(back) != text {
			t.Errorf("pH %q: %v, %v, %s", text, got, err, back)
		}
	}
	if raw, err := plating.PH(math.NaN()).MarshalText(); err == nil || raw != nil {
		t.Errorf("NaN is written as %s", raw)
	}
	for n, cut := range map[int]bool{40: false, 41: true} {
		var p plating.PH
		var v plating.Vessel
		var bad *units.ValueError
		for _, err := range []error{p.UnmarshalText([]byte(strings.Repeat("x", n))),
			v.UnmarshalText([]byte(strings.Repeat("x", n)))} {
			if !errors.As(err, &bad) || strings.Contains(bad.Value, "…") != cut || strings.Count(bad.Value, "x") != 40 {
				t.Errorf("%d: %v", n, err)
			}
		}
	}
	for w, want := range map[plating.PHWindow]string{{}: "not given", {Low: 4}: "4", {High: 5}: "up to 5", {Low: 4,
		High: 4}: "4",
		{Low: 4, High: 4.6}: "4 to 4.6"} {
		if w.String() != want || w.Given() != (want != "not given") {
			t.Errorf("%+v: %s, %v, want %s", w, w, w.Given(), want)
		}
	}
	for text, want := range map[string]plating.Vessel{" Beaker ": plating.VesselGlass, "PVC": plating.VesselPlastic,
		"stainless": plating.VesselStainless, "cast iron": plating.VesselSteel, "galvanised": plating.VesselAluminium,
		"not given": plating.VesselNotGiven} {
		got := plating.VesselGlass
		if err := got.UnmarshalText([]byte(text)); err != nil || got != want {
			t.Errorf("%q: %v, %v", text, got, err)
		}
		raw, err := want.MarshalText()
		if err != nil || got.UnmarshalText(raw) != nil || got != want {
			t.Errorf("%s reads back as %s, %v", raw, got, err)
		}
	}
	if raw, err := plating.Vessel(200).MarshalText(); err == nil {
		t.Errorf("an unknown vessel is written as %s", raw)
	}
	// A coat is called by its name, else by its bath, else by its place.
	for i, c := range []struct{ name, bath, want string }{{"finish", "gold", "finish: "}, {"", "gold", "gold: "}, {"",
		"", "layer 2: "}} {
		good, bad := plain("one", "first", "Au", 100, 100, 0.02), plain(c.name, c.bath, "Au", 100, 100, 0.02)
		bad.Time = -1
		_, err := plating.EstimateSystem(plating.System{Parts: []plating.Item{{Count: 1, Area: 0.02}},
			Layers: []plating.Layer{good, bad}})
		if err == nil || !strings.HasPrefix(err.Error(), c.want) {
			t.Errorf("%d: %v", i, err)
		}
	}
}
