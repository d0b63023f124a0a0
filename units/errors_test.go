package units_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/units"
)

var nan, inf = math.NaN(), math.Inf(1)

// TestChecks: each check on each sort of bad number, with reason and text.
func TestChecks(t *testing.T) {
	ok := error(nil)
	for _, v := range []struct {
		v                                          float64
		finite, positive, nonNeg, frac, positiveFr error
	}{
		{1, ok, ok, ok, ok, ok},
		{0.35, ok, ok, ok, ok, ok},
		{5e-324, ok, ok, ok, ok, ok},
		{math.MaxFloat64, ok, ok, ok, units.ErrOutOfRange, units.ErrOutOfRange},
		{1.0000000000000002, ok, ok, ok, units.ErrOutOfRange, units.ErrOutOfRange},
		{0, ok, units.ErrNotPositive, ok, ok, units.ErrNotPositive},
		{math.Copysign(0, -1), ok, units.ErrNotPositive, ok, ok, units.ErrNotPositive},
		{-5e-324, ok, units.ErrNotPositive, units.ErrNegative, units.ErrOutOfRange, units.ErrOutOfRange},
		{-1, ok, units.ErrNotPositive, units.ErrNegative, units.ErrOutOfRange, units.ErrOutOfRange},
		{nan, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
		{inf, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
		{-inf, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite, units.ErrNotFinite},
	} {
		q := units.Efficiency(v.v)
		for _, c := range []struct {
			name      string
			got, want error
		}{
			{"Finite", units.Finite("current efficiency", q), v.finite},
			{"Positive", units.Positive("current efficiency", q), v.positive},
			{"NonNegative", units.NonNegative("current efficiency", q), v.nonNeg},
			{"Fraction", units.Fraction("current efficiency", q), v.frac},
			{"PositiveFraction", units.PositiveFraction("current efficiency", q), v.positiveFr},
		} {
			if c.want == nil {
				if c.got != nil {
					t.Errorf("%s(%v): %v", c.name, v.v, c.got)
				}
				continue
			}
			var value *units.ValueError
			if !errors.Is(c.got, c.want) || !errors.As(c.got, &value) {
				t.Errorf("%s(%v): got %v, want %v", c.name, v.v, c.got, c.want)
				continue
			}
			if value.Field != "current efficiency" || value.Value != q.String() || value.Need == "" ||
				!strings.HasPrefix(c.got.Error(), "current efficiency "+q.String()+": ") || !strings.Contains(c.got.Error(),
				"; need ") {
				t.Errorf("%s(%v): %v", c.name, v.v, c.got)
			}
		}
		// Every kind has the same three checks.
		for _, tool := range tools() {
			if !errors.Is(tool.finite("x", v.v), v.finite) || !errors.Is(tool.positive("x", v.v), v.positive) ||
				!errors.Is(tool.nonNeg("x", v.v), v.nonNeg) {
				t.Errorf("%s %v: %v, %v, %v", tool.kind, v.v, tool.finite("x", v.v), tool.positive("x", v.v),
					tool.nonNeg("x", v.v))
			}
		}
	}
}

func TestErrorTexts(t *testing.T) {
	for _, test := range []struct {
		err  error
		want string
	}{
		{units.Positive("area", -2*units.SquareCentimetre), "area -2 cm²: not above zero; need a value above zero"},
		{units.NonNegative("thickness", -3*units.Micrometre), "thickness -3 µm: below zero; need zero or more"},
		{units.Finite("current", units.Current(nan)), "current NaN A: not a finite number; need a finite number"},
		{units.Fraction("mass fraction of gold", units.MassFraction(1.2)),
			"mass fraction of gold 120 %: out of range; need a fraction from 0 to 1"},
		{units.PositiveFraction("efficiency", units.Efficiency(35)),
			"efficiency 3500 %: out of range; need a fraction above 0 and at most 1, such as 0.35 or 35 %"},
		{&units.RangeError{Field: "temperature", Value: "90 °C", Low: "10 °C", High: "70 °C", Source: "SomeKey"},
			"temperature 90 °C: outside the published range 10 °C to 70 °C [SomeKey]"},
		{&units.ParseError{Kind: units.KindLength, Text: "5", Reason: "no unit"}, `length "5": no unit`},
	} {
		if test.err.Error() != test.want {
			t.Errorf("got  %v\nwant %v", test.err, test.want)
		}
	}
	if !errors.Is(&units.RangeError{}, units.ErrOutOfRange) {
		t.Error("a RangeError is not ErrOutOfRange")
	}
}

// TestQuotients: every quotient refuses a divisor that is not above zero, a
// dividend that is not finite, and a result beyond float64.
func TestQuotients(t *testing.T) {
	for name, divide := range map[string]func(a, b float64) (float64, error){
		"area per length": func(a, b float64) (float64, error) {
			v, err := units.Area(a).PerLength(units.Length(b))
			return float64(v), err
		},
		"volume per area": func(a, b float64) (float64, error) {
			v, err := units.Volume(a).PerArea(units.Area(b))
			return float64(v), err
		},
		"volume per length": func(a, b float64) (float64, error) {
			v, err := units.Volume(a).PerLength(units.Length(b))
			return float64(v), err
		},
		"mass per area / density": func(a, b float64) (float64, error) {
			v, err := units.MassPerArea(a).Thickness(units.Density(b))
			return float64(v), err
		},
		"mass per area": func(a, b float64) (float64, error) {
			v, err := units.Mass(a).PerArea(units.Area(b))
			return float64(v), err
		},
		"mass per volume": func(a, b float64) (float64, error) {
			v, err := units.Mass(a).PerVolume(units.Volume(b))
			return float64(v), err
		},
		"mass dissolved": func(a, b float64) (float64, error) {
			v, err := units.Mass(a).DissolvedIn(units.Volume(b))
			return float64(v), err
		},
		"mass / density": func(a, b float64) (float64, error) {
			v, err := units.Mass(a).AtDensity(units.Density(b))
			return float64(v), err
		},
		"current per area": func(a, b float64) (float64, error) {
			v, err := units.Current(a).PerArea(units.Area(b))
			return float64(v), err
		},
		"charge at current": func(a, b float64) (float64, error) {
			v, err := units.Charge(a).At(units.Current(b))
			return float64(v), err
		},
		"charge per time": func(a, b float64) (float64, error) {
			v, err := units.Charge(a).PerTime(units.Duration(b))
			return float64(v), err
		},
		"voltage across": func(a, b float64) (float64, error) {
			v, err := units.Voltage(a).Across(units.Resistance(b))
			return float64(v), err
		},
		"voltage per current": func(a, b float64) (float64, error) {
			v, err := units.Voltage(a).PerCurrent(units.Current(b))
			return float64(v), err
		},
		"energy per time": func(a, b float64) (float64, error) {
			v, err := units.Energy(a).PerTime(units.Duration(b))
			return float64(v), err
		},
	} {
		for _, good := range [][3]float64{{6, 3, 2}, {-6, 3, -2}, {0, 3, 0}} {
			if v, err := divide(good[0], good[1]); v != good[2] || err != nil {
				t.Errorf("%s: %v/%v = %v, %v", name, good[0], good[1], v, err)
			}
		}
		for _, bad := range []struct {
			a, b   float64
			reason error
		}{
			{6, 0, units.ErrNotPositive}, {6, math.Copysign(0, -1), units.ErrNotPositive}, {0, 0, units.ErrNotPositive},
			{6, -3, units.ErrNotPositive},
			{6, nan, units.ErrNotFinite}, {6, inf, units.ErrNotFinite}, {nan, 3, units.ErrNotFinite}, {inf, 3,
				units.ErrNotFinite},
			{-inf, inf, units.ErrNotFinite}, {1e300, 1e-300, units.ErrNotFinite},
		} {
			v, err := divide(bad.a, bad.b)
			var value *units.ValueError
			if v != 0 || !errors.Is(err, bad.reason) || !errors.As(err, &value) || value.Field == "" {
				t.Errorf("%s: %v/%v = %v, %v; want %v", name, bad.a, bad.b, v, err, bad.reason)
			}
		}
	}
}

// TestNoAllocations: a check that passes and a quotient that works cost no memory.
func TestNoAllocations(t *testing.T) {
	area, current, eff := 2*units.SquareDecimetre, 1.4*units.Ampere, units.Efficiency(0.35)
	var failed bool
	for name, f := range map[string]func(){
		"Finite":           func() { failed = failed || units.Finite("area", area) != nil },
		"Positive":         func() { failed = failed || units.Positive("area", area) != nil },
		"NonNegative":      func() { failed = failed || units.NonNegative("area", area) != nil },
		"Fraction":         func() { failed = failed || units.Fraction("efficiency", eff) != nil },
		"PositiveFraction": func() { failed = failed || units.PositiveFraction("efficiency", eff) != nil },
		"PerArea":          func() { _, err := current.PerArea(area); failed = failed || err != nil },
		"Celsius":          func() { failed = failed || units.Celsius(38) == 0 || units.Fahrenheit(100) == 0 },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
	if failed {
		t.Error("a check failed")
	}
}
