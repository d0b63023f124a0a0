package axi

import (
	"math"

	"example.com/laydown/plating/current"
)

// A system is the set of equations: one a node, and one for each potential
// that is not given.
//
//	unknown of a node: the potential φ on an insulator, the overpotential η on a
//	polarised electrode (φ = V - η), the flux times ds/dt on a primary one (φ = V).
//
// With η as the unknown, no digits are lost between V and φ however small
// the overpotential is.
type system struct {
	ms     *mesh
	op     *operator
	nodes  int
	extra  []potential // unknown potentials, behind the nodes
	flux   float64     // A/m² for 1 V over size: κ/size
	roles  []role
	rail   int // index of the unknown rail voltage in extra, -1 when given
	far    int // same for the potential far away
	floats []int
	bound  []int   // surface of each node
	amps   float64 // A for 1 V·size of flux times area: κ·size
}

// A potential is an unknown one: rail voltage, that of a floating part, that far away.
type potential struct {
	what    extraKind
	surface int
}

type extraKind uint8

const (
	railVoltage extraKind = iota
	floatingMetal
	farAway
)

func newSystem(ms *mesh, op *operator) *system {
	m := ms.m
	sy := &system{ms: ms, op: op, nodes: len(ms.nodes), flux: m.kappa / m.size, amps: m.kappa * m.size,
		rail: -1, far: -1}
	sy.floats = make([]int, len(m.surfaces))
	for i := range ms.nodes {
		pc := ms.piece(ms.nodes[i])
		sy.roles = append(sy.roles, m.role(pc))
		sy.bound = append(sy.bound, pc.owner)
	}
	add := func(k extraKind, s int) int {
		sy.extra = append(sy.extra, potential{k, s})
		return sy.nodes + len(sy.extra) - 1
	}
	if _, held := m.drive.Current(); held {
		sy.rail = add(railVoltage, -1)
	}
	for i, s := range m.surfaces {
		sy.floats[i] = -1
		if s.kind == current.Floating {
			sy.floats[i] = add(floatingMetal, i)
		}
	}
	if m.outside > 0 && !m.far {
		sy.far = add(farAway, -1)
	}
	return sy
}

func (sy *system) size() int { return sy.nodes + len(sy.extra) }

// metal returns the potential of a surface's metal.
func (sy *system) metal(surf int, x []float64) float64 {
	s := sy.ms.m.surfaces[surf]
	switch {
	case s.kind == current.Floating:
		return x[sy.floats[surf]]
	case s.kind == current.Anode:
		return s.bias + sy.voltage(x)
	}
	return s.bias
}

// voltage returns the potential of the anode rail; that of the cathode rail is 0.
func (sy *system) voltage(x []float64) float64 {
	if sy.rail >= 0 {
		return x[sy.rail]
	}
	volts, _ := sy.ms.m.drive.Voltage()
	return float64(volts)
}

// distant returns the potential far away.
func (sy *system) distant(x []float64) float64 {
	switch {
	case sy.far >= 0:
		return x[sy.far]
	case sy.ms.m.far:
		return sy.voltage(x)
	}
	return 0
}

// A state is what the unknowns mean at each node.
type state struct {
	phi, q []float64 // potential [V] and flux [V/size]
	dq     []float64 // slope of the flux against the unknown
}

// state evaluates the laws.
func (sy *system) state(x []float64) state {
	st := state{make([]float64, sy.nodes), make([]float64, sy.nodes), make([]float64, sy.nodes)}
	for i := range sy.nodes {
		surf := sy.bound[i]
		switch sy.roles[i] {
		case insulates:
			st.phi[i] = x[i]
		case polarises:
			st.phi[i] = sy.metal(surf, x) - x[i]
			j, slope := rate(sy.ms.m.surfaces[surf].law, x[i])
			st.q[i], st.dq[i] = j/sy.flux, slope/sy.flux
		case primary:
			st.phi[i] = sy.metal(surf, x)
			st.dq[i] = 1 / sy.ms.nodes[i].rate
			st.q[i] = x[i] * st.dq[i]
		}
	}
	return st
}

