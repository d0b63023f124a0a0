package alloys_test

import (
	"fmt"

	"example.com/laydown/alloys"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

func ExampleDensity() {
	white, _ := alloys.ParseComposition("Au 750, Ni 173, Zn 55, Cu 22")
	d, err := alloys.Density(white, alloys.DensityOptions{})
	fmt.Printf("%.1f g/cm³ within %s %v\n", d.Value/units.GramPerCubicCentimetre, d.Relative.Percent(0), err)
	// A finial's coat, weighed and measured.
	d, err = alloys.Density(white, alloys.DensityOptions{Measured: 14.2 * units.GramPerCubicCentimetre})
	fmt.Println(d.Value, d.Measured, err)
	// Output:
	// 14.6 g/cm³ within 3 % <nil>
	// 14.2 g/cm³ true <nil>
}

func ExampleDensityWorking() {
	c, _ := alloys.ParseComposition("Ag 925, Cu 75")
	steps, err := alloys.DensityWorking(c, alloys.DensityOptions{})
	fmt.Println(steps[0].Formula, steps[0].Note, err)
	// Output: ρ = 1/(w_Ag/ρ_Ag + w_Cu/ρ_Cu) Stated uncertainty 1.0 % (silver-copper). <nil>
}

func ExampleDensityEstimate_Low() {
	c, _ := alloys.ParseComposition("Au 1000")
	d, _ := alloys.Density(c, alloys.DensityOptions{})
	fmt.Printf("%.1f to %.1f g/cm³\n", d.Low()/units.GramPerCubicCentimetre, d.High()/units.GramPerCubicCentimetre)
	// Output: 19.2 to 19.4 g/cm³
}

func ExampleShareFromDensity() {
	// An old hand of gold and silver: 9.85 g, 0.675 cm³.
	rho, _ := (9.85 * units.Gram).PerVolume(0.675 * units.CubicCentimetre)
	a, err := alloys.ShareFromDensity("Au", "Ag", rho, alloys.DensityOptions{})
	fmt.Println(a.Share.Percent(1), "from", a.Low.Percent(0), "to", a.High.Percent(0), err)
	// Output: 61.5 % from 60 % to 63 % <nil>
}

func ExampleShareFromDensityWorking() {
	steps, err := alloys.ShareFromDensityWorking("Au", "Ag", 14.6*units.GramPerCubicCentimetre, alloys.DensityOptions{})
	fmt.Println(steps[0].Formula, err)
	// Output: w = (1/ρ - 1/ρ_b)/(1/ρ_a - 1/ρ_b) <nil>
}

func ExampleNewGoldCoat() {
	c, _ := alloys.ParseComposition("Au 750, Ag 125, Cu 125")
	g, err := alloys.NewGoldCoat(c, alloys.DensityOptions{})
	fmt.Printf("%v gold, %.1f g/cm³ %v\n", g.Gold, g.Density/units.GramPerCubicCentimetre, err)
	// Output: 75 % gold, 15.5 g/cm³ <nil>
}

func ExampleAlloyThickness() {
	// Vermeil asks for 2.5 µm of fine gold; the bezel gets 18 karat.
	c, _ := alloys.ParseComposition("Au 750, Ag 125, Cu 125")
	g, _ := alloys.NewGoldCoat(c, alloys.DensityOptions{})
	t, err := alloys.AlloyThickness(2.5*units.Micrometre, g)
	fmt.Printf("%.2f µm %v\n", t/units.Micrometre, err)
	// Output: 4.16 µm <nil>
}

func ExampleAlloyThicknessWorking() {
	g := alloys.GoldCoat{Gold: 0.75, Density: 15.5 * units.GramPerCubicCentimetre}
	steps, err := alloys.AlloyThicknessWorking(0.5*units.Micrometre, g)
	fmt.Print(working.Text(steps), err)
	// Output:
	// thickness of the alloy: 0.830108 µm
	//   t = t_f·ρ_f/(w·ρ)  [ISO10713]
	//     t_f = 0.5 µm (thickness of fine gold)
	//     w = 75 % (mass fraction of gold)
	//     ρ = 15.5 g/cm³ (density of the alloy)
	//     ρ_f = 19.3 g/cm³ (density of fine gold)
	// <nil>
}

func ExampleFineThickness() {
	// Hard gold on a pendulum bob: lighter than its metals.
	t, err := alloys.FineThickness(1*units.Micrometre, alloys.GoldCoat{Gold: 0.987,
		Density: 17 * units.GramPerCubicCentimetre})
	fmt.Printf("%.2f µm %v\n", t/units.Micrometre, err)
	// Output: 0.87 µm <nil>
}

func ExampleFineThicknessWorking() {
	steps, err := alloys.FineThicknessWorking(1*units.Micrometre, alloys.GoldCoat{Gold: 0.987,
		Density: 17 * units.GramPerCubicCentimetre})
	fmt.Println(steps[0].Formula, err)
	// Output: t_f = t·w·ρ/ρ_f <nil>
}

func ExampleFineMassPerArea() {
	m, err := alloys.FineMassPerArea(2.5*units.Micrometre, alloys.GoldCoat{Gold: 1,
		Density: 19.3 * units.GramPerCubicCentimetre})
	fmt.Printf("%.3f mg/cm² %v\n", m/units.MilligramPerSquareCentimetre, err)
	// Output: 4.825 mg/cm² <nil>
}

func ExampleFineMassPerAreaWorking() {
	steps, err := alloys.FineMassPerAreaWorking(2.5*units.Micrometre, alloys.GoldCoat{Gold: 1,
		Density: 19.3 * units.GramPerCubicCentimetre})
	fmt.Println(steps[0].Formula, err)
	// Output: m_f = t·w·ρ <nil>
}

func ExampleThicknessForFineGold() {
	t, err := alloys.ThicknessForFineGold(4.825*units.MilligramPerSquareCentimetre, alloys.GoldCoat{Gold: 0.75,
		Density: 15.5 * units.GramPerCubicCentimetre})
	fmt.Printf("%.2f µm %v\n", t/units.Micrometre, err)
	// Output: 4.15 µm <nil>
}

func ExampleThicknessForFineGoldWorking() {
	steps, err := alloys.ThicknessForFineGoldWorking(4.825*units.MilligramPerSquareCentimetre, alloys.GoldCoat{Gold: 0.75,
		Density: 15.5 * units.GramPerCubicCentimetre})
	fmt.Println(steps[0].Formula, err)
	// Output: t = m_f/(w·ρ) <nil>
}

func ExampleAssay() {
	f, err := alloys.Assay(187.5*units.Milligram, 250*units.Milligram)
	fmt.Println(f, f.Karat(), err)
	// Output: 750 ‰ 18 K <nil>
}

func ExampleAssayWorking() {
	steps, err := alloys.AssayWorking(187.5*units.Milligram, 250*units.Milligram)
	fmt.Println(steps[0].Formula, steps[0].Result.Value, err)
	// Output: F = 1000·m/m_t 750 ‰ <nil>
}

func ExampleDepositComposition_Karat() {
	// Hard gold of 24 karat colour on a set of hands: 0.3 % cobalt among the
	// metals, 1 % of the whole non-metal.
	metals, _ := alloys.ParseComposition("Au 997, Co rest")
	d := alloys.DepositComposition{Metals: metals, NonMetal: 0.01}
	k, err := d.Karat()
	fmt.Printf("%.2f K %v\n", float64(k), err)
	// Output: 23.69 K <nil>
}

func ExampleDepositComposition_Fineness() {
	metals, _ := alloys.ParseComposition("Au 997, Co rest")
	f, err := alloys.DepositComposition{Metals: metals, NonMetal: 0.01}.Fineness("Au")
	fmt.Printf("%.1f ‰ %v\n", float64(f), err)
	// Output: 987.0 ‰ <nil>
}

func ExampleDepositComposition_FinenessWorking() {
	metals, _ := alloys.ParseComposition("Au 997, Co rest")
	steps, err := alloys.DepositComposition{Metals: metals, NonMetal: 0.01}.FinenessWorking("Au")
	fmt.Println(steps[0].Formula, err)
	// Output: F = 1000·(1 - n)·w <nil>
}

func ExampleDepositFromMasses() {
	d, err := alloys.DepositFromMasses(2.5*units.Milligram, alloys.MassPart{Symbol: "Au", Mass: 1 * units.Gram},
		alloys.MassPart{Symbol: "Co", Mass: 2.5 * units.Milligram})
	k, _ := d.Karat()
	fmt.Printf("%.2f K, non-metal %s %v\n", float64(k), d.NonMetal.Percent(2), err)
	// Output: 23.88 K, non-metal 0.25 % <nil>
}

func ExampleNonMetalFromDensity() {
	gcm3 := units.GramPerCubicCentimetre
	n, err := alloys.NonMetalFromDensity(17*gcm3, 19.25*gcm3, 1.5*gcm3)
	fmt.Println(n.Percent(1), err)
	// Output: 1.1 % <nil>
}

func ExampleNonMetalFromDensityWorking() {
	gcm3 := units.GramPerCubicCentimetre
	steps, err := alloys.NonMetalFromDensityWorking(17*gcm3, 19.25*gcm3, 1.5*gcm3)
	fmt.Println(steps[0].Formula, err)
	// Output: n = (1/ρ - 1/ρ_m)/(1/ρ_n - 1/ρ_m) <nil>
}

func ExampleRaise() {
	// 20 g of 10 karat scrap from old bezels, up to 14 karat.
	k, err := alloys.Raise(20*units.Gram, alloys.Karat(10).MassFraction(), alloys.Karat(14).MassFraction())
	fmt.Printf("add %.2f g fine gold, %.2f g in all %v\n", k.Add/units.Gram, k.Total/units.Gram, err)
	// Output: add 8.00 g fine gold, 28.00 g in all <nil>
}

func ExampleRaiseWorking() {
	steps, err := alloys.RaiseWorking(20*units.Gram, 0.4, 0.6)
	fmt.Print(working.Text(steps), err)
	// Output:
	// fine gold to add: 10 g
	//   a = m·(w₂ - w₁)/(1 - w₂)  [RaisingGold]
	//     m = 20 g (mass of the stock)
	//     w₁ = 40 % (share of gold in the stock)
	//     w₂ = 60 % (share of gold wanted)
	// mass after melting: 30 g
	//   M = m + a  [RaisingGold]
	//     m = 20 g (mass of the stock)
	//     a = 10 g (fine gold to add)
	// <nil>
}

func ExampleLower() {
	// The same 100 g of fine gold to 14 karat and to the mark 585.
	exact, _ := alloys.Lower(100*units.Gram, 1, alloys.Karat(14).MassFraction())
	mark, err := alloys.Lower(100*units.Gram, 1, alloys.Fineness(585).MassFraction())
	fmt.Printf("%.2f g, %.2f g %v\n", exact.Add/units.Gram, mark.Add/units.Gram, err)
	// Output: 71.43 g, 70.94 g <nil>
}

func ExampleLowerWorking() {
	steps, err := alloys.LowerWorking(9*units.Pennyweight, alloys.Karat(18).MassFraction(),
		alloys.Karat(10).MassFraction())
	fmt.Println(steps[0].Formula, err)
	// Output: a = m·(w₁ - w₂)/w₂ <nil>
}

func ExampleBlendTo() {
	b, err := alloys.BlendTo(30*units.Gram, alloys.Karat(9).MassFraction(), alloys.Karat(18).MassFraction(),
		alloys.Karat(12).MassFraction())
	fmt.Printf("%.1f g of 9 K, %.1f g of 18 K %v\n", b.Low/units.Gram, b.High/units.Gram, err)
	// Output: 20.0 g of 9 K, 10.0 g of 18 K <nil>
}

func ExampleBlendToWorking() {
	steps, err := alloys.BlendToWorking(30*units.Gram, 0.375, 0.75, 0.5)
	fmt.Println(steps[0].Formula, err)
	// Output: m_h = m·(w - w_l)/(w_h - w_l) <nil>
}

func ExampleLot_Of() {
	c, _ := alloys.ParseComposition("Au 750, Ag 250")
	fmt.Println(alloys.Lot{Mass: 12 * units.Gram, Composition: c}.Of("Au"))
	// Output: 9 g
}

func ExampleBlend() {
	yellow, _ := alloys.ParseComposition("Au 750, Ag 125, Cu 125")
	sterling, _ := alloys.ParseComposition("Ag 925, Cu 75")
	melt, err := alloys.Blend(alloys.Lot{Mass: 3 * units.Gram, Composition: yellow}, alloys.Lot{Mass: 1 * units.Gram,
		Composition: sterling})
	fmt.Println(melt.Mass, melt.Composition, err)
	// Output: 4 g Au 562.5, Ag 325, Cu 112.5 <nil>
}

func ExampleBlendWorking() {
	yellow, _ := alloys.ParseComposition("Au 750, Ag 250")
	steps, err := alloys.BlendWorking(alloys.Lot{Mass: 3 * units.Gram, Composition: yellow},
		alloys.Lot{Mass: 1 * units.Gram, Composition: yellow})
	fmt.Println(steps[1].Formula, err)
	// Output: w_Au = (m_1·w_1 + m_2·w_2)/m <nil>
}

func ExampleToComposition() {
	// 31.1 g of fine gold to be used up for 18 karat pale yellow.
	fine, _ := alloys.ParseComposition("Au 1000")
	pale, _ := alloys.ParseComposition("Au 750, Ag 160, Cu rest")
	a, err := alloys.ToComposition(alloys.Lot{Mass: 31.1 * units.Gram, Composition: fine}, pale, 0)
	for _, p := range a.Add {
		fmt.Printf("%s %.2f g\n", p.Symbol, p.Mass/units.Gram)
	}
	fmt.Printf("%.2f g, all the %s used %v\n", a.Total/units.Gram, a.Limiting, err)
	_, err = alloys.ToComposition(alloys.Lot{Mass: 31.1 * units.Gram, Composition: fine}, pale, 40*units.Gram)
	fmt.Println(err)
	// Output:
	// Au 0.00 g
	// Ag 6.63 g
	// Cu 3.73 g
	// 41.47 g, all the Au used <nil>
	// Au in the stock 31.1 g, in the finished melt 30 g: more than the target holds; need a larger total, or a stock with less of it
}

func ExampleToCompositionWorking() {
	pale, _ := alloys.ParseComposition("Au 750, Ag 160, Cu rest")
	steps, err := alloys.ToCompositionWorking(alloys.Lot{}, pale, 20*units.Gram)
	fmt.Println(steps[0].Formula, steps[0].Result.Value, err)
	// Output: a_Au = M·w' - s 15 g <nil>
}

func ExampleMeltValue() {
	// Swarf from turning bezels, at invented prices.
	c, _ := alloys.ParseComposition("Au 750, Ag 125, Cu 125")
	swarf := alloys.Weighed{Amount: decimal.New(124, -1), Unit: alloys.PerPennyweight}
	m, err := alloys.MeltValue(swarf, c, 2,
		alloys.UnitPrice{Symbol: "Au", Amount: decimal.New(2000, 0), Per: alloys.PerTroyOunce},
		alloys.UnitPrice{Symbol: "Ag", Amount: decimal.New(25, 0), Per: alloys.PerTroyOunce})
	for _, l := range m.Lines {
		fmt.Println(l.Symbol, l.Fine.StringFixed(4), "g", l.Value)
	}
	fmt.Println("total", m.Total, "without a price:", m.Unpriced, err)
	// Output:
	// Au 14.4631 g 930
	// Ag 2.4105 g 1.94
	// total 931.94 without a price: [Cu] <nil>
}

func ExampleMeltValueWorking() {
	c, _ := alloys.ParseComposition("Au 750, Cu 250")
	steps, err := alloys.MeltValueWorking(alloys.Weighed{Amount: decimal.New(10, 0), Unit: alloys.PerGram}, c, 2,
		alloys.UnitPrice{Symbol: "Au", Amount: decimal.New(60, 0), Per: alloys.PerGram})
	fmt.Println(steps[0].Formula, "=", steps[0].Result.Value, steps[0].Note, err)
	// Output: V = m·(w_Au·p_Au) = 450.00 Without a price, counted as worth nothing: Cu. <nil>
}

func ExampleNewWeighed() {
	w, err := alloys.NewWeighed(12.34567*units.Gram, alloys.PerGram, 4)
	fmt.Println(w, err)
	// Output: 12.3457 g <nil>
}

func ExampleWeighed_In() {
	w, err := alloys.Weighed{Amount: decimal.New(20, 0), Unit: alloys.PerPennyweight}.In(alloys.PerTroyOunce, 3)
	fmt.Println(w, err)
	// Output: 1 ozt <nil>
}

func ExampleWeighed_Mass() {
	m, err := alloys.Weighed{Amount: decimal.New(2, 0), Unit: alloys.PerTroyOunce}.Mass()
	fmt.Println(m, err)
	// Output: 62.207 g <nil>
}
