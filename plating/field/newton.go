package field

import (
	"context"
	"math"

	"example.com/laydown/plating/current"
)

// Bounds of the iteration.
const (
	// Three to seven steps are usual. Forty is where something is wrong: a law
	// and a drive that do not go together, or a mesh that does not resolve its
	// gaps.
	mostNewton = 40
	mostKrylov = 400 // in one Newton step
)

// A run counts what an iteration did: its steps, the root mean square of the
// last residual in volts, and the bound on the change that one more step would
// make.
type run struct {
	newton, krylov   int
	residual, change float64
}

// newton iterates from a state until one more step would change no local
// current density by more than the wanted part of itself.
//
//	F(x) = 0    J·dx = -F(x)    x ← x + dx
//
// F are the equations of [model], J their derivative at the current slopes of
// the laws. The linear equations are solved only as well as the step deserves:
// far from the solution the step is wrong by more than a hundredth anyway, and
// each digit of it costs products with the operator. Near it the tolerance
// follows the square of the fall of the residual, as Newton's error does.
//
// Converged means the local current densities, all of them, and not the
// residual: a residual is small long before the little current in a recess is
// right.
func (m *model) newton(ctx context.Context, s *state, converged float64, progress func(string, int, int)) (run, error) {
	n := m.p.len()
	size := n + len(m.borders)
	f, dx, slopes := make([]float64, size), make([]float64, size), make([]float64, n)
	var r run
	last, change := 0.0, math.Inf(1)
	for r.newton < mostNewton {
		m.residual(s, f, slopes)
		norm := math.Sqrt(sum2(f))
		r.residual = norm / math.Sqrt(float64(n))
		// Not a number: some exponential ran away.
		if norm-norm != 0 {
			break
		}
		if r.newton > 1 && r.residual <= 1e-14*m.volts(s) && r.change < 1e-3 {
			return r, nil // the digits of the potentials are used up
		}
		// The preconditioner holds the slopes of the laws and so it is made
		// anew with them, at the price of a few products.
		jac := m.jacobian(slopes)
		pc := m.precondition(slopes, jac)
		for i := range f {
			f[i] = -f[i]
		}
		// A linear problem is solved in one step, so that this one has to be
		// exact.
		tol := 1e-2
		switch {
		case r.newton == 0 && m.linear:
			tol = 1e-8
		case r.newton > 0 && !m.linear:
			q := norm / last
			tol = max(1e-5, min(1e-2, 0.5*q*q))
			// What this step leaves need not lie far below what is wanted.
			tol = max(tol, min(1e-2, 0.05*converged/r.change))
		}
		steps, _, err := gmres(ctx, jac, pc.solve, f, dx, tol, mostKrylov)
		r.krylov += steps
		if err != nil {
			return r, err
		}
		last = norm
		r.newton++
		// The change that was measured is that of the step behind; what counts
		// is the one that would follow.
		was := change
		change = m.step(s, dx)
		r.change = next(was, change, tol)
		if progress != nil {
			progress("solution", r.newton, mostNewton)
		}
		if r.change <= converged {
			m.residual(s, f, slopes)
			r.residual = math.Sqrt(sum2(f)) / math.Sqrt(float64(n))
			return r, nil
		}
		if change-change != 0 {
			break
		}
	}
	return r, &ConvergenceError{Steps: r.newton, Residual: r.residual, Change: r.change, Err: current.ErrNotConverged}
}

// next bounds the change of one more step by those of the last two, was and
// change, and the tolerance of the last linear solution: Newton's error falls
// with the square, and what GMRES left stays. The last step is the dearest one,
// and at this point it would only confirm.
func next(was, change, tol float64) float64 {
	if !(change < 1e-2) {
		return change
	}
	factor := 2.0 // twice the largest that was seen on Tafel laws
	if was < 1 {
		factor = max(factor, change/(was*was))
	}
	return min(change, factor*change*change+10*tol*change)
}

