package bath_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

func layer() plating.Layer {
	return plating.Layer{Area: 180 * units.SquareCentimetre, Distribution: plating.Distribution{MinToAverage: 0.6,
		Basis: "given"}}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol*math.Abs(want)) {
		t.Errorf("%s: %.12g, want %.12g", what, got, want)
	}
}

// TestIndependentSpan: Faraday's law written out, with CODATA and IUPAC
// numbers, at both ends of the copper strike (30 to 60 %) and of hard gold.
func TestIndependentSpan(t *testing.T) {
	l := layer()
	l.MinThickness, l.CurrentDensity = 0.6*units.Micrometre, 1*units.AmperePerSquareDecimetre
	s, err := bath.EstimateRange(l, get(t, "copper-cyanide-strike"), bath.OperatingPoint{})
	if err != nil {
		t.Fatal(err)
	}
	seconds := func(eff float64) float64 { return 8920 * 1e-6 * 96485.33212331 / (0.063546 * eff * 100) }
	near(t, "least time", float64(s.Time.Low), seconds(0.6), 1e-9)
	near(t, "most time", float64(s.Time.High), seconds(0.3), 1e-9)
	near(t, "middle time", float64(s.Time.Typical), seconds(0.45), 1e-9)
	if s.Confidence != origin.SecondHand {
		t.Errorf("confidence %s: efficiency is published, density second hand", s.Confidence)
	}

	// Density from 16 to 17 g/cm³ moves the time as well; the deposit's charge is
	// the sum over its constituents.
	l.MinThickness, l.CurrentDensity = 0.6*units.Micrometre, 1.5*units.AmperePerSquareDecimetre
	s, err = bath.EstimateRange(l, get(t, "gold-acid-cobalt"), bath.OperatingPoint{})
	if err != nil {
		t.Fatal(err)
	}
	perKg := 96485.33212331 * (0.995/0.196966570 + 0.0025*2/0.058933194)
	near(t, "hard gold, least", float64(s.Time.Low), 16000*1e-6*perKg/(0.45*150), 1e-9)
	near(t, "hard gold, most", float64(s.Time.High), 17000*1e-6*perKg/(0.25*150), 1e-9)
	near(t, "fine gold, least", float64(s.FineMass.Low), 0.995*16000*1e-6*0.018, 1e-9)
	near(t, "fine gold, most", float64(s.FineMass.High), 0.995*17000*1e-6*0.018, 1e-9)
	if s.Confidence != origin.FromMemory {
		t.Errorf("confidence %s, the efficiency of hard gold is from memory", s.Confidence)
	}
}

// TestPropertySpanHolds: whatever efficiency and density the bath really has
// inside its ranges, the result lies in the band. For all three questions.
func TestPropertySpanHolds(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for _, b := range bath.Library() {
		for question := range 3 {
			l := layer()
			j := b.CurrentDensity.Low + units.CurrentDensity(r.Float64())*(b.CurrentDensity.High-b.CurrentDensity.Low)
			if question != 1 {
				l.MinThickness = 0.3 * units.Micrometre
			}
			if question != 2 {
				l.CurrentDensity = j
			}
			if question != 0 {
				l.Time = 90
			}
			s, err := bath.EstimateRange(l, b, bath.OperatingPoint{})
			var outside *units.RangeError
			if err != nil && !errors.As(err, &outside) {
				t.Fatalf("%s, question %d: %v", b.Key, question, err)
			}
			for range 20 {
				one := b
				eff := b.Efficiency.Low + units.Efficiency(r.Float64())*(b.Efficiency.High-b.Efficiency.Low)
				rho := b.Density.Low + units.Density(r.Float64())*(b.Density.High-b.Density.Low)
				one.Efficiency.Low, one.Efficiency.High, one.Density.Low, one.Density.High = eff, eff, rho, rho
				p, err := bath.EstimateRange(l, one, bath.OperatingPoint{})
				if err != nil && !errors.As(err, &outside) {
					t.Fatal(err)
				}
				inside(t, b.Key+" time", s.Time, p.Typical.Time)
				inside(t, b.Key+" mean", s.Average, p.Typical.Average)
				inside(t, b.Key+" mass", s.Mass, p.Typical.Mass)
				inside(t, b.Key+" fine mass", s.FineMass, p.Typical.FineMass)
				inside(t, b.Key+" current", s.Current, p.Typical.Current)
				if p.Time.Low != p.Time.High && p.Time.High/p.Time.Low-1 > 1e-12 {
					t.Errorf("%s: a bath without bands gives the band %s", b.Key, p.Time)
				}
			}
		}
	}
}

