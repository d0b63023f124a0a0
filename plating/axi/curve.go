package axi

import (
	"fmt"
	"math"
	"math/cmplx"

	"example.com/laydown/units"
)

// A vec is a point or direction in the half plane, in plain numbers.
type vec struct{ r, z float64 }

// The usual operations in the plane; the cross product is positive when the turn from a to
// b goes from R towards Z.
func (a vec) minus(b vec) vec     { return vec{a.r - b.r, a.z - b.z} }
func (a vec) dot(b vec) float64   { return a.r*b.r + a.z*b.z }
func (a vec) norm() float64       { return math.Hypot(a.r, a.z) }
func (a vec) cross(b vec) float64 { return a.r*b.z - a.z*b.r }

// String returns the place in metres.
func (a vec) String() string { return Point{units.Length(a.r), units.Length(a.z)}.String() }

// A curve is one line or arc of a profile with its arc length.
type curve struct {
	arc    bool
	a, b   vec
	length float64
	// Of an arc: centre, radius, angle of a, and +1 when the angle grows.
	centre      vec
	radius      float64
	angle, turn float64
	// Of a quarter ellipse: centre, angle and turn as above, half axes.
	oval bool
	semi vec
}

// trace turns the steps of a profile into curves and refuses broken ones.
func (p Profile) trace(name string) ([]curve, error) {
	if len(p.steps) == 0 {
		return nil, &units.ValueError{Field: name, Value: "empty", Need: "at least one line or arc", Err: ErrProfile}
	}
	if err := checkPoint(name+", start", p.start); err != nil {
		return nil, err
	}
	cs := make([]curve, len(p.steps))
	from := p.start
	for i, s := range p.steps {
		field := fmt.Sprintf("%s, segment %d", name, i)
		if err := checkPoint(field, s.end); err != nil {
			return nil, err
		}
		a, b := vec{float64(from.R), float64(from.Z)}, vec{float64(s.end.R), float64(s.end.Z)}
		c := curve{a: a, b: b, length: b.minus(a).norm()}
		if s.oval {
			var ok bool
			if c, ok = ovalFrom(a, b, s.flat); !ok {
				return nil, &units.ValueError{Field: field, Value: "a quarter ellipse without width or height",
					Need: "points that differ in R and in Z", Err: ErrProfile}
			}
		}
		if s.arc {
			if err := checkPoint(field, s.via); err != nil {
				return nil, err
			}
			var ok bool
			if c, ok = arcThrough(a, vec{float64(s.via.R), float64(s.via.Z)}, b); !ok {
				return nil, &units.ValueError{Field: field,
					Value: "an arc through points on one line or too close together",
					Need:  "three points of a circle", Err: ErrProfile}
			}
			if c.lowest() < -1e-12*c.radius {
				return nil, &units.ValueError{Field: field, Value: "an arc that dips below the axis",
					Need: "R of zero or more all along", Err: units.ErrNegative}
			}
		}
		if size := math.Max(a.norm(), b.norm()); !(c.length > 1e-9*size) {
			return nil, &units.ValueError{Field: field, Value: "length " + units.Length(c.length).String(),
				Need: "two different points", Err: units.ErrNotPositive}
		}
		if a.r == 0 && b.r == 0 && !c.arc && !c.oval {
			return nil, &units.ValueError{Field: field, Value: "a line along the axis",
				Need: "a line that has a surface when turned", Err: ErrProfile}
		}
		cs[i], from = c, s.end
	}
	return cs, nil
}

// checkPoint wants finite coordinates within 1000 km and R of zero or more: a larger figure
// is a slip of the unit.
func checkPoint(field string, p Point) error {
	if err := units.NonNegative(field+", R", p.R); err != nil {
		return err
	}
	if err := units.Finite(field+", Z", p.Z); err != nil {
		return err
	}
	if math.Max(float64(p.R), math.Abs(float64(p.Z))) > 1e6 {
		return &units.ValueError{Field: field, Value: p.String(), Need: "coordinates within 1000 km",
			Err: units.ErrOutOfRange}
	}
	return nil
}

// arcThrough returns the arc from a through v to b, and false for three points on one line.
//
// With p = v - a and q = b - a the centre is where the bisectors meet:
//
//	centre = a + ( |p|² q_z - |q|² p_z, |q|² p_r - |p|² q_r ) / (2 p×q)
//
// The sign of p×q is the sense of travel. Points count as on one line when p×q is below
// 1e-9 of |p||q|.
func arcThrough(a, v, b vec) (curve, bool) {
	p, q := v.minus(a), b.minus(a)
	w := 2 * p.cross(q)
	size := p.norm() * q.norm()
	if !(math.Abs(w) > 1e-9*size) {
		return curve{}, false
	}
	pp, qq := p.dot(p), q.dot(q)
	centre := vec{a.r + (pp*q.z-qq*p.z)/w, a.z + (qq*p.r-pp*q.r)/w}
	c := curve{arc: true, a: a, b: b, centre: centre, radius: a.minus(centre).norm(), turn: 1}
	c.angle = math.Atan2(a.z-centre.z, a.r-centre.r)
	if w < 0 {
		c.turn = -1
	}
	sweep := c.turn * (math.Atan2(b.z-centre.z, b.r-centre.r) - c.angle)
	if sweep <= 0 {
		sweep += 2 * math.Pi
	}
	c.length = sweep * c.radius
	return c, true
}

