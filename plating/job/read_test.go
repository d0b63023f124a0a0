package job_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// A small job that is right. The tests below spoil one place of it at a time
// and look for the number of the line that they spoiled.
const right = `{
  "format": "laydown job 1",
  "job": "hands",
  "parts": [
    {"name": "hand", "count": 24,
     "area": "5.2 cm²",
     "masked": "0.2 cm²"}
  ],
  "layers": [
    {"name": "gold",
     "role": "finish",
     "bath": {
       "name": "gold, acid cyanide",
       "metal": "Au",
       "valence": 1,
       "density": "17.3 g/cm³",
       "efficiency": "35 %",
       "current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"},
       "volts": {"low": "2 V", "high": "3 V"},
       "temperature": {"low": "32 °C", "high": "42 °C", "set": "38 °C"},
       "content": "8 g/L", "volume": "5 L",
       "draw_limit": "10 %",
       "anode_kind": "insoluble",
       "hazards": ["cyanide", "acid"]
     },
     "min_to_average": 0.6,
     "min_thickness": "2.5 µm",
     "current_density": "0.8 A/dm²"
    }
  ]
}
`

func TestRightJobReads(t *testing.T) {
	if _, err := job.Read(strings.NewReader(right), nil); err != nil {
		t.Fatal(err)
	}
	if _, err := job.Read(strings.NewReader("\ufeff"+strings.ReplaceAll(right, "\n", "\r\n")), nil); err != nil {
		t.Error("with a byte order mark and CR LF:", err)
	}
}

const (
	parseError = 1 << iota // a *units.ParseError lies below
	valueError             // a *units.ValueError lies below
	elementError
)

