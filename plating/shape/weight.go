package shape

import (
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A WeighedSheet is a part cut from sheet, of any outline, whose area follows
// from its mass: a pierced hand, a fretwork bezel. Holes and cut-outs take care
// of themselves. The mass is that of the bare part.
type WeighedSheet struct {
	Mass      units.Mass
	Density   units.Density
	Thickness units.Length
	Outline   units.Length // all edges together, cut-outs included; 0: edges left out
	Faces     Faces
}

func (s WeighedSheet) check() (faces float64, err error) {
	faces, err = s.Faces.count("sheet")
	return faces, firstOf(err,
		units.Positive("sheet mass", s.Mass),
		units.Positive("sheet density", s.Density),
		units.Positive("sheet thickness", s.Thickness),
		units.NonNegative("sheet outline", s.Outline))
}

// Area returns the area of the faces, and of the edges when Outline is given.
//
//	A = n m/(ρ t) + U t
//
//	n  Faces      faces that plate, 2 or 1
//	m  Mass       of the bare part, > 0 [kg]
//	ρ  Density    of its metal, > 0 [kg/m³]
//	t  Thickness  > 0 [m]
//	U  Outline    length of all edges, ≥ 0 [m]; 0 leaves the edges out
//
// Exact for even thickness and square edges. An error of one per cent in m, ρ
// or t is one of one per cent in A: a micrometer reading of 0.40 mm that is
// right to 0.01 mm makes 2.5 %. For what the edges amount to see [EdgeShare].
//
// Errors: a [*units.ValueError] for an argument that is not finite or not above
// zero (Outline: below zero), unknown Faces, and an area that a float64 cannot
// hold.
//
// Source: [Derived]: mass over density is the volume, and that over the
// thickness one face.
func (s WeighedSheet) Area() (units.Area, error) {
	n, err := s.check()
	if err != nil {
		return 0, err
	}
	t := float64(s.Thickness)
	return total("sheet area", n*float64(s.Mass)/(float64(s.Density)*t)+float64(s.Outline)*t)
}

// Working returns the calculation of [WeighedSheet.Area], with the same errors.
func (s WeighedSheet) Working() ([]working.Step, error) {
	a, err := s.Area()
	if err != nil {
		return nil, err
	}
	n, _ := s.check()
	note := ""
	if s.Outline == 0 {
		note = "The edges are left out: no outline is given."
	}
	return step("area of the sheet, from its mass", "n·m/(ρ·t) + U·t", srcDerived, note, a,
		working.Number("n", "faces that plate", n),
		working.Of("m", "mass of the bare part", s.Mass),
		working.Of("ρ", "density of its metal", s.Density),
		working.Of("t", "thickness", s.Thickness),
		working.Of("U", "length of all edges", s.Outline)), nil
}

// SheetFromMass returns the area of both faces of a sheet part; its edges are
// left out. It is [WeighedSheet.Area] in one call.
//
//	A = 2 m/(ρ t)
//
//	m  mass       of the bare part, > 0 [kg]
//	ρ  density    of its metal, > 0 [kg/m³]
//	t  thickness  > 0 [m]
//
// Accuracy and errors: as for [WeighedSheet.Area]. The edges left out are
// [EdgeShare] of the result.
//
// Source: [Derived].
func SheetFromMass(mass units.Mass, density units.Density, thickness units.Length) (units.Area, error) {
	return WeighedSheet{Mass: mass, Density: density, Thickness: thickness}.Area()
}

// EdgeShare returns the edges of a rectangular sheet over its two faces: the
// relative error made by leaving the edges out.
//
//	s = t (1/L + 1/W)
//
//	L  length     > 0 [m]
//	W  width      > 0 [m]
//	t  thickness  > 0 [m]
//
// Exact for a rectangle with square edges. For a slim part of another outline
// take W for its mean width: the share is then near t/W. Errors: a
// [*units.ValueError] for a dimension that is not finite or not above zero, and
// for a share that a float64 cannot hold.
//
// Source: [Derived], from the area of [Plate]: 2 (L + W) t over 2 L W.
func EdgeShare(length, width, thickness units.Length) (units.Ratio, error) {
	if err := firstOf(
		units.Positive("sheet length", length),
		units.Positive("sheet width", width),
		units.Positive("sheet thickness", thickness)); err != nil {
		return 0, err
	}
	t := float64(thickness)
	s := units.Ratio(t/float64(length) + t/float64(width))
	if err := units.Positive("edge share", s); err != nil {
		return 0, err
	}
	return s, nil
}

// A WeighedWire is a round wire, of any course, whose area follows from its
// mass: a chain off its reel, a bundle of rack wire.
type WeighedWire struct {
	Mass     units.Mass
	Density  units.Density
	Diameter units.Length
}

func (w WeighedWire) check() error {
	return firstOf(
		units.Positive("wire mass", w.Mass),
		units.Positive("wire density", w.Density),
		units.Positive("wire diameter", w.Diameter))
}

// Area returns the area of the wire's wall.
//
//	A = 4 m/(ρ d)
//
//	m  Mass      of the bare wire, > 0 [kg]
//	ρ  Density   of its metal, > 0 [kg/m³]
//	d  Diameter  > 0 [m]
//
// Exact for the wall of an even round wire; the two ends are left out, as for
// [Wire.Area]. Errors: a [*units.ValueError] for an argument that is not finite
// or not above zero, and for an area that a float64 cannot hold.
//
// Source: [Derived]: the wall π d L over the volume π d² L/4 is 4/d.
func (w WeighedWire) Area() (units.Area, error) {
	if err := w.check(); err != nil {
		return 0, err
	}
	return total("wire area", 4*float64(w.Mass)/(float64(w.Density)*float64(w.Diameter)))
}

// Working returns the calculation of [WeighedWire.Area], with the same errors.
func (w WeighedWire) Working() ([]working.Step, error) {
	a, err := w.Area()
	if err != nil {
		return nil, err
	}
	return step("area of the wire, from its mass", "4·m/(ρ·d)", srcDerived, "The two ends are left out.", a,
		working.Of("m", "mass of the bare wire", w.Mass),
		working.Of("ρ", "density of its metal", w.Density),
		working.Of("d", "diameter", w.Diameter)), nil
}

// WireFromMass returns the area of a round wire's wall from its mass. It is
// [WeighedWire.Area] in one call.
//
//	A = 4 m/(ρ d)
//
//	m  mass      of the bare wire, > 0 [kg]
//	ρ  density   of its metal, > 0 [kg/m³]
//	d  diameter  > 0 [m]
//
// Accuracy and errors: as for [WeighedWire.Area].
//
// Source: [Derived].
func WireFromMass(mass units.Mass, density units.Density, diameter units.Length) (units.Area, error) {
	return WeighedWire{Mass: mass, Density: density, Diameter: diameter}.Area()
}
