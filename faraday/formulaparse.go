package faraday

import (
	"fmt"
	"strconv"
	"strings"
	"unicode"
)

const (
	maxFormula      = 200  // characters
	maxFormulaDepth = 8    // brackets in brackets
	maxFormulaCount = 9999 // atoms, groups or waters at one place
	maxDecimals     = 6    // behind the point of a multiplier
)

// ParseFormula reads the formula of a neutral salt: KAu(CN)2, NiSO4·6H2O,
// K2[Cu(CN)3], CaSO4·0.5H2O.
//
// It takes element symbols with their capitals, plain or lowered digits for
// counts, parentheses and square brackets up to eight deep. A dot (· . * •)
// separates water of crystallisation and other parts; the number behind it may
// be whole, a fraction or a decimal (5, 8/3, 0.5). Counts before a dot are
// whole, so that in CaSO4.0.5H2O the first point is the separator. Spaces
// around dots and behind their number are ignored. Where there is a dot, the
// first part may have a number too: 2NiCO3·3Ni(OH)2·4H2O.
//
// Capitals decide: Co is cobalt and CO carbon with oxygen, so that COSO4 is read
// without complaint. Asking for the metal finds it out: see [MetalContent].
//
// Errors: a [*FormulaError] with the place: for an unknown element, an
// unbalanced or empty bracket, a count of 0, with a leading zero or over 9999,
// a charge, an end behind a dot, brackets too deep or more than 200 characters.
//
// Source: [IUPAC2021] (symbols); [Definition].
func ParseFormula(text string) (Formula, error) {
	p := formulaParser{}
	n := 0
	for i := range text {
		if n++; n > maxFormula {
			p.text = text[:i]
			return Formula{}, p.fail(maxFormula, "too long; need at most %d characters", maxFormula)
		}
	}
	p.text, p.runes = text, []rune(text)
	f, err := p.formula()
	if err != nil {
		return Formula{}, err
	}
	f.text = p.out.String()
	for _, part := range f.parts {
		f.atoms = countAtoms(f.atoms, part.nodes, part.multiplier)
	}
	return f, nil
}

// countAtoms adds the atoms of nodes, each times factor, to list.
func countAtoms(list []formulaAtom, nodes []formulaNode, factor float64) []formulaAtom {
next:
	for _, node := range nodes {
		n := factor * float64(node.count)
		if node.element < 0 {
			list = countAtoms(list, node.group, n)
			continue
		}
		for i := range list {
			if list[i].element == node.element {
				list[i].count += n
				continue next
			}
		}
		list = append(list, formulaAtom{element: node.element, count: n})
	}
	return list
}

// A formulaParser reads runes from left to right and writes the normalised
// text as it goes.
type formulaParser struct {
	text  string
	runes []rune
	pos   int
	out   strings.Builder
}

func (p *formulaParser) fail(offset int, reason string, args ...any) error {
	return &FormulaError{Text: strings.ToValidUTF8(p.text, "\uFFFD"), Offset: offset, Reason: fmt.Sprintf(reason, args...)}
}

// peek returns the next rune, 0 at the end (and for a NUL in the text, which
// nothing accepts either).
func (p *formulaParser) peek() rune { return p.at(p.pos) }

func (p *formulaParser) at(i int) rune {
	if i < 0 || i >= len(p.runes) {
		return 0
	}
	return p.runes[i]
}

func (p *formulaParser) end() bool { return p.pos >= len(p.runes) }

func (p *formulaParser) space() {
	for unicode.IsSpace(p.peek()) {
		p.pos++
	}
}

func isFormulaDot(r rune) bool { return r != 0 && strings.ContainsRune("·.*•⋅∙", r) }

// formulaDigit returns the value of a plain or lowered digit, -1 for anything else.
func formulaDigit(r rune) int {
	switch {
	case r >= '0' && r <= '9':
		return int(r - '0')
	case r >= '₀' && r <= '₉':
		return int(r - '₀')
	}
	return -1
}

