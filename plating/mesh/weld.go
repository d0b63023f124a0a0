package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// weld joins each vertex with the first earlier one within a distance, and
// returns how many were joined and the largest move. A vertex is joined with
// one that stays where it is, so that moves do not add up along a row of
// vertices. Vertices that no triangle uses are not looked at.
//
//	to(i) = the nearest vertex j < i that stays, with |v_j - v_i| ≤ distance
//
// Two passes in one: places equal to the last bit by a map, near ones by a grid whose cells
// are as wide as the distance, so that 27 cells hold all that are near. A distance of 0
// joins equal places only. The result depends on the order of vertices, not on that of the
// map.
func (m *Mesh) weld(distance float64) (joined int, most float64) {
	used := make([]bool, len(m.Vertices))
	for _, t := range m.Triangles {
		for _, v := range t {
			used[v] = true
		}
	}
	to := make([]int32, len(m.Vertices))
	cells := map[[3]int64]int32{} // the last vertex that stays in each cell
	before := make([]int32, len(m.Vertices))
	exact := map[r3.Vec]int32{}
	for i, v := range m.Vertices {
		to[i] = int32(i)
		if !used[i] {
			continue
		}
		v = r3.Vec{X: v.X + 0, Y: v.Y + 0, Z: v.Z + 0} // no minus zero
		if first, known := exact[v]; known {
			to[i] = to[first]
			most = max(most, r3.Norm(r3.Sub(m.Vertices[to[i]], v)))
			joined++
			continue
		}
		exact[v] = int32(i)
		if distance == 0 {
			continue
		}
		if near := m.near(v, distance, cells, before); near >= 0 {
			to[i] = near
			most = max(most, r3.Norm(r3.Sub(m.Vertices[near], v)))
			joined++
			continue
		}
		// A vertex that stays: it heads the list of its cell.
		cell := cellOf(v, distance)
		before[i] = -1
		if last, known := cells[cell]; known {
			before[i] = last
		}
		cells[cell] = int32(i)
	}
	for i, t := range m.Triangles {
		m.Triangles[i] = [3]int32{to[t[0]], to[t[1]], to[t[2]]}
	}
	return joined, most
}

// near returns the vertex nearest to v within a distance among those that stay, -1 for none.
func (m *Mesh) near(v r3.Vec, distance float64, cells map[[3]int64]int32, before []int32) int32 {
	c := cellOf(v, distance)
	found, least := int32(-1), distance
	for x := c[0] - 1; x <= c[0]+1; x++ {
		for y := c[1] - 1; y <= c[1]+1; y++ {
			for z := c[2] - 1; z <= c[2]+1; z++ {
				at, known := cells[[3]int64{x, y, z}]
				for ; known && at >= 0; at = before[at] {
					if d := r3.Norm(r3.Sub(m.Vertices[at], v)); d <= least {
						found, least = at, d
					}
				}
			}
		}
	}
	return found
}

// cellOf returns the cell of a grid as wide as the distance. The grid is held
// to what an int64 counts; beyond it cells are wider than the distance in
// float64 terms and still find all that are near.
func cellOf(v r3.Vec, distance float64) [3]int64 {
	const most = 1 << 60
	f := func(x float64) int64 { return int64(math.Floor(min(max(x/distance, -most), most))) }
	return [3]int64{f(v.X), f(v.Y), f(v.Z)}
}

// takeOutFlat takes triangles without area out. One with two corners alike is
// dropped: its other two edges are the same. One with a corner on the edge of
// the other two is dropped as well, and the neighbour across that edge is cut in
// two at the corner, so that the surface stays closed and where it was. One whose
// neighbour cannot be cut stays.
//
// Cutting a neighbour may free another needle whose neighbour was flat, so the needles are
// gone over until none can be taken out.
func (m *Mesh) takeOutFlat() (dropped, swapped int) {
	kept := m.Triangles[:0]
	for _, t := range m.Triangles {
		if repeated(t) {
			dropped++
			continue
		}
		kept = append(kept, t)
	}
	m.Triangles = kept
	var needles []int
	for i := range m.Triangles {
		if a, b, c := m.Corners(i); flat(a, b, c) {
			needles = append(needles, i)
		}
	}
	if len(needles) == 0 {
		return dropped, 0
	}
	at := map[[2]int32][]int32{} // triangles at each edge
	for i := range m.Triangles {
		m.enter(at, i, true)
	}
	for again := true; again; {
		again = false
		rest := needles[:0]
		for _, i := range needles {
			if m.cutNeighbour(at, i) {
				swapped++
				again = true
			} else {
				rest = append(rest, i)
			}
		}
		needles = rest
	}
	kept = m.Triangles[:0]
	for _, t := range m.Triangles {
		if !repeated(t) { // those cut are marked so
			kept = append(kept, t)
		}
	}
	m.Triangles = kept
	return dropped, swapped
}

// enter puts triangle i into the table of edges, or takes it out.
func (m *Mesh) enter(at map[[2]int32][]int32, i int, in bool) {
	t := m.Triangles[i]
	for k := range t {
		key := [2]int32{min(t[k], t[(k+1)%3]), max(t[k], t[(k+1)%3])}
		if in {
			at[key] = append(at[key], int32(i))
			continue
		}
		list := at[key]
		for n, j := range list {
			if int(j) == i {
				at[key] = append(list[:n:n], list[n+1:]...)
				break
			}
		}
	}
}

// cutNeighbour takes out needle i, whose corner b lies on the edge from a to c.
// The one neighbour across that edge, with its own corner d, becomes two
// triangles that meet along d and b, in the direction of the neighbour; the
// needle's place takes one of them. It reports false when there is not exactly
// one neighbour, when that is flat too, or when b is one of its corners.
func (m *Mesh) cutNeighbour(at map[[2]int32][]int32, i int) bool {
	t := m.Triangles[i]
	k, longest := 0, -1.
	for n := range t {
		if l := r3.Norm2(r3.Sub(m.Vertices[t[n]], m.Vertices[t[(n+1)%3]])); l > longest {
			k, longest = n, l
		}
	}
	a, c, b := t[k], t[(k+1)%3], t[(k+2)%3]
	list := at[[2]int32{min(a, c), max(a, c)}]
	if len(list) != 2 {
		return false
	}
	j := int(list[0])
	if j == i {
		j = int(list[1])
	}
	o := m.Triangles[j]
	if p, q, r := m.Corners(j); flat(p, q, r) || o[0] == b || o[1] == b || o[2] == b {
		return false
	}
	n := 0
	for o[n] == a || o[n] == c {
		n++
	}
	d, e, f := o[n], o[(n+1)%3], o[(n+2)%3] // e and f are a and c in the neighbour's order
	m.enter(at, i, false)
	m.enter(at, j, false)
	m.Triangles[i], m.Triangles[j] = [3]int32{d, e, b}, [3]int32{d, b, f}
	m.enter(at, i, true)
	m.enter(at, j, true)
	return true
}
