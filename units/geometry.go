package units

// Lengths in the law: one inch is 0.0254 m exactly (agreement of 1959), one
// foot twelve of them. These stay untyped so that every product below is
// rounded once, when it gets its type.
const (
	inch         = 0.0254
	foot         = 12 * inch
	gallonUS     = 231 * inch * inch * inch // m³
	gallonImp    = 0.00454609               // m³
	cubicMetreML = 1e-6
)

// A Length in metres: a part's size, a coat's thickness, a gap between electrodes.
//
// 2.5*units.Micrometre makes one, d.In(units.Micrometre) reads one. The
// constant is the float64 nearest to the legal factor and the product rounds
// once more: together within 3 parts in 1e16. [ParseLength] rounds only once.
type Length float64

// Units of length.
const (
	Nanometre  Length = 1e-9
	Micrometre Length = 1e-6
	Millimetre Length = 1e-3
	Centimetre Length = 1e-2
	Metre      Length = 1
	Microinch  Length = inch / 1e6
	Mil        Length = inch / 1e3 // also called a thou
	Inch       Length = inch
	Foot       Length = foot
)

// An Area in square metres.
type Area float64

// Units of area.
const (
	SquareMillimetre Area = 1e-6
	SquareCentimetre Area = 1e-4
	SquareDecimetre  Area = 1e-2
	SquareMetre      Area = 1
	SquareInch       Area = inch * inch
	SquareFoot       Area = foot * foot
)

// A Volume in cubic metres.
type Volume float64

// Units of volume. The gallons carry their country: a bare gallon is never accepted.
const (
	CubicMillimetre Volume = 1e-9
	CubicCentimetre Volume = cubicMetreML
	Millilitre      Volume = cubicMetreML
	Litre           Volume = 1e-3
	CubicMetre      Volume = 1
	CubicInch       Volume = inch * inch * inch
	CubicFoot       Volume = foot * foot * foot
	USGallon        Volume = gallonUS
	ImperialGallon  Volume = gallonImp
)

// Times returns the area of a rectangle with sides l and other.
func (l Length) Times(other Length) Area { return Area(float64(l) * float64(other)) }

// Over returns the volume of a coat of thickness l on area a.
func (l Length) Over(a Area) Volume { return Volume(float64(l) * float64(a)) }

// AtDensity returns the mass per area of a coat of thickness l and density rho.
func (l Length) AtDensity(rho Density) MassPerArea {
	return MassPerArea(float64(l) * float64(rho))
}

// Times returns the volume of a prism of base a and height l.
func (a Area) Times(l Length) Volume { return Volume(float64(a) * float64(l)) }

// PerLength returns the other side of a rectangle of area a and side l.
//
// Errors: a [*ValueError] when l is not above zero or a is not finite.
func (a Area) PerLength(l Length) (Length, error) {
	return quotient[Length]("area", a, "length", l)
}

// PerArea returns the thickness of a layer of volume v on area a.
//
// Errors: a [*ValueError] when a is not above zero or v is not finite.
func (v Volume) PerArea(a Area) (Length, error) {
	return quotient[Length]("volume", v, "area", a)
}

// PerLength returns the cross-section of a prism of volume v and height l.
//
// Errors: a [*ValueError] when l is not above zero or v is not finite.
func (v Volume) PerLength(l Length) (Area, error) {
	return quotient[Area]("volume", v, "length", l)
}
