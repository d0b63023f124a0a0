package field

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/current"
)

// A seam is an edge that two panels share. Seams carry what a panel by itself
// does not know: the angle that the bath fills, which decides how the solution
// behaves there.
type seam struct {
	// a and b are the panels, ends the corners at the ends of the edge.
	a, b int32
	ends [2]r3.Vec
	// angle is that of the bath between the two, in radians: π where they lie
	// in one plane, 3π/2 along the outer edge of a block, π/2 along an inner
	// one.
	angle float64
}

// seams lists the edges that two panels share, in the order of the panels.
// Corners count as one where their coordinates are equal. Sheets, which have no
// inside, and the free edges of halved wall panels give none.
func (c *cell) seams() []seam {
	p := c.p
	// An edge waits in the map until its other half comes. Then it is taken
	// out, so that the map stays small on meshes that are numbered in order.
	open := make(map[[2]r3.Vec]int32, p.len())
	var out []seam
	for i := range p.tri {
		if c.surfaces[p.surface[i]].Sheet {
			continue
		}
		t := &p.tri[i]
		for k := range 3 {
			a, b := t[k], t[(k+1)%3]
			other := [2]r3.Vec{b, a} // a neighbour runs along the edge the other way
			j, ok := open[other]
			if !ok {
				open[[2]r3.Vec{a, b}] = int32(i)
				continue
			}
			delete(open, other)
			out = append(out, seam{a: j, b: int32(i), ends: other, angle: p.between(int(j), i, a)})
		}
	}
	return out
}

// between returns the angle of the bath between panels i and j that share an
// edge through v. Normals point out of the bath, so j rises into the bath where
// its centroid lies behind the plane of i.
func (p *panels) between(i, j int, v r3.Vec) float64 {
	// The angle by which the normal turns, from the sine and the cosine
	// together: either alone loses digits near 0 or near π/2.
	turn := math.Atan2(norm(r3.Cross(p.n[i], p.n[j])), r3.Dot(p.n[i], p.n[j]))
	if r3.Dot(p.n[i], r3.Sub(p.at[j], v)) < 0 {
		return math.Pi - turn
	}
	return math.Pi + turn
}

// A Corner says how a primary electrode meets insulators. Where the bath fills
// an angle α of more than 90° between the two, the current density grows without
// bound towards the line at which they meet:
//
//	j ~ r^(ν-1)          ν = π/(2α)
//
//	r  distance from the line
//	α  angle of the bath: 180° for an electrode let into an insulating face
//
// The panels along the line carry a part s ~ h^ν of the current, h being their
// width, and give it a constant density. Meshes in which all panels are halved
// then agree with each other better than with the truth.
type Corner struct {
	// Angle is the largest α in radians; 0 where the electrode is not primary
	// or α is nowhere above 90°.
	Angle float64
	// Share is s, the part of the electrode's current in the panels that touch
	// such lines.
	Share float64
}

// square is the angle from which a corner counts as wider than a right one. The
// facets of a curved wall meet a flat electrode a little off the right angle of
// the wall itself; up to here the estimate would grow by less than a twentieth.
const square = math.Pi/2 + 0.05

// cornerShare is the error of the total as a part of s·(1/ν - 1). Measured on
// exact cells of even panels (see corner_test.go): 0.09 at 135°, 0.17 at 180° and
// 0.19 at 270°, less where panels are drawn to the line.
const cornerShare = 0.2

// Estimate returns the relative error that is left on the finer of two meshes
// of which one has half the panel size of the other, from the relative change
// between them. It is never less than the change, and without a corner it is the
// change.
//
//	max( |change|/(2^ν - 1), s·(1/ν - 1)/5 )
//
// The first is what is left of a series that falls with the slowest power of
// the panel size, h^ν. The second does not trust the change: it is the share of
// current whose place in the panels along the line no mesh of this size knows.
// Panels drawn to the line do better than both.
//
// Source: [Derived] from the local solution r^ν·sin νθ; the fifth is [Practice],
// set on exact cells.
func (c Corner) Estimate(change float64) float64 {
	change = math.Abs(change)
	if !(c.Angle > square) {
		return change
	}
	nu := math.Pi / (2 * c.Angle)
	return max(change/(math.Pow(2, nu)-1), cornerShare*c.Share*(1/nu-1))
}

// corners fills in where primary electrodes meet insulators.
//
// Only the electrode's panels count, and those with one corner on a line as
// well as those with an edge on it: both give a constant to a density that
// changes most across them.
func (c *cell) corners(results []MeshResult, seams []seam) {
	p := c.p
	on := make([]map[r3.Vec]bool, len(results))
	for _, e := range seams {
		if e.angle <= square {
			continue
		}
		i, j := p.surface[e.a], p.surface[e.b]
		if results[i].Kind == current.Insulator {
			i, j = j, i
		}
		if results[i].Kind == current.Insulator || results[j].Kind != current.Insulator ||
			c.surfaces[i].Law.Model != current.Primary {
			continue
		}
		if on[i] == nil {
			on[i] = map[r3.Vec]bool{}
		}
		on[i][e.ends[0]], on[i][e.ends[1]] = true, true
		results[i].Corner.Angle = max(results[i].Corner.Angle, e.angle)
	}
	// The share is of the sum of the absolute currents, so that a surface with
	// both signs has one too.
	sums := make([]float64, len(results))
	for i := range p.tri {
		k := p.surface[i]
		if on[k] == nil {
			continue
		}
		r := &results[k]
		amps := math.Abs(float64(r.Density[p.local[i]])) * p.area[i]
		sums[k] += amps
		if t := &p.tri[i]; on[k][t[0]] || on[k][t[1]] || on[k][t[2]] {
			r.Corner.Share += amps
		}
	}
	for k, sum := range sums {
		if sum > 0 {
			results[k].Corner.Share /= sum
		}
	}
}
