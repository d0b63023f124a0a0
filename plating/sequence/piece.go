package sequence

import (
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// A Piece is what is to be plated and with what.
type Piece struct {
	Name         string       `json:"name"`          // for the sheet
	Substrate    Substrate    `json:"substrate"`     // base metal at the face
	Finish       Finish       `json:"finish"`        // outer coat that is ordered
	MinThickness units.Length `json:"min_thickness"` // of the finish, at the thinnest significant spot

	SkinContact bool `json:"skin_contact"` // worn or handled for long
	// said to be hard or highly stressed; without Tensile a question, of no account for other metals than steel
	HighStrength bool `json:"high_strength"`
	// actual tensile strength of the steel; see [TensileFromHardness]; 0: not given
	Tensile units.Pressure `json:"tensile_strength"`
	// stress relief was done before the piece came, or it was neither machined nor bent after hardening
	Relieved bool `json:"stress_relieved"`

	// of the whole load; needed for amps and layers, not for a plan
	Area         units.Area           `json:"area"`
	Distribution plating.Distribution `json:"distribution"` // how evenly the coat lies; needed for layers
}

// Check returns the first reason why no plan can be made: an [*UnsureError]
// when the base metal or the finish is not known, a [*units.ValueError] for a
// field that cannot be.
func (p *Piece) Check() error {
	if p == nil {
		return units.Missing("piece", "a piece with its base metal")
	}
	if p.Substrate == SubstrateUnknown || p.Substrate >= substrateEnd {
		return &UnsureError{What: "the base metal is not known", Ask: identify()}
	}
	if p.Finish == FinishUnknown || p.Finish >= finishEnd {
		return &UnsureError{What: "the finish is not known", Ask: []string{"which of " + strings.Join(finishWords()[1:],
			", ")}}
	}
	if err := units.Positive("minimum thickness", p.MinThickness); err != nil {
		return err
	}
	if err := units.NonNegative("tensile strength", p.Tensile); err != nil {
		return err
	}
	if p.Tensile > 0 {
		if err := CheckTensile(p.Tensile); err != nil {
			return err
		}
	}
	if r := p.Distribution.MinToAverage; r != 0 { // 0: asked for where amps and minutes are
		if err := units.PositiveFraction("ratio of thinnest to average", r); err != nil {
			return err
		}
	}
	return units.NonNegative("area", p.Area)
}

// identify lists what tells an unknown metal, gentle ways first.
func identify() []string {
	return []string{
		"ask for the drawing, the maker's sheet or the history of the piece",
		"a magnet: steel and nickel hold it, stainless steel seldom, brass, zinc, aluminium, tin and silver never",
		"weigh it in air and in water: aluminium 2.7, zinc 6.6, tin 7.3, steel 7.8, brass 8.5, copper 8.9, silver " +
			"10.4 g/cm³",
		"look where it is worn or scratched for plate over another metal; look for solder at the joints",
		"a spot of X-ray fluorescence, or a spot test at a hidden place",
	}
}

// An UnsureError says that a plan would be a guess, and what to find out.
type UnsureError struct {
	What string   // what is not known
	Ask  []string // what would tell
}

// Error returns what is not known and what would tell, in one line.
func (e *UnsureError) Error() string {
	return units.Printable("no plan: " + e.What + "; find out: " + strings.Join(e.Ask, "; "))
}

// A RefusedError says that no published or remembered practice leads from the
// base metal to the finish, or that it must not be done.
type RefusedError struct {
	Field  string // of the piece
	Value  string // what it held
	Reason string // why there is no plan
	Remedy string // what would do
	Source string // key, or where it is known from
}

// Error returns field, value, reason and remedy in one line.
func (e *RefusedError) Error() string {
	return units.Printable("no plan: " + e.Field + " " + e.Value + ": " + e.Reason + "; " + e.Remedy +
		" [" + e.Source + "]")
}

// A StopError carries the findings that forbid to start.
type StopError struct {
	Findings []Finding // all of severity stop
}

// Error returns the first finding and how many more there are.
func (e *StopError) Error() string {
	if len(e.Findings) == 0 {
		return "the sequence must not be run"
	}
	s := "the sequence must not be run: " + e.Findings[0].String()
	if n := len(e.Findings) - 1; n > 0 {
		s += " (and " + plural(n, "more reason") + ")"
	}
	return s
}

// refuse finds what must not be planned: where no practice leads from the base metal to the
// finish, where the law or the steel forbids it, or where the bath cannot build what is
// ordered. A review would find most of these too; a plan that ends in a warning is no plan.
func (p *Piece) refuse(bath *bath.Bath) error {
	if p.SkinContact && (p.Finish == BrightNickel || p.Finish == PaleGold) {
		return &RefusedError{Field: "finish", Value: p.Finish.String() + " against the skin", Source: "NickelRelease",
			Reason: "nickel in the outer coat reaches the skin; the law limits its release to 0.5 µg/cm² in a week, " +
				"0.2 for pierced parts",
			Remedy: "take hard gold, palladium, rhodium or white bronze"}
	}
	if p.Substrate == Titanium {
		return &RefusedError{Field: "base metal", Value: "titanium", Source: "ASTMB481",
			Reason: "its oxide grows back at once. The practice pickles and etches in hydrofluoric acid, or blasts " +
				"it, lays 1 µm of nickel or more, and heats the piece in argon at 540 to 800 °C for 1 to 4 h to " +
				"bond it; its bath compositions were not read here",
			Remedy: "send it to a plater with a hydrofluoric acid line and an argon furnace; steps of your own are " +
				"reviewed against that practice"}
	}
	if p.askStrength() {
		return &UnsureError{What: "the strength of the steel is not known; stress relief and bake go by it",
			Ask: howStrong()}
	}
	if p.Substrate.hardenable() && p.Tensile > mostBaked {
		return &RefusedError{Field: "tensile strength", Value: p.Tensile.Text(mpa, 0), Source: "ASTMB850",
			Reason: "the table of bakes that was read ends at " + mostBaked.Text(mpa, 0),
			Remedy: "have whoever is responsible for the part specify the bake, or do not plate it"}
	}
	if p.HighStrength && p.Substrate.melts() {
		return &RefusedError{Field: "high strength", Value: "of " + p.Substrate.String(), Source: recall,
			Reason: "steel prone to hydrogen cracking must be baked at about 205 °C, and " + p.Substrate.String() +
				" melts, blisters or softens there",
			Remedy: "take the hard part out and plate it by itself, or leave it bare"}
	}
	if most := bath.MaxThickness.High; most > 0 && p.MinThickness > most*(1+1e-12) {
		return &RefusedError{Field: "minimum thickness", Value: p.MinThickness.Text(units.Micrometre, 2) + " of " +
			p.Finish.String(), Source: bath.MaxThickness.Source,
			Reason: "the bath is used for at most " + most.Text(units.Micrometre, 2),
			Remedy: "order less, or take a finish whose bath builds thickness"}
	}
	return nil
}
