package sense

import (
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// The table. Least and Most are refused beyond, Low and High are unusual beyond. They
// are constants, so that a fast check may compare by itself; [Limit] makes the
// sentences.
const (
	MinContent  = 1e-9 * units.MilligramPerLitre // a bath that a load has emptied is no slip
	LowContent  = 0.05 * units.GramPerLitre
	HighContent = 300 * units.GramPerLitre
	MaxContent  = 1000 * units.GramPerLitre

	MinVolume  = units.Millilitre
	LowVolume  = 50 * units.Millilitre
	HighVolume = 20 * units.CubicMetre
	MaxVolume  = 1000 * units.CubicMetre

	MinVolts  = units.Millivolt
	LowVolts  = 0.2 * units.Volt
	HighVolts = 24 * units.Volt
	MaxVolts  = 250 * units.Volt

	MinDensity  = 1e-6 * units.AmperePerSquareDecimetre
	LowDensity  = 0.01 * units.AmperePerSquareDecimetre
	HighDensity = 100 * units.AmperePerSquareDecimetre
	MaxDensity  = 10_000 * units.AmperePerSquareDecimetre

	MinSolution  units.Temperature = 263.15 // K: -10, 10, 98 and 200 °C
	LowSolution  units.Temperature = 283.15
	HighSolution units.Temperature = 371.15
	MaxSolution  units.Temperature = 473.15

	MinOven  units.Temperature = 263.15 // K: -10, 15, 400 and 1200 °C
	LowOven  units.Temperature = 288.15
	HighOven units.Temperature = 673.15
	MaxOven  units.Temperature = 1473.15

	MinCoat  = 0.1 * units.Nanometre
	LowCoat  = 5 * units.Nanometre
	HighCoat = 500 * units.Micrometre
	MaxCoat  = 100 * units.Millimetre

	MinTime  units.Duration = units.Second / 1000
	LowTime                 = units.Second
	HighTime                = 3 * units.Day
	MaxTime                 = 366 * units.Day

	MinArea  = 1e-6 * units.SquareMillimetre
	LowArea  = units.SquareMillimetre
	HighArea = 50 * units.SquareMetre
	MaxArea  = 1e6 * units.SquareMetre

	MinConductivity  = 1e-4 * units.SiemensPerMetre
	LowConductivity  = 0.5 * units.SiemensPerMetre
	HighConductivity = 100 * units.SiemensPerMetre
	MaxConductivity  = 1000 * units.SiemensPerMetre
)

// A Limit is one row of the table. A zero figure is "not given" and passes.
type Limit[Q units.Quantity] struct {
	Field                  string
	Least, Low, High, Most Q
	Why                    string // no shop has what lies beyond Least and Most
	Source                 string
}

// Content is the metal in a plating bath.
func Content() Limit[units.MassConcentration] {
	return limit("metal content", MinContent, LowContent, HighContent, MaxContent,
		"no plating bath holds more metal in a litre")
}

// Volume is that of a tank.
func Volume() Limit[units.Volume] {
	return limit("bath volume", MinVolume, LowVolume, HighVolume, MaxVolume, "no plating tank is smaller or larger")
}

// Volts are those across a tank.
func Volts() Limit[units.Voltage] {
	return limit("voltage", MinVolts, LowVolts, HighVolts, MaxVolts,
		"a plating rectifier gives some 24 V, one for anodising some 100 V")
}

// CurrentDensity is that of a tank.
func CurrentDensity() Limit[units.CurrentDensity] {
	return limit("current density", MinDensity, LowDensity, HighDensity, MaxDensity,
		"fast jets reach some 1000 A/dm²")
}

// Solution is the temperature of a solution.
func Solution() Limit[units.Temperature] {
	return limit("temperature of the solution", MinSolution, LowSolution, HighSolution, MaxSolution,
		"water boils at 100 °C, strong salt solutions some tens of kelvins above")
}

// Oven is the temperature of an oven.
func Oven() Limit[units.Temperature] {
	return limit("temperature of the oven", MinOven, LowOven, HighOven, MaxOven,
		"what bakes a coat or relieves steel ends far below")
}

// Coat is the thickness of one coat.
func Coat() Limit[units.Length] {
	return limit("coat thickness", MinCoat, LowCoat, HighCoat, MaxCoat,
		"an atom has some 0.0003 µm, and electroforms end at some 10 mm")
}

// Time is an immersion time.
func Time() Limit[units.Duration] {
	return limit("time", MinTime, LowTime, HighTime, MaxTime, "no load stays a year")
}

// Area is that of a load or of a part.
func Area() Limit[units.Area] {
	return limit("area", MinArea, LowArea, HighArea, MaxArea, "no load has a square kilometre")
}

// Conductivity is that of a plating solution.
func Conductivity() Limit[units.Conductivity] {
	return limit("conductivity", MinConductivity, LowConductivity, HighConductivity, MaxConductivity,
		"the best acid has some 85 S/m")
}

func limit[Q units.Quantity](field string, least, low, high, most Q, why string) Limit[Q] {
	return Limit[Q]{Field: field, Least: least, Low: low, High: high, Most: most, Why: why, Source: origin.Memory}
}

// Check returns a [*units.ValueError] for a figure that no shop has; nil for 0, which
// is "not given".
func (l Limit[Q]) Check(v Q) error { return l.CheckAs(l.Field, v) }

// CheckAs is [Limit.Check] with a name of the caller's own for the field.
func (l Limit[Q]) CheckAs(field string, v Q) error {
	if err := units.Finite(field, v); err != nil {
		return err
	}
	if v == 0 || v >= l.Least && v <= l.Most {
		return nil
	}
	need := "at most " + l.Most.String()
	if v < l.Least {
		need = "at least " + l.Least.String()
	}
	return &units.ValueError{Field: field, Value: v.String(), Err: units.ErrOutOfRange,
		Need: need + " (" + l.Why + "); check the unit and the point"}
}

// Unusual reports whether a figure lies outside the usual range. 0 does not.
func (l Limit[Q]) Unusual(v Q) bool { return v != 0 && !(v >= l.Low && v <= l.High) }

// Question returns what to ask about an unusual figure, "" for a usual one.
func (l Limit[Q]) Question(v Q) string {
	if !l.Unusual(v) {
		return ""
	}
	return l.Field + " of " + v.String() + " is outside the usual " + l.Low.String() + " to " + l.High.String()
}
