package alloys

import (
	"fmt"
	"sort"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// A MarkSeries is the list of finenesses that may be marked for one metal. Which
// series counts is a matter of the country and the edition: name the one you
// mean. The zero MarkSeries holds no mark.
type MarkSeries struct {
	Name   string            // in words
	Symbol string            // the metal: Au
	Marks  []decimal.Decimal // ‰, the lowest first
	Seen   origin.Seen
	Source string // key of the publication, "" for a series of the caller's
}

// A List names a published list of series. The zero List is none.
type List uint8

// The lists. ISO 9202 was not seen in any edition: its series is from memory
// and must be checked before it is relied on.
const (
	ListNone          List = iota
	ListUnitedKingdom      // legal standards of the United Kingdom
	ListGeneral            // finenesses commonly met, an encyclopedia's list
	ListISO9202            // ISO 9202, from memory
)

// String returns the list's name in words.
func (l List) String() string {
	switch l {
	case ListUnitedKingdom:
		return "United Kingdom legal standards"
	case ListGeneral:
		return "general list"
	case ListISO9202:
		return "ISO 9202, from memory"
	}
	return "no list"
}

// FinenessSeries returns the series of a list for a metal: Au, Ag, Pt or Pd.
// The slice is the caller's own.
//
// Errors: a [*units.ValueError] when the list has no series for that metal.
//
// Source: [FinenessLists], [ISO9202].
func FinenessSeries(list List, symbol string) (MarkSeries, error) {
	s := MarkSeries{Name: list.String(), Symbol: symbol, Seen: origin.Published, Source: "FinenessLists"}
	var text string
	switch list {
	case ListUnitedKingdom:
		text = map[string]string{
			"Au": "375 585 750 916 990 999",
			"Ag": "800 925 958 999",
			"Pt": "850 900 950 999",
			"Pd": "500 950 999",
		}[symbol]
	case ListGeneral:
		s.Seen = origin.SecondHand
		text = map[string]string{
			"Au": "333 375 417 585 625 750 833 916 958.3 990 995 999 999.9",
			"Ag": "800 830 900 925 950 958 980 999",
			"Pt": "850 900 950 995 999",
		}[symbol]
	case ListISO9202:
		s.Seen, s.Source = origin.FromMemory, "ISO9202"
		text = map[string]string{
			"Au": "333 375 417 585 750 800 916 990 999",
			"Ag": "800 830 925 958 999",
			"Pt": "850 900 950 999",
			"Pd": "500 950 999",
		}[symbol]
	}
	if text == "" {
		return MarkSeries{}, notInTable("series", units.Clip(list.String()+" for "+symbol),
			"a published list and a metal it has, as ListUnitedKingdom and Au")
	}
	s.Marks = marks(text)
	return s, nil
}

// NewSeries makes a series of the caller's own, for the law of a country that
// this library has no list of. Marks are in per mille; they are sorted.
//
// Errors: a [*faraday.ElementError] for an unknown symbol, a [*units.ValueError]
// for no marks or a mark not above 0 and at most 1000.
//
// Source: [Definition].
func NewSeries(name, symbol string, list ...decimal.Decimal) (MarkSeries, error) {
	if _, err := faraday.Lookup(symbol); err != nil {
		return MarkSeries{}, err
	}
	s := MarkSeries{Name: name, Symbol: symbol, Marks: append([]decimal.Decimal(nil), list...)}
	if err := s.check(); err != nil {
		return MarkSeries{}, err
	}
	sort.Slice(s.Marks, func(i, j int) bool { return s.Marks[i].LessThan(s.Marks[j]) })
	return s, nil
}

func (s MarkSeries) check() error {
	if len(s.Marks) == 0 {
		return bad("series", "of no marks", "at least one mark, as those of FinenessSeries", units.ErrNotPositive)
	}
	for _, m := range s.Marks {
		if err := checkPermille("mark of the series", m); err != nil {
			return err
		}
	}
	return nil
}

// MarkFor returns the mark that may be struck on an article of a given assay:
// the highest of the series that the assay reaches.
//
//	M = max of the marks ≤ f
//
//	f  assay  0 < f ≤ 1000 [‰]
//
// Finenesses are minima without negative tolerance, so the mark is the floor,
// never the nearest: gold of 588 is marked 585, gold of 584 is marked 375 in
// the United Kingdom series. Assay and marks are compared as decimals; 584.9999
// is under 585. [Fineness.Decimal] makes a decimal of a computed fineness.
//
// Errors: a [*BelowSeriesError] when the assay is under every mark; a
// [*units.ValueError] for an assay that is not above 0 and at most 1000 or a
// series without marks.
//
// Source: [FinenessFloor], [ISO9202].
func MarkFor(assay decimal.Decimal, s MarkSeries) (decimal.Decimal, error) {
	if err := checkPermille("assay", assay); err != nil {
		return decimal.Decimal{}, err
	}
	if err := s.check(); err != nil {
		return decimal.Decimal{}, err
	}
	var best decimal.Decimal
	lowest := s.Marks[0]
	for _, m := range s.Marks {
		if m.LessThanOrEqual(assay) && m.GreaterThan(best) {
			best = m
		}
		lowest = decimal.Min(lowest, m)
	}
	if best.IsZero() {
		return decimal.Decimal{}, &BelowSeriesError{Symbol: s.Symbol, Assay: assay, Lowest: lowest}
	}
	return best, nil
}

// MarkForWorking shows by how much the assay lies above the mark of [MarkFor].
// Errors: those of MarkFor.
func MarkForWorking(assay decimal.Decimal, s MarkSeries) ([]working.Step, error) {
	mark, err := MarkFor(assay, s)
	if err != nil {
		return nil, err
	}
	list := make([]string, len(s.Marks))
	for i, m := range s.Marks {
		list[i] = m.String()
	}
	f, m := assay.InexactFloat64(), mark.InexactFloat64()
	return []working.Step{{
		Formula: "d = f - M",
		Terms: []working.Term{{Symbol: "f", Meaning: "assay", Value: assay.String() + " ‰", SI: f},
			{Symbol: "M", Meaning: "mark, the highest that the assay reaches", Value: mark.String() + " ‰", SI: m}},
		Result: working.Term{Symbol: "d", Meaning: "margin above the mark", Value: assay.Sub(mark).String() + " ‰",
			SI: f - m},
		Source: "FinenessFloor",
		Note:   fmt.Sprintf("Series: %s (%s), %s.", s.Name, s.Seen, strings.Join(list, ", ")),
	}}, nil
}

// FinnishMinimum returns the lowest fineness, in per mille, at which an article
// counts as precious metal in Finland; there is no tolerance below it.
//
// Errors: a [*units.ValueError] for a metal other than Au, Ag, Pt and Pd.
//
// Source: [FinenessFloor].
func FinnishMinimum(symbol string) (decimal.Decimal, error) {
	switch symbol {
	case "Au":
		return decimal.New(375, 0), nil
	case "Ag":
		return decimal.New(800, 0), nil
	case "Pt", "Pd":
		return decimal.New(500, 0), nil
	}
	return decimal.Decimal{}, notInTable("metal", units.Clip(symbol), "Au, Ag, Pt or Pd")
}

// marks reads finenesses of the tables in this package; the tests hold the
// tables against their sources.
func marks(text string) []decimal.Decimal {
	fields := strings.Fields(text)
	list := make([]decimal.Decimal, len(fields))
	for i, f := range fields {
		list[i], _ = decimal.NewFromString(f)
	}
	return list
}

// notInTable reports a key that no table has.
func notInTable(field, value, need string) error {
	return bad(field, value, need, units.ErrOutOfRange)
}

// checkPermille returns an error unless 0 < d ≤ 1000.
func checkPermille(field string, d decimal.Decimal) error {
	if err := checkDecimal(field, d); err != nil {
		return err
	}
	switch {
	case !d.IsPositive():
		return bad(field, d.String()+" ‰", "a value above zero", units.ErrNotPositive)
	case d.GreaterThan(decimal.New(1000, 0)):
		return bad(field, d.String()+" ‰", "at most 1000 ‰", units.ErrOutOfRange)
	}
	return nil
}

// checkDecimal refuses decimals so long that computing with them would take
// for ever: a decimal can hold ten to the power of a thousand million.
func checkDecimal(field string, d decimal.Decimal) error {
	if e := d.Exponent(); e > 60 || e < -60 || d.Coefficient().BitLen() > 400 {
		return bad(field, fmt.Sprintf("of decimal exponent %d", e), "at most 60 places and 120 digits", units.ErrOutOfRange)
	}
	return nil
}
