package ledger_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"hash/crc32"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// figures are what a state says of the bath, without the number of entries.
func figures(s ledger.State) string {
	s.Seq = 0
	return string(must(json.Marshal(s)))
}

// TestIndependentVoid: a book with voided entries says of its bath, to the last bit,
// what a book says that never had them, entry by entry and in its forecast.
func TestIndependentVoid(t *testing.T) {
	rng := rand.New(rand.NewPCG(101, 102))
	voided, refused := 0, 0
	for range 100 {
		l := randomLedger(rng, 2+rng.IntN(8))
		struck := map[int]bool{}
		for range 1 + rng.IntN(3) {
			k := 1 + rng.IntN(l.Len())
			before := bytesOf(l)
			r, err := l.Post(ledger.Entry{When: day(rng.Float64()), Event: ledger.Void{Entry: k, Reason: "of another bath"}})
			if err != nil {
				refused++
				if !bytes.Equal(bytesOf(l), before) {
					t.Fatal("a refused void changed the book")
				}
				continue
			}
			voided++
			struck[k] = true
			if r.Seq != l.Len() || figures(r.After) != figures(l.State()) {
				t.Fatalf("the record of the void: %+v", r)
			}
		}
		without := must(ledger.New(l.Account(), l.Opened()))
		for _, r := range l.Records() {
			_, void := r.Entry.Event.(ledger.Void)
			if struck[r.Seq] != (r.VoidedBy != 0) || r.VoidedBy != 0 && (r.Added != 0 || r.Deposited != 0 ||
				r.Comparison != nil) {
				t.Fatalf("no. %d: voided %t, the record says %d", r.Seq, struck[r.Seq], r.VoidedBy)
			}
			if !void && !struck[r.Seq] {
				w := must(without.Post(r.Entry))
				w.Seq, w.After.Seq = r.Seq, r.After.Seq
				if a, b := fmt.Sprintf("%+v", w), fmt.Sprintf("%+v", r); w.Comparison == nil && a != b {
					t.Fatalf("no. %d:\n%s\nwithout the voided ones\n%s", r.Seq, b, a)
				}
			}
			if figures(r.After) != figures(without.State()) {
				t.Fatalf("after no. %d:\n%+v\nwithout the voided ones\n%+v", r.Seq, r.After, without.State())
			}
		}
		plan := ledger.Plan{Salt: l.Account().Salts[0], Next: 2}
		f, err := l.Forecast(plan)
		g, errWithout := without.Forecast(plan)
		if fmt.Sprint(f, err) != fmt.Sprint(g, errWithout) {
			t.Fatalf("forecast %+v, %v, without the voided ones %+v, %v", f, err, g, errWithout)
		}
		again := must(ledger.Open(reader(bytesOf(l))))
		same(t, "read again", again, l)
		for i, r := range again.Records() {
			if r.VoidedBy != l.Records()[i].VoidedBy {
				t.Fatalf("read again: no. %d is voided by %d", r.Seq, r.VoidedBy)
			}
		}
	}
	if voided < 50 || refused < 4 {
		t.Errorf("%d voids, %d refused: the test tries too little", voided, refused)
	}
}

