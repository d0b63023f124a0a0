package strictjson

import (
	"encoding"
	"errors"
	"fmt"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/units"
)

// Decode reads an object into the struct that v points to, by the tags of its
// fields. A member that no field names is refused with the known ones; the first
// error in the order of the fields is returned, with line and path.
func Decode(n *Node, v any) error {
	if d, ok := v.(NodeDecoder); ok {
		return d.DecodeNode(n)
	}
	return decodeFields(n, reflect.ValueOf(v).Elem())
}

// DecodeFields is [Decode] for a value that decodes itself and wants the fields of
// its struct: its own DecodeNode is not asked. The names of more stand beside them and
// are left for the caller.
func DecodeFields(n *Node, v any, more ...string) error {
	return decodeFields(n, reflect.ValueOf(v).Elem(), more...)
}

// DecodeOne reads a value that is not an object into the only field of a struct, by its
// tags.
func DecodeOne(n *Node, v any) error {
	s := reflect.ValueOf(v).Elem()
	f := &fieldsOf(s.Type())[0]
	return f.decode(n, s.FieldByIndex(f.index))
}

func decodeFields(n *Node, v reflect.Value, more ...string) error {
	if n.Kind != "object" {
		return n.Fail(nil, "is %s; need an object in braces", Describe(n))
	}
	list := fieldsOf(v.Type())
	// The fields lead, not the members: of several mistakes the one that stands first in the
	// struct is told, whatever the order in the file. Members are only counted here; when the
	// count is short, one of them has a name that no field knows.
	found := 0
	var missing error
	for i := range list {
		f := &list[i]
		m := n.member(f.name)
		// A field whose condition does not hold is passed over, even when the member is there: it
		// is then counted as unknown and refused below with the names that do fit.
		if m == nil && !f.must || f.when != "" && !f.met(n, list) {
			continue
		}
		if m != nil {
			found++
			if err := f.decode(m, v.FieldByIndex(f.index)); err != nil {
				return err
			}
		} else if missing == nil {
			need := f.need
			if f.is != "" {
				need = strconv.Quote(f.is)
			}
			e := n.Fail(nil, "field %q is missing; need %s", f.name, need)
			e.Missing, missing = f.name, e
		}
	}
	// What is misspelt is told before what is missing: it is mostly the same.
	if found < len(n.names) {
		if err := n.unknown(list, more); err != nil {
			return err
		}
	}
	return missing
}

// unknown refuses a member that no field names; more are known beside the fields.
func (n *Node) unknown(list []field, more []string) error {
	names := slices.Clone(more)
	for i := range list {
		if list[i].met(n, list) {
			names = append(names, list[i].name)
		}
	}
	for i, name := range n.names {
		if !slices.Contains(names, name) {
			return n.Values[i].Fail(nil, "unknown field; known here are %s", strings.Join(names, ", "))
		}
	}
	return nil
}

// decode reads one value.
func (f *field) decode(n *Node, v reflect.Value) error {
	// The type decides before its kind does. A value with several forms reads itself; money is
	// read exactly; everything that reads text - quantities, words, formulas, times - goes by
	// its own UnmarshalText, and only a plain Go type goes by its kind below.
	switch into := v.Addr().Interface().(type) {
	case NodeDecoder:
		if err := into.DecodeNode(n); err != nil {
			return err
		}
		return f.limits(n, v)
	case *decimal.Decimal:
		return f.decimal(n, into)
	case encoding.TextUnmarshaler:
		switch {
		case f.rule == "flags":
			return f.flags(n, v)
		// Quantities are floats. Whatever else reads text is a word of a closed list or a formula.
		case v.Kind() != reflect.Float64:
			return f.word(n, into)
		}
		if err := f.scan(n, into); err != nil {
			return err
		}
		return f.limits(n, v)
	}
	switch v.Kind() {
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
		return f.decode(n, v.Elem())
	case reflect.Struct:
		return decodeFields(n, v)
	case reflect.String:
		v.SetString(n.Text)
		return f.string(n)
	case reflect.Bool:
		// On a command line everything is text, and true is meant as such.
		word := n.bare && (n.Text == "true" || n.Text == "false")
		if n.Kind != "true or false" && !word {
			return n.Fail(nil, "is %s; need true or false", Describe(n))
		}
		v.SetBool(n.Yes || word && n.Text == "true")
	case reflect.Int:
		i, err := strconv.Atoi(n.Text)
		if n.Kind != "number" && !n.bare || err != nil || f.outside(float64(i)) {
			return n.Fail(err, "is %s; need a whole number%s", Describe(n), f.span())
		}
		v.SetInt(int64(i))
	case reflect.Float64:
		x, err := strconv.ParseFloat(n.Text, 64)
		if n.Kind != "number" || err != nil || f.outside(x) {
			return n.Fail(units.ErrOutOfRange, "is %s; need %s%s", Describe(n), or(f.need, "a number"), f.span())
		}
		v.SetFloat(x)
	case reflect.Slice:
		if n.Kind != "list" || f.rule == "filled" && len(n.Values) == 0 {
			return f.noList(n)
		}
		if len(n.Values) == 0 { // the same as left out
			return nil
		}
		v.Set(reflect.MakeSlice(v.Type(), len(n.Values), len(n.Values)))
		return f.items(n, v)
	case reflect.Array:
		if n.Kind != "list" {
			return f.noList(n)
		}
		if len(n.Values) != v.Len() {
			return n.Fail(nil, "has %d items; need %s, %s", len(n.Values), [...]string{2: "two", 3: "three"}[v.Len()], f.need)
		}
		return f.items(n, v)
	default:
		return n.Fail(nil, "cannot be read into a %s", v.Type())
	}
	return nil
}

