package electrical

import (
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Cell is a tank between its busbars. Conductivity, Gap and the two areas are
// needed; the rest may be left zero, which counts as none.
type Cell struct {
	Conductivity Interval[units.Conductivity]
	Gap          Interval[units.Length] // from anode to cathode
	Cathode      units.Area             // that faces the anodes; for work between two rows of anodes both sides
	Anode        units.Area

	Reversible           Interval[units.Voltage] // of the two reactions at rest; about 0 with anodes of the plating metal
	CathodeOverpotential Interval[units.Voltage] // size, ≥ 0, at the current in question
	AnodeOverpotential   Interval[units.Voltage] // size, ≥ 0
	Leads                units.Resistance        // cables, contacts, hooks
}

// Check returns a [*units.ValueError] for the first field no cell can have.
func (c Cell) Check() error {
	if err := c.Conductivity.check("conductivity", units.Positive[units.Conductivity]); err != nil {
		return err
	}
	if err := c.Gap.check("gap between the electrodes", units.Positive[units.Length]); err != nil {
		return err
	}
	for _, k := range []units.Conductivity{c.Conductivity.Low, c.Conductivity.High} {
		if err := sense.Conductivity().Check(k); err != nil {
			return err
		}
	}
	if err := units.Positive("facing area of the cathode", c.Cathode); err != nil {
		return err
	}
	if err := units.Positive("facing area of the anodes", c.Anode); err != nil {
		return err
	}
	if err := c.Reversible.check("reversible voltage", units.Finite[units.Voltage]); err != nil {
		return err
	}
	if err := c.CathodeOverpotential.check("cathode overpotential", units.NonNegative[units.Voltage]); err != nil {
		return err
	}
	if err := c.AnodeOverpotential.check("anode overpotential", units.NonNegative[units.Voltage]); err != nil {
		return err
	}
	return units.NonNegative("resistance of the leads", c.Leads)
}

// A Drop is where the volts go.
type Drop struct {
	Reversible, Cathode, Anode, Solution, Leads Interval[units.Voltage]
	Electrodes                                  Interval[units.Voltage] // across the solution: all but the leads
	Total                                       Interval[units.Voltage] // at the rectifier
}

// Resistance returns the resistance of the solution, lowest and highest.
//
// Errors: those of [Cell.Check].
//
// Source: [NaOHColumn], [Derived], as the function Resistance.
func (c Cell) Resistance() (Interval[units.Resistance], error) {
	if err := c.Check(); err != nil {
		return Interval[units.Resistance]{}, err
	}
	low, err := Resistance(c.Conductivity.High, c.Gap.Low, c.Anode, c.Cathode)
	if err != nil {
		return Interval[units.Resistance]{}, err
	}
	high, err := Resistance(c.Conductivity.Low, c.Gap.High, c.Anode, c.Cathode)
	return Interval[units.Resistance]{Low: low, High: high}, err
}

// Voltage returns what the rectifier will show at a current, and its parts.
//
//	V = E + ηc + ηa + I·R + I·Rl
//
//	E       Reversible            voltage at rest [V]
//	ηc, ηa  overpotentials        sizes, ≥ 0 [V]
//	I       current               ≥ 0 [A]
//	R       [Cell.Resistance]     of the solution [Ω]
//	Rl      Leads                 ≥ 0 [Ω]
//
// Once with all low ends and once with all high ends, so the window is as wide as
// it can get; the geometry's own error (see [Resistance]) is not in it. Below the
// voltage at rest no current flows that way: E is not a threshold to plate by.
//
// Errors: those of [Cell.Check]; a [*units.ValueError] for the current.
//
// Source: [Derived]; [NaOHColumn] for the resistance; [IUPACGoldBook] for the
// overpotential.
func (c Cell) Voltage(current units.Current) (Drop, error) {
	if err := units.NonNegative("current", current); err != nil {
		return Drop{}, err
	}
	r, err := c.Resistance()
	if err != nil {
		return Drop{}, err
	}
	d := Drop{Reversible: c.Reversible, Cathode: c.CathodeOverpotential, Anode: c.AnodeOverpotential,
		Solution: Interval[units.Voltage]{Low: current.Through(r.Low), High: current.Through(r.High)},
		Leads:    Exactly(current.Through(c.Leads))}
	d.Electrodes.Low = d.Reversible.Low + d.Cathode.Low + d.Anode.Low + d.Solution.Low
	d.Electrodes.High = d.Reversible.High + d.Cathode.High + d.Anode.High + d.Solution.High
	d.Total.Low = d.Electrodes.Low + d.Leads.Low
	d.Total.High = d.Electrodes.High + d.Leads.High
	return d, units.Finite("voltage", d.Total.High)
}

// VoltageWorking shows the calculation of [Cell.Voltage]: the low end, then the
// high one.
//
// Errors: as there.
//
// Source: [Derived], [NaOHColumn].
func (c Cell) VoltageWorking(current units.Current) ([]working.Step, error) {
	d, err := c.Voltage(current)
	if err != nil {
		return nil, err
	}
	r, err := c.Resistance()
	if err != nil {
		return nil, err
	}
	var steps []working.Step
	end := func(which string, kappa units.Conductivity, gap units.Length, res units.Resistance, e, hc, ha,
		total units.Voltage) error {
		s, err := ResistanceWorking(kappa, gap, c.Anode, c.Cathode)
		if err != nil {
			return err
		}
		steps = append(append(steps, s...), working.Step{Formula: "V = E + ηc + ηa + I·R + I·Rl",
			Terms: []working.Term{working.Of("E", "reversible voltage", e), working.Of("ηc", "cathode overpotential", hc),
				working.Of("ηa", "anode overpotential", ha), working.Of("I", "current", current),
				working.Of("R", "resistance of the solution", res), working.Of("Rl", "resistance of the leads", c.Leads)},
			Result: working.Of("V", which, total), Source: "Derived"})
		return nil
	}
	if err := end("voltage at the rectifier, low end", c.Conductivity.High, c.Gap.Low, r.Low, d.Reversible.Low,
		d.Cathode.Low, d.Anode.Low, d.Total.Low); err != nil {
		return nil, err
	}
	return steps, end("voltage at the rectifier, high end", c.Conductivity.Low, c.Gap.High, r.High, d.Reversible.High,
		d.Cathode.High, d.Anode.High, d.Total.High)
}

// Power returns what the rectifier delivers at a current.
//
//	P = I·V
//
//	I  current         ≥ 0 [A]
//	V  [Cell.Voltage]  at the rectifier [V]
//
// A low end below zero counts as none. Errors: those of [Cell.Voltage].
//
// Source: [Definition].
func (c Cell) Power(current units.Current) (Interval[units.Power], error) {
	d, err := c.Voltage(current)
	if err != nil {
		return Interval[units.Power]{}, err
	}
	w := Interval[units.Power]{Low: max(0, current.At(d.Total.Low)), High: max(0, current.At(d.Total.High))}
	return w, units.Finite("power", w.High)
}

// Mains returns what a rectifier takes from the mains.
//
//	Pm = P/e
//
//	P  delivered   ≥ 0 [W]
//	e  efficiency  of the rectifier, 0 < e ≤ 1
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Definition].
func Mains(delivered units.Power, efficiency units.Efficiency) (units.Power, error) {
	if err := units.NonNegative("power delivered", delivered); err != nil {
		return 0, err
	}
	if err := units.PositiveFraction("efficiency of the rectifier", efficiency); err != nil {
		return 0, err
	}
	return finite("power from the mains", units.Power(float64(delivered)/float64(efficiency)))
}

