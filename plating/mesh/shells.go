package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// A shell is one component with what is known of it.
type shell struct {
	triangles    []int32
	low, high    r3.Vec
	area, volume float64
	closed       bool // each edge used twice
	turned       bool // some neighbours disagree
	depth        int  // number of closed shells it lies in
}

// mostNested is the number of components up to which it is looked which lies
// in which.
const mostNested = 300

// shells measures each component.
func (m Mesh) shells(parts [][]int32, all []side) []shell {
	of := make([]int32, len(m.Triangles))
	shells := make([]shell, len(parts))
	for k, part := range parts {
		s := shell{triangles: part, closed: true}
		sub := Mesh{Vertices: m.Vertices, Triangles: make([][3]int32, len(part))}
		for n, i := range part {
			of[i] = int32(k)
			sub.Triangles[n] = m.Triangles[i]
		}
		s.low, s.high = sub.box()
		s.area, s.volume = sub.area(), sub.volume()
		shells[k] = s
	}
	runs(all, func(edge []side) {
		s := &shells[of[edge[0].triangle]]
		if len(edge) != 2 {
			s.closed = false
		} else if edge[0].forward == edge[1].forward {
			s.turned = true
		}
	})
	return shells
}

// nest finds how deep each closed shell lies in others. It returns how many lie
// in one at least, and how many pairs cut through each other as far as some
// corners of each tell; -1 and 0 when there are too many to look.
//
// A closed shell is inside another when all corners looked at are; when some are and some
// are not, the two cut through each other. Time grows with the square of the number of
// shells and with the triangles of those whose boxes meet.
func nest(m Mesh, shells []shell) (enclosed, crossing int) {
	if len(shells) > mostNested {
		return -1, 0
	}
	for i := range shells {
		for j := range shells {
			if i == j || !shells[i].closed || !shells[j].closed || apartBoxes(&shells[i], &shells[j]) {
				continue
			}
			in, out := m.sampled(&shells[i], &shells[j])
			switch {
			case in > 0 && out > 0:
				crossing++
			case in > 0:
				shells[i].depth++
			}
		}
		if shells[i].depth > 0 {
			enclosed++
		}
	}
	return enclosed, crossing
}

// sampled looks from corners spread over shell s whether they are inside shell
// o. Those on its surface count as neither.
//
//	Σ Ω = ±4π inside, 0 outside, ±2π on a flat part of the surface
func (m Mesh) sampled(s, o *shell) (in, out int) {
	const most = 16
	n := len(s.triangles)
	for k := range min(n, most) {
		point := m.Vertices[m.Triangles[s.triangles[k*n/min(n, most)]][k%3]]
		sum := 0.
		for _, i := range o.triangles {
			sum += m.solidAngleOf(int(i), point)
		}
		switch sum = math.Abs(sum); {
		case sum > 4*math.Pi-1e-3:
			in++
		case sum < 1e-3:
			out++
		}
	}
	return in, out
}

// apartBoxes reports whether the boxes of two shells have no place in common.
func apartBoxes(s, o *shell) bool {
	return s.low.X > o.high.X || s.low.Y > o.high.Y || s.low.Z > o.high.Z ||
		o.low.X > s.high.X || o.low.Y > s.high.Y || o.low.Z > s.high.Z
}

// solidAngleOf returns the solid angle of triangle i from a point: above zero
// when the point is behind it.
//
//	tan(Ω/2) = a·(b × c) / (|a||b||c| + (a·b)|c| + (b·c)|a| + (c·a)|b|)
//
//	a, b, c  the corners, seen from the point
//
// It holds for all Ω from -2π to 2π by the two arguments of the arc tangent
// [SolidAngle1983].
func (m Mesh) solidAngleOf(i int, from r3.Vec) float64 {
	a, b, c := m.Corners(i)
	a, b, c = r3.Sub(a, from), r3.Sub(b, from), r3.Sub(c, from)
	la, lb, lc := r3.Norm(a), r3.Norm(b), r3.Norm(c)
	return 2 * math.Atan2(r3.Dot(a, r3.Cross(b, c)), la*lb*lc+r3.Dot(a, b)*lc+r3.Dot(b, c)*la+r3.Dot(c, a)*lb)
}

// solidAngle returns the sum over all triangles, added with a running compensation.
func (m Mesh) solidAngle(from r3.Vec) float64 {
	var sum adder
	for i := range m.Triangles {
		sum.add(m.solidAngleOf(i, from))
	}
	return sum.value()
}

// inside looks for a point inside: half way from the middle of the largest
// triangle, against its normal, to the next triangle that the line meets. When
// the line meets nothing, the triangle looks the other way out: then the other
// direction is tried, so that a surface inside out has its point too.
func (m Mesh) inside() (r3.Vec, bool) {
	largest, at := 0., -1
	for i := range m.Triangles {
		if n := r3.Norm(m.cross2(i)); n > largest {
			largest, at = n, i
		}
	}
	if at < 0 {
		return r3.Vec{}, false
	}
	a, b, c := m.Corners(at)
	// Not the very middle: a line along a mirror plane meets edges.
	start := r3.Add(r3.Scale(0.35, a), r3.Add(r3.Scale(0.33, b), r3.Scale(0.32, c)))
	for _, sign := range [2]float64{-1, 1} {
		along := r3.Scale(sign/largest, m.cross2(at))
		nearest := math.Inf(1)
		for i := range m.Triangles {
			if i == at {
				continue
			}
			if d, ok := m.hit(i, start, along); ok && d < nearest {
				nearest = d
			}
		}
		if !math.IsInf(nearest, 1) {
			return r3.Add(start, r3.Scale(nearest/2, along)), true
		}
	}
	return r3.Vec{}, false
}

// hit returns how far along a line triangle i is met.
//
//	start + d·along = a + x u + y v,  u = b - a, v = c - a
//
// solved by Cramer's rule: x, y ≥ 0 and x + y ≤ 1 inside the triangle, d > 0 ahead. A line
// in the plane of the triangle has a determinant of zero, and misses it.
func (m Mesh) hit(i int, start, along r3.Vec) (float64, bool) {
	a, b, c := m.Corners(i)
	u, v, s := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(start, a)
	p := r3.Cross(along, v)
	det := r3.Dot(u, p)
	if det == 0 {
		return 0, false
	}
	q := r3.Cross(s, u)
	x, y, d := r3.Dot(s, p)/det, r3.Dot(along, q)/det, r3.Dot(v, q)/det
	const edge = 1e-9 // a line through an edge meets both its triangles rather than none
	return d, x >= -edge && y >= -edge && x+y <= 1+edge && d > 0
}
