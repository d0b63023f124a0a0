package mesh

import (
	"math"

	"gonum.org/v1/gonum/spatial/r3"
)

// slack is how far a surface may move when a side is exchanged, as a share of the
// size of the mesh: what single precision makes of a flat face.
const slack = 1e-6

// pair holds the triangles at a side, -1 for none; twice the same is a side of
// more than two.
type pair [2]int32

// exchange changes the side between two triangles of one flat face for the other
// diagonal of their four-sided figure, where that makes the smallest angle larger
// and no side longer than it was and than a length. Sides where faces meet stay.
func (m Mesh) exchange(longest, size float64) {
	at := make(map[[2]int32]pair, 3*len(m.Triangles)/2)
	for i, t := range m.Triangles {
		for k := range t {
			e := edge(t, k)
			if p, known := at[e]; !known {
				at[e] = pair{int32(i), -1}
			} else if p[1] < 0 {
				at[e] = pair{p[0], int32(i)}
			} else {
				at[e] = pair{p[0], p[0]}
			}
		}
	}
	var open [][2]int32
	for _, t := range m.Triangles { // in the order of the triangles, not that of the map
		for k := range t {
			if e := edge(t, k); t[(k+1)%3] == e[0] {
				open = append(open, e)
			}
		}
	}
	for most := 8 * len(open); len(open) > 0 && most > 0; most-- {
		e := open[len(open)-1]
		open = open[:len(open)-1]
		p, known := at[e]
		if !known || p[1] < 0 || p[0] == p[1] {
			continue
		}
		i, j := p[0], p[1]
		k, l := across(m.Triangles[i], e), across(m.Triangles[j], e)
		t := m.Triangles[i]
		c, a, b, d := t[k], t[(k+1)%3], t[(k+2)%3], m.Triangles[j][l]
		other := [2]int32{min(c, d), max(c, d)}
		if _, taken := at[other]; taken || c == d || m.Triangles[j][(l+1)%3] != b ||
			!m.better(a, b, c, d, longest, size) {
			continue
		}
		m.Triangles[i], m.Triangles[j] = [3]int32{c, a, d}, [3]int32{d, b, c}
		delete(at, e)
		at[other] = pair{i, j}
		moves := func(x, y, from, to int32) {
			s := [2]int32{min(x, y), max(x, y)}
			q := at[s]
			for n := range q {
				if q[n] == from {
					q[n] = to
				}
			}
			at[s] = q
			open = append(open, s)
		}
		moves(a, d, j, i)
		moves(b, c, i, j)
		moves(c, a, i, i)
		moves(d, b, j, j)
	}
}

// across returns the corner of a triangle that is not on a side.
func across(t [3]int32, e [2]int32) int {
	for k, v := range t {
		if v != e[0] && v != e[1] {
			return k
		}
	}
	return 0
}

// better reports whether the triangles cab and dba of a flat face are better
// changed for cad and dbc.
func (m Mesh) better(a, b, c, d int32, longest, size float64) bool {
	va, vb, vc, vd := m.Vertices[a], m.Vertices[b], m.Vertices[c], m.Vertices[d]
	ab, cd := r3.Sub(vb, va), r3.Sub(vd, vc)
	if r3.Norm(cd) > max(longest, r3.Norm(ab)) || !m.level(a, b, c, d, size) {
		return false
	}
	ca, cb, da, db := r3.Sub(va, vc), r3.Sub(vb, vc), r3.Sub(va, vd), r3.Sub(vb, vd)
	one, two := r3.Cross(ca, cb), r3.Cross(db, da) // towards the outside
	up := r3.Add(one, two)
	if !(r3.Dot(r3.Cross(ca, cd), up) > 0) || !(r3.Dot(r3.Cross(cd, db), up) > 0) {
		return false // not convex
	}
	// The angles at c and d sum to more than half a turn.
	sinC, cosC, sinD, cosD := r3.Norm(one), r3.Dot(ca, cb), r3.Norm(two), r3.Dot(da, db)
	return sinC*cosD+cosC*sinD < -1e-9*math.Hypot(sinC, cosC)*math.Hypot(sinD, cosD)
}

// level reports whether the triangles cab and dba lie in one flat face: whether
// their two diagonals nearly meet, and the one is not folded back on the other.
func (m Mesh) level(a, b, c, d int32, size float64) bool {
	va, vb, vc, vd := m.Vertices[a], m.Vertices[b], m.Vertices[c], m.Vertices[d]
	n := r3.Cross(r3.Sub(vb, va), r3.Sub(vd, vc))
	area := r3.Norm(n)
	if !(area > 0) || math.Abs(r3.Dot(r3.Sub(vc, va), n)) > slack*size*area {
		return false
	}
	one, two := r3.Cross(r3.Sub(va, vc), r3.Sub(vb, vc)), r3.Cross(r3.Sub(vb, vd), r3.Sub(va, vd))
	return r3.Dot(one, two) > 0 || r3.Norm(one) == 0 || r3.Norm(two) == 0
}

// creases returns the sides longer than a length that no exchange can take away:
// where faces meet or a surface ends. The value is as that of cuts.
func (m Mesh) creases(longest, size float64) map[[2]int32]int32 {
	list := map[[2]int32]int32{}
	runs(m.sides(), func(e []side) {
		if !(r3.Norm(r3.Sub(m.Vertices[e[0].high], m.Vertices[e[0].low])) > longest) {
			return
		}
		s := [2]int32{e[0].low, e[0].high}
		if len(e) == 2 && e[0].forward != e[1].forward {
			i, j := e[0].triangle, e[1].triangle
			k, l := across(m.Triangles[i], s), across(m.Triangles[j], s)
			t := m.Triangles[i]
			if m.level(t[(k+1)%3], t[(k+2)%3], t[k], m.Triangles[j][l], size) {
				return
			}
		}
		list[s] = int32(len(m.Vertices) + len(list))
	})
	return list
}
