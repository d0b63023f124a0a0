package throwing

import (
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestPropertyBadArguments puts bad numbers into every argument of every
// function. NaN and infinities must be refused; anything else gives a typed
// error without a value, or a value that is finite.
func TestPropertyBadArguments(t *testing.T) {
	ratio := func(r units.Ratio, err error) (float64, error) { return float64(r), err }
	length := func(l units.Length, err error) (float64, error) { return float64(l), err }
	throw := func(th Throw, err error) (float64, error) { return float64(th.Bottom + th.Mean), err }
	hole := func(x []float64) Recess { return Recess{Width: units.Length(x[0]), Depth: units.Length(x[1])} }
	q := func(x float64) units.Ratio { return units.Ratio(x) }
	kappa := func(x float64) units.Conductivity { return units.Conductivity(x) }
	slope := func(x float64) units.AreaResistance { return units.AreaResistance(x) }
	calls := []struct {
		name string
		good []float64
		f    func(x []float64) (float64, error)
	}{
		{"NewHaringBlum", []float64{5, 4}, func(x []float64) (float64, error) {
			h, err := NewHaringBlum(q(x[0]), q(x[1]))
			return float64(h.Power), err
		}},
		{"HeatleyOf", []float64{5, 4}, func(x []float64) (float64, error) {
			h, err := NewHeatley(q(x[0]), q(x[1]))
			return float64(h.Power), err
		}},
		{"FieldOf", []float64{5, 4}, func(x []float64) (float64, error) {
			h, err := NewField(q(x[0]), q(x[1]))
			return float64(h.Power), err
		}},
		{"HaringBlum.Metal", []float64{5, 0.2}, func(x []float64) (float64, error) {
			return ratio(HaringBlum{q(x[0]),
				q(x[1])}.Metal())
		}},
		{"Heatley.Metal", []float64{5, 0.2}, func(x []float64) (float64, error) {
			return ratio(Heatley{q(x[0]),
				q(x[1])}.Metal())
		}},
		{"Field.Metal", []float64{5, 0.2}, func(x []float64) (float64, error) {
			return ratio(Field{q(x[0]),
				q(x[1])}.Metal())
		}},
		{"Cell.Ratio", []float64{1, 5}, func(x []float64) (float64, error) {
			return ratio(HaringBlumCell{units.Length(x[0]), units.Length(x[1])}.Ratio())
		}},
		{"Cell.Wagner", []float64{1, 5, 10, 1e-3}, func(x []float64) (float64, error) {
			return ratio(HaringBlumCell{units.Length(x[0]), units.Length(x[1])}.Wagner(kappa(x[2]), slope(x[3])))
		}},
		{"LinearRatio", []float64{5, 1}, func(x []float64) (float64, error) { return ratio(LinearRatio(q(x[0]), q(x[1]))) }},
		{"LinearWagner", []float64{5, 3}, func(x []float64) (float64, error) {
			return ratio(LinearWagner(q(x[0]),
				q(x[1])))
		}},
		{"TafelRatio", []float64{5, 1}, func(x []float64) (float64, error) { return ratio(TafelRatio(q(x[0]), q(x[1]))) }},
		{"TafelWagner", []float64{5, 3}, func(x []float64) (float64, error) { return ratio(TafelWagner(q(x[0]), q(x[1]))) }},
		{"MetalRatio", []float64{3, 0.9, 0.8}, func(x []float64) (float64, error) {
			return ratio(MetalRatio(q(x[0]), units.Efficiency(x[1]), units.Efficiency(x[2])))
		}},
		{"TwoLevels", []float64{3, 0.2}, func(x []float64) (float64, error) {
			d, err := TwoLevels(q(x[0]), q(x[1]))
			return float64(d.MinToAverage), err
		}},
		{"FromReadings", []float64{1e-6, 2e-6, 3e-6}, func(x []float64) (float64, error) {
			d, err := FromReadings([]units.Length{units.Length(x[0]), units.Length(x[1]), units.Length(x[2])})
			return float64(d.MinToAverage), err
		}},
		{"Number", []float64{1e-3, 2e-3, 10, 1e-4}, func(x []float64) (float64,
			error) {
			return ratio(hole(x).Number(kappa(x[2]), slope(x[3])))
		}},
		{"Linear", []float64{1e-3, 2e-3, 10, 1e-4}, func(x []float64) (float64,
			error) {
			return throw(hole(x).Linear(kappa(x[2]), slope(x[3])))
		}},
		{"Tafel", []float64{1e-3, 2e-3, 10, 1e-4}, func(x []float64) (float64,
			error) {
			return throw(hole(x).Tafel(kappa(x[2]), slope(x[3])))
		}},
		{"LinearDepth", []float64{1e-3, 0.3, 10, 1e-3}, func(x []float64) (float64, error) {
			return length(Recess{Width: units.Length(x[0])}.LinearDepth(q(x[1]), kappa(x[2]), slope(x[3])))
		}},
		{"TafelDepth", []float64{1e-3, 0.3, 10, 1e-3}, func(x []float64) (float64, error) {
			return length(Recess{Width: units.Length(x[0])}.TafelDepth(q(x[1]), kappa(x[2]), slope(x[3])))
		}},
		{"Throw.Distribution", []float64{0.3, 0.5, 0.1}, func(x []float64) (float64, error) {
			d, err := Throw{q(x[0]), q(x[1])}.Distribution(q(x[2]))
			return float64(d.MinToAverage), err
		}},
		{"Density", []float64{1, 0.05}, func(x []float64) (float64, error) {
			j, err := Panel267.Density(units.Current(x[0]), units.Length(x[1]))
			return float64(j), err
		}},
		{"Place", []float64{1, 200}, func(x []float64) (float64, error) {
			return length(Panel267.Place(units.Current(x[0]), units.CurrentDensity(x[1])))
		}},
		{"Cathode", []float64{1, 1, 2}, func(x []float64) (float64, error) {
			return length(Trapezoid{units.Length(x[0]), units.Length(x[1]), units.Length(x[2])}.Cathode())
		}},
		{"Primary", []float64{1, 1, 2}, func(x []float64) (float64, error) {
			m, err := Trapezoid{units.Length(x[0]), units.Length(x[1]), units.Length(x[2])}.Primary()
			return float64(m.length), err
		}},
		{"At", []float64{0.3}, func(x []float64) (float64, error) {
			m, err := Trapezoid{1, 1, 2}.Primary()
			if err != nil {
				return 0, err
			}
			return ratio(m.At(units.Length(x[0])))
		}},
		{"PrimaryMap.Place", []float64{0.3}, func(x []float64) (float64, error) {
			m, err := Trapezoid{1, 1, 2}.Primary()
			if err != nil {
				return 0, err
			}
			return length(m.Place(q(x[0])))
		}},
	}
	for _, c := range calls {
		if v, err := c.f(c.good); err != nil || v == 0 || v-v != 0 {
			t.Errorf("%s%v: %v, %v", c.name, c.good, v, err)
		}
		for i := range c.good {
			for _, bad := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 0, -1, 1, 1e300, math.MaxFloat64, 1e-300,
				5e-324} {
				x := append([]float64(nil), c.good...)
				x[i] = bad
				name := fmt.Sprintf("%s%v", c.name, x)
				v, err := c.f(x)
				if err != nil {
					typed(t, name, err)
					if v != 0 {
						t.Errorf("%s: %v came with the error", name, v)
					}
					continue
				}
				if bad-bad != 0 || v-v != 0 {
					t.Errorf("%s: accepted, %v", name, v)
				}
			}
		}
	}
}