// wrongs spoil the job above: the first text is replaced by the second. The
// error must name line and path and hold the text in want: what is wrong and
// what would do.
var wrongs = []struct {
	name, old, new string
	line           int
	path           string
	want           string
	below          int
}{
	{"wrong format", "laydown job 1", "laydown job 2", 2, "format", `is "laydown job 2"; need "laydown job 1"`, 0},
	{"format a number", `"laydown job 1"`, "1", 2, "format", `is 1; need "laydown job 1"`, 0},
	{"no format", `  "format": "laydown job 1",`, "", 1, "", `field "format" is missing; need "laydown job 1"`, 0},
	{"format null", `"laydown job 1"`, "null", 2, "format", `is null; need "laydown job 1"`, 0},

	{"unknown field at the top", `"job": "hands"`, `"jobs": "hands"`, 3, "jobs",
		"unknown field; known here are format, job, substrate, parts, layers, sequence, finish", 0},
	{"unknown field in a part", `"count": 24`, `"number": 24`, 5, "parts[1].number",
		"known here are name, count, area, shape, mesh, masked", 0},
	{"unknown field in a layer", `"min_thickness"`, `"promised"`, 27, "layers[1].promised",
		"unknown field; known here are name, role, bath, min_to_average", 0},
	{"unknown field in a bath", `"efficiency"`, `"eta": 1, "efficiency"`, 17, "layers[1].bath.eta",
		"unknown field; known here are library, like, key, name, metal", 0},
	{"unknown field in a window", `"current_density": {"low"`, `"current_density": {"lo"`, 18,
		"layers[1].bath.current_density.lo", "known here are low, high", 0},
	{"unknown field in a temperature", `"set"`, `"now"`, 20, "layers[1].bath.temperature.now",
		"known here are low, high, set", 0},
	{"unknown field in a shape", `"area": "5.2 cm²"`, `"shape": {"kind": "sphere", "radius": "2 cm"}`, 6,
		"parts[1].shape.radius", "known here are kind, diameter", 0},
	{"unknown field in a hole", `"area": "5.2 cm²"`,
		`"shape": {"kind": "plate", "length": "2 cm", "width": "2 cm", "holes": [{"size": "1 mm"}]}`, 6,
		"parts[1].shape.holes[1].size", "known here are diameter, depth, count, blind, bare, faces", 0},
	{"unknown field in a point", `"efficiency": "35 %"`, `"efficiency_lines": [{"points": [{"j": "1 A/dm²"}]}]`, 17,
		"layers[1].bath.efficiency_lines[1].points[1].j", "known here are current_density, efficiency, low, high", 0},
	{"unknown field in a line", `"efficiency": "35 %"`, `"efficiency_lines": [{"point": []}]`, 17,
		"layers[1].bath.efficiency_lines[1].point", "known here are temperature, content, points, source, seen", 0},
	{"unknown field in a constituent", `"valence": 1`, `"constituents": [{"metal": "Au", "share": 1, "part": 1}]`, 15,
		"layers[1].bath.constituents[1].part", "known here are metal, valence, share, inclusion", 0},
	{"capitals matter", `"metal"`, `"Metal"`, 14, "layers[1].bath.Metal", `unknown field; known here are library`, 0},
	{"field twice", `"role": "finish"`, `"role": "finish", "role": "strike"`, 11, "layers[1].role",
		"given twice; need it once", 0},
	{"field twice at the top", `"job": "hands"`, `"job": "a",` + "\n" + `"job": "b"`, 4, "job", "given twice", 0},

	{"job a number", `"job": "hands"`, `"job": 5`, 3, "job", "is 5; need text in quotes", 0},
	{"name an object", `"name": "gold, acid cyanide"`, `"name": {}`, 13, "layers[1].bath.name",
		"is an object; need text in quotes", 0},
	{"parts text", "\"parts\": [", "\"parts\": \"none\", \"x\": [", 4, "parts",
		`is "none"; need a list of parts in square brackets`, 0},
	{"part a number", `    {"name": "hand"`, `    7, {"name": "hand"`, 5, "parts[1]", "is 7; need an object in braces",
		0},
	{"part a list", `    {"name": "hand"`, `    [], {"name": "hand"`, 5, "parts[1]",
		"is a list; need an object in braces", 0},
	{"window without unit", `"current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"}`, `"current_density": 0.3`, 18,
		"layers[1].bath.current_density", `is 0.3 without a unit; need number and unit in quotes; accepted: `, parseError},
	{"window a list", `"current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"}`, `"current_density": ["0.3 A/dm²"]`,
		18,
		"layers[1].bath.current_density",
		`is a list; need one figure as in "0.01 A/dm²", or an object with "low" and "high"`, 0},
	{"hazard unknown", `["cyanide"`, `["cyan"`, 24, "layers[1].bath.hazards[1]",
		`hazard "cyan": out of range; need one of cyanide, fluoride`, valueError},
	{"hazard a number", `["cyanide"`, `[1`, 24, "layers[1].bath.hazards[1]", `is 1; need a word in quotes`, 0},
	{"role unknown", `"finish"`, `"top"`, 11, "layers[1].role",
		`role "top": out of range; need one of finish, strike, underplate`, valueError},
	{"anode true", `"insoluble"`, `true`, 23, "layers[1].bath.anode_kind",
		`is true; need a word in quotes, one of not given, soluble, insoluble`, 0},
	{"count_below text", `"role": "finish"`, `"count_below": "yes"`, 11, "layers[1].count_below",
		`is "yes"; need true or false`, 0},

	{"area without unit", `"area": "5.2 cm²"`, `"area": 5.2`, 6, "parts[1].area",
		"is 5.2 without a unit; need number and unit in quotes; accepted: ", parseError},
	{"area text without unit", `"5.2 cm²"`, `"5.2"`, 6, "parts[1].area", "no unit after the number; accepted: ",
		parseError},
	{"minimum thickness without unit", `"2.5 µm"`, `2.5`, 27, "layers[1].min_thickness", "accepted: ", parseError},
	{"minimum thickness of another kind", `"2.5 µm"`, `"2.5 g"`, 27, "layers[1].min_thickness", `unit "g" is one of mass`,
		parseError},
	{"current density of another kind", `"0.8 A/dm²"`, `"0.8 A"`, 28, "layers[1].current_density", "accepted: A/dm²",
		parseError},
	{"temperature a bare degree", `"38 °C"`, `"38 °"`, 20, "layers[1].bath.temperature.set", "unknown unit", parseError},
	{"temperature below zero", `"38 °C"`, `"-300 °C"`, 20, "layers[1].bath.temperature.set", "below absolute zero",
		parseError},
	{"a bare gallon", `"volume": "5 L"`, `"volume": "5 gal"`, 21, "layers[1].bath.volume",
		"a gallon is US gal or imp gal", parseError},
	{"decimal comma", `"2.5 µm"`, `"2,5 µm"`, 27, "layers[1].min_thickness", "write a point as the decimal mark",
		parseError},
	{"infinite", `"2.5 µm"`, `"Inf µm"`, 27, "layers[1].min_thickness", "no number at the start", parseError},
	{"beyond float64", `"2.5 µm"`, `"1e400 µm"`, 27, "layers[1].min_thickness", "too large or too small", parseError},
	{"minimum thickness null", `"2.5 µm"`, `null`, 27, "layers[1].min_thickness",
		"is null; need a number and a unit in quotes", 0},
	{"minimum thickness a list", `"2.5 µm"`, `[2.5]`, 27, "layers[1].min_thickness",
		"is a list; need a number and a unit in quotes", 0},
	{"minimum thickness zero", `"2.5 µm"`, `"0 µm"`, 27, "layers[1].min_thickness",
		`is "0 µm"; need a value above zero, or leave the field out`, valueError},
	{"minimum thickness negative", `"2.5 µm"`, `"-2.5 µm"`, 27, "layers[1].min_thickness", "need a value above zero",
		valueError},
	{"volume zero", `"5 L"`, `"0 L"`, 21, "layers[1].bath.volume", "need a value above zero", valueError},
	{"area negative", `"5.2 cm²"`, `"-5.2 cm²"`, 6, "parts[1].area", "need a value above zero", valueError},
	{"masked negative", `"0.2 cm²"`, `"-0.2 cm²"`, 7, "parts[1].masked", "need zero or more", valueError},
	{"masked more than area", `"0.2 cm²"`, `"5.3 cm²"`, 7, "parts[1].masked", "leaves nothing of 5.2 cm²; need less", 0},
	{"masked all", `"0.2 cm²"`, `"5.2 cm²"`, 7, "parts[1].masked", "leaves nothing", 0},

	{"unknown element", `"Au"`, `"Xx"`, 14, "layers[1].bath.metal", "need a symbol such as Au", elementError},
	{"element in small letters", `"Au"`, `"au"`, 14, "layers[1].bath.metal", "did you mean Au", elementError},
	{"element a number", `"Au"`, `79`, 14, "layers[1].bath.metal", `is 79; need the symbol of the counted metal, as "Au"`,
		0},
	{"valence 9", `"valence": 1`, `"valence": 9`, 15, "layers[1].bath.valence", "is 9; need a whole number from 1 to 8",
		0},
	{"valence 0", `"valence": 1`, `"valence": 0`, 15, "layers[1].bath.valence", "is 0; need a whole number from 1 to 8",
		0},
	{"valence text", `"valence": 1`, `"valence": "1"`, 15, "layers[1].bath.valence", `is "1"; need a whole number`, 0},
	{"density zero", `"17.3 g/cm³"`, `"0 g/cm³"`, 16, "layers[1].bath.density", "need a value above zero", valueError},
	{"density of another kind", `"17.3 g/cm³"`, `"17.3 g/L"`, 16, "layers[1].bath.density", "g/cm³", parseError},

	{"constituents that do not sum", `"valence": 1`,
		`"constituents": [{"metal": "Au", "valence": 1, "share": "99 %"}, {"metal": "Co", "valence": 2, "share": "0.2 %"}]`,
		15,
		"layers[1].bath.constituents", "sum", valueError},
	{"constituents and valence", `"valence": 1`, `"valence": 1, "constituents": [{"metal": "Au", "share": 1}]`, 15,
		"layers[1].bath.valence", `need it with each of the "constituents"`, valueError},
	{"constituents empty", `"valence": 1`, `"constituents": []`, 15, "layers[1].bath.constituents",
		"is empty; need constituents", 0},
	{"constituents without the metal", `"valence": 1`, `"constituents": [{"metal": "Co", "valence": 2, "share": 1}]`, 15,
		"layers[1].bath.constituents", "share of Au in the deposit 0: values that contradict; need the counted metal among",
		valueError},
	{"constituent without share", `"valence": 1`, `"constituents": [{"metal": "Au"}]`, 15,
		"layers[1].bath.constituents[1]", `field "share" is missing; need a share of the mass`, 0},
	{"constituent neither", `"valence": 1`, `"constituents": [{"share": 1}]`, 15, "layers[1].bath.constituents[1]",
		`need either "metal"`, 0},
	{"inclusion with valence", `"valence": 1`, `"constituents": [{"inclusion": true, "valence": 1, "share": 1}]`, 15,
		"layers[1].bath.constituents[1]", `an inclusion has no "valence"`, 0},

	{"efficiency 0", `"35 %"`, `0`, 17, "layers[1].bath.efficiency", "is 0; need a fraction above 0 and at most 1",
		valueError},
	{"efficiency 1.2", `"35 %"`, `1.2`, 17, "layers[1].bath.efficiency", "is 1.2; need a fraction above 0 and at most 1",
		valueError},
	{"efficiency 35", `"35 %"`, `35`, 17, "layers[1].bath.efficiency", "is 35; need a fraction above 0 and at most 1",
		valueError},
	{"efficiency NaN", `"35 %"`, `"NaN"`, 17, "layers[1].bath.efficiency", "no number at the start", parseError},
	{"efficiency with another unit", `"35 %"`, `"35 V"`, 17, "layers[1].bath.efficiency", `unit "V"`, parseError},
	{"efficiency true", `"35 %"`, `true`, 17, "layers[1].bath.efficiency", `is true; need one figure as in "100 %"`, 0},
	{"no efficiency", `"efficiency": "35 %",`, ``, 12, "layers[1].bath", `field "efficiency" is missing; need a share`,
		0},
	{"points in place of an efficiency", `"35 %"`, `[{"current_density": "1 A/dm²", "efficiency": 0.3}]`, 17,
		"layers[1].bath.efficiency", "is a list; need one figure", 0},
	{"points that fall", `"efficiency": "35 %"`,
		`"efficiency_lines": [{"points": [{"current_density": "1 A/dm²", "efficiency": 0.3}, {"current_density": "0.5 A/dm²", "efficiency": 0.3}]}]`, 17,
		"layers[1].bath.efficiency_lines", "a value above that of the point before", valueError},
	{"no points", `"efficiency": "35 %"`, `"efficiency_lines": [{"points": []}]`, 17,
		"layers[1].bath.efficiency_lines[1].points", "is empty; need points of rising current density", 0},
	{"points left out", `"efficiency": "35 %"`, `"efficiency_lines": [{}]`, 17, "layers[1].bath.efficiency_lines[1]",
		`field "points" is missing; need points`, 0},
	{"no lines", `"efficiency": "35 %"`, `"efficiency_lines": []`, 17, "layers[1].bath.efficiency_lines", "is empty", 0},
	{"lines that differ in what they give", `"efficiency": "35 %"`,
		`"efficiency_lines": [{"content": "8 g/L", "points": [{"current_density": "1 A/dm²", "efficiency": 0.3}]},
		{"points": [{"current_density": "1 A/dm²", "efficiency": 0.3}]}]`, 17, "layers[1].bath.efficiency_lines",
		"efficiency line 2: temperature and content", valueError},
	{"point with efficiency 0", `"efficiency": "35 %"`,
		"\"efficiency_lines\": [{\"points\": [{\"current_density\": \"1 A/dm²\",\n \"efficiency\": 0}]}]", 18,
		"layers[1].bath.efficiency_lines[1].points[1].efficiency", "is 0; need a fraction above 0", valueError},
	{"window reversed", `{"low": "0.3 A/dm²", "high": "1.2 A/dm²"}`, `{"low": "1.2 A/dm²", "high": "0.3 A/dm²"}`, 18,
		"layers[1].bath.current_density", "need the low end first", valueError},
	{"volts reversed", `{"low": "2 V", "high": "3 V"}`, `{"low": "3 V", "high": "2 V"}`, 19, "layers[1].bath.volts",
		"need the low end first", valueError},
	{"temperature reversed", `"low": "32 °C", "high": "42 °C"`, `"low": "42 °C", "high": "32 °C"`, 20,
		"layers[1].bath.temperature", "need the low end first", valueError},
	{"volts negative", `"low": "2 V"`, `"low": "-2 V"`, 19, "layers[1].bath.volts.low", "need a value above zero",
		valueError},
	{"draw limit 0", `"10 %"`, `"0 %"`, 22, "layers[1].bath.draw_limit", "need a fraction above 0", valueError},
	{"draw limit over 1", `"10 %"`, `10`, 22, "layers[1].bath.draw_limit", "need a fraction above 0 and at most 1",
		valueError},

	{"min_to_average 0", `0.6`, `0`, 26, "layers[1].min_to_average", "is 0; need a fraction above 0 and at most 1",
		valueError},
	{"min_to_average 1.01", `0.6`, `1.01`, 26, "layers[1].min_to_average", "need a fraction above 0 and at most 1",
		valueError},
	{"no min_to_average", `"min_to_average": 0.6,`, ``, 10, "layers[1]",
		`field "min_to_average" is missing; need thinnest over average`, 0},
	{"only a minimum thickness", "\"min_thickness\": \"2.5 µm\",\n     \"current_density\": \"0.8 A/dm²\"",
		`"min_thickness": "2.5 µm"`, 10, "layers[1]", "need two of the three", valueError},
	{"only a current density", `"min_thickness": "2.5 µm",`, ``, 10, "layers[1]", "need two of the three", valueError},
	{"current and current density", `"min_thickness": "2.5 µm"`, `"current": "1 A"`, 27, "layers[1].current",
		`need either "current" or "current_density", not both`, 0},
	{"current zero", `"current_density": "0.8 A/dm²"`, `"current": "0 A"`, 28, "layers[1].current",
		"need a value above zero", valueError},
	{"layer area negative", `"min_thickness": "2.5 µm"`, `"min_thickness": "2.5 µm", "area": "-1 cm²"`, 27,
		"layers[1].area", "need a value above zero", valueError},
	{"time of another kind", `"min_thickness": "2.5 µm"`, `"time": "10 A·min"`, 27, "layers[1].time", `accepted: `,
		parseError},
	{"no bath", `"bath": {`, `"tank": {`, 12, "layers[1].tank", `known here are name, role, bath`, 0},

	{"count 0", `24`, `0`, 5, "parts[1].count", "is 0; need a whole number from 1 to 1000000", 0},
	{"count -1", `24`, `-1`, 5, "parts[1].count", "is -1; need a whole number from 1", 0},
	{"count 1.5", `24`, `1.5`, 5, "parts[1].count", "is 1.5; need a whole number", 0},
	{"count 1e99", `24`, `1e99`, 5, "parts[1].count", "is 1e99; need a whole number", 0},
	{"count over a million", `24`, `1000001`, 5, "parts[1].count", "from 1 to 1000000", 0},
	{"count text", `24`, `"24"`, 5, "parts[1].count", `is "24"; need a whole number`, 0},
	{"neither area nor shape", "\"area\": \"5.2 cm²\",\n     ", "", 5, "parts[1]", `need one of "area"`, 0},
	{"both area and shape", `"area": "5.2 cm²"`, `"area": "5.2 cm²", "shape": {"kind": "sphere", "diameter": "1 cm"}`, 5,
		"parts[1]", `need one of "area"`, 0},
	{"no parts", "{\"name\": \"hand\", \"count\": 24,\n     \"area\": \"5.2 cm²\",\n     \"masked\": \"0.2 cm²\"}", "", 4,
		"parts", "is empty; need a list of parts", 0},

	{"shape of unknown kind", `"area": "5.2 cm²"`, `"shape": {"kind": "cube", "length": "1 cm"}`, 6,
		"parts[1].shape.kind",
		`is "cube"; need one of plate, disc, ring`, 0},
	{"shape without kind", `"area": "5.2 cm²"`, `"shape": {"diameter": "1 cm"}`, 6, "parts[1].shape",
		`field "kind" is missing; need one of plate`, 0},
	{"shape text", `"area": "5.2 cm²"`, `"shape": "sphere"`, 6, "parts[1].shape", "need an object in braces", 0},
	{"inner over outer", `"area": "5.2 cm²"`,
		`"shape": {"kind": "ring", "outer": "1 cm", "inner": "2 cm", "thickness": "1 mm"}`, 6, "parts[1].shape", "need",
		valueError},
	{"inner equal outer", `"area": "5.2 cm²"`,
		`"shape": {"kind": "tube", "outer": "1 cm", "inner": "1 cm", "length": "1 cm"}`, 6, "parts[1].shape", "need",
		valueError},
	{"dimension missing", `"area": "5.2 cm²"`, `"shape": {"kind": "wire", "diameter": "1 mm"}`, 6, "parts[1].shape",
		`field "length" is missing; need number and unit`, 0},
	{"dimension negative", `"area": "5.2 cm²"`, `"shape": {"kind": "sphere", "diameter": "-1 mm"}`, 6,
		"parts[1].shape.diameter", "need a value above zero", valueError},
	{"dimension zero", `"area": "5.2 cm²"`, `"shape": {"kind": "plate", "length": "10 mm", "width": "0 mm"}`, 6,
		"parts[1].shape.width", `is "0 mm"; need a value above zero`, valueError},
	{"dimension misspelt", `"area": "5.2 cm²"`, `"shape": {"kind": "plate", "length": "10 mm", "widht": "2 mm"}`, 6,
		"parts[1].shape.widht", "unknown field; known here are kind, holes, length, width, thickness, faces", 0},
	{"hole without depth", `"area": "5.2 cm²"`,
		`"shape": {"kind": "disc", "diameter": "2 cm", "thickness": "1 mm", "holes": [{"diameter": "2 mm"}]}`, 6,
		"parts[1].shape.holes[1]", `field "depth" is missing`, 0},
	{"bare hole of negative depth", `"area": "5.2 cm²"`,
		`"shape": {"kind": "disc", "diameter": "2 cm", "holes": [{"diameter": "2 mm", "bare": true, "depth": "-1 mm"}]}`, 6,
		"parts[1].shape.holes[1].depth", "", valueError},
	{"holes of a sphere", `"area": "5.2 cm²"`, `"shape": {"kind": "sphere", "diameter": "1 cm", "holes": []}`, 6,
		"parts[1].shape.holes", "unknown field", 0},
	{"three open ends", `"area": "5.2 cm²"`,
		`"shape": {"kind": "tube", "outer": "2 cm", "inner": "1 cm", "length": "1 cm", "open_ends": 3}`, 6,
		"parts[1].shape.open_ends", "from 0 to 2", 0},
	{"faces wrong", `"area": "5.2 cm²"`, `"shape": {"kind": "disc", "diameter": "2 cm", "faces": 2}`, 6,
		"parts[1].shape.faces", "is 2; need a word in quotes, one of both, one", 0},
	{"sum of nothing", `"area": "5.2 cm²"`, `"shape": {"kind": "sum", "of": []}`, 6, "parts[1].shape.of",
		"is empty; need a list of bodies", 0},
	{"wrong body in a sum", `"area": "5.2 cm²"`,
		"\"shape\": {\"kind\": \"sum\", \"of\": [{\"kind\": \"sphere\", \"diameter\": \"1 cm\"},\n{\"kind\": \"egg\"}]}", 7,
		"parts[1].shape.of[2].kind", `is "egg"; need one of`, 0},

	{"line break in a name", `"job": "hands"`, `"job": "hands\n   [ ] set 50 A"`, 3, "job",
		"holds a line break or another control character", 0},
	{"figures turned round", `"job": "hands"`, `"job": "a\u202e"`, 3, "job", "need plain text in one line", 0},
	{"text behind", "  ]\n}\n", "  ]\n}\n{}", 32, "", "more text behind the job", 0},
	{"not JSON", `"count": 24`, `"count": 24x`, 5, "", "not JSON", 0},
	{"single quotes", `"role": "finish"`, `'role': "finish"`, 11, "", "not JSON", 0},
	{"comma too many", `"acid"]`, `"acid",]`, 24, "", "not JSON", 0},
	{"comment", `"role": "finish"`, `// the coat`, 11, "", "not JSON", 0},
	{"NaN as a number", `0.6`, `NaN`, 26, "", "not JSON", 0},
}

