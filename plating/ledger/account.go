package ledger

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// An Account is a plating bath as its book counts it, on the day it is opened. [FromBath]
// makes it from what is known of the bath, [ReadAccount] from a file. The tags name the
// fields in the first line of a book.
//
// Name, Metal, Volume, Content, Equivalent and Efficiency are needed; a
// threshold left zero is not watched.
type Account struct {
	// by chemistry: "gold, acid cyanide, cobalt hardened"
	Name string `json:"name" with:"must" need:"a few words"`
	// symbol of the metal that is counted: "Au"
	Metal string `json:"metal" with:"must" need:"the symbol of the metal that is counted, as Au"`

	// at the level mark; kept there by additions
	Volume units.Volume `json:"volume" with:"must" need:"one as 5 L"`
	// standard uncertainty of the mark
	VolumeUncertainty units.Volume            `json:"volume_uncertainty,omitzero"`
	Content           units.MassConcentration `json:"content" with:"must" need:"one as 8 g/L"` // of Metal on opening
	// standard; 0 means not known, see [Analysis]
	ContentUncertainty units.MassConcentration `json:"content_uncertainty,omitzero"`

	// electrochemical equivalent of the whole deposit
	Equivalent units.Equivalent `json:"equivalent" with:"must" need:"one as 7.349 g/(A·h)"`
	// share of Metal in the deposit's mass; 0 means all of it
	Fine       units.MassFraction `json:"fine,omitzero"`
	Efficiency EfficiencyRange    `json:"efficiency" with:"must" need:"an object with value"` // of the cathode
	Anode      Anode              `json:"anode,omitzero"`                                     // the zero Anode is insoluble

	Salts []faraday.Formula `json:"salts,omitempty" need:"formulas in quotes"` // those the bath is fed with
	// additions bring the content here; 0 means the opening content
	Target units.MassConcentration `json:"target,omitzero"`
	Low    units.MassConcentration `json:"low,omitzero"`     // alarm below
	High   units.MassConcentration `json:"high,omitzero"`    // alarm above
	Level  units.Volume            `json:"level,omitzero"`   // alarm when the volume is below
	Due    units.Charge            `json:"due,omitzero"`     // alarm when that much charge has passed since an analysis
	Life   units.Ratio             `json:"life,omitzero"`    // alarm at that many metal turnovers
	Source string                  `json:"source,omitempty"` // where the figures come from

	// What the dangers of the bath are judged by; see [Account.Solution].
	Valence int              `json:"valence,omitzero"` // that Metal is deposited from; 0: what fits the equivalent
	PH      plating.PHWindow `json:"pH,omitzero"`
	Hazards plating.Hazard   `json:"hazards,omitzero" rule:"flags"` // beside those that name and salts give away
}

// Solution returns the bath as its chemistry is judged. A valence that is not
// given is the one that fits the equivalent.
func (b *Account) Solution() plating.Solution {
	if b == nil {
		return plating.Solution{}
	}
	s := plating.Solution{Name: b.Name, Hazards: b.Hazards, Metal: b.Metal, Valence: b.Valence, PH: b.PH, Salts: b.Salts}
	if s.Valence == 0 {
		s.Valence = faraday.FittingValence(b.Metal, b.Equivalent)
	}
	return s
}

// An EfficiencyRange is a current efficiency with the ends it may lie between.
// Both ends zero means "not given": the value then counts as exact, and the
// book's uncertainty is too small by what is not known.
type EfficiencyRange struct {
	Value units.Efficiency `json:"value" with:"must" need:"one as 35 %"`
	Low   units.Efficiency `json:"low,omitzero"`
	High  units.Efficiency `json:"high,omitzero"`
}

// An Anode says where the metal comes from. The zero Anode is insoluble
// (platinised, stainless, graphite): it gives none.
type Anode struct {
	// of the current that soluble anodes carry, 0 to 1; see [ShareByArea]
	Share      units.Ratio     `json:"share,omitzero"`
	Efficiency EfficiencyRange `json:"efficiency,omitzero"` // of the soluble anodes; needed when Share is not 0
	// of Metal as it dissolves; 0 means that of the deposit, which is right for a pure one only
	Equivalent units.Equivalent `json:"equivalent,omitzero"`
}

