package faraday_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// Two electrons, 1e-9 m²/s, 1 mol/L, 0.1 mm, by hand: 2·96485.33·1e-9·1000/1e-4
// is 1929.7 A/m², 19.3 A/dm².
func TestIndependentLimitingCurrent(t *testing.T) {
	j, err := faraday.LimitingCurrentDensity(2, 1e-9, 1*units.MolePerLitre, 0.1*units.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "jL", float64(j), 1929.7066424662, 1e-12)
}

// The concentration overpotential is the Nernst potential of the poorer
// solution at the face less that of the bulk.
func TestIndependentConcentrationOverpotential(t *testing.T) {
	const bulk = 0.05
	for _, share := range []float64{0.01, 0.3, 0.5, 0.9, 0.999} {
		for _, n := range []int{1, 2, 3} {
			got, err := faraday.ConcentrationOverpotential(units.CurrentDensity(share*500), 500, n, 333.15)
			if err != nil {
				t.Fatal(err)
			}
			face, err := faraday.Nernst(-0.257, n, units.Ratio(1/(bulk*(1-share))), 333.15)
			if err != nil {
				t.Fatal(err)
			}
			rest, err := faraday.Nernst(-0.257, n, 1/bulk, 333.15)
			if err != nil {
				t.Fatal(err)
			}
			chemNear(t, "ηc", float64(got), float64(face-rest), 1e-10)
		}
	}
	got, _ := faraday.ConcentrationOverpotential(9, 10, 2, units.Celsius(25))
	chemWithin(t, "nine tenths, as the comment says", float64(got), -0.0296, 5e-5)
}

func TestPropertyTransport(t *testing.T) {
	if eta, err := faraday.ConcentrationOverpotential(0, 10, 1, 300); eta != 0 || math.Signbit(float64(eta)) ||
		err != nil {
		t.Errorf("no current: %v, %v", eta, err)
	}
	last := 0.0
	for _, j := range []float64{1e-12, 1, 5, 9.9, 9.999999, math.Nextafter(10, 0)} {
		eta, err := faraday.ConcentrationOverpotential(units.CurrentDensity(j), 10, 1, 300)
		if err != nil || !(float64(eta) < last) {
			t.Errorf("ηc(%v) = %v, %v; want below %v", j, eta, err, last)
		}
		last = float64(eta)
	}
	// Every argument moves the result the way it should.
	base, _ := faraday.LimitingCurrentDensity(1, 1e-9, 50, 1e-4)
	for _, c := range []struct {
		n       int
		d, c, l float64
		factor  float64
	}{{2, 1e-9, 50, 1e-4, 2}, {1, 3e-9, 50, 1e-4, 3}, {1, 1e-9, 100, 1e-4, 2}, {1, 1e-9, 50, 2e-4, 0.5}} {
		j, err := faraday.LimitingCurrentDensity(c.n, units.Diffusivity(c.d), units.AmountConcentration(c.c),
			units.Length(c.l))
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "jL", float64(j), c.factor*float64(base), 1e-14)
	}
	// Wa with the Tafel slope is κ·b/(ln 10·j·L); near equilibrium κ·R·T/((αa+αc)·F·j0·L).
	line := faraday.Tafel{Exchange: 1, Slope: -0.12}
	r, err := line.Resistance(-200)
	if err != nil {
		t.Fatal(err)
	}
	wa, err := faraday.WagnerNumber(12, r, 0.05)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "Wa Tafel", float64(wa), 12*0.12/(math.Ln10*200*0.05), 1e-14)
	bv := faraday.ButlerVolmer{Exchange: 3, Anodic: 0.5, Cathodic: 0.7, Temperature: 320}
	r, err = bv.PolarisationResistance()
	if err != nil {
		t.Fatal(err)
	}
	if wa, err = faraday.WagnerNumber(12, r, 0.05); err != nil {
		t.Fatal(err)
	}
	chemNear(t, "Wa linear", float64(wa), 12*faraday.GasConstant*320/(1.2*faraday.FaradayConstant*3*0.05), 1e-14)
}

func TestTransportErrors(t *testing.T) {
	for _, n := range []int{math.MinInt, -1, 0, 2, math.MaxInt} {
		chemSweep(3, func(v []float64) {
			j, err := faraday.LimitingCurrentDensity(n, units.Diffusivity(v[0]), units.AmountConcentration(v[1]),
				units.Length(v[2]))
			chemTyped(t, "LimitingCurrentDensity", float64(j), err)
			if err == nil && (n <= 0 || j < 0) {
				t.Errorf("LimitingCurrentDensity(%d, %v) = %v", n, v, j)
			}
			s, err := faraday.LimitingCurrentDensityWorking(n, units.Diffusivity(v[0]), units.AmountConcentration(v[1]),
				units.Length(v[2]))
			chemTyped(t, "LimitingCurrentDensityWorking", s.Result.SI, err)
			eta, err := faraday.ConcentrationOverpotential(units.CurrentDensity(v[0]), units.CurrentDensity(v[1]), n,
				units.Temperature(v[2]))
			chemTyped(t, "ConcentrationOverpotential", float64(eta), err)
			if err == nil && eta > 0 {
				t.Errorf("ConcentrationOverpotential(%v, %d) = %v, want zero or less", v, n, eta)
			}
			wa, err := faraday.WagnerNumber(units.Conductivity(v[0]), units.AreaResistance(v[1]), units.Length(v[2]))
			chemTyped(t, "WagnerNumber", float64(wa), err)
			s, err = faraday.WagnerNumberWorking(units.Conductivity(v[0]), units.AreaResistance(v[1]), units.Length(v[2]))
			chemTyped(t, "WagnerNumberWorking", s.Result.SI, err)
		})
	}
	for _, j := range []units.CurrentDensity{10, 11} {
		if _, err := faraday.ConcentrationOverpotential(j, 10, 1, 300); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("%v at a limit of 10: %v", j, err)
		}
	}
}

func TestPropertyTransportWorking(t *testing.T) {
	s, err := faraday.LimitingCurrentDensityWorking(1, 1.2e-9, 50, 8e-5)
	chemRecompute(t, s, err)
	s, err = faraday.WagnerNumberWorking(12, 3e-4, 0.05)
	chemRecompute(t, s, err)
}
