package faraday

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// The steps of Faraday's law, for a sheet or a lesson. Each gives the result of the
// function it is named after, with the same errors, and is built only when asked for.

const lawSource = "OpenStaxChem2e"

func termEquivalent(eq units.Equivalent) working.Term {
	return working.Of("ε", "electrochemical equivalent", eq)
}

func termEfficiency(eff units.Efficiency) working.Term {
	return working.Of("η", "current efficiency", eff)
}

func termDensity(d Deposit) working.Term {
	return working.Of("ρ", "density of the deposit", d.Density)
}

// step puts a result into a step, or passes the error on.
func step[Q units.Quantity](formula, symbol, meaning, source string, v Q, err error, terms ...working.Term) (working.Step,
	error) {
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{Formula: formula, Terms: terms, Result: working.Of(symbol, meaning, v), Source: source}, nil
}

// NewEquivalentWorking shows the calculation of [NewEquivalent].
//
// Errors: those of [NewEquivalent].
//
// Source: [SI2019], [OpenStaxChem2e] section 17.7.
func NewEquivalentWorking(molar units.MolarMass, electrons int) (working.Step, error) {
	eq, err := NewEquivalent(molar, electrons)
	return step("ε = M/(n·F)", "ε", "electrochemical equivalent", lawSource, eq, err,
		working.Of("M", "molar mass of the metal", molar),
		working.Number("n", "electrons taken up by one atom", float64(electrons)),
		working.Constant("F", "Faraday constant", FaradayConstant, "C/mol"))
}

// MassWorking shows the calculation of [Mass].
//
// Errors: those of [Mass].
//
// Source: [OpenStaxChem2e] section 17.7.
func MassWorking(eq units.Equivalent, i units.Current, t units.Duration, eff units.Efficiency) (working.Step, error) {
	m, err := Mass(eq, i, t, eff)
	return step("m = ε·η·I·t", "m", "mass of the deposit", lawSource, m, err, termEquivalent(eq), termEfficiency(eff),
		working.Of("I", "current", i), working.Of("t", "time", t))
}

// MassOfChargeWorking shows the calculation of [MassOfCharge].
//
// Errors: those of [MassOfCharge].
//
// Source: [OpenStaxChem2e] section 17.7.
func MassOfChargeWorking(eq units.Equivalent, q units.Charge, eff units.Efficiency) (working.Step, error) {
	m, err := MassOfCharge(eq, q, eff)
	return step("m = ε·η·Q", "m", "mass of the deposit", lawSource, m, err, termEquivalent(eq), termEfficiency(eff),
		working.Of("Q", "charge", q))
}

// ChargeWorking shows the calculation of [Charge].
//
// Errors: those of [Charge].
//
// Source: [OpenStaxChem2e] section 17.7.
func ChargeWorking(eq units.Equivalent, m units.Mass, eff units.Efficiency) (working.Step, error) {
	q, err := Charge(eq, m, eff)
	return step("Q = m/(ε·η)", "Q", "charge", lawSource, q, err, working.Of("m", "mass of the deposit", m),
		termEquivalent(eq), termEfficiency(eff))
}

// TimeWorking shows the calculation of [Time].
//
// Errors: those of [Time].
//
// Source: [OpenStaxChem2e] section 17.7.
func TimeWorking(eq units.Equivalent, m units.Mass, i units.Current, eff units.Efficiency) (working.Step, error) {
	t, err := Time(eq, m, i, eff)
	return step("t = m/(ε·η·I)", "t", "time", lawSource, t, err, working.Of("m", "mass of the deposit", m),
		termEquivalent(eq), termEfficiency(eff), working.Of("I", "current", i))
}

// CurrentWorking shows the calculation of [Current].
//
// Errors: those of [Current].
//
// Source: [OpenStaxChem2e] section 17.7.
func CurrentWorking(eq units.Equivalent, m units.Mass, t units.Duration, eff units.Efficiency) (working.Step, error) {
	i, err := Current(eq, m, t, eff)
	return step("I = m/(ε·η·t)", "I", "current", lawSource, i, err, working.Of("m", "mass of the deposit", m),
		termEquivalent(eq), termEfficiency(eff), working.Of("t", "time", t))
}

