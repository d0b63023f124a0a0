package price

import (
	"fmt"
	"math/big"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// size refuses decimals whose digits would make exact arithmetic endless.
//
// A decimal such as 1e9000 is a few bytes in a file and nine thousand digits in a sum.
func size(field string, d decimal.Decimal) error {
	if e := d.Exponent(); e < -30 || e > 30 || d.Coefficient().BitLen() > 120 {
		return bad(field, "a number with too many digits", "at most 36 digits and 30 places", units.ErrOutOfRange)
	}
	return nil
}

// amount checks a number that may not be below zero.
func amount(field string, d decimal.Decimal) error {
	if err := size(field, d); err != nil {
		return err
	}
	if d.IsNegative() {
		return bad(field, d.String(), "zero or more", units.ErrNegative)
	}
	return nil
}

// share checks a number from 0 to 1.
func share(field string, d decimal.Decimal) error {
	if err := amount(field, d); err != nil {
		return err
	}
	if d.GreaterThan(one()) {
		return bad(field, d.String(), "a share from 0 to 1, such as 0.35 for 35 %", units.ErrOutOfRange)
	}
	return nil
}

// one is the decimal 1.
func one() decimal.Decimal { return decimal.New(1, 0) }

// inGrams returns the exact size of a trade unit: one of the troy ounce is
// 31.1034768 g and the pennyweight a twentieth of it.
func inGrams(field string, u alloys.TradeUnit) (decimal.Decimal, error) {
	switch u {
	case alloys.PerGram:
		return one(), nil
	case alloys.PerKilogram:
		return decimal.New(1000, 0), nil
	case alloys.PerTroyOunce:
		return decimal.New(311034768, -7), nil
	case alloys.PerPennyweight:
		return decimal.New(155517384, -8), nil
	}
	return decimal.Decimal{}, bad(field, "none", "PerGram, PerKilogram, PerTroyOunce or PerPennyweight",
		units.ErrUnknownUnit)
}

// worth returns what a mass is worth at a price per unit, exactly.
//
//	v = m·g_m·p/g_p
//
//	m    mass in its own unit;  g_m  grams of that unit
//	p    price per unit;        g_p  grams of that unit
//
// The result is a fraction: a division by 31.1034768 does not end as a decimal.
func worth(field string, m alloys.Weighed, price decimal.Decimal, per alloys.TradeUnit) (*big.Rat, error) {
	if err := amount("mass of "+field, m.Amount); err != nil {
		return nil, err
	}
	mass, err := inGrams("unit of the mass of "+field, m.Unit)
	if err != nil {
		return nil, err
	}
	if err := amount("price of "+field, price); err != nil {
		return nil, err
	}
	unit, err := inGrams("unit of the price of "+field, per)
	if err != nil {
		return nil, err
	}
	v := m.Amount.Mul(mass).Mul(price).Rat()
	return v.Quo(v, unit.Rat()), nil
}

// Weigh turns a computed mass into a decimal one to compute money with: the
// shortest decimal that names the float64 in kilograms, brought to the unit and
// rounded once by the rule to the places you stand for. Four places of a gram
// are those of a good balance.
//
// Errors: a [*units.ValueError] for a mass that is negative, NaN, infinite or
// over 1e15 kg, no unit, an unknown rule, or places outside 0 to 12.
//
// Source: [Definition].
func Weigh(m units.Mass, unit alloys.TradeUnit, places int32, rule Rounding) (alloys.Weighed, error) {
	of, err := inGrams("unit of the mass", unit)
	if err != nil {
		return alloys.Weighed{}, err
	}
	d, err := fromFloat("mass", m, decimal.New(1000, 0), of, places, rule)
	return alloys.Weighed{Amount: d, Unit: unit}, err
}

// Minutes turns a computed time into decimal minutes, rounded once by the rule
// to a number of places.
//
// Errors: as [Weigh], for the time; at most 1e15 s.
//
// Source: [Definition].
func Minutes(d units.Duration, places int32, rule Rounding) (decimal.Decimal, error) {
	return fromFloat("time", d, one(), decimal.New(60, 0), places, rule)
}

// KilowattHours turns a computed energy into decimal kilowatt hours, rounded
// once by the rule to a number of places.
//
// Errors: as [Weigh], for the energy; at most 1e15 J.
//
// Source: [Definition].
func KilowattHours(e units.Energy, places int32, rule Rounding) (decimal.Decimal, error) {
	return fromFloat("energy", e, one(), decimal.New(3_600_000, 0), places, rule)
}

// fromFloat reads v as the shortest decimal that names it, times over by.
func fromFloat[Q units.Quantity](field string, v Q, times, by decimal.Decimal, places int32,
	rule Rounding) (decimal.Decimal, error) {
	if err := units.NonNegative(field, v); err != nil {
		return decimal.Decimal{}, err
	}
	if err := rule.Check(); err != nil {
		return decimal.Decimal{}, err
	}
	if err := checkPlaces(places); err != nil {
		return decimal.Decimal{}, err
	}
	if v > 1e15 {
		return decimal.Decimal{}, bad(field, v.String(), "at most 1e15 of the SI unit", units.ErrOutOfRange)
	}
	exact := decimal.NewFromFloat(float64(v)).Mul(times).Rat()
	return rule.round(exact.Quo(exact, by.Rat()), places), nil
}

// wholeNumber checks a count.
func wholeNumber(field string, n, low int) error {
	if n >= low && n <= mostPieces {
		return nil
	}
	return bad(field, fmt.Sprint(n), fmt.Sprintf("a whole number from %d to %d", low, mostPieces), units.ErrOutOfRange)
}

const mostPieces = 1_000_000
