package mesh

import (
	"bytes"

	"gonum.org/v1/gonum/spatial/r3"
)

// readTextSTL reads solids one after the other. Words may be in capitals and
// lines may break anywhere between words, except behind solid and endsolid,
// whose names end with the line.
//
//	solid name
//	facet normal 0 0 1
//	outer loop
//	vertex 0 0 0   (three of them)
//	endloop
//	endfacet
//	endsolid name
//
// The file knows no shared corners: equal numbers become one vertex, compared before they
// are scaled to metres. Normals are read over, since they may disagree with the corners,
// which count.
//
// Errors: a [*FaultError] with the line.
func readTextSTL(data []byte, unit float64) (Mesh, error) {
	var m Mesh
	w := words{data: bytes.TrimPrefix(data, []byte("\xef\xbb\xbf")), line: 1}
	seen := map[[3]float64]int32{}
	open := false
	for {
		word := w.next()
		switch {
		case len(word) == 0 && !open && len(m.Triangles) > 0:
			return m, nil
		case len(word) == 0 && open:
			return Mesh{}, w.fail(ErrTruncated, "endsolid at the end; export the file once more",
				"the file ends after %d triangles", len(m.Triangles))
		case len(word) == 0:
			return Mesh{}, w.fail(ErrEmpty, "one triangle or more", "a file of 0 triangles")
		case is(word, "solid") && !open:
			open = true
			w.skipLine()
		case is(word, "endsolid") && open:
			open = false
			w.skipLine()
		case is(word, "facet") && open:
			t, err := facet(&w, &m, seen, unit)
			if err != nil {
				return Mesh{}, err
			}
			m.Triangles = append(m.Triangles, t)
			if len(m.Triangles) > maxCount {
				return Mesh{}, w.fail(ErrTooLarge, "500 million at most", "%d triangles", len(m.Triangles))
			}
		case open:
			return Mesh{}, w.fail(ErrSyntax, "facet or endsolid", "the word %s", clip(word))
		default:
			return Mesh{}, w.fail(ErrSyntax, "solid or the end of the file", "the word %s", clip(word))
		}
	}
}

// facet reads one facet behind its first word.
func facet(w *words, m *Mesh, seen map[[3]float64]int32, unit float64) (t [3]int32, err error) {
	if err = w.want("normal"); err != nil {
		return t, err
	}
	for range 3 { // read over: the corners have the direction
		if len(w.next()) == 0 {
			return t, w.fail(ErrTruncated, "three numbers behind normal", "the file ends")
		}
	}
	if err = w.want("outer", "loop"); err != nil {
		return t, err
	}
	for k := range t {
		if err = w.want("vertex"); err != nil {
			return t, err
		}
		var p [3]float64
		for d := range p {
			if p[d], err = w.number(); err != nil {
				return t, err
			}
		}
		index, known := seen[p]
		if !known {
			v := r3.Scale(unit, r3.Vec{X: p[0], Y: p[1], Z: p[2]})
			if e := placed(v); e != nil {
				e.Line, e.Triangle = w.line, len(m.Triangles)
				return t, e
			}
			index = int32(len(m.Vertices))
			seen[p] = index
			m.Vertices = append(m.Vertices, v)
		}
		t[k] = index
	}
	return t, w.want("endloop", "endfacet")
}
