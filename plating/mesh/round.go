package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A ring is one circle of a body of revolution around z.
type ring struct {
	r, z float64
	n    int // points on it; 1 at the axis
}

// cut holds cosine and sine of n directions, mirrored so that the ring closes
// on itself and rings of equal n agree to the last digit.
type cut []struct{ cos, sin float64 }

func newCut(n int) cut {
	c := make(cut, n)
	for i := range c {
		s, co := math.Sincos(2 * math.Pi * float64(i) / float64(n))
		c[i].cos, c[i].sin = co, s
	}
	return c
}

// lathe adds the surface between rings that follow each other. Outside is to the
// right of the way along the rings, with r to the right and z upwards. Rings of
// equal n are joined by quads; others by triangles that walk around both.
func lathe(b *builder, rings []ring) {
	points := func(k ring) []int32 {
		p := make([]int32, k.n)
		if k.n == 1 {
			p[0] = b.vertex(r3.Vec{Z: k.z})
			return p
		}
		for i, c := range newCut(k.n) {
			p[i] = b.vertex(r3.Vec{X: k.r * c.cos, Y: k.r * c.sin, Z: k.z})
		}
		return p
	}
	from := points(rings[0])
	for _, k := range rings[1:] {
		to := points(k)
		if len(from) == len(to) {
			for i := range from {
				j := (i + 1) % len(from)
				b.quad(from[i], from[j], to[j], to[i])
			}
		} else {
			band(b, from, to)
		}
		from = to
	}
}

// band joins two rings of different numbers of points: it walks around and
// always takes the step whose new side leans less.
func band(b *builder, p, q []int32) {
	i, j := 0, 0
	for i < len(p) || j < len(q) {
		// Compare (i+1)/len(p) - j/len(q) with (j+1)/len(q) - i/len(p), without
		// rounding; a ring of one point is never stepped on.
		stepP := j >= len(q) || i < len(p) && (i+1)*len(q)-j*len(p) <= (j+1)*len(p)-i*len(q)
		switch {
		case stepP && len(p) > 1:
			b.triangle(p[i], p[(i+1)%len(p)], q[j%len(q)])
		case !stepP && len(q) > 1:
			b.triangle(p[i%len(p)], q[(j+1)%len(q)], q[j])
		}
		if stepP {
			i++
		} else {
			j++
		}
	}
}

// disc returns the rings of a flat disc from the axis to radius r with 6 k points
// on ring k, graded to the rim.
func disc(g Grid, r, z float64, n int) []ring {
	rings := make([]ring, n+1)
	for k, x := range g.toEnd(n) {
		rings[k] = ring{r * x, z, max(6*k, 1)}
	}
	rings[n].r = r
	return rings
}

func reverse(rings []ring) []ring {
	out := make([]ring, len(rings))
	for i, k := range rings {
		out[len(rings)-1-i] = k
	}
	return out
}

// straight returns the rings along a straight line in the r-z plane, graded to
// both ends, all with n points, without the first.
func straight(g Grid, fromR, fromZ, toR, toZ float64, n int) []ring {
	x := g.between(math.Hypot(toR-fromR, toZ-fromZ))
	rings := make([]ring, 0, len(x)-1)
	for _, t := range x[1:] {
		rings = append(rings, ring{fromR + t*(toR-fromR), fromZ + t*(toZ-fromZ), n})
	}
	last := &rings[len(rings)-1]
	last.r, last.z = toR, toZ // to the last digit, so that surfaces meet
	return rings
}

// Disc returns a flat round sheet in the plane z = 0, without thickness, around
// the origin; its normal is along z. It is open: a sheet with two sides of which
// the mesh is one.
//
//	A = π d² / 4
//
//	d  diameter  > 0 [m]
//
// The corners lie on the rim, so the area is a little small: by the factor
// sin(x)/x, x = π/(3 n), with n rings and 6 n² triangles. Rings are graded to the
// rim by [Grid].
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Disc(diameter units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"disc diameter", diameter}); err != nil {
		return Mesh{}, err
	}
	r := float64(diameter) / 2
	n := g.count(r)
	if err := limit(6 * float64(n) * float64(n)); err != nil {
		return Mesh{}, err
	}
	b := newBuilder()
	lathe(b, reverse(disc(g, r, 0, n)))
	return b.m, nil
}

// Cylinder returns a closed round bar around the z axis, its middle at the origin.
//
//	A = π d l + π d² / 2
//	V = π d² l / 4
//
//	d  diameter  > 0 [m]
//	l  length    > 0 [m]
//
// The corners lie on the round surface, so area and volume are a little small and
// converge with the square of the panel size. Panels are graded to both rims.
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Cylinder(diameter, length units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"cylinder diameter", diameter}, named{"cylinder length", length}); err != nil {
		return Mesh{}, err
	}
	r, h := float64(diameter)/2, float64(length)/2
	n := g.count(r)
	if err := limit(12*float64(n)*float64(n) + 12*float64(n)*float64(g.count(2*h)+1)); err != nil {
		return Mesh{}, err
	}
	rings := disc(g, r, -h, n)
	rings = append(rings, straight(g, r, -h, r, h, 6*n)...)
	rings = append(rings, reverse(disc(g, r, h, n))[1:]...)
	b := newBuilder()
	lathe(b, rings)
	return b.m, nil
}