func (p *formulaParser) formula() (Formula, error) {
	var f Formula
	p.space()
	start := p.pos
	for {
		part, err := p.part(len(f.parts) > 0)
		if err != nil {
			return f, err
		}
		f.parts = append(f.parts, part)
		p.space()
		if p.end() {
			break
		}
		// part stops before a dot and at the end only.
		p.pos++
		p.out.WriteRune('·')
		p.space()
	}
	if len(f.parts) == 1 && formulaDigit(p.at(start)) >= 0 {
		return f, p.fail(start, "a number before the formula; write one unit of the salt, as NaCl for 2NaCl")
	}
	return f, nil
}

// part reads what stands between two dots.
func (p *formulaParser) part(afterDot bool) (formulaPart, error) {
	part := formulaPart{multiplier: 1}
	var err error
	if formulaDigit(p.peek()) >= 0 {
		if part.multiplier, err = p.multiplier(); err != nil {
			return part, err
		}
		p.space()
		if p.end() || isFormulaDot(p.peek()) {
			return part, p.fail(p.pos, "a number alone; need a formula behind it, as in 5H2O")
		}
	}
	if p.end() || isFormulaDot(p.peek()) {
		switch {
		case afterDot:
			return part, p.fail(p.pos, "nothing behind the dot; need water or another part, as in ·5H2O")
		case p.end():
			return part, p.fail(p.pos, "no formula; need one such as KAu(CN)2")
		}
		return part, p.fail(p.pos, "nothing before the dot; need a formula there")
	}
	part.nodes, err = p.nodes(0, 0)
	return part, err
}

// multiplier reads the number of a part: whole, decimal or a fraction.
func (p *formulaParser) multiplier() (float64, error) {
	start := p.pos
	whole, err := p.digits()
	if err != nil {
		return 0, err
	}
	switch {
	case p.peek() == '/':
		p.pos++
		p.out.WriteByte('/')
		if formulaDigit(p.peek()) < 0 {
			return 0, p.fail(p.pos, "a fraction without a denominator; need one as 8/3")
		}
		den, err := p.count()
		if err != nil {
			return 0, err
		}
		if whole == 0 {
			return 0, p.fail(start, "a fraction of zero; leave the part out")
		}
		return float64(whole) / float64(den), nil
	case p.peek() == '.' && formulaDigit(p.at(p.pos+1)) >= 0:
		p.pos++
		decimals := fmt.Sprintf("%d.", whole)
		p.out.WriteByte('.')
		for ; formulaDigit(p.peek()) >= 0; p.pos++ {
			d := formulaDigit(p.peek())
			p.out.WriteByte(byte('0' + d))
			decimals += strconv.Itoa(d)
		}
		if len(decimals)-strings.IndexByte(decimals, '.') > maxDecimals+1 {
			return 0, p.fail(start, "more than %d decimals; write fewer, or a fraction such as 8/3", maxDecimals)
		}
		v, err := strconv.ParseFloat(decimals, 64)
		if err != nil || v == 0 {
			return 0, p.fail(start, "a number of zero; leave the part out")
		}
		return v, nil
	}
	if p.peek() == ',' {
		return 0, p.fail(p.pos, "%s", p.notAnElement())
	}
	if whole == 0 {
		return 0, p.fail(start, "a number of zero; leave the part out, or write a decimal such as 0.5")
	}
	return float64(whole), nil
}