// Thermoneutral is the voltage at which splitting water takes up just the
// energy that goes in: the heat of formation of liquid water at 25 °C,
// 285.83 kJ/mol, over 2·F.
//
// Source: [WaterElectrolysis].
const Thermoneutral units.Voltage = 285.83e3 / (2 * faraday.FaradayConstant)

// Heat returns what goes into the bath as heat.
//
//	P_low = I·(V_low - g·E_tn)
//	P_high = I·V_high
//	g = min(1 - η, 1 - s)
//
//	I     current                       ≥ 0 [A]
//	V     [Cell.Voltage].Electrodes     between the electrodes, leads left out [V]
//	η     eff                           cathode efficiency, 0 to 1
//	s     soluble                       share of the current that dissolves metal, 0 to 1
//	E_tn  [Thermoneutral]               1.481 V
//
// Water is split by no more of the current than makes hydrogen at the one
// electrode and oxygen at the other. Metal that plates from an insoluble anode
// keeps some energy too, but how much depends on its chemistry: hence I·V_high as
// the bound. It is exceeded only where a reaction gives heat of its own, as
// nickel that dissolves while hydrogen comes off (some hundredths of a volt for
// the lost share of the current). A low end below zero counts as none.
//
// Errors: those of [Cell.Voltage]; a [*units.ValueError] for the shares.
//
// Source: [WaterElectrolysis], [Derived].
func (c Cell) Heat(current units.Current, eff units.Efficiency, soluble units.Ratio) (Interval[units.Power], error) {
	if err := units.Fraction("current efficiency", eff); err != nil {
		return Interval[units.Power]{}, err
	}
	if err := units.Fraction("share of the current that dissolves metal", soluble); err != nil {
		return Interval[units.Power]{}, err
	}
	d, err := c.Voltage(current)
	if err != nil {
		return Interval[units.Power]{}, err
	}
	split := units.Voltage(math.Min(1-float64(eff), 1-float64(soluble)) * float64(Thermoneutral))
	w := Interval[units.Power]{Low: max(0, current.At(d.Electrodes.Low-split)),
		High: max(0, current.At(d.Electrodes.High))}
	return w, units.Finite("heat", w.High)
}

// HeatWorking shows the calculation of [Cell.Heat].
//
// Errors: as there.
//
// Source: [WaterElectrolysis], [Derived].
func (c Cell) HeatWorking(current units.Current, eff units.Efficiency, soluble units.Ratio) ([]working.Step, error) {
	w, err := c.Heat(current, eff, soluble)
	if err != nil {
		return nil, err
	}
	d, err := c.Voltage(current)
	if err != nil {
		return nil, err
	}
	i := working.Of("I", "current", current)
	g := working.Of("g", "share of the current that splits water", units.Ratio(math.Min(1-float64(eff),
		1-float64(soluble))))
	return []working.Step{
		{Formula: "g = min(1 - η, 1 - s)", Terms: []working.Term{working.Of("η", "cathode efficiency", eff), working.Of("s",
			"share that dissolves metal", soluble)},
			Result: g, Source: "Derived"},
		{Formula: "P = max(0, I·(V - g·Etn))", Terms: []working.Term{i, working.Of("V",
			"low end of the voltage between the electrodes", d.Electrodes.Low),
			g, working.Of("Etn", "thermoneutral voltage of water", Thermoneutral)}, Result: working.Of("P", "heat, low end",
			w.Low), Source: "WaterElectrolysis"},
		{Formula: "P = max(0, I·V)", Terms: []working.Term{i, working.Of("V",
			"high end of the voltage between the electrodes", d.Electrodes.High)},
			Result: working.Of("P", "heat, high end", w.High), Source: "Derived"},
	}, nil
}
