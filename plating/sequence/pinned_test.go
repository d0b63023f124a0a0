package sequence_test

import (
	"flag"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/plating/sequence"
)

var update = flag.Bool("update", false, "rewrite the pinned plans")

// TestPinnedPlans pins every figure of the plans for hard gold and silver on
// every base metal: a slip in a time, a voltage or a word shows here. It proves
// nothing about them.
func TestPinnedPlans(t *testing.T) {
	var b strings.Builder
	for _, s := range sequence.Substrates() {
		if s == sequence.Titanium { // not planned
			continue
		}
		for _, f := range []sequence.Finish{sequence.HardGold, sequence.Silver} {
			p := piece(s, f)
			tanks, found, err := sequence.Plan(p)
			if err != nil {
				t.Fatal(err)
			}
			cards, err := sequence.Cards(tanks, p)
			if err != nil {
				t.Fatal(err)
			}
			for _, line := range strings.Split(sequence.Sheet(p, cards, found), "\n") {
				if !strings.HasPrefix(line, "   CAUTION") { // the same words again and again
					fmt.Fprintln(&b, line)
				}
			}
		}
	}
	const file = "testdata/plans.golden"
	if *update {
		if err := os.WriteFile(file, []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	got, old := strings.Split(b.String(), "\n"), strings.Split(string(want), "\n")
	for i := range max(len(got), len(old)) {
		if i >= len(got) || i >= len(old) || got[i] != old[i] {
			t.Fatalf("%s line %d: %q (-update rewrites it)", file, i+1, append(got, make([]string, len(old))...)[i])
		}
	}
}