func inside[Q units.Quantity](t *testing.T, what string, band bath.Band[Q], v Q) {
	t.Helper()
	if v < band.Low*(1-1e-12) || v > band.High*(1+1e-12) || band.Typical < band.Low || band.Typical > band.High {
		t.Errorf("%s: %s outside %s", what, v, band)
	}
}

// TestSpanUsed: every figure that an estimate takes is listed and counts
// towards its confidence.
func TestPropertySpanUsed(t *testing.T) {
	l := layer()
	l.MinThickness = 0.3 * units.Micrometre
	b := get(t, "copper-cyanide-strike")
	s, err := bath.EstimateRange(l, b, bath.OperatingPoint{})
	if err != nil {
		t.Fatal(err)
	}
	if got := len(s.Used); got != 3 {
		t.Errorf("%d figures used, want efficiency, density and current density: %v", got, s.Used)
	}
	if s.Layer.CurrentDensity != b.CurrentDensity.Mid() {
		t.Errorf("current density %s, want the middle %s", s.Layer.CurrentDensity, b.CurrentDensity.Mid())
	}
	b.CurrentDensity.Seen = origin.FromMemory
	if s, err = bath.EstimateRange(l, b, bath.OperatingPoint{}); err != nil || s.Confidence != origin.FromMemory {
		t.Errorf("a remembered current density was used: %s, %v", s.Confidence, err)
	}
	l.CurrentDensity = 1 * units.AmperePerSquareDecimetre
	if s, err = bath.EstimateRange(l, b, bath.OperatingPoint{}); err != nil || s.Confidence != origin.SecondHand {
		t.Errorf("it was not used: %s, %v", s.Confidence, err)
	}
	if !strings.Contains(s.Layer.Bath.Source, "Guidebook2011") || !strings.Contains(s.Layer.Bath.Source,
		"from memory: ") {
		t.Errorf("source of the bath: %q", s.Layer.Bath.Source)
	}
}

// TestOutside: a point outside the ranges comes with its result and says so.
func TestPropertyOutside(t *testing.T) {
	for _, c := range []struct {
		point bath.OperatingPoint
		field string
	}{
		{bath.OperatingPoint{CurrentDensity: 5 * units.AmperePerSquareDecimetre}, "current density"},
		{bath.OperatingPoint{Temperature: units.Celsius(80)}, "temperature"},
		{bath.OperatingPoint{Content: 20}, "metal content"},
	} {
		one := get(t, "gold-acid-cobalt")
		b, err := one.At(c.point)
		var e *units.RangeError
		if !errors.As(err, &e) || e.Field != c.field || e.Source != "Guidebook2011" {
			t.Errorf("%s: %v", c.field, err)
		}
		if b.Check() != nil {
			t.Errorf("%s: no bath came along", c.field)
		}
		l := layer()
		l.MinThickness = 1 * units.Micrometre
		if s, err := bath.EstimateRange(l, one, c.point); !errors.As(err, &e) || s.Time.Low <= 0 {
			t.Errorf("%s: %v, %s", c.field, err, s.Time)
		}
	}
}

