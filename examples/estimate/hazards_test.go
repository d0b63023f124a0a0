package main

import (
	"encoding/json"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/testdata"
)

// A line is a job with a sequence of its own, which a test edits.
type line struct {
	substrate, more string // more: further fields of the job
	layers          []string
	steps           []string
}

// text is the job file.
func (l *line) text() string {
	return fmt.Sprintf(`{"format": "laydown job 1", "job": "clock part", "substrate": %q, "parts": [{"area": "1 dm²"}]%s,
  "layers": [%s],
  "sequence": [%s]}`, l.substrate, l.more, strings.Join(l.layers, ",\n    "), strings.Join(l.steps, ",\n    "))
}

func (l *line) cut(i, n int)           { l.steps = append(l.steps[:i:i], l.steps[i+n:]...) }
func (l *line) put(i int, s ...string) { l.steps = append(l.steps[:i:i], append(s, l.steps[i:]...)...) }
func (l *line) swap(old, replace string) { // in the steps
	for i := range l.steps {
		l.steps[i] = strings.ReplaceAll(l.steps[i], old, replace)
	}
}
func (l *line) layer(old, replace string) {
	for i := range l.layers {
		l.layers[i] = strings.ReplaceAll(l.layers[i], old, replace)
	}
}

const (
	soak      = `{"kind": "soak clean", "holds": "mild alkaline cleaner", "time": "3 min"}`
	rinse2    = `{"kind": "rinse", "stages": 2, "flow": "counterflow"}`
	rinse1    = `{"kind": "rinse", "stages": 1, "flow": "running"}`
	weakDip   = `{"kind": "activate", "holds": "weak sulfuric acid", "hazards": ["acid"], "mild": true, "does": ["deoxidise"], "time": "10 s"}`
	strongDip = `{"kind": "activate", "holds": "sulfuric acid, 10 %", "hazards": ["acid"], "does": ["deoxidise"], "time": "15 s"}`
	leadDip   = `{"kind": "activate", "holds": "fluoboric acid, 10 %", "hazards": ["acid", "fluoborate"], "vessel": "plastic", "does": ["deoxidise"], "time": "20 s"}`
	dragOut   = `{"kind": "drag-out rinse"}`
	final     = `{"kind": "final rinse", "deionised": true}`
	dry       = `{"kind": "dry", "holds": "warm air"}`
	nickel    = `{"name": "nickel", "bath": {"library": "nickel-watts"}, "min_to_average": 0.6, "min_thickness": "5 µm"}`
)

func layerOf(name, role, bath, set string) string {
	return fmt.Sprintf(`{"name": %q, "role": %q, "bath": %s, "min_to_average": 0.6, %s}`, name, role, bath, set)
}

// zincLine lays cyanide copper and nickel on a zinc ornament; nothing is wrong with it.
func zincLine() *line {
	return &line{substrate: "zinc die casting", layers: []string{layerOf("copper", "strike",
		`{"library": "copper-cyanide-build"}`, `"min_thickness": "2.5 µm"`), nickel},
		steps: []string{soak, rinse2, weakDip, rinse2, `{"layer": "copper", "live_entry": true}`, rinse2,
			`{"layer": "nickel"}`, rinse2, final, dry}}
}

// silverLine lays silver on leaded brass over a strike.
func silverLine() *line {
	return &line{substrate: "leaded brass", layers: []string{layerOf("strike", "strike", `{"library": "silver-strike"}`,
		`"time": "15 s"`),
		layerOf("silver", "finish", `{"library": "silver-cyanide"}`, `"min_thickness": "5 µm"`)},
		steps: []string{soak, rinse2, leadDip, rinse2, rinse1, `{"layer": "strike", "live_entry": true}`,
			`{"layer": "silver"}`, dragOut, rinse2, final, dry}}
}

// goldLine lays nickel, a strike and hard gold on leaded brass.
func goldLine() *line {
	return &line{substrate: "leaded brass", layers: []string{strings.Replace(nickel, `"bath"`,
		`"role": "underplate", "bath"`, 1),
		layerOf("strike", "strike", `{"library": "gold-acid-strike"}`, `"time": "20 s"`), layerOf("gold", "finish",
			`{"library": "gold-acid-cobalt"}`, `"min_thickness": "1 µm"`)},
		steps: []string{soak, rinse2, leadDip, rinse2, `{"layer": "nickel"}`, rinse2,
			`{"layer": "strike", "live_entry": true}`, dragOut, rinse2, `{"layer": "gold"}`, dragOut, rinse2, final, dry}}
}

