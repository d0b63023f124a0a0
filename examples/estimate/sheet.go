package main

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// writeSheet prints the bench sheet in the order of the work.
func writeSheet(w io.Writer, made *traveller.Sheet, steps, demo bool) error {
	s := &sheet{w: w}
	job := &made.Job
	s.wrap("BENCH SHEET: ", orText(job.Name, "plating job"))
	s.line("%s", strings.Repeat("=", width))
	s.stops(made)
	if demo {
		s.wrap("", "The embedded example, with invented figures. Name a job file of your own before you plate.")
		s.line("")
	}
	s.line("Load    base metal: %s", orText(job.Substrate, "not given"))
	for _, p := range job.Parts {
		s.line("        %4d × %-22s %9s each", p.Count, orText(p.Name, "part"), figure(p.Area, units.SquareCentimetre, 3, 2))
		if p.Masked > 0 {
			s.wrap("               ", fmt.Sprintf("mask %s on each before cleaning; it is not in the area above",
				figure(p.Masked, units.SquareCentimetre, 3, 2)))
		}
	}
	for _, m := range job.Mended {
		s.wrap("        i ", "mended "+m)
	}
	s.line("        plated area of the load      %9s", figure(made.Area, units.SquareCentimetre, 3, 1))
	s.line("")
	s.before(made)
	if made.Refused() {
		s.refused(made)
		return s.err
	}
	if len(made.Tanks) > 0 {
		s.sequence(made)
	} else {
		s.coats(made, job.Substrate, gas(made))
	}
	s.after(made)
	s.rinsing(made)
	s.baths(made)
	s.price(made)
	if steps {
		return s.working(made)
	}
	return s.err
}

// stops prints first what forbids to start.
func (s *sheet) stops(made *traveller.Sheet) {
	for _, text := range made.Stops() {
		s.wrap("STOP  ", text)
	}
	if made.Stop() {
		s.line("")
	}
}

// before prints the cautions of everything that follows.
func (s *sheet) before(made *traveller.Sheet) {
	s.line("Before you start")
	for _, c := range made.Cautions() {
		s.wrap("  ! ", c.Line())
	}
	for _, text := range unlisted(made) {
		s.wrap("  ! ", text)
	}
	s.line("")
}

// unlisted names the baths of which neither list nor name gives a hazard.
func unlisted(made *traveller.Sheet) []string {
	var list []string
	for i := range made.Result.Layers {
		if l := &made.Result.Layers[i].Layer; l.Bath.AllHazards() == 0 {
			list = append(list, fmt.Sprintf("Read the safety data sheets of the bath of %s. The job names no hazards for it; that does not say that it has none.", name(l, i)))
		}
	}
	return list
}

// coats prints a job without a sequence: the plating tanks, and in words what
// must be around them.
func (s *sheet) coats(made *traveller.Sheet, substrate, air string) {
	res := &made.Result
	s.wrap("Prepare  ", "Clean until water runs off without a break (dirt under a coat makes it peel). Rinse twice (what the first "+
		"rinse holds still carries over). Keep the parts wet from here to the last rinse. This sheet starts at the first plating tank: "+
		"activate "+orText(substrate, "the base metal")+" by your own proven procedure. [common practice, no source]")
	if strings.Contains(strings.ToLower(substrate), "stainless") {
		s.wrap("         ", "Stainless steel carries a film that no coat holds on; activation takes it off and air or plain water brings it back: "+
			"do not dry, go to the strike by the shortest way, through a slightly acid rinse. [ASTMB254]")
	}
	s.wrap("Air      ", air)
	s.line("")
	for i := range res.Layers {
		s.layer(i+1, i, &res.Layers[i], made.AtTank(i), nil)
		if i+1 < len(res.Layers) {
			s.line("   on the way to tank %d", i+2)
			for _, n := range res.Layers[i+1].Before {
				if n.Code == "" {
					s.note(n)
				}
			}
			hold := ""
			if plating.Precious(res.Layers[i].Layer.Bath.Metal) {
				hold = "Hold over the drag-out tank (it keeps the metal that runs off). "
			}
			s.wrap("   then  ", hold+
				"Rinse twice in clean water, between tanks always (carry-over spoils the next bath). [common practice, no source]")
		} else {
			s.wrap("   then  ", "Hold over the drag-out tank (it keeps the metal that runs off), rinse twice, last in deionised water, dry. [common practice, no source]")
		}
		s.line("")
	}
}

