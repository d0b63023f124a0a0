package plating

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// Warnings is a set of flags: what a careful finisher would question about an
// estimate. [Notes] puts them into words.
//
// They do not stop an estimate: the arithmetic holds all the same, and a person weighs
// them. A flag costs nothing to set, the words of [Notes] are made when somebody reads
// them.
type Warnings uint32

// The flags.
const (
	WarnDensityLow     Warnings = 1 << iota // current density below the bath's window
	WarnDensityHigh                         // current density above the bath's window
	WarnWindowUnknown                       // no window given: not checked
	WarnEfficiencyHeld                      // current density outside the efficiency curve: end value held
	WarnBathDrawn                           // more of the bath's metal goes than its limit allows
	WarnBathEmpty                           // the load wants more metal than the bath holds
	WarnMetalUnknown                        // no content or volume given: not checked
	WarnTooThick                            // thickness beyond what the bath is used for
	// minimum thickness, current density and time given, and the minimum thickness is not met
	WarnMinThicknessMissed
	WarnUneven          // the thinnest spot has less than half of the mean
	WarnTimeShort       // under ten seconds: cannot be timed by hand
	WarnTemperatureLow  // bath cooler than its window
	WarnTemperatureHigh // bath warmer than its window
	WarnGas             // most of the current makes hydrogen
	WarnAnodeInsoluble  // the anode does not replace what goes
	WarnRatioUnsure     // the ratio of thinnest to average is known to 5 % or worse
	WarnUnusual         // a figure outside what is usual: package sense
	warnEnd
)

// Has reports whether every flag of w2 is in w.
func (w Warnings) Has(w2 Warnings) bool { return w&w2 == w2 }

// A Severity ranks a note.
//
//	info     to know
//	caution  to mind while working
//	warning  the result will be poor; have a reason to go on
//	stop     do not start
type Severity uint8

// The severities, from plain information to a reason not to start.
const (
	SeverityInfo    Severity = iota // to know
	SeverityCaution                 // to mind while working
	SeverityWarning                 // the result will be poor
	SeverityStop                    // do not start
)

// String returns the severity in words.
func (s Severity) String() string {
	switch s {
	case SeverityCaution:
		return "caution"
	case SeverityWarning:
		return "warning"
	case SeverityStop:
		return "stop"
	case SeverityInfo:
		return "info"
	}
	return "unknown"
}

// A Note is one thing to know about an estimate.
type Note struct {
	Code     string   `json:"code"` // of the rule, for programs; "" for most
	Severity Severity `json:"severity" with:"keep"`
	Text     string   `json:"text"`   // what is so, with numbers; of a rule of chemistry with why behind a colon
	Do       string   `json:"do"`     // what would help
	Source   string   `json:"source"` // key, or "common practice, no source"

	// Between marks what may be carried over from the layer before. Where the
	// tanks between are known they decide, and the note can go.
	Between bool `json:"between"`
}

// Line writes the note in one line, without its severity: what to do, why or what
// is so, the source.
func (n Note) Line() string {
	return units.Printable(Sentences(n.Do, n.Text) + " [" + n.Source + "]")
}

// String writes the note in one line, with its severity.
func (n Note) String() string { return n.Severity.String() + ": " + n.Line() }

// Sentences writes parts as sentences, one behind the other. A part that holds
// several already keeps them; an empty one is left out.
func Sentences(parts ...string) string {
	var list []string
	for _, p := range parts {
		if p = strings.TrimSuffix(strings.TrimSpace(p), "."); p != "" {
			r, n := utf8.DecodeRuneInString(p)
			list = append(list, string(unicode.ToUpper(r))+p[n:]+".")
		}
	}
	return strings.Join(list, " ")
}

const (
	practice   = "common practice, no source"
	arithmetic = "Definition"
)

