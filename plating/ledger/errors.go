package ledger

import (
	"errors"
	"fmt"

	"example.com/laydown/units"
)

// Reasons, for [errors.Is].
var (
	ErrTorn    = errors.New("cut short")                      // the last line of a book
	ErrDamaged = errors.New("damaged")                        // a line of a book that is not as it was written
	ErrChanged = errors.New("the file was changed elsewhere") // since this program opened it
	ErrLocked  = errors.New("another program writes to the book")
	ErrUnsure  = errors.New("the entry may stand in the book all the same") // it could not be taken off again
)

// A TornError reports that the last line of a book is not whole: the program or
// the machine stopped while it was written. It comes together with the book up
// to there, nothing before the cut is lost. An empty book, or one cut in its first
// line, has lost its opening and comes with no book at all.
type TornError struct {
	Line int    // its number, the first is 1
	Kept int64  // bytes before it: the place to go on writing
	Tail []byte // the torn bytes, the first 200 of them

	// Whole says that only the end of the line is missing and its checksum is
	// right: the entry is in the book, and a newline is all the file needs.
	// Kept then includes the line.
	Whole bool
}

// Error returns line, what is missing and what is kept.
func (e *TornError) Error() string {
	if e.Whole {
		return fmt.Sprintf("line %d: %v: only its newline is missing; the entry is kept", e.Line, ErrTorn)
	}
	if e.Line == 1 {
		return fmt.Sprintf("line 1: %v: no opening is left; move the file away and start a new book", ErrTorn)
	}
	before := "the line before it is"
	if e.Line > 2 {
		before = fmt.Sprintf("the %d lines before it are", e.Line-1)
	}
	return fmt.Sprintf("line %d: %v: %s whole (%d bytes); enter what it said again", e.Line, ErrTorn, before, e.Kept)
}

// Unwrap returns [ErrTorn].
func (e *TornError) Unwrap() error { return ErrTorn }

// A DamageError reports a line that is not what was written. The book is not
// opened: behind that line no figure could be trusted. What stands before it is
// whole: to look at it, open the first Offset bytes alone. A line that power failure
// left with a hole in its middle is damage, too, unlike one that was cut short.
type DamageError struct {
	Line   int   // its number, the first is 1
	Offset int64 // bytes before it
	Reason string
	Err    error // what lies behind it, or nil
}

// Error returns line and reason.
func (e *DamageError) Error() string {
	s := fmt.Sprintf("line %d: %v: %s", e.Line, ErrDamaged, e.Reason)
	if e.Err != nil {
		s += ": " + e.Err.Error()
	}
	return units.Printable(s)
}

// Unwrap returns [ErrDamaged] and what lies behind it.
func (e *DamageError) Unwrap() []error {
	if e.Err == nil {
		return []error{ErrDamaged}
	}
	return []error{ErrDamaged, e.Err}
}
