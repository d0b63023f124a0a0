package job

import (
	"math"
	"slices"
	"strconv"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// A Claim is what may be said of the gold on a load: the karat of the deposit and how
// much fine gold lies at the thinnest spot. Only coats whose share of gold is given
// count; a bath that lists no constituents makes no claim.
type Claim struct {
	Coats    []int // that count, by their place among [Sheet.Coats], the outer one last
	Fineness alloys.Fineness
	Karat    alloys.Karat // of the poorest of these coats

	// Fine-gold equivalent thickness at the thinnest spot, all these coats together: as
	// estimated, and at the low end of the efficiency; Low is 0 where that is not known.
	Fine, Low units.Length

	Terms   []alloys.TradeTerm // that these figures reach; those of thickness by Low, where it is known
	Missing string             // what is not given, so that no claim can be made; "" for a claim
}

// claim works out what may be said of the outer gold; nil when the last coat is of
// another metal.
//
//	K = 24·w
//	t_f = Σ t·w·ρ/ρ_f
//
//	w    share of gold in the mass of the deposit, with what is built in
//	t    local thickness of each coat at the thinnest spot   [m]
//	ρ    density of the deposit                              [kg/m³]
//	ρ_f  density of fine gold                                [kg/m³]
//
// The coats below count as they count towards the minimum thickness. That they are thinnest at
// one spot makes the sum too low rather than too high.
//
// Source: [FinenessMarks], [ISO10713], [FTC23].
func (s *Sheet) claim() error {
	list := s.Coats()
	last := len(list) - 1
	if last < 0 || list[last].Layer.Bath.Metal != "Au" {
		return nil
	}
	// The sum goes from the outer coat downwards and ends at the first coat of another metal: gold
	// below that is not part of the outer gold. Coats below count only when the layer counts them
	// towards its minimum thickness.
	s.Claim = &Claim{}
	c := s.Claim
	lowKnown := true
	for i := last; i >= 0 && (i == last || list[last].Below > 0) && list[i].Layer.Bath.Metal == "Au"; i-- {
		b := &list[i].Layer.Bath
		// Without constituents the share of gold is unknown. For the outer coat that ends the
		// claim; a coat further in is left out, which makes the claim smaller, never larger.
		if !list[i].listed {
			if i == last {
				c.Missing = "the bath of " + list[i].Name + ` lists no constituents. Have the deposit assayed, ` +
					`or ask who makes the bath, and give "constituents"`
				return nil
			}
			continue
		}
		coat := alloys.GoldCoat{Gold: b.Fine, Density: b.Deposit.Density}
		fine, err := alloys.FineThickness(list[i].Result.Thinnest, coat)
		if err != nil {
			return err
		}
		c.Fine += fine
		if v := &list[i].Spread; v.Known {
			if fine, err = alloys.FineThickness(v.Thinnest.Low, coat); err != nil {
				return err
			}
		} else {
			lowKnown = false
		}
		c.Low += fine
		f := alloys.NewFineness(b.Fine)
		// The poorest coat sets the karat of all: a mean would claim more than the poorest one
		// holds.
		if c.Fineness == 0 || f < c.Fineness {
			c.Fineness, c.Karat = f, f.Karat()
		}
		c.Coats = append(c.Coats, i)
	}
	slices.Reverse(c.Coats)
	// Terms are held against the low end of the efficiency, not against the middle. Where that
	// end is not known for every coat, c.Low holds the estimate in its place and is cleared
	// below, so that the sheet does not print it as a low end.
	facts := alloys.CoatFacts{Karat: c.Karat, Fine: c.Low}
	if !lowKnown {
		c.Low = 0
	}
	if s.Base == sequence.SterlingSilver {
		facts.Base = 925
	}
	for _, t := range alloys.FTCTerms() {
		short, err := t.Shortfalls(facts)
		if err != nil {
			return err
		}
		if len(short) == 0 {
			c.Terms = append(c.Terms, t)
		}
	}
	thin := func(t alloys.TradeTerm) bool { return t.LeastFine == 0 }
	if slices.ContainsFunc(c.Terms, func(t alloys.TradeTerm) bool { return !thin(t) }) {
		c.Terms = slices.DeleteFunc(c.Terms, thin) // the word for what is thinner than the others
	}
	return nil
}

// down writes a number cut, not rounded, to so many parts of one: no claim is rounded up.
func down(v, parts float64) string {
	// The factor keeps a value that lies on a step from falling below it by a rounding of the
	// floating-point number; it is far too small to lift one over the next step.
	return strconv.FormatFloat(math.Floor(v*parts*(1+1e-12))/parts, 'f', -1, 64)
}

// Lines says the claim in sentences, for text and page alike; none for no gold.
func (c *Claim) Lines() []string {
	if c == nil {
		return nil
	}
	if c.Missing != "" {
		return []string{"No karat can be claimed: " + c.Missing + "."}
	}
	low := ""
	if c.Low > 0 && c.Low < c.Fine*(1-1e-9) {
		low = ", " + c.Low.Text(units.Micrometre, 2) + " at the low end of the efficiency"
	}
	lines := []string{"Gold of " + down(float64(c.Karat), 10) + " karat (" + down(float64(c.Fineness), 1) +
		" ‰), fine-gold equivalent " +
		c.Fine.Text(units.Micrometre, 2) + " at the thinnest spot" + low +
		". Measure before you mark. [FinenessMarks, ISO10713]"}
	if len(c.Terms) == 0 {
		return append(lines, "No term of the United States guides for gold coatings is reached. [FTC23]")
	}
	words := ""
	for i, t := range c.Terms {
		if i > 0 {
			words += ", "
		}
		words += t.Name + " (" + t.Seen.String() + ")"
	}
	return append(lines, "These figures reach, in the United States guides: "+words+
		". Cover and wear are not judged; other countries have other rules; this is no legal advice. [FTC23]")
}
