package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// Tube returns a closed tube around the z axis, its middle at the origin: outer
// wall, bore and two end faces.
//
//	A = π (D + d) l + π (D² - d²) / 2
//	V = π (D² - d²) l / 4
//
//	D  outer   outer diameter, > d [m]
//	d  inner   bore, > 0 [m]
//	l  length  > 0 [m]
//
// The corners lie on the round surfaces; area and volume converge with the square
// of the panel size. Panels are graded to the four rims.
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Tube(outer, inner, length units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"tube outer diameter", outer}, named{"tube inner diameter", inner},
		named{"tube length",
			length}); err != nil {
		return Mesh{}, err
	}
	if inner >= outer {
		return Mesh{}, &units.ValueError{Field: "tube inner diameter", Value: inner.String(),
			Need: "less than the outer diameter, " + outer.String(), Err: units.ErrInconsistent}
	}
	ro, ri, h := float64(outer)/2, float64(inner)/2, float64(length)/2
	n := around6(g, ro)
	if err := limit(4 * float64(n) * float64(g.count(2*h)+g.count(ro-ri)+2)); err != nil {
		return Mesh{}, err
	}
	rings := []ring{{ri, -h, n}}
	rings = append(rings, straight(g, ri, -h, ro, -h, n)...)
	rings = append(rings, straight(g, ro, -h, ro, h, n)...)
	rings = append(rings, straight(g, ro, h, ri, h, n)...)
	rings = append(rings, straight(g, ri, h, ri, -h, n)...)
	b := newBuilder()
	lathe(b, rings)
	return b.m, nil
}

// around6 returns how many points a circle needs, at least 12 and a multiple of
// six. Grading does not go around.
func around6(g Grid, r float64) int {
	even := Grid{Size: g.Size}
	return 6 * max(2, even.count(2*math.Pi*r/6))
}

// Cup returns a closed round body with a recess in its top: a cup, a bob with a
// sunk face, a bezel with a floor. It stands on the plane z = 0 around the z axis.
//
//	A = π D h + π D² / 2 + π d t
//	V = π D² h / 4 - π d² t / 4
//
//	D  outer   outer diameter, > d [m]
//	h  height  > t [m]
//	d  recess  diameter of the recess, > 0 [m]
//	t  depth   of the recess, > 0 [m]
//
// The corners lie on the round surfaces; area and volume converge with the square
// of the panel size. Panels are graded to every rim, outer and inner.
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Cup(outer, height, recess, depth units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"cup outer diameter", outer}, named{"cup height", height},
		named{"recess diameter", recess}, named{"recess depth", depth}); err != nil {
		return Mesh{}, err
	}
	if recess >= outer {
		return Mesh{}, &units.ValueError{Field: "recess diameter", Value: recess.String(),
			Need: "less than the outer diameter, " + outer.String(), Err: units.ErrInconsistent}
	}
	if depth >= height {
		return Mesh{}, &units.ValueError{Field: "recess depth", Value: depth.String(),
			Need: "less than the height, " + height.String(), Err: units.ErrInconsistent}
	}
	ro, ri, h, t := float64(outer)/2, float64(recess)/2, float64(height), float64(depth)
	n := g.count(ro)
	if err := limit(12*float64(n)*float64(n) + 12*float64(n)*float64(g.count(h)+g.count(t)+g.count(
		ro-ri)+3)); err != nil {
		return Mesh{}, err
	}
	rings := disc(g, ro, 0, n)
	rings = append(rings, straight(g, ro, 0, ro, h, 6*n)...)
	rings = append(rings, straight(g, ro, h, ri, h, 6*n)...)
	rings = append(rings, straight(g, ri, h, ri, h-t, 6*n)...)
	rings = append(rings, reverse(disc(g, ri, h-t, n))[1:]...)
	b := newBuilder()
	lathe(b, rings)
	return b.m, nil
}

