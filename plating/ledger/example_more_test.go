package ledger_test

import (
	"fmt"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
)

func ExampleReplenishWorking() {
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		fmt.Println(err)
		return
	}
	need := ledger.Need{Metal: 36 * units.Gram, Volume: 4.9 * units.Litre, Mark: 5 * units.Litre,
		Target: 8 * units.GramPerLitre}
	steps, err := ledger.ReplenishWorking(need, "Au", salt)
	for _, s := range steps {
		fmt.Println(s.Result.Meaning+":", s.Result.Value)
	}
	fmt.Println(err)
	// Output:
	// volume afterwards: 5 L
	// mass of Au to add; none below zero: 4 g
	// share of Au in KAu(CN)2: 68.3672 %
	// mass of KAu(CN)2: 5.85076 g
	// water to add: 100 mL
	// <nil>
}

func ExampleCombineWorking() {
	book := ledger.Estimate{Content: 5.81 * units.GramPerLitre, Uncertainty: 0.25 * units.GramPerLitre}
	lab := ledger.Estimate{Content: 5.60 * units.GramPerLitre, Uncertainty: 0.10 * units.GramPerLitre}
	steps, err := ledger.CombineWorking(book, lab)
	for _, s := range steps {
		fmt.Println(s.Formula)
	}
	fmt.Println(err)
	// Output:
	// k = u₁²/(u₁² + u₂²)
	// c = (1 - k)·c₁ + k·c₂
	// u = u₁·u₂/√(u₁² + u₂²)
	// <nil>
}

// A load is entered with a slip in the year. The void names it, and the book goes on
// with the right time.
func ExampleVoid() {
	opened := time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)
	book, err := ledger.New(ledger.Bath{Name: "silver, cyanide", Metal: "Ag", Volume: 8 * units.Litre,
		Content: 30 * units.GramPerLitre, Equivalent: 1.118 * units.MilligramPerCoulomb,
		Efficiency: ledger.EfficiencyRange{Value: 0.99}}, opened)
	if err != nil {
		fmt.Println(err)
		return
	}
	load := ledger.Load{Charge: 40 * units.AmpereMinute}
	slip := time.Date(2926, 3, 3, 9, 0, 0, 0, time.UTC)
	now := opened.AddDate(0, 0, 1)
	for _, e := range []ledger.Entry{{When: slip, Event: load},
		{When: now, Event: ledger.Void{Entry: 1, Reason: "year mistyped"}}, {When: now, Event: load}} {
		if _, err := book.Post(e); err != nil {
			fmt.Println(err)
		}
	}
	for _, r := range book.Records() {
		fmt.Println(r.Seq, r.Entry.When.Year(), r.Deposited.Text(units.Gram, 2), r.VoidedBy)
	}
	fmt.Println(book.State().Metal.Text(units.Gram, 2))
	// Output:
	// 1 2926 0.00 g 2
	// 2 2026 0.00 g 0
	// 3 2026 2.66 g 0
	// 237.34 g
}

// A program asks the clock before it enters anything.
func ExampleCheckClock() {
	now := time.Date(2026, 3, 3, 9, 0, 0, 0, time.UTC)
	fmt.Println(ledger.CheckClock("time of the entry", now.AddDate(900, 0, 0), now))
	// Output: time of the entry 2926-03-03T09:00:00Z, where the clock shows 2026-03-03T09:00:00Z: out of range; need a time at most a day later than that; look at the year, and set the clock if it is wrong
}
