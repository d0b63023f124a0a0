package alloys_test

import (
	"math"
	"math/rand"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

func gcm3(rho units.Density) float64 { return float64(rho / units.GramPerCubicCentimetre) }

// The mixing rule printed as a recipe, and exercises that turn it round: [MixingRule].
func TestReferenceMixingRule(t *testing.T) {
	checked(t, "alloydensity.csv", func(t *testing.T, row testdata.Row) float64 {
		o := rowDensities(row)
		switch row.Text("check") {
		case "density_g_cm3":
			return gcm3(must(alloys.Density(auAgCu(t, row), o))(t).Value)
		case "volume_cm3_per_kg":
			if row.Float("au") == 0 { // one step of the recipe: the silver of a kilogram alone
				v := must(units.Mass(row.Float("ag") * 1e-3).AtDensity(o.Elements["Ag"]))(t)
				return float64(v / units.CubicCentimetre)
			}
			v := must(units.Kilogram.AtDensity(must(alloys.Density(auAgCu(t, row), o))(t).Value))(t)
			return float64(v / units.CubicCentimetre)
		}
		mass := units.Mass(row.Float("mass_g")) * units.Gram
		rho := must(mass.PerVolume(units.Volume(row.Float("volume_cm3")) * units.CubicCentimetre))(t)
		a := must(alloys.ShareFromDensity("Au", "Ag", rho, o))(t)
		if !(a.Low < a.Share && a.Share < a.High) {
			t.Errorf("share %v is not within %v to %v", a.Share, a.Low, a.High)
		}
		steps, err := alloys.ShareFromDensityWorking("Au", "Ag", rho, o)
		recompute(t, steps, err)
		switch row.Text("check") {
		case "gold_percent_from_density":
			return float64(a.Share) * 100
		case "karat_from_density":
			return float64(alloys.NewFineness(a.Share).Karat())
		case "gold_g_from_density":
			return float64(mass/units.Gram) * float64(a.Share)
		}
		t.Fatalf("unknown check %s", row.Text("check"))
		return 0
	})
}

// Computed coin densities: [CoinDensity]; measured ones: [MetallurgyOfGold],
// [GoldCopperDensity].
func TestReferenceBinaryDensities(t *testing.T) {
	for _, file := range []string{"coindensity.csv", "goldsilverdensity.csv", "goldcopperdensity.csv"} {
		checked(t, file, func(t *testing.T, row testdata.Row) float64 {
			return gcm3(must(alloys.Density(auAgCu(t, row), rowDensities(row)))(t).Value)
		})
	}
}

// The stated uncertainty must cover what was measured, also with this
// library's own element densities: [MetallurgyOfGold], [GoldCopperDensity].
func TestReferenceStatedUncertainty(t *testing.T) {
	for _, file := range []string{"goldsilverdensity.csv", "goldcopperdensity.csv"} {
		for _, row := range rows(t, file) {
			d := must(alloys.Density(auAgCu(t, row), alloys.DensityOptions{}))(t)
			measured := units.Density(row.Float("expected")) * units.GramPerCubicCentimetre
			if covered := d.Low() <= measured && measured <= d.High(); covered == row.Misprint() {
				t.Errorf("%s: measured %v, stated %v to %v", row.Name(), measured, d.Low(), d.High())
			}
		}
	}
}

// Printed ranges of named alloys: a usual composition of the name lies within
// the range, widened by the stated uncertainty: [NamedAlloyDensity].
func TestReferenceNamedRanges(t *testing.T) {
	usual := map[string]string{
		"gold 585": "Au 585, Ag 207.5, Cu rest", "9 ct": "Au 375, Ag 100, Zn 75, Cu rest",
		"14 ct":        "Au 585, Ag 207.5, Cu rest",
		"18 ct yellow": "Au 750, Ag 125, Cu rest", "18 ct white": "Au 750, Pd 100, Ag 105, Cu 25, Ni rest",
		"22 ct": "Au 916.67, Ag 55, Cu rest", "sterling silver": "Ag 925, Cu rest",
	}
	for _, row := range rows(t, "namedalloydensity.csv") {
		printed := units.Density(row.Float("expected")) * units.GramPerCubicCentimetre
		tol := units.Density(row.Tolerance(row.Float("expected"))) * units.GramPerCubicCentimetre
		text, found := usual[row.Text("name")]
		if !found {
			continue // printed without composition: nothing to compute it from
		}
		d := must(alloys.Density(parse(t, text), alloys.DensityOptions{}))(t)
		switch row.Text("check") {
		case "density_floor_g_cm3":
			if d.High() < printed-tol {
				t.Errorf("%s: %v to %v lies under the range", row.Name(), d.Low(), d.High())
			}
		case "density_ceiling_g_cm3":
			if d.Low() > printed+tol {
				t.Errorf("%s: %v to %v lies over the range", row.Name(), d.Low(), d.High())
			}
		}
	}
}

// Hard gold is lighter than its metals: mixing must not be believed for it,
// and 19.3 must be right for pure gold: [GoldBulletinDeposits1986].
func TestReferenceDeposits(t *testing.T) {
	hard := parse(t, "Au 997.5, Co 2.5")
	for _, row := range rows(t, "deposits.csv") {
		printed := row.Float("expected")
		switch row.Text("id") {
		case "pure":
			if err := row.Check(gcm3(must(alloys.Density(parse(t, "Au 1000"), alloys.DensityOptions{}))(
				t).Value)); err != nil {
				t.Error(err)
			}
		case "hard-low", "hard-high":
			d := must(alloys.Density(hard, alloys.DensityOptions{}))(t)
			if gcm3(d.Low()) < printed*1.1 {
				t.Errorf("%s: mixing gives %v, the print %v", row.Name(), d.Value, printed)
			}
			own := must(alloys.Density(hard,
				alloys.DensityOptions{Measured: units.Density(printed) * units.GramPerCubicCentimetre,
					MeasuredRelative: 0.03}))(t)
			if !own.Measured || gcm3(own.Value) != printed || own.Relative != 0.03 {
				t.Errorf("a measured density did not override: %+v", own)
			}
		case "base-metal":
			if err := row.Check(float64(hard.Share("Co")) * 100); err != nil {
				t.Error(err)
			}
		case "carbon-cobalt":
			d := must(alloys.DepositFromMasses(units.Mass(printed)*units.Milligram, alloys.MassPart{Symbol: "Au",
				Mass: units.Gram}))(t)
			f := must(d.Fineness("Au"))(t)
			perGram := 1000 * (1000/float64(f) - 1) // non-metal in mg per g of gold, from the fineness alone
			if err := row.Check(perGram); err != nil {
				t.Error(err)
			}
		}
	}
}

// The textbook form of the rule for two metals, ρ = ρa ρb / (wa ρb + wb ρa).
func TestIndependentTwoMetals(t *testing.T) {
	gold, copper := must(faraday.Lookup("Au"))(t).Density, must(faraday.Lookup("Cu"))(t).Density
	for w := 0.0; w <= 1; w += 0.125 {
		c := must(alloys.NewComposition(alloys.ElementShare{Symbol: "Au", Share: units.MassFraction(w)},
			alloys.ElementShare{Symbol: "Cu", Share: units.MassFraction(1 - w)}))(t)
		want := float64(gold) * float64(copper) / (w*float64(copper) + (1-w)*float64(gold))
		d := must(alloys.Density(c, alloys.DensityOptions{}))(t)
		near(t, c.String(), float64(d.Value), want, 1e-13)
		a := must(alloys.ShareFromDensity("Au", "Cu", d.Value, alloys.DensityOptions{}))(t)
		b := must(alloys.ShareFromDensity("Cu", "Au", d.Value, alloys.DensityOptions{}))(t)
		if math.Abs(float64(a.Share)-w) > 1e-12 || math.Abs(float64(a.Share+b.Share)-1) > 1e-12 {
			t.Errorf("share %v back as %v and %v", w, a.Share, b.Share)
		}
	}
}

func TestPropertyDensityBetweenItsMetals(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for i := 0; i < 500; i++ {
		c := random(t, r)
		low, high := math.Inf(1), 0.0
		for _, p := range c.Parts() {
			rho := float64(must(faraday.Lookup(p.Symbol))(t).Density)
			low, high = math.Min(low, rho), math.Max(high, rho)
		}
		d := must(alloys.Density(c, alloys.DensityOptions{}))(t)
		if v := float64(d.Value); v < low*(1-2e-6) || v > high*(1+2e-6) {
			t.Errorf("%s: %v is not between %v and %v", c, v, low, high)
		}
		if d.Low() >= d.Value || d.High() <= d.Value || d.Measured {
			t.Errorf("%s: %+v", c, d)
		}
		steps, err := alloys.DensityWorking(c, alloys.DensityOptions{})
		recompute(t, steps, err)
	}
}

func TestPinnedSystems(t *testing.T) {
	for text, want := range map[string]units.Ratio{
		"Au 1000": 0.005, "Au 997, Co 3": 0.005, "Au 750, Ag 250": 0.01, "Ag 925, Cu 75": 0.01, "Au 900, Cu 100": 0.015,
		"Au 750, Ag 125, Cu 125": 0.015,
		"Au 750, Ni 250":         0.03, "Au 750, Pd 150, Ag 100": 0.03, "Au 750, Pt 250": 0.05, "Au 994, Co 6": 0.05,
	} {
		if d := must(alloys.Density(parse(t, text), alloys.DensityOptions{}))(t); d.Relative != want {
			t.Errorf("%s: %v (%s), want %v", text, d.Relative, d.System, want)
		}
	}
}

func TestBadDensity(t *testing.T) {
	gold := parse(t, "Au 1000")
	_, err := alloys.Density(alloys.Composition{}, alloys.DensityOptions{})
	isError(t, "no composition", err, units.ErrNotPositive)
	for _, v := range badNumbers {
		if _, err := alloys.Density(gold, alloys.DensityOptions{Measured: units.Density(v)}); err == nil {
			t.Errorf("measured density %v", v)
		}
		if _, err := alloys.Density(gold, alloys.DensityOptions{Measured: 17000,
			MeasuredRelative: units.Ratio(v)}); err == nil {
			t.Errorf("uncertainty %v", v)
		}
		if _, err := alloys.Density(gold,
			alloys.DensityOptions{Elements: map[string]units.Density{"Au": units.Density(v)}}); err == nil {
			t.Errorf("element density %v", v)
		}
		if _, err := alloys.ShareFromDensity("Au", "Ag", units.Density(v), alloys.DensityOptions{}); err == nil {
			t.Errorf("share from density %v", v)
		}
	}
	if _, err := alloys.Density(gold,
		alloys.DensityOptions{Elements: map[string]units.Density{"au": 19300}}); err == nil ||
		!strings.Contains(err.Error(), "Au") {
		t.Errorf("misspelt element: %v", err)
	}
	_, err = alloys.Density(parse(t, "Ni 900, P 100"), alloys.DensityOptions{})
	isError(t, "no density for phosphorus", err, units.ErrNotPositive)
	_, err = alloys.Density(parse(t, "Au 1000"),
		alloys.DensityOptions{Elements: map[string]units.Density{"Au": math.SmallestNonzeroFloat64}})
	isError(t, "density too small to divide by", err, units.ErrNotPositive)
	_, err = alloys.ShareFromDensity("Au", "Au", 15000, alloys.DensityOptions{})
	isError(t, "one metal twice", err, units.ErrInconsistent)
	_, err = alloys.ShareFromDensity("Au", "W", 19300, alloys.DensityOptions{})
	isError(t, "one density", err, units.ErrInconsistent)
	_, err = alloys.ShareFromDensity("Au", "Ag", 20000, alloys.DensityOptions{})
	isError(t, "denser than gold", err, units.ErrOutOfRange)
	if _, err = alloys.ShareFromDensity("Au", "Xx", 15000, alloys.DensityOptions{}); err == nil {
		t.Error("unknown second metal")
	}
	if _, err = alloys.ShareFromDensity("Xx", "Au", 15000, alloys.DensityOptions{}); err == nil {
		t.Error("unknown first metal")
	}
}
