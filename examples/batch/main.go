// Command batch estimates many rows of parts: CSV in, CSV out.
//
//	go run ./examples/batch < jobs.csv > estimates.csv
//
// The first row names the columns, in any order:
//
//	part                  name
//	count                 pieces, a whole number from 1
//	area_cm2              plated area of one piece
//	metal                 symbol, as Au
//	valence               may be empty: the element's usual one
//	density_g_cm3         of the deposit; may be empty: the bulk metal's
//	efficiency            current efficiency, above 0 and at most 1
//	current_density_A_dm2 mean over the area
//	min_thickness_um      minimum at the thinnest spot
//	min_to_average           thinnest over average thickness, above 0 and at most 1
//	price_per_g           of the metal
//
// Other columns are passed through, but for control characters, which are written as
// escapes: they could take back or make up a row on a terminal. Line breaks and tabs stay.
// Added on the right are current_A, time_min,
// charge_Ah, average_thickness_um, metal_g, metal_cost and error. The mean
// thickness is the workpiece over the ratio. Numbers are given with up to 15
// digits. For the cost the mass, computed from the numbers as they are written,
// is rounded to 1 mg, priced in decimal and rounded to 2 places, both half to
// even. A bad row says why under error, has its numbers empty, and the others
// go on.
//
// A cell may be in quotes and then hold commas, doubled quotes and line breaks, as
// the note of a spreadsheet does: up to 50 lines and 1 MiB a row. A quote that does not
// close is a fault of the line that it opens on, and so is one whose cell would take in
// other rows; the lines behind are rows again. Every row that goes in comes out, with its
// numbers or with what is wrong, the line it stands on and what would do.
//
// A text that begins with =, +, - or @, or with what looks like one of them, is written
// with an apostrophe in front, so that a spreadsheet shows it and does not run it; a
// number is not. Such an apostrophe is taken off again when it is read.
//
// What begins with a line of more than 1 MiB or with 1000 empty lines, or holds a line
// of more than 512 MB, is no table and is given up.
//
// Rows stream: memory does not grow with their number, and the order stays.
// Exit status: 0, 1 when a row failed (their count and the first one's line are on
// standard error), 2 when nothing can be done: no header, a missing column, unreadable
// input.
package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"example.com/laydown/examples/internal/files"
	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/units"
)

func main() { os.Exit(run(os.Args[1:], os.Stdin, os.Stdout, os.Stderr)) }

var (
	needed = []string{"part", "count", "area_cm2", "metal", "efficiency", "current_density_A_dm2", "min_thickness_um",
		"min_to_average", "price_per_g"}
	optional = []string{"valence", "density_g_cm3"}
	added    = []string{"current_A", "time_min", "charge_Ah", "average_thickness_um", "metal_g", "metal_cost", "error"}
)

func run(args []string, stdin io.Reader, stdout, stderr io.Writer) int {
	if len(args) > 0 {
		fmt.Fprintln(stderr, "usage: batch < jobs.csv > estimates.csv")
		return 2
	}
	rows := newRecords(stdin)
	header, err := rows.next()
	if err != nil {
		_ = terminal.Line(stderr, "batch: no header row: %v", err)
		return 2
	}
	header = append([]string(nil), header...)
	columns, err := findColumns(header)
	if err != nil {
		terminal.Error(stderr, "batch", err)
		return 2
	}
	out := csv.NewWriter(stdout)
	var record []string
	for _, name := range header {
		record = append(record, files.Cell(passed(name)))
	}
	record = append(record, added...)
	if err := out.Write(record); err != nil {
		terminal.Error(stderr, "batch", err)
		return 2
	}
	failed, total, first := 0, 0, 0
	rows.width = len(header)
	for {
		if rows.waits() {
			out.Flush()
		}
		fields, err := rows.next()
		if err == io.EOF {
			break
		}
		var wrong *fault
		if err != nil && !errors.As(err, &wrong) {
			out.Flush()
			_ = terminal.Line(stderr, "batch: after row %d: %v", total, err)
			return 2
		}
		total++
		var added []string
		if err == nil && len(fields) != len(header) {
			err = fmt.Errorf("the row has %d cells, the header %d", len(fields), len(header))
		}
		if err == nil {
			added, err = estimate(columns, fields)
		}
		if err != nil {
			if failed++; failed == 1 {
				first = rows.at
			}
			if wrong == nil {
				err = &fault{err.Error(), rows.at}
			}
			added = []string{"", "", "", "", "", "", units.Printable(strings.ToValidUTF8(err.Error(), "?"))}
		}
		record = record[:0]
		for i := range header {
			if i < len(fields) {
				record = append(record, passed(fields[i]))
			} else {
				record = append(record, "")
			}
		}
		record = append(record, added...)
		for i := range record {
			record[i] = files.Cell(record[i])
		}
		if err := out.Write(record); err != nil {
			terminal.Error(stderr, "batch", err)
			return 2
		}
	}
	out.Flush()
	if err := out.Error(); err != nil {
		terminal.Error(stderr, "batch", err)
		return 2
	}
	if failed > 0 {
		fmt.Fprintf(stderr, "batch: %d of %d rows failed; see the column error; the first stands on line %d\n", failed, total,
			first)
		return 1
	}
	return 0
}

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

// findColumns maps the known column names to their places.
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
	for _, name := range added {
		if _, have := place[name]; have {
			return nil, fmt.Errorf("column %q is one that this program adds; rename or drop it", name)
		}
	}
	var missing []string
	for _, name := range needed {
		if _, have := place[name]; !have {
			missing = append(missing, name)
		}
	}
	if len(header) == 1 && strings.ContainsAny(header[0], ";\t") {
		return nil, errors.New("the header is one column that holds semicolons or tabs; separate the columns by commas")
	}
	if missing != nil {
		return nil, fmt.Errorf("the header lacks %s; needed are %s; may be left out: %s",
			strings.Join(missing, ", "), strings.Join(needed, ", "), strings.Join(optional, ", "))
	}
	return place, nil
}
