package ledger

import (
	"fmt"
	"time"

	"example.com/laydown/units"
)

// How far from the clock the time of an entry may lie for [CheckClock].
const (
	MostAhead  = 24 * time.Hour // a clock a little wrong, a zone mistaken
	mostBehind = 50             // years: no bath is older
)

// CheckClock questions the time of an entry or opening against the clock. A slip in
// the year would stand in the book for good and keep out every entry of today.
// Field names the time in the error; now is what the clock of the caller shows. Ask
// before [Ledger.Append]: the book itself reads no clock.
//
// Errors: a [*units.ValueError] for a time more than [MostAhead] later than now, or
// more than fifty years before it.
func CheckClock(field string, when, now time.Time) error {
	need := ""
	switch {
	case when.After(now.Add(MostAhead)):
		need = "a time at most a day later than that"
	case when.Before(now.AddDate(-mostBehind, 0, 0)):
		need = fmt.Sprintf("a time at most %d years before that", mostBehind)
	default:
		return nil
	}
	return &units.ValueError{Field: field, Value: when.Format(time.RFC3339) + ", where the clock shows " +
		now.Format(time.RFC3339), Need: need + "; look at the year, and set the clock if it is wrong",
		Err: units.ErrOutOfRange}
}

// Ahead returns the numbers of the entries that count and lie more than [MostAhead]
// later than now, 0 for the opening: slips that got into the book, to be answered by a
// [Void], or an opening by a new book. None is the rule.
func (l *Ledger) Ahead(now time.Time) []int {
	if l == nil {
		return nil
	}
	var list []int
	limit := now.Add(MostAhead)
	if l.opened.After(limit) {
		list = append(list, 0)
	}
	for i := range l.records {
		if r := &l.records[i]; r.counts() && r.Entry.When.After(limit) {
			list = append(list, r.Seq)
		}
	}
	return list
}
