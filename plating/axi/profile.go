package axi

import (
	"fmt"
	"math"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Point lies in the half plane that is turned round the axis: R is the
// distance from the axis, Z the height along it.
type Point struct{ R, Z units.Length }

// A Profile is the line that is turned round the axis to make a surface: a
// chain of straight lines, arcs of circles and quarters of ellipses. Make one with [NewProfile] and
// the methods that return a longer one. A Profile is a value: lengthening it
// leaves the shorter one as it was. The zero Profile is empty and is refused.
//
// A body's profile either starts and ends on the axis, or comes back to its
// start (a ring), or starts or ends on the vessel, as a stem that goes out
// through the surface of the bath does. It may run either way round.
type Profile struct {
	start Point
	steps []step
}

// A step is one segment: a line to end, an arc through via to end, or a
// quarter ellipse to end.
type step struct {
	arc, oval, flat bool
	via, end        Point
}

// NewProfile returns a profile that starts at a point.
func NewProfile(start Point) Profile { return Profile{start: start} }

// LineTo returns the profile lengthened by straight lines to each point in turn.
func (p Profile) LineTo(points ...Point) Profile {
	for _, q := range points {
		p = p.with(step{end: q})
	}
	return p
}

// ArcVia returns the profile lengthened by the arc of a circle that passes
// through one point and ends at another.
func (p Profile) ArcVia(via, end Point) Profile { return p.with(step{arc: true, via: via, end: end}) }

// ArcAround returns the profile lengthened by an arc about a centre, turned
// by a number of degrees, counted from the R axis towards the Z axis: from the
// lowest point of a circle to the highest, on the outside, is +180. An arc of
// 360 degrees or more is refused by Solve; draw a full circle as two arcs.
func (p Profile) ArcAround(centre Point, degrees float64) Profile {
	from := p.End()
	turn := func(deg float64) Point {
		sin, cos := math.Sincos(deg * math.Pi / 180)
		dr, dz := float64(from.R-centre.R), float64(from.Z-centre.Z)
		return Point{centre.R + units.Length(dr*cos-dz*sin), centre.Z + units.Length(dr*sin+dz*cos)}
	}
	if !(math.Abs(degrees) < 360) { // also NaN
		nan := units.Length(math.NaN())
		return p.ArcVia(Point{nan, nan}, Point{nan, nan})
	}
	end := turn(degrees)
	if math.Abs(float64(end.R)) < 1e-14*math.Abs(float64(from.R-centre.R))+1e-14*math.Abs(float64(from.Z-centre.Z)) {
		end.R = 0 // meant to end on the axis
	}
	return p.ArcVia(turn(degrees/2), end)
}

// CapTo returns the profile lengthened by the shorter arc of a circle about a
// point of the axis: part of a ball. It meets the axis squarely, without a tip.
func (p Profile) CapTo(end Point) Profile {
	from := p.End()
	r1, z1, r2, z2 := float64(from.R), float64(from.Z), float64(end.R), float64(end.Z)
	centre := z1 + (r2*r2+(z2-z1)*(z2-z1)-r1*r1)/(2*(z2-z1))
	radius := math.Hypot(r1, z1-centre)
	mid := 0.5 * (math.Atan2(z1-centre, r1) + math.Atan2(z2-centre, r2))
	sin, cos := math.Sincos(mid)
	return p.ArcVia(Point{units.Length(radius * cos), units.Length(centre + radius*sin)}, end)
}

// OvalAcross returns the profile lengthened by a quarter of an ellipse that
// sets out along R and arrives at a point along Z, as the lower half of a bead
// does from the axis.
func (p Profile) OvalAcross(end Point) Profile {
	return p.with(step{oval: true, flat: true, end: end})
}

// OvalUp returns the profile lengthened by a quarter of an ellipse that sets
// out along Z and arrives at a point along R, as the upper half of a bead does.
func (p Profile) OvalUp(end Point) Profile { return p.with(step{oval: true, end: end}) }

// with copies the steps, so that profiles with a common beginning stay apart.
func (p Profile) with(s step) Profile {
	p.steps = append(append(make([]step, 0, len(p.steps)+1), p.steps...), s)
	return p
}

// Start returns the first point.
func (p Profile) Start() Point { return p.start }

// End returns the last point.
func (p Profile) End() Point {
	if len(p.steps) == 0 {
		return p.start
	}
	return p.steps[len(p.steps)-1].end
}

// Segments returns the number of lines and arcs.
func (p Profile) Segments() int { return len(p.steps) }

// Length returns the length of the profile along its lines and arcs, and 0
// for one that [Profile.Check] refuses.
func (p Profile) Length() units.Length {
	sum := 0.0
	for _, c := range p.curves() {
		sum += c.length
	}
	return units.Length(sum)
}

// Area returns the area of the surface of revolution, and 0 for a profile
// that [Profile.Check] refuses.
//
//	A = Σ 2π ∫ r ds  over lines and arcs
//
// Exact to rounding: each line and arc has its closed form.
//
// Source: [Geometry].
func (p Profile) Area() units.Area {
	sum := 0.0
	for _, c := range p.curves() {
		sum += 2 * math.Pi * c.moment(0, c.length)
	}
	return units.Area(sum)
}

// Place returns the point at an arc length from the start, held to the ends.
func (p Profile) Place(s units.Length) Point {
	cs := p.curves()
	if len(cs) == 0 {
		return p.start
	}
	rest := float64(s)
	for i, c := range cs {
		if rest <= c.length || i == len(cs)-1 {
			q := c.at(c.fromTrue(rest))
			return Point{units.Length(q.r), units.Length(q.z)}
		}
		rest -= c.length
	}
	return p.End()
}

// Corner returns the arc length at which segment i (from 0) starts; with i
// the number of segments, the whole length. Use it to mark stretches.
func (p Profile) Corner(i int) units.Length {
	sum := 0.0
	for k, c := range p.curves() {
		if k >= i {
			break
		}
		sum += c.length
	}
	return units.Length(sum)
}

// curves returns the geometry of all segments, nil when one is broken.
func (p Profile) curves() []curve {
	cs, err := p.trace("profile")
	if err != nil {
		return nil
	}
	return cs
}

// Check returns a [*units.ValueError] for a coordinate that is not finite, a
// negative R, a segment without length, an arc without a radius, a segment that
// dips below the axis, and for a profile that is empty, crosses or touches itself,
// or has more than 2000 segments.
func (p Profile) Check() error { return p.check("profile") }

// mostSegments is how many lines and arcs a profile may have. The solver takes
// some forty corners; a chain of short lines for a curve wants an arc instead.
const mostSegments = 2000

func (p Profile) check(name string) error {
	if n := len(p.steps); n > mostSegments {
		return &units.ValueError{Field: name, Value: fmt.Sprintf("%d segments", n),
			Need: fmt.Sprintf("at most %d, with arcs for curves", mostSegments), Err: current.ErrTooLarge}
	}
	cs, err := p.trace(name)
	if err != nil {
		return err
	}
	from := p.start
	for i, s := range p.steps {
		if s.oval && (!s.flat && from.R == 0 || s.flat && s.end.R == 0) {
			return &units.ValueError{Field: fmt.Sprintf("%s, segment %d", name, i),
				Value: "a quarter ellipse that meets the axis along it",
				Need:  "one that meets the axis squarely: at a needle's tip the current density is infinite",
				Err:   ErrProfile}
		}
		from = s.end
	}
	closed := p.closed()
	for i := range cs {
		for k := i + 1; k < len(cs); k++ {
			joined := k == i+1
			wraps := closed && i == 0 && k == len(cs)-1
			if at, bad := meet(cs[i], cs[k], joined, wraps); bad {
				return &units.ValueError{Field: fmt.Sprintf("%s, segments %d and %d", name, i, k), Value: at.String(),
					Need: "a profile that does not cross or touch itself", Err: ErrCrossing}
			}
		}
	}
	return nil
}

// closed tells a profile that ends where it started.
func (p Profile) closed() bool {
	q := p.End()
	tiny := 1e-12 * (math.Abs(float64(q.R)) + math.Abs(float64(q.Z)))
	return len(p.steps) > 1 && math.Hypot(float64(q.R-p.start.R), float64(q.Z-p.start.Z)) <= tiny
}

// String returns the point as (R, Z).
func (p Point) String() string { return "(" + p.R.String() + ", " + p.Z.String() + ")" }
