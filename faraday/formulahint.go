package faraday

import (
	"fmt"
	"strings"
)

// unknownElement words the error for a capital that begins no symbol.
func (p *formulaParser) unknownElement(symbol string) string {
	hint := ""
	if before := p.at(p.pos - 1); before >= 'A' && before <= 'Z' { // NACL
		hint = string(before) + strings.ToLower(symbol[:1])
	}
	if hint == "" || elementIndex(hint) < 0 {
		hint = symbol[:1] + strings.ToLower(string(p.at(p.pos+1))) // AU
	}
	if elementIndex(hint) < 0 { // Kcl
		hint = symbol[:1]
	}
	if elementIndex(hint) >= 0 {
		return fmt.Sprintf("%s is no element; did you mean %s? A symbol is a capital, some with one small letter behind it",
			symbol, hint)
	}
	return fmt.Sprintf("%s is no element with a standard atomic weight; need a symbol such as Au, Ni, K", symbol)
}

// notAnElement words the error for a character that begins no symbol.
func (p *formulaParser) notAnElement() string {
	r := p.peek()
	switch {
	case strings.ContainsRune("+-\u2212\u2013⁺⁻", r):
		return fmt.Sprintf("%q is a charge; write the neutral salt, as KAu(CN)2 for the ion [Au(CN)2]-", r)
	case strings.ContainsRune("⁰¹²³⁴⁵⁶⁷⁸⁹", r):
		return fmt.Sprintf("%q is raised; write counts plain or lowered, and no charges", r)
	case strings.ContainsRune("½⅓⅔¼¾", r):
		return fmt.Sprintf("%q is one character; write the number as 0.5 or 1/2", r)
	case formulaDigit(r) >= 0:
		return "a count needs an element or a bracket before it"
	case r == ',':
		return "a comma; write decimals with a point, as 0.5"
	case r >= 'a' && r <= 'z':
		for _, n := range []int{2, 1} {
			low := string(p.runes[p.pos:min(p.pos+n, len(p.runes))])
			hint := strings.ToUpper(low[:1]) + strings.ToLower(low[1:])
			if elementIndex(hint) >= 0 {
				return fmt.Sprintf("a small %q begins no element; did you mean %s? A symbol begins with a capital", r, hint)
			}
		}
		return fmt.Sprintf("a small %q begins no element; a symbol begins with a capital, as Au", r)
	}
	return fmt.Sprintf("unexpected %q; need an element such as Au, a bracket or a dot", r)
}
