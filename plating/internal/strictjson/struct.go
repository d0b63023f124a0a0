package strictjson

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
	"sync"
	"unicode/utf8"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// Two ways lead from a [Node] to Go values. A [Reader] takes the fields one by one, for files
// whose parts depend on each other. Into, below, fills a struct by its json tags, for types that
// are written by encoding/json and read back: package encoding/json itself takes capitals for
// small letters, the last of two equal names and null for anything, and its errors name Go
// types.

// Into reads one JSON object and nothing behind it into the struct that v points to, by
// the names of its json tags. It refuses what [Struct] refuses. Text may hold any
// characters: whoever takes it checks what may not be printed.
//
// Errors: an [*Error] in plain words, without the names of Go types.
func Into(raw []byte, v any) error {
	f := namesOf(reflect.TypeOf(v).Elem())
	need := "an object in braces with " + strings.Join(f.needed, ", ")
	// Only what cannot be read is looked at a second time: a book of many lines is read fast.
	n, err := read(raw, Doc{What: "object", Need: need, anyText: true})
	if err != nil {
		return plainly(raw, need, err)
	}
	return Struct(n, v)
}

// plainly says of text that cannot be read what its writer has to look for: which character
// is wrong and not which token was expected. What is no fault of the JSON stays as it is.
func plainly(raw []byte, need string, err error) error {
	raw = bytes.TrimPrefix(raw, []byte("\xef\xbb\xbf")) // some editors begin a file so
	switch {
	case len(raw) > maxBytes:
		return err
	case !utf8.Valid(raw):
		return &Error{What: "not UTF-8 text; save the file as UTF-8", Err: err}
	case len(bytes.TrimSpace(raw)) == 0:
		return &Error{What: "empty; need " + need, Err: err}
	}
	line := func(upTo []byte) int { return 1 + bytes.Count(upTo, []byte("\n")) }
	// The whole value at once: only then the decoder tells the place of names and brackets too.
	dec := json.NewDecoder(bytes.NewReader(raw))
	var value json.RawMessage
	var syntax *json.SyntaxError
	switch scan := dec.Decode(&value); {
	case errors.As(scan, &syntax):
		// The offset counts the wrong character in, and may lie behind the end.
		at := min(max(int(syntax.Offset), 1), len(raw)) - 1
		wrong, _ := utf8.DecodeRune(raw[at:])
		return &Error{Line: line(raw[:at]), Err: scan,
			What: fmt.Sprintf("something is wrong before %q; look for a comma, colon or quote missing or too many", wrong)}
	case scan != nil:
		return &Error{Line: line(bytes.TrimSpace(raw)), What: "ends in the middle; a brace, bracket or quote is not closed",
			Err: scan}
	}
	if _, scan := dec.Token(); scan != io.EOF {
		return &Error{What: "more than one value; need one object in braces", Err: scan}
	}
	return err
}

// Struct reads an object into the struct that v points to, field by field by its json tags,
// so that an error names the field, what it holds and what would do. A member that no field
// has is refused with the names that are known; a field whose tag lets no zero be left out
// is needed. Quantities and other types that read text want text in quotes, whole numbers
// and a pH stand with or without.
//
// Errors: an [*Error].
func Struct(n *Node, v any) error { return structOf(n, reflect.ValueOf(v).Elem()) }

// An entry on a command line is a list of names and values and no JSON, but its fields are
// those of the file, so they are read in the same way and refused in the same words.

// Texts returns an object whose members are text that nobody put into quotes, as on a
// command line: true and false may be meant as such.
func Texts(names, values []string) *Node {
	// There is no file, so there are no lines.
	n := &Node{Kind: "object", names: names, used: map[string]bool{}}
	for i, text := range values {
		n.Values = append(n.Values, &Node{Path: join("", names[i]), Kind: "text", Text: text, bare: true})
	}
	return n
}

// fields are the json names of a struct, with the place of each.
type fields struct {
	names  []string
	needed []string
}

// known holds the fields of the types that were read: their tags are taken apart once.
var known sync.Map // of reflect.Type to *fields

// namesOf returns the fields of a struct type.
func namesOf(t reflect.Type) *fields {
	if f, ok := known.Load(t); ok {
		return f.(*fields)
	}
	f := &fields{}
	for i := range t.NumField() {
		// "omitzero" and "omitempty" are what a writer may leave out, and so may a person.
		name, options, _ := strings.Cut(t.Field(i).Tag.Get("json"), ",")
		f.names = append(f.names, name)
		if options == "" {
			f.needed = append(f.needed, name)
		}
	}
	known.Store(t, f)
	return f
}

// Names returns the names by which [Struct] reads a struct type, and those that it needs.
func Names(t reflect.Type) (all, needed []string) {
	f := namesOf(t)
	return slices.Clone(f.names), slices.Clone(f.needed)
}

