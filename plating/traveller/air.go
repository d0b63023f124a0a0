package traveller

import (
	"fmt"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// A Gas is the hydrogen of the tank that gives off most of it.
type Gas struct {
	Tank int // counted from 0; of the coats where there is no sequence
	Flow electrical.Airing

	current units.Current
	eff     units.Efficiency
}

// air finds the tank that gives off most hydrogen: at the piece, or at the
// other electrode where the piece is the positive pole, with the amps at the top
// of their window. Air at 25 °C.
func (s *Sheet) air() error {
	add := func(tank int, i units.Current, eff units.Efficiency) error {
		a, err := electrical.Vent{Current: i, Efficiency: eff, Temperature: units.Celsius(25), Pressure: units.Atmosphere,
			Mixing: 1}.Air()
		if err != nil {
			return fmt.Errorf("hydrogen of tank %d: %w", tank+1, err)
		}
		if s.Gas == nil || a.Hydrogen > s.Gas.Flow.Hydrogen {
			s.Gas = &Gas{tank, a, i, eff}
		}
		return nil
	}
	if len(s.Cards) == 0 {
		for i := range s.Result.Layers {
			l := &s.Result.Layers[i]
			if err := add(i, max(l.Result.Current, l.Layer.Bath.Window.High.Over(l.Layer.Area)),
				s.Spreads[i].Efficiency.Low); err != nil {
				return err
			}
		}
		return nil
	}
	for i := range s.Cards {
		c := &s.Cards[i]
		var eff units.Efficiency
		if k := s.Coats[i]; k >= 0 {
			eff = s.Spreads[k].Efficiency.Low
		}
		if c.Polarity == sequence.NoCurrent || c.Amps == 0 {
			continue
		}
		// The air is judged by the most that the window allows.
		if err := add(i, max(c.Amps, c.AmpsTop), eff); err != nil {
			return err
		}
	}
	return nil
}
