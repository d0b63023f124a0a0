package price_test

import (
	"errors"
	"math/rand"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

func dec(text string) decimal.Decimal { return decimal.RequireFromString(text) }

func must[T any](v T, err error) func(t *testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// checked runs compute on every row of a table and holds the result against it.
func checked(t *testing.T, file string, compute func(t *testing.T, row testdata.Row) float64) {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		t.Run(row.Name(), func(t *testing.T) {
			if err := row.Check(compute(t, row)); err != nil {
				t.Error(err)
			}
		})
	}
}

func equal(t *testing.T, what string, got, want decimal.Decimal) {
	t.Helper()
	if !got.Equal(want) {
		t.Errorf("%s: got %s, want %s", what, got, want)
	}
}

// refused checks that an error is a complete ValueError and wraps the reason.
func refused(t *testing.T, what string, err, reason error) {
	t.Helper()
	var e *units.ValueError
	if !errors.As(err, &e) || e.Field == "" || e.Value == "" || e.Need == "" {
		t.Errorf("%s: %T %v is no complete ValueError", what, err, err)
		return
	}
	if reason != nil && !errors.Is(err, reason) {
		t.Errorf("%s: %v, want one that is %q", what, err, reason)
	}
}

func grams(text string) alloys.Weighed {
	return alloys.Weighed{Amount: dec(text), Unit: alloys.PerGram}
}

// bezels is the order of the examples: twelve bezels, gold over nickel. Invented.
func bezels() price.Order {
	return price.Order{
		Currency: price.Currency{Code: "EUR", Places: 2},
		Pieces:   12,
		Prices: []price.MetalPrice{
			{Symbol: "Au", Amount: dec("2450.50"), Per: alloys.PerTroyOunce, AsOf: price.Date{Year: 2026,
				Month: 11, Day: 24}},
			{Symbol: "Ni", Amount: dec("15.40"), Per: alloys.PerKilogram, AsOf: price.Date{Year: 2026,
				Month: 11, Day: 20}}},
		Deposit:     []price.Metal{{Symbol: "Ni", Mass: grams("3.10")}, {Symbol: "Au", Mass: grams("0.4120")}},
		DragOut:     []price.Metal{{Symbol: "Au", Mass: grams("0.0118")}},
		Refined:     []price.Refined{{Symbol: "Au", Mass: grams("0.0090"), Paid: dec("0.95")}},
		Salts:       []price.Salt{{Name: "cleaner", Mass: grams("40"), Amount: dec("6.80"), Per: alloys.PerKilogram}},
		Electricity: price.Electricity{KilowattHours: dec("1.35"), PerKilowattHour: dec("0.31")},
		Labour: []price.Labour{{Name: "line", Minutes: dec("95"), PerHour: dec("54")}, {Name: "polishing",
			Minutes: dec("60"), PerHour: dec("48")}},
		SetUp:     price.SetUp{Amount: dec("36"), SharedBy: 20},
		Allowance: price.Allowance{Yield: dec("0.94"), Strip: dec("4.50"), Recovered: dec("0.8")},
		Margin:    price.Margin{OfPrice: dec("0.25")},
		Minimum:   dec("60"),
		Tax:       price.Tax{Rate: dec("0.19")},
	}
}

var currencies = []price.Currency{{Code: "JPY", Places: 0}, {Code: "EUR", Places: 2}, {Code: "USD", Places: 2},
	{Code: "KWD", Places: 3}}

var tradeUnits = []alloys.TradeUnit{alloys.PerGram, alloys.PerKilogram, alloys.PerTroyOunce, alloys.PerPennyweight}

// random makes an order of any sort that is sound.
func random(r *rand.Rand) price.Order {
	number := func(most int64, places int32) decimal.Decimal {
		if r.Intn(8) == 0 {
			return decimal.Zero
		}
		return decimal.New(r.Int63n(most), -places)
	}
	unit := func() alloys.TradeUnit { return tradeUnits[r.Intn(4)] }
	mass := func() alloys.Weighed { return alloys.Weighed{Amount: number(30000, 4), Unit: unit()} }
	j := price.Order{Currency: currencies[r.Intn(4)], Rounding: price.Rounding(r.Intn(3)), Pieces: 1 + r.Intn(40)}
	day := price.Date{Year: 2026, Month: 11, Day: 1 + r.Intn(30)}
	for _, s := range []string{"Au", "Ag", "Ni"} {
		j.Prices = append(j.Prices, price.MetalPrice{Symbol: s, Amount: number(300000, 2), Per: unit(), AsOf: day})
		for range r.Intn(2) {
			j.Deposit = append(j.Deposit, price.Metal{Symbol: s, Mass: mass()})
		}
		if r.Intn(3) == 0 {
			j.DragOut = append(j.DragOut, price.Metal{Symbol: s, Mass: mass()})
		}
		if r.Intn(4) == 0 {
			j.Refined = append(j.Refined, price.Refined{Symbol: s, Mass: mass(), Paid: number(101, 2)})
		}
	}
	for range r.Intn(3) {
		j.Salts = append(j.Salts, price.Salt{Mass: mass(), Amount: number(9000, 2), Per: unit()})
	}
	for range r.Intn(3) {
		j.Labour = append(j.Labour, price.Labour{Minutes: number(5000, 1), PerHour: number(12000, 2)})
	}
	j.Electricity = price.Electricity{KilowattHours: number(9999, 3), PerKilowattHour: number(9999, 4)}
	j.SetUp.Amount = number(20000, 2)
	if r.Intn(2) == 0 {
		j.SetUp.SharedBy = j.Pieces + r.Intn(30)
	}
	j.Allowance = price.Allowance{Yield: decimal.New(1+r.Int63n(100), -2), Strip: number(2000, 2),
		Recovered: number(101, 2)}
	switch r.Intn(3) {
	case 0:
		j.Margin.OfPrice = number(100, 2)
	case 1:
		j.Markup.OfCost = number(300, 2)
	}
	j.Minimum = decimal.New(r.Int63n(20000), -j.Currency.Places)
	if r.Intn(3) == 0 {
		j.Minimum = decimal.Zero
	}
	j.Tax = price.Tax{Rate: number(30, 2), BeforeCredits: r.Intn(3) == 0}
	return j
}