// springLine lays nickel on a hardened spring.
func springLine() *line {
	return &line{substrate: "high-carbon steel", more: `, "tensile_strength": "1750 MPa"`, layers: []string{nickel},
		steps: []string{`{"kind": "stress relief", "holds": "oven", "temperature": "200 °C", "time": "2 h"}`, soak, rinse2,
			`{"kind": "electroclean", "holds": "electrocleaner", "hazards": ["caustic"], "polarity": "anodic", "time": "60 s"}`,
			rinse2, strongDip, rinse2,
			`{"layer": "nickel"}`, rinse2, final, dry,
			`{"kind": "bake", "holds": "oven", "temperature": {"low": "200 °C", "high": "210 °C"}, "time": "22 h"}`}}
}

// sulfiteLine lays nickel, palladium and sulfite gold on leaded brass.
func sulfiteLine() *line {
	return &line{substrate: "leaded brass", layers: []string{strings.Replace(nickel, `"bath"`,
		`"role": "underplate", "bath"`, 1),
		layerOf("palladium", "underplate", `{"library": "palladium-sulfamate"}`, `"min_thickness": "0.2 µm"`),
		layerOf("gold", "finish", `{"library": "gold-sulfite"}`, `"min_thickness": "1 µm"`)},
		steps: []string{soak, rinse2, leadDip, rinse2, `{"layer": "nickel"}`, rinse2, `{"layer": "palladium"}`, dragOut,
			rinse2, `{"layer": "gold"}`, dragOut, rinse2, final, dry}}
}

// own makes the last layer's bath one of the shop's own.
func own(l *line, bath string) {
	l.layers[len(l.layers)-1] = layerOf(map[bool]string{true: "silver", false: "gold"}[strings.Contains(bath, `"Ag"`)],
		"finish", bath, `"min_thickness": "1 µm", "current_density": "0.5 A/dm²"`)
}

const ownGold = `{"name": "gold, acid cyanide", "metal": "Au", "valence": 1, "density": "17 g/cm³", "efficiency": "35 %", "hazards": ["cyanide", "acid"], "pH": 4.2, "anode_kind": "insoluble"}`

