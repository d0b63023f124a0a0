package mesh

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// soup gives each triangle vertices of its own, moved by up to shake.
func soup(m Mesh, shake float64, rng *rand.Rand) Mesh {
	var out Mesh
	for i := range m.Triangles {
		a, b, c := m.Corners(i)
		n := int32(len(out.Vertices))
		for _, v := range [3]r3.Vec{a, b, c} {
			d := r3.Vec{X: rng.Float64() - 0.5, Y: rng.Float64() - 0.5, Z: rng.Float64() - 0.5}
			out.Vertices = append(out.Vertices, r3.Add(v, r3.Scale(shake, d)))
		}
		out.Triangles = append(out.Triangles, [3]int32{n, n + 1, n + 2})
	}
	return out
}

// TestPropertyRepair damages in ways that can be mended, and looks at what was
// done and at area and volume.
func TestPropertyRepair(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	cup := must(t)(Cup(0.04, 0.01, 0.03, 0.006, Grid{Size: 0.004}))
	ball := must(t)(Translate(must(t)(Sphere(0.01, Grid{Size: 0.003})), r3.Vec{X: 0.1}))
	base := must(t)(Merge(cup, ball))
	want := report(t, base)
	cases := []struct {
		name    string
		damage  func(m *Mesh)
		options RepairOptions
		kinds   []ActionKind
		count   int // of the last action
		tol     float64
	}{
		{"nothing", func(*Mesh) {}, RepairOptions{}, nil, 0, 1e-14},
		{"soup", func(m *Mesh) { *m = soup(*m, 0, rng) }, RepairOptions{}, []ActionKind{Welded, DroppedVertices},
			0, 1e-12},
		{"shaken soup", func(m *Mesh) { *m = soup(*m, 1e-7, rng) }, RepairOptions{Weld: units.Micrometre},
			[]ActionKind{Welded, DroppedVertices}, 0, 1e-4},
		{"some turned", func(m *Mesh) {
			for i := 0; i < len(m.Triangles); i += 7 {
				m.flip(i)
			}
		}, RepairOptions{}, []ActionKind{Turned}, (len(base.Triangles) + 6) / 7, 1e-12},
		{"all turned", func(m *Mesh) {
			for i := range m.Triangles {
				m.flip(i)
			}
		}, RepairOptions{}, []ActionKind{TurnedWhole}, len(base.Triangles), 1e-12},
		{"one body turned", func(m *Mesh) {
			for i := range ball.Triangles {
				m.flip(len(cup.Triangles) + i)
			}
		}, RepairOptions{}, []ActionKind{TurnedWhole}, len(ball.Triangles), 1e-12},
		{"copies", func(m *Mesh) {
			for i := range 10 {
				c := m.Triangles[11*i]
				m.Triangles = append(m.Triangles, [3]int32{c[1], c[2], c[0]})
			}
		}, RepairOptions{}, []ActionKind{DroppedCopy}, 10, 1e-12},
		{"turned copies", func(m *Mesh) {
			for i := range 10 {
				c := m.Triangles[31*i]
				m.Triangles = append(m.Triangles, [3]int32{c[1], c[0], c[2]})
			}
		}, RepairOptions{}, []ActionKind{DroppedCopy}, 10, 1e-12},
		{"flat with two corners alike", func(m *Mesh) {
			m.Triangles = append(m.Triangles, [3]int32{1, 2, 2}, [3]int32{3, 3, 3})
		}, RepairOptions{}, []ActionKind{DroppedFlat}, 2, 1e-12},
		{"needle", func(m *Mesh) {
			// A vertex on a side: one of its triangles is cut there, the other
			// gets a needle.
			tr := m.Triangles[0]
			mid := int32(len(m.Vertices))
			m.Vertices = append(m.Vertices, r3.Scale(0.5, r3.Add(m.Vertices[tr[0]], m.Vertices[tr[1]])))
			m.Triangles[0] = [3]int32{mid, tr[1], tr[2]}
			m.Triangles = append(m.Triangles, [3]int32{tr[0], mid, tr[2]}, [3]int32{mid, tr[0], tr[1]})
		}, RepairOptions{}, []ActionKind{SwappedFlat}, 1, 1e-12},
		{"unused", func(m *Mesh) { m.Vertices = append(m.Vertices, r3.Vec{}) }, RepairOptions{},
			[]ActionKind{DroppedVertices}, 1, 1e-12},
		{"sheet", func(m *Mesh) { *m = must(t)(Disc(0.04, Grid{Size: 0.004})); m.flip(0) }, RepairOptions{Open: true},
			[]ActionKind{Turned}, 1, 1},
	}
	for _, c := range cases {
		m := base.Clone()
		c.damage(&m)
		before := m.Clone()
		got, done, err := Repair(m, c.options)
		if err != nil {
			t.Errorf("%s: %v", c.name, err)
			continue
		}
		var kinds []ActionKind
		for _, a := range done {
			kinds = append(kinds, a.Kind)
			if a.String() == "" || a.Count < 1 {
				t.Errorf("%s: %v", c.name, a)
			}
		}
		if len(kinds) != len(c.kinds) {
			t.Errorf("%s: %v", c.name, done)
			continue
		}
		for i := range kinds {
			if kinds[i] != c.kinds[i] {
				t.Errorf("%s: %v", c.name, done)
			}
		}
		if c.count != 0 && done[len(done)-1].Count != c.count {
			t.Errorf("%s: %v, want %d", c.name, done, c.count)
		}
		r := report(t, got)
		if c.options.Open {
			continue
		}
		if !r.Sound() || r.Euler != want.Euler || apart(float64(r.Area), float64(want.Area)) > c.tol ||
			apart(float64(r.Volume), float64(want.Volume)) > c.tol {
			t.Errorf("%s: %v", c.name, r)
		}
		for i := range before.Triangles { // m is not changed
			if before.Triangles[i] != m.Triangles[i] {
				t.Fatalf("%s: triangle %d of the input changed", c.name, i)
			}
		}
		again, done, err := Repair(got, RepairOptions{})
		if err != nil || len(done) != 0 || len(again.Triangles) != len(got.Triangles) {
			t.Errorf("%s: a second repair does %v, %v", c.name, done, err)
		}
	}
}

