package axi

import (
	"context"
	"math"
	"runtime"
	"sync"
	"sync/atomic"
)

// precision is the relative error that the quadrature over each panel aims at: low enough
// that the panels, not their integrals, set the error of a solution.
const precision = 1e-12

// An operator is the boundary equation in discrete form. Row i is the equation at node i,
// the collocation point x_i:
//
//	c_i φ_i + Σ_j H_ij φ_j = Σ_j G_ij q_j + w φ∞
//	G_ij = (ds/dt)_j ∫ g(x_i, y(t)) l_j(t) dt
//	H_ij = ∫ h(x_i, y(t)) l_j(t) (ds/dt) dt
//	c_i  = w - Σ_j H_ij
//
//	φ, q  potential [V] and flux ∂φ/∂n [V/size] at the nodes
//	g, h  kernels of the single and the double layer on a ring: see ring
//	l_j   polynomial in t that is 1 at node j and 0 at the other nodes of its panel
//	w     1 in a bath without vessel, 0 in a vessel: the weight of φ∞
//
// G interpolates q ds/dt, not q: next to an edge q is infinite, the product is smooth. c is
// the share of the full solid angle that the bath fills at x, a half on a smooth wall.
// Taken from the row sum instead, a constant potential without flux solves the equations
// exactly, and the error of the quadrature shows as c - 1/2.
type operator struct {
	n    int
	g, h []float64 // by rows
	c    []float64
}

// row returns row i of g or h, n long.
func (op *operator) row(m []float64, i int) []float64 { return m[i*op.n : (i+1)*op.n] }

// defaultWorkers is one goroutine a processor, 64 at most.
func defaultWorkers() int { return max(1, min(64, runtime.GOMAXPROCS(0))) }

// assemble integrates all rows. Each row is computed by one goroutine from
// start to end, so the result does not depend on the number of workers.
func (ms *mesh) assemble(ctx context.Context, workers int) (*operator, error) {
	n := len(ms.nodes)
	op := &operator{n: n, g: make([]float64, n*n), h: make([]float64, n*n), c: make([]float64, n)}
	var next atomic.Int64
	var wg sync.WaitGroup
	for range min(workers, n) {
		wg.Add(1)
		go func() {
			defer wg.Done()
			in := newIntegrator(ms)
			for {
				i := int(next.Add(1)) - 1
				if i >= n || ctx.Err() != nil {
					return
				}
				g, h := op.row(op.g, i), op.row(op.h, i)
				in.see(ms.nodes[i].at, i, g, h)
				sum := 0.0
				for _, v := range h {
					sum += v
				}
				op.c[i] = ms.m.outside - sum
			}
		}()
	}
	wg.Wait()
	return op, ctx.Err()
}

// An integrator integrates the ring sources of all panels as seen from one
// point. It holds its own work space.
type integrator struct {
	ms      *mesh
	fine    rule
	far     float64 // ellipse beyond which the panel's own nodes serve
	ratio   float64 // ellipse beyond which the fine rule serves
	l       []float64
	x       vec
	same    int     // piece that x lies on, -1 for none
	self    int     // panel that x lies on
	t, s    float64 // of x on that panel and piece
	from    [2]vec  // to x from the ends of that piece
	mirror  bool
	g, h    []float64
	pn      panel
	pc      piece
	kinds   [2]complex128
	coarse  []rule    // of constant panels seen from afar
	reaches []float64 // their ellipses
}

func newIntegrator(ms *mesh) *integrator {
	p := len(ms.rule.x)
	in := &integrator{ms: ms, fine: gauss(p + 10), l: make([]float64, p)}
	// Gauss's rule of n points errs like ρ^-2n for a function that is analytic within the
	// ellipse ρ. A polynomial of degree d in the integrand grows like ρ^d there, so that
	// ρ^-(2n-d) is left; this solves for ρ at the precision.
	reach := func(points, degree int) float64 {
		return math.Pow(precision, -1/float64(2*points-degree))
	}
	in.ratio = reach(len(in.fine.x), p-1)
	in.far = math.Inf(1)
	// With the nodes of the panel itself as points, each l_j is 1 at one of them: no
	// polynomial is left in the sum, and d is 0. A constant panel has one node and takes
	// short rules instead.
	if p >= 4 {
		in.far = reach(p, 0)
	} else {
		for _, n := range []int{3, 5, 7} {
			in.coarse = append(in.coarse, gauss(n))
			in.reaches = append(in.reaches, reach(n, p-1))
		}
	}
	return in
}

