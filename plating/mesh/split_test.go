package mesh

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// angles returns the smallest angle of a mesh and its longest side.
func angles(m Mesh) (least, longest float64) {
	least = math.Pi
	for _, t := range m.Triangles {
		for k := range t {
			a := r3.Sub(m.Vertices[t[(k+1)%3]], m.Vertices[t[k]])
			b := r3.Sub(m.Vertices[t[(k+2)%3]], m.Vertices[t[k]])
			least = min(least, math.Atan2(r3.Norm(r3.Cross(a, b)), r3.Dot(a, b)))
			longest = max(longest, r3.Norm(a))
		}
	}
	return least, longest
}

// TestReferenceBisection holds the angles against the published bound: halving
// triangles across their longest sides leaves none below half the smallest angle of
// the first one [Bisection]. Triangles of all shapes, alone and with a neighbour at
// each side.
func TestReferenceBisection(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	worst := 1.0
	for range 2000 {
		m := Mesh{Vertices: make([]r3.Vec, 4), Triangles: [][3]int32{{0, 2, 1}, {0, 1, 3}, {1, 2, 3}, {2, 0, 3}}}
		if random.IntN(2) == 0 {
			m.Triangles = m.Triangles[:1]
		}
		squeeze := math.Pow(10, -3*random.Float64())
		for i := range m.Vertices {
			m.Vertices[i] = r3.Vec{X: random.Float64(), Y: squeeze * random.Float64(), Z: random.Float64()}
		}
		before, longest := angles(m)
		to := longest * (0.04 + random.Float64())
		split := m.Clone()
		for cuts := split.cuts(to); len(cuts) > 0; cuts = split.cuts(to) {
			split = split.halved(cuts)
		}
		after, now := angles(split)
		if after < before/2*(1-1e-9) || now > to {
			t.Fatalf("%v to %g: smallest angle %g, was %g; longest side %g", m, to, after, before, now)
		}
		worst = min(worst, after/before)
	}
	t.Logf("smallest angle at worst %.3f of what it was", worst)
	if worst > 0.9 {
		t.Error("no angle was halved: what was tested?")
	}
}

// TestPropertySplit: area, volume and soundness stay, sides are short, triangles
// that were short enough stay, a side of a closed surface stays shared by two.
func TestPropertySplit(t *testing.T) {
	testdata.SlowOnly(t)
	for _, s := range samples() {
		m := must(t)(s.make(Grid{Size: 8e-3}))
		was := report(t, m)
		_, longest := angles(m)
		for _, part := range []float64{1.5, 1, 0.7, 0.3, 0.11} {
			split := must(t)(Split(m, units.Length(part*longest), 0))
			is := report(t, split)
			if _, now := angles(split); now > part*longest || was.Sound() != is.Sound() ||
				is.OpenEdges < was.OpenEdges || was.OpenEdges == 0 && is.OpenEdges > 0 ||
				apart(float64(is.Area), float64(was.Area)) > 1e-10 || was.Volume > 0 && apart(float64(is.Volume),
				float64(was.Volume)) > 1e-10 || is.Euler != was.Euler {
				t.Errorf("%s to %.2f of its longest side: %v\nwas %v", s.name, part, is, was)
			}
			if part >= 1 && !slices.Equal(split.Triangles, m.Triangles) {
				t.Errorf("%s to %.2f: changed where nothing was too long", s.name, part)
			}
			if grew := len(split.Triangles) > len(m.Triangles); grew != (part < 1) {
				t.Errorf("%s to %.2f: %d triangles of %d", s.name, part, len(split.Triangles), len(m.Triangles))
			}
		}
	}
	// A plate from two wide triangles a face beside many narrow ones.
	wide := must(t)(Box(0.06, 0.004, 0.0005, Grid{Size: 1}))
	fine := must(t)(Cylinder(0.001, 0.001, Grid{Size: 0.0001}))
	both := must(t)(Merge(wide, must(t)(Translate(fine, r3.Vec{Z: 0.1}))))
	split := must(t)(Split(both, 0.002, 0))
	if cut := len(split.Triangles) - len(fine.Triangles); cut < 500 || cut > 1500 {
		t.Errorf("the plate has %d triangles", cut)
	}
	kept := 0
	for _, v := range split.Triangles {
		if split.Vertices[v[0]].Z > 0.05 {
			kept++
		}
	}
	if kept != len(fine.Triangles) {
		t.Errorf("the fine body has %d triangles of %d", kept, len(fine.Triangles))
	}
	wide = must(t)(Split(wide, 0.0005, 0))
	thin, all := 0, 0
	for _, v := range wide.Triangles {
		one := Mesh{Vertices: wide.Vertices, Triangles: [][3]int32{v}}
		if least, _ := angles(one); least < math.Pi/9 {
			thin++
		}
		all++
	}
	if thin*50 > all {
		t.Errorf("%d of %d triangles have an angle under 20°", thin, all)
	}
	if again := must(t)(Split(both, 0.002, 0)); len(again.Vertices) != len(split.Vertices) ||
		again.Triangles[len(again.Triangles)-1] != split.Triangles[len(split.Triangles)-1] {
		t.Error("another time another mesh")
	}
}

