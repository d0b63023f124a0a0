package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// An evaluator computes rows and columns of one block at a time. The rule of
// integration is chosen for a source panel and the whole block, so that a
// column is always the smooth potential of one set of point sources and no
// jump between rules disturbs the compression.
//
// A jump would be small, as small as the error of the coarser rule. But a jump
// is not smooth: it runs across the block along a sphere about the source and
// has no short sum of products. Pivots would take cross after cross for it, and
// the rank would measure the quadrature instead of the bath.
type evaluator struct {
	// p are the panels, which are the points as well.
	p *panels
	// galerkin averages the equation over the panel instead of taking it at the
	// centroid.
	galerkin bool
	// double tells that the current block holds the double layer too.
	double bool
	// row and col are the clusters of the current block.
	row, col *node
	// rule is that of each source of the block.
	rule []uint8
	// outer is the number of points of the average over each row's panel: 1, 3
	// or 7.
	outer []uint8
	// three and the two vectors are room for the averages.
	three  [3]r3.Vec
	tg, tk []float64
}

const (
	// The three rules of integration over a source panel, from the nearest to
	// the farthest; see [panels.layersAt].
	ruleNear uint8 = iota
	ruleMiddle
	ruleFar
)

// begin prepares the block between two clusters.
//
// A source's rule is set by its distance from the box of all points, so that it
// is the one that the nearest of them needs. With the averaged equation the
// points lie anywhere on their panels, and the box of the corners counts
// instead of that of the centroids.
func (e *evaluator) begin(row, col *node, double bool) {
	e.row, e.col, e.double = row, col, double
	e.rule = grow(e.rule, col.hi-col.lo)
	for j := col.lo; j < col.hi; j++ {
		f := &e.p.far[j]
		d2 := row.points.distance2(f.c)
		if e.galerkin {
			d2 = row.box.distance2(f.c)
		}
		r := ruleNear
		if d2 > f.far {
			r = ruleFar
		} else if d2 > f.middle {
			r = ruleMiddle
		}
		e.rule[j-col.lo] = r
	}
	// The outer rule works the other way round: the potential of the sources,
	// seen over one panel of the rows, is the rougher the nearer they are.
	e.outer = grow(e.outer, row.hi-row.lo)
	for i := row.lo; i < row.hi; i++ {
		e.outer[i-row.lo] = 1
		if !e.galerkin {
			continue
		}
		switch d := math.Sqrt(col.box.distance2(e.p.at[i])) / e.p.diam[i]; {
		case d < outerSeven:
			e.outer[i-row.lo] = 7
		case d < outerThree:
			e.outer[i-row.lo] = 3
		}
	}
}

// Distances, in longest edges of the panel, within which its average is taken
// over seven points and over three.
const (
	// Seven points near, three farther off, then the centroid alone. Two rules
	// on the two sides of an entry keep the averaged equation close to
	// symmetric, which is what makes its capacitances a lower bound.
	outerSeven = 8
	outerThree = 60
)

// grow returns a slice of n, the old one where it is long enough. What is in it
// is left from before.
func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n, n+n/2)
	}
	return s[:n]
}

// rowAt fills g and, if the block has one, k with the layers of all sources at point i.
//
// In the averaged equation a row is the weighted mean of rows at several points
// of the panel,
//
//	1/A ∫ (row at x) dS ≈ Σ w_m·(row at x_m)
func (e *evaluator) rowAt(i int, g, k []float64) {
	if e.outer[i-e.row.lo] == 1 {
		e.setRow(e.p.at[i], g, k)
		return
	}
	e.tg, e.tk = grow(e.tg, len(g)), grow(e.tk, len(g))
	clear(g)
	clear(k)
	points, weights := e.average(i)
	for m, x := range points {
		e.setRow(x, e.tg, e.tk)
		w := weights[m]
		for j := range g {
			g[j] += w * e.tg[j]
		}
		if e.double {
			for j := range k {
				k[j] += w * e.tk[j]
			}
		}
	}
}

// average returns the points and weights of the average over panel i.
func (e *evaluator) average(i int) ([]r3.Vec, []float64) {
	if e.outer[i-e.row.lo] == 7 {
		return e.p.seven[i][:], sevenWeights[:]
	}
	t, c := &e.p.tri[i], e.p.at[i]
	for k, v := range t {
		// Half way from the centroid to each corner: exact for polynomials of
		// the second degree, as the midpoints of the sides are, but inside the
		// panel, away from its neighbours.
		e.three[k] = r3.Scale(0.5, r3.Add(v, c)) // degree 2
	}
	return e.three[:], threeWeights[:]
}

var threeWeights = [3]float64{1. / 3, 1. / 3, 1. / 3}

// setRow sets g and k to the layers at x.
func (e *evaluator) setRow(x r3.Vec, g, k []float64) {
	p, lo := e.p, e.col.lo
	if !e.double {
		k = nil
	}
	for j := range g {
		var a, b float64
		switch e.rule[j] {
		case ruleFar:
			a, b = p.far[lo+j].atFar(x)
		case ruleMiddle:
			a, b = p.atMiddle(lo+j, x)
		default:
			a, b = p.atNear(lo+j, x)
		}
		g[j] = a
		if k != nil {
			k[j] = b
		}
	}
}

// columnAt fills c with one layer of source j at all points.
//
// Column by column there is nothing to share: each entry has a distance of its
// own, and an average of its own.
func (e *evaluator) columnAt(j int, double bool, c []float64) {
	for i := range c {
		c[i] = e.entry(e.row.lo+i, j, double)
	}
}

// entry returns one layer of source j at point i.
func (e *evaluator) entry(i, j int, double bool) float64 {
	g, k := e.both(i, j)
	if double {
		return k
	}
	return g
}

// both returns the two layers of source j at point i.
func (e *evaluator) both(i, j int) (g, k float64) {
	if e.outer[i-e.row.lo] == 1 {
		return e.one(e.p.at[i], j)
	}
	points, weights := e.average(i)
	for m, x := range points {
		a, b := e.one(x, j)
		g += weights[m] * a
		k += weights[m] * b
	}
	return g, k
}

// one returns both layers of source j at a place by the rule that the block has
// for it.
func (e *evaluator) one(x r3.Vec, j int) (g, k float64) {
	switch e.rule[j-e.col.lo] {
	case ruleFar:
		return e.p.far[j].atFar(x)
	case ruleMiddle:
		return e.p.atMiddle(j, x)
	}
	return e.p.atNear(j, x)
}
