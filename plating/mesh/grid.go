package mesh

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A Grid says how fine a generated mesh is.
type Grid struct {
	// Size is the longest that a panel's straight side may be, but for a few
	// per cent on round parts; > 0.
	Size units.Length
	// Grade makes panels smaller towards edges, where current crowds: a panel at
	// an edge is about Size (Size/length)^(Grade-1). 0 and 1 give even panels, 2 to
	// 3 suit a primary distribution. At most 5.
	Grade float64
}

// mostPanels is the largest number of triangles that a generator makes: some seconds
// and half a gigabyte. No solver takes a tenth of it.
const mostPanels = 5_000_000

// check returns a [*units.ValueError] unless the grid can be made.
func (g Grid) check() error {
	if err := units.Positive("panel size", g.Size); err != nil {
		return err
	}
	if g.Grade == 0 || g.Grade >= 1 && g.Grade <= 5 {
		return nil
	}
	return &units.ValueError{Field: "grading exponent", Value: fmt.Sprint(g.Grade), Need: "0, or from 1 to 5",
		Err: units.ErrOutOfRange}
}

// grade returns the grading exponent, 1 for even panels.
func (g Grid) grade() float64 { return max(g.Grade, 1) }

// count returns how many cells a length needs: even cells, or the widest of
// graded ones, within Size. It is NaN-safe and held at a number that the limit
// of panels refuses.
//
//	n = ⌈g L/Size⌉,  since the widest of cells graded with exponent g is g L/n
func (g Grid) count(length float64) int {
	return int(math.Ceil(min(max(g.grade()*length/float64(g.Size)*(1-1e-12), 1), mostPanels)))
}

// between returns n + 1 points from 0 to 1 graded to both ends: even n, so that
// the middle is one of them, when grading needs it.
//
//	x(t) = (2t)^g / 2 up to the middle, and mirrored
func (g Grid) between(length float64) []float64 {
	n := g.count(length)
	p := g.grade()
	if p > 1 {
		n += n % 2
	}
	x := make([]float64, n+1)
	for i := range x {
		if 2*i <= n {
			x[i] = math.Pow(2*float64(i)/float64(n), p) / 2
		} else {
			x[i] = 1 - math.Pow(2*float64(n-i)/float64(n), p)/2
		}
	}
	return x
}

// toEnd returns n + 1 points from 0 to 1 graded to the end.
//
//	x(t) = 1 - (1-t)^g
func (g Grid) toEnd(n int) []float64 {
	x := make([]float64, n+1)
	for i := range x {
		x[i] = 1 - math.Pow(1-float64(i)/float64(n), g.grade())
	}
	return x
}

// limit returns a [*units.ValueError] for more triangles than a generator makes.
func limit(triangles float64) error {
	if triangles <= mostPanels {
		return nil
	}
	return &units.ValueError{Field: "number of triangles", Value: fmt.Sprintf("%.3g", triangles),
		Need: fmt.Sprintf("at most %d; a larger panel size", mostPanels), Err: units.ErrOutOfRange}
}

// A builder collects triangles and makes one vertex of places that agree.
type builder struct {
	m    Mesh
	seen map[r3.Vec]int32
}

// newBuilder returns a builder without a vertex.
func newBuilder() *builder { return &builder{seen: map[r3.Vec]int32{}} }

// vertex returns the index of a place, and adds it when it is new. Places are one when all
// bits agree: a generator computes a corner in one way only.
func (b *builder) vertex(v r3.Vec) int32 {
	v = r3.Vec{X: v.X + 0, Y: v.Y + 0, Z: v.Z + 0} // no minus zero
	i, known := b.seen[v]
	if !known {
		i = int32(len(b.m.Vertices))
		b.seen[v] = i
		b.m.Vertices = append(b.m.Vertices, v)
	}
	return i
}

// triangle adds one unless two of its corners are one.
func (b *builder) triangle(p, q, r int32) {
	if t := [3]int32{p, q, r}; !repeated(t) {
		b.m.Triangles = append(b.m.Triangles, t)
	}
}

// quad adds two triangles, cut along the shorter diagonal.
func (b *builder) quad(p, q, r, s int32) {
	v := b.m.Vertices
	if r3.Norm2(r3.Sub(v[r], v[p])) <= r3.Norm2(r3.Sub(v[s], v[q])) {
		b.triangle(p, q, r)
		b.triangle(p, r, s)
	} else {
		b.triangle(p, q, s)
		b.triangle(q, r, s)
	}
}

// patch adds a grid of nu by nv cells; at gives the place of a grid point. Seen
// from outside, v is to the left of u.
func (b *builder) patch(nu, nv int, at func(u, v int) r3.Vec) {
	row := func(v int) []int32 {
		r := make([]int32, nu+1)
		for u := range r {
			r[u] = b.vertex(at(u, v))
		}
		return r
	}
	low := row(0)
	for v := 1; v <= nv; v++ {
		high := row(v)
		for u := range nu {
			b.quad(low[u], low[u+1], high[u+1], high[u])
		}
		low = high
	}
}
