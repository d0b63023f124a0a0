package electrical_test

import (
	"fmt"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
)

// A rack of hands of 1 dm² before a mesh of 4 dm², 12 cm away in a gold bath of 6 S/m.
func ExampleResistance() {
	r, err := electrical.Resistance(6*units.SiemensPerMetre, 12*units.Centimetre, 4*units.SquareDecimetre,
		1*units.SquareDecimetre)
	fmt.Println(r.Text(units.Ohm, 2), err)
	// Output: 0.92 Ω <nil>
}

func ExampleMeanArea() {
	a, err := electrical.MeanArea(4*units.SquareDecimetre, 1*units.SquareDecimetre)
	fmt.Println(a.Text(units.SquareDecimetre, 2), err)
	// Output: 2.16 dm² <nil>
}

func ExampleMains() {
	p, err := electrical.Mains(200*units.Watt, 0.8)
	fmt.Println(p, err)
	// Output: 250 W <nil>
}

// A figure that is known exactly, where a window is asked for.
func ExampleExactly() {
	w := electrical.Exactly(15 * units.Centimetre)
	fmt.Println(w.Low == w.High, w.Low.Text(units.Centimetre, 0))
	// Output: true 15 cm
}

func ExampleSaturationPressure() {
	p, err := electrical.SaturationPressure(units.Celsius(55))
	fmt.Println(p.Text(units.Pascal, 0), err)
	// Output: 15761 Pa <nil>
}

func ExampleLatentHeat() {
	h, err := electrical.LatentHeat(units.Celsius(55))
	fmt.Printf("%.2f kJ/g %v\n", float64(h)/1e6, err)
	// Output: 2.37 kJ/g <nil>
}

func ExampleAnodeWorking() {
	steps, err := electrical.AnodeWorking(1.8*units.SquareDecimetre, 2, 1.44*units.Ampere)
	for _, s := range steps {
		fmt.Println(s.Formula, "=", s.Result.Value)
	}
	fmt.Println(err)
	// Output:
	// Aa = r·Ac = 360 cm²
	// ja = I/Aa = 0.4 A/dm²
	// <nil>
}

func ExampleAnodeUsedWorking() {
	s, err := electrical.AnodeUsedWorking(4.0247*units.GramPerAmpereHour, 6*units.AmpereHour, 1, 0.99)
	fmt.Println(s.Formula, "=", s.Result.Value, err)
	// Output: m = s·ε·η·Q = 23.9067 g <nil>
}
