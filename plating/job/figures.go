package job

import (
	"math"
	"strconv"

	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// A measured quantity can be written in a unit of choice.
type measured[Q any] interface {
	~float64
	In(unit Q) float64
	Text(unit Q, decimals int) string
}

// figure writes v with a number of significant digits, and with no fewer
// decimals than least. A small current must not be rounded to 0.00 A.
func figure[Q measured[Q]](v, unit Q, digits, least int) string {
	return v.Text(unit, max(least, decimals(v.In(unit), digits)))
}

// decimals returns how many decimals show x with some significant digits.
func decimals(x float64, digits int) int {
	if !(x > 0) {
		return 0
	}
	// The place of the first digit tells how many decimals reach the last one asked for.
	return min(max(0, digits-1-int(math.Floor(math.Log10(x)))), 20)
}

// plain writes a number without unit.
func plain(x float64) string { return strconv.FormatFloat(x, 'f', max(2, decimals(x, 2)), 64) }

// amps writes a current as a rectifier is set: three digits, milliamperes
// below a tenth of an ampere.
func amps(i units.Current) string {
	// Small rectifiers show milliamperes, and 0.0840 A is easily set as 0.84 A.
	if i < 0.1*units.Ampere {
		return figure(i, units.Milliampere, 3, 0)
	}
	return figure(i, units.Ampere, 3, 0)
}

func micrometres(s units.Length) string { return figure(s, units.Micrometre, 2, 2) }

// weight writes a mass as a balance shows it.
func weight(m units.Mass) string {
	if m >= units.Gram {
		return figure(m, units.Gram, 4, 0)
	}
	return figure(m, units.Milligram, 2, 1)
}

// clock writes a time as a bench timer shows it.
func clock(t units.Duration) string {
	// Up to the next second: a minimum thickness is kept, not nearly kept. A thousandth of
	// a second over is rounding, not time.
	if t >= 1 {
		t = units.Duration(math.Ceil(float64(t) - 1e-3))
	}
	if t < 60 {
		return figure(t, units.Second, 2, 0)
	}
	return t.String()
}

// rangeOf writes a range of which an end may be missing, "" when both are.
func rangeOf[Q units.Quantity](low, high Q, show func(Q) string) string {
	switch {
	case low > 0 && high > 0:
		return show(low) + " to " + show(high)
	case high > 0:
		return "at most " + show(high)
	case low > 0:
		return "at least " + show(low)
	}
	return ""
}

func celsius(t units.Temperature) string { return t.Text(units.CelsiusScale, 0) }

func density(j units.CurrentDensity) string { return figure(j, units.AmperePerSquareDecimetre, 2, 2) }

func litres(v units.Volume) string {
	if v < units.Litre {
		return figure(v, units.Millilitre, 2, 0)
	}
	return figure(v, units.Litre, 2, 1)
}

// roughly writes a time that nobody stops with a watch.
func roughly(t units.Duration) string {
	switch {
	case t < 120:
		return t.Text(units.Second, 0)
	case t < 7200:
		return t.Text(units.Minute, 0)
	}
	return t.Text(units.Hour, 1)
}

// span writes two ends, or one where they are the same.
func span(low, high string) string {
	if low == high {
		return low
	}
	return low + " to " + high
}

// bandOf writes a range of temperatures in whole degrees.
func bandOf(r bath.Range[units.Temperature]) string {
	if r.Low == r.High {
		return celsius(r.Low)
	}
	return rangeOf(r.Low, r.High, celsius)
}

// immersionOf writes a usual immersion time.
func immersionOf(t bath.Band[units.Duration]) string {
	if t.Low == t.High {
		return roughly(t.Typical)
	}
	return span(roughly(t.Low), roughly(t.High))
}

func orText(s, other string) string {
	if s == "" {
		return other
	}
	return s
}

func counted(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return strconv.Itoa(n) + " " + what + "s"
}
