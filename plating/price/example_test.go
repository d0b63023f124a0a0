package price_test

import (
	"fmt"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
)

// Twelve bezels for the clock workshop, gold over nickel. All prices are
// invented.
func ExampleOrder_Quote() {
	job := bezels()
	q, err := job.Quote()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(q.Text())
	// Output:
	// deposit metal, Ni                 0.05  3.1 g at 15.40 EUR per kg
	// deposit metal, Au                32.46  0.412 g at 2450.50 EUR per ozt
	// drag-out metal, Au                0.93  0.0118 g at 2450.50 EUR per ozt
	// salts, cleaner                    0.27  40 g at 6.80 EUR per kg
	// electricity                       0.42  1.35 kW·h at 0.31 EUR
	// labour, line                     85.50  95 min at 54.00 EUR per h
	// labour, polishing                48.00  60 min at 48.00 EUR per h
	// set-up                           21.60  12 of 20 pieces share 36.00 EUR
	// plating again                    10.70  yield of 94 %
	// stripping                         3.45  rejects of 6 %, 4.50 EUR a piece
	// profit, margin                   67.79  25 % of 271.17, the price before credits
	// refining credit, Au              -0.68  95 % of 0.009 g at 2450.50 EUR per ozt
	// credit for stripped metal        -1.66  80 % of the metal on rejects
	// before tax                      268.83
	// tax                              51.08  19 % of 268.83
	// total EUR                       319.91  for 12 pieces: 11 at 26.66, 1 at 26.65
	// Au at 2450.50 EUR per ozt as of 2026-11-24.
	// Ni at 15.40 EUR per kg as of 2026-11-20.
}

func ExampleOrder_Sensitivity() {
	job := bezels()
	list, err := job.Sensitivity()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range list[:4] {
		fmt.Printf("%s by %s: %s EUR\n", c.Input, c.Step, c.Change.StringFixed(3))
	}
	// Output:
	// yield by 0.01: -3.378 EUR
	// minutes of line by 0.01: 1.443 EUR
	// hourly rate of line by 0.01: 1.443 EUR
	// margin by 0.01: 1.079 EUR
}

// Three small finials: the minimum charge speaks.
func ExampleQuote_Each() {
	job := price.Order{Pieces: 3, Minimum: decimal.RequireFromString("40"), Rounding: price.HalfUp,
		Labour: []price.Labour{{Name: "line", Minutes: decimal.RequireFromString("25"),
			PerHour: decimal.RequireFromString("54")}},
		Allowance: price.Allowance{Yield: decimal.RequireFromString("1")}}
	job.Currency, _ = price.ParseCurrency("EUR")
	q, err := job.Quote()
	if err != nil {
		fmt.Println(err)
		return
	}
	each, _ := q.Each(q.Total)
	fmt.Println(q.Total.StringFixed(2), "is", each)
	// Output: 40.00 is 1 at 13.34, 2 at 13.33
}

// From a computed mass to one that money is computed with.
func ExampleWeigh() {
	w, err := price.Weigh(0.41204999*units.Gram, alloys.PerGram, 4, price.HalfEven)
	fmt.Println(w, err)
	_, err = price.Weigh(-1*units.Gram, alloys.PerGram, 4, price.HalfEven)
	fmt.Println(err)
	// Output:
	// 0.412 g <nil>
	// mass -1 g: below zero; need zero or more
}

// A quarter on the cost is a fifth of the price.
func ExampleMarkup_Margin() {
	m, err := price.Markup{OfCost: decimal.RequireFromString("0.25")}.Margin(4)
	fmt.Println(m.OfPrice, err)
	// Output: 0.2 <nil>
}

func ExampleDistribute() {
	shares, err := price.Distribute(decimal.RequireFromString("100"), 2, decimal.New(1, 0), decimal.New(1, 0),
		decimal.New(1, 0))
	fmt.Println(shares, err)
	// Output: [33.34 33.33 33.33] <nil>
}

func ExampleParseCurrency() {
	c, err := price.ParseCurrency("KWD")
	fmt.Println(c, c.Places, err)
	// Output: KWD 3 <nil>
}

func ExampleParseDate() {
	_, err := price.ParseDate("2026-02-30")
	fmt.Println(err)
	// Output: date year 2026, month 2, day 30: out of range; need a day of the calendar from 1900 on, as 2026-11-25
}

func ExampleMinutes() {
	m, err := price.Minutes(33*units.Minute+31*units.Second, 1, price.HalfEven)
	fmt.Println(m, err)
	// Output: 33.5 <nil>
}

func ExampleKilowattHours() {
	e, err := price.KilowattHours((27 * units.Ampere).At(6*units.Volt).For(40*units.Minute), 3, price.Up)
	fmt.Println(e, err)
	// Output: 0.108 <nil>
}
