package faraday_test

import (
	"errors"
	"math"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// tafelTable reads the measured points of [PhysicalChemistryTafel].
func tafelTable(t *testing.T) []faraday.TafelPoint {
	t.Helper()
	table, err := testdata.Read("tafel.csv")
	if err != nil {
		t.Fatal(err)
	}
	var points []faraday.TafelPoint
	for _, row := range table.Rows {
		j, err := (units.Current(row.Float("current_mA")) * units.Milliampere).
			PerArea(units.Area(row.Float("area_cm2")) * units.SquareCentimetre)
		if err != nil {
			t.Fatal(err)
		}
		points = append(points, faraday.TafelPoint{Overpotential: units.Voltage(row.Float("overpotential_V")),
			CurrentDensity: j})
	}
	return points
}

// fitTafelTable fits all points but the first, which is not on the line yet.
func fitTafelTable(t *testing.T) faraday.TafelLine {
	t.Helper()
	fit, err := faraday.TafelFit(tafelTable(t)[1:])
	if err != nil {
		t.Fatal(err)
	}
	return fit
}

// The measured currents against the fitted line: [PhysicalChemistryTafel]. The
// line cannot hit the points to their printed digits; 2 % is the scatter of the
// measurement. The first point lies off, since the reverse reaction still runs.
func TestReferenceTafelPoints(t *testing.T) {
	fit := fitTafelTable(t)
	for i, p := range tafelTable(t) {
		j, err := fit.CurrentDensity(p.Overpotential)
		if err != nil {
			t.Fatal(err)
		}
		off := math.Abs(float64(j)/float64(p.CurrentDensity) - 1)
		if (off < 0.02) != (i > 0) {
			t.Errorf("point %d is %.3g off the line", i+1, off)
		}
	}
	if fit.Points != 4 || !(fit.RSquared > 0.9995 && fit.RSquared <= 1) || !(fit.Residual > 0 && fit.Residual < 0.01) {
		t.Errorf("fit %+v", fit)
	}
	with, err := faraday.TafelFit(tafelTable(t))
	if err != nil {
		t.Fatal(err)
	}
	if with.RSquared >= fit.RSquared || with.Residual <= fit.Residual {
		t.Error("the fit is no better without the point off the line")
	}
}

// Least squares by the textbook sums, apart from the library that the package
// uses: slope = Sxy/Sxx.
func TestIndependentTafelFit(t *testing.T) {
	points := tafelTable(t)[1:]
	var n, sx, sy, sxx, sxy, syy float64
	for _, p := range points {
		x, y := float64(p.Overpotential), math.Log10(float64(p.CurrentDensity))
		n, sx, sy, sxx, sxy, syy = n+1, sx+x, sy+y, sxx+x*x, sxy+x*y, syy+y*y
	}
	slope := (n*sxy - sx*sy) / (n*sxx - sx*sx)
	fit := fitTafelTable(t)
	chemNear(t, "slope", float64(fit.Slope), 1/slope, 1e-12)
	chemNear(t, "exchange", float64(fit.Exchange), math.Pow(10, (sy-slope*sx)/n), 1e-12)
	r := (n*sxy - sx*sy) / math.Sqrt((n*sxx-sx*sx)*(n*syy-sy*sy))
	chemNear(t, "R²", fit.RSquared, r*r, 1e-10)
	chemNear(t, "residual", fit.Residual, math.Sqrt((n*syy-sy*sy)/n*(1-r*r)/(n-2)), 1e-7)
}

func TestPropertyTafel(t *testing.T) {
	for _, line := range []faraday.Tafel{{Exchange: 24, Slope: 0.139}, {Exchange: 1e-3, Slope: -0.12}, {Exchange: 5,
		Slope: -0.03}} {
		sign := units.CurrentDensity(math.Copysign(1, float64(line.Slope)))
		var points []faraday.TafelPoint
		for _, e := range []float64{0.5, 1, 1.5, 2, 4} {
			j := sign * line.Exchange * units.CurrentDensity(math.Pow(10, e))
			eta, err := line.Overpotential(j)
			if err != nil {
				t.Fatal(err)
			}
			chemNear(t, "η", float64(eta), e*float64(line.Slope), 1e-13)
			back, err := line.CurrentDensity(eta)
			if err != nil {
				t.Fatal(err)
			}
			chemNear(t, "j there and back", back, j, 1e-13)
			points = append(points, faraday.TafelPoint{Overpotential: eta, CurrentDensity: j})
			// dη/dj against a central difference.
			r, err := line.Resistance(j)
			if err != nil {
				t.Fatal(err)
			}
			h := 1e-5 * j
			up, _ := line.Overpotential(j + h)
			down, _ := line.Overpotential(j - h)
			chemNear(t, "dη/dj", float64(r), float64(up-down)/float64(2*h), 1e-8)
		}
		// A fit of its own points gives the line back.
		fit, err := faraday.TafelFit(points)
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "fitted slope", fit.Slope, line.Slope, 1e-12)
		chemNear(t, "fitted exchange", fit.Exchange, line.Exchange, 1e-11)
		chemNear(t, "R²", fit.RSquared, 1, 1e-12)
		chemWithin(t, "residual", fit.Residual, 0, 1e-12)
	}
	// Slope and coefficient are each other's inverse, for both signs.
	for _, alpha := range []float64{0.1, 0.5, 1, 2, 10} {
		b, err := faraday.TafelSlope(alpha, 333.15)
		if err != nil {
			t.Fatal(err)
		}
		for _, s := range []units.Voltage{b, -b} {
			back, err := faraday.TransferCoefficient(s, 333.15)
			if err != nil {
				t.Fatal(err)
			}
			chemNear(t, "α", back, alpha, 1e-14)
		}
	}
	// The cathodic branch of Butler-Volmer is the Tafel line far out.
	bv := faraday.ButlerVolmer{Exchange: 2, Anodic: 0.6, Cathodic: 0.4, Temperature: 298.15}
	b, _ := faraday.TafelSlope(bv.Cathodic, bv.Temperature)
	want, _ := bv.CurrentDensity(-0.5)
	got, err := faraday.Tafel{Exchange: bv.Exchange, Slope: -b}.CurrentDensity(-0.5)
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "cathodic branch", got, want, 1e-8)
}