// residual returns what the equations lack, and the largest lack relative to
// the terms of its row.
func (sy *system) residual(x []float64, st state) (res []float64, worst float64) {
	res = make([]float64, sy.size())
	far := sy.distant(x)
	out := sy.ms.m.outside
	for i := range sy.nodes {
		g, h := sy.op.row(sy.op.g, i), sy.op.row(sy.op.h, i)
		sum := out * (st.phi[i] - far)
		size := math.Abs(sum)
		for j := range g {
			a, b := h[j]*(st.phi[j]-st.phi[i]), g[j]*st.q[j]
			sum += a - b
			size += math.Abs(a) + math.Abs(b)
		}
		res[i] = sum
		if size > 0 {
			worst = math.Max(worst, math.Abs(sum)/size)
		}
	}
	for k, e := range sy.extra {
		sum, size := 0.0, 0.0
		for j := range sy.nodes {
			if w := sy.counts(e, j); w != 0 {
				sum += w * st.q[j]
				size += math.Abs(w * st.q[j])
			}
		}
		if e.what == railVoltage { // flux into the bath at cathodes is negative
			total, _ := sy.ms.m.drive.Current()
			want := float64(total) / sy.amps
			sum += want
			size += want
		}
		res[sy.nodes+k] = sum
		if size > 0 {
			worst = math.Max(worst, math.Abs(sum)/size)
		}
	}
	return res, worst
}

// counts returns the area by which a node's flux enters the row of an unknown potential.
func (sy *system) counts(e potential, j int) float64 {
	if sy.roles[j] == insulates {
		return 0
	}
	s := sy.ms.m.surfaces[sy.bound[j]]
	if e.what == railVoltage && s.kind != current.Cathode || e.what == floatingMetal && sy.bound[j] != e.surface {
		return 0
	}
	return sy.ms.nodes[j].ring
}

// jacobian fills the matrix of derivatives by rows.
func (sy *system) jacobian(st state, a []float64) {
	n := sy.size()
	for i := range a {
		a[i] = 0
	}
	out := sy.ms.m.outside
	for i := range sy.nodes {
		g, h := sy.op.row(sy.op.g, i), sy.op.row(sy.op.h, i)
		row := a[i*n : (i+1)*n]
		for j := range g {
			hj := h[j]
			if i == j {
				hj += sy.op.c[i]
			}
			switch sy.roles[j] {
			case insulates:
				row[j] = hj
				continue
			case polarises:
				row[j] = -hj - g[j]*st.dq[j]
			case primary:
				row[j] = -g[j] * st.dq[j]
			}
			if f := sy.floats[sy.bound[j]]; f >= 0 {
				row[f] += hj
			} else if sy.rail >= 0 && sy.ms.m.surfaces[sy.bound[j]].kind == current.Anode {
				row[sy.rail] += hj
			}
		}
		if sy.far >= 0 {
			row[sy.far] -= out
		} else if sy.ms.m.far && sy.rail >= 0 {
			row[sy.rail] -= out
		}
	}
	for k, e := range sy.extra {
		row := a[(sy.nodes+k)*n : (sy.nodes+k+1)*n]
		for j := range sy.nodes {
			row[j] = sy.counts(e, j) * st.dq[j]
		}
	}
}

// linear tells whether one solution of the linear system is the answer.
func (sy *system) linear() bool {
	for _, s := range sy.ms.m.surfaces {
		if s.kind != current.Insulator && s.law.Model != current.Primary && s.law.Model != current.Linear {
			return false
		}
	}
	return true
}

// rate is the law's current density and slope. Next to equilibrium, where the
// two exponentials of Butler and Volmer cancel, it takes their differences
// from one, so that a small current density keeps its digits.
func rate(law current.Law, eta float64) (j, slope float64) {
	j, slope = law.Current(eta)
	if law.Model == current.ButlerVolmer {
		v := law.Volt()
		if up, down := law.Anodic*eta/v, -law.Cathodic*eta/v; math.Abs(up)+math.Abs(down) < 1 {
			j = float64(law.Exchange) * (math.Expm1(up) - math.Expm1(down))
		}
	}
	return j, slope
}
