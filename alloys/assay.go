package alloys

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Assay returns the fineness of a sample from the fine metal found in it.
//
//	F = 1000 m / m_t
//
//	m    fine   fine metal found, 0 < m ≤ m_t [kg]
//	m_t  total  the whole sample, > 0 [kg]
//
// Errors: a [*units.ValueError] for masses outside these bounds.
//
// Source: [ISO9202].
func Assay(fine, total units.Mass) (Fineness, error) {
	f, _, err := assay(fine, total, false)
	return f, err
}

// AssayWorking shows how [Assay] computes, with the same errors.
func AssayWorking(fine, total units.Mass) ([]working.Step, error) {
	_, steps, err := assay(fine, total, true)
	return steps, err
}

func assay(fine, total units.Mass, show bool) (Fineness, []working.Step, error) {
	if err := units.Positive("fine metal", fine); err != nil {
		return 0, nil, err
	}
	if err := units.Positive("whole sample", total); err != nil {
		return 0, nil, err
	}
	if fine > total {
		return 0, nil, bad("fine metal", fine.String(), "at most the whole sample of "+total.String(),
			units.ErrInconsistent)
	}
	f := NewFineness(units.MassFraction(fine / total))
	if !show {
		return f, nil, nil
	}
	step := working.Step{Formula: "F = 1000·m/m_t",
		Terms:  []working.Term{working.Of("m", "fine metal", fine), working.Of("m_t", "whole sample", total)},
		Result: working.Of("F", "fineness", f), Source: "ISO9202"}
	return f, []working.Step{step}, nil
}

// A DepositComposition is what a bath lays down: metals, and non-metal built in between
// them (cyanide and carbon compounds, hydrogen, water). It assays lower than
// its metals say: a gold of 24 karat colour is below 24 karat. The zero
// DepositComposition is none.
type DepositComposition struct {
	Metals   Composition        // by mass of the metals alone, summing to 1 among themselves
	NonMetal units.MassFraction // of the whole deposit, 0 ≤ n < 1
}

// DepositFromMasses returns the deposit of an analysis: so much of each metal,
// so much non-metal.
//
//	n = m_n / (Σ m + m_n)
//
//	m    metals    mass of each metal, ≥ 0, one of them > 0 [kg]
//	m_n  nonMetal  mass of all non-metal, ≥ 0 [kg]
//
// Errors: those of [FromMasses]; a [*units.ValueError] for a negative or
// unbounded mass of non-metal.
//
// Source: [GoldBulletinDeposits1986] (prints carbon in mg per g of gold).
func DepositFromMasses(nonMetal units.Mass, metals ...MassPart) (DepositComposition, error) {
	if err := units.NonNegative("mass of non-metal", nonMetal); err != nil {
		return DepositComposition{}, err
	}
	c, err := FromMasses(metals...)
	if err != nil {
		return DepositComposition{}, err
	}
	total, err := totalMass(metals)
	if err != nil {
		return DepositComposition{}, err
	}
	whole := total + nonMetal
	if err := units.Positive("mass of the deposit", whole); err != nil {
		return DepositComposition{}, err
	}
	d := DepositComposition{Metals: c, NonMetal: units.MassFraction(nonMetal / whole)}
	if err := d.check(); err != nil {
		return DepositComposition{}, err
	}
	return d, nil
}

func (d DepositComposition) check() error {
	if d.Metals.IsZero() {
		return noComposition("metals of the deposit")
	}
	if err := units.Fraction("share of non-metal", d.NonMetal); err != nil {
		return err
	}
	if d.NonMetal == 1 {
		return bad("share of non-metal", d.NonMetal.String(), "less than the whole deposit", units.ErrOutOfRange)
	}
	return nil
}

