package field

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// A cell is a checked problem, cut into panels: what the rest of the package
// works on. The surfaces of the problem come first and keep their numbers; the
// six walls of a box follow as surfaces without meshes of their own.
type cell struct {
	// surfaces are the caller's, each with a name, then the walls of the box.
	surfaces []Boundary
	// faces counts the panels of each wall of the box.
	faces [6]int
	// p holds the panels of all of them.
	p *panels
	// box tells that there is a rectangular tank.
	box bool
	// walls are its two opposite corners.
	walls box3
	// bounded tells that the bath ends somewhere, at a box or at a vessel
	// surface. It decides the free term of the boundary equation: ω is 0 in a
	// bounded bath and 1 in an unbounded one.
	bounded bool
	// single tells that the single layer alone solves the problem: an unbounded
	// bath in which every surface is a primary electrode, unless the direct
	// equation is asked for.
	single bool
}

// assemble checks a problem and cuts it into panels in the order of the
// surfaces.
//
// The order of the checks is that of their price: the numbers of the
// description, then what the run would cost at the least, then the topology of
// the meshes, which takes a sort of all edges. Only then are panels laid. What
// needs the panels themselves, gaps and solid angles, is left to
// [cell.geometry].
func (p *MeshProblem) assemble(o *MeshOptions) (*cell, error) {
	if err := p.check(); err != nil {
		return nil, err
	}
	if err := o.check(); err != nil {
		return nil, err
	}
	if err := p.tooBig(o); err != nil {
		return nil, err
	}
	if err := p.closed(); err != nil {
		return nil, err
	}
	// The caller's triangles become panels as they are. Corners are kept aside:
	// the walls want to know how near the parts come.
	c := &cell{p: &panels{}}
	var corners []r3.Vec
	primary, sheet := true, ""
	for i := range p.Surfaces {
		s := p.Surfaces[i]
		s.Name = s.name(i)
		c.surfaces = append(c.surfaces, s)
		c.bounded = c.bounded || s.Vessel
		// The single layer needs no double layer only where φ is given on the
		// whole boundary: an insulator or a rate law spoils it for all.
		primary = primary && s.Kind != current.Insulator && s.Law.Model == current.Primary
		if s.Sheet {
			sheet = s.Name
		}
		for k := range s.Triangles {
			c.p.add(s.corners(k), int32(i), int32(k))
		}
		corners = append(corners, s.Vertices...)
	}
	// The walls of a box are laid here, finer where a part comes near. Each
	// wall is one surface of one kind, insulating where the caller names none.
	if b := p.Box; b != nil {
		c.box, c.bounded = true, true
		c.walls = box3{b.Low, b.High}
		for f, tris := range wallPanels(b, corners) {
			s := Boundary{Name: Face(f).String() + " wall", Kind: current.Insulator, Vessel: true}
			for _, w := range b.Walls {
				if int(w.Face) == f {
					s.Kind, s.Law = w.Kind, w.Law
				}
			}
			c.faces[f] = len(tris)
			for k, t := range tris {
				c.p.add(t, int32(len(c.surfaces)), int32(k))
			}
			c.surfaces = append(c.surfaces, s)
		}
	}
	// A sheet without thickness stands in the single layer for both of its
	// sides together, with the sum of their densities. In the direct equation
	// the two sides would need potentials of their own, so that it is refused
	// there.
	c.single = primary && !c.bounded
	switch {
	case o.Equation == SingleLayer && !c.single:
		return nil, inconsistent("method", "single layer",
			"an unbounded bath with primary electrodes alone, or the direct method")
	case o.Equation == Direct && sheet == "":
		c.single = false
	case sheet != "" && (!c.single || o.Equation == Direct):
		return nil, &MeshError{Surface: sheet, Triangle: -1,
			Detail: "a sheet without thickness with kinetics, insulators or walls about, or the direct method",
			Need:   "a thickened, closed body", Err: ErrOpen}
	}
	c.p.finish()
	return c, nil
}

