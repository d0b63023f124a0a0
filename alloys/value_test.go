package alloys_test

import (
	"errors"
	"math/big"
	"math/rand"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

func price(symbol, amount string, per alloys.TradeUnit) alloys.UnitPrice {
	return alloys.UnitPrice{Symbol: symbol, Amount: dec(amount), Per: per}
}

func weighed(amount string, unit alloys.TradeUnit) alloys.Weighed {
	return alloys.Weighed{Amount: dec(amount), Unit: unit}
}

// endless is a decimal that would fill the memory if it were written out.
func endless(unit alloys.TradeUnit) alloys.Weighed {
	return alloys.Weighed{Amount: decimal.New(1, 2000000000), Unit: unit}
}

// A second way: the legal sizes of the units in
// milligrams, as exact fractions, with the decimal library's own rounding.
func TestIndependentMeltValue(t *testing.T) {
	size := map[alloys.TradeUnit]*big.Rat{ // mg; 0.45359237 kg is 7000 grains
		alloys.PerGram: big.NewRat(1000, 1), alloys.PerKilogram: big.NewRat(1000000, 1),
		alloys.PerTroyOunce: big.NewRat(45359237*480, 7000*100), alloys.PerPennyweight: big.NewRat(45359237*24, 7000*100)}
	r := rand.New(rand.NewSource(8))
	for i := 0; i < 500; i++ {
		unit, per := alloys.TradeUnit(1+r.Intn(4)), alloys.TradeUnit(1+r.Intn(4))
		amount, cost := decimal.New(r.Int63n(1e7), -4), decimal.New(r.Int63n(1e8), -2)
		permille := r.Int63n(999) + 1
		c := must(alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: alloys.Fineness(permille)},
			alloys.PermillePart{Symbol: "Cu", Share: alloys.Fineness(1000 - permille)}))(t)
		m := must(alloys.MeltValue(alloys.Weighed{Amount: amount, Unit: unit}, c, 2, alloys.UnitPrice{Symbol: "Au",
			Amount: cost, Per: per}))(t)
		exact := new(big.Rat).Mul(amount.Rat(), size[unit])
		exact.Mul(exact, big.NewRat(permille, 1000)).Mul(exact, cost.Rat()).Quo(exact, size[per])
		long, err := decimal.NewFromString(exact.FloatString(40))
		if err != nil {
			t.Fatal(err)
		}
		if want := long.RoundBank(2); !m.Total.Equal(want) || !m.Lines[0].Value.Equal(want) {
			t.Errorf("%s %s at %s per %s of %d: %s, want %s", amount, unit, cost, per, permille, m.Total, want)
		}
	}
}

func TestPropertyMeltValueByHand(t *testing.T) {
	c := parse(t, "Au 750, Ag 125, Cu 125")
	// 20 dwt are one troy ounce: 0.75·2000 + 0.125·24.
	m := must(alloys.MeltValue(weighed("20", alloys.PerPennyweight), c, 2, price("Au", "2000", alloys.PerTroyOunce),
		price("Ag", "24", alloys.PerTroyOunce)))(t)
	if m.Total.String() != "1503" || len(m.Lines) != 2 || m.Lines[0].Value.String() != "1500" || len(m.Unpriced) != 1 ||
		m.Unpriced[0] != "Cu" {
		t.Errorf("%+v", m)
	}
	if m.Lines[0].Fine.String() != "23.3276076" {
		t.Errorf("fine gold %s g, want three quarters of 31.1034768", m.Lines[0].Fine)
	}
	for unit, want := range map[alloys.TradeUnit]string{alloys.PerGram: "0.75", alloys.PerKilogram: "750",
		alloys.PerTroyOunce: "23.3276076"} {
		m := must(alloys.MeltValue(weighed("1", unit), c, 2, price("Au", "1", alloys.PerGram)))(t)
		if m.Lines[0].Fine.String() != want {
			t.Errorf("fine gold in 1 %v is %s g, want %s", unit, m.Lines[0].Fine, want)
		}
	}
	// Ties go to the even digit: 0.125 and 0.375 to two places.
	for amount, want := range map[string]string{"0.125": "0.12", "0.375": "0.38", "0.12500001": "0.13"} {
		m := must(alloys.MeltValue(weighed(amount, alloys.PerGram), parse(t, "Au 1000"), 2, price("Au", "1",
			alloys.PerGram)))(t)
		if m.Total.String() != want {
			t.Errorf("%s rounds to %s, want %s", amount, m.Total, want)
		}
	}
	// No float enters: 0.1 g thrice over at 0.1 is 0.03 exactly.
	m = must(alloys.MeltValue(weighed("0.3", alloys.PerGram), parse(t, "Au 1000"), 12, price("Au", "0.1",
		alloys.PerGram)))(t)
	if m.Total.String() != "0.03" {
		t.Errorf("0.3·0.1 = %s", m.Total)
	}
	if m := must(alloys.MeltValue(weighed("5", alloys.PerGram), c, 2, price("Pt", "30",
		alloys.PerGram)))(t); !m.Total.IsZero() || len(m.Unpriced) != 3 {
		t.Errorf("nothing priced: %+v", m)
	}
	// Rounded once: lines of 0.005 each, total 0.01.
	m = must(alloys.MeltValue(weighed("0.01", alloys.PerGram), parse(t, "Au 500, Ag 500"), 2, price("Au", "1",
		alloys.PerGram), price("Ag", "1", alloys.PerGram)))(t)
	if m.Total.String() != "0.01" || !m.Lines[0].Value.IsZero() {
		t.Errorf("%+v", m)
	}
	steps, err := alloys.MeltValueWorking(weighed("12.3", alloys.PerPennyweight), c, 2, price("Au", "2000",
		alloys.PerTroyOunce), price("Ag", "0.8", alloys.PerGram))
	recompute(t, steps, err)
}