// TestBad: what cannot be gives a typed error that names the field.
func TestPropertyBad(t *testing.T) {
	nan := math.NaN()
	change := func(f func(*bath.Bath)) bath.Bath {
		b := get(t, "gold-acid-cobalt")
		f(&b)
		return b
	}
	for _, c := range []struct {
		b     bath.Bath
		p     bath.OperatingPoint
		field string
	}{
		{bath.Bath{}, bath.OperatingPoint{}, "use of the bath"},
		{change(func(b *bath.Bath) { b.Use = 0 }), bath.OperatingPoint{}, "use of the bath"},
		{change(func(b *bath.Bath) { b.Use = 200 }), bath.OperatingPoint{}, "use of the bath"},
		{change(func(b *bath.Bath) { b.Density = bath.Range[units.Density]{} }), bath.OperatingPoint{},
			"density of the deposit"},
		{change(func(b *bath.Bath) { b.Density.Low = 0 }), bath.OperatingPoint{}, "low end of the density of the deposit"},
		{change(func(b *bath.Bath) { b.Efficiency = bath.Range[units.Efficiency]{} }), bath.OperatingPoint{},
			"current efficiency"},
		{change(func(b *bath.Bath) { b.Efficiency.High = 1.01 }), bath.OperatingPoint{},
			"high end of the current efficiency"},
		{change(func(b *bath.Bath) { b.Efficiency.Low = 0 }), bath.OperatingPoint{}, "low end of the current efficiency"},
		{change(func(b *bath.Bath) { b.Efficiency.Low = 0.9 }), bath.OperatingPoint{}, "current efficiency"},
		{change(func(b *bath.Bath) { b.Efficiency.Low = units.Efficiency(nan) }), bath.OperatingPoint{},
			"low end of the current efficiency"},
		{change(func(b *bath.Bath) { b.PH.High = 20 }), bath.OperatingPoint{}, "pH"},
		{change(func(b *bath.Bath) { b.Deposit[0].Share = 0.5 }), bath.OperatingPoint{}, ""},
		{change(func(b *bath.Bath) { b.Metal = "Ag" }), bath.OperatingPoint{}, "share of Ag in the deposit"},
		{change(func(b *bath.Bath) { b.Temperature.Low = units.Celsius(90) }), bath.OperatingPoint{}, "temperature"},
		{change(func(b *bath.Bath) { b.Volts.High = -1 }), bath.OperatingPoint{}, "high end of the volts"},
		{change(func(*bath.Bath) {}), bath.OperatingPoint{CurrentDensity: -1}, "current density"},
		{change(func(*bath.Bath) {}), bath.OperatingPoint{Temperature: units.Temperature(nan)}, "temperature"},
		{change(func(*bath.Bath) {}), bath.OperatingPoint{Content: units.MassConcentration(math.Inf(1))}, "metal content"},
		{change(func(*bath.Bath) {}), bath.OperatingPoint{Volume: -1}, "bath volume"},
		{change(func(b *bath.Bath) { b.Lines = []bath.EfficiencyLine{{}} }), bath.OperatingPoint{},
			"efficiency line 1: points"},
	} {
		_, err := c.b.At(c.p)
		var e *units.ValueError
		if !errors.As(err, &e) || c.field != "" && e.Field != c.field || e.Need == "" {
			t.Errorf("%v, want a *units.ValueError for %q", err, c.field)
		}
		l := layer()
		l.MinThickness = 1e-6
		if _, err := bath.EstimateRange(l, c.b, c.p); !errors.As(err, &e) {
			t.Errorf("EstimateRange: %v", err)
		}
		if _, err := c.b.EfficiencyAt(c.p); !errors.As(err, &e) {
			t.Errorf("EfficiencyAt: %v", err)
		}
	}
	l := layer()
	l.Area, l.MinThickness = 0, 1e-6
	_, err := bath.EstimateRange(l, get(t, "gold-neutral"), bath.OperatingPoint{})
	var e *units.ValueError
	if !errors.As(err, &e) || e.Field != "area" {
		t.Errorf("no area: %v", err)
	}
}
