package coat

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/current"
	"example.com/laydown/plating/field"
	"example.com/laydown/units"
)

// FromAxi makes a surface of one part of a solution for bodies of revolution:
// a patch for each ring of the solution, placed at angle 0 (x = r, y = 0).
//
// Errors: a [*units.ValueError] for a part that is an insulator or has no bare
// metal, and for a sheet without thickness.
//
// Source: [Definition].
func FromAxi(s *axi.ProfileSolution, part int) (Surface, error) {
	if s == nil || part < 0 || part >= len(s.Parts) {
		return Surface{}, noPart(part)
	}
	p := s.Parts[part]
	if p.Sheet {
		return Surface{}, sheet(p.Name)
	}
	out := Surface{MinError: p.MinError, Basis: fmt.Sprintf("boundary elements on the profile, %d unknowns",
		s.Checks.Unknowns)}
	for _, v := range p.Samples {
		if p.Kind == current.Insulator || v.Area <= 0 || v.Density == 0 {
			continue // masked: no current crosses
		}
		out.Patches = append(out.Patches, Patch{At: r3.Vec{X: float64(v.At.R), Z: float64(v.At.Z)},
			Normal: r3.Vec{X: v.NormalR, Z: v.NormalZ}, Area: v.Area, Density: v.Density})
	}
	for _, w := range s.Warnings {
		out.Unresolved = out.Unresolved || w.Code == current.Unresolved && w.Surface == p.Name
	}
	return out, out.check()
}

// FromField makes a surface of one surface of a solution on a mesh: a patch for
// each triangle. The problem is the one that was solved.
//
// Errors: a [*units.ValueError] when there is no such surface or problem and
// solution do not belong together, and for a sheet without thickness.
//
// Source: [Definition].
func FromField(p field.MeshProblem, s *field.MeshSolution, surface int) (Surface, error) {
	if s == nil || surface < 0 || surface >= len(s.Surfaces) || surface >= len(p.Surfaces) {
		return Surface{}, noPart(surface)
	}
	r, m := &s.Surfaces[surface], &p.Surfaces[surface]
	if m.Sheet {
		return Surface{}, sheet(m.Name)
	}
	if len(r.Density) != len(m.Triangles) {
		return Surface{}, mismatch(len(r.Density), len(m.Triangles))
	}
	if len(r.Area) != len(r.Density) || len(r.Centroid) != len(r.Density) {
		return Surface{}, &units.ValueError{Field: "solution", Value: fmt.Sprintf("%d densities, %d areas and %d centroids",
			len(r.Density), len(r.Area), len(r.Centroid)), Need: "one of each for a panel", Err: units.ErrInconsistent}
	}
	for i, t := range m.Triangles {
		for _, v := range t {
			if v < 0 || int(v) >= len(m.Vertices) {
				return Surface{}, &units.ValueError{Field: fmt.Sprintf("corner of triangle %d", i+1), Value: fmt.Sprint(v),
					Need: fmt.Sprintf("one of the %d vertices, from 0", len(m.Vertices)), Err: units.ErrOutOfRange}
			}
		}
	}
	out := Surface{MinError: math.NaN(), Unresolved: r.Minimum.Unresolved,
		Basis: fmt.Sprintf("boundary elements on the mesh, %d unknowns", s.Work.Unknowns)}
	for i, t := range m.Triangles {
		a, b, c := m.Vertices[t[0]], m.Vertices[t[1]], m.Vertices[t[2]]
		out.Patches = append(out.Patches, Patch{At: r.Centroid[i], Normal: r3.Unit(r3.Cross(r3.Sub(b, a), r3.Sub(c, a))),
			Area: r.Area[i], Density: r.Density[i]})
	}
	return out, out.check()
}

// sheet refuses metal without thickness: its density is that of both sides
// together, and nothing tells how it falls on them.
func sheet(name string) error {
	return &units.ValueError{Field: "part", Value: name + ", a sheet without thickness",
		Need: "a closed body: a sheet knows only the current of both sides together", Err: units.ErrInconsistent}
}

func noPart(i int) error {
	return &units.ValueError{Field: "part", Value: fmt.Sprint(i), Need: "the number of a part of the solution, from 0",
		Err: units.ErrOutOfRange}
}
