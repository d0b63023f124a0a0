package bath_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// TestPropertyBathsComeBack: each bath of the library, and one with every field, comes back
// from its JSON.
func TestPropertyBathsComeBack(t *testing.T) {
	list := bath.Library()
	own, err := bath.Read(strings.NewReader(bench))
	if err != nil {
		t.Fatal(err)
	}
	list = append(list, own...)
	for _, b := range list {
		raw, err := json.Marshal(b)
		if err != nil {
			t.Fatal(err)
		}
		var back bath.Bath
		if err := json.Unmarshal(raw, &back); err != nil {
			t.Errorf("%s: %v", b.Key, err)
			continue
		}
		if diff := cmp.Diff(b, back, cmp.Exporter(func(reflect.Type) bool { return true })); diff != "" {
			t.Errorf("%s: %s\n%s", b.Key, diff, raw)
		}
	}
}

// TestPropertyLikeABathWithLines: a bath of like chemistry lends no efficiency, however
// many lines it has, and takes nothing from the borrower.
func TestPropertyLikeABathWithLines(t *testing.T) {
	own, err := bath.Read(strings.NewReader(bench))
	if err != nil {
		t.Fatal(err)
	}
	lender := own[0]
	seen := origin.Measured
	b := bath.Bath{Like: lender.Key, Name: "ours", Metal: "Au", Valence: 1,
		Efficiency: bath.Range[units.Efficiency]{Low: 0.3, High: 0.3},
		Look:       []string{"our own look"}, Remarks: []bath.Words{{Text: "our own remark"}}, Source: "trial", Seen: &seen}
	full, err := b.Resolve(own)
	if err != nil {
		t.Fatal(err)
	}
	if len(full.Lines) != 0 || full.Efficiency.Low != 0.3 || full.Volts != lender.Volts ||
		full.Agitation != lender.Agitation ||
		full.Look[0] != "our own look" || full.Remarks[0] != (bath.Words{Text: "our own remark", Source: "trial",
		Seen: seen}) {
		t.Errorf("%+v", full)
	}
	if b.Remarks[0].Source != "" || len(lender.Lines) != 1 {
		t.Error("the baths that went in were changed")
	}
	for field, change := range map[string]func(b *bath.Bath){
		"like":       func(b *bath.Bath) { b.Library = lender.Key },
		"metal":      func(b *bath.Bath) { b.Metal = "Xx" },
		"look":       func(b *bath.Bath) { *b = bath.Bath{Library: lender.Key, Look: []string{"x"}} },
		"live_entry": func(b *bath.Bath) { *b = bath.Bath{Library: lender.Key, LiveEntry: true} },
		"makeup":     func(b *bath.Bath) { *b = bath.Bath{Library: lender.Key, Makeup: []bath.Ingredient{{Name: "x"}}} },
	} {
		wrong := b
		change(&wrong)
		_, err := wrong.Resolve(own)
		var value *units.ValueError
		if err == nil || errors.As(err, &value) && value.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
}

// TestPropertyMiddle: the middle of a band, of one with one end, and of a temperature that
// has only an upper limit, which is no half of its kelvins.
func TestPropertyMiddle(t *testing.T) {
	for want, r := range map[float64]bath.Range[units.Voltage]{3: {Low: 2, High: 4}, 4: {High: 8}, 5: {Low: 5}, 0: {},
		6: {Low: 6, High: 6}} {
		near(t, "volts", float64(r.Mid()), want, 1e-12)
	}
	near(t, "temperature", bath.Range[units.Temperature]{High: units.Celsius(60)}.Mid().Celsius(), 60, 1e-12)
	near(t, "temperature", bath.Range[units.Temperature]{Low: units.Celsius(40), High: units.Celsius(60)}.Mid().Celsius(),
		50, 1e-12)
}

// TestIndependentMixedDensity: a density that nobody gives is that of the mixture, worked
// out from the volumes of the metals, with the uncertainty of the mixing rule; one that is
// given stands, and a pure metal has that of the table.
func TestIndependentMixedDensity(t *testing.T) {
	b := bath.Bath{Metal: "Au", Use: bath.UseFinish, Efficiency: bath.Range[units.Efficiency]{Low: 0.3, High: 0.3},
		Deposit: []bath.Constituent{{Symbol: "Au", Valence: 1, Share: 0.75}, {Symbol: "Ag", Valence: 1, Share: 0.15},
			{Symbol: "Cu", Valence: 1, Share: 0.1}}}
	full, err := b.Resolve(nil)
	if err != nil {
		t.Fatal(err)
	}
	// Densities of the elements as the table of package faraday has them, in g/cm³.
	want := 1 / (0.75/19.3 + 0.15/10.5 + 0.1/8.96)
	low, high := full.Density.Low.In(units.GramPerCubicCentimetre), full.Density.High.In(units.GramPerCubicCentimetre)
	if math.Abs((low+high)/2/want-1) > 1e-9 || math.Abs((high-low)/2/want-0.015) > 1e-9 {
		t.Errorf("%.4f to %.4f g/cm³, by hand %.4f ± 1.5 %%", low, high, want)
	}
	if full.Density.Seen != origin.Computed || full.Density.Source != "MixingRule" || full.Density.Note == "" {
		t.Errorf("known by %v, %q, %q", full.Density.Seen, full.Density.Source, full.Density.Note)
	}
	at, err := full.At(bath.OperatingPoint{CurrentDensity: 50})
	if err != nil || math.Abs(at.Deposit.Density.In(units.GramPerCubicCentimetre)/want-1) > 1e-9 {
		t.Errorf("estimated with %v, %v", at.Deposit.Density, err)
	}
	b.Density = bath.Range[units.Density]{Low: 15000, High: 15000}
	if full, err = b.Resolve(nil); err != nil || full.Density.Low != 15000 || full.Density.Seen != origin.Given {
		t.Errorf("given: %v, %v", full.Density, err)
	}
	pure := bath.Bath{Metal: "Ag", Efficiency: b.Efficiency}
	if full, err = pure.Resolve(nil); err != nil || full.Density.Low != 10500 || full.Density.High != 10500 {
		t.Errorf("pure silver: %v, %v", full.Density, err)
	}
}