// review finds the flags of a computed layer.
//
//	m_left = c·V - m_fine,  c_left = m_left/V,  drawn = m_fine/(c·V)
//
//	c  Bath.Content  metal content [kg/m³]
//	V  Bath.Volume   [m³]
//
// Bounds of its own, common practice: ten seconds, half for an uneven coat, 5 % for an
// unsure ratio, half of the current for gas. A value within 1e-12 of a bound is on it.
func (l *Layer) review(r *LayerEstimate) Warnings {
	b := &l.Bath
	w := Warnings(0)
	if b.Window == (CurrentDensityWindow{}) {
		w |= WarnWindowUnknown
	} else if b.Window.High > 0 && r.CurrentDensity > b.Window.High*(1+tolerance) {
		w |= WarnDensityHigh
	}
	if r.CurrentDensity < b.Window.Low*(1-tolerance) {
		w |= WarnDensityLow
	}
	if b.Content == 0 || b.Volume == 0 {
		w |= WarnMetalUnknown
	} else {
		held := b.Content.Of(b.Volume)
		r.MetalLeft = held - r.FineMass
		r.ContentLeft = units.MassConcentration(float64(r.MetalLeft) / float64(b.Volume))
		r.Drawn = units.Ratio(float64(r.FineMass) / float64(held))
		if r.MetalLeft < 0 {
			r.MetalLeft, r.ContentLeft = 0, 0
			w |= WarnBathEmpty
		} else if r.Drawn > b.drawLimit() {
			w |= WarnBathDrawn
		}
	}
	if b.MaxThickness > 0 && r.Average > b.MaxThickness*(1+tolerance) {
		w |= WarnTooThick
	}
	if r.Thinnest < l.MinThickness*(1-tolerance) {
		w |= WarnMinThicknessMissed
	}
	if l.Distribution.MinToAverage < 0.5 && l.MinThickness > 0 {
		w |= WarnUneven
	}
	if l.Distribution.Uncertainty >= 0.05 && l.MinThickness > 0 {
		w |= WarnRatioUnsure
	}
	if r.Time < 10 {
		w |= WarnTimeShort
	}
	if b.Temperature.Set > 0 {
		if b.Temperature.Set < b.Temperature.Low {
			w |= WarnTemperatureLow
		}
		if b.Temperature.High > 0 && b.Temperature.Set > b.Temperature.High {
			w |= WarnTemperatureHigh
		}
	}
	if r.Efficiency < 0.5 {
		w |= WarnGas
	}
	if b.InsolubleAnode {
		w |= WarnAnodeInsoluble
	}
	if !l.usual(r) {
		w |= WarnUnusual
	}
	return w
}

// usual reports whether a computed layer stays within the usual ranges of package
// sense: the quick form of questions.
func (l *Layer) usual(r *LayerEstimate) bool {
	b := &l.Bath
	return (b.Content == 0 || b.Content >= sense.LowContent && b.Content <= sense.HighContent) &&
		(b.Volume == 0 || b.Volume >= sense.LowVolume && b.Volume <= sense.HighVolume) &&
		(b.Temperature.Set == 0 || b.Temperature.Set >= sense.LowSolution && b.Temperature.Set <= sense.HighSolution) &&
		(b.Volts.High == 0 || b.Volts.High >= sense.LowVolts && b.Volts.High <= sense.HighVolts) &&
		r.CurrentDensity >= sense.LowDensity && r.CurrentDensity <= sense.HighDensity &&
		r.Time >= sense.LowTime && r.Time <= sense.HighTime &&
		l.Area >= sense.LowArea && l.Area <= sense.HighArea && r.Average >= sense.LowCoat && r.Average <= sense.HighCoat
}

// questions returns what is unusual about a computed layer.
func (l *Layer) questions(r *LayerEstimate) []string {
	b := &l.Bath
	return slices.DeleteFunc([]string{sense.Content().Question(b.Content), sense.Volume().Question(b.Volume),
		sense.Solution().Question(b.Temperature.Set), sense.Volts().Question(b.Volts.High),
		sense.CurrentDensity().Question(r.CurrentDensity), sense.Time().Question(r.Time), sense.Area().Question(l.Area),
		sense.Coat().Question(r.Average)}, func(q string) bool { return q == "" })
}

// few writes a mass with as many digits as a shop scale tells.
func few(m units.Mass) string {
	if m < units.Gram {
		return m.Text(units.Milligram, 1)
	}
	return m.Text(units.Gram, 2)
}

// short writes a current density with the digits that a note wants.
func short(j units.CurrentDensity) string {
	if j >= 0.1*units.AmperePerSquareDecimetre {
		return j.Text(units.AmperePerSquareDecimetre, 2)
	}
	return j.String()
}

// tolerance keeps a value that was computed to sit on a limit from crossing it
// by rounding.
const tolerance = 1e-12

