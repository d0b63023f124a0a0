package alloys

import (
	"errors"
	"fmt"
	"math"
	"strings"

	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// Reasons of this package, for [errors.Is]; the others are those of package units.
var (
	ErrBelowSeries = errors.New("below every mark of the series") // nothing may be struck
	ErrTooMuch     = errors.New("more than the target holds")     // a stock that additions cannot mend
)

// A SumError reports shares that do not sum to one. Either Parts or Moles
// holds what was given.
type SumError struct {
	Sum   float64        // what they sum to: 1.179 for 117.9 %
	Parts []ElementShare // the mass fractions given, if it was they
	Moles []MolePart     // the mole fractions given, if it was they
}

// Error returns the parts, their sum and what would do.
func (e *SumError) Error() string {
	var list []string
	for _, p := range e.Parts {
		list = append(list, units.Printable(p.Symbol)+" "+number(float64(p.Share)*1000))
	}
	for _, p := range e.Moles {
		list = append(list, units.Printable(p.Symbol)+" "+number(float64(p.Share)*1000))
	}
	s := fmt.Sprintf("composition %s: shares sum to %s ‰: %v; need 1000 ‰ within 0.001 ‰",
		strings.Join(list, ", "), number(e.Sum*1000), units.ErrInconsistent)
	if math.Abs(e.Sum-0.1) < 0.01 {
		s += "; a share in per cent needs its sign, as in Au 75 %"
	}
	return s
}

// Unwrap returns [units.ErrInconsistent].
func (e *SumError) Unwrap() error { return units.ErrInconsistent }

// A BelowSeriesError reports an assay under the lowest mark of a series: no
// mark may be struck.
type BelowSeriesError struct {
	Symbol        string          // the metal
	Assay, Lowest decimal.Decimal // ‰
}

// Error returns the assay and the lowest mark.
func (e *BelowSeriesError) Error() string {
	return fmt.Sprintf("assay of %s %s ‰: %v; need %s ‰ for the lowest mark", units.Printable(e.Symbol), digits(e.Assay),
		ErrBelowSeries, digits(e.Lowest))
}

// digits writes a decimal that no caller has checked: one of a thousand million
// digits by its exponent.
func digits(d decimal.Decimal) string {
	if checkDecimal("", d) != nil {
		return fmt.Sprintf("(of decimal exponent %d)", d.Exponent())
	}
	return d.String()
}

// Unwrap returns [ErrBelowSeries].
func (e *BelowSeriesError) Unwrap() error { return ErrBelowSeries }

// A TooMuchError reports a stock that holds more of one metal than the target
// does, so that no addition can make it right.
type TooMuchError struct {
	Symbol string     // the metal
	Have   units.Mass // of it in the stock
	Most   units.Mass // of it in the finished melt
}

// Error returns the metal, what the stock holds and what would do.
func (e *TooMuchError) Error() string {
	need := "a larger total, or a stock with less of it"
	if e.Most == 0 {
		need = "a target that has it, or refined stock"
	}
	return fmt.Sprintf("%s in the stock %s, in the finished melt %s: %v; need %s", units.Printable(e.Symbol), e.Have,
		e.Most, ErrTooMuch, need)
}

// Unwrap returns [ErrTooMuch].
func (e *TooMuchError) Unwrap() error { return ErrTooMuch }

// bad makes a [*units.ValueError].
func bad(field, value, need string, reason error) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: reason}
}
