package lessons

import (
	"fmt"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// alloyLessons melt, weigh and analyse gold.
func alloyLessons() []Lesson {
	return []Lesson{{
		Word: "karating", Title: "Raise a stock of 14 karat to 18", Package: "alloys",
		Question: "30 g of scrap from clock hands is 14 karat exactly.\n" +
			"How much fine gold makes 18 karat of it, and what does the melt weigh?",
		Good: "exact; a balance that shows 0.01 g is the limit",
		solve: func(b *board) string {
			from, to := value[alloys.Karat](b)(alloys.ParseKarat("14 K")), alloys.Karat(18)
			k := value[alloys.Karating](b)(alloys.Raise(30*g, from.MassFraction(), to.MassFraction()))
			b.add(alloys.RaiseWorking(30*g, from.MassFraction(), to.MassFraction()))
			return fmt.Sprintf("Add %s of fine gold; the melt weighs %s and holds %s of gold.", k.Add, b.last(), k.Fine)
		},
	}, {
		Word: "lowering", Title: "Lower a stock of 18 karat to 14", Package: "alloys",
		Question: "42 g of 18 karat is left from a bezel. Solder stock of 14 karat is wanted.\n" +
			"How much alloying metal goes in? It is not the figure of raising turned round.",
		Good: "exact; a balance that shows 0.01 g is the limit",
		solve: func(b *board) string {
			from, to := alloys.Karat(18).MassFraction(), alloys.Karat(14).MassFraction()
			k := value[alloys.Karating](b)(alloys.Lower(42*g, from, to))
			b.add(alloys.LowerWorking(42*g, from, to))
			return fmt.Sprintf("Add %s of silver and copper; the melt weighs %s.", k.Add, b.last())
		},
	}, {
		Word: "twostocks", Title: "Mix two stocks to a wanted karat", Package: "alloys",
		Question: "The drawer holds gold of 9 karat and of 22 karat.\nHow much of each makes 26 g of 14 karat?",
		Good:     "exact; no printed example was found, the balance of the two equations proves it",
		solve: func(b *board) string {
			low, high, to := alloys.Karat(9).MassFraction(), alloys.Karat(22).MassFraction(),
				alloys.Karat(14).MassFraction()
			two := value[alloys.TwoStocks](b)(alloys.BlendTo(26*g, low, high, to))
			b.add(alloys.BlendToWorking(26*g, low, high, to))
			return fmt.Sprintf("Weigh %s of the 22 karat and %s of the 9 karat.", two.High, b.last())
		},
	}, {
		Word: "melt", Title: "What a melt of several lots holds", Package: "alloys",
		Question: "12 g of old hands (Au 585, Ag 300, Cu 115) and 8 g of a rim (Au 750, Ag 125, Cu 125)\n" +
			"go into one crucible. What is the melt?",
		Good: "exact when nothing burns off; zinc does",
		solve: func(b *board) string {
			hands := alloys.Lot{Mass: 12 * g,
				Composition: value[alloys.Composition](b)(alloys.ParseComposition("Au 585, Ag 300, Cu 115"))}
			rim := alloys.Lot{Mass: 8 * g, Composition: value[alloys.Composition](b)(alloys.FromPermille(
				alloys.PermillePart{Symbol: "Au", Share: 750}, alloys.PermillePart{Symbol: "Ag", Share: 125},
				alloys.PermillePart{Symbol: "Cu", Share: 125}))}
			lot := value[alloys.Lot](b)(alloys.Blend(hands, rim))
			b.add(alloys.BlendWorking(hands, rim))
			return fmt.Sprintf("The melt is %s, that is %s, with %s of gold and %s copper.", lot.Composition,
				lot.Composition.Karat(),
				lot.Of("Au"), b.last())
		},
	}, {
		Word: "recipe", Title: "Top up scrap to a whole recipe", Package: "alloys",
		Question: "10 g of 14 karat scrap (Au 585, Ag 300, Cu 115) is to become\n" +
			"18 karat yellow: Au 750, Ag 125, Cu 125. What is the least that must go in?",
		Good: "exact; the metal that the scrap has most of sets the size of the melt",
		solve: func(b *board) string {
			stock := alloys.Lot{Mass: 10 * g,
				Composition: value[alloys.Composition](b)(alloys.ParseComposition("Au 585, Ag 300, Cu 115"))}
			yellow := value[alloys.Composition](b)(alloys.ParseComposition("Au 750, Ag 125, Cu rest"))
			a := value[alloys.Additions](b)(alloys.ToComposition(stock, yellow, 0))
			b.add(alloys.ToCompositionWorking(stock, yellow, 0))
			var add []string
			for _, p := range a.Add {
				if p.Mass > 0 {
					add = append(add, fmt.Sprintf("%s of %s", p.Mass, p.Symbol))
				}
			}
			return fmt.Sprintf("Add %s; the melt weighs %s, because the scrap has so much %s.",
				strings.Join(add, " and "), a.Total, a.Limiting)
		},
	}, {
		Word: "density", Title: "The density of 18 karat from its metals", Package: "alloys",
		Question: "A bezel of 18 karat yellow is Au 750, Ag 125, Cu 125.\nWhat is its density?",
		Good:     "the stated share either way for cast metal; a deposit can be a tenth lighter",
		solve: func(b *board) string {
			c := value[alloys.Composition](b)(alloys.ParseComposition("Au 750, Ag 125, Cu 125"))
			d := value[alloys.DensityEstimate](b)(alloys.Density(c, alloys.DensityOptions{}))
			b.add(alloys.DensityWorking(c, alloys.DensityOptions{}))
			return fmt.Sprintf("The bezel has %s, give or take %s.", b.last(), d.Relative.Percent(1))
		},
	}, {
		Word: "twometals", Title: "How much gold is in gold-silver, from its density", Package: "alloys",
		Question: "An old repair is of gold and silver alone. In air and water it shows 15.5 g/cm³.\n" +
			"How much of it is gold?",
		Good: "a few per cent: read the range; a hidden third metal spoils it",
		solve: func(b *board) string {
			a := value[alloys.DensityAssay](b)(alloys.ShareFromDensity("Au", "Ag", 15.5*gcc, alloys.DensityOptions{}))
			b.add(alloys.ShareFromDensityWorking("Au", "Ag", 15.5*gcc, alloys.DensityOptions{}))
			return fmt.Sprintf("%s of it is gold; by the mixing alone it may be %s to %s.", b.last(),
				a.Low.Percent(1), a.High.Percent(1))
		},
	}, {
		Word: "atoms", Title: "Atoms and grams of red gold", Package: "alloys",
		Question: "A phase diagram shows AuCu: half of the atoms gold, half copper.\n" +
			"How much of the mass is gold, and does it come back to half the atoms?",
		Good: "atomic weights are good to a few parts in 100 000",
		solve: func(b *board) string {
			parts := []alloys.MolePart{{Symbol: "Au", Share: 0.5}, {Symbol: "Cu", Share: 0.5}}
			c := value[alloys.Composition](b)(alloys.FromMoles(parts...))
			b.add(alloys.FromMolesWorking(parts...))
			b.add(c.MolesWorking(), nil)
			return fmt.Sprintf("Half the atoms are %s of the mass, %s; back in atoms the copper has %s again.",
				c.Share("Au").Percent(1), c.Karat(), b.last())
		},
	}, {
		Word: "assay", Title: "Fineness from a fire assay", Package: "alloys",
		Question: "A cut of 250.0 mg from a hallmarked hand leaves 146.5 mg of fine gold in the cupel.\n" +
			"What is its fineness?",
		Good: "as good as the two weighings: 0.1 mg here is 0.4 ‰",
		solve: func(b *board) string {
			f := value[alloys.Fineness](b)(alloys.Assay(146.5*mg, 250*mg))
			b.add(alloys.AssayWorking(146.5*mg, 250*mg))
			return fmt.Sprintf("The hand is %s fine, that is %s: it keeps the mark 585.", b.last(), f.Karat())
		},
	}, {
		Word: "depositkarat", Title: "What karat a hard-gold coat is", Package: "alloys",
		Question: "Of a stripped coat the laboratory finds 99.0 mg of gold, 0.3 mg of cobalt\n" +
			"and 0.7 mg of carbon and the like. What karat is it?",
		Good: "as good as the analysis; the colour of 24 karat proves nothing",
		solve: func(b *board) string {
			d := value[alloys.DepositComposition](b)(alloys.DepositFromMasses(0.7*mg, alloys.MassPart{Symbol: "Au",
				Mass: 99 * mg},
				alloys.MassPart{Symbol: "Co", Mass: 0.3 * mg}))
			f, k := value[alloys.Fineness](b)(d.Fineness("Au")), value[alloys.Karat](b)(d.Karat())
			b.add(d.FinenessWorking("Au"))
			b.add(f.KaratWorking())
			return fmt.Sprintf("The coat is %s: %s of gold. Without the carbon it would be %s.", k, f, d.Metals.Karat())
		},
	}, {
		Word: "builtin", Title: "Non-metal in a deposit, from its density", Package: "alloys",
		Question: "A thick hard-gold deposit is weighed in air and water: 17.4 g/cm³. Its metals would\n" +
			"have 19.2. Say that the rest is built-in matter of 1.5 g/cm³. How much is it?",
		Good: "within a factor of two: pores count as non-metal, and 1.5 is a guess",
		solve: func(b *board) string {
			n := value[units.MassFraction](b)(alloys.NonMetalFromDensity(17.4*gcc, 19.2*gcc, 1.5*gcc))
			b.add(alloys.NonMetalFromDensityWorking(17.4*gcc, 19.2*gcc, 1.5*gcc))
			return fmt.Sprintf("%s of the deposit, say %s, is not metal.", b.last(), n.Percent(0))
		},
	}, {
		Word: "alloycoat", Title: "The thickness of a plated gold-copper alloy", Package: "alloys",
		Question: "A coat of gold with 15 % copper comes from a cyanide bath: one electron for each\n" +
			"metal, 15.9 g/cm³. How thick is it after 10 min at 0.6 A/dm² and 70 % efficiency?",
		Good: "as good as the efficiency, which has to be weighed",
		solve: func(b *board) string {
			c := value[alloys.Composition](b)(alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.85},
				alloys.ElementShare{Symbol: "Cu", Share: 0.15}))
			d := value[faraday.Deposit](b)(alloys.DepositComposition{Metals: c}.Plated(map[string]int{"Au": 1, "Cu": 1},
				15.9*gcc))
			b.one(d.ThicknessWorking(0.6*asd, 10*units.Minute, 0.7))
			return fmt.Sprintf("The coat is %s thick on average.", b.last())
		},
	}, {
		Word: "finegold", Title: "A micrometre of 18 karat in fine gold", Package: "alloys",
		Question: "A rule asks for 0.5 µm of fine gold. The bath lays down 18 karat, Au 750, Ag 125, Cu 125.\n" +
			"How thick must the coat be, and does it come back to 0.5 µm?",
		Good: "as good as the two densities, here 1.5 %",
		solve: func(b *board) string {
			c := value[alloys.Composition](b)(alloys.ParseComposition("Au 750, Ag 125, Cu 125"))
			coat := value[alloys.GoldCoat](b)(alloys.NewGoldCoat(c, alloys.DensityOptions{}))
			t := value[units.Length](b)(alloys.AlloyThickness(0.5*um, coat))
			b.add(alloys.AlloyThicknessWorking(0.5*um, coat))
			b.add(alloys.FineThicknessWorking(t, coat))
			return fmt.Sprintf("Lay down %s of the alloy; 0.5/0.75 would be too thin. Back in fine gold that is %s.",
				t.Text(um, 3), b.last())
		},
	}, {
		Word: "finemass", Title: "Fine gold on each square metre", Package: "alloys",
		Question: "A coat of 2 µm is 750 gold of 15.5 g/cm³. How much fine gold lies on a square metre,\n" +
			"and how thick would it have to be for 30 g/m²?",
		Good: "as good as the density of the coat",
		solve: func(b *board) string {
			coat := alloys.GoldCoat{Gold: 0.75, Density: 15.5 * gcc}
			m := value[units.MassPerArea](b)(alloys.FineMassPerArea(2*um, coat))
			t := value[units.Length](b)(alloys.ThicknessForFineGold(30*units.GramPerSquareMetre, coat))
			b.add(alloys.FineMassPerAreaWorking(2*um, coat))
			b.add(alloys.ThicknessForFineGoldWorking(30*units.GramPerSquareMetre, coat))
			return fmt.Sprintf("2 µm carry %s; 30 g/m² take %s, say %s.", m, b.last(), t.Text(um, 1))
		},
	}, {
		Word: "scrap", Title: "What the metal of a scrap is worth", Package: "alloys",
		Question: "18.6 g of 18 karat yellow (Au 750, Ag 125, Cu 125) goes to the refiner. Gold stands at\n" +
			"2000.00 an ounce troy, silver at 0.80 a gram. What is the metal worth before charges?",
		Good: "exact in decimal, each figure rounded once; the refiner's charge comes off",
		solve: func(b *board) string {
			c := value[alloys.Composition](b)(alloys.ParseComposition("Au 750, Ag 125, Cu 125"))
			w := value[alloys.Weighed](b)(alloys.NewWeighed(18.6*g, alloys.PerGram, 2))
			prices := []alloys.UnitPrice{{Symbol: "Au", Amount: decimal.NewFromInt(2000), Per: alloys.PerTroyOunce},
				{Symbol: "Ag", Amount: decimal.RequireFromString("0.80"), Per: alloys.PerGram}}
			m := value[alloys.Melt](b)(alloys.MeltValue(w, c, 2, prices...))
			b.add(alloys.MeltValueWorking(w, c, 2, prices...))
			return fmt.Sprintf("The metal of %s is worth %s; %s has no price and counts as nothing.", w, b.last(),
				strings.Join(m.Unpriced, ", "))
		},
	}}
}

