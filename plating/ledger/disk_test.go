package ledger

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"runtime/debug"
	"strings"
	"testing"
	"time"

	"example.com/laydown/units"
)

// TestPropertyWhole: a name from here, a link and the name from the root are one book.
func TestPropertyWhole(t *testing.T) {
	dir, err := filepath.EvalSymlinks(t.TempDir())
	if err != nil {
		t.Fatal(err)
	}
	t.Chdir(dir)
	path := filepath.Join(dir, "gold.jsonl")
	if err := os.WriteFile(path, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	names := []string{"gold.jsonl", "./gold.jsonl", path}
	if os.Symlink(path, "link.jsonl") == nil {
		names = append(names, "link.jsonl")
	}
	for _, name := range names {
		if got := whole(name); got != path {
			t.Errorf("%s is %s, want %s", name, got, path)
		}
	}
	if got := whole("none.jsonl"); got != filepath.Join(dir, "none.jsonl") {
		t.Errorf("a book that is not there is %s", got)
	}
}

// TestPropertyHolder: the lock tells process and machine; of other words in it 200 bytes are told.
func TestPropertyHolder(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl.lock")
	release, err := takeLock(path, 1)
	if err != nil {
		t.Fatal(err)
	}
	host, err := os.Hostname()
	if err != nil {
		host = "this machine"
	}
	want := fmt.Sprintf("process %d on %s", os.Getpid(), host)
	if text, err := os.ReadFile(path); err != nil || string(text) != want+"\n" {
		t.Errorf("%q, %v", text, err)
	}
	if got := holder(path); !strings.HasPrefix(got, ": "+want+", since 2") {
		t.Errorf("%q", got)
	}
	if info, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && info.Mode().Perm()&0o111 != 0 {
		t.Errorf("the lock can be run: %v, %v", info.Mode(), err)
	}
	release()
	if got := holder(path); got != "" {
		t.Errorf("nobody holds it: %q", got)
	}
	if err := os.WriteFile(path, []byte(strings.Repeat("x", 300)), 0o644); err != nil {
		t.Fatal(err)
	}
	if got := holder(path); strings.Count(got, "x") != 200 {
		t.Errorf("%d bytes told", strings.Count(got, "x"))
	}
}

// TestPropertyFolderGone: where the folder of a book went away, the entry is refused and the
// book in memory is as it was; a note that does not print is refused before.
func TestPropertyFolderGone(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	dir := filepath.Join(t.TempDir(), "books")
	if err := os.Mkdir(dir, 0o755); err != nil {
		t.Fatal(err)
	}
	f, err := CreateFile(filepath.Join(dir, "silver.jsonl"), silver(), at)
	if err != nil {
		t.Fatal(err)
	}
	load := Load{Charge: units.AmpereMinute}
	field := (*units.ValueError)(nil)
	_, err = f.Append(Entry{When: at, Event: load, Note: "a\x1b[2K"})
	if !errors.As(err, &field) || field.Field != "note" {
		t.Errorf("a note: %v", err)
	}
	if err := os.Rename(dir, dir+".old"); err != nil {
		t.Skip(err) // a system that keeps the folders of open files in their place
	}
	if _, err := f.Append(Entry{When: at, Event: load}); !errors.Is(err, os.ErrNotExist) ||
		!strings.Contains(err.Error(), "need a folder that takes the lock file") || f.Len() != 0 {
		t.Errorf("no folder: %v", err)
	}
	if err := os.Rename(dir+".old", dir); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Append(Entry{When: at, Event: load}); err != nil {
		t.Errorf("the folder is back: %v", err)
	}
	if err := f.Close(); err != nil {
		t.Error(err)
	}
	if err := f.Close(); !errors.Is(err, os.ErrClosed) {
		t.Errorf("closed twice: %v", err)
	}
}

// TestPropertyYield: a line that another program came between with is taken off where it is
// the last; only where it may stand there still, the error says so.
func TestPropertyYield(t *testing.T) {
	const before, line = "before\n", "ours\n"
	for name, c := range map[string]struct {
		data          string
		truncateFails int
		left          string
		unsure        bool
	}{
		"the last":            {before + line, 0, before, false},
		"the only one":        {line, 0, "", false},
		"cannot be taken off": {before + line, 1, before + line, true},
		"not the last":        {before + line + "theirs\n", 0, before + line + "theirs\n", true},
		"shorter than ours":   {"urs\n", 0, "urs\n", true},
	} {
		s := &frail{data: []byte(c.data), truncateFails: c.truncateFails}
		err := (&File{store: s}).yield([]byte(line), int64(len(c.data)))
		if !errors.Is(err, ErrChanged) || errors.Is(err, ErrUnsure) != c.unsure || string(s.data) != c.left ||
			errors.Is(err, errDisk) != (c.truncateFails > 0) {
			t.Errorf("%s: %v, left %q", name, err, s.data)
		}
	}
}

// A blind store fails once to tell its length, after a few times that it does.
type blind struct {
	frail
	sees int
}

func (b *blind) Stat() (os.FileInfo, error) {
	if b.sees--; b.sees == -1 {
		return nil, errDisk
	}
	return b.frail.Stat()
}

// TestPropertyBlind: a disk that does not tell the length of a file gets no entry unnoticed,
// at whichever step, with a torn line to mend and without.
func TestPropertyBlind(t *testing.T) {
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	for _, torn := range []bool{false, true} {
		for sees := range 4 {
			var text bytes.Buffer
			l, err := Start(&text, silver(), at)
			if err != nil {
				t.Fatal(err)
			}
			s := &blind{frail{data: text.Bytes()}, sees}
			f := &File{Ledger: l, sum: l.last, store: s, size: int64(len(s.data))}
			if torn {
				f.torn = &TornError{Line: 2, Kept: f.size}
				s.data = append(s.data, "{\"crc"...)
				f.size = int64(len(s.data))
			}
			steps := map[bool]int{false: 2, true: 3}[torn] // the length before, of what is mended, and behind
			_, err = f.Append(Entry{When: at, Event: Load{Charge: units.AmpereMinute}})
			if fine := sees >= steps; fine != (err == nil) || !fine && !errors.Is(err, errDisk) || fine != (l.Len() == 1) {
				t.Errorf("torn %t, seen %d times: %v, %d entries", torn, sees, err, l.Len())
			}
		}
	}
	f := &File{store: &blind{}, path: filepath.Join(t.TempDir(), "x")}
	if err := f.there(); !errors.Is(err, errDisk) {
		t.Errorf("whether it is there: %v", err)
	}
}

// TestPropertyNothingLeftOpen: a book that is closed, or was not opened in the end, keeps no
// file of the process, nor does an entry.
func TestPropertyNothingLeftOpen(t *testing.T) {
	const list = "/proc/self/fd"
	count := func() int {
		files, err := os.ReadDir(list)
		if err != nil {
			t.Skip(err) // a system without such a list
		}
		return len(files)
	}
	defer debug.SetGCPercent(debug.SetGCPercent(-1)) // which would close what was forgotten
	at := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	dir := t.TempDir()
	torn := filepath.Join(dir, "torn.jsonl")
	if err := os.WriteFile(torn, []byte("{"), 0o644); err != nil {
		t.Fatal(err)
	}
	before := count()
	for i := range 10 {
		path := filepath.Join(dir, fmt.Sprintf("%d.jsonl", i))
		f, err := CreateFile(path, silver(), at)
		if err != nil {
			t.Fatal(err)
		}
		for range 3 {
			if _, err := f.Append(Entry{When: at, Event: Load{Charge: units.AmpereMinute}}); err != nil {
				t.Fatal(err)
			}
		}
		if err := f.Close(); err != nil {
			t.Fatal(err)
		}
		if info, err := os.Stat(path); err != nil || info.Mode().Perm()&0o111 != 0 {
			t.Errorf("the book can be run: %v, %v", info.Mode(), err)
		}
		if f, err := OpenFile(torn); f != nil || !errors.Is(err, ErrTorn) {
			t.Fatal(err)
		}
	}
	if after := count(); after > before+2 {
		t.Errorf("%d files are open, before %d", after, before)
	}
}
