package jobfile

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// mostAcross is how many panels the longest side of a body may be cut into, and
// mostTriangles how many it may have, a file after it is refined: far more than a
// run takes, and a bound on the memory that reading a case takes. So are the
// numbers of parts and of positions.
const (
	mostAcross    = 200
	mostTriangles = 1_000_000
	mostParts     = 60
	mostPositions = 24
)

// generated makes the mesh of a body of a part. Without a panel size its longest
// side is cut into sixteen.
func generated(name string, part *strictjson.Reader, n *strictjson.Node) (mesh.Mesh, error) {
	var g mesh.Grid
	strictjson.Positive(part, "panel", &g.Size)
	var grade units.Ratio = 2
	fineness := part.Field("grade")
	part.Scan(fineness, &grade, true)
	if err := part.Err(); err != nil {
		return mesh.Mesh{}, err
	}
	if g.Grade = float64(grade); !(g.Grade >= 1 && g.Grade <= 3) {
		return mesh.Mesh{}, fineness.Fail(units.ErrOutOfRange, "is %s; need from 1 (even panels) to 3",
			strictjson.Describe(fineness))
	}
	o := strictjson.Object(n)
	longest := units.Length(0)
	length := func(field string) (v units.Length) {
		strictjson.Needed(o, field, &v, aLength)
		longest = max(longest, v)
		return v
	}
	var make func(mesh.Grid) (mesh.Mesh, error)
	switch name {
	case "box":
		a, b, c := length("length"), length("width"), length("height")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Box(a, b, c, g) }
	case "plate":
		a, b, c, r := length("length"), length("width"), length("thickness"), length("edge_radius")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Plate(a, b, c, r, g) }
	case "cylinder":
		d, l := length("diameter"), length("length")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Cylinder(d, l, g) }
	case "tube":
		d, b, l := length("outer"), length("inner"), length("length")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Tube(d, b, l, g) }
	case "sphere":
		d := length("diameter")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Sphere(d, g) }
	case "torus":
		d, t := length("centre_diameter"), length("tube_diameter")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Torus(d, t, g) }
	default:
		d, h, r, t := length("outer"), length("height"), length("recess"), length("depth")
		make = func(g mesh.Grid) (mesh.Mesh, error) { return mesh.Cup(d, h, r, t, g) }
	}
	if err := o.Done(); err != nil {
		return mesh.Mesh{}, err
	}
	if g.Size == 0 {
		g.Size = longest / 16
	}
	if most := longest / mostAcross; g.Size < most {
		return mesh.Mesh{}, n.Fail(units.ErrOutOfRange, `would be cut into panels of %s; need "panel" of at least %s`, g.Size,
			most)
	}
	m, err := make(g)
	if err == nil && len(m.Triangles) > mostTriangles {
		return m, n.Fail(units.ErrOutOfRange, `makes %d triangles; need at most %d: larger "panel" or lower "grade"`,
			len(m.Triangles), mostTriangles)
	}
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// positions reads the schedule of the workpiece.
func (r *cellReader) positions(n *strictjson.Node) error {
	list := strictjson.On(n)
	items := list.ItemsOf(n, "positions", true)
	if list.Err() != nil {
		return list.Err()
	}
	if len(items) > mostPositions {
		return items[mostPositions].Fail(units.ErrOutOfRange, "is one of %d positions; need at most %d", len(items),
			mostPositions)
	}
	total := 0.0
	hung := &r.cell.Problem.Surfaces[0]
	low, high := bounds(hung.Vertices)
	middle := r3.Scale(0.5, r3.Add(low, high))
	for _, item := range items {
		o := strictjson.Object(item)
		var p Position
		if f := o.Must("share", "the share of the time in this position"); f != nil {
			strictjson.Share(o, f, &p.Share)
		}
		turns, place := o.Field("turn"), o.Field("at")
		if err := o.Done(); err != nil {
			return err
		}
		total += float64(p.Share)
		m, err := mesh.Translate(mesh.Mesh{Vertices: hung.Vertices, Triangles: hung.Triangles}, r3.Scale(-1, middle))
		if err != nil {
			return item.Fail(err, "%v", err)
		}
		if m, err = turned(m, turns); err != nil {
			return err
		}
		at := middle
		if place != nil {
			if at, err = readPlace(place); err != nil {
				return err
			}
		}
		if m, err = mesh.Translate(m, at); err != nil {
			return item.Fail(err, "%v", err)
		}
		p.Problem = r.cell.Problem
		p.Problem.Surfaces = append([]field.Boundary(nil), p.Problem.Surfaces...)
		p.Problem.Surfaces[0].Vertices = m.Vertices
		if err := r.check(item, p.Problem); err != nil {
			return err
		}
		r.cell.Positions = append(r.cell.Positions, p)
	}
	if math.Abs(total-1) > 1e-6 {
		return n.Fail(units.ErrInconsistent, "have shares of the time that sum to %s; need 1", units.Ratio(total))
	}
	return nil
}

