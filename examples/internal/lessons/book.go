package lessons

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/plating/price"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// bookLessons are about a bath's book and the bill.
func bookLessons() []Lesson {
	return []Lesson{{
		Word: "twocontents", Title: "The book and the laboratory disagree", Package: "plating/ledger",
		Question: "The book says 7.4 g/L of gold, give or take 0.3; the laboratory says 7.9, give or take 0.1.\n" +
			"What is to be believed?",
		Good: "only if both uncertainties are honest",
		solve: func(b *board) string {
			book, lab := ledger.Estimate{Content: 7.4 * gl, Uncertainty: 0.3 * gl},
				ledger.Estimate{Content: 7.9 * gl, Uncertainty: 0.1 * gl}
			b.add(ledger.CombineWorking(book, lab))
			best := b.steps
			if len(best) < 2 {
				return ""
			}
			return fmt.Sprintf("Take %s, give or take %s: the laboratory counts nine times the book.",
				best[len(best)-2].Result.Value, b.last())
		},
	}, {
		Word: "feed", Title: "Feeding rhodium by the bottle", Package: "plating/ledger", Hazards: plating.HazardAcid,
		Question: "A rhodium bath of 1.9 L, mark at 2 L, holds 3.2 g; 2 g/L are wanted. The bottle has 20 g/L.\n" +
			"How much of it, and how much water?",
		Good: "as good as the analysis",
		solve: func(b *board) string {
			need := ledger.Need{Metal: 3.2 * g, Volume: 1.9 * units.Litre, Mark: 2 * units.Litre, Target: 2 * gl}
			f := value[ledger.Feed](b)(ledger.ReplenishBySolution(need, 20*gl))
			b.show("v = (c·V₀ - m₁)/c_s", "Definition", working.Of("v", "feed solution", f.Solution),
				working.Of("c", "content wanted", need.Target),
				working.Of("V₀", "volume at the mark", need.Mark), working.Of("m₁", "metal in the bath", need.Metal),
				working.Of("c_s", "content of the bottle", 20*gl))
			return fmt.Sprintf("Add %s from the bottle and %s of water.", b.last(), f.Water)
		},
	}, {
		Word: "mixedanodes", Title: "Gold anodes beside steel ones", Package: "plating/ledger",
		Question: "In a gold bath 1.5 dm² of gold anodes hang beside 0.5 dm² of steel on one busbar.\n" +
			"What share of the current dissolves gold?",
		Good: "rough: gold takes more than its area until it polarises",
		solve: func(b *board) string {
			s := value[units.Ratio](b)(ledger.ShareByArea(1.5*dm2, 0.5*dm2))
			b.show("s = A_s/(A_s + A_i)", "Definition", working.Of("s", "share on the soluble anodes", s),
				working.Of("A_s", "soluble anodes", 1.5*dm2),
				working.Of("A_i", "insoluble anodes", 0.5*dm2))
			return fmt.Sprintf("By the areas it is %s of the current.", b.last())
		},
	}, {
		Word: "sharedbill", Title: "Sharing a bill to the last cent", Package: "plating/price",
		Question: "A load of 100.00 is shared by three owners, by area: 105, 40 and 20 cm².\n" +
			"What does each pay, so that it adds up?",
		Good: "exact: the sum is right to the cent",
		solve: func(b *board) string {
			total, areas := decimal.NewFromInt(100), []float64{105, 40, 20}
			shares := value[[]decimal.Decimal](b)(price.Distribute(total, 2, decimal.NewFromFloat(areas[0]),
				decimal.NewFromFloat(areas[1]), decimal.NewFromFloat(areas[2])))
			var paid []string
			for _, s := range shares {
				paid = append(paid, s.StringFixed(2))
			}
			sum := areas[0] + areas[1] + areas[2]
			b.show("q = S·w/W", "LargestRemainder", working.Number("q", "share of the first before rounding",
				100*areas[0]/sum), working.Number("S", "sum to share", 100),
				working.Number("w", "area of the first, in cm²", areas[0]),
				working.Number("W", "all areas, in cm²", sum))
			return fmt.Sprintf("They pay %s: the first share is %s before rounding.", strings.Join(paid, ", "),
				b.last())
		},
	}}
}
