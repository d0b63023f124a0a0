package ledger_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// TestPropertyHostileWords: words with control characters are refused where they come
// in; a book of before that holds them opens and is written as it was.
func TestPropertyHostileWords(t *testing.T) {
	for name, hostile := range map[string]string{"escape": "\x1b[2K", "return": "x\r  12  load", "backspace": "x\b\b",
		"bidi": "a\u202eb", "separator": "a\u2028b", "C1": "\u009b2K", "no width": "Au\u200b"} {
		bath := goldBath()
		bath.Name += hostile
		_, err := ledger.New(bath, day(0))
		wantField(t, name, err, "name of the bath", units.ErrSyntax)
		bath = goldBath()
		bath.Source += hostile
		_, err = ledger.New(bath, day(0))
		wantField(t, name, err, "source of the bath", units.ErrSyntax)
		l := must(ledger.New(goldBath(), day(0)))
		load := ledger.Load{Charge: units.AmpereMinute}
		_, err = l.Post(ledger.Entry{When: day(1), Event: load, Note: "6 bezels" + hostile})
		wantField(t, name, err, "note", units.ErrSyntax)
		spill := ledger.Correction{Metal: units.Gram, Reason: "found" + hostile}
		_, err = l.Post(ledger.Entry{When: day(1), Event: spill})
		wantField(t, name, err, "reason of the correction", units.ErrSyntax)
		if text := fmt.Sprint(err); units.Printable(text) != text {
			t.Errorf("%s: the error shows it: %q", name, text)
		}
		must(l.Post(ledger.Entry{When: day(1), Event: load, Note: "two\nlines"})) // a note may have them

		quoted := string(must(json.Marshal("old " + hostile)))
		lines := payloads(bytesOf(l))
		lines[0] = strings.Replace(lines[0], `"gold, acid cyanide, cobalt hardened"`, quoted, 1)
		lines[1] = strings.Replace(lines[1], `"two\nlines"`, quoted, 1)
		lines = append(lines, `{"seq":2,"when":"2026-03-04T08:00:00Z","correction":{"metal":"0.001 kg","reason":`+quoted+
			`}}`)
		old := written(lines...)
		book, err := ledger.Open(reader(old))
		if err != nil || book.Account().Name != "old "+hostile || book.Records()[0].Entry.Note != "old "+hostile ||
			book.Records()[1].Entry.Event.(ledger.Correction).Reason != "old "+hostile {
			t.Errorf("%s: a book of before: %v", name, err)
			continue
		}
		if !bytes.Equal(bytesOf(book), old) {
			t.Errorf("%s: a book of before is written otherwise", name)
		}
		if _, err := book.ByCharge(book.Account().Salts[0]); err != nil {
			t.Errorf("%s: no advice from a book of before: %v", name, err)
		}
		must(book.Post(ledger.Entry{When: day(3), Event: load}))
	}
}

// TestPropertyNothingOpened: nil where a book, bath, reader or writer belongs is an
// error or nothing, never a panic.
func TestPropertyNothingOpened(t *testing.T) {
	var l *ledger.Ledger
	var f *ledger.File
	var b *ledger.Account
	e := ledger.Entry{When: day(1), Event: ledger.Load{Charge: 1}}
	good := must(ledger.New(goldBath(), day(0)))
	second := func(_ any, err error) error { return err }
	for name, err := range map[string]error{
		"read": second(ledger.Read(nil)), "open": second(ledger.Open(nil)),
		"start":  second(ledger.Start(nil, goldBath(), day(0))),
		"append": second(good.Append(nil, e)), "write": second(good.WriteTo(nil)), "post": second(l.Post(e)),
		"forecast": second(l.Forecast(ledger.Plan{Next: 1})), "by analysis": second(l.ByAnalysis(formula("KAu(CN)2"))),
		"by charge": second(l.ByCharge(formula("KAu(CN)2"))), "write nothing": second(l.WriteTo(&bytes.Buffer{})),
		"bath": b.Check(), "rates": second(b.Rates()), "salt": second(b.SaltPerCharge(formula("KAu(CN)2"))),
	} {
		if !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if _, err := f.Append(e); !errors.Is(err, os.ErrClosed) {
		t.Errorf("append: %v", err)
	}
	if err := f.Close(); !errors.Is(err, os.ErrClosed) {
		t.Errorf("close: %v", err)
	}
	if l.Len() != 0 || l.Records() != nil || l.State().Metal != 0 || !l.Opened().IsZero() || l.Account().Name != "" ||
		l.Ahead(day(0)) != nil || new(ledger.File).Len() != 0 || b.Solution().Name != "" {
		t.Error("a book that is not there holds something")
	}
}
