package job

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/laydown/plating"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

const (
	notGiven = "not given"
	// liveEntry says how a strike is entered.
	liveEntry = "switch the current on before the piece touches the bath"
)

// stop is one tank: what to mind first, then the settings in the order in which they are
// made, then what comes of them.
func (s *Sheet) stop(w *writer, i int) {
	t, c := &s.Stops[i].Tank, s.Stops[i].Coat
	kind := t.Kind.String()
	if c != nil {
		kind = c.Layer.Role.String()
	}
	// A tank is a section of its own, which the end of a page does not cut.
	heading := fmt.Sprintf("%d. %s", t.Number, t.Name)
	if t.Name != kind {
		heading += " (" + kind + ")"
	}
	v := w.section(heading)
	v.Tank = true
	// Cautions stand above the settings: they are read before the hand is on the rectifier.
	if line := plating.TankLine(t.Cautions); line != "" {
		v.mark("!", line)
	}
	if c == nil {
		process(v, t)
		return
	}
	s.coat(v, t, c)
	if !s.Sequenced {
		s.between(v, i)
	}
}

// process is a tank that does not plate.
func process(v *Section, t *sequence.Card) {
	if t.Water != "" {
		v.Small = true
		v.Items = append(v.Items, SheetItem{What: "water", Text: t.Water, Tick: true})
	} else if t.Chemistry != "" && t.Chemistry != t.Name {
		v.fact("holds", "", t.Chemistry)
	}
	if t.Temperature.Given() {
		v.row("at", bandOf(t.Temperature), "("+t.Temperature.Origin()+")")
	}
	if t.Set > 0 {
		why := fmt.Sprintf("%s, at %s", t.Polarity, density(t.Set))
		if t.AmpsTop > 0 {
			why += fmt.Sprintf("; %s to %s for this load (%s)", amps(t.AmpsLow), amps(t.AmpsTop), t.Window.Origin())
		}
		v.row("set", amps(t.Amps), why)
	}
	if t.Volts.Given() {
		v.row("expect", t.Volts.String(), "("+t.Volts.Origin()+")")
	}
	if t.Time.Typical > 0 {
		from := ""
		if o := t.TimeFrom; o.Source != "" || o.Seen != origin.FromMemory {
			from = " (" + o.String() + ")"
		}
		v.row("time", immersionOf(t.Time), t.TimeBy+from)
	}
	around(v, t, nil)
}

// around is what a tank asks for beside figures.
func around(v *Section, t *sequence.Card, more func()) {
	plates := deposits(t.Kind)
	if t.LiveEntry {
		v.check("entry", "LIVE", liveEntry)
	}
	if more != nil {
		more()
	}
	switch {
	case t.Agitation.Text != "":
		v.check("move", "", t.Agitation.String())
	case plates:
		v.check("move", notGiven, "look up how this bath is stirred")
	}
	switch {
	// A tank that plates needs an anode whether the bath names one or not. A row that says "not
	// given" is seen; a row that is left out is not missed.
	case t.Anode.Text == "" && t.AnodeHigh == 0 && plates:
		v.check("anode", notGiven, "look up its kind and area before you start")
	case t.Anode.Text != "" || t.AnodeHigh > 0:
		what, area, of := "anode", "", "of what is not given: look it up before you start"
		if !plates {
			what = "counter"
		}
		if t.AnodeHigh > 0 {
			area = span(figure(t.AnodeLow, units.SquareCentimetre, 2, 0), figure(t.AnodeHigh, units.SquareCentimetre, 2, 0))
		}
		if t.Anode.Text != "" {
			of = t.Anode.String()
		}
		v.check(what, area, of)
	}
	for _, l := range t.Look {
		v.Items = append(v.Items, SheetItem{What: "look", Text: l, Tick: true, Blank: t.Water == ""})
	}
}

