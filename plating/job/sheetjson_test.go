package job_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"math"

	"strings"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// same holds a text of the JSON against the value that was computed: it reads back to
// that very value; zero may be left out.
func sameText[Q units.Quantity, P interface {
	*Q
	encoding.TextUnmarshaler
}](t *testing.T, what string, text any, want Q) {
	t.Helper()
	if want == 0 && text == nil { // left out; what was computed as zero stands
		return
	}
	s, ok := text.(string)
	if !ok {
		t.Errorf("%s: %v, want %v as text", what, text, want)
		return
	}
	var got Q
	if err := P(&got).UnmarshalText([]byte(s)); err != nil || got != want {
		t.Errorf("%s: %q reads back to %v, computed was %v (%v)", what, s, got, want, err)
	}
}

// in reads a quantity of the JSON in a unit.
func in[Q units.Quantity, P interface {
	*Q
	encoding.TextUnmarshaler
}](t *testing.T, text any, unit Q) float64 {
	t.Helper()
	s, _ := text.(string)
	var v Q
	if err := P(&v).UnmarshalText([]byte(s)); err != nil {
		t.Fatalf("%v: %v", text, err)
	}
	return float64(v) / float64(unit)
}

func close1(t *testing.T, what string, got, want float64) {
	t.Helper()
	if !(math.Abs(got-want) <= 1e-7*math.Abs(want)) {
		t.Errorf("%s: %v, by hand %v", what, got, want)
	}
}

// TestIndependentShippedJobs computes areas, times and masses of the three
// jobs again from the figures in the files, by hand and in trade units.
// Atomic weights and F: [IUPAC2021] abridged and [SI2019].
func TestIndependentShippedJobs(t *testing.T) {
	const (
		f    = 96485.33212
		au   = 196.966570 / f // g/C
		ag   = 107.8682 / f
		ni   = 58.6934 / 2 / f
		pi   = math.Pi
		cm2  = 1e2 // mm² in a cm²
		cms  = 1e4 // µm in a cm
		dm2s = 100 // cm² in a dm²
	)
	type layer struct{ minutes, amps, mg float64 }
	// Minutes for a thickness [µm], density [g/cm³], equivalent [g/C], efficiency, A/dm².
	minutes := func(um, rho, eq, eff, j float64) float64 { return um / cms * rho / (eq * eff * j / dm2s) / 60 }
	grown := func(s, rho, eq, eff, j float64) float64 { return s * eq * eff * j / dm2s / rho * cms }

	hands := 12*(2*(62*3.4+62*0.4+3.4*0.4))/cm2 + 12*(2*(44*4.2+44*0.4+4.2*0.4)-2*pi/4*9+pi*3*0.4)/cm2
	hardEq := 1 / (0.996/au + 0.002*2*f/58.933194)
	handsStrike := grown(20, 19.3, au, 0.1, 3)
	handsLeft := 1 - 0.6*handsStrike
	hardEff := 0.40 + (0.36-0.40)*(0.5-0.3)/0.3

	bezels := 6 * (pi*pi*84*6/cm2 - 2.5)
	bezelStrike := grown(20, 19.3, au, 0.12, 2)
	goldLeft := 2.5 - 0.55*bezelStrike
	goldJ := goldLeft / 0.55 / cms * 19.3 / (au * 0.92 * 25 * 60) * dm2s

	slant := math.Hypot(38, 6)
	finial := (pi*(7+1)*slant+pi*1+pi*22*22+pi*12*9+pi*13*13+pi*26*3)/cm2 - 3.2
	silverStrike := grown(15, 10.5, ag, 0.3, 1.5)
	silverLeft := 10 - 0.45*silverStrike

	mg := func(um, rho, area float64) float64 { return um / cms * rho * area * 1000 }
	want := map[string]struct {
		area   float64
		layers []layer
	}{
		"hands.json": {hands, []layer{
			{20.0 / 60, 3 * hands / dm2s, mg(handsStrike, 19.3, hands)},
			{minutes(handsLeft/0.6, 17.3, hardEq, hardEff, 0.5), 0.5 * hands / dm2s, mg(handsLeft/0.6, 17.3, hands)}}},
		"bezels.json": {bezels, []layer{
			{minutes(4/0.55, 8.9, ni, 0.95, 3), 3 * bezels / dm2s, mg(4/0.55, 8.9, bezels)},
			{20.0 / 60, 2 * bezels / dm2s, mg(bezelStrike, 19.3, bezels)},
			{25, goldJ * bezels / dm2s, mg(goldLeft/0.55, 19.3, bezels)}}},
		"finial.json": {finial, []layer{
			{15.0 / 60, 1.5 * finial / dm2s, mg(silverStrike, 10.5, finial)},
			{minutes(silverLeft/0.45, 10.5, ag, 0.99, 0.8), 0.8 * finial / dm2s, mg(silverLeft/0.45, 10.5, finial)}}},
	}
	files := shippedFiles(t)
	for name, w := range want {
		s := compute(t, files[name])
		v := tree(t, s, job.SheetOptions{})
		close1(t, name+" area", in(t, at(t, v, "area"), units.SquareCentimetre), w.area)
		var coats []any
		for i := range s.Stops {
			if c := at(t, v, "tanks", i, "coat"); c != nil {
				coats = append(coats, c)
			}
		}
		if len(coats) != len(w.layers) {
			t.Fatalf("%s: %d layers, want %d", name, len(coats), len(w.layers))
		}
		minutes, charge := 0.0, 0.0
		for i, l := range w.layers {
			c := coats[i]
			close1(t, name+" minutes", in(t, at(t, c, "time"), units.Minute), l.minutes)
			close1(t, name+" amps", in(t, at(t, c, "current"), units.Ampere), l.amps)
			close1(t, name+" mg", in(t, at(t, c, "deposit_mass"), units.Milligram), l.mg)
			close1(t, name+" A·min", in(t, at(t, c, "charge"), units.AmpereMinute), l.amps*l.minutes)
			share := 1.0
			if name == "hands.json" && i == 1 {
				share = 0.996 // the rest is cobalt and what is built in
			}
			close1(t, name+" mg of metal", in(t, at(t, c, "metal_mass"), units.Milligram), share*l.mg)
			minutes, charge = minutes+l.minutes, charge+l.amps*l.minutes
		}
		close1(t, name+" plating time", in(t, at(t, v, "plating_time"), units.Minute), minutes)
		close1(t, name+" charge", in(t, at(t, v, "charge"), units.AmpereMinute), charge)
	}
}