// Notes puts the flags of a result into words, in the order of the work,
// cautions of the bath first. l must be the layer that r was computed from. Without
// a layer or a result the one note is a stop: nothing was checked.
func Notes(l *Layer, r *LayerEstimate) []Note {
	if l == nil || r == nil {
		return []Note{{Severity: SeverityStop, Do: "estimate the layer first",
			Text: "there is no layer or no result, so nothing was checked", Source: arithmetic}}
	}
	var notes []Note
	add := func(flag Warnings, s Severity, source, do, format string, args ...any) {
		if r.Warnings.Has(flag) {
			notes = append(notes, Note{Severity: s, Text: fmt.Sprintf(format, args...), Do: do, Source: source})
		}
	}
	b := &l.Bath
	s := b.Solution()
	notes = s.Review()
	for _, q := range l.questions(r) {
		notes = append(notes, Note{Code: CodeUnusual, Severity: SeverityWarning, Text: q,
			Do: "check the unit and the point", Source: recall})
	}
	add(WarnTemperatureLow, SeverityWarning, practice, "warm it before you start",
		"the bath is set to %s, below its range from %s", b.Temperature.Set, b.Temperature.Low)
	add(WarnTemperatureHigh, SeverityWarning, practice, "let it cool before you start",
		"the bath is set to %s, above its range to %s", b.Temperature.Set, b.Temperature.High)
	add(WarnBathEmpty, SeverityStop, arithmetic, "feed the bath or split the load",
		"the load takes %s of %s and the bath holds %s", few(r.FineMass), metalName(b), few(b.Content.Of(b.Volume)))
	add(WarnBathDrawn, SeverityWarning, practice, "feed the bath before or right after this load",
		"this load takes %s of the bath's %s, more than the limit of %s", r.Drawn.Percent(1), metalName(b),
		b.drawLimit().Percent(0))
	add(WarnDensityHigh, SeverityWarning, sourceOf(b), "lower the current and plate longer, or the coat may burn",
		"%s is above the bath's window of %s", short(r.CurrentDensity), b.Window)
	add(WarnDensityLow, SeverityWarning, sourceOf(b), "raise the current, or colour and efficiency may shift",
		"%s is below the bath's window of %s", short(r.CurrentDensity), b.Window)
	add(WarnEfficiencyHeld, SeverityWarning, arithmetic, "weigh a trial piece at this current density",
		"%s is outside the measured efficiency curve; its end value %s was held", short(r.CurrentDensity), r.Efficiency)
	add(WarnMinThicknessMissed, SeverityStop, arithmetic, "plate longer: time and current given do not meet the "+
		"minimum thickness",
		"the thinnest spot gets %s, the minimum thickness is %s", r.Thinnest.Text(units.Micrometre, 3),
		l.MinThickness.Text(units.Micrometre, 3))
	add(WarnTooThick, SeverityWarning, sourceOf(b),
		"strike thin and build in another bath, or use a bath made for thickness",
		"a mean of %s is more than the %s this bath is used for", r.Average.Text(units.Micrometre, 2),
		b.MaxThickness.Text(units.Micrometre, 2))
	add(WarnUneven, SeverityCaution, arithmetic, "space the anode, turn the part, or shield the edges",
		"the mean must be %.1f times the minimum thickness to cover the thinnest spot",
		1/float64(l.Distribution.MinToAverage))
	u := float64(l.Distribution.Uncertainty)
	add(WarnRatioUnsure, SeverityCaution, arithmetic,
		fmt.Sprintf("to be sure at two standard uncertainties, plate %.2g times as long, or measure the ratio",
			1/math.Max(0.05, 1-2*u)),
		"the ratio of thinnest to average is known to %s: the thinnest spot may have from %s to %s",
		units.Ratio(u).Percent(0),
		units.Length(math.Max(0, 1-u)*float64(r.Thinnest)).Text(units.Micrometre, 3), units.Length((1+
			u)*float64(r.Thinnest)).Text(units.Micrometre, 3))
	add(WarnTimeShort, SeverityCaution, practice, "lower the current so that the time can be kept by hand",
		"%.1f s is hard to time", float64(r.Time))
	add(WarnGas, SeverityInfo, practice, "extraction on; bake hardened steel afterwards",
		"%s of the current deposits metal; the rest makes hydrogen", r.Efficiency.Percent(0))
	if r.Warnings.Has(WarnGas) {
		notes[len(notes)-1].Code = CodeLowEfficiency
	}
	add(WarnAnodeInsoluble, SeverityInfo, practice, "add metal to the bath by ampere-minutes and by analysis",
		"the anode does not replace the %s of %s that this layer takes", few(r.FineMass), metalName(b))
	add(WarnWindowUnknown, SeverityInfo, arithmetic, "give the window",
		"the bath has no current density window: %s was not checked", short(r.CurrentDensity))
	add(WarnMetalUnknown, SeverityInfo, arithmetic, "give content and volume",
		"the bath has no metal content or volume: what is left was not computed")
	return notes
}

// metalName returns the symbol of the counted metal, "metal" when the bath does not say.
func metalName(b *OperatingBath) string {
	if b.Metal == "" {
		return "metal"
	}
	return b.Metal
}

// sourceOf returns the source of the figures of a bath, for a note.
func sourceOf(b *OperatingBath) string {
	if b.Source == "" {
		return "the bath as given"
	}
	return b.Source
}
