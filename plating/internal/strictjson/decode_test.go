package strictjson_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"
	"time"

	"github.com/shopspring/decimal"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

type inner struct {
	Share units.Ratio `json:"share" with:"must" need:"a share" rule:"share" in:"%"`
}

type loose struct {
	Weight units.Mass `json:"weight" with:"must" in:"g"`
	Label  string     `json:"label" with:"must" need:"a label"`
}

// outer has a field of each kind.
type outer struct {
	Size    units.Length      `json:"size" with:"must" need:"one as 2 mm" rule:"positive" in:"mm"`
	Name    string            `json:"name"`
	Count   int               `json:"count"`
	Few     int               `json:"few" rule:"1..9"`
	On      bool              `json:"on"`
	PH      plating.PH        `json:"pH"`
	Hazards plating.Hazard    `json:"hazards" rule:"flags"`
	Salts   []faraday.Formula `json:"salts" need:"formulas in quotes" rule:"filled"`
	When    time.Time         `json:"when"`
	In      inner             `json:"in"`
	Far     *inner            `json:"far"`
	Price   decimal.Decimal   `json:"price"`
	Angle   float64           `json:"angle" need:"degrees" rule:"-90..90"`
	At      [2]units.Length   `json:"at" need:"x and y" in:"mm"`
	Way     string            `json:"way" words:"line, arc, cap"`
	Via     *[2]units.Length  `json:"via" with:"must" if:"way=arc" need:"a point of the arc" in:"mm"`
	Tail    units.Length      `json:"tail" if:"way=arc|cap !far"`
	Width   units.Length      `json:"width" if:"way=line"`
	loose   `if:"weight"`
}

func decode(text string) (v outer, err error) {
	n, err := strictjson.Parse([]byte(text), strictjson.Doc{What: "thing", Need: "an object with size", AnyText: true})
	if err == nil {
		err = strictjson.Decode(n, &v)
	}
	return v, err
}

const whole = `{"size": "2 mm", "name": "a\nb", "count": 3, "few": 9, "on": true, "pH": 4.4,
	"hazards": ["acid", "cyanide"], "salts": ["KCN", "NiSO4"], "when": "2026-03-02T08:00:00Z", "in": {"share": "35 %"},
	"far": {"share": 1}, "price": "98.50", "angle": -89.5, "at": ["1 mm", "0 mm"], "way": "arc", "via": ["0 mm", "1 cm"],
	"weight": "3 g", "label": "x"}`

// TestPropertyDecode: every kind of field is read, and is written so that it is read again.
func TestPropertyDecode(t *testing.T) {
	v, err := decode("\xef\xbb\xbf" + whole)
	if err != nil || v.Size != 2*units.Millimetre || v.Name != "a\nb" || v.Count != 3 || v.Few != 9 || !v.On ||
		v.PH != 4.4 || v.Hazards != plating.HazardAcid|plating.HazardCyanide || len(v.Salts) != 2 || v.When.Day() != 2 ||
		v.In.Share != 0.35 || v.Far == nil || v.Far.Share != 1 || v.Price.String() != "98.5" || v.Angle != -89.5 ||
		v.At[0] != units.Millimetre || v.Via == nil || v.Via[1] != units.Centimetre || v.Weight != 3*units.Gram ||
		v.Label != "x" {
		t.Fatalf("%+v, %v", v, err)
	}
	raw, err := strictjson.Encode(v)
	if err != nil {
		t.Fatal(err)
	}
	again, err := decode(string(raw))
	if err != nil {
		t.Fatalf("%v in %s", err, raw)
	}
	other, err := strictjson.Encode(again)
	if err != nil || !bytes.Equal(raw, other) {
		t.Errorf("%s\n%s\n%v", raw, other, err)
	}
	if v, err := decode(`{"size": "2 mm"}`); err != nil || v.Far != nil || v.Way != "" {
		t.Errorf("what may be left out: %+v, %v", v, err)
	}
}

