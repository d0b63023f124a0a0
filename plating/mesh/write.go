package mesh

import (
	"bufio"
	"encoding/binary"
	"io"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// WriteSTL writes a surface as a binary STL file, whose unit is the one given.
// The format has no unit of its own: tell whoever reads it.
//
// The format rounds coordinates to about seven digits. Two corners of one
// triangle that would fall together so are an error, not a smaller mesh.
//
// Errors: a [*units.ValueError] for the unit; a [*FaultError] for a mesh that cannot
// be written; the error of the writer.
//
// Source: [STLFormat].
func WriteSTL(w io.Writer, m Mesh, unit units.Length) error {
	if w == nil {
		return units.Missing("writer", "one that takes the file")
	}
	if err := units.Positive("unit of the file", unit); err != nil {
		return err
	}
	if w == nil {
		return units.Missing("writer", "one that takes the file")
	}
	if err := m.sound(); err != nil {
		return err
	}
	rounded := make([][3]float32, len(m.Vertices))
	for i, v := range m.Vertices {
		v = r3.Scale(1/float64(unit), v)
		rounded[i] = [3]float32{float32(v.X), float32(v.Y), float32(v.Z)}
		for _, x := range rounded[i] {
			if math.IsInf(float64(x), 0) || x != x {
				return about(ErrTooLarge, "a larger unit", "vertex %d at %v in a unit of %s", i, v, unit)
			}
		}
	}
	for i, t := range m.Triangles {
		if repeated(t) {
			continue // no more than it was
		}
		a, b, c := rounded[t[0]], rounded[t[1]], rounded[t[2]]
		if a == b || b == c || c == a {
			return aboutTriangle(i, ErrCollapse, "a PLY file, or a mesh moved to the origin",
				"corners that agree in seven digits")
		}
	}
	out := bufio.NewWriter(w)
	var head [stlHeader]byte
	copy(head[:80], "laydown surface; one unit is "+unit.String())
	binary.LittleEndian.PutUint32(head[80:], uint32(len(m.Triangles)))
	out.Write(head[:])
	var b [stlFacet]byte
	for i, t := range m.Triangles {
		n := m.cross2(i)
		if l := r3.Norm(n); l > 0 {
			n = r3.Scale(1/l, n)
		}
		putVec(b[:], [3]float32{float32(n.X), float32(n.Y), float32(n.Z)})
		for k, v := range t {
			putVec(b[12+12*k:], rounded[v])
		}
		out.Write(b[:])
	}
	return out.Flush() // the first error of the writer sticks
}

func putVec(b []byte, v [3]float32) {
	for d, x := range v {
		binary.LittleEndian.PutUint32(b[4*d:], math.Float32bits(x))
	}
}
