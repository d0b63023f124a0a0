package main

import (
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/examples/internal/terminal"
	"example.com/laydown/plating"
	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// figures are the numbers of a result under the names that scripts ask for.
// What is not known is null.
func (r *result) figures() map[string]any {
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	spot := r.surface.Patches[r.coat.MinPatch].At
	f := map[string]any{
		"format": "laydown thin spot 1", "case": r.c.Name, "method": r.surface.Basis, "part": r.part,
		"area_cm2": r.area.In(units.SquareCentimetre), "volume_cm3": r.volume.In(units.CubicCentimetre), "faces": r.faces,
		"patches": len(r.surface.Patches), "unknowns": r.unknowns,
		"total_current_A": float64(r.total), "part_current_A": float64(r.current), "cell_voltage_V": float64(r.voltage),
		"min_um": um(r.coat.Min), "average_um": um(r.coat.Average), "max_um": um(r.coat.Max), "p05_um": um(r.coat.P05),
		"p95_um":         um(r.coat.P95),
		"min_to_average": float64(r.coat.MinToAverage), "minutes_to_min_thickness": r.time.In(units.Minute),
		"thinnest_at_mm": []float64{1e3 * spot.X, 1e3 * spot.Y, 1e3 * spot.Z}, "thinnest_where": r.where(r.coat.MinPatch),
		"metal_g": r.coat.FineMass.In(units.Gram), "given_away_g": r.away.In(units.Gram),
		"significant_cm2":                       r.coat.Area.In(units.SquareCentimetre),
		"below_min_thickness_at_90_percent_cm2": r.below.In(units.SquareCentimetre),
		"current_balance":                       r.balance, "error_estimate": nil, "unresolved": r.surface.Unresolved,
	}
	if !math.IsNaN(r.surface.MinError) {
		f["error_estimate"] = r.surface.MinError
	} else {
		f["error_unknown_because"] = r.second
	}
	var others []map[string]any
	for _, o := range r.advice {
		v := map[string]any{"name": o.Name, "saved_g": nil, "minutes": nil, "min_to_average": nil, "saved_minutes": nil,
			"no": nil}
		if o.Err != nil {
			v["no"] = o.Err.Error()
		} else {
			v["saved_g"], v["minutes"], v["min_to_average"], v["saved_minutes"] = o.SavedMass.In(units.Gram),
				o.Time.In(units.Minute), float64(o.MinToAverage), o.SavedTime.In(units.Minute)
		}
		others = append(others, v)
	}
	for _, s := range r.skipped {
		others = append(others, map[string]any{"name": s.name, "saved_g": nil, "minutes": nil, "min_to_average": nil,
			"saved_minutes": nil, "no": "not tried: " + s.no})
	}
	f["cautions"] = r.cautions()
	if others != nil {
		f["arrangements"] = others
	}
	if r.warnings != nil {
		f["warnings"] = r.warnings
	}
	return f
}

func (r *result) text(w io.Writer) {
	c := &r.c
	um := func(l units.Length) string { return l.Text(units.Micrometre, 3) }
	spot := r.surface.Patches[r.coat.MinPatch].At
	fmt.Fprintf(w, "THIN SPOT: %s\n\n", units.Printable(c.Name))
	fmt.Fprintf(w, "part         %s, %s, %s through it of %s in all, %s across the cell (equilibrium potentials taken off)\n", r.part,
		r.area.Text(units.SquareCentimetre, 1), r.current.Text(units.Ampere, 3), r.total.Text(units.Ampere, 3),
		r.voltage.Text(units.Volt, 2))
	if c.Significant != nil {
		fmt.Fprintf(w, "significant  %s of it, as the case marks it\n", r.coat.Area.Text(units.SquareCentimetre, 1))
	}
	fmt.Fprintf(w, "time         %s until the thinnest spot has the minimum of %s\n", clock(r.time), um(c.MinThickness))
	at := fmt.Sprintf("r = %.1f mm, z = %.1f mm", 1e3*spot.X, 1e3*spot.Z)
	if c.Mesh != nil {
		at = fmt.Sprintf("x = %.1f mm, y = %.1f mm, z = %.1f mm", 1e3*spot.X, 1e3*spot.Y, 1e3*spot.Z)
	}
	if r.surface.Unresolved {
		finer := ""
		if c.Mesh != nil {
			finer = `; give the part a smaller "panel"`
		}
		fmt.Fprintf(w, "thinnest     NOT RESOLVED near %s: the mesh is too coarse there, claim nothing for it%s\n", at, finer)
	} else {
		fmt.Fprintf(w, "thinnest     %s at %s (%s)\n", um(r.coat.Min), at, r.where(r.coat.MinPatch))
	}
	fmt.Fprintf(w, "then         mean %s, 5 %% of the area under %s, 5 %% over %s\n", um(r.coat.Average), um(r.coat.P05),
		um(r.coat.P95))
	fmt.Fprintf(w, "ratio        thinnest over average %.3f; in a job file: \"min_to_average\": %.3f, \"basis\": %q%s\n",
		float64(r.dist.MinToAverage), float64(r.dist.MinToAverage), r.dist.Basis, r.unsure())
	fmt.Fprintf(w, "a tenth less time leaves %s below the minimum thickness\n", r.below.Text(units.SquareCentimetre, 1))
	fmt.Fprintf(w, "metal        %s of %s on the part, %s of it above the minimum thickness%s\n", weight(r.coat.FineMass),
		c.Bath.Metal,
		weight(r.away), r.money(r.away))
	known := fmt.Sprintf("least density known to %.1e", r.surface.MinError)
	if math.IsNaN(r.surface.MinError) {
		known = "how well the least density is known was not found: " + r.second
	}
	fmt.Fprintf(w, "checks       currents balance to %.1e, %s, %d unknowns\n", r.balance, known, r.unknowns)
	if r.coat.EfficiencyHeld > 0 {
		fmt.Fprintf(w, "beware       on %s the current density lies outside the efficiency curve; its end value was held\n",
			r.coat.EfficiencyHeld.Text(units.SquareCentimetre, 1))
	}
	if r.coat.Dissolving > 0 {
		fmt.Fprintf(w, "beware       on %s metal dissolves\n", r.coat.Dissolving.Text(units.SquareCentimetre, 1))
	}
	for _, x := range r.warnings {
		fmt.Fprintf(w, "beware       %s\n", units.Printable(x))
	}
	r.arrangements(w)
	fmt.Fprintln(w, "\nThe distribution is computed, the bath's figures are yours: check on a piece with a gauge before you commit yourself.")
	for _, line := range r.cautions() {
		fmt.Fprintln(w, "caution      "+line)
	}
}

// cautions are what the bath can do, what an anode does to it, and who decides.
func (r *result) cautions() []string {
	solution := r.c.Bath.Solution()
	var list []string
	if line := plating.TankLine(solution.AtTank()); line != "" {
		list = append(list, line)
	}
	for _, n := range solution.Review() {
		list = append(list, n.Line())
	}
	for _, n := range plating.FrontCautions(0) {
		list = append(list, n.Line())
	}
	return list
}

// arrangements prints what other ways to hang the part would save.
func (r *result) arrangements(w io.Writer) {
	if r.advice == nil {
		return
	}
	fmt.Fprintf(w, "\nOther arrangements, each until the thinnest spot has %s, all on one coarser mesh\n",
		r.c.MinThickness.Text(units.Micrometre, 3))
	fmt.Fprintf(w, "  %-58s %10s %7s %14s %s\n", "", "time", "ratio", "metal saved", "")
	for _, o := range r.advice {
		if o.Err != nil {
			_ = terminal.Line(w, "  %-58s not to be had: %v", o.Name, o.Err)
			continue
		}
		mark := ""
		if o.Unresolved {
			mark = " (not resolved)"
		}
		_ = terminal.Line(w, "  %-58s %10s %7.3f %14s%s%s", o.Name, clock(o.Time), float64(o.MinToAverage), weight(o.SavedMass),
			r.money(o.SavedMass), mark)
	}
	for _, s := range r.skipped {
		_ = terminal.Line(w, "  not tried: %s: %s", s.name, s.no)
	}
	metal, time := coat.Best(r.advice)
	_ = terminal.Line(w, "  saves metal: %s; saves time: %s", orNone(metal), orNone(time))
}

// unsure is the uncertainty for a job file, when it is known and counts.
func (r *result) unsure() string {
	if r.dist.Uncertainty < 0.001 {
		return ""
	}
	return fmt.Sprintf(", \"uncertainty\": %q", r.dist.Uncertainty.Percent(1))
}

// money is a mass at the price of the case: the mass to a tenth of a milligram, as
// it is printed, the amount to two places.
func (r *result) money(m units.Mass) string {
	if r.c.PricePerGram.IsZero() {
		return ""
	}
	v := decimal.NewFromFloat(m.In(units.Gram)).RoundBank(4).Mul(r.c.PricePerGram).RoundBank(2)
	return strings.TrimRight(fmt.Sprintf(" (%s %s", v.StringFixed(2), r.c.Currency), " ") + ")"
}

// weight shows a mass in milligrams, from ten grams on in grams.
func weight(m units.Mass) string {
	if math.Abs(float64(m)) >= float64(10*units.Gram) {
		return m.Text(units.Gram, 1)
	}
	return m.Text(units.Milligram, 1)
}

func orNone(list []string) string {
	if len(list) == 0 {
		return "none of them"
	}
	return strings.Join(list, ", ")
}

// clock writes a time up to the next second.
func clock(t units.Duration) string {
	if t >= 10 {
		t = units.Duration(math.Ceil(float64(t) - 1e-3))
	}
	return t.String()
}
