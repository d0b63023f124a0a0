package strictjson_test

import (
	"errors"
	"reflect"
	"slices"
	"strings"
	"testing"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

type inner struct {
	Share units.Ratio `json:"share"`
}

// outer has a field of each kind.
type outer struct {
	Size    units.Length      `json:"size"`
	Name    string            `json:"name,omitempty"`
	Count   int               `json:"count,omitzero"`
	On      bool              `json:"on,omitempty"`
	PH      plating.PH        `json:"pH,omitzero"`
	Hazards plating.Hazard    `json:"hazards,omitzero"`
	Salts   []faraday.Formula `json:"salts,omitempty"`
	When    time.Time         `json:"when,omitzero"`
	In      inner             `json:"in,omitzero"`
	Far     *inner            `json:"far,omitempty"`
}

// TestPropertyInto: every kind of field is read.
func TestPropertyInto(t *testing.T) {
	for _, count := range []string{"3", `"3"`} {
		var v outer
		err := strictjson.Into([]byte("\xef\xbb\xbf"+`{"size": "2 mm", "name": "a\nb", "count": `+count+`, "on": true, "pH": 4.4,
			"hazards": ["acid", "cyanide"], "salts": ["KCN", "NiSO4"], "when": "2026-03-02T08:00:00Z", "in": {"share": "35 %"},
			"far": {"share": "1"}}`), &v)
		if err != nil || v.Size != 2*units.Millimetre || v.Name != "a\nb" || v.Count != 3 || !v.On || v.PH != 4.4 ||
			v.Hazards != plating.HazardAcid|plating.HazardCyanide || len(v.Salts) != 2 || v.When.Day() != 2 ||
			v.In.Share != 0.35 ||
			v.Far == nil || v.Far.Share != 1 {
			t.Errorf("%+v, %v", v, err)
		}
	}
	all, needed := strictjson.Names(reflect.TypeFor[outer]())
	if len(all) != 10 || !slices.Equal(needed, []string{"size"}) {
		t.Errorf("%v, %v", all, needed)
	}
}

// TestPropertyIntoRefused: what is wrong is told with line, field, what it holds and what
// would do, in no words of Go.
func TestPropertyIntoRefused(t *testing.T) {
	const ok = `{"size": "2 mm", `
	for _, c := range []struct {
		text, path, what string
		line             int
	}{
		{"", "", "empty; need an object in braces with size", 0},
		{" \n", "", "empty; need", 0},
		{"\xff", "", "not UTF-8 text; save the file as UTF-8", 0},
		{"{\n\"size\" \"2 mm\"}", "", `something is wrong before '"'; look for a comma, colon or quote`, 2},
		{"{\n\"size\": \"2 mm\",}", "", "something is wrong before '}'", 2},
		{"{\n\"size\": \"2", "", "ends in the middle; a brace, bracket or quote is not closed", 2},
		{"{}\n{}", "", "more than one value; need one object in braces", 0},
		{strings.Repeat(" ", 1<<20) + "{}", "", "larger than 1048576 bytes", 0},
		{"[]", "", "is a list; need an object in braces with size", 1},
		{"null", "", "is null; need an object", 1},
		{"{}", "size", "missing; needed here: size", 1},
		{ok + "\n\"siz\": 1}", "siz", "unknown field; known here: size, name", 2},
		{ok + `"Name": "x"}`, "Name", "unknown field", 1},
		{ok + `"size": "3 mm"}`, "size", "given twice", 1},
		{`{"size": "2"}`, "size", `is "2": no unit after the number; units: m, cm, mm`, 1},
		{`{"size": 2}`, "size", "is 2; need number and unit in quotes, units: m, cm, mm", 1},
		{`{"size": null}`, "size", "is null; need number and unit in quotes", 1},
		{`{"size": {}}`, "size", "is an object; need number and unit", 1},
		{ok + `"name": 7}`, "name", "is 7; need text in quotes", 1},
		{ok + `"count": 1.5}`, "count", "is 1.5; need a whole number", 1},
		{ok + `"count": []}`, "count", "is a list; need a whole number", 1},
		{ok + `"on": "true"}`, "on", `is "true"; need true or false`, 1},
		{ok + `"pH": true}`, "pH", "is true; need a number, as 4.4", 1},
		{ok + `"pH": 17}`, "pH", "at most 16", 1},
		{ok + `"hazards": "acid"}`, "hazards", `is "acid"; need a list in square brackets`, 1},
		{ok + `"hazards": ["acid", 5]}`, "hazards[2]", "is 5; need text in quotes", 1},
		{ok + `"hazards": ["poison"]}`, "hazards", "one of cyanide", 1},
		{ok + `"salts": "KCN"}`, "salts", "need a list in square brackets", 1},
		{ok + `"salts": ["KCN", "Kx"]}`, "salts[2]", "Kx", 1},
		{ok + `"salts": [5]}`, "salts[1]", "is 5; need text in quotes", 1},
		{ok + `"when": "noon"}`, "when", "noon", 1},
		{ok + `"in": "x"}`, "in", `is "x"; need an object in braces with share`, 1},
		{ok + `"in": {}}`, "in.share", "missing; needed here: share", 1},
		{ok + `"in": {"share": 0.35}}`, "in.share", `is 0.35 without quotes; need "0.35"`, 1},
		{ok + `"far": {"share": "x"}}`, "far.share", "x", 1},
	} {
		var v outer
		err := strictjson.Into([]byte(c.text), &v)
		var e *strictjson.Error
		if !errors.As(err, &e) || e.Line != c.line || e.Path != c.path || !strings.Contains(e.What, c.what) ||
			strings.Contains(e.What, "json") || strings.Contains(e.What, "EOF") {
			t.Errorf("%.40q: %+v; want line %d, %s: %s", c.text, err, c.line, c.path, c.what)
		}
	}
}

// TestPropertyTexts: text without quotes is a quantity, a number, a word, or true and false.
func TestPropertyTexts(t *testing.T) {
	var v outer
	n := strictjson.Texts([]string{"size", "count", "on", "name"}, []string{"2 mm", "3", "true", "true"})
	if err := strictjson.Struct(n, &v); err != nil || v.Size != 2*units.Millimetre || v.Count != 3 || !v.On ||
		v.Name != "true" {
		t.Errorf("%+v, %v", v, err)
	}
	var e *strictjson.Error
	if err := strictjson.Struct(strictjson.Texts([]string{"on"}, []string{"yes"}), &v); !errors.As(err, &e) ||
		e.Path != "on" {
		t.Error(err)
	}
	if v.On = true; strictjson.Struct(strictjson.Texts([]string{"size", "on"}, []string{"1 m", "false"}), &v) != nil ||
		v.On {
		t.Errorf("%+v", v)
	}
}
