//go:build !race

// The race detector allocates by itself.

package faraday_test

import (
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// TestPropertyAllocations: a numeric function allocates nothing: no working is built that
// nobody asked for.
func TestPropertyAllocations(t *testing.T) {
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	eq := gold.Equivalent
	j, area := 0.5*units.AmperePerSquareDecimetre, 100*units.SquareCentimetre
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		t.Fatal(err)
	}
	law := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: units.Celsius(38)}
	for name, run := range map[string]func() error{
		"NewEquivalent": func() error { _, err := faraday.NewEquivalent(196.96657*units.GramPerMole, 1); return err },
		"Mass":          func() error { _, err := faraday.Mass(eq, units.Ampere, 600, 0.35); return err },
		"Time":          func() error { _, err := faraday.Time(eq, units.Gram, units.Ampere, 0.35); return err },
		"Growth":        func() error { _, err := gold.Growth(j, 0.35); return err },
		"Thickness":     func() error { _, err := gold.Thickness(j, 600, 0.35); return err },
		"TimeFor":       func() error { _, err := gold.TimeFor(units.Micrometre, j, 0.35); return err },
		"CurrentDensityFor": func() error {
			_, err := gold.CurrentDensityFor(units.Micrometre, 600, 0.35)
			return err
		},
		"AreaFor":        func() error { _, err := gold.AreaFor(400, units.Micrometre, 0.35); return err },
		"ChargeFor":      func() error { _, err := gold.ChargeFor(units.Micrometre, area, 0.35); return err },
		"MassFor":        func() error { _, err := gold.MassFor(units.Micrometre, area); return err },
		"ThicknessOf":    func() error { _, err := gold.ThicknessOf(units.Milligram, area); return err },
		"Butler-Volmer":  func() error { _, err := law.CurrentDensity(-0.1); return err },
		"DensityOfSalts": func() error { _, err := faraday.MetalContent(salt, "Au"); return err },
	} {
		if err := run(); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if n := testing.AllocsPerRun(20, func() { _ = run() }); n > 0 {
			t.Errorf("%s allocates %.0f times", name, n)
		}
	}
}
