package baths

import (
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// A Bath is what is known about a plating solution: ranges with sources, not
// settings. [Bath.At] turns it into a [plating.Bath] at one operating point.
type Bath struct {
	Key   string // short name for programs: "gold-acid-cobalt"
	Name  string // by chemistry: "gold, acid cyanide, cobalt hardened"
	Metal string // symbol of the metal that is counted: "Au"
	Use   Use

	Deposit     []Constituent // empty: the pure metal at Valence
	Composition Words         // where the constituents come from
	Valence     int           // that Metal is deposited from
	Density     Range[units.Density]

	Salt           faraday.Formula // that it is fed with; the zero Formula: not given
	Makeup         []Ingredient
	Content        Range[units.MassConcentration] // of Metal
	Temperature    Range[units.Temperature]
	CurrentDensity Range[units.CurrentDensity]
	Volts          Range[units.Voltage]
	PH             Range[plating.PH]
	Efficiency     Range[units.Efficiency]
	Lines          []EfficiencyLine      // efficiency against current density, where it is known
	Time           Range[units.Duration] // immersion time, for strikes and flashes
	MaxThickness   Range[units.Length]

	Anode      Words
	Insoluble  bool               // the anode does not replace the metal
	AnodeRatio Range[units.Ratio] // anode area over cathode area
	Agitation  Words
	Hazards    plating.Hazard
	LiveEntry  bool     // the part goes in with the current on
	Look       []string // what to look at before going on
	Remarks    []Words
}

// Use is the set of places a bath may take in a sequence.
type Use uint8

// The places.
const (
	UseStrike Use = 1 << iota
	UseUnder
	UseFinish
)

// Has reports whether every use of u2 is in u.
func (u Use) Has(u2 Use) bool { return u&u2 == u2 }

// String names the uses.
func (u Use) String() string {
	var words []string
	for i, w := range useWords() {
		if u.Has(1 << i) {
			words = append(words, w)
		}
	}
	return strings.Join(words, ", ")
}

func useWords() []string { return []string{"strike", "underplate", "finish"} }

// A Constituent is one part of the deposit's mass.
type Constituent struct {
	Symbol  string // "" for what is built in without charge
	Valence int
	Share   units.MassFraction
}

// An Ingredient is one thing the bath is made up from.
type Ingredient struct {
	Name  string // chemical name, with its water of crystallisation
	Range Range[units.MassConcentration]
}

// Fine returns the share of the counted metal in the deposit's mass.
func (b *Bath) Fine() units.MassFraction {
	if len(b.Deposit) == 0 {
		return 1
	}
	var w units.MassFraction
	for _, c := range b.Deposit {
		if c.Symbol == b.Metal {
			w += c.Share
		}
	}
	return w
}

// Solution returns the bath as its chemistry is judged: see [plating.Solution.Review].
func (b *Bath) Solution() plating.Solution {
	s := plating.Solution{Name: b.Name, Hazards: b.Hazards, Metal: b.Metal, Valence: b.Valence,
		PH: plating.PHWindow{Low: b.PH.Low, High: b.PH.High}, Anode: b.Anode.Text,
		Insoluble: b.Insoluble, Temperature: b.Temperature.Mid()}
	for _, c := range b.Deposit {
		if c.Symbol != b.Metal && c.Symbol != "" {
			s.With = append(s.With, c.Symbol)
		}
	}
	if !b.Salt.IsZero() {
		s.Salts = []faraday.Formula{b.Salt}
	}
	return s
}

// AllHazards returns every hazard of the bath, listed or given away; see
// [plating.Solution.AllHazards].
func (b *Bath) AllHazards() plating.Hazard {
	s := b.Solution()
	return s.AllHazards()
}

// deposit returns what the bath lays down at a density.
func (b *Bath) deposit(rho units.Density) (faraday.Deposit, error) {
	if len(b.Deposit) == 0 {
		d, err := faraday.DepositOf(b.Metal, b.Valence)
		if err != nil {
			return d, err
		}
		d.Density = rho
		return d, nil
	}
	parts := make([]faraday.Part, len(b.Deposit))
	for i, c := range b.Deposit {
		parts[i] = faraday.Part{Share: c.Share}
		if c.Symbol != "" {
			var err error
			if parts[i], err = faraday.PartOf(c.Symbol, c.Valence, c.Share); err != nil {
				return faraday.Deposit{}, err
			}
		}
	}
	eq, err := faraday.MixedEquivalent(parts...)
	return faraday.Deposit{Equivalent: eq, Density: rho}, err
}

// Check returns a [*units.ValueError] or a [*faraday.ElementError] for the
// first thing that no estimate can take: no name, an unknown metal, a range
// the wrong way round, no efficiency or density.
func (b *Bath) Check() error {
	if b == nil {
		return units.Missing("bath", "one of the library, or of Read")
	}
	need := func(field, value, need string) error {
		return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
	}
	switch {
	case strings.TrimSpace(b.Name) == "":
		return need("name of the bath", "not given", "a name by chemistry")
	case b.Use == 0 || b.Use > UseStrike|UseUnder|UseFinish:
		return need("use of the bath", "not given", "one or more of strike, underplate, finish")
	case !b.Density.Given():
		return need("density of the deposit", "not given", "a range with its source")
	case !b.Efficiency.Given() && len(b.Lines) == 0:
		return need("current efficiency", "not given", "a range with its source, or lines of points")
	}
	if _, err := b.deposit(b.Density.Mid()); err != nil {
		return err
	}
	if e, err := faraday.Lookup(b.Metal); err == nil && len(b.Deposit) == 0 {
		for _, rho := range []units.Density{b.Density.Low, b.Density.High} {
			if err := faraday.CheckDensity(rho, e.Density, b.Metal); rho > 0 && err != nil {
				return err
			}
		}
	}
	if b.Fine() == 0 {
		return need("share of "+b.Metal+" in the deposit", "0", "the counted metal among the constituents")
	}
	if b.Efficiency.Given() {
		if err := units.PositiveFraction("low end of the current efficiency", b.Efficiency.Low); err != nil {
			return err
		}
		if err := units.PositiveFraction("high end of the current efficiency", b.Efficiency.High); err != nil {
			return err
		}
	}
	if b.PH.High > 16 {
		return &units.ValueError{Field: "pH", Value: b.PH.String(), Need: "at most 16", Err: units.ErrOutOfRange}
	}
	if err := checkLines(b.Lines); err != nil {
		return err
	}
	for _, m := range b.Makeup {
		if err := m.Range.Check("content of " + m.Name); err != nil {
			return err
		}
	}
	return firstError(b.Density.Check("density of the deposit"), b.Efficiency.Check("current efficiency"),
		units.Positive("low end of the density of the deposit", b.Density.Low),
		units.Positive("high end of the density of the deposit", b.Density.High),
		b.Content.Check("metal content"), b.Temperature.Check("temperature"), b.CurrentDensity.Check("current density"),
		b.Volts.Check("volts"), b.PH.Check("pH"), b.Time.Check("immersion time"), b.MaxThickness.Check("maximum thickness"),
		b.AnodeRatio.Check("anode ratio"), b.Content.Sense(sense.Content()), b.Temperature.Sense(sense.Solution()),
		b.CurrentDensity.Sense(sense.CurrentDensity()), b.Volts.Sense(sense.Volts()), b.Time.Sense(sense.Time()),
		b.MaxThickness.Sense(sense.Coat()))
}

func firstError(all ...error) error {
	for _, err := range all {
		if err != nil {
			return err
		}
	}
	return nil
}
