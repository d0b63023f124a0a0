package main

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// A result is a computed case, by profile or by mesh.
type result struct {
	c       jobfile.Case
	surface coat.Surface
	time    units.Duration
	coat    coat.Coat
	away    units.Mass // above the minimum thickness
	below   units.Area // thinner than the minimum thickness in nine tenths of the time
	dist    plating.Distribution
	advice  []coat.Outcome
	skipped []arrangement // other arrangements that were not tried, and why

	part     string // name of the workpiece
	area     units.Area
	volume   units.Volume
	total    units.Current // of all cathodes
	current  units.Current // of the workpiece
	voltage  units.Voltage
	balance  float64
	unknowns int
	warnings []string
	second   string // why there is no second mesh; "" when there is one

	profile *axi.ProfileSolution // by profile
	mesh    mesh.Mesh            // by mesh: the part as it was solved
	faces   int                  // of the part as the case gives it
}

// An effort says how much a run may take.
type effort struct {
	advice   bool
	second   bool // solve on a second mesh for the error
	memory   int64
	seconds  float64 // that a second mesh may take
	progress func(what, stage string, done, total int)
	say      func(format string, args ...any)
}

func solve(ctx context.Context, c jobfile.Case, e effort) (*result, error) {
	if c.Mesh != nil {
		return solveMesh(ctx, c, e)
	}
	return solveProfile(ctx, c, e)
}

// finish lays the coat on the surface that a solution gave.
func (r *result) finish() error {
	var err error
	if r.surface, err = marked(&r.c, r.surface); err != nil {
		return err
	}
	if r.time, err = coat.TimeFor(r.surface, &r.c.Bath, r.c.MinThickness); err != nil {
		return err
	}
	if r.coat, err = coat.Lay(r.surface, &r.c.Bath, r.time); err != nil {
		return err
	}
	if r.away, err = r.coat.GivenAway(r.surface, &r.c.Bath, r.c.MinThickness); err != nil {
		return err
	}
	sooner, err := coat.Lay(r.surface, &r.c.Bath, 0.9*r.time)
	if err != nil {
		return err
	}
	if r.below, err = sooner.Below(r.surface, r.c.MinThickness); err != nil {
		return err
	}
	if r.coat.MinToAverage < 0.1 {
		r.warnings = append(r.warnings,
			fmt.Sprintf("the thinnest spot gets %s of the mean: name another significant surface (\"significant\" in the case), or hang the part in another way", r.coat.MinToAverage.Percent(1)))
	}
	r.dist, err = r.coat.Distribution(r.surface)
	r.window()
	return err
}

// window warns of area that is plated outside the bath's window of current
// density: burnt above it, dull or bare below.
func (r *result) window() {
	var above, below units.Area
	w := r.c.Bath.Window
	for _, p := range r.surface.Patches {
		switch {
		case w.High > 0 && p.Density > w.High:
			above += p.Area
		case p.Density < w.Low:
			below += p.Area
		}
	}
	if above > 0 {
		r.warnings = append(r.warnings,
			fmt.Sprintf("on %s the current density is above the bath's window, over %s: it may burn there",
				above.Text(units.SquareCentimetre, 1), w.High.Text(units.AmperePerSquareDecimetre, 2)))
	}
	if below > 0 {
		r.warnings = append(r.warnings, fmt.Sprintf("on %s the current density is below the bath's window, under %s",
			below.Text(units.SquareCentimetre, 1), w.Low.Text(units.AmperePerSquareDecimetre, 2)))
	}
}

// marked marks the significant surface of the case.
func marked(c *jobfile.Case, s coat.Surface) (coat.Surface, error) {
	if c.Significant == nil {
		return s, nil
	}
	return s.Mark(c.Significant)
}

// An arrangement is another way to hang the part. Its ways may be several
// positions with their shares of the time.
type arrangement struct {
	name string
	way  func(context.Context) (coat.Way, error)
	no   string // why it is not tried
}

// compare solves the other arrangements and holds them against the first.
func (r *result) compare(ctx context.Context, first coat.Way, others []arrangement, e effort) error {
	ways := []coat.Way{first}
	var failed []coat.Outcome
	for i, o := range others {
		if o.no != "" {
			r.skipped = append(r.skipped, o)
			continue
		}
		e.progress("other arrangements", o.name, i, len(others))
		w, err := o.way(ctx)
		if ctx.Err() != nil {
			return ctx.Err()
		}
		if err == nil {
			// Also where the part is turned half of the time, places and normals are
			// those of the part as it hangs.
			w.Name = o.name
			w.Surface, err = marked(&r.c, w.Surface)
		}
		if err != nil {
			failed = append(failed, coat.Outcome{Name: o.name, Err: err})
			continue
		}
		ways = append(ways, w)
	}
	var err error
	if r.advice, err = coat.Compare(ways, &r.c.Bath, r.c.MinThickness); err != nil {
		return err
	}
	r.advice = append(r.advice, failed...)
	return nil
}

// robbed sums what robbers and other cathodes take.
func robbed(currents []units.Current) units.Current {
	var sum units.Current
	for _, i := range currents {
		sum += units.Current(math.Max(0, float64(i)))
	}
	return sum
}

// together adds positions, each for a share of the time. It returns the
// densities that, held all the time in the bath of the case, grow the same coat:
// η(j)·j = Σ x·η(j_k)·j_k at each patch.
func together(b *plating.OperatingBath, positions []coat.Surface, shares []units.Ratio) (coat.Surface, error) {
	s, one, err := coat.Schedule(positions, shares, b)
	if err != nil {
		return s, err
	}
	s.Patches = slices.Clone(s.Patches)
	for i := range s.Patches {
		mean, _ := one.Efficiency.At(s.Patches[i].Density)
		j, ok := densityFor(b, float64(mean)*float64(s.Patches[i].Density))
		if !ok {
			return s, fmt.Errorf("no current density grows what patch %d gets in the positions together", i+1)
		}
		s.Patches[i].Density = j
	}
	return s, nil
}

// densityFor solves η(j)·j = want for the smallest j, by doubling and halving.
func densityFor(b *plating.OperatingBath, want float64) (units.CurrentDensity, bool) {
	if want <= 0 {
		return units.CurrentDensity(want), true
	}
	grown := func(j float64) float64 {
		eff, _ := b.Efficiency.At(units.CurrentDensity(j))
		return float64(eff) * j
	}
	low, high := 0.0, want
	for k := 0; grown(high) < want; k++ {
		if k > 60 {
			return 0, false
		}
		low, high = high, 2*high
	}
	for range 200 {
		mid := low + (high-low)/2
		if grown(mid) < want {
			low = mid
		} else {
			high = mid
		}
	}
	return units.CurrentDensity(high), true
}