// string checks text that is meant as such.
func (f *field) string(n *Node) error {
	switch {
	case f.is != "" && (n.Kind != "text" || n.Text != f.is):
		return n.Fail(nil, "is %s; need %q", Describe(n), f.is)
	case f.words != nil && (n.Kind != "text" || !slices.Contains(f.words, n.Text)):
		return n.Fail(nil, "is %s; need one of %s", Describe(n), strings.Join(f.words, ", "))
	case n.Kind != "text":
		return n.Fail(nil, "is %s; need %s", Describe(n), or(f.need, "text in quotes"))
	case f.must && strings.TrimSpace(n.Text) == "":
		return n.Fail(nil, "is empty; need %s", or(f.need, strconv.Quote(f.is)))
	}
	return nil
}

// items reads the items of a list into a slice or an array.
func (f *field) items(n *Node, v reflect.Value) error {
	for i, item := range n.Values {
		if err := f.decode(item, v.Index(i)); err != nil {
			return err
		}
	}
	return nil
}

func (f *field) noList(n *Node) error {
	if n.Kind == "list" {
		return n.Fail(nil, "is empty; need %s", or(f.need, "a list"))
	}
	return n.Fail(nil, "is %s; need %s in square brackets", Describe(n), or(f.need, "a list"))
}

// outside reports whether a number lies outside the rule of its field.
func (f *field) outside(x float64) bool {
	return f.low <= f.high && !(x >= float64(f.low) && x <= float64(f.high))
}

func (f *field) span() string {
	if f.low > f.high {
		return ""
	}
	return fmt.Sprintf(" from %d to %d", f.low, f.high)
}

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// scan reads a quantity: a number and a unit in quotes; a share may be a number.
func (f *field) scan(n *Node, v encoding.TextUnmarshaler) error {
	if n.Kind != "text" && n.Kind != "number" {
		need := `a number and a unit in quotes, as "2.5 µm"`
		if f.plain {
			need = `a number, or text as "35 %"`
		}
		return n.Fail(nil, "is %s; need %s", Describe(n), need)
	}
	err := v.UnmarshalText([]byte(n.Text))
	switch {
	// A number without a unit is refused even where the type would take it. The error of the
	// type is still asked, for the units that would do.
	case n.Kind == "number" && !f.plain:
		accepted := ""
		var e *units.ParseError
		if errors.As(err, &e) && len(e.Accepted) > 0 {
			accepted = "; accepted: " + strings.Join(e.Accepted, ", ")
		}
		return n.Fail(err, "is %s without a unit; need number and unit in quotes%s", Describe(n), accepted)
	case err != nil:
		return n.Fail(err, "%v", err)
	}
	return nil
}

// listOf is what a type says of its words, "" for one that has no list of them.
func listOf(v encoding.TextUnmarshaler) string {
	var e *units.ValueError
	// No word is empty, so the empty text brings out the error that lists them all.
	if errors.As(v.UnmarshalText(nil), &e) && strings.HasPrefix(e.Need, "one of ") {
		return ", " + e.Need
	}
	return ""
}

// word reads one of the words of a type, a formula or a time; the type's own error says
// what would do.
func (f *field) word(n *Node, v encoding.TextUnmarshaler) error {
	if n.Kind != "text" {
		return n.Fail(nil, "is %s; need %s%s", Describe(n), or(f.need, "a word in quotes"), listOf(v))
	}
	if err := v.UnmarshalText([]byte(n.Text)); err != nil {
		return n.Fail(err, "%v", err)
	}
	return nil
}

