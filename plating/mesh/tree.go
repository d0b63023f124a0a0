package mesh

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// leafSize is the number of triangles up to which a node is not divided.
const leafSize = 6

// A triangleTree holds the boxes of triangles in a tree, to find those that meet.
//
// Triangles are put in the order of a space-filling curve through their middles, and each
// node halves a stretch of it. Near triangles are near in the order, so the boxes of nodes
// are small; building needs one sort and no search for a place to cut.
type triangleTree struct {
	m     Mesh
	tol   float64
	order []int32 // triangles, near ones behind each other
	boxes []box   // of them, in that order, widened
	nodes []treeNode
	leafs []slabs
}

type box struct{ low, high r3.Vec }

// meets reports whether two boxes have a place in common.
func (b *box) meets(o *box) bool {
	return b.low.X <= o.high.X && o.low.X <= b.high.X && b.low.Y <= o.high.Y && o.low.Y <= b.high.Y &&
		b.low.Z <= o.high.Z && o.low.Z <= b.high.Z
}

// A treeNode is the box around triangles from to to of the order; its first half
// is the next node, the second half another one. A leaf has no second.
type treeNode struct {
	box
	from, to, second int32
	slabs            int32 // of a leaf
}

// slabs hold the triangles of a leaf between pairs of planes: along the surface, for
// which its normal is one, they are thinner than a box with the axes of the file. A
// tilted drawing of long needles needs them.
type slabs struct {
	axis      [3]r3.Vec
	low, high [3]float64
}

// tree puts triangles with an area, one at least, into a tree; their boxes are
// widened by grow on all sides.
func (m Mesh) tree(use []int32, grow float64) triangleTree {
	low, high := m.box()
	size := r3.Sub(high, low)
	scale := 1 / max(size.X, size.Y, size.Z)
	type placed struct {
		code     uint64
		triangle int32
	}
	list := make([]placed, len(use))
	for n, i := range use {
		a, b, c := m.Corners(int(i))
		v := r3.Scale(scale, r3.Sub(r3.Scale(1./3, r3.Add(a, r3.Add(b, c))), low))
		list[n] = placed{spread(v.X) | spread(v.Y)<<1 | spread(v.Z)<<2, i}
	}
	slices.SortFunc(list, func(a, b placed) int {
		return cmp.Or(cmp.Compare(a.code, b.code), cmp.Compare(a.triangle, b.triangle))
	})
	t := triangleTree{m: m, tol: grow, order: make([]int32, len(use)), boxes: make([]box, len(use))}
	margin := r3.Vec{X: grow, Y: grow, Z: grow}
	for n, p := range list {
		a, b, c := m.Corners(int(p.triangle))
		low, high := around(a, a, b)
		low, high = around(low, high, c)
		t.order[n], t.boxes[n] = p.triangle, box{r3.Sub(low, margin), r3.Add(high, margin)}
	}
	t.nodes = make([]treeNode, 0, 4*len(use)/leafSize+1)
	t.grow(0, int32(len(use)))
	return t
}

// spread puts two empty bits behind each of the 21 bits of a number from 0 to 1.
//
// Three such numbers, shifted by 0, 1 and 2, make the Morton code of a place: places whose
// codes agree in their first 3k bits lie in one cube of side 2^-k.
func spread(x float64) uint64 {
	v := uint64(min(max(x, 0), 1) * (1<<21 - 1))
	v = (v | v<<32) & 0x1f00000000ffff
	v = (v | v<<16) & 0x1f0000ff0000ff
	v = (v | v<<8) & 0x100f00f00f00f00f
	v = (v | v<<4) & 0x10c30c30c30c30c3
	return (v | v<<2) & 0x1249249249249249
}

// grow adds the node of a stretch of the order and those below it, and returns it.
func (t *triangleTree) grow(from, to int32) int32 {
	k := int32(len(t.nodes))
	t.nodes = append(t.nodes, treeNode{from: from, to: to})
	if to-from <= leafSize {
		around := t.boxes[from]
		for _, b := range t.boxes[from+1 : to] {
			around = around.with(b)
		}
		t.nodes[k].box, t.nodes[k].slabs = around, int32(len(t.leafs))
		t.leafs = append(t.leafs, t.enclose(from, to))
		return k
	}
	middle := from + (to-from)/2
	first := t.grow(from, middle)
	second := t.grow(middle, to)
	t.nodes[k].second = second
	t.nodes[k].box = t.nodes[first].box.with(t.nodes[second].box)
	return k
}