func TestWrongJobs(t *testing.T) {
	seen := map[string]bool{}
	for _, w := range wrongs {
		t.Run(w.name, func(t *testing.T) {
			if seen[w.name] || !strings.Contains(right, w.old) {
				t.Fatal("the case itself is wrong: its name stands twice or its text is not in the job")
			}
			seen[w.name] = true
			_, err := job.Read(strings.NewReader(strings.Replace(right, w.old, w.new, 1)), nil)
			var e *units.FileError
			if !errors.As(err, &e) {
				t.Fatalf("error %v (%T), want a *units.FileError", err, err)
			}
			if e.Line != w.line || e.Path != w.path || !strings.Contains(e.What, w.want) {
				t.Errorf("line %d, path %q: %s\nwant line %d, path %q and %q", e.Line, e.Path, e.What, w.line, w.path, w.want)
			}
			var pe *units.ParseError
			var ve *units.ValueError
			var ee *faraday.ElementError
			if got := errors.As(err, &pe); got != (w.below == parseError) {
				t.Errorf("a *units.ParseError below: %v", got)
			}
			if got := errors.As(err, &ve); got != (w.below == valueError) {
				t.Errorf("a *units.ValueError below: %v", got)
			}
			if got := errors.As(err, &ee); got != (w.below == elementError) {
				t.Errorf("a *faraday.ElementError below: %v", got)
			}
			if strings.Contains(err.Error(), "\n") {
				t.Errorf("the message is not one line: %q", err.Error())
			}
		})
	}
	if len(wrongs) < 100 {
		t.Errorf("%d wrong jobs, want 100 or more", len(wrongs))
	}
}

