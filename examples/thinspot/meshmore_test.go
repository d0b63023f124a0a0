package main

import (
	"bytes"
	"context"
	"encoding/binary"
	"encoding/json"
	"image/color"
	"math"
	"os"
	"path/filepath"
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

// TestErrorWherePromised: the error is that of the thinnest spot that counts,
// and is there for several positions too. A finer mesh of the case lands within it.
func TestErrorWherePromised(t *testing.T) {
	testdata.SlowOnly(t)
	const marks = `"significant": {"facing": {"direction": "-x", "within": 40}}, "promise"`
	const positions = `"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`
	for name, change := range map[string][]string{
		"marks":     {`"promise"`, marks},
		"positions": {`"parts": [`, positions},
	} {
		f := blockFigures(t, []string{"-no-advice"}, change...)
		e, ok := f["error_estimate"].(float64)
		if !ok || !(e > 0 && e < 0.1) || f["unresolved"].(bool) || f["error_unknown_because"] != nil {
			t.Errorf("%s: error %v, %v", name, f["error_estimate"], f["error_unknown_because"])
			continue
		}
		finer := blockFigures(t, []string{"-no-advice", "-quick"}, append(change, `"panel": "7 mm"`, `"panel": "3 mm"`)...)
		if d := math.Abs(finer["min_to_mean"].(float64)/f["min_to_mean"].(float64) - 1); d > 2*e {
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
	if still["min_to_mean"].(float64) != f["min_to_mean"].(float64) ||
		half["min_to_mean"].(float64) <= still["min_to_mean"].(float64) || half["saved_g"].(float64) <= 0 ||
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
	if all := own + float64(once.way.Robbed); math.Abs(all/float64(p.Drive.Current)-1) > 1e-3 {
		t.Errorf("part %v A and robber %v A, the cell has %v", own, once.way.Robbed, p.Drive.Current)
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
	text := strings.Replace(string(raw), `"promise"`,
		`"significant": {"box": {"low": ["0 mm", "0 mm", "0 mm"], "high": ["36 mm", "0 mm", "300 mm"]}}, "promise"`, 1)
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
		f["min_to_mean"].(float64) < 0.8 {
		t.Errorf("%v cm² promised, by hand %v; ratio %v", f["significant_cm2"], want, f["min_to_mean"])
	}
	for _, name := range []string{"half the current", "a robber ring", "a shield", "upside down"} {
		if o := arrangementOf(t, f, name); o["no"] != nil || o["min_to_mean"].(float64) < 0.7 {
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
