package current_test

import (
	"go/parser"
	"go/token"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// TestPropertyImports: what the solvers share stands on the standard library, units and
// faraday alone, so that each solver may import it.
func TestPropertyImports(t *testing.T) {
	const module = "example.com/laydown/"
	allowed := map[string]bool{module + "units": true, module + "faraday": true}
	files, err := filepath.Glob("*.go")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, imp := range file.Imports {
			path, err := strconv.Unquote(imp.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			first, _, _ := strings.Cut(path, "/")
			if !allowed[path] && strings.Contains(first, ".") { // the standard library has no dot there
				t.Errorf("%s imports %s", name, path)
			}
		}
	}
}
