// Package examples_test holds the programs of this folder to their size.
package examples_test

import (
	"bytes"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"
)

// longest is how many lines a program may have, all its files but tests together: it
// reads the command line, calls the library and writes what comes back.
const longest = 150

// longer are programs that still hold what belongs into the library.
var longer = []string{"batch", "bathbook", "convert", "thinspot"}

// TestPropertyShortPrograms: each program of this folder is short.
func TestPropertyShortPrograms(t *testing.T) {
	files, err := filepath.Glob("*/*.go")
	if err != nil {
		t.Fatal(err)
	}
	lines := map[string]int{}
	for _, file := range files {
		raw, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		if strings.HasSuffix(file, "_test.go") || !bytes.Contains(raw, []byte("\npackage main\n")) {
			continue
		}
		lines[filepath.Dir(file)] += bytes.Count(raw, []byte("\n"))
	}
	if len(lines) < 5 {
		t.Errorf("only %d programs: %v", len(lines), lines)
	}
	for program, n := range lines {
		if n > longest && !slices.Contains(longer, program) {
			t.Errorf("%s has %d lines; need at most %d: what it computes belongs into the library", program, n, longest)
		}
	}
}
