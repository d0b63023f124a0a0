package alloys_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
	"github.com/shopspring/decimal"
)

// rows reads a reference table.
func rows(t *testing.T, file string) []testdata.Row {
	t.Helper()
	table, err := testdata.Read(file)
	if err != nil {
		t.Fatal(err)
	}
	return table.Rows
}

// checked runs compute on every row that is not skipped, each as a subtest,
// and holds the result against the row.
func checked(t *testing.T, file string, compute func(t *testing.T, row testdata.Row) float64) {
	for _, row := range rows(t, file) {
		if row.Skip() {
			continue
		}
		t.Run(row.Name(), func(t *testing.T) {
			if err := row.Check(compute(t, row)); err != nil {
				t.Error(err)
			}
		})
	}
}

// must returns v or ends the test.
func must[T any](v T, err error) func(t *testing.T) T {
	return func(t *testing.T) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// near compares two floats by relative difference.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: got %.17g, want %.17g within %g relative", what, got, want, tol)
	}
}

// recompute holds every step against its own formula.
func recompute(t *testing.T, steps []working.Step, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if len(steps) == 0 {
		t.Fatal("no step")
	}
	for _, s := range steps {
		got, err := s.Recompute()
		if err != nil {
			t.Error(err)
			continue
		}
		if math.Abs(got-s.Result.SI) > 1e-12*math.Abs(s.Result.SI) {
			t.Errorf("%s: recomputed %.17g, result %.17g", s.Formula, got, s.Result.SI)
		}
		if s.Source == "" || s.Result.Value == "" || s.Result.Meaning == "" {
			t.Errorf("%s: source, value or meaning is missing", s.Formula)
		}
	}
}

func dec(text string) decimal.Decimal { return decimal.RequireFromString(text) }

func parse(t *testing.T, text string) alloys.Composition {
	t.Helper()
	return must(alloys.ParseComposition(text))(t)
}

// isError holds an error against a wanted reason.
func isError(t *testing.T, what string, err, reason error) {
	t.Helper()
	if !errors.Is(err, reason) {
		t.Errorf("%s: error %v, want one that is %v", what, err, reason)
	}
	if err != nil && err.Error() == "" {
		t.Errorf("%s: the error says nothing", what)
	}
}

// auAgCu is the composition of a row with columns au, ag, cu in per mille.
func auAgCu(t *testing.T, row testdata.Row) alloys.Composition {
	t.Helper()
	return must(alloys.FromPermille(
		alloys.PermillePart{Symbol: "Au", Share: alloys.Fineness(row.FloatOr("au", 0))},
		alloys.PermillePart{Symbol: "Ag", Share: alloys.Fineness(row.FloatOr("ag", 0))},
		alloys.PermillePart{Symbol: "Cu", Share: alloys.Fineness(row.FloatOr("cu", 0))}))(t)
}

// rowDensities are the element densities of a row, in g/cm³, where given.
func rowDensities(row testdata.Row) alloys.DensityOptions {
	o := alloys.DensityOptions{Elements: map[string]units.Density{}}
	for column, symbol := range map[string]string{"rho_au": "Au", "rho_fine": "Au", "rho_ag": "Ag", "rho_cu": "Cu"} {
		if row.Has(column) {
			o.Elements[symbol] = units.Density(row.Float(column)) * units.GramPerCubicCentimetre
		}
	}
	return o
}

var badNumbers = []float64{math.NaN(), math.Inf(1), math.Inf(-1), -1}
