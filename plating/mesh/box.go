package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// Box returns a closed rectangular block around the origin, its length along x,
// its width along y, its height along z.
//
//	A = 2 (l w + l h + w h)
//	V = l w h
//
//	l, w, h  length, width, height  > 0 [m]
//
// The flat faces make area and volume exact. Panels are graded to all edges by
// [Grid].
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Box(length, width, height units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"box length", length}, named{"box width", width}, named{"box height",
		height}); err != nil {
		return Mesh{}, err
	}
	size := [3]float64{float64(length), float64(width), float64(height)}
	n := [3]float64{}
	for d := range n {
		n[d] = float64(g.count(size[d]) + 1)
	}
	if err := limit(4 * (n[0]*n[1] + n[1]*n[2] + n[2]*n[0])); err != nil {
		return Mesh{}, err
	}
	var x [3][]float64
	for d := range x {
		x[d] = g.between(size[d])
		for i := range x[d] {
			x[d][i] = (x[d][i] - 0.5) * size[d]
		}
	}
	b := newBuilder()
	sixFaces(b, [3]int{len(x[0]) - 1, len(x[1]) - 1, len(x[2]) - 1}, func(i [3]int) r3.Vec {
		return r3.Vec{X: x[0][i[0]], Y: x[1][i[1]], Z: x[2][i[2]]}
	})
	return b.m, nil
}

// sixFaces adds the surface of a block of n[0] by n[1] by n[2] cells.
func sixFaces(b *builder, n [3]int, at func(i [3]int) r3.Vec) {
	for d := range n { // the face normal to axis d, with axes u and v before it
		u, v := (d+1)%3, (d+2)%3
		b.patch(n[u], n[v], func(p, q int) r3.Vec {
			var i [3]int
			i[d], i[u], i[v] = n[d], p, q
			return at(i)
		})
		b.patch(n[v], n[u], func(q, p int) r3.Vec {
			var i [3]int
			i[d], i[u], i[v] = 0, p, q
			return at(i)
		})
	}
}

// Plate returns a closed rectangular plate around the origin whose edges and
// corners are all rounded by one radius: what a ball of that radius sweeps whose
// centre moves through a smaller block.
//
//	A = 2 (a b + b c + c a) + 2 π r (a + b + c) + 4 π r²
//	V = a b c + 2 r (a b + b c + c a) + π r² (a + b + c) + 4/3 π r³
//
//	a, b, c  length, width, thickness, each less 2 r  [m]
//	r        edgeRadius, > 0 and at most half of the smallest [m]
//
// The corners of the triangles lie on the rounded surface, so area and volume
// are a little small and converge to these with the square of the panel size.
// Each rounded edge has eight panels across or more. Length is along x,
// thickness along z. For sharp edges use [Box].
//
// Errors: a [*units.ValueError] for a dimension or grid that cannot be, and for
// more than 5 million triangles.
//
// Source: [Geometry].
func Plate(length, width, thickness, edgeRadius units.Length, g Grid) (Mesh, error) {
	if err := dimensions(g, named{"plate length", length}, named{"plate width", width},
		named{"plate thickness", thickness}, named{"plate edge radius", edgeRadius}); err != nil {
		return Mesh{}, err
	}
	least := min(length, width, thickness)
	if 2*edgeRadius > least*(1+1e-12) {
		return Mesh{}, &units.ValueError{Field: "plate edge radius", Value: edgeRadius.String(),
			Need: "at most half of the smallest dimension, " + (least / 2).String(), Err: units.ErrInconsistent}
	}
	r := float64(edgeRadius)
	arc := max(4, g.count(math.Pi/4*r)) // panels over 45 degrees
	var flat [3]float64
	var cells [3]float64
	for d, l := range [3]units.Length{length, width, thickness} {
		flat[d] = float64(l) - 2*r
		if flat[d] <= 1e-12*float64(l) {
			flat[d] = 0
		}
		cells[d] = float64(2*arc + g.count(flat[d]) + 1)
	}
	if err := limit(4 * (cells[0]*cells[1] + cells[1]*cells[2] + cells[2]*cells[0])); err != nil {
		return Mesh{}, err
	}
	var x [3]axis
	var n [3]int
	for d := range x {
		x[d] = newAxis(g, flat[d], arc)
		n[d] = len(x[d].inner) - 1
	}
	b := newBuilder()
	sixFaces(b, n, func(i [3]int) r3.Vec {
		c := r3.Vec{X: x[0].inner[i[0]], Y: x[1].inner[i[1]], Z: x[2].inner[i[2]]}
		d := r3.Vec{X: x[0].lean[i[0]], Y: x[1].lean[i[1]], Z: x[2].lean[i[2]]}
		return r3.Add(c, r3.Scale(r/r3.Norm(d), d))
	})
	return b.m, nil
}

// An axis is the grid along one direction of a plate: where the ball's centre
// is, and how far the normal leans that way, from -1 to 1.
type axis struct{ inner, lean []float64 }

func newAxis(g Grid, flat float64, arc int) axis {
	var a axis
	for i := -arc; i < 0; i++ {
		a.inner, a.lean = append(a.inner, -flat/2), append(a.lean, -tan45(-i, arc))
	}
	if flat == 0 {
		a.inner, a.lean = append(a.inner, 0), append(a.lean, 0)
	} else {
		for _, t := range g.between(flat) {
			a.inner, a.lean = append(a.inner, (t-0.5)*flat), append(a.lean, 0)
		}
	}
	for i := 1; i <= arc; i++ {
		a.inner, a.lean = append(a.inner, flat/2), append(a.lean, tan45(i, arc))
	}
	return a
}

// tan45 returns the tangent of i/n of 45 degrees, exactly 1 at its end.
func tan45(i, n int) float64 {
	if i == n {
		return 1
	}
	return math.Tan(math.Pi / 4 * float64(i) / float64(n))
}

// A named length, for the error messages.
type named struct {
	field string
	value units.Length
}

// dimensions checks a grid and lengths: above zero and not beyond [Farthest].
func dimensions(g Grid, all ...named) error {
	for _, d := range all {
		if err := units.Positive(d.field, d.value); err != nil {
			return err
		}
		if d.value > Farthest || d.value < 1e-9 {
			return &units.ValueError{Field: d.field, Value: d.value.String(), Need: "from 1 nm to 1000 km",
				Err: units.ErrOutOfRange}
		}
	}
	if err := g.check(); err != nil {
		return err
	}
	// A body with more panels than memory holds would be made for ever.
	for _, d := range all {
		if d.value > mostAcross*g.Size {
			return &units.ValueError{Field: "panel size", Value: g.Size.String(),
				Need: "at least " + (d.value / mostAcross).String() + ", a five-hundredth of the " + d.field,
				Err:  units.ErrOutOfRange}
		}
	}
	return nil
}

// mostAcross is how many panels may lie across the longest dimension of a body
// that is generated: a ball of that many has some two million of them.
const mostAcross = 500
