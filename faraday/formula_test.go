package faraday_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Molar masses and metal contents as printed by open pages, each row with its
// own tolerance: [SaltsPrinted].
func TestReferenceSaltsPrinted(t *testing.T) { checkSalts(t, "salts.csv") }

// The same for fifty plating salts, computed apart from this library:
// [SaltsComputed]. It checks the reading and the sums.
func TestIndependentSaltsComputed(t *testing.T) { checkSalts(t, "saltscomputed.csv") }

func checkSalts(t *testing.T, file string) {
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	for _, row := range table.Rows {
		t.Run(row.Name(), func(t *testing.T) {
			f := mustFormula(t, row.Text("formula"))
			var got float64
			switch row.Text("check") {
			case "molar_mass":
				got = f.MolarMass().In(units.GramPerMole)
			case "percent":
				var w units.MassFraction
				var err error
				if _, unknown := faraday.Lookup(row.Text("metal")); unknown == nil {
					w, err = faraday.MetalContent(f, row.Text("metal"))
				} else { // CN is no metal
					w, err = f.MassFractionOf(mustFormula(t, row.Text("metal")))
				}
				if err != nil {
					t.Fatal(err)
				}
				got = 100 * float64(w)
			default:
				t.Fatalf("unknown check %q", row.Text("check"))
			}
			if err := row.Check(got); err != nil {
				t.Error(err)
			}
		})
	}
}

// Counts by hand.
func TestIndependentFormulaCounts(t *testing.T) {
	for _, c := range []struct {
		text, normal string
		counts       map[string]float64
	}{
		{"KAu(CN)2", "KAu(CN)2", map[string]float64{"K": 1, "Au": 1, "C": 2, "N": 2}},
		{"K[Au(CN)2]", "K[Au(CN)2]", map[string]float64{"K": 1, "Au": 1, "C": 2, "N": 2}},
		{"KAu(CN)₂", "KAu(CN)2", map[string]float64{"C": 2}},
		{"NiSO₄·6H₂O", "NiSO4·6H2O", map[string]float64{"Ni": 1, "S": 1, "O": 10, "H": 12}},
		{"NiSO4.6H2O", "NiSO4·6H2O", map[string]float64{"O": 10}},
		{"NiSO4*6H2O", "NiSO4·6H2O", map[string]float64{"O": 10}},
		{"NiSO4 • 6 H2O", "NiSO4·6H2O", map[string]float64{"O": 10}},
		{"  CuSO4\u00a0· 5H2O\t", "CuSO4·5H2O", map[string]float64{"O": 9, "H": 10}},
		{"CaSO4·0.5H2O", "CaSO4·0.5H2O", map[string]float64{"O": 4.5, "H": 1}},
		{"CaSO4.0.5H2O", "CaSO4·0.5H2O", map[string]float64{"O": 4.5, "H": 1}},
		{"CdSO4·8/3H2O", "CdSO4·8/3H2O", map[string]float64{"O": 4 + 8.0/3, "H": 16.0 / 3}},
		{"3CdSO4·8H2O", "3CdSO4·8H2O", map[string]float64{"Cd": 3, "O": 20, "H": 16}},
		{"2NiCO3·3Ni(OH)2·4H2O", "2NiCO3·3Ni(OH)2·4H2O", map[string]float64{"Ni": 5, "C": 2, "O": 16, "H": 14}},
		{"Pt(NH3)2(NO2)2", "Pt(NH3)2(NO2)2", map[string]float64{"Pt": 1, "N": 4, "H": 6, "O": 4}},
		{"[Co(NH3)6][Cr(C2O4)3]", "[Co(NH3)6][Cr(C2O4)3]", map[string]float64{"N": 6, "H": 18, "C": 6, "O": 12}},
		{"((((((((Au))))))))2", "((((((((Au))))))))2", map[string]float64{"Au": 2}},
		{"Fe4[Fe(CN)6]3", "Fe4[Fe(CN)6]3", map[string]float64{"Fe": 7, "C": 18, "N": 18}},
		{"NaCl1", "NaCl1", map[string]float64{"Na": 1, "Cl": 1}},
		{"Au9999", "Au9999", map[string]float64{"Au": 9999}},
		{"CoSO4", "CoSO4", map[string]float64{"Co": 1, "O": 4}},
		{"COSO4", "COSO4", map[string]float64{"Co": 0, "C": 1, "O": 5}}, // as documented
		{"NaCl·1.5H2O", "NaCl·1.5H2O", map[string]float64{"H": 3}},
	} {
		f := mustFormula(t, c.text)
		if f.String() != c.normal {
			t.Errorf("%q reads as %q, want %q", c.text, f, c.normal)
		}
		for symbol, n := range c.counts {
			chemNear(t, c.text+": atoms of "+symbol, f.Count(symbol), n, 1e-15)
		}
	}
}

