package field

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// signs refuses a solution in which a cathode dissolves although none can.
//
// The potential φ is harmonic in the bath, so it takes its least value on the
// boundary or far away. Let every electrode be primary: all cathodes are at one
// potential, all anodes (or the bath far away) at a higher one, and the rest is
// insulator. At a boundary point of least value ∂φ/∂n out of the bath is below
// zero (Hopf's lemma), so that point is on no insulator, where ∂φ/∂n = 0. Nor is
// the least value far away: current would come in from all sides, while none
// leaves there on the whole. So the cathodes hold the least value at each of
// their points, ∂φ/∂n < 0 there, and -κ·∂φ/∂n > 0 plates everywhere, whatever the
// shapes.
//
// Floating metal plates at one end and dissolves at the other, and with
// kinetics the potential of the solution at an electrode is no longer one: such
// problems are not judged here. A spot of theirs with the wrong sign is marked
// unresolved.
//
// What the tolerances leave, as a part of the mean, is rounding. Towards a line
// where the bath fills a narrow angle α between two cathodes the density falls to
// nothing, as r^(π/α-1), and that of one panel there swings about it without
// harm. So along such a line, and next to the panels along it, the mean over the
// panel and those that touch it counts; along the line it may be off by a
// hundredth.
func (c *cell) signs(s *MeshSolution, seams []seam, galerkin bool, rounding float64) error {
	if !c.sure() {
		return nil
	}
	results := append(append([]MeshResult(nil), s.Surfaces...), s.Walls...)
	p := c.p
	// By panel, in the order of the tree, whatever surface it is on.
	density := func(i int) float64 { return float64(results[p.surface[i]].Density[p.local[i]]) }
	var wrong []int
	mean, area := 0.0, 0.0
	for i := range p.tri {
		if results[p.surface[i]].Kind != current.Cathode {
			continue
		}
		mean += density(i) * p.area[i]
		area += p.area[i]
		if density(i) < 0 {
			wrong = append(wrong, i)
		}
	}
	mean = math.Abs(mean / area)
	if len(wrong) == 0 {
		return nil
	}
	narrow := c.narrow(seams)
	// Panels touch where they share a corner, across surfaces too.
	touching := map[r3.Vec][]int{}
	for i := range p.tri {
		for _, v := range p.tri[i] {
			touching[v] = append(touching[v], i)
		}
	}
	around := func(i int) float64 { // mean over a panel and those of cathodes that touch it
		seen := map[int]bool{}
		sum, area := 0.0, 0.0
		for _, v := range p.tri[i] {
			for _, k := range touching[v] {
				if !seen[k] && results[p.surface[k]].Kind == current.Cathode {
					seen[k] = true
					sum += density(k) * p.area[k]
					area += p.area[k]
				}
			}
		}
		return sum / area
	}
	along := func(i int) bool { t := &p.tri[i]; return narrow(t[0]) || narrow(t[1]) || narrow(t[2]) }
	near := func(i int) int { // 2 along a narrow line, 1 next to it, else 0
		if along(i) {
			return 2
		}
		for _, v := range p.tri[i] {
			if slices.ContainsFunc(touching[v], along) {
				return 1
			}
		}
		return 0
	}
	// Panel by panel the strictest reading that its place allows: its own
	// density away from narrow lines, the mean around it next to one, and along
	// one that mean with a little more.
	worst, count := -1, 0
	for _, i := range wrong {
		if bad := [3]bool{density(i) < -rounding*mean, around(i) < -rounding*mean,
			around(i) < -lineNoise*mean}; !bad[near(i)] {
			continue
		}
		count++
		if worst < 0 || density(i) < density(worst) {
			worst = i
		}
	}
	if count == 0 {
		return nil
	}
	// The two equations err in different ways, so that the other one is worth a
	// try where smaller panels are too dear.
	need := "smaller panels there, as small as the recess is narrow, or the averaged equation (Options.Galerkin)"
	if galerkin {
		need = "smaller panels there, as small as the recess is narrow, or the equation at the centroids " +
			"(Options.Galerkin off)"
	}
	return &SignError{Surface: results[p.surface[worst]].Name, Panels: count, Triangle: int(p.local[worst]),
		At: p.at[worst], Density: units.CurrentDensity(density(worst)), Mean: units.CurrentDensity(mean), Need: need}
}

// lineNoise is the part of the mean by which the density around a panel along a
// narrow line may be off.
const lineNoise = 1e-2

// sure tells whether no cathode of the problem can dissolve anywhere.
//
// Primary everywhere, and nothing floating: the argument of [cell.signs] needs
// both.
func (c *cell) sure() bool {
	for i := range c.surfaces {
		s := &c.surfaces[i]
		if s.Kind == current.Floating || s.Kind != current.Insulator && s.Law.Model != current.Primary {
			return false
		}
	}
	return true
}

// narrow returns a function that tells whether a corner of a panel lies on a
// line towards which the density falls at least as r^(1/3): the bath fills up to
// 135° between two cathodes, or half of that between a cathode and an insulator.
// Edges of a box fill 90°.
func (c *cell) narrow(seams []seam) func(v r3.Vec) bool {
	on := map[r3.Vec]bool{}
	for _, e := range seams {
		a, b := c.surfaces[c.p.surface[e.a]].Kind, c.surfaces[c.p.surface[e.b]].Kind
		// The density goes as r^(π/α-1) between two cathodes and as
		// r^(π/(2α)-1) between a cathode and an insulator: the exponent is 1/3
		// at α = 135° and 67.5°.
		limit := 0.75 * math.Pi
		switch {
		case a == current.Insulator && b == current.Cathode, a == current.Cathode && b == current.Insulator:
			limit /= 2
		case a != current.Cathode || b != current.Cathode:
			continue
		}
		if e.angle <= limit+1e-9 {
			on[e.ends[0]], on[e.ends[1]] = true, true
		}
	}
	return func(v r3.Vec) bool {
		if on[v] || !c.box {
			return on[v]
		}
		// A corner of a panel in two or three walls at once lies on an edge of
		// the box.
		sides := 0
		for _, x := range [3][3]float64{{v.X, c.walls.lo.X, c.walls.hi.X}, {v.Y, c.walls.lo.Y, c.walls.hi.Y},
			{v.Z, c.walls.lo.Z, c.walls.hi.Z}} {
			if x[0] == x[1] || x[0] == x[2] {
				sides++
			}
		}
		return sides > 1
	}
}
