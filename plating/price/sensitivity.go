package price

import (
	"math/big"
	"slices"

	"github.com/shopspring/decimal"
)

// A Change says what one input does to the price.
type Change struct {
	Input  string          // in words: price of Au
	Step   decimal.Decimal // relative change of the input: 0.01, or -0.01 where 1 % more is impossible
	Change decimal.Decimal // of the total, tax included, before rounding to the currency; to 12 places
}

// Check looks at a change that may come from outside: whether its numbers can be written.
//
// Errors: a [*units.ValueError] that names the field.
func (c Change) Check() error {
	if err := size("step of the change", c.Step); err != nil {
		return err
	}
	return size("change of the total", c.Change)
}

// Sensitivity changes every input of the order by one per cent, one at a time,
// and returns what the total does, the largest change first. The total is
// the exact one, before it is rounded to the currency, so that nothing hides
// behind the last place. Inputs that are zero are left out; a share that one
// per cent more would take to 1 or beyond is lowered instead, and Step says so.
//
//	ΔT = T(1.01·x) - T(x)
//
// Errors: as [Order.Quote]; numbers need two digits less than the most it takes.
//
// Source: [Definition].
func (j *Order) Sensitivity() ([]Change, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	base, err := j.compute(false)
	if err != nil {
		return nil, err
	}
	was := base.total(j.Tax.Rate)
	c := j.clone()
	var list []Change
	var exact []*big.Rat
	for _, in := range c.inputs() {
		if in.value.IsZero() {
			continue
		}
		keep, step := *in.value, decimal.New(1, -2)
		rest, err := base.without(in.lines)
		if err != nil {
			return nil, err
		}
		*in.value = keep.Mul(one().Add(step))
		s, err := c.again(&in, rest)
		if err != nil { // over a limit of its own: try the other way
			step = step.Neg()
			*in.value = keep.Mul(one().Add(step))
			if s, err = c.again(&in, rest); err != nil {
				return nil, err
			}
		}
		d := s.total(c.Tax.Rate)
		d.Sub(d, was)
		*in.value = keep
		exact = append(exact, d)
		list = append(list, Change{Input: in.name, Step: step, Change: HalfEven.round(d, 12)})
	}
	order := make([]int, len(list))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return new(big.Rat).Abs(exact[b]).Cmp(new(big.Rat).Abs(exact[a]))
	})
	sorted := make([]Change, len(list))
	for i, k := range order {
		sorted[i] = list[k]
	}
	return sorted, nil
}

// clone copies the order so far that its numbers can be changed.
func (j *Order) clone() *Order {
	c := *j
	c.Prices = slices.Clone(j.Prices)
	c.Deposit = slices.Clone(j.Deposit)
	c.DragOut = slices.Clone(j.DragOut)
	c.Refined = slices.Clone(j.Refined)
	c.Salts = slices.Clone(j.Salts)
	c.Labour = slices.Clone(j.Labour)
	return &c
}

// without returns the sums less what some lines come to.
func (s *sheet) without(lines []worthLine) (*sums, error) {
	var rest sums
	for k := range rest {
		rest[k].Set(&s.sums[k])
	}
	for _, l := range lines {
		v, err := l.worth()
		if err != nil {
			return nil, err
		}
		rest[l.group].Sub(&rest[l.group], v)
	}
	return &rest, nil
}

// again computes the order once more when one input was changed: only the lines
// that it stands in are worked out, so that the work for all inputs grows with
// their number and not with its square.
//
// What is not changed is taken from the sums of the groups; set-up, rejects, profit,
// minimum and credits are computed anew, since they depend on all of them.
func (j *Order) again(in *input, rest *sums) (*sheet, error) {
	if !in.listed {
		if err := j.check(); err != nil {
			return nil, err
		}
	}
	b := &builder{job: j, sheet: &sheet{}}
	for k := range rest {
		b.sum(group(k), &rest[k])
	}
	for _, l := range in.lines {
		v, err := l.worth()
		if err != nil {
			return nil, err
		}
		b.sum(l.group, v)
	}
	// One credit for all refined metal: what there is room for is the same.
	b.finish([]credit{{exact: &b.sheet.sums[ofRefined]}})
	return b.sheet, nil
}

// A worthLine is a line of a list and what it comes to as the order stands.
type worthLine struct {
	group group
	worth func() (*big.Rat, error)
}

// An input is one number of an order.
type input struct {
	name   string
	value  *decimal.Decimal
	listed bool        // checked with its own line; any other by [Order.check]
	lines  []worthLine // that it stands in
}

// inputs lists every number that a price is made from.
func (j *Order) inputs() []input {
	var list []input
	prices := map[string]int{}
	for i := range j.Prices {
		prices[j.Prices[i].Symbol] = i
		list = append(list, input{name: "price of " + j.Prices[i].Symbol, value: &j.Prices[i].Amount})
	}
	add := func(name string, v *decimal.Decimal, l worthLine) {
		list = append(list, input{name, v, true, []worthLine{l}})
	}
	priced := func(symbol string, l worthLine) {
		in := &list[prices[symbol]]
		in.lines = append(in.lines, l)
	}
	metals := func(kind LineKind, k group, where string, metals []Metal) {
		for i := range metals {
			m := &metals[i]
			l := worthLine{k, func() (*big.Rat, error) { return j.metalWorth(kind, m) }}
			add(m.Symbol+where, &m.Mass.Amount, l)
			priced(m.Symbol, l)
		}
	}
	metals(KindDeposit, ofDeposit, " in the deposit", j.Deposit)
	metals(KindDragOut, ofDragOut, " in the drag-out", j.DragOut)
	for i := range j.Refined {
		r := &j.Refined[i]
		l := worthLine{ofRefined, func() (*big.Rat, error) { return j.refinedWorth(r) }}
		add("refined "+r.Symbol, &r.Mass.Amount, l)
		add("share paid for refined "+r.Symbol, &r.Paid, l)
		priced(r.Symbol, l)
	}
	for i := range j.Salts {
		l := worthLine{ofSalts, func() (*big.Rat, error) { return j.saltWorth(i) }}
		add("mass of "+j.saltName(i), &j.Salts[i].Mass.Amount, l)
		add("price of "+j.saltName(i), &j.Salts[i].Amount, l)
	}
	energy := []worthLine{{ofEnergy, func() (*big.Rat, error) { return j.Electricity.worth(), nil }}}
	list = append(list, input{name: "energy", value: &j.Electricity.KilowattHours, lines: energy},
		input{name: "price of energy", value: &j.Electricity.PerKilowattHour, lines: energy})
	for i := range j.Labour {
		l := worthLine{ofLabour, func() (*big.Rat, error) { return j.labourWorth(i) }}
		add("minutes of "+j.taskName(i), &j.Labour[i].Minutes, l)
		add("hourly rate of "+j.taskName(i), &j.Labour[i].PerHour, l)
	}
	return append(list, []input{
		{name: "set-up", value: &j.SetUp.Amount},
		{name: "yield", value: &j.Allowance.Yield},
		{name: "charge for stripping a piece", value: &j.Allowance.Strip},
		{name: "share of metal recovered by stripping", value: &j.Allowance.Recovered},
		{name: "margin", value: &j.Margin.OfPrice},
		{name: "markup", value: &j.Markup.OfCost},
		{name: "minimum charge", value: &j.Minimum},
		{name: "tax rate", value: &j.Tax.Rate},
	}...)
}
