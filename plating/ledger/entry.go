package ledger

import (
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// An Entry is one line of the book: when, what, and a remark.
type Entry struct {
	When  time.Time
	Event Event
	Note  string
}

// An Event is what happened to the bath: [Load], [Evaporation], [Addition],
// [Analysis] or [Correction]; or what happened to the book: [Void].
type Event interface {
	// check refuses what no bath can take.
	check(b *Account) error
	// apply changes the running figures of the book.
	apply(b *Account, c *core, r *Record) error
}

// A Load is one immersion of parts in the bath. In the bath it counts in this order:
// what the parts carry in, the deposit and the anodes, what they carry out.
type Load struct {
	Charge units.Charge `json:"charge,omitzero"` // ampere-minutes of the meter

	// Weighed is the deposit that the parts gained by the balance. When it is
	// zero the deposit is computed from charge and efficiency.
	Weighed            units.Mass `json:"weighed,omitzero"`
	WeighedUncertainty units.Mass `json:"weighed_uncertainty,omitzero"` // standard

	DragOut            units.Volume `json:"drag_out,omitzero"` // of solution
	DragOutUncertainty units.Volume `json:"drag_out_uncertainty,omitzero"`
	DragIn             units.Volume `json:"drag_in,omitzero"` // of rinse water
	// of the metal in it: not zero behind a recovery rinse
	DragInContent units.MassConcentration `json:"drag_in_content,omitzero"`
}

func (l Load) check(b *Account) error {
	if err := units.NonNegative("charge", l.Charge); err != nil {
		return err
	}
	if err := units.NonNegative("weighed deposit", l.Weighed); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the weighed deposit", l.WeighedUncertainty); err != nil {
		return err
	}
	if err := units.NonNegative("drag-out", l.DragOut); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the drag-out", l.DragOutUncertainty); err != nil {
		return err
	}
	if err := units.NonNegative("drag-in", l.DragIn); err != nil {
		return err
	}
	if err := units.NonNegative("content of the drag-in", l.DragInContent); err != nil {
		return err
	}
	if l.Charge == 0 && l.Weighed == 0 && l.DragOut == 0 && l.DragIn == 0 {
		return &units.ValueError{Field: "load", Value: "nothing given",
			Need: "a charge, a weighed deposit, a drag-out or a drag-in", Err: units.ErrNotPositive}
	}
	if most := b.Equivalent.Of(l.Charge); l.Charge > 0 && l.Weighed > most+3*l.WeighedUncertainty {
		return &units.ValueError{Field: "weighed deposit", Value: l.Weighed.String(),
			Need: "at most the " + most.String() + " that " + l.Charge.String() +
				" can deposit; check meter, balance, dryness and valence", Err: units.ErrInconsistent}
	}
	return nil
}

// An Evaporation is water that went into the air. Metal stays, so the content
// rises. What is topped up afterwards is an [Addition] of water.
type Evaporation struct {
	Volume units.Volume `json:"volume" with:"must" need:"the water that is gone, as 120 mL"`
}

func (e Evaporation) check(*Account) error { return units.Positive("evaporated volume", e.Volume) }

// An Addition feeds the bath: a salt by mass, metal by mass, solution by volume,
// water, or several of them at once.
type Addition struct {
	Salt     faraday.Formula `json:"salt,omitzero"`
	SaltMass units.Mass      `json:"salt_mass,omitzero"`
	// metal content by the label of the salt; 0 means that of the formula
	Label units.MassFraction `json:"label,omitzero"`

	Metal units.Mass `json:"metal,omitzero"` // metal in whatever else was added

	Solution        units.Volume            `json:"solution,omitzero"`
	SolutionContent units.MassConcentration `json:"solution_content,omitzero"`
	Water           units.Volume            `json:"water,omitzero"`

	Uncertainty units.Mass `json:"uncertainty,omitzero"` // standard, of the metal added
}

