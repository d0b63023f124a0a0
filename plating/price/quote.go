package price

import (
	"math/big"
	"strconv"

	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// A LineKind says what a line of a quote is for.
type LineKind uint8

// The kinds, in the order of a quote. Credits are the only lines below zero.
const (
	KindDeposit      LineKind = iota // metal in the coats
	KindDragOut                      // metal lost with the rinses
	KindSalts                        // salts and cleaners used up
	KindPower                        // electricity
	KindLabour                       // minutes at an hourly rate
	KindSetUp                        // paid once, shared by the batch
	KindPlatingAgain                 // rejects plated once more
	KindStripping                    // rejects stripped
	KindProfit                       // margin or markup
	KindToMinimum                    // what is short of the minimum charge
	KindRefined                      // credit: the customer's metal
	KindStripped                     // credit: metal from stripped rejects
	KindTax                          // of the base that the law takes
	kindEnd
)

// String returns the kind in words.
func (k LineKind) String() string {
	return [...]string{"deposit metal", "drag-out metal", "salts", "electricity", "labour", "set-up", "plating again",
		"stripping", "profit", "to the minimum charge", "refining credit", "credit for stripped metal", "tax",
		"unknown"}[min(k, kindEnd)]
}

// MarshalText writes the kind in words. Errors: a [*units.ValueError] for none.
func (k LineKind) MarshalText() ([]byte, error) {
	if k >= kindEnd {
		return nil, bad("kind of line", strconv.Itoa(int(k)), "one of the kinds of this package", units.ErrOutOfRange)
	}
	return []byte(k.String()), nil
}

// UnmarshalText reads a kind in words. Errors: a [*units.ValueError] for others.
func (k *LineKind) UnmarshalText(text []byte) error {
	if k == nil {
		return units.Missing("kind of line to read into", "a pointer to one")
	}
	for one := KindDeposit; one < kindEnd; one++ {
		if one.String() == string(text) {
			*k = one
			return nil
		}
	}
	return bad("kind of line", quoted(string(text)), "one of the kinds of this package, in words", units.ErrSyntax)
}

// Credit reports whether the kind is a credit, which is below zero or zero.
func (k LineKind) Credit() bool { return k == KindRefined || k == KindStripped }

// A Line is one line of a quote.
type Line struct {
	Kind   LineKind        `json:"kind" with:"keep"`
	Name   string          `json:"name,omitempty"`  // Au, a salt, a task
	Basis  string          `json:"basis,omitempty"` // what it was computed from: 0.412 g at 78.4 EUR per g
	Amount decimal.Decimal `json:"amount"`          // money, of the currency's places
}

// A PriceUsed is a metal price as the quote names it.
type PriceUsed struct {
	Symbol string          `json:"symbol"` // of the metal
	Amount decimal.Decimal `json:"amount"` // money per unit
	Per    string          `json:"per"`    // the unit, in words
	AsOf   Date            `json:"as_of"`  // day of the price
}

// A Quote is a price with the lines that add up to it. As JSON its sums are text.
type Quote struct {
	Currency Currency        `json:"currency"`
	Rounding Rounding        `json:"rounding" with:"keep"`
	Pieces   int             `json:"pieces"`
	Lines    []Line          `json:"lines"`    // add up to Total, to the last unit
	Net      decimal.Decimal `json:"net"`      // to pay before tax: all lines but the tax
	TaxBase  decimal.Decimal `json:"tax_base"` // what the tax is a share of
	Tax      decimal.Decimal `json:"tax"`      // rate times TaxBase, rounded
	Total    decimal.Decimal `json:"total"`    // Net and Tax
	// of the refining credits, what this quote has no room for: still owed to the customer
	CreditLeft decimal.Decimal `json:"credit_left"`
	Prices     []PriceUsed     `json:"prices"`
}

// Check looks at a quote that may come from outside: whether its numbers are such
// as can be written and shared out. It does not add up the lines.
//
// Errors: a [*units.ValueError] that names the field.
func (q *Quote) Check() error {
	if q == nil {
		return units.Missing("quote", "one that Order.Quote returned")
	}
	if err := q.Currency.Check(); err != nil {
		return err
	}
	if err := wholeNumber("pieces", q.Pieces, 1); err != nil {
		return err
	}
	sums := []decimal.Decimal{q.Net, q.TaxBase, q.Tax, q.Total, q.CreditLeft}
	for _, l := range q.Lines {
		sums = append(sums, l.Amount)
	}
	for _, p := range q.Prices {
		sums = append(sums, p.Amount)
	}
	for _, d := range sums {
		if err := size("amount of the quote", d); err != nil {
			return err
		}
	}
	return nil
}

// An entry is a line before rounding.
type entry struct {
	Line
	exact *big.Rat
}

// A sheet is a quote before rounding.
type sheet struct {
	entries []entry // without tax
	net     *big.Rat
	taxBase *big.Rat
	left    *big.Rat // of the refining credits
	sums    sums
}

// A group is a list of the order whose lines are added up before the rest is computed.
type group uint8

const (
	ofDeposit group = iota
	ofDragOut
	ofSalts
	ofEnergy
	ofLabour
	ofRefined
	groups
)

// sums are what the lines of each group come to.
type sums [groups]big.Rat

// Quote prices an order.
//
//	C = M_dep + M_drag + salts + energy + labour + set-up + W·(M_dep + M_drag + salts + energy + labour) + W·n·strip
//	W = (1 - y)/y
//	P = C/(1 - g) or C·(1 + u)
//	N = max(P, minimum) - credits, never below the minimum
//	T = N + tax
//
//	M    metals   mass times price of the day
//	y    Yield    so that 1/y platings are needed for one good piece
//	n    Pieces
//	g    Margin   share of the selling price
//	u    Markup   share of the cost
//
// All arithmetic is exact. N is rounded once by the rule of the order; then
// each line is rounded down and the units that are missing go to the lines
// with the largest remainders, so that every line is within one unit of its
// exact value and the lines add up. The tax is computed from the rounded base,
// as an invoice shows it, and rounded by the same rule. No profit is taken on
// credits. Credits that would bring the net under the minimum charge are not
// given: a refining credit is then kept for the customer as CreditLeft, a credit
// for stripped metal lapses.
//
// Errors: a [*units.ValueError] that names the field and what would do; a
// [*faraday.ElementError] for a price of an unknown metal.
//
// Source: [Definition]; W as the mean of the geometric distribution [Derived];
// rounding of the lines [LargestRemainder].
func (j *Order) Quote() (Quote, error) {
	if err := j.Check(); err != nil {
		return Quote{}, err
	}
	s, err := j.compute(true)
	if err != nil {
		return Quote{}, err
	}
	places := j.Currency.Places
	q := Quote{Currency: j.Currency, Rounding: j.Rounding, Pieces: j.Pieces, Lines: make([]Line, 0, len(s.entries)+1)}
	for _, p := range j.Prices {
		q.Prices = append(q.Prices, PriceUsed{p.Symbol, p.Amount, p.Per.String(), p.AsOf})
	}
	exact := make([]*big.Rat, len(s.entries))
	for i := range s.entries {
		exact[i] = s.entries[i].exact
	}
	net := j.Rounding.whole(smallest(s.net, places))
	q.Net = decimal.NewFromBigInt(net, -places)
	q.TaxBase = q.Net
	for i, v := range distribute(exact, scaleOf(places), net) {
		l := s.entries[i].Line
		l.Amount = decimal.NewFromBigInt(v, -places)
		if j.Tax.BeforeCredits && l.Kind.Credit() {
			q.TaxBase = q.TaxBase.Sub(l.Amount)
		}
		q.Lines = append(q.Lines, l)
	}
	q.Tax = j.Rounding.round(q.TaxBase.Mul(j.Tax.Rate).Rat(), places)
	q.Total = q.Net.Add(q.Tax)
	q.CreditLeft = j.Rounding.owed(s, q.Lines, places)
	if !j.Tax.Rate.IsZero() {
		q.Lines = append(q.Lines, Line{Kind: KindTax, Basis: percentText(j.Tax.Rate) + " of " +
			q.TaxBase.StringFixed(places), Amount: q.Tax})
	}
	return q, nil
}

// owed returns the refining credit that the lines leave: what the metal is worth,
// rounded, less what they credit, so that both together are never more than it.
func (r Rounding) owed(s *sheet, lines []Line, places int32) decimal.Decimal {
	if s.left.Sign() == 0 {
		return decimal.Zero
	}
	worth := new(big.Rat).Set(s.left)
	for i := range s.entries {
		if s.entries[i].Kind == KindRefined {
			worth.Sub(worth, s.entries[i].exact) // a credit is below zero
		}
	}
	left := r.round(worth, places)
	for _, l := range lines {
		if l.Kind == KindRefined {
			left = left.Add(l.Amount)
		}
	}
	return decimal.Max(left, decimal.Zero)
}

// compute works out exactly an order that [Order.Check] takes. The words of each line are
// left out when nobody reads them.
func (j *Order) compute(words bool) (*sheet, error) {
	b := &builder{job: j, words: words, sheet: &sheet{entries: make([]entry, 0, 16)}}
	refined, err := b.lists()
	if err != nil {
		return nil, err
	}
	b.finish(refined)
	return b.sheet, nil
}

// finish adds what depends on the sums of the lists: set-up, rejects, profit,
// minimum charge and credits.
func (b *builder) finish(refined []credit) {
	s := &b.sheet.sums
	again := new(big.Rat).Set(&s[ofDeposit]) // what one more plating costs
	for _, k := range []group{ofDragOut, ofSalts, ofEnergy, ofLabour} {
		again.Add(again, &s[k])
	}
	cost := new(big.Rat).Add(again, b.setUp())
	cost.Add(cost, b.rejects(again))
	price := new(big.Rat).Add(cost, b.profit(cost))
	price.Add(price, b.toMinimum(price))
	credits := b.credits(refined, new(big.Rat).Sub(price, b.job.Minimum.Rat()))
	b.sheet.net = new(big.Rat).Sub(price, credits)
	b.sheet.taxBase = b.sheet.net
	if b.job.Tax.BeforeCredits {
		b.sheet.taxBase = price
	}
}

// total returns the exact sum to pay, tax included.
func (s *sheet) total(rate decimal.Decimal) *big.Rat {
	t := new(big.Rat).Mul(s.taxBase, rate.Rat())
	return t.Add(t, s.net)
}
