package main

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/field"
)

// A block is the box round a part.
type block struct{ low, high, middle r3.Vec }

func boxOf(points []r3.Vec) block {
	b := block{low: points[0], high: points[0]}
	for _, v := range points {
		b.low = r3.Vec{X: math.Min(b.low.X, v.X), Y: math.Min(b.low.Y, v.Y), Z: math.Min(b.low.Z, v.Z)}
		b.high = r3.Vec{X: math.Max(b.high.X, v.X), Y: math.Max(b.high.Y, v.Y), Z: math.Max(b.high.Z, v.Z)}
	}
	b.middle = r3.Scale(0.5, r3.Add(b.low, b.high))
	return b
}

// width is the diagonal of the part seen from above: what a ring must clear.
func (b block) width() float64 { return math.Hypot(b.high.X-b.low.X, b.high.Y-b.low.Y) }

func (b block) height() float64 { return b.high.Z - b.low.Z }

// hollow finds a hollow of a part that is open above: its floor on the vertical
// line through the part's middle, and how far the metal is from that line.
func hollow(s *field.Boundary, body block) (floor, clear float64, fits bool) {
	top := body.high.Z
	floor, clear = top, math.Inf(1)
	const steps = 60
	for k := range steps {
		z := top - (float64(k)+0.5)/steps*body.height()
		d := nearest(s, r3.Vec{X: body.middle.X, Y: body.middle.Y, Z: z})
		if d < 0.08*body.width() {
			break
		}
		floor, clear = z, math.Min(clear, d)
	}
	// Metal must stand round the line in most directions.
	fits = top-floor >= 0.25*body.height() && around(s, body, (top+floor)/2) >= 6
	return floor, clear, fits
}

// nearest is the distance of a point to the corners and middles of a surface.
func nearest(s *field.Boundary, at r3.Vec) float64 {
	d := math.Inf(1)
	for _, t := range s.Triangles {
		a, b, c := s.Vertices[t[0]], s.Vertices[t[1]], s.Vertices[t[2]]
		m := r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c)))
		for _, q := range []r3.Vec{a, b, c, m} {
			d = math.Min(d, r3.Norm(r3.Sub(q, at)))
		}
	}
	return d
}

// around counts in how many of eight sectors the part stands at a height.
func around(s *field.Boundary, body block, z float64) int {
	var sectors [8]bool
	for _, v := range s.Vertices {
		if math.Abs(v.Z-z) < 0.15*body.height() {
			angle := math.Atan2(v.Y-body.middle.Y, v.X-body.middle.X) + math.Pi
			sectors[min(int(angle/(math.Pi/4)), 7)] = true
		}
	}
	n := 0
	for _, in := range sectors {
		if in {
			n++
		}
	}
	return n
}
