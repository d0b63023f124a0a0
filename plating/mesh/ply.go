package mesh

import (
	"fmt"
	"io"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// ReadPLY reads a surface from a PLY file: text, or binary in either byte
// order. The file does not say its unit: unit is the length that one unit of the
// file stands for.
//
// It wants an element vertex with the numbers x, y and z and an element face
// with a list vertex_indices (or vertex_index) of whole numbers; other
// elements and properties are read over. A face of more than three corners is
// cut into triangles when it is flat and convex, so that every cut gives the
// same surface; any other is refused. Vertices are kept as they are, also those
// that no face uses.
//
// The whole file is held while it is read, at most [MaxBytes]. Memory follows the
// length of the file, less than 40 times of it, whatever counts the file claims.
//
// Errors: a [*units.ValueError] for the unit; a [*FaultError] with line or byte for
// a file that is cut off, has more or less than it says, has a coordinate that is
// not finite or beyond [Farthest], an index without a vertex, or a face that
// cannot be cut; the error of the reader. A file that is read is not yet a sound
// surface: ask [Check].
//
// Source: [PLYFormat].
func ReadPLY(r io.Reader, unit units.Length) (Mesh, error) {
	if err := units.Positive("unit of the file", unit); err != nil {
		return Mesh{}, err
	}
	data, err := readAll(r, "a PLY file", MaxBytes)
	if err != nil {
		return Mesh{}, err
	}
	h, err := readPLYHeader(data)
	if err != nil {
		return Mesh{}, err
	}
	var src plySource
	if h.format == "ascii" {
		src = &plyText{words{data: data[h.data:], line: h.line + 1}}
	} else {
		src = &plyBinary{data: data, at: h.data, big: h.format == "binary_big_endian"}
	}
	p := plyReader{src: src, unit: float64(unit)}
	for _, e := range h.elements {
		if err := p.element(e); err != nil {
			return Mesh{}, err
		}
	}
	if err := src.end(); err != nil {
		return Mesh{}, err
	}
	if len(p.ends) == 0 {
		return Mesh{}, &FaultError{What: "a file of 0 faces", Need: "an element face with one row or more",
			Line: h.line, Offset: -1, Triangle: -1, Err: ErrEmpty}
	}
	return p.mesh()
}

// A plySource gives one number after the other.
type plySource interface {
	number(k plyKind) (float64, error)
	room(n int64, k plyKind) error // for n numbers more
	end() error
	fail(reason error, need, format string, args ...any) error
}

// A plyReader collects vertices and faces.
type plyReader struct {
	src      plySource
	unit     float64
	vertices []r3.Vec
	corners  []int32 // of all faces, one after the other
	ends     []int   // of each face in corners
}

// element reads one table.
func (p *plyReader) element(e plyElement) error {
	bad := func(need, format string, args ...any) error {
		return &FaultError{What: fmt.Sprintf(format, args...), Need: need, Line: e.line, Offset: -1, Triangle: -1,
			Err: ErrSyntax}
	}
	if e.rows > 0 && len(e.properties) == 0 {
		return bad("properties", "element %s has rows but no properties", clip([]byte(e.name)))
	}
	x, y, z, list := -1, -1, -1, -1
	switch e.name {
	case "vertex":
		x, y, z = e.find("x"), e.find("y"), e.find("z")
		for _, i := range [3]int{x, y, z} {
			if i < 0 || e.properties[i].count != plyNone {
				return bad("the numbers x, y and z", "element vertex lacks one")
			}
		}
	case "face":
		list = e.find("vertex_indices", "vertex_index")
		if list < 0 || e.properties[list].count == plyNone || !e.properties[list].kind.whole() {
			return bad("a list vertex_indices of whole numbers", "element face has none")
		}
	}
	var v [3]float64
	for range e.rows {
		for i, q := range e.properties {
			if q.count != plyNone {
				if err := p.list(q, i == list); err != nil {
					return err
				}
				continue
			}
			value, err := p.src.number(q.kind)
			if err != nil {
				return err
			}
			switch i {
			case x:
				v[0] = value
			case y:
				v[1] = value
			case z:
				v[2] = value
			}
		}
		if x >= 0 {
			at := r3.Scale(p.unit, r3.Vec{X: v[0], Y: v[1], Z: v[2]})
			if bad := placed(at); bad != nil {
				return p.src.fail(bad.Err, bad.Need, "vertex %d %s", len(p.vertices), bad.What)
			}
			p.vertices = append(p.vertices, at)
		}
	}
	return nil
}

// list reads a list, as the corners of a face or over it.
func (p *plyReader) list(q plyProperty, corners bool) error {
	count, err := p.src.number(q.count)
	if err != nil {
		return err
	}
	n := int64(count)
	if float64(n) != count || n < 0 {
		return p.src.fail(ErrSyntax, "a count of zero or more", "a list of %v numbers", count)
	}
	if corners && (n < 3 || n > mostCorners) {
		return p.src.fail(ErrPolygon, "3 to "+itoa(mostCorners)+" corners", "face %d has %d", len(p.ends), n)
	}
	if err := p.src.room(n, q.kind); err != nil {
		return err
	}
	for range n {
		value, err := p.src.number(q.kind)
		if err != nil {
			return err
		}
		if !corners {
			continue
		}
		// The corners are held against the vertices when all are read.
		if value != float64(int32(value)) || value < 0 {
			return p.src.fail(ErrIndex, "whole numbers from 0", "face %d has corner %v", len(p.ends), value)
		}
		p.corners = append(p.corners, int32(value))
	}
	if corners {
		p.ends = append(p.ends, len(p.corners))
	}
	return nil
}

// mesh cuts the faces into triangles.
func (p *plyReader) mesh() (Mesh, error) {
	m := Mesh{Vertices: p.vertices, Triangles: make([][3]int32, 0, len(p.ends))}
	from := 0
	for face, to := range p.ends {
		loop := p.corners[from:to]
		from = to
		for _, v := range loop {
			if int(v) >= len(p.vertices) {
				return Mesh{}, about(ErrIndex, "indices below the number of vertices, "+itoa(len(p.vertices)),
					"face %d has corner %d", face, v)
			}
		}
		if len(loop) == 3 {
			m.Triangles = append(m.Triangles, [3]int32(loop))
			continue
		}
		apex := m.fan(loop)
		if apex < 0 {
			return Mesh{}, about(ErrPolygon, "triangles, or flat convex faces; let the program that made the file "+
				"cut them", "face %d of %d corners", face, len(loop))
		}
		n := len(loop)
		for k := 1; k < n-1; k++ {
			m.Triangles = append(m.Triangles, [3]int32{loop[apex], loop[(apex+k)%n], loop[(apex+k+1)%n]})
		}
		if len(m.Triangles) > maxCount {
			return Mesh{}, about(ErrTooLarge, "500 million at most", "%d triangles", len(m.Triangles))
		}
	}
	return m, nil
}
