package axi

import (
	"math"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// A Stretch holds the figures over an interval of a profile: a significant
// surface, say. Masked and insulating stretches are left out.
type Stretch struct {
	From, To    units.Length         // arc lengths
	Area        units.Area           // bare, of the stretch
	Current     units.Current        // into it
	Min, Max    units.CurrentDensity // towards the metal: the least and the most plated spot
	Mean        units.CurrentDensity // Current over Area
	MinAt       ProfileSpot          // where the least is
	MaxAt       ProfileSpot          // where the greatest is
	PartOfWhole float64              // of the surface's current

	panel, maxPanel int
}

// A ProfileSpot is a place on a profile.
type ProfileSpot struct {
	S  units.Length // arc length
	At Point        // the same in R and Z
}

// MinToAverage returns the ratio of the least to the mean current density: at
// constant current efficiency, the thickness at the thinnest spot over the mean.
func (s Stretch) MinToAverage() float64 { return float64(s.Min) / float64(s.Mean) }

// Between returns the figures of the stretch of a profile from one arc length
// to another, held to the profile's ends.
//
// The least and the greatest value are those of the polynomials, between the
// nodes as well, except next to an edge of a primary surface, where the current
// density goes to infinity or zero and only the nodes count. Means are
// integrals over the surface. Errors: a [*units.ValueError] for bounds that are
// NaN or the wrong way round, and for a stretch without bare metal.
//
// Source: [Definition].
func (s ProfileResult) Between(from, to units.Length) (Stretch, error) {
	if !(from < to) {
		return Stretch{}, wrong("stretch", from.String()+" to "+to.String(), "an interval of arc length that grows",
			units.ErrOutOfRange)
	}
	out := Stretch{From: from, To: to, Min: units.CurrentDensity(math.Inf(1)), Max: units.CurrentDensity(math.Inf(-1)),
		panel: -1, maxPanel: -1}
	f := s.at
	if f == nil || s.Kind == current.Insulator {
		return Stretch{}, wrong("stretch", s.Name, "an electrode of a solution", ErrNoElectrode)
	}
	size := f.ms.m.size
	for k, p := range f.ms.panels {
		pc := f.ms.m.pieces[p.piece]
		if pc.owner != s.owner || pc.kind == current.Insulator {
			continue
		}
		a := math.Max(pc.c.fromTrue(float64(from)/size-pc.before), p.sa)
		b := math.Min(pc.c.fromTrue(float64(to)/size-pc.before), p.sb)
		if b-a <= 1e-12*(p.sb-p.sa) {
			continue
		}
		ta, tb := real(p.t(complex(a, 0))), real(p.t(complex(b, 0)))
		area, current := f.sum(k, ta, tb)
		out.Area += units.Area(area * size * size)
		out.Current += units.Current(current * size * size)
		f.extremes(&out, k, ta, tb)
	}
	if out.panel < 0 {
		return Stretch{}, wrong("stretch", from.String()+" to "+to.String(), "a stretch with bare metal in the bath",
			ErrNoElectrode)
	}
	out.Mean = units.CurrentDensity(float64(out.Current) / float64(out.Area))
	out.PartOfWhole = 1
	if s.Current != 0 {
		out.PartOfWhole = float64(out.Current) / float64(s.Current)
	}
	return out, nil
}

// sum integrates area and current over a stretch of a panel, both over size².
func (f *solved) sum(k int, ta, tb float64) (area, current float64) {
	p := f.ms.panels[k]
	n := len(f.ms.rule.x)
	if ta == 0 && tb == 1 {
		for i := p.first; i < p.first+n; i++ {
			area += f.ms.nodes[i].ring
			current -= f.ms.nodes[i].ring * f.st.q[i] * f.sy.flux
		}
		return area, current
	}
	pc := f.ms.m.pieces[p.piece]
	r := gauss(n + 6)
	for i, x := range r.x {
		t := ta + (tb-ta)*x
		at, rate := p.s(t)
		w := 2 * math.Pi * pc.c.at(at).r * r.w[i] * (tb - ta) * rate * pc.c.speed(at)
		area += w
		current += w * f.current(k, t)
	}
	return area, current
}

// extremes looks for the least and greatest current density on a stretch of a panel.
func (f *solved) extremes(out *Stretch, k int, ta, tb float64) {
	p := f.ms.panels[k]
	var ts []float64
	if f.sy.roles[p.first] == primary && p.power > 1 {
		for _, t := range f.ms.rule.x {
			if t >= ta && t <= tb {
				ts = append(ts, t)
			}
		}
		if len(ts) == 0 {
			ts = []float64{0.5 * (ta + tb)}
		}
	} else {
		n := 2*len(f.ms.rule.x) + 1
		for i := range n {
			ts = append(ts, ta+(tb-ta)*0.5*(1-math.Cos(math.Pi*float64(i)/float64(n-1))))
		}
	}
	low, high := 0, 0
	js := make([]float64, len(ts))
	for i, t := range ts {
		js[i] = f.current(k, t)
		if js[i] < js[low] {
			low = i
		}
		if js[i] > js[high] {
			high = i
		}
	}
	spot := func(t float64) ProfileSpot {
		s, _ := p.s(t)
		pc := f.ms.m.pieces[p.piece]
		at := pc.c.at(s)
		size := f.ms.m.size
		return ProfileSpot{units.Length((pc.before + pc.c.toTrue(s)) * size), Point{units.Length(at.r * size),
			units.Length(at.z * size)}}
	}
	t, j := f.refine(k, ts, low, 1)
	if units.CurrentDensity(j) < out.Min {
		out.Min, out.MinAt, out.panel = units.CurrentDensity(j), spot(t), k
	}
	t, j = f.refine(k, ts, high, -1)
	if units.CurrentDensity(-j) > out.Max {
		out.Max, out.MaxAt, out.maxPanel = units.CurrentDensity(-j), spot(t), k
	}
}

// refine looks for the least of sign·j between the neighbours of a sample.
func (f *solved) refine(k int, ts []float64, i int, sign float64) (t, j float64) {
	best, value := ts[i], sign*f.current(k, ts[i])
	if i == 0 || i == len(ts)-1 || len(f.ms.rule.x) == 1 {
		return best, value
	}
	a, b := ts[i-1], ts[i+1]
	const golden = 0.3819660112501051
	for range 40 {
		u, v := a+golden*(b-a), b-golden*(b-a)
		ju, jv := sign*f.current(k, u), sign*f.current(k, v)
		if ju < jv {
			b = v
		} else {
			a = u
		}
		if w := math.Min(ju, jv); w < value {
			best, value = u, ju
			if jv < ju {
				best, value = v, jv
			}
		}
	}
	return best, value
}
