package jobfile_test

import (
	"encoding/json"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestReportFigures: each figure of the JSON is that of the sheet, under its own
// name.
func TestReportFigures(t *testing.T) {
	for _, name := range []string{"hands", "bezels", "finial"} {
		f, err := testdata.Files.Open("jobs/" + name + ".json")
		if err != nil {
			t.Fatal(err)
		}
		j, err := jobfile.ReadShop(f)
		f.Close()
		if err != nil {
			t.Fatal(err)
		}
		s, err := traveller.Make(j)
		if err != nil {
			t.Fatal(err)
		}
		made, err := jobfile.NewShopReport(&s, false)
		if err != nil {
			t.Fatal(err)
		}
		raw, err := json.Marshal(made)
		if err != nil {
			t.Fatal(err)
		}
		var r jobfile.Report
		if err := json.Unmarshal(raw, &r); err != nil {
			t.Fatal(err)
		}
		same := func(what, text string, want interface{ MarshalText() ([]byte, error) }, back interface {
			UnmarshalText([]byte) error
			MarshalText() ([]byte, error)
		}) {
			t.Helper()
			if err := back.UnmarshalText([]byte(text)); err != nil {
				t.Errorf("%s, %s: %v", name, what, err)
				return
			}
			a, _ := back.MarshalText()
			if b, _ := want.MarshalText(); string(a) != string(b) {
				t.Errorf("%s, %s: %s, want %s", name, what, a, b)
			}
		}
		for i, c := range s.Cards {
			v := r.Sequence[i]
			if v.Number != i+1 || v.Layer != s.Coats[i]+1 || v.LiveEntry != c.LiveEntry || v.Kind != c.Kind.String() {
				t.Errorf("%s, tank %d: %+v", name, i+1, v)
			}
			if c.Set > 0 {
				same("current", v.Current, c.Amps, new(units.Current))
				same("current_low", v.CurrentLow, c.AmpsLow, new(units.Current))
				same("current_high", v.CurrentHigh, c.AmpsTop, new(units.Current))
			}
			if c.Time.Typical > 0 {
				same("time_low", v.TimeLow, c.Time.Low, new(units.Duration))
				same("time", v.Time, c.Time.Typical, new(units.Duration))
				same("time_high", v.TimeHigh, c.Time.High, new(units.Duration))
			}
			if c.AnodeHigh > 0 {
				same("anode_area_low", v.AnodeLow, c.AnodeLow, new(units.Area))
				same("anode_area_high", v.AnodeHigh, c.AnodeHigh, new(units.Area))
			}
		}
		if r.Hydrogen.Tank != s.Gas.Tank+1 || r.Hydrogen.Hydrogen <= 0 || r.Hydrogen.Air <= r.Hydrogen.Hydrogen {
			t.Errorf("%s: hydrogen %+v", name, r.Hydrogen)
		}
		for i, a := range s.Baths {
			b := r.Baths[i]
			same("content_before", b.Before, a.Before, new(units.MassConcentration))
			same("content_now", b.Now, a.Now, new(units.MassConcentration))
			same("taken_by_coats", b.Coat, a.Coat, new(units.Mass))
			same("dripped_off", b.Drips, a.Drips, new(units.Mass))
			same("charge", b.Charge, a.Charge, new(units.Charge))
			if a.Feed != nil {
				same("salt_mass", b.SaltMass, a.Feed.SaltMass, new(units.Mass))
				same("salt_brings", b.Metals, a.Feed.Metal, new(units.Mass))
			}
		}
		same("drag_out_low", r.Rinse.DragOutLow, s.Rinsing.Carried.Low, new(units.Volume))
		same("drag_out_high", r.Rinse.DragOutHigh, s.Rinsing.Carried.High, new(units.Volume))
		same("water_per_rinse", r.Rinse.Water, s.Rinsing.Water, new(units.Volume))
		same("water", r.Rinse.Total, s.Rinsing.Total, new(units.Volume))
		same("line_time", r.LineTime, s.Line.Typical, new(units.Duration))
		same("line_time_low", r.LineLow, s.Line.Low, new(units.Duration))
		same("line_time_high", r.LineHigh, s.Line.High, new(units.Duration))
		for i := range s.Spreads {
			if p := &s.Spreads[i]; p.Known {
				v := r.Layers[i].Spread
				same("spread time_low", v.TimeLow, p.Time.Low, new(units.Duration))
				same("spread time_high", v.TimeHigh, p.Time.High, new(units.Duration))
				same("spread thinnest_low", v.ThinnestLow, p.Thinnest.Low, new(units.Length))
				same("spread thinnest_high", v.ThinnestHigh, p.Thinnest.High, new(units.Length))
			}
			same("area", r.Layers[i].Area, s.Result.Layers[i].Layer.Area, new(units.Area))
		}
		if !r.Price.Total.Equal(s.Quote.Total) || len(r.Price.Swings) != len(s.Swings) || r.Price.Each == "" ||
			!strings.Contains(r.Practice, "[") {
			t.Errorf("%s: price %v, practice %q", name, r.Price.Total, r.Practice)
		}
	}
	if _, err := jobfile.NewShopReport(nil, false); err == nil {
		t.Error("a report of no sheet")
	}
}

// TestOwnAreaOfALayer: amps, their window and the anode go by the layer's own
// area.
func TestOwnAreaOfALayer(t *testing.T) {
	text := strings.Replace(shop, `{"name": "gold",`, `{"name": "gold", "area": "31.2 cm²",`, 1)
	j, err := jobfile.ReadShop(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	whole, err := jobfile.ReadShop(strings.NewReader(shop))
	if err != nil {
		t.Fatal(err)
	}
	a, err := traveller.Make(j)
	if err != nil {
		t.Fatal(err)
	}
	b, err := traveller.Make(whole)
	if err != nil {
		t.Fatal(err)
	}
	for i, k := range a.Coats {
		if k != 1 {
			continue
		}
		c, d := a.Cards[i], b.Cards[i]
		for what, pair := range map[string][2]float64{"amps": {float64(c.Amps), float64(d.Amps)}, "low": {float64(c.AmpsLow),
			float64(d.AmpsLow)},
			"top": {float64(c.AmpsTop), float64(d.AmpsTop)}, "anode": {float64(c.AnodeHigh), float64(d.AnodeHigh)}} {
			if r := pair[0] / pair[1]; r < 0.2499999 || r > 0.2500001 {
				t.Errorf("%s: %v of %v, want a quarter", what, pair[0], pair[1])
			}
		}
	}
	if a.Result.Layers[1].Layer.Role != plating.RoleFinish {
		t.Error("the second layer is no finish")
	}
}
