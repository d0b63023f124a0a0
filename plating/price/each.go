package price

import (
	"fmt"
	"math/big"

	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// Each returns how a sum of the quote falls on the pieces: a number of them at
// the higher price, the others one unit lower, so that they add up to it.
//
// Errors: a [*units.ValueError] for a sum below zero or with more places than the
// currency has, and those of [Quote.Check].
//
// Source: [Definition].
func (q Quote) Each(sum decimal.Decimal) (Each, error) {
	if err := q.Check(); err != nil {
		return Each{}, err
	}
	if err := amount("sum", sum); err != nil {
		return Each{}, err
	}
	if !sum.Equal(sum.Truncate(q.Currency.Places)) {
		return Each{}, bad("sum", sum.String(), fmt.Sprintf("no more than %d places", q.Currency.Places),
			units.ErrInconsistent)
	}
	all := smallest(sum.Rat(), q.Currency.Places).Num()
	low, more := new(big.Int).DivMod(all, big.NewInt(int64(q.Pieces)), new(big.Int))
	e := Each{Pieces: q.Pieces, Higher: int(more.Int64()), Low: decimal.NewFromBigInt(low, -q.Currency.Places),
		Places: q.Currency.Places}
	e.High = e.Low
	if e.Higher > 0 {
		e.High = decimal.NewFromBigInt(low.Add(low, big.NewInt(1)), -q.Currency.Places)
	}
	return e, nil
}

// An Each is a sum shared among equal pieces.
type Each struct {
	Pieces int             // in all
	Higher int             // pieces at High; the others are at Low
	Low    decimal.Decimal // a piece
	High   decimal.Decimal // one unit more, or the same when the sum divides
	Places int32           // of the currency
}

// String writes the price of a piece, as "12.34 each", or how many are one unit
// dearer. Of places or amounts that no quote has it says so instead.
func (e Each) String() string {
	for _, err := range []error{checkPlaces(e.Places), size("price of a piece", e.Low),
		size("price of a piece", e.High)} {
		if err != nil {
			return "no price: " + err.Error()
		}
	}
	if e.Higher == 0 {
		return e.Low.StringFixed(e.Places) + " each"
	}
	return fmt.Sprintf("%d at %s, %d at %s", e.Higher, e.High.StringFixed(e.Places), e.Pieces-e.Higher,
		e.Low.StringFixed(e.Places))
}
