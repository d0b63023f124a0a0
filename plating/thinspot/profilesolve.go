package thinspot

import (
	"context"
	"fmt"
	"math"
	"slices"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Meshes of a profile: the workpiece as it hangs is solved on the finer one.
var (
	fineProfile   = axi.ProfileOptions{MaxUnknowns: 2000}
	coarseProfile = axi.ProfileOptions{Order: 6, Levels: 2, MaxUnknowns: 2000}
)

func (u run) solveProfile(ctx context.Context) (*Result, error) {
	u.o.Progress("profile", "as it hangs", 0, 1)
	first, s, err := hangProfile(ctx, u.c.Cell, fineProfile)
	if err != nil {
		return nil, err
	}
	p := s.Parts[0]
	r := &Result{Case: u.c, Workpiece: p.Name, Area: p.Area, Volume: volumeOf(p.Samples), Total: s.Current,
		Current: p.Current, Voltage: s.Voltage, Balance: s.Checks.Balance, Unknowns: s.Checks.Unknowns,
		Faces: len(first.Surface.Patches)}
	// The place along the profile is kept for just those samples that become patches, in their
	// order.
	for _, v := range p.Samples {
		if v.Area > 0 && v.Density != 0 { // those that coat.FromAxi makes patches of
			r.Along = append(r.Along, v.S)
		}
	}
	for _, w := range s.Warnings {
		r.Warnings = append(r.Warnings, w.String())
	}
	if err := u.finish(r, first.Surface); err != nil || u.o.NoAdvice {
		return r, err
	}
	// The others are solved on a simpler mesh, and so is what they are held against.
	same, _, err := hangProfile(ctx, u.c.Cell, coarseProfile)
	if err != nil {
		return nil, err
	}
	r.Others, err = u.compare(ctx, same, profileWays(u.c, s))
	return r, err
}

// volumeOf is the volume of the body between the profile and the axis, by rings
// of the solution: the divergence theorem over the samples.
func volumeOf(samples []axi.ProfileSample) units.Volume {
	v := 0.0
	for _, s := range samples {
		v += float64(s.Area) * (float64(s.At.R)*s.NormalR + float64(s.At.Z)*s.NormalZ) / 3
	}
	return units.Volume(math.Abs(v))
}

// hangProfile solves one arrangement.
func hangProfile(ctx context.Context, cell axi.ProfileProblem, options axi.ProfileOptions) (w coat.Way,
	s *axi.ProfileSolution, err error) {
	if s, err = axi.Solve(ctx, cell, options); err != nil {
		return w, nil, err
	}
	w.Surface, err = coat.FromAxi(s, 0)
	for i, p := range s.Parts {
		if i > 0 && p.Kind == current.Cathode {
			w.Robbed += max(0, p.Current)
		}
	}
	return w, s, err
}

// A silhouette is a body's place in the half plane.
type silhouette struct {
	rim, low, high units.Length
	floor          units.Length // highest point at the axis; below low when the body has a hole through it
	bore           units.Length // smallest radius
}

func silhouetteOf(samples []axi.ProfileSample) silhouette {
	far := units.Length(math.Inf(1))
	v := silhouette{low: far, high: -far, bore: far, floor: -far}
	for _, s := range samples {
		v.rim, v.bore = max(v.rim, s.At.R), min(v.bore, s.At.R)
		v.low, v.high = min(v.low, s.At.Z), max(v.high, s.At.Z)
	}
	for _, s := range samples {
		if s.At.R < 0.15*v.rim {
			v.floor = max(v.floor, s.At.Z)
		}
	}
	return v
}

// profileWays builds arrangements worth comparing.
func profileWays(c Case, s *axi.ProfileSolution) []arrangement {
	// The other arrangements run at the current of the case, also where the case holds a
	// voltage: else a shield would seem better merely by letting less current through.
	total := s.Current
	body := silhouetteOf(s.Parts[0].Samples)
	middle, gap := (body.low+body.high)/2, max(0.2*body.rim, 5*units.Millimetre)
	off := gap.Text(units.Millimetre, 0) + " off the rim"
	with := func(change func(*axi.ProfileProblem)) func(context.Context) (coat.Way, error) {
		cell := c.Cell
		cell.Parts = slices.Clone(c.Cell.Parts)
		cell.Drive = current.ByCurrent(total)
		change(&cell)
		return func(ctx context.Context) (coat.Way, error) {
			w, _, err := hangProfile(ctx, cell, coarseProfile)
			return w, err
		}
	}
	add := func(p axi.Revolved) func(*axi.ProfileProblem) {
		return func(cell *axi.ProfileProblem) { cell.Parts = append(cell.Parts, p) }
	}
	far := arrangement{name: "the anode half as far again"}
	if anode, out := fartherProfile(c, s, body); anode < 0 {
		far.no = "there is no ring of an anode round the part that could be moved out"
	} else {
		far.way = with(func(cell *axi.ProfileProblem) {
			cell.Parts[anode].Profile = cell.Parts[anode].Profile.Moved(out, 0)
		})
	}
	inside := arrangement{name: "an anode inside", no: noHollow}
	if rod, ok := insideProfile(body); ok {
		inside.no, inside.way = "", with(add(axi.Revolved{Name: "anode inside", Kind: current.Anode, Profile: rod}))
	}
	upright, upsideDown := with(func(*axi.ProfileProblem) {}), with(func(cell *axi.ProfileProblem) {
		cell.Parts[0].Profile = cell.Parts[0].Profile.UpsideDown(middle)
	})
	return []arrangement{
		{name: "half the current", way: with(func(cell *axi.ProfileProblem) { cell.Drive = current.ByCurrent(total / 2) })},
		far, inside,
		{name: fmt.Sprintf("a robber ring %s, a quarter more current", off), way: with(func(cell *axi.ProfileProblem) {
			add(axi.Revolved{Name: "robber", Law: c.Cell.Parts[0].Law,
				Profile: axi.Torus(body.rim+gap, middle, 0.06*body.rim)})(cell)
			cell.Drive = current.ByCurrent(total * 1.25)
		})},
		{name: "a shield " + off, way: with(add(axi.Revolved{Name: "shield", Kind: current.Insulator,
			Profile: axi.Tube(body.rim+gap, body.rim+gap+0.06*body.rim, body.low-gap, body.high+gap)}))},
		{name: "upside down half of the time", way: func(ctx context.Context) (coat.Way, error) {
			up, err := upright(ctx)
			if err != nil {
				return up, err
			}
			down, err := upsideDown(ctx)
			if err != nil {
				return up, err
			}
			return half(c, up, down)
		}},
	}
}

// fartherProfile finds the first anode that is a ring outside the workpiece and how
// far half of its distance is; -1 when there is none.
func fartherProfile(c Case, s *axi.ProfileSolution, body silhouette) (int, units.Length) {
	for i, p := range s.Parts {
		if i >= len(c.Cell.Parts) || p.Kind != current.Anode || len(p.Samples) == 0 {
			continue
		}
		// Only a ring that lies wholly outside the piece can move outwards without touching it.
		if a := silhouetteOf(p.Samples); a.bore > body.rim {
			return i, (a.bore - body.rim) / 2
		}
	}
	return -1, 0
}

// insideProfile is a rod on the axis in the workpiece's bore or hollow.
func insideProfile(body silhouette) (axi.Profile, bool) {
	height := body.high - body.low
	// A rod must hang free: a fifth of a bore, or in a hollow that is deep enough to need one.
	if body.bore > 0.2*body.rim { // a ring
		return axi.Rod(0.2*body.bore, body.low, body.high), true
	}
	if depth := body.high - body.floor; depth > 0.3*height && depth > 0.2*body.rim {
		return axi.Rod(0.08*body.rim, body.floor+0.35*depth, body.high+0.35*depth), true
	}
	return axi.Profile{}, false
}
