package strictjson_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strconv"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/shopspring/decimal"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// A colour is one of a few words; also a set of them.
type colour uint8

func (c colour) words() []string { return []string{"red", "green", "blue"} }

func (c colour) MarshalText() ([]byte, error) { return units.WordOf("colour", int(c), c.words()) }

func (c *colour) UnmarshalText(text []byte) error {
	i, err := units.FromWord("colour", string(text), c.words())
	*c = colour(i)
	return err
}

type colours uint8

func (c *colours) UnmarshalText(text []byte) error {
	i, err := units.FromWord("colour", string(text), colour(0).words())
	*c = 1 << i
	return err
}

func (c colours) MarshalText() ([]byte, error) {
	for i, w := range colour(0).words() {
		if c == 1<<i {
			return []byte(w), nil
		}
	}
	return nil, units.ErrOutOfRange
}

func (c colours) MarshalJSON() ([]byte, error) {
	list := []string{}
	for i, w := range colour(0).words() {
		if c>>i&1 == 1 {
			list = append(list, w)
		}
	}
	return json.Marshal(list)
}

// A twice has two forms in a file: a number, or text.
type twice struct{ n int }

func (w *twice) DecodeNode(n *strictjson.Node) error {
	v, err := strconv.Atoi(n.Text)
	if err != nil || v < 0 {
		return n.Fail(err, "is %s; need a number", strictjson.Describe(n))
	}
	w.n = v
	return nil
}

func (w twice) EncodeNode() any {
	if w.n > 99 {
		return errors.New("too many for a file")
	}
	return strconv.Itoa(w.n)
}

func (w *twice) Schema(*strictjson.Definitions) map[string]any {
	return map[string]any{"type": []string{"number", "string"}}
}

type insideForm struct {
	Depth units.Length `json:"depth" with:"must" rule:"positive" in:"mm"`
	More  []insideForm `json:"more"`
}

type Base struct {
	Place string `json:"place"`
}

// A thing has a field of every sort.
type thing struct {
	Format  string            `json:"format" is:"thing 1"`
	Name    string            `json:"name" with:"must" need:"its name"`
	Size    units.Length      `json:"size" rule:"positive" in:"µm" doc:"across"`
	Cold    units.Temperature `json:"cold" in:"°C"`
	Bare    units.Length      `json:"bare" rule:"nonnegative"`
	Share   units.Ratio       `json:"share" rule:"share" in:"%"`
	Works   units.Efficiency  `json:"works" rule:"positive" in:"%"`
	Kept    units.Ratio       `json:"kept" with:"keep"`
	Count   int               `json:"count" rule:"0..9"`
	On      bool              `json:"on"`
	Colour  *colour           `json:"colour"`
	All     colours           `json:"all" rule:"flags"`
	Listed  *colours          `json:"listed" rule:"flags"`
	Lengths []units.Length    `json:"lengths" need:"lengths" rule:"filled" in:"mm"`
	Inner   *insideForm       `json:"insideForm"`
	Twice   twice             `json:"twice"`
	Money   decimal.Decimal   `json:"money"`
	Percent decimal.Decimal   `json:"percent" rule:"percent"`
	Base                      // its fields stand beside the others
	Side    struct {
		Left int `json:"left" rule:"1..5"`
	} `json:",inline"`
	Hidden   string `json:"-"`
	Untagged string
	quiet    string
}

func decodeThing(t *testing.T, raw string) (thing, error) {
	t.Helper()
	n, err := read(t, raw)
	if err != nil {
		t.Fatal(err)
	}
	var v thing
	err = strictjson.Decode(n, &v)
	return v, err
}

const wholeThing = `{"format": "thing 1", "name": "a", "size": "2 µm", "cold": "-3 °C", "bare": "0 m", "share": 0.5, "works": "80 %",
"kept": 3, "count": 0, "on": true, "colour": "red", "all": ["red", "blue"], "listed": [], "lengths": ["1 mm", "2 in"],
"insideForm": {"depth": "1 m", "more": [{"depth": "2 m"}]}, "twice": 7, "money": "1.50", "percent": "35 %", "place": "shelf",
"left": 4}`

