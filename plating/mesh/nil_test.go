package mesh_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// TestPropertyNoReader: nil where a reader or writer belongs is an error, never a panic.
func TestPropertyNoReader(t *testing.T) {
	_, stl := mesh.ReadSTL(nil, units.Millimetre)
	_, ply := mesh.ReadPLY(nil, units.Millimetre)
	for name, err := range map[string]error{"STL": stl, "PLY": ply,
		"to STL": mesh.WriteSTL(nil, mesh.Mesh{}, units.Millimetre),
		"to PLY": mesh.WritePLY(nil, mesh.Mesh{}, units.Millimetre, mesh.Skin{})} {
		if !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
}
