// Package testdata reads laydown's reference tables and job files.
//
// Every table is a CSV file named after its source, with a header that says
// what was printed where, in which units, with how many digits and which
// errata, and rows that each own their tolerance. The files are compiled in,
// so that a test finds them from any folder. DEVELOPERS.md describes the format.
package testdata

import (
	"bytes"
	"embed"
	"encoding/csv"
	"fmt"
	"io/fs"
	"math"
	"strconv"
	"strings"
)

// Files holds the tables (*.csv), the job and case files (jobs/*.json, cases/*.json) and REFERENCES.md.
//
//go:embed *.csv jobs/*.json cases/*.json batch/*.csv REFERENCES.md
var Files embed.FS

// A Table is one file: one source.
type Table struct {
	File    string
	Header  map[string]string // key, title, where, address, seen, units, digits, errata, transcribed
	Columns []string
	Rows    []Row
}

// A Row is one line of a table.
type Row struct {
	table *Table
	Line  int // in the file, for messages
	cells map[string]string
}

// HeaderFields are those that every table must have.
var headerFields = []string{"key", "title", "where", "seen", "units", "digits", "errata", "transcribed"}

// Read reads one table by its file name.
func Read(file string) (*Table, error) {
	raw, err := Files.ReadFile(file)
	if err != nil {
		return nil, err
	}
	return parseTable(file, raw)
}

// List returns the names of all tables.
func List() ([]string, error) { return fs.Glob(Files, "*.csv") }

func parseTable(file string, raw []byte) (*Table, error) {
	t := &Table{File: file, Header: map[string]string{}}
	lines := 0
	for len(raw) > 0 && raw[0] == '#' {
		line, rest, _ := bytes.Cut(raw, []byte("\n"))
		lines++
		name, value, found := strings.Cut(strings.TrimSpace(strings.TrimPrefix(string(line), "#")), ":")
		if !found {
			return nil, fmt.Errorf("%s:%d: header line without a colon", file, lines)
		}
		t.Header[strings.TrimSpace(name)] = strings.TrimSpace(value)
		raw = rest
	}
	for _, name := range headerFields {
		if t.Header[name] == "" {
			return nil, fmt.Errorf("%s: header field %q is missing", file, name)
		}
	}
	r := csv.NewReader(bytes.NewReader(raw))
	all, err := r.ReadAll()
	if err != nil {
		return nil, fmt.Errorf("%s: %w", file, err)
	}
	if len(all) < 2 {
		return nil, fmt.Errorf("%s: no rows", file)
	}
	t.Columns = all[0]
	ids := map[string]bool{}
	for i, record := range all[1:] {
		row := Row{table: t, Line: lines + 2 + i, cells: map[string]string{}}
		for j, cell := range record {
			row.cells[t.Columns[j]] = strings.TrimSpace(cell)
		}
		if id := row.Text("id"); id == "" || ids[id] {
			return nil, fmt.Errorf("%s:%d: id %q is empty or not unique", file, row.Line, id)
		}
		ids[row.Text("id")] = true
		if s := row.Text("status"); s != "ok" && s != "misprint" && s != "skip" {
			return nil, fmt.Errorf("%s:%d: status %q; need ok, misprint or skip", file, row.Line, s)
		}
		t.Rows = append(t.Rows, row)
	}
	return t, nil
}

// Text returns the cell of a column, "" when there is none.
func (r Row) Text(column string) string { return r.cells[column] }

// Has reports whether the cell of a column is filled.
func (r Row) Has(column string) bool { return r.cells[column] != "" }

// Float returns the number in a column, and NaN for an empty or bad cell: a
// test that compares with it fails.
func (r Row) Float(column string) float64 {
	v, err := strconv.ParseFloat(r.cells[column], 64)
	if err != nil {
		return math.NaN()
	}
	return v
}

// FloatOr returns the number in a column, or other when the cell is empty.
func (r Row) FloatOr(column string, other float64) float64 {
	if !r.Has(column) {
		return other
	}
	return r.Float(column)
}

// Misprint reports whether the printed figure is known to be wrong.
func (r Row) Misprint() bool { return r.Text("status") == "misprint" }

// Skip reports whether the row is kept for the record only.
func (r Row) Skip() bool { return r.Text("status") == "skip" }

// Tolerance returns the allowed absolute difference from value: the cell tol,
// which is a number, or a percentage of value.
func (r Row) Tolerance(value float64) float64 {
	tol := r.Text("tol")
	if p, found := strings.CutSuffix(tol, "%"); found {
		v, err := strconv.ParseFloat(strings.TrimSpace(p), 64)
		if err != nil {
			return math.NaN()
		}
		return v / 100 * math.Abs(value)
	}
	return r.Float("tol")
}

// Name identifies the row in test output: file and id.
func (r Row) Name() string { return strings.TrimSuffix(r.table.File, ".csv") + "/" + r.Text("id") }

// Check compares a computed value with the row. For a sound row it must lie
// within tol of the printed figure; for a misprint within tol of the right one
// and further than tol from the print. The error says what was found, with the
// source.
func (r Row) Check(computed float64) error {
	printed := r.Float("expected")
	want := printed
	if r.Misprint() {
		want = r.Float("right")
	}
	// A printed half-unit tolerance is decimal, the values are binary.
	slack := 1e-12 * math.Abs(want)
	if tol := r.Tolerance(want); !(math.Abs(computed-want) <= tol+slack) {
		return fmt.Errorf("%s line %d (%s): computed %.10g, want %.10g within %g; off by %.3g [%s]",
			r.table.File, r.Line, r.Text("note"), computed, want, tol, computed-want, r.table.Header["key"])
	}
	if r.Misprint() && math.Abs(computed-printed) <= r.Tolerance(printed) {
		return fmt.Errorf("%s line %d: marked a misprint, but the print %.10g agrees with the computed %.10g",
			r.table.File, r.Line, printed, computed)
	}
	return nil
}
