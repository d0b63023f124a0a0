package ledger_test

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

func load(minutes float64) ledger.Entry {
	return ledger.Entry{When: sheetDay.Add(time.Hour),
		Event: ledger.Load{Charge: units.Charge(minutes) * units.AmpereMinute}}
}

// TestPropertyEnter: an entry of any program at any moment is entered once; what is refused
// leaves the file as it was.
func TestPropertyEnter(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	f, err := ledger.CreateFile(path, workshopBath(), sheetDay)
	if err != nil {
		t.Fatal(err)
	}
	f.Close()
	const n = 12
	var wait sync.WaitGroup
	seqs := make([]int, n)
	for i := range n {
		wait.Add(1)
		go func() {
			defer wait.Done()
			in, err := ledger.Enter(path, load(1))
			if err == nil {
				seqs[i] = in.Record.Seq
			}
		}()
	}
	wait.Wait()
	seen := map[int]bool{}
	for _, s := range seqs {
		seen[s] = true
	}
	if len(seen) != n || seen[0] {
		t.Errorf("entered as %v", seqs)
	}
	before, _ := os.ReadFile(path)
	slip := ledger.Entry{When: sheetDay.Add(2 * time.Hour),
		Event: ledger.Analysis{Content: 70 * units.GramPerLitre, Uncertainty: 0.1 * units.GramPerLitre}}
	in, err := ledger.Enter(path, slip)
	var e *ledger.SlipError
	if !errors.As(err, &e) || !errors.Is(err, units.ErrInconsistent) || in.Book == nil || in.Record.Seq != 0 ||
		!strings.Contains(err.Error(), "an analysis of 70 g/L lies far from") {
		t.Errorf("a slip: %+v, %v", in, err)
	}
	if _, err := ledger.Enter(path, load(-1)); !errors.Is(err, units.ErrNegative) {
		t.Errorf("below zero: %v", err)
	}
	if in, err := ledger.Enter(filepath.Join(t.TempDir(), "none"), load(1)); in.Book != nil ||
		!errors.Is(err, os.ErrNotExist) {
		t.Errorf("no file: %v", err)
	}
	if after, _ := os.ReadFile(path); string(after) != string(before) {
		t.Error("what was refused is in the file")
	}
	os.WriteFile(path, before[:len(before)-9], 0o644)
	if in, err := ledger.Enter(path, load(1)); err != nil || !errors.Is(in.Torn, ledger.ErrTorn) || in.Record.Seq != n {
		t.Errorf("into a torn book: %+v, %v", in.Torn, err)
	}
}

// TestPropertySlips: an analysis is questioned only when it is far away by both measures.
func TestPropertySlips(t *testing.T) {
	bath := workshopBath() // 8 g/L ± 0.1 g/L
	l, err := ledger.New(bath, sheetDay)
	if err != nil {
		t.Fatal(err)
	}
	const gl = units.GramPerLitre
	for _, c := range []struct {
		a    ledger.Analysis
		slip bool
	}{
		{ledger.Analysis{Content: 80 * gl, Uncertainty: 0.1 * gl},
			true}, {ledger.Analysis{Content: 0.8 * gl, Uncertainty: 0.01 * gl}, true},
		{ledger.Analysis{Content: 80 * gl, Uncertainty: 0.1 * gl, Reset: true}, false},
		{ledger.Analysis{Content: 9.55 * gl, Uncertainty: 0.01 * gl}, false}, // 15 uncertainties, but not a fifth
		{ledger.Analysis{Content: 9.65 * gl, Uncertainty: 0.01 * gl}, true},
		{ledger.Analysis{Content: 12 * gl, Uncertainty: 0.5 * gl}, false}, // half as much again, but 8 uncertainties
		{ledger.Analysis{Content: 14 * gl, Uncertainty: 0.5 * gl}, true},
	} {
		if err := l.CheckSlip(c.a); (err != nil) != c.slip {
			t.Errorf("%+v: %v", c.a, err)
		}
	}
	if err := l.CheckSlip(ledger.Load{Charge: -1}); err != nil { // not its question
		t.Error(err)
	}
	if err := (*ledger.Ledger)(nil).CheckSlip(ledger.Analysis{Content: 1}); err != nil {
		t.Error(err)
	}
}

