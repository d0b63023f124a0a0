package alloys

import (
	"math"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"
)

// number writes v for people with at most six digits.
func number(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// shift returns the float64 nearest to v·10ⁿ, where v is read as the shortest
// decimal that names it: 0.583 becomes 583 and 583 becomes 0.583, without the
// last-digit noise that a plain product would leave.
func shift(v float64, n int) float64 {
	mantissa, exponent, found := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	if !found {
		return v // NaN, infinities
	}
	e, err := strconv.Atoi(exponent)
	if err != nil {
		return v
	}
	shifted, _ := strconv.ParseFloat(mantissa+"e"+strconv.Itoa(e+n), 64)
	return shifted
}

// permilleText writes a fraction in per mille with the fewest digits that read
// back to the same float64.
func permilleText(v float64) string {
	mantissa, exponent, _ := strings.Cut(strconv.FormatFloat(v, 'e', -1, 64), "e")
	e, err := strconv.Atoi(exponent)
	if err != nil {
		return number(v)
	}
	text := mantissa + "e" + strconv.Itoa(e+3)
	if e < -12 {
		return text
	}
	d, err := decimal.NewFromString(text)
	if err != nil {
		return text
	}
	return d.String()
}

// sum adds without caring for the order of size.
func sum(list []float64) float64 {
	var s, rest float64 // compensated: rest holds what s lost
	for _, v := range list {
		t := s + v
		if math.Abs(s) >= math.Abs(v) {
			rest += (s - t) + v
		} else {
			rest += (v - t) + s
		}
		s = t
	}
	if s-s != 0 {
		return s // an overflow: rest would make NaN of it
	}
	return s + rest
}
