package coat

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/units"
)

// A Patch is a small piece of a plated surface with the current density that
// a solution gives it.
type Patch struct {
	At      r3.Vec // its middle, in metres
	Normal  r3.Vec // away from the metal, of length 1; zero when not known
	Area    units.Area
	Density units.CurrentDensity // plating is positive
}

// A Surface is what one part looks like in a current distribution.
type Surface struct {
	Patches []Patch

	// Significant marks the patches that the minimum thickness is for; nil means all.
	Significant []bool

	// MinError is the relative error of the least density as the solution
	// estimates it; NaN when it does not.
	MinError float64
	// Unresolved says that the least density lies on one panel of the solution.
	Unresolved bool
	// Basis says in words where the densities come from.
	Basis string
}

// A Selector tells whether a patch is significant.
type Selector func(Patch) bool

// InBox selects patches whose middle lies in a box, its faces included.
func InBox(low, high r3.Vec) Selector {
	return func(p Patch) bool {
		return p.At.X >= low.X && p.At.X <= high.X && p.At.Y >= low.Y && p.At.Y <= high.Y && p.At.Z >= low.Z &&
			p.At.Z <= high.Z
	}
}

// Facing selects patches whose normal is within an angle (in degrees) of a
// direction. A patch without a normal is not selected.
func Facing(direction r3.Vec, degrees float64) Selector {
	n := r3.Norm(direction)
	least := math.Cos(degrees * math.Pi / 180)
	return func(p Patch) bool {
		m := r3.Norm(p.Normal)
		return n > 0 && m > 0 && r3.Dot(p.Normal, direction) >= least*n*m-1e-12
	}
}

// AwayFrom selects patches at least a distance from every one of some straight
// edges, each given by its two ends.
func AwayFrom(edges [][2]r3.Vec, distance units.Length) Selector {
	return func(p Patch) bool {
		for _, e := range edges {
			if !(toSegment(p.At, e[0], e[1]) >= float64(distance)) { // also for a distance that is no number
				return false
			}
		}
		return true
	}
}

// Both selects what two selectors select. It is nil with one that is nil.
func Both(a, b Selector) Selector {
	if a == nil || b == nil {
		return nil
	}
	return func(p Patch) bool { return a(p) && b(p) }
}

// Not selects what a selector does not. It is nil for nil.
func Not(a Selector) Selector {
	if a == nil {
		return nil
	}
	return func(p Patch) bool { return !a(p) }
}

// Mark returns the surface with the selected patches significant.
//
// Errors: a [*units.ValueError] when nothing is selected, and for nil.
func (s Surface) Mark(selected Selector) (Surface, error) {
	if selected == nil {
		return Surface{}, units.Missing("selector", "one that tells which patches are significant, as InBox or Facing")
	}
	marks := make([]bool, len(s.Patches))
	any := false
	for i, p := range s.Patches {
		marks[i] = selected(p)
		any = any || marks[i]
	}
	if !any {
		return Surface{}, &units.ValueError{Field: "significant surface", Value: "none of " + fmt.Sprint(len(s.Patches)) +
			" patches",
			Need: "a selection that holds some of the surface", Err: units.ErrOutOfRange}
	}
	s.Significant = marks
	return s, nil
}

// significant reports whether patch i counts for the minimum thickness.
func (s *Surface) significant(i int) bool { return s.Significant == nil || s.Significant[i] }

