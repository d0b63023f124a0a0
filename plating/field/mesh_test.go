package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// Meshes for the tests. All normals point out of the body.

// A soup collects triangles into an indexed mesh with welded corners.
type soup struct {
	v     []r3.Vec
	t     [][3]int32
	index map[r3.Vec]int32
}

func (s *soup) corner(v r3.Vec) int32 {
	if s.index == nil {
		s.index = map[r3.Vec]int32{}
	}
	v = r3.Add(v, r3.Vec{})
	k, ok := s.index[v]
	if !ok {
		k = int32(len(s.v))
		s.index[v] = k
		s.v = append(s.v, v)
	}
	return k
}

func (s *soup) add(a, b, c r3.Vec) {
	s.t = append(s.t, [3]int32{s.corner(a), s.corner(b), s.corner(c)})
}

// quad adds a quadrilateral, cut along the diagonal from a to c.
func (s *soup) quad(a, b, c, d r3.Vec) {
	s.add(a, b, c)
	s.add(a, c, d)
}

func (s *soup) surface(name string, kind current.Kind) Boundary {
	return Boundary{Name: name, Kind: kind, Vertices: s.v, Triangles: s.t}
}

// graded returns n+1 places from lo to hi, drawn to both ends by the exponent.
func graded(n int, lo, hi, exponent float64) []float64 {
	g := make([]float64, n+1)
	for i := range g {
		s := 2*float64(i)/float64(n) - 1
		v := math.Copysign(1-math.Pow(1-math.Abs(s), exponent), s)
		g[i] = (lo+hi)/2 + (hi-lo)/2*v
	}
	g[0], g[n] = lo, hi
	return g
}

// boxMesh makes the box between two corners from grids along the three axes.
func boxMesh(x, y, z []float64) *soup {
	s := &soup{}
	grids := [3][]float64{x, y, z}
	for axis := range 3 {
		u, v := grids[(axis+1)%3], grids[(axis+2)%3]
		w := grids[axis]
		for side, level := range [2]float64{w[0], w[len(w)-1]} {
			at := func(a, b float64) r3.Vec {
				var c [3]float64
				c[axis], c[(axis+1)%3], c[(axis+2)%3] = level, a, b
				return r3.Vec{X: c[0], Y: c[1], Z: c[2]}
			}
			for i := range len(u) - 1 {
				for j := range len(v) - 1 {
					a, b, c, d := at(u[i], v[j]), at(u[i+1], v[j]), at(u[i+1], v[j+1]), at(u[i], v[j+1])
					if side == 0 {
						b, d = d, b
					}
					if (2*i < len(u)-1) != (2*j < len(v)-1) { // diagonals symmetric about the middle
						a, b, c, d = b, c, d, a
					}
					s.quad(a, b, c, d)
				}
			}
		}
	}
	return s
}

// cube makes a cube of the given side about a centre, with n graded cells along each edge.
func cube(n int, side float64, centre r3.Vec, exponent float64) *soup {
	g := func(c float64) []float64 { return graded(n, c-side/2, c+side/2, exponent) }
	return boxMesh(g(centre.X), g(centre.Y), g(centre.Z))
}

// sphere makes a sphere by blowing up a cube with n cells along each edge.
func sphere(n int, radius float64, centre r3.Vec) *soup {
	g := make([]float64, n+1)
	for i := range g {
		g[i] = math.Tan(math.Pi / 4 * (2*float64(i)/float64(n) - 1)) // even angles
	}
	g[0], g[n] = -1, 1
	s := boxMesh(g, g, g)
	for i, v := range s.v {
		s.v[i] = r3.Add(centre, r3.Scale(radius/norm(v), v))
	}
	return s
}

// stretched scales a mesh by different factors along the axes.
func (s *soup) stretched(x, y, z float64) *soup {
	for i, v := range s.v {
		s.v[i] = r3.Vec{X: x * v.X, Y: y * v.Y, Z: z * v.Z}
	}
	return s
}

// moved applies a map to all corners; it must keep the orientation.
func (s *soup) moved(f func(r3.Vec) r3.Vec) *soup {
	for i, v := range s.v {
		s.v[i] = f(v)
	}
	return s
}

// inverted turns all triangles.
func (s *soup) inverted() *soup {
	for i := range s.t {
		s.t[i][1], s.t[i][2] = s.t[i][2], s.t[i][1]
	}
	return s
}

// disc makes a disc without thickness in the plane z = 0: rings drawn to the rim by the exponent.
func disc(rings int, radius, exponent float64) *soup {
	s := &soup{}
	at := func(k, sectors int, r float64) r3.Vec {
		a := 2 * math.Pi * float64(k%sectors) / float64(sectors)
		return r3.Vec{X: r * math.Cos(a), Y: r * math.Sin(a)}
	}
	r := make([]float64, rings+1)
	for i := range r {
		r[i] = radius * (1 - math.Pow(1-float64(i)/float64(rings), exponent))
	}
	for i := 1; i <= rings; i++ { // ring i has 6i corners outside, 6(i-1) inside
		out, in := 6*i, 6*(i-1)
		for sector := range 6 {
			for k := range i {
				a := at(sector*i+k, out, r[i])
				b := at(sector*i+k+1, out, r[i])
				if i == 1 {
					s.add(r3.Vec{}, a, b)
					continue
				}
				c := at(sector*(i-1)+k, in, r[i-1])
				s.add(a, b, c)
				if k < i-1 {
					s.add(b, at(sector*(i-1)+k+1, in, r[i-1]), c)
				}
			}
		}
	}
	return s
}

// subsetOf returns the triangles of a surface for which f holds at the centroid.
func subsetOf(s Boundary, f func(r3.Vec) bool) (out Boundary) {
	out = s
	out.Triangles = nil
	for k := range s.Triangles {
		t := s.corners(k)
		if f(centroid(&t)) {
			out.Triangles = append(out.Triangles, s.Triangles[k])
		}
	}
	return out
}
