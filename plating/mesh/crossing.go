package mesh

import (
	"cmp"
	"slices"

	"gonum.org/v1/gonum/spatial/r3"
)

// Resolution is the part of the size of a surface, the diagonal of its box, below
// which [Check] takes two places for one when it looks for triangles that cross
// or lie on each other: 7 nm on a part of 35 mm. It is above what single
// precision, as in STL files, loses, and far below any gap that is drawn.
const Resolution = 2e-7

// mostPlaces is the number of places that a report keeps.
const mostPlaces = 8

// A Place is where two triangles cross or one lies on the other.
type Place struct {
	Triangles [2]int // from 0, the lower one first
	Pieces    [2]int // the component of each, from 0, in the order of their first triangles
	At        r3.Vec // a point that both have, in metres
	Covers    bool   // one lies on the other; else they cut through each other
}

// crossings are the triangles that cross or cover others.
type crossings struct {
	cut, covered int // triangles
	places       []Place
}

// A crosser looks for triangles that cross.
type crosser struct {
	m    Mesh
	tol  float64
	tree triangleTree
	seen []uint8 // for each triangle: isCut, isCovered
	out  crossings
}

const isCut, isCovered = 1, 2

// crossings finds all pairs of triangles that cut through each other or lie on
// each other. Triangles without area and copies of others are left out: Check
// counts them by themselves. What a pair has in common at a corner or an edge only
// is no crossing.
//
// The tree gives the pairs whose boxes meet, so that time grows little faster than the
// number of triangles. The tolerance is a part of the whole mesh, not of a triangle: single
// precision loses digits by the distance from the origin.
func (m Mesh) crossings(copies map[int]int) crossings {
	low, high := m.box()
	c := crosser{m: m, tol: Resolution * r3.Norm(r3.Sub(high, low)), seen: make([]uint8, len(m.Triangles))}
	use := make([]int32, 0, len(m.Triangles))
	for i := range m.Triangles {
		if _, is := copies[i]; !is && !flat(m.Corners(i)) {
			use = append(use, int32(i))
		}
	}
	if !(c.tol > 0) || len(use) < 2 {
		return crossings{}
	}
	c.tree = m.tree(use, c.tol)
	c.tree.pairs(c.look)
	for _, s := range c.seen {
		if s&isCut != 0 {
			c.out.cut++
		}
		if s&isCovered != 0 {
			c.out.covered++
		}
	}
	return c.out
}

// look notes whether triangles i and j cross.
func (c *crosser) look(i, j int32) {
	if i > j {
		i, j = j, i
	}
	p, covers, found := crossing(c.m.triangle(i), c.m.triangle(j), c.tol)
	if !found {
		return
	}
	mark := uint8(isCut)
	if covers {
		mark = isCovered
	}
	c.seen[i] |= mark
	c.seen[j] |= mark
	// The first by number stay, whatever the order in which they are found.
	place := Place{Triangles: [2]int{int(i), int(j)}, At: p, Covers: covers}
	at, _ := slices.BinarySearchFunc(c.out.places, place, func(a, b Place) int {
		return cmp.Or(cmp.Compare(a.Triangles[0], b.Triangles[0]), cmp.Compare(a.Triangles[1], b.Triangles[1]))
	})
	if at < mostPlaces {
		c.out.places = slices.Insert(c.out.places, at, place)
		c.out.places = c.out.places[:min(len(c.out.places), mostPlaces)]
	}
}

// A corners is a triangle by its corners.
type corners [3]r3.Vec

// triangle returns the corners of triangle i.
func (m Mesh) triangle(i int32) corners {
	a, b, c := m.Corners(int(i))
	return corners{a, b, c}
}

// normal returns the unit normal.
func (t *corners) normal() r3.Vec { return r3.Unit(r3.Cross(r3.Sub(t[1], t[0]), r3.Sub(t[2], t[0]))) }

// heights returns how far the corners of s are above the plane of t.
//
//	d_k = n·(s_k - t_0)   [m], above zero on the side of the normal
func (t *corners) heights(n r3.Vec, s *corners) (d [3]float64, low, high float64) {
	for k, v := range s {
		d[k] = r3.Dot(n, r3.Sub(v, t[0]))
	}
	return d, min(d[0], d[1], d[2]), max(d[0], d[1], d[2])
}

// crossing reports whether two triangles with an area cut through each other, or
// one covers a part of the other, and a point of both.
//
// They cut when each has corners on both sides of the other's plane, further off
// than tol, and the pieces of the common line in the two agree over more than
// tol. One covers the other when its corners are no further than tol off the
// plane of the other, and what they have in common seen along the normal is wider
// than tol: an edge in common has no width.
//
//	line = n × o            direction in which the two planes meet
//	[p₀, p₁], [q₀, q₁]      stretches of it inside t and s
//	overlap = min(p₁, q₁) - max(p₀, q₀) > tol
//
// A pair that shares an edge has heights of zero there and overlaps along the edge alone;
// it counts only when one folds back onto the other.
func crossing(s, t corners, tol float64) (at r3.Vec, covers, found bool) {
	n := s.normal()
	dt, low, high := s.heights(n, &t)
	if low > tol || high < -tol {
		return at, false, false
	}
	level := low >= -tol && high <= tol
	through := low < -tol && high > tol
	o := t.normal()
	ds, low, high := t.heights(o, &s)
	switch {
	case low > tol || high < -tol:
		return at, false, false
	case level:
		at, found = covered(s, t, n, tol)
		return at, true, found
	case low >= -tol && high <= tol:
		at, found = covered(t, s, o, tol)
		return at, true, found
	case !through || low >= -tol || high <= tol:
		return at, false, false
	}
	line := r3.Unit(r3.Cross(n, o))
	p, q := t.section(dt), s.section(ds)
	// Along the line from one point of it, so that small lengths keep their digits.
	from := p[0]
	along := func(v r3.Vec) float64 { return r3.Dot(line, r3.Sub(v, from)) }
	p0, p1, q0, q1 := along(p[0]), along(p[1]), along(q[0]), along(q[1])
	start, end := max(min(p0, p1), min(q0, q1)), min(max(p0, p1), max(q0, q1))
	if !(end-start > tol) {
		return at, false, false
	}
	return r3.Add(from, r3.Scale((start+end)/2, line)), false, true
}

