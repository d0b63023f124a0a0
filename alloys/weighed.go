package alloys

import (
	"fmt"
	"math/big"
	"strconv"

	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A TradeUnit is a unit that precious metal is weighed and priced by. The zero
// TradeUnit is none.
type TradeUnit uint8

// The units. The troy ounce is 31.1034768 g and the pennyweight a twentieth of
// it, both exactly: 480 and 24 grains, 7000 of which make 0.45359237 kg.
const (
	NoTradeUnit TradeUnit = iota
	PerGram
	PerKilogram
	PerTroyOunce
	PerPennyweight
)

// String returns the symbol of the unit.
func (u TradeUnit) String() string {
	switch u {
	case PerGram:
		return "g"
	case PerKilogram:
		return "kg"
	case PerTroyOunce:
		return "ozt"
	case PerPennyweight:
		return "dwt"
	}
	return "no unit"
}

// ParseTradeUnit reads a unit as [TradeUnit.String] writes it, and in every other
// spelling that package units reads: "ozt", "oz t", "troy oz".
//
// Errors: a [*units.ValueError] for text that is no such unit, the avoirdupois ounce
// included.
func ParseTradeUnit(text string) (TradeUnit, error) {
	if m, err := units.ParseMass("1 " + text); err == nil {
		for u, size := range map[TradeUnit]units.Mass{PerGram: units.Gram, PerKilogram: units.Kilogram,
			PerTroyOunce: units.TroyOunce, PerPennyweight: units.Pennyweight} {
			if m == size {
				return u, nil
			}
		}
	}
	return NoTradeUnit, notInTable("unit of mass", strconv.Quote(units.Clip(text)), "g, kg, ozt or dwt")
}

// MarshalText writes the symbol of the unit, for JSON.
//
// Errors: a [*units.ValueError] for no unit.
func (u TradeUnit) MarshalText() ([]byte, error) {
	_, err := u.grams()
	return []byte(u.String()), err
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: those of [ParseTradeUnit].
func (u *TradeUnit) UnmarshalText(text []byte) error {
	if u == nil {
		return units.Missing("unit to read into", "a pointer to one")
	}
	v, err := ParseTradeUnit(string(text))
	*u = v
	return err
}

// grams returns the exact size of u in grams.
func (u TradeUnit) grams() (*big.Rat, error) {
	switch u {
	case PerGram:
		return big.NewRat(1, 1), nil
	case PerKilogram:
		return big.NewRat(1000, 1), nil
	case PerTroyOunce:
		return big.NewRat(311034768, 10000000), nil
	case PerPennyweight:
		return big.NewRat(155517384, 100000000), nil
	}
	return nil, notInTable("unit of mass", "none", "PerGram, PerKilogram, PerTroyOunce or PerPennyweight")
}

// A Weighed mass is what a balance shows: a decimal in a unit, taken exactly.
type Weighed struct {
	Amount decimal.Decimal // ≥ 0
	Unit   TradeUnit
}

// NewWeighed makes a balance reading of a mass: the shortest decimal that names
// the float64 in grams, brought to the unit and rounded half to even to a
// number of places. A mass that came from float64 arithmetic has no exact
// decimal; say here how many places of it you stand for. 4 places of a gram
// are those of a good balance.
//
// Errors: a [*units.ValueError] for a negative or unbounded mass, no unit, or
// places outside 0 to 12.
//
// Source: [Definition].
func NewWeighed(m units.Mass, unit TradeUnit, places int32) (Weighed, error) {
	if err := units.NonNegative("mass", m); err != nil {
		return Weighed{}, err
	}
	if m > 1e12 {
		return Weighed{}, bad("mass", m.String(), "at most 1e12 kg", units.ErrOutOfRange)
	}
	// Below 1e-40 kg nothing is left at any number of places.
	if m < 1e-40 {
		m = 0
	}
	return Weighed{decimal.NewFromFloat(shift(float64(m), 3)), PerGram}.In(unit, places)
}

// In returns the mass in another unit, rounded half to even to a number of places.
//
// Errors: a [*units.ValueError] for a negative amount, no unit, or places
// outside 0 to 12.
//
// Source: [Definition].
func (w Weighed) In(unit TradeUnit, places int32) (Weighed, error) {
	g, err := w.rat()
	if err != nil {
		return Weighed{}, err
	}
	size, err := unit.grams()
	if err != nil {
		return Weighed{}, err
	}
	if err := checkPlaces(places); err != nil {
		return Weighed{}, err
	}
	return Weighed{roundHalfEven(g.Quo(g, size), places), unit}, nil
}

// Mass returns the float64 mass nearest to w. Errors: a [*units.ValueError]
// for a negative amount or no unit.
//
// Source: [Definition].
func (w Weighed) Mass() (units.Mass, error) {
	g, err := w.rat()
	if err != nil {
		return 0, err
	}
	f, _ := g.Quo(g, big.NewRat(1000, 1)).Float64()
	return units.Mass(f), nil
}

// String writes the reading, as "12.5 dwt".
func (w Weighed) String() string {
	if checkDecimal("mass", w.Amount) != nil {
		return "unreadable mass"
	}
	return w.Amount.String() + " " + w.Unit.String()
}

// rat checks w and returns it exactly, in grams.
func (w Weighed) rat() (*big.Rat, error) {
	if err := checkDecimal("mass", w.Amount); err != nil {
		return nil, err
	}
	if w.Amount.IsNegative() {
		return nil, bad("mass", w.String(), "zero or more", units.ErrNegative)
	}
	size, err := w.Unit.grams()
	if err != nil {
		return nil, err
	}
	return size.Mul(size, w.Amount.Rat()), nil
}

func checkPlaces(places int32) error {
	if places < 0 || places > 12 {
		return bad("places", fmt.Sprint(places), "0 to 12", units.ErrOutOfRange)
	}
	return nil
}

// roundHalfEven rounds r once to a number of places; a tie goes to the even digit.
func roundHalfEven(r *big.Rat, places int32) decimal.Decimal {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(places)), nil)
	num := new(big.Int).Mul(r.Num(), scale)
	q, rest := new(big.Int).QuoRem(num, r.Denom(), new(big.Int))
	twice := rest.Abs(rest).Lsh(rest, 1)
	if c := twice.Cmp(r.Denom()); c > 0 || (c == 0 && q.Bit(0) == 1) {
		q.Add(q, big.NewInt(int64(r.Sign())))
	}
	return decimal.NewFromBigInt(q, -places)
}
