package thinspot_test

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/thinspot"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// meshCase is a small case with a tank, an anode of each kind, marks and two
// positions, and with a file.
const meshCase = `{
  "format": "laydown case 1",
  "case": "finial",
  "method": "mesh",
  "bath": {"name": "gold", "metal": "Au", "valence": 1, "density": "17 g/cm³", "efficiency": "35 %", "source": "demo data"},
  "conductivity": "6 S/m",
  "tank": {"length": "300 mm", "width": "200 mm", "depth": "220 mm", "panel": "50 mm"},
  "current": "0.2 A",
  "min_thickness": "1 µm",
  "significant": {
    "facing": {"direction": "-x", "within": 60},
    "away_from_edges": {"sharper_than": 30, "distance": "2 mm"}
  },
  "parts": [
    {"name": "finial", "kind": "cathode", "law": {"model": "linear", "resistance": "1e-3 Ω·m²"},
     "cylinder": {"diameter": "20 mm", "length": "40 mm"}, "panel": "8 mm", "grade": 1,
     "turn": [{"axis": "y", "degrees": 90}],
     "at": ["120 mm", "100 mm", "110 mm"]},
    {"name": "rod", "kind": "anode", "file": "rod.stl", "unit": "1 mm", "repair": true, "weld": "0.01 mm", "refine": 1,
     "at": ["200 mm", "100 mm", "110 mm"]},
    {"name": "wall", "kind": "anode", "wall": "low x"}
  ],
  "positions": [
    {"share": 0.25},
    {"share": "75 %", "turn": [{"axis": "z", "degrees": 90}], "at": ["130 mm", "90 mm", "100 mm"]}
  ]
}`

// files opens the few files of the cases here.
func files(name string) (io.ReadCloser, error) {
	var b bytes.Buffer
	rod, err := mesh.Box(10*units.Millimetre, 10*units.Millimetre, 80*units.Millimetre,
		mesh.Grid{Size: 30 * units.Millimetre})
	if err != nil {
		return nil, err
	}
	switch name {
	case "rod.stl":
		err = mesh.WriteSTL(&b, rod, units.Millimetre)
	case "rod.ply":
		err = mesh.WritePLY(&b, rod, units.Millimetre, mesh.Skin{})
	case "open.ply":
		rod.Triangles = rod.Triangles[1:]
		err = mesh.WritePLY(&b, rod, units.Millimetre, mesh.Skin{})
	case "short.stl":
		b.WriteString("solid nothing")
	default:
		return nil, fs.ErrNotExist
	}
	return io.NopCloser(&b), err
}

func readMesh(text string) (thinspot.Case, error) {
	return thinspot.Read(strings.NewReader(text), files)
}

func middleOf(s *field.Boundary) (middle, size r3.Vec) {
	low, high := s.Vertices[0], s.Vertices[0]
	for _, v := range s.Vertices {
		low = r3.Vec{X: math.Min(low.X, v.X), Y: math.Min(low.Y, v.Y), Z: math.Min(low.Z, v.Z)}
		high = r3.Vec{X: math.Max(high.X, v.X), Y: math.Max(high.Y, v.Y), Z: math.Max(high.Z, v.Z)}
	}
	return r3.Scale(0.5, r3.Add(low, high)), r3.Sub(high, low)
}

func near(a, b r3.Vec) bool { return r3.Norm(r3.Sub(a, b)) < 1e-9 }