// TestPropertyRefusals: what cannot be mended safely is refused, with the reason.
func TestPropertyRefusals(t *testing.T) {
	cup := must(t)(Cup(0.04, 0.01, 0.03, 0.006, Grid{Size: 0.004}))
	inner := must(t)(Translate(must(t)(Box(0.001, 0.001, 0.001, Grid{Size: 0.001})), r3.Vec{X: 0.0175, Z: 0.005}))
	strip := Mesh{}
	const n = 12 // a strip that is joined to itself after half a turn
	for i := range n {
		a := 2 * math.Pi * float64(i) / n
		for _, w := range [2]float64{-0.3, 0.3} {
			r := 1 + w*math.Cos(a/2)
			strip.Vertices = append(strip.Vertices, r3.Vec{X: r * math.Cos(a), Y: r * math.Sin(a),
				Z: w * math.Sin(a/2)})
		}
		p, q, r, s := int32(2*i), int32(2*i+1), int32(2*i+2), int32(2*i+3)
		if i == n-1 {
			r, s = 1, 0
		}
		strip.Triangles = append(strip.Triangles, [3]int32{p, q, r}, [3]int32{q, s, r})
	}
	nested := must(t)(Merge(cup, inner))
	for i := range cup.Triangles {
		nested.flip(i)
	}
	cases := []struct {
		name   string
		m      Mesh
		option RepairOptions
		why    error
	}{
		{"hole", Mesh{cup.Vertices, cup.Triangles[1:]}, RepairOptions{}, ErrOpen},
		{"sheet", must(t)(Disc(0.04, Grid{Size: 0.004})), RepairOptions{}, ErrOpen},
		{"half turn", strip, RepairOptions{Open: true}, ErrOrientation},
		{"body in a body", must(t)(Merge(cup, inner)), RepairOptions{}, ErrOrientation},
		{"overlap", must(t)(Merge(cup, must(t)(Translate(cup, r3.Vec{X: 0.003, Z: 0.001})))), RepairOptions{},
			ErrCrossing},
		{"fin", Mesh{append(cup.Clone().Vertices, r3.Vec{X: 1}), append(cup.Clone().Triangles,
			[3]int32{cup.Triangles[0][0],
				cup.Triangles[0][1], int32(len(cup.Vertices))})}, RepairOptions{}, ErrCrowded},
		{"all flat", Mesh{cup.Vertices, [][3]int32{{0, 0, 1}, {2, 2, 2}}}, RepairOptions{}, ErrEmpty},
		{"pillow", Mesh{cup.Vertices, [][3]int32{{0, 1, 2}, {0, 2, 1}}}, RepairOptions{}, ErrDuplicate},
		{"flat body", Mesh{[]r3.Vec{{}, {X: 1}, {X: 1, Y: 1}, {Y: 1}}, [][3]int32{{0, 1, 2},
			{0, 2, 3}, {1, 0, 3}, {1, 3, 2}}}, RepairOptions{}, ErrEmpty},
		{"coarse weld", cup, RepairOptions{Weld: 1e-3}, units.ErrOutOfRange},
		{"negative weld", cup, RepairOptions{Weld: -1}, units.ErrNegative},
		{"nan weld", cup, RepairOptions{Weld: units.Length(math.NaN())}, units.ErrNotFinite},
	}
	for _, c := range cases {
		m, done, err := Repair(c.m, c.option)
		if !errors.Is(err, c.why) || m.Triangles != nil {
			t.Errorf("%s: %v after %v, want %v", c.name, err, done, c.why)
			continue
		}
		typed(t, c.name, err)
	}
	// The hollow stays a hollow when the outer surface is turned.
	if m, _, err := Repair(nested, RepairOptions{}); err == nil {
		t.Errorf("an outer surface inside out around a body: accepted, %v", report(t, m))
	}
}

