package main

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// bookOf opens a book for a bath and returns its path and what was printed.
func bookOf(t *testing.T, more string) (path, out, errs string, status int) {
	t.Helper()
	dir := t.TempDir()
	bath := filepath.Join(dir, "bath.json")
	text := `{"name": "gold, acid cyanide strike", "metal": "Au", "volume": "5 L", "content": "2 g/L", "book": {"target": "5 g/L"},
		"efficiency": "10 %", "anode_kind": "insoluble", "salt": "KAu(CN)2"` + more + `}`
	if err := os.WriteFile(bath, []byte(text), 0o644); err != nil {
		t.Fatal(err)
	}
	path = filepath.Join(dir, "strike.jsonl")
	status, out, errs = call("-new", bath, "-when", "2026-03-02T08:00:00Z", path)
	return path, out, errs, status
}

// TestPropertyBookOfAcidGold: how much cyanide salt to add to an acid bath is
// told only when the pH is known and high enough, and never without the caution
// beside it.
func TestPropertyBookOfAcidGold(t *testing.T) {
	amount := "21.9" // g of KAu(CN)2 for 15 g of gold
	path, out, errs, status := bookOf(t, "")
	if status != 0 || strings.Contains(out, amount) || !strings.Contains(out, "STOP") || !strings.Contains(out,
		"-pH 4.4") {
		t.Errorf("pH not given: status %d %s\n%s", status, errs, out)
	}
	for _, c := range []struct {
		pH   string
		tell bool
	}{{"0.5", false}, {"2.9", false}, {"3", true}, {"4.4", true}} {
		status, out, errs = call("-working", "-pH", c.pH, path)
		if status != 0 || strings.Contains(out, amount) != c.tell || strings.Contains(out, "STOP") == c.tell {
			t.Errorf("pH %s: status %d %s\n%s", c.pH, status, errs, out)
		}
		if i, k := strings.Index(out, "POISON"), strings.Index(out, amount); c.tell && (i < 0 || i > k) {
			t.Errorf("pH %s: no caution before the amount\n%s", c.pH, out)
		}
		if !strings.Contains(out, "CYANIDE IN ACID") || !strings.Contains(out, "licensed practice") {
			t.Errorf("pH %s: no caution on top\n%s", c.pH, out)
		}
	}
	if _, _, errs, status := bookOf(t, `, "pH": {"low": 1, "high": 2}`); status != 1 || !strings.Contains(errs,
		"hydrogen cyanide") || !strings.Contains(errs, "GoldCyanidePatent") {
		t.Errorf("a book of pH 1 was opened: status %d, %s", status, errs)
	}
	if _, out, errs, status := bookOf(t, `, "pH": {"low": 3.5, "high": 4}`); status != 0 || !strings.Contains(out,
		amount) {
		t.Errorf("pH 3.5 to 4: status %d, %s\n%s", status, errs, out)
	}
	// A name that does not say acid is no proof that the bath is not.
	for more, tell := range map[string]bool{``: false, `, "pH": {"low": 6, "high": 7}`: true,
		`, "hazards": ["cyanide"]`: true} {
		dir := t.TempDir()
		bath := filepath.Join(dir, "bath.json")
		text := `{"name": "gold bath 3", "metal": "Au", "volume": "5 L", "content": "2 g/L", "book": {"target": "5 g/L"},
			"efficiency": "90 %", "anode_kind": "insoluble", "salt": "KAu(CN)2"` + more + `}`
		if err := os.WriteFile(bath, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		_, out, errs := call("-new", bath, "-when", "2026-03-02T08:00:00Z", filepath.Join(dir, "gold.jsonl"))
		if strings.Contains(out, amount) != tell || strings.Contains(out, "nothing says whether") == tell {
			t.Errorf("gold bath 3%s: %s\n%s", more, errs, out)
		}
	}
	// Gold(III) in strong acid is fed with its own salt only.
	if _, _, errs, status := bookOf(t, `, "pH": {"low": 1, "high": 2}, "valence": 3`); status != 1 ||
		!strings.Contains(errs, "KAu(CN)2 holds gold(I)") {
		t.Errorf("gold(III) fed with the salt of gold(I): status %d, %s", status, errs)
	}
	for more, word := range map[string]string{`, "pH": 40`: "pH", `, "pH": {"low": "acid"}`: "pH",
		`, "hazards": ["poison"]`: "one of cyanide",
		`, "hazards": "cyanide"`:  "words in square brackets", `, "valence": "gold"`: "whole number",
		`, "valence": 9`:                "1 to 8",
		`, "pH": {"low": 5, "high": 4}`: "low end first"} {
		if _, _, errs, status := bookOf(t, more); status != 1 || !strings.Contains(errs, word) {
			t.Errorf("%s: status %d, %s", more, status, errs)
		}
	}
	if status, _, errs := call("-pH", "17", path); status != 2 || !strings.Contains(errs, "at most 16") {
		t.Errorf("pH 17: status %d, %s", status, errs)
	}
}

// TestPropertyBookAfterAcid: when the last entry of a cyanide book speaks of acid, no
// amount is told before the pH is measured; a bath without cyanide asks nothing.
func TestPropertyBookAfterAcid(t *testing.T) {
	dir := t.TempDir()
	for name, bath := range map[string]string{
		"silver": `"name": "silver, cyanide", "metal": "Ag", "salt": "KAg(CN)2"`,
		"gold": `"name": "gold, acid cyanide", "metal": "Au", "salt": "KAu(CN)2",
			"pH": {"low": 4, "high": 4.5}`,
		"nickel": `"name": "nickel, Watts", "metal": "Ni", "salt": "NiSO4·6H2O"`,
	} {
		file, book := filepath.Join(dir, name+".json"), filepath.Join(dir, name+".jsonl")
		text := `{` + bath + `, "volume": "5 L", "content": "10 g/L", "book": {"target": "20 g/L"},
			"efficiency": "90 %", "anode_kind": "insoluble"}`
		if err := os.WriteFile(file, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		if status, _, errs := call("-new", file, "-when", "2026-03-02T08:00:00Z", book); status != 0 {
			t.Fatal(errs)
		}
		for i, c := range []struct {
			args []string
			stop bool
		}{
			{[]string{"-addition", "water=10 mL", "-note", "a splash"}, false},
			{[]string{"-addition", "water=10 mL", "-note", "pH lowered with sulfuric acid"}, true},
			{nil, true}, // until somebody measures
			{[]string{"-pH", map[string]string{"silver": "12", "gold": "4.2", "nickel": "4.2"}[name]}, false},
			{[]string{"-correction", "volume=5 mL, reason=citric 20 % for the pH"}, true},
			{[]string{"-addition", "water=10 mL", "-note", "free of acid"}, false},
		} {
			args := append([]string{}, c.args...)
			if len(args) > 0 && args[0] != "-pH" {
				args = append(args, "-when", "2026-03-02T09:0"+string(rune('0'+i))+":00Z")
			}
			status, out, errs := call(append(args, book)...)
			stop := strings.Contains(out, "STOP") && !strings.Contains(out, "to target")
			if want := c.stop && name != "nickel"; status != 0 || stop != want || want && !strings.Contains(out, "with -pH") {
				t.Errorf("%s, %v: status %d, stop %t: %s\n%s", name, c.args, status, stop, errs, out)
			}
		}
	}
}