// check refuses a surface that no coat can be laid on.
func (s *Surface) check() error {
	if len(s.Patches) == 0 {
		return &units.ValueError{Field: "surface", Value: "no patches", Need: "at least one", Err: units.ErrNotPositive}
	}
	if s.Significant != nil && len(s.Significant) != len(s.Patches) {
		return &units.ValueError{Field: "significant marks", Value: fmt.Sprintf("%d for %d patches", len(s.Significant),
			len(s.Patches)),
			Need: "one for each patch", Err: units.ErrInconsistent}
	}
	any := false
	for i, p := range s.Patches {
		if err := units.Positive(fmt.Sprintf("area of patch %d", i+1), p.Area); err != nil {
			return err
		}
		if err := units.Finite(fmt.Sprintf("current density of patch %d", i+1), p.Density); err != nil {
			return err
		}
		if v := p.At.X + p.At.Y + p.At.Z + p.Normal.X + p.Normal.Y + p.Normal.Z; v-v != 0 {
			return &units.ValueError{Field: fmt.Sprintf("place of patch %d", i+1), Value: fmt.Sprint(p.At, p.Normal),
				Need: "finite coordinates", Err: units.ErrNotFinite}
		}
		any = any || s.significant(i)
	}
	if !any {
		return &units.ValueError{Field: "significant surface", Value: "none", Need: "at least one patch",
			Err: units.ErrOutOfRange}
	}
	return nil
}

// Sum adds solutions of the same part in several positions, each for a share
// of the time: a schedule of rotation. Patches must come in the same order,
// with the same areas; places and normals are those of the first.
//
//	j = Σ x·j_k
//
//	j_k  Density of each position  [A/m²]
//	x    share of the time in it, Σ x = 1 within 1e-6
//
// The coat adds up like the density as long as the efficiency does not depend
// on it; where it does, lay each position on its own with [Lay] and add the
// thicknesses.
//
// Errors: a [*units.ValueError] for shares that do not sum to 1 and for
// surfaces that do not match.
//
// Source: [Definition].
func Sum(positions []Surface, shares []units.Ratio) (Surface, error) {
	if len(positions) == 0 || len(positions) != len(shares) {
		return Surface{}, &units.ValueError{Field: "positions", Value: fmt.Sprintf("%d with %d shares", len(positions),
			len(shares)),
			Need: "one share of the time for each, at least one", Err: units.ErrInconsistent}
	}
	total := 0.0
	for i, x := range shares {
		if err := units.Fraction(fmt.Sprintf("share of the time %d", i+1), x); err != nil {
			return Surface{}, err
		}
		if err := positions[i].check(); err != nil {
			return Surface{}, err
		}
		total += float64(x)
	}
	if math.Abs(total-1) > 1e-6 {
		return Surface{}, &units.ValueError{Field: "sum of the shares of the time", Value: units.Ratio(total).String(),
			Need: "1", Err: units.ErrInconsistent}
	}
	out := positions[0]
	out.Patches = append([]Patch(nil), out.Patches...)
	for i := range out.Patches {
		out.Patches[i].Density = 0
	}
	for k, pos := range positions {
		if len(pos.Patches) != len(out.Patches) {
			return Surface{}, &units.ValueError{Field: fmt.Sprintf("position %d", k+1), Value: fmt.Sprintf("%d patches",
				len(pos.Patches)),
				Need: fmt.Sprintf("the %d of the first", len(out.Patches)), Err: units.ErrInconsistent}
		}
		for i, p := range pos.Patches {
			if math.Abs(float64(p.Area-out.Patches[i].Area)) > 1e-9*float64(p.Area) {
				return Surface{}, &units.ValueError{Field: fmt.Sprintf("position %d, area of patch %d", k+1, i+1),
					Value: p.Area.String(),
					Need:  "that of the first position, " + out.Patches[i].Area.String(), Err: units.ErrInconsistent}
			}
			out.Patches[i].Density += units.CurrentDensity(float64(shares[k]) * float64(p.Density))
		}
		out.MinError = math.Max(out.MinError, pos.MinError)
		out.Unresolved = out.Unresolved || pos.Unresolved
	}
	out.Basis = fmt.Sprintf("%d positions: %s", len(positions), positions[0].Basis)
	return out, nil
}

func toSegment(p, a, b r3.Vec) float64 {
	ab := r3.Sub(b, a)
	t := 0.0
	if d := r3.Norm2(ab); d > 0 {
		t = math.Min(1, math.Max(0, r3.Dot(r3.Sub(p, a), ab)/d))
	}
	return r3.Norm(r3.Sub(p, r3.Add(a, r3.Scale(t, ab))))
}