// TestPropertySalvage: a book comes as far as it is whole, with what is wrong behind that.
func TestPropertySalvage(t *testing.T) {
	_, text := bookWith(t, workshopBath(), load(1), load(2), load(3))
	lines := strings.SplitAfter(string(text), "\n")
	for _, c := range []struct {
		text    string
		entries int // -1: no book
		err     error
		line    int
	}{
		{string(text), 3, nil, 0},
		{string(text[:len(text)-5]), 2, ledger.ErrTorn, 4},
		{strings.Replace(string(text), "120 C", "121 C", 1), 1, ledger.ErrDamaged, 3},
		{lines[0] + lines[2], 0, ledger.ErrDamaged, 2},
		{strings.Replace(string(text), "cobalt", "Cobalt", 1), -1, ledger.ErrDamaged, 1},
		{lines[0][:40], -1, ledger.ErrTorn, 1},
		{"", -1, ledger.ErrTorn, 1},
	} {
		l, err := ledger.Salvage([]byte(c.text))
		var damage *ledger.DamageError
		var torn *ledger.TornError
		line := 0
		if errors.As(err, &damage) {
			line = damage.Line
		} else if errors.As(err, &torn) {
			line = torn.Line
		}
		if !errors.Is(err, c.err) || line != c.line || (l == nil) != (c.entries < 0) || l != nil && l.Len() != c.entries {
			t.Errorf("%d entries, %v; want %d, %v in line %d", l.Len(), err, c.entries, c.err, c.line)
		}
	}
}

// TestPropertyLate: what is said of an entry far ahead names it and what to do.
func TestPropertyLate(t *testing.T) {
	l, _ := bookWith(t, workshopBath(), load(1))
	const late = " 2 March 2026, later than the clock shows: set the clock if it is wrong, else "
	for entry, want := range map[int]string{0: "the book is opened on" + late + "start a new book",
		1: "no. 1 is dated" + late + "strike the entry out with a pen and enter it again", 2: "", -1: ""} {
		if got := l.Late(entry, "a pen"); got != want {
			t.Errorf("%d: %q", entry, got)
		}
	}
}

// A load by the meter, entered as a program does that is called for each one.
func ExampleEnter() {
	folder, err := os.MkdirTemp("", "book")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	path := filepath.Join(folder, "gold.jsonl")
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	f, err := ledger.CreateFile(path, workshopBath(), opened)
	if err != nil {
		fmt.Println(err)
		return
	}
	f.Close()
	event, err := ledger.ParseEvent("load", "charge=12 A·min, drag_out=4 mL")
	if err != nil {
		fmt.Println(err)
		return
	}
	in, err := ledger.Enter(path, ledger.Entry{When: opened.Add(time.Hour), Event: event, Note: "six hands"})
	fmt.Println(in.Record.Seq, in.Record.Deposited.Text(units.Gram, 3),
		in.Book.State().Content.Text(units.GramPerLitre, 2), err)
	// Output:
	// 1 0.514 g 7.90 g/L <nil>
}

// The bath of a new book as a finisher writes it, with a slip.
func ExampleReadAccount() {
	_, err := ledger.ReadAccount(strings.NewReader(`{"name": "silver", "metal": "Ag", "volume": "8 L", "content": "30",
		"efficiency": "99 %", "anode_kind": "insoluble"}`))
	fmt.Println(err)
	// Output:
	// content: mass concentration "30": no unit after the number; accepted: g/L, mg/L, kg/m³, g/mL, oz/US gal, oz/imp gal, ozt/US gal, ozt/imp gal, dwt/US gal, dwt/imp gal, lb/US gal
}

// The first lines of a book whose third line is damaged.
func ExampleSalvage() {
	var text strings.Builder
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	book, err := ledger.Start(&text, workshopBath(), opened)
	for i := range 3 {
		if err == nil {
			_, err = book.Append(&text, ledger.Entry{When: opened.AddDate(0, 0, i),
				Event: ledger.Evaporation{Volume: units.Litre / 10}})
		}
	}
	if err != nil {
		fmt.Println(err)
		return
	}
	whole, err := ledger.Salvage([]byte(strings.Replace(text.String(), "2026-03-03", "2025-03-03", 1)))
	fmt.Println(whole.Len(), errors.Is(err, ledger.ErrDamaged))
	// Output:
	// 1 true
}