// TestIndependentHandsSheet computes the figures around the coats of the hands again, by
// hand and in trade units, from other figures of the JSON and of the file.
func TestIndependentHandsSheet(t *testing.T) {
	s := compute(t, shippedFiles(t)["hands.json"])
	v := tree(t, s, job.SheetOptions{})
	area := in(t, at(t, v, "area"), units.SquareDecimetre)
	line := map[string]float64{}
	for i := range s.Stops {
		tank := at(t, v, "tanks", i)
		if set := at(t, tank, "set"); set != nil {
			j := in(t, set, units.AmperePerSquareDecimetre)
			close1(t, "amps of "+s.Stops[i].Tank.Name, in(t, at(t, tank, "amps"), units.Ampere), j*area)
		}
		if w := at(t, tank, "current_density"); w != nil {
			close1(t, "least amps", in(t, at(t, tank, "amps_low"), units.Ampere),
				in(t, at(t, w, "low"), units.AmperePerSquareDecimetre)*area)
			close1(t, "most amps", in(t, at(t, tank, "amps_high"), units.Ampere),
				in(t, at(t, w, "high"), units.AmperePerSquareDecimetre)*area)
		}
		for _, end := range []string{"low", "typical", "high"} {
			line[end] += 20.0 / 60 // handling
			if time := at(t, tank, "time", end); time != nil {
				line[end] += in(t, time, units.Minute)
			}
		}
	}
	for end, minutes := range line {
		close1(t, "line time, "+end, in(t, at(t, v, "line_time", end), units.Minute), minutes)
	}
	// 24 hands, vertical and well drained: what clings to their area.
	r := at(t, v, "rinsing")
	high := in(t, at(t, r, "carried_high"), units.Litre)
	for i, content := range []float64{1.5, 8} {
		m := at(t, r, "metals", i)
		close1(t, "most metal carried off", in(t, at(t, m, "high"), units.Gram), content*high)
		lost := in(t, at(t, m, "high"), units.Gram) * (1 - in(t, at(t, m, "brought_back"), units.Ratio(1)))
		close1(t, "metal lost", in(t, at(t, m, "lost"), units.Gram), lost)
		b := at(t, v, "baths", i)
		close1(t, "drips", in(t, at(t, b, "drips"), units.Gram), lost)
		litres := []float64{3, 5}[i]
		coat := in(t, at(t, b, "coat"), units.Gram)
		close1(t, "content afterwards", in(t, at(t, b, "after"), units.GramPerLitre), content-(coat+lost)/litres)
		close1(t, "share drawn", in(t, at(t, b, "drawn"), units.Ratio(1)), (coat+lost)/litres/content)
		close1(t, "ampere-minutes", in(t, at(t, b, "charge"), units.AmpereMinute),
			in(t, at(t, v, "tanks", []int{6, 9}[i], "coat", "charge"), units.AmpereMinute))
	}
	// KAu(CN)2 holds 196.966570 g of gold in 288.09857 g.
	salt := at(t, v, "baths", 1)
	close1(t, "salt", in(t, at(t, salt, "salt_mass"), units.Gram),
		in(t, at(t, salt, "salt_metal"), units.Gram)*(196.966570+39.0983+2*(12.011+14.007))/196.966570)
	hard := at(t, v, "tanks", 9, "coat")
	amps, minutes := in(t, at(t, hard, "current"), units.Ampere), in(t, at(t, hard, "time"), units.Minute)
	close1(t, "power", in(t, at(t, hard, "power", "high"), units.Watt), 3*amps)
	close1(t, "warming", in(t, at(t, hard, "power", "warms"), units.Kelvin), 3*amps*60*
		in(t, at(t, hard, "spread", "time", "high"), units.Minute)/(5*4186)) // the longest that it may take
	close1(t, "spread of the time", in(t, at(t, hard, "spread", "time", "low"), units.Minute),
		minutes*in(t, at(t, hard, "efficiency"), units.Efficiency(1))/in(t, at(t, hard, "spread", "efficiency", "high"),
			units.Efficiency(1)))
}

