package price_test

import (
	"math/rand"
	"os"
	"runtime"
	"strconv"
	"sync"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/testdata"
	"github.com/shopspring/decimal"
)

// TestPropertyQuotesAddUp prices random jobs and looks at every quote: lines add
// up to the total, nothing but credits is below zero, the minimum is kept, the
// tax is on the right base, the pieces add up. Five thousand jobs as a rule;
// a million with
//
//	LAYDOWN_QUOTES=1000000 go test -run QuotesAddUp ./plating/price
//
// which takes about 40 s of processor time, shared among the cores.
func TestPropertyQuotesAddUp(t *testing.T) {
	n := 5_000
	if !testdata.Slow() {
		n = 1_000
	}
	if s := os.Getenv("LAYDOWN_QUOTES"); s != "" {
		v, err := strconv.Atoi(s)
		if err != nil || v < 1 {
			t.Fatalf("LAYDOWN_QUOTES=%q is no number of quotes", s)
		}
		n = v
	}
	workers := runtime.GOMAXPROCS(0)
	var wg sync.WaitGroup
	counts := make([]tally, workers)
	for w := range workers {
		wg.Add(1)
		go func() {
			defer wg.Done()
			r := rand.New(rand.NewSource(int64(1000 + w)))
			for i := w; i < n && !t.Failed(); i += workers {
				j := random(r)
				q, err := j.Quote()
				if err != nil {
					t.Errorf("%+v: %v", j, err)
					return
				}
				addsUp(t, &j, &q, &counts[w])
			}
		}()
	}
	wg.Wait()
	var sum tally
	for _, c := range counts {
		sum.minimum, sum.left, sum.moved, sum.taxed = sum.minimum+c.minimum, sum.left+c.left,
			sum.moved+c.moved, sum.taxed+
				c.taxed
	}
	t.Logf("%d quotes: %d at the minimum, %d with credit left, %d taxed before credits", n, sum.minimum, sum.left,
		sum.taxed)
	if sum.minimum == 0 || sum.left == 0 || sum.taxed == 0 {
		t.Error("a case was never met")
	}
}

type tally struct{ minimum, left, moved, taxed int }

// owed holds what is left of the credits against the refined metal: with what
// was credited for it, it is what the metal is worth, and the mean value of
// strippings is never owed.
func owed(fail func(string), j *price.Order, q *price.Quote) {
	if q.CreditLeft.IsNegative() {
		fail("credit left is below zero")
	}
	grams := map[alloys.TradeUnit]string{alloys.PerGram: "1", alloys.PerKilogram: "1000",
		alloys.PerTroyOunce: "31.1034768", alloys.PerPennyweight: "1.55517384"}
	rest, unit := q.CreditLeft.Neg(), decimal.New(1, -q.Currency.Places)
	for _, r := range j.Refined {
		for _, p := range j.Prices {
			if p.Symbol == r.Symbol {
				worth := r.Mass.Amount.Mul(dec(grams[r.Mass.Unit])).Mul(p.Amount).Mul(r.Paid)
				rest = rest.Add(worth.DivRound(dec(grams[p.Per]), 12))
			}
		}
	}
	slack := unit // for rounding: CreditLeft, and each line
	for _, l := range q.Lines {
		if l.Kind == price.KindRefined {
			rest, slack = rest.Add(l.Amount), slack.Add(unit)
		}
		if l.Kind == price.KindStripped && l.Amount.Abs().GreaterThan(unit) && q.CreditLeft.IsPositive() {
			fail("strippings are credited while refined metal is owed")
		}
	}
	if rest.Abs().GreaterThanOrEqual(slack.Add(decimal.New(1, -9))) {
		fail("refined metal worth " + rest.String() + " is neither credited nor owed")
	}
	if len(j.Refined) == 0 && !q.CreditLeft.IsZero() {
		fail("a credit is owed though no metal came back")
	}
}

func addsUp(t *testing.T, j *price.Order, q *price.Quote, c *tally) {
	fail := func(why string) { t.Errorf("%s\n%+v\n%s", why, *j, q.Text()) }
	places := q.Currency.Places
	sum, credits := decimal.Zero, decimal.Zero
	for _, l := range q.Lines {
		sum = sum.Add(l.Amount)
		switch {
		case !l.Amount.Equal(l.Amount.Truncate(places)):
			fail("a line is finer than the currency")
		case l.Kind.Credit():
			credits = credits.Add(l.Amount)
			if l.Amount.IsPositive() {
				fail("a credit is above zero")
			}
		case l.Amount.IsNegative():
			fail("a line is below zero")
		case l.Kind == price.KindToMinimum:
			c.minimum++
			if q.Net.Sub(credits).LessThan(j.Minimum) {
				fail("raised to less than the minimum")
			}
		}
	}
	if !sum.Equal(q.Total) {
		fail("the lines come to " + sum.String())
	}
	if !q.Net.Add(q.Tax).Equal(q.Total) {
		fail("net and tax are not the total")
	}
	if q.Net.LessThan(j.Minimum) || q.Net.IsNegative() {
		fail("less than the minimum charge")
	}
	base := q.Net
	if j.Tax.BeforeCredits {
		base = base.Sub(credits)
		if !credits.IsZero() && q.Tax.IsPositive() {
			c.taxed++
		}
	}
	tax, err := j.Rounding.Round(base.Mul(j.Tax.Rate), places)
	if err != nil || !tax.Equal(q.Tax) || !base.Equal(q.TaxBase) {
		fail("tax is not " + tax.String())
	}
	owed(fail, j, q)
	if q.CreditLeft.IsPositive() {
		c.left++
		if q.Net.Sub(j.Minimum).GreaterThan(decimal.New(1, -places)) {
			fail("credit is left though there is room for it")
		}
	}
	e, err := q.Each(q.Total)
	if err != nil {
		fail(err.Error())
		return
	}
	all := e.High.Mul(decimal.New(int64(e.Higher), 0)).Add(e.Low.Mul(decimal.New(int64(e.Pieces-e.Higher), 0)))
	if !all.Equal(q.Total) || e.High.Sub(e.Low).GreaterThan(decimal.New(1, -places)) {
		fail("the pieces come to " + all.String())
	}
}
