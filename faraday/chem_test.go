package faraday_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// chemNear fails unless got is within rel of want.
func chemNear[Q ~float64](t *testing.T, what string, got, want Q, rel float64) {
	t.Helper()
	if diff := math.Abs(float64(got - want)); !(diff <= rel*math.Abs(float64(want))) {
		t.Errorf("%s = %.17g, want %.17g within %g relative; off by %g", what, float64(got), float64(want), rel, diff)
	}
}

// chemTyped fails unless err is one of the typed errors, or nil with a finite result.
func chemTyped(t *testing.T, what string, result float64, err error) {
	t.Helper()
	if err == nil {
		if result-result != 0 {
			t.Errorf("%s = %v without an error", what, result)
		}
		return
	}
	var value *units.ValueError
	var formula *faraday.FormulaError
	var element *faraday.ElementError
	var couple *faraday.CoupleError
	switch {
	case errors.As(err, &value):
		if value.Field == "" || value.Value == "" || value.Need == "" || value.Err == nil {
			t.Errorf("%s: the error leaves something out: %+v", what, value)
		}
	case errors.As(err, &formula), errors.As(err, &element), errors.As(err, &couple):
	default:
		t.Errorf("%s: untyped error %v", what, err)
	}
}

// chemBad are the numbers that every argument gets to see.
var chemBad = []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1, 5e-324, 1e300, -math.MaxFloat64}

// chemSweep calls f with every way to put bad numbers into n arguments.
func chemSweep(n int, f func(v []float64)) {
	v := make([]float64, n)
	var fill func(i int)
	fill = func(i int) {
		if i == n {
			f(v)
			return
		}
		for _, b := range chemBad {
			v[i] = b
			fill(i + 1)
		}
	}
	fill(0)
}

// mustFormula reads a formula that a test takes for sound.
func mustFormula(t testing.TB, text string) faraday.Formula {
	t.Helper()
	f, err := faraday.ParseFormula(text)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// chemRecompute holds a shown calculation against its own formula.
func chemRecompute(t *testing.T, s working.Step, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	got, err := s.Recompute()
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, s.Formula, got, s.Result.SI, 1e-12)
	if s.Source == "" || s.Result.Meaning == "" || s.Result.Value == "" {
		t.Errorf("%s: the step leaves something out: %+v", s.Formula, s)
	}
}

// chemWithin fails unless got is within tol of want.
func chemWithin(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if diff := got - want; !(diff <= tol && -diff <= tol) {
		t.Errorf("%s = %.10g, want %.10g within %g", what, got, want, tol)
	}
}
