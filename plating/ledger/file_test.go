package ledger_test

import (
	"bytes"
	"errors"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func reader(b []byte) io.Reader { return bytes.NewReader(b) }

// TestPropertyCutAnywhere kills the writing of a thousand random histories at
// every byte: what was whole before the cut is there, no more and no less.
func TestPropertyCutAnywhere(t *testing.T) {
	histories := 1000
	if !testdata.Slow() {
		histories = 12
	}
	for part := range uint64(4) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			cutAnywhere(t, rand.New(rand.NewPCG(41, part)), histories/4)
		})
	}
}

func cutAnywhere(t *testing.T, rng *rand.Rand, histories int) {
	cuts := 0
	for n := range histories {
		l := randomOf(rng, smallBath(), 1+rng.IntN(3))
		if n%20 == 0 {
			l = randomLedger(rng, 4)
		}
		text := bytesOf(l)
		starts := lineStarts(text)
		for cut := 0; cut <= len(text); cut++ {
			cuts++
			whole, partial := 0, false // lines with newline, and whether more follows
			for whole < len(starts)-1 && starts[whole+1] <= cut {
				whole++
			}
			partial = cut > starts[whole]
			noNewline := partial && whole < len(starts)-1 && cut == starts[whole+1]-1
			got, err := ledger.Open(reader(text[:cut]))
			checkCut(t, text, got, err, cut, whole, partial, noNewline, starts)
		}
	}
	t.Logf("%d cuts", cuts)
}

func lineStarts(text []byte) []int {
	starts := []int{0}
	for i, c := range text {
		if c == '\n' {
			starts = append(starts, i+1)
		}
	}
	return starts
}

func checkCut(t *testing.T, text []byte, got *ledger.Ledger, err error, cut, whole int, partial, noNewline bool,
	starts []int) {
	t.Helper()
	kept := whole
	if noNewline {
		kept++ // the entry itself is complete
	}
	torn := (*ledger.TornError)(nil)
	switch {
	case !partial && whole > 0:
		if err != nil {
			t.Fatalf("cut at %d, the end of a line: %v", cut, err)
		}
	case !errors.As(err, &torn) || !errors.Is(err, ledger.ErrTorn) || torn.Line != whole+1 || torn.Whole != noNewline:
		t.Fatalf("cut at %d in line %d: %v", cut, whole+1, err)
	case noNewline && torn.Kept != int64(cut), !noNewline && torn.Kept != int64(starts[whole]):
		t.Fatalf("cut at %d: kept %d", cut, torn.Kept)
	}
	if kept == 0 {
		if got != nil {
			t.Fatalf("cut at %d: a book without its first line", cut)
		}
		return
	}
	if got == nil || got.Len() != kept-1 {
		t.Fatalf("cut at %d: not all of the %d whole lines are there", cut, kept)
	}
	if cut%97 == 0 && !bytes.Equal(bytesOf(got), text[:starts[kept]]) {
		t.Fatalf("cut at %d: other text than was written", cut)
	}
}

// TestPropertyFlips changes every byte of random books: each change is found
// and the line named.
func TestPropertyFlips(t *testing.T) {
	histories := 60
	if !testdata.Slow() {
		histories = 2
	}
	rng := rand.New(rand.NewPCG(51, 52))
	for range histories {
		text := bytesOf(randomLedger(rng, 1+rng.IntN(4)))
		starts := lineStarts(text)
		line := 1
		for i := range text {
			if i >= starts[line] {
				line++
			}
			flipped := bytes.Clone(text)
			flipped[i] ^= byte(1 + rng.IntN(255))
			got, err := ledger.Open(reader(flipped))
			damage, torn := (*ledger.DamageError)(nil), (*ledger.TornError)(nil)
			switch {
			case errors.As(err, &damage):
				if before, err := ledger.Open(reader(flipped[:damage.Offset])); line > 1 &&
					(err != nil || before.Len() != line-2) {
					t.Fatalf("the lines before line %d: %v", line, err)
				}
				if damage.Line != line || !errors.Is(err, ledger.ErrDamaged) || got != nil ||
					damage.Offset != int64(starts[line-1]) {
					t.Fatalf("byte %d of line %d: %v", i, line, err)
				}
			case errors.As(err, &torn) && i == len(text)-1: // the last newline
				if torn.Line != line || torn.Kept != int64(starts[line-1]) {
					t.Fatalf("last newline: %v", err)
				}
			default:
				t.Fatalf("byte %d of line %d changed from %q to %q: %v", i, line, text[i], flipped[i], err)
			}
		}
	}
}

