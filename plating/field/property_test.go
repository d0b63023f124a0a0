package field

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// A turned and shifted part carries the same distribution, panel by panel.
func TestPropertyRotation(t *testing.T) {
	turn := r3.NewRotation(0.7, r3.Vec{X: 1, Y: 2, Z: -0.5})
	law := current.LinearLaw(0.5)
	make := func(f func(r3.Vec) r3.Vec) MeshProblem {
		a := cube(8, 1, r3.Vec{}, 2).moved(f).surface("a", current.Cathode)
		b := sphere(8, 0.5, r3.Vec{X: 2, Y: 0.3}).moved(f).surface("b", current.Anode)
		a.Law = law
		return one(a, b)
	}
	s := solve(t, make(func(v r3.Vec) r3.Vec { return v }), MeshOptions{})
	r := solve(t, make(func(v r3.Vec) r3.Vec { return r3.Add(turn.Rotate(v), r3.Vec{X: 5, Y: -3, Z: 1}) }), MeshOptions{})
	for i := range s.Surfaces {
		for k, j := range s.Surfaces[i].Density {
			near2(t, "turned", float64(r.Surfaces[i].Density[k]), float64(j), 1e-3)
		}
	}
}

// On a cube in the middle of its tank the density is the same at places that
// mirror each other.
func TestPropertyMirror(t *testing.T) {
	s := solve(t, hung(10, 6, 1.5), MeshOptions{})
	r := &s.Surfaces[0]
	at := map[[3]int]float64{}
	key := func(x, y, z float64) [3]int {
		return [3]int{int(math.Round(x * 1e7)), int(math.Round(y * 1e7)), int(math.Round(z * 1e7))}
	}
	for k, x := range r.Centroid {
		at[key(x.X, x.Y, x.Z)] = float64(r.Density[k])
	}
	found := 0
	for k, x := range r.Centroid {
		for _, m := range []r3.Vec{{X: -x.X, Y: x.Y, Z: x.Z}, {X: -x.X, Y: -x.Y, Z: -x.Z}} {
			if j, ok := at[key(m.X, m.Y, m.Z)]; ok {
				found++
				near2(t, "mirror", j, float64(r.Density[k]), 5e-3)
			}
		}
	}
	if found < len(r.Density)/2 {
		t.Errorf("only %d mirror pairs of %d panels", found, len(r.Density))
	}
}

// A small Wagner number leads to the primary distribution, a large one to a
// uniform one. Wa = κρ/a with a the side of the cube.
func TestPropertyWagner(t *testing.T) {
	testdata.SlowOnly(t)
	ratio := func(rho float64) (least, most float64) {
		p := hung(10, 6, 1.5)
		p.Surfaces[0].Law = current.Law{}
		if rho > 0 {
			p.Surfaces[0].Law = current.LinearLaw(units.AreaResistance(rho))
		}
		r := &solve(t, p, MeshOptions{}).Surfaces[0]
		hi, _ := r.Percentile(0.9)
		return float64(r.Minimum.Density / r.Mean()), float64(hi / r.Mean())
	}
	lo0, hi0 := ratio(0)
	lo1, hi1 := ratio(1e-4 * 0.02 / 20)
	lo3, hi3 := ratio(1e3 * 0.02 / 20)
	near2(t, "minimum at small Wagner number", lo1, lo0, 0.02)
	near2(t, "percentile at small Wagner number", hi1, hi0, 0.03)
	near2(t, "minimum at large Wagner number", lo3, 1, 2e-3)
	near2(t, "percentile at large Wagner number", hi3, 1, 2e-3)
	last := lo0
	for _, wa := range []float64{0.1, 1, 10} {
		lo, _ := ratio(wa * 0.02 / 20)
		if !(lo > last) {
			t.Errorf("minimum over mean %.4f at Wa = %g, not above %.4f", lo, wa, last)
		}
		last = lo
	}
}

