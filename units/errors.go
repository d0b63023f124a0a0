package units

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// Reasons, for [errors.Is]. The typed errors below wrap one of them.
var (
	ErrNotFinite    = errors.New("not a finite number")    // NaN or an infinity
	ErrNotPositive  = errors.New("not above zero")         // zero or negative where that makes no sense
	ErrNegative     = errors.New("below zero")             // negative where zero is the least
	ErrOutOfRange   = errors.New("out of range")           // outside what the field can mean
	ErrSyntax       = errors.New("not understood")         // text that is not of the form that is read
	ErrUnknownUnit  = errors.New("unknown unit")           // a unit that nothing here knows
	ErrWrongKind    = errors.New("unit of another kind")   // a known unit of another kind of quantity
	ErrInconsistent = errors.New("values that contradict") // fields that do not fit each other
	ErrNotGiven     = errors.New("not given")              // nil where a value is needed
)

// A ValueError reports a value that a formula cannot take: which field, what
// it held, and what would do.
type ValueError struct {
	Field string // the argument or field, in words
	Value string // what it held, with unit
	Need  string // what would do
	Err   error  // the reason: one of the sentinels of this package
}

// What an error shows at most of its parts: they may hold a name from outside, and
// a list of what would do is long.
const (
	fieldClipped = 200
	parseClipped = 60 // of [ParseError.Text]
	needClipped  = 1000
)

// Error returns field, value, reason and remedy in one line.
func (e *ValueError) Error() string {
	return Printable(fmt.Sprintf("%s %s: %v; need %s", clipTo(e.Field, fieldClipped), clipTo(e.Value, fieldClipped),
		e.Err, clipTo(e.Need, needClipped)))
}

// Unwrap returns the reason.
func (e *ValueError) Unwrap() error { return e.Err }

// A RangeError reports a value outside the range that a formula or a table was
// published for. It comes together with the result, so that the caller may decide.
type RangeError struct {
	Field     string // the argument, in words
	Value     string // what it held, with unit
	Low, High string // the published range, both ends included
	Source    string // key of the publication
}

// Error returns field, value and range in one line.
func (e *RangeError) Error() string {
	return Printable(fmt.Sprintf("%s %s: outside the published range %s to %s [%s]", clipTo(e.Field, fieldClipped),
		clipTo(e.Value, fieldClipped), Clip(e.Low), Clip(e.High), Clip(e.Source)))
}

// Unwrap returns [ErrOutOfRange].
func (e *RangeError) Unwrap() error { return ErrOutOfRange }

// A ParseError reports text that is not a quantity of the wanted kind.
type ParseError struct {
	Kind     QuantityKind // what was wanted
	Text     string       // what was read, cut to 60 characters
	Reason   string       // what is wrong with it
	Accepted []string     // the units that would do
	Err      error        // ErrSyntax, ErrUnknownUnit, ErrWrongKind or ErrOutOfRange
}

// Error returns kind, text, reason and the accepted units in one line.
func (e *ParseError) Error() string {
	s := fmt.Sprintf("%s %q: %s", e.Kind, clipTo(e.Text, fieldClipped), clipTo(e.Reason, fieldClipped))
	if len(e.Accepted) > 0 {
		s += "; accepted: " + strings.Join(e.Accepted, ", ")
	}
	return Printable(s)
}

// Unwrap returns the reason as a sentinel.
func (e *ParseError) Unwrap() error { return e.Err }

// A Quantity is any type of this package: a float64 in its SI unit that can
// print itself with its unit.
type Quantity interface {
	~float64
	String() string
}

// unmarshal reads text into v with the function that reads its kind.
func unmarshal[Q Quantity](v *Q, text []byte, parse func(string) (Q, error)) error {
	if v == nil {
		return Missing("quantity to read into", "a pointer to one")
	}
	got, err := parse(string(text))
	if err == nil {
		*v = got
	}
	return err
}

// Finite returns a [*ValueError] for field when v is NaN or infinite.
func Finite[Q Quantity](field string, v Q) error {
	if v-v == 0 {
		return nil
	}
	return notFinite(field, v.String())
}

