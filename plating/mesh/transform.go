package mesh

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// Translate returns a copy of m moved by a vector in metres.
//
// Errors: a [*FaultError] for a move that is not finite or leads beyond [Farthest].
//
// Source: [Geometry].
func Translate(m Mesh, by r3.Vec) (Mesh, error) {
	return m.moved(func(v r3.Vec) r3.Vec { return r3.Add(v, by) })
}

// Rotate returns a copy of m turned around an axis through the origin, by an
// angle in radians, counter-clockwise when the axis points at the viewer.
//
// Errors: a [*units.ValueError] for an angle that is not finite or an axis
// without direction; a [*FaultError] for a vertex that is not finite or beyond
// [Farthest].
//
// Source: [Geometry].
func Rotate(m Mesh, angle float64, axis r3.Vec) (Mesh, error) {
	if err := units.Finite("angle", units.Ratio(angle)); err != nil {
		return Mesh{}, err
	}
	if l := r3.Norm(axis); !(l > 0) || math.IsInf(l, 1) {
		return Mesh{}, &units.ValueError{Field: "axis", Value: fmt.Sprintf("(%g, %g, %g)", axis.X, axis.Y, axis.Z),
			Need: "a direction, such as (0, 0, 1)", Err: units.ErrNotPositive}
	}
	turn := r3.NewRotation(angle, axis)
	return m.moved(turn.Rotate)
}

// Scale returns a copy of m made larger by a factor, from the origin. It also
// mends a wrong unit: a factor of 25.4 makes inches of what was read as
// millimetres.
//
//	A' = f² A
//	V' = f³ V
//
// Errors: a [*units.ValueError] for a factor that is not above zero; a [*FaultError]
// for a vertex that comes beyond [Farthest].
//
// Source: [Geometry].
func Scale(m Mesh, factor float64) (Mesh, error) {
	if err := units.Positive("scale factor", units.Ratio(factor)); err != nil {
		return Mesh{}, err
	}
	return m.moved(func(v r3.Vec) r3.Vec { return r3.Scale(factor, v) })
}

func (m Mesh) moved(f func(r3.Vec) r3.Vec) (Mesh, error) {
	out := m.Clone()
	for i, v := range out.Vertices {
		v = f(v)
		if err := placed(v); err != nil {
			err.What = "vertex " + itoa(i) + " " + err.What
			return Mesh{}, err
		}
		out.Vertices[i] = v
	}
	return out, nil
}

// Merge returns one mesh of several, as parts on a rack. Vertices that agree stay
// apart, so that parts that touch remain parts.
//
// Errors: a [*FaultError] for more vertices or triangles than a mesh can count, and
// for an index without a vertex.
//
// Source: [Definition].
func Merge(all ...Mesh) (Mesh, error) {
	vertices, triangles := 0, 0
	for _, m := range all {
		vertices += len(m.Vertices)
		triangles += len(m.Triangles)
	}
	if vertices > maxCount || triangles > maxCount {
		return Mesh{}, about(ErrTooLarge, "500 million at most", "%d vertices, %d triangles", vertices, triangles)
	}
	out := Mesh{Vertices: make([]r3.Vec, 0, vertices), Triangles: make([][3]int32, 0, triangles)}
	for _, m := range all {
		from := int32(len(out.Vertices))
		out.Vertices = append(out.Vertices, m.Vertices...)
		for _, t := range m.Triangles {
			for k := range t {
				if t[k] < 0 || int(t[k]) >= len(m.Vertices) {
					return Mesh{}, aboutTriangle(len(out.Triangles), ErrIndex, "indices of vertices", "corner %d", t[k])
				}
				t[k] += from
			}
			out.Triangles = append(out.Triangles, t)
		}
	}
	return out, nil
}

// Subdivide returns a mesh in which each triangle is cut into four at the middles
// of its sides. The surface is the same to the last digit; a closed one stays
// closed. Edges of a curved body stay as coarse as they were: make a finer one.
//
// Errors: a [*FaultError] for a mesh that [Check] cannot look at, or one that grows
// too large.
//
// Source: [Geometry].
func Subdivide(m Mesh) (Mesh, error) {
	if err := m.sound(); err != nil {
		return Mesh{}, err
	}
	if len(m.Triangles) > maxCount/16 {
		return Mesh{}, about(ErrTooLarge, "a smaller mesh", "%d triangles times four", len(m.Triangles))
	}
	out := Mesh{Vertices: append([]r3.Vec(nil), m.Vertices...), Triangles: make([][3]int32, 0, 4*len(m.Triangles))}
	middles := map[[2]int32]int32{}
	middle := func(a, b int32) int32 {
		key := [2]int32{min(a, b), max(a, b)}
		at, known := middles[key]
		if !known {
			at = int32(len(out.Vertices))
			middles[key] = at
			out.Vertices = append(out.Vertices, r3.Scale(0.5, r3.Add(m.Vertices[a], m.Vertices[b])))
		}
		return at
	}
	for _, t := range m.Triangles {
		ab, bc, ca := middle(t[0], t[1]), middle(t[1], t[2]), middle(t[2], t[0])
		out.Triangles = append(out.Triangles, [3]int32{t[0], ab, ca}, [3]int32{ab, t[1], bc}, [3]int32{ca, bc, t[2]},
			[3]int32{ab, bc, ca})
	}
	return out, nil
}
