package alloys_test

import (
	"errors"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"github.com/shopspring/decimal"
)

// TestPropertyErrorsLeaveNoFigure: a figure never comes with an error, except
// beside a *units.RangeError, and is finite; no argument makes a panic.
func TestPropertyErrorsLeaveNoFigure(t *testing.T) {
	beside := func(err error) bool {
		var r *units.RangeError
		return errors.As(err, &r)
	}
	gold := parse(t, "Au 750, Ag 125, Cu 125")
	stock := alloys.Lot{Mass: 0.01, Composition: parse(t, "Au 585, Cu 415")}
	coat := alloys.GoldCoat{Gold: 0.75, Density: 15500, Fine: 19300}
	gram := func(text string) alloys.Weighed {
		return alloys.Weighed{Amount: decimal.RequireFromString(text), Unit: alloys.PerGram}
	}
	for _, c := range []struct {
		name string
		fn   any
		args []any
	}{
		{"Assay", alloys.Assay, []any{0.00075, 0.001}},
		{"AssayWorking", alloys.AssayWorking, []any{0.00075, 0.001}},
		{"DepositFromMasses", alloys.DepositFromMasses, []any{1e-6, []alloys.MassPart{{Symbol: "Au", Mass: 0.001}}}},
		{"Karat", alloys.DepositComposition.Karat, []any{alloys.DepositComposition{Metals: parse(t, "Au 1000"),
			NonMetal: 0.002}}},
		{"Fineness", alloys.DepositComposition.Fineness, []any{alloys.DepositComposition{Metals: gold, NonMetal: 0.002},
			"Au"}},
		{"NonMetalFromDensity", alloys.NonMetalFromDensity, []any{17300.0, 19300.0, 1500.0}},
		{"NonMetalFromDensityWorking", alloys.NonMetalFromDensityWorking, []any{17300.0, 19300.0, 1500.0}},
		{"Blend", alloys.Blend, []any{[]alloys.Lot{stock, {Mass: 0.002, Composition: gold}}}},
		{"ToComposition", alloys.ToComposition, []any{stock, gold, 0.05}},
		{"New", alloys.NewComposition, []any{[]alloys.ElementShare{{Symbol: "Au", Share: 0.75},
			{Symbol: "Ag", Share: 0.25}}}},
		{"FromMasses", alloys.FromMasses, []any{[]alloys.MassPart{{Symbol: "Au", Mass: 0.75}, {Symbol: "Ag", Mass: 0.25}}}},
		{"FromMoles", alloys.FromMoles, []any{[]alloys.MolePart{{Symbol: "Au", Share: 0.75}, {Symbol: "Ag", Share: 0.25}}}},
		{"Density", alloys.Density, []any{gold, alloys.DensityOptions{}}},
		{"ShareFromDensity", alloys.ShareFromDensity, []any{"Au", "Ag", 15000.0, alloys.DensityOptions{}}},
		{"AlloyThickness", alloys.AlloyThickness, []any{1e-6, coat}},
		{"FineThickness", alloys.FineThickness, []any{1e-6, coat}},
		{"FineMassPerArea", alloys.FineMassPerArea, []any{1e-6, coat}},
		{"ThicknessForFineGold", alloys.ThicknessForFineGold, []any{0.01, coat}},
		{"Raise", alloys.Raise, []any{0.01, 0.585, 0.75}},
		{"Lower", alloys.Lower, []any{0.01, 0.75, 0.585}},
		{"BlendTo", alloys.BlendTo, []any{0.01, 0.585, 0.9999, 0.75}},
		{"Decimal", alloys.Fineness.Decimal, []any{alloys.Fineness(0.75)}},
		{"MarkedFineness", alloys.MarkedFineness, []any{alloys.Karat(18)}},
		{"WeighedOf", alloys.NewWeighed, []any{0.01, alloys.PerGram, int32(4)}},
	} {
		if testdata.WrongCalls(t, beside, c.name, c.fn, c.args...) == 0 && c.name != "Karat" {
			t.Errorf("%s refuses nothing", c.name)
		}
	}
	if d, err := alloys.ShareFromDensity("Xx", "Ag", 15000, alloys.DensityOptions{}); err == nil ||
		d != (alloys.DensityAssay{}) {
		t.Errorf("Xx: %v, %v", d, err)
	}
	if m, err := gram("-1").Mass(); err == nil || m != 0 {
		t.Errorf("-1 g: %v, %v", m, err)
	}
	if k, err := alloys.ParseKarat("18 carrots"); err == nil || k != 0 {
		t.Errorf("carrots: %v, %v", k, err)
	}
	if f, err := alloys.ParseFineness("seven hundred"); err == nil || f != 0 {
		t.Errorf("words: %v, %v", f, err)
	}
}
