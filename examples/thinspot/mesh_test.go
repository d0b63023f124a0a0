package main

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/csv"
	"encoding/json"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/shopspring/decimal"
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// blockCase is a small block before an anode wall on its left.
const blockCase = `{
  "format": "laydown case 1", "case": "block before a wall", "method": "mesh",
  "bath": {"name": "gold", "metal": "Au", "density": "17 g/cm³", "efficiency": [{"current_density": "0.1 A/dm²", "efficiency": "42 %"}, {"current_density": "2 A/dm²", "efficiency": "22 %"}]},
  "conductivity": "6 S/m",
  "tank": {"length": "160 mm", "width": "100 mm", "depth": "100 mm", "panel": "25 mm"},
  "current": "0.15 A", "min_thickness": "1 µm", "price_per_g": "98.50", "currency": "EUR",
  "parts": [
    {"name": "block", "kind": "cathode", "law": {"model": "tafel", "exchange": "1 A/m²", "alpha": 0.5, "temperature": "38 °C"},
     "plate": {"length": "30 mm", "width": "24 mm", "thickness": "16 mm", "edge_radius": "4 mm"}, "panel": "7 mm", "grade": 1, "at": ["70 mm", "50 mm", "50 mm"]},
    {"name": "wall", "kind": "anode", "wall": "low x"}
  ]
}`

// TestMeshFigures: a case by mesh gives every figure, and its files hang
// together with it.
func TestMeshFigures(t *testing.T) {
	testdata.SlowOnly(t)
	dir := t.TempDir()
	file := func(name string) string { return filepath.Join(dir, name) }
	status, out, bad := call(t, blockCase, "-json", "-picture", file("p.png"), "-picture", file("p.svg"), "-ply",
		file("p.ply"), "-csv", file("p.csv"), "-")
	if status != 0 || bad != "" {
		t.Fatalf("status %d, %s", status, bad)
	}
	var f map[string]any
	if err := json.Unmarshal([]byte(out), &f); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"area_cm2", "volume_cm3", "faces", "total_current_A", "cell_voltage_V", "min_um",
		"average_um", "max_um", "p05_um", "p95_um",
		"min_to_average", "minutes_to_min_thickness", "current_balance", "error_estimate"} {
		if v, ok := f[name].(float64); !ok || math.IsNaN(v) {
			t.Errorf("%s is %v", name, f[name])
		}
	}
	v := func(name string) float64 { return f[name].(float64) }
	if math.Abs(v("min_um")-1) > 1e-9 || v("error_estimate") > 0.05 || math.Abs(v("current_balance")) > 0.01 ||
		v("min_to_average") >= 1 || f["unresolved"].(bool) {
		t.Errorf("%v", f)
	}
	at := f["thinnest_at_mm"].([]any)
	if x := at[0].(float64); x < 70 {
		t.Errorf("the thinnest spot is at x = %v mm, towards the anode", x)
	}
	if list := f["arrangements"].([]any); len(list) < 6 {
		t.Errorf("%d arrangements", len(list))
	}

	// PLY: the mesh reads back, with one thickness a face.
	raw, err := os.ReadFile(file("p.ply"))
	if err != nil {
		t.Fatal(err)
	}
	m, err := mesh.ReadPLY(bytes.NewReader(raw), units.Millimetre)
	if err != nil {
		t.Fatal(err)
	}
	area, err := mesh.Area(m)
	if err != nil || math.Abs(area.In(units.SquareCentimetre)/v("area_cm2")-1) > 1e-9 || !bytes.Contains(raw,
		[]byte("thickness_um")) || len(m.Triangles) != int(v("patches")) {
		t.Errorf("%d faces, %v, %v", len(m.Triangles), area, err)
	}

	// CSV: one row a face, areas and mean as told.
	table, err := os.Open(file("p.csv"))
	if err != nil {
		t.Fatal(err)
	}
	defer table.Close()
	rows, err := csv.NewReader(table).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var sum, metal float64
	left, right := math.Inf(-1), math.Inf(-1) // thickest on each side
	for _, row := range rows[1:] {
		x, _ := strconv.ParseFloat(row[1], 64)
		a, _ := strconv.ParseFloat(row[7], 64)
		s, err := strconv.ParseFloat(row[9], 64)
		if err != nil {
			t.Fatal(err)
		}
		sum, metal = sum+a, metal+a*s
		if x < 70 {
			left = math.Max(left, s)
		} else {
			right = math.Max(right, s)
		}
	}
	if math.Abs(sum/v("area_cm2")-1) > 1e-4 || math.Abs(metal/sum/v("average_um")-1) > 1e-4 || left <= right {
		t.Errorf("table: %v cm², mean %v µm, thickest %v left and %v right", sum, metal/sum, left, right)
	}
	pictures(t, file("p.png"), file("p.svg"))
}

