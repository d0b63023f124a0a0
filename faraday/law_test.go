package faraday_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.17g, want %.17g within %g", what, got, want, tol)
	}
}

// TestReferenceConstants holds the products against the digits printed for
// them, [SI2019].
func TestReferenceConstants(t *testing.T) {
	if got := float64(faraday.FaradayConstant); got != 96485.3321233100184 {
		t.Errorf("F = %.20g", got)
	}
	if got := float64(faraday.GasConstant); got != 8.31446261815324 {
		t.Errorf("R = %.20g", got)
	}
	near(t, "F in A·h/mol", faraday.FaradayConstant/3600, 26.8014811454, 5e-12) // printed to 12 digits
}

// TestPropertyLawDirections goes round the law in every direction.
func TestPropertyLawDirections(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 6))
	span := func(low, high float64) float64 {
		return math.Exp(math.Log(low) + rng.Float64()*(math.Log(high)-math.Log(low)))
	}
	for range 3000 {
		molar := units.MolarMass(span(0.01, 0.25))
		n := 1 + rng.IntN(7)
		eq, err := faraday.NewEquivalent(molar, n)
		if err != nil {
			t.Fatal(err)
		}
		d := faraday.Deposit{Equivalent: eq, Density: units.Density(span(2000, 22600))}
		eff := units.Efficiency(span(0.01, 1))
		i, time, area := units.Current(span(1e-3, 1e3)), units.Duration(span(1, 1e5)), units.Area(span(1e-5, 10))
		must := func(err error) {
			t.Helper()
			if err != nil {
				t.Fatal(err)
			}
		}
		m, err := faraday.Mass(eq, i, time, eff)
		must(err)
		q, err := faraday.Charge(eq, m, eff)
		must(err)
		near(t, "charge", float64(q), float64(i)*float64(time), 1e-14)
		back, err := faraday.Time(eq, m, i, eff)
		must(err)
		near(t, "time", float64(back), float64(time), 1e-14)
		current, err := faraday.Current(eq, m, time, eff)
		must(err)
		near(t, "current", float64(current), float64(i), 1e-14)
		e, err := faraday.Efficiency(eq, m, q)
		must(err)
		near(t, "efficiency", float64(e), float64(eff), 1e-14)
		v, err := faraday.Valence(molar, m, q, eff)
		must(err)
		if v.Nearest != n || math.Abs(v.Off) > 1e-13 {
			t.Errorf("valence %+v, want %d", v, n)
		}
		s, err := d.ThicknessOf(m, area)
		must(err)
		j, err := i.PerArea(area)
		must(err)
		s2, err := d.Thickness(j, time, eff)
		must(err)
		near(t, "thickness", float64(s2), float64(s), 1e-14)
		t2, err := d.TimeFor(s, j, eff)
		must(err)
		near(t, "time for thickness", float64(t2), float64(time), 1e-14)
		j2, err := d.CurrentDensityFor(s, time, eff)
		must(err)
		near(t, "current density", float64(j2), float64(j), 1e-14)
		a2, err := d.AreaFor(q, s, eff)
		must(err)
		near(t, "area", float64(a2), float64(area), 1e-14)
		q2, err := d.ChargeFor(s, area, eff)
		must(err)
		near(t, "charge for thickness", float64(q2), float64(q), 1e-14)
		m2, err := d.MassFor(s, area)
		must(err)
		near(t, "mass for thickness", float64(m2), float64(m), 1e-14)
		g, err := d.Growth(j, eff)
		must(err)
		near(t, "growth", float64(g.For(time)), float64(s), 1e-14)
	}
}

