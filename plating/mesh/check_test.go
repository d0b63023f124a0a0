package mesh

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// TestIndependentBunny holds the scanned bunny against figures computed by
// another program from the same data (testdata/README.md): area 218.6892713,
// volume 194.2883718, in the unit of the file.
func TestIndependentBunny(t *testing.T) {
	r := report(t, bunny(t, units.Metre))
	if math.Abs(float64(r.Area)-218.6892713) > 5e-8 || math.Abs(float64(r.Volume)-194.2883718) > 5e-8 {
		t.Errorf("area %.7f, volume %.7f", float64(r.Area), float64(r.Volume))
	}
	if r.Vertices != 1839 || r.Triangles != 3674 || r.Euler != 2 || r.OpenEdges != 0 || r.CrowdedEdges != 0 ||
		r.Degenerate != 0 || r.Duplicates != 0 || r.Components != 1 || !r.Sound() {
		t.Error(r)
	}
	size := r3.Sub(r.High, r.Low)
	for i, want := range []float64{9.9, 9.66, 7.54} { // printed to the digits shown, order not said
		if got := []float64{size.X, size.Y, size.Z}[i]; math.Abs(got-want) > 0.06 {
			t.Errorf("side %d of the box: %.4f, want about %.2f", i, got, want)
		}
	}
	mm := report(t, bunny(t, units.Millimetre))
	if apart(float64(mm.Area), 218.6892713e-6) > 1e-9 || apart(float64(mm.Volume), 194.2883718e-9) > 1e-9 {
		t.Errorf("in millimetres: area %v, volume %v", mm.Area, mm.Volume)
	}
}

// TestIndependentSolidAngle holds the solid angle of a triangle against an
// octant, a cube's face, and the sum around a point anywhere inside and outside.
func TestIndependentSolidAngle(t *testing.T) {
	m := Mesh{Vertices: []r3.Vec{{X: 1}, {Y: 1}, {Z: 1}}, Triangles: [][3]int32{{0, 1, 2}}}
	if got := m.solidAngleOf(0, r3.Vec{}); apart(got, math.Pi/2) > 1e-14 {
		t.Errorf("octant %v", got)
	}
	m = Mesh{Vertices: []r3.Vec{{X: 1, Y: 1, Z: 1}, {X: -1, Y: 1, Z: 1}, {X: -1, Y: -1, Z: 1}},
		Triangles: [][3]int32{{0, 1, 2}}}
	if got := m.solidAngleOf(0, r3.Vec{}); apart(got, math.Pi/3) > 1e-14 { // half of a sixth of 4 pi
		t.Errorf("half a cube's face %v", got)
	}
	rng := rand.New(rand.NewPCG(4, 4))
	ball := must(t)(Sphere(2, Grid{Size: 0.2}))
	for range 200 {
		p := r3.Vec{X: rng.Float64()*4 - 2, Y: rng.Float64()*4 - 2, Z: rng.Float64()*4 - 2}
		want := 0.
		if r3.Norm(p) < 0.97 {
			want = 4 * math.Pi
		} else if r3.Norm(p) < 1.001 {
			continue
		}
		if got := ball.solidAngle(p); math.Abs(got-want) > 1e-9 {
			t.Errorf("from %v: %v, want %v", p, got, want)
		}
	}
}

