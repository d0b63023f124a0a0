package electrical_test

import (
	"fmt"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Six bezels of carriage clocks in the nickel tank: what the rectifier will
// show, what it takes, what it does to the bath.
func Example() {
	cell := electrical.Cell{
		Conductivity: electrical.Interval[units.Conductivity]{Low: 5 * units.SiemensPerMetre,
			High: 10 * units.SiemensPerMetre},
		Gap:                  electrical.Interval[units.Length]{Low: 12 * units.Centimetre, High: 18 * units.Centimetre},
		Cathode:              9 * units.SquareDecimetre,
		Anode:                18 * units.SquareDecimetre,
		CathodeOverpotential: electrical.Interval[units.Voltage]{Low: 300 * units.Millivolt, High: 600 * units.Millivolt},
		AnodeOverpotential:   electrical.Interval[units.Voltage]{Low: 100 * units.Millivolt, High: 300 * units.Millivolt},
		Leads:                5 * units.Milliohm,
	}
	drop, err := cell.Voltage(27 * units.Ampere)
	if err != nil {
		fmt.Println(err)
		return
	}
	heat, err := cell.Heat(27*units.Ampere, 0.95, 1)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s to %s, of it in the solution %s to %s\n", drop.Total.Low.Text(units.Volt, 1),
		drop.Total.High.Text(units.Volt, 1),
		drop.Solution.Low.Text(units.Volt, 1), drop.Solution.High.Text(units.Volt, 1))
	fmt.Printf("heat %s to %s\n", heat.Low.Text(units.Watt, 0), heat.High.Text(units.Watt, 0))

	tank := electrical.HeatedTank{Mass: 24 * units.Kilogram, SpecificHeat: 3600, Loss: 4 * electrical.WattPerKelvin,
		Room: units.Celsius(20)}
	warm, err := tank.After(units.Celsius(55), heat.High, 30*units.Minute)
	hold, err2 := tank.Hold(units.Celsius(55), 0)
	fmt.Printf("without heater after 30 min %.1f °C; the heater holds it with %s, %v %v\n", warm.Celsius(), hold, err,
		err2)
	// Output:
	// 3.0 V to 8.5 V, of it in the solution 2.5 V to 7.5 V
	// heat 78 W to 226 W
	// without heater after 30 min 56.7 °C; the heater holds it with 140 W, <nil> <nil>
}

func ExampleAnodeArea() {
	a, err := electrical.AnodeArea(1.8*units.SquareDecimetre, 2)
	fmt.Println(a.Text(units.SquareDecimetre, 1), err)
	// Output: 3.6 dm² <nil>
}

func ExampleAnodeCurrentDensity() {
	j, err := electrical.AnodeCurrentDensity(1.44*units.Ampere, 3.6*units.SquareDecimetre)
	fmt.Println(j, err)
	// Output: 0.4 A/dm² <nil>
}

func ExampleAnodeUsed() {
	m, err := electrical.AnodeUsed(4.0247*units.GramPerAmpereHour, 6*units.AmpereHour, 1, 0.99)
	fmt.Println(m.Text(units.Gram, 1), "of silver", err)
	// Output: 23.9 g of silver <nil>
}

func ExampleResistanceWorking() {
	steps, err := electrical.ResistanceWorking(8*units.SiemensPerMetre, 15*units.Centimetre, 18*units.SquareDecimetre,
		9*units.SquareDecimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(working.Text(steps[1:]))
	// Output:
	// resistance of the solution: 144.406 mΩ
	//   R = L/(κ·Am)  [NaOHColumn]
	//     L = 150 mm (gap between the electrodes)
	//     κ = 8 S/m (conductivity)
	//     Am = 1298.43 cm² (mean area of the current's way)
}

func ExampleHeatedTank_Reach() {
	tank := electrical.HeatedTank{Mass: 24 * units.Kilogram, SpecificHeat: 3600, Loss: 4 * electrical.WattPerKelvin,
		Room: units.Celsius(18)}
	p, err := tank.Reach(units.Celsius(18), units.Celsius(55), 2*units.Hour, 0)
	fmt.Println(p.Text(units.Watt, 0), err)
	// Output: 522 W <nil>
}

func ExampleHeatedTank_LossFromCooling() {
	tank := electrical.HeatedTank{Mass: 24 * units.Kilogram, SpecificHeat: 3600, Room: units.Celsius(20)}
	h, err := tank.LossFromCooling(units.Celsius(55), units.Celsius(50), units.Hour)
	fmt.Printf("%.1f W/K %v\n", h.In(electrical.WattPerKelvin), err)
	// Output: 3.7 W/K <nil>
}

func ExampleOpenTop_Evaporation() {
	s := electrical.OpenTop{Area: 12 * units.SquareDecimetre, Water: units.Celsius(55), Air: units.Celsius(20),
		Humidity: 0.5}
	e, err := s.Evaporation(8 * units.Hour)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s to %s in a day's work, %s to %s\n", e.Litres.Low.Text(units.Litre, 1), e.Litres.High.Text(units.Litre,
		1),
		e.Heat.Low.Text(units.Watt, 0), e.Heat.High.Text(units.Watt, 0))
	// Output: 1.4 L to 2.4 L in a day's work, 115 W to 194 W
}

// The strike for stainless steel makes mostly hydrogen.
func ExampleVent_Air() {
	v := electrical.Vent{Current: 20 * units.Ampere, Efficiency: 0.1, Temperature: units.Celsius(22),
		Pressure: units.Atmosphere, Mixing: 5}
	a, err := v.Air()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("hydrogen %.2f L/min, air %.1f m³/h, at most %.0f %% by volume\n",
		a.Hydrogen.In(electrical.LitrePerMinute), a.Air.In(electrical.CubicMetrePerHour), 100*float64(a.Limit))
	// Output: hydrogen 0.14 L/min, air 4.0 m³/h, at most 1 % by volume
}

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
