package thinspot_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/units"
)

// TestPropertyWrongMeshCases: each spoiled case is refused with a line, the value and a
// remedy.
func TestPropertyWrongMeshCases(t *testing.T) {
	for _, s := range []struct{ old, new, want string }{
		{`"method": "mesh"`, `"method": "guess"`, "need one of profile, mesh"},
		{`"method": "mesh"`, `"method": "profile"`, "unknown field"},
		{`"depth": "220 mm", `, ``, `need "length", "width" and "depth"`},
		{`"depth": "220 mm"`, `"depth": "0 mm"`, "above zero"},
		{`"depth": "220 mm"`, `"depth": "220 mm", "radius": "1 m"`, "unknown field"},
		{`"name": "finial", "kind": "cathode"`, `"name": "finial", "kind": "robber"`, "need a body of kind cathode"},
		{`"name": "finial", "kind": "cathode"`, `"name": "finial", "kind": "cathod"`, "need one of cathode"},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`, `"bar": {}`, "known here are name, kind, law, box, plate"},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`,
			`"cylinder": {"diameter": "20 mm", "length": "40 mm"}, "sphere": {"diameter": "9 mm"}`, "need one of box, plate"},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`, `"cylinder": {"diameter": "20 mm"}`,
			`"length" is missing`},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`,
			`"cylinder": {"diameter": "20 mm", "length": "40 mm", "wide": "1 mm"}`, "unknown field"},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`, `"cylinder": {"diameter": 20, "length": "40 mm"}`,
			"without a unit"},
		{`"cylinder": {"diameter": "20 mm", "length": "40 mm"}`,
			`"tube": {"outer": "20 mm", "inner": "30 mm", "length": "40 mm"}`, "need"},
		{`"panel": "8 mm"`, `"panel": "8 µm"`, `need "panel" of at least`},
		{`"panel": "8 mm"`, `"panel": "-8 mm"`, "above zero"},
		{`"grade": 1`, `"grade": 9`, "need a number from 1 to 3"},
		{`"grade": 1`, `"grade": true`, "need a number"},
		{`{"axis": "y", "degrees": 90}`, `{"axis": "w", "degrees": 90}`, "need one of x, y, z"},
		{`{"axis": "y", "degrees": 90}`, `{"degrees": 90}`, `"axis" is missing`},
		{`{"axis": "y", "degrees": 90}`, `{"axis": "y"}`, `"degrees" is missing`},
		{`{"axis": "y", "degrees": 90}`, `{"axis": "y", "degrees": 9e9}`, "need degrees from"},
		{`[{"axis": "y", "degrees": 90}]`, `{"axis": "y", "degrees": 90}`, "need turns"},
		{`"at": ["120 mm", "100 mm", "110 mm"]`, `"at": ["120 mm", "100 mm"]`, "need three, x, y and z"},
		{`"at": ["120 mm", "100 mm", "110 mm"]`, `"at": ["120 mm", "100 mm", "110 A"]`, "is one of current"},
		// through the surface of the solution
		{`"at": ["120 mm", "100 mm", "110 mm"]`, `"at": ["120 mm", "100 mm", "215 mm"]`, "finial"},
		{`"file": "rod.stl"`, `"file": "no.stl"`, "cannot be opened"},
		{`"file": "rod.stl"`, `"file": "rod.obj"`, "ends in .stl or .ply"},
		{`"file": "rod.stl"`, `"file": 7`, "need the name of an STL or PLY file"},
		{`"file": "rod.stl"`, `"file": "short.stl"`, "file"},
		{`"file": "rod.stl"`, `"file": "open.ply"`, `"open.ply" cannot be mended: `},
		{`"file": "rod.stl", "unit": "1 mm", "repair": true, "weld": "0.01 mm"`,
			`"file": "open.ply", "unit": "1 mm", "repair": true`, `in the file: "repair": true, "weld": "0.01 mm"`},
		{`"unit": "1 mm", `, ``, `need "unit" beside it`},
		{`"unit": "1 mm"`, `"unit": "1 V"`, "is one of voltage"},
		{`"unit": "1 mm"`, `"unit": "V"`, "is one of voltage"},
		{`"unit": "1 mm"`, `"unit": "mmm"`, "unknown unit"},
		{`"unit": "1 mm"`, `"unit": ""`, "empty"},
		{`"unit": "1 mm"`, `"unit": "0 mm"`, "above zero"},
		{`"repair": true, `, ``, `need "repair": true beside it`},
		{`"refine": 1`, `"refine": 9`, "from 0 to 4"},
		{`"refine": 1`, `"grade": 2`, "unknown field"},
		{`"refine": 1`, `"panel": "0 mm"`, "above zero"},
		{`"refine": 1`, `"panel": "0.1 mm"`, `need "panel" of at least 400 µm`},
		{`"wall": "low x"`, `"wall": "north"`, "need one of low x"},
		{`"kind": "anode", "wall"`, `"kind": "cathode", "wall"`, `need "kind": "anode"`},
		{`"kind": "anode", "wall"`, `"kind": "robber", "wall"`, `need "kind": "anode"`},
		{`"wall": "low x"`, `"wall": "low x", "at": ["0 m", "0 m", "0 m"]`, "unknown field"},
		{`"tank": {"length": "300 mm", "width": "200 mm", "depth": "220 mm", "panel": "50 mm"},`, ``, "there is no tank"},
		{`"facing": {"direction": "-x", "within": 60},`, `"facing": {"direction": "left", "within": 60},`,
			"need one of x, -x"},
		{`"facing": {"direction": "-x", "within": 60},`, `"facing": {"within": 60},`, `"direction" is missing`},
		{`"facing": {"direction": "-x", "within": 60},`, `"facing": {"direction": "-x", "within": 400},`,
			"need degrees from 0 to 180"},
		{`"facing": {"direction": "-x", "within": 60},`, `"box": {"low": ["0 m", "0 m", "0 m"]},`, `"high" is missing`},
		{`"facing": {"direction": "-x", "within": 60},`,
			`"box": {"low": ["1 m", "1 m", "1 m"], "high": ["2 m", "2 m", "2 m"]},`, "holds none of the"},
		{`"distance": "2 mm"`, `"distance": "2 m"`, "holds none of the"},
		{`, "distance": "2 mm"`, ``, `"distance" is missing`},
		{`"sharper_than": 30`, `"sharper_than": 0`, "need degrees from 1 to 179"},
		{`{"share": 0.25}`, `{"share": 0.2}`, "sum to"},
		{`{"share": 0.25}`, `{"share": 7}`, "7"},
		{`{"share": 0.25}`, `{}`, `"share" is missing`},
		{`"130 mm", "90 mm", "100 mm"`, `"5 mm", "90 mm", "100 mm"`, "finial"}, // through a wall
		{`"current": "0.2 A"`, `"current": "NaN A"`, "current"},
	} {
		text := strings.Replace(meshCase, s.old, s.new, 1)
		if text == meshCase {
			t.Errorf("%q is not in the file", s.old)
			continue
		}
		_, err := readMesh(text)
		var at *units.FileError
		if !errors.As(err, &at) || at.Line == 0 || !strings.Contains(err.Error(), s.want) {
			t.Errorf("%s: %v, want %q with a line", s.new, err, s.want)
		}
	}
	if _, err := thinspot.Read(strings.NewReader(meshCase), nil); err == nil || !strings.Contains(err.Error(),
		"need a reader that opens files") {
		t.Errorf("without open: %v", err)
	}
	empty := strings.Replace(bobCase(t), `"min_thickness"`, `"significant": {}, "min_thickness"`, 1)
	if _, err := thinspot.Read(strings.NewReader(empty), nil); err == nil || !strings.Contains(err.Error(), "is empty") {
		t.Errorf("no marks: %v", err)
	}
}

// TestPropertyBodyThatIsTwo: a ring with its stone through the band in one file is
// no part of a case, mended or not; what is said has a place,
// a remedy and no area. Clear of each other the two are taken.
func TestPropertyBodyThatIsTwo(t *testing.T) {
	ring, err := mesh.Torus(18*units.Millimetre, 2*units.Millimetre, mesh.Grid{Size: 1 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	stone, err := mesh.Sphere(5*units.Millimetre, mesh.Grid{Size: 1 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	for at, sound := range map[units.Length]bool{9.5 * units.Millimetre: false, 14 * units.Millimetre: true} {
		there, err := mesh.Translate(stone, r3.Vec{X: float64(at)})
		if err != nil {
			t.Fatal(err)
		}
		both, err := mesh.Merge(ring, there)
		if err != nil {
			t.Fatal(err)
		}
		open := func(name string) (io.ReadCloser, error) {
			var b bytes.Buffer
			if strings.HasSuffix(name, ".stl") {
				err = mesh.WriteSTL(&b, both, units.Millimetre)
			} else {
				err = mesh.WritePLY(&b, both, units.Millimetre, mesh.Skin{})
			}
			return io.NopCloser(&b), err
		}
		for _, file := range []string{`"file": "ring.stl", "unit": "mm"`, `"file": "ring.ply", "unit": "mm"`,
			`"file": "ring.stl", "unit": "mm", "repair": true`} {
			_, err := thinspot.Read(strings.NewReader(strings.Replace(meshCase,
				`"file": "rod.stl", "unit": "1 mm", "repair": true, "weld": "0.01 mm", "refine": 1`, file, 1)), open)
			if sound {
				if err != nil {
					t.Errorf("%s at %v: %v", file, at, err)
				}
				continue
			}
			if !errors.Is(err, mesh.ErrCrossing) || !strings.Contains(err.Error(), " mm between pieces 1 and 2 of 2") ||
				!strings.Contains(err.Error(), "with its union") || strings.Contains(err.Error(), "cm²") {
				t.Errorf("%s at %v: %v", file, at, err)
			}
		}
	}
}
