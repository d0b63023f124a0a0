// Package faraday holds the electrochemistry of plating: the elements,
// Faraday's law in every direction, the metal in a salt, currents that are not
// constant, electrode potentials and electrode kinetics.
//
// # From charge to coat
//
// A current I that flows for a time t carries the charge Q = I·t. Each atom of
// a metal of valence n takes up n electrons, so a mole of it takes n·F, where F
// is [FaradayConstant]. The mass that a coulomb brings is the electrochemical
// equivalent
//
//	ε = M/(n·F)
//
// ([NewEquivalent]), and of the whole charge only the share η, the current
// efficiency, deposits metal. The rest makes hydrogen ([Hydrogen]):
//
//	m = ε·η·Q
//
// Every other form turns this around: [Mass], [MassOfCharge], [Charge],
// [Time], [Current], [Efficiency], [Valence]. With the density ρ of the coat
// and the area A the mass becomes a thickness s = m/(ρ·A); the methods of
// [Deposit] speak of thickness and current density, and [Deposit.Trade] gives
// the figures that plating tables print. A deposit of several metals has the
// equivalent that [MixedEquivalent] computes.
//
//	gold, err := faraday.NewDeposit("Au", 1)          // from a cyanide bath: one electron
//	gold.Density = 17 * units.GramPerCubicCentimetre // hardened deposits: 16 to 17 published
//	t, err := gold.TimeFor(1*units.Micrometre, 0.45*units.AmperePerSquareDecimetre, 0.35)
//
// # What belongs to the bath
//
// Three numbers cannot be looked up for a metal, since they belong to the bath:
// the valence (gold one in cyanide and sulfite, three in chloride; copper one
// in cyanide, two in sulfate; tin two or four), the efficiency (gold from near
// 100 % to below 10 %), and the density of the deposit (hardened gold 16 to 17
// g/cm³ against 19.3 of bulk gold). [Element.Valences] and [Element.Density]
// are where to start, not what to believe.
//
// # Conventions
//
//   - Amounts are per mole of the species named: F is C/mol, M is kg/mol.
//   - An efficiency multiplies a mass and divides a time or charge.
//   - Current densities of the law are magnitudes at the cathode. Electrode
//     kinetics ([ButlerVolmer]) use the sign of IUPAC: anodic is positive.
//   - Currents of a profile ([Pulse], [Sequence], [IntegrateLog] ...) are
//     positive when they deposit.
//   - Standard potentials are reduction potentials against the standard
//     hydrogen electrode at 25 °C.
//   - Logarithms to base ten appear in slopes per decade only, and say so.
//
// # Accuracy
//
// Faraday's law is exact; the constants are exact by definition. A molar mass
// is known to 2e-8 for gold, 2e-6 for silver, 7e-6 for nickel, 5e-5 for copper,
// 3e-4 for zinc, 5e-3 for lead. The functions add a few parts in 1e16. Printed
// tables agree to their last digit, misprints aside, which the tests name.
//
// # Errors
//
// Every argument is checked. NaN, infinities, negative and zero values where
// they make no sense give a [*units.ValueError] that names the argument, what
// it held and what would do; the result is then zero. A measured efficiency
// over 1 and a valence that cannot be come with the value and a
// [*units.RangeError]. An unknown symbol gives an [*ElementError], a bad
// chemical formula a [*FormulaError]. No value panics, nothing returns NaN.
//
// # Concurrency
//
// All functions are pure; all tables are read only.
package faraday
