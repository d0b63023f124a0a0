package ledger

import (
	"bytes"
	"errors"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyLock: one at a time; whoever waits in vain is told who holds the lock and
// what to do; a lock that another made meanwhile is left alone.
func TestPropertyLock(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold\x1b[2K.jsonl.lock")
	release, err := takeLock(path, 1)
	if err != nil {
		t.Fatal(err)
	}
	_, err = takeLock(path, 3)
	if !errors.Is(err, ErrLocked) {
		t.Fatal(err)
	}
	for _, want := range []string{"process ", " on ", ", since 2", "wait and try again", "remove ",
		`gold\x1b[2K.jsonl.lock`} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%v, want %q", err, want)
		}
	}
	release()
	if _, err := os.Stat(path); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("not released: %v", err)
	}
	if release, err = takeLock(path, 1); err != nil {
		t.Fatal(err)
	}
	os.Remove(path) // by hand, though it was held
	other, err := takeLock(path, 1)
	if err != nil {
		t.Fatal(err)
	}
	release()
	if _, err := os.Stat(path); err != nil {
		t.Errorf("the lock of the other was taken away: %v", err)
	}
	other()
	os.WriteFile(path, nil, 0o644) // cut off by a power failure
	if _, err := takeLock(path, 1); !errors.Is(err, ErrLocked) || !strings.Contains(err.Error(), "left no name") {
		t.Errorf("an empty lock: %v", err)
	}
	if _, err := takeLock(filepath.Join(path, "none", "x.lock"), 2); err == nil || errors.Is(err, ErrLocked) ||
		!strings.Contains(err.Error(), "need a folder") {
		t.Errorf("no folder: %v", err)
	}
}

// TestPropertyStaleLock: a lock that nobody holds lets no entry through; once it is
// removed the book goes on.
func TestPropertyStaleLock(t *testing.T) {
	testdata.SlowOnly(t) // it waits as long as a program does
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	path := filepath.Join(t.TempDir(), "silver.jsonl")
	f, err := CreateFile(path, silver(), at)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := os.WriteFile(path+".lock", []byte("process 7 on bench\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	before, _ := os.ReadFile(path)
	e := Entry{When: at, Event: Load{Charge: units.AmpereMinute}}
	if _, err := f.Append(e); !errors.Is(err, ErrLocked) || !strings.Contains(err.Error(), "process 7 on bench") {
		t.Errorf("%v", err)
	}
	if after, _ := os.ReadFile(path); string(after) != string(before) || f.Len() != 0 {
		t.Error("the entry is in the book")
	}
	os.Remove(path + ".lock")
	if _, err := f.Append(e); err != nil {
		t.Errorf("without the lock: %v", err)
	}
}

func silver() Account {
	return Account{Name: "silver, cyanide", Metal: "Ag", Volume: 8 * units.Litre, Content: 30 * units.GramPerLitre,
		Equivalent: 1.118 * units.MilligramPerCoulomb, Efficiency: EfficiencyRange{Value: 0.99}}
}

// TestPropertyUnsure: an error says that the entry may stand in the file just when it
// does.
func TestPropertyUnsure(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	for name, trouble := range map[string]func(*frail){
		"write":             func(s *frail) { s.writeFails = true },
		"part of a write":   func(s *frail) { s.writeFails, s.left = true, true },
		"sync":              func(s *frail) { s.syncFails = 1 },
		"sync, no truncate": func(s *frail) { s.syncFails, s.truncateFails = 1, 1 },
	} {
		var text bytes.Buffer
		l, err := Start(&text, silver(), at)
		if err != nil {
			t.Fatal(err)
		}
		s := &frail{data: text.Bytes()}
		f := &File{Ledger: l, sum: l.last, store: s, size: int64(len(s.data))}
		trouble(s)
		_, err = f.Append(Entry{When: at, Event: Load{Charge: units.AmpereMinute}})
		if !errors.Is(err, errDisk) {
			t.Errorf("%s: %v", name, err)
		}
		there := bytes.Contains(s.data, []byte(`"load":`))
		if errors.Is(err, ErrUnsure) != there {
			t.Errorf("%s: stands in the file: %t; %v", name, there, err)
		}
	}
}

// A growing store gets a line of another program when it has been read to its end.
type growing struct {
	frail
	at   int
	more []byte
}

func (g *growing) Read(p []byte) (int, error) {
	n := copy(p, g.data[g.at:])
	if g.at += n; n > 0 {
		return n, nil
	}
	g.data, g.more = append(g.data, g.more...), nil
	return 0, io.EOF
}

// TestPropertyReadWhileWritten: a line that another program adds between the reading
// and the first entry is noticed; the entry would not fit behind it.
func TestPropertyReadWhileWritten(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	e := Entry{When: at, Event: Load{Charge: units.AmpereMinute}}
	var text, more bytes.Buffer
	l, err := Start(&text, silver(), at)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := l.Append(&more, e); err != nil {
		t.Fatal(err)
	}
	g := &growing{frail: frail{data: text.Bytes()}, more: more.Bytes()}
	f, err := openStore(g)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := f.Append(e); !errors.Is(err, ErrChanged) {
		t.Errorf("%v", err)
	}
	if again, err := Open(bytes.NewReader(g.data)); err != nil || again.Len() != 1 {
		t.Errorf("read again: %v", err)
	}
}
