package faraday

import "example.com/laydown/units"

// A GasVolume is an amount of gas with its mass and its volume where it is measured.
type GasVolume struct {
	Amount units.Amount
	Mass   units.Mass
	Volume units.Volume
}

// Hydrogen returns the hydrogen that the cathode gives off when all current
// that deposits no metal makes hydrogen.
//
//	n = (1 - η)·Q/(2·F)
//	m = n·M
//	V = n·R·T/p
//
//	η  eff         current efficiency for the metal, 0 ≤ η ≤ 1
//	Q  q           charge, ≥ 0 [C]
//	M              molar mass of H₂, 2.0160 g/mol
//	T  temperature of the gas, > 0 [K]
//	p  pressure    > 0 [Pa]
//	F, R           Faraday and gas constants (exact)
//
// An upper bound where current is lost to something else (nitrate, chromate,
// leaks). Ideal gas: within 0.1 % at room conditions. At 1 atm and no deposit
// one ampere-hour gives 0.418 L at 0 °C, 0.456 L at 25 °C. Hydrogen burns in
// air from about 4 % by volume: draw it off.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7, [SI2019] (constants), [HydrogenSafetyPage].
func Hydrogen(q units.Charge, eff units.Efficiency, temperature units.Temperature, pressure units.Pressure) (GasVolume,
	error) {
	if err := units.Fraction("current efficiency", eff); err != nil {
		return GasVolume{}, err
	}
	const molarH2 = 2 * 1.0080e-3 // kg/mol, [IUPAC2021]
	return gas(q, (1-float64(eff))/2, molarH2, temperature, pressure)
}

// Oxygen returns the oxygen that an anode gives off when none of its current
// dissolves metal or oxidises anything but water.
//
//	n = Q/(4·F)
//	m = n·M
//	V = n·R·T/p
//
// with M = 31.998 g/mol and the symbols of [Hydrogen]. At insoluble anodes of
// a cyanide or sulfite bath less comes off, since they oxidise those too.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [OpenStaxChem2e] section 17.7, [SI2019] (constants).
func Oxygen(q units.Charge, temperature units.Temperature, pressure units.Pressure) (GasVolume, error) {
	const molarO2 = 2 * 15.999e-3 // kg/mol, [IUPAC2021]
	return gas(q, 1.0/4, molarO2, temperature, pressure)
}

func gas(q units.Charge, perElectron, molar float64, temperature units.Temperature, pressure units.Pressure) (GasVolume,
	error) {
	if err := units.NonNegative("charge", q); err != nil {
		return GasVolume{}, err
	}
	if err := units.Positive("temperature", temperature); err != nil {
		return GasVolume{}, err
	}
	if err := units.Positive("pressure", pressure); err != nil {
		return GasVolume{}, err
	}
	n := perElectron * float64(q) / FaradayConstant
	v := units.Volume(n * GasConstant * float64(temperature) / float64(pressure))
	if err := units.Finite("volume of gas", v); err != nil {
		return GasVolume{}, err
	}
	return GasVolume{Amount: units.Amount(n), Mass: units.Mass(n * molar), Volume: v}, nil
}
