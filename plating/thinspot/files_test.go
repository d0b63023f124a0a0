package thinspot_test

import (
	"bytes"
	"encoding/binary"
	"math"
	"strings"
	"testing"

	"example.com/laydown/units"
)

// TestIndependentThicknessInPLY: the file carries the thickness of each face, and its least
// is what the figures tell.
func TestIndependentThicknessInPLY(t *testing.T) {
	r, err := block()
	if err != nil {
		t.Fatal(err)
	}
	var ply bytes.Buffer
	if err := r.WritePLY(&ply); err != nil {
		t.Fatal(err)
	}
	raw := ply.Bytes()
	head, body, found := bytes.Cut(raw, []byte("end_header\n"))
	if !found {
		t.Fatal("no header")
	}
	// Three 64-bit coordinates a corner; then for each face one byte and three
	// 32-bit indices, the thickness, three bytes of colour: as the header says.
	var vertices, faces int
	size := map[string]int{"char": 1, "uchar": 1, "short": 2, "ushort": 2, "int": 4, "uint": 4, "float": 4, "double": 8}
	at, row, in, wide := 0, 0, "", 0
	for _, line := range strings.Split(string(head), "\n") {
		w := strings.Fields(line)
		switch {
		case len(w) == 3 && w[0] == "element":
			in = w[1]
			n := 0
			for _, c := range w[2] {
				n = 10*n + int(c-'0')
			}
			if in == "vertex" {
				vertices = n
			} else {
				faces = n
			}
		case len(w) == 5 && w[1] == "list":
			row += size[w[2]] + 3*size[w[3]]
		case len(w) == 3 && w[0] == "property" && in == "vertex":
			wide += size[w[1]]
		case len(w) == 3 && w[0] == "property":
			if w[2] == "thickness_um" {
				at = row
				if w[1] != "double" {
					t.Fatalf("thickness is a %s", w[1])
				}
			}
			row += size[w[1]]
		}
	}
	body = body[vertices*wide:]
	if len(body) != faces*row || at == 0 || faces != len(r.Surface.Patches) {
		t.Fatalf("%d bytes for %d faces of %d", len(body), faces, row)
	}
	least, most := math.Inf(1), 0.0
	for i := range faces {
		s := math.Float64frombits(binary.LittleEndian.Uint64(body[i*row+at:]))
		least, most = math.Min(least, s), math.Max(most, s)
	}
	if math.Abs(least-1) > 1e-9 || math.Abs(most/r.Coat.Max.In(units.Micrometre)-1) > 1e-9 {
		t.Errorf("from %v to %v µm, the figures say %v", least, most, r.Coat.Max)
	}
}
