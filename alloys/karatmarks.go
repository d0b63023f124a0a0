package alloys

import (
	"math"

	"example.com/laydown/units/origin"
	"github.com/shopspring/decimal"
)

// A KaratMark is the fineness that is struck for a karat. Exact and mark part
// by up to 1.67 per mille, and not always to the same side.
type KaratMark struct {
	Karat Karat
	Exact Fineness        // 1000·K/24
	Mark  decimal.Decimal // ‰, as struck
	Seen  origin.Seen
	Note  string // how the mark comes from the exact figure
}

// KaratMarks returns the table of karats with their marked fineness, the
// lowest first. The row of 24 K is from memory: the list that was read has
// 990, 995, 999 and 999.9 and does not say which of them is 24 karat.
//
// Source: [FinenessMarks].
func KaratMarks() []KaratMark {
	row := func(k Karat, mark string, seen origin.Seen, note string) KaratMark {
		return KaratMark{Karat: k, Exact: k.Fineness(), Mark: marks(mark)[0], Seen: seen, Note: note}
	}
	return []KaratMark{
		row(8, "333", origin.SecondHand, "cut down"),
		row(9, "375", origin.SecondHand, "exact"),
		row(10, "417", origin.SecondHand, "rounded up"),
		row(14, "585", origin.SecondHand, "1.67 richer than 14/24"),
		row(15, "625", origin.SecondHand, "exact"),
		row(18, "750", origin.SecondHand, "exact"),
		row(20, "833", origin.SecondHand, "cut down"),
		row(22, "916", origin.SecondHand, "cut down"),
		row(23, "958.3", origin.SecondHand, "cut down after one decimal"),
		row(24, "999", origin.FromMemory, "trade practice; 995 and 999.9 are met too"),
	}
}

// MarkedFineness returns the fineness that is marked for a karat: 585 for 14 K.
//
// Errors: a [*units.ValueError] when k is not above 0 and at most 24, or is
// not in the table; [Karat.Fineness] is exact for every karat.
//
// Source: [FinenessMarks].
func MarkedFineness(k Karat) (KaratMark, error) {
	if err := k.Check("karat"); err != nil {
		return KaratMark{}, err
	}
	for _, m := range KaratMarks() {
		if math.Abs(float64(m.Karat-k)) <= 1e-9 {
			return m, nil
		}
	}
	return KaratMark{}, notInTable("karat", k.String(), "8, 9, 10, 14, 15, 18, 20, 22, 23 or 24 K, or the exact fineness")
}

// KaratOfMark returns the row of a marked fineness in per mille: 14 K for 585,
// though 585/1000 of 24 is 14.04.
//
// Errors: a [*units.ValueError] when the mark is not in the table.
//
// Source: [FinenessMarks].
func KaratOfMark(mark decimal.Decimal) (KaratMark, error) {
	if err := checkPermille("mark", mark); err != nil {
		return KaratMark{}, err
	}
	for _, m := range KaratMarks() {
		if m.Mark.Equal(mark) {
			return m, nil
		}
	}
	return KaratMark{}, notInTable("mark", mark.String()+" ‰",
		"a mark of the table, as 585, or Fineness.Karat for the exact karat")
}
