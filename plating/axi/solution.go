package axi

import (
	"math"
	"sort"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A ProfileSolution is the current distribution in a cell.
type ProfileSolution struct {
	Parts    []ProfileResult   // in the order of ProfileProblem.Parts
	Walls    []ProfileResult   // in the order of Electrolyte.Walls
	Voltage  units.Voltage     // anode rail against cathode rail, less the equilibrium potentials
	Current  units.Current     // into all cathodes
	Far      units.Voltage     // potential far away; 0 with a vessel
	Checks   ProfileChecks     // how well the equations are met
	Warnings []current.Warning // what to question about the result

	fine *solved
}

// A ProfileResult is what the solution says about one part or electrode wall. A
// current towards the metal, which plates, is positive; one that dissolves,
// as on an anode, is negative.
type ProfileResult struct {
	Name      string
	Kind      current.Kind
	Potential units.Voltage   // of the metal against the cathode rail; 0 for an insulator
	Area      units.Area      // bare and in the bath
	Current   units.Current   // into the surface
	Samples   []ProfileSample // along the profile
	Sheet     bool            // metal without thickness: Density is that of both sides together, but on a floor
	// Whole holds the figures over all of the bare surface.
	Whole Stretch
	// CurrentError and MinError are the relative differences of current and
	// least current density from the coarser solution: more than the error of
	// this one unless the warnings say otherwise. NaN without estimate.
	CurrentError, MinError float64

	at    *solved
	owner int
}

// A ProfileSample is the solution at one node.
type ProfileSample struct {
	S         units.Length         // arc length along the profile from its start
	At        Point                // the node
	Density   units.CurrentDensity // towards the metal; 0 on an insulator
	Potential units.Voltage        // of the bath against the cathode rail
	// Area is that of the ring the sample stands for: those of a surface sum to its own.
	Area    units.Area
	NormalR float64 // the normal from the surface into the bath, of length 1
	NormalZ float64
}

// ProfileChecks tell how well the equations are met.
type ProfileChecks struct {
	Unknowns, Coarse int     // of the solution and of the coarser one
	Iterations       int     // Newton steps of the solution
	Balance          float64 // net current over all surfaces, relative to Current; a far anode counts as one
	RowSum           float64 // largest deviation of the solid angles from a half
	Residual         float64 // largest lack of an equation relative to its terms
	// CurrentError is the relative difference of the total current, or of the
	// voltage when the current is given, from the coarser solution. NaN without.
	CurrentError float64
}

// report turns a solution in plain numbers into one with units.
func report(p ProfileProblem, fine, coarse *solved) *ProfileSolution {
	s := &ProfileSolution{fine: fine, Parts: make([]ProfileResult, len(p.Parts)),
		Walls: make([]ProfileResult, len(p.Bath.Walls))}
	s.Voltage = units.Voltage(fine.sy.voltage(fine.x))
	s.Far = units.Voltage(fine.sy.distant(fine.x))
	net := 0.0
	for i, sf := range fine.ms.m.surfaces {
		out := fine.surface(i)
		net += float64(out.Current)
		if sf.kind == current.Cathode {
			s.Current += out.Current
		}
		out.CurrentError, out.MinError = math.NaN(), math.NaN()
		if coarse != nil {
			c := coarse.surface(i)
			out.CurrentError = differ(float64(out.Current), float64(c.Current))
			out.MinError = differ(float64(out.Whole.Min), float64(c.Whole.Min))
		}
		switch {
		case sf.part >= 0:
			s.Parts[sf.part] = out
		case sf.wall >= 0:
			s.Walls[sf.wall] = out
		}
	}
	s.Checks = ProfileChecks{Unknowns: fine.sy.size(), Iterations: fine.c.iterations, Residual: fine.c.residual,
		CurrentError: math.NaN()}
	if scale := math.Abs(float64(s.Current)); scale > 0 && !fine.ms.m.far {
		s.Checks.Balance = net / scale
	}
	for i, c := range fine.sy.op.c {
		want := 0.5
		if fine.ms.piece(fine.ms.nodes[i]).sheet {
			want = 1
		}
		s.Checks.RowSum = math.Max(s.Checks.RowSum, math.Abs(c-want))
	}
	if coarse != nil {
		s.Checks.Coarse = coarse.sy.size()
		was := 0.0
		for i, sf := range coarse.ms.m.surfaces {
			if sf.kind == current.Cathode {
				was += float64(coarse.surface(i).Current)
			}
		}
		s.Checks.CurrentError = differ(float64(s.Current), was)
		if fine.sy.rail >= 0 {
			s.Checks.CurrentError = differ(float64(s.Voltage), coarse.sy.voltage(coarse.x))
		}
	}
	s.Warnings = warn(s, coarse)
	return s
}

// differ is the difference of two numbers relative to the first; 0 for two zeros.
func differ(a, b float64) float64 {
	if a == b {
		return 0
	}
	return math.Abs(a-b) / math.Abs(a)
}

// surface sums up one surface.
func (f *solved) surface(owner int) ProfileResult {
	m := f.ms.m
	sf := m.surfaces[owner]
	out := ProfileResult{Name: sf.name, Kind: sf.kind, Sheet: sf.sheet, at: f, owner: owner}
	if sf.kind != current.Insulator {
		out.Potential = units.Voltage(f.sy.metal(owner, f.x))
	}
	for i, n := range f.ms.nodes {
		if f.sy.bound[i] != owner {
			continue
		}
		pc := f.ms.piece(n)
		j := 0.0
		if f.sy.roles[i] != insulates {
			j = -f.st.q[i] * f.sy.flux
			out.Area += units.Area(n.ring * m.size * m.size)
			out.Current -= units.Current(f.st.q[i] * n.ring * f.sy.amps)
		}
		out.Samples = append(out.Samples, ProfileSample{
			S:       units.Length((pc.before + pc.c.toTrue(n.s)) * m.size),
			At:      Point{units.Length(n.at.r * m.size), units.Length(n.at.z * m.size)},
			Density: units.CurrentDensity(j), Potential: units.Voltage(f.st.phi[i]),
			Area: units.Area(n.ring * m.size * m.size), NormalR: -n.n.r, NormalZ: -n.n.z,
		})
	}
	sort.SliceStable(out.Samples, func(i, k int) bool { return out.Samples[i].S < out.Samples[k].S })
	if sf.kind != current.Insulator {
		out.Whole, _ = out.Between(0, units.Length(math.Inf(1)))
	}
	return out
}
