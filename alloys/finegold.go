package alloys

import (
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A GoldCoat is what turns the thickness of a gold alloy into that of the fine
// gold in it. The guides and standards count fine gold; the gauge and the clock
// count the alloy.
type GoldCoat struct {
	Gold    units.MassFraction // of the alloy, 0 < w ≤ 1
	Density units.Density      // of the alloy as it lies, > 0
	Fine    units.Density      // of fine gold; zero takes 19.3 g/cm³ from package faraday
}

// NewGoldCoat returns the coat of an alloy, with the density of [Density].
//
// Errors: those of [Density]; a [*units.ValueError] when the alloy holds no gold.
//
// Source: [ISO10713].
func NewGoldCoat(c Composition, o DensityOptions) (GoldCoat, error) {
	if c.IsZero() {
		return GoldCoat{}, noComposition("composition")
	}
	d, err := Density(c, o)
	if err != nil {
		return GoldCoat{}, err
	}
	fine, err := o.element("Au")
	if err != nil {
		return GoldCoat{}, err
	}
	if err := units.PositiveFraction("mass fraction of gold", c.Share("Au")); err != nil {
		return GoldCoat{}, err
	}
	return GoldCoat{Gold: c.Share("Au"), Density: d.Value, Fine: fine}, nil
}

// complete checks g and fills in the density of fine gold.
func (g GoldCoat) complete() (GoldCoat, error) {
	if g.Fine == 0 {
		gold, err := faraday.Lookup("Au")
		if err != nil {
			return GoldCoat{}, err
		}
		g.Fine = gold.Density
	}
	if err := units.PositiveFraction("mass fraction of gold", g.Gold); err != nil {
		return GoldCoat{}, err
	}
	if err := units.Positive("density of the alloy", g.Density); err != nil {
		return GoldCoat{}, err
	}
	if err := units.Positive("density of fine gold", g.Fine); err != nil {
		return GoldCoat{}, err
	}
	return g, nil
}

// terms are those of every formula of this file.
func (g GoldCoat) terms(first working.Term) []working.Term {
	return []working.Term{first, working.Of("w", "mass fraction of gold", g.Gold),
		working.Of("ρ", "density of the alloy", g.Density), working.Of("ρ_f", "density of fine gold", g.Fine)}
}

// AlloyThickness returns how thick the alloy must be to carry the gold of a
// fine-gold thickness.
//
//	t = t_f ρ_f / (w ρ)
//
//	t_f  fine       thickness of fine gold, ≥ 0 [m]
//	ρ_f  g.Fine     density of fine gold, > 0 [kg/m³]
//	w    g.Gold     mass fraction of gold in the alloy, 0 < w ≤ 1
//	ρ    g.Density  density of the alloy, > 0 [kg/m³]
//
// Both the fineness and the density count: 0.5 µm of fine gold is 0.835 µm of
// 750 gold, not 0.5/0.75 = 0.667 µm. As exact as the densities. Errors: a
// [*units.ValueError] for a value outside these bounds.
//
// Source: [ISO10713].
func AlloyThickness(fine units.Length, g GoldCoat) (units.Length, error) {
	t, _, err := alloyThickness(fine, g, false)
	return t, err
}

// AlloyThicknessWorking shows how [AlloyThickness] computes, with the same errors.
func AlloyThicknessWorking(fine units.Length, g GoldCoat) ([]working.Step, error) {
	_, steps, err := alloyThickness(fine, g, true)
	return steps, err
}

func alloyThickness(fine units.Length, g GoldCoat, show bool) (units.Length, []working.Step, error) {
	g, err := g.complete()
	if err != nil {
		return 0, nil, err
	}
	if err := units.NonNegative("fine-gold thickness", fine); err != nil {
		return 0, nil, err
	}
	t := units.Length(float64(fine) * float64(g.Fine) / (float64(g.Gold) * float64(g.Density)))
	if err := units.Finite("thickness of the alloy", t); err != nil {
		return 0, nil, err
	}
	if !show {
		return t, nil, nil
	}
	step := working.Step{Formula: "t = t_f·ρ_f/(w·ρ)", Terms: g.terms(working.Of("t_f", "thickness of fine gold", fine)),
		Result: working.Of("t", "thickness of the alloy", t), Source: "ISO10713"}
	return t, []working.Step{step}, nil
}

// FineThickness returns the thickness of fine gold that a coat of gold alloy
// is worth: [AlloyThickness] the other way, with its symbols.
//
//	t_f = t w ρ / ρ_f
//
//	t  alloy  thickness of the alloy, ≥ 0 [m]
//
// Errors: a [*units.ValueError] for a value out of bounds.
//
// Source: [ISO10713].
func FineThickness(alloy units.Length, g GoldCoat) (units.Length, error) {
	t, _, err := fineThickness(alloy, g, false)
	return t, err
}

// FineThicknessWorking shows how [FineThickness] computes, with the same errors.
func FineThicknessWorking(alloy units.Length, g GoldCoat) ([]working.Step, error) {
	_, steps, err := fineThickness(alloy, g, true)
	return steps, err
}

func fineThickness(alloy units.Length, g GoldCoat, show bool) (units.Length, []working.Step, error) {
	g, err := g.complete()
	if err != nil {
		return 0, nil, err
	}
	if err := units.NonNegative("thickness of the alloy", alloy); err != nil {
		return 0, nil, err
	}
	t := units.Length(float64(alloy) * float64(g.Gold) * float64(g.Density) / float64(g.Fine))
	if err := units.Finite("thickness of fine gold", t); err != nil {
		return 0, nil, err
	}
	if !show {
		return t, nil, nil
	}
	step := working.Step{Formula: "t_f = t·w·ρ/ρ_f", Terms: g.terms(working.Of("t", "thickness of the alloy", alloy)),
		Result: working.Of("t_f", "thickness of fine gold", t), Source: "ISO10713"}
	return t, []working.Step{step}, nil
}

// FineMassPerArea returns the fine gold on each area under a coat of gold alloy.
//
//	m_f = t w ρ
//
//	t  alloy      thickness of the alloy, ≥ 0 [m]
//	w  g.Gold     mass fraction of gold, 0 < w ≤ 1
//	ρ  g.Density  density of the alloy, > 0 [kg/m³]
//
// Errors: a [*units.ValueError] for a value out of bounds.
//
// Source: [Definition].
func FineMassPerArea(alloy units.Length, g GoldCoat) (units.MassPerArea, error) {
	m, _, err := fineMassPerArea(alloy, g, false)
	return m, err
}

// FineMassPerAreaWorking shows how [FineMassPerArea] computes, with the same errors.
func FineMassPerAreaWorking(alloy units.Length, g GoldCoat) ([]working.Step, error) {
	_, steps, err := fineMassPerArea(alloy, g, true)
	return steps, err
}

func fineMassPerArea(alloy units.Length, g GoldCoat, show bool) (units.MassPerArea, []working.Step, error) {
	g, err := g.complete()
	if err != nil {
		return 0, nil, err
	}
	if err := units.NonNegative("thickness of the alloy", alloy); err != nil {
		return 0, nil, err
	}
	m := units.MassPerArea(float64(alloy) * float64(g.Gold) * float64(g.Density))
	if err := units.Finite("fine gold per area", m); err != nil {
		return 0, nil, err
	}
	if !show {
		return m, nil, nil
	}
	step := working.Step{Formula: "m_f = t·w·ρ", Terms: g.terms(working.Of("t", "thickness of the alloy", alloy))[:3],
		Result: working.Of("m_f", "fine gold per area", m), Source: "Definition"}
	return m, []working.Step{step}, nil
}

// ThicknessForFineGold returns how thick the alloy must be to carry a mass of
// fine gold per area: [FineMassPerArea] the other way, with its symbols.
//
//	t = m_f / (w ρ)
//
//	m_f  fine  fine gold per area, ≥ 0 [kg/m²]
//
// Errors: a [*units.ValueError] for a value out of bounds.
//
// Source: [Definition].
func ThicknessForFineGold(fine units.MassPerArea, g GoldCoat) (units.Length, error) {
	t, _, err := thicknessForFineGold(fine, g, false)
	return t, err
}

// ThicknessForFineGoldWorking shows how [ThicknessForFineGold] computes, with the same errors.
func ThicknessForFineGoldWorking(fine units.MassPerArea, g GoldCoat) ([]working.Step, error) {
	_, steps, err := thicknessForFineGold(fine, g, true)
	return steps, err
}

func thicknessForFineGold(fine units.MassPerArea, g GoldCoat, show bool) (units.Length, []working.Step, error) {
	g, err := g.complete()
	if err != nil {
		return 0, nil, err
	}
	if err := units.NonNegative("fine gold per area", fine); err != nil {
		return 0, nil, err
	}
	t := units.Length(float64(fine) / (float64(g.Gold) * float64(g.Density)))
	if err := units.Finite("thickness of the alloy", t); err != nil {
		return 0, nil, err
	}
	if !show {
		return t, nil, nil
	}
	step := working.Step{Formula: "t = m_f/(w·ρ)", Terms: g.terms(working.Of("m_f", "fine gold per area", fine))[:3],
		Result: working.Of("t", "thickness of the alloy", t), Source: "Definition"}
	return t, []working.Step{step}, nil
}
