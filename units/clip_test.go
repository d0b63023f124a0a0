package units_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/laydown/units"
)

// TestPropertyClip: text of up to 40 characters stays, longer text is cut between
// characters, and what comes out is UTF-8.
func TestPropertyClip(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", ""}, {"hand", "hand"}, {strings.Repeat("x", 40), strings.Repeat("x", 40)},
		{strings.Repeat("x", 41), strings.Repeat("x", 40) + "…"}, {strings.Repeat("µ", 41), strings.Repeat("µ", 40) + "…"},
		{strings.Repeat("時", 5000), strings.Repeat("時", 40) + "…"}, {strings.Repeat("🕰", 41), strings.Repeat("🕰", 40) +
			"…"},
		{"a\xffb", "a?b"},
	} {
		if got := units.Clip(c.text); got != c.want {
			t.Errorf("%.50q: %q", c.text, got)
		}
	}
	for n := range 500 { // every length about the one from which not all of it is looked at
		if got := units.Clip(strings.Repeat("x", n)); utf8.RuneCountInString(got) != min(n, 41) {
			t.Errorf("%d letters: %q", n, got)
		}
	}
	for n := range 300 {
		if got := units.Clip(strings.Repeat("xµ時🕰\xff", n)); !utf8.ValidString(got) || utf8.RuneCountInString(got) > 41 {
			t.Errorf("%d: %q", n, got)
		}
	}
}

// TestPropertyErrorsAreShort: no error repeats all of a name from outside.
func TestPropertyErrorsAreShort(t *testing.T) {
	long := strings.Repeat("name ", 2000)
	for _, err := range []error{
		units.Positive(long, units.Length(-1)), units.Missing(long, long),
		&units.ValueError{Field: long, Value: long, Need: long, Err: units.ErrSyntax},
		&units.RangeError{Field: long, Value: long, Low: long, High: long, Source: long},
		&units.ParseError{Text: long, Reason: long, Err: units.ErrSyntax},
	} {
		if n := len(err.Error()); n > 1800 {
			t.Errorf("%T of %d bytes", err, n)
		}
	}
}
