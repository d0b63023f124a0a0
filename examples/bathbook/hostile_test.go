package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"hash/crc32"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// hostile could take back a line on a terminal, make one up, or turn one round.
const hostile = "x\x1b[2K\r     9  2026-03-05 09:00  8.00 g/L  load\b\u202e\u2028\u009b"

// plainLines fails for a character that no line of a program may hold.
func plainLines(t *testing.T, name, text string) {
	t.Helper()
	for _, line := range strings.Split(strings.ReplaceAll(text, "    \t", ""), "\n") { // of the usage
		if units.Printable(line) != line {
			t.Errorf("%s: %q", name, line)
		}
	}
}

// TestHostileWords: no text of a flag, file name, bath file or book reaches the
// terminal or the picture with its control characters.
func TestHostileWords(t *testing.T) {
	dir := t.TempDir()
	bath, book := filepath.Join(dir, "bath.json"), filepath.Join(dir, "b.jsonl")
	quoted, err := json.Marshal(hostile)
	if err != nil {
		t.Fatal(err)
	}
	sound := `{"name": "nickel", "metal": "Ni", "volume": "20 L", "content": "75 g/L", "anode_kind": "insoluble", "efficiency": "0.95"`
	os.WriteFile(bath, []byte(sound+"}"), 0o644)
	if status, _, errs := call("-new", bath, "-when", "2026-03-02T08:00:00Z", book); status != 0 {
		t.Fatal(errs)
	}
	before, _ := os.ReadFile(book)
	for name, text := range map[string]string{
		"name": strings.Replace(sound, `"nickel"`, string(quoted), 1) + "}", "source": sound + `, "source": ` +
			string(quoted) + "}",
		"field": sound + `, ` + string(quoted) + `: 1}`, "metal": strings.Replace(sound, `"Ni"`, string(quoted), 1) + "}",
		"salt": sound + `, "salt": ` + string(quoted) + "}", "raw": sound + ", \x1b[2K\r}", "number": sound +
			", \"book\": {\"due\": " + string(quoted) + "}}",
	} {
		os.WriteFile(bath, []byte(text), 0o644)
		status, out, errs := call("-new", bath, "-when", "2026-03-02T08:00:00Z", filepath.Join(dir, "n.jsonl"))
		if status == 0 || errs == "" {
			t.Errorf("%s: taken", name)
		}
		plainLines(t, name, out+errs)
	}
	for name, args := range map[string][]string{
		"note": {"-load", "charge=1 C", "-note", hostile, book}, "reason": {"-correction", "metal=1 g, reason=" + hostile,
			book},
		"void": {"-void", "entry=1, reason=" + hostile, book}, "field": {"-load", hostile + "=1 C", book},
		"value": {"-load", "charge=" + hostile, book}, "piece": {"-load", hostile, book}, "when": {"-load", "charge=1 C",
			"-when", hostile, book},
		"flag": {"-" + hostile}, "value of a flag": {"-pH=" + hostile}, "file": {hostile},
		"new":  {"-new", hostile, hostile},
		"plot": {"-plot", hostile}, "plot to": {"-plot", hostile + "/none.svg"}, "into": {"-load", "charge=1 C", hostile},
	} {
		status, out, errs := call(args...)
		if status == 0 || errs == "" {
			t.Errorf("%s: taken", name)
		}
		plainLines(t, name, out+errs)
	}
	if after, _ := os.ReadFile(book); !bytes.Equal(before, after) {
		t.Error("the book changed")
	}

	// A book of before, which holds such words, is shown.
	entries := []string{
		strings.Replace(string(before[len(`{"crc":"00000000","entry":`):len(before)-2]), `"nickel"`, string(quoted), 1),
		`{"seq":1,"when":"2026-03-03T08:00:00Z","load":{"charge":"60 C"},"note":` + string(quoted) + `}`,
		`{"seq":2,"when":"2026-03-03T08:00:00Z","correction":{"metal":"0.001 kg","reason":"two\nlines` +
			string(quoted[1:]) + `}}`,
		`{"seq":3,"when":"2026-03-04T08:00:00Z","void":{"entry":2,"reason":` + string(quoted) + `}}`,
	}
	var text bytes.Buffer
	sum := uint32(0)
	for _, e := range entries {
		sum = crc32.Update(crc32.ChecksumIEEE(fmt.Appendf(nil, "%08x", sum)), crc32.IEEETable, []byte(e))
		fmt.Fprintf(&text, "{\"crc\":\"%08x\",\"entry\":%s}\n", sum, e)
	}
	old := filepath.Join(dir, "old\x1b[2K.jsonl")
	os.WriteFile(old, text.Bytes(), 0o644)
	picture := filepath.Join(dir, "old.svg")
	status, out, errs := call("-entries", "-working", "-plot", picture, old)
	if status != 0 {
		t.Fatalf("a book of before: %s", errs)
	}
	plainLines(t, "a book of before", out+errs)
	if n := strings.Count(out, `x\x1b[2K\r     9  2026-03-05 09:00`); n != 4 {
		t.Errorf("shown %d times:\n%s", n, out)
	}
	svg, _ := os.ReadFile(picture)
	plainLines(t, "the picture", strings.ReplaceAll(string(svg), "\t", " "))
	status, _, errs = call("-load", "charge=1 C", "-when", "2026-03-05T08:00:00Z", old)
	if status != 0 || !strings.Contains(errs, `old\x1b[2K.jsonl`) {
		t.Errorf("goes on: %s", errs)
	}
	plainLines(t, "goes on", errs)
	os.WriteFile(old, append(text.Bytes(), "\x1b[2K\r{}\n"...), 0o644)
	_, out, errs = call(old)
	plainLines(t, "damaged", out+errs)
}
