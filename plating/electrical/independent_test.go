package electrical_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

// TestIndependentRod: between a rod and a cylinder around it the textbook form
// is ln(r₂/r₁)/(2·π·κ·h); and any widening section by summing slices.
func TestIndependentRod(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 1))
	for range 500 {
		r1 := 0.001 + 0.05*rng.Float64()
		r2 := r1 * (1 + 5*rng.Float64())
		h, kappa := 0.1+rng.Float64(), 1+50*rng.Float64()
		area := func(r float64) units.Area { return units.Area(2 * math.Pi * r * h) }
		got := must(electrical.Resistance(units.Conductivity(kappa), units.Length(r2-r1), area(r2), area(r1)))
		near(t, "rod", float64(got), math.Log(r2/r1)/(2*math.Pi*kappa*h), 1e-9)

		const slices = 2000
		sum := 0.0
		for i := range slices {
			x := (float64(i) + 0.5) / slices
			sum += (r2 - r1) / slices / (kappa * (float64(area(r1))*(1-x) + float64(area(r2))*x))
		}
		near(t, "slices", float64(got), sum, 1e-5)
	}
}

// TestIndependentTank integrates the balance of heat step by step.
func TestIndependentTank(t *testing.T) {
	rng := rand.New(rand.NewPCG(2, 2))
	for range 200 {
		k := electrical.HeatedTank{Mass: units.Mass(1 + 100*rng.Float64()), SpecificHeat: electrical.SpecificHeat(3000 +
			1200*rng.Float64()),
			Loss: electrical.HeatLoss(20 * rng.Float64()), Room: units.Celsius(15 + 10*rng.Float64())}
		if rng.IntN(5) == 0 {
			k.Loss = 0
		}
		start := units.Celsius(15 + 60*rng.Float64())
		p := units.Power(2000 * rng.Float64())
		d := units.Duration(7200 * rng.Float64())
		rate := func(T float64) float64 {
			return (float64(p) - float64(k.Loss)*(T-float64(k.Room))) / (float64(k.Mass) * float64(k.SpecificHeat))
		}
		const steps = 200
		T, dt := float64(start), float64(d)/steps
		for range steps { // Runge-Kutta of the fourth order
			a := rate(T)
			b := rate(T + dt/2*a)
			c := rate(T + dt/2*b)
			e := rate(T + dt*c)
			T += dt / 6 * (a + 2*b + 2*c + e)
		}
		near(t, "after", float64(must(k.After(start, p, d))), T, 1e-10)
	}
}

// TestIndependentLatentHeat gets the heat of vaporisation from the slope of the
// vapour pressure (Clapeyron, the vapour an ideal gas): good to a percent or two
// up to 100 °C, and by a table value at the boiling point.
func TestIndependentLatentHeat(t *testing.T) {
	for c := 5.0; c <= 95; c += 5 {
		p := func(c float64) float64 { return float64(must(electrical.SaturationPressure(units.Celsius(c)))) }
		T := c + 273.15
		slope := (math.Log(p(c+0.01)) - math.Log(p(c-0.01))) / 0.02
		want := faraday.GasConstant / 18.015e-3 * T * T * slope
		near(t, "latent heat", float64(must(electrical.LatentHeat(units.Celsius(c)))), want, 0.02)
	}
	// by the old definition of the scale
	near(t, "boiling at an atmosphere", float64(must(electrical.SaturationPressure(units.Celsius(100)))), 101325, 0.001)
}

// TestIndependentHydrogen counts molecules: one for two electrons that plate nothing.
func TestIndependentHydrogen(t *testing.T) {
	v := vent()
	a := must(v.Air())
	perSecond := 0.7 * 20 / 1.602176634e-19 / 2
	volume := perSecond * 1.380649e-23 * 293.15 / 101325
	near(t, "hydrogen", float64(a.Hydrogen), volume, 1e-12)
	near(t, "share in the mixed stream", float64(a.Hydrogen)/float64(a.Hydrogen+a.Air/5), 0.01, 1e-12)
}
