package strictjson_test

import (
	"errors"
	"strings"
	"testing"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

func read(t *testing.T, raw string) (*strictjson.Node, error) {
	t.Helper()
	return strictjson.Read(strings.NewReader(raw), strictjson.Doc{What: "thing", Need: "an object with size"})
}

// TestPropertyRefused: what is no single, plain JSON value is refused with its
// line, in one line.
func TestPropertyRefused(t *testing.T) {
	for raw, want := range map[string]string{
		"":                        "file: empty; need an object with size",
		" \n":                     "file: empty; need an object with size",
		"\xff":                    "file: not UTF-8 text; save the file as UTF-8",
		"{}\n{}":                  "file line 2: more text behind the thing; need one object",
		"{\n\"a\": 1,\n\"a\": 2}": "file line 3, a: given twice; need it once",
		"[":                       "file line 1: ends in the middle; a brace, bracket or quote is not closed",
		"{\n\"a\": \"x\\ny\"}": "file line 2, a: holds a line break or another control character; need plain " +
			"text in one line",
		"{\"a\": \"Au\u200b\"}":            `file line 1, a: is text with \u200b (U+200B), a character that does not show: not understood; need plain text in one line; type it anew instead of pasting it`,
		"{\"a\u202e\": 1, \"a\u202e\": 2}": `file line 1, a\u202e: given twice; need it once`,
		strings.Repeat("[", 14):            "file line 1, [1][1][1][1][1][1][1][1][1][1][1][1][1]: nested deeper than 12",
		strings.Repeat(" ", 1<<20) + "1":   "file: larger than 1048576 bytes",
	} {
		_, err := read(t, raw)
		var e *strictjson.Error
		if !errors.As(err, &e) || err.Error() != want {
			t.Errorf("%.20q: %v, want %s", raw, err, want)
		}
	}
}

// TestPropertyNoReader: nil where a reader belongs is an error, never a panic.
func TestPropertyNoReader(t *testing.T) {
	_, err := strictjson.Read(nil, strictjson.Doc{What: "thing"})
	if !errors.Is(err, units.ErrNotGiven) || !strings.Contains(err.Error(), "gives the thing") {
		t.Error(err)
	}
}
