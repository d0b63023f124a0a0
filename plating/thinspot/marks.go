package thinspot

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// significant finds where the minimum thickness holds: what all the marks select.
func (b *builder) significant() error {
	n := b.at("significant")
	var marks []coat.Selector
	if m := b.Marks.Box; m != nil {
		marks = append(marks, coat.InBox(vector(m.Low), vector(m.High)))
	}
	if m := b.Marks.Facing; m != nil {
		direction := map[string]r3.Vec{"x": {X: 1}, "-x": {X: -1}, "y": {Y: 1}, "-y": {Y: -1}, "z": {Z: 1}, "-z": {Z: -1}}
		marks = append(marks, coat.Facing(direction[m.Direction], m.Within))
	}
	if m := b.Marks.Edges; m != nil && b.Mesh == nil {
		return b.at("significant.away_from_edges").Fail(nil, `goes with "method": "mesh"; by profile need box or facing`)
	} else if m != nil {
		marks = append(marks, coat.AwayFrom(sharpEdges(meshOf(b.Mesh.Problem, 0), m.SharperThan), m.Distance))
	}
	if marks == nil {
		return n.Fail(units.ErrInconsistent, "is empty; need box, facing or away_from_edges, or leave it out")
	}
	b.Significant = func(p coat.Patch) bool {
		return !slices.ContainsFunc(marks, func(m coat.Selector) bool { return !m(p) })
	}
	if b.Mesh != nil && !selects(b.Significant, meshOf(b.Mesh.Problem, 0)) {
		return n.Fail(units.ErrOutOfRange, "holds none of the %d faces of the part; need some of them",
			len(b.Mesh.Problem.Surfaces[0].Triangles))
	}
	return nil
}

// selects reports whether a selector holds some face of a mesh.
func selects(of coat.Selector, m mesh.Mesh) bool {
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		if of(coat.Patch{At: r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c))), Normal: normal(m, i)}) {
			return true
		}
	}
	return false
}

// normal is the direction that a face looks in.
func normal(m mesh.Mesh, i int) r3.Vec {
	a, b, c := m.Corners(i)
	return r3.Unit(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)))
}

// sharpEdges lists the edges of a mesh whose two faces bend by more than an angle
// in degrees.
func sharpEdges(m mesh.Mesh, angle float64) [][2]r3.Vec {
	first := map[[2]int32]r3.Vec{}
	var list [][2]r3.Vec
	for i, t := range m.Triangles {
		n := normal(m, i)
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			if other, met := first[[2]int32{b, a}]; met && r3.Dot(other, n) < math.Cos(angle*math.Pi/180) {
				list = append(list, [2]r3.Vec{m.Vertices[a], m.Vertices[b]})
			}
			first[[2]int32{a, b}] = n
		}
	}
	return list
}
