package working_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// terms of the tables below.
var letters = []working.Term{
	working.Number("a", "", 2), working.Number("b", "", 3), working.Number("c", "", 4),
	working.Number("η_c", "", 0.5), working.Number("x₁", "", 7), working.Number("x'", "", 11),
	working.Number("x′", "", 13), working.Number("n", "", -8), working.Number("o", "", 0),
}

// TestIndependentRecompute holds the evaluator against Go's own arithmetic,
// with the precedence written out by parentheses.
func TestIndependentRecompute(t *testing.T) {
	a, b, c, n := 2.0, 3.0, 4.0, -8.0
	for formula, want := range map[string]float64{
		"y = 7":                       7,
		"y=0.5":                       0.5,
		"y = a + b·c":                 a + (b * c),
		"y = (a + b)·c":               (a + b) * c,
		"y = a - b - c":               (a - b) - c,
		"y = a − b + c":               (a - b) + c,
		"y = c/a/a":                   (c / a) / a,
		"y = c/a·b":                   (c / a) * b,
		"y = c/(a*b)":                 c / (a * b),
		"y = a^b":                     8,
		"y = a^b^a":                   512, // from the right
		"y = (a^b)^a":                 64,
		"y = -a^a":                    -4,
		"y = a^-b":                    0.125,
		"y = a^-a^a":                  0.0625,
		"y = a^b/c":                   2,
		"y = c·b²":                    c * (b * b),
		"y = b³ − b²":                 27 - 9,
		"y = (a·b)²":                  36,
		"y = √c":                      2,
		"y = √c·b":                    6,
		"y = √(c·b·b/c)":              3,
		"y = √√(c²)":                  2,
		"y = −(−a)":                   2,
		"y = a - -b":                  5,
		"y = a·-b":                    -6,
		"y = sqrt(c) + ln(exp(b))":    5,
		"y = min(a, b) + max(a, b)·c": 2 + 3*4,
		"y = min(a + b, c·a)":         5,
		"y = asin(1) - π/2":           0,
		"y = sin(π/2) + cos(0)":       2,
		"ε = 1/b = a/(b·c) = η_c":     0.5, // the last form counts
		"y = x₁ + x' + x′":            31,
		"y = -n^(1 - o)":              8,
		"y\t=\ta\n+ b":                5,
		"y = n²":                      n * n,
	} {
		got, err := working.Step{Formula: formula, Terms: letters}.Recompute()
		if err != nil {
			t.Errorf("%s: %v", formula, err)
		} else if math.Abs(got-want) > 1e-15*math.Abs(want)+1e-15 {
			t.Errorf("%s: got %v, want %v", formula, got, want)
		}
	}
}

func TestRecomputeRefuses(t *testing.T) {
	twice := append([]working.Term{working.Number("a", "", 5)}, letters...)
	odd := []working.Term{{Symbol: "i", SI: math.Inf(1)}, {Symbol: "q", SI: math.NaN()}}
	for _, test := range []struct {
		formula string
		terms   []working.Term
		say     string
	}{
		{"a + b", letters, "no equals sign"},
		{"", letters, "no equals sign"},
		{"y =", letters, "ends too early"},
		{"y = a +", letters, "ends too early"},
		{"y = a·", letters, "ends too early"},
		{"y = d", letters, `no value for "d"`},
		{"y = 2a", letters, `unexpected 'a'`},
		{"y = a b", letters, `unexpected 'b'`},
		{"y = 1e3", letters, `unexpected 'e'`},
		{"y = 1.2.3", letters, "not a number"},
		{"y = .5", letters, `unexpected '.'`},
		{"y = (a", letters, "not closed"},
		{"y = a)", letters, `unexpected ')'`},
		{"y = min(a", letters, "not closed"},
		{"y = min(a)", letters, `no function "min" of 1`},
		{"y = sqrt(a, b)", letters, `no function "sqrt" of 2`},
		{"y = tan(a)", letters, `no function "tan"`},
		{"y = a(b)", letters, `unexpected '('`},
		{"y = a/o", letters, "+Inf"},
		{"y = 1/(1/o)", letters, "+Inf"},  // not zero
		{"y = b/10^999", letters, "+Inf"}, // not zero
		{"y = exp(-(a/o))", letters, "+Inf"},
		{"y = o/o", letters, "NaN"},
		{"y = √n", letters, "NaN"},
		{"y = n^(1/3)", letters, "NaN"},
		{"y = asin(a)", letters, "NaN"},
		{"y = exp(9999)", letters, "+Inf"},
		{"y = a/exp(9999)", letters, "+Inf"}, // not zero
		{"y = 1/ln(o)", letters, "-Inf"},
		{"y = exp(-i)", odd, `"i" is +Inf`},
		{"y = 1 + q", odd, `"q" is NaN`},
		{"y = b", append([]working.Term{}, odd...), `no value for "b"`},
		{"y = a", twice, `two values for "a"`},
		{"y = a²³", letters, "two powers in a row"},
		{"y = a²^b", letters, "two powers in a row"},
		{"y = a\x00", letters, `unexpected '\x00'`},
		{"y = a\xff", letters, "unexpected"},
		{"y = a ≈ b", letters, "unexpected"},
		{"y = " + strings.Repeat("(", 60) + "a" + strings.Repeat(")", 60), letters, "nested too deep"},
		{"y = " + strings.Repeat("-", 60) + "a", letters, "nested too deep"},
		{"y = " + strings.Repeat("√", 60) + "a", letters, "nested too deep"},
		{"y = a" + strings.Repeat("^a", 60), letters, "nested too deep"},
		{"y = a" + strings.Repeat("+a", 4000), letters, "longer than"},
	} {
		v, err := working.Step{Formula: test.formula, Terms: test.terms}.Recompute()
		if !errors.Is(err, working.ErrFormula) || !strings.Contains(err.Error(), test.say) || v != 0 {
			t.Errorf("%.40q: got %v, %v; want an error with %q", test.formula, v, err, test.say)
		}
	}
}