// TestIndependentMixture adds the charges of an alloy deposit metal by metal
// and compares: for 100 g of a gold-cobalt deposit with an inclusion.
func TestIndependentMixture(t *testing.T) {
	part := func(symbol string, n int, share units.MassFraction) faraday.DepositPart {
		p, err := faraday.NewDepositPart(symbol, n, share)
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	parts := []faraday.DepositPart{part("Au", 1, 0.995), part("Co", 2, 0.003), {Share: 0.002}}
	eq, err := faraday.MixedEquivalent(parts...)
	if err != nil {
		t.Fatal(err)
	}
	// Moles of electrons for 100 g: 99.5/196.96657 + 2·0.3/58.933194.
	electrons := 99.5/196.966570 + 2*0.3/58.933194
	near(t, "equivalent", eq.In(units.GramPerAmpereHour), 100/(electrons*96485.33212331/3600), 1e-12)
	shares, err := faraday.CurrentShares(parts...)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "gold's share of the current", float64(shares[0]), 99.5/196.966570/electrons, 1e-12)
	near(t, "sum", float64(shares[0]+shares[1]+shares[2]), 1, 1e-15)
	if shares[2] != 0 {
		t.Error("an inclusion takes current")
	}
	// One metal alone is its own mixture.
	alone, err := faraday.MixedEquivalent(part("Ag", 0, 1))
	if err != nil {
		t.Fatal(err)
	}
	silver, _ := faraday.NewDeposit("Ag", 1)
	near(t, "silver alone", float64(alone), float64(silver.Equivalent), 1e-15)
}

// TestIndependentHydrogen counts molecules: one ampere-hour is F/26.8 moles of
// electrons, two to a molecule; 22.414 L/mol at 0 °C and 1 atm follows from R.
func TestIndependentHydrogen(t *testing.T) {
	for celsius, want := range map[float64]float64{0: 0.418, 25: 0.456} { // litres, computed from R·T/p
		g, err := faraday.Hydrogen(units.AmpereHour, 0, units.Celsius(celsius), units.Atmosphere)
		if err != nil {
			t.Fatal(err)
		}
		if got := g.Volume.In(units.Litre); math.Abs(got-want) > 0.0005 {
			t.Errorf("at %v °C: %.4f L, want %v", celsius, got, want)
		}
		near(t, "mass", g.Mass.In(units.Gram), float64(g.Amount)*2.0160, 1e-12)
	}
	all, _ := faraday.Hydrogen(3600, 0, 300, 1e5)
	part, _ := faraday.Hydrogen(3600, 0.35, 300, 1e5)
	near(t, "share that makes hydrogen", float64(part.Volume), 0.65*float64(all.Volume), 1e-14)
	none, err := faraday.Hydrogen(3600, 1, 300, 1e5)
	if err != nil || none != (faraday.GasVolume{}) {
		t.Errorf("at 100 %%: %+v %v", none, err)
	}
	oxygen, _ := faraday.Oxygen(3600, 300, 1e5)
	near(t, "oxygen is half of it", float64(oxygen.Volume), float64(all.Volume)/2, 1e-14)
}

// TestEfficiencyOverOne: the value comes along with a RangeError.
func TestEfficiencyOverOne(t *testing.T) {
	d, err := faraday.NewDeposit("Ni", 2)
	if err != nil {
		t.Fatal(err)
	}
	e, err := faraday.Efficiency(d.Equivalent, 2*d.Equivalent.Of(100), 100)
	var over *units.RangeError
	if !errors.As(err, &over) || math.Abs(float64(e)-2) > 1e-15 {
		t.Errorf("%v %v", e, err)
	}
	v, err := faraday.Valence(0.1, 1, 1, 1)
	if !errors.As(err, &over) || v.Nearest != 0 || !(v.Exact > 0) {
		t.Errorf("valence far below one: %+v %v", v, err)
	}
}