// TestPropertyCheckFaults makes one fault at a time and looks whether the
// report counts it.
func TestPropertyCheckFaults(t *testing.T) {
	cup := must(t)(Cup(0.04, 0.01, 0.03, 0.006, Grid{Size: 0.004, Grade: 2}))
	inner := must(t)(Box(0.001, 0.001, 0.001, Grid{Size: 0.001}))
	inner = must(t)(Translate(inner, r3.Vec{X: 0.0175, Z: 0.005}))
	turnedInner := inner.Clone()
	for i := range turnedInner.Triangles {
		turnedInner.flip(i)
	}
	cases := []struct {
		name   string
		change func(m *Mesh)
		seen   func(r Findings) bool
	}{
		{"hole", func(m *Mesh) { m.Triangles = m.Triangles[1:] }, func(r Findings) bool {
			return r.OpenEdges == 3 &&
				!r.Watertight() && r.Euler == 1
		}},
		{"copy", func(m *Mesh) { m.Triangles = append(m.Triangles, m.Triangles[7]) },
			func(r Findings) bool { return r.Duplicates == 1 && r.CrowdedEdges == 3 }},
		{"turned", func(m *Mesh) { m.flip(9) }, func(r Findings) bool {
			return r.TurnedEdges == 3 && !r.Oriented() &&
				r.Watertight()
		}},
		{"all turned", func(m *Mesh) {
			for i := range m.Triangles {
				m.flip(i)
			}
		}, func(r Findings) bool {
			return r.InsideOut == 1 && r.Oriented() && r.Volume < 0 && math.Abs(r.SolidAngle+4*math.Pi) < 1e-9
		}},
		{"needle", func(m *Mesh) { m.Triangles[3][1] = m.Triangles[3][0] }, func(r Findings) bool {
			return r.Degenerate == 1 &&
				r.OpenEdges > 0
		}},
		{"two parts", func(m *Mesh) {
			*m, _ = Merge(*m, must(t)(Translate(inner, r3.Vec{X: 1})))
		}, func(r Findings) bool {
			return r.Components == 2 && r.Enclosed == 0 && r.Euler == 4
		}},
		{"hollow", func(m *Mesh) { *m, _ = Merge(*m, turnedInner) }, func(r Findings) bool {
			return r.Enclosed == 1 && r.InsideOut == 0 && apart(float64(r.EnclosedArea), 6e-6) < 1e-12
		}},
		{"body in a body", func(m *Mesh) { *m, _ = Merge(*m, inner) }, func(r Findings) bool {
			return r.Enclosed == 1 &&
				r.InsideOut == 1
		}},
		{"unused vertex", func(m *Mesh) { m.Vertices = append(m.Vertices, r3.Vec{X: 5}) },
			func(r Findings) bool { return r.High.X < 1 && r.Euler == 2 }},
		{"overlap", func(m *Mesh) { *m, _ = Merge(*m, must(t)(Translate(*m, r3.Vec{X: 1e-4, Y: 1e-4, Z: 1e-4}))) },
			func(r Findings) bool {
				return r.Components == 2 && r.Watertight() && r.Crossing == 2
			}},
	}
	for _, c := range cases {
		m := cup.Clone()
		c.change(&m)
		r := report(t, m)
		if !c.seen(r) {
			t.Errorf("%s: %+v", c.name, r)
		}
		if sound := c.name == "two parts" || c.name == "hollow" || c.name == "unused vertex"; r.Sound() != sound {
			t.Errorf("%s: sound %v: %v", c.name, r.Sound(), r.refuse(false))
		}
		if r.String() == "" {
			t.Error("empty report")
		}
	}
}

// TestPropertyUnsound: what cannot be looked at is an error everywhere.
func TestPropertyUnsound(t *testing.T) {
	good := tetra(0.01)
	bad := map[string]Mesh{"empty": {}, "no triangles": {Vertices: good.Vertices},
		"no vertices": {Triangles: good.Triangles}}
	for name, v := range map[string]float64{"nan": math.NaN(), "inf": math.Inf(1), "-inf": math.Inf(-1), "far": 1e7} {
		for d := range 3 {
			m := good.Clone()
			*[]*float64{&m.Vertices[2].X, &m.Vertices[2].Y, &m.Vertices[2].Z}[d] = v
			bad[name] = m
		}
	}
	for name, i := range map[string]int32{"minus": -1, "over": 4, "least": math.MinInt32, "most": math.MaxInt32} {
		m := good.Clone()
		m.Triangles[1][2] = i
		bad[name] = m
	}
	for name, m := range bad {
		_, err := Area(m)
		typed(t, name+" Area", err)
		_, err = Volume(m)
		typed(t, name+" Volume", err)
		_, err = Check(m)
		typed(t, name+" Check", err)
		_, _, err = Repair(m, RepairOptions{})
		typed(t, name+" Repair", err)
		_, err = NewMeasuredPart(m, "", true)
		typed(t, name+" NewMeasuredPart", err)
		_, err = Subdivide(m)
		typed(t, name+" Subdivide", err)
		_, err = Split(m, 1, 0)
		typed(t, name+" Split", err)
		typed(t, name+" WriteSTL", WriteSTL(nil, m, 1))
		typed(t, name+" WritePLY", WritePLY(nil, m, 1, Skin{}))
	}
	if _, err := Area(Mesh{Vertices: good.Vertices, Triangles: [][3]int32{{0, 0, 1}}}); err == nil {
		t.Error("an area of zero is accepted")
	}
}

