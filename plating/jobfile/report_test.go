package jobfile_test

import (
	"bytes"
	"encoding"
	"encoding/json"
	"io/fs"
	"math"
	"os"
	"path"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// shipped returns the job files of the workshop by name.
func shipped(t testing.TB) map[string][]byte {
	t.Helper()
	names, err := fs.Glob(testdata.Files, "jobs/*.json")
	if err != nil || len(names) < 3 {
		t.Fatalf("jobs %v, %v: want three at least", names, err)
	}
	files := map[string][]byte{}
	for _, name := range names {
		raw, err := testdata.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		files[path.Base(name)] = raw
	}
	return files
}

func compute(t testing.TB, raw []byte) (plating.Job, plating.JobResult) {
	t.Helper()
	job, err := jobfile.Read(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	res, err := plating.EstimateJob(job)
	if err != nil {
		t.Fatal(err)
	}
	return job, res
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
	near := func(name string, got, want float64) {
		t.Helper()
		if !(math.Abs(got-want) <= 1e-7*want) {
			t.Errorf("%s: %v, by hand %v", name, got, want)
		}
	}
	files := shipped(t)
	for name, w := range want {
		_, res := compute(t, files[name])
		near(name+" area", res.Area.In(units.SquareCentimetre), w.area)
		if len(res.Layers) != len(w.layers) {
			t.Fatalf("%s: %d layers, want %d", name, len(res.Layers), len(w.layers))
		}
		for i, l := range w.layers {
			r := res.Layers[i].Result
			near(name+" minutes", r.Time.In(units.Minute), l.minutes)
			near(name+" amps", r.Current.In(units.Ampere), l.amps)
			near(name+" mg", r.Mass.In(units.Milligram), l.mg)
			share := 1.0
			if name == "hands.json" && i == 1 {
				share = 0.996 // the rest is cobalt and what is built in
			}
			near(name+" mg of metal", r.FineMass.In(units.Milligram), share*l.mg)
		}
	}
}

// TestPropertyReportIsLossless: every quantity that a report gives as text
// reads back to the very value that was computed.
func TestPropertyReportIsLossless(t *testing.T) {
	for name, raw := range shipped(t) {
		job, res := compute(t, raw)
		r, err := jobfile.NewReport(job, res, true)
		if err != nil {
			t.Fatal(err)
		}
		checked := 0
		same := func(field, text string, got encoding.TextUnmarshaler, value func() (got, want float64)) {
			t.Helper()
			checked++
			if err := got.UnmarshalText([]byte(text)); err != nil {
				t.Errorf("%s %s: %v", name, field, err)
				return
			}
			if got, want := value(); got != want {
				t.Errorf("%s %s: %q reads back to %v, computed was %v", name, field, text, got, want)
			}
		}
		length := func(field, text string, want units.Length) {
			t.Helper()
			var v units.Length
			same(field, text, &v, func() (float64, float64) { return float64(v), float64(want) })
		}
		mass := func(field, text string, want units.Mass) {
			t.Helper()
			var v units.Mass
			same(field, text, &v, func() (float64, float64) { return float64(v), float64(want) })
		}
		duration := func(field, text string, want units.Duration) {
			t.Helper()
			var v units.Duration
			same(field, text, &v, func() (float64, float64) { return float64(v), float64(want) })
		}
		charge := func(field, text string, want units.Charge) {
			t.Helper()
			var v units.Charge
			same(field, text, &v, func() (float64, float64) { return float64(v), float64(want) })
		}
		voltage := func(field, text string, want units.Voltage) {
			t.Helper()
			var v units.Voltage
			same(field, text, &v, func() (float64, float64) { return float64(v), float64(want) })
		}
		var area units.Area
		same("area", r.Area, &area, func() (float64, float64) { return float64(area), float64(res.Area) })
		duration("plating time", r.Time, res.Time)
		charge("charge", r.Charge, res.Charge)
		if len(r.Layers) != len(res.Layers) || len(r.Metals) != len(res.Metals) {
			t.Fatalf("%s: %d layers and %d metals, computed were %d and %d", name, len(r.Layers), len(r.Metals), len(res.Layers),
				len(res.Metals))
		}
		for i, l := range r.Layers {
			layer, v := res.Layers[i].Layer, res.Layers[i].Result
			var j units.CurrentDensity
			same("current density", l.CurrentDensity, &j, func() (float64, float64) {
				return float64(j),
					float64(v.CurrentDensity)
			})
			var current units.Current
			same("current", l.Current, &current, func() (float64, float64) { return float64(current), float64(v.Current) })
			duration("time", l.Time, v.Time)
			charge("charge", l.Charge, v.Charge)
			var eff units.Efficiency
			same("efficiency", l.Efficiency, &eff, func() (float64, float64) { return float64(eff), float64(v.Efficiency) })
			length("mean", l.Average, v.Average)
			length("thinnest", l.Thinnest, v.Thinnest)
			if below := res.Layers[i].Below; below > 0 {
				length("below", l.Below, below)
			} else if l.Below != "" {
				t.Errorf("%s: %q below a layer that counts nothing", name, l.Below)
			}
			mass("mass", l.Mass, v.Mass)
			mass("metal mass", l.FineMass, v.FineMass)
			voltage("volts low", l.VoltsLow, layer.Bath.Volts.Low)
			voltage("volts high", l.VoltsHigh, layer.Bath.Volts.High)
			var set units.Temperature
			same("temperature", l.Temperature, &set, func() (float64, float64) {
				return float64(set),
					float64(layer.Bath.Temperature.Set)
			})
			mass("metal left", l.MetalLeft, v.MetalLeft)
			var content units.MassConcentration
			same("content left", l.ContentLeft, &content, func() (float64, float64) {
				return float64(content),
					float64(v.ContentLeft)
			})
			var ratio units.Ratio
			same("ratio", l.Distribution, &ratio, func() (float64, float64) {
				return float64(ratio),
					float64(layer.Distribution.MinToAverage)
			})
			if len(l.Notes) != len(res.Layers[i].Notes) || len(l.Before) != len(res.Layers[i].Before) {
				t.Errorf("%s: notes were lost", name)
			}
			if len(l.Working) < 6 {
				t.Errorf("%s: %d steps of working", name, len(l.Working))
			}
		}
		for i, m := range r.Metals {
			length("metal mean", m.Average, res.Metals[i].Average)
			length("metal thinnest", m.Thinnest, res.Metals[i].Thinnest)
			mass("metal deposit", m.Mass, res.Metals[i].Mass)
			mass("metal fine", m.FineMass, res.Metals[i].FineMass)
		}
		if checked < 30 {
			t.Errorf("%s: only %d quantities checked", name, checked)
		}

		raw, err := json.Marshal(r)
		if err != nil || !json.Valid(raw) {
			t.Fatalf("%s: %v", name, err)
		}
		var back jobfile.Report
		if err := json.Unmarshal(raw, &back); err != nil {
			t.Fatal(err)
		}
		again, err := json.Marshal(back)
		if err != nil || !bytes.Equal(raw, again) {
			t.Errorf("%s: the report does not come back from JSON as it went in: %v", name, err)
		}
	}
}

// TestReportStops: a note that says stop sets Stop; a job without one does not.
func TestReportStops(t *testing.T) {
	for text, want := range map[string]bool{
		strings.Replace(right, `"8 g/L"`, `"8 g/L", "pH": 4.4`, 1): false,
		right: true, // gold cyanide in acid, and no pH
		// the bath does not hold it
		strings.Replace(right, `"8 g/L"`, `"1 mg/L"`, 1):                                                  true,
		strings.Replace(right, `"min_thickness": "2.5 µm"`, `"min_thickness": "9 µm", "time": "60 s"`, 1): true,
	} {
		job, res := compute(t, []byte(text))
		r, err := jobfile.NewReport(job, res, false)
		if err != nil || r.Stop != want {
			t.Errorf("stop is %v, want %v (%v)", r.Stop, want, err)
		}
		if r.Layers[0].Working != nil {
			t.Error("working comes along though nobody asked")
		}
	}
}

// TestReportLeavesOut: what was not given is left out, not made up.
func TestReportLeavesOut(t *testing.T) {
	const bare = `{"format": "laydown job 1", "parts": [{"area": "1 cm²"}], "layers": [
		{"bath": {"metal": "Au", "efficiency": 1}, "min_to_average": 1, "min_thickness": "1 µm", "time": "1 min"}]}`
	job, res := compute(t, []byte(bare))
	r, err := jobfile.NewReport(job, res, false)
	if err != nil {
		t.Fatal(err)
	}
	l := r.Layers[0]
	if l.VoltsLow != "" || l.VoltsHigh != "" || l.Temperature != "" || l.MetalLeft != "" || l.ContentLeft != "" ||
		l.Below != "" || r.Substrate != "" {
		t.Errorf("%+v: nobody gave volts, temperature or content", l)
	}
	if job.Parts[0].Count != 1 {
		t.Errorf("count %d, want 1 when it is left out", job.Parts[0].Count)
	}
}

// The job that the package comment describes field by field must read: every
// field of the comment stands in it.
func TestPackageCommentKnowsTheFields(t *testing.T) {
	doc, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	for _, probe := range []string{
		`{"format": "laydown job 1", "parts": [{}], "layers": [{}], "?": 1}`,
		strings.Replace(right, `"count"`, `"?": 1, "count"`, 1),
		strings.Replace(right, `"role"`, `"?": 1, "role"`, 1),
		strings.Replace(right, `"valence"`, `"?": 1, "valence"`, 1),
		strings.Replace(right, `"set"`, `"?": 1, "set"`, 1),
	} {
		_, err := jobfile.Read(strings.NewReader(probe))
		if err == nil {
			t.Fatal("an unknown field was taken")
		}
		_, known, found := strings.Cut(err.Error(), "known here are ")
		if !found {
			t.Fatalf("%v: want the known fields", err)
		}
		for _, field := range strings.Split(known, ", ") {
			if !strings.Contains(string(doc), `"`+field+`"`) {
				t.Errorf("field %q is read and the package comment does not say so", field)
			}
		}
	}
}
