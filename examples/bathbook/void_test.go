package main

import (
	"bytes"
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

// TestVoiding: a book that holds a year far ahead says so, takes no entry of today, is
// mended with -void as it says, and shows both lines; the picture leaves the voided out.
func TestVoiding(t *testing.T) {
	path, _, errs, status := bookOf(t, `, "pH": {"low": 4.2, "high": 4.6}`)
	if status != 0 {
		t.Fatal(errs)
	}
	f, err := ledger.OpenFile(path) // as a program from before did: without a look at the clock
	if err != nil {
		t.Fatal(err)
	}
	slip := ledger.Entry{When: clock.AddDate(899, 0, 0), Event: ledger.Addition{Metal: 7 * units.Gram},
		Note: "by the meter"}
	if _, err := f.Append(slip); err != nil {
		t.Fatal(err)
	}
	f.Close()
	const remedy = `-void "entry=1, reason=year mistyped"`
	if _, out, _ := call(path); !strings.Contains(strings.Join(strings.Fields(out), " "),
		"no. 1 is dated 4 January 2926, later than "+
			"the clock shows: set the clock if it is wrong, else strike the entry out with "+remedy) {
		t.Errorf("the slip is not shown:\n%s", out)
	}
	status, _, errs = call("-load", "charge=1 A·min", "-when", "2026-03-03T08:00:00Z", path)
	if status != 1 || !strings.Contains(errs, remedy) || strings.Contains(errs, "entered") {
		t.Errorf("an entry of today: status %d, %s", status, errs)
	}
	status, out, errs := call("-void", "entry=1, reason=year mistyped", "-entries", "-when", "2026-03-03T08:00:00Z", path)
	if status != 0 || !strings.Contains(errs, "entered as no. 2 of "+path+"; no. 1 no longer counts") {
		t.Errorf("void: status %d, %s", status, errs)
	}
	for _, want := range []string{"2 entries, none of which counts",
		"     1  2926-01-04 08:00  voided    VOIDED by no. 2: addition     7.00 g metal (by the meter)\n",
		"     2  2026-03-03 08:00  2.00 g/L  void         no. 1: year mistyped\n", "   added              0.00 g"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
	if strings.Contains(out, "later than") {
		t.Errorf("still questioned:\n%s", out)
	}
	status, out, errs = call("-load", "charge=10 A·min", "-when", "2026-03-02T09:00:00Z", "-plot",
		filepath.Join(t.TempDir(), "gold.svg"), path)
	if status != 0 || !strings.Contains(out, "3 entries, 1 of them voided, the last that counts on 2 March 2026") {
		t.Errorf("the next load: status %d, %s\n%s", status, errs, out)
	}
	for fields, want := range map[string]string{"entry=0, reason=x": "start a new book",
		"entry=1, reason=x": "voided by no. 2 already",
		"entry=2, reason=x": "no void", "entry=9, reason=x": "1 to 3", "reason=x": `entry: field "entry" is missing`,
		"entry=3": `reason: field "reason" is missing`} {
		if status, _, errs := call("-void", fields, "-when", "2026-03-04T08:00:00Z", path); status != 1 ||
			!strings.Contains(errs, want) {
			t.Errorf("%s: status %d, %s", fields, status, errs)
		}
	}
}

// TestClock: a time far from the clock is refused with what to do, and nothing is written.
func TestClock(t *testing.T) {
	path, _, _, _ := bookOf(t, "")
	before, _ := os.ReadFile(path)
	for _, when := range []string{"2926-03-03T08:00:00Z", "2027-01-06T08:00:00Z", "1926-03-03T08:00:00Z"} {
		status, _, errs := call("-load", "charge=1 A·min", "-when", when, path)
		if status != 1 || !strings.Contains(errs, "nothing was entered: time of the entry "+when) ||
			!strings.Contains(errs, "look at the year") {
			t.Errorf("%s: status %d, %s", when, status, errs)
		}
		dir := t.TempDir()
		status, _, errs = call("-new", filepath.Join(filepath.Dir(path), "bath.json"), "-when", when,
			filepath.Join(dir, "n"))
		if left, _ := os.ReadDir(dir); status != 1 || len(left) != 0 || !strings.Contains(errs, "no book was opened") {
			t.Errorf("a new book, %s: status %d, %s", when, status, errs)
		}
	}
	if after, _ := os.ReadFile(path); !bytes.Equal(before, after) {
		t.Error("the book changed")
	}
	if status, _, errs := call("-load", "charge=1 A·min", "-when", "2027-01-05T07:00:00Z", path); status != 0 {
		t.Errorf("within a day of the clock: %s", errs)
	}
}

// TestPropertyBusy: entries made at the same moment are all entered, once each.
func TestPropertyBusy(t *testing.T) {
	path, _, _, _ := bookOf(t, "")
	const n = 24
	var wait sync.WaitGroup
	said := make([]string, n)
	for i := range n {
		wait.Add(1)
		go func() {
			defer wait.Done()
			status, _, errs := call("-load", "charge=1 A·min", "-note", fmt.Sprintf("rack %d", i), "-when",
				"2026-03-03T08:00:00Z", path)
			said[i] = fmt.Sprintf("%d %s", status, errs)
		}()
	}
	wait.Wait()
	_, out, errs := call("-entries", path)
	if errs != "" {
		t.Error(errs)
	}
	for i, s := range said {
		if !strings.HasPrefix(s, "0 bathbook: entered as no. ") || strings.Count(out, fmt.Sprintf("(rack %d)", i)) != 1 {
			t.Errorf("rack %d: %s", i, s)
		}
	}
}

// TestLineBeingWritten: a last line that another program is just writing is no torn one,
// which would have to be entered again.
func TestLineBeingWritten(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	half := len(demo) - 40
	os.WriteFile(path, []byte(demo[:half]), 0o644)
	done := make(chan error)
	go func() {
		time.Sleep(30 * time.Millisecond) // the program below reads first
		f, err := os.OpenFile(path, os.O_WRONLY|os.O_APPEND, 0)
		if err == nil {
			_, err = f.WriteString(demo[half:])
			f.Close()
		}
		done <- err
	}()
	status, out, errs := call(path)
	if err := <-done; err != nil {
		t.Fatal(err)
	}
	if status != 0 || errs != "" || !strings.Contains(out, "55 entries") {
		t.Errorf("status %d, %s\n%s", status, errs, out)
	}
}