// EfficiencyWorking shows the calculation of [Efficiency].
//
// Errors: those of [Efficiency]; an efficiency over 1 gives no step.
//
// Source: [OpenStaxChem2e] section 17.7.
func EfficiencyWorking(eq units.Equivalent, m units.Mass, q units.Charge) (working.Step, error) {
	eff, err := Efficiency(eq, m, q)
	return step("η = m/(ε·Q)", "η", "current efficiency", lawSource, eff, err, working.Of("m", "mass gained", m),
		termEquivalent(eq), working.Of("Q", "charge that passed", q))
}

// ThicknessWorking shows the calculation of [Deposit.Thickness].
//
// Errors: those of [Deposit.Thickness].
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) ThicknessWorking(j units.CurrentDensity, t units.Duration, eff units.Efficiency) (working.Step, error) {
	s, err := d.Thickness(j, t, eff)
	return step("s = ε·η·j·t/ρ", "s", "thickness", lawSource, s, err, termEquivalent(d.Equivalent), termEfficiency(eff),
		working.Of("j", "current density", j), working.Of("t", "time", t), termDensity(d))
}

// TimeForWorking shows the calculation of [Deposit.TimeFor].
//
// Errors: those of [Deposit.TimeFor].
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) TimeForWorking(s units.Length, j units.CurrentDensity, eff units.Efficiency) (working.Step, error) {
	t, err := d.TimeFor(s, j, eff)
	return step("t = ρ·s/(ε·η·j)", "t", "time", lawSource, t, err, termDensity(d), working.Of("s", "thickness", s),
		termEquivalent(d.Equivalent), termEfficiency(eff), working.Of("j", "current density", j))
}

// CurrentDensityForWorking shows the calculation of [Deposit.CurrentDensityFor].
//
// Errors: those of [Deposit.CurrentDensityFor].
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) CurrentDensityForWorking(s units.Length, t units.Duration, eff units.Efficiency) (working.Step,
	error) {
	j, err := d.CurrentDensityFor(s, t, eff)
	return step("j = ρ·s/(ε·η·t)", "j", "current density", lawSource, j, err, termDensity(d),
		working.Of("s", "thickness", s), termEquivalent(d.Equivalent), termEfficiency(eff), working.Of("t", "time", t))
}

// ChargeForWorking shows the calculation of [Deposit.ChargeFor].
//
// Errors: those of [Deposit.ChargeFor].
//
// Source: [OpenStaxChem2e] section 17.7 (example with thickness).
func (d Deposit) ChargeForWorking(s units.Length, a units.Area, eff units.Efficiency) (working.Step, error) {
	q, err := d.ChargeFor(s, a, eff)
	return step("Q = ρ·s·A/(ε·η)", "Q", "charge", lawSource, q, err, termDensity(d), working.Of("s", "average thickness", s),
		working.Of("A", "area", a), termEquivalent(d.Equivalent), termEfficiency(eff))
}

// MassForWorking shows the calculation of [Deposit.MassFor].
//
// Errors: those of [Deposit.MassFor].
//
// Source: [Definition].
func (d Deposit) MassForWorking(s units.Length, a units.Area) (working.Step, error) {
	m, err := d.MassFor(s, a)
	return step("m = ρ·s·A", "m", "mass of the coat", "Definition", m, err, termDensity(d),
		working.Of("s", "average thickness", s), working.Of("A", "area", a))
}

// ThicknessOfWorking shows the calculation of [Deposit.ThicknessOf].
//
// Errors: those of [Deposit.ThicknessOf].
//
// Source: [Definition].
func (d Deposit) ThicknessOfWorking(m units.Mass, a units.Area) (working.Step, error) {
	s, err := d.ThicknessOf(m, a)
	return step("s = m/(ρ·A)", "s", "average thickness", "Definition", s, err, working.Of("m", "mass of the coat", m),
		termDensity(d), working.Of("A", "area", a))
}
