package mesh

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// RepairOptions says what [Repair] may do. The zero value joins only corners
// that agree exactly and wants a closed surface.
type RepairOptions struct {
	// Weld is the distance up to which corners are joined; 0 joins those that
	// agree exactly. Details smaller than it are lost.
	Weld units.Length
	// Open takes a surface with holes as it is: a sheet, or an area that is
	// wanted all the same.
	Open bool
}

// An Action is one thing that [Repair] did.
type Action struct {
	Kind  ActionKind
	Count int     // of vertices or triangles
	Most  float64 // largest distance a vertex moved, in metres; of Welded
}

// An ActionKind says what was done.
type ActionKind uint8

// What Repair does, in this order.
const (
	Welded      ActionKind = iota + 1 // vertices joined with another
	DroppedFlat                       // triangles without area taken out
	// triangles without area taken out by cutting the neighbour at their middle corner
	SwappedFlat
	DroppedCopy     // faces that lay twice taken out once
	Turned          // triangles turned to agree with their neighbours
	TurnedWhole     // triangles of closed surfaces that were inside out
	DroppedVertices // vertices that no triangle uses taken out
)

// String says the kind in words.
func (k ActionKind) String() string {
	switch k {
	case Welded:
		return "vertices joined"
	case DroppedFlat:
		return "triangles without area dropped"
	case SwappedFlat:
		return "triangles without area merged into a neighbour"
	case DroppedCopy:
		return "copies of faces dropped"
	case Turned:
		return "triangles turned to agree with their neighbours"
	case TurnedWhole:
		return "triangles of inside-out surfaces turned"
	case DroppedVertices:
		return "unused vertices dropped"
	}
	return "unknown action"
}

// String says what was done to how many.
func (a Action) String() string {
	s := fmt.Sprintf("%d %s", a.Count, a.Kind)
	if a.Kind == Welded && a.Most > 0 {
		s += ", the farthest by " + units.Length(a.Most).String()
	}
	return s
}

// Repair does what is safe to a mesh and says what it did: it joins corners,
// takes out triangles without area and exact copies of faces, turns triangles
// that disagree with their neighbours, turns closed surfaces that are inside
// out, and drops vertices without use. Nothing is invented: a hole is not
// closed, a fin is not cut, and which of two overlapping bodies is meant is not
// guessed. m is not changed.
//
// A vertex moves by no more than Weld. Area and volume change by what that
// moves and no more, but for the copies.
//
// Errors: those of [Check]; a [*units.ValueError] for a Weld below zero or over a
// hundredth of the part's size; a [*FaultError] for what is left: holes unless Open,
// fins, a surface with one side only, a closed surface within another whose
// direction contradicts its place, triangles that cut through others or lie on them. The actions up to there
// come with the error, the mesh does not.
//
// Source: [Derived].
func Repair(m Mesh, o RepairOptions) (Mesh, []Action, error) {
	if err := m.sound(); err != nil {
		return Mesh{}, nil, err
	}
	if err := units.NonNegative("welding distance", o.Weld); err != nil {
		return Mesh{}, nil, err
	}
	low, high := m.box()
	if size := units.Length(r3.Norm(r3.Sub(high, low))); o.Weld > size/100 {
		return Mesh{}, nil, &units.ValueError{Field: "welding distance", Value: o.Weld.String(),
			Need: "at most a hundredth of the part's size of " + size.String(), Err: units.ErrOutOfRange}
	}
	m = m.Clone()
	var done []Action
	did := func(kind ActionKind, count int, most float64) {
		if count > 0 {
			done = append(done, Action{kind, count, most})
		}
	}
	count, most := m.weld(float64(o.Weld))
	did(Welded, count, most)
	dropped, swapped := m.takeOutFlat()
	did(DroppedFlat, dropped, 0)
	did(SwappedFlat, swapped, 0)
	did(DroppedCopy, m.dropCopies(), 0)
	if len(m.Triangles) == 0 {
		return Mesh{}, done, about(ErrEmpty, "triangles with an area", "nothing is left")
	}
	turned, err := m.agree()
	if err != nil {
		return Mesh{}, done, err
	}
	did(Turned, turned, 0)
	if turned, err = m.outsideOut(); err != nil {
		return Mesh{}, done, err
	}
	did(TurnedWhole, turned, 0)
	did(DroppedVertices, m.dropUnused(), 0)
	r, err := Check(m)
	if err == nil {
		err = r.refuse(o.Open)
	}
	if err != nil {
		return Mesh{}, done, err
	}
	return m, done, nil
}

// dropCopies takes out faces with the corners of an earlier one: those that
// run the same way, and those that run the other way where all three edges have
// three triangles or more. Two faces back to back with edges of their own are a
// fin and stay.
func (m *Mesh) dropCopies() int {
	copies := m.copies()
	if len(copies) == 0 {
		return 0
	}
	at := map[[2]int32]int{}
	runs(m.sides(), func(edge []side) { at[[2]int32{edge[0].low, edge[0].high}] = len(edge) })
	kept, n := m.Triangles[:0], 0
	for i, t := range m.Triangles {
		if first, is := copies[i]; is {
			s := sorted(t)
			edges := [3][2]int32{{s[0], s[1]}, {s[1], s[2]}, {s[0], s[2]}}
			if sameTurn(m.Triangles[first], t) || at[edges[0]] > 2 && at[edges[1]] > 2 && at[edges[2]] > 2 {
				for _, e := range edges {
					at[e]--
				}
				n++
				continue
			}
		}
		kept = append(kept, t)
	}
	m.Triangles = kept
	return n
}

// dropUnused takes out vertices that no triangle uses.
func (m *Mesh) dropUnused() int {
	place := make([]int32, len(m.Vertices))
	for _, t := range m.Triangles {
		for _, v := range t {
			place[v] = 1
		}
	}
	kept := m.Vertices[:0]
	for i, v := range m.Vertices {
		if place[i] != 0 {
			place[i] = int32(len(kept))
			kept = append(kept, v)
		}
	}
	n := len(m.Vertices) - len(kept)
	m.Vertices = kept
	for i, t := range m.Triangles {
		m.Triangles[i] = [3]int32{place[t[0]], place[t[1]], place[t[2]]}
	}
	return n
}
