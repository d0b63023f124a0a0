package field

import (
	"cmp"
	"fmt"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// A half is a directed edge of a triangle. In a closed surface whose triangles
// agree on what is outside each edge comes twice, once each way. So a half is
// stored with the ends in order of their numbers, and a flag for the way:
// sorted by the ends, partners stand next to each other.
type half struct {
	low, high int32
	tri       int32
	up        bool // runs from low to high
}

// closed checks that the surfaces, sheets aside, form closed bodies together:
// each edge once in each direction, and the normals of each body pointing into
// the bath. Corners count as one where their coordinates are equal.
//
// Why it matters: Green's formula is about the boundary of a volume. A hole in
// it is not a small error of the mesh but another equation, with a c that is
// off by the solid angle of the hole at every panel. The single layer of sheets
// is not about a volume, and sheets are left out.
//
// The price is a sort of three halves a triangle, small beside anything that
// follows.
func (p *MeshProblem) closed() error {
	number := map[r3.Vec]int32{}
	var halves []half
	var owner [][2]int32 // surface and triangle
	for i := range p.Surfaces {
		s := &p.Surfaces[i]
		if s.Sheet {
			continue
		}
		// Corners are joined by their coordinates, to the last bit, across
		// surfaces too. Nothing is joined by nearness: what lies a micrometre
		// apart may be meant so, and repair is the business of package mesh.
		weld := make([]int32, len(s.Vertices))
		for k, v := range s.Vertices {
			v = r3.Add(v, r3.Vec{}) // no negative zeros
			n, ok := number[v]
			if !ok {
				n = int32(len(number))
				number[v] = n
			}
			weld[k] = n
		}
		for k, t := range s.Triangles {
			me := int32(len(owner))
			owner = append(owner, [2]int32{int32(i), int32(k)})
			for c := range 3 {
				a, b := weld[t[c]], weld[t[(c+1)%3]]
				halves = append(halves, half{min(a, b), max(a, b), me, a < b})
			}
		}
	}
	slices.SortFunc(halves, func(a, b half) int {
		return cmp.Or(cmp.Compare(a.low, b.low), cmp.Compare(a.high, b.high), cmp.Compare(a.tri, b.tri))
	})
	// One pass over runs of equal edges: each has to hold two halves, one each
	// way. The triangles of a run belong to one body.
	bodies := newUnion(len(owner))
	for k := 0; k < len(halves); {
		e := k + 1
		for e < len(halves) && halves[e].low == halves[k].low && halves[e].high == halves[k].high {
			e++
		}
		if err := p.edge(halves[k:e], owner); err != nil {
			return err
		}
		bodies.join(halves[k].tri, halves[k+1].tri)
		k = e
	}
	return p.orientation(bodies, owner)
}

// edge judges the halves of one edge: one alone is a hole, three and more a fin
// or two bodies that share an edge, two the same way a triangle turned over.
func (p *MeshProblem) edge(h []half, owner [][2]int32) error {
	o := owner[h[0].tri]
	bad := &MeshError{Surface: p.Surfaces[o[0]].name(int(o[0])), Triangle: int(o[1])}
	switch {
	case len(h) == 1:
		bad.Detail, bad.Need, bad.Err = "an edge without a neighbour",
			"a closed body (thicken a sheet, fill a hole, weld corners)", ErrOpen
	case len(h) > 2:
		bad.Detail, bad.Need, bad.Err = fmt.Sprintf("an edge of %d triangles", len(h)), "two triangles at each edge", ErrOpen
	case h[0].up == h[1].up:
		bad.Detail, bad.Need, bad.Err = "its neighbour runs along the common edge in the same direction",
			"corners anticlockwise seen from the bath", ErrOrientation
	default:
		return nil
	}
	return bad
}

// orientation checks the sign of each body's volume.
//
//	V = Σ a·(b × c)/6
//
//	a, b, c  corners of each triangle, from one corner of the first
//
// The edges tell that the triangles of a body agree with each other, not that
// what they agree on is right: a body turned inside out is closed as well. Its
// volume is negative. A vessel encloses the bath, and its normals point
// inwards, so that there the sign is the other one. Counting from a corner of
// the mesh keeps the digits of a small part far from the origin.
func (p *MeshProblem) orientation(bodies union, owner [][2]int32) error {
	volume := map[int32]float64{}
	var roots []int32
	var origin r3.Vec
	for k, o := range owner {
		s := &p.Surfaces[o[0]]
		t := s.corners(int(o[1]))
		if k == 0 {
			origin = t[0]
		}
		root := bodies.find(int32(k))
		if _, ok := volume[root]; !ok {
			roots = append(roots, root)
		}
		volume[root] += r3.Dot(r3.Sub(t[0], origin), r3.Cross(r3.Sub(t[1], origin), r3.Sub(t[2], origin))) / 6
		// A body is all vessel or not at all.
		if o := owner[root]; p.Surfaces[o[0]].Vessel != s.Vessel {
			return inconsistent("surface "+s.Name, "joined to a vessel", "Vessel set on all surfaces that form the vessel")
		}
	}
	vessels := 0
	for _, root := range roots {
		o := owner[root]
		s := &p.Surfaces[o[0]]
		v := volume[root]
		if s.Vessel {
			v = -v
			vessels++
		}
		if v <= 0 {
			return &MeshError{Surface: s.name(int(o[0])), Triangle: -1, Detail: fmt.Sprintf("a body of signed volume %.3g m3",
				volume[root]),
				Need: "normals into the bath: corners anticlockwise seen from there", Err: ErrOrientation}
		}
	}
	if vessels > 1 {
		return inconsistent("vessel", fmt.Sprint(vessels, " closed surfaces"), "one")
	}
	return nil
}

// A union holds disjoint sets of triangles, each by its smallest member: entry
// i is the parent of i, and a root is its own.
type union []int32

// newUnion puts each of n triangles into a set of its own.
func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = int32(i)
	}
	return u
}

// find returns the root, and halves the path to it on the way.
func (u union) find(i int32) int32 {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

// join makes one set of two. The smaller number becomes the root, so that the
// result does not depend on the order of the edges.
func (u union) join(i, j int32) {
	i, j = u.find(i), u.find(j)
	u[max(i, j)] = min(i, j)
}
