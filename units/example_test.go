package units_test

import (
	"encoding/json"
	"errors"
	"flag"
	"fmt"
	"os"
	"time"

	"example.com/laydown/units"
)

// A clock hand of 12 cm² is to get 25 microinches of gold of 17.3 g/cm³.
func Example() {
	coat, err := units.ParseLength("25 µin")
	if err != nil {
		fmt.Println(err)
		return
	}
	area := 12 * units.SquareCentimetre
	gold := coat.AtDensity(17.3 * units.GramPerCubicCentimetre).Over(area)
	current := (0.5 * units.AmperePerSquareDecimetre).Over(area)

	fmt.Println(coat, "on", area)
	fmt.Println(gold.Text(units.Pennyweight, 4), "=", gold)
	fmt.Println(current)
	// Output:
	// 0.635 µm on 12 cm²
	// 0.0085 dwt = 13.1826 mg
	// 60 mA
}

// Text that is no quantity comes back with what would do.
func Example_errors() {
	_, err := units.ParseVolume("5 gal")
	fmt.Println(err)

	var p *units.ParseError
	if errors.As(err, &p) && errors.Is(err, units.ErrUnknownUnit) {
		fmt.Println("choose one of", p.Accepted[:2])
	}

	_, err = (2 * units.Ampere).PerArea(0)
	fmt.Println(err)
	// Output:
	// volume "5 gal": unknown unit "gal"; a gallon is US gal or imp gal; accepted: L, mL, m³, dm³, cm³, mm³, in³, ft³, US gal, imp gal
	// choose one of [L mL]
	// area 0 cm²: not above zero; need a value above zero
}

// Quantities are text in JSON, in SI units and without loss. They read trade
// units too, and no bare numbers.
func Example_json() {
	type bath struct {
		Gold units.MassConcentration `json:"gold"`
		Heat units.Temperature       `json:"heat"`
	}
	b, _ := json.Marshal(bath{8 * units.GramPerLitre, units.Celsius(38)})
	fmt.Println(string(b))

	var in bath
	fmt.Println(json.Unmarshal([]byte(`{"gold": "1 ozt/US gal", "heat": "140 °F"}`), &in))
	fmt.Println(in.Gold, in.Heat)
	fmt.Println(json.Unmarshal([]byte(`{"gold": 8}`), &in) != nil)
	// Output:
	// {"gold":"8 kg/m³","heat":"311.15 K"}
	// <nil>
	// 8.21667 g/L 60 °C
	// true
}

// Every quantity is a command line flag by flag.TextVar.
func Example_flag() {
	set := flag.NewFlagSet("bench", flag.ContinueOnError)
	var density units.CurrentDensity
	set.TextVar(&density, "density", 0.5*units.AmperePerSquareDecimetre, "cathode current density")
	err := set.Parse([]string{"-density", "8 A/ft2"})
	fmt.Println(density, err)
	// Output:
	// 0.861113 A/dm² <nil>
}

func ExampleConvert() {
	for _, c := range [][2]string{{"25 µin", "µm"}, {"100.4 degF", "°C"}, {"1 h 20 min", "s"}, {"1 ozt", "dwt"}} {
		s, err := units.Convert(c[0], c[1])
		fmt.Println(s, err)
	}
	_, err := units.Convert("5 A", "A/dm²")
	fmt.Println(errors.Is(err, units.ErrWrongKind))
	// Output:
	// 0.635 µm <nil>
	// 38 °C <nil>
	// 4800 s <nil>
	// 20 dwt <nil>
	// true
}

func ExampleKindsOf() {
	fmt.Println(units.KindsOf("g/cm3"))
	fmt.Println(units.KindsOf("gal"))
	// Output:
	// [density mass concentration]
	// []
}

func ExampleKinds() {
	for _, k := range units.Kinds()[:3] {
		fmt.Println(k, k.Units())
	}
	// Output:
	// length [m cm mm µm nm in ft mil µin]
	// area [m² dm² cm² mm² in² ft²]
	// volume [L mL m³ dm³ cm³ mm³ in³ ft³ US gal imp gal]
}

func ExampleQuantityKind_Units() {
	fmt.Println(units.KindCurrentDensity.Units())
	// Output: [A/dm² A/m² mA/cm² A/cm² A/ft² A/in²]
}

func ExampleQuantityKind_Spellings() {
	fmt.Printf("%q\n", units.KindLength.Spellings("mil"))
	// Output: ["mil" "thou" "mils"]
}

