package job

import (
	"fmt"
	"reflect"
	"slices"
	"strings"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
)

// A Shape is a body of package shape with its word: a plate, a tube, a sum of bodies.
type Shape struct {
	Piece shape.Body
}

// kinds lists the bodies that a file can give, each with its word.
func kinds() []struct {
	word string
	body shape.Body
} {
	return []struct {
		word string
		body shape.Body
	}{{"plate", shape.Plate{}}, {"disc", shape.Disc{}}, {"ring", shape.Ring{}}, {"cylinder", shape.Cylinder{}},
		{"tube", shape.Tube{}}, {"cone", shape.Cone{}}, {"sphere", shape.Sphere{}}, {"cap", shape.Cap{}},
		{"torus", shape.Torus{}}, {"hexbar", shape.HexBar{}}, {"wire", shape.Wire{}}, {"thread", shape.Thread{}},
		{"chain", shape.Chain{}}, {"screw head", shape.ScrewHead{}}, {"sum", shape.Assembly{}}}
}

func kindWords() string {
	var words []string
	for _, k := range kinds() {
		words = append(words, k.word)
	}
	return strings.Join(words, ", ")
}

// flat reports whether a body of a word may have holes.
func flat(word string) bool { return slices.Contains([]string{"plate", "disc", "ring"}, word) }

type holesForm struct {
	Holes []shape.Hole `json:"holes"`
}

type sumForm struct {
	Of []Shape `json:"of" with:"must" need:"a list of bodies" rule:"filled"`
}

// DecodeNode reads a body by its kind.
func (s *Shape) DecodeNode(n *strictjson.Node) error {
	if err := strictjson.Ready(n, s); err != nil {
		return err
	}
	if n.Kind != "object" {
		return n.Fail(nil, "is %s; need an object in braces", strictjson.Describe(n))
	}
	kind, rest := n.At("kind")
	if rest != "" {
		return n.Fail(nil, `field "kind" is missing; need one of %s`, kindWords())
	}
	for _, k := range kinds() {
		if kind.Kind != "text" || k.word != kind.Text {
			continue
		}
		if k.word == "sum" {
			var f sumForm
			if err := strictjson.DecodeFields(n, &f, "kind"); err != nil {
				return err
			}
			var all shape.Assembly
			for _, one := range f.Of {
				all = append(all, one.Piece)
			}
			s.Piece = all
			return s.check(n)
		}
		// The kind, and holes where a body is flat, stand beside the fields of the body and are
		// known there.
		more := []string{"kind"}
		if flat(k.word) {
			more = append(more, "holes")
		}
		body := reflect.New(reflect.TypeOf(k.body))
		if err := strictjson.DecodeFields(n, body.Interface(), more...); err != nil {
			return err
		}
		s.Piece = body.Elem().Interface().(shape.Body)
		if at, rest := n.At("holes"); rest == "" {
			var h holesForm
			if err := strictjson.DecodeOne(at, &h); err != nil {
				return err
			}
			for i, hole := range h.Holes {
				if hole.Depth == 0 && !hole.Bare {
					return at.Values[i].Fail(nil, `field "depth" is missing; need number and unit in quotes, as "12.5 mm"`)
				}
			}
			if len(h.Holes) > 0 {
				s.Piece = shape.Drilled{Piece: s.Piece, Holes: h.Holes}
			}
		}
		return s.check(n)
	}
	return kind.Fail(nil, "is %s; need one of %s", strictjson.Describe(kind), kindWords())
}

func (s *Shape) check(n *strictjson.Node) error {
	if _, err := s.Piece.Area(); err != nil {
		return n.Fail(err, "%v", err)
	}
	return nil
}

// parts takes a body apart into its word, itself and its holes.
func (s Shape) parts() (word string, body shape.Body, holes []shape.Hole) {
	body = s.Piece
	if d, is := body.(shape.Drilled); is {
		body, holes = d.Piece, d.Holes
	}
	for _, k := range kinds() {
		if reflect.TypeOf(k.body) == reflect.TypeOf(body) {
			return k.word, body, holes
		}
	}
	return "", body, holes
}

