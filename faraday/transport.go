package faraday

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// LimitingCurrentDensity returns the size of the current density at which
// every ion that reaches the electrode is used up at once.
//
//	jL = n·F·D·c/δ
//
//	n  electrons      taken up by one ion, > 0
//	D  diffusivity    of the ion, > 0 [m²/s]
//	c  concentration  of the ion in the bulk, > 0 [mol/m³]
//	δ  layer          thickness of the diffusion layer, > 0 [m]
//	F                 Faraday constant (exact)
//
// A positive size, for a cathode as well. The ion is taken to move by diffusion
// alone, as it does beside plenty of other salt. The layer belongs to the
// stirring: some tenths of a millimetre in a still bath, some hundredths in a
// moved one (common practice, no source).
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [IUPACGoldBook], diffusion layer thickness (D01726).
func LimitingCurrentDensity(electrons int, diffusivity units.Diffusivity, concentration units.AmountConcentration,
	layer units.Length) (units.CurrentDensity, error) {
	if err := checkElectrons(electrons); err != nil {
		return 0, err
	}
	if err := units.Positive("diffusivity", diffusivity); err != nil {
		return 0, err
	}
	if err := units.Positive("concentration", concentration); err != nil {
		return 0, err
	}
	if err := units.Positive("thickness of the diffusion layer", layer); err != nil {
		return 0, err
	}
	return finite("limiting current density",
		units.CurrentDensity(float64(electrons)*FaradayConstant*float64(diffusivity)*float64(concentration)/float64(layer)))
}

// LimitingCurrentDensityWorking shows the calculation of [LimitingCurrentDensity].
//
// Errors: those of [LimitingCurrentDensity].
//
// Source: [IUPACGoldBook], diffusion layer thickness (D01726).
func LimitingCurrentDensityWorking(electrons int, diffusivity units.Diffusivity,
	concentration units.AmountConcentration, layer units.Length) (working.Step, error) {
	j, err := LimitingCurrentDensity(electrons, diffusivity, concentration, layer)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{
		Formula: "jL = n·F·D·c/δ",
		Terms: []working.Term{
			working.Number("n", "electrons taken up by one ion", float64(electrons)),
			working.Constant("F", "Faraday constant", FaradayConstant, "C/mol"),
			working.Of("D", "diffusivity of the ion", diffusivity),
			working.Of("c", "concentration in the bulk", concentration),
			working.Of("δ", "thickness of the diffusion layer", layer),
		},
		Result: working.Of("jL", "limiting current density", j),
		Source: "IUPACGoldBook",
	}, nil
}

// ConcentrationOverpotential returns how far a cathode's potential moves
// because the solution at its face is poorer than the bulk.
//
//	ηc = R·T/(n·F)·ln(1 - j/jL)
//
//	j   j            size of the current density, 0 ≤ j < jL [A/m²]
//	jL  limiting     size of the limiting current density, > 0 [A/m²]
//	n   electrons    taken up by one ion, > 0
//	T   temperature  > 0 [K]
//	R, F             gas and Faraday constants (exact)
//
// Zero or negative: the cathode has to go further down. Both densities are
// sizes without sign. It is the Nernst equation for a metal and its ion, with
// 1 - j/jL of the ion left at the face. At nine tenths of the limit it is
// -29.6 mV for two electrons at 25 °C.
//
// Errors: a [*units.ValueError] for an argument out of range, and for j at the
// limit or over it.
//
// Source: [OpenStaxChem2e] section 17.4; [IUPACGoldBook] (the layer).
func ConcentrationOverpotential(j, limiting units.CurrentDensity, electrons int,
	temperature units.Temperature) (units.Voltage, error) {
	if err := units.NonNegative("current density", j); err != nil {
		return 0, err
	}
	if err := units.Positive("limiting current density", limiting); err != nil {
		return 0, err
	}
	if j >= limiting {
		return 0, &units.ValueError{Field: "current density", Value: j.String(),
			Need: "less than the limiting " + limiting.String(), Err: units.ErrOutOfRange}
	}
	if err := checkElectrons(electrons); err != nil {
		return 0, err
	}
	if err := units.Positive("temperature", temperature); err != nil {
		return 0, err
	}
	left := math.Log1p(-float64(j) / float64(limiting))
	if left-left != 0 { // j is next to the limit and rounds to it
		left = math.Log((float64(limiting) - float64(j)) / float64(limiting))
	}
	if left == 0 {
		return 0, nil // and not the negative zero
	}
	return finite("concentration overpotential",
		units.Voltage(thermalVoltage(temperature)/float64(electrons)*left))
}

// WagnerNumber returns what levels a current distribution over what disturbs
// it: the slope of the polarisation over the resistance of the solution.
//
//	Wa = κ·r/L
//
//	κ  conductivity  of the solution, > 0 [S/m]
//	r  slope         dη/dj of the cathode as a positive size, > 0 [Ω·m²]
//	L  length        of the geometry, > 0 [m]
//
// Next to 0 the shape of part and tank alone decides, and corners burn; far
// above 1 the coat is even. There is no standard choice of L (a recess's
// depth, a hand's length, the gap to the anode): compare only numbers made with
// the same one. The slope is that at the mean current density: from
// [Tafel.Resistance], [ButlerVolmer.Resistance] or two measured points.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [IUPACGoldBook], current distribution (C01456).
func WagnerNumber(conductivity units.Conductivity, slope units.AreaResistance, length units.Length) (units.Ratio,
	error) {
	if err := units.Positive("conductivity", conductivity); err != nil {
		return 0, err
	}
	if err := units.Positive("slope of the polarisation", slope); err != nil {
		return 0, err
	}
	if err := units.Positive("length", length); err != nil {
		return 0, err
	}
	return finite("Wagner number", units.Ratio(float64(conductivity)*float64(slope)/float64(length)))
}

// WagnerNumberWorking shows the calculation of [WagnerNumber].
//
// Errors: those of [WagnerNumber].
//
// Source: [IUPACGoldBook], current distribution (C01456).
func WagnerNumberWorking(conductivity units.Conductivity, slope units.AreaResistance,
	length units.Length) (working.Step, error) {
	wa, err := WagnerNumber(conductivity, slope, length)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{
		Formula: "Wa = κ·r/L",
		Terms: []working.Term{
			working.Of("κ", "conductivity of the solution", conductivity),
			working.Of("r", "slope of the polarisation, dη/dj", slope),
			working.Of("L", "length of the geometry", length),
		},
		Result: working.Of("Wa", "Wagner number", wa),
		Source: "IUPACGoldBook",
	}, nil
}
