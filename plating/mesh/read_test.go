package mesh

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"
	"testing/iotest"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

const facetText = `solid corner of a case
 facet normal 0 0 -1
  outer loop
   vertex 0 0 0
   vertex 0 10 0
   vertex 10 0 0
  endloop
 endfacet
 FACET NORMAL nan nan nan OUTER LOOP VERTEX 0 0 0 VERTEX 1.0e1 0 0 VERTEX -0 0 +10 ENDLOOP ENDFACET
endsolid corner of a case
solid
 facet normal 0 0 0 outer loop vertex 0 0 0 vertex 0 0 10 vertex 0 10 0 endloop endfacet
 facet normal 0 0 0 outer loop vertex 10 0 0 vertex 0 10 0 vertex 0 0 10 endloop endfacet
endsolid
`

// TestPropertyReadText reads text in the forms that the format allows, and the
// same as binary.
func TestPropertyReadText(t *testing.T) {
	for name, text := range map[string]string{"plain": facetText, "crlf": strings.ReplaceAll(facetText, "\n", "\r\n"),
		"cr": strings.ReplaceAll(facetText, "\n", "\r"), "mark": "\xef\xbb\xbf" + facetText,
		"blank": "\n\n  " + facetText + "\n\n"} {
		m := must(t)(ReadSTL(strings.NewReader(text), units.Millimetre))
		r := report(t, m)
		if !r.Sound() || len(m.Vertices) != 4 || apart(float64(r.Volume), 1e-6/6) > 1e-12 {
			t.Errorf("%s: %v", name, r)
		}
	}
	inch := report(t, must(t)(ReadSTL(strings.NewReader(facetText), units.Inch)))
	if apart(float64(inch.Volume), 1000.0/6*0.0254*0.0254*0.0254) > 1e-12 {
		t.Errorf("in inches %v", inch.Volume)
	}
	solid := stl(t, tetra(0.01))
	copy(solid, "solid as a binary file may begin")
	if m := must(t)(ReadSTL(bytes.NewReader(solid), units.Millimetre)); len(m.Triangles) != 4 || !report(t, m).Sound() {
		t.Error("a binary file that begins with solid")
	}
	// Minus zero is zero: the origin stays one vertex.
	raw := stl(t, tetra(0.01))
	for i := range 4 {
		for at := 12 + 4*(i%2); at < 48; at += 8 { // every other number of a facet
			if b := record(raw, i)[at:]; binary.LittleEndian.Uint32(b) == 0 {
				b[3] = 0x80
			}
		}
	}
	if m := must(t)(ReadSTL(bytes.NewReader(raw), units.Millimetre)); len(m.Vertices) != 4 || !report(t, m).Sound() {
		t.Errorf("minus zeros make %d vertices", len(m.Vertices))
	}
	for n := range 120 { // bytes too many
		_, err := ReadSTL(bytes.NewReader(append(stl(t, tetra(0.01)), make([]byte, n+1)...)), units.Millimetre)
		if !errors.Is(err, ErrSyntax) {
			t.Errorf("%d bytes behind: %v", n+1, err)
		}
	}
}

// TestPropertyRoundTrip writes and reads every sample in every format.
func TestPropertyRoundTrip(t *testing.T) {
	all := []Mesh{bunny(t, units.Millimetre)}
	for _, s := range samples() {
		all = append(all, must(t)(s.make(Grid{Size: 4e-3, Grade: 2})))
	}
	for i, m := range all {
		want := report(t, m)
		for _, unit := range []units.Length{units.Millimetre, units.Inch} {
			var b bytes.Buffer
			if err := WriteSTL(&b, m, unit); err != nil {
				t.Fatal(err)
			}
			got := report(t, must(t)(ReadSTL(&b, unit)))
			if !got.Sound() || apart(float64(got.Area), float64(want.Area)) > 1e-6 || apart(float64(got.Volume),
				float64(want.Volume)) > 1e-6 {
				t.Errorf("mesh %d as STL in %v: %v", i, unit, got)
			}
			skin := Skin{Thickness: make([]units.Length, len(m.Triangles)), Colour: make([][3]uint8, len(m.Triangles))}
			for _, s := range []Skin{{}, {Text: true}, skin, {Text: true, Thickness: skin.Thickness,
				Colour: skin.Colour}} {
				b.Reset()
				if err := WritePLY(&b, m, unit, s); err != nil {
					t.Fatal(err)
				}
				back := must(t)(ReadPLY(iotest.HalfReader(&b), unit))
				if len(back.Vertices) != len(m.Vertices) || len(back.Triangles) != len(m.Triangles) {
					t.Fatalf("mesh %d as PLY: %d and %d", i, len(back.Vertices), len(back.Triangles))
				}
				for k, v := range m.Vertices {
					if r3.Norm(r3.Sub(v, back.Vertices[k])) > 4e-16*r3.Norm(v) {
						t.Fatalf("vertex %d: %v, was %v", k, back.Vertices[k], v)
					}
				}
				for k, tr := range m.Triangles {
					if back.Triangles[k] != tr {
						t.Fatalf("triangle %d: %v, was %v", k, back.Triangles[k], tr)
					}
				}
			}
		}
	}
}

