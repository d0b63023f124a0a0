package ledger

import (
	"bytes"
	"errors"
	"fmt"
	"math"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// Aim returns the content that additions bring the bath to: the target, or the opening
// content where none is given.
func (b *Account) Aim() units.MassConcentration {
	if b.Target == 0 {
		return b.Content
	}
	return b.Target
}

// Solution returns the bath as its dangers are judged now: by the pH that was measured, or
// where that is 0 by the pH of the book. When the last entry speaks of acid and nobody has
// measured since, the pH of the book counts no more, and the bath counts as acid.
func (l *Ledger) Solution(measured plating.PH) plating.Solution {
	if l == nil {
		return plating.Solution{}
	}
	s := l.bath.Solution()
	switch {
	case measured != 0:
		s.PH = plating.PHWindow{Low: measured, High: measured}
	case l.acidAdded():
		s.PH = plating.PHWindow{}
		s.Hazards |= plating.HazardAcid
	}
	return s
}

// acidAdded reports whether the last entry names acid.
func (l *Ledger) acidAdded() bool {
	if len(l.records) == 0 {
		return false
	}
	last := l.records[len(l.records)-1].Entry
	texts := []string{last.Note}
	if c, ok := last.Event.(Correction); ok {
		texts = append(texts, c.Reason)
	}
	return plating.NamedHazards(texts...).Has(plating.HazardAcid)
}

// Late says of an entry that is later than the clock (see [Ledger.Ahead]) what to do about
// it; void says how it is struck out where the reader stands, "" for no more than that. It
// returns "" for a number that no entry has.
func (l *Ledger) Late(entry int, void string) string {
	const late = "later than the clock shows: set the clock if it is wrong, else "
	switch {
	case entry < 0 || entry > len(l.records):
		return ""
	case entry == 0:
		return "the book is opened on " + sheetDate(l.opened) + ", " + late + "start a new book"
	case void != "":
		void = " with " + void
	}
	return fmt.Sprintf("no. %d is dated %s, %sstrike the entry out%s and enter it again", entry,
		sheetDate(l.records[entry-1].Entry.When), late, void)
}

// CheckSlip refuses an analysis so far from the book that a slip of the pen is likelier
// than either: averaged, both would be wrong and look certain. An analysis that counts
// alone is let pass, and so is every other entry. Ask before [Ledger.Append].
//
//	|c - c_book| > 10·√(u² + u_book²) and |c - c_book| > 0.2·c_book
//
//	c, u            content and standard uncertainty of the analysis [kg/m³]
//	c_book, u_book  those of the book [kg/m³]
//
// Ten uncertainties and a fifth are common practice, no source.
//
// Errors: a [*SlipError].
func (l *Ledger) CheckSlip(event Event) error {
	a, ok := event.(Analysis)
	if l == nil || !ok || a.Reset {
		return nil
	}
	s := l.State()
	u := math.Hypot(float64(a.Uncertainty), float64(s.ContentUncertainty))
	if apart := math.Abs(float64(a.Content - s.Content)); apart > 10*u && apart > 0.2*float64(s.Content) {
		return &SlipError{Analysed: a.Content, Book: s.Content}
	}
	return nil
}

// A SlipError reports an analysis that lies far from the book.
type SlipError struct{ Analysed, Book units.MassConcentration }

// Error returns both contents and what would do.
func (e *SlipError) Error() string {
	return fmt.Sprintf("an analysis of %s lies far from the %s of the book: a slip? not entered; if it is right, enter "+
		"it with reset=true, and look for what the book does not know", e.Analysed, e.Book)
}

// Unwrap returns [units.ErrInconsistent].
func (e *SlipError) Unwrap() error { return units.ErrInconsistent }

// An Entered is a book after [Enter].
type Entered struct {
	Book   *Ledger // as far as it is known; nil when the file could not be opened
	Record Record  // of the entry; Seq is 0 when it is not in the book
	Torn   error   // the last line was cut short, nil when the book was whole
}

// Enter enters something into the book in a file: it opens the book, asks [Ledger.CheckSlip],
// appends and closes. Where another program was faster its entry comes first, and Enter
// begins anew, a hundred times at most. It asks no clock: see [CheckClock].
//
// Errors: those of [OpenFile], [Ledger.CheckSlip], [File.Append] and [File.Close]. A book
// whose last line is cut short is mended and no error, but told in Torn.
func Enter(path string, e Entry) (Entered, error) {
	for try := 1; ; try++ {
		in, err := enter(path, e)
		// What may be in the book all the same is not entered twice.
		if errors.Is(err, ErrChanged) && !errors.Is(err, ErrUnsure) && try < 100 {
			continue
		}
		return in, err
	}
}

// enter is one try of [Enter].
func enter(path string, e Entry) (Entered, error) {
	f, torn := OpenFile(path)
	if f == nil {
		return Entered{}, torn
	}
	in := Entered{Book: f.Ledger, Torn: torn}
	err := f.CheckSlip(e.Event)
	if err == nil {
		in.Record, err = f.Append(e)
	}
	return in, errors.Join(err, f.Close())
}

// Salvage opens the text of a book as far as its lines are whole, to look at: the book comes
// together with the [*TornError] of a last line that is cut short, or with the [*DamageError]
// of the line behind its last entry. Without a whole first line there is no book. Nothing can
// be entered into a damaged one.
//
// Errors: those of [Open].
func Salvage(text []byte) (*Ledger, error) {
	l, err := Open(bytes.NewReader(text))
	var damage *DamageError
	if l != nil || !errors.As(err, &damage) || damage.Line == 1 {
		return l, err
	}
	before, openErr := Open(bytes.NewReader(text[:damage.Offset]))
	if openErr != nil {
		return nil, openErr
	}
	return before, err
}
