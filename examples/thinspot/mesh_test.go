package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"image/color"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// blockCase is a small block before an anode wall on its left.
var blockCase = func() string {
	text, err := testdata.Files.ReadFile("cases/block.json")
	if err != nil {
		panic(err)
	}
	return string(text)
}()

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
	views(t, file("p.png"), file("p.svg"))
}

// views looks at the views: the side towards the anode is lighter than the
// other one, and there are words.
func views(t *testing.T, pixels, drawing string) {
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

// TestShippedMeshes: the cases in testdata run, the figure with its file.
func TestShippedMeshes(t *testing.T) {
	testdata.SlowOnly(t)
	for _, name := range []string{"bezel", "figure"} {
		status, out, bad := call(t, "", "-quick", "-no-advice", filepath.Join("..", "..", "testdata", "cases",
			name+".json"))
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
			`"plate": {"length": "30 mm", "width": "24 mm", "thickness": "16 mm", "edge_radius": "4 mm"}, "panel": "7 mm", "grade": 1`,
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

// TestPropertyAnnounced: what takes more than some seconds is said before it begins, and
// what does not is not.
func TestPropertyAnnounced(t *testing.T) {
	for name, said := range map[string]bool{"bezel": true, "block": false} {
		ctx, cancel := context.WithCancel(context.Background())
		cancel()
		var out, bad bytes.Buffer
		args := []string{filepath.Join("..", "..", "testdata", "cases", name+".json")}
		if !said {
			args = append([]string{"-quick", "-no-advice"}, args...)
		}
		status := run(ctx, args, nil, &out, &bad)
		if status != 1 || strings.Contains(bad.String(), "thinspot: up to 26648 panels, some ") != said ||
			strings.Contains(bad.String(), "of memory, at most 4.0 GB") != said || out.Len() > 0 {
			t.Errorf("%s: status %d, %s", name, status, &bad)
		}
	}
}
