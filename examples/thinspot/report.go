package main

import (
	"bytes"
	"fmt"
	"io"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating/axi"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// figures are the numbers of a result under the names that scripts ask for.
func (r *result) figures() map[string]any {
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	part := r.solution.Parts[0]
	return map[string]any{
		"case": r.c.Name, "method": r.surface.Basis,
		"area_cm2": part.Area.In(units.SquareCentimetre), "volume_cm3": r.volume().In(units.CubicCentimetre), "faces": len(r.surface.Patches),
		"total_current_A": float64(r.solution.Current), "part_current_A": float64(part.Current), "cell_voltage_V": float64(r.solution.Voltage),
		"min_um": um(r.coat.Min), "mean_um": um(r.coat.Mean), "max_um": um(r.coat.Max), "p05_um": um(r.coat.P05), "p95_um": um(r.coat.P95),
		"min_to_mean": float64(r.coat.MinToMean), "minutes_to_promise": r.time.In(units.Minute),
		"metal_g": r.coat.FineMass.In(units.Gram), "given_away_g": r.away.In(units.Gram),
		"current_balance": r.solution.Checks.Balance, "error_estimate": r.surface.MinError, "unresolved": r.surface.Unresolved,
	}
}

// volume is that of the body between the profile and the axis, by rings of the
// solution: V = ∫ π r² dz, the divergence theorem over the samples.
func (r *result) volume() units.Volume {
	v := 0.0
	for _, s := range r.solution.Parts[0].Samples {
		v += float64(s.Area) * (float64(s.At.R)*s.NormalR + float64(s.At.Z)*s.NormalZ) / 3
	}
	return units.Volume(v)
}

func (r *result) text(w io.Writer) {
	c, part := &r.c, r.solution.Parts[0]
	um := func(l units.Length) string { return l.Text(units.Micrometre, 3) }
	spot := r.surface.Patches[r.coat.MinPatch]
	fmt.Fprintf(w, "THIN SPOT: %s\n\n", c.Name)
	fmt.Fprintf(w, "part         %s, %s, %s through it of %s in all, %s across the cell (equilibrium potentials taken off)\n", part.Name,
		part.Area.Text(units.SquareCentimetre, 1), part.Current.Text(units.Ampere, 3), r.solution.Current.Text(units.Ampere, 3), r.solution.Voltage.Text(units.Volt, 2))
	fmt.Fprintf(w, "time         %s until the thinnest spot has the %s promised\n", r.time, um(c.Promise))
	if r.surface.Unresolved {
		fmt.Fprintf(w, "thinnest     NOT RESOLVED near r = %.1f mm, z = %.1f mm: the mesh is too coarse there, do not promise on it\n", 1e3*spot.At.X, 1e3*spot.At.Z)
	} else {
		fmt.Fprintf(w, "thinnest     %s at r = %.1f mm, z = %.1f mm (%s)\n", um(r.coat.Min), 1e3*spot.At.X, 1e3*spot.At.Z, where(r.surface, r.coat.MinPatch))
	}
	fmt.Fprintf(w, "then         mean %s, 5 %% of the area under %s, 5 %% over %s\n", um(r.coat.Mean), um(r.coat.P05), um(r.coat.P95))
	fmt.Fprintf(w, "ratio        thinnest over mean %.3f; in a job file: \"min_to_mean\": %.3f, \"basis\": %q\n", float64(r.dist.MinToMean), float64(r.dist.MinToMean), r.dist.Basis)
	fmt.Fprintf(w, "a tenth less time leaves %s below the promise\n", r.below.Text(units.SquareCentimetre, 1))
	fmt.Fprintf(w, "metal        %s of %s on the part, %s of it above the promise%s\n", r.coat.FineMass.Text(units.Milligram, 1), c.Bath.Metal,
		r.away.Text(units.Milligram, 1), r.money(r.away))
	fmt.Fprintf(w, "checks       currents balance to %.1e, least density known to %.1e, %d unknowns\n", r.solution.Checks.Balance, r.surface.MinError, r.solution.Checks.Unknowns)
	if r.coat.EfficiencyHeld > 0 {
		fmt.Fprintf(w, "beware       on %s the current density lies outside the efficiency curve; its end value was held\n", r.coat.EfficiencyHeld.Text(units.SquareCentimetre, 1))
	}
	for _, x := range r.solution.Warnings {
		fmt.Fprintf(w, "beware       %s\n", x)
	}
	if r.advice != nil {
		fmt.Fprintf(w, "\nOther arrangements, each until the thinnest spot has %s\n", um(c.Promise))
		fmt.Fprintf(w, "  %-58s %10s %7s %14s %s\n", "", "time", "ratio", "metal saved", "")
		for _, o := range r.advice {
			if o.Err != nil {
				fmt.Fprintf(w, "  %-58s not to be had: %v\n", o.Name, o.Err)
				continue
			}
			fmt.Fprintf(w, "  %-58s %10s %7.3f %14s%s\n", o.Name, o.Time, float64(o.MinToMean), o.SavedMass.Text(units.Milligram, 1), r.money(o.SavedMass))
		}
		metal, time := coat.Best(r.advice)
		fmt.Fprintf(w, "  saves metal: %s; saves time: %s\n", orNone(metal), orNone(time))
	}
	fmt.Fprintln(w, "\nThe distribution is computed, the bath's figures are yours: check on a piece with a gauge before you promise.")
}

// money is a mass at the price of the case, to the milligram and two places.
func (r *result) money(m units.Mass) string {
	if r.c.PricePerGram.IsZero() {
		return ""
	}
	v := decimal.NewFromFloat(m.In(units.Gram)).RoundBank(3).Mul(r.c.PricePerGram).RoundBank(2)
	return strings.TrimRight(fmt.Sprintf(" (%s %s", v.StringFixed(2), r.c.Currency), " ") + ")"
}

func orNone(list []string) string {
	if len(list) == 0 {
		return "none of them"
	}
	return strings.Join(list, ", ")
}

// where says in words how a spot on a body of revolution lies.
func where(s coat.Surface, i int) string {
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

// csv is the surface, ring by ring along the profile.
func (r *result) csv() []byte {
	var b bytes.Buffer
	b.WriteString("s_mm,r_mm,z_mm,area_cm2,current_density_A_dm2,thickness_um\n")
	i := 0
	for _, v := range r.samples() {
		fmt.Fprintf(&b, "%.6g,%.6g,%.6g,%.6g,%.6g,%.6g\n", v.S.In(units.Millimetre), v.At.R.In(units.Millimetre), v.At.Z.In(units.Millimetre),
			v.Area.In(units.SquareCentimetre), v.Density.In(units.AmperePerSquareDecimetre), r.coat.Thickness[i].In(units.Micrometre))
		i++
	}
	return b.Bytes()
}

// samples are those of the solution that the patches were made of, in order.
func (r *result) samples() []axi.Sample {
	var list []axi.Sample
	for _, v := range r.solution.Parts[0].Samples {
		if v.Area > 0 && v.Density != 0 {
			list = append(list, v)
		}
	}
	return list
}
