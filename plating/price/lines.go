package price

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// A builder adds the lines of a sheet one group after the other; each method
// returns what its lines come to.
type builder struct {
	job   *Job
	words bool
	sheet *sheet
}

// add appends a line. A line that comes to nothing is left out.
func (b *builder) add(kind Kind, name string, exact *big.Rat, basis func() string) {
	if exact.Sign() == 0 {
		return
	}
	e := entry{Line: Line{Kind: kind, Name: name}, exact: exact}
	if b.words {
		e.Basis = basis()
	}
	b.sheet.entries = append(b.sheet.entries, e)
}

func (b *builder) per(price decimal.Decimal, unit fmt.Stringer) string {
	return b.money(price) + " per " + unit.String()
}

// money writes a sum with its currency.
func (b *builder) money(d decimal.Decimal) string {
	return moneyText(d, b.job.Currency.Places) + " " + b.job.Currency.Code
}

func (b *builder) metals(kind Kind, list []Metal) (*big.Rat, error) {
	sum := new(big.Rat)
	for _, m := range list {
		p, err := b.job.priceOf(m.Symbol)
		if err != nil {
			return nil, err
		}
		v, err := worth(m.Symbol+" in the "+kind.String(), m.Mass, p.Amount, p.Per)
		if err != nil {
			return nil, err
		}
		b.add(kind, m.Symbol, v, func() string { return m.Mass.String() + " at " + b.per(p.Amount, p.Per) })
		sum.Add(sum, v)
	}
	return sum, nil
}

func (b *builder) salts() (*big.Rat, error) {
	sum := new(big.Rat)
	for i, s := range b.job.Salts {
		name := s.Name
		if name == "" {
			name = fmt.Sprintf("salt %d", i+1)
		}
		v, err := worth(quoted(name), s.Mass, s.Amount, s.Per)
		if err != nil {
			return nil, err
		}
		b.add(KindSalts, name, v, func() string { return s.Mass.String() + " at " + b.per(s.Amount, s.Per) })
		sum.Add(sum, v)
	}
	return sum, nil
}

func (b *builder) energy() *big.Rat {
	e := b.job.Electricity
	v := e.KilowattHours.Mul(e.PerKilowattHour).Rat()
	b.add(KindPower, "", v, func() string {
		return e.KilowattHours.String() + " kW·h at " + b.money(e.PerKilowattHour)
	})
	return v
}

func (b *builder) labour() (*big.Rat, error) {
	sum := new(big.Rat)
	for i, l := range b.job.Labour {
		name := l.Name
		if name == "" {
			name = fmt.Sprintf("task %d", i+1)
		}
		if err := amount("minutes of "+quoted(name), l.Minutes); err != nil {
			return nil, err
		}
		if err := amount("hourly rate of "+quoted(name), l.PerHour); err != nil {
			return nil, err
		}
		v := l.Minutes.Mul(l.PerHour).Rat()
		v.Quo(v, big.NewRat(60, 1))
		b.add(KindLabour, name, v, func() string {
			return l.Minutes.String() + " min at " + b.money(l.PerHour) + " per h"
		})
		sum.Add(sum, v)
	}
	return sum, nil
}

// setUp adds the job's part of the set-up.
func (b *builder) setUp() *big.Rat {
	s := b.job.SetUp
	v := s.Amount.Rat()
	if s.SharedBy != 0 {
		v.Mul(v, big.NewRat(int64(b.job.Pieces), int64(s.SharedBy)))
	}
	b.add(KindSetUp, "", v, func() string {
		if s.SharedBy == 0 {
			return "once for the batch"
		}
		return fmt.Sprintf("%d of %d pieces share %s", b.job.Pieces, s.SharedBy, b.money(s.Amount))
	})
	return v
}

// timesAgain returns how often, in the mean, a piece is stripped and plated again.
func (b *builder) timesAgain() *big.Rat {
	y := b.job.Allowance.Yield
	w := one().Sub(y).Rat()
	return w.Quo(w, y.Rat())
}

