// Package examples_test holds the programs of this folder to their size.
package examples_test

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// longest is how many lines a program has fewer than, all its files but tests together: it
// reads the command line, calls the library and writes what comes back.
const longest = 150

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
	if len(lines) < 6 {
		t.Errorf("only %d programs: %v", len(lines), lines)
	}
	for program, n := range lines {
		if n >= longest {
			t.Errorf("%s has %d lines; need fewer than %d: what it computes belongs into the library", program, n, longest)
		}
	}
}
