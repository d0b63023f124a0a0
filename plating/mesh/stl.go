package mesh

import (
	"bytes"
	"encoding/binary"
	"io"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

const (
	stlHeader = 84 // 80 bytes of text and a count of four
	stlFacet  = 50 // a normal and three corners of 12 bytes, and two bytes more
)

// ReadSTL reads a surface from an STL file, binary or text. The file does not
// say its unit: unit is the length that one unit of the file stands for, most
// often units.Millimetre.
//
// Corners that agree in every digit become one vertex; nothing else is changed:
// see [Repair] for corners that nearly agree. The direction of a triangle is
// that of its corners; the normals written in the file are read over, and so
// are the two spare bytes of each binary triangle. A file whose length is that
// of its count is binary, whatever its first word; another one that begins with
// the word solid is text.
//
// The whole file is held while it is read, at most [MaxBytes]. Memory follows the
// length of the file, less than 40 times of it, whatever counts the file claims.
//
// Errors: a [*units.ValueError] for the unit; a [*FaultError] with line or byte for
// a file that is cut off, has more or less than it says, has a coordinate that is
// not finite or beyond [Farthest], or no triangle; the error of the reader.
// A file that is read is not yet a sound surface: ask [Check].
//
// Source: [STLFormat].
func ReadSTL(r io.Reader, unit units.Length) (Mesh, error) {
	if err := units.Positive("unit of the file", unit); err != nil {
		return Mesh{}, err
	}
	data, err := readAll(r, "an STL file", MaxBytes)
	if err != nil {
		return Mesh{}, err
	}
	if len(data) >= stlHeader && int64(len(data)) == facetsEnd(data) {
		return readBinarySTL(data, float64(unit))
	}
	if looksLikeText(data) {
		return readTextSTL(data, float64(unit))
	}
	return readBinarySTL(data, float64(unit))
}

// facetsEnd returns where a binary file ends by its own count.
func facetsEnd(data []byte) int64 {
	return stlHeader + stlFacet*int64(binary.LittleEndian.Uint32(data[80:]))
}

// looksLikeText reports whether data begins with the word solid and holds no
// byte that text does not have among its first thousand.
func looksLikeText(data []byte) bool {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	head := bytes.TrimLeft(data[:min(len(data), 1000)], " \t\r\n")
	if len(head) < 5 || !bytes.EqualFold(head[:5], []byte("solid")) {
		return false
	}
	if i := bytes.IndexByte(head, 0); i >= 0 {
		// A binary file may begin with solid; a damaged text has its facets.
		return bytes.Contains(bytes.ToLower(head), []byte("facet"))
	}
	return true
}

func readBinarySTL(data []byte, unit float64) (Mesh, error) {
	if len(data) < stlHeader {
		return Mesh{}, &FaultError{What: itoa(len(data)) + " bytes",
			Need:   "an STL file: text that begins with solid, or 84 bytes of header and 50 for each triangle",
			Offset: int64(len(data)), Triangle: -1, Err: ErrTruncated}
	}
	claimed := int64(binary.LittleEndian.Uint32(data[80:]))
	end, have := facetsEnd(data), int64(len(data))
	switch {
	case have < end:
		return Mesh{}, &FaultError{What: "the header counts " + itoa(int(claimed)) + " triangles, the file holds " +
			itoa(int(have-stlHeader)/stlFacet),
			Need: "a file of " + itoa(int(end)) + " bytes; export it once more", Offset: have, Triangle: -1,
			Err: ErrTruncated}
	case have > end:
		return Mesh{}, &FaultError{What: itoa(int(have-end)) + " bytes behind the " + itoa(int(claimed)) +
			" triangles that the header counts",
			Need: "a file of " + itoa(int(end)) + " bytes; export it once more", Offset: end,
			Triangle: -1, Err: ErrSyntax}
	case claimed == 0:
		return Mesh{}, &FaultError{What: "a file of 0 triangles", Need: "one triangle or more",
			Offset: 80, Triangle: -1, Err: ErrEmpty}
	case claimed > maxCount:
		return Mesh{}, &FaultError{What: itoa(int(claimed)) + " triangles", Need: "500 million at most", Offset: 80,
			Triangle: -1,
			Err:      ErrTooLarge}
	}
	m := Mesh{Triangles: make([][3]int32, 0, (len(data)-stlHeader)/stlFacet)}
	seen := map[[3]uint32]int32{}
	for at := stlHeader; at < len(data); at += stlFacet {
		var t [3]int32
		for k := range t {
			from := at + 12 + 12*k
			var bits [3]uint32
			for d := range bits {
				bits[d] = binary.LittleEndian.Uint32(data[from+4*d:])
				if bits[d] == 1<<31 { // minus zero is zero
					bits[d] = 0
				}
			}
			index, known := seen[bits]
			if !known {
				v := r3.Vec{X: single(bits[0]) * unit, Y: single(bits[1]) * unit, Z: single(bits[2]) * unit}
				if err := placed(v); err != nil {
					err.Offset, err.Triangle = int64(from), len(m.Triangles)
					return Mesh{}, err
				}
				index = int32(len(m.Vertices))
				seen[bits] = index
				m.Vertices = append(m.Vertices, v)
			}
			t[k] = index
		}
		m.Triangles = append(m.Triangles, t)
	}
	return m, nil
}

func single(bits uint32) float64 { return float64(math.Float32frombits(bits)) }