// EncodeNode gives the form of the file; an error for a body that files do not know.
func (s Shape) EncodeNode() any {
	word, body, holes := s.parts()
	if word == "" || len(holes) > 0 && !flat(word) {
		return &units.ValueError{Field: "shape", Value: fmt.Sprintf("%T", s.Piece), Need: "a body that files know: " +
			kindWords() + "; holes only in plate, disc and ring", Err: units.ErrOutOfRange}
	}
	// A body is written with its kind first and its own fields beside it. The struct for this is
	// put together here, so that package shape needs no field for the word of a file.
	fields := []reflect.StructField{{Name: "Kind", Type: reflect.TypeFor[string](), Tag: `json:"kind"`}}
	values := []any{word}
	if all, is := body.(shape.Assembly); is {
		var f sumForm
		for _, p := range all {
			f.Of = append(f.Of, Shape{p})
		}
		body = nil
		fields, values = append(fields, reflect.StructField{Name: "Sum", Type: reflect.TypeOf(f), Tag: `json:",inline"`}),
			append(values, f)
	} else {
		fields, values = append(fields, reflect.StructField{Name: "Body", Type: reflect.TypeOf(body),
			Tag: `json:",inline"`}), append(values, body)
	}
	if len(holes) > 0 {
		fields, values = append(fields, reflect.StructField{Name: "Holes", Type: reflect.TypeOf(holes),
			Tag: `json:"holes"`}), append(values, holes)
	}
	v := reflect.New(reflect.StructOf(fields)).Elem()
	for i := range values {
		v.Field(i).Set(reflect.ValueOf(values[i]))
	}
	return v.Interface()
}

// Schema lists the bodies.
func (s *Shape) Schema(d *strictjson.Definitions) map[string]any {
	var all []any
	for _, k := range kinds() {
		t := reflect.TypeOf(k.body)
		if k.word == "sum" {
			t = reflect.TypeFor[sumForm]()
		}
		one := d.Object(t)
		properties := one["properties"].(map[string]any)
		properties["kind"] = map[string]any{"const": k.word}
		if flat(k.word) {
			properties["holes"] = d.Of(reflect.TypeFor[[]shape.Hole]())
		}
		required, _ := one["required"].([]string)
		one["required"] = append([]string{"kind"}, required...)
		all = append(all, one)
	}
	return map[string]any{"oneOf": all}
}

// area is the plated area of one piece, what is masked taken off.
func (p *Part) area() (units.Area, error) {
	a := p.Area
	var err error
	switch {
	case p.Shape != nil && p.Shape.Piece != nil:
		a, err = p.Shape.Piece.Area()
	case p.Mesh != nil:
		a, err = p.Mesh.area()
	}
	return a - p.Masked, err
}

// A MeshFile is a part in an STL or PLY file. Its area is known once the file is loaded,
// as [Read] does.
type MeshFile struct {
	mesh.Named

	loaded units.Area
	mended []string
}

// load reads the file and keeps the area of the body.
func (m *MeshFile) load(name string, open Opener) error {
	body, mended, err := m.Load(open)
	if err != nil {
		return err
	}
	part, err := mesh.NewMeasuredPart(body, name, false)
	if err != nil {
		return err
	}
	m.mended = mended
	m.loaded, err = part.Area()
	return err
}

func (m *MeshFile) area() (units.Area, error) {
	// The file is read once, by Read; its area is kept. A job made in code names a file that
	// nobody has opened, and there is no area to guess.
	if m.loaded == 0 {
		return 0, &units.ValueError{Field: "file", Value: m.File, Need: "to be loaded, as Read does",
			Err: units.ErrInconsistent}
	}
	return m.loaded, nil
}
