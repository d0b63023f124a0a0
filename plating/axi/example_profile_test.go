package axi_test

import (
	"context"
	"fmt"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A bezel with a round outer edge: a ring, so the profile comes back to its start.
func ExampleNewProfile() {
	const mm = units.Millimetre
	bezel := NewProfile(Point{40 * mm, 0}).LineTo(Point{50 * mm, 0}).
		ArcAround(Point{50 * mm, 4 * mm}, 180).
		LineTo(Point{40 * mm, 8 * mm}, Point{40 * mm, 0})
	fmt.Printf("%d segments, %.1f mm round, %.1f cm²\n", bezel.Segments(), bezel.Length().In(mm),
		bezel.Area().In(units.SquareCentimetre))
	fmt.Println(bezel.End(), bezel.Check())
	// Output:
	// 4 segments, 40.6 mm round, 118.1 cm²
	// (40 mm, 0 µm) <nil>
}

// A turned bead: a quarter ellipse out, a quarter ellipse back to the axis.
func ExampleProfile_OvalAcross() {
	const mm = units.Millimetre
	bead := NewProfile(Point{0, 0}).OvalAcross(Point{8 * mm, 5 * mm}).OvalUp(Point{0, 10 * mm})
	fmt.Println(bead.Check())
	fmt.Printf("%.2f cm²\n", bead.Area().In(units.SquareCentimetre))
	// Output:
	// <nil>
	// 6.13 cm²
}

// Where the segments of a rod begin: bottom, side, top.
func ExampleProfile_Corner() {
	const mm = units.Millimetre
	arbor := Rod(3*mm, 0, 40*mm)
	for i := range arbor.Segments() {
		s := arbor.Corner(i)
		fmt.Printf("segment %d from %.0f mm, at %v\n", i, s.In(mm), arbor.Place(s))
	}
	// Output:
	// segment 0 from 0 mm, at (0 µm, 0 µm)
	// segment 1 from 3 mm, at (3 mm, 0 µm)
	// segment 2 from 43 mm, at (3 mm, 40 mm)
}

// One drawing, hung the other way up and lower in the tank.
func ExampleProfile_UpsideDown() {
	const mm = units.Millimetre
	cup := NewProfile(Point{0, 0}).LineTo(Point{20 * mm, 0}, Point{20 * mm, 30 * mm}, Point{18 * mm, 30 * mm},
		Point{18 * mm, 2 * mm}, Point{0, 2 * mm})
	hung := cup.UpsideDown(0).Moved(0, 180*mm)
	fmt.Println(hung.Start(), hung.Place(hung.Corner(2)))
	fmt.Println(hung.Area() == cup.Area())
	// Output:
	// (0 µm, 180 mm) (20 mm, 150 mm)
	// true
}

// Shapes of anodes that need no drawing, and their areas.
func ExampleRod() {
	const mm = units.Millimetre
	for _, p := range []Profile{Rod(5*mm, 0, 100*mm), Ball(15*mm, 0), Torus(60*mm, 0, 6*mm),
		Tube(80*mm, 82*mm, 0, 120*mm)} {
		fmt.Printf("segments: %d, area %.1f cm²\n", p.Segments(), p.Area().In(units.SquareCentimetre))
	}
	// Output:
	// segments: 3, area 33.0 cm²
	// segments: 1, area 28.3 cm²
	// segments: 2, area 71.1 cm²
	// segments: 4, area 1241.8 cm²
}

// A ball knob of a case, half way down a tank: its area by the profile and by hand.
func ExampleBall() {
	const mm = units.Millimetre
	knob := Ball(9*mm, 100*mm)
	fmt.Printf("%.3f cm², lowest at %v\n", knob.Area().In(units.SquareCentimetre), knob.Start())
	// Output: 10.179 cm², lowest at (0 µm, 91 mm)
}

// A robber ring of 2 mm wire about the rim of a bob.
func ExampleTorus() {
	const mm = units.Millimetre
	ring := Torus(44*mm, 150*mm, 2*mm)
	fmt.Printf("%.1f cm²; wire from %v\n", ring.Area().In(units.SquareCentimetre), ring.Start())
	// Output: 17.4 cm²; wire from (44 mm, 149 mm)
}

// A sheet anode bent round the tank, 2 mm thick.
func ExampleTube() {
	const mm = units.Millimetre
	sheet := Tube(130*mm, 132*mm, 50*mm, 250*mm)
	fmt.Printf("%.0f cm² in all\n", sheet.Area().In(units.SquareCentimetre))
	// Output: 3325 cm² in all
}

// A tank whose side is the anode and whose bottom insulates.
func ExampleTank() {
	const mm = units.Millimetre
	bath := Tank(6*units.SiemensPerMetre, 80*mm, 200*mm).With(WallSegment{Segment: TankSide, Name: "anode",
		Kind: current.Anode})
	fmt.Printf("%d segments, %d of them metal\n", bath.Shape.Segments(), len(bath.Walls))
	fmt.Printf("anode of %.0f mm height\n", (bath.Shape.Corner(TankSide+1) - bath.Shape.Corner(TankSide)).In(mm))
	// Output:
	// 3 segments, 1 of them metal
	// anode of 200 mm height
}

// A tank with both walls as anodes: each With leaves the bath before it as it was.
func ExampleElectrolyte_With() {
	const mm = units.Millimetre
	plain := Tank(6*units.SiemensPerMetre, 80*mm, 200*mm)
	side := plain.With(WallSegment{Segment: TankSide, Kind: current.Anode})
	both := side.With(WallSegment{Segment: TankBottom, Kind: current.Anode})
	fmt.Println(len(plain.Walls), len(side.Walls), len(both.Walls))
	// Output: 0 1 2
}

// A ball in a bath without walls: without polarisation the current is 4πκRV.
func ExampleOpenWithFarAnode() {
	const mm = units.Millimetre
	s, err := Solve(context.Background(), ProfileProblem{Bath: OpenWithFarAnode(6 * units.SiemensPerMetre),
		Parts: []Revolved{{Name: "knob", Profile: Ball(9*mm, 0)}}, Drive: current.ByVoltage(0.5)}, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.5f A\n", float64(s.Current))
	// Output: 0.33929 A
}

// A cell without an anode is refused before anything is computed.
func ExampleProfileProblem_Check() {
	const mm = units.Millimetre
	cell := ProfileProblem{Bath: Tank(6*units.SiemensPerMetre, 80*mm, 200*mm), Drive: current.ByCurrent(0.1),
		Parts: []Revolved{{Name: "finial", Profile: Ball(9*mm, 100*mm), Law: acidGold()}}}
	fmt.Println(cell.Check())
	cell.Bath = cell.Bath.With(WallSegment{Segment: TankSide, Kind: current.Anode})
	fmt.Println(cell.Check())
	// Output:
	// cell without anode: no electrode; need a part or wall of kind Anode, or a far anode
	// <nil>
}