// TestPropertyDecodeRefused: what is wrong is told with line, field, what it holds and what
// would do.
func TestPropertyDecodeRefused(t *testing.T) {
	const ok = `{"size": "2 mm", `
	for _, c := range []struct {
		text, path, what string
		line             int
	}{
		{"{\n\"size\" \"2 mm\"}", "", `something is wrong before '"'; look for a comma, colon or quote`, 2},
		{"{\n\"size\": \"2 mm\",}", "", "something is wrong before '}'", 2},
		{"{\n\"size\": \"2", "", "ends in the middle; a brace, bracket or quote is not closed", 2},
		{"[]", "", "is a list; need an object in braces", 1},
		{"null", "", "is null; need an object", 1},
		{"{}", "", `field "size" is missing; need one as 2 mm`, 1},
		{ok + "\n\"siz\": 1}", "siz", "unknown field; known here are size, name, count", 2},
		{"{\"siz\": 1}", "siz", "unknown field", 1},
		{ok + `"Name": "x"}`, "Name", "unknown field", 1},
		{ok + `"size": "3 mm"}`, "size", "given twice", 1},
		{`{"size": "2"}`, "size", `no unit after the number; accepted: m, cm, mm`, 1},
		{`{"size": 2}`, "size", "is 2 without a unit; need number and unit in quotes; accepted: m, cm, mm", 1},
		{`{"size": null}`, "size", "is null; need a number and a unit in quotes", 1},
		{`{"size": {}}`, "size", "is an object; need a number and a unit", 1},
		{`{"size": "0 mm"}`, "size", `is "0 mm"; need a value above zero`, 1},
		{ok + `"name": 7}`, "name", "is 7; need text in quotes", 1},
		{ok + `"count": 1.5}`, "count", "is 1.5; need a whole number", 1},
		{ok + `"count": "3"}`, "count", `is "3"; need a whole number`, 1},
		{ok + `"count": []}`, "count", "is a list; need a whole number", 1},
		{ok + `"few": 10}`, "few", "is 10; need a whole number from 1 to 9", 1},
		{ok + `"few": 0}`, "few", "is 0; need a whole number from 1 to 9", 1},
		{ok + `"on": "true"}`, "on", `is "true"; need true or false`, 1},
		{ok + `"pH": true}`, "pH", "is true; need a number", 1},
		{ok + `"pH": 17}`, "pH", "at most 16", 1},
		{ok + `"hazards": "acid"}`, "hazards", `is "acid"; need words in square brackets`, 1},
		{ok + `"hazards": ["acid", 5]}`, "hazards[2]", "is 5; need a word in quotes", 1},
		{ok + `"hazards": ["poison"]}`, "hazards[1]", "one of cyanide", 1},
		{ok + `"salts": "KCN"}`, "salts", "need formulas in quotes in square brackets", 1},
		{ok + `"salts": []}`, "salts", "is empty; need formulas in quotes", 1},
		{ok + `"salts": ["KCN", "Kx"]}`, "salts[2]", "Kx", 1},
		{ok + `"salts": [5]}`, "salts[1]", "is 5; need formulas in quotes", 1},
		{ok + `"when": "noon"}`, "when", "noon", 1},
		{ok + `"in": "x"}`, "in", `is "x"; need an object in braces`, 1},
		{ok + `"in": {}}`, "in", `field "share" is missing; need a share`, 1},
		{ok + `"in": {"share": 1.35}}`, "in.share", `is 1.35; need a fraction above 0 and at most 1`, 1},
		{ok + `"far": {"share": "x"}}`, "far.share", "x", 1},
		{ok + `"price": 98.50}`, "price", "is 98.50; need an amount of 0 or more in quotes", 1},
		{ok + `"angle": 90.5}`, "angle", "is 90.5; need degrees from -90 to 90", 1},
		{ok + `"angle": "45"}`, "angle", `is "45"; need degrees`, 1},
		{ok + `"at": "1 mm"}`, "at", "need x and y in square brackets", 1},
		{ok + `"at": ["1 mm"]}`, "at", "has 1 items; need two, x and y", 1},
		{ok + `"at": ["1 mm", "1 g"]}`, "at[2]", "is one of mass", 1},
		{ok + `"way": "bow"}`, "way", `is "bow"; need one of line, arc, cap`, 1},
		{ok + `"way": 3}`, "way", `is 3; need one of line, arc, cap`, 1},
		{ok + `"way": "arc"}`, "", `field "via" is missing; need a point of the arc`, 1},
		{ok + `"via": ["1 mm", "1 mm"]}`, "via", "unknown field", 1}, // beside a line, which it is when left out
		{ok + `"way": "cap", "tail": "1 mm", "far": {"share": 1}}`, "tail", "unknown field", 1},
		{ok + `"label": "x"}`, "label", "unknown field; known here are size, name, count, few, on, pH, hazards, salts, " +
			"when, in, far, price, angle, at, way, width, weight", 1},
		{ok + `"weight": "1 g"}`, "", `field "label" is missing; need a label`, 1},
		{ok + `"weight": "1 g", "label": " "}`, "label", `is empty; need a label`, 1},
	} {
		_, err := decode(c.text)
		var e *strictjson.Error
		if !errors.As(err, &e) || e.Line != c.line || e.Path != c.path || !strings.Contains(e.What, c.what) ||
			strings.Contains(e.What, "json") || strings.Contains(e.What, "EOF") {
			t.Errorf("%.60q: %+v; want line %d, %s: %s", c.text, err, c.line, c.path, c.what)
		}
	}
	if v, err := decode(ok + `"way": "cap", "tail": "1 mm"}`); err != nil || v.Tail == 0 {
		t.Error(err)
	}
	if v, err := decode(ok + `"width": "1 mm"}`); err != nil || v.Width == 0 { // a line when it is left out
		t.Error(err)
	}
	var e *strictjson.Error
	if _, err := decode("{}"); !errors.As(err, &e) || e.Missing != "size" {
		t.Errorf("the missing one is not named: %v", err)
	}
}

