package main

import (
	"fmt"
	"strconv"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// rinsing prints what leaves with the load and the water for it.
func (s *sheet) rinsing(made *traveller.Sheet) {
	v := made.Rinsing
	if v == nil {
		return
	}
	s.line("")
	s.line("Rinsing")
	low, high := figure(v.Carried.Low, units.Millilitre, 2, 1), figure(v.Carried.High, units.Millilitre, 2, 1)
	carried := low + " to " + high
	if low == high {
		carried = low
	}
	s.wrap("   ", fmt.Sprintf("The load carries %s out of each bath on %s of wetted area [%s].", carried,
		figure(made.Wetted, units.SquareDecimetre, 3, 2), v.Carried.Source))
	if v.Carried.Note != "" {
		s.wrap("   i ", v.Carried.Note)
	}
	if v.Warning != "" {
		s.wrap("   ! ", v.Warning)
	}
	if v.Water > 0 {
		s.wrap("   ", fmt.Sprintf("To leave 1 part in %s: %s of water for this load in each rinse of %d stages in counterflow, the upper end; a tenth to a half more for real mixing "+
			"[common practice, no source].%s", strconv.FormatFloat(float64(v.Ratio), 'f', -1, 64), water(v.Water), v.Stages,
			rinses(v)))
	}
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
			line += fmt.Sprintf("; the drag-out tank brings back %s if you pour %s of it into the bath %s and top the tank up with deionised water. "+
				"The bath has room for it: %s evaporate with each load. At most %s are lost",
				m.Back.Percent(1), water(m.Poured), after(m.Loads), water(m.Evaporates), weight(m.Lost))
		case m.Full:
			line += "; nothing evaporates from the bath, so it has no room for what the drag-out tank keeps: recover the metal from that"
		default:
			line += ", lost unless a drag-out tank keeps them"
		}
		if m.LastWater > 0 {
			line += fmt.Sprintf(". The last water then holds %s at most", figure(m.LastWater, units.MilligramPerLitre, 2, 1))
		}
		s.wrap("   ", line+".")
	}
}

// after says how often something is done.
func after(loads int) string {
	if loads == 1 {
		return "after every load"
	}
	return fmt.Sprintf("after every %d loads", loads)
}

func rinses(v *traveller.Rinsing) string {
	switch {
	case v.Singles > 0:
		return fmt.Sprintf(" A running rinse by itself takes %s. The sequence has %s and %s: %s in all, the final rinse not counted.", water(v.Single), counted(v.Rinses, "such row"),
			counted(v.Singles, "running rinse"), water(v.Total))
	case v.Rinses < 2:
		return ""
	}
	return fmt.Sprintf(" The sequence has %d of them: %s.", v.Rinses, water(v.Total))
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// water writes an amount of water as it is measured out.
func water(v units.Volume) string {
	if v < units.Litre {
		return figure(v, units.Millilitre, 2, 0)
	}
	return figure(v, units.Litre, 2, 1)
}

// showsBaths reports whether the sheet has a part for the baths afterwards.
func showsBaths(made *traveller.Sheet) bool {
	return len(made.Baths) > 0 && (len(made.Tanks) > 0 || made.Rinsing != nil || made.Quote != nil)
}

// baths prints what to do for the baths afterwards.
func (s *sheet) baths(made *traveller.Sheet) {
	if !showsBaths(made) {
		return
	}
	s.line("")
	s.line("Baths afterwards")
	for i := range made.Baths {
		a := &made.Baths[i]
		s.wrap("   [ ] ", fmt.Sprintf("%s: %s of %s, %s before; %s taken by the coats, %s left with the load%s; %s to the meter.", a.Bath, figure(a.Now, units.GramPerLitre, 4, 2), a.Metal,
			figure(a.Before, units.GramPerLitre, 4, 2), weight(a.Coat), weight(a.Drips), gained(a), figure(a.Charge,
				units.AmpereMinute, 3, 2)))
		switch {
		case a.Soluble:
			s.wrap("       ", "The anodes replace about what the coats take; only the difference of the two efficiencies moves the metal: watch it by analysis and in the bath's book."+drips(a))
		case a.Feed != nil && a.Feed.SaltMass > 0:
			s.wrap("       ", fmt.Sprintf("To bring it back: %s of %s (%s of %s), dissolved first, and %s to the mark. The bath stands %s before it must be fed.",
				salted(a.Feed.SaltMass), a.Feed.Salt, weight(a.Feed.Metal), a.Metal, filler(made, a.Bath), loads(a.Loads))+
				adding(a))
		default:
			s.wrap("       ", fmt.Sprintf("To bring it back: %s of %s, in the form the bath is made up with. The bath stands %s before it must be fed.", weight(a.Coat+a.Drips), a.Metal, loads(a.Loads)))
		}
	}
}

// filler says what a bath is filled up with.
func filler(made *traveller.Sheet, bath string) string {
	if made.Rinsing != nil {
		for _, m := range made.Rinsing.Metals {
			if m.Bath == bath && m.Poured > 0 {
				return "what the drag-out tank has to give, then water,"
			}
		}
	}
	return "water"
}

// drips says what makes good for what dripped off a bath with soluble anodes.
func drips(a *traveller.After) string {
	if a.Feed == nil || a.Feed.SaltMass == 0 {
		return ""
	}
	return fmt.Sprintf(" For what dripped off: %s of %s.", salted(a.Feed.SaltMass), a.Feed.Salt) + adding(a)
}

// adding says what to mind when the salt is weighed and added.
func adding(a *traveller.After) string {
	if a.Adding.Do == "" {
		return ""
	}
	return " " + plating.Sentences(a.Adding.Do) + " [" + a.Adding.Source + "]"
}

// gained says what came with the load from the bath before.
func gained(a *traveller.After) string {
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

// price prints the quote and what it depends on.
func (s *sheet) price(made *traveller.Sheet) {
	for _, n := range made.Notes {
		s.line("")
		s.note(n)
	}
	if made.Quote == nil {
		return
	}
	s.line("")
	s.line("Price")
	for _, l := range strings.Split(strings.TrimRight(made.Quote.Text(), "\n"), "\n") {
		s.line("   %s", l)
	}
	var most []string
	for i, c := range made.Swings {
		if i == 3 || c.Change.Round(made.Quote.Currency.Places+1).IsZero() {
			break
		}
		most = append(most, fmt.Sprintf("%s by %s %s", c.Input, c.Change.Round(made.Quote.Currency.Places+1),
			made.Quote.Currency))
	}
	if len(most) > 0 {
		s.wrap("   ", "One per cent more moves the total: "+strings.Join(most, ", ")+".")
	}
}
