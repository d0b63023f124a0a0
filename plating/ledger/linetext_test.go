package ledger

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/laydown/units"
)

// TestPropertyLineLimits: a line of as many bytes as a book takes is written and read, one
// of a byte more is neither.
func TestPropertyLineLimits(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	text := func(n int) lineText {
		return lineText{Seq: 1, When: at, Evaporation: &Evaporation{Volume: 1}, Note: strings.Repeat("x", n)}
	}
	short, _, err := encode(7, text(0))
	if err != nil {
		t.Fatal(err)
	}
	fill := maxLine - len(short) - len(`,"note":""`)
	line, sum, err := encode(7, text(fill))
	if err != nil || len(line) != maxLine {
		t.Fatalf("%d bytes: %v", len(line), err)
	}
	payload, read, err := open(7, line[:len(line)-1])
	if err != nil || read != sum || !bytes.HasSuffix(payload, []byte(`x"}`)) {
		t.Errorf("read again: %v", err)
	}
	line, sum, err = encode(7, text(fill+1))
	field := (*units.ValueError)(nil)
	if !errors.As(err, &field) || field.Field != "line" || line != nil || sum != 0 ||
		!strings.HasSuffix(err.Error(), fmt.Sprintf("line %d bytes: out of range; need at most %d", maxLine+1, maxLine)) {
		t.Errorf("a byte more: %v", err)
	}

	// In the text of a book the newline does not count.
	for n, words := range map[int]string{maxLine: "checksum", maxLine + 1: fmt.Sprintf("longer than %d bytes", maxLine),
		2 * maxLine: fmt.Sprintf("longer than %d bytes", maxLine)} {
		long := head + "00000000" + middle + strings.Repeat("x", n-len(head)-sumLen-len(middle)-1) + "}\n"
		_, err := Open(strings.NewReader(sealed(opening) + long + long))
		damage := (*DamageError)(nil)
		if !errors.As(err, &damage) || damage.Line != 2 || !strings.Contains(err.Error(), words) {
			t.Errorf("%d bytes: %.300v, want %q", n, err, words)
		}
	}
	// Of a line without an end no more is read than shows that it is too long.
	endless := &counted{r: strings.NewReader(strings.Repeat("x", 4*maxLine))}
	if line, whole, err := readLine(bufio.NewReader(endless)); whole || err != nil || len(line) <= maxLine ||
		endless.n > 2*maxLine {
		t.Errorf("%d bytes of a line, %d read: %v", len(line), endless.n, err)
	}
}

// TestPropertyLeastLine: the shortest line has an empty payload, which its checksum covers.
func TestPropertyLeastLine(t *testing.T) {
	line := fmt.Sprintf("%s%08x%s}", head, checksum(5, nil), middle)
	if payload, sum, err := open(5, []byte(line)); err != nil || len(payload) != 0 || sum != checksum(5, nil) {
		t.Errorf("%q, %v", payload, err)
	}
	for n := range line {
		if p, sum, err := open(5, []byte(line[:n])); err == nil || p != nil || sum != 0 {
			t.Errorf("%d bytes of it are a line", n)
		}
	}
	for _, text := range []string{"\r\n", "x\r\n", "\n"} {
		_, err := Open(strings.NewReader(sealed(opening) + text + sealed(opening)))
		if !errors.Is(err, ErrDamaged) || strings.Contains(err.Error(), "carriage return") != strings.Contains(text, "\r") {
			t.Errorf("%q: %v", text, err)
		}
	}
}

// TestPropertyTornTail: of a torn line the first 200 bytes are told.
func TestPropertyTornTail(t *testing.T) {
	for n, want := range map[int]int{1: 1, 199: 199, 200: 200, 201: 200, 5000: 200} {
		tail := strings.Repeat("0123456789", n/10+1)[:n]
		l, err := Open(strings.NewReader(sealed(opening) + tail))
		torn := (*TornError)(nil)
		if !errors.As(err, &torn) || string(torn.Tail) != tail[:want] || torn.Line != 2 || l == nil {
			t.Errorf("%d bytes: %v", n, err)
		}
	}
	whole := sealed(opening)
	_, err := Open(strings.NewReader(whole[:len(whole)-1]))
	if err == nil || err.Error() != "line 1: cut short: only its newline is missing; the entry is kept" {
		t.Errorf("without its newline: %v", err)
	}
}

