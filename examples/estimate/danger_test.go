package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"html"
	"os"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strings"
	"sync"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Tanks that stand in most of the lines below. Each ends in a comma; edited takes
// the last one of a list away.
const (
	washTank = `    {"kind": "soak clean", "holds": "mild alkaline cleaner"},
    {"kind": "rinse", "name": "water 1", "stages": 2, "flow": "counterflow"},
`
	leadTank = `    {"kind": "activate", "holds": "fluoboric acid, 10 %", "hazards": ["acid", "fluoborate"],
     "vessel": "plastic", "does": ["deoxidise"], "time": "20 s"},
    {"kind": "rinse", "name": "water 2", "stages": 2, "flow": "counterflow"},
`
	lastTanks = `    {"kind": "rinse", "name": "water 9", "stages": 2, "flow": "counterflow"},
    {"kind": "final rinse", "name": "last water", "deionised": true},
    {"kind": "dry", "holds": "warm air"},
`
	nickelTank = `    {"layer": "nickel"},
    {"kind": "rinse", "name": "water 5", "stages": 2, "flow": "counterflow"},
`
	// A strong dip, to be put where it must not stand.
	pickleTank = `    {"kind": "activate", "holds": "sulfuric acid, 10 %", "hazards": ["acid"], "does": ["deoxidise"],
     "time": "15 s"},
`
	weakTank = `    {"kind": "activate", "holds": "weak sulfuric acid, 1 %", "hazards": ["acid"], "mild": true,
     "does": ["deoxidise"], "time": "10 s"},
`
	waterTank = `    {"kind": "rinse", "name": "more water", "stages": 2, "flow": "counterflow"},
`
	oneWater = `    {"kind": "rinse", "name": "same water", "stages": 1, "flow": "running"},
`
	sulfiteTank = `    {"kind": "rinse", "name": "water 8", "stages": 2, "flow": "counterflow"},
    {"layer": "gold"},
    {"kind": "drag-out rinse", "name": "drag-out 3"},
`
	fourthWater = `    {"kind": "rinse", "name": "water 4", "stages": 1, "flow": "running"},
`
)

// Coats of the lines below. The shop's own gold baths say all that they are judged by.
const (
	nickelCoat = `    {"name": "nickel", "role": "underplate", "min_to_average": 0.6, "min_thickness": "4 µm",
     "bath": {"library": "nickel-watts", "content": "75 g/L", "volume": "20 L"}}`
	nickelLast = `    {"name": "nickel", "min_to_average": 0.6, "min_thickness": "4 µm",
     "bath": {"library": "nickel-watts", "content": "75 g/L", "volume": "20 L"}}`
	copperCoat = `    {"name": "copper", "role": "strike", "min_to_average": 0.6, "min_thickness": "2.5 µm",
     "bath": {"library": "copper-cyanide-build", "content": "29.8 g/L", "volume": "20 L"}}`
	goldStrikeCoat = `    {"name": "gold strike", "role": "strike", "min_to_average": 0.6, "time": "21 s",
     "current_density": "2 A/dm²", "bath": {"name": "gold, acid cyanide strike", "metal": "Au",
      "valence": 1, "efficiency": "12 %", "content": "1.5 g/L", "volume": "5 L",
      "current_density": {"low": "1 A/dm²", "high": "4 A/dm²"},
      "anode_kind": "insoluble", "anode": "platinised titanium", "vessel": "plastic", "salt": "KAu(CN)2",
      "hazards": ["cyanide", "acid"], "pH": 3.6}}`
	hardGoldCoat = `    {"name": "hard gold", "min_to_average": 0.6, "min_thickness": "1 µm", "current_density": "0.5 A/dm²",
     "bath": {"name": "gold, acid cyanide", "metal": "Au", "valence": 1, "density": "17.3 g/cm³", "efficiency": "35 %",
      "content": "8 g/L", "volume": "5 L", "current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"}, "anode_kind": "insoluble",
      "anode": "platinised titanium mesh", "vessel": "glass", "salt": "KAu(CN)2",
      "hazards": ["cyanide", "acid"], "pH": {"low": 4.2, "high": 4.6}}}`
	silverStrikeCoat = `    {"name": "silver strike", "role": "strike", "min_to_average": 0.5, "time": "16 s",
     "bath": {"library": "silver-strike", "content": "3 g/L", "volume": "4 L"}}`
	silverCoat = `    {"name": "silver", "min_to_average": 0.5, "min_thickness": "5 µm", "current_density": "0.8 A/dm²",
     "bath": {"name": "silver, cyanide", "metal": "Ag", "efficiency": "98 %", "content": "30 g/L", "volume": "8 L",
      "current_density": {"low": "0.4 A/dm²", "high": "1.6 A/dm²"}, "anode": "silver", "salt": "KAg(CN)2",
      "hazards": ["cyanide"], "pH": 12}}`
	copperStrikeCoat = `    {"name": "copper strike", "role": "strike", "min_to_average": 0.6, "time": "65 s",
     "bath": {"library": "copper-cyanide-strike", "content": "21.3 g/L", "volume": "12 L"}}`
	acidCopperCoat = `    {"name": "copper", "min_to_average": 0.5, "min_thickness": "10 µm",
     "bath": {"library": "copper-acid", "content": "55 g/L", "volume": "20 L"}}`
	rhodiumCoat = `    {"name": "rhodium", "min_to_average": 0.6, "min_thickness": "0.2 µm",
     "bath": {"library": "rhodium-sulfate", "content": "2 g/L", "volume": "3 L"}}`
	palladiumCoat = `    {"name": "palladium", "role": "underplate", "min_to_average": 0.6, "min_thickness": "0.2 µm",
     "bath": {"library": "palladium-sulfamate", "volume": "3 L"}}`
	sulfiteCoat    = `    {"name": "gold", "min_to_average": 0.6, "min_thickness": "1 µm", "bath": {"library": "gold-sulfite"}}`
	ownSulfiteCoat = `    {"name": "gold", "min_to_average": 0.6, "min_thickness": "1 µm", "current_density": "0.3 A/dm²",
     "bath": {"name": "gold, sulfite", "metal": "Au", "efficiency": "98 %", "content": "10 g/L", "volume": "3 L",
      "current_density": {"low": "0.1 A/dm²", "high": "0.5 A/dm²"}, "anode_kind": "insoluble", "vessel": "glass",
      "hazards": ["sulfite"], "pH": 9}}`
)

// entry writes one tank as the lists below hold it.
func entry(tank string) string { return "    " + tank + ",\n" }

// lineOf writes a job of one part with a sequence of its own and a price.
func lineOf(part, substrate, more string, layers, tanks []string) string {
	return `{
  "format": "laydown job 1",
  "job": "` + part + `", "substrate": "` + substrate + `",` + more + `
  "parts": [{"name": "` + part + `", "count": 2, "area": "47.3 cm²"}],
  "layers": [
` + strings.Join(layers, ",\n") + `
  ],
  "sequence": [
` + strings.Join(tanks, "") + `  ],
  "price": {"currency": "EUR", "rounding": "half even",
    "metals": [{"metal": "Au", "price": "103.37", "per": "g", "as_of": "2026-11-20"},
      {"metal": "Ag", "price": "1.35", "per": "g", "as_of": "2026-11-20"},
      {"metal": "Pd", "price": "41.20", "per": "g", "as_of": "2026-11-20"},
      {"metal": "Rh", "price": "190.00", "per": "g", "as_of": "2026-11-20"}],
    "line_per_hour": "48.00", "handling": "20 s", "per_kilowatt_hour": "0.31", "rectifier": "80 %",
    "set_up": "18.00", "yield": "96 %", "margin": "30 %", "tax": "20 %"}
}
`
}

