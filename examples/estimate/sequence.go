package main

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A stop is what a sequence knows of a coat's tank beyond the estimate.
type stop struct {
	card   sequence.Card
	spread traveller.Spread
	power  traveller.Power
	part   bool // the coat has an area of its own
	lent   bool // pH is that of a bath of like chemistry
}

// sequence prints the tanks one after the other.
func (s *sheet) sequence(made *traveller.Sheet) {
	p := &made.Practice
	standard := p.Title
	if p.Standard != "" {
		standard = p.Standard + ", " + standard
	}
	if standard != "" {
		s.wrap("Sequence  ", fmt.Sprintf("for %s to %s: %s (%s); its steps here are %s. When unsure: %s. [%s]",
			made.Job.Base, finish(made), standard, p.Seen, p.Detail, p.Unsure, p.Source))
	}
	for _, w := range p.Reasons {
		s.wrap("    why   ", w.String())
	}
	s.wrap("          ", confidence(made))
	s.wrap("          ", atTheLine(made))
	s.wrap("          ", gas(made))
	for _, f := range made.Findings {
		s.wrap("   "+mark(f.Severity)+" ", f.Sentence())
	}
	s.line("")
	for i := range made.Cards {
		c := &made.Cards[i]
		if k := made.Coats[i]; k >= 0 {
			l := &made.Job.Layers[k]
			s.layer(c.Number, k, &made.Result.Layers[k], c.Cautions, &stop{*c, made.Spreads[k], made.Powers[k],
				made.Result.Layers[k].Layer.Area != made.Area, l.PHLent()})
		} else {
			s.wrap(fmt.Sprintf("%d. ", c.Number), fmt.Sprintf("%s (%s)", strings.ToUpper(c.Name), c.Kind))
			s.caution(c.Cautions)
			s.process(c)
		}
		s.line("")
	}
}

// refused prints what is left of a sequence that must not be run: the names of
// its tanks, and nothing to set.
func (s *sheet) refused(made *traveller.Sheet) {
	s.line("Tanks as they stand")
	for i, name := range asTheyStand(made) {
		s.wrap(fmt.Sprintf("  %2d. ", i+1), name)
	}
	s.line("")
	for _, n := range made.Beside() {
		s.wrap("   "+mark(n.Severity)+" ", n.Text)
	}
	s.wrap("", "No amps, no minutes and no price are printed before this is mended.")
}

// asTheyStand names the tanks and marks those that a stop concerns.
func asTheyStand(made *traveller.Sheet) []string {
	if len(made.Tanks) == 0 {
		return coatsAsTheyStand(made)
	}
	list := make([]string, len(made.Tanks))
	for i := range made.Tanks {
		t := &made.Tanks[i]
		list[i] = orText(t.Name, orText(t.Process.Chemistry, orText(t.Bath.Name, t.Kind.String()))) + " (" + t.Kind.String() +
			")"
		for _, f := range made.Findings {
			if f.Severity == plating.SeverityStop && slices.Contains(f.Tanks, i) {
				list[i] += ": STOP"
				break
			}
		}
	}
	return list
}

// coatsAsTheyStand names the coats of a job without a sequence in the same way.
func coatsAsTheyStand(made *traveller.Sheet) []string {
	var list []string
	for i := range made.Result.Layers {
		lr := &made.Result.Layers[i]
		text := name(&lr.Layer, i) + " (" + lr.Layer.Role.String() + ")"
		if slices.ContainsFunc(lr.Notes, func(n plating.Note) bool { return n.Severity == plating.SeverityStop }) {
			text += ": STOP"
		}
		list = append(list, text)
	}
	return list
}

// atTheLine says how long the load keeps somebody at the line.
func atTheLine(made *traveller.Sheet) string {
	line := fmt.Sprintf("At the line for about %s (%s to %s): immersion times", roughly(made.Line.Typical), roughly(made.Line.Low),
		roughly(made.Line.High))
	if p := made.Job.Price; p != nil && p.Handling > 0 {
		line += fmt.Sprintf(" and %s from tank to tank", roughly(p.Handling))
	}
	line += ", the rinses not counted."
	if made.Oven.Typical > 0 {
		line += fmt.Sprintf(" The oven takes %s to %s on top.", roughly(made.Oven.Low), roughly(made.Oven.High))
	}
	return line
}

