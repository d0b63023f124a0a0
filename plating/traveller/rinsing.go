package traveller

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
	if err := q.check(); err != nil {
		return err
	}
	out := Rinsing{Ratio: q.Ratio, Stages: q.Stages}
	if out.Stages == 0 {
		out.Stages = 2
	}
	if (q.Measured > 0) == (q.Shape != rinse.NoShape) {
		return missing("drag-out", fmt.Sprintf("shape %s and measured %s", q.Shape, q.Measured),
			"either a shape of the table or a measured volume")
	}
	if q.Measured > 0 {
		out.Carried = rinse.Carried{Low: q.Measured, High: q.Measured, Factor: 1, Seen: origin.Measured,
			Source: "measured by the shop"}
	} else {
		c, err := rinse.Load{Area: s.Wetted, Shape: q.Shape, Drain: q.Drain, Thickness: q.Thickness}.DragOut()
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
	for i := range s.Result.Layers {
		b := &s.Result.Layers[i].Layer.Bath
		if !plating.Precious(b.Metal) || b.Content == 0 {
			continue
		}
		content := s.Job.Layers[i].Bath.Content
		m := MetalDragged{coat: i, Bath: title(&s.Result.Layers[i].Layer, i), Metal: b.Metal, Content: content,
			Low: content.Of(out.Carried.Low), High: content.Of(out.Carried.High)}
		m.Lost = m.High
		if q.Ratio > 0 && !s.onward(i) {
			m.LastWater = units.MassConcentration(float64(content) / float64(q.Ratio))
		}
		if s.onward(i) {
			m.Onward, m.Lost = true, 0
		} else if q.DragOutTank > 0 && s.keeps(i) {
			dries := q.Evaporation
			if own := s.Job.Layers[i].Evaporation; own != nil {
				if err := units.NonNegative("evaporation of "+m.Bath+" in the time of a load", *own); err != nil {
					return err
				}
				dries = *own
			}
			if v := b.Volume; v > 0 && dries >= v {
				return &units.ValueError{Field: "evaporation in the time of a load", Value: dries.String(),
					Need: "less than the bath of " + m.Bath + " holds, " + v.String(), Err: units.ErrOutOfRange}
			}
			loads := max(q.Loads, 1)
			cycle, err := rinse.Batch{Bath: content, Volume: q.DragOutTank, DragOut: out.Carried.High, DragIn: out.Carried.High,
				Evaporation: dries, Loads: loads}.Cycle()
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

// check looks at every figure, also those that the others make idle.
func (q *Rinse) check() error {
	for _, err := range []error{units.NonNegative("measured drag-out", q.Measured), units.NonNegative("time of draining",
		q.Drain),
		units.NonNegative("ratio of rinsing", q.Ratio), units.NonNegative("volume of the drag-out tank", q.DragOutTank),
		units.NonNegative("evaporation in the time of a load", q.Evaporation)} {
		if err != nil {
			return err
		}
	}
	whole := func(field string, n, most int) error {
		if n < 0 || n > most {
			return &units.ValueError{Field: field, Value: fmt.Sprint(n), Need: fmt.Sprintf("a count from 0 to %d", most),
				Err: units.ErrOutOfRange}
		}
		return nil
	}
	if err := whole("rinse stages", q.Stages, 9); err != nil {
		return err
	}
	if err := whole("loads between returns", q.Loads, 1_000_000); err != nil {
		return err
	}
	if q.Thickness > rinse.Syrupy {
		return &units.ValueError{Field: "thickness of the solution", Value: fmt.Sprint(uint8(q.Thickness)),
			Need: "as printed, thin, medium or syrupy", Err: units.ErrOutOfRange}
	}
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
	if len(s.Tanks) == 0 {
		return add(out.Stages)
	}
	out.Stages = 0
	for i := range s.Tanks {
		t := &s.Tanks[i]
		switch {
		case t.Kind != sequence.Rinse:
		case t.Rinse.Flow == sequence.Counterflow:
			out.Stages = max(out.Stages, t.Rinse.Stages)
			if err := add(t.Rinse.Stages); err != nil {
				return err
			}
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
func (s *Sheet) keeps(coat int) bool {
	if len(s.Tanks) == 0 {
		return true
	}
	for i := range s.Tanks {
		if s.Coats[i] == coat {
			return i+1 < len(s.Tanks) && s.Tanks[i+1].Kind == sequence.DragOut
		}
	}
	return false
}

// onward reports whether a coat's tank stands right before another bath of the
// same metal, as a silver strike does.
func (s *Sheet) onward(coat int) bool {
	for i := range s.Tanks {
		if s.Coats[i] == coat {
			return i+1 < len(s.Tanks) && s.Coats[i+1] >= 0 && s.Tanks[i].Bath.Metal == s.Tanks[i+1].Bath.Metal
		}
	}
	return false
}