// benchJobs returns the jobs that the edits start from; nothing is wrong with any.
func benchJobs(t *testing.T) map[string]string {
	t.Helper()
	list := func(text ...string) []string { return text }
	water := func(n int) string {
		return fmt.Sprintf(entry(`{"kind": "rinse", "name": "water %d", "stages": 2, "flow": "counterflow"}`), n)
	}
	coat := func(name string) string { return entry(`{"layer": "` + name + `"}`) }
	live := func(name string) string { return entry(`{"layer": "` + name + `", "live_entry": true}`) }
	drags := entry(`{"kind": "drag-out rinse", "name": "drag-out"}`)
	again := entry(`{"kind": "drag-out rinse", "name": "drag-out 2"}`)
	anodic := entry(`{"kind": "electroclean", "holds": "electrocleaner", "hazards": ["caustic", "hot"],
     "polarity": "anodic", "time": "62 s"}`)
	shortDip := entry(`{"kind": "activate", "holds": "sulfuric acid, 4 %", "hazards": ["acid"],
     "does": ["deoxidise"], "time": "10 s"}`)
	jobs := map[string]string{
		"zinc": lineOf("zinc ornament", "zinc die casting", "", list(copperCoat, nickelLast),
			list(washTank, weakTank, water(2), live("copper"), water(3), coat("nickel"), lastTanks)),
		"dial": lineOf("aluminium dial", "aluminium", "", list(copperCoat, nickelLast),
			list(washTank, entry(`{"kind": "activate", "holds": "alkaline etch", "hazards": ["caustic", "hot"],
     "vessel": "plastic", "does": ["etch"], "time": "20 s"}`), water(2),
				entry(`{"kind": "activate", "holds": "nitric acid, 50 %", "hazards": ["acid", "nitric"],
     "vessel": "plastic", "does": ["desmut"], "time": "30 s"}`), water(3),
				entry(`{"kind": "activate", "holds": "zincate", "hazards": ["caustic"], "does": ["zincate"],
     "time": "40 s"}`), water(4), live("copper"), water(5), coat("nickel"), lastTanks)),
		"pewter": lineOf("pewter figure", "pewter", "", list(copperCoat, nickelLast),
			list(washTank, live("copper"), water(3), coat("nickel"), lastTanks)),
		"wheel": lineOf("brass wheel", "leaded brass", "", list(nickelCoat, goldStrikeCoat, hardGoldCoat),
			list(washTank, leadTank, nickelTank, live("gold strike"), drags, water(6), coat("hard gold"), again,
				lastTanks)),
		"silver": lineOf("silvered dial", "leaded brass", "", list(silverStrikeCoat, silverCoat),
			list(washTank, leadTank, oneWater, live("silver strike"), coat("silver"), drags, lastTanks)),
		"hand": lineOf("stainless hand", "stainless steel", "", list(goldStrikeCoat, hardGoldCoat),
			list(washTank, anodic, water(2),
				entry(`{"kind": "activate", "holds": "sulfuric acid, 8 %", "hazards": ["acid"], "does": ["activate"],
     "polarity": "cathodic", "counter": "lead", "current_density": "1.1 A/dm²", "time": "45 s"}`),
				entry(`{"kind": "rinse", "name": "acid water", "stages": 2, "flow": "running", "acidified": true}`),
				live("gold strike"), drags, water(6), coat("hard gold"), again, lastTanks)),
		"spring": lineOf("steel spring", "high-carbon steel", `
  "tensile_strength": "1750 MPa",`, list(nickelLast),
			list(entry(`{"kind": "stress relief", "holds": "oven", "temperature": "200 °C", "time": "2 h"}`),
				washTank, anodic, water(2), shortDip, water(3), coat("nickel"), lastTanks,
				entry(`{"kind": "bake", "holds": "oven", "temperature": {"low": "195 °C", "high": "210 °C"},
     "time": "23 h"}`))),
		"titanium": lineOf("titanium part", "titanium", "", list(nickelLast),
			list(washTank, entry(`{"kind": "activate", "holds": "hydrofluoric and nitric acid",
     "hazards": ["acid", "nitric", "fluoride"], "vessel": "plastic", "does": ["etch"], "time": "25 s"}`),
				water(2), coat("nickel"), lastTanks,
				entry(`{"kind": "bake", "holds": "argon", "temperature": {"low": "560 °C", "high": "620 °C"},
     "time": "2 h"}`))),
		"plastic": lineOf("plastic numeral", "conductive-painted plastic", "",
			list(strings.Replace(acidCopperCoat, `"name": "copper"`, `"name": "copper", "role": "underplate"`, 1),
				nickelLast), list(entry(`{"kind": "soak clean", "holds": "cool mild cleaner", "time": "2 min"}`),
				water(1), coat("copper"), water(2), coat("nickel"), lastTanks)),
		"sulfite": lineOf("brass bezel", "leaded brass", "", list(nickelCoat, palladiumCoat, ownSulfiteCoat),
			list(washTank, leadTank, nickelTank, coat("palladium"), drags, water(6), coat("gold"), again,
				lastTanks)),
		"rhodium": lineOf("rhodium pointer", "leaded brass", "", list(silverStrikeCoat, silverCoat, rhodiumCoat),
			list(washTank, leadTank, oneWater, live("silver strike"), coat("silver"), drags, water(6),
				entry(`{"kind": "rinse", "name": "water 7", "stages": 1, "flow": "spray"}`), coat("rhodium"), again,
				lastTanks)),
		"steel": lineOf("mild steel hand", "low-carbon steel", "", list(copperStrikeCoat, acidCopperCoat),
			list(washTank, shortDip, water(2), oneWater, live("copper strike"), water(3), fourthWater, coat("copper"),
				lastTanks)),
	}
	for _, name := range []string{"hands", "bezels", "finial"} {
		raw, err := testdata.Files.ReadFile("jobs/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		jobs[name] = string(raw)
	}
	return jobs
}

// A change edits the text of a job; it reports false where what it looks for does
// not stand there exactly once.
type change func(text string) (string, bool)

// swap puts one text in the place of another.
func swap(old, with string) change {
	return func(text string) (string, bool) {
		return strings.Replace(text, old, with, 1), strings.Count(text, old) == 1
	}
}

// item finds the layer or tank that holds a mark: it begins and ends with a line.
func item(text, mark string) (from, to int, ok bool) {
	at := strings.Index(text, mark)
	if at < 0 || strings.Count(text, mark) != 1 {
		return 0, 0, false
	}
	from = strings.LastIndex(text[:at+len(mark)], "\n    {") + 1
	for _, end := range []string{"\n    {", "\n  ]"} {
		if i := strings.Index(text[at:], end); i >= 0 && (to == 0 || at+i+1 < to) {
			to = at + i + 1
		}
	}
	return from, to, from > 0 && to > 0
}

// by makes a list of changes.
func by(changes ...change) []change { return changes }

// cut takes the layer or tank with a mark out; replace, ahead and behind put tanks in
// its place, before it and after it.
func cut(mark string) change { return replace(mark, "") }

func replace(mark, tanks string) change {
	return func(text string) (string, bool) {
		from, to, ok := item(text, mark)
		return text[:from] + tanks + text[to:], ok
	}
}

func ahead(mark, tanks string) change {
	return func(text string) (string, bool) {
		from, _, ok := item(text, mark)
		return text[:from] + tanks + text[from:], ok
	}
}

func behind(mark, tanks string) change {
	return func(text string) (string, bool) {
		_, to, ok := item(text, mark)
		return text[:to] + tanks + text[to:], ok
	}
}

// trailing is the comma behind the last item of a list.
var trailing = regexp.MustCompile(`,(\s*\])`)

// edited returns a job with its changes.
func edited(t *testing.T, name, job string, changes []change) string {
	t.Helper()
	for i, c := range changes {
		var ok bool
		if job, ok = c(job); !ok {
			t.Fatalf("%s: change %d does not fit the job:\n%s", name, i+1, job)
		}
	}
	return trailing.ReplaceAllString(job, "$1")
}

// A row is one dangerous edit of a job with its safe neighbour.
type row struct {
	name, base string
	// What it must be at least: "stop", "warning" or "caution"; "beside a stop": a
	// warning on a sheet that stops for another reason; "tank": in the line under the
	// name of a tank; "refused": the file or job is refused.
	kind   string
	word   string // that the finding, line or message holds, capitals apart
	danger []change
	safe   []change // nil: the job as it stands
}

const hcn = "hydrogen cyanide"

// ownCoat writes a coat of a bath of the shop's own.
func ownCoat(name, role, bath string) string {
	return `    {"name": "` + name + `", "role": "` + role + `", "min_to_average": 0.6, "min_thickness": "1 µm",
     "current_density": "0.6 A/dm²", "bath": ` + bath + "},\n"
}

// The pH of the two gold baths of the hands, as the shipped file has it.
const (
	strikePH = `"pH": {"low": 3.2, "high": 4.0}`
	hardPH   = `"pH": {"low": 4.0, "high": 4.6}`
)

// goldRows are edits of the chemistry of gold cyanide, and of other cyanides in acid.
func goldRows() []row {
	strike3 := func(salt string) change {
		return replace(`"gold strike", "role"`,
			`    {"name": "gold strike", "role": "strike", "min_to_average": 0.6, "time": "21 s",
     "bath": {"library": "gold-acid-strike-3", "content": "2 g/L", "volume": "5 L", "salt": "`+salt+`"}},
`)
	}
	strike1 := func(salt string) change {
		return replace(`"gold strike", "role"`,
			`    {"name": "gold strike", "role": "strike", "min_to_average": 0.6, "time": "21 s",
     "bath": {"library": "gold-acid-strike", "content": "1 g/L", "volume": "5 L", "salt": "`+salt+`"}},
`)
	}
	acidCopper := func(salt string) []change {
		return by(replace(`"copper-acid"`, ownCoat("copper", "finish",
			`{"name": "copper, acid", "metal": "Cu", "valence": 2, "efficiency": "98 %", "content": "55 g/L",
      "volume": "20 L", "current_density": {"low": "0.5 A/dm²", "high": "4 A/dm²"}, "anode": "copper",
      "hazards": ["acid"], "pH": 1, "salt": "`+salt+`"}`)))
	}
	libraryCopper := func(salt string) []change {
		return by(swap(`"library": "copper-acid"`, `"library": "copper-acid", "salt": "`+salt+`"`))
	}
	cyanideCopper := func(says string) []change {
		return by(swap(`"library": "copper-cyanide-build"`, `"name": "copper, cyanide", "metal": "Cu", "valence": 1,
      "efficiency": "50 %", "current_density": {"low": "1 A/dm²", "high": "2.5 A/dm²"}, `+says),
			swap(`"min_thickness": "2.5 µm"`, `"min_thickness": "2.5 µm", "current_density": "1.7 A/dm²"`))
	}
	acidSilver := func(salt string) []change {
		return by(replace(`"name": "silver, cyanide"`, ownCoat("silver", "finish",
			`{"name": "silver, methanesulfonate", "metal": "Ag", "efficiency": "98 %", "content": "30 g/L",
      "volume": "8 L", "current_density": {"low": "0.4 A/dm²", "high": "1.6 A/dm²"}, "hazards": ["acid"], "pH": 1.2,
      "anode": "silver", "salt": "`+salt+`"}`)), cut(`"silver strike", "role"`),
			cut(`"layer": "silver strike"`))
	}
	return []row{
		{"a gold(I) strike at pH 1", "hands", "stop", hcn, by(swap(strikePH, `"pH": 1`)), nil},
		{"a gold(I) strike at pH 2.9", "hands", "stop", hcn, by(swap(strikePH, `"pH": 2.9`)),
			by(swap(strikePH, `"pH": 3.1`))},
		{"a gold(I) strike at pH 2 to 4", "hands", "stop", hcn, by(swap(strikePH, `"pH": {"low": 2, "high": 4}`)),
			by(swap(strikePH, `"pH": {"low": 3, "high": 4}`))},
		{"the strike of the bezels at pH 1", "bezels", "stop", hcn,
			by(swap(`"pH": {"low": 3.5, "high": 4.0}`, `"pH": 1`)), nil},
		{"hard gold at pH 1.5 to 2", "hands", "stop", hcn, by(swap(hardPH, `"pH": {"low": 1.5, "high": 2}`)), nil},
		{"soft gold, neutral by its name, at pH 2.5", "bezels", "stop", hcn,
			by(swap(`"pH": {"low": 6.0, "high": 7.0}`, `"pH": 2.5`)), nil},
		{"the pH of an own strike not given", "wheel", "stop", hcn, by(swap(`, "pH": 3.6`, "")), nil},
		{"the pH of own hard gold not given", "hand", "stop", hcn, by(swap(`, "pH": {"low": 4.2, "high": 4.6}`, "")),
			nil},
		{"no pH, and no bath of like chemistry to lend one", "hands", "stop", hcn,
			by(swap(strikePH+",", ""), swap(`, "like": "gold-acid-strike"`, "")),
			by(swap(`, "like": "gold-acid-strike"`, ""))},
		{"the acid not listed, the pH low", "wheel", "stop", hcn,
			by(swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": ["cyanide"], "pH": 1.8`)), nil},
		{"gold(III) at pH 1 with the salt of gold(I)", "hands", "stop", hcn,
			by(
				swap(`"metal": "Au", "valence": 1, "density"`,
					`"metal": "Au", "valence": 3, "salt": "KAu(CN)2", "density"`), swap(strikePH, `"pH": 1`)),
			by(
				swap(`"metal": "Au", "valence": 1, "density"`,
					`"metal": "Au", "valence": 3, "salt": "KAu(CN)4", "density"`), swap(strikePH, `"pH": 1`))},
		{"own gold(III) with the sodium salt of gold(I)", "wheel", "stop", hcn,
			by(swap(`"valence": 1, "efficiency"`, `"valence": 3, "efficiency"`),
				swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic", "salt": "NaAu(CN)2"`),
				swap(`"pH": 3.6`, `"pH": 0.8`)),
			by(swap(`"valence": 1, "efficiency"`, `"valence": 3, "efficiency"`),
				swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic", "salt": "NaAu(CN)4"`),
				swap(`"pH": 3.6`, `"pH": 0.8`))},
		{"gold(I) with the salt of gold(III)", "wheel", "stop", hcn,
			by(swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic", "salt": "KAu(CN)4"`)), nil},
		{"gold(III) among the constituents, with the salt of gold(I)", "hands", "stop", hcn,
			by(swap(`{"metal": "Au", "valence": 1, "share"`, `{"metal": "Au", "valence": 3, "share"`)), nil},
		{"the library's gold(III) strike fed with the salt of gold(I)", "wheel", "stop", hcn, by(strike3("KAu(CN)2")),
			by(strike3("KAu(CN)4"))},
		{"the library's gold(I) strike fed with the salt of gold(III)", "wheel", "stop", hcn, by(strike1("KAu(CN)4")),
			by(strike1("KAu(CN)2"))},
		{"KCN into acid gold", "wheel", "refused", "KCN",
			by(swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic", "salt": "KCN"`)), nil},
		{"KCN into acid nickel", "zinc", "refused", "KCN",
			by(swap(`"library": "nickel-watts"`, `"library": "nickel-watts", "salt": "KCN"`)), nil},
		{"AgCN into acid silver", "silver", "stop", hcn, acidSilver("AgCN"), acidSilver("Ag2SO4")},
		{"KAg(CN)2 into acid silver", "silver", "stop", hcn, acidSilver("KAg(CN)2"), acidSilver("Ag2SO4")},
		{"CuCN into acid copper", "steel", "stop", hcn, acidCopper("CuCN"), acidCopper("CuSO4·5H2O")},
		{"CuCN into the library's acid copper", "steel", "stop", hcn, libraryCopper("CuCN"),
			libraryCopper("CuSO4·5H2O")},
		{"silver cyanide said to be acid", "silver", "stop", hcn,
			by(swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": ["cyanide", "acid"]`)), nil},
		{"silver cyanide at pH 5", "silver", "stop", hcn, by(swap(`"pH": 12`, `"pH": 5`)), nil},
		{"copper cyanide said to be acid", "zinc", "stop", hcn, cyanideCopper(`"hazards": ["cyanide", "acid"]`),
			cyanideCopper(`"hazards": ["cyanide", "caustic"]`)},
		{"the strike of the finial said to be acid", "finial", "stop", hcn,
			by(swap(`"hazards": ["cyanide"]`, `"hazards": ["cyanide", "acid"]`)), nil},
		{"gold cyanide of a name alone, without a pH", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide strike"`, `"name": "gold, potassium cyanide, citric acid"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": []`)), nil},
		{"silver cyanide at pH 7", "silver", "stop", hcn, by(swap(`"pH": 12`, `"pH": 7`)), nil},
		{"copper cyanide at pH 8", "zinc", "stop", hcn, cyanideCopper(`"hazards": ["cyanide"], "pH": 8`),
			cyanideCopper(`"hazards": ["cyanide"], "pH": 11.5`)},
		{"acid gold(I) whose list and name forget the cyanide, at pH 1.5", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide", "metal"`, `"name": "gold, acid, bright", "metal"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": {"low": 4.2, "high": 4.6}`,
					`"hazards": ["acid"], "pH": 1.5`),
				swap(`"vessel": "glass", "salt": "KAu(CN)2",`, `"vessel": "glass",`)), nil},
		{"acid gold whose list forgets the cyanide that it is fed with, at pH 1.5", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide", "metal"`, `"name": "gold, acid, bright", "metal"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": {"low": 4.2, "high": 4.6}`,
					`"hazards": ["acid"], "pH": 1.5`)), nil},
		{"two pHs in one bath", "wheel", "refused", "twice", by(swap(`"pH": 3.6`, `"pH": 3.6, "pH": 1`)), nil},
		{"gold chloride bath fed with a cyanide", "wheel", "stop", hcn,
			by(swap(`"gold, acid cyanide strike"`, `"gold, chloride"`),
				swap(`"valence": 1, "efficiency"`, `"valence": 3, "efficiency"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": ["acid"], "pH": 1`)),
			by(swap(`"gold, acid cyanide strike"`, `"gold, chloride"`),
				swap(`"valence": 1, "efficiency"`, `"valence": 3, "efficiency"`),
				swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic", "salt": "KAuCl4"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": ["acid"], "pH": 1`))},
	}
}

// namedRows are baths and tanks whose name says what their list of hazards does not.
func namedRows() []row {
	silver := func(name string) change {
		return swap(`"name": "silver, cyanide", "metal": "Ag"`, `"name": "`+name+`", "metal": "Ag"`)
	}
	alone := by(cut(`"silver strike", "role"`), cut(`"layer": "silver strike"`),
		swap(`, "salt": "KAg(CN)2"`, ""), swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": []`))
	open := append(slices.Clone(alone), cut("water 2"), cut("same water"))
	dip := func(text string) change {
		return ahead("water 2", entry(`{"kind": "activate", `+text+`, "time": "12 s"}`))
	}
	wet := func(text string) []change { // in place of the weak dip, and no water behind it
		return by(replace("weak sulfuric", entry(`{"kind": "activate", "does": ["deoxidise"], `+text+
			`, "time": "12 s"}`)), cut("water 2"))
	}
	ownNickel := func(hazards string) []change {
		return by(replace(`"library": "nickel-watts"`, ownCoat("nickel", "finish",
			`{"name": "nickel, Watts type", "metal": "Ni", "efficiency": "95 %", "content": "75 g/L", "volume": "20 L",
      "current_density": {"low": "0.5 A/dm²", "high": "5 A/dm²"}, "anode": "nickel", `+hazards+`}`)))
	}
	alkaline := by(swap(`"library": "copper-cyanide-build"`, `"name": "copper, alkaline strike", "metal": "Cu",
      "valence": 1, "efficiency": "50 %", "current_density": {"low": "1 A/dm²", "high": "2.5 A/dm²"}, "hazards": ["caustic"]`),
		swap(`"min_thickness": "2.5 µm"`, `"min_thickness": "2.5 µm", "current_density": "1.7 A/dm²"`))
	chloride := func(water string) []change {
		return by(ahead(`"silver strike", "role"`, ownCoat("nickel strike", "strike", `{"name": "nickel, HCl strike",
      "metal": "Ni", "efficiency": "30 %", "current_density": {"low": "0.5 A/dm²", "high": "4 A/dm²"}, "hazards": []}`)),
			ahead(`"layer": "silver strike"`, entry(`{"layer": "nickel strike", "live_entry": true}`)+water))
	}
	with := func(changes []change, more ...change) []change { return append(slices.Clone(changes), more...) }
	return []row{
		{"silver, KCN based", "silver", "stop", hcn, with(open, silver("silver, KCN based")),
			with(alone, silver("silver, KCN based"))},
		{"silver, potassium argentocyanide", "silver", "stop", hcn,
			with(open, silver("silver, potassium argentocyanide")), with(alone, silver("silver, argentocyanide"))},
		{"silver, prussiate", "silver", "stop", hcn, with(open, silver("silver, yellow prussiate")),
			with(alone, silver("silver, yellow prussiate"))},
		{"a gold strike of aurocyanide in citric acid", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide strike"`, `"name": "gold, aurocyanide, citric acid"`),
				swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": [], "pH": 2.2`)), nil},
		{"silver, Zyankali", "silver", "stop", hcn, with(open, silver("Silber, Zyankali")),
			with(alone, silver("Silber, Zyankali"))},
		{"silver, potassium dicyanoargentate", "silver", "stop", hcn,
			with(open, silver("silver, potassium dicyanoargentate")),
			with(alone, silver("silver, potassium dicyanoargentate"))},
		{"silver, Ag(CN)2 complex", "silver", "stop", hcn, with(open, silver("silver, Ag(CN)2 complex")),
			with(alone, silver("silver, Ag(CN)2 complex"))},
		{"a gold strike of dicyanoaurate at pH 2", "wheel", "stop", hcn,
			by(swap(`"name": "gold, acid cyanide strike"`, `"name": "gold, potassium dicyanoaurate"`),
				swap(`"plastic", "salt": "KAu(CN)2"`, `"plastic"`),
				swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": [], "pH": 2`)),
			by(swap(`"name": "gold, acid cyanide strike"`, `"name": "gold, potassium dicyanoaurate"`))},
		{"a nickel bath whose list forgets the acid, behind cyanide copper", "zinc", "stop", hcn,
			append(ownNickel(`"hazards": ["nickel"]`), cut("water 3")), ownNickel(`"hazards": ["nickel", "acid"], "pH": 4`)},
		{"a copper(I) strike whose list forgets the cyanide, before nickel", "zinc", "stop", hcn,
			with(alkaline, cut("water 3")), with(alkaline, swap(`["caustic"]`, `["caustic", "cyanide"]`))},
		{"a HCl strike before cyanide", "silver", "stop", hcn, chloride(""), chloride(waterTank + fourthWater)},
		{"a pickle before cyanide copper", "zinc", "stop", hcn, wet(`"holds": "pickle", "hazards": []`), nil},
		{"a pickle that lists nothing, well rinsed", "steel", "stop", "name of pickle says acid",
			by(dip(`"holds": "pickle", "hazards": []`)), by(dip(`"holds": "pickle", "hazards": ["acid"]`))},
		{"a cyanide dip that lists nothing", "silver", "stop", "says cyanide, its list",
			by(dip(`"holds": "KCN, 30 g/L", "hazards": []`), ahead("30 g/L\", \"h", waterTank+oneWater)),
			by(dip(`"holds": "KCN, 30 g/L", "hazards": ["cyanide"]`),
				ahead("30 g/L\", \"h",
					strings.ReplaceAll(waterTank, "more", "other")+strings.ReplaceAll(oneWater, "one", "single")))},
		{"vitriol by its old name", "zinc", "stop", hcn, wet(`"holds": "oil of vitriol, weak"`), nil},
		{"the name of the tank says it, not what it holds", "zinc", "stop", hcn,
			wet(`"name": "muriatic dip", "holds": "dip 2", "hazards": []`), nil},
		{"a dip in vinegar before cyanide copper", "zinc", "stop", hcn,
			wet(`"holds": "vinegar and salt", "hazards": []`), nil},
		{"spirits of salt before cyanide copper", "zinc", "stop", hcn, wet(`"holds": "spirits of salt", "hazards": []`),
			nil},
		{"a dip that says nothing of hazards before cyanide copper", "zinc", "stop", "hazards", wet(`"holds": "dip 3"`),
			nil},
		{"an acid rinse by its name, before cyanide copper", "zinc", "stop", hcn,
			wet(`"holds": "acid rinse", "hazards": []`), nil},
		{"nitric alone in the list, before cyanide copper", "zinc", "stop", hcn,
			wet(`"holds": "desmut", "hazards": ["nitric"]`), nil},
		{"hydrogen chloride alone in the list, before cyanide copper", "zinc", "stop", hcn,
			wet(`"holds": "dip 2", "hazards": ["hydrogen chloride"]`), nil},
		{"fluoborate alone in the list, before the silver strike", "silver", "stop", hcn,
			by(
				swap(`"holds": "fluoboric acid, 10 %", "hazards": ["acid", "fluoborate"]`,
					`"holds": "lead dip", "hazards": ["fluoborate"]`), cut("water 2"), cut("same water")), nil},
		{"an acid by its pH alone, before cyanide copper", "zinc", "stop", hcn,
			wet(`"holds": "dip 2", "hazards": [], "pH": 2`), nil},
		{"a rinse that is called citric acid", "zinc", "stop", hcn,
			by(swap(`"name": "water 2", "stages": 2`, `"name": "citric acid, 2 %", "stages": 2`)), nil},
	}
}

// orderRows are edits of what follows what.
func orderRows() []row {
	still := func(name string) change {
		return swap(`"name": "`+name+`", "stages": 2, "flow": "counterflow"`, `"name": "`+name+
			`", "stages": 2, "flow": "still"`)
	}
	one := func(name string) change {
		return swap(`"name": "`+name+`", "stages": 2`, `"name": "`+name+`", "stages": 1`)
	}
	station := func(name, at string) change {
		return swap(`"name": "`+name+`"`, `"name": "`+name+`", "station": "`+at+`"`)
	}
	cyanideDip := entry(`{"kind": "activate", "holds": "sodium cyanide, 30 g/L", "hazards": ["cyanide"],
     "time": "5 s"}`)
	halfMild := entry(`{"kind": "activate", "holds": "sulfuric acid, 10 %", "hazards": ["acid"], "mild": true,
     "pH": 0.4, "does": ["activate"], "time": "15 s"}`)
	return []row{
		{"acid dip straight into cyanide copper", "zinc", "stop", hcn, by(cut("water 2")), nil},
		{"acid dip straight into cyanide copper, steel", "steel", "stop", hcn, by(cut("water 2"), cut("same water")),
			nil},
		{"lead dip straight into the silver strike", "silver", "stop", hcn, by(cut("water 2"), cut("same water")), nil},
		{"nitric acid straight into cyanide copper", "dial", "stop", hcn,
			by(cut("water 3"), cut(`"holds": "zincate"`), cut("water 4")), nil},
		{"cyanide copper straight into nickel", "zinc", "stop", hcn, by(cut("water 3")), nil},
		{"cyanide copper straight into nickel, pewter", "pewter", "stop", hcn, by(cut("water 3")), nil},
		{"cyanide copper straight into acid copper", "steel", "stop", hcn, by(cut("water 3"), cut("water 4")), nil},
		{"silver straight into rhodium", "rhodium", "stop", hcn, by(cut("water 6"), cut("water 7")), nil},
		{"strong acid straight into gold cyanide", "hand", "stop", hcn, by(cut("acid water")), nil},
		{"gold cyanide straight into strong acid", "wheel", "stop", hcn, by(replace("water 6", pickleTank+waterTank)),
			by(behind("water 6", pickleTank+waterTank))},
		{"a strong dip behind the drag-out tank of gold", "wheel", "stop", hcn, by(ahead("water 9", pickleTank)),
			by(behind("water 9", pickleTank+waterTank))},
		{"a strong dip said to be mild at pH 0.4 before gold cyanide", "wheel", "stop", hcn,
			by(behind("water 5", halfMild)), nil},
		{"one stage between cyanide copper and nickel", "zinc", "stop", hcn, by(one("water 3")),
			by(one("water 3"), ahead("water 3", oneWater))},
		{"one stage in each rinse of the finial", "finial", "caution", "reaches free cyanide",
			by(swap(`"stages": 2`, `"stages": 1`)), nil},
		{"still water between cyanide copper and nickel", "dial", "stop", hcn, by(still("water 5")), nil},
		{"a drag-out tank and no rinse behind silver", "rhodium", "stop", hcn,
			by(replace("water 6", entry(`{"kind": "drag-out rinse", "stages": 2}`)), cut("water 7")), nil},
		{"one station behind acid dip and cyanide copper", "zinc", "stop", "same water",
			by(station("water 2", "A"), station("water 3", " a")),
			by(station("water 2", "A"), station("water 3", "B"))},
		{"one station behind lead dip and silver", "silver", "stop", "same water",
			by(station("water 2", "sink"), station("water 9", "sink")),
			by(station("water 1", "sink"), station("water 2", "sink"))},
		{"one station behind the lead dip and in the drag-out of silver", "silver", "stop", "same water",
			by(station("water 2", "tray"), station("drag-out", "tray")), nil},
		{"one station behind nickel and sulfite gold", "sulfite", "stop", "same water",
			by(station("water 5", "sink"), station("water 9", "sink")), nil},
		{"acid water before cyanide copper", "zinc", "stop", hcn,
			by(swap(`"name": "water 2"`, `"name": "water 2", "acidified": true`)), nil},
		{"acid last water behind silver", "silver", "stop", hcn,
			by(cut("water 9"), swap(`"last water"`, `"last water", "acidified": true`)), nil},
		{"acid drag-out tank behind silver", "silver", "stop", hcn,
			by(swap(`"name": "drag-out"`, `"name": "drag-out", "acidified": true`)), nil},
		{"two stages between strong acid and free cyanide", "silver", "caution", "reaches free cyanide",
			by(cut("same water")), nil},
		{"two stages between free cyanide and strong acid", "steel", "caution", "reaches strong acid",
			by(cut("water 4")), nil},
		{"one stage between strong acid and gold cyanide", "hand", "caution", "reaches a bath of gold cyanide",
			by(one("acid water")), nil},
		{"acid that dries on before cyanide", "zinc", "stop", hcn,
			by(replace("water 2", entry(`{"kind": "dry", "holds": "warm air"}`))), nil},
		{"cyanide carried through a cleaner into nickel", "zinc", "stop", hcn,
			by(replace("water 3", entry(`{"kind": "soak clean", "holds": "mild alkaline cleaner", "time": "1 min"}`))),
			nil},
		{"a cyanide dip before a strong pickle", "steel", "stop", hcn, by(ahead("sulfuric acid, 4 %", cyanideDip)),
			by(ahead("sulfuric acid, 4 %", cyanideDip+waterTank+strings.Replace(oneWater, "one", "single", 1)))},
		{"cyanide copper before nickel, no sequence", "zinc", "warning", hcn, by(bareCoats),
			by(bareCoats, cut(`"copper-cyanide-build"`))},
		{"a gold(I) strike at pH 2, no sequence", "hands", "stop", "the complex breaks down",
			by(swap(`  "finish": "hard gold",`, ""), swap(strikePH, `"pH": 2`)),
			by(swap(`  "finish": "hard gold",`, ""))},
		{"silver cyanide said to be acid, no sequence", "silver", "stop", "comes off, and it kills",
			by(bareCoats, swap(`"hazards": ["cyanide"], "pH": 12`, `"hazards": ["cyanide", "acid"]`)), by(bareCoats)},
	}
}

// anodeRows are anodes that the bath dissolves, or that free a gas.
func anodeRows() []row {
	gold := func(material string) []change { return by(swap("platinised titanium mesh", material)) }
	const fluoborate = `{"name": "nickel, fluoborate", "metal": "Ni", "efficiency": "95 %", "content": "80 g/L",
      "volume": "20 L", "current_density": {"low": "0.5 A/dm²", "high": "5 A/dm²"}, "hazards": ["acid", "nickel", "fluoborate"],
      "vessel": "plastic", "anode": "ANODE"}`
	bath := func(material string) []change {
		return by(replace(`"name": "nickel", "role"`, ownCoat("nickel", "underplate",
			strings.Replace(fluoborate, "ANODE", material, 1))))
	}
	chloride := func(counter string) []change {
		return by(swap(`"holds": "sulfuric acid, 8 %"`, `"holds": "hydrochloric acid, 10 %", "vessel": "plastic"`),
			swap(`"counter": "lead"`, `"counter": "`+counter+`"`))
	}
	const strike = `{"name": "gold, chloride strike", "metal": "Au", "valence": 3, "efficiency": "35 %", "pH": 0.8,
      "content": "2 g/L", "volume": "5 L", "current_density": {"low": "0.3 A/dm²", "high": "4 A/dm²"}, "anode_kind": "ANODE",
      "hazards": ["acid", "hydrogen chloride"], "anode": "MATERIAL"}`
	chlorine := func(anode, material string) []change {
		return by(replace(`"gold strike", "role"`, ownCoat("gold strike", "strike",
			strings.NewReplacer("ANODE", anode, "MATERIAL", material).Replace(strike))))
	}
	return []row{
		{"stainless steel anode in acid gold", "wheel", "warning", "stainless steel anode", gold("stainless steel"),
			nil},
		{"stainless steel anode in the acid gold of the hands", "hands", "warning", "stainless steel anode",
			by(swap(hardPH, hardPH+`, "anode": "stainless steel"`)), nil},
		{"plain steel anode in acid gold", "wheel", "warning", "steel anode", gold("mild steel"), nil},
		{"copper anode in gold", "hand", "warning", "copper anode", gold("copper"), nil},
		{"brass anode in gold", "hand", "warning", "brass anode", gold("brass strip"), nil},
		{"bare titanium anode", "wheel", "warning", "bare titanium", gold("titanium"),
			gold("titanium with mixed oxide")},
		{"lead anode in gold cyanide", "wheel", "warning", "lead anode", gold("lead"), nil},
		{"lead anode in silver cyanide", "silver", "warning", "lead anode",
			by(swap(`"anode": "silver"`, `"anode": "lead"`)), nil},
		{"lead opposite in hydrochloric acid", "hand", "warning", "lead anode", chloride("lead"), nil},
		{"stainless steel opposite in hydrochloric acid", "hand", "warning", "chlorine", chloride("stainless steel"),
			nil},
		{"graphite anode in hydrochloric acid", "wheel", "warning", "chlorine", chlorine("insoluble", "graphite"),
			chlorine("soluble", "gold")},
		{"an insoluble anode of no name in hydrochloric acid", "wheel", "warning", "chlorine",
			by(
				replace(`"gold strike", "role"`,
					ownCoat("gold strike", "strike",
						strings.NewReplacer("ANODE", "insoluble", `, "anode": "MATERIAL"`,
							"").Replace(strike)))),
			chlorine("soluble", "gold")},
		{"a copper anode without a bag in gold", "hand", "warning", "copper anode", gold("no bag, copper"), nil},
		{"platinised titanium anode in hydrochloric acid", "wheel", "warning", "chlorine",
			chlorine("insoluble", "platinised titanium"), chlorine("soluble", "gold")},
		{"platinised titanium in fluoborate", "wheel", "warning", "titanium anode in fluoride",
			bath("platinised titanium"), bath("nickel")},
		{"lead anode in fluoborate", "wheel", "warning", "lead anode", bath("lead"), bath("nickel")},
		{"stainless steel anode in acid gold, no sequence", "hands", "warning", "stainless steel anode",
			by(swap(hardPH, hardPH+`, "anode": "stainless steel"`), swap(`  "finish": "hard gold",`, "")),
			by(swap(`  "finish": "hard gold",`, ""))},
	}
}

// springRows are edits of what keeps hydrogen out of hard steel.
func springRows() []row {
	const hot = `"temperature": {"low": "195 °C", "high": "210 °C"}`
	strength := func(s string) change { return swap(`"tensile_strength": "1750 MPa"`, s) }
	const mercury = `    {"kind": "activate", "holds": "quickening, mercury salt", "time": "5 s"},
    {"kind": "rinse", "name": "water 3", "stages": 2, "flow": "counterflow"},
`
	hours := func(s string) change { return swap(`"time": "23 h"`, `"time": "`+s+`"`) }
	return []row{
		{"no bake", "spring", "warning", "not baked", by(cut(`"bake"`)), nil},
		{"a bake of 8 h at 1750 MPa", "spring", "warning", "too short", by(hours("8 h")),
			by(hours("8 h"), strength(`"tensile_strength": "1050 MPa"`))},
		{"a bake of 12 h at 1450 MPa", "spring", "warning", "too short",
			by(hours("12 h"), strength(`"tensile_strength": "1450 MPa"`)),
			by(hours("16 h"), strength(`"tensile_strength": "1450 MPa"`))},
		{"a bake of 12 h at 46 HRC", "spring", "warning", "too short",
			by(hours("12 h"), strength(`"hardness": "46 HRC"`)), by(hours("12 h"), strength(`"hardness": "38 HRC"`))},
		{"a bake that may end too soon", "spring", "warning", "too short",
			by(swap(`"time": "23 h"`, `"time": {"low": "10 h", "high": "24 h"}`)), nil},
		{"a bake too cool", "spring", "warning", "too cool", by(swap(hot, `"temperature": "150 °C"`)), nil},
		{"a bake too hot", "spring", "warning", "soft", by(swap(hot, `"temperature": "260 °C"`)), nil},
		{"a bake that does not say how hot", "spring", "warning", "does not say how hot", by(swap(hot+",", "")), nil},
		{"a bake a day late", "spring", "warning", "after the last coat",
			by(swap(`"holds": "warm air"`, `"holds": "warm air", "wait": "24 h"`)),
			by(swap(`"holds": "warm air"`, `"holds": "warm air", "wait": "1 h"`))},
		{"a dryer of six hours before the bake", "spring", "warning", "after the last coat",
			by(swap(`"holds": "warm air"`, `"holds": "warm air", "time": "6 h"`)), nil},
		{"the bake before the coat", "spring", "warning", "not baked",
			by(cut(`"bake"`),
				ahead(`"layer": "nickel"`, entry(`{"kind": "bake", "holds": "oven", `+hot+`, "time": "23 h"}`))), nil},
		{"no stress relief", "spring", "warning", "without stress relief", by(cut(`"stress relief"`)),
			by(cut(`"stress relief"`), strength(`"tensile_strength": "1750 MPa", "stress_relieved": true`))},
		{"stress relief behind the cleaner", "spring", "warning", "without stress relief",
			by(cut(`"stress relief"`),
				behind("water 1",
					entry(`{"kind": "stress relief", "holds": "oven", "temperature": "200 °C", "time": "2 h"}`))), nil},
		{"stress relief at 60 °C", "spring", "warning", "stress",
			by(swap(`"temperature": "200 °C"`, `"temperature": "60 °C"`)), nil},
		{"stress relief of ten minutes", "spring", "warning", "stress", by(swap(`"time": "2 h"`, `"time": "10 min"`)),
			nil},
		{"strength not given", "spring", "stop", "the strength of the steel is not",
			by(strength(`"stress_relieved": false`)), nil},
		{"hard stainless steel, strength not given", "hand", "stop", "the strength of the steel is not",
			by(swap(`"substrate": "stainless steel",`, `"substrate": "stainless steel", "high_strength": true,`)), nil},
		{"a strength that no steel has, by a slip of the unit", "spring", "refused", "tensile",
			by(strength(`"tensile_strength": "1.75 MPa"`), cut(`"bake"`)), nil},
		{"a hardness by a slip of the point", "spring", "refused", "hardness",
			by(strength(`"hardness": "4.5 HRC"`), cut(`"bake"`)), by(strength(`"hardness": "45 HRC"`))},
		{"steel beyond the table of bakes", "spring", "stop", "the table of bakes",
			by(strength(`"tensile_strength": "1950 MPa"`)), nil},
		{"a spring cleaned cathodically", "spring", "warning", "drives hydrogen", by(swap(`"anodic"`, `"cathodic"`)),
			nil},
		{"a spring pickled cathodically", "spring", "warning", "drives hydrogen",
			by(swap(`"holds": "sulfuric acid, 4 %"`, `"holds": "sulfuric acid, 4 %", "polarity": "cathodic"`)), nil},
		{"pewter in the oven", "pewter", "warning", "soften or melt",
			by(behind(`"dry"`, entry(`{"kind": "bake", "holds": "oven", "temperature": "200 °C", "time": "8 h"}`))),
			nil},
		{"mercury in the oven", "silver", "warning", "mercury",
			by(behind("water 2", mercury),
				behind(`"dry"`, entry(`{"kind": "bake", "holds": "oven", "temperature": "350 °C", "time": "20 min"}`))),
			by(behind("water 2", mercury))},
		{"a zinc casting in the oven", "zinc", "warning", "soften or melt",
			by(behind(`"dry"`, entry(`{"kind": "bake", "holds": "oven", "temperature": "180 °C", "time": "2 h"}`))),
			nil},
	}
}

// attackRows are tanks that dissolve the base metal, or a coat that does not hold on it.
func attackRows() []row {
	const electro = `    {"kind": "electroclean", "holds": "electrocleaner", "hazards": ["caustic", "hot"],
     "polarity": "anodic", "time": "40 s"},
`
	mild := strings.Replace(electro, `"hazards"`, `"mild": true, "hazards"`, 1)
	add := func(tank string) []change { return by(behind("water 1", tank+waterTank)) }
	etch := func(seconds string) string {
		return entry(`{"kind": "activate", "holds": "caustic soda, cold", "hazards": ["caustic"], "time": "` +
			seconds + `"}`)
	}
	nitric := func(percent, time, more string) string {
		return entry(`{"kind": "activate", "holds": "nitric acid, ` + percent + `", "hazards": ["acid", "nitric"],
     "time": "` + time + `"` + more + "}")
	}
	return []row{
		{"hot electrocleaner on zinc", "zinc", "warning", "dissolves zinc", add(electro), add(mild)},
		{"caustic at 70 °C on zinc", "zinc", "warning", "dissolves zinc",
			add(strings.Replace(electro, `["caustic", "hot"]`, `["caustic"], "temperature": "70 °C"`, 1)), add(mild)},
		{"a hot cleaner of pH 13.5 on zinc", "zinc", "warning", "dissolves zinc",
			by(
				swap(`"holds": "mild alkaline cleaner"`,
					`"holds": "cleaner 4", "hazards": [], "pH": 13.5, "temperature": "70 °C"`)), nil},
		{"hot electrocleaner on aluminium", "dial", "warning", "dissolves zinc and aluminium", add(electro), add(mild)},
		{"a long etch of aluminium", "dial", "warning", "dissolves the metal",
			by(swap(`"time": "20 s"`, `"time": "6 min"`)), nil},
		{"an etch of aluminium that does not say how long", "dial", "warning", "dissolves the metal",
			by(swap(`, "time": "20 s"`, "")), nil},
		{"a long cold etch of zinc", "zinc", "warning", "dissolves zinc", add(etch("10 min")), add(etch("20 s"))},
		{"hot caustic on pewter", "pewter", "warning", "tin dissolves",
			add(strings.Replace(electro, "40 s", "2 min", 1)), add(strings.Replace(mild, "40 s", "2 min", 1))},
		{"hot caustic on soft solder", "pewter", "warning", "tin dissolves",
			append(add(strings.Replace(electro, "40 s", "2 min", 1)),
				swap(`"substrate": "pewter"`, `"substrate": "soft-soldered"`)),
			by(swap(`"substrate": "pewter"`, `"substrate": "soft-soldered"`))},
		{"hot caustic on painted plastic", "plastic", "warning", "lifts the paint", add(electro), add(mild)},
		{"strong acid on zinc", "zinc", "warning", "strong acid dissolves", by(replace("weak sulfuric", pickleTank)),
			nil},
		{"strong acid on pewter", "pewter", "warning", "strong acid dissolves",
			by(behind("water 1", pickleTank+waterTank+oneWater)), nil},
		{"strong acid on soft solder", "pewter", "warning", "strong acid dissolves",
			by(swap(`"substrate": "pewter"`, `"substrate": "soft-soldered"`),
				behind("water 1", pickleTank+waterTank+oneWater)),
			by(swap(`"substrate": "pewter"`, `"substrate": "soft-soldered"`))},
		{"hydrochloric acid on zinc", "zinc", "warning", "strong acid dissolves",
			by(replace("weak sulfuric", strings.Replace(pickleTank, "sulfuric", "hydrochloric", 1))), nil},
		{"nitric acid on zinc", "zinc", "warning", "strong acid dissolves",
			by(replace("weak sulfuric", nitric("30 %", "20 s", ""))), nil},
		{"brass left in nitric acid", "wheel", "warning", "nitric acid dissolves copper",
			add(nitric("50 %", "1 min", "")), add(nitric("1 %", "5 s", `, "mild": true`))},
		{"acid nickel straight on zinc", "zinc", "warning", "dissolves the zinc",
			by(cut(`"copper-cyanide-build"`), cut(`"layer": "copper"`), cut("water 3")), nil},
		{"acid copper straight on zinc", "zinc", "warning", "by immersion",
			by(
				swap(`"library": "copper-cyanide-build", "content": "29.8 g/L"`,
					`"library": "copper-acid", "content": "55 g/L"`)), nil},
		{"acid copper straight on aluminium", "dial", "warning", "by immersion",
			by(
				swap(`"library": "copper-cyanide-build", "content": "29.8 g/L"`,
					`"library": "copper-acid", "content": "55 g/L"`)), nil},
		{"zinc that enters without current", "zinc", "warning", "without current", by(swap(`, "live_entry": true`, "")),
			nil},
		{"a thin strike under nickel on zinc", "zinc", "warning", "through the pores",
			by(swap(`"min_thickness": "2.5 µm"`, `"min_thickness": "0.8 µm"`)), nil},
		{"aluminium without zincate", "dial", "warning", "zincate film", by(cut(`"holds": "zincate"`)), nil},
	}
}

// gasRows are solutions that make gas or fire with one another, or eat through what
// they stand in.
func gasRows() []row {
	acetone := entry(`{"kind": "soak clean", "holds": "acetone", "time": "1 min"}`)
	spirit := entry(`{"kind": "soak clean", "holds": "white spirit", "time": "1 min"}`)
	chromic := entry(`{"kind": "activate", "holds": "chromic acid, 2 %", "hazards": ["acid", "chromate"],
     "mild": true, "time": "5 s"}`)
	liver := entry(`{"kind": "activate", "holds": "liver of sulfur", "hazards": ["sulfide"], "time": "5 s"}`)
	bleach := entry(`{"kind": "activate", "holds": "bleach, 1 %", "hazards": ["hypochlorite"], "time": "5 s"}`)
	peroxide := entry(`{"kind": "activate", "holds": "hydrogen peroxide, 3 %", "hazards": ["oxidiser"], "time": "5 s"}`)
	stillPair := entry(`{"kind": "rinse", "name": "still", "stages": 2, "flow": "still"}`)
	acidPair := entry(`{"kind": "rinse", "name": "sour water", "stages": 2, "flow": "running", "acidified": true}`)
	ammonia := entry(`{"kind": "activate", "holds": "ammonia, 2 %", "hazards": ["ammonia"], "time": "5 s"}`)
	tank := func(holds, hazards string) string {
		return entry(`{"kind": "activate", "holds": "`+holds+`", "mild": true, "hazards": [`+hazards+`],
     "time": "5 s"}`) + waterTank
	}
	first := func(tanks string) []change { return by(behind("water 1", tanks)) }
	return []row{
		{"acetone straight into nitric acid", "dial", "stop", "brown fume", by(replace("water 2", acetone)),
			by(ahead("water 2", acetone))},
		{"acetone, still water, nitric acid", "dial", "stop", "brown fume", by(replace("water 2", acetone+stillPair)),
			by(ahead("water 2", acetone))},
		{"methylated spirits straight into nitric acid", "dial", "stop", "brown fume",
			by(replace("water 2", strings.Replace(acetone, "acetone", "methylated spirits", 1))), nil},
		{"naphtha straight into nitric acid", "dial", "stop", "brown fume",
			by(replace("water 2", strings.Replace(acetone, "acetone", "naphtha", 1))), nil},
		{"nitric acid and alcohol in one tank", "wheel", "stop", "brown fume",
			first(tank("nitric acid, 2 %, in alcohol", `"acid", "nitric"`)),
			first(tank("nitric acid, 2 %, in water", `"acid", "nitric"`))},
		{"nitric acid and a solvent by the list alone", "wheel", "stop", "brown fume",
			first(tank("etch 4", `"acid", "nitric", "organic"`)), first(tank("etch 4", `"acid", "nitric"`))},
		{"chromic acid straight behind white spirit", "wheel", "stop", "fire", first(spirit + chromic + waterTank),
			first(spirit + strings.Replace(waterTank, "more", "other", 1) + chromic + waterTank)},
		{"chromic acid and glycerine in one tank", "wheel", "stop", "fire",
			first(tank("chromic acid with glycerine", `"acid", "chromate"`)),
			first(tank("chromic acid", `"acid", "chromate"`))},
		{"a chromate tank that holds oil", "wheel", "stop", "fire", first(tank("dichromate, oil on top", `"chromate"`)),
			first(tank("dichromate", `"chromate"`))},
		{"peroxide and alcohol in one tank", "wheel", "stop", "fire", first(tank("peroxide in alcohol", `"oxidiser"`)),
			first(tank("peroxide in water", `"oxidiser"`))},
		{"liver of sulfur straight into acid", "wheel", "stop", "hydrogen sulfide", first(liver),
			first(liver + waterTank)},
		{"lime sulfur straight into acid", "wheel", "stop", "hydrogen sulfide",
			first(strings.Replace(liver, `"liver of sulfur", "hazards": ["sulfide"]`, `"lime sulfur"`, 1)), nil},
		{"liver of sulfur behind one stage of water", "wheel", "caution", "hydrogen sulfide", first(liver + oneWater),
			first(liver + waterTank)},
		{"acid straight into liver of sulfur", "wheel", "stop", "hydrogen sulfide",
			by(replace("water 2", liver+waterTank)), by(behind("water 2", liver+waterTank))},
		{"liver of sulfur and acid in one tank", "wheel", "stop", "hydrogen sulfide",
			first(tank("liver of sulfur, acid", `"sulfide", "acid"`)), first(tank("liver of sulfur", `"sulfide"`))},
		{"liver of sulfur straight into acid water", "silver", "stop", "hydrogen sulfide",
			by(ahead("last water", liver+acidPair)), by(ahead("last water", liver+waterTank+acidPair))},
		{"bleach straight into acid", "wheel", "stop", "chlorine", first(bleach), first(bleach + waterTank)},
		{"bleach straight into acid water", "wheel", "stop", "chlorine", first(bleach + acidPair + waterTank),
			first(bleach + waterTank + acidPair)},
		{"bleach and hydrochloric acid in one tank", "wheel", "stop", "chlorine",
			first(tank("bleach, hydrochloric acid", `"hypochlorite", "acid"`)),
			first(tank("bleach", `"hypochlorite"`))},
		{"one station behind bleach and acid", "wheel", "stop", "same water",
			by(
				behind("water 1",
					bleach+strings.Replace(waterTank, `"more water"`, `"more water", "station": "sink"`, 1)),
				swap(`"water 2"`, `"water 2", "station": "sink"`)), first(bleach + waterTank)},
		{"bleach straight into an ammoniated clock cleaner", "wheel", "stop", "chloramine",
			first(bleach + entry(`{"kind": "soak clean", "holds": "ammoniated clock cleaner"}`) + waterTank),
			first(bleach + waterTank)},
		{"bleach straight into ammonia", "wheel", "stop", "chloramine", first(bleach + ammonia + waterTank),
			first(bleach + strings.Replace(waterTank, "more", "other", 1) + ammonia + waterTank)},
		{"ammonia straight into bleach", "wheel", "stop", "chloramine", first(ammonia + bleach + waterTank),
			first(ammonia + strings.Replace(waterTank, "more", "other", 1) + bleach + waterTank)},
		{"palladium, with its ammonia, straight into bleach", "sulfite", "stop", "chloramine",
			by(replace("water 6", bleach+waterTank)), by(behind("water 6", bleach+waterTank))},
		{"bleach straight into silver cyanide", "silver", "stop", "violent", by(behind("same water", bleach)),
			by(behind("same water", bleach+waterTank))},
		{"silver cyanide straight into bleach", "silver", "stop", "violent", by(replace("water 9", bleach+waterTank)),
			by(behind("water 9", bleach+waterTank))},
		{"peroxide straight into silver cyanide", "silver", "stop", "can explode", by(behind("same water", peroxide)),
			by(behind("same water", peroxide+waterTank))},
		{"permanganate straight into cyanide copper", "zinc", "stop", "can explode",
			by(behind("water 2", strings.Replace(peroxide, "hydrogen peroxide, 3 %", "potassium permanganate", 1))),
			by(
				behind("water 2",
					strings.Replace(peroxide, "hydrogen peroxide, 3 %", "potassium permanganate", 1)+waterTank))},
		{"silver cyanide straight into peroxide", "silver", "stop", "can explode",
			by(replace("water 9", peroxide+waterTank)), nil},
		{"sulfite gold made acid", "sulfite", "stop", "sulfur dioxide",
			by(swap(`"hazards": ["sulfite"], "pH": 9`, `"hazards": ["sulfite", "acid"]`)), nil},
		{"sulfite gold at pH 4", "sulfite", "stop", "sulfur dioxide", by(swap(`"pH": 9`, `"pH": 4`)), nil},
		{"strong acid straight into sulfite gold", "sulfite", "stop", "sulfur dioxide",
			by(replace("water 6", pickleTank)), by(ahead("water 6", waterTank+pickleTank))},
		{"nickel straight into sulfite gold", "sulfite", "stop", "sulfur dioxide",
			by(cut(`"palladium-sulfamate"`), cut(`"layer": "palladium"`), cut(`"drag-out"`), cut("water 5"),
				cut("water 6")),
			by(cut(`"palladium-sulfamate"`), cut(`"layer": "palladium"`), cut(`"drag-out"`), cut("water 6"))},
		{"sulfite gold straight into acid", "sulfite", "stop", "sulfur dioxide",
			by(replace("water 9", pickleTank+waterTank)), by(behind("water 9", pickleTank+waterTank))},
		{"a fluoride dip in glass", "wheel", "stop", "fluoride in glass",
			by(swap(`"vessel": "plastic", "does"`, `"vessel": "glass", "does"`)), nil},
		{"a fluoride dip in enamel", "silver", "stop", "fluoride in glass",
			by(swap(`"vessel": "plastic", "does"`, `"vessel": "enamel", "does"`)), nil},
		{"a bifluoride dip in a beaker", "wheel", "stop", "fluoride in glass",
			first(
				strings.Replace(tank("ammonium bifluoride", `"acid", "fluoride"`), `"mild"`, `"vessel": "beaker", "mild"`, 1)),
			first(
				strings.Replace(tank("ammonium bifluoride", `"acid", "fluoride"`), `"mild"`, `"vessel": "plastic", "mild"`,
					1))},
		{"an acid dip in steel", "zinc", "stop", "eats through",
			by(swap(`"mild": true`, `"mild": true, "vessel": "steel"`)),
			by(swap(`"mild": true`, `"mild": true, "vessel": "glass"`))},
		{"an acid dip in aluminium", "zinc", "stop", "eats through",
			by(swap(`"mild": true`, `"mild": true, "vessel": "aluminium"`)), nil},
		{"hydrochloric acid in stainless steel", "hand", "stop", "eats through",
			by(swap(`"holds": "sulfuric acid, 8 %"`, `"holds": "hydrochloric acid, 8 %", "vessel": "stainless steel"`)),
			nil},
		{"hydrogen chloride alone in the list, in steel", "hand", "stop", "eats through",
			by(
				swap(`"holds": "sulfuric acid, 8 %", "hazards": ["acid"]`,
					`"holds": "dip 2", "hazards": ["hydrogen chloride"], "vessel": "steel"`)), nil},
		{"the caustic etch in aluminium", "dial", "stop", "eats through",
			by(swap(`"vessel": "plastic", "does": ["etch"]`, `"vessel": "aluminium", "does": ["etch"]`)),
			by(swap(`"vessel": "plastic", "does": ["etch"]`, `"vessel": "stainless steel", "does": ["etch"]`))},
		{"the electrocleaner in zinc-coated ware", "hand", "stop", "eats through",
			by(swap(`"holds": "electrocleaner"`, `"holds": "electrocleaner", "vessel": "zinc-coated"`)), nil},
		{"acid gold in steel", "wheel", "stop", "eats through", by(swap(`"vessel": "glass"`, `"vessel": "steel"`)),
			nil},
		{"the library's nickel bath in steel", "zinc", "stop", "eats through",
			by(swap(`"library": "nickel-watts"`, `"library": "nickel-watts", "vessel": "steel"`)),
			by(swap(`"library": "nickel-watts"`, `"library": "nickel-watts", "vessel": "lined steel"`))},
		{"a library bath in steel, no sequence", "zinc", "stop", "eats through",
			by(bareCoats, swap(`"library": "nickel-watts"`, `"library": "nickel-watts", "vessel": "steel"`)),
			by(bareCoats)},
	}
}

// ownerRows are coats that harm or cheat whoever has the piece, and what is not said.
func ownerRows() []row {
	alloy := func(second string) []change {
		return by(swap(`"valence": 1, "density": "17.3 g/cm³", "efficiency": "35 %"`,
			`"density": "17.3 g/cm³", "efficiency": "35 %",
      "constituents": [{"metal": "Au", "valence": 1, "share": "98.5 %"}, `+second+`, "share": "1.5 %"}]`))
	}
	return []row{
		{"nickel on the skin", "wheel", "warning", "0.5 µg/cm²",
			by(swap(`"substrate": "leaded brass",`, `"substrate": "leaded brass", "skin_contact": true,`)), nil},
		{"nickel below the gold of a bezel that is worn", "bezels", "warning", "0.5 µg/cm²",
			by(swap(`"substrate": "brass",`, `"substrate": "brass", "skin_contact": true,`)), nil},
		{"nickel in the gold itself, on the skin", "hands", "warning", "0.5 µg/cm²",
			by(swap(`"substrate": "stainless steel",`, `"substrate": "stainless steel", "skin_contact": true,`),
				swap(`"metal": "Co", "valence": 2`, `"metal": "Ni", "valence": 2`), swap("cobalt hardened", "hardened"),
				swap(`, "like": "gold-acid-cobalt"`, "")),
			by(swap(`"substrate": "stainless steel",`, `"substrate": "stainless steel", "skin_contact": true,`))},
		{"nickel promised against the skin", "hands", "refused", "skin",
			by(planned("brass", "bright nickel", `"skin_contact": true,`)), by(planned("brass", "hard gold", ""))},
		{"pale gold promised against the skin", "hands", "refused", "skin",
			by(planned("brass", "pale gold", `"skin_contact": true,`)), by(planned("brass", "pale gold", ""))},
		{"nickel silver on the skin", "wheel", "caution", "holds nickel",
			by(swap(`"substrate": "leaded brass",`, `"substrate": "nickel silver", "skin_contact": true,`)),
			by(swap(`"substrate": "leaded brass",`, `"substrate": "nickel silver",`))},
		{"a finish promised on titanium", "hands", "refused", "oxide",
			by(swap(`"substrate": "stainless steel"`, `"substrate": "titanium"`)), nil},
		{"titanium that is not etched", "titanium", "warning", "an etch in hydrofluoric acid",
			by(cut("hydrofluoric"), cut("water 2")), nil},
		{"titanium heated in air", "titanium", "warning", "takes up oxygen",
			by(swap(`"holds": "argon"`, `"holds": "air"`)), nil},
		{"silver straight on titanium", "silver", "warning", "straight on etched titanium",
			by(swap(`"substrate": "leaded brass"`, `"substrate": "titanium"`)), nil},
		{"leaded brass with a sulfuric dip only", "wheel", "warning", "lead sulfate",
			by(replace("fluoboric", pickleTank)), nil},
		{"silvered leaded brass with a sulfuric dip only", "silver", "warning", "lead sulfate",
			by(replace("fluoboric", pickleTank)), nil},
		{"brass that may hold lead", "bezels", "caution", "whether the brass holds lead", by(),
			by(swap(`"substrate": "brass",`, `"substrate": "leaded brass",`))},
		{"gold on copper without a barrier", "wheel", "warning", "diffuses into the gold",
			by(cut(`"name": "nickel", "role"`), cut(`"layer": "nickel"`), cut("water 5"), behind("water 2", oneWater)),
			nil},
		{"silver without a strike", "silver", "warning", "by immersion",
			by(cut(`"silver strike", "role"`), cut(`"layer": "silver strike"`)), nil},
		{"stainless steel that is not activated", "hand", "warning", "without an activation",
			by(cut(`"holds": "sulfuric acid, 8 %"`), cut("acid water")), nil},
		{"stainless steel that waits in the air", "hand", "warning", "the piece waits",
			by(swap(`"name": "acid water"`, `"name": "acid water", "wait": "4 min"`)), nil},
		{"nickel that waits before gold", "wheel", "warning", "the piece waits",
			by(swap(`"name": "water 5"`, `"name": "water 5", "wait": "10 min"`)), nil},
		{"nickel that dries before gold", "wheel", "warning", "passive film",
			by(behind("water 5", entry(`{"kind": "dry", "holds": "warm air"}`))), nil},
		{"palladium straight on brass", "sulfite", "warning", "blackens",
			by(cut(`"name": "nickel", "role"`), cut(`"layer": "nickel"`), cut("water 5")), nil},
		{"a piece that is not cleaned", "wheel", "warning", "grease", by(cut("mild alkaline"), cut("water 1")), nil},
		{"no rinse before the piece dries", "silver", "warning", "dries on the piece",
			by(cut(`"drag-out"`), cut("water 9"), cut("last water")), nil},
		{"a finish free of cyanide in a line that holds some", "hands", "caution", "free of cyanide, the line is not",
			by(planned("zinc die casting", "sulfite gold", "")), by(planned("leaded brass", "sulfite gold", ""))},
		{"sulfite gold over cyanide copper in the shop's own line", "zinc", "caution", "the line is not",
			by(swap(`"substrate": "zinc die casting",`, `"substrate": "zinc die casting", "finish": "sulfite gold",`),
				replace(`"library": "nickel-watts"`, nickelCoat+",\n"+sulfiteCoat+"\n"), ahead("water 9", sulfiteTank)),
			nil},
		{"a base metal of no name", "wheel", "refused", "base metal", by(swap("leaded brass", "unobtainium")), nil},
		{"a base metal that is not known", "wheel", "refused", "base metal", by(swap("leaded brass", "unknown")), nil},
		{"steel that may be a spring", "spring", "refused", "springs", by(swap(`"high-carbon steel"`, `"steel"`)), nil},
		{"silver that may be plate", "wheel", "refused", "sterling", by(swap("leaded brass", "silver")), nil},
		{"a tank without a kind", "zinc", "refused", `"kind" is missing`, by(swap(`"kind": "activate", `, "")), nil},
		{"a dip that does not say what it holds", "zinc", "refused", "what the tank holds",
			by(swap(`"holds": "weak sulfuric acid, 1 %", `, "")), nil},
		{"a cleaner that does not say what it holds", "hand", "refused", "what the tank holds",
			by(swap(`"holds": "electrocleaner", `, "")), nil},
		{"an electroclean without a pole", "spring", "refused", "cathodic or anodic",
			by(swap(`"polarity": "anodic",`, "")), nil},
		{"a rinse of no stages", "zinc", "refused", "stages",
			by(swap(`"name": "water 3", "stages": 2`, `"name": "water 3", "stages": 0`)), nil},
		{"no list of hazards", "wheel", "refused", `"hazards" is missing`,
			by(swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"pH": 3.6`)), nil},
		{"a hazard of no name", "wheel", "refused", "one of cyanide",
			by(swap(`"hazards": ["cyanide", "acid"], "pH": 3.6`, `"hazards": ["prussic"], "pH": 3.6`)), nil},
		{"a pH that cannot be", "wheel", "refused", "above 0", by(swap(`"pH": 3.6`, `"pH": -1`)), nil},
		{"a pH with the high end first", "wheel", "refused", "low end first",
			by(swap(`"pH": 3.6`, `"pH": {"low": 4, "high": 2}`)), nil},
		{"a vessel of no name", "wheel", "refused", "one of glass", by(swap(`"vessel": "glass"`, `"vessel": "bucket"`)),
			nil},
		{"mild and strong at once", "zinc", "refused", "mild", by(swap(`"mild": true`, `"mild": true, "strong": true`)),
			nil},
		{"nickel among the constituents of gold", "hand", "tank", "nickel salts", alloy(`{"metal": "Ni", "valence": 2`),
			alloy(`{"metal": "In", "valence": 3`)},
		{"cadmium among the constituents of gold", "hand", "tank", "toxic metal", alloy(`{"metal": "Cd", "valence": 2`),
			alloy(`{"metal": "In", "valence": 3`)},
		{"a quickening dip of mercury", "silver", "tank", "toxic metal",
			by(
				behind("water 2",
					entry(`{"kind": "activate", "holds": "quickening, mercury salt", "time": "5 s"}`)+waterTank)), nil},
		{"hydrofluoric acid of a name alone", "zinc", "tank", "calcium gluconate",
			by(swap("weak sulfuric acid, 1 %", "weak hydrofluoric acid, 1 %")), nil},
		{"silver with ammonia", "silver", "tank", "can explode",
			by(swap(`"silver, cyanide"`, `"silver, cyanide, ammoniacal"`)), nil},
		{"a cleaner that scalds", "zinc", "tank", "scalds",
			by(swap(`"mild alkaline cleaner"`, `"mild alkaline cleaner", "temperature": "80 °C"`)), nil},
		{"a chromate dip of a name alone", "zinc", "tank", "causes cancer",
			by(ahead("last water", entry(`{"kind": "activate", "holds": "dichromate", "time": "5 s"}`)+waterTank)),
			nil},
		{"a stop and a warning at once", "spring", "beside a stop", "drives hydrogen",
			by(swap(`"anodic"`, `"cathodic"`), swap(`"hazards": ["acid"]`, `"hazards": ["acid"], "vessel": "steel"`)),
			nil},
	}
}

// bareCoats takes the sequence out of a job: the sheet starts at the first coat.
func bareCoats(text string) (string, bool) {
	from, to := strings.Index(text, `  "sequence": [`), strings.Index(text, `  "price": {`)
	if from < 0 || to < from {
		return text, false
	}
	return text[:from] + text[to:], true
}

// planned is a job of the finish alone, whatever stood there before.
func planned(metal, finish, more string) change {
	return func(string) (string, bool) {
		return `{"format": "laydown job 1", "job": "pointer", "substrate": "` + metal + `", "finish": "` + finish + `",
  ` + more + `
  "min_thickness": "1 µm", "min_to_average": 0.6, "parts": [{"name": "pointer", "count": 3, "area": "12.7 cm²"}]}`, true
	}
}

// A remark is one thing that a sheet says of a danger.
type remark struct {
	level plating.Severity
	text  string
}

// The places that a danger must stand in.
var places = [...]string{"the library", "the text", "the page", "JSON"}

// An outcome is all that comes of a job: remarks and tank lines by place.
type outcome struct {
	sheet            job.Sheet
	err              error // of the library
	status           int
	text, page, json string // blanks folded; JSON as it was written
	bad              string // standard error
	report           result
	said             [len(places)][]remark
	tanks            [len(places)][]string
}

// folded makes every run of blanks one.
func folded(s string) string { return strings.Join(strings.Fields(s), " ") }

// comesOf runs a job through the library and through the program; page names a file
// for the page. Without JSON its part stays empty.
func comesOf(t *testing.T, text, page string, withJSON bool) *outcome {
	t.Helper()
	o := &outcome{}
	j, err := job.Read(strings.NewReader(text), nil)
	if err == nil {
		o.sheet, err = j.Sheet()
	}
	o.err = err
	status, sheet, bad := call(t, text, "-html", page, "-")
	o.status, o.text, o.bad = status, folded(sheet), folded(bad)
	if withJSON {
		if status, o.json, _ = call(t, text, "-json", "-"); status != o.status {
			t.Errorf("status %d for the text, %d for JSON", o.status, status)
		}
	}
	written, err := os.ReadFile(page)
	if err != nil && !errors.Is(err, os.ErrNotExist) {
		t.Error(err)
	}
	o.page = folded(html.UnescapeString(string(written)))
	if o.json != "" {
		if err := json.Unmarshal([]byte(o.json), &o.report); err != nil {
			t.Error(err)
		}
	}
	o.said[0], o.tanks[0] = ofLibrary(&o.sheet)
	o.said[1], o.tanks[1] = ofText(sheet)
	o.said[2], o.tanks[2] = ofPage(o.page)
	o.said[3], o.tanks[3] = ofReport(&o.report)
	return o
}

// comeOf runs jobs side by side and returns what comes of each; those marked true with
// their JSON.
func comeOf(t *testing.T, jobs map[string]bool) map[string]*outcome {
	t.Helper()
	dir, all := t.TempDir(), make(map[string]*outcome, len(jobs))
	var lock sync.Mutex
	var wait sync.WaitGroup
	work := make(chan string, len(jobs))
	for i := range runtime.GOMAXPROCS(0) {
		wait.Add(1)
		go func() {
			defer wait.Done()
			for job := range work {
				page := filepath.Join(dir, fmt.Sprintf("sheet%d.html", i))
				o := comesOf(t, job, page, jobs[job])
				if err := os.Remove(page); err != nil && !errors.Is(err, os.ErrNotExist) {
					t.Error(err)
				}
				lock.Lock()
				all[job] = o
				lock.Unlock()
			}
		}()
	}
	for job := range jobs {
		work <- job
	}
	close(work)
	wait.Wait()
	return all
}

// ofLibrary returns what the library says of a job, and of each tank.
func ofLibrary(s *job.Sheet) (said []remark, tanks []string) {
	for _, f := range s.Findings {
		said = append(said, remark{f.Severity, f.Sentence()})
	}
	notes := slices.Clone(s.Notes)
	for _, c := range s.Coats() {
		notes = slices.Concat(notes, c.Before, c.Notes)
	}
	for _, n := range notes {
		said = append(said, remark{n.Severity, n.Line()})
	}
	for i := range s.Stops {
		tanks = append(tanks, plating.TankLine(s.Stops[i].Tank.Cautions))
	}
	return said, tanks
}

var (
	marked  = regexp.MustCompile(`^( *)(STOP|WARNING|!|i) +(\S.*)$`)
	heading = regexp.MustCompile(`^\d+\. `)
	front   = regexp.MustCompile(`<section[^>]*> *<h2>Before you start</h2>.*?</section>`)
	onPage  = regexp.MustCompile(
		`<td colspan="4" class="(stop|warning|caution|info)">(?:<span class="box"></span>)?<span class="k">[^<]*</span> (.*?)</td>`)
	tankOn = regexp.MustCompile(`class="hazard"><span class="k">!</span> (.*?)</(?:td|p)>`)
)

// levelOf reads a severity as text, page and JSON write it.
func levelOf(word string) plating.Severity {
	switch strings.ToLower(word) {
	case "stop":
		return plating.SeverityStop
	case "warning":
		return plating.SeverityWarning
	case "caution", "!":
		return plating.SeverityCaution
	}
	return plating.SeverityInfo
}

// ofText finds the marked paragraphs of a text sheet. The cautions in front are
// left out; the line under the name of a tank is that tank's.
func ofText(text string) (said []remark, tanks []string) {
	indent, front, under := 0, false, false // indent: of the lines that belong to the last paragraph
	var add func(string)
	for _, line := range strings.Split(text, "\n") {
		blanks := len(line) - len(strings.TrimLeft(line, " "))
		m := marked.FindStringSubmatch(line)
		switch {
		case line == "Before you start":
			front, indent = true, 0
		case line == "":
			front, indent = false, 0
		case front:
		case indent > 0 && blanks == indent:
			add(" " + strings.TrimSpace(line))
		case m != nil && under && m[2] == "!":
			tanks, indent = append(tanks, m[3]), blanks+2
			add = func(s string) { tanks[len(tanks)-1] += s }
		case m != nil:
			said, indent = append(said, remark{levelOf(m[2]), m[3]}), strings.Index(line, m[3])
			add = func(s string) { said[len(said)-1].text += s }
		default:
			indent = 0
		}
		under = heading.MatchString(line)
	}
	return said, tanks
}

// ofPage does the same with a page.
func ofPage(page string) (said []remark, tanks []string) {
	page = front.ReplaceAllString(page, "")
	for _, m := range onPage.FindAllStringSubmatch(page, -1) {
		said = append(said, remark{levelOf(m[1]), m[2]})
	}
	for _, m := range tankOn.FindAllStringSubmatch(page, -1) {
		tanks = append(tanks, m[1])
	}
	return said, tanks
}

// ofReport does the same with JSON.
func ofReport(r *result) (said []remark, tanks []string) {
	for _, text := range r.Reasons {
		said = append(said, remark{plating.SeverityStop, text})
	}
	for _, f := range r.Findings {
		said = append(said, remark{f.Severity, plating.Sentences(f.Text, f.Remedy, f.Reason) + " [" + f.Source + "]"})
	}
	notes := slices.Clone(r.Remarks)
	for _, c := range r.coats() {
		notes = slices.Concat(notes, c.Before, c.Notes)
	}
	for _, n := range notes {
		said = append(said, remark{n.Severity, n.Line()})
	}
	for _, tank := range r.Tanks {
		line := ""
		for _, n := range tank.Cautions {
			line += n.Line() + " "
		}
		tanks = append(tanks, line)
	}
	return said, tanks
}

// holds reports whether a text holds a word, capitals apart.
func holds(text, word string) bool {
	return strings.Contains(strings.ToLower(text), strings.ToLower(word))
}

// lines counts the tank lines that hold a word.
func lines(tanks []string, word string) int {
	n := 0
	for _, text := range tanks {
		if holds(text, word) {
			n++
		}
	}
	return n
}

// placed is the line of a file, or the key of a source.
var placed = regexp.MustCompile(`line \d+|\[\w+\]`)

// refusal judges a job that is refused: with the reason, the place in the file or
// the source, and no sheet.
func (o *outcome) refusal(t *testing.T, word string) {
	var file *units.FileError
	var plan *sequence.RefusedError
	switch {
	case errors.As(o.err, &file) && (file.Line == 0 || file.Path == ""):
		t.Errorf("the message names no line and field: %v", o.err)
	case errors.As(o.err, &plan) && plan.Source == "":
		t.Errorf("the message names no source: %v", o.err)
	}
	if o.err == nil || !holds(o.err.Error(), word) {
		t.Errorf("not refused with %q: %v", word, o.err)
	}
	if printed := o.text + o.page + o.json; o.status != 1 || printed != "" {
		t.Errorf("status %d, and a sheet of %d letters", o.status, len(printed))
	}
	if !holds(o.bad, word) || !placed.MatchString(o.bad) {
		t.Errorf("standard error does not say %q with its place or source: %s", word, o.bad)
	}
}

// quantity is a figure with a unit that somebody sets, waits for, weighs or pays.
var quantity = regexp.MustCompile(`"-?[\d.e+]+ (A|mA|A/dm²|A·min|s|min|h|g|mg|kg|V|W|L|mL|g/L|mg/L|µm|kW·h)"`)

// alone reports whether a figure stands in a text and is not the end of another.
func alone(text, figure string) bool {
	for at := 0; ; at++ {
		i := strings.Index(text[at:], figure)
		if i < 0 {
			return false
		}
		if at += i; at == 0 || !strings.ContainsRune("0123456789.", rune(text[at-1])) {
			return true
		}
	}
}

// sets judges that a sheet that stops sets nothing: no amps, minutes, feed or price.
func (o *outcome) sets(t *testing.T) {
	s := &o.sheet
	said := strings.Contains(o.bad, "STOP: do not start") && strings.Contains(o.text, "STOP ") &&
		strings.Contains(o.page, `<section class="stop"> <h2>STOP</h2>`) && o.report.Stop && len(o.report.Reasons) > 0
	if !s.Forbidden() || o.status != 1 || !said {
		t.Errorf("status %d, %s: it does not stop everywhere", o.status, o.bad)
		return
	}
	var figures []string
	for i := range s.Stops {
		if c := &s.Stops[i].Tank; c.Set > 0 {
			figures = append(figures, amps(c.Amps))
		}
	}
	for _, c := range s.Coats() {
		figures = append(figures, amps(c.Result.Current), clock(c.Result.Time))
	}
	for i := range s.Baths {
		if f := s.Baths[i].Feed; f != nil && f.SaltMass > 0 {
			figures = append(figures, salted(f.SaltMass))
		}
	}
	if s.Quote != nil {
		figures = append(figures, s.Quote.Total.StringFixed(s.Quote.Currency.Places))
	}
	figures = append(figures, "[ ]", `<td class="w">`, "A·min", "at the thinnest spot", "To bring it back", "EUR")
	for _, f := range figures {
		for where, what := range map[string]string{"the text": o.text, "the page": o.page, "JSON": o.json} {
			if alone(what, f) {
				t.Errorf("%s of a sheet that stops prints %q", where, f)
			}
		}
	}
	if hit := quantity.FindString(o.json); hit != "" || o.report.Price != nil || o.report.Baths != nil {
		t.Errorf("JSON of a sheet that stops gives %s, a price or baths", hit)
	}
}

// runs judges the safe neighbour: it may be run, and prints amps and minutes.
func (o *outcome) runs(t *testing.T) bool {
	s := &o.sheet
	if o.err != nil || o.status != 0 || s.Forbidden() {
		t.Errorf("the safe neighbour is not run: status %d, %s%v", o.status, o.bad, s.Reasons())
		return false
	}
	coats, written := s.Coats(), o.report.coats()
	if len(coats) == 0 || o.json != "" && (o.report.Stop || len(written) != len(coats)) {
		t.Fatal("the safe neighbour has no coat, or JSON stops it")
	}
	for i, c := range coats {
		current, time := amps(c.Result.Current), clock(c.Result.Time)
		if !strings.Contains(o.text, "[ ] set "+current) || !strings.Contains(o.text, "[ ] time "+time) {
			t.Errorf("the text of the safe neighbour does not set %s for %s", current, time)
		}
		const cell = `<td class="v">`
		if !strings.Contains(o.page, cell+current) || !strings.Contains(o.page, cell+time) {
			t.Errorf("the page of the safe neighbour does not set %s for %s", current, time)
		}
		if o.json != "" && (written[i].Current == "" || written[i].Time == "") {
			t.Errorf("JSON of the safe neighbour does not set coat %d", i+1)
		}
	}
	if s.Quote != nil && (!strings.Contains(o.text, "total EUR") || o.json != "" && o.report.Price == nil) {
		t.Error("the safe neighbour has no price")
	}
	return true
}

// check holds what comes of the dangerous edit against what comes of its neighbour.
func (r *row) check(t *testing.T, danger, safe *outcome) (kind string) {
	kind = r.kind
	level := plating.SeverityStop
	switch {
	case kind == "refused" || kind == "stop" && danger.err != nil:
		kind = "refused"
		danger.refusal(t, r.word)
	case danger.err != nil:
		t.Fatalf("refused: %v", danger.err)
	case kind == "warning" || kind == "beside a stop":
		level = plating.SeverityWarning
	case kind == "caution" || kind == "tank":
		level = plating.SeverityCaution
	}
	spoken := func(m remark) bool { return m.level >= level && holds(m.text, r.word) }
	for i, where := range places {
		switch {
		case kind == "refused":
		case kind == "tank":
			if n := lines(safe.tanks[0], r.word); lines(danger.tanks[i], r.word) <= n {
				t.Errorf("%s says no more of %q at the tank than for the safe neighbour", where, r.word)
			}
		case !slices.ContainsFunc(danger.said[i], spoken):
			t.Errorf("%s says nothing of %q", where, r.word)
		}
		for _, m := range safe.said[i] {
			if kind != "tank" && holds(m.text, r.word) {
				t.Errorf("%s of the safe neighbour speaks of %q: %s", where, r.word, m.text)
			}
		}
	}
	// What the library finds stands whole in the text and on the page.
	for _, f := range danger.sheet.Findings {
		if kind == "refused" || !holds(f.Sentence(), r.word) {
			continue
		}
		for i, what := range []string{danger.text, danger.page} {
			if !strings.Contains(what, folded(f.Sentence())) {
				t.Errorf("%s does not print: %s", places[1+i], f)
			}
		}
	}
	switch stop := danger.err == nil && danger.sheet.Forbidden(); {
	case kind == "stop" || kind == "beside a stop":
		danger.sets(t)
	case stop || danger.status != 0 && kind != "refused":
		t.Errorf("a %s stops the sheet: %v", kind, danger.sheet.Reasons())
	}
	return kind
}

// TestPropertyDangerousEdits: each dangerous edit of a job shows in the library's
// findings or notes, in the text, on the page and in JSON, with its reason, and a
// sheet that stops sets nothing. The safe neighbour does not speak of it and prints
// amps and minutes.
func TestPropertyDangerousEdits(t *testing.T) {
	jobs := benchJobs(t)
	rows := slices.Concat(goldRows(), namedRows(), orderRows(), anodeRows(), springRows(), attackRows(), gasRows(),
		ownerRows(), heldRows(), heatRows(), spelledRows())
	kinds, names, all := map[string]int{}, map[string]bool{}, map[string]bool{}
	if !testdata.Slow() { // every other one
		for k := 1; k < len(rows); k++ {
			rows = slices.Delete(rows, k, k+1)
		}
	}
	for _, r := range rows {
		if names[r.name] {
			t.Errorf("two rows are called %q", r.name)
		}
		names[r.name] = true
		all[edited(t, r.name, jobs[r.base], r.danger)] = true
		near := edited(t, r.name, jobs[r.base], r.safe)
		all[near] = all[near] || r.safe == nil
	}
	comes := comeOf(t, all)
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			job, near := edited(t, r.name, jobs[r.base], r.danger), edited(t, r.name, jobs[r.base], r.safe)
			if job == near {
				t.Fatal("the dangerous job is the safe one")
			}
			if !comes[near].runs(t) {
				t.Logf("the safe job:\n%s", near)
			}
			kinds[r.check(t, comes[job], comes[near])]++
			if t.Failed() {
				t.Logf("the job:\n%s\nfound:\n%v\n%s", job, comes[job].sheet.Findings, comes[job].bad)
			}
		})
	}
	if len(rows) < 70 {
		t.Errorf("only %d edits", len(rows))
	}
	t.Logf("%d edits: %v", len(rows), kinds)
}

// TestPropertyDangerousEditsPlaces: each hazard of each tank of the default job is
// named in the line under that tank's name, in the text, on the page and in JSON.
// On the whole sheet ten lines at most begin with an exclamation mark, and no
// sentence in front stands there twice.
func TestPropertyDangerousEditsPlaces(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	o := comesOf(t, string(raw), filepath.Join(t.TempDir(), "sheet.html"), true)
	if o.err != nil || len(o.sheet.Stops) < 10 || len(o.report.Tanks) != len(o.sheet.Stops) {
		t.Fatalf("%v, %d tanks, %d in JSON", o.err, len(o.sheet.Stops), len(o.report.Tanks))
	}
	_, text, _ := call(t, "") // the default
	for i := range o.sheet.Stops {
		c := &o.sheet.Stops[i].Tank
		head := fmt.Sprintf("\n%d. %s", c.Number, strings.ToUpper(c.Name))
		_, rest, found := strings.Cut(text, head)
		block, _, _ := strings.Cut(rest, "\n\n")
		_, section, onPage := strings.Cut(o.page, fmt.Sprintf("%d. %s", c.Number, c.Name))
		section, _, _ = strings.Cut(section, "</section>")
		if !found || !onPage {
			t.Fatalf("tank %d, %s, is not printed", c.Number, c.Name)
		}
		_, tank := ofText(fmt.Sprintf("%d.%s", c.Number, block))
		_, card := ofPage(section)
		_, entry := ofReport(&result{Tanks: o.report.Tanks[i : i+1]})
		for _, word := range c.Hazards.Words() {
			for where, at := range map[string][]string{"the text": tank, "the page": card, "JSON": entry} {
				if lines(at, word) != 1 {
					t.Errorf("%s, tank %d, %s: %s is not named in %q", where, c.Number, c.Name, word, at)
				}
			}
		}
	}
	front, _, _ := strings.Cut(text, "\nSequence\n")
	_, front, _ = strings.Cut(front, "\nBefore you start\n")
	if strings.Count(front, "\n   ! ")+1 < 3 {
		t.Errorf("hardly a caution in front:\n%s", front)
	}
	met := map[string]bool{}
	for _, sentence := range regexp.MustCompile(`[.!]( |$)|\[[^\]]*\]`).Split(folded(front), -1) {
		sentence = strings.ToLower(strings.Trim(sentence, " !."))
		if sentence != "" && met[sentence] {
			t.Errorf("said twice in front: %q", sentence)
		}
		met[sentence] = true
	}
	n := 0
	for _, line := range strings.Split(text, "\n") {
		if strings.HasPrefix(strings.TrimSpace(line), "!") {
			n++
		}
	}
	if n > 10 {
		t.Errorf("%d lines of the default sheet begin with an exclamation mark, more than 10", n)
	}
}

// TestPropertyDangerousEditsMass: of a job that must not be run, JSON says in no note
// how much metal a coat takes or a bath wants back.
func TestPropertyDangerousEditsMass(t *testing.T) {
	job := edited(t, "hands", benchJobs(t)["hands"], by(swap(strikePH, `"pH": 1`)))
	o := comesOf(t, job, filepath.Join(t.TempDir(), "sheet.html"), true)
	o.sets(t)
	mass := regexp.MustCompile(`\d (g|mg|kg) of`)
	for where, what := range map[string]string{"the text": o.text, "the page": o.page, "JSON": o.json} {
		if hit := mass.FindString(what); hit != "" {
			t.Errorf("%s of a sheet that stops says %q", where, hit)
		}
	}
}

// TestPropertyDangerousEditsBathFile: a bath of a file of the shop's own that gives
// only the high end of a pH at which its cyanide does not stand is refused, or stops
// the job; with a high end at which it stands it is not.
func TestPropertyDangerousEditsBathFile(t *testing.T) {
	bath := func(name, metal, density, ph string) string {
		given := func(low, high string) string {
			return `{"low": "` + low + `", "high": "` + high + `", "source": "bench book", "seen": "measured"}`
		}
		return `{"format": "laydown baths 1", "baths": [{"key": "bench", "name": "` + name + `",
  "metal": "` + metal + `", "use": ["strike", "finish"], "hazards": ["cyanide"],
  "density": ` + given(density, density) + `,
  "efficiency": ` + given("30 %", "40 %") + `, "current_density": ` + given("0.5 A/dm²", "2 A/dm²") + `,
  "pH": {"high": ` + ph + `, "source": "bench book", "seen": "measured"}}]}`
	}
	job := lineOf("brass knob", "leaded brass", `
  "baths": "bench.json",`, []string{nickelCoat,
		`    {"name": "coat", "role": "strike", "min_to_average": 0.6, "time": "21 s",
     "bath": {"library": "bench", "content": "2 g/L", "volume": "5 L"}}`},
		[]string{washTank, leadTank, nickelTank, oneWater, entry(`{"layer": "coat", "live_entry": true}`),
			entry(`{"kind": "drag-out rinse"}`), lastTanks})
	for _, c := range []struct {
		name, bath string
		danger     bool
	}{
		{"gold cyanide up to pH 2", bath("gold, cyanide", "Au", "19 g/cm³", "2"), true},
		{"gold cyanide up to pH 11", bath("gold, cyanide", "Au", "19 g/cm³", "11"), false},
		{"silver cyanide up to pH 5", bath("silver, cyanide", "Ag", "10.4 g/cm³", "5"), true},
		{"silver cyanide up to pH 12.5", bath("silver, cyanide", "Ag", "10.4 g/cm³", "12.5"), false},
	} {
		dir := t.TempDir()
		for file, text := range map[string]string{"job.json": edited(t, c.name, job, nil), "bench.json": c.bath} {
			if err := os.WriteFile(filepath.Join(dir, file), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		status, text, bad := call(t, "", filepath.Join(dir, "job.json"))
		said := folded(bad)
		list, _ := ofText(text)
		for _, m := range list {
			if m.level == plating.SeverityStop {
				said += m.text
			}
		}
		if c.danger && (status != 1 || !holds(said, hcn) || strings.Contains(text, "[ ] set ")) {
			t.Errorf("%s: status %d, %q", c.name, status, said)
		}
		if !c.danger && (status != 0 || holds(said, hcn) || !strings.Contains(text, "[ ] set ")) {
			t.Errorf("%s: status %d, %q", c.name, status, said)
		}
	}
}