func TestPropertyTafelFarOut(t *testing.T) {
	line := faraday.Tafel{Exchange: 1e-300, Slope: 0.1}
	for _, c := range []struct{ j, decades float64 }{{1e300, 600}, {5e-324, -23.3062}} {
		eta, err := line.Overpotential(units.CurrentDensity(c.j))
		if err != nil {
			t.Fatal(err)
		}
		chemNear(t, "η", float64(eta), 0.1*c.decades, 1e-5)
	}
	line.Exchange = 1e200
	eta, err := line.Overpotential(1e-200) // the quotient is next to nothing
	if err != nil {
		t.Fatal(err)
	}
	chemNear(t, "η", float64(eta), -40, 1e-13)
}

func TestTafelErrors(t *testing.T) {
	chemSweep(3, func(v []float64) {
		line := faraday.Tafel{Exchange: units.CurrentDensity(v[0]), Slope: units.Voltage(v[1])}
		eta, err := line.Overpotential(units.CurrentDensity(v[2]))
		chemTyped(t, "Overpotential", float64(eta), err)
		j, err := line.CurrentDensity(units.Voltage(v[2]))
		chemTyped(t, "CurrentDensity", float64(j), err)
		r, err := line.Resistance(units.CurrentDensity(v[2]))
		chemTyped(t, "Resistance", float64(r), err)
		chemTyped(t, "Check", 0, line.Check())
		b, err := faraday.TafelSlope(v[0], units.Temperature(v[1]))
		chemTyped(t, "TafelSlope", float64(b), err)
		alpha, err := faraday.TransferCoefficient(units.Voltage(v[0]), units.Temperature(v[1]))
		chemTyped(t, "TransferCoefficient", alpha, err)
	})
	cathode := faraday.Tafel{Exchange: 1, Slope: -0.12}
	for _, j := range []units.CurrentDensity{0, 1} {
		if _, err := cathode.Overpotential(j); !errors.Is(err, units.ErrOutOfRange) {
			t.Errorf("j = %v on the cathodic branch: %v", j, err)
		}
	}
	if err := (faraday.Tafel{}).Check(); err == nil {
		t.Error("the zero Tafel passes")
	}
}

func TestTafelFitErrors(t *testing.T) {
	good := []faraday.TafelPoint{{0.1, 10}, {0.2, 100}, {0.3, 1000}}
	with := func(i int, p faraday.TafelPoint) []faraday.TafelPoint {
		points := append([]faraday.TafelPoint(nil), good...)
		points[i] = p
		return points
	}
	for _, c := range []struct {
		what   string
		points []faraday.TafelPoint
		err    error
	}{
		{"none", nil, units.ErrOutOfRange},
		{"two", good[:2], units.ErrOutOfRange},
		{"both branches", with(1, faraday.TafelPoint{Overpotential: -0.2, CurrentDensity: -100}), units.ErrInconsistent},
		{"signs apart", with(0, faraday.TafelPoint{Overpotential: 0.1, CurrentDensity: -10}), units.ErrInconsistent},
		{"no overpotential", with(0, faraday.TafelPoint{Overpotential: 0, CurrentDensity: 10}), units.ErrInconsistent},
		{"no current", with(2, faraday.TafelPoint{Overpotential: 0.3, CurrentDensity: 0}), units.ErrInconsistent},
		{"one overpotential", []faraday.TafelPoint{{0.1, 10}, {0.1, 100}, {0.1, 1000}}, units.ErrInconsistent},
		{"falling", []faraday.TafelPoint{{0.1, 1000}, {0.2, 100}, {0.3, 10}}, units.ErrInconsistent},
		{"flat", []faraday.TafelPoint{{0.1, 10}, {0.2, 10}, {0.3, 10}}, units.ErrInconsistent},
	} {
		fit, err := faraday.TafelFit(c.points)
		if !errors.Is(err, c.err) || fit != (faraday.TafelLine{}) {
			t.Errorf("%s: %+v, %v; want %v", c.what, fit, err, c.err)
		}
	}
	for _, a := range chemBad {
		for _, b := range chemBad {
			for i := range good {
				fit, err := faraday.TafelFit(with(i, faraday.TafelPoint{Overpotential: units.Voltage(a),
					CurrentDensity: units.CurrentDensity(b)}))
				chemTyped(t, "TafelFit", float64(fit.Exchange)+float64(fit.Slope)+fit.RSquared+fit.Residual, err)
			}
		}
	}
}
