package thinspot

import (
	"context"
	"errors"
	"math"
	"slices"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// positions lists where the workpiece hangs, one position when the case has none.
func (c *MeshCell) positions() []Position {
	if len(c.Positions) == 0 {
		return []Position{{Share: 1, Problem: c.Problem}}
	}
	return c.Positions
}

func (u run) solveMesh(ctx context.Context) (*Result, error) {
	list := u.c.Mesh.positions()
	r := &Result{Case: u.c, Mended: u.c.Mesh.Mended}
	// The cost is told before anything is solved, and told again when the first mesh shows that
	// the estimate was too low: whoever waits can still end the run.
	p, err := u.planOf(list)
	if err != nil {
		return nil, err
	}
	as := pace{1, 1}
	r.ErrorUnknown = p.noFiner(as)
	u.o.Announce(p.cost(as, r.ErrorUnknown, false))
	coarse, err := u.positions(ctx, list, "mesh of the case")
	if err != nil {
		return nil, err
	}
	best := coarse
	// When the first run was slower or larger than it should have been, so will the others be.
	if as = p.paceOf(coarse.solutions); as.seconds > 1.5 || as.bytes > 1.2 {
		if r.ErrorUnknown == "" {
			r.ErrorUnknown = p.noFiner(as)
		}
		u.o.Announce(p.cost(as, r.ErrorUnknown, true))
	}
	if r.ErrorUnknown == "" {
		if best, err = u.positions(ctx, refined(list), "finer mesh"); err != nil {
			return nil, err
		}
		if err := best.errorAgainst(coarse, u.c.Significant); err != nil {
			return nil, err
		}
	}
	if err := r.take(best); err != nil {
		return nil, err
	}
	r.Faces = len(list[0].Problem.Surfaces[0].Triangles)
	if err := u.finish(r, best.way.Surface); err != nil || u.o.NoAdvice {
		return r, err
	}
	// The others are solved on the first mesh, and so is what they are held against.
	r.Others, err = u.compare(ctx, coarse.way, meshWays{&u, list, coarse}.all())
	return r, err
}

// A hung is the case solved on one mesh, in all positions.
type hung struct {
	way       coat.Way // in the bath of the case
	problems  []field.MeshProblem
	solutions []*field.MeshSolution
	surfaces  []coat.Surface
}

// positions solves every position of a list.
func (u run) positions(ctx context.Context, list []Position, what string) (hung, error) {
	var v hung
	var shares []units.Ratio
	for _, pos := range list {
		s, w, err := u.hangMesh(ctx, pos.Problem, what)
		if err != nil {
			return v, err
		}
		v.problems, v.solutions = append(v.problems, pos.Problem), append(v.solutions, s)
		v.surfaces = append(v.surfaces, w.Surface)
		v.way.Robbed += units.Current(float64(pos.Share) * float64(w.Robbed))
		shares = append(shares, pos.Share)
	}
	v.way.Surface = v.surfaces[0]
	if len(list) == 1 {
		return v, nil
	}
	var err error
	v.way.Surface, err = together(&u.c.Bath, v.surfaces, shares)
	return v, err
}

// refined is a list of positions on a mesh of half the panel size.
func refined(list []Position) []Position {
	list = slices.Clone(list)
	for k := range list {
		list[k].Problem = field.Refined(list[k].Problem)
	}
	return list
}

// errorAgainst estimates the error of the least density from the coarser mesh.
func (v *hung) errorAgainst(coarse hung, significant coat.Selector) error {
	// With one position and all of the surface significant, the two solutions are compared as
	// they are. Else the least density must be found among significant patches, over all
	// positions together.
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
	// The thinnest spot may have moved between the meshes. Both changes count: that of the least
	// density wherever it lies, and that at the spot where it now is.
	spot := to[here]
	same := least(from, func(a, b coat.Patch) bool {
		return r3.Norm2(r3.Sub(a.At, spot.At)) < r3.Norm2(r3.Sub(b.At, spot.At))
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
func (r *Result) take(v hung) error {
	s := v.solutions[0]
	r.Mesh = meshOf(v.problems[0], 0)
	rep, err := mesh.Check(r.Mesh)
	if err != nil {
		return err
	}
	r.Workpiece, r.Area, r.Volume = s.Surfaces[0].Name, rep.Area, rep.Volume
	r.Total, r.Current, r.Voltage = s.Current, s.Surfaces[0].Total, s.CellVoltage
	r.Balance, r.Unknowns = s.Checks.CurrentImbalance, s.Work.Unknowns
	for _, k := range v.solutions {
		for _, w := range k.Warnings {
			r.Warnings = append(r.Warnings, strings.TrimPrefix(w.Surface+": "+w.Text, ": ")) // some are about all surfaces
		}
	}
	for i := range s.Surfaces {
		if s.Surfaces[i].Kind == current.Floating {
			r.Warnings = append(r.Warnings, s.Surfaces[i].Name+
				": hangs without a wire: one side of it plates and the other dissolves into the bath")
		}
	}
	return nil
}

// hangMesh solves one arrangement.
func (u run) hangMesh(ctx context.Context, p field.MeshProblem, what string) (s *field.MeshSolution, w coat.Way,
	err error) {
	o := field.MeshOptions{MemoryLimit: u.o.Memory, Progress: func(stage string, done, total int) {
		u.o.Progress(what, stage, done, total)
	}}
	if s, err = field.Solve(ctx, p, o); err != nil {
		return nil, w, err
	}
	w.Surface, err = coat.FromField(p, s, 0)
	// The metal on the fellows of a rack is spent as well as that on robbers.
	for i := range s.Surfaces {
		if i > 0 && s.Surfaces[i].Kind == current.Cathode {
			w.Robbed += max(0, s.Surfaces[i].Total)
		}
	}
	return s, w, err
}
