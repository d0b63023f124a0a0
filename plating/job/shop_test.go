package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"os"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// A job with every field that asks for more than coats.
const shop = `{
  "format": "laydown job 1",
  "substrate": "stainless steel",
  "finish": "hard gold",
  "skin_contact": false,
  "parts": [{"count": 24, "area": "5.2 cm²"}],
  "layers": [
    {"name": "strike", "role": "strike", "min_to_average": 0.6,
     "bath": {"library": "gold-acid-strike",
       "volume": "3 L", "content": "1.5 g/L", "draw_limit": "8 %",
       "temperature": {"set": "30 °C"}, "salt": "KAu(CN)2"}},
    {"name": "gold", "min_to_average": 0.6, "min_thickness": "1 µm", "current_density": "0.5 A/dm²",
     "bath": {"name": "gold, acid cyanide", "metal": "Au", "density": "17.3 g/cm³",
       "efficiency": {"low": "33 %", "high": "39 %"},
       "hazards": ["cyanide", "acid"],
       "content": "8 g/L", "volume": "5 L",
       "like": "gold-acid-cobalt"}}
  ],
  "sequence": [
    {"kind": "soak clean", "holds": "mild alkaline cleaner", "does": ["clean"], "time": {"low": "2 min", "high": "5 min"}},
    {"kind": "rinse", "stages": 2, "flow": "counterflow"},
    {"kind": "activate", "holds": "sulfuric acid, 5 %", "does": ["activate", "deoxidise"], "hazards": ["acid"],
     "strong": true, "polarity": "cathodic", "current_density": "1 A/dm²", "volts": {"low": "2 V", "high": "6 V"}, "time": "60 s"},
    {"kind": "rinse", "stages": 1, "flow": "running", "acidified": true},
    {"layer": "strike", "live_entry": true},
    {"kind": "drag-out rinse"},
    {"kind": "rinse", "stages": 2, "flow": "counterflow", "station": "B", "wait": "5 s"},
    {"layer": 2},
    {"kind": "drag-out rinse"},
    {"kind": "rinse", "stages": 2, "flow": "counterflow"},
    {"kind": "final rinse", "deionised": true},
    {"kind": "dry", "holds": "warm air", "temperature": "60 °C", "time": "10 min"}
  ],
  "rinse": {"hangs": "vertical, well drained",
    "drain": "10 s", "liquid": "thin",
    "ratio": 1000,
    "drag_out_tank": "3 L", "loads": 10, "evaporation": "40 mL"},
  "price": {
    "currency": "EUR", "rounding": "half up",
    "metals": [{"metal": "Au", "price": "105.20", "per": "g", "as_of": "2026-11-20"}],
    "line_per_hour": "48", "handling": "20 s",
    "labour": [{"task": "rack", "time": "30 min", "per_hour": "42"}],
    "salts": [{"name": "cleaner", "mass": "40 g", "price": "6.50", "per": "kg"}],
    "refined": [{"metal": "Au", "mass": "0.02 g", "paid": "95 %"}],
    "per_kilowatt_hour": "0.31", "heating": "1.2 kWh", "rectifier": "80 %",
    "set_up": "25", "shared_by": 24,
    "yield": "96 %", "strip": "1.50", "recovered": "80 %",
    "margin": "30 %",
    "minimum": "60", "tax": "20 %", "tax_before_credits": true
  }
}
`

