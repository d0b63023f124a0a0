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

// A course is how the iteration went.
type course struct {
	iterations, factored int
	change, residual     float64
}

// solve runs Newton's method from x, which it overwrites. A factored matrix
// serves as long as it brings the change down fast.
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