func TestParseFormulaErrors(t *testing.T) {
	for _, c := range []struct {
		text   string
		offset int
		reason string // a part of it
	}{
		{"", 0, "no formula"},
		{"   ", 3, "no formula"},
		{"au", 0, "did you mean Au"},
		{"kAu(CN)2", 0, "did you mean K"},
		{"nacl", 0, "did you mean Na"},
		{"NACL", 1, "did you mean Na"},
		{"AU", 0, "did you mean Au"},
		{"KAU(CN)2", 1, "did you mean Au"},
		{"Kcl", 0, "did you mean K"},
		{"Aux", 2, "small 'x'"},
		{"Tc", 0, "no element with a standard atomic weight"},
		{"Qx2", 0, "no element"},
		{"KAu(CN2", 3, "not closed"},
		{"KAuCN)2", 5, "closes nothing"},
		{"K[Au(CN)2", 1, "not closed"},
		{"K[Au(CN)2)", 9, "need ']'"},
		{"K[Au(CN]2", 7, "need ')'"},
		{"Ni()2", 2, "empty brackets"},
		{"Ni[]", 2, "empty brackets"},
		{"Ni0", 2, "count of 0"},
		{"NiCl₀", 4, "count of 0"},
		{"Fe0.95O", 2, "count of 0"},
		{"Cu1.5O", 3, "counts are whole"},
		{"NiCl02", 4, "leading zero"},
		{"Au10000", 2, "over 9999"},
		{"Au99999999999999999999999", 2, "over 9999"},
		{"Au+", 2, "charge"},
		{"[Au(CN)2]-", 9, "charge"},
		{"[Au(CN)2]−", 9, "charge"},
		{"Au⁺", 2, "charge"},
		{"Ni²⁺", 2, "raised"},
		{"NiSO4·", 6, "nothing behind the dot"},
		{"NiSO4.", 6, "nothing behind the dot"},
		{"NiSO4· ·H2O", 7, "nothing behind the dot"},
		{"·H2O", 0, "nothing before the dot"},
		{"NiSO4·6", 7, "a number alone"},
		{"NiSO4·0H2O", 6, "number of zero"},
		{"NiSO4·0.0H2O", 6, "number of zero"},
		{"NiSO4·06H2O", 6, "leading zero"},
		{"NiSO4·8/H2O", 8, "denominator"},
		{"NiSO4·8/0H2O", 8, "count of 0"},
		{"NiSO4·0/3H2O", 6, "fraction of zero"},
		{"NiSO4·½H2O", 6, "0.5 or 1/2"},
		{"CaSO4·0,5H2O", 7, "comma"},
		{"CaSO4·0.1234567H2O", 6, "decimals"},
		{"CaSO4·10000H2O", 6, "over 9999"},
		{"(CuSO4·5H2O)", 6, "dot inside brackets"},
		{"2NaCl", 0, "number before the formula"},
		{"Na Cl", 2, "space inside"},
		{"(Na )Cl", 3, "space inside"},
		{"Na{Cl}", 2, "unexpected '{'"},
		{"(2H)", 1, "needs an element"},
		{"Au\x00", 2, "unexpected"},
		{"Au\xff", 2, "unexpected"},
		{"(((((((((Au)))))))))", 8, "8 deep"},
		{strings.Repeat("H", 201), 200, "too long"},
		{strings.Repeat("é", 100000), 200, "too long"},
	} {
		f, err := faraday.ParseFormula(c.text)
		var e *faraday.FormulaError
		if !errors.As(err, &e) {
			t.Errorf("%.30q: error %v, want a FormulaError", c.text, err)
			continue
		}
		if e.Offset != c.offset || !strings.Contains(e.Reason, c.reason) {
			t.Errorf("%.30q: at %d: %s; want at %d: …%s…", c.text, e.Offset, e.Reason, c.offset, c.reason)
		}
		if !f.IsZero() || len([]rune(e.Text)) > 200 || !strings.Contains(err.Error(), fmt.Sprintf("character %d", c.offset+
			1)) {
			t.Errorf("%.30q: formula %v with error %v", c.text, f, err)
		}
	}
	if _, err := faraday.ParseFormula(strings.Repeat("H", 200)); err != nil {
		t.Errorf("200 characters: %v", err)
	}
}

