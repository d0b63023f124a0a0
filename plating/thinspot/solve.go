package thinspot

import (
	"context"
	"fmt"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// Options say what a run does and what it may take. The zero value does everything.
type Options struct {
	NoAdvice  bool           // do not compute other arrangements
	Quick     bool           // do not solve on a second mesh to find the error; by mesh only
	Memory    int64          // most bytes that a run may take, by mesh; 0 for 4 GB
	FinerTime units.Duration // most that the second mesh may take; 0 for two minutes

	// Progress is called while a run goes on: what is solved, the stage of it, and how
	// much of that stage is done.
	Progress func(what, stage string, done, total int)
	// Announce is called by mesh, before anything is solved, with what the run will take;
	// and once more when the first mesh took more than that, with what is still to come.
	Announce func(RunCost)
}

// filled is the options with their defaults filled in.
func (o Options) filled() (Options, error) {
	if o.Memory < 0 {
		return o, &units.ValueError{Field: "memory", Value: fmt.Sprint(o.Memory), Need: "bytes, or 0 for 4 GB",
			Err: units.ErrNegative}
	}
	if o.Memory == 0 {
		o.Memory = 4e9
	}
	if err := units.NonNegative("time of the finer mesh", o.FinerTime); err != nil {
		return o, err
	}
	if o.FinerTime == 0 {
		o.FinerTime = 2 * units.Minute
	}
	if o.Progress == nil {
		o.Progress = func(string, string, int, int) {}
	}
	if o.Announce == nil {
		o.Announce = func(RunCost) {}
	}
	return o, nil
}

// Words of progress and of what is not tried, for both methods.
const (
	otherWays = "other arrangements"
	noHollow  = "the part has no hollow that an anode rod would go into from above"
)

// A run solves one case.
type run struct {
	c Case
	o Options
}

// Solve computes the current distribution, lays the coat until the thinnest
// significant spot has the minimum thickness, and compares other arrangements.
//
// A cancelled ctx ends the run: by mesh within a stage, by profile while the
// equations are set up and between the steps of the solution; solving one set of
// equations, of some seconds at most, is not interrupted.
//
// The time is that of [coat.TimeFor]; the ratio, the metal above the minimum thickness and
// the percentiles are those of [coat.Lay] at that time. Area that is too thin in nine
// tenths of the time tells how sharp the limit is.
//
// Valid range: that of [axi.Solve] and [field.Solve]; a thinnest spot that gets less than a
// tenth of the average is warned of, for the time then goes by a corner that hardly plates.
//
// Accuracy: [coat.Surface.MinError] of the result, and package thinspot's comment.
//
// Errors: ctx.Err(); a [*field.CostError] for what takes more than the memory
// allowed; those of [axi.Solve], [field.Solve] and [coat.TimeFor]. What befalls one
// of the other arrangements is the error of its outcome.
func (c Case) Solve(ctx context.Context, o Options) (Result, error) {
	o, err := o.filled()
	if err != nil {
		return Result{}, err
	}
	if ctx == nil {
		return Result{}, units.Missing("context", "one that can end the run, as context.Background()")
	}
	solve := run{c, o}.solveProfile
	if c.Mesh != nil {
		solve = run{c, o}.solveMesh
	}
	r, err := solve(ctx)
	if err != nil {
		return Result{}, err
	}
	return *r, nil
}

// marked marks the significant surface of the case.
func (u run) marked(s coat.Surface) (coat.Surface, error) {
	if u.c.Significant == nil {
		return s, nil
	}
	return s.Mark(u.c.Significant)
}

// finish lays the coat on the surface that a solution gave.
func (u run) finish(r *Result, s coat.Surface) (err error) {
	b, least := &u.c.Bath, u.c.MinThickness
	// The mark comes first, since only significant patches decide the time. Then the time until
	// the thinnest of them has the minimum thickness, the coat everywhere at that time, and what
	// of it is given away. A second coat at nine tenths of the time tells how sharp the limit
	// is: a large area below the minimum there means that a little less time spoils much.
	if r.Surface, err = u.marked(s); err != nil {
		return err
	}
	t, err := coat.TimeFor(r.Surface, b, least)
	if err != nil {
		return err
	}
	if r.Coat, err = coat.Lay(r.Surface, b, t); err != nil {
		return err
	}
	if r.Above, err = r.Coat.GivenAway(r.Surface, b, least); err != nil {
		return err
	}
	sooner, err := coat.Lay(r.Surface, b, 0.9*t)
	if err != nil {
		return err
	}
	if r.Below, err = sooner.Below(r.Surface, least); err != nil {
		return err
	}
	// Spot and warnings are found once, so that text, JSON and pictures agree on them.
	r.Spot, r.Where = r.Surface.Patches[r.Coat.MinPatch].At, r.where(r.Coat.MinPatch)
	r.warn()
	solution := b.Solution()
	if line := plating.TankLine(solution.AtTank()); line != "" {
		r.Cautions = append(r.Cautions, line)
	}
	for _, n := range slices.Concat(solution.Review(), plating.FrontCautions(0)) {
		r.Cautions = append(r.Cautions, n.Line())
	}
	r.Ratio, err = r.Coat.Distribution(r.Surface)
	return err
}

// warn says what is wrong with the coat: metal that dissolves, a spot that gets next
// to nothing, and current outside the bath's figures, where it burns or stays dull.
func (r *Result) warn() {
	say := func(format string, args ...any) { r.Warnings = append(r.Warnings, fmt.Sprintf(format, args...)) }
	area := func(a units.Area) string { return a.Text(units.SquareCentimetre, 1) }
	density := func(j units.CurrentDensity) string { return j.Text(units.AmperePerSquareDecimetre, 2) }
	if a := r.Coat.EfficiencyHeld; a > 0 {
		say("on %s the current density lies outside the efficiency curve; its end value was held: "+
			"add a point to the curve there", area(a))
	}
	if a := r.Coat.Dissolving; a > 0 {
		say("on %s metal dissolves: check that the part has contact", area(a))
	}
	if r.Coat.MinToAverage < 0.1 {
		say("the thinnest spot gets %s of the average: name another significant surface (\"significant\" in the case), "+
			"or hang the part in another way", r.Coat.MinToAverage.Percent(1))
	}
	var above, below units.Area
	w := r.Case.Bath.Window
	for _, p := range r.Surface.Patches {
		switch {
		case w.High > 0 && p.Density > w.High:
			above += p.Area
		case p.Density < w.Low:
			below += p.Area
		}
	}
	if above > 0 {
		say("on %s the current density is above the bath's window, over %s: it may burn there. "+
			"Less current helps, or a robber or shield at that place", area(above), density(w.High))
	}
	if below > 0 {
		say("on %s the current density is below the bath's window, under %s: it may stay dull or bare. "+
			"More current helps, or an anode nearer to it", area(below), density(w.Low))
	}
}

// A NotTriedError is why an arrangement was not computed.
type NotTriedError struct{ Why string }

// Error returns the reason.
func (e *NotTriedError) Error() string { return fmt.Sprintf("not tried: %.300s", e.Why) }

// An arrangement is another way to hang the workpiece. Its way may be several
// positions with their shares of the time.
type arrangement struct {
	name string
	way  func(context.Context) (coat.Way, error)
	no   string // why it is not tried
}

// compare solves the other arrangements and holds them against the first, which is
// marked here too: it is solved on the same mesh as they are.
func (u run) compare(ctx context.Context, first coat.Way, list []arrangement) ([]coat.Outcome, error) {
	var err error
	if first.Surface, err = u.marked(first.Surface); err != nil {
		return nil, err
	}
	// Every way is held against the first at the same minimum thickness. A way that fails stays in
	// the list with its reason, behind those that worked.
	first.Name = "as it hangs"
	ways := []coat.Way{first}
	var failed, skipped []coat.Outcome
	for i, a := range list {
		if a.no != "" {
			skipped = append(skipped, coat.Outcome{Name: a.name, Err: &NotTriedError{a.no}})
			continue
		}
		u.o.Progress(otherWays, a.name, i, len(list))
		w, err := a.way(ctx)
		if ctx.Err() != nil {
			return nil, ctx.Err()
		}
		if err == nil {
			// Also where the part is turned half of the time, places and normals are
			// those of the part as it hangs.
			w.Name = a.name
			w.Surface, err = u.marked(w.Surface)
		}
		if err != nil {
			failed = append(failed, coat.Outcome{Name: a.name, Err: err})
			continue
		}
		ways = append(ways, w)
	}
	out, err := coat.Compare(ways, &u.c.Bath, u.c.MinThickness)
	return slices.Concat(out, failed, skipped), err
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
		average, _ := one.Efficiency.At(s.Patches[i].Density)
		// Positions differ in current density, and the efficiency with it, so densities cannot be
		// averaged. Growth can: it is averaged, and turned back into the one density that grows as
		// much.
		j, ok := densityFor(b, float64(average)*float64(s.Patches[i].Density))
		if !ok {
			return s, fmt.Errorf("no current density grows what patch %d gets in the positions together", i+1)
		}
		s.Patches[i].Density = j
	}
	return s, nil
}

// half is two ways, each for half of the time.
func half(c Case, a, b coat.Way) (coat.Way, error) {
	s, err := together(&c.Bath, []coat.Surface{a.Surface, b.Surface}, []units.Ratio{0.5, 0.5})
	return coat.Way{Surface: s, Robbed: (a.Robbed + b.Robbed) / 2}, err
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
	// No efficiency is above 1, so the density is at least what is wanted: the search starts
	// there and doubles until growth suffices. Halving then closes in on the crossing between.
	low, high := 0.0, want
	for k := 0; grown(high) < want; k++ {
		if k > 60 {
			return 0, false
		}
		low, high = high, 2*high
	}
	// Two hundred halvings are more than a float has bits; the interval has closed long before.
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
