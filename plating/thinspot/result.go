package thinspot

import (
	"fmt"
	"io"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/plating/mesh"
	"example.com/laydown/units"
)

// A Result is what a case comes to when the thinnest significant spot has the minimum
// thickness. [Result.WriteText], [Result.MarshalJSON], [Result.WriteCSV] and
// [Result.Pictures] say it, and nothing that is not in it.
type Result struct {
	Case Case // that was solved

	Workpiece string // its name
	Area      units.Area
	Volume    units.Volume
	Faces     int // of the workpiece as the case gives it: triangles, or rings by profile

	Current  units.Current // of the workpiece
	Total    units.Current // of all cathodes
	Voltage  units.Voltage // across the cell, equilibrium potentials taken off
	Balance  float64       // what the currents of all electrodes fail to sum to zero by, relative
	Unknowns int

	// Surface is the workpiece with the current density of each patch. MinError is the
	// relative error of the least density, NaN when it is not known; where the minimum is
	// Unresolved claim nothing for it.
	Surface      coat.Surface
	ErrorUnknown string // why MinError is not known; "" when it is
	// Coat is what has grown: Time, Min, Average, P05, P95, Max, FineMass, and the
	// thickness of each patch.
	Coat  coat.CoatMap
	Spot  r3.Vec               // the thinnest significant spot, metres; by profile x is the radius and y is 0
	Where string               // in words
	Ratio plating.Distribution // thinnest over average for a job, at most 1 as there
	Above units.Mass           // of the counted metal, on the workpiece and above the minimum thickness
	Below units.Area           // thinner than the minimum thickness in nine tenths of the time

	Others   []coat.Outcome // the arrangement of the case, then others; nil when not asked for. See [NotTriedError].
	Mended   []string       // what was done to the files of the case
	Warnings []string
	Cautions []string // what the bath can do, and who decides

	Along []units.Length // by profile: the place of each patch on it, from its start
	Mesh  mesh.Mesh      // by mesh: the workpiece as it was solved, a patch for each triangle
}

// check refuses a result that does not hang together, as one made by hand may.
func (r *Result) check() error {
	// Every table and picture walks patches, thicknesses and triangles with one index. They are
	// counted once here instead of at each of those places.
	n := len(r.Surface.Patches)
	ok := n > 0 && len(r.Coat.Thickness) == n && r.Coat.MinPatch >= 0 && r.Coat.MinPatch < n &&
		(r.Surface.Significant == nil || len(r.Surface.Significant) == n)
	if !ok || r.byMesh() && len(r.Mesh.Triangles) != n || !r.byMesh() && len(r.Along) != n {
		return &units.ValueError{Field: "result", Value: fmt.Sprintf("%d patches with %d thicknesses", n,
			len(r.Coat.Thickness)), Need: "one of Case.Solve", Err: units.ErrInconsistent}
	}
	if r.byMesh() {
		_, err := mesh.Area(r.Mesh) // looks at every corner
		return err
	}
	return nil
}

func (r *Result) byMesh() bool { return r.Along == nil }

// significant reports whether the minimum thickness holds for a patch.
func (r *Result) significant(i int) bool {
	return r.Surface.Significant == nil || r.Surface.Significant[i]
}

// beware are the warnings, after what was mended.
func (r *Result) beware() []string {
	var list []string
	for _, m := range r.Mended {
		list = append(list, "mended "+m)
	}
	return append(list, r.Warnings...)
}

// where says in words how a patch lies.
func (r *Result) where(i int) string {
	if r.byMesh() {
		return coat.Where(r.Surface, i)
	}
	return whereOnProfile(r.Surface, i)
}

