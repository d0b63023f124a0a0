package throwing

import (
	"fmt"
	"math"

	"example.com/laydown/units"
)

// A Trapezoid is the plan of a test cell: two parallel insulating walls, an anode
// square to them, and a cathode panel that slants from the end of the short wall
// to the end of the long one.
type Trapezoid struct {
	Anode units.Length // width, which is the distance of the walls
	Short units.Length // wall at the high end, > 0
	Long  units.Length // wall at the low end, ≥ Short
}

// Trapezoid267 is the plan of the 267 mL cell: 63.5, 47.6 and 127 mm.
func Trapezoid267() Trapezoid {
	return Trapezoid{Anode: 63.5 * units.Millimetre, Short: 47.6 * units.Millimetre, Long: 127 * units.Millimetre}
}

// Cathode returns the length of the slanted panel.
//
//	L = √(a² + (l - s)²)
//
//	a  t.Anode [m], s  t.Short [m], l  t.Long [m]
//
// Errors: a [*units.ValueError] for a plan that cannot be or that is too far from
// those of test cells: walls of 0.2 to 5 anode widths, a slant of 20 degrees from
// the walls at least.
//
// Source: [Geometry].
func (t Trapezoid) Cathode() (units.Length, error) {
	if err := t.check(); err != nil {
		return 0, err
	}
	return units.Length(math.Hypot(float64(t.Anode), float64(t.Long-t.Short))), nil
}

func (t Trapezoid) check() error {
	for _, d := range [3]struct {
		field string
		value units.Length
	}{{"anode width", t.Anode}, {"short wall", t.Short}, {"long wall", t.Long}} {
		if err := units.Positive(d.field, d.value); err != nil {
			return err
		}
	}
	if t.Long < t.Short {
		return &units.ValueError{Field: "long wall", Value: t.Long.String(), Need: "the short wall's " + t.Short.String() +
			" or more", Err: units.ErrInconsistent}
	}
	if t.Short < t.Anode/5 || t.Long > 5*t.Anode || float64(t.Long-t.Short) > float64(t.Anode)/math.Tan(math.Pi/9) {
		return &units.ValueError{Field: "plan of the cell", Value: fmt.Sprintf("anode %v, walls %v and %v", t.Anode, t.Short,
			t.Long),
			Need: "walls of 0.2 to 5 anode widths and a slant of 20 degrees or more", Err: units.ErrOutOfRange}
	}
	return nil
}
