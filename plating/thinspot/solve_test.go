package thinspot_test

import (
	"bytes"
	"context"
	"encoding/json"
	"math"
	"regexp"
	"strings"
	"testing"

	"example.com/laydown/plating/thinspot"
	"example.com/laydown/testdata"
)

// blockCase is a small block before an anode wall on its left.
func blockCase(t testing.TB) string { return shipped(t, "block") }

func bobCase(t testing.TB) string { return shipped(t, "bob") }

func shipped(t testing.TB, name string) string {
	t.Helper()
	raw, err := testdata.Files.ReadFile("cases/" + name + ".json")
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// solved reads and solves a case that names no files.
func solved(t *testing.T, text string, o thinspot.Options) thinspot.Result {
	t.Helper()
	c, err := thinspot.Read(strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	r, err := c.Solve(context.Background(), o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// figures is a result as scripts read it.
func figures(t *testing.T, r thinspot.Result) map[string]any {
	t.Helper()
	raw, err := json.Marshal(r)
	if err != nil {
		t.Fatal(err)
	}
	var f map[string]any
	if err := json.Unmarshal(raw, &f); err != nil {
		t.Fatal(err)
	}
	return f
}

// page is a result as a finisher reads it.
func page(t *testing.T, r thinspot.Result) string {
	t.Helper()
	var b bytes.Buffer
	if err := r.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// TestIndependentMethods: one body by its profile and by a mesh.
func TestIndependentMethods(t *testing.T) {
	testdata.SlowOnly(t)
	const head = `{"format": "laydown case 1", %METHOD% "bath": {"name": "gold", "metal": "Au", "efficiency": "40 %"}, "conductivity": "6 S/m",
	"current": "0.2 A", "min_thickness": "1 µm", "parts": [{"name": "bob", "kind": "cathode", "law": {"model": "linear", "resistance": "2e-4 Ω·m²"}, %BODY%}]}`
	get := func(method, body string) map[string]any {
		text := strings.NewReplacer("%METHOD%", method, "%BODY%", body).Replace(head)
		return figures(t, solved(t, text, thinspot.Options{NoAdvice: true}))
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

// TestPropertyPositions: the block turned half the time is even on both sides.
func TestPropertyPositions(t *testing.T) {
	testdata.SlowOnly(t)
	text := strings.Replace(blockCase(t), `"parts": [`,
		`"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`, 1)
	read := func(text string, noAdvice bool) map[string]any {
		return figures(t, solved(t, text, thinspot.Options{Quick: true, NoAdvice: noAdvice}))
	}
	still, turned := read(blockCase(t), false), read(text, true)
	ratio := func(f map[string]any) float64 { return f["min_to_average"].(float64) }
	if ratio(turned) <= ratio(still) || turned["error_estimate"] != nil {
		t.Errorf("still %v, turned %v, error %v", ratio(still), ratio(turned), turned["error_estimate"])
	}
	for _, v := range still["arrangements"].([]any) {
		o := v.(map[string]any)
		if o["name"] == "turned half round half of the time" &&
			math.Abs(o["min_to_average"].(float64)-ratio(turned)) > 1e-6 {
			t.Errorf("turned half the time: %v as advice, %v as a case", o["min_to_average"], ratio(turned))
		}
	}
	marked := strings.Replace(blockCase(t), `"min_thickness"`,
		`"significant": {"facing": {"direction": "-x", "within": 40}}, "min_thickness"`, 1)
	front := read(marked, true)
	if ratio(front) <= ratio(still) || front["significant_cm2"].(float64) >= 0.5*front["area_cm2"].(float64) {
		t.Errorf("the side towards the anode: %v of %v", ratio(front), ratio(still))
	}
}

// TestPropertyAnodeInside: a cup is offered an anode rod, and gains by it.
func TestPropertyAnodeInside(t *testing.T) {
	testdata.SlowOnly(t)
	cup := regexp.MustCompile(`"plate": \{[^}]*\}, "panel": "7 mm", "grade": 1`).ReplaceAllString(blockCase(t),
		`"cup": {"outer": "40 mm", "height": "34 mm", "recess": "32 mm", "depth": "29 mm"}, "panel": "7 mm", "grade": 1`)
	r := solved(t, cup, thinspot.Options{Quick: true})
	for _, o := range r.Others {
		if o.Name == "an anode inside" {
			if o.Err != nil || o.MinToAverage < 1.2*r.Coat.MinToAverage {
				t.Errorf("an anode inside: %v, %v, without %v", o.MinToAverage, o.Err, r.Coat.MinToAverage)
			}
			return
		}
	}
	t.Error("an anode inside is not among", r.Others)
}

// TestPropertyErrorOnTheSignificantSurface: the error is that of the thinnest spot that counts,
// and is there for several positions too. A finer mesh of the case lands within it.
func TestPropertyErrorOnTheSignificantSurface(t *testing.T) {
	testdata.SlowOnly(t)
	const marks = `"significant": {"facing": {"direction": "-x", "within": 40}}, "min_thickness"`
	const positions = `"positions": [{"share": 0.5}, {"share": 0.5, "turn": [{"axis": "z", "degrees": 180}]}], "parts": [`
	for name, change := range map[string][]string{
		"marks":     {`"min_thickness"`, marks},
		"positions": {`"parts": [`, positions},
	} {
		f := blockFigures(t, thinspot.Options{NoAdvice: true}, change...)
		e, ok := f["error_estimate"].(float64)
		if !ok || !(e > 0 && e < 0.1) || f["unresolved"].(bool) || f["error_unknown_because"] != nil {
			t.Errorf("%s: error %v, %v", name, f["error_estimate"], f["error_unknown_because"])
			continue
		}
		finer := blockFigures(t, thinspot.Options{Quick: true, NoAdvice: true}, append(change, `"panel": "7 mm"`,
			`"panel": "3 mm"`)...)
		if d := math.Abs(finer["min_to_average"].(float64)/f["min_to_average"].(float64) - 1); d > 2*e {
			t.Errorf("%s: a finer mesh is off by %v, the error was to be %v", name, d, e)
		}
		if finer["error_estimate"] != nil || finer["error_unknown_because"] != "not asked for" {
			t.Errorf("%s, quick: %v because %v", name, finer["error_estimate"], finer["error_unknown_because"])
		}
	}
}

// TestPropertyPositionsAreChanged: where the case turns the part, every arrangement is
// held against the turned one, and turning is not offered again.
func TestPropertyPositionsAreChanged(t *testing.T) {
	testdata.SlowOnly(t)
	f := blockFigures(t, thinspot.Options{Quick: true},
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

// TestPropertyMarkedProfile: marks hold for every arrangement of a case by profile: the
// caps of the bob are evener than the bob with its groove.
func TestPropertyMarkedProfile(t *testing.T) {
	testdata.SlowOnly(t)
	text := strings.Replace(bobCase(t), `"min_thickness"`,
		`"significant": {"box": {"low": ["0 mm", "0 mm", "0 mm"], "high": ["36 mm", "0 mm", "300 mm"]}}, "min_thickness"`,
		1)
	f := figures(t, solved(t, text, thinspot.Options{}))
	// Two caps of 6 mm on a radius of 36 mm.
	if want := 2 * math.Pi * (36*36 + 6*6) / 100; math.Abs(f["significant_cm2"].(float64)/want-1) > 0.01 ||
		f["min_to_average"].(float64) < 0.8 {
		t.Errorf("%v cm² significant, by hand %v; ratio %v", f["significant_cm2"], want, f["min_to_average"])
	}
	for _, name := range []string{"half the current", "a robber ring", "a shield", "upside down"} {
		if o := arrangementOf(t, f, name); o["no"] != nil || o["min_to_average"].(float64) < 0.7 {
			t.Errorf("%v", o)
		}
	}
}

// TestPropertyWindow: what is plated outside the bath's window is told.
func TestPropertyWindow(t *testing.T) {
	text := strings.Replace(blockCase(t), `"density": "17 g/cm³",`,
		`"density": "17 g/cm³", "current_density": {"low": "0.45 A/dm²", "high": "0.7 A/dm²"},`, 1)
	out := page(t, solved(t, text, thinspot.Options{Quick: true, NoAdvice: true}))
	if !strings.Contains(out, "above the bath's window, over 0.70 A/dm²: it may burn") ||
		!strings.Contains(out, "below the bath's window, under 0.45 A/dm²") {
		t.Error(out)
	}
	plain, err := block()
	if err != nil {
		t.Fatal(err)
	}
	if out := page(t, plain); strings.Contains(out, "window") {
		t.Errorf("a window that is not given:\n%s", out)
	}
}

// blockFigures solves the block, changed by pairs of old and new text.
func blockFigures(t *testing.T, o thinspot.Options, change ...string) map[string]any {
	t.Helper()
	text := strings.NewReplacer(change...).Replace(blockCase(t))
	if len(change) > 0 && text == blockCase(t) {
		t.Fatalf("%q is not in the case", change)
	}
	return figures(t, solved(t, text, o))
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
