package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"io"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/laydown/units"
)

func TestString(t *testing.T) {
	for _, test := range []struct {
		got, want string
	}{
		{units.Length(0).String(), "0 µm"},
		{units.Length(math.Copysign(0, -1)).String(), "0 µm"},
		{(25 * units.Microinch).String(), "0.635 µm"},
		{(999 * units.Micrometre).String(), "999 µm"},
		{units.Millimetre.String(), "1 mm"},
		{(-2 * units.Millimetre).String(), "-2 mm"},
		{(12345678 * units.Metre).String(), "1.23457e+07 m"},
		{(1 * units.SquareMillimetre).String(), "0.01 cm²"},
		{(2 * units.SquareMetre).String(), "2 m²"},
		{(20 * units.Millilitre).String(), "20 mL"},
		{(5 * units.Litre).String(), "5 L"},
		{(0.2 * units.Milligram).String(), "0.2 mg"},
		{units.TroyOunce.String(), "31.1035 g"},
		{(3 * units.Kilogram).String(), "3 kg"},
		{(19.3 * units.GramPerCubicCentimetre).String(), "19.3 g/cm³"},
		{(units.MassPerArea(0.0483)).String(), "4.83 mg/cm²"},
		{units.OuncePerUSGallon.String(), "7.48915 g/L"},
		{(0.25 * units.GramPerLitre).String(), "250 mg/L"},
		{(0.25 * units.Mole).String(), "250 mmol"},
		{(196.96657 * units.GramPerMole).String(), "196.967 g/mol"},
		{(0.15 * units.MolePerLitre).String(), "0.15 mol/L"},
		{(1.4 * units.Ampere).String(), "1.4 A"},
		{(0.02 * units.Ampere).String(), "20 mA"},
		{units.AmperePerSquareFoot.String(), "0.107639 A/dm²"},
		{units.Charge(30).String(), "30 A·s"},
		{units.Charge(720).String(), "12 A·min"},
		{units.Charge(7200).String(), "2 A·h"},
		{(7.349 * units.GramPerAmpereHour).String(), "7.349 g/(A·h)"},
		{(-1.5 * units.Volt).String(), "-1.5 V"},
		{(80 * units.Milliohm).String(), "80 mΩ"},
		{(5 * units.OhmSquareCentimetre).String(), "5 Ω·cm²"},
		{(120 * units.MillisiemensPerCentimetre).String(), "12 S/m"},
		{(15 * units.Watt).String(), "15 W"},
		{(0.4 * units.KilowattHour).String(), "400 W·h"},
		{units.Celsius(38).String(), "38 °C"},
		{units.Temperature(0).String(), "-273.15 °C"},
		{(5 * units.Kelvin).String(), "5 K"},
		{units.Atmosphere.String(), "101.325 kPa"},
		{(0.1 * units.MicrometrePerMinute).String(), "0.1 µm/min"},
		{units.Diffusivity(1e-9).String(), "1e-09 m²/s"},
		{units.Efficiency(0.35).String(), "35 %"},
		{units.MassFraction(0.75).String(), "75 %"},
		{units.MoleFraction(0.5).String(), "50 %"},
		{units.Ratio(0.6).String(), "0.6"},

		{units.Duration(0).String(), "0 s"},
		{units.Duration(0.25).String(), "0.25 s"},
		{units.Duration(59.9999999).String(), "60 s"},
		{units.Duration(60).String(), "1 min"},
		{units.Duration(90.4).String(), "1 min 30 s"},
		{units.Duration(119.6).String(), "2 min"},
		{(80 * units.Minute).String(), "1 h 20 min"},
		{units.Duration(3601).String(), "1 h 1 s"},
		{(30 * units.Hour).String(), "30 h"},
		{units.Duration(1e15).String(), "2.77778e+11 h"},
		{units.Duration(9.99e14).String(), "277500000000 h"},
		{units.Duration(-4800).String(), "-4800 s"}, // -1 h 20 min could be read two ways

		// What float64 holds in SI but not in the printed unit.
		{units.MassPerArea(1e308).String(), "1e+310 mg/cm²"},
		{units.Density(5e-324).String(), "4.94066e-327 g/cm³"},
		{units.Efficiency(-1e308).String(), "-1e+310 %"},

		{units.Length(math.NaN()).String(), "NaN m"},
		{units.Efficiency(math.NaN()).String(), "NaN"},
		{units.Current(math.Inf(1)).String(), "+Inf A"},
		{units.Duration(math.Inf(1)).String(), "+Inf s"},
		{units.Duration(math.Inf(-1)).String(), "-Inf s"},
		{units.Temperature(math.Inf(-1)).String(), "-Inf K"},
	} {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}

func TestText(t *testing.T) {
	inch := 25 * units.Microinch
	for _, test := range []struct {
		got, want string
	}{
		{inch.Text(units.Micrometre, 3), "0.635 µm"},
		{inch.Text(units.Micrometre, 2), "0.63 µm"}, // the float64 lies just below 0.635
		{inch.Text(units.Micrometre, 0), "1 µm"},
		{inch.Text(units.Millimetre, 2), "0.00 mm"},
		{(-inch).Text(units.Millimetre, 2), "0.00 mm"}, // no negative zero
		{(-inch).Text(units.Micrometre, 1), "-0.6 µm"},
		{inch.Text(units.Micrometre, -1), "0.635 µm"},
		{inch.Text(units.Microinch, -9), "25 µin"},
		{inch.Text(0.001234*units.Metre, 8), "0.00000063 m"}, // unknown: the SI unit
		{inch.Text(0, 8), "0.00000063 m"},
		{inch.Text(units.Length(math.NaN()), 8), "0.00000063 m"},
		{inch.Text(-units.Micrometre, 8), "0.00000063 m"},
		{(2 * units.Metre).Text(units.Metre, 500), "2." + strings.Repeat("0", 40) + " m"},
		{units.Length(math.NaN()).Text(units.Micrometre, 3), "NaN m"},
		{units.Length(math.Inf(-1)).Text(units.Micrometre, -1), "-Inf m"},
		{(5 * units.CubicCentimetre).Text(units.CubicCentimetre, 1), "5.0 mL"}, // same size, first in Units
		{(1500 * units.Milliampere).Text(units.Ampere, 2), "1.50 A"},
		{(80 * units.Minute).Text(units.Minute, 1), "80.0 min"},
		{(80 * units.Minute).Text(units.Hour, 3), "1.333 h"},
		{units.Length(1e23).Text(units.Metre, -1), "1e23 m"},
		{units.Length(1e17).Text(units.Metre, -1), "100000000000000000 m"},
		{units.Length(12.5e-6).Text(units.Metre, -1), "0.0000125 m"},
		{units.Length(-1.25e-6).Text(units.Metre, -1), "-1.25e-6 m"},
		{units.Length(123.456).Text(units.Metre, -1), "123.456 m"},
		{units.Length(math.Copysign(0, -1)).Text(units.Metre, -1), "0 m"},
		{units.Efficiency(0.355).Percent(1), "35.5 %"},
		{units.Efficiency(0.355).Percent(-1), "35.5 %"},
		{units.MassFraction(1.0 / 3).Percent(2), "33.33 %"},
		{units.MoleFraction(0.5).Percent(0), "50 %"},
		{units.Ratio(2).Percent(0), "200 %"},

		{units.Celsius(38).Text(units.CelsiusScale, 1), "38.0 °C"},
		{units.Celsius(38).Text(units.CelsiusScale, -1), "38 °C"},
		{units.Celsius(38).Text(units.KelvinScale, 2), "311.15 K"},
		{units.Celsius(38).Text(units.FahrenheitScale, 1), "100.4 °F"},
		{units.Celsius(38).Text(7, 2), "311.15 K"}, // no such scale
		{units.Temperature(0).Text(units.CelsiusScale, -1), "-273.15 °C"},
		{units.Temperature(0).Text(units.FahrenheitScale, 2), "-459.67 °F"},
		{units.Temperature(1e-60).Text(units.CelsiusScale, -1), "1e-60 K"}, // 62 digits of °C
		{units.Temperature(math.NaN()).Text(units.CelsiusScale, 1), "NaN K"},
		{(9 * units.FahrenheitDegree).Text(units.Kelvin, 1), "5.0 K"},
	} {
		if test.got != test.want {
			t.Errorf("got %q, want %q", test.got, test.want)
		}
	}
}

// Text rounds the exact value, halves away from zero: each value here is a
// float64 without remainder.
func TestTextRoundsExactly(t *testing.T) {
	for _, test := range []struct {
		v    float64
		want string
	}{{0.5, "1 m"}, {1.5, "2 m"}, {2.5, "3 m"}, {-2.5, "-3 m"}, {0.49999999999999994, "0 m"}, {-0.25, "0 m"}} {
		if got := units.Length(test.v).Text(units.Metre, 0); got != test.want {
			t.Errorf("%v: got %q, want %q: halves away from zero, else the nearest", test.v, got, test.want)
		}
	}
}

type record struct {
	Coat    units.Length            `json:"coat"`
	Current units.Current           `json:"current"`
	Bath    *units.Temperature      `json:"bath,omitempty"`
	Times   map[units.Length]string `json:"times,omitempty"`
	Eff     units.Efficiency        `json:"eff"`
}

func TestJSON(t *testing.T) {
	bath := units.Celsius(60)
	in := record{Coat: 25 * units.Microinch, Current: 1.4, Bath: &bath,
		Times: map[units.Length]string{units.Micrometre: "one", 2 * units.Inch: "two"}, Eff: 0.35}
	b, err := json.Marshal(in)
	if err != nil {
		t.Fatal(err)
	}
	want := `{"coat":"6.35e-07 m","current":"1.4 A","bath":"333.15 K","times":{"0.0508 m":"two","1e-06 m":"one"},"eff":"0.35"}`
	if string(b) != want {
		t.Errorf("got %s\nwant %s", b, want)
	}
	var out record
	if err := json.Unmarshal(b, &out); err != nil {
		t.Fatal(err)
	}
	if out.Coat != in.Coat || out.Current != in.Current || *out.Bath != bath || out.Times[2*units.Inch] != "two" ||
		out.Eff != in.Eff {
		t.Errorf("got %+v, want %+v", out, in)
	}
	// Trade units come in as text too.
	if err := json.Unmarshal([]byte(`{"coat":"25 uin","eff":"35 %","times":{"2 in":"x","50.8 mm":"y"}}`),
		&out); err != nil || out.Coat != in.Coat {
		t.Errorf("%v, %+v", err, out)
	}
}

// TestJSONRefuses: a bare number has no unit, so it is no quantity; the field
// keeps its value, the error is not swallowed.
func TestJSONRefuses(t *testing.T) {
	for _, text := range []string{`{"coat":0.5}`, `{"eff":0.35}`, `{"coat":true}`, `{"coat":["1 m"]}`, `{"coat":""}`,
		`{"coat":"0.5"}`,
		`{"coat":"NaN m"}`, `{"bath":"-300 °C"}`, `{"times":{"1":"x"}}`} {
		r := record{Coat: 7, Eff: 0.5}
		if err := json.Unmarshal([]byte(text), &r); err == nil || r.Coat != 7 || r.Eff != 0.5 {
			t.Errorf("%s: %v, %+v", text, err, r)
		}
	}
	r := record{Coat: 7}
	if err := json.Unmarshal([]byte(`{"coat":null}`), &r); err != nil || r.Coat != 7 {
		t.Errorf("null: %v, %v; want it left alone", err, r.Coat)
	}
	for _, v := range []any{units.Length(math.NaN()), units.Current(math.Inf(1)),
		record{Eff: units.Efficiency(math.Inf(-1))}} {
		_, err := json.Marshal(v)
		var value *units.ValueError
		if !errors.Is(err, units.ErrNotFinite) || !errors.As(err, &value) {
			t.Errorf("%v: %v", v, err)
		}
	}
	// The standard library does not wrap the error of a map key.
	if b, err := json.Marshal(map[units.Mass]int{units.Mass(math.NaN()): 1}); err == nil || !strings.Contains(err.Error(),
		"not a finite number") {
		t.Errorf("%s, %v", b, err)
	}
}

func TestFlag(t *testing.T) {
	set := flag.NewFlagSet("bench", flag.ContinueOnError)
	set.SetOutput(io.Discard)
	var d units.Length
	set.TextVar(&d, "coat", 25*units.Microinch, "thickness")
	if got := set.Lookup("coat").DefValue; got != "6.35e-07 m" {
		t.Errorf("default %q", got)
	}
	if err := set.Parse([]string{"-coat", "0.5 mil"}); err != nil || d != 0.5*units.Mil {
		t.Errorf("%v, %v", d, err)
	}
	if err := set.Parse([]string{"-coat", "5 gal"}); err == nil || !strings.Contains(err.Error(), "µin") ||
		d != 0.5*units.Mil {
		t.Errorf("%v, %v", d, err)
	}
}

// Every kind refuses NaN and infinities as text and leaves the receiver alone
// when it cannot read.
func TestMarshalEveryKind(t *testing.T) {
	for _, tool := range tools() {
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
			var value *units.ValueError
			if b, err := tool.marshal(v); len(b) != 0 || !errors.As(err, &value) || !errors.Is(err, units.ErrNotFinite) ||
				value.Field != tool.kind.String() {
				t.Errorf("%s: %q, %v", tool.kind, b, err)
			}
			if b, err := tool.append([]byte("x"), v); string(b) != "x" || err == nil {
				t.Errorf("%s: %q, %v", tool.kind, b, err)
			}
		}
		if v, err := tool.unmarshal(42, []byte("42 nonsense")); v != 42 || err == nil {
			t.Errorf("%s: %v, %v", tool.kind, v, err)
		}
		zero, err := tool.marshal(math.Copysign(0, -1))
		if err != nil || zero[0] == '-' {
			t.Errorf("%s: negative zero as %q, %v", tool.kind, zero, err)
		}
	}
}

func TestDurationStd(t *testing.T) {
	if got := units.FromStd(90 * time.Minute); got != 1.5*units.Hour {
		t.Errorf("%v", got)
	}
	if got, err := (1.5 * units.Hour).Std(); got != 90*time.Minute || err != nil {
		t.Errorf("%v, %v", got, err)
	}
	if got, err := units.Duration(-1.25e-9).Std(); got != -1 || err != nil {
		t.Errorf("%v, %v", got, err)
	}
	for v, reason := range map[float64]error{1e10: units.ErrOutOfRange, -1e10: units.ErrOutOfRange,
		9223372037: units.ErrOutOfRange,
		math.NaN(): units.ErrNotFinite, math.Inf(1): units.ErrNotFinite} {
		var value *units.ValueError
		if got, err := units.Duration(v).Std(); got != 0 || !errors.Is(err, reason) || !errors.As(err, &value) {
			t.Errorf("%v: %v, %v", v, got, err)
		}
	}
	if got, err := units.Duration(9223372036).Std(); got != 9223372036*time.Second || err != nil {
		t.Errorf("%v, %v", got, err)
	}
}