// TestPropertySheetIsLossless: every quantity that the JSON of a sheet gives as text
// reads back to the very value that was computed, and what is not known is left out.
func TestPropertySheetIsLossless(t *testing.T) {
	for name, raw := range shippedFiles(t) {
		s := compute(t, raw)
		v := tree(t, s, job.SheetOptions{Working: true})
		sameText(t, name+" area", at(t, v, "area"), s.Area)
		sameText(t, name+" plating time", at(t, v, "plating_time"), s.Time)
		sameText(t, name+" charge", at(t, v, "charge"), s.Charge)
		if got := at(t, v, "stop"); got != s.Forbidden() {
			t.Errorf("%s: stop %v", name, got)
		}
		for i, p := range s.Parts {
			sameText(t, name+" part", at(t, v, "parts", i, "area"), p.Area)
			sameText(t, name+" masked", at(t, v, "parts", i, "masked"), p.Masked)
		}
		if got := at(t, v, "tanks").([]any); len(got) != len(s.Stops) {
			t.Fatalf("%s: %d tanks of %d", name, len(got), len(s.Stops))
		}
		for i := range s.Stops {
			k, card := at(t, v, "tanks", i), &s.Stops[i].Tank
			if at(t, k, "number") != float64(i+1) || at(t, k, "kind") != card.Kind.String() ||
				at(t, k, "name") != card.Name || at(t, k, "live_entry") == nil == card.LiveEntry {
				t.Errorf("%s, tank %d: %v", name, i+1, k)
			}
			sameText(t, name+" set", at(t, k, "set"), card.Set)
			sameText(t, name+" amps", at(t, k, "amps"), card.Amps)
			sameText(t, name+" amps_low", at(t, k, "amps_low"), card.AmpsLow)
			sameText(t, name+" amps_high", at(t, k, "amps_high"), card.AmpsTop)
			sameText(t, name+" time", at(t, k, "time", "typical"), card.Time.Typical)
			sameText(t, name+" time, low", at(t, k, "time", "low"), card.Time.Low)
			sameText(t, name+" time, high", at(t, k, "time", "high"), card.Time.High)
			sameText(t, name+" thickness", at(t, k, "min_thickness"), card.MinThickness)
			sameText(t, name+" anode", at(t, k, "anode_area_low"), card.AnodeLow)
			sameText(t, name+" anode", at(t, k, "anode_area_high"), card.AnodeHigh)
			if r := card.Temperature; r.Given() && r.Low != r.High {
				sameText(t, name+" temperature", at(t, k, "temperature", "low"), r.Low)
				sameText(t, name+" temperature", at(t, k, "temperature", "high"), r.High)
				sameText(t, name+" temperature", at(t, k, "temperature", "set"), r.Set)
			}
			c := s.Stops[i].Coat
			if c == nil {
				if at(t, k, "coat") != nil {
					t.Errorf("%s, tank %d plates", name, i+1)
				}
				continue
			}
			j, r, b := at(t, k, "coat"), &c.Result, &c.Layer.Bath
			sameText(t, name+" area", at(t, j, "area"), c.Layer.Area)
			sameText(t, name+" current density", at(t, j, "current_density"), r.CurrentDensity)
			sameText(t, name+" current", at(t, j, "current"), r.Current)
			sameText(t, name+" time", at(t, j, "time"), r.Time)
			sameText(t, name+" charge", at(t, j, "charge"), r.Charge)
			sameText(t, name+" efficiency", at(t, j, "efficiency"), r.Efficiency)
			sameText(t, name+" minimum thickness", at(t, j, "min_thickness"), c.Ordered)
			sameText(t, name+" average", at(t, j, "average_thickness"), r.Average)
			sameText(t, name+" thinnest", at(t, j, "thinnest"), r.Thinnest)
			sameText(t, name+" below", at(t, j, "counted_from_below"), c.Below)
			sameText(t, name+" mass", at(t, j, "deposit_mass"), r.Mass)
			sameText(t, name+" metal mass", at(t, j, "metal_mass"), r.FineMass)
			sameText(t, name+" volts", at(t, j, "volts_low"), b.Volts.Low)
			sameText(t, name+" volts", at(t, j, "volts_high"), b.Volts.High)
			sameText(t, name+" temperature", at(t, j, "temperature"), b.Temperature.Set)
			sameText(t, name+" metal left", at(t, j, "metal_left"), r.MetalLeft)
			sameText(t, name+" content left", at(t, j, "content_left"), r.ContentLeft)
			sameText(t, name+" ratio", at(t, j, "min_to_average"), c.Layer.Distribution.MinToAverage)
			if p := at(t, j, "spread"); c.Spread.Known {
				sameText(t, name+" spread", at(t, p, "time", "low"), c.Spread.Time.Low)
				sameText(t, name+" spread", at(t, p, "time", "high"), c.Spread.Time.High)
				sameText(t, name+" spread", at(t, p, "thinnest", "low"), c.Spread.Thinnest.Low)
				sameText(t, name+" spread", at(t, p, "thinnest", "high"), c.Spread.Thinnest.High)
				sameText(t, name+" spread", at(t, p, "metal_mass", "high"), c.Spread.FineMass.High)
				sameText(t, name+" spread", at(t, p, "efficiency", "low"), c.Spread.Efficiency.Low)
			} else if p != nil {
				t.Errorf("%s: a spread of what is not known", name)
			}
			sameText(t, name+" power", at(t, j, "power", "low"), c.Power.Low)
			sameText(t, name+" power", at(t, j, "power", "high"), c.Power.High)
			sameText(t, name+" warming", at(t, j, "power", "warms"), c.Power.Warms)
			if notes, _ := at(t, j, "notes").([]any); len(notes) != len(c.Notes) {
				t.Errorf("%s: notes were lost", name)
			}
			if before, _ := at(t, j, "before").([]any); len(before) != len(c.Before) {
				t.Errorf("%s: notes were lost", name)
			}
			if steps := at(t, j, "working").([]any); len(steps) < 6 {
				t.Errorf("%s: %d steps of working", name, len(steps))
			}
		}
		for i, m := range s.Metals {
			j := at(t, v, "metals", i)
			sameText(t, name+" metal average", at(t, j, "average_thickness"), m.Average)
			sameText(t, name+" metal thinnest", at(t, j, "thinnest"), m.Thinnest)
			sameText(t, name+" metal deposit", at(t, j, "deposit_mass"), m.Mass)
			sameText(t, name+" metal fine", at(t, j, "metal_mass"), m.FineMass)
		}
		for i, a := range s.Baths {
			j := at(t, v, "baths", i)
			sameText(t, name+" before", at(t, j, "before"), a.Before)
			sameText(t, name+" after", at(t, j, "after"), a.Now)
			sameText(t, name+" coat", at(t, j, "coat"), a.Coat)
			sameText(t, name+" drips", at(t, j, "drips"), a.Drips)
			sameText(t, name+" gained", at(t, j, "gained"), a.Gained)
			sameText(t, name+" charge", at(t, j, "charge"), a.Charge)
			sameText(t, name+" drawn", at(t, j, "drawn"), a.Drawn)
			if a.Feed != nil {
				sameText(t, name+" salt", at(t, j, "salt_mass"), a.Feed.SaltMass)
				sameText(t, name+" metal in the salt", at(t, j, "salt_metal"), a.Feed.Metal)
			}
		}
		r := at(t, v, "rinsing")
		sameText(t, name+" carried", at(t, r, "carried_low"), s.Rinsing.Carried.Low)
		sameText(t, name+" carried", at(t, r, "carried_high"), s.Rinsing.Carried.High)
		sameText(t, name+" water", at(t, r, "water"), s.Rinsing.Water)
		sameText(t, name+" water of all", at(t, r, "total"), s.Rinsing.Total)
		sameText(t, name+" line", at(t, v, "line_time", "low"), s.Line.Low)
		sameText(t, name+" line", at(t, v, "line_time", "typical"), s.Line.Typical)
		sameText(t, name+" line", at(t, v, "line_time", "high"), s.Line.High)
		if g := at(t, v, "hydrogen"); at(t, g, "tank") != float64(s.Gas.Tank+1) ||
			!(at(t, g, "hydrogen_m3_per_h").(float64) > 0) ||
			at(t, g, "air_m3_per_h").(float64) <= at(t, g, "hydrogen_m3_per_h").(float64) {
			t.Errorf("%s: hydrogen %v", name, g)
		}
		p := at(t, v, "price")
		if total := at(t, p, "total"); total != s.Quote.Total.String() ||
			len(at(t, p, "swings").([]any)) != len(s.Swings) ||
			at(t, p, "each") == nil || !strings.Contains(at(t, v, "practice").(string), "[") {
			t.Errorf("%s: price %v, want %v", name, total, s.Quote.Total)
		}
		if doc, _ := at(t, v, "document").([]any); len(doc) < len(s.Stops) {
			t.Errorf("%s: %d sections of the document", name, len(doc))
		}
	}
}

