// Package mesh reads, checks, repairs and makes surfaces of triangles.
//
// A part that is neither a cylinder nor a plate exists, more and more often, as a
// file from a drawing program or a scanner: thousands of small triangles that
// cover it. Such a file holds the two things a plater needs most: the area, by
// which current and gold go, and the shape, by which the coat is thin in one
// place and thick in another. This package gets the first at once, and prepares
// the second for a calculation of the current distribution.
//
// # From file to area
//
//	m, err := mesh.ReadSTL(file, units.Millimetre)  // the unit is yours to say
//	report, err := mesh.Check(m)                    // closed? right way round?
//	m, done, err := mesh.Repair(m, mesh.RepairOptions{Weld: units.Micrometre})
//	part, err := mesh.NewMeasuredPart(m, "finial", false)    // a Body of package shape
//
// An STL file says no unit. Drawings of parts are in millimetres as a rule, some
// in inches, and nothing in the file tells: a wrong guess makes the area wrong by
// 645. So the unit is a required argument, and the box around the part in the
// report is there to be held against the part with a rule.
//
// # What makes a surface sound
//
// The triangles of a sound surface meet two at each edge, run counter-clockwise
// seen from the solution, and close around a volume. [Check] counts what is
// otherwise:
//
//	open edges      used once: a hole, or corners that nearly agree
//	crowded edges   used three times or more: a fin, an inner wall
//	turned edges    the two triangles disagree which side is out
//	degenerate      triangles without area
//	duplicates      faces that lie twice and would count twice
//	cut, covered    triangles that go through others or lie on them
//	enclosed        surfaces within others: a hollow that never plates
//	Euler number    v - e + f: 2 for a ball, 0 for a ring
//	solid angle     4π from inside, whatever the shape
//
// The area of a surface does not need all that. The area of one with faces twice
// or with a hollow inside is still not the area that plates, and [NewMeasuredPart]
// will not pass it on without a word.
//
// # Repair, and its limits
//
// [Repair] does what has one answer: it joins corners that agree within a
// distance you give, takes out triangles without area and copies of faces, and
// turns triangles until all agree and the volume is positive. Each of these is
// reported as an [Action]. What has more than one answer it refuses, with the
// place: a hole may be a missing face or an open shell, a fin may be meant or not.
// Those go back to the program that drew the part. Two corners are joined only
// with one that stays where it is, so that no corner moves further than the
// distance.
//
// # A body that is two
//
// A drawing program writes a ring with a stone through its band, or two bars laid
// across each other, into one file as it stands: two closed surfaces, of which each
// alone is sound. Their areas together are not the area that plates: what lies
// within the other counts too. [Check] finds every two triangles that cut through
// each other or lie on each other, of two bodies or of one, and says how many and
// where ([Findings.Cut], [Findings.Covered], [Findings.Places]). Such a surface is not
// sound, [NewMeasuredPart] gives no area ([ErrCrossing]) and [Repair] does not take it:
// which parts stay is for the drawing program, by its union.
//
//	bodies with a gap, hollows, links of a chain     sound
//	bodies that touch at a corner or along an edge   sound, when each has corners of
//	                                                 its own there
//	bodies that touch with faces                     not sound: the faces are covered
//	bodies that reach into each other                not sound
//
// Places nearer than [Resolution] of the size are one: 7 nm on a part of 35 mm. Bodies
// whose triangles meet along edges only, as two on one grid, show in
// [Findings.Crossing], which looks at some corners; one surface that goes through
// itself along its own edges only may pass.
//
// # Bodies without a drawing
//
// [Box], [Plate] (rounded edges), [Cylinder], [Tube], [Cup] (a recess), [Sphere],
// [Torus] and [Disc] (a sheet) make meshes for tests and for parts that are near
// enough to one. Current crowds at edges, so panels get smaller towards them:
// [Grid] has a size and an exponent. [Translate], [Rotate], [Scale] and [Merge] put
// them together. [Split] makes the long thin triangles of a drawing program fit to
// compute on, [Subdivide] makes four of each.
//
// Flat panels that touch a round body from inside have less area and volume than
// it: by about (size/radius)²/8 each way for a cylinder. Use package shape for the
// area of a simple body, and its mesh for the distribution.
//
// # Formats
//
// STL: binary, in which the number of bytes must be that of the count, and text
// with one or more solids. PLY: text and binary in both byte orders, with other
// elements and properties read over; faces of more than three corners are cut when
// they are flat and convex and refused otherwise. [WritePLY] adds a thickness and a
// colour for each triangle.
//
// # Files from outside
//
// A reader takes memory by the length of the file and never by a number in it.
// It does not panic on any input; tests damage a thousand files in nineteen ways,
// and fuzz tests go on from there. To bound the file itself, wrap it in an
// io.LimitReader.
//
// # Errors
//
// A [*FaultError] says the line or byte of the file or the triangle, what was found
// and what would do, and wraps one of the sentinels. Arguments that make no sense
// give a [*units.ValueError].
//
// # Use from several goroutines
//
// Meshes are plain data that no function of this package changes. Several
// goroutines may read one at once.
package mesh
