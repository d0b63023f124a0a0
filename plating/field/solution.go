package field

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A MeshSolution is the current distribution of a problem.
type MeshSolution struct {
	// Surfaces are in the order of the problem.
	Surfaces []MeshResult
	// Walls are those of the box, by [Face]; empty without one.
	Walls []MeshResult
	// Current is that into all cathodes.
	Current units.Current
	// CellVoltage is that of the anodes' metal (or the bath far away) less the
	// cathodes', equilibrium potentials taken off.
	CellVoltage units.Voltage
	// Checks tell how well the equations are met, Warnings what to beware of,
	// Work what the run took.
	Checks   MeshChecks
	Warnings []current.Warning
	Work     Work
}

// A MeshResult is the distribution over one surface. The slices run over its triangles.
type MeshResult struct {
	Name string
	Kind current.Kind
	// Density is positive where it plates, negative where it dissolves; on a
	// sheet it is the sum of both sides. It is the mean over the panel.
	Density []units.CurrentDensity
	// Potential is that of the solution in front, the cathodes' metal being 0.
	Potential []units.Voltage
	Area      []units.Area
	Centroid  []r3.Vec
	// Total is positive where the surface plates on the whole.
	Total units.Current
	// Metal is the potential of the metal; 0 for insulators.
	Metal units.Voltage
	// Minimum is the least plating current density of an electrode.
	Minimum MeshSpot
	// Corner tells where a primary electrode meets insulators at more than a
	// right angle.
	Corner Corner
}

// A MeshSpot is a place on a surface.
type MeshSpot struct {
	Triangle int
	Density  units.CurrentDensity
	At       r3.Vec
	// Unresolved says that the spot lies on one panel: a neighbour differs
	// from it by more than a tenth, or a cathode seems to dissolve there, which
	// no cathode at the lowest potential can. The density is then no property
	// of the part; refine the mesh there.
	Unresolved bool
}

// MeshChecks are the tests that every solution carries.
type MeshChecks struct {
	// CurrentImbalance is (anode - cathode current)/cathode current. Nothing
	// forces it to zero in a tank, so it shows the error of the discretisation.
	// In an unbounded bath with anodes it is held at zero and shows nothing.
	CurrentImbalance float64
	// RowSum is the largest departure of the compressed double layer's row sums
	// from that of a closed surface (one half). 0 for the single layer.
	RowSum float64
	// Operator is the largest relative difference between the compressed
	// operator and the exact one, applied to the solution, in some forty rows: some
	// spread over all panels, the smallest and the largest panels, those at the
	// sharpest creases and those nearest to the sources of the largest blocks.
	Operator float64
	// Residual is the root mean square of the equations' residual, in volts.
	Residual float64
	// Change is the largest relative change of a local current density that one
	// more step would make, a bound from the last two.
	Change float64
}

// Work says what the run took.
type Work struct {
	Unknowns       int
	OperatorBytes  int64
	Newton, Krylov int     // steps in all
	Build, Solve   float64 // seconds for the operator with its checks, and for the iteration
}

// Mean returns the mean current density over the surface.
//
// j = I/A, by area: a mean over the panels would depend on the mesh.
func (r *MeshResult) Mean() units.CurrentDensity {
	return units.CurrentDensity(float64(r.Total) / r.TotalArea())
}

// TotalArea returns the area of the surface's panels [m²].
func (r *MeshResult) TotalArea() float64 {
	sum := 0.0
	for _, a := range r.Area {
		sum += float64(a)
	}
	return sum
}

// Percentile returns the current density below which the given part of the
// area lies. The largest value of a primary distribution grows with every
// refinement at an edge; a percentile does not.
//
// Errors: a [*units.ValueError] for a part that is not from 0 to 1.
//
// The panels are taken in order of their density, and their areas added up
// until the share is reached: the answer is the density of a panel, without
// interpolation between two.
//
// Source: [Definition].
func (r *MeshResult) Percentile(part float64) (units.CurrentDensity, error) {
	if err := units.Fraction("percentile", units.Ratio(part)); err != nil {
		return 0, err
	}
	if r == nil || len(r.Density) == 0 || len(r.Area) != len(r.Density) {
		return 0, inconsistent("result", "no panels, or other numbers of densities and areas", "one of a solution")
	}
	order := make([]int, len(r.Density))
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(i, j int) int {
		if r.Density[i] < r.Density[j] {
			return -1
		}
		return 1
	})
	want, sum := part*r.TotalArea(), 0.0
	for _, i := range order {
		if sum += float64(r.Area[i]); sum >= want {
			return r.Density[i], nil
		}
	}
	return r.Density[order[len(order)-1]], nil
}

