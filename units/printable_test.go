package units_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"example.com/laydown/units"
)

// TestPropertyPrintable: what could move the cursor, break a line or turn the
// direction of text is written as an escape, everything else stays.
func TestPropertyPrintable(t *testing.T) {
	for text, want := range map[string]string{
		"":                                    "",
		"6 Zeiger, µ-fein, 25 µin, № 4":       "6 Zeiger, µ-fein, 25 µin, № 4",
		`C:\shop\gold.jsonl`:                  `C:\shop\gold.jsonl`,
		"a\x1b[2Kb":                           `a\x1b[2Kb`,
		"a\r  12  load":                       `a\r  12  load`,
		"a\b\b\bb\a\x00\x7f":                  `a\b\b\bb\a\x00\x7f`,
		"two\nlines\tand a tab":               `two\nlines\tand a tab`,
		"C1 \u009b2K":                         `C1 \u009b2K`,
		"8.00 \u202eL/g 00.8\u202c":           `8.00 \u202eL/g 00.8\u202c`,
		"\u2066x\u2069\u200e\u061c":           `\u2066x\u2069\u200e\u061c`,
		"a\u2028b\u2029c":                     `a\u2028b\u2029c`,
		"Au\u200b\ufeff\u00ad\U000e0041":      `Au\u200b\ufeff\u00ad\U000e0041`,
		"\xff\xc3":                            `\xff\xc3`,
		"\ufffd":                              "\ufffd",
		"\ue000":                              `\ue000`,
		"می\u200cخواهم 👩\u200d🔧":              "می\u200cخواهم 👩\u200d🔧",
		"narrow\u202fand\u00a0fixed\u2009gap": "narrow\u202fand\u00a0fixed\u2009gap",
	} {
		got := units.Printable(text)
		if got != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
		if err := units.CheckPrintable("note", text); (err == nil) != (got == text) {
			t.Errorf("%q: %v", text, err)
		}
		if units.Printable(got) != got {
			t.Errorf("%q: not the same when shown twice", text)
		}
	}
	for r := rune(0); r <= unicode.MaxRune; r++ {
		text := string(r)
		got := units.Printable(text)
		if !utf8.ValidString(got) || strings.ContainsFunc(got, func(r rune) bool {
			return unicode.IsControl(r) || unicode.In(r, unicode.Bidi_Control, unicode.Zl, unicode.Zp)
		}) {
			t.Fatalf("%U: %q", r, got)
		}
	}
	for text, want := range map[string]string{"a\x1bb": `with \x1b (U+001B), a line break or other control character`,
		"\u202e": `with \u202e (U+202E), a character that does not show`, "a\xff": "byte ff, which is no UTF-8"} {
		err := units.CheckPrintable("note", text)
		var v *units.ValueError
		if !errors.As(err, &v) || v.Field != "note" || !errors.Is(err, units.ErrSyntax) ||
			!strings.Contains(err.Error(), want) || units.Printable(err.Error()) != err.Error() {
			t.Errorf("%q: %v, want %s", text, err, want)
		}
	}
}

// TestPropertyErrorsShow: the errors of this package are one line, whatever they name.
func TestPropertyErrorsShow(t *testing.T) {
	const hostile = "a\x1b[2K\r\u202eb\n\u2028\x9b"
	for _, err := range []error{&units.ValueError{Field: hostile, Value: hostile, Need: hostile, Err: units.ErrSyntax},
		&units.RangeError{Field: hostile, Value: hostile, Low: "1", High: "2", Source: hostile},
		&units.ParseError{Text: hostile, Reason: hostile, Accepted: []string{hostile}, Err: units.ErrSyntax},
		fmt.Errorf("file: %w", units.Positive(hostile, units.Length(-1)))} {
		if s := err.Error(); units.Printable(s) != s || !strings.Contains(s, `\x1b[2K\r\u202eb\n\u2028`) {
			t.Errorf("%q", s)
		}
	}
}

func ExamplePrintable() {
	fmt.Println(units.Printable("rack 4\r  12  load  0 A·min\x1b[K"))
	// Output: rack 4\r  12  load  0 A·min\x1b[K
}

func ExampleCheckPrintable() {
	fmt.Println(units.CheckPrintable("note", "6 bezels"))
	fmt.Println(units.CheckPrintable("note", "6 bezels\r"))
	// Output:
	// <nil>
	// note with \r (U+000D), a line break or other control character: not understood; need plain text in one line; type it anew instead of pasting it
}
