package shape

import (
	"math"
	"reflect"
	"testing"

	"example.com/laydown/units"
)

// scaled returns a copy of a body with every length times s, every area and mass
// by its power.
func scaled(p Body, s float64) Body {
	v := reflect.New(reflect.TypeOf(p)).Elem()
	v.Set(reflect.ValueOf(p))
	scale(v, s)
	return v.Interface().(Body)
}

func scale(v reflect.Value, s float64) {
	switch x := v.Interface().(type) {
	case units.Length:
		v.SetFloat(float64(x) * s)
		return
	case units.Area:
		v.SetFloat(float64(x) * s * s)
		return
	case units.Mass:
		v.SetFloat(float64(x) * s * s * s)
		return
	}
	switch v.Kind() {
	case reflect.Struct:
		for i := range v.NumField() {
			scale(v.Field(i), s)
		}
	case reflect.Interface:
		if !v.IsNil() {
			v.Set(reflect.ValueOf(scaled(v.Interface().(Body), s)))
		}
	}
}

// TestPropertyScale: a part s times as large has s² times the area.
func TestPropertyScale(t *testing.T) {
	for _, p := range samples() {
		if reflect.TypeOf(p).Kind() == reflect.Slice {
			continue
		}
		if d, ok := p.(Drilled); ok && len(d.Holes) > 0 {
			continue // the holes are scaled below
		}
		for _, s := range []float64{0.01, 0.5, 3, 1000} {
			same(t, reflect.TypeOf(p).Name(), area(t, scaled(p, s)), s*s*area(t, p))
		}
	}
	hole := Hole{Diameter: 0.008, Depth: 0.0025, Count: 4}
	bigHole := Hole{Diameter: 0.024, Depth: 0.0075, Count: 4}
	plate := Plate{Length: 0.11, Width: 0.09, Thickness: 0.0025}
	same(t, "Drilled", area(t, Drilled{scaled(plate, 3), []Hole{bigHole}}), 9*area(t, Drilled{plate, []Hole{hole}}))
}

