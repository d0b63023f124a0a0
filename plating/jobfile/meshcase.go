package jobfile

import (
	"errors"
	"fmt"
	"io"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// A MeshCell is a case by mesh: what hangs in the bath. The first surface is
// the workpiece.
type MeshCell struct {
	Problem   field.MeshProblem
	Positions []Position // nil: the part stays as it hangs
	Mended    []string   // what was done to the files, in words
}

// A Position is the cell with the workpiece in another place.
type Position struct {
	Share   units.Ratio // of the time
	Problem field.MeshProblem
}

// A cellReader reads the parts of a case by mesh.
type cellReader struct {
	kappa units.Conductivity
	drive current.Drive
	open  func(name string) (io.ReadCloser, error)
	cell  MeshCell
}

func (r *cellReader) read(c *Case, tree, tank *strictjson.Node, parts []*strictjson.Node,
	positions *strictjson.Node) error {
	p := &r.cell.Problem
	p.Conductivity = r.kappa
	p.Drive = r.drive
	if tank != nil {
		t := strictjson.Object(tank)
		var length, width, depth units.Length
		if !strictjson.Positive(t, "length", &length) || !strictjson.Positive(t, "width", &width) || !strictjson.Positive(t,
			"depth", &depth) {
			t.Keep(tank.Fail(nil, `need "length", "width" and "depth"`))
		}
		p.Box = &field.Box{High: r3.Vec{X: float64(length), Y: float64(width), Z: float64(depth)}}
		strictjson.Positive(t, "panel", &p.Box.Panel)
		if err := t.Done(); err != nil {
			return err
		}
	}
	if len(parts) > mostParts {
		return parts[mostParts].Fail(units.ErrOutOfRange, "is one of %d parts; need at most %d", len(parts), mostParts)
	}
	for i, n := range parts {
		robber, wall, err := r.part(n, i)
		if err != nil {
			return err
		}
		if i == 0 && (wall || robber || p.Surfaces[0].Kind != current.Cathode) {
			return n.Fail(nil, "the first part is the workpiece; need a body of kind cathode")
		}
		if robber {
			c.Robbers = append(c.Robbers, len(p.Surfaces)-1)
		}
	}
	if err := r.check(tree, *p); err != nil {
		return err
	}
	if positions != nil {
		if err := r.positions(positions); err != nil {
			return err
		}
	}
	c.Mesh = &r.cell
	return nil
}

// check holds a problem against what can be solved, without solving it.
func (r *cellReader) check(n *strictjson.Node, p field.MeshProblem) error {
	_, err := field.Estimate(p, field.MeshOptions{})
	var big *field.CostError
	if err != nil && !errors.As(err, &big) { // what is too big is for the caller to say
		return n.Fail(err, "%v", err)
	}
	return nil
}

// part reads one part and adds it to the problem.
func (r *cellReader) part(n *strictjson.Node, i int) (robber, wall bool, err error) {
	o := strictjson.Object(n)
	s := field.Boundary{Name: o.Text("name")}
	if s.Name == "" {
		s.Name = fmt.Sprintf("part %d", i+1)
	}
	switch o.Choice("kind", "cathode", "anode", "shield", "robber", "floating") {
	case 1:
		s.Kind = current.Anode
	case 2:
		s.Kind = current.Insulator
	case 3:
		robber = true
	case 4:
		s.Kind = current.Floating
	}
	if law := o.Field("law"); law != nil {
		if s.Law, err = readLaw(law); err != nil {
			return robber, false, err
		}
	}
	if f := o.Field("wall"); f != nil {
		if s.Kind != current.Anode {
			o.Keep(n.Fail(units.ErrInconsistent,
				`is a wall; need "kind": "anode": walls without one insulate, and what is plated hangs in the tank`))
		}
		return robber, true, r.wall(n, o, f, s)
	}
	m, err := r.body(n, o)
	if err != nil {
		return robber, false, err
	}
	turns, place := o.Field("turn"), o.Field("at")
	if err := o.Done(); err != nil {
		return robber, false, err
	}
	if m, err = turned(m, turns); err != nil {
		return robber, false, err
	}
	if place != nil {
		at, err := readPlace(place)
		if err != nil {
			return robber, false, err
		}
		if m, err = mesh.Translate(m, at); err != nil {
			return robber, false, place.Fail(err, "%v", err)
		}
	}
	s.Vertices, s.Triangles = m.Vertices, m.Triangles
	r.cell.Problem.Surfaces = append(r.cell.Problem.Surfaces, s)
	return robber, false, nil
}

// wall makes a whole wall of the tank an electrode.
func (r *cellReader) wall(n *strictjson.Node, o *strictjson.Reader, f *strictjson.Node, s field.Boundary) error {
	face := -1
	var words []string
	for k := field.LowX; k <= field.HighZ; k++ {
		words = append(words, k.String())
		if f.Kind == "text" && f.Text == k.String() {
			face = int(k)
		}
	}
	if face < 0 {
		o.Keep(f.Fail(units.ErrOutOfRange, "is %s; need one of %s", strictjson.Describe(f), strings.Join(words, ", ")))
	}
	if err := o.Done(); err != nil {
		return err
	}
	box := r.cell.Problem.Box
	if box == nil {
		return f.Fail(units.ErrInconsistent, `is a wall and there is no tank; need "tank" with length, width and depth`)
	}
	box.Walls = append(box.Walls, field.Wall{Face: field.Face(face), Kind: s.Kind, Law: s.Law})
	return nil
}

// body reads the shape of a part, its middle at the origin.
func (r *cellReader) body(n *strictjson.Node, o *strictjson.Reader) (mesh.Mesh, error) {
	var found []string
	var node *strictjson.Node
	for _, name := range []string{"box", "plate", "cylinder", "tube", "sphere", "torus", "cup", "file"} {
		if f := o.Field(name); f != nil {
			found, node = append(found, name), f
		}
	}
	if o.Err() == nil && len(found) != 1 {
		return mesh.Mesh{}, n.Fail(units.ErrInconsistent,
			"need one of box, plate, cylinder, tube, sphere, torus, cup, file, wall")
	}
	if err := o.Err(); err != nil {
		return mesh.Mesh{}, err
	}
	var m mesh.Mesh
	var err error
	if found[0] == "file" {
		m, err = r.file(o, node)
	} else {
		m, err = generated(found[0], o, node)
	}
	if err != nil {
		return mesh.Mesh{}, err
	}
	return centred(n, m)
}

// centred moves the middle of a mesh's box to the origin.
func centred(n *strictjson.Node, m mesh.Mesh) (mesh.Mesh, error) {
	rep, err := mesh.Check(m)
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	out, err := mesh.Translate(m, r3.Scale(-0.5, r3.Add(rep.Low, rep.High)))
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return out, nil
}

// turned turns a mesh about its middle, one turn after the other.
func turned(m mesh.Mesh, n *strictjson.Node) (mesh.Mesh, error) {
	if n == nil {
		return m, nil
	}
	list := strictjson.On(n)
	items := list.ItemsOf(n, "turns", true)
	if list.Err() != nil {
		return m, list.Err()
	}
	for _, item := range items {
		o := strictjson.Object(item)
		axis := []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}[o.Choice("axis", "x", "y", "z")]
		o.Lacks("axis", "x, y or z")
		angle, err := degrees(o, "degrees", -3600, 3600)
		if err == nil {
			err = o.Done()
		}
		if err != nil {
			return m, err
		}
		if m, err = mesh.Rotate(m, angle, axis); err != nil {
			return m, item.Fail(err, "%v", err)
		}
	}
	return m, nil
}

// file reads a mesh from a file of the case.
func (r *cellReader) file(o *strictjson.Reader, n *strictjson.Node) (mesh.Mesh, error) {
	m, mended, err := readMeshFile(o, n, r.open)
	if err != nil {
		return m, err
	}
	r.cell.Mended = append(r.cell.Mended, mended...)
	var panel units.Length
	given := strictjson.Positive(o, "panel", &panel)
	refine := o.Whole("refine", 0, 4, 0)
	if err := o.Err(); err != nil {
		return m, err
	}
	low, high := bounds(m.Vertices)
	size := r3.Sub(high, low)
	longest := units.Length(max(size.X, size.Y, size.Z))
	if !given {
		panel = longest / 16
	}
	if most := longest / mostAcross; panel < most {
		return m, n.Fail(units.ErrOutOfRange, `would be cut into panels of %s; need "panel" of at least %s`, panel, most)
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
