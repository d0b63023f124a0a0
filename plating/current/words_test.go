package current_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// wrongValue fails unless an error is a [*units.ValueError] for one of the reasons.
func wrongValue(t *testing.T, what string, err error, reasons ...error) {
	t.Helper()
	var v *units.ValueError
	if !errors.As(err, &v) || v.Field == "" || v.Need == "" {
		t.Errorf("%s: %v, want a ValueError with field and remedy", what, err)
		return
	}
	for _, r := range reasons {
		if errors.Is(err, r) {
			return
		}
	}
	t.Errorf("%s: %v, want one of %v", what, err, reasons)
}

// TestPropertyKindWords: every kind and every code has its own word, which comes back as
// the same, and nothing else does.
func TestPropertyKindWords(t *testing.T) {
	seen := map[string]bool{}
	for k, word := range map[current.Kind]string{current.Cathode: "cathode", current.Anode: "anode",
		current.Insulator: "insulator", current.Floating: "floating metal"} {
		text, err := k.MarshalText()
		if err != nil || string(text) != word || k.String() != word || seen[word] || k.Check("bob") != nil {
			t.Errorf("%d: %q, %v, %v", k, text, k, err)
		}
		seen[word] = true
		back := current.Kind(77)
		if err := back.UnmarshalText(text); err != nil || back != k {
			t.Errorf("%q comes back as %v, %v", text, back, err)
		}
		if k.Electrode() != (k == current.Cathode || k == current.Anode) {
			t.Errorf("%v is an electrode: %v", k, k.Electrode())
		}
	}
	if len(seen) != len(current.Kinds()) {
		t.Errorf("%d kinds, %v", len(seen), current.Kinds())
	}
	for _, text := range []string{"", "Cathode", "shield", "floating", "cathode ", "0", strings.Repeat("x", 10000)} {
		k := current.Anode
		wrongValue(t, text, k.UnmarshalText([]byte(text)), units.ErrOutOfRange)
		if k != current.Anode {
			t.Errorf("%q left %v", text, k)
		}
	}
	beyond := current.Kind(len(current.Kinds()))
	_, err := beyond.MarshalText()
	wrongValue(t, "a number beyond", err, units.ErrOutOfRange)
	wrongValue(t, "check of it", beyond.Check("bob"), units.ErrOutOfRange)
	wrongValue(t, "nil", (*current.Kind)(nil).UnmarshalText([]byte("anode")), units.ErrNotGiven)
	if beyond.String() != "unknown kind" || beyond.Electrode() {
		t.Error(beyond)
	}
}

func TestPropertyWarningWords(t *testing.T) {
	for i, word := range current.WarningCodes() {
		c := current.WarningCode(i + 1)
		text, err := c.MarshalText()
		var back current.WarningCode
		if err != nil || string(text) != word || c.String() != word || back.UnmarshalText(text) != nil || back != c {
			t.Errorf("%d: %q, %v, %v, %v", c, text, c, back, err)
		}
	}
	if last := current.TafelLow; int(last) != len(current.WarningCodes()) {
		t.Errorf("%d words, the last code is %d", len(current.WarningCodes()), last)
	}
	for _, c := range []current.WarningCode{0, current.TafelLow + 1} {
		_, err := c.MarshalText()
		wrongValue(t, "a code that is none", err, units.ErrOutOfRange)
		if c.String() != "unknown warning" {
			t.Errorf("%d is called %v", c, c)
		}
	}
	var c current.WarningCode
	wrongValue(t, "an unknown word", c.UnmarshalText([]byte("thick")), units.ErrOutOfRange)
	wrongValue(t, "nil", (*current.WarningCode)(nil).UnmarshalText([]byte("bipolar")), units.ErrNotGiven)
	w := current.Warning{Code: current.Bipolar, Surface: "bezel", Text: "plates at one end"}
	if w.String() != "bezel: plates at one end" || (current.Warning{Text: "rough"}).String() != "rough" {
		t.Error(w)
	}
	text, err := json.Marshal(w)
	var back current.Warning
	if err != nil || json.Unmarshal(text, &back) != nil || back != w {
		t.Errorf("%s comes back as %+v, %v", text, back, err)
	}
}

