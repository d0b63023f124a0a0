package plating_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// TestPropertyLayerJSON: a layer and its result come back from JSON as they were, the
// efficiency, the role and the flags as well.
func TestPropertyLayerJSON(t *testing.T) {
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		t.Fatal(err)
	}
	curve, err := plating.NewEfficiencyCurve(plating.EfficiencyPoint{CurrentDensity: 30, Efficiency: 0.4},
		plating.EfficiencyPoint{CurrentDensity: 120, Efficiency: 0.28})
	if err != nil {
		t.Fatal(err)
	}
	for _, eff := range []plating.EfficiencyCurve{{}, plating.ConstantEfficiency(0.35), curve} {
		for _, role := range []plating.Role{plating.RoleFinish, plating.RoleStrike, plating.RoleUnder} {
			for _, ph := range []plating.PHWindow{{}, {Low: 4, High: 4.6}, {High: 11}} {
				l := hardGold(t)
				l.Role, l.Bath.Efficiency, l.Bath.PH, l.Bath.Salt = role, eff, ph, salt
				l.Bath.Hazards = plating.HazardCyanide | plating.HazardAcid
				raw, err := json.Marshal(l)
				if err != nil {
					t.Fatal(err)
				}
				var back plating.Layer
				if err := json.Unmarshal(raw, &back); err != nil {
					t.Fatalf("%s: %v", raw, err)
				}
				a, errA := plating.Estimate(&l)
				b, errB := plating.Estimate(&back)
				if fmt.Sprint(a, errA) != fmt.Sprint(b, errB) || fmt.Sprintf("%+v", l) != fmt.Sprintf("%+v", back) {
					t.Fatalf("%s\n%+v\n%+v", raw, l, back)
				}
			}
		}
	}
	l := hardGold(t)
	l.Bath.Volume, l.MinThickness = 0.2*units.Litre, 4*units.Micrometre
	r, err := plating.Estimate(&l)
	if err != nil || len(r.Warnings.Words()) < 2 {
		t.Fatalf("%v, %v", r.Warnings.Words(), err)
	}
	raw, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var back plating.LayerEstimate
	if err := json.Unmarshal(raw, &back); err != nil || !cmp.Equal(r, back) {
		t.Errorf("%v: %s", cmp.Diff(r, back), raw)
	}
	// Every flag has a word of its own.
	words := map[string]bool{}
	for w := plating.Warnings(1); w <= plating.WarnUnusual; w <<= 1 {
		list := w.Words()
		if len(list) != 1 || words[list[0]] {
			t.Errorf("flag %b: %q", w, list)
			continue
		}
		words[list[0]] = true
	}
}

// TestPropertyBadJSON: what cannot be read or written is a typed error.
func TestPropertyBadJSON(t *testing.T) {
	for text, into := range map[string]any{
		`"strikes"`: new(plating.Role), `""`: new(plating.Role), `["hot"]`: new(plating.Warnings),
		`"1.5"`: new(plating.EfficiencyCurve), `[{"current_density": "1 A/m²", "efficiency": "0.5"}]`: new(
			plating.EfficiencyCurve),
	} {
		err := json.Unmarshal([]byte(text), into)
		var value *units.ValueError
		if !errors.As(err, &value) {
			t.Errorf("%s: %v", text, err)
		}
	}
	for _, v := range []any{plating.Role(9), plating.Warnings(1 << 31),
		plating.ConstantEfficiency(units.Efficiency(math.NaN()))} {
		if raw, err := json.Marshal(v); err == nil {
			t.Errorf("%#v is written as %s", v, raw)
		}
	}
}

func ExampleWarnings_Words() {
	fmt.Println((plating.WarnBathDrawn | plating.WarnGas).Words())
	// Output: [bath drawn gas]
}
