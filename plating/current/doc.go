// Package current holds what the solvers of current distribution share: the
// rate laws at electrodes, the kinds of surface, what drives the cell, and the
// words for what a solution warns of. The solvers are axi, for bodies of
// revolution, and field, for meshes.
//
// # The model
//
// A stirred bath of one conductivity κ has no sources of current inside, so its
// potential φ obeys
//
//	∇·(κ∇φ) = 0          i = -κ∇φ
//
//	φ  potential of the bath  [V]
//	κ  its conductivity       > 0 [S/m]
//	i  current density        [A/m²]
//
// All that tells one cell from another happens at its boundary. With n the normal
// out of the bath, each surface says by its [Kind] and its [Law] which of these
// holds on it:
//
//	Insulator             ∂φ/∂n = 0
//	electrode, Primary    φ = V
//	electrode, other law  κ ∂φ/∂n = j(V - φ)
//	Floating              one of the two above, V unknown, ∫ κ ∂φ/∂n dA = 0
//
//	V  potential of the metal, less that of equilibrium  [V]
//	j  anodic current density at an overpotential        [A/m²]
//
// The [Drive] fixes what is left: the voltage between the poles, or the current
// into all cathodes, and then the voltage is one more unknown.
//
// # Electrode kinetics as a boundary condition
//
// The overpotential η = V - φ is what the rate law takes. A law is smooth, and a
// solver replaces it at each step by its tangent: [Law.Current] returns j and
// dj/dη together. Seen from the bath the tangent is a layer of resistance dη/dj in
// front of the metal. Set against the resistance L/κ of the bath over a length L of
// the part it gives the Wagner number,
//
//	Wa = κ (dη/dj)/L
//
// which says how even the coat becomes: small, and geometry alone decides; large,
// and the coat is even. A primary electrode has Wa = 0, and its current density is
// infinite at outer edges and zero in inner corners.
//
// # Signs
//
// Potentials count from the metal of the cathodes, the negative pole. The voltage
// of a cell is the anodes' metal less the cathodes', with both equilibrium
// potentials taken off: add their difference to get what a meter shows.
//
// The laws follow IUPAC: an anodic current density, from metal to bath, is positive,
// and a cathode plates with η < 0 and j < 0. Solutions count the other way, as a
// plater does: a current density towards the metal, which plates, is positive on
// every surface, and an anode's is negative.
//
// # Kinds
//
// All cathodes hang on one pole and all anodes on the other. A robber is a cathode
// whose metal nobody wants, a shield an insulator. Floating metal is wired to
// neither pole: current enters it at one end, plates there, and leaves at the other,
// where the metal dissolves.
//
// # Range
//
// [Law.Check] bounds the constants so that every result is finite. A Tafel law
// leaves out the reverse reaction: [Law.CheckTafel] refuses it where that is more
// than [MostNeglect] of the current. No law here knows a limiting current: the
// concentration at the metal is that of the bath.
//
// # Errors
//
// Values that make no sense give a [*units.ValueError], a Tafel law outside its
// range a [*TafelError]. The reasons that both solvers know, [ErrOverlap],
// [ErrTooLarge] and [ErrNotConverged], are one value each, so that errors.Is asks
// for them without knowing which solver ran.
//
// Source: [IUPACKinetics2014] for the laws and their signs, [IUPACGoldBook] for the
// terms of current distribution.
package current