// TestPropertyDrive: a drive holds one thing, comes back from JSON as it was, to the last
// bit, and is refused where it holds nothing that drives.
func TestPropertyDrive(t *testing.T) {
	for text, d := range map[string]current.Drive{
		`{"current":"0.3 A"}`:                    current.ByCurrent(0.3),
		`{"current":"0.30000000000000004 A"}`:    current.ByCurrent(0.30000000000000004),
		`{"voltage":"2 V"}`:                      current.ByVoltage(2),
		`{"voltage":"-0.1 V"}`:                   current.ByVoltage(-0.1),
		`{"voltage":"0 V"}`:                      current.ByVoltage(0),
		` { "voltage" : "2e-3 V" } `:             current.ByVoltage(0.002),
		`{"current":"5000000000000000000000 A"}`: current.ByCurrent(5e21),
	} {
		var read, again current.Drive
		if err := json.Unmarshal([]byte(text), &read); err != nil || read != d {
			t.Errorf("%s: %v, %v", text, read, err)
		}
		out, err := json.Marshal(d)
		if err != nil || json.Unmarshal(out, &again) != nil || again != d {
			t.Errorf("%v: %s comes back as %v, %v", d, out, again, err)
		}
		amps, holds := d.Current()
		volts, held := d.Voltage()
		if holds == held || holds && volts != 0 || held && amps != 0 || d.Check() != nil {
			t.Errorf("%v holds %v (%v) and %v (%v): %v", d, amps, holds, volts, held, d.Check())
		}
	}
	if s := current.ByCurrent(0.3).String() + current.ByVoltage(2).String() + (current.Drive{}).String(); s !=
		"300 mA2 Vno drive" {
		t.Error(s)
	}
	if a, v := current.ByCurrent(0.25).Scaled(1.5), current.ByVoltage(2).Scaled(0.5); a != current.ByCurrent(0.375) ||
		v != current.ByVoltage(1) || (current.Drive{}).Scaled(2) != (current.Drive{}) {
		t.Error(a, v)
	}
	nan, inf := math.NaN(), math.Inf(1)
	for what, d := range map[string]current.Drive{"zero": {}, "no current": current.ByCurrent(0),
		"negative": current.ByCurrent(-1), "NaN": current.ByCurrent(units.Current(nan)),
		"infinite": current.ByVoltage(units.Voltage(inf)), "NaN volts": current.ByVoltage(units.Voltage(nan))} {
		wrongValue(t, what, d.Check(), units.ErrNotPositive, units.ErrNotFinite)
		if text, err := json.Marshal(d); err == nil {
			t.Errorf("%s is written as %s", what, text)
		}
	}
	for _, text := range []string{`null`, `{}`, `[]`, `"0.3 A"`, `0.3`, `{"current":"1 A","voltage":"2 V"}`,
		`{"current":"1 A","current":"2 A"}`, `{"Current":"1 A"}`, `{"current":null}`, `{"current":1}`,
		`{"current":"0 A"}`, `{"current":"-1 A"}`, `{"current":"1 V"}`, `{"current":"1"}`, `{"voltage":"NaN V"}`,
		`{"amps":"1 A"}`, `{"current":{}}`} {
		d := current.ByVoltage(7)
		if err := json.Unmarshal([]byte(text), &d); err == nil || d != current.ByVoltage(7) {
			t.Errorf("%s: %v, %v", text, d, err)
		}
		d = current.ByVoltage(7)
		var v *units.ValueError
		var p *units.ParseError
		if err := d.UnmarshalJSON([]byte(text)); !errors.As(err, &v) && !errors.As(err, &p) {
			t.Errorf("%s: %v is no typed error", text, err)
		}
	}
	wrongValue(t, "nil", (*current.Drive)(nil).UnmarshalJSON([]byte(`{"voltage":"2 V"}`)), units.ErrNotGiven)
}

// TestPropertyLawOnKind holds every law against every kind of surface.
func TestPropertyLawOnKind(t *testing.T) {
	room := units.Celsius(25)
	anodic := current.Law{Model: current.Tafel, Exchange: 1, Anodic: 0.5, Temperature: room, Side: current.AnodicSide}
	both := current.Law{Model: current.ButlerVolmer, Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: room}
	metal := []current.Kind{current.Cathode, current.Anode, current.Floating}
	for what, c := range map[string]struct {
		law current.Law
		on  []current.Kind
	}{
		"primary":        {current.Law{}, append([]current.Kind{current.Insulator}, metal...)},
		"linear":         {current.LinearLaw(1e-3), metal},
		"Butler-Volmer":  {both, metal},
		"cathodic Tafel": {current.TafelCathode(1, 0.5, room), []current.Kind{current.Cathode}},
		"anodic Tafel":   {anodic, []current.Kind{current.Anode}},
		"broken":         {current.LinearLaw(-1), nil},
	} {
		var on []current.Kind
		for k := range current.Kind(len(current.Kinds())) {
			err := c.law.CheckOn(k, "bob")
			if err == nil {
				on = append(on, k)
				continue
			}
			wrongValue(t, what, err, units.ErrInconsistent, units.ErrNotPositive)
			if !strings.Contains(err.Error(), "bob") {
				t.Errorf("%s on %v: %v does not name the surface", what, k, err)
			}
		}
		want := map[current.Kind]bool{}
		for _, k := range c.on {
			want[k] = true
		}
		got := map[current.Kind]bool{}
		for _, k := range on {
			got[k] = true
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s on %v, want %v", what, on, c.on)
		}
	}
	wrongValue(t, "unknown kind", current.Law{}.CheckOn(9, "bob"), units.ErrOutOfRange)
}

// TestPropertyWarnTafel: the warning begins where the law leaves out more than FewNeglect.
func TestPropertyWarnTafel(t *testing.T) {
	law := current.TafelCathode(1, 0.5, units.Celsius(25)) // leaves out (1/j)²
	if w, said := law.WarnTafel("bob", 10.01); said {
		t.Errorf("just enough: %v", w)
	}
	w, said := law.WarnTafel("bob", 9.99)
	if !said || w.Code != current.TafelLow || w.Surface != "bob" || !strings.Contains(w.Text, "1 %") {
		t.Errorf("just too little: %+v, %v", w, said)
	}
	if w, said := (current.Law{}).WarnTafel("bob", 0); said {
		t.Errorf("primary: %v", w)
	}
}
