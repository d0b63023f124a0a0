package throwing_test

import (
	"fmt"
	"strings"

	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
)

// A cell of 12.5 and 2.5 cm gave 420 mg near and 140 mg far. One bath, three
// figures.
func ExampleNewHaringBlum() {
	k, err := throwing.HaringBlumCell{Near: 2.5 * units.Centimetre, Far: 12.5 * units.Centimetre}.Ratio()
	if err != nil {
		fmt.Println(err)
		return
	}
	m := units.Ratio(420.0 / 140)
	a, _ := throwing.NewHaringBlum(k, m)
	b, _ := throwing.NewHeatley(k, m)
	c, _ := throwing.NewField(k, m)
	fmt.Println(a)
	fmt.Println(b)
	fmt.Println(c)
	// Output:
	// 40.0 % (Haring-Blum, distances 5:1)
	// 50.0 % (Heatley, distances 5:1)
	// 33.3 % (Field, distances 5:1)
}

// A data sheet says 45 % after Field, cell 5:1. What is that in metal?
func ExampleField_Metal() {
	m, err := throwing.Field{Cell: 5, Power: 0.45}.Metal()
	fmt.Printf("%.2f:1 %v\n", float64(m), err)
	// Output: 2.52:1 <nil>
}

func ExampleHaringBlum_Metal() {
	m, err := throwing.HaringBlum{Cell: 5, Power: 0.4}.Metal()
	fmt.Printf("%.2f:1 %v\n", float64(m), err)
	// Output: 3.00:1 <nil>
}

