package electrical

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// AnodeArea returns the area of the anodes.
//
//	Aa = r·Ac
//
//	r   ratio    of anode to cathode area, > 0
//	Ac  cathode  plated area of the load, > 0 [m²]
//
// Count the area that faces the work; the back of a flat anode at a tank wall
// carries little. The ratio belongs to the bath: 1 to 3 for a gold flash with
// stainless anodes.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition]; [Guidebook2012] p. 333 for the ratio.
func AnodeArea(cathode units.Area, ratio units.Ratio) (units.Area, error) {
	if err := units.Positive("cathode area", cathode); err != nil {
		return 0, err
	}
	if err := units.Positive("ratio of anode to cathode area", ratio); err != nil {
		return 0, err
	}
	return finite("anode area", units.Area(float64(ratio)*float64(cathode)))
}

// AnodeCurrentDensity returns the mean current density at the anodes.
//
//	ja = I/Aa
//
//	I   current  ≥ 0 [A]
//	Aa  anode    area of the anodes, > 0 [m²]
//
// A mean: edges and near spots carry more. Errors: a [*units.ValueError] for an
// argument out of range.
//
// Source: [Definition].
func AnodeCurrentDensity(current units.Current, anode units.Area) (units.CurrentDensity, error) {
	if err := units.NonNegative("current", current); err != nil {
		return 0, err
	}
	if err := units.Positive("anode area", anode); err != nil {
		return 0, err
	}
	return finite("anode current density", units.CurrentDensity(float64(current)/float64(anode)))
}

// AnodeWorking shows the calculations of [AnodeArea] and [AnodeCurrentDensity].
//
// Errors: as there.
//
// Source: [Definition].
func AnodeWorking(cathode units.Area, ratio units.Ratio, current units.Current) ([]working.Step, error) {
	area, err := AnodeArea(cathode, ratio)
	if err != nil {
		return nil, err
	}
	j, err := AnodeCurrentDensity(current, area)
	if err != nil {
		return nil, err
	}
	a := working.Of("Aa", "area of the anodes", area)
	return []working.Step{
		{Formula: "Aa = r·Ac", Terms: []working.Term{working.Of("r", "ratio of anode to cathode area", ratio),
			working.Of("Ac", "cathode area", cathode)},
			Result: a, Source: "Definition"},
		{Formula: "ja = I/Aa", Terms: []working.Term{working.Of("I", "current", current), a},
			Result: working.Of("ja", "current density at the anodes", j), Source: "Definition"},
	}, nil
}

// AnodeUsed returns the mass that soluble anodes lose.
//
//	m = s·ε·η·Q
//
//	s  share  of the current that the soluble anodes carry, 0 to 1
//	ε  eq     electrochemical equivalent of the dissolving metal, > 0 [kg/C]
//	η  eff    anode efficiency, 0 < η ≤ 1
//	Q  q      charge, ≥ 0 [C]
//
// Sludge and scrap come on top: what falls off undissolved or is thrown away as
// a stub. Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7.
func AnodeUsed(eq units.Equivalent, q units.Charge, share units.Ratio, eff units.Efficiency) (units.Mass, error) {
	if err := units.Positive("electrochemical equivalent", eq); err != nil {
		return 0, err
	}
	if err := units.NonNegative("charge", q); err != nil {
		return 0, err
	}
	if err := units.Fraction("share of the current on soluble anodes", share); err != nil {
		return 0, err
	}
	if err := units.PositiveFraction("anode efficiency", eff); err != nil {
		return 0, err
	}
	return finite("mass of anode used", units.Mass(float64(share)*float64(eq)*float64(eff)*float64(q)))
}

// AnodeUsedWorking shows the calculation of [AnodeUsed].
//
// Errors: as there.
//
// Source: [OpenStaxChem2e] section 17.7.
func AnodeUsedWorking(eq units.Equivalent, q units.Charge, share units.Ratio, eff units.Efficiency) (working.Step,
	error) {
	m, err := AnodeUsed(eq, q, share, eff)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{Formula: "m = s·ε·η·Q",
		Terms: []working.Term{working.Of("s", "share of the current on soluble anodes", share), working.Of("ε",
			"electrochemical equivalent", eq),
			working.Of("η", "anode efficiency", eff), working.Of("Q", "charge", q)},
		Result: working.Of("m", "mass of anode used", m), Source: "OpenStaxChem2e"}, nil
}
