package job_test

import (
	"bytes"
	"errors"
	"io"
	"strings"
	"testing"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/job"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// TestPropertyCrossingMeshParts: two bodies that cross have no area; apart they have that
// of both.
func TestPropertyCrossingMeshParts(t *testing.T) {
	block, err := mesh.Box(10*units.Millimetre, 10*units.Millimetre, 10*units.Millimetre,
		mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	for at, sound := range map[units.Length]bool{5.3 * units.Millimetre: false, 14 * units.Millimetre: true} {
		there, err := mesh.Translate(block, r3.Vec{X: float64(at), Y: 0.0031, Z: 0.0017})
		if err != nil {
			t.Fatal(err)
		}
		both, err := mesh.Merge(block, there)
		if err != nil {
			t.Fatal(err)
		}
		open := func(name string) (io.ReadCloser, error) {
			var b bytes.Buffer
			err := mesh.WritePLY(&b, both, units.Millimetre, mesh.Skin{})
			return io.NopCloser(&b), err
		}
		j, err := job.Read(strings.NewReader(strings.Replace(shop, `"area": "5.2 cm²"`,
			`"mesh": {"file": "both.ply", "unit": "mm"}`, 1)), open)
		if sound {
			if err != nil {
				t.Fatal(err)
			}
			close1(t, "area in cm²", sheetOf(t, j).Parts[0].Area.In(units.SquareCentimetre), 12)
			continue
		}
		var e *units.FileError
		if !errors.Is(err, mesh.ErrCrossing) || !errors.As(err, &e) || e.Line != 6 || !strings.Contains(err.Error(),
			"with its union") || strings.Contains(err.Error(), "cm²") {
			t.Errorf("%v", err)
		}
	}
}
