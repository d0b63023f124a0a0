package units_test

import (
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestConvert: the documented answers, and a unit that only one kind has.
func TestConvert(t *testing.T) {
	for _, test := range [][3]string{
		{"25 µin", "µm", "0.635 µm"}, {"25 uin", "um", "0.635 µm"}, {"1 in", "mm", "25.4 mm"},
		{"1 ozt", "g", "31.1034768 g"},
		{"100 A/ft2", "A/dm^2", "10.763910416709723 A/dm²"}, {"0 °C", "°C", "0 °C"}, {"32 °F", "°C", "0 °C"}, {"273.15 K",
			"°F", "32 °F"}, {"0 °F", "°F", "0 °F"},
		{"1 h 20 min", "s", "4800 s"}, {"90 min", "h", "1.5 h"},
		{"38 °C", "degF", "100.4 °F"}, {"100.4 °F", "°C", "38 °C"}, {"5 K", "°C", "-268.15 °C"}, {"1 oz/US gal", "g/L",
			"7.489151707306039 g/L"},
		{"8 g/L", "g/cm³", "0.008 g/mL"}, {"17.3 g/cm³", "kg/m³", "17300 kg/m³"}, {"35 %", "1", "0.35"}, {"0.35", "%",
			"35 %"},
		{"750 ‰", "%", "75 %"}, {"12 Ah", "C", "43200 C"}, {"0 m", "in", "0 in"}, {"-1 in", "mm", "-25.4 mm"},
	} {
		if got, err := units.Convert(test[0], test[1]); got != test[2] || err != nil {
			t.Errorf("%s in %s: %q, %v; want %q", test[0], test[1], got, err, test[2])
		}
	}
	for _, test := range []struct {
		text, unit string
		reason     error
	}{
		{"25 µin", "g", units.ErrWrongKind}, {"25 µin", "", units.ErrUnknownUnit}, {"25 µin", "furlong",
			units.ErrUnknownUnit},
		{"25 µin", "\xff", units.ErrUnknownUnit}, {"25 µin", strings.Repeat("x", 1<<16), units.ErrUnknownUnit},
		{"25", "µm", units.ErrUnknownUnit}, {"", "µm", units.ErrSyntax}, {"25 furlong", "µm", units.ErrUnknownUnit},
		{"5 gal", "L", units.ErrUnknownUnit}, {"5 A", "g/cm³", units.ErrWrongKind},
		// A temperature that cannot be is not taken for a difference.
		{"-300 °C", "K", units.ErrOutOfRange}, {"-500 °F", "°C", units.ErrOutOfRange},
		{"1e999 g/cm³", "g/L", units.ErrOutOfRange}, {"1 h 1 h", "s", units.ErrSyntax},
	} {
		got, err := units.Convert(test.text, test.unit)
		if got != "" {
			t.Errorf("%.20q in %.20q: %q", test.text, test.unit, got)
		}
		k := units.KindNone
		if kinds := units.KindsOf(test.unit); len(kinds) > 0 {
			k = kinds[0]
		}
		if k != units.KindNone && test.text != "1e999 g/cm³" {
			wantParseError(t, err, k, test.reason)
		} else if err == nil || len(err.Error()) > 1500 {
			t.Errorf("%.20q in %.20q: %v", test.text, test.unit, err)
		}
	}
}
