package units

import "math"

// A Temperature in kelvins. Celsius and Fahrenheit have their own zero, so
// they are functions here and not factors: units.Celsius(38), t.Celsius().
//
// Its zero value is absolute zero, which no bath has: read it as "not given".
type Temperature float64

// A TemperatureDifference in kelvins. Adding one to a temperature gives a
// temperature; two temperatures cannot be added.
type TemperatureDifference float64

// Units of temperature difference. A difference of one degree Celsius is one kelvin.
const (
	Kelvin           TemperatureDifference = 1
	FahrenheitDegree TemperatureDifference = 5.0 / 9
)

// A Scale is a way to read a temperature.
type Scale uint8

// The three scales.
const (
	KelvinScale Scale = iota
	CelsiusScale
	FahrenheitScale
)

// Both zero points are exact by definition, but no float64 holds them: Off is
// what the nearest float64 lacks. With it the conversions below round once, so
// that 100.4 °F prints as such and not with a tail of nines.
const (
	zeroCelsius       = 273.15 // K
	zeroCelsiusOff    = zeroCelsius - 273.14999999999997726263245567679405212402343750
	zeroFahrenheit    = 459.67 // °F below which there is no temperature, as a positive number
	zeroFahrenheitOff = zeroFahrenheit - 459.67000000000001591615728102624416351318359375
)

// Celsius returns the temperature of t degrees Celsius: T = t + 273.15. The
// formula is exact and rounded once.
func Celsius(t float64) Temperature {
	sum, rest := sumAndRest(t, zeroCelsius)
	if sum-sum != 0 {
		return Temperature(sum)
	}
	return Temperature(sum + (rest + zeroCelsiusOff))
}

// Fahrenheit returns the temperature of t degrees Fahrenheit:
// T = (t + 459.67)·5/9, which is (t - 32)·5/9 + 273.15. The formula is exact
// and rounded once.
func Fahrenheit(t float64) Temperature {
	sum, rest := sumAndRest(t, zeroFahrenheit)
	five := sum * 5
	if five-five != 0 {
		return Temperature(five)
	}
	rest = math.FMA(sum, 5, -five) + float64(5*(rest+zeroFahrenheitOff))
	ninth := five / 9
	return Temperature(ninth + (math.FMA(-ninth, 9, five)+rest)/9)
}

// sumAndRest returns the rounded sum of a and b and what rounding took away.
func sumAndRest(a, b float64) (sum, rest float64) {
	sum = a + b
	part := sum - a
	return sum, (a - (sum - part)) + (b - part)
}

// Celsius returns the reading of t in degrees Celsius, within 6e-14 for the
// temperatures of baths. [Temperature.Text] writes the reading without loss.
func (t Temperature) Celsius() float64 { return float64(t) - zeroCelsius }

// Fahrenheit returns the reading of t in degrees Fahrenheit, within 2e-13 for
// the temperatures of baths.
func (t Temperature) Fahrenheit() float64 { return (float64(t)-zeroCelsius)*9/5 + 32 }

// Kelvin returns the reading of t in kelvins.
func (t Temperature) Kelvin() float64 { return float64(t) }

// Add returns the temperature that is d above t.
func (t Temperature) Add(d TemperatureDifference) Temperature {
	return Temperature(float64(t) + float64(d))
}

// Sub returns how far t is above other.
func (t Temperature) Sub(other Temperature) TemperatureDifference {
	return TemperatureDifference(float64(t) - float64(other))
}
