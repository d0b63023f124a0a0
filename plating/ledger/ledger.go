package ledger

import (
	"fmt"
	"hash/crc32"
	"io"
	"strings"
	"time"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// A Ledger is the book of one bath: its opening and the entries since. Make one
// with [New], [Start], [Open] or the file functions. Several goroutines may read
// one at once, as long as none of them posts.
type Ledger struct {
	bath    Account
	opened  time.Time
	records []Record
	after   []core // the figures behind each record
	core    core
	latest  time.Time // of the last entry that counts, or the opening
	last    uint32    // checksum of the last line
}

// A Record is an entry with what it did. One that is voided did nothing: its amounts
// are zero and After is the bath as it was before it.
type Record struct {
	Seq      int
	Entry    Entry
	After    State
	VoidedBy int // number of the [Void] that struck it out; 0: it counts

	Deposited, FromAnode, DraggedIn, DraggedOut units.Mass  // of a load
	Added, Corrected, Analysed                  units.Mass  // of an addition, a correction, an analysis
	Comparison                                  *Comparison // of an analysis
}

// New opens a book in memory.
//
// Errors: those of [Account.Check]; a [*units.ValueError] for a time that no
// calendar has, and for a name or source that does not print ([units.CheckPrintable]).
func New(bath Account, opened time.Time) (*Ledger, error) { return Start(io.Discard, bath, opened) }

// Start opens a book and writes its first line.
//
// Errors: those of [New], and what w returns.
func Start(w io.Writer, bath Account, opened time.Time) (*Ledger, error) {
	if w == nil {
		return nil, units.Missing("writer", "one that takes the first line of the book")
	}
	if err := units.CheckPrintable("name of the bath", bath.Name); err != nil {
		return nil, err
	}
	if err := units.CheckPrintable("source of the bath's figures", bath.Source); err != nil {
		return nil, err
	}
	if err := bath.Check(); err != nil {
		return nil, err
	}
	if err := sense.Volume().Check(bath.Volume); err != nil {
		return nil, err
	}
	if err := sense.Content().CheckAs("opening content", bath.Content); err != nil {
		return nil, err
	}
	return start(w, bath, opened)
}

// start is [Start] for the baths of old books as well, which may have any name.
func start(w io.Writer, bath Account, opened time.Time) (*Ledger, error) {
	if err := bath.Check(); err != nil {
		return nil, err
	}
	if err := checkTime("opening", opened); err != nil {
		return nil, err
	}
	l := &Ledger{bath: bath, opened: opened.Round(0), latest: opened.Round(0)}
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
	_, err = write(w, line)
	return l, err
}

// noBook refuses a nil Ledger.
func noBook() error { return units.Missing("book", "one that New, Start, Open or a File returned") }

// Account returns the bath as it was opened.
func (l *Ledger) Account() Account {
	if l == nil {
		return Account{}
	}
	b := l.bath
	b.Salts = append(b.Salts[:0:0], b.Salts...)
	return b
}

// Opened returns when the book was opened.
func (l *Ledger) Opened() time.Time {
	if l == nil {
		return time.Time{}
	}
	return l.opened
}

// State returns the bath as it is after the last entry.
func (l *Ledger) State() State {
	if l == nil {
		return State{}
	}
	return l.core.state(&l.bath, len(l.records), l.latest)
}

// Records returns all entries in order with what each did, the voided ones as well.
// After a [Void] they are as the book counts them now.
func (l *Ledger) Records() []Record {
	if l == nil {
		return nil
	}
	return append([]Record(nil), l.records...)
}

// Len returns the number of entries behind the opening, the voided ones as well.
func (l *Ledger) Len() int {
	if l == nil {
		return 0
	}
	return len(l.records)
}

// Post enters something into the book in memory. To have it in a file as well
// use [Ledger.Append] or [File.Append], never both for the same entry.
//
// Errors: a [*units.ValueError] that names the field when the entry cannot be:
// a value out of range, an entry older than the last one that counts, more metal or
// solution gone than the book knows of, a note or reason that does not print, a
// [Void] of what cannot be voided. The book is then as it was.
func (l *Ledger) Post(e Entry) (Record, error) { return l.Append(io.Discard, e) }

// Append enters something into the book and writes its line to w, in one
// Write. The line is written before the book changes: an error of w leaves the
// book as it was, but w may hold a part of the line ([Open] then reports it).
//
// Errors: those of [Ledger.Post], and what w returns.
func (l *Ledger) Append(w io.Writer, e Entry) (Record, error) {
	if l == nil {
		return Record{}, noBook()
	}
	if w == nil {
		return Record{}, units.Missing("writer", "one that takes the line of the entry")
	}
	if err := admit(e); err != nil {
		return Record{}, err
	}
	t, err := l.try(e)
	if err != nil {
		return Record{}, err
	}
	if err := l.sense(&t); err != nil {
		return Record{}, err
	}
	text, err := textOf(t.r.Seq, t.r.Entry)
	if err != nil {
		return Record{}, err
	}
	line, sum, err := encode(l.last, text)
	if err != nil {
		return Record{}, err
	}
	if _, err := write(w, line); err != nil {
		return Record{}, err
	}
	l.accept(t, sum)
	return t.r, nil
}

// admit refuses words that do not print. Books of before may hold them: they are
// opened all the same.
func admit(e Entry) error {
	for _, line := range strings.Split(e.Note, "\n") { // a note may have several lines
		if err := units.CheckPrintable("note", line); err != nil {
			return err
		}
	}
	switch v := e.Event.(type) {
	case Correction:
		return units.CheckPrintable("reason of the correction", v.Reason)
	case Void:
		return units.CheckPrintable("reason of the void", v.Reason)
	}
	return nil
}

// sense refuses an entry that would bring more metal into a litre than any bath holds: a
// slip of the unit or the point. Books of before may hold one.
func (l *Ledger) sense(t *trial) error {
	if _, void := t.r.Entry.Event.(Void); void || t.next.metal <= l.core.metal && t.next.volume >= l.core.volume {
		return nil
	}
	return sense.Content().CheckAs("metal content after the entry",
		units.MassConcentration(t.next.metal/t.next.volume))
}

// A trial is an entry worked out, not yet in the book.
type trial struct {
	r      Record
	next   core
	latest time.Time

	// Of a void, the records before it as they count without the voided one.
	records []Record
	after   []core
}

// try works an entry out on a copy of the figures.
func (l *Ledger) try(e Entry) (trial, error) {
	t, err := l.sound(e)
	if err != nil {
		return trial{}, err
	}
	if v, void := e.Event.(Void); void {
		err = l.without(v, &t)
	} else {
		err = l.count(&t)
	}
	if err != nil {
		return trial{}, err
	}
	t.r.After = t.next.state(&l.bath, t.r.Seq, t.latest)
	return t, t.r.After.finite()
}

// sound checks what can be said of an entry by itself, and puts it behind the others.
func (l *Ledger) sound(e Entry) (trial, error) {
	if err := checkTime("entry", e.When); err != nil {
		return trial{}, err
	}
	if err := text("note", e.Note, false); err != nil {
		return trial{}, err
	}
	if _, err := textOf(0, e); err != nil { // an event that this package does not know
		return trial{}, err
	}
	if _, void := e.Event.(Void); void {
		if err := l.inOrder(e.When, true); err != nil {
			return trial{}, err
		}
	}
	if err := e.Event.check(&l.bath); err != nil {
		return trial{}, err
	}
	e.When = e.When.Round(0) // no clock of this process in the book
	return trial{r: Record{Seq: len(l.records) + 1, Entry: e}, next: l.core, latest: l.latest}, nil
}

// count lets an entry change the figures, in the order of times.
func (l *Ledger) count(t *trial) error {
	when := t.r.Entry.When
	if err := l.inOrder(when, false); err != nil {
		return err
	}
	t.latest = when
	return count(&l.bath, &t.next, &t.r)
}

// recount works out entry after entry of a book that was read, the voided ones left
// out, so that a book of many voids is worked out once. It returns how many went well.
func (l *Ledger) recount(entries []Entry, sums []uint32) (int, error) {
	struck := make([]int, len(entries)) // by which number
	for i, e := range entries {
		v, void := e.Event.(Void)
		if !void {
			continue
		}
		if err := voidable(v, i, func(k int) (Event, int) { return entries[k].Event, struck[k] }); err != nil {
			if n, before := l.recount(entries[:i], sums); before != nil {
				return n, before // a line further up is wrong
			}
			return i, err
		}
		struck[v.Entry-1] = i + 1
	}
	for i, e := range entries {
		t, err := l.sound(e)
		if err != nil {
			return i, err
		}
		t.r.VoidedBy = struck[i]
		if t.r.counts() {
			if err := l.count(&t); err != nil {
				return i, err
			}
		}
		t.r.After = t.next.state(&l.bath, t.r.Seq, t.latest)
		if err := t.r.After.finite(); err != nil {
			return i, err
		}
		l.accept(t, sums[i])
	}
	return len(entries), nil
}

// inOrder refuses an entry older than the last one that counts, and a void older than
// the opening: its time says when it was written, not when something happened.
func (l *Ledger) inOrder(when time.Time, void bool) error {
	after, what := l.latest, "the last entry"
	if void {
		after, what = l.opened, "the opening"
	}
	if !when.Before(after) {
		return nil
	}
	need := "one not before " + what + ", " + after.Format(time.RFC3339)
	if n := l.latestSeq(); !void && n > 0 {
		need += fmt.Sprintf(" (no. %d); if the time of no. %d is wrong, void it and enter it again", n, n)
	}
	return &units.ValueError{Field: "time of the entry", Value: when.Format(time.RFC3339), Need: need,
		Err: units.ErrInconsistent}
}

// latestSeq returns the number of the last entry that counts, 0 when there is none.
func (l *Ledger) latestSeq() int {
	for i := len(l.records) - 1; i >= 0; i-- {
		if l.records[i].counts() {
			return l.records[i].Seq
		}
	}
	return 0
}

// count applies what a record says to the figures.
func count(b *Account, c *core, r *Record) error {
	if err := r.Entry.Event.apply(b, c, r); err != nil {
		return err
	}
	return c.settle(b)
}

func (l *Ledger) accept(t trial, sum uint32) {
	if t.records != nil {
		l.records, l.after = t.records, t.after
	}
	l.records, l.after = append(l.records, t.r), append(l.after, t.next)
	l.core, l.latest, l.last = t.next, t.latest, sum
}

// WriteTo writes the whole book.
//
// Errors: what w returns.
func (l *Ledger) WriteTo(w io.Writer) (int64, error) {
	switch {
	case l == nil:
		return 0, units.Missing("book", "one that is opened")
	case w == nil:
		return 0, units.Missing("writer", "one that takes the book")
	}
	line, sum, err := encode(0, lineText{Seq: 0, Format: format, When: l.opened, Opening: &l.bath})
	var n int64
	for i := 0; err == nil; i++ {
		var k int
		k, err = write(w, line)
		if n += int64(k); err != nil {
			return n, err
		}
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

// write makes a short write without an error an error, and returns what was written.
func write(w io.Writer, line []byte) (int, error) {
	n, err := w.Write(line)
	if err == nil && n != len(line) {
		err = io.ErrShortWrite
	}
	return n, err
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