// TestPropertyWeldStays: vertices in a row, each nearer to the next than the
// distance, do not all become one.
func TestPropertyWeldStays(t *testing.T) {
	m := Mesh{}
	for i := range 100 {
		m.Vertices = append(m.Vertices, r3.Vec{X: float64(i) * 0.6})
	}
	for i := range 98 {
		m.Triangles = append(m.Triangles, [3]int32{int32(i), int32(i + 1), int32(i + 2)})
	}
	joined, most := m.weld(1)
	if joined != 50 || most > 1 {
		t.Errorf("%d joined, moved by %v", joined, most)
	}
}

// TestIndependentWeld compares the grid search with all pairs.
func TestIndependentWeld(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	for range 50 {
		var m Mesh
		for i := range 200 {
			m.Vertices = append(m.Vertices, r3.Vec{X: rng.Float64(), Y: rng.Float64(), Z: rng.Float64() * 0.1})
			m.Triangles = append(m.Triangles, [3]int32{int32(i), int32(i), int32(i)})
		}
		const d = 0.05
		to := make([]int, 200)
		for i, v := range m.Vertices {
			to[i] = i
			least := d
			for j := range i {
				if l := r3.Norm(r3.Sub(m.Vertices[j], v)); to[j] == j && l <= least {
					to[i], least = j, l
				}
			}
		}
		m.weld(d)
		for i, tr := range m.Triangles {
			if int(tr[0]) != to[i] {
				t.Fatalf("vertex %d to %d, want %d", i, tr[0], to[i])
			}
		}
	}
}
