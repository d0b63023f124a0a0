package units_test

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// What a formula of one's own says of values that it cannot take.
func ExampleFinite() {
	fmt.Println(units.Finite("area", units.Area(math.Inf(1))))
	fmt.Println(units.Finite("area", 12*units.SquareCentimetre))
	// Output:
	// area +Inf m²: not a finite number; need a finite number
	// <nil>
}

func ExampleFraction() {
	fmt.Println(units.Fraction("share of the time", units.Ratio(1.2)))
	fmt.Println(units.Fraction("share of the time", units.Ratio(0)))
	// Output:
	// share of the time 1.2: out of range; need a fraction from 0 to 1
	// <nil>
}

// A name from a file goes into a message cut to a decent length.
func ExampleClip() {
	fmt.Printf("no bath %q\n", units.Clip("hard gold, the one behind the door of the second workshop"))
	// Output: no bath "hard gold, the one behind the door of th…"
}

func ExampleMissing() {
	fmt.Println(units.Missing("reader", "one of a job file"))
	// Output: reader nil: not given; need one of a job file
}