// TestPropertyKeys: keys are told apart in each object for itself.
func TestPropertyKeys(t *testing.T) {
	// In a book: an end of the efficiency and an alarm have one name, a field of the line is there once.
	ends := strings.Replace(opening, `"efficiency":{"value":"99 %"}`,
		`"efficiency":{"value":"99 %","low":"98 %","high":"1"},"low":"20 g/L","high":"40 g/L"`, 1)
	if _, err := Open(strings.NewReader(sealed(ends))); err != nil {
		t.Error(err)
	}
	for _, c := range []string{strings.Replace(opening, `"seq":0`, `"seq":0,"seq":0`, 1),
		strings.Replace(ends, `"low":"20 g/L"`, `"salts":["AgCN"],"low":"20 g/L","low":"21 g/L"`, 1)} {
		if _, err := Open(strings.NewReader(sealed(c))); err == nil || !strings.Contains(err.Error(), "twice") {
			t.Errorf("%s: %v", c, err)
		}
	}
}

// TestPropertyDamageWords: the reason of a damage names what was read and what was needed,
// for Read and for Open.
func TestPropertyDamageWords(t *testing.T) {
	entry := func(seq int, fields string) string {
		return fmt.Sprintf(`{"seq":%d,"when":"2026-03-02T09:00:00Z",%s}`, seq, fields)
	}
	load := `"load":{"charge":"12 C"}`
	huge := `"addition":{"water":"1 mL","uncertainty":"1e200 kg"}`
	drawn := `"correction":{"metal":"-1 kg","reason":"x"}`
	void := `"void":{"entry":9,"reason":"x"}`
	for name, c := range map[string]struct {
		lines []string
		line  int
		words string
		read  bool // Read finds it as well
	}{
		"sequence": {[]string{entry(1, load), entry(3, load)}, 3, "sequence number 3, need 2", true},
		"format only": {[]string{entry(1, `"format":"laydown ledger 1",`+load)}, 2,
			"an opening that is not the first line", true},
		"two events":       {[]string{entry(1, load+`,"evaporation":{"volume":"1 mL"}`)}, 2, "need one of load", true},
		"third":            {[]string{entry(1, load), entry(2, load), entry(3, `"load":{}`)}, 4, "nothing given", false},
		"beyond float64":   {[]string{entry(1, load), entry(2, huge)}, 3, "uncertainty of the metal", false},
		"no metal, a void": {[]string{entry(1, load), entry(2, drawn), entry(3, void)}, 3, "metal in the bath", false},
		"half a salt, voided": {[]string{entry(1, load), entry(2, `"addition":{"water":"1 mL","salt":"AgCN"}`),
			entry(3, `"void":{"entry":2,"reason":"x"}`)}, 3, "without a mass", false},
	} {
		text := sealed(append([]string{opening}, c.lines...)...)
		damage := (*DamageError)(nil)
		if _, err := Open(strings.NewReader(text)); !errors.As(err, &damage) || damage.Line != c.line ||
			!strings.Contains(err.Error(), c.words) {
			t.Errorf("%s: opened with %v; want line %d, %q", name, err, c.line, c.words)
		}
		b, err := Read(strings.NewReader(text))
		if c.read != (errors.As(err, &damage) && damage.Line == c.line) || c.read == (len(b.Entries) != 0) {
			t.Errorf("%s: read with %v", name, err)
		}
	}
}

