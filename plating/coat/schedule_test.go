package coat_test

import (
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// TestIndependentSchedule: the coat on the combined surface is, patch by patch,
// the sum of the coats of each position for its share of the time.
func TestIndependentSchedule(t *testing.T) {
	b := goldBath(t)
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 0.5 * dm2, Efficiency: 0.5},
		plating.EfficiencyPoint{CurrentDensity: 3 * dm2, Efficiency: 0.2})
	if err != nil {
		t.Fatal(err)
	}
	b.Efficiency = curve
	up, down := bar(50), bar(50)
	for i := range down.Patches {
		down.Patches[i].Density = up.Patches[len(up.Patches)-1-i].Density
	}
	down.Patches[3].Density = -0.1 * dm2 // dissolves: counts as nothing
	surface, one, err := coat.Schedule([]coat.Surface{up, down}, []units.Ratio{0.3, 0.7}, b)
	if err != nil {
		t.Fatal(err)
	}
	const time = 20 * units.Minute
	sum, err := coat.Lay(surface, &one, time)
	if err != nil {
		t.Fatal(err)
	}
	a, err := coat.Lay(up, b, 0.3*time)
	if err != nil {
		t.Fatal(err)
	}
	c, err := coat.Lay(down, b, 0.7*time)
	if err != nil {
		t.Fatal(err)
	}
	for i := range sum.Thickness {
		if want := a.Thickness[i] + c.Thickness[i]; relative(float64(sum.Thickness[i]), float64(want)) > 1e-12 {
			t.Errorf("patch %d: %v, want %v", i, sum.Thickness[i], want)
		}
	}
	if relative(float64(sum.FineMass), float64(a.FineMass+c.FineMass)) > 1e-12 {
		t.Errorf("mass %v, want %v", sum.FineMass, a.FineMass+c.FineMass)
	}
}

// TestPropertySchedule: with one efficiency it is the sum; bad input is refused.
func TestPropertySchedule(t *testing.T) {
	b := goldBath(t)
	list, shares := []coat.Surface{bar(20), bar(20)}, []units.Ratio{0.5, 0.5}
	plain, err := coat.Sum(list, shares)
	if err != nil {
		t.Fatal(err)
	}
	got, one, err := coat.Schedule(list, shares, b)
	if err != nil {
		t.Fatal(err)
	}
	if eff, _ := one.Efficiency.At(dm2); relative(float64(eff), 0.9) > 1e-12 {
		t.Errorf("efficiency %v", eff)
	}
	for i := range plain.Patches {
		if relative(float64(got.Patches[i].Density), float64(plain.Patches[i].Density)) > 1e-12 {
			t.Errorf("patch %d: %v, want %v", i, got.Patches[i].Density, plain.Patches[i].Density)
		}
	}
	if _, _, err := coat.Schedule(list, shares[:1], b); err == nil {
		t.Error("a share is missing and nobody says so")
	}
	still := bar(20)
	for i := range still.Patches {
		still.Patches[i].Density = 0
	}
	if _, _, err := coat.Schedule([]coat.Surface{still}, []units.Ratio{1}, b); err == nil {
		t.Error("no current and nobody says so")
	}
}
