package units

import (
	"strconv"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// kindByType maps the type names of the reference tables to kinds.
var kindByType = map[string]QuantityKind{"Mass": KindMass, "Volume": KindVolume, "Length": KindLength, "Area": KindArea,
	"CurrentDensity": KindCurrentDensity, "MassConcentration": KindMassConcentration, "MassPerArea": KindMassPerArea,
	"Temperature": KindTemperature}

func TestReferenceGNU(t *testing.T)         { checkFactors(t, "gnuunits.csv", 23) }
func TestReferenceSP811(t *testing.T)       { checkFactors(t, "sp811.csv", 13) }
func TestReferenceTradeChecks(t *testing.T) { checkFactors(t, "tradechecks.csv", 16) }

// checkFactors holds this package against printed conversions, each within
// the tolerance of its row: by the typed route and by Convert.
func checkFactors(t *testing.T, file string, least int) {
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, row := range table.Rows {
		value := row.FloatOr("value", 1)
		unit, target := row.Text("unit"), row.Text("expected_unit")
		switch check := row.Text("check"); {
		case row.Skip():
			if found := KindsOf(unit); len(found) > 0 {
				t.Errorf("%s: skipped, but %v knows the unit %q", row.Name(), found, unit)
			}
		case check == "factor" || check == "celsius":
			checked++
			k, known := kindByType[row.Text("si_kind")]
			if !known {
				t.Errorf("%s: unknown kind %q", row.Name(), row.Text("si_kind"))
				continue
			}
			text := strconv.FormatFloat(value, 'g', -1, 64) + " " + unit
			v, err := parse(k, text)
			u, _ := k.lookup(normalise(target))
			if err != nil || u == nil {
				t.Errorf("%s: %v, unit %q", row.Name(), err, target)
				continue
			}
			got, _ := fromSI(k, u, v).Float64()
			if err := row.Check(got); err != nil {
				t.Error(err)
			}
			converted, err := Convert(text, target)
			if err != nil {
				t.Errorf("%s: %v", row.Name(), err)
				continue
			}
			num, _, _ := strings.Cut(converted, " ")
			if x, err := strconv.ParseFloat(num, 64); err != nil || row.Check(x) != nil {
				t.Errorf("%s: Convert gives %q", row.Name(), converted)
			}
		case check == "um_per_Amin_dm2" || check == "um_per_Amin_ft2":
			checked++
			if err := row.Check(micrometresPerAmpereMinute(t, row, check)); err != nil {
				t.Error(err)
			}
		default:
			t.Errorf("%s: unknown check %q", row.Name(), check)
		}
	}
	if t.Logf("%d rows checked", checked); checked < least {
		t.Errorf("%d rows checked, want at least %d", checked, least)
	}
}

// micrometresPerAmpereMinute computes the coat of one ampere-minute over one
// square decimetre or foot, from the atomic weight of [IUPAC2021] and the SI
// values of e and N_A, through the products and quotients of this package.
func micrometresPerAmpereMinute(t *testing.T, row testdata.Row, check string) float64 {
	weights, err := testdata.Read("iupac2021.csv")
	if err != nil {
		t.Fatal(err)
	}
	for _, w := range weights.Rows {
		if w.Text("symbol") != row.Text("metal") {
			continue
		}
		const faraday = 1.602176634e-19 * 6.02214076e23 // C/mol, exact in the SI of 2019
		molar := w.Float("value") * float64(GramPerMole)
		area := map[string]Area{"um_per_Amin_dm2": SquareDecimetre, "um_per_Amin_ft2": SquareFoot}[check]
		mass := Equivalent(molar / (row.Float("valence") * faraday)).Of(Ampere.For(Minute))
		coat, err := mass.PerArea(area)
		if err != nil {
			t.Fatal(err)
		}
		thickness, err := coat.Thickness(Density(row.Float("density_g_cm3")) * GramPerCubicCentimetre)
		if err != nil {
			t.Fatal(err)
		}
		return thickness.In(Micrometre)
	}
	t.Fatalf("%s: no atomic weight of %s", row.Name(), row.Text("metal"))
	return 0
}
