package faraday_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// agrees reports whether two figures agree to a relative tolerance.
func agrees(got, want, tolerance float64) bool { return math.Abs(got-want) <= tolerance*math.Abs(want) }

// TestPinnedUsualValences pins the valence that is taken when none is given, for
// each metal that the library plates, and the equivalent that follows: M/(n·F).
func TestPinnedUsualValences(t *testing.T) {
	usual := map[string]int{"H": 1, "O": 2, "Al": 3, "Cr": 6, "Mn": 2, "Fe": 2, "Co": 2, "Ni": 2, "Cu": 2, "Zn": 2,
		"Ga": 3,
		"Ge": 4, "As": 3, "Mo": 6, "Ru": 3, "Rh": 3, "Pd": 2, "Ag": 1, "Cd": 2, "In": 3, "Sn": 2, "Sb": 3, "W": 6, "Re": 7,
		"Os": 4, "Ir": 3, "Pt": 4, "Au": 1, "Hg": 2, "Pb": 2, "Bi": 3}
	for _, e := range faraday.Elements() {
		if e.UsualValence() != usual[e.Symbol] {
			t.Errorf("%s: usual valence %d, want %d", e.Symbol, e.UsualValence(), usual[e.Symbol])
		}
		d, err := faraday.NewDeposit(e.Symbol, 0)
		if n := usual[e.Symbol]; n == 0 {
			var v *units.ValueError
			if !errors.As(err, &v) || v.Value != "not given" {
				t.Errorf("%s without a valence: %v, %v", e.Symbol, d, err)
			}
			continue
		} else if e.Density == 0 {
			continue // no deposit without a density
		} else if err != nil || !agrees(float64(d.Equivalent), float64(e.Weight.Value)/(float64(n)*96485.33212), 1e-9) ||
			d.Density != e.Density {
			t.Errorf("%s: %v, %v", e.Symbol, d, err)
		}
	}
}

// TestReferenceDensitiesKnown: only the elements that the table of densities
// prints have one, the others none; the relative uncertainty of a weight is the
// quotient of the two that are printed.
func TestReferenceDensitiesKnown(t *testing.T) {
	printed := map[string]bool{}
	for _, r := range rows(t, "densities.csv") {
		printed[r.Text("symbol")] = true
	}
	for _, e := range faraday.Elements() {
		if (e.Density != 0) != printed[e.Symbol] {
			t.Errorf("%s: density %v, printed: %v", e.Symbol, e.Density, printed[e.Symbol])
		}
		if w := e.Weight; !agrees(w.Relative()*float64(w.Value), float64(w.Uncertainty), 1e-12) {
			t.Errorf("%s: relative uncertainty %v of %v", e.Symbol, w.Relative(), w.Value)
		}
	}
	for symbol, want := range map[string]float64{"Au": 0.000004 / 196.966570, "H": 0.0002 / 1.0080, "Pb": 1.1 / 207.2} {
		if e, err := faraday.Lookup(symbol); err != nil || !agrees(e.Weight.Relative(), want, 1e-9) {
			t.Errorf("%s: %v, %v, want %v", symbol, e.Weight.Relative(), err, want)
		}
	}
}