// structOf reads an object into a struct.
func structOf(n *Node, v reflect.Value) error {
	f := namesOf(v.Type())
	if n.Kind != "object" {
		return n.Fail(nil, "is %s; need an object in braces with %s", shown(n), strings.Join(f.needed, ", "))
	}
	// In the order of the file: of several faults the first one is told.
	for i, name := range n.names {
		at := slices.Index(f.names, name)
		if at < 0 {
			return n.Values[i].Fail(nil, "unknown field; known here: %s", strings.Join(f.names, ", "))
		}
		if err := valueOf(n.Values[i], v.Field(at)); err != nil {
			return err
		}
	}
	// A misspelt name was refused above; only then something is missing.
	for _, name := range f.needed {
		if !slices.Contains(n.names, name) {
			return &Error{Line: n.Line, Path: join(n.Path, name), What: "missing; needed here: " + strings.Join(f.needed, ", ")}
		}
	}
	return nil
}

// valueOf reads one value: of a type that reads text, a struct, a list, a whole number, true
// or false, or plain text.
func valueOf(n *Node, v reflect.Value) error {
	// First the types with rules of their own, then those that read text, then plain kinds.
	switch into := v.Addr().Interface().(type) {
	case *plating.Hazard: // a list of words
		return hazards(n, into)
	case *plating.PH: // a number without a unit
		if n.Kind == "text" || n.Kind == "number" {
			return wrapped(n, into.UnmarshalText([]byte(n.Text)))
		}
		return n.Fail(nil, "is %s; need a number, as 4.4", shown(n))
	case encoding.TextUnmarshaler:
		return quotedText(n, into)
	}
	switch v.Kind() {
	case reflect.Struct:
		return structOf(n, v)
	case reflect.Pointer: // of which null is none: it is refused as a value like others
		v.Set(reflect.New(v.Type().Elem()))
		return valueOf(n, v.Elem())
	case reflect.Slice:
		if n.Kind != "list" {
			return n.Fail(nil, "is %s; need a list in square brackets", shown(n))
		}
		v.Set(reflect.MakeSlice(v.Type(), len(n.Values), len(n.Values)))
		for i, item := range n.Values {
			if err := valueOf(item, v.Index(i)); err != nil {
				return err
			}
		}
	case reflect.Int:
		whole, err := strconv.Atoi(n.Text) // of an object or a list the text is empty
		if err != nil {
			return n.Fail(nil, "is %s; need a whole number", shown(n))
		}
		v.SetInt(int64(whole))
	case reflect.Bool:
		// In a file the text "true" is a slip for true; on a command line there is no other way.
		word := n.bare && (n.Text == "true" || n.Text == "false")
		if n.Kind != "true or false" && !word {
			return n.Fail(nil, "is %s; need true or false", shown(n))
		}
		v.SetBool(n.Yes || word && n.Text == "true")
	default:
		if n.Kind != "text" {
			return n.Fail(nil, "is %s; need text in quotes", shown(n))
		}
		v.SetString(n.Text)
	}
	return nil
}

// quotedText reads text in quotes into a quantity, a formula or a time. Where the quotes are
// missing it says so, and for a quantity which units it may have.
func quotedText(n *Node, into encoding.TextUnmarshaler) error {
	// A number without quotes is tried as well: whether it needs a unit decides what would do.
	err := into.UnmarshalText([]byte(n.Text))
	var parse *units.ParseError
	accepted := ""
	if errors.As(err, &parse) {
		accepted = strings.Join(parse.Accepted, ", ")
	}
	switch {
	case n.Kind == "text" && accepted != "":
		return n.Fail(err, "is %q: %s; units: %s", parse.Text, parse.Reason, accepted)
	case n.Kind == "text":
		return wrapped(n, err)
	case n.Kind == "number" && err == nil:
		return n.Fail(nil, "is %s without quotes; need \"%s\"", shown(n), n.Text)
	case accepted != "":
		return n.Fail(err, "is %s; need number and unit in quotes, units: %s", shown(n), accepted)
	}
	return n.Fail(nil, "is %s; need text in quotes", shown(n))
}

// shown shows a value in a message as [Describe] does, and of true and false which it is.
func shown(n *Node) string {
	if n.Kind == "true or false" {
		return strconv.FormatBool(n.Yes)
	}
	return Describe(n)
}

// wrapped puts the place before an error that says by itself what would do.
func wrapped(n *Node, err error) error {
	if err == nil {
		return nil
	}
	return n.Fail(err, "%v", err)
}

// hazards reads a list of words, each of which names a hazard. What the field held before is
// left in: a struct begins with none.
func hazards(n *Node, into *plating.Hazard) error {
	if n.Kind != "list" {
		return n.Fail(nil, "is %s; need a list in square brackets", shown(n))
	}
	for _, item := range n.Values {
		var h plating.Hazard
		if item.Kind != "text" {
			return item.Fail(nil, "is %s; need text in quotes", shown(item))
		}
		if err := h.UnmarshalText([]byte(item.Text)); err != nil {
			return n.Fail(err, "%v", err)
		}
		*into |= h
	}
	return nil
}
