package units_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestParse reads every spelling that the package comment promises. Each row
// says what it must be in exact decimals of the SI unit.
func TestParse(t *testing.T) {
	for _, test := range []struct {
		kind units.QuantityKind
		si   float64
		text []string
	}{
		{units.KindCurrent, 1.4, []string{"1.4 A", "1.4A", "1400 mA", "+1.4 A", "1.40 A", "0.0014 kA", "14e-1 A", "14E-1 A",
			"  1.4\u00a0A\t", "1.4\u202fA"}},
		{units.KindCurrent, -1.4, []string{"-1.4 A", "\u22121.4 A"}},
		{units.KindLength, 6.35e-7, []string{"25 µin", "25 μin", "25 uin", "25uin", "25 microinch", "25 microinches",
			"0.025 mil", "0.025 thou", "0.635 µm", "0.635 um",
			"0.635 micron", "635 nm", "25.\u2009µin"}},
		{units.KindLength, 0.0254, []string{"1 in", "1 inch", "1000 mils", "25.4 mm", "2.54 cm", "1e6 uin"}},
		{units.KindLength, 0.1143, []string{"4 1/2 in", "4 1/2in", "+4 1/2 inches", "9/2 in", "4  2/4 in", "4\u00a01/2 in",
			"4.5 in"}},
		{units.KindLength, 0.003175, []string{"1/8 in", "1/8in", "125 mils", "0 1/8 inch", "01/08 in", "00 1/008 in"}},
		{units.KindLength, -0.1143, []string{"-4 1/2 in", "-9/2 in", "\u22124 1/2 in"}},
		{units.KindVolume, 0.000946352946, []string{"1/4 US gal", "1/4usgal"}},
		{units.KindEfficiency, 0.25, []string{"1/4", "25 %"}},
		{units.KindLength, 0.25, []string{"010/040 m", "00.250 m", "0.25 m"}},
		{units.KindLength, 10, []string{"010 m", "0010.0 m"}},
		{units.KindLength, 0.5, []string{".5 m", "0.5 m", "5e-1m", "500 mm"}},
		{units.KindLength, 0.6096, []string{"2 ft", "2 feet"}},
		{units.KindCurrentDensity, 85, []string{"0.85 A/dm²", "0.85 A/dm2", "0.85 A/dm^2", "0.85A/dm²", "8.5 mA/cm²",
			"8.5 mA/cm^2", "85 A/m2", "0.85 A / dm²", "0.85 A∕dm²"}},
		{units.KindCurrentDensity, 100 / 0.09290304, []string{"100 A/ft²", "100 A/ft2", "100 A/ft^2", "100 A/sqft"}},
		{units.KindTemperature, 311.15, []string{"38 °C", "38 degC", "38 deg C", "38°C", "38 ˚C", "38 ºC", "38 ℃",
			"311.15 K", "38 celsius", "100.4 °F", "100.4 degF", "100.4 ℉", "100.4 fahrenheit"}},
		{units.KindTemperature, 559.67 * 5 / 9, []string{"100 degF", "100 °F"}},
		{units.KindTemperature, 0, []string{"0 K", "-0 K", "-273.15 °C", "-459.67 °F"}},
		{units.KindTemperatureDifference, 5, []string{"5 K", "5 °C", "9 °F", "5 degC"}},
		{units.KindTemperatureDifference, -5, []string{"-5 K", "-5 °C", "-9 °F"}},
		{units.KindDuration, 600, []string{"10 min", "10 minutes", "600 s", "10min"}},
		{units.KindDuration, 4800, []string{"1 h 20 min", "1h20min", "1h 20 min", "1 hour 20 minutes", "80 min", "4800 s",
			"1 h 1200 s", "+1 h 20 min", "1 h 20.0 min"}},
		{units.KindDuration, 3630, []string{"1 h .5 min", "1 h 0 min 30 s", "1 h 30 s"}},
		{units.KindDuration, 93784.5, []string{"1 d 2 h 3 min 4 s 500 ms", "1d2h3min4.5s"}},
		{units.KindDuration, -4800, []string{"-80 min", "-4800 s", "\u221280 min"}},
		{units.KindDuration, 1e-3, []string{"1 ms", "1000 µs", "1000 us", "0 s 1 ms"}},
		{units.KindCharge, 43200, []string{"12 A·h", "12 A*h", "12 A h", "12 Ah", "12A·h", "12 A⋅h", "12 A∙h", "720 A·min",
			"720 A min", "43200 C", "43200 A s", "12000 mAh", "12000 mA·h"}},
		{units.KindMass, 0.0012 * 1.55517384, []string{"1.2 dwt", "1.2 pennyweight"}},
		{units.KindMass, 0.0311034768, []string{"1 ozt", "1 oz t", "1 troy oz", "20 dwt", "480 gr", "480 grains"}},
		{units.KindMass, 0.45359237, []string{"1 lb", "16 oz", "7000 gr", "1 lbs"}},
		{units.KindVolume, 0.003785411784, []string{"1 US gal", "1 usgal", "1  US  gal", "231 in³", "231 in^3",
			"3.785411784 L", "3.785411784 l", "3785.411784 cc"}},
		{units.KindVolume, 0.00454609, []string{"1 imp gal", "1 impgal", "1 UK gal"}},
		{units.KindMassConcentration, 0.028349523125 / 0.003785411784, []string{"1 oz/US gal", "1 oz / US gal",
			"1 oz/usgal"}},
		{units.KindMassConcentration, 8, []string{"8 g/L", "8 g/l", "8000 mg/L", "8 kg/m³", "0.008 g/mL", "0.008 g/cm³"}},
		{units.KindEquivalent, 0.007349 / 3600, []string{"7.349 g/(A·h)", "7.349 g/(A h)", "7.349 g/(A*h)", "7.349 g/Ah",
			"7.349 g/A·h"}},
		{units.KindResistance, 0.8, []string{"0.8 Ω", "0.8 Ω", "0.8 ohm", "0.8 Ohm", "800 mΩ", "800 mohm"}},
		{units.KindAreaResistance, 5e-4, []string{"5 Ω·cm²", "5 ohm cm2", "5 Ω*cm^2"}},
		{units.KindEnergy, 1.44e6, []string{"0.4 kW·h", "0.4 kWh", "0.4 kW h", "400 Wh"}},
		{units.KindEfficiency, 0.35, []string{"35 %", "35%", "0.35", "350 ‰", "35 percent", "35 pct"}},
		{units.KindMassFraction, 0.75, []string{"750 ‰", "750 permille", "75 %", ".75", "7.5e-1"}},
		{units.KindRatio, 1e-5, []string{"0.00001", "1e-5", "0.001 %"}},
		{units.KindPressure, 101325, []string{"1 atm", "1013.25 mbar", "1013.25 hPa", "101.325 kPa", "1.01325 bar"}},
		{units.KindLength, 0, []string{"0 m", "-0 m", "0e5 µm", "0.000 in"}},
	} {
		tool := toolOf(test.kind)
		for _, text := range test.text {
			got, err := tool.parse(text)
			if err != nil {
				t.Errorf("%s %q: %v", test.kind, text, err)
				continue
			}
			// The right side of some rows is a float64 product: allow its rounding.
			if math.Abs(got-test.si) > 4e-16*math.Abs(test.si) {
				t.Errorf("%s %q = %v, want %v", test.kind, text, got, test.si)
			}
			if fmt.Sprint(got) == "-0" {
				t.Errorf("%s %q gives a negative zero", test.kind, text)
			}
		}
	}
}

