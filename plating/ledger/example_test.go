package ledger_test

import (
	"errors"
	"fmt"
	"os"
	"strings"
	"time"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// workshopBath is the hard gold of a clock-restoration workshop.
func workshopBath() ledger.Account {
	eq, err := faraday.NewEquivalent(196.96657*units.GramPerMole, 1)
	if err != nil {
		panic(err)
	}
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		panic(err)
	}
	return ledger.Account{
		Name: "gold, acid cyanide, cobalt hardened", Metal: "Au",
		Volume: 5 * units.Litre, Content: 8 * units.GramPerLitre, ContentUncertainty: 0.1 * units.GramPerLitre,
		Equivalent: eq, Efficiency: ledger.EfficiencyRange{Value: 0.35, Low: 0.30, High: 0.40},
		Salts: []faraday.Formula{salt}, Low: 7 * units.GramPerLitre, High: 9 * units.GramPerLitre,
	}
}

func Example() {
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	book, err := ledger.New(workshopBath(), at)
	if err != nil {
		fmt.Println(err)
		return
	}
	// Twenty loads of clock hands, 12 A·min each.
	for i := range 20 {
		_, err := book.Post(ledger.Entry{When: at.AddDate(0, 0, i), Event: ledger.Load{
			Charge: 12 * units.AmpereMinute, DragOut: 4 * units.Millilitre, DragIn: 4 * units.Millilitre}})
		if err != nil {
			fmt.Println(err)
			return
		}
	}
	s := book.State()
	fmt.Printf("%s ± %s in %s\n", s.Content.Text(units.GramPerLitre, 2), s.ContentUncertainty.Text(units.GramPerLitre, 2),
		s.Volume.Text(units.Litre, 2))
	fmt.Println(s.Alarms)

	// The laboratory says 5.70 ± 0.10 g/L. The bath is fed to its target.
	r, err := book.Post(ledger.Entry{When: at.AddDate(0, 0, 20), Event: ledger.Analysis{
		Content: 5.70 * units.GramPerLitre, Uncertainty: 0.10 * units.GramPerLitre}})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("both: %s, which would be an efficiency of %s\n", r.Comparison.Both.Content.Text(units.GramPerLitre, 2),
		r.Comparison.Efficiency.Percent(1))
	add, err := book.ByAnalysis(book.Account().Salts[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("add %s of %s, of it %s gold\n", add.SaltMass.Text(units.Gram, 1), add.Salt, add.Metal.Text(units.Gram, 1))
	// Output:
	// 5.83 g/L ± 0.19 g/L in 5.00 L
	// metal content below the low alarm: feed before the next load
	// both: 5.73 g/L, which would be an efficiency of 37.3 %
	// add 16.6 g of KAu(CN)2, of it 11.4 g gold
}

func ExampleAccount_SaltPerCharge() {
	b := workshopBath()
	f, err := b.SaltPerCharge(b.Salts[0])
	fmt.Println(f.Text(units.GramPerAmpereMinute, 4), err)
	// Output: 0.0627 g/(A·min) <nil>
}

func ExampleAccount_SaltPerChargeWorking() {
	b := workshopBath()
	steps, err := b.SaltPerChargeWorking(b.Salts[0])
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(working.Text(steps[len(steps)-1:]))
	// Output:
	// KAu(CN)2 for a unit of charge: 3.7623 g/(A·h)
	//   f = k/x  [IUPAC2021]
	//     k = 2.57218 g/(A·h) (Au drawn from the bath for a unit of charge)
	//     x = 68.3672 % (share of Au in KAu(CN)2)
	//   For the pure salt; where the label states a metal content, that one counts.
}

// Nickel with soluble anodes that do better than the cathode: some insoluble
// ones level it.
func ExampleAccount_Rates() {
	nickel := ledger.Account{Name: "nickel, Watts type", Metal: "Ni", Volume: 20 * units.Litre,
		Content:    75 * units.GramPerLitre,
		Equivalent: 1.0947 * units.GramPerAmpereHour, Efficiency: ledger.EfficiencyRange{Value: 0.95},
		Anode: ledger.Anode{Share: 1, Efficiency: ledger.EfficiencyRange{Value: 0.99}}}
	for _, share := range []units.Ratio{1, 0.96} {
		nickel.Anode.Share = share
		r, err := nickel.Rates()
		fmt.Println(r.Net.Text(units.GramPerAmpereHour, 4), err)
	}
	// Output:
	// -0.0438 g/(A·h) <nil>
	// -0.0004 g/(A·h) <nil>
}

func ExampleReplenish() {
	salt, _ := faraday.ParseFormula("NiSO4·7H2O") // not the hexahydrate
	r, err := ledger.Replenish(ledger.Need{Metal: 1400 * units.Gram, Volume: 19.5 * units.Litre, Mark: 20 * units.Litre,
		Target: 75 * units.GramPerLitre}, "Ni", salt)
	fmt.Println(r.SaltMass.Text(units.Gram, 0), "salt,", r.Metal.Text(units.Gram, 0), "nickel,",
		r.Water.Text(units.Millilitre, 0), "water", err)
	// Output: 479 g salt, 100 g nickel, 500 mL water <nil>
}

func ExampleReplenishBySolution() {
	// Rhodium comes as a solution of 100 g/L.
	f, err := ledger.ReplenishBySolution(ledger.Need{Metal: 1.6 * units.Gram, Volume: 0.95 * units.Litre,
		Mark: 1 * units.Litre, Target: 2 * units.GramPerLitre}, 100*units.GramPerLitre)
	fmt.Println(f.Solution, "and", f.Water, "water", err)
	// Output: 4 mL and 46 mL water <nil>
}

func ExampleCombine() {
	book := ledger.Estimate{Content: 5.85 * units.GramPerLitre, Uncertainty: 0.25 * units.GramPerLitre}
	lab := ledger.Estimate{Content: 5.60 * units.GramPerLitre, Uncertainty: 0.10 * units.GramPerLitre}
	both, weight, err := ledger.Combine(book, lab)
	fmt.Printf("%s ± %s, weight of the laboratory %.2f, %v\n", both.Content.Text(units.GramPerLitre, 2),
		both.Uncertainty.Text(units.GramPerLitre, 2), float64(weight), err)
	// Output: 5.63 g/L ± 0.09 g/L, weight of the laboratory 0.86, <nil>
}

func ExampleShareByArea() {
	s, err := ledger.ShareByArea(8*units.SquareDecimetre, 2*units.SquareDecimetre)
	fmt.Println(s, err)
	// Output: 0.8 <nil>
}

func ExampleLedger_Forecast() {
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	book, _ := ledger.New(workshopBath(), at)
	for i := range 5 {
		book.Post(ledger.Entry{When: at.AddDate(0, 0, i), Event: ledger.Load{Charge: 12 * units.AmpereMinute}})
	}
	f, err := book.Forecast(ledger.Plan{Salt: book.Account().Salts[0], Next: 2})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, n := range f.Next {
		fmt.Println(n.When.Format("2 January"), "after", n.Charge.Text(units.AmpereMinute, 0)+":",
			n.SaltMass.Text(units.Gram, 1))
	}
	// Output:
	// 11 March after 57 A·min: 7.3 g
	// 20 March after 173 A·min: 7.3 g
}

// A book that was cut short while a line was written.
func ExampleOpen() {
	var text strings.Builder
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	book, _ := ledger.Start(&text, workshopBath(), at)
	book.Append(&text, ledger.Entry{When: at, Event: ledger.Load{Charge: 12 * units.AmpereMinute}})
	book.Append(&text, ledger.Entry{When: at, Event: ledger.Load{Charge: 15 * units.AmpereMinute}})

	killed := text.String()[:text.Len()-20]
	again, err := ledger.Open(strings.NewReader(killed))
	var torn *ledger.TornError
	if errors.As(err, &torn) {
		fmt.Println("line", torn.Line, "is torn;", again.Len(), "entry is kept:", again.State().Charge)
	}
	// Output: line 3 is torn; 1 entry is kept: 12 A·min
}

func ExampleFile() {
	dir, err := os.MkdirTemp("", "book")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(dir)
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	f, err := ledger.CreateFile(dir+"/hard-gold.jsonl", workshopBath(), at)
	if err != nil {
		fmt.Println(err)
		return
	}
	f.Append(ledger.Entry{When: at, Event: ledger.Load{Charge: 12 * units.AmpereMinute}})
	f.Close()

	f, err = ledger.OpenFile(dir + "/hard-gold.jsonl")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer f.Close()
	fmt.Println(f.Len(), "entry,", f.State().Metal.Text(units.Gram, 2))
	// Output: 1 entry, 39.49 g
}

func ExampleEfficiencyRange_Uncertainty() {
	u, err := ledger.EfficiencyRange{Value: 0.35, Low: 0.25, High: 0.45}.Uncertainty()
	fmt.Println(u.Percent(1), err)
	// Output: 5.8 % <nil>
}

func ExampleRead() {
	var text strings.Builder
	at := time.Date(2026, 3, 2, 9, 0, 0, 0, time.UTC)
	book, _ := ledger.Start(&text, workshopBath(), at)
	book.Append(&text, ledger.Entry{When: at, Event: ledger.Evaporation{Volume: 100 * units.Millilitre}, Note: "weekend"})
	b, err := ledger.Read(strings.NewReader(text.String()))
	fmt.Println(b.Account.Name, len(b.Entries), b.Entries[0].Note, err)
	// Output: gold, acid cyanide, cobalt hardened 1 weekend <nil>
}

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
	book, err := ledger.New(ledger.Account{Name: "silver, cyanide", Metal: "Ag", Volume: 8 * units.Litre,
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
