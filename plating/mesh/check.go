package mesh

import (
	"fmt"
	"math"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// Findings are what [Check] finds.
type Findings struct {
	Triangles int
	Vertices  int // that triangles use

	// Area is the sum over all triangles. It is that of a part only when the
	// surface is [Findings.Sound]: what is cut or covered counts in full. NewMeasuredPart
	// returns the area that plates.
	Area      units.Area
	Volume    units.Volume // below zero when inside out; means nothing unless the surface is sound
	Low, High r3.Vec       // corners of the box around the surface, in metres

	OpenEdges    int // used by one triangle only
	CrowdedEdges int // used by three triangles or more
	TurnedEdges  int // of two triangles that run the same way: one of the two is turned
	FirstOpen    r3.Vec
	FirstCrowded r3.Vec // middle of the first such edge

	Degenerate int // triangles without area
	Duplicates int // triangles with the same three corners as an earlier one

	Components int // pieces that hang together by edges
	Euler      int // vertices less edges plus triangles: 2 for a closed body without a handle
	InsideOut  int // closed components turned inside out

	// Enclosed is the number of closed components that lie inside another, as
	// the wall of a hollow in a casting; -1 when there are so many components
	// that it was not looked at. No solution comes there.
	Enclosed     int
	EnclosedArea units.Area

	// Cut is the number of triangles that cut through another one, of the same
	// component or of another, deeper than [Resolution] has it. Covered is that of
	// triangles that lie on another one, as where two bodies touch with a face.
	// Places are the first of the pairs, eight at most, by the numbers of their
	// triangles. Bodies that touch along an edge or at a point only have neither.
	Cut, Covered int
	Places       []Place

	// Crossing counts pairs of closed components that cut through each other,
	// once from each side that shows it, as far as sixteen corners of each tell. It
	// sees those too that cut along edges of both only.
	Crossing int

	// SolidAngle is that of the whole surface from a point just inside: 4π for
	// a closed surface whose outside is out. InsidePoint is that point; when
	// none was found, InsideFound is false and both are zero.
	SolidAngle  float64
	InsidePoint r3.Vec
	InsideFound bool

	shared bool // faces of two bodies agree corner by corner
}

// Watertight reports whether each edge is used by two triangles, so that the
// surface has no hole and no fin.
func (r Findings) Watertight() bool {
	return r.Triangles > 0 && r.OpenEdges == 0 && r.CrowdedEdges == 0
}

// Oriented reports whether the triangles at each edge agree on what is outside.
func (r Findings) Oriented() bool { return r.TurnedEdges == 0 }

// Sound reports whether the surface is the outside of one or more bodies:
// watertight, its outside out, no triangle without area and none twice, none that
// cuts through another or lies on it, a volume above zero, no more pieces than are
// looked at, and 4π from an inside point.
func (r Findings) Sound() bool { return r.refuse(false) == nil }

// Fault returns the first thing that keeps the surface from being sound, an
// [*FaultError] with what would do; nil when it is [Findings.Sound].
func (r Findings) Fault() error { return r.refuse(false) }

// refuse returns a [*FaultError] for the first thing that makes the surface no body, or,
// when open, no sheet.
//
// The order is that of cause and effect: a face there twice makes crowded edges, an open
// edge makes the solid angle wrong. What is named first is what to mend first.
func (r Findings) refuse(open bool) error {
	switch {
	case !(r.Area > 0):
		return about(ErrEmpty, "triangles with an area", "an area of zero")
	case r.shared:
		return r.crosses()
	case r.Duplicates > 0:
		return about(ErrDuplicate, "each face once; Repair drops exact copies", "%d faces with the corners of another",
			r.Duplicates)
	case r.CrowdedEdges > 0:
		return about(ErrCrowded,
			"two triangles at each edge; take fins and inner walls out in the program that drew the part",
			"%d edges with three triangles or more, the first at %s", r.CrowdedEdges, inMillimetres(r.FirstCrowded))
	case r.OpenEdges > 0 && !open:
		return about(ErrOpen, "a closed surface; Repair joins corners that nearly agree, holes must be closed in the "+
			"program that drew the part",
			"%d edges with one triangle only, the first at %s", r.OpenEdges, inMillimetres(r.FirstOpen))
	case r.Volume == 0 && r.Watertight() && r.Oriented():
		return about(ErrEmpty, "a body with a volume", "a closed surface around a volume of zero")
	case r.Cut > 0 || r.Covered > 0:
		return r.crosses()
	case r.TurnedEdges > 0:
		return about(ErrOrientation, "triangles that all run counter-clockwise from outside; Repair turns them",
			"%d edges whose two triangles disagree", r.TurnedEdges)
	case r.InsideOut > 0:
		return about(ErrOrientation, "triangles that run counter-clockwise from outside; Repair turns them",
			"%d closed surfaces inside out", r.InsideOut)
	case r.Crossing > 0:
		return about(ErrCrossing, needUnion, "closed surfaces that cut through each other along their edges")
	case r.Enclosed < 0:
		return about(ErrOrientation, fmt.Sprintf("at most %d pieces in one mesh, or each piece by itself", mostNested),
			"%d pieces, of which was not looked at which lie in or cut which", r.Components)
	case open:
		return nil
	case r.Degenerate > 0:
		return about(ErrEmpty, "triangles with an area; Repair takes others out", "%d triangles without area",
			r.Degenerate)
	case !(r.Volume > 0):
		return about(ErrEmpty, "a body with a volume", "a closed surface around a volume of %s", r.Volume)
	case !r.InsideFound:
		return about(ErrOrientation, "a body with an inside", "no point found inside the closed surface")
	case math.Abs(r.SolidAngle-4*math.Pi) > 1e-6:
		return about(ErrOrientation, "bodies that do not overlap and do not cut through themselves",
			"a solid angle of %.4f π from the inside point %s, where a body has 4 π", r.SolidAngle/math.Pi,
			inMillimetres(r.InsidePoint))
	}
	return nil
}

// needUnion is what to do with bodies that cross. The second way serves an area;
// a current distribution takes one body only.
const needUnion = "one body: join the bodies in the drawing program with its union, and write the file again; " +
	"or, for the area alone, give each body as a part of its own and take off what is covered"

// crosses returns the error for triangles that cut or cover others.
func (r Findings) crosses() error {
	what := fmt.Sprintf("%d triangles cut through others", r.Cut)
	switch {
	case r.Cut == 0:
		what = fmt.Sprintf("%d triangles lie on others", r.Covered)
	case r.Covered > 0:
		what += fmt.Sprintf(" and %d lie on others", r.Covered)
	}
	first := r.Places[0]
	what += ", the first at " + inMillimetres(first.At)
	if r.shared { // edges in common join the two to one piece
		return about(ErrCrossing, needUnion, "%s: two bodies share a face", what)
	}
	if first.Pieces[0] == first.Pieces[1] {
		return about(ErrCrossing, "a surface that keeps clear of itself: mend the body in the drawing program, "+
			"by its union with itself or by hand, and write the file again", "%s in piece %d of %d",
			what, first.Pieces[0]+1,
			r.Components)
	}
	return about(ErrCrossing, needUnion, "%s between pieces %d and %d of %d", what, first.Pieces[0]+1,
		first.Pieces[1]+1, r.Components)
}

// counted reports whether the sum over the triangles counts no face or part of a
// face that does not plate by itself.
func (r Findings) counted() bool {
	return r.Cut == 0 && r.Covered == 0 && r.Crossing == 0 && r.Duplicates == 0
}

// String says in a few lines what the report holds. It names no area and no volume
// of a surface that crosses itself or has faces twice.
func (r Findings) String() string {
	var b strings.Builder
	size := r3.Sub(r.High, r.Low)
	fmt.Fprintf(&b, "%d triangles, %d vertices, %d components\n", r.Triangles, r.Vertices, r.Components)
	if r.counted() {
		fmt.Fprintf(&b, "area %s, volume %s\n", r.Area.Text(units.SquareCentimetre, 4),
			r.Volume.Text(units.CubicCentimetre, 4))
	} else {
		b.WriteString("no area, no volume: faces would count that are covered, cut or there twice\n")
	}
	fmt.Fprintf(&b, "box %.6g x %.6g x %.6g mm\n", size.X*1e3, size.Y*1e3, size.Z*1e3)
	fmt.Fprintf(&b, "%d open, %d crowded, %d turned edges; Euler number %d\n", r.OpenEdges, r.CrowdedEdges,
		r.TurnedEdges, r.Euler)
	fmt.Fprintf(&b, "%d without area, %d twice, %d inside out, %d enclosed, %d cut, %d covered\n", r.Degenerate,
		r.Duplicates, r.InsideOut, r.Enclosed, r.Cut, r.Covered)
	if err := r.Fault(); err != nil {
		fmt.Fprintf(&b, "not a sound body: %v\n", err)
	} else {
		b.WriteString("a sound body\n")
	}
	return b.String()
}

// inMillimetres names a place to 1 nm at best.
func inMillimetres(v r3.Vec) string {
	round := func(x float64) float64 { return math.Round(x*1e9)/1e6 + 0 }
	return fmt.Sprintf("(%.4g, %.4g, %.4g) mm", round(v.X), round(v.Y), round(v.Z))
}

// Check looks a mesh over: area, signed volume, box, edges, direction, copies,
// components, triangles that cross, Euler number, and the solid angle from an
// inside point. It changes nothing. Time grows little faster than the number of
// triangles; where the boxes of several pieces meet, with the number of such pairs
// too: a second for some 200 000 triangles.
//
//	χ = v - e + f
//	Ω = Σ 2 atan2(a·(b × c), |a||b||c| + (a·b)|c| + (b·c)|a| + (c·a)|b|)
//
//	v, e, f  vertices in use, edges, triangles
//	a, b, c  corners of each triangle, seen from the inside point
//
// Faults are counted, not returned as errors; [Findings.Sound] sums them up. A
// triangle has no area when twice its area is not above 1e-9 times the square of
// its longest edge.
//
// Errors: a [*FaultError] for a mesh that cannot be looked at: empty, an index without
// a vertex, a coordinate that is not finite or beyond [Farthest].
//
// Source: [Geometry]; [SolidAngle1983].
func Check(m Mesh) (Findings, error) {
	if err := m.sound(); err != nil {
		return Findings{}, err
	}
	r := Findings{Triangles: len(m.Triangles), Area: units.Area(m.area()), Volume: units.Volume(m.volume())}
	r.Low, r.High = m.box()
	used := make([]bool, len(m.Vertices))
	for i, t := range m.Triangles {
		a, b, c := m.Corners(i)
		if repeated(t) || flat(a, b, c) {
			r.Degenerate++
		}
		for _, v := range t {
			if !used[v] {
				used[v] = true
				r.Vertices++
			}
		}
	}
	copies := m.copies()
	r.Duplicates = len(copies)

	all := m.sides()
	edges := 0
	runs(all, func(edge []side) {
		edges++
		middle := r3.Scale(0.5, r3.Add(m.Vertices[edge[0].low], m.Vertices[edge[0].high]))
		switch {
		case len(edge) == 1:
			if r.OpenEdges++; r.OpenEdges == 1 {
				r.FirstOpen = middle
			}
		case len(edge) > 2:
			if r.CrowdedEdges++; r.CrowdedEdges == 1 {
				r.FirstCrowded = middle
			}
		case edge[0].forward == edge[1].forward:
			r.TurnedEdges++
		}
	})
	r.Euler = r.Vertices - edges + r.Triangles
	parts := m.components(all)
	m.findCrossings(&r, copies, parts, all)
	shells := m.shells(parts, all)
	r.Components = len(shells)
	r.Enclosed, r.Crossing = nest(m, shells)
	for _, s := range shells {
		if !s.closed || s.turned {
			continue
		}
		inner := r.Enclosed > 0 && s.depth > 0
		if inner {
			r.EnclosedArea += units.Area(s.area)
		}
		if s.volume < 0 != (inner && s.depth%2 == 1) && s.volume != 0 {
			r.InsideOut++
		}
	}
	r.InsidePoint, r.InsideFound = m.inside()
	if r.InsideFound {
		r.SolidAngle = m.solidAngle(r.InsidePoint)
	}
	return r, nil
}

// copies returns the triangles whose three corners are those of an earlier one,
// with the earlier one.
//
// Direction does not count: a copy that runs the other way is the other side of a fin, or a
// face that two bodies share.
func (m Mesh) copies() map[int]int {
	first := make(map[[3]int32]int32, len(m.Triangles))
	var found map[int]int
	for i, t := range m.Triangles {
		key := sorted(t)
		if at, known := first[key]; known {
			if found == nil {
				found = map[int]int{}
			}
			found[i] = int(at)
		} else {
			first[key] = int32(i)
		}
	}
	return found
}
