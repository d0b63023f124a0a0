package alloys_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// TestIndependentPlated adds the charges of one gram of deposit by hand.
func TestIndependentPlated(t *testing.T) {
	c, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.75}, alloys.ElementShare{Symbol: "Cu",
		Share: 0.25})
	if err != nil {
		t.Fatal(err)
	}
	d := alloys.DepositComposition{Metals: c, NonMetal: 0.002}
	// Moles of electrons for 0.998 g of metal, copper from cyanide and from acid.
	for z, want := range map[int]float64{1: 0.998 * (0.75/196.966570 + 0.25/63.546), 2: 0.998 * (0.75/196.966570 +
		2*0.25/63.546)} {
		got, err := d.Plated(map[string]int{"Au": 1, "Cu": z}, 15.5*units.GramPerCubicCentimetre)
		if err != nil {
			t.Fatal(err)
		}
		if eq := 1e-3 / (want * 96485.33212); math.Abs(float64(got.Equivalent)/eq-1) > 1e-9 ||
			got.Density != 15.5*units.GramPerCubicCentimetre {
			t.Errorf("copper from valence %d: %v, by hand %v", z, float64(got.Equivalent), eq)
		}
	}
	usual, err := d.Plated(nil, 15*units.GramPerCubicCentimetre)
	if err != nil {
		t.Fatal(err)
	}
	same, err := d.Plated(map[string]int{"Au": 1, "Cu": 2}, 15*units.GramPerCubicCentimetre)
	if err != nil || usual != same {
		t.Errorf("usual valences: %v, %v, %v", usual, same, err)
	}
	pure, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 1})
	if err != nil {
		t.Fatal(err)
	}
	gold, err := alloys.DepositComposition{Metals: pure}.Plated(nil, 19.3*units.GramPerCubicCentimetre)
	plain, err2 := faraday.NewDeposit("Au", 1)
	if err != nil || err2 != nil || gold.Equivalent != plain.Equivalent {
		t.Errorf("%v, %v, %v, %v", gold, plain, err, err2)
	}

	var v *units.ValueError
	for _, bad := range []error{
		onlyError(d.Plated(map[string]int{"Ni": 2}, 1e4)), onlyError(d.Plated(map[string]int{"Cu": 9}, 1e4)),
		onlyError(d.Plated(nil, 0)),
		onlyError(d.Plated(nil, units.Density(math.NaN()))), onlyError(alloys.DepositComposition{}.Plated(nil, 1e4)),
		onlyError(alloys.DepositComposition{Metals: pure, NonMetal: 1}.Plated(nil, 1e4)),
	} {
		if !errors.As(bad, &v) {
			t.Errorf("%v, want a *units.ValueError", bad)
		}
	}
}

func onlyError(_ faraday.Deposit, err error) error { return err }