// TestSheetStops: a note that says stop sets "stop"; a job without one does not.
func TestSheetStops(t *testing.T) {
	for text, want := range map[string]bool{
		strings.Replace(right, `"8 g/L"`, `"8 g/L", "pH": 4.4`, 1): false,
		right: true, // gold cyanide in acid, and no pH
		// the bath does not hold it
		strings.Replace(right, `"8 g/L"`, `"1 mg/L"`, 1):                                                  true,
		strings.Replace(right, `"min_thickness": "2.5 µm"`, `"min_thickness": "9 µm", "time": "60 s"`, 1): true,
	} {
		v := tree(t, compute(t, []byte(text)), job.SheetOptions{})
		reasons, _ := at(t, v, "stop_reasons").([]any)
		if at(t, v, "stop") != want || len(reasons) > 0 != want {
			t.Errorf("stop is %v for %v, want %v", at(t, v, "stop"), reasons, want)
		}
		if at(t, v, "tanks", 0, "coat", "working") != nil {
			t.Error("working comes along though nobody asked")
		}
	}
}

// TestSheetLeavesOut: what was not given is left out, not made up.
func TestSheetLeavesOut(t *testing.T) {
	const bare = `{"format": "laydown job 1", "parts": [{"area": "1 cm²"}], "layers": [
		{"bath": {"metal": "Au", "efficiency": 1}, "min_to_average": 1, "min_thickness": "1 µm", "time": "1 min"}]}`
	s := compute(t, []byte(bare))
	v := tree(t, s, job.SheetOptions{})
	c := at(t, v, "tanks", 0, "coat")
	for _, name := range []string{"volts_low", "volts_high", "temperature", "metal_left", "content_left",
		"counted_from_below",
		"power", "spread"} {
		if got := at(t, c, name); got != nil {
			t.Errorf("%s %v: nobody gave it", name, got)
		}
	}
	for _, name := range []string{"substrate", "rinsing", "price", "findings", "practice", "baths", "oven_time"} {
		if got := at(t, v, name); got != nil {
			t.Errorf("%s %v: nobody gave it", name, got)
		}
	}
	if s.Job.Parts[0].Count != 1 {
		t.Errorf("count %d, want 1 when it is left out", s.Job.Parts[0].Count)
	}
}

