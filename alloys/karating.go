package alloys

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Karating is what [Raise] and [Lower] answer. It balances: Total is the
// stock with what is added, Fine is the fine gold in it.
type Karating struct {
	Add   units.Mass // fine gold to raise, alloying metal to lower
	Total units.Mass // after melting
	Fine  units.Mass // gold in the total
}

// Raise returns how much fine gold brings a stock up to a higher share of gold.
//
//	a = m (w₂ - w₁) / (1 - w₂)
//
//	m   stock  mass of the stock, > 0 [kg]
//	w₁  from   mass fraction of gold in the stock, 0 ≤ w₁ ≤ w₂
//	w₂  to     mass fraction of gold wanted, < 1
//
// The balance is on the mass of fine gold. Say which 14 karat is meant:
// Karat(14).MassFraction() is 583.33, Fineness(585).MassFraction() the mark.
// Errors: a [*units.ValueError] for a value outside these bounds.
//
// Source: [RaisingGold].
func Raise(stock units.Mass, from, to units.MassFraction) (Karating, error) {
	k, _, err := raise(stock, from, to, false)
	return k, err
}

// RaiseWorking shows how [Raise] computes, with the same errors.
func RaiseWorking(stock units.Mass, from, to units.MassFraction) ([]working.Step, error) {
	_, steps, err := raise(stock, from, to, true)
	return steps, err
}

func raise(stock units.Mass, from, to units.MassFraction, show bool) (Karating, []working.Step, error) {
	if err := karatingInput(stock, from, to); err != nil {
		return Karating{}, nil, err
	}
	if to < from {
		return Karating{}, nil, bad("share of gold wanted", to.String(), "at least the "+from.String()+
			" of the stock; Lower goes down", units.ErrInconsistent)
	}
	if to == 1 {
		return Karating{}, nil, bad("share of gold wanted", to.String(), "less than fine gold; no addition refines a stock",
			units.ErrOutOfRange)
	}
	a := units.Mass(float64(stock) * float64(to-from) / float64(1-to))
	return finish("a = m·(w₂ - w₁)/(1 - w₂)", "fine gold to add", stock, from, to, a, stock*units.Mass(from)+a, show)
}

// Lower returns how much alloying metal without gold brings a stock down to a
// lower share of gold.
//
//	a = m (w₁ - w₂) / w₂
//
//	m   stock  mass of the stock, > 0 [kg]
//	w₁  from   mass fraction of gold in the stock, w₂ ≤ w₁ ≤ 1
//	w₂  to     mass fraction of gold wanted, > 0
//
// For one unit of mass that is w₁/w₂ - 1, the printed lowering factor. Errors:
// a [*units.ValueError] for a value outside these bounds.
//
// Source: [RaisingGold], [LoweringFactors].
func Lower(stock units.Mass, from, to units.MassFraction) (Karating, error) {
	k, _, err := lower(stock, from, to, false)
	return k, err
}

// LowerWorking shows how [Lower] computes, with the same errors.
func LowerWorking(stock units.Mass, from, to units.MassFraction) ([]working.Step, error) {
	_, steps, err := lower(stock, from, to, true)
	return steps, err
}

func lower(stock units.Mass, from, to units.MassFraction, show bool) (Karating, []working.Step, error) {
	if err := karatingInput(stock, from, to); err != nil {
		return Karating{}, nil, err
	}
	if err := units.PositiveFraction("share of gold wanted", to); err != nil {
		return Karating{}, nil, err
	}
	if to > from {
		return Karating{}, nil, bad("share of gold wanted", to.String(), "at most the "+from.String()+
			" of the stock; Raise goes up", units.ErrInconsistent)
	}
	a := units.Mass(float64(stock) * float64(from-to) / float64(to))
	return finish("a = m·(w₁ - w₂)/w₂", "alloying metal to add", stock, from, to, a, stock*units.Mass(from), show)
}

func karatingInput(stock units.Mass, from, to units.MassFraction) error {
	if err := units.Positive("mass of the stock", stock); err != nil {
		return err
	}
	if err := units.Fraction("share of gold in the stock", from); err != nil {
		return err
	}
	return units.Fraction("share of gold wanted", to)
}

