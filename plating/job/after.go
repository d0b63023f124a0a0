package job

import (
	"fmt"
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

// after computes each bath of known content and volume once the load is through.
func (s *Sheet) after() error {
	first := map[string]int{}
	coats := s.Coats()
	for i, c := range coats {
		b := &c.Layer.Bath
		content := c.own.Content.Point()
		if b.Volume == 0 || content == 0 || b.Metal == "" {
			continue
		}
		r := &c.Result
		// Two coats from one tank draw on the same metal. Name, metal, content and volume together
		// tell that it is one tank; without a name nothing does, and each coat stands alone.
		key := fmt.Sprintf("%q %q %v %v", b.Name, b.Metal, content, b.Volume)
		k, met := first[key]
		if !met || b.Name == "" {
			k = len(s.Baths)
			first[key] = k
			s.Baths = append(s.Baths, After{Bath: c.Name, Metal: b.Metal, Soluble: !b.InsolubleAnode,
				Before: content})
		}
		a := &s.Baths[k]
		a.Coat += r.FineMass
		a.Charge += r.Charge
		if s.Rinsing != nil {
			a.Drips += s.drips(c)
			// From a strike straight into a bath of the same metal, what drips off the one comes to
			// the other: it is a gain here and not lost there.
			if i > 0 && s.onward(coats[i-1]) {
				a.Gained += s.drips(coats[i-1])
			}
		}
		if err := a.settle(c, content); err != nil {
			return err
		}
	}
	return nil
}

// drips is the metal that leaves with the rinses after a coat, what comes back
// from the drag-out tank taken off.
func (s *Sheet) drips(coat *Coat) units.Mass {
	for _, m := range s.Rinsing.Metals {
		if m.coat == coat && m.Onward {
			return m.High
		}
		if m.coat == coat {
			return m.Lost
		}
	}
	return coat.own.Content.Point().Of(s.Rinsing.Carried.High)
}

// settle finds what is left and what to add. With soluble anodes the coat's
// metal comes back from them, all but the difference of the two efficiencies,
// which only a book over many loads shows.
func (a *After) settle(c *Coat, content units.MassConcentration) error {
	b := &c.Layer.Bath
	// The balance of the metal: out with the drips, in from the bath before, and out with the coat
	// unless the anodes give it back. A gain beyond what left is not counted.
	out := a.Drips - a.Gained
	if !a.Soluble {
		out += a.Coat
	}
	out = max(0, out)
	had := content.Of(b.Volume)
	left := max(0, had-out)
	a.Now = units.MassConcentration(float64(left) / float64(b.Volume))
	a.Drawn = units.Ratio(float64(out) / float64(had))
	limit := b.DrawLimit
	if limit == 0 {
		limit = plating.DefaultDrawLimit
	}
	a.Loads = 0
	if a.Drawn > 0 {
		// Whole loads that fit into the share that may be drawn, this one counted. The factor
		// keeps a share that fits just so from losing a load to rounding.
		a.Loads = int(math.Min(1e6, math.Max(1, math.Floor(float64(limit)/float64(a.Drawn)*(1+1e-12)))))
	}
	salt, ok := c.salt()
	if !ok || left == 0 {
		return nil
	}
	a.need = ledger.Need{Metal: left, Volume: b.Volume, Mark: b.Volume, Target: content}
	feed, err := ledger.Replenish(a.need, b.Metal, salt)
	if err != nil {
		return err
	}
	a.Feed = &feed
	solution := b.Solution()
	a.Adding = solution.Adding(salt)
	return nil
}

// salt is what the layer's bath is fed with: what the job names, what the
// library's own bath is fed with, or for a bath of the shop's own the usual salt of
// gold, silver and copper cyanide (common practice, no source). Nothing is guessed where
// valence, pH or chemistry do not fit: gold(III), gold cyanide below the pH that
// it stands or of a pH that nobody gives, an alloy, a nickel or acid copper bath.
func (c *Coat) salt() (faraday.Formula, bool) {
	b := &c.Layer.Bath
	s := b.Solution()
	if plating.Deadly(s) != nil {
		return faraday.Formula{}, false
	}
	switch h := s.AllHazards(); {
	case !b.Salt.IsZero():
		return b.Salt, true
	case c.own.Library != "":
		return faraday.Formula{}, false
	// An alloy is fed with several salts, in a proportion that the coat does not tell. A bath
	// without cyanide has no usual salt of this kind.
	case b.Fine > 0 && b.Fine < 0.9 || !h.Has(plating.HazardCyanide):
		return faraday.Formula{}, false
	case b.Metal == "Au" && s.Valence == 1:
		return formula("KAu(CN)2")
	case b.Metal == "Ag":
		return formula("KAg(CN)2")
	case b.Metal == "Cu" && s.Valence == 1:
		return formula("CuCN")
	}
	return faraday.Formula{}, false
}

func formula(text string) (faraday.Formula, bool) {
	f, err := faraday.ParseFormula(text)
	return f, err == nil
}
