package field

import (
	"math"

	"example.com/laydown/plating/current"
)

// A role is the boundary condition of a panel.
type role uint8

const (
	// insulated: no flux; the potential is the unknown.
	insulated role = iota
	// fixed: the metal's potential; the flux is the unknown.
	fixed
	// kinetic: flux by the rate law; the potential is the unknown.
	kinetic
)

// Slots of the metals' potentials. Floating parts follow; the last slot is the
// potential of the bath far away.
const (
	// The cathodes' metal is the zero of potentials; its slot is never an
	// unknown.
	slotCathode = iota
	slotAnode
	slotFloating
)

// A border is a current that is held, one for each potential that is not known.
// The two belong together: a metal takes the potential at which its current is
// the one it has to be.
type border struct {
	// slot is the potential that is found by it.
	slot int
	// metal is the one whose current is summed, -1 for all.
	metal int32
	// sign is that of the sum, so that cathodes count as plating.
	sign float64
	// target is the current in amperes.
	target float64
}

// A model is the discrete problem: unknowns u, one a panel, and the unknown
// potentials v of the borders.
//
//	c·φ + K·φ - G·q - ω·φ∞ = 0            for each panel
//	sign·Σ κ·q·A - target = 0             for each border
//
// q is the flux ∂φ/∂n out of the bath, κ·q the current density from the
// electrode into the bath. With the single layer alone the first line is φ - φ∞
// - G·q = 0.
//
// Where the first line comes from: Green's third identity for a harmonic φ at a
// point x of a smooth boundary, with the normal out of the bath,
//
//	½·φ(x) + ∫ φ ∂G/∂n dS = ∫ G ∂φ/∂n dS + ω·φ∞    G = 1/(4π|x-y|)
//
// On flat panels with one φ and one q each the integrals are sums over panels
// of closed integrals, and asking for the line at each centroid gives as many
// equations as panels. What a panel does not carry as unknown its role gives: q
// = 0, φ = V, or q = j(V - φ)/κ.
//
// φ and q enter linearly, and all the non-linearity sits in the law of one
// panel at a time: the operator is built once and serves every step.
type model struct {
	// p are the panels in tree order, op the two layers.
	p       *panels
	op      *operator
	workers int
	// kappa is the conductivity of the bath.
	kappa float64
	// single leaves the double layer out.
	single bool
	// omega is 1 in an unbounded bath, where the potential far away stands in
	// the equation, and 0 in a bounded one.
	omega float64
	// c is the free term of each panel: 1 - ΣK or -ΣK.
	c []float64
	// role is the boundary condition of each panel.
	role []role
	// metal is the slot of each panel's metal, -1 on an insulator.
	metal []int32
	// law is that of each surface.
	law []current.Law
	// far is the slot of the bath far away.
	far     int
	borders []border
	// unit is how many amperes a volt in the border rows stands for.
	unit float64
	// linear tells that one exact step ends the iteration.
	linear bool

	// g and k are what the two layers are applied to: -q and φ.
	g, k []float64
}

// A state is a point of the iteration: everything else follows from it.
type state struct {
	// u is one unknown a panel: a flux where the role is fixed, else a
	// potential.
	u []float64
	// pot are the potentials of the slots.
	pot []float64
}

// lawOf returns the law of a panel's surface.
func (m *model) lawOf(i int) current.Law { return m.law[m.p.surface[i]] }

// values returns potential, flux and its slope -dq/dφ of a panel.
//
// The overpotential is that of the metal against the bath in front, η = V - φ,
// and dη/dφ = -1: the slope is dj/dη over κ.
func (m *model) values(s *state, i int) (phi, q, slope float64) {
	switch m.role[i] {
	case insulated:
		return s.u[i], 0, 0
	case fixed:
		return s.pot[m.metal[i]], s.u[i], 0
	}
	j, d := m.lawOf(i).Current(s.pot[m.metal[i]] - s.u[i])
	return s.u[i], j / m.kappa, d / m.kappa
}

// residual fills f with the left-hand sides and slopes with -dq/dφ.
//
// One product with the operator gives all rows of the panels; the sums of the
// borders go along.
func (m *model) residual(s *state, f, slopes []float64) {
	n := m.p.len()
	sums := make([]float64, len(m.borders))
	for i := range n {
		phi, q, d := m.values(s, i)
		m.g[i], m.k[i], slopes[i] = -q, phi, d
		for b := range m.borders {
			if m.counts(b, i) {
				sums[b] += q * m.p.area[i]
			}
		}
	}
	m.combine(s.pot[m.far], f)
	for b, o := range m.borders {
		f[n+b] = (o.sign*m.kappa*sums[b] - o.target) / m.unit
	}
}

// counts tells whether a panel's current counts in a border.
func (m *model) counts(b, i int) bool {
	metal := m.borders[b].metal
	return metal < 0 || metal == m.metal[i]
}

// combine sets f = c·k + K·k + G·g - ω·far.
//
// It is the left-hand side of the panels' equations, for values or for their
// changes: the equations are linear in φ and q.
func (m *model) combine(far float64, f []float64) {
	m.op.apply(m.g, m.k, f[:m.p.len()])
	for i, v := range m.k {
		f[i] += m.c[i]*v - m.omega*far
	}
}

