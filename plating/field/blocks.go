package field

// eta is the largest ratio of the smaller cluster to the gap between the two
// at which a block is compressed.
const eta = 3

// A block is the part of the operator from the panels of one cluster to the
// points of another. Low rank: rank columns over the points, then rank rows
// over the sources. Dense: a row for each point. A row holds the single layer
// of the sources and, unless it is zero, after it the double layer.
type block struct {
	row, col int32 // nodes
	rank     int32 // -1 for a dense block
	double   bool  // holds the double layer too
	data     []float32
}

// An operator applies both layers of all panels at all points at once.
type operator struct {
	t      *tree
	double bool
	blocks []block
	shares []int // of each worker: its blocks end there
	sums   [][]float64
	tol    float64
	bytes  int64
}

// partition lists the blocks of the operator.
func (t *tree) partition(double bool) []block {
	var out []block
	t.split(0, 0, double, &out)
	return out
}

func (t *tree) split(r, c int32, double bool, out *[]block) {
	a, b := &t.nodes[r], &t.nodes[c]
	flat := a.plane >= 0 && a.plane == b.plane
	leafA, leafB := a.left < 0, b.left < 0
	switch {
	case t.admissible(a, b):
		*out = append(*out, block{row: r, col: c, double: double && !flat})
	case leafA && leafB:
		*out = append(*out, block{row: r, col: c, rank: -1, double: double && !flat})
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
