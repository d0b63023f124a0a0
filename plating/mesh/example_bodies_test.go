package mesh_test

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// tell prints the number of panels and the area of a body.
func tell(m mesh.Mesh, err error) {
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := mesh.Check(m)
	fmt.Println(len(m.Triangles), r.Area.Text(units.SquareCentimetre, 1), r.Sound(), err)
}

// A weight of 30 by 20 by 10 mm, panels of 5 mm that get smaller to the edges.
func ExampleBox() {
	tell(mesh.Box(30*units.Millimetre, 20*units.Millimetre, 10*units.Millimetre, mesh.Grid{Size: 5 * units.Millimetre,
		Grade: 2}))
	// Output: 704 22.0 cm² true <nil>
}

// A dial plate with edges broken by half a millimetre.
func ExamplePlate() {
	tell(mesh.Plate(60*units.Millimetre, 40*units.Millimetre, 2*units.Millimetre, 0.5*units.Millimetre,
		mesh.Grid{Size: 4 * units.Millimetre}))
	// Output: 3132 51.1 cm² true <nil>
}

// A pillar.
func ExampleCylinder() {
	tell(mesh.Cylinder(8*units.Millimetre, 40*units.Millimetre, mesh.Grid{Size: units.Millimetre}))
	// Output: 2112 11.0 cm² true <nil>
}

// A bezel as a short tube.
func ExampleTube() {
	tell(mesh.Tube(60*units.Millimetre, 54*units.Millimetre, 8*units.Millimetre, mesh.Grid{Size: 2 * units.Millimetre}))
	// Output: 2304 39.4 cm² true <nil>
}

// A pendulum bob with a sunk face.
func ExampleCup() {
	tell(mesh.Cup(60*units.Millimetre, 12*units.Millimetre, 48*units.Millimetre, 4*units.Millimetre,
		mesh.Grid{Size: 2 * units.Millimetre}))
	// Output: 4680 85.1 cm² true <nil>
}

// A finial ball.
func ExampleSphere() {
	tell(mesh.Sphere(20*units.Millimetre, mesh.Grid{Size: 2 * units.Millimetre}))
	// Output: 980 12.5 cm² true <nil>
}

// A ring handle.
func ExampleTorus() {
	tell(mesh.Torus(30*units.Millimetre, 4*units.Millimetre, mesh.Grid{Size: units.Millimetre}))
	// Output: 3888 11.8 cm² true <nil>
}

// One face of a thin disc: open, so no body.
func ExampleDisc() {
	tell(mesh.Disc(40*units.Millimetre, mesh.Grid{Size: 2 * units.Millimetre, Grade: 2}))
	// Output: 2400 12.6 cm² false <nil>
}

// A file in inches that was read as millimetres.
func ExampleScale() {
	m, err := mesh.Box(2*units.Millimetre, units.Millimetre, units.Millimetre, mesh.Grid{Size: units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	tell(mesh.Scale(m, 25.4))
	// Output: 20 64.5 cm² true <nil>
}

// A hand laid down and turned upright.
func ExampleRotate() {
	m, err := mesh.Box(80*units.Millimetre, 6*units.Millimetre, units.Millimetre, mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err = mesh.Rotate(m, math.Pi/2, r3.Vec{Y: 1})
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := mesh.Check(m)
	fmt.Printf("%.0f mm high %v\n", 1e3*(r.High.Z-r.Low.Z), err)
	// Output: 80 mm high <nil>
}

func ExampleTranslate() {
	m, err := mesh.Sphere(20*units.Millimetre, mesh.Grid{Size: 10 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	tell(mesh.Translate(m, r3.Vec{Z: 0.05}))
	// Output: 80 11.7 cm² true <nil>
}

// A clock hand as a drawing program writes it: twelve triangles.
func ExampleSplit() {
	m, err := mesh.Box(60*units.Millimetre, 4*units.Millimetre, 0.5*units.Millimetre,
		mesh.Grid{Size: 60 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	tell(m, nil)
	tell(mesh.Split(m, 2*units.Millimetre, 100_000))
	// Output:
	// 12 5.4 cm² true <nil>
	// 808 5.4 cm² true <nil>
}

func ExampleSubdivide() {
	m, err := mesh.Box(30*units.Millimetre, 20*units.Millimetre, 10*units.Millimetre,
		mesh.Grid{Size: 10 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	tell(mesh.Subdivide(m))
	// Output: 176 22.0 cm² true <nil>
}
