package lessons

import (
	"fmt"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// currentLessons are about currents that do not stand still, and the gas they make.
func currentLessons() []Lesson {
	const ampere, second = units.Ampere, units.Second
	return []Lesson{{
		Word: "pulse", Title: "The mean of a pulsed current", Package: "faraday",
		Question: "A supply gives 3 A for 10 ms and rests for 90 ms. What does the ammeter show,\n" +
			"and what charge has passed after 5 min?",
		Good: "exact for upright edges; the grain follows the peak, the coat the mean",
		solve: func(b *board) string {
			p := faraday.Pulse{Peak: 3 * ampere, On: 10 * units.Millisecond, Off: 90 * units.Millisecond}
			duty := value[units.Ratio](b)(p.Duty())
			q := value[units.Charge](b)(p.Charge(5 * units.Minute))
			mean := value[units.Current](b)(p.Mean())
			b.show("d = t₁/(t₁ + t₂)", "Definition", working.Of("d", "share of the time with current", duty),
				working.Of("t₁", "on time", p.On), working.Of("t₂", "off time", p.Off))
			b.show("I = d·I₁", "Definition", working.Of("I", "mean current", mean),
				working.Of("d", "share of the time with current", duty),
				working.Of("I₁", "peak current", p.Peak))
			return fmt.Sprintf("The ammeter shows %s; a pulse comes every %s, and 5 min bring %s.", b.last(),
				p.Period(), q)
		},
	}, {
		Word: "reverse", Title: "Plating with periodic reverse", Package: "faraday",
		Question: "A copper bath runs 9 s forward at 4 A and 1 s back at 6 A.\n" +
			"What steady current would do the same, if both ways have one efficiency?",
		Good: "exact; the two efficiencies seldom are alike",
		solve: func(b *board) string {
			r := faraday.Reverse{Forward: 4 * ampere, ForwardTime: 9 * second, Backward: 6 * ampere,
				BackwardTime: second}
			q := value[faraday.SplitCharge](b)(r.Charge(10 * units.Minute))
			b.show("I = (I₁·t₁ - I₂·t₂)/(t₁ + t₂)", "Definition", working.Of("I",
				"steady current with the same net charge",
				value[units.Current](b)(r.Mean())), working.Of("I₁", "forward", r.Forward),
				working.Of("t₁", "time forward", r.ForwardTime),
				working.Of("I₂", "backward", r.Backward), working.Of("t₂", "time backward", r.BackwardTime))
			return fmt.Sprintf("%s would do the same. A cycle lasts %s; in 10 min a meter without a sign counts "+
				"%s, and %s stay on the work.",
				b.last(), r.Cycle(), q.Gross(), q.Net())
		},
	}, {
		Word: "ramp", Title: "Raising the current slowly, then plating", Package: "faraday",
		Question: "Hands go in at 0.1 A; the current rises evenly to 0.5 A in 2 min and stays 8 min.\n" +
			"What is the charge?",
		Good: "exact for an even rise",
		solve: func(b *board) string {
			r := faraday.Ramp{From: 0.1 * ampere, To: 0.5 * ampere, Time: 2 * units.Minute}
			mean, q := value[units.Current](b)(r.Mean()), value[units.Charge](b)(r.Charge())
			run := faraday.Sequence{{Current: mean, Time: r.Time}, {Current: 0.5 * ampere, Time: 8 * units.Minute}}
			all := value[faraday.SplitCharge](b)(run.Charge())
			b.show("Q₁ = (I₁ + I₂)/2·t", "Definition", working.Of("Q₁", "charge of the rise", q),
				working.Of("I₁", "current at the start", r.From),
				working.Of("I₂", "current at the end", r.To), working.Of("t", "time of the rise", r.Time))
			b.show("Q = Q₁ + I₂·t₂", "Definition", working.Of("Q", "whole charge", all.Net()),
				working.Of("Q₁", "charge of the rise", q),
				working.Of("I₂", "current at the end", r.To), working.Of("t₂", "time that it stays", run[1].Time))
			return fmt.Sprintf("The charge is %s in %s, a mean of %s.", b.last(), value[units.Duration](b)(run.Time()),
				value[units.Current](b)(run.Mean()))
		},
	}, {
		Word: "log", Title: "The charge of a logged current", Package: "faraday",
		Question: "A logger wrote 0 A, 0.5 A, 0.5 A and 0.4 A at 0, 1, 2 and 6 min: it slept 4 min.\n" +
			"What is the charge, and how much of it is a guess?",
		Good: "exact for straight lines; what the logger slept through is a guess",
		solve: func(b *board) string {
			log := []faraday.CurrentReading{{At: 0, Current: 0}, {At: units.Minute, Current: 0.5 * ampere},
				{At: 2 * units.Minute, Current: 0.5 * ampere}, {At: 6 * units.Minute, Current: 0.4 * ampere}}
			r := value[faraday.LoggedCharge](b)(faraday.IntegrateLog(log, 90*second))
			i := func(k int) working.Term {
				return working.Of(fmt.Sprintf("I_%d", k), "current logged",
					log[k].Current)
			}
			t := func(k int) working.Term { return working.Of(fmt.Sprintf("t_%d", k), "time logged", log[k].At) }
			b.show("Q = (I_0 + I_1)/2·(t_1 - t_0) + (I_1 + I_2)/2·(t_2 - t_1) + (I_2 + I_3)/2·(t_3 - t_2)",
				"Definition",
				working.Of("Q", "charge", r.Net()), i(0), i(1), i(2), i(3), t(0), t(1), t(2), t(3))
			return fmt.Sprintf("The charge is %s, of which %s stand on the straight line over the gap.", b.last(),
				r.InGaps())
		},
	}, {
		Word: "gas", Title: "Gas at an insoluble anode", Package: "faraday",
		Question: "A gold flash with stainless anodes runs 1 A h at 25 °C and one atmosphere, 35 % efficient.\n" +
			"How much hydrogen and how much oxygen come off at the most?",
		Good: "0.1 % as gas; less oxygen where cyanide is oxidised instead. Draw hydrogen off: it burns",
		solve: func(b *board) string {
			t, p := units.Celsius(25), units.Pressure(units.Atmosphere)
			h := value[faraday.GasVolume](b)(faraday.Hydrogen(units.AmpereHour, 0.35, t, p))
			o := value[faraday.GasVolume](b)(faraday.Oxygen(units.AmpereHour, t, p))
			terms := []working.Term{working.Of("Q", "charge", units.Charge(units.AmpereHour)),
				working.Constant("F", "Faraday constant",
					faraday.FaradayConstant, "C/mol"), working.Constant("R", "gas constant", faraday.GasConstant,
					"J/(mol·K)"),
				working.Of("T", "temperature", t), working.Of("p", "pressure", p),
				working.Of("η", "current efficiency", units.Efficiency(0.35))}
			b.show("V = (1 - η)·Q/(2·F)·R·T/p", "OpenStaxChem2e", working.Of("V", "hydrogen at the cathode",
				h.Volume), terms...)
			b.show("V = Q/(4·F)·R·T/p", "OpenStaxChem2e", working.Of("V", "oxygen at the anode", o.Volume),
				terms[:5]...)
			return fmt.Sprintf("At the most %s of hydrogen and %s of oxygen come off.", h.Volume, b.last())
		},
	}}
}

// kineticLessons are about potentials and about what holds the current back.
func kineticLessons() []Lesson {
	room := units.Celsius(25)
	thermal := []working.Term{working.Constant("R", "gas constant", faraday.GasConstant, "J/(mol·K)"),
		working.Of("T", "temperature", room),
		working.Constant("F", "Faraday constant", faraday.FaradayConstant, "C/mol")}
	return []Lesson{{
		Word: "nernst", Title: "Where a thinned nickel bath stands", Package: "faraday",
		Question: "Nickel ions stand at a thousandth of the standard strength, at 25 °C.\n" +
			"What is the potential of nickel against the hydrogen electrode?",
		Good: "a few tens of millivolts: concentration is not activity",
		solve: func(b *board) string {
			ni := value[faraday.Couple](b)(faraday.StandardPotential("Ni2+/Ni"))
			slope := value[units.Voltage](b)(faraday.NernstSlope(room))
			e := value[units.Voltage](b)(faraday.Nernst(ni.Potential, ni.Electrons, 1000, room))
			b.one(faraday.NernstWorking(ni.Potential, ni.Electrons, 1000, room))
			return fmt.Sprintf("It stands at %s, about %s; each tenfold thinning takes off half of %s.", b.last(),
				e.Text(units.Volt, 3),
				slope.Text(units.Millivolt, 1))
		},
	}, {
		Word: "immersion", Title: "Does silver go onto copper without current", Package: "faraday",
		Question: "A copper rim hangs in a silver solution without cyanide, all at standard strength.\n" +
			"Does silver come out by itself?",
		Good: "ideal solutions; a cyanide bath stands elsewhere by volts: hence the strike",
		solve: func(b *board) string {
			ag := value[faraday.Couple](b)(faraday.StandardPotential("Ag+/Ag"))
			cu := value[faraday.Couple](b)(faraday.StandardPotential("Cu2+/Cu"))
			below := 0
			for _, c := range faraday.Couples() {
				if c.Potential < ag.Potential {
					below++
				}
			}
			e := value[units.Voltage](b)(faraday.CellVoltage(ag.Potential, cu.Potential))
			b.show("E = E_c - E_a", "OpenStaxChem2e", working.Of("E", "voltage of the pair", e),
				working.Of("E_c", "potential of "+ag.Name, ag.Potential),
				working.Of("E_a", "potential of "+cu.Name, cu.Potential))
			gibbs := value[float64](b)(faraday.GibbsEnergy(e, 2))
			b.show("ΔG = -n·F·E", "OpenStaxChem2e", working.Constant("ΔG", "Gibbs energy", gibbs, "J/mol"),
				working.Number("n", "electrons in the reaction", 2),
				thermal[2], working.Of("E", "voltage of the pair", e))
			log := value[float64](b)(faraday.LogEquilibriumConstant(e, 2, room))
			b.show("log_K = n·F·E/(ln(10)·R·T)", "OpenStaxChem2e", working.Number("log_K",
				"power of ten of the equilibrium constant", log),
				append([]working.Term{working.Number("n", "electrons in the reaction", 2),
					working.Of("E", "voltage of the pair", e)}, thermal...)...)
			return fmt.Sprintf("It does, and on %d of the %d pairs in the table: here the constant is ten to the "+
				"power of %s. Such a coat does not hold.",
				below, len(faraday.Couples()), b.last())
		},
	}, {
		Word: "tafel", Title: "Overpotential by the straight line", Package: "faraday",
		Question: "A cathode has a transfer coefficient of 0.5 and an exchange current density of 0.001 A/dm²,\n" +
			"at 25 °C. Which overpotential drives 1 A/dm²?",
		Good: "1 % beyond 0.12 V, as long as the ions keep up",
		solve: func(b *board) string {
			slope := value[units.Voltage](b)(faraday.TafelSlope(0.5, room))
			alpha := value[float64](b)(faraday.TransferCoefficient(-slope, room))
			t := faraday.Tafel{Exchange: 0.001 * asd, Slope: -slope}
			eta := value[units.Voltage](b)(t.Overpotential(-1 * asd))
			j := value[units.CurrentDensity](b)(t.CurrentDensity(2 * eta))
			r := value[units.AreaResistance](b)(t.Resistance(-1 * asd))
			b.show("b = ln(10)·R·T/(α·F)", "IUPACKinetics2014", working.Of("b", "Tafel slope for a decade", slope),
				append([]working.Term{working.Number("α", "transfer coefficient", alpha)}, thermal...)...)
			b.show("r = b/(ln(10)·j)", "IUPACKinetics2014", working.Of("r", "slope at this current density", r),
				working.Of("b", "Tafel slope for a decade", slope), working.Of("j", "size of the current density",
					1*asd))
			b.show("η = -b·ln(j/j₀)/ln(10)", "IUPACKinetics2014", working.Of("η", "overpotential", eta),
				working.Of("b", "Tafel slope for a decade", slope),
				working.Of("j", "size of the current density", 1*asd),
				working.Of("j₀", "exchange current density", t.Exchange))
			return fmt.Sprintf("It takes %s: three decades of current are three slopes. Twice as much would drive "+
				"%s if the ions kept up.", b.last(), -j)
		},
	}, {
		Word: "tafelfit", Title: "The line through measured points", Package: "faraday",
		Question: "A test cathode took 0.1, 0.32 and 1 A/dm² at -0.20, -0.26 and -0.32 V.\n" +
			"What is its slope for a tenfold current?",
		Good: "look at a plot: bent points still give a good-looking line",
		solve: func(b *board) string {
			points := []faraday.TafelPoint{{Overpotential: -0.20, CurrentDensity: -0.1 * asd},
				{Overpotential: -0.26, CurrentDensity: -0.32 * asd},
				{Overpotential: -0.32, CurrentDensity: -1 * asd}}
			line := value[faraday.TafelLine](b)(faraday.TafelFit(points))
			b.show("b = ln(10)·(η₃ - η₁)/ln(j₃/j₁)", "IUPACKinetics2014",
				working.Of("b", "slope for a tenfold current", line.Slope),
				working.Of("η₁", "first overpotential", points[0].Overpotential),
				working.Of("η₃", "third overpotential", points[2].Overpotential),
				working.Of("j₁", "first current density", points[0].CurrentDensity),
				working.Of("j₃", "third current density", points[2].CurrentDensity))
			return fmt.Sprintf("The slope is %s for a tenfold current. With three points at equal steps the outer "+
				"two decide; the line explains %.2f %%.",
				b.last(), 100*line.RSquared)
		},
	}, {
		Word: "butlervolmer", Title: "The whole curve near equilibrium", Package: "faraday",
		Question: "A silver cathode has an exchange current density of 1 A/dm² and coefficients of 0.5, at 25 °C.\n" +
			"What does it take at -50 mV, and what is its resistance next to equilibrium?",
		Good: "exact far below the limiting current",
		solve: func(b *board) string {
			curve := faraday.ButlerVolmer{Exchange: 1 * asd, Anodic: 0.5, Cathodic: 0.5, Temperature: room}
			const eta = -50 * units.Millivolt
			j := value[units.CurrentDensity](b)(curve.CurrentDensity(eta))
			r := value[units.AreaResistance](b)(curve.PolarisationResistance())
			here := value[units.AreaResistance](b)(curve.Resistance(eta))
			b.show("j = j₀·(exp(α·F·η/(R·T)) - exp(-α·F·η/(R·T)))", "IUPACKinetics2014",
				working.Of("j", "current density, negative at a cathode", j),
				append([]working.Term{working.Of("j₀", "exchange current density", curve.Exchange),
					working.Number("α", "transfer coefficients", 0.5),
					working.Of("η", "overpotential", eta)}, thermal...)...)
			b.show("r = R·T/(2·α·F·j₀)", "IUPACKinetics2014", working.Of("r", "resistance next to equilibrium", r),
				append([]working.Term{
					working.Number("α", "transfer coefficients", 0.5), working.Of("j₀", "exchange current density",
						curve.Exchange)}, thermal...)...)
			return fmt.Sprintf("It takes %s. Next to equilibrium its resistance is %s; at -50 mV it has fallen to "+
				"%s.", j, b.last(), here)
		},
	}, {
		Word: "limit", Title: "Where the ions no longer keep up", Package: "faraday",
		Question: "A gold bath of 8 g/L is 0.0406 mol/L. The layer at a still cathode is 0.2 mm, the ions\n" +
			"spread at 1e-9 m²/s. Where is the limiting current density, and what does half of it cost?",
		Good: "the layer is known to a factor of two: stir, and it is a tenth",
		solve: func(b *board) string {
			const d, c = 1e-9 * units.SquareMetrePerSecond, 40.6 * units.MolePerCubicMetre
			jl := value[units.CurrentDensity](b)(faraday.LimitingCurrentDensity(1, d, c, 0.2*mm))
			eta := value[units.Voltage](b)(faraday.ConcentrationOverpotential(jl/2, jl, 1, room))
			b.one(faraday.LimitingCurrentDensityWorking(1, d, c, 0.2*mm))
			b.show("η = R·T/(n·F)·ln(1 - j/j_L)", "OpenStaxChem2e", working.Of("η", "overpotential of concentration",
				eta),
				append([]working.Term{working.Number("n", "electrons", 1), working.Of("j", "current density", jl/2),
					working.Of("j_L", "limiting current density", jl)}, thermal...)...)
			return fmt.Sprintf("The limit is %s; half of it costs %s.", jl, b.last())
		},
	}, {
		Word: "wagner", Title: "Does the coat level itself", Package: "faraday",
		Question: "A bath conducts 5 S/m, the cathode's slope is 0.002 Ω·m², the hand is 60 mm long.\n" +
			"Is it the bath or the shape that decides the thickness?",
		Good: "compare only numbers made with the same length",
		solve: func(b *board) string {
			wa := value[units.Ratio](b)(faraday.WagnerNumber(5*units.SiemensPerMetre, 0.002*units.OhmSquareMetre,
				60*mm))
			b.one(faraday.WagnerNumberWorking(5*units.SiemensPerMetre, 0.002*units.OhmSquareMetre, 60*mm))
			word := "the shape decides"
			if wa > 1 {
				word = "the bath levels"
			}
			return fmt.Sprintf("The Wagner number is %s: %s.", b.last(), word)
		},
	}}
}