// dangers are edits of a job that nothing is wrong with. Each brings a finding,
// note or refusal with the word; level is what it must be at least.
var dangers = []struct {
	name  string
	base  func() *line
	edit  func(*line)
	word  string
	level plating.Severity // stop; warning or caution; info: the file or job is refused
	safe  func(*line)      // the neighbour: nothing of the word; nil: the base
}{
	{"no rinse between cyanide copper and nickel", zincLine, func(l *line) { l.cut(5, 1) }, "hydrogen cyanide",
		plating.SeverityStop, nil},
	{"one stage between them", zincLine, func(l *line) { l.steps[5] = rinse1 }, "hydrogen cyanide", plating.SeverityStop,
		func(l *line) { l.steps[5] = rinse1; l.put(6, rinse1) }},
	{"still water between them", zincLine,
		func(l *line) { l.steps[5] = `{"kind": "rinse", "stages": 2, "flow": "still"}` }, "hydrogen cyanide",
		plating.SeverityStop, nil},
	{"acid water before cyanide", zincLine,
		func(l *line) { l.steps[3] = `{"kind": "rinse", "stages": 2, "flow": "running", "acidified": true}` },
		"hydrogen cyanide", plating.SeverityStop, nil},
	{"one station behind acid and cyanide", zincLine, func(l *line) {
		l.swap(`"flow": "counterflow"`,
			`"flow": "counterflow", "station": "A"`)
	}, "same water", plating.SeverityStop, nil},
	{"strong dip on zinc", zincLine, func(l *line) { l.steps[2] = strongDip }, "leaves smut", plating.SeverityWarning,
		nil},
	{"hot caustic on zinc", zincLine, func(l *line) {
		l.put(2, `{"kind": "electroclean", "holds": "electrocleaner", "hazards": ["caustic", "hot"], "polarity": "anodic", "time": "30 s"}`, rinse2)
	}, "hot caustic dissolves zinc", plating.SeverityWarning, func(l *line) {
		l.put(2, `{"kind": "electroclean", "holds": "electrocleaner, inhibited for zinc", "mild": true, "hazards": ["caustic", "hot"], "polarity": "anodic", "time": "30 s"}`, rinse2)
	}},
	{"zinc enters without current", zincLine, func(l *line) { l.swap(`, "live_entry": true`, "") }, "without current",
		plating.SeverityWarning, nil},
	{"acid nickel straight on zinc", zincLine, func(l *line) { l.layers = l.layers[1:]; l.cut(4, 2) },
		"dissolves the zinc", plating.SeverityWarning, nil},
	{"acid copper straight on zinc", zincLine, func(l *line) { l.layer("copper-cyanide-build", "copper-acid") },
		"immersion", plating.SeverityWarning, nil},
	{"not cleaned", zincLine, func(l *line) { l.cut(0, 2) }, "grease", plating.SeverityWarning, nil},
	{"fluoride in glass", silverLine, func(l *line) { l.swap(`"vessel": "plastic"`, `"vessel": "glass"`) },
		"fluoride in glass", plating.SeverityStop, nil},
	{"dip straight into the silver strike", silverLine, func(l *line) { l.cut(3, 2) }, "hydrogen cyanide",
		plating.SeverityStop, nil},
	{"one rinse of two stages before the silver strike", silverLine, func(l *line) { l.cut(4, 1) },
		"reaches free cyanide", plating.SeverityCaution, nil},
	{"acid final rinse behind cyanide", silverLine, func(l *line) {
		l.cut(8, 1)
		l.swap(`"final rinse", "deionised": true`, `"final rinse", "deionised": true, "acidified": true`)
	},
		"hydrogen cyanide", plating.SeverityStop, nil},
	{"sulfuric dip on leaded brass", silverLine, func(l *line) { l.steps[2] = strongDip }, "lead sulfate",
		plating.SeverityWarning, nil},
	{"silver without a strike", silverLine, func(l *line) { l.layers = l.layers[1:]; l.cut(5, 1) }, "immersion",
		plating.SeverityWarning, nil},
	{"no drag-out tank behind silver", silverLine, func(l *line) { l.cut(7, 1) }, "drag-out tank",
		plating.SeverityWarning, nil},
	{"silver cyanide said to be acid", silverLine, func(l *line) {
		own(l, `{"name": "silver", "metal": "Ag", "efficiency": "98 %", "hazards": ["cyanide", "acid"], "pH": 5}`)
	}, "hydrogen cyanide comes off", plating.SeverityStop, func(l *line) {
		own(l, `{"name": "silver", "metal": "Ag", "efficiency": "98 %", "hazards": ["cyanide"], "pH": 12}`)
	}},
	{"KCN in the name, nothing in the list, acid before it", silverLine, func(l *line) {
		l.layers, l.steps = l.layers[1:], []string{soak, rinse2, leadDip, rinse1, `{"layer": "silver", "live_entry": true}`,
			dragOut, rinse2, final, dry}
		own(l, `{"name": "silver, KCN based", "metal": "Ag", "efficiency": "98 %", "hazards": []}`)
	}, "hydrogen cyanide", plating.SeverityStop, nil},
	{"prussiate in the name, nothing in the list", silverLine, func(l *line) {
		l.cut(8, 1)
		l.put(8, strongDip)
		own(l, `{"name": "silver, prussiate", "metal": "Ag", "efficiency": "98 %", "hazards": []}`)
	}, "hydrogen cyanide", plating.SeverityStop, nil},
	{"gold(I) at pH 1", goldLine, func(l *line) { own(l, strings.Replace(ownGold, "4.2", "1", 1)) }, "hydrogen cyanide",
		plating.SeverityStop, func(l *line) { own(l, ownGold) }},
	{"gold(I) at pH 2.9", goldLine, func(l *line) { own(l, strings.Replace(ownGold, "4.2", "2.9", 1)) },
		"hydrogen cyanide", plating.SeverityStop, func(l *line) { own(l, strings.Replace(ownGold, "4.2", "3.1", 1)) }},
	{"gold(I) at pH 2 to 4", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, "4.2", `{"low": 2, "high": 4}`,
			1))
	}, "hydrogen cyanide", plating.SeverityStop, nil},
	{"hard gold at pH 1.5 to 2", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, "4.2",
			`{"low": 1.5, "high": 2}`, 1))
	}, "hydrogen cyanide", plating.SeverityStop, nil},
	{"the pH not given", goldLine, func(l *line) { own(l, strings.Replace(ownGold, `, "pH": 4.2`, "", 1)) },
		"pH is not given", plating.SeverityStop, func(l *line) { own(l, ownGold) }},
	{"gold(III) with the salt of gold(I)", goldLine, func(l *line) {
		own(l, strings.NewReplacer(`"valence": 1`, `"valence": 3, "salt": "KAu(CN)2"`, "4.2", "1").Replace(ownGold))
	}, "holds gold(I)", plating.SeverityStop, func(l *line) {
		own(l, strings.NewReplacer(`"valence": 1`, `"valence": 3, "salt": "KAu(CN)4"`, "4.2", "1").Replace(ownGold))
	}},
	{"gold(I) with the salt of gold(III)", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"valence": 1`,
			`"valence": 1, "salt": "KAu(CN)4"`, 1))
	}, "holds gold(III)", plating.SeverityStop, nil},
	{"prussiate and citric acid in the name only, no pH", goldLine, func(l *line) {
		own(l, `{"name": "gold, prussiate, citric acid", "metal": "Au", "efficiency": "35 %", "hazards": []}`)
	}, "hydrogen cyanide", plating.SeverityStop, nil},
	{"stainless steel anode in acid gold", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`,
			`"anode_kind": "insoluble", "anode": "stainless steel"`, 1))
	},
		"stainless steel anode", plating.SeverityWarning, func(l *line) {
			own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`,
				`"anode_kind": "insoluble", "anode": "platinised titanium"`, 1))
		}},
	{"copper anode in gold", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`, `"anode": "copper"`, 1))
	}, "copper anode", plating.SeverityWarning, nil},
	{"bare titanium anode", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`, `"anode": "titanium"`, 1))
	}, "bare titanium", plating.SeverityWarning, nil},
	{"lead anode in gold", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`,
			`"anode": "lead"`, 1))
	}, "lead anode", plating.SeverityWarning, nil},
	{"graphite in hydrochloric acid", goldLine, func(l *line) {
		own(l, `{"name": "gold, HCl strike", "metal": "Au", "valence": 3, "efficiency": "35 %", "hazards": ["acid"], "anode": "graphite"}`)
	}, "chlorine", plating.SeverityWarning, nil},
	{"platinised titanium in fluoborate", goldLine, func(l *line) {
		l.layer(`{"library": "nickel-watts"}`,
			`{"name": "nickel, fluoborate", "metal": "Ni", "efficiency": "95 %", "hazards": ["acid", "nickel", "fluoborate"], "anode": "platinised titanium", "current_density": {"low": "1 A/dm²", "high": "5 A/dm²"}}`)
		l.layer(`"min_thickness": "5 µm"`, `"min_thickness": "5 µm", "current_density": "3 A/dm²"`)
	}, "titanium anode in fluoride", plating.SeverityWarning, nil},
	{"acid gold in a steel tank", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`,
			`"vessel": "steel"`, 1))
	}, "eats through", plating.SeverityStop, func(l *line) {
		own(l, strings.Replace(ownGold, `"anode_kind": "insoluble"`, `"vessel": "glass"`, 1))
	}},
	{"strong acid straight into the gold strike", goldLine, func(l *line) { l.steps[5] = strongDip }, "hydrogen cyanide",
		plating.SeverityStop, nil},
	{"gold cyanide straight into strong acid", goldLine, func(l *line) { l.steps[8] = strongDip }, "hydrogen cyanide",
		plating.SeverityStop, nil},
	{"gold on brass without a barrier", goldLine, func(l *line) { l.layers = l.layers[1:]; l.cut(4, 2) },
		"diffuses into the gold", plating.SeverityWarning, nil},
	{"nickel against the skin", goldLine, func(l *line) { l.more = `, "skin_contact": true` }, "0.5 µg/cm²",
		plating.SeverityWarning, nil},
	{"the strike waits in air", goldLine, func(l *line) {
		l.swap(`{"layer": "nickel"}`,
			`{"layer": "nickel", "wait": "5 min"}`)
	}, "passive film", plating.SeverityWarning, nil},
	{"liver of sulfur before acid", goldLine, func(l *line) {
		l.put(2,
			`{"kind": "activate", "holds": "liver of sulfur", "hazards": ["sulfide"]}`)
	}, "hydrogen sulfide",
		plating.SeverityStop, func(l *line) {
			l.put(2, `{"kind": "activate", "holds": "liver of sulfur", "hazards": ["sulfide"]}`, rinse2)
		}},
	{"bleach before acid", goldLine, func(l *line) { l.put(2, `{"kind": "activate", "holds": "bleach"}`) }, "chlorine",
		plating.SeverityStop, func(l *line) { l.put(2, `{"kind": "activate", "holds": "bleach"}`, rinse2) }},
	{"bleach and acid in one tank", goldLine, func(l *line) {
		l.put(2, `{"kind": "activate", "holds": "bleach, hydrochloric acid", "hazards": ["acid"]}`, rinse2)
	}, "chlorine", plating.SeverityStop, nil},
	{"bleach before ammonia", sulfiteLine, func(l *line) { l.put(6, `{"kind": "activate", "holds": "bleach"}`) },
		"chloramine", plating.SeverityStop, nil},
	{"acetone before nitric acid", goldLine, func(l *line) {
		l.put(0, `{"kind": "soak clean", "holds": "acetone"}`,
			`{"kind": "activate", "holds": "nitric acid, 10 %", "hazards": ["acid", "nitric"], "mild": true, "time": "5 s"}`,
			rinse2)
	}, "brown fume", plating.SeverityStop, func(l *line) {
		l.put(0, `{"kind": "soak clean", "holds": "acetone"}`, rinse2,
			`{"kind": "activate", "holds": "nitric acid, 1 %", "hazards": ["acid", "nitric"], "mild": true, "time": "5 s"}`,
			rinse2)
	}},
	{"chromic acid behind a solvent", goldLine, func(l *line) {
		l.put(0, `{"kind": "soak clean", "holds": "white spirit"}`,
			`{"kind": "activate", "holds": "chromic acid, 1 %", "hazards": ["acid", "chromate"], "mild": true, "time": "5 s"}`,
			rinse2)
	}, "make fire", plating.SeverityStop, nil},
	{"peroxide before cyanide", silverLine, func(l *line) {
		l.put(5,
			`{"kind": "activate", "holds": "hydrogen peroxide, 3 %"}`)
	}, "can explode", plating.SeverityStop, nil},
	{"brass left in nitric acid", goldLine, func(l *line) {
		l.put(2, `{"kind": "activate", "holds": "nitric acid, 50 %", "hazards": ["acid", "nitric"], "time": "60 s"}`,
			rinse2)
	}, "nitric acid dissolves copper", plating.SeverityWarning, nil},
	{"acid straight into sulfite gold", sulfiteLine, func(l *line) { l.steps[8] = strongDip }, "sulfur dioxide",
		plating.SeverityStop, nil},
	{"sulfite gold made acid", sulfiteLine, func(l *line) {
		own(l, `{"name": "gold, sulfite", "metal": "Au", "efficiency": "98 %", "hazards": ["sulfite", "acid"], "pH": 4}`)
	}, "sulfur dioxide", plating.SeverityStop, func(l *line) {
		own(l, `{"name": "gold, sulfite", "metal": "Au", "efficiency": "98 %", "hazards": ["sulfite"], "pH": 9}`)
	}},
	{"palladium straight on brass", sulfiteLine, func(l *line) { l.layers = l.layers[1:]; l.cut(4, 2) }, "blackens",
		plating.SeverityWarning, nil},
	{"bake too short for the steel", springLine, func(l *line) { l.swap(`"22 h"`, `"7.6 h"`) }, "too short",
		plating.SeverityWarning, nil},
	{"bake too cool", springLine, func(l *line) {
		l.swap(`"low": "200 °C", "high": "210 °C"`,
			`"low": "150 °C", "high": "160 °C"`)
	}, "too cool", plating.SeverityWarning, nil},
	{"bake a day late", springLine, func(l *line) {
		l.swap(`"dry", "holds": "warm air"`,
			`"dry", "holds": "warm air", "wait": "24 h"`)
	}, "after the last coat", plating.SeverityWarning, nil},
	{"no bake", springLine, func(l *line) { l.cut(len(l.steps)-1, 1) }, "not baked", plating.SeverityWarning, nil},
	{"no stress relief", springLine, func(l *line) { l.cut(0, 1) }, "without stress relief", plating.SeverityWarning,
		func(l *line) { l.cut(0, 1); l.more += `, "stress_relieved": true` }},
	{"strength not given", springLine, func(l *line) { l.more = "" }, "is not given", plating.SeverityStop,
		func(l *line) { l.more = `, "hardness": "50 HRC"` }},
	{"a spring cleaned cathodically", springLine, func(l *line) { l.swap(`"anodic"`, `"cathodic"`) }, "drives hydrogen",
		plating.SeverityWarning, nil},
	{"an electroclean without a pole", springLine, func(l *line) { l.swap(`"polarity": "anodic", `, "") },
		"cathodic or anodic", plating.SeverityInfo, nil},
	{"a dip that does not say what it holds", springLine, func(l *line) {
		l.swap(`"holds": "sulfuric acid, 10 %", `,
			"")
	},
		"what the tank holds", plating.SeverityInfo, nil},
	{"an unknown base metal", goldLine, func(l *line) { l.substrate = "unobtainium" }, "one of stainless steel",
		plating.SeverityInfo, nil},
	{"steel that may be either", springLine, func(l *line) { l.substrate = "steel" }, "low-carbon steel, or high-carbon",
		plating.SeverityInfo, nil},
	{"an unknown hazard", goldLine, func(l *line) { own(l, strings.Replace(ownGold, `"acid"]`, `"sour"]`, 1)) },
		"need one of cyanide", plating.SeverityInfo, nil},
	{"no list of hazards", goldLine, func(l *line) {
		own(l, strings.Replace(ownGold, `"hazards": ["cyanide", "acid"], `,
			"", 1))
	}, `"hazards" is missing`, plating.SeverityInfo, nil},
}

// said gathers what a job's sheet says of dangers, at or above a severity: from
// the library's findings and notes.
func said(s *job.Sheet, level plating.Severity) string {
	var b strings.Builder
	for _, f := range s.Findings {
		if f.Severity >= level {
			fmt.Fprintln(&b, f)
		}
	}
	for _, c := range s.Coats() {
		for _, n := range slices.Concat(c.Before, c.Notes) {
			if n.Severity >= level {
				fmt.Fprintln(&b, n)
			}
		}
	}
	return b.String()
}

// printed runs the program on a job and returns text, page and JSON, blanks folded.
func printed(t *testing.T, job string) (status int, text, page, raw, bad string) {
	t.Helper()
	name := filepath.Join(t.TempDir(), "sheet.html")
	fold := func(s string) string { return strings.Join(strings.Fields(s), " ") }
	status, text, bad = call(t, job, "-html", name, "-")
	_, raw, _ = call(t, job, "-json", "-")
	written, err := os.ReadFile(name)
	if err != nil && text != "" {
		t.Fatal(err)
	}
	return status, fold(text), fold(html.UnescapeString(string(written))), raw, fold(bad)
}

// TestPropertyDangers: each dangerous edit is found by the library, and says so in
// the text, on the page and in JSON alike; a sheet that stops sets nothing; the
// safe neighbour says nothing of it.
func TestPropertyDangers(t *testing.T) {
	testdata.SlowOnly(t)
	if len(dangers) < 60 {
		t.Errorf("only %d edits", len(dangers))
	}
	for _, d := range dangers {
		t.Run(d.name, func(t *testing.T) {
			l := d.base()
			d.edit(l)
			status, text, page, raw, bad := printed(t, l.text())
			if d.level == plating.SeverityInfo {
				if status != 1 || text != "" || !strings.Contains(bad, d.word) {
					t.Errorf("status %d, %s\n%s", status, bad, text)
				}
			} else {
				j, err := job.Read(strings.NewReader(l.text()), nil)
				if err != nil {
					t.Fatal(err)
				}
				s, err := j.Sheet()
				if err != nil {
					t.Fatal(err)
				}
				level := min(d.level, plating.SeverityWarning)
				if d.level == plating.SeverityStop {
					level = plating.SeverityStop
				}
				if !strings.Contains(strings.ToLower(said(&s, level)), strings.ToLower(d.word)) {
					t.Errorf("the library says nothing of %q: %v", d.word, s.Findings)
				}
				for where, what := range map[string]string{"the text": text, "the page": page, "JSON": raw} {
					if !strings.Contains(strings.ToLower(what), strings.ToLower(d.word)) {
						t.Errorf("%s says nothing of %q", where, d.word)
					}
				}
				if stop := d.level == plating.SeverityStop; stop {
					if status != 1 || !strings.Contains(text, "STOP ") || !strings.Contains(raw, `"stop": true`) {
						t.Errorf("status %d, no STOP:\n%.400s", status, text)
					}
					for _, figure := range []string{`"current": "[^"]`, `"plating_time": "[^"]`, `"time": "[^"]`, `"salt_mass"`,
						`"total"`} {
						if regexp.MustCompile(figure).MatchString(raw) {
							t.Errorf("JSON of a sheet that stops gives %s", figure)
						}
					}
					for _, set := range []string{" set ", "To bring it back", "total EUR", "] time"} {
						if strings.Contains(text, set) || strings.Contains(page, "<td class=\"v\">"+set) {
							t.Errorf("a sheet that stops prints %q", set)
						}
					}
				}
			}
			l = d.base()
			if d.safe != nil {
				d.safe(l)
			}
			status, text, _, raw, bad = printed(t, l.text())
			if status != 0 || !strings.Contains(text, "] set ") || !json.Valid([]byte(raw)) {
				t.Fatalf("the safe neighbour: status %d, %s\n%.600s", status, bad, text)
			}
			j, err := job.Read(strings.NewReader(l.text()), nil)
			if err != nil {
				t.Fatal(err)
			}
			s, err := j.Sheet()
			if err != nil {
				t.Fatal(err)
			}
			if quiet := said(&s, plating.SeverityCaution); strings.Contains(strings.ToLower(quiet), strings.ToLower(d.word)) {
				t.Errorf("the safe neighbour speaks of %q: %s", d.word, quiet)
			}
		})
	}
}

// TestPropertyHazardPlaces: each hazard of each tank is named in the line under
// that tank's name, in the text, on the page and in JSON; in front stand four
// lines, and on the whole default sheet ten at most.
func TestPropertyHazardPlaces(t *testing.T) {
	for _, name := range []string{"hands", "bezels", "finial"} {
		raw, err := os.ReadFile(shipped(t, name))
		if err != nil {
			t.Fatal(err)
		}
		_, text, page, written, _ := printed(t, string(raw))
		j, err := job.Read(strings.NewReader(string(raw)), nil)
		if err != nil {
			t.Fatal(err)
		}
		s, err := j.Sheet()
		if err != nil {
			t.Fatal(err)
		}
		var report result
		if err := json.Unmarshal([]byte(written), &report); err != nil || len(report.Tanks) != len(s.Stops) {
			t.Fatalf("%s: %d tanks in JSON, %v", name, len(report.Tanks), err)
		}
		for i := range s.Stops {
			c := &s.Stops[i].Tank
			at := plating.TankLine(c.Cautions)
			if c.Hazards != 0 && c.Water == "" && (at == "" || !strings.Contains(text, at) || !strings.Contains(page, at)) {
				t.Errorf("%s: tank %d, %s: %q is missing", name, i+1, c.Name, at)
			}
			for _, row := range plating.HazardTable() {
				if !c.Hazards.Has(row.Flag) || c.Water != "" {
					continue
				}
				word := strings.ToUpper(strings.Split(row.Short, ":")[0])
				bound := c.Hazards.Has(plating.HazardCyanide|plating.HazardAcid) && (row.Flag == plating.HazardCyanide ||
					row.Flag == plating.HazardAcid)
				acid := row.Flag == plating.HazardAcid && c.Hazards&(plating.HazardNitric|plating.HazardHydrogenChloride) != 0
				if !bound && !acid && !strings.Contains(at, word) || bound && !strings.Contains(at, "CYANIDE IN ACID") {
					t.Errorf("%s: tank %d, %s: no word of %s in %q", name, i+1, c.Name, row.Word, at)
				}
			}
			if len(report.Tanks[i].Cautions) != len(c.Cautions) {
				t.Errorf("%s: tank %d: %d cautions in JSON, %d on the card", name, i+1, len(report.Tanks[i].Cautions),
					len(c.Cautions))
			}
		}
		_, lines, _ := call(t, "", shipped(t, name))
		front, all := 0, 0
		head, _, _ := strings.Cut(lines, "\nSequence\n")
		for _, line := range strings.Split(lines, "\n") {
			if strings.HasPrefix(strings.TrimSpace(line), "!") {
				all++
			}
		}
		front = strings.Count(head, "\n   ! ")
		if front > 4 || name == "hands" && all > 10 {
			t.Errorf("%s: %d caution lines in front, %d on the sheet", name, front, all)
		}
	}
}