// Soluble reports whether any of the current dissolves metal.
func (a Anode) Soluble() bool { return a.Share != 0 }

// String names the anode kind.
func (a Anode) String() string {
	switch {
	case a.Share == 0:
		return "insoluble"
	case a.Share == 1:
		return "soluble"
	}
	return "soluble for " + fmt.Sprintf("%.4g %%", 100*float64(a.Share)) + " of the current"
}

func (b *Account) fine() float64 {
	if b.Fine == 0 {
		return 1
	}
	return float64(b.Fine)
}

func (b *Account) anodeEquivalent() float64 {
	if b.Anode.Equivalent == 0 {
		return float64(b.Equivalent)
	}
	return float64(b.Anode.Equivalent)
}

// Check returns an error for the first field the book cannot work with: a
// [*units.ValueError], or for a bad symbol a [*faraday.ElementError].
func (b *Account) Check() error {
	if b == nil {
		return units.Missing("bath", "the bath of the book")
	}
	if err := text("name of the bath", b.Name, true); err != nil {
		return err
	}
	if err := text("source of the bath's figures", b.Source, false); err != nil {
		return err
	}
	if b.Metal == "" {
		return &units.ValueError{Field: "metal of the bath", Value: "(empty)",
			Need: "the symbol of the metal that is counted, as Au", Err: units.ErrSyntax}
	}
	if _, err := faraday.Lookup(b.Metal); err != nil {
		return err
	}
	if err := units.Positive("bath volume", b.Volume); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the bath volume", b.VolumeUncertainty); err != nil {
		return err
	}
	if b.VolumeUncertainty >= b.Volume {
		return &units.ValueError{Field: "uncertainty of the bath volume", Value: b.VolumeUncertainty.String(),
			Need: "less than the volume, " + b.Volume.String(), Err: units.ErrInconsistent}
	}
	if err := units.NonNegative("opening content", b.Content); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the opening content", b.ContentUncertainty); err != nil {
		return err
	}
	if err := units.Finite("opening metal", units.Mass(float64(b.Content)*float64(b.Volume))); err != nil {
		return err
	}
	if err := units.Positive("electrochemical equivalent", b.Equivalent); err != nil {
		return err
	}
	if err := units.Fraction("share of the counted metal in the deposit", b.Fine); err != nil {
		return err
	}
	if err := b.possible("electrochemical equivalent", units.Equivalent(b.fine()*float64(b.Equivalent)),
		b.fine() == 1); err != nil {
		return err
	}
	if err := b.Efficiency.check("current efficiency"); err != nil {
		return err
	}
	if err := b.checkAnode(); err != nil {
		return err
	}
	if b.Valence < 0 || b.Valence > 8 {
		return &units.ValueError{Field: "valence", Value: fmt.Sprint(b.Valence), Need: "1 to 8, or left out",
			Err: units.ErrOutOfRange}
	}
	if err := b.PH.Check(); err != nil {
		return err
	}
	if err := plating.KnownDeadly(b.Solution()); err != nil {
		return err
	}
	return b.checkWatch()
}

// possible questions a figure that no charge of an ion accounts for: more metal than
// one electron for each atom brings, or less than eight take. A point slipped by one
// place is outside, and every load after it would be counted ten times or a tenth.
func (b *Account) possible(field string, of units.Equivalent, pure bool) error {
	e, err := faraday.Lookup(b.Metal)
	if err != nil {
		return err
	}
	most, err := faraday.NewEquivalent(e.Weight.Value, 1)
	if err != nil {
		return err
	}
	const slack, electrons = 1.01, 8 // for what is built in without charge; of Os and Ru at most
	if pure && of <= slack*most && faraday.FittingValence(b.Metal, of) != 0 {
		return e.CheckValence(faraday.FittingValence(b.Metal, of))
	}
	if of > slack*most || pure && of < most/electrons/slack {
		return &units.ValueError{Field: field, Value: of.String() + " of " + b.Metal,
			Need: fmt.Sprintf("%s for one electron an ion, or a whole part of that", most), Err: units.ErrOutOfRange}
	}
	return nil
}