// TestPropertyExchange: a flat pillow whose two faces have their own diagonal. The
// long one may not become a second short one, and its rim is a crease though all
// lies in one plane.
func TestPropertyExchange(t *testing.T) {
	pillow := Mesh{Vertices: []r3.Vec{{X: -3}, {Y: -1}, {X: 4}, {X: 0.5, Y: 1.2}},
		Triangles: [][3]int32{{0, 1, 2}, {0, 2, 3}, {0, 3, 1}, {1, 3, 2}}}
	m := pillow.Clone()
	m.exchange(10, m.size())
	for i := range m.Triangles {
		if m.Triangles[i] != pillow.Triangles[i] {
			t.Fatalf("%v became %v", pillow.Triangles, m.Triangles)
		}
	}
	if c := m.creases(1, m.size()); len(c) != 4 {
		t.Errorf("creases %v, want the rim", c)
	}
	// One face alone takes the short diagonal, and no other.
	m.Triangles = m.Triangles[:2]
	m.exchange(10, m.size())
	if m.Triangles[0] != [3]int32{3, 0, 1} && m.Triangles[0] != [3]int32{1, 2, 3} {
		t.Errorf("the diagonal of one face: %v", m.Triangles)
	}
	if c := m.creases(1, m.size()); len(c) != 4 {
		t.Errorf("creases %v, want the edge of the sheet", c)
	}
}

// TestSplitErrors: what cannot be split says so, and no bound is passed.
func TestSplitErrors(t *testing.T) {
	m := tetra(1)
	for _, longest := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := Split(m, units.Length(longest), 0)
		typed(t, "Split", err)
	}
	_, err := Split(m, 1, -1)
	typed(t, "Split to less than none", err)
	_, err = Split(Mesh{}, 1, 0)
	typed(t, "Split of nothing", err)
	_, err = Split(Mesh{Vertices: m.Vertices, Triangles: [][3]int32{{0, 1, 9}}}, 1, 0)
	typed(t, "Split of a wrong index", err)
	_, err = Split(m, 1e-9, 1000)
	typed(t, "Split into dust", err)
	if !errors.Is(err, ErrTooLarge) {
		t.Errorf("%v, want %v", err, ErrTooLarge)
	}
	n := len(must(t)(Split(m, 0.3, 0)).Triangles)
	if _, err := Split(m, 0.3, n); err != nil {
		t.Errorf("%d triangles, of %d that it takes: %v", n, n, err)
	}
	_, err = Split(m, 0.3, n-1)
	typed(t, "one triangle less", err)
	if flat, err := Split(Mesh{Vertices: []r3.Vec{{}, {}, {}}, Triangles: [][3]int32{{0, 1, 2}}}, 1, 0); err != nil ||
		len(flat.Triangles) != 1 {
		t.Errorf("a point: %v, %v", flat, err)
	}
}