// TestPropertyYearAhead: a book whose last entry has a year far ahead takes entries of
// today again after a void, in a file as well, and shows both.
func TestPropertyYearAhead(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f := must(ledger.CreateFile(path, goldBath(), day(0)))
	must(f.Append(ledger.Entry{When: day(1), Event: ledger.Load{Charge: 10 * units.AmpereMinute}}))
	before := f.State()
	slip := ledger.Entry{When: day(2).AddDate(900, 0, 0), Event: ledger.Load{Charge: 12 * units.AmpereMinute}}
	must(f.Append(slip))
	if got := f.Ahead(day(3)); len(got) != 1 || got[0] != 2 {
		t.Errorf("ahead of the clock: %v", got)
	}
	today := ledger.Entry{When: day(2), Event: slip.Event}
	_, err := f.Append(today)
	wantField(t, "behind the slip", err, "time of the entry", units.ErrInconsistent)
	if !strings.Contains(fmt.Sprint(err), "(no. 2); if the time of no. 2 is wrong, void it and enter it again") {
		t.Errorf("no remedy in %v", err)
	}
	must(f.Append(ledger.Entry{When: day(2.5), Event: ledger.Void{Entry: 2, Reason: "year mistyped"}}))
	if figures(f.State()) != figures(before) || !f.State().When.Equal(day(1)) || f.Ahead(day(3)) != nil {
		t.Errorf("after the void %+v, before the slip %+v", f.State(), before)
	}
	must(f.Append(today)) // older than the void, which does not count for the order
	f.Close()
	g := must(ledger.OpenFile(path))
	defer g.Close()
	list := g.Records()
	if len(list) != 4 || list[1].VoidedBy != 3 || list[1].Entry.When.Year() != 2926 || list[3].After.Charge !=
		22*units.AmpereMinute {
		t.Errorf("%+v", list)
	}
	if text := string(must(os.ReadFile(path))); !strings.Contains(text, `"void":{"entry":2,"reason":"year mistyped"}`) {
		t.Error(text)
	}
}

