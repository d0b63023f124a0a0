package shape

import (
	"math"
	"testing"

	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// yard is not a unit of package units: three feet.
const yard = 3 * units.Foot

// TestReferenceGeometry holds the bodies against worked examples printed in
// textbooks and exercise pages ([OpenStaxPrealgebra], [NCERT10],
// [SchoolGeometry]) and the thread profile against printed ratios ([ISO68-1]).
// The file says which row is whose. A print that took 3.14 or 22/7 for π is
// compared after the same replacement.
func TestReferenceGeometry(t *testing.T) {
	table, err := testdata.Read("geometry.csv")
	if err != nil {
		t.Fatal(err)
	}
	lengths := map[string]units.Length{"in": units.Inch, "ft": units.Foot, "yd": yard,
		"cm": units.Centimetre, "m": units.Metre, "": units.Metre, "pitch": units.Metre}
	seen := map[string]int{}
	for _, row := range table.Rows {
		if row.Skip() {
			continue
		}
		t.Run(row.Name(), func(t *testing.T) {
			unit, known := lengths[row.Text("unit")]
			if !known {
				t.Fatalf("unit %q is not known to the test", row.Text("unit"))
			}
			shape := row.Text("shape")
			seen[shape]++
			var got float64
			if row.Text("check") == "ratio_to_pitch" {
				got = threadRatio(t, shape)
			} else {
				piece := pieceOf(t, shape, unit, row.FloatOr("a", 0), row.FloatOr("b", 0), row.FloatOr("c", 0))
				a, err := piece.Area()
				if err != nil {
					t.Fatal(err)
				}
				got = float64(a) / float64(unit) / float64(unit)
			}
			if row.Has("pi") {
				got *= math.Pow(row.Float("pi")/math.Pi, row.Float("pi_power"))
			}
			if err := row.Check(got); err != nil {
				t.Error(err)
			}
		})
	}
	for _, shape := range []string{"cube", "box", "sphere", "cylinder_closed", "cone_closed_slant", "cone_side",
		"frustum_side", "frustum_closed", "cap_side_base", "cap_side_sphere", "annulus", "hex_prism_closed",
		"torus", "thread_H", "thread_basic_depth", "thread_crest_cut", "thread_root_cut", "thread_minor_drop",
		"thread_external_depth"} {
		if seen[shape] == 0 {
			t.Errorf("no row checks %s", shape)
		}
	}
}

// pieceOf makes the body of a row. The file gives radii, the package diameters.
func pieceOf(t *testing.T, shape string, unit units.Length, a, b, c float64) Body {
	t.Helper()
	la, lb, lc := units.Length(a)*unit, units.Length(b)*unit, units.Length(c)*unit
	switch shape {
	case "cube":
		return Plate{Length: la, Width: la, Thickness: la}
	case "box":
		return Plate{Length: la, Width: lb, Thickness: lc}
	case "sphere":
		return Sphere{Diameter: 2 * la}
	case "cylinder_closed":
		return Cylinder{Diameter: 2 * la, Length: lb}
	case "cone_closed_slant":
		return Cone{BaseDiameter: 2 * la, Height: units.Length(math.Sqrt(b*b-a*a)) * unit}
	case "cone_side":
		return Cone{BaseDiameter: 2 * la, Height: lb, OpenBase: true}
	case "frustum_side":
		return Cone{BaseDiameter: 2 * la, TopDiameter: 2 * lb, Height: lc, OpenBase: true, OpenTop: true}
	case "frustum_closed":
		return Cone{BaseDiameter: 2 * la, TopDiameter: 2 * lb, Height: lc}
	case "cap_side_base":
		return Cap{BaseDiameter: 2 * la, Height: lb, OpenBase: true}
	case "cap_side_sphere":
		return Cap{SphereDiameter: 2 * la, Height: lb, OpenBase: true}
	case "annulus":
		return Ring{Outer: 2 * la, Inner: 2 * lb, Faces: OneFace}
	case "hex_prism_closed":
		return HexBar{AcrossFlats: units.Length(math.Sqrt(3)) * la, Length: lb}
	case "torus":
		return Torus{CentreDiameter: 2 * la, TubeDiameter: 2 * lb}
	}
	t.Fatalf("shape %q is not known to the test", shape)
	return nil
}

// threadRatio returns a length of the thread profile over the pitch.
func threadRatio(t *testing.T, shape string) float64 {
	t.Helper()
	const pitch = 0.75 * units.Millimetre
	screw := Thread{Diameter: 5 * units.Millimetre, Pitch: pitch}
	minor, err := screw.MinorDiameter()
	if err != nil {
		t.Fatal(err)
	}
	switch shape {
	case "thread_H":
		return threadHeight
	case "thread_basic_depth":
		return float64((screw.Diameter - minor) / 2 / pitch)
	case "thread_crest_cut":
		return threadCrest
	case "thread_root_cut":
		return threadRoot
	case "thread_minor_drop":
		return float64((screw.Diameter - minor) / pitch)
	case "thread_external_depth": // not used here; checks the height once more
		return threadHeight * 17 / 24
	}
	t.Fatalf("ratio %q is not known to the test", shape)
	return 0
}
