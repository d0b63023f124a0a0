package ledger_test

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// asWriter makes this test program one of the writers of [TestPropertyManyPrograms].
const asWriter = "LAYDOWN_TEST_WRITER"

func TestMain(m *testing.M) {
	if name := os.Getenv(asWriter); name != "" {
		write(name, os.Args[1])
		return
	}
	os.Exit(m.Run())
}

// write enters twenty loads into a book that others write to as well, and says on
// standard output for each try what came of it. Every second writer takes a refusal
// as the end of that entry, the others try it again.
func write(name, path string) {
	stubborn := strings.ContainsAny(name[len(name)-1:], "13579")
	for n := range 20 {
		for try := 0; ; try++ {
			note := fmt.Sprintf("writer %s, entry %d, try %d", name, n, try)
			err := enter(path, note)
			if err == nil {
				fmt.Println("entered:", note)
				break
			}
			if !errors.Is(err, ledger.ErrChanged) || errors.Is(err, ledger.ErrUnsure) {
				fmt.Println("broken:", note, err)
				break
			}
			fmt.Println("refused:", note)
			if !stubborn || try == 200 {
				break
			}
		}
	}
}

func enter(path, note string) error {
	f, err := ledger.OpenFile(path)
	if f == nil {
		return err
	}
	defer f.Close()
	_, err = f.Append(ledger.Entry{When: day(1), Note: note, Event: ledger.Load{Charge: units.AmpereMinute / 1000}})
	return err
}

// TestPropertyManyPrograms: of eight programs that write to one book at once, every
// entry that was told to be refused is not in the book, and every one told to be
// entered is there, once. The book opens without an error.
func TestPropertyManyPrograms(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f := must(ledger.CreateFile(path, goldBath(), day(0)))
	f.Close()
	link := filepath.Join(t.TempDir(), "link.jsonl")
	names := []string{path, path}
	if os.Symlink(path, link) == nil {
		names[1] = link // the lock is that of the book, not of a name
	}
	const writers = 8
	outs := make([]strings.Builder, writers)
	var running []*exec.Cmd
	for i := range writers {
		c := exec.Command(os.Args[0], names[i/2%2])
		c.Env = append(os.Environ(), fmt.Sprintf("%s=%d", asWriter, i))
		c.Stdout, c.Stderr = &outs[i], &outs[i]
		if err := c.Start(); err != nil {
			t.Fatal(err)
		}
		running = append(running, c)
	}
	for _, c := range running {
		if err := c.Wait(); err != nil {
			t.Error(err)
		}
	}
	book, err := ledger.OpenFile(path)
	if err != nil {
		t.Fatal(err)
	}
	defer book.Close()
	times := map[string]int{}
	for _, r := range book.Records() {
		times[r.Entry.Note]++
	}
	entered, refused := 0, 0
	for i := range outs {
		for line := range strings.Lines(outs[i].String()) {
			what, note, _ := strings.Cut(strings.TrimSpace(line), ": ")
			want := 0
			switch what {
			case "entered":
				entered, want = entered+1, 1
			case "refused":
				refused++
			default:
				t.Errorf("%s", line)
				continue
			}
			if times[note] != want {
				t.Errorf("%s %q stands in the book %d times", what, note, times[note])
			}
		}
	}
	if entered != book.Len() || entered < 80 { // half of the writers try again
		t.Errorf("%d told to be entered, %d in the book", entered, book.Len())
	}
	if _, err := os.Stat(path + ".lock"); !errors.Is(err, os.ErrNotExist) {
		t.Errorf("the lock is left behind: %v", err)
	}
	t.Logf("%d entered, %d refused", entered, refused)
}

// TestPropertyBookMovedAway: an entry does not go into a file that the name no longer
// stands for.
func TestPropertyBookMovedAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f := must(ledger.CreateFile(path, goldBath(), day(0)))
	defer f.Close()
	e := ledger.Entry{When: day(1), Event: ledger.Load{Charge: units.AmpereMinute}}
	text := must(os.ReadFile(path))
	if err := os.Rename(path, path+".old"); err != nil {
		t.Skip(err) // a system that keeps open files in their place
	}
	if _, err := f.Append(e); !errors.Is(err, ledger.ErrChanged) {
		t.Errorf("moved away: %v", err)
	}
	if err := os.WriteFile(path, text, 0o644); err != nil {
		t.Fatal(err)
	}
	if _, err := f.Append(e); !errors.Is(err, ledger.ErrChanged) || f.Len() != 0 {
		t.Errorf("replaced: %v", err)
	}
	if got := must(os.ReadFile(path + ".old")); string(got) != string(text) {
		t.Error("the entry went into the file that was moved away")
	}
}
