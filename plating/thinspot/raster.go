package thinspot

import (
	"image"
	"image/color"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/mesh"
)

// A view looks at the part along a direction, with parallel rays.
type view struct {
	name      string
	right, up r3.Vec // in the picture; the viewer looks against right × up
}

// sides are the six sides of the part's box.
func sides() []view {
	x, y, z := r3.Vec{X: 1}, r3.Vec{Y: 1}, r3.Vec{Z: 1}
	neg := func(v r3.Vec) r3.Vec { return r3.Scale(-1, v) }
	return []view{{"front (from -y)", x, z}, {"right (from +x)", y, z}, {"top (from +z)", x, y},
		{"back (from +y)", neg(x), z}, {"left (from -x)", neg(y), z}, {"bottom (from -z)", x, neg(y)}}
}

// A raster is one view with the depth of each point.
type raster struct {
	img    *image.RGBA
	depth  []float64 // towards the viewer; -Inf where nothing is
	n      int
	centre r3.Vec
	scale  float64 // points a metre
	v      view
}

// render draws a mesh whose faces have colours, n by n points, so that a ball of
// the given size about the centre fits.
func render(m mesh.Mesh, colours []color.RGBA, v view, n int, centre r3.Vec, size float64) *raster {
	r := &raster{img: image.NewRGBA(image.Rect(0, 0, n, n)), depth: make([]float64, n*n), n: n, centre: centre,
		scale: 0.94 * float64(n) / size, v: v}
	for i := range r.depth {
		r.depth[i] = math.Inf(-1)
	}
	for i := range r.img.Pix {
		r.img.Pix[i] = 255
	}
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		r.triangle(r.project(a), r.project(b), r.project(c), colours[i])
	}
	r.outline()
	return r
}

// project returns the place in the picture (x right, y down) and the depth.
func (r *raster) project(p r3.Vec) r3.Vec {
	d := r3.Sub(p, r.centre)
	half := float64(r.n) / 2
	return r3.Vec{X: half + r.scale*r3.Dot(d, r.v.right), Y: half - r.scale*r3.Dot(d, r.v.up), Z: r3.Dot(d,
		r3.Cross(r.v.right, r.v.up))}
}

// triangle fills one face where nothing lies nearer.
func (r *raster) triangle(a, b, c r3.Vec, colour color.RGBA) {
	area := (b.X-a.X)*(c.Y-a.Y) - (c.X-a.X)*(b.Y-a.Y)
	if area == 0 {
		return
	}
	clamp := func(v float64) int { return int(math.Min(math.Max(v, 0), float64(r.n-1))) }
	x0, x1 := clamp(math.Floor(min(a.X, b.X, c.X))), clamp(math.Ceil(max(a.X, b.X, c.X)))
	y0, y1 := clamp(math.Floor(min(a.Y, b.Y, c.Y))), clamp(math.Ceil(max(a.Y, b.Y, c.Y)))
	for y := y0; y <= y1; y++ {
		for x := x0; x <= x1; x++ {
			px, py := float64(x)+0.5, float64(y)+0.5
			u := ((b.X-px)*(c.Y-py) - (c.X-px)*(b.Y-py)) / area
			w := ((c.X-px)*(a.Y-py) - (a.X-px)*(c.Y-py)) / area
			t := 1 - u - w
			if u < 0 || w < 0 || t < 0 {
				continue
			}
			// Of all faces at a point the nearest is seen, in whatever order they are drawn.
			if z := u*a.Z + w*b.Z + t*c.Z; z > r.depth[y*r.n+x] {
				r.depth[y*r.n+x] = z
				r.img.SetRGBA(x, y, colour)
			}
		}
	}
}

// outline draws a dark line where the depth jumps, so that a part of one colour
// still shows its form.
func (r *raster) outline() {
	// Six points of depth between neighbours are an edge and no slope that a picture shows.
	jump := 6 / r.scale
	ink := color.RGBA{0, 0, 0, 255}
	var marks []int
	for y := 1; y < r.n-1; y++ {
		for x := 1; x < r.n-1; x++ {
			d := r.depth[y*r.n+x]
			if math.IsInf(d, -1) {
				continue
			}
			for _, k := range []int{y*r.n + x - 1, y*r.n + x + 1, (y-1)*r.n + x, (y+1)*r.n + x} {
				if r.depth[k] < d-jump {
					marks = append(marks, y*r.n+x)
					break
				}
			}
		}
	}
	for _, k := range marks {
		r.img.SetRGBA(k%r.n, k/r.n, ink)
	}
}

// ring marks a place of a face with a white ring in a black one, when the face
// looks towards the viewer and nothing lies before it.
func (r *raster) ring(p, normal r3.Vec) bool {
	// A face seen from behind or edge-on would put the ring on another face.
	if r3.Dot(normal, r3.Cross(r.v.right, r.v.up)) < 0.1 {
		return false
	}
	q := r.project(p)
	x, y := int(q.X), int(q.Y)
	if x < 0 || y < 0 || x >= r.n || y >= r.n || q.Z < r.depth[y*r.n+x]-4/r.scale {
		return false
	}
	radius := float64(r.n) / 42
	for dy := -2 * radius; dy <= 2*radius; dy++ {
		for dx := -2 * radius; dx <= 2*radius; dx++ {
			d := math.Hypot(dx, dy)
			switch {
			case d > radius+3 || d < radius-3:
			case d > radius+1 || d < radius-1:
				r.img.SetRGBA(x+int(dx), y+int(dy), color.RGBA{255, 255, 255, 255})
			default:
				r.img.SetRGBA(x+int(dx), y+int(dy), color.RGBA{0, 0, 0, 255})
			}
		}
	}
	return true
}