// TestBadArguments puts every bad number into every argument of every
// function: a typed error and a zero result, never NaN.
func TestBadArguments(t *testing.T) {
	good := []float64{1, 1, 1, 1}
	d := func(x []float64) faraday.Deposit {
		return faraday.Deposit{Equivalent: units.Equivalent(x[0]), Density: units.Density(x[1])}
	}
	calls := []struct {
		name string
		args int
		call func(x []float64) (float64, error)
		zero []bool // arguments that may be zero
	}{
		{"NewEquivalent", 1, func(x []float64) (float64, error) {
			v, err := faraday.NewEquivalent(units.MolarMass(x[0]), 1)
			return float64(v), err
		}, []bool{false}},
		{"Mass", 4, func(x []float64) (float64, error) {
			v, err := faraday.Mass(units.Equivalent(x[0]), units.Current(x[1]), units.Duration(x[2]), units.Efficiency(x[3]))
			return float64(v), err
		}, []bool{false, true, true, false}},
		{"MassOfCharge", 3, func(x []float64) (float64, error) {
			v, err := faraday.MassOfCharge(units.Equivalent(x[0]), units.Charge(x[1]), units.Efficiency(x[2]))
			return float64(v), err
		}, []bool{false, true, false}},
		{"Charge", 3, func(x []float64) (float64, error) {
			v, err := faraday.Charge(units.Equivalent(x[0]), units.Mass(x[1]), units.Efficiency(x[2]))
			return float64(v), err
		}, []bool{false, true, false}},
		{"Time", 4, func(x []float64) (float64, error) {
			v, err := faraday.Time(units.Equivalent(x[0]), units.Mass(x[1]), units.Current(x[2]), units.Efficiency(x[3]))
			return float64(v), err
		}, []bool{false, true, false, false}},
		{"Current", 4, func(x []float64) (float64, error) {
			v, err := faraday.Current(units.Equivalent(x[0]), units.Mass(x[1]), units.Duration(x[2]), units.Efficiency(x[3]))
			return float64(v), err
		}, []bool{false, true, false, false}},
		{"Efficiency", 3, func(x []float64) (float64, error) {
			v, err := faraday.Efficiency(units.Equivalent(x[0]), units.Mass(x[1]), units.Charge(x[2]))
			return float64(v), err
		}, []bool{false, true, false}},
		{"Valence", 4, func(x []float64) (float64, error) {
			v, err := faraday.Valence(units.MolarMass(x[0]*faraday.FaradayConstant), units.Mass(x[1]), units.Charge(x[2]),
				units.Efficiency(x[3]))
			return v.Exact, err
		}, []bool{false, false, false, false}},
		{"Growth", 4, func(x []float64) (float64, error) {
			v, err := d(x).Growth(units.CurrentDensity(x[2]), units.Efficiency(x[3]))
			return float64(v), err
		}, []bool{false, false, true, false}},
		{"Thickness", 4, func(x []float64) (float64, error) {
			v, err := d(x).Thickness(1, units.Duration(x[2]), units.Efficiency(x[3]))
			return float64(v), err
		}, []bool{false, false, true, false}},
		{"TimeFor", 4, func(x []float64) (float64, error) {
			v, err := d(x).TimeFor(units.Length(x[2]), units.CurrentDensity(x[3]), 1)
			return float64(v), err
		}, []bool{false, false, true, false}},
		{"CurrentDensityFor", 4, func(x []float64) (float64, error) {
			v, err := d(x).CurrentDensityFor(units.Length(x[2]), units.Duration(x[3]), 1)
			return float64(v), err
		}, []bool{false, false, true, false}},
		{"AreaFor", 4, func(x []float64) (float64, error) {
			v, err := d(x).AreaFor(units.Charge(x[2]), units.Length(x[3]), 1)
			return float64(v), err
		}, []bool{false, false, true, false}},
		{"ChargeFor", 4, func(x []float64) (float64, error) {
			v, err := d(x).ChargeFor(units.Length(x[2]), units.Area(x[3]), 1)
			return float64(v), err
		}, []bool{false, false, true, true}},
		{"MassFor", 4, func(x []float64) (float64, error) {
			v, err := d([]float64{1, x[1]}).MassFor(units.Length(x[2]), units.Area(x[3]))
			return float64(v), err
		}, []bool{true, false, true, true}},
		{"ThicknessOf", 4, func(x []float64) (float64, error) {
			v, err := d([]float64{1, x[1]}).ThicknessOf(units.Mass(x[2]), units.Area(x[3]))
			return float64(v), err
		}, []bool{true, false, true, false}},
		{"Trade", 2, func(x []float64) (float64, error) { v, err := d(x).Trade(); return v.GramPerAmpereHour, err },
			[]bool{false, false}},
		{"Hydrogen", 3, func(x []float64) (float64, error) {
			v, err := faraday.Hydrogen(units.Charge(x[0]), 0, units.Temperature(x[1]), units.Pressure(x[2]))
			return float64(v.Volume), err
		}, []bool{true, false, false}},
		{"Oxygen", 3, func(x []float64) (float64, error) {
			v, err := faraday.Oxygen(units.Charge(x[0]), units.Temperature(x[1]), units.Pressure(x[2]))
			return float64(v.Volume), err
		}, []bool{true, false, false}},
	}
	for _, c := range calls {
		if _, err := c.call(good); err != nil {
			t.Errorf("%s of ones: %v", c.name, err)
		}
		for k := range c.args {
			for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1, 0, 1e308, 5e-324} {
				if strings.HasPrefix(c.name, "MassFor") && k == 0 && c.zero[0] || c.name == "ThicknessOf" && k == 0 {
					continue // the equivalent is not looked at
				}
				args := append([]float64(nil), good...)
				args[k] = x
				v, err := c.call(args)
				if v-v != 0 {
					t.Errorf("%s argument %d = %v: result %v", c.name, k+1, x, v)
				}
				wantError := x != x || math.IsInf(x, 0) || x < 0 || (x == 0 && !c.zero[k])
				if wantError && err == nil {
					t.Errorf("%s argument %d = %v: no error", c.name, k+1, x)
				}
				var value *units.ValueError
				var over *units.RangeError
				if err != nil && !errors.As(err, &value) && !errors.As(err, &over) {
					t.Errorf("%s argument %d = %v: error of type %T", c.name, k+1, x, err)
				}
			}
		}
	}
	for _, n := range []int{-1, 0, 9, math.MaxInt} {
		if _, err := faraday.NewEquivalent(0.1, n); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("valence %d: %v", n, err)
		}
	}
	for _, symbol := range []string{"", "au", "gold", "Xx", "Tc", strings.Repeat("A", 1000)} {
		var unknown *faraday.ElementError
		if _, err := faraday.Lookup(symbol); !errors.As(err, &unknown) || len(err.Error()) > 150 {
			t.Errorf("%.10q: %v", symbol, err)
		}
		if _, err := faraday.NewDeposit(symbol, 1); err == nil {
			t.Errorf("deposit of %.10q: no error", symbol)
		}
	}
	for _, symbol := range []string{"Na", "K"} { // not plated from water: neither valence nor density here
		if _, err := faraday.NewDeposit(symbol, 0); err == nil || !strings.Contains(err.Error(), "valence") {
			t.Errorf("deposit of %s: %v", symbol, err)
		}
		if _, err := faraday.NewDeposit(symbol, 1); err == nil || !strings.Contains(err.Error(), "density") {
			t.Errorf("deposit of %s: %v", symbol, err)
		}
	}
	for want, parts := range map[string][]faraday.DepositPart{
		"no constituents":        nil,
		"sum of mass":            {{Molar: 0.1, Electrons: 1, Share: 0.9}},
		"constituent 2":          {{Molar: 0.1, Electrons: 1, Share: 0.9}, {Molar: -1, Electrons: 1, Share: 0.1}},
		"mass fraction":          {{Molar: 0.1, Electrons: 1, Share: units.MassFraction(math.NaN())}},
		"takes charge":           {{Share: 1}},
		"a whole number":         {{Molar: 0.1, Electrons: -1, Share: 1}},
		"a fraction from 0 to 1": {{Molar: 0.1, Electrons: 1, Share: 1.5}},
	} {
		if _, err := faraday.MixedEquivalent(parts...); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", want, err)
		}
		if _, err := faraday.CurrentShares(parts...); err == nil {
			t.Errorf("%s: CurrentShares has no error", want)
		}
	}
	if _, err := faraday.NewDepositPart("Fm", 1, 1); err == nil {
		t.Error("an unknown constituent: no error")
	}
	if _, err := faraday.NewDepositPart("K", 0, 1); err == nil {
		t.Error("a constituent without usual valence: no error")
	}
}

