package alloys_test

import (
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// The thickness of gold alloy that carries the gold of 0.5 µm: [ISO10713]. The
// standard prints no composition; the balance stands in the row.
func TestReferenceISO10713(t *testing.T) {
	seen := 0
	checked(t, "iso10713.csv", func(t *testing.T, row testdata.Row) float64 {
		if row.Text("check") != "thickness_um" {
			t.Skip("a class or reference fineness of the standard, which this package does not hold")
		}
		seen++
		c := must(alloys.FromPermille(
			alloys.PermillePart{Symbol: "Au", Share: alloys.Fineness(row.Float("fineness"))},
			alloys.PermillePart{Symbol: "Ag", Share: alloys.Fineness(row.Float("silver_permille"))},
			alloys.PermillePart{Symbol: "Cu", Share: alloys.Fineness(row.Float("copper_permille"))}))(t)
		g := must(alloys.NewGoldCoat(c, rowDensities(row)))(t)
		fine := units.Length(row.Float("fine_thickness_um")) * units.Micrometre
		alloy := must(alloys.AlloyThickness(fine, g))(t)
		near(t, "back to fine gold", float64(must(alloys.FineThickness(alloy, g))(t)), float64(fine), 1e-14)
		return float64(alloy / units.Micrometre)
	})
	if seen != 6 {
		t.Errorf("%d thickness rows, want 6", seen)
	}
}

// A second way: the fine gold on a square metre weighs the same both times.
func TestIndependentByMass(t *testing.T) {
	for _, text := range []string{"Au 1000", "Au 750, Ag 125, Cu 125", "Au 375, Cu rest",
		"Au 585, Ni 100, Zn 50, Cu rest"} {
		g := must(alloys.NewGoldCoat(parse(t, text), alloys.DensityOptions{}))(t)
		fine := 2.5 * units.Micrometre
		want := float64(fine.AtDensity(g.Fine))
		alloy := must(alloys.AlloyThickness(fine, g))(t)
		m := must(alloys.FineMassPerArea(alloy, g))(t)
		near(t, text, float64(m), want, 1e-14)
		near(t, text, float64(must(alloys.ThicknessForFineGold(m, g))(t)), float64(alloy), 1e-14)
		if text != "Au 1000" && alloy <= fine {
			t.Errorf("%s: %v of alloy for %v of fine gold", text, alloy, fine)
		}
		for _, f := range []func() error{
			func() error { s, err := alloys.AlloyThicknessWorking(fine, g); recompute(t, s, err); return err },
			func() error { s, err := alloys.FineThicknessWorking(alloy, g); recompute(t, s, err); return err },
			func() error { s, err := alloys.FineMassPerAreaWorking(alloy, g); recompute(t, s, err); return err },
			func() error { s, err := alloys.ThicknessForFineGoldWorking(m, g); recompute(t, s, err); return err },
		} {
			if err := f(); err != nil {
				t.Error(err)
			}
		}
	}
}

func TestPropertyFineGoldDefaults(t *testing.T) {
	t1 := must(alloys.AlloyThickness(units.Micrometre, alloys.GoldCoat{Gold: 1,
		Density: 19.3 * units.GramPerCubicCentimetre}))(t)
	near(t, "fine gold is worth itself", float64(t1), 1e-6, 1e-14)
	zero := must(alloys.FineThickness(0, alloys.GoldCoat{Gold: 0.75, Density: 15500}))(t)
	if zero != 0 {
		t.Errorf("no coat is worth %v", zero)
	}
	light := must(alloys.NewGoldCoat(parse(t, "Au 997.5, Co 2.5"),
		alloys.DensityOptions{Measured: 17 * units.GramPerCubicCentimetre}))(t)
	near(t, "17 of 19.3", float64(must(alloys.FineThickness(units.Micrometre, light))(t)), 0.9975*17/19.3*1e-6, 1e-12)
}

func TestBadFineGold(t *testing.T) {
	good := alloys.GoldCoat{Gold: 0.75, Density: 15500}
	all := func(v units.Length, g alloys.GoldCoat) []error {
		_, e1 := alloys.AlloyThickness(v, g)
		_, e2 := alloys.FineThickness(v, g)
		_, e3 := alloys.FineMassPerArea(v, g)
		_, e4 := alloys.ThicknessForFineGold(units.MassPerArea(v), g)
		return []error{e1, e2, e3, e4}
	}
	for _, err := range all(1e-6, good) {
		if err != nil {
			t.Error(err)
		}
	}
	for _, v := range badNumbers {
		for _, list := range [][]error{all(units.Length(v), good),
			all(1e-6, alloys.GoldCoat{Gold: units.MassFraction(v), Density: 15500}),
			all(1e-6, alloys.GoldCoat{Gold: 0.75, Density: units.Density(v)}),
			all(1e-6, alloys.GoldCoat{Gold: 0.75, Density: 15500, Fine: units.Density(v)})} {
			for i, err := range list {
				if err == nil {
					t.Errorf("%v was accepted by function %d", v, i)
				}
			}
		}
	}
	for i, err := range all(1e-6, alloys.GoldCoat{}) {
		if err == nil {
			t.Errorf("the zero GoldCoat was accepted by function %d", i)
		}
	}
	for i, err := range all(1e-6, alloys.GoldCoat{Gold: 1.01, Density: 15500}) {
		isError(t, "more than all gold", err, units.ErrOutOfRange)
		_ = i
	}
	_, err := alloys.AlloyThickness(1e300, alloys.GoldCoat{Gold: 1e-300, Density: 1})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.FineThickness(1e300, alloys.GoldCoat{Gold: 1, Density: 1e300, Fine: 1})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.FineMassPerArea(1e300, alloys.GoldCoat{Gold: 1, Density: 1e300})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.ThicknessForFineGold(1e300, alloys.GoldCoat{Gold: 1e-300, Density: 1})
	isError(t, "overflow", err, units.ErrNotFinite)
	_, err = alloys.NewGoldCoat(parse(t, "Ag 925, Cu 75"), alloys.DensityOptions{})
	isError(t, "no gold", err, units.ErrNotPositive)
	_, err = alloys.NewGoldCoat(alloys.Composition{}, alloys.DensityOptions{Measured: 17000})
	isError(t, "no composition", err, units.ErrNotPositive)
}
