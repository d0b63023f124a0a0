package throwing

import (
	"testing"

	"example.com/laydown/units"
)

// FuzzRules feeds any numbers: a typed error, or a value that is finite and,
// where it is a share, from 0 to 1.
func FuzzRules(f *testing.F) {
	f.Add(5.0, 4.0, 1e-3, 10.0, true)
	f.Add(1.0000001, 1e300, 1e-300, 1e-9, false)
	f.Fuzz(func(t *testing.T, a, b, c, d float64, flag bool) {
		check := func(name string, v float64, err error, share bool) {
			t.Helper()
			if err != nil {
				typed(t, name, err)
				if v != 0 {
					t.Fatalf("%s: %v came with %v", name, v, err)
				}
			} else if v-v != 0 || share && !(v >= 0 && v <= 1) {
				t.Fatalf("%s: %v of %v %v %v %v", name, v, a, b, c, d)
			}
		}
		p, q := units.Ratio(a), units.Ratio(b)
		h, err := NewHaringBlum(p, q)
		check("Haring-Blum", float64(h.Power), err, false)
		e, err := NewHeatley(p, q)
		check("Heatley", float64(e.Power), err, false)
		fi, err := NewField(p, q)
		check("Field", float64(fi.Power), err, false)
		m, err := (Field{p, q}).Metal()
		check("Field.Metal", float64(m), err, false)
		m, err = LinearRatio(p, q)
		check("LinearRatio", float64(m), err, false)
		m, err = TafelRatio(p, q)
		check("TafelRatio", float64(m), err, false)
		m, err = TafelWagner(p, q)
		check("TafelWagner", float64(m), err, false)
		r := Recess{Width: units.Length(a), Depth: units.Length(b), Trench: flag, BareFloor: c > 1}
		k, s := units.Conductivity(c), units.AreaResistance(d)
		th, err := r.Linear(k, s)
		check("Linear", float64(th.Bottom), err, true)
		check("Linear mean", float64(th.Mean), err, true)
		th, err = r.Tafel(k, s)
		check("Tafel", float64(th.Bottom), err, true)
		check("Tafel mean", float64(th.Mean), err, true)
		l, err := r.LinearDepth(q, k, s)
		check("LinearDepth", float64(l), err, false)
		l, err = r.TafelDepth(q, k, s)
		check("TafelDepth", float64(l), err, false)
		x, err := Panel267.Place(units.Current(a), units.CurrentDensity(b))
		check("Place", float64(x), err, true)
		dist, err := TwoLevels(p, q)
		check("TwoLevels", float64(dist.MinToAverage), err, true)
	})
}
