package main

import (
	"bytes"
	"encoding"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// readObject reads one JSON object and nothing behind it into the struct that
// into points to. It goes field by field, so that an error names the field,
// what it holds and what would do; package encoding/json names Go types.
func readObject(raw []byte, into any) error {
	v := reflect.ValueOf(into).Elem()
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf"))
	switch {
	case !utf8.Valid(raw):
		return errors.New("not UTF-8 text; save the file as UTF-8")
	case len(bytes.TrimSpace(raw)) == 0:
		return fmt.Errorf("empty; need an object in braces with %s", strings.Join(names(v.Type(), true), ", "))
	}
	dec := json.NewDecoder(bytes.NewReader(raw))
	var object json.RawMessage
	var syntax *json.SyntaxError
	switch err := dec.Decode(&object); {
	case errors.As(err, &syntax):
		at := min(max(int(syntax.Offset), 1), len(raw)) - 1
		wrong, _ := utf8.DecodeRune(raw[at:])
		return fmt.Errorf("line %d: something is wrong before %q; look for a comma, colon or quote missing or too many", 1+
			bytes.Count(raw[:at], []byte("\n")), wrong)
	case err != nil:
		return fmt.Errorf("line %d: ends in the middle; a brace, bracket or quote is not closed", 1+
			bytes.Count(bytes.TrimSpace(raw), []byte("\n")))
	}
	if _, err := dec.Token(); err != io.EOF {
		return errors.New("more than one value; need one object in braces")
	}
	return readStruct("", object, v)
}

// readStruct reads an object into a struct by its json names. A field whose
// name allows no zero to be left out is needed.
func readStruct(path string, raw json.RawMessage, v reflect.Value) error {
	known, needed := names(v.Type(), false), names(v.Type(), true)
	if raw[0] != '{' {
		return fault(path, "is %s; need an object in braces with %s", shown(raw), strings.Join(needed, ", "))
	}
	dec := json.NewDecoder(bytes.NewReader(raw))
	if _, err := dec.Token(); err != nil {
		return err
	}
	var given []string
	for dec.More() {
		token, err := dec.Token()
		if err != nil {
			return err
		}
		var value json.RawMessage
		if err := dec.Decode(&value); err != nil {
			return err
		}
		name, _ := token.(string)
		at := strings.TrimPrefix(path+"."+name, ".")
		i := slices.Index(known, name)
		switch {
		case i < 0:
			return fault(at, "unknown field; known here: %s", strings.Join(known, ", "))
		case slices.Contains(given, name):
			return fault(at, "given twice; need it once")
		}
		given = append(given, name)
		if err := readValue(at, value, v.Field(i)); err != nil {
			return err
		}
	}
	for _, name := range needed {
		if !slices.Contains(given, name) {
			return fault(strings.TrimPrefix(path+"."+name, "."), "missing; needed here: %s", strings.Join(needed, ", "))
		}
	}
	return nil
}

// readValue reads one value: a quantity or formula, an object, a list, text, or
// true or false.
func readValue(path string, raw json.RawMessage, v reflect.Value) error {
	var text string
	isText := raw[0] == '"' && json.Unmarshal(raw, &text) == nil
	switch q := v.Addr().Interface().(type) {
	case *plating.Hazard: // a list of words
		if raw[0] != '[' {
			return fault(path, "is %s; need a list in square brackets", shown(raw))
		}
		if err := q.UnmarshalJSON(raw); err != nil {
			return fault(path, "%w", err)
		}
		return nil
	case *plating.PH: // a number, with or without quotes
		if !isText {
			text = string(raw)
		}
		if err := q.UnmarshalText([]byte(text)); err != nil {
			return fault(path, "%w", err)
		}
		return nil
	}
	if q, ok := v.Addr().Interface().(encoding.TextUnmarshaler); ok {
		if isText {
			err := q.UnmarshalText([]byte(text))
			var parse *units.ParseError
			if errors.As(err, &parse) && len(parse.Accepted) > 0 {
				return fault(path, "is %q: %s; units: %s", parse.Text, parse.Reason, strings.Join(parse.Accepted, ", "))
			} else if err != nil {
				return fault(path, "%w", err)
			}
			return nil
		}
		if err := q.UnmarshalText(raw); err == nil {
			return fault(path, "is %s without quotes; need \"%s\"", shown(raw), raw)
		} else if list := accepted(err); len(list) > 0 {
			return fault(path, "is %s; need number and unit in quotes, units: %s", shown(raw), strings.Join(list, ", "))
		}
		return fault(path, "is %s; need text in quotes", shown(raw))
	}
	switch v.Kind() {
	case reflect.Struct:
		return readStruct(path, raw, v)
	case reflect.Slice:
		var items []json.RawMessage
		if raw[0] != '[' || json.Unmarshal(raw, &items) != nil {
			return fault(path, "is %s; need a list in square brackets", shown(raw))
		}
		v.Set(reflect.MakeSlice(v.Type(), len(items), len(items)))
		for i, item := range items {
			if err := readValue(fmt.Sprintf("%s[%d]", path, i+1), item, v.Index(i)); err != nil {
				return err
			}
		}
	case reflect.Int:
		if !isText {
			text = string(raw)
		}
		n, err := strconv.Atoi(text)
		if err != nil {
			return fault(path, "is %s; need a whole number", shown(raw))
		}
		v.SetInt(int64(n))
	case reflect.Bool:
		if s := string(raw); s != "true" && s != "false" {
			return fault(path, "is %s; need true or false", shown(raw))
		}
		v.SetBool(raw[0] == 't')
	default:
		if !isText {
			return fault(path, "is %s; need text in quotes", shown(raw))
		}
		v.SetString(text)
	}
	return nil
}

// names lists the json names of a struct, all of them or the needed ones.
func names(t reflect.Type, needed bool) []string {
	var list []string
	for i := range t.NumField() {
		name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		if !needed || options == "" {
			list = append(list, name)
		}
	}
	return list
}

func fault(path, format string, args ...any) error {
	if path == "" {
		return fmt.Errorf(format, args...)
	}
	return fmt.Errorf("%s: "+format, append([]any{units.Clip(path)}, args...)...)
}

// shown puts a value into a message, cut to what a line can hold.
func shown(raw json.RawMessage) string {
	switch {
	case raw[0] == '{':
		return "an object"
	case raw[0] == '[':
		return "a list"
	}
	return units.Clip(string(raw))
}