// TestPropertyLimits: one body turns into another where it should.
func TestPropertyLimits(t *testing.T) {
	const d, l = 0.02, 0.05
	cylinder := area(t, Cylinder{Diameter: d, Length: l})
	same(t, "frustum with top = base is a cylinder", area(t, Cone{BaseDiameter: d, TopDiameter: d, Height: l}), cylinder)
	same(t, "frustum upside down", area(t, Cone{BaseDiameter: d, TopDiameter: 2 * d, Height: l}),
		area(t, Cone{BaseDiameter: 2 * d, TopDiameter: d, Height: l}))
	same(t, "disc as thick as a cylinder is long", area(t, Disc{Diameter: d, Thickness: l}), cylinder)
	same(t, "ring as thick as a tube is long", area(t, Ring{Outer: d, Inner: d / 2, Thickness: l}),
		area(t, Tube{Outer: d, Inner: d / 2, Length: l}))
	same(t, "cap of full height is a sphere", area(t, Cap{SphereDiameter: d, Height: d}), area(t, Sphere{Diameter: d}))
	same(t, "two half balls", 2*area(t, Cap{BaseDiameter: d, Height: d / 2, OpenBase: true}),
		area(t, Sphere{Diameter: d}))
	same(t, "cap by rim and by sphere", area(t, Cap{BaseDiameter: d, Height: l}),
		area(t, Cap{SphereDiameter: (d*d/4 + l*l) / l, Height: l}))
	same(t, "outside and inside are both sides",
		area(t, Tube{Outer: d, Inner: d / 2, Length: l, Sides: OutsideOnly, OpenEnds: 2})+
			area(t, Tube{Outer: d, Inner: d / 2, Length: l, Sides: InsideOnly, OpenEnds: 2}),
		area(t, Tube{Outer: d, Inner: d / 2, Length: l, OpenEnds: 2}))
	same(t, "wire is a cylinder without ends", area(t, Wire{Diameter: d, Length: l}),
		area(t, Cylinder{Diameter: d, Length: l, OpenEnds: 2}))
	same(t, "round link is a torus", area(t, Chain{WireDiameter: 0.001, Centreline: math.Pi * d, Links: 1}),
		area(t, Torus{CentreDiameter: d, TubeDiameter: 0.001}))
	same(t, "torus: circumference of the section times the way of its middle",
		area(t, Torus{CentreDiameter: d, TubeDiameter: 0.003}), (math.Pi*d)*(math.Pi*0.003))
	same(t, "countersunk head is a cone with its base", area(t, ScrewHead{Style: CountersunkHead, Diameter: d, Height: l,
		Shank: d / 2}),
		area(t, Cone{BaseDiameter: d, TopDiameter: d / 2, Height: l, OpenTop: true}))
	same(t, "pan head without shank is a cap", area(t, ScrewHead{Style: PanHead, Diameter: d, Height: d / 3}),
		area(t, Cap{BaseDiameter: d, Height: d / 3}))
	same(t, "cheese head without shank is a cylinder", area(t, ScrewHead{Diameter: d, Height: d / 3}),
		area(t, Cylinder{Diameter: d, Length: d / 3}))

	cone := area(t, Cone{BaseDiameter: d, Height: l})
	if near := area(t, Cone{BaseDiameter: d, TopDiameter: 1e-9 * d, Height: l}); apart(near, cone) > 1e-8 {
		t.Errorf("frustum with a tiny top %.12g, cone %.12g", near, cone)
	}
	if flat := area(t, Cone{BaseDiameter: d, Height: 1e-9, OpenBase: true}); apart(flat, area(t, Disc{Diameter: d,
		Faces: OneFace})) > 1e-8 {
		t.Errorf("flat cone %.12g is no disc", flat)
	}
	if flat := area(t, Cap{BaseDiameter: d, Height: 1e-9, OpenBase: true}); apart(flat, area(t, Disc{Diameter: d,
		Faces: OneFace})) > 1e-8 {
		t.Errorf("flat cap %.12g is no disc", flat)
	}
	hex := area(t, HexBar{AcrossFlats: d, Length: l})
	if in, out := cylinder, area(t, Cylinder{Diameter: units.Length(2 / math.Sqrt(3) * d), Length: l}); !(in < hex &&
		hex < out) {
		t.Errorf("hexagonal bar %.6g is not between the cylinders inside and around it, %.6g and %.6g", hex, in, out)
	}
	pan, cheese := area(t, ScrewHead{Style: PanHead, Diameter: d, Height: d / 3, Shank: d / 2}),
		area(t, ScrewHead{Diameter: d, Height: d / 3, Shank: d / 2})
	if pan >= cheese {
		t.Errorf("dome %.6g has more than the cylinder around it, %.6g", pan, cheese)
	}
}

// TestPropertyThread: the allowance grows as the thread gets finer, towards
// 13/8, and always adds to the plain wall.
func TestPropertyThread(t *testing.T) {
	last := 1.
	for _, ratio := range []float64{0.5, 0.25, 1. / 6, 0.1, 0.01, 1e-9} {
		screw := Thread{Diameter: 0.006, Pitch: units.Length(0.006 * ratio), Length: 0.02}
		k, err := screw.Factor()
		if err != nil {
			t.Fatal(err)
		}
		if !(float64(k) > last && k < 13./8) {
			t.Errorf("P/d %.3g: factor %.6g after %.6g", ratio, float64(k), last)
		}
		last = float64(k)
		same(t, "factor times plain wall", float64(k)*area(t, Wire{Diameter: 0.006, Length: 0.02}), area(t, screw))
		same(t, "second form of the factor", float64(k), 13./8-35*math.Sqrt(3)/64*ratio)
	}
	if apart(last, 13./8) > 1e-8 {
		t.Errorf("limit %.9g, want 1.625", last)
	}
}