// working prints every formula with its numbers.
func (s *sheet) working(made *traveller.Sheet) error {
	s.line("")
	s.line("Working")
	list, err := made.Working()
	if err != nil {
		return err
	}
	for i, c := range list {
		s.line("%d. %s", i+1, c.Title)
		for _, line := range strings.Split(working.Text(c.Steps), "\n") {
			s.line("%s", line)
		}
	}
	return s.err
}

// layer prints one immersion in a bath: what to mind first, then the settings in
// the order in which they are made, then what comes of them. With a sequence,
// the tank's card and the coat's spread come along.
func (s *sheet) layer(number, i int, lr *plating.LayerResult, cautions []plating.Note, in *stop) {
	l, r := &lr.Layer, &lr.Result
	b := &l.Bath
	s.wrap(fmt.Sprintf("%d. ", number), fmt.Sprintf("%s (%s)", strings.ToUpper(name(l, i)), l.Role))
	s.caution(cautions)
	s.wrap("   bath  ", orText(b.Name, "not named"))
	first := []plating.Note(nil)
	if i == 0 || in != nil {
		first = lr.Before
	}
	for _, n := range slices.Concat(first, lr.Notes) {
		if n.Severity > plating.SeverityInfo {
			s.note(n)
		}
	}
	if lr.Below > 0 {
		s.wrap("   i ", fmt.Sprintf("of the minimum thickness of %s, %s lie below already", micrometres(l.MinThickness+lr.Below),
			micrometres(lr.Below)))
	}
	s.settings(lr, in)
	if in == nil && l.Role == plating.RoleStrike {
		s.row("entry", "LIVE", liveEntry)
	}
	if in != nil {
		s.card(&in.card, in)
	}
	thinnest := "at the thinnest spot" + togetherWith(lr)
	s.row("gives", micrometres(r.Thinnest), fmt.Sprintf("%s, %s on average (ratio %s, %s)", thinnest, micrometres(r.Average),
		plain(float64(l.Distribution.MinToAverage))+sure(&l.Distribution), orText(l.Distribution.Basis, "basis not said")))
	s.row("takes", weight(r.FineMass), fmt.Sprintf("of %s, at a current efficiency of %s", orText(b.Metal, "metal"),
		r.Efficiency.Percent(decimals(100*float64(r.Efficiency), 2))))
	if what, why := rest(lr); what != "" {
		s.row("gas", what, why)
	}
	switch {
	case r.Warnings.Has(plating.WarnMetalUnknown):
	case !b.InsolubleAnode:
		s.row("leaves", figure(b.Content, units.GramPerLitre, 4, 2),
			fmt.Sprintf("of %s about as before, in %s: the anodes replace what the coat takes", orText(b.Metal, "metal"),
				figure(b.Volume, units.Litre, 2, 1)))
	default:
		s.row("leaves", figure(r.ContentLeft, units.GramPerLitre, 4, 2), fmt.Sprintf("of %s before, in %s",
			figure(b.Content, units.GramPerLitre, 4, 2), figure(b.Volume, units.Litre, 2, 1)))
	}
	if in != nil {
		s.spread(l, lr.Below, &in.spread)
	}
	for _, n := range slices.Concat(first, lr.Notes) {
		if n.Severity == plating.SeverityInfo && n.Code == "" {
			s.note(n)
		}
	}
	s.wrap("   figures of this bath: ", orText(b.Source, "source not given"))
}

