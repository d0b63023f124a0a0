package units

// Four quantities have no unit and must not be mixed: each has its own type.

// An Efficiency is the share of a current that does what is wanted, from 0 to
// 1: 0.35 is 35 %. Its zero value means "not given"; no formula takes it.
type Efficiency float64

// A MassFraction is the mass of one constituent over the mass of all, from 0
// to 1: fineness 750 is the mass fraction 0.75.
type MassFraction float64

// A MoleFraction is the amount of one constituent over the amount of all,
// from 0 to 1.
type MoleFraction float64

// A Ratio is any other quotient of two like quantities, as thinnest over average
// thickness.
type Ratio float64
