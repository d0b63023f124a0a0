package thinspot

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/internal/meshfile"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// Bounds on the memory that reading a case takes, far above what a run takes:
// panels along the longest side of a body, triangles of a body, a file after it is
// refined, parts, and positions.
const (
	mostAcross    = 200
	mostTriangles = 1_000_000
	mostParts     = 60
	mostPositions = 24
)

// readMeshes reads a case by mesh.
func (r *cellReader) readMeshes(c *Case) error {
	p := &r.problem
	p.Conductivity = r.kappa
	p.Drive = r.drive()
	if r.tank != nil {
		t := strictjson.Object(r.tank)
		var length, width, depth units.Length
		if !strictjson.Positive(t, "length", &length) || !strictjson.Positive(t, "width", &width) ||
			!strictjson.Positive(t, "depth", &depth) {
			t.Keep(r.tank.Fail(nil, `need "length", "width" and "depth"`))
		}
		p.Box = &field.Box{High: r3.Vec{X: float64(length), Y: float64(width), Z: float64(depth)}}
		strictjson.Positive(t, "panel", &p.Box.Panel)
		if err := t.Done(); err != nil {
			return err
		}
	}
	if len(r.parts) > mostParts {
		return r.parts[mostParts].Fail(units.ErrOutOfRange, "is one of %d parts; need at most %d", len(r.parts), mostParts)
	}
	for i, n := range r.parts {
		is, wall, err := r.readPart(n, i)
		if err != nil {
			return err
		}
		if i == 0 && (wall || is != workpiece) {
			return n.Fail(nil, "the first part is the workpiece; need a body of kind cathode")
		}
		if is == robber {
			c.Robbers = append(c.Robbers, len(p.Surfaces)-1)
		}
	}
	if err := solvable(r.tree, *p); err != nil {
		return err
	}
	c.Mesh = &MeshCell{Problem: *p, Mended: r.mended}
	if r.positions != nil {
		return c.Mesh.readPositions(r.positions)
	}
	return nil
}

// solvable holds a problem against what can be solved, without solving it.
func solvable(n *strictjson.Node, p field.MeshProblem) error {
	_, err := field.Estimate(p, field.MeshOptions{})
	var big *field.CostError
	if err != nil && !errors.As(err, &big) { // what is too big is for the caller to say
		return n.Fail(err, "%v", err)
	}
	return nil
}

// readPart reads one part and adds it to the problem.
func (r *cellReader) readPart(n *strictjson.Node, i int) (is role, wall bool, err error) {
	o := strictjson.Object(n)
	s := field.Boundary{Name: o.Text("name")}
	if s.Name == "" {
		s.Name = fmt.Sprintf("part %d", i+1)
	}
	is = readRole(o)
	s.Kind = [...]current.Kind{current.Cathode, current.Anode, current.Insulator, current.Cathode, current.Floating}[is]
	if s.Law, err = readLaw(o.Field("law")); err != nil {
		return is, false, err
	}
	if f := o.Field("wall"); f != nil {
		if s.Kind != current.Anode {
			o.Keep(n.Fail(units.ErrInconsistent,
				`is a wall; need "kind": "anode": walls without one insulate, and what is plated hangs in the tank`))
		}
		return is, true, r.readWall(o, f, s)
	}
	m, err := r.readBody(n, o)
	if err != nil {
		return is, false, err
	}
	if m, err = hang(n, o, m, r3.Vec{}); err != nil {
		return is, false, err
	}
	s.Vertices, s.Triangles = m.Vertices, m.Triangles
	r.problem.Surfaces = append(r.problem.Surfaces, s)
	return is, false, nil
}

