package faraday_test

import (
	"fmt"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A litre of a gold bath for clock hands has lost 1.2 g of gold. How much
// potassium gold cyanide brings it back?
func ExampleSaltFor() {
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		fmt.Println(err)
		return
	}
	m, err := faraday.SaltFor(1.2*units.Gram, salt, "Au")
	fmt.Println(m.Text(units.Gram, 3), err)
	// Output: 1.755 g <nil>
}

func ExampleParseFormula() {
	for _, text := range []string{"NiSO₄ · 6 H₂O", "CaSO4.0.5H2O", "kau(cn)2", "KAu(CN2"} {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(f, f.MolarMass().Text(units.GramPerMole, 2))
	}
	// Output:
	// NiSO4·6H2O 262.84 g/mol
	// CaSO4·0.5H2O 145.14 g/mol
	// formula "kau(cn)2", character 1: a small 'k' begins no element; did you mean K? A symbol begins with a capital
	// formula "KAu(CN2", character 4: '(' is not closed; need ')'
}

func ExampleFormula_MolarMassUncertainty() {
	f, err := faraday.ParseFormula("CuSO4·5H2O")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%s ± %.3f g/mol\n", f.MolarMass().Text(units.GramPerMole, 3),
		f.MolarMassUncertainty().In(units.GramPerMole))
	// Output: 249.677 g/mol ± 0.013 g/mol
}

func ExampleFormula_MassFraction() {
	f, err := faraday.ParseFormula("NiCl2·6H2O")
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := f.MassFraction("Cl")
	fmt.Println(w.Percent(1), err)
	// Output: 29.8 % <nil>
}

// How much cyanide does a gram of the salt hold?
func ExampleFormula_MassFractionOf() {
	salt, err := faraday.ParseFormula("KCN")
	if err != nil {
		fmt.Println(err)
		return
	}
	cyanide, err := faraday.ParseFormula("CN")
	if err != nil {
		fmt.Println(err)
		return
	}
	w, err := salt.MassFractionOf(cyanide)
	fmt.Println(w.Percent(2), err)
	// Output: 39.96 % <nil>
}

func ExampleMetalContent() {
	for _, text := range []string{"KAu(CN)2", "Na3Au(SO3)2", "NISO4"} {
		f, err := faraday.ParseFormula(text)
		if err != nil {
			fmt.Println(err)
			continue
		}
		metal := "Au"
		if text == "NISO4" {
			metal = "Ni"
		}
		w, err := faraday.MetalContent(f, metal)
		fmt.Println(text, w.Percent(2), err)
	}
	// Output:
	// KAu(CN)2 68.37 % <nil>
	// Na3Au(SO3)2 46.23 % <nil>
	// NISO4 0.00 % metal content of NISO4 0 % Ni: not above zero; need a salt that holds the metal; mind the capitals, Ni and not NI
}

func ExampleSaltForWorking() {
	salt, err := faraday.ParseFormula("NiSO4·6H2O")
	if err != nil {
		fmt.Println(err)
		return
	}
	step, err := faraday.SaltForWorking(67*units.Gram, salt, "Ni")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Print(step.Text())
	// Output:
	// mass of NiSO4·6H2O: 300.038 g
	//   ms = m·M/(N·A)  [IUPAC2021]
	//     m = 67 g (mass of Ni wanted)
	//     N = 1 (atoms of nickel in NiSO4·6H2O)
	//     A = 58.6934 g/mol (atomic weight of nickel)
	//     M = 262.839 g/mol (molar mass of NiSO4·6H2O)
	//   For the pure salt; where the label states a metal content, that one counts.
}

func ExampleMetalContentWorking() {
	salt, err := faraday.ParseFormula("AgCN")
	if err != nil {
		fmt.Println(err)
		return
	}
	step, err := faraday.MetalContentWorking(salt, "Ag")
	fmt.Println(step.Formula, step.Result.Value, err)
	// Output: w = N·A/M 80.5671 % <nil>
}

func ExampleMolarMassWorking() {
	salt, err := faraday.ParseFormula("KAu(CN)2")
	if err != nil {
		fmt.Println(err)
		return
	}
	step, err := faraday.MolarMassWorking(salt)
	fmt.Println(step.Formula, "=", step.Result.Value, err)
	// Output: M = 1·K + 1·Au + 2·C + 2·N = 288.101 g/mol <nil>
}

