package price_test

import (
	"encoding/json"
	"math/rand"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

func TestPropertyRounding(t *testing.T) {
	for _, c := range []struct{ in, even, half, up string }{
		{"2.345", "2.34", "2.35", "2.35"}, {"2.355", "2.36", "2.36", "2.36"}, {"2.341", "2.34", "2.34", "2.35"},
		{"2.34", "2.34", "2.34", "2.34"}, {"-2.345", "-2.34", "-2.34", "-2.34"}, {"-2.355", "-2.36", "-2.35", "-2.35"},
		{"-2.349", "-2.35", "-2.35", "-2.34"}, {"0.005", "0", "0.01", "0.01"}, {"-0.001", "0", "0", "0"},
		{"0", "0", "0", "0"},
	} {
		for rule, want := range map[price.Rounding]string{price.HalfEven: c.even, price.HalfUp: c.half,
			price.Up: c.up} {
			equal(t, c.in+" "+rule.String(), must(rule.Round(dec(c.in), 2))(t), dec(want))
		}
	}
	// Half even and up agree with the decimal library's own rules.
	r := rand.New(rand.NewSource(1))
	for i := 0; i < 5000; i++ {
		d := decimal.New(r.Int63n(2_000_000)-1_000_000, -4)
		places := int32(r.Intn(5))
		equal(t, d.String(), must(price.HalfEven.Round(d, places))(t), d.RoundBank(places))
		equal(t, d.String(), must(price.Up.Round(d, places))(t), d.RoundCeil(places))
	}
}

func TestPropertyDistribute(t *testing.T) {
	got := must(price.Distribute(dec("100"), 2, dec("1"), dec("1"), dec("1")))(t)
	for i, want := range []string{"33.34", "33.33", "33.33"} { // the earlier share first
		equal(t, "thirds", got[i], dec(want))
	}
	r := rand.New(rand.NewSource(2))
	for i := 0; i < 3000; i++ {
		total, places := decimal.New(r.Int63n(1_000_000), -2), int32(2)
		weights := make([]decimal.Decimal, 1+r.Intn(12))
		sum := decimal.Zero
		for k := range weights {
			weights[k] = decimal.New(r.Int63n(1000), -1)
			sum = sum.Add(weights[k])
		}
		if sum.IsZero() {
			continue
		}
		shares := must(price.Distribute(total, places, weights...))(t)
		back := decimal.Zero
		for k, s := range shares {
			back = back.Add(s)
			quota := total.Mul(weights[k]).DivRound(sum, 40)
			if s.Sub(quota).Abs().GreaterThanOrEqual(dec("0.01")) || s.IsNegative() {
				t.Fatalf("share %s of quota %s", s, quota)
			}
		}
		equal(t, "sum", back, total)
	}
}

// TestPropertyMarginMarkup: the two are each other's inverse and never the same
// number, unless zero.
func TestPropertyMarginMarkup(t *testing.T) {
	for _, s := range []string{"0", "0.05", "0.2", "0.25", "0.5", "0.75", "0.99"} {
		m := price.Margin{OfPrice: dec(s)}
		u := must(m.Markup(12))(t)
		back := must(u.Margin(10))(t)
		equal(t, s, back.OfPrice, m.OfPrice)
		if !m.OfPrice.IsZero() && u.OfCost.LessThanOrEqual(m.OfPrice) {
			t.Errorf("margin %s is markup %s", s, u.OfCost)
		}
	}
	equal(t, "a quarter of the price", must(price.Margin{OfPrice: dec("0.2")}.Markup(4))(t).OfCost, dec("0.25"))
}

// TestPropertyMonotone: a dearer input never makes the order cheaper, a better
// yield never dearer.
func TestPropertyMonotone(t *testing.T) {
	j := bezels()
	for _, c := range must(j.Sensitivity())(t) {
		falls := strings.Contains(c.Input, "refined") || strings.Contains(c.Input, "recovered") || c.Input == "yield"
		if c.Change.IsNegative() != falls && !c.Change.IsZero() {
			t.Errorf("%s: %s by %s", c.Input, c.Step, c.Change)
		}
	}
	// The inputs of the order itself are left as they were.
	if !j.Prices[0].Amount.Equal(bezels().Prices[0].Amount) || !j.Labour[0].Minutes.Equal(bezels().Labour[0].Minutes) {
		t.Error("the job was changed")
	}
	// Where one per cent more is impossible, the step goes down.
	j.Allowance.Yield, j.Margin.OfPrice = dec("1"), dec("0.995")
	for _, c := range must(j.Sensitivity())(t) {
		if (c.Input == "yield" || c.Input == "margin") != c.Step.IsNegative() {
			t.Errorf("%s: step %s", c.Input, c.Step)
		}
	}
}

// TestPropertyMinimumAndCredits goes through the cases at the edge.
func TestPropertyMinimumAndCredits(t *testing.T) {
	day := price.Date{Year: 2026, Month: 11, Day: 24}
	base := price.Order{Currency: currencies[1], Pieces: 1, SetUp: price.SetUp{Amount: dec("30")},
		Allowance: price.Allowance{Yield: dec("1")},
		Prices:    []price.MetalPrice{{Symbol: "Au", Amount: dec("100"), Per: alloys.PerGram, AsOf: day}},
		Tax:       price.Tax{Rate: dec("0.2")}}
	credit := func(g string) []price.Refined {
		return []price.Refined{{Symbol: "Au", Mass: grams(g), Paid: dec("1")}}
	}
	for name, c := range map[string]struct {
		refined                      []price.Refined
		minimum                      string
		before                       bool
		net, taxBase, tax, sum, left string
	}{
		"plain":                    {nil, "0", false, "30", "30", "6", "36", "0"},
		"credit":                   {credit("0.1"), "0", false, "20", "20", "4", "24", "0"},
		"taxed before credit":      {credit("0.1"), "0", true, "20", "30", "6", "26", "0"},
		"minimum":                  {nil, "50", false, "50", "50", "10", "60", "0"},
		"minimum keeps credit":     {credit("0.1"), "50", false, "50", "50", "10", "60", "10"},
		"part of the credit":       {credit("0.1"), "25", false, "25", "25", "5", "30", "5"},
		"credit over price":        {credit("0.5"), "0", false, "0", "0", "0", "0", "20"},
		"taxed though paid in all": {credit("0.5"), "0", true, "0", "30", "6", "6", "20"},
	} {
		j := base
		j.Refined, j.Minimum, j.Tax.BeforeCredits = c.refined, dec(c.minimum), c.before
		q := must(j.Quote())(t)
		equal(t, name+" net", q.Net, dec(c.net))
		equal(t, name+" tax base", q.TaxBase, dec(c.taxBase))
		equal(t, name+" tax", q.Tax, dec(c.tax))
		equal(t, name+" total", q.Total, dec(c.sum))
		equal(t, name+" credit left", q.CreditLeft, dec(c.left))
	}
}

// TestPropertyLapse: at the minimum charge the mean value of strippings lapses.
// Only the customer's own metal is owed, and it is credited first.
func TestPropertyLapse(t *testing.T) {
	j := bezels()
	j.Refined, j.Minimum = nil, dec("400") // 268.83 to pay, far below it
	q := must(j.Quote())(t)
	equal(t, "strippings alone", q.CreditLeft, dec("0"))
	if text := q.Text(); strings.Contains(text, "still owed") || !strings.Contains(text, "to the minimum charge") {
		t.Error(text)
	}
	j.Refined = bezels().Refined
	// 0.95·0.009·2450.50/31.1034768 = 0.6736
	equal(t, "refined metal beside them", must(j.Quote())(t).CreditLeft, dec("0.67"))
	// 271.1652 before credits: room for 0.3652
	j.Minimum = dec("270.80")
	q = must(j.Quote())(t)
	// 0.67, of which 0.37 are on the line for 0.3652: both together are worth the metal
	equal(t, "room for a part", q.CreditLeft, dec("0.30"))
	for _, l := range q.Lines {
		if l.Kind == price.KindStripped && !l.Amount.IsZero() {
			t.Errorf("%s for strippings while refined metal is owed", l.Amount)
		}
	}
	// Where a unit is much: 3 JPY of gold, 1.5 of it creditable. Rounded each by itself they came to 4.
	for rule, given := range map[price.Rounding]string{price.HalfEven: "3", price.Up: "3"} {
		yen := price.Order{Currency: price.Currency{Code: "JPY"}, Rounding: rule, Pieces: 1,
			Allowance: price.Allowance{Yield: dec("1")},
			Prices: []price.MetalPrice{{Symbol: "Au", Amount: dec("1"), Per: alloys.PerGram,
				AsOf: price.Date{Year: 2026, Month: 11, Day: 20}}},
			Refined: []price.Refined{{Symbol: "Au", Mass: alloys.Weighed{Amount: dec("3"), Unit: alloys.PerGram},
				Paid: dec("1")}},
			Labour: []price.Labour{{Name: "polish", Minutes: dec("60"), PerHour: dec("1.5")}}}
		q := must(yen.Quote())(t)
		sum := q.CreditLeft
		for _, l := range q.Lines {
			if l.Kind == price.KindRefined {
				sum = sum.Sub(l.Amount)
			}
		}
		equal(t, "credited and owed", sum, dec(given))
	}
	j.Minimum = dec("270") // room for all of the refined metal, and a part of the strippings
	equal(t, "room for the metal", must(j.Quote())(t).CreditLeft, dec("0"))
}

// TestPropertyBasis: what a line says it was computed from, in the places of the
// currency, gives its amount.
func TestPropertyBasis(t *testing.T) {
	basis := func(j price.Order, kind price.LineKind) string {
		for _, l := range must(j.Quote())(t).Lines {
			if l.Kind == kind {
				return l.Basis
			}
		}
		return ""
	}
	j := bezels()
	small := j
	small.Minimum = dec("500")
	markup := j
	markup.Margin, markup.Markup = price.Margin{}, price.Markup{OfCost: dec("0.25")}
	fine := j
	fine.Electricity.PerKilowattHour = dec("0.2875")
	yen := j
	yen.Currency, yen.Allowance.Strip = currencies[0], dec("650.0")
	for _, c := range []struct {
		job  price.Order
		kind price.LineKind
		want string
	}{
		{j, price.KindProfit, "25 % of 271.17, the price before credits"}, // 67.79 of it
		{small, price.KindProfit, "25 % of 271.17, the price before the minimum charge"},
		{small, price.KindToMinimum, "minimum charge of 500.00 EUR"},
		{markup, price.KindProfit, "25 % of 203.37, the cost"},
		{j, price.KindSetUp, "12 of 20 pieces share 36.00 EUR"},
		{j, price.KindPower, "1.35 kW·h at 0.31 EUR"},
		{fine, price.KindPower, "1.35 kW·h at 0.2875 EUR"}, // a price may be finer than the currency
		{yen, price.KindStripping, "rejects of 6 %, 650 JPY a piece"},
	} {
		if got := basis(c.job, c.kind); got != c.want {
			t.Errorf("%s: %q, want %q", c.kind, got, c.want)
		}
	}
}

func TestPropertyShares(t *testing.T) {
	j := bezels()
	alone := j
	alone.SetUp.SharedBy = 0
	amount := func(j price.Order) decimal.Decimal {
		for _, l := range must(j.Quote())(t).Lines {
			if l.Kind == price.KindSetUp {
				return l.Amount
			}
		}
		return decimal.Zero
	}
	equal(t, "12 of 20 share 36", amount(j), dec("21.60"))
	equal(t, "alone", amount(alone), dec("36"))
	e := must(price.Quote{Currency: currencies[0], Pieces: 7}.Each(dec("100")))(t)
	if e.String() != "2 at 15, 5 at 14" {
		t.Error(e)
	}
}

func TestPropertyWeigh(t *testing.T) {
	w := must(price.Weigh(412.05e-6, alloys.PerGram, 4, price.HalfEven))(t)
	equal(t, "half even", w.Amount, dec("0.4120"))
	equal(t, "up", must(price.Weigh(412.05e-6, alloys.PerGram, 4, price.Up))(t).Amount, dec("0.4121"))
	equal(t, "ounces", must(price.Weigh(31.1034768e-3, alloys.PerTroyOunce, 6, price.HalfEven))(t).Amount, dec("1"))
	equal(t, "minutes", must(price.Minutes(100, 2, price.HalfUp))(t), dec("1.67"))
	equal(t, "energy", must(price.KilowattHours(1.35*units.KilowattHour, 3, price.HalfEven))(t), dec("1.35"))
	equal(t, "nothing", must(price.Weigh(0, alloys.PerGram, 4, price.Up))(t).Amount, dec("0"))
	equal(t, "next to nothing", must(price.Weigh(5e-324, alloys.PerGram, 4, price.Up))(t).Amount, dec("0.0001"))
	r := rand.New(rand.NewSource(6))
	for i := 0; i < 2000; i++ { // the same as package alloys, which rounds half to even
		m := units.Mass(r.ExpFloat64() * 1e-3)
		for _, u := range tradeUnits {
			equal(t, m.String(), must(price.Weigh(m, u, 5, price.HalfEven))(t).Amount,
				must(alloys.NewWeighed(m, u, 5))(t).Amount)
		}
	}
}

func TestPropertyText(t *testing.T) {
	j := bezels()
	q := must(j.Quote())(t)
	text := q.Text()
	for _, want := range []string{"as of 2026-11-24", "margin", "before tax", "for 12 pieces",
		"25 % of 271.17, the price before credits", "rejects of 6 %, 4.50 EUR a piece", "at 2450.50 EUR per ozt as of",
		"total EUR"} {
		if !strings.Contains(text, want) {
			t.Errorf("%q is missing in\n%s", want, text)
		}
	}
	raw := must(json.Marshal(q))(t)
	var back price.Quote
	if err := json.Unmarshal(raw, &back); err != nil {
		t.Fatal(err)
	}
	if back.Text() != text {
		t.Errorf("JSON and back:\n%s", back.Text())
	}
	if !strings.Contains(string(raw), `"kind":"deposit metal"`) || !strings.Contains(string(raw),
		`"as_of":"2026-11-24"`) {
		t.Errorf("%s", raw)
	}
	j.Refined[0].Mass = grams("90")
	if text := must(j.Quote())(t).Text(); !strings.Contains(text, "still owed") {
		t.Error(text)
	}
}

func TestPropertyDates(t *testing.T) {
	for text, fine := range map[string]bool{
		"2026-11-25": true, "2024-02-29": true, "2000-02-29": true, "2026-02-29": false, "1900-02-29": false,
		"2026-13-01": false, "2026-00-10": false,
		"2026-04-31": false, "2026-06-30": true, "1899-12-31": false, "0000-00-00": false, "2026-1-05": false,
		"26-11-25": false, "2026/11/25": false,
		"+026-11-25": false, "2026-11-25 ": false, "": false, "2026-11-2x": false,
	} {
		d, err := price.ParseDate(text)
		if (err == nil) != fine {
			t.Errorf("%q: %v, %v", text, d, err)
		}
		if err != nil {
			refused(t, text, err, nil)
		} else if d.String() != text {
			t.Errorf("%q comes back as %q", text, d)
		}
	}
	var d price.Date
	if b, err := d.MarshalText(); len(b) != 0 || err != nil || d.UnmarshalText(nil) != nil || !d.IsZero() {
		t.Error("the zero date")
	}
}

func FuzzParseDate(f *testing.F) {
	f.Add("2026-11-25")
	f.Add("2024-02-30")
	f.Add("-1-1-1")
	f.Fuzz(func(t *testing.T, text string) {
		d, err := price.ParseDate(text)
		if err != nil {
			refused(t, text, err, nil)
			return
		}
		if d.String() != text || d.Check("date") != nil {
			t.Errorf("%q became %+v", text, d)
		}
	})
}

// TestPropertyWorkGrowsWithLines: an order of four times the lines takes about four
// times the work, not sixteen times. Work is counted in allocations, which depend on
// no machine's speed.
func TestPropertyWorkGrowsWithLines(t *testing.T) {
	job := func(lines int) price.Order {
		j := bezels()
		for i := range lines / 4 {
			j.Deposit = append(j.Deposit, price.Metal{Symbol: "Au", Mass: grams("0.25")})
			j.Refined = append(j.Refined, price.Refined{Symbol: "Ni", Mass: grams("0.5"), Paid: dec("0.9")})
			j.Salts = append(j.Salts, price.Salt{Mass: grams("3"), Amount: decimal.New(int64(100+i), -2),
				Per: alloys.PerGram})
			j.Labour = append(j.Labour, price.Labour{Minutes: decimal.New(int64(i), -1), PerHour: dec("54")})
		}
		return j
	}
	for name, run := range map[string]func(j *price.Order) error{
		"quote": func(j *price.Order) error { _, err := j.Quote(); return err },
		"text":  func(j *price.Order) error { q, err := j.Quote(); _ = q.Text(); return err },
		"sensitivity": func(j *price.Order) error {
			list, err := j.Sensitivity()
			if err == nil && len(list) < len(j.Labour) {
				t.Errorf("%d changes of %d tasks", len(list), len(j.Labour))
			}
			return err
		},
	} {
		count := func(lines int) float64 {
			j := job(lines)
			return testing.AllocsPerRun(1, func() {
				if err := run(&j); err != nil {
					t.Fatal(err)
				}
			})
		}
		if few, many := count(200), count(800); many > 6*few {
			t.Errorf("%s: %.0f allocations for 200 lines and %.0f for 800", name, few, many)
		}
	}
}