func TestElementHints(t *testing.T) {
	for symbol, hint := range map[string]string{"AU": "Au", "au": "Au", "gold": "Au", "nickel": "Ni", "Gold": "Au"} {
		if _, err := faraday.Lookup(symbol); err == nil || !strings.HasSuffix(err.Error(), "did you mean "+hint) {
			t.Errorf("%s: %v", symbol, err)
		}
	}
	gold, _ := faraday.Lookup("Au")
	gold.Valences()[0] = 9
	if v := gold.Valences(); len(v) != 2 || v[0] != 1 || v[1] != 3 || gold.UsualValence() != 1 {
		t.Errorf("valences %v", v)
	}
	if (faraday.Element{}).UsualValence() != 0 || (faraday.AtomicWeight{}).Relative() != 0 {
		t.Error("zero values")
	}
	if r := gold.Weight.Relative(); r <= 0 || r > 3e-8 {
		t.Errorf("relative uncertainty of gold %v", r)
	}
}

func ExampleTime() {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	// 300 mg of gold on a set of clock hands, at 0.5 A and an efficiency of 35 %.
	t, err := faraday.Time(gold.Equivalent, 300*units.Milligram, 0.5*units.Ampere, 0.35)
	fmt.Println(t, err)
	// Output: 14 min <nil>
}