// coat is a tank that plates.
func (s *Sheet) coat(v *Section, t *sequence.Card, c *Coat) {
	b, r := &c.Layer.Bath, &c.Result
	v.fact("bath", "", orText(b.Name, "not named"))
	// What is to be minded on the way in stands first: it is too late for it once the piece is
	// in.
	for _, n := range onTheWay(c.Before) {
		if n.Severity > plating.SeverityInfo || n.Code == "" {
			v.note(n)
		}
	}
	for _, n := range c.Notes {
		if n.Severity > plating.SeverityInfo {
			v.note(n)
		}
	}
	if c.Below > 0 {
		v.mark("i", fmt.Sprintf("of the minimum thickness of %s, %s lie below already", micrometres(c.Ordered),
			micrometres(c.Below)))
	}
	s.settings(v, c)
	around(v, t, func() { more(v, t, c) })
	v.fact("gives", micrometres(r.Thinnest), fmt.Sprintf("at the thinnest spot%s, %s on average (ratio %s, %s)",
		c.together(),
		micrometres(r.Average), plain(float64(c.Layer.Distribution.MinToAverage))+sure(&c.Layer.Distribution),
		orText(c.Layer.Distribution.Basis, "basis not said")))
	v.fact("takes", weight(r.FineMass), fmt.Sprintf("of %s, at a current efficiency of %s", orText(b.Metal, "metal"),
		r.Efficiency.Percent(decimals(100*float64(r.Efficiency), 2))))
	for _, n := range c.Notes {
		// A low efficiency is told as gas and not as a warning: in some baths it is how they work.
		if n.Code == plating.CodeLowEfficiency {
			v.fact("gas", (1 - r.Efficiency).Percent(0), "of the current makes hydrogen: "+n.Do)
		}
	}
	switch {
	// Without content and volume nothing can be said of what is left. With soluble anodes the
	// content hardly moves; with the others the coat has taken its metal from the solution.
	case r.Warnings.Has(plating.WarnMetalUnknown):
	case !b.InsolubleAnode:
		v.fact("leaves", figure(b.Content, units.GramPerLitre, 4, 2),
			fmt.Sprintf("of %s about as before, in %s: the anodes replace what the coat takes", orText(b.Metal, "metal"),
				figure(b.Volume, units.Litre, 2, 1)))
	default:
		v.fact("leaves", figure(r.ContentLeft, units.GramPerLitre, 4, 2), fmt.Sprintf("of %s before, in %s",
			figure(b.Content, units.GramPerLitre, 4, 2), figure(b.Volume, units.Litre, 2, 1)))
	}
	c.between(v)
	for _, n := range c.Notes {
		if n.Severity == plating.SeverityInfo && n.Code == "" {
			v.note(n)
		}
	}
	v.say("figures of this bath: %s; %s", orText(b.Source, "source not given"), c.Spread.Trust())
}

// together tells the thickness with what lies below, where that counts.
func (c *Coat) together() string {
	if c.Below == 0 {
		return ""
	}
	return " (" + micrometres(c.Result.Thinnest+c.Below) + " with what lies below)"
}

// settings are temperature, current, voltage and time, each with its reason. What the job
// does not say is printed as missing: a blank would not be missed.
func (s *Sheet) settings(v *Section, c *Coat) {
	b, r, like := &c.Layer.Bath, &c.Result, &c.Bath
	volts := func(u units.Voltage) string { return figure(u, units.Volt, 1, 1) }
	switch heat := rangeOf(b.Temperature.Low, b.Temperature.High, celsius); {
	case b.Temperature.Set > 0 && heat != "":
		v.row("bath at", celsius(b.Temperature.Set), "the figures of the bath hold for "+heat)
	case b.Temperature.Set > 0:
		v.row("bath at", celsius(b.Temperature.Set), "as given; the job does not say for which range its figures hold")
	case heat != "":
		v.row("bath at", heat, "the job gives the range and no setting")
	// The setting of a bath of like chemistry is better than none, as long as the sheet says
	// whose it is.
	case like.Temperature.Given():
		v.row("bath at", bandOf(like.Temperature), "not given for this bath; one of like chemistry runs so ("+
			like.Temperature.Origin()+")")
	default:
		v.row("bath at", notGiven, "look it up before you start: efficiency and colour depend on it")
	}
	on := "on the whole area of "
	if c.Layer.Area != s.Area {
		on = "on this coat's own area of "
	}
	on += figure(c.Layer.Area, units.SquareDecimetre, 3, 3)
	// The amps are what is set. Density and area stand behind them, so that a wrong area is
	// noticed.
	if window := rangeOf(b.Window.Low, b.Window.High, density); window != "" {
		on = fmt.Sprintf("(range %s) ", window) + on
	}
	v.row("set", amps(r.Current), density(r.CurrentDensity)+" "+on)
	if u := rangeOf(b.Volts.Low, b.Volts.High, volts); u != "" {
		v.row("expect", u, "outside it look for a bad contact, a cold bath or a wrong area; the amps decide, not the volts")
	} else if like.Volts.Given() {
		v.row("expect", like.Volts.String(), "not given for this bath; one of like chemistry takes so much ("+
			like.Volts.Origin()+")")
	} else {
		v.row("expect", notGiven, "note the volts of the first load and compare; the amps decide")
	}
	v.row("time", clock(r.Time), c.timeReason())
}

