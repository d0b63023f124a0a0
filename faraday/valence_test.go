package faraday_test

import (
	"errors"
	"fmt"
	"strconv"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// TestReferenceValences: each valence that a printed table of equivalents gives
// is taken, but gold's of two, which no bath has; what no table prints is not.
func TestReferenceValences(t *testing.T) {
	taken := 0
	for _, file := range []string{"eqtutorial.csv", "eqhandbook.csv", "eqencyclopaedia.csv"} {
		for _, r := range rows(t, file) {
			n, err := strconv.Atoi(r.Text("valence"))
			if err != nil || r.Text("metal") == "" {
				continue
			}
			e, err := faraday.Lookup(r.Text("metal"))
			if err != nil {
				t.Fatal(err)
			}
			taken++
			err = e.CheckValence(n)
			if gold2 := r.Text("metal") == "Au" && n == 2; (err != nil) != gold2 {
				t.Errorf("%s: %s of valence %d: %v", r.Name(), r.Text("metal"), n, err)
			}
		}
	}
	if taken < 30 {
		t.Errorf("only %d rows", taken)
	}
	for _, bad := range []struct {
		symbol  string
		valence int
	}{{"Au", 2}, {"Au", 8}, {"Ag", 2}, {"Ni", 7}, {"Cu", 9}, {"Au", -1}, {"Ag", 1000000}, {"Ar", 9}, {"Ar", 0}} {
		var v *units.ValueError
		e, err := faraday.Lookup(bad.symbol)
		if err != nil {
			t.Fatal(err)
		}
		if err := e.CheckValence(bad.valence); !errors.As(err, &v) {
			t.Errorf("%s of valence %d: %v", bad.symbol, bad.valence, err)
		}
		if bad.valence == 0 {
			continue // the usual one is taken
		}
		if _, err := faraday.NewDeposit(bad.symbol, bad.valence); err == nil {
			t.Errorf("a deposit of %s of valence %d is taken", bad.symbol, bad.valence)
		}
		if _, err := faraday.NewDepositPart(bad.symbol, bad.valence, 0.5); err == nil {
			t.Errorf("a part of %s of valence %d is taken", bad.symbol, bad.valence)
		}
	}
}

func TestPropertyCheckDensity(t *testing.T) {
	const gcc = units.GramPerCubicCentimetre
	for rho, taken := range map[units.Density]bool{19.3 * gcc: true, 16 * gcc: true, 9.7 * gcc: true, 9.6 * gcc: false,
		28.9 * gcc: true, 29 * gcc: false, 1.93 * gcc: false, 0: false, -1: false} {
		if err := faraday.CheckDensity(rho, 19.3*gcc, "Au"); (err == nil) != taken {
			t.Errorf("%v: %v", rho, err)
		}
	}
	if err := faraday.CheckDensity(1*gcc, 0, "Xx"); err != nil {
		t.Errorf("no bulk density is known: %v", err)
	}
}

func ExampleElement_CheckValence() {
	gold, err := faraday.Lookup("Au")
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(gold.CheckValence(3))
	fmt.Println(gold.CheckValence(2))
	// Output:
	// <nil>
	// valence of Au 2: out of range; need 1 or 3
}

func ExampleCheckDensity() {
	fmt.Println(faraday.CheckDensity(1.73*units.GramPerCubicCentimetre, 19.3*units.GramPerCubicCentimetre, "gold"))
	// Output: density of the deposit 1.73 g/cm³: out of range; need half to one and a half times the 19.30 g/cm³ of gold
}
