package units

import (
	"errors"
	"math"
	"math/big"
	"strconv"
	"strings"
	"unicode"
)

const (
	maxText     = 200 // characters of text that a parser reads
	maxExponent = 400 // largest power of ten in the text of a number
)

// scanNumber splits text at the end of its leading number. The number is a
// plain decimal with an optional exponent; num is "" when there is none.
func scanNumber(text string) (num, rest string) {
	s := text
	i := 0
	if strings.HasPrefix(s, "\u2212") { // a typeset minus sign
		s = "-" + s[len("\u2212"):]
	}
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	digits := 0
	for i < len(s) && isDigit(s[i]) {
		i, digits = i+1, digits+1
	}
	if i < len(s) && s[i] == '.' {
		i++
		for i < len(s) && isDigit(s[i]) {
			i, digits = i+1, digits+1
		}
	}
	if digits == 0 {
		return "", text
	}
	if i < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if j < len(s) && (s[j] == '+' || s[j] == '-') {
			j++
		}
		if j < len(s) && isDigit(s[j]) {
			for j < len(s) && isDigit(s[j]) {
				j++
			}
			i = j
		}
	}
	return s[:i], s[i:]
}

// scanFraction reads the fraction of whole numbers that num and rest start, as
// 1/4 in or 4 1/2 in on an inch rule. A fraction is nil when there is none.
func scanFraction(num, rest string) (fraction *big.Rat, after string, err error) {
	whole := strings.TrimLeft(num, "+-")
	if strings.Trim(whole, "0123456789") != "" {
		return nil, rest, nil // with a point or an exponent
	}
	top, under, mixed := "0", strings.TrimLeftFunc(rest, unicode.IsSpace), false
	if n := digitsOf(under); n > 0 && under != rest {
		top, under, mixed = under[:n], under[n:], true
	} else {
		whole, top, under = "0", whole, rest
	}
	if !strings.HasPrefix(under, "/") || digitsOf(under[1:]) == 0 {
		return nil, rest, nil
	}
	n := digitsOf(under[1:])
	bottom := under[1 : 1+n]
	if strings.Trim(bottom, "0") == "" {
		return nil, rest, errZeroUnder
	}
	fraction = new(big.Rat).SetFrac(decimal(top), decimal(bottom))
	if mixed && (top[0] == '0' || fraction.Cmp(big.NewRat(1, 1)) >= 0) {
		return nil, rest, errNotMixed // perhaps a space between thousands
	}
	fraction.Add(fraction, new(big.Rat).SetInt(decimal(whole)))
	if num[0] == '-' {
		fraction.Neg(fraction)
	}
	return fraction, under[1+n:], nil
}

var (
	errZeroUnder = errors.New("a fraction with zero under the line")
	errNotMixed  = errors.New("a whole number goes before a fraction below one only, as in 4 1/2")
)

// decimal reads digits to base ten, also after a zero.
func decimal(digits string) *big.Int {
	n, _ := new(big.Int).SetString(digits, 10)
	return n
}

func digitsOf(s string) int {
	n := 0
	for n < len(s) && isDigit(s[n]) {
		n++
	}
	return n
}

func isDigit(c byte) bool { return c >= '0' && c <= '9' }

// exact reads a scanned number as a rational. It refuses exponents that would
// make the rational huge.
func exact(num string) (*big.Rat, bool) {
	if i := strings.IndexAny(num, "eE"); i >= 0 {
		e, err := strconv.Atoi(num[i+1:])
		if err != nil || e > maxExponent || e < -maxExponent {
			return nil, false
		}
	}
	return new(big.Rat).SetString(num)
}

// ratio returns the exact factor of a unit, written as a decimal or a quotient of two.
func ratio(factor string) *big.Rat {
	num, den, found := strings.Cut(factor, "/")
	r, _ := new(big.Rat).SetString(num)
	if found {
		d, _ := new(big.Rat).SetString(den)
		r.Quo(r, d)
	}
	return r
}

// offset returns the exact zero point of a unit in its SI unit: not zero for
// Celsius and Fahrenheit temperatures only.
func offset(k QuantityKind, symbol string) *big.Rat {
	if k != KindTemperature {
		return nil
	}
	switch symbol {
	case "°C":
		return big.NewRat(27315, 100)
	case "°F":
		return big.NewRat(45967*5, 900)
	}
	return nil
}

// toSI converts an exact reading in unit u to the nearest float64 in the SI unit.
func toSI(k QuantityKind, u *unit, reading *big.Rat) (float64, bool) {
	r := new(big.Rat).Mul(reading, ratio(u.factor))
	if off := offset(k, u.symbol); off != nil {
		r.Add(r, off)
	}
	return nearest(r)
}

// nearest rounds r to a float64; false when it is too large, or not zero and
// too small to be told from zero.
func nearest(r *big.Rat) (float64, bool) {
	f, _ := r.Float64()
	if math.IsInf(f, 0) || (f == 0 && r.Sign() != 0) {
		return 0, false
	}
	return f, true
}

// fromSI returns the exact reading of v in unit u.
func fromSI(k QuantityKind, u *unit, v float64) *big.Rat {
	r := new(big.Rat).SetFloat64(v)
	if off := offset(k, u.symbol); off != nil {
		r.Sub(r, off)
	}
	return r.Quo(r, ratio(u.factor))
}

// shortest returns the fewest digits that read back to v in unit u, and false
// when 40 digits are not enough, as for a temperature next to absolute zero
// in degrees Celsius.
func shortest(k QuantityKind, u *unit, v float64) (string, bool) {
	if v == 0 && math.Signbit(v) {
		v = 0 // a negative zero is zero
	}
	if zero, _ := toSI(k, u, new(big.Rat)); zero == v {
		return "0", true // also where the unit's zero point is no float64, as 273.15
	}
	r := fromSI(k, u, v)
	for digits := 1; digits <= 40; digits++ {
		s := significant(r, digits)
		back, _ := new(big.Rat).SetString(s)
		if got, ok := toSI(k, u, back); ok && got == v {
			return s, true
		}
	}
	return "", false
}

// significant writes r, which is not zero, with the given number of significant digits, trailing
// zeros cut, in plain notation from 1e-5 to 1e17 and with an exponent outside.
func significant(r *big.Rat, digits int) string {
	f := new(big.Float).SetPrec(512).SetRat(r)
	s := f.Text('e', digits-1)
	mant, exp, _ := strings.Cut(s, "e")
	e, _ := strconv.Atoi(exp)
	if strings.Contains(mant, ".") {
		mant = strings.TrimRight(strings.TrimRight(mant, "0"), ".")
	}
	if e < -5 || e > 17 {
		return mant + "e" + strconv.Itoa(e)
	}
	sign := ""
	if mant[0] == '-' {
		sign, mant = "-", mant[1:]
	}
	d := strings.Replace(mant, ".", "", 1)
	switch {
	case e < 0:
		return sign + "0." + strings.Repeat("0", -e-1) + d
	case len(d) <= e+1:
		return sign + d + strings.Repeat("0", e+1-len(d))
	}
	return sign + d[:e+1] + "." + d[e+1:]
}
