package axi

import (
	"math"
	"sort"
)

// A stretch is an interval of arc length along the vessel.
type stretch struct{ from, to float64 }

// A body is a part put into place: its curves, the closed outline of its metal, the side
// the metal lies on, and the stretches of vessel it covers.
//
// flip is +1 when the profile runs round its metal from R towards Z, counter-clockwise in
// the half plane, and -1 when the other way. With it the normal out of the bath, which
// points into the metal, does not depend on how a profile was drawn.
type body struct {
	curves  []curve
	outline []vec
	sheet   bool
	flip    float64
	dry     []stretch
	touches []float64 // arc lengths along the vessel of the ends that stand on it
}

// An ending says where an end of a profile lies: on the axis, on the vessel, on the floor,
// or free in the bath.
type ending struct {
	kind endKind
	at   float64 // arc length along the vessel
}

type endKind uint8

const (
	free endKind = iota
	onAxis
	onVessel
	onFloor
)

// place finds the ends of a part, closes its outline and checks that it lies in the bath.
func (m *model) place(i int, p Revolved, vessel []curve) (body, error) {
	name := partName(i, p)
	cs := scaledCurves(p.Profile, m.size)
	b := body{curves: cs, sheet: p.Sheet, flip: 1}
	first, last := cs[0].a, cs[len(cs)-1].b
	ends := [2]ending{m.ending(first, vessel), m.ending(last, vessel)}
	if err := m.within(name, b, ends, vessel); err != nil {
		return b, err
	}
	for _, e := range ends {
		if e.kind == onVessel {
			b.touches = append(b.touches, e.at)
		}
	}
	b.outline = append(chords(cs), last)
	if p.Sheet {
		return b, nil
	}
	if !p.Profile.closed() {
		if ends[0].kind == free || ends[1].kind == free {
			return b, wrong(name, "an open profile from "+p.Profile.Start().String()+" to "+p.Profile.End().String(),
				"ends on the axis, on the vessel, or in one point; or Sheet for metal without thickness", ErrProfile)
		}
		tail, dry := m.closing(ends, vessel)
		b.outline = append(b.outline, tail...)
		b.dry = dry
	}
	if signedArea(b.outline) < 0 {
		b.flip = -1
	}
	return b, nil
}

// ending says where an end of a profile lies. What is within 1e-9 of the size of the cell
// counts as on the vessel, which bridges the rounding of coordinates.
func (m *model) ending(p vec, vessel []curve) ending {
	if p.r == 0 {
		return ending{kind: onAxis}
	}
	if m.mirror && p.z == 0 {
		return ending{kind: onFloor}
	}
	offset := 0.0
	for _, c := range vessel {
		if c.on(p, 1e-9) {
			return ending{onVessel, offset + math.Min(math.Max(real(c.preimage(p)), 0), c.length)}
		}
		offset += c.length
	}
	return ending{}
}

// within refuses a part that leaves the bath or touches its walls anywhere but
// with an end.
func (m *model) within(name string, b body, ends [2]ending, vessel []curve) error {
	first, last := b.curves[0].a, b.curves[len(b.curves)-1].b
	excused := func(q vec) bool {
		return ends[0].kind >= onVessel && q.minus(first).norm() < 2e-9 || ends[1].kind >= onVessel &&
			q.minus(last).norm() < 2e-9
	}
	outside := func(q vec) error {
		return wrong(name, "at "+vec{q.r * m.size, q.z * m.size}.String(),
			"a part inside the bath that touches its walls with an end only", ErrOutside)
	}
	if m.mirror {
		for _, c := range b.curves {
			// An arc may dip below the floor between its ends: 65 points along each curve.
			for k := range 65 {
				q := c.at(c.length * float64(k) / 64)
				if q.z < 0 || q.z <= 1e-12 && !b.sheet && !excused(q) {
					return outside(q)
				}
			}
		}
		return nil
	}
	if len(vessel) == 0 {
		return nil
	}
	wall := append(chordsOf(vessel, 1024), vessel[len(vessel)-1].b)
	for _, c := range b.curves {
		for _, v := range vessel {
			for _, q := range common(c, v) {
				if !excused(q) {
					return outside(q)
				}
			}
		}
		if q := c.at(c.length / 2); !inside(q, wall) {
			// An arc of the vessel bulges past its chords, by a millionth of its
			// radius: only points farther off are outside.
			near := math.Inf(1)
			for _, v := range vessel {
				near = math.Min(near, v.nearest(q, 0, v.length))
			}
			if near > 3e-6 {
				return outside(q)
			}
		}
	}
	return nil
}