// Fineness returns the share of one metal in the whole deposit, in per mille;
// zero for a metal that is not in it.
//
//	F = 1000 (1 - n) w
//
//	n  d.NonMetal  share of non-metal in the deposit, 0 ≤ n < 1
//	w  d.Metals    mass fraction of the metal among the metals
//
// Errors: a [*units.ValueError] for the zero Deposit or n outside its bounds.
//
// Source: [GoldBulletinDeposits1986], by mass balance.
func (d DepositComposition) Fineness(symbol string) (Fineness, error) {
	f, _, err := d.fineness(symbol, false)
	return f, err
}

// FinenessWorking shows how [DepositComposition.Fineness] computes, with the same errors.
func (d DepositComposition) FinenessWorking(symbol string) ([]working.Step, error) {
	_, steps, err := d.fineness(symbol, true)
	return steps, err
}

func (d DepositComposition) fineness(symbol string, show bool) (Fineness, []working.Step, error) {
	if err := d.check(); err != nil {
		return 0, nil, err
	}
	w := d.Metals.Share(symbol)
	f := NewFineness(units.MassFraction((1 - float64(d.NonMetal)) * float64(w)))
	if !show {
		return f, nil, nil
	}
	step := working.Step{Formula: "F = 1000·(1 - n)·w",
		Terms: []working.Term{working.Of("n", "share of non-metal", d.NonMetal), working.Of("w", "share of "+symbol+
			" among the metals", w)},
		Result: working.Of("F", "fineness of the deposit", f), Source: "GoldBulletinDeposits1986"}
	return f, []working.Step{step}, nil
}

// Karat returns the gold of the whole deposit in 24ths, 24/1000 of [DepositComposition.Fineness].
//
// Errors: those of Deposit.Fineness.
//
// Source: [FinenessMarks].
func (d DepositComposition) Karat() (Karat, error) {
	f, err := d.Fineness("Au")
	return f.Karat(), err
}

// NonMetalFromDensity estimates the share of non-metal in a deposit from its
// measured density, when all of the shortfall is non-metal and none is pores.
//
//	n = (1/ρ - 1/ρ_m) / (1/ρ_n - 1/ρ_m)
//
//	ρ    deposit   measured density of the deposit [kg/m³]
//	ρ_m  metals    density of its metals without the non-metal, as of Density [kg/m³]
//	ρ_n  nonMetal  density of what is built in; 1 to 2 g/cm³ for organic matter and cyanides [kg/m³]
//
// An estimate to within a factor of two: ρ_n is a guess, and pores count as
// non-metal. Errors: a [*units.ValueError] for a density that is not above
// zero, or a deposit not between the other two.
//
// Source: [GoldBulletinDeposits1986] (the gap to pure gold is codeposited non-metal), by additive volumes.
func NonMetalFromDensity(deposit, metals, nonMetal units.Density) (units.MassFraction, error) {
	n, _, err := nonMetalFromDensity(deposit, metals, nonMetal, false)
	return n, err
}

// NonMetalFromDensityWorking shows how [NonMetalFromDensity] computes, with the same errors.
func NonMetalFromDensityWorking(deposit, metals, nonMetal units.Density) ([]working.Step, error) {
	_, steps, err := nonMetalFromDensity(deposit, metals, nonMetal, true)
	return steps, err
}

func nonMetalFromDensity(deposit, metals, nonMetal units.Density, show bool) (units.MassFraction, []working.Step,
	error) {
	if err := units.Positive("density of the metals", metals); err != nil {
		return 0, nil, err
	}
	if err := units.Positive("density of the non-metal", nonMetal); err != nil {
		return 0, nil, err
	}
	n, err := inverseMix("density of the deposit", deposit, nonMetal, metals)
	if err != nil {
		return 0, nil, err
	}
	if !show {
		return n, nil, nil
	}
	step := working.Step{Formula: "n = (1/ρ - 1/ρ_m)/(1/ρ_n - 1/ρ_m)",
		Terms: []working.Term{working.Of("ρ", "density of the deposit", deposit), working.Of("ρ_m", "density of its metals",
			metals),
			working.Of("ρ_n", "density of the non-metal", nonMetal)},
		Result: working.Of("n", "share of non-metal", n), Source: "GoldBulletinDeposits1986"}
	return n, []working.Step{step}, nil
}
