package traveller

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
	for i := range s.Result.Layers {
		l := &s.Job.Layers[i]
		b := &l.Bath
		if b.Volume == 0 || b.Content == 0 || b.Metal == "" {
			continue
		}
		r := &s.Result.Layers[i].Result
		key := fmt.Sprintf("%q %q %v %v", b.Name, b.Metal, b.Content, b.Volume)
		k, met := first[key]
		if !met || b.Name == "" {
			k = len(s.Baths)
			first[key] = k
			s.Baths = append(s.Baths, After{Bath: title(&l.Layer, i), Metal: b.Metal, Soluble: !b.InsolubleAnode,
				Before: b.Content})
		}
		a := &s.Baths[k]
		a.Coat += r.FineMass
		a.Charge += r.Charge
		if s.Rinsing != nil {
			a.Drips += s.drips(i)
			if i > 0 && s.onward(i-1) {
				a.Gained += s.drips(i - 1)
			}
		}
		if err := a.settle(l); err != nil {
			return err
		}
	}
	return nil
}

// drips is the metal that leaves with the rinses after a coat, what comes back
// from the drag-out tank taken off.
func (s *Sheet) drips(coat int) units.Mass {
	for _, m := range s.Rinsing.Metals {
		if m.coat == coat && m.Onward {
			return m.High
		}
		if m.coat == coat {
			return m.Lost
		}
	}
	return s.Job.Layers[coat].Bath.Content.Of(s.Rinsing.Carried.High)
}

// settle finds what is left and what to add. With soluble anodes the coat's
// metal comes back from them, all but the difference of the two efficiencies,
// which only a book over many loads shows.
func (a *After) settle(l *Layer) error {
	b := &l.Bath
	out := a.Drips - a.Gained
	if !a.Soluble {
		out += a.Coat
	}
	out = max(0, out)
	had := b.Content.Of(b.Volume)
	left := max(0, had-out)
	a.Now = units.MassConcentration(float64(left) / float64(b.Volume))
	a.Drawn = units.Ratio(float64(out) / float64(had))
	limit := b.DrawLimit
	if limit == 0 {
		limit = plating.DefaultDrawLimit
	}
	a.Loads = 0
	if a.Drawn > 0 {
		a.Loads = int(math.Min(1e6, math.Max(1, math.Floor(float64(limit)/float64(a.Drawn)*(1+1e-12)))))
	}
	salt, ok := l.salt()
	if !ok || left == 0 {
		return nil
	}
	a.need = ledger.Need{Metal: left, Volume: b.Volume, Mark: b.Volume, Target: b.Content}
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
func (l *Layer) salt() (faraday.Formula, bool) {
	b := &l.Bath
	s := b.Solution()
	if plating.Deadly(s) != nil {
		return faraday.Formula{}, false
	}
	switch h := s.AllHazards(); {
	case !b.Salt.IsZero():
		return b.Salt, true
	case l.Whole:
		return l.Library.Salt, !l.Library.Salt.IsZero()
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