// with returns the box around two boxes.
func (b box) with(o box) box {
	return box{r3.Vec{X: min(b.low.X, o.low.X), Y: min(b.low.Y, o.low.Y), Z: min(b.low.Z, o.low.Z)},
		r3.Vec{X: max(b.high.X, o.high.X), Y: max(b.high.Y, o.high.Y), Z: max(b.high.Z, o.high.Z)}}
}

// pairs calls f once for each two triangles whose boxes meet.
//
// Each node meets its own two halves once; so no pair comes twice, and none with itself.
func (t *triangleTree) pairs(f func(i, j int32)) {
	for k := range t.nodes {
		n := &t.nodes[k]
		if n.second == 0 {
			for i := n.from; i < n.to; i++ {
				t.against(i, i+1, n.to, f)
			}
			continue
		}
		t.between(int32(k)+1, n.second, f)
	}
}

// between calls f for the pairs of one triangle of each of two nodes.
//
// The larger of two nodes is divided, until both are leaves; a pair of boxes that do not
// meet ends the search below it.
func (t *triangleTree) between(k, l int32, f func(i, j int32)) {
	a, b := &t.nodes[k], &t.nodes[l]
	switch {
	case !a.meets(&b.box):
	case a.second == 0 && b.second == 0:
		if t.apart(a, b) || t.apart(b, a) {
			return
		}
		for i := a.from; i < a.to; i++ {
			if t.boxes[i].meets(&b.box) {
				t.against(i, b.from, b.to, f)
			}
		}
	case b.second == 0 || a.second != 0 && a.to-a.from >= b.to-b.from:
		t.between(k+1, l, f)
		t.between(a.second, l, f)
	default:
		t.between(k, l+1, f)
		t.between(k, b.second, f)
	}
}

// against calls f for a triangle and those of a stretch whose boxes it meets.
func (t *triangleTree) against(i, from, to int32, f func(i, j int32)) {
	for j := from; j < to; j++ {
		if t.boxes[i].meets(&t.boxes[j]) {
			f(t.order[i], t.order[j])
		}
	}
}

// enclose returns the slabs of a stretch of the order: across its first triangle,
// along the longest side of that, and at right angles to both.
func (t *triangleTree) enclose(from, to int32) (s slabs) {
	first := t.m.triangle(t.order[from])
	s.axis[0] = first.normal()
	longest := r3.Vec{}
	for k := range first {
		if side := r3.Sub(first[(k+1)%3], first[k]); r3.Norm2(side) > r3.Norm2(longest) {
			longest = side
		}
	}
	s.axis[2] = r3.Unit(longest)
	s.axis[1] = r3.Cross(s.axis[0], s.axis[2])
	for d, axis := range s.axis {
		s.low[d], s.high[d] = t.extent(axis, from, to)
	}
	return s
}

// extent returns how far the corners of a stretch reach along an axis.
func (t *triangleTree) extent(axis r3.Vec, from, to int32) (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, i := range t.order[from:to] {
		for _, v := range t.m.Triangles[i] {
			d := r3.Dot(axis, t.m.Vertices[v])
			low, high = min(low, d), max(high, d)
		}
	}
	return low, high
}

// apart reports whether the triangles of a leaf b lie beyond a slab of a leaf a:
// along the normal with a gap, in which they neither cut nor cover; along the
// surface neighbours touch, and reach into each other by less than counts.
func (t *triangleTree) apart(a, b *treeNode) bool {
	s := &t.leafs[a.slabs]
	gap := t.tol
	for d, axis := range s.axis {
		if low, high := t.extent(axis, b.from, b.to); low > s.high[d]+gap || high < s.low[d]-gap {
			return true
		}
		gap = -t.tol / 2
	}
	return false
}
