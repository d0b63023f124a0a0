package working

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/laydown/units"
)

// ErrFormula is wrapped by every error of [Step.Recompute].
var ErrFormula = errors.New("formula cannot be computed")

// Recompute evaluates the right side of the formula with the SI values of the
// terms. It knows + - · * / ^ ² ³ √ and parentheses, π, the functions sqrt,
// sin, cos, asin, ln, exp of one number and min, max of two, and plain
// decimals; a symbol is a run of letters, digits, subscript digits, _ and
// primes. A formula may show several equal forms, as in ε = 1/Σ = m/Q: the
// part after the last equals sign counts.
//
// √ binds first, to what follows it directly; then powers, from the right
// (2^3^2 is 2^9, -2^2 is -4); then products and quotients, from the left (a/b·c
// is (a/b)·c); then sums. Nothing is multiplied without a sign: 2a is refused,
// and so is a raised digit with another power behind it, as in 2²³.
//
// Accuracy: each operation rounds to 1e-16 of its value, and a difference of near numbers
// loses what they have in common. The values put in are the SI ones of the terms, which
// have more digits than are printed: so the printed result agrees in the digits it shows,
// and a reader who puts in the printed values may be off in the last.
//
// Errors: one that wraps [ErrFormula] for a formula it cannot read, a symbol
// without a term or with two different ones, a term or a step on the way that
// is not finite, as 1/(1/0), and for more than 4096 bytes or 50 levels.
func (s Step) Recompute() (float64, error) {
	_, right, found := strings.Cut(s.Formula, "=")
	if !found {
		return 0, fmt.Errorf("%w: %q has no equals sign", ErrFormula, units.Clip(s.Formula))
	}
	if i := strings.LastIndex(right, "="); i >= 0 {
		right = right[i+1:]
	}
	if len(right) > maxFormula {
		return 0, fmt.Errorf("%w: longer than %d bytes", ErrFormula, maxFormula)
	}
	e := evaluator{text: right, terms: s.Terms}
	v, err := e.sum()
	if err == nil && e.peek() != end {
		err = fmt.Errorf("unexpected %q", e.peek())
	}
	if err != nil {
		return 0, fmt.Errorf("%w: %s: %v", ErrFormula, units.Clip(s.Formula), err)
	}
	return v, nil
}

const (
	maxFormula = 4096 // bytes
	maxDepth   = 50   // parentheses, signs, roots and powers inside each other
	end        = -1   // what peek returns behind the last rune
)

// An evaluator reads text from the left, one method a level of precedence.
//
//	sum     = product { (+ | -) product }
//	product = power { (· | * | /) power }
//	power   = factor { ² | ³ | ^ power }
//	factor  = number | symbol | name ( sum {, sum} ) | ( sum ) | - power | √ factor
//
// Each method reads the longest text that its rule allows and returns its value; what is
// left stays in text. There is no tree: a formula is computed once.
type evaluator struct {
	text  string
	terms []Term
	depth int
}

// enter goes one level deeper; the caller leaves it by e.depth--.
//
// The limit keeps a text of a thousand parentheses from the end of the stack.
func (e *evaluator) enter() error {
	if e.depth++; e.depth > maxDepth {
		return errors.New("nested too deep")
	}
	return nil
}

// finite passes v on, or says that a step on the way has no finite value.
//
// A result may be finite again after an infinity, as 1/(1/0) is 0: such a way shows
// nothing.
func finite(v float64, err error) (float64, error) {
	if err == nil && v-v != 0 {
		err = fmt.Errorf("a step on the way gives %v", v)
	}
	return v, err
}

// peek returns the next rune that is not a space, or end.
func (e *evaluator) peek() rune {
	e.text = strings.TrimLeft(e.text, " \t\n")
	if e.text == "" {
		return end
	}
	r, _ := utf8.DecodeRuneInString(e.text)
	return r
}

// next takes the rune that peek showed.
func (e *evaluator) next() { _, n := utf8.DecodeRuneInString(e.text); e.text = e.text[n:] }

// sum adds and takes away products, from the left. The minus sign of typography (U+2212) is
// one too.
func (e *evaluator) sum() (float64, error) {
	defer func() { e.depth-- }()
	if err := e.enter(); err != nil {
		return 0, err
	}
	v, err := e.product()
	for err == nil {
		op := e.peek()
		if op != '+' && op != '-' && op != '\u2212' {
			break
		}
		e.next()
		var w float64
		if w, err = e.product(); op == '+' {
			v += w
		} else {
			v -= w
		}
	}
	return finite(v, err)
}

// product multiplies and divides, from the left: a/b·c is (a/b)·c, as the steps of this
// library write it.
func (e *evaluator) product() (float64, error) {
	v, err := e.power()
	for err == nil {
		op := e.peek()
		if op != '·' && op != '*' && op != '/' {
			break
		}
		e.next()
		var w float64
		if w, err = e.power(); op == '/' {
			v /= w
		} else {
			v *= w
		}
	}
	return v, err
}

