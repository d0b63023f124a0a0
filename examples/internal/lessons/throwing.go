package lessons

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/throwing"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// throwingLessons are about where a coat is thin.
func throwingLessons() []Lesson {
	cell := throwing.HaringBlumCell{Near: 50 * mm, Far: 250 * mm}
	const kappa = 5 * units.SiemensPerMetre
	const slope = 0.02 * units.OhmSquareMetre
	ratio := func(symbol, meaning string, v units.Ratio) working.Term {
		return working.Number(symbol, meaning, float64(v))
	}
	return []Lesson{{
		Word: "throwingpower", Title: "Three figures for one bath", Package: "plating/throwing",
		Question: "In a trough the cathodes hang 50 mm and 250 mm from the anode. The near one gained three\n" +
			"times the metal of the far one. What is the throwing power after Haring and Blum, Heatley and Field?",
		Good: "as good as the weighings; never compare two kinds or two cells",
		solve: func(b *board) string {
			k := value[units.Ratio](b)(cell.Ratio())
			hb := value[throwing.HaringBlum](b)(throwing.NewHaringBlum(k, 3))
			he := value[throwing.Heatley](b)(throwing.NewHeatley(k, 3))
			fi := value[throwing.Field](b)(throwing.NewField(k, 3))
			kt, m := ratio("K", "distances, far over near", k), ratio("M", "metal, near over far", 3)
			b.show("K = L₂/L₁", "ThrowingZinc1952", kt, working.Of("L₂", "far distance", cell.Far),
				working.Of("L₁", "near distance", cell.Near))
			b.show("T = (K - M)/K", "ThrowingZinc1952", working.Of("T", "throwing power after Haring and Blum",
				hb.Power), kt, m)
			b.show("T = (K - M)/(K - 1)", "Practice", working.Of("T", "throwing power after Heatley", he.Power), kt, m)
			b.show("T = (K - M)/(K + M - 2)", "ThrowingField", working.Of("T", "throwing power after Field",
				fi.Power), kt, m)
			return fmt.Sprintf("%s; %s; %s, which is %s as a number.", hb, he, fi, b.last())
		},
	}, {
		Word: "metalratio", Title: "From a printed throwing power back to metal", Package: "plating/throwing",
		Question: "Three leaflets say 40 % after Haring and Blum, 50 % after Heatley and 33.33 % after Field,\n" +
			"all in a cell of 5:1. Which bath throws best?",
		Good: "exact for the figures given",
		solve: func(b *board) string {
			hb := value[units.Ratio](b)(throwing.HaringBlum{Cell: 5, Power: 0.4}.Metal())
			he := value[units.Ratio](b)(throwing.Heatley{Cell: 5, Power: 0.5}.Metal())
			fi := value[units.Ratio](b)(throwing.Field{Cell: 5, Power: 0.3333}.Metal())
			k := ratio("K", "distances, far over near", 5)
			b.show("M = K·(1 - T)", "ThrowingZinc1952", ratio("M", "metal ratio by Haring and Blum", hb), k,
				ratio("T", "throwing power", 0.4))
			b.show("M = K - T·(K - 1)", "Practice", ratio("M", "metal ratio by Heatley", he), k,
				ratio("T", "throwing power", 0.5))
			b.show("M = (K - T·(K - 2))/(1 + T)", "ThrowingField", ratio("M", "metal ratio by Field", fi), k,
				ratio("T", "throwing power", 0.3333))
			return fmt.Sprintf("None: the near cathode gets %.3g, %.3g and %s times the metal of the far one.",
				float64(hb), float64(he), b.last())
		},
	}, {
		Word: "levelling", Title: "What polarisation does to the test cell", Package: "plating/throwing",
		Question: "The trough of 50 mm and 250 mm holds a bath of 5 S/m; the cathode's slope is 0.02 Ω·m².\n" +
			"How uneven are the two currents, and does the ratio tell the Wagner number again?",
		Good: "exact for two cathodes with a solution of their own and an even slope",
		solve: func(b *board) string {
			p, wa := value[units.Ratio](b)(cell.Ratio()), value[units.Ratio](b)(cell.Wagner(kappa, slope))
			m := value[units.Ratio](b)(throwing.LinearRatio(p, wa))
			back := value[units.Ratio](b)(throwing.LinearWagner(p, m))
			pt, wt, mt := ratio("P", "ratio by distance alone", p), ratio("Wa", "Wagner number", wa),
				ratio("M", "currents, near over far", m)
			b.show("Wa = κ·r/L₁", "IUPACGoldBook", wt, working.Of("κ", "conductivity", kappa),
				working.Of("r", "slope of the polarisation", slope),
				working.Of("L₁", "near distance", cell.Near))
			b.show("M = (P + Wa)/(1 + Wa)", "Derived", mt, pt, wt)
			b.show("Wa = (P - M)/(M - 1)", "Derived", ratio("Wa", "Wagner number from the ratio", back), pt, mt)
			return fmt.Sprintf("The near cathode gets %.3g times the current, not 5 times; from it the Wagner "+
				"number is %s again.", float64(m), b.last())
		},
	}, {
		Word: "tafelcell", Title: "The same cell with Tafel polarisation", Package: "plating/throwing",
		Question: "Now the overpotential grows with the logarithm of the current; at the near cathode\n" +
			"the Wagner number is 2 as before. How uneven are the currents?",
		Good: "exact for the law; more current makes it less even",
		solve: func(b *board) string {
			m := value[units.Ratio](b)(throwing.TafelRatio(5, 2))
			wa := value[units.Ratio](b)(throwing.TafelWagner(5, m))
			b.show("ξ = (P/M - 1)/ln(M)", "Derived", ratio("ξ", "Wagner number, the ratio put in", wa),
				ratio("P", "ratio by distance alone", 5),
				ratio("M", "currents, near over far, found by trial", m))
			return fmt.Sprintf("The near cathode gets %.4g times the current; put in, that gives the Wagner "+
				"number %s.", float64(m), b.last())
		},
	}, {
		Word: "fallingefficiency", Title: "A bath whose efficiency falls with the current", Package: "plating/throwing",
		Question: "The near spot of a hard-gold part takes three times the current, but is 30 % efficient\n" +
			"against 40 %. Three tenths of the area are far. How much of the average has the thinnest spot?",
		Good: "exact for a part of two levels, on the safe side for a gradual one",
		solve: func(b *board) string {
			m := value[units.Ratio](b)(throwing.MetalRatio(3, 0.30, 0.40))
			d := value[plating.Distribution](b)(throwing.TwoLevels(m, 0.3))
			b.show("M = J·η₁/η₂", "Definition", ratio("M", "metal, near over far", m),
				ratio("J", "currents, near over far", 3),
				working.Of("η₁", "efficiency near", units.Efficiency(0.30)),
				working.Of("η₂", "efficiency far", units.Efficiency(0.40)))
			b.show("r = 1/(f + (1 - f)·M)", "Definition", ratio("r", "thinnest over average thickness",
				d.MinToAverage), ratio("f", "share of the area that is far", 0.3),
				ratio("M", "metal, near over far", m))
			return fmt.Sprintf("The metal is %.3g to 1, less uneven than the current; the thinnest spot has %s of "+
				"the average.", float64(m), b.last())
		},
	}, {
		Word: "panel", Title: "Reading a test panel", Package: "plating/throwing",
		Question: "A panel of the 267 mL cell ran at 2 A. It is bright from 40 mm to 70 mm, counted from the\n" +
			"end with the high current density. Which current density is that at 40 mm?",
		Good: "an average over several baths; a cyanide bath may be far off",
		solve: func(b *board) string {
			one := value[units.CurrentDensity](b)(throwing.Panel267.Density(units.Ampere, units.Inch))
			two := value[units.CurrentDensity](b)(throwing.Panel267.Density(units.Ampere, 2*units.Inch))
			j := value[units.CurrentDensity](b)(throwing.Panel267.Density(2*units.Ampere, 40*mm))
			low := value[units.CurrentDensity](b)(throwing.Panel267.Density(2*units.Ampere, 70*mm))
			at := value[units.Length](b)(throwing.Panel267.Place(2*units.Ampere, 2*asd))
			b.show("j = I/I₁·(j₁ - (j₁ - j₂)·ln(L/L₁)/ln(2))", "TestCell2013", working.Of("j", "current density", j),
				working.Of("I", "current of the cell", 2*units.Ampere),
				working.Of("I₁", "one ampere", units.Current(units.Ampere)),
				working.Of("j₁", "at one inch and one ampere", one),
				working.Of("j₂", "at two inches and one ampere", two),
				working.Of("L", "from the high end", 40*mm), working.Of("L₁", "one inch", units.Length(units.Inch)))
			return fmt.Sprintf("In the %s it is %s at 40 mm and %s at 70 mm; 2 A/dm² stand at %s.", throwing.Panel267,
				b.last(),
				low.Text(asd, 2), at.Text(mm, 0))
		},
	}, {
		Word: "testcell", Title: "The panel by its shape alone", Package: "plating/throwing",
		Question: "The same cell at 2 A, filled 48 mm deep, without any polarisation.\n" +
			"How high is the current density 40 mm from the high end?",
		Good: "exact for the plan; a real bath is less uneven",
		solve: func(b *board) string {
			plan := throwing.Trapezoid267()
			l := value[units.Length](b)(plan.Cathode())
			m := value[throwing.PrimaryMap](b)(plan.Primary())
			r, s := value[units.Ratio](b)(m.At(40*mm)), value[units.Ratio](b)(m.ShapeFactor())
			even := value[units.Length](b)(m.Place(1))
			mean := value[units.CurrentDensity](b)((2 * units.Ampere).PerArea(m.Cathode().Times(48 * mm)))
			b.show("L = √(a² + (l - s)²)", "Geometry", working.Of("L", "length of the panel", l),
				working.Of("a", "width of the anode", plan.Anode),
				working.Of("l", "long wall", plan.Long), working.Of("s", "short wall", plan.Short))
			jm := working.Of("j_m", "mean current density", mean)
			b.show("j_m = I/(L·h)", "Definition", jm, working.Of("I", "current", 2*units.Ampere),
				working.Of("L", "length of the panel", l), working.Of("h", "depth of the bath", 48*mm))
			b.show("j = k·j_m", "Derived", working.Of("j", "current density 40 mm from the high end",
				units.CurrentDensity(float64(r)*float64(mean))),
				ratio("k", "of the mean, by the shape of the cell", r), jm)
			return fmt.Sprintf("It is %s; the mean stands at %s. The cell conducts as %.3g squares of its bath.",
				b.last(), even.Text(mm, 0), float64(s))
		},
	}, {
		Word: "bore", Title: "How gold reaches the bottom of a hole", Package: "plating/throwing",
		Question: "A winding hole is 3 mm wide, 9 mm deep and blind, in a bath of 5 S/m with a slope of\n" +
			"0.02 Ω·m². How much of the mouth's current reaches the bottom? A fifth of the area is in holes.",
		Good: "for stirred baths; where the ions run out the bottom gets less",
		solve: func(b *board) string {
			hole := throwing.Recess{Width: 3 * mm, Depth: 9 * mm}
			n, t := value[units.Ratio](b)(hole.Number(kappa, slope)), value[throwing.Throw](b)(hole.Linear(kappa,
				slope))
			d := value[plating.Distribution](b)(t.Distribution(0.2))
			nt, bottom := ratio("ν", "number of the hole", n), ratio("B", "bottom over mouth", t.Bottom)
			depth, width := working.Of("D", "depth", hole.Depth), working.Of("d", "width", hole.Width)
			b.show("ν = 2·D/√(κ·r·d)", "Derived", nt, depth, working.Of("κ", "conductivity", kappa),
				working.Of("r", "slope of the polarisation", slope), width)
			b.show("B = 2/(exp(ν) + exp(-ν) + d/(4·D)·ν·(exp(ν) - exp(-ν)))", "Derived", bottom, nt, width, depth)
			b.show("q = B/(1 - f + f·W)", "Definition", ratio("q", "thinnest over average thickness", d.MinToAverage),
				bottom, ratio("f", "share of the area in holes", 0.2),
				ratio("W", "walls over mouth", t.Mean))
			return fmt.Sprintf("The bottom gets %s of the mouth's current; of the average thickness it has %s.",
				t.Bottom.Percent(0), b.last())
		},
	}, {
		Word: "throughhole", Title: "How deep a hole may be", Package: "plating/throwing",
		Question: "A hole of 2 mm goes through a pillar and plates from both ends; its middle shall get half of\n" +
			"the mouth. How long may it be with an even slope, and how long with Tafel polarisation?",
		Good: "for stirred baths",
		solve: func(b *board) string {
			hole := throwing.Recess{Width: 2 * mm, BareFloor: true}
			lin := value[units.Length](b)(hole.LinearDepth(0.5, kappa, slope))
			taf := value[units.Length](b)(hole.TafelDepth(0.5, kappa, slope))
			hole.Depth = taf
			t := value[throwing.Throw](b)(hole.Tafel(kappa, slope))
			terms := []working.Term{working.Of("κ", "conductivity", kappa),
				working.Of("r", "slope at the mouth", slope), working.Of("d", "width", hole.Width),
				ratio("ρ", "middle over mouth", 0.5)}
			b.show("D = √(κ·r·d/4)·ln(1/ρ + √(1/ρ² - 1))", "Derived", working.Of("D", "half the length, even slope",
				lin), terms...)
			b.show("D = √(κ·r·d/4)·√2·(π/2 - asin(√ρ))/√ρ", "Derived", working.Of("D", "half the length, Tafel", taf),
				terms...)
			return fmt.Sprintf("Twice %s with an even slope, twice %s with Tafel; at that depth the middle has %s.",
				lin.Text(mm, 2), b.last(), t.Bottom.Percent(0))
		},
	}}
}
