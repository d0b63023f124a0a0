package shape_test

import (
	"fmt"

	"example.com/laydown/plating/shape"
	"example.com/laydown/units"
)

// A screw of the back cock: 6 mm of M3 with a pitch of 0.5 mm.
func ExampleThread() {
	t := shape.Thread{Diameter: 3 * mm, Pitch: 0.5 * mm, Length: 6 * mm}
	a, err := t.Area()
	fmt.Println(a.Text(units.SquareMillimetre, 1), err)
	d1, err := t.MinorDiameter()
	fmt.Println(d1.Text(mm, 3), err)
	k, err := t.Factor()
	fmt.Printf("%.3f times the plain wall %v\n", float64(k), err)
	// Output:
	// 83.0 mm² <nil>
	// 2.459 mm <nil>
	// 1.467 times the plain wall <nil>
}

// A weight chain of 2 m: oval links of 1.6 mm wire, 12 mm by 8 mm outside, so
// that each adds its inner length of 8.8 mm.
func ExampleChain() {
	link, err := shape.OvalLink(12*mm, 8*mm, 1.6*mm)
	if err != nil {
		fmt.Println(err)
		return
	}
	chain := shape.Chain{WireDiameter: 1.6 * mm, Centreline: link, Length: 2 * units.Metre, LinkPitch: (12 - 2*1.6) * mm}
	a, err := chain.Area()
	fmt.Println(a.Text(units.SquareDecimetre, 2), err)
	// Output: 3.21 dm² <nil>
}

func ExampleOvalLink() {
	l, err := shape.OvalLink(12*mm, 8*mm, 1.6*mm)
	fmt.Println(l.Text(mm, 2), err)
	// Output: 28.11 mm <nil>
}

// A movement plate of 2.5 mm with four pillar holes. A hole twice as wide as it
// is deep changes nothing; these are wider and take something off.
func ExampleDrilled() {
	plate := shape.Plate{Length: 110 * mm, Width: 90 * mm, Thickness: 2.5 * mm}
	drilled := shape.Drilled{Piece: plate, Holes: []shape.Hole{{Diameter: 8 * mm, Depth: 2.5 * mm, Count: 4}}}
	before, _ := plate.Area()
	after, err := drilled.Area()
	fmt.Println(before.Text(cm2, 2), after.Text(cm2, 2), err)
	drilled.Holes[0].Diameter = 95 * mm
	_, err = drilled.Area()
	fmt.Println(err)
	// Output:
	// 208.00 cm² 206.49 cm² <nil>
	// hole diameter 95 mm: values that contradict; need less than the metal it is drilled in, 90 mm
}

// A winding hole in a plate of 3 mm: too narrow for the current, then plating.
func ExampleHole() {
	bare, err := shape.Hole{Diameter: 2 * mm, Depth: 3 * mm, Bare: true}.Change()
	fmt.Println(bare.Text(units.SquareMillimetre, 1), err)
	open, err := shape.Hole{Diameter: 2 * mm, Depth: 3 * mm}.Change()
	fmt.Println(open.Text(units.SquareMillimetre, 1), err)
	// Output:
	// -6.3 mm² <nil>
	// 12.6 mm² <nil>
}

// Twelve loose screws: head, thread, and the plain shank with the end disc.
func ExampleScrewHead() {
	head := shape.ScrewHead{Style: shape.CheeseHead, Diameter: 5 * mm, Height: 2 * mm, Shank: 3 * mm}
	shank := shape.Cylinder{Diameter: 3 * mm, Length: 4 * mm, OpenEnds: 1}
	thread := shape.Thread{Diameter: 3 * mm, Pitch: 0.5 * mm, Length: 6 * mm}
	a, err := shape.Times{Count: 12, Piece: shape.Assembly{head, shank, thread}}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 23.0 cm² <nil>
}

// Two screws stay in the plate while it is plated; each hides the disc under its
// head.
func ExampleScrewHead_Covers() {
	head := shape.ScrewHead{Diameter: 5 * mm, Height: 2 * mm, Shank: 3 * mm}
	hidden, err := head.Covers()
	if err != nil {
		fmt.Println(err)
		return
	}
	plate := shape.Plate{Length: 40 * mm, Width: 20 * mm, Thickness: 2 * mm}
	a, err := shape.Masked{Piece: plate, Covered: 2 * hidden}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 18.01 cm² <nil>
}

