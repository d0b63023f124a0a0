package sense_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// held holds one row of the table against what it promises: the ends in order, what
// lies beyond refused by a typed error that names field and value, what lies inside
// taken, and "not given" neither refused nor questioned.
func held[Q units.Quantity](t *testing.T, l sense.Limit[Q]) {
	t.Helper()
	if !(0 < l.Least && l.Least < l.Low && l.Low < l.High && l.High < l.Most) || l.Field == "" || l.Why == "" || l.Source == "" {
		t.Errorf("%+v", l)
	}
	beyond := func(v Q, out bool) {
		t.Helper()
		err := l.Check(v)
		var value *units.ValueError
		if out != errors.As(err, &value) || out && (value.Field != l.Field || value.Value != v.String()) {
			t.Errorf("%s %v: %v", l.Field, v, err)
		}
	}
	asked := func(v Q, odd bool) {
		t.Helper()
		if odd != l.Unusual(v) || odd != (l.Question(v) != "") {
			t.Errorf("%s %v: %q", l.Field, v, l.Question(v))
		}
	}
	up, down := Q(1+1e-9), Q(1-1e-9)
	for _, c := range []struct {
		v        Q
		out, odd bool
	}{
		{0, false, false}, {l.Least, false, true}, {l.Least * down, true, true}, {l.Low, false, false}, {l.Low * down, false, true},
		{l.High, false, false}, {l.High * up, false, true}, {l.Most, false, true}, {l.Most * up, true, true}, {-l.Low, true, true},
		{Q(math.NaN()), true, true}, {Q(math.Inf(1)), true, true},
	} {
		beyond(c.v, c.out)
		asked(c.v, c.odd)
	}
	if err := l.CheckAs("what the caller calls it", l.Most*2); err == nil || err.Error()[:24] != "what the caller calls it" {
		t.Error(err)
	}
}

// TestPropertyLimits holds every row.
func TestPropertyLimits(t *testing.T) {
	held(t, sense.Content())
	held(t, sense.Volume())
	held(t, sense.Volts())
	held(t, sense.CurrentDensity())
	held(t, sense.Solution())
	held(t, sense.Oven())
	held(t, sense.Coat())
	held(t, sense.Time())
	held(t, sense.Area())
	held(t, sense.Conductivity())
}
