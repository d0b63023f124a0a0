package mesh

import (
	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// mostExchanges is how many passes may exchange sides and cut those of creases
// first: more than halve a kilometre to a micrometre. Where triangles have no area
// that need not end; halving the longest sides alone does.
const mostExchanges = 40

// Split returns a mesh whose sides are no longer than a length: what a drawing
// program writes, two triangles for a flat face and hundreds for a fillet beside it,
// becomes a mesh to compute on without more triangles on the fillet. First the
// sides are halved where faces meet, then those within them, each triangle across
// its longest side and its neighbours with it, which leaves no angle below half the
// smallest one. After each pass sides within a flat face are changed for the other
// diagonal where that makes the angles better. The surface moves by no more than a
// millionth of the size of the mesh; a closed one stays closed. most bounds the
// triangles; 0 bounds them at 125 million only. A mesh that has no longer side comes
// back as it is.
//
//	n ≈ 4 to 8 · Σ A_i/h²
//
//	n    triangles of the result where faces are wider than h
//	A_i  area of a triangle of m              [m²]
//	h    longest, > 0                         [m]
//
// Errors: a [*units.ValueError] for a length that is not above zero or a bound
// below zero; a [*FaultError] for a mesh that [Check] cannot look at, a triangle with
// the same corner twice, or a mesh that would grow beyond most.
//
// Source: [Bisection].
func Split(m Mesh, longest units.Length, most int) (Mesh, error) {
	if err := units.Positive("longest side", longest); err != nil {
		return Mesh{}, err
	}
	if most < 0 {
		return Mesh{}, &units.ValueError{Field: "most triangles", Value: itoa(most), Need: "0 or more",
			Err: units.ErrNegative}
	}
	if err := m.sound(); err != nil {
		return Mesh{}, err
	}
	for i, t := range m.Triangles {
		if t[0] == t[1] || t[1] == t[2] || t[2] == t[0] {
			return Mesh{}, aboutTriangle(i, ErrEmpty, "three corners; Repair takes others out", "a corner twice")
		}
	}
	if most == 0 || most > maxCount/4 {
		most = maxCount / 4
	}
	m = m.Clone()
	if len(m.cuts(float64(longest))) == 0 {
		return m, nil // as it came, side by side
	}
	size := m.size()
	for pass := 0; ; pass++ {
		var cuts map[[2]int32]int32
		if pass < mostExchanges {
			m.exchange(float64(longest), size)
			cuts = m.creases(float64(longest), size)
		}
		if len(cuts) == 0 {
			cuts = m.cuts(float64(longest))
		}
		if len(cuts) == 0 {
			return m, nil
		}
		if n := m.pieces(cuts); n > most {
			return Mesh{}, about(ErrTooLarge, "at most "+itoa(most)+" triangles, so a greater length",
				"%d triangles and more with sides of up to %s", n, longest)
		}
		m = m.halved(cuts)
	}
}

// size returns the diagonal of the box around a mesh.
func (m Mesh) size() float64 {
	low, high := m.Vertices[m.Triangles[0][0]], m.Vertices[m.Triangles[0][0]]
	for _, t := range m.Triangles {
		for _, v := range t {
			p := m.Vertices[v]
			low = r3.Vec{X: min(low.X, p.X), Y: min(low.Y, p.Y), Z: min(low.Z, p.Z)}
			high = r3.Vec{X: max(high.X, p.X), Y: max(high.Y, p.Y), Z: max(high.Z, p.Z)}
		}
	}
	return r3.Norm(r3.Sub(high, low))
}

// edge returns the side of a triangle across from its corner k, the lower vertex
// first.
func edge(t [3]int32, k int) [2]int32 {
	a, b := t[(k+1)%3], t[(k+2)%3]
	return [2]int32{min(a, b), max(a, b)}
}

// long returns the corner across from the longest side of a triangle, and the
// square of its length. Of sides alike it is the one of the lowest vertices, so
// that both triangles at a side agree.
func (m Mesh) long(t [3]int32) (corner int, square float64) {
	for k := range t {
		e := edge(t, k)
		l := r3.Norm2(r3.Sub(m.Vertices[e[1]], m.Vertices[e[0]]))
		f := edge(t, corner)
		if l > square || l == square && (e[0] < f[0] || e[0] == f[0] && e[1] < f[1]) {
			corner, square = k, l
		}
	}
	return corner, square
}

// cuts returns the sides to halve: of each triangle with a side that is too long
// the longest one, so that a triangle with a side cut has its longest one cut too.
// The value is the place of the new vertex behind those there are.
func (m Mesh) cuts(longest float64) map[[2]int32]int32 {
	list := map[[2]int32]int32{}
	for _, t := range m.Triangles {
		k, square := m.long(t)
		if e := edge(t, k); square > longest*longest {
			if _, known := list[e]; !known {
				list[e] = int32(len(m.Vertices) + len(list))
			}
		}
	}
	return list
}

// pieces counts the triangles after the cuts.
func (m Mesh) pieces(cuts map[[2]int32]int32) int {
	n := len(m.Triangles)
	for _, t := range m.Triangles {
		for k := range t {
			if _, cut := cuts[edge(t, k)]; cut {
				n++
			}
		}
	}
	return n
}

// first returns the corner across from the longest side of a triangle that is cut,
// and the new vertex there; below zero when none is.
func (m Mesh) first(t [3]int32, cuts map[[2]int32]int32) (corner int, at int32) {
	longest := -1.0
	at = -1
	for k := range t {
		e := edge(t, k)
		if v, cut := cuts[e]; cut {
			if l := r3.Norm2(r3.Sub(m.Vertices[e[1]], m.Vertices[e[0]])); l > longest {
				corner, at, longest = k, v, l
			}
		}
	}
	return corner, at
}

// halved makes the cuts: each triangle across the longest side that is cut, and
// its halves across what they have of the others.
func (m Mesh) halved(cuts map[[2]int32]int32) Mesh {
	out := Mesh{Vertices: append(m.Vertices, make([]r3.Vec, len(cuts))...),
		Triangles: make([][3]int32, 0, m.pieces(cuts))}
	for e, at := range cuts {
		out.Vertices[at] = r3.Scale(0.5, r3.Add(m.Vertices[e[0]], m.Vertices[e[1]]))
	}
	// half adds the triangle of two corners of an old side and the new vertex
	// across from it, in halves when the old side is cut.
	half := func(a, b, top int32) {
		if at, cut := cuts[[2]int32{min(a, b), max(a, b)}]; cut {
			out.Triangles = append(out.Triangles, [3]int32{a, at, top}, [3]int32{at, b, top})
			return
		}
		out.Triangles = append(out.Triangles, [3]int32{a, b, top})
	}
	for _, t := range m.Triangles {
		k, at := m.first(t, cuts)
		if at < 0 {
			out.Triangles = append(out.Triangles, t)
			continue
		}
		half(t[k], t[(k+1)%3], at)
		half(t[(k+2)%3], t[k], at)
	}
	return out
}