// Whole files that are wrong.
func TestWrongFiles(t *testing.T) {
	deep := `{"format": "laydown job 1", "layers": [], "parts": ` + strings.Repeat("[", 100_000) + strings.Repeat("]",
		100_000) + "}"
	many := `{"format": "laydown job 1"` + strings.Repeat(`, "x": 1`, 100_000) + "}"
	for _, c := range []struct {
		name, text string
		line       int
		want       string
	}{
		{"empty", "", 0, "empty; need an object with job, parts and layers"},
		{"blanks", " \n\t\n", 0, "empty; need an object"},
		{"byte order mark alone", "\ufeff", 0, "empty; need an object"},
		{"a word", "job", 1, "not JSON"},
		{"a number", "42", 1, "is 42; need an object in braces"},
		{"null", "null", 1, "is null; need an object in braces"},
		{"a list", "[]", 1, "is a list; need an object in braces"},
		{"nested too deep", deep, 1, "nested deeper than 12"},
		{"one name often", many, 1, "given twice"},
		{"too large", `{"job": "` + strings.Repeat("x", 2<<20) + `"}`, 0, "larger than 1048576 bytes"},
		{"not UTF-8", "{\"job\": \"\xff\xfe\"}", 0, "not UTF-8 text"},
		{"UTF-16", "\xff\xfe{\x00\"\x00", 0, "not UTF-8 text"},
		{"zero byte", "{\"job\": \"a\x00\"}", 1, "not JSON"},
		{"two jobs", right + "\n" + right, 33, "more text behind the job; need one object"},
		{"a bracket too many", right + "]", 32, "more text behind the job"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := job.Read(strings.NewReader(c.text), nil)
			var e *units.FileError
			if !errors.As(err, &e) {
				t.Fatalf("error %v, want a *units.FileError", err)
			}
			if e.Line != c.line || !strings.Contains(e.What, c.want) {
				t.Errorf("line %d: %s\nwant line %d and %q", e.Line, e.What, c.line, c.want)
			}
			if len(err.Error()) > 500 {
				t.Errorf("a message of %d bytes", len(err.Error()))
			}
		})
	}
}

