package price

import (
	"fmt"
	"math/big"

	"github.com/shopspring/decimal"
)

// A builder adds the lines of a sheet one group after the other; each method
// returns what its lines come to.
type builder struct {
	job   *Order
	words bool
	sheet *sheet
}

// add appends a line. A line that comes to nothing is left out.
func (b *builder) add(kind LineKind, name string, exact *big.Rat, basis func() string) {
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

// perOf writes the price of a metal that has one.
func (b *builder) perOf(symbol string) string {
	p, err := b.job.priceOf(symbol)
	if err != nil {
		return ""
	}
	return b.per(p.Amount, p.Per)
}

// money writes a sum with its currency.
func (b *builder) money(d decimal.Decimal) string {
	return moneyText(d, b.job.Currency.Places) + " " + b.job.Currency.Code
}

// lists adds the lines of all lists and returns the refined metal, which is
// credited when the price is known.
func (b *builder) lists() ([]credit, error) {
	if err := b.metals(KindDeposit, ofDeposit, b.job.Deposit); err != nil {
		return nil, err
	}
	if err := b.metals(KindDragOut, ofDragOut, b.job.DragOut); err != nil {
		return nil, err
	}
	if err := b.salts(); err != nil {
		return nil, err
	}
	b.energy()
	if err := b.labour(); err != nil {
		return nil, err
	}
	return b.refined()
}

// sum adds to what the lines of a group come to.
func (b *builder) sum(k group, v *big.Rat) {
	s := &b.sheet.sums[k]
	s.Add(s, v)
}

// metals adds a line for each metal of a list: its mass at the price of the day.
func (b *builder) metals(kind LineKind, k group, list []Metal) error {
	for i := range list {
		m := &list[i]
		v, err := b.job.metalWorth(kind, m)
		if err != nil {
			return err
		}
		b.add(kind, m.Symbol, v, func() string { return m.Mass.String() + " at " + b.perOf(m.Symbol) })
		b.sum(k, v)
	}
	return nil
}

// metalWorth is what one metal of the deposit or the drag-out is worth.
func (j *Order) metalWorth(kind LineKind, m *Metal) (*big.Rat, error) {
	p, err := j.priceOf(m.Symbol)
	if err != nil {
		return nil, err
	}
	return worth(m.Symbol+" in the "+kind.String(), m.Mass, p.Amount, p.Per)
}

// salts adds a line for each salt, by its own price: salts have no day.
func (b *builder) salts() error {
	for i := range b.job.Salts {
		s := &b.job.Salts[i]
		v, err := b.job.saltWorth(i)
		if err != nil {
			return err
		}
		b.add(KindSalts, b.job.saltName(i), v, func() string {
			return s.Mass.String() + " at " + b.per(s.Amount, s.Per)
		})
		b.sum(ofSalts, v)
	}
	return nil
}

// saltName is the name of a salt, or its place in the list.
func (j *Order) saltName(i int) string {
	if name := j.Salts[i].Name; name != "" {
		return name
	}
	return fmt.Sprintf("salt %d", i+1)
}

// saltWorth is what one salt costs.
func (j *Order) saltWorth(i int) (*big.Rat, error) {
	s := &j.Salts[i]
	return worth(quoted(j.saltName(i)), s.Mass, s.Amount, s.Per)
}

func (b *builder) energy() {
	e := b.job.Electricity
	v := e.worth()
	b.add(KindPower, "", v, func() string {
		return e.KilowattHours.String() + " kW·h at " + b.money(e.PerKilowattHour)
	})
	b.sum(ofEnergy, v)
}

// worth is what the energy costs.
func (e Electricity) worth() *big.Rat { return e.KilowattHours.Mul(e.PerKilowattHour).Rat() }

func (b *builder) labour() error {
	for i := range b.job.Labour {
		l := &b.job.Labour[i]
		v, err := b.job.labourWorth(i)
		if err != nil {
			return err
		}
		b.add(KindLabour, b.job.taskName(i), v, func() string {
			return l.Minutes.String() + " min at " + b.money(l.PerHour) + " per h"
		})
		b.sum(ofLabour, v)
	}
	return nil
}

// taskName is the name of a task, or its place in the list.
func (j *Order) taskName(i int) string {
	if name := j.Labour[i].Name; name != "" {
		return name
	}
	return fmt.Sprintf("task %d", i+1)
}

// labourWorth is what one task costs.
func (j *Order) labourWorth(i int) (*big.Rat, error) {
	l, name := &j.Labour[i], quoted(j.taskName(i))
	if err := amount("minutes of "+name, l.Minutes); err != nil {
		return nil, err
	}
	if err := amount("hourly rate of "+name, l.PerHour); err != nil {
		return nil, err
	}
	v := l.Minutes.Mul(l.PerHour).Rat()
	return v.Quo(v, big.NewRat(60, 1)), nil
}

// setUp adds the order's part of the set-up.
//
//	v = set-up·n/N,  n pieces of this order among the N that share it
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

// timesAgain returns how often, on average, a piece is stripped and plated again.
//
//	W = (1 - y)/y
//
//	y  yield, 0 < y ≤ 1
//
// A piece passes with chance y each time, so the platings it takes follow the geometric
// distribution, whose mean is 1/y; the first of them is not one again.
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
//
//	markup  u·C
//	margin  C·g/(1 - g), so that it is g of the price C/(1 - g)
func (b *builder) profit(cost *big.Rat) *big.Rat {
	g, u := b.job.Margin.OfPrice, b.job.Markup.OfCost
	if !u.IsZero() {
		v := u.Rat()
		v.Mul(v, cost)
		b.add(KindProfit, "markup", v, func() string {
			return percentText(u) + " of " + b.rounded(cost) +
				", the cost"
		})
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

// toMinimum adds what a small order is short of the minimum charge.
func (b *builder) toMinimum(price *big.Rat) *big.Rat {
	v := new(big.Rat).Sub(b.job.Minimum.Rat(), price)
	if v.Sign() < 0 {
		v = new(big.Rat)
	}
	b.add(KindToMinimum, "", v, func() string { return "minimum charge of " + b.money(b.job.Minimum) })
	return v
}

// A credit is refined metal before it is known how much of it the price has room for.
type credit struct {
	name  string
	exact *big.Rat
	basis func() string
}

// refined adds up the metal that came back.
func (b *builder) refined() ([]credit, error) {
	list := make([]credit, 0, len(b.job.Refined))
	for i := range b.job.Refined {
		r := &b.job.Refined[i]
		v, err := b.job.refinedWorth(r)
		if err != nil {
			return nil, err
		}
		list = append(list, credit{r.Symbol, v, func() string {
			return percentText(r.Paid) + " of " + r.Mass.String() + " at " + b.perOf(r.Symbol)
		}})
		b.sum(ofRefined, v)
	}
	return list, nil
}

// refinedWorth is what is paid for one refined metal.
func (j *Order) refinedWorth(r *Refined) (*big.Rat, error) {
	p, err := j.priceOf(r.Symbol)
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
	return v.Mul(v, r.Paid.Rat()), nil
}

// credits adds the credits as far as there is room for them, those for refined
// metal first. What is left of these is owed: it is the customer's metal. A
// credit for strippings is what rejects give back on average, of the shop's own
// metal; what there is no room for lapses.
func (b *builder) credits(refined []credit, room *big.Rat) *big.Rat {
	used, left := new(big.Rat), new(big.Rat)
	give := func(kind LineKind, c credit) {
		take := c.exact
		if free := new(big.Rat).Sub(room, used); take.Cmp(free) > 0 {
			take = free
		}
		if kind == KindRefined {
			left.Add(left, new(big.Rat).Sub(c.exact, take))
		}
		used.Add(used, take)
		b.add(kind, c.name, new(big.Rat).Neg(take), c.basis)
	}
	for _, c := range refined {
		give(KindRefined, c)
	}
	a := b.job.Allowance
	v := b.timesAgain()
	v.Mul(v, a.Recovered.Rat())
	give(KindStripped, credit{"", v.Mul(v, &b.sheet.sums[ofDeposit]), func() string {
		return percentText(a.Recovered) + " of the metal on rejects"
	}})
	b.sheet.left = left
	return used
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
