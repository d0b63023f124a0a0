package bath_test

import (
	"errors"
	"fmt"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// What is known about hard gold, and how well.
func ExampleGet() {
	b, err := bath.Get("gold-acid-cobalt")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(b.Name)
	fmt.Println(b.CurrentDensity.Low.Text(units.AmperePerSquareFoot, 0), "to",
		b.CurrentDensity.High.Text(units.AmperePerSquareFoot, 0), b.CurrentDensity.Seen)
	fmt.Println("efficiency", b.Efficiency.Text())
	fmt.Println("an estimate is", b.Confidence())
	// Output:
	// gold, acid cyanide, cobalt hardened
	// 10 A/ft² to 20 A/ft² published
	// efficiency 25 % to 45 % (from memory)
	// an estimate is from memory
}

func ExampleLibrary() {
	for _, b := range bath.Library() {
		if b.Metal == "Ag" {
			fmt.Println(b.Key, "-", b.Use)
		}
	}
	// Output:
	// silver-strike - strike
	// silver-cyanide - underplate, finish
}

// Twenty-four hands of mantel clocks get 1 µm of hard gold: the band of the
// efficiency shows in the minutes.
func ExampleEstimateRange() {
	b, err := bath.Get("gold-acid-cobalt")
	if err != nil {
		fmt.Println(err)
		return
	}
	hands := plating.Layer{Area: 124 * units.SquareCentimetre, MinThickness: 1 * units.Micrometre,
		Distribution:   plating.Distribution{MinToAverage: 0.6, Basis: "given"},
		CurrentDensity: 1.2 * units.AmperePerSquareDecimetre}
	s, err := bath.EstimateRange(hands, b, bath.OperatingPoint{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f A for %.0f min, from %.0f to %.0f\n", float64(s.Typical.Current), float64(s.Time.Typical)/60,
		float64(s.Time.Low)/60, float64(s.Time.High)/60)
	fmt.Println("gold", s.FineMass.Low.Text(units.Milligram, 0), "to", s.FineMass.High.Text(units.Milligram, 0))
	for _, u := range s.Used {
		fmt.Println(u)
	}
	// Output:
	// 1.49 A for 5 min, from 4 to 8
	// gold 329 mg to 350 mg
	// current efficiency 25 % to 45 % (from memory)
	// density of the deposit 16 g/cm³ to 17 g/cm³ (published, GoldBulletinPlating)
	// composition of the deposit 99.5 % gold, 0.25 % brightening metal (printed, about), 0.25 % built in without charge (from memory)
}

// Bench practice lies outside the printed range: the bath comes with a note.
func ExampleBath_At() {
	b, err := bath.Get("gold-acid-cobalt")
	if err != nil {
		fmt.Println(err)
		return
	}
	set, err := b.At(bath.OperatingPoint{CurrentDensity: 0.5 * units.AmperePerSquareDecimetre})
	var outside *units.RangeError
	if errors.As(err, &outside) {
		fmt.Println("mind:", outside.Field, outside.Value)
	}
	fmt.Println(set.Metal, set.InsolubleAnode)
	// Output:
	// mind: current density 0.5 A/dm²
	// Au true
}

func ExampleBath_EfficiencyAt() {
	b, err := bath.Get("copper-cyanide-strike")
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := b.EfficiencyAt(bath.OperatingPoint{})
	fmt.Println(e.Text(), err)
	// Output: 30 % to 60 % (published, Guidebook2011) <nil>
}

func ExampleTypicalTable() {
	for _, row := range bath.TypicalTable() {
		if row.Bath == "gold, acid" {
			fmt.Println(row.Volts.Text())
		}
	}
	// Output: 5 V to 6 V (published, Guidebook2012)
}

// A bath of your own, with a mistake in it.
func ExampleRead() {
	const mine = `{
  "format": "laydown baths 1",
  "baths": [{
    "key": "bench-silver", "name": "silver, cyanide, bench tank", "metal": "Ag", "use": ["finish"], "hazards": ["cyanide"],
    "density": {"low": "10.4 g/cm³", "high": "10.5 g/cm³", "seen": "from memory"},
    "efficiency": {"low": "97 %", "high": "99 %", "source": "four trial pieces", "seen": "measured"},
    "current_density": {"low": "0.5 A/dm²", "high": "1 A/dm²", "seen": "from memory"}
  }]
}`
	list, err := bath.Read(strings.NewReader(mine))
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(list[0].Name, "-", list[0].Efficiency.Text())
	_, err = bath.Read(strings.NewReader(strings.Replace(mine, `"99 %"`, `"99 V"`, 1)))
	var wrong *units.FileError
	if errors.As(err, &wrong) {
		fmt.Println(wrong.Line, wrong.Path)
	}
	// Output:
	// silver, cyanide, bench tank - 97 % to 99 % (measured, four trial pieces)
	// 6 baths[1].efficiency.high
}

func ExampleFind() {
	b, err := bath.Find(bath.Library(), "silver-strike")
	fmt.Println(b.Name, b.LiveEntry, err)
	// Output: silver, cyanide strike true <nil>
}

// An estimate is known no better than its weakest figure.
func ExampleWeakest() {
	fmt.Println(origin.Weakest(origin.Measured, origin.SecondHand, origin.Published))
	// Output: second hand
}
