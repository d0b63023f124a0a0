package bath_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/bath"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

func get(t *testing.T, key string) bath.Bath {
	t.Helper()
	b, err := bath.Get(key)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// TestLibrary: at least fourteen baths, each whole, with figures that have
// origins, and no name of a person.
func TestPropertyLibraryIsWhole(t *testing.T) {
	all := bath.Library()
	if len(all) < 20 {
		t.Errorf("%d baths", len(all))
	}
	keys := map[string]bool{}
	for _, b := range all {
		if keys[b.Key] {
			t.Errorf("%s twice", b.Key)
		}
		keys[b.Key] = true
		if err := b.Check(); err != nil {
			t.Errorf("%s: %v", b.Key, err)
		}
		if len(b.Figures()) < 11 || len(b.Look) == 0 || len(b.Remarks) == 0 || b.Anode.Text == "" ||
			b.Agitation.Text == "" {
			t.Errorf("%s: only %d figures, %d looks, %d remarks", b.Key, len(b.Figures()), len(b.Look), len(b.Remarks))
		}
		for _, u := range b.Figures() {
			if u.Source == "" || (u.Seen == origin.FromMemory) != (u.Source == origin.Memory) {
				t.Errorf("%s: %s: source %q, %s", b.Key, u.Field, u.Source, u.Seen)
			}
			if u.Seen == origin.FromMemory && !strings.Contains(b.Text(), u.Field+" "+u.Text+" (from memory)") {
				t.Errorf("%s: the page does not say that %s is from memory", b.Key, u.Field)
			}
		}
		if _, err := b.At(bath.OperatingPoint{}); err != nil {
			t.Errorf("%s at the middle: %v", b.Key, err)
		}
	}
	_, err := bath.Get("gold")
	var e *units.ValueError
	if !errors.As(err, &e) || !strings.Contains(e.Need, "gold-neutral") {
		t.Errorf("unknown key: %v", err)
	}
}

// end reads one end of a figure in the unit of a reference row.
func end(t *testing.T, b bath.Bath, check, item, unit string) (v float64, source string, seen origin.Seen) {
	t.Helper()
	i := strings.LastIndex(check, "_")
	name, high := check[:i], check[i+1:] == "high"
	switch name {
	case "makeup":
		for _, m := range b.Makeup {
			if m.Name == item {
				return pick(m.Range, high, unit, t)
			}
		}
		t.Fatalf("%s has no %s", b.Key, item)
	case "content":
		return pick(b.Content, high, unit, t)
	case "temperature":
		return pick(b.Temperature, high, unit, t)
	case "current_density":
		return pick(b.CurrentDensity, high, unit, t)
	case "volts":
		return pick(b.Volts, high, unit, t)
	case "pH":
		return pick(b.PH, high, unit, t)
	case "efficiency":
		return pick(b.Efficiency, high, unit, t)
	case "time":
		return pick(b.Time, high, unit, t)
	case "max_thickness":
		return pick(b.MaxThickness, high, unit, t)
	case "anode_ratio":
		return pick(b.AnodeRatio, high, unit, t)
	case "density":
		return pick(b.Density, high, unit, t)
	}
	t.Fatalf("check %q", check)
	return 0, "", 0
}

func pick[Q units.Quantity](r bath.Range[Q], high bool, unit string, t *testing.T) (float64, string, origin.Seen) {
	v := r.Low
	if high {
		v = r.High
	}
	return in(t, float64(v), unit), r.Source, r.Seen
}

// in converts an SI value to the unit of a row, from the legal definitions and
// not by package units.
func in(t *testing.T, si float64, unit string) float64 {
	t.Helper()
	switch unit {
	case "":
		return si
	case "%":
		return si * 100
	case "g/L", "s", "V":
		return si
	case "°C":
		return si - 273.15
	case "°F":
		return (si-273.15)*1.8 + 32
	case "A/ft²":
		return si * 0.3048 * 0.3048
	case "A/dm²":
		return si / 100
	case "µm":
		return si * 1e6
	case "µin":
		return si / 0.0254 * 1e6
	case "g/cm³":
		return si / 1000
	}
	t.Fatalf("unit %q", unit)
	return 0
}

var tables = []string{"guidebook2011.csv", "guidebook2012.csv", "nickelencyclopaedia.csv", "nickelstrikearticle.csv",
	"guidebook2013baths.csv", "silverstrikethread.csv",
	"palladiumfeature.csv", "rhodiumrecipe.csv", "rhodiumefficiency.csv", "bronzecolumn.csv", "goldbulletinplating.csv",
	"nickelworkingefficiency.csv"}

// TestReferenceLibrary: every figure that a table prints stands so in the
// library, in the print's own unit and with its key, and the other way round:
// every figure marked published or second hand has its row.
func TestReferenceLibrary(t *testing.T) {
	have := map[string]bool{}
	rows := 0
	for _, file := range tables {
		table, err := testdata.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		want := origin.Published
		if table.Header["seen"] == origin.SecondHand.String() {
			want = origin.SecondHand
		}
		for _, row := range table.Rows {
			if row.Text("item") == "table" {
				continue
			}
			rows++
			b := get(t, row.Text("bath"))
			v, source, seen := end(t, b, row.Text("check"), row.Text("item"), row.Text("unit"))
			if err := row.Check(v); err != nil {
				t.Error(err)
			}
			if source != table.Header["key"] || seen != want {
				t.Errorf("%s: %s %s is %s from %s, want %s from %s", row.Name(), b.Key, row.Text("check"), seen, source, want,
					table.Header["key"])
			}
			have[b.Key+" "+row.Text("check")+" "+row.Text("item")] = true
		}
	}
	if rows < 200 {
		t.Errorf("only %d rows", rows)
	}
	for _, b := range bath.Library() {
		has := func(name, item, source, note string, seen origin.Seen, low, high bool) {
			if seen == origin.FromMemory || strings.Contains(note, "calculated") || source == "EqTutorial" {
				return
			}
			if low && !have[b.Key+" "+name+"_low "+item] || high && !have[b.Key+" "+name+"_high "+item] {
				t.Errorf("%s: %s %s is %s and has no row", b.Key, name, item, seen)
			}
		}
		for _, m := range b.Makeup {
			has("makeup", m.Name, m.Range.Source, m.Range.Note, m.Range.Seen, m.Range.Low != 0, m.Range.High != 0)
		}
		has("content", "", b.Content.Source, b.Content.Note, b.Content.Seen, b.Content.Low != 0, b.Content.High != 0)
		has("temperature", "", b.Temperature.Source, "", b.Temperature.Seen, true, true)
		has("current_density", "", b.CurrentDensity.Source, "", b.CurrentDensity.Seen, b.CurrentDensity.Low != 0, true)
		has("volts", "", b.Volts.Source, "", b.Volts.Seen, true, true)
		has("pH", "", b.PH.Source, "", b.PH.Seen, true, true)
		has("efficiency", "", b.Efficiency.Source, "", b.Efficiency.Seen, true, true)
		has("time", "", b.Time.Source, "", b.Time.Seen, b.Time.Given(), b.Time.Given())
		has("max_thickness", "", b.MaxThickness.Source, "", b.MaxThickness.Seen, b.MaxThickness.Low != 0, true)
		has("anode_ratio", "", b.AnodeRatio.Source, "", b.AnodeRatio.Seen, true, true)
		has("density", "", b.Density.Source, "", b.Density.Seen, true, true)
	}
}

// TestReferenceTypicalTable: the printed table of current densities and volts.
func TestReferenceTypicalTable(t *testing.T) {
	table, err := testdata.Read("guidebook2012.csv")
	if err != nil {
		t.Fatal(err)
	}
	rows := 0
	for _, row := range table.Rows {
		if row.Text("item") != "table" {
			continue
		}
		rows++
		found := false
		for _, typ := range bath.TypicalTable() {
			if typ.Bath != row.Text("bath") {
				continue
			}
			found = true
			b := bath.Bath{CurrentDensity: typ.CurrentDensity, Volts: typ.Volts}
			v, source, seen := end(t, b, row.Text("check"), "", row.Text("unit"))
			if err := row.Check(v); err != nil {
				t.Error(err)
			}
			if source != "Guidebook2012" || seen != origin.Published {
				t.Errorf("%s: %s, %s", typ.Bath, source, seen)
			}
		}
		if !found {
			t.Errorf("%s is not in the table", row.Text("bath"))
		}
	}
	if want := 4 * len(bath.TypicalTable()); rows != want {
		t.Errorf("%d rows for %d figures", rows, want)
	}
}

// TestReferenceDensity: densities credited to the tutorial are the ones its
// table is computed with (testdata/eqtutorial.csv).
func TestReferenceDensity(t *testing.T) {
	table, err := testdata.Read("eqtutorial.csv")
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, b := range bath.Library() {
		if b.Density.Source != "EqTutorial" {
			continue
		}
		for _, row := range table.Rows {
			if row.Text("metal") == b.Metal && row.Has("density_g_cm3") {
				checked++
				if got := b.Density.Low; b.Density.High != got ||
					math.Abs(float64(got)/1000-row.Float("density_g_cm3")) > 1e-9 {
					t.Errorf("%s: density %s, %s has %v", b.Key, b.Density, row.Name(), row.Float("density_g_cm3"))
				}
			}
		}
	}
	if checked < 20 {
		t.Errorf("only %d pairs", checked)
	}
}

// TestIndependentContent: metal contents that are marked as calculated follow
// from the printed salts by atomic weights.
func TestIndependentContent(t *testing.T) {
	salt := map[string]string{"nickel sulfate hexahydrate": "NiSO4.6H2O", "nickel chloride hexahydrate": "NiCl2.6H2O",
		"nickel chloride":             "NiCl2.6H2O",
		"copper sulfate pentahydrate": "CuSO4.5H2O", "copper cyanide": "CuCN"}
	checked := 0
	for _, b := range bath.Library() {
		if !strings.Contains(b.Content.Note, "calculated") {
			continue
		}
		var low, high float64
		for _, m := range b.Makeup {
			f, ok := salt[m.Name]
			if !ok {
				continue
			}
			formula, err := faraday.ParseFormula(f)
			if err != nil {
				t.Fatal(err)
			}
			w, err := faraday.MetalContent(formula, b.Metal)
			if err != nil {
				t.Fatal(err)
			}
			low += float64(w) * float64(m.Range.Low)
			high += float64(w) * float64(m.Range.High)
		}
		if b.Key == "nickel-strike-chloride" {
			high = 80 // printed as a limit
		}
		checked++
		if math.Abs(float64(b.Content.Low)-low) > 0.06 || math.Abs(float64(b.Content.High)-high) > 0.06 {
			t.Errorf("%s: content %s, the salts give %.2f to %.2f g/L", b.Key, b.Content, low, high)
		}
	}
	if checked < 8 {
		t.Errorf("only %d baths", checked)
	}
}
