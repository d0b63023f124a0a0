package electrical

import (
	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// HydrogenLimit is the lower flammable limit of hydrogen in air at room
// temperature, by volume.
//
// Source: [HydrogenSafetyPage].
const HydrogenLimit units.MoleFraction = 0.04

// A Vent is a cathode that gives off hydrogen and the air that carries it away.
type Vent struct {
	Current    units.Current
	Efficiency units.Efficiency // of the cathode for metal, the lowest it may be; 0 for cathodic cleaning

	Temperature units.Temperature // of the air
	Pressure    units.Pressure    // of the air

	// Mixing says how much more air it takes than if all of it mixed at once, 1
	// or more. There is no default: it depends on the room, the exhaust and the
	// tank, and needs somebody who knows them.
	Mixing units.Ratio

	// Share of [HydrogenLimit] that the air may reach; 0 means a quarter.
	Share units.Ratio
}

// An Airing is what comes off and what carries it away.
type Airing struct {
	Hydrogen GasFlow
	Air      GasFlow
	Limit    units.MoleFraction // the air may reach
}

// Air returns the hydrogen that comes off and the fresh air that keeps it thin.
//
//	q = (1 - η)·I/(2·F)·R·T/p
//	c = s·l
//	a = k·q·(1 - c)/c
//
//	I     Current      ≥ 0 [A]
//	η     Efficiency   0 to 1
//	T, p  of the air   [K], [Pa]
//	s     Share        of the lower limit, 0 < s ≤ 1, a quarter when 0
//	l     [HydrogenLimit]  4 % by volume
//	k     Mixing       ≥ 1
//	F, R               Faraday and gas constants
//
// All current that deposits no metal is taken to make hydrogen, as
// [faraday.Hydrogen] says. It is the flow for a steady state of the whole
// stream; above the bath and under a lid the gas is always thicker. The lower
// limit falls a little in hot air.
//
// Errors: a [*units.ValueError] for a field out of range; Mixing has to be given.
//
// Source: [HydrogenPractice] (a quarter of the limit), [HydrogenSafetyPage], [OpenStaxChem2e]
// sections 9.2 and 17.7.
func (v Vent) Air() (Airing, error) {
	if err := units.NonNegative("current", v.Current); err != nil {
		return Airing{}, err
	}
	if err := units.Positive("mixing factor", v.Mixing); err != nil {
		return Airing{}, err
	}
	if v.Mixing < 1 {
		return Airing{}, &units.ValueError{Field: "mixing factor", Value: v.Mixing.String(),
			Need: "1 for perfect mixing, or more", Err: units.ErrOutOfRange}
	}
	if err := units.Fraction("share of the lower flammable limit", v.Share); err != nil {
		return Airing{}, err
	}
	gas, err := faraday.Hydrogen(v.Current.For(units.Second), v.Efficiency, v.Temperature, v.Pressure)
	if err != nil {
		return Airing{}, err
	}
	c := float64(v.share()) * float64(HydrogenLimit)
	a := Airing{Hydrogen: GasFlow(gas.Volume), Limit: units.MoleFraction(c)}
	a.Air = GasFlow(float64(v.Mixing) * float64(gas.Volume) * (1 - c) / c)
	return a, units.Finite("flow of air", a.Air)
}

func (v Vent) share() units.Ratio {
	if v.Share == 0 {
		return 0.25
	}
	return v.Share
}

// AirWorking shows the calculation of [Vent.Air].
//
// Errors: as there.
//
// Source: [HydrogenPractice], [HydrogenSafetyPage], [OpenStaxChem2e] sections 9.2 and 17.7.
func (v Vent) AirWorking() ([]working.Step, error) {
	a, err := v.Air()
	if err != nil {
		return nil, err
	}
	q, c := working.Of("q", "hydrogen", a.Hydrogen), working.Of("c", "hydrogen that the air may hold", a.Limit)
	return []working.Step{
		{Formula: "q = (1 - η)·I/(2·F)·R·T/p", Terms: []working.Term{working.Of("η", "cathode efficiency", v.Efficiency),
			working.Of("I", "current", v.Current),
			working.Constant("F", "Faraday constant", faraday.FaradayConstant, "C/mol"), working.Constant("R", "gas constant",
				faraday.GasConstant, "J/(mol·K)"),
			working.Of("T", "temperature of the air", v.Temperature), working.Of("p", "pressure", v.Pressure)}, Result: q,
			Source: "OpenStaxChem2e"},
		{Formula: "c = s·l", Terms: []working.Term{working.Of("s", "share of the lower flammable limit", v.share()),
			working.Of("l", "lower flammable limit by volume", HydrogenLimit)}, Result: c, Source: "HydrogenPractice"},
		{Formula: "a = k·q·(1 - c)/c", Terms: []working.Term{working.Of("k", "mixing factor", v.Mixing), q, c},
			Result: working.Of("a", "fresh air", a.Air), Source: "HydrogenPractice"},
	}, nil
}
