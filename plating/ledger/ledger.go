package ledger

import (
	"fmt"
	"hash/crc32"
	"io"
	"time"

	"example.com/laydown/units"
)

// A Ledger is the book of one bath: its opening and the entries since. Make one
// with [New], [Start], [Open] or the file functions. Several goroutines may read
// one at once, as long as none of them posts.
type Ledger struct {
	bath    Bath
	opened  time.Time
	records []Record
	core    core
	last    uint32 // checksum of the last line
}

// A Record is an entry with what it did.
type Record struct {
	Seq   int
	Entry Entry
	After State

	Deposited, FromAnode, DraggedIn, DraggedOut units.Mass  // of a load
	Added, Corrected, Analysed                  units.Mass  // of an addition, a correction, an analysis
	Comparison                                  *Comparison // of an analysis
}

// New opens a book in memory.
//
// Errors: those of [Bath.Check]; a [*units.ValueError] for a time that no
// calendar has.
func New(bath Bath, opened time.Time) (*Ledger, error) { return Start(io.Discard, bath, opened) }

// Start opens a book and writes its first line.
//
// Errors: those of [New], and what w returns.
func Start(w io.Writer, bath Bath, opened time.Time) (*Ledger, error) {
	if err := bath.Check(); err != nil {
		return nil, err
	}
	if err := checkTime("opening", opened); err != nil {
		return nil, err
	}
	l := &Ledger{bath: bath, opened: opened.Round(0)}
	l.bath.Salts = append(bath.Salts[:0:0], bath.Salts...)
	l.core = newCore(&l.bath)
	if err := l.State().finite(); err != nil {
		return nil, err
	}
	line, sum, err := encode(0, lineText{Seq: 0, Format: format, When: l.opened, Opening: &l.bath})
	if err != nil {
		return nil, err
	}
	l.last = sum
	return l, write(w, line)
}

// Bath returns the bath as it was opened.
func (l *Ledger) Bath() Bath {
	b := l.bath
	b.Salts = append(b.Salts[:0:0], b.Salts...)
	return b
}

// Opened returns when the book was opened.
func (l *Ledger) Opened() time.Time { return l.opened }

// State returns the bath as it is after the last entry.
func (l *Ledger) State() State {
	return l.core.state(&l.bath, len(l.records), l.lastTime())
}

// Records returns all entries in order with what each did.
func (l *Ledger) Records() []Record { return append([]Record(nil), l.records...) }

// Len returns the number of entries behind the opening.
func (l *Ledger) Len() int { return len(l.records) }

func (l *Ledger) lastTime() time.Time {
	if n := len(l.records); n > 0 {
		return l.records[n-1].Entry.When
	}
	return l.opened
}

// Post enters something into the book in memory. To have it in a file as well
// use [Ledger.Append] or [File.Append], never both for the same entry.
//
// Errors: a [*units.ValueError] that names the field when the entry cannot be:
// a value out of range, an entry older than the one before it, more metal or
// solution gone than the book knows of. The book is then as it was.
func (l *Ledger) Post(e Entry) (Record, error) { return l.Append(io.Discard, e) }

// Append enters something into the book and writes its line to w, in one
// Write. The line is written before the book changes: an error of w leaves the
// book as it was, but w may hold a part of the line ([Open] then reports it).
//
// Errors: those of [Ledger.Post], and what w returns.
func (l *Ledger) Append(w io.Writer, e Entry) (Record, error) {
	r, next, err := l.try(e)
	if err != nil {
		return Record{}, err
	}
	text, err := textOf(r.Seq, r.Entry)
	if err != nil {
		return Record{}, err
	}
	line, sum, err := encode(l.last, text)
	if err != nil {
		return Record{}, err
	}
	if err := write(w, line); err != nil {
		return Record{}, err
	}
	l.accept(r, next, sum)
	return r, nil
}

// try works an entry out on a copy of the figures.
func (l *Ledger) try(e Entry) (Record, core, error) {
	next := l.core
	if err := checkTime("entry", e.When); err != nil {
		return Record{}, next, err
	}
	if last := l.lastTime(); e.When.Before(last) {
		return Record{}, next, &units.ValueError{Field: "time of the entry", Value: e.When.Format(time.RFC3339),
			Need: "one not before the last entry, " + last.Format(time.RFC3339), Err: units.ErrInconsistent}
	}
	if err := text("note", e.Note, false); err != nil {
		return Record{}, next, err
	}
	if _, err := textOf(0, e); err != nil { // an event that this package does not know
		return Record{}, next, err
	}
	if err := e.Event.check(&l.bath); err != nil {
		return Record{}, next, err
	}
	e.When = e.When.Round(0) // no clock of this process in the book
	r := Record{Seq: len(l.records) + 1, Entry: e}
	if err := e.Event.apply(&l.bath, &next, &r); err != nil {
		return Record{}, next, err
	}
	if err := next.settle(&l.bath); err != nil {
		return Record{}, next, err
	}
	r.After = next.state(&l.bath, r.Seq, e.When)
	return r, next, r.After.finite()
}

func (l *Ledger) accept(r Record, next core, sum uint32) {
	l.records = append(l.records, r)
	l.core = next
	l.last = sum
}

// WriteTo writes the whole book.
//
// Errors: what w returns.
func (l *Ledger) WriteTo(w io.Writer) (int64, error) {
	line, sum, err := encode(0, lineText{Seq: 0, Format: format, When: l.opened, Opening: &l.bath})
	var n int64
	for i := 0; err == nil; i++ {
		if err = write(w, line); err != nil {
			return n, err
		}
		n += int64(len(line))
		if i == len(l.records) {
			return n, nil
		}
		var text lineText
		if text, err = textOf(i+1, l.records[i].Entry); err == nil {
			line, sum, err = encode(sum, text)
		}
	}
	return n, err
}

// write makes a short write without an error an error.
func write(w io.Writer, line []byte) error {
	n, err := w.Write(line)
	if err == nil && n != len(line) {
		err = io.ErrShortWrite
	}
	return err
}

// checkTime refuses a time that text cannot hold.
func checkTime(field string, t time.Time) error {
	if y := t.Year(); y < 1900 || y > 2999 {
		return &units.ValueError{Field: "time of the " + field, Value: fmt.Sprintf("in the year %d", y),
			Need: "a time between 1900 and 2999", Err: units.ErrOutOfRange}
	}
	if _, err := t.MarshalText(); err != nil {
		return &units.ValueError{Field: "time of the " + field, Value: t.String(),
			Need: "an offset of less than 24 hours from UTC", Err: units.ErrOutOfRange}
	}
	return nil
}

// checksum chains the lines: that of a line covers the checksum before it, so
// that a line taken out, put in or moved shows.
func checksum(before uint32, payload []byte) uint32 {
	sum := crc32.ChecksumIEEE(fmt.Appendf(nil, "%08x", before))
	return crc32.Update(sum, crc32.IEEETable, payload)
}