// The same symbol may stand twice with one value: nothing is ambiguous.
func TestRecomputeSameTermTwice(t *testing.T) {
	s := working.Step{Formula: "y = a·a", Terms: []working.Term{working.Number("a", "", 3), working.Number("a", "", 3)}}
	if v, err := s.Recompute(); v != 9 || err != nil {
		t.Errorf("got %v, %v", v, err)
	}
}

func TestTermsAndText(t *testing.T) {
	charge := 2 * units.AmpereHour
	s := working.Step{
		Formula: "Q = I·t",
		Terms: []working.Term{
			working.Of("I", "current", 4*units.Ampere),
			working.Of("t", "time", 30*units.Minute),
		},
		Result: working.Of("Q", "charge", charge),
		Source: "SomeKey",
		Note:   "no loss counted",
	}
	if v, err := s.Recompute(); err != nil || v != s.Result.SI {
		t.Errorf("got %v, %v; want %v", v, err, s.Result.SI)
	}
	want := `charge: 2 A·h
  Q = I·t  [SomeKey]
    I = 4 A (current)
    t = 30 min (time)
  no loss counted
`
	if got := s.Text(); got != want {
		t.Errorf("got %s\nwant %s", got, want)
	}
	s.Note = ""
	plain := strings.Replace(want, "  no loss counted\n", "", 1)
	if got := working.Text([]working.Step{s, s}); got != plain+plain {
		t.Errorf("got %s", got)
	}
	if got := working.Text(nil); got != "" {
		t.Errorf("no steps: %q", got)
	}
	if c := working.Constant("F", "Faraday constant", 96485.33212331, "C/mol"); c.Value != "96485.33212 C/mol" ||
		c.SI != 96485.33212331 {
		t.Errorf("%+v", c)
	}
	if n := working.Number("z", "electrons", 3); n.Value != "3" {
		t.Errorf("%+v", n)
	}
	b, err := json.Marshal(s.Terms[0])
	if err != nil || string(b) != `{"symbol":"I","meaning":"current","value":"4 A","si":4}` {
		t.Errorf("%s %v", b, err)
	}
}

// FuzzRecompute: whatever the formula, there is an answer or an error that
// says why, never a panic, never a value that is not finite.
func FuzzRecompute(f *testing.F) {
	for _, s := range []string{"y = a+b·c", "y = (a^-b)²/√c", "y = min(a,b)−max(1.5,c)³", "y = -a^b^c", "= 1/(1/o)",
		"y=((((((a", "y = a²³", "y=√√√a", "ε = 1/b = a/(b·c) = η_c", "y = ln(exp(a))", "y = a\x00", "y = \xff"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, formula string) {
		s := working.Step{Formula: formula, Terms: letters}
		v, err := s.Recompute()
		if err == nil && v-v != 0 {
			t.Errorf("%q gives %v without an error", formula, v)
		}
		if err != nil && (!errors.Is(err, working.ErrFormula) || v != 0) {
			t.Errorf("%q gives %v with %v", formula, v, err)
		}
		if again, _ := s.Recompute(); again != v {
			t.Errorf("%q gives %v, then %v", formula, v, again)
		}
	})
}

// TestPropertyStepsStayInTheirLines: words from outside in a step move no cursor and
// make no line of their own.
func TestPropertyStepsStayInTheirLines(t *testing.T) {
	const hostile = "a\nb\x1b[2K\r\u202e"
	term := working.Term{Symbol: hostile, Meaning: hostile, Value: hostile}
	text := working.Text([]working.Step{{Formula: hostile, Terms: []working.Term{term}, Result: term, Source: hostile,
		Note: hostile}})
	if n := strings.Count(text, "\n"); n != 4 || units.Printable(text) != strings.ReplaceAll(text, "\n", `\n`) {
		t.Errorf("%d lines: %q", n, text)
	}
}