// MetalMass returns the metal that an addition brings.
//
//	m = x·ms + m₁ + c·v
//
//	x   Label or Salt    share of the metal in the salt, water of crystallisation counted
//	ms  SaltMass         ≥ 0 [kg]
//	m₁  Metal            ≥ 0 [kg]
//	c   SolutionContent  ≥ 0 [kg/m³]
//	v   Solution         ≥ 0 [m³]
//
// Errors: a [*units.ValueError] for a field out of range, a salt without mass
// or a mass without salt, a label above one; those of [faraday.MetalContent].
//
// Source: [IUPAC2021], [Definition].
func (a Addition) MetalMass(metal string) (units.Mass, error) {
	for _, v := range []struct {
		field string
		value units.Mass
	}{{"mass of salt", a.SaltMass}, {"mass of metal", a.Metal}, {"uncertainty of the addition", a.Uncertainty}} {
		if err := units.NonNegative(v.field, v.value); err != nil {
			return 0, err
		}
	}
	for _, v := range []struct {
		field string
		value units.Volume
	}{{"volume of solution", a.Solution}, {"volume of water", a.Water}} {
		if err := units.NonNegative(v.field, v.value); err != nil {
			return 0, err
		}
	}
	if err := units.NonNegative("content of the solution", a.SolutionContent); err != nil {
		return 0, err
	}
	if err := units.Fraction("metal content by the label", a.Label); err != nil {
		return 0, err
	}
	if a.Salt.IsZero() != (a.SaltMass == 0) || a.Salt.IsZero() && a.Label != 0 {
		given := "mass of " + a.SaltMass.String() + " without a formula"
		switch {
		case !a.Salt.IsZero():
			given = a.Salt.String() + " without a mass"
		case a.SaltMass == 0:
			given = "label without a salt"
		}
		return 0, &units.ValueError{Field: "salt", Value: given, Need: "both a formula and a mass, or neither",
			Err: units.ErrInconsistent}
	}
	if (a.Solution > 0) != (a.SolutionContent > 0) {
		given := "solution of " + a.Solution.String() + " without its content"
		if a.Solution == 0 {
			given = "content of " + a.SolutionContent.String() + " without a volume"
		}
		return 0, &units.ValueError{Field: "solution", Value: given,
			Need: "both the volume of a ready-made feed and its metal content; what holds no metal is entered as water",
			Err:  units.ErrInconsistent}
	}
	m := float64(a.Metal) + float64(a.SolutionContent)*float64(a.Solution)
	if !a.Salt.IsZero() {
		x, err := faraday.MetalContent(a.Salt, metal)
		if err != nil {
			return 0, err
		}
		if a.Label != 0 {
			x = a.Label
		}
		m += float64(x) * float64(a.SaltMass)
	}
	return units.Mass(m), units.Finite("metal of the addition", units.Mass(m))
}

func (a Addition) check(b *Account) error {
	m, err := a.MetalMass(b.Metal)
	if err != nil {
		return err
	}
	if m == 0 && a.Solution == 0 && a.Water == 0 {
		return &units.ValueError{Field: "addition", Value: "nothing given", Need: "salt, metal, solution or water",
			Err: units.ErrNotPositive}
	}
	return checkSalt("salt of the addition", a.Salt)
}

// An Analysis is a measured content. The book keeps both: its own content goes
// into the [Comparison] of the record, and the two are averaged by their
// uncertainties, unless Reset says that the analysis alone counts. The first
// analysis counts alone, and disagrees with nobody, where the opening content came
// without an uncertainty: that is a guess, and not one without error.
type Analysis struct {
	Content units.MassConcentration `json:"content" with:"must" need:"what was found, as 7.9 g/L"`
	// > 0
	Uncertainty units.MassConcentration `json:"uncertainty" with:"must" need:"the standard uncertainty of the analysis, as 0.1 g/L"`
	Reset       bool                    `json:"reset,omitempty"`
}

func (a Analysis) check(*Account) error {
	if err := units.NonNegative("analysed content", a.Content); err != nil {
		return err
	}
	return units.Positive("uncertainty of the analysis", a.Uncertainty)
}

// A Correction is an entry by hand: a spill, a bath drawn off, metal found or missed.
// It adds to metal and volume; negative takes away. A wrong entry is struck out by a
// [Void].
type Correction struct {
	Metal       units.Mass   `json:"metal,omitzero"`
	Volume      units.Volume `json:"volume,omitzero"`
	Uncertainty units.Mass   `json:"uncertainty,omitzero"` // standard, of the metal
	Reason      string       `json:"reason" with:"must" need:"a few words"`
}

func (k Correction) check(*Account) error {
	if err := units.Finite("corrected metal", k.Metal); err != nil {
		return err
	}
	if err := units.Finite("corrected volume", k.Volume); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the correction", k.Uncertainty); err != nil {
		return err
	}
	if k.Metal == 0 && k.Volume == 0 && k.Uncertainty == 0 {
		return &units.ValueError{Field: "correction", Value: "nothing given", Need: "a metal or a volume that is not zero",
			Err: units.ErrNotPositive}
	}
	return text("reason of the correction", k.Reason, true)
}
