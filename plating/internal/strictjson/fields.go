package strictjson

import (
	"encoding"
	"errors"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/units"
)

// A Reader takes the fields of one object and keeps the first error. After
// the last field, [Reader.Done] refuses what nobody asked for.
type Reader struct {
	n       *Node
	err     error
	missing error    // the first member that is not there; a misspelt one tells more
	want    []string // field names asked for so far
}

// On returns a reader that stands on a value of any kind, to read the value
// itself or its items.
func On(n *Node) *Reader { return &Reader{n: n} }

// Object returns a reader of the fields of an object; its first error says so
// when n is none.
func Object(n *Node) *Reader {
	r := On(n)
	if n.Kind != "object" {
		r.err = n.Fail(nil, "is %s; need an object in braces", Describe(n))
	}
	return r
}

// Err returns the first error so far.
func (r *Reader) Err() error {
	if r.err == nil {
		return r.missing
	}
	return r.err
}

// Keep keeps err if it is the first.
func (r *Reader) Keep(err error) {
	if r.err == nil {
		r.err = err
	}
}

// Field returns a member, nil when it is not there.
func (r *Reader) Field(name string) *Node {
	if !slices.Contains(r.want, name) {
		r.want = append(r.want, name)
	}
	return r.Member(name)
}

// Member is [Reader.Field] for a name that was asked for before.
func (r *Reader) Member(name string) *Node {
	for i, have := range r.n.names {
		if have == name {
			r.n.used[name] = true
			return r.n.Values[i]
		}
	}
	return nil
}

// Must is [Reader.Field] for a member that cannot be left out.
func (r *Reader) Must(name, need string) *Node {
	f := r.Field(name)
	if f == nil && r.missing == nil {
		r.missing = r.n.Fail(nil, "field %q is missing; need %s", name, need)
	}
	return f
}

// Lacks notes that a member that was asked for before cannot be left out.
func (r *Reader) Lacks(name, need string) {
	if r.Member(name) == nil && r.missing == nil {
		r.missing = r.n.Fail(nil, "field %q is missing; need %s", name, need)
	}
}

// Text reads a text member; "" when it is not there.
func (r *Reader) Text(name string) string {
	f := r.Field(name)
	if f == nil {
		return ""
	}
	if f.Kind != "text" {
		r.Keep(f.Fail(nil, "is %s; need text in quotes", Describe(f)))
	}
	return f.Text
}

// Quantity reads a member with a unit into v, which is left alone when the
// Member is not there. A number without quotes has no unit and is refused.
func (r *Reader) Quantity(name string, v encoding.TextUnmarshaler) bool {
	return r.Scan(r.Field(name), v, false)
}

// Positive reads a member with a unit that must be above zero when it is there.
// Zero would be taken for "not given" further down, and that is not what a
// file says that gives it.
func Positive[Q units.Quantity, P Pointer[Q]](r *Reader, name string, v P) bool {
	f := r.Field(name)
	if !r.Scan(f, v, false) {
		return false
	}
	if err := units.Positive(name, *v); err != nil {
		r.Keep(f.Fail(err, "is %s; need a value above zero, or leave the field out", Describe(f)))
		return false
	}
	return true
}

// Needed reads a member with a unit that must be there and above zero; need says
// what it is, as `the size, as "12.5 mm"`.
func Needed[Q units.Quantity, P Pointer[Q]](r *Reader, name string, v P, need string) {
	f := r.Must(name, need)
	if !r.Scan(f, v, false) {
		return
	}
	if err := units.Positive(name, *v); err != nil {
		r.Keep(f.Fail(err, "is %s; need a value above zero", Describe(f)))
	}
}

// A Pointer points to a quantity that text can be read into.
type Pointer[Q units.Quantity] interface {
	*Q
	encoding.TextUnmarshaler
}

// Share reads a member above 0 and at most 1 that has no unit: 0.35, "0.35" or
// "35 %".
func Share[Q units.Quantity, P Pointer[Q]](r *Reader, f *Node, v P) bool {
	if !r.Scan(f, v, true) {
		return false
	}
	if err := units.PositiveFraction("share", *v); err != nil {
		r.Keep(f.Fail(err, "is %s; need a fraction above 0 and at most 1, as 0.35 or \"35 %%\"", Describe(f)))
		return false
	}
	return true
}

