package job

import (
	"strings"
	"unicode"
)

// spreadsheetCell writes a text as the cell of a table that a spreadsheet may open. A text that
// a spreadsheet would take as a formula gets an apostrophe in front, which it shows and
// does not run; a number, such as -7.45, stays as it is. [spreadsheetText] reads it back.
//
// A formula begins with =, +, - or @, also in their full-width forms, behind blanks
// and characters that do not show, or with a tab, carriage return or line feed.
func spreadsheetCell(text string) string {
	if runs(strings.TrimLeft(text, "'")) {
		return "'" + text
	}
	return text
}

// spreadsheetText reads a cell that [spreadsheetCell] wrote.
func spreadsheetText(cell string) string {
	if strings.HasPrefix(cell, "'") && runs(strings.TrimLeft(cell, "'")) {
		return cell[1:]
	}
	return cell
}

// runs reports whether a spreadsheet may take a text as a formula.
func runs(text string) bool {
	if text == "" || plainNumber(text) {
		return false
	}
	if strings.IndexByte("\t\r\n", text[0]) >= 0 {
		return true
	}
	shows := strings.TrimLeftFunc(text, func(r rune) bool {
		return unicode.IsSpace(r) || unicode.IsControl(r) || unicode.Is(unicode.Cf, r)
	})
	for _, sign := range []string{"=", "+", "-", "@", "＝", "＋", "－", "＠", "﹦", "﹢", "﹣", "﹫", "−"} {
		if strings.HasPrefix(shows, sign) {
			return true
		}
	}
	return false
}

// plainNumber reports whether a text is digits with at most a sign, a point or comma, and
// an exponent.
func plainNumber(text string) bool {
	s := strings.TrimLeft(text, "+-")
	if len(text)-len(s) > 1 {
		return false
	}
	mantissa, exponent := s, ""
	if i := strings.IndexAny(s, "eE"); i >= 0 {
		mantissa, exponent = s[:i], s[i+1:]
		if e := strings.TrimLeft(exponent, "+-"); len(exponent)-len(e) > 1 || e == "" ||
			strings.Trim(e, "0123456789") != "" {
			return false
		}
	}
	whole, part, _ := strings.Cut(strings.Replace(mantissa, ",", ".", 1), ".")
	return whole+part != "" && strings.Trim(whole+part, "0123456789") == ""
}
