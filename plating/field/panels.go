package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// panels are all triangles of a problem, in the order of the cluster tree. Here
// normals point out of the bath, into the metal or the wall: the boundary
// equation is about the bath, and callers' meshes are about the metal.
//
// Each property is a slice of its own. The loops over sources read two or three
// of them, in order.
type panels struct {
	// tri are the corners.
	tri []triangle
	// at are the centroids, where the equation is asked for.
	at []r3.Vec
	// n are the normals, out of the bath.
	n    []r3.Vec
	area []float64
	// diam is the longest edge, the length by which distances are judged.
	diam []float64
	// far and seven are what the quadrature rules need.
	far   []farPanel
	seven [][7]r3.Vec
	// surface is the index into the surfaces, walls after the user's.
	surface []int32
	// local is the index of the triangle in its surface.
	local []int32
	// plane is the number of the flat face it lies in, -1 where there is none.
	plane []int32
}

// A farPanel is a panel seen from afar: its area, and the second moments of it
// about the centroid. All are divided by 4π.
type farPanel struct {
	c, n r3.Vec
	area float64
	// half is half the trace of the moments.
	half float64
	// The moments on the diagonal times 3/2, those beside it times 3: what the
	// formula asks for.
	xx, yy, zz    float64
	xy2, yz2, zx2 float64 // mixed moments times 3
	// far and middle are the squared distances from which the far rule and the
	// seven points hold.
	far, middle float64
}

// Distances, in longest edges, beyond which a rule is taken: below nearRule
// the analytic integral, then seven points, beyond farRule the centroid with
// the second moments.
const (
	nearRule = 2.5
	farRule  = 7
)

// len returns the number of panels, and of equations.
func (p *panels) len() int { return len(p.tri) }

// add appends a triangle whose normal points into the bath.
func (p *panels) add(t triangle, surface, local int32) {
	t[1], t[2] = t[2], t[1]
	p.tri = append(p.tri, t)
	p.surface = append(p.surface, surface)
	p.local = append(p.local, local)
}

// finish fills what follows from the corners.
func (p *panels) finish() {
	n := p.len()
	p.at, p.n = make([]r3.Vec, n), make([]r3.Vec, n)
	p.area, p.diam = make([]float64, n), make([]float64, n)
	for i := range p.tri {
		t := &p.tri[i]
		p.at[i] = centroid(t)
		c := r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0]))
		l := norm(c)
		p.area[i] = l / 2
		p.n[i] = r3.Scale(1/l, c)
		p.diam[i] = longest(t)
	}
}

// longest returns the longest edge of a triangle.
func longest(t *triangle) float64 {
	return max(norm(r3.Sub(t[1], t[0])), norm(r3.Sub(t[2], t[1])), norm(r3.Sub(t[0], t[2])))
}

// rules prepares the quadrature rules. The panels must be in their last order.
//
// The second moments of a triangle about its centroid follow from its corners,
//
//	M = A/12 · Σ d·dᵀ    d = corner - centroid
//
// and the first ones vanish there, which is why the centroid is the point to
// expand about.
func (p *panels) rules() {
	p.far = make([]farPanel, p.len())
	p.seven = make([][7]r3.Vec, p.len())
	for i := range p.tri {
		t := &p.tri[i]
		p.seven[i] = sevenPoints(t)
		f := &p.far[i]
		f.c, f.n = p.at[i], p.n[i]
		f.area = p.area[i] / fourPi
		m := f.area / 12
		var xx, yy, zz, xy, yz, zx float64
		for _, v := range t {
			d := r3.Sub(v, f.c)
			xx += m * d.X * d.X
			yy += m * d.Y * d.Y
			zz += m * d.Z * d.Z
			xy += m * d.X * d.Y
			yz += m * d.Y * d.Z
			zx += m * d.Z * d.X
		}
		f.half = (xx + yy + zz) / 2
		f.xx, f.yy, f.zz = 1.5*xx, 1.5*yy, 1.5*zz
		f.xy2, f.yz2, f.zx2 = 3*xy, 3*yz, 3*zx
		d2 := p.diam[i] * p.diam[i]
		f.far, f.middle = farRule*farRule*d2, nearRule*nearRule*d2
	}
}

// atFar returns both layers of a distant panel at x.
//
//	single = (A + q - t)/r    double = n·d/r³·(A + 5q - 3t)
//
//	d = x - c    q = (3/2) d·M·d/r⁴    t = tr M/(2r²)
//
// The error falls with the cube of panel over distance, relative to the panel's own share.
//
// It is the expansion of 1/|x-y| about the centroid to the second order, and
// its derivative along the normal for the double layer.
func (f *farPanel) atFar(x r3.Vec) (single, double float64) {
	dx, dy, dz := x.X-f.c.X, x.Y-f.c.Y, x.Z-f.c.Z
	i2 := 1 / (dx*dx + dy*dy + dz*dz)
	i1 := math.Sqrt(i2)
	q := (dx*(f.xx*dx+f.xy2*dy) + dy*(f.yy*dy+f.yz2*dz) + dz*(f.zz*dz+f.zx2*dx)) * i2 * i2
	t := f.half * i2
	h := f.n.X*dx + f.n.Y*dy + f.n.Z*dz
	return (f.area + q - t) * i1, h * i2 * i1 * (f.area + 5*q - 3*t)
}

// atMiddle returns both layers by the rule with seven points.
//
// The double layer of a flat panel is its height over the plane times ∫ 1/r³:
// the height comes from the centroid once, and the points sum the rest.
func (p *panels) atMiddle(j int, x r3.Vec) (single, double float64) {
	s := &p.seven[j]
	var g, k float64
	for m := range s {
		dx, dy, dz := x.X-s[m].X, x.Y-s[m].Y, x.Z-s[m].Z
		i2 := 1 / (dx*dx + dy*dy + dz*dz)
		w := sevenWeights[m] * math.Sqrt(i2)
		g += w
		k += w * i2
	}
	f := &p.far[j]
	h := f.n.X*(x.X-f.c.X) + f.n.Y*(x.Y-f.c.Y) + f.n.Z*(x.Z-f.c.Z)
	return g * f.area, h * k * f.area
}

// atNear returns both layers by the analytic integrals.
func (p *panels) atNear(j int, x r3.Vec) (single, double float64) {
	g, k := layers(&p.tri[j], p.n[j], x)
	return g * (1 / fourPi), k * (1 / fourPi)
}

// layersAt returns both layers of panel j at x, by the rule that the distance asks for.
func (p *panels) layersAt(j int, x r3.Vec) (single, double float64) {
	f := &p.far[j]
	dx, dy, dz := x.X-f.c.X, x.Y-f.c.Y, x.Z-f.c.Z
	switch r2 := dx*dx + dy*dy + dz*dz; {
	case r2 > f.far:
		return f.atFar(x)
	case r2 > f.middle:
		return p.atMiddle(j, x)
	}
	return p.atNear(j, x)
}

// permute puts the panels into the given order.
//
// It runs once, when the tree is built, before the rules are prepared.
func (p *panels) permute(order []int32) {
	p.tri = permuted(p.tri, order)
	p.at = permuted(p.at, order)
	p.n = permuted(p.n, order)
	p.area = permuted(p.area, order)
	p.diam = permuted(p.diam, order)
	p.surface = permuted(p.surface, order)
	p.local = permuted(p.local, order)
	p.plane = permuted(p.plane, order)
}

// permuted returns a slice in another order: element k is the old element
// order[k].
func permuted[T any](s []T, order []int32) []T {
	r := make([]T, len(order))
	for k, i := range order {
		r[k] = s[i]
	}
	return r
}
