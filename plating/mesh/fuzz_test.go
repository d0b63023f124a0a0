package mesh

import (
	"bytes"
	"io"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// FuzzReadSTL reads whatever comes: an error that says what would do, or a mesh
// that can be looked at, repaired or refused, and written.
func FuzzReadSTL(f *testing.F) {
	f.Add(stl(f, tetra(0.01)))
	f.Add([]byte(facetText))
	f.Add([]byte("solid"))
	f.Add(append([]byte("solid"), make([]byte, 129)...))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := ReadSTL(bytes.NewReader(data), units.Millimetre)
		follow(t, m, err, len(data))
	})
}

// FuzzReadPLY does the same for PLY files.
func FuzzReadPLY(f *testing.F) {
	var b bytes.Buffer
	if err := WritePLY(&b, tetra(0.01), units.Millimetre, Skin{Thickness: make([]units.Length, 4)}); err != nil {
		f.Fatal(err)
	}
	f.Add(b.Bytes())
	f.Add(bytes.Replace(b.Bytes(), []byte("little"), []byte("big"), 1))
	f.Add([]byte(plyOf(square+"0.5 0 0\n", "5 0 4 1 2 3\n")))
	f.Add([]byte(strings.Replace(plyOf(square, "4 0 1 2 3\n"), "element face",
		"element none 0\nproperty list int double a\nelement face", 1)))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := ReadPLY(bytes.NewReader(data), units.Millimetre)
		follow(t, m, err, len(data))
	})
}

// follow uses what a reader gave.
func follow(t *testing.T, m Mesh, err error, length int) {
	if err != nil {
		typed(t, "read", err)
		return
	}
	if len(m.Vertices) > length || len(m.Triangles) > length {
		t.Fatalf("%d vertices and %d triangles from %d bytes", len(m.Vertices), len(m.Triangles), length)
	}
	r, err := Check(m)
	if err != nil {
		t.Fatalf("read, but not to be looked at: %v", err)
	}
	repaired, _, err := Repair(m, RepairOptions{})
	switch {
	case err != nil:
		typed(t, "repair", err)
		if r.Sound() {
			t.Fatalf("sound, but refused: %v", err)
		}
	case !report(t, repaired).Sound():
		t.Fatal("repaired, but not sound")
	}
	if size := m.size(); size > 0 && size < 1e6 {
		split, err := Split(m, units.Length(size/5), 20_000)
		if err != nil {
			typed(t, "split", err)
		} else if is := report(t, split); r.Sound() && (!is.Watertight() || apart(float64(is.Area),
			float64(r.Area)) > 1e-4) {
			t.Fatalf("split to %v, was %v", is, r)
		}
	}
	if err := WritePLY(io.Discard, m, units.Millimetre, Skin{}); err != nil {
		t.Fatal(err)
	}
}
