package alloys_test

import (
	"errors"
	"fmt"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
)

// TestPropertyTradeUnit: a unit reads back as it is written, in every spelling that
// package units reads, and the ounce of the kitchen is refused.
func TestPropertyTradeUnit(t *testing.T) {
	for _, u := range []alloys.TradeUnit{alloys.PerGram, alloys.PerKilogram, alloys.PerTroyOunce, alloys.PerPennyweight} {
		text, err := u.MarshalText()
		var back alloys.TradeUnit
		if err != nil || back.UnmarshalText(text) != nil || back != u {
			t.Errorf("%v: %q, %v, %v", u, text, back, err)
		}
	}
	for _, text := range []string{"ozt", "oz t", "troy oz"} {
		if u, err := alloys.ParseTradeUnit(text); err != nil || u != alloys.PerTroyOunce {
			t.Errorf("%q: %v, %v", text, u, err)
		}
	}
	for _, text := range []string{"", "oz", "lb", "mg", "1 g", "gram\x00", "no unit"} {
		u, err := alloys.ParseTradeUnit(text)
		var value *units.ValueError
		if !errors.As(err, &value) || u != alloys.NoTradeUnit {
			t.Errorf("%q: %v, %v", text, u, err)
		}
	}
	if _, err := alloys.NoTradeUnit.MarshalText(); err == nil {
		t.Error("no unit is written")
	}
}

func ExampleParseTradeUnit() {
	u, err := alloys.ParseTradeUnit("troy oz")
	fmt.Println(u, err)
	// Output: ozt <nil>
}
