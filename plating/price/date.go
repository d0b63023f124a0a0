package price

import (
	"fmt"
	"strconv"

	"example.com/laydown/units"
)

// A Date is a day of the calendar, without a time zone: the day a metal price
// was fixed. The zero Date is not given. This package looks at no clock.
type Date struct{ Year, Month, Day int }

// IsZero reports whether no date is given.
func (d Date) IsZero() bool { return d == Date{} }

// Check returns a [*units.ValueError] for a day that no calendar has, and for
// years outside 1900 to 9999.
func (d Date) Check(field string) error {
	if d.IsZero() {
		return bad(field, "not given", "a date as 2026-11-25", units.ErrNotPositive)
	}
	if d.Year < 1900 || d.Year > 9999 || d.Month < 1 || d.Month > 12 || d.Day < 1 || d.Day > daysOf(d.Year, d.Month) {
		return bad(field, fmt.Sprintf("year %d, month %d, day %d", d.Year, d.Month, d.Day),
			"a day of the calendar from 1900 on, as 2026-11-25", units.ErrOutOfRange)
	}
	return nil
}

// daysOf returns the days of a month, with the leap years of the Gregorian calendar.
func daysOf(year, month int) int {
	switch {
	case month == 2 && year%4 == 0 && (year%100 != 0 || year%400 == 0):
		return 29
	case month == 2:
		return 28
	case month == 4 || month == 6 || month == 9 || month == 11:
		return 30
	}
	return 31
}

// ParseDate reads a date written as 2026-11-25.
//
// Errors: a [*units.ValueError] for other forms and for a day that no calendar has.
func ParseDate(text string) (Date, error) {
	wrong := bad("date", quoted(text), "four, two and two digits, as 2026-11-25", units.ErrSyntax)
	if len(text) != 10 || text[4] != '-' || text[7] != '-' {
		return Date{}, wrong
	}
	var n [3]int
	for i, part := range []string{text[:4], text[5:7], text[8:]} {
		v, err := strconv.ParseUint(part, 10, 16) // takes no sign
		if err != nil {
			return Date{}, wrong
		}
		n[i] = int(v)
	}
	d := Date{n[0], n[1], n[2]}
	if d.IsZero() { // 0000-00-00
		return Date{}, wrong
	}
	if err := d.Check("date"); err != nil {
		return Date{}, err
	}
	return d, nil
}

// String writes the date as 2026-11-25, and "not given" for the zero Date.
func (d Date) String() string {
	if d.IsZero() {
		return "not given"
	}
	return fmt.Sprintf("%04d-%02d-%02d", d.Year, d.Month, d.Day)
}

// MarshalText writes the date as 2026-11-25; the zero Date is empty text.
//
// Errors: as [Date.Check].
func (d Date) MarshalText() ([]byte, error) {
	if d.IsZero() {
		return nil, nil
	}
	if err := d.Check("date"); err != nil {
		return nil, err
	}
	return []byte(d.String()), nil
}

// UnmarshalText reads what MarshalText writes.
//
// Errors: as [ParseDate].
func (d *Date) UnmarshalText(text []byte) error {
	if d == nil {
		return units.Missing("date to read into", "a pointer to one")
	}
	if len(text) == 0 {
		*d = Date{}
		return nil
	}
	v, err := ParseDate(string(text))
	if err == nil {
		*d = v
	}
	return err
}
