package mesh

import (
	"bytes"
	"errors"
	"math"
	"os"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

func apart(got, want float64) float64 { return math.Abs(got-want) / math.Max(math.Abs(want), 1e-300) }

// must returns the mesh or ends the test.
func must(t testing.TB) func(Mesh, error) Mesh {
	return func(m Mesh, err error) Mesh {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return m
	}
}

func report(t testing.TB, m Mesh) Findings {
	t.Helper()
	r, err := Check(m)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

// typed checks that an error says what, and what would do.
func typed(t testing.TB, name string, err error) {
	t.Helper()
	var e *FaultError
	var v *units.ValueError
	switch {
	case errors.As(err, &e):
		if e.What == "" || e.Need == "" || e.Err == nil || e.Error() == "" || !errors.Is(err, e.Err) {
			t.Errorf("%s: %#v is no complete Error", name, e)
		}
	case errors.As(err, &v):
		if v.Field == "" || v.Value == "" || v.Need == "" || v.Err == nil {
			t.Errorf("%s: %#v is no complete ValueError", name, v)
		}
	default:
		t.Errorf("%s: %T %v", name, err, err)
	}
}

func bunny(t testing.TB, unit units.Length) Mesh {
	t.Helper()
	f, err := os.Open("testdata/bunny.ply")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	return must(t)(ReadPLY(f, unit))
}

func stl(t testing.TB, m Mesh) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WriteSTL(&b, m, units.Millimetre); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// tetra is a small closed body: the corner of a cube of side s.
func tetra(s float64) Mesh {
	return Mesh{
		Vertices:  []r3.Vec{{}, {X: s}, {Y: s}, {Z: s}},
		Triangles: [][3]int32{{0, 2, 1}, {0, 1, 3}, {0, 3, 2}, {1, 2, 3}},
	}
}

// samples are closed bodies with their exact area and volume.
type sample struct {
	name         string
	area, volume float64
	make         func(Grid) (Mesh, error)
	euler        int
	coarse       units.Length // a size from which the error goes with its square
	tol          float64      // of area and volume at a quarter of it, relative
}

func samples() []sample {
	const pi = math.Pi
	return []sample{
		{"box", 2 * (6e-4 + 3e-4 + 2e-4), 6e-6, func(g Grid) (Mesh, error) { return Box(0.03, 0.02, 0.01, g) }, 2, 4e-3,
			1e-13},
		{"plate", 2*(8e-3*4e-3+4e-3*1e-3+8e-3*1e-3) + 2*pi*2e-3*13e-3 + 4*pi*4e-6,
			8e-3*4e-3*1e-3 + 4e-3*(8e-3*4e-3+4e-3*1e-3+8e-3*1e-3) + pi*4e-6*13e-3 + 4*pi/3*8e-9,
			func(g Grid) (Mesh, error) { return Plate(0.012, 0.008, 0.005, 0.002, g) }, 2, 4e-4, 1e-3},
		{"full round plate", 2*20e-3*10e-3 + 2*pi*5e-3*30e-3 + 4*pi*25e-6,
			10e-3*20e-3*10e-3 + pi*25e-6*30e-3 + 4*pi/3*125e-9,
			func(g Grid) (Mesh, error) { return Plate(0.03, 0.02, 0.01, 0.005, g) }, 2, 1e-3, 1e-3},
		{"cylinder", pi*0.02*0.03 + pi*4e-4/2, pi * 4e-4 / 4 * 0.03, func(g Grid) (Mesh, error) {
			return Cylinder(0.02, 0.03,
				g)
		}, 2, 2e-3, 1e-3},
		{"tube", pi*0.035*0.03 + pi/2*(4e-4-2.25e-4), pi / 4 * (4e-4 - 2.25e-4) * 0.03, func(g Grid) (Mesh,
			error) {
			return Tube(0.02, 0.015, 0.03, g)
		}, 0, 2e-3, 1e-3},
		{"cup", pi*0.04*0.01 + pi*16e-4/2 + pi*0.03*0.006, pi/4*16e-4*0.01 - pi/4*9e-4*0.006, func(g Grid) (Mesh,
			error) {
			return Cup(0.04, 0.01, 0.03, 0.006, g)
		}, 2, 4e-3, 1e-3},
		{"torus", pi * pi * 0.04 * 0.01, pi * pi / 4 * 0.04 * 1e-4, func(g Grid) (Mesh, error) {
			return Torus(0.04, 0.01,
				g)
		}, 0, 2e-3, 3e-3},
		{"sphere", pi * 16e-4, pi / 6 * 64e-6, func(g Grid) (Mesh, error) { return Sphere(0.04, g) }, 2, 4e-3, 1e-3},
	}
}