func TestPropertyFormula(t *testing.T) {
	// The shares of all elements sum to one; the molar mass is that of the parts.
	for _, text := range []string{"KAu(CN)2", "NiSO4·6H2O", "CdSO4·8/3H2O", "Rh2(SO4)3", "H2PtCl6·6H2O"} {
		f := mustFormula(t, text)
		var sum, mass float64
		for _, e := range f.Elements() {
			w, err := f.MassFraction(e.Symbol)
			if err != nil {
				t.Fatal(err)
			}
			sum += float64(w)
			mass += f.Count(e.Symbol) * float64(e.Weight.Value)
		}
		chemNear(t, text+": sum of shares", sum, 1, 1e-14)
		chemNear(t, text+": molar mass", mass, float64(f.MolarMass()), 1e-14)
	}
	a, b := mustFormula(t, "3CdSO4·8H2O"), mustFormula(t, "CdSO4·8/3H2O")
	chemNear(t, "three units", float64(a.MolarMass()), 3*float64(b.MolarMass()), 1e-14)
	water := mustFormula(t, "NiSO4").MolarMass() + 6*mustFormula(t, "H2O").MolarMass()
	chemNear(t, "hydrate", mustFormula(t, "NiSO4·6H2O").MolarMass(), water, 1e-14)
	if a.Equal(b) || !a.Equal(mustFormula(t, "3 CdSO₄.8H2O")) {
		t.Error("Equal does not tell formulas apart by their text")
	}
	// What the caller gets is a copy.
	list := a.Elements()
	list[0].Symbol = "Xx"
	if a.Elements()[0].Symbol != "Cd" {
		t.Error("a formula can be changed through Elements")
	}
	// The share of water and the share of its atoms in the whole.
	w, err := mustFormula(t, "CuSO4·5H2O").MassFractionOf(mustFormula(t, "H2O"))
	if err != nil {
		t.Fatal(err)
	}
	dry := mustFormula(t, "CuSO4").MolarMass() / mustFormula(t, "CuSO4·5H2O").MolarMass()
	chemNear(t, "water", float64(w), 1-float64(dry), 1e-14)
}

// The uncertainty of AuCl3 by hand: 0.000004 for Au, three times 0.01 for Cl,
// over √3; of Zn 0.02/√3.
func TestIndependentMolarMassUncertainty(t *testing.T) {
	want := math.Sqrt((0.000004*0.000004 + 0.03*0.03) / 3)
	chemNear(t, "u(AuCl3)", mustFormula(t, "AuCl3").MolarMassUncertainty().In(units.GramPerMole), want, 1e-12)
	chemNear(t, "u(Zn)", mustFormula(t, "Zn").MolarMassUncertainty().In(units.GramPerMole), 0.02/math.Sqrt(3), 1e-12)
	// The same element in two places is one weight, so the counts add first.
	chemNear(t, "u(ZnZn)", mustFormula(t, "ZnZn").MolarMassUncertainty(), mustFormula(t, "Zn2").MolarMassUncertainty(),
		1e-15)
}