// TestParseErrors: whatever is wrong is refused by name, with the accepted units.
func TestParseErrors(t *testing.T) {
	for _, test := range []struct {
		kind   units.QuantityKind
		text   string
		reason error
		say    string
	}{
		{units.KindLength, "", units.ErrSyntax, "empty"},
		{units.KindLength, " \t\n", units.ErrSyntax, "empty"},
		{units.KindLength, "25", units.ErrUnknownUnit, "no unit after the number"},
		{units.KindDuration, "25", units.ErrUnknownUnit, "no unit after the number"},
		{units.KindDuration, "1 h 20", units.ErrUnknownUnit, "no unit after the number"},
		{units.KindLength, "m", units.ErrSyntax, "no number"},
		{units.KindLength, "NaN m", units.ErrSyntax, "no number"},
		{units.KindLength, "Inf m", units.ErrSyntax, "no number"},
		{units.KindLength, "-Inf m", units.ErrSyntax, "no number"},
		{units.KindLength, "+-5 m", units.ErrSyntax, "no number"},
		{units.KindLength, ". m", units.ErrSyntax, "no number"},
		{units.KindLength, "½ m", units.ErrSyntax, "no number"},
		{units.KindLength, "５ m", units.ErrSyntax, "no number"},
		{units.KindLength, "0x10 m", units.ErrUnknownUnit, `unknown unit "x10 m"`},
		{units.KindLength, "1_000 m", units.ErrUnknownUnit, `unknown unit "_000 m"`},
		{units.KindLength, "1,5 m", units.ErrSyntax, "comma"},
		{units.KindDuration, "1,5 h", units.ErrSyntax, "comma"},
		{units.KindLength, "1 000 m", units.ErrSyntax, "more than one number"},
		{units.KindLength, "1.2.3 m", units.ErrSyntax, "more than one number"},
		{units.KindLength, "5 -3 m", units.ErrSyntax, "more than one number"},
		{units.KindLength, "5 1", units.ErrSyntax, "more than one number"},
		{units.KindRatio, "5 1", units.ErrSyntax, "more than one number"},
		{units.KindRatio, "0.5 0.5", units.ErrSyntax, "more than one number"},
		{units.KindLength, "1/0 in", units.ErrSyntax, "zero under the line"},
		{units.KindLength, "1/00 in", units.ErrSyntax, "zero under the line"},
		{units.KindLength, "4 1/0 in", units.ErrSyntax, "zero under the line"},
		{units.KindLength, "4 9/2 in", units.ErrSyntax, "below one only"},
		{units.KindLength, "1 000/2 in", units.ErrSyntax, "below one only"},
		{units.KindLength, "4 1/2 1/2 in", units.ErrSyntax, "more than one number"},
		{units.KindLength, "1/2/2 in", units.ErrUnknownUnit, `unknown unit "/2 in"`},
		{units.KindLength, "1.5/2 in", units.ErrUnknownUnit, `unknown unit "/2 in"`},
		{units.KindLength, "1/-2 in", units.ErrUnknownUnit, `unknown unit "/-2 in"`},
		{units.KindLength, "1/2", units.ErrUnknownUnit, "no unit after the number"},
		{units.KindDuration, "1/2 h", units.ErrSyntax, "smaller unit, as 30 min"},
		{units.KindDuration, "1 1/2 h", units.ErrSyntax, "smaller unit, as 30 min"},
		{units.KindDuration, "1 h 1/2 min", units.ErrSyntax, "smaller unit, as 30 min"},
		{units.KindDuration, "1/0 h", units.ErrSyntax, "smaller unit, as 30 min"},
		{units.KindTemperature, "100 F", units.ErrUnknownUnit, "°F or degF"},
		{units.KindTemperature, "38C", units.ErrWrongKind, "charge"},
		{units.KindVolume, "3 fl oz", units.ErrUnknownUnit, "write mL"},
		{units.KindVolume, "1 qt", units.ErrUnknownUnit, "write mL"},
		{units.KindArea, "5 m^4", units.ErrUnknownUnit, `unknown unit "m^4"`},
		{units.KindLength, "5 m m", units.ErrUnknownUnit, `unknown unit "m m"`},
		{units.KindLength, "5 m in", units.ErrUnknownUnit, `unknown unit "m in"`},
		{units.KindLength, "5 µ m", units.ErrUnknownUnit, "unknown unit"},
		{units.KindLength, "5e m", units.ErrUnknownUnit, `unknown unit "e m"`},
		{units.KindLength, "5 e3 m", units.ErrUnknownUnit, "unknown unit"},
		{units.KindLength, "1e999999 m", units.ErrOutOfRange, "too large or too small"},
		{units.KindLength, "1e-999999 m", units.ErrOutOfRange, "too large or too small"},
		{units.KindLength, "1e99999999999999999999 m", units.ErrOutOfRange, "too large"},
		{units.KindLength, "1.8e308 m", units.ErrOutOfRange, "too large"},
		{units.KindLength, "2e-324 m", units.ErrOutOfRange, "too small"},
		{units.KindLength, "1e-320 nm", units.ErrOutOfRange, "too small"},
		{units.KindDuration, "1e308 h", units.ErrOutOfRange, "too large"},
		{units.KindDuration, "1e999 s", units.ErrOutOfRange, "too large"},
		{units.KindLength, strings.Repeat("1", 201) + " m", units.ErrSyntax, "longer than 200"},
		{units.KindLength, strings.Repeat("m", 1<<20), units.ErrSyntax, "longer than 200"},
		{units.KindLength, "25 \xffm", units.ErrSyntax, "UTF-8"},
		{units.KindVolume, "5 gal", units.ErrUnknownUnit, "US gal or imp gal"},
		{units.KindVolume, "5 gallons", units.ErrUnknownUnit, "US gal or imp gal"},
		{units.KindVolume, "5 US Gal", units.ErrUnknownUnit, "US gal or imp gal"},
		{units.KindVolume, "5 µsgal", units.ErrUnknownUnit, "US gal or imp gal"}, // the micro sign is no u of US
		{units.KindMassConcentration, "1 oz/gal", units.ErrUnknownUnit, "US gal or imp gal"},
		{units.KindMass, "1 usgal", units.ErrWrongKind, "volume"},
		{units.KindLength, "5 g", units.ErrWrongKind, `unit "g" is one of mass`},
		{units.KindDuration, "5 m", units.ErrWrongKind, "length"},
		{units.KindDuration, "5 A/dm2", units.ErrWrongKind, "current density"},
		{units.KindMass, "5 K", units.ErrWrongKind, "temperature or temperature difference"},
		{units.KindCurrentDensity, "5 A", units.ErrWrongKind, "current"},
		{units.KindTemperature, "38 C", units.ErrWrongKind, "charge"},
		{units.KindLength, "35 %", units.ErrWrongKind, "efficiency"},
		{units.KindLength, "5 furlong", units.ErrUnknownUnit, `unknown unit "furlong"`},
		{units.KindDuration, "5 minµtes", units.ErrUnknownUnit, "unknown unit"},
		{units.KindDuration, "5 fortnights 3 h", units.ErrUnknownUnit, "unknown unit"},
		{units.KindLength, "5 MM", units.ErrUnknownUnit, "capitals matter, did you mean mm"},
		{units.KindLength, "5 UM", units.ErrUnknownUnit, "capitals matter, did you mean µm"},
		{units.KindMass, "5 Kg", units.ErrUnknownUnit, "did you mean kg"},
		{units.KindCurrent, "5 a", units.ErrUnknownUnit, "did you mean A"},
		{units.KindCharge, "5 ah", units.ErrUnknownUnit, `unknown unit "ah"`},
		{units.KindDuration, "5 H", units.ErrUnknownUnit, "did you mean h"},
		{units.KindTemperature, "38 °c", units.ErrUnknownUnit, "did you mean °C"},
		{units.KindTemperature, "-274 °C", units.ErrOutOfRange, "below absolute zero"},
		{units.KindTemperature, "-460 °F", units.ErrOutOfRange, "below absolute zero"},
		{units.KindTemperature, "-1 K", units.ErrOutOfRange, "below absolute zero"},
		{units.KindTemperature, "-273.150000000000000000000000001 °C", units.ErrOutOfRange, "below absolute zero"},
		{units.KindDuration, "1 h 1 h", units.ErrSyntax, "falling order"},
		{units.KindDuration, "20 min 1 h", units.ErrSyntax, "falling order"},
		{units.KindDuration, "1 h 20 minutes 3 min", units.ErrSyntax, "falling order"},
		{units.KindDuration, "1 h -20 min", units.ErrSyntax, "a sign inside"},
		{units.KindDuration, "1 h +20 min", units.ErrSyntax, "a sign inside"},
		{units.KindDuration, "1 h \u221220 min", units.ErrSyntax, "a sign inside"},
		{units.KindDuration, "-1 h 20 min", units.ErrSyntax, "negative sum"},
		{units.KindDuration, "1:20", units.ErrUnknownUnit, "unknown unit"},
		{units.KindDuration, "1 h, 20 min", units.ErrUnknownUnit, "unknown unit"},
		{units.KindDuration, "1 h. 20 min", units.ErrSyntax, "no number before"},
		{units.KindDuration, "1 000 s", units.ErrUnknownUnit, "no unit after the number"},
		{units.KindDuration, "1 h 1e999 s", units.ErrOutOfRange, "too large"},
		{units.KindDuration, "1_000 s", units.ErrUnknownUnit, "unknown unit"},
	} {
		v, err := toolOf(test.kind).parse(test.text)
		if v != 0 {
			t.Errorf("%s %.40q: value %v beside an error", test.kind, test.text, v)
		}
		p := wantParseError(t, err, test.kind, test.reason)
		if !strings.Contains(p.Error(), test.say) {
			t.Errorf("%s %.40q: %v; want %q in it", test.kind, test.text, err, test.say)
		}
		for _, u := range test.kind.Units() {
			if !strings.Contains(err.Error(), u) {
				t.Errorf("%v: does not list %s", err, u)
			}
		}
	}
}