// TestPropertyReadMeshCase: what the file says is in the problem.
func TestPropertyReadMeshCase(t *testing.T) {
	c, err := readMesh(meshCase)
	if err != nil {
		t.Fatal(err)
	}
	p := c.Mesh.Problem
	if len(p.Surfaces) != 2 || p.Surfaces[0].Kind != current.Cathode || p.Surfaces[1].Kind != current.Anode ||
		p.Drive != current.ByCurrent(0.2*units.Ampere) ||
		p.Box.High != (r3.Vec{X: 0.3, Y: 0.2, Z: 0.22}) || p.Box.Panel != 50*units.Millimetre {
		t.Errorf("%+v", p)
	}
	if w := p.Box.Walls; len(w) != 1 || w[0].Face != field.LowX || w[0].Kind != current.Anode {
		t.Errorf("walls %+v", w)
	}
	// A bar along z that is turned about y lies along x.
	if at, size := middleOf(&p.Surfaces[0]); !near(at, r3.Vec{X: 0.12, Y: 0.1, Z: 0.11}) ||
		math.Abs(size.X-0.04) > 1e-9 || size.Z > 0.0201 {
		t.Errorf("hangs at %v, %v", at, size)
	}
	if at, size := middleOf(&p.Surfaces[1]); !near(at, r3.Vec{X: 0.2, Y: 0.1, Z: 0.11}) || math.Abs(size.Z-0.08) > 1e-7 {
		t.Errorf("the rod is at %v, %v", at, size)
	}
	if len(c.Mesh.Mended) != 0 && !strings.Contains(c.Mesh.Mended[0], "rod.stl") {
		t.Errorf("mended %v", c.Mesh.Mended)
	}
	if len(c.Mesh.Positions) != 2 || c.Mesh.Positions[0].Share != 0.25 || c.Mesh.Positions[1].Share != 0.75 {
		t.Fatalf("positions %+v", c.Mesh.Positions)
	}
	at, size := middleOf(&c.Mesh.Positions[1].Problem.Surfaces[0])
	if !near(at, r3.Vec{X: 0.13, Y: 0.09, Z: 0.1}) || math.Abs(size.Y-0.04) > 1e-9 {
		t.Errorf("second position at %v, %v", at, size)
	}
	if at, size = middleOf(&c.Mesh.Positions[0].Problem.Surfaces[0]); !near(at, r3.Vec{X: 0.12, Y: 0.1, Z: 0.11}) ||
		math.Abs(size.X-0.04) > 1e-9 {
		t.Errorf("first position at %v, %v", at, size)
	}
	for _, s := range []struct {
		at, normal r3.Vec
		in         bool
	}{
		{r3.Vec{X: 0.1, Y: 0.1, Z: 0.11}, r3.Vec{X: -1}, true},
		{r3.Vec{X: 0.14, Y: 0.1, Z: 0.11}, r3.Vec{X: 1}, false},          // faces away
		{r3.Vec{X: 0.1, Y: 0.1, Z: 0.1195}, r3.Vec{X: -1}, false},        // at the rim
		{r3.Vec{X: 0.11, Y: 0.1, Z: 0.12}, r3.Vec{X: -0.5, Z: 1}, false}, // 63° off
	} {
		if c.Significant(coat.Patch{At: s.at, Normal: s.normal}) != s.in {
			t.Errorf("significant at %v facing %v: not %v", s.at, s.normal, s.in)
		}
	}
}

