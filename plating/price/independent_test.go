package price_test

import (
	"math/rand"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"github.com/shopspring/decimal"
)

// ratio divides to eighty places.
func ratio(a, b decimal.Decimal) decimal.Decimal { return a.DivRound(b, 80) }

// gramsOf is the mass in grams, from the definitions: 480 grains are a troy
// ounce, 24 a pennyweight, 7000 a pound of 453.59237 g.
func gramsOf(u alloys.TradeUnit) decimal.Decimal {
	grain := dec("0.06479891")
	switch u {
	case alloys.PerKilogram:
		return dec("1000")
	case alloys.PerTroyOunce:
		return grain.Mul(dec("480"))
	case alloys.PerPennyweight:
		return grain.Mul(dec("24"))
	}
	return dec("1")
}

// second is a second calculation of a price: sums first, one formula, eighty
// decimal places, no lines. It returns net and total before rounding.
func second(j *price.Order) (net, total decimal.Decimal) {
	value := func(m alloys.Weighed, symbol string) decimal.Decimal {
		for _, p := range j.Prices {
			if p.Symbol == symbol {
				return ratio(m.Amount.Mul(gramsOf(m.Unit)).Mul(p.Amount), gramsOf(p.Per))
			}
		}
		panic("no price of " + symbol)
	}
	run, deposit, credit := decimal.Zero, decimal.Zero, decimal.Zero
	for _, m := range j.Deposit {
		deposit = deposit.Add(value(m.Mass, m.Symbol))
	}
	run = run.Add(deposit)
	for _, m := range j.DragOut {
		run = run.Add(value(m.Mass, m.Symbol))
	}
	for _, s := range j.Salts {
		run = run.Add(ratio(s.Mass.Amount.Mul(gramsOf(s.Mass.Unit)).Mul(s.Amount), gramsOf(s.Per)))
	}
	for _, l := range j.Labour {
		run = run.Add(ratio(l.Minutes.Mul(l.PerHour), dec("60")))
	}
	run = run.Add(j.Electricity.KilowattHours.Mul(j.Electricity.PerKilowattHour))
	for _, r := range j.Refined {
		credit = credit.Add(value(r.Mass, r.Symbol).Mul(r.Paid))
	}
	pieces := decimal.NewFromInt(int64(j.Pieces))
	part := dec("1")
	if j.SetUp.SharedBy > 0 {
		part = ratio(pieces, decimal.NewFromInt(int64(j.SetUp.SharedBy)))
	}
	// A piece is plated 1/y times and stripped one time fewer.
	times := ratio(dec("1"), j.Allowance.Yield)
	strips := times.Sub(dec("1"))
	cost := run.Mul(times).Add(strips.Mul(pieces).Mul(j.Allowance.Strip)).Add(part.Mul(j.SetUp.Amount))
	credit = credit.Add(strips.Mul(deposit).Mul(j.Allowance.Recovered))
	gross := ratio(cost, dec("1").Sub(j.Margin.OfPrice)).Mul(dec("1").Add(j.Markup.OfCost))
	gross = decimal.Max(gross, j.Minimum)
	net = decimal.Max(gross.Sub(credit), j.Minimum)
	base := net
	if j.Tax.BeforeCredits {
		base = gross
	}
	return net, net.Add(base.Mul(j.Tax.Rate))
}

// TestIndependentQuote holds random quotes against the second calculation.
func TestIndependentQuote(t *testing.T) {
	r := rand.New(rand.NewSource(7))
	close := 0
	for i := 0; i < 1000; i++ {
		j := random(r)
		q := must(j.Quote())(t)
		net, _ := second(&j)
		unit := decimal.New(1, -j.Currency.Places)
		off := q.Net.Sub(net)
		// Nearest is within half a unit, up within one from above; the second
		// calculation is good to 1e-60.
		slack := decimal.New(1, -60)
		switch {
		case j.Rounding == price.Up && (off.LessThan(slack.Neg()) || off.GreaterThanOrEqual(unit.Add(slack))),
			j.Rounding != price.Up && off.Abs().GreaterThan(unit.Div(dec("2")).Add(slack)):
			t.Fatalf("%+v: net %s, second calculation %s", j, q.Net, net.StringFixed(12))
		}
		if off.Abs().LessThan(unit) {
			close++
		}
		// Every line is within a unit of its exact value: tried on labour, which is simplest.
		n := 0
		for _, l := range q.Lines {
			if l.Kind != price.KindLabour {
				continue
			}
			for n < len(j.Labour) && (j.Labour[n].Minutes.IsZero() || j.Labour[n].PerHour.IsZero()) {
				n++
			}
			exact := ratio(j.Labour[n].Minutes.Mul(j.Labour[n].PerHour), dec("60"))
			if l.Amount.Sub(exact).Abs().GreaterThanOrEqual(unit) {
				t.Fatalf("labour %s for %s", l.Amount, exact)
			}
			n++
		}
	}
	if close != 1000 {
		t.Errorf("only %d of 1000 are near", close)
	}
}