// A number that fits although its reading in another unit would not.
func TestParseCorners(t *testing.T) {
	for _, text := range []string{"1e308 ft", "5e-324 m", "1.7976931348623157e308 m", "1.7976931348623157e317 nm",
		strings.Repeat("1", 198) + " m", "0e-400 m"} {
		if _, err := units.ParseLength(text); err != nil {
			t.Error(err)
		}
	}
}

func TestParseErrorCutsText(t *testing.T) {
	_, err := units.ParseLength("5 " + strings.Repeat("é", 90))
	var p *units.ParseError
	if !errors.As(err, &p) || len([]rune(p.Text)) != 61 || !strings.HasSuffix(p.Text, "…") {
		t.Errorf("%v", err)
	}
}

func TestKinds(t *testing.T) {
	seen := map[string]bool{}
	for _, k := range units.Kinds() {
		if k.String() == "" || seen[k.String()] {
			t.Errorf("kind %d has no name of its own: %q", k, k)
		}
		seen[k.String()] = true
		tool := toolOf(k)
		spelled := map[string]string{}
		for _, symbol := range k.Units() {
			number := "1 " + symbol
			if symbol == "1" {
				number = "1" // the number alone
			}
			want, err := tool.parse(number)
			if err != nil {
				t.Errorf("%s: %v", k, err)
			}
			list := k.Spellings(symbol)
			if len(list) == 0 || list[0] != symbol {
				t.Errorf("%s: spellings of %s: %v", k, symbol, list)
			}
			for _, s := range list {
				if spelled[s] != "" {
					t.Errorf("%s: %s is both %s and %s", k, s, spelled[s], symbol)
				}
				spelled[s] = symbol
				if s == "1" {
					continue
				}
				if got, err := tool.parse("1 " + s); got != want || err != nil {
					t.Errorf("%s: 1 %s = %v (%v), want that of %s, %v", k, s, got, err, symbol, want)
				}
				if kinds := units.KindsOf(s); len(kinds) == 0 {
					t.Errorf("KindsOf(%q) is empty", s)
				}
			}
		}
	}
	beyond := units.Kinds()[len(units.Kinds())-1] + 1
	for _, k := range []units.QuantityKind{units.KindNone, beyond, 255} {
		if k.String() != "quantity" || len(k.Units()) != 0 || k.Spellings("m") != nil {
			t.Errorf("kind %d: %q, %v", k, k, k.Units())
		}
	}
	if units.KindLength.Spellings("kg") != nil {
		t.Error("a length in kg")
	}
	if got := units.KindLength.Spellings("um"); fmt.Sprint(got) != "[µm micron microns]" {
		t.Errorf("%v", got)
	}
	if got := units.KindsOf("g/cm^3"); fmt.Sprint(got) != "[density mass concentration]" {
		t.Errorf("%v", got)
	}
	for _, s := range []string{"", " ", "xyz", "\xff", strings.Repeat("m", 1<<16)} {
		if got := units.KindsOf(s); got != nil {
			t.Errorf("KindsOf(%.20q) = %v", s, got)
		}
	}
}
