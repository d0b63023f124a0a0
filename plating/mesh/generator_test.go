package mesh

import (
	"errors"
	"fmt"
	"math"
	"testing"
	"time"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestReferenceGenerators holds area and volume of every generated body against
// the elementary formulas [Geometry] at three sizes and three gradings: sound,
// and converging with the square of the size.
func TestReferenceGenerators(t *testing.T) {
	testdata.SlowOnly(t)
	for _, s := range samples() {
		for _, grade := range []float64{0, 1, 2} {
			t.Run(fmt.Sprintf("%s/%g", s.name, grade), func(t *testing.T) {
				var worse float64
				for i, size := range []units.Length{s.coarse, s.coarse / 2, s.coarse / 4} {
					m := must(t)(s.make(Grid{Size: size, Grade: grade}))
					r := report(t, m)
					if !r.Sound() || r.Euler != s.euler || r.Components != 1 || r.Vertices != len(m.Vertices) {
						t.Fatalf("size %v: %v", size, r)
					}
					if math.Abs(r.SolidAngle-4*math.Pi) > 1e-9 {
						t.Errorf("solid angle %v", r.SolidAngle)
					}
					err := math.Max(apart(float64(r.Area), s.area), apart(float64(r.Volume), s.volume))
					if float64(r.Area) > s.area*(1+1e-12) && s.name != "torus" {
						t.Errorf("size %v: the area is above that of the smooth body", size)
					}
					if i > 0 && err > worse/2.8 && err > 1e-13 {
						t.Errorf("size %v: error %.3g after %.3g", size, err, worse)
					}
					worse = err
				}
				if worse > s.tol {
					t.Errorf("error %.3g on the finest mesh, want below %.3g", worse, s.tol)
				}
			})
		}
	}
}

// TestPropertySize: no straight side is longer than Size, but for a few per
// cent on round parts, and graded panels are smaller at edges.
func TestPropertySize(t *testing.T) {
	for _, s := range samples() {
		for _, grade := range []float64{1, 2, 3} {
			g := Grid{Size: 1.5e-3, Grade: grade}
			m := must(t)(s.make(g))
			longest, shortest := 0., math.Inf(1)
			for _, e := range m.sides() {
				// The diagonal of a square panel may be longer than its sides.
				l := r3.Norm(r3.Sub(m.Vertices[e.low], m.Vertices[e.high])) / math.Sqrt2
				longest, shortest = max(longest, l), min(shortest, l)
			}
			if longest > 1.1*float64(g.Size) {
				t.Errorf("%s, grade %g: longest side %.3g of %.3g", s.name, grade, longest, float64(g.Size))
			}
			if grade == 3 && shortest > 0.1*float64(g.Size) && s.name != "sphere" && s.name != "torus" {
				t.Errorf("%s: shortest side %.3g, not graded", s.name, shortest)
			}
		}
	}
}

// TestReferenceDisc holds the sheet against the area of the polygon it is, and
// looks at its rim.
func TestReferenceDisc(t *testing.T) {
	for _, grade := range []float64{1, 2} {
		m := must(t)(Disc(0.04, Grid{Size: 1e-3, Grade: grade}))
		r := report(t, m)
		n := 20 * grade
		if r.Triangles != int(6*n*n) || r.OpenEdges != int(6*n) || r.Euler != 1 || r.TurnedEdges != 0 || r.Sound() ||
			r.Watertight() {
			t.Errorf("grade %g: %v", grade, r)
		}
		x := math.Pi / (3 * n)
		if want := math.Pi * 4e-4 * math.Sin(x) / x; apart(float64(r.Area), want) > 1e-12 {
			t.Errorf("grade %g: area %v, want %v", grade, float64(r.Area), want)
		}
		for i := range m.Triangles {
			if m.cross2(i).Z <= 0 {
				t.Fatalf("triangle %d looks down", i)
			}
		}
		// The ring next to the rim is (1/n)^g of the radius wide.
		next := 0.
		for _, v := range m.Vertices {
			if d := r3.Norm(v); d < 0.02*(1-1e-9) {
				next = max(next, d)
			}
		}
		if want := 0.02 * (1 - math.Pow(1/n, grade)); apart(next, want) > 1e-12 {
			t.Errorf("grade %g: ring next to the rim %v, want %v", grade, next, want)
		}
	}
}

// TestPropertyMirror: blocks and bodies of revolution lie evenly around the
// origin: the centre of area of a symmetric body is its middle.
func TestPropertyMirror(t *testing.T) {
	for _, s := range samples() {
		if s.name == "cup" {
			continue
		}
		m := must(t)(s.make(Grid{Size: 2e-3, Grade: 2}))
		var sum r3.Vec
		for i := range m.Triangles {
			a, b, c := m.Corners(i)
			sum = r3.Add(sum, r3.Scale(r3.Norm(m.cross2(i))/6, r3.Add(a, r3.Add(b, c))))
		}
		if r3.Norm(sum) > 1e-12*s.area {
			t.Errorf("%s: centre of area off by %v", s.name, r3.Scale(1/s.area, sum))
		}
	}
}

// TestPropertyBadGenerators puts bad numbers into every dimension and the grid.
func TestPropertyBadGenerators(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	calls := []struct {
		name string
		good []units.Length
		make func(d []units.Length, g Grid) (Mesh, error)
	}{
		{"Box", []units.Length{3, 2, 1}, func(d []units.Length, g Grid) (Mesh,
			error) {
			return Box(d[0], d[1], d[2], g)
		}},
		{"Plate", []units.Length{3, 2, 1, 0.3}, func(d []units.Length, g Grid) (Mesh, error) {
			return Plate(d[0], d[1], d[2],
				d[3], g)
		}},
		{"Disc", []units.Length{3}, func(d []units.Length, g Grid) (Mesh, error) { return Disc(d[0], g) }},
		{"Cylinder", []units.Length{3, 2}, func(d []units.Length, g Grid) (Mesh,
			error) {
			return Cylinder(d[0], d[1], g)
		}},
		{"Tube", []units.Length{3, 2, 1}, func(d []units.Length, g Grid) (Mesh,
			error) {
			return Tube(d[0], d[1], d[2], g)
		}},
		{"Cup", []units.Length{3, 2, 2, 1}, func(d []units.Length, g Grid) (Mesh, error) {
			return Cup(d[0], d[1], d[2], d[3],
				g)
		}},
		{"Torus", []units.Length{3, 2}, func(d []units.Length, g Grid) (Mesh, error) { return Torus(d[0], d[1], g) }},
		{"Sphere", []units.Length{3}, func(d []units.Length, g Grid) (Mesh, error) { return Sphere(d[0], g) }},
	}
	refused := func(name string, m Mesh, err error) {
		t.Helper()
		if err == nil || m.Triangles != nil {
			t.Errorf("%s: accepted", name)
			return
		}
		typed(t, name, err)
	}
	good := Grid{Size: 1}
	for _, c := range calls {
		if _, err := c.make(c.good, good); err != nil {
			t.Errorf("%s: %v", c.name, err)
		}
		for i := range c.good {
			for _, bad := range []float64{nan, inf, -inf, 0, -1, 1e300, 1e-300, 1e7} {
				d := append([]units.Length(nil), c.good...)
				d[i] = units.Length(bad)
				m, err := c.make(d, good)
				refused(fmt.Sprint(c.name, d), m, err)
			}
		}
		for _, size := range []float64{nan, inf, 0, -1, 1e-300, 1e-9, 1e-4} {
			m, err := c.make(c.good, Grid{Size: units.Length(size)})
			refused(fmt.Sprint(c.name, " size ", size), m, err)
		}
		for _, grade := range []float64{nan, inf, -1, 0.5, 5.1} {
			m, err := c.make(c.good, Grid{Size: 1, Grade: grade})
			refused(fmt.Sprint(c.name, " grade ", grade), m, err)
		}
	}
	for _, c := range []struct {
		name string
		f    func() (Mesh, error)
	}{
		{"thick edge", func() (Mesh, error) { return Plate(3, 2, 1, 0.51, good) }},
		{"thin tube", func() (Mesh, error) { return Tube(1, 1, 1, good) }},
		{"wide recess", func() (Mesh, error) { return Cup(1, 1, 1, 0.5, good) }},
		{"deep recess", func() (Mesh, error) { return Cup(1, 1, 0.5, 1, good) }},
		{"torus without hole", func() (Mesh, error) { return Torus(1, 1, good) }},
	} {
		m, err := c.f()
		refused(c.name, m, err)
	}
}

// TestPropertyBoundedBodies: a body with more panels than anybody can use is
// refused at once, whatever its shape.
func TestPropertyBoundedBodies(t *testing.T) {
	fine := Grid{Size: units.Micrometre}
	begin := time.Now()
	for name, err := range map[string]error{
		"sphere": func() error { _, err := Sphere(units.Millimetre, fine); return err }(),
		"box":    func() error { _, err := Box(units.Metre, units.Millimetre, units.Millimetre, fine); return err }(),
	} {
		var v *units.ValueError
		if !errors.As(err, &v) || v.Field != "panel size" {
			t.Errorf("%s: %v", name, err)
		}
	}
	if d := time.Since(begin); d > time.Second {
		t.Errorf("it took %v to refuse them", d)
	}
}

// TestPropertyGeneratorsAreBounded: a grid that would fill memory is refused at once,
// by the panels across, by the area and by the grading.
func TestPropertyGeneratorsAreBounded(t *testing.T) {
	const d = 100 * units.Millimetre
	for name, make := range map[string]func(Grid) (Mesh, error){
		"box":      func(g Grid) (Mesh, error) { return Box(d, d, d, g) },
		"plate":    func(g Grid) (Mesh, error) { return Plate(d, d, d, d/4, g) },
		"cylinder": func(g Grid) (Mesh, error) { return Cylinder(d, d, g) },
		"tube":     func(g Grid) (Mesh, error) { return Tube(d, d/2, d, g) },
		"cup":      func(g Grid) (Mesh, error) { return Cup(d, d, d/2, d/2, g) },
	} {
		for _, g := range []Grid{{Size: d / 1000}, {Size: 1e-12}, {Size: 5e-324}, {Size: d / 490, Grade: 2},
			{Size: d / 490, Grade: 5}} {
			var e *units.ValueError
			if m, err := make(g); !errors.As(err, &e) {
				t.Errorf("%s, panels of %s, grading %v: %d triangles, %v", name, g.Size, g.Grade, len(m.Triangles), err)
			}
		}
	}
	for name, f := range map[string]func() (Mesh, error){
		"ball":  func() (Mesh, error) { return Sphere(1*units.Millimetre, Grid{Size: 1e-6}) },
		"disc":  func() (Mesh, error) { return Disc(d, Grid{Size: d / 490, Grade: 5}) },
		"torus": func() (Mesh, error) { return Torus(d, d/4, Grid{Size: d / 2000}) },
	} {
		var e *units.ValueError
		if m, err := f(); !errors.As(err, &e) {
			t.Errorf("%s: %d triangles, %v", name, len(m.Triangles), err)
		}
	}
}
