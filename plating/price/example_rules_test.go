package price_test

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating/price"
)

// A fifth of the price is a quarter on the cost.
func ExampleMargin_Markup() {
	m, err := price.Margin{OfPrice: decimal.RequireFromString("0.2")}.Markup(4)
	fmt.Println(m.OfCost, err)
	_, err = price.Margin{OfPrice: decimal.RequireFromString("1")}.Markup(4)
	fmt.Println(strings.ReplaceAll(err.Error(), "; ", ";\n"))
	// Output:
	// 0.25 <nil>
	// margin 1: out of range;
	// need less than 1: it is a share of the selling price;
	// what is a share of the cost is the markup
}

// Ties: to the even digit, or up.
func ExampleRounding_Round() {
	for _, rule := range []price.Rounding{price.HalfEven, price.HalfUp, price.Up} {
		d, err := rule.Round(decimal.RequireFromString("26.645"), 2)
		fmt.Println(rule, d, err)
	}
	// Output:
	// half even 26.64 <nil>
	// half up 26.65 <nil>
	// up 26.65 <nil>
}

// An order with both a margin and a markup says two things.
func ExampleOrder_Check() {
	job := bezels()
	fmt.Println(job.Check())
	job.Markup.OfCost = decimal.RequireFromString("0.3")
	fmt.Println(job.Check())
	// Output:
	// <nil>
	// margin and markup 0.25 and 0.3: values that contradict; need one of the two, the other left zero
}

// Cleaning of one clock case: a quote as it goes on paper.
func ExampleQuote_Text() {
	job := price.Order{Pieces: 1, Rounding: price.HalfUp, Labour: []price.Labour{{Name: "strip and polish",
		Minutes: decimal.RequireFromString("80"), PerHour: decimal.RequireFromString("51")}},
		Markup:    price.Markup{OfCost: decimal.RequireFromString("0.15")},
		Tax:       price.Tax{Rate: decimal.RequireFromString("0.19")},
		Allowance: price.Allowance{Yield: decimal.RequireFromString("1")}}
	job.Currency, _ = price.ParseCurrency("EUR")
	q, err := job.Quote()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(q.Text())
	// Output:
	// labour, strip and polish        68.00  80 min at 51.00 EUR per h
	// profit, markup                  10.20  15 % of 68.00, the cost
	// before tax                      78.20
	// tax                             14.86  19 % of 78.20
	// total EUR                       93.06
}

// A quote read back from a file is looked at before it is printed.
func ExampleQuote_Check() {
	job := bezels()
	q, err := job.Quote()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(q.Check())
	q.Pieces = 0
	fmt.Println(q.Check())
	// Output:
	// <nil>
	// pieces 0: out of range; need a whole number from 1 to 1000000
}

// The yen has no places; ISO 4217 says so.
func ExampleCurrency_Check() {
	fmt.Println(price.Currency{Code: "JPY", Places: 0}.Check())
	fmt.Println(price.Currency{Code: "JPY", Places: 2}.Check())
	// Output:
	// <nil>
	// places of JPY 2: values that contradict; need 0, as in ISO 4217; ParseCurrency fills them in
}

// The day of a metal price must be one.
func ExampleDate_Check() {
	fmt.Println(price.Date{Year: 2028, Month: 2, Day: 29}.Check("day of the price"))
	fmt.Println(price.Date{Year: 2027, Month: 2, Day: 29}.Check("day of the price"))
	// Output:
	// <nil>
	// day of the price year 2027, month 2, day 29: out of range; need a day of the calendar from 1900 on, as 2026-11-25
}

// Which lines of a quote come off.
func ExampleLineKind_Credit() {
	for _, k := range []price.LineKind{price.KindProfit, price.KindRefined, price.KindStripped} {
		fmt.Println(k, k.Credit())
	}
	// Output:
	// profit false
	// refining credit true
	// credit for stripped metal true
}
