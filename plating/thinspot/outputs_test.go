package thinspot_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/units"
)

// TestPropertySameFacts: whatever fact of a result changes, the page and the JSON both
// change with it: neither says what the other does not know.
func TestPropertySameFacts(t *testing.T) {
	base, err := bob()
	if err != nil {
		t.Fatal(err)
	}
	base.Others = []coat.Outcome{{Name: "as it hangs", Time: 60, MinToAverage: 0.5, FineMass: 1e-3},
		{Name: "half the current", Time: 90, MinToAverage: 0.6, FineMass: 9e-4, SavedMass: 1e-4, SavedTime: -30}}
	base.Surface.Significant = make([]bool, len(base.Surface.Patches))
	other := func(i int, change func(*coat.Outcome)) func(*thinspot.Result) {
		return func(r *thinspot.Result) {
			r.Others = append([]coat.Outcome(nil), r.Others...)
			change(&r.Others[i])
		}
	}
	unknown := func(r *thinspot.Result) { r.Surface.MinError = math.NaN() }
	both := func(r thinspot.Result) (text, raw string) {
		j, err := json.Marshal(r)
		if err != nil {
			t.Fatal(err)
		}
		return page(t, r), string(j)
	}
	for name, change := range map[string]func(*thinspot.Result){
		"name":          func(r *thinspot.Result) { r.Case.Name = "bezel" },
		"minimum":       func(r *thinspot.Result) { r.Case.MinThickness *= 2 },
		"metal":         func(r *thinspot.Result) { r.Case.Bath.Metal = "Ag" },
		"price":         func(r *thinspot.Result) { r.Case.PricePerGram = decimal.New(3, 0) },
		"currency":      func(r *thinspot.Result) { r.Case.Currency = "GBP" },
		"no price":      func(r *thinspot.Result) { r.Case.PricePerGram = decimal.Zero },
		"workpiece":     func(r *thinspot.Result) { r.Workpiece = "bezel" },
		"area":          func(r *thinspot.Result) { r.Area *= 2 },
		"significant":   func(r *thinspot.Result) { r.Coat.Area *= 2 },
		"current":       func(r *thinspot.Result) { r.Current *= 2 },
		"total":         func(r *thinspot.Result) { r.Total *= 2 },
		"voltage":       func(r *thinspot.Result) { r.Voltage *= 2 },
		"balance":       func(r *thinspot.Result) { r.Balance *= 2 },
		"unknowns":      func(r *thinspot.Result) { r.Unknowns *= 2 },
		"time":          func(r *thinspot.Result) { r.Coat.Time *= 2 },
		"thinnest":      func(r *thinspot.Result) { r.Coat.Min *= 2 },
		"average":       func(r *thinspot.Result) { r.Coat.Average *= 2 },
		"5 %":           func(r *thinspot.Result) { r.Coat.P05 *= 2 },
		"95 %":          func(r *thinspot.Result) { r.Coat.P95 *= 2 },
		"deposit":       func(r *thinspot.Result) { r.Coat.FineMass *= 2 },
		"above":         func(r *thinspot.Result) { r.Above *= 2 },
		"below":         func(r *thinspot.Result) { r.Below *= 2 },
		"spot":          func(r *thinspot.Result) { r.Spot.Z *= 2 },
		"where":         func(r *thinspot.Result) { r.Where = "at the top" },
		"ratio":         func(r *thinspot.Result) { r.Coat.MinToAverage /= 2 },
		"basis":         func(r *thinspot.Result) { r.Ratio.Basis = "a guess" },
		"uncertainty":   func(r *thinspot.Result) { r.Ratio.Uncertainty = 0.1 },
		"error":         func(r *thinspot.Result) { r.Surface.MinError *= 2 },
		"no error":      unknown,
		"why":           func(r *thinspot.Result) { unknown(r); r.ErrorUnknown = "no memory" },
		"unresolved":    func(r *thinspot.Result) { r.Surface.Unresolved = true },
		"mended":        func(r *thinspot.Result) { r.Mended = []string{"bob.stl: 1 triangle turned"} },
		"warning":       func(r *thinspot.Result) { r.Warnings = []string{"on 1 cm² metal dissolves"} },
		"caution":       func(r *thinspot.Result) { r.Cautions = []string{"gloves"} },
		"no others":     func(r *thinspot.Result) { r.Others = nil },
		"other's name":  other(1, func(o *coat.Outcome) { o.Name = "a shield" }),
		"other's time":  other(1, func(o *coat.Outcome) { o.Time *= 2 }),
		"other's ratio": other(1, func(o *coat.Outcome) { o.MinToAverage /= 2 }),
		"other's mass":  other(1, func(o *coat.Outcome) { o.SavedMass *= -1 }),
		"other failed":  other(1, func(o *coat.Outcome) { o.Err = io.EOF }),
		"not tried":     other(1, func(o *coat.Outcome) { o.Err = &thinspot.NotTriedError{Why: "no anode"} }),
		"not resolved":  other(0, func(o *coat.Outcome) { o.Unresolved = true }),
	} {
		r := base
		change(&r)
		text, raw := both(base)
		if name == "why" { // against a result whose error is not known either
			blind := base
			unknown(&blind)
			text, raw = both(blind)
		}
		if newText, newRaw := both(r); newText == text || newRaw == raw {
			t.Errorf("%s: page changed %v, JSON changed %v", name, newText != text, newRaw != raw)
		}
	}
}

