package current_test

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// TestIndependentNeglected: the share that a Tafel law leaves out is the reverse
// term of the Butler-Volmer law at the same overpotential.
func TestIndependentNeglected(t *testing.T) {
	const j0, warm = 2.0, 298.15
	for _, alpha := range []float64{0.3, 0.5, 0.7} {
		law := current.TafelCathode(j0, alpha, warm)
		for _, j := range []float64{2.1, 5, 20, 300} {
			eta, err := law.Overpotential(-j)
			if err != nil {
				t.Fatal(err)
			}
			reverse := j0 * math.Exp((1-alpha)*eta/law.Volt()) // the anodic term
			if got := float64(law.Neglected(units.CurrentDensity(j))); math.Abs(got-reverse/j) > 1e-9 {
				t.Errorf("α %g, j %g: %g, want %g", alpha, j, got, reverse/j)
			}
		}
	}
	for _, j := range []units.CurrentDensity{0, -1, 1, 2, units.CurrentDensity(math.Inf(1)),
		units.CurrentDensity(math.NaN())} {
		law := current.TafelCathode(j0, 0.5, warm)
		var refused *current.TafelError
		share, err := law.CheckTafel("hand", j)
		if bad := !(j > 2*j0); bad != errors.As(err, &refused) || share != share || share < 0 {
			t.Errorf("%v: %v, %v", j, share, err)
		}
	}
	if share, err := (current.Law{}).CheckTafel("hand", 0); share != 0 || err != nil {
		t.Errorf("a primary electrode: %v, %v", share, err)
	}
}

func ExampleLaw_CheckTafel() {
	law := current.TafelCathode(1*units.AmperePerSquareMetre, 0.5, units.Celsius(25))
	share, err := law.CheckTafel("bob", 5*units.AmperePerSquareMetre)
	fmt.Println(share.Percent(0), err)
	_, err = law.CheckTafel("bob", 2*units.AmperePerSquareMetre)
	fmt.Println(strings.NewReplacer(": ", ":\n  ", "; ", ";\n  ").Replace(err.Error()))
	// Output:
	// 4 % <nil>
	// bob:
	//   the Tafel law does not hold at its least current density of 0.02 A/dm²:
	//   with an exchange current density of 0.01 A/dm² it leaves out the reverse reaction, 25 % of it;
	//   use the Butler-Volmer law with the same constants, or a current density of 0.032 A/dm² and more
}
