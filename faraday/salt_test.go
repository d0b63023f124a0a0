package faraday_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// Salt and metal are in the proportion of the atoms: 10 g of gold is
// 10/196.966570 mol, and a mole of the salt weighs 288.10084 g (both by hand
// from [IUPAC2021]: 39.0983 + 196.966570 + 2·12.011 + 2·14.007).
func TestIndependentSaltFor(t *testing.T) {
	m, err := faraday.SaltFor(10*units.Gram, mustFormula(t, "KAu(CN)2"), "Au")
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "salt", m.In(units.Gram), 10*(39.0983+196.966570+2*12.011+2*14.007)/196.966570, 1e-12)
}

func TestPropertySaltFor(t *testing.T) {
	for _, c := range [][2]string{{"KAu(CN)2", "Au"}, {"Na3Au(SO3)2", "Au"}, {"NiSO4·6H2O", "Ni"}, {"Rh2(SO4)3", "Rh"},
		{"Ag2O", "Ag"}} {
		salt := mustFormula(t, c[0])
		w, err := faraday.MetalContent(salt, c[1])
		if err != nil {
			t.Fatal(err)
		}
		m, err := faraday.SaltFor(0.25, salt, c[1])
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, c[0], float64(m)*float64(w), 0.25, 1e-14)
		if m <= 0.25 {
			t.Errorf("%s: less salt than metal", c[0])
		}
	}
}

func TestSaltErrors(t *testing.T) {
	salt := mustFormula(t, "NISO4")
	_, err := faraday.MetalContent(salt, "Ni")
	if !errors.Is(err, units.ErrNotPositive) || !strings.Contains(err.Error(), "capitals") {
		t.Errorf("Ni in NISO4: %v", err)
	}
	for _, metal := range []string{"", "ni", "Xx", "Nickel", "Ni", "N"} {
		for _, f := range []faraday.Formula{{}, salt} {
			for _, m := range chemBad {
				got, err := faraday.SaltFor(units.Mass(m), f, metal)
				chemTyped(t, "SaltFor", float64(got), err)
				step, err := faraday.SaltForWorking(units.Mass(m), f, metal)
				chemTyped(t, "SaltForWorking", step.Result.SI, err)
			}
			w, err := faraday.MetalContent(f, metal)
			chemTyped(t, "MetalContent", float64(w), err)
			step, err := faraday.MetalContentWorking(f, metal)
			chemTyped(t, "MetalContentWorking", step.Result.SI, err)
		}
	}
	if m, err := faraday.SaltFor(0, mustFormula(t, "KCN"), "K"); m != 0 || err != nil {
		t.Errorf("no metal wants no salt, got %v, %v", m, err)
	}
	if _, err := faraday.SaltFor(-1, mustFormula(t, "KCN"), "K"); !errors.Is(err, units.ErrNegative) {
		t.Errorf("negative mass: %v", err)
	}
	if _, err := faraday.SaltFor(units.Mass(math.Inf(1)), mustFormula(t, "KCN"), "K"); !errors.Is(err,
		units.ErrNotFinite) {
		t.Errorf("infinite mass: %v", err)
	}
	step, err := faraday.MolarMassWorking(faraday.Formula{})
	chemTyped(t, "MolarMassWorking", step.Result.SI, err)
	if err == nil {
		t.Error("the zero Formula has a molar mass")
	}
}

func TestPropertySaltWorking(t *testing.T) {
	for _, c := range [][2]string{{"KAu(CN)2", "Au"}, {"NiSO4·6H2O", "Ni"}, {"CdSO4·8/3H2O", "Cd"}, {"CaSO4·0.5H2O", "Ca"},
		{"In(SO3NH2)3", "In"}, {"Au9999", "Au"}} {
		salt := mustFormula(t, c[0])
		s, err := faraday.MolarMassWorking(salt)
		chemRecompute(t, s, err)
		s, err = faraday.MetalContentWorking(salt, c[1])
		chemRecompute(t, s, err)
		s, err = faraday.SaltForWorking(5*units.Gram, salt, c[1])
		chemRecompute(t, s, err)
	}
}