// section returns the two points at which the outline of a triangle goes through
// a plane, from the heights of its corners, which have both signs.
//
//	p = a + (b - a) d_a/(d_a - d_b)   on each side whose ends have heights of different sign
func (t *corners) section(d [3]float64) (p [2]r3.Vec) {
	n := 0
	for k := range t {
		l := (k + 1) % 3
		if (d[k] < 0) != (d[l] < 0) && n < 2 {
			p[n] = r3.Add(t[k], r3.Scale(d[k]/(d[k]-d[l]), r3.Sub(t[l], t[k])))
			n++
		}
	}
	return p
}

// covered reports whether two triangles in one plane of normal n have a common
// part wider than tol, and its middle: t is cut along the sides of s.
//
// The first loop looks for a side of s with all of t beyond it, which most neighbours have.
// Then t is cut by the half plane of each side in turn; a triangle cut by three lines has
// six corners at most. What is left is wider than tol when its area is more than tol times
// its longest diagonal.
func covered(s, t corners, n r3.Vec, tol float64) (r3.Vec, bool) {
	for k := range s { // most pairs of neighbours end here
		side := r3.Sub(s[(k+1)%3], s[k])
		inward := r3.Cross(n, side)
		most := tol * tol * r3.Norm2(side)
		beyond := true
		for _, v := range t {
			if d := r3.Dot(inward, r3.Sub(v, s[k])); d > 0 && d*d > most {
				beyond = false
				break
			}
		}
		if beyond {
			return r3.Vec{}, false
		}
	}
	var room [2][9]r3.Vec
	part := append(room[0][:0], t[:]...)
	for k := range s {
		inward := r3.Unit(r3.Cross(n, r3.Sub(s[(k+1)%3], s[k])))
		height := func(v r3.Vec) float64 { return r3.Dot(inward, r3.Sub(v, s[k])) }
		next := room[(k+1)%2][:0]
		for i, v := range part {
			w := part[(i+1)%len(part)]
			dv, dw := height(v), height(w)
			if dv >= 0 {
				next = append(next, v)
			}
			if (dv < 0) != (dw < 0) {
				next = append(next, r3.Add(v, r3.Scale(dv/(dv-dw), r3.Sub(w, v))))
			}
		}
		if part = next; len(part) < 3 {
			return r3.Vec{}, false
		}
	}
	var twice, middle r3.Vec
	longest := 0.
	for i, v := range part {
		middle = r3.Add(middle, r3.Scale(1/float64(len(part)), v))
		for _, w := range part[i+1:] {
			longest = max(longest, r3.Norm(r3.Sub(w, v)))
		}
		if i > 1 {
			twice = r3.Add(twice, r3.Cross(r3.Sub(part[i-1], part[0]), r3.Sub(v, part[0])))
		}
	}
	return middle, r3.Norm(twice)/2 > tol*longest
}

// findCrossings puts the triangles that cross or cover others into a report.
func (m Mesh) findCrossings(r *Findings, copies map[int]int, parts [][]int32, all []side) {
	found := m.crossings(copies)
	shared := m.sharedFaces(copies, all)
	r.Cut, r.Covered, r.Places, r.shared = found.cut, found.covered+2*len(shared), found.places, len(shared) > 0
	if r.shared { // the first of them stands for the faces that others cover
		a, b, c := m.Corners(shared[0])
		r.Places = slices.Insert(r.Places, 0, Place{Triangles: [2]int{copies[shared[0]], shared[0]},
			At: r3.Scale(1./3, r3.Add(a, r3.Add(b, c))), Covers: true})
		r.Places = r.Places[:min(len(r.Places), mostPlaces)]
	}
	if len(r.Places) == 0 {
		return
	}
	of := make([]int, len(m.Triangles))
	for k, part := range parts {
		for _, i := range part {
			of[i] = k
		}
	}
	for k := range r.Places {
		p := &r.Places[k]
		p.Pieces = [2]int{of[p.Triangles[0]], of[p.Triangles[1]]}
	}
}

// sharedFaces returns the faces that two bodies of one mesh share corner by
// corner, in rising order: copies that run the other way, with four triangles at
// each of their edges, or six or eight. A stray copy of a face has three.
func (m Mesh) sharedFaces(copies map[int]int, all []side) (shared []int) {
	if len(copies) == 0 {
		return nil
	}
	at := map[[2]int32]int{}
	runs(all, func(edge []side) { at[[2]int32{edge[0].low, edge[0].high}] = len(edge) })
	for i, was := range copies {
		t := sorted(m.Triangles[i])
		full := true
		for _, e := range [3][2]int32{{t[0], t[1]}, {t[1], t[2]}, {t[0], t[2]}} {
			full = full && at[e] >= 4 && at[e]%2 == 0
		}
		if full && !sameTurn(m.Triangles[was], m.Triangles[i]) {
			shared = append(shared, i)
		}
	}
	slices.Sort(shared)
	return shared
}
