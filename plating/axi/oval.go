package axi

import (
	"math"
	"math/cmplx"
)

// An oval is a quarter of an ellipse with axes along R and Z. Its parameter s
// is proportional to the eccentric angle, from 0 to the true length; speed is
// the true length a unit of it stands for.

// ovalFrom returns the quarter ellipse from a to b that sets out along R when
// flat, and along Z otherwise.
//
//	r = r_c + a cos θ,  z = z_c + b sin θ
//
// The half axes are the differences of the end points; a quarter flatter than 1e-9 is
// refused.
func ovalFrom(a, b vec, flat bool) (curve, bool) {
	c := curve{oval: true, a: a, b: b, semi: vec{math.Abs(b.r - a.r), math.Abs(b.z - a.z)}}
	c.centre = vec{a.r, b.z}
	if !flat {
		c.centre = vec{b.r, a.z}
	}
	if !(c.semi.r > 1e-9*c.semi.z && c.semi.z > 1e-9*c.semi.r) {
		return c, false
	}
	c.angle = math.Atan2(a.z-c.centre.z, a.r-c.centre.r)
	c.turn = 1
	if a.minus(c.centre).cross(b.minus(c.centre)) < 0 {
		c.turn = -1
	}
	c.length = 1
	c.length = c.trueLength(0, 1)
	return c, true
}

// theta returns the eccentric angle at s, from 0 to a quarter turn.
func (c curve) theta(s float64) float64 { return c.angle + c.turn*s*math.Pi/2/c.length }

// ovalAt returns the point at s.
func (c curve) ovalAt(s float64) vec {
	sin, cos := math.Sincos(c.theta(s))
	return vec{math.Max(0, c.centre.r+c.semi.r*cos), c.centre.z + c.semi.z*sin}
}

// ovalAlong returns the direction of travel at s, not of unit length, per radian.
func (c curve) ovalAlong(s float64) vec {
	sin, cos := math.Sincos(c.theta(s))
	return vec{-c.turn * c.semi.r * sin, c.turn * c.semi.z * cos}
}

// speed returns the true length over the change of s; 1 but for ovals.
func (c curve) speed(s float64) float64 {
	if !c.oval {
		return 1
	}
	return c.ovalAlong(s).norm() * math.Pi / 2 / c.length
}

// trueLength returns the length of the curve from s0 to s1.
func (c curve) trueLength(s0, s1 float64) float64 {
	return c.sumUp(s0, s1, func(float64) float64 { return 1 })
}

// sumUp integrates f over the true length from s0 to s1.
//
// The speed √(a² sin²θ + b² cos²θ) has its singular points next to the sharp end, for b < a
// at a distance of artanh(b/a) in θ. Twelve stretches shrink by 0.4 towards each end of the
// quarter, either of which may be the sharp one, with 24 points each.
func (c curve) sumUp(s0, s1 float64, f func(s float64) float64) float64 {
	if !c.oval {
		return 0
	}
	r := gauss(24)
	sum := 0.0
	const cuts = 12 // both ends of the quarter may be the sharp one
	for k := range 2 * cuts {
		edge := func(k int) float64 {
			if k <= cuts {
				return 0.5 * math.Pow(0.4, float64(cuts-k)) * c.length * math.Min(1, float64(k))
			}
			return c.length * (1 - 0.5*math.Pow(0.4, float64(k-cuts))*math.Min(1, float64(2*cuts-k)))
		}
		a, b := math.Max(edge(k), s0), math.Min(edge(k+1), s1)
		if a >= b {
			continue
		}
		for i, x := range r.x {
			s := a + (b-a)*x
			sum += r.w[i] * (b - a) * c.speed(s) * f(s)
		}
	}
	return sum
}

