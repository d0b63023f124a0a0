package job

import (
	"fmt"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

// power computes what the rectifier gives at the ends of each bath's volts, and
// how far the bath warms if it loses none of it. A bath is taken as water.
func (s *Sheet) power() error {
	for _, c := range s.Coats() {
		b := &c.Layer.Bath
		low, high := b.Volts.Low, b.Volts.High
		if high == 0 {
			continue
		}
		p := &c.Power
		p.Low, p.High = c.Result.Current.At(low), c.Result.Current.At(high)
		if b.Volume == 0 {
			continue
		}
		start := b.Temperature.Set
		if start == 0 {
			start = units.Celsius(20)
		}
		end, err := electrical.HeatedTank{Mass: units.Mass(float64(b.Volume) * 1000), SpecificHeat: 4186,
			Room: start}.After(start, p.High, c.Spread.Time.High)
		if err != nil {
			return fmt.Errorf("warming of %s: %w", units.Clip(c.Name), err)
		}
		p.Warms = end.Sub(start)
	}
	return nil
}
