package faraday

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// A DepositPart is one constituent of a deposit of several.
type DepositPart struct {
	Molar     units.MolarMass    // > 0; not needed when Electrons is 0
	Electrons int                // valence it is deposited from, 1 to 8; 0 for what is included without charge
	Share     units.MassFraction // of the deposit's mass, 0 to 1
}

// NewDepositPart returns the constituent of an element by its symbol; valence 0 means
// the usual one.
//
// Errors: an [*ElementError]; a [*units.ValueError] for a valence or share out of range.
//
// Source: [IUPAC2021].
func NewDepositPart(symbol string, valence int, share units.MassFraction) (DepositPart, error) {
	e, err := Lookup(symbol)
	if err != nil {
		return DepositPart{}, err
	}
	if valence == 0 {
		valence = e.UsualValence()
	}
	if valence != 0 {
		if err := e.CheckValence(valence); err != nil {
			return DepositPart{}, err
		}
	}
	p := DepositPart{Molar: e.Weight.Value, Electrons: valence, Share: share}
	if _, err := NewEquivalent(p.Molar, p.Electrons); err != nil {
		return DepositPart{}, err
	}
	if err := units.Fraction("mass fraction of "+symbol, share); err != nil {
		return DepositPart{}, err
	}
	return p, nil
}

// MixedEquivalent returns the electrochemical equivalent of a deposit of
// several metals that are laid down side by side.
//
//	ε = 1/Σ (w·n·F/M)
//
//	w  Share      mass fraction of each, Σ w = 1 within 1e-6
//	n  Electrons  valence of each, 0 for an inclusion
//	M  Molar      molar mass of each [kg/mol]
//	F             Faraday constant [C/mol]
//
// Each constituent takes the charge that its own valence asks for; the sum of
// the charges for one kilogram of deposit is 1/ε. Non-metal that is built in
// without charge counts with its mass only.
//
// Errors: a [*units.ValueError] for no parts, a share or valence out of range,
// or shares that do not sum to 1.
//
// Source: [OpenStaxChem2e] section 17.7, by adding charges.
func MixedEquivalent(parts ...DepositPart) (units.Equivalent, error) {
	charge, err := chargePerMass(parts)
	if err != nil {
		return 0, err
	}
	return finite("electrochemical equivalent", units.Equivalent(1/charge))
}

// CurrentShares returns the share of the depositing charge that each
// constituent takes, in the order of the parts. They sum to 1.
//
//	x = (w·n·F/M) / Σ (w·n·F/M)
//
// with the symbols of [MixedEquivalent].
//
// Errors: as [MixedEquivalent].
//
// Source: [OpenStaxChem2e] section 17.7, by adding charges.
func CurrentShares(parts ...DepositPart) ([]units.Ratio, error) {
	charge, err := chargePerMass(parts)
	if err != nil {
		return nil, err
	}
	shares := make([]units.Ratio, len(parts))
	for i, p := range parts {
		shares[i] = units.Ratio(p.chargePerMass() / charge)
	}
	return shares, nil
}

func (p DepositPart) chargePerMass() float64 {
	if p.Electrons == 0 || p.Share == 0 {
		return 0
	}
	return float64(p.Share) * float64(p.Electrons) * FaradayConstant / float64(p.Molar)
}

func chargePerMass(parts []DepositPart) (float64, error) {
	if len(parts) == 0 {
		return 0, &units.ValueError{Field: "deposit", Value: "no constituents", Need: "at least one metal",
			Err: units.ErrOutOfRange}
	}
	var sum, charge float64
	for i, p := range parts {
		if err := units.Fraction(fmt.Sprintf("mass fraction of constituent %d", i+1), p.Share); err != nil {
			return 0, err
		}
		if p.Electrons != 0 {
			if _, err := NewEquivalent(p.Molar, p.Electrons); err != nil {
				return 0, fmt.Errorf("constituent %d: %w", i+1, err)
			}
		}
		sum += float64(p.Share)
		charge += p.chargePerMass()
	}
	if math.Abs(sum-1) > 1e-6 {
		return 0, &units.ValueError{Field: "sum of mass fractions", Value: units.MassFraction(sum).Percent(4),
			Need: "100 % within 0.0001 %", Err: units.ErrInconsistent}
	}
	if charge == 0 {
		return 0, &units.ValueError{Field: "deposit", Value: "no constituent takes charge",
			Need: "at least one metal with a valence", Err: units.ErrNotPositive}
	}
	return charge, nil
}
