package alloys

import (
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A TradeTerm is a word of the United States jewellery guides for a coated article,
// with what the article must have to bear it. Zero fields ask for nothing. All
// coatings must cover every significant surface and be of reasonable
// durability; this library cannot judge that. Not legal advice.
type TradeTerm struct {
	Name       string
	LeastKarat Karat              // of the gold
	LeastFine  units.Length       // thickness throughout, as fine gold: see [GoldCoat]
	LeastShare units.MassFraction // of the gold alloy in the whole metal
	LeastBase  Fineness           // of the silver underneath
	Seen       origin.Seen        // the weakest of its figures
	Note       string
}

// CoatFacts is what is known of a coated article. Zero fields are not known
// and fail a term that asks for them.
type CoatFacts struct {
	Karat Karat              // of the gold
	Fine  units.Length       // least thickness anywhere, as fine gold
	Share units.MassFraction // of the gold alloy in the whole metal
	Base  Fineness           // of the silver underneath
}

// FTCTerms returns the terms for gold coatings of 16 CFR part 23 in the
// revision of 2018.
//
// The paragraph with gold plate and gold electroplate was not seen: their
// thickness is from memory (the older 7 and 100 millionths of an inch were read
// second hand and agree). Silver plate has no thickness in the guides.
//
// Source: [FTC23].
func FTCTerms() []TradeTerm {
	const um = units.Micrometre
	return []TradeTerm{
		{Name: "vermeil", LeastKarat: 10, LeastFine: 2.5 * um, LeastBase: 925, Seen: origin.Published,
			Note: "over sterling silver; a layer of base metal between must be disclosed"},
		{Name: "gold electroplate", LeastKarat: 10, LeastFine: 0.175 * um,
			Note: "about 7 millionths of an inch"},
		{Name: "heavy gold electroplate", LeastKarat: 10, LeastFine: 2.5 * um,
			Note: "about 100 millionths of an inch, read second hand"},
		{Name: "gold plate", LeastKarat: 10, LeastFine: 0.5 * um,
			Note: "by any process; about 20 millionths of an inch"},
		{Name: "gold flashed", LeastKarat: 10, Seen: origin.SecondHand,
			Note: "also gold washed: thinner than gold electroplate"},
		{Name: "gold filled", LeastKarat: 10, LeastShare: 0.05, Seen: origin.SecondHand,
			Note: "also rolled gold plate; under 1/20 the fraction must be shown"},
	}
}

// FTCTerm returns the term of a name, as "vermeil".
//
// Errors: a [*units.ValueError] for a name that is not among [FTCTerms].
//
// Source: [FTC23].
func FTCTerm(name string) (TradeTerm, error) {
	need := ""
	for i, t := range FTCTerms() {
		if t.Name == name {
			return t, nil
		}
		if i > 0 {
			need += ", "
		}
		need += t.Name
	}
	return TradeTerm{}, notInTable("term", units.Clip(name), "one of "+need)
}

// Shortfalls holds an article against the term and returns what falls short,
// in words; none when the term may be used as far as numbers go. A thickness
// or karat within a part in 1e9 of the limit meets it: that is the noise of
// float64 arithmetic, not a tolerance.
//
// Errors: a [*units.ValueError] for a negative or unbounded fact, a karat over
// 24, a fineness over 1000 or a share over 1.
//
// Source: [FTC23].
func (t TradeTerm) Shortfalls(f CoatFacts) ([]string, error) {
	if f.Karat != 0 {
		if err := f.Karat.Check("karat of the coat"); err != nil {
			return nil, err
		}
	}
	if f.Base != 0 {
		if err := f.Base.Check("fineness of the base"); err != nil {
			return nil, err
		}
	}
	if err := units.NonNegative("fine-gold thickness", f.Fine); err != nil {
		return nil, err
	}
	if err := units.Fraction("share of the gold alloy", f.Share); err != nil {
		return nil, err
	}
	var short []string
	under := func(have, least float64) bool { return have < least*(1-1e-9) }
	if under(float64(f.Karat), float64(t.LeastKarat)) {
		short = append(short, "gold of "+f.Karat.String()+", needs "+t.LeastKarat.String())
	}
	if under(float64(f.Fine), float64(t.LeastFine)) {
		short = append(short, "fine-gold thickness "+f.Fine.String()+", needs "+t.LeastFine.String())
	}
	if under(float64(f.Share), float64(t.LeastShare)) {
		short = append(short, "gold alloy "+f.Share.String()+" of the mass, needs "+t.LeastShare.String())
	}
	if under(float64(f.Base), float64(t.LeastBase)) {
		short = append(short, "silver of "+f.Base.String()+" underneath, needs "+t.LeastBase.String())
	}
	return short, nil
}
