package faraday_test

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// TestPropertyImports: units stands on the standard library alone, faraday on units and
// on the two packages of numerics that it computes with.
func TestPropertyImports(t *testing.T) {
	const own = "example.com/laydown/"
	for dir, allowed := range map[string][]string{
		"../units":         {},
		"../units/working": {own + "units"},
		"../units/origin":  {own + "units"},
		".": {own + "units", own + "units/working", "gonum.org/v1/gonum/integrate",
			"gonum.org/v1/gonum/stat"},
	} {
		entries, err := os.ReadDir(dir)
		if err != nil {
			t.Fatal(err)
		}
		files, used := 0, map[string]bool{}
		for _, e := range entries {
			if !strings.HasSuffix(e.Name(), ".go") || strings.HasSuffix(e.Name(), "_test.go") {
				continue
			}
			f, err := parser.ParseFile(token.NewFileSet(), filepath.Join(dir, e.Name()), nil, parser.ImportsOnly)
			if err != nil {
				t.Fatal(err)
			}
			files++
			for _, i := range f.Imports {
				path, err := strconv.Unquote(i.Path.Value)
				if err != nil {
					t.Fatal(err)
				}
				if first, _, _ := strings.Cut(path, "/"); !strings.Contains(first, ".") {
					continue // of the standard library
				}
				if used[path] = true; !slices.Contains(allowed, path) {
					t.Errorf("%s/%s imports %s", dir, e.Name(), path)
				}
			}
		}
		for _, path := range allowed {
			if files == 0 || !used[path] {
				t.Errorf("%s: %d files, %s is allowed and not used", dir, files, path)
			}
		}
	}
}
