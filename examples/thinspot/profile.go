package main

import (
	"context"
	"fmt"
	"math"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/units"
)

func solveProfile(ctx context.Context, c jobfile.Case, e effort) (*result, error) {
	e.progress("profile", "as it hangs", 0, 1)
	first, s, err := hangProfile(ctx, c.Cell, axi.ProfileOptions{MaxUnknowns: 2000})
	if err != nil {
		return nil, err
	}
	p := s.Parts[0]
	r := &result{c: c, surface: first.Surface, profile: s, part: p.Name, area: p.Area, total: s.Current,
		current: p.Current,
		voltage: s.Voltage, balance: s.Checks.Balance, unknowns: s.Checks.Unknowns, faces: len(first.Surface.Patches)}
	r.volume = volumeOf(p.Samples)
	for _, w := range s.Warnings {
		r.warnings = append(r.warnings, w.String())
	}
	if err := r.finish(); err != nil {
		return nil, err
	}
	if !e.advice {
		return r, nil
	}
	// The others are solved on a simpler mesh, and so is what they are held against.
	coarse := axi.ProfileOptions{Order: 6, Levels: 2, MaxUnknowns: 2000}
	same, _, err := hangProfile(ctx, c.Cell, coarse)
	if err != nil {
		return nil, err
	}
	if same.Surface, err = marked(&c, same.Surface); err != nil {
		return nil, err
	}
	same.Name = "as it hangs"
	return r, r.compare(ctx, same, profileOthers(c, s, coarse), e)
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
func hangProfile(ctx context.Context, cell axi.ProfileProblem, options axi.ProfileOptions) (coat.Way,
	*axi.ProfileSolution, error) {
	s, err := axi.Solve(ctx, cell, options)
	if err != nil {
		return coat.Way{}, nil, err
	}
	surface, err := coat.FromAxi(s, 0)
	if err != nil {
		return coat.Way{}, nil, err
	}
	var others []units.Current
	for i, p := range s.Parts {
		if i > 0 && p.Kind == current.Cathode {
			others = append(others, p.Current)
		}
	}
	return coat.Way{Surface: surface, Robbed: robbed(others)}, s, nil
}

// A silhouette is the part's place in the half plane.
type silhouette struct {
	rim, low, high units.Length
	floor          units.Length // highest point at the axis; below low when the part has a hole through it
	bore           units.Length // smallest radius
}

func silhouetteOf(samples []axi.ProfileSample) silhouette {
	v := silhouette{low: units.Length(math.Inf(1)), high: units.Length(math.Inf(-1)), bore: units.Length(math.Inf(1)),
		floor: units.Length(math.Inf(-1))}
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

// profileOthers builds arrangements worth comparing.
func profileOthers(c jobfile.Case, s *axi.ProfileSolution, options axi.ProfileOptions) []arrangement {
	total := s.Current
	body := silhouetteOf(s.Parts[0].Samples)
	middle, gap := (body.low+body.high)/2, max(0.2*body.rim, 5*units.Millimetre)
	with := func(change func(*axi.ProfileProblem)) func(context.Context) (coat.Way, error) {
		cell := c.Cell
		cell.Parts = append([]axi.Body(nil), c.Cell.Parts...)
		cell.Drive = current.ByCurrent(total)
		change(&cell)
		return func(ctx context.Context) (coat.Way, error) {
			w, _, err := hangProfile(ctx, cell, options)
			return w, err
		}
	}
	add := func(p axi.Body) func(*axi.ProfileProblem) {
		return func(cell *axi.ProfileProblem) { cell.Parts = append(cell.Parts, p) }
	}

	list := []arrangement{{name: "half the current",
		way: with(func(cell *axi.ProfileProblem) { cell.Drive = current.ByCurrent(total / 2) })}}
	far := arrangement{name: "the anode half as far again"}
	if anode, out := fartherProfile(c, s, body); anode < 0 {
		far.no = "there is no ring of an anode round the part that could be moved out"
	} else {
		far.way = with(func(cell *axi.ProfileProblem) { cell.Parts[anode].Profile = cell.Parts[anode].Profile.Moved(out, 0) })
	}
	list = append(list, far)
	inside := arrangement{name: "an anode inside"}
	if rod, ok := insideProfile(body); ok {
		inside.way = with(add(axi.Body{Name: "anode inside", Kind: current.Anode, Profile: rod}))
	} else {
		inside.no = "the part has no hollow that an anode rod would go into from above"
	}
	list = append(list, inside)
	list = append(list, arrangement{name: fmt.Sprintf("a robber ring %s off the rim, a quarter more current",
		gap.Text(units.Millimetre, 0)), way: with(func(cell *axi.ProfileProblem) {
		cell.Parts = append(cell.Parts, axi.Body{Name: "robber", Profile: axi.Torus(body.rim+gap, middle, 0.06*body.rim),
			Law: c.Cell.Parts[0].Law})
		cell.Drive = current.ByCurrent(total * 1.25)
	})})
	list = append(list, arrangement{name: fmt.Sprintf("a shield %s off the rim", gap.Text(units.Millimetre, 0)),
		way: with(add(axi.Body{Name: "shield", Kind: current.Insulator, Profile: axi.Tube(body.rim+gap, body.rim+gap+
			0.06*body.rim, body.low-gap, body.high+gap)}))})
	return append(list, upsideDown(c, s, middle, options))
}

// fartherProfile finds the first anode that is a ring outside the part and how
// far half of its distance is; -1 when there is none.
func fartherProfile(c jobfile.Case, s *axi.ProfileSolution, body silhouette) (int, units.Length) {
	for i, p := range s.Parts {
		if i >= len(c.Cell.Parts) || p.Kind != current.Anode || len(p.Samples) == 0 {
			continue
		}
		if a := silhouetteOf(p.Samples); a.bore > body.rim {
			return i, (a.bore - body.rim) / 2
		}
	}
	return -1, 0
}

// insideProfile is a rod on the axis in the part's bore or hollow.
func insideProfile(body silhouette) (axi.Profile, bool) {
	height := body.high - body.low
	if body.bore > 0.2*body.rim { // a ring
		return axi.Rod(0.2*body.bore, body.low, body.high), true
	}
	if depth := body.high - body.floor; depth > 0.3*height && depth > 0.2*body.rim {
		return axi.Rod(0.08*body.rim, body.floor+0.35*depth, body.high+0.35*depth), true
	}
	return axi.Profile{}, false
}

// upsideDown hangs the part half of the time upside down.
func upsideDown(c jobfile.Case, s *axi.ProfileSolution, middle units.Length, options axi.ProfileOptions) arrangement {
	return arrangement{name: "upside down half of the time", way: func(ctx context.Context) (coat.Way, error) {
		cell := c.Cell
		cell.Drive = current.ByCurrent(s.Current)
		up, _, err := hangProfile(ctx, cell, options)
		if err != nil {
			return up, err
		}
		cell.Parts = append([]axi.Body(nil), c.Cell.Parts...)
		cell.Parts[0].Profile = cell.Parts[0].Profile.UpsideDown(middle)
		down, _, err := hangProfile(ctx, cell, options)
		if err != nil {
			return up, err
		}
		both, err := together(&c.Bath, []coat.Surface{up.Surface, down.Surface}, []units.Ratio{0.5, 0.5})
		return coat.Way{Surface: both, Robbed: (up.Robbed + down.Robbed) / 2}, err
	}}
}
