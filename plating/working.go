package plating

import (
	"fmt"

	"example.com/laydown/faraday"
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
	ratio := working.Of("r", "thinnest over average thickness", l.Distribution.MinToAverage)
	density := working.Of("ρ", "density of the deposit", b.Deposit.Density)
	equivalent := working.Of("ε", "electrochemical equivalent", b.Deposit.Equivalent)
	efficiency := working.Of("η", "current efficiency", r.Efficiency)
	area := working.Of("A", "plated area of the load", l.Area)
	mean := working.Of("s", "average thickness", r.Average)
	density2 := working.Of("j", "mean current density", r.CurrentDensity)
	time := working.Of("t", "plating time", r.Time)
	current := working.Of("I", "current", r.Current)
	mass := working.Of("m", "mass of the deposit", r.Mass)
	thinnest := working.Of("s_min", "thickness at the thinnest spot", r.Thinnest)

	var steps []working.Step
	add := func(formula, source string, result working.Term, terms ...working.Term) {
		steps = append(steps, working.Step{Formula: formula, Terms: terms, Result: result, Source: source})
	}
	if step, ok := b.Efficiency.working(r.CurrentDensity, r.Efficiency); ok && l.CurrentDensity != 0 {
		steps = append(steps, step)
	}
	least := working.Of("s_min", "minimum thickness at the thinnest spot", l.MinThickness)
	switch {
	case l.CurrentDensity != 0 && l.Time != 0:
		add("s = ε·η·j·t/ρ", law, mean, equivalent, efficiency, density2, time, density)
		add("s_min = r·s", "Definition", thinnest, ratio, mean)
	case l.Time == 0:
		add("s = s_min/r", "Definition", mean, least, ratio)
		add("t = ρ·s/(ε·η·j)", law, time, density, mean, equivalent, efficiency, density2)
	default:
		add("s = s_min/r", "Definition", mean, least, ratio)
		add("j = ρ·s/(ε·η·t)", law, density2, density, mean, equivalent, efficiency, time)
	}
	add("I = j·A", "Definition", current, density2, area)
	add("Q = I·t", "Definition", working.Of("Q", "charge", r.Charge), current, time)
	add("m = ρ·s·A", "Definition", mass, density, mean, area)
	fine := working.Of("m_fine", "mass of "+metalName(b)+" in the deposit", r.FineMass)
	add("m_fine = w·m", "Definition", fine, working.Of("w", "share of "+metalName(b)+" in the deposit", b.fine()), mass)
	if b.Content > 0 && b.Volume > 0 && !r.Warnings.Has(WarnBathEmpty) {
		add("m_left = c·V - m_fine", "Definition", working.Of("m_left", metalName(b)+" left in the bath", r.MetalLeft),
			working.Of("c", "metal content of the bath", b.Content), working.Of("V", "volume of the bath", b.Volume),
			fine)
		add("c_left = m_left/V", "Definition", working.Of("c_left", "metal content afterwards", r.ContentLeft),
			working.Of("m_left", metalName(b)+" left in the bath", r.MetalLeft),
			working.Of("V", "volume of the bath", b.Volume))
	}
	return steps, nil
}

// working shows the straight line between the two points of a curve next to a
// current density; false for a constant and outside the curve.
func (c EfficiencyCurve) working(j units.CurrentDensity, eff units.Efficiency) (working.Step, bool) {
	for i := 1; i < len(c.points); i++ {
		p, q := c.points[i-1], c.points[i]
		if j >= p.CurrentDensity && j <= q.CurrentDensity {
			return working.Step{Formula: "η = η₁ + (η₂ - η₁)·(j - j₁)/(j₂ - j₁)", Source: "Definition",
				Terms: []working.Term{
					working.Of("η₁", "efficiency at the point below", p.Efficiency),
					working.Of("η₂", "efficiency at the point above", q.Efficiency),
					working.Of("j₁", "current density of the point below", p.CurrentDensity), working.Of("j₂",
						"current density of the point above", q.CurrentDensity),
					working.Of("j", "mean current density", j)},
				Result: working.Of("η", "current efficiency", eff)}, true
		}
	}
	return working.Step{}, false
}

// Working shows how a layer of a system comes to its result: what the layers below
// leave of the minimum thickness, then the steps of [Working].
//
// Errors: as [Working].
//
// Source: [OpenStaxChem2e] section 17.7, [Definition].
func (lr *LayerResult) Working() ([]working.Step, error) {
	if lr == nil {
		return nil, units.Missing("layer", "one that EstimateSystem returned")
	}
	steps, err := Working(&lr.Layer)
	if err != nil || lr.Below == 0 {
		return steps, err
	}
	left := working.Step{Formula: "s_min = s_all - s_below", Source: "Definition",
		Terms: []working.Term{working.Of("s_all", "minimum thickness over all layers of the metal",
			lr.Layer.MinThickness+lr.Below), working.Of("s_below", "thinnest spots of the layers below", lr.Below)},
		Result: working.Of("s_min", "minimum thickness left for this layer", lr.Layer.MinThickness)}
	return append([]working.Step{left}, steps...), nil
}

// LoadAreaWorking shows the arithmetic of [LoadArea].
//
// Errors: as [LoadArea].
//
// Source: [Definition].
func LoadAreaWorking(parts ...Item) (working.Step, error) {
	a, err := LoadArea(parts...)
	if err != nil {
		return working.Step{}, err
	}
	step := working.Step{Formula: "A = ", Source: "Definition", Result: working.Of("A", "plated area of the load", a)}
	for i, p := range parts {
		if i > 0 {
			step.Formula += " + "
		}
		k, a := fmt.Sprintf("k_%d", i+1), fmt.Sprintf("A_%d", i+1)
		step.Formula += k + "·" + a
		step.Terms = append(step.Terms, working.Number(k, "pieces of "+p.Name, float64(p.Count)), working.Of(a,
			"area of one "+p.Name, p.Area))
	}
	return step, nil
}

// EfficiencyWorking shows the arithmetic of [Trial.Efficiency].
//
// Errors: as [Trial.Efficiency].
//
// Source: [OpenStaxChem2e] section 17.7.
func (tr Trial) EfficiencyWorking(d faraday.Deposit) ([]working.Step, error) {
	r, err := tr.Efficiency(d)
	if err != nil {
		return nil, err
	}
	return []working.Step{
		{Formula: "m = m₂ - m₁", Source: "Definition", Result: working.Of("m", "gain in mass", r.Gain),
			Terms: []working.Term{working.Of("m₂", "mass after", tr.After),
				working.Of("m₁", "mass before", tr.Before)}},
		{Formula: "η = m/(ε·I·t)", Source: "OpenStaxChem2e", Result: working.Of("η", "current efficiency",
			r.Efficiency),
			Terms: []working.Term{working.Of("m", "gain in mass", r.Gain), working.Of("ε", "electrochemical equivalent",
				d.Equivalent),
				working.Of("I", "current", tr.Current), working.Of("t", "time", tr.Time)}},
	}, nil
}
