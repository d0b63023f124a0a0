package price

import (
	"fmt"
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

// Sensitivity changes every input of the job by one per cent, one at a time,
// and returns what the total does, the largest change first. The total is
// the exact one, before it is rounded to the currency, so that nothing hides
// behind the last place. Inputs that are zero are left out; a share that one
// per cent more would take to 1 or beyond is lowered instead, and Step says so.
//
//	ΔT = T(1.01·x) - T(x)
//
// Errors: as [Job.Quote]; numbers need two digits less than the most it takes.
//
// Source: [Definition].
func (j *Job) Sensitivity() ([]Change, error) {
	if err := j.Check(); err != nil {
		return nil, err
	}
	base, err := j.reckon(false)
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
		*in.value = keep.Mul(one().Add(step))
		s, err := c.reckon(false)
		if err != nil { // over a limit of its own: try the other way
			step = step.Neg()
			*in.value = keep.Mul(one().Add(step))
			if s, err = c.reckon(false); err != nil {
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

// clone copies the job so far that its numbers can be changed.
func (j *Job) clone() *Job {
	c := *j
	c.Prices = slices.Clone(j.Prices)
	c.Deposit = slices.Clone(j.Deposit)
	c.DragOut = slices.Clone(j.DragOut)
	c.Refined = slices.Clone(j.Refined)
	c.Salts = slices.Clone(j.Salts)
	c.Labour = slices.Clone(j.Labour)
	return &c
}

// An input is one number of a job.
type input struct {
	name  string
	value *decimal.Decimal
}

// inputs lists every number that a price is made from.
func (j *Job) inputs() []input {
	var list []input
	add := func(name string, v *decimal.Decimal) { list = append(list, input{name, v}) }
	for i := range j.Prices {
		add("price of "+j.Prices[i].Symbol, &j.Prices[i].Amount)
	}
	for i := range j.Deposit {
		add(j.Deposit[i].Symbol+" in the deposit", &j.Deposit[i].Mass.Amount)
	}
	for i := range j.DragOut {
		add(j.DragOut[i].Symbol+" in the drag-out", &j.DragOut[i].Mass.Amount)
	}
	for i := range j.Refined {
		add("refined "+j.Refined[i].Symbol, &j.Refined[i].Mass.Amount)
		add("share paid for refined "+j.Refined[i].Symbol, &j.Refined[i].Paid)
	}
	for i := range j.Salts {
		name := j.Salts[i].Name
		if name == "" {
			name = fmt.Sprintf("salt %d", i+1)
		}
		add("mass of "+name, &j.Salts[i].Mass.Amount)
		add("price of "+name, &j.Salts[i].Amount)
	}
	add("energy", &j.Electricity.KilowattHours)
	add("price of energy", &j.Electricity.PerKilowattHour)
	for i := range j.Labour {
		name := j.Labour[i].Name
		if name == "" {
			name = fmt.Sprintf("task %d", i+1)
		}
		add("minutes of "+name, &j.Labour[i].Minutes)
		add("hourly rate of "+name, &j.Labour[i].PerHour)
	}
	add("set-up", &j.SetUp.Amount)
	add("yield", &j.Allowance.Yield)
	add("charge for stripping a piece", &j.Allowance.Strip)
	add("share of metal recovered by stripping", &j.Allowance.Recovered)
	add("margin", &j.Margin.OfPrice)
	add("markup", &j.Markup.OfCost)
	add("minimum charge", &j.Minimum)
	add("tax rate", &j.Tax.Rate)
	return list
}
