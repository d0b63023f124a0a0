package main

import (
	"bytes"
	"context"
	"encoding/csv"
	"encoding/json"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

func call(t *testing.T, stdin string, args ...string) (status int, out, bad string) {
	t.Helper()
	var o, e bytes.Buffer
	status = run(context.Background(), args, strings.NewReader(stdin), &o, &e)
	return status, o.String(), e.String()
}

// TestFigures: the JSON has the names that scripts ask for, and the figures
// hang together.
func TestFigures(t *testing.T) {
	dir := t.TempDir()
	table, picture, drawing := filepath.Join(dir, "t.csv"), filepath.Join(dir, "p.png"), filepath.Join(dir, "p.svg")
	status, out, bad := call(t, "", "-json", "-no-advice", "-csv", table, "-picture", picture, "-picture", drawing)
	if status != 0 || bad != "" {
		t.Fatalf("status %d, %s", status, bad)
	}
	var v map[string]any
	if err := json.Unmarshal([]byte(out), &v); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{"area_cm2", "volume_cm3", "faces", "total_current_A", "cell_voltage_V", "min_um",
		"average_um", "max_um",
		"p05_um", "p95_um", "min_to_average", "minutes_to_min_thickness", "current_balance", "error_estimate"} {
		if f, ok := v[name].(float64); !ok || f-f != 0 {
			t.Errorf("%s is %v", name, v[name])
		}
	}
	f := func(name string) float64 { x, _ := v[name].(float64); return x }
	if math.Abs(f("min_um")-1) > 1e-12 || math.Abs(f("min_to_average")*f("average_um")-1) > 1e-12 ||
		math.Abs(f("total_current_A")-0.6) > 1e-9 ||
		!(f("min_um") < f("p05_um") && f("p05_um") < f("average_um") && f("average_um") < f("p95_um") &&
			f("p95_um") <= f("max_um")) || math.Abs(f("current_balance")) > 1e-6 {
		t.Errorf("%v", v)
	}
	// Two caps, two rings and a grooved rim, by hand: 131.82 cm²; the volume of two caps and a disc less the groove.
	cap := math.Pi * 6 * (3*36*36 + 6*6) / 6
	if want := (2*cap + math.Pi*40*40*6 - math.Pi*(40*40-37*37)*3) / 1000; math.Abs(f("volume_cm3")/want-1) > 1e-6 {
		t.Errorf("volume %v, by hand %v", f("volume_cm3"), want)
	}
	file, err := os.ReadFile(table)
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(bytes.NewReader(file)).ReadAll()
	if err != nil || len(rows) < 100 {
		t.Fatal(len(rows), err)
	}
	area, least, short := 0.0, math.Inf(1), 0.0
	for _, r := range rows[1:] {
		a, _ := strconv.ParseFloat(r[3], 64)
		s, err := strconv.ParseFloat(r[5], 64)
		if err != nil {
			t.Fatal(err)
		}
		area, least = area+a, math.Min(least, s)
		if 0.9*s < 1 { // the minimum thickness, in nine tenths of the time
			short += a
		}
	}
	if math.Abs(area/f("area_cm2")-1) > 1e-4 || math.Abs(least-1) > 1e-4 {
		t.Errorf("the table sums to %v cm² and is thinnest with %v µm", area, least)
	}
	if got := f("below_min_thickness_at_90_percent_cm2"); !(short > 0) || math.Abs(got-short) > 1e-3 {
		t.Errorf("a tenth less time leaves %v cm² below the minimum thickness, by the table %v", got, short)
	}
	raw, err := os.Open(picture)
	if err != nil {
		t.Fatal(err)
	}
	defer raw.Close()
	image, err := png.Decode(raw)
	if err != nil {
		t.Fatal(err)
	}
	dark := 0
	for y := range image.Bounds().Dy() {
		for x := range image.Bounds().Dx() {
			if r, _, _, _ := image.At(x, y).RGBA(); r < 0x4000 {
				dark++
			}
		}
	}
	if dark < 500 {
		t.Errorf("the picture has %d dark points", dark)
	}
	if svg, err := os.ReadFile(drawing); err != nil || !bytes.Contains(svg, []byte("<svg")) {
		t.Error("no drawing", err)
	}
}

// TestText: the sheet says where, when and how sure, and what would save.
func TestText(t *testing.T) {
	testdata.SlowOnly(t)
	status, out, bad := call(t, "")
	if status != 0 || bad != "" {
		t.Fatalf("status %d, %s", status, bad)
	}
	for _, want := range []string{"THIN SPOT", "until the thinnest spot has", "at r = 37.0 mm", "facing",
		"min_to_average",
		"balance", "half the current", "robber", "shield", "saves metal: half the current"} {
		if !strings.Contains(out, want) {
			t.Errorf("no %q in\n%s", want, out)
		}
	}
}

func TestWrongCommandLines(t *testing.T) {
	raw, err := testdata.Files.ReadFile("cases/bob.json")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		stdin  string
		args   []string
		status int
		want   string
	}{
		{"", []string{"a", "b"}, 2, "more than one case"},
		{"", []string{"-picture", "x.gif"}, 2, ".png or .svg"},
		{"", []string{"-nonsense"}, 2, "flag provided but not defined"},
		{"", []string{"-h"}, 0, "usage"},
		{"", []string{"no-such-file.json"}, 1, "no-such-file"},
		{"{", []string{"-"}, 1, "line 1"},
		{strings.Replace(string(raw), `"high": "250 mm"`, `"high": "950 mm"`, 1), []string{"-"}, 1, "anode"},
		{"", []string{"-no-advice", "-csv", "/no/such/folder/x.csv"}, 1, "no/such/folder"},
	} {
		status, _, bad := call(t, c.stdin, c.args...)
		if status != c.status || !strings.Contains(bad, c.want) {
			t.Errorf("%v: status %d, %q, want %d, %q", c.args, status, bad, c.status, c.want)
		}
	}
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	var out, bad bytes.Buffer
	if status := run(ctx, nil, strings.NewReader(""), &out, &bad); status != 1 || out.Len() > 0 {
		t.Errorf("cancelled: status %d, %q", status, out.String())
	}
}
