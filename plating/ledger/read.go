package ledger

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"time"

	"example.com/laydown/units"
)

// A Book is the text of a ledger taken apart, its entries not yet worked out.
type Book struct {
	Account Account
	Opened  time.Time
	Entries []Entry
}

// Read reads the text of a book: checksums, sequence, form of the fields. It
// does not ask whether the entries fit the bath; [Open] does.
//
// Errors: a [*TornError] for a last line that was cut short, together with the
// book up to there (an empty one when not even the first line is whole); a
// [*DamageError] for any other line that is not as it was written; what r
// returns.
func Read(r io.Reader) (Book, error) {
	var b Book
	err := read(r, func(t *lineText, _ uint32, _ int64) error {
		if t.Opening != nil {
			b.Account, b.Opened = *t.Opening, t.When
			return nil
		}
		e, err := t.entry()
		b.Entries = append(b.Entries, e)
		return err
	})
	if torn := (*TornError)(nil); err != nil && !errors.As(err, &torn) {
		return Book{}, err
	}
	return b, err
}

// Open reads a book and works out every entry.
//
// Errors: those of [Read]. With a [*TornError] the book up to the cut is
// returned as well, unless not even its first line is whole. An entry that
// does not fit the bath is a [*DamageError] that wraps the reason.
func Open(r io.Reader) (*Ledger, error) {
	var l *Ledger
	var entries []Entry
	var sums []uint32
	var offsets []int64
	err := read(r, func(t *lineText, sum uint32, offset int64) error {
		if t.Opening != nil {
			var err error
			if l, err = start(io.Discard, *t.Opening, t.When); err == nil {
				l.last = sum
			}
			return err
		}
		e, err := t.entry()
		if err == nil {
			entries, sums, offsets = append(entries, e), append(sums, sum), append(offsets, offset)
		}
		return err
	})
	if l != nil {
		if n, wrong := l.recount(entries, sums); wrong != nil { // the first line that is wrong counts
			return nil, &DamageError{Line: n + 2, Offset: offsets[n], Reason: "entry", Err: wrong}
		}
	}
	if torn := (*TornError)(nil); err != nil && !errors.As(err, &torn) {
		return nil, err
	}
	return l, err
}

// read hands on line after line.
func read(r io.Reader, post func(*lineText, uint32, int64) error) error {
	if r == nil {
		return units.Missing("reader", "one that gives the book")
	}
	in := bufio.NewReader(r)
	var offset int64
	var sum uint32
	for n := 1; ; n++ {
		line, whole, err := readLine(in)
		if err != nil {
			return err
		}
		if line == nil && !whole {
			if n == 1 {
				return &TornError{Line: 1}
			}
			return nil
		}
		damage := func(reason string, err error) error {
			return &DamageError{Line: n, Offset: offset, Reason: reason, Err: err}
		}
		if len(line) > maxLine {
			return damage(fmt.Sprintf("longer than %d bytes", maxLine), nil)
		}
		payload, next, err := open(sum, line)
		if err != nil {
			if whole && len(line) > 0 && line[len(line)-1] == '\r' {
				return damage("it ends as lines end elsewhere (carriage return): the file went through a program that "+
					"changes line ends", err)
			}
			if whole {
				return damage("not a line of this book", err)
			}
			return &TornError{Line: n, Kept: offset, Tail: append([]byte(nil), line[:min(len(line), 200)]...)}
		}
		t, err := decode(payload)
		if err != nil {
			return damage("fields", err)
		}
		switch first := n == 1; {
		case first && t.Format != format:
			return damage(fmt.Sprintf("format %q; this version reads %q", units.Clip(t.Format), format), nil)
		case first && (t.Opening == nil || t.Load != nil || t.Evaporation != nil || t.Addition != nil ||
			t.Analysis != nil || t.Correction != nil || t.Void != nil):
			return damage("the first line has no opening", nil)
		case t.Seq != n-1:
			return damage(fmt.Sprintf("sequence number %d, need %d", t.Seq, n-1), nil)
		case !first && (t.Opening != nil || t.Format != ""):
			return damage("an opening that is not the first line", nil)
		}
		if err := post(&t, next, offset); err != nil {
			return damage("entry", err)
		}
		sum = next
		offset += int64(len(line))
		if !whole {
			return &TornError{Line: n, Kept: offset, Whole: true}
		}
		offset++
	}
}

// readLine returns a line without its newline, and whether there was one. At
// the end of the text it returns nil and false.
func readLine(in *bufio.Reader) (line []byte, whole bool, err error) {
	for {
		part, err := in.ReadSlice('\n')
		line = append(line, part...)
		switch {
		case err == nil:
			return line[:len(line)-1], true, nil
		case err == io.EOF:
			return line, false, nil
		case err != bufio.ErrBufferFull:
			return nil, false, err
		case len(line) > maxLine:
			return line, false, nil
		}
	}
}
