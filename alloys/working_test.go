package alloys_test

import (
	"math/rand"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
)

func TestPropertyWorkingOfKaratAndMoles(t *testing.T) {
	for k := alloys.Karat(1); k <= 24; k++ {
		steps, err := k.FinenessWorking()
		recompute(t, steps, err)
		steps, err = k.Fineness().KaratWorking()
		recompute(t, steps, err)
	}
	r := rand.New(rand.NewSource(9))
	for i := 0; i < 200; i++ {
		c := random(t, r)
		recompute(t, c.MolesWorking(), nil)
		steps, err := alloys.FromMolesWorking(c.Moles()...)
		recompute(t, steps, err)
	}
	s := must(alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au"))(t)
	steps, err := alloys.MarkForWorking(dec("588"), s)
	recompute(t, steps, err)
}

// A working refuses what its function refuses.
func TestBadWorkings(t *testing.T) {
	g := alloys.GoldCoat{}
	none := alloys.DensityOptions{}
	for i, err := range []error{
		second(alloys.Karat(25).FinenessWorking()), second(alloys.Fineness(-1).KaratWorking()),
		second(alloys.FromMolesWorking()),
		second(alloys.MarkForWorking(dec("1"), alloys.MarkSeries{})),
		second(alloys.MeetsStampWorking(dec("1"), alloys.Stamp{})),
		second(alloys.DensityWorking(alloys.Composition{}, none)), second(alloys.ShareFromDensityWorking("Au", "Au", 1,
			none)),
		second(alloys.AlloyThicknessWorking(1, g)), second(alloys.FineThicknessWorking(1, g)),
		second(alloys.FineMassPerAreaWorking(1, g)),
		second(alloys.ThicknessForFineGoldWorking(1, g)), second(alloys.AssayWorking(0, 0)),
		second(alloys.DepositComposition{}.FinenessWorking("Au")),
		second(alloys.NonMetalFromDensityWorking(0, 0, 0)), second(alloys.RaiseWorking(0, 0, 0)),
		second(alloys.LowerWorking(0, 0, 0)),
		second(alloys.BlendToWorking(0, 0, 0, 0)), second(alloys.BlendWorking()),
		second(alloys.ToCompositionWorking(alloys.Lot{}, alloys.Composition{}, 0)),
		second(alloys.MeltValueWorking(alloys.Weighed{}, alloys.Composition{}, 0)),
	} {
		if err == nil {
			t.Errorf("working %d accepted nonsense", i)
		}
	}
	if steps := (alloys.Composition{}).MolesWorking(); steps != nil {
		t.Error("a working of no composition")
	}
	measured := alloys.DensityOptions{Measured: 17 * units.GramPerCubicCentimetre}
	if steps, err := alloys.DensityWorking(parse(t, "Au 1000"), measured); err != nil || steps != nil {
		t.Error("a measured density has no calculation to show")
	}
}
