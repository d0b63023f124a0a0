package axi

import "example.com/laydown/units"

// Moved returns the profile moved away from the axis and up, by lengths that
// may be negative. A ring stays a ring; a body that touches the axis may only
// move up and down.
func (p Profile) Moved(out, up units.Length) Profile {
	return p.mapped(func(q Point) Point { return Point{q.R + out, q.Z + up} })
}

// UpsideDown returns the profile mirrored at a height.
func (p Profile) UpsideDown(height units.Length) Profile {
	return p.mapped(func(q Point) Point { return Point{q.R, 2*height - q.Z} })
}

func (p Profile) mapped(f func(Point) Point) Profile {
	steps := make([]step, len(p.steps))
	for i, s := range p.steps {
		s.end = f(s.end)
		if s.arc {
			s.via = f(s.via)
		}
		steps[i] = s
	}
	return Profile{f(p.start), steps}
}