// plyOf makes a PLY text of vertices and faces.
func plyOf(vertices, faces string) string {
	count := func(s string) string { return itoa(strings.Count(s, "\n")) }
	return "ply\nformat ascii 1.0\nelement vertex " + count(vertices) +
		"\nproperty float x\nproperty float y\nproperty float z\n" +
		"element face " + count(faces) + "\nproperty list uchar int vertex_index\nend_header\n" + vertices + faces
}

const square = "0 0 0\n1 0 0\n1 1 0\n0 1 0\n"

// TestPropertyPolygons cuts what is flat and convex and refuses the rest.
func TestPropertyPolygons(t *testing.T) {
	cases := []struct {
		name, vertices, face string
		triangles            int // 0: refused
		area                 float64
	}{
		{"square", square, "4 0 1 2 3\n", 2, 1},
		{"square, other way", square, "4 3 2 1 0\n", 2, 1},
		{"middle on a side", square + "0.5 0 0\n", "5 0 4 1 2 3\n", 3, 1},
		{"middles on all sides", square + "0.5 0 0\n1 0.5 0\n0.5 1 0\n0 0.5 0\n", "8 0 4 1 5 2 6 3 7\n", 6, 1},
		{"hexagon", "2 0 0\n1 1.7320508 0\n-1 1.7320508 0\n-2 0 0\n-1 -1.7320508 0\n1 -1.7320508 0\n",
			"6 0 1 2 3 4 5\n", 4, 6 * 1.7320508},
		{"arrow head", "0 0 0\n2 -1 0\n0 2 0\n-2 -1 0\n", "4 0 1 2 3\n", 0, 0},
		{"bow tie", square, "4 0 2 1 3\n", 0, 0},
		{"bent", "0 0 0\n1 0 0\n1 1 0.1\n0 1 0\n", "4 0 1 2 3\n", 0, 0},
		{"star", "0 1 0\n0.588 -0.809 0\n-0.951 0.309 0\n0.951 0.309 0\n-0.588 -0.809 0\n", "5 0 1 2 3 4\n", 0, 0},
		{"twice around", square, "8 0 1 2 3 0 1 2 3\n", 0, 0},
		{"corner twice", square, "5 0 1 1 2 3\n", 0, 0},
		{"line", "0 0 0\n1 0 0\n2 0 0\n3 0 0\n", "4 0 1 2 3\n", 0, 0},
		{"two corners", square, "2 0 1\n", 0, 0},
		{"no corner", square, "0\n", 0, 0},
	}
	for _, c := range cases {
		m, err := ReadPLY(strings.NewReader(plyOf(c.vertices, c.face)), units.Metre)
		if c.triangles == 0 {
			if !errors.Is(err, ErrPolygon) {
				t.Errorf("%s: %v, %d triangles", c.name, err, len(m.Triangles))
			}
			continue
		}
		if err != nil || len(m.Triangles) != c.triangles {
			t.Errorf("%s: %d triangles, %v", c.name, len(m.Triangles), err)
			continue
		}
		if r := report(t, m); apart(float64(r.Area), c.area) > 1e-7 || r.Degenerate != 0 || r.TurnedEdges != 0 {
			t.Errorf("%s: %v", c.name, r)
		}
	}
	// The direction of the polygon is kept.
	for face, sign := range map[string]float64{"4 0 1 2 3\n": 1, "4 3 2 1 0\n": -1} {
		m := must(t)(ReadPLY(strings.NewReader(plyOf(square, face)), units.Metre))
		if m.cross2(0).Z*sign <= 0 || m.cross2(1).Z*sign <= 0 {
			t.Errorf("%q is turned", face)
		}
	}
}

