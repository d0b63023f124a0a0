// Package units holds the quantities of a plating shop: typed numbers in SI
// units that read and write the units of the trade.
//
// # What a quantity is
//
// Each sort of quantity is a Go type of its own over float64: [Length],
// [Area], [CurrentDensity], [Mass] and so on, one for each [QuantityKind]. The number
// inside counts coherent SI units (metres, kilograms, seconds, amperes,
// kelvins, moles and their products), whatever unit it came in. A formula
// that takes a [Current] cannot be handed a [CurrentDensity]; the compiler
// sees to that. Quantities of one dimension but of different meaning have
// different types as well: a [Density] is no [MassConcentration], a
// [MassFraction] no [MoleFraction], a current [Efficiency] neither, and a
// [TemperatureDifference] is no [Temperature].
//
// The zero value is zero of the unit. For an Efficiency or a Temperature that
// makes no sense, and formulas of laydown refuse it or read it as "not given";
// they say which.
//
// # Making and reading one
//
// Multiply a number by a unit constant to make a quantity, call In to read
// it, and name the products:
//
//	coat := 2.5 * units.Micrometre              // a Length
//	coat.In(units.Microinch)                    // 98.4..., a float64
//	area := 12 * units.SquareCentimetre         // an Area
//	coat.Over(area)                             // a Volume
//	(1.5 * units.Ampere).For(8 * units.Minute)  // a Charge
//
// An int variable needs a conversion first: units.Ampere * units.Current(n).
// Do not multiply two quantities with *: Go gives the product the type of the
// factors, so that a Length times a Length would be called a Length. The
// methods Times, Over, For, Of, At, PerArea and their like give the right type.
//
// Temperatures have a zero point of their own, so they are made by functions:
// [Celsius](38), [Fahrenheit](100), and read by methods of the same names.
//
// # Parsing and printing
//
// There are four ways out and one way in.
//
//   - String is for people: at most six digits, in a unit of handy size from a
//     short ladder (µm, mm, m), times of a minute or more to the second, as in
//     1 h 20 min. Printf's %v and %s use it; %g shows the bare SI number.
//   - Text(unit, decimals) writes a unit you name. Decimals are rounded from
//     the exact value of the float64, halves away from zero. With a negative
//     number of decimals it writes the fewest digits that read back to the
//     same float64: 25 µin is then 0.635 µm. [Temperature] takes a [Scale],
//     fractions have Percent. A unit that this package does not know is replaced
//     by the SI unit; of two units of one size, as cm³ and mL, the first in
//     [QuantityKind.Units] gives its name.
//   - MarshalText and AppendText write the SI unit without loss. That makes
//     every quantity a JSON string, a JSON map key and, by [flag.TextVar], a
//     command line flag.
//   - In, Kelvin, Celsius and Fahrenheit give a float64.
//   - ParseLength and its sisters read text, and so does UnmarshalText. A bare
//     number in JSON is refused, since it has no unit.
//
// [Convert] goes from text to text, for any kind. [Printable] shows names and notes
// from outside without the characters that move a cursor or turn a line.
//
// # The text that is read
//
// A number, then a unit; the space between them may be left out. The number
// is a plain decimal with a point and perhaps an exponent: 1.4, -0.5, .5, 1e-3.
// Fractions of whole numbers are read as on an inch rule, 1/4 in and 4 1/2 in, but not in
// durations. No comma, no thousands separators, no hexadecimal digits, no NaN.
//
// A symbol may be spelled in ASCII, and several signs stand for one:
//
//	µ (micro sign)   or μ (Greek mu) or u at the front: 25 µin, 25 uin
//	² ³              or 2 3, or ^2 ^3: A/dm², A/dm2, A/dm^2
//	· (middle dot)   or * or a space between factors: A·h, A*h, A h, and Ah
//	°C °F            or degC degF, deg C deg F
//	Ω                or ohm
//	(A·h) below /    or A·h or Ah: g/(A·h), g/A·h and g/Ah are the same
//
// [QuantityKind.Units] lists the units of a kind and [QuantityKind.Spellings] the words that
// stand for one, as thou for mil. Capitals count: mA is not MA. Four units
// carry more than their short name tells, so read them twice:
//
//   - a gallon is US gal (231 in³) or imp gal (4.54609 L); gal alone is refused
//   - oz is the avoirdupois ounce (28.35 g), ozt the troy ounce (31.10 g)
//   - gr is the grain (64.8 mg), not the gram
//   - min is the minute, in the inch, mil a thousandth of an inch
//
// Efficiencies, fractions and ratios are numbers without unit, or carry % or
// ‰. A [Duration] may be a sum, the longest unit first and each unit once: 1 h
// 20 min. A negative sum is refused, as it could be read two ways. A
// temperature below absolute zero is refused. Nothing longer than 200 bytes
// is read, and no exponent beyond 400, so text from outside cannot make a
// parser work long.
//
// # What is exact and what rounds
//
// Every unit here is exact by law or by the SI: the inch is 2.54 cm, the pound
// 0.45359237 kg and 7000 grains, the troy ounce 480 of those grains, the US
// gallon 231 cubic inches, the imperial gallon 4.54609 L, the standard
// atmosphere 101325 Pa, 0 °C is 273.15 K. The table holds the factors as
// decimals or quotients of decimals.
//
//   - Parsing, Text and Convert compute in rational numbers and round once, to
//     the nearest float64 or to the digits asked for.
//   - A unit constant is the float64 nearest to its factor. Multiplying by it,
//     or dividing in In, rounds once more: within 3 parts in 1e16.
//   - [Celsius] and [Fahrenheit] round once; the readings of the same names
//     are within 2e-13 degrees for the temperatures of baths.
//   - Products and quotients of quantities round as float64 does. The bits may
//     differ between processors where several follow each other.
//
// A negative zero is read and written as zero.
//
// # Errors, NaN and infinities
//
// Nothing here panics on outside data. The errors are of three types, each
// wrapping one of the sentinels ([ErrNotFinite], [ErrUnknownUnit] and so on)
// for [errors.Is]:
//
//   - [*ParseError]: text that is no quantity of the kind. It lists the units
//     that would do, and says whether the unit is unknown or of another kind.
//   - [*ValueError]: a value that makes no sense where it stands, with the
//     field in words, the value with its unit, and what would do.
//   - [*RangeError]: a value outside the range that a formula was published
//     for. It comes with the result; the caller decides.
//
// Products carry NaN and infinities through, so that a chain of them stays
// readable; every formula of laydown then refuses them by name, with the
// checks [Positive], [NonNegative], [Finite], [Fraction] and
// [PositiveFraction], which cost nothing when all is well. Quotients return
// an error for a divisor that is not above zero, for NaN and infinities, and
// for a result beyond float64. String shows NaN as NaN; text without loss
// refuses it.
//
// # Concurrency
//
// Quantities are plain values and the table of units is never written to.
// Everything may be used from several goroutines at once, but for
// UnmarshalText on one variable.
//
// # How to add a unit
//
// Add one row to its kind in table.go: symbol as printed, exact factor, other
// spellings. If programs will multiply by it, add a constant made from untyped
// ones, so that it is rounded once. Then add the constant to definitions_test.go
// and, for a unit with a definition of its own, the definition: the test
// rebuilds each unit from the law with its dimension and fails for one it
// cannot rebuild. For a new kind add a row in kind.go and table.go, the type,
// and a line in internal/gen, and run go generate.
//
// Source: [SP811], [GNUUnits] and [TradeChecks] for the factors as printed,
// [Definition] for the products and quotients.
package units

//go:generate go run ./internal/gen
