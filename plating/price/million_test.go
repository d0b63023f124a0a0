package price_test

import (
	"math/rand"
	"os"
	"runtime"
	"strconv"
	"sync"
	"testing"

	"example.com/laydown/plating/price"
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
	if testing.Short() {
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
		sum.minimum, sum.left, sum.moved, sum.taxed = sum.minimum+c.minimum, sum.left+c.left, sum.moved+c.moved, sum.taxed+c.taxed
	}
	t.Logf("%d quotes: %d at the minimum, %d with credit left, %d taxed before credits", n, sum.minimum, sum.left, sum.taxed)
	if sum.minimum == 0 || sum.left == 0 || sum.taxed == 0 {
		t.Error("a case was never met")
	}
}

type tally struct{ minimum, left, moved, taxed int }

func addsUp(t *testing.T, j *price.Job, q *price.Quote, c *tally) {
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
	if q.CreditLeft.IsNegative() {
		fail("credit left is below zero")
	}
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