// TestPropertyLines: a line taken out, doubled or moved, or of another book.
func TestPropertyLines(t *testing.T) {
	rng := rand.New(rand.NewPCG(61, 62))
	l := randomLedger(rng, 6)
	lines := strings.SplitAfter(string(bytesOf(l)), "\n")
	elsewhere := l.Account()
	elsewhere.Name += " of the other line"
	head := string(bytesOf(must(ledger.New(elsewhere, l.Opened()))))
	other := strings.SplitAfter(string(bytesOf(randomLedger(rng, 6))), "\n")
	join := func(parts ...[]string) string {
		s := ""
		for _, p := range parts {
			s += strings.Join(p, "")
		}
		return s
	}
	for name, text := range map[string]string{
		"out": join(lines[:3], lines[4:]), "doubled": join(lines[:3], lines[2:]), "swapped": join(lines[:2], lines[3:4],
			lines[2:3], lines[4:]),
		"of another book": join(lines[:4], other[4:]), "head of another book": head + join(lines[1:]),
		"empty line": join(lines[:3], []string{"\n"}, lines[3:]),
		"no head":    join(lines[1:]), "carriage returns": strings.ReplaceAll(join(lines), "\n", "\r\n"),
		"two heads": join(lines[:1], lines),
	} {
		if _, err := ledger.Open(strings.NewReader(text)); !errors.Is(err, ledger.ErrDamaged) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestPropertyFile goes the whole way with real files: written, killed in the
// last line, opened, written on, opened again.
func TestPropertyFile(t *testing.T) {
	rng := rand.New(rand.NewPCG(71, 72))
	dir := t.TempDir()
	for n := range 60 {
		l := randomLedger(rng, 2+rng.IntN(5))
		path := filepath.Join(dir, string(rune('a'+n%26))+string(rune('a'+n/26))+".jsonl")
		f, err := ledger.CreateFile(path, l.Account(), l.Opened())
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range l.Records() {
			if _, err := f.Append(r.Entry); err != nil {
				t.Fatal(err)
			}
		}
		same(t, "file", f.Ledger, l)
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		if _, err := f.Append(l.Records()[0].Entry); !errors.Is(err, os.ErrClosed) {
			t.Errorf("append to a closed file: %v", err)
		}
		text := must(os.ReadFile(path))
		if !bytes.Equal(text, bytesOf(l)) {
			t.Fatal("the file holds other text")
		}
		last := lineStarts(text)[l.Len()]
		cut := last + rng.IntN(len(text)-last+1)
		if err := os.Truncate(path, int64(cut)); err != nil {
			t.Fatal(err)
		}
		g, err := ledger.OpenFile(path)
		if (err != nil) != (cut != last && cut != len(text)) || g == nil {
			t.Fatalf("cut at %d of %d to %d: %v", cut, last, len(text), err)
		}
		if g.Len() == l.Len()-1 {
			if _, err := g.Append(l.Records()[l.Len()-1].Entry); err != nil {
				t.Fatal(err)
			}
		}
		same(t, "written on", g.Ledger, l)
		more := ledger.Entry{When: day(1000), Event: ledger.Addition{Water: units.Millilitre}}
		must(g.Append(more))
		must(l.Post(more))
		g.Close()
		h := must(ledger.OpenFile(path))
		same(t, "opened again", h.Ledger, l)
		h.Close()
	}
}

func TestPropertyFileGuards(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f := must(ledger.CreateFile(path, goldBath(), day(0)))
	defer f.Close()
	if _, err := ledger.CreateFile(path, goldBath(), day(0)); !errors.Is(err, os.ErrExist) {
		t.Errorf("a second book over the first: %v", err)
	}
	g := must(ledger.OpenFile(path))
	defer g.Close()
	e := ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}
	must(g.Append(e))
	if _, err := f.Append(e); !errors.Is(err, ledger.ErrChanged) {
		t.Errorf("two writers: %v", err)
	}
	if _, err := f.Post(e); !errors.Is(err, units.ErrInconsistent) {
		t.Errorf("post to a file: %v", err)
	}
	if _, err := ledger.OpenFile(path + ".none"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	bad := goldBath()
	bad.Volume = 0
	if _, err := ledger.CreateFile(path+".bad", bad, day(0)); !errors.Is(err, units.ErrNotPositive) {
		t.Errorf("bad bath: %v", err)
	}
	if _, err := os.Stat(path + ".bad"); !errors.Is(err, os.ErrNotExist) {
		t.Error("a file for a bath that cannot be")
	}
	os.WriteFile(path+".short", []byte(`{"crc":"`), 0o644)
	if got, err := ledger.OpenFile(path + ".short"); !errors.Is(err, ledger.ErrTorn) || got != nil {
		t.Errorf("a book without its first line: %v", err)
	}
}

// A limited writer takes n bytes and fails.
type limited struct {
	bytes.Buffer
	n int
}

var errFull = errors.New("disk full")

func (w *limited) Write(p []byte) (int, error) {
	if k := w.n - w.Len(); len(p) > k {
		w.Buffer.Write(p[:k])
		return k, errFull
	}
	return w.Buffer.Write(p)
}

// TestPropertyWriteFails: a failing writer leaves the book as it was.
func TestPropertyWriteFails(t *testing.T) {
	rng := rand.New(rand.NewPCG(81, 82))
	l := randomLedger(rng, 3)
	before := bytesOf(l)
	e := ledger.Entry{When: day(1000), Event: ledger.Addition{Water: units.Millilitre}}
	for n := range 60 {
		if _, err := l.Append(&limited{n: n}, e); !errors.Is(err, errFull) {
			t.Fatal(err)
		}
		if !bytes.Equal(bytesOf(l), before) {
			t.Fatal("the book changed")
		}
	}
	if _, err := l.Append(shortWriter{}, e); !errors.Is(err, io.ErrShortWrite) {
		t.Errorf("short write: %v", err)
	}
	for n := range before {
		if _, err := l.WriteTo(&limited{n: n}); !errors.Is(err, errFull) {
			t.Fatal(err)
		}
	}
	if _, err := ledger.Open(io.MultiReader(reader(before[:100]), failing{})); !errors.Is(err, errFull) {
		t.Errorf("failing reader: %v", err)
	}
}

type shortWriter struct{}

func (shortWriter) Write(p []byte) (int, error) { return len(p) - 1, nil }

type failing struct{}

func (failing) Read([]byte) (int, error) { return 0, errFull }

// TestFileIsNotBypassed: an entry given to the Ledger of a File past the File stops
// the next Append, and the file opens as it was.
func TestFileIsNotBypassed(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f, err := ledger.CreateFile(path, goldBath(), day(0))
	if err != nil {
		t.Fatal(err)
	}
	must(f.Append(ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}))
	must(f.Ledger.Post(ledger.Entry{When: day(2), Event: ledger.Load{Charge: units.AmpereMinute}}))
	_, err = f.Append(ledger.Entry{When: day(3), Event: ledger.Load{Charge: units.AmpereMinute}})
	wantField(t, "past the file", err, "book", units.ErrInconsistent)
	if err := f.Close(); err != nil {
		t.Fatal(err)
	}
	again, err := ledger.OpenFile(path)
	if err != nil || again.Len() != 1 {
		t.Errorf("%v", err)
	}
	again.Close()
	raw, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	_, err = ledger.Open(bytes.NewReader(bytes.ReplaceAll(raw, []byte("\n"), []byte("\r\n"))))
	if err == nil || !strings.Contains(err.Error(), "line ends") {
		t.Errorf("line ends of another system: %v", err)
	}
}