// TestIndependentBodies: each generator, file kind and role is read, with the size
// that the file gives.
func TestIndependentBodies(t *testing.T) {
	head := `{"format": "laydown case 1", "method": "mesh", "conductivity": "6 S/m", "voltage": "1 V", "min_thickness": "1 µm",
	  "bath": {"name": "gold", "metal": "Au", "valence": 1, "density": "17 g/cm³", "efficiency": "35 %%"}, "parts": [{"kind": "cathode", %s}%s]}`
	for _, s := range []struct {
		body string
		area float64 // cm², by hand; facets of a round body are less
	}{
		{`"box": {"length": "10 mm", "width": "20 mm", "height": "30 mm"}`, 22},
		{`"plate": {"length": "22 mm", "width": "22 mm", "thickness": "3 mm", "edge_radius": "1 mm"}`, (2*(400+20+20) +
			2*math.Pi*41 + 4*math.Pi) / 100},
		{`"cylinder": {"diameter": "20 mm", "length": "30 mm"}`, math.Pi * 8},
		{`"tube": {"outer": "20 mm", "inner": "10 mm", "length": "30 mm"}`, math.Pi * (3*3 + 1.5)},
		{`"sphere": {"diameter": "20 mm"}`, math.Pi * 4},
		{`"torus": {"centre_diameter": "84 mm", "tube_diameter": "6 mm"}, "panel": "3 mm"`, math.Pi * math.Pi * 8.4 * 0.6},
		{`"cup": {"outer": "20 mm", "height": "30 mm", "recess": "16 mm", "depth": "20 mm"}`, math.Pi * (6 + 2 + 3.2)},
		{`"file": "rod.stl", "unit": "1 mm"`, 2*1 + 4*8},
		{`"file": "rod.ply", "unit": "0.5 mm", "refine": 2`, (2*1 + 4*8) / 4.},
	} {
		c, err := readMesh(fmt.Sprintf(head, s.body,
			`, {"kind": "shield", "box": {"length": "5 mm", "width": "5 mm", "height": "5 mm"}, "at": ["0.3 m", "0 m", "0 m"]}`+
				`, {"kind": "robber", "sphere": {"diameter": "5 mm"}, "at": ["0 m", "0.3 m", "0 m"]}`+
				`, {"kind": "floating", "sphere": {"diameter": "5 mm"}, "at": ["0 m", "0 m", "0.3 m"]}`))
		if err != nil {
			t.Errorf("%s: %v", s.body, err)
			continue
		}
		p := c.Mesh.Problem.Surfaces
		m := mesh.Mesh{Vertices: p[0].Vertices, Triangles: p[0].Triangles}
		area, err := mesh.Area(m)
		if got := area.In(units.SquareCentimetre); err != nil || got > s.area*(1+1e-6) || got < 0.95*s.area {
			t.Errorf("%s: area %v cm², by hand %v, %v", s.body, got, s.area, err)
		}
		if strings.Contains(s.body, "refine") {
			plain, err := readMesh(fmt.Sprintf(head, strings.Replace(s.body, `, "refine": 2`, "", 1), ""))
			if err != nil || 16*len(plain.Mesh.Problem.Surfaces[0].Triangles) != len(m.Triangles) {
				t.Errorf("%s: %d triangles, %v", s.body, len(m.Triangles), err)
			}
		}
		if strings.Contains(s.body, ".stl") { // panels of a sixteenth of the length, or as given
			fine, err := readMesh(fmt.Sprintf(head, s.body+`, "panel": "1 mm"`, ""))
			if err != nil || len(m.Triangles) < 300 || longestSide(m) > 5e-3 || longestSide(meshOf(fine)) > 1e-3 {
				t.Errorf("%s: %d triangles to %g m, or to %g m where 1 mm is asked for, %v", s.body, len(m.Triangles),
					longestSide(m), longestSide(meshOf(fine)), err)
			}
		}
		if at, _ := middleOf(&p[0]); r3.Norm(at) > 1e-9 {
			t.Errorf("%s: its middle is at %v", s.body, at)
		}
		if len(p) != 4 || p[1].Kind != current.Insulator || p[3].Kind != current.Floating || len(c.Robbers) != 1 ||
			c.Robbers[0] != 2 || p[0].Name != "part 1" {
			t.Errorf("%s: roles %+v %v", s.body, p, c.Robbers)
		}
	}
}

func meshOf(c thinspot.Case) mesh.Mesh {
	p := c.Mesh.Problem.Surfaces[0]
	return mesh.Mesh{Vertices: p.Vertices, Triangles: p.Triangles}
}

func longestSide(m mesh.Mesh) float64 {
	longest := 0.0
	for _, t := range m.Triangles {
		for k := range t {
			longest = max(longest, r3.Norm(r3.Sub(m.Vertices[t[k]], m.Vertices[t[(k+1)%3]])))
		}
	}
	return longest
}