// fromTrue returns s at a true length from the start, by halving: true length grows with s.
func (c curve) fromTrue(long float64) float64 {
	if !c.oval || long <= 0 || long >= c.length {
		return math.Min(math.Max(long, 0), c.length)
	}
	lo, hi := 0.0, c.length
	for range 60 {
		mid := 0.5 * (lo + hi)
		if c.trueLength(0, mid) < long {
			lo = mid
		} else {
			hi = mid
		}
	}
	return 0.5 * (lo + hi)
}

// toTrue returns the true length from the start to s.
func (c curve) toTrue(s float64) float64 {
	if !c.oval || s <= 0 || s >= c.length {
		return math.Min(math.Max(s, 0), c.length)
	}
	return c.trueLength(0, s)
}

// ovalPreimage returns the complex s at which the distance to x vanishes: the
// root nearest to the real stretch of
//
//	(a∓b) w² - 2 (X ∓ iZ) w + (a±b) = 0,  w = exp(iθ)
func (c curve) ovalPreimage(x vec) complex128 {
	d := x.minus(c.centre)
	best, least := complex(0, 1e9), math.Inf(1)
	for _, sign := range []float64{1, -1} {
		a, b := complex(c.semi.r-sign*c.semi.z, 0), complex(d.r, -sign*d.z)
		e := complex(c.semi.r+sign*c.semi.z, 0)
		q := cmplx.Sqrt(b*b - a*e)
		for _, w := range []complex128{e / (b + q), e / (b - q)} { // the quotient form bears a = 0
			if w == 0 || cmplx.IsNaN(w) || cmplx.IsInf(w) {
				continue
			}
			th := cmplx.Log(w) * -1i
			half := math.Pi / 4
			turn := c.turn*(real(th)-c.angle) - half
			turn -= 2 * math.Pi * math.Round(turn/(2*math.Pi))
			s := complex(half+turn, imag(th)) * complex(c.length*2/math.Pi, 0)
			off := math.Max(math.Abs(turn)-half, 0)
			if far := math.Hypot(off, imag(th)); far < least {
				best, least = s, far
			}
		}
	}
	return best
}

// ovalChord returns the vector from the point at u to that at u + ds, from the half
// difference of the eccentric angles, so that a short chord keeps its digits.
func (c curve) ovalChord(u, ds float64) vec {
	half := ds * math.Pi / 4 / c.length
	sin, cos := math.Sincos(c.theta(u + ds/2))
	f := 2 * math.Sin(half) * c.turn
	return vec{-f * c.semi.r * sin, f * c.semi.z * cos}
}

// lines cuts an oval into 64 chords, for the search of crossings. They lie inside the
// ellipse by less than 1e-4 of its larger half axis.
func (c curve) lines() []curve {
	const n = 64
	out := make([]curve, n)
	for k := range out {
		a, b := c.at(c.length*float64(k)/n), c.at(c.length*float64(k+1)/n)
		out[k] = curve{a: a, b: b, length: b.minus(a).norm()}
	}
	return out
}

// bends adds cuts to a list so that no panel is longer, in eccentric angle,
// than its middle is from the places where the ellipse continued into the
// complex plane has its singular points: next to its sharp end.
func (c curve) bends(at []float64) []float64 {
	flat := math.Min(c.semi.r, c.semi.z) / math.Max(c.semi.r, c.semi.z)
	tip := 0.0 // angle of the sharp end
	if c.semi.z > c.semi.r {
		tip = math.Pi / 2
	}
	depth := math.Min(math.Atanh(math.Min(flat, 0.999)), 1)
	out := at[:1:1]
	var cut func(a, b float64)
	cut = func(a, b float64) {
		mid := 0.5 * (a + b)
		off := math.Abs(math.Remainder(c.theta(mid)-tip, math.Pi))
		if (b-a)/c.length*math.Pi/2 > math.Hypot(off, depth) {
			cut(a, mid)
			cut(mid, b)
			return
		}
		out = append(out, b)
	}
	for k := 1; k < len(at); k++ {
		cut(at[k-1], at[k])
	}
	return out
}
