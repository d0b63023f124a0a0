package working_test

import (
	"fmt"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A calculation of one's own, shown as those of the library are: the mass that a
// charge of 540 C brings from a cyanide bath.
func Example() {
	q := 540 * units.Coulomb
	m := units.Mass(0.35 * float64(q) * 0.196966570 / 96485.33212)
	step := working.Step{Formula: "m = η·Q·M/(z·F)", Source: "OpenStaxChem2e",
		Result: working.Of("m", "mass of gold", m),
		Terms: []working.Term{
			working.Of("η", "current efficiency", units.Efficiency(0.35)), working.Of("Q", "charge", q),
			working.Of("M", "molar mass", 196.966570*units.GramPerMole), working.Number("z", "electrons an ion", 1),
			working.Constant("F", "Faraday constant", 96485.33212, "C/mol")}}
	fmt.Print(working.Text([]working.Step{step}))
	back, err := step.Recompute()
	fmt.Printf("%.6f g %v\n", back*1e3, err)
	// Output:
	// mass of gold: 385.827 mg
	//   m = η·Q·M/(z·F)  [OpenStaxChem2e]
	//     η = 35 % (current efficiency)
	//     Q = 9 A·min (charge)
	//     M = 196.967 g/mol (molar mass)
	//     z = 1 (electrons an ion)
	//     F = 96485.33212 C/mol (Faraday constant)
	// 0.385827 g <nil>
}

func ExampleOf() {
	fmt.Println(working.Of("t", "time", 90*units.Second).Value)
	// Output: 1 min 30 s
}

func ExampleNumber() {
	fmt.Println(working.Number("n", "pieces", 24).Value)
	// Output: 24
}

func ExampleConstant() {
	fmt.Println(working.Constant("F", "Faraday constant", 96485.33212, "C/mol").Value)
	// Output: 96485.33212 C/mol
}

func ExampleText() {
	step := working.Step{Formula: "t = n·t₁", Source: "Definition", Result: working.Of("t", "time in all",
		30*units.Minute),
		Terms: []working.Term{working.Number("n", "loads", 3), working.Of("t₁", "of one load", 10*units.Minute)}}
	fmt.Print(working.Text([]working.Step{step}))
	// Output:
	// time in all: 30 min
	//   t = n·t₁  [Definition]
	//     n = 3 (loads)
	//     t₁ = 10 min (of one load)
}
