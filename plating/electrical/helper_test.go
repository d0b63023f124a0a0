package electrical_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

var nan, inf = math.NaN(), math.Inf(1)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.15g, want %.15g within %g relative", what, got, want, tol)
	}
}

// wantField checks for a typed error that names the field.
func wantField(t *testing.T, name string, err error, field string, reason error) {
	t.Helper()
	v := (*units.ValueError)(nil)
	if !errors.As(err, &v) || !strings.Contains(v.Field, field) || !errors.Is(err, reason) || v.Need == "" {
		t.Errorf("%s: %v; want field %q, reason %v", name, err, field, reason)
	}
}

func recompute(t *testing.T, steps ...working.Step) {
	t.Helper()
	if len(steps) == 0 {
		t.Error("no steps")
	}
	for _, s := range steps {
		got, err := s.Recompute()
		if err != nil {
			t.Errorf("%s: %v", s.Formula, err)
			continue
		}
		if math.Abs(got-s.Result.SI) > 1e-12*math.Abs(s.Result.SI) {
			t.Errorf("%s: recomputed %.17g, shown %.17g", s.Formula, got, s.Result.SI)
		}
	}
}

// nickelCell is the nickel tank of the clock workshop: 6 bezels between two
// rows of soluble anodes.
func nickelCell() electrical.Cell {
	return electrical.Cell{
		Conductivity: electrical.Interval[units.Conductivity]{Low: 5 * units.SiemensPerMetre,
			High: 10 * units.SiemensPerMetre},
		Gap:                  electrical.Interval[units.Length]{Low: 12 * units.Centimetre, High: 18 * units.Centimetre},
		Cathode:              9 * units.SquareDecimetre,
		Anode:                18 * units.SquareDecimetre,
		CathodeOverpotential: electrical.Interval[units.Voltage]{Low: 0.3, High: 0.6},
		AnodeOverpotential:   electrical.Interval[units.Voltage]{Low: 0.1, High: 0.3},
		Leads:                5 * units.Milliohm,
	}
}

func tank() electrical.HeatedTank {
	return electrical.HeatedTank{Mass: 24 * units.Kilogram, SpecificHeat: 3600, Loss: 4, Room: units.Celsius(20)}
}

func surface() electrical.OpenTop {
	return electrical.OpenTop{Area: 12 * units.SquareDecimetre, Water: units.Celsius(55), Air: units.Celsius(20),
		Humidity: 0.5, Draught: 0.2}
}

func vent() electrical.Vent {
	return electrical.Vent{Current: 20 * units.Ampere, Efficiency: 0.3, Temperature: units.Celsius(20),
		Pressure: units.Atmosphere, Mixing: 5}
}