// TestPropertyTexts: text without quotes is a quantity, a number, a word, or true and false.
func TestPropertyTexts(t *testing.T) {
	var v outer
	n := strictjson.Texts([]string{"size", "count", "on", "name"}, []string{"2 mm", "3", "true", "true"})
	if err := strictjson.Decode(n, &v); err != nil || v.Size != 2*units.Millimetre || v.Count != 3 || !v.On ||
		v.Name != "true" {
		t.Errorf("%+v, %v", v, err)
	}
	var e *strictjson.Error
	if err := strictjson.Decode(strictjson.Texts([]string{"on"}, []string{"yes"}), &v); !errors.As(err, &e) ||
		e.Path != "on" {
		t.Error(err)
	}
	if v.On = true; strictjson.Decode(strictjson.Texts([]string{"size", "on"}, []string{"1 m", "false"}), &v) != nil ||
		v.On {
		t.Errorf("%+v", v)
	}
}

// TestPropertyNotANumber: what is no number is not written, with or without a unit.
func TestPropertyNotANumber(t *testing.T) {
	var zero float64
	for _, v := range []outer{{Size: units.Length(1 / zero)}, {Tail: units.Length(zero / zero)}} {
		if raw, err := strictjson.Encode(v); err == nil || !strings.Contains(err.Error(), ": ") {
			t.Errorf("%s, %v", raw, err)
		}
	}
}

// TestPropertySchemaOfTags: the schema says what the tags do.
func TestPropertySchemaOfTags(t *testing.T) {
	raw, err := strictjson.Schema("thing", outer{})
	if err != nil {
		t.Fatal(err)
	}
	var s struct {
		Required   []string
		Properties map[string]map[string]any
	}
	if err := json.Unmarshal(raw, &s); err != nil {
		t.Fatal(err)
	}
	if len(s.Required) != 1 || s.Required[0] != "size" || len(s.Properties) != 20 {
		t.Errorf("required %v of %d", s.Required, len(s.Properties))
	}
	text := string(raw)
	for _, want := range []string{`"maxItems": 2`, `"maximum": 90`, `"minimum": -90`, `"additionalProperties": false`,
		`"minItems": 1`} {
		if !strings.Contains(text, want) {
			t.Errorf("no %s in %s", want, text)
		}
	}
	if _, bounded := s.Properties["count"]["maximum"]; bounded || s.Properties["way"]["enum"] == nil {
		t.Errorf("count %v, way %v", s.Properties["count"], s.Properties["way"])
	}
}
