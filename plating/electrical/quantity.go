package electrical

import (
	"fmt"

	"example.com/laydown/units"
)

// A SpecificHeat in joules per kilogram and kelvin. That of water is about
// 4186; of plating baths, a little less.
type SpecificHeat float64

// Units of specific heat.
const (
	JoulePerKilogramKelvin SpecificHeat = 1
	JoulePerGramKelvin     SpecificHeat = 1000
)

// A HeatLoss in watts per kelvin: what a tank loses for each kelvin that it is
// warmer than the room.
type HeatLoss float64

// WattPerKelvin is the unit of heat loss.
const WattPerKelvin HeatLoss = 1

// A HeatOfVaporisation in joules per kilogram.
type HeatOfVaporisation float64

// KilojoulePerKilogram is a unit of heat of vaporisation.
const KilojoulePerKilogram HeatOfVaporisation = 1000

// A GasFlow in cubic metres per second.
type GasFlow float64

// Units of flow.
const (
	CubicMetrePerHour  GasFlow = 1 / 3600.0
	LitrePerMinute     GasFlow = 1e-3 / 60
	CubicFootPerMinute GasFlow = 0.028316846592 / 60
)

// In returns v as a number of unit, which must not be zero.
func (v SpecificHeat) In(unit SpecificHeat) float64 { return float64(v) / float64(unit) }

// String writes v for people.
func (v SpecificHeat) String() string { return fmt.Sprintf("%.6g J/(kg·K)", float64(v)) }

// In returns v as a number of unit, which must not be zero.
func (v HeatLoss) In(unit HeatLoss) float64 { return float64(v) / float64(unit) }

// String writes v for people.
func (v HeatLoss) String() string { return fmt.Sprintf("%.6g W/K", float64(v)) }

// In returns v as a number of unit, which must not be zero.
func (v HeatOfVaporisation) In(unit HeatOfVaporisation) float64 { return float64(v) / float64(unit) }

// String writes v for people.
func (v HeatOfVaporisation) String() string { return fmt.Sprintf("%.6g kJ/kg", float64(v)/1000) }

// In returns v as a number of unit, which must not be zero.
func (v GasFlow) In(unit GasFlow) float64 { return float64(v) / float64(unit) }

// String writes v for people, in litres a minute or cubic metres an hour.
func (v GasFlow) String() string {
	if v < CubicMetrePerHour && v > -CubicMetrePerHour {
		return fmt.Sprintf("%.6g L/min", v.In(LitrePerMinute))
	}
	return fmt.Sprintf("%.6g m³/h", v.In(CubicMetrePerHour))
}

// A Interval is a range that a value lies in, both ends included.
type Interval[Q units.Quantity] struct{ Low, High Q }

// Exactly returns the window of one value.
func Exactly[Q units.Quantity](v Q) Interval[Q] { return Interval[Q]{v, v} }

// String writes both ends, or the one value.
func (w Interval[Q]) String() string {
	if w.Low == w.High {
		return w.Low.String()
	}
	return w.Low.String() + " to " + w.High.String()
}

// Has reports whether v lies in the window.
func (w Interval[Q]) Has(v Q) bool { return w.Low <= v && v <= w.High }

// check uses one of the checks of package units for both ends.
func (w Interval[Q]) check(field string, one func(string, Q) error) error {
	if err := one("low end of the "+field, w.Low); err != nil {
		return err
	}
	if err := one("high end of the "+field, w.High); err != nil {
		return err
	}
	if w.Low > w.High {
		return &units.ValueError{Field: field, Value: w.String(), Need: "the low end first", Err: units.ErrInconsistent}
	}
	return nil
}

// finite passes a result on unless it overflowed.
func finite[Q units.Quantity](field string, v Q) (Q, error) {
	if err := units.Finite(field, v); err != nil {
		return 0, err
	}
	return v, nil
}