// readShop reads the job above with some of its text replaced.
func readShop(t *testing.T, change ...string) job.Job {
	t.Helper()
	text := strings.NewReplacer(change...).Replace(shop)
	if text == shop && len(change) > 0 {
		t.Fatal("nothing changed")
	}
	j, err := job.Read(strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

// sheetOf works a job out.
func sheetOf(t testing.TB, j job.Job) *job.Sheet {
	t.Helper()
	s, err := j.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	return &s
}

// TestShopReads: every field of the package comment arrives where it belongs.
func TestShopReads(t *testing.T) {
	j := readShop(t)
	if j.Substrate != "stainless steel" || j.Finish != sequence.HardGold || len(j.Steps) != 12 ||
		j.Steps[4].Layer != "strike" ||
		j.Steps[7].Layer != "2" || !j.Steps[4].LiveEntry || j.Steps[6].Station != "B" || j.Steps[6].Wait != 5 ||
		j.Steps[5].Flow != nil || j.Steps[2].Polarity != sequence.Cathodic || !j.Steps[2].Strong ||
		j.Steps[1].Stages != 2 ||
		!j.Steps[10].Deionised || !j.Steps[3].Acidified || *j.Steps[2].Hazards != plating.HazardAcid {
		t.Errorf("%v, steps %+v", j.Finish, j.Steps)
	}
	if b := j.Layers[0].Bath; b.Library != "gold-acid-strike" || b.Temperature.Set != units.Celsius(30) ||
		b.DrawLimit != 0.08 || b.Salt.String() == "" || b.Content.Low != 1.5*units.GramPerLitre ||
		b.Volume != 3*units.Litre {
		t.Errorf("library layer %+v", b)
	}
	if b := j.Layers[1].Bath; b.Like != "gold-acid-cobalt" || b.Efficiency.Low != 0.33 || b.Efficiency.High != 0.39 {
		t.Errorf("own layer %+v", b)
	}
	if r := j.Rinse; r.Ratio != 1000 || r.Stages != 0 || r.Loads != 10 || r.DragOutTank != 3*units.Litre ||
		r.Drain != 10 {
		t.Errorf("rinse %+v", r)
	}
	p := j.Price
	if p.Prices[0].Amount.String() != "105.2" || p.Allowance.Yield.String() != "0.96" ||
		p.Margin.OfPrice.String() != "0.3" || p.Tax.Rate.String() != "0.2" ||
		p.Refined[0].Paid.String() != "0.95" || !p.Tax.BeforeCredits || p.SetUp.SharedBy != 24 || p.Rectifier != 0.8 ||
		p.Labour[0].Minutes.String() != "30" || p.Salts[0].Mass.Amount.String() != "40" {
		t.Errorf("price %+v", p)
	}
	s := sheetOf(t, j)
	if s.Forbidden() || s.Base != sequence.StainlessSteel || len(s.Findings) != 1 ||
		s.Findings[0].Severity != plating.SeverityCaution || s.Findings[0].Code != sequence.CodeCyanideAcid {
		t.Fatalf("stop %v, %v", s.Forbidden(), s.Findings)
	}
	if c := s.Coats()[0]; c.Layer.Time == 0 || c.Layer.CurrentDensity == 0 ||
		c.Layer.Bath.Temperature.Set != units.Celsius(30) {
		t.Errorf("strike of the library %+v", c.Layer)
	}
	if v := s.Coats()[1].Spread; !v.Known || v.Efficiency.Low != 0.33 || v.Efficiency.High != 0.39 {
		t.Errorf("spread of the gold %+v", v)
	}
}

// TestDistributions: number, readings and class each arrive with where they come
// from and how sure they are.
func TestDistributions(t *testing.T) {
	for text, want := range map[string]plating.Distribution{
		`"min_to_average": 0.4, "basis": "boundary elements", "uncertainty": "6 %"`: {MinToAverage: 0.4,
			Basis: "boundary elements", Uncertainty: 0.06},
		`"readings": ["1.5 µm", "0.9 µm", "0.6 µm"]`: {MinToAverage: 0.6,
			Basis: "measured at 3 places"},
		`"shape_class": "open work"`: {MinToAverage: 0.35,
			Basis: "rule of thumb for the class \"open work\", 0.35 to 0.65, low end taken; common practice, no source"},
	} {
		j, err := job.Read(strings.NewReader(strings.Replace(right, `"min_to_average": 0.6`, text, 1)), nil)
		if err != nil {
			t.Errorf("%s: %v", text, err)
			continue
		}
		if d := sheetOf(t, j).Coats()[0].Layer.Distribution; math.Abs(float64(d.MinToAverage-want.MinToAverage)) > 1e-12 ||
			d.Basis != want.Basis || math.Abs(float64(d.Uncertainty-want.Uncertainty)) > 1e-6 {
			t.Errorf("%s: %+v, want %+v", text, d, want)
		}
	}
}

var shopWrongs = []struct {
	name, old, new string
	line           int
	path, want     string
}{
	{"a finish nobody knows", `"finish": "hard gold"`, `"finish": "shiny"`, 4, "finish", "hard gold"},
	{"a finish that is a number", `"finish": "hard gold"`, `"finish": 24`, 4, "finish", "a word in quotes"},
	{"a substrate nobody knows", `"stainless steel"`, `"old metal"`, 3, "substrate", "stainless steel"},
	{"no substrate", `"substrate": "stainless steel",`, ``, 1, "", `"substrate" is missing`},
	{"skin contact in words", `"skin_contact": false`, `"skin_contact": "yes"`, 5, "skin_contact", "true or false"},
	{"a minimum thickness beside layers", `"skin_contact": false`, `"min_thickness": "1 µm"`, 5, "min_thickness",
		`each of the "layers"`},
	{"a ratio twice", `"min_to_average": 0.6, "min_thickness"`,
		`"min_to_average": 0.6, "shape_class": "open work", "min_thickness"`, 12, "layers[2].shape_class", "one of"},
	{"a class nobody knows", `"min_to_average": 0.6, "min_thickness"`, `"shape_class": "lumpy", "min_thickness"`, 12,
		"layers[2].shape_class", "open work; open recess; for anything deeper compute or measure the ratio"},
	{"two readings", `"min_to_average": 0.6, "min_thickness"`, `"readings": ["1 µm", "2 µm"], "min_thickness"`, 12,
		"layers[2].readings", "three or more"},
	{"a reading without unit", `"min_to_average": 0.6, "min_thickness"`,
		`"readings": ["1 µm", 2, "1 µm"], "min_thickness"`, 12, "layers[2].readings[2]", "unit"},
	{"evaporation below zero", `"temperature": {"set": "30 °C"}, "salt"`,
		`"evaporation": "-5 mL", "temperature": {"set": "30 °C"}, "salt"`, 11, "layers[1].bath.evaporation",
		"zero or more"},
	{"evaporation in grams", `"temperature": {"set": "30 °C"}, "salt"`,
		`"evaporation": "5 g", "temperature": {"set": "30 °C"}, "salt"`, 11, "layers[1].bath.evaporation", "one of mass"},
	{"a basis of readings", `"min_to_average": 0.6, "min_thickness"`,
		`"readings": ["1 µm", "1 µm", "1 µm"], "basis": "x", "min_thickness"`, 12, "layers[2].basis", "themselves"},
	{"an uncertainty over one", `"min_to_average": 0.6, "min_thickness"`,
		`"min_to_average": 0.6, "uncertainty": "120 %", "min_thickness"`, 12, "layers[2].uncertainty", ""},
	{"no layers at all", `"layers": [`, `"layers": [], "never": [`, 7, "layers", "is empty"},
	{"a library bath nobody knows", `"library": "gold-acid-strike"`, `"library": "gold-magic"`, 9,
		"layers[1].bath.library", "gold-acid-strike"},
	{"a library bath by number", `"library": "gold-acid-strike"`, `"library": 3`, 9, "layers[1].bath.library",
		"in quotes"},
	{"library and like", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "like": "gold-neutral"`, 9,
		"layers[1].bath.like", "not both"},
	{"own figures of a library bath", `"library": "gold-acid-strike"`,
		`"library": "gold-acid-strike", "efficiency": "10 %"`, 9, "layers[1].bath.efficiency", `beside "library"`},
	{"hazards of a library bath", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "hazards": []`, 9,
		"layers[1].bath.hazards", `"library"`},
	{"a name of a library bath", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "name": "ours"`, 9,
		"layers[1].bath.name", `beside "library"`},
	{"a use of a library bath", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "use": ["strike"]`, 9,
		"layers[1].bath.use", `beside "library"`},
	{"a look of a library bath", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "look": ["bright"]`, 9,
		"layers[1].bath.look", `beside "library"`},
	{"a live entry of a library bath", `"library": "gold-acid-strike"`,
		`"library": "gold-acid-strike", "live_entry": true`, 9, "layers[1].bath.live_entry", `beside "library"`},
	{"a range of temperature of a library bath", `{"set": "30 °C"}`, `{"low": "28 °C", "high": "32 °C"}`, 11,
		"layers[1].bath.temperature", `beside "library"`},
	{"volts of a library bath", `"library": "gold-acid-strike"`, `"library": "gold-acid-strike", "volts": {"set": "2 V"}`,
		9, "layers[1].bath.volts", `beside "library"`},
	{"a current density set in the bath", `"like": "gold-acid-cobalt"`,
		`"like": "gold-acid-cobalt", "current_density": {"low": "0.3 A/dm²", "high": "1 A/dm²", "set": "0.5 A/dm²"}`, 17,
		"layers[2].bath.current_density.set", "belongs to the layer"},
	{"a temperature set in a tank", `"temperature": "60 °C", "time": "10 min"`,
		`"temperature": {"set": "60 °C"}, "time": "10 min"`, 32, "sequence[12].temperature.set", "goes with a bath"},
	{"a pH of a tank with one end", `"strong": true`, `"strong": true, "pH": {"high": 2}`, 23, "sequence[3].pH",
		"one end of two"},
	{"a word of a rinse in a cleaner", `"holds": "mild alkaline cleaner"`,
		`"holds": "mild alkaline cleaner", "stages": 2`, 20, "sequence[1].stages", "of a rinse"},
	{"a word of a cleaner in a rinse", `"stages": 1, "flow": "running"`,
		`"stages": 1, "flow": "running", "time": "1 min"`, 24, "sequence[4].time", "does not go with a rinse"},
	{"a time beside a layer", `{"layer": "strike", "live_entry": true}`, `{"layer": "strike", "time": "20 s"}`, 25,
		"sequence[5].time", `does not go with "layer"`},
	{"a layer that is a list", `{"layer": "strike"`, `{"layer": ["strike"]`, 25, "sequence[5].layer", "is a list"},
	{"a temperature without a setting", `{"set": "30 °C"}`, `{}`, 11, "layers[1].bath.temperature", `"set"`},
	{"a bath like one of another metal", `"like": "gold-acid-cobalt"`, `"like": "nickel-watts"`, 17,
		"layers[2].bath.like", "Au"},
	{"a salt without the metal", `"salt": "KAu(CN)2"`, `"salt": "NaCl"`, 11, "layers[1].bath.salt", "Au"},
	{"a salt that is none", `"salt": "KAu(CN)2"`, `"salt": "Kau(CN"`, 11, "layers[1].bath.salt", ""},
	{"a band the wrong way round", `{"low": "33 %", "high": "39 %"}`, `{"low": "39 %", "high": "33 %"}`, 14,
		"layers[2].bath.efficiency", "low end first"},
	{"half a band", `{"low": "33 %", "high": "39 %"}`, `{"low": "39 %"}`, 14, "layers[2].bath.efficiency",
		`"low" and "high", or one value`},
	{"half a density", `"17.3 g/cm³"`, `{"low": "17.3 g/cm³"}`, 13, "layers[2].bath.density",
		`"low" and "high", or one value`},
	{"an efficiency over one", `"high": "39 %"`, `"high": "139 %"`, 14, "layers[2].bath.efficiency.high", ""},
	{"a point of three figures", `"efficiency": {"low": "33 %", "high": "39 %"}`,
		`"efficiency_lines": [{"points": [{"current_density": "1 A/dm²", "efficiency": "30 %", "low": "20 %"}]}]`, 14,
		"layers[2].bath.efficiency_lines[1].points[1]", `"efficiency", or`},
	{"a point of nothing", `"efficiency": {"low": "33 %", "high": "39 %"}`,
		`"efficiency_lines": [{"points": [{"current_density": "1 A/dm²"}]}]`, 14,
		"layers[2].bath.efficiency_lines[1].points[1]",
		`"low" and "high"`},
	{"a tank of no kind", `{"kind": "rinse", "stages": 2, "flow": "counterflow"},
    {"kind": "activate"`, `{"stages": 2},
    {"kind": "activate"`, 21, "sequence[2]", `"kind" is missing`},
	{"a tank of a kind nobody knows", `"kind": "activate"`, `"kind": "wake up"`, 22, "sequence[3].kind", "activate"},
	{"an unknown kind by that word", `"kind": "activate"`, `"kind": "unknown"`, 22, "sequence[3].kind",
		"what the tank is for"},
	{"a coat without its layer", `{"layer": 2}`, `{"kind": "plate"}`, 28, "sequence[8].kind", `"layer"`},
	{"a layer by a name nobody gave", `{"layer": "strike"`, `{"layer": "flash"`, 25, "sequence[5].layer",
		"name of a layer"},
	{"a layer twice", `{"layer": 2}`, `{"layer": 1}`, 28, "sequence[8]", `lays layer "strike"; need "gold" here`},
	{"a layer that no tank lays", "{\"layer\": 2},\n", "\n", 19, "sequence", `no tank for layer "gold"`},
	{"a set-up shared by fewer than there are", `"shared_by": 24`, `"shared_by": 3`, 46, "price.shared_by",
		"the job's own 24"},
	{"a layer by a number too high", `{"layer": 2}`, `{"layer": 3}`, 28, "sequence[8].layer", "from 1 to 2"},
	{"a rinse of no stages", `"stages": 1, "flow": "running"`, `"stages": 0, "flow": "running"`, 24, "sequence[4].stages",
		"1 to 9"},
	{"a flow nobody knows", `"flow": "running"`, `"flow": "uphill"`, 24, "sequence[4].flow", "counterflow"},
	{"an effect nobody knows", `"does": ["clean"]`, `"does": ["shine"]`, 20, "sequence[1].does[1]",
		"clean, deoxidise, activate"},
	{"a negative stay", `"time": "60 s"`, `"time": "-60 s"`, 23, "sequence[3].time", "above zero"},
	{"a stay without unit", `"time": "60 s"`, `"time": 60`, 23, "sequence[3].time", "unit"},
	{"a shape of drag-out nobody knows", `"vertical, well drained"`, `"sideways"`, 34, "rinse.hangs",
		"vertical, well drained; vertical, poorly drained"},
	{"drag-out twice", `"hangs": "vertical, well drained"`, `"hangs": "vertical, well drained", "drag_out": "1 mL"`, 34,
		"rinse", "either"},
	{"no drag-out", `"hangs": "vertical, well drained",`, ``, 34, "rinse", "either"},
	{"a ratio below one", `"ratio": 1000`, `"ratio": 0.5`, 36, "rinse.ratio", "1 to 1e12"},
	{"stages beside a sequence", `"ratio": 1000`, `"ratio": 1000, "stages": 2`, 36, "rinse.stages",
		"each tank says its own"},
	{"loads without a tank", `"drag_out_tank": "3 L", `, ``, 34, "rinse", `"drag_out_tank"`},
	{"a currency nobody has", `"EUR"`, `"ABC"`, 39, "price.currency", "ISO 4217"},
	{"a rounding nobody has", `"half up"`, `"down"`, 39, "price.rounding", "half"},
	{"a price as a number", `"price": "105.20"`, `"price": 105.20`, 40, "price.metals[1].price", "in quotes"},
	{"a negative price", `"price": "105.20"`, `"price": "-1"`, 40, "price.metals[1].price", "0 or more"},
	{"a price for no weight", `"per": "g", `, ``, 40, "price.metals[1]", "ozt"},
	{"a price for an unknown weight", `"per": "g"`, `"per": "oz"`, 40, "price.metals[1].per", "ozt"},
	{"a price of no day", `"2026-11-20"`, `"2026-11-31"`, 40, "price.metals[1].as_of", "day 31"},
	{"a metal nobody knows", `"metal": "Au", "price"`, `"metal": "Gold", "price"`, 40, "price.metals[1].metal",
		"unknown; did you mean Au"},
	{"labour without time", `"time": "30 min", `, ``, 42, "price.labour[1]", `"time"`},
	{"labour of no time", `"time": "30 min"`, `"time": "1e-6 min"`, 42, "price.labour[1].time",
		"a hundredth of a minute or more"},
	{"a salt of no mass", `"mass": "40 g"`, `"mass": "1e-6 g"`, 43, "price.salts[1].mass",
		"a tenth of a milligram or more"},
	{"refined metal of no mass", `"mass": "0.02 g"`, `"mass": "1e-6 g"`, 44, "price.refined[1].mass",
		"a tenth of a milligram or more"},
	{"refined metal without a share", `, "paid": "95 %"`, ``, 44, "price.refined[1]", "paid"},
	{"no yield", `"yield": "96 %", `, ``, 38, "price", "yield"},
	{"a yield over one", `"yield": "96 %"`, `"yield": "196 %"`, 47, "price.yield", "from 0 to 1"},
	{"a margin of one", `"margin": "30 %"`, `"margin": "100 %"`, 48, "price.margin", "margin"},
	{"margin and markup", `"margin": "30 %"`, `"margin": "30 %", "markup": "40 %"`, 48, "price.margin", "mark"},
	{"a rectifier over one", `"rectifier": "80 %"`, `"rectifier": "180 %"`, 45, "price.rectifier", ""},
	{"a tax without quotes", `"tax": "20 %"`, `"tax": 0.2`, 49, "price.tax", "in quotes"},
	{"an unknown field in the price", `"tax_before_credits"`, `"taxes"`, 49, "price.taxes", "unknown field"},
	{"an unknown field in the rinse", `"loads": 10`, `"load": 10`, 37, "rinse.load", "unknown field"},
	{"acid mild and strong", `"strong": true`, `"strong": true, "mild": true`, 23, "sequence[3].mild", "either"},
	{"a pH of 20", `"content": "8 g/L"`, `"pH": 20, "content": "8 g/L"`, 16, "layers[2].bath.pH", "at most 16"},
	{"a pH that runs back", `"content": "8 g/L"`, `"pH": {"low": 5, "high": 4}, "content": "8 g/L"`, 16,
		"layers[2].bath.pH", "low end first"},
	{"a pH with one end", `"content": "8 g/L"`, `"pH": {"low": 5}, "content": "8 g/L"`, 16, "layers[2].bath.pH",
		`need "low" and "high", or one value`},
	{"no word on hazards",
		"\"hazards\": [\"cyanide\", \"acid\"],\n       \"content\": \"8 g/L\", \"volume\": \"5 L\",\n       \"like\": " +
			"\"gold-acid-cobalt\"", `"content": "8 g/L"`, 13, "layers[2].bath", `"hazards" is missing`},
	{"a density ten times too low", `"17.3 g/cm³"`, `"1.73 g/cm³"`, 13, "layers[2].bath.density", "19.30 g/cm³ of Au"},
	{"a base metal of two kinds", `"stainless steel"`, `"steel"`, 3, "substrate", "springs"},
	{"a base metal nobody knows", `"stainless steel"`, `"not known"`, 3, "substrate", "magnet"},
	{"an unknown field in a tank", `"deionised": true`, `"pure": true`, 31, "sequence[11].pure", "unknown field"},
}

func TestWrongShopJobs(t *testing.T) {
	for _, w := range shopWrongs {
		if strings.Count(shop, w.old) == 0 {
			t.Errorf("%s: %q is not in the job", w.name, w.old)
			continue
		}
		_, err := job.Read(strings.NewReader(strings.Replace(shop, w.old, w.new, 1)), nil)
		var e *units.FileError
		if !errors.As(err, &e) {
			t.Errorf("%s: error %v (%T), want a *units.FileError", w.name, err, err)
			continue
		}
		if e.Line != w.line || e.Path != w.path || !strings.Contains(e.What, w.want) {
			t.Errorf("%s: line %d, path %q: %s\n\twant line %d, path %q and %q", w.name, e.Line, e.Path, e.What, w.line,
				w.path, w.want)
		}
	}
	if len(shopWrongs) < 50 {
		t.Errorf("%d wrong fields", len(shopWrongs))
	}
}

// TestMeshParts: a part may be a mesh in a file; its area is that of the mesh,
// what was mended is told, and a mesh without a way to open it is refused.
func TestMeshParts(t *testing.T) {
	m, err := mesh.Box(30*units.Millimetre, 20*units.Millimetre, 10*units.Millimetre,
		mesh.Grid{Size: 8 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	m.Triangles[3][0], m.Triangles[3][1] = m.Triangles[3][1], m.Triangles[3][0]
	var file bytes.Buffer
	if err := mesh.WritePLY(&file, m, units.Millimetre, mesh.Skin{}); err != nil {
		t.Fatal(err)
	}
	open := func(name string) (io.ReadCloser, error) {
		if name != "block.ply" {
			return nil, os.ErrNotExist
		}
		return io.NopCloser(bytes.NewReader(file.Bytes())), nil
	}
	read := func(part string, open func(string) (io.ReadCloser, error)) (job.Job, error) {
		return job.Read(strings.NewReader(strings.Replace(shop, `"area": "5.2 cm²"`, part, 1)), open)
	}
	j, err := read(`"mesh": {"file": "block.ply", "unit": "1 mm", "repair": true}, "masked": "2 cm²"`, open)
	if err != nil {
		t.Fatal(err)
	}
	s := sheetOf(t, j)
	raw, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	var out struct{ Mended []string }
	if err := json.Unmarshal(raw, &out); err != nil {
		t.Fatal(err)
	}
	if a := s.Parts[0].Area.In(units.SquareCentimetre); math.Abs(a-20) > 1e-6 || len(out.Mended) != 1 ||
		s.Parts[0].Count != 24 {
		t.Errorf("%v cm², mended %v", a, out.Mended)
	}
	if same, err := read(`"mesh": {"file": "block.ply", "unit": "mm", "repair": true}, "masked": "2 cm²"`,
		open); err != nil || sheetOf(t, same).Parts[0] != s.Parts[0] {
		t.Errorf(`the unit "mm": %v, want as with "1 mm"`, err)
	}
	for part, want := range map[string]string{
		`"mesh": {"file": "block.ply", "unit": "1 mm"}`:                                     `"block.ply" is no sound closed surface: 3 edges`,
		`"mesh": {"file": "block.ply"}`:                                                     `"unit" beside it`,
		`"mesh": {"unit": "1 mm"}`:                                                          `"file" is missing`,
		`"mesh": {"file": "none.ply", "unit": "1 mm"}`:                                      "cannot be opened",
		`"mesh": {"file": "block.ply", "unit": "1 mm", "repair": true, "colour": "gold"}`:   "unknown field",
		`"area": "5.2 cm²", "mesh": {"file": "block.ply", "unit": "1 mm", "repair": true}`:  "need one of",
		`"mesh": {"file": "block.ply", "unit": "1 mm", "repair": true}, "masked": "22 cm²"`: "leaves nothing",
	} {
		var e *units.FileError
		if _, err := read(part, open); !errors.As(err, &e) || e.Line != 6 || !strings.Contains(e.What, want) {
			t.Errorf("%s: %v, want %q in line 6", part, err, want)
		}
	}
	if _, err := read(`"mesh": {"file": "block.ply", "unit": "1 mm"}`, nil); err == nil || !strings.Contains(err.Error(),
		"can be opened") {
		t.Errorf("without a way to open: %v", err)
	}
}

// TestShopHazards: what the list of an own bath forgot comes from the salt and
// from the bath of like chemistry; a pH of its own goes before the lent one.
func TestShopHazards(t *testing.T) {
	make := func(change ...string) *job.Sheet { return sheetOf(t, readShop(t, change...)) }
	const list, like = `"hazards": ["cyanide", "acid"]`, `"like": "gold-acid-cobalt"`
	both := plating.HazardCyanide | plating.HazardAcid
	s := make(list, `"hazards": []`)
	if h := s.Coats()[1].Layer.Bath.Hazards; !h.Has(both) || !s.Stops[7].Tank.Hazards.Has(both) {
		t.Errorf("lent: %v, in the tank %v", h, s.Stops[7].Tank.Hazards)
	}
	s = make(list, `"hazards": [], "salt": "KAu(CN)2"`, like, `"source": "demo data"`, `"gold, acid cyanide"`, `"gold"`)
	if h := s.Coats()[1].Layer.Bath.AllHazards(); h != plating.HazardCyanide || !s.Stops[7].Tank.Hazards.Has(h) {
		t.Errorf("by its salt: %v, in the tank %v", h, s.Stops[7].Tank.Hazards)
	}
	s = make(`"content": "8 g/L"`, `"pH": {"low": 4.2, "high": 4.8}, "content": "8 g/L"`)
	if r := s.Stops[7].Tank.PH; r.Low != 4.2 || r.High != 4.8 {
		t.Errorf("own pH: %v", r)
	}
}

// TestShopBaths: a layer may name a bath of the shop's own file.
func TestShopBaths(t *testing.T) {
	const file = `{"format": "laydown baths 1", "baths": [{
  "key": "our-strike", "name": "gold, acid cyanide strike of our own", "metal": "Au", "valence": 1, "use": ["strike"],
  "density": {"low": "19 g/cm³", "high": "19.3 g/cm³", "source": "book", "seen": "given"},
  "efficiency": {"low": "6 %", "high": "9 %", "source": "weighed", "seen": "measured"},
  "content": {"low": "1 g/L", "high": "2 g/L", "source": "analysis", "seen": "measured"},
  "current_density": {"low": "2 A/dm²", "high": "4 A/dm²", "source": "book", "seen": "given"},
  "pH": {"low": 3.4, "high": 3.8, "source": "meter", "seen": "measured"},
  "time": {"low": "20 s", "high": "30 s", "source": "book", "seen": "given"},
  "anode": {"text": "platinised titanium", "source": "book", "seen": "given"}, "anode_kind": "insoluble",
  "live_entry": true, "hazards": ["cyanide", "acid"]}]}`
	text := strings.Replace(strings.Replace(shop, `"library": "gold-acid-strike"`, `"library": "our-strike"`, 1),
		`"finish"`, `"baths": "ours.json", "finish"`, 1)
	read := func(content string, err error) (job.Job, error) {
		return job.Read(strings.NewReader(text), func(name string) (io.ReadCloser, error) {
			if name != "ours.json" {
				t.Errorf("opens %q", name)
			}
			return io.NopCloser(strings.NewReader(content)), err
		})
	}
	j, err := read(file, nil)
	if err != nil {
		t.Fatal(err)
	}
	s := sheetOf(t, j)
	if v := s.Coats()[0].Spread; s.Forbidden() || s.Coats()[0].Bath.Library != "our-strike" || v.Efficiency.Low != 0.06 ||
		v.Efficiency.High != 0.09 || s.Stops[4].Tank.PH.Low != 3.4 {
		t.Errorf("%v, %+v", s.Findings, v)
	}
	for name, c := range map[string]struct {
		content string
		err     error
		want    string
	}{
		"not there":  {"", errors.New("no such file"), "cannot be opened: no such file"},
		"damaged":    {strings.Replace(file, `"6 %"`, `"6"`, 1), nil, "baths[1].efficiency"},
		"of one key": {strings.Replace(file, "our-strike", "gold-acid-strike", 1), nil, "is taken"},
	} {
		var e *units.FileError
		if _, err := read(c.content, c.err); !errors.As(err, &e) || e.Path != "baths" || !strings.Contains(e.What, c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := job.Read(strings.NewReader(text), nil); err == nil || !strings.Contains(err.Error(),
		"can be opened") {
		t.Errorf("without files: %v", err)
	}
}
