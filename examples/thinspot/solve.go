package main

import (
	"context"
	"fmt"
	"math"

	"example.com/laydown/plating"
	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/units"
)

// A result is a computed case.
type result struct {
	c        jobfile.Case
	solution *axi.Solution
	surface  coat.Surface
	time     units.Duration
	coat     coat.Coat
	away     units.Mass // above the promise
	below    units.Area // thinner than the promise in nine tenths of the time
	dist     plating.Distribution
	advice   []coat.Outcome
}

func solve(ctx context.Context, c jobfile.Case, advice bool) (*result, error) {
	way, s, err := hang(ctx, "as it hangs", c.Cell, axi.Options{MaxUnknowns: 2000})
	if err != nil {
		return nil, err
	}
	r := &result{c: c, solution: s, surface: way.Surface}
	if r.time, err = coat.TimeFor(r.surface, &c.Bath, c.Promise); err != nil {
		return nil, err
	}
	if r.coat, err = coat.Lay(r.surface, &c.Bath, r.time); err != nil {
		return nil, err
	}
	if r.away, err = r.coat.GivenAway(r.surface, &c.Bath, c.Promise); err != nil {
		return nil, err
	}
	sooner, err := coat.Lay(r.surface, &c.Bath, 0.9*r.time)
	if err != nil {
		return nil, err
	}
	if r.below, err = sooner.Below(r.surface, c.Promise); err != nil {
		return nil, err
	}
	if r.dist, err = r.coat.Distribution(r.surface); err != nil {
		return nil, err
	}
	if advice {
		ways := []coat.Way{way}
		var failed []coat.Outcome
		for _, o := range others(c, s) {
			w, _, err := hang(ctx, o.name, o.cell, axi.Options{Order: 6, Levels: 2, MaxUnknowns: 2000})
			if ctx.Err() != nil {
				return nil, ctx.Err()
			}
			if err != nil {
				failed = append(failed, coat.Outcome{Name: o.name, Err: err})
				continue
			}
			ways = append(ways, w)
		}
		if r.advice, err = coat.Compare(ways, &c.Bath, c.Promise); err != nil {
			return nil, err
		}
		r.advice = append(r.advice, failed...)
	}
	return r, nil
}

// hang solves one arrangement.
func hang(ctx context.Context, name string, cell axi.Problem, options axi.Options) (coat.Way, *axi.Solution, error) {
	s, err := axi.Solve(ctx, cell, options)
	if err != nil {
		return coat.Way{}, nil, err
	}
	surface, err := coat.FromAxi(s, 0)
	if err != nil {
		return coat.Way{}, nil, err
	}
	w := coat.Way{Name: name, Surface: surface}
	for i, p := range s.Parts {
		if i > 0 && p.Kind == axi.Cathode {
			w.Robbed += units.Current(math.Max(0, float64(p.Current)))
		}
	}
	return w, s, nil
}

type arrangement struct {
	name string
	cell axi.Problem
}

// others builds arrangements worth comparing: less current, a ring that robs
// the rim, a sleeve that shields it.
func others(c jobfile.Case, s *axi.Solution) []arrangement {
	total := s.Current
	with := func(parts ...axi.Part) axi.Problem {
		cell := c.Cell
		cell.Parts = append(append([]axi.Part(nil), c.Cell.Parts...), parts...)
		return cell
	}
	half := c.Cell
	half.Drive = axi.ByCurrent(total / 2)
	list := []arrangement{{"half the current", half}}

	// The widest place of the part and its middle height.
	var rim, low, high units.Length
	low = units.Length(math.Inf(1))
	high = -low
	for _, v := range s.Parts[0].Samples {
		rim = max(rim, v.At.R)
		low, high = min(low, v.At.Z), max(high, v.At.Z)
	}
	middle, gap := (low+high)/2, max(0.2*rim, 5*units.Millimetre)
	robber := with(axi.Part{Name: "robber", Profile: axi.Torus(rim+gap, middle, 0.06*rim), Law: c.Cell.Parts[0].Law})
	robber.Drive = axi.ByCurrent(total * 1.25)
	list = append(list, arrangement{fmt.Sprintf("a robber ring %s off the rim, a quarter more current", gap.Text(units.Millimetre, 0)), robber})
	shield := with(axi.Part{Name: "shield", Kind: axi.Insulator, Profile: axi.Tube(rim+gap, rim+gap+0.06*rim, low-gap, high+gap)})
	list = append(list, arrangement{fmt.Sprintf("a shield %s off the rim", gap.Text(units.Millimetre, 0)), shield})
	return list
}