// TestPropertyCompose: sums add, copies multiply, and what is taken off is
// missing.
func TestPropertyCompose(t *testing.T) {
	all := samples()
	sum := 0.
	for _, p := range all {
		sum += area(t, p)
	}
	got, err := Sum(all...)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "sum of all", float64(got), sum)
	same(t, "sum of sums", area(t, Assembly{Assembly(all[:5]), Assembly(all[5:])}), sum)
	plate, spot := Plate{Length: 0.06, Width: 0.04}, Disc{Diameter: 0.01, Faces: OneFace}
	same(t, "three are one and one and one", area(t, Times{3, plate}), area(t, Assembly{plate, plate, plate}))
	same(t, "less and added again", area(t, Assembly{Less{plate, spot}, spot}), area(t, plate))
	same(t, "masked as less", area(t, Masked{plate, units.Area(area(t, spot))}), area(t, Less{plate, spot}))
	same(t, "nothing masked", area(t, Masked{Piece: plate}), area(t, plate))
	same(t, "no holes", area(t, Drilled{Piece: plate}), area(t, plate))
	same(t, "four holes", area(t, Drilled{plate, []Hole{{Diameter: 0.004, Depth: 0.001, Count: 4}}})-area(t, plate),
		4*(area(t, Drilled{plate, []Hole{{Diameter: 0.004, Depth: 0.001}}})-area(t, plate)))
	even := Drilled{plate, []Hole{{Diameter: 0.004, Depth: 0.002}}}
	same(t, "a hole twice as wide as deep changes nothing", area(t, even), area(t, plate))
	same(t, "a central hole makes a disc a ring", area(t, Drilled{Disc{Diameter: 0.05, Thickness: 0.003},
		[]Hole{{Diameter: 0.01, Depth: 0.003}}}), area(t, Ring{Outer: 0.05, Inner: 0.01, Thickness: 0.003}))
	hidden, err := ScrewHead{Diameter: 0.01, Height: 0.002}.Covers()
	if err != nil {
		t.Fatal(err)
	}
	same(t, "a head covers its disc", float64(hidden), area(t, spot))
}

// TestPropertyWeight: the mass that follows from a volume gives back the area.
func TestPropertyWeight(t *testing.T) {
	const rho = 8500.
	ring := Ring{Outer: 0.16, Inner: 0.12, Thickness: 0.001}
	mass := rho * math.Pi / 4 * (0.16*0.16 - 0.12*0.12) * 0.001
	same(t, "ring", area(t, WeighedSheet{Mass: units.Mass(mass), Density: rho, Thickness: 0.001,
		Outline: units.Length(math.Pi * (0.16 + 0.12))}), area(t, ring))
	ring.Faces = OneFace
	same(t, "ring, one face", area(t, WeighedSheet{Mass: units.Mass(mass), Density: rho, Thickness: 0.001,
		Outline: units.Length(math.Pi * (0.16 + 0.12)), Faces: OneFace}), area(t, ring))
	wire := units.Mass(rho * math.Pi / 4 * 0.0005 * 0.0005 * 3)
	got, err := WireFromMass(wire, rho, 0.0005)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "wire", float64(got), area(t, Wire{Diameter: 0.0005, Length: 3}))

	whole, thin := Plate{Length: 0.06, Width: 0.005, Thickness: 0.0008}, Plate{Length: 0.06, Width: 0.005}
	share, err := EdgeShare(0.06, 0.005, 0.0008)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "edge share", float64(share), area(t, whole)/area(t, thin)-1)
	both, err := SheetFromMass(units.Mass(rho*0.06*0.005*0.0008), rho, 0.0008)
	if err != nil {
		t.Fatal(err)
	}
	same(t, "sheet", float64(both), area(t, thin))
	same(t, "sheet with its edge share", float64(both)*(1+float64(share)), area(t, whole))
}
