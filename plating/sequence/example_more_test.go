package sequence_test

import (
	"fmt"

	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

func ExampleSubstrates() {
	list := sequence.Substrates()
	fmt.Println(len(list), list[0], list[len(list)-1])
	// Output: 17 stainless steel conductive-painted plastic
}

func ExampleFinishes() {
	list := sequence.Finishes()
	fmt.Println(len(list), list[0], list[len(list)-1])
	// Output: 11 hard gold white bronze
}

// The shop has decided on nickel and hard gold for its brass bezels; the tanks
// around them come from published practice, and the review says what it misses.
func ExamplePlanAround() {
	p := hands()
	p.Substrate, p.Name = sequence.Brass, "bezels"
	nickel, err := baths.Get("nickel-watts")
	if err != nil {
		fmt.Println(err)
		return
	}
	gold, err := baths.Get(p.Finish.BathKey())
	if err != nil {
		fmt.Println(err)
		return
	}
	tanks, found, err := sequence.PlanAround(p, []sequence.Tank{
		{Name: "nickel", Kind: sequence.Underplate, Bath: nickel, Promise: 5 * units.Micrometre},
		{Name: "gold", Kind: sequence.Plate, Bath: gold, Promise: p.Promise}})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, t := range tanks {
		fmt.Println(i+1, t.Kind)
	}
	for _, f := range found {
		fmt.Println(f.Severity, f.Code)
	}
	// Output:
	// 1 soak clean
	// 2 rinse
	// 3 electroclean
	// 4 rinse
	// 5 activate
	// 6 rinse
	// 7 underplate
	// 8 rinse
	// 9 plate
	// 10 drag-out rinse
	// 11 rinse
	// 12 final rinse
	// 13 dry
	// caution leaded-brass
	// caution no-strike
}

func ExampleWorst() {
	p := hands()
	tanks, _, err := sequence.Plan(p)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(sequence.Worst(sequence.Check(tanks, p)))
	fmt.Println(sequence.Worst(sequence.Check(tanks[6:], p)))
	// Output:
	// info
	// warning
}
