package job

import (
	"bufio"
	"bytes"
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/laydown/plating/mesh"
)

// What bounds a row. A cell may hold line breaks, as a note in a spreadsheet does,
// but no more than these, so that a quote that is never closed takes its own row
// and no other.
const (
	maxRow   = 1 << 20 // bytes
	maxLines = 50
)

// What no table does: it is given up, for it may have no end.
const (
	mostLine  = mesh.MaxBytes // of one line: the longest file that is read at all
	mostEmpty = 1000          // empty lines before the header
)

// records reads CSV one row at a time, in constant memory. It differs from the
// reader of package csv in these points: a fault takes the line that it stands on
// and no other; a quoted cell goes over at most maxLines lines, and not over lines
// that are rows by themselves; a line break inside quotes stays as it is, CR LF too;
// a byte order mark in front goes; cells are read by [spreadsheetText].
type records struct {
	in      *bufio.Reader
	pending []rowLine // read ahead for a quote that did not close
	taken   []rowLine // of the row being read
	lines   int       // read from in
	at      int       // line of the row that next returned
	width   int       // cells of a row, 0 when not known: the header
	buf     []byte    // the cells of the row, one behind the other
	ends    []int     // where each ends in buf
}

// A rowLine is one line of the input, its end included. The text of the last one read may
// lie in the buffer of the reader.
type rowLine struct {
	text  []byte
	no    int
	whole bool // false when it is longer than maxRow, which text is cut to
}

func newRecords(r io.Reader) *records {
	in := bufio.NewReaderSize(r, 1<<16)
	// Spreadsheets put a byte order mark in front; it would be part of the first column's name.
	if head, err := in.Peek(3); err == nil && string(head) == "\ufeff" {
		_, _ = in.Discard(3) // they are in the buffer
	}
	return &records{in: in}
}

// waits reports whether the next row has to be waited for.
func (r *records) waits() bool {
	ahead, _ := r.in.Peek(r.in.Buffered())
	return len(r.pending) == 0 && bytes.IndexByte(ahead, '\n') < 0
}

// readLine returns the next line; io.EOF when there is none.
func (r *records) readLine() (rowLine, error) {
	l := rowLine{whole: true}
	for length := 0; ; { // the buffer holds a part of a long line only
		piece, err := r.in.ReadSlice('\n')
		most := mostLine
		if r.width == 0 {
			most = maxRow
		}
		if length += len(piece); length > most {
			return rowLine{}, fmt.Errorf("line %d is longer than %d bytes; need the lines of a table", r.lines+1, most)
		}
		// Of a line too long for a row the rest is read past, so that the next one is a row again.
		if room := maxRow - len(l.text); len(piece) > room {
			l.whole, piece = false, piece[:room]
		}
		if l.text == nil && err == nil {
			l.text = piece // good until the next read
		} else {
			l.text = append(l.text, piece...)
		}
		switch {
		case err == bufio.ErrBufferFull:
			continue
		case err == io.EOF && len(l.text) > 0, err == nil:
			r.lines++
			l.no = r.lines
			return l, nil
		}
		return rowLine{}, err
	}
}

// next returns the cells of the next row. With a [*RowError] they are those that could be made out. io.EOF comes when
// there is no more, any other error when the input cannot be read. Empty lines are skipped.
func (r *records) next() ([]string, error) {
	for {
		// Line after line is taken until no quote is open.
		taken := r.taken[:0]
		for row := []byte(nil); ; {
			l, err := r.take()
			if err == io.EOF && len(taken) > 0 {
				return r.spoil(taken, r.unclosed("before the file ends"))
			}
			if err != nil {
				return nil, err
			}
			taken = append(taken, l)
			r.taken = taken
			if !l.whole {
				return r.spoil(taken, fmt.Sprintf("the row is longer than %d bytes; is a quote not closed?", maxRow))
			}
			if row == nil {
				row = l.text
			} else {
				row = append(row, l.text...)
			}
			// Only a line with a quote in it can close one: the others are not split again, or
			// fifty lines would be split fifty times.
			closed, what := false, ""
			if len(taken) == 1 || bytes.IndexByte(l.text, '"') >= 0 {
				closed, what = r.split(row)
			}
			switch {
			case what != "":
				return r.spoil(taken, what)
			case closed:
			case len(row) > maxRow:
				return r.spoil(taken, fmt.Sprintf("the row is longer than %d bytes; is a quote not closed?", maxRow))
			case len(taken) >= maxLines:
				return r.spoil(taken, r.unclosed(fmt.Sprintf("within %d lines", maxLines)))
			default: // the buffer goes with the next line
				l.text = bytes.Clone(l.text)
				taken[len(taken)-1] = l
				if len(taken) == 1 {
					row = bytes.Clone(row)
				}
				continue
			}
			break
		}
		// An empty line is no row.
		if len(taken) == 1 && len(withoutEnd(taken[0].text)) == 0 {
			if r.width == 0 && r.lines >= mostEmpty {
				return nil, fmt.Errorf("%d empty lines; need the names of the columns on the first", r.lines)
			}
			continue
		}
		// A pair of stray quotes closes as well: its cell is looked at for rows.
		if len(taken) > 1 && r.width > 1 {
			if what := r.swallows(taken); what != "" {
				return r.spoil(taken, what)
			}
		}
		r.at = taken[0].no
		return r.strings(), nil
	}
}

