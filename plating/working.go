package plating

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Working shows how [Estimate] comes to its result: one step a formula, in the
// order of the arithmetic, each with the numbers put in and its source.
//
// Errors: as [Estimate].
//
// Source: [OpenStaxChem2e] section 17.7.
func Working(l *Layer) ([]working.Step, error) {
	r, err := Estimate(l)
	if err != nil {
		return nil, err
	}
	const law = "OpenStaxChem2e"
	b := &l.Bath
	ratio := working.Of("r", "thinnest over mean thickness", l.Distribution.MinToMean)
	density := working.Of("ρ", "density of the deposit", b.Deposit.Density)
	equivalent := working.Of("ε", "electrochemical equivalent", b.Deposit.Equivalent)
	efficiency := working.Of("η", "current efficiency", r.Efficiency)
	area := working.Of("A", "plated area of the load", l.Area)
	mean := working.Of("s", "mean thickness", r.Mean)
	density2 := working.Of("j", "mean current density", r.CurrentDensity)
	time := working.Of("t", "plating time", r.Time)
	current := working.Of("I", "current", r.Current)
	mass := working.Of("m", "mass of the deposit", r.Mass)
	thinnest := working.Of("s_min", "thickness at the thinnest spot", r.Thinnest)

	var steps []working.Step
	add := func(formula, source string, result working.Term, terms ...working.Term) {
		steps = append(steps, working.Step{Formula: formula, Terms: terms, Result: result, Source: source})
	}
	promise := working.Of("s_min", "promised thickness at the thinnest spot", l.Promise)
	switch {
	case l.CurrentDensity != 0 && l.Time != 0:
		add("s = ε·η·j·t/ρ", law, mean, equivalent, efficiency, density2, time, density)
		add("s_min = r·s", "Definition", thinnest, ratio, mean)
	case l.Time == 0:
		add("s = s_min/r", "Definition", mean, promise, ratio)
		add("t = ρ·s/(ε·η·j)", law, time, density, mean, equivalent, efficiency, density2)
	default:
		add("s = s_min/r", "Definition", mean, promise, ratio)
		add("j = ρ·s/(ε·η·t)", law, density2, density, mean, equivalent, efficiency, time)
	}
	add("I = j·A", "Definition", current, density2, area)
	add("Q = I·t", "Definition", working.Of("Q", "charge", r.Charge), current, time)
	add("m = ρ·s·A", "Definition", mass, density, mean, area)
	fine := working.Of("m_fine", "mass of "+metalName(b)+" in the deposit", r.FineMass)
	add("m_fine = w·m", "Definition", fine, working.Of("w", "share of "+metalName(b)+" in the deposit", b.fine()), mass)
	if b.Content > 0 && b.Volume > 0 && !r.Warnings.Has(WarnBathEmpty) {
		add("m_left = c·V - m_fine", "Definition", working.Of("m_left", metalName(b)+" left in the bath", r.MetalLeft),
			working.Of("c", "metal content of the bath", b.Content), working.Of("V", "volume of the bath", b.Volume), fine)
		add("c_left = m_left/V", "Definition", working.Of("c_left", "metal content afterwards", r.ContentLeft),
			working.Of("m_left", metalName(b)+" left in the bath", r.MetalLeft), working.Of("V", "volume of the bath", b.Volume))
	}
	return steps, nil
}

// EfficiencyWorking shows the arithmetic of [Trial.Efficiency].
//
// Errors: as [Trial.Efficiency] for fields out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func (tr Trial) EfficiencyWorking(eq units.Equivalent, r TrialResult) []working.Step {
	return []working.Step{
		{Formula: "m = m₂ - m₁", Source: "Definition", Result: working.Of("m", "gain in mass", r.Gain),
			Terms: []working.Term{working.Of("m₂", "mass after", tr.After), working.Of("m₁", "mass before", tr.Before)}},
		{Formula: "η = m/(ε·I·t)", Source: "OpenStaxChem2e", Result: working.Of("η", "current efficiency", r.Efficiency),
			Terms: []working.Term{working.Of("m", "gain in mass", r.Gain), working.Of("ε", "electrochemical equivalent", eq),
				working.Of("I", "current", tr.Current), working.Of("t", "time", tr.Time)}},
	}
}