// once changes the first of a list, in a copy.
func once[T any](list []T, change func(*T)) []T {
	list = append([]T(nil), list...)
	if len(list) > 0 {
		change(&list[0])
	}
	return list
}

// gold multiplies the refined gold, in a copy.
func gold(list []price.Refined, by decimal.Decimal) []price.Refined {
	list = append([]price.Refined(nil), list...)
	for i := range list {
		if list[i].Symbol == "Au" {
			list[i].Mass.Amount = list[i].Mass.Amount.Mul(by)
		}
	}
	return list
}

// TestIndependentSensitivity changes the inputs of random jobs by hand and
// takes the difference of two second calculations.
func TestIndependentSensitivity(t *testing.T) {
	r := rand.New(rand.NewSource(8))
	for i := 0; i < 300; i++ {
		j := random(r)
		_, was := second(&j)
		list := must(j.Sensitivity())(t)
		found := map[string]price.Change{}
		for k, c := range list {
			if _, twice := found[c.Input]; !twice {
				found[c.Input] = c
			}
			if k > 0 && c.Change.Abs().GreaterThan(list[k-1].Change.Abs()) {
				t.Fatalf("not sorted: %v", list)
			}
		}
		up := dec("1.01")
		for name, change := range map[string]func(*price.Order){
			"price of Au": func(j *price.Order) { j.Prices[0].Amount = j.Prices[0].Amount.Mul(up) },
			"energy": func(j *price.Order) {
				j.Electricity.KilowattHours = j.Electricity.KilowattHours.Mul(up)
			},
			"set-up":         func(j *price.Order) { j.SetUp.Amount = j.SetUp.Amount.Mul(up) },
			"tax rate":       func(j *price.Order) { j.Tax.Rate = j.Tax.Rate.Mul(up) },
			"markup":         func(j *price.Order) { j.Markup.OfCost = j.Markup.OfCost.Mul(up) },
			"minimum charge": func(j *price.Order) { j.Minimum = j.Minimum.Mul(up) },
			"yield": func(j *price.Order) {
				j.Allowance.Yield = j.Allowance.Yield.Mul(
					dec("1").Add(found["yield"].Step))
			},
			"margin": func(j *price.Order) {
				j.Margin.OfPrice = j.Margin.OfPrice.Mul(
					dec("1").Add(found["margin"].Step))
			},
			"charge for stripping a piece": func(j *price.Order) { j.Allowance.Strip = j.Allowance.Strip.Mul(up) },
			"hourly rate of task 1": func(j *price.Order) {
				j.Labour = once(j.Labour, func(l *price.Labour) { l.PerHour = l.PerHour.Mul(up) })
			},
			"price of salt 1": func(j *price.Order) {
				j.Salts = once(j.Salts, func(s *price.Salt) { s.Amount = s.Amount.Mul(up) })
			},
			"refined Au": func(j *price.Order) { j.Refined = gold(j.Refined, up) },
		} {
			other := j
			other.Prices = append([]price.MetalPrice(nil), j.Prices...)
			change(&other)
			_, is := second(&other)
			want := is.Sub(was).RoundBank(12)
			c, ok := found[name]
			if !ok {
				if !want.IsZero() {
					t.Errorf("%s is missing: changes the total by %s", name, want)
				}
				continue
			}
			if c.Change.Sub(want).Abs().GreaterThan(decimal.New(1, -12)) {
				t.Errorf("%s: %s, by hand %s", name, c.Change, want)
			}
		}
	}
}

// TestIndependentYield plays the rejects: with a yield of 4 in 5, of 10 000
// pieces a fifth is stripped and plated again, of these a fifth, and so on.
func TestIndependentYield(t *testing.T) {
	platings, strips, failing := 0.0, 0.0, 10000.0
	for failing > 1e-9 {
		platings += failing
		failing /= 5
		strips += failing
	}
	j := price.Order{Currency: currencies[1], Pieces: 10000, Labour: []price.Labour{{Minutes: dec("60"),
		PerHour: dec("10000")}},
		Allowance: price.Allowance{Yield: dec("0.8"), Strip: dec("2")}}
	q := must(j.Quote())(t)
	if want := platings + 2*strips; q.Net.InexactFloat64() < want-1e-3 || q.Net.InexactFloat64() > want+1e-3 {
		t.Errorf("net %s, played %.2f", q.Net, want)
	}
}
