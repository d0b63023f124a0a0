package units_test

import (
	"bytes"
	"regexp"
	"testing"

	"example.com/laydown/testdata"
)

// TestReferenceTablesAreSound reads every reference table: headers complete,
// ids unique, status known, each key in REFERENCES.md.
func TestReferenceTablesAreSound(t *testing.T) {
	files, err := testdata.List()
	if err != nil {
		t.Fatal(err)
	}
	refs, err := testdata.Files.ReadFile("REFERENCES.md")
	if err != nil {
		t.Fatal(err)
	}
	known := map[string]bool{}
	for _, m := range regexp.MustCompile(`(?m)^- \*\*\[([^\]]+)\]\*\*`).FindAllSubmatch(refs, -1) {
		if known[string(m[1])] {
			t.Errorf("REFERENCES.md: key %s twice", m[1])
		}
		known[string(m[1])] = true
	}
	rows, sources, misprints := 0, map[string]bool{}, 0
	for _, file := range files {
		table, err := testdata.Read(file)
		if err != nil {
			t.Error(err)
			continue
		}
		key := table.Header["key"]
		if !known[key] {
			t.Errorf("%s: key %q has no entry in REFERENCES.md", file, key)
		}
		if !bytes.Contains(refs, []byte(file)) {
			t.Errorf("%s: not named in REFERENCES.md", file)
		}
		for _, row := range table.Rows {
			if row.Skip() {
				continue
			}
			rows++
			sources[key] = true
			if row.Misprint() {
				misprints++
			}
		}
	}
	t.Logf("%d tables, %d rows, %d misprints, %d sources", len(files), rows, misprints, len(sources))
	if rows < 250 || len(sources) < 12 {
		t.Errorf("%d rows from %d sources; need at least 250 from 12", rows, len(sources))
	}
}