// Cyanide makes gold less noble by more than two volts.
func ExampleStandardPotential() {
	for _, name := range []string{"Au+/Au", "[Au(CN)2]-/Au", "Gold"} {
		c, err := faraday.StandardPotential(name)
		if err != nil {
			fmt.Println(err)
			continue
		}
		fmt.Println(c.Reaction, c.Potential.Text(units.Volt, 2))
	}
	// Output:
	// Au+ + e- = Au 1.69 V
	// [Au(CN)2]- + e- = Au + 2 CN- -0.60 V
	// couple "Gold": unknown; need a name such as Ni2+/Ni, Ag+/Ag, [Au(CN)2]-/Au and the others of Couples
}

func ExampleCouples() {
	for _, c := range faraday.Couples() {
		if c.Metal == "Ag" {
			fmt.Println(c.Name, c.Electrons, c.Potential.Text(units.Volt, 2))
		}
	}
	// Output:
	// Ag+/Ag 1 0.80 V
	// [Ag(CN)2]-/Ag 1 -0.31 V
	// [Ag(NH3)2]+/Ag 1 0.37 V
	// [Ag(S2O3)2]3-/Ag 1 0.02 V
}

// Nickel in a bath of 1.2 mol/L at 55 °C, activity taken as the concentration.
func ExampleNernst() {
	ni, err := faraday.StandardPotential("Ni2+/Ni")
	if err != nil {
		fmt.Println(err)
		return
	}
	e, err := faraday.Nernst(ni.Potential, ni.Electrons, 1/1.2, units.Celsius(55))
	fmt.Println(e.Text(units.Millivolt, 0), err)
	// Output: -254 mV <nil>
}

func ExampleNernstSlope() {
	s, err := faraday.NernstSlope(units.Celsius(25))
	fmt.Println(s.Text(units.Millivolt, 2), err)
	// Output: 59.16 mV <nil>
}

func ExampleNernstWorking() {
	step, err := faraday.NernstWorking(0.7996, 1, 1/0.01, units.Celsius(25))
	fmt.Println(step.Formula, step.Result.Value, err)
	// Output: E = E0 - R·T/(n·F)·ln(Q) 681.281 mV <nil>
}

// Zinc throws gold out of a spent cyanide bath, completely for all purposes:
// 2 [Au(CN)2]- + Zn = 2 Au + [Zn(CN)4]2-.
func ExampleCellVoltage() {
	e, err := faraday.CellVoltage(-0.60, -1.26)
	if err != nil {
		fmt.Println(err)
		return
	}
	log, err := faraday.LogEquilibriumConstant(e, 2, units.Celsius(25))
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := faraday.GibbsEnergy(e, 2)
	fmt.Printf("%s, K = 10^%.1f, %.0f kJ/mol, %v\n", e.Text(units.Volt, 2), log, g/1000, err)
	// Output: 0.66 V, K = 10^22.3, -127 kJ/mol, <nil>
}

func ExampleLogEquilibriumConstant() {
	log, err := faraday.LogEquilibriumConstant(0.66, 2, units.Celsius(25))
	fmt.Printf("%.1f %v\n", log, err)
	// Output: 22.3 <nil>
}

func ExampleGibbsEnergy() {
	g, err := faraday.GibbsEnergy(0.434, 2)
	fmt.Printf("%.1f kJ/mol %v\n", g/1000, err)
	// Output: -83.7 kJ/mol <nil>
}

func ExampleButlerVolmer_CurrentDensity() {
	bv := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: units.Celsius(25)}
	j, err := bv.CurrentDensity(-100 * units.Millivolt)
	fmt.Println(j.Text(units.AmperePerSquareMetre, 3), err)
	// Output: -6.858 A/m² <nil>
}

func ExampleButlerVolmer_Overpotential() {
	bv := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.6, Cathodic: 0.4, Temperature: units.Celsius(25)}
	eta, err := bv.Overpotential(-1 * units.AmperePerSquareDecimetre)
	fmt.Println(eta.Text(units.Millivolt, 1), err)
	// Output: -295.8 mV <nil>
}

func ExampleButlerVolmer_Slope() {
	bv := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: units.Celsius(25)}
	s, err := bv.Slope(0)
	fmt.Printf("%.2f S/m² %v\n", s, err)
	// Output: 38.92 S/m² <nil>
}

