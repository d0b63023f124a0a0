package price_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// TestPropertyBadOrders spoils a sound order in one place at a time: the error names
// the field and what would do, for the quote and for the sensitivity.
func TestPropertyBadOrders(t *testing.T) {
	minus, huge, endless := dec("-0.01"), decimal.New(1, 3_000_000), decimal.New(1, -3_000_000)
	for name, c := range map[string]struct {
		spoil  func(j *price.Order)
		reason error
		says   string
	}{
		"no currency":   {func(j *price.Order) { j.Currency = price.Currency{} }, units.ErrSyntax, "currency code"},
		"small letters": {func(j *price.Order) { j.Currency.Code = "eur" }, units.ErrSyntax, "currency code"},
		"four places": {func(j *price.Order) { j.Currency = price.Currency{Code: "CLF", Places: 4} },
			units.ErrOutOfRange, "0, 2 or 3"},
		"one place": {func(j *price.Order) { j.Currency = price.Currency{Code: "ZZZ", Places: 1} },
			units.ErrOutOfRange, "0, 2 or 3"},
		"euro without cents": {func(j *price.Order) { j.Currency.Places = 0 }, units.ErrInconsistent, "ISO 4217"},
		"unknown rule":       {func(j *price.Order) { j.Rounding = 9 }, units.ErrOutOfRange, "rounding rule"},
		"no pieces":          {func(j *price.Order) { j.Pieces = 0 }, units.ErrOutOfRange, "pieces"},
		"minus pieces":       {func(j *price.Order) { j.Pieces = -1 }, units.ErrOutOfRange, "pieces"},
		"negative price":     {func(j *price.Order) { j.Prices[0].Amount = minus }, units.ErrNegative, "price of Au"},
		"huge price":         {func(j *price.Order) { j.Prices[0].Amount = huge }, units.ErrOutOfRange, "price of Au"},
		"endless price": {func(j *price.Order) { j.Prices[0].Amount = endless }, units.ErrOutOfRange,
			"price of Au"},
		"price of nothing": {func(j *price.Order) { j.Prices[0].Per = 0 }, units.ErrUnknownUnit,
			"unit of the price of Au"},
		"price without date": {func(j *price.Order) { j.Prices[0].AsOf = price.Date{} }, units.ErrNotPositive,
			"date of the price of Au"},
		"30 February": {func(j *price.Order) { j.Prices[0].AsOf = price.Date{Year: 2026, Month: 2, Day: 30} },
			units.ErrOutOfRange, "date of the price of Au"},
		"priced twice":  {func(j *price.Order) { j.Prices[1].Symbol = "Au" }, units.ErrInconsistent, "given twice"},
		"no price":      {func(j *price.Order) { j.Prices = j.Prices[1:] }, units.ErrNotPositive, `price of "Au"`},
		"no metal":      {func(j *price.Order) { j.DragOut[0].Symbol = "" }, units.ErrNotPositive, "price of"},
		"negative mass": {func(j *price.Order) { j.Deposit[0].Mass.Amount = minus }, units.ErrNegative, "mass of Ni"},
		"mass of no unit": {func(j *price.Order) { j.Deposit[0].Mass.Unit = 0 }, units.ErrUnknownUnit,
			"unit of the mass of Ni"},
		"refined unpriced": {func(j *price.Order) { j.Refined[0].Symbol = "Pd" }, units.ErrNotPositive,
			`price of "Pd"`},
		"paid too much": {func(j *price.Order) { j.Refined[0].Paid = dec("1.01") }, units.ErrOutOfRange, "share paid"},
		"refined negative": {func(j *price.Order) { j.Refined[0].Mass.Amount = minus }, units.ErrNegative,
			"refined Au"},
		"salt price": {func(j *price.Order) { j.Salts[0].Amount = minus }, units.ErrNegative, "cleaner"},
		"salt unit":  {func(j *price.Order) { j.Salts[0].Per = 77 }, units.ErrUnknownUnit, "cleaner"},
		"energy":     {func(j *price.Order) { j.Electricity.KilowattHours = minus }, units.ErrNegative, "energy"},
		"price of energy": {func(j *price.Order) { j.Electricity.PerKilowattHour = minus }, units.ErrNegative,
			"price of energy"},
		"minutes": {func(j *price.Order) { j.Labour[1].Minutes = minus }, units.ErrNegative,
			"minutes of \"polishing\""},
		"rate": {func(j *price.Order) { j.Labour[0].PerHour = minus }, units.ErrNegative,
			"hourly rate of \"line\""},
		"set-up": {func(j *price.Order) { j.SetUp.Amount = minus }, units.ErrNegative, "set-up"},
		"set-up shared": {func(j *price.Order) { j.SetUp.SharedBy = 11 }, units.ErrInconsistent,
			"at least the job's own 12"},
		"minus shared": {func(j *price.Order) { j.SetUp.SharedBy = -1 }, units.ErrOutOfRange, "share the set-up"},
		"no yield":     {func(j *price.Order) { j.Allowance.Yield = decimal.Zero }, units.ErrNotPositive, "yield"},
		"yield over one": {func(j *price.Order) { j.Allowance.Yield = dec("94") }, units.ErrOutOfRange,
			"0.35 for 35 %"},
		"strip": {func(j *price.Order) { j.Allowance.Strip = minus }, units.ErrNegative, "stripping"},
		"recovered": {func(j *price.Order) { j.Allowance.Recovered = dec("2") }, units.ErrOutOfRange,
			"recovered"},
		"margin of all":   {func(j *price.Order) { j.Margin.OfPrice = dec("1") }, units.ErrOutOfRange, "the markup"},
		"margin of 25":    {func(j *price.Order) { j.Margin.OfPrice = dec("25") }, units.ErrOutOfRange, "margin"},
		"negative margin": {func(j *price.Order) { j.Margin.OfPrice = minus }, units.ErrNegative, "margin"},
		"negative markup": {func(j *price.Order) { j.Markup.OfCost = minus }, units.ErrNegative, "markup"},
		"both": {func(j *price.Order) { j.Markup.OfCost = dec("0.3") }, units.ErrInconsistent,
			"one of the two"},
		"negative minimum": {func(j *price.Order) { j.Minimum = minus }, units.ErrNegative, "minimum charge"},
		"negative tax":     {func(j *price.Order) { j.Tax.Rate = minus }, units.ErrNegative, "tax rate"},
		"tax of 20": {func(j *price.Order) { j.Tax.Rate = dec("20") }, units.ErrOutOfRange,
			"tax rate 20: out of range; need a share from 0 to 1"},
		"tax over one": {func(j *price.Order) { j.Tax.Rate = dec("1.01") }, units.ErrOutOfRange, "tax rate"},
		"tax endless":  {func(j *price.Order) { j.Tax.Rate = endless }, units.ErrOutOfRange, "tax rate"},
	} {
		j := bezels()
		c.spoil(&j)
		_, err := j.Quote()
		refused(t, name, err, c.reason)
		if err != nil && !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v does not say %q", name, err, c.says)
		}
		_, err = j.Sensitivity()
		refused(t, name+", sensitivity", err, c.reason)
	}
	j := bezels()
	j.Minimum = dec("60.005")
	_, err := j.Quote()
	refused(t, "minimum too fine", err, units.ErrInconsistent)
	j = bezels()
	j.Prices[0].Symbol = "Xx"
	var unknown *faraday.ElementError
	if _, err := j.Quote(); !errors.As(err, &unknown) {
		t.Errorf("price of an unknown metal: %v", err)
	}
	// The empty order lacks a currency, and with one it lacks pieces and yield.
	var empty price.Order
	_, err = empty.Quote()
	refused(t, "empty", err, units.ErrSyntax)
	empty.Currency = currencies[1]
	_, err = empty.Quote()
	refused(t, "without pieces", err, units.ErrOutOfRange)
	empty.Pieces = 1
	_, err = empty.Quote()
	refused(t, "without yield", err, units.ErrNotPositive)
	empty.Allowance.Yield = dec("1")
	if q, err := empty.Quote(); err != nil || !q.Total.IsZero() || len(q.Lines) != 0 {
		t.Errorf("a job of nothing costs nothing: %v %v", q, err)
	}
}

