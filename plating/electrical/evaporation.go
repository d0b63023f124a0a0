package electrical

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// SaturationPressure returns the vapour pressure of water over itself.
//
//	p = (2·C/(-B + √(B² - 4·A·C)))⁴ · 1 MPa
//	A = ϑ² + n₁·ϑ + n₂
//	B = n₃·ϑ² + n₄·ϑ + n₅
//	C = n₆·ϑ² + n₇·ϑ + n₈
//	ϑ = T + n₉/(T - n₁₀)
//
//	T  temperature  273.15 to 647.096 K
//	n₁ to n₁₀       coefficients of the publication
//
// Within a few hundredths of a percent in the whole range. Salts lower it: by a
// few percent in a plating bath.
//
// Errors: a [*units.ValueError] for a temperature outside the range.
//
// Source: [IAPWSIF97] equation 30.
func SaturationPressure(temperature units.Temperature) (units.Pressure, error) {
	if err := units.Positive("temperature", temperature); err != nil {
		return 0, err
	}
	t := float64(temperature)
	if t < 273.15 || t > 647.096 {
		return 0, &units.ValueError{Field: "temperature", Value: temperature.String(),
			Need: "liquid water, 0 °C to 373.946 °C", Err: units.ErrOutOfRange}
	}
	theta := t - 0.23855557567849/(t-0.65017534844798e3)
	a := theta*theta + 0.11670521452767e4*theta - 0.72421316703206e6
	b := -0.17073846940092e2*theta*theta + 0.12020824702470e5*theta - 0.32325550322333e7
	c := 0.14915108613530e2*theta*theta - 0.48232657361591e4*theta + 0.40511340542057e6
	return units.Pressure(1e6 * math.Pow(2*c/(-b+math.Sqrt(b*b-4*a*c)), 4)), nil
}

// LatentHeat returns the heat that evaporates a mass of water.
//
//	λ = (2501 - 2.361·t) kJ/kg
//
//	t  temperature  in degrees Celsius, 0 to 100
//
// Within 0.5 % up to 100 °C. Outside the range the value comes with a
// [*units.RangeError]; a temperature that cannot be gives a [*units.ValueError].
//
// Source: [FAO1990] annex V, 2.
func LatentHeat(temperature units.Temperature) (HeatOfVaporisation, error) {
	if err := units.Positive("temperature", temperature); err != nil {
		return 0, err
	}
	if most := units.Celsius(1059); temperature > most { // the line falls to zero there
		return 0, &units.ValueError{Field: "temperature", Value: temperature.String(),
			Need: "at most 100 °C, for which the line was published", Err: units.ErrOutOfRange}
	}
	v := HeatOfVaporisation((2501 - 2.361*temperature.Celsius()) * 1000)
	if temperature < units.Celsius(0) || temperature > units.Celsius(100) {
		return v, &units.RangeError{Field: "temperature", Value: temperature.String(), Low: "0 °C", High: "100 °C",
			Source: "FAO1990"}
	}
	return v, nil
}

// An OpenTop is the surface of a warm bath that gives off water to the air of the room.
type OpenTop struct {
	Area     units.Area
	Water    units.Temperature // of the bath, 0 to 100 °C
	Air      units.Temperature // of the room
	Humidity units.Ratio       // of the room's air, 0 to 1
	Draught  units.Speed       // of the air over the surface
}

// An Evaporated is what a surface loses in a time.
type Evaporated struct {
	Mass   units.Mass             // by the formula
	Window Interval[units.Mass]   // that published measurements span
	Power  units.Power            // heat that goes with it, by the formula
	Heat   Interval[units.Power]  // the same for the window
	Litres Interval[units.Volume] // of water at 1 kg/L
}

// The formula as it was printed is in British units; these make watts for each
// square metre and pascal of it.
const (
	btu       = 1055.05585262 // J, international table
	mercury   = 3386.389      // Pa in an inch of mercury
	foot      = 0.3048        // m
	perPascal = btu / 3600 / (foot * foot) / mercury
	stillTerm = 95 * perPascal                  // W/(m²·Pa)
	windTerm  = 0.425 * perPascal / (foot / 60) // W/(m²·Pa) for each m/s
	stillest  = 0.74                            // measured on undisturbed water, over the formula
	briskest  = 1.25                            // of a table for open tanks, over the formula
)

