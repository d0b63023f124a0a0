package axi

import (
	"math"

	"example.com/laydown/plating/current"
)

// Ratios that shape the mesh. What they do for the error stands in the table of the package
// comment.
const (
	shrink     = 0.25        // of panels towards an edge
	maxAngle   = math.Pi / 3 // of arc that one panel covers
	longest    = 0.3         // panel, over its piece
	reachOfGap = 1.0         // of a panel over the gap it faces
)

// newMesh cuts the pieces into panels as the options say and places the nodes. It refuses a
// mesh of more unknowns than allowed before anything is integrated.
func newMesh(m *model, o ProfileOptions) (*mesh, error) {
	ms := &mesh{m: m}
	order := o.Order
	if o.Panelling == Constant {
		order = 1
		ms.cutConstant(o.Panels)
	} else {
		for i := range m.pieces {
			ms.cutGraded(i, o.Levels)
		}
		ms.refineGaps(o.MaxUnknowns / order)
	}
	if n := len(ms.panels) * order; n > o.MaxUnknowns {
		return nil, &SolveError{Unknowns: n, Err: current.ErrTooLarge}
	}
	ms.rule = gauss(order)
	ms.place()
	return ms, nil
}

// add appends a panel without power.
func (ms *mesh) add(piece int, sa, sb float64) {
	ms.panels = append(ms.panels, panel{piece: piece, sa: sa, sb: sb, power: 1})
}

// cutGraded cuts a piece so that panels grow by a fixed ratio from each edge.
//
//	d_k = L (d/L)^(k/n),  d = min(L, b/2) · ¼^levels
//
//	d_k  distance of cut k from the edge, k = n ... 1, so that d_n = d
//	L    room of the edge: the piece, or half of it when both ends are edges
//	b    length of the piece beyond the edge: a short neighbour is a detail that must be resolved from here too
//	n    the levels, or more where b is short
//
// A joint where only the curvature jumps takes one level. Between the cuts no panel is
// longer than 0.3 of its piece, nor than 60° of arc; and a face that runs towards the axis
// gets a panel for each growth of r by 0.7 of the smaller r, for round a hole the solution
// goes like ln r.
func (ms *mesh) cutGraded(i, levels int) {
	p := ms.m.pieces[i]
	long := p.s1 - p.s0
	part := [2]float64{long, long} // room of each end
	for e := range 2 {
		if p.ends[e].grade != regular && p.ends[1-e].grade != regular {
			part[e] = long / 2
		}
	}
	var cuts [2][]float64 // distances from each end, growing
	for e, c := range p.ends {
		if c.grade == regular {
			continue
		}
		deep := levels
		if c.grade == mild {
			deep = 1
		}
		smallest := math.Min(part[e], c.beside/2) * math.Pow(shrink, float64(deep))
		n := max(deep, int(math.Ceil(math.Log(part[e]/smallest)/math.Log(1/shrink)-1e-9)))
		for k := n; k >= 1; k-- {
			cuts[e] = append(cuts[e], part[e]*math.Pow(smallest/part[e], float64(k)/float64(n)))
		}
	}
	at := []float64{p.s0}
	for _, d := range cuts[0] {
		at = append(at, p.s0+d)
	}
	if len(cuts[0]) > 0 && len(cuts[1]) > 0 {
		at = append(at, p.s0+long/2)
	}
	for k := len(cuts[1]) - 1; k >= 0; k-- {
		at = append(at, p.s1-cuts[1][k])
	}
	at = append(at, p.s1)
	if p.c.oval {
		at = p.c.bends(at)
	}
	for k := 1; k < len(at); k++ {
		n := 1
		if p.c.arc {
			n = int(math.Ceil((at[k] - at[k-1]) / p.c.radius / maxAngle * (1 - 1e-9)))
		}
		n = max(n, int(math.Ceil((at[k]-at[k-1])/(longest*long)*(1-1e-9))))
		// Round a hole the solution goes like the logarithm of r.
		if ra, rb := p.c.at(at[k-1]).r, p.c.at(at[k]).r; math.Min(ra, rb) > 0 {
			n = max(n, min(8, int(math.Ceil(math.Abs(rb-ra)/math.Min(ra, rb)/0.7))))
		}
		for j := range n {
			ms.add(i, at[k-1]+(at[k]-at[k-1])*float64(j)/float64(n), at[k-1]+(at[k]-at[k-1])*float64(j+1)/float64(n))
		}
	}
	ms.empower(i)
}

