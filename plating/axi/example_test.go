package axi_test

import (
	"context"
	"fmt"
	"math"

	. "example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// acidGold is the cathode of the invented bath of the examples: 1 A/m² at equilibrium.
func acidGold() current.Law { return current.TafelCathode(1, 0.5, units.Celsius(35)) }

// bob is a pendulum bob of 80 mm with a groove 3 mm wide and 3 mm deep in its rim.
func bob() Profile {
	const mm = units.Millimetre
	return NewProfile(Point{0, 141 * mm}).CapTo(Point{36 * mm, 147 * mm}).
		LineTo(Point{40 * mm, 147 * mm}, Point{40 * mm, 148.5 * mm}, Point{37 * mm, 148.5 * mm},
			Point{37 * mm, 151.5 * mm}, Point{40 * mm, 151.5 * mm}, Point{40 * mm, 153 * mm}, Point{36 * mm, 153 * mm}).
		CapTo(Point{0, 159 * mm})
}

// A pendulum bob with a recessed rim hangs in a tank with a round sheet anode. Order 6 is
// enough for the digits printed, and quicker than the default of 8.
func ExampleSolve() {
	const mm = units.Millimetre
	bath := Tank(6*units.SiemensPerMetre, 150*mm, 300*mm)
	cell := ProfileProblem{Bath: bath, Drive: current.ByCurrent(0.6), Parts: []Revolved{
		{Name: "bob", Profile: bob(), Law: acidGold()},
		{Name: "anode", Profile: Tube(130*mm, 132*mm, 50*mm, 250*mm), Kind: current.Anode},
	}}
	s, err := Solve(context.Background(), cell, ProfileOptions{Order: 6})
	if err != nil {
		fmt.Println(err)
		return
	}
	part := s.Parts[0]
	fmt.Printf("thinnest spot %.2f of the mean, at r = %.1f mm\n", part.Whole.MinToAverage(),
		part.Whole.MinAt.At.R.In(mm))
	face, _ := part.Between(0, bob().Corner(1)) // the lower face: the first segment
	fmt.Printf("lower face: %.2f of the metal, thinnest %.2f of the mean\n", face.PartOfWhole, face.MinToAverage())
	fmt.Println("trustworthy:", part.MinError < 1e-4 && s.Checks.CurrentError < 1e-6)
	// Output:
	// thinnest spot 0.67 of the mean, at r = 37.0 mm
	// lower face: 0.30 of the metal, thinnest 0.87 of the mean
	// trustworthy: true
}

// A turned finial ends in a point, where the coat is thick; a robber ring
// takes part of the excess.
func Example_finial() {
	const mm = units.Millimetre
	finial := NewProfile(Point{0, 100 * mm}).LineTo(Point{6 * mm, 100 * mm}, Point{6 * mm, 108 * mm}).
		ArcVia(Point{12 * mm, 116 * mm}, Point{6 * mm, 124 * mm}).LineTo(Point{0, 150 * mm})
	cell := ProfileProblem{Bath: Tank(6, 80*mm, 200*mm).With(WallSegment{Segment: TankSide, Kind: current.Anode}),
		Drive: current.ByCurrent(0.1),
		Parts: []Revolved{{Name: "finial", Profile: finial, Law: acidGold()}}}
	plain, err := Solve(context.Background(), cell, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	cell.Parts = append(cell.Parts, Revolved{Name: "robber", Profile: Torus(14*mm, 150*mm, 2*mm), Law: acidGold()})
	cell.Drive = current.ByCurrent(0.15)
	robbed, err := Solve(context.Background(), cell, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range []*ProfileSolution{plain, robbed} {
		w := s.Parts[0].Whole
		fmt.Printf("tip %.2f, thinnest %.2f of the mean\n", float64(w.Max/w.Mean), w.MinToAverage())
	}
	// Output:
	// tip 2.37, thinnest 0.76 of the mean
	// tip 1.76, thinnest 0.76 of the mean
}

// A bell hangs by its stem through the surface of the bath. An anode inside
// brings metal to its inner wall.
func Example_bell() {
	const mm = units.Millimetre
	bell := NewProfile(Point{0, 138 * mm}).CapTo(Point{20 * mm, 128 * mm}).LineTo(Point{30 * mm, 90 * mm},
		Point{33 * mm, 90 * mm}, Point{23 * mm, 130 * mm}).
		ArcVia(Point{14 * mm, 139 * mm}, Point{3 * mm, 142 * mm}).LineTo(Point{3 * mm, 200 * mm})
	cell := ProfileProblem{Bath: Tank(6, 100*mm, 200*mm).With(WallSegment{Segment: TankSide, Kind: current.Anode}),
		Drive: current.ByCurrent(0.4),
		Parts: []Revolved{{Name: "bell", Profile: bell, Law: acidGold()}}}
	outside, err := Solve(context.Background(), cell, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	cell.Parts = append(cell.Parts, Revolved{Name: "inner anode", Profile: Rod(3*mm, 60*mm, 120*mm), Kind: current.Anode})
	inside, err := Solve(context.Background(), cell, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range []*ProfileSolution{outside, inside} {
		w := s.Parts[0].Whole
		fmt.Printf("thinnest %.2f of the mean at height %.0f mm\n", w.MinToAverage(), w.MinAt.At.Z.In(mm))
	}
	// Output:
	// thinnest 0.22 of the mean at height 138 mm
	// thinnest 0.53 of the mean at height 138 mm
}

// A profile is built step by step; lengths and areas are exact.
func ExampleProfile() {
	const mm = units.Millimetre
	ball := Ball(10*mm, 0)
	fmt.Printf("%d segment, length %.3f mm, area %.4f cm²\n", ball.Segments(), ball.Length().In(mm),
		ball.Area().In(units.SquareCentimetre))
	fmt.Println(NewProfile(Point{0, 0}).LineTo(Point{-1, 0}).Check())
	// Output:
	// 1 segment, length 31.416 mm, area 12.5664 cm²
	// profile, segment 0, R -1 m: below zero; need zero or more
}

// The least current density on a marked stretch, and where it is.
func ExampleProfileResult_Between() {
	const mm = units.Millimetre
	rod := Rod(5*mm, 40*mm, 60*mm)
	s, err := Solve(context.Background(),
		ProfileProblem{Bath: Tank(6, 40*mm, 100*mm).With(WallSegment{Segment: TankSide, Kind: current.Anode}),
			Parts: []Revolved{{Profile: rod, Law: acidGold()}}, Drive: current.ByVoltage(0.3)}, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	side, _ := s.Parts[0].Between(rod.Corner(1), rod.Corner(2))
	fmt.Printf("%.2f A/dm² at height %.0f mm\n", side.Min.In(units.AmperePerSquareDecimetre), side.MinAt.At.Z.In(mm))
	// Output: 0.63 A/dm² at height 50 mm
}

// The potential anywhere in the bath.
func ExampleProfileSolution_Potential() {
	s, err := Solve(context.Background(), ProfileProblem{Bath: OpenWithFarAnode(10),
		Parts: []Revolved{{Profile: Ball(0.01, 0)}},
		Drive: current.ByVoltage(1)}, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	v, err := s.Potential(Point{0.02, 0})
	fmt.Printf("%.3f V %v\n", float64(v), err)
	// Output: 0.500 V <nil>
}

// A disc on the floor of a half space, at Wagner number 1.
func ExampleElectrolyte() {
	bath := OpenWithFarAnode(1)
	bath.Extent = HalfSpace
	disc := Revolved{Profile: NewProfile(Point{0, 0}).LineTo(Point{1, 0}), Sheet: true, Law: current.LinearLaw(1)}
	s, err := Solve(context.Background(), ProfileProblem{Bath: bath, Parts: []Revolved{disc}, Drive: current.ByVoltage(1)},
		ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("centre %.4f of the mean\n", s.Parts[0].Whole.MinToAverage())
	// Output: centre 0.8826 of the mean
}

// The perimeter of an ellipse twice as long as wide, by its integral of the second
// kind.
func ExampleElliptic() {
	_, e, _ := Elliptic(0.75, 0.25)
	fmt.Printf("%.4f times that of a circle of half its length\n", 4*e/(2*math.Pi))
	// Output: 0.7710 times that of a circle of half its length
}

// Two balls in a wide bath: all current runs from the one to the other.
func ExampleOpen() {
	const mm = units.Millimetre
	s, err := Solve(context.Background(), ProfileProblem{Bath: Open(6), Drive: current.ByCurrent(0.1), Parts: []Revolved{
		{Name: "knob", Profile: Ball(10*mm, 0), Law: current.TafelCathode(1, 0.5, units.Celsius(38))},
		{Name: "anode", Profile: Ball(10*mm, 80*mm), Kind: current.Anode}}}, ProfileOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Parts[0].Whole.MinAt.At.Z < 0, s.Parts[0].Whole.MinToAverage() < 1)
	// Output: true true
}
