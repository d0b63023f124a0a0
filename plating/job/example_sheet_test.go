package job_test

import (
	"fmt"
	"strings"

	"example.com/laydown/plating/job"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// bezels is a job of a clock workshop: six brass bezels are to be gilded.
func bezels() job.Job {
	return job.Job{
		Name: "six bezels", Substrate: "brass", Finish: sequence.SoftGold, MinThickness: 0.5 * units.Micrometre,
		Evenness: job.Evenness{MinToAverage: 0.55, Basis: "given"},
		Parts:    []job.Part{{Name: "bezel", Count: 6, Area: 47 * units.SquareCentimetre}},
	}
}

// The tanks come from published practice, one stop after the other.
func ExampleJob_Sheet() {
	sheet, err := bezels().Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, stop := range sheet.Stops {
		if c := stop.Coat; c != nil {
			fmt.Printf("%d. %s: %s, %s\n", stop.Tank.Number, stop.Tank.Name, c.Result.Current.Text(units.Ampere, 1),
				c.Spread.Time.Typical.Text(units.Minute, 0))
		} else {
			fmt.Printf("%d. %s\n", stop.Tank.Number, stop.Tank.Kind)
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

// A proposal becomes the shop's own sequence: change it, and write it down.
func ExampleSheet_Steps() {
	plan := bezels()
	sheet, err := plan.Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, s := range sheet.Steps()[:3] {
		fmt.Println(strings.TrimSpace(s.Kind.String() + " " + s.Holds))
	}
	// Output:
	// soak clean alkaline cleaner, mild, inhibited
	// rinse
	// electroclean alkaline electrocleaner, hot caustic
}

// The document is the sheet in words: a layout of one's own is made from it.
func ExampleSheet_Document() {
	sheet, err := bezels().Sheet()
	if err != nil {
		fmt.Println(err)
		return
	}
	doc, err := sheet.Document(job.SheetOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, section := range doc.Sections {
		if section.Heading == "7. nickel, Watts, bright (underplate)" {
			for _, item := range section.Items {
				if item.What == "set" || item.What == "time" {
					fmt.Println(item.What, item.Value)
				}
			}
		}
	}
	// Output:
	// set 16.9 A
	// time 7 min 52 s
}
