package main

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

var update = flag.Bool("update", false, "write demo.jsonl and demo.txt anew")

// clock is what the clock shows in the tests, behind all entries in them.
var clock = time.Date(2027, 1, 4, 8, 0, 0, 0, time.UTC)

func call(args ...string) (status int, out, errs string) {
	var o, e bytes.Buffer
	status = run(args, clock, strings.NewReader(demo), &o, &e)
	return status, o.String(), e.String()
}

// demoBook is the invented book of the clock workshop: seven weeks of hands and
// small parts in hard gold. Its true efficiency is a little over the book's.
func demoBook(t *testing.T) []byte {
	t.Helper()
	file, err := os.Open("demo-bath.json")
	if err != nil {
		t.Fatal(err)
	}
	defer file.Close()
	account, err := ledger.ReadAccount(file)
	if err != nil {
		t.Fatal(err)
	}
	salt := account.Salts[0]
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	var text bytes.Buffer
	l, err := ledger.Start(&text, account, opened)
	if err != nil {
		t.Fatal(err)
	}
	post := func(day int, hour int, note string, e ledger.Event) {
		if _, err := l.Append(&text, ledger.Entry{When: opened.AddDate(0, 0, day).Add(time.Duration(hour) * time.Hour),
			Event: e, Note: note}); err != nil {
			t.Fatal(err)
		}
	}
	for day := range 47 {
		if weekday := day % 7; weekday > 4 { // the second of March is a Monday
			continue
		}
		charge := []units.Charge{14, 11, 17, 9, 12}[day%5] * units.AmpereMinute
		load := ledger.Load{Charge: charge, DragOut: 4 * units.Millilitre, DragOutUncertainty: units.Millilitre,
			DragIn: 3 * units.Millilitre}
		if day == 23 {
			load.Weighed, load.WeighedUncertainty = 412*units.Milligram, 2*units.Milligram
			post(day, 1, "weighed", load)
		} else {
			post(day, 1, "", load)
		}
		if day%7 == 4 { // Fridays
			post(day, 7, "", ledger.Evaporation{Volume: 120 * units.Millilitre})
			post(day, 8, "", ledger.Addition{Water: 122 * units.Millilitre})
		}
		switch day {
		case 11:
			post(day, 9, "titration", ledger.Analysis{Content: 6.98 * units.GramPerLitre,
				Uncertainty: 0.07 * units.GramPerLitre})
			add, err := l.ByAnalysis(salt)
			if err != nil {
				t.Fatal(err)
			}
			feed := add.Addition()
			// as weighed
			feed.SaltMass, feed.Uncertainty = units.Mass(float64(int(feed.SaltMass.In(units.Gram)*10))/10)*units.Gram,
				0.02*units.Gram
			post(day, 9, "", feed)
		case 25:
			post(day, 9, "titration", ledger.Analysis{Content: 6.93 * units.GramPerLitre,
				Uncertainty: 0.07 * units.GramPerLitre})
			post(day, 9, "", ledger.Addition{Salt: salt, SaltMass: 7.5 * units.Gram, Uncertainty: 0.02 * units.Gram})
		case 30:
			post(day, 9, "", ledger.Correction{Metal: -0.31 * units.Gram, Volume: -40 * units.Millilitre,
				Uncertainty: 0.05 * units.Gram, Reason: "rack dropped, about 40 mL over the edge"})
		case 39:
			post(day, 9, "by the meter", ledger.Addition{Salt: salt, SaltMass: 6.6 * units.Gram,
				Uncertainty: 0.02 * units.Gram})
		}
	}
	return text.Bytes()
}

