package field

import (
	"math"

	"example.com/laydown/plating/current"
)

// A role is the boundary condition of a panel.
type role uint8

const (
	insulated role = iota // no flux; the potential is the unknown
	fixed                 // the metal's potential; the flux is the unknown
	kinetic               // flux by the rate law; the potential is the unknown
)

// Slots of the metals' potentials. Floating parts follow; the last slot is the
// potential of the bath far away.
const (
	slotCathode = iota
	slotAnode
	slotFloating
)

// A border is a current that is held, one for each potential that is not known.
type border struct {
	slot   int     // the potential that is found by it
	metal  int32   // whose current is summed, -1 for all
	sign   float64 // of the sum
	target float64 // amperes
}

// A model is the discrete problem: unknowns u, one a panel, and the unknown
// potentials v of the borders.
//
//	c·φ + K·φ - G·q - ω·φ∞ = 0            for each panel
//	sign·Σ κ·q·A - target = 0             for each border
//
// q is the flux ∂φ/∂n out of the bath, κ·q the current density from the
// electrode into the bath. With the single layer alone the first line is
// φ - φ∞ - G·q = 0.
type model struct {
	p       *panels
	op      *operator
	workers int
	kappa   float64
	single  bool
	omega   float64   // 1 in an unbounded bath
	c       []float64 // 1 - ΣK or -ΣK
	role    []role
	metal   []int32 // slot of each panel's metal, -1 on an insulator
	law     []current.Law
	far     int
	borders []border
	unit    float64 // amperes for a volt in the border rows
	linear  bool

	// scratch
	g, k []float64
}

// A state is a point of the iteration.
type state struct {
	u   []float64 // of the panels
	pot []float64 // of the slots
}

func (m *model) lawOf(i int) current.Law { return m.law[m.p.surface[i]] }

// values returns potential, flux and its slope -dq/dφ of a panel.
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

func (m *model) counts(b, i int) bool {
	metal := m.borders[b].metal
	return metal < 0 || metal == m.metal[i]
}

// combine sets f = c·k + K·k + G·g - ω·far.
func (m *model) combine(far float64, f []float64) {
	m.op.apply(m.g, m.k, f[:m.p.len()])
	for i, v := range m.k {
		f[i] += m.c[i]*v - m.omega*far
	}
}

// jacobian returns the derivative at the slopes, as a function.
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
	if areas[slotAnode] == 0 {
		areas[slotAnode] = math.Inf(1)
	}
	held, _ := d.Current()
	volts, byVoltage := d.Voltage()
	total := float64(held)
	if byVoltage {
		total = guess(float64(volts), size/(m.kappa*areas[0]), areas, laws)
	}
	over := func(k int, i float64) float64 {
		eta, err := laws[k].Overpotential(i / areas[k])
		if err != nil || math.Abs(eta) > 100 {
			return 0
		}
		return eta
	}
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
