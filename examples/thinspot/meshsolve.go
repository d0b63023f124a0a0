package main

import (
	"context"
	"errors"
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

func solveMesh(ctx context.Context, c jobfile.Case, e effort) (*result, error) {
	cell := c.Mesh
	if len(cell.Positions) == 0 {
		cell = &jobfile.MeshCell{Problem: cell.Problem, Positions: []jobfile.Position{{Share: 1, Problem: cell.Problem}},
			Mended: cell.Mended}
	}
	r := &result{c: c, part: cell.Problem.Surfaces[0].Name, faces: len(cell.Problem.Surfaces[0].Triangles)}
	for _, m := range cell.Mended {
		r.warnings = append(r.warnings, "mended "+m)
	}
	as := pace{1, 1}
	r.second = tooDear(cell.Positions, e, as)
	if err := announce("", cell.Positions, r.second == "", true, e, as); err != nil {
		return nil, err
	}
	coarse, err := r.positions(ctx, cell.Positions, "mesh of the case", e)
	if err != nil {
		return nil, err
	}
	best := coarse
	if as, err = paceOf(cell.Positions, coarse, e); err != nil {
		return nil, err
	}
	if as.seconds > 1.5 || as.bytes > 1.2 { // the first run was slower or larger than it should have been
		if r.second == "" {
			r.second = tooDear(cell.Positions, e, as)
		}
		if err := announce("more than estimated; still to come: ", cell.Positions, r.second == "", false, e, as); err != nil {
			return nil, err
		}
	}
	if r.second == "" {
		fine, err := r.positions(ctx, refined(cell.Positions), "finer mesh", e)
		if err != nil {
			return nil, err
		}
		if err := fine.errorAgainst(coarse, c.Significant); err != nil {
			return nil, err
		}
		best = fine
	}
	if err := r.take(best); err != nil {
		return nil, err
	}
	if err := r.finish(); err != nil {
		return nil, err
	}
	if !e.advice {
		return r, nil
	}
	// The others are solved on the first mesh, and so is what they are held against.
	first := coarse.way
	if first.Surface, err = marked(&c, first.Surface); err != nil {
		return nil, err
	}
	first.Name = "as it hangs"
	return r, r.compare(ctx, first, others{r, cell.Positions, coarse, e}.all(), e)
}

// A hung is the case solved on one mesh, in all positions.
type hung struct {
	way       coat.Way // in the bath of the case
	problems  []field.MeshProblem
	solutions []*field.MeshSolution
	surfaces  []coat.Surface
}

// positions solves every position of a list.
func (r *result) positions(ctx context.Context, list []jobfile.Position, what string, e effort) (hung, error) {
	var v hung
	var shares []units.Ratio
	for _, pos := range list {
		s, w, err := hangMesh(ctx, pos.Problem, what, e)
		if err != nil {
			return v, err
		}
		v.problems, v.solutions, v.surfaces = append(v.problems, pos.Problem), append(v.solutions, s), append(v.surfaces,
			w.Surface)
		v.way.Robbed += units.Current(float64(pos.Share) * float64(w.Robbed))
		shares = append(shares, pos.Share)
	}
	v.way.Surface = v.surfaces[0]
	if len(list) == 1 {
		return v, nil
	}
	var err error
	v.way.Surface, err = together(&r.c.Bath, v.surfaces, shares)
	return v, err
}

// refined is a list of positions on a mesh of half the panel size.
func refined(list []jobfile.Position) []jobfile.Position {
	list = append([]jobfile.Position(nil), list...)
	for k := range list {
		list[k].Problem = field.Refined(list[k].Problem)
	}
	return list
}

// errorAgainst estimates the error of the least density from the coarser mesh.
func (v *hung) errorAgainst(coarse hung, significant coat.Selector) error {
	if significant == nil && len(v.solutions) == 1 {
		d, err := field.Compare(coarse.solutions[0], v.solutions[0])
		if err != nil {
			return err
		}
		v.way.Surface.MinError = math.Max(math.Abs(d[0].Minimum), math.Abs(d[0].AtSpot))
		v.way.Surface.Unresolved = d[0].Unresolved
		return nil
	}
	// The same where the minimum thickness holds, for all positions together.
	from, to := coarse.way.Surface.Patches, v.way.Surface.Patches
	least := func(list []coat.Patch, better func(a, b coat.Patch) bool) int {
		at := -1
		for i, p := range list {
			if (significant == nil || significant(p)) && (at < 0 || better(p, list[at])) {
				at = i
			}
		}
		return at
	}
	thinner := func(a, b coat.Patch) bool { return a.Density < b.Density }
	there, here := least(from, thinner), least(to, thinner)
	if there < 0 || here < 0 {
		return errors.New("no significant surface on one of the two meshes")
	}
	spot := to[here]
	same := least(from, func(a, b coat.Patch) bool {
		return r3.Norm2(r3.Sub(a.At, spot.At)) < r3.Norm2(r3.Sub(b.At,
			spot.At))
	})
	change := func(p coat.Patch) float64 { return math.Abs(float64(p.Density/spot.Density) - 1) }
	most := math.Max(change(from[there]), change(from[same]))
	v.way.Surface.MinError = most
	for _, s := range v.solutions { // a primary part that is masked in part is worse than the change
		v.way.Surface.MinError = math.Max(v.way.Surface.MinError, s.Surfaces[0].Corner.Estimate(most))
	}
	// Whether the least density of all lies on one panel does not matter when it
	// lies off the significant surface.
	jumps := !(change(from[there]) <= 0.1)
	v.way.Surface.Unresolved = jumps || significant == nil && v.way.Surface.Unresolved
	return nil
}

// take puts the figures of a run into the result.
func (r *result) take(v hung) error {
	s, p := v.solutions[0], v.problems[0]
	r.surface = v.way.Surface
	r.mesh = mesh.Mesh{Vertices: p.Surfaces[0].Vertices, Triangles: p.Surfaces[0].Triangles}
	rep, err := mesh.Check(r.mesh)
	if err != nil {
		return err
	}
	r.area, r.volume = rep.Area, rep.Volume
	r.total, r.current, r.voltage = s.Current, s.Surfaces[0].Total, s.CellVoltage
	r.balance, r.unknowns = s.Checks.CurrentImbalance, s.Work.Unknowns
	for _, k := range v.solutions {
		for _, w := range k.Warnings {
			r.warnings = append(r.warnings, w.String())
		}
	}
	for i := range s.Surfaces {
		if s.Surfaces[i].Kind == current.Floating {
			r.warnings = append(r.warnings, s.Surfaces[i].Name+
				": hangs without a wire: one side of it plates and the other dissolves into the bath")
		}
	}
	return nil
}

// tooDear says why a second mesh is not solved; "" when it is.
func tooDear(list []jobfile.Position, e effort, as pace) string {
	if !e.second {
		return "not asked for"
	}
	seconds := 0.0
	for _, pos := range list {
		cost, err := field.Estimate(field.Refined(pos.Problem), field.MeshOptions{MemoryLimit: e.memory})
		var big *field.CostError
		if errors.As(err, &big) {
			return fmt.Sprintf("a finer mesh would take %s", memory(big.Cost.Bytes))
		}
		if err != nil {
			return err.Error()
		}
		if b := int64(as.bytes * float64(cost.Bytes)); b > e.memory {
			return fmt.Sprintf("a finer mesh would take %s", memory(b))
		}
		seconds += as.seconds * cost.Seconds
	}
	if seconds > e.seconds {
		return fmt.Sprintf("a finer mesh would take some %.0f s", seconds)
	}
	return ""
}

// A pace is what runs take, over what was estimated for them.
type pace struct{ seconds, bytes float64 }

// paceOf measures the pace on the first runs of a case.
func paceOf(list []jobfile.Position, v hung, e effort) (pace, error) {
	took, held, seconds, bytes := 0.0, 0.0, 0.0, 0.0
	for i, pos := range list {
		cost, err := field.Estimate(pos.Problem, field.MeshOptions{MemoryLimit: e.memory})
		if err != nil {
			return pace{}, err
		}
		w := v.solutions[i].Work
		took, seconds = took+w.Build+w.Solve, seconds+cost.Seconds
		held, bytes = held+float64(w.OperatorBytes), bytes+float64(cost.Bytes)
	}
	return pace{max(1, took/seconds), max(1, held/bytes)}, nil
}

// announce says what a run that takes more than a few seconds will take: the
// case, unless it is done, the second mesh and the other arrangements together.
func announce(lead string, list []jobfile.Position, second, first bool, e effort, as pace) error {
	seconds, bytes, panels := 0.0, int64(0), 0
	count := func(p field.MeshProblem, times float64) error {
		cost, err := field.Estimate(p, field.MeshOptions{MemoryLimit: e.memory})
		if err != nil {
			return err
		}
		seconds, panels = seconds+times*as.seconds*cost.Seconds, max(panels, cost.Unknowns)
		bytes = max(bytes, int64(as.bytes*float64(cost.Bytes)))
		return nil
	}
	// Other arrangements have bodies more than the case, and panels to match.
	times, once := 0.0, 0.0
	if first {
		times, once = 1, 1
	}
	if e.advice {
		times += 1.3 * solvesOfAdvice
	}
	for i, pos := range list {
		if err := count(pos.Problem, times); err != nil {
			return err
		}
		if i == 0 && e.advice {
			times = once + 1.3*(solvesOfAdvice-3) // all but the turned ones change every position
		}
		if second {
			if err := count(field.Refined(pos.Problem), 1); err != nil {
				return err
			}
		}
	}
	if seconds > 15 {
		e.say("%sup to %d panels, some %.0f s in all (up to three times that for a thin or crowded body), %s of memory, "+
			"at most %s",
			lead, panels, seconds, memory(bytes), memory(e.memory))
	}
	return nil
}

func memory(b int64) string {
	if b < 1e9 {
		return fmt.Sprintf("%.0f MB", float64(b)/1e6)
	}
	return fmt.Sprintf("%.1f GB", float64(b)/1e9)
}

// hangMesh solves one arrangement.
func hangMesh(ctx context.Context, p field.MeshProblem, what string, e effort) (*field.MeshSolution, coat.Way, error) {
	o := field.MeshOptions{MemoryLimit: e.memory, Progress: func(stage string, done, total int) {
		e.progress(what, stage, done,
			total)
	}}
	s, err := field.Solve(ctx, p, o)
	if err != nil {
		return nil, coat.Way{}, err
	}
	surface, err := coat.FromField(p, s, 0)
	if err != nil {
		return nil, coat.Way{}, err
	}
	// The metal on the fellows of a rack is spent as well as that on robbers.
	var others []units.Current
	for i := range s.Surfaces {
		if i > 0 && s.Surfaces[i].Kind == current.Cathode {
			others = append(others, s.Surfaces[i].Total)
		}
	}
	return s, coat.Way{Surface: surface, Robbed: robbed(others)}, nil
}
