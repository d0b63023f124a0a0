package thinspot

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating/coat"
	"example.com/laydown/units"
)

// writeAll writes what print says, line by line, in one piece or not at all.
func writeAll(w io.Writer, print func(line func(format string, args ...any))) error {
	if w == nil {
		return units.Missing("writer", "one that takes the text")
	}
	var b bytes.Buffer
	print(func(format string, args ...any) {
		b.WriteString(units.Printable(fmt.Sprintf(format, args...)))
		b.WriteByte('\n')
	})
	_, err := w.Write(b.Bytes())
	return err
}

// WriteText writes the result for a finisher: time, thinnest spot, ratio for a job,
// metal, how sure it is, what to beware of, and other arrangements.
//
// Errors: a [*units.ValueError] for a result that is not of [Case.Solve], and for nil;
// those of the writer.
func (r Result) WriteText(w io.Writer) error {
	if err := r.check(); err != nil {
		return err
	}
	return writeAll(w, r.lines)
}

func (r *Result) lines(line func(string, ...any)) {
	c, k := &r.Case, &r.Coat
	um := func(l units.Length) string { return l.Text(units.Micrometre, 3) }
	area := func(a units.Area) string { return a.Text(units.SquareCentimetre, 1) }
	line("THIN SPOT: %s", c.Name)
	line("")
	line("workpiece    %s, %s, %s through it of %s in all, %s across the cell (equilibrium potentials taken off)",
		r.Workpiece, area(r.Area), r.Current.Text(units.Ampere, 3), r.Total.Text(units.Ampere, 3),
		r.Voltage.Text(units.Volt, 2))
	if r.Surface.Significant != nil {
		line("significant  %s of it, as the case marks it", area(k.Area))
	}
	line("time         %s until the thinnest spot has the minimum of %s", clock(k.Time), um(c.MinThickness))
	at := fmt.Sprintf("r = %.1f mm, z = %.1f mm", 1e3*r.Spot.X, 1e3*r.Spot.Z)
	finer := ""
	if r.byMesh() {
		at = fmt.Sprintf("x = %.1f mm, y = %.1f mm, z = %.1f mm", 1e3*r.Spot.X, 1e3*r.Spot.Y, 1e3*r.Spot.Z)
		finer = `; give the part a smaller "panel"`
	}
	if r.Surface.Unresolved {
		line("thinnest     NOT RESOLVED near %s: the mesh is too coarse there, claim nothing for it%s", at, finer)
	} else {
		line("thinnest     %s at %s (%s)", um(k.Min), at, r.Where)
	}
	line("then         average %s, 5 %% of the area under %s, 5 %% over %s", um(k.Average), um(k.P05), um(k.P95))
	unsure := ""
	if r.Ratio.Uncertainty >= 0.001 {
		unsure = fmt.Sprintf(", \"uncertainty\": %q", r.Ratio.Uncertainty.Percent(1))
	}
	line("ratio        thinnest over average %.3f; in a job file: \"min_to_average\": %.3f, \"basis\": %q%s",
		float64(k.MinToAverage), float64(r.Ratio.MinToAverage), r.Ratio.Basis, unsure)
	line("a tenth less time leaves %s below the minimum thickness", area(r.Below))
	line("metal        %s of %s on the workpiece, %s of it above the minimum thickness%s", weight(k.FineMass),
		c.Bath.Metal, weight(r.Above), r.money(r.Above))
	known := fmt.Sprintf("least density known to %.1e", r.Surface.MinError)
	if math.IsNaN(r.Surface.MinError) {
		known = "how well the least density is known was not found: " + r.ErrorUnknown
	}
	line("checks       currents balance to %.1e, %s, %d unknowns", r.Balance, known, r.Unknowns)
	for _, x := range r.beware() {
		line("beware       %s", x)
	}
	r.arrangements(line)
	line("")
	line("The distribution is computed, the bath's figures are yours: check on a piece with a gauge " +
		"before you commit yourself.")
	for _, x := range r.Cautions {
		line("caution      %s", x)
	}
}

// arrangements prints what other ways to hang the workpiece would save.
func (r *Result) arrangements(line func(string, ...any)) {
	if r.Others == nil {
		return
	}
	line("")
	line("Other arrangements, each until the thinnest spot has %s, all on one coarser mesh",
		r.Case.MinThickness.Text(units.Micrometre, 3))
	line("  %-58s %10s %7s %14s ", "", "time", "ratio", "metal saved")
	for _, o := range r.Others {
		var skipped *NotTriedError
		switch mark := ""; {
		case errors.As(o.Err, &skipped):
			line("  not tried: %s: %s", o.Name, skipped.Why)
		case o.Err != nil:
			line("  %-58s not to be had: %v", o.Name, o.Err)
		default:
			if o.Unresolved {
				mark = " (not resolved)"
			}
			line("  %-58s %10s %7.3f %14s%s%s", o.Name, clock(o.Time), float64(o.MinToAverage), weight(o.SavedMass),
				r.money(o.SavedMass), mark)
		}
	}
	metal, time := coat.Best(r.Others)
	line("  saves metal: %s; saves time: %s", orNone(metal), orNone(time))
}

// money is a mass at the price of the case: the mass to a tenth of a milligram, as
// it is printed, the amount to two places.
func (r *Result) money(m units.Mass) string {
	if v, given := r.worth(m); given {
		return strings.TrimRight(fmt.Sprintf(" (%s %s", v.StringFixed(2), r.Case.Currency), " ") + ")"
	}
	return ""
}

func (r *Result) worth(m units.Mass) (v decimal.Decimal, given bool) {
	if r.Case.PricePerGram.IsZero() {
		return v, false
	}
	return decimal.NewFromFloat(m.In(units.Gram)).RoundBank(4).Mul(r.Case.PricePerGram).RoundBank(2), true
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