// see fills a row for the point x; i is its node, -1 for a point in the bath.
//
// The insulating floor of a half space is a plane of symmetry: each source has an image
// below it. Seen from x the image of y is what y is seen from the image of x, so the panels
// are integrated a second time from there. A point on the floor is its own image, and the
// panel it lies on is singular both times.
func (in *integrator) see(x vec, i int, g, h []float64) {
	in.x, in.g, in.h = x, g, h
	in.self, in.same, in.mirror = -1, -1, false
	if i >= 0 {
		nd := in.ms.nodes[i]
		in.self, in.same, in.t, in.s = nd.panel, in.ms.panels[nd.panel].piece, nd.t, nd.s
		in.from = nd.from
	}
	for k := range in.ms.panels {
		in.panel(k)
	}
	if in.ms.m.mirror {
		onFloor := x.z == 0
		in.x, in.mirror = vec{x.r, -x.z}, true
		if !onFloor {
			in.self, in.same = -1, -1
		}
		for k := range in.ms.panels {
			in.panel(k)
		}
	}
}

// panel adds the integrals over panel k, by the cheapest rule that is exact enough:
//
//	the panel of x itself   stretches that shrink towards x: the kernel goes like ln|x-y|
//	far away                the panel's own nodes
//	constant, fairly far    rules of 3, 5 or 7 points
//	near                    halves, until the fine rule serves
//
// Two singular points decide, each as a complex t: that of x, and that of its image beyond
// the axis, where the ring comes round again.
func (in *integrator) panel(k int) {
	in.pn = in.ms.panels[k]
	in.pc = in.ms.m.pieces[in.pn.piece]
	image := vec{-in.x.r, in.x.z}
	in.kinds = [2]complex128{in.pn.t(in.pc.c.preimage(in.x)), in.pn.t(in.pc.c.preimage(image))}
	if k == in.self {
		in.kinds[0] = complex(in.t, 0)
		in.toward(in.t, 0)
		in.toward(in.t, 1)
		return
	}
	reach := in.reach(0, 1)
	if reach >= in.far {
		in.own(k)
		return
	}
	for i, r := range in.coarse {
		if reach >= in.reaches[i] {
			in.gauss(0, 1, r)
			return
		}
	}
	in.split(0, 1, 0)
}

// reach is the smallest ellipse of the singular points about a stretch.
func (in *integrator) reach(ta, tb float64) float64 {
	h := complex(tb-ta, 0)
	a := ellipse((in.kinds[0] - complex(ta, 0)) / h)
	return math.Min(a, ellipse((in.kinds[1]-complex(ta, 0))/h))
}

// own uses the nodes of the panel as the points of the rule: column j then takes one term
// only.
func (in *integrator) own(k int) {
	for j := in.pn.first; j < in.pn.first+len(in.l); j++ {
		nd := &in.ms.nodes[j]
		d := vec{in.x.r - nd.at.r, in.x.z - nd.at.z}
		d2 := d.r*d.r + d.z*d.z
		g, h := ring(in.x.r, in.x.z, nd.at.r, nd.at.z, nd.n.r, d2, d.dot(nd.n)/d2)
		w := nd.weight * nd.rate
		in.g[j] += g * w
		if !in.pc.sheet {
			in.h[j] += h * w
		}
	}
}

// split halves a stretch of t until the fine rule serves. The limit of 45 halvings is a
// guard against a point on the panel that is no node, about which no stretch is ever far
// enough.
func (in *integrator) split(ta, tb float64, depth int) {
	if depth > 45 || in.reach(ta, tb) >= in.ratio {
		in.gauss(ta, tb, in.fine)
		return
	}
	mid := 0.5 * (ta + tb)
	in.split(ta, mid, depth+1)
	in.split(mid, tb, depth+1)
}

