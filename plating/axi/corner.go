package axi

import (
	"math"

	"example.com/laydown/plating/current"
)

// A corner says how the mesh must shrink towards an end of a piece.
type corner struct {
	grade    grade
	power    int     // s = h·t^power next to the end makes the solution smooth in t
	beside   float64 // length of the piece beyond the corner
	exponent float64 // of a primary current density in the distance from the corner
}

// A grade says how much the mesh must shrink towards an end of a piece.
type grade uint8

const (
	regular grade = iota // the solution goes on smoothly, as in a mirror
	mild                 // a smooth joint where the curvature jumps
	sharp                // an edge
)

// joinCorners finds the neighbour of each end of each piece and the angle
// that the bath fills there.
func (m *model) joinCorners() {
	m.joint = make([][2]joint, len(m.pieces))
	for i := range m.pieces {
		for e := range 2 {
			m.joint[i][e] = joint{-1, 0}
			m.pieces[i].ends[e] = m.corner(i, e)
		}
	}
}

// A joint is an end of another piece.
type joint struct{ piece, end int }

// tip returns the place of an end of a piece and the direction into it.
func (p piece) tip(e int) (at, into vec) {
	if e == 0 {
		return p.c.at(p.s0), p.c.along(p.s0)
	}
	t := p.c.along(p.s1)
	return p.c.at(p.s1), vec{-t.r, -t.z}
}

// corner looks at an end of a piece: what meets it there, and the angle that the bath
// fills.
//
//	on the axis, squarely        regular: the surface goes on beyond the axis as in a mirror
//	on the axis, at a slant      a pointed tip or pit
//	at another piece             by the angle between them and by what both do: gradeOf
//	free, of a sheet             a rim: the bath fills all but the sheet, flux as s^(-1/2)
//	else on the floor            by the angle to the floor, which insulates
//
// u and v are the directions into the two pieces, n the normal out of the bath. The angle
// between u and v is that of the bath when v points away from n, else the full turn less
// it.
func (m *model) corner(i, e int) corner {
	p := m.pieces[i]
	at, u := p.tip(e)
	n := p.normal([2]float64{p.s0, p.s1}[e])
	own := m.role(p)
	if at.r < 1e-9 {
		if math.Abs(u.z) < 1e-9 {
			return corner{grade: regular, power: 1}
		}
		return corner{grade: sharp, power: 3, beside: p.s1 - p.s0} // a pointed tip
	}
	for k := range m.pieces {
		for f := range 2 {
			q, v := m.pieces[k].tip(f)
			if k == i && f == e || q.minus(at).norm() > 2e-9 {
				continue
			}
			o := m.pieces[k]
			m.joint[i][e] = joint{k, f}
			angle := math.Atan2(math.Abs(u.cross(v)), u.dot(v))
			if v.dot(n) > 0 {
				angle = 2*math.Pi - angle
			}
			c := gradeOf(angle, own, m.role(o), p.c.curved() || o.c.curved())
			c.beside = o.s1 - o.s0
			return c
		}
	}
	long := p.s1 - p.s0
	switch {
	case p.sheet && m.mirror && at.z == 0: // the rim of a sheet on the floor
		return corner{grade: sharp, power: 2, beside: long, exponent: -0.5}
	case p.sheet:
		return corner{grade: sharp, power: 2, beside: long, exponent: -0.5}
	}
	floor := vec{1, 0}
	if n.r > 0 {
		floor.r = -1
	}
	c := gradeOf(math.Acos(u.dot(floor)), own, insulates, p.c.curved())
	c.beside = long
	return c
}

// A role is what matters of a surface at a corner.
type role uint8

const (
	insulates role = iota
	polarises
	primary
)

// role returns what a piece does at a corner. Kinetics of any law bound the current
// density: close enough to an edge they act as an insulator does, and the flux stays
// finite.
func (m *model) role(p piece) role {
	switch {
	case p.kind == current.Insulator:
		return insulates
	case m.surfaces[p.owner].law.Model == current.Primary:
		return primary
	}
	return polarises
}

// gradeOf looks at the exponents of the potential next to a corner that the bath fills with
// an angle w.
//
//	φ - φ₀ ~ s^α, s^2α ...,  α = π/w      both sides of one role
//	                         α = π/(2w)   a fixed potential beside any other
//	i ~ s^(α-1)                           on a primary side
//
//	s  distance from the corner
//	w  0 < w ≤ 2π [rad]
//
// The power n makes n·α whole, for then s ∝ t^n turns the potential into a power series in
// t: 3 at the outer edge of a cylinder (w = 3π/2, α = 2/3), 2 at the rim of a sheet (w =
// 2π, α = 1/2). Powers up to 4 are tried; where none fits, at odd angles, 3 smooths most of
// it and the grading does the rest. A right angle with an insulator is regular, since the
// insulator is a mirror.
func gradeOf(w float64, a, b role, curved bool) corner {
	alpha := math.Pi / w
	mixed := a != b && (a == primary || b == primary)
	if mixed {
		alpha /= 2
	}
	straight := math.Abs(w-math.Pi) < 1e-7
	right := math.Abs(w-math.Pi/2) < 1e-7
	switch {
	case straight && a == b && !curved:
		return corner{grade: regular, power: 1}
	case straight && a == b:
		return corner{grade: mild, power: 1}
	case straight && !mixed:
		return corner{grade: sharp, power: 2}
	case right && !curved && (a == insulates || b == insulates || a == primary && b == primary):
		return corner{grade: regular, power: 1, exponent: alpha - 1}
	}
	for power := 2; power <= 4; power++ {
		x := alpha * float64(power)
		if whole := math.Round(x); whole >= 1 && math.Abs(x-whole) < 1e-6 {
			return corner{grade: sharp, power: power, exponent: alpha - 1}
		}
	}
	return corner{grade: sharp, power: 3, exponent: alpha - 1}
}
