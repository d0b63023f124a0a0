package field

import (
	"fmt"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// A cell is a checked problem, cut into panels.
type cell struct {
	surfaces []Boundary // the user's, then the walls of the box without meshes
	faces    [6]int     // number of panels of each wall
	p        *panels
	box      bool
	walls    box3 // of the box
	bounded  bool
	single   bool
}

// assemble checks a problem and cuts it into panels in the order of the
// surfaces.
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
	c := &cell{p: &panels{}}
	var corners []r3.Vec
	primary, sheet := true, ""
	for i := range p.Surfaces {
		s := p.Surfaces[i]
		s.Name = s.name(i)
		c.surfaces = append(c.surfaces, s)
		c.bounded = c.bounded || s.Vessel
		primary = primary && s.Kind != current.Insulator && s.Law.Model == current.Primary
		if s.Sheet {
			sheet = s.Name
		}
		for k := range s.Triangles {
			c.p.add(s.corners(k), int32(i), int32(k))
		}
		corners = append(corners, s.Vertices...)
	}
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
	m.unit = kappa * c.p.extent()
	m.constants(c.bounded)
	return m
}

// constants sets c so that a bath at one potential carries no current, exactly.
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
