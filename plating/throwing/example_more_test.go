package throwing_test

import (
	"fmt"

	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
)

func ExampleHeatleyOf() {
	h, err := throwing.HeatleyOf(5, 2.5)
	fmt.Println(h, err)
	// Output: 62.5 % (Heatley, distances 5:1) <nil>
}

func ExampleFieldOf() {
	f, err := throwing.FieldOf(5, 2.5)
	fmt.Println(f, err)
	// Output: 45.5 % (Field, distances 5:1) <nil>
}

func ExampleHeatley_Metal() {
	m, err := throwing.Heatley{Cell: 5, Power: 0.625}.Metal()
	fmt.Printf("%.2f:1 %v\n", float64(m), err)
	// Output: 2.50:1 <nil>
}

// Silver for bezels: 12 S/m, polarisation 20 Ω·cm², in the usual cell.
func ExampleCell_Wagner() {
	wa, err := throwing.Cell{Near: 2.5 * units.Centimetre, Far: 12.5 * units.Centimetre}.
		Wagner(12*units.SiemensPerMetre, 20*units.OhmSquareCentimetre)
	fmt.Printf("%.2f %v\n", float64(wa), err)
	// Output: 0.96 <nil>
}

func ExampleCell_Ratio() {
	k, err := throwing.Cell{Near: 4 * units.Centimetre, Far: 6.6 * units.Centimetre}.Ratio()
	fmt.Printf("%.2f %v\n", float64(k), err)
	// Output: 1.65 <nil>
}

func ExampleLinearRatio() {
	m, err := throwing.LinearRatio(5, 1)
	fmt.Printf("%.2f %v\n", float64(m), err)
	// Output: 3.00 <nil>
}

func ExampleTafelWagner() {
	xi, err := throwing.TafelWagner(5, 2.5)
	fmt.Printf("%.3f %v\n", float64(xi), err)
	// Output: 1.091 <nil>
}

// A pendulum bob with a sunk rim: a fifth of its face lies deep and gets half.
func ExampleTwoLevels() {
	d, err := throwing.TwoLevels(2, 0.2)
	fmt.Println(d.MinToMean.Percent(1), err)
	// Output: 55.6 % <nil>
}

// A keyhole tube of 4 mm, 10 mm deep, in a bath of 8 S/m with 13 Ω·cm².
func ExampleRecess_Linear() {
	hole := throwing.Recess{Width: 4 * units.Millimetre, Depth: 10 * units.Millimetre}
	nu, err := hole.Number(8*units.SiemensPerMetre, 13*units.OhmSquareCentimetre)
	fmt.Printf("%.2f %v\n", float64(nu), err)
	th, err := hole.Linear(8*units.SiemensPerMetre, 13*units.OhmSquareCentimetre)
	fmt.Println(th.Bottom.Percent(1), th.Mean.Percent(0), err)
	// Output:
	// 3.10 <nil>
	// 6.9 % 31 % <nil>
}

func ExampleRecess_LinearDepth() {
	d, err := throwing.Recess{Width: 2 * units.Millimetre}.LinearDepth(0.25, 8*units.SiemensPerMetre,
		13*units.OhmSquareCentimetre)
	fmt.Println(d.Text(units.Millimetre, 1), err)
	// Output: 4.3 mm <nil>
}

// A through hole plates from both ends: half its length, no floor.
func ExampleRecess_Tafel() {
	half := throwing.Recess{Width: 2 * units.Millimetre, Depth: 4 * units.Millimetre, BareFloor: true}
	th, err := half.Tafel(8*units.SiemensPerMetre, 13*units.OhmSquareCentimetre)
	fmt.Println(th.Bottom.Percent(0), err)
	// Output: 45 % <nil>
}

func ExamplePrimaryMap_At() {
	m, err := throwing.Trapezoid267().Primary()
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := m.At(m.Cathode() / 2)
	fmt.Printf("%.3f %v\n", float64(r), err)
	x, err := m.Place(1)
	fmt.Println(x.Text(units.Millimetre, 1), err)
	// Output:
	// 0.714 <nil>
	// 37.6 mm <nil>
}

func ExampleClass_Band() {
	low, high, err := throwing.FlatSheet.Band()
	fmt.Println(low.Percent(0), high.Percent(0), err)
	// Output: 50 % 80 % <nil>
}