// timeReason says why it is this time.
func (c *Coat) timeReason() string {
	switch {
	case c.Ordered == 0:
		return "as given"
	// The reason tells which of the two was given, thickness or time, and which was computed
	// from it.
	case !c.Timed && c.Below > 0:
		return fmt.Sprintf("for the %s that are left to the minimum thickness at the thinnest spot",
			micrometres(c.Layer.MinThickness))
	case !c.Timed:
		return fmt.Sprintf("for the minimum thickness of %s at the thinnest spot", micrometres(c.Ordered))
	case c.Layer.CurrentDensity == 0:
		return "as given; the current follows from it"
	}
	return "as given; held against the minimum thickness"
}

// more is what a coat's tank says of its acidity and of the rectifier.
func more(v *Section, t *sequence.Card, c *Coat) {
	if ph := c.Bath.PH; ph.Given() {
		why := ph.Origin()
		if c.PHLent {
			why = "not given for this bath; one of like chemistry has it (" + why + ")"
		}
		v.row("pH", span(ph.Low.String(), ph.High.String()), why)
	}
	if p := c.Power; p.High > 0 {
		watts := func(u units.Power) string { return figure(u, units.Watt, 2, 1) }
		why := "from the rectifier, at the volts expected"
		switch {
		case p.Warms >= 0.05:
			why += fmt.Sprintf("; warms the bath by %.1f K at most", float64(p.Warms))
		case p.Warms > 0:
			why += "; the bath does not warm by it"
		}
		v.fact("power", span(watts(p.Low), watts(p.High)), why)
	}
}

// between tells how far the coat may be off.
func (c *Coat) between(v *Section) {
	p := &c.Spread
	switch {
	case !p.Known:
	case !c.Timed:
		and := ""
		// Time goes inversely with efficiency. A band of times wider than that of efficiencies has
		// another cause as well: the density of the deposit.
		if float64(p.Time.High)*float64(p.Efficiency.Low) > 1.001*float64(p.Time.Low)*float64(p.Efficiency.High) {
			and = " and the density the deposit may have"
		}
		v.fact("between", clock(p.Time.Low)+" and "+clock(p.Time.High),
			fmt.Sprintf("for an efficiency of %s down to %s%s: wait for the longer one, or weigh a trial piece",
				p.Efficiency.High.Percent(0), p.Efficiency.Low.Percent(0), and))
	default:
		below := ""
		if c.Below != 0 {
			below = " with what lies below"
		}
		v.fact("between", micrometres(p.Thinnest.Low+c.Below)+" and "+micrometres(p.Thinnest.High+c.Below),
			fmt.Sprintf("at the thinnest spot%s, for an efficiency of %s up to %s", below, p.Efficiency.Low.Percent(0),
				p.Efficiency.High.Percent(0)))
	}
}

// onTheWay marks what is to be minded before the tank is reached.
func onTheWay(notes []plating.Note) []plating.Note {
	notes = slices.Clone(notes)
	for i := range notes {
		if n := &notes[i]; n.Do != "" {
			n.Do = "on the way here: " + n.Do
		} else {
			n.Text = "on the way here: " + n.Text
		}
	}
	return notes
}

// between says what must lie between the plating tanks of a job without a sequence.
func (s *Sheet) between(v *Section, i int) {
	hold := ""
	if plating.Precious(s.Stops[i].Coat.Layer.Bath.Metal) || i+1 == len(s.Stops) {
		hold = "Hold over the drag-out tank (it keeps the metal that runs off). "
	}
	if i+1 == len(s.Stops) {
		v.task("then: %sRinse twice, last in deionised water, dry. [common practice, no source]", hold)
		return
	}
	v.task("then: %sRinse twice in clean water, between tanks always (carry-over spoils the next bath), wet to tank %d. "+
		"[common practice, no source]", hold, i+2)
}

// sure says how well the ratio of thinnest to average is known, when that is said.
func sure(d *plating.Distribution) string {
	if d.Uncertainty == 0 {
		return ""
	}
	return " ± " + d.Uncertainty.Percent(0)
}

func flow(v electrical.GasFlow) string {
	x := v.In(electrical.LitrePerMinute)
	return strconv.FormatFloat(x, 'f', decimals(x, 2), 64) + " L/min"
}
