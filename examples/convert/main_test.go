package main

import (
	"bytes"
	"errors"
	"strings"
	"testing"

	"example.com/laydown/units"
)

func TestRun(t *testing.T) {
	for _, test := range []struct {
		args   []string
		status int
		out    string // the whole of stdout
		say    string // a part of stderr
	}{
		{[]string{"25", "µin", "µm"}, 0, "25 µin = 0.635 µm\n", ""},
		{[]string{"25 µin", "µm"}, 0, "25 µin = 0.635 µm\n", ""},
		{[]string{"25 µin µm"}, 0, "25 µin = 0.635 µm\n", ""},
		{[]string{"25μin", "um"}, 0, "25μin = 0.635 µm\n", ""},
		{[]string{"1", "h", "20", "min", "s"}, 0, "1 h 20 min = 4800 s\n", ""},
		{[]string{"1 h 20 min", "s"}, 0, "1 h 20 min = 4800 s\n", ""},
		{[]string{"3785.411784", "mL", "US", "gal"}, 0, "3785.411784 mL = 1 US gal\n", ""},
		{[]string{"2 US gal", "imp gal"}, 0, "2 US gal = 1.6653483692579778 imp gal\n", ""},
		{[]string{"8", "g/L", "ozt/US", "gal"}, 0, "8 g/L = 0.9736305194022554 ozt/US gal\n", ""},
		{[]string{"8", "g/L", "dwt", "/", "US", "gal"}, 0, "8 g/L = 19.472610388045108 dwt/US gal\n", ""},
		{[]string{"12", "A", "h", "C"}, 0, "12 A h = 43200 C\n", ""},
		{[]string{"3600", "C", "A", "h"}, 0, "3600 C = 1 A·h\n", ""},
		{[]string{"5", "oz", "t", "g"}, 0, "5 oz t = 155.517384 g\n", ""},
		{[]string{"38", "°C", "°F"}, 0, "38 °C = 100.4 °F\n", ""},
		{[]string{"100", "deg", "F", "K"}, 0, "100 deg F = 310.9277777777778 K\n", ""},
		{[]string{"0", "°C", "°C"}, 0, "0 °C = 0 °C\n", ""},
		{[]string{"-40", "°C", "°F"}, 0, "-40 °C = -40 °F\n", ""},
		{[]string{"--", "-40", "°C", "°F"}, 0, "-40 °C = -40 °F\n", ""},
		{[]string{"-.5 in", "mm"}, 0, "-.5 in = -12.7 mm\n", ""},
		{[]string{"35", "%", "1"}, 0, "35 % = 0.35\n", ""},
		{[]string{"0.35", "%"}, 0, "0.35 = 35 %\n", ""},
		{[]string{"-digits", "3", "100", "A/ft2", "A/dm2"}, 0, "100 A/ft2 ≈ 10.8 A/dm²\n", ""},
		{[]string{"-digits=3", "-40", "°C", "K"}, 0, "-40 °C ≈ 233 K\n", ""},
		{[]string{"-digits", "5", "25", "µin", "µm"}, 0, "25 µin = 0.635 µm\n", ""},
		{[]string{"-digits", "1", "123456", "m", "m"}, 0, "123456 m ≈ 100000 m\n", ""},
		{[]string{"-digits", "2", "1e300", "m", "ft"}, 0, "1e300 m ≈ 3.3e+300 ft\n", ""},
		{[]string{"-digits", "2", "1.5e308", "m", "nm"}, 0, "1.5e308 m = 1.5e317 nm\n", ""},

		{nil, 2, "", "usage: convert"},
		{[]string{""}, 2, "", "usage: convert"},
		{[]string{"-nonsense"}, 2, "", "usage: convert"},
		{[]string{"-digits", "0", "1", "m", "ft"}, 2, "", "need 1 to 17"},
		{[]string{"-digits", "-3", "1", "m", "ft"}, 2, "", "need 1 to 17"},
		{[]string{"-digits", "18", "1", "m", "ft"}, 2, "", "need 1 to 17"},
		{[]string{"-digits", "x", "1", "m", "ft"}, 2, "", "invalid value"},
		{[]string{"-list", "m"}, 2, "", "-list takes no further words"},
		{[]string{"25"}, 2, "", "need a quantity and a unit"},
		{[]string{"µm"}, 2, "", "need a quantity and a unit"},

		{[]string{"25", "µm"}, 1, "", "no unit after the number; accepted: m, cm"},
		{[]string{"25", "µin", "furlong"}, 1, "", `"furlong": unknown unit; accepted: m,`},
		{[]string{"25", "furlong", "µm"}, 1, "", `unknown unit "furlong"; accepted: m, cm`},
		{[]string{"5", "gal", "L"}, 1, "", "US gal or imp gal"},
		{[]string{"5", "L", "gal"}, 1, "", `"gal": unknown unit`},
		{[]string{"5", "A", "µm"}, 1, "", `unit "A" is one of current`},
		{[]string{"1,5", "m", "ft"}, 1, "", "point as the decimal mark"},
		{[]string{"NaN", "m", "ft"}, 1, "", "no number"},
		{[]string{"-300", "°C", "K"}, 1, "", "below absolute zero"},
		{[]string{"1e999", "m", "ft"}, 1, "", "too large"},
		{[]string{"1", "h", "1", "h", "s"}, 1, "", "falling order"},
		{[]string{"1.2", "A", "h"}, 1, "", "no unit after the number"},
		{[]string{"25 \xff", "m"}, 1, "", "UTF-8"},
		{[]string{"25 µin", "\xff"}, 1, "", "unknown unit"},
	} {
		var out, err bytes.Buffer
		status := run(test.args, &out, &err)
		if status != test.status || out.String() != test.out || !strings.Contains(err.String(), test.say) ||
			(test.say == "") != (err.Len() == 0) {
			t.Errorf("%q: status %d, out %q, err %.300q; want %d, %q, %q", test.args, status, out.String(), err.String(),
				test.status, test.out, test.say)
		}
	}
}

func TestHelp(t *testing.T) {
	var out, err bytes.Buffer
	if status := run([]string{"-h"}, &out, &err); status != 0 || out.String() != usage || err.Len() > 0 {
		t.Errorf("%d %q %q", status, out.String(), err.String())
	}
}

// TestList: every unit is there, and every spelling in the list can be used.
func TestList(t *testing.T) {
	var out, err bytes.Buffer
	if status := run([]string{"-list"}, &out, &err); status != 0 || err.Len() > 0 {
		t.Fatalf("%d %q", status, err.String())
	}
	for _, k := range units.Kinds() {
		if !strings.Contains(out.String(), k.String()+"\n    ") {
			t.Errorf("no %s", k)
		}
		for _, u := range k.Units() {
			if u != "1" && !strings.Contains(out.String(), strings.ReplaceAll(u, "·", " ")) {
				t.Errorf("%s: no %s", k, u)
			}
		}
	}
	for _, line := range strings.Split(out.String(), "\n") {
		if !strings.HasPrefix(line, "    ") || strings.Contains(line, "(a number alone)") {
			continue
		}
		for _, spelling := range strings.Split(strings.TrimSpace(line), ", ") {
			if len(units.KindsOf(spelling)) == 0 {
				t.Errorf("listed, but unknown: %q", spelling)
			}
		}
	}
}

type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, errors.New("no room left") }

func TestWriteFails(t *testing.T) {
	var err bytes.Buffer
	if status := run([]string{"25", "µin", "µm"}, broken{}, &err); status != 1 || !strings.Contains(err.String(),
		"no room left") {
		t.Errorf("%d %q", status, err.String())
	}
}
