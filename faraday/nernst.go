package faraday

import (
	"fmt"
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Nernst returns the equilibrium potential of a half reaction, or the voltage
// of a cell reaction, away from the standard state.
//
//	E = E0 - R·T/(n·F)·ln Q
//
//	E0  standard     standard potential or cell voltage [V]
//	n   electrons    in the reaction as written, > 0
//	Q   quotient     reaction quotient, > 0
//	T   temperature  > 0 [K]
//	R, F             gas and Faraday constants (exact)
//
// Potentials are those of reduction, against the standard hydrogen electrode.
// Q is that of the reaction written as a reduction: for Niⁿ⁺ + n e⁻ = Ni it is
// 1/a(Niⁿ⁺), for [Au(CN)2]⁻ + e⁻ = Au + 2 CN⁻ it is a(CN⁻)²/a([Au(CN)2]⁻). It
// holds activities: where an activity is half the concentration, a potential
// from mol/L is 18 mV off for one electron at 25 °C. A standard potential
// printed for 25 °C moves with the temperature itself, which is not in the
// formula.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.4.
func Nernst(standard units.Voltage, electrons int, quotient units.Ratio, temperature units.Temperature) (units.Voltage,
	error) {
	if err := units.Finite("standard potential", standard); err != nil {
		return 0, err
	}
	if err := checkElectrons(electrons); err != nil {
		return 0, err
	}
	if err := units.Positive("reaction quotient", quotient); err != nil {
		return 0, err
	}
	if err := units.Positive("temperature", temperature); err != nil {
		return 0, err
	}
	shift := GasConstant * float64(temperature) / (float64(electrons) * FaradayConstant) * math.Log(float64(quotient))
	return finite("potential", units.Voltage(float64(standard)-float64(shift)))
}

// NernstSlope returns how far a one-electron potential moves when the quotient
// changes tenfold; divide it by the number of electrons.
//
//	s = ln 10 · R·T/F
//
//	T  temperature  > 0 [K]
//	R, F            gas and Faraday constants (exact)
//
// 59.16 mV at 25 °C, 66.10 mV at 60 °C.
//
// Errors: a [*units.ValueError] for a temperature out of range.
//
// Source: [OpenStaxChem2e] section 17.4.
func NernstSlope(temperature units.Temperature) (units.Voltage, error) {
	if err := units.Positive("temperature", temperature); err != nil {
		return 0, err
	}
	return finite("slope", units.Voltage(math.Ln10*thermalVoltage(temperature)))
}

// CellVoltage returns the voltage of a cell at rest from the potentials of its
// electrodes.
//
//	E = Ec - Ea
//
//	Ec  cathode  potential where reduction takes place [V]
//	Ea  anode    potential where oxidation takes place [V]
//
// Both are reduction potentials against the same reference; the anode's is not
// turned round beforehand. Above zero the reaction runs of itself (metal that
// plates out without current, as gold on nickel), below zero it has to be
// driven.
//
// Errors: a [*units.ValueError] for a potential that is not finite.
//
// Source: [OpenStaxChem2e] section 17.3.
func CellVoltage(cathode, anode units.Voltage) (units.Voltage, error) {
	if err := units.Finite("potential of the cathode", cathode); err != nil {
		return 0, err
	}
	if err := units.Finite("potential of the anode", anode); err != nil {
		return 0, err
	}
	return finite("cell voltage", cathode-anode)
}

// LogEquilibriumConstant returns the decadic logarithm of the equilibrium
// constant of a cell reaction; the constant itself often has no float64.
//
//	log K = n·F·E0 / (ln 10 · R·T)
//
//	E0  standard     cell voltage with all activities 1 [V]
//	n   electrons    in the reaction as written, > 0
//	T   temperature  > 0 [K]
//	R, F             gas and Faraday constants (exact)
//
// Doubling a reaction doubles n and log K. 0.01 V of uncertainty in the
// potentials is 0.17·n in log K at 25 °C.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.4.
func LogEquilibriumConstant(standard units.Voltage, electrons int, temperature units.Temperature) (float64, error) {
	if err := units.Finite("standard cell voltage", standard); err != nil {
		return 0, err
	}
	if err := checkElectrons(electrons); err != nil {
		return 0, err
	}
	slope, err := NernstSlope(temperature)
	if err != nil {
		return 0, err
	}
	log, err := finite("log K", units.Ratio(float64(electrons)*float64(standard)/float64(slope)))
	return float64(log), err
}

// GibbsEnergy returns the Gibbs energy of a cell reaction in joules per mole
// of the reaction as written.
//
//	ΔG = -n·F·E
//
//	n  electrons  in the reaction as written, > 0
//	E  voltage    of the cell [V]
//	F             Faraday constant, 96485.33212… C/mol (exact)
//
// Negative for a reaction that runs of itself. With the standard voltage it is
// the standard Gibbs energy.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.4.
func GibbsEnergy(voltage units.Voltage, electrons int) (float64, error) {
	if err := units.Finite("cell voltage", voltage); err != nil {
		return 0, err
	}
	if err := checkElectrons(electrons); err != nil {
		return 0, err
	}
	g, err := finite("Gibbs energy", units.Energy(-float64(electrons)*FaradayConstant*float64(voltage)))
	return float64(g), err
}

// NernstWorking shows the calculation of [Nernst].
//
// Errors: those of [Nernst].
//
// Source: [OpenStaxChem2e] section 17.4.
func NernstWorking(standard units.Voltage, electrons int, quotient units.Ratio,
	temperature units.Temperature) (working.Step, error) {
	e, err := Nernst(standard, electrons, quotient, temperature)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{
		Formula: "E = E0 - R·T/(n·F)·ln(Q)",
		Terms: []working.Term{
			working.Of("E0", "standard potential", standard),
			working.Constant("R", "gas constant", GasConstant, "J/(mol·K)"),
			working.Of("T", "temperature", temperature),
			working.Number("n", "electrons in the reaction", float64(electrons)),
			working.Constant("F", "Faraday constant", FaradayConstant, "C/mol"),
			working.Number("Q", "reaction quotient", float64(quotient)),
		},
		Result: working.Of("E", "potential", e),
		Source: "OpenStaxChem2e",
		Note:   "Reduction potentials against the standard hydrogen electrode; Q holds activities.",
	}, nil
}

// thermalVoltage is R·T/F in volts, 25.69 mV at 25 °C.
func thermalVoltage(temperature units.Temperature) float64 {
	return GasConstant * float64(temperature) / FaradayConstant
}

// checkElectrons refuses a number of electrons that is not above zero. A whole
// cell reaction may have more of them than an atom, so there is no upper end.
func checkElectrons(n int) error {
	if n > 0 {
		return nil
	}
	return &units.ValueError{Field: "electrons", Value: fmt.Sprint(n), Need: "a whole number above zero",
		Err: units.ErrNotPositive}
}
