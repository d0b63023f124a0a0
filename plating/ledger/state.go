package ledger

import (
	"math"
	"strings"
	"time"

	"example.com/laydown/units"
)

// A State is the bath as the book knows it after an entry.
type State struct {
	Seq  int       // entries behind it; 0 is the opening
	When time.Time // of the last one

	Volume             units.Volume
	Metal              units.Mass
	MetalUncertainty   units.Mass // standard
	Content            units.MassConcentration
	ContentUncertainty units.MassConcentration // standard

	Charge        units.Charge // since the opening
	SinceAddition units.Charge // since metal was added last, or the opening
	SinceAnalysis units.Charge // since the last analysis, or the opening

	Turnovers units.Ratio // metal plated out over the opening metal; 0 for an opening without metal
	Balance   Balance
	Alarms    Alarms
}

// A Balance says where the metal came from and went. Analysed is what the
// analyses moved the book by: metal nobody saw come or go.
type Balance struct {
	Opening, Added, FromAnode, DraggedIn units.Mass // in
	Deposited, DraggedOut                units.Mass // out
	Corrected, Analysed                  units.Mass // in when above zero
	Now                                  units.Mass
}

// Gap returns what the balance does not account for: zero but for rounding.
//
//	gap = opening + added + anode + in - deposited - out + corrected + analysed - now
//
// The metal now is kept step by step, the eight sums each for themselves, so
// that a slip in one shows here.
//
// Source: [Definition].
func (b Balance) Gap() units.Mass {
	var t total
	for _, v := range []units.Mass{b.Opening, b.Added, b.FromAnode, b.DraggedIn, -b.Deposited, -b.DraggedOut, b.Corrected,
		b.Analysed, -b.Now} {
		t.add(float64(v))
	}
	return units.Mass(t.value())
}

// Through returns all metal that went through the book, in and out: what a gap
// is held against.
//
// Source: [Definition].
func (b Balance) Through() units.Mass {
	return b.Opening + b.Added + b.FromAnode + b.DraggedIn + b.Deposited + b.DraggedOut +
		units.Mass(math.Abs(float64(b.Corrected))+math.Abs(float64(b.Analysed)))
}

// Alarms is a set of thresholds that are crossed.
type Alarms uint16

// The alarms. The "perhaps" ones come when two standard uncertainties reach
// over the threshold: an analysis tells.
const (
	AlarmLow Alarms = 1 << iota
	AlarmPerhapsLow
	AlarmHigh
	AlarmPerhapsHigh
	AlarmLevel
	AlarmAnalysisDue
	AlarmDisagree
	AlarmLife
)

// Has reports whether all of the alarms in a are set.
func (s Alarms) Has(a Alarms) bool { return s&a == a }

// Texts returns one line for each alarm that is set, in a fixed order.
func (s Alarms) Texts() []string {
	var list []string
	for _, t := range [...]struct {
		alarm Alarms
		words string
	}{
		{AlarmLow, "metal content below the low alarm: feed before the next load"},
		{AlarmPerhapsLow, "metal content may be below the low alarm: analyse"},
		{AlarmHigh, "metal content above the high alarm: add no metal, look at the anodes"},
		{AlarmPerhapsHigh, "metal content may be above the high alarm: analyse"},
		{AlarmLevel, "solution below its level: top up"},
		{AlarmAnalysisDue, "analysis due"},
		{AlarmDisagree, "the last analysis and the book lie more than two uncertainties apart: find out why"},
		{AlarmLife, "as many metal turnovers as the bath was meant for"},
	} {
		if s.Has(t.alarm) {
			list = append(list, t.words)
		}
	}
	return list
}

// String joins the lines; "none" for the empty set.
func (s Alarms) String() string {
	if s == 0 {
		return "none"
	}
	return strings.Join(s.Texts(), "; ")
}

// state makes the public figures.
func (c *core) state(b *Account, seq int, when time.Time) State {
	if c.volume == 0 { // the zero Ledger
		return State{}
	}
	s := State{Seq: seq, When: when,
		Volume: units.Volume(c.volume), Metal: units.Mass(c.metal), MetalUncertainty: units.Mass(math.Sqrt(c.variance(b))),
		Content:            units.MassConcentration(c.metal / c.volume),
		ContentUncertainty: units.MassConcentration(math.Sqrt(c.contentVariance(b))),
		Charge:             units.Charge(c.charge), SinceAddition: units.Charge(c.sinceAddition),
		SinceAnalysis: units.Charge(c.sinceAnalysis),
		Balance: Balance{Opening: units.Mass(c.opening), Added: units.Mass(c.added.value()),
			FromAnode: units.Mass(c.anode.value()),
			DraggedIn: units.Mass(c.dragIn.value()), Deposited: units.Mass(c.deposited.value()),
			DraggedOut: units.Mass(c.dragOut.value()),
			Corrected:  units.Mass(c.corrected.value()), Analysed: units.Mass(c.analysed.value()), Now: units.Mass(c.metal)},
	}
	if c.opening > 0 {
		s.Turnovers = units.Ratio(c.deposited.value() / c.opening)
	}
	s.Alarms = s.alarms(b, c.disagrees)
	return s
}

// finite refuses figures beyond float64.
func (s State) finite() error {
	if err := units.Finite("metal through the book", s.Balance.Through()); err != nil {
		return err
	}
	if err := units.Finite("uncertainty of the metal", s.MetalUncertainty); err != nil {
		return err
	}
	if err := units.Finite("content", s.Content); err != nil {
		return err
	}
	if err := units.Finite("turnovers", s.Turnovers); err != nil {
		return err
	}
	return units.Finite("uncertainty of the content", s.ContentUncertainty)
}

func (s *State) alarms(b *Account, disagrees bool) Alarms {
	var a Alarms
	set := func(on bool, alarm Alarms) {
		if on {
			a |= alarm
		}
	}
	wide := 2 * s.ContentUncertainty
	set(b.Low != 0 && s.Content < b.Low, AlarmLow)
	set(b.Low != 0 && s.Content >= b.Low && s.Content-wide < b.Low, AlarmPerhapsLow)
	set(b.High != 0 && s.Content > b.High, AlarmHigh)
	set(b.High != 0 && s.Content <= b.High && s.Content+wide > b.High, AlarmPerhapsHigh)
	set(s.Volume < b.Level, AlarmLevel)
	set(b.Due != 0 && s.SinceAnalysis >= b.Due, AlarmAnalysisDue)
	set(disagrees, AlarmDisagree)
	set(b.Life != 0 && s.Turnovers >= b.Life, AlarmLife)
	return a
}

// alarmWords are the alarms in JSON, in the order of their bits.
func alarmWords() []string {
	return []string{"low", "perhaps low", "high", "perhaps high", "level", "analysis due", "disagree", "life"}
}

// MarshalJSON writes the alarms as a list of words.
func (s Alarms) MarshalJSON() ([]byte, error) { return units.FlagWords(s, alarmWords()) }

// UnmarshalJSON reads what MarshalJSON writes.
//
// Errors: a [*units.ValueError] for a word that is no alarm.
func (s *Alarms) UnmarshalJSON(raw []byte) error {
	return units.ReadFlags("alarm", s, raw, alarmWords())
}
