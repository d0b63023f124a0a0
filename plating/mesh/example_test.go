package mesh_test

import (
	"bytes"
	"errors"
	"fmt"
	"os"
	"strings"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

var _ shape.Body = mesh.MeasuredPart{}

// The drawing of a cast finial comes as a file. How large is it, and is it
// closed? A scan stands in for it here.
func Example() {
	f, err := os.Open("testdata/bunny.ply")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer f.Close()
	m, err := mesh.ReadPLY(f, 5*units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := mesh.Check(m)
	fmt.Println(r, err)
	// Output:
	// 3674 triangles, 1839 vertices, 1 components
	// area 54.6723 cm², volume 24.2860 mL
	// box 49.5366 x 48.2895 x 37.7024 mm
	// 0 open, 0 crowded, 0 turned edges; Euler number 2
	// 0 without area, 0 twice, 0 inside out, 0 enclosed, 0 cut, 0 covered
	// a sound body
	//  <nil>
}

// The smallest body there is, and what a file says that was cut off.
func ExampleReadSTL() {
	text := `solid boss
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 0 10 0 vertex 10 0 0 endloop endfacet
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 10 0 0 vertex 0 0 10 endloop endfacet
facet normal 0 0 0 outer loop vertex 0 0 0 vertex 0 0 10 vertex 0 10 0 endloop endfacet
facet normal 0 0 0 outer loop vertex 10 0 0 vertex 0 10 0 vertex 0 0 10 endloop endfacet
endsolid boss`
	m, err := mesh.ReadSTL(strings.NewReader(text), units.Millimetre)
	fmt.Println(len(m.Vertices), len(m.Triangles), err)
	_, err = mesh.ReadSTL(strings.NewReader(text[:300]), units.Millimetre)
	fmt.Println(err)
	// Output:
	// 4 4 <nil>
	// line 5: the file ends: file ends too early; need the word loop
}

// A clock hand and its boss, drawn as two boxes through each other in one file.
func ExampleCheck_twoBodies() {
	hand, err := mesh.Box(60*units.Millimetre, 4*units.Millimetre, 2*units.Millimetre, mesh.Grid{Size: units.Metre})
	if err != nil {
		fmt.Println(err)
		return
	}
	boss, err := mesh.Box(6*units.Millimetre, 6*units.Millimetre, 8*units.Millimetre, mesh.Grid{Size: units.Metre})
	if err != nil {
		fmt.Println(err)
		return
	}
	both, err := mesh.Merge(hand, boss)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := mesh.Check(both)
	fmt.Println(r.Components, r.Cut, r.Sound(), errors.Is(r.Fault(), mesh.ErrCrossing), err)
	_, err = mesh.NewMeasuredPart(both, "hand with its boss", false)
	fmt.Println(inLines(err))
	// Output:
	// 2 12 false true <nil>
	// 12 triangles cut through others, the first at (3, 2, 0.55) mm between pieces 1 and 2 of 2:
	//   surfaces that cross or lie on each other;
	//   need one body:
	//   join the bodies in the drawing program with its union, and write the file again;
	//   or, for the area alone, give each body as a part of its own and take off what is covered
}

func ExampleReadPLY() {
	text := "ply\nformat ascii 1.0\nelement vertex 4\nproperty float x\nproperty float y\nproperty float z\n" +
		"element face 1\nproperty list uchar int vertex_indices\nend_header\n" +
		"0 0 0\n40 0 0\n40 20 0\n0 20 0\n4 0 1 2 3\n"
	m, err := mesh.ReadPLY(strings.NewReader(text), units.Millimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := mesh.Area(m)
	fmt.Println(len(m.Triangles), a.Text(units.SquareCentimetre, 1), err)
	// Output: 2 8.0 cm² <nil>
}

// A bob with a sunk face, for the next program.
func ExampleWriteSTL() {
	m, err := mesh.Cup(60*units.Millimetre, 12*units.Millimetre, 48*units.Millimetre, 4*units.Millimetre,
		mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	var file bytes.Buffer
	err = mesh.WriteSTL(&file, m, units.Millimetre)
	fmt.Println(len(m.Triangles), file.Len(), err)
	// Output: 1344 67284 <nil>
}

// A coat in colours: thin is dark.
func ExampleWritePLY() {
	m, err := mesh.Box(20*units.Millimetre, 10*units.Millimetre, 2*units.Millimetre,
		mesh.Grid{Size: 20 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	var skin mesh.Skin
	for i := range m.Triangles {
		skin.Thickness = append(skin.Thickness, units.Length(1+0.1*float64(i))*units.Micrometre)
		skin.Colour = append(skin.Colour, [3]uint8{uint8(20 * i), uint8(20 * i), 0})
	}
	skin.Text = true
	var file bytes.Buffer
	err = mesh.WritePLY(&file, m, units.Millimetre, skin)
	lines := strings.Split(file.String(), "\n")
	fmt.Println(lines[len(lines)-2], err)
	// Output: 3 4 1 0 2.1 220 220 0 <nil>
}

// A box whose lid is one triangle short.
func ExampleCheck() {
	m, err := mesh.Box(20*units.Millimetre, 10*units.Millimetre, 5*units.Millimetre,
		mesh.Grid{Size: 20 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	m.Triangles = m.Triangles[1:]
	r, err := mesh.Check(m)
	fmt.Println(r.Watertight(), r.OpenEdges, r.Euler, err)
	// Output: false 3 1 <nil>
}

// A surface whose triangles run either way.
func ExampleRepair() {
	m, err := mesh.Sphere(20*units.Millimetre, mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i := 0; i < 30; i += 3 {
		t := &m.Triangles[i]
		t[0], t[1] = t[1], t[0]
	}
	_, done, err := mesh.Repair(m, mesh.RepairOptions{})
	fmt.Println(done, err)
	// What has no safe answer is refused.
	m.Triangles = m.Triangles[1:]
	_, _, err = mesh.Repair(m, mesh.RepairOptions{})
	fmt.Println(inLines(err))
	// Output:
	// [10 triangles turned to agree with their neighbours] <nil>
	// 3 edges with one triangle only, the first at (-6.037, 7.836, 0.7381) mm:
	//   not closed;
	//   need a closed surface;
	//   Repair joins corners that nearly agree, holes must be closed in the program that drew the part
}

func ExampleArea() {
	m, err := mesh.Torus(60*units.Millimetre, 6*units.Millimetre, mesh.Grid{Size: 0.5 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := mesh.Area(m)
	fmt.Println(a.Text(units.SquareCentimetre, 1), err)
	// Output: 35.5 cm² <nil>
}

func ExampleVolume() {
	m, err := mesh.Box(30*units.Millimetre, 20*units.Millimetre, 2*units.Millimetre,
		mesh.Grid{Size: 5 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := mesh.Volume(m)
	fmt.Println(v.Text(units.CubicCentimetre, 2), err)
	// Output: 1.20 mL <nil>
}

// A finial from a mesh among two plain parts on one rack.
func ExampleNewMeasuredPart() {
	m, err := mesh.Sphere(20*units.Millimetre, mesh.Grid{Size: 0.5 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	ball, err := mesh.NewMeasuredPart(m, "finial ball, from its mesh", false)
	if err != nil {
		fmt.Println(err)
		return
	}
	a, err := shape.Sum(ball, shape.Disc{Diameter: 40 * units.Millimetre})
	fmt.Println(a.Text(units.SquareCentimetre, 1), err)
	steps, err := ball.Working()
	fmt.Print(working.Text(steps), err)
	// Output:
	// 37.7 cm² <nil>
	// finial ball, from its mesh: 12.5606 cm²
	//   A = N·a  [Geometry]
	//     N = 13520 (number of triangles)
	//     a = 0.000929042 cm² (mean area of a triangle)
	// <nil>
}

// Twelve hands side by side on a rack.
func ExampleMerge() {
	hand, err := mesh.Plate(80*units.Millimetre, 6*units.Millimetre, units.Millimetre, 0.3*units.Millimetre,
		mesh.Grid{Size: 2 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	var rack []mesh.Mesh
	for i := range 12 {
		moved, err := mesh.Translate(hand, r3.Vec{Y: 0.015 * float64(i)})
		if err != nil {
			fmt.Println(err)
			return
		}
		rack = append(rack, moved)
	}
	all, err := mesh.Merge(rack...)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := mesh.Check(all)
	fmt.Println(r.Components, r.Area.Text(units.SquareCentimetre, 0), err)
	// Output: 12 130 cm² <nil>
}

// inLines breaks the text of an error at its colons and semicolons.
func inLines(err error) string {
	return strings.NewReplacer(": ", ":\n  ", "; ", ";\n  ").Replace(err.Error())
}