// TestOwnAreaOfALayer: amps, their window and the anode go by the layer's own area.
func TestOwnAreaOfALayer(t *testing.T) {
	own := sheetOf(t, readShop(t, `{"name": "gold",`, `{"name": "gold", "area": "31.2 cm²",`))
	whole := sheetOf(t, readShop(t))
	for i := range own.Stops {
		if c := own.Stops[i].Coat; c == nil || c.Name != "gold" {
			continue
		}
		c, d := own.Stops[i].Tank, whole.Stops[i].Tank
		for what, pair := range map[string][2]float64{"amps": {float64(c.Amps), float64(d.Amps)},
			"low": {float64(c.AmpsLow), float64(d.AmpsLow)},
			"top": {float64(c.AmpsTop), float64(d.AmpsTop)}, "anode": {float64(c.AnodeHigh), float64(d.AnodeHigh)}} {
			if r := pair[0] / pair[1]; !(r > 0.2499999 && r < 0.2500001) {
				t.Errorf("%s: %v of %v, want a quarter", what, pair[0], pair[1])
			}
		}
	}
}

// TestPropertyHandMadeSheets: a sheet that was made or changed by hand is written or
// refused, without a panic.
func TestPropertyHandMadeSheets(t *testing.T) {
	raw := shippedFiles(t)["hands.json"]
	for name, change := range map[string]func(s *job.Sheet){
		"zero":          func(s *job.Sheet) { *s = job.Sheet{} },
		"a stop less":   func(s *job.Sheet) { s.Stops = s.Stops[1:] },
		"no stops":      func(s *job.Sheet) { s.Stops = nil },
		"empty stops":   func(s *job.Sheet) { s.Stops = make([]job.Stop, 3) },
		"an empty coat": func(s *job.Sheet) { s.Stops[0].Coat = &job.Coat{} },
		"no quote":      func(s *job.Sheet) { s.Quote = nil },
		"no rinsing":    func(s *job.Sheet) { s.Rinsing = nil },
		"no job":        func(s *job.Sheet) { s.Job = job.Job{} },
		"no gas":        func(s *job.Sheet) { s.Gas = nil },
		"no claim":      func(s *job.Sheet) { s.Claim = nil },
	} {
		s := compute(t, raw)
		change(s)
		var b strings.Builder
		for what, write := range map[string]func() error{
			"text":  func() error { return s.WriteText(&b, job.SheetOptions{Working: true}) },
			"page":  func() error { return s.WriteHTML(&b, job.SheetOptions{Working: true}) },
			"JSON":  func() error { return s.WriteJSON(&b, job.SheetOptions{Working: true}) },
			"bytes": func() error { _, err := json.Marshal(s); return err },
		} {
			var value *units.ValueError
			if err := write(); err != nil && !errors.As(err, &value) {
				t.Errorf("%s as %s: %v (%T)", name, what, err, err)
			}
		}
	}
	var none *job.Sheet
	if err := none.WriteJSON(&strings.Builder{}, job.SheetOptions{}); err == nil {
		t.Error("JSON of no sheet")
	}
	if err := compute(t, raw).WriteJSON(nil, job.SheetOptions{}); err == nil {
		t.Error("JSON to no writer")
	}
}