// limits holds a quantity against the rule of its field. An efficiency is a share,
// whatever holds it.
func (f *field) limits(n *Node, v reflect.Value) error {
	if v.Kind() != reflect.Float64 {
		return nil
	}
	leave := ", or leave the field out"
	if f.must {
		leave = ""
	}
	q, rule := units.Ratio(v.Float()), f.rule
	// A range of any quantity has one rule for its ends. Of an efficiency that rule is too weak:
	// 35 for 35 % would pass it.
	if rule == "positive" && v.Type() == reflect.TypeFor[units.Efficiency]() {
		rule = "share"
	}
	switch rule {
	case "positive":
		if err := units.Positive(f.name, q); err != nil {
			return n.Fail(err, "is %s; need a value above zero%s", Describe(n), leave)
		}
	case "nonnegative":
		if err := units.NonNegative(f.name, q); err != nil {
			return n.Fail(err, "is %s; need zero or more", Describe(n))
		}
	case "share":
		if err := units.PositiveFraction(f.name, q); err != nil {
			return n.Fail(err, "is %s; need a fraction above 0 and at most 1, as 0.35 or \"35 %%\"", Describe(n))
		}
	}
	return nil
}

// flags reads a list of words into the bits of a number.
func (f *field) flags(n *Node, v reflect.Value) error {
	if n.Kind != "list" {
		return n.Fail(nil, "is %s; need words in square brackets", Describe(n))
	}
	for _, item := range n.Values {
		one := reflect.New(v.Type())
		if err := f.word(item, one.Interface().(encoding.TextUnmarshaler)); err != nil {
			return err
		}
		// Each word is one bit. A word given twice does no harm.
		v.SetUint(v.Uint() | one.Elem().Uint())
	}
	return nil
}

// decimal reads money, or a share of it, exactly: it stands in quotes. Of a length that
// it is written in again, without an exponent.
func (f *field) decimal(n *Node, v *decimal.Decimal) error {
	const longest = 32
	text, shift, least, need := n.Text, int32(0), int32(-9), `an amount of 0 or more in quotes, as "98.50"`
	if f.rule == "percent" {
		need = `a share of 0 or more in quotes, as "35 %" or "0.35"`
		if t, percent := strings.CutSuffix(text, "%"); percent {
			text, shift = strings.TrimSpace(t), -2
		} else {
			least = -11 // as a share in percent is written
		}
	}
	// The bounds on exponent and length are for text from outside: 1e999999999 is short to write
	// and long to print.
	d, err := decimal.NewFromString(text)
	if n.Kind != "text" || err != nil || len(n.Text) > longest || d.IsNegative() || d.Exponent() > 9 ||
		d.Exponent() < least || len(d.Shift(shift).String()) > longest {
		return n.Fail(err, "is %s; need %s", Describe(n), need)
	}
	*v = d.Shift(shift)
	return nil
}

// At returns the value of a path below n, as "layers[1].bath", and the nearest value
// above it where the file does not give it; rest is what of the path is left then.
func (n *Node) At(path string) (at *Node, rest string) {
	at = n
	// The path is taken step by step: a name up to the next point or bracket, or an index in
	// brackets. It ends at the deepest value that the file has, so that an error about something
	// missing still gets the line of the object that lacks it.
	for path != "" {
		name, tail := path, ""
		if i := strings.IndexAny(path, ".["); i > 0 {
			name, tail = path[:i], path[i:]
		} else if i == 0 {
			end := strings.IndexByte(path, ']')
			if k, err := strconv.Atoi(path[1:max(end, 1)]); err == nil && k >= 1 && at.Kind == "list" && k <= len(at.Values) {
				at, path = at.Values[k-1], strings.TrimPrefix(path[end+1:], ".")
				continue
			}
			return at, path
		}
		next := at.member(name)
		if next == nil {
			return at, path
		}
		at, path = next, strings.TrimPrefix(tail, ".")
	}
	return at, ""
}

// member returns a member of an object, nil when it is not there.
func (n *Node) member(name string) *Node {
	if i := slices.Index(n.names, name); i >= 0 {
		return n.Values[i]
	}
	return nil
}

// A Placed is an error about one field of a value. Who knows where the value stands in a
// file puts it there with [Node.Place].
type Placed struct {
	Path string // below the value, as efficiency.low
	Err  error
}

// Error returns the reason alone: it names what it is about.
func (p *Placed) Error() string { return p.Err.Error() }

// Unwrap returns the reason.
func (p *Placed) Unwrap() error { return p.Err }

// Put returns err with the field that it is about; nil for nil.
func Put(path string, err error) error {
	if err == nil {
		return nil
	}
	return &Placed{path, err}
}

// Place returns err at the place of a path below n. What is missing there is told
// by the object that lacks it.
func (n *Node) Place(path string, err error) *Error {
	at, rest := n.At(path)
	what := err.Error()
	// What the file does not have cannot be in the path. The message names it in front, unless
	// it does so already.
	if rest != "" && !strings.Contains(what, strconv.Quote(rest)) {
		what = fmt.Sprintf("%s: %s", strings.TrimPrefix(rest, "."), what)
	}
	return &Error{Line: at.Line, Path: at.Path, What: what, Err: err}
}
