package job

import (
	"fmt"
	"strconv"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// rinsed tells what leaves with the load and the water for it.
func (s *Sheet) rinsed(w *writer) {
	v := s.Rinsing
	if v == nil {
		return
	}
	out := w.section("Rinsing")
	out.say("The load carries %s out of each bath on %s of wetted area [%s].",
		span(figure(v.Carried.Low, units.Millilitre, 2, 1), figure(v.Carried.High, units.Millilitre, 2, 1)),
		figure(s.Wetted, units.SquareDecimetre, 3, 2), v.Carried.Source)
	if v.Carried.Note != "" {
		out.mark("i", v.Carried.Note)
	}
	if v.Warning != "" {
		out.mark("!", v.Warning)
	}
	if v.Water > 0 {
		out.say("To leave 1 part in %s: %s of water for this load in each rinse of %d stages in counterflow, the upper "+
			"end; a tenth to a half more for real mixing [common practice, no source].%s",
			strconv.FormatFloat(float64(v.Ratio), 'f', -1, 64), litres(v.Water), v.Stages, rinses(v))
	}
	// One sentence for each precious bath: what clings to the load, where it goes, and what is
	// lost at most.
	for _, m := range v.Metals {
		bath := m.Bath + ", at " + figure(m.Content, units.GramPerLitre, 3, 1)
		line := fmt.Sprintf("%s: %s to %s of %s cling to the load", bath, weight(m.Low), weight(m.High), m.Metal)
		if weight(m.Low) == weight(m.High) {
			line = fmt.Sprintf("%s: %s of %s cling to the load", bath, weight(m.High), m.Metal)
		}
		switch {
		case m.Onward:
			line += " and go with it into the next bath"
		case m.Back > 0:
			line += fmt.Sprintf("; the drag-out tank brings back %s if you pour %s of it into the bath %s and top the tank "+
				"up with deionised water. The bath has room for it: %s evaporate with each load. At most %s are lost",
				m.Back.Percent(1), litres(m.Poured), every(m.Loads), litres(m.Evaporates), weight(m.Lost))
		case m.Full:
			line += "; nothing evaporates from the bath, so it has no room for what the drag-out tank keeps: recover the " +
				"metal from that"
		default:
			line += ", lost unless a drag-out tank keeps them"
		}
		if m.LastWater > 0 {
			line += fmt.Sprintf(". The last water then holds %s at most", figure(m.LastWater, units.MilligramPerLitre, 2, 1))
		}
		out.say("%s.", line)
	}
}

// every says how often something is done.
func every(loads int) string {
	if loads == 1 {
		return "after every load"
	}
	return fmt.Sprintf("after every %d loads", loads)
}

func rinses(v *Rinsing) string {
	switch {
	case v.Singles > 0:
		return fmt.Sprintf(" A running rinse by itself takes %s. The sequence has %s and %s: %s in all, the final rinse "+
			"not counted.", litres(v.Single), counted(v.Rinses, "such row"),
			counted(v.Singles, "running rinse"), litres(v.Total))
	case v.Rinses < 2:
		return ""
	}
	return fmt.Sprintf(" The sequence has %d of them: %s.", v.Rinses, litres(v.Total))
}

// showsBaths reports whether the sheet has a part for the baths afterwards.
func (s *Sheet) showsBaths() bool {
	return len(s.Baths) > 0 && (s.Sequenced || s.Rinsing != nil || s.Quote != nil)
}

// upkeep says what to do for the baths afterwards.
func (s *Sheet) upkeep(w *writer) {
	if !s.showsBaths() {
		return
	}
	v := w.section("Baths afterwards")
	for i := range s.Baths {
		a := &s.Baths[i]
		v.task("%s: %s of %s, %s before; %s taken by the coats, %s left with the load%s; %s to the meter.", a.Bath,
			figure(a.Now, units.GramPerLitre, 4, 2), a.Metal, figure(a.Before, units.GramPerLitre, 4, 2), weight(a.Coat),
			weight(a.Drips), gained(a), figure(a.Charge, units.AmpereMinute, 3, 2))
		switch {
		// Soluble anodes give back what the coats take. Salt for the whole coat would make the
		// bath richer with each load.
		case a.Soluble:
			v.say("The anodes replace about what the coats take; only the difference of the two efficiencies moves the "+
				"metal: watch it by analysis and in the bath's book.%s", drips(a))
		case a.Feed != nil && a.Feed.SaltMass > 0:
			v.say("To bring it back: %s of %s (%s of %s), dissolved first, and %s to the mark. The bath stands %s before "+
				"it must be fed.%s", salted(a.Feed.SaltMass), a.Feed.Salt, weight(a.Feed.Metal), a.Metal, s.filler(a.Bath),
				loads(a.Loads), adding(a))
		default:
			v.say("To bring it back: %s of %s, in the form the bath is made up with. The bath stands %s before it must be "+
				"fed.",
				weight(a.Coat+a.Drips), a.Metal, loads(a.Loads))
		}
	}
}

// filler says what a bath is filled up with.
func (s *Sheet) filler(bath string) string {
	if s.Rinsing != nil {
		for _, m := range s.Rinsing.Metals {
			if m.Bath == bath && m.Poured > 0 {
				return "what the drag-out tank has to give, then water,"
			}
		}
	}
	return "water"
}

// drips says what makes good for what dripped off a bath with soluble anodes.
func drips(a *After) string {
	if a.Feed == nil || a.Feed.SaltMass == 0 {
		return ""
	}
	return fmt.Sprintf(" For what dripped off: %s of %s.", salted(a.Feed.SaltMass), a.Feed.Salt) + adding(a)
}

// adding says what to mind when the salt is weighed and added.
func adding(a *After) string {
	if a.Adding.Do == "" {
		return ""
	}
	return " " + plating.Sentences(a.Adding.Do) + " [" + a.Adding.Source + "]"
}

// gained says what came with the load from the bath before.
func gained(a *After) string {
	if a.Gained == 0 {
		return ""
	}
	return ", " + weight(a.Gained) + " came with it from the bath before"
}

func salted(m units.Mass) string { return figure(m, units.Gram, 3, 2) }

func loads(n int) string {
	switch {
	case n >= 1000:
		return "a thousand loads like this one and more"
	case n == 1:
		return "this load only"
	}
	return fmt.Sprintf("%d loads like this one", n)
}