// pictures looks at the views: the side towards the anode is lighter than the
// other one, and there are words.
func pictures(t *testing.T, pixels, drawing string) {
	t.Helper()
	f, err := os.Open(pixels)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	b := img.Bounds()
	light := func(x, y float64) float64 { // at a share of the width and centimetres from the top
		return luminance(img.At(int(x/18*float64(b.Dx())), int(y/23.4*float64(b.Dy()))))
	}
	// The middle of the views in the second column: from +x above, from -x below.
	away, towards := light(9, 4.0), light(9, 10.2)
	if away >= towards {
		t.Errorf("lightness %v away from the anode, %v towards it", away, towards)
	}
	svg, err := os.ReadFile(drawing)
	if err != nil || !bytes.Contains(svg, []byte("thickness, µm")) || bytes.Count(svg, []byte("<image")) != 6 ||
		!bytes.Contains(svg, []byte("front (from -y)")) {
		t.Error("the drawing lacks its views or words", err)
	}
}

func luminance(c color.Color) float64 {
	r, g, b, _ := c.RGBA()
	return 0.2126*float64(r) + 0.7152*float64(g) + 0.0722*float64(b)
}

// TestRamp: lightness rises all along the scale, in equal steps by half or more,
// so that grey paper and every eye can read it.
func TestRamp(t *testing.T) {
	r := ramp{1, 3}
	last := -1.0
	for k := range 101 {
		l := luminance(r.at(1 + 2*float64(k)/100))
		if l <= last {
			t.Fatalf("step %d is not lighter than the one before", k)
		}
		last = l
	}
	if r.at(-5) != r.at(1) || r.at(9) != r.at(3) || (ramp{2, 2}).at(2).A != 255 {
		t.Error("outside the scale")
	}
	if marks(0, 0) != nil {
		t.Error("marks on nothing")
	}
	for _, span := range [][2]float64{{0, 1}, {1, 1.06}, {0.0002, 0.0009}, {0, 123456}} {
		list := marks(span[0], span[1])
		seen := map[string]bool{}
		for _, m := range list {
			if seen[m.Label] || strings.HasPrefix(m.Label, "-") {
				t.Errorf("%v: label %q twice or below zero", span, m.Label)
			}
			seen[m.Label] = true
		}
		if len(list) < 3 || len(list) > 12 {
			t.Errorf("%v: %d marks", span, len(list))
		}
	}
}

