package job

import (
	"errors"
	"fmt"
	"io"
	"iter"
	"slices"
	"strings"

	"example.com/laydown/units"
)

// The columns of a table of parts. The first must be there; where one of the second is
// left out or empty the element's own figure counts; the third are written beside them.
var (
	neededColumns = []string{"part", "count", "area_cm2", "metal", "efficiency", "current_density_A_dm2",
		"min_thickness_um",
		"min_to_average", "price_per_g"}
	optionalColumns = []string{"valence", "density_g_cm3"}
	addedColumns    = []string{"current_A", "time_min", "charge_Ah", "average_thickness_um", "metal_g", "metal_cost",
		"error"}
)

// A Table is a table of parts that is read row by row: memory does not grow with their
// number. Make one with [Rows]. It is for one goroutine.
type Table struct {
	in      *records
	header  []string
	columns map[string]int // place of each name
	rows    int            // read so far
}

// Rows reads the names of the columns of a CSV table of parts, in any order; [Table.All]
// reads the rows.
//
//	part                   name
//	count                  pieces, a whole number from 1
//	area_cm2               plated area of one piece
//	metal                  symbol, as Au
//	valence                may be empty: the element's usual one
//	density_g_cm3          of the deposit; may be empty: that of the bulk metal
//	efficiency             current efficiency, above 0 and at most 1
//	current_density_A_dm2  mean over the area
//	min_thickness_um       at the thinnest spot
//	min_to_average         thinnest over average thickness, above 0 and at most 1
//	price_per_g            of the metal
//
// Other columns are passed through. A cell may be in quotes and then holds commas, doubled
// quotes and line breaks, as the note of a spreadsheet does: up to 50 lines and 1 MiB a
// row. A quote that does not close is a fault of the line that it opens on, and so is one
// whose cell would take in other rows; the lines behind it are rows again. An apostrophe
// before what a spreadsheet would run is taken off.
//
// Errors: a header that lacks a needed column, has one twice or one that is added; what is
// no table: a first line of more than 1 MiB, a thousand empty lines, zero bytes; what r
// returns.
func Rows(r io.Reader) (*Table, error) {
	if r == nil {
		return nil, units.Missing("reader", "one that gives the table")
	}
	t := &Table{in: newRecords(r)}
	cells, err := t.in.next()
	if err != nil {
		return nil, fmt.Errorf("no header row: %w", err)
	}
	t.header = slices.Clone(cells)
	t.in.width = len(cells)
	t.columns, err = findColumns(t.header)
	if err != nil {
		return nil, err
	}
	return t, nil
}

// findColumns maps the names of columns to their places.
func findColumns(header []string) (map[string]int, error) {
	if strings.Contains(strings.Join(header, ""), "\x00") {
		return nil, errors.New("the header holds a zero byte; need CSV text in UTF-8")
	}
	place := map[string]int{}
	for i, name := range header {
		name = strings.TrimSpace(name)
		if _, twice := place[name]; twice && name != "" {
			return nil, fmt.Errorf("column %q stands twice in the header", name)
		}
		place[name] = i
	}
	for _, name := range addedColumns {
		if _, have := place[name]; have {
			return nil, fmt.Errorf("column %q is one that this program adds; rename or drop it", name)
		}
	}
	var missing []string
	for _, name := range neededColumns {
		if _, have := place[name]; !have {
			missing = append(missing, name)
		}
	}
	if len(header) == 1 && strings.ContainsAny(header[0], ";\t") {
		return nil, errors.New("the header is one column that holds semicolons or tabs; separate the columns by commas")
	}
	if missing != nil {
		return nil, fmt.Errorf("the header lacks %s; needed are %s; may be left out: %s",
			strings.Join(missing, ", "), strings.Join(neededColumns, ", "), strings.Join(optionalColumns, ", "))
	}
	return place, nil
}

// Columns returns the names of the columns as the table has them.
func (t *Table) Columns() []string { return slices.Clone(t.header) }

// All returns the rows in their order, once: a second call goes on where the first one
// stopped. A row that is wrong is a row too, and [Row.Estimate] says what is wrong with
// it. With an error there is no row: the input cannot be read any further, and the
// iteration ends.
func (t *Table) All() iter.Seq2[Row, error] {
	return func(yield func(Row, error) bool) {
		if t.in == nil {
			yield(Row{}, units.Missing("table", "one that Rows returned"))
			return
		}
		for {
			cells, err := t.in.next()
			if err == io.EOF {
				return
			}
			var wrong *RowError
			if err != nil && !errors.As(err, &wrong) {
				yield(Row{}, fmt.Errorf("after row %d: %w", t.rows, err))
				return
			}
			t.rows++
			if !yield(t.row(cells, wrong), nil) {
				return
			}
		}
	}
}

// A RowError says what is wrong with one row of a table, where it stands and what would do.
// The rows behind it can still be read.
type RowError struct {
	Line int // that the row begins on, from 1, as an editor counts; 0 for a row of no table
	What string
	Err  error // the reason below, such as a [*units.ValueError], or nil
}

// Error returns reason and line in one line of plain text.
func (e *RowError) Error() string {
	text := units.Printable(strings.ToValidUTF8(e.What, "?"))
	if e.Line == 0 {
		return text
	}
	return fmt.Sprintf("%s (line %d)", text, e.Line)
}

// Unwrap returns the reason below.
func (e *RowError) Unwrap() error { return e.Err }

// A RowCount says how the rows of a table went.
type RowCount struct {
	Rows   int
	Failed int
	First  int // line of the first that failed
}

// String says how many failed and where the first one stands.
func (c RowCount) String() string {
	if c.Failed == 0 {
		return fmt.Sprintf("%d rows, none failed", c.Rows)
	}
	return fmt.Sprintf("%d of %d rows failed; see the column error; the first stands on line %d", c.Failed, c.Rows,
		c.First)
}

// EstimateRows reads a table of parts as [Rows] does, and writes it with what
// [Row.Estimate] adds, as [RowWriter] does. Every row that goes in comes out, in its order,
// with its figures or with what is wrong; rows that failed are counted and are no error.
// While the input waits, what is done is written.
//
// Errors: those of [Rows]; what r and w return. What was read before is then written.
func EstimateRows(w io.Writer, r io.Reader) (RowCount, error) {
	t, err := Rows(r)
	if err != nil {
		return RowCount{}, err
	}
	out, err := NewRowWriter(w, t)
	if err != nil {
		return RowCount{}, err
	}
	for row, err := range t.All() {
		if err != nil {
			_ = out.Flush() // that the input broke is said
			return out.Count(), err
		}
		e, wrong := row.Estimate()
		if err := out.Write(&row, &e, wrong); err != nil {
			return out.Count(), err
		}
	}
	return out.Count(), out.Flush()
}
