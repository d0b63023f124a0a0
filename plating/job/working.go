package job

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Chapter is one part of a sheet's calculation.
type Chapter struct {
	Title string
	Steps []working.Step
}

// Working shows how the sheet was computed: the area, each coat, the most
// hydrogen with the air it needs, drag-out, rinse water and what to feed. A
// price shows itself by its lines.
//
// Errors: a [*units.ValueError] for a sheet that [Job.Sheet] did not return.
func (s *Sheet) Working() ([]Chapter, error) {
	if s == nil {
		return nil, units.Missing("sheet", "one that Job.Sheet returned")
	}
	area, err := plating.LoadAreaWorking(s.Parts...)
	if err != nil {
		return nil, err
	}
	// Chapters follow the sheet: each takes numbers that the one before has shown.
	list := []Chapter{{"area of the load", []working.Step{area}}}
	add := func(title string, steps []working.Step, err error) error {
		if err != nil {
			return fmt.Errorf("%s: %w", units.Clip(title), err)
		}
		list = append(list, Chapter{title, steps})
		return nil
	}
	for _, c := range s.Coats() {
		steps, err := c.Working()
		if err := add(c.Name, steps, err); err != nil {
			return nil, err
		}
	}
	if g := s.Gas; g != nil && g.Flow.Hydrogen > 0 {
		steps, err := electrical.Vent{Current: g.current, Efficiency: g.eff, Temperature: units.Celsius(25),
			Pressure: units.Atmosphere, Mixing: 1}.AirWorking()
		if err := add(fmt.Sprintf("hydrogen of tank %d", g.Tank+1), steps, err); err != nil {
			return nil, err
		}
	}
	if r, q := s.Rinsing, s.Job.Rinse; r != nil && q != nil {
		if q.Measured == 0 {
			steps, err := rinse.WetLoad{Area: s.Wetted, Shape: q.Shape, Drain: q.Drain,
				Thickness: q.Thickness}.DragOutWorking()
			if steps == nil { // an error that comes with a result is told on the sheet
				return nil, err
			}
			list = append(list, Chapter{"drag-out of the load", steps})
		}
		if r.Water > 0 {
			d := rinse.Flow(r.Carried.High)
			steps, err := rinse.WaterForWorking(q.Ratio, r.Stages, d, d)
			if err := add(fmt.Sprintf("water of one counterflow rinse: %s a load, counted as one load a second, so that %s "+
				"is a flow of %s",
				r.Water.Text(units.Millilitre, 1), r.Carried.High.Text(units.Millilitre, 2), d), steps, err); err != nil {
				return nil, err
			}
		}
	}
	for i := range s.Baths {
		a := &s.Baths[i]
		if a.Feed == nil || a.Feed.SaltMass == 0 {
			continue
		}
		steps, err := ledger.ReplenishWorking(a.need, a.Metal, a.Feed.Salt)
		if err := add("feeding "+a.Bath, steps, err); err != nil {
			return nil, err
		}
	}
	return list, nil
}