func (b *Account) checkAnode() error {
	a := b.Anode
	if err := units.Fraction("share of the current on soluble anodes", a.Share); err != nil {
		return err
	}
	if err := units.NonNegative("equivalent of the anode", a.Equivalent); err != nil {
		return err
	}
	if a.Share == 0 {
		if a != (Anode{}) {
			return &units.ValueError{Field: "anode", Value: "efficiency or equivalent without a share",
				Need: "the share of the current on soluble anodes, or no figure at all for insoluble ones",
				Err:  units.ErrInconsistent}
		}
		return nil
	}
	if err := a.Efficiency.check("anode efficiency"); err != nil {
		return err
	}
	if a.Equivalent > 0 {
		if err := b.possible("equivalent of the anode", a.Equivalent, true); err != nil {
			return err
		}
	}
	if a.Equivalent == 0 && b.fine() != 1 {
		return &units.ValueError{Field: "equivalent of the anode", Value: "not given",
			Need: "that of the dissolving " + b.Metal + ", since the deposit is an alloy", Err: units.ErrInconsistent}
	}
	return nil
}

func (b *Account) checkWatch() error {
	const most = 20
	if len(b.Salts) > most {
		return &units.ValueError{Field: "salts", Value: fmt.Sprint(len(b.Salts)), Need: fmt.Sprintf("at most %d", most),
			Err: units.ErrOutOfRange}
	}
	for _, s := range b.Salts {
		if _, err := faraday.MetalContent(s, b.Metal); err != nil {
			return err
		}
		if err := checkSalt("salt of the bath", s); err != nil {
			return err
		}
	}
	for _, c := range []struct {
		field string
		value units.MassConcentration
	}{{"target content", b.Target}, {"low alarm", b.Low}, {"high alarm", b.High}} {
		if err := units.NonNegative(c.field, c.value); err != nil {
			return err
		}
	}
	if b.High != 0 && b.Low >= b.High {
		return &units.ValueError{Field: "low alarm", Value: b.Low.String(), Need: "less than the high alarm, " +
			b.High.String(), Err: units.ErrInconsistent}
	}
	if t := b.Aim(); t < b.Low || b.High != 0 && t > b.High {
		return &units.ValueError{Field: "target content", Value: t.String(), Need: "a content between the alarms",
			Err: units.ErrInconsistent}
	}
	if err := units.NonNegative("level alarm", b.Level); err != nil {
		return err
	}
	if b.Level > b.Volume {
		return &units.ValueError{Field: "level alarm", Value: b.Level.String(), Need: "at most the bath volume, " +
			b.Volume.String(), Err: units.ErrInconsistent}
	}
	if err := units.NonNegative("charge between analyses", b.Due); err != nil {
		return err
	}
	return units.NonNegative("life in turnovers", b.Life)
}

func (r EfficiencyRange) check(field string) error {
	if err := units.PositiveFraction(field, r.Value); err != nil {
		return err
	}
	if r.Low == 0 && r.High == 0 {
		return nil
	}
	if err := units.PositiveFraction("low end of the "+field, r.Low); err != nil {
		return err
	}
	if err := units.PositiveFraction("high end of the "+field, r.High); err != nil {
		return err
	}
	if r.Low > r.Value || r.Value > r.High {
		return &units.ValueError{Field: field, Value: r.Value.String(),
			Need: "a value between its ends, " + r.Low.String() + " and " + r.High.String(), Err: units.ErrInconsistent}
	}
	return nil
}

// text checks words that go into the book.
func text(field, s string, needed bool) error {
	const most = 1000
	switch {
	case needed && strings.TrimSpace(s) == "":
		return &units.ValueError{Field: field, Value: "(empty)", Need: "a few words", Err: units.ErrSyntax}
	case !utf8.ValidString(s):
		return &units.ValueError{Field: field, Value: "bytes that are no UTF-8", Need: "plain text in UTF-8",
			Err: units.ErrSyntax}
	case len(s) > most:
		return &units.ValueError{Field: field, Value: fmt.Sprintf("%d bytes", len(s)), Need: fmt.Sprintf("at most %d bytes",
			most), Err: units.ErrOutOfRange}
	}
	return nil
}