// TestPropertyBinaryPLY reads both byte orders, other elements before, between
// and behind, other properties and types.
func TestPropertyBinaryPLY(t *testing.T) {
	for _, big := range []bool{false, true} {
		order, name := binary.AppendByteOrder(binary.LittleEndian), "binary_little_endian"
		if big {
			order, name = binary.BigEndian, "binary_big_endian"
		}
		b := []byte("ply\r\nformat " + name +
			" 1.0\r\ncomment made by hand\r\nobj_info nothing\r\nelement camera 2\r\nproperty short a\r\n" +
			"property list " +
			"ushort double b\r\n" +
			"element face 4\r\nproperty uchar flag\r\nproperty list uint16 uint32 vertex_indices\r\nproperty list " +
			"char char " +
			"none\r\n" +
			"element vertex 4\r\nproperty int z\r\nproperty uchar red\r\nproperty float x\r\nproperty double " +
			"y\r\nelement " +
			"edge 0\r\nproperty int a\r\nend_header\r\n")
		for range 2 {
			b = order.AppendUint16(b, 7)
			b = order.AppendUint16(b, 1)
			b = order.AppendUint64(b, math.Float64bits(1.5))
		}
		m := tetra(1)
		for _, tr := range m.Triangles {
			b = append(b, 9)
			b = order.AppendUint16(b, 3)
			for _, v := range tr {
				b = order.AppendUint32(b, uint32(v))
			}
			b = append(b, 0)
		}
		for _, v := range m.Vertices {
			b = order.AppendUint32(b, uint32(int32(-v.Z))) // mirrored, so inside out
			b = append(b, 255)
			b = order.AppendUint32(b, math.Float32bits(float32(v.X)))
			b = order.AppendUint64(b, math.Float64bits(v.Y))
		}
		got := must(t)(ReadPLY(bytes.NewReader(b), units.Metre))
		if r := report(t, got); apart(float64(r.Volume), -1.0/6) > 1e-12 || !r.Watertight() || r.InsideOut != 1 {
			t.Errorf("%s: %v", name, r)
		}
		for n := range b { // every cut is an error
			if _, err := ReadPLY(bytes.NewReader(b[:n]), units.Metre); err == nil {
				t.Fatalf("%s: cut at %d is accepted", name, n)
			} else {
				typed(t, name, err)
			}
		}
		_, err := ReadPLY(bytes.NewReader(append(b, 0)), units.Metre)
		typed(t, "byte behind", err)
	}
}