// readWall makes a whole wall of the tank an electrode.
func (r *cellReader) readWall(o *strictjson.Reader, f *strictjson.Node, s field.Boundary) error {
	var words []string
	for k := field.LowX; k <= field.HighZ; k++ {
		words = append(words, k.String())
	}
	face := field.LowX + field.Face(o.Choice("wall", words...))
	if err := o.Done(); err != nil {
		return err
	}
	box := r.problem.Box
	if box == nil {
		return f.Fail(units.ErrInconsistent, `is a wall and there is no tank; need "tank" with length, width and depth`)
	}
	box.Walls = append(box.Walls, field.Wall{Face: face, Kind: s.Kind, Law: s.Law})
	return nil
}

// generators are the bodies that a case may describe, with their dimensions.
var generators = []struct {
	name, fields string
	make         func(d []units.Length, g mesh.Grid) (mesh.Mesh, error)
}{
	{"box", "length width height",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Box(d[0], d[1], d[2], g) }},
	{"plate", "length width thickness edge_radius",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Plate(d[0], d[1], d[2], d[3], g) }},
	{"cylinder", "diameter length",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Cylinder(d[0], d[1], g) }},
	{"tube", "outer inner length",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Tube(d[0], d[1], d[2], g) }},
	{"sphere", "diameter",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Sphere(d[0], g) }},
	{"torus", "centre_diameter tube_diameter",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Torus(d[0], d[1], g) }},
	{"cup", "outer height recess depth",
		func(d []units.Length, g mesh.Grid) (mesh.Mesh, error) { return mesh.Cup(d[0], d[1], d[2], d[3], g) }},
}