// take returns a line that was read ahead, or a new one.
func (r *records) take() (rowLine, error) {
	if len(r.pending) == 0 {
		return r.readLine()
	}
	l := r.pending[0]
	r.pending = r.pending[1:]
	return l, nil
}

// swallows says how a row over several lines has taken in other rows: it has another
// number of cells than the header, or two of its lines have as many commas as a row.
// A note with line breaks has not.
func (r *records) swallows(taken []rowLine) string {
	if len(r.ends) != r.width {
		return fmt.Sprintf("the row has %d cells over %d lines, the header %d; is a quote not closed?", len(r.ends),
			len(taken), r.width)
	}
	rows := 0 // lines that could be rows by themselves
	for _, l := range taken {
		// A line of a note has few commas; a line with as many as the header is most likely a row.
		if bytes.Count(l.text, []byte{','}) >= r.width-1 {
			rows++
		}
	}
	if rows < 2 {
		return ""
	}
	r.split(taken[0].text) // to know which cell it opens
	return r.unclosed("on its line, and the lines behind it are rows")
}

// spoil makes a fault of the first of the lines taken; the others are read again as
// rows of their own. The cells are what lies between its commas.
func (r *records) spoil(taken []rowLine, what string) ([]string, error) {
	r.pending = slices.Concat(taken[1:], r.pending)
	r.at = taken[0].no
	r.buf, r.ends = r.buf[:0], r.ends[:0]
	// The quotes cannot be trusted, so every comma counts, and there are no more cells than
	// the header has.
	text := strings.TrimRight(string(taken[0].text), "\r\n")
	for n := 0; n == 0 || n < r.width; n++ {
		cell, rest, more := strings.Cut(text, ",")
		r.buf = append(r.buf, strings.Trim(cell, `"`)...)
		r.ends = append(r.ends, len(r.buf))
		if text = rest; !more {
			break
		}
	}
	return r.strings(), &RowError{Line: taken[0].no, What: what}
}

// unclosed says of which cell a quote is not closed.
func (r *records) unclosed(where string) string {
	return fmt.Sprintf(
		`a quote is not closed %s: it opens cell %d; close it, or leave it out; "" stands for a quote inside a quoted cell`,
		where, len(r.ends)+1)
}

// strings returns the cells, which share one text.
func (r *records) strings() []string {
	text, start := string(r.buf), 0
	cells := make([]string, len(r.ends))
	for i, end := range r.ends {
		cells[i] = spreadsheetText(text[start:end])
		start = end
	}
	return cells
}

// split reads the cells of a row. It returns false when a quote is open at the end,
// and what is wrong if a quote stands where none can. r.ends then holds the cells
// before that one.
func (r *records) split(row []byte) (closed bool, wrong string) {
	r.buf, r.ends = r.buf[:0], r.ends[:0]
	for rest := withoutEnd(row); ; {
		// A cell without quotes ends with the next comma.
		if len(rest) == 0 || rest[0] != '"' {
			cell, behind, more := bytes.Cut(rest, []byte{','})
			if bytes.IndexByte(cell, '"') >= 0 {
				return true, r.misplaced()
			}
			r.buf = append(r.buf, cell...)
			r.ends = append(r.ends, len(r.buf))
			if !more {
				return true, ""
			}
			rest = behind
			continue
		}
		// One in quotes ends with a quote that no other one follows.
		rest = rest[1:]
		for {
			i := bytes.IndexByte(rest, '"')
			if i < 0 {
				return false, ""
			}
			r.buf = append(r.buf, rest[:i]...)
			if rest = rest[i+1:]; len(rest) == 0 || rest[0] != '"' {
				break // the end of the cell
			}
			r.buf, rest = append(r.buf, '"'), rest[1:]
		}
		cells := append(r.ends, len(r.buf))
		switch {
		case len(rest) == 0:
			r.ends = cells
			return true, ""
		case rest[0] != ',':
			return true, r.misplaced()
		}
		r.ends, rest = cells, rest[1:]
	}
}

// misplaced says in which cell a quote stands where none can.
func (r *records) misplaced() string {
	return fmt.Sprintf("a quote out of place in cell %d; put the cell in quotes and double those inside", len(r.ends)+1)
}

// withoutEnd returns a line without its line feed and one carriage return before it.
func withoutEnd(text []byte) []byte {
	return bytes.TrimSuffix(bytes.TrimSuffix(text, []byte{'\n'}), []byte{'\r'})
}
