package sense_test

import (
	"fmt"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

func ExampleLimit_Check() {
	fmt.Println(sense.Content().Check(1e6 * units.GramPerLitre))
	fmt.Println(sense.Volts().Check(6), sense.Volts().Check(0))
	// Output:
	// metal content 1e+06 g/L: out of range; need at most 1000 g/L (no plating bath holds more metal in a litre); check the unit and the point
	// <nil> <nil>
}

func ExampleLimit_Question() {
	fmt.Println(sense.Solution().Question(units.Celsius(120)))
	fmt.Println(sense.Volume().Question(5*units.Litre) == "")
	// Output:
	// temperature of the solution of 120 °C is outside the usual 10 °C to 98 °C
	// true
}

func ExampleLimit_CheckAs() {
	fmt.Println(sense.Time().CheckAs("usual immersion time", 900*units.Day))
	// Output:
	// usual immersion time 21600 h: out of range; need at most 8784 h (no load stays a year); check the unit and the point
}
