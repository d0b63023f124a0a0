package thinspot

import (
	"fmt"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/units"
)

// drive is what the rectifier holds: one of the two is given.
func (r *cellReader) drive() current.Drive {
	if r.current > 0 {
		return current.ByCurrent(r.current)
	}
	return current.ByVoltage(r.voltage)
}

// readProfiles reads a case by profile.
func (r *cellReader) readProfiles(c *Case) error {
	c.Cell.Drive = r.drive()
	c.Cell.Bath = axi.OpenWithFarAnode(r.kappa)
	if r.tank != nil {
		t := strictjson.Object(r.tank)
		var radius, depth units.Length
		if !strictjson.Positive(t, "radius", &radius) || !strictjson.Positive(t, "depth", &depth) {
			t.Keep(r.tank.Fail(nil, `need "radius" and "depth"`))
		}
		if err := t.Done(); err != nil {
			return err
		}
		c.Cell.Bath = axi.Tank(r.kappa, radius, depth)
	}
	for i, n := range r.parts {
		p, is, err := readProfilePart(n)
		if err != nil {
			return err
		}
		if i == 0 && is != workpiece {
			return n.Fail(nil, "the first part is the workpiece; need kind cathode")
		}
		if p.Name == "" {
			p.Name = fmt.Sprintf("part %d", i+1)
		}
		if is == robber {
			c.Robbers = append(c.Robbers, i)
		}
		c.Cell.Parts = append(c.Cell.Parts, p)
	}
	if err := c.Cell.Check(); err != nil {
		return r.tree.Fail(err, "%v", err)
	}
	return nil
}

func readProfilePart(n *strictjson.Node) (p axi.Revolved, is role, err error) {
	o := strictjson.Object(n)
	p.Name = o.Text("name")
	is = readRole(o)
	p.Kind = [...]current.Kind{current.Cathode, current.Anode, current.Insulator, current.Cathode, current.Floating}[is]
	law := o.Field("law")
	var bodies []string
	for _, name := range []string{"profile", "rod", "ball", "torus", "tube"} {
		if o.Field(name) != nil {
			bodies = append(bodies, name)
		}
	}
	if err := o.Done(); err != nil {
		return p, is, err
	}
	if len(bodies) != 1 {
		return p, is, n.Fail(nil, "need one of profile, rod, ball, torus, tube")
	}
	if p.Profile, err = readProfile(bodies[0], o.Member(bodies[0])); err != nil {
		return p, is, err
	}
	if p.Law, err = readLaw(law); err != nil {
		return p, is, err
	}
	if err := p.Profile.Check(); err != nil {
		return p, is, n.Fail(err, "%v", err)
	}
	return p, is, nil
}

// readProfile reads one of the bodies that a profile may be.
func readProfile(name string, n *strictjson.Node) (p axi.Profile, err error) {
	o := strictjson.Object(n)
	length := func(field string) (v units.Length) {
		o.Quantity(field, &v)
		o.Lacks(field, aLength)
		return v
	}
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
		p = axi.NewProfile(readPoint(o, o.Must("start", `radius and height, as ["0 mm", "10 mm"]`)))
		for _, item := range o.Items("steps", "steps of the profile", true) {
			if p, err = readStep(p, item); err != nil {
				o.Keep(err)
				break
			}
		}
	}
	return p, o.Done()
}

// readStep adds one step to a profile: a line, an arc through a point, or a cap.
func readStep(p axi.Profile, n *strictjson.Node) (axi.Profile, error) {
	s := strictjson.Object(n)
	to := readPoint(s, s.Must("to", "the end of the step, radius and height"))
	by := s.Choice("by", "line", "arc", "cap")
	via := s.Field("via")
	if s.Err() == nil && (via != nil) != (by == 1) {
		s.Keep(n.Fail(nil, `"via" goes with "by": "arc", and an arc needs it`))
	}
	switch middle := readPoint(s, via); by {
	case 0:
		p = p.LineTo(to)
	case 1:
		p = p.ArcVia(middle, to)
	default:
		p = p.CapTo(to)
	}
	return p, s.Done()
}

func readPoint(o *strictjson.Reader, n *strictjson.Node) axi.Point {
	var v [2]units.Length
	readLengths(o, n, "radius and height", "two", v[:])
	return axi.Point{R: v[0], Z: v[1]}
}

// readLaw reads how the potential of an electrode rises with its current density; nil
// is a law that is left out, a primary electrode.
func readLaw(n *strictjson.Node) (current.Law, error) {
	if n == nil {
		return current.Law{}, nil
	}
	o := strictjson.Object(n)
	law := current.Law{Model: current.Model(o.Choice("model", "primary", "linear", "tafel", "butler-volmer"))}
	coefficient := func(name string, v *float64) {
		var x units.Ratio
		o.Scan(o.Field(name), &x, true)
		*v = float64(x)
	}
	switch law.Model {
	case current.Linear:
		o.Quantity("resistance", &law.Resistance)
	case current.Tafel:
		o.Quantity("exchange", &law.Exchange)
		coefficient("alpha", &law.Cathodic)
		o.Quantity("temperature", &law.Temperature)
	case current.ButlerVolmer:
		o.Quantity("exchange", &law.Exchange)
		coefficient("anodic", &law.Anodic)
		coefficient("cathodic", &law.Cathodic)
		o.Quantity("temperature", &law.Temperature)
	}
	if err := o.Done(); err != nil {
		return law, err
	}
	if err := law.Check(); err != nil {
		return law, n.Fail(err, "%v", err)
	}
	return law, nil
}
