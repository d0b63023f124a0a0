package strictjson

import (
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"

	"github.com/shopspring/decimal"
)

// Definitions collects the schemas of the types that a file holds, each once.
type Definitions struct{ all map[string]any }

// Schema writes the JSON Schema (draft 2020-12) of a file that is decoded into the
// struct v, from the tags that [Decode] reads. What holds between fields, and whether
// a quantity has a unit of the right kind, only the reader knows.
func Schema(title string, v any) ([]byte, error) {
	d := &Definitions{all: map[string]any{}}
	root := d.Object(reflect.TypeOf(v))
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = title
	root["$defs"] = d.all
	raw, err := json.MarshalIndent(root, "", "  ")
	return append(raw, '\n'), err
}

// Object returns the schema of a struct by its tags.
func (d *Definitions) Object(t reflect.Type) map[string]any {
	properties := map[string]any{}
	required := []string{}
	variants := map[string][]any{} // of members that have several forms, each under a condition of its own
	for _, f := range fieldsOf(t) {
		s := d.of(t.FieldByIndex(f.index).Type, f)
		doc := strings.TrimPrefix(f.doc+"; "+f.need, "; ")
		if doc = strings.TrimSuffix(doc, "; "); doc != "" {
			s = map[string]any{"description": doc, "allOf": []any{s}}
		}
		if variants[f.name] = append(variants[f.name], s); len(variants[f.name]) > 1 {
			s = map[string]any{"anyOf": variants[f.name]}
		}
		properties[f.name] = s
		// A member under a condition cannot be required of every file. One with two forms is
		// required when either condition holds, which is always.
		if f.must && (f.when == "" || len(variants[f.name]) == 2) {
			required = append(required, f.name)
		}
	}
	s := map[string]any{"type": "object", "properties": properties, "additionalProperties": false}
	if len(required) > 0 {
		s["required"] = required
	}
	return s
}

// Ref returns a reference to the schema of a type, which it adds when it is new.
func (d *Definitions) Ref(t reflect.Type, make func() map[string]any) map[string]any {
	name := strings.Map(func(r rune) rune {
		if strings.ContainsRune("[]*/ ", r) {
			return '-'
		}
		return r
	}, strings.ReplaceAll(t.String(), "example.com/laydown/", ""))
	if d == nil { // a call from outside, which has no list to add to
		return map[string]any{}
	}
	if d.all == nil {
		d.all = map[string]any{}
	}
	if _, met := d.all[name]; !met {
		// Bodies may hold bodies. The name is taken before the schema is made, or this would not
		// end.
		d.all[name] = true // a type that holds itself finds it
		d.all[name] = make()
	}
	return map[string]any{"$ref": "#/$defs/" + name}
}

func (d *Definitions) of(t reflect.Type, f field) map[string]any {
	if t.Kind() == reflect.Pointer {
		return d.of(t.Elem(), f)
	}
	if s, ok := reflect.New(t).Interface().(Schemer); ok {
		return d.Ref(t, func() map[string]any { return s.Schema(d) })
	}
	if t == reflect.TypeFor[decimal.Decimal]() {
		return map[string]any{"type": "string", "pattern": `^[0-9]+(\.[0-9]+)?( ?%)?$`}
	}
	if _, ok := reflect.New(t).Interface().(encoding.TextUnmarshaler); ok {
		if f.rule == "spellings" {
			return map[string]any{"type": "string"}
		}
		return d.Value(t, f.rule == "flags")
	}
	switch t.Kind() {
	case reflect.String:
		if f.is != "" {
			return map[string]any{"const": f.is}
		}
		if f.words != nil {
			return map[string]any{"type": "string", "enum": f.words}
		}
		return map[string]any{"type": "string"}
	case reflect.Bool:
		return map[string]any{"type": "boolean"}
	case reflect.Int:
		return f.bounded("integer")
	case reflect.Float64:
		return f.bounded("number")
	case reflect.Array:
		return map[string]any{"type": "array", "items": d.of(t.Elem(), f), "minItems": t.Len(), "maxItems": t.Len()}
	case reflect.Slice:
		s := map[string]any{"type": "array", "items": d.of(t.Elem(), f)}
		if f.rule == "filled" {
			s["minItems"] = 1
		}
		return s
	case reflect.Struct:
		return d.Ref(t, func() map[string]any { return d.Object(t) })
	}
	return map[string]any{}
}

func (f *field) bounded(kind string) map[string]any {
	s := map[string]any{"type": kind}
	if f.low <= f.high {
		s["minimum"], s["maximum"] = f.low, f.high
	}
	return s
}

// Of returns the schema of a type without the tag of a field.
func (d *Definitions) Of(t reflect.Type) map[string]any { return d.of(t, field{}) }

// Value returns the schema of what is read from text: a quantity, a share that may be
// a plain number, one of the words of a type, or with flags a list of them.
func (d *Definitions) Value(t reflect.Type, flags bool) map[string]any {
	switch {
	case t.Kind() == reflect.Float64 && takesPlain(t):
		return map[string]any{"type": []string{"number", "string"}}
	case t.Kind() == reflect.Float64:
		return map[string]any{"type": "string", "pattern": `^[-+]?[0-9.]`}
	}
	words := []string{}
	// A type does not list its words, but it prints them. Every value up to 63, or every bit, is
	// tried, and counts when its word reads back to it.
	for i := range uint64(64) {
		v := reflect.New(t).Elem()
		if k := t.Kind(); k < reflect.Uint || k > reflect.Uint64 {
			break
		}
		if n := i; flags {
			if n >= uint64(t.Bits()) {
				break
			}
			v.SetUint(1 << n)
		} else {
			v.SetUint(n)
		}
		back := reflect.New(t)
		if w := wordOf(v); w != "" && back.Interface().(encoding.TextUnmarshaler).UnmarshalText([]byte(w)) == nil &&
			back.Elem().Uint() == v.Uint() {
			words = append(words, w)
		}
	}
	one := map[string]any{"type": "string"}
	if len(words) > 0 {
		one["enum"] = words
	}
	if flags {
		return map[string]any{"type": "array", "items": one}
	}
	return one
}

// wordOf is the word of a value as files have it, "" for none.
func wordOf(v reflect.Value) string {
	switch w := v.Interface().(type) {
	case encoding.TextMarshaler:
		raw, err := w.MarshalText()
		if err != nil {
			return ""
		}
		return string(raw)
	case fmt.Stringer:
		return w.String()
	}
	return ""
}
