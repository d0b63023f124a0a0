package shape

import (
	"math"

	"gonum.org/v1/gonum/integrate/quad"
)

// A second way to an area, without any of the formulas: a surface is described
// by a point for every pair of parameters, its tangents are found by differences,
// and the length of their vector product is integrated by Gauss-Legendre
// quadrature. Flat faces with straight edges are cut into triangles.

type point [3]float64

// A patch is a smooth piece of surface over a rectangle of parameters.
type patch struct {
	at             func(u, v float64) point
	u0, u1, v0, v1 float64
}

const nodes = 48

func (p patch) area() float64 {
	hu, hv := (p.u1-p.u0)*1e-3, (p.v1-p.v0)*1e-3
	return quad.Fixed(func(v float64) float64 {
		return quad.Fixed(func(u float64) float64 {
			du := tangent(func(x float64) point { return p.at(u+x, v) }, hu)
			dv := tangent(func(x float64) point { return p.at(u, v+x) }, hv)
			return norm(cross(du, dv))
		}, p.u0, p.u1, nodes, quad.Legendre{}, 0)
	}, p.v0, p.v1, nodes, quad.Legendre{}, 0)
}

// tangent is the central difference of fourth order at zero.
func tangent(f func(float64) point, h float64) (d point) {
	a, b, c, e := f(-2*h), f(-h), f(h), f(2*h)
	for i := range d {
		d[i] = (a[i] - 8*b[i] + 8*c[i] - e[i]) / (12 * h)
	}
	return d
}

func cross(a, b point) point {
	return point{a[1]*b[2] - a[2]*b[1], a[2]*b[0] - a[0]*b[2], a[0]*b[1] - a[1]*b[0]}
}

func norm(a point) float64 { return math.Sqrt(a[0]*a[0] + a[1]*a[1] + a[2]*a[2]) }

// surface adds up patches.
func surface(patches ...patch) float64 {
	sum := 0.
	for _, p := range patches {
		sum += p.area()
	}
	return sum
}

// turn is the surface that a straight profile from (r0, z0) to (r1, z1) sweeps
// about the z axis: a disc, a wall or a cone.
func turn(r0, z0, r1, z1 float64) patch {
	return patch{func(u, v float64) point {
		r, z := r0+(r1-r0)*v, z0+(z1-z0)*v
		return point{r * math.Cos(u), r * math.Sin(u), z}
	}, 0, 2 * math.Pi, 0, 1}
}

// ball is the part of a sphere of radius r from polar angle a to b.
func ball(r, a, b float64) patch {
	return patch{func(u, v float64) point {
		return point{r * math.Sin(v) * math.Cos(u), r * math.Sin(v) * math.Sin(u), r * math.Cos(v)}
	}, 0, 2 * math.Pi, a, b}
}

// bend is a piece of torus: a tube of radius r along an arc of radius big from 0
// to angle.
func bend(big, r, angle float64) patch {
	return patch{func(u, v float64) point {
		x := big + r*math.Cos(v)
		return point{x * math.Cos(u), x * math.Sin(u), r * math.Sin(v)}
	}, 0, angle, 0, 2 * math.Pi}
}

// polygon is the area of a flat polygon, cut into triangles from its first corner.
func polygon(corners ...point) float64 {
	sum := 0.
	for i := 1; i+1 < len(corners); i++ {
		var a, b point
		for j := range a {
			a[j], b[j] = corners[i][j]-corners[0][j], corners[i+1][j]-corners[0][j]
		}
		sum += norm(cross(a, b)) / 2
	}
	return sum
}

// prism returns the areas of base and wall of a prism of height h over corners
// of the x-y plane.
func prism(h float64, corners ...point) (base, wall float64) {
	for i, a := range corners {
		b := corners[(i+1)%len(corners)]
		wall += polygon(a, b, point{b[0], b[1], h}, point{a[0], a[1], h})
	}
	return polygon(corners...), wall
}

// pierced is the face of a rectangle l by w with a round hole of radius r in
// the middle: four sectors, each from the hole to one side.
func pierced(l, w, r float64) float64 {
	sector := func(l, w float64) patch {
		corner := math.Atan2(w, l)
		return patch{func(u, v float64) point {
			x := r + v*(l/2/math.Cos(u)-r)
			return point{x * math.Cos(u), x * math.Sin(u), 0}
		}, -corner, corner, 0, 1}
	}
	return 2 * surface(sector(l, w), sector(w, l))
}

// apart returns the relative difference of two numbers.
func apart(a, b float64) float64 {
	if a == b {
		return 0
	}
	return math.Abs(a-b) / math.Max(math.Abs(a), math.Abs(b))
}
