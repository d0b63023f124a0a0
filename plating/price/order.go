package price

import (
	"fmt"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A MetalPrice is the price of one fine metal on one day.
type MetalPrice struct {
	Symbol string          `json:"metal" with:"must" need:"its symbol, as \"Au\""`             // Au
	Amount decimal.Decimal `json:"price" with:"must" need:"an amount in quotes, as \"98.50\""` // money, ≥ 0
	// an ounce price read as a gram price is off by 31
	Per  alloys.TradeUnit `json:"per" with:"must" need:"the unit that the price is for: g, kg, ozt or dwt" rule:"spellings"`
	AsOf Date             `json:"as_of" with:"must" need:"the day of the price, as \"2026-11-25\""`
}

// A Metal is a mass of one fine metal, for the whole batch.
type Metal struct {
	Symbol string
	Mass   alloys.Weighed // make it with [Weigh] from a computed mass
}

// A Refined is metal that comes back from the refiner and is credited.
type Refined struct {
	Symbol string
	Mass   alloys.Weighed
	Paid   decimal.Decimal // share of the metal's price that is credited, 0 to 1; needed: zero credits nothing
}

// A Salt is something used up that is bought by mass.
type Salt struct {
	Name   string
	Mass   alloys.Weighed
	Amount decimal.Decimal  // price, ≥ 0
	Per    alloys.TradeUnit // of the price
}

// An Electricity is energy used and its price.
type Electricity struct {
	KilowattHours   decimal.Decimal `json:"-"`                 // ≥ 0; make it with [KilowattHours]
	PerKilowattHour decimal.Decimal `json:"per_kilowatt_hour"` // ≥ 0
}

// A Labour is time of the whole batch at an hourly rate.
type Labour struct {
	Name    string
	Minutes decimal.Decimal // ≥ 0; of a sequence, with [Minutes]
	PerHour decimal.Decimal // ≥ 0
}

// A SetUp is work done once for a batch, as jigs and baths made ready.
type SetUp struct {
	Amount decimal.Decimal `json:"set_up"` // money, ≥ 0
	// pieces that share it, if other jobs run in the same batch; 0 means this job's alone
	SharedBy int `json:"shared_by" rule:"1..1000000"`
}

// An Allowance is what rejects cost: a piece that fails is stripped and plated
// again, until it passes.
type Allowance struct {
	// share of pieces that pass, above 0 and at most 1; needed
	Yield decimal.Decimal `json:"yield" with:"must" need:"a share of 0 or more in quotes, as \"35 %\" or \"0.35\"" rule:"percent"`
	// money to strip one piece, ≥ 0
	Strip decimal.Decimal `json:"strip"`
	// share of the deposit's metal that stripping gets back, 0 to 1
	Recovered decimal.Decimal `json:"recovered" rule:"percent"`
}

// A Margin is a profit as a share of the selling price, from 0 to below 1. The
// selling price is that before the minimum charge, credits and tax.
type Margin struct {
	OfPrice decimal.Decimal `json:"margin" rule:"percent"` // 0 ≤ g < 1
}

// A Markup is a profit as a share of the cost, 0 or more.
type Markup struct {
	OfCost decimal.Decimal `json:"markup" rule:"percent"` // u ≥ 0
}

// A Tax is a sales or value added tax.
type Tax struct {
	Rate decimal.Decimal `json:"tax" rule:"percent"` // 0.20 for 20 %, 0 to 1
	// where law taxes the work before metal is credited; else on what is left to pay
	BeforeCredits bool `json:"tax_before_credits"`
}

// An Order is what a price is made from. Masses, minutes and energy are those of
// the whole batch, each piece plated once and well. Allowance.Yield and
// Pieces are needed; everything else may be left zero.
type Order struct {
	Currency Currency `json:"currency" with:"must" need:"three capital letters, as \"EUR\""`
	Rounding Rounding `json:"rounding"`
	Pieces   int      `json:"-"` // 1 to 1e6, those delivered

	Prices  []MetalPrice `json:"metals"`
	Deposit []Metal      `json:"-"`       // laid down on the pieces
	DragOut []Metal      `json:"-"`       // lost with the rinses
	Refined []Refined    `json:"refined"` // credited

	Salts       []Salt      `json:"salts"`
	Electricity Electricity `json:",inline"`
	Labour      []Labour    `json:"labour"`
	SetUp       SetUp       `json:",inline"`
	Allowance   Allowance   `json:",inline"`

	Margin  Margin          `json:",inline"` // at most one of the two
	Markup  Markup          `json:",inline"`
	Minimum decimal.Decimal `json:"minimum"` // least to pay before tax, of no more places than the currency
	Tax     Tax             `json:",inline"`
}

// Markup returns the markup that comes to the same price, rounded half to even
// to a number of places.
//
//	u = g/(1 - g)
//
//	g  OfPrice  0 ≤ g < 1
//
// Errors: a [*units.ValueError] for a margin out of range or places outside 0 to 12.
//
// Source: [Definition].
func (m Margin) Markup(places int32) (Markup, error) {
	if err := m.check(); err != nil {
		return Markup{}, err
	}
	if err := checkPlaces(places); err != nil {
		return Markup{}, err
	}
	r := m.OfPrice.Rat()
	return Markup{HalfEven.round(r.Quo(r, one().Sub(m.OfPrice).Rat()), places)}, nil
}

// Margin returns the margin that comes to the same price, rounded half to even
// to a number of places.
//
//	g = u/(1 + u)
//
//	u  OfCost  ≥ 0
//
// Errors: a [*units.ValueError] for a negative markup or places outside 0 to 12.
//
// Source: [Definition].
func (m Markup) Margin(places int32) (Margin, error) {
	if err := amount("markup", m.OfCost); err != nil {
		return Margin{}, err
	}
	if err := checkPlaces(places); err != nil {
		return Margin{}, err
	}
	r := m.OfCost.Rat()
	return Margin{HalfEven.round(r.Quo(r, one().Add(m.OfCost).Rat()), places)}, nil
}

// check wants 0 ≤ g < 1: at a margin of 1 all of the price would be profit, and the price
// without end.
func (m Margin) check() error {
	if err := amount("margin", m.OfPrice); err != nil {
		return err
	}
	if m.OfPrice.LessThan(one()) {
		return nil
	}
	return bad("margin", m.OfPrice.String(),
		"less than 1: it is a share of the selling price; what is a share of the cost is the markup",
		units.ErrOutOfRange)
}

// Check looks at everything but the lists of metals, salts, labour and refined
// metal: those are checked where they are used.
//
// Errors: a [*units.ValueError] that names the field and what would do; a
// [*faraday.ElementError] for a price of an unknown metal.
func (j *Order) Check() error {
	if err := j.check(); err != nil {
		return err
	}
	if places := j.Currency.Places; !j.Minimum.Equal(j.Minimum.Truncate(places)) {
		return bad("minimum charge", j.Minimum.String(), fmt.Sprintf("no more than the %d places of %s", places,
			j.Currency.Code), units.ErrInconsistent)
	}
	return nil
}

// check is Check, but for the places of the minimum: one of a hundredth more has more.
func (j *Order) check() error {
	if j == nil {
		return units.Missing("job", "a job to price")
	}
	if err := j.Currency.Check(); err != nil {
		return err
	}
	if err := j.Rounding.Check(); err != nil {
		return err
	}
	if err := wholeNumber("pieces", j.Pieces, 1); err != nil {
		return err
	}
	if err := wholeNumber("pieces that share the set-up", j.SetUp.SharedBy, 0); err != nil {
		return err
	}
	if j.SetUp.SharedBy != 0 && j.SetUp.SharedBy < j.Pieces {
		return bad("pieces that share the set-up", fmt.Sprint(j.SetUp.SharedBy),
			fmt.Sprintf("at least the job's own %d", j.Pieces), units.ErrInconsistent)
	}
	for _, f := range []struct {
		field string
		value decimal.Decimal
	}{{"energy", j.Electricity.KilowattHours}, {"price of energy", j.Electricity.PerKilowattHour}, {"set-up",
		j.SetUp.Amount}, {"charge for stripping a piece", j.Allowance.Strip},
		{"markup", j.Markup.OfCost}, {"minimum charge", j.Minimum}} {
		if err := amount(f.field, f.value); err != nil {
			return err
		}
	}
	if err := share("share of metal recovered by stripping", j.Allowance.Recovered); err != nil {
		return err
	}
	if err := share("tax rate", j.Tax.Rate); err != nil {
		return err
	}
	if err := share("yield", j.Allowance.Yield); err != nil {
		return err
	}
	if j.Allowance.Yield.IsZero() {
		return bad("yield", "0", "the share of pieces that pass, above 0; 1 when none is ever rejected",
			units.ErrNotPositive)
	}
	if err := j.Margin.check(); err != nil {
		return err
	}
	if !j.Margin.OfPrice.IsZero() && !j.Markup.OfCost.IsZero() {
		return bad("margin and markup", j.Margin.OfPrice.String()+" and "+j.Markup.OfCost.String(),
			"one of the two, the other left zero", units.ErrInconsistent)
	}
	return j.checkPrices()
}

// checkPrices wants each metal once, with a price, a unit and a day. Two prices of one
// metal would leave it to their order which one counts.
func (j *Order) checkPrices() error {
	for i, p := range j.Prices {
		if _, err := faraday.Lookup(p.Symbol); err != nil {
			return err
		}
		name := "price of " + p.Symbol
		if err := amount(name, p.Amount); err != nil {
			return err
		}
		if _, err := inGrams("unit of the "+name, p.Per); err != nil {
			return err
		}
		if err := p.AsOf.Check("date of the " + name); err != nil {
			return err
		}
		for _, q := range j.Prices[:i] {
			if q.Symbol == p.Symbol {
				return bad(name, "given twice", "one price a metal", units.ErrInconsistent)
			}
		}
	}
	return nil
}

// priceOf finds the price of a metal.
func (j *Order) priceOf(symbol string) (*MetalPrice, error) {
	for i := range j.Prices {
		if j.Prices[i].Symbol == symbol {
			return &j.Prices[i], nil
		}
	}
	return nil, bad("price of "+quoted(symbol), "not given", "a MetalPrice among the prices", units.ErrNotPositive)
}