// empower gives the first and last panel of a piece the power of its corner: there s ∝ t^n
// makes the solution smooth in t. The others are far enough from the corner, and stay
// linear.
func (ms *mesh) empower(i int) {
	p := ms.m.pieces[i]
	for k := range ms.panels {
		q := &ms.panels[k]
		if q.piece != i {
			continue
		}
		if q.sa == p.s0 && p.ends[0].power > 1 {
			q.power, q.end = p.ends[0].power, 0
		} else if q.sb == p.s1 && p.ends[1].power > 1 {
			q.power, q.end = p.ends[1].power, 1
		}
	}
}

// refineGaps halves panels that are longer than the gap of bath they face, up to a number
// of panels. Across a narrow gap the flux follows the opposite wall at the scale of the
// gap; a polynomial over a longer stretch cannot.
//
// Halves lose the power of a corner until empower gives it back. Twelve rounds reach 1/4096
// of a panel.
func (ms *mesh) refineGaps(most int) {
	for range 12 {
		var out []panel
		split := false
		room := most - len(ms.panels)
		for i, p := range ms.panels {
			if room > 0 && p.sb-p.sa > reachOfGap*ms.gap(i) {
				h := 0.5 * (p.sa + p.sb)
				out = append(out, panel{piece: p.piece, sa: p.sa, sb: h, power: 1},
					panel{piece: p.piece, sa: h, sb: p.sb, power: 1})
				split = true
				room--
			} else {
				out = append(out, p)
			}
		}
		ms.panels = out
		for i := range ms.m.pieces {
			ms.empower(i)
		}
		if !split {
			return
		}
	}
}

// gap returns the least distance, across the bath, from a panel to a panel
// that does not belong to its own corner.
func (ms *mesh) gap(i int) float64 {
	p := ms.panels[i]
	pc := ms.m.pieces[p.piece]
	least := math.Inf(1)
	for _, f := range []float64{0.02, 0.25, 0.5, 0.75, 0.98} {
		s := p.sa + f*(p.sb-p.sa)
		x, n := pc.c.at(s), pc.normal(s)
		for k, q := range ms.m.pieces {
			if k == p.piece || ms.neighbours(p.piece, k) {
				continue
			}
			at := math.Min(math.Max(real(q.c.preimage(x)), q.s0), q.s1)
			y := q.c.at(at)
			d := y.minus(x)
			dist := d.norm()
			// Only what faces x across the bath counts: not the far side of thin metal.
			if !pc.sheet && d.dot(n) > -0.1*dist || !q.sheet && d.dot(q.normal(at)) < 0.1*dist {
				continue
			}
			least = math.Min(least, dist)
		}
		if n.r > 0.1 && x.r > 0 && !pc.sheet { // the other side of a hole round the axis
			least = math.Min(least, 2*x.r)
		}
		if ms.m.mirror && x.z > 0 && (n.z > 0.1 || pc.sheet) {
			least = math.Min(least, x.z)
		}
	}
	return least
}

// neighbours tells pieces that share an end.
func (ms *mesh) neighbours(i, k int) bool {
	return ms.m.joint[i][0].piece == k || ms.m.joint[i][1].piece == k
}

// cutConstant shares panels among the pieces and cuts each with grading exponent 3 towards
// its edges.
//
//	s = L u³  from one edge,  s = ½ L (2u)³  from each of two
//
//	u  runs evenly from 0 to 1 over the panels
func (ms *mesh) cutConstant(panels int) {
	total := 0.0
	share := func(p piece) float64 { // weights found by trial, on convex and recessed parts
		w := math.Cbrt(p.s1 - p.s0)
		for _, c := range p.ends {
			if c.grade == sharp {
				w *= 1.4
			}
		}
		return w
	}
	for _, p := range ms.m.pieces {
		total += share(p)
	}
	for i, p := range ms.m.pieces {
		n := max(3, int(math.Round(float64(panels)*share(p)/total)))
		edge := func(e int) bool { return p.ends[e].grade == sharp }
		place := func(u float64) float64 {
			cube := func(x float64) float64 { return x * x * x }
			switch {
			case edge(0) && edge(1) && u <= 0.5:
				return 0.5 * cube(2*u)
			case edge(0) && edge(1):
				return 1 - 0.5*cube(2*(1-u))
			case edge(0):
				return cube(u)
			case edge(1):
				return 1 - cube(1-u)
			}
			return u
		}
		for k := range n {
			a, b := place(float64(k)/float64(n)), place(float64(k+1)/float64(n))
			ms.add(i, p.s0+a*(p.s1-p.s0), p.s0+b*(p.s1-p.s0))
		}
	}
}
