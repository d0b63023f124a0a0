package pictures

import (
	"bytes"
	"image/png"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// silverBook returns a book with some entries, a day apart.
func silverBook(t *testing.T, events ...ledger.Event) *ledger.Ledger {
	t.Helper()
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	book, err := ledger.New(ledger.Account{Name: "silver", Metal: "Ag", Volume: 8 * units.Litre,
		Content:            30 * units.GramPerLitre,
		ContentUncertainty: units.GramPerLitre, Low: 25 * units.GramPerLitre, Target: 32 * units.GramPerLitre,
		Equivalent: 1.118e-6, Efficiency: ledger.EfficiencyRange{Value: 0.99}}, opened)
	for i, e := range events {
		if err == nil {
			_, err = book.Post(ledger.Entry{When: opened.AddDate(0, 0, i+1), Event: e})
		}
	}
	if err != nil {
		t.Fatal(err)
	}
	return book
}

// TestPropertyBookTrace: the picture has a point for the opening and each entry that counts;
// what is voided, and the void itself, happened to no bath.
func TestPropertyBookTrace(t *testing.T) {
	book := silverBook(t, ledger.Addition{Metal: 7 * units.Gram}, ledger.Load{Charge: 10 * units.AmpereMinute},
		ledger.Analysis{Content: 29 * units.GramPerLitre,
			Uncertainty: units.GramPerLitre}, ledger.Addition{Water: units.Litre / 10},
		ledger.Void{Entry: 1, Reason: "of the other bath"})
	tr := traceOfBook(book)
	if len(tr.content) != 4 || len(tr.additions) != 0 || len(tr.analyses) != 1 || tr.content[3].X != 10 || !tr.unsure() {
		t.Errorf("%+v", tr)
	}
	if tr.upper[0].Y != 32 || tr.lower[0].Y != 28 || tr.analyses[0].Y != 29 || tr.bars[0].High != 2 {
		t.Errorf("two standard uncertainties: %+v", tr)
	}
	if tr := traceOfBook(silverBook(t, ledger.Addition{Metal: 7 * units.Gram})); len(tr.additions) != 1 {
		t.Errorf("an addition: %+v", tr)
	}
}

// TestPropertyBookPicture: of any book, the empty one too, there is a picture in both forms,
// of one size and with the limits that are watched.
func TestPropertyBookPicture(t *testing.T) {
	for name, book := range map[string]*ledger.Ledger{"empty": silverBook(t),
		"used": silverBook(t, ledger.Load{Charge: 10 * units.AmpereMinute})} {
		svg, err := Book(book, ".SVG")
		if err != nil || !bytes.HasPrefix(svg, []byte("<?xml")) {
			t.Fatalf("%s: %v", name, err)
		}
		for word, there := range map[string]bool{"A·min": true, "Ag content, g/L": true, "low alarm": true,
			"target": true, "high alarm": false} {
			if strings.Contains(string(svg), word) != there {
				t.Errorf("%s: %q in the picture is %t", name, word, !there)
			}
		}
		raw, err := Book(book, ".png")
		if err != nil {
			t.Fatal(err)
		}
		img, err := png.Decode(bytes.NewReader(raw))
		if err != nil {
			t.Fatal(err)
		}
		if b := img.Bounds(); b.Dx() != 1417 || b.Dy() != 866 { // 180 mm by 110 mm at 200 dots an inch
			t.Errorf("%s: %v", name, b)
		}
	}
}

// TestPropertyBookTicks: steps are of 1, 2 or 5, five to twelve of them, and of nothing none.
func TestPropertyBookTicks(t *testing.T) {
	for _, span := range []float64{1e-6, 0.3, 1, 7, 19, 1e6} {
		ticks := bookTicks(3, 3+span)
		if len(ticks) < 5 || len(ticks) > 12 {
			t.Errorf("%g: %d ticks", span, len(ticks))
		}
	}
	if ticks := bookTicks(6.9, 8.2); len(ticks) != 7 || ticks[0].Label != "7.0" || ticks[1].Label != "7.2" {
		t.Errorf("%v", ticks)
	}
	if bookTicks(3, 3) != nil {
		t.Error("ticks of nothing")
	}
}