// rejects adds plating again and stripping.
func (b *builder) rejects(again *big.Rat) *big.Rat {
	w := b.timesAgain()
	if w.Sign() == 0 {
		return w
	}
	a := b.job.Allowance
	plating := new(big.Rat).Mul(w, again)
	b.add(KindPlatingAgain, "", plating, func() string { return "yield of " + percentText(a.Yield) })
	strip := w.Mul(w, a.Strip.Mul(decimal.New(int64(b.job.Pieces), 0)).Rat())
	b.add(KindStripping, "", strip, func() string {
		return "rejects of " + percentText(one().Sub(a.Yield)) + ", " + b.money(a.Strip) + " a piece"
	})
	return new(big.Rat).Add(plating, strip)
}

// profit adds margin or markup on the cost.
func (b *builder) profit(cost *big.Rat) *big.Rat {
	g, u := b.job.Margin.OfPrice, b.job.Markup.OfCost
	if !u.IsZero() {
		v := u.Rat()
		v.Mul(v, cost)
		b.add(KindProfit, "markup", v, func() string { return percentText(u) + " of " + b.rounded(cost) + ", the cost" })
		return v
	}
	v := g.Rat()
	v.Quo(v.Mul(v, cost), one().Sub(g).Rat())
	b.add(KindProfit, "margin", v, func() string {
		base := new(big.Rat).Add(cost, v)
		if base.Cmp(b.job.Minimum.Rat()) < 0 {
			return percentText(g) + " of " + b.rounded(base) + ", the price before the minimum charge"
		}
		return percentText(g) + " of " + b.rounded(base) + ", the price before credits"
	})
	return v
}

// rounded writes an exact sum as the quote would round it.
func (b *builder) rounded(v *big.Rat) string {
	places := b.job.Currency.Places
	return b.job.Rounding.round(v, places).StringFixed(places)
}

// toMinimum adds what a small job is short of the minimum charge.
func (b *builder) toMinimum(price *big.Rat) *big.Rat {
	v := new(big.Rat).Sub(b.job.Minimum.Rat(), price)
	if v.Sign() < 0 {
		v = new(big.Rat)
	}
	b.add(KindToMinimum, "", v, func() string { return "minimum charge of " + b.money(b.job.Minimum) })
	return v
}

// credits adds the credits as far as there is room for them, those for refined
// metal first. What is left of these is owed: it is the customer's metal. A
// credit for strippings is what rejects give back in the mean, of the shop's own
// metal; what there is no room for lapses.
func (b *builder) credits(deposit, room *big.Rat) (*big.Rat, error) {
	used, left := new(big.Rat), new(big.Rat)
	give := func(kind Kind, name string, v *big.Rat, basis func() string) {
		take := v
		if free := new(big.Rat).Sub(room, used); take.Cmp(free) > 0 {
			take = free
		}
		if kind == KindRefined {
			left.Add(left, new(big.Rat).Sub(v, take))
		}
		used.Add(used, take)
		b.add(kind, name, new(big.Rat).Neg(take), basis)
	}
	for _, r := range b.job.Refined {
		p, err := b.job.priceOf(r.Symbol)
		if err != nil {
			return nil, err
		}
		if err := share("share paid for refined "+r.Symbol, r.Paid); err != nil {
			return nil, err
		}
		v, err := worth("refined "+r.Symbol, r.Mass, p.Amount, p.Per)
		if err != nil {
			return nil, err
		}
		give(KindRefined, r.Symbol, v.Mul(v, r.Paid.Rat()), func() string {
			return percentText(r.Paid) + " of " + r.Mass.String() + " at " + b.per(p.Amount, p.Per)
		})
	}
	a := b.job.Allowance
	v := b.timesAgain()
	v.Mul(v, a.Recovered.Rat())
	give(KindStripped, "", v.Mul(v, deposit), func() string {
		return percentText(a.Recovered) +
			" of the metal on rejects"
	})
	b.sheet.left = left
	return used, nil
}

// moneyText writes a sum with the places of the currency, and with more where
// it has more: a kilowatt hour may cost 0.2875.
func moneyText(d decimal.Decimal, places int32) string {
	if d.Equal(d.Truncate(places)) {
		return d.StringFixed(places)
	}
	return d.String()
}

// percentText writes a share in per cent.
func percentText(d decimal.Decimal) string { return d.Shift(2).String() + " %" }
