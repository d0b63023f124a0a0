package jobfile

import (
	"fmt"
	"io"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// CaseFormat is the value of the field "format" that [ReadCase] reads.
const CaseFormat = "laydown case 1"

// A Case asks where a part is plated thinnest: a body of revolution (Cell), or
// any other (Mesh). The first part is the workpiece.
type Case struct {
	Name         string
<<<<<<< HEAD
	Bath         plating.OperatingBath
	Cell         axi.Problem   // of a case by profile
	Mesh         *MeshCell     // of a case by mesh; nil by profile
	Robbers      []int         // parts whose metal is not wanted
	Significant  coat.Selector // of the workpiece; nil means all of it
=======
	Bath         plating.OperatingBath
	Cell         axi.ProfileProblem // of a case by profile
	Mesh         *MeshCell          // of a case by mesh; nil by profile
	Robbers      []int              // parts whose metal is not wanted
	Significant  coat.Selector      // of the workpiece; nil means all of it
>>>>>>> de558a3 (Call sites of the solvers' new names in jobfile and thinspot)
	MinThickness units.Length
	PricePerGram decimal.Decimal // zero when not given
	Currency     string
}

// ReadCase reads a thin-spot case without files of its own: see [ReadCaseWith].
//
// Errors: an [*Error] with line and field.
func ReadCase(r io.Reader) (Case, error) { return ReadCaseWith(r, nil) }

// ReadCaseWith reads a thin-spot case: a body of revolution in a round tank or an
// open bath, or meshes in a rectangular one.
//
//	{
//	  "format": "laydown case 1",                needed
//	  "case": "pendulum bob",                    name
//	  "method": "profile",                       or "mesh", see below
//	  "bath": { ... },                           needed: as in a job file
//	  "conductivity": "6 S/m",                   needed
//	  "tank": {"radius": "150 mm", "depth": "300 mm"},   left out: an open bath, the anode far away
//	  "current": "0.6 A",                        one of the two: for all cathodes,
//	  "voltage": "2 V",                          or between the rails
//	  "min_thickness": "2.5 µm",                       needed
//	  "significant": { ... },                    where the minimum thickness holds; left out: everywhere
//	  "price_per_g": "98.50", "currency": "EUR",
//	  "parts": [                                 needed; the first one is the workpiece
//	    {"name": "bob", "kind": "cathode",       or anode, shield, robber, floating
//	     "law": {"model": "tafel", "exchange": "1 A/m²", "alpha": 0.5, "temperature": "38 °C"},
//	     "profile": {"start": ["0 mm", "141 mm"], "steps": [
//	       {"to": ["36 mm", "147 mm"], "by": "cap"},
//	       {"to": ["40 mm", "147 mm"]},
//	       {"to": ["40 mm", "153 mm"], "by": "arc", "via": ["43 mm", "150 mm"]}, ...]}},
//	    {"name": "anode", "kind": "anode", "tube": {"inner": "130 mm", "outer": "132 mm", "low": "50 mm", "high": "250 mm"}}
//	  ]
//	}
//
// Points are radius and height. A step is a line unless "by" says arc (through
// "via") or cap (an arc whose centre is on the axis). Instead of a profile a part
// may be a "rod" (radius, low, high), a "ball" (radius, height), a "torus"
// (radius, height, thickness) or a "tube". A law's model is primary (the law
// left out), linear (resistance), tafel (exchange, alpha, temperature) or
// butler-volmer (exchange, anodic, cathodic, temperature).
//
// By mesh the tank has "length", "width" and "depth", along x, y and z, with a
// corner at the origin and the surface of the solution on top; a part is
//
//	{"name": "bezel", "kind": "cathode", "law": { ... },
//	 "torus": {"centre_diameter": "84 mm", "tube_diameter": "6 mm"},
//	                       or box (length, width, height), plate (length, width, thickness,
//	                       edge_radius), cylinder (diameter, length), tube (outer, inner, length),
//	                       sphere (diameter), cup (outer, height, recess, depth)
//	 "panel": "3 mm", "grade": 2,                longest side of a triangle; smaller at edges
//	 "turn": [{"axis": "x", "degrees": 90}],     about its middle, one after the other
//	 "at": ["150 mm", "100 mm", "120 mm"]}       where the middle of its box comes, before it is turned
//
//	{"name": "cherub", "file": "cherub.stl", "unit": "mm",     STL or PLY; neither knows its unit
//	 "repair": true, "weld": "0.01 mm",          what is safe is mended, and said
//	 "panel": "3 mm",                            longest side of a triangle, see mesh.Split
//	 "refine": 1, "at": [ ... ]}                 then each triangle becomes four, so often
//
//	{"name": "anodes", "kind": "anode", "wall": "low x"}       a whole wall of the tank
//
// A panel is a sixteenth of the longest side when left out and at least a 200th of
// it; grade goes from 1, even panels, to 3 and is 2 when left out. Bodies must lie
// apart, none through a wall. What a case may hold is bounded, so that a slip of the
// pen cannot fill the memory: 60 parts, 24 positions, a million triangles a body.
//
// The part may change its place: "positions" lists them with their share of the
// time, each turned from the way the part hangs, and moved when "at" is given:
//
//	"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}]
//
// "significant" may hold, and then all of them count: "box" (low, high: two points;
// by profile radius, 0 and height), "facing" (direction, within: degrees) and, by
// mesh, "away_from_edges" (sharper_than: degrees, distance).
//
// Files are opened with open, by the name that the case gives; nil opens none.
//
// Errors: an [*Error] with line and field.
func ReadCaseWith(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	c, err := readCase(r, open)
	if err != nil {
		return Case{}, atPlaceIn("case file", err)
	}
	return c, nil
}

func readCase(r io.Reader, open func(name string) (io.ReadCloser, error)) (Case, error) {
	tree, err := strictjson.Read(r, strictjson.Doc{What: "case", Need: "an object with bath, parts and min_thickness"})
	if err != nil {
		return Case{}, err
	}
	o := strictjson.Object(tree)
	if f := o.Must("format", `"`+CaseFormat+`"`); f != nil && (f.Kind != "text" || f.Text != CaseFormat) {
		o.Keep(f.Fail(nil, "is %s; need %q", strictjson.Describe(f), CaseFormat))
	}
	c := Case{Name: o.Text("case"), Currency: o.Text("currency")}
	byMesh := o.Choice("method", "profile", "mesh") == 1
	bath := o.Must("bath", "the bath as an object")
	var kappa units.Conductivity
	strictjson.Needed(o, "conductivity", &kappa, `one as "6 S/m"`)
	strictjson.Needed(o, "min_thickness", &c.MinThickness, `the thickness at the thinnest spot, as "2.5 µm"`)
	tank := o.Field("tank")
	var amperes units.Current
	var voltage units.Voltage
	hasCurrent, hasVoltage := strictjson.Positive(o, "current", &amperes), strictjson.Positive(o, "voltage", &voltage)
	money{o}.read("price_per_g", &c.PricePerGram)
	parts := o.Items("parts", "a list of parts, the workpiece first", true)
	marks := o.Field("significant")
	var positions *strictjson.Node
	if byMesh {
		positions = o.Field("positions")
	}
	if err := o.Done(); err != nil {
		return Case{}, err
	}
	for name, err := range map[string]error{"conductivity": sense.Conductivity().Check(kappa),
		"min_thickness": sense.Coat().CheckAs("min_thickness", c.MinThickness), "voltage": sense.Volts().Check(voltage)} {
		if err != nil {
			return Case{}, o.Member(name).Fail(err, "%v", err)
		}
	}
	if hasCurrent == hasVoltage {
		return Case{}, tree.Fail(nil, `need either "current" or "voltage"`)
	}
	drive := current.ByVoltage(voltage)
	if hasCurrent {
		drive = current.ByCurrent(amperes)
	}
	if c.Bath, err = readBath(bath); err != nil {
		return Case{}, err
	}
	if err := plating.KnownDeadly(c.Bath.Solution()); err != nil {
		return Case{}, bath.Fail(err, "%v", err)
	}
	if byMesh {
		cell := cellReader{kappa: kappa, drive: drive, open: open}
		if err := cell.read(&c, tree, tank, parts, positions); err != nil {
			return Case{}, err
		}
	} else if err := readCell(&c, tree, tank, parts, kappa, drive); err != nil {
		return Case{}, err
	}
	c.Significant, err = readSignificant(marks, c.Mesh)
	return c, err
}

// readCell reads a case by profile.
func readCell(c *Case, tree, tank *strictjson.Node, parts []*strictjson.Node, kappa units.Conductivity,
	drive current.Drive) error {
	c.Cell.Drive = drive
	c.Cell.Bath = axi.OpenWithFarAnode(kappa)
	if tank != nil {
		t := strictjson.Object(tank)
		var radius, depth units.Length
		if !strictjson.Positive(t, "radius", &radius) || !strictjson.Positive(t, "depth", &depth) {
			t.Keep(tank.Fail(nil, `need "radius" and "depth"`))
		}
		if err := t.Done(); err != nil {
			return err
		}
		c.Cell.Bath = axi.Tank(kappa, radius, depth)
	}
	for i, n := range parts {
		p, robber, err := readCellPart(n)
		if err != nil {
			return err
		}
		if i == 0 && (p.Kind != current.Cathode || robber) {
			return n.Fail(nil, "the first part is the workpiece; need kind cathode")
		}
		if p.Name == "" {
			p.Name = fmt.Sprintf("part %d", i+1)
		}
		if robber {
			c.Robbers = append(c.Robbers, i)
		}
		c.Cell.Parts = append(c.Cell.Parts, p)
	}
	if err := c.Cell.Check(); err != nil {
		return tree.Fail(err, "%v", err)
	}
	return nil
}

func readCellPart(n *strictjson.Node) (p axi.Body, robber bool, err error) {
	o := strictjson.Object(n)
	p.Name = o.Text("name")
	switch o.Choice("kind", "cathode", "anode", "shield", "robber", "floating") {
	case 1:
		p.Kind = current.Anode
	case 2:
		p.Kind = current.Insulator
	case 3:
		robber = true
	case 4:
		p.Kind = current.Floating
	}
	law := o.Field("law")
	body := map[string]*strictjson.Node{}
	for _, name := range []string{"profile", "rod", "ball", "torus", "tube"} {
		if f := o.Field(name); f != nil {
			body[name] = f
		}
	}
	if err := o.Done(); err != nil {
		return p, robber, err
	}
	if len(body) != 1 {
		return p, robber, n.Fail(nil, "need one of profile, rod, ball, torus, tube")
	}
	for name, f := range body {
		if p.Profile, err = readProfile(name, f); err != nil {
			return p, robber, err
		}
	}
	if law != nil {
		if p.Law, err = readLaw(law); err != nil {
			return p, robber, err
		}
	}
	if err := p.Profile.Check(); err != nil {
		return p, robber, n.Fail(err, "%v", err)
	}
	return p, robber, nil
}

func readProfile(name string, n *strictjson.Node) (axi.Profile, error) {
	o := strictjson.Object(n)
	length := func(field string) (v units.Length) {
		o.Quantity(field, &v)
		o.Lacks(field, aLength)
		return v
	}
	var p axi.Profile
	switch name {
	case "rod":
		p = axi.Rod(length("radius"), length("low"), length("high"))
	case "ball":
		p = axi.Ball(length("radius"), length("height"))
	case "torus":
		p = axi.Torus(length("radius"), length("height"), length("thickness"))
	case "tube":
		p = axi.Tube(length("inner"), length("outer"), length("low"), length("high"))
	default:
		start, err := readPoint(o.Must("start", `radius and height, as ["0 mm", "10 mm"]`))
		if err != nil {
			return p, err
		}
		p = axi.NewProfile(start)
		for _, item := range o.Items("steps", "steps of the profile", true) {
			s := strictjson.Object(item)
			to, err := readPoint(s.Must("to", "the end of the step, radius and height"))
			if err != nil {
				return p, err
			}
			by := s.Choice("by", "line", "arc", "cap")
			via := s.Field("via")
			if err := s.Done(); err != nil {
				return p, err
			}
			if (via != nil) != (by == 1) {
				return p, item.Fail(nil, `"via" goes with "by": "arc", and an arc needs it`)
			}
			switch by {
			case 0:
				p = p.LineTo(to)
			case 1:
				middle, err := readPoint(via)
				if err != nil {
					return p, err
				}
				p = p.ArcVia(middle, to)
			default:
				p = p.CapTo(to)
			}
		}
	}
	return p, o.Done()
}