func ExampleMass() {
	silver, _ := faraday.NewDeposit("Ag", 1)
	m, err := faraday.Mass(silver.Equivalent, 0.3*units.Ampere, 40*units.Minute, 0.99)
	fmt.Println(m.Text(units.Milligram, 0), err)
	// Output: 797 mg <nil>
}

func ExampleMassOfCharge() {
	nickel, _ := faraday.NewDeposit("Ni", 2)
	m, err := faraday.MassOfCharge(nickel.Equivalent, 100*units.AmpereMinute, 0.95)
	fmt.Println(m.Text(units.Gram, 3), err)
	// Output: 1.734 g <nil>
}

func ExampleCharge() {
	gold, _ := faraday.NewDeposit("Au", 1)
	q, err := faraday.Charge(gold.Equivalent, 1*units.Gram, 0.35)
	fmt.Println(q.Text(units.AmpereMinute, 1), err)
	// Output: 23.3 A·min <nil>
}

func ExampleCurrent() {
	gold, _ := faraday.NewDeposit("Au", 1)
	i, err := faraday.Current(gold.Equivalent, 300*units.Milligram, 10*units.Minute, 0.35)
	fmt.Println(i.Text(units.Ampere, 2), err)
	// Output: 0.70 A <nil>
}

func ExampleEfficiency() {
	gold, _ := faraday.NewDeposit("Au", 1)
	e, err := faraday.Efficiency(gold.Equivalent, 86.2*units.Milligram, 2*units.AmpereMinute)
	fmt.Println(e.Percent(1), err)
	// Output: 35.2 % <nil>
}

func ExampleValence() {
	rhodium, _ := faraday.Lookup("Rh")
	v, err := faraday.Valence(rhodium.Weight.Value, 38*units.Milligram, 108*units.Coulomb, 1)
	fmt.Printf("%d (%.2f, off by %.0f %%) %v\n", v.Nearest, v.Exact, 100*v.Off, err)
	// Output: 3 (3.03, off by 1 %) <nil>
}

func ExampleNewEquivalent() {
	gold, _ := faraday.Lookup("Au")
	for _, n := range gold.Valences() {
		eq, err := faraday.NewEquivalent(gold.Weight.Value, n)
		fmt.Println(n, eq.Text(units.GramPerAmpereHour, 4), err)
	}
	// Output:
	// 1 7.3491 g/(A·h) <nil>
	// 3 2.4497 g/(A·h) <nil>
}

func ExampleNewDeposit() {
	d, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	d.Density = 17.3 * units.GramPerCubicCentimetre // a hardened deposit
	t, err := d.TimeFor(1*units.Micrometre, 0.45*units.AmperePerSquareDecimetre, 0.35)
	fmt.Println(t, err)
	// Output: 8 min 58 s <nil>
}

func ExampleDeposit_Growth() {
	d, _ := faraday.NewDeposit("Ag", 1)
	v, err := d.Growth(0.8*units.AmperePerSquareDecimetre, 0.99)
	fmt.Println(v.Text(units.MicrometrePerMinute, 3), err)
	// Output: 0.506 µm/min <nil>
}

func ExampleDeposit_Thickness() {
	d, _ := faraday.NewDeposit("Ni", 2)
	s, err := d.Thickness(3*units.AmperePerSquareDecimetre, 10*units.Minute, 0.95)
	fmt.Println(s.Text(units.Micrometre, 2), err)
	// Output: 5.84 µm <nil>
}

func ExampleDeposit_TimeFor() {
	d, _ := faraday.NewDeposit("Ni", 2)
	t, err := d.TimeFor(5*units.Micrometre, 3*units.AmperePerSquareDecimetre, 0.95)
	fmt.Println(t, err)
	// Output: 8 min 33 s <nil>
}

func ExampleDeposit_CurrentDensityFor() {
	d, _ := faraday.NewDeposit("Ni", 2)
	j, err := d.CurrentDensityFor(5*units.Micrometre, 10*units.Minute, 0.95)
	fmt.Println(j.Text(units.AmperePerSquareDecimetre, 2), err)
	// Output: 2.57 A/dm² <nil>
}