// settings prints temperature, current, voltage and time, each with its reason.
// What the job does not say is printed as missing: a blank would not be missed.
func (s *sheet) settings(lr *plating.LayerResult, in *stop) {
	l, r := &lr.Layer, &lr.Result
	b := &l.Bath
	degrees := func(t units.Temperature) string { return t.Text(units.CelsiusScale, 0) }
	volts := func(v units.Voltage) string { return figure(v, units.Volt, 1, 1) }
	density := func(j units.CurrentDensity) string { return figure(j, units.AmperePerSquareDecimetre, 2, 2) }
	const missing = "not given"
	switch heat := rangeOf(b.Temperature.Low, b.Temperature.High, degrees); {
	case b.Temperature.Set > 0 && heat != "":
		s.row("bath at", degrees(b.Temperature.Set), "the figures of the bath hold for "+heat)
	case b.Temperature.Set > 0:
		s.row("bath at", degrees(b.Temperature.Set), "as given; the job does not say for which range its figures hold")
	case heat != "":
		s.row("bath at", heat, "the job gives the range and no setting")
	case in != nil && in.card.Temperature.Given():
		s.row("bath at", celsius(in.card.Temperature), "not given for this bath; one of like chemistry runs so ("+
			in.card.Temperature.Origin()+")")
	default:
		s.row("bath at", missing, "look it up before you start: efficiency and colour hang on it")
	}
	on := "on the whole area of " + figure(l.Area, units.SquareDecimetre, 3, 3)
	if in != nil && in.part {
		on = "on this coat's own area of " + figure(l.Area, units.SquareDecimetre, 3, 3)
	}
	if window := rangeOf(b.Window.Low, b.Window.High, density); window != "" {
		on = fmt.Sprintf("(window %s) ", window) + on
	}
	s.row("set", amps(r.Current), density(r.CurrentDensity)+" "+on)
	if v := rangeOf(b.Volts.Low, b.Volts.High, volts); v != "" {
		s.row("expect", v, "outside it look for a bad contact, a cold bath or a wrong area; the amps decide, not the volts")
	} else if in != nil && in.card.Volts.Given() {
		s.row("expect", in.card.Volts.String(), "not given for this bath; one of like chemistry takes so much ("+
			in.card.Volts.Origin()+")")
	} else {
		s.row("expect", missing, "note the volts of the first load and compare; the amps decide")
	}
	s.row("time", clock(r.Time), timeReason(lr))
}

// unmetered lists the charge of each coat whose bath does not have its own lines
// below. Charges of several baths are never added up: each is fed by its own.
func unmetered(made *traveller.Sheet) string {
	below := map[string]bool{}
	if showsBaths(made) {
		for i := range made.Baths {
			below[made.Baths[i].Bath] = true
		}
	}
	var list []string
	for i := range made.Result.Layers {
		lr := &made.Result.Layers[i]
		if n := name(&lr.Layer, i); !below[n] {
			list = append(list, n+" "+figure(lr.Result.Charge, units.AmpereMinute, 3, 2))
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "Write down for the upkeep of the baths, each by itself: " + strings.Join(list, ", ") + "."
}

func (s *sheet) after(made *traveller.Sheet) {
	res := &made.Result
	s.line("Afterwards")
	var mass units.Mass
	for _, m := range res.Metals {
		mass += m.Mass
		s.line("   %-3s %s at the thinnest spot, %s on average, %s of metal", orText(m.Metal, "?"), micrometres(m.Thinnest),
			micrometres(m.Average), weight(m.FineMass))
	}
	s.wrap("   ", fmt.Sprintf("Check by weight: the load should have gained %s, dry, of all layers. That is the mean; only a gauge or a cut "+
		"shows the thinnest spot.", weight(mass)))
	for _, text := range made.Claim.Lines() {
		s.wrap("   ", text)
	}
	if text := unmetered(made); text != "" {
		s.wrap("   ", text)
	}
}

// timeReason says why it is this time.
func timeReason(lr *plating.LayerResult) string {
	l := &lr.Layer
	switch {
	case l.MinThickness == 0:
		return "as given"
	case l.Time == 0 && lr.Below > 0:
		return fmt.Sprintf("for the %s that are left to the minimum thickness at the thinnest spot", micrometres(l.MinThickness))
	case l.Time == 0:
		return fmt.Sprintf("for the minimum thickness of %s at the thinnest spot", micrometres(l.MinThickness))
	case l.CurrentDensity == 0:
		return "as given; the current follows from it"
	}
	return "as given; held against the minimum thickness"
}

// sure says how well the ratio of thinnest to average is known, when that is said.
func sure(d *plating.Distribution) string {
	if d.Uncertainty == 0 {
		return ""
	}
	return " ± " + d.Uncertainty.Percent(0)
}

func mark(s plating.Severity) string {
	return map[plating.Severity]string{plating.SeverityInfo: "i", plating.SeverityCaution: "!",
		plating.SeverityWarning: "WARNING", plating.SeverityStop: "STOP"}[s]
}

func dash(do string) string {
	if do == "" {
		return ""
	}
	return ": " + do
}
