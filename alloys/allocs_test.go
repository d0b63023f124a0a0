//go:build !race

// The race detector allocates by itself.

package alloys_test

import (
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
)

// TestPropertyAllocations: a plain function builds no working. It allocates its result
// and no more: a list of elements, where it returns one.
func TestPropertyAllocations(t *testing.T) {
	gold := must(alloys.ParseComposition("Au 750, Ag 125, Cu 125"))(t)
	coin := must(alloys.ParseComposition("Au 900, Cu 100"))(t)
	coat := alloys.GoldCoat{Gold: 0.75, Density: 15.5 * units.GramPerCubicCentimetre}
	deposit := alloys.DepositComposition{Metals: gold, NonMetal: 0.002}
	lots := []alloys.Lot{{Mass: 10 * units.Gram, Composition: gold}, {Mass: 5 * units.Gram, Composition: coin}}
	moles := gold.Moles()
	for name, c := range map[string]struct {
		most float64
		run  func() error
	}{
		"AlloyThickness":   {0, func() error { _, err := alloys.AlloyThickness(units.Micrometre, coat); return err }},
		"FineThickness":    {0, func() error { _, err := alloys.FineThickness(units.Micrometre, coat); return err }},
		"FineMassPerArea":  {0, func() error { _, err := alloys.FineMassPerArea(units.Micrometre, coat); return err }},
		"ThicknessForFine": {0, func() error { _, err := alloys.ThicknessForFineGold(0.01, coat); return err }},
		"Assay":            {0, func() error { _, err := alloys.Assay(units.Gram, 2*units.Gram); return err }},
		"Fineness":         {0, func() error { _, err := deposit.Fineness("Au"); return err }},
		"Karat":            {0, func() error { _, err := deposit.Karat(); return err }},
		"NonMetal": {0, func() error {
			_, err := alloys.NonMetalFromDensity(17.3*units.GramPerCubicCentimetre, 19.2*units.GramPerCubicCentimetre,
				1.5*units.GramPerCubicCentimetre)
			return err
		}},
		"Density": {0, func() error { _, err := alloys.Density(gold, alloys.DensityOptions{}); return err }},
		"ShareFromDensity": {0, func() error {
			_, err := alloys.ShareFromDensity("Au", "Ag", 15*units.GramPerCubicCentimetre, alloys.DensityOptions{})
			return err
		}},
		"Raise":   {0, func() error { _, err := alloys.Raise(units.Gram, 0.585, 0.75); return err }},
		"Lower":   {0, func() error { _, err := alloys.Lower(units.Gram, 0.75, 0.585); return err }},
		"BlendTo": {0, func() error { _, err := alloys.BlendTo(units.Gram, 0.375, 0.9, 0.75); return err }},
		// The shares of the melt, the list of its elements, and the masses under way.
		"Blend": {5, func() error { _, err := alloys.Blend(lots...); return err }},
		"ToComposition": {1, func() error {
			_, err := alloys.ToComposition(lots[1], gold, 50*units.Gram)
			return err
		}},
		"Moles":     {1, func() error { gold.Moles(); return nil }},
		"FromMoles": {6, func() error { _, err := alloys.FromMoles(moles...); return err }},
	} {
		if err := c.run(); err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if n := testing.AllocsPerRun(100, func() { _ = c.run() }); n > c.most {
			t.Errorf("%s allocates %v times, more than %v", name, n, c.most)
		}
	}
}
