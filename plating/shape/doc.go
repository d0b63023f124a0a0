// Package shape works out the areas of parts.
//
// Current, time and metal all go by the area that plates. A coat of a given
// thickness needs charge in proportion to the area, so an area that is ten per
// cent too small makes every coat ten per cent too thin, however well the bath is
// kept. This package turns a drawing, a few calliper readings or a weight into
// that area.
//
// # Bodies
//
// A part is put together from simple bodies. Each is a small struct of
// dimensions with two methods: Area, and Working, which shows the same
// calculation step by step.
//
//	Plate, Disc, Ring            flat parts: dial plates, flat bobs, chapter rings
//	Cylinder, Tube, HexBar       pillars, chime tubes, standoffs
//	Cone, Sphere, Cap, Torus     finial spires and balls, domed bobs, bezel rims
//	Wire, Chain                  suspensions, rack wire, weight chains
//	Thread, ScrewHead            screws
//	WeighedSheet, WeighedWire    pierced hands and loose wire, by their mass
//	Known                        an area from a drawing or a mesh
//
// All of them are a [Body], and a Piece can be part of another:
//
//	Assembly, Sum                parts plated together
//	Times                        a number of equal pieces
//	Drilled with Hole            holes: discs off the faces, walls added
//	Less                         a shape taken off, as where two parts join
//	Masked                       a measured area covered with lacquer or tape
//
// # Conventions
//
// Dimensions are lengths of package units, in metres inside: 35*units.Millimetre
// makes one. Round bodies go by diameters, as a calliper reads them, never by
// radii. Heights are along the axis, not along a slope. Lengths of wire are along
// its centreline.
//
// The zero value of every option is the whole closed body with everything
// plating: both faces, both ends, base and top, outside and inside. Options take
// away: OneFace, OpenEnds, OpenBase, OutsideOnly. A dimension must be above zero
// unless its comment gives zero a meaning: a zero thickness of a flat part leaves
// its edges out, as does a zero outline of a weighed sheet; a zero top diameter
// makes a cone end in a point; a zero shank makes a screw head whole.
//
// The area is the geometric one, of smooth surfaces. Roughness, engraving and
// knurling add to it and the current does not spread over it evenly; both are
// dealt with elsewhere.
//
// # Accuracy
//
// The formulas are exact for the bodies they name and computed to about one part
// in 1e15. What they are worth for a part depends on how well the part resembles
// the body; each comment says what is left out. [Thread] alone has an error of its
// own, which its comment bounds. A difference, of [Less] or [Masked], has the
// absolute error of what it is taken from. Tests hold every body against numerical
// integration over its surface, and those that textbooks treat against printed
// worked examples.
//
// # Errors
//
// A dimension that is NaN, infinite, negative or zero gives a
// [*units.ValueError] that names the body, the field, the value and what would
// do. One that wraps [units.ErrInconsistent] says that values contradict each
// other: a bore as wide as its tube, a hole wider than its plate, a mask larger
// than its piece. An area without an error is finite and above zero. Nothing
// panics, unless a nil pointer is passed off as a Piece.
//
// # Use from several goroutines
//
// All types are values, nothing is shared, and everything may be called from
// several goroutines at once.
package shape