func ExampleButlerVolmer_Resistance() {
	bv := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: units.Celsius(25)}
	r, err := bv.Resistance(-100 * units.Millivolt)
	fmt.Println(r.Text(units.OhmSquareCentimetre, 1), err)
	// Output: 71.9 Ω·cm² <nil>
}

func ExampleButlerVolmer_PolarisationResistance() {
	bv := faraday.ButlerVolmer{Exchange: 1, Anodic: 0.5, Cathodic: 0.5, Temperature: units.Celsius(25)}
	r, err := bv.PolarisationResistance()
	fmt.Println(r.Text(units.OhmSquareCentimetre, 1), err)
	// Output: 256.9 Ω·cm² <nil>
}

// A cathode with 120 mV a decade: the slope is negative.
func ExampleTafel_Overpotential() {
	line := faraday.Tafel{Exchange: 2 * units.AmperePerSquareMetre, Slope: -120 * units.Millivolt}
	eta, err := line.Overpotential(-2 * units.AmperePerSquareDecimetre)
	fmt.Println(eta.Text(units.Millivolt, 0), err)
	// Output: -240 mV <nil>
}

func ExampleTafel_CurrentDensity() {
	line := faraday.Tafel{Exchange: 2 * units.AmperePerSquareMetre, Slope: -120 * units.Millivolt}
	j, err := line.CurrentDensity(-240 * units.Millivolt)
	fmt.Println(j.Text(units.AmperePerSquareDecimetre, 1), err)
	// Output: -2.0 A/dm² <nil>
}

func ExampleTafel_Resistance() {
	line := faraday.Tafel{Exchange: 2 * units.AmperePerSquareMetre, Slope: -120 * units.Millivolt}
	r, err := line.Resistance(-2 * units.AmperePerSquareDecimetre)
	fmt.Println(r.Text(units.OhmSquareCentimetre, 2), err)
	// Output: 2.61 Ω·cm² <nil>
}

func ExampleTafelSlope() {
	b, err := faraday.TafelSlope(0.5, units.Celsius(25))
	fmt.Println(b.Text(units.Millivolt, 1), err)
	// Output: 118.3 mV <nil>
}

func ExampleTransferCoefficient() {
	alpha, err := faraday.TransferCoefficient(-120*units.Millivolt, units.Celsius(25))
	fmt.Printf("%.2f %v\n", alpha, err)
	// Output: 0.49 <nil>
}

// Platinum in a solution of two kinds of iron, a textbook's measurement.
func ExampleTafelFit() {
	fit, err := faraday.TafelFit([]faraday.TafelPoint{
		{Overpotential: 0.100, CurrentDensity: 12.5 * units.MilliamperePerSquareCentimetre},
		{Overpotential: 0.150, CurrentDensity: 29.0 * units.MilliamperePerSquareCentimetre},
		{Overpotential: 0.200, CurrentDensity: 65.5 * units.MilliamperePerSquareCentimetre},
		{Overpotential: 0.250, CurrentDensity: 149.5 * units.MilliamperePerSquareCentimetre},
	})
	fmt.Println(fit.Slope.Text(units.Millivolt, 1), fit.Exchange.Text(units.MilliamperePerSquareCentimetre, 2), err)
	fmt.Printf("R² %.4f\n", fit.RSquared)
	// Output:
	// 139.4 mV 2.41 mA/cm² <nil>
	// R² 1.0000
}

// Gold at 8 g/L is thin: with a layer of 0.08 mm it cannot carry 1 A/dm².
func ExampleLimitingCurrentDensity() {
	gold := 8.0 / 196.97 * units.MolePerLitre
	j, err := faraday.LimitingCurrentDensity(1, 1e-9, gold, 80*units.Micrometre)
	fmt.Println(j.Text(units.AmperePerSquareDecimetre, 2), err)
	// Output: 0.49 A/dm² <nil>
}

func ExampleLimitingCurrentDensityWorking() {
	step, err := faraday.LimitingCurrentDensityWorking(2, 1e-9, units.MolePerLitre, 0.1*units.Millimetre)
	fmt.Println(step.Formula, step.Result.Value, err)
	// Output: jL = n·F·D·c/δ 19.2971 A/dm² <nil>
}

