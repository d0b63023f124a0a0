package price

import (
	"fmt"
	"math/big"
	"slices"

	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A Rounding is a rule for the last place of a sum of money. The zero Rounding
// is HalfEven.
type Rounding uint8

// The rules. Numbers below zero follow the same words: up is towards more.
const (
	HalfEven Rounding = iota // nearest; a tie goes to the even digit
	HalfUp                   // nearest; a tie goes up
	Up                       // always up
	roundingEnd
)

// String returns the rule in words.
func (r Rounding) String() string {
	return [...]string{"half even", "half up", "up", "unknown rule"}[min(r, roundingEnd)]
}

// Check returns a [*units.ValueError] for an unknown rule.
func (r Rounding) Check() error {
	if r < roundingEnd {
		return nil
	}
	return bad("rounding rule", fmt.Sprint(uint8(r)), "HalfEven, HalfUp or Up", units.ErrOutOfRange)
}

// MarshalText writes the rule in words.
//
// Errors: as [Rounding.Check].
func (r Rounding) MarshalText() ([]byte, error) { return []byte(r.String()), r.Check() }

// UnmarshalText reads a rule in words. Errors: a [*units.ValueError] for others.
func (r *Rounding) UnmarshalText(text []byte) error {
	if r == nil {
		return units.Missing("rounding rule to read into", "a pointer to one")
	}
	for one := HalfEven; one < roundingEnd; one++ {
		if one.String() == string(text) {
			*r = one
			return nil
		}
	}
	return bad("rounding rule", quoted(string(text)), "half even, half up or up", units.ErrSyntax)
}

// whole rounds an exact number of smallest units.
func (r Rounding) whole(v *big.Rat) *big.Int {
	q, rest := new(big.Int).DivMod(v.Num(), v.Denom(), new(big.Int)) // rounds down; 0 ≤ rest < denominator
	if rest.Sign() == 0 {
		return q
	}
	tie := rest.Lsh(rest, 1).Cmp(v.Denom())
	if r == Up || tie > 0 || (tie == 0 && (r == HalfUp || q.Bit(0) == 1)) {
		q.Add(q, big.NewInt(1))
	}
	return q
}

// Round rounds an exact decimal once to a number of places.
//
// Errors: a [*units.ValueError] for an unknown rule, an oversized number or
// places outside 0 to 12.
func (r Rounding) Round(d decimal.Decimal, places int32) (decimal.Decimal, error) {
	if err := r.Check(); err != nil {
		return decimal.Decimal{}, err
	}
	if err := checkPlaces(places); err != nil {
		return decimal.Decimal{}, err
	}
	if err := size("number to round", d); err != nil {
		return decimal.Decimal{}, err
	}
	return r.round(d.Rat(), places), nil
}

// round rounds an exact number once. Everything that this package rounds goes through here.
func (r Rounding) round(v *big.Rat, places int32) decimal.Decimal {
	return decimal.NewFromBigInt(r.whole(smallest(v, places)), -places)
}

// checkPlaces wants 0 to 12: more than any currency or balance has.
func checkPlaces(places int32) error {
	if places >= 0 && places <= 12 {
		return nil
	}
	return bad("places", fmt.Sprint(places), "0 to 12", units.ErrOutOfRange)
}

// scaleOf returns how many smallest units one of the currency has.
func scaleOf(places int32) *big.Int {
	ten := int64(1)
	for range places {
		ten *= 10
	}
	return big.NewInt(ten)
}

// smallest returns v as a number of smallest units.
func smallest(v *big.Rat, places int32) *big.Rat {
	return new(big.Rat).Mul(v, new(big.Rat).SetInt(scaleOf(places)))
}

// distribute rounds exact sums, times scale, to whole numbers that add up to a
// target, which is their exact sum rounded down or up: each is rounded down,
// and what is missing goes one unit each to the largest remainders, the
// earlier first where two are equal. Remainders are kept as numerators, for
// reducing fractions is what would cost time here.
//
//	q_i = ⌊x_i⌋ + (1 for the largest remainders),  Σ q_i = target
//
// The largest remainder puts each line within one unit of its exact value; no rule of
// rounding each line by itself can make them add up [LargestRemainder].
func distribute(exact []*big.Rat, scale, target *big.Int) []*big.Int {
	list := make([]*big.Int, len(exact))
	rest := make([]*big.Int, len(exact))
	order := make([]int, 0, len(exact))
	missing := new(big.Int).Set(target)
	for i, v := range exact {
		list[i], rest[i] = new(big.Int), new(big.Int)
		list[i].DivMod(rest[i].Mul(v.Num(), scale), v.Denom(), rest[i])
		missing.Sub(missing, list[i])
		if rest[i].Sign() > 0 {
			order = append(order, i)
		}
	}
	var left, right big.Int
	slices.SortStableFunc(order, func(a, b int) int { // rest over denominator, the larger first
		return right.Mul(rest[b], exact[a].Denom()).Cmp(left.Mul(rest[a], exact[b].Denom()))
	})
	one := big.NewInt(1)
	for _, i := range order[:min(int(missing.Int64()), len(order))] {
		list[i].Add(list[i], one)
	}
	return list
}

// Distribute shares a sum of money by weights so that the shares add up to it
// to the last unit.
//
//	q_i = S·w_i/Σw
//
//	S    total    ≥ 0, of no more than the given places
//	w_i  weights  ≥ 0, not all zero
//
// Each share is q_i rounded down to the places; the units left over go one
// each to the largest remainders, the earlier share first among equals. No
// share is off by a whole unit.
//
// Errors: a [*units.ValueError] for no weights or more than 1e6, a negative
// number, weights that are all zero, a total with more places, or places
// outside 0 to 12.
//
// Source: [LargestRemainder].
func Distribute(total decimal.Decimal, places int32, weights ...decimal.Decimal) ([]decimal.Decimal, error) {
	if err := checkPlaces(places); err != nil {
		return nil, err
	}
	if err := amount("total", total); err != nil {
		return nil, err
	}
	if !total.Equal(total.Truncate(places)) {
		return nil, bad("total", total.String(), fmt.Sprintf("no more than %d places", places), units.ErrInconsistent)
	}
	if len(weights) == 0 || len(weights) > mostPieces {
		return nil, bad("weights", fmt.Sprint(len(weights)), "1 to 1000000 of them", units.ErrOutOfRange)
	}
	sum := decimal.Zero
	for i, w := range weights {
		if err := amount(fmt.Sprintf("weight %d", i+1), w); err != nil {
			return nil, err
		}
		sum = sum.Add(w)
	}
	if sum.IsZero() {
		return nil, bad("weights", "all zero", "at least one above zero", units.ErrNotPositive)
	}
	exact := make([]*big.Rat, len(weights))
	unit := smallest(total.Rat(), places)
	factor := new(big.Rat).Quo(unit, sum.Rat())
	for i, w := range weights {
		exact[i] = new(big.Rat).Mul(w.Rat(), factor)
	}
	shares := make([]decimal.Decimal, len(weights))
	for i, v := range distribute(exact, big.NewInt(1), unit.Num()) {
		shares[i] = decimal.NewFromBigInt(v, -places)
	}
	return shares, nil
}