// jacobian returns the derivative at the slopes, as a function.
//
// It is applied and never formed. A change of the unknowns becomes changes of φ
// and q by the role of each panel,
//
//	insulated  dφ = du          dq = 0
//	fixed      dφ = dV          dq = du
//	kinetic    dφ = du          dq = s·(dV - du)    s = (dj/dη)/κ
//
// and then goes through the same product as the residual.
func (m *model) jacobian(slopes []float64) func(in, out []float64) {
	n := m.p.len()
	dv := make([]float64, m.far+1)
	sums := make([]float64, len(m.borders))
	return func(in, out []float64) {
		clear(dv)
		clear(sums)
		for b, o := range m.borders {
			dv[o.slot] = in[n+b]
		}
		for i := range n {
			var phi, q float64
			switch m.role[i] {
			case insulated:
				phi = in[i]
			case fixed:
				phi, q = dv[m.metal[i]], in[i]
			default:
				phi = in[i]
				q = slopes[i] * (dv[m.metal[i]] - phi)
			}
			m.g[i], m.k[i] = -q, phi
			if q != 0 {
				for b := range m.borders {
					if m.counts(b, i) {
						sums[b] += q * m.p.area[i]
					}
				}
			}
		}
		m.combine(dv[m.far], out)
		for b, o := range m.borders {
			out[n+b] = o.sign * m.kappa * sums[b] / m.unit
		}
	}
}

// start guesses a state: every electrode at the current density of a uniform
// distribution, where no exponential is far from its place.
//
// At no polarisation an exponential law is flat, and the first step would
// overshoot by many Tafel slopes. At the even distribution every law is near
// the place where it will work, and the potential of the bath is one value.
func (m *model) start(d current.Drive) state {
	s := state{u: make([]float64, m.p.len()), pot: make([]float64, m.far+1)}
	var areas [2]float64
	var laws [2]current.Law
	size := m.p.extent()
	for i := range s.u {
		if k := m.metal[i]; k == slotCathode || k == slotAnode {
			areas[k] += m.p.area[i]
			laws[k] = m.lawOf(i)
		}
	}
	// No anode: infinity is one without limit of area.
	if areas[slotAnode] == 0 {
		areas[slotAnode] = math.Inf(1)
	}
	held, _ := d.Current()
	volts, byVoltage := d.Voltage()
	total := float64(held)
	if byVoltage {
		total = guess(float64(volts), size/(m.kappa*areas[0]), areas, laws)
	}
	// A law that cannot carry the current at all, or at an absurd potential,
	// starts unpolarised.
	over := func(k int, i float64) float64 {
		eta, err := laws[k].Overpotential(i / areas[k])
		if err != nil || math.Abs(eta) > 100 {
			return 0
		}
		return eta
	}
	// η = V - φ is negative at a cathode, so that the bath lies above its metal
	// by as much, and the anodes' metal above the bath by theirs.
	phi := -over(slotCathode, -total) // the cathodes are at 0
	if byVoltage {
		s.pot[slotAnode], s.pot[m.far] = float64(volts), float64(volts)
	} else {
		s.pot[slotAnode], s.pot[m.far] = phi, phi
		if areas[slotAnode] < math.Inf(1) {
			s.pot[slotAnode] += over(slotAnode, total)
		}
	}
	for k := slotFloating; k < m.far; k++ {
		s.pot[k] = phi
	}
	for i := range s.u {
		k := m.metal[i]
		s.u[i] = phi
		switch {
		case m.role[i] == fixed:
			s.u[i] = 0
		case k == slotCathode || k == slotAnode:
			sign := 1.0
			if k == slotCathode {
				sign = -1
			}
			if eta, err := m.lawOf(i).Overpotential(sign * total / areas[k]); err == nil && math.Abs(eta) < 100 {
				s.u[i] = s.pot[k] - eta
			}
		}
	}
	return s
}

// extent returns a length of the cell: half its diagonal.
func (p *panels) extent() float64 {
	b := emptyBox()
	for _, x := range p.at {
		b.add(x)
	}
	return b.diam() / 2
}

// guess returns the current of a cell of two laws and a resistance in series.
//
// It is a bisection on the logarithm of the current, since the three parts of
// the voltage span many decades of it: η_c and η_a grow with the logarithm, the
// ohmic part in proportion. Sixty halvings are more than a start asks for.
func guess(volts, ohms float64, areas [2]float64, laws [2]current.Law) float64 {
	lo, hi := math.Log(volts/ohms)-50, math.Log(volts/ohms)
	for range 60 {
		mid := (lo + hi) / 2
		i := math.Exp(mid)
		v := i * ohms
		if eta, err := laws[slotCathode].Overpotential(-i / areas[slotCathode]); err == nil {
			v -= eta
		}
		if eta, err := laws[slotAnode].Overpotential(i / areas[slotAnode]); err == nil && areas[slotAnode] < math.Inf(1) {
			v += eta
		}
		if v > volts {
			hi = mid
		} else {
			lo = mid
		}
	}
	return math.Exp(lo)
}
