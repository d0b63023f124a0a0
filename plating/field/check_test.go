package field

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// Holes, flipped triangles and bodies, parts inside each other: each refused.
func TestPropertyTrapMesh(t *testing.T) {
	fresh := func() Boundary { return ball(8, 1) }
	for _, c := range []struct {
		name   string
		spoil  func(p *MeshProblem)
		reason error
	}{
		{"hole", func(p *MeshProblem) { p.Surfaces[0].Triangles = p.Surfaces[0].Triangles[1:] }, ErrOpen},
		{"duplicate", func(p *MeshProblem) {
			s := &p.Surfaces[0]
			s.Triangles = append(s.Triangles, s.Triangles[0])
		}, ErrOpen},
		{"flipped triangle", func(p *MeshProblem) { tri := &p.Surfaces[0].Triangles[5]; tri[0], tri[1] = tri[1], tri[0] },
			ErrOrientation},
		{"flipped body", func(p *MeshProblem) {
			p.Surfaces[0] = sphere(8, 1, r3.Vec{}).inverted().surface("",
				current.Cathode)
		},
			ErrOrientation},
		{"vessel not inverted", func(p *MeshProblem) {
			v := sphere(8, 3, r3.Vec{}).surface("", current.Anode)
			v.Vessel = true
			p.Surfaces = append(p.Surfaces, v)
		}, ErrOrientation},
		{"part in a part", func(p *MeshProblem) { p.Surfaces = append(p.Surfaces, ball(8, 0.4)) }, current.ErrOverlap},
		{"parts that cut", func(p *MeshProblem) {
			p.Surfaces = append(p.Surfaces, sphere(8, 1, r3.Vec{X: 0.7}).surface("", current.Cathode))
		}, current.ErrOverlap},
		{"index", func(p *MeshProblem) { p.Surfaces[0].Triangles[3][1] = 9999 }, units.ErrOutOfRange},
		{"negative index", func(p *MeshProblem) { p.Surfaces[0].Triangles[3][1] = -1 }, units.ErrOutOfRange},
		{"NaN", func(p *MeshProblem) { p.Surfaces[0].Vertices[7].Y = math.NaN() }, units.ErrNotFinite},
		{"infinity", func(p *MeshProblem) { p.Surfaces[0].Vertices[7].Y = math.Inf(1) }, units.ErrNotFinite},
		{"no triangles", func(p *MeshProblem) { p.Surfaces[0].Triangles = nil }, ErrOpen},
		{"degenerate", func(p *MeshProblem) {
			p.Surfaces[0].Vertices[p.Surfaces[0].Triangles[0][0]] = p.Surfaces[0].Vertices[p.Surfaces[0].Triangles[0][1]]
		}, ErrDegenerate},
		{"no surfaces", func(p *MeshProblem) { p.Surfaces = nil }, units.ErrInconsistent},
		{"no cathode", func(p *MeshProblem) { p.Surfaces[0].Kind = current.Anode }, units.ErrInconsistent},
		{"sheet with kinetics", func(p *MeshProblem) {
			p.Surfaces[0] = disc(4, 1, 1).surface("disc", current.Cathode)
			p.Surfaces[0].Sheet = true
			p.Surfaces[0].Law = current.LinearLaw(1)
		}, ErrOpen},
		{"open surface", func(p *MeshProblem) { p.Surfaces[0] = disc(4, 1, 1).surface("disc", current.Cathode) }, ErrOpen},
		{"no conductivity", func(p *MeshProblem) { p.Conductivity = 0 }, units.ErrNotPositive},
		{"NaN conductivity", func(p *MeshProblem) { p.Conductivity = units.Conductivity(math.NaN()) }, units.ErrNotFinite},
		{"no drive", func(p *MeshProblem) { p.Drive = current.Drive{} }, units.ErrNotPositive},
		{"negative drive", func(p *MeshProblem) { p.Drive = current.ByVoltage(-1) }, units.ErrNotPositive},
		{"bad law", func(p *MeshProblem) { p.Surfaces[0].Law = current.LinearLaw(-1) }, units.ErrNotPositive},
		{"law on insulator", func(p *MeshProblem) {
			s := sphere(4, 1, r3.Vec{X: 5}).surface("", current.Insulator)
			s.Law = current.LinearLaw(1)
			p.Surfaces = append(p.Surfaces, s)
		}, units.ErrInconsistent},
		{"Tafel on the wrong side", func(p *MeshProblem) {
			p.Surfaces[0].Law = tafel(1, 0.05)
			p.Surfaces[0].Law.Side, p.Surfaces[0].Law.Anodic = current.AnodicSide, 0.5
		}, units.ErrInconsistent},
		{"unknown kind", func(p *MeshProblem) { p.Surfaces[0].Kind = 9 }, units.ErrOutOfRange},
		{"part outside its box", func(p *MeshProblem) {
			p.Box = &Box{High: r3.Vec{X: 2, Y: 2, Z: 2}, Walls: []Wall{{Face: LowX, Kind: current.Anode}}}
		}, current.ErrOverlap},
		{"box without an anode", func(p *MeshProblem) {
			p.Box = &Box{Low: r3.Vec{X: -2, Y: -2, Z: -2}, High: r3.Vec{X: 2, Y: 2, Z: 2}}
		}, units.ErrInconsistent},
		{"box inside out", func(p *MeshProblem) { p.Box = &Box{Low: r3.Vec{X: 2}} }, units.ErrNotPositive},
		{"box of NaN", func(p *MeshProblem) { p.Box = &Box{High: r3.Vec{X: math.NaN(), Y: 1, Z: 1}} }, units.ErrNotPositive},
	} {
		p := one(fresh())
		c.spoil(&p)
		_, err := Solve(t.Context(), p, MeshOptions{})
		if !errors.Is(err, c.reason) {
			t.Errorf("%s: %v, want %v", c.name, err, c.reason)
		}
		if _, err := Estimate(p, MeshOptions{}); err == nil && c.reason != current.ErrOverlap {
			t.Errorf("%s: estimated", c.name)
		}
	}
}

// A thousand meshes with random damage: an error or a solution, never a panic.
func TestPropertyTrapDamage(t *testing.T) {
	testdata.SlowOnly(t)
	rng := rand.New(rand.NewPCG(3, 4))
	values := []float64{math.NaN(), math.Inf(-1), 0, 1e300, -1e-300, 1}
	solved := 0
	for range 1000 {
		s := ball(3, 1)
		for range 1 + rng.IntN(2) {
			switch k := rng.IntN(len(s.Triangles)); rng.IntN(4) {
			case 0:
				s.Vertices[rng.IntN(len(s.Vertices))].X = values[rng.IntN(len(values))]
			case 1:
				s.Triangles[k][rng.IntN(3)] = int32(rng.IntN(100) - 5)
			case 2:
				s.Triangles = append(s.Triangles[:k], s.Triangles[k+1:]...)
			case 3:
				s.Vertices[rng.IntN(len(s.Vertices))].Y += 0.01 * rng.NormFloat64()
			}
		}
		r, err := Solve(t.Context(), one(s), MeshOptions{})
		if (r == nil) == (err == nil) {
			t.Fatalf("solution %v and error %v", r, err)
		}
		if err == nil {
			solved++
		}
	}
	if solved == 0 || solved == 1000 {
		t.Errorf("%d of 1000 solved", solved)
	}
}
