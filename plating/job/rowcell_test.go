package job

import "testing"

// TestPropertySpreadsheetCells: what a spreadsheet would run gets an apostrophe, numbers and plain
// texts stay, and every text reads back.
func TestPropertySpreadsheetCells(t *testing.T) {
	for text, want := range map[string]string{
		"": "", "hand": "hand", "'": "'", "'tis": "'tis", "a=1": "a=1", "3-4": "3-4", "µ": "µ",
		"7": "7", "-7.45": "-7.45", "+12": "+12", "-1e-3": "-1e-3", "-.5": "-.5", "-7,45": "-7,45", "1E+05": "1E+05",
		"=1": "'=1", "+49 170": "'+49 170", "-1+2": "'-1+2", "--1": "'--1", "-": "'-", "-1e": "'-1e", "@x": "'@x",
		"-Inf": "'-Inf",
		"\tx":  "'\tx", "\rx": "'\rx", "\nx": "'\nx", " =1": "' =1", "\u00a0=1": "'\u00a0=1", "\u200b=1": "'\u200b=1",
		"\ufeff=1": "'\ufeff=1", "\x00=1": "'\x00=1", "＝1": "'＝1", "＋1": "'＋1", "－1": "'－1", "＠x": "'＠x", "'=1": "''=1",
		"''=1": "'''=1", "-1.2.3": "'-1.2.3", "+": "'+", "-e5": "'-e5", "+1=2": "'+1=2",
	} {
		if got := spreadsheetCell(text); got != want {
			t.Errorf("%q is written %q, want %q", text, got, want)
		}
		if got := spreadsheetText(spreadsheetCell(text)); got != text {
			t.Errorf("%q reads back as %q", text, got)
		}
	}
}

func FuzzSpreadsheetCell(f *testing.F) {
	for _, s := range []string{"=1", "'=1", "-7.45", "'", "''@", "\t", "a"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		if got := spreadsheetText(spreadsheetCell(text)); got != text {
			t.Errorf("%q reads back as %q", text, got)
		}
	})
}
