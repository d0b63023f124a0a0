package traveller_test

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// Six brass bezels are to be gilded; the tanks come from published practice.
func ExampleMake() {
	sheet, err := traveller.Make(traveller.Job{
		Base: sequence.Brass, Finish: sequence.SoftGold,
		MinThickness: 0.5 * units.Micrometre,
		Distribution: plating.Distribution{MinToAverage: 0.55, Basis: "given"},
		Parts:        []plating.Part{{Name: "bezel", Count: 6, Area: 47 * units.SquareCentimetre}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, card := range sheet.Cards {
		if k := sheet.Coats[card.Number-1]; k >= 0 {
			fmt.Printf("%d. %s: %s, %s\n", card.Number, card.Name, card.Amps.Text(units.Ampere, 1),
				sheet.Spreads[k].Time.Typical.Text(units.Minute, 0))
		} else {
			fmt.Printf("%d. %s\n", card.Number, card.Kind)
		}
	}
	fmt.Println("trust:", sheet.Confidence())
	// Output:
	// 1. soak clean
	// 2. rinse
	// 3. electroclean
	// 4. rinse
	// 5. activate
	// 6. rinse
	// 7. nickel, Watts, bright: 16.9 A, 8 min
	// 8. rinse
	// 9. gold, acid cyanide strike, gold(I): 8.5 A, 1 min
	// 10. drag-out rinse
	// 11. rinse
	// 12. gold, neutral cyanide, soft and pure: 0.8 A, 5 min
	// 13. drag-out rinse
	// 14. rinse
	// 15. final rinse
	// 16. dry
	// trust: from memory
}

// The plain job is what package plating takes.
func ExampleSheet_Plain() {
	sheet, err := traveller.Make(traveller.Job{
		Base: sequence.Copper, Finish: sequence.Silver, MinThickness: 5 * units.Micrometre,
		Distribution: plating.Distribution{MinToAverage: 0.5, Basis: "given"},
		Parts:        []plating.Part{{Count: 1, Area: 33 * units.SquareCentimetre}},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	result, err := plating.EstimateJob(sheet.Plain())
	fmt.Println(result.Metals[0].FineMass == sheet.Result.Metals[0].FineMass, err)
	fmt.Println(sheet.Stop(), len(sheet.Cautions()) > 3, sheet.Spreads[1].Trust())
	// Output:
	// true <nil>
	// false true rests on figures from memory: weigh a trial piece first
}
