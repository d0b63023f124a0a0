package field

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// leafSize is the number of panels below which a cluster is not divided. Leaves
// are the dense blocks near the diagonal and the matrices of the
// preconditioner: larger ones mean more memory and fewer GMRES steps.
const leafSize = 48

// A box3 is an axis-parallel box.
type box3 struct{ lo, hi r3.Vec }

// emptyBox returns a box that the first point will make its own.
func emptyBox() box3 {
	inf := math.Inf(1)
	return box3{r3.Vec{X: inf, Y: inf, Z: inf}, r3.Vec{X: -inf, Y: -inf, Z: -inf}}
}

// add makes the box hold a point.
func (b *box3) add(v r3.Vec) {
	b.lo = r3.Vec{X: min(b.lo.X, v.X), Y: min(b.lo.Y, v.Y), Z: min(b.lo.Z, v.Z)}
	b.hi = r3.Vec{X: max(b.hi.X, v.X), Y: max(b.hi.Y, v.Y), Z: max(b.hi.Z, v.Z)}
}

// diam is the length of the diagonal.
func (b box3) diam() float64  { return norm(r3.Sub(b.hi, b.lo)) }
func (b box3) centre() r3.Vec { return r3.Scale(0.5, r3.Add(b.lo, b.hi)) }

// distance returns the gap between two boxes, 0 where they touch.
//
// It is a lower bound for the distance of what lies inside, and needs no look
// at it.
func (b box3) distance(c box3) float64 {
	dx := max(0, b.lo.X-c.hi.X, c.lo.X-b.hi.X)
	dy := max(0, b.lo.Y-c.hi.Y, c.lo.Y-b.hi.Y)
	dz := max(0, b.lo.Z-c.hi.Z, c.lo.Z-b.hi.Z)
	return math.Sqrt(dx*dx + dy*dy + dz*dz)
}

// distance2 returns the squared distance of a point from the box.
func (b *box3) distance2(v r3.Vec) float64 {
	dx := max(0, b.lo.X-v.X, v.X-b.hi.X)
	dy := max(0, b.lo.Y-v.Y, v.Y-b.hi.Y)
	dz := max(0, b.lo.Z-v.Z, v.Z-b.hi.Z)
	return dx*dx + dy*dy + dz*dz
}

// A node is a cluster: the panels lo to hi-1 in tree order. Panels of a cluster
// stand together, so that a block of the operator reads one stretch of each
// vector.
type node struct {
	// lo and hi-1 are its first and last panels.
	lo, hi int
	// left and right are the halves as indices, -1 in a leaf.
	left, right int32
	// plane is that of all its panels, -1 where they lie in several.
	plane int32
	// box holds the corners of its panels.
	box box3
	// points holds their centroids, where the collocated equation is asked for.
	points box3
	// diam is that of the box.
	diam float64
	// size is the largest panel, as the root of twice its area.
	size float64
}

// A tree is the cluster tree; node 0 is the root.
type tree struct {
	nodes []node
	order []int32 // tree order to first order
}

// newTree builds the tree and leaves the panels in its order. Flat faces with
// many panels get branches of their own: a block between two clusters of one
// plane has then a double layer that is zero throughout, and any other block a
// smooth one. Mixed clusters give blocks that are zero in part, and a
// compression by pivots stops in them too early without a sign of it.
//
// Panels are put into tree order for good: from here on number i means the i-th
// in the tree, and surface and local lead back to the caller's mesh.
func newTree(p *panels) *tree {
	groups := p.faces()
	t := &tree{order: make([]int32, 0, p.len())}
	t.divide(p, groups)
	p.permute(t.order)
	for i := len(t.nodes) - 1; i >= 0; i-- { // sons come after their parent
		t.measure(p, &t.nodes[i])
	}
	return t
}

// divide makes a node of some groups and returns its index.
//
// Whole faces are put together by where their middles are, until one is left;
// from there on panels are halved.
func (t *tree) divide(p *panels, groups [][]int32) int32 {
	if len(groups) == 1 {
		return t.bisect(p, groups[0])
	}
	me := t.push()
	b := emptyBox()
	for _, g := range groups {
		b.add(middle(p, g))
	}
	axis := longAxis(b)
	slices.SortStableFunc(groups, func(g, h []int32) int {
		return cmp.Compare(part(middle(p, g), axis), part(middle(p, h), axis))
	})
	half := len(groups) / 2
	left := t.divide(p, groups[:half])
	right := t.divide(p, groups[half:])
	t.nodes[me].left, t.nodes[me].right = left, right
	t.nodes[me].hi = len(t.order)
	return me
}