func TestMassFractionOf(t *testing.T) {
	for _, c := range []struct {
		formula, group string
		times          float64
	}{
		{"KCN", "CN", 1}, {"K2Cu(CN)3", "CN", 3}, {"K2[Cu(CN)3]", "(CN)", 3}, {"Zn(CN)2", "CN", 2},
		{"CuSO4·5H2O", "H2O", 5}, {"CaSO4·0.5H2O", "H2O", 0.5}, {"Ni(SO3NH2)2·4H2O", "SO3", 2},
		{"Ni(SO3NH2)2·4H2O", "SO3NH2", 2}, {"HAuCl4·3H2O", "H2O", 3}, {"Cu(OH)2·H2O", "OH", 2},
		{"NH4CN", "CN", 1}, {"K[Au(CN)2]", "Au(CN)2", 1}, {"PdCl2", "Cl2", 1}, {"KAu(CN)2", "Au", 1},
		{"Fe4[Fe(CN)6]3", "[Fe(CN)6]", 3}, {"KCNO", "CN", 1}, {"CNCN", "CN", 2}, {"CNCNC", "CNC", 1},
	} {
		f, g := mustFormula(t, c.formula), mustFormula(t, c.group)
		w, err := f.MassFractionOf(g)
		if err != nil {
			t.Errorf("%s in %s: %v", c.group, c.formula, err)
			continue
		}
		chemNear(t, c.group+" in "+c.formula, float64(w), c.times*float64(g.MolarMass())/float64(f.MolarMass()), 1e-14)
	}
	for _, c := range [][2]string{{"(NH4)2C2O4", "CN"}, {"KCN", "NC"}, {"KCN", "Au"}, {"KCN", "CN2"}, {"NiSO4", "H2O"},
		{"KCN", "CN·H2O"}} {
		w, err := mustFormula(t, c[0]).MassFractionOf(mustFormula(t, c[1]))
		if err == nil {
			t.Errorf("%s in %s: %v, want an error", c[1], c[0], w)
		}
		chemTyped(t, c[1]+" in "+c[0], float64(w), err)
	}
	var zero faraday.Formula
	for _, err := range []error{
		second(zero.MassFractionOf(mustFormula(t, "CN"))), second(mustFormula(t, "KCN").MassFractionOf(zero)),
		second(zero.MassFraction("Au")), second(mustFormula(t, "KCN").MassFraction("Xx")),
		second(mustFormula(t, "KCN").MassFraction("")),
	} {
		if err == nil {
			t.Error("the zero Formula or an unknown symbol passes")
		}
		chemTyped(t, "zero", 0, err)
	}
	if zero.MolarMass() != 0 || zero.MolarMassUncertainty() != 0 || zero.Count("Au") != 0 || len(zero.Elements()) != 0 ||
		zero.String() != "" || !zero.IsZero() {
		t.Error("the zero Formula is not empty")
	}
	if w, err := mustFormula(t, "KCN").MassFraction("Au"); w != 0 || err != nil {
		t.Errorf("Au in KCN: %v, %v; want 0", w, err)
	}
}

func second[T any](_ T, err error) error { return err }

func TestFormulaText(t *testing.T) {
	type salt struct{ Formula faraday.Formula }
	b, err := json.Marshal(salt{mustFormula(t, "NiSO4.6H2O")})
	if err != nil || string(b) != `{"Formula":"NiSO4·6H2O"}` {
		t.Fatalf("%s, %v", b, err)
	}
	var back salt
	if err := json.Unmarshal(b, &back); err != nil || back.Formula.Count("O") != 10 {
		t.Errorf("%v, %v", back, err)
	}
	if err := json.Unmarshal([]byte(`{"Formula":"niso4"}`), &back); err == nil || back.Formula.Count("O") != 10 {
		t.Errorf("bad text: %v, %v; want an error and the old value", back, err)
	}
	if err := json.Unmarshal([]byte(`{"Formula":""}`), &back); err != nil || !back.Formula.IsZero() {
		t.Errorf("no text: %v, %v", back, err)
	}
}

func FuzzParseFormula(f *testing.F) {
	for _, s := range []string{"KAu(CN)2", "NiSO4·6H2O", "CaSO4.0.5H2O", "CdSO4 · 8/3 H2O", "2NiCO3·3Ni(OH)2·4H2O",
		"K2[Cu(CN)3]",
		"((Au)2)3", "au", "NACL", "Au+", "Ni()", "Au\xff", "H₂O", "·", "Fe0.95O", "Cu1.5O"} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, text string) {
		a, err := faraday.ParseFormula(text)
		if err != nil {
			var e *faraday.FormulaError
			if !errors.As(err, &e) || e.Offset < 0 || e.Offset > len([]rune(text)) || e.Error() == "" {
				t.Fatalf("%q: %v", text, err)
			}
			return
		}
		b, err := faraday.ParseFormula(a.String())
		if err != nil {
			t.Fatalf("%q reads as %q, which does not read: %v", text, a, err)
		}
		if a.String() != b.String() || a.MolarMass() != b.MolarMass() || len(a.Elements()) != len(b.Elements()) {
			t.Fatalf("%q reads as %q, that as %q", text, a, b)
		}
		for _, e := range a.Elements() {
			if n := a.Count(e.Symbol); n != b.Count(e.Symbol) || !(n > 0) || math.IsInf(n, 0) {
				t.Fatalf("%q: %v atoms of %s, then %v", text, n, e.Symbol, b.Count(e.Symbol))
			}
		}
		if m := a.MolarMass(); !(m > 0) || math.IsInf(float64(m), 0) {
			t.Fatalf("%q: molar mass %v", text, m)
		}
	})
}

func BenchmarkParseFormula(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if _, err := faraday.ParseFormula("Ni(SO3NH2)2·4H2O"); err != nil {
			b.Fatal(err)
		}
	}
}
