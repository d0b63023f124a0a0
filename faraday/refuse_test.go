package faraday_test

import (
	"errors"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyErrorsLeaveNoFigure: a figure never comes with an error, except
// beside a *units.RangeError, and is finite; no argument makes a panic.
func TestPropertyErrorsLeaveNoFigure(t *testing.T) {
	beside := func(err error) bool {
		var r *units.RangeError
		return errors.As(err, &r)
	}
	formula := func(text string) faraday.Formula {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
	const (
		eq   = units.Equivalent(2.0414e-6)
		mg   = units.Milligram
		ampM = units.AmpereMinute
		room = units.Temperature(298.15)
		au   = units.MolarMass(0.19696657)
	)
	gold := faraday.Deposit{Equivalent: eq, Density: 19300}
	kinetics := faraday.ButlerVolmer{Exchange: 3, Anodic: 0.5, Cathodic: 0.4, Temperature: room}
	anode, cathode := faraday.Tafel{Exchange: 0.1, Slope: 0.118}, faraday.Tafel{Exchange: 0.1, Slope: -0.118}
	pulse := faraday.Pulse{Peak: 3, On: 0.001, Off: 0.009}
	reverse := faraday.Reverse{Forward: 1, ForwardTime: 10, Backward: 1, BackwardTime: 2}
	salt, metal := formula("KAu(CN)2"), formula("Au")
	for _, c := range []struct {
		name string
		fn   any
		args []any
	}{
		{"NewEquivalent", faraday.NewEquivalent, []any{au, 1}},
		{"Mass", faraday.Mass, []any{eq, units.Ampere, units.Minute, 0.9}},
		{"MassOfCharge", faraday.MassOfCharge, []any{eq, ampM, 0.9}},
		{"Charge", faraday.Charge, []any{eq, 10 * mg, 0.9}},
		{"Time", faraday.Time, []any{eq, 10 * mg, units.Ampere, 0.9}},
		{"Current", faraday.Current, []any{eq, 10 * mg, units.Minute, 0.9}},
		{"Efficiency", faraday.Efficiency, []any{eq, 10 * mg, ampM}},
		{"Valence", faraday.Valence, []any{au, 110 * mg, ampM, 0.9}},
		{"NewDeposit", faraday.NewDeposit, []any{"Au", 1}},
		{"Growth", faraday.Deposit.Growth, []any{gold, units.CurrentDensity(50), 0.9}},
		{"Thickness", faraday.Deposit.Thickness, []any{gold, units.CurrentDensity(50), units.Minute, 0.9}},
		{"TimeFor", faraday.Deposit.TimeFor, []any{gold, units.Micrometre, units.CurrentDensity(50), 0.9}},
		{"CurrentDensityFor", faraday.Deposit.CurrentDensityFor, []any{gold, units.Micrometre, units.Minute, 0.9}},
		{"AreaFor", faraday.Deposit.AreaFor, []any{gold, ampM, units.Micrometre, 0.9}},
		{"ChargeFor", faraday.Deposit.ChargeFor, []any{gold, units.Micrometre, units.SquareDecimetre, 0.9}},
		{"MassFor", faraday.Deposit.MassFor, []any{gold, units.Micrometre, units.SquareDecimetre}},
		{"ThicknessOf", faraday.Deposit.ThicknessOf, []any{gold, mg, units.SquareDecimetre}},
		{"Trade", faraday.Deposit.Trade, []any{gold}},
		{"PartOf", faraday.NewDepositPart, []any{"Au", 1, units.MassFraction(0.9)}},
		{"MixedEquivalent", faraday.MixedEquivalent, []any{[]faraday.DepositPart{{Molar: au, Electrons: 1, Share: 1}}}},
		{"CurrentShares", faraday.CurrentShares, []any{[]faraday.DepositPart{{Molar: au, Electrons: 1, Share: 1}}}},
		{"Hydrogen", faraday.Hydrogen, []any{ampM, 0.9, room, units.Atmosphere}},
		{"Oxygen", faraday.Oxygen, []any{ampM, room, units.Atmosphere}},
		{"Nernst", faraday.Nernst, []any{1.7, 1, 0.5, room}},
		{"NernstSlope", faraday.NernstSlope, []any{room}},
		{"CellVoltage", faraday.CellVoltage, []any{1.5, 0.3}},
		{"LogEquilibriumConstant", faraday.LogEquilibriumConstant, []any{1.1, 2, room}},
		{"GibbsEnergy", faraday.GibbsEnergy, []any{1.1, 2}},
		{"ButlerVolmer.CurrentDensity", faraday.ButlerVolmer.CurrentDensity, []any{kinetics, 0.05}},
		{"ButlerVolmer.Slope", faraday.ButlerVolmer.Slope, []any{kinetics, 0.05}},
		{"ButlerVolmer.Resistance", faraday.ButlerVolmer.Resistance, []any{kinetics, 0.05}},
		{"ButlerVolmer.PolarisationResistance", faraday.ButlerVolmer.PolarisationResistance, []any{kinetics}},
		{"ButlerVolmer.Overpotential", faraday.ButlerVolmer.Overpotential, []any{kinetics, 30.0}},
		{"Tafel.Overpotential", faraday.Tafel.Overpotential, []any{anode, 30.0}},
		{"Tafel.CurrentDensity", faraday.Tafel.CurrentDensity, []any{cathode, -0.2}},
		{"Tafel.Resistance", faraday.Tafel.Resistance, []any{cathode, -30.0}},
		{"TafelSlope", faraday.TafelSlope, []any{0.5, room}},
		{"TransferCoefficient", faraday.TransferCoefficient, []any{0.118, room}},
		{"TafelFit", faraday.TafelFit, []any{[]faraday.TafelPoint{{Overpotential: 0.15, CurrentDensity: 2},
			{Overpotential: 0.2, CurrentDensity: 6}, {Overpotential: 0.3, CurrentDensity: 40}}}},
		{"LimitingCurrentDensity", faraday.LimitingCurrentDensity, []any{1, 1e-9, 40.0, 1e-4}},
		{"ConcentrationOverpotential", faraday.ConcentrationOverpotential, []any{50.0, 100.0, 1, room}},
		{"WagnerNumber", faraday.WagnerNumber, []any{10.0, 0.01, 0.1}},
		{"Ramp.Charge", faraday.Ramp.Charge, []any{faraday.Ramp{From: 1, To: 2, Time: 60}}},
		{"Ramp.Mean", faraday.Ramp.Mean, []any{faraday.Ramp{From: 1, To: 2, Time: 60}}},
		{"Pulse.Duty", faraday.Pulse.Duty, []any{pulse}},
		{"Pulse.Mean", faraday.Pulse.Mean, []any{pulse}},
		{"Pulse.Charge", faraday.Pulse.Charge, []any{pulse, 60.0}},
		{"Reverse.Mean", faraday.Reverse.Mean, []any{reverse}},
		{"Reverse.Charge", faraday.Reverse.Charge, []any{reverse, 60.0}},
		{"Sequence.Time", faraday.Sequence.Time, []any{faraday.Sequence{{Current: 1, Time: 60}, {Current: -1, Time: 5}}}},
		{"Sequence.Charge", faraday.Sequence.Charge, []any{faraday.Sequence{{Current: 1, Time: 60}, {Current: -1, Time: 5}}}},
		{"Sequence.Mean", faraday.Sequence.Mean, []any{faraday.Sequence{{Current: 1, Time: 60}, {Current: -1, Time: 5}}}},
		{"IntegrateLog", faraday.IntegrateLog, []any{[]faraday.CurrentReading{{At: 0, Current: 1}, {At: 10, Current: 2}}, 5.0}},
		{"SaltFor", faraday.SaltFor, []any{mg, salt, "Au"}},
	} {
		if testdata.WrongCalls(t, beside, c.name, c.fn, c.args...) == 0 {
			t.Errorf("%s refuses nothing", c.name)
		}
	}
	// What has no number to get wrong.
	none := formula("Ag")
	for name, got := range map[string]func() (units.MassFraction, error){
		"MetalContent":   func() (units.MassFraction, error) { return faraday.MetalContent(salt, "Ag") },
		"no such metal":  func() (units.MassFraction, error) { return faraday.MetalContent(salt, "Xx") },
		"MassFraction":   func() (units.MassFraction, error) { return salt.MassFraction("Xx") },
		"of nothing":     func() (units.MassFraction, error) { return faraday.Formula{}.MassFraction("Au") },
		"not in it":      func() (units.MassFraction, error) { return salt.MassFractionOf(none) },
		"group of none":  func() (units.MassFraction, error) { return faraday.Formula{}.MassFractionOf(metal) },
		"nothing in it":  func() (units.MassFraction, error) { return salt.MassFractionOf(faraday.Formula{}) },
		"salt of no sum": func() (units.MassFraction, error) { return faraday.MetalContent(faraday.Formula{}, "Au") },
	} {
		if w, err := got(); w != 0 || err == nil {
			t.Errorf("%s: %v, %v", name, w, err)
		}
	}
}
