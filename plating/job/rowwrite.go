package job

import (
	"encoding/csv"
	"errors"
	"io"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"example.com/laydown/units"
)

// A RowWriter writes the rows of a table with the columns that an estimate adds on the right:
//
//	current_A, time_min, charge_Ah, average_thickness_um, metal_g, metal_cost, error
//
// Figures have up to 15 digits. A row that failed has its figures empty and says under
// error why, with its line.
//
// A text that begins with =, +, - or @, or with what looks like one of them, gets an
// apostrophe in front, so that a spreadsheet shows it and does not run it; a number does
// not. Control characters are written as escapes: they could take back or make up a row on
// a terminal. Line breaks and tabs stay.
type RowWriter struct {
	table *Table
	out   *csv.Writer
	cells []string // of the row being written
	count RowCount
}

// NewRowWriter returns a writer of the rows of t and writes the names of the columns.
//
// Errors: no writer, no table; what w returns.
func NewRowWriter(w io.Writer, t *Table) (*RowWriter, error) {
	switch {
	case w == nil:
		return nil, units.Missing("writer", "one that takes the rows")
	case t == nil || t.in == nil:
		return nil, units.Missing("table", "one that Rows returned")
	}
	out := &RowWriter{table: t, out: csv.NewWriter(w)}
	return out, out.put(t.header, addedColumns...)
}

// Write writes one row of the table: what was read of it, and what its estimate came to
// or, where failed is not nil, what is wrong with it.
//
// Errors: what the writer below returns, which may come with a later row or with Flush.
func (w *RowWriter) Write(r *Row, e *RowEstimate, failed error) error {
	switch {
	case w == nil || w.out == nil:
		return units.Missing("writer of rows", "one that NewRowWriter returned")
	case r == nil:
		return units.Missing("row", "one of the table")
	case e == nil && failed == nil:
		return units.Missing("estimate", "one, or what is wrong")
	}
	w.count.Rows++
	if failed == nil {
		return w.put(r.cells, digits(e.Current.In(units.Ampere)), digits(e.Time.In(units.Minute)),
			digits(e.Charge.In(units.AmpereHour)), digits(e.Average.In(units.Micrometre)), e.grams, e.Cost.StringFixed(2), "")
	}
	if w.count.Failed++; w.count.Failed == 1 {
		w.count.First = r.Line
	}
	var wrong *RowError
	if !errors.As(failed, &wrong) {
		wrong = &RowError{Line: r.Line, What: failed.Error()}
	}
	return w.put(r.cells, "", "", "", "", "", "", wrong.Error())
}

// put writes the cells that were read, as many as the header has, and those added.
func (w *RowWriter) put(read []string, added ...string) error {
	w.cells = w.cells[:0]
	for i := range w.table.header {
		cell := "" // of a row that is too short
		if i < len(read) {
			cell = passed(read[i])
		}
		w.cells = append(w.cells, cell)
	}
	w.cells = append(w.cells, added...)
	for i := range w.cells {
		w.cells[i] = spreadsheetCell(w.cells[i])
	}
	if err := w.out.Write(w.cells); err != nil {
		return err
	}
	if w.table.in.waits() { // whoever gives the rows sees what came of those before
		w.out.Flush()
		return w.out.Error()
	}
	return nil
}

// Flush writes what is held back.
//
// Errors: what the writer below returns.
func (w *RowWriter) Flush() error {
	if w == nil || w.out == nil {
		return units.Missing("writer of rows", "one that NewRowWriter returned")
	}
	w.out.Flush()
	return w.out.Error()
}

// Count returns how the rows went that were written.
func (w *RowWriter) Count() RowCount { return w.count }

// passed returns a cell that is passed through. Line breaks, tabs and bytes of other
// encodings stay as they are; what moves a cursor or turns text round does not.
func passed(cell string) string {
	if !strings.ContainsFunc(cell, func(r rune) bool { return r < ' ' || r > '~' }) {
		return cell
	}
	var b strings.Builder
	for i := 0; i < len(cell); {
		r, n := utf8.DecodeRuneInString(cell[i:])
		piece := cell[i : i+n]
		i += n
		stays := r == '\n' || r == '\t' || r == utf8.RuneError || r == '\r' && i < len(cell) && cell[i] == '\n'
		if !stays {
			piece = units.Printable(piece)
		}
		b.WriteString(piece)
	}
	return b.String()
}

// digits writes a number with up to 15 significant digits. All of them are good
// in the decimal form; the float64 behind has noise in the 16th and 17th.
func digits(v float64) string { return strconv.FormatFloat(v, 'g', 15, 64) }

// Cells returns what was read of the row, as far as it could be made out.
func (r *Row) Cells() []string { return slices.Clone(r.cells) }