// volts returns the largest potential of a metal or the bath far away.
//
// It is the scale of the potentials, for telling when their digits are used up.
func (m *model) volts(s *state) float64 {
	_, v := largest(s.pot)
	return v
}

// step adds a Newton step and returns the largest relative change of a local
// current density. On electrodes with exponential laws the step sets the
// current density that the linear equations predict, not the potential: a
// potential would overshoot and then come back by one Tafel slope a step only.
//
// The predicted current density is j + (dj/dη)·dη. Where the law is an
// exponential, the overpotential that carries it is its logarithm,
//
//	η' = law⁻¹(j + (dj/dη)·dη)
//
// which is the step that Newton's method takes when the current densities are
// the unknowns.
func (m *model) step(s *state, dx []float64) float64 {
	n := m.p.len()
	dv := make([]float64, len(s.pot))
	for b, o := range m.borders {
		dv[o.slot] = dx[n+b]
		s.pot[o.slot] += dx[n+b]
	}
	var mean, area float64
	olds, news := make([]float64, n), make([]float64, n)
	for i := range n {
		switch m.role[i] {
		case insulated:
			s.u[i] += dx[i]
			continue
		case fixed:
			olds[i] = s.u[i]
			s.u[i] += dx[i]
			news[i] = s.u[i]
		default:
			law, v := m.lawOf(i), s.pot[m.metal[i]]
			old := v - dv[m.metal[i]] - s.u[i]
			eta := follow(law, old, dv[m.metal[i]]-dx[i])
			s.u[i] = v - eta
			olds[i], _ = law.Current(old)
			news[i], _ = law.Current(eta)
			olds[i] /= m.kappa
			news[i] /= m.kappa
		}
		mean += math.Abs(news[i]) * m.p.area[i]
		area += m.p.area[i]
	}
	// The change of each panel is relative to its own current density, so that
	// the darkest recess counts as much as the edge; the mean guards against
	// dividing by nothing.
	mean /= area
	change := 0.0
	for i := range n {
		if m.role[i] == insulated {
			continue
		}
		c := math.Abs(news[i]-olds[i]) / (math.Abs(news[i]) + m.least(i)*mean)
		// Written so that not a number is the largest change of all.
		if !(c <= change) {
			change = c
		}
	}
	return change
}

// least is the part of the mean current density below which changes are
// measured against it: floating metal has places without any current.
func (m *model) least(i int) float64 {
	if m.metal[i] >= slotFloating {
		return 1e-2
	}
	return 1e-7
}

// follow returns the overpotential after a linear step d from eta.
//
// A predicted density of the wrong sign, or of almost nothing, has no logarithm
// or one far away. It is then held at e^-3 of the old one: the direction is
// right, and the next step goes on from there. Within three slopes of
// equilibrium a Butler-Volmer law is not yet an exponential, may change its
// sign, and takes the prediction as it is.
func follow(law current.Law, eta, d float64) float64 {
	if law.Model == current.Linear || law.Model == current.Primary {
		return eta + d
	}
	j, slope := law.Current(eta)
	wanted := j + slope*d
	b := law.Volt() / alpha(law, eta)
	if law.Model == current.Tafel || math.Abs(eta) > 3*b {
		low := math.Abs(j) * math.Exp(-3) // never down by more than three Tafel slopes
		if math.Abs(wanted) < low || wanted*j < 0 {
			wanted = math.Copysign(low, j)
		}
	}
	// Where the law cannot say, the plain step, held to three slopes.
	to, err := law.Overpotential(wanted)
	if err != nil {
		return eta + math.Max(-3*b, math.Min(3*b, d))
	}
	return to
}

// alpha returns the transfer coefficient that rules the law at an
// overpotential: that of the side on which the metal is.
func alpha(law current.Law, eta float64) float64 {
	switch {
	case law.Model == current.Tafel && law.Side == current.AnodicSide, law.Model == current.ButlerVolmer && eta > 0:
		return law.Anodic
	}
	return law.Cathodic
}
