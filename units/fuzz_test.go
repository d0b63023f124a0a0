package units_test

import (
	"errors"
	"math"
	"strings"
	"testing"
	"time"

	"example.com/laydown/units"
)

// FuzzParse reads any text as any kind. What is read is a finite number that
// every encoding gives back; what is refused comes with a *ParseError.
func FuzzParse(f *testing.F) {
	for i, s := range []string{"1.4 A", "25 µin", "25 μin", "0.85 A/dm^2", "38 °C", "-273.15 °C", "100 degF",
		"1 h 20 min", "12 A*h", "5 US gal",
		"8 g/L", "35 %", "0x10 m", "1_000 m", "1,5 m", "1e999999 m", "-0 m", "1 h 1 h", "5 1", "7.349 g/(A h)", "\xff",
		"\u22125 K", "1e-323 kg/m3", "4 1/2 in", "1/0 in", "-1/3 m", "1 000/7 g", "1/08 g"} {
		for _, k := range units.Kinds() {
			if i%3 == int(k)%3 {
				f.Add(uint8(k), s)
			}
		}
	}
	all := tools()
	f.Fuzz(func(t *testing.T, kind uint8, text string) {
		tool := all[int(kind)%len(all)]
		v, err := tool.parse(text)
		if err != nil {
			var p *units.ParseError
			if !errors.As(err, &p) || v != 0 || p.Err == nil || len(p.Accepted) == 0 {
				t.Fatalf("%s %q: %v beside %v", tool.kind, text, v, err)
			}
			if got, err := tool.unmarshal(42, []byte(text)); got != 42 || err == nil {
				t.Fatalf("%s %q: UnmarshalText gives %v, %v", tool.kind, text, got, err)
			}
			return
		}
		if v-v != 0 || (v == 0 && math.Signbit(v)) || !tool.allowed(v) {
			t.Fatalf("%s %q: %v", tool.kind, text, v)
		}
		checkEncodings(t, tool, v)
	})
}

// checkEncodings: all texts of a value agree with it.
func checkEncodings(t *testing.T, tool tool, v float64) {
	t.Helper()
	b, err := tool.marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	appended, err := tool.append([]byte("x"), v)
	if err != nil || string(appended) != "x"+string(b) {
		t.Fatalf("%s %v: AppendText %q, MarshalText %q", tool.kind, v, appended, b)
	}
	if got, err := tool.unmarshal(42, b); got != v || err != nil {
		t.Fatalf("%s %v: %q reads as %v, %v", tool.kind, v, b, got, err)
	}
	for _, symbol := range tool.kind.Units() {
		out := ""
		switch {
		case tool.text != nil:
			size, err := tool.parse("1 " + symbol)
			if err != nil {
				t.Fatal(err)
			}
			out = tool.text(v, size, -1)
			if decimals := tool.text(v, size, 3); strings.HasPrefix(decimals, "-0.000 ") {
				t.Fatalf("%s %v: %q", tool.kind, v, decimals)
			}
		default: // temperatures and fractions: Convert finds their kind first
			if out, err = units.Convert(string(b), symbol); err != nil {
				t.Fatal(err)
			}
		}
		if got, err := tool.parse(out); got != v || err != nil {
			t.Fatalf("%s %v in %s: %q reads as %v, %v", tool.kind, v, symbol, out, got, err)
		}
	}
	// beyond, six digits may round up out of float64
	if _, err := tool.parse(tool.str(v)); err != nil && math.Abs(v) < 1.79e308 {
		t.Fatalf("%s %v: String cannot be read: %v", tool.kind, v, err)
	}
}

// FuzzConvert: an answer converts to itself, and back to where it came from.
func FuzzConvert(f *testing.F) {
	for _, s := range [][2]string{{"25 µin", "µm"}, {"38 °C", "°F"}, {"5 K", "degC"}, {"-300 °C", "K"}, {"1 h 20 min",
		"s"}, {"1e-60 K", "°C"}, {"8 g/L", "g/cm3"},
		{"0.35", "%"}, {"35 %", "1"}, {"5 gal", "L"}, {"", ""}, {"1", "\xff"}, {"5 US gal", "imp gal"}} {
		f.Add(s[0], s[1])
	}
	f.Fuzz(func(t *testing.T, text, unit string) {
		out, err := units.Convert(text, unit)
		if err != nil {
			var p *units.ParseError
			if out != "" || !errors.As(err, &p) {
				t.Fatalf("%q in %q: %q beside %v", text, unit, out, err)
			}
			return
		}
		again, err := units.Convert(out, unit)
		num, _, _ := strings.Cut(out, " ")
		if numAgain, _, _ := strings.Cut(again, " "); err != nil || numAgain != num {
			t.Fatalf("%q in %q: %q, and that once more: %q, %v", text, unit, out, again, err)
		}
		// One kind must read both texts to the same value.
		for _, tool := range tools() {
			a, errA := tool.parse(text)
			b, errB := tool.parse(out)
			if errA == nil && errB == nil && a == b {
				return
			}
		}
		t.Fatalf("%q in %q: %q is another value", text, unit, out)
	})
}

// FuzzDuration: sums of times read back, whatever the way they are written.
func FuzzDuration(f *testing.F) {
	for _, s := range []string{"1 h 20 min", "1h20min30s", "1 d 2 h 3 min 4.5 s 6 ms 7 µs", "-80 min", "-1 h 20 min",
		"1 h 1 h", "20 min 1 h",
		"90 min", "1 h .5 min", "1 h -5 min", "1 h", "1e3 s", "1e15 s", "59.9999 s", "1 h. 5 min", "0 s", "5 A/dm2"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		d, err := units.ParseDuration(text)
		if err != nil {
			return
		}
		checkEncodings(t, toolOf(units.KindDuration), float64(d))
		shown, err := units.ParseDuration(d.String())
		tol := 5.0001e-6*math.Abs(float64(d)) + 5e-324
		if d >= 60 && d < 1e15 {
			tol = 0.5
		}
		if err != nil || math.Abs(float64(shown-d)) > tol {
			t.Fatalf("%q = %v prints as %q, which reads as %v, %v", text, float64(d), d, float64(shown), err)
		}
		if std, err := d.Std(); err == nil {
			if back := units.FromStd(std); math.Abs(float64(back-d)) > 0.5000001e-9+3e-16*math.Abs(float64(d)) {
				t.Fatalf("%v as %v is %v", float64(d), std, float64(back))
			}
		} else if math.Abs(float64(d)) < 291*365*86400 {
			t.Fatal(err)
		}
		// The standard library reads the same sums when each unit is its own.
		if plain := strings.NewReplacer(" ", "", "min", "m").Replace(text); !strings.ContainsAny(text,
			"dueE\u2212\u00b5\u03bc") {
			if std, err := time.ParseDuration(plain); err == nil && math.Abs(std.Seconds()-float64(d)) > 1e-6+
				1e-9*math.Abs(float64(d)) {
				t.Fatalf("%q: %v, the standard library reads %v", text, float64(d), std)
			}
		}
	})
}
