package ledger_test

import (
	"bytes"
	"errors"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestPropertySense: a book takes no entry that would bring more metal into a litre than
// any bath holds, and no bath of such content or volume is opened; the book is as it
// was.
func TestPropertySense(t *testing.T) {
	bath := goldBath()
	bath.Volume, bath.Content = 5*units.Litre, 8*units.GramPerLitre
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	l, err := ledger.New(bath, opened)
	if err != nil {
		t.Fatal(err)
	}
	at := opened.Add(time.Hour)
	for name, e := range map[string]ledger.Event{
		"13 kg into 5 L": ledger.Addition{Metal: 13 * units.Kilogram},
		"an analysis of 8 kg": ledger.Analysis{Content: 8000 * units.GramPerLitre, Uncertainty: units.GramPerLitre,
			Reset: true},
		"a correction":        ledger.Correction{Metal: 7 * units.Kilogram, Reason: "found"},
		"all but boiled away": ledger.Evaporation{Volume: 4.99 * units.Litre},
	} {
		_, err := l.Post(ledger.Entry{When: at, Event: e})
		var value *units.ValueError
		if !errors.As(err, &value) || !strings.Contains(err.Error(), "check the unit and the point") &&
			name != "all but boiled away" {
			t.Errorf("%s: %v", name, err)
		}
		if l.Len() != 0 {
			t.Fatalf("%s stands in the book", name)
		}
	}
	if _, err := l.Post(ledger.Entry{When: at, Event: ledger.Addition{Metal: 10 * units.Gram}}); err != nil {
		t.Error(err)
	}
	for name, change := range map[string]func(*ledger.Account){
		"content": func(b *ledger.Account) { b.Content = 1e6 * units.GramPerLitre },
		"volume":  func(b *ledger.Account) { b.Volume = 1e6 * units.CubicMetre },
	} {
		b := bath
		b.Low, b.High, b.Target = 0, 0, 0
		change(&b)
		if _, err := ledger.Start(&bytes.Buffer{}, b, opened); err == nil || !strings.Contains(err.Error(),
			"check the unit") {
			t.Errorf("%s: %v", name, err)
		}
	}
}
