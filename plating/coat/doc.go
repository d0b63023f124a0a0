// Package coat turns a current distribution into a coat: thickness all over a
// part, its thinnest significant spot, the minutes until that spot keeps the
// minimum thickness, and the gold that goes where nobody asked for it.
//
// # From current to coat
//
// A [Surface] is a part cut into patches, each with an area and the current
// density that arrives there. [FromAxi] and [FromField] make one from a
// solution for a body of revolution or for a mesh; a surface may also be made
// by hand from measured densities. [Lay] puts a bath and a time to it: the
// efficiency is taken at the density of each patch, so that the thinnest spot
// is the one thinnest in metal.
//
//	c, err := coat.Lay(surface, &bath, 10*units.Minute)
//	t, err := coat.TimeFor(surface, &bath, 2.5*units.Micrometre)
//
// # What counts
//
// A minimum thickness is made for the significant surface. Mark it with
// [Surface.Mark] and a [Selector]: [InBox], [Facing], [AwayFrom] the edges,
// [Both], [Not]. Min, P05, P95 and Max are over the significant surface, Mean and
// mass over the whole part, since the metal is spent on all of it. MinToAverage is
// the one over the other, and [CoatMap.Distribution] hands it to
// [plating.Estimate] with its basis and uncertainty.
//
// Look at P95 rather than at Max: at a sharp edge the largest value grows with
// every refinement of the mesh and is no property of the part.
//
// # Making it better
//
// [Compare] takes the same part in several arrangements (anode farther away,
// lower current, a shield, a robber, turned half of the time) and says how many
// minutes each needs for the minimum thickness and how much metal it spends. [Sum] adds
// the positions of a schedule.
//
// # Accuracy
//
// The arithmetic is exact; what limits it is the solution and the efficiency
// curve. A minimum that lies on one panel is marked Unresolved: claim nothing for
// it.
package coat
