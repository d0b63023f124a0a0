package axi

import (
	"fmt"
	"math"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// warn collects the warnings of a solution.
func warn(s *ProfileSolution, coarse *solved) []current.Warning {
	var out []current.Warning
	add := func(c current.WarningCode, part, format string, args ...any) {
		out = append(out, current.Warning{Code: c, Surface: part, Text: fmt.Sprintf(format, args...)})
	}
	f := s.fine
	for _, list := range [][]ProfileResult{s.Parts, s.Walls} {
		for _, sf := range list {
			if sf.Kind == current.Insulator {
				continue
			}
			w := sf.Whole
			cathode := sf.Kind == current.Cathode
			switch {
			case sf.Kind == current.Floating:
				add(current.Bipolar, sf.Name,
					"is wired to no rail: it plates with up to %v and dissolves with up to %v", w.Max, -w.Min)
			case cathode && w.Min < -1e-6*abs(w.Mean) || !cathode && w.Max > 1e-6*abs(w.Mean):
				add(current.Reversed, sf.Name, "current runs backwards near %v", map[bool]ProfileSpot{true: w.MinAt,
					false: w.MaxAt}[cathode].At)
			}
			if cathode && (sf.MinError > 0.01 || coarse != nil && math.IsNaN(sf.MinError)) {
				add(current.Unresolved, sf.Name,
					"the least current density, near %v, changed by %.2g %% from the coarser solution: the mesh "+
						"does not resolve it",
					w.MinAt.At, 100*sf.MinError)
			} else if cathode && len(f.ms.rule.x) == 1 && f.alone(sf) {
				add(current.Unresolved, sf.Name, "the least current density, near %v, lies on a single panel",
					w.MinAt.At)
			}
			if low, said := s.lawOf(&sf).WarnTafel(sf.Name, w.Min); cathode && said {
				out = append(out, low)
			}
			edge, zero := f.primaryEnds(sf.owner)
			if edge {
				add(current.InfiniteEdge, sf.Name,
					"without polarisation the current density at an edge is infinite: its greatest value means nothing")
			}
			if zero && cathode {
				add(current.ZeroCorner, sf.Name,
					"without polarisation the current density falls to zero in an inward corner: its least value is "+
						"that of the node next to it")
			}
		}
	}
	if gaps := f.ms.narrow(); gaps > 0 {
		add(current.NarrowGap, "", "%d panels are more than twice as long as the gap of bath they face", gaps)
	}
	if s.Checks.RowSum > 1e-3 {
		add(current.RoughShape, "", "the view from a panel is filled to %.2g instead of by one half: a body or a "+
			"gap is too thin for its panels", 0.5+s.Checks.RowSum)
	}
	if math.Abs(s.Checks.Balance) > 1e-3 {
		add(current.Unbalanced, "", "the currents of all surfaces add up to %.2g %% of the total, not to zero",
			100*s.Checks.Balance)
	}
	for i, r := range f.sy.roles {
		law := f.ms.m.surfaces[f.sy.bound[i]].law
		if r == polarises && exponent(law, f.x[i]) > 630 {
			add(current.OverflowedLaw, f.ms.m.surfaces[f.sy.bound[i]].name,
				"the overpotential is beyond what the law can express")
			break
		}
	}
	return out
}

// exponent returns the larger exponent of a law at an overpotential, 0 for a law
// without. The coefficient of the side that does not run does not count.
func exponent(law current.Law, eta float64) float64 {
	switch {
	case law.Model == current.Tafel && law.Side == current.AnodicSide, law.Model == current.ButlerVolmer && eta > 0:
		return law.Anodic * eta / law.Volt()
	case law.Model == current.Tafel, law.Model == current.ButlerVolmer:
		return -law.Cathodic * eta / law.Volt()
	}
	return 0
}

func abs(j units.CurrentDensity) units.CurrentDensity {
	return units.CurrentDensity(math.Abs(float64(j)))
}

// alone tells whether the least value of a surface of constant panels is
// less than its neighbours' by more than a tenth.
func (f *solved) alone(s ProfileResult) bool {
	k := s.Whole.panel
	near := false
	for _, n := range []int{k - 1, k + 1} {
		if n >= 0 && n < len(f.ms.panels) && f.ms.panels[n].piece == f.ms.panels[k].piece {
			near = near || math.Abs(f.current(n, 0.5)-f.current(k, 0.5)) < 0.1*math.Abs(f.current(k, 0.5))
		}
	}
	return !near
}

// primaryEnds tells whether a primary surface has edges where its current
// density is infinite, and corners where it is zero.
func (f *solved) primaryEnds(owner int) (infinite, zero bool) {
	for _, p := range f.ms.m.pieces {
		if p.owner != owner || f.ms.m.role(p) != primary {
			continue
		}
		for _, c := range p.ends {
			infinite = infinite || c.exponent < -1e-9
			zero = zero || c.exponent > 1e-9
		}
	}
	return infinite, zero
}

// narrow counts the panels that are longer than twice the gap they face.
func (ms *mesh) narrow() int {
	n := 0
	for i, p := range ms.panels {
		if 0.5*(p.sb-p.sa) > ms.gap(i) {
			n++
		}
	}
	return n
}

// lawOf returns the law of a surface of the solution.
func (s *ProfileSolution) lawOf(sf *ProfileResult) current.Law {
	return s.fine.ms.m.surfaces[sf.owner].law
}

// tafel refuses a Tafel law at a cathode where the reverse reaction counts. Anodes
// may be as far from the work as they like: they do not decide the coat.
func (s *ProfileSolution) tafel() error {
	for _, list := range [][]ProfileResult{s.Parts, s.Walls} {
		for i := range list {
			sf := &list[i]
			if sf.Kind != current.Cathode {
				continue
			}
			if _, err := s.lawOf(sf).CheckTafel(sf.Name, sf.Whole.Min); err != nil {
				return err
			}
		}
	}
	return nil
}
