package field

// eta is the largest ratio of the smaller cluster to the gap between the two at
// which a block is compressed:
//
//	min(diam a, diam b) ≤ η·dist(a, b)
//
// A potential seen from afar is smooth, and a smooth function of two places is
// a short sum of products of functions of one place each. How short depends on
// the gap measured in clusters: the terms fall geometrically, the slower the
// larger η is. With a small η fewer blocks are compressed, with a large one the
// blocks are bigger but of higher rank. The pivots choose the terms themselves,
// so that η may be larger here than with expansions that are fixed beforehand.
const eta = 3

// A block is the part of the operator from the panels of one cluster (the
// sources, its columns) to the points of another (its rows).
//
//	dense     data = A, m rows of the width
//	low rank  data = U then V, A ≈ U·Vᵀ; U has rank columns of m, V rank rows of the width
//
// A row holds the single layer of the n sources and, unless it is zero, after
// it the double layer: the width is n or 2n. So one product serves both layers,
// and U, which both share, is stored once.
//
// Numbers are stored in single precision, at half of the memory and of the time
// to read them. An entry is then off by up to 6e-8 of itself, without order in
// sign: far less than the tolerance of 1e-5 that a run has by default.
type block struct {
	// row and col are nodes of the tree.
	row, col int32
	// rank is -1 for a dense block.
	rank int32
	// double tells that the block holds the double layer too. Between two
	// clusters of one plane it is zero: there n·(x - y) is.
	double bool
	data   []float32
}

// An operator applies both layers of all panels at all points at once.
type operator struct {
	// t gives the rows and columns of a node.
	t *tree
	// double is false where the single layer alone is wanted.
	double bool
	// blocks cover the matrix: each pair of a point and a source lies in
	// exactly one.
	blocks []block
	// shares are the ends of each worker's blocks in the product.
	shares []int
	// sums are what each worker adds up; they are added in one order.
	sums [][]float64
	// tol is the relative tolerance of each block, bytes what the blocks hold.
	tol   float64
	bytes int64
}

// partition lists the blocks of the operator. It walks down the tree from the
// pair of the root with itself and stops at each pair that may be compressed,
// or that is two leaves. The number of blocks grows with the number of panels,
// not with its square, since a cluster has only so many others near it.
func (t *tree) partition(double bool) []block {
	var out []block
	t.split(0, 0, double, &out)
	return out
}

func (t *tree) split(r, c int32, double bool, out *[]block) {
	a, b := &t.nodes[r], &t.nodes[c]
	// Two clusters of one plane do not see each other's double layer.
	flat := a.plane >= 0 && a.plane == b.plane
	leafA, leafB := a.left < 0, b.left < 0
	switch {
	case t.admissible(a, b):
		*out = append(*out, block{row: r, col: c, double: double && !flat})
	case leafA && leafB:
		*out = append(*out, block{row: r, col: c, rank: -1, double: double && !flat})
	// Only the larger one is halved as long as the two differ much in size:
	// halving a small one would give blocks long and thin. Of a size, both are
	// halved.
	case leafB || !leafA && a.diam >= b.diam && !bothLarge(a, b):
		t.split(a.left, c, double, out)
		t.split(a.right, c, double, out)
	case leafA || !bothLarge(a, b):
		t.split(r, b.left, double, out)
		t.split(r, b.right, double, out)
	default:
		for _, i := range [2]int32{a.left, a.right} {
			for _, j := range [2]int32{b.left, b.right} {
				t.split(i, j, double, out)
			}
		}
	}
}

// bothLarge tells whether both clusters are of a kind, and so are halved together.
func bothLarge(a, b *node) bool {
	return a.left >= 0 && b.left >= 0 && a.diam <= 2*b.diam && b.diam <= 2*a.diam
}

// Besides the distance the planes count. A cluster that holds several flat
// faces, or a face and the rest, has rows in which the double layer vanishes
// beside rows in which it does not; there pivoting can stop too early without a
// sign (see [compressor.cross]). Such a pair is divided further.
func (t *tree) admissible(a, b *node) bool {
	if a.plane != b.plane && (a.plane < 0 && mixed(t, a) || b.plane < 0 && mixed(t, b)) {
		return false
	}
	return min(a.diam, b.diam) <= eta*a.box.distance(b.box)
}

// mixed tells whether a cluster above the faces holds several groups.
func mixed(t *tree, a *node) bool {
	return a.left >= 0 && t.nodes[a.left].plane != t.nodes[a.right].plane
}
