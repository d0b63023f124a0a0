package shape

import (
	"fmt"
	"math"
	"testing"

	"example.com/laydown/units"
)

// TestPropertyBadArguments puts bad numbers into every argument of the functions
// and methods that are not bodies.
func TestPropertyBadArguments(t *testing.T) {
	type call struct {
		name string
		good []float64
		f    func(x []float64) (float64, error)
	}
	length := func(x float64) units.Length { return units.Length(x) }
	calls := []call{
		{"OvalLink", []float64{0.012, 0.008, 0.0016}, func(x []float64) (float64, error) {
			l, err := OvalLink(length(x[0]), length(x[1]), length(x[2]))
			return float64(l), err
		}},
		{"EdgeShare", []float64{0.06, 0.005, 0.0008}, func(x []float64) (float64, error) {
			s, err := EdgeShare(length(x[0]), length(x[1]), length(x[2]))
			return float64(s), err
		}},
		{"SheetFromMass", []float64{0.0034, 8500, 0.0008}, func(x []float64) (float64, error) {
			a, err := SheetFromMass(units.Mass(x[0]), units.Density(x[1]), length(x[2]))
			return float64(a), err
		}},
		{"WireFromMass", []float64{0.005, 8500, 0.0005}, func(x []float64) (float64, error) {
			a, err := WireFromMass(units.Mass(x[0]), units.Density(x[1]), length(x[2]))
			return float64(a), err
		}},
		{"MinorDiameter", []float64{0.003, 0.0005}, func(x []float64) (float64, error) {
			d, err := Thread{Diameter: length(x[0]), Pitch: length(x[1])}.MinorDiameter()
			return float64(d), err
		}},
		{"Factor", []float64{0.003, 0.0005}, func(x []float64) (float64, error) {
			k, err := Thread{Diameter: length(x[0]), Pitch: length(x[1])}.Factor()
			return float64(k), err
		}},
		{"Covers", []float64{0.005, 0.002}, func(x []float64) (float64, error) {
			a, err := ScrewHead{Diameter: length(x[0]), Height: length(x[1])}.Covers()
			return float64(a), err
		}},
		{"Hole.Change", []float64{0.002, 0.003}, func(x []float64) (float64, error) {
			a, err := Hole{Diameter: length(x[0]), Depth: length(x[1])}.Change()
			if s, err2 := (Hole{Diameter: length(x[0]), Depth: length(x[1])}).Working(); (err == nil) != (err2 == nil) ||
				s.Result.SI != float64(a) {
				t.Errorf("hole %v: Change %v %v, Working %v %v", x, a, err, s.Result.SI, err2)
			}
			if err != nil {
				return float64(a), err
			}
			return 1 + math.Abs(float64(a)), nil // a change may be zero or less
		}},
	}
	for _, c := range calls {
		if got, err := c.f(c.good); err != nil || !(got > 0) {
			t.Errorf("%s%v: %v, %v", c.name, c.good, got, err)
		}
		for i := range c.good {
			for _, bad := range []float64{nan, math.Inf(1), math.Inf(-1), 0, -1, 1e300, math.MaxFloat64, 1e-300, 5e-324} {
				x := append([]float64(nil), c.good...)
				x[i] = bad
				name := fmt.Sprintf("%s%v", c.name, x)
				got, err := c.f(x)
				if err != nil {
					typed(t, name, err)
					if got != 0 {
						t.Errorf("%s: %v came with the error", name, got)
					}
					continue
				}
				if bad-bad != 0 || bad <= 0 || !(got > 0 && got <= math.MaxFloat64) {
					t.Errorf("%s: accepted, %v", name, got)
				}
			}
		}
	}
	// A link whose wire leaves no hole, or that is wider than long.
	for _, x := range [][3]units.Length{{0.012, 0.008, 0.004}, {0.008, 0.012, 0.001}} {
		_, err := OvalLink(x[0], x[1], x[2])
		if err == nil {
			t.Errorf("OvalLink%v: accepted", x)
		} else {
			typed(t, fmt.Sprint(x), err)
		}
	}
	if _, err := (Hole{Diameter: 0.002, Bare: true}).Change(); err != nil {
		t.Errorf("a bare hole needs no depth: %v", err)
	}
	if _, err := (Hole{Diameter: 0.002, Bare: true, Depth: -1}).Change(); err == nil {
		t.Error("a negative depth of a bare hole is accepted")
	}
}

// TestPropertyNames: every option says what it is, unknown ones too.
func TestPropertyNames(t *testing.T) {
	seen := map[string]bool{}
	for _, s := range []fmt.Stringer{BothFaces, OneFace, Faces(9), BothSides, OutsideOnly, InsideOnly, Sides(9),
		CheeseHead, PanHead, CountersunkHead, HeadStyle(9)} {
		if s.String() == "" || seen[s.String()] {
			t.Errorf("%T %q is empty or not unique", s, s)
		}
		seen[s.String()] = true
	}
}

// TestPropertyHoleMouths: holes that fit one by one may still be more than the
// face; just below that they pass, just above they do not.
func TestPropertyHoleMouths(t *testing.T) {
	for _, p := range []Body{
		Plate{Length: 0.06, Width: 0.04, Faces: OneFace},
		Disc{Diameter: 0.05, Faces: OneFace},
		Ring{Outer: 0.06, Inner: 0.03, Faces: OneFace},
	} {
		for _, share := range []float64{0.99, 1.01} {
			const count = 1000
			d := 2 * math.Sqrt(share*area(t, p)/math.Pi/count)
			_, err := Drilled{p, []Hole{{Diameter: units.Length(d), Depth: 0.01, Count: count, Faces: OneFace}}}.Area()
			if (err != nil) != (share > 1) {
				t.Errorf("%T, mouths %.2f of the face: %v", p, share, err)
			}
		}
	}
}

// TestPropertyBounds: what lies just on a bound is allowed where the comments
// say so.
func TestPropertyBounds(t *testing.T) {
	if l, err := OvalLink(0.01, 0.01, 0.002); err != nil || apart(float64(l), math.Pi*0.008) > 1e-12 {
		t.Errorf("round link: %v, %v", l, err)
	}
	for _, p := range []Body{
		ScrewHead{Style: PanHead, Diameter: 0.01, Height: 0.005},
		Torus{CentreDiameter: 0.01, TubeDiameter: 0.01},
		Cap{SphereDiameter: 0.01, Height: 0.01},
	} {
		if _, err := p.Area(); err != nil {
			t.Errorf("%+v: %v", p, err)
		}
	}
}
