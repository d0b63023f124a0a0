package field

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Refined returns the problem on a mesh of half the panel size: every triangle
// becomes four of the same shape, and the walls of the box follow. Facets stay
// facets: what a flat panel cuts off a curved surface is not seen by it.
//
// Two meshes are the way to an error estimate because nothing in one mesh shows
// it: the equations are met to many digits on any. Halving is chosen over a
// finer mesh of the same shape since the panels of the fine mesh lie in those
// of the coarse one, and edges keep their grading.
func Refined(p MeshProblem) MeshProblem {
	if p.Box != nil {
		// The walls go along, or their error would stay the same in both and
		// not show.
		b := *p.Box
		if b.Panel == 0 {
			side := r3.Sub(b.High, b.Low)
			b.Panel = units.Length(max(side.X, side.Y, side.Z) / 10)
		}
		b.Panel /= 2
		p.Box = &b
	}
	surfaces := make([]Boundary, len(p.Surfaces))
	for i, s := range p.Surfaces {
		surfaces[i] = s.refined()
	}
	p.Surfaces = surfaces
	return p
}

// refined cuts each triangle at the middles of its sides. A side that two
// triangles share gets one new corner, so that the surface stays closed; the
// surface next to it computes the same corner by itself.
func (s Boundary) refined() Boundary {
	middles := map[[2]int32]int32{}
	v := append([]r3.Vec(nil), s.Vertices...)
	valid := func(k int32) bool { return k >= 0 && int(k) < len(s.Vertices) }
	middle := func(a, b int32) int32 {
		// The side by the numbers of its ends, the same from both triangles.
		key := [2]int32{min(a, b), max(a, b)}
		m, ok := middles[key]
		if !ok {
			m = int32(len(v))
			middles[key] = m
			v = append(v, between(s.Vertices[a], s.Vertices[b]))
		}
		return m
	}
	var t [][3]int32
	for _, c := range s.Triangles {
		if !valid(c[0]) || !valid(c[1]) || !valid(c[2]) {
			t = append(t, c) // left for the check to report
			continue
		}
		ab, bc, ca := middle(c[0], c[1]), middle(c[1], c[2]), middle(c[2], c[0])
		t = append(t, [3]int32{c[0], ab, ca}, [3]int32{ab, c[1], bc}, [3]int32{ca, bc, c[2]}, [3]int32{ab, bc, ca})
	}
	s.Vertices, s.Triangles = v, t
	return s
}

// between returns the middle of two corners, the same to the last bit for
// either order, so that surfaces stay joined.
func between(a, b r3.Vec) r3.Vec { return r3.Scale(0.5, r3.Add(a, b)) }

// A Difference compares one electrode on two meshes: relative changes from the
// coarse to the fine mesh. With half the panel size the error that is left on
// the fine mesh is below the change for every order of convergence above 1 in
// the panel size, and about a third of it for order 2. Where a primary electrode
// meets an insulator at more than a right angle the order is lower, and the three
// figures are no longer the changes themselves but what [Corner.Estimate] makes of
// them, with the sign of the change.
type Difference struct {
	Name         string
	Corner       Corner  // of the fine mesh
	Total        float64 // of the current
	Minimum      float64 // of the least current density, each mesh at its own place
	AtSpot       float64 // of the current density at the fine mesh's least spot
	Coarse, Fine MeshSpot
	Unresolved   bool // the spot lies on one panel of the fine mesh, or the minimum changed by more than a tenth
}

// Compare sets two solutions of one problem side by side, the coarse one
// first: the error estimate for totals and minima. See [Refined].
//
// Errors: a [*units.ValueError] where the two do not have the same surfaces.
//
// What is left of an error that falls as h^p when h is halved is the change
// over 2^p - 1: all of it for p = 1, a third for p = 2. The change itself is
// therefore on the safe side for all but corners of [Corner].
func Compare(coarse, fine *MeshSolution) ([]Difference, error) {
	if coarse == nil || fine == nil || len(coarse.Surfaces) != len(fine.Surfaces) {
		return nil, inconsistent("solutions", "different surfaces", "two solutions of one problem")
	}
	var out []Difference
	for i := range fine.Surfaces {
		c, f := &coarse.Surfaces[i], &fine.Surfaces[i]
		if c.Name != f.Name || c.Kind != f.Kind {
			return nil, inconsistent("solutions", fmt.Sprintf("%q and %q", units.Clip(c.Name), units.Clip(f.Name)),
				"two solutions of one problem")
		}
		if f.Kind == current.Insulator || len(f.Density) == 0 || len(c.Density) == 0 {
			continue
		}
		// Each change becomes what is left of it on the finer mesh.
		left := func(from, to float64) float64 {
			d := change(from, to)
			return math.Copysign(f.Corner.Estimate(d), d)
		}
		d := Difference{Name: f.Name, Corner: f.Corner, Coarse: c.Minimum, Fine: f.Minimum,
			Total:   left(float64(c.Total), float64(f.Total)),
			Minimum: left(float64(c.Minimum.Density), float64(f.Minimum.Density)),
			AtSpot:  left(float64(c.Density[c.nearest(f.Minimum.At)]), float64(f.Minimum.Density))}
		// Written so that a change which is no number is not taken for small.
		d.Unresolved = f.Minimum.Unresolved || !(math.Abs(d.Minimum) <= 0.1)
		out = append(out, d)
	}
	return out, nil
}

// change is the relative change from one value to another, by the second; 0 for
// two zeros.
func change(from, to float64) float64 {
	if from == to {
		return 0
	}
	return (to - from) / math.Abs(to)
}

// nearest returns the panel whose centroid is nearest to a point.
//
// On the coarse mesh the fine mesh's spot lies in one of the four times larger
// panels, and the nearest centroid finds it.
func (r *MeshResult) nearest(x r3.Vec) int {
	best, at := math.Inf(1), 0
	for k, c := range r.Centroid {
		if d := r3.Norm2(r3.Sub(c, x)); d < best {
			best, at = d, k
		}
	}
	return at
}
