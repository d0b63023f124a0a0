package mesh

import (
	"bufio"
	"encoding/binary"
	"io"
	"math"
	"strconv"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A Skin is what [WritePLY] writes beside the surface: one value for each
// triangle. The zero Skin is the bare surface.
type Skin struct {
	Thickness []units.Length // of the coat; nil, or as many as there are triangles
	Colour    [][3]uint8     // red, green, blue; nil, or as many as there are triangles
	Text      bool           // as text, not binary
}

// WritePLY writes a surface as a PLY file, binary with the low byte first or
// as text, whose unit is the one given. A comment in the header says the unit.
// Coordinates are written in full, so that [ReadPLY] with the same unit gives
// the same mesh to the last digit or the one before. A thickness becomes the
// property thickness_um of the faces, in micrometres, and a colour red, green
// and blue.
//
// Errors: a [*units.ValueError] for the unit, a thickness that is not finite,
// or as many values as there are not triangles; a [*FaultError] for a mesh that
// cannot be written; the error of the writer.
//
// Source: [PLYFormat].
func WritePLY(w io.Writer, m Mesh, unit units.Length, skin Skin) error {
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
	if err := skin.check(len(m.Triangles)); err != nil {
		return err
	}
	if math.IsInf(float64(Farthest)/float64(unit), 0) {
		return about(ErrTooLarge, "a larger unit", "coordinates in a unit of %s", unit)
	}
	out := bufio.NewWriter(w)
	format := "binary_little_endian"
	if skin.Text {
		format = "ascii"
	}
	out.WriteString("ply\nformat " + format + " 1.0\ncomment one unit of length is " + unit.String() +
		"\nelement vertex " + itoa(len(m.Vertices)) + "\nproperty double x\nproperty double y\nproperty double z" +
		"\nelement face " + itoa(len(m.Triangles)) + "\nproperty list uchar int vertex_indices\n")
	if skin.Thickness != nil {
		out.WriteString("property double thickness_um\n")
	}
	if skin.Colour != nil {
		out.WriteString("property uchar red\nproperty uchar green\nproperty uchar blue\n")
	}
	out.WriteString("end_header\n")
	var b []byte
	for _, v := range m.Vertices {
		v = r3.Vec{X: v.X / float64(unit), Y: v.Y / float64(unit), Z: v.Z / float64(unit)}
		b = b[:0]
		for i, x := range [3]float64{v.X, v.Y, v.Z} {
			b = skin.number(b, x, i == 2)
		}
		out.Write(b)
	}
	for i, t := range m.Triangles {
		out.Write(skin.face(b[:0], i, t))
	}
	return out.Flush() // the first error of the writer sticks
}

// check returns a [*units.ValueError] unless there are n values of each, or none.
func (s Skin) check(n int) error {
	if s.Thickness != nil && len(s.Thickness) != n {
		return &units.ValueError{Field: "number of thicknesses", Value: itoa(len(s.Thickness)),
			Need: itoa(n) + ", one for each triangle", Err: units.ErrInconsistent}
	}
	if s.Colour != nil && len(s.Colour) != n {
		return &units.ValueError{Field: "number of colours", Value: itoa(len(s.Colour)),
			Need: itoa(n) + ", one for each triangle", Err: units.ErrInconsistent}
	}
	for i, t := range s.Thickness {
		if err := units.Finite("thickness of triangle "+itoa(i), t); err != nil {
			return err
		}
	}
	return nil
}

// number appends one number, last when a line of text ends with it.
func (s Skin) number(b []byte, v float64, last bool) []byte {
	if !s.Text {
		return binary.LittleEndian.AppendUint64(b, math.Float64bits(v))
	}
	b = strconv.AppendFloat(b, v, 'g', -1, 64)
	if last {
		return append(b, '\n')
	}
	return append(b, ' ')
}

// face appends the row of triangle i.
func (s Skin) face(b []byte, i int, t [3]int32) []byte {
	if s.Text {
		b = append(b, '3')
	} else {
		b = append(b, 3)
	}
	for _, v := range t {
		if s.Text {
			b = strconv.AppendInt(append(b, ' '), int64(v), 10)
		} else {
			b = binary.LittleEndian.AppendUint32(b, uint32(v))
		}
	}
	if s.Thickness != nil {
		um := s.Thickness[i].In(units.Micrometre)
		if s.Text {
			b = strconv.AppendFloat(append(b, ' '), um, 'g', -1, 64)
		} else {
			b = s.number(b, um, false)
		}
	}
	if s.Colour != nil {
		for _, c := range s.Colour[i] {
			if s.Text {
				b = strconv.AppendUint(append(b, ' '), uint64(c), 10)
			} else {
				b = append(b, c)
			}
		}
	}
	if s.Text {
		b = append(b, '\n')
	}
	return b
}