// Torus returns a closed ring of round section around the z axis, in the plane
// z = 0.
//
//	A = π² D d
//	V = π² D d² / 4
//
//	D  centre  diameter of the circle through the section's middle, > d [m]
//	d  tube    diameter of the section, > 0 [m]
//
// It has no edge, so Grade does nothing. The corners lie on the round surface;
// area and volume converge with the square of the panel size.
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Torus(centre, tube units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"torus centre diameter", centre}, named{"torus tube diameter", tube}); err != nil {
		return Mesh{}, err
	}
	if tube >= centre {
		return Mesh{}, &units.ValueError{Field: "torus tube diameter", Value: tube.String(),
			Need: "less than the centre diameter, " + centre.String(), Err: units.ErrInconsistent}
	}
	R, r := float64(centre)/2, float64(tube)/2
	n, k := around6(g, R+r), around6(g, r)
	if err := limit(2 * float64(n) * float64(k)); err != nil {
		return Mesh{}, err
	}
	rings := make([]ring, k+1)
	for i, c := range newCut(k) {
		rings[i] = ring{R + r*c.cos, r * c.sin, n}
	}
	rings[k] = rings[0]
	b := newBuilder()
	lathe(b, rings)
	return b.m, nil
}

// Sphere returns a closed ball around the origin: an icosahedron whose faces are
// cut n times each way and moved out to the sphere, 20 n² triangles.
//
//	A = π d²
//	V = π d³ / 6
//
//	d  diameter  > 0 [m]
//
// It has no edge, so Grade does nothing. The corners lie on the sphere; area and
// volume converge with the square of the panel size.
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Sphere(diameter units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"sphere diameter", diameter}); err != nil {
		return Mesh{}, err
	}
	r := float64(diameter) / 2
	even := Grid{Size: g.Size}
	n := even.count(1.26 * r) // the longest side of n = 1 is 1.051 r, the middle grows by a fifth
	if err := limit(20 * float64(n) * float64(n)); err != nil {
		return Mesh{}, err
	}
	// The twelve corners of an icosahedron: (0, ±1, ±q) and its rotations.
	q := (1 + math.Sqrt(5)) / 2
	corner := []r3.Vec{
		{X: -1, Y: q}, {X: 1, Y: q}, {X: -1, Y: -q}, {X: 1, Y: -q},
		{Y: -1, Z: q}, {Y: 1, Z: q}, {Y: -1, Z: -q}, {Y: 1, Z: -q},
		{X: q, Z: -1}, {X: q, Z: 1}, {X: -q, Z: -1}, {X: -q, Z: 1},
	}
	faces := [20][3]int{
		{0, 11, 5}, {0, 5, 1}, {0, 1, 7}, {0, 7, 10}, {0, 10, 11}, {1, 5, 9}, {5, 11, 4}, {11, 10, 2},
		{10, 7, 6}, {7, 1, 8},
		{3, 9, 4}, {3, 4, 2}, {3, 2, 6}, {3, 6, 8}, {3, 8, 9}, {4, 9, 5}, {2, 4, 11}, {6, 2, 10}, {8, 6, 7}, {9, 8, 1},
	}
	var m Mesh
	seen := map[[3][2]int]int32{} // by the corners it is mixed of and how much of each
	for _, f := range faces {
		point := func(i, j int) int32 { // i of n towards the second corner, j towards the third
			part := [3][2]int{{f[0], n - i - j}, {f[1], i}, {f[2], j}}
			mix := part
			for k := range mix {
				if mix[k][1] == 0 {
					mix[k][0] = -1
				}
			}
			sort3(&mix)
			at, known := seen[mix]
			if !known {
				var v r3.Vec
				for _, p := range mix {
					if p[1] > 0 {
						v = r3.Add(v, r3.Scale(float64(p[1]), corner[p[0]]))
					}
				}
				at = int32(len(m.Vertices))
				seen[mix] = at
				m.Vertices = append(m.Vertices, r3.Scale(r/r3.Norm(v), v))
			}
			return at
		}
		for i := range n {
			for j := range n - i {
				m.Triangles = append(m.Triangles, [3]int32{point(i, j), point(i+1, j), point(i, j+1)})
				if i+j < n-1 {
					m.Triangles = append(m.Triangles, [3]int32{point(i+1, j), point(i+1, j+1), point(i, j+1)})
				}
			}
		}
	}
	return m, nil
}

// sort3 puts three pairs in order.
func sort3(p *[3][2]int) {
	less := func(a, b [2]int) bool { return a[0] < b[0] || a[0] == b[0] && a[1] < b[1] }
	if less(p[1], p[0]) {
		p[0], p[1] = p[1], p[0]
	}
	if less(p[2], p[1]) {
		p[1], p[2] = p[2], p[1]
	}
	if less(p[1], p[0]) {
		p[0], p[1] = p[1], p[0]
	}
}