// Scan reads a value into v. With plain it may be a number, as a share has no
// unit. It reports whether v was read.
func (r *Reader) Scan(f *Node, v encoding.TextUnmarshaler, plain bool) bool {
	if f == nil || r.err != nil {
		return false
	}
	if f.Kind != "text" && f.Kind != "number" {
		need := `a number and a unit in quotes, as "2.5 µm"`
		if plain {
			need = `a number, or text as "35 %"`
		}
		r.Keep(f.Fail(nil, "is %s; need %s", Describe(f), need))
		return false
	}
	err := v.UnmarshalText([]byte(f.Text))
	if f.Kind == "number" && !plain {
		r.Keep(f.Fail(err, "is %s without a unit; need number and unit in quotes%s", Describe(f), accepted(err)))
		return false
	}
	if err != nil {
		r.Keep(f.Fail(err, "%v", err))
		return false
	}
	return true
}

// accepted lists the units that would do, when the error knows them.
func accepted(err error) string {
	var e *units.ParseError
	if !errors.As(err, &e) || len(e.Accepted) == 0 {
		return ""
	}
	return "; accepted: " + strings.Join(e.Accepted, ", ")
}

// Whole reads a whole number from low to high; other when the member is not there.
func (r *Reader) Whole(name string, low, high, other int) int {
	f := r.Field(name)
	if f == nil {
		return other
	}
	v, err := strconv.Atoi(f.Text)
	if f.Kind != "number" || err != nil || v < low || v > high {
		r.Keep(f.Fail(nil, "is %s; need a whole number from %d to %d", Describe(f), low, high))
		return other
	}
	return v
}

// Yes reads true or false; false when the member is not there.
func (r *Reader) Yes(name string) bool {
	f := r.Field(name)
	if f == nil {
		return false
	}
	if f.Kind != "true or false" {
		r.Keep(f.Fail(nil, "is %s; need true or false", Describe(f)))
	}
	return f.Yes
}

// Items returns the items of a list member.
func (r *Reader) Items(name, need string, required bool) []*Node {
	f := r.Field(name)
	if f == nil {
		if required && r.missing == nil {
			r.missing = r.n.Fail(nil, "field %q is missing; need %s", name, need)
		}
		return nil
	}
	return r.ItemsOf(f, need, required)
}

// ItemsOf returns the items of a list; with required it must hold one at least.
func (r *Reader) ItemsOf(f *Node, need string, required bool) []*Node {
	if f.Kind != "list" {
		r.Keep(f.Fail(nil, "is %s; need %s in square brackets", Describe(f), need))
		return nil
	}
	if len(f.Values) == 0 && required {
		r.Keep(f.Fail(nil, "is empty; need %s", need))
	}
	return f.Values
}

// Choice reads one of a few words and returns its index, 0 when it is not there.
func (r *Reader) Choice(name string, words ...string) int {
	f := r.Field(name)
	if f == nil {
		return 0
	}
	for i, w := range words {
		if f.Kind == "text" && f.Text == w {
			return i
		}
	}
	r.Keep(f.Fail(nil, "is %s; need one of %s", Describe(f), strings.Join(words, ", ")))
	return 0
}

// Done refuses members that no one asked for.
func (r *Reader) Done() error {
	if r.err != nil {
		return r.err
	}
	for i, name := range r.n.names {
		if !r.n.used[name] {
			return r.n.Values[i].Fail(nil, "unknown field; known here are %s", strings.Join(r.want, ", "))
		}
	}
	return r.missing
}

// Describe shows a value in a message, cut to a length that a line can hold.
func Describe(f *Node) string {
	switch f.Kind {
	case "text":
		return fmt.Sprintf("%q", units.Clip(f.Text))
	case "number":
		return units.Clip(f.Text)
	case "object":
		return "an object"
	case "list":
		return "a list"
	}
	return units.Clip(f.Kind)
}

// Word reads one of the words of a type; the type's own error lists them.
func Word(r *Reader, f *Node, v encoding.TextUnmarshaler) {
	err := v.UnmarshalText([]byte(f.Text))
	if f.Kind != "text" {
		need := "a word in quotes"
		if v := (*units.ValueError)(nil); errors.As(err, &v) && strings.HasPrefix(v.Need, "one of ") {
			need += ", " + v.Need
		}
		r.Keep(f.Fail(nil, "is %s; need %s", Describe(f), need))
		return
	}
	if err != nil {
		r.Keep(f.Fail(err, "%v", err))
	}
}