// TestPropertyDecodeEncode: each sort of field arrives, and what Encode writes reads back
// to the same.
func TestPropertyDecodeEncode(t *testing.T) {
	red, none := colour(0), colours(0)
	want := thing{Name: "a", Size: 2e-6, Cold: units.Celsius(-3), Share: 0.5, Works: 0.8, Kept: 3, On: true, Colour: &red,
		All:    5,
		Listed: &none, Lengths: []units.Length{1e-3, 50.8e-3}, Inner: &insideForm{Depth: 1, More: []insideForm{{Depth: 2}}},
		Twice: twice{7},
		Money: decimal.New(150, -2), Percent: decimal.New(35, -2), Base: Base{"shelf"}}
	want.Side.Left, want.Format = 4, "thing 1"
	got, err := decodeThing(t, wholeThing)
	everything := cmp.Exporter(func(reflect.Type) bool { return true })
	if diff := cmp.Diff(want, got, everything); err != nil || diff != "" {
		t.Fatalf("%v\n%s", err, diff)
	}
	got.Hidden, got.Untagged, got.quiet = "x", "y", "z"
	raw, err := strictjson.Encode(got)
	if err != nil {
		t.Fatal(err)
	}
	if back, err := decodeThing(t, string(raw)); err != nil || cmp.Diff(want, back, everything) != "" {
		t.Errorf("%v\n%s\n%s", err, raw, cmp.Diff(want, back, everything))
	}
	for _, text := range []string{`"size": "2 µm"`, `"cold": "-3 °C"`, `"share": "50 %"`, `"colour": "red"`,
		`"listed": []`, `"twice": "7"`,
		`"depth": "1000 mm"`, `"left": 4`} {
		if !strings.Contains(string(raw), text) {
			t.Errorf("no %s in %s", text, raw)
		}
	}
	for _, text := range []string{`"bare"`, `"count"`, `"x"`, `"y"`, `"z"`} {
		if strings.Contains(string(raw), text) {
			t.Errorf("%s in %s", text, raw)
		}
	}
	if raw, err := strictjson.Encode(thing{}); err != nil ||
		string(raw) != "{\n  \"format\": \"thing 1\",\n  \"name\": \"\",\n  \"kept\": \"0\"\n}\n" {
		t.Errorf("%v: %q", err, raw)
	}
}

// TestPropertyDecodeRefuses: each rule refuses what it is there for, with the place.
func TestPropertyDecodeRefuses(t *testing.T) {
	for _, c := range []struct{ old, changed, path, want string }{
		{`"thing 1"`, `"thing 2"`, "format", `need "thing 1"`},
		{`"thing 1"`, `1`, "format", `need "thing 1"`},
		{`"format": "thing 1", `, ``, "", `field "format" is missing`},
		{`"name": "a"`, `"name": " "`, "name", "is empty; need its name"},
		{`"name": "a"`, `"name": 1`, "name", "is 1; need its name"},
		{`"name": "a", `, ``, "", `field "name" is missing; need its name`},
		{`"2 µm"`, `2`, "size", "without a unit"},
		{`"2 µm"`, `"0 µm"`, "size", "above zero, or leave the field out"},
		{`"2 µm"`, `"2 kg"`, "size", "one of mass"},
		{`"2 µm"`, `null`, "size", "is null; need a number and a unit"},
		{`"2 µm"`, `{}`, "size", "is an object; need a number and a unit"},
		{`"0 m"`, `"-1 m"`, "bare", "need zero or more"},
		{`"share": 0.5`, `"share": 1.5`, "share", "a fraction above 0 and at most 1"},
		{`"share": 0.5`, `"share": 0`, "share", "a fraction above 0 and at most 1"},
		{`"80 %"`, `"180 %"`, "works", "a fraction above 0 and at most 1"},
		{`"count": 0`, `"count": 10`, "count", "from 0 to 9"},
		{`"count": 0`, `"count": 1.5`, "count", "a whole number"},
		{`"count": 0`, `"count": "1"`, "count", "a whole number"},
		{`"on": true`, `"on": "true"`, "on", "true or false"},
		{`"colour": "red"`, `"colour": "mauve"`, "colour", "one of red, green, blue"},
		{`"colour": "red"`, `"colour": 1`, "colour", "one of red, green, blue"},
		{`["red", "blue"]`, `["red", "mauve"]`, "all[2]", "one of red, green, blue"},
		{`["red", "blue"]`, `"red"`, "all", "need words in square brackets"},
		{`["1 mm", "2 in"]`, `[]`, "lengths", "is empty; need lengths"},
		{`["1 mm", "2 in"]`, `"1 mm"`, "lengths", "need lengths in square brackets"},
		{`["1 mm", "2 in"]`, `["1 mm", 2]`, "lengths[2]", "without a unit"},
		{`{"depth": "1 m", `, `{`, "insideForm", `field "depth" is missing; need number and unit in quotes, as "12.5 mm"`},
		{`{"depth": "1 m", `, `{"depht": "1 m", `, "insideForm.depht", "known here are depth, more"},
		{`{"depth": "2 m"}`, `{"depth": "-2 m"}`, "insideForm.more[1].depth", "above zero"},
		{`{"depth": "2 m"}`, `7`, "insideForm.more[1]", "an object in braces"},
		{`"twice": 7`, `"twice": "x"`, "twice", "need a number"},
		{`"1.50"`, `1.50`, "money", "in quotes"},
		{`"1.50"`, `"5 %"`, "money", "in quotes"},
		{`"1.50"`, `"-1"`, "money", "0 or more"},
		{`"1.50"`, `"1e99"`, "money", "0 or more"},
		{`"1.50"`, `"NaN"`, "money", "0 or more"},
		{`"35 %"`, `"some"`, "percent", "a share of 0 or more in quotes"},
		{`"place"`, `"Place"`, "Place", "unknown field; known here are format, name"},
		{`"left": 4`, `"left": 6`, "left", "from 1 to 5"},
		{`"left": 4`, `"Untagged": "x"`, "Untagged", "unknown field"},
		{`"left": 4`, `"Hidden": "x"`, "Hidden", "unknown field"},
	} {
		if !strings.Contains(wholeThing, c.old) {
			t.Errorf("%s: nothing to change", c.old)
			continue
		}
		_, err := decodeThing(t, strings.Replace(wholeThing, c.old, c.changed, 1))
		var e *strictjson.Error
		if !errors.As(err, &e) || e.Path != c.path || !strings.Contains(e.What, c.want) || e.Line < 1 {
			t.Errorf("%s: %v, want %q at %q", c.changed, err, c.want, c.path)
		}
	}
	n, err := read(t, "[1]")
	if err != nil {
		t.Fatal(err)
	}
	if err := strictjson.Decode(n, new(thing)); err == nil || !strings.Contains(err.Error(), "an object in braces") {
		t.Error(err)
	}
}