// TestPinnedDemo holds the embedded book and its sheet; -update rewrites them.
func TestPinnedDemo(t *testing.T) {
	book := demoBook(t)
	if *update {
		if err := os.WriteFile("demo.jsonl", book, 0o644); err != nil {
			t.Fatal(err)
		}
		demo = string(book)
	}
	if string(book) != demo {
		t.Error("demo.jsonl is not what the test makes: go test -update, and read the difference")
	}
	status, out, errs := call("-entries", "-working")
	if status != 0 || errs != "" {
		t.Fatalf("status %d: %s", status, errs)
	}
	if *update {
		if err := os.WriteFile("demo.txt", []byte(out), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile("demo.txt")
	if err != nil {
		t.Fatal(err)
	}
	if out != string(want) {
		t.Errorf("demo.txt is not what the program prints:\n%s", out)
	}
}

func TestPropertySameBook(t *testing.T) {
	_, embedded, _ := call()
	status, piped, errs := call("-")
	if status != 0 || errs != "" || strings.ReplaceAll(embedded, "   embedded demo, invented data", "") != piped {
		t.Errorf("from standard input: status %d, %s\n%s", status, errs, piped)
	}
	path := filepath.Join(t.TempDir(), "gold.jsonl")
	if err := os.WriteFile(path, []byte(demo), 0o444); err != nil {
		t.Fatal(err)
	}
	status, file, errs := call(path)
	if status != 0 || errs != "" || file != piped {
		t.Errorf("from a file: status %d, %s", status, errs)
	}
	if got, _ := os.ReadFile(path); string(got) != demo {
		t.Error("showing a book changed it")
	}
}

// TestPropertyPosting goes the way of a shop: new book, loads, analysis, torn
// line, next load.
func TestPropertyPosting(t *testing.T) {
	dir := t.TempDir()
	book, bath := filepath.Join(dir, "nickel.jsonl"), filepath.Join(dir, "bath.json")
	os.WriteFile(bath, []byte(`{"name": "nickel, Watts type", "metal": "Ni", "volume": "20 L", "content": "75 g/L",
		"efficiency": {"low": "93 %", "high": "97 %"}, "anode_kind": "soluble", "salt": "NiSO4·6H2O",
		"book": {"anodes": {"share": "100 %", "efficiency": "99 %"}, "low": "60 g/L", "high": "90 g/L"}}`), 0o644)
	steps := [][]string{
		{"-new", bath, "-when", "2026-03-02T08:00:00Z", book},
		{"-load", "charge=1200 A·min, drag_out=6 mL", "-when", "2026-03-02T12:00:00Z", "-note", "6 bezels", book},
		{"-addition", "salt=NiSO4.6H2O, salt_mass=100 g, water=60 mL", "-when", "2026-03-03T08:00:00Z", book},
		{"-evaporation", "volume=0.2 L", "-when", "2026-03-03T12:00:00Z", book},
		{"-correction", "volume=-10 mL, metal=-0.7 g, reason=spill, wiped up, at the edge", "-when", "2026-03-03T13:00:00Z",
			book},
		{"-analysis", "content=76 g/L, uncertainty=0.5 g/L, reset=true", "-when", "2026-03-04T08:00:00Z", book},
	}
	for i, args := range steps {
		said := ""
		if i > 0 {
			said = fmt.Sprintf("bathbook: entered as no. %d of %s\n", i, book)
		}
		if status, _, errs := call(args...); status != 0 || errs != said {
			t.Fatalf("%v: status %d, %s", args, status, errs)
		}
	}
	_, out, _ := call("-entries", "-working", book)
	for _, want := range []string{"soluble anodes", "5 entries", "6 bezels", "spill, wiped up, at the edge",
		"76.00 g/L ± 0.50 g/L", "the anodes give what the deposit takes", "the bath grows richer"} {
		if !strings.Contains(out, want) {
			t.Errorf("%q is not in\n%s", want, out)
		}
	}
	text, _ := os.ReadFile(book)
	os.WriteFile(book, text[:len(text)-7], 0o644)
	status, out, errs := call(book)
	if status != 0 || !strings.Contains(errs, "cut short") || !strings.Contains(out, "4 entries") {
		t.Errorf("a torn book: status %d, %s", status, errs)
	}
	if status, _, errs = call("-load", "charge=60 A·min", "-when", "2026-03-05T08:00:00Z", book); status != 0 ||
		!strings.Contains(errs, "cut short") {
		t.Errorf("a load into a torn book: status %d, %s", status, errs)
	}
	if status, out, errs = call(book); status != 0 || errs != "" || !strings.Contains(out, "5 entries") {
		t.Errorf("mended: status %d, %s", status, errs)
	}
}

func TestPropertyPlot(t *testing.T) {
	dir := t.TempDir()
	for name, magic := range map[string]string{"gold.png": "\x89PNG\r\n", "gold.SVG": "<?xml"} {
		path := filepath.Join(dir, name)
		if status, out, errs := call("-plot", path); status != 0 || errs != "" || !strings.Contains(out, "BATH BOOK") {
			t.Fatalf("%s: status %d, %s", name, status, errs)
		}
		got, err := os.ReadFile(path)
		if err != nil || !bytes.HasPrefix(got, []byte(magic)) || len(got) < 5000 {
			t.Errorf("%s: %d bytes, %v", name, len(got), err)
		}
		if strings.HasSuffix(name, "SVG") {
			for _, want := range []string{"A·min", "Au content, g/L", "low alarm", "high alarm", "target", "analysis"} {
				if !bytes.Contains(got, []byte(want)) {
					t.Errorf("%q is not in the picture", want)
				}
			}
		}
	}
	// A book without any entry has a picture too.
	book, bath := filepath.Join(dir, "new.jsonl"), filepath.Join(dir, "bath.json")
	os.WriteFile(bath,
		[]byte(`{"name": "silver", "metal": "Ag", "volume": "8 L", "content": "30 g/L", "efficiency": "99 %", "anode_kind": "insoluble"}`), 0o644)
	if status, _, errs := call("-new", bath, "-plot", filepath.Join(dir, "new.png"), book); status != 0 {
		t.Errorf("status %d, %s", status, errs)
	}
	if status, _, errs := call("-plot", filepath.Join(dir, "none", "x.png")); status != 1 || errs == "" {
		t.Errorf("no such folder: status %d, %s", status, errs)
	}
}

func TestBadCalls(t *testing.T) {
	dir := t.TempDir()
	book := filepath.Join(dir, "book.jsonl")
	os.WriteFile(book, []byte(demo), 0o644)
	damaged := filepath.Join(dir, "damaged.jsonl")
	os.WriteFile(damaged, []byte(strings.Replace(demo, "840 C", "850 C", 1)), 0o644)
	bad := filepath.Join(dir, "bad.json")
	os.WriteFile(bad, []byte(`{"name": "x", "colour": "red"}`), 0o644)
	two := filepath.Join(dir, "two.json")
	os.WriteFile(two, []byte(`{"name": "x"} {}`), 0o644)
	at := []string{"-when", "2026-05-01T08:00:00Z"}
	with := func(a ...string) []string { return append(append([]string{}, at...), a...) }
	for name, c := range map[string]struct {
		args   []string
		status int
		want   string
	}{
		"help":            {[]string{"-h"}, 0, "usage"},
		"flag":            {[]string{"-colour"}, 2, "colour"},
		"two books":       {[]string{"a", "b"}, 2, "2 books"},
		"empty name":      {[]string{""}, 2, "empty"},
		"no file":         {[]string{filepath.Join(dir, "none")}, 1, "none"},
		"damaged":         {[]string{damaged}, 1, "line"},
		"write to demo":   {with("-load", "charge=1 C"), 2, "file"},
		"write to stdin":  {with("-load", "charge=1 C", "-"), 2, "file"},
		"two entries":     {with("-load", "charge=1 C", "-evaporation", "volume=1 L", book), 2, "-evaporation and -load"},
		"new and load":    {with("-new", bad, "-load", "charge=1 C", book), 2, "first"},
		"note alone":      {[]string{"-note", "x", book}, 2, "-note"},
		"when alone":      {append(at, book), 2, "-when"},
		"when":            {[]string{"-when", "noon", "-load", "charge=1 C", book}, 2, "noon"},
		"picture":         {[]string{"-plot", "x.gif"}, 2, ".svg"},
		"no equals":       {with("-load", "12 A·min", book), 1, "equals"},
		"unknown field":   {with("-load", "colour=red", book), 1, "colour"},
		"twice":           {with("-load", "charge=1 C, charge=2 C", book), 1, "twice"},
		"unit":            {with("-load", "charge=1 kg", book), 1, "charge"},
		"reset":           {with("-analysis", "content=7 g/L, uncertainty=1 g/L, reset=maybe", book), 1, "reset"},
		"comma":           {with("-analysis", "content=7 g/L, uncertainty=1 g/L, reset=true, x", book), 0, ""},
		"negative":        {with("-load", "charge=-1 C", book), 1, "below zero"},
		"old":             {[]string{"-when", "2026-03-02T09:00:00Z", "-load", "charge=1 C", book}, 1, "not before"},
		"other salt":      {with("-addition", "salt=KCN, salt_mass=1 g", book), 1, "metal content of KCN 0 % Au"},
		"no reason":       {with("-correction", "metal=1 g", book), 1, "reason"},
		"into no file":    {with("-load", "charge=1 C", filepath.Join(dir, "none")), 1, "none"},
		"into damaged":    {with("-load", "charge=1 C", damaged), 1, "damaged"},
		"bath":            {with("-new", bad, filepath.Join(dir, "n")), 1, "colour"},
		"two baths":       {with("-new", two, filepath.Join(dir, "n")), 1, "need one object"},
		"no bath":         {with("-new", filepath.Join(dir, "none.json"), filepath.Join(dir, "n")), 1, "none.json"},
		"over an old one": {with("-new", bad, book), 1, "colour"},
	} {
		status, _, errs := call(c.args...)
		if status != c.status || !strings.Contains(errs, c.want) {
			t.Errorf("%s: status %d, want %d; %q, want %q", name, status, c.status, errs, c.want)
		}
	}
}

// TestBookedIsSaid: an entry that is booked is said to be, whatever fails later,
// and loads without a charge do not hide the book.
func TestBookedIsSaid(t *testing.T) {
	dir := t.TempDir()
	bath, book := filepath.Join(dir, "bath.json"), filepath.Join(dir, "gold.jsonl")
	text := `{"name": "gold, acid cyanide", "metal": "Au", "volume": "5 L", "content": "8 g/L",
		"efficiency": "35 %", "anode_kind": "insoluble", "salt": "KAu(CN)2", "book": {"low": "7 g/L"}}`
	if err := os.WriteFile(bath, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	call := func(args ...string) (int, string, string) {
		var out, bad bytes.Buffer
		status := run(args, clock, strings.NewReader(""), &out, &bad)
		return status, out.String(), bad.String()
	}
	call("-new", bath, "-when", "2026-03-02T08:00:00Z", book)
	call("-load", "charge=20 A·min", "-when", "2026-03-02T09:00:00Z", book)
	for i := range 20 {
		when := fmt.Sprintf("2026-03-03T%02d:00:00Z", i)
		status, out, bad := call("-load", "weighed=1 mg", "-when", when, book)
		if status != 0 || !strings.Contains(bad, fmt.Sprintf("entered as no. %d", i+2)) || !strings.Contains(out,
			"gold, acid cyanide") {
			t.Fatalf("load %d: status %d, %s%s", i, status, bad, out)
		}
	}
	if status, _, bad := call("-analysis", "content=71.3 g/L, uncertainty=0.1 g/L", "-when", "2026-03-04T08:00:00Z",
		book); status != 1 || !strings.Contains(bad, "a slip? not entered") {
		t.Errorf("a slip of the pen: status %d, %s", status, bad)
	}
	if status, _, bad := call("-load", "", book); status != 2 || !strings.Contains(bad, "-load is empty") {
		t.Errorf("nothing to enter: status %d, %s", status, bad)
	}
	status, out, bad := call("-load", "charge=2 A·min", "-when", "2026-03-04T09:00:00Z", "-plot", filepath.Join(dir,
		"none", "x.svg"), book)
	if status != 1 || !strings.Contains(bad, "entered as no. 22") || out != "" {
		t.Errorf("status %d, %q, %q", status, bad, out)
	}
}