func ExampleParseLength() {
	for _, text := range []string{"25 µin", "25 uin", "0.025 mil", "635 nm"} {
		d, err := units.ParseLength(text)
		fmt.Println(d, err)
	}
	_, err := units.ParseLength("25")
	fmt.Println(err)
	// Output:
	// 0.635 µm <nil>
	// 0.635 µm <nil>
	// 0.635 µm <nil>
	// 0.635 µm <nil>
	// length "25": no unit after the number; accepted: m, cm, mm, µm, nm, in, ft, mil, µin
}

func ExampleParseArea() {
	fmt.Println(units.ParseArea("4 in2"))
	// Output: 25.8064 cm² <nil>
}

func ExampleParseVolume() {
	fmt.Println(units.ParseVolume("1 US gal"))
	// Output: 3.78541 L <nil>
}

func ExampleParseMass() {
	fmt.Println(units.ParseMass("1.2 dwt"))
	// Output: 1.86621 g <nil>
}

func ExampleParseDensity() {
	fmt.Println(units.ParseDensity("17.3 g/cc"))
	// Output: 17.3 g/cm³ <nil>
}

func ExampleParseMassPerArea() {
	fmt.Println(units.ParseMassPerArea("1 oz/ft2"))
	// Output: 30.5152 mg/cm² <nil>
}

func ExampleParseMassConcentration() {
	fmt.Println(units.ParseMassConcentration("1 oz/US gal"))
	// Output: 7.48915 g/L <nil>
}

func ExampleParseAmount() {
	fmt.Println(units.ParseAmount("0.25 mol"))
	// Output: 250 mmol <nil>
}

func ExampleParseMolarMass() {
	fmt.Println(units.ParseMolarMass("197 g/mol"))
	// Output: 197 g/mol <nil>
}

func ExampleParseAmountConcentration() {
	fmt.Println(units.ParseAmountConcentration("150 mmol/L"))
	// Output: 0.15 mol/L <nil>
}

func ExampleParseCurrent() {
	fmt.Println(units.ParseCurrent("1.4 A"))
	// Output: 1.4 A <nil>
}

func ExampleParseCurrentDensity() {
	fmt.Println(units.ParseCurrentDensity("8 A/ft^2"))
	// Output: 0.861113 A/dm² <nil>
}

func ExampleParseCharge() {
	fmt.Println(units.ParseCharge("12 A min"))
	// Output: 12 A·min <nil>
}

func ExampleParseEquivalent() {
	fmt.Println(units.ParseEquivalent("7.349 g/Ah"))
	// Output: 7.349 g/(A·h) <nil>
}

func ExampleParseVoltage() {
	fmt.Println(units.ParseVoltage("2500 mV"))
	// Output: 2.5 V <nil>
}

func ExampleParseResistance() {
	fmt.Println(units.ParseResistance("0.8 ohm"))
	// Output: 800 mΩ <nil>
}

func ExampleParseAreaResistance() {
	fmt.Println(units.ParseAreaResistance("5 ohm cm2"))
	// Output: 5 Ω·cm² <nil>
}

func ExampleParseConductivity() {
	fmt.Println(units.ParseConductivity("120 mS/cm"))
	// Output: 12 S/m <nil>
}

func ExampleParsePower() {
	fmt.Println(units.ParsePower("15 W"))
	// Output: 15 W <nil>
}

func ExampleParseEnergy() {
	fmt.Println(units.ParseEnergy("0.4 kWh"))
	// Output: 400 W·h <nil>
}

func ExampleParseTemperature() {
	fmt.Println(units.ParseTemperature("140 degF"))
	_, err := units.ParseTemperature("-300 °C")
	fmt.Println(err)
	// Output:
	// 60 °C <nil>
	// temperature "-300 °C": below absolute zero; accepted: °C, °F, K
}

func ExampleParseTemperatureDifference() {
	fmt.Println(units.ParseTemperatureDifference("9 °F"))
	// Output: 5 K <nil>
}

func ExampleParseDuration() {
	for _, text := range []string{"10 min", "1 h 20 min", "1h20min", "0.5 h"} {
		t, err := units.ParseDuration(text)
		fmt.Println(t, err)
	}
	_, err := units.ParseDuration("20 min 1 h")
	fmt.Println(errors.Is(err, units.ErrSyntax))
	// Output:
	// 10 min <nil>
	// 1 h 20 min <nil>
	// 1 h 20 min <nil>
	// 30 min <nil>
	// true
}

func ExampleParsePressure() {
	fmt.Println(units.ParsePressure("1 atm"))
	// Output: 101.325 kPa <nil>
}

func ExampleParseSpeed() {
	fmt.Println(units.ParseSpeed("6 um/h"))
	// Output: 0.1 µm/min <nil>
}

