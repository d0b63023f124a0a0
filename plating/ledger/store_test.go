package ledger

import (
	"bytes"
	"errors"
	"os"
	"testing"
	"time"

	"example.com/laydown/units"
)

var errDisk = errors.New("disk")

// A frail store holds a file in memory and fails where it is told to.
type frail struct {
	data                     []byte
	writeFails, left         bool // fails the next write; a part of it stays
	syncFails, truncateFails int  // how many times
	statFails                int
}

func (s *frail) Write(p []byte) (int, error) {
	if s.writeFails {
		s.writeFails = false
		n := 0
		if s.left {
			n = len(p) / 2
		}
		s.data = append(s.data, p[:n]...)
		return n, errDisk
	}
	s.data = append(s.data, p...)
	return len(p), nil
}

func fail(n *int) error {
	if *n > 0 {
		*n--
		return errDisk
	}
	return nil
}

func (s *frail) Sync() error { return fail(&s.syncFails) }

func (s *frail) Truncate(n int64) error {
	if err := fail(&s.truncateFails); err != nil {
		return err
	}
	s.data = s.data[:n]
	return nil
}

func (s *frail) Stat() (os.FileInfo, error) {
	if err := fail(&s.statFails); err != nil {
		return nil, err
	}
	return info{size: int64(len(s.data))}, nil
}

func (s *frail) Close() error { return nil }

func (s *frail) ReadAt(p []byte, at int64) (int, error) {
	return bytes.NewReader(s.data).ReadAt(p, at)
}

type info struct {
	os.FileInfo
	size int64
}

func (i info) Size() int64 { return i.size }

// TestPropertyDiskFails: whatever fails, an error is told, the book is as it
// was, and when the disk works again the next line stands behind whole ones.
func TestPropertyDiskFails(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	bath := Account{Name: "silver, cyanide", Metal: "Ag", Volume: 8 * units.Litre, Content: 30 * units.GramPerLitre,
		Equivalent: 1.118 * units.MilligramPerCoulomb, Efficiency: EfficiencyRange{Value: 0.99}}
	entry := func(n int) Entry {
		return Entry{When: at.Add(time.Duration(n) * time.Hour), Event: Load{Charge: units.Charge(n) * units.AmpereMinute}}
	}
	for name, trouble := range map[string]func(*frail){
		"write":              func(s *frail) { s.writeFails = true },
		"part of a write":    func(s *frail) { s.writeFails, s.left = true, true },
		"sync":               func(s *frail) { s.syncFails = 1 },
		"sync and mend":      func(s *frail) { s.syncFails = 2 },
		"part, no truncate":  func(s *frail) { s.writeFails, s.left, s.truncateFails = true, true, 1 },
		"sync, no truncate":  func(s *frail) { s.syncFails, s.truncateFails = 1, 1 },
		"stat":               func(s *frail) { s.statFails = 1 },
		"a torn file opened": nil,
		"a whole torn line":  nil,
	} {
		var text bytes.Buffer
		l, err := Start(&text, bath, at)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := l.Append(&text, entry(1)); err != nil {
			t.Fatal(err)
		}
		s := &frail{data: text.Bytes()}
		f := &File{Ledger: l, sum: l.last, store: s, size: int64(len(s.data))}
		switch {
		case trouble != nil:
			trouble(s)
			before := l.State()
			if _, err := f.Append(entry(2)); !errors.Is(err, errDisk) {
				t.Errorf("%s: %v", name, err)
			}
			if after := l.State(); after.Metal != before.Metal || after.Seq != before.Seq || l.Len() != 1 {
				t.Errorf("%s: the book changed", name)
			}
		case name == "a torn file opened":
			f.torn = &TornError{Line: 3, Kept: int64(len(s.data))}
			s.data = append(s.data, `{"crc":"00`...)
			f.size = int64(len(s.data))
		default:
			s.data = s.data[:len(s.data)-1]
			f.size = int64(len(s.data))
			f.torn = &TornError{Line: 2, Kept: f.size, Whole: true}
			s.syncFails = 1 // the newline is there, yet not known to be on the disk
			if _, err := f.Append(entry(2)); !errors.Is(err, errDisk) {
				t.Errorf("%s: %v", name, err)
			}
		}
		if _, err := f.Append(entry(3)); err != nil {
			t.Errorf("%s: the next entry: %v", name, err)
			continue
		}
		again, err := Open(bytes.NewReader(s.data))
		if err != nil || again.Len() != 2 || again.State().Metal != l.State().Metal {
			t.Errorf("%s: read again: %v\n%s", name, err, s.data)
		}
	}
}

// TestPropertyTwoWriters: two handles on one book that write at the same moment, in
// every order of their steps, leave a book that opens with each entry once, and the
// one whose line is not kept is told.
func TestPropertyTwoWriters(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	bath := Account{Name: "silver, cyanide", Metal: "Ag", Volume: 8 * units.Litre, Content: 30 * units.GramPerLitre,
		Equivalent: 1.118 * units.MilligramPerCoulomb, Efficiency: EfficiencyRange{Value: 0.99}}
	entry := func(n int) Entry {
		return Entry{When: at.Add(time.Hour), Event: Load{Charge: units.Charge(n) * units.AmpereMinute}}
	}
	for _, moment := range []string{"before ours is written", "before ours is looked at"} {
		var text bytes.Buffer
		mine, err := Start(&text, bath, at)
		if err != nil {
			t.Fatal(err)
		}
		theirs, err := Open(bytes.NewReader(text.Bytes()))
		if err != nil {
			t.Fatal(err)
		}
		s := &meddled{frail: frail{data: text.Bytes()}}
		other := func() {
			if _, err := theirs.Append(&s.frail, entry(1)); err != nil {
				t.Fatal(err)
			}
		}
		kept := 1.0
		if moment == "before ours is written" {
			s.write = other
		} else {
			s.sync, kept = other, 2 // ours stands first, the other program finds its own behind it
		}
		f := &File{Ledger: mine, sum: mine.last, store: s, size: int64(len(s.data))}
		if _, err := f.Append(entry(2)); !errors.Is(err, ErrChanged) {
			t.Fatalf("%s: %v", moment, err)
		}
		if mine.Len() != 0 {
			t.Errorf("%s: the book changed", moment)
		}
		if kept == 2 { // what the other File does with its line
			line := s.data[len(s.data)-(len(s.data)-len(text.Bytes()))/2:]
			if err := (&File{Ledger: theirs, store: &s.frail}).yield(append([]byte(nil), line...),
				int64(len(s.data))); !errors.Is(err, ErrChanged) {
				t.Error(err)
			}
		}
		again, err := Open(bytes.NewReader(s.data))
		if err != nil || again.Len() != 1 ||
			again.Records()[0].Entry.Event.(Load).Charge != units.Charge(kept)*units.AmpereMinute {
			t.Errorf("%s: read again: %v, %s", moment, err, s.data)
		}
		if _, err := f.Append(entry(3)); !errors.Is(err, ErrChanged) {
			t.Errorf("%s: goes on writing: %v", moment, err)
		}
	}
}

// A meddled store lets another program write before a step, once.
type meddled struct {
	frail
	write, sync func()
}

func once(f *func()) {
	if g := *f; g != nil {
		*f = nil
		g()
	}
}

func (m *meddled) Write(p []byte) (int, error) {
	once(&m.write)
	return m.frail.Write(p)
}

func (m *meddled) Sync() error {
	once(&m.sync)
	return m.frail.Sync()
}
