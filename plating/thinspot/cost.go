package thinspot

import (
	"errors"
	"fmt"

	"example.com/laydown/plating/field"
	"example.com/laydown/units"
)

// A RunCost is what a run is expected to take.
type RunCost struct {
	Unknowns int            // most in one set of equations: panels by mesh
	Memory   int64          // bytes at the peak
	Limit    int64          // bytes that are allowed; 0 by profile
	Time     units.Duration // of all sets together, on cores of today
	NoFiner  string         // by mesh, why no second mesh finds the error; "" when one does
	Late     bool           // the first mesh took more than estimated: this is what is still to come
}

// String returns the cost in one line.
func (c RunCost) String() string {
	lead, limit := "", ""
	if c.Late {
		lead = "more than estimated; still to come: "
	}
	if c.Limit > 0 {
		limit = ", at most " + megabytes(c.Limit)
	}
	return fmt.Sprintf("%sup to %d panels, some %.0f s in all (up to three times that for a thin or crowded body), "+
		"%s of memory%s", lead, c.Unknowns, float64(c.Time), megabytes(c.Memory), limit)
}

func megabytes(b int64) string {
	if b < 1e9 {
		return fmt.Sprintf("%.0f MB", float64(b)/1e6)
	}
	return fmt.Sprintf("%.1f GB", float64(b)/1e9)
}

// Cost estimates what [Case.Solve] takes with these options, without solving.
//
// By mesh it sums the estimates of [field.Estimate] over the case, the finer mesh and
// the other arrangements, which have bodies more than the case. The memory holds within
// a third, the time within a factor of three. By profile it is a bound: the most
// unknowns that are taken, and what so many take.
//
// Errors: a [*field.CostError] where the case alone takes more than the memory
// allowed; those of [axi.ProfileProblem.Check] and [field.Estimate].
func (c Case) Cost(o Options) (RunCost, error) {
	o, err := o.filled()
	if err != nil {
		return RunCost{}, err
	}
	if c.Mesh != nil {
		p, err := run{c, o}.planOf(c.Mesh.positions())
		if err != nil {
			return RunCost{}, err
		}
		return p.cost(pace{1, 1}, p.noFiner(pace{1, 1}), false), nil
	}
	if err := c.Cell.Check(); err != nil {
		return RunCost{}, err
	}
	n := fineProfile.MaxUnknowns
	cost := RunCost{Unknowns: n, Memory: profileBytes * int64(n) * int64(n), Time: profileSeconds}
	if !o.NoAdvice {
		cost.Time *= 4 // eight simpler meshes
	}
	return cost, nil
}

// By profile, of one solve with its coarser one for the error, measured on the demo's
// pendulum bob: memory of the process, and seconds on one core at the most unknowns.
const (
	profileBytes   = 40 // for each pair of unknowns
	profileSeconds = 5
)

// A pace is what runs take, over what was estimated for them.
type pace struct{ seconds, bytes float64 }

// plan is what the positions of a case are estimated to take, on its own mesh and on
// the finer one.
type plan struct {
	o           Options
	list, finer []field.Cost
	no          error // why the finer mesh cannot be solved at all
}

// planOf estimates a list of positions.
func (u run) planOf(list []Position) (plan, error) {
	p := plan{o: u.o}
	o := field.MeshOptions{MemoryLimit: u.o.Memory}
	for _, pos := range list {
		cost, err := field.Estimate(pos.Problem, o)
		if err != nil {
			return plan{}, err
		}
		p.list = append(p.list, cost)
		// A finer mesh that is too large for one position ends the question for all: the error is
		// found over all of them or not at all.
		if !u.o.Quick && p.no == nil {
			cost, p.no = field.Estimate(field.Refined(pos.Problem), o)
			p.finer = append(p.finer, cost)
		}
	}
	return p, nil
}

// paceOf measures the pace on the first run.
func (p plan) paceOf(solutions []*field.MeshSolution) pace {
	took, held, seconds, bytes := 0.0, 0.0, 0.0, 0.0
	for i, cost := range p.list {
		w := solutions[i].Work
		took, seconds = took+w.Build+w.Solve, seconds+cost.Seconds
		held, bytes = held+float64(w.OperatorBytes), bytes+float64(cost.Bytes)
	}
	return pace{max(1, took/seconds), max(1, held/bytes)}
}

// noFiner says why a second mesh is not solved; "" when it is.
func (p plan) noFiner(as pace) string {
	var big *field.CostError
	switch {
	case p.o.Quick:
		return "not asked for"
	case errors.As(p.no, &big):
		return "a finer mesh would take " + megabytes(big.Cost.Bytes)
	case p.no != nil:
		return p.no.Error()
	}
	seconds := 0.0
	for _, cost := range p.finer {
		if b := int64(as.bytes * float64(cost.Bytes)); b > p.o.Memory {
			return "a finer mesh would take " + megabytes(b)
		}
		seconds += as.seconds * cost.Seconds
	}
	if seconds > float64(p.o.FinerTime) {
		return fmt.Sprintf("a finer mesh would take some %.0f s", seconds)
	}
	return ""
}

// cost is what is still to come at a pace: the other arrangements, the case unless it
// is solved (late), and the finer mesh unless there is a reason against it.
func (p plan) cost(as pace, noFiner string, late bool) RunCost {
	c := RunCost{Limit: p.o.Memory, NoFiner: noFiner, Late: late}
	count := func(cost field.Cost, times float64) {
		c.Time += units.Duration(times * as.seconds * cost.Seconds)
		c.Unknowns = max(c.Unknowns, cost.Unknowns)
		c.Memory = max(c.Memory, int64(as.bytes*float64(cost.Bytes)))
	}
	for i, cost := range p.list {
		times := 1.0
		if late {
			times = 0
		}
		switch { // other arrangements have bodies more than the case, and panels to match
		case p.o.NoAdvice:
		case i == 0:
			times += 1.3 * solvesOfWays
		default:
			times += 1.3 * (solvesOfWays - 3) // all but the turned ones change every position
		}
		count(cost, times)
		if noFiner == "" {
			count(p.finer[i], 1)
		}
	}
	return c
}