// report turns a state into a solution.
//
// The model counts a flux q out of the bath and anodic currents as positive;
// results count plating as positive, which turns the sign of κ·q. Panels go
// back from tree order to that of the caller.
func (c *cell) report(m *model, s *state, seams []seam) *MeshSolution {
	out := &MeshSolution{}
	results := make([]MeshResult, len(c.surfaces))
	for i, f := range c.surfaces {
		n := len(f.Triangles)
		if w := i - (len(c.surfaces) - 6); c.box && w >= 0 {
			n = c.faces[w]
		}
		results[i] = MeshResult{Name: f.Name, Kind: f.Kind, Density: make([]units.CurrentDensity, n),
			Potential: make([]units.Voltage, n), Area: make([]units.Area, n), Centroid: make([]r3.Vec, n)}
	}
	for i := range s.u {
		phi, q, _ := m.values(s, i)
		r, k := &results[c.p.surface[i]], c.p.local[i]
		r.Density[k] = units.CurrentDensity(0 - m.kappa*q)
		r.Potential[k] = units.Voltage(phi)
		r.Area[k] = units.Area(c.p.area[i])
		r.Centroid[k] = c.p.at[i]
		r.Total += units.Current(-m.kappa * q * c.p.area[i])
		if m.metal[i] >= 0 {
			r.Metal = units.Voltage(s.pot[m.metal[i]])
		}
	}
	// Corners are looked for on the densities, for the share of the current in
	// them.
	c.corners(results, seams)
	var anode units.Current
	anodes := false
	for i := range results {
		switch r := &results[i]; r.Kind {
		case current.Cathode:
			out.Current += r.Total
			r.minimum(&c.surfaces[i])
		case current.Anode:
			anodes = true
			anode -= r.Total
			r.minimum(&c.surfaces[i])
		case current.Floating:
			r.minimum(&c.surfaces[i])
		}
	}
	out.CellVoltage = units.Voltage(s.pot[slotAnode])
	// Where infinity is the anode its potential is the cell voltage. Else the
	// two sides of the cell may be held against each other.
	if !anodes {
		out.CellVoltage = units.Voltage(s.pot[m.far])
	} else if out.Current != 0 {
		out.Checks.CurrentImbalance = float64(anode/out.Current) - 1
	}
	out.Surfaces = results
	if c.box {
		k := len(results) - 6
		out.Surfaces, out.Walls = results[:k:k], results[k:]
	}
	return out
}

// minimum finds the panel of the least current density and looks at those
// that share a corner with it.
//
// The least density is a property of the part only where its neighbours agree
// with it. A panel that stands out by more than a tenth is one that the mesh
// does not resolve: in the next refinement it would be another number.
func (r *MeshResult) minimum(s *Boundary) {
	at, least := -1, math.Inf(1)
	for k, j := range r.Density {
		if float64(j) < least {
			at, least = k, float64(j)
		}
	}
	if at < 0 {
		return
	}
	r.Minimum = MeshSpot{Triangle: at, Density: r.Density[at], At: r.Centroid[at]}
	if len(s.Triangles) == 0 {
		return // a wall of the box
	}
	corner := s.corners(at)
	worst := 0.0
	for k := range s.Triangles {
		if t := s.corners(k); k != at && share(&corner, &t) {
			d := math.Abs(float64(r.Density[k]) - least)
			worst = max(worst, d)
		}
	}
	r.Minimum.Unresolved = worst > 0.1*math.Abs(least) || r.Kind == current.Cathode && least <= 0
}

// share tells whether two triangles have a corner in common, to the last bit.
func share(a, b *triangle) bool {
	for _, v := range a {
		if v == b[0] || v == b[1] || v == b[2] {
			return true
		}
	}
	return false
}
