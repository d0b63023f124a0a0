package job_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// TestIndependentShapes reads every kind of body, with different figures for
// each dimension, and compares with the area by school geometry in cm².
func TestIndependentShapes(t *testing.T) {
	const pi = math.Pi
	kinds := map[string]bool{}
	for _, c := range []struct {
		text string
		want float64
	}{
		{`{"kind": "plate", "length": "5 cm", "width": "3 cm", "thickness": "2 mm"}`, 2 * (15 + 1 + 0.6)},
		{`{"kind": "plate", "length": "5 cm", "width": "3 cm"}`, 30},
		{`{"kind": "plate", "length": "5 cm", "width": "3 cm", "faces": "one"}`, 15},
		{`{"kind": "plate", "length": "5 cm", "width": "3 cm", "thickness": "2 mm", "holes": [{"diameter": "1 cm", "depth": "2 mm", "count": 3}]}`,
			2*(15+1+0.6) + 3*(pi*0.2-2*pi/4)},
		{`{"kind": "disc", "diameter": "4 cm", "thickness": "3 mm"}`, 2*pi*4 + pi*4*0.3},
		{`{"kind": "disc", "diameter": "4 cm", "thickness": "3 mm", "faces": "one"}`, pi*4 + pi*4*0.3},
		{`{"kind": "ring", "outer": "6 cm", "inner": "4 cm", "thickness": "5 mm"}`, 2*pi*(9-4) + pi*(6+4)*0.5},
		{`{"kind": "cylinder", "diameter": "2 cm", "length": "7 cm"}`, pi*2*7 + 2*pi},
		{`{"kind": "cylinder", "diameter": "2 cm", "length": "7 cm", "open_ends": 1}`, pi*2*7 + pi},
		{`{"kind": "tube", "outer": "3 cm", "inner": "2 cm", "length": "7 cm", "open_ends": 2}`, pi * 5 * 7},
		{`{"kind": "tube", "outer": "3 cm", "inner": "2 cm", "length": "7 cm", "sides": "outside", "open_ends": 2}`,
			pi * 3 * 7},
		{`{"kind": "tube", "outer": "3 cm", "inner": "2 cm", "length": "7 cm", "sides": "inside", "open_ends": 2}`,
			pi * 2 * 7},
		{`{"kind": "cone", "base_diameter": "6 cm", "height": "4 cm"}`, pi*3*5 + pi*9},
		{`{"kind": "cone", "base_diameter": "6 cm", "height": "4 cm", "open_base": true}`, pi * 3 * 5},
		{`{"kind": "cone", "base_diameter": "8 cm", "top_diameter": "2 cm", "height": "4 cm"}`, pi*(4+1)*5 + pi*16 + pi},
		{`{"kind": "cone", "base_diameter": "8 cm", "top_diameter": "2 cm", "height": "4 cm", "open_top": true}`,
			pi*(4+1)*5 + pi*16},
		{`{"kind": "sphere", "diameter": "3 cm"}`, pi * 9},
		{`{"kind": "cap", "sphere_diameter": "10 cm", "height": "2 cm", "open_base": true}`, pi * 10 * 2},
		{`{"kind": "cap", "base_diameter": "8 cm", "height": "2 cm"}`, pi*10*2 + pi*16}, // 4² = 2·(10 - 2)
		{`{"kind": "torus", "centre_diameter": "8 cm", "tube_diameter": "2 cm"}`, pi * pi * 16},
		{`{"kind": "hexbar", "across_flats": "1 cm", "length": "5 cm", "open_ends": 2}`, 6 / math.Sqrt(3) * 5},
		{`{"kind": "hexbar", "across_flats": "1 cm", "length": "5 cm"}`, 6/math.Sqrt(3)*5 + math.Sqrt(3)},
		{`{"kind": "wire", "diameter": "1 mm", "length": "3 m"}`, pi * 0.1 * 300},
		{`{"kind": "disc", "diameter": "4 cm", "holes": [{"diameter": "1 cm", "bare": true, "count": 2},
			{"diameter": "1 cm", "depth": "3 mm", "blind": true}, {"diameter": "2 cm", "bare": true, "blind": true}]}`,
			2*pi*4 - 2*2*pi/4 + pi*0.3 - pi},
		{`{"kind": "ring", "outer": "6 cm", "inner": "4 cm", "faces": "one", "holes": [{"diameter": "4 mm", "bare": true, "faces": "one"}]}`,
			pi*(9-4) - pi*0.04},
		{`{"kind": "chain", "wire_diameter": "1 mm", "centreline": "2 cm", "links": 50}`, 50 * pi * 0.1 * 2},
		{`{"kind": "chain", "wire_diameter": "1 mm", "centreline": "2 cm", "length": "30 cm", "link_pitch": "6 mm"}`,
			50 * pi * 0.1 * 2},
		{`{"kind": "screw head", "style": "cheese", "diameter": "8 mm", "height": "3 mm", "shank": "4 mm"}`,
			2*pi*0.16 + pi*0.8*0.3 - pi*0.04},
		{`{"kind": "screw head", "diameter": "8 mm", "height": "3 mm"}`, 2*pi*0.16 + pi*0.8*0.3},
		{`{"kind": "screw head", "style": "pan", "diameter": "8 mm", "height": "3 mm", "shank": "4 mm"}`,
			pi*(0.16+0.09) + pi*(0.16-0.04)},
		{`{"kind": "screw head", "style": "countersunk", "diameter": "10 mm", "height": "4 mm", "shank": "4 mm"}`,
			pi*0.25 + pi*(0.5+0.2)*0.5},
		{`{"kind": "sum", "of": [{"kind": "sphere", "diameter": "3 cm"}, {"kind": "sphere", "diameter": "1 cm"}]}`,
			pi * 10},
	} {
		kinds[strings.Split(c.text, `"`)[3]] = true
		j, err := job.Read(strings.NewReader(strings.Replace(right, `"area": "5.2 cm²"`, `"shape": `+c.text, 1)), nil)
		if err != nil {
			t.Errorf("%s: %v", c.text, err)
			continue
		}
		got := sheetOf(t, j).Parts[0].Area.In(units.SquareCentimetre) + 0.2 // the masked area
		if !(math.Abs(got-c.want) <= 1e-12*c.want) {
			t.Errorf("%s: %v cm², by hand %v", c.text, got, c.want)
		}
	}
	// A thread adds to the core; how much is checked in package shape. Here:
	// each dimension is read and moves the area.
	area := func(diameter, pitch, length float64) float64 {
		t.Helper()
		kinds["thread"] = true
		text := fmt.Sprintf(`{"kind": "thread", "diameter": "%g mm", "pitch": "%g mm", "length": "%g mm"}`, diameter, pitch,
			length)
		j, err := job.Read(strings.NewReader(strings.Replace(right, `"area": "5.2 cm²"`, `"shape": `+text, 1)), nil)
		if err != nil {
			t.Fatal(err)
		}
		return float64(sheetOf(t, j).Parts[0].Area)
	}
	if a := area(6, 1, 30); area(7, 1, 30) <= a || area(6, 0.5, 30) == a || area(6, 1, 60) <= a {
		t.Error("a dimension of the thread is not read")
	}
	_, err := job.Read(strings.NewReader(strings.Replace(right, `"area": "5.2 cm²"`, `"shape": {"kind": "?"}`, 1)), nil)
	_, known, _ := strings.Cut(err.Error(), "need one of ")
	for _, kind := range strings.Split(known, ", ") {
		if !kinds[kind] {
			t.Errorf("kind %s is not tested here", kind)
		}
	}
}
