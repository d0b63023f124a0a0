package alloys

import (
	"math/big"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// A UnitPrice is the price of one fine metal in a money of the caller's. The
// unit must be named: an ounce price read as a gram price is off by 31.
type UnitPrice struct {
	Symbol string          // Au
	Amount decimal.Decimal // money, ≥ 0
	Per    TradeUnit
}

// A MeltLine is one priced metal of a [Melt].
type MeltLine struct {
	Symbol string
	Fine   decimal.Decimal // g, exact
	Value  decimal.Decimal // money, rounded
}

// A Melt is the melt value of an alloy.
type Melt struct {
	Lines    []MeltLine      // in the order of the composition
	Total    decimal.Decimal // the exact sum, rounded once: it may differ from the sum of the lines by the last place
	Unpriced []string        // metals of the alloy without a price: counted as worth nothing
}

// MeltValue returns what the metals of an alloy are worth by weight, before
// any charge for assay, refining or loss.
//
//	V = Σ(m w_i p_i)
//
//	m    w       mass of the alloy, ≥ 0
//	w_i  c       mass fraction of each metal, as the shortest decimal that names it
//	p_i  prices  price of each per mass, ≥ 0
//
// All arithmetic is exact, with the troy ounce as 31.1034768 g; each figure
// shown is rounded once, half to even, to a number of places. Prices of metals
// that are not in the alloy are passed over.
//
// Errors: a [*units.ValueError] for a negative mass or price, an unnamed unit,
// the zero Composition, no prices, a metal priced twice, or places outside 0 to
// 12; a [*faraday.ElementError] for a price of an unknown element.
//
// Source: [Definition].
func MeltValue(w Weighed, c Composition, places int32, prices ...UnitPrice) (Melt, error) {
	m, _, err := meltValue(w, c, places, prices, false)
	return m, err
}

// MeltValueWorking shows how [MeltValue] computes, with the same errors.
func MeltValueWorking(w Weighed, c Composition, places int32, prices ...UnitPrice) ([]working.Step, error) {
	_, steps, err := meltValue(w, c, places, prices, true)
	return steps, err
}

func meltValue(w Weighed, c Composition, places int32, prices []UnitPrice, show bool) (Melt, []working.Step, error) {
	grams, err := w.rat()
	if err != nil {
		return Melt{}, nil, err
	}
	if c.IsZero() {
		return Melt{}, nil, noComposition("composition")
	}
	if err := checkPlaces(places); err != nil {
		return Melt{}, nil, err
	}
	if err := checkPrices(prices); err != nil {
		return Melt{}, nil, err
	}
	mass, err := w.Mass()
	if err != nil {
		return Melt{}, nil, err
	}
	melt := Melt{}
	total := new(big.Rat)
	var terms []working.Term
	var forms []string
	if show {
		terms = append(terms, working.Of("m", "mass of the alloy, "+w.String(), mass))
	}
	for _, p := range c.parts {
		price, found := priceOf(prices, p.Symbol)
		if !found {
			melt.Unpriced = append(melt.Unpriced, p.Symbol)
			continue
		}
		size, err := price.Per.grams()
		if err != nil {
			return Melt{}, nil, err
		}
		share, exact := shareDecimal(p.Share)
		fine := new(big.Rat).Mul(grams, exact)
		perGram := new(big.Rat).Quo(price.Amount.Rat(), size)
		value := new(big.Rat).Mul(fine, perGram)
		total.Add(total, value)
		melt.Lines = append(melt.Lines, MeltLine{Symbol: p.Symbol, Fine: inGrams(w).Mul(share), Value: roundHalfEven(value,
			places)})
		if !show {
			continue
		}
		perKilogram, _ := perGram.Mul(perGram, big.NewRat(1000, 1)).Float64()
		terms = append(terms, working.Of("w_"+p.Symbol, "mass fraction of "+p.Symbol, p.Share),
			working.Term{Symbol: "p_" + p.Symbol, Meaning: "price of " + p.Symbol, Value: price.Amount.String() + " per " +
				price.Per.String(), SI: perKilogram})
		forms = append(forms, "w_"+p.Symbol+"·p_"+p.Symbol)
	}
	melt.Total = roundHalfEven(total, places)
	if len(forms) == 0 {
		return melt, nil, nil
	}
	exactValue, _ := total.Float64()
	step := working.Step{Formula: "V = m·(" + strings.Join(forms, " + ") + ")", Terms: terms,
		Result: working.Term{Symbol: "V", Meaning: "melt value", Value: melt.Total.StringFixed(places), SI: exactValue},
		Source: "Definition"}
	if len(melt.Unpriced) > 0 {
		step.Note = "Without a price, counted as worth nothing: " + strings.Join(melt.Unpriced, ", ") + "."
	}
	return melt, []working.Step{step}, nil
}

func checkPrices(prices []UnitPrice) error {
	if len(prices) == 0 {
		return bad("prices", "none", "the price of one metal at least", units.ErrNotPositive)
	}
	for i, p := range prices {
		if _, err := faraday.Lookup(p.Symbol); err != nil {
			return err
		}
		if err := checkDecimal("price of "+p.Symbol, p.Amount); err != nil {
			return err
		}
		if p.Amount.IsNegative() {
			return bad("price of "+p.Symbol, p.Amount.String(), "zero or more", units.ErrNegative)
		}
		if _, err := p.Per.grams(); err != nil {
			return err
		}
		if _, again := priceOf(prices[:i], p.Symbol); again {
			return bad("price of "+p.Symbol, "given twice", "one price a metal", units.ErrInconsistent)
		}
	}
	return nil
}

func priceOf(prices []UnitPrice, symbol string) (UnitPrice, bool) {
	for _, p := range prices {
		if p.Symbol == symbol {
			return p, true
		}
	}
	return UnitPrice{}, false
}

// shareDecimal returns a share as the shortest decimal that names it, cut to
// sixty places, which only shares under 1e-40 have.
func shareDecimal(share units.MassFraction) (decimal.Decimal, *big.Rat) {
	d := decimal.NewFromFloat(float64(share)).Truncate(60)
	return d, d.Rat()
}

// inGrams returns a checked reading exactly, in grams: every trade unit is a
// whole number of its last decimal.
func inGrams(w Weighed) decimal.Decimal {
	size := decimal.New(1, 0)
	switch w.Unit {
	case PerKilogram:
		size = decimal.New(1000, 0)
	case PerTroyOunce:
		size = decimal.New(311034768, -7)
	case PerPennyweight:
		size = decimal.New(155517384, -8)
	}
	return w.Amount.Mul(size)
}
