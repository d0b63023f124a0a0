package thinspot

import (
	"testing"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// TestIndependentMoney: the mass is taken as it is printed, to a tenth of a milligram.
func TestIndependentMoney(t *testing.T) {
	r := Result{Case: Case{CaseFile: CaseFile{PricePerGram: decimal.RequireFromString("98.50"), Currency: "EUR"}}}
	if got := r.money(53.5 * units.Milligram); got != " (5.27 EUR)" { // 0.0535 · 98.50 = 5.26975
		t.Errorf("53.5 mg: %q", got)
	}
	if got := (&Result{}).money(units.Gram); got != "" {
		t.Errorf("without a price: %q", got)
	}
}

// TestPropertyWhere: the words for a spot on a profile, from its place and its normal.
func TestPropertyWhere(t *testing.T) {
	at := func(r, z, nr, nz float64) coat.Patch {
		return coat.Patch{At: r3.Vec{X: r, Z: z}, Normal: r3.Vec{X: nr, Z: nz}}
	}
	s := coat.Surface{Patches: []coat.Patch{
		at(0, 0, 0, -1), at(10, 5, 1, 0), at(5, 10, 0, 1), at(5, 5, -1, 0), at(1, 9, 0.6, 0.6), at(9, 1, -0.8, -0.6),
	}}
	for i, want := range []string{
		"at the axis, low, facing down", "at the rim, half way up, facing outwards",
		"between axis and rim, high, facing up",
		"between axis and rim, half way up, facing the axis", "at the axis, high", "at the rim, low, facing the axis",
	} {
		if got := whereOnProfile(s, i); got != want {
			t.Errorf("spot %d: %q, want %q", i, got, want)
		}
	}
}
