// Package alloys computes with gold and its alloys: what they are made of, what
// may be marked on them, how heavy they are, how much fine gold a coat of them
// carries, how to melt one into another, and what their metal is worth.
//
// # Shares
//
// An alloy is described by the share of the mass that each metal has. The
// trade writes that share in three ways: a mass fraction (0.75), a [Fineness]
// in thousandths (750) and a [Karat] in 24ths (18). A [Composition] holds the
// mass fractions of all elements. It is made whole and then never changes:
// [NewComposition], [FromPermille], [FromMasses], [FromMoles] and [ParseComposition] check
// every share and refuse a set that does not sum to one. Printed recipes that
// do not add up are common: testdata holds six that are off by half a per cent
// and more.
//
//	c, err := alloys.ParseComposition("Au 750, Ag 125, Cu rest")
//
// Phase diagrams and many analyses count atoms instead. [FromMoles] and
// [Composition.Moles] convert with the standard atomic weights. A gold atom is
// three times as heavy as a copper atom, so AuCu, half the atoms gold, is
// three quarters gold by mass: 18 karat red.
//
// # Karat and mark
//
// 14 karat is 14/24 = 583.33 thousandths, and yet 585 is struck on it; 10 karat
// is 416.67 and marked 417, 22 karat is 916.67 and marked 916. The exact figure
// ([Karat.Fineness]) is for melting, the marked one ([MarkedFineness]) for
// stamping, and this package never takes one for the other.
//
// A mark promises at least what it says. So [MarkFor] answers with the highest
// mark of a [MarkSeries] that the assay reaches, never the nearest: gold of 584 does
// not get 585. Which series holds is a matter of law; the one of ISO 9202 was
// not seen and says so in its field Seen. The stamping act of the United States
// allows a shortfall for errors of melting and for solder: [MeetsStamp]. Marks
// and assays are compared as decimals, so that 584.9999 stays under 585.
//
// # Density
//
// If metals kept their volumes on alloying, volumes would add, and
//
//	1/ρ = Σ w/ρ
//
// Nearly so: gold with silver keeps to it within 1 %, gold with copper is about
// 1 % lighter, white golds with nickel up to 3 %. [Density] gives the ideal
// value with a stated uncertainty for the metals at hand. Karat and colour alone
// do not fix the density of a gold: a 14 karat yellow with zinc is lighter than a
// 14 karat red. And a deposit is not a casting: hard gold from an acid
// cobalt bath was found at 16 to 17 g/cm³, where its metals would have 19.2. A
// measured density overrides.
//
// # Fine gold in a coat
//
// Rules for gold coats count the fine gold in them. A micrometre of 18 karat
// does not carry three quarters of a micrometre of gold but 0.60, because the
// alloy is lighter too:
//
//	t_fine = t w ρ/ρ_fine
//
// [AlloyThickness] and [FineThickness] convert both ways through a [GoldCoat];
// [FTCTerms] lists the terms of the United States guides that rest on it.
//
// # What a bath lays down
//
// A [DepositComposition] has metals and, between them, non-metal: carbon, cyanide,
// hydrogen. Both lower the assay. The colour of 24 karat is no proof of 24
// karat: with 0.3 % cobalt and 1 % non-metal a deposit is 23.7.
//
// # Karating
//
// To raise a stock, add fine gold; to lower it, add alloying metal; the balance
// is on the mass of fine gold, never on volume. [Raise] and [Lower] answer
// for gold alone, [BlendTo] for two stocks, [Blend] for any number of lots, and
// [ToComposition] for all metals of a recipe at once. The tables of raising and
// of lowering are not each other's mirror: from 18 to 14 karat a gram takes
// 0.286 g of alloy, from 14 to 18 karat 0.667 g of gold.
//
// # Money
//
// [MeltValue] is exact decimal arithmetic with the troy ounce of 31.1034768 g
// and one rounding at the end, half to even, to the places asked for. It starts
// from a [Weighed] mass, a decimal as the balance shows it.
//
// # Conventions
//
// Quantities are those of package units, in SI units inside. Shares are by
// mass unless the type says mole fraction. A function with the ending Working
// returns the calculation of its namesake, with the same errors. No argument
// makes a function panic: bad ones come back as a [*units.ValueError],
// [*SumError], [*BelowSeriesError], [*TooMuchError] or [*faraday.ElementError].
// Nothing here is changed after it is made, so all may be used by several
// goroutines at once.
package alloys