// closing returns the points that close an outline from its end back to its
// start, and what it covers of the vessel. Of the two ways along the vessel it
// takes the one that covers less: the larger wet side is the bath.
func (m *model) closing(ends [2]ending, vessel []curve) ([]vec, []stretch) {
	total := 0.0
	for _, c := range vessel {
		total += c.length
	}
	start, end := ends[0], ends[1]
	switch {
	case start.kind == onFloor || end.kind == onFloor:
		if start.kind == onAxis || end.kind == onAxis {
			return []vec{{0, 0}}, nil
		}
		return nil, nil
	case start.kind == onAxis && end.kind == onAxis:
		return nil, nil
	case start.kind == onVessel && end.kind == onVessel:
		lo, hi := math.Min(start.at, end.at), math.Max(start.at, end.at)
		if covered(vessel, lo, hi) <= covered(vessel, 0, lo)+covered(vessel, hi, total) {
			return walk(vessel, end.at, start.at), []stretch{{lo, hi}}
		}
		far, near := total, 0.0
		if end.at < start.at {
			far, near = 0, total
		}
		return append(walk(vessel, end.at, far), walk(vessel, near, start.at)...), []stretch{{0, lo}, {hi, total}}
	}
	at := math.Max(start.at, end.at) // the one on the vessel; the other is 0
	d := stretch{at, total}
	if covered(vessel, 0, at) <= covered(vessel, at, total) {
		d = stretch{0, at}
	}
	axis := d.from
	if d.to != at {
		axis = d.to
	}
	if end.kind == onVessel {
		return walk(vessel, at, axis), []stretch{d}
	}
	return walk(vessel, axis, at), []stretch{d}
}

// covered returns ∫ r ds along the vessel: its wetted area over 2π, to compare two sides
// by.
func covered(vessel []curve, from, to float64) float64 {
	sum, offset := 0.0, 0.0
	for _, c := range vessel {
		a, b := math.Max(from-offset, 0), math.Min(to-offset, c.length)
		if b > a {
			sum += c.moment(a, b)
		}
		offset += c.length
	}
	return sum
}

// walk returns points along the vessel from one arc length to another.
func walk(vessel []curve, from, to float64) []vec {
	var out []vec
	const n = 256
	for k := range n + 1 {
		s := from + (to-from)*float64(k)/n
		for i, c := range vessel {
			if s <= c.length || i == len(vessel)-1 {
				out = append(out, c.at(s))
				break
			}
			s -= c.length
		}
	}
	return out
}

// remaining returns what is left of a stretch when others are taken away. What is shorter
// than 1e-9 is rounding and left out.
func remaining(s stretch, gone []stretch) []stretch {
	sorted := append([]stretch(nil), gone...)
	sort.Slice(sorted, func(i, k int) bool { return sorted[i].from < sorted[k].from })
	var out []stretch
	at := s.from
	for _, g := range sorted {
		if g.from > at+1e-9 {
			if to := math.Min(g.from, s.to); to > at+1e-9 {
				out = append(out, stretch{at, to})
			}
		}
		at = math.Max(at, g.to)
	}
	if s.to > at+1e-9 {
		out = append(out, stretch{at, s.to})
	}
	return out
}

// overlaps tells whether two bodies cross or touch, hold one another, or cover the same
// stretch of vessel. Once no two curves meet, one point of each tells the rest.
func (b body) overlaps(o body) bool {
	for _, c := range b.curves {
		for _, d := range o.curves {
			if len(common(c, d)) > 0 {
				return true
			}
		}
	}
	in := func(x, y body) bool { return !y.sheet && inside(x.curves[0].at(x.curves[0].length/2), y.outline) }
	if in(b, o) || in(o, b) {
		return true
	}
	for _, s := range b.dry {
		for _, t := range o.dry {
			if s.from < t.to-1e-9 && t.from < s.to-1e-9 {
				return true
			}
		}
	}
	return false
}
