package rinse_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/plating/rinse"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// checked runs compute on every row of a table and holds the result against it.
func checked(t *testing.T, file string, compute func(t *testing.T, row testdata.Row) float64) {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		t.Run(row.Name(), func(t *testing.T) {
			if err := row.Check(compute(t, row)); err != nil {
				t.Error(err)
			}
		})
	}
}

// must returns v or ends the test.
func must[T any](v T, err error) func(t *testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// near compares by relative difference.
func near[Q ~float64](t *testing.T, what string, got, want Q, tol float64) {
	t.Helper()
	if !(math.Abs(float64(got-want)) <= tol*math.Abs(float64(want))) {
		t.Errorf("%s: got %.17g, want %.17g within %g relative", what, float64(got), float64(want), tol)
	}
}

// recompute holds every step against its own formula.
func recompute(t *testing.T, steps []working.Step, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if len(steps) == 0 {
		t.Fatal("no step")
	}
	for _, s := range steps {
		got, err := s.Recompute()
		if err != nil {
			t.Error(err)
			continue
		}
		near(t, s.Formula, got, s.Result.SI, 1e-12)
		if s.Source == "" || s.Result.Value == "" || s.Result.Meaning == "" {
			t.Errorf("%s: source, value or meaning is missing", s.Formula)
		}
	}
}

// refused checks that an error is a complete ValueError and wraps the reason.
func refused(t *testing.T, what string, err, reason error) {
	t.Helper()
	var e *units.ValueError
	if !errors.As(err, &e) || e.Field == "" || e.Value == "" || e.Need == "" {
		t.Errorf("%s: %T %v is no complete ValueError", what, err, err)
		return
	}
	if reason != nil && !errors.Is(err, reason) {
		t.Errorf("%s: %v, want one that is %q", what, err, reason)
	}
}

const (
	litre = units.Litre
	mL    = units.Millilitre
	gL    = units.GramPerLitre
	lh    = rinse.LitrePerHour
)

var bads = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1}
