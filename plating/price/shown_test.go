package price_test

import (
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// TestPropertyNamesShow: names with control characters stay in their line of the
// quote, and what was in them can be seen.
func TestPropertyNamesShow(t *testing.T) {
	const hostile = "x\ntotal EUR 1.00\x1b[2K\r\u202e\u2028"
	j := bezels()
	q := must(j.Quote())(t)
	before := strings.Count(q.Text(), "\n")
	for i := range q.Lines {
		q.Lines[i].Name, q.Lines[i].Basis = hostile, hostile
	}
	for i := range q.Prices {
		q.Prices[i].Symbol = hostile
	}
	text := q.Text()
	if n := strings.Count(text, "\n"); n != before || strings.Contains(text, "\ntotal EUR 1.00") {
		t.Errorf("%d lines, want %d:\n%s", n, before, text)
	}
	for _, line := range strings.Split(text, "\n") {
		if units.Printable(line) != line {
			t.Errorf("%q", line)
		}
	}
	if !strings.Contains(text, `x\ntotal EUR 1.00\x1b[2K\r\u202e\u2028`) {
		t.Errorf("what was in the names cannot be seen:\n%s", text)
	}
}

// TestPropertyEachIsShort: an Each that no quote makes is written at once, and says so.
func TestPropertyEachIsShort(t *testing.T) {
	huge := decimal.New(1, 2_000_000_000)
	for name, e := range map[string]price.Each{"places": {Places: 2_000_000_000}, "negative": {Places: -2_000_000_000},
		"low": {Low: huge, Places: 2}, "high": {Higher: 1, High: huge, Places: 2}} {
		done := make(chan string, 1)
		go func() { done <- e.String() }()
		select {
		case s := <-done:
			if len(s) > 200 || !strings.HasPrefix(s, "no price: ") {
				t.Errorf("%s: %.200s", name, s)
			}
		case <-time.After(5 * time.Second):
			t.Fatalf("%s: not written in five seconds", name)
		}
	}
}