func bounds(points []r3.Vec) (low, high r3.Vec) {
	low = r3.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}
	high = r3.Scale(-1, low)
	for _, v := range points {
		low = r3.Vec{X: math.Min(low.X, v.X), Y: math.Min(low.Y, v.Y), Z: math.Min(low.Z, v.Z)}
		high = r3.Vec{X: math.Max(high.X, v.X), Y: math.Max(high.Y, v.Y), Z: math.Max(high.Z, v.Z)}
	}
	return low, high
}

// readPlace reads x, y and z.
func readPlace(n *strictjson.Node) (r3.Vec, error) {
	o := strictjson.On(n)
	list := o.ItemsOf(n, "x, y and z", true)
	if o.Err() == nil && len(list) != 3 {
		return r3.Vec{}, n.Fail(nil, "has %d items; need three, x, y and z", len(list))
	}
	var v [3]units.Length
	for i := range min(len(list), 3) {
		o.Scan(list[i], &v[i], false)
	}
	return r3.Vec{X: float64(v[0]), Y: float64(v[1]), Z: float64(v[2])}, o.Err()
}

// degrees reads an angle and returns it in radians.
func degrees(o *strictjson.Reader, name string, low, high float64) (float64, error) {
	f := o.Must(name, "an angle in degrees, a plain number")
	var v units.Ratio
	o.Scan(f, &v, true)
	if err := o.Err(); err != nil {
		return 0, err
	}
	if !(float64(v) >= low && float64(v) <= high) {
		return 0, f.Fail(units.ErrOutOfRange, "is %s; need degrees from %g to %g", strictjson.Describe(f), low, high)
	}
	return float64(v) * math.Pi / 180, nil
}

// readSignificant reads where the minimum thickness holds.
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
	var all coat.Selector
	both := func(s coat.Selector) {
		if all == nil {
			all = s
		} else {
			all = coat.Both(all, s)
		}
	}
	if box != nil {
		b := strictjson.Object(box)
		low, err := readPlaceOf(b, "low")
		if err != nil {
			return nil, err
		}
		high, err := readPlaceOf(b, "high")
		if err != nil {
			return nil, err
		}
		if err := b.Done(); err != nil {
			return nil, err
		}
		both(coat.InBox(low, high))
	}
	if facing != nil {
		f := strictjson.Object(facing)
		direction := []r3.Vec{{X: 1}, {X: -1}, {Y: 1}, {Y: -1}, {Z: 1}, {Z: -1}}[f.Choice("direction", "x", "-x", "y", "-y",
			"z", "-z")]
		f.Lacks("direction", "x, -x, y, -y, z or -z")
		within, err := degrees(f, "within", 0, 180)
		if err != nil {
			return nil, err
		}
		if err := f.Done(); err != nil {
			return nil, err
		}
		both(coat.Facing(direction, within*180/math.Pi))
	}
	if edges != nil {
		e := strictjson.Object(edges)
		var distance units.Length
		strictjson.Needed(e, "distance", &distance, aLength)
		angle, err := degrees(e, "sharper_than", 1, 179)
		if err != nil {
			return nil, err
		}
		if err := e.Done(); err != nil {
			return nil, err
		}
		both(coat.AwayFrom(sharpEdges(&cell.Problem.Surfaces[0], angle), distance))
	}
	if all == nil {
		return nil, n.Fail(units.ErrInconsistent, "is empty; need box, facing or away_from_edges, or leave it out")
	}
	if cell != nil && !selects(all, &cell.Problem.Surfaces[0]) {
		return nil, n.Fail(units.ErrOutOfRange, "holds none of the %d faces of the part; need some of them",
			len(cell.Problem.Surfaces[0].Triangles))
	}
	return all, nil
}

// selects reports whether a selector holds some face of a surface.
func selects(of coat.Selector, s *field.Boundary) bool {
	for _, t := range s.Triangles {
		a, b, c := s.Vertices[t[0]], s.Vertices[t[1]], s.Vertices[t[2]]
		if of(coat.Patch{At: r3.Scale(1.0/3, r3.Add(a, r3.Add(b, c))), Normal: r3.Unit(r3.Cross(r3.Sub(b, a), r3.Sub(c,
			a)))}) {
			return true
		}
	}
	return false
}

func readPlaceOf(o *strictjson.Reader, name string) (r3.Vec, error) {
	f := o.Must(name, "a point")
	if err := o.Err(); err != nil {
		return r3.Vec{}, err
	}
	return readPlace(f)
}

// sharpEdges lists the edges of a surface whose two faces bend by more than an
// angle.
func sharpEdges(s *field.Boundary, angle float64) [][2]r3.Vec {
	normal := func(t [3]int32) r3.Vec {
		a, b, c := s.Vertices[t[0]], s.Vertices[t[1]], s.Vertices[t[2]]
		return r3.Unit(r3.Cross(r3.Sub(b, a), r3.Sub(c, a)))
	}
	first := map[[2]int32]r3.Vec{}
	var list [][2]r3.Vec
	for _, t := range s.Triangles {
		n := normal(t)
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			if m, met := first[[2]int32{b, a}]; met && r3.Dot(m, n) < math.Cos(angle) {
				list = append(list, [2]r3.Vec{s.Vertices[a], s.Vertices[b]})
			}
			first[[2]int32{a, b}] = n
		}
	}
	return list
}