// TestPropertyMending: what a file needed is said, by the file's name.
func TestPropertyMending(t *testing.T) {
	c, err := readMesh(strings.Replace(meshCase, `"file": "rod.stl"`, `"file": "rod.ply"`, 1))
	if err != nil || len(c.Mesh.Mended) != 0 {
		t.Errorf("a sound file: %v %v", c.Mesh, err)
	}
	turned := func(name string) (io.ReadCloser, error) {
		var b bytes.Buffer
		rod, err := mesh.Box(10*units.Millimetre, 10*units.Millimetre, 80*units.Millimetre,
			mesh.Grid{Size: 30 * units.Millimetre})
		if err != nil {
			return nil, err
		}
		rod.Triangles[3][0], rod.Triangles[3][1] = rod.Triangles[3][1], rod.Triangles[3][0]
		err = mesh.WriteSTL(&b, rod, units.Millimetre)
		return io.NopCloser(&b), err
	}
	c, err = thinspot.Read(strings.NewReader(meshCase), turned)
	if err != nil || len(c.Mesh.Mended) != 1 || !strings.Contains(c.Mesh.Mended[0], "rod.stl") ||
		!strings.Contains(c.Mesh.Mended[0], "turned") {
		t.Errorf("one triangle turned: %v %v", c.Mesh, err)
	}
	_, err = thinspot.Read(strings.NewReader(strings.Replace(meshCase, `"repair": true, "weld": "0.01 mm", `, "",
		1)), turned)
	if err == nil || !strings.Contains(err.Error(), `"repair": true`) {
		t.Errorf("without repair: %v", err)
	}
}

// TestPropertyProfileMarks: a case by profile may mark a box in radius and height, and
// what faces a direction.
func TestPropertyProfileMarks(t *testing.T) {
	text := strings.Replace(bobCase(t), `"min_thickness"`,
		`"significant": {"box": {"low": ["0 mm", "0 mm", "153 mm"], "high": ["30 mm", "0 mm", "200 mm"]}, "facing": {"direction": "z", "within": 30}}, "min_thickness"`, 1)
	c, err := thinspot.Read(strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	at := func(r, z, nz float64) bool {
		return c.Significant(coat.Patch{At: r3.Vec{X: r, Z: z}, Normal: r3.Vec{X: math.Sqrt(1 - nz*nz), Z: nz}})
	}
	if !at(0.01, 0.158, 0.98) || at(0.01, 0.142, 0.98) || at(0.035, 0.154, 0.98) || at(0.01, 0.158, 0.5) {
		t.Error("the marks are not where the file has them")
	}
}

// TestPropertyEmbeddedMeshCases: the cases of the demo are read.
func TestPropertyEmbeddedMeshCases(t *testing.T) {
	raw, err := testdata.Files.ReadFile("cases/bezel.json")
	if err != nil {
		t.Fatal(err)
	}
	c, err := thinspot.Read(bytes.NewReader(raw), nil)
	if err != nil || c.Mesh == nil || len(c.Mesh.Problem.Surfaces) < 2 {
		t.Errorf("%v %v", c.Name, err)
	}
}

// FuzzReadMeshCase: no panic, and what is read can be solved as far as a check
// without solving tells.
func FuzzReadMeshCase(f *testing.F) {
	f.Add(meshCase)
	f.Add(`{"format": "laydown case 1", "method": "mesh", "parts": [{"torus": {}}]}`)
	f.Fuzz(func(t *testing.T, text string) {
		c, err := readMesh(text)
		if err != nil || c.Mesh == nil {
			return
		}
		var big *field.CostError
		if _, err := field.Estimate(c.Mesh.Problem, field.MeshOptions{}); err != nil && !errors.As(err, &big) {
			t.Fatal(err)
		}
		if !(c.MinThickness > 0) {
			t.Fatal(c.MinThickness)
		}
	})
}
