package coat_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// refused wants a [*units.ValueError].
func refused(t *testing.T, what string, err error) {
	t.Helper()
	var e *units.ValueError
	if !errors.As(err, &e) {
		t.Errorf("%s: %v, want a ValueError", what, err)
	}
}

// TestPropertyOtherSurface: a coat is not held against a surface that it was not laid
// on: another number of patches, another area, marks for other patches.
func TestPropertyOtherSurface(t *testing.T) {
	patches := func(areas ...units.Area) coat.Surface {
		var s coat.Surface
		for _, a := range areas {
			s.Patches = append(s.Patches, coat.Patch{Area: a, Density: 50})
		}
		return s
	}
	b := goldBath(t)
	own := patches(1e-4, 2e-4)
	c, err := coat.Lay(own, b, 600)
	if err != nil {
		t.Fatal(err)
	}
	marked := patches(1e-4, 2e-4)
	marked.Significant = []bool{true}
	for name, s := range map[string]coat.Surface{"none": {}, "fewer": patches(3e-4), "larger": patches(1e-4, 3e-4),
		"smaller": patches(1e-5, 2e-5), "marks": marked, "an area below zero": patches(-1e-4, 4e-4)} {
		_, err := c.Below(s, 1e-6)
		refused(t, name+", below", err)
		_, err = c.GivenAway(s, b, 1e-6)
		refused(t, name+", given away", err)
		_, err = c.Distribution(s)
		refused(t, name+", distribution", err)
	}
	if _, err := c.Below(own, 1e-6); err != nil {
		t.Error(err)
	}
	var none *coat.Coat
	_, err = none.Below(own, 1e-6)
	refused(t, "no coat", err)
	_, err = coat.Lay(own, (*plating.OperatingBath)(nil), 600)
	refused(t, "no bath", err)
	_, err = own.Mark(nil)
	refused(t, "no selection", err)
	for name, s := range map[string]coat.Selector{"both": coat.Both(nil, nil), "not": coat.Not(nil)} {
		_, err = own.Mark(s)
		refused(t, name+" of nothing", err)
	}
}

// TestPropertyBrokenProblem: a problem that was changed after it was solved, so that
// its triangles name corners that are not there, is refused.
func TestPropertyBrokenProblem(t *testing.T) {
	ball, err := mesh.Sphere(10*units.Millimetre, mesh.Grid{Size: 4 * units.Millimetre})
	if err != nil {
		t.Fatal(err)
	}
	p := field.MeshProblem{Surfaces: []field.Boundary{{Name: "ball", Vertices: ball.Vertices, Triangles: ball.Triangles,
		Kind: current.Cathode}}}
	n := len(ball.Triangles)
	s := &field.MeshSolution{Surfaces: []field.MeshResult{{Name: "ball", Density: make([]units.CurrentDensity, n),
		Area: make([]units.Area, n), Centroid: ball.Vertices[:0:0]}}}
	_, err = coat.FromField(p, s, 0)
	refused(t, "no centroids", err)
	for i := range n {
		s.Surfaces[0].Area[i], s.Surfaces[0].Density[i] = 1e-6, 50
		s.Surfaces[0].Centroid = append(s.Surfaces[0].Centroid, ball.Vertices[0])
	}
	if _, err := coat.FromField(p, s, 0); err != nil {
		t.Fatal(err)
	}
	for _, corner := range []int32{-1, int32(len(ball.Vertices)), 1 << 30} {
		was := p.Surfaces[0].Triangles[n/2]
		p.Surfaces[0].Triangles[n/2] = [3]int32{was[0], corner, was[2]}
		_, err = coat.FromField(p, s, 0)
		refused(t, "a corner that is not there", err)
		p.Surfaces[0].Triangles[n/2] = was
	}
	for _, surface := range []int{-1, 1, 1 << 30} {
		_, err = coat.FromField(p, s, surface)
		refused(t, "no such surface", err)
	}
}