// readBody reads the shape of a part and puts its middle at the origin.
func (r *cellReader) readBody(n *strictjson.Node, o *strictjson.Reader) (m mesh.Mesh, err error) {
	found := 0
	var read func() (mesh.Mesh, error)
	for i, g := range generators {
		if f := o.Field(g.name); f != nil {
			found++
			read = func() (mesh.Mesh, error) { return generate(i, o, f) }
		}
	}
	if f := o.Field("file"); f != nil {
		found++
		read = func() (mesh.Mesh, error) { return r.readFile(o, f) }
	}
	if o.Err() == nil && found != 1 {
		return m, n.Fail(units.ErrInconsistent, "need one of box, plate, cylinder, tube, sphere, torus, cup, file, wall")
	}
	if err := o.Err(); err != nil {
		return m, err
	}
	if m, err = read(); err != nil {
		return m, err
	}
	rep, err := mesh.Check(m)
	if err == nil {
		m, err = mesh.Translate(m, r3.Scale(-0.5, r3.Add(rep.Low, rep.High)))
	}
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// panelSize is the longest side of a triangle: a sixteenth of the longest side of the
// body where the case does not give one.
func panelSize(n *strictjson.Node, given, longest units.Length) (units.Length, error) {
	if given == 0 {
		given = longest / 16
	}
	if most := longest / mostAcross; given < most {
		return 0, n.Fail(units.ErrOutOfRange, `would be cut into panels of %s; need "panel" of at least %s`, given, most)
	}
	return given, nil
}

// generate makes the mesh of a body that the case describes.
func generate(i int, part *strictjson.Reader, n *strictjson.Node) (m mesh.Mesh, err error) {
	var g mesh.Grid
	strictjson.Positive(part, "panel", &g.Size)
	var grade units.Ratio = 2
	fineness := part.Field("grade")
	part.Scan(fineness, &grade, true)
	if err := part.Err(); err != nil {
		return m, err
	}
	if g.Grade = float64(grade); !(g.Grade >= 1 && g.Grade <= 3) {
		return m, fineness.Fail(units.ErrOutOfRange, "is %s; need from 1 (even panels) to 3", strictjson.Describe(fineness))
	}
	o := strictjson.Object(n)
	longest := units.Length(0)
	var sizes []units.Length
	for _, name := range strings.Fields(generators[i].fields) {
		var v units.Length
		strictjson.Needed(o, name, &v, aLength)
		longest, sizes = max(longest, v), append(sizes, v)
	}
	if err := o.Done(); err != nil {
		return m, err
	}
	if g.Size, err = panelSize(n, g.Size, longest); err != nil {
		return m, err
	}
	m, err = generators[i].make(sizes, g)
	if err == nil && len(m.Triangles) > mostTriangles {
		return m, n.Fail(units.ErrOutOfRange, `makes %d triangles; need at most %d: larger "panel" or lower "grade"`,
			len(m.Triangles), mostTriangles)
	}
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// readFile reads a mesh from a file of the case and cuts it into panels.
func (r *cellReader) readFile(o *strictjson.Reader, n *strictjson.Node) (mesh.Mesh, error) {
	m, mended, err := meshfile.Read(o, n, r.open)
	if err != nil {
		return m, err
	}
	r.mended = append(r.mended, mended...)
	var panel units.Length
	strictjson.Positive(o, "panel", &panel)
	refine := o.Whole("refine", 0, 4, 0)
	if err := o.Err(); err != nil {
		return m, err
	}
	if panel, err = panelSize(n, panel, units.Length(boxOf(m.Vertices).longest())); err != nil {
		return m, err
	}
	if m, err = mesh.Split(m, panel, mostTriangles); err != nil {
		return m, n.Fail(err, `cannot be cut into panels: %v; in the file: a larger "panel"`, err)
	}
	for range refine {
		if len(m.Triangles) > mostTriangles/4 {
			return m, n.Fail(units.ErrOutOfRange, "would have %d triangles; need at most %d, so refine it less",
				4*len(m.Triangles), mostTriangles)
		}
		if m, err = mesh.Subdivide(m); err != nil {
			return m, n.Fail(err, "%v", err)
		}
	}
	return m, nil
}

// hang turns a mesh that lies about the origin, one turn after the other, and moves it
// to its place, or to another one where "at" is left out. It is the last that is read of o.
func hang(n *strictjson.Node, o *strictjson.Reader, m mesh.Mesh, at r3.Vec) (mesh.Mesh, error) {
	turns, place := o.Items("turn", "turns", o.Field("turn") != nil), o.Field("at")
	if place != nil {
		at = readPlace(o, place)
	}
	if err := o.Done(); err != nil {
		return m, err
	}
	for _, item := range turns {
		o := strictjson.Object(item)
		axis := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[o.Choice("axis", "x", "y", "z")]
		o.Lacks("axis", "x, y or z")
		angle := readDegrees(o, "degrees", -3600, 3600)
		err := o.Done()
		if err != nil {
			return m, err
		}
		if m, err = mesh.Rotate(m, angle*math.Pi/180, axis); err != nil {
			return m, item.Fail(err, "%v", err)
		}
	}
	m, err := mesh.Translate(m, at)
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// readPositions reads the places of the workpiece one after the other.
func (c *MeshCell) readPositions(n *strictjson.Node) error {
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
	hung := meshOf(c.Problem, 0)
	middle := boxOf(hung.Vertices).middle
	for _, item := range items {
		o := strictjson.Object(item)
		p := Position{Problem: c.Problem}
		if f := o.Must("share", "the share of the time in this position"); f != nil {
			strictjson.Share(o, f, &p.Share)
		}
		total += float64(p.Share)
		m, err := mesh.Translate(hung, r3.Scale(-1, middle))
		if err != nil {
			return item.Fail(err, "%v", err)
		}
		if m, err = hang(item, o, m, middle); err != nil {
			return err
		}
		p.Problem.Surfaces = slices.Clone(p.Problem.Surfaces)
		p.Problem.Surfaces[0].Vertices = m.Vertices
		if err := solvable(item, p.Problem); err != nil {
			return err
		}
		c.Positions = append(c.Positions, p)
	}
	if math.Abs(total-1) > 1e-6 {
		return n.Fail(units.ErrInconsistent, "have shares of the time that sum to %s; need 1", units.Ratio(total))
	}
	return nil
}
