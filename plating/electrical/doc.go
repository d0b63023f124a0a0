// Package electrical works out what a plating tank asks of anodes, rectifier,
// heater and ventilation.
//
// # Anodes
//
// Anodes are hung by area. The ratio of anode to cathode area belongs to the bath
// ([AnodeArea]); from it follows the current density at the anode
// ([AnodeCurrentDensity]), which has a limit of its own: above it soluble anodes
// passivate and give oxygen in place of metal, insoluble ones age. What a soluble
// anode loses follows from Faraday's law with the efficiency of the anode, not
// that of the cathode ([AnodeUsed]).
//
// # The rectifier
//
// The current makes the coat; the voltage is what it takes to drive it. It is a
// sum,
//
//	V = E + ηa + ηc + I·(R + R_leads)
//
// of the voltage E of the two electrode reactions at rest, the overpotentials that
// drive them, and the resistance of solution and leads. With anodes of the metal
// that plates E is about zero; with insoluble ones it is that between oxygen
// evolution and the metal, some volts. The solution's part is
//
//	R = L/(κ·Am)
//
// for electrodes a gap L apart in a solution of conductivity κ. Between plates of
// unequal area the current flows through the logarithmic mean of the two areas
// ([MeanArea]), which is exact where the section widens evenly on the way, as
// from a rod to a cylinder around it. A real tank has lines of current that bulge
// out at the sides (less resistance), racks, shields, baskets and gas bubbles
// (more). So [Cell] takes ranges and gives a [Interval] back, low and high, not a
// figure: choose the rectifier by the high end, and let a reading outside the
// window make you look at contacts, anodes and temperature.
//
// The overpotentials come from published slopes or a measurement: see
// [example.com/laydown/faraday.Tafel] and
// [example.com/laydown/faraday.ConcentrationOverpotential]. Here they are sizes
// without a sign.
//
// # Heat
//
// What the rectifier gives and no reaction keeps becomes heat:
//
//	P = I·(V - E_tn)
//
// with the thermoneutral voltage E_tn, about zero with anodes of the plating
// metal and 1.48 V for the share of the current that splits water. [Cell.Heat]
// gives both ends: that, and I·V as the bound to size cooling by. A [HeatedTank] with
// its mass, specific heat and loss warms by
//
//	C·dT/dt = P - h·(T - Ta)
//
// which is solved exactly ([HeatedTank.After], [HeatedTank.TimeTo], [HeatedTank.Hold],
// [HeatedTank.Reach]). The loss coefficient h is measured best: switch the heater off at
// bath temperature and see how far it cools in an hour ([HeatedTank.LossFromCooling]).
//
// Warm open tanks lose most of their heat, and all of their water, by evaporation
// ([OpenTop]). The published formulas differ among each other by a quarter, so this
// too is a window. It is for plain water; salts make a bath evaporate a little
// less, air agitation much more.
//
// # Hydrogen
//
// What deposits no metal at the cathode gives off hydrogen, nearly half a litre
// for each ampere-hour. It burns in air from 4 % by volume. [Vent] returns the air that
// keeps it under a quarter of that, 1 %, when it mixes evenly; how badly it mixes
// is for the user to say (Mixing), and there is no default. Hydrogen rises:
// under a hood, a lid or a beam it gathers whatever the mean. This is arithmetic
// and no design of a ventilation; cyanide, acid mist and nickel ask for an exhaust
// at the tank on their own account, usually a far larger one.
//
// # Conventions and errors
//
// Quantities are those of package units, and for those it lacks [SpecificHeat],
// [HeatLoss], [HeatOfVaporisation] and [GasFlow], SI inside as well. Bad values are
// [*units.ValueError] that name the field; values outside the range that a
// formula was published for come with a [*units.RangeError]. No value panics,
// nothing returns NaN. All functions are pure.
package electrical
