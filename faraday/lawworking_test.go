package faraday_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// lawCase is one function of the law with its working, on one set of arguments.
type lawCase struct {
	name string
	run  func() (float64, error)
	show func() (working.Step, error)
}

func pair[Q units.Quantity](name string, run func() (Q, error), show func() (working.Step, error)) lawCase {
	return lawCase{name, func() (float64, error) { v, err := run(); return float64(v), err }, show}
}

// lawCases returns every function of the law on one set of arguments.
func lawCases(d faraday.Deposit, molar units.MolarMass, n int, eff units.Efficiency, i units.Current,
	t units.Duration, j units.CurrentDensity, s units.Length, a units.Area, m units.Mass, q units.Charge) []lawCase {
	eq := d.Equivalent
	return []lawCase{
		pair("NewEquivalent", func() (units.Equivalent, error) { return faraday.NewEquivalent(molar, n) },
			func() (working.Step, error) { return faraday.NewEquivalentWorking(molar, n) }),
		pair("Mass", func() (units.Mass, error) { return faraday.Mass(eq, i, t, eff) },
			func() (working.Step, error) { return faraday.MassWorking(eq, i, t, eff) }),
		pair("MassOfCharge", func() (units.Mass, error) { return faraday.MassOfCharge(eq, q, eff) },
			func() (working.Step, error) { return faraday.MassOfChargeWorking(eq, q, eff) }),
		pair("Charge", func() (units.Charge, error) { return faraday.Charge(eq, m, eff) },
			func() (working.Step, error) { return faraday.ChargeWorking(eq, m, eff) }),
		pair("Time", func() (units.Duration, error) { return faraday.Time(eq, m, i, eff) },
			func() (working.Step, error) { return faraday.TimeWorking(eq, m, i, eff) }),
		pair("Current", func() (units.Current, error) { return faraday.Current(eq, m, t, eff) },
			func() (working.Step, error) { return faraday.CurrentWorking(eq, m, t, eff) }),
		pair("Efficiency", func() (units.Efficiency, error) { return faraday.Efficiency(eq, m, q) },
			func() (working.Step, error) { return faraday.EfficiencyWorking(eq, m, q) }),
		pair("Thickness", func() (units.Length, error) { return d.Thickness(j, t, eff) },
			func() (working.Step, error) { return d.ThicknessWorking(j, t, eff) }),
		pair("TimeFor", func() (units.Duration, error) { return d.TimeFor(s, j, eff) },
			func() (working.Step, error) { return d.TimeForWorking(s, j, eff) }),
		pair("CurrentDensityFor", func() (units.CurrentDensity, error) { return d.CurrentDensityFor(s, t, eff) },
			func() (working.Step, error) { return d.CurrentDensityForWorking(s, t, eff) }),
		pair("ChargeFor", func() (units.Charge, error) { return d.ChargeFor(s, a, eff) },
			func() (working.Step, error) { return d.ChargeForWorking(s, a, eff) }),
		pair("MassFor", func() (units.Mass, error) { return d.MassFor(s, a) },
			func() (working.Step, error) { return d.MassForWorking(s, a) }),
		pair("ThicknessOf", func() (units.Length, error) { return d.ThicknessOf(m, a) },
			func() (working.Step, error) { return d.ThicknessOfWorking(m, a) }),
	}
}

