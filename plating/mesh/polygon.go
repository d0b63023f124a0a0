package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// mostCorners is the largest number of corners of a face. The time to cut one
// grows with their square.
const mostCorners = 64

// fan returns the corner from which a polygon can be cut into triangles by
// straight lines, -1 when it cannot be cut safely. It must be flat, to 1e-5 of
// its width and the rounding of single numbers, and convex, so that it turns
// one way and only once around. Of the corners that leave no triangle without
// area, the one with the largest smallest triangle is taken.
//
//	n = ½ Σ (p_i - p_0) × (p_i+1 - p_0)   area vector, any polygon
//	Σ angles turned = 2π                  once around; a star turns 4π
//
// A file gives a face of many corners without saying how it is cut. A flat convex one may
// be cut in any way; of any other each cut is another surface, and it is refused
// ([ErrPolygon]).
func (m Mesh) fan(loop []int32) int {
	n := len(loop)
	at := func(i int) r3.Vec { return m.Vertices[loop[i%n]] }
	var normal, centre r3.Vec
	for i := range n {
		normal = r3.Add(normal, r3.Cross(r3.Sub(at(i), at(0)), r3.Sub(at(i+1), at(0))))
		centre = r3.Add(centre, r3.Scale(1/float64(n), at(i)))
	}
	length := r3.Norm(normal)
	width, far := 0., 0.
	for i := range n {
		width = max(width, 2*r3.Norm(r3.Sub(at(i), centre)))
		far = max(far, r3.Norm(at(i)))
	}
	if !(length > 1e-9*width*width) {
		return -1
	}
	normal = r3.Scale(1/length, normal)
	const singleDigit = 1.0 / (1 << 23)
	tol := 1e-5*width + 4*singleDigit*far
	turned := 0.
	for i := range n {
		in, out := r3.Sub(at(i+1), at(i)), r3.Sub(at(i+2), at(i+1))
		if math.Abs(r3.Dot(r3.Sub(at(i), centre), normal)) > tol {
			return -1
		}
		side, along := r3.Dot(r3.Cross(in, out), normal), r3.Dot(in, out)
		// A corner that lies on a straight edge may bend inwards by rounding.
		if side < -1e-6*r3.Norm(in)*r3.Norm(out) || r3.Norm2(in) == 0 || side <= 0 && along <= 0 {
			return -1
		}
		turned += math.Atan2(side, along)
	}
	if math.Abs(turned-2*math.Pi) > 0.1 {
		return -1
	}
	best, apex := 0., -1
	for i := range n {
		least := math.Inf(1)
		for k := 1; k < n-1; k++ {
			a, b, c := at(i), at(i+k), at(i+k+1)
			if flat(a, b, c) {
				least = 0
				break
			}
			least = min(least, r3.Dot(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)), normal))
		}
		if least > best {
			best, apex = least, i
		}
	}
	return apex
}
