package ledger

import (
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// sealed gives payloads the checksums they should have, so that what is behind
// the checksum is tested.
func sealed(payloads ...string) string {
	var b strings.Builder
	sum := uint32(0)
	for _, p := range payloads {
		sum = checksum(sum, []byte(p))
		fmt.Fprintf(&b, "%s%08x%s%s}\n", head, sum, middle, p)
	}
	return b.String()
}

const opening = `{"seq":0,"format":"laydown ledger 1","when":"2026-03-02T08:00:00Z","opening":{"name":"silver","metal":"Ag","volume":"8 L","content":"30 g/L","equivalent":"1.118 mg/C","efficiency":{"value":"99 %"}}}`

// TestPropertyFields: fields that a line with a sound checksum must not have.
func TestPropertyFields(t *testing.T) {
	if _, err := Open(strings.NewReader(sealed(opening,
		`{"seq":1,"when":"2026-03-02T09:00:00Z","load":{"charge":"12 A·min"}}`))); err != nil {
		t.Fatal("a sound book:", err)
	}
	load := func(fields string) string {
		return `{"seq":1,"when":"2026-03-02T09:00:00Z","load":{` + fields + `}}`
	}
	for name, c := range map[string]struct{ payload, want string }{
		"unknown":         {load(`"charge":"12 C","colour":"red"`), "colour"},
		"unknown outside": {`{"seq":1,"when":"2026-03-02T09:00:00Z","load":{"charge":"12 C"},"who":"x"}`, "who"},
		"capitals":        {load(`"Charge":"12 C"`), "Charge"},
		"long s":          {load(`"charge":"12 C","drag_out":"1 mL","drag_out_uncertaintyſ":"1 mL"`), "unknown"},
		"twice":           {load(`"charge":"12 C","charge":"13 C"`), "twice"},
		"number":          {load(`"charge":12`), "number"},
		"null":            {load(`"charge":null`), "null"},
		"unit":            {load(`"charge":"12 kg"`), "charge"},
		"no unit":         {load(`"charge":"12"`), "charge"},
		"negative":        {load(`"charge":"-12 C"`), "below zero"},
		"empty load":      {load(``), "nothing given"},
		"two events": {
			`{"seq":1,"when":"2026-03-02T09:00:00Z","load":{"charge":"12 C"},"evaporation":{"volume":"1 mL"}}`, "one of"},
		"no event":       {`{"seq":1,"when":"2026-03-02T09:00:00Z"}`, "one of"},
		"second opening": {strings.Replace(opening, `"seq":0`, `"seq":1`, 1), "not the first line"},
		"no time":        {`{"seq":1,"load":{"charge":"12 C"}}`, "year"},
		"time":           {`{"seq":1,"when":"yesterday","load":{"charge":"12 C"}}`, "yesterday"},
		"older":          {`{"seq":1,"when":"2026-03-02T07:00:00Z","load":{"charge":"12 C"}}`, "not before"},
		"sequence":       {`{"seq":2,"when":"2026-03-02T09:00:00Z","load":{"charge":"12 C"}}`, "sequence"},
		"more metal":     {`{"seq":1,"when":"2026-03-02T09:00:00Z","load":{"charge":"1000 A·h"}}`, "metal in the bath"},
		"deep":           {`{"seq":1,"load":` + strings.Repeat(`{"load":`, 20) + `1` + strings.Repeat(`}`, 21), "deep"},
		"array":          {`[]`, "fields"},
		"two values":     {load(`"charge":"12 C"`) + ` {}`, "more text"},
		"utf-8":          {load(`"charge":"12 C"`)[:10] + "\xff", "UTF-8"},
		"no json":        {`charge 12`, "fields"},
		"salt": {`{"seq":1,"when":"2026-03-02T09:00:00Z","addition":{"salt":"KAu(CN)2","salt_mass":"1 g"}}`,
			"0 % Ag"},
		"formula": {`{"seq":1,"when":"2026-03-02T09:00:00Z","addition":{"salt":"Kax","salt_mass":"1 g"}}`, "formula"},
	} {
		l, err := Open(strings.NewReader(sealed(opening, c.payload)))
		damage := (*DamageError)(nil)
		if !errors.As(err, &damage) || damage.Line != 2 || l != nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v; want line 2 and %q", name, err, c.want)
		}
	}
	for name, c := range map[string]struct{ payload, want string }{
		"version":    {strings.Replace(opening, "ledger 1", "ledger 2", 1), "ledger 2"},
		"no opening": {`{"seq":0,"format":"laydown ledger 1","when":"2026-03-02T08:00:00Z"}`, "no opening"},
		"bath":       {strings.Replace(opening, "99 %", "199 %", 1), "current efficiency"},
		"both":       {strings.Replace(opening, `}}}`, `}},"load":{"charge":"1 C"}}`, 1), "no opening"},
	} {
		if _, err := Open(strings.NewReader(sealed(c.payload))); !errors.Is(err, ErrDamaged) ||
			!strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	long := sealed(opening) + strings.Repeat("x", maxLine+1)
	for _, text := range []string{long, long + "\n"} {
		if _, err := Open(strings.NewReader(text)); !errors.Is(err, ErrDamaged) {
			t.Errorf("a line too long: %v", err)
		}
	}
	if _, err := Open(strings.NewReader("")); !errors.Is(err, ErrTorn) {
		t.Errorf("empty: %v", err)
	}
	reason := (*units.ValueError)(nil)
	if _, err := Open(strings.NewReader(sealed(opening, load(`"charge":"-12 C"`)))); !errors.As(err, &reason) ||
		reason.Field != "charge" {
		t.Errorf("the reason is not wrapped: %v", err)
	}
}

// FuzzOpen feeds the reader: it never panics, and what it takes it writes and
// reads again to the same book.
func FuzzOpen(f *testing.F) {
	book := sealed(opening, `{"seq":1,"when":"2026-03-02T09:00:00Z","load":{"charge":"12 A·min","drag_out":"3 mL"}}`,
		`{"seq":2,"when":"2026-03-03T09:00:00Z","analysis":{"content":"29.8 g/L","uncertainty":"0.3 g/L"}}`,
		`{"seq":3,"when":"2026-03-03T09:00:00Z","addition":{"salt":"AgCN","salt_mass":"3 g","water":"10 mL"},"note":"x"}`)
	f.Add([]byte(book), false)
	f.Add([]byte(book[:len(book)-5]), false)
	f.Add([]byte(opening+"\n"+`{"seq":1,"when":"2026-03-02T09:00:00Z","correction":{"metal":"-1 g","reason":"r"}}`), true)
	f.Fuzz(func(t *testing.T, text []byte, seal bool) {
		if seal { // let the fuzzer get behind the checksum
			text = []byte(sealed(strings.Split(string(text), "\n")...))
		}
		l, err := Open(bytes.NewReader(text))
		b, err2 := Read(bytes.NewReader(text))
		if l == nil {
			if err == nil {
				t.Fatal("no book and no error")
			}
			return
		}
		if torn := (*TornError)(nil); err != nil && !errors.As(err, &torn) {
			t.Fatalf("a book with %v", err)
		}
		if len(b.Entries) != l.Len() || (err == nil) != (err2 == nil) {
			t.Fatalf("read %d entries, %v; opened %d, %v", len(b.Entries), err2, l.Len(), err)
		}
		s := l.State()
		if through := float64(s.Balance.Through()); !(float64(s.Balance.Gap()) <= 1e-9*through &&
			float64(s.Balance.Gap()) >= -1e-9*through) || s.Metal < 0 || s.Volume <= 0 {
			t.Fatalf("balance %+v", s)
		}
		var out bytes.Buffer
		if _, err := l.WriteTo(&out); err != nil {
			if field := (*units.ValueError)(nil); errors.As(err, &field) && field.Field == "line" {
				return // written out it is longer than a line may be
			}
			t.Fatal(err)
		}
		again, err := Open(bytes.NewReader(out.Bytes()))
		if err != nil || again.State().Metal != s.Metal || again.State().ContentUncertainty != s.ContentUncertainty {
			t.Fatalf("written and read again: %v", err)
		}
	})
}