func finish(formula, meaning string, stock units.Mass, from, to units.MassFraction, a, fine units.Mass,
	show bool) (Karating, []working.Step, error) {
	k := Karating{Add: a, Total: stock + a, Fine: fine}
	if err := units.Finite("mass after melting", k.Total); err != nil {
		return Karating{}, nil, err
	}
	if !show {
		return k, nil, nil
	}
	m := working.Of("m", "mass of the stock", stock)
	add := working.Of("a", meaning, a)
	return k, []working.Step{
		{Formula: formula, Terms: []working.Term{m, working.Of("w₁", "share of gold in the stock", from), working.Of("w₂",
			"share of gold wanted", to)},
			Result: add, Source: "RaisingGold"},
		{Formula: "M = m + a", Terms: []working.Term{m, add}, Result: working.Of("M", "mass after melting", k.Total),
			Source: "RaisingGold"},
	}, nil
}

// A TwoStocks is what [BlendTo] answers.
type TwoStocks struct {
	Low, High units.Mass // of the stock poorer and richer in gold
}

// BlendTo returns how much of two stocks gives a melt of a wanted share of gold.
//
//	m_h = m (w - w_l) / (w_h - w_l)
//	m_l = m (w_h - w) / (w_h - w_l)
//
//	m    total      mass wanted, > 0 [kg]
//	w_l  low        share of gold in the poorer stock, w_l < w_h
//	w_h  high       share of gold in the richer stock
//	w    to         share of gold wanted, w_l ≤ w ≤ w_h
//
// Errors: a [*units.ValueError] for a value outside these bounds.
//
// Source: [Derived]: m_l + m_h = m and m_l w_l + m_h w_h = m w. No printed
// example was found; the tests check it by a second method.
func BlendTo(total units.Mass, low, high, to units.MassFraction) (TwoStocks, error) {
	b, _, err := blendTo(total, low, high, to, false)
	return b, err
}

// BlendToWorking shows how [BlendTo] computes, with the same errors.
func BlendToWorking(total units.Mass, low, high, to units.MassFraction) ([]working.Step, error) {
	_, steps, err := blendTo(total, low, high, to, true)
	return steps, err
}

func blendTo(total units.Mass, low, high, to units.MassFraction, show bool) (TwoStocks, []working.Step, error) {
	if err := units.Positive("mass wanted", total); err != nil {
		return TwoStocks{}, nil, err
	}
	if err := units.Fraction("share of gold in the poorer stock", low); err != nil {
		return TwoStocks{}, nil, err
	}
	if err := units.Fraction("share of gold in the richer stock", high); err != nil {
		return TwoStocks{}, nil, err
	}
	if err := units.Fraction("share of gold wanted", to); err != nil {
		return TwoStocks{}, nil, err
	}
	if high <= low {
		return TwoStocks{}, nil, bad("share of gold in the richer stock", high.String(), "more than the "+low.String()+
			" of the poorer", units.ErrInconsistent)
	}
	if to < low || to > high {
		return TwoStocks{}, nil, bad("share of gold wanted", to.String(), "a share between those of the stocks, "+
			low.String()+" and "+high.String(), units.ErrInconsistent)
	}
	span := float64(high - low)
	b := TwoStocks{Low: units.Mass(float64(total) * float64(high-to) / span),
		High: units.Mass(float64(total) * float64(to-low) / span)}
	if !show {
		return b, nil, nil
	}
	terms := []working.Term{working.Of("m", "mass wanted", total), working.Of("w", "share of gold wanted", to),
		working.Of("w_l", "share of gold in the poorer stock", low), working.Of("w_h", "share of gold in the richer stock",
			high)}
	return b, []working.Step{
		{Formula: "m_h = m·(w - w_l)/(w_h - w_l)", Terms: terms, Result: working.Of("m_h", "mass of the richer stock",
			b.High), Source: "Derived"},
		{Formula: "m_l = m·(w_h - w)/(w_h - w_l)", Terms: terms, Result: working.Of("m_l", "mass of the poorer stock",
			b.Low), Source: "Derived"},
	}, nil
}