// TestPropertyEncodeSpares: a kept member is left out at zero where its path is spared, and
// only there.
func TestPropertyEncodeSpares(t *testing.T) {
	type bath struct {
		Words []string `json:"words" with:"keep"`
		Salt  []string `json:"salt" with:"keep"`
	}
	type all struct {
		Layers []bath `json:"layers"`
		Other  bath   `json:"other"`
	}
	v := all{Layers: []bath{{Words: []string{"acid"}}, {}}}
	raw, err := strictjson.Encode(v, "layers.words")
	const want = `{"layers":[{"words":["acid"],"salt":[]},{"salt":[]}]}`
	if got := strings.Join(strings.Fields(string(raw)), ""); err != nil || got != want {
		t.Errorf("%v, %s, want %s", err, got, want)
	}
	v.Other.Salt = []string{"x"}
	raw, err = strictjson.Encode(v)
	const kept = `{"layers":[{"words":["acid"],"salt":[]},{"words":[],"salt":[]}],"other":{"words":[],"salt":["x"]}}`
	if got := strings.Join(strings.Fields(string(raw)), ""); err != nil || got != kept {
		t.Errorf("%v, %s, want %s", err, got, kept)
	}
}

// TestPropertyEncodeRefuses: what no file can hold is an error with the path.
func TestPropertyEncodeRefuses(t *testing.T) {
	wrong := colour(9)
	for path, v := range map[string]thing{
		"size":                   {Size: units.Length(math.NaN())},
		"kept":                   {Kept: units.Ratio(math.Inf(1))},
		"colour":                 {Colour: &wrong},
		"twice":                  {Twice: twice{100}},
		"lengths[2]":             {Lengths: []units.Length{1, units.Length(math.Inf(-1))}},
		"insideForm.more[1].dep": {Inner: &insideForm{Depth: 1, More: []insideForm{{Depth: units.Length(math.NaN())}}}},
	} {
		if raw, err := strictjson.Encode(v); err == nil || !strings.HasPrefix(err.Error(), path) || len(raw) > 0 {
			t.Errorf("%s: %v, %s", path, err, raw)
		}
	}
}

