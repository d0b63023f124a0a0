package price_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/laydown/plating/price"
	"example.com/laydown/units"
)

// TestPropertyRules: each rounding rule and each kind of line comes back from its text,
// and what is none has a word of its own and no text.
func TestPropertyRules(t *testing.T) {
	for rule, word := range map[price.Rounding]string{price.HalfEven: "half even", price.HalfUp: "half up",
		price.Up: "up"} {
		back := price.Rounding(99)
		if b, err := rule.MarshalText(); err != nil || string(b) != word || back.UnmarshalText(b) != nil ||
			back != rule {
			t.Errorf("%d: %q, %v, back %d", rule, b, err, back)
		}
	}
	for _, none := range []price.Rounding{price.Up + 1, 255} {
		if none.String() != "unknown rule" {
			t.Errorf("%d is %q", none, none)
		}
		refused(t, "rule", none.Check(), units.ErrOutOfRange)
		_, err := none.MarshalText()
		refused(t, "text of a rule", err, units.ErrOutOfRange)
	}
	refused(t, "unknown rule", new(price.Rounding).UnmarshalText([]byte("unknown rule")), units.ErrSyntax)

	words := map[string]bool{}
	for kind := price.KindDeposit; kind <= price.KindTax; kind++ {
		back := price.LineKind(99)
		b, err := kind.MarshalText()
		if err != nil || string(b) != kind.String() || words[kind.String()] || back.UnmarshalText(b) != nil ||
			back != kind {
			t.Errorf("%d: %q, %v, back %d", kind, b, err, back)
		}
		words[kind.String()] = true
	}
	for _, none := range []price.LineKind{price.KindTax + 1, 255} {
		if none.String() != "unknown" {
			t.Errorf("%d is %q", none, none)
		}
		_, err := none.MarshalText()
		refused(t, "text of a kind", err, units.ErrOutOfRange)
	}
	refused(t, "unknown", new(price.LineKind).UnmarshalText([]byte("unknown")), units.ErrSyntax)
}

