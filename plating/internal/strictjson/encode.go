package strictjson

import (
	"bytes"
	"encoding"
	"encoding/json"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/units"
)

// Encode writes a struct by the tags of its fields, as [Decode] reads it: members in
// the order of the fields, quantities in the unit that the tag names with all their
// digits, what is zero left out. A member whose path is in spare, as
// "layers.bath.hazards" for that of every layer, is left out when it is zero even if its
// tag keeps it: there zero says nothing.
//
// Errors: a [*units.ValueError] for what is no finite number; those of the values' own
// MarshalText and EncodeNode; each with the path.
func Encode(v any, spare ...string) ([]byte, error) {
	b := encoder{spare: spare}
	if err := encode(&b, reflect.ValueOf(v), field{}, ""); err != nil {
		return nil, err
	}
	var out bytes.Buffer
	if err := json.Indent(&out, b.Bytes(), "", "  "); err != nil {
		return nil, err
	}
	out.WriteByte('\n')
	return out.Bytes(), nil
}

// An encoder holds what is written and the paths of the members that may be spared.
type encoder struct {
	bytes.Buffer
	spare []string
}

func encode(b *encoder, v reflect.Value, f field, path string) error {
	// Pointers are followed down to the value, but not past one that knows its own form.
	for v.IsValid() && (v.Kind() == reflect.Pointer || v.Kind() == reflect.Interface) && !v.IsNil() {
		if _, own := v.Interface().(NodeEncoder); own {
			break
		}
		v = v.Elem()
	}
	if !v.IsValid() || (v.Kind() == reflect.Pointer && v.IsNil()) {
		b.WriteString("null")
		return nil
	}
	if e, ok := v.Interface().(NodeEncoder); ok {
		// The form is written by the tag of the same field, so that a figure in its short form, "8
		// g/L", and in its long one, an object with both ends, has the same unit.
		form := e.EncodeNode()
		if err, bad := form.(error); bad {
			return at(path, err)
		}
		return encode(b, reflect.ValueOf(form), f, path)
	}
	// JSON has no NaN and no infinity. They are refused before the type is asked for its text,
	// so that the error carries the path.
	if v.Kind() == reflect.Float64 {
		if err := units.Finite(or(f.name, "value"), units.Ratio(v.Float())); err != nil {
			return at(path, err)
		}
	}
	if d, ok := v.Interface().(decimal.Decimal); ok {
		return text(b, d.String())
	}
	if f.rule == "flags" {
		raw, err := json.Marshal(v.Interface())
		b.Write(raw)
		return at(path, err)
	}
	if m, ok := v.Interface().(encoding.TextMarshaler); ok {
		raw, err := m.MarshalText()
		if err != nil { // as of what is no number
			return at(path, err)
		}
		// The unit of the tag, where the type knows it; else the type's own text.
		if s, ok := inUnit(v, f.unit); ok {
			return text(b, s)
		}
		return text(b, string(raw))
	}
	switch v.Kind() {
	case reflect.Struct:
		return object(b, v, f.unit, path)
	case reflect.Slice, reflect.Array:
		b.WriteByte('[')
		for i := range v.Len() {
			if i > 0 {
				b.WriteByte(',')
			}
			if err := encode(b, v.Index(i), f, fmt.Sprintf("%s[%d]", path, i+1)); err != nil {
				return err
			}
		}
		b.WriteByte(']')
		return nil
	case reflect.String:
		return text(b, v.String())
	}
	raw, err := json.Marshal(v.Interface())
	b.Write(raw)
	return at(path, err)
}

// unnumbered is a path without the numbers of items of lists.
func unnumbered(path string) string {
	for {
		before, rest, ok := strings.Cut(path, "[")
		_, after, closed := strings.Cut(rest, "]")
		if !ok || !closed {
			return path
		}
		path = before + after
	}
}

// object writes the fields of a struct; those without a unit of their own take that of
// the field that holds them, as the ends of a range do.
func object(b *encoder, v reflect.Value, unit, path string) error {
	b.WriteByte('{')
	first := true
	fields := fieldsOf(v.Type())
	for _, f := range fields {
		fv := v.FieldByIndex(f.index)
		// A field that is kept at zero may be spared beside another one: a library bath has its
		// own hazards, and an empty list beside it would contradict them.
		if f.other != "" {
			f.keep = f.keep && !slices.ContainsFunc(fields, func(o field) bool {
				return o.name == f.other && !v.FieldByIndex(o.index).IsZero()
			})
		}
		f.keep = f.keep && !slices.Contains(b.spare, unnumbered(join(path, f.name)))
		if (!f.keep || f.when != "") && (fv.IsZero() || fv.Kind() == reflect.Slice && fv.Len() == 0) && f.is == "" {
			continue
		}
		// A range has no unit in its own tags; its field has one, and both ends take it.
		f.unit = or(f.unit, unit)
		if !first {
			b.WriteByte(',')
		}
		first = false
		if err := text(b, f.name); err != nil {
			return err
		}
		b.WriteByte(':')
		if f.is != "" {
			if err := text(b, f.is); err != nil {
				return err
			}
			continue
		}
		if err := encode(b, fv, f, join(path, f.name)); err != nil {
			return err
		}
	}
	b.WriteByte('}')
	return nil
}

// text writes a string without the escapes that only a page needs.
func text(b *encoder, s string) error {
	var raw bytes.Buffer
	enc := json.NewEncoder(&raw)
	// The escapes for pages make < and & unreadable in a file that people edit.
	enc.SetEscapeHTML(false)
	if err := enc.Encode(s); err != nil {
		return err
	}
	b.WriteString(strings.TrimSuffix(raw.String(), "\n"))
	return nil
}

func at(path string, err error) error {
	if err == nil {
		return nil
	}
	return fmt.Errorf("%s: %w", path, err)
}

// inUnit writes a quantity in a unit with all digits it needs to read back; "%" writes
// a share.
func inUnit(v reflect.Value, unit string) (string, bool) {
	if unit == "" || v.Kind() != reflect.Float64 {
		return "", false
	}
	if p, ok := v.Interface().(interface{ Percent(decimals int) string }); ok && unit == "%" {
		return p.Percent(-1), true
	}
	if t, ok := v.Interface().(units.Temperature); ok {
		return t.Text(units.CelsiusScale, -1), true
	}
	one := reflect.New(v.Type())
	u, ok := one.Interface().(encoding.TextUnmarshaler)
	if !ok {
		return "", false
	}
	symbol := "1 " + unit
	if err := u.UnmarshalText([]byte(symbol)); err != nil {
		return "", false
	}
	m := v.MethodByName("Text")
	if !m.IsValid() || m.Type().NumIn() != 2 || m.Type().In(0) != v.Type() {
		return "", false
	}
	return m.Call([]reflect.Value{one.Elem(), reflect.ValueOf(-1)})[0].String(), true
}
