package ledger_test

import (
	"fmt"

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
