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
}

// air finds the tank that gives off most hydrogen: at the piece, or at the
// other electrode where the piece is the positive pole. Air at 25 °C.
func (s *Sheet) air() error {
	add := func(tank int, i units.Current, eff units.Efficiency) error {
		a, err := electrical.Vent{Current: i, Efficiency: eff, Temperature: units.Celsius(25), Pressure: units.Atmosphere, Mixing: 1}.Air()
		if err != nil {
			return fmt.Errorf("hydrogen of tank %d: %w", tank+1, err)
		}
		if s.Gas == nil || a.Hydrogen > s.Gas.Flow.Hydrogen {
			s.Gas = &Gas{tank, a}
		}
		return nil
	}
	if len(s.Cards) == 0 {
		for i := range s.Result.Layers {
			if err := add(i, s.Result.Layers[i].Result.Current, s.Spreads[i].Efficiency.Low); err != nil {
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
		if err := add(i, c.Amps, eff); err != nil {
			return err
		}
	}
	return nil
}