func TestPropertyWeighed(t *testing.T) {
	for _, w := range []struct{ from, to alloys.Weighed }{
		{weighed("1", alloys.PerTroyOunce), weighed("31.1034768", alloys.PerGram)},
		{weighed("1", alloys.PerTroyOunce), weighed("20", alloys.PerPennyweight)},
		{weighed("1", alloys.PerKilogram), weighed("32.150746568628", alloys.PerTroyOunce)},
		{weighed("0", alloys.PerGram), weighed("0", alloys.PerKilogram)},
	} {
		if got := must(w.from.In(w.to.Unit, 12))(t); !got.Amount.Equal(w.to.Amount) || got.Unit != w.to.Unit {
			t.Errorf("%v is %v, want %v", w.from, got, w.to)
		}
	}
	w := must(alloys.NewWeighed(12.34565*units.Gram, alloys.PerGram, 4))(t)
	if w.String() != "12.3456 g" { // a tie, to the even digit
		t.Errorf("%s", w)
	}
	if w := must(alloys.NewWeighed(0.1*units.Gram+0.2*units.Gram, alloys.PerGram, 4))(t); w.Amount.String() != "0.3" {
		t.Errorf("%s", w)
	}
	if w := must(alloys.NewWeighed(5e-324, alloys.PerGram, 12))(t); !w.Amount.IsZero() {
		t.Errorf("%s", w)
	}
	m := must(weighed("20", alloys.PerPennyweight).Mass())(t)
	if m != units.TroyOunce {
		t.Errorf("20 dwt is %v", m)
	}
	for _, v := range badNumbers {
		if _, err := alloys.NewWeighed(units.Mass(v), alloys.PerGram, 4); err == nil {
			t.Errorf("mass %v was weighed", v)
		}
	}
	for _, err := range []error{second(alloys.NewWeighed(1, alloys.NoTradeUnit, 4)), second(alloys.NewWeighed(1,
		alloys.PerGram, -1)), second(alloys.NewWeighed(1, alloys.PerGram, 13)),
		second(alloys.NewWeighed(1e13, alloys.PerGram, 4)), second(alloys.Weighed{}.Mass()),
		second(alloys.Weighed{}.In(alloys.PerGram, 2)),
		second(weighed("-1", alloys.PerGram).Mass()), second(weighed("1e1000", alloys.PerGram).Mass()), second(weighed("1",
			99).Mass())} {
		if err == nil {
			t.Error("a bad mass was accepted")
		}
	}
	if s := endless(alloys.PerGram).String(); s != "unreadable mass" { // and must not take for ever
		t.Error(s)
	}
}

func TestBadMeltValue(t *testing.T) {
	c, w, gold := parse(t, "Au 1000"), weighed("1", alloys.PerGram), price("Au", "60", alloys.PerGram)
	for name, err := range map[string]error{
		"no mass unit":    second(alloys.MeltValue(alloys.Weighed{Amount: dec("1")}, c, 2, gold)),
		"negative mass":   second(alloys.MeltValue(weighed("-1", alloys.PerGram), c, 2, gold)),
		"endless mass":    second(alloys.MeltValue(endless(alloys.PerGram), c, 2, gold)),
		"no composition":  second(alloys.MeltValue(w, alloys.Composition{}, 2, gold)),
		"no prices":       second(alloys.MeltValue(w, c, 2)),
		"negative places": second(alloys.MeltValue(w, c, -1, gold)),
		"many places":     second(alloys.MeltValue(w, c, 13, gold)),
		"negative price":  second(alloys.MeltValue(w, c, 2, price("Au", "-1", alloys.PerGram))),
		"endless price": second(alloys.MeltValue(w, c, 2, alloys.UnitPrice{Symbol: "Au",
			Amount: endless(alloys.PerGram).Amount, Per: alloys.PerGram})),
		"price of no unit": second(alloys.MeltValue(w, c, 2, price("Au", "1", alloys.NoTradeUnit))),
		"priced twice":     second(alloys.MeltValue(w, c, 2, gold, gold)),
	} {
		var bad *units.ValueError
		if !errors.As(err, &bad) {
			t.Errorf("%s: %v", name, err)
		}
	}
	var unknown *faraday.ElementError
	if _, err := alloys.MeltValue(w, c, 2, price("Gold", "1", alloys.PerGram)); !errors.As(err, &unknown) {
		t.Errorf("unknown metal: %v", err)
	}
}
