package sequence

import (
	"fmt"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// Text writes the card for the line. What is from memory says so.
func (c Card) Text() string {
	var s strings.Builder
	fmt.Fprintf(&s, "%d. %s (%s)\n", c.Number, units.Printable(c.Name), c.Kind)
	line := func(label, text string) {
		if text != "" {
			fmt.Fprintf(&s, "   %-12s %s\n", label, units.Printable(text))
		}
	}
	line("CAUTION", plating.TankLine(c.Cautions))
	if c.Chemistry != c.Name {
		line("holds", c.Chemistry)
	}
	line("water", c.Water)
	if c.Temperature.Given() {
		line("temperature", temperatures(c.Temperature))
	}
	if c.Set > 0 {
		line("current", fmt.Sprintf("%s, %s, at %s", amps(c.Amps), c.Polarity, density(c.Set)))
		if c.Window.Given() {
			line("window", window(c))
		}
	}
	if c.Volts.Given() {
		line("volts", noted(c.Volts.Text(), c.Volts.Note))
	}
	if c.PH.Given() {
		line("pH", c.PH.Text())
	}
	if c.MinThickness > 0 {
		line("thickness", c.MinThickness.Text(units.Micrometre, 2)+" at the thinnest significant spot")
	}
	line("time", c.timeText())
	if c.LiveEntry {
		line("entry", "LIVE: current on before the piece goes in")
	}
	if c.Agitation.Text != "" {
		line("agitation", c.Agitation.String())
	}
	if c.Anode.Text != "" {
		line(c.electrode(), c.Anode.String()+c.anodeArea())
	}
	for _, l := range c.Look {
		line("look", l)
	}
	return s.String()
}

// noted puts the note of a figure behind it.
func noted(text, note string) string {
	if note == "" {
		return text
	}
	return text + "; " + note
}

// electrode names the other electrode.
func (c Card) electrode() string {
	if c.Kind.deposits() {
		return "anode"
	}
	return "electrode"
}

// amps writes a current as the meter of a small or a large rectifier shows it: milliamperes
// below 1 A.
func amps(i units.Current) string {
	if i < 1 {
		return i.Text(units.Milliampere, 0)
	}
	return i.Text(units.Ampere, 2)
}

// density writes a current density in A/dm², the unit of the tank side.
func density(j units.CurrentDensity) string { return j.Text(units.AmperePerSquareDecimetre, 2) }

// window writes the amps for this load with the current densities behind them.
func window(c Card) string {
	from := " (" + c.Window.Origin() + ")"
	if c.AmpsLow == 0 {
		return "up to " + amps(c.AmpsTop) + ", " + density(c.Window.High) + from
	}
	return amps(c.AmpsLow) + " to " + amps(c.AmpsTop) + ", " + density(c.Window.Low) + " to " + density(c.Window.High) +
		from
}

// temperatures writes a band in whole degrees, in both scales of the trade.
func temperatures(r bath.Range[units.Temperature]) string {
	one := func(s units.Scale) string {
		low, high := r.Low.Text(s, 0), r.High.Text(s, 0)
		switch {
		case r.Low == 0:
			return "up to " + high
		case r.High == 0:
			return "from " + low
		case low == high:
			return low
		}
		return low + " to " + high
	}
	return one(units.CelsiusScale) + ", " + one(units.FahrenheitScale) + " (" + r.Origin() + ")"
}

// timeText writes the time with where it comes from. A computed time shows its middle and
// its band: the operator sets the middle and knows what the range of efficiency makes of
// it. A usual time shows its two ends.
func (c Card) timeText() string {
	t := c.Time
	if t.Typical == 0 {
		return ""
	}
	s := roundTime(t.Typical)
	if low, high := roundTime(t.Low), roundTime(t.High); low != high {
		if c.TimeBy == "min_thickness" {
			s += ", between " + low + " and " + high
		} else {
			s = low + " to " + high
		}
	}
	switch c.TimeBy {
	case "min_thickness":
		return s + ", computed from the minimum thickness (" + c.TimeFrom.String() + ")"
	case "usual immersion time":
		return s + ", usual immersion time (" + c.TimeFrom.String() + ")"
	}
	return s
}

// roundTime writes a time to the second below two minutes, else to a tenth of
// a minute or the minute, as a clock at the line can be read.
func roundTime(t units.Duration) string {
	switch {
	case t < 120:
		return t.Text(units.Second, 0)
	case t < 3600:
		return t.Text(units.Minute, 1)
	}
	return t.Text(units.Hour, 1)
}

func area(a units.Area) string { return a.Text(units.SquareCentimetre, 0) }

// anodeArea writes the area of anode for this load, nothing when the bath gives no ratio.
func (c Card) anodeArea() string {
	switch {
	case c.AnodeHigh == 0 && c.AnodeLow == 0:
		return ""
	case c.AnodeLow == c.AnodeHigh || c.AnodeHigh == 0:
		return "; " + area(c.AnodeLow) + " of it (" + c.AnodeRatio.String() + ")"
	}
	return "; " + area(c.AnodeLow) + " to " + area(c.AnodeHigh) + " of it (" + c.AnodeRatio.String() + ")"
}

// Sheet writes all cards behind each other, with the piece, the findings and
// the confidence on top.
func Sheet(p Piece, cards []Card, found []Finding) string {
	var s strings.Builder
	fmt.Fprintf(&s, "%s\n%s, %s, %s at the thinnest significant spot\n", units.Printable(name(p.Name)),
		p.Substrate, p.Finish, p.MinThickness.Text(units.Micrometre, 2))
	if pr, err := PracticeFor(p.Substrate); err == nil {
		standard := pr.Title
		if pr.Standard != "" {
			standard = pr.Standard + ", " + pr.Title
		}
		fmt.Fprintf(&s, "practice: %s (%s); the steps are %s\n", standard, pr.Seen, pr.Detail)
		fmt.Fprintf(&s, "when unsure: %s\n", pr.Unsure)
	}
	if weak := weakest(cards); len(weak) > 0 {
		fmt.Fprintf(&s, "from memory in part: tank %s; try one piece first\n", strings.Join(weak, ", "))
	}
	for _, f := range found {
		fmt.Fprintf(&s, "%s\n", f)
	}
	var all plating.Hazard
	for _, c := range cards {
		all |= c.Hazards
	}
	for _, n := range plating.FrontCautions(all) {
		fmt.Fprintf(&s, "before you start: %s\n", n.Line())
	}
	for _, c := range cards {
		s.WriteString("\n" + c.Text())
	}
	return s.String()
}

func name(s string) string {
	if s == "" {
		return "(no name)"
	}
	return s
}

// weakest lists the numbers of tanks whose card rests on a figure from memory.
func weakest(cards []Card) []string {
	var all []string
	for _, c := range cards {
		if c.solution() && c.Confidence == origin.FromMemory {
			all = append(all, fmt.Sprint(c.Number))
		}
	}
	return all
}

// Confidence returns the weakest figure on the cards of all tanks that hold a
// solution: how far the plan may be trusted as it stands.
func Confidence(cards []Card) origin.Seen {
	var seen []origin.Seen
	for _, c := range cards {
		if c.solution() {
			seen = append(seen, c.Confidence)
		}
	}
	return origin.Weakest(seen...)
}

func (c Card) solution() bool { t := Tank{Kind: c.Kind}; return t.solution() }
