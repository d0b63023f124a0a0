package faraday_test

import (
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// rows reads the rows of a table that can be checked.
func rows(t *testing.T, file string) []testdata.Row {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	var list []testdata.Row
	for _, r := range table.Rows {
		if !r.Skip() {
			list = append(list, r)
		}
	}
	return list
}

// equivalent builds the equivalent that a row's own constants give: its molar
// mass, valence and Faraday constant, or the equivalent it prints.
func equivalent(t *testing.T, r testdata.Row) units.Equivalent {
	t.Helper()
	if r.Has("equivalent_kg_C") {
		return units.Equivalent(r.Float("equivalent_kg_C"))
	}
	weight := r.FloatOr("molar_mass", r.FloatOr("atomic_weight", 0)) * float64(units.GramPerMole)
	if weight == 0 {
		e, err := faraday.Lookup(r.Text("metal"))
		if err != nil {
			t.Fatal(err)
		}
		weight = float64(e.Weight.Value)
	}
	eq, err := faraday.NewEquivalent(units.MolarMass(weight), int(r.FloatOr("valence", 0)))
	if err != nil {
		t.Fatalf("%s: %v", r.Name(), err)
	}
	if r.Has("faraday_C_mol") { // the source's rounding of F
		eq = units.Equivalent(float64(eq) * faraday.FaradayConstant / r.Float("faraday_C_mol"))
	}
	return eq
}

// TestReferenceEquivalents holds the electrochemical equivalents against three
// printed tables, each with its own atomic weights and densities.
func TestReferenceEquivalents(t *testing.T) {
	for _, file := range []string{"eqhandbook.csv", "eqtutorial.csv", "eqencyclopaedia.csv"} {
		for _, r := range rows(t, file) {
			d := faraday.Deposit{Equivalent: equivalent(t, r), Density: units.Density(r.FloatOr("density_g_cm3", 1) * 1000)}
			trade, err := d.Trade()
			if err != nil {
				t.Errorf("%s: %v", r.Name(), err)
				continue
			}
			got, known := map[string]float64{
				"mg_per_C": trade.MilligramPerCoulomb, "g_per_Ah": trade.GramPerAmpereHour,
				"um_per_Amin_dm2": trade.MicrometrePerAmpereMinuteSquareDecimetre, "kg_per_C": float64(d.Equivalent),
			}[r.Text("check")]
			if !known {
				t.Errorf("%s: unknown check %q", r.Name(), r.Text("check"))
			} else if err := r.Check(got); err != nil {
				t.Error(err)
			}
		}
	}
}

// TestReferenceMinutes holds plating times against two printed tables.
func TestReferenceMinutes(t *testing.T) {
	for _, file := range []string{"minutes10um.csv", "nickelminutes.csv"} {
		for _, r := range rows(t, file) {
			d := faraday.Deposit{Equivalent: equivalent(t, r), Density: units.Density(r.Float("density_g_cm3") * 1000)}
			eff := units.Efficiency(r.FloatOr("efficiency", 1))
			s := units.Length(r.Float("thickness_um")) * units.Micrometre
			var got float64
			switch r.Text("check") {
			case "time_min":
				j := units.CurrentDensity(r.Float("j_A_dm2")) * units.AmperePerSquareDecimetre
				v, err := d.TimeFor(s, j, eff)
				if err != nil {
					t.Fatalf("%s: %v", r.Name(), err)
				}
				got = v.In(units.Minute)
			case "g_per_dm2":
				m, err := d.MassFor(s, units.SquareDecimetre)
				if err != nil {
					t.Fatalf("%s: %v", r.Name(), err)
				}
				got = m.In(units.Gram)
			case "Ah_per_dm2":
				q, err := d.ChargeFor(s, units.SquareDecimetre, eff)
				if err != nil {
					t.Fatalf("%s: %v", r.Name(), err)
				}
				got = q.In(units.AmpereHour)
			default:
				t.Fatalf("%s: unknown check %q", r.Name(), r.Text("check"))
			}
			if err := r.Check(got); err != nil {
				t.Error(err)
			}
		}
	}
}

// workedFiles hold printed problems with their answers, one source a file.
var workedFiles = []string{
	"openstaxchem2e.csv", "chemlibrarydocs.csv", "chemreactivity10.csv", "chromiumexercise11h.csv", "chromiumforum.csv",
	"competitionproblem.csv", "conceptsofphysics.csv", "earringanswer.csv", "generalchemessential5.csv",
	"goldconsumption.csv",
	"golddisc.csv", "goldearring.csv", "goldexercise12min.csv", "goldexercise25min.csv", "manufacturingnickel.csv",
	"manufacturingtin.csv", "metalfinishing2011.csv", "nickelnofaraday.csv", "nickelwrongmass.csv",
	"schoolphysicsnickel.csv",
	"textbookcompanion2005.csv",
}

// TestReferenceWorkedExamples works printed problems with their own constants.
func TestReferenceWorkedExamples(t *testing.T) {
	for _, file := range workedFiles {
		for _, r := range rows(t, file) {
			got, err := work(t, r)
			if err != nil {
				t.Errorf("%s: %v", r.Name(), err)
			} else if err := r.Check(got); err != nil {
				t.Error(err)
			}
		}
	}
}

// work computes what a row of a worked example asks for.
func work(t *testing.T, r testdata.Row) (float64, error) {
	eff := units.Efficiency(r.FloatOr("efficiency", 1))
	rho := units.Density(r.FloatOr("density_g_cm3", 1) * 1000)
	area := units.Area(r.FloatOr("area_cm2", 0)) * units.SquareCentimetre
	current, time := units.Current(r.FloatOr("current_A", 0)), units.Duration(r.FloatOr("time_s", 0))
	thickness := units.Length(r.FloatOr("thickness_um", 0)) * units.Micrometre
	charge := units.Charge(r.FloatOr("charge_C", float64(current.For(time))))
	if r.Text("metal") == "" && r.Text("check") == "time_s" {
		v, err := charge.At(current)
		return float64(v), err
	}
	if r.Has("constant_mm3_As") { // volume per charge, a table value of its source
		volume := float64(eff) * r.Float("constant_mm3_As") * 1e-9 * float64(charge)
		if r.Text("check") == "volume_cm3" {
			return volume * 1e6, nil
		}
		s, err := units.Volume(volume).PerArea(area)
		return s.In(units.Micrometre), err
	}
	var eq units.Equivalent
	if r.Has("valence") && r.Text("check") != "valence" {
		eq = equivalent(t, r)
	}
	d := faraday.Deposit{Equivalent: eq, Density: rho}

	// The mass: given, from a coat, or from a charge.
	mass := func() (units.Mass, error) {
		switch {
		case r.Has("mass_g"):
			return units.Mass(r.Float("mass_g")) * units.Gram, nil
		case r.Has("thickness_um"):
			m, err := d.MassFor(thickness, area)
			return m * units.Mass(r.FloatOr("loss_factor", 1)), err
		}
		return faraday.MassOfCharge(eq, charge, eff)
	}
	f := r.FloatOr("faraday_C_mol", faraday.FaradayConstant)
	switch r.Text("check") {
	case "mass_g":
		m, err := mass()
		return m.In(units.Gram), err
	case "volume_cm3":
		if r.Has("thickness_um") {
			return thickness.Over(area).In(units.CubicCentimetre), nil
		}
		m, err := mass()
		if err != nil {
			return 0, err
		}
		v, err := m.AtDensity(rho)
		return v.In(units.CubicCentimetre), err
	case "metal_mol":
		m, err := mass()
		if err != nil {
			return 0, err
		}
		return float64(m) / (float64(eq) * r.Float("valence") * f), nil
	case "electrons_mol":
		if r.Has("current_A") && r.Has("time_s") || r.Has("charge_C") {
			return float64(eff) * float64(charge) / f, nil
		}
		m, err := mass()
		return float64(m) / float64(eq) / f, err
	case "charge_C":
		if r.Has("current_A") && r.Has("time_s") {
			return float64(charge), nil
		}
		m, err := mass()
		if err != nil {
			return 0, err
		}
		q, err := faraday.Charge(eq, m, eff)
		return float64(q), err
	case "time_s":
		m, err := mass()
		if err != nil {
			return 0, err
		}
		if r.Has("current_A") {
			v, err := faraday.Time(eq, m, current, eff)
			return float64(v), err
		}
		j := units.CurrentDensity(r.Float("j_A_dm2")) * units.AmperePerSquareDecimetre
		v, err := d.TimeFor(thickness, j, eff)
		return float64(v), err
	case "current_A":
		m, err := mass()
		if err != nil {
			return 0, err
		}
		v, err := faraday.Current(eq, m, time, eff)
		return float64(v), err
	case "thickness_um":
		m, err := mass()
		if err != nil {
			return 0, err
		}
		s, err := d.ThicknessOf(m, area)
		return s.In(units.Micrometre), err
	case "area_cm2":
		a, err := d.AreaFor(charge, thickness, eff)
		return a.In(units.SquareCentimetre), err
	case "valence":
		molar := units.MolarMass(r.FloatOr("molar_mass", 0)) * units.GramPerMole
		if molar == 0 {
			e, err := faraday.Lookup(r.Text("metal"))
			if err != nil {
				return 0, err
			}
			molar = e.Weight.Value
		}
		v, err := faraday.Valence(molar, units.Mass(r.Float("mass_g"))*units.Gram, charge, eff)
		return float64(v.Nearest), err
	case "efficiency":
		m, err := mass()
		if err != nil {
			return 0, err
		}
		v, err := faraday.Efficiency(eq, m, charge)
		return float64(v), err
	}
	return math.NaN(), &units.ValueError{Field: "check", Value: r.Text("check"), Need: "a known one",
		Err: units.ErrOutOfRange}
}

// TestReferenceAtomicWeights holds the element table against the report it was
// taken from, digit for digit, and against an older independent table.
func TestReferenceAtomicWeights(t *testing.T) {
	list := rows(t, "iupac2021.csv")
	if got := len(faraday.Elements()); got != len(list) {
		t.Errorf("%d elements in code, %d in the table", got, len(list))
	}
	for _, r := range list {
		e, err := faraday.Lookup(r.Text("symbol"))
		if err != nil {
			t.Error(err)
			continue
		}
		if e.Name != r.Text("name") || float64(e.Number) != r.Float("z") {
			t.Errorf("%s: %s, number %d", r.Name(), e.Name, e.Number)
		}
		for column, got := range map[string]units.MolarMass{"lower": e.Weight.Low, "upper": e.Weight.High,
			"value": e.Weight.Value,
			"u":     e.Weight.Uncertainty, "abridged": e.Weight.Abridged, "abridged_u": e.Weight.AbridgedUncertainty} {
			if want := r.FloatOr(column, 0); math.Abs(got.In(units.GramPerMole)-want) > 1e-14*want {
				t.Errorf("%s %s: %v, printed %v", r.Name(), column, got.In(units.GramPerMole), want)
			}
		}
		// An abridged value may lie just outside the interval (oxygen, thallium), by less than its uncertainty.
		if u := e.Weight.Uncertainty; e.Weight.Interval() && !(e.Weight.Low-u <= e.Weight.Value &&
			e.Weight.Value <= e.Weight.High+u) {
			t.Errorf("%s: value outside its interval", r.Name())
		}
	}
	for _, r := range rows(t, "elementspackages.csv") {
		e, err := faraday.Lookup(r.Text("symbol"))
		if err != nil {
			t.Error(err)
			continue
		}
		if diff := math.Abs(e.Weight.Value.In(units.GramPerMole) - r.Float("older_a")); (diff <= r.Float("tol")*(1+
			1e-9)) == r.Misprint() {
			t.Errorf("%s: %v against the older %v, tolerance %v, %s", r.Name(), e.Weight.Value.In(units.GramPerMole),
				r.Float("older_a"), r.Float("tol"), r.Text("status"))
		}
	}
}

// TestReferenceDensities holds the bulk densities against the handbook column
// they come from, and within 3 % of two other handbook sets (ruthenium 2.6 %).
func TestReferenceDensities(t *testing.T) {
	for _, r := range rows(t, "densities.csv") {
		e, err := faraday.Lookup(r.Text("symbol"))
		if err != nil {
			t.Error(err)
			continue
		}
		got := e.Density.In(units.GramPerCubicCentimetre)
		if math.Abs(got-r.Float("density_a")) > 1e-12 {
			t.Errorf("%s: %v, printed %v", r.Name(), got, r.Float("density_a"))
		}
		for _, column := range []string{"density_b", "density_c"} {
			if r.Has(column) && math.Abs(got/r.Float(column)-1) > 0.03 {
				t.Errorf("%s: %v, %s %v", r.Name(), got, column, r.Float(column))
			}
		}
	}
}

// TestReferenceGas holds gas volumes against a printed note that uses its own
// gas constant (in L·atm) and Faraday constant.
func TestReferenceGas(t *testing.T) {
	for _, r := range rows(t, "hydrogen.csv") {
		q := units.Charge(r.Float("current_A") * r.Float("time_s") * r.FloatOr("cells", 1))
		temperature := units.Celsius(r.Float("temp_C"))
		pressure := units.Pressure(r.Float("pressure_atm")) * units.Atmosphere
		h, err := faraday.Hydrogen(q, 0, temperature, pressure)
		if err != nil {
			t.Fatal(err)
		}
		o, err := faraday.Oxygen(q, temperature, pressure)
		if err != nil {
			t.Fatal(err)
		}
		got := map[string]units.Volume{"hydrogen": h.Volume, "oxygen": o.Volume, "hydrogen and oxygen": h.Volume +
			o.Volume}[r.Text("gas")].In(units.Litre)
		// The source's R and F instead of the exact ones, and 273 for 273.15 where it says so.
		got *= r.Float("R_L_atm_mol_K") * 101.325 / faraday.GasConstant * faraday.FaradayConstant / r.Float("F_C_mol")
		if err := r.Check(got); err != nil {
			t.Error(err)
		}
	}
}