func ExampleParseDiffusivity() {
	fmt.Println(units.ParseDiffusivity("1e-5 cm2/s"))
	// Output: 1e-09 m²/s <nil>
}

func ExampleParseEfficiency() {
	fmt.Println(units.ParseEfficiency("35 %"))
	// Output: 35 % <nil>
}

func ExampleParseMassFraction() {
	fmt.Println(units.ParseMassFraction("750 ‰"))
	// Output: 75 % <nil>
}

func ExampleParseMoleFraction() {
	fmt.Println(units.ParseMoleFraction("0.12"))
	// Output: 12 % <nil>
}

func ExampleParseRatio() {
	fmt.Println(units.ParseRatio("60 %"))
	// Output: 0.6 <nil>
}

func ExampleLength_In() {
	coat := 2.5 * units.Micrometre
	fmt.Printf("%.2f µin\n", coat.In(units.Microinch))
	// Output: 98.43 µin
}

func ExampleLength_Text() {
	coat := 25 * units.Microinch
	fmt.Println(coat.Text(units.Micrometre, 4))
	fmt.Println(coat.Text(units.Micrometre, -1)) // as many digits as it takes, no more
	fmt.Println(coat.Text(units.Mil, -1))
	// Output:
	// 0.6350 µm
	// 0.635 µm
	// 0.025 mil
}

func ExampleLength_Times() {
	fmt.Println((3 * units.Centimetre).Times(4 * units.Centimetre))
	// Output: 12 cm²
}

func ExampleLength_AtDensity() {
	fmt.Println(units.Micrometre.AtDensity(19.3 * units.GramPerCubicCentimetre))
	// Output: 1.93 mg/cm²
}

func ExampleMassPerArea_Thickness() {
	fmt.Println((4.825 * units.MilligramPerSquareCentimetre).Thickness(19.3 * units.GramPerCubicCentimetre))
	// Output: 2.5 µm <nil>
}

func ExampleMass_DissolvedIn() {
	fmt.Println((40 * units.Gram).DissolvedIn(5 * units.Litre))
	_, err := (40 * units.Gram).DissolvedIn(0)
	fmt.Println(err)
	// Output:
	// 8 g/L <nil>
	// volume 0 mL: not above zero; need a value above zero
}

func ExampleCurrent_PerArea() {
	fmt.Println((1.4 * units.Ampere).PerArea(2.8 * units.SquareDecimetre))
	// Output: 0.5 A/dm² <nil>
}

func ExampleCurrent_For() {
	fmt.Println((1.5 * units.Ampere).For(8 * units.Minute))
	// Output: 12 A·min
}

func ExampleCharge_At() {
	fmt.Println((12 * units.AmpereMinute).At(1.5 * units.Ampere))
	// Output: 8 min <nil>
}

func ExampleCelsius() {
	bath := units.Celsius(38)
	fmt.Printf("%.2f K, %.1f °F\n", bath.Kelvin(), bath.Fahrenheit())
	fmt.Println(bath.Text(units.FahrenheitScale, 1))
	// Output:
	// 311.15 K, 100.4 °F
	// 100.4 °F
}

func ExampleFahrenheit() {
	fmt.Println(units.Fahrenheit(140))
	// Output: 60 °C
}

func ExampleTemperature_Sub() {
	warmUp := units.Celsius(60).Sub(units.Celsius(18))
	fmt.Println(warmUp, "=", warmUp.Text(units.FahrenheitDegree, 1))
	// Output: 42 K = 75.6 °F
}

func ExampleEfficiency_Percent() {
	fmt.Println(units.Efficiency(0.955).Percent(1))
	// Output: 95.5 %
}

func ExampleFromStd() {
	t := units.FromStd(90 * time.Minute)
	back, err := t.Std()
	fmt.Println(t, back, err)
	// Output: 1 h 30 min 1h30m0s <nil>
}

func ExamplePositive() {
	fmt.Println(units.Positive("part area", 12*units.SquareCentimetre))
	fmt.Println(units.Positive("part area", -12*units.SquareCentimetre))
	// Output:
	// <nil>
	// part area -12 cm²: not above zero; need a value above zero
}

func ExamplePositiveFraction() {
	err := units.PositiveFraction("current efficiency", units.Efficiency(35))
	fmt.Println(err)
	// Output: current efficiency 3500 %: out of range; need a fraction above 0 and at most 1, such as 0.35 or 35 %
}

func ExampleValueError() {
	err := units.NonNegative("coat thickness", -1*units.Micrometre)
	var v *units.ValueError
	if errors.As(err, &v) && errors.Is(err, units.ErrNegative) {
		fmt.Fprintln(os.Stdout, v.Field, v.Value)
	}
	// Output: coat thickness -1 µm
}