func finish(made *traveller.Sheet) string {
	if made.Job.Finish == sequence.FinishUnknown {
		return "the coats of the job"
	}
	return made.Job.Finish.String()
}

// confidence says how far the sheet may be trusted.
func confidence(made *traveller.Sheet) string {
	var weak []string
	for i := range made.Cards {
		c := &made.Cards[i]
		if c.Confidence == origin.FromMemory && c.Water == "" && c.Kind != sequence.Dry {
			weak = append(weak, fmt.Sprint(c.Number))
		}
	}
	if len(weak) == 0 {
		return "Every tank's figures are the shop's own or published. A trial piece still tells more than a table."
	}
	return fmt.Sprintf("Figures from memory stand at tank %s: run one piece through, look and weigh, before the rest.",
		strings.Join(weak, ", "))
}

// gas says where most hydrogen comes off and what air that asks for at least.
func gas(made *traveller.Sheet) string {
	g := made.Gas
	if g == nil || g.Flow.Hydrogen == 0 {
		return "No tank gives off hydrogen worth speaking of."
	}
	return fmt.Sprintf("Most hydrogen comes off at tank %d, up to %s. Were it mixed at once, %s of fresh air would keep it under a quarter of the lower flammable limit; "+
		"above a tank it is not: draw off there, several times as much. [HydrogenPractice]", g.Tank+1, flow(g.Flow.Hydrogen),
		flow(g.Flow.Air))
}

func flow(v electrical.Flow) string {
	x := v.In(electrical.LitrePerMinute)
	return strconv.FormatFloat(x, 'f', decimals(x, 2), 64) + " L/min"
}

// process prints a tank that does not plate.
func (s *sheet) process(c *sequence.Card) {
	if c.Water != "" {
		s.row("water", "", c.Water)
	} else if c.Chemistry != "" && c.Chemistry != c.Name {
		s.wrap("   holds ", c.Chemistry)
	}
	if c.Temperature.Given() {
		s.row("at", celsius(c.Temperature), "("+c.Temperature.Origin()+")")
	}
	if c.Set > 0 {
		why := fmt.Sprintf("%s, at %s", c.Polarity, figure(c.Set, units.AmperePerSquareDecimetre, 2, 2))
		if c.AmpsTop > 0 {
			why += fmt.Sprintf("; %s to %s for this load (%s)", amps(c.AmpsLow), amps(c.AmpsTop), c.Window.Origin())
		}
		s.row("set", amps(c.Amps), why)
	}
	if c.Volts.Given() {
		s.row("expect", c.Volts.String(), "("+c.Volts.Origin()+")")
	}
	if c.Time.Typical > 0 {
		s.row("time", immersion(c.Time), c.TimeBy+from(c.TimeFrom))
	}
	s.card(c, nil)
}

// card prints what a tank asks for beside figures.
func (s *sheet) card(c *sequence.Card, in *stop) {
	if c.LiveEntry {
		s.row("entry", "LIVE", liveEntry)
	}
	plates := c.Kind == sequence.Strike || c.Kind == sequence.Underplate || c.Kind == sequence.Plate
	if in != nil {
		for _, r := range in.more() {
			s.row(r.What, r.Value, r.Why)
		}
	}
	switch {
	case c.Agitation.Text != "":
		s.row("move", "", c.Agitation.String())
	case plates:
		s.row("move", notGiven, "look up how this bath is stirred")
	}
	switch {
	case c.Anode.Text == "" && c.AnodeHigh == 0 && plates:
		s.row("anode", notGiven, "look up its kind and area before you start")
	case c.Anode.Text != "" || c.AnodeHigh > 0:
		what := "anode"
		if !plates {
			what = "counter"
		}
		area := ""
		if c.AnodeHigh > 0 {
			area = area2(c.AnodeLow) + " to " + area2(c.AnodeHigh)
			if c.AnodeLow == c.AnodeHigh {
				area = area2(c.AnodeLow)
			}
		}
		s.row(what, area, metal(c.Anode))
	}
	for _, l := range c.Look {
		s.row("look", "", l)
	}
}

