package jobfile

import (
	"strings"

	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
)

// shapeKinds lists the words of the field "kind".
var shapeKinds = []string{"plate", "disc", "ring", "cylinder", "tube", "cone", "sphere", "cap", "torus", "hexbar",
	"wire", "thread", "sum"}

// aLength is what a missing dimension needs.
const aLength = `number and unit in quotes, as "12.5 mm"`

// readShape reads a body and returns its area.
func readShape(n *strictjson.Node) (units.Area, error) {
	p, err := readPiece(n)
	if err != nil {
		return 0, err
	}
	a, err := p.Area()
	if err != nil {
		return 0, n.Fail(err, "%v", err)
	}
	return a, nil
}

func readPiece(n *strictjson.Node) (shape.Piece, error) {
	o := strictjson.Object(n)
	kind := o.Must("kind", "one of "+strings.Join(shapeKinds, ", "))
	if o.Err() != nil {
		return nil, o.Err()
	}
	var p shape.Piece
	switch kind.Text {
	case "plate":
		v := shape.Plate{Faces: faces(o)}
		strictjson.Needed(o, "length", &v.Length, aLength)
		strictjson.Needed(o, "width", &v.Width, aLength)
		o.Quantity("thickness", &v.Thickness)
		p = v
	case "disc":
		v := shape.Disc{Faces: faces(o)}
		strictjson.Needed(o, "diameter", &v.Diameter, aLength)
		o.Quantity("thickness", &v.Thickness)
		p = v
	case "ring":
		v := shape.Ring{Faces: faces(o)}
		strictjson.Needed(o, "outer", &v.Outer, aLength)
		strictjson.Needed(o, "inner", &v.Inner, aLength)
		o.Quantity("thickness", &v.Thickness)
		p = v
	case "cylinder":
		v := shape.Cylinder{OpenEnds: o.Whole("open_ends", 0, 2, 0)}
		strictjson.Needed(o, "diameter", &v.Diameter, aLength)
		strictjson.Needed(o, "length", &v.Length, aLength)
		p = v
	case "tube":
		v := shape.Tube{OpenEnds: o.Whole("open_ends", 0, 2, 0)}
		v.Sides = [...]shape.Sides{shape.BothSides, shape.OutsideOnly, shape.InsideOnly}[o.Choice("sides", "both", "outside",
			"inside")]
		strictjson.Needed(o, "outer", &v.Outer, aLength)
		strictjson.Needed(o, "inner", &v.Inner, aLength)
		strictjson.Needed(o, "length", &v.Length, aLength)
		p = v
	case "cone":
		v := shape.Cone{OpenBase: o.Yes("open_base"), OpenTop: o.Yes("open_top")}
		strictjson.Needed(o, "base_diameter", &v.BaseDiameter, aLength)
		o.Quantity("top_diameter", &v.TopDiameter)
		strictjson.Needed(o, "height", &v.Height, aLength)
		p = v
	case "sphere":
		v := shape.Sphere{}
		strictjson.Needed(o, "diameter", &v.Diameter, aLength)
		p = v
	case "cap":
		v := shape.Cap{OpenBase: o.Yes("open_base")}
		o.Quantity("base_diameter", &v.BaseDiameter)
		o.Quantity("sphere_diameter", &v.SphereDiameter)
		strictjson.Needed(o, "height", &v.Height, aLength)
		p = v
	case "torus":
		v := shape.Torus{}
		strictjson.Needed(o, "centre_diameter", &v.CentreDiameter, aLength)
		strictjson.Needed(o, "tube_diameter", &v.TubeDiameter, aLength)
		p = v
	case "hexbar":
		v := shape.HexBar{OpenEnds: o.Whole("open_ends", 0, 2, 0)}
		strictjson.Needed(o, "across_flats", &v.AcrossFlats, aLength)
		strictjson.Needed(o, "length", &v.Length, aLength)
		p = v
	case "wire":
		v := shape.Wire{}
		strictjson.Needed(o, "diameter", &v.Diameter, aLength)
		strictjson.Needed(o, "length", &v.Length, aLength)
		p = v
	case "thread":
		v := shape.Thread{}
		strictjson.Needed(o, "diameter", &v.Diameter, aLength)
		strictjson.Needed(o, "pitch", &v.Pitch, aLength)
		strictjson.Needed(o, "length", &v.Length, aLength)
		p = v
	case "sum":
		var all shape.Assembly
		for _, item := range o.Items("of", "a list of bodies", true) {
			one, err := readPiece(item)
			if err != nil {
				return nil, err
			}
			all = append(all, one)
		}
		p = all
	default:
		return nil, kind.Fail(nil, "is %s; need one of %s", strictjson.Describe(kind), strings.Join(shapeKinds, ", "))
	}
	switch kind.Text {
	case "plate", "disc", "ring":
		var err error
		if p, err = drill(o, p); err != nil {
			return nil, err
		}
	}
	return p, o.Done()
}

func faces(o *strictjson.Reader) shape.Faces {
	return [...]shape.Faces{shape.BothFaces, shape.OneFace}[o.Choice("faces", "both", "one")]
}

// drill reads the holes of a flat body.
func drill(o *strictjson.Reader, p shape.Piece) (shape.Piece, error) {
	var holes []shape.Hole
	for _, item := range o.Items("holes", "holes", false) {
		h := strictjson.Object(item)
		v := shape.Hole{Count: h.Whole("count", 1, 1_000_000, 1), Blind: h.Yes("blind"), Bare: h.Yes("bare"), Faces: faces(h)}
		strictjson.Needed(h, "diameter", &v.Diameter, aLength)
		if v.Bare {
			h.Quantity("depth", &v.Depth)
		} else {
			strictjson.Needed(h, "depth", &v.Depth, aLength)
		}
		if err := h.Done(); err != nil {
			return nil, err
		}
		holes = append(holes, v)
	}
	if holes == nil {
		return p, nil
	}
	return shape.Drilled{Piece: p, Holes: holes}, nil
}