// Evaporation returns the water that goes into the air in a time.
//
//	q = (a + b·v)·(pw - pa)
//	m = q·A·t/λ
//
//	v       Draught  ≥ 0 [m/s]
//	pw, pa  vapour pressure of water at Water, and of the room's air: Humidity
//	        times that at Air [Pa]; no evaporation when pa is the greater
//	A       Area     > 0 [m²]
//	t       time     ≥ 0 [s]
//	λ       [LatentHeat] at Water [J/kg]
//	a, b    95 Btu/(h·ft²·inHg) = 0.0885 W/(m²·Pa) and 0.425 of it for each ft/min of air,
//	        which is 0.0779 W/(m²·Pa) for each m/s
//
// Measurements on still water came to 74 % of the formula, and a table for open tanks
// in still air lies up to a quarter above it; the window says so. Bubbling air
// through the bath, a lid, floating balls and foam change it more than that. For
// plain water.
//
// Errors: a [*units.ValueError] for a field out of range or a bath that is not
// between 0 and 100 °C.
//
// Source: [PoolEvaporation], [OpenTankTable] for the high end, [IAPWSIF97], [FAO1990].
func (s OpenTop) Evaporation(time units.Duration) (Evaporated, error) {
	if err := units.NonNegative("time", time); err != nil {
		return Evaporated{}, err
	}
	pw, pa, lambda, err := s.pressures()
	if err != nil {
		return Evaporated{}, err
	}
	q := (stillTerm + windTerm*float64(s.Draught)) * math.Max(0, float64(pw-pa)) * float64(s.Area)
	m := q * float64(time) / float64(lambda)
	e := Evaporated{Mass: units.Mass(m), Window: Interval[units.Mass]{Low: units.Mass(stillest * m),
		High: units.Mass(briskest * m)},
		Power: units.Power(q), Heat: Interval[units.Power]{Low: units.Power(stillest * q), High: units.Power(briskest * q)}}
	e.Litres = Interval[units.Volume]{Low: units.Volume(float64(e.Window.Low) / 1000),
		High: units.Volume(float64(e.Window.High) / 1000)}
	if err := units.Finite("heat of evaporation", e.Heat.High); err != nil {
		return Evaporated{}, err
	}
	return e, units.Finite("mass evaporated", e.Window.High)
}

func (s OpenTop) pressures() (pw, pa units.Pressure, lambda HeatOfVaporisation, err error) {
	if err := units.Positive("surface of the bath", s.Area); err != nil {
		return 0, 0, 0, err
	}
	if err := units.Fraction("humidity of the air", s.Humidity); err != nil {
		return 0, 0, 0, err
	}
	if err := units.NonNegative("draught", s.Draught); err != nil {
		return 0, 0, 0, err
	}
	for _, v := range []struct {
		field string
		value units.Temperature
	}{{"temperature of the bath", s.Water}, {"temperature of the air", s.Air}} {
		if !(v.value >= units.Celsius(0) && v.value <= units.Celsius(100)) {
			if err := units.Positive(v.field, v.value); err != nil {
				return 0, 0, 0, err
			}
			return 0, 0, 0, &units.ValueError{Field: v.field, Value: v.value.String(), Need: "0 °C to 100 °C",
				Err: units.ErrOutOfRange}
		}
	}
	if pw, err = SaturationPressure(s.Water); err != nil {
		return 0, 0, 0, err
	}
	if pa, err = SaturationPressure(s.Air); err != nil {
		return 0, 0, 0, err
	}
	lambda, err = LatentHeat(s.Water)
	return pw, units.Pressure(float64(s.Humidity) * float64(pa)), lambda, err
}

// EvaporationWorking shows the calculation of [OpenTop.Evaporation].
//
// Errors: as there.
//
// Source: [PoolEvaporation], [IAPWSIF97], [FAO1990].
func (s OpenTop) EvaporationWorking(time units.Duration) ([]working.Step, error) {
	e, err := s.Evaporation(time)
	if err != nil {
		return nil, err
	}
	pw, pa, lambda, err := s.pressures()
	if err != nil {
		return nil, err
	}
	q := working.Of("q", "heat that goes with it", e.Power)
	return []working.Step{
		{Formula: "q = (a + b·v)·max(0, pw - pa)·A", Terms: []working.Term{
			working.Constant("a", "for still air", stillTerm, "W/(m²·Pa)"), working.Constant("b", "for each m/s", windTerm,
				"W·s/(m³·Pa)"),
			working.Of("v", "draught", s.Draught), working.Of("pw", "vapour pressure of the bath", pw),
			working.Of("pa", "vapour pressure of the room's air", pa), working.Of("A", "surface of the bath", s.Area)},
			Result: q, Source: "PoolEvaporation"},
		{Formula: "m = q·t/λ", Terms: []working.Term{q, working.Of("t", "time", time),
			working.Of("λ", "heat of vaporisation", lambda)},
			Result: working.Of("m", "water evaporated", e.Mass), Source: "PoolEvaporation",
			Note: "Published measurements lie between three quarters and five quarters of it."},
	}, nil
}
