package plating_test

import (
	"encoding/json"
	"reflect"
	"testing"
)

// fill sets the exported fields of a value: numbers that rise from field to field, so that
// the ends of ranges are in order, and the second word of each kind.
func fill(r *float64, v reflect.Value, depth int) {
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			if v.Type().Field(i).IsExported() {
				fill(r, v.Field(i), depth+1)
			}
		}
	case reflect.Pointer:
		if depth < 9 {
			v.Set(reflect.New(v.Type().Elem()))
			fill(r, v.Elem(), depth+1)
		}
	case reflect.Slice:
		if depth < 9 {
			v.Set(reflect.MakeSlice(v.Type(), 2, 2))
			for i := range 2 {
				fill(r, v.Index(i), depth+1)
			}
		}
	case reflect.Float64:
		*r += 0.001
		v.SetFloat(*r)
	case reflect.Int, reflect.Int32, reflect.Int64:
		v.SetInt(1)
	case reflect.Uint8, reflect.Uint16, reflect.Uint32, reflect.Uint64:
		v.SetUint(1)
	case reflect.Bool:
		v.SetBool(true)
	case reflect.String:
		v.SetString("Au")
	}
}

// same compares the exported fields of two values.
func sameExported(a, b reflect.Value) bool {
	if m := a.MethodByName("Equal"); m.IsValid() && m.Type().NumIn() == 1 && m.Type().In(0) == a.Type() {
		return m.Call([]reflect.Value{b})[0].Bool()
	}
	switch a.Kind() {
	case reflect.Struct:
		for i := range a.NumField() {
			if a.Type().Field(i).IsExported() && !sameExported(a.Field(i), b.Field(i)) {
				return false
			}
		}
		return true
	case reflect.Pointer:
		return a.IsNil() == b.IsNil() && (a.IsNil() || sameExported(a.Elem(), b.Elem()))
	case reflect.Slice:
		if a.Len() != b.Len() {
			return false
		}
		for i := range a.Len() {
			if !sameExported(a.Index(i), b.Index(i)) {
				return false
			}
		}
		return true
	case reflect.Func, reflect.Map, reflect.Interface:
		return a.IsNil() && b.IsNil()
	}
	return a.Equal(b)
}

// TestPropertyLossless: every exported struct and word of the library comes back from
// JSON, or refuses to be written or read; words are written as words.
func TestPropertyLossless(t *testing.T) {
	survived := 0
	for _, p := range values {
		v := reflect.New(reflect.TypeOf(p).Elem())
		rising := 0.01
		fill(&rising, v.Elem(), 0)
		raw, err := json.Marshal(v.Interface())
		if err != nil {
			continue // refused
		}
		name := v.Type().Elem().String()
		if k := v.Elem().Kind(); k >= reflect.Uint && k <= reflect.Uint64 && len(raw) > 0 && raw[0] != '"' && raw[0] != '[' {
			t.Errorf("%s is written as %s, not as a word", name, raw)
			continue
		}
		back := reflect.New(v.Type().Elem())
		if err := json.Unmarshal(raw, back.Interface()); err != nil {
			if json.Unmarshal([]byte(`{}`), back.Interface()) != nil {
				continue // refuses to be read at all: it is written one way
			}
			t.Errorf("%s: %s does not come back: %v", name, raw, err)
			continue
		}
		if !sameExported(v.Elem(), back.Elem()) {
			t.Errorf("%s: %+v\ncomes back from %s\nas %+v", name, v.Elem().Interface(), raw, back.Elem().Interface())
			continue
		}
		survived++
	}
	if survived < 100 {
		t.Errorf("%d of %d types come back", survived, len(values))
	}
}