// curved tells arcs and ovals from lines.
func (c curve) curved() bool { return c.arc || c.oval }

// at returns the point at s, the arc length (of an oval, see there).
func (c curve) at(s float64) vec {
	switch {
	case s <= 0:
		return c.a
	case s >= c.length:
		return c.b
	case c.oval:
		return c.ovalAt(s)
	case !c.arc:
		f := s / c.length
		return vec{math.Max(0, c.a.r+f*(c.b.r-c.a.r)), c.a.z + f*(c.b.z-c.a.z)}
	}
	sin, cos := math.Sincos(c.angle + c.turn*s/c.radius)
	return vec{math.Max(0, c.centre.r+c.radius*cos), c.centre.z + c.radius*sin}
}

// along returns the unit direction of travel at arc length s.
func (c curve) along(s float64) vec {
	if c.oval {
		t := c.ovalAlong(s)
		return vec{t.r / t.norm(), t.z / t.norm()}
	}
	if !c.arc {
		d := c.b.minus(c.a)
		return vec{d.r / c.length, d.z / c.length}
	}
	sin, cos := math.Sincos(c.angle + c.turn*s/c.radius)
	return vec{-c.turn * sin, c.turn * cos}
}

// lowest returns the least R on the arc.
func (c curve) lowest() float64 {
	low := math.Min(c.a.r, c.b.r)
	if s := c.param(math.Pi); s > 0 && s < c.length {
		low = math.Min(low, c.centre.r-c.radius)
	}
	return low
}

// param returns the arc length at a polar angle about the centre, counted so
// that it lies as near to the arc's middle as turns allow.
func (c curve) param(theta float64) float64 {
	half := 0.5 * c.length / c.radius
	d := c.turn*(theta-c.angle) - half
	d -= 2 * math.Pi * math.Round(d/(2*math.Pi))
	return (half + d) * c.radius
}

// moment returns ∫ r ds from s0 to s1.
//
// Times 2π it is the area of the surface of revolution, by Pappus's rule for lines and in
// closed form for arcs:
//
//	line  ½ (r₀ + r₁) (s₁ - s₀)
//	arc   r_c (s₁ - s₀) + R² (sin θ₁ - sin θ₀) · sense of travel
func (c curve) moment(s0, s1 float64) float64 {
	if c.oval {
		return c.sumUp(s0, s1, func(s float64) float64 { return c.at(s).r })
	}
	if !c.arc {
		return 0.5 * (c.at(s0).r + c.at(s1).r) * (s1 - s0)
	}
	sin0 := math.Sin(c.angle + c.turn*s0/c.radius)
	sin1 := math.Sin(c.angle + c.turn*s1/c.radius)
	return c.centre.r*(s1-s0) + c.turn*c.radius*c.radius*(sin1-sin0)
}

// preimage returns the complex arc length at which |x-y(s)|² vanishes when the curve is
// continued into the complex plane.
//
//	line  s = (x-a)·t + i |(x-a)×t|
//	arc   s = R (θ_x + i |ln(ρ/R)|), with ρ, θ_x the polar coordinates of x about the centre
//
// There the kernels have their singular point. How near it lies to the stretch of a panel
// says how many points an integral needs. The real part is that of the nearest point.
func (c curve) preimage(x vec) complex128 {
	if c.oval {
		return c.ovalPreimage(x)
	}
	if !c.arc {
		d, t := x.minus(c.a), c.along(0)
		return complex(d.dot(t), math.Abs(t.cross(d)))
	}
	d := x.minus(c.centre)
	rho := math.Max(d.norm(), 1e-12*c.radius)
	return complex(c.param(math.Atan2(d.z, d.r)), c.radius*math.Abs(math.Log(rho/c.radius)))
}

// nearest returns the distance from x to the stretch s0 to s1.
func (c curve) nearest(x vec, s0, s1 float64) float64 {
	s := real(c.preimage(x))
	d := math.Min(x.minus(c.at(s0)).norm(), x.minus(c.at(s1)).norm())
	if s > s0 && s < s1 {
		d = math.Min(d, x.minus(c.at(s)).norm())
	}
	return d
}

// scaled returns the curve in units of size, so that tolerances may be plain numbers.
func (c curve) scaled(size float64) curve {
	f := 1 / size
	by := func(v vec) vec { return vec{v.r * f, v.z * f} }
	c.a, c.b, c.centre, c.semi = by(c.a), by(c.b), by(c.centre), by(c.semi)
	c.length, c.radius = c.length*f, c.radius*f
	return c
}

// ellipse returns the half sum of the axes, over half the distance of the foci, of the
// ellipse with foci at 0 and 1 that passes through t.
//
//	ρ = σ + √(σ² - 1),  σ = |t| + |t-1|
//
// It is the rate at which Gauss's rule on [0, 1] gains digits for a function whose nearest
// singular point is t: the error goes like ρ^-2n. On the stretch itself ρ is 1.
func ellipse(t complex128) float64 {
	s := cmplx.Abs(t) + cmplx.Abs(t-1)
	if s <= 1 {
		return 1
	}
	return s + math.Sqrt(s*s-1)
}
