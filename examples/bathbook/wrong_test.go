package main

import (
	"bytes"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// TestWrongWords: what is wrong with an entry or a bath is said with the field,
// what it holds and what would do, and never in the words of Go.
func TestWrongWords(t *testing.T) {
	dir := t.TempDir()
	book, bath := filepath.Join(dir, "b.jsonl"), filepath.Join(dir, "bath.json")
	os.WriteFile(book, []byte(demo), 0o644)
	const sound = `{"name": "nickel", "metal": "Ni", "volume": "20 L", "content": "75 g/L",
		"anode_kind": "insoluble", "efficiency": "0.95"}`
	but := func(old, with string) string {
		if !strings.Contains(sound, old) {
			t.Fatalf("%q is not there", old)
		}
		return strings.Replace(sound, old, with, 1)
	}
	for _, c := range []struct {
		kind, text string // of a bath, kind is "new"
		want       []string
	}{
		{"load", "chrge=12 A·min", []string{"-load: chrge: unknown field; known here are charge, weighed,",
			"drag_in_content"}},
		{"load", "charge=12", []string{`charge: charge "12": no unit`, "A·min"}},
		{"load", "charge=12 kg", []string{`charge: charge "12 kg"`, "A·min"}},
		{"load", "", []string{"-load is empty", "charge=12 A·min", "-h lists"}},
		{"evaporation", "volum=1 L", []string{"volum: unknown field; known here are volume"}},
		{"analysis", "content=7 g/L",
			[]string{`uncertainty: field "uncertainty" is missing; need the standard uncertainty`}},
		{"analysis", "content=7 g/L, uncertainty=1 g/L, reset=maybe", []string{`reset: is "maybe"; need true or false`}},
		{"addition", "salt=KAu(CN)2.2H20, salt_mass=1 g", []string{"salt of the addition KAu(CN)2·2H20", "number of H2O"}},
		{"new", but(`"20 L"`, "20"), []string{"volume: is 20 without a unit; need number and unit in quotes; accepted: " +
			"L, mL"}},
		{"new", but(`"0.95"`, `"95"`), []string{`need a fraction above 0 and at most 1`, "at most 1"}},
		{"new", but(`"0.95"`, `["95 %"]`), []string{`efficiency: is a list; need one figure`}},
		{"new", but(`"0.95"`, `{}`), []string{`efficiency: need "low" and "high", or one of them`}},
		{"new", but(`"0.95"`, `{"value": "95 %"}`), []string{"efficiency.value: unknown field; known here are low, high, " +
			"set"}},
		{"new", but(`"metal": "Ni", `, ""), []string{"metal: ", "not given; need the symbol of the metal"}},
		{"new", but(`"name": "nickel", `, ""), []string{"name: ", "not given; need a few words"}},
		{"new", but(`"volume": "20 L", `, ""), []string{"volume: ", "not given; need that at the level mark"}},
		{"new", but(`"anode_kind": "insoluble", `, ""), []string{"anode_kind: ", "not given; need soluble or insoluble"}},
		{"new", but(`"insoluble"`, `"soluble"`), []string{"book.anodes: ", "not given; need share and efficiency"}},
		{"new", but(`"name"`, `"book": {"anodes": {"share": 1, "efficiency": "98 %"}}, "name"`),
			[]string{"book.anodes: ", "insoluble"}},
		{"new", but(`"Ni"`, `""`), []string{"metal: ", "as Au"}},
		{"new", but(`"Ni"`, `28`), []string{`metal: is 28; need the symbol of the counted metal, as "Au"`}},
		{"new", but(`"Ni"`, `null`), []string{"metal: is null; need the symbol"}},
		{"new", but(`"Ni",`, `"Ni", "metal": "Au",`), []string{"metal: given twice"}},
		{"new", but(`"name"`, `"book": {"salts": "NiSO4"}, "name"`),
			[]string{`book.salts: is "NiSO4"; need formulas in quotes in square brackets`}},
		{"new", but(`"name"`, `"book": {"salts": ["NiSO4", 5]}, "name"`),
			[]string{"book.salts[2]: is 5; need formulas in quotes"}},
		{"new", but(`"name"`, `"salt": "NiSO4.7H2", "name"`), []string{"salt of the bath NiSO4·7H2", "number of H2O"}},
		{"new", but(`"name"`, `"valence": 7, "name"`), []string{bath + ": "}},
		{"new", but(`"Ni"`, `"Xx"`), []string{bath + ": ", `"Xx"`}},
		{"addition", "solution=100 mL", []string{"solution of 100 mL without its content", "entered as water"}},
		{"addition", "water=500 L", []string{"volume of the bath", "at most 2 times"}},
		{"new", sound[:60], []string{"line 1: ends in the middle; a brace, bracket or quote is not closed"}},
		{"new", but("g/L\",", "g/L\""), []string{"line 2: not JSON: something is wrong before '\"'; look for a comma"}},
		{"new", "", []string{"empty; need an object with name, metal"}},
		{"new", "[]", []string{"is a list; need an object in braces"}},
		{"new", but("nickel", "nickel\xff"), []string{"not UTF-8"}},
		{"new", sound, []string{book + ": there is a file of that name already", "another name", "leave -new away"}},
	} {
		args := []string{"-" + c.kind, c.text, "-when", "2026-05-01T08:00:00Z", book}
		if c.kind == "new" {
			os.WriteFile(bath, []byte(c.text), 0o644)
			args[1] = bath
		}
		status, _, errs := call(args...)
		if status == 0 {
			t.Errorf("%s %s: taken", c.kind, c.text)
		}
		for _, want := range c.want {
			if !strings.Contains(errs, want) {
				t.Errorf("%s %s: %s, want %q", c.kind, c.text, errs, want)
			}
		}
		for _, not := range []string{"json", "Go ", "EOF", "file exists", "unmarshal"} {
			if strings.Contains(strings.NewReplacer(bath, "", book, "").Replace(errs), not) {
				t.Errorf("%s %s: %q in %s", c.kind, c.text, not, errs)
			}
		}
	}
	if got, _ := os.ReadFile(book); string(got) != demo {
		t.Error("the book changed")
	}
	os.WriteFile(bath, []byte("\xef\xbb\xbf"+sound), 0o644) // some editors begin a file so
	if status, _, errs := call("-new", bath, filepath.Join(dir, "bom.jsonl")); status != 0 {
		t.Error(errs)
	}
}

// TestDamagedBook: a book that is damaged in the middle is shown as far as it is
// whole, without advice, and takes no entry.
func TestDamagedBook(t *testing.T) {
	dir := t.TempDir()
	lines := strings.SplitAfter(demo, "\n")
	join := func(parts ...[]string) string {
		s := ""
		for _, p := range parts {
			s += strings.Join(p, "")
		}
		return s
	}
	for name, c := range map[string]struct {
		text, line, shown, remedy string
	}{
		"cut in the middle": {join(lines[:10], []string{lines[10][:50] + "\n"}, lines[11:]), "line 11: damaged",
			" 9 entries", "the first 10 lines"},
		"changed":        {strings.Replace(demo, "660 C", "661 C", 1), "line 3: damaged", " 1 entry", "the first 2 lines"},
		"a line missing": {join(lines[:1], lines[2:]), "line 2: damaged", "no entry yet", "the first line"},
		"first line":     {strings.Replace(demo, "cobalt", "Cobalt", 1), "line 1: damaged", "", "start again with -new"},
		"empty":          {"", "no opening is left", "", "move the file away and start again with -new"},
		"first line cut": {lines[0][:80], "no opening is left", "", "move the file away and start again with -new"},
	} {
		path := filepath.Join(dir, strings.ReplaceAll(name, " ", "-")+".jsonl")
		os.WriteFile(path, []byte(c.text), 0o644)
		picture := filepath.Join(dir, "none.png")
		status, out, errs := call("-working", "-plot", picture, path)
		if status != 1 || !strings.Contains(errs, c.line) || !strings.Contains(errs, c.remedy) || strings.Contains(errs,
			"enter what it said again") {
			t.Errorf("%s: status %d, %s", name, status, errs)
		}
		switch {
		case c.shown == "":
			if out != "" {
				t.Errorf("%s: shows\n%s", name, out)
			}
		case !strings.Contains(out, c.shown) || !strings.Contains(out, "DAMAGED in "+strings.Split(c.line, ":")[0]+":") ||
			!strings.Contains(out, "STATE") || !strings.Contains(out, "BALANCE"):
			t.Errorf("%s: shows\n%s", name, out)
		case strings.Contains(out, "TO ADD NOW") || strings.Contains(out, "FORECAST") || strings.Contains(out, "WORKING"):
			t.Errorf("%s: advice from half a book\n%s", name, out)
		}
		if _, err := os.Stat(picture); err == nil {
			t.Errorf("%s: a picture", name)
		}
		status, out, errs = call("-load", "charge=1 A·min", "-when", "2026-05-01T08:00:00Z", path)
		if status != 1 || out != "" || !strings.Contains(errs, "nothing was entered") || !strings.Contains(errs, c.line) ||
			!strings.Contains(errs, c.remedy) {
			t.Errorf("%s: a load: status %d, %s%s", name, status, errs, out)
		}
		if got, _ := os.ReadFile(path); string(got) != c.text {
			t.Errorf("%s: the file changed", name)
		}
	}
}

// TestNotGiven: an uncertainty that nobody gave is not shown as zero, and a
// forecast names the year.
func TestNotGiven(t *testing.T) {
	dir := t.TempDir()
	bath, book := filepath.Join(dir, "bath.json"), filepath.Join(dir, "gold.jsonl")
	os.WriteFile(bath,
		[]byte(`{"name": "gold, acid cyanide", "metal": "Au", "volume": "5 L", "content": "8 g/L", "anode_kind": "insoluble",
		"efficiency": {"low": "32 %", "high": "38 %"}, "salt": "KAu(CN)2", "book": {"low": "7 g/L"}, "pH": {"low": 4.2, "high": 4.6}}`), 0o644)
	_, out, _ := call("-new", bath, "-when", "2026-12-28T08:00:00Z", book)
	if !strings.Contains(out, "8.00 g/L, uncertainty not given") || !strings.Contains(out,
		"(mark 5.00 L), uncertainty not given") || strings.Contains(out, "± 0.00") {
		t.Errorf("opened:\n%s", out)
	}
	for day := range 3 {
		when := time.Date(2026, 12, 28+day, 9, 0, 0, 0, time.UTC).Format(time.RFC3339)
		_, out, _ = call("-load", "charge=10 A·min", "-when", when, book)
	}
	if !strings.Contains(out, "(uncertainty of the opening content not given: the true one is larger)") ||
		strings.Contains(out, "± 0.00 g/L") {
		t.Errorf("after loads:\n%s", out)
	}
	if !strings.Contains(out, "January 2027") {
		t.Errorf("no year in the forecast:\n%s", out)
	}
	_, out, _ = call("-analysis", "content=7.8 g/L, uncertainty=0.1 g/L, reset=true", "-when", "2026-12-31T09:00:00Z",
		book)
	if strings.Contains(out, "not given") || !strings.Contains(out, "7.80 g/L ± 0.10 g/L") {
		t.Errorf("after an analysis that counts alone:\n%s", out)
	}
}

// TestPropertyMargins: a picture has white all round, three millimetres at least.
func TestPropertyMargins(t *testing.T) {
	path := filepath.Join(t.TempDir(), "gold.png")
	call("-plot", path)
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	inner := img.Bounds().Inset(3 * 200 * 10 / 254) // at 200 dots an inch
	for y := img.Bounds().Min.Y; y < img.Bounds().Max.Y; y++ {
		for x := img.Bounds().Min.X; x < img.Bounds().Max.X; x++ {
			if x >= inner.Min.X && x < inner.Max.X && y >= inner.Min.Y && y < inner.Max.Y {
				continue
			}
			if r, g, b, _ := img.At(x, y).RGBA(); r != 0xffff || g != 0xffff || b != 0xffff {
				t.Fatalf("ink at %d, %d of %v", x, y, img.Bounds())
			}
		}
	}
}

// TestPropertyBoundedBooks: a folder, a device and a file of 3 GB are refused in a
// sentence, as a book to show, to enter in, and as the bath of a new book.
func TestPropertyBoundedBooks(t *testing.T) {
	dir := t.TempDir()
	large := filepath.Join(dir, "large")
	if err := os.WriteFile(large, nil, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.Truncate(large, 3<<30); err != nil { // takes no room on the disk
		t.Skip(err)
	}
	for name, want := range map[string]string{large: "need at most", os.DevNull: "is a device", dir: "is a folder"} {
		for _, args := range [][]string{{name}, {"-load", "charge=1 A·min", name},
			{"-new", name, filepath.Join(dir, "new")}} {
			var out, bad bytes.Buffer
			if status := run(args, clock, strings.NewReader(""), &out, &bad); status == 0 || !strings.Contains(bad.String(),
				want) {
				t.Errorf("%q: status %d, %q", args, status, bad.String())
			}
		}
	}
}
