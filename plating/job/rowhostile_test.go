package job

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf8"

	"example.com/laydown/units"
)

// TestHostileCells: control characters of a cell, a header or an error are written as
// escapes; line breaks, tabs, other scripts and other encodings pass as they are.
func TestHostileCells(t *testing.T) {
	const hostile = "x\x1b[2K\r1,2,3\b\u202e\u2028\u009b"
	const shown = `x\x1b[2K\r1,2,3\b\u202e\u2028\u009b`
	columns := strings.Join(neededColumns, ",")
	quoted := `"` + hostile + `"`
	for name, c := range map[string]struct{ text, want string }{
		"part":             {columns + "\n" + quoted + ",1,10,Au,0.35,0.5,1,0.6,80\n", shown},
		"passed through":   {columns + ",note\nbezel,1,10,Au,0.35,0.5,1,0.6,80," + quoted + "\n", shown},
		"header":           {columns + "," + quoted + "\nbezel,1,10,Au,0.35,0.5,1,0.6,80,a\n", shown},
		"number":           {columns + "\nbezel,1," + quoted + ",Au,0.35,0.5,1,0.6,80\n", `area_cm2 ""x\x1b[2K\r1,2,3`},
		"metal":            {columns + "\nbezel,1,10," + quoted + ",0.35,0.5,1,0.6,80\n", `\x1b[2K\r1,2,3`},
		"header lacks":     {"part," + quoted + "\n", "the header lacks"},
		"header twice":     {columns + "," + quoted + "," + quoted + "\n", "stands twice"},
		"short row":        {columns + "\n" + quoted + "\n", "the row has 1 cells"},
		"quote in between": {columns + "\n" + hostile + `"x` + "\n", `\x1b[2K`},
	} {
		var out, bad bytes.Buffer
		runRows(strings.NewReader(c.text), &out, &bad)
		said := out.String() + bad.String()
		for _, line := range strings.Split(said, "\n") {
			if units.Printable(line) != line {
				t.Errorf("%s: %q", name, line)
			}
		}
		if !strings.Contains(said, c.want) {
			t.Errorf("%s: %q, want %q", name, said, c.want)
		}
	}
	for _, cell := range []string{"two\nlines", "two\r\nlines", "a\ttab", "Zifferblätter", "Zifferbl\xe4tter", "文字盤",
		`C:\shop`} {
		if got := passed(cell); got != cell {
			t.Errorf("%q becomes %q", cell, got)
		}
		_, rows, _ := rowTable(t, columns+",note\nbezel,1,10,Au,0.35,0.5,1,0.6,80,\""+cell+"\"\n")
		if len(rows) != 1 || utf8.ValidString(cell) && rows[0]["note"] != strings.ReplaceAll(cell, "\r\n", "\n") {
			t.Errorf("%q passes as %+v", cell, rows)
		}
	}
}