// whereOnProfile says how a spot on a body of revolution lies.
func whereOnProfile(s coat.Surface, i int) string {
	// Places are told relative to the piece, in thirds of its height and by the share of its
	// largest radius: whoever hangs it has the piece in hand and no coordinates.
	rim, low, high := 0.0, s.Patches[0].At.Z, s.Patches[0].At.Z
	for _, p := range s.Patches {
		rim, low, high = max(rim, p.At.X), min(low, p.At.Z), max(high, p.At.Z)
	}
	p := s.Patches[i]
	words := "between axis and rim"
	switch x := p.At.X / rim; {
	case x < 0.15:
		words = "at the axis"
	case x > 0.85:
		words = "at the rim"
	}
	switch z := (p.At.Z - low) / (high - low); {
	case z < 0.34:
		words += ", low"
	case z > 0.66:
		words += ", high"
	default:
		words += ", half way up"
	}
	switch n := p.Normal; {
	case n.Z > 0.7:
		words += ", facing up"
	case n.Z < -0.7:
		words += ", facing down"
	case n.X > 0.7:
		words += ", facing outwards"
	case n.X < -0.7:
		words += ", facing the axis"
	}
	return words
}

// WriteCSV writes the workpiece as a table with a head, a patch in each row. By mesh:
//
//	face                        number, from 0, as in the mesh
//	x_mm, y_mm, z_mm            its middle
//	nx, ny, nz                  its normal, away from the metal
//	area_cm2, current_density_A_dm2, thickness_um
//	significant                 1 where the minimum thickness holds, else 0
//
// By profile, ring by ring: s_mm, the place along the profile from its start, then r_mm
// and z_mm, radius and height, then area, current density and thickness as by mesh.
//
// Errors: a [*units.ValueError] for a result that is not of [Case.Solve], and for nil;
// those of the writer.
func (r Result) WriteCSV(w io.Writer) error {
	if err := r.check(); err != nil {
		return err
	}
	return writeAll(w, func(line func(string, ...any)) {
		if r.byMesh() {
			line("face,x_mm,y_mm,z_mm,nx,ny,nz,area_cm2,current_density_A_dm2,thickness_um,significant")
		} else {
			line("s_mm,r_mm,z_mm,area_cm2,current_density_A_dm2,thickness_um")
		}
		for i, p := range r.Surface.Patches {
			amounts := fmt.Sprintf("%.6g,%.6g,%.6g", p.Area.In(units.SquareCentimetre),
				p.Density.In(units.AmperePerSquareDecimetre), r.Coat.Thickness[i].In(units.Micrometre))
			if !r.byMesh() {
				line("%.6g,%.6g,%.6g,%s", r.Along[i].In(units.Millimetre), 1e3*p.At.X, 1e3*p.At.Z, amounts)
				continue
			}
			counts := 0
			if r.significant(i) {
				counts = 1
			}
			line("%d,%.6g,%.6g,%.6g,%.4f,%.4f,%.4f,%s,%d", i, 1e3*p.At.X, 1e3*p.At.Y, 1e3*p.At.Z, p.Normal.X, p.Normal.Y,
				p.Normal.Z, amounts, counts)
		}
	})
}

// WritePLY writes the workpiece as a mesh in millimetres. Each face has its thickness,
// thickness_um, and a colour: dark where it is thin, light where it is thick.
//
// Errors: those of [Result.WriteCSV]; a [*units.ValueError] for a case by profile.
func (r Result) WritePLY(w io.Writer) error {
	if !r.byMesh() {
		return &units.ValueError{Field: "case", Value: "a profile", Need: "a mesh: the table has the rings of a profile",
			Err: units.ErrInconsistent}
	}
	if err := r.check(); err != nil {
		return err
	}
	skin := mesh.Skin{Thickness: r.Coat.Thickness}
	scale := r.scale()
	for _, s := range r.Coat.Thickness {
		c := scale.Colour(s.In(units.Micrometre))
		skin.Colour = append(skin.Colour, [3]uint8{c.R, c.G, c.B})
	}
	return mesh.WritePLY(w, r.Mesh, units.Millimetre, skin)
}
