package axi

import (
	"math"
	"math/cmplx"
)

// A panel is a stretch of a piece with its own polynomial. Its parameter t
// runs from 0 to 1; next to an edge the arc length is a power of t, so that
// the solution there is smooth in t.
//
//	s = s_a + h t^n  from an edge at t = 0,  s = s_b - h (1-t)^n  from one at t = 1
//
//	h  length s_b - s_a
//	n  power, 1 for a panel that touches no edge
type panel struct {
	piece  int
	sa, sb float64
	power  int // 1: s is linear in t
	end    int // the end the power belongs to: 0 at sa, 1 at sb
	first  int // index of its first node
}

// s returns the arc length at t and ds/dt.
func (p panel) s(t float64) (s, rate float64) {
	h := p.sb - p.sa
	if p.power == 1 {
		return p.sa + h*t, h
	}
	if p.end == 0 {
		f := math.Pow(t, float64(p.power-1))
		return p.sa + h*f*t, h * float64(p.power) * f
	}
	f := math.Pow(1-t, float64(p.power-1))
	return p.sb - h*f*(1-t), h * float64(p.power) * f
}

// t is the inverse of s, also for complex arc lengths.
func (p panel) t(s complex128) complex128 {
	h := complex(p.sb-p.sa, 0)
	switch {
	case p.power == 1:
		return (s - complex(p.sa, 0)) / h
	case p.end == 0:
		return cmplx.Pow((s-complex(p.sa, 0))/h, complex(1/float64(p.power), 0))
	}
	return 1 - cmplx.Pow((complex(p.sb, 0)-s)/h, complex(1/float64(p.power), 0))
}

// between returns s(t) - s(u) without cancellation: t^n - u^n = (t-u)(t^(n-1) + t^(n-2) u +
// ... ), where no term is negative.
func (p panel) between(t, u float64) float64 {
	h := p.sb - p.sa
	if p.power == 1 {
		return h * (t - u)
	}
	d := t - u
	if p.end == 1 {
		t, u = 1-t, 1-u
	}
	sum, f := 0.0, 1.0
	for range p.power { // tⁿ-uⁿ = (t-u)(tⁿ⁻¹ + tⁿ⁻²u + ...)
		sum = sum*u + f
		f *= t
	}
	return h * d * sum
}

// far returns the arc length between t and an end of the piece, as exact next
// to that end as the corner needs.
func (p panel) far(pc piece, t float64, end int) float64 {
	s, _ := p.s(t)
	switch {
	case end == 0 && p.sa == pc.s0:
		return p.between(t, 0)
	case end == 1 && p.sb == pc.s1:
		return p.between(1, t)
	case end == 0:
		return s - pc.s0
	}
	return pc.s1 - s
}

// reach returns the vector from an end of the piece to the point at a
// distance along it, without cancellation.
func (p piece) reach(end int, dist float64) vec {
	t, chord := p.c.along(p.s0+dist/2), dist
	if end == 1 {
		t = p.c.along(p.s1 - dist/2)
		t = vec{-t.r, -t.z}
	}
	if p.c.oval {
		if end == 0 {
			return p.c.ovalChord(p.s0, dist)
		}
		return p.c.ovalChord(p.s1, -dist)
	}
	if p.c.arc {
		chord = 2 * p.c.radius * math.Sin(dist/2/p.c.radius)
	}
	return vec{t.r * chord, t.z * chord}
}

// A rule is Gauss's rule on [0, 1]; bary are the barycentric weights of its points.
type rule struct{ x, w, bary []float64 }

// gauss computes Gauss's rule by Newton's method on the Legendre polynomial.
//
//	x_i  roots of P_n, from cos(π (i - 1/4)/(n + 1/2)) on
//	w_i = 2 / ((1 - x_i²) P_n'(x_i)²)
//	b_i = (-1)^i √((1 - x_i²) w_i)
//
//	b  barycentric weights of the roots, for interpolation; a common factor is of no account
//
// They hold on [-1, 1]; x and w are then moved to [0, 1].
//
// gonum's quad.Legendre would serve, but its rule of 26 points does not sum to one in the
// version used here (v0.17.0); a test holds this one to its moments.
//
// Source: [DLMF], 3.5(v).
func gauss(n int) rule {
	r := rule{x: make([]float64, n), w: make([]float64, n), bary: make([]float64, n)}
	for i := range n {
		x := -math.Cos(math.Pi * (float64(i) + 0.75) / (float64(n) + 0.5))
		slope := 1.0
		for range 8 { // converged after five; the slope then is that of x itself
			p, before := 1.0, 0.0
			for k := range n {
				p, before = ((2*float64(k)+1)*x*p-float64(k)*before)/float64(k+1), p
			}
			slope = float64(n) * (x*p - before) / (x*x - 1)
			x -= p / slope
		}
		r.x[i], r.w[i] = 0.5*(1+x), 1/((1-x*x)*slope*slope)
		r.bary[i] = math.Sqrt((1 - x*x) * r.w[i])
		if i%2 == 1 {
			r.bary[i] = -r.bary[i]
		}
	}
	return r
}

// basis fills out with the values at t of the polynomials that are 1 at one point of the
// rule and 0 at the others, in barycentric form:
//
//	l_i(t) = (b_i/(t-x_i)) / Σ_k b_k/(t-x_k)
//
// It is stable between the points, and exact at them.
func (r rule) basis(t float64, out []float64) {
	sum := 0.0
	for i, x := range r.x {
		d := t - x
		if d == 0 {
			for k := range out {
				out[k] = 0
			}
			out[i] = 1
			return
		}
		out[i] = r.bary[i] / d
		sum += out[i]
	}
	f := 1 / sum
	for i := range out {
		out[i] *= f
	}
}

// at returns the polynomial through values at the points of the rule.
func (r rule) at(t float64, values []float64) float64 {
	num, den := 0.0, 0.0
	for i, x := range r.x {
		d := t - x
		if d == 0 {
			return values[i]
		}
		f := r.bary[i] / d
		num += f * values[i]
		den += f
	}
	return num / den
}

// A node is a point of a panel where the equation is met: a Gauss point, never an end. So
// no node lies in a corner, where the normal has no direction.
type node struct {
	at, n  vec
	s, t   float64
	rate   float64 // true length over t
	ring   float64 // 2π r ds: the area it stands for
	panel  int
	weight float64 // of the panel's rule
	from   [2]vec  // from the ends of its piece
}

// A mesh is all panels with their nodes.
type mesh struct {
	m      *model
	rule   rule
	panels []panel
	nodes  []node
}

// place makes the nodes.
func (ms *mesh) place() {
	for i := range ms.panels {
		p := &ms.panels[i]
		pc := ms.m.pieces[p.piece]
		p.first = len(ms.nodes)
		for k, t := range ms.rule.x {
			s, rate := p.s(t)
			at := pc.c.at(s)
			rate *= pc.c.speed(s)
			ms.nodes = append(ms.nodes, node{at: at, n: pc.normal(s), s: s, t: t, rate: rate,
				ring: 2 * math.Pi * at.r * rate * ms.rule.w[k], panel: i, weight: ms.rule.w[k],
				from: [2]vec{pc.reach(0, p.far(pc, t, 0)), pc.reach(1, p.far(pc, t, 1))}})
		}
	}
}

func (ms *mesh) piece(n node) piece { return ms.m.pieces[ms.panels[n.panel].piece] }

// rate returns the true length over t at t of a panel.
func (ms *mesh) rate(p panel, t float64) float64 {
	s, rate := p.s(t)
	return rate * ms.m.pieces[p.piece].c.speed(s)
}
