package bath

import (
	"fmt"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Used is one figure that went into a result, for the sheet.
type Used struct {
	Field  string      `json:"field"`
	Text   string      `json:"text"` // value with unit
	Source string      `json:"source"`
	Seen   origin.Seen `json:"seen"`
}

// String writes the figure in one line.
func (u Used) String() string {
	return u.Field + " " + u.Text + " (" + origin.Text(u.Seen, u.Source) + ")"
}

func used[Q units.Quantity](field string, r Range[Q]) []Used {
	if !r.Given() {
		return nil
	}
	return []Used{{Field: field, Text: r.String(), Source: r.Source, Seen: r.Seen}}
}

func usedWords(field string, w Words) []Used {
	if w.Text == "" {
		return nil
	}
	return []Used{{Field: field, Text: w.Text, Source: w.Source, Seen: w.Seen}}
}

// figures lists every figure of the bath that has one, in the order of a sheet.
func (b *Bath) figures() []Used {
	var all []Used
	all = append(all, used("metal content", b.Content)...)
	all = append(all, used("temperature", b.Temperature)...)
	all = append(all, used("current density", b.CurrentDensity)...)
	all = append(all, used("volts", b.Volts)...)
	all = append(all, used("pH", b.PH)...)
	if len(b.Lines) == 0 {
		all = append(all, used("current efficiency", b.Efficiency)...)
	}
	for i, l := range b.Lines {
		all = append(all, Used{Field: fmt.Sprintf("efficiency line %d", i+1), Text: l.text(), Source: l.Source,
			Seen: l.Seen})
	}
	all = append(all, used("immersion time", b.Time)...)
	all = append(all, used("thickness", b.MaxThickness)...)
	all = append(all, used("density of the deposit", b.Density)...)
	all = append(all, usedWords("composition of the deposit", b.Composition)...)
	all = append(all, usedWords("anode", b.Anode)...)
	all = append(all, used("anode to cathode area", b.AnodeRatio)...)
	all = append(all, usedWords("agitation", b.Agitation)...)
	return all
}

func (l EfficiencyLine) text() string {
	var parts []string
	for _, p := range l.Points {
		parts = append(parts, fmt.Sprintf("%s at %s", Range[units.Efficiency]{Low: p.Low, High: p.High}, p.CurrentDensity))
	}
	s := strings.Join(parts, ", ")
	if l.Temperature != 0 {
		s = "at " + l.Temperature.String() + ": " + s
	}
	if l.Content != 0 {
		s = l.Content.String() + " " + s
	}
	return s
}

// Figures lists every figure that is given, with its source and how it was
// seen, in the order of a sheet.
func (b *Bath) Figures() []Used { return b.figures() }

// Confidence returns the weakest of what an estimate takes from the bath:
// efficiency, density and composition of the deposit.
func (b *Bath) Confidence() origin.Seen {
	// Only what the mass and the time depend on. Volts or agitation from memory make no estimate
	// weaker.
	all := []origin.Seen{b.Density.Seen}
	if len(b.Lines) == 0 {
		all = append(all, b.Efficiency.Seen)
	}
	for _, l := range b.Lines {
		all = append(all, l.Seen)
	}
	if len(b.Deposit) != 0 {
		all = append(all, b.Composition.Seen)
	}
	return origin.Weakest(all...)
}

// Text writes the bath as a page for the line: every figure with how it was
// seen, the makeup, what to look at, remarks.
func (b *Bath) Text() string {
	var s strings.Builder
	fmt.Fprintf(&s, "%s [%s]\n", b.Name, b.Key)
	fmt.Fprintf(&s, "  use: %s; an estimate is %s\n", b.Use, b.Confidence())
	for _, u := range b.figures() {
		fmt.Fprintf(&s, "  %s\n", u)
	}
	if b.LiveEntry {
		s.WriteString("  enters live: current on before the part goes in\n")
	}
	for _, m := range b.Makeup {
		fmt.Fprintf(&s, "  made up with %s %s\n", m.Name, m.Range.Text())
	}
	for _, l := range b.Look {
		fmt.Fprintf(&s, "  look: %s\n", l)
	}
	for _, r := range b.Remarks {
		fmt.Fprintf(&s, "  note: %s\n", r)
	}
	return s.String()
}
