package main

import (
	"context"
	"errors"
	"fmt"
	"math"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

func solveMesh(ctx context.Context, c jobfile.Case, e effort) (*result, error) {
	cell := c.Mesh
	if len(cell.Positions) == 0 {
		cell = &jobfile.MeshCell{Problem: cell.Problem, Positions: []jobfile.Position{{Share: 1, Problem: cell.Problem}}, Mended: cell.Mended}
	}
	r := &result{c: c, part: cell.Problem.Surfaces[0].Name, faces: len(cell.Problem.Surfaces[0].Triangles)}
	for _, m := range cell.Mended {
		r.warnings = append(r.warnings, "mended "+m)
	}
	coarse, err := r.positions(ctx, cell.Positions, false, e)
	if err != nil {
		return nil, err
	}
	best := coarse
	if r.second = tooDear(cell.Positions, e); r.second == "" {
		fine, err := r.positions(ctx, cell.Positions, true, e)
		if err != nil {
			return nil, err
		}
		if err := fine.errorAgainst(coarse); err != nil {
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
	return r, r.compare(ctx, first, meshOthers(r, coarse.solutions[0], e), e)
}

// A hung is the case solved on one mesh, in all positions.
type hung struct {
	way       coat.Way // in the bath of the case
	problems  []field.Problem
	solutions []*field.Solution
	surfaces  []coat.Surface
	minError  float64
}

// positions solves every position on the mesh of the case or on a finer one.
func (r *result) positions(ctx context.Context, list []jobfile.Position, fine bool, e effort) (hung, error) {
	var v hung
	var shares []units.Ratio
	what := "mesh of the case"
	if fine {
		what = "finer mesh"
	}
	for _, pos := range list {
		p := pos.Problem
		if fine {
			p = field.Refined(p)
		}
		s, w, err := hangMesh(ctx, p, what, e)
		if err != nil {
			return v, err
		}
		v.problems, v.solutions, v.surfaces = append(v.problems, p), append(v.solutions, s), append(v.surfaces, w.Surface)
		v.way.Robbed += units.Current(float64(pos.Share) * float64(w.Robbed))
		shares = append(shares, pos.Share)
	}
	v.way.Surface, v.minError = v.surfaces[0], math.NaN()
	if len(list) == 1 {
		return v, nil
	}
	var err error
	v.way.Surface, err = together(&r.c.Bath, v.surfaces, shares)
	return v, err
}

// errorAgainst estimates the error of the least density from the coarser mesh.
func (v *hung) errorAgainst(coarse hung) error {
	v.minError = 0
	for k := range v.solutions {
		d, err := field.Compare(coarse.solutions[k], v.solutions[k])
		if err != nil {
			return err
		}
		v.minError = math.Max(v.minError, math.Max(math.Abs(d[0].Minimum), math.Abs(d[0].AtSpot)))
		v.way.Surface.Unresolved = v.way.Surface.Unresolved || d[0].Unresolved
	}
	v.way.Surface.MinError = v.minError
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
			r.warnings = append(r.warnings, w.Surface+": "+w.Text)
		}
	}
	for i := range s.Surfaces {
		if s.Surfaces[i].Kind == field.Floating {
			r.warnings = append(r.warnings, s.Surfaces[i].Name+": hangs without a wire: one side of it plates and the other dissolves into the bath")
		}
	}
	return nil
}

// tooDear says why a second mesh is not solved; "" when it is.
func tooDear(list []jobfile.Position, e effort) string {
	if !e.second {
		return "not asked for"
	}
	seconds := 0.0
	for _, pos := range list {
		cost, err := field.Estimate(field.Refined(pos.Problem), field.Options{MemoryLimit: e.memory})
		var big *field.CostError
		if errors.As(err, &big) {
			return fmt.Sprintf("a finer mesh would take %s", memory(big.Cost.Bytes))
		}
		if err != nil {
			return err.Error()
		}
		seconds += cost.Seconds
	}
	if seconds > e.seconds {
		return fmt.Sprintf("a finer mesh would take some %.0f s", seconds)
	}
	return ""
}

func memory(b int64) string {
	if b < 1e9 {
		return fmt.Sprintf("%.0f MB", float64(b)/1e6)
	}
	return fmt.Sprintf("%.1f GB", float64(b)/1e9)
}

// hangMesh solves one arrangement.
func hangMesh(ctx context.Context, p field.Problem, what string, e effort) (*field.Solution, coat.Way, error) {
	o := field.Options{MemoryLimit: e.memory, Progress: func(stage string, done, total int) { e.progress(what, stage, done, total) }}
	if cost, err := field.Estimate(p, o); err != nil {
		return nil, coat.Way{}, err
	} else if cost.Seconds > 20 {
		e.say("%s: %d panels, some %.0f s, %s", what, cost.Unknowns, cost.Seconds, memory(cost.Bytes))
	}
	s, err := field.Solve(ctx, p, o)
	if err != nil {
		return nil, coat.Way{}, err
	}
	surface, err := coat.FromField(p, s, 0)
	if err != nil {
		return nil, coat.Way{}, err
	}
	var others []units.Current
	for i := range s.Surfaces {
		if i > 0 && s.Surfaces[i].Kind == field.Cathode {
			others = append(others, s.Surfaces[i].Total)
		}
	}
	return s, coat.Way{Surface: surface, Robbed: robbed(others)}, nil
}