// TestPropertyHandMade: a result that does not hang together is refused by every output,
// and nothing of it is written; hostile words stay in their line.
func TestPropertyHandMade(t *testing.T) {
	sound, err := bob()
	if err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(*thinspot.Result){
		"empty":     func(r *thinspot.Result) { *r = thinspot.Result{} },
		"spot":      func(r *thinspot.Result) { r.Coat.MinPatch = len(r.Surface.Patches) },
		"before":    func(r *thinspot.Result) { r.Coat.MinPatch = -1 },
		"thickness": func(r *thinspot.Result) { r.Coat.Thickness = r.Coat.Thickness[1:] },
		"marks":     func(r *thinspot.Result) { r.Surface.Significant = []bool{true} },
		"along":     func(r *thinspot.Result) { r.Along = r.Along[1:] },
		"neither":   func(r *thinspot.Result) { r.Along = nil },
	} {
		r := sound
		change(&r)
		var b bytes.Buffer
		_, asJSON := r.MarshalJSON()
		for _, err := range []error{r.WriteText(&b), r.WriteCSV(&b), r.WritePLY(&b), asJSON} {
			var value *units.ValueError
			if !errors.As(err, &value) || b.Len() > 0 {
				t.Errorf("%s: %v, %d bytes", name, err, b.Len())
			}
		}
		if r.Pictures() != nil {
			t.Errorf("%s: a picture", name)
		}
	}
	lump, err := block()
	if err != nil {
		t.Fatal(err)
	}
	lump.Mesh = lump.Mesh.Clone()
	lump.Mesh.Vertices[0].X = math.NaN()
	if lump.Pictures() != nil {
		t.Error("a corner that is no number: a picture")
	}
	for i := range lump.Mesh.Vertices {
		lump.Mesh.Vertices[i] = r3.Vec{}
	}
	if lump.Pictures() != nil {
		t.Error("a point: a picture")
	}
	r := sound
	r.Case.Name, r.Warnings = "x\x1b[2K\ncaution      none", []string{"a\rb\u202e"}
	text := page(t, r)
	for _, line := range strings.Split(strings.TrimSuffix(text, "\n"), "\n") {
		if units.Printable(line) != line || line == "caution      none" {
			t.Errorf("%q", line)
		}
	}
	for _, write := range []func(io.Writer) error{sound.WriteText, sound.WriteCSV} {
		if err := write(nil); !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("no writer: %v", err)
		}
	}
}

// TestIndependentPictures: what is drawn is what the result says: the curve by profile has
// every patch and its mark the thinnest, the shares by mesh rise to all of the area.
func TestIndependentPictures(t *testing.T) {
	r, err := bob()
	if err != nil {
		t.Fatal(err)
	}
	curves := r.Pictures()[0].Chart.Curves
	if n := len(r.Surface.Patches); len(curves) != 4 || len(curves[0].Points) != n || len(curves[3].Points) != 1 ||
		math.Abs(curves[3].Points[0][1]-1) > 1e-9 || curves[1].Points[0][1] != r.Case.MinThickness.In(units.Micrometre) {
		t.Errorf("%d patches, %+v", n, curves[1:])
	}
	m, err := block()
	if err != nil {
		t.Fatal(err)
	}
	p := m.Pictures()[0]
	shares := p.Chart.Curves[0].Points
	last := [2]float64{}
	for _, at := range shares {
		if at[0] < last[0] || at[1] < last[1] {
			t.Fatalf("the share falls from %v to %v", last, at)
		}
		last = at
	}
	if math.Abs(last[1]-100) > 1e-9 || math.Abs(last[0]-m.Coat.Max.In(units.Micrometre)) > 1e-9 || len(p.Views) != 6 ||
		!strings.Contains(p.Scale.Label, "ring marks") || math.Abs(p.Scale.Low-1) > 1e-9 {
		t.Errorf("shares end at %v, %d views, scale %+v", last, len(p.Views), p.Scale)
	}
}
