package alloys_test

import (
	"testing"
	"time"

	"example.com/laydown/alloys"
	"github.com/shopspring/decimal"
)

// TestPropertyErrorIsShort: an error that holds a decimal of a thousand million
// digits is written at once.
func TestPropertyErrorIsShort(t *testing.T) {
	done := make(chan string, 1)
	huge := decimal.New(1, 2_000_000_000)
	go func() { done <- (&alloys.BelowSeriesError{Symbol: "Au\x1b[2K\n", Assay: huge, Lowest: huge}).Error() }()
	select {
	case s := <-done:
		const want = `assay of Au\x1b[2K\n (of decimal exponent 2000000000) ‰: below every mark of the series; need ` +
			`(of decimal exponent 2000000000) ‰ for the lowest mark`
		if s != want {
			t.Errorf("%.300q", s)
		}
	case <-time.After(5 * time.Second):
		t.Fatal("not written in five seconds")
	}
}
