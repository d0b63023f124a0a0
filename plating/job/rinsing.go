package job

import (
	"errors"
	"fmt"
	"math"

	"example.com/laydown/plating"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// rinsing computes what the load carries out of its baths and the water for it.
func (s *Sheet) rinsing() error {
	q := s.Job.Rinse
	if q == nil {
		return nil
	}
	// Drag-out is the one quantity behind all others here: water, metal lost, and what the
	// drag-out tank brings back are all in proportion to it. The upper end is taken for each, so
	// that water is not too little and loss not too small.
	out := Rinsing{Ratio: q.Ratio, Stages: q.Stages}
	if out.Stages == 0 {
		out.Stages = 2
	}
	if q.Measured > 0 {
		out.Carried = rinse.Carried{Low: q.Measured, High: q.Measured, Factor: 1, Seen: origin.Measured,
			Source: "measured by the shop"}
	} else {
		c, err := rinse.WetLoad{Area: s.Wetted, Shape: q.Shape, Drain: q.Drain, Thickness: q.Thickness}.DragOut()
		var outside *units.RangeError
		if err != nil && !errors.As(err, &outside) {
			return err
		}
		if outside != nil {
			out.Warning = err.Error()
		}
		out.Carried = c
	}
	if q.Ratio > 0 {
		if err := s.water(&out, q.Ratio); err != nil {
			return err
		}
	}
	for _, c := range s.Coats() {
		b := &c.Layer.Bath
		if !plating.Precious(b.Metal) || b.Content == 0 {
			continue
		}
		// Only precious metals are listed: for the others the loss is not worth a line on the
		// sheet.
		content := c.own.Content.Point()
		m := MetalDragged{coat: c, Bath: c.Name, Metal: b.Metal, Content: content,
			Low: content.Of(out.Carried.Low), High: content.Of(out.Carried.High)}
		m.Lost = m.High
		// What is carried straight into the next bath meets no water on its way.
		if q.Ratio > 0 && !s.onward(c) {
			m.LastWater = units.MassConcentration(float64(content) / float64(q.Ratio))
		}
		if s.onward(c) {
			m.Onward, m.Lost = true, 0
		} else if q.DragOutTank > 0 && s.keeps(c) {
			dries := q.Evaporation
			if own := c.evaporation; own != nil {
				if err := units.NonNegative("evaporation of "+m.Bath+" in the time of a load", *own); err != nil {
					return err
				}
				dries = *own
			}
			if v := b.Volume; v > 0 && dries >= v {
				return &units.ValueError{Field: "evaporation in the time of a load", Value: dries.String(),
					Need: "less than the bath of " + m.Bath + " holds, " + v.String(), Err: units.ErrOutOfRange}
			}
			// The drag-out tank gives back no more than the bath has room for, and the room is what
			// evaporates. In a steady run as much drags in as drags out.
			loads := max(q.Loads, 1)
			cycle, err := rinse.Batch{Bath: content, Volume: q.DragOutTank, DragOut: out.Carried.High,
				DragIn: out.Carried.High, Evaporation: dries, Loads: loads}.Cycle()
			if err != nil {
				return fmt.Errorf("drag-out tank behind %s: %w", units.Clip(m.Bath), err)
			}
			m.Back, m.Poured, m.Loads, m.Evaporates, m.Full = cycle.Share, cycle.Poured, loads, dries, cycle.Poured == 0
			if m.LastWater > 0 { // what the rinse is given is no richer than the tank when it is fullest
				m.LastWater = units.MassConcentration(float64(cycle.Full) / float64(q.Ratio))
			}
			m.Lost = units.Mass(float64(m.High) * (1 - float64(cycle.Share)))
		}
		out.Metals = append(out.Metals, m)
	}
	s.Rinsing = &out
	return nil
}

// water computes the fresh water of each counterflow and each running rinse of the
// sequence by its own stages; without a sequence that of one counterflow rinse.
// The final rinse comes behind one that has met the ratio already.
func (s *Sheet) water(out *Rinsing, ratio units.Ratio) error {
	d := rinse.Flow(out.Carried.High) // per load; ratios do not care
	add := func(stages int) error {
		w, err := rinse.WaterFor(ratio, stages, d, d)
		if err != nil {
			return err
		}
		out.Water = max(out.Water, units.Volume(w))
		out.Total += units.Volume(w)
		out.Rinses++
		return nil
	}
	if !s.Sequenced {
		return add(out.Stages)
	}
	out.Stages = 0
	for i := range s.Stops {
		t := &s.Stops[i].tank
		switch {
		case t.Kind != sequence.Rinse:
		case t.Rinse.Flow == sequence.Counterflow:
			out.Stages = max(out.Stages, t.Rinse.Stages)
			if err := add(t.Rinse.Stages); err != nil {
				return err
			}
		// Running rinses one after the other share the work: each thins by the root of the whole,
		// and each takes water of its own. In counterflow one stream serves all stages.
		case t.Rinse.Flow == sequence.Running: // each stage takes its root of the ratio, with water of its own
			n := float64(t.Rinse.Stages)
			w, err := rinse.WaterFor(units.Ratio(math.Pow(float64(ratio), 1/n)), 1, d, d)
			if err != nil {
				return err
			}
			all := units.Volume(n * float64(w))
			out.Single, out.Total = max(out.Single, all), out.Total+all
			out.Singles++
		}
	}
	return nil
}

// keeps reports whether a drag-out tank stands behind a coat's bath. Without a
// sequence the shop's word for it counts.
func (s *Sheet) keeps(coat *Coat) bool {
	next := s.behind(coat)
	return !s.Sequenced || next != nil && next.tank.Kind == sequence.DragOut
}

// onward reports whether a coat's tank stands right before another bath of the
// same metal, as a silver strike does.
func (s *Sheet) onward(coat *Coat) bool {
	next := s.behind(coat)
	return s.Sequenced && next != nil && next.Coat != nil && next.tank.Bath.Metal == coat.Layer.Bath.Metal
}

// behind is the stop right behind a coat's; nil when it is the last.
func (s *Sheet) behind(coat *Coat) *Stop {
	for i := range s.Stops {
		if s.Stops[i].Coat == coat && i+1 < len(s.Stops) {
			return &s.Stops[i+1]
		}
	}
	return nil
}