func TestPropertyBadArguments(t *testing.T) {
	yen := price.Currency{Code: "JPY"}
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 1e300} {
		_, err := price.Weigh(units.Mass(v), alloys.PerGram, 4, price.HalfEven)
		refused(t, "mass", err, nil)
		_, err = price.Minutes(units.Duration(v), 2, price.HalfEven)
		refused(t, "time", err, nil)
		_, err = price.KilowattHours(units.Energy(v), 2, price.HalfEven)
		refused(t, "energy", err, nil)
	}
	get := func(_ any, err error) error { return err }
	long := strings.Repeat("x", 500)
	for name, c := range map[string]struct{ err, reason error }{
		"no unit":           {get(price.Weigh(1, alloys.NoTradeUnit, 4, price.Up)), units.ErrUnknownUnit},
		"places":            {get(price.Weigh(1, alloys.PerGram, 13, price.Up)), units.ErrOutOfRange},
		"minus places":      {get(price.Up.Round(dec("1"), -1)), units.ErrOutOfRange},
		"rule":              {get(price.Weigh(1, alloys.PerGram, 4, 7)), units.ErrOutOfRange},
		"round rule":        {get(price.Rounding(7).Round(dec("1"), 2)), units.ErrOutOfRange},
		"round huge":        {get(price.Up.Round(decimal.New(1, 1000), 2)), units.ErrOutOfRange},
		"currency":          {get(price.ParseCurrency("QQQ")), units.ErrOutOfRange},
		"gold as currency":  {get(price.ParseCurrency("XAU")), units.ErrOutOfRange},
		"currency code":     {get(price.ParseCurrency(long)), units.ErrSyntax},
		"two codes":         {get(price.ParseCurrency("D E")), units.ErrSyntax},
		"date":              {get(price.ParseDate(long)), units.ErrSyntax},
		"no weights":        {get(price.Distribute(dec("1"), 2)), units.ErrOutOfRange},
		"zero weights":      {get(price.Distribute(dec("1"), 2, dec("0"))), units.ErrNotPositive},
		"negative weight":   {get(price.Distribute(dec("1"), 2, dec("-1"))), units.ErrNegative},
		"negative total":    {get(price.Distribute(dec("-1"), 2, dec("1"))), units.ErrNegative},
		"fine total":        {get(price.Distribute(dec("1.001"), 2, dec("1"))), units.ErrInconsistent},
		"distribute places": {get(price.Distribute(dec("1"), 99, dec("1"))), units.ErrOutOfRange},
		"each of none":      {get(price.Quote{Currency: yen}.Each(dec("1"))), units.ErrOutOfRange},
		"each too fine":     {get(price.Quote{Currency: yen, Pieces: 2}.Each(dec("1.5"))), units.ErrInconsistent},
		"each negative":     {get(price.Quote{Currency: yen, Pieces: 2}.Each(dec("-1"))), units.ErrNegative},
		"margin":            {get(price.Margin{OfPrice: dec("1")}.Markup(2)), units.ErrOutOfRange},
		"margin places":     {get(price.Margin{}.Markup(13)), units.ErrOutOfRange},
		"markup":            {get(price.Markup{OfCost: dec("-1")}.Margin(2)), units.ErrNegative},
		"markup places":     {get(price.Markup{}.Margin(-2)), units.ErrOutOfRange},
		"bad date text":     {new(price.Date).UnmarshalText([]byte("today")), units.ErrSyntax},
		"bad date":          {get(price.Date{Year: 3}.MarshalText()), units.ErrOutOfRange},
		"rule text":         {new(price.Rounding).UnmarshalText([]byte("down")), units.ErrSyntax},
		"kind text":         {new(price.LineKind).UnmarshalText([]byte("fee")), units.ErrSyntax},
	} {
		if c.err == nil {
			t.Errorf("%s: accepted", name)
			continue
		}
		refused(t, name, c.err, c.reason)
		if len(c.err.Error()) > 300 {
			t.Errorf("%s: the error is %d bytes long", name, len(c.err.Error()))
		}
	}
}