// TestIndependentLawWorking: the formula that a step prints, computed from the terms
// that it prints, gives what the function returns, and nothing that it needs is left
// out.
func TestIndependentLawWorking(t *testing.T) {
	rng := rand.New(rand.NewPCG(91, 92))
	ten := func(low, high float64) float64 { return math.Pow(10, low+(high-low)*rng.Float64()) }
	for range 300 {
		d, err := faraday.NewDeposit("Au", 1)
		if err != nil {
			t.Fatal(err)
		}
		d.Density = units.Density(ten(3.3, 4.3))
		eff, m := units.Efficiency(ten(-2, 0)), units.Mass(ten(-6, -2))
		least := float64(m) / float64(d.Equivalent) // the charge at which the efficiency is 1
		for _, c := range lawCases(d, units.MolarMass(ten(-2, -0.7)), 1+rng.IntN(8), eff, units.Current(ten(-2, 2)),
			units.Duration(ten(0, 5)), units.CurrentDensity(ten(0, 4)), units.Length(ten(-8, -4)), units.Area(ten(-5, 1)), m,
			units.Charge(least*ten(0.01, 2))) {
			want, err := c.run()
			if err != nil {
				t.Fatalf("%s: %v", c.name, err)
			}
			s, err := c.show()
			if err != nil {
				t.Fatalf("%sWorking: %v", c.name, err)
			}
			got, err := s.Recompute()
			if err != nil || math.Abs(got/want-1) > 1e-13 || s.Result.SI != want || s.Source == "" {
				t.Errorf("%s: %s is %v, the function says %v, the step %v (%v)", c.name, s.Formula, got, want, s.Result.SI, err)
			}
		}
	}
}

// TestPropertyLawWorkingErrors: a working fails where its function does, with the same
// error and no step.
func TestPropertyLawWorkingErrors(t *testing.T) {
	nan := math.NaN()
	for _, c := range lawCases(faraday.Deposit{Equivalent: units.Equivalent(nan)}, units.MolarMass(nan), 9, -1, -1, -1, -1,
		-1, -1, -1, -1) {
		_, want := c.run()
		s, err := c.show()
		var value *units.ValueError
		if !errors.As(err, &value) || err.Error() != want.Error() || s.Formula != "" {
			t.Errorf("%s: %v, the function says %v", c.name, err, want)
		}
	}
}

// TestPropertyLawAllocations: the functions of the law allocate nothing.
func TestPropertyLawAllocations(t *testing.T) {
	d, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range lawCases(d, 0.197, 1, 0.35, 0.5, 600, 50, 1e-6, 0.01, 1e-4, 600) {
		if n := testing.AllocsPerRun(100, func() { _, _ = c.run() }); n != 0 {
			t.Errorf("%s allocates %v times", c.name, n)
		}
	}
}

// How much gold half an ampere lays down in ten minutes at an efficiency of 35 %, with
// the steps that lead there.
func ExampleMassWorking() {
	gold, err := faraday.Lookup("Au")
	if err != nil {
		panic(err)
	}
	first, err := faraday.NewEquivalentWorking(gold.Weight.Value, 1)
	if err != nil {
		panic(err)
	}
	second, err := faraday.MassWorking(units.Equivalent(first.Result.SI), 0.5*units.Ampere, 10*units.Minute, 0.35)
	if err != nil {
		panic(err)
	}
	fmt.Print(working.Text([]working.Step{first, second}))
	// Output:
	// electrochemical equivalent: 7.34909 g/(A·h)
	//   ε = M/(n·F)  [OpenStaxChem2e]
	//     M = 196.967 g/mol (molar mass of the metal)
	//     n = 1 (electrons taken up by one atom)
	//     F = 96485.33212 C/mol (Faraday constant)
	// mass of the deposit: 214.349 mg
	//   m = ε·η·I·t  [OpenStaxChem2e]
	//     ε = 7.34909 g/(A·h) (electrochemical equivalent)
	//     η = 35 % (current efficiency)
	//     I = 500 mA (current)
	//     t = 10 min (time)
}

func ExampleDeposit_TimeForWorking() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		panic(err)
	}
	s, err := gold.TimeForWorking(units.Micrometre, 0.5*units.AmperePerSquareDecimetre, 0.35)
	if err != nil {
		panic(err)
	}
	fmt.Print(working.Text([]working.Step{s}))
	// Output:
	// time: 9 min
	//   t = ρ·s/(ε·η·j)  [OpenStaxChem2e]
	//     ρ = 19.3 g/cm³ (density of the deposit)
	//     s = 1 µm (thickness)
	//     ε = 7.34909 g/(A·h) (electrochemical equivalent)
	//     η = 35 % (current efficiency)
	//     j = 0.5 A/dm² (current density)
}
