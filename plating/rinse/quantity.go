package rinse

import (
	"fmt"
	"strconv"

	"example.com/laydown/units"
)

// A Flow in cubic metres per second: of water into a rinse, or of solution that
// the work carries from tank to tank. Make the latter with [NewFlow] from the
// volume a load carries and the time from load to load.
type Flow float64

// Units of flow.
const (
	MillilitrePerHour   Flow = 1e-6 / 3600
	MillilitrePerMinute Flow = 1e-6 / 60
	LitrePerHour        Flow = 1e-3 / 3600
	LitrePerMinute      Flow = 1e-3 / 60
	CubicMetrePerSecond Flow = 1
	USGallonPerHour     Flow = Flow(units.USGallon) / 3600
	USGallonPerMinute   Flow = Flow(units.USGallon) / 60
)

// NewFlow returns the mean flow of a volume every so often.
//
//	D = d/t
//
//	d  v      volume a load carries, ≥ 0 [m³]
//	t  every  time from load to load, > 0 [s]
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Definition].
func NewFlow(v units.Volume, every units.Duration) (Flow, error) {
	if err := units.NonNegative("volume", v); err != nil {
		return 0, err
	}
	if err := units.Positive("time from load to load", every); err != nil {
		return 0, err
	}
	f := Flow(float64(v) / float64(every))
	return finite("flow", f)
}

// In returns f as a number of another unit.
func (f Flow) In(unit Flow) float64 { return float64(f) / float64(unit) }

// Over returns the volume that flows in a time.
func (f Flow) Over(t units.Duration) units.Volume { return units.Volume(float64(f) * float64(t)) }

// String writes f for people, in mL/h or L/h.
func (f Flow) String() string {
	if f < LitrePerHour/10 && f > -LitrePerHour/10 {
		return shown(f.In(MillilitrePerHour)) + " mL/h"
	}
	return shown(f.In(LitrePerHour)) + " L/h"
}

// A Viscosity in pascal seconds: how much a liquid resists flowing. Water at
// 20 °C has about one millipascal second.
type Viscosity float64

// Units of viscosity. The millipascal second is the centipoise.
const (
	MillipascalSecond Viscosity = 1e-3
	PascalSecond      Viscosity = 1
)

// In returns v as a number of another unit.
func (v Viscosity) In(unit Viscosity) float64 { return float64(v) / float64(unit) }

// String writes v for people, in mPa·s.
func (v Viscosity) String() string { return shown(v.In(MillipascalSecond)) + " mPa·s" }

// A SurfaceTension in newtons per metre. Clean water at 20 °C has about
// 73 mN/m, a bath with wetting agent 30 to 40.
type SurfaceTension float64

// Units of surface tension. The millinewton per metre is the dyne per centimetre.
const (
	MillinewtonPerMetre SurfaceTension = 1e-3
	NewtonPerMetre      SurfaceTension = 1
)

// In returns s as a number of another unit.
func (s SurfaceTension) In(unit SurfaceTension) float64 { return float64(s) / float64(unit) }

// String writes s for people, in mN/m.
func (s SurfaceTension) String() string { return shown(s.In(MillinewtonPerMetre)) + " mN/m" }

func shown(v float64) string { return strconv.FormatFloat(v, 'g', 6, 64) }

// bad makes a [*units.ValueError].
func bad(field, value, need string, reason error) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: reason}
}

// whole checks a count.
func whole(field string, n, low, high int) error {
	if n >= low && n <= high {
		return nil
	}
	return bad(field, strconv.Itoa(n), fmt.Sprintf("a whole number from %d to %d", low, high), units.ErrOutOfRange)
}

// first returns the first error of a list.
func first(list ...error) error {
	for _, err := range list {
		if err != nil {
			return err
		}
	}
	return nil
}

// numbers reports whether all are finite.
func numbers[Q ~float64](list ...Q) bool {
	for _, v := range list {
		if v-v != 0 {
			return false
		}
	}
	return true
}

// finite passes a result on unless it overflowed.
func finite[Q units.Quantity](field string, v Q) (Q, error) {
	if err := units.Finite(field, v); err != nil {
		return 0, err
	}
	return v, nil
}

// tooFar is the error of inputs that are each sound and together beyond float64.
func tooFar(field string) error {
	return bad(field, "beyond the range of numbers", "values of a workshop's size", units.ErrNotFinite)
}
