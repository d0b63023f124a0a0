package thinspot

import (
	"errors"
	"fmt"
	"math"
	"reflect"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
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

// meshes makes a case by mesh.
func (b *builder) meshes() error {
	b.Mesh = &MeshCell{Problem: field.MeshProblem{Conductivity: b.Conductivity, Drive: b.drive()}}
	p := &b.Mesh.Problem
	if t := b.ByMesh.Tank; t != nil {
		p.Box = &field.Box{High: vector([3]units.Length{t.Length, t.Width, t.Depth}), Panel: t.Panel}
	}
	if len(b.ByMesh.Parts) > mostParts {
		return b.at(partAt(mostParts)).Fail(units.ErrOutOfRange, "is one of %d parts; need at most %d", len(b.ByMesh.Parts),
			mostParts)
	}
	// Each part becomes a boundary with role, law and triangles. The first is the workpiece:
	// results, marks and positions all speak of it.
	for i := range b.ByMesh.Parts {
		is, err := b.part(i)
		if err != nil {
			return err
		}
		if i == 0 && (b.ByMesh.Parts[i].Wall != "" || is != workpiece) {
			return b.at("parts[1]").Fail(nil, "the first part is the workpiece; need a body of kind cathode")
		}
		if is == robber {
			b.Robbers = append(b.Robbers, len(p.Surfaces)-1)
		}
	}
	if err := solvable(b.tree, *p); err != nil {
		return err
	}
	return b.positions()
}

// vector is a point in metres.
func vector(v [3]units.Length) r3.Vec {
	return r3.Vec{X: float64(v[0]), Y: float64(v[1]), Z: float64(v[2])}
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

// part adds one part to the problem.
func (b *builder) part(i int) (role, error) {
	part, n := &b.ByMesh.Parts[i], b.at(partAt(i))
	is, law, name, err := b.surface(i, &part.CaseSurface)
	if err != nil {
		return is, err
	}
	s := field.Boundary{Name: name, Kind: is.electric(), Law: law}
	bodies := part.bodies()
	if len(bodies) != 1 {
		return is, n.Fail(units.ErrInconsistent, "need one of box, plate, cylinder, tube, sphere, torus, cup, file, wall")
	}
	at := b.at(partAt(i) + "." + bodies[0].name)
	var m mesh.Mesh
	switch {
	case part.Wall != "":
		return is, b.wall(n, at, part.Wall, s)
	case part.File != "":
		m, err = b.file(at, part)
	default:
		m, err = made(at, part, bodies[0])
	}
	if err != nil {
		return is, err
	}
	// A file may have its origin anywhere. With its middle at the origin, turns and "at" mean
	// the same for a file as for a body that the case describes.
	rep, err := mesh.Check(m)
	if err == nil { // its middle comes to the origin
		m, err = mesh.Translate(m, r3.Scale(-0.5, r3.Add(rep.Low, rep.High)))
	}
	if err != nil {
		return is, n.Fail(err, "%v", err)
	}
	if m, err = part.hang(n, m, r3.Vec{}); err != nil {
		return is, err
	}
	s.Vertices, s.Triangles = m.Vertices, m.Triangles
	b.Mesh.Problem.Surfaces = append(b.Mesh.Problem.Surfaces, s)
	return is, nil
}

// wall makes a whole wall of the tank an electrode.
func (b *builder) wall(n, at *strictjson.Node, word string, s field.Boundary) error {
	if s.Kind != current.Anode {
		return n.Fail(units.ErrInconsistent,
			`is a wall; need "kind": "anode": walls without one insulate, and what is plated hangs in the tank`)
	}
	box := b.Mesh.Problem.Box
	if box == nil {
		return at.Fail(units.ErrInconsistent, `is a wall and there is no tank; need "tank" with length, width and depth`)
	}
	face := field.LowX
	for face.String() != word {
		face++
	}
	box.Walls = append(box.Walls, field.Wall{Face: face, Kind: s.Kind, Law: s.Law})
	return nil
}

// A generator makes the mesh of a body that a case describes itself.
type generator interface {
	mesh(g mesh.Grid) (mesh.Mesh, error)
}

func (v *Box) mesh(g mesh.Grid) (mesh.Mesh, error) { return mesh.Box(v.Length, v.Width, v.Height, g) }
func (v *Plate) mesh(g mesh.Grid) (mesh.Mesh, error) {
	return mesh.Plate(v.Length, v.Width, v.Thickness, v.EdgeRadius, g)
}
func (v *Cylinder) mesh(g mesh.Grid) (mesh.Mesh, error) {
	return mesh.Cylinder(v.Diameter, v.Length, g)
}
func (v *Tube) mesh(g mesh.Grid) (mesh.Mesh, error)   { return mesh.Tube(v.Outer, v.Inner, v.Length, g) }
func (v *Sphere) mesh(g mesh.Grid) (mesh.Mesh, error) { return mesh.Sphere(v.Diameter, g) }
func (v *Torus) mesh(g mesh.Grid) (mesh.Mesh, error)  { return mesh.Torus(v.Centre, v.Tube, g) }
func (v *Cup) mesh(g mesh.Grid) (mesh.Mesh, error) {
	return mesh.Cup(v.Outer, v.Height, v.Recess, v.Depth, g)
}

// A body is one of the forms that a part may have, by the name of its member; its longest
// dimension is of those that a case describes itself.
type body struct {
	name    string
	make    func(g mesh.Grid) (mesh.Mesh, error)
	longest units.Length
}

// bodies are those that are given.
func (p *CasePart) bodies() (all []body) {
	for _, g := range []generator{p.Box, p.Plate, p.Cylinder, p.Tube, p.Sphere, p.Torus, p.Cup} {
		if v := reflect.ValueOf(g); !v.IsNil() {
			one := body{name: strings.ToLower(v.Elem().Type().Name()), make: g.mesh}
			for i := range v.Elem().NumField() {
				one.longest = max(one.longest, units.Length(v.Elem().Field(i).Float()))
			}
			all = append(all, one)
		}
	}
	if p.File != "" {
		all = append(all, body{name: "file"})
	}
	if p.Wall != "" {
		all = append(all, body{name: "wall"})
	}
	return all
}

// panelSize is the longest side of a triangle: a sixteenth of the longest side of the
// body where the case does not give one.
func panelSize(n *strictjson.Node, given, longest units.Length) (units.Length, error) {
	// A sixteenth keeps the first run short. The second mesh, of half the panel, tells whether
	// that was enough.
	if given == 0 {
		given = longest / 16
	}
	if most := longest / mostAcross; given < most {
		return 0, n.Fail(units.ErrOutOfRange, `would be cut into panels of %s; need "panel" of at least %s`, given, most)
	}
	return given, nil
}

// made is the mesh of a body that the case describes.
func made(n *strictjson.Node, part *CasePart, b body) (m mesh.Mesh, err error) {
	g := mesh.Grid{Grade: part.Grade}
	if g.Grade == 0 {
		g.Grade = 2
	}
	if g.Size, err = panelSize(n, part.Panel, b.longest); err != nil {
		return m, err
	}
	m, err = b.make(g)
	if err == nil && len(m.Triangles) > mostTriangles {
		return m, n.Fail(units.ErrOutOfRange, `makes %d triangles; need at most %d: larger "panel" or lower "grade"`,
			len(m.Triangles), mostTriangles)
	}
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// file is the mesh of a file that the case names, cut into panels.
func (b *builder) file(n *strictjson.Node, part *CasePart) (mesh.Mesh, error) {
	m, mended, err := part.Load(b.open)
	if err != nil {
		return m, n.Fail(err, "%v", err)
	}
	b.Mesh.Mended = append(b.Mesh.Mended, mended...)
	panel, err := panelSize(n, part.Panel, units.Length(boxOf(m.Vertices).longest()))
	if err != nil {
		return m, err
	}
	if m, err = mesh.Split(m, panel, mostTriangles); err != nil {
		return m, n.Fail(err, `cannot be cut into panels: %v; in the file: a larger "panel"`, err)
	}
	for range part.Refine {
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
// to its place, or to another one where "at" is left out.
func (h *Hung) hang(n *strictjson.Node, m mesh.Mesh, at r3.Vec) (mesh.Mesh, error) {
	var err error
	for i, t := range h.Turn {
		axis := map[string]r3.Vec{"x": {X: 1}, "y": {Y: 1}, "z": {Z: 1}}[t.Axis]
		if m, err = mesh.Rotate(m, t.Degrees*math.Pi/180, axis); err != nil {
			return m, n.Place(fmt.Sprintf("turn[%d]", i+1), err)
		}
	}
	if h.At != nil {
		at = vector(*h.At)
	}
	if m, err = mesh.Translate(m, at); err != nil {
		return m, n.Fail(err, "%v", err)
	}
	return m, nil
}

// positions makes the places of the workpiece one after the other.
func (b *builder) positions() error {
	if len(b.ByMesh.Places) == 0 {
		return nil
	}
	if len(b.ByMesh.Places) > mostPositions {
		return b.at(fmt.Sprintf("positions[%d]", mostPositions+1)).Fail(units.ErrOutOfRange,
			"is one of %d positions; need at most %d", len(b.ByMesh.Places), mostPositions)
	}
	total := 0.0
	hung := meshOf(b.Mesh.Problem, 0)
	middle := boxOf(hung.Vertices).middle
	// Each position is a problem of its own with the same triangles: patch i is the same spot of
	// the piece in all of them, so that growth can be summed.
	for i, place := range b.ByMesh.Places {
		n := b.at(fmt.Sprintf("positions[%d]", i+1))
		p := Position{Share: place.Share, Problem: b.Mesh.Problem}
		total += float64(p.Share)
		m, err := mesh.Translate(hung, r3.Scale(-1, middle))
		if err != nil {
			return n.Fail(err, "%v", err)
		}
		if m, err = place.hang(n, m, middle); err != nil {
			return err
		}
		p.Problem.Surfaces = slices.Clone(p.Problem.Surfaces)
		p.Problem.Surfaces[0].Vertices = m.Vertices
		if err := solvable(n, p.Problem); err != nil {
			return err
		}
		b.Mesh.Positions = append(b.Mesh.Positions, p)
	}
	if math.Abs(total-1) > 1e-6 {
		return b.at("positions").Fail(units.ErrInconsistent, "have shares of the time that sum to %s; need 1",
			units.Ratio(total))
	}
	return nil
}
