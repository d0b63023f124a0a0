package price_test

import (
	"math"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// TestPropertyDigits: 36 digits and 30 places are taken, 37 digits and 31 places are not.
func TestPropertyDigits(t *testing.T) {
	for _, c := range []struct {
		number decimal.Decimal
		fine   bool
	}{
		{dec(strings.Repeat("9", 36)), true}, {dec("1" + strings.Repeat("9", 36)), false},
		{decimal.New(1, -30), true}, {decimal.New(1, -31), false},
		{decimal.New(1, 30), true}, {decimal.New(1, 31), false},
	} {
		_, err := price.HalfEven.Round(c.number, 2)
		if (err == nil) != c.fine {
			t.Errorf("%s: %v", c.number, err)
		}
		if !c.fine {
			refused(t, c.number.String(), err, units.ErrOutOfRange)
		}
	}
}

// TestPropertyMostPieces: a million pieces are priced, one more is not.
func TestPropertyMostPieces(t *testing.T) {
	j := bezels()
	j.Pieces, j.SetUp.SharedBy = 1_000_000, 1_000_000
	if _, err := j.Quote(); err != nil {
		t.Error(err)
	}
	for name, spoil := range map[string]func(j *price.Order){
		"pieces":                       func(j *price.Order) { j.Pieces = 1_000_001 },
		"pieces that share the set-up": func(j *price.Order) { j.SetUp.SharedBy = 1_000_001 },
	} {
		over := j
		spoil(&over)
		_, err := over.Quote()
		refused(t, name, err, units.ErrOutOfRange)
		if err != nil && !strings.Contains(err.Error(), name) || !strings.Contains(err.Error(), " to 1000000") {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// TestPropertyWeights: a million weights are taken, one more is not, and a bad one is
// named by its place.
func TestPropertyWeights(t *testing.T) {
	weights := make([]decimal.Decimal, 1_000_001)
	_, err := price.Distribute(dec("1"), 2, weights...)
	refused(t, "too many", err, units.ErrOutOfRange)
	_, err = price.Distribute(dec("1"), 2, weights[1:]...)
	refused(t, "all zero", err, units.ErrNotPositive)
	_, err = price.Distribute(dec("1"), 2, dec("3"), dec("-1"), dec("2"))
	refused(t, "one below zero", err, units.ErrNegative)
	if !strings.Contains(err.Error(), "weight 2 ") {
		t.Error(err)
	}
}

// TestPropertyMostOfAQuantity: 1e15 of the SI unit is the most, and every figure of it counts.
func TestPropertyMostOfAQuantity(t *testing.T) {
	w := must(price.Weigh(1e15, alloys.PerKilogram, 0, price.HalfEven))(t)
	equal(t, "mass", w.Amount, dec("1e15"))
	equal(t, "time", must(price.Minutes(6e14, 0, price.HalfEven))(t), dec("1e13"))
	equal(t, "energy", must(price.KilowattHours(3.6e14, 0, price.HalfEven))(t), dec("1e8"))
	over := math.Nextafter(1e15, 2e15)
	_, err := price.Weigh(units.Mass(over), alloys.PerKilogram, 0, price.HalfEven)
	refused(t, "mass", err, units.ErrOutOfRange)
	_, err = price.Minutes(units.Duration(over), 0, price.HalfEven)
	refused(t, "time", err, units.ErrOutOfRange)
}

// TestPropertyCalendar counts the days of every month that a Date takes against the
// calendar of the years 1900 to 9999.
func TestPropertyCalendar(t *testing.T) {
	fine := func(y, m, d int) bool { return price.Date{Year: y, Month: m, Day: d}.Check("day") == nil }
	for _, y := range []int{1900, 2000, 2023, 2024, 2100, 9999} {
		sum := 0
		for m := -1; m <= 14; m++ {
			for d := -1; d <= 33; d++ {
				if !fine(y, m, d) {
					continue
				}
				sum++
				if m < 1 || m > 12 || d < 1 || d > 31 {
					t.Errorf("year %d, month %d, day %d is taken", y, m, d)
				}
			}
		}
		if want := map[int]int{2000: 366, 2024: 366}[y]; sum != max(want, 365) {
			t.Errorf("%d has %d days", y, sum)
		}
	}
	for i, days := range []int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		if m := i + 1; !fine(2023, m, days) || fine(2023, m, days+1) {
			t.Errorf("month %d has not %d days", m, days)
		}
	}
	if fine(1899, 12, 31) || fine(10000, 1, 1) || !fine(1900, 1, 1) || !fine(9999, 12, 31) {
		t.Error("the ends of the calendar")
	}
	d := price.Date{Year: 2026, Month: 11, Day: 25}
	if err := d.UnmarshalText(nil); err != nil || !d.IsZero() {
		t.Errorf("empty text leaves %s, %v", d, err)
	}
}
