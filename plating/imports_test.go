package plating_test

import (
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

// ranks are the floors of the library, from the bottom up: a package imports only what
// stands below it. DEVELOPERS.md says the same in words.
func ranks() [][]string {
	return [][]string{
		{"units"}, {"units/origin", "units/working"}, {"faraday"}, {"alloys"},
		{"plating/sense", "plating/shape", "plating/current"}, {"plating/axi", "plating/field"}, {"plating"},
		{"plating/rinse", "plating/electrical"}, {"plating/internal/strictjson"}, {"plating/bath", "plating/mesh", "plating/price"},
		{"plating/throwing", "plating/sequence", "plating/ledger", "plating/coat"}, {"plating/job", "plating/thinspot"},
	}
}

// imports lists what the files of a package import of this module, and the paths outside of it.
func imports(t *testing.T, pkg string) (list, outside []string) {
	t.Helper()
	files, err := filepath.Glob(filepath.Join("..", filepath.FromSlash(pkg), "*.go"))
	if err != nil || len(files) == 0 {
		t.Fatalf("%s: no files, %v", pkg, err)
	}
	for _, name := range files {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		file, err := parser.ParseFile(token.NewFileSet(), name, nil, parser.ImportsOnly)
		if err != nil {
			t.Fatal(err)
		}
		for _, i := range file.Imports {
			path, err := strconv.Unquote(i.Path.Value)
			if err != nil {
				t.Fatal(err)
			}
			if inside, ours := strings.CutPrefix(path, "example.com/laydown/"); ours {
				list = append(list, inside)
			} else {
				outside = append(outside, path)
			}
		}
	}
	return list, outside
}

// TestPropertyImportsOneWay: every package stands on a floor, and imports from below.
func TestPropertyImportsOneWay(t *testing.T) {
	floor := map[string]int{}
	for i, list := range ranks() {
		for _, pkg := range list {
			floor[pkg] = i
		}
	}
	found := 0
	for _, root := range []string{"units", "faraday", "alloys", "plating"} {
		err := filepath.WalkDir(filepath.Join("..", root), func(path string, d os.DirEntry, err error) error {
			if err != nil || !d.IsDir() {
				return err
			}
			pkg, err := filepath.Rel("..", path)
			pkg = filepath.ToSlash(pkg)
			if files, _ := filepath.Glob(filepath.Join(path, "*.go")); err != nil || len(files) == 0 ||
				pkg == "units/internal/gen" {
				return err
			}
			have, is := floor[pkg]
			if found++; !is {
				t.Errorf("%s stands on no floor", pkg)
			}
			inside, _ := imports(t, pkg)
			for _, to := range inside {
				if below, is := floor[to]; !is || below >= have {
					t.Errorf("%s imports %s, which does not stand below it", pkg, to)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if found != len(floor) {
		t.Errorf("%d packages, %d on the floors", found, len(floor))
	}
}

// TestPropertyLightImports: to read and work out a job, or to keep a book, no solver of
// current distributions is compiled, directly or by what is imported.
func TestPropertyLightImports(t *testing.T) {
	met := map[string]string{} // package and who imports it
	var visit func(pkg, by string)
	visit = func(pkg, by string) {
		if _, seen := met[pkg]; seen {
			return
		}
		met[pkg] = by
		inside, _ := imports(t, pkg)
		for _, to := range inside {
			visit(to, pkg)
		}
	}
	visit("plating/job", "this test")
	visit("plating/ledger", "this test")
	for _, heavy := range []string{"axi", "field", "coat", "current", "thinspot"} {
		if by, met := met["plating/"+heavy]; met {
			t.Errorf("plating/%s is imported by %s", heavy, by)
		}
	}
	for _, used := range []string{"plating/mesh", "plating/sequence", "units"} {
		if _, seen := met[used]; !seen {
			t.Errorf("%s is not met: the search is broken", used)
		}
	}
}

// TestPropertySharedImports: what the solvers share stands on the standard library, units and
// faraday alone, so that each solver may import it.
func TestPropertySharedImports(t *testing.T) {
	inside, outside := imports(t, "plating/current")
	if len(inside) == 0 || len(outside) == 0 {
		t.Fatal(inside, outside)
	}
	for _, path := range inside {
		if path != "units" && path != "faraday" {
			t.Errorf("plating/current imports %s", path)
		}
	}
	for _, path := range outside {
		if first, _, _ := strings.Cut(path, "/"); strings.Contains(first, ".") { // the standard library has no dot there
			t.Errorf("plating/current imports %s", path)
		}
	}
}
