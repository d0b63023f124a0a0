package bath_test

import (
	"bytes"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

const bench = `{
 "format": "laydown baths 1",
 "baths": [{
   "key": "bench-gold",
   "name": "gold, acid cyanide, cobalt hardened, bench tank",
   "metal": "Au", "valence": 1,
   "use": ["finish"],
   "hazards": ["cyanide", "acid"],
   "density": {"low": "17 g/cm³", "high": "17.5 g/cm³", "source": "weighed coats", "seen": "measured"},
   "efficiency": {"low": "30 %", "high": 0.38, "source": "trial pieces", "seen": "measured"},
   "efficiency_lines": [
     {"temperature": "38 °C", "content": "8 g/L", "source": "trial pieces", "seen": "measured",
      "points": [{"current_density": "0.3 A/dm²", "efficiency": "40 %"},
                 {"current_density": "1 A/dm²", "low": "28 %", "high": "32 %"}]}],
   "composition": {"text": "as assayed", "seen": "from memory"}, "constituents": [
     {"metal": "Au", "valence": 1, "share": "99.5 %"}, {"inclusion": true, "share": 0.005}],
   "content": {"low": "6 g/L", "high": "8 g/L", "source": "analysis", "seen": "measured", "note": "kept there"},
   "temperature": {"low": "36 °C", "high": "40 °C", "seen": "from memory"},
   "current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²", "seen": "from memory"},
   "volts": {"low": "2 V", "high": "3 V", "seen": "from memory"},
   "pH": {"low": 4.2, "high": 4.6, "source": "meter", "seen": "measured"},
   "time": {"low": "5 min", "seen": "from memory"},
   "max_thickness": {"high": "5 µm", "seen": "from memory"},
   "anode_ratio": {"low": 1, "high": 2, "seen": "from memory"},
   "anode_kind": "insoluble",
   "anode": {"text": "platinised titanium", "seen": "from memory"},
   "agitation": {"text": "stirrer", "source": "seen", "seen": "measured"},
   "live_entry": true,
   "look": ["even colour"],
   "remarks": [{"text": "filter every month", "seen": "from memory"}]
 }]
}`

// TestPropertyRead: every field of the example arrives.
func TestPropertyRead(t *testing.T) {
	list, err := bath.Read(strings.NewReader(bench))
	if err != nil {
		t.Fatal(err)
	}
	b, err := bath.Find(list, "bench-gold")
	if err != nil {
		t.Fatal(err)
	}
	near(t, "density", float64(b.Density.Mid()), 17250, 1e-12)
	near(t, "efficiency", float64(b.Efficiency.High), 0.38, 1e-12)
	near(t, "temperature", b.Temperature.Mid().Celsius(), 38, 1e-12)
	near(t, "pH", float64(b.PH.Low), 4.2, 1e-12)
	near(t, "time", float64(b.Time.Low), 300, 1e-12)
	near(t, "thickness", float64(b.MaxThickness.High), 5e-6, 1e-12)
	near(t, "fine", float64(b.Fine()), 0.995, 1e-12)
	near(t, "current density", float64(b.CurrentDensity.High), 120, 1e-12)
	if b.Use != bath.UseFinish || b.Hazards != plating.HazardCyanide|plating.HazardAcid ||
		b.AnodeKind != bath.InsolubleAnode || !b.LiveEntry ||
		len(b.Look) != 1 || len(b.Remarks) != 1 || b.Anode.Text == "" || b.Agitation.Seen != origin.Measured ||
		b.Content.Note != "kept there" ||
		b.Density.Seen != origin.Measured || b.Density.Source != "weighed coats" || b.Temperature.Source != origin.Memory ||
		b.AnodeRatio.High != 2 ||
		b.Volts.High != 3 || len(b.Lines) != 1 || len(b.Lines[0].Points) != 2 || b.Lines[0].Points[1].High != 0.32 {
		t.Errorf("%+v", b)
	}
	if b.Confidence() != origin.FromMemory {
		t.Error("the composition is from memory")
	}
	if _, err := b.At(bath.OperatingPoint{CurrentDensity: 50, Temperature: units.Celsius(38), Content: 8}); err != nil {
		t.Error(err)
	}
	e, err := b.EfficiencyAt(bath.OperatingPoint{CurrentDensity: 65, Temperature: units.Celsius(38), Content: 8})
	if err != nil {
		t.Error(err)
	}
	near(t, "line", float64(e.High), 0.36, 1e-12)
}

var wrongs = []struct {
	name, old, new string
	line           int
	path, want     string
}{
	{"format", "laydown baths 1", "laydown job 1", 2, "format", `need "laydown baths 1"`},
	{"no baths", `"baths": [{`, `"bats": [{`, 3, "bats", `known here are format, baths`},
	{"unknown field", `"look"`, `"looks"`, 29, "baths[1].looks", "unknown field; known here are library, like, key"},
	{"no key", `"key": "bench-gold",`, ``, 3, "baths[1]", `need "key"`},
	{"key of the library", `bench-gold`, `gold-neutral`, 3, "baths[1]", "is taken"},
	{"blank name", `gold, acid cyanide, cobalt hardened, bench tank`, ` `, 3, "baths[1]", `need "key"`},
	{"no metal", `"metal": "Au", "valence": 1,
   "use"`, `"use"`, 3, "baths[1]", `field "metal" is missing`},
	{"metal a number", `"metal": "Au", "valence": 1,
   "use"`, `"metal": 79, "use"`, 6, "baths[1].metal", "need the symbol"},
	{"unknown metal", `"metal": "Au", "valence": 1,
   "use"`, `"metal": "Xx", "use"`, 6, "baths[1].metal", "unknown; need a symbol"},
	{"valence nine", `"valence": 1,
   "use"`, `"valence": 9, "use"`, 6, "baths[1].valence", "a whole number from 1 to 8"},
	{"use", `["finish"]`, `["flash"]`, 7, "baths[1].use[1]", "need one of strike, underplate, finish"},
	{"no use", `["finish"]`, `[]`, 7, "baths[1].use", "is empty"},
	{"hazard", `["cyanide", "acid"]`, `["poison"]`, 8, "baths[1].hazards[1]", "need one of cyanide, fluoride"},
	{"hazards left out", `"hazards": ["cyanide", "acid"],`, ``, 3, "baths[1]", `field "hazards" is missing`},
	{"density without unit", `"17 g/cm³"`, `17`, 9, "baths[1].density.low", "without a unit"},
	{"density of another kind", `"17 g/cm³"`, `"17 g/L"`, 9, "baths[1].density.low", "g/cm³"},
	{"density reversed", `"17 g/cm³"`, `"18 g/cm³"`, 9, "baths[1].density", "the low end first"},
	{"no ends", `"low": "36 °C", "high": "40 °C", `, ``, 18, "baths[1].temperature", `need "low" and "high"`},
	{"seen left out", `"high": "40 °C", "seen": "from memory"`, `"high": "40 °C"`, 18, "baths[1].temperature",
		`field "seen" is missing`},
	{"seen otherwise", `"high": "40 °C", "seen": "from memory"`, `"high": "40 °C", "seen": "heard"`, 18,
		"baths[1].temperature.seen", "need one of from memory, second hand, computed, published, given, measured"},
	{"source left out", `"source": "meter", `, ``, 21, "baths[1].pH", `field "source" is missing`},
	{"efficiency over one", `"high": 0.38`, `"high": 1.38`, 10, "baths[1].efficiency.high",
		"a fraction above 0 and at most 1"},
	{"efficiency zero", `"high": 0.38`, `"high": 0`, 10, "baths[1].efficiency.high", "a fraction above 0 and at most 1"},
	{"efficiency a word", `"high": 0.38`, `"high": "much"`, 10, "baths[1].efficiency.high", "no number"},
	{"pH 17", `"high": 4.6`, `"high": 17`, 21, "baths[1].pH.high", "a number above 0 and at most 16"},
	{"pH NaN", `"high": 4.6`, `"high": "NaN"`, 21, "baths[1].pH.high", "at most 16"},
	{"temperature below zero", `"36 °C"`, `"-300 °C"`, 18, "baths[1].temperature.low", "below absolute zero"},
	{"line without points", `"points": [{"current_density": "0.3 A/dm²", "efficiency": "40 %"},
                 {"current_density": "1 A/dm²", "low": "28 %", "high": "32 %"}]`, `"points": []`, 13,
		"baths[1].efficiency_lines[1].points", "is empty"},
	{"point without efficiency", `"0.3 A/dm²", "efficiency": "40 %"`, `"0.3 A/dm²"`, 13,
		"baths[1].efficiency_lines[1].points[1]", `need "current_density" and "efficiency"`},
	{"point without current density", `"current_density": "0.3 A/dm²", "efficiency"`, `"efficiency"`, 13,
		"baths[1].efficiency_lines[1].points[1]", `field "current_density" is missing`},
	{"points falling", `{"current_density": "1 A/dm²"`, `{"current_density": "0.2 A/dm²"`, 11,
		"baths[1].efficiency_lines",
		"point 2: current density 0.2 A/dm²: values that contradict; need a value above that of the point before"},
	{"shares of half", `"99.5 %"`, `"49.5 %"`, 15, "baths[1].constituents", "sum"},
	{"constituent of nothing", `{"inclusion": true, "share": 0.005}`, `{"share": 0.005}`, 16,
		"baths[1].constituents[2]", "need either"},
	{"anode kind", `"insoluble"`, `"inert"`, 25, "baths[1].anode_kind", "need one of not given, soluble, insoluble"},
	{"anode without text", `{"text": "platinised titanium", `, `{`, 26, "baths[1].anode", `need "text"`},
	{"look a number", `["even colour"]`, `[1]`, 29, "baths[1].look[1]", "need text in quotes"},
	{"line that says no source", `"content": "8 g/L", "source": "trial pieces", "seen": "measured"`,
		`"content": "8 g/L", "seen": "measured"`, 12, "baths[1].efficiency_lines[1]", `field "source" is missing`},
	{"line that says not how it was seen", `"content": "8 g/L", "source": "trial pieces", "seen": "measured"`,
		`"content": "8 g/L", "source": "trial pieces"`, 12, "baths[1].efficiency_lines[1]", `field "seen" is missing`},
	{"line that says nothing of it", `"content": "8 g/L", "source": "trial pieces", "seen": "measured"`,
		`"content": "8 g/L"`, 12, "baths[1].efficiency_lines[1]", `field "seen" is missing`},
	{"remark that says nothing of it", `{"text": "filter every month", "seen": "from memory"}`, `"filter every month"`,
		30, "baths[1].remarks[1]", `field "seen" is missing`},
	{"makeup that says nothing of it", `"look": ["even colour"],`,
		`"makeup": [{"name": "potassium citrate", "content": "60 g/L"}], "look": ["even colour"],`, 29,
		"baths[1].makeup[1].content", `field "seen" is missing`},
	{"alloy of half its density", `"17 g/cm³", "high": "17.5 g/cm³"`, `"1.7 g/cm³", "high": "17.5 g/cm³"`, 9,
		"baths[1].density", "of the metals of the deposit"},
	{"pH that is set", `"low": 4.2, "high": 4.6`, `"low": 4.2, "high": 4.6, "set": 4.4`, 21, "baths[1].pH.set",
		"its low and high end"},
	{"efficiency that is a list",
		`"efficiency": {"low": "30 %", "high": 0.38, "source": "trial pieces", "seen": "measured"}`,
		`"efficiency": [0.3]`, 10, "baths[1].efficiency", `an object with "low" and "high"`},
	{"library of a bath file", `"use": ["finish"],`, `"use": ["finish"], "volume": "5 L",`, 3, "baths[1]",
		"of a bath in a job"},
	{"twice", `"live_entry": true,`, `"live_entry": true, "live_entry": true,`, 28, "baths[1].live_entry", "given twice"},
	{"torn", `"look": ["even colour"],`, `"look": [`, 32, "", "not JSON"},
}

func TestPropertyReadWrong(t *testing.T) {
	for _, w := range wrongs {
		if strings.Count(bench, w.old) < 1 {
			t.Errorf("%s: nothing to replace", w.name)
			continue
		}
		_, err := bath.Read(strings.NewReader(strings.Replace(bench, w.old, w.new, 1)))
		var e *units.FileError
		if !errors.As(err, &e) {
			t.Errorf("%s: %v, want a *units.FileError", w.name, err)
			continue
		}
		if w.name != "torn" && e.Line != w.line || e.Path != w.path && w.name != "torn" ||
			!strings.Contains(e.What, w.want) {
			t.Errorf("%s: line %d, path %q: %s\nwant line %d, path %q, %q", w.name, e.Line, e.Path, e.What, w.line, w.path,
				w.want)
		}
	}
	for _, raw := range []string{"", "[]", "{", "\xff", `{"format": "laydown baths 1", "baths": []}`, bench + "x",
		strings.Repeat("[", 100)} {
		_, err := bath.Read(strings.NewReader(raw))
		var e *units.FileError
		if !errors.As(err, &e) || !strings.HasPrefix(err.Error(), "bath file") {
			t.Errorf("%.20q: %v", raw, err)
		}
	}
}

// FuzzRead: any bytes give baths or a *units.FileError. Baths can be estimated with
// finite numbers or a typed error.
func FuzzRead(f *testing.F) {
	f.Add([]byte(bench))
	for _, w := range wrongs {
		f.Add([]byte(strings.Replace(bench, w.old, w.new, 1)))
	}
	f.Fuzz(func(t *testing.T, raw []byte) {
		list, err := bath.Read(bytes.NewReader(raw))
		if err != nil {
			var e *units.FileError
			if !errors.As(err, &e) || e.What == "" || e.Line > 1+bytes.Count(raw, []byte("\n")) {
				t.Fatalf("error %v (%T)", err, err)
			}
			return
		}
		for _, b := range list {
			l := plating.Layer{Area: 0.01, MinThickness: 1e-6, Distribution: plating.Distribution{MinToAverage: 1}}
			s, err := bath.EstimateRange(l, b, bath.OperatingPoint{})
			var v *units.ValueError
			var r *units.RangeError
			if err != nil && !errors.As(err, &v) && !errors.As(err, &r) {
				t.Fatalf("error %v (%T)", err, err)
			}
			for _, x := range []float64{float64(s.Time.Low), float64(s.Time.High), float64(s.Mass.High),
				float64(s.Current.High)} {
				if math.IsNaN(x) || math.IsInf(x, 0) || x < 0 {
					t.Fatalf("%v", s)
				}
			}
			if b.Text() == "" {
				t.Fatal("no page")
			}
		}
	})
}
