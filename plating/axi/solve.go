package axi

import (
	"context"
	"math"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Solve computes the current distribution. Unless told not to, it solves
// the problem twice, first with fewer and lower panels; the difference is the
// error estimate, and the first solution saves steps of the second.
//
//	∇·(κ∇φ) = 0 in the bath,  κ ∂φ/∂n = j(V - φ) on electrodes,  ∂φ/∂n = 0 on insulators
//
//	κ  Conductivity  > 0 [S/m]
//	V                potential of the metal, less that of equilibrium [V]
//	j  Law           anodic current density at an overpotential [A/m²]
//	n                normal out of the bath
//
// Accuracy, conventions and limits stand in the package comment; each solution
// carries its own checks. The result is the same for any number of workers.
//
// Errors: a [*units.ValueError] for a description that makes no sense, a
// [*current.TafelError] for a cathode with a Tafel law whose least current density
// lies so low that the reverse reaction counts, a [*SolveError] when the shape
// needs more unknowns than allowed or the iteration fails, the error of the
// context when it is cancelled.
//
// Source: [Derived], from Green's third identity with the ring sources of [DLMF], 19.2.
func Solve(ctx context.Context, p ProfileProblem, o ProfileOptions) (*ProfileSolution, error) {
	o, err := checkOptions(o)
	if err != nil {
		return nil, err
	}
	m, err := build(p)
	if err != nil {
		return nil, err
	}
	var coarse *solved
	if !o.NoEstimate {
		if coarse, err = m.run(ctx, o.coarser(), nil); err != nil {
			return nil, err
		}
	}
	fine, err := m.run(ctx, o, coarse)
	if err != nil {
		return nil, err
	}
	solution := report(p, fine, coarse)
	if err := solution.tafel(); err != nil {
		return nil, err
	}
	return solution, nil
}

// coarser returns the options of the solution that the estimate compares with.
func (o ProfileOptions) coarser() ProfileOptions {
	o.Order -= 2
	o.Levels = max(1, o.Levels-1)
	o.Panels = max(8, o.Panels/2)
	return o
}

// solved is one solution with its mesh.
type solved struct {
	ms *mesh
	sy *system
	x  []float64
	st state
	c  course
	in map[int][]int // panels of each piece, in order
}

func (m *model) run(ctx context.Context, o ProfileOptions, guess *solved) (*solved, error) {
	ms, err := newMesh(m, o)
	if err != nil {
		return nil, err
	}
	op, err := ms.assemble(ctx, o.Workers)
	if err != nil {
		return nil, err
	}
	s := &solved{ms: ms, sy: newSystem(ms, op), in: map[int][]int{}}
	for i, p := range ms.panels {
		s.in[p.piece] = append(s.in[p.piece], i)
	}
	s.x = s.sy.start(guess)
	s.st, s.c, err = s.sy.solve(ctx, s.x)
	if err != nil {
		return nil, err
	}
	op.g, op.h = nil, nil // what is left needs the row sums only
	return s, nil
}

// start returns the unknowns to begin with: those of a coarser solution, or
// else the mean current density on each side of the cell when the current is
// given, and no polarisation when the voltage is.
func (sy *system) start(guess *solved) []float64 {
	x := make([]float64, sy.size())
	if guess != nil {
		for i, n := range sy.ms.nodes {
			x[i] = guess.unknown(sy.ms.panels[n.panel].piece, n.s)
			if sy.roles[i] == primary {
				x[i] *= n.rate
			}
		}
		copy(x[sy.nodes:], guess.x[guess.sy.nodes:])
		return x
	}
	total, held := sy.ms.m.drive.Current()
	if !held {
		return x
	}
	var area [current.Floating + 1]float64
	for i, n := range sy.ms.nodes {
		if sy.roles[i] != insulates {
			area[sy.ms.m.surfaces[sy.bound[i]].kind] += n.ring
		}
	}
	size2 := sy.ms.m.size * sy.ms.m.size
	for i := range sy.ms.nodes {
		s := sy.ms.m.surfaces[sy.bound[i]]
		if sy.roles[i] != polarises || s.kind == current.Floating {
			continue
		}
		j := float64(total) / (area[s.kind] * size2)
		if s.kind == current.Cathode {
			j = -j
		}
		if eta, err := s.law.Overpotential(j); err == nil && s.law.Model != current.Primary {
			x[i] = eta
		}
	}
	return x
}

// unknown interpolates the unknown at an arc length of a piece; on a primary
// surface it returns the flux.
func (s *solved) unknown(piece int, at float64) float64 {
	list := s.in[piece]
	k := 0
	for k < len(list)-1 && s.ms.panels[list[k]].sb < at {
		k++
	}
	p := s.ms.panels[list[k]]
	t := math.Min(math.Max(real(p.t(complex(at, 0))), 0), 1)
	v := s.ms.rule.at(t, s.x[p.first:p.first+len(s.ms.rule.x)])
	if s.sy.roles[p.first] == primary {
		if rate := s.ms.rate(p, t); rate > 0 {
			v /= rate
		}
	}
	return v
}

// current returns the current density [A/m²] towards the metal at parameter t of a panel.
func (s *solved) current(panel int, t float64) float64 {
	p := s.ms.panels[panel]
	v := s.ms.rule.at(t, s.x[p.first:p.first+len(s.ms.rule.x)])
	switch s.sy.roles[p.first] {
	case primary:
		return -v / s.ms.rate(p, t) * s.sy.flux
	case polarises:
		j, _ := rate(s.ms.m.surfaces[s.sy.bound[p.first]].law, v)
		return -j
	}
	return 0
}

// Potential returns the potential of the solution at a point of the bath,
// against the cathode rail.
//
// Within a few thousandths of a panel of a surface it is as exact as the
// solution; the integrals are split as near as they must be. Errors: a
// [*units.ValueError] for a point that is not in the bath.
//
// Source: [Derived], Green's third identity.
func (s *ProfileSolution) Potential(at Point) (units.Voltage, error) {
	if s == nil || s.fine == nil {
		return 0, units.Missing("solution", "one that Solve returned")
	}
	if err := checkPoint("point", at); err != nil {
		return 0, err
	}
	f := s.fine
	size := f.ms.m.size
	x := vec{float64(at.R) / size, float64(at.Z) / size}
	g, h := make([]float64, f.sy.nodes), make([]float64, f.sy.nodes)
	newIntegrator(f.ms).see(x, -1, g, h)
	out := f.ms.m.outside
	weight, sum := out, out*f.sy.distant(f.x)
	for i := range g {
		weight -= h[i]
		sum += g[i]*f.st.q[i] - h[i]*f.st.phi[i]
	}
	if !(math.Abs(weight-1) < 0.4) || f.ms.m.mirror && x.z < 0 {
		return 0, wrong("point", at.String(), "a point in the bath", ErrOutside)
	}
	return units.Voltage(sum / weight), nil
}
