package strictjson

import (
	"fmt"
	"reflect"
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
	return decodeFields(Object(n), reflect.ValueOf(v).Elem())
}

// DecodeFields is [Decode] for a value that decodes itself and wants the fields of
// its struct: its own DecodeNode is not asked. The names of more stand beside them and
// are left for the caller.
func DecodeFields(n *Node, v any, more ...string) error {
	r := Object(n)
	for _, name := range more {
		r.Field(name)
	}
	return decodeFields(r, reflect.ValueOf(v).Elem())
}

func decodeFields(r *Reader, v reflect.Value) error {
	for _, f := range fieldsOf(v.Type()) {
		n := r.Field(f.name)
		switch {
		case n != nil:
			f.decode(r, n, v.FieldByIndex(f.index))
		case f.is != "":
			r.Must(f.name, strconv.Quote(f.is))
		case f.must:
			r.Must(f.name, f.need)
		}
	}
	return r.Done()
}

// decode reads one value and keeps the first error in r.
func (f *field) decode(r *Reader, n *Node, v reflect.Value) {
	if r.err != nil {
		return
	}
	if d, ok := v.Addr().Interface().(NodeDecoder); ok {
		r.keepErr(d.DecodeNode(n))
		f.limits(r, n, v)
		return
	}
	if d, ok := v.Addr().Interface().(*decimal.Decimal); ok {
		f.decimal(r, n, d)
		return
	}
	if v.Kind() == reflect.Pointer {
		v.Set(reflect.New(v.Type().Elem()))
		f.decode(r, n, v.Elem())
		return
	}
	if u, ok := textOf(v); ok {
		switch {
		case f.rule == "flags":
			f.flags(r, n, v)
		case v.Kind() == reflect.Float64:
			if r.Scan(n, u, takesPlain(v.Type())) {
				f.limits(r, n, v)
			}
		default:
			if n.Kind != "text" && f.need != "" {
				r.Keep(n.Fail(nil, "is %s; need %s", Describe(n), f.need))
			}
			Word(r, n, u)
		}
		return
	}
	switch v.Kind() {
	case reflect.String:
		if v.SetString(n.Text); f.is != "" && (n.Kind != "text" || n.Text != f.is) {
			r.Keep(n.Fail(nil, "is %s; need %q", Describe(n), f.is))
		} else if n.Kind != "text" {
			r.Keep(n.Fail(nil, "is %s; need %s", Describe(n), or(f.need, "text in quotes")))
		} else if f.must && strings.TrimSpace(n.Text) == "" {
			r.Keep(n.Fail(nil, "is empty; need %s", f.need))
		}
	case reflect.Bool:
		if n.Kind != "true or false" {
			r.Keep(n.Fail(nil, "is %s; need true or false", Describe(n)))
		}
		v.SetBool(n.Yes)
	case reflect.Int:
		i, err := strconv.Atoi(n.Text)
		if n.Kind != "number" || err != nil || i < f.low || i > f.high {
			r.Keep(n.Fail(err, "is %s; need a whole number from %d to %d", Describe(n), f.low, f.high))
		}
		v.SetInt(int64(i))
	case reflect.Slice:
		items := r.ItemsOf(n, or(f.need, "a list"), f.rule == "filled")
		for _, item := range items {
			one := reflect.New(v.Type().Elem()).Elem()
			f.decode(r, item, one)
			v.Set(reflect.Append(v, one))
		}
		if items != nil && v.IsNil() {
			v.Set(reflect.MakeSlice(v.Type(), 0, 0))
		}
	case reflect.Struct:
		r.keepErr(decodeFields(Object(n), v))
	default:
		r.Keep(n.Fail(nil, "cannot be read into a %s", v.Type()))
	}
}

func (r *Reader) keepErr(err error) {
	if err != nil {
		r.Keep(err)
	}
}

func or(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

// limits holds a quantity against the rule of its field. An efficiency is a share,
// whatever holds it.
func (f *field) limits(r *Reader, n *Node, v reflect.Value) {
	if v.Kind() != reflect.Float64 || r.err != nil {
		return
	}
	leave := ", or leave the field out"
	if f.must {
		leave = ""
	}
	q, rule := units.Ratio(v.Float()), f.rule
	if rule == "positive" && v.Type() == reflect.TypeFor[units.Efficiency]() {
		rule = "share"
	}
	switch rule {
	case "positive":
		if err := units.Positive(f.name, q); err != nil {
			r.Keep(n.Fail(err, "is %s; need a value above zero%s", Describe(n), leave))
		}
	case "nonnegative":
		if err := units.NonNegative(f.name, q); err != nil {
			r.Keep(n.Fail(err, "is %s; need zero or more", Describe(n)))
		}
	case "share":
		if err := units.PositiveFraction(f.name, q); err != nil {
			r.Keep(n.Fail(err, "is %s; need a fraction above 0 and at most 1, as 0.35 or \"35 %%\"", Describe(n)))
		}
	}
}

// flags reads a list of words into the bits of a number.
func (f *field) flags(r *Reader, n *Node, v reflect.Value) {
	for _, item := range r.ItemsOf(n, "words", false) {
		one := reflect.New(v.Type()).Elem()
		u, _ := textOf(one)
		Word(r, item, u)
		v.SetUint(v.Uint() | one.Uint())
	}
}

// decimal reads money, or a share of it, exactly: it stands in quotes. Of a length that
// it is written in again, without an exponent.
func (f *field) decimal(r *Reader, n *Node, v *decimal.Decimal) {
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
	d, err := decimal.NewFromString(text)
	if n.Kind != "text" || err != nil || len(n.Text) > longest || d.IsNegative() || d.Exponent() > 9 || d.Exponent() < least ||
		len(d.Shift(shift).String()) > longest {
		r.Keep(n.Fail(err, "is %s; need %s", Describe(n), need))
		return
	}
	*v = d.Shift(shift)
}

// At returns the value of a path below n, as "layers[1].bath", and the nearest value
// above it where the file does not give it; rest is what of the path is left then.
func (n *Node) At(path string) (at *Node, rest string) {
	at = n
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
		next := On(at).peek(name)
		if next == nil {
			return at, path
		}
		at, path = next, strings.TrimPrefix(tail, ".")
	}
	return at, ""
}

// peek returns a member without counting it as asked for.
func (r *Reader) peek(name string) *Node {
	for i, have := range r.n.names {
		if have == name {
			return r.n.Values[i]
		}
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
	if rest != "" && !strings.Contains(what, strconv.Quote(rest)) {
		what = fmt.Sprintf("%s: %s", strings.TrimPrefix(rest, "."), what)
	}
	return &Error{Line: at.Line, Path: at.Path, What: what, Err: err}
}

// DecodeOne reads a value that is not an object into the only field of a struct, by its
// tags.
func DecodeOne(n *Node, v any) error {
	s := reflect.ValueOf(v).Elem()
	f := fieldsOf(s.Type())[0]
	r := On(n)
	f.decode(r, n, s.FieldByIndex(f.index))
	return r.Err()
}
