package testdata_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// A record takes what a test would report.
type record struct{ lines []string }

func (r *record) Helper() {}
func (r *record) Errorf(format string, args ...any) {
	r.lines = append(r.lines, fmt.Sprintf(format, args...))
}

// TestPropertyWrongCalls: functions that panic, return a figure with an error,
// or NaN and infinity without one are found; sound ones pass.
func TestPropertyWrongCalls(t *testing.T) {
	refuse := errors.New("refused")
	warn := errors.New("a warning")
	beside := func(err error) bool { return errors.Is(err, warn) }
	type pair struct{ A, B float64 }
	positive := func(v float64) bool { return v > 0 && v <= math.MaxFloat64 }
	for _, c := range []struct {
		name  string
		fn    any
		args  []any
		found string // "" for a sound function
	}{
		{"sound", func(p pair) (float64, error) {
			if q := p.A / p.B; positive(p.A) && positive(p.B) && positive(q) {
				return q, nil
			}
			return 0, refuse
		}, []any{pair{1, 2}}, ""},
		{"a figure beside an error", func(p pair) (float64, error) {
			if positive(p.A) && positive(p.B) {
				return 1, nil
			}
			return 1, refuse
		}, []any{pair{1, 2}}, "comes with the error"},
		{"a figure beside a warning", func(a float64) (float64, error) {
			if positive(a) && a < 100 {
				return 1, nil
			}
			return 1, warn
		}, []any{1.0}, ""},
		{"NaN", func(a float64) (float64, error) { return math.Sqrt(a), nil }, []any{1.0}, "without an error"},
		{"infinity of two", func(a, b float64) (float64, error) {
			if positive(a) && positive(b) {
				return a * b, nil
			}
			return 0, refuse
		}, []any{1.0, 2.0}, "without an error"},
		{"a panic", func(n int) ([]float64, error) { return make([]float64, n), nil }, []any{1}, "panic"},
		{"refused as it is", func(a float64) (float64, error) { return 0, refuse }, []any{1.0}, "refused: refused"},
		{"in a slice", func(list []float64) ([]float64, error) { return list, nil }, []any{[]float64{1}}, "without an error"},
	} {
		r := &record{}
		refused := testdata.WrongCalls(r, beside, c.name, c.fn, c.args...)
		all := strings.Join(r.lines, "\n")
		if (c.found == "") != (all == "") || !strings.Contains(all, c.found) {
			t.Errorf("%s: %q, want %q", c.name, all, c.found)
		}
		if c.name == "sound" && refused < 10 {
			t.Errorf("only %d calls refused", refused)
		}
	}
}
