// Package field computes the current distribution on triangle meshes: how
// thick a part of any shape is plated where, in an unbounded bath or in a tank
// with anodes, shields, robbers and floating metal.
//
// # The problem
//
// The bath conducts evenly: ∇²φ = 0, i = -κ∇φ. With n the normal out of the
// bath, q = ∂φ/∂n, and η = V - φ at a metal of potential V (the equilibrium
// potential taken off),
//
//	insulator           q = 0
//	primary electrode   φ = V
//	kinetic electrode   κ·q = j(V - φ)    j anodic, by a [current.Law]
//	floating metal      V unknown, Σ q·A = 0
//
// The cathodes' metal is the zero of all potentials. The anodes are at the
// cell voltage, which is given or follows from the current given. Without an
// anode the bath is unbounded and its potential far away takes that place. In
// an unbounded bath with anodes no current leaves for infinity, and the
// potential there is one more unknown. Results count a current density that
// plates as positive.
//
// # The equations
//
// Green's formula on flat panels with constant φ and q, at the centroid of
// each panel (or averaged over it, [MeshOptions.Galerkin]):
//
//	c_i·φ_i + Σ_j K_ij·φ_j - Σ_j G_ij·q_j = ω·φ∞
//
//	G_ij = 1/(4π) ∫ 1/r dS          K_ij = 1/(4π) ∫ n·(x-y)/r³ dS
//	c_i = ω - Σ_j K_ij              ω = 1 in an unbounded bath, else 0
//
// so that a bath at one potential carries no current exactly. Where all
// electrodes are primary and nothing else is there, K drops out (single layer)
// and a sheet without thickness may stand for a thin part; its density is the
// sum of both sides. Everything else needs closed bodies: thicken a sheet.
//
// Integrals are analytic up to 2.5 panel lengths, a rule of seven points up to
// 7, then the centroid with second moments. The rule is chosen for a panel and
// a whole cluster of points, so that rules do not change inside a smooth block.
//
// The matrices are never formed. Panels go into a cluster tree that keeps flat
// faces in branches of their own; blocks between clusters that lie apart are
// compressed by cross approximation of both layers side by side until a glance
// at every row finds none that is off, factorised anew and cut to
// [MeshOptions.Tolerance]; factors are stored in single precision.
// One pass applies both layers. Newton steps are solved by GMRES with the
// leaves and the border of held currents as preconditioner. A step sets the
// current density that the linear equations predict, not the potential, which
// settles Tafel laws over many decades in 3 to 7 steps; the last is left out where
// those before show that it would change nothing.
//
// # Where errors come from
//
// Four errors add up, and each has its own check:
//
//	discretisation  φ and q constant on flat panels         [Refined] and [Compare]
//	quadrature      rules that change with the distance     [MeshChecks.RowSum]
//	compression     sums of few terms in place of blocks    [MeshChecks.Operator]
//	iteration       Newton and GMRES end somewhere          [MeshChecks.Change], [MeshChecks.Residual]
//
// The first is the largest by far on any mesh that one would use, and the only one
// that a finer mesh makes smaller; the others follow [MeshOptions.Tolerance] and
// [MeshOptions.Converged]. What the solution makes of a law, a conductivity or a
// place of an anode that is not known well is none of these.
//
// # Where to find it
//
//	integral.go      one panel seen from one point, in closed form
//	panels.go        all panels, and the quadrature rules
//	eval.go          rows and columns of a block of the matrices
//	tree.go          clusters of panels; planes.go: the flat faces among them
//	blocks.go        which pairs of clusters are compressed
//	compress.go      how: cross approximation; vector.go: its arithmetic
//	operator.go      all blocks, and their product with a vector
//	model.go         unknowns, equations, their derivative, a start
//	newton.go        the rate laws; gmres.go and precondition.go: each linear step
//	closed.go        the topology of the meshes; geometry.go: gaps and cuts
//	sign.go          what a primary solution cannot look like
//	corners.go       edges where the order of convergence is lower
//	refine.go        two meshes, and what they say of the error
//
// # Accuracy, time and memory
//
// Measured on two shared cores; error of the total current. Peak is the
// resident memory of the whole test program.
//
//	case                                  panels   error     seconds  processor s  peak MB
//	cube, primary, graded edges             2 028   -3.0e-4      0.1       0.1        18
//	                                        8 112   -5.2e-5      0.4       0.8        66
//	                                       30 000   -9.6e-6      2.2       4.2       273
//	                                       99 372   -1.7e-6       11        22     1 132
//	same, averaged equation                 2 028   -6.8e-5      0.3       0.5        25
//	                                        8 112   -8.8e-6      1.6       3.0        79
//	                                       17 328   -2.8e-6      3.9       7.7       193
//	sphere, primary (facets)                8 112   -5.8e-4      0.4       0.7        64
//	                                       30 000   -1.6e-4      1.9       3.7       264
//	                                      101 568   -4.6e-5      8.4        16       999
//	disc sheet, drawn to the rim            7 776   -2.0e-4      0.3       0.5        60
//	                                       30 246   -5.1e-5      1.8       3.3       214
//	cube in a tank, kinetics, 2 V           2 160   +1.1e-3      0.1       0.3        40
//	                                        7 260   +2.6e-4      0.9       1.7       121
//	                                       29 040   +4e-5        5.3        10       647
//	                                      100 860   below 5e-5    26        48     2 588
//
// From 7 260 to 100 860 panels in the tank the time grows as N^1.27, the memory
// as N^1.16. The finest mesh takes one Newton step more than the others.
// Half of the time goes into the products of GMRES there, four tenths into the
// blocks. The minimum on the cube is 16.02 A/dm² on 7 260
// panels, 15.97 on 29 040 and 15.95 on 100 860: within 0.5 % at 7 260. The
// reference of the tank is itself known to 5e-5. Repeat the table with
//
//	LAYDOWN_HEAVY=1 go test -run '^$' -bench . -benchtime 1x ./plating/field
//
// Without LAYDOWN_HEAVY the benchmarks stop at 8 112 panels.
//
// Order of the error in the number of panels N: smooth bodies N^-1, graded
// edges N^-1.2, averaged N^-1.5, even meshes at primary edges N^-0.6. Local
// current densities carry on average some ten times the error of the total
// where the electrode is primary, at the worst panel 30 to 60 times (on a torus
// of 25 344 panels 2.9 % against 5e-4); with polarisation about that of the total.
//
// # Checks
//
// Every [MeshSolution] carries its [MeshChecks]. Refused, not warned of: holes, turned
// triangles or bodies, bodies that cut or enclose each other (solid angle at
// some panels of each surface and at those within the box of another), gaps of
// less than half a panel between parallel faces, row sums off by more than
// 1e-2, an iteration that does not settle, a primary cathode that seems to
// dissolve where none can ([SignError]). For an error estimate of the minimum
// solve the [Refined] problem too and [Compare] the two. Where a primary
// electrode meets an insulator at more than 90° both meshes are off alike, and
// the estimate knows it ([Corner]): twelve even panels across an electrode that
// lies in the plane of the insulator leave 5 % of the total, panels drawn to
// the line 1 %. A minimum that lies on one panel is marked unresolved. The
// largest value of a primary distribution at an edge is not a property of the
// part; use [MeshResult.Percentile].
//
// The same number of workers gives the same bits; another number other
// roundings. A context ends a run within a few blocks or one GMRES step.
//
// # Not modelled
//
// Concentration and flow (limiting current), gas, the resistance of the part,
// the rack and the contacts, electrodes of one kind at different potentials,
// growth of the deposit, temperature. Anodes are full: a basket is its outline.
// Facets are the shape: a curved surface is as good as its mesh.
package field
