package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// near holds the corners of the parts: all that the walls need to know is how
// near the parts come.
type near struct{ points []r3.Vec }

// distance returns the least distance of the parts from a rectangle, given by
// its box.
//
// It ends as soon as a corner is nearer than what the caller needs to know.
// Corners stand for the part: between them it is flat, and a part that comes
// near a wall with a face comes near with the corners of the face.
func (n *near) distance(b box3, least float64) float64 {
	d := math.Inf(1)
	for _, v := range n.points {
		d = min(d, b.distance2(v))
		if d <= least*least {
			break
		}
	}
	return math.Sqrt(d)
}

// wallPanels lays panels on the six faces of a box: squares of at most the
// wanted edge, halved again where a part comes nearer than the edge, down to a
// sixteenth. Halved squares meet others without common corners, which
// constant panels do not mind. Each square becomes two triangles.
//
// A wall without electrodes near it carries a potential that changes slowly,
// and coarse panels do. Where a part comes near, the potential on the wall
// changes over the distance to the part, and panels larger than that would
// smear it.
func wallPanels(b *Box, parts []r3.Vec) [6][]triangle {
	var out [6][]triangle
	side := r3.Sub(b.High, b.Low)
	edge := b.edge()
	n := &near{parts}
	for f := range out {
		axis := f / 2
		// The two axes of the wall, in the order that makes the normal point
		// inwards.
		u, v := (axis+1)%3, (axis+2)%3
		if f%2 == 1 {
			u, v = v, u // so that u, v and the normal into the bath are right-handed
		}
		level := part(b.Low, axis)
		if f%2 == 1 {
			level = part(b.High, axis)
		}
		nu := count(part(side, u), edge)
		nv := count(part(side, v), edge)
		for i := range nu {
			for j := range nv {
				r := rect{axis, u, v, level,
					place(i, nu, b, u), place(i+1, nu, b, u), place(j, nv, b, v), place(j+1, nv, b, v)}
				out[f] = r.lay(n, 4, out[f])
			}
		}
	}
	return out
}

// fewestPanels is how many panels the walls of a box get at least: what a run
// costs at the least is known before anything is laid.
func fewestPanels(b *Box) int {
	side := r3.Sub(b.High, b.Low)
	edge := b.edge()
	n := [3]int{count(side.X, edge), count(side.Y, edge), count(side.Z, edge)}
	return 4 * (n[0]*n[1] + n[1]*n[2] + n[2]*n[0])
}

// edge is the wanted edge of a wall panel.
func (b *Box) edge() float64 {
	if b.Panel > 0 {
		return float64(b.Panel)
	}
	side := r3.Sub(b.High, b.Low)
	return max(side.X, side.Y, side.Z) / 10
}

// count returns into how many pieces a side goes; bounded, since the cost is
// checked later only.
func count(side, edge float64) int { return int(min(max(1, math.Ceil(side/edge-1e-9)), 2000)) }

// place returns the i-th of n+1 grid lines along an axis of the box, closer
// together towards both edges: next to an electrode the potential on the
// insulator rises from the edge, and the constant panels of even size there
// would give the largest error of the whole tank.
func place(i, n int, b *Box, axis int) float64 {
	lo, hi := part(b.Low, axis), part(b.High, axis)
	s := 2*float64(i)/float64(n) - 1
	s = math.Copysign(1-math.Pow(1-math.Abs(s), wallGrading), s)
	return (lo+hi)/2 + (hi-lo)/2*s
}

// wallGrading is the exponent of the grading; 2 was best of 1, 1.5, 2 and 2.5 on
// the tank of the benchmarks.
const wallGrading = 2.0

// A rect is a rectangle on a wall: the axis that it stands across and at what
// level, and its sides along the two others.
type rect struct {
	axis, u, v     int
	level          float64
	u0, u1, v0, v1 float64
}

// at returns a place on the wall by its two coordinates there.
func (r rect) at(u, v float64) r3.Vec {
	var c [3]float64
	c[r.axis], c[r.u], c[r.v] = r.level, u, v
	return r3.Vec{X: c[0], Y: c[1], Z: c[2]}
}

// lay adds the panels of the rectangle, halving it at most depth times.
func (r rect) lay(n *near, depth int, out []triangle) []triangle {
	edge := max(r.u1-r.u0, r.v1-r.v0)
	b := box3{r.at(r.u0, r.v0), r.at(r.u1, r.v1)}
	// Halved while a part is nearer than the edge is long. A part that nearly
	// touches the wall would have it halved for ever; the depth bounds that.
	if depth > 0 && n.distance(b, 0.2*edge) < edge {
		um, vm := (r.u0+r.u1)/2, (r.v0+r.v1)/2
		for _, q := range [4][4]float64{{r.u0, um, r.v0, vm}, {um, r.u1, r.v0, vm}, {r.u0, um, vm, r.v1}, {um, r.u1, vm,
			r.v1}} {
			s := r
			s.u0, s.u1, s.v0, s.v1 = q[0], q[1], q[2], q[3]
			out = s.lay(n, depth-1, out)
		}
		return out
	}
	a, c, d, e := r.at(r.u0, r.v0), r.at(r.u1, r.v0), r.at(r.u1, r.v1), r.at(r.u0, r.v1)
	return append(out, triangle{a, c, d}, triangle{a, d, e})
}
