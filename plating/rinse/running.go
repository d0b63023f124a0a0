package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Running is one rinse with water flowing through all the time. DragOut may
// be left zero: the work then carries out what it brought in.
type Running struct {
	Bath    units.MassConcentration // content of what is followed in the bath before, > 0
	Start   units.MassConcentration // content of the tank at time zero, 0 ≤ Start ≤ Bath
	Volume  units.Volume            // > 0 for what changes with time
	Water   Flow                    // fresh water, ≥ 0
	DragIn  Flow                    // brought by the work, > 0
	DragOut Flow                    // taken on by the work; zero means as DragIn
}

func (r Running) check() error {
	c := Counterflow{Stages: 1, Water: r.Water, DragIn: r.DragIn, DragOut: r.DragOut}
	if err := first(units.Positive("content of the bath", r.Bath), units.NonNegative("content of the tank at the start",
		r.Start), c.check()); err != nil {
		return err
	}
	if r.Start > r.Bath {
		return bad("content of the tank at the start", r.Start.String(), "no more than the bath's "+r.Bath.String(),
			units.ErrInconsistent)
	}
	return nil
}

// Ratio returns how many times weaker than the bath the rinse is in the long run.
//
//	C₀/C₁ = (Q + D)/D
//
//	Q  Water   ≥ 0 [m³/s]
//	D  DragIn  > 0 [m³/s]
//
// What the work carries out does not change it: it leaves at the content of
// the rinse, as the overflow does.
//
// Errors: a [*units.ValueError] for a value out of range, or when the work
// carries out more than water and drag-in bring.
//
// Source: [RinsingLessWater].
func (r Running) Ratio() (units.Ratio, error) {
	return Counterflow{Stages: 1, Water: r.Water, DragIn: r.DragIn, DragOut: r.DragOut}.Ratio()
}

// Steady returns the content of the rinse in the long run.
//
//	C₁ = C₀·D/(Q + D)
//
//	C₀  Bath    > 0 [kg/m³]
//	Q   Water   ≥ 0 [m³/s]
//	D   DragIn  > 0 [m³/s]
//
// Errors: as [Running.Ratio].
//
// Source: [RinsingLessWater].
func (r Running) Steady() (units.MassConcentration, error) {
	if err := r.check(); err != nil {
		return 0, err
	}
	return units.MassConcentration(r.steady()), nil
}

func (r Running) steady() float64 {
	return float64(r.Bath) * (float64(r.DragIn) / (float64(r.Water) + float64(r.DragIn)))
}

// Constant returns the time in which the distance to the steady content falls
// to 1/e: a few of them and the rinse is as it stays.
//
//	τ = V/(Q + D)
//
//	V  Volume  > 0 [m³]
//	Q  Water   ≥ 0 [m³/s]
//	D  DragIn  > 0 [m³/s]
//
// Errors: as [Running.Ratio].
//
// Source: [Derived].
func (r Running) Constant() (units.Duration, error) {
	if err := first(r.check(), units.Positive("volume of the tank", r.Volume)); err != nil {
		return 0, err
	}
	tau := units.Duration(float64(r.Volume) / (float64(r.Water) + float64(r.DragIn)))
	if err := units.Positive("time constant", tau); err != nil {
		return 0, err
	}
	return tau, nil
}

// After returns the content of the rinse after a time, with the work taken as
// a steady stream.
//
//	C = C₁ + (C_s - C₁)·exp(-t/τ)
//
//	C₁   steady content, see Steady [kg/m³]
//	C_s  Start  [kg/m³]
//	τ    see Constant [s]
//	t    ≥ 0 [s]
//
// Between loads the content swings about this curve by d·C₀/V at most.
//
// Errors: as [Running.Constant].
//
// Source: [Derived].
func (r Running) After(t units.Duration) (units.MassConcentration, error) {
	tau, err := r.Constant()
	if err != nil {
		return 0, err
	}
	if err := units.NonNegative("time", t); err != nil {
		return 0, err
	}
	done := -math.Expm1(-float64(t) / float64(tau))
	return units.MassConcentration(float64(r.Start)*(1-done) + r.steady()*done), nil
}

// AfterWorking shows how [Running.After] computes, with the same errors.
func (r Running) AfterWorking(t units.Duration) ([]working.Step, error) {
	c, err := r.After(t)
	if err != nil {
		return nil, err
	}
	tau, _ := r.Constant()
	q, d := working.Of("Q", "fresh water", r.Water), working.Of("D", "drag-in", r.DragIn)
	steady, constant := working.Of("C₁", "steady content", units.MassConcentration(r.steady())), working.Of("τ",
		"time constant", tau)
	return []working.Step{
		{Formula: "C₁ = C₀·D/(Q + D)", Source: "RinsingLessWater", Result: steady, Terms: []working.Term{working.Of("C₀",
			"content of the bath", r.Bath), d, q}},
		{Formula: "τ = V/(Q + D)", Source: "Derived", Result: constant, Terms: []working.Term{working.Of("V",
			"volume of the rinse", r.Volume), q, d}},
		{Formula: "C = C_s·exp(-t/τ) + C₁·(1 - exp(-t/τ))", Source: "Derived",
			Result: working.Of("C", "content of the rinse", c),
			Terms: []working.Term{steady, working.Of("C_s", "content at the start", r.Start), working.Of("t", "time", t),
				constant}},
	}, nil
}

// TimeTo returns when the rinse reaches a content on its way from the start to
// the steady one.
//
//	t = τ·ln((C₁ - C_s)/(C₁ - C))
//
// The symbols are those of [Running.After]; C is content.
//
// Errors: as [Running.Constant]; a [*units.ValueError] for a content that does
// not lie between the start, included, and the steady content, excluded.
//
// Source: [Derived].
func (r Running) TimeTo(content units.MassConcentration) (units.Duration, error) {
	tau, err := r.Constant()
	if err != nil {
		return 0, err
	}
	if err := units.NonNegative("content to reach", content); err != nil {
		return 0, err
	}
	if content == r.Start {
		return 0, nil
	}
	share := (float64(content) - float64(r.Start)) / (r.steady() - float64(r.Start))
	if !(share >= 0 && share < 1) {
		return 0, bad("content to reach", content.String(),
			"a value between the start, "+r.Start.String()+", and the steady "+units.MassConcentration(r.steady()).String(),
			units.ErrOutOfRange)
	}
	return units.Duration(-float64(tau) * math.Log1p(-share)), nil
}
