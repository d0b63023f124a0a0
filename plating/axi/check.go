package axi

import (
	"fmt"
	"math"

	"example.com/laydown/plating/current"
	"example.com/laydown/units"
)

// Check returns a typed error for the first thing in the description that
// cannot be solved: see the package comment for the list. [Solve] calls it.
func (p ProfileProblem) Check() error {
	_, err := build(p)
	return err
}

// checkBath looks at the bath by itself: conductivity, extent, and the shape of a vessel,
// which runs from the lowest point on the axis outwards to the highest, so that the bath
// lies on its left.
func checkBath(b Electrolyte) error {
	if err := units.Positive("conductivity", b.Conductivity); err != nil {
		return err
	}
	switch b.Extent {
	case Unbounded, HalfSpace:
		if b.Shape.Segments() > 0 || len(b.Walls) > 0 {
			return wrong("bath", "a vessel's shape or walls in a bath without vessel", "Extent: Vessel, or neither",
				units.ErrInconsistent)
		}
		return nil
	case Vessel:
	default:
		return wrong("bath, extent", fmt.Sprint(uint8(b.Extent)), "Unbounded, HalfSpace or Vessel", units.ErrOutOfRange)
	}
	if b.FarAnode {
		return wrong("bath", "a far anode in a vessel", "an anode among the parts or walls", units.ErrInconsistent)
	}
	if err := b.Shape.check("vessel"); err != nil {
		return err
	}
	first, last := b.Shape.Start(), b.Shape.End()
	if first.R != 0 || last.R != 0 || !(last.Z > first.Z) {
		return wrong("vessel", "from "+first.String()+" to "+last.String(),
			"a shape from the lowest point on the axis, outwards, to the highest", ErrProfile)
	}
	if inner := b.Shape.pinched(); inner != "" {
		return wrong("vessel", inner, "a shape that meets the axis at its two ends only", ErrProfile)
	}
	if signedArea(append(chords(b.Shape.curves()), vec{0, float64(last.Z)})) <= 0 {
		return wrong("vessel", "running inwards", "a shape that starts at the bottom and runs outwards", ErrProfile)
	}
	used := map[int]bool{}
	for i, w := range b.Walls {
		name := wallName(w)
		if w.Segment < 0 || w.Segment >= b.Shape.Segments() || used[w.Segment] {
			return wrong(fmt.Sprintf("wall %d, segment", i), fmt.Sprint(w.Segment),
				fmt.Sprintf("a segment of the vessel from 0 to %d, each once", b.Shape.Segments()-1),
				units.ErrOutOfRange)
		}
		used[w.Segment] = true
		if w.Kind == current.Insulator {
			return wrong(name, "an insulator among the electrodes", "to be left out: walls insulate",
				units.ErrInconsistent)
		}
		if err := checkSurface(name, w.Kind, w.Law, w.Bias); err != nil {
			return err
		}
	}
	return nil
}

// checkSurface looks at the law and the bias of a surface. Insulators and floating metal
// hang on no rail: a bias there would have no meaning.
func checkSurface(name string, k current.Kind, law current.Law, bias units.Voltage) error {
	if err := law.CheckOn(k, name); err != nil {
		return err
	}
	if err := units.Finite(name+", bias", bias); err != nil {
		return err
	}
	if bias != 0 && (k == current.Insulator || k == current.Floating) {
		return wrong(name+", bias", bias.String(), "no bias: "+k.String()+" is wired to no rail", units.ErrInconsistent)
	}
	return nil
}

// checkPart looks at one part by itself. A sheet has its flux from both sides together as
// the unknown, and the overpotential of each side would be another; so it must be primary,
// unless it lies on the floor and has one side only.
func checkPart(name string, p Revolved, b Electrolyte) error {
	if err := p.Profile.check(name); err != nil {
		return err
	}
	if err := checkSurface(name, p.Kind, p.Law, p.Bias); err != nil {
		return err
	}
	for _, m := range p.Masked {
		if m < 0 || m >= p.Profile.Segments() {
			return wrong(name+", masked segment", fmt.Sprint(m), fmt.Sprintf("0 to %d", p.Profile.Segments()-1),
				units.ErrOutOfRange)
		}
	}
	if inner := p.Profile.pinched(); inner != "" {
		return wrong(name, inner, "a profile that meets the axis at its ends only", ErrProfile)
	}
	if !p.Sheet {
		return nil
	}
	flat := b.Extent == HalfSpace && p.Profile.onFloor()
	switch {
	case p.Profile.closed():
		return wrong(name, "a closed sheet", "an open one, or a body", ErrProfile)
	case p.Kind == current.Insulator || len(p.Masked) > 0:
		return wrong(name, "a sheet that insulates", "a body with a thickness", ErrProfile)
	case p.Law.Model != current.Primary && !flat:
		return wrong(name, "a sheet with "+p.Law.Model.String()+" kinetics",
			"a body with a thickness: the two sides differ", ErrProfile)
	}
	return nil
}

// checkOptions looks at the settings and fills in what is left zero.
func checkOptions(o ProfileOptions) (ProfileOptions, error) {
	whole := func(field string, v *int, unset, low, high int) error {
		if *v == 0 {
			*v = unset
		}
		if *v < low || *v > high {
			return wrong("options, "+field, fmt.Sprint(*v), fmt.Sprintf("%d to %d", low, high), units.ErrOutOfRange)
		}
		return nil
	}
	if o.Panelling > Constant {
		return o, wrong("options, method", fmt.Sprint(uint8(o.Panelling)), "HighOrder or Constant", units.ErrOutOfRange)
	}
	for _, err := range []error{
		whole("order", &o.Order, 8, 4, 16), whole("levels", &o.Levels, 3, 1, 12),
		whole("panels", &o.Panels, 350, 8, 2000),
		whole("most unknowns", &o.MaxUnknowns, 1400, 8, 2000), whole("workers", &o.Workers, defaultWorkers(), 1, 1024),
	} {
		if err != nil {
			return o, err
		}
	}
	return o, nil
}

// pinched says in words where a profile meets the axis between its ends. There the metal,
// or the bath, would hang together in one point, and nothing says which side of it is
// which.
func (p Profile) pinched() string {
	cs := p.curves()
	for i, c := range cs {
		if i > 0 && c.a.r == 0 {
			return fmt.Sprintf("segment %d starting on the axis", i)
		}
		if c.arc {
			s := c.param(math.Pi)
			if s > 1e-9*c.length && s < (1-1e-9)*c.length && c.at(s).r < 1e-9*c.radius {
				return fmt.Sprintf("segment %d touching the axis", i)
			}
		}
	}
	return ""
}

// onFloor tells a profile that lies at Z = 0 all along.
func (p Profile) onFloor() bool {
	flat := p.start.Z == 0
	for _, s := range p.steps {
		flat = flat && !s.arc && !s.oval && s.end.Z == 0
	}
	return flat
}

// wrong makes the error for a field of the description.
func wrong(field, value, need string, reason error) error {
	return &units.ValueError{Field: field, Value: value, Need: need, Err: reason}
}

func partName(i int, p Revolved) string {
	if p.Name != "" {
		return "part " + p.Name
	}
	return fmt.Sprintf("part %d", i)
}

func wallName(w WallSegment) string {
	if w.Name != "" {
		return "wall " + w.Name
	}
	return fmt.Sprintf("wall %d", w.Segment)
}