// middle returns the middle of the box round the centroids of a group.
func middle(p *panels, g []int32) r3.Vec {
	b := emptyBox()
	for _, i := range g {
		b.add(p.at[i])
	}
	return b.centre()
}

// push makes a new node that begins where the order has come to.
func (t *tree) push() int32 {
	t.nodes = append(t.nodes, node{lo: len(t.order), left: -1, right: -1, plane: -1})
	return int32(len(t.nodes) - 1)
}

// bisect makes a node of the panels of one group, halved along its longest axis.
//
// Halves have the same number of panels, not the same size: the depth of the
// tree is the logarithm of the number of panels on any mesh, graded as it may
// be. Panels at one height are told apart by their numbers, so that the order
// depends on the mesh alone.
func (t *tree) bisect(p *panels, g []int32) int32 {
	me := t.push()
	t.nodes[me].plane = p.plane[g[0]]
	if len(g) <= leafSize {
		t.order = append(t.order, g...)
		t.nodes[me].hi = len(t.order)
		return me
	}
	b := emptyBox()
	for _, i := range g {
		b.add(p.at[i])
	}
	axis := longAxis(b)
	slices.SortFunc(g, func(i, j int32) int {
		return cmp.Or(cmp.Compare(part(p.at[i], axis), part(p.at[j], axis)), cmp.Compare(i, j))
	})
	half := len(g) / 2
	left := t.bisect(p, g[:half])
	right := t.bisect(p, g[half:])
	t.nodes[me].left, t.nodes[me].right = left, right
	t.nodes[me].hi = len(t.order)
	return me
}

// longAxis returns the axis along which a box is longest. Halving that one
// keeps clusters compact, and compact clusters are far from each other sooner.
func longAxis(b box3) int {
	d := r3.Sub(b.hi, b.lo)
	switch {
	case d.X >= d.Y && d.X >= d.Z:
		return 0
	case d.Y >= d.Z:
		return 1
	}
	return 2
}

// part returns one coordinate of a place.
func part(v r3.Vec, axis int) float64 {
	switch axis {
	case 0:
		return v.X
	case 1:
		return v.Y
	}
	return v.Z
}

// measure fills in boxes and sizes of a node: a leaf's from its panels,
// another's from its halves.
func (t *tree) measure(p *panels, n *node) {
	n.box, n.points = emptyBox(), emptyBox()
	if n.left < 0 {
		for i := n.lo; i < n.hi; i++ {
			for _, v := range p.tri[i] {
				n.box.add(v)
			}
			n.points.add(p.at[i])
			n.size = max(n.size, math.Sqrt(2*p.area[i]))
		}
	} else {
		for _, s := range [2]*node{&t.nodes[n.left], &t.nodes[n.right]} {
			n.box.add(s.box.lo)
			n.box.add(s.box.hi)
			n.points.add(s.points.lo)
			n.points.add(s.points.hi)
			n.size = max(n.size, s.size)
		}
	}
	n.diam = n.box.diam()
}

// faces numbers the planes that hold more than half a leaf of panels and
// returns the panels by group: the rest first, then plane by plane.
//
// A face of fewer panels than half a leaf gets no branch of its own: it would
// make blocks too small to be worth it.
func (p *panels) faces() [][]int32 {
	b := emptyBox()
	for i := range p.tri {
		b.add(p.at[i])
	}
	// The largest panels come first, so that each plane is known by its best
	// panel.
	book := newPlanes(p, b)
	var groups [][]int32
	for _, i := range book.order {
		k := book.number(p, i)
		if k == len(groups) {
			groups = append(groups, nil)
		}
		groups[k] = append(groups[k], i)
	}
	for _, g := range groups {
		slices.Sort(g)
	}
	// In order of appearance, so that the result depends on the mesh alone.
	slices.SortFunc(groups, func(a, b []int32) int { return cmp.Compare(a[0], b[0]) })
	p.plane = make([]int32, p.len())
	var rest []int32
	var out [][]int32
	for i := range p.plane {
		p.plane[i] = -1
	}
	for _, g := range groups {
		if len(g) <= leafSize/2 {
			rest = append(rest, g...)
			continue
		}
		for _, i := range g {
			p.plane[i] = int32(len(out))
		}
		out = append(out, g)
	}
	if len(rest) > 0 {
		slices.Sort(rest)
		out = append([][]int32{rest}, out...)
	}
	return out
}