// TestPropertyNil: what is not there is refused, not read.
func TestPropertyNil(t *testing.T) {
	var quote *price.Quote
	var job *price.Order
	_, quoteErr := job.Quote()
	_, changes := job.Sensitivity()
	for name, err := range map[string]error{
		"rounding rule to read into": (*price.Rounding)(nil).UnmarshalText([]byte("up")),
		"kind of line to read into":  (*price.LineKind)(nil).UnmarshalText([]byte("tax")),
		"date to read into":          (*price.Date)(nil).UnmarshalText([]byte("2026-11-25")),
		"quote":                      quote.Check(),
		"job":                        job.Check(), "job ": quoteErr, "job  ": changes,
	} {
		refused(t, name, err, units.ErrNotGiven)
		if err != nil && !strings.HasPrefix(err.Error(), strings.TrimSpace(name)+" nil") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestPropertyQuoteKeepsItsRule: the quote names the rule that it was rounded by.
func TestPropertyQuoteKeepsItsRule(t *testing.T) {
	j := bezels()
	j.Rounding = price.Up
	if q := must(j.Quote())(t); q.Rounding != price.Up {
		t.Errorf("rounded by %s", q.Rounding)
	}
}

// TestPropertyEachInWords: a sum that divides has one price, and one piece has no
// price of its own in the text.
func TestPropertyEachInWords(t *testing.T) {
	j := bezels()
	q := must(j.Quote())(t)
	e := must(q.Each(dec("24")))(t)
	equal(t, "low", e.Low, dec("2"))
	equal(t, "high", e.High, dec("2"))
	if e.Higher != 0 || e.String() != "2.00 each" {
		t.Errorf("%+v is %s", e, e)
	}
	j.Pieces = 2
	if text := must(j.Quote())(t).Text(); !strings.Contains(text, "for 2 pieces: ") {
		t.Error(text)
	}
	j.Pieces = 1
	if text := must(j.Quote())(t).Text(); strings.Contains(text, "for 1 pieces") {
		t.Error(text)
	}
	q.Total = dec("-1") // of a quote from outside: it has no price of a piece
	if text := q.Text(); !strings.Contains(text, "-1.00\n") || strings.Contains(text, "pieces:") {
		t.Error(text)
	}
}

// TestPropertyTextOfNothing: a job that costs nothing shows its tax, in columns.
func TestPropertyTextOfNothing(t *testing.T) {
	j := price.Order{Currency: currencies[1], Pieces: 1, Allowance: price.Allowance{Yield: dec("1")},
		Tax: price.Tax{Rate: dec("0.2")}}
	const want = "before tax         0.00\ntax                0.00  20 % of 0.00\ntotal EUR          0.00\n"
	if text := must(j.Quote())(t).Text(); text != want {
		t.Errorf("%s\nwant\n%s", text, want)
	}
}

// TestPropertyBasisAtTheMinimum: a set-up of its own, and a price of exactly the
// minimum charge, which nothing was added to.
func TestPropertyBasisAtTheMinimum(t *testing.T) {
	j := price.Order{Currency: currencies[1], Pieces: 1, Allowance: price.Allowance{Yield: dec("1")},
		SetUp: price.SetUp{Amount: dec("30")}, Margin: price.Margin{OfPrice: dec("0.25")}, Minimum: dec("40")}
	q := must(j.Quote())(t)
	if len(q.Lines) != 2 || q.Lines[0].Basis != "once for the batch" ||
		q.Lines[1].Basis != "25 % of 40.00, the price before credits" {
		t.Errorf("%+v", q.Lines)
	}
	j.Minimum = dec("40.01")
	q = must(j.Quote())(t)
	if len(q.Lines) != 3 || q.Lines[1].Basis != "25 % of 40.00, the price before the minimum charge" {
		t.Errorf("%+v", q.Lines)
	}
	equal(t, "to the minimum", q.Lines[2].Amount, dec("0.01"))
}

// TestPropertyForeignPrice: a metal price that nobody can write out is refused with the quote.
func TestPropertyForeignPrice(t *testing.T) {
	var q price.Quote
	text := `{"currency":{"code":"EUR","places":2},"pieces":2,"lines":[],"total":"1",` +
		`"prices":[{"symbol":"Au","amount":"1e9000"}]}`
	if err := json.Unmarshal([]byte(text), &q); err != nil {
		t.Fatal(err)
	}
	refused(t, "a price", q.Check(), units.ErrOutOfRange)
}

// TestPropertyUnusedPrice: a price is checked though no metal of the job has it.
func TestPropertyUnusedPrice(t *testing.T) {
	for name, c := range map[string]struct {
		spoil  func(p *price.MetalPrice)
		reason error
	}{
		"price of Ag":             {func(p *price.MetalPrice) { p.Amount = dec("-1") }, units.ErrNegative},
		"unit of the price of Ag": {func(p *price.MetalPrice) { p.Per = 0 }, units.ErrUnknownUnit},
		"date of the price of Ag": {func(p *price.MetalPrice) { p.AsOf.Day = 32 }, units.ErrOutOfRange},
	} {
		j := bezels()
		j.Prices = append(j.Prices, j.Prices[0])
		unused := &j.Prices[2]
		unused.Symbol = "Ag"
		if err := j.Check(); err != nil {
			t.Fatal(err)
		}
		c.spoil(unused)
		for _, err := range []error{j.Check(), func() error { _, err := j.Quote(); return err }()} {
			refused(t, name, err, c.reason)
			if err != nil && !strings.HasPrefix(err.Error(), name+" ") {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
}

// TestPropertyMarginTies: margin and markup round a tie to the even digit.
func TestPropertyMarginTies(t *testing.T) {
	// 0.2/0.8 = 0.25, 0.75/0.25 = 3, 1/(1 + 1) = 0.5, 0.6/1.6 = 0.375
	equal(t, "markup", must(price.Margin{OfPrice: dec("0.2")}.Markup(1))(t).OfCost, dec("0.2"))
	equal(t, "no tie", must(price.Margin{OfPrice: dec("0.75")}.Markup(0))(t).OfCost, dec("3"))
	equal(t, "margin", must(price.Markup{OfCost: dec("1")}.Margin(0))(t).OfPrice, dec("0"))
	equal(t, "to the even digit above", must(price.Markup{OfCost: dec("0.6")}.Margin(2))(t).OfPrice, dec("0.38"))
}