// Positive returns a [*ValueError] for field when v is not a finite number above zero.
func Positive[Q Quantity](field string, v Q) error {
	if v > 0 && v <= math.MaxFloat64 {
		return nil
	}
	return notPositive(field, v.String(), float64(v))
}

// NonNegative returns a [*ValueError] for field when v is not a finite number of zero or more.
func NonNegative[Q Quantity](field string, v Q) error {
	if v >= 0 && v <= math.MaxFloat64 {
		return nil
	}
	return negative(field, v.String(), float64(v))
}

// Fraction returns a [*ValueError] for field when v is not from 0 to 1, both included.
func Fraction[Q Quantity](field string, v Q) error {
	if v >= 0 && v <= 1 {
		return nil
	}
	return notFraction(field, v.String(), float64(v), "a fraction from 0 to 1")
}

// PositiveFraction returns a [*ValueError] for field when v is not above 0 and at most 1.
func PositiveFraction[Q Quantity](field string, v Q) error {
	if v > 0 && v <= 1 {
		return nil
	}
	return notFraction(field, v.String(), float64(v), "a fraction above 0 and at most 1, such as 0.35 or 35 %")
}

// Missing returns a [*ValueError] for an argument that is nil; need says what it
// is for.
func Missing(field, need string) error {
	return &ValueError{Field: field, Value: "nil", Need: need, Err: ErrNotGiven}
}

func notFinite(field, value string) error {
	return &ValueError{Field: field, Value: value, Need: "a finite number", Err: ErrNotFinite}
}

func notPositive(field, value string, v float64) error {
	if v-v != 0 {
		return notFinite(field, value)
	}
	return &ValueError{Field: field, Value: value, Need: "a value above zero", Err: ErrNotPositive}
}

func negative(field, value string, v float64) error {
	if v-v != 0 {
		return notFinite(field, value)
	}
	return &ValueError{Field: field, Value: value, Need: "zero or more", Err: ErrNegative}
}

func notFraction(field, value string, v float64, need string) error {
	switch {
	case v-v != 0:
		return notFinite(field, value)
	case v == 0:
		return &ValueError{Field: field, Value: value, Need: need, Err: ErrNotPositive}
	}
	return &ValueError{Field: field, Value: value, Need: need, Err: ErrOutOfRange}
}

// quotient divides and refuses what would give NaN or an infinity.
func quotient[R, N, D Quantity](numName string, num N, denName string, den D) (R, error) {
	if err := Finite(numName, num); err != nil {
		return 0, err
	}
	if err := Positive(denName, den); err != nil {
		return 0, err
	}
	r := R(float64(num) / float64(den))
	if r-r != 0 { // beyond float64
		return 0, Finite(numName+" over "+denName, r)
	}
	return r, nil
}

// A FileError reports what is wrong with a file that people write, and where.
type FileError struct {
	File string // what the file is: "job file"; "" for any
	Line int    // counted from 1; 0 when the file as a whole is meant
	Path string // the field, as layers[1].bath.efficiency; "" for the whole
	What string // what is wrong and what would do
	Err  error  // the reason below, if any

	Missing string // the member of Path that is not there, if that is the fault
}

// longestPath is that of a field of a real file, with room: a longer one is clipped.
const longestPath = 200

// Error returns file, line, field and reason in one line: "bath file line 6, baths[1].key:
// is 7; need text in quotes".
func (e *FileError) Error() string {
	s := e.File
	if s == "" {
		s = "file"
	}
	if e.Line > 0 {
		s += " line " + strconv.Itoa(e.Line)
	}
	if path := e.Path; path != "" {
		if len(path) > longestPath {
			path = Clip(path)
		}
		s += ", " + path
	}
	return Printable(s + ": " + e.What)
}

// Unwrap returns the reason below: a [*ParseError], a [*ValueError] ...
func (e *FileError) Unwrap() error { return e.Err }

// InFile says in which file an error is, where it does not say so itself.
func InFile(file string, err error) error {
	var e *FileError
	if errors.As(err, &e) && e.File == "" {
		named := *e
		named.File = file
		return &named
	}
	return err
}
