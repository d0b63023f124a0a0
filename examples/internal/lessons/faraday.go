package lessons

import (
	"fmt"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// gold is what a bath of gold cyanide lays down: one electron, hardened to 17 g/cm³.
func gold(b *board) faraday.Deposit {
	d := value[faraday.Deposit](b)(faraday.NewDeposit("Au", 1))
	d.Density = 17 * gcc
	return d
}

// faradayLessons go from charge to metal and back, and to the salt that brings it.
func faradayLessons() []Lesson {
	return []Lesson{{
		Word: "equivalent", Title: "What one ampere-hour of gold weighs", Package: "faraday",
		Question: "From a cyanide bath each atom of gold takes up one electron.\n" +
			"How much gold does one ampere-hour bring if nothing is lost?",
		Good: "the atomic weight of gold is known to 2 parts in 100 million",
		solve: func(b *board) string {
			au := value[faraday.Element](b)(faraday.Lookup("Au"))
			trade := value[faraday.Trade](b)(gold(b).Trade())
			b.one(faraday.NewEquivalentWorking(au.Weight.Value, 1))
			return fmt.Sprintf("The equivalent is %s: one ampere-hour brings %.3f g.", b.last(),
				trade.GramPerAmpereHour)
		},
	}, {
		Word: "elements", Title: "Which plated metal is the heaviest for a charge", Package: "faraday",
		Question: "Of all metals that are plated, each at its lowest number of electrons,\n" +
			"which one gains the most weight for a coulomb?",
		Good: "exact; the bath decides over the number of electrons",
		solve: func(b *board) string {
			var best faraday.Element
			var most units.Equivalent
			lowest := 0
			for _, e := range faraday.Elements() {
				for _, n := range e.Valences() {
					if eq := value[units.Equivalent](b)(faraday.NewEquivalent(e.Weight.Value, n)); eq > most {
						best, most, lowest = e, eq, n
					}
				}
			}
			b.one(faraday.NewEquivalentWorking(best.Weight.Value, lowest))
			return fmt.Sprintf("It is %s, with %s.", best.Name, b.last())
		},
	}, {
		Word: "mass", Title: "How much gold came out of the bath", Package: "faraday",
		Question: "A rack of hands hung 12 min at 0.5 A in hard gold of 35 % efficiency.\nHow much gold is on it?",
		Good:     "as good as the efficiency, which has to be weighed",
		solve: func(b *board) string {
			eq := gold(b).Equivalent
			m := value[units.Mass](b)(faraday.Mass(eq, 0.5*units.Ampere, 12*units.Minute, 0.35))
			b.one(faraday.MassWorking(eq, 0.5*units.Ampere, 12*units.Minute, 0.35))
			return fmt.Sprintf("%s of gold are on it, say %s.", b.last(), m.Text(g, 2))
		},
	}, {
		Word: "amperehours", Title: "Gold by the ampere-hour meter", Package: "faraday",
		Question: "The meter ran through 8 A h since the last analysis, at 35 % efficiency.\n" +
			"How much gold left the bath, and what charge would 20 g take?",
		Good: "as good as the efficiency",
		solve: func(b *board) string {
			eq := gold(b).Equivalent
			m := value[units.Mass](b)(faraday.MassOfCharge(eq, 8*units.AmpereHour, 0.35))
			b.one(faraday.MassOfChargeWorking(eq, 8*units.AmpereHour, 0.35))
			b.one(faraday.ChargeWorking(eq, 20*g, 0.35))
			return fmt.Sprintf("About %s of gold left the bath; 20 g take %s.", m.Text(g, 1), b.last())
		},
	}, {
		Word: "minutes", Title: "How long for this much gold", Package: "faraday",
		Question: "300 mg of gold are to go on a set of hands at 0.5 A and 35 % efficiency.\nHow many minutes is that?",
		Good:     "as good as the efficiency",
		solve: func(b *board) string {
			eq := gold(b).Equivalent
			b.one(faraday.TimeWorking(eq, 300*mg, 0.5*units.Ampere, 0.35))
			return fmt.Sprintf("Let the hands hang for %s.", b.last())
		},
	}, {
		Word: "amps", Title: "Which current for a given time", Package: "faraday",
		Question: "The same 300 mg of gold must be done in 20 min at 35 % efficiency.\nWhich current?",
		Good:     "as good as the efficiency; whether the bath bears it is another question",
		solve: func(b *board) string {
			eq := gold(b).Equivalent
			i := value[units.Current](b)(faraday.Current(eq, 300*mg, 20*units.Minute, 0.35))
			b.one(faraday.CurrentWorking(eq, 300*mg, 20*units.Minute, 0.35))
			return fmt.Sprintf("Set %s, say %s.", b.last(), i.Text(units.Ampere, 2))
		},
	}, {
		Word: "efficiency", Title: "Current efficiency from one weighing", Package: "faraday",
		Question: "A brass strip gained 244.9 mg of gold while 342.9 C passed.\n" +
			"What share of the current laid down metal?",
		Good: "the balance: 0.1 mg in 245 is 0.04 %; a wet strip is worse",
		solve: func(b *board) string {
			eq := gold(b).Equivalent
			e := value[units.Efficiency](b)(faraday.Efficiency(eq, 244.9*mg, 342.9*units.Coulomb))
			b.one(faraday.EfficiencyWorking(eq, 244.9*mg, 342.9*units.Coulomb))
			return fmt.Sprintf("The efficiency is %s, in the book %s.", b.last(), e.Percent(0))
		},
	}, {
		Word: "trial", Title: "A trial piece, from the balance to the book", Package: "plating",
		Hazards: plating.HazardCyanide,
		Question: "A strip weighs 12.4310 g before and 12.4842 g after 5 min at 0.25 A in hard gold.\n" +
			"The balance shows 0.1 mg. What is the efficiency, and how sure is it?",
		Good: "the answer says it; dryness and the ammeter come on top",
		solve: func(b *board) string {
			trial := plating.Trial{Before: 12.4310 * g, After: 12.4842 * g, Current: 0.25 * units.Ampere,
				Time:       5 * units.Minute,
				Resolution: 0.1 * mg}
			r := value[plating.TrialResult](b)(trial.Efficiency(gold(b)))
			b.add(trial.EfficiencyWorking(gold(b)))
			return fmt.Sprintf("The efficiency is %s; the two weighings leave it unsure by %s of itself.", b.last(),
				r.Relative.Percent(2))
		},
	}, {
		Word: "valence", Title: "One electron or three", Package: "faraday",
		Question: "Nobody knows any more which gold salt is in an old bath. At full efficiency 1 A h\n" +
			"laid down 2.45 g. How many electrons does an atom take up?",
		Good: "near a whole number it can be believed; half-way between two it means nothing",
		solve: func(b *board) string {
			au := value[faraday.Element](b)(faraday.Lookup("Au"))
			v := value[faraday.ValenceResult](b)(faraday.Valence(au.Weight.Value, 2.45*g, units.AmpereHour, 1))
			b.show("n = η·Q·M/(F·m)", "OpenStaxChem2e", working.Number("n", "electrons for each atom", v.Exact),
				working.Of("η", "current efficiency", units.Efficiency(1)),
				working.Of("Q", "charge", units.Charge(units.AmpereHour)),
				working.Of("M", "molar mass of gold", au.Weight.Value), working.Constant("F", "Faraday constant",
					faraday.FaradayConstant, "C/mol"), working.Of("m", "mass of the deposit", 2.45*g))
			return fmt.Sprintf("It is %d: the figures make it %s.", v.Nearest, b.last())
		},
	}, {
		Word: "thickness", Title: "How thick the coat is", Package: "faraday",
		Question: "Hands ran 5 min at 0.45 A/dm² in hard gold of 35 % efficiency, 17 g/cm³.\n" +
			"How thick is the coat on average?",
		Good: "as good as efficiency and area; the thinnest spot may have half of it",
		solve: func(b *board) string {
			b.one(gold(b).ThicknessWorking(0.45*asd, 5*units.Minute, 0.35))
			return fmt.Sprintf("The coat is %s thick on average.", b.last())
		},
	}, {
		Word: "timefor", Title: "Minutes and current density for one micrometre", Package: "faraday",
		Question: "1 µm of hard gold is wanted at 0.45 A/dm² and 35 % efficiency. How long?\n" +
			"And at which current density would it take 4 min?",
		Good: "as good as the efficiency, which changes with the current density itself",
		solve: func(b *board) string {
			t := value[units.Duration](b)(gold(b).TimeFor(um, 0.45*asd, 0.35))
			b.one(gold(b).TimeForWorking(um, 0.45*asd, 0.35))
			b.one(gold(b).CurrentDensityForWorking(um, 4*units.Minute, 0.35))
			return fmt.Sprintf("It takes %s; for 4 min the bath would have to bear %s.", t.Text(units.Minute, 1),
				b.last())
		},
	}, {
		Word: "weighcoat", Title: "From the scale to micrometres", Package: "faraday",
		Question: "A bezel of 40 cm² gained 68.0 mg of hard gold of 17 g/cm³. How thick is the coat?\n" +
			"How much gold would 1.5 µm have been?",
		Good: "an average; as good as area and density",
		solve: func(b *board) string {
			s := value[units.Length](b)(gold(b).ThicknessOf(68*mg, 40*cm2))
			b.one(gold(b).ThicknessOfWorking(68*mg, 40*cm2))
			b.one(gold(b).MassForWorking(1.5*um, 40*cm2))
			return fmt.Sprintf("The coat is %s on average; 1.5 µm would have been %s.", s.Text(um, 2), b.last())
		},
	}, {
		Word: "covers", Title: "What area a charge covers", Package: "faraday",
		Question: "The meter stops the current at 0.4 A h. At 1 µm of hard gold and 35 % efficiency,\n" +
			"how much area is that? Check it: what charge does that area take?",
		Good: "as good as the efficiency",
		solve: func(b *board) string {
			d := gold(b)
			a := value[units.Area](b)(d.AreaFor(0.4*units.AmpereHour, um, 0.35))
			b.one(d.ChargeForWorking(um, a, 0.35))
			return fmt.Sprintf("It covers %s; that area takes %s again.", a.Text(dm2, 2), b.last())
		},
	}, {
		Word: "salt", Title: "How much gold salt to weigh", Package: "faraday", Hazards: plating.HazardCyanide,
		Question: "The bath lacks 5 g of gold. It is fed with potassium gold cyanide, KAu(CN)2.\n" +
			"How much of the salt is that?",
		Good: "for the pure salt; what the label guarantees counts before it",
		solve: func(b *board) string {
			f := value[faraday.Formula](b)(faraday.ParseFormula("KAu(CN)2"))
			w := value[units.MassFraction](b)(faraday.MetalContent(f, "Au"))
			m := value[units.Mass](b)(faraday.SaltFor(5*g, f, "Au"))
			b.one(faraday.MolarMassWorking(f))
			b.one(faraday.MetalContentWorking(f, "Au"))
			b.one(faraday.SaltForWorking(5*g, f, "Au"))
			return fmt.Sprintf("Weigh %s, say %s; %s of the salt is gold.", b.last(), m.Text(g, 2), w.Percent(1))
		},
	}, {
		Word: "sharedcurrent", Title: "Which metal of an alloy takes the current", Package: "faraday",
		Question: "A coat of gold with 15 % copper is laid down with one electron each.\n" +
			"How much of the current does the copper take?",
		Good: "exact for the analysis given",
		solve: func(b *board) string {
			au := value[faraday.DepositPart](b)(faraday.NewDepositPart("Au", 1, 0.85))
			cu := value[faraday.DepositPart](b)(faraday.NewDepositPart("Cu", 1, 0.15))
			shares := value[[]units.Ratio](b)(faraday.CurrentShares(au, cu))
			if b.err != nil {
				return ""
			}
			b.show("x = (w₂/M₂)/(w₁/M₁ + w₂/M₂)", "OpenStaxChem2e", working.Of("x", "share of the charge", shares[1]),
				working.Of("w₁", "share of gold in the mass", au.Share),
				working.Of("M₁", "molar mass of gold", au.Molar),
				working.Of("w₂", "share of copper in the mass", cu.Share),
				working.Of("M₂", "molar mass of copper", cu.Molar))
			return fmt.Sprintf("The copper takes %s of the charge, %s, and is 15 %% of the mass: its atoms are "+
				"light.", b.last(), shares[1].Percent(0))
		},
	}}
}
