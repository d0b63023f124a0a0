// Package axi computes where the current goes on bodies of revolution: bobs,
// bezels, finials, cups, bells. It is the precision instrument among the
// current-distribution packages of laydown.
//
// # What it solves
//
// In a stirred bath of one conductivity κ the potential φ obeys ∇²φ = 0. Current
// flows down the potential, i = -κ∇φ. An insulator lets none through, ∂φ/∂n = 0.
// At an electrode, with n the normal out of the bath,
//
//	κ ∂φ/∂n = j(V - φ)
//
// where V is the potential of the metal, less that of equilibrium, and j the
// anodic current density at an overpotential: a [current.Law]. Without
// polarisation (the zero Law, primary) φ = V. A coat grows where current enters the
// metal; here that direction counts as positive, on cathode and anode alike.
//
// How even the coat comes out depends on the shape and on the Wagner number,
// Wa = κ (dη/dj)/L, with L a length of the part: small, and the geometry
// alone decides; large, and the coat is even. [IUPACGoldBook] gives the
// terms. State L with every Wa: there is no standard choice.
//
// # How to describe a cell
//
// A [Profile] is a chain of lines, arcs and quarter ellipses in the half plane
// (R, Z), turned round the axis R = 0. A body's profile starts and ends on
// the axis; or returns to its start, as a ring does; or starts or ends on the
// vessel, as a stem through the surface of the bath does. Which side is metal
// follows from that; of the two sides that a stem divides, the bath is the one
// with more wetted wall. A [Revolved] adds what the surface does: cathode, anode,
// insulator (a shield) or floating metal. A robber is a cathode. Segments may
// be masked. [Rod], [Ball], [Torus] and [Tube] make profiles of simple anodes.
//
// An [Electrolyte] has no walls, an insulating floor, or a vessel ([Tank], or any
// profile, such as a bowl) whose segments may be electrodes. Without a vessel the
// anode may be infinitely far away. A [current.Drive] sets the total current into
// the cathodes or the voltage between the rails.
//
// [Solve] returns a [ProfileSolution]: for each part the current density along its
// profile, its area, current and potential, the least, mean and greatest
// value on any stretch ([ProfileResult.Between]), the cell voltage, and the
// potential anywhere ([ProfileSolution.Potential]).
//
// At constant current efficiency the thickness follows the current density: the
// thinnest spot has [Stretch.MinToAverage] of the average thickness. Where the
// efficiency depends on the current density, take thickness from Samples.
//
// # The method
//
// Green's third identity makes one equation for each point x of the boundary
// out of the potential and its normal derivative q there:
//
//	c φ(x) + ∫ φ ∂G/∂n dS = ∫ G q dS + φ∞,  G = 1/(4π|x-y|)
//
// Turned round the axis, the integrals over each ring are complete elliptic
// integrals ([Elliptic]), computed from both parameters m and 1-m by the
// arithmetic-geometric mean [DLMF]. The unknown is the potential on insulators,
// the overpotential on electrodes with kinetics, so that V - φ loses no
// digits however small it is, and the flux where φ is given.
//
// The boundary is cut into panels. Each carries a polynomial of 4 to 16
// coefficients, fixed at Gauss points. Next to an edge with angle w of bath
// the potential goes like powers of s^(π/w), s the distance from the edge: at
// the outer edge of a cylinder s^(2/3). There the panel's parameter t is
// chosen with s ∝ t^n such that these powers become whole (n = 3 for that
// edge, 2 at the rim of a sheet), and panels shrink by a factor 4 at each
// of a few levels. The polynomials then converge as fast at an edge as on a
// smooth wall; this is what brings nine digits from a few hundred unknowns.
// Panels halve where they are longer than the gap of bath they face.
//
// An integral over a panel seen from x needs more points the nearer x is. How
// many follows from the ellipse through the complex point at which |x-y|
// vanishes: its foci are the ends of the panel. The panel is halved until the
// ellipse is wide enough for 1e-12. On its own line or arc |x-y| is formed from
// arc lengths, and near a corner from distances to it, so nothing cancels.
// The factor c is minus the sum of the row, so that a constant potential is
// reproduced exactly.
//
// Newton's method solves the equations with dense LU factors. Steps that would
// run up an exponential are taken in the current density instead; a factored
// matrix serves again while it converges. Unknown potentials (of the rail when
// the current is given, of floating metal, of the bath far away) border
// the matrix with one row each: a sum of currents.
//
// Constant panels ([Constant]) with grading exponent 3 need no smoothness: a quick
// answer and a second way.
//
// # Accuracy, measured
//
// Errors of the total current and of the least current density on the part,
// against the finest solution (the exact one for cases that have it agrees
// with it to 1e-12, see below), and seconds of processor time for one
// solution on a shared machine of two processors, November 2026:
//
//	 panels      unknowns              error of the total         error of the least         seconds
//	closed cylinder h = 2a, primary, bath without end
//	 constant    88 / 176 / 353 / 704  3e-6 / 4e-7 / 5e-8 / 6e-9  1e-3 / 3e-4 / 8e-5 / 2e-5  0.01 / 0.02 / 0.07 / 0.25
//	 order 4, 6  64 / 120              9e-8 / 3e-9                3e-5 / 1e-7                0.01 / 0.01
//	 default     192                   1e-10                      1e-9                       0.03
//	cylinder hung in a cylindrical tank, Butler-Volmer on both electrodes
//	 constant    87 / 177 / 352 / 703  1e-4 / 2e-5 / 5e-6 / 1e-6  6e-3 / 2e-3 / 4e-4 / 1e-4  0.01 / 0.03 / 0.09 / 0.4
//	 order 4, 6  112 / 192             7e-7 / 9e-10               2e-5 / 3e-8                0.01 / 0.03
//	 default     288                   2e-11                      2e-10                      0.05
//	cup with a recess of 24 mm width and 20 mm depth in a tank, Tafel
//	 constant    86 / 176 / 351 / 705  2e-4 / 4e-5 / 7e-6 / 1e-6  2e-2 / 4e-3 / 1e-3 / 3e-4  0.01 / 0.03 / 0.09 / 0.4
//	 order 4, 6  176 / 324             1e-6 / 3e-11               1e-4 / 5e-9                0.03 / 0.06
//	 default     496                   3e-12                      1e-10                      0.14
//	 order 12    840                   3e-15                      1e-13                      0.5
//
// A result closer to the finest one than 1e-12 says that rounding repeats itself,
// not more. Against exact values: sphere, spheroids of five shapes down to
// 1:100 and concentric spheres with Tafel kinetics to 1e-12 with 100
// unknowns; disc sheet 4e-10; disc in a plane with Wa = 1 to all 10 digits
// known. At the rim of a masked or flush electrode with kinetics the current
// density has terms like s ln s: there the value at the very rim is good to 4e-6
// with the default 3 levels, 5e-8 with 8; ask for more Levels when it matters.
//
// Constant panels converge with the third power of their number in primary
// problems with edges, the second in the others. High orders gain a factor of
// 5 to 100 for each 2 orders.
//
// The numerical error is the least of a shop's: conductivity, Tafel slope and
// position of the anode are seldom known to a few per cent. It is this small so
// that a difference between two designs is that of the designs.
//
// # Checks and warnings
//
// A solution carries the balance of the currents, the deviation of the solid
// angles from a half (row sums), the residual, and the difference to a
// coarser solution of lower order and fewer levels. That difference is an
// estimate from above: mostly ten times the true error. Warnings tell of a thinnest spot
// that the mesh does not resolve, of gaps narrower than half a panel, of
// floating (bipolar) metal, of a cathode that dissolves in places, and of the two
// properties of primary solutions that are none of the part: a greatest value
// at an outer edge, which is infinite and grows with the mesh, and a least value
// in an inner corner, which is zero.
//
// # Errors
//
// Nothing here panics on outside data. A [*units.ValueError] names field,
// value and remedy for: numbers that are not finite, R below zero, segments
// without length, arcs that are none, profiles that cross, touch themselves
// ([ErrCrossing]), are open, or meet the axis on the way ([ErrProfile]); parts
// that overlap or touch ([current.ErrOverlap]), leave the bath or touch its walls with
// more than an end ([ErrOutside]); a part that stands on a wall of the other rail
// ([ErrShort]); no cathode or anode ([ErrNoElectrode]); a
// conductivity, current, law or bias that makes no sense. A [*SolveError] means
// that the shape needs more unknowns than [ProfileOptions] allow ([current.ErrTooLarge]), or that
// the iteration failed ([current.ErrNotConverged], [ErrSingular]). The context's
// error comes back when it is cancelled.
//
// # Limits
//
// Metal without thickness must be primary, unless it lies on the floor of a
// half space: give it a thickness. Parts do not touch each other; parts touch
// the vessel with the ends of their profiles only. The bath has one
// conductivity and no gradients of concentration (no limiting current). Time
// grows with the cube of the number of unknowns, memory with its square: 2000 are
// the most, in about 150 MB.
//
// # Concurrency
//
// Descriptions are values, solutions are not written to after [Solve] returns;
// both may be used from several goroutines. Solve integrates on ProfileOptions.Workers
// goroutines, each row on one, so that the matrix is the same for any number; the
// factorisation is gonum's and may use more.
package axi
