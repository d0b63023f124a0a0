package units

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// Printable returns text from outside (a name, a note, the name of a file) as it
// may be shown in one line of a terminal, a page or a file. Each character that
// does not show, or that moves what stands around it, is written as an escape of Go:
//
//	\n \r \t \b \x1b    line breaks, tabs, backspace and other controls
//	\u2028 \u2029       line and paragraph separators
//	\u202e \u2066       marks that turn the direction of text
//	\u200b \ufeff       characters without width, private and unassigned ones
//	\xff                bytes that are no UTF-8
//
// Everything else stays, a backslash too: this is for the eye, and cannot be read
// back without doubt. The two joiners U+200C and U+200D stay: some scripts need them.
func Printable(text string) string {
	if unprintable(text) < 0 {
		return text
	}
	var b strings.Builder
	for i := 0; i < len(text); {
		r, n := utf8.DecodeRuneInString(text[i:])
		switch {
		case r == utf8.RuneError && n == 1:
			fmt.Fprintf(&b, `\x%02x`, text[i])
		case shows(r):
			b.WriteRune(r)
		default:
			b.WriteString(escape(r))
		}
		i += n
	}
	return b.String()
}

// CheckPrintable returns a [*ValueError] for field when the text holds a character
// that [Printable] would write as an escape: such text is refused where it comes
// in, so that no line of a book or sheet can be forged with it.
func CheckPrintable(field, text string) error {
	i := unprintable(text)
	if i < 0 {
		return nil
	}
	r, n := utf8.DecodeRuneInString(text[i:])
	if r == utf8.RuneError && n == 1 {
		return &ValueError{Field: field, Value: fmt.Sprintf("with the byte %02x, which is no UTF-8", text[i]),
			Need: "plain text in UTF-8", Err: ErrSyntax}
	}
	what := "line break or other control character"
	if !unicode.IsControl(r) && r != '\u2028' && r != '\u2029' {
		what = "character that does not show"
	}
	return &ValueError{Field: field, Value: fmt.Sprintf("with %s (%U), a %s", escape(r), r, what),
		Need: "plain text in one line; type it anew instead of pasting it", Err: ErrSyntax}
}

// unprintable returns where the first character stands that is not shown, or -1.
func unprintable(text string) int {
	for i, r := range text {
		if !shows(r) {
			return i
		}
		if r == utf8.RuneError {
			if _, n := utf8.DecodeRuneInString(text[i:]); n == 1 {
				return i
			}
		}
	}
	return -1
}

// shows reports whether a character shows in its place and leaves the others in theirs.
func shows(r rune) bool { return unicode.IsGraphic(r) || r == '\u200c' || r == '\u200d' }

// escape writes a character as in a Go string.
func escape(r rune) string {
	q := strconv.QuoteRuneToASCII(r)
	return q[1 : len(q)-1]
}