// markLessons are about what may be struck and said.
func markLessons() []Lesson {
	return []Lesson{{
		Word: "karat", Title: "Karat, fineness and the mark", Package: "alloys",
		Question: "14 karat is 14 parts of 24. What fineness is that exactly, what is struck for it,\n" +
			"and what karat would the struck figure be?",
		Good: "exact; melt by the exact figure, strike by the mark",
		solve: func(b *board) string {
			k := value[alloys.KaratMark](b)(alloys.MarkedFineness(14))
			back := value[alloys.KaratMark](b)(alloys.KaratOfMark(k.Mark))
			mark := value[alloys.Fineness](b)(alloys.ParseFineness(k.Mark.String()))
			b.add(back.Karat.FinenessWorking())
			b.add(mark.KaratWorking())
			return fmt.Sprintf("14 karat is %s, the mark is %s (%s), and gold of just the mark would be %s.", k.Exact,
				k.Mark, k.Note, b.last())
		},
	}, {
		Word: "mark", Title: "The mark that an assay allows", Package: "alloys",
		Question: "A case assays 588 ‰ gold. Which mark of the United Kingdom series may be struck?",
		Good:     "exact in decimal; the law of the place decides over the series",
		solve: func(b *board) string {
			assay := decimal.NewFromInt(588)
			s := value[alloys.MarkSeries](b)(alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au"))
			m := value[decimal.Decimal](b)(alloys.MarkFor(assay, s))
			least := value[decimal.Decimal](b)(alloys.FinnishMinimum("Au"))
			b.add(alloys.MarkForWorking(assay, s))
			return fmt.Sprintf("Strike %s, never the nearest above: the assay is %s over it. In Finland %s ‰ is "+
				"the least that counts as gold.",
				m, b.last(), least)
		},
	}, {
		Word: "ownmarks", Title: "A list of marks of your own", Package: "alloys",
		Question: "A guild's list for silver has 800, 900 and 950. A spoon handle of a clock key assays 912 ‰.\n" +
			"Which mark may it bear?",
		Good: "exact in decimal",
		solve: func(b *board) string {
			s := value[alloys.MarkSeries](b)(alloys.NewSeries("the guild's list", "Ag", decimal.NewFromInt(950),
				decimal.NewFromInt(800),
				decimal.NewFromInt(900)))
			m := value[decimal.Decimal](b)(alloys.MarkFor(decimal.NewFromInt(912), s))
			b.add(alloys.MarkForWorking(decimal.NewFromInt(912), s))
			return fmt.Sprintf("Of %s it may bear %s; the assay is %s over it.", s.Name, m, b.last())
		},
	}, {
		Word: "stamp", Title: "Does a case meet its stamp", Package: "alloys",
		Question: "A watchcase for a carriage clock bears 585. As a whole it assays 583 ‰.\n" +
			"Does it meet the stamping act of the United States?",
		Good: "exact; arithmetic, not legal advice",
		solve: func(b *board) string {
			s := alloys.Stamp{Symbol: "Au", Mark: decimal.NewFromInt(585), Article: alloys.WatchcaseOrFlatware,
				Sample: alloys.WithSolder}
			v := value[alloys.StampVerdict](b)(alloys.MeetsStamp(decimal.NewFromInt(583), s))
			b.add(alloys.MeetsStampWorking(decimal.NewFromInt(583), s))
			word := "does not meet"
			if v.Meets {
				word = "meets"
			}
			return fmt.Sprintf("The least assay is %s, so with %s the case %s its stamp.", b.last(), v.Assay, word)
		},
	}, {
		Word: "vermeil", Title: "May a silver hand be called vermeil", Package: "alloys",
		Question: "A silver hand of 925 has 3 µm of 18 karat at its thinnest, 750 gold of 15.5 g/cm³.\n" +
			"Is that enough fine gold for the word vermeil in the guides of the United States?",
		Good: "as good as the thickness at the thinnest spot; not legal advice",
		solve: func(b *board) string {
			coat := alloys.GoldCoat{Gold: 0.75, Density: 15.5 * gcc}
			fine := value[units.Length](b)(alloys.FineThickness(3*um, coat))
			term := value[alloys.TradeTerm](b)(alloys.FTCTerm("vermeil"))
			b.add(alloys.FineThicknessWorking(3*um, coat))
			short := value[[]string](b)(term.Shortfalls(alloys.CoatFacts{Karat: 18, Fine: fine, Base: 925}))
			b.show("d = t_min - t_f", "FTC23", working.Of("d", "fine gold that is lacking", term.LeastFine-fine),
				working.Of("t_min", "least for "+term.Name, term.LeastFine),
				working.Of("t_f", "fine gold at the thinnest spot", fine))
			return fmt.Sprintf("No, %s of fine gold are lacking at the thinnest spot: %s.", b.last(),
				strings.Join(short, "; "))
		},
	}}
}