// The cell's metal ratio of 3 carried over to a bezel that stands at 60 and
// 90 mm from the anode.
func ExampleLinearWagner() {
	wa, err := throwing.LinearWagner(5, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	part := wa * 25 / 60 // the cell's near distance over the bezel's
	m, err := throwing.LinearRatio(90.0/60, part)
	fmt.Printf("Wa %.2f in the cell, %.2f at the bezel, metal %.2f:1 %v\n", float64(wa), float64(part), float64(m), err)
	d, err := throwing.TwoLevels(m, 0.3)
	fmt.Println(d.MinToAverage.Percent(0), err)
	fmt.Println(d.Basis)
	// Output:
	// Wa 1.00 in the cell, 0.42 at the bezel, metal 1.35:1 <nil>
	// 80 % <nil>
	// by rule: metal 1.35:1 near to far, 30 % of the area far
}

func ExampleTafelRatio() {
	m, err := throwing.TafelRatio(5, 1)
	fmt.Printf("%.3f %v\n", float64(m), err)
	// Output: 2.571 <nil>
}

// A nickel strike is 12 % efficient near and 30 % far: the metal is more even
// than the current.
func ExampleMetalRatio() {
	m, err := throwing.MetalRatio(3, 0.12, 0.30)
	fmt.Printf("%.2f %v\n", float64(m), err)
	// Output: 1.20 <nil>
}

// How deep may a hole of 3 mm in a pillar be, if its floor is to get a third of
// the coat outside? The bath has 8 S/m and a Tafel slope of 52 mV for a factor e;
// the pillar runs at 0.4 A/dm².
func ExampleRecess_TafelDepth() {
	slope := units.AreaResistance(0.052 / 40) // b/j at the mouth
	hole := throwing.Recess{Width: 3 * units.Millimetre}
	d, err := hole.TafelDepth(1.0/3, 8*units.SiemensPerMetre, slope)
	fmt.Println(d.Text(units.Millimetre, 1), err)
	hole.Depth = d
	th, err := hole.Tafel(8*units.SiemensPerMetre, slope)
	fmt.Println(th.Bottom.Percent(1), th.Mean.Percent(0), err)
	// Output:
	// 5.8 mm <nil>
	// 33.3 % 51 % <nil>
}

// A sunk slot of a bezel takes part of the coat: what the estimate gets.
func ExampleThrow_Distribution() {
	slot := throwing.Recess{Width: 2 * units.Millimetre, Depth: 4 * units.Millimetre, Trench: true}
	th, err := slot.Linear(8*units.SiemensPerMetre, 13*units.OhmSquareCentimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := th.Distribution(0.1)
	fmt.Printf("%.2f %v\n", float64(d.MinToAverage), err)
	// Output: 0.44 <nil>
}

// Where on the panel of a 1 A test is 2 A/dm², and what is outside the law?
func ExamplePanel_Place() {
	x, err := throwing.Panel267.Place(1*units.Ampere, 2*units.AmperePerSquareDecimetre)
	fmt.Println(x.Text(units.Millimetre, 1), err)
	_, err = throwing.Panel267.Place(1*units.Ampere, 8*units.AmperePerSquareDecimetre)
	fmt.Println(err)
	// Output:
	// 39.1 mm <nil>
	// current density on the panel 8 A/dm²: outside the published range 0.298298 A/dm² to 6.13762 A/dm² [TestCell2013]
}

func ExamplePanel_Density() {
	j, err := throwing.Panel267.Density(2*units.Ampere, 2*units.Inch)
	fmt.Println(j.Text(units.AmperePerSquareDecimetre, 2), err)
	// Output: 2.81 A/dm² <nil>
}

// The same cell without polarisation: an upper bound of how uneven it can be.
func ExampleTrapezoid_Primary() {
	m, err := throwing.Trapezoid267().Primary()
	if err != nil {
		fmt.Println(err)
		return
	}
	high, _ := m.At(10 * units.Millimetre)
	low, _ := m.At(90 * units.Millimetre)
	s, _ := m.ShapeFactor()
	fmt.Printf("%.2f to %.2f of the mean, shape factor %.3f\n", float64(high), float64(low), float64(s))
	// Output: 2.15 to 0.10 of the mean, shape factor 0.947
}

func ExampleClass_Distribution() {
	d, err := throwing.ShallowRelief.Distribution()
	fmt.Println(d.MinToAverage.Percent(0), err)
	fmt.Println(d.Basis)
	_, err = throwing.DeepRecess.Distribution()
	fmt.Println(strings.ReplaceAll(err.Error(), "; ", ";\n"))
	// Output:
	// 40 % <nil>
	// rule of thumb for the class "shallow relief", 0.40 to 0.70, low end taken; common practice, no source
	// class of shape deep recess: out of range;
	// need a calculation with Recess or a mesh, or a measurement: no rule of thumb holds
}

// Five readings on a plated bob.
func ExampleFromReadings() {
	d, err := throwing.FromReadings([]units.Length{1.4e-6, 1.1e-6, 0.9e-6, 1.2e-6, 1.9e-6})
	fmt.Println(d.MinToAverage.Percent(0), d.Basis, err)
	// Output: 69 % measured at 5 places <nil>
}

func ExampleNewHeatley() {
	h, err := throwing.NewHeatley(5, 2.5)
	fmt.Println(h, err)
	// Output: 62.5 % (Heatley, distances 5:1) <nil>
}

func ExampleNewField() {
	f, err := throwing.NewField(5, 2.5)
	fmt.Println(f, err)
	// Output: 45.5 % (Field, distances 5:1) <nil>
}

func ExampleHeatley_Metal() {
	m, err := throwing.Heatley{Cell: 5, Power: 0.625}.Metal()
	fmt.Printf("%.2f:1 %v\n", float64(m), err)
	// Output: 2.50:1 <nil>
}

// Silver for bezels: 12 S/m, polarisation 20 Ω·cm², in the usual cell.
func ExampleHaringBlumCell_Wagner() {
	wa, err := throwing.HaringBlumCell{Near: 2.5 * units.Centimetre, Far: 12.5 * units.Centimetre}.
		Wagner(12*units.SiemensPerMetre, 20*units.OhmSquareCentimetre)
	fmt.Printf("%.2f %v\n", float64(wa), err)
	// Output: 0.96 <nil>
}

func ExampleHaringBlumCell_Ratio() {
	k, err := throwing.HaringBlumCell{Near: 4 * units.Centimetre, Far: 6.6 * units.Centimetre}.Ratio()
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
	fmt.Println(d.MinToAverage.Percent(1), err)
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
