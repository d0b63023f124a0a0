package faraday_test

import (
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Worked examples and exercises of the textbook: [OpenStaxChem2e] chapter 17.
func TestReferenceNernst(t *testing.T) {
	table, err := testdata.Read("nernst.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		t.Run(row.Name(), func(t *testing.T) {
			cathode, anode := units.Voltage(row.Float("E_cathode_V")), units.Voltage(row.Float("E_anode_V"))
			n, temperature := int(row.FloatOr("electrons", 0)), units.Temperature(row.Float("temperature_K"))
			cell, err := faraday.CellVoltage(cathode, anode)
			if err != nil {
				t.Fatal(err)
			}
			got := float64(cell)
			switch row.Text("check") {
			case "cell_V":
			case "nernst_V":
				var e units.Voltage
				e, err = faraday.Nernst(cell, n, units.Ratio(row.Float("quotient")), temperature)
				got = float64(e)
			case "log10K":
				got, err = faraday.LogEquilibriumConstant(cell, n, temperature)
			case "deltaG_kJ_mol":
				got, err = faraday.GibbsEnergy(cell, n)
				got /= 1000
			default:
				t.Fatalf("unknown check %q", row.Text("check"))
			}
			if err != nil {
				t.Fatal(err)
			}
			if err := row.Check(got); err != nil {
				t.Error(err)
			}
		})
	}
}

func TestPropertyNernst(t *testing.T) {
	at25 := units.Celsius(25)
	for _, n := range []int{1, 2, 3, 6} {
		for _, e0 := range []units.Voltage{-1.26, -0.6, 0.3, 1.498} {
			// At a quotient of one it is the standard potential.
			e, err := faraday.Nernst(e0, n, 1, at25)
			if err != nil || e != e0 {
				t.Errorf("E(Q=1) = %v, %v; want %v", e, err, e0)
			}
			// At the equilibrium constant it is zero.
			log, err := faraday.LogEquilibriumConstant(e0, n, at25)
			if err != nil {
				t.Fatal(err)
			}
			if k := math.Pow(10, log); k > 0 && !math.IsInf(k, 0) {
				e, err := faraday.Nernst(e0, n, units.Ratio(k), at25)
				if err != nil || math.Abs(float64(e)) > 1e-12 {
					t.Errorf("E(Q=K) = %v, %v; want 0", e, err)
				}
			}
			// ΔG = -RT ln K.
			g, err := faraday.GibbsEnergy(e0, n)
			if err != nil {
				t.Fatal(err)
			}
			chemNear(t, "ΔG", g, -faraday.GasConstant*float64(at25)*math.Ln10*log, 1e-12)
		}
		// Ten times the quotient is one slope down, divided by n.
		a, err := faraday.Nernst(0.4, n, 0.02, at25)
		if err != nil {
			t.Fatal(err)
		}
		b, err := faraday.Nernst(0.4, n, 0.2, at25)
		if err != nil {
			t.Fatal(err)
		}
		slope, err := faraday.NernstSlope(at25)
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "decade", a-b, slope/units.Voltage(n), 1e-12)
	}
	// Doubling the reaction leaves the voltage and doubles log K.
	a, _ := faraday.LogEquilibriumConstant(0.66, 2, at25)
	b, _ := faraday.LogEquilibriumConstant(0.66, 4, at25)
	chemNear(t, "log K", b, 2*a, 1e-15)
}

func TestNernstErrors(t *testing.T) {
	for _, n := range []int{math.MinInt, -1, 0, 1, 3, math.MaxInt} {
		chemSweep(3, func(v []float64) {
			e, err := faraday.Nernst(units.Voltage(v[0]), n, units.Ratio(v[1]), units.Temperature(v[2]))
			chemTyped(t, "Nernst", float64(e), err)
			if err == nil && (n <= 0 || !(v[1] > 0) || !(v[2] > 0)) {
				t.Errorf("Nernst(%v, %d, %v, %v) passes", v[0], n, v[1], v[2])
			}
			s, err := faraday.NernstWorking(units.Voltage(v[0]), n, units.Ratio(v[1]), units.Temperature(v[2]))
			chemTyped(t, "NernstWorking", s.Result.SI, err)
		})
		chemSweep(2, func(v []float64) {
			k, err := faraday.LogEquilibriumConstant(units.Voltage(v[0]), n, units.Temperature(v[1]))
			chemTyped(t, "LogEquilibriumConstant", k, err)
			g, err := faraday.GibbsEnergy(units.Voltage(v[0]), n)
			chemTyped(t, "GibbsEnergy", g, err)
			c, err := faraday.CellVoltage(units.Voltage(v[0]), units.Voltage(v[1]))
			chemTyped(t, "CellVoltage", float64(c), err)
			s, err := faraday.NernstSlope(units.Temperature(v[0]))
			chemTyped(t, "NernstSlope", float64(s), err)
			if err == nil && n <= 0 {
				if _, err := faraday.GibbsEnergy(0.5, n); err == nil {
					t.Errorf("%d electrons pass", n)
				}
			}
		})
	}
}

func TestPropertyNernstWorking(t *testing.T) {
	for _, q := range []units.Ratio{1e-9, 0.02, 1, 7, 1440} {
		for _, e0 := range []units.Voltage{-0.6, 0, 0.2, 0.337} {
			s, err := faraday.NernstWorking(e0, 2, q, units.Celsius(60))
			chemRecompute(t, s, err)
		}
	}
}
