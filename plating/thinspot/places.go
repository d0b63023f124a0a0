package thinspot

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
)

// A block is the box round a body.
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

// width is the diagonal of the body seen from above: what a ring must clear.
func (b block) width() float64 { return math.Hypot(b.high.X-b.low.X, b.high.Y-b.low.Y) }

func (b block) height() float64 { return b.high.Z - b.low.Z }

// longest is the longest side.
func (b block) longest() float64 {
	size := r3.Sub(b.high, b.low)
	return max(size.X, size.Y, size.Z)
}

// meshOf is the mesh of one surface of a problem.
func meshOf(p field.MeshProblem, i int) mesh.Mesh {
	return mesh.Mesh{Vertices: p.Surfaces[i].Vertices, Triangles: p.Surfaces[i].Triangles}
}

// hollow finds a hollow of the workpiece that is open above: its floor on the vertical
// line through the middle, and how far the metal is from that line.
func hollow(m mesh.Mesh) (floor, clear float64, fits bool) {
	body := boxOf(m.Vertices)
	top := body.high.Z
	floor, clear = top, math.Inf(1)
	const steps = 60
	for k := range steps {
		z := top - (float64(k)+0.5)/steps*body.height()
		d := nearest(m, r3.Vec{X: body.middle.X, Y: body.middle.Y, Z: z})
		if d < 0.08*body.width() {
			break
		}
		floor, clear = z, math.Min(clear, d)
	}
	// Metal must stand round the line in most directions.
	fits = top-floor >= 0.25*body.height() && around(m, (top+floor)/2) >= 6
	return floor, clear, fits
}

// nearest is the distance of a point to the corners and middles of a mesh.
func nearest(m mesh.Mesh, at r3.Vec) float64 {
	d := math.Inf(1)
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		for _, q := range []r3.Vec{a, b, c, r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c)))} {
			d = math.Min(d, r3.Norm(r3.Sub(q, at)))
		}
	}
	return d
}

// around counts in how many of eight sectors the body stands at a height.
func around(m mesh.Mesh, z float64) int {
	body := boxOf(m.Vertices)
	sectors := map[int]bool{}
	for _, v := range m.Vertices {
		if math.Abs(v.Z-z) < 0.15*body.height() {
			angle := math.Atan2(v.Y-body.middle.Y, v.X-body.middle.X) + math.Pi
			sectors[min(int(angle/(math.Pi/4)), 7)] = true
		}
	}
	return len(sectors)
}