// TestPropertyTruncated: a job that is cut off anywhere is an error that says
// so, in the line where it ends, and never half a job.
func TestPropertyTruncated(t *testing.T) {
	whole := strings.TrimRight(right, "\n")
	for n := range len(whole) {
		cut := whole[:n]
		_, err := job.Read(strings.NewReader(cut), nil)
		var e *units.FileError
		if !errors.As(err, &e) {
			t.Fatalf("cut after %d bytes: error %v, want a *units.FileError", n, err)
		}
		if n == 0 || strings.Contains(e.What, "UTF-8") { // in the middle of a letter
			continue
		}
		if want := 1 + strings.Count(strings.TrimRight(cut, " \n"), "\n"); e.Line != want ||
			!strings.Contains(e.What, "ends in the middle") {
			t.Fatalf("cut after %d bytes: line %d: %s\nwant line %d and that it ends in the middle", n, e.Line, e.What, want)
		}
	}
}

type brokenReader struct{}

var errBroken = errors.New("broken pipe")

func (brokenReader) Read([]byte) (int, error) { return 0, errBroken }

func TestUnreadable(t *testing.T) {
	_, err := job.Read(brokenReader{}, nil)
	var e *units.FileError
	if !errors.As(err, &e) || !errors.Is(err, errBroken) {
		t.Errorf("error %v, want a *units.FileError with the reason below", err)
	}
}