// TestBadVoid: what cannot be voided is refused with what would do, and the book is as it was.
func TestBadVoid(t *testing.T) {
	l := must(ledger.New(goldBath(), day(0)))
	post := func(n float64, e ledger.Event) { must(l.Post(ledger.Entry{When: day(n), Event: e})) }
	_, err := l.Post(ledger.Entry{When: day(1), Event: ledger.Void{Entry: 1, Reason: "x"}})
	wantField(t, "of an empty book", err, "entry to void", units.ErrOutOfRange)
	post(1, ledger.Addition{Metal: 30 * units.Gram})                                           // 1
	post(2, ledger.Analysis{Content: 14 * units.GramPerLitre, Uncertainty: 1, Reset: true})    // 2
	post(3, ledger.Correction{Metal: -65 * units.Gram, Reason: "half the bath was drawn off"}) // 3
	post(4, ledger.Load{Charge: units.AmpereMinute})                                           // 4
	post(5, ledger.Void{Entry: 4, Reason: "hung in the other tank"})                           // 5
	for name, c := range map[string]struct {
		void   ledger.Void
		field  string
		reason error
		words  string
	}{
		"opening":   {ledger.Void{Reason: "x"}, "entry to void", units.ErrOutOfRange, "start a new book"},
		"below":     {ledger.Void{Entry: -3, Reason: "x"}, "entry to void", units.ErrOutOfRange, "1 or more"},
		"not there": {ledger.Void{Entry: 9, Reason: "x"}, "entry to void", units.ErrOutOfRange, "1 to 5"},
		"itself":    {ledger.Void{Entry: 6, Reason: "x"}, "entry to void", units.ErrOutOfRange, "1 to 5"},
		"twice": {ledger.Void{Entry: 4, Reason: "x"}, "entry to void", units.ErrInconsistent,
			"voided by no. 5 already"},
		"a void": {ledger.Void{Entry: 5, Reason: "x"}, "entry to void", units.ErrInconsistent,
			"enter again what it struck"},
		"no reason":    {ledger.Void{Entry: 1, Reason: " "}, "reason of the void", units.ErrSyntax, "a few words"},
		"hostile":      {ledger.Void{Entry: 1, Reason: "a\x1b[2K"}, "reason of the void", units.ErrSyntax, `\x1b`},
		"depended on":  {ledger.Void{Entry: 2, Reason: "x"}, "", nil, ""}, // without it there is less metal, yet enough
		"needed later": {ledger.Void{Entry: 1, Reason: "x"}, "", nil, ""}, // the analysis behind it counts alone
	} {
		before := bytesOf(l)
		_, err := must(ledger.Open(reader(before))).Post(ledger.Entry{When: day(6), Event: c.void})
		if c.field == "" {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		wantField(t, name, err, c.field, c.reason)
		if !strings.Contains(fmt.Sprint(err), c.words) {
			t.Errorf("%s: %v, want %q", name, err, c.words)
		}
	}
	// Both together leave less metal than was drawn off.
	post(6, ledger.Void{Entry: 2, Reason: "of the other bath"})
	before := bytesOf(l)
	_, err = l.Post(ledger.Entry{When: day(7), Event: ledger.Void{Entry: 1, Reason: "x"}})
	wantField(t, "another hangs on it", err, "entry to void", units.ErrInconsistent)
	if !strings.Contains(fmt.Sprint(err), "void no. 3 first (metal in the bath") || !bytes.Equal(bytesOf(l), before) {
		t.Errorf("%v", err)
	}
	post(8, ledger.Void{Entry: 3, Reason: "of the other bath"})
	post(9, ledger.Void{Entry: 1, Reason: "of the other bath"})
	if s := l.State(); !s.When.Equal(day(0)) || s.Metal != 40*units.Gram || s.Seq != 8 {
		t.Errorf("all voided: %+v", s)
	}
	_, err = l.Post(ledger.Entry{When: day(-1), Event: ledger.Void{Entry: 1, Reason: "x"}})
	wantField(t, "before the opening", err, "time of the entry", units.ErrInconsistent)
	_, err = l.Post(ledger.Entry{When: day(9), Event: &ledger.Void{Entry: 1, Reason: "x"}})
	wantField(t, "by pointer", err, "event", units.ErrSyntax)
}

// written makes the text of a book from its payloads, by the description of the file
// in the package comment and not by the package: what an older version wrote.
func written(payloads ...string) []byte {
	var text bytes.Buffer
	sum := uint32(0)
	for _, p := range payloads {
		sum = crc32.Update(crc32.ChecksumIEEE(fmt.Appendf(nil, "%08x", sum)), crc32.IEEETable, []byte(p))
		fmt.Fprintf(&text, "{\"crc\":\"%08x\",\"entry\":%s}\n", sum, p)
	}
	return text.Bytes()
}

// payloads takes the text of a book apart.
func payloads(text []byte) []string {
	var list []string
	for line := range strings.Lines(string(text)) {
		list = append(list, strings.TrimSuffix(line[len(`{"crc":"00000000","entry":`):], "}\n"))
	}
	return list
}

// TestPropertyManyVoids: a book of many voids is worked out once, not once for each.
func TestPropertyManyVoids(t *testing.T) {
	lines := payloads(bytesOf(must(ledger.New(goldBath(), day(0)))))
	const n = 8000
	for i := range n {
		lines = append(lines, fmt.Sprintf(`{"seq":%d,"when":"2026-03-03T08:00:00Z","addition":{"metal":"1e-06 kg"}}`, i+1))
	}
	for i := range n / 2 {
		lines = append(lines, fmt.Sprintf(`{"seq":%d,"when":"2026-03-03T08:00:00Z","void":{"entry":%d,"reason":"x"}}`,
			n+i+1, 2*i+1))
	}
	start := time.Now()
	l := must(ledger.Open(reader(written(lines...))))
	if took := time.Since(start); took > 20*time.Second {
		t.Errorf("opened in %v", took)
	}
	near(t, "metal added", l.State().Balance.Added.In(units.Milligram), n/2, 1e-12)
	if r := l.Records(); r[0].VoidedBy != n+1 || r[1].VoidedBy != 0 || l.Len() != n+n/2 {
		t.Errorf("%+v %+v", r[0], r[1])
	}
}

// TestPropertyWrongVoidInText: a void that cannot be, and an entry that cannot be
// without the voided one, are damage of their line; a line further up comes first.
func TestPropertyWrongVoidInText(t *testing.T) {
	first := payloads(bytesOf(must(ledger.New(goldBath(), day(0)))))[0]
	entry := func(n int, what string) string {
		return fmt.Sprintf(`{"seq":%d,"when":"2026-03-03T08:00:00Z",%s}`, n, what)
	}
	feed, drawn := `"addition":{"metal":"0.03 kg"}`, `"correction":{"metal":"-0.06 kg","reason":"drawn off"}`
	void := func(n int) string { return fmt.Sprintf(`"void":{"entry":%d,"reason":"x"}`, n) }
	for name, c := range map[string]struct {
		entries []string
		line    int // 0: sound
	}{
		"sound": {[]string{feed, void(1)}, 0}, "both": {[]string{feed, drawn, void(2), void(1)}, 0},
		"not there": {[]string{feed, void(2)}, 3}, "opening": {[]string{feed, void(0)}, 3},
		"later": {[]string{void(2), feed}, 2}, "twice": {[]string{feed, void(1), void(1)}, 4},
		"a void": {[]string{feed, void(1), void(2)}, 4}, "hangs on it": {[]string{feed, drawn, void(1)}, 3},
		"further up": {[]string{drawn, feed, void(9)}, 2}, "and damage behind": {[]string{feed, void(7), `"load":7`}, 3},
	} {
		lines := []string{first}
		for i, e := range c.entries {
			lines = append(lines, entry(i+1, e))
		}
		text := written(lines...)
		_, err := ledger.Open(reader(text))
		var damage *ledger.DamageError
		switch {
		case c.line == 0 && err != nil, c.line != 0 && !errors.As(err, &damage),
			c.line != 0 && (damage.Line != c.line || damage.Offset != int64(lineStarts(text)[c.line-1])):
			t.Errorf("%s: %v, want line %d", name, err, c.line)
		}
	}
}

// TestPropertyVoidedText: a book with voids is held by the same checks as any: cut at
// every byte, each byte changed.
func TestPropertyVoidedText(t *testing.T) {
	l := randomOf(rand.New(rand.NewPCG(111, 112)), smallBath(), 3)
	must(l.Post(ledger.Entry{When: day(900), Event: ledger.Evaporation{Volume: units.Millilitre}}))
	must(l.Post(ledger.Entry{When: day(5), Event: ledger.Void{Entry: 4, Reason: "year mistyped"}}))
	must(l.Post(ledger.Entry{When: day(6), Event: ledger.Evaporation{Volume: units.Millilitre}}))
	text := bytesOf(l)
	starts := lineStarts(text)
	for cut := 0; cut <= len(text); cut++ {
		whole := 0
		for whole < len(starts)-1 && starts[whole+1] <= cut {
			whole++
		}
		partial := cut > starts[whole]
		got, err := ledger.Open(reader(text[:cut]))
		checkCut(t, text, got, err, cut, whole, partial, partial && whole < len(starts)-1 && cut == starts[whole+1]-1,
			starts)
	}
	for i := range text[:len(text)-1] {
		changed := bytes.Clone(text)
		changed[i] ^= 1
		if _, err := ledger.Open(reader(changed)); !errors.Is(err, ledger.ErrDamaged) {
			t.Fatalf("byte %d: %v", i, err)
		}
	}
	book := must(ledger.Read(reader(text)))
	if v, ok := book.Entries[4].Event.(ledger.Void); !ok || v.Entry != 4 {
		t.Errorf("%+v", book.Entries)
	}
}

// TestPropertyClock: a slip in the year is far from the clock, a clock a little wrong
// or a book copied from paper is not.
func TestPropertyClock(t *testing.T) {
	now := day(300)
	for name, c := range map[string]struct {
		when time.Time
		fine bool
	}{
		"now": {now, true}, "in an hour": {now.Add(time.Hour), true}, "in 23 hours": {now.Add(23 * time.Hour), true},
		"in 25 hours": {now.Add(25 * time.Hour), false}, "next year": {now.AddDate(1, 0, 0), false},
		"2926": {now.AddDate(900, 0, 0), false}, "from paper": {now.AddDate(-20, 0, 0), true},
		"1926": {now.AddDate(-100, 0, 0), false}, "zone ahead": {now.In(time.FixedZone("", 14*3600)), true},
	} {
		err := ledger.CheckClock("time of the entry", c.when, now)
		if c.fine {
			if err != nil {
				t.Errorf("%s: %v", name, err)
			}
			continue
		}
		wantField(t, name, err, "time of the entry", units.ErrOutOfRange)
		if err != nil && !strings.Contains(err.Error(), now.Format(time.RFC3339)+": ") {
			t.Errorf("%s: %v does not tell what the clock shows", name, err)
		}
	}
	l := must(ledger.New(goldBath(), day(0)))
	if got := l.Ahead(day(-10)); len(got) != 1 || got[0] != 0 {
		t.Errorf("an opening ahead of the clock: %v", got)
	}
}
