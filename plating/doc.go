// Package plating estimates plating: how many amperes for how many
// minutes, what thickness that gives on average and at the thinnest spot, how
// much metal leaves the bath, and what a careful finisher would question.
//
// # One layer
//
// A [Layer] is one immersion of a load in one [OperatingBath]. It has an area, a
// [Distribution] (how much less the thinnest significant spot gets than the
// mean), and three figures of which two are given and the third is found:
//
//   - MinThickness, the thickness at the thinnest significant spot;
//   - CurrentDensity, the mean over the area;
//   - Time.
//
// [Estimate] solves for the third. With the minimum thickness s_min and the ratio r
// of thinnest to average, the mean must be s = s_min/r, and Faraday's law gives the
// rest:
//
//	t = ρ·s/(ε·η·j)
//	I = j·A
//	m = ρ·s·A
//
//	ρ, ε  density [kg/m³] and electrochemical equivalent [kg/C] of the deposit
//	η, j  current efficiency, mean current density [A/m²]
//	A     area of the load [m²]
//
// Give all three and the minimum thickness is checked instead. [Working] shows each
// step with its numbers and source; [Notes] says in words what the flags of a
// [LayerEstimate] mean and what to do.
//
// The mean is not the minimum thickness. A load with r = 0.5 needs twice the
// minimum thickness on average; half of the gold goes where it was not asked for.
// Take r from pieces that were cut or gauged. With r = 1 the thinnest spot comes out
// too thin on all but the evenest work.
//
// # A coating system
//
// A [System] has parts and layers, the first layer first: strike, barrier,
// finish. [EstimateSystem] computes each and sums them by metal. A strike of the
// same metal counts towards the minimum thickness of the layer above when CountBelow
// asks for it. LayerResult.Before holds the notes about the order of the layers: acid
// behind cyanide, a struck piece that must not dry.
//
// # A bath
//
// Valence (inside [faraday.Deposit]), density of the deposit and current
// efficiency belong to the bath. Efficiency is one value or an
// [EfficiencyCurve] against current density; weigh a [Trial] piece to find it.
// A field left zero is "not given": what depends on it is left out, and a flag
// says so. Nothing is assumed but a draw limit of 10 % of the bath's metal
// (common practice, no source).
//
// # What is left out
//
// The coat is taken to grow in proportion to charge at the mean current
// density. Where the efficiency changes with current density the local
// thickness is not proportional to the local current. Immersion deposit,
// dissolution while the current is off, and the ramp at switching on are not
// counted. How uneven the coat is has to be given.
//
// # Accuracy
//
// The arithmetic is good to 2e-15 (tested against exact rationals). The answer
// is as good as the efficiency (hard gold perhaps 25 to 45 %, from memory), the
// area and the ratio.
//
// # Errors, speed, safety
//
// Every field is checked; the first that cannot be gives a [*units.ValueError]
// with field, value and remedy. No value panics, nothing returns NaN. Estimate
// allocates nothing. All functions are pure and may run in parallel.
//
// Plating is dangerous. [Cautions] lists the usual warnings for a bath's
// [Hazard] set; it does not replace safety data sheets, local law or licensed
// practice.
//
// Sub-packages: bath (baths with the source of each figure), sequence (tanks in their
// order), job (a whole job: file, sheet, page), shape (areas of parts), price (quotes),
// current (rate laws at electrodes and what else solvers of current distribution
// share), axi and field (those solvers); DEVELOPERS.md lists them all.
package plating
