package price_test

import (
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/testdata"
	"github.com/shopspring/decimal"
)

// The list of ISO 4217: places of every currency, and those with four refused.
func TestReferenceCurrencies(t *testing.T) {
	checked(t, "iso4217.csv", func(t *testing.T, row testdata.Row) float64 {
		c, err := price.ParseCurrency(row.Text("id"))
		if row.Float("expected") == 4 {
			refused(t, row.Text("id"), err, nil)
			return 4
		}
		if err != nil || c.Check() != nil {
			t.Error(err, c.Check())
		}
		return float64(c.Places)
	})
}

// Seats of the House by largest remainder.
func TestReferenceLargestRemainder(t *testing.T) {
	table := must(testdata.Read("apportionment1790.csv"))(t)
	var weights []decimal.Decimal
	for _, row := range table.Rows {
		weights = append(weights, dec(row.Text("population")))
	}
	seats := must(price.Distribute(dec("60"), 0, weights...))(t)
	for i, row := range table.Rows {
		if err := row.Check(seats[i].InexactFloat64()); err != nil {
			t.Error(err)
		}
	}
}

func TestReferenceMarkup(t *testing.T) {
	checked(t, "markupanswers.csv", func(t *testing.T, row testdata.Row) float64 {
		// The price comes from a quote, so that margin and markup are those that it uses.
		cost, want := dec(row.Text("cost")), dec(row.Text("price"))
		markup := price.Markup{OfCost: want.Sub(cost).Div(cost)}
		margin := must(markup.Margin(12))(t)
		for _, j := range []price.Order{{Markup: markup}, {Margin: margin}} {
			j.Currency, j.Pieces, j.SetUp.Amount, j.Allowance.Yield = currencies[1], 1, cost, dec("1")
			equal(t, "price", must(j.Quote())(t).Net, want)
		}
		if row.Text("check") == "margin_percent" {
			return margin.OfPrice.Shift(2).InexactFloat64()
		}
		return markup.OfCost.Shift(2).InexactFloat64()
	})
}

// TestIndependentTradeUnits holds the masses of the units against package
// alloys, which tests them against the law.
func TestIndependentTradeUnits(t *testing.T) {
	for _, u := range tradeUnits {
		want := must(alloys.Weighed{Amount: dec("1"), Unit: u}.In(alloys.PerGram, 10))(t)
		j := price.Order{Currency: price.Currency{Code: "KWD", Places: 3}, Pieces: 1,
			Allowance: price.Allowance{Yield: dec("1")},
			Prices: []price.MetalPrice{{Symbol: "Au", Amount: dec("1000000"), Per: alloys.PerGram,
				AsOf: price.Date{Year: 2026, Month: 1, Day: 1}}},
			Deposit: []price.Metal{{Symbol: "Au", Mass: alloys.Weighed{Amount: dec("1"), Unit: u}}}}
		equal(t, u.String(), must(j.Quote())(t).Net, want.Amount.Shift(6))
		j.Prices[0].Per, j.Deposit[0].Mass = u, want
		equal(t, "price per "+u.String(), must(j.Quote())(t).Net, dec("1000000"))
	}
}
