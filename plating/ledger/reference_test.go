package ledger_test

import (
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestReferenceWeightedMean holds Combine against a worked example, [WeightedMean].
func TestReferenceWeightedMean(t *testing.T) {
	table := must(testdata.Read("weightedmean.csv"))
	for _, row := range table.Rows {
		est := func(n string) ledger.Estimate {
			return ledger.Estimate{Content: units.MassConcentration(row.Float("x"+n)) * units.GramPerLitre,
				Uncertainty: units.MassConcentration(row.Float("u"+n)) * units.GramPerLitre}
		}
		two, _, err := ledger.Combine(est("1"), est("2"))
		if err != nil {
			t.Fatal(err)
		}
		all, _, err := ledger.Combine(two, est("3"))
		if err != nil {
			t.Fatal(err)
		}
		got := all.Content.In(units.GramPerLitre)
		if row.Text("check") == "spread" {
			got = all.Uncertainty.In(units.GramPerLitre)
		}
		if err := row.Check(got); err != nil {
			t.Error(err)
		}
	}
}

// TestReferenceSalts: the salt for 100 g of metal against printed metal contents, [SaltsPrinted].
func TestReferenceSalts(t *testing.T) {
	n := 0
	for _, row := range must(testdata.Read("salts.csv")).Rows {
		if row.Text("check") != "percent" || row.Skip() {
			continue
		}
		n++
		r, err := ledger.Replenish(ledger.Need{Volume: units.Litre, Mark: units.Litre, Target: 100 * units.GramPerLitre},
			row.Text("metal"), formula(row.Text("formula")))
		if err != nil {
			t.Fatal(row.Name(), err)
		}
		if err := row.Check(100 * 100 / r.SaltMass.In(units.Gram)); err != nil {
			t.Error(err)
		}
	}
	if n < 4 {
		t.Errorf("only %d rows", n)
	}
}

// TestReferenceRates: the metal a bath gives for an ampere-hour at 100 % against
// the printed grams, [EqTutorial].
func TestReferenceRates(t *testing.T) {
	n := 0
	for _, row := range must(testdata.Read("eqtutorial.csv")).Rows {
		if row.Text("check") != "g_per_Ah" || row.Skip() {
			continue
		}
		b := goldBath()
		b.Name, b.Metal, b.Fine, b.Salts = row.Text("metal"), row.Text("metal"), 0, nil
		b.Equivalent = must(faraday.NewEquivalent(units.MolarMass(row.Float("atomic_weight"))*units.GramPerMole,
			int(row.Float("valence"))))
		b.Efficiency = ledger.EfficiencyRange{Value: 1}
		if row.Text("metal") == "Au" && row.Text("valence") == "2" { // printed, and no bath has it
			if _, err := b.Rates(); err == nil {
				t.Error("gold of valence 2 is taken")
			}
			continue
		}
		rates, err := b.Rates()
		if err != nil {
			t.Fatal(row.Name(), err)
		}
		n++
		if err := row.Check(rates.Deposit.In(units.GramPerAmpereHour)); err != nil {
			t.Error(err)
		}
	}
	if n < 10 {
		t.Errorf("only %d rows", n)
	}
}