// TestIndependentMethods: one body by its profile and by a mesh.
func TestIndependentMethods(t *testing.T) {
	testdata.SlowOnly(t)
	const head = `{"format": "laydown case 1", %METHOD% "bath": {"name": "gold", "metal": "Au", "efficiency": "40 %"}, "conductivity": "6 S/m",
	"current": "0.2 A", "min_thickness": "1 µm", "parts": [{"name": "bob", "kind": "cathode", "law": {"model": "linear", "resistance": "2e-4 Ω·m²"}, %BODY%}]}`
	get := func(method, body string) map[string]any {
		text := strings.NewReplacer("%METHOD%", method, "%BODY%", body).Replace(head)
		status, out, bad := call(t, text, "-json", "-no-advice", "-")
		if status != 0 {
			t.Fatalf("status %d, %s", status, bad)
		}
		var f map[string]any
		if err := json.Unmarshal([]byte(out), &f); err != nil {
			t.Fatal(err)
		}
		return f
	}
	a := get("", `"torus": {"radius": "30 mm", "height": "0 mm", "thickness": "16 mm"}`)
	b := get(`"method": "mesh",`, `"torus": {"centre_diameter": "60 mm", "tube_diameter": "16 mm"}, "panel": "4 mm"`)
	// Facets take 3 % of the volume; the distribution is far less shy of them.
	for name, tol := range map[string]float64{"min_to_average": 0.01, "cell_voltage_V": 0.005, "area_cm2": 0.015,
		"volume_cm3": 0.03, "minutes_to_min_thickness": 0.02, "p95_um": 0.01} {
		x, y := a[name].(float64), b[name].(float64)
		if math.Abs(y/x-1) > tol {
			t.Errorf("%s: %v by profile, %v by mesh", name, x, y)
		}
	}
}

// TestPositions: the block turned half the time is even on both sides.
func TestPositions(t *testing.T) {
	testdata.SlowOnly(t)
	text := strings.Replace(blockCase, `"parts": [`,
		`"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`, 1)
	read := func(text string, args ...string) map[string]any {
		status, out, bad := call(t, text, append(args, "-json", "-quick", "-")...)
		if status != 0 {
			t.Fatalf("status %d, %s", status, bad)
		}
		var f map[string]any
		if err := json.Unmarshal([]byte(out), &f); err != nil {
			t.Fatal(err)
		}
		return f
	}
	still, turned := read(blockCase), read(text, "-no-advice")
	ratio := func(f map[string]any) float64 { return f["min_to_average"].(float64) }
	if ratio(turned) <= ratio(still) || turned["error_estimate"] != nil {
		t.Errorf("still %v, turned %v, error %v", ratio(still), ratio(turned), turned["error_estimate"])
	}
	for _, v := range still["arrangements"].([]any) {
		o := v.(map[string]any)
		if o["name"] == "turned half round half of the time" && math.Abs(o["min_to_average"].(float64)-ratio(turned)) > 1e-6 {
			t.Errorf("turned half the time: %v as advice, %v as a case", o["min_to_average"], ratio(turned))
		}
	}
	marked := strings.Replace(blockCase, `"min_thickness"`,
		`"significant": {"facing": {"direction": "-x", "within": 40}}, "min_thickness"`, 1)
	front := read(marked, "-no-advice")
	if ratio(front) <= ratio(still) || front["significant_cm2"].(float64) >= 0.5*front["area_cm2"].(float64) {
		t.Errorf("the side towards the anode: %v of %v", ratio(front), ratio(still))
	}
}

// TestAnodeInside: a cup is offered an anode rod, and gains by it.
func TestAnodeInside(t *testing.T) {
	testdata.SlowOnly(t)
	cup := regexp.MustCompile(`"plate": \{[^}]*\}, "panel": "7 mm", "grade": 1`).ReplaceAllString(blockCase,
		`"cup": {"outer": "40 mm", "height": "34 mm", "recess": "32 mm", "depth": "29 mm"}, "panel": "7 mm", "grade": 1`)
	status, out, bad := call(t, cup, "-json", "-quick", "-")
	if status != 0 {
		t.Fatalf("status %d, %s", status, bad)
	}
	var f struct {
		MinToAverage float64 `json:"min_to_average"`
		Arrangements []struct {
			Name         string
			No           *string
			MinToAverage *float64 `json:"min_to_average"`
		}
	}
	if err := json.Unmarshal([]byte(out), &f); err != nil {
		t.Fatal(err)
	}
	for _, o := range f.Arrangements {
		if o.Name == "an anode inside" {
			if o.MinToAverage == nil || *o.MinToAverage < 1.2*f.MinToAverage {
				t.Errorf("an anode inside: %v, %v, without %v", o.MinToAverage, o.No, f.MinToAverage)
			}
			return
		}
	}
	t.Error("an anode inside is not among", f.Arrangements)
}

