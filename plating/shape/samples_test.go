package shape

import (
	"fmt"
	"math"
	"testing"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// samples holds one or more sound values of every type, with invented sizes in
// metres, for the tests that go over all of them.
func samples() []Body {
	plate := Plate{Length: 0.11, Width: 0.09, Thickness: 0.0025}
	return []Body{
		plate,
		Plate{Length: 0.18, Width: 0.15, Faces: OneFace},
		Disc{Diameter: 0.08, Thickness: 0.006},
		Disc{Diameter: 0.08, Faces: OneFace},
		Ring{Outer: 0.16, Inner: 0.12, Thickness: 0.001},
		Ring{Outer: 0.16, Inner: 0.159, Faces: OneFace},
		Cylinder{Diameter: 0.009, Length: 0.045, OpenEnds: 1},
		Tube{Outer: 0.02, Inner: 0.017, Length: 0.6},
		Tube{Outer: 0.02, Inner: 0.017, Length: 0.6, Sides: OutsideOnly, OpenEnds: 1},
		Tube{Outer: 0.02, Inner: 0.017, Length: 0.6, Sides: InsideOnly, OpenEnds: 2},
		HexBar{AcrossFlats: 0.007, Length: 0.03},
		Cone{BaseDiameter: 0.014, TopDiameter: 0.004, Height: 0.04},
		Cone{BaseDiameter: 0.014, Height: 0.04, OpenBase: true},
		Cone{BaseDiameter: 0.004, TopDiameter: 0.014, Height: 0.01, OpenTop: true},
		Sphere{Diameter: 0.016},
		Cap{BaseDiameter: 0.09, Height: 0.012},
		Cap{SphereDiameter: 0.09, Height: 0.012},
		Cap{SphereDiameter: 0.09, Height: 0.012, OpenBase: true},
		Torus{CentreDiameter: 0.114, TubeDiameter: 0.006},
		Wire{Diameter: 0.0012, Length: 3},
		Chain{WireDiameter: 0.0016, Centreline: 0.028, Links: 120},
		Chain{WireDiameter: 0.0016, Centreline: 0.028, Length: 2, LinkPitch: 0.0088},
		Thread{Diameter: 0.003, Pitch: 0.0005, Length: 0.006},
		ScrewHead{Diameter: 0.005, Height: 0.002, Shank: 0.003},
		ScrewHead{Style: PanHead, Diameter: 0.005, Height: 0.002},
		ScrewHead{Style: CountersunkHead, Diameter: 0.006, Height: 0.0015, Shank: 0.003},
		Drilled{plate, []Hole{{Diameter: 0.008, Depth: 0.0025, Count: 4}, {Diameter: 0.003, Depth: 0.001, Blind: true},
			{Diameter: 0.002, Bare: true}}},
		Drilled{plate, nil},
		Assembly{plate, Sphere{Diameter: 0.016}, Torus{CentreDiameter: 0.114, TubeDiameter: 0.006}},
		Times{Count: 12, Piece: Sphere{Diameter: 0.016}},
		Masked{Piece: plate, Covered: 0.0012},
		Less{Piece: plate, Off: Disc{Diameter: 0.008, Faces: OneFace}},
		Known{Value: 0.041},
		Known{Value: 0.041, What: "area of the case", Source: "drawing"},
		WeighedSheet{Mass: 0.0034, Density: 8500, Thickness: 0.0008, Outline: 0.31},
		WeighedSheet{Mass: 0.0034, Density: 8500, Thickness: 0.0008, Faces: OneFace},
		WeighedWire{Mass: 0.005, Density: 8500, Diameter: 0.0005},
	}
}

// TestPropertyWorking puts the shown numbers into the shown formulas: every step
// must give its own result, and the last one the area.
func TestPropertyWorking(t *testing.T) {
	check := func(name string, steps []working.Step) {
		for _, s := range steps {
			got, err := s.Recompute()
			if err != nil {
				t.Errorf("%s: %v", name, err)
				continue
			}
			if apart(got, s.Result.SI) > 1e-12 {
				t.Errorf("%s: %s gives %.17g, result %.17g", name, s.Formula, got, s.Result.SI)
			}
			if s.Source == "" || s.Result.Meaning == "" || s.Result.Value == "" {
				t.Errorf("%s: %s lacks source, meaning or value: %+v", name, s.Formula, s)
			}
			for _, term := range s.Terms {
				if term.Meaning == "" || term.Value == "" {
					t.Errorf("%s: term %s lacks meaning or value", name, term.Symbol)
				}
			}
		}
	}
	for _, p := range samples() {
		name := fmt.Sprintf("%T%+v", p, p)
		a, err := p.Area()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		steps, err := p.Working()
		if err != nil || len(steps) == 0 {
			t.Errorf("%s: %d steps, %v", name, len(steps), err)
			continue
		}
		check(name, steps)
		if last := steps[len(steps)-1].Result; last.SI != float64(a) || last.Symbol != "A" {
			t.Errorf("%s: last step ends with %s = %v, area %v", name, last.Symbol, last.SI, a)
		}
	}
	for _, h := range []Hole{
		{Diameter: 0.008, Depth: 0.003}, {Diameter: 0.008, Depth: 0.003, Count: 3, Faces: OneFace},
		{Diameter: 0.008, Depth: 0.003, Blind: true}, {Diameter: 0.008, Bare: true, Blind: true},
	} {
		a, err := h.Change()
		s, err2 := h.Working()
		if err != nil || err2 != nil || s.Result.SI != float64(a) {
			t.Errorf("%+v: change %v (%v), step %v (%v)", h, a, err, s.Result.SI, err2)
		}
		check(fmt.Sprintf("%+v", h), []working.Step{s})
	}
}

// area is Area for pieces that must be sound.
func area(t *testing.T, p Body) float64 {
	t.Helper()
	a, err := p.Area()
	if err != nil {
		t.Fatalf("%+v: %v", p, err)
	}
	return float64(a)
}

// same fails unless two areas agree to 1e-12.
func same(t *testing.T, what string, a, b float64) {
	t.Helper()
	if apart(a, b) > 1e-12 {
		t.Errorf("%s: %.15g and %.15g", what, a, b)
	}
}

// A foreign is a piece made outside the package.
type foreign struct {
	value units.Area
	err   error
	steps []working.Step
	fail  error
}

func (f foreign) Area() (units.Area, error)        { return f.value, f.err }
func (f foreign) Working() ([]working.Step, error) { return f.steps, f.fail }

var nan = math.NaN()