// Hour and minute hand on one rack hook.
func ExampleSum() {
	hour := shape.Plate{Length: 45 * mm, Width: 6 * mm, Thickness: 0.8 * mm}
	minute := shape.Plate{Length: 70 * mm, Width: 5 * mm, Thickness: 0.8 * mm}
	hook := shape.Wire{Diameter: 1 * mm, Length: 60 * mm}
	a, err := shape.Sum(hour, minute, hook)
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 16.30 cm² <nil>
}

// The working of an assembly lists that of every part.
func ExampleAssembly() {
	rim := shape.Torus{CentreDiameter: 114 * mm, TubeDiameter: 6 * mm}
	lugs := shape.Times{Count: 3, Piece: shape.Plate{Length: 10 * mm, Width: 6 * mm}}
	steps, err := shape.Assembly{rim, lugs}.Working()
	for _, s := range steps {
		fmt.Println(s.Formula, "is", s.Result.Value)
	}
	fmt.Println(err)
	// Output:
	// A = π²·D·d is 67.5081 cm²
	// A = n·L·W + 2·(L + W)·t is 1.2 cm²
	// A = N·B is 3.6 cm²
	// A = A1 + A2 is 71.1081 cm²
	// <nil>
}

func ExampleTimes() {
	a, err := shape.Times{Count: 12, Piece: shape.Disc{Diameter: 10 * mm, Thickness: 1 * mm}}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 22.6 cm² <nil>
}

// Lacquer covers a printed name on a dial plate.
func ExampleMasked() {
	dial := shape.Plate{Length: 180 * mm, Width: 150 * mm, Faces: shape.OneFace}
	a, err := shape.Masked{Piece: dial, Covered: 12 * cm2}.Area()
	fmt.Println(a.Text(cm2, 0), err)
	_, err = shape.Masked{Piece: dial, Covered: 300 * cm2}.Area()
	fmt.Println(err)
	// Output:
	// 258 cm² <nil>
	// masked area 300 cm²: values that contradict; need less than the piece's 270 cm²
}

// A pillar is riveted to a plate: the spot vanishes twice, from plate and pillar.
func ExampleLess() {
	plate := shape.Plate{Length: 60 * mm, Width: 40 * mm, Thickness: 2 * mm}
	pillar := shape.Cylinder{Diameter: 8 * mm, Length: 30 * mm}
	spot := shape.Disc{Diameter: 8 * mm, Faces: shape.OneFace}
	a, err := shape.Less{Piece: shape.Assembly{plate, pillar}, Off: shape.Times{Count: 2, Piece: spot}}.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 59.54 cm² <nil>
}

// A cast case whose area the drawing states, with its bezel.
func ExampleKnown() {
	casting := shape.Known{Value: 410 * cm2, What: "area of the cast case, from its drawing"}
	a, err := shape.Sum(casting, shape.Torus{CentreDiameter: 114 * mm, TubeDiameter: 6 * mm})
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 477.5 cm² <nil>
}

// A pierced brass hand of 0.8 mm weighs 3.4 g; a thread laid round all its edges
// is 310 mm long.
func ExampleWeighedSheet() {
	hand := shape.WeighedSheet{Mass: 3.4 * units.Gram, Density: 8.5 * units.GramPerCubicCentimetre,
		Thickness: 0.8 * mm, Outline: 310 * mm}
	a, err := hand.Area()
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 12.48 cm² <nil>
}

// The same hand without its edges.
func ExampleSheetFromMass() {
	a, err := shape.SheetFromMass(3.4*units.Gram, 8.5*units.GramPerCubicCentimetre, 0.8*mm)
	fmt.Println(a.Text(cm2, 2), err)
	// Output: 10.00 cm² <nil>
}

// Is it fair to leave out the edges of a hand blank, 60 mm by 5 mm?
func ExampleEdgeShare() {
	s, err := shape.EdgeShare(60*mm, 5*mm, 0.8*mm)
	fmt.Println(s.Percent(1), err)
	// Output: 17.3 % <nil>
}

// A length of loose suspension wire on the scales.
func ExampleWireFromMass() {
	a, err := shape.WireFromMass(5*units.Gram, 8.5*units.GramPerCubicCentimetre, 0.5*mm)
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 47.1 cm² <nil>
}

func ExampleWeighedWire() {
	a, err := shape.WeighedWire{Mass: 5 * units.Gram, Density: 8.5 * units.GramPerCubicCentimetre,
		Diameter: 0.5 * mm}.Area()
	fmt.Println(a.Text(cm2, 1), err)
	// Output: 47.1 cm² <nil>
}
