package thinspot

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// readSignificant reads where the minimum thickness holds, what all the marks select;
// cell is nil by profile. Without marks it is nil: everywhere.
func readSignificant(n *strictjson.Node, cell *MeshCell) (coat.Selector, error) {
	if n == nil {
		return nil, nil
	}
	o := strictjson.Object(n)
	box, facing := o.Field("box"), o.Field("facing")
	var edges *strictjson.Node
	if cell != nil {
		edges = o.Field("away_from_edges")
	}
	if err := o.Done(); err != nil {
		return nil, err
	}
	var marks []coat.Selector
	if box != nil {
		b := strictjson.Object(box)
		low, high := readPlace(b, b.Must("low", "a point")), readPlace(b, b.Must("high", "a point"))
		o.Keep(b.Done())
		marks = append(marks, coat.InBox(low, high))
	}
	if facing != nil {
		f := strictjson.Object(facing)
		direction := []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}}[f.Choice("direction", "x", "-x", "y", "-y",
			"z", "-z")]
		f.Lacks("direction", "x, -x, y, -y, z or -z")
		within := readDegrees(f, "within", 0, 180)
		o.Keep(f.Done())
		marks = append(marks, coat.Facing(direction, within))
	}
	if edges != nil {
		e := strictjson.Object(edges)
		var distance units.Length
		strictjson.Needed(e, "distance", &distance, aLength)
		angle := readDegrees(e, "sharper_than", 1, 179)
		o.Keep(e.Done())
		marks = append(marks, coat.AwayFrom(sharpEdges(meshOf(cell.Problem, 0), angle), distance))
	}
	if marks == nil {
		o.Keep(n.Fail(units.ErrInconsistent, "is empty; need box, facing or away_from_edges, or leave it out"))
	}
	if err := o.Err(); err != nil {
		return nil, err
	}
	all := func(p coat.Patch) bool {
		return !slices.ContainsFunc(marks, func(m coat.Selector) bool { return !m(p) })
	}
	if cell != nil && !selects(all, meshOf(cell.Problem, 0)) {
		return nil, n.Fail(units.ErrOutOfRange, "holds none of the %d faces of the part; need some of them",
			len(cell.Problem.Surfaces[0].Triangles))
	}
	return all, nil
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