// TestPropertyForeignQuote: a quote from outside whose numbers nobody can write out
// is refused at once, and its text is one line.
func TestPropertyForeignQuote(t *testing.T) {
	for name, text := range map[string]string{
		"places":  `{"currency":{"code":"EUR","places":2000000000},"pieces":2,"lines":[],"total":"1"}`,
		"a line":  `{"currency":{"code":"EUR","places":2},"pieces":2,"lines":[{"kind":"labour","amount":"1e9000"}],"total":"1"}`,
		"a total": `{"currency":{"code":"EUR","places":2},"pieces":2,"lines":[],"total":"1e9000"}`,
		"pieces":  `{"currency":{"code":"EUR","places":2},"pieces":-2,"lines":[],"total":"1"}`,
	} {
		var q price.Quote
		if err := json.Unmarshal([]byte(text), &q); err != nil {
			t.Fatal(err)
		}
		refused(t, name, q.Check(), nil)
		_, err := q.Each(dec("1"))
		refused(t, name, err, nil)
		if s := q.Text(); len(s) > 300 || !strings.HasPrefix(s, "no quote: ") {
			t.Errorf("%s: %s", name, s)
		}
	}
	j := bezels()
	j.Minimum = dec("50.505")
	if _, err := j.Sensitivity(); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("a minimum with three places: %v", err)
	}
}