// TestPropertyFarFigures: figures of an old book that go beyond float64 are damage of their line.
func TestPropertyFarFigures(t *testing.T) {
	entry := func(seq int, fields string) string {
		return fmt.Sprintf(`{"seq":%d,"when":"2026-03-02T09:00:00Z",%s}`, seq, fields)
	}
	correct := func(metal string) string { return `"correction":{"metal":"` + metal + `","reason":"x"}` }
	large := strings.Replace(opening, `"8 L"`, `"1e6 L"`, 1)
	small := strings.Replace(opening, `"8 L"`, `"0.01 L"`, 1)
	empty := strings.Replace(opening, `"30 g/L"`, `"1e-320 kg/m3"`, 1)
	for field, lines := range map[string][]string{
		"metal through the book": {large, entry(1, `"addition":{"metal":"1e308 kg"}`), entry(2, correct("-1e308 kg"))},
		"content":                {opening, entry(1, correct("1e2 kg")), entry(2, correct("1e307 kg"))},
		"uncertainty of the content": {small, entry(1, correct("1e2 kg")),
			entry(2, `"addition":{"water":"1 mL","uncertainty":"1e151 kg"}`)},
		"turnovers": {empty, entry(1, correct("1 kg")), entry(2, `"load":{"weighed":"1 g"}`)},
	} {
		_, err := Open(strings.NewReader(sealed(lines...)))
		damage, value := (*DamageError)(nil), (*units.ValueError)(nil)
		if !errors.As(err, &damage) || damage.Line != 3 || !errors.As(err, &value) || value.Field != field ||
			!errors.Is(err, units.ErrNotFinite) {
			t.Errorf("%s: %v", field, err)
		}
	}
}

// TestPropertyPlainText: marks of other notations stand in the file as they are.
func TestPropertyPlainText(t *testing.T) {
	var text bytes.Buffer
	l, err := Start(&text, silver(), time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	e := Entry{When: l.Opened(), Event: Load{Charge: 1}, Note: "hands & <hour> \u00b5"}
	if _, err := l.Append(&text, e); err != nil || !strings.Contains(text.String(), `"note":"hands & <hour> µ"}`) {
		t.Errorf("%v: %s", err, text.String())
	}
}

// TestPropertyOtherHand: a book whose lines another version wrote with other spaces goes on
// behind the checksum of its last line.
func TestPropertyOtherHand(t *testing.T) {
	for _, lines := range [][]string{{strings.ReplaceAll(opening, `":`, `": `)},
		{opening, `{ "seq": 1, "when": "2026-03-02T09:00:00Z", "load": {"charge": "12 C"} }`}} {
		text := bytes.NewBufferString(sealed(lines...))
		l, err := Open(bytes.NewReader(text.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		if _, err := l.Append(text, Entry{When: l.State().When, Event: Load{Charge: 1}}); err != nil {
			t.Fatal(err)
		}
		if again, err := Open(text); err != nil || again.Len() != len(lines) {
			t.Errorf("%v", err)
		}
	}
}

// TestPropertyOldExcess: a book of before with more metal in a litre than is taken today goes
// on with whatever brings no more in; a void may bring it back.
func TestPropertyOldExcess(t *testing.T) {
	rich := strings.Replace(opening, `"30 g/L"`, `"3000 g/L"`, 1)
	for name, c := range map[string]struct {
		event Event
		fine  bool
	}{
		"water":            {Addition{Water: units.Litre}, true},
		"a load":           {Load{Charge: units.AmpereMinute}, true},
		"a spill":          {Correction{Metal: -units.Kilogram, Reason: "x"}, true},
		"an uncertainty":   {Correction{Uncertainty: units.Gram, Reason: "x"}, true},
		"metal":            {Addition{Metal: units.Milligram}, false},
		"evaporation":      {Evaporation{Volume: units.Millilitre}, false},
		"metal with water": {Addition{Metal: units.Milligram, Water: units.Litre}, false},
	} {
		l, err := Open(strings.NewReader(sealed(rich)))
		if err != nil {
			t.Fatal(err)
		}
		_, err = l.Post(Entry{When: l.Opened(), Event: c.event})
		if (err == nil) != c.fine || err != nil && !strings.Contains(err.Error(), "metal content after the entry") {
			t.Errorf("%s: %v", name, err)
		}
	}
	l, err := New(silver(), time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC))
	if err != nil {
		t.Fatal(err)
	}
	for _, e := range []Event{Addition{Water: 7 * units.Litre}, Addition{Metal: 9 * units.Kilogram},
		Void{Entry: 1, Reason: "of the other bath"}} {
		if _, err := l.Post(Entry{When: l.Opened(), Event: e}); err != nil {
			t.Fatal(err)
		}
	}
	if c := l.State().Content; !(c > 1000*units.GramPerLitre) {
		t.Errorf("the void left %v", c)
	}
}
