package bath_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// lined is a bath with two temperatures at each of two contents.
func lined(t *testing.T) bath.Bath {
	b := get(t, "gold-acid-cobalt")
	b.CurrentDensity = bath.Range[units.CurrentDensity]{}
	line := func(heat float64, content units.MassConcentration, e1, e2 units.Efficiency) bath.EfficiencyLine {
		return bath.EfficiencyLine{Temperature: units.Celsius(heat), Content: content, Source: "trial pieces",
			Seen: origin.Measured,
			Points: []bath.EfficiencyBand{{CurrentDensity: 50, Low: e1, High: e1 + 0.02}, {CurrentDensity: 150, Low: e2,
				High: e2 + 0.02}}}
	}
	b.Lines = []bath.EfficiencyLine{line(38, 8, 0.50, 0.40), line(28, 4, 0.30, 0.20), line(28, 8, 0.40, 0.30), line(38, 4,
		0.40, 0.30)}
	b.Temperature, b.Content = bath.Range[units.Temperature]{}, bath.Range[units.MassConcentration]{}
	return b
}

// TestIndependentLines: interpolation in three directions by hand.
func TestIndependentLines(t *testing.T) {
	b := lined(t)
	for _, c := range []struct {
		j       units.CurrentDensity
		heat    float64
		content units.MassConcentration
		want    float64
		outside string
	}{
		{50, 28, 4, 0.30, ""},
		{150, 38, 8, 0.40, ""},
		{100, 28, 4, 0.25, ""},   // half way in current density
		{100, 33, 4, 0.30, ""},   // and in temperature
		{100, 33, 6, 0.35, ""},   // and in content
		{75, 30.5, 7, 0.375, ""}, // 4 g/L: 0.275+0.025, 8 g/L: 0.375+0.025, three quarters between them
		{20, 28, 4, 0.30, "current density"},
		{400, 28, 4, 0.20, "current density"},
		{50, 20, 4, 0.30, "temperature"},
		{50, 28, 2, 0.30, "metal content"},
		{50, 28, 20, 0.40, "metal content"},
	} {
		p := bath.OperatingPoint{CurrentDensity: c.j, Temperature: units.Celsius(c.heat), Content: c.content}
		r, err := b.EfficiencyAt(p)
		near(t, "low end", float64(r.Low), c.want, 1e-12)
		near(t, "high end", float64(r.High), c.want+0.02, 1e-12)
		var e *units.RangeError
		if got := errors.As(err, &e); got != (c.outside != "") || got && e.Field != c.outside {
			t.Errorf("%v: %v", p, err)
		}
		if r.Seen != origin.Measured || r.Source != "trial pieces" {
			t.Errorf("%v: %s, %s", p, r.Source, r.Seen)
		}
	}
	if b.Confidence() != origin.FromMemory { // the composition still is
		t.Errorf("confidence %s", b.Confidence())
	}
}

// TestPropertyLinesInJob: a job asks the same curve, also when the current
// density is what is sought.
func TestPropertyLinesInJob(t *testing.T) {
	b := lined(t)
	at := bath.OperatingPoint{Temperature: units.Celsius(33), Content: 6, CurrentDensity: 100}
	l := layer()
	l.MinThickness, l.CurrentDensity = 0.6*units.Micrometre, 100
	s, err := bath.EstimateRange(l, b, at)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "efficiency", float64(s.Typical.Efficiency), 0.36, 1e-12)
	near(t, "low", float64(s.Efficiency.Low), 0.35, 1e-12)
	near(t, "high", float64(s.Efficiency.High), 0.37, 1e-12)
	back := layer()
	back.MinThickness, back.Time = l.MinThickness, s.Typical.Time
	s, err = bath.EstimateRange(back, b, at)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "current density found", float64(s.Typical.CurrentDensity), 100, 1e-9)
	if !(s.CurrentDensity.Low < 100 && s.CurrentDensity.High > 100) {
		t.Errorf("band %s", s.CurrentDensity)
	}
	pb, err := b.At(at)
	if err != nil || len(pb.Efficiency.Points()) != 2 {
		t.Errorf("%v, %d points", err, len(pb.Efficiency.Points()))
	}
	if _, err := plating.Estimate(&s.Layer); err != nil {
		t.Error(err)
	}
}

// TestBadLines: lines that cannot be interpolated are refused by name.
func TestPropertyBadLines(t *testing.T) {
	for name, f := range map[string]func(*bath.Bath){
		"efficiency line 2: temperature and content":  func(b *bath.Bath) { b.Lines[1].Temperature = 0 },
		"efficiency line 3: temperature and content":  func(b *bath.Bath) { b.Lines[2].Content = 4 },
		"efficiency line 1: point 1: low efficiency":  func(b *bath.Bath) { b.Lines[0].Points[0].Low = 0 },
		"efficiency line 1: point 1: high efficiency": func(b *bath.Bath) { b.Lines[0].Points[0].High = 1.2 },
		"efficiency line 1: point 1: efficiency":      func(b *bath.Bath) { b.Lines[0].Points[0].Low = 0.9 },
		"efficiency line 1: point 2: current density": func(b *bath.Bath) { b.Lines[0].Points[1].CurrentDensity = 50 },
		"efficiency line 4: point 1: current density": func(b *bath.Bath) { b.Lines[3].Points[0].CurrentDensity = 0 },
		"efficiency line 1: content":                  func(b *bath.Bath) { b.Lines[0].Content = -1 },
	} {
		b := lined(t)
		f(&b)
		var e *units.ValueError
		if err := b.Check(); !errors.As(err, &e) || e.Field != name {
			t.Errorf("%v, want %q", err, name)
		}
	}
}