// Tolerances have a floor as well as a ceiling. The factors of the operator are
// stored in single precision, so that less than 1e-8 would promise what is not
// there; above 1e-3 the compression would be the largest error of the whole
// run.
func (o *MeshOptions) check() error {
	switch {
	case o.Equation > SingleLayer:
		return inconsistent("method", fmt.Sprint(uint8(o.Equation)), "a known method")
	case o.Tolerance != 0 && !(o.Tolerance >= 1e-8 && o.Tolerance <= 1e-3):
		return inconsistent("tolerance", fmt.Sprint(o.Tolerance), "0 or a value from 1e-8 to 1e-3")
	case o.Converged != 0 && !(o.Converged >= 1e-9 && o.Converged <= 1e-2):
		return inconsistent("convergence", fmt.Sprint(o.Converged), "0 or a value from 1e-9 to 1e-2")
	case o.MemoryLimit < 0:
		return inconsistent("memory limit", fmt.Sprint(o.MemoryLimit), "0 or a number of bytes")
	case o.Workers < 0 || o.Workers > 4096:
		return inconsistent("workers", fmt.Sprint(o.Workers), "0 or a number up to 4096")
	}
	return nil
}

// model sets up the unknowns over a finished operator.
//
// Each panel gets a role from its surface: an insulator's flux is zero and its
// potential unknown; a primary electrode's potential is that of its metal and
// its flux unknown; an electrode with a rate law has the potential as unknown,
// and the flux follows from the law.
//
// Each potential of a metal that is not known needs one equation more, a
// border:
//
//	floating metal          its own net current is zero
//	current held            the cathodes' current is the one wanted; unknown is the cell voltage
//	unbounded, with anodes  no current leaves for infinity; unknown is the potential there
//
// In a bounded bath the last one would say nothing new: there the currents
// balance by themselves as well as the mesh is good, and that is kept as a
// check.
func (c *cell) model(d current.Drive, kappa float64, op *operator, s *settings) *model {
	n := c.p.len()
	m := &model{p: c.p, op: op, workers: s.workers, kappa: kappa, single: c.single, linear: true,
		c: make([]float64, n), role: make([]role, n), metal: make([]int32, n), g: make([]float64, n), k: make([]float64, n)}
	slots := make([]int32, len(c.surfaces))
	m.far = slotFloating
	anodes := false
	for i, f := range c.surfaces {
		m.law = append(m.law, f.Law)
		switch f.Kind {
		case current.Insulator:
			slots[i] = -1
		case current.Anode:
			slots[i] = slotAnode
			anodes = true
		case current.Floating:
			slots[i] = int32(m.far)
			m.borders = append(m.borders, border{slot: m.far, metal: int32(m.far), sign: 1})
			m.far++
		}
	}
	// Whether the problem is linear decides how Newton's method ends: primary
	// and linear laws take one exact step, the others several.
	area := 0.0
	for i := range n {
		k := c.p.surface[i]
		m.metal[i] = slots[k]
		switch law := m.law[k]; {
		case slots[k] < 0:
		case law.Model == current.Primary:
			m.role[i] = fixed
		default:
			m.role[i] = kinetic
			m.linear = m.linear && law.Model == current.Linear
		}
		if slots[k] >= 0 {
			area += c.p.area[i]
		}
	}
	// The drive acts on the anodes' metal, or on the bath far away where there
	// is no anode at all.
	driven := slotAnode
	if !c.bounded {
		m.omega = 1
		if anodes {
			m.borders = append(m.borders, border{slot: m.far, metal: -1, sign: 1})
		} else {
			driven = m.far
		}
	}
	if total, held := d.Current(); held {
		m.borders = append(m.borders, border{slot: driven, metal: slotCathode, sign: -1, target: float64(total)})
	}
	// The border rows are sums of currents, the other rows are potentials.
	// Divided by what one volt would drive through the cell they weigh alike,
	// which GMRES needs.
	m.unit = kappa * c.p.extent()
	m.constants(c.bounded)
	return m
}

// constants sets c so that a bath at one potential carries no current, exactly:
//
//	c_i = ω - Σ_j K_ij
//
// On a smooth surface c is one half, what the jump of the double layer leaves
// there. Taken from the row sum of the compressed operator instead, it absorbs
// what quadrature and compression miss in each row: the constant potential, the
// largest part of any solution, drops out before they can act on it. How far c
// lies from one half is then a free measure of the mesh, see [model.rowSums].
func (m *model) constants(bounded bool) {
	for i := range m.c {
		m.g[i], m.k[i] = 0, 1
	}
	if m.single {
		for i := range m.c {
			m.c[i] = 1
		}
		return
	}
	m.op.apply(m.g, m.k, m.c)
	whole := 1.0
	if bounded {
		whole = 0
	}
	for i, sum := range m.c {
		m.c[i] = whole - sum
	}
}
