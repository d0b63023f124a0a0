package job_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
)

var update = flag.Bool("update", false, "write the schemas into testdata/schema")

// A schema is one as it was read from its file.
type schema struct{ root map[string]any }

func schemaOf(t *testing.T, raw []byte) *schema {
	t.Helper()
	s := &schema{}
	if err := json.Unmarshal(raw, &s.root); err != nil {
		t.Fatal(err)
	}
	return s
}

// check holds a value against the words of JSON Schema that the schemas use, and fails
// for a word that it does not know.
func (s *schema) check(path string, rule map[string]any, v any) error {
	for word, arg := range rule {
		if err := s.word(path, rule, word, arg, v); err != nil {
			return err
		}
	}
	return nil
}

func (s *schema) word(path string, rule map[string]any, word string, arg, v any) error {
	bad := func(format string, args ...any) error {
		return fmt.Errorf("%s: "+format, append([]any{path}, args...)...)
	}
	switch word {
	case "$schema", "title", "description", "$defs":
	case "$ref":
		name := strings.TrimPrefix(arg.(string), "#/$defs/")
		to, ok := s.root["$defs"].(map[string]any)[name].(map[string]any)
		if !ok {
			return bad("no definition %s", name)
		}
		return s.check(path, to, v)
	case "type":
		kinds, list := arg.([]any)
		if !list {
			kinds = []any{arg}
		}
		if !slices.ContainsFunc(kinds, func(k any) bool { return isKind(k.(string), v) }) {
			return bad("%v is no %v", v, arg)
		}
	case "const":
		if v != arg {
			return bad("%v is not %v", v, arg)
		}
	case "enum":
		if !slices.Contains(arg.([]any), v) {
			return bad("%v is none of %v", v, arg)
		}
	case "pattern":
		if text, is := v.(string); is && !regexp.MustCompile(arg.(string)).MatchString(text) {
			return bad("%q is not %s", text, arg)
		}
	case "minimum", "maximum":
		if n, is := v.(float64); is && (word == "minimum" && n < arg.(float64) || word == "maximum" && n > arg.(float64)) {
			return bad("%v is beyond %v", n, arg)
		}
	case "minItems":
		if list, is := v.([]any); is && float64(len(list)) < arg.(float64) {
			return bad("%d items", len(list))
		}
	case "items":
		list, _ := v.([]any)
		for i, item := range list {
			if err := s.check(fmt.Sprintf("%s[%d]", path, i+1), arg.(map[string]any), item); err != nil {
				return err
			}
		}
	case "required":
		if m, is := v.(map[string]any); is {
			for _, name := range arg.([]any) {
				if _, given := m[name.(string)]; !given {
					return bad("no %s", name)
				}
			}
		}
	case "properties":
		m, _ := v.(map[string]any)
		for name, one := range m {
			of, known := arg.(map[string]any)[name].(map[string]any)
			if !known {
				if rule["additionalProperties"] == false {
					return bad("unknown %s", name)
				}
				continue
			}
			if err := s.check(path+"."+name, of, one); err != nil {
				return err
			}
		}
	case "additionalProperties":
		if _, has := rule["properties"]; arg != false || !has {
			return bad("additionalProperties %v", arg)
		}
	case "oneOf", "allOf":
		fit := 0
		var errs []string
		for _, one := range arg.([]any) {
			if err := s.check(path, one.(map[string]any), v); err == nil {
				fit++
			} else {
				errs = append(errs, err.Error())
			}
		}
		if want := len(arg.([]any)); word == "allOf" && fit != want || word == "oneOf" && fit != 1 {
			return bad("%d of %s fit: %s", fit, word, strings.Join(errs, "; "))
		}
	default:
		return bad("the test does not know %q", word)
	}
	return nil
}

func isKind(kind string, v any) bool {
	switch v := v.(type) {
	case map[string]any:
		return kind == "object"
	case []any:
		return kind == "array"
	case string:
		return kind == "string"
	case bool:
		return kind == "boolean"
	case float64:
		return kind == "number" || kind == "integer" && v == float64(int64(v))
	}
	return false
}

// valid holds a file against the schema.
func (s *schema) valid(t testing.TB, raw []byte) error {
	t.Helper()
	var v any
	if err := json.Unmarshal(raw, &v); err != nil {
		t.Fatal(err)
	}
	return s.check("", s.root, v)
}

