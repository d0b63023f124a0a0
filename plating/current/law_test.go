package current_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

func laws() map[string]current.Law {
	room := units.Celsius(25)
	return map[string]current.Law{
		"linear":        current.LinearLaw(5 * units.OhmSquareCentimetre),
		"tafel cathode": current.TafelCathode(1, 0.5, room),
		"tafel anode":   {Model: current.Tafel, Exchange: 2, Anodic: 0.4, Temperature: room, Side: current.AnodicSide},
		"butler-volmer": {Model: current.ButlerVolmer, Exchange: 10, Anodic: 0.5, Cathodic: 0.5, Temperature: room},
		"unequal alphas": {Model: current.ButlerVolmer, Exchange: 3, Anodic: 1.5, Cathodic: 0.5,
			Temperature: units.Celsius(60)},
	}
}

// TestPropertySlopeAndInverse: the slope is the derivative (central difference)
// and Overpotential undoes Current.
func TestPropertySlopeAndInverse(t *testing.T) {
	for name, law := range laws() {
		if err := law.Check(); err != nil {
			t.Fatal(name, err)
		}
		for _, eta := range []float64{-0.4, -0.1, -0.02, -1e-3, 1e-3, 0.02, 0.1, 0.4} {
			j, slope := law.Current(eta)
			const h = 1e-6
			up, _ := law.Current(eta + h)
			down, _ := law.Current(eta - h)
			if want := (up - down) / (2 * h); math.Abs(slope-want) > 1e-8*math.Abs(want)+1e-9 {
				t.Errorf("%s at %v: slope %v, difference %v", name, eta, slope, want)
			}
			back, err := law.Overpotential(j)
			if err != nil || math.Abs(back-eta) > 1e-12 {
				t.Errorf("%s at %v: comes back as %v, %v", name, eta, back, err)
			}
		}
	}
}

// TestPropertyLimits: Butler-Volmer goes over into Tafel at high and into
// linear polarisation at low overpotential (values of kinetics.csv are tested
// in package faraday on the same formula).
func TestPropertyLimits(t *testing.T) {
	room := units.Celsius(25)
	bv := current.Law{Model: current.ButlerVolmer, Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: room}
	cathode := current.TafelCathode(1, 0.5, room)
	a, _ := bv.Current(-0.5)
	b, _ := cathode.Current(-0.5)
	if math.Abs(a/b-1) > 1e-8 {
		t.Errorf("Tafel limit: %v and %v", a, b)
	}
	low, _ := bv.Current(1e-6)
	if want := 1e-6 / bv.Volt(); math.Abs(low/want-1) > 1e-10 {
		t.Errorf("linear limit: %v, want %v", low, want)
	}
	for _, eta := range []float64{1e6, -1e6} {
		if j, s := bv.Current(eta); j-j != 0 || s-s != 0 {
			t.Errorf("at %v: %v %v", eta, j, s)
		}
	}
}

func TestBadLaws(t *testing.T) {
	room := units.Celsius(25)
	for name, law := range map[string]current.Law{
		"resistance": {Model: current.Linear},
		"exchange":   {Model: current.Tafel, Cathodic: 0.5, Temperature: room},
		"alpha":      {Model: current.Tafel, Exchange: 1, Temperature: room},
		"anodic":     {Model: current.ButlerVolmer, Exchange: 1, Cathodic: 0.5, Temperature: room},
		"cathodic":   {Model: current.ButlerVolmer, Exchange: 1, Anodic: 0.5, Cathodic: math.NaN(), Temperature: room},
		"cold":       {Model: current.ButlerVolmer, Exchange: 1, Anodic: 0.5, Cathodic: 0.5},
		"model":      {Model: 77},
		"infinite":   {Model: current.Linear, Resistance: units.AreaResistance(math.Inf(1))},
		"percent":    {Model: current.Tafel, Exchange: 1, Cathodic: 50, Temperature: room},
	} {
		var value *units.ValueError
		if err := law.Check(); !errors.As(err, &value) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := law.Overpotential(-1); err == nil {
			t.Errorf("%s: Overpotential has no error", name)
		}
	}
	if j, _ := (current.Law{}).Current(1); j == j {
		t.Error("Primary has a current density")
	}
	if eta, err := (current.Law{}).Overpotential(5); eta != 0 || err != nil {
		t.Errorf("Primary: %v %v", eta, err)
	}
	cathode := current.TafelCathode(1, 0.5, room)
	for _, j := range []float64{0, 1, math.NaN(), math.Inf(-1)} {
		if _, err := cathode.Overpotential(j); err == nil {
			t.Errorf("Tafel cathode at %v: no error", j)
		}
	}
	words := fmt.Sprint(current.Primary, current.Linear, current.Tafel, current.ButlerVolmer, current.Model(9))
	if words != "primary linear Tafel Butler-Volmer unknown model" {
		t.Error(words)
	}
}

func ExampleLaw_Current() {
	law := current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(25))
	j, _ := law.Current(-0.2)
	fmt.Printf("%.1f A/m²\n", j) // negative: a cathode
	// Output: -49.0 A/m²
}

func ExampleLaw_Overpotential() {
	law := current.LinearLaw(5 * units.OhmSquareCentimetre)
	eta, err := law.Overpotential(-80)
	fmt.Printf("%.3f V %v\n", eta, err)
	// Output: -0.040 V <nil>
}

func ExampleLinearLaw() {
	law := current.LinearLaw(5 * units.OhmSquareCentimetre)
	fmt.Println(law.Model, law.Resistance, law.Check())
	// Output: linear 5 Ω·cm² <nil>
}

func ExampleTafelCathode() {
	law := current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(25))
	fmt.Printf("%s, %.1f mV for a factor e\n", law.Model, 1000*law.Volt()/law.Cathodic)
	// Output: Tafel, 51.4 mV for a factor e
}

// TestPropertyFinite: at the ends of what Check accepts every result is finite.
func TestPropertyFinite(t *testing.T) {
	for _, j0 := range []units.CurrentDensity{1e-30, 1e12} {
		for _, temperature := range []units.Temperature{100, 2000} {
			for _, alpha := range []float64{1e-3, 4} {
				for _, l := range []current.Law{current.TafelCathode(j0, alpha, temperature),
					{Model: current.ButlerVolmer, Exchange: j0, Anodic: alpha, Cathodic: alpha, Temperature: temperature}} {
					if err := l.Check(); err != nil {
						t.Fatal(err)
					}
					for _, eta := range []float64{-1e6, -1, -1e-12, 0, 1e-12, 1, 1e6} {
						if j, slope := l.Current(eta); math.IsNaN(j+slope) || math.IsInf(j, 0) || math.IsInf(slope, 0) {
							t.Errorf("%+v at %v V: %v, %v", l, eta, j, slope)
						}
					}
				}
			}
		}
	}
	for _, l := range []current.Law{current.TafelCathode(1e308, 0.5, 300), current.TafelCathode(1, 0.5, 1e-300),
		current.TafelCathode(1, 0.5, 1e10),
		current.TafelCathode(1e-300, 0.5, 300), current.LinearLaw(1e20), current.LinearLaw(1e-300)} {
		var v *units.ValueError
		if err := l.Check(); !errors.As(err, &v) || !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%+v: %v", l, err)
		}
	}
}
