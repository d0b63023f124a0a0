package axi

import (
	"context"
	"fmt"
	"math"

	"example.com/laydown/plating/kinetics"
	"example.com/laydown/units"
)

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
	s, err := Solve(context.Background(), Problem{Bath: Open(6), Drive: ByCurrent(0.1), Parts: []Part{
		{Name: "knob", Profile: Ball(10*mm, 0), Law: kinetics.TafelCathode(1, 0.5, units.Celsius(38))},
		{Name: "anode", Profile: Ball(10*mm, 80*mm), Kind: Anode}}}, Options{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(s.Parts[0].Whole.MinAt.At.Z < 0, s.Parts[0].Whole.MinToMean() < 1)
	// Output: true true
}