// TestPropertyPart: the area of a part leaves enclosed walls out, and its working
// comes to the same.
func TestPropertyPart(t *testing.T) {
	block := must(t)(Box(0.03, 0.02, 0.01, Grid{Size: 0.01}))
	hole := must(t)(Box(0.01, 0.01, 0.005, Grid{Size: 0.01}))
	for i := range hole.Triangles {
		hole.flip(i)
	}
	hollow := must(t)(Merge(block, hole))
	sheet := must(t)(Disc(0.04, Grid{Size: 0.002}))
	for _, c := range []struct {
		m    Mesh
		open bool
		want float64
	}{{block, false, 22e-4}, {hollow, false, 22e-4}, {bunny(t, units.Millimetre), false, 218.6892713e-6}, {sheet, true,
		report2(t, sheet)}} {
		p, err := NewMeasuredPart(c.m, "", c.open)
		if err != nil {
			t.Fatal(err)
		}
		a, err := p.Area()
		if err != nil || apart(float64(a), c.want) > 1e-9 {
			t.Errorf("area %v, want %v (%v)", float64(a), c.want, err)
		}
		steps, err := p.Working()
		if err != nil || len(steps) != 1 {
			t.Fatal(steps, err)
		}
		again, err := steps[0].Recompute()
		if err != nil || apart(again, steps[0].Result.SI) > 1e-12 || steps[0].Result.SI != float64(a) {
			t.Errorf("working %v, area %v, %v", again, a, err)
		}
		if working.Text(steps) == "" {
			t.Error("no text")
		}
	}
	if _, err := NewMeasuredPart(sheet, "", false); err == nil {
		t.Error("a sheet is taken for a body")
	}
	turned := block.Clone()
	turned.flip(3)
	if _, err := NewMeasuredPart(turned, "", true); err == nil {
		t.Error("a turned triangle is accepted")
	}
	var zero MeasuredPart
	if _, err := zero.Area(); err == nil {
		t.Error("the zero Part has an area")
	}
	if _, err := zero.Working(); err == nil {
		t.Error("the zero Part has a working")
	}
}

func report2(t *testing.T, m Mesh) float64 { return float64(report(t, m).Area) }

// TestPropertyTransform: area and volume go with the square and the cube of the
// scale and do not change by moves, turns and cuts.
func TestPropertyTransform(t *testing.T) {
	for _, s := range samples() {
		m := must(t)(s.make(Grid{Size: 4e-3, Grade: 2}))
		a, v := float64(report(t, m).Area), float64(report(t, m).Volume)
		for name, c := range map[string]struct {
			m Mesh
			f float64
		}{
			"move": {must(t)(Translate(m, r3.Vec{X: 1, Y: -2, Z: 3})), 1},
			"turn": {must(t)(Rotate(m, 0.7, r3.Vec{X: 1, Y: 2, Z: 3})), 1},
			"grow": {must(t)(Scale(m, 25.4)), 25.4},
			"cut":  {must(t)(Subdivide(m)), 1},
		} {
			r := report(t, c.m)
			if !r.Sound() || apart(float64(r.Area), a*c.f*c.f) > 1e-10 || apart(float64(r.Volume),
				v*c.f*c.f*c.f) > 1e-10 {
				t.Errorf("%s, %s: %v", s.name, name, r)
			}
		}
		if n := len(must(t)(Subdivide(m)).Triangles); n != 4*len(m.Triangles) {
			t.Errorf("%s: %d triangles after the cut", s.name, n)
		}
	}
	quarter := must(t)(Rotate(tetra(1), math.Pi/2, r3.Vec{Z: 2}))
	if v := quarter.Vertices[1]; math.Abs(v.X) > 1e-15 || math.Abs(v.Y-1) > 1e-15 {
		t.Errorf("a quarter turn takes x to %v", v)
	}
	for _, bad := range []float64{math.NaN(), math.Inf(1)} {
		_, err := Translate(tetra(1), r3.Vec{Y: bad})
		typed(t, "Translate", err)
		_, err = Rotate(tetra(1), bad, r3.Vec{Z: 1})
		typed(t, "Rotate angle", err)
		_, err = Rotate(tetra(1), 1, r3.Vec{Z: bad})
		typed(t, "Rotate axis", err)
		_, err = Scale(tetra(1), bad)
		typed(t, "Scale", err)
	}
	for _, f := range []float64{0, -1, 1e9} {
		_, err := Scale(tetra(1), f)
		typed(t, "Scale", err)
	}
	_, err := Rotate(tetra(1), 1, r3.Vec{})
	typed(t, "Rotate axis", err)
	_, err = Merge(tetra(1), Mesh{Triangles: [][3]int32{{0, 1, 2}}})
	typed(t, "Merge", err)
}

// TestPropertyTooManyPieces: a mesh of more pieces than are looked at is not
// called sound.
func TestPropertyTooManyPieces(t *testing.T) {
	grain := must(t)(Sphere(0.001, Grid{Size: 0.001}))
	var few, many []Mesh
	for i := range mostNested + 1 {
		g := must(t)(Translate(grain, r3.Vec{X: 0.002 * float64(i)}))
		if many = append(many, g); i < 20 {
			few = append(few, g)
		}
	}
	if _, err := NewMeasuredPart(must(t)(Merge(few...)), "grains", false); err != nil {
		t.Errorf("20 grains: %v", err)
	}
	m := must(t)(Merge(many...))
	if _, err := NewMeasuredPart(m, "grains", false); err == nil || report(t, m).Sound() {
		t.Errorf("%d grains: %v", len(many), err)
	}
}
