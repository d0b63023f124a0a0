package plating_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
)

// keysIn finds the keys of a Source line in a doc comment, up to the next
// blank line.
var sourceLine = regexp.MustCompile(`(?s)Sources?:\s(.*?)(\n\n|$)`)
var keyWord = regexp.MustCompile(`\[([A-Z][A-Za-z0-9-]*)\]`)

// TestDocsAndSources reads the source of the whole library: every exported
// name has a comment, every package a package comment, every formula a source
// key, every key an entry in testdata/REFERENCES.md, and every key that a
// shown calculation names too.
func TestDocsAndSources(t *testing.T) {
	refs, err := os.ReadFile("../testdata/REFERENCES.md")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^- \*\*\[([^\]]+)\]\*\*`).FindAllSubmatch(refs, -1) {
		known[string(m[1])] = true
	}
	formulas, exported := 0, 0
	types := typeNames(t)
	for _, root := range []string{"../units", "../faraday", "../alloys", "../plating", "../testdata"} {
		packageDoc := map[string]bool{}
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
				return err
			}
			fset := token.NewFileSet()
			file, err := parser.ParseFile(fset, path, nil, parser.ParseComments)
			if err != nil {
				return err
			}
			dir := filepath.Dir(path)
			packageDoc[dir] = packageDoc[dir] || file.Doc.Text() != ""
			for _, decl := range file.Decls {
				exported += checkDecl(t, fset, decl)
				f, ok := decl.(*ast.FuncDecl)
				if !ok || !f.Name.IsExported() {
					continue
				}
				doc := f.Doc.Text()
				keys := []string{}
				if m := sourceLine.FindStringSubmatch(doc); m != nil {
					for _, k := range keyWord.FindAllStringSubmatch(m[1], -1) {
						if !known[k[1]] && types[dir+"."+k[1]] {
							continue // a link to a name of the package, not a key
						}
						if known[k[1]] && types[dir+"."+k[1]] {
							t.Errorf("%s: %s cites [%s], which is a name of the package too: "+
								"go doc takes it for a link",
								path, f.Name.Name, k[1])
						}
						keys = append(keys, k[1])
						if !known[k[1]] {
							t.Errorf("%s: %s cites [%s], which has no entry in REFERENCES.md", path, f.Name.Name, k[1])
						}
					}
				}
				if hasFormula(doc) {
					formulas++
					if len(keys) == 0 {
						t.Errorf("%s: %s has a formula and no source key", path, f.Name.Name)
					}
				} else if root != "../units" && root != "../testdata" && computes(f) && len(keys) == 0 {
					t.Errorf("%s: %s returns a computed quantity and has no source key", path, f.Name.Name)
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
		for dir, have := range packageDoc {
			if !have {
				t.Errorf("%s: no package comment", dir)
			}
		}
	}
	t.Logf("%d exported declarations, %d formulas", exported, formulas)
	if formulas < 50 {
		t.Errorf("only %d formulas found; is the search broken?", formulas)
	}
}

// typeNames collects the exported types and functions of the packages, as folder.Name.
func typeNames(t *testing.T) map[string]bool {
	types := map[string]bool{}
	for _, root := range []string{"../units", "../faraday", "../alloys", "../plating"} {
		err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") {
				return err
			}
			file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
			if err != nil {
				return err
			}
			for _, decl := range file.Decls {
				if f, ok := decl.(*ast.FuncDecl); ok && f.Recv == nil && f.Name.IsExported() {
					types[filepath.Dir(path)+"."+f.Name.Name] = true
				}
				if g, ok := decl.(*ast.GenDecl); ok {
					for _, spec := range g.Specs {
						if s, ok := spec.(*ast.TypeSpec); ok && s.Name.IsExported() {
							types[filepath.Dir(path)+"."+s.Name.Name] = true
						}
					}
				}
			}
			return nil
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	return types
}

// hasFormula reports whether a doc comment holds a line set off by a tab with
// an equals sign.
func hasFormula(doc string) bool {
	for _, line := range strings.Split(doc, "\n") {
		if strings.HasPrefix(line, "\t") && strings.Contains(line, " = ") && !strings.Contains(line, "//") &&
			!strings.Contains(line, ":=") {
			return true
		}
	}
	return false
}

// computes reports whether a function takes arguments and returns a quantity
// of package units together with an error.
func computes(f *ast.FuncDecl) bool {
	name := f.Name.Name
	if f.Type.Results == nil || len(f.Type.Results.List) < 2 || strings.HasPrefix(name, "Parse") ||
		strings.HasPrefix(name,
			"Read") {
		return false
	}
	last, _ := f.Type.Results.List[len(f.Type.Results.List)-1].Type.(*ast.Ident)
	if last == nil || last.Name != "error" {
		return false
	}
	for _, r := range f.Type.Results.List {
		if sel, ok := r.Type.(*ast.SelectorExpr); ok {
			if x, ok := sel.X.(*ast.Ident); ok && x.Name == "units" {
				return true
			}
		}
	}
	return false
}

// checkDecl complains about exported names without a comment and counts them.
func checkDecl(t *testing.T, fset *token.FileSet, decl ast.Decl) int {
	n := 0
	complain := func(name *ast.Ident, docs ...*ast.CommentGroup) {
		if !name.IsExported() {
			return
		}
		n++
		for _, d := range docs {
			if d.Text() != "" {
				return
			}
		}
		t.Errorf("%s: %s has no comment", fset.Position(name.Pos()), name.Name)
	}
	switch d := decl.(type) {
	case *ast.FuncDecl:
		if d.Recv != nil && !ast.IsExported(receiver(d)) {
			return 0
		}
		complain(d.Name, d.Doc)
	case *ast.GenDecl:
		for _, spec := range d.Specs {
			switch s := spec.(type) {
			case *ast.TypeSpec:
				complain(s.Name, s.Doc, d.Doc)
			case *ast.ValueSpec:
				for _, name := range s.Names {
					complain(name, s.Doc, s.Comment, d.Doc)
				}
			}
		}
	}
	return n
}

func receiver(d *ast.FuncDecl) string {
	typ := d.Recv.List[0].Type
	if star, ok := typ.(*ast.StarExpr); ok {
		typ = star.X
	}
	if id, ok := typ.(*ast.Ident); ok {
		return id.Name
	}
	return ""
}
