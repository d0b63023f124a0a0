package mesh

import (
	"cmp"
	"slices"
)

// A side is one edge of one triangle.
type side struct {
	low, high int32 // its vertices, the lower index first
	triangle  int32
	forward   bool // runs from low to high in its triangle
}

// sides returns the edges of all triangles, those of the same two vertices
// behind each other. Edges from a vertex to itself are left out.
//
// A sort brings them together: it needs less memory than a map of edges, and gives the same
// order each time.
func (m Mesh) sides() []side {
	all := make([]side, 0, 3*len(m.Triangles))
	for i, t := range m.Triangles {
		for k := range t {
			a, b := t[k], t[(k+1)%3]
			switch {
			case a < b:
				all = append(all, side{a, b, int32(i), true})
			case b < a:
				all = append(all, side{b, a, int32(i), false})
			}
		}
	}
	slices.SortFunc(all, func(p, q side) int {
		return cmp.Or(cmp.Compare(p.low, q.low), cmp.Compare(p.high, q.high), cmp.Compare(p.triangle, q.triangle))
	})
	return all
}

// runs calls f for each edge with all its sides.
func runs(all []side, f func(edge []side)) {
	for len(all) > 0 {
		n := 1
		for n < len(all) && all[n].low == all[0].low && all[n].high == all[0].high {
			n++
		}
		f(all[:n])
		all = all[n:]
	}
}

// sorted returns the corners of a triangle in rising order.
func sorted(t [3]int32) [3]int32 {
	slices.Sort(t[:])
	return t
}

// sameTurn reports whether two triangles of the same corners run the same way.
func sameTurn(a, b [3]int32) bool {
	for k := range b {
		if a == [3]int32{b[k], b[(k+1)%3], b[(k+2)%3]} {
			return true
		}
	}
	return false
}

// A forest joins triangles into components.
type forest []int32

// newForest returns a forest of n triangles, each a tree by itself.
func newForest(n int) forest {
	f := make(forest, n)
	for i := range f {
		f[i] = int32(i)
	}
	return f
}

// root returns the triangle that stands for the tree of i, and halves the way to it for the
// next time.
func (f forest) root(i int32) int32 {
	for f[i] != i {
		f[i] = f[f[i]]
		i = f[i]
	}
	return i
}

// join puts two together; the lower index stays root, so that the order of
// components is that of their first triangles.
func (f forest) join(a, b int32) {
	a, b = f.root(a), f.root(b)
	if a < b {
		f[b] = a
	} else {
		f[a] = b
	}
}

// components returns the triangles of each component: those that hang together
// by edges. Components come in the order of their first triangles.
func (m Mesh) components(all []side) [][]int32 {
	f := newForest(len(m.Triangles))
	runs(all, func(edge []side) {
		for _, s := range edge[1:] {
			f.join(edge[0].triangle, s.triangle)
		}
	})
	place := make([]int32, len(m.Triangles))
	var parts [][]int32
	for i := range m.Triangles {
		r := f.root(int32(i))
		if int(r) == i {
			place[i] = int32(len(parts))
			parts = append(parts, nil)
		}
		parts[place[r]] = append(parts[place[r]], int32(i))
	}
	return parts
}
