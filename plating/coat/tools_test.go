package coat_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

const dm2 = units.AmperePerSquareDecimetre

func goldBath(t testing.TB) *plating.OperatingBath {
	t.Helper()
	d, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	return &plating.OperatingBath{Metal: "Au", Deposit: d, Fine: 0.997, Efficiency: plating.ConstantEfficiency(0.9)}
}

// bar is a rod along z cut into n rings of equal area, whose density rises
// from 1 at the bottom to 3 at the top, in A/dm².
func bar(n int) coat.Surface {
	s := coat.Surface{Basis: "made up", MinError: 0.01}
	for i := range n {
		x := (float64(i) + 0.5) / float64(n)
		s.Patches = append(s.Patches, coat.Patch{At: r3.Vec{X: 0.01, Z: 0.1 * x}, Normal: r3.Vec{X: 1},
			Area:    units.Area(1e-3 / float64(n)),
			Density: units.CurrentDensity(1+2*x) * dm2})
	}
	return s
}

func relative(got, want float64) float64 { return math.Abs(got-want) / math.Abs(want) }
