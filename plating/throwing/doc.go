// Package throwing says by rule how unevenly a coat lies: from a throwing-power
// figure, a test panel, the depth of a recess, or the kind of shape.
//
// A coat fails at its thinnest spot, and the thinnest spot costs: with a ratio of
// thinnest to average of one half, twice the gold goes on. This package is for when
// there is neither a profile nor a mesh of the part. Its results feed an estimate
// as a [plating.Distribution], whose Basis says in words where the ratio comes
// from.
//
// # Why a coat is uneven
//
// Current takes the easy way. Without anything else it divides by distance and
// shape alone: the primary distribution, ratio P. Polarisation is a second
// resistance, at the surface, that is the same everywhere and evens the first one
// out. The Wagner number weighs the two,
//
//	Wa = κ (dη/dj)/L
//
// conductivity times slope of the polarisation over a length. Next to 0 the shape
// decides; far above 1 the coat is even. The length is whatever the formula at hand
// says it is; there is no standard choice. A current efficiency that falls with
// current density evens the metal out further: [MetalRatio].
//
// # The Haring-Blum cell
//
// Two cathodes at distances L1 and L2 from one anode. The ratio of distances
// K = P and the ratio of deposits M make a throwing power, and there are three
// that all go by that name:
//
//	HaringBlum  (K - M)/K          at most 80 % for K = 5
//	Heatley     (K - M)/(K - 1)    100 % when equal
//	Field       (K - M)/(K + M - 2)  100 % when equal, -100 % when nothing is far
//
// For K = 5 and M = 4 they are 20, 25 and 14.3 %. So each is a type of its own that
// carries K and gives M back. [LinearRatio] and [TafelRatio] say what M a bath of
// known polarisation has; [LinearWagner] and [TafelWagner] read a measured M as a
// Wagner number, which can be carried over to a part of another size.
//
// # Recesses
//
// How deep may a hole be whose bottom is to get a third of the coat outside? A
// [Recess] deeper than wide, hole or trench, is a problem in one dimension with
// closed forms, for linear and for Tafel polarisation, with a floor that plates or
// without. [Recess.LinearDepth] and [Recess.TafelDepth] answer the question. In a
// primary distribution next to nothing gets in: all that reaches the bottom does so
// by polarisation. Metal ions must not run short inside, which no formula here
// sees.
//
// # Test cells with a slanted panel
//
// A [Panel] shows a range of current densities at once, with two descriptions that
// must not be mixed. The log law ([Panel.Density], [Panel.Place]) is printed for
// real baths, 0.25 to 3.25 inches from the high end; outside it is refused, since it
// turns negative on the panel itself. The primary distribution of the plan
// ([Trapezoid.Primary]) is exact for a bath without polarisation: infinite at one
// end and zero at the other. Half way along the 267 mL panel both agree to 4 %; at
// 81 mm the primary one is three tenths higher.
//
// # Classes of shape
//
// When nothing is known, [Class] has wide bands for kinds of shape: common practice,
// no source. It takes the low end, and says so in the basis.
//
// # Errors
//
// A [*units.ValueError] names the argument, its value and what would do. A
// [*units.RangeError] marks what lies outside the range of a law: in this package it
// comes without a value, because a number outside would be worse than none.
//
// # Accuracy and use from several goroutines
//
// Closed forms are computed to about one part in 1e14; what they are worth depends
// on how well cell and part resemble them. All types are values and may be used from
// several goroutines at once.
package throwing