// TestPropertyAt: a path finds its value, or the nearest above it and what is left.
func TestPropertyAt(t *testing.T) {
	n, err := read(t, wholeThing)
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string][2]string{
		"":                         {"", ""},
		"size":                     {"size", ""},
		"lengths[2]":               {"lengths[2]", ""},
		"lengths[3]":               {"lengths", "[3]"},
		"lengths[0]":               {"lengths", "[0]"},
		"lengths[x":                {"lengths", "[x"},
		"insideForm.more[1].depth": {"insideForm.more[1].depth", ""},
		"insideForm.more[1].width": {"insideForm.more[1]", "width"},
		"insideForm.other.depth":   {"insideForm", "other.depth"},
		"size.low":                 {"size", "low"},
	} {
		at, rest := n.At(path)
		if at.Path != want[0] || rest != want[1] {
			t.Errorf("%s: %q and %q, want %q", path, at.Path, rest, want)
		}
	}
	reason := errors.New("too deep")
	if e := n.Place("insideForm.more[1].depth", reason); e.Path != "insideForm.more[1].depth" || e.Line != 3 ||
		e.What != "too deep" || !errors.Is(e, reason) {
		t.Errorf("%v", e)
	}
	if e := n.Place("insideForm.width", reason); e.Path != "insideForm" || e.What != "width: too deep" {
		t.Errorf("%v", e)
	}
	if e := n.Place("insideForm.width", errors.New(`field "width" is missing`)); e.What != `field "width" is missing` {
		t.Errorf("%v", e)
	}
	if strictjson.Put("size", nil) != nil {
		t.Error("no error became one")
	}
	var placed *strictjson.Placed
	if err := strictjson.Put("size", reason); !errors.As(err, &placed) || placed.Path != "size" ||
		!errors.Is(err, reason) || err.Error() != "too deep" {
		t.Errorf("%v", err)
	}
}

// TestPropertySchema: the schema says of each sort of field what the decoder asks for.
func TestPropertySchema(t *testing.T) {
	raw, err := strictjson.Schema("a thing", thing{})
	if err != nil {
		t.Fatal(err)
	}
	var s struct {
		Title                string
		Type                 string
		AdditionalProperties *bool
		Required             []string
		Properties           map[string]map[string]any
		Defs                 map[string]map[string]any `json:"$defs"`
	}
	if err := json.Unmarshal(raw, &s); err != nil {
		t.Fatal(err)
	}
	if s.Title != "a thing" || s.Type != "object" || s.AdditionalProperties == nil || *s.AdditionalProperties ||
		!reflect.DeepEqual(s.Required, []string{"format", "name"}) || len(s.Properties) != 20 {
		t.Errorf("%d properties, required %v: %s", len(s.Properties), s.Required, raw)
	}
	list := func(v any) string {
		raw, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		return string(raw)
	}
	for name, want := range map[string]string{
		"format":     `{"const":"thing 1"}`,
		"size":       `{"allOf":[{"pattern":"^[-+]?[0-9.]","type":"string"}],"description":"across"}`,
		"share":      `{"type":["number","string"]}`,
		"count":      `{"maximum":9,"minimum":0,"type":"integer"}`,
		"on":         `{"type":"boolean"}`,
		"colour":     `{"enum":["red","green","blue"],"type":"string"}`,
		"all":        `{"items":{"enum":["red","green","blue"],"type":"string"},"type":"array"}`,
		"lengths":    `{"allOf":[{"items":{"pattern":"^[-+]?[0-9.]","type":"string"},"minItems":1,"type":"array"}],"description":"lengths"}`,
		"insideForm": `{"$ref":"#/$defs/strictjson_test.insideForm"}`,
		"twice":      `{"$ref":"#/$defs/strictjson_test.twice"}`,
		"place":      `{"type":"string"}`,
		"left":       `{"maximum":5,"minimum":1,"type":"integer"}`,
	} {
		if got := list(s.Properties[name]); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
	if got := list(s.Defs["strictjson_test.insideForm"]["required"]); got != `["depth"]` {
		t.Errorf("insideForm: %s", got)
	}
	if got := list(s.Defs["strictjson_test.insideForm"]["properties"].(map[string]any)["more"]); got !=
		`{"items":{"$ref":"#/$defs/strictjson_test.insideForm"},"type":"array"}` {
		t.Errorf("a type that holds itself: %s", got)
	}
}
