package faraday

import "example.com/laydown/units"

// Trade holds one deposit's figures as plating tables print them, all at an
// efficiency of 100 %. They are plain numbers in the unit of their name.
type Trade struct {
	GramPerAmpereHour   float64 // mass per charge
	MilligramPerCoulomb float64 // mass per charge

	// Charge, and mass in avoirdupois or troy ounces, that a square foot takes
	// for each mil (0.001 in) of thickness.
	AmpereHourPerSquareFootMil float64
	OuncePerSquareFootMil      float64
	TroyOuncePerSquareFootMil  float64

	// Thickness that one ampere-minute builds on one square decimetre.
	MicrometrePerAmpereMinuteSquareDecimetre float64
}

// Trade returns the deposit's figures in the units of plating tables.
//
//	s = ε·q/ρ
//	q = ρ·s/ε
//	w = ρ·s
//
//	ε  d.Equivalent  [kg/C]
//	ρ  d.Density     [kg/m³]
//	q                charge over area [C/m²]: 1 A·min/dm², or what 1 mil takes
//	s                thickness [m]
//	w                mass over area for 1 mil [kg/m²]
//
// Gold and silver are near one another in thickness for a charge (0.635 and
// 0.639 µm) and far apart in mass: compare masses.
//
// Errors: a [*units.ValueError] unless equivalent and density are above zero.
//
// Source: [EqTutorial] (table of such figures), [OpenStaxChem2e].
func (d Deposit) Trade() (Trade, error) {
	if err := d.Check(); err != nil {
		return Trade{}, err
	}
	const amperePerMinuteDm2 = float64(units.AmpereMinute) / float64(units.SquareDecimetre) // C/m²
	mil := units.Mil.AtDensity(d.Density)
	chargePerArea := units.Charge(float64(mil) / float64(d.Equivalent) * float64(units.SquareFoot))
	v := Trade{
		GramPerAmpereHour:          d.Equivalent.In(units.GramPerAmpereHour),
		MilligramPerCoulomb:        d.Equivalent.In(units.MilligramPerCoulomb),
		AmpereHourPerSquareFootMil: chargePerArea.In(units.AmpereHour),
		OuncePerSquareFootMil:      mil.In(units.OuncePerSquareFoot),
		TroyOuncePerSquareFootMil:  mil.In(units.TroyOuncePerSquareFoot),
		MicrometrePerAmpereMinuteSquareDecimetre: units.Length(float64(d.Equivalent) * amperePerMinuteDm2 / float64(d.Density)).
			In(units.Micrometre),
	}
	if err := units.Finite("figures of the deposit", units.Ratio(v.MilligramPerCoulomb+v.AmpereHourPerSquareFootMil+
		v.OuncePerSquareFootMil+v.MicrometrePerAmpereMinuteSquareDecimetre+v.GramPerAmpereHour)); err != nil {
		return Trade{}, err
	}
	return v, nil
}
