package main

import (
	"fmt"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// processTank is a tank that does not plate.
func processTank(c *sequence.Card) tank {
	t := tank{Number: c.Number, Name: c.Name, Role: c.Kind.String(), Caution: plating.TankLine(c.Cautions)}
	if c.Chemistry != c.Name {
		t.Bath = c.Chemistry
	}
	add := func(what, value, why string) { t.Rows = append(t.Rows, pageRow{what, value, why, true}) }
	if c.Temperature.Given() {
		add("at", celsius(c.Temperature), c.Temperature.Origin())
	}
	if c.Set > 0 {
		why := c.Polarity.String()
		if c.AmpsTop > 0 {
			why += fmt.Sprintf("; %s to %s for this load (%s)", amps(c.AmpsLow), amps(c.AmpsTop), c.Window.Origin())
		}
		add("set", amps(c.Amps), why)
	}
	if c.Volts.Given() {
		add("expect", c.Volts.String(), c.Volts.Origin())
	}
	if c.Time.Typical > 0 {
		add("time", immersion(c.Time), c.TimeBy+from(c.TimeFrom))
	}
	if c.Water != "" {
		t.Tick, t.Bath = true, c.Water
		for _, l := range c.Look {
			t.Bath += "; " + l
		}
		return t
	}
	t.card(c)
	return t
}

// card adds what a tank asks for beside figures.
func (t *tank) card(c *sequence.Card) {
	add := func(what, value, why string) { t.Rows = append(t.Rows, pageRow{what, value, why, false}) }
	if c.LiveEntry {
		add("entry", "LIVE", liveEntry)
	}
	plates := c.Kind == sequence.Strike || c.Kind == sequence.Underplate || c.Kind == sequence.Plate
	switch {
	case c.Agitation.Text != "":
		add("move", "", c.Agitation.String())
	case plates:
		add("move", notGiven, "look up how this bath is stirred")
	}
	switch {
	case c.Anode.Text == "" && c.AnodeHigh == 0 && plates:
		add("anode", notGiven, "look up its kind and area before you start")
	case c.Anode.Text != "" || c.AnodeHigh > 0:
		area := ""
		if c.AnodeHigh > 0 {
			area = area2(c.AnodeLow) + " to " + area2(c.AnodeHigh)
			if c.AnodeLow == c.AnodeHigh {
				area = area2(c.AnodeLow)
			}
		}
		what := "anode"
		if !plates {
			what = "counter"
		}
		add(what, area, metal(c.Anode))
	}
	for _, l := range c.Look {
		t.Rows = append(t.Rows, pageRow{"look", "", l, true})
	}
}

// spread adds how far the coat may be off.
func (t *tank) spread(l *plating.Layer, below units.Length, p *traveller.Spread) {
	if p.Known {
		value, why := micrometres(p.Thinnest.Low+below)+" to "+micrometres(p.Thinnest.High+below), "at the thinnest spot"+
			withBelow(below)+", as the efficiency may be"
		if l.Time == 0 {
			value, why = clock(p.Time.Low)+" to "+clock(p.Time.High),
				"as the efficiency may be: wait for the longer time, or weigh a trial piece"
		}
		t.Rows = append(t.Rows, pageRow{"between", value, why, false})
	}
	t.Source += "; " + p.Trust()
}

// noted leaves out the notes that have rows of their own.
func noted(notes []plating.Note) []plating.Note {
	return slices.DeleteFunc(slices.Clone(notes), func(n plating.Note) bool {
		return n.Code != "" &&
			n.Severity == plating.SeverityInfo
	})
}