// power raises a factor: ² and ³ directly behind it, ^ with the power to its right first.
// Two raised digits in a row are refused, since 2²³ may mean 2^23 or (2²)³.
func (e *evaluator) power() (float64, error) {
	v, err := e.factor()
	for err == nil {
		switch e.peek() {
		case '²', '³':
			n := 2.0
			if e.peek() == '³' {
				n = 3
			}
			e.next()
			if r := e.peek(); r == '²' || r == '³' || r == '^' {
				return 0, errors.New("two powers in a row need parentheses")
			}
			v, err = finite(math.Pow(v, n), nil)
		case '^':
			e.next()
			if err = e.enter(); err != nil {
				return 0, err
			}
			var w float64
			if w, err = e.power(); err == nil { // the exponent takes its own powers first
				v, err = finite(math.Pow(v, w), nil)
			}
			e.depth--
		default:
			return v, nil
		}
	}
	return 0, err
}

// factor reads what binds closest. A sign goes before the whole power, so that -2^2 is -4;
// a root takes the one factor behind it, so that √a·b is (√a)·b. Numbers have a decimal
// point and no exponent: 1e3 is refused.
func (e *evaluator) factor() (float64, error) {
	switch r := e.peek(); {
	case r == '(':
		e.next()
		v, err := e.sum()
		if err == nil && e.peek() != ')' {
			err = errors.New("a parenthesis is not closed")
		}
		if err == nil {
			e.next()
		}
		return v, err
	case r == '-' || r == '\u2212':
		if err := e.enter(); err != nil {
			return 0, err
		}
		e.next()
		v, err := e.power()
		e.depth--
		return -v, err
	case r >= '0' && r <= '9':
		n := strings.IndexFunc(e.text, func(r rune) bool { return (r < '0' || r > '9') && r != '.' })
		if n < 0 {
			n = len(e.text)
		}
		v, err := strconv.ParseFloat(e.text[:n], 64)
		if err != nil {
			return 0, fmt.Errorf("%q is not a number", units.Clip(e.text[:n]))
		}
		e.text = e.text[n:]
		return v, nil
	case r == '√':
		if err := e.enter(); err != nil {
			return 0, err
		}
		e.next()
		v, err := e.factor()
		e.depth--
		return finite(math.Sqrt(v), err)
	case unicode.IsLetter(r):
		return e.symbol()
	case r == end:
		return 0, errors.New("it ends too early")
	default:
		return 0, fmt.Errorf("unexpected %q", r)
	}
}

// symbol reads a name and returns the SI value of its term. A term goes before π and before
// a function of that name. A symbol that two terms give different values is refused: the
// printed formula would not tell which.
func (e *evaluator) symbol() (float64, error) {
	n := strings.IndexFunc(e.text, func(r rune) bool {
		return !unicode.IsLetter(r) && !unicode.IsDigit(r) && !strings.ContainsRune("_'′″₀₁₂₃₄₅₆₇₈₉", r)
	})
	if n < 0 {
		n = len(e.text)
	}
	name := e.text[:n]
	e.text = e.text[n:]
	found := false
	var value float64
	for _, t := range e.terms {
		switch {
		case t.Symbol != name:
		case found && t.SI != value:
			return 0, fmt.Errorf("two values for %q", units.Clip(name))
		case t.SI-t.SI != 0:
			return 0, fmt.Errorf("%q is %v", units.Clip(name), t.SI)
		default:
			found, value = true, t.SI
		}
	}
	if found {
		return value, nil
	}
	if name == "π" {
		return math.Pi, nil
	}
	if e.peek() == '(' {
		return e.call(name)
	}
	return 0, fmt.Errorf("no value for %q", units.Clip(name))
}

// call reads the arguments of a function behind its opening parenthesis. Angles are in
// radians, ln is the natural logarithm.
func (e *evaluator) call(name string) (float64, error) {
	e.next()
	var args []float64
	for {
		v, err := e.sum()
		if err != nil {
			return 0, err
		}
		args = append(args, v)
		r := e.peek()
		if r != ',' && r != ')' {
			return 0, errors.New("a parenthesis is not closed")
		}
		e.next()
		if r == ')' {
			break
		}
	}
	if f := oneArgument(name); f != nil && len(args) == 1 {
		return finite(f(args[0]), nil)
	}
	switch {
	case name == "min" && len(args) == 2:
		return math.Min(args[0], args[1]), nil
	case name == "max" && len(args) == 2:
		return math.Max(args[0], args[1]), nil
	}
	return 0, fmt.Errorf("no function %q of %d arguments", units.Clip(name), len(args))
}

// oneArgument returns the function of one number that has the name, or nil. Out of its
// domain a function gives NaN, which finite refuses: sqrt below 0, ln of 0 or less, asin
// beyond 1.
func oneArgument(name string) func(float64) float64 {
	switch name {
	case "sqrt":
		return math.Sqrt
	case "sin":
		return math.Sin
	case "cos":
		return math.Cos
	case "asin":
		return math.Asin
	case "ln":
		return math.Log
	case "exp":
		return math.Exp
	}
	return nil
}