// TestPropertyBounds holds the ends of the ranges that the comments state: what
// is at an end that counts is taken, the next value is refused.
func TestPropertyBounds(t *testing.T) {
	deposit := func(p ...faraday.DepositPart) error { _, err := faraday.MixedEquivalent(p...); return err }
	silver := func(share float64) faraday.DepositPart {
		return faraday.DepositPart{Molar: 0.1078682, Electrons: 1, Share: units.MassFraction(share)}
	}
	equivalent := func(n int) error { _, err := faraday.NewEquivalent(0.1, n); return err }
	element := func(symbol string, n int) error {
		e, err := faraday.Lookup(symbol)
		if err != nil {
			t.Fatal(err)
		}
		return e.CheckValence(n)
	}
	density := func(rho units.Density) error { return faraday.CheckDensity(rho, 16000, "gold") }
	transfer := func(alpha float64) error {
		_, err := faraday.ButlerVolmer{Exchange: 1, Anodic: alpha, Cathodic: 1, Temperature: 298}.CurrentDensity(0.001)
		return err
	}
	electrons := func(n float64) error {
		_, err := faraday.Valence(0.1, units.Mass(0.1/(n*96485.33212)), 1, 1)
		return err
	}
	formula := func(text string) error { _, err := faraday.ParseFormula(text); return err }
	for _, c := range []struct {
		what string
		err  error
		ok   bool
	}{
		{"shares of 1 + 0.9e-6", deposit(silver(0.4+0.9e-6), silver(0.6)), true},
		{"shares of 1 + 1.1e-6", deposit(silver(0.4+1.1e-6), silver(0.6)), false},
		{"shares of 1 - 0.9e-6", deposit(silver(0.4-0.9e-6), silver(0.6)), true},
		{"shares of 1 - 1.1e-6", deposit(silver(0.4-1.1e-6), silver(0.6)), false},
		{"1 electron", equivalent(1), true}, {"8 electrons", equivalent(8), true},
		{"0 electrons", equivalent(0), false}, {"9 electrons", equivalent(9), false},
		{"argon, 8", element("Ar", 8), true}, {"argon, 1", element("Ar", 1), true}, {"argon, 9", element("Ar", 9), false},
		{"half the bulk density", density(8000), false}, {"more than half", density(8000.1), true},
		{"one and a half times", density(24000), false}, {"less than that", density(23999.9), true},
		{"transfer coefficient of 10", transfer(10), true}, {"of 10.001", transfer(10.001), false}, {"of 0", transfer(0),
			false},
		{"8 electrons found", electrons(8.4), true}, {"9 electrons found", electrons(8.6), false},
		{"11 electrons found", electrons(11), false},
		{"1 electron found", electrons(0.6), true}, {"none found", electrons(0.4), false},
		{"six decimals", formula("CaSO4·0.512345H2O"), true}, {"seven decimals", formula("CaSO4·0.5123456H2O"), false},
		{"200 characters", formula(strings.Repeat("Na", 100)), true}, {"201", formula(strings.Repeat("Na", 100) + "C"),
			false},
		{"a count of 9999", formula("Na9999"), true}, {"of 10000", formula("Na10000"), false},
		{"lowered nine", formula("Na₉"), true}, {"spaces in front", formula("  NaCl"), true},
	} {
		if (c.err == nil) != c.ok {
			t.Errorf("%s: %v", c.what, c.err)
		}
	}
	// A valence fits within 5 %, and only from 1 to 8.
	gold, err := faraday.Lookup("Au")
	if err != nil {
		t.Fatal(err)
	}
	for n := 1; n <= 20; n++ {
		eq := float64(gold.Weight.Value) / (float64(n) * 96485.33212)
		want := n
		if n > 8 {
			want = 0
		}
		for factor, w := range map[float64]int{1: want, 1.045: want, 0.955: want} {
			if got := faraday.FittingValence("Au", units.Equivalent(eq*factor)); got != w && n != 9 {
				t.Errorf("equivalent of %d electrons times %v: %d", n, factor, got)
			}
		}
		if n <= 8 {
			if got := faraday.FittingValence("Au", units.Equivalent(eq*1.055)); got != 0 {
				t.Errorf("5.5 %% beside %d electrons: %d", n, got)
			}
		}
	}
	if n := faraday.FittingValence("Au", -1); n != 0 {
		t.Errorf("negative equivalent: %d", n)
	}
}

// TestIndependentOxygen: four moles of electrons free one mole of oxygen, of
// twice the atomic weight, in the volume of an ideal gas.
func TestIndependentOxygen(t *testing.T) {
	g, err := faraday.Oxygen(4*96485.33212, 298.15, 101325)
	if err != nil {
		t.Fatal(err)
	}
	if !agrees(float64(g.Amount), 1, 1e-9) || !agrees(float64(g.Mass), 2*0.015999, 1e-9) ||
		!agrees(float64(g.Volume), 8.314462618*298.15/101325, 1e-9) {
		t.Errorf("%+v", g)
	}
}