// liveEntry says how a strike is entered.
const liveEntry = "switch the current on before the piece touches the bath"

// rest says what the current does that deposits no metal, where that is most of
// it; "" where it is not.
func rest(lr *plating.LayerResult) (what, why string) {
	for _, n := range lr.Notes {
		if n.Code == plating.CodeLowEfficiency {
			return (1 - lr.Result.Efficiency).Percent(0), "of the current makes hydrogen: " + n.Do
		}
	}
	return "", ""
}

// more is what a coat's tank says of its acidity and of the rectifier.
func (in *stop) more() []pageRow {
	var rows []pageRow
	if ph := in.card.PH; ph.Given() {
		why := ph.Origin()
		if in.lent {
			why = "not given for this bath; one of like chemistry has it (" + why + ")"
		}
		rows = append(rows, pageRow{"pH", span(ph.Low.String(), ph.High.String()), why, true})
	}
	if p := in.power; p.High > 0 {
		watts := func(v units.Power) string { return figure(v, units.Watt, 2, 1) }
		why := "from the rectifier, at the volts expected"
		switch {
		case p.Warms >= 0.05:
			why += fmt.Sprintf("; warms the bath by %.1f K at most", float64(p.Warms))
		case p.Warms > 0:
			why += "; the bath does not warm by it"
		}
		rows = append(rows, pageRow{"power", span(watts(p.Low), watts(p.High)), why, false})
	}
	return rows
}

func span(low, high string) string {
	if low == high {
		return low
	}
	return low + " to " + high
}

const notGiven = "not given"

func area2(a units.Area) string { return figure(a, units.SquareCentimetre, 2, 0) }

// metal names what a counter electrode is made of.
func metal(w baths.Words) string {
	if w.Text == "" {
		return "of what is not given: look it up before you start"
	}
	return w.String()
}

// asWellAs names the other figure that is in a spread: times that lie further apart
// than the efficiencies do.
func asWellAs(p *traveller.Spread) string {
	if float64(p.Time.High)*float64(p.Efficiency.Low) > 1.001*float64(p.Time.Low)*float64(p.Efficiency.High) {
		return " and the density the deposit may have"
	}
	return ""
}

// spread prints how far the coat may be off.
func (s *sheet) spread(l *plating.Layer, below units.Length, p *traveller.Spread) {
	switch {
	case !p.Known:
	case l.Time == 0:
		s.row("between", clock(p.Time.Low),
			fmt.Sprintf("and %s, for an efficiency of %s down to %s%s: wait for the longer one, or weigh a trial piece",
				clock(p.Time.High),
				p.Efficiency.High.Percent(0), p.Efficiency.Low.Percent(0), asWellAs(p)))
	default:
		s.row("between", micrometres(p.Thinnest.Low+below),
			fmt.Sprintf("and %s at the thinnest spot%s, for an efficiency of %s up to %s", micrometres(p.Thinnest.High+below),
				withBelow(below),
				p.Efficiency.Low.Percent(0), p.Efficiency.High.Percent(0)))
	}
	s.wrap("   trust: ", p.Trust())
}

func withBelow(below units.Length) string {
	if below == 0 {
		return ""
	}
	return " with what lies below"
}

func from(o sequence.Seenness) string {
	if o.Source == "" && o.Seen == origin.FromMemory {
		return ""
	}
	return " (" + o.String() + ")"
}

// celsius writes a band of temperatures in whole degrees.
func celsius(r baths.Range[units.Temperature]) string {
	one := func(t units.Temperature) string { return t.Text(units.CelsiusScale, 0) }
	if r.Low == r.High {
		return one(r.Low)
	}
	return rangeOf(r.Low, r.High, one)
}

// immersion writes a usual immersion time.
func immersion(t baths.Band[units.Duration]) string {
	if t.Low == t.High {
		return roughly(t.Typical)
	}
	return roughly(t.Low) + " to " + roughly(t.High)
}

// roughly writes a time that nobody stops with a watch.
func roughly(t units.Duration) string {
	switch {
	case t < 120:
		return t.Text(units.Second, 0)
	case t < 7200:
		return t.Text(units.Minute, 0)
	}
	return t.Text(units.Hour, 1)
}