// toward integrates from the point t of the panel itself to one of its ends.
//
// The kernel has a logarithm at t. Each stretch ends at 0.3 of the distance of the one
// before it, so that its ratio of length to distance is the same for all; 26 of them leave
// 0.3^26 = 3e-14 of the panel, whose share is below the precision.
func (in *integrator) toward(t, end float64) {
	const ratio = 0.3
	length := end - t
	for range 26 { // to 3e-14 of the panel
		a, b := t+ratio*length, t+length
		// The singular point at t is as far away as the rule needs; the image
		// beyond the axis may not be.
		at := in.kinds[0]
		in.kinds[0] = 1e100
		in.split(math.Min(a, b), math.Max(a, b), 0)
		in.kinds[0] = at
		length *= ratio
	}
}

// gauss integrates a stretch of the panel with a rule.
func (in *integrator) gauss(ta, tb float64, r rule) {
	for i, x := range r.x {
		t := ta + (tb-ta)*x
		s, rate := in.pn.s(t)
		y := in.pc.c.at(s)
		n := in.pc.normal(s)
		d2, dn := in.distance(s, t, y, n)
		if d2 == 0 {
			continue
		}
		g, h := ring(in.x.r, in.x.z, y.r, y.z, n.r, d2, dn)
		w, speed := r.w[i]*(tb-ta), in.pc.c.speed(s)
		in.ms.rule.basis(t, in.l)
		// The polynomial is that of the potential, and of the flux times ds/dt.
		for k, l := range in.l {
			in.g[in.pn.first+k] += g * w * l * in.ms.nodes[in.pn.first+k].rate
			if !in.pc.sheet {
				in.h[in.pn.first+k] += h * w * l * rate * speed
			}
		}
	}
}

// distance returns d² = |x-y|² and (x-y)·n/d², the two factors of the kernels that lose
// digits when x and y are close.
//
// On one line they are (Δs)² and 0. On one circle of radius R the chord is d = 2R
// sin(Δs/2R), and (x-y)·n/d² is half the curvature, 1/(2R), wherever the points lie. On an
// ellipse both follow from the half difference of the eccentric angles. Δs comes from the
// panel's t without cancellation.
//
// On two pieces that meet in a corner, x-y is the difference of two vectors from that
// corner: its error then is relative to the distance from the corner, not to the size of
// the cell.
func (in *integrator) distance(s, t float64, y, n vec) (d2, dn float64) {
	if in.pn.piece != in.same {
		d := in.x.minus(y)
		if e, f, ok := in.shared(); ok && !in.mirror {
			d = in.from[e].minus(in.pc.reach(f, in.pn.far(in.pc, t, f)))
		}
		d2 = d.dot(d)
		if d2 == 0 {
			return 0, 0
		}
		return d2, d.dot(n) / d2
	}
	ds := in.s - s
	if in.self >= 0 && in.ms.panels[in.self].sa == in.pn.sa {
		ds = in.pn.between(in.t, t)
	}
	c := in.pc.c
	if c.oval {
		d := c.ovalChord(s, ds)
		d2 = d.dot(d)
		sin := math.Sin(ds * math.Pi / 4 / c.length)
		return d2, in.pc.flip * c.turn * 2 * c.semi.r * c.semi.z * (sin / d2 * sin) / c.ovalAlong(s).norm()
	}
	if !c.arc {
		return ds * ds, 0
	}
	d := 2 * c.radius * math.Sin(0.5*ds/c.radius)
	// x-y against the outward normal: half the curvature, all along the circle.
	return d * d, in.pc.flip * c.turn / (2 * c.radius)
}

// shared finds the corner that the panel's piece has in common with the piece
// of x: its number as an end of x's piece and of the panel's.
func (in *integrator) shared() (e, f int, ok bool) {
	if in.same < 0 {
		return 0, 0, false
	}
	for e := range 2 {
		for f := range 2 {
			if in.ms.m.joint[in.same][e] == (joint{in.pn.piece, f}) {
				return e, f, true
			}
		}
	}
	return 0, 0, false
}
