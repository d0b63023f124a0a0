package field

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// inconsistent is the error for values that contradict each other.
func inconsistent(field, value, need string) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: units.ErrInconsistent}
}

// check looks at everything but the meshes' topology.
//
// What the meshes are in themselves is not asked here; see
// [MeshProblem.closed].
func (p *MeshProblem) check() error {
	if err := units.Positive("conductivity", p.Conductivity); err != nil {
		return err
	}
	if err := checkDrive(p.Drive); err != nil {
		return err
	}
	// A cell needs a surface that plates. Where the bath ends it needs an anode
	// too, for the current has nowhere else to go; where it does not, infinity
	// serves.
	var has [4]bool
	// A vessel surface bounds the bath as a box does.
	bounded := p.Box != nil
	for i := range p.Surfaces {
		s := &p.Surfaces[i]
		if err := s.check(i); err != nil {
			return err
		}
		has[s.Kind] = true
		bounded = bounded || s.Vessel
	}
	if b := p.Box; b != nil {
		if err := b.check(p.Surfaces); err != nil {
			return err
		}
		for _, w := range b.Walls {
			has[w.Kind] = true
		}
	}
	switch {
	case !has[current.Cathode]:
		return inconsistent("surfaces", "no cathode", "a surface that plates")
	case bounded && !has[current.Anode]:
		return inconsistent("surfaces", "a tank without an anode", "an anode, or an unbounded bath with the anode far away")
	}
	return nil
}

// checkDrive wants a voltage above zero: no surface here has a bias that would drive
// current without one.
func checkDrive(d current.Drive) error {
	if volts, held := d.Voltage(); held {
		return units.Positive("voltage", volts)
	}
	return d.Check()
}

// name returns the name of a surface for messages.
func (s *Boundary) name(i int) string {
	if s.Name != "" {
		return s.Name
	}
	return fmt.Sprintf("%s %d", s.Kind, i+1)
}

// Refused are laws that do not go with the kind, places that are no numbers,
// corners that do not exist, and triangles without area: their normal is noise,
// and the boundary equation takes the normal of every panel for true.
func (s *Boundary) check(i int) error {
	name := s.name(i)
	bad := func(tri int, reason error, detail, need string) error {
		return &MeshError{Surface: name, Triangle: tri, Detail: detail, Need: need, Err: reason}
	}
	if err := s.Law.CheckOn(s.Kind, "surface "+name); err != nil {
		return err
	}
	if s.Sheet && s.Vessel {
		return inconsistent("surface "+name, "a sheet and a vessel", "one of the two")
	}
	if len(s.Triangles) == 0 {
		return bad(-1, ErrOpen, "no triangles", "a mesh")
	}
	// One sum catches what is no number and what is absurdly far; comparisons
	// with what is no number are false, so that the limit is written as what
	// has to hold.
	for k, v := range s.Vertices {
		if !(math.Abs(v.X)+math.Abs(v.Y)+math.Abs(v.Z) < 1e6) {
			return &units.ValueError{Field: fmt.Sprintf("vertex %d of %s", k, name), Value: fmt.Sprintf("(%g, %g, %g) m", v.X,
				v.Y, v.Z),
				Need: "finite coordinates below 1000 km", Err: units.ErrNotFinite}
		}
	}
	// Numbers of corners come from files, and are not to be trusted.
	for k, t := range s.Triangles {
		for _, v := range t {
			if v < 0 || int(v) >= len(s.Vertices) {
				return bad(k, units.ErrOutOfRange, fmt.Sprintf("corner %d of %d vertices", v, len(s.Vertices)),
					"indices of vertices")
			}
		}
		tri := s.corners(k)
		// The limit is on the height over the longest side: 1e-9 is far above
		// what the rounding of coordinates leaves of it for a part in a tank.
		l := longest(&tri)
		if c := norm(r3.Cross(r3.Sub(tri[1], tri[0]), r3.Sub(tri[2], tri[0]))); !(c > 1e-9*l*l) {
			return bad(k, ErrDegenerate, fmt.Sprintf("longest edge %.3g mm, area %.3g mm²", 1e3*l, 0.5e6*c),
				"a mesh without slivers of no area")
		}
	}
	return nil
}

// corners returns the corners of a triangle as places.
func (s *Boundary) corners(k int) triangle {
	t := s.Triangles[k]
	return triangle{s.Vertices[t[0]], s.Vertices[t[1]], s.Vertices[t[2]]}
}

// A part has to lie inside the box with all of its corners. A triangle is
// convex and so is the box, so that then the whole part is inside.
func (b *Box) check(parts []Boundary) error {
	// Written so that corners which are no numbers are refused as well.
	side := r3.Sub(b.High, b.Low)
	if !(side.X > 0 && side.Y > 0 && side.Z > 0 && norm(b.Low)+norm(b.High) < 1e6) {
		return &units.ValueError{Field: "box", Value: fmt.Sprintf("%v to %v m", b.Low, b.High),
			Need: "the low corner below the high one on every axis", Err: units.ErrNotPositive}
	}
	if b.Panel != 0 {
		if err := units.Positive("wall panel", b.Panel); err != nil {
			return err
		}
	}
	// A face named twice would have two kinds.
	var seen [6]bool
	for _, w := range b.Walls {
		if w.Face > HighZ || seen[w.Face] {
			return inconsistent("walls of the box", w.Face.String(), "each face once")
		}
		seen[w.Face] = true
		if w.Kind == current.Floating {
			return inconsistent("walls of the box", "floating metal", "a cathode, an anode or an insulator")
		}
		if err := w.Law.CheckOn(w.Kind, w.Face.String()+" wall"); err != nil {
			return err
		}
	}
	// One bath has one outer boundary: the box, or a vessel surface.
	for i := range parts {
		s := &parts[i]
		if s.Vessel {
			return inconsistent("tank", "a box and a vessel surface", "one of the two")
		}
		for _, v := range s.Vertices {
			if !(v.X > b.Low.X && v.Y > b.Low.Y && v.Z > b.Low.Z && v.X < b.High.X && v.Y < b.High.Y && v.Z < b.High.Z) {
				return &MeshError{Surface: s.name(i), Triangle: -1,
					Detail: fmt.Sprintf("corner at (%.4g, %.4g, %.4g) m is not inside the box", v.X, v.Y, v.Z),
					Need:   "the whole part inside the tank, clear of its walls", Err: current.ErrOverlap}
			}
		}
	}
	return nil
}

// tafel refuses a Tafel law at a cathode where the reverse reaction counts, and
// warns where it begins to.
//
// The least density is asked, for there the reverse reaction has the greatest
// share. It is the density of the solution, so that this check comes last:
// whether a law holds is not known before the currents are. Anodes may be as
// far from their law as they like; they do not decide the coat.
func (c *cell) tafel(s *MeshSolution) ([]current.Warning, error) {
	var out []current.Warning
	results := append(append([]MeshResult(nil), s.Surfaces...), s.Walls...)
	for i := range results {
		r := &results[i]
		if r.Kind != current.Cathode || len(r.Density) == 0 {
			continue
		}
		law := c.surfaces[i].Law
		if _, err := law.CheckTafel(r.Name, r.Minimum.Density); err != nil {
			return nil, err
		}
		if low, said := law.WarnTafel(r.Name, r.Minimum.Density); said {
			out = append(out, low)
		}
	}
	return out, nil
}
