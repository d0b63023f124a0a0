package faraday_test

import (
	"errors"
	"strconv"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
)

// Every row of Appendix L that stands here, and the gold cyanide couple:
// [OpenStaxChem2e], [GeneralChemistry9].
func TestReferencePotentials(t *testing.T) {
	seen := map[string]bool{}
	for _, file := range []string{"potentials.csv", "goldcyanidepotential.csv"} {
		table, err := testdata.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range table.Rows {
			t.Run(row.Name(), func(t *testing.T) {
				c, err := faraday.StandardPotential(row.Text("couple"))
				if err != nil {
					t.Fatal(err)
				}
				seen[c.Name] = true
				chemWithin(t, "potential", float64(c.Potential), row.Float("potential_V"), row.Float("tol")*1e-6)
				if float64(c.Electrons) != row.Float("electrons") || c.Metal != row.Text("metal") {
					t.Errorf("%d electrons of %s, want %s of %s", c.Electrons, c.Metal, row.Text("electrons"), row.Text("metal"))
				}
				chemWithin(t, "resolution", float64(c.Resolution)/2, row.Float("tol"), 1e-9)
				if c.Source != table.Header["key"] && row.Text("couple") != "[Zn(CN)4]2-/Zn" {
					t.Errorf("source %s, want %s", c.Source, table.Header["key"])
				}
			})
		}
	}
	if len(seen) != len(faraday.Couples()) {
		t.Errorf("%d couples are checked, there are %d", len(seen), len(faraday.Couples()))
	}
}

// Every reaction balances in atoms and in charge, turns as many electrons as it
// says, and its name holds its first and its last form.
func TestPropertyReactionsBalance(t *testing.T) {
	names := map[string]bool{}
	for _, c := range faraday.Couples() {
		left, right, found := strings.Cut(c.Reaction, " = ")
		if !found || names[c.Name] {
			t.Errorf("%s: no equals sign, or the name stands twice", c.Name)
			continue
		}
		names[c.Name] = true
		atoms := map[string]float64{}
		charge, electrons := 0.0, 0.0
		for i, side := range []string{left, right} {
			sign := 1 - 2*float64(i)
			for _, term := range strings.Split(side, " + ") {
				n, species := 1.0, term
				if number, rest, found := strings.Cut(term, " "); found {
					n, _ = strconv.ParseFloat(number, 64)
					species = rest
				}
				if species == "e-" {
					electrons += n
					charge -= sign * n
					continue
				}
				formula, z := chemCharge(species)
				charge += sign * n * z
				f := mustFormula(t, formula)
				for _, e := range f.Elements() {
					atoms[e.Symbol] += sign * n * f.Count(e.Symbol)
				}
			}
		}
		if charge != 0 || electrons != float64(c.Electrons) {
			t.Errorf("%s: charge left over %v, electrons %v", c.Reaction, charge, electrons)
		}
		for symbol, n := range atoms {
			if n != 0 {
				t.Errorf("%s: %v %s too many on the left", c.Reaction, n, symbol)
			}
		}
		if _, on := atoms[c.Metal]; !on {
			t.Errorf("%s: no %s in it", c.Reaction, c.Metal)
		}
		oxidised, reduced, _ := strings.Cut(c.Name, "/")
		if !strings.Contains(left, oxidised) || !strings.Contains(right, reduced) {
			t.Errorf("%s does not name %s", c.Name, c.Reaction)
		}
	}
}

// chemCharge cuts the charge off an ion: Cu2+ is Cu and 2, [Zn(CN)4]2- is
// [Zn(CN)4] and -2, NH4+ would be NH4 and 1 (only ions of one atom or in
// brackets have a number before the sign).
func chemCharge(species string) (string, float64) {
	sign := map[byte]float64{'+': 1, '-': -1}[species[len(species)-1]]
	if sign == 0 {
		return species, 0
	}
	body := species[:len(species)-1]
	last := body[len(body)-1]
	if last >= '2' && last <= '9' && !strings.ContainsAny(body[:len(body)-1], "0123456789") ||
		strings.HasSuffix(body[:len(body)-1], "]") {
		return body[:len(body)-1], sign * float64(last-'0')
	}
	return body, sign
}

func TestStandardPotentialErrors(t *testing.T) {
	for _, c := range []struct{ name, hint string }{
		{"", "Couples"}, {"Au", "[Au(CN)2]-/Au"}, {"au+/au", "Couples"}, {"Au2+/Au", "Au3+/Au"}, {"[Ni(CN)4]2-/Ni",
			"Ni2+/Ni"},
		{"Xx", "Couples"}, {strings.Repeat("é", 1000), "Couples"}, {"\xff\x00", "Couples"},
	} {
		got, err := faraday.StandardPotential(c.name)
		var e *faraday.CoupleError
		if !errors.As(err, &e) || e.Name != c.name || got.Name != "" {
			t.Errorf("%.20q: %v, %v", c.name, got, err)
			continue
		}
		if !strings.Contains(err.Error(), c.hint) || len(err.Error()) > 400 {
			t.Errorf("%.20q: %v; want a hint at %s", c.name, err, c.hint)
		}
	}
	if c, err := faraday.StandardPotential(" Ni2+ / Ni "); err != nil || c.Metal != "Ni" {
		t.Errorf("spaces: %v, %v", c, err)
	}
	list := faraday.Couples()
	list[0].Potential = 9
	if faraday.Couples()[0].Potential == 9 {
		t.Error("the table can be changed through Couples")
	}
}
