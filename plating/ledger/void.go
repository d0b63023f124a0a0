package ledger

import (
	"fmt"
	"strconv"
	"time"

	"example.com/laydown/units"
)

// A Void strikes out an entry that is wrong: a year mistyped, a load of another
// bath, an amount slipped by a place. The line stays in the book, and so does the
// void with its reason, but the entry no longer counts: the book is worked out as if
// it had never been written, the entries behind it and their analyses as well. Enter
// what was meant again. For what truly happened to the bath, as a spill, there is
// [Correction].
//
// The time of a Void says when it was written and does not count for the order of
// times, so that it can strike out an entry of a year far ahead, and be followed by
// entries of today.
//
// Voided can be every entry that counts, an analysis or an addition too. Not the
// opening (start a new book), not a Void (enter what it struck out again), nothing
// twice, and no entry without which one behind it could not be: a load that drew
// metal that only the voided addition brought. The error names that one; void it
// first.
type Void struct {
	// its number, as [Record].Seq: 1 is the first behind the opening
	Entry  int    `json:"entry" with:"must" need:"the number of the wrong entry"`
	Reason string `json:"reason" with:"must" need:"a few words"`
}

func (v Void) check(*Account) error {
	if v.Entry < 1 {
		return voidError(v.Entry, "the number of an entry behind the opening, 1 or more; where the opening itself is "+
			"wrong, start a new book", units.ErrOutOfRange)
	}
	return text("reason of the void", v.Reason, true)
}

// apply is not reached: [Ledger.without] counts again what is left.
func (v Void) apply(*Account, *core, *Record) error { return nil }

func voidError(entry int, need string, reason error) error {
	return &units.ValueError{Field: "entry to void", Value: "no. " + strconv.Itoa(entry), Need: need, Err: reason}
}

// counts reports whether the record changes the bath: it is no void and not voided.
func (r *Record) counts() bool {
	_, void := r.Entry.Event.(Void)
	return !void && r.VoidedBy == 0
}

// voidable refuses a void of what cannot be voided among n entries; at gives the event
// of one and the void that struck it out before, if any.
func voidable(v Void, n int, at func(i int) (Event, int)) error {
	if v.Entry < 1 || v.Entry > n {
		need := fmt.Sprintf("1 to %d, the entries of this book", n)
		if n == 0 {
			need = "an entry: this book has none yet"
		}
		return voidError(v.Entry, need, units.ErrOutOfRange)
	}
	event, by := at(v.Entry - 1)
	if _, void := event.(Void); void {
		return voidError(v.Entry, "an entry that is no void: enter again what it struck out", units.ErrInconsistent)
	}
	if by != 0 {
		return voidError(v.Entry, fmt.Sprintf("an entry that counts: it is voided by no. %d already", by),
			units.ErrInconsistent)
	}
	return nil
}

// without counts the book again without the entry that v voids. It leaves the book
// alone and puts what comes out into t.
func (l *Ledger) without(v Void, t *trial) error {
	if err := voidable(v, len(l.records), func(i int) (Event, int) {
		return l.records[i].Entry.Event, l.records[i].VoidedBy
	}); err != nil {
		return err
	}
	t.records = append([]Record(nil), l.records...)
	t.after = append([]core(nil), l.after...)
	t.records[v.Entry-1].VoidedBy = t.r.Seq
	c, latest := l.before(v.Entry)
	for i := v.Entry - 1; i < len(t.records); i++ {
		old := &t.records[i]
		r := Record{Seq: old.Seq, Entry: old.Entry, VoidedBy: old.VoidedBy}
		if r.counts() {
			if err := count(&l.bath, &c, &r); err != nil {
				return voidError(v.Entry, fmt.Sprintf("no entry behind it that cannot be without it; void no. %d first (%v)",
					r.Seq, err), units.ErrInconsistent)
			}
			latest = r.Entry.When
		}
		r.After = c.state(&l.bath, r.Seq, latest)
		if err := r.After.finite(); err != nil {
			return err
		}
		t.records[i], t.after[i] = r, c
	}
	t.next, t.latest = c, latest
	return nil
}

// before returns the figures in front of an entry and the time of the last one that
// counts there.
func (l *Ledger) before(entry int) (core, time.Time) {
	if entry == 1 {
		return newCore(&l.bath), l.opened
	}
	return l.after[entry-2], l.records[entry-2].After.When
}
