package ledger

import (
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// Uncertainty returns the standard uncertainty of an efficiency that may lie
// anywhere between its ends.
//
//	u = √((h - l)²/12 + ((h + l)/2 - η)²)
//
//	l, h  Low, High  ends, 0 < l ≤ η ≤ h ≤ 1; both 0 when not given
//	η     Value      the efficiency counted with
//
// Every value between the ends is held to be as likely as any other. The first
// term is the spread about the middle, the second is there for a value that is
// not the middle. Without ends u is 0. Errors: a [*units.ValueError] for
// values out of range or out of order.
//
// Source: [TN1297] section 4.6 for the first term; [Derived] for the second.
func (r EfficiencyRange) Uncertainty() (units.Efficiency, error) {
	if err := r.check("current efficiency"); err != nil {
		return 0, err
	}
	return units.Efficiency(r.spread()), nil
}

func (r EfficiencyRange) spread() float64 {
	if r.Low == 0 && r.High == 0 {
		return 0
	}
	half, off := float64(r.High-r.Low), float64(r.High+r.Low)/2-float64(r.Value)
	return math.Sqrt(half*half/12 + off*off)
}

// UncertaintyWorking shows the calculation of [EfficiencyRange.Uncertainty].
//
// Errors: as there.
//
// Source: [TN1297] section 4.6; [Derived].
func (r EfficiencyRange) UncertaintyWorking() (working.Step, error) {
	u, err := r.Uncertainty()
	if err != nil {
		return working.Step{}, err
	}
	low, high := r.Low, r.High
	if low == 0 && high == 0 {
		low, high = r.Value, r.Value
	}
	return working.Step{
		Formula: "u = √((h - l)²/12 + ((h + l)/2 - η)²)",
		Terms: []working.Term{working.Of("l", "low end", low), working.Of("h", "high end", high),
			working.Of("η", "current efficiency", r.Value)},
		Result: working.Of("u", "standard uncertainty of the efficiency", u),
		Source: "TN1297",
	}, nil
}

// ShareByArea returns the share of the current that soluble anodes carry when
// they hang beside insoluble ones.
//
//	s = As/(As + Ai)
//
//	As  soluble    area of the soluble anodes, ≥ 0 [m²]
//	Ai  insoluble  area of the insoluble ones, ≥ 0, not both zero [m²]
//
// It takes the current to spread evenly over both. On one busbar it does not:
// metal dissolves at a lower voltage than water gives off oxygen, so the
// soluble anodes take more than their area until they polarise. Where each kind
// has its own rectifier, use the amperes. Errors: a [*units.ValueError].
//
// Source: [Definition].
func ShareByArea(soluble, insoluble units.Area) (units.Ratio, error) {
	if err := units.NonNegative("area of the soluble anodes", soluble); err != nil {
		return 0, err
	}
	if err := units.NonNegative("area of the insoluble anodes", insoluble); err != nil {
		return 0, err
	}
	sum := soluble + insoluble
	if err := units.Positive("area of the anodes", sum); err != nil {
		return 0, err
	}
	return units.Ratio(float64(soluble) / float64(sum)), nil
}

// Rates are masses of the counted metal for each unit of charge.
type Rates struct {
	Deposit units.Equivalent // that leaves with the deposit
	Anode   units.Equivalent // that soluble anodes give back
	Net     units.Equivalent // Deposit - Anode: below zero the bath grows richer
}

// Rates returns what the current alone does to the metal of a bath.
//
//	a = w·ε·η
//	b = s·εa·ηa
//	k = a - b
//
//	w       Fine                   share of the counted metal in the deposit, 1 when 0
//	ε       Equivalent             of the deposit, > 0 [kg/C]
//	η       Efficiency.Value       0 < η ≤ 1
//	s       Anode.Share            of the current on soluble anodes, 0 to 1
//	εa, ηa  Anode's equivalent and efficiency
//
// Drag-out is not in it. With insoluble anodes b is 0 and the bath feeds the
// whole deposit. With soluble ones it is the difference of the two efficiencies
// that moves the content. Errors: those of [Account.Check].
//
// Source: [OpenStaxChem2e] section 17.7 (the law), [Definition] (the balance).
func (b *Account) Rates() (Rates, error) {
	if err := b.Check(); err != nil {
		return Rates{}, err
	}
	return b.rates(), nil
}

func (b *Account) rates() Rates {
	r := Rates{Deposit: units.Equivalent(b.fine() * float64(b.Equivalent) * float64(b.Efficiency.Value))}
	if b.Anode.Soluble() {
		r.Anode = units.Equivalent(float64(b.Anode.Share) * b.anodeEquivalent() * float64(b.Anode.Efficiency.Value))
	}
	r.Net = r.Deposit - r.Anode
	return r
}

// RatesWorking shows the calculation of [Account.Rates].
//
// Errors: as there.
//
// Source: [OpenStaxChem2e] section 17.7, [Definition].
func (b *Account) RatesWorking() ([]working.Step, error) {
	r, err := b.Rates()
	if err != nil {
		return nil, err
	}
	out := working.Of("a", b.Metal+" into the deposit for a unit of charge", r.Deposit)
	steps := []working.Step{{
		Formula: "a = w·ε·η",
		Terms: []working.Term{working.Of("w", "share of "+b.Metal+" in the deposit", units.MassFraction(b.fine())),
			working.Of("ε", "electrochemical equivalent of the deposit", b.Equivalent),
			working.Of("η", "current efficiency", b.Efficiency.Value)},
		Result: out, Source: "OpenStaxChem2e",
	}}
	back := working.Of("b", b.Metal+" from the anodes for a unit of charge", r.Anode)
	if b.Anode.Soluble() {
		steps = append(steps, working.Step{
			Formula: "b = s·εa·ηa",
			Terms: []working.Term{working.Of("s", "share of the current on soluble anodes", b.Anode.Share),
				working.Of("εa", "equivalent of the dissolving metal", units.Equivalent(b.anodeEquivalent())),
				working.Of("ηa", "anode efficiency", b.Anode.Efficiency.Value)},
			Result: back, Source: "OpenStaxChem2e",
		})
	}
	return append(steps, working.Step{Formula: "k = a - b", Terms: []working.Term{out, back},
		Result: working.Of("k", b.Metal+" drawn from the bath for a unit of charge", r.Net), Source: "Definition"}), nil
}

// SaltPerCharge returns the mass of a salt that the bath needs for each unit
// of charge: the setting of a feeder that counts ampere-minutes.
//
//	f = (a - b)/x
//
//	a, b  of [Account.Rates]  metal out with the deposit, back from the anodes [kg/C]
//	x     salt             share of the metal in the salt, water of crystallisation counted
//
// Read it by In(units.GramPerAmpereMinute). It does not know of drag-out, nor
// of an efficiency that drifts: an analysis sets it right now and then. A salt
// sold with a content on its label goes by the label.
//
// Errors: those of [Account.Check] and of [faraday.MetalContent]; a
// [*units.ValueError] when the anodes give as much as the deposit takes.
//
// Source: [OpenStaxChem2e] section 17.7, [IUPAC2021].
func (b *Account) SaltPerCharge(salt faraday.Formula) (units.Equivalent, error) {
	r, err := b.Rates()
	if err != nil {
		return 0, err
	}
	x, err := faraday.MetalContent(salt, b.Metal)
	if err != nil {
		return 0, err
	}
	if r.Net <= 0 {
		return 0, &units.ValueError{Field: "metal drawn for a unit of charge", Value: r.Net.Text(units.GramPerAmpereMinute,
			6),
			Need: "a deposit that takes more than the anodes give; otherwise no salt, and fewer soluble anodes when the " +
				"content rises", Err: units.ErrNotPositive}
	}
	return units.Equivalent(float64(r.Net) / float64(x)), nil
}

// SaltPerChargeWorking shows the calculation of [Account.SaltPerCharge].
//
// Errors: as there.
//
// Source: [OpenStaxChem2e] section 17.7, [IUPAC2021].
func (b *Account) SaltPerChargeWorking(salt faraday.Formula) ([]working.Step, error) {
	f, err := b.SaltPerCharge(salt)
	if err != nil {
		return nil, err
	}
	share, err := faraday.MetalContentWorking(salt, b.Metal)
	if err != nil {
		return nil, err
	}
	steps, err := b.RatesWorking()
	if err != nil {
		return nil, err
	}
	net := steps[len(steps)-1].Result
	x := working.Term{Symbol: "x", Meaning: share.Result.Meaning, Value: share.Result.Value, SI: share.Result.SI}
	return append(steps, share, working.Step{Formula: "f = k/x", Terms: []working.Term{net, x},
		Result: working.Of("f", salt.String()+" for a unit of charge", f), Source: "IUPAC2021",
		Note: "For the pure salt; where the label states a metal content, that one counts."}), nil
}
