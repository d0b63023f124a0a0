package main

import (
	"bytes"
	"fmt"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// where says in words how a spot lies.
func (r *result) where(i int) string {
	if r.c.Mesh != nil {
		return coat.Where(r.surface, i)
	}
	return whereOnProfile(r.surface, i)
}

// whereOnProfile says how a spot on a body of revolution lies.
func whereOnProfile(s coat.Surface, i int) string {
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

// csv is the surface: ring by ring along the profile, or face by face.
func (r *result) csv() []byte {
	var b bytes.Buffer
	if r.c.Mesh != nil {
		b.WriteString("face,x_mm,y_mm,z_mm,nx,ny,nz,area_cm2,current_density_A_dm2,thickness_um,significant\n")
		for i, p := range r.surface.Patches {
			significant := 1
			if r.surface.Significant != nil && !r.surface.Significant[i] {
				significant = 0
			}
			fmt.Fprintf(&b, "%d,%.6g,%.6g,%.6g,%.4f,%.4f,%.4f,%.6g,%.6g,%.6g,%d\n", i, 1e3*p.At.X, 1e3*p.At.Y, 1e3*p.At.Z,
				p.Normal.X, p.Normal.Y, p.Normal.Z,
				p.Area.In(units.SquareCentimetre), p.Density.In(units.AmperePerSquareDecimetre),
				r.coat.Thickness[i].In(units.Micrometre), significant)
		}
		return b.Bytes()
	}
	b.WriteString("s_mm,r_mm,z_mm,area_cm2,current_density_A_dm2,thickness_um\n")
	for i, v := range r.samples() {
		fmt.Fprintf(&b, "%.6g,%.6g,%.6g,%.6g,%.6g,%.6g\n", v.S.In(units.Millimetre), v.At.R.In(units.Millimetre),
			v.At.Z.In(units.Millimetre),
			v.Area.In(units.SquareCentimetre), v.Density.In(units.AmperePerSquareDecimetre),
			r.coat.Thickness[i].In(units.Micrometre))
	}
	return b.Bytes()
}

// samples are those of the solution that the patches were made of, in order.
func (r *result) samples() []axi.ProfileSample {
	var list []axi.ProfileSample
	for _, v := range r.profile.Parts[0].Samples {
		if v.Area > 0 && v.Density != 0 {
			list = append(list, v)
		}
	}
	return list
}
