package axi

import (
	"context"
	"math"

	"gonum.org/v1/gonum/mat"

	"example.com/laydown/plating/current"
)

const (
	maxNewton = 80
	settled   = 1e-10 // relative change of any current density at which the iteration ends
)

// A course is how the iteration went: steps, factorisations, the last relative change of a
// current density, and the residual at its end.
type course struct {
	iterations, factored int
	change, residual     float64
}

// solve runs Newton's method from x, which it overwrites:
//
//	J(x) d = F(x),  x ← x - d
//
//	F  what the equations lack: residual
//	J  its derivatives: jacobian, factored as LU by gonum
//
// The time of a factorisation grows with n³, that of a step with it with n². So once the
// change is below 2 %, a matrix serves again as long as each change is less than a fifth of
// the one before: the chord method, which goes to the same answer. With linear laws one
// step is exact, and a second takes off the rounding.
//
// It ends when no current density changed by more than 1e-10 of itself, or when a step with
// a new matrix brings a change of less than 1e-6 no further down than to 0.3 of the last:
// that is the floor of rounding.
//
// Errors: a [*SolveError] with [ErrSingular] when nothing fixes the potentials, with
// [current.ErrNotConverged] after 80 steps; the error of the context.
func (sy *system) solve(ctx context.Context, x []float64) (state, course, error) {
	n := sy.size()
	a := mat.NewDense(n, n, nil)
	var lu mat.LU
	st := sy.state(x)
	var c course
	fresh := false
	last := math.Inf(1)
	for {
		if err := ctx.Err(); err != nil {
			return st, c, err
		}
		res, _ := sy.residual(x, st)
		if !fresh {
			sy.jacobian(st, a.RawMatrix().Data)
			lu.Factorize(a)
			c.factored++
		}
		step := mat.NewVecDense(n, res)
		if err := lu.SolveVecTo(step, false, step); err != nil {
			if _, near := err.(mat.Condition); !near || math.IsInf(lu.Cond(), 1) {
				return st, c, &SolveError{Unknowns: n, Iterations: c.iterations, Change: c.change, Err: ErrSingular}
			}
		}
		c.iterations++
		c.change = sy.advance(x, step.RawVector().Data, st)
		st = sy.state(x)
		stuck := !fresh && c.change < 1e-6 && c.change > 0.3*last // at the floor of rounding
		if c.change <= settled || stuck || c.iterations > 1 && sy.linear() {
			break
		}
		if c.iterations >= maxNewton || math.IsNaN(c.change) {
			return st, c, &SolveError{Unknowns: n, Iterations: c.iterations, Change: c.change,
				Err: current.ErrNotConverged}
		}
		// The next step may reuse the matrix when this one was small enough.
		fresh = sy.linear() || c.change < 0.02 && c.change < 0.2*last
		last = c.change
	}
	_, c.residual = sy.residual(x, st)
	return st, c, nil
}

// advance takes a step down: x -= d. Where an exponential law would carry the
// overpotential up by more than its scale, the step is taken in the current
// density instead, which is nearly linear there. It returns the largest
// change of a current density relative to itself.
//
// The floor of 1e-9 of the largest flux keeps a spot without current from holding up the
// end: its relative change means nothing.
func (sy *system) advance(x, d []float64, st state) float64 {
	worst := 0.0
	top := 0.0
	for i, r := range sy.roles {
		if r != insulates {
			top = math.Max(top, math.Abs(st.q[i]))
		}
	}
	for i, r := range sy.roles {
		switch r {
		case insulates:
			x[i] -= d[i]
		case primary:
			x[i] -= d[i]
		case polarises:
			law := sy.ms.m.surfaces[sy.bound[i]].law
			eta := limited(law, x[i], -d[i], st.q[i]*sy.flux, st.dq[i]*sy.flux)
			now, _ := rate(law, eta)
			was := st.q[i] * sy.flux
			worst = math.Max(worst, math.Abs(now-was)/(math.Max(math.Abs(now), math.Abs(was))+1e-9*top*sy.flux+1e-300))
			x[i] = eta
		}
	}
	for k := range sy.extra {
		x[sy.nodes+k] -= d[sy.nodes+k]
	}
	return worst
}

// limited returns the overpotential after a step.
//
//	η₁ = η + Δη                    for |Δη| < ½ v/α, or a linear law
//	j(η₁) = j + (dj/dη) Δη         for a larger step up the exponential, if it is shorter
//	η₁ = η ± min(|Δη|, 3 v/α)      otherwise
//
//	v  RT/F, see current.Law.Volt [V]
//	α  the larger of the two transfer coefficients
//
// Newton's step up an exponential overshoots, and each step back takes off about one v/α
// only. The current density that the tangent promises is closer, since the bath's
// resistance makes the equations nearly linear in it: the second line takes that promise
// and inverts the law.
func limited(law current.Law, eta, step, j, slope float64) float64 {
	if law.Model == current.Linear || slope <= 0 {
		return eta + step
	}
	scale := law.Volt() / math.Max(math.Max(law.Anodic, law.Cathodic), 1e-3)
	if math.Abs(step) < 0.5*scale {
		return eta + step
	}
	target := j + slope*step // what the tangent promises
	growing := math.Abs(target) > math.Abs(j) && target*j >= 0 || j == 0
	if growing || law.Model == current.ButlerVolmer {
		if better, err := law.Overpotential(target); err == nil && math.Abs(better-eta) < math.Abs(step) {
			return better
		}
	}
	return eta + math.Copysign(math.Min(math.Abs(step), 3*scale), step)
}
