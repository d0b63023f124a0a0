package bath_test

import (
	"flag"
	"os"
	"strings"
	"testing"

	"example.com/laydown/plating/bath"
)

var update = flag.Bool("update", false, "rewrite the pinned library")

// TestPinnedLibrary pins every figure of the library, those from memory too,
// which no table can hold. It proves nothing about them.
func TestPinnedLibrary(t *testing.T) {
	var b strings.Builder
	for _, one := range bath.Library() {
		b.WriteString(one.Text() + "\n")
	}
	const file = "testdata/library.golden"
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
