package bath_test

import (
	"encoding/json"
	"errors"
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