// TestPropertyBadFiles: each is an error that names its place.
func TestPropertyBadFiles(t *testing.T) {
	text := func(from, to string) string { return strings.Replace(facetText, from, to, 1) }
	head := "ply\nformat ascii 1.0\n"
	vertex := "element vertex 4\nproperty float x\nproperty float y\nproperty float z\n"
	face := "element face 1\nproperty list uchar int vertex_index\n"
	cases := []struct {
		name, data string
		why        error
		line       int
	}{
		{"empty", "", ErrTruncated, 0},
		{"short", "hello", ErrTruncated, 0},
		{"no facet", "solid a\nendsolid a\n", ErrEmpty, 3},
		{"only solid", "solid", ErrTruncated, 1},
		{"nan", text("vertex 0 10 0", "vertex nan 10 0"), ErrNotFinite, 5},
		{"inf", text("vertex 0 10 0", "vertex 0 -Inf 0"), ErrNotFinite, 5},
		{"over", text("vertex 0 10 0", "vertex 0 1e999 0"), ErrTooLarge, 5},
		{"far", text("vertex 0 10 0", "vertex 0 1e12 0"), ErrTooLarge, 5},
		{"comma", text("vertex 0 10 0", "vertex 0,5 10 0"), ErrSyntax, 5},
		{"hex", text("vertex 0 10 0", "vertex 0x1p3 10 0"), ErrSyntax, 5},
		{"two dots", text("vertex 0 10 0", "vertex 1.2.3 10 0"), ErrSyntax, 5},
		{"two numbers", text("vertex 0 10 0", "vertex 0 10"), ErrSyntax, 6},
		{"four corners", text("vertex 10 0 0", "vertex 10 0 0\nvertex 10 10 0"), ErrSyntax, 7},
		{"no end", strings.TrimSuffix(facetText, "endsolid\n"), ErrTruncated, 0},
		{"no loop", text("outer loop", "loop"), ErrSyntax, 3},
		{"words behind", facetText + "more", ErrSyntax, 15},
		{"cut in a number", facetText[:100], ErrTruncated, 0},

		{"ply: word", "ply\nformat ascii 1.0\nelephant\n", ErrSyntax, 3},
		{"ply: no end", head, ErrTruncated, 3},
		{"ply: no format", "ply\n" + vertex + "end_header\n", ErrSyntax, 6},
		{"ply: format", "ply\nformat ebcdic 1.0\n", ErrUnsupported, 2},
		{"ply: version", "ply\nformat ascii 2.0\n", ErrUnsupported, 2},
		{"ply: two formats", head + "format ascii 1.0\n", ErrSyntax, 3},
		{"ply: count", head + "element vertex -1\n", ErrSyntax, 3},
		{"ply: huge", head + "element vertex 99999999999\n", ErrTooLarge, 3},
		{"ply: twice", head + vertex + "element vertex 3\n", ErrSyntax, 7},
		{"ply: property twice", head + vertex + "property float x\n", ErrSyntax, 7},
		{"ply: homeless", head + "property float x\n", ErrSyntax, 3},
		{"ply: type", head + "element vertex 4\nproperty quad x\n", ErrSyntax, 4},
		{"ply: list of", head + "element vertex 4\nproperty list float int x\n", ErrSyntax, 4},
		{"ply: no z", head + "element vertex 1\nproperty float x\nproperty float y\nend_header\n0 0\n", ErrSyntax, 3},
		{"ply: list x", head + "element vertex 1\nproperty list uchar float x\nproperty float y\nproperty float " +
			"z\nend_header\n0 0\n", ErrSyntax, 3},
		{"ply: no properties", head + "element thing 400000000\nend_header\n", ErrSyntax, 3},
		{"ply: float index", head + vertex + "element face 1\nproperty list uchar float vertex_index\nend_header\n" +
			square, ErrSyntax, 7},
		{"ply: no list", head + vertex + "element face 1\nproperty int a\nend_header\n" + square, ErrSyntax, 7},
		{"ply: no faces", head + vertex + "end_header\n" + square, ErrEmpty, 7},
		{"ply: few rows", head + vertex + face + "end_header\n" + square, ErrTruncated, 0},
		{"ply: many rows", head + vertex + face + "end_header\n" + square + "3 0 1 2\n3 0 1 2\n", ErrSyntax, 15},
		{"ply: index", head + vertex + face + "end_header\n" + square + "3 0 1 4\n", ErrIndex, 0},
		{"ply: minus", head + vertex + face + "end_header\n" + square + "3 0 1 -1\n", ErrIndex, 14},
		{"ply: half", head + vertex + face + "end_header\n" + square + "3 0 1 0.5\n", ErrSyntax, 14},
		{"ply: uchar", head + vertex + face + "end_header\n" + square + "300 0 1 2\n", ErrSyntax, 14},
		{"ply: nan", head + vertex + face + "end_header\n" + strings.Replace(square, "1 1 0", "1 nan 0", 1) +
			"3 0 1 2\n", ErrNotFinite, 12},
		{"ply: far", head + vertex + face + "end_header\n" + strings.Replace(square, "1 1 0", "1 1e9 0", 1) +
			"3 0 1 2\n", ErrTooLarge, 12},
		{"ply: long list", head + vertex + "element face 1\nproperty list int int vertex_index\nend_header\n" + square +
			"1000000000 1\n", ErrPolygon, 14},
		{"ply: not", "plyx\n", ErrSyntax, 1},
		{"ply: nothing", "", ErrSyntax, 1},
	}
	for _, c := range cases {
		read := ReadSTL
		if strings.HasPrefix(c.name, "ply") {
			read = ReadPLY
		}
		m, err := read(strings.NewReader(c.data), units.Metre)
		if !errors.Is(err, c.why) || m.Triangles != nil {
			t.Errorf("%s: %v, want %v", c.name, err, c.why)
			continue
		}
		typed(t, c.name, err)
		var e *FaultError
		if errors.As(err, &e); c.line != 0 && e.Line != c.line {
			t.Errorf("%s: line %d, want %d: %v", c.name, e.Line, c.line, err)
		}
	}
	for _, unit := range []float64{0, -1, math.NaN(), math.Inf(1)} {
		_, err := ReadSTL(strings.NewReader(facetText), units.Length(unit))
		typed(t, "unit", err)
		_, err = ReadPLY(strings.NewReader(facetText), units.Length(unit))
		typed(t, "unit", err)
		typed(t, "unit", WriteSTL(nil, tetra(1), units.Length(unit)))
		typed(t, "unit", WritePLY(nil, tetra(1), units.Length(unit), Skin{}))
	}
	broken := errors.New("disk on fire")
	if _, err := ReadSTL(iotest.ErrReader(broken), 1); !errors.Is(err, broken) {
		t.Error(err)
	}
	if _, err := ReadPLY(iotest.ErrReader(broken), 1); !errors.Is(err, broken) {
		t.Error(err)
	}
}
