package units

import (
	"math"
	"time"
)

// A Duration in seconds. It is not [time.Duration]: plating minutes are
// fractions, and seconds are the SI unit that the formulas want.
type Duration float64

// Units of time.
const (
	Millisecond Duration = 1e-3
	Second      Duration = 1
	Minute      Duration = 60
	Hour        Duration = 3600
	Day         Duration = 86400
)

// FromStd returns a standard library duration in seconds. The result is
// exact below 2⁵³ ns (104 days) up to one rounding of the division by 1e9.
func FromStd(d time.Duration) Duration { return Duration(float64(d) / 1e9) }

// Std returns d as a standard library duration, rounded to the nanosecond.
//
// Errors: a [*ValueError] when d is not finite or beyond the 292 years that
// [time.Duration] can hold.
func (d Duration) Std() (time.Duration, error) {
	if err := Finite("duration", d); err != nil {
		return 0, err
	}
	ns := math.Round(float64(d) * 1e9)
	if !(ns > -math.MaxInt64 && ns < math.MaxInt64) {
		return 0, &ValueError{Field: "duration", Value: d.String(),
			Need: "a time within 292 years either way", Err: ErrOutOfRange}
	}
	return time.Duration(ns), nil
}

// A Pressure in pascals.
type Pressure float64

// Units of pressure.
const (
	Pascal      Pressure = 1
	Hectopascal Pressure = 100
	Kilopascal  Pressure = 1000
	Megapascal  Pressure = 1e6 // the same as N/mm²: the strength of metals
	Bar         Pressure = 1e5
	Atmosphere  Pressure = 101325 // the standard atmosphere, exact by definition
)

// A Speed in metres per second, here that of a growing coat.
type Speed float64

// Units of speed.
const (
	MetrePerSecond      Speed = 1
	MicrometrePerSecond Speed = 1e-6
	MicrometrePerMinute Speed = 1e-6 / 60
	MicrometrePerHour   Speed = 1e-6 / 3600
)

// A Diffusivity in square metres per second.
type Diffusivity float64

// Units of diffusivity.
const (
	SquareMetrePerSecond      Diffusivity = 1
	SquareCentimetrePerSecond Diffusivity = 1e-4
)

// For returns the thickness that grows at speed s in time t.
func (s Speed) For(t Duration) Length { return Length(float64(s) * float64(t)) }
