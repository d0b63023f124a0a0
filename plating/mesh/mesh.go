package mesh

import (
	"io"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A Mesh is a surface of flat triangles. The corners of a triangle are indices
// into Vertices, counter-clockwise when seen from outside: from the side of the
// solution. Triangles that share an edge share its two vertices.
//
// The zero Mesh is empty and has no area.
type Mesh struct {
	Vertices  []r3.Vec // metres
	Triangles [][3]int32
}

// Farthest is the largest coordinate that is taken for a part: 1000 km. A
// larger one comes from a damaged file or a wrong unit.
const Farthest units.Length = 1e6

// MaxBytes is the longest file that is read: a mesh of some million triangles.
const MaxBytes = 512 << 20

// readAll reads a file of at most so many bytes.
func readAll(r io.Reader, what string, most int64) ([]byte, error) {
	if r == nil {
		return nil, units.Missing("reader", "one of "+what)
	}
	data, err := io.ReadAll(io.LimitReader(r, most+1))
	if err == nil && int64(len(data)) > most {
		return nil, &FaultError{What: "more than " + itoa(int(most)) + " bytes", Need: what + " of at most that",
			Offset: most, Triangle: -1, Err: ErrTooLarge}
	}
	return data, err
}

// maxCount is the largest number of vertices, and of triangles.
const maxCount = math.MaxInt32 / 4

// Corners returns the three corners of triangle i, in metres. A triangle that the
// mesh does not have, or one with a corner that it does not have, has corners that are
// not numbers: see [Check].
func (m Mesh) Corners(i int) (a, b, c r3.Vec) {
	none := r3.Vec{X: math.NaN(), Y: math.NaN(), Z: math.NaN()}
	if i < 0 || i >= len(m.Triangles) {
		return none, none, none
	}
	t := m.Triangles[i]
	for _, v := range t {
		if v < 0 || int(v) >= len(m.Vertices) {
			return none, none, none
		}
	}
	return m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
}

// Clone returns a copy that shares nothing with m.
func (m Mesh) Clone() Mesh {
	return Mesh{
		Vertices:  append([]r3.Vec(nil), m.Vertices...),
		Triangles: append([][3]int32(nil), m.Triangles...),
	}
}

// sound returns a [*FaultError] for the first thing that keeps m from being
// computed with: no triangle, an index without a vertex, a coordinate that is
// not finite or beyond [Farthest].
func (m Mesh) sound() error {
	if len(m.Triangles) == 0 {
		return about(ErrEmpty, "one triangle or more", "a mesh without triangles")
	}
	if len(m.Vertices) > maxCount || len(m.Triangles) > maxCount {
		return about(ErrTooLarge, "500 million at most", "%d vertices, %d triangles", len(m.Vertices), len(m.Triangles))
	}
	for i, v := range m.Vertices {
		if err := placed(v); err != nil {
			err.What = "vertex " + itoa(i) + " " + err.What
			return err
		}
	}
	for i, t := range m.Triangles {
		for _, v := range t {
			if v < 0 || int(v) >= len(m.Vertices) {
				return aboutTriangle(i, ErrIndex, "indices from 0 to "+itoa(len(m.Vertices)-1), "corner %d", v)
			}
		}
	}
	return nil
}

// placed returns a [*FaultError] for a place no part can be at.
func placed(v r3.Vec) *FaultError {
	for _, x := range [3]float64{v.X, v.Y, v.Z} {
		if x-x != 0 {
			return about(ErrNotFinite, "finite coordinates", "coordinate %v", x)
		}
		if math.Abs(x) > float64(Farthest) {
			return about(ErrTooLarge, "coordinates below 1000 km; check the unit of the file", "coordinate %.4g m", x)
		}
	}
	return nil
}

// cross2 returns twice the area vector of triangle i: along its outward normal.
func (m Mesh) cross2(i int) r3.Vec {
	a, b, c := m.Corners(i)
	return r3.Cross(r3.Sub(b, a), r3.Sub(c, a))
}

// flat reports whether a triangle has no area to speak of: twice its area is
// not above 1e-9 times the square of its longest edge. A current distribution
// cannot use a thinner one.
func flat(a, b, c r3.Vec) bool {
	u, v, w := r3.Sub(b, a), r3.Sub(c, a), r3.Sub(c, b)
	longest := max(r3.Norm2(u), r3.Norm2(v), r3.Norm2(w))
	return !(r3.Norm(r3.Cross(u, v)) > 1e-9*longest)
}

// repeated reports whether two corners of a triangle are one.
func repeated(t [3]int32) bool { return t[0] == t[1] || t[1] == t[2] || t[2] == t[0] }

// box returns the lowest and highest coordinates of the vertices in use.
func (m Mesh) box() (low, high r3.Vec) {
	inf := math.Inf(1)
	low, high = r3.Vec{X: inf, Y: inf, Z: inf}, r3.Vec{X: -inf, Y: -inf, Z: -inf}
	for _, t := range m.Triangles {
		for _, i := range t {
			low, high = around(low, high, m.Vertices[i])
		}
	}
	return low, high
}

// around widens a box so that it holds v.
func around(low, high, v r3.Vec) (r3.Vec, r3.Vec) {
	return r3.Vec{X: min(low.X, v.X), Y: min(low.Y, v.Y), Z: min(low.Z, v.Z)},
		r3.Vec{X: max(high.X, v.X), Y: max(high.Y, v.Y), Z: max(high.Z, v.Z)}
}
