package job

import (
	"fmt"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// A Hydrogen is the hydrogen of the tank that gives off most of it.
type Hydrogen struct {
	Tank int // counted from 0
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
		// Only the worst tank is kept: the load is in one tank at a time.
		if s.Gas == nil || a.Hydrogen > s.Gas.Flow.Hydrogen {
			s.Gas = &Hydrogen{tank, a, i, eff}
		}
		return nil
	}
	for i := range s.Stops {
		k, c := &s.Stops[i].Tank, s.Stops[i].Coat
		var eff units.Efficiency
		if c != nil {
			// What the metal does not take, hydrogen does: the low end of the efficiency gives the
			// most gas. A tank without a coat deposits nothing, and all of its current makes gas.
			eff = c.Spread.Efficiency.Low
		}
		if k.Polarity == sequence.NoCurrent || k.Amps == 0 {
			continue
		}
		// The air is judged by the most that the window allows.
		if err := add(i, max(k.Amps, k.AmpsTop), eff); err != nil {
			return err
		}
	}
	return nil
}