// TestPropertyBadChoices: what contradicts, or is not there.
func TestPropertyBadChoices(t *testing.T) {
	flat, err := Trapezoid{1, 1, 1}.Primary()
	if err != nil {
		t.Fatal(err)
	}
	errs := map[string]func() error{
		"K of 1":                    func() error { _, err := NewHaringBlum(1, 2); return err },
		"K of 0.5":                  func() error { _, err := NewField(0.5, 2); return err },
		"Field with K + M below 2":  func() error { _, err := NewField(1.2, 0.5); return err },
		"Haring-Blum of 100 %":      func() error { _, err := HaringBlum{5, 1}.Metal(); return err },
		"Heatley of 125 %":          func() error { _, err := Heatley{5, 1.25}.Metal(); return err },
		"Field of -100 %":           func() error { _, err := Field{5, -1}.Metal(); return err },
		"Field of 170 %":            func() error { _, err := Field{5, 1.7}.Metal(); return err },
		"near beyond far":           func() error { _, err := HaringBlumCell{2, 1}.Ratio(); return err },
		"P of 1":                    func() error { _, err := LinearRatio(1, 1); return err },
		"M over P":                  func() error { _, err := LinearWagner(2, 3); return err },
		"M of 1":                    func() error { _, err := TafelWagner(2, 1); return err },
		"M below 1":                 func() error { _, err := TwoLevels(0.5, 0.5); return err },
		"two readings":              func() error { _, err := FromReadings([]units.Length{1, 2}); return err },
		"wide hole":                 func() error { _, err := Recess{Width: 2, Depth: 1}.Linear(1, 1); return err },
		"wide hole, Tafel":          func() error { _, err := Recess{Width: 2, Depth: 1}.Tafel(1, 1); return err },
		"promise of 1":              func() error { _, err := Recess{Width: 1}.LinearDepth(1, 1, 1); return err },
		"promise in a wide hole":    func() error { _, err := Recess{Width: 1}.LinearDepth(0.99, 1, 1e-3); return err },
		"promise in a wide hole, T": func() error { _, err := Recess{Width: 1}.TafelDepth(0.99, 1, 1e-3); return err },
		"no cell":                   func() error { _, err := Panel(0).Density(1, 0.05); return err },
		"no cell, place":            func() error { _, err := Panel(9).Place(1, 100); return err },
		"long wall short":           func() error { _, err := Trapezoid{1, 2, 1}.Primary(); return err },
		"long cell":                 func() error { _, err := Trapezoid{1, 6, 7}.Primary(); return err },
		"sharp slant":               func() error { _, err := Trapezoid{1, 1, 4}.Primary(); return err },
		"high end":                  func() error { _, err := flat.At(0); return err },
		"beyond the panel":          func() error { _, err := flat.At(1.1); return err },
		"place on an even panel":    func() error { _, err := flat.Place(1); return err },
		"zero map":                  func() error { _, err := PrimaryMap{}.At(1); return err },
		"zero map, place":           func() error { _, err := PrimaryMap{}.Place(1); return err },
		"zero map, factor":          func() error { _, err := PrimaryMap{}.ShapeFactor(); return err },
		"deep recess":               func() error { _, err := DeepRecess.Distribution(); return err },
		"no class":                  func() error { _, err := Class(0).Distribution(); return err },
		"zero throw":                func() error { _, err := Throw{}.Distribution(0.1); return err },
	}
	for name, f := range errs {
		if err := f(); err == nil {
			t.Errorf("%s: accepted", name)
		} else {
			typed(t, name, err)
		}
	}
	var r *units.RangeError
	if err := errs["wide hole"](); !errors.As(err, &r) {
		t.Errorf("wide hole: %T", err)
	}
}

// TestPropertyClasses: bands are bands, from even to uneven, and say what they are.
func TestPropertyClasses(t *testing.T) {
	last := units.Ratio(1)
	for c := SmoothRound; c < DeepRecess; c++ {
		low, high, err := c.Band()
		if err != nil || !(0 < low && low < high && high <= 1) || low > last {
			t.Errorf("%v: %v to %v, %v", c, low, high, err)
		}
		last = low
		d, err := c.Distribution()
		if err != nil || d.MinToAverage != low || !strings.Contains(d.Basis, "common practice, no source") ||
			!strings.Contains(d.Basis, c.String()) {
			t.Errorf("%v: %+v, %v", c, d, err)
		}
	}
}
