package coat_test

import (
	"fmt"
	"math"
	"testing"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

func TestCompare(t *testing.T) {
	b := goldBath(t)
	steep, flat := bar(100), bar(100)
	for i := range flat.Patches {
		flat.Patches[i].Density = 2 * dm2
	}
	bare := bar(100)
	bare.Patches[0].Density = 0
	out, err := coat.Compare([]coat.Way{{Name: "as it hangs", Surface: steep}, {Name: "even", Surface: flat},
		{Name: "robbed", Surface: flat, Robbed: 0.2}, {Name: "hidden spot", Surface: bare}}, b, 2*units.Micrometre)
	if err != nil {
		t.Fatal(err)
	}
	if !(out[1].SavedMass > 0 && out[1].SavedTime > 0 && math.Abs(float64(out[1].MinToAverage)-1) < 1e-12) {
		t.Errorf("an even coat saves nothing: %+v", out[1])
	}
	if relative(float64(out[2].Robbed), float64(out[2].FineMass)) > 1e-12 { // as much current, at the same efficiency
		t.Errorf("robbed %v, part %v", out[2].Robbed, out[2].FineMass)
	}
	if out[3].Err == nil || out[3].Time != 0 {
		t.Errorf("a spot without current: %+v", out[3])
	}
	metal, time := coat.Best(out)
	if fmt.Sprint(metal, time) != "[even] [even robbed]" {
		t.Errorf("best: %v %v", metal, time)
	}
	if _, err := coat.Compare(nil, b, 1e-6); err == nil {
		t.Error("no ways: no error")
	}
	if _, err := coat.Compare([]coat.Way{{Name: "hidden", Surface: bare}}, b, 1e-6); err == nil {
		t.Error("first way fails: no error")
	}
	if _, err := coat.Compare([]coat.Way{{Name: "x", Surface: flat, Robbed: -1}}, b, 1e-6); err == nil {
		t.Error("negative robber: no error")
	}
}
