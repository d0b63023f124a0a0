package ledger

import (
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Replenishment is what to add now.
type Replenishment struct {
	Salt     faraday.Formula
	SaltMass units.Mass
	Share    units.MassFraction // of the metal in the salt, water of crystallisation counted
	Metal    units.Mass         // what the salt brings
	Water    units.Volume       // to bring the solution back to its mark, with the salt in it

	Volume  units.Volume            // of the bath afterwards
	Content units.MassConcentration // afterwards
	Over    units.Mass              // metal that the bath has too much: then SaltMass is 0
}

// Addition returns the entry to post once it is in the bath.
func (r Replenishment) Addition() Addition {
	if r.SaltMass == 0 {
		return Addition{Water: r.Water}
	}
	return Addition{Salt: r.Salt, SaltMass: r.SaltMass, Water: r.Water}
}

// A Need says what a bath has and what it should have.
type Need struct {
	Metal  units.Mass              // in the bath, ≥ 0
	Volume units.Volume            // of the bath, > 0
	Mark   units.Volume            // volume to keep, > 0
	Target units.MassConcentration // content to reach, ≥ 0
}

func (n Need) check() error {
	if err := units.NonNegative("metal in the bath", n.Metal); err != nil {
		return err
	}
	if err := units.Positive("volume of the bath", n.Volume); err != nil {
		return err
	}
	if err := units.Positive("volume to keep", n.Mark); err != nil {
		return err
	}
	return units.NonNegative("target content", n.Target)
}

// Replenish returns the salt and the water that bring a bath to a content at
// its mark.
//
//	v = max(V, V₀)
//	m = c·v - m₁
//	ms = m/x
//	vw = v - V
//
//	V   need.Volume    of the bath now [m³]
//	V₀  need.Mark      level to keep [m³]
//	c   need.Target    content to reach [kg/m³]
//	m₁  need.Metal     metal in the bath now [kg]
//	x   salt           share of the metal in the salt [1]
//	m, ms, vw          metal, salt and water to add
//
// Dissolve the salt first, then fill to the mark: the salt takes some room of
// its own (some millilitres for a hundred grams), so vw is a little too much.
// With m below zero the bath has too much metal and Over says how much; water
// to the mark is all that is due. Solution above the mark stays.
//
// Errors: a [*units.ValueError] for a value out of range; those of
// [faraday.MetalContent].
//
// Source: [IUPAC2021], [Definition].
func Replenish(need Need, metal string, salt faraday.Formula) (Replenishment, error) {
	if err := need.check(); err != nil {
		return Replenishment{}, err
	}
	x, err := faraday.MetalContent(salt, metal)
	if err != nil {
		return Replenishment{}, err
	}
	r := Replenishment{Salt: salt, Share: x, Volume: max(need.Volume, need.Mark)}
	r.Water = r.Volume - need.Volume
	lack := units.Mass(float64(need.Target)*float64(r.Volume) - float64(need.Metal))
	if err := units.Finite("metal to add", lack); err != nil {
		return Replenishment{}, err
	}
	if lack > 0 {
		r.Metal = lack
		r.SaltMass = units.Mass(float64(lack) / float64(x))
	} else {
		r.Over = -lack
	}
	r.Content = units.MassConcentration(float64(need.Metal+r.Metal) / float64(r.Volume))
	if err := units.Finite("content afterwards", r.Content); err != nil {
		return Replenishment{}, err
	}
	if err := units.Finite("mass of salt", r.SaltMass); err != nil {
		return Replenishment{}, err
	}
	return r, nil
}

// ReplenishWorking shows the calculation of [Replenish].
//
// Errors: as there.
//
// Source: [IUPAC2021], [Definition].
func ReplenishWorking(need Need, metal string, salt faraday.Formula) ([]working.Step, error) {
	r, err := Replenish(need, metal, salt)
	if err != nil {
		return nil, err
	}
	volume, after := working.Of("V", "volume of the bath now", need.Volume), working.Of("v", "volume afterwards",
		r.Volume)
	lack := working.Of("m", "mass of "+metal+" to add; none below zero", r.Metal-r.Over)
	steps := []working.Step{
		{Formula: "v = max(V, V₀)", Terms: []working.Term{volume, working.Of("V₀", "mark", need.Mark)}, Result: after,
			Source: "Definition"},
		{Formula: "m = c·v - m₁", Terms: []working.Term{working.Of("c", "content to reach", need.Target), after,
			working.Of("m₁", metal+" in the bath now", need.Metal)}, Result: lack, Source: "Definition"},
	}
	if r.SaltMass > 0 {
		share, err := faraday.MetalContentWorking(salt, metal)
		if err != nil {
			return nil, err
		}
		x := working.Of("x", share.Result.Meaning, r.Share)
		steps = append(steps, share, working.Step{Formula: "ms = m/x", Terms: []working.Term{lack, x},
			Result: working.Of("ms", "mass of "+salt.String(), r.SaltMass), Source: "IUPAC2021"})
	}
	return append(steps, working.Step{Formula: "vw = v - V", Terms: []working.Term{after, volume},
		Result: working.Of("vw", "water to add", r.Water), Source: "Definition"}), nil
}

// A Feed is a volume of a ready-made solution to add, with water.
type Feed struct {
	Solution units.Volume
	Metal    units.Mass // what it brings
	Water    units.Volume
	Volume   units.Volume            // of the bath afterwards
	Content  units.MassConcentration // afterwards
	Over     units.Mass              // metal that the bath has too much: then Solution is 0
	DrawOff  units.Volume            // above the mark afterwards, when the feed needs more room than there is
}

// ReplenishBySolution returns the volume of a feed solution that brings a bath
// to a content: rhodium and sulfamate nickel are bought that way.
//
//	vs = (c·V₀ - m₁)/cs             when V + vs ≤ V₀; water fills to the mark
//	vs = (c·V - m₁)/(cs - c)        when it does not fit below the mark
//
//	cs  feed  content of the feed solution, > 0 [kg/m³]
//
// with the letters of [Replenish]. Errors: a [*units.ValueError] for a value
// out of range, and for a feed too thin to reach the target.
//
// Source: [Definition].
func ReplenishBySolution(need Need, feed units.MassConcentration) (Feed, error) {
	if err := need.check(); err != nil {
		return Feed{}, err
	}
	if err := units.Positive("content of the feed solution", feed); err != nil {
		return Feed{}, err
	}
	full := max(need.Volume, need.Mark)
	lack := float64(need.Target)*float64(full) - float64(need.Metal)
	if err := units.Finite("metal to add", units.Mass(lack)); err != nil {
		return Feed{}, err
	}
	var f Feed
	switch {
	case lack <= 0:
		f = Feed{Water: full - need.Volume, Over: units.Mass(-lack)}
	case float64(need.Volume)+lack/float64(feed) <= float64(full):
		f.Solution = units.Volume(lack / float64(feed))
		f.Water = full - need.Volume - f.Solution
	case feed <= need.Target:
		return Feed{}, &units.ValueError{Field: "content of the feed solution", Value: feed.String(),
			Need: "more than the target, " + need.Target.String() + ", as there is no room for its water",
			Err:  units.ErrInconsistent}
	default:
		f.Solution = units.Volume((float64(need.Target)*float64(need.Volume) - float64(need.Metal)) / float64(
			feed-need.Target))
	}
	f.Metal = units.Mass(float64(feed) * float64(f.Solution))
	f.Volume = need.Volume + f.Solution + f.Water
	f.DrawOff = max(0, f.Volume-full)
	f.Content = units.MassConcentration(float64(need.Metal+f.Metal) / float64(f.Volume))
	if err := units.Finite("content after feeding", f.Content); err != nil {
		return Feed{}, err
	}
	return f, nil
}

// need is the state against the bath's own target and mark.
func (l *Ledger) need() Need {
	return Need{Metal: units.Mass(l.core.metal), Volume: units.Volume(l.core.volume), Mark: l.bath.Volume,
		Target: l.bath.Aim()}
}

// ByAnalysis returns the addition that brings the bath, as the book knows it
// with its analyses, to its target content at its mark. Post an analysis first.
//
// Errors: those of [Replenish].
//
// Source: [IUPAC2021], [Definition].
func (l *Ledger) ByAnalysis(salt faraday.Formula) (Replenishment, error) {
	if l == nil {
		return Replenishment{}, units.Missing("book", "one that is opened")
	}
	return Replenish(l.need(), l.bath.Metal, salt)
}

// ByCharge returns the addition by the meter alone: what the current drew since
// metal was added last.
//
//	ms = f·Q
//	m = x·ms
//
//	f  [Account.SaltPerCharge]  salt for a unit of charge [kg/C]
//	Q  State.SinceAddition   charge since the last addition [C]
//
// It makes good the deposit and not the drag-out, and knows nothing of the
// content: between analyses it keeps a bath level, it does not bring it back.
// Water is what is missing below the mark.
//
// Errors: those of [Account.SaltPerCharge].
//
// Source: [OpenStaxChem2e] section 17.7, [IUPAC2021].
func (l *Ledger) ByCharge(salt faraday.Formula) (Replenishment, error) {
	if l == nil {
		return Replenishment{}, units.Missing("book", "one that is opened")
	}
	f, err := l.bath.SaltPerCharge(salt)
	if err != nil {
		return Replenishment{}, err
	}
	n := l.need()
	x, err := faraday.MetalContent(salt, l.bath.Metal)
	if err != nil {
		return Replenishment{}, err
	}
	r := Replenishment{Salt: salt, Share: x, SaltMass: f.Of(units.Charge(l.core.sinceAddition)), Volume: max(n.Volume,
		n.Mark)}
	r.Water = r.Volume - n.Volume
	r.Metal = units.Mass(float64(x) * float64(r.SaltMass))
	r.Content = units.MassConcentration(float64(n.Metal+r.Metal) / float64(r.Volume))
	return r, units.Finite("mass of salt", r.SaltMass)
}
