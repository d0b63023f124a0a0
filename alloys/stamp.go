package alloys

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// An Article is a kind of article as the stamping act parts them.
type Article uint8

// The kinds. The zero value is any article but a watchcase or flatware.
const (
	OtherArticle Article = iota
	WatchcaseOrFlatware
)

// A AssaySample says what was assayed.
type AssaySample uint8

// The samples. The zero value is a piece free of solder.
const (
	WithoutSolder AssaySample = iota // a part of the article that holds no solder
	WithSolder                       // gold: the whole article, solder included; silver: a part that holds solder
)

// A Stamp is a mark on an article together with what was assayed to check it.
type Stamp struct {
	Symbol  string          // Au or Ag
	Mark    decimal.Decimal // ‰: 750, or Karat(14).Fineness().Decimal()
	Article Article
	Sample  AssaySample
}

// A StampVerdict is the outcome of [MeetsStamp]; all figures in per mille.
type StampVerdict struct {
	Mark, Shortfall, Least, Assay decimal.Decimal
	Meets                         bool // assay ≥ least
}

// StampShortfall returns by how many per mille an assay may fall below the mark
// under the National Gold and Silver Stamping Act of the United States, as
// amended in 1976.
//
//	gold    3 without solder, and for watchcases and flatware as a whole;
//	        7 for any other article as a whole, solder included
//	silver  4 without solder, 10 with solder
//
// Some state laws still print the older half karat and one karat for gold.
// This is arithmetic, not legal advice.
//
// Errors: a [*units.ValueError] for a metal the act does not speak of, or an
// unknown article or sample.
//
// Source: [StampAct].
func StampShortfall(symbol string, article Article, sample AssaySample) (decimal.Decimal, error) {
	if article > WatchcaseOrFlatware {
		return decimal.Decimal{}, notInTable("article", "unknown", "OtherArticle or WatchcaseOrFlatware")
	}
	if sample > WithSolder {
		return decimal.Decimal{}, notInTable("sample", "unknown", "WithoutSolder or WithSolder")
	}
	switch {
	case symbol == "Au" && sample == WithSolder && article == OtherArticle:
		return decimal.New(7, 0), nil
	case symbol == "Au":
		return decimal.New(3, 0), nil
	case symbol == "Ag" && sample == WithSolder:
		return decimal.New(10, 0), nil
	case symbol == "Ag":
		return decimal.New(4, 0), nil
	}
	return decimal.Decimal{}, notInTable("metal", units.Clip(symbol), "Au or Ag, the metals of the stamping act")
}

// MeetsStamp holds an assay against a mark.
//
//	f_min = M - s
//
//	M  Mark  the mark, 0 < M ≤ 1000 [‰]
//	s        the shortfall of StampShortfall [‰]
//
// The comparison is in decimals. Errors: a [*units.ValueError] for an assay or
// mark that is not above 0 and at most 1000, or a mark not above the shortfall;
// those of [StampShortfall].
//
// Source: [StampAct].
func MeetsStamp(assay decimal.Decimal, s Stamp) (StampVerdict, error) {
	if err := checkPermille("assay", assay); err != nil {
		return StampVerdict{}, err
	}
	if err := checkPermille("mark", s.Mark); err != nil {
		return StampVerdict{}, err
	}
	shortfall, err := StampShortfall(s.Symbol, s.Article, s.Sample)
	if err != nil {
		return StampVerdict{}, err
	}
	least := s.Mark.Sub(shortfall)
	if !least.IsPositive() {
		return StampVerdict{}, bad("mark", s.Mark.String()+" ‰", "a mark above the allowed shortfall of "+
			shortfall.String()+" ‰", units.ErrOutOfRange)
	}
	return StampVerdict{Mark: s.Mark, Shortfall: shortfall, Least: least, Assay: assay,
		Meets: assay.GreaterThanOrEqual(least)}, nil
}

// MeetsStampWorking shows the least assay that [MeetsStamp] asks for. Errors: those of MeetsStamp.
func MeetsStampWorking(assay decimal.Decimal, s Stamp) ([]working.Step, error) {
	v, err := MeetsStamp(assay, s)
	if err != nil {
		return nil, err
	}
	note := "The assay of " + assay.String() + " ‰ does not reach it."
	if v.Meets {
		note = "The assay of " + assay.String() + " ‰ reaches it."
	}
	mark, shortfall := v.Mark.InexactFloat64(), v.Shortfall.InexactFloat64()
	return []working.Step{{
		Formula: "f_min = M - s",
		Terms: []working.Term{{Symbol: "M", Meaning: "mark", Value: v.Mark.String() + " ‰", SI: mark},
			{Symbol: "s", Meaning: "allowed shortfall", Value: v.Shortfall.String() + " ‰", SI: shortfall}},
		Result: working.Term{Symbol: "f_min", Meaning: "least assay", Value: v.Least.String() + " ‰", SI: mark - shortfall},
		Source: "StampAct", Note: note,
	}}, nil
}
