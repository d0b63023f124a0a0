package alloys_test

import (
	"errors"
	"fmt"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// The hands of a long-case clock are to be replaced in 18 karat yellow.
func Example() {
	yellow, err := alloys.ParseComposition("Au 750, Ag 125, Cu rest")
	if err != nil {
		fmt.Println(err)
		return
	}
	rho, err := alloys.Density(yellow, alloys.DensityOptions{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%v is %v, %.1f g/cm³ within %v\n", yellow, yellow.Karat(), rho.Value/units.GramPerCubicCentimetre,
		rho.Relative)
	// Output: Au 750, Ag 125, Cu 125 is 18 K, 15.5 g/cm³ within 0.015
}

func ExampleNewComposition() {
	sterling, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Ag", Share: 0.925},
		alloys.ElementShare{Symbol: "Cu", Share: 0.075})
	fmt.Println(sterling, err)
	_, err = alloys.NewComposition(alloys.ElementShare{Symbol: "Ag", Share: 0.925}, alloys.ElementShare{Symbol: "Cu",
		Share: 0.095})
	var off *alloys.SumError
	fmt.Println(errors.As(err, &off), err)
	// Output:
	// Ag 925, Cu 75 <nil>
	// true composition Ag 925, Cu 95: shares sum to 1020 ‰: values that contradict; need 1000 ‰ within 0.001 ‰
}

func ExampleFromPermille() {
	c, err := alloys.FromPermille(alloys.PermillePart{Symbol: "Au", Share: 583}, alloys.PermillePart{Symbol: "Ag",
		Share: 104}, alloys.PermillePart{Symbol: "Cu", Share: 313})
	fmt.Println(c, err)
	// Output: Au 583, Ag 104, Cu 313 <nil>
}

func ExampleFromMasses() {
	// The melt for a set of bezels.
	c, err := alloys.FromMasses(alloys.MassPart{Symbol: "Au", Mass: 9 * units.Gram}, alloys.MassPart{Symbol: "Ag",
		Mass: 3 * units.Gram})
	fmt.Println(c, err)
	// Output: Au 750, Ag 250 <nil>
}

func ExampleFromMoles() {
	c, err := alloys.FromMoles(alloys.MolePart{Symbol: "Au", Share: 0.5}, alloys.MolePart{Symbol: "Cu", Share: 0.5})
	fmt.Printf("AuCu: %.1f K %v\n", float64(c.Karat()), err)
	// Output: AuCu: 18.1 K <nil>
}

func ExampleFromMolesWorking() {
	steps, _ := alloys.FromMolesWorking(alloys.MolePart{Symbol: "Au", Share: 0.5}, alloys.MolePart{Symbol: "Cu",
		Share: 0.5})
	fmt.Println(steps[0].Formula)
	fmt.Println(steps[1].Formula)
	// Output:
	// M = x_Au·M_Au + x_Cu·M_Cu
	// w_Au = x_Au·M_Au/M
}

func ExampleParseComposition() {
	c, err := alloys.ParseComposition("Au 58.5 %, Ag 10 %, Cu rest")
	fmt.Println(c, err)
	_, err = alloys.ParseComposition("Au 750, Ag")
	fmt.Println(err)
	// Output:
	// Au 585, Ag 100, Cu 315 <nil>
	// part of a composition "Ag": not understood; need an element symbol and a share in per mille, as Au 750, or with a sign, as Au 75 %
}

func ExampleComposition_Moles() {
	c, _ := alloys.ParseComposition("Au 750, Cu 250")
	for _, p := range c.Moles() {
		fmt.Printf("%s %.3f\n", p.Symbol, float64(p.Share))
	}
	// Output:
	// Au 0.492
	// Cu 0.508
}

func ExampleComposition_MolesWorking() {
	c, _ := alloys.ParseComposition("Au 750, Cu 250")
	for _, s := range c.MolesWorking() {
		fmt.Println(s.Formula)
	}
	// Output:
	// N = w_Au/M_Au + w_Cu/M_Cu
	// x_Au = (w_Au/M_Au)/N
	// x_Cu = (w_Cu/M_Cu)/N
}

func ExampleComposition_Share() {
	c, _ := alloys.ParseComposition("Au 750, Ag 125, Cu 125")
	fmt.Println(c.Share("Ag"), c.Fineness("Au"), c.Karat(), c.Share("Ni"))
	// Output: 12.5 % 750 ‰ 18 K 0 %
}

func ExampleComposition_Parts() {
	c, _ := alloys.ParseComposition("Au 750, Ag rest")
	for _, p := range c.Parts() {
		fmt.Println(p.Symbol, p.Share)
	}
	// Output:
	// Au 75 %
	// Ag 25 %
}

func ExampleComposition_Equal() {
	a, _ := alloys.ParseComposition("Au 750, Ag 250")
	b, _ := alloys.ParseComposition("Ag rest, Au 75 %")
	fmt.Println(a.Equal(b))
	// Output: true
}

func ExampleComposition_MarshalText() {
	c, _ := alloys.ParseComposition("Au 750, Ag 125, Cu rest")
	text, err := c.MarshalText()
	fmt.Println(string(text), err)
	// Output: Au 750, Ag 125, Cu 125 <nil>
}

func ExampleKarat_Fineness() {
	fmt.Println(alloys.Karat(14).Fineness(), alloys.Karat(18).Fineness(), alloys.Karat(18).MassFraction())
	// Output: 583.333 ‰ 750 ‰ 75 %
}

func ExampleKarat_FinenessWorking() {
	steps, err := alloys.Karat(14).FinenessWorking()
	fmt.Print(working.Text(steps), err)
	// Output:
	// fineness: 583.333 ‰
	//   F = 1000·K/24  [FinenessMarks]
	//     K = 14 K (karat)
	// <nil>
}

func ExampleFineness_Karat() {
	fmt.Println(alloys.Fineness(585).Karat(), alloys.Fineness(585).MassFraction(), alloys.NewFineness(0.585))
	// Output: 14.04 K 58.5 % 585 ‰
}

func ExampleFineness_KaratWorking() {
	steps, err := alloys.Fineness(585).KaratWorking()
	fmt.Println(steps[0].Formula, steps[0].Result.Value, err)
	// Output: K = 24·F/1000 14.04 K <nil>
}

func ExampleFineness_Decimal() {
	d, err := alloys.Fineness(584.9999).Decimal()
	fmt.Println(d, err)
	// Output: 584.9999 <nil>
}

func ExampleParseKarat() {
	k, err := alloys.ParseKarat("18 K")
	fmt.Println(k, err)
	_, err = alloys.ParseKarat("25 K")
	fmt.Println(err)
	// Output:
	// 18 K <nil>
	// karat 25 K: out of range; need at most 24 K
}

func ExampleParseFineness() {
	f, err := alloys.ParseFineness("750 ‰")
	fmt.Println(f, f.Karat(), err)
	// Output: 750 ‰ 18 K <nil>
}

func ExampleKaratMarks() {
	for _, m := range alloys.KaratMarks()[:3] {
		fmt.Println(m.Karat, m.Exact, m.Mark, m.Note)
	}
	// Output:
	// 8 K 333.333 ‰ 333 cut down
	// 9 K 375 ‰ 375 exact
	// 10 K 416.667 ‰ 417 rounded up
}

func ExampleMarkedFineness() {
	m, err := alloys.MarkedFineness(14)
	fmt.Println(m.Mark, m.Exact, err)
	// Output: 585 583.333 ‰ <nil>
}

func ExampleKaratOfMark() {
	m, err := alloys.KaratOfMark(decimal.New(585, 0))
	fmt.Println(m.Karat, err)
	// Output: 14 K <nil>
}

func ExampleFinenessSeries() {
	s, err := alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au")
	fmt.Println(s.Name, s.Marks, s.Seen, err)
	s, _ = alloys.FinenessSeries(alloys.ListISO9202, "Pd")
	fmt.Println(s.Name, s.Marks, s.Seen)
	// Output:
	// United Kingdom legal standards [375 585 750 916 990 999] published <nil>
	// ISO 9202, from memory [500 950 999] from memory
}

func ExampleNewSeries() {
	s, err := alloys.NewSeries("this town", "Ag", decimal.New(925, 0), decimal.New(800, 0))
	fmt.Println(s.Marks, err)
	// Output: [800 925] <nil>
}

func ExampleMarkFor() {
	s, _ := alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au")
	for _, assay := range []int64{588, 584, 370} {
		mark, err := alloys.MarkFor(decimal.New(assay, 0), s)
		fmt.Println(assay, mark, err)
	}
	// Output:
	// 588 585 <nil>
	// 584 375 <nil>
	// 370 0 assay of Au 370 ‰: below every mark of the series; need 375 ‰ for the lowest mark
}

func ExampleMarkForWorking() {
	s, _ := alloys.FinenessSeries(alloys.ListUnitedKingdom, "Au")
	steps, err := alloys.MarkForWorking(decimal.New(588, 0), s)
	fmt.Println(steps[0].Formula, steps[0].Result.Value, err)
	// Output: d = f - M 3 ‰ <nil>
}

func ExampleFinnishMinimum() {
	least, err := alloys.FinnishMinimum("Ag")
	fmt.Println(least, err)
	// Output: 800 <nil>
}

func ExampleStampShortfall() {
	s, err := alloys.StampShortfall("Au", alloys.OtherArticle, alloys.WithSolder)
	fmt.Println(s, err)
	// Output: 7 <nil>
}

func ExampleMeetsStamp() {
	// A soldered bezel marked 14 K, melted and assayed as a whole.
	mark, _ := alloys.Karat(14).Fineness().Decimal()
	v, err := alloys.MeetsStamp(decimal.New(578, 0), alloys.Stamp{Symbol: "Au", Mark: mark, Sample: alloys.WithSolder})
	fmt.Println(v.Meets, v.Least.StringFixed(2), err)
	// Output: true 576.33 <nil>
}

func ExampleMeetsStampWorking() {
	steps, err := alloys.MeetsStampWorking(decimal.New(920, 0), alloys.Stamp{Symbol: "Ag", Mark: decimal.New(925, 0)})
	fmt.Print(working.Text(steps), err)
	// Output:
	// least assay: 921 ‰
	//   f_min = M - s  [StampAct]
	//     M = 925 ‰ (mark)
	//     s = 4 ‰ (allowed shortfall)
	//   The assay of 920 ‰ does not reach it.
	// <nil>
}

func ExampleFTCTerms() {
	for _, term := range alloys.FTCTerms() {
		fmt.Println(term.Name, term.LeastKarat, term.LeastFine, term.Seen)
	}
	// Output:
	// vermeil 10 K 2.5 µm published
	// gold electroplate 10 K 0.175 µm from memory
	// heavy gold electroplate 10 K 2.5 µm from memory
	// gold plate 10 K 0.5 µm from memory
	// gold flashed 10 K 0 µm second hand
	// gold filled 10 K 0 µm second hand
}

func ExampleFTCTerm() {
	term, err := alloys.FTCTerm("vermeil")
	fmt.Println(term.LeastFine, term.LeastBase, err)
	// Output: 2.5 µm 925 ‰ <nil>
}

func ExampleTradeTerm_Shortfalls() {
	vermeil, _ := alloys.FTCTerm("vermeil")
	short, err := vermeil.Shortfalls(alloys.CoatFacts{Karat: 18, Fine: 2 * units.Micrometre, Base: 925})
	fmt.Println(short, err)
	// Output: [fine-gold thickness 2 µm, needs 2.5 µm] <nil>
}

// A pink gold from a cyanide bath, in which copper takes one electron.
func ExampleDepositComposition_Plated() {
	c, err := alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: 0.75}, alloys.ElementShare{Symbol: "Cu",
		Share: 0.25})
	if err != nil {
		fmt.Println(err)
		return
	}
	d, err := alloys.DepositComposition{Metals: c}.Plated(map[string]int{"Au": 1, "Cu": 1},
		15.3*units.GramPerCubicCentimetre)
	fmt.Println(d.Equivalent.In(units.GramPerAmpereHour) > 4.8, err)
	_, err = alloys.DepositComposition{Metals: c}.Plated(map[string]int{"Ag": 1}, 15.3*units.GramPerCubicCentimetre)
	fmt.Println(err)
	// Output:
	// true <nil>
	// valences Ag: values that contradict; need metals of the deposit, Au 750, Cu 250
}