// TestSheetFindings: findings count tanks from 1, and of a job that must not be run there
// is nothing to set.
func TestSheetFindings(t *testing.T) {
	s := sheetOf(t, readShop(t))
	v := tree(t, s, job.SheetOptions{})
	for i, f := range s.Findings {
		list := at(t, v, "findings", i, "tanks").([]any)
		if len(list) != len(f.Tanks) || len(list) == 0 {
			t.Fatalf("%v for %v", list, f.Tanks)
		}
		for k := range list {
			if list[k] != float64(f.Tanks[k]+1) {
				t.Errorf("tank %v, want %d", list[k], f.Tanks[k]+1)
			}
		}
	}
	if len(s.Findings) == 0 {
		t.Error("the job has no finding")
	}
	refused := compute(t, []byte(right)) // gold cyanide in acid, and no pH
	if !refused.Refused() {
		t.Fatal("the job may be run")
	}
	v = tree(t, refused, job.SheetOptions{Working: true})
	for _, name := range []string{"plating_time", "charge", "metals", "line_time", "hydrogen", "rinsing", "baths",
		"price", "claim"} {
		if got := at(t, v, name); got != nil {
			t.Errorf("%s %v of a job that must not be run", name, got)
		}
	}
	for _, name := range []string{"current", "time", "current_density", "temperature", "volts_low", "efficiency",
		"working", "power"} {
		if got := at(t, v, "tanks", 0, "coat", name); got != nil {
			t.Errorf("%s %v of a coat that must not be laid", name, got)
		}
	}
	for _, name := range []string{"set", "amps", "time", "temperature", "volts", "current_density"} {
		if got := at(t, v, "tanks", 0, name); got != nil {
			t.Errorf("%s %v of a tank that must not be used", name, got)
		}
	}
}
