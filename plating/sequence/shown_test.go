package sequence_test

import (
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// TestPropertyNamesStayInTheirLine: names with control characters, as a caller may
// hand in, make no line of their own on a card or sheet and move no cursor.
func TestPropertyNamesStayInTheirLine(t *testing.T) {
	const hostile = "rinse\n   CAUTION      none\x1b[2K\r\u202e\u2028x"
	card := sequence.Card{Number: 1, Name: hostile, Chemistry: hostile + " bath", Look: []string{hostile}}
	finding := sequence.Finding{Text: hostile, Reason: hostile, Remedy: hostile}
	text := sequence.Sheet(sequence.Piece{Name: hostile}, []sequence.Card{card}, []sequence.Finding{finding}) +
		card.Text() + plating.Note{Text: hostile, Do: hostile, Source: hostile}.Line() + "\n" +
		(&sequence.StopError{Findings: []sequence.Finding{finding}}).Error() + "\n" +
		(&sequence.RefusedError{Field: hostile}).Error() + "\n" + (&sequence.UnsureError{What: hostile}).Error() +
		"\n" +
		(&plating.DangerError{Notes: []plating.Note{{Text: hostile}}}).Error()
	for _, line := range strings.Split(text, "\n") {
		if units.Printable(line) != line || strings.HasPrefix(line, "   CAUTION      none") {
			t.Errorf("%q", line)
		}
	}
	if n := strings.Count(text, `\x1b[2K\r\u202e\u2028`); n < 12 {
		t.Errorf("shown escaped %d times:\n%s", n, text)
	}
}
