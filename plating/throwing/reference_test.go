package throwing

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// eachRow checks every row of a file by the function of its check.
func eachRow(t *testing.T, file string, f func(t *testing.T, r testdata.Row) float64) {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	checked := 0
	for _, r := range table.Rows {
		if r.Skip() {
			continue
		}
		checked++
		if err := r.Check(f(t, r)); err != nil {
			t.Error(err)
		}
	}
	if checked == 0 {
		t.Error("no row was checked")
	}
}

// must returns the value or ends the test.
func must[V any](v V, err error) func(t testing.TB) V {
	return func(t testing.TB) V {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

func asf(j units.CurrentDensity) float64 { return float64(j / units.AmperePerSquareFoot) }

// TestReferenceHaringBlum: the worked figures of [ThrowingZinc1952].
func TestReferenceHaringBlum(t *testing.T) {
	eachRow(t, "throwingzinc1952.csv", func(t *testing.T, r testdata.Row) float64 {
		switch r.Text("check") {
		case "haring_blum_pct":
			return 100 * float64(must(NewHaringBlum(units.Ratio(r.Float("cell")), units.Ratio(r.Float("metal"))))(t).Power)
		case "haring_blum_metal":
			return float64(must(HaringBlum{units.Ratio(r.Float("cell")), units.Ratio(r.Float("percent") / 100)}.Metal())(t))
		case "distance_ratio":
			c := HaringBlumCell{units.Length(r.Float("near_cm")) * units.Centimetre,
				units.Length(r.Float("far_cm")) * units.Centimetre}
			return float64(must(c.Ratio())(t))
		}
		return math.NaN()
	})
}

// TestReferenceField: the limits of [ThrowingField] and the solved case of
// [ThrowingFieldCase].
func TestReferenceField(t *testing.T) {
	eachRow(t, "throwingfield.csv", func(t *testing.T, r testdata.Row) float64 {
		return 100 * float64(must(NewField(units.Ratio(r.Float("cell")), units.Ratio(r.Float("metal"))))(t).Power)
	})
	eachRow(t, "throwingfieldcase.csv", func(t *testing.T, r testdata.Row) float64 {
		k := must(HaringBlumCell{units.Length(r.Float("near")), units.Length(r.Float("far"))}.Ratio())(t)
		return 100 * float64(must(NewField(k, units.Ratio(r.Float("mass_near")/r.Float("mass_far"))))(t).Power)
	})
}

// TestReferencePanel: constants and range of [TestCell2013].
func TestReferencePanel(t *testing.T) {
	eachRow(t, "testcell2013.csv", func(t *testing.T, r testdata.Row) float64 {
		p := map[string]Panel{"267": Panel267, "1000": Panel1000}[r.Text("cell")]
		at := func(inches float64) float64 { return asf(must(p.Density(1, units.Length(inches)*units.Inch))(t)) }
		edge := func(inside, outside float64) float64 { // halves until the edge is known
			for range 60 {
				mid := (inside + outside) / 2
				if _, err := p.Density(1, units.Length(mid)*units.Inch); err == nil {
					inside = mid
				} else {
					outside = mid
				}
			}
			return inside
		}
		switch r.Text("check") {
		case "c1":
			return at(1)
		case "c2":
			return at(0.25) - at(2.5)
		case "first_in":
			return edge(1, 0.01)
		case "last_in":
			return edge(1, 5)
		}
		return math.NaN()
	})
}

// TestReferencePrimaryTable: [TestCellPrimary1993] against the exact map. The
// rows say how wide they are and why.
func TestReferencePrimaryTable(t *testing.T) {
	m := must(Trapezoid267().Primary())(t)
	eachRow(t, "testcellprimary1993.csv", func(t *testing.T, r testdata.Row) float64 {
		return float64(must(m.At(units.Length(r.Float("distance_in"))*units.Inch))(t)) * r.Float("average")
	})
}

// TestIndependentComputed: values computed apart from this library.
func TestIndependentComputed(t *testing.T) {
	slanted := must(Trapezoid267().Primary())(t)
	right := must(Trapezoid{Anode: 1, Short: 1, Long: 2}.Primary())(t)
	eachRow(t, "throwingcomputed.csv", func(t *testing.T, r testdata.Row) float64 {
		a, b := units.Ratio(r.Float("a")), units.Ratio(r.Float("b"))
		switch check := r.Text("check"); check {
		case "haring_blum_pct":
			return 100 * float64(must(NewHaringBlum(a, b))(t).Power)
		case "heatley_pct":
			return 100 * float64(must(NewHeatley(a, b))(t).Power)
		case "field_pct":
			return 100 * float64(must(NewField(a, b))(t).Power)
		case "cell_linear":
			return float64(must(LinearRatio(a, b))(t))
		case "cell_tafel":
			return float64(must(TafelRatio(a, b))(t))
		case "recess_linear", "recess_tafel":
			// A trench whose number is a: D = a √(κ r w/2) with κ = r = 1, w = 2e-6.
			rc := Recess{Width: 2e-6, Depth: units.Length(a) * 1e-3, Trench: true, BareFloor: true}
			if check == "recess_linear" {
				return float64(must(rc.Linear(1, 1))(t).Bottom)
			}
			return float64(must(rc.Tafel(1, 1))(t).Bottom)
		case "map_267":
			return float64(must(slanted.At(units.Length(a) * slanted.Cathode()))(t))
		case "map_45":
			return float64(must(right.At(units.Length(a) * right.Cathode()))(t))
		case "factor_267":
			return float64(must(slanted.ShapeFactor())(t))
		case "factor_45":
			return float64(must(right.ShapeFactor())(t))
		case "parameter_267":
			return slanted.t
		case "law_267":
			return asf(must(Panel267.Density(1, units.Length(a)*units.Inch))(t))
		case "law_1000":
			return asf(must(Panel1000.Density(1, units.Length(a)*units.Inch))(t))
		}
		t.Errorf("unknown check %q", r.Text("check"))
		return math.NaN()
	})
}

// typed checks that an error says what, how much and what would do.
func typed(t testing.TB, name string, err error) {
	t.Helper()
	var v *units.ValueError
	var r *units.RangeError
	switch {
	case errors.As(err, &v):
		if v.Field == "" || v.Value == "" || v.Need == "" || v.Err == nil {
			t.Errorf("%s: %#v is not complete", name, v)
		}
	case errors.As(err, &r):
		if r.Field == "" || r.Value == "" || r.Low == "" || r.High == "" || r.Source == "" || strings.Contains(r.Error(),
			"NaN") {
			t.Errorf("%s: %#v is not complete", name, r)
		}
	default:
		t.Errorf("%s: %T %v", name, err, err)
	}
}