func ExampleConcentrationOverpotential() {
	eta, err := faraday.ConcentrationOverpotential(0.9*units.AmperePerSquareDecimetre, units.AmperePerSquareDecimetre, 2,
		units.Celsius(25))
	fmt.Println(eta.Text(units.Millivolt, 1), err)
	// Output: -29.6 mV <nil>
}

// How even does gold lie on a filigree hand with openings of 3 mm?
func ExampleWagnerNumber() {
	line := faraday.Tafel{Exchange: 0.01 * units.AmperePerSquareMetre, Slope: -100 * units.Millivolt}
	r, err := line.Resistance(-0.3 * units.AmperePerSquareDecimetre)
	if err != nil {
		fmt.Println(err)
		return
	}
	wa, err := faraday.WagnerNumber(80*units.MillisiemensPerCentimetre, r, 3*units.Millimetre)
	fmt.Printf("%.1f %v\n", float64(wa), err)
	// Output: 3.9 <nil>
}

func ExampleWagnerNumberWorking() {
	step, err := faraday.WagnerNumberWorking(8, 14.5*units.OhmSquareCentimetre, 3*units.Millimetre)
	fmt.Println(step.Formula, step.Result.Value, err)
	// Output: Wa = κ·r/L 3.86667 <nil>
}

// The supply rises from 12.0 A by 0.2 A a minute while a rack of bezels is hung in.
func ExampleRamp_Charge() {
	q, err := faraday.Ramp{From: 12, To: 16, Time: 20 * units.Minute}.Charge()
	fmt.Println(q.Text(units.AmpereMinute, 0), err)
	// Output: 280 A·min <nil>
}

func ExamplePulse_Charge() {
	p := faraday.Pulse{Peak: 2, On: 10 * units.Millisecond, Off: 90 * units.Millisecond}
	duty, err := p.Duty()
	if err != nil {
		fmt.Println(err)
		return
	}
	mean, err := p.Mean()
	if err != nil {
		fmt.Println(err)
		return
	}
	q, err := p.Charge(15 * units.Minute)
	fmt.Println(duty.Percent(0), mean.Text(units.Ampere, 2), q.Text(units.AmpereMinute, 1), err)
	// Output: 10 % 0.20 A 3.0 A·min <nil>
}

func ExampleReverse_Charge() {
	r := faraday.Reverse{Forward: 3, ForwardTime: 20, Backward: 4, BackwardTime: 2}
	q, err := r.Charge(10 * units.Minute)
	fmt.Println(q.Net().Text(units.AmpereMinute, 2), q.Gross().Text(units.AmpereMinute, 2), err)
	// Output: 23.70 A·min 30.90 A·min <nil>
}

// Strike, plate, pause to turn the pendulum bob, plate.
func ExampleSequence_Charge() {
	run := faraday.Sequence{
		{Current: 2, Time: 30}, {Current: 0.8, Time: 6 * units.Minute}, {Current: 0, Time: 20}, {Current: 0.8,
			Time: 6 * units.Minute},
	}
	q, err := run.Charge()
	if err != nil {
		fmt.Println(err)
		return
	}
	mean, err := run.Mean()
	fmt.Println(q.Deposited.Text(units.AmpereMinute, 1), mean.Text(units.Ampere, 2), err)
	// Output: 10.6 A·min 0.83 A <nil>
}

// A logger wrote every ten seconds, and once it did not.
func ExampleIntegrateLog() {
	log, err := faraday.IntegrateLog([]faraday.CurrentReading{
		{At: 0, Current: 1.0}, {At: 10, Current: 1.2}, {At: 20, Current: 1.2}, {At: 60, Current: 1.0}, {At: 70,
			Current: -1.0},
	}, 10*units.Second)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(log.Deposited.Text(units.Coulomb, 1), log.Stripped.Text(units.Coulomb, 1))
	for _, g := range log.Gaps {
		fmt.Println("gap from", g.From, "to", g.To, "filled with", g.Charge.Text(units.Coulomb, 1))
	}
	// Output:
	// 69.5 C 2.5 C
	// gap from 20 s to 1 min filled with 44.0 C
}

func ExampleFittingValence() {
	d, err := faraday.NewDeposit("Au", 3)
	fmt.Println(faraday.FittingValence("Au", d.Equivalent), faraday.FittingValence("Ag", d.Equivalent), err)
	// Output: 3 0 <nil>
}