// Primary currents scale with conductivity, voltage and length.
func TestPropertyScaling(t *testing.T) {
	i := func(size, kappa, volts float64) float64 {
		p := one(sphere(8, size, r3.Vec{}).surface("", current.Cathode))
		p.Conductivity, p.Drive = units.Conductivity(kappa), current.ByVoltage(units.Voltage(volts))
		return float64(solve(t, p, MeshOptions{}).Current)
	}
	base := i(1, 1, 1)
	near2(t, "conductivity", i(1, 20, 1), 20*base, 1e-9)
	near2(t, "voltage", i(1, 1, 3), 3*base, 1e-9)
	near2(t, "length", i(1e-3, 1, 1), 1e-3*base, 1e-6)
}

// With linear kinetics and the same Wagner number, another scale changes nothing.
func TestPropertySimilarity(t *testing.T) {
	at := func(scale float64) float64 {
		s := cube(8, 0.02*scale, r3.Vec{}, 1.5).surface("", current.Cathode)
		s.Law = current.LinearLaw(units.AreaResistance(1e-3 * scale))
		h := 0.05 * scale
		box := &Box{Low: r3.Vec{X: -h, Y: -h, Z: -h}, High: r3.Vec{X: h, Y: h, Z: h}, Walls: []Wall{{Face: LowZ,
			Kind: current.Anode}}}
		r := solve(t, MeshProblem{Conductivity: 20, Box: box, Surfaces: []Boundary{s}, Drive: current.ByVoltage(1)},
			MeshOptions{})
		return float64(r.Surfaces[0].Minimum.Density / r.Surfaces[0].Mean())
	}
	near2(t, "scale of ten", at(10), at(1), 1e-5)
}

// Row sums of the compressed double layer on curved and flat-faced meshes.
func TestPropertyRowSums(t *testing.T) {
	testdata.SlowOnly(t)
	for name, p := range map[string]MeshProblem{
		"sphere": one(ball(20, 1)), "cube": one(cube(20, 1, r3.Vec{}, 2).surface("", current.Cathode)),
		"tank": hung(16, 10, 2),
	} {
		c := solve(t, p, MeshOptions{Equation: Direct}).Checks
		t.Logf("%s: row sums off by %.1e, operator by %.1e", name, c.RowSum, c.Operator)
		if c.RowSum > 5e-5 || c.Operator > 5e-5 {
			t.Errorf("%s: row sums off by %.1e, operator by %.1e", name, c.RowSum, c.Operator)
		}
	}
}

// An insulating shield between part and anode lowers the current behind it;
// a robber takes some of the part's current.
func TestPropertyShieldAndRobber(t *testing.T) {
	testdata.SlowOnly(t)
	base := func(extra ...Boundary) *MeshSolution {
		part := cube(8, 0.02, r3.Vec{X: .05, Y: .05, Z: .05}, 1.5).surface("part", current.Cathode)
		part.Law = tafel(1, 0.05)
		box := &Box{High: r3.Vec{X: .1, Y: .1, Z: .1}, Walls: []Wall{{Face: LowX, Kind: current.Anode}}}
		return solve(t, MeshProblem{Conductivity: 20, Box: box, Surfaces: append([]Boundary{part}, extra...),
			Drive: current.ByCurrent(1)}, MeshOptions{})
	}
	front := func(s *MeshSolution) float64 { // mean on the face towards the anode
		var i, a float64
		r := &s.Surfaces[0]
		for k, x := range r.Centroid {
			if math.Abs(x.X-0.04) < 1e-9 {
				i += float64(r.Density[k].Over(r.Area[k]))
				a += float64(r.Area[k])
			}
		}
		return i / a
	}
	plate := boxMesh(graded(3, .028, .031, 1), graded(8, .035, .065, 1.5), graded(8, .035, .065, 1.5))
	bare, shielded := base(), base(plate.surface("shield", current.Insulator))
	robber := plate.surface("robber", current.Cathode)
	robber.Law = tafel(1, 0.05)
	robbed := base(robber)
	if !(front(shielded) < 0.95*front(bare)) {
		t.Errorf("front %.4g behind a shield, %.4g without", front(shielded), front(bare))
	}
	if !(robbed.Surfaces[0].Total < 0.8*bare.Surfaces[0].Total) {
		t.Errorf("part gets %v beside a robber, %v without", robbed.Surfaces[0].Total, bare.Surfaces[0].Total)
	}
	if got := float64(robbed.Current); math.Abs(got-1) > 1e-9 {
		t.Errorf("current %v, want 1 A", got)
	}
}