func ExampleDeposit_AreaFor() {
	d, _ := faraday.NewDeposit("Au", 1)
	a, err := d.AreaFor(10*units.AmpereMinute, 1*units.Micrometre, 0.9)
	fmt.Println(a.Text(units.SquareDecimetre, 2), err)
	// Output: 5.71 dm² <nil>
}

func ExampleDeposit_ChargeFor() {
	d, _ := faraday.NewDeposit("Au", 1)
	q, err := d.ChargeFor(2.5*units.Micrometre, 47*units.SquareCentimetre, 0.9)
	fmt.Println(q.Text(units.AmpereMinute, 2), err)
	// Output: 2.06 A·min <nil>
}

func ExampleDeposit_MassFor() {
	d, _ := faraday.NewDeposit("Au", 1)
	m, err := d.MassFor(2.5*units.Micrometre, 47*units.SquareCentimetre)
	fmt.Println(m.Text(units.Milligram, 0), err)
	// Output: 227 mg <nil>
}

func ExampleDeposit_ThicknessOf() {
	d, _ := faraday.NewDeposit("Au", 1)
	s, err := d.ThicknessOf(227*units.Milligram, 47*units.SquareCentimetre)
	fmt.Println(s.Text(units.Micrometre, 2), err)
	// Output: 2.50 µm <nil>
}

func ExampleDeposit_Trade() {
	d, _ := faraday.NewDeposit("Au", 1)
	v, err := d.Trade()
	fmt.Printf("%.3f g/A·h, %.3f µm per A·min/dm², %.2f A·h/ft² and %.3f ozt/ft² a mil %v\n", v.GramPerAmpereHour,
		v.MicrometrePerAmpereMinuteSquareDecimetre, v.AmpereHourPerSquareFootMil, v.TroyOuncePerSquareFootMil, err)
	// Output: 7.349 g/A·h, 0.635 µm per A·min/dm², 6.20 A·h/ft² and 1.464 ozt/ft² a mil <nil>
}

func ExampleMixedEquivalent() {
	gold, _ := faraday.NewDepositPart("Au", 1, 0.998)
	cobalt, _ := faraday.NewDepositPart("Co", 2, 0.002)
	eq, err := faraday.MixedEquivalent(gold, cobalt)
	fmt.Println(eq.Text(units.GramPerAmpereHour, 3), err)
	// Output: 7.266 g/(A·h) <nil>
}

func ExampleCurrentShares() {
	gold, _ := faraday.NewDepositPart("Au", 1, 0.998)
	cobalt, _ := faraday.NewDepositPart("Co", 2, 0.002)
	shares, err := faraday.CurrentShares(gold, cobalt)
	fmt.Println(shares[1].Percent(1), err)
	// Output: 1.3 % <nil>
}

func ExampleNewDepositPart() {
	p, err := faraday.NewDepositPart("Cu", 1, 0.08)
	fmt.Println(p.Electrons, p.Share, err)
	// Output: 1 8 % <nil>
}

func ExampleHydrogen() {
	// 10 A·min in a hard-gold bath at 35 %, drawn off at room temperature.
	g, err := faraday.Hydrogen(10*units.AmpereMinute, 0.35, units.Celsius(25), units.Atmosphere)
	fmt.Println(g.Volume.Text(units.Millilitre, 0), err)
	// Output: 49 mL <nil>
}

func ExampleOxygen() {
	g, err := faraday.Oxygen(10*units.AmpereMinute, units.Celsius(25), units.Atmosphere)
	fmt.Println(g.Volume.Text(units.Millilitre, 0), err)
	// Output: 38 mL <nil>
}

func ExampleLookup() {
	e, err := faraday.Lookup("Au")
	fmt.Println(e.Name, e.Number, e.Weight.Value.Text(units.GramPerMole, 5), e.Density, err)
	// Output: gold 79 196.96657 g/mol 19.3 g/cm³ <nil>
}

func ExampleElements() {
	plated := 0
	for _, e := range faraday.Elements() {
		if e.UsualValence() > 0 && e.Density > 0 {
			plated++
		}
	}
	fmt.Println(plated, "metals with a usual valence and a density")
	// Output: 29 metals with a usual valence and a density
}
