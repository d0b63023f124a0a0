package alloys

import (
	"fmt"
	"slices"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Lot is a mass of one alloy: a stock, a scrap, a melt. The zero Lot is nothing.
type Lot struct {
	Mass        units.Mass
	Composition Composition
}

// Of returns the mass of one element in the lot.
//
// Source: [Definition].
func (l Lot) Of(symbol string) units.Mass {
	return l.Mass * units.Mass(l.Composition.Share(symbol))
}

// check judges one of several lots, counted from 0, or the stock: -1.
func (l Lot) check(k int) error {
	name := func() string {
		if k < 0 {
			return "the stock"
		}
		return fmt.Sprintf("lot %d", k+1)
	}
	if !(l.Mass >= 0 && l.Mass-l.Mass == 0) {
		return units.NonNegative("mass of "+name(), l.Mass)
	}
	if l.Mass > 0 && l.Composition.IsZero() {
		return noComposition("composition of " + name())
	}
	return nil
}

// Blend returns the melt of several lots. Each metal keeps its mass; nothing
// burns off.
//
//	w_i = Σ(m_k w_ik) / Σ m_k
//
//	m_k   Mass         of each lot, ≥ 0, one of them > 0 [kg]
//	w_ik  Composition  share of element i in lot k
//
// Errors: a [*units.ValueError] for a mass out of bounds, no mass at all, or a
// lot with a mass and no composition.
//
// Source: [RaisingGold] (balance on the mass of each metal).
func Blend(lots ...Lot) (Lot, error) {
	l, _, err := blend(lots, false)
	return l, err
}

// BlendWorking shows how [Blend] computes, with the same errors.
func BlendWorking(lots ...Lot) ([]working.Step, error) {
	_, steps, err := blend(lots, true)
	return steps, err
}

func blend(lots []Lot, show bool) (Lot, []working.Step, error) {
	var symbols []string
	masses := make([]float64, len(lots))
	for k, l := range lots {
		if err := l.check(k); err != nil {
			return Lot{}, nil, err
		}
		masses[k] = float64(l.Mass)
		for _, p := range l.Composition.parts {
			if l.Mass > 0 && !slices.Contains(symbols, p.Symbol) {
				symbols = append(symbols, p.Symbol)
			}
		}
	}
	melt := Lot{Mass: units.Mass(sum(masses))}
	if err := units.Positive("mass of all lots", melt.Mass); err != nil {
		return Lot{}, nil, err
	}
	melt.Composition.parts = make([]ElementShare, len(symbols))
	for i, symbol := range symbols {
		fine := masses[:0:0]
		for _, l := range lots {
			if w := l.Composition.Share(symbol); l.Mass != 0 && w != 0 {
				fine = append(fine, float64(l.Mass)*float64(w))
			}
		}
		melt.Composition.parts[i] = ElementShare{symbol, units.MassFraction(sum(fine) / float64(melt.Mass))}
	}
	if !show {
		return melt, nil, nil
	}
	return melt, meltSteps(lots, melt), nil
}

// meltSteps shows how the shares of a melt come of its lots.
func meltSteps(lots []Lot, melt Lot) []working.Step {
	var forms []string
	masses := make([]working.Term, len(lots))
	for k, l := range lots {
		masses[k] = working.Of(fmt.Sprintf("m_%d", k+1), fmt.Sprintf("mass of lot %d", k+1), l.Mass)
		forms = append(forms, masses[k].Symbol)
	}
	total := working.Of("m", "mass of the melt", melt.Mass)
	steps := []working.Step{{Formula: "m = " + strings.Join(forms, " + "), Terms: masses, Result: total,
		Source: "RaisingGold"}}
	for _, p := range melt.Composition.parts {
		step := working.Step{Source: "RaisingGold"}
		var forms []string
		for k, l := range lots {
			w := l.Composition.Share(p.Symbol)
			if l.Mass == 0 || w == 0 {
				continue
			}
			share := working.Of(fmt.Sprintf("w_%d", k+1), fmt.Sprintf("share of %s in lot %d", p.Symbol, k+1), w)
			step.Terms = append(step.Terms, masses[k], share)
			forms = append(forms, masses[k].Symbol+"·"+share.Symbol)
		}
		step.Formula = "w_" + p.Symbol + " = (" + strings.Join(forms, " + ") + ")/m"
		step.Terms = append(step.Terms, total)
		step.Result = working.Of("w_"+p.Symbol, "share of "+p.Symbol+" in the melt", p.Share)
		steps = append(steps, step)
	}
	return steps
}

// Additions is what [ToComposition] answers.
type Additions struct {
	Add      []MassPart // of each element of the target, in its order; zero for what needs none
	Total    units.Mass // after melting
	Limiting string     // the element of which the stock already has all that the total needs, "" when there is room
}

// ToComposition returns the masses of the metals to add to a stock to make it
// a target composition.
//
//	M_min = max of m w_i / w′_i
//	a_i = M w′_i - m w_i
//
//	m, w   stock   mass [kg] and shares of the stock; the zero Lot for none
//	w′     target  shares wanted
//	M      total   mass wanted [kg], M ≥ M_min; zero takes M_min, the least addition
//
// With the zero Lot it composes an alloy from its metals. Errors: a
// [*TooMuchError] when the stock holds a metal that the target lacks, or more
// of one than total allows; a [*units.ValueError] for a missing target, a mass
// out of bounds, or neither stock nor total.
//
// Source: [Composed], [RaisingGold].
func ToComposition(stock Lot, target Composition, total units.Mass) (Additions, error) {
	a, _, err := toComposition(stock, target, total, false)
	return a, err
}

// ToCompositionWorking shows how [ToComposition] computes, with the same errors.
func ToCompositionWorking(stock Lot, target Composition, total units.Mass) ([]working.Step, error) {
	_, steps, err := toComposition(stock, target, total, true)
	return steps, err
}

func toComposition(stock Lot, target Composition, total units.Mass, show bool) (Additions, []working.Step, error) {
	if err := stock.check(-1); err != nil {
		return Additions{}, nil, err
	}
	if target.IsZero() {
		return Additions{}, nil, noComposition("target composition")
	}
	if err := units.NonNegative("mass wanted", total); err != nil {
		return Additions{}, nil, err
	}
	least, limiting := units.Mass(0), ""
	if stock.Mass > 0 {
		for _, p := range stock.Composition.parts {
			w := target.Share(p.Symbol)
			if w == 0 {
				return Additions{}, nil, &TooMuchError{Symbol: p.Symbol, Have: stock.Of(p.Symbol)}
			}
			if m := stock.Of(p.Symbol) / units.Mass(w); m > least {
				least, limiting = m, p.Symbol
			}
		}
		if err := units.Finite("least mass after melting", least); err != nil {
			return Additions{}, nil, err
		}
	}
	var steps []working.Step
	switch {
	case total == 0 && limiting == "":
		return Additions{}, nil, bad("mass wanted", total.String(), "a mass above zero when there is no stock",
			units.ErrNotPositive)
	case total == 0:
		total = least
		if show {
			steps = append(steps, working.Step{Formula: "M = m·w/w'",
				Terms: []working.Term{working.Of("m", "mass of the stock", stock.Mass),
					working.Of("w", "share of "+limiting+" in the stock", stock.Composition.Share(limiting)),
					working.Of("w'", "share of "+limiting+" wanted", target.Share(limiting))},
				Result: working.Of("M", "mass after melting", total), Source: "Composed",
				Note: "The stock is richest in " + limiting + ": no smaller melt can hold it."})
		}
	case total < least*(1-1e-9):
		return Additions{}, nil, &TooMuchError{Symbol: limiting, Have: stock.Of(limiting),
			Most: total * units.Mass(target.Share(limiting))}
	case total > least*(1+1e-9):
		limiting = ""
	}
	a := Additions{Add: make([]MassPart, 0, len(target.parts)), Total: total, Limiting: limiting}
	for _, p := range target.parts {
		have := stock.Of(p.Symbol)
		// the conversion keeps the product rounded on every processor
		add := units.Mass(float64(total)*float64(p.Share)) - have
		if p.Symbol == limiting || add < total*1e-12 {
			add = 0 // the rounding of a difference that is nothing
		}
		a.Add = append(a.Add, MassPart{p.Symbol, add})
		if add == 0 || !show {
			continue
		}
		steps = append(steps, working.Step{Formula: "a_" + p.Symbol + " = M·w' - s",
			Terms: []working.Term{working.Of("M", "mass after melting", total),
				working.Of("w'", "share of "+p.Symbol+" wanted", p.Share),
				working.Of("s", p.Symbol+" in the stock", have)},
			Result: working.Of("a_"+p.Symbol, p.Symbol+" to add", add), Source: "Composed"})
	}
	return a, steps, nil
}