// TestIndependentKineticsFarOut: where the quotient of current densities leaves
// float64, the overpotential is that of the line next to zero, or of one branch.
func TestIndependentKineticsFarOut(t *testing.T) {
	const volt = 8.314462618 * 300 / 96485.33212 // RT/F
	for _, c := range []struct {
		a, c, j, j0, want float64
	}{
		{2e-20, 1e-20, 1e-300, 1e25, 1e-300 / 3e-20 / 1e25 * volt},
		{2e-20, 1e-20, -1e-300, 1e25, -1e-300 / 3e-20 / 1e25 * volt},
		{0.5, 0.4, 1e200, 10, 199 * math.Ln10 / 0.5 * volt},
		{0.5, 0.4, -1e200, 10, -199 * math.Ln10 / 0.4 * volt},
		{0.5, 0.4, 1e300, 1e-100, 400 * math.Ln10 / 0.5 * volt},
		{0.5, 0.4, 1e-18, 1, 1e-18 / 0.9 * volt},
	} {
		b := faraday.ButlerVolmer{Exchange: units.CurrentDensity(c.j0), Anodic: c.a, Cathodic: c.c, Temperature: 300}
		if eta, err := b.Overpotential(units.CurrentDensity(c.j)); err != nil || !agrees(float64(eta), c.want, 1e-9) {
			t.Errorf("%+v: %v, %v", c, float64(eta), err)
		}
	}
	line := faraday.Tafel{Exchange: 1e-200, Slope: -0.1}
	if eta, err := line.Overpotential(-1e200); err != nil || !agrees(float64(eta), -40, 1e-12) {
		t.Errorf("cathode: %v, %v", float64(eta), err)
	}
	// Far below the limit the loss is the straight -R·T·j/(n·F·jL).
	for _, share := range []float64{1e-18, 1e-9, 1e-4} {
		want := -volt / 2 * (share + share*share/2)
		if eta, err := faraday.ConcentrationOverpotential(units.CurrentDensity(40*share), 40, 2, 300); err != nil ||
			!agrees(float64(eta), want, 1e-7) {
			t.Errorf("%g of the limit: %v, %v, want %v", share, float64(eta), err, want)
		}
	}
}

// TestPropertyGapWidth: a step that is longer than the largest by less than a
// billionth is none, of whatever length and sign of the clock.
func TestPropertyGapWidth(t *testing.T) {
	for _, c := range []struct {
		start, step, over float64
		gaps              int
	}{
		{0, 100, 5e-8, 0}, {0, 100, 5e-7, 1}, {0, 1e-3, 5e-13, 0}, {0, 1e-3, 1e-11, 1},
		{-1e9, 1, 2e-7, 0}, {-1e9, 1, 2e-6, 1}, {1e9, 1, 2e-7, 0}, {-1, 1, 2e-9, 1}, {-1e9, 1e9, 0.5, 0},
	} {
		log, err := faraday.IntegrateLog([]faraday.CurrentReading{{At: units.Duration(c.start), Current: 1},
			{At: units.Duration(c.start + c.step + c.over), Current: 1}}, units.Duration(c.step))
		if err != nil || len(log.Gaps) != c.gaps {
			t.Errorf("%+v: %d gaps, %v", c, len(log.Gaps), err)
		}
	}
}

// TestPropertyTafelPointsNamed: an error of a fit names the point and the figure.
func TestPropertyTafelPointsNamed(t *testing.T) {
	good := faraday.TafelPoint{Overpotential: 0.15, CurrentDensity: 2}
	for field, p := range map[string][]faraday.TafelPoint{
		"current density of point 2": {good, {Overpotential: 0.2, CurrentDensity: -6}, good},
		"overpotential of point 3":   {good, good, {Overpotential: -0.2, CurrentDensity: -6}},
		"overpotentials":             {good, good, good},
	} {
		var v *units.ValueError
		if _, err := faraday.TafelFit(p); !errors.As(err, &v) || v.Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
}
