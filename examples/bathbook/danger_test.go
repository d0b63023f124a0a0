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
	text := `{"name": "gold, acid cyanide strike", "metal": "Au", "volume": "5 L", "content": "2 g/L", "target": "5 g/L",
		"equivalent": "7.349 g/(A·h)", "efficiency": {"value": "10 %"}, "salts": ["KAu(CN)2"]` + more + `}`
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
	// Gold(III) in strong acid is fed with its own salt only.
	if _, _, errs, status := bookOf(t, `, "pH": {"low": 1, "high": 2}, "valence": 3`); status != 1 ||
		!strings.Contains(errs, "KAu(CN)2 holds gold(I)") {
		t.Errorf("gold(III) fed with the salt of gold(I): status %d, %s", status, errs)
	}
	for more, word := range map[string]string{`, "pH": 4`: "pH", `, "pH": {"low": "acid"}`: "pH",
		`, "hazards": ["poison"]`: "one of cyanide",
		`, "hazards": "cyanide"`:  "a list", `, "valence": "gold"`: "whole number", `, "valence": 9`: "1 to 8",
		`, "pH": {"low": 5, "high": 4}`: "low end first"} {
		if _, _, errs, status := bookOf(t, more); status != 1 || !strings.Contains(errs, word) {
			t.Errorf("%s: status %d, %s", more, status, errs)
		}
	}
	if status, _, errs := call("-pH", "17", path); status != 2 || !strings.Contains(errs, "at most 16") {
		t.Errorf("pH 17: status %d, %s", status, errs)
	}
}