// TestPinnedSchemas: the schemas are those of testdata/schema; run with -update to write
// them anew.
func TestPinnedSchemas(t *testing.T) {
	for name, make := range map[string]func() ([]byte, error){"job.json": job.Schema, "baths.json": bath.Schema} {
		raw, err := make()
		if err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("..", "..", "testdata", "schema", name)
		if *update {
			if err := os.WriteFile(file, raw, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(raw, want) {
			t.Errorf("%s is another than the schema that the fields give; write it with -update and read the difference",
				name)
		}
	}
}

// TestPropertySchemaTakesJobs: every job that is committed is valid, and so are jobs with
// every field as Write writes them.
func TestPropertySchemaTakesJobs(t *testing.T) {
	raw, err := job.Schema()
	if err != nil {
		t.Fatal(err)
	}
	s := schemaOf(t, raw)
	files := shippedFiles(t)
	files["right"], files["shop"], files["bob"] = []byte(right), []byte(shop), []byte(pendulumBob)
	for n := range uint64(100) {
		var b bytes.Buffer
		if err := (maker{rand.New(rand.NewPCG(n, 9))}).job().Write(&b); err != nil {
			t.Fatal(err)
		}
		files[fmt.Sprint("made ", n)] = b.Bytes()
	}
	for name, raw := range files {
		if err := s.valid(t, raw); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestPropertySchemaRefuses: what is wrong by itself, whatever stands beside it, is not
// valid.
func TestPropertySchemaRefuses(t *testing.T) {
	raw, err := job.Schema()
	if err != nil {
		t.Fatal(err)
	}
	s := schemaOf(t, raw)
	checked := 0
	for _, w := range wrongs {
		text := strings.Replace(right, w.old, w.new, 1)
		if !json.Valid([]byte(text)) || strings.Contains(w.want, "twice") {
			continue
		}
		byItself := w.below == 0 && (strings.Contains(w.want, "known here are") || strings.Contains(w.want, "in quotes") ||
			strings.Contains(w.want, "whole number") || strings.Contains(w.want, "need an object in braces") ||
			strings.Contains(w.want, "field \"") && w.path != "layers[1]" && w.path != "layers[1].bath") ||
			strings.Contains(w.want, "need one of plate") || strings.Contains(w.want, "without a unit")
		if !byItself || strings.Contains(w.name, "depth") {
			continue
		}
		checked++
		if err := s.valid(t, []byte(text)); err == nil {
			t.Errorf("%s: valid", w.name)
		}
	}
	if checked < 30 {
		t.Errorf("only %d wrong jobs checked", checked)
	}
	for name, text := range map[string]string{
		"no parts":        `{"format": "laydown job 1"}`,
		"another format":  `{"format": "laydown job 2", "parts": [{"area": "1 cm²"}]}`,
		"parts empty":     `{"format": "laydown job 1", "parts": []}`,
		"no object":       `[]`,
		"finish unknown":  `{"format": "laydown job 1", "parts": [{}], "finish": "shiny"}`,
		"liquid unknown":  `{"format": "laydown job 1", "parts": [{}], "rinse": {"liquid": "gravy"}}`,
		"price a number":  `{"format": "laydown job 1", "parts": [{}], "price": {"currency": "EUR", "yield": 1}}`,
		"no currency":     `{"format": "laydown job 1", "parts": [{}], "price": {"yield": "1"}}`,
		"body twice kind": `{"format": "laydown job 1", "parts": [{"shape": {"kind": "sphere", "length": "1 mm"}}]}`,
	} {
		if err := s.valid(t, []byte(text)); err == nil {
			t.Errorf("%s: valid", name)
		}
	}
}

// TestPropertyBathSchema: a file of baths is valid, and with a slip it is not.
func TestPropertyBathSchema(t *testing.T) {
	raw, err := bath.Schema()
	if err != nil {
		t.Fatal(err)
	}
	s := schemaOf(t, raw)
	if err := s.valid(t, []byte(ourBaths)); err != nil {
		t.Error(err)
	}
	for _, c := range [][2]string{{`"key"`, `"keys"`}, {`["strike"]`, `["flash"]`}, {`"valence": 1`, `"valence": 9`},
		{`"laydown baths 1"`, `"laydown job 1"`}, {`"live_entry": true`, `"live_entry": "yes"`},
		{`"soluble"`, `1`}, {`"insoluble"`, `"none"`}, {`"19 g/cm³"`, `19`}, {`{"text": "platinised titanium", `, `{`},
		{`"seen": "measured"`, `"seen": "heard"`}, {`"low": "6 %"`, `"lo": "6 %"`}} {
		text := strings.Replace(ourBaths, c[0], c[1], 1)
		if text == ourBaths {
			continue
		}
		if err := s.valid(t, []byte(text)); err == nil {
			t.Errorf("with %s it is valid", c[1])
		}
	}
	library := bytes.NewBufferString(`{"format": "laydown baths 1", "baths": [`)
	for i, b := range bath.Library() {
		one, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		if i > 0 {
			library.WriteByte(',')
		}
		library.Write(one)
	}
	library.WriteString("]}")
	if err := s.valid(t, library.Bytes()); err != nil {
		t.Errorf("the library: %v", err)
	}
}

// TestDocKnowsTheFields: each field that a file may have stands in the package comment of
// job or of bath.
func TestDocKnowsTheFields(t *testing.T) {
	var doc []byte
	for _, name := range []string{"doc.go", "../bath/doc.go"} {
		raw, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		doc = append(doc, raw...)
	}
	raw, err := job.Schema()
	if err != nil {
		t.Fatal(err)
	}
	met := map[string]bool{}
	var walk func(v any)
	walk = func(v any) {
		switch v := v.(type) {
		case map[string]any:
			if fields, is := v["properties"].(map[string]any); is && v["type"] == "object" {
				for name := range fields {
					met[name] = true
				}
			}
			for _, one := range v {
				walk(one)
			}
		case []any:
			for _, one := range v {
				walk(one)
			}
		}
	}
	walk(schemaOf(t, raw).root)
	if len(met) < 100 {
		t.Errorf("only %d fields", len(met))
	}
	for name := range met {
		if !regexp.MustCompile(`\b` + name + `\b`).Match(doc) {
			t.Errorf("field %q is read and no package comment says so", name)
		}
	}
}
