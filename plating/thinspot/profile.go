package thinspot

import (
	"example.com/laydown/plating/axi"
	"example.com/laydown/units"
)

// profiles makes a case by profile.
func (b *builder) profiles() error {
	c := &b.Cell
	c.Drive = b.drive()
	c.Bath = axi.OpenWithFarAnode(b.Conductivity)
	if t := b.ByProfile.Tank; t != nil {
		c.Bath = axi.Tank(b.Conductivity, t.Radius, t.Depth)
	}
	for i := range b.ByProfile.Parts {
		n := b.at(partAt(i))
		is, law, name, err := b.surface(i, &b.ByProfile.Parts[i].CaseSurface)
		if err != nil {
			return err
		}
		if i == 0 && is != workpiece {
			return n.Fail(nil, "the first part is the workpiece; need kind cathode")
		}
		all := b.ByProfile.Parts[i].profiles()
		if len(all) != 1 {
			return n.Fail(nil, "need one of profile, rod, ball, torus, tube")
		}
		p := axi.Revolved{Name: name, Kind: is.electric(), Law: law, Profile: all[0]}
		if err := p.Profile.Check(); err != nil {
			return n.Fail(err, "%v", err)
		}
		if is == robber {
			b.Robbers = append(b.Robbers, i)
		}
		c.Parts = append(c.Parts, p)
	}
	if err := c.Check(); err != nil {
		return b.tree.Fail(err, "%v", err)
	}
	return nil
}

// profiles are those of the bodies that are given.
func (t *Turned) profiles() (all []axi.Profile) {
	if c := t.Profile; c != nil {
		all = append(all, c.profile())
	}
	if r := t.Rod; r != nil {
		all = append(all, axi.Rod(r.Radius, r.Low, r.High))
	}
	if s := t.Ball; s != nil {
		all = append(all, axi.Ball(s.Radius, s.Height))
	}
	if r := t.Torus; r != nil {
		all = append(all, axi.Torus(r.Radius, r.Height, r.Thickness))
	}
	if s := t.Tube; s != nil {
		all = append(all, axi.Tube(s.Inner, s.Outer, s.Low, s.High))
	}
	return all
}

func (c *Contour) profile() axi.Profile {
	point := func(v [2]units.Length) axi.Point { return axi.Point{R: v[0], Z: v[1]} }
	p := axi.NewProfile(point(c.Start))
	for _, s := range c.Steps {
		switch s.By {
		case "arc":
			p = p.ArcVia(point(*s.Via), point(s.To))
		case "cap":
			p = p.CapTo(point(s.To))
		default:
			p = p.LineTo(point(s.To))
		}
	}
	return p
}
