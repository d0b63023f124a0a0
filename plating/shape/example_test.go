package shape_test

import (
	"errors"
	"fmt"

	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

const (
	mm  = units.Millimetre
	cm2 = units.SquareCentimetre
)

// A finial for a bracket clock: a turned base, a spire and a ball on top. Where
// they are soldered together two discs vanish at each joint.
func Example() {
	foot := shape.Cylinder{Diameter: 18 * mm, Length: 12 * mm}
	spire := shape.Cone{BaseDiameter: 14 * mm, TopDiameter: 4 * mm, Height: 40 * mm}
	ball := shape.Sphere{Diameter: 10 * mm}
	joints := shape.Assembly{
		shape.Times{Count: 2, Piece: shape.Disc{Diameter: 14 * mm, Faces: shape.OneFace}},
		shape.Times{Count: 2, Piece: shape.Disc{Diameter: 4 * mm, Faces: shape.OneFace}},
	}
	finial := shape.Less{Piece: shape.Assembly{foot, spire, ball}, Off: joints}
	one, err := finial.Area()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("one finial:  ", one.Text(cm2, 1))
	four, err := shape.Times{Count: 4, Piece: finial}.Area()
	fmt.Println("all four:    ", four.Text(cm2, 1), err)
	// Output:
	// one finial:   24.7 cm²
	// all four:     99.0 cm² <nil>
}

// The back of a dial plate is lacquered; face and edges plate.
func ExamplePlate() {
	dial := shape.Plate{Length: 180 * mm, Width: 150 * mm, Thickness: 1.5 * mm, Faces: shape.OneFace}
	a, err := dial.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 279.9 cm² <nil>
}

// The working puts the numbers beside the formula.
func ExamplePlate_Working() {
	steps, err := shape.Plate{Length: 60 * mm, Width: 5 * mm, Thickness: 2 * mm}.Working()
	fmt.Print(working.Text(steps), err)
	// Output:
	// area of the plate: 8.6 cm²
	//   A = n·L·W + 2·(L + W)·t  [OpenStaxPrealgebra]
	//     n = 2 (faces that plate)
	//     L = 60 mm (length)
	//     W = 5 mm (width)
	//     t = 2 mm (thickness)
	// <nil>
}

// A flat pendulum bob.
func ExampleDisc() {
	a, err := shape.Disc{Diameter: 80 * mm, Thickness: 6 * mm}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 115.6 cm² <nil>
}

// A chapter ring; a bore typed wider than the ring is refused.
func ExampleRing() {
	ring := shape.Ring{Outer: 160 * mm, Inner: 120 * mm, Thickness: 1 * mm}
	a, err := ring.Area()
	fmt.Println(a.Text(cm2, 1), err)
	ring.Inner = 170 * mm
	_, err = ring.Area()
	fmt.Println(err)
	fmt.Println(errors.Is(err, units.ErrInconsistent))
	// Output:
	// 184.7 cm² <nil>
	// ring inner diameter 170 mm: values that contradict; need less than the outer diameter of 160 mm
	// true
}

// A movement pillar that hangs by a screw in one end.
func ExampleCylinder() {
	a, err := shape.Cylinder{Diameter: 9 * mm, Length: 45 * mm, OpenEnds: 1}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 13.36 cm² <nil>
}

// A chime tube hardly plates inside: the outside counts, and the two end rings.
func ExampleTube() {
	tube := shape.Tube{Outer: 20 * mm, Inner: 17 * mm, Length: 600 * mm, Sides: shape.OutsideOnly}
	a, err := tube.Area()
	fmt.Println(a.Text(cm2, 0), err)
	// Output: 379 cm² <nil>
}

// The spire of a finial, on a base that does not plate.
func ExampleCone() {
	a, err := shape.Cone{BaseDiameter: 12 * mm, Height: 40 * mm, OpenBase: true}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 7.62 cm² <nil>
}

func ExampleSphere() {
	a, err := shape.Sphere{Diameter: 16 * mm}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 8.04 cm² <nil>
}

// A lens-shaped bob: two domes rim to rim.
func ExampleCap() {
	dome := shape.Cap{BaseDiameter: 90 * mm, Height: 12 * mm, OpenBase: true}
	a, err := shape.Times{Count: 2, Piece: dome}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 136.3 cm² <nil>
}

// A bezel rim of round section, 120 mm over all.
func ExampleTorus() {
	a, err := shape.Torus{CentreDiameter: (120 - 6) * mm, TubeDiameter: 6 * mm}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 67.5 cm² <nil>
}

// A hexagonal standoff.
func ExampleHexBar() {
	a, err := shape.HexBar{AcrossFlats: 7 * mm, Length: 30 * mm}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 8.12 cm² <nil>
}

// Rack wire of 1.2 mm, three metres of it.
func ExampleWire() {
	a, err := shape.Wire{Diameter: 1.2 * mm, Length: 3 * units.Metre}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 113.1 cm² <nil>
}