// nodes reads elements and groups up to a dot, a closing bracket or the end.
// closing is the bracket that ends them, 0 outside of brackets.
func (p *formulaParser) nodes(depth int, closing rune) ([]formulaNode, error) {
	var list []formulaNode
	for {
		r := p.peek()
		node := formulaNode{element: -1, count: 1}
		var err error
		switch {
		case p.end():
			return list, nil
		case r == ')' || r == ']':
			if closing == 0 {
				return nil, p.fail(p.pos, "%q closes nothing; leave it out or open a bracket before it", r)
			}
			return list, nil
		case isFormulaDot(r):
			if closing != 0 {
				return nil, p.fail(p.pos, "a dot inside brackets; need %q before it", closing)
			}
			return list, nil
		case r == '(' || r == '[':
			node.group, err = p.group(depth, r)
		default:
			if unicode.IsSpace(r) {
				start := p.pos
				p.space()
				if p.end() || isFormulaDot(p.peek()) {
					return list, nil
				}
				return nil, p.fail(start, "a space inside the formula; leave it out")
			}
			node.element, err = p.element()
		}
		if err != nil {
			return nil, err
		}
		if formulaDigit(p.peek()) >= 0 {
			if node.count, err = p.count(); err != nil {
				return nil, err
			}
			if node.count == 1 && p.peek() == '.' && formulaDigit(p.at(p.pos+1)) >= 0 {
				return nil, p.fail(p.pos, "a count with decimals; counts are whole, and 1 is left out before a dot")
			}
		}
		list = append(list, node)
	}
}

// group reads a bracket with what it holds.
func (p *formulaParser) group(depth int, open rune) ([]formulaNode, error) {
	start := p.pos
	if depth >= maxFormulaDepth {
		return nil, p.fail(start, "brackets more than %d deep", maxFormulaDepth)
	}
	closing := map[rune]rune{'(': ')', '[': ']'}[open]
	p.pos++
	p.out.WriteRune(open)
	list, err := p.nodes(depth+1, closing)
	if err != nil {
		return nil, err
	}
	switch {
	case p.end():
		return nil, p.fail(start, "%q is not closed; need %q", open, closing)
	case p.peek() != closing:
		return nil, p.fail(p.pos, "%q where %q is open; need %q", p.peek(), open, closing)
	case len(list) == 0:
		return nil, p.fail(start, "empty brackets; put a group in them or leave them out")
	}
	p.pos++
	p.out.WriteRune(closing)
	return list, nil
}

// element reads a symbol and returns its index in elementTable.
func (p *formulaParser) element() (int, error) {
	r, start := p.peek(), p.pos
	if r < 'A' || r > 'Z' {
		return 0, p.fail(start, "%s", p.notAnElement())
	}
	symbol := string(r)
	if next := p.at(start + 1); next >= 'a' && next <= 'z' {
		symbol += string(next)
	}
	i := elementIndex(symbol)
	if i < 0 {
		return 0, p.fail(start, "%s", p.unknownElement(symbol))
	}
	p.pos += len(symbol)
	p.out.WriteString(symbol)
	return i, nil
}

// elementIndex finds a symbol in elementTable, -1 when it is not there.
func elementIndex(symbol string) int {
	for i := range elementTable {
		if elementTable[i].Symbol == symbol {
			return i
		}
	}
	return -1
}

// count reads a whole number of atoms, groups or parts of a fraction.
func (p *formulaParser) count() (int, error) {
	start := p.pos
	n, err := p.digits()
	if err == nil && n == 0 {
		return 0, p.fail(start, "a count of 0; leave the element out, and write decimals only behind a dot")
	}
	return n, err
}

// digits reads a whole number without leading zeros.
func (p *formulaParser) digits() (int, error) {
	start, n := p.pos, 0
	for ; formulaDigit(p.peek()) >= 0; p.pos++ {
		if n = 10*n + formulaDigit(p.peek()); n > maxFormulaCount {
			return 0, p.fail(start, "a number over %d", maxFormulaCount)
		}
		p.out.WriteByte(byte('0' + formulaDigit(p.peek())))
	}
	if formulaDigit(p.at(start)) == 0 && p.pos-start > 1 {
		return 0, p.fail(start, "a number with a leading zero; leave the zero out")
	}
	return n, nil
}