// TestShippedMeshes: the cases in testdata run, the figure with its file.
func TestShippedMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	for _, name := range []string{"bezel", "figure"} {
		status, out, bad := call(t, "", "-quick", "-no-advice", filepath.Join("..", "..", "testdata", "cases", name+".json"))
		if status != 0 || bad != "" || !strings.Contains(out, "thinnest     1.000 µm at x =") || !strings.Contains(out,
			"not asked for") {
			t.Errorf("%s: status %d, %s\n%s", name, status, bad, out)
		}
	}
}

func TestWrongMeshRuns(t *testing.T) {
	for _, c := range []struct {
		stdin  string
		args   []string
		status int
		want   string
	}{
		{"", []string{"-ply", "x.ply"}, 1, "by profile"},
		{"", []string{"-csv", "case.json"}, 2, "does not end in .csv"},
		{"", []string{"-ply", "x.stl"}, 2, "does not end in .ply"},
		{"", []string{"-memory", "0"}, 2, "gigabytes above 0"},
		{"", []string{"-memory", "NaN"}, 2, "gigabytes above 0"},
		{blockCase, []string{"-memory", "0.001", "-"}, 1, `("panel" makes none larger), or -memory 1`},
		{strings.Replace(blockCase, `"at": ["70 mm"`, `"at": ["10 mm"`, 1), []string{"-"}, 1, ""},
		{strings.Replace(blockCase,
			`"plate": {"length": "30 mm", "width": "24 mm", "thickness": "16 mm", "edge_radius": "4 mm"}`,
			`"file": "none.stl", "unit": "1 mm"`, 1), []string{"-"}, 1, "cannot be opened"},
		{blockCase, []string{"-no-advice", "-quick", "-ply", "/no/such/folder/x.ply", "-"}, 1, "no/such/folder"},
		{blockCase, []string{"-no-advice", "-quick", "-picture", "/no/such/folder/x.svg", "-"}, 1, "no/such/folder"},
	} {
		status, _, bad := call(t, c.stdin, c.args...)
		if status != c.status || !strings.Contains(bad, c.want) {
			t.Errorf("%v: status %d, %q, want %d, %q", c.args, status, bad, c.status, c.want)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, bad bytes.Buffer
	if status := run(ctx, []string{"-"}, strings.NewReader(blockCase), &out, &bad); status != 1 || out.Len() > 0 {
		t.Errorf("cancelled: status %d, %q", status, out.String())
	}
}

// TestWindow: what is plated outside the bath's window is told.
func TestWindow(t *testing.T) {
	text := strings.Replace(blockCase, `"density": "17 g/cm³",`,
		`"density": "17 g/cm³", "window": {"low": "0.45 A/dm²", "high": "0.7 A/dm²"},`, 1)
	status, out, bad := call(t, text, "-quick", "-no-advice", "-")
	if status != 0 || !strings.Contains(out, "above the bath's window, over 0.70 A/dm²: it may burn") ||
		!strings.Contains(out, "below the bath's window, under 0.45 A/dm²") {
		t.Errorf("status %d, %s\n%s", status, bad, out)
	}
	if _, out, _ := call(t, blockCase, "-quick", "-no-advice", "-"); strings.Contains(out, "window") {
		t.Errorf("a window that is not given:\n%s", out)
	}
}

// TestPropertyCustomersDrawing: no name that the case or the command line reads
// is written over, whichever flag names it and by whatever path.
func TestPropertyCustomersDrawing(t *testing.T) {
	dir := t.TempDir()
	part := filepath.Join(dir, "part.ply")
	var b bytes.Buffer
	body, err := mesh.Sphere(10*units.Millimetre, mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	if err := mesh.WritePLY(&b, body, units.Millimetre, mesh.Skin{}); err != nil {
		t.Fatal(err)
	}
	drawing := b.Bytes()
	text := `{"format": "laydown case 1", "case": "finial", "method": "mesh", "bath": {"name": "gold, acid cyanide", "metal": "Au", "efficiency": "35 %", "pH": 4.4},
		"conductivity": "6 S/m", "current": "0.1 A", "min_thickness": "1 µm", "parts": [{"name": "finial", "kind": "cathode", "file": "part.ply", "unit": "mm", "at": ["50 mm", "50 mm", "50 mm"]}, {"name": "anode", "kind": "anode", "wall": "low x"}], "tank": {"length": "100 mm", "width": "100 mm", "depth": "100 mm"}}`
	file := filepath.Join(dir, "case.json")
	for name, raw := range map[string][]byte{part: drawing, file: []byte(text)} {
		if err := os.WriteFile(name, raw, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	link := filepath.Join(dir, "link.ply")
	if err := os.Symlink(part, link); err != nil {
		t.Fatal(err)
	}
	for _, args := range [][]string{{"-ply", part}, {"-ply", link}, {"-csv", file}, {"-picture", file}, {"-ply",
		filepath.Join(dir, ".", "part.ply")}} {
		var out, bad bytes.Buffer
		status := run(t.Context(), append(append([]string{"-quick", "-no-advice"}, args...), file), nil, &out, &bad)
		if status != 2 || bad.Len() == 0 {
			t.Errorf("%v: status %d, %s", args, status, &bad)
		}
		for name, want := range map[string][]byte{part: drawing, file: []byte(text)} {
			if got, _ := os.ReadFile(name); !bytes.Equal(got, want) {
				t.Fatalf("%v: %s was written over", args, name)
			}
		}
	}
}

// blockFigures runs the block, changed by pairs of old and new text.
func blockFigures(t *testing.T, args []string, change ...string) map[string]any {
	t.Helper()
	text := strings.NewReplacer(change...).Replace(blockCase)
	if len(change) > 0 && text == blockCase {
		t.Fatalf("%q is not in the case", change)
	}
	status, out, bad := call(t, text, append(args, "-json", "-")...)
	if status != 0 {
		t.Fatalf("status %d, %s", status, bad)
	}
	var f map[string]any
	if err := json.Unmarshal([]byte(out), &f); err != nil {
		t.Fatal(err)
	}
	return f
}

// arrangementOf finds one of the other arrangements.
func arrangementOf(t *testing.T, f map[string]any, name string) map[string]any {
	t.Helper()
	list, _ := f["arrangements"].([]any)
	for _, v := range list {
		if o := v.(map[string]any); strings.HasPrefix(o["name"].(string), name) {
			return o
		}
	}
	t.Fatalf("no %q among %v", name, list)
	return nil
}

// TestErrorOnTheSignificantSurface: the error is that of the thinnest spot that counts,
// and is there for several positions too. A finer mesh of the case lands within it.
func TestErrorOnTheSignificantSurface(t *testing.T) {
	testdata.SlowOnly(t)
	const marks = `"significant": {"facing": {"direction": "-x", "within": 40}}, "min_thickness"`
	const positions = `"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`
	for name, change := range map[string][]string{
		"marks":     {`"min_thickness"`, marks},
		"positions": {`"parts": [`, positions},
	} {
		f := blockFigures(t, []string{"-no-advice"}, change...)
		e, ok := f["error_estimate"].(float64)
		if !ok || !(e > 0 && e < 0.1) || f["unresolved"].(bool) || f["error_unknown_because"] != nil {
			t.Errorf("%s: error %v, %v", name, f["error_estimate"], f["error_unknown_because"])
			continue
		}
		finer := blockFigures(t, []string{"-no-advice", "-quick"}, append(change, `"panel": "7 mm"`, `"panel": "3 mm"`)...)
		if d := math.Abs(finer["min_to_average"].(float64)/f["min_to_average"].(float64) - 1); d > 2*e {
			t.Errorf("%s: a finer mesh is off by %v, the error was to be %v", name, d, e)
		}
		if finer["error_estimate"] != nil || finer["error_unknown_because"] != "not asked for" {
			t.Errorf("%s, quick: %v because %v", name, finer["error_estimate"], finer["error_unknown_because"])
		}
	}
}

// TestPositionsAreChanged: where the case turns the part, every arrangement is
// held against the turned one, and turning is not offered again.
func TestPositionsAreChanged(t *testing.T) {
	testdata.SlowOnly(t)
	f := blockFigures(t, []string{"-quick"},
		`"parts": [`, `"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`)
	half, still := arrangementOf(t, f, "half the current"), arrangementOf(t, f, "as it hangs")
	if still["min_to_average"].(float64) != f["min_to_average"].(float64) ||
		half["min_to_average"].(float64) <= still["min_to_average"].(float64) || half["saved_g"].(float64) <= 0 ||
		half["minutes"].(float64) < 1.3*still["minutes"].(float64) {
		t.Errorf("as it hangs %v, half the current %v", still, half)
	}
	if no, _ := arrangementOf(t, f, "turned half")["no"].(string); !strings.Contains(no, "positions of its own") {
		t.Errorf("turned half: %q", no)
	}
	if no, _ := arrangementOf(t, f, "the anodes half")["no"].(string); !strings.Contains(no, "walls of the tank") {
		t.Errorf("anodes farther away: %q", no)
	}
}

// TestRobbedByShares: what a robber takes counts by the share of the time.
func TestRobbedByShares(t *testing.T) {
	testdata.SlowOnly(t)
	text := strings.Replace(blockCase, `{"name": "wall"`,
		`{"name": "thief", "kind": "robber", "sphere": {"diameter": "8 mm"}, "panel": "4 mm", "at": ["70 mm", "50 mm", "25 mm"]}, {"name": "wall"`, 1)
	c, err := jobfile.ReadCase(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	e := effort{memory: 1e9, progress: func(string, string, int, int) {}, say: t.Logf}
	r, p := &result{c: c}, c.Mesh.Problem
	once, err := r.positions(context.Background(), []jobfile.Position{{Share: 1, Problem: p}}, "once", e)
	if err != nil {
		t.Fatal(err)
	}
	twice, err := r.positions(context.Background(), []jobfile.Position{{Share: 0.3, Problem: p}, {Share: 0.7, Problem: p}},
		"twice", e)
	if err != nil {
		t.Fatal(err)
	}
	// What the part takes is not robbed: the two together are the current of the cell.
	own := 0.0
	for _, v := range once.way.Surface.Patches {
		own += float64(v.Density) * float64(v.Area)
	}
	total, _ := p.Drive.Current()
	if all := own + float64(once.way.Robbed); !(math.Abs(all/float64(total)-1) <= 1e-3) {
		t.Errorf("part %v A and robber %v A, the cell has %v", own, once.way.Robbed, total)
	}
	if a, b := float64(once.way.Robbed), float64(twice.way.Robbed); !(a > 0) || math.Abs(b/a-1) > 1e-9 {
		t.Errorf("robbed of %v A in one position, %v A in the same one twice", a, b)
	}
	for i, v := range once.way.Surface.Patches {
		if w := twice.way.Surface.Patches[i]; math.Abs(float64(w.Density/v.Density)-1) > 1e-9 {
			t.Fatalf("patch %d: %v once, %v in the same position twice", i, v.Density, w.Density)
		}
	}
}

// TestAnodeFarther: a rod before a block is moved out, and the coat gets evener;
// where there is no room it says so.
func TestAnodeFarther(t *testing.T) {
	testdata.SlowOnly(t)
	for _, s := range []struct {
		x    string
		fits bool
	}{{"30 mm", true}, {"15 mm", false}} {
		text := strings.Replace(blockCase, `{"name": "wall", "kind": "anode", "wall": "low x"}`,
			`{"name": "rod", "kind": "anode", "box": {"length": "4 mm", "width": "40 mm", "height": "60 mm"}, "panel": "15 mm", "grade": 1, "at": ["`+s.x+`", "50 mm", "50 mm"]}`, 1)
		c, err := jobfile.ReadCase(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		e := effort{memory: 1e9, progress: func(string, string, int, int) {}, say: t.Logf}
		r, list := &result{c: c}, []jobfile.Position{{Share: 1, Problem: c.Mesh.Problem}}
		still, err := r.positions(context.Background(), list, "still", e)
		if err != nil {
			t.Fatal(err)
		}
		far, err := others{r, list, still, e}.farther(c.Mesh.Problem).way(context.Background())
		if !s.fits {
			if err == nil || !strings.Contains(err.Error(), "would not fit into the tank") {
				t.Errorf("at %s: %v", s.x, err)
			}
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		spread := func(s coat.Surface) float64 {
			least, most := math.Inf(1), 0.0
			for _, p := range s.Patches {
				least, most = math.Min(least, float64(p.Density)), math.Max(most, float64(p.Density))
			}
			return most / least
		}
		if a, b := spread(far.Surface), spread(still.way.Surface); a >= b {
			t.Errorf("most over least: %v farther, %v still", a, b)
		}
	}
}

// TestThicknessInPLY: the file carries the thickness of each face, and its least
// is what the figures tell.
func TestThicknessInPLY(t *testing.T) {
	file := filepath.Join(t.TempDir(), "x.ply")
	f := blockFigures(t, []string{"-quick", "-no-advice", "-ply", file})
	raw, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	head, body, found := bytes.Cut(raw, []byte("end_header\n"))
	if !found {
		t.Fatal("no header")
	}
	// Three 64-bit coordinates a corner; then for each face one byte and three
	// 32-bit indices, the thickness, three bytes of colour: as the header says.
	var vertices, faces int
	size := map[string]int{"char": 1, "uchar": 1, "short": 2, "ushort": 2, "int": 4, "uint": 4, "float": 4, "double": 8}
	at, row, in, wide := 0, 0, "", 0
	for _, line := range strings.Split(string(head), "\n") {
		w := strings.Fields(line)
		switch {
		case len(w) == 3 && w[0] == "element":
			in = w[1]
			n := 0
			for _, c := range w[2] {
				n = 10*n + int(c-'0')
			}
			if in == "vertex" {
				vertices = n
			} else {
				faces = n
			}
		case len(w) == 5 && w[1] == "list":
			row += size[w[2]] + 3*size[w[3]]
		case len(w) == 3 && w[0] == "property" && in == "vertex":
			wide += size[w[1]]
		case len(w) == 3 && w[0] == "property":
			if w[2] == "thickness_um" {
				at = row
				if w[1] != "double" {
					t.Fatalf("thickness is a %s", w[1])
				}
			}
			row += size[w[1]]
		}
	}
	body = body[vertices*wide:]
	if len(body) != faces*row || at == 0 || faces != int(f["patches"].(float64)) {
		t.Fatalf("%d bytes for %d faces of %d", len(body), faces, row)
	}
	least, most := math.Inf(1), 0.0
	for i := range faces {
		s := math.Float64frombits(binary.LittleEndian.Uint64(body[i*row+at:]))
		least, most = math.Min(least, s), math.Max(most, s)
	}
	if math.Abs(least-1) > 1e-9 || math.Abs(most/f["max_um"].(float64)-1) > 1e-9 {
		t.Errorf("from %v to %v µm, the figures say %v", least, most, f["max_um"])
	}
}

// TestMoney: the mass is taken as it is printed, to a tenth of a milligram.
func TestMoney(t *testing.T) {
	r := result{c: jobfile.Case{PricePerGram: decimal.RequireFromString("98.50"), Currency: "EUR"}}
	if got := r.money(53.5 * units.Milligram); got != " (5.27 EUR)" { // 0.0535 · 98.50 = 5.26975
		t.Errorf("53.5 mg: %q", got)
	}
	if got := (&result{}).money(units.Gram); got != "" {
		t.Errorf("without a price: %q", got)
	}
}

// TestBar: the bar shows on nothing but a terminal.
func TestBar(t *testing.T) {
	var b bytes.Buffer
	bar := newBar(&b, false)
	bar.step("mesh", "solve", 1, 2)
	bar.clear()
	if b.Len() != 0 {
		t.Errorf("%q", b.String())
	}
	bar.on = true
	bar.step("mesh", "solve", 1, 2)
	bar.clear()
	if s := b.String(); !strings.Contains(s, "############............") || !strings.Contains(s, "mesh: solve") ||
		!strings.HasSuffix(s, "\r") {
		t.Errorf("%q", s)
	}
}

// TestMarkedProfile: marks hold for every arrangement of a case by profile: the
// caps of the bob are evener than the bob with its groove.
func TestMarkedProfile(t *testing.T) {
	testdata.SlowOnly(t)
	raw, err := testdata.Files.ReadFile("cases/bob.json")
	if err != nil {
		t.Fatal(err)
	}
	text := strings.Replace(string(raw), `"min_thickness"`,
		`"significant": {"box": {"low": ["0 mm", "0 mm", "0 mm"], "high": ["36 mm", "0 mm", "300 mm"]}}, "min_thickness"`, 1)
	status, out, bad := call(t, text, "-json", "-")
	if status != 0 {
		t.Fatal(status, bad)
	}
	var f map[string]any
	if err := json.Unmarshal([]byte(out), &f); err != nil {
		t.Fatal(err)
	}
	// Two caps of 6 mm on a radius of 36 mm.
	if want := 2 * math.Pi * (36*36 + 6*6) / 100; math.Abs(f["significant_cm2"].(float64)/want-1) > 0.01 ||
		f["min_to_average"].(float64) < 0.8 {
		t.Errorf("%v cm² promised, by hand %v; ratio %v", f["significant_cm2"], want, f["min_to_average"])
	}
	for _, name := range []string{"half the current", "a robber ring", "a shield", "upside down"} {
		if o := arrangementOf(t, f, name); o["no"] != nil || o["min_to_average"].(float64) < 0.7 {
			t.Errorf("%v", o)
		}
	}
}

// TestHiddenSpot: the wall of a deep recess is seen from no side, its floor and the
// outside each from one; the picture says so instead of promising a ring.
func TestHiddenSpot(t *testing.T) {
	cup, err := mesh.Cup(40*units.Millimetre, 30*units.Millimetre, 20*units.Millimetre, 25*units.Millimetre,
		mesh.Grid{Size: 2 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	body := boxOf(cup.Vertices)
	low := body.low
	for _, s := range []struct {
		name       string
		at, normal r3.Vec
		views      int
	}{
		{"wall of the recess", r3.Vec{X: 0.01 * math.Cos(0.3), Y: 0.01 * math.Sin(0.3), Z: low.Z + 0.012},
			r3.Vec{X: -math.Cos(0.3), Y: -math.Sin(0.3)}, 0},
		{"floor of the recess", r3.Vec{X: 0.002, Y: 0.001, Z: low.Z + 0.005}, r3.Vec{Z: 1}, 1},
		{"outer wall, towards the front", r3.Vec{X: 0.001, Y: -0.02, Z: low.Z + 0.01}, r3.Vec{X: 0.05, Y: -1}, 1},
	} {
		seen := 0
		for _, v := range views() {
			if render(cup, make([]color.RGBA, len(cup.Triangles)), v, 460, body.middle, 0.041).ring(s.at, s.normal) {
				seen++
			}
		}
		if seen != s.views {
			t.Errorf("%s: seen in %d views, want %d", s.name, seen, s.views)
		}
	}
}
