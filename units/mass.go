package units

// Masses in the law: one pound is 0.45359237 kg exactly, 7000 grains; the
// troy ounce has 480 of the same grains, the pennyweight 24.
const (
	pound     = 0.45359237
	ounce     = pound / 16
	grain     = pound / 7000
	troyOunce = 480 * grain
	dwt       = 24 * grain
)

// A Mass in kilograms.
type Mass float64

// Units of mass. Ounce is the avoirdupois ounce (28.35 g, salts and base
// metals), TroyOunce the one for gold and silver (31.10 g).
const (
	Microgram   Mass = 1e-9
	Milligram   Mass = 1e-6
	Gram        Mass = 1e-3
	Kilogram    Mass = 1
	Grain       Mass = grain
	Pennyweight Mass = dwt
	TroyOunce   Mass = troyOunce
	Ounce       Mass = ounce
	Pound       Mass = pound
)

// A Density in kilograms per cubic metre: mass of a solid or liquid over its own volume.
type Density float64

// Units of density.
const (
	KilogramPerCubicMetre  Density = 1
	GramPerCubicCentimetre Density = 1000
)

// A MassPerArea in kilograms per square metre: what a coat weighs over the
// area it covers. Gauges that count atoms measure this, not thickness.
type MassPerArea float64

// Units of mass per area.
const (
	GramPerSquareMetre           MassPerArea = 1e-3
	MilligramPerSquareCentimetre MassPerArea = 1e-2
	GramPerSquareDecimetre       MassPerArea = 1e-1
	KilogramPerSquareMetre       MassPerArea = 1
	MilligramPerSquareInch       MassPerArea = 1e-6 / (inch * inch)
	OuncePerSquareFoot           MassPerArea = ounce / (foot * foot)
	TroyOuncePerSquareFoot       MassPerArea = troyOunce / (foot * foot)
)

// A MassConcentration in kilograms per cubic metre: mass dissolved over the
// volume of the solution.
type MassConcentration float64

// Units of mass concentration. Gallon and ounce are both named: salts go by
// the avoirdupois ounce, gold and silver by the troy ounce or pennyweight.
const (
	MilligramPerLitre            MassConcentration = 1e-3
	GramPerLitre                 MassConcentration = 1
	OuncePerUSGallon             MassConcentration = ounce / gallonUS
	OuncePerImperialGallon       MassConcentration = ounce / gallonImp
	TroyOuncePerUSGallon         MassConcentration = troyOunce / gallonUS
	TroyOuncePerImperialGallon   MassConcentration = troyOunce / gallonImp
	PennyweightPerUSGallon       MassConcentration = dwt / gallonUS
	PennyweightPerImperialGallon MassConcentration = dwt / gallonImp
	PoundPerUSGallon             MassConcentration = pound / gallonUS
)

// An Amount of substance in moles.
type Amount float64

// Units of amount.
const (
	Millimole Amount = 1e-3
	Mole      Amount = 1
)

// A MolarMass in kilograms per mole. Atomic weights are printed in grams per mole.
type MolarMass float64

// Units of molar mass.
const (
	GramPerMole     MolarMass = 1e-3
	KilogramPerMole MolarMass = 1
)

// An AmountConcentration in moles per cubic metre: amount dissolved over the
// volume of the solution.
type AmountConcentration float64

// Units of amount concentration.
const (
	MolePerCubicMetre AmountConcentration = 1
	MillimolePerLitre AmountConcentration = 1
	MolePerLitre      AmountConcentration = 1000
)

// Of returns the mass of volume v of a material of density rho.
func (rho Density) Of(v Volume) Mass { return Mass(float64(rho) * float64(v)) }

// Over returns the mass of a coat that weighs w per area on area a.
func (w MassPerArea) Over(a Area) Mass { return Mass(float64(w) * float64(a)) }

// Thickness returns the thickness of a coat that weighs w per area, if its
// density is rho.
//
// Errors: a [*ValueError] when rho is not above zero or w is not finite.
func (w MassPerArea) Thickness(rho Density) (Length, error) {
	return quotient[Length]("mass per area", w, "density", rho)
}

// Of returns the mass dissolved in volume v of a solution of concentration c.
func (c MassConcentration) Of(v Volume) Mass { return Mass(float64(c) * float64(v)) }

// PerArea returns the mass per area of mass m spread over area a.
//
// Errors: a [*ValueError] when a is not above zero or m is not finite.
func (m Mass) PerArea(a Area) (MassPerArea, error) {
	return quotient[MassPerArea]("mass", m, "area", a)
}

// PerVolume returns the density of a body of mass m and volume v.
//
// Errors: a [*ValueError] when v is not above zero or m is not finite.
func (m Mass) PerVolume(v Volume) (Density, error) {
	return quotient[Density]("mass", m, "volume", v)
}

// DissolvedIn returns the concentration of mass m in volume v of solution.
//
// Errors: a [*ValueError] when v is not above zero or m is not finite.
func (m Mass) DissolvedIn(v Volume) (MassConcentration, error) {
	return quotient[MassConcentration]("mass", m, "volume", v)
}

// AtDensity returns the volume of a body of mass m and density rho.
//
// Errors: a [*ValueError] when rho is not above zero or m is not finite.
func (m Mass) AtDensity(rho Density) (Volume, error) {
	return quotient[Volume]("mass", m, "density", rho)
}

// Of returns the mass of amount n of a substance of molar mass mm.
func (mm MolarMass) Of(n Amount) Mass { return Mass(float64(mm) * float64(n)) }
