package faraday

import (
	"math"
	"strconv"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// MetalContent returns the share of a metal in the mass of a salt: how many
// grams of gold a gram of potassium gold cyanide brings into the bath.
//
//	w = N·A / M
//
//	N  atoms of the metal in one unit of the salt
//	A  its atomic weight [kg/mol]
//	M  molar mass of the salt [kg/mol]
//
// It is that of the pure salt with just the water of its formula. What is sold
// may be damp, dry or guaranteed to another content: then the label counts.
//
// Errors: an [*ElementError] for an unknown symbol; a [*units.ValueError] for
// the zero Formula and for a salt that does not hold the metal.
//
// Source: [IUPAC2021]; [Definition].
func MetalContent(salt Formula, metal string) (units.MassFraction, error) {
	w, err := salt.MassFraction(metal)
	if err != nil {
		return 0, err
	}
	if w == 0 {
		return 0, &units.ValueError{Field: "metal content of " + salt.text, Value: "0 % " + metal,
			Need: "a salt that holds the metal; mind the capitals, Ni and not NI", Err: units.ErrNotPositive}
	}
	return w, nil
}

// SaltFor returns the mass of a salt that brings a mass of metal.
//
//	ms = m·M / (N·A)
//
//	m  metalMass  mass of the metal wanted, ≥ 0 [kg]
//	M             molar mass of the salt [kg/mol]
//	N             atoms of the metal in one unit of the salt
//	A             atomic weight of the metal [kg/mol]
//
// For the pure salt; see [MetalContent].
//
// Errors: those of [MetalContent]; a [*units.ValueError] for a mass that is
// negative or not finite.
//
// Source: [IUPAC2021]; [Definition].
func SaltFor(metalMass units.Mass, salt Formula, metal string) (units.Mass, error) {
	if err := units.NonNegative("mass of metal", metalMass); err != nil {
		return 0, err
	}
	if _, err := MetalContent(salt, metal); err != nil {
		return 0, err
	}
	e, err := Lookup(metal)
	if err != nil {
		return 0, err
	}
	perSalt := salt.Count(metal) * float64(e.Weight.Value)
	return finite("mass of salt", units.Mass(float64(metalMass)*float64(salt.MolarMass())/perSalt))
}

// MolarMassWorking shows how the molar mass of a formula is made up.
//
// Errors: a [*units.ValueError] for the zero Formula.
//
// Source: [IUPAC2021].
func MolarMassWorking(f Formula) (working.Step, error) {
	if err := f.check("formula"); err != nil {
		return working.Step{}, err
	}
	s := working.Step{Result: working.Of("M", "molar mass of "+f.text, f.MolarMass()), Source: "IUPAC2021"}
	var sum []string
	for _, a := range f.atoms {
		e := elementTable[a.element]
		sum = append(sum, strconv.FormatFloat(a.count, 'f', -1, 64)+"·"+e.Symbol)
		s.Terms = append(s.Terms, working.Of(e.Symbol, "atomic weight of "+e.Name, e.Weight.Value))
	}
	s.Formula = "M = " + strings.Join(sum, " + ")
	return s, nil
}

// MetalContentWorking shows the calculation of [MetalContent].
//
// Errors: those of [MetalContent].
//
// Source: [IUPAC2021]; [Definition].
func MetalContentWorking(salt Formula, metal string) (working.Step, error) {
	w, err := MetalContent(salt, metal)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{
		Formula: "w = N·A/M",
		Terms:   saltTerms(salt, metal),
		Result:  working.Of("w", "share of "+metal+" in "+salt.text, w),
		Source:  "IUPAC2021",
	}, nil
}

// SaltForWorking shows the calculation of [SaltFor].
//
// Errors: those of [SaltFor].
//
// Source: [IUPAC2021]; [Definition].
func SaltForWorking(metalMass units.Mass, salt Formula, metal string) (working.Step, error) {
	m, err := SaltFor(metalMass, salt, metal)
	if err != nil {
		return working.Step{}, err
	}
	return working.Step{
		Formula: "ms = m·M/(N·A)",
		Terms:   append([]working.Term{working.Of("m", "mass of "+metal+" wanted", metalMass)}, saltTerms(salt, metal)...),
		Result:  working.Of("ms", "mass of "+salt.text, m),
		Source:  "IUPAC2021",
		Note:    "For the pure salt; where the label states a metal content, that one counts.",
	}, nil
}

// saltTerms are the terms that both calculations share.
func saltTerms(salt Formula, metal string) []working.Term {
	e := elementTable[elementIndex(metal)]
	return []working.Term{
		working.Number("N", "atoms of "+e.Name+" in "+salt.text, salt.Count(metal)),
		working.Of("A", "atomic weight of "+e.Name, e.Weight.Value),
		working.Of("M", "molar mass of "+salt.text, salt.MolarMass()),
	}
}

// FittingValence returns the valence at which an electrochemical equivalent is
// that of a metal: the whole number from 1 to 8 for which both agree within
// 5 %, so that an alloy of a few per cent still tells; 0 when none does or the
// symbol is none.
//
//	n = M/(F·ε)
//
//	n         valence                      1 to 8
//	M         molar mass of the metal      [kg/mol]
//	F         Faraday constant             [C/mol]
//	ε  eq     equivalent of the deposit    > 0 [kg/C]
//
// Source: [OpenStaxChem2e] section 17.7.
func FittingValence(symbol string, eq units.Equivalent) int {
	e, err := Lookup(symbol)
	if err != nil || !(eq > 0) {
		return 0
	}
	for n := 1; n <= 8; n++ {
		of, err := NewEquivalent(e.Weight.Value, n)
		if err == nil && math.Abs(float64(eq/of)-1) < 0.05 {
			return n
		}
	}
	return 0
}
