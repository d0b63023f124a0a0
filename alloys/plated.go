package alloys

import (
	"fmt"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// Plated returns the deposit as package faraday takes it: the
// electrochemical equivalent of metals that are laid down side by side and of
// non-metal that is built in without charge, at a density of the deposit.
//
//	ε = 1/Σ ((1 - n)·w·z·F/M)
//
//	n  d.NonMetal  share of non-metal in the deposit, 0 ≤ n < 1
//	w  d.Metals    mass fraction of each metal among the metals
//	z  valences    of each metal in the bath, 1 to 8; the element's usual one where it is left out
//	M              molar mass of each metal [kg/mol]
//	F              Faraday constant [C/mol]
//
// A valence for a metal that is not in the deposit is refused: it was meant for
// another one. Errors: a [*units.ValueError] for that, for an empty deposit or a
// density that is not above zero; those of [faraday.NewDepositPart].
//
// Source: [OpenStaxChem2e] section 17.7, by adding charges.
func (d DepositComposition) Plated(valences map[string]int, density units.Density) (faraday.Deposit, error) {
	if err := d.check(); err != nil {
		return faraday.Deposit{}, err
	}
	if err := units.Positive("density of the deposit", density); err != nil {
		return faraday.Deposit{}, err
	}
	for symbol := range valences {
		if d.Metals.Share(symbol) == 0 {
			return faraday.Deposit{}, bad("valences", symbol, "metals of the deposit, "+d.Metals.String(),
				units.ErrInconsistent)
		}
	}
	var parts []faraday.DepositPart
	for _, m := range d.Metals.Parts() {
		e, err := faraday.Lookup(m.Symbol)
		if err != nil {
			return faraday.Deposit{}, err
		}
		z, given := valences[m.Symbol]
		if !given {
			z = e.UsualValence()
		}
		p, err := faraday.NewDepositPart(m.Symbol, z, m.Share*(1-d.NonMetal))
		if err != nil {
			return faraday.Deposit{}, fmt.Errorf("%s: %w", units.Clip(m.Symbol), err)
		}
		parts = append(parts, p)
	}
	if d.NonMetal > 0 {
		parts = append(parts, faraday.DepositPart{Share: d.NonMetal})
	}
	eq, err := faraday.MixedEquivalent(parts...)
	return faraday.Deposit{Equivalent: eq, Density: density}, err
}
