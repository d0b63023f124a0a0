package thinspot_test

import (
	"bytes"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path"
	"reflect"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

var update = flag.Bool("update", false, "write testdata/schema/case.json anew")

// TestPinnedSchema: the committed schema is that of the fields that are read; -update writes
// it anew.
func TestPinnedSchema(t *testing.T) {
	raw, err := thinspot.Schema()
	if err != nil {
		t.Fatal(err)
	}
	const name = "../../testdata/schema/case.json"
	if *update {
		if err := os.WriteFile(name, raw, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(name)
	if err != nil || !bytes.Equal(raw, want) {
		t.Errorf("%s is not the schema of the fields that are read: %v; -update, and read the difference", name, err)
	}
}

// again writes a case and reads it.
func again(t *testing.T, c thinspot.Case, open func(string) (io.ReadCloser, error)) (thinspot.Case, string) {
	t.Helper()
	var b bytes.Buffer
	if err := c.Write(&b); err != nil {
		t.Fatal(err)
	}
	text := b.String()
	back, err := thinspot.Read(&b, open)
	if err != nil {
		t.Fatalf("%v in\n%s", err, text)
	}
	return back, text
}

// same holds everything of two cases against each other to the last bit, but for the
// selector, which is a function: its marks are compared.
func same(a, b thinspot.Case) bool {
	if !a.PricePerGram.Equal(b.PricePerGram) || (a.Significant == nil) != (b.Significant == nil) {
		return false
	}
	a.PricePerGram, b.PricePerGram, a.Significant, b.Significant = decimal.Decimal{}, decimal.Decimal{}, nil, nil
	return reflect.DeepEqual(a, b)
}

// TestPropertyCaseWritten: a case that is written and read again is the same, the committed
// ones and others.
func TestPropertyCaseWritten(t *testing.T) {
	texts := []string{meshCase}
	list, err := fs.Glob(testdata.Files, "cases/*.json")
	if err != nil || len(list) < 4 {
		t.Fatal(list, err)
	}
	for _, name := range list {
		raw, err := testdata.Files.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts = append(texts, string(raw))
	}
	open := func(name string) (io.ReadCloser, error) {
		if strings.HasSuffix(name, "bunny.ply") {
			return os.Open("../mesh/testdata/" + path.Base(name))
		}
		return files(name)
	}
	for _, text := range texts {
		c, err := thinspot.Read(strings.NewReader(text), open)
		if err != nil {
			t.Fatal(err)
		}
		back, written := again(t, c, open)
		if !same(c, back) {
			t.Errorf("%s is not the same again:\n%s", c.Name, written)
		}
		c.MinThickness *= 2
		if same(c, back) {
			t.Errorf("%s: another minimum is the same", c.Name)
		}
	}
}

// length is one of a few digits or of all.
func length(rng *rand.Rand, low, high float64) units.Length {
	v := low + (high-low)*rng.Float64()
	if rng.IntN(2) == 0 {
		v = math.Round(v)
	}
	return units.Length(v) * units.Millimetre
}

func pick(rng *rand.Rand, words ...string) string { return words[rng.IntN(len(words))] }

// generated makes a case of either method.
func generated(rng *rand.Rand) thinspot.CaseFile {
	f := thinspot.CaseFile{Name: pick(rng, "", "bezel", "Zeiger \"fein\" <µ>"),
		Solution: bath.Bath{Name: "gold", Metal: "Au", Density: bath.Range[units.Density]{Low: 17000, High: 17000},
			Efficiency: bath.Range[units.Efficiency]{Low: 0.3, High: units.Efficiency(0.31 + 0.3*rng.Float64())},
			Source:     "demo data"},
		Conductivity: units.Conductivity(1 + 9*rng.Float64()), MinThickness: units.Length(1e-6 * (1 + 9*rng.Float64())),
		Currency: pick(rng, "", "EUR")}
	if rng.IntN(2) == 0 {
		f.Current = units.Current(0.1 + rng.Float64())
	} else {
		f.Voltage = units.Voltage(0.1 + rng.Float64())
	}
	if rng.IntN(2) == 0 {
		f.PricePerGram = decimal.New(int64(1+rng.IntN(10000)), -2)
	}
	if rng.IntN(2) == 0 {
		f.Marks = &thinspot.Region{Facing: &thinspot.FacingMark{Direction: pick(rng, "x", "-x", "z"),
			Within: float64(90 + rng.IntN(90))}}
	}
	if f.Marks == nil && rng.IntN(2) == 0 { // from the origin
		f.Marks = &thinspot.Region{Box: &thinspot.BoxMark{High: [3]units.Length{1, length(rng, 900, 999), 1}}}
	}
	law := func() *thinspot.CaseLaw {
		switch rng.IntN(4) {
		case 0:
			return &thinspot.CaseLaw{Model: "linear", Resistance: units.AreaResistance(1e-3 * (1 + rng.Float64()))}
		case 1:
			return &thinspot.CaseLaw{Model: "tafel", Exchange: units.CurrentDensity(1 + rng.Float64()), Alpha: 0.5,
				Temperature: 273.15 + 38.2}
		case 2:
			return &thinspot.CaseLaw{Model: "butler-volmer", Exchange: 1, Anodic: 0.4,
				Cathodic: units.Ratio(0.3 + 0.4*rng.Float64()), Temperature: units.Temperature(290 + 30*rng.Float64())}
		}
		return nil
	}
	if rng.IntN(2) == 0 {
		r := length(rng, 5, 20)
		parts := []thinspot.Turned{{CaseSurface: thinspot.CaseSurface{Name: "bob", Law: law()}}}
		switch rng.IntN(3) {
		case 0:
			parts[0].Ball = &thinspot.Ball{Radius: r, Height: 150 * units.Millimetre}
		case 1:
			parts[0].Rod = &thinspot.Rod{Radius: r, Low: 100 * units.Millimetre, High: length(rng, 120, 180)}
		case 2:
			parts[0].Profile = &thinspot.Contour{Steps: []thinspot.ProfileStep{ // from the origin
				{To: [2]units.Length{r, 0}}, {To: [2]units.Length{r, 0.05}, By: "arc", Via: &[2]units.Length{r + 0.002, 0.025}},
				{To: [2]units.Length{0, 0.05}, By: pick(rng, "", "line")}}}
		}
		f.Method = pick(rng, "", "profile")
		f.ByProfile.Parts = parts
		if parts[0].Profile == nil && rng.IntN(2) == 0 { // none lies on the bottom
			f.ByProfile.Tank = &thinspot.RoundTank{Radius: length(rng, 100, 200), Depth: length(rng, 250, 400)}
			f.ByProfile.Parts = append(parts, thinspot.Turned{CaseSurface: thinspot.CaseSurface{Kind: "anode"},
				Tube: &thinspot.Sleeve{Inner: 80 * units.Millimetre, Outer: 82 * units.Millimetre, Low: 0.05, High: 0.2}})
		} else {
			f.ByProfile.Parts = append(parts, thinspot.Turned{CaseSurface: thinspot.CaseSurface{Kind: "robber"},
				Torus: &thinspot.CaseRing{Radius: 0.06, Height: length(rng, 100, 200), Thickness: 0.003}})
		}
		return f
	}
	f.Method = "mesh"
	at := [3]units.Length{length(rng, 90, 110), 0.1, 0.11}
	p := thinspot.CasePart{CaseSurface: thinspot.CaseSurface{Kind: "cathode", Law: law()}, Panel: 8 * units.Millimetre,
		Grade: float64(rng.IntN(3)),
		Hung: thinspot.Hung{At: &at,
			Turn: []thinspot.Turn{{Axis: pick(rng, "x", "y", "z"), Degrees: 360 * rng.Float64()}}}}
	a, b := length(rng, 20, 30), length(rng, 6, 12)
	switch rng.IntN(7) {
	case 0:
		p.Box = &thinspot.Box{Length: a, Width: b, Height: b}
	case 1:
		p.Plate = &thinspot.Plate{Length: a, Width: a, Thickness: b, EdgeRadius: b / 4}
	case 2:
		p.Cylinder = &thinspot.Cylinder{Diameter: b, Length: a}
	case 3:
		p.Tube = &thinspot.Tube{Outer: a, Inner: b, Length: a}
	case 4:
		p.Sphere = &thinspot.Sphere{Diameter: a}
	case 5:
		p.Torus = &thinspot.Torus{Centre: a, Tube: b}
	case 6:
		p.Cup = &thinspot.Cup{Outer: a, Height: a, Recess: b, Depth: b}
	}
	f.ByMesh = thinspot.ByMesh{Parts: []thinspot.CasePart{p, {CaseSurface: thinspot.CaseSurface{Kind: "anode"},
		Named:  mesh.Named{File: "rod.stl", Unit: mesh.FileUnit{Length: units.Millimetre}, Repair: true},
		Refine: rng.IntN(2), Hung: thinspot.Hung{At: &[3]units.Length{0.2, 0.1, 0.11}}}}}
	if rng.IntN(2) == 0 {
		f.ByMesh.Tank = &thinspot.CaseTank{Length: 0.3, Width: length(rng, 190, 220), Depth: 0.22,
			Panel: 50 * units.Millimetre}
		f.ByMesh.Parts = append(f.ByMesh.Parts, thinspot.CasePart{CaseSurface: thinspot.CaseSurface{Kind: "anode"},
			Wall: pick(rng, "low x", "high y")})
	}
	if rng.IntN(2) == 0 {
		share := units.Ratio(rng.Float64())
		f.ByMesh.Places = []thinspot.CasePlace{{Share: share}, {Share: 1 - share,
			Hung: thinspot.Hung{Turn: []thinspot.Turn{{Axis: "z", Degrees: 90}}, At: &[3]units.Length{0.1, 0.1, 0.1}}}}
	}
	return f
}

// TestPropertyGeneratedCases: cases that a program makes are written, read and written again
// without a difference.
func TestPropertyGeneratedCases(t *testing.T) {
	rng := rand.New(rand.NewPCG(41, 42))
	met := map[string]int{}
	for i := range 120 {
		f := generated(rng)
		c, text := again(t, thinspot.Case{CaseFile: f}, files)
		if !reflect.DeepEqual(c.ByMesh, f.ByMesh) || !reflect.DeepEqual(c.ByProfile, f.ByProfile) ||
			!reflect.DeepEqual(c.Marks, f.Marks) || c.Conductivity != f.Conductivity || c.MinThickness != f.MinThickness ||
			c.Current != f.Current || c.Voltage != f.Voltage || !c.PricePerGram.Equal(f.PricePerGram) || c.Name != f.Name {
			t.Fatalf("case %d is not what was written:\n%+v\n%s", i, f, text)
		}
		if back, other := again(t, c, files); !same(c, back) || other != text {
			t.Fatalf("case %d is not the same again:\n%s\n%s", i, text, other)
		}
		met[fmt.Sprintf("mesh %t", c.Mesh != nil)]++
	}
	if len(met) != 2 {
		t.Error(met)
	}
}

// TestPropertyCaseNotWritten: what no file can hold is an error, and so is no writer.
func TestPropertyCaseNotWritten(t *testing.T) {
	f := generated(rand.New(rand.NewPCG(1, 2)))
	if err := f.Write(nil); err == nil {
		t.Error("nil took a case")
	}
	f.MinThickness = units.Length(math.NaN())
	if err := f.Write(io.Discard); err == nil || !strings.Contains(err.Error(), "min_thickness") {
		t.Error(err)
	}
}

// TestPropertySilentHazards: a bath whose hazards nobody listed is not written as one without.
func TestPropertySilentHazards(t *testing.T) {
	const list = `"hazards": ["cyanide", "acid"], `
	listed := bobCase(t)
	silent := strings.Replace(listed, list, "", 1)
	if silent == listed {
		t.Fatal("the case has no such list")
	}
	for text, want := range map[string]bool{listed: true, silent: false} {
		c, err := thinspot.Read(strings.NewReader(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, out := again(t, c, nil); strings.Contains(out, `"hazards"`) != want {
			t.Errorf("want a list of hazards: %t\n%s", want, out)
		}
	}
}

// TestPropertyConditions: a member that goes with another word or member is unknown beside
// the wrong one.
func TestPropertyConditions(t *testing.T) {
	for _, s := range []struct{ in, old, new, want string }{
		{bobCase(t), `"model": "tafel", `, `"model": "linear", `, "known here are model, resistance"},
		{bobCase(t), `"model": "tafel", `, `"resistance": "1 Ω·m²", "model": "tafel", `,
			"known here are model, exchange, alpha, temperature"},
		{bobCase(t), `"model": "tafel", `, ``, "known here are model"},
		{bobCase(t), `{"to": ["40 mm", "147 mm"]},`, `{"to": ["40 mm", "147 mm"], "via": ["40 mm", "147 mm"]},`,
			"known here are to, by"},
		{bobCase(t), `"min_thickness"`,
			`"significant": {"away_from_edges": {"sharper_than": 30, "distance": "2 mm"}}, "min_thickness"`,
			`goes with "method": "mesh"`},
		{meshCase, `"grade": 1`, `"unit": "mm"`, "unknown field"},
		{meshCase, `"wall": "low x"`, `"wall": "low x", "panel": "3 mm"`, "unknown field"},
		{meshCase, `"wall": "low x"`, `"wall": "low x", "file": "rod.stl", "unit": "mm"`, "need one of box, plate"},
	} {
		text := strings.Replace(s.in, s.old, s.new, 1)
		if _, err := readMesh(text); text == s.in || err == nil || !strings.Contains(err.Error(), s.want) {
			t.Errorf("%s: %v, want %q", s.new, err, s.want)
		}
	}
}
