package plating

import (
	"fmt"

	"example.com/laydown/units"
)

// An EfficiencyCurve tells a bath's current efficiency at each current
// density. It is one value, or straight lines between measured points. The
// zero curve means "not given" and no estimate takes it.
//
// A curve is immutable; copies share their points.
type EfficiencyCurve struct {
	constant units.Efficiency
	points   []EfficiencyPoint
}

// An EfficiencyPoint is one measured efficiency.
type EfficiencyPoint struct {
	CurrentDensity units.CurrentDensity
	Efficiency     units.Efficiency
}

// ConstantEfficiency returns the curve that has one value at every current
// density. The value is checked when the curve is used.
func ConstantEfficiency(eff units.Efficiency) EfficiencyCurve {
	return EfficiencyCurve{constant: eff}
}

// NewEfficiencyCurve returns the curve through points of rising current density.
//
//	η = η₁ + (η₂ - η₁)·(j - j₁)/(j₂ - j₁)
//
//	j  CurrentDensity  of each point, > 0, rising [A/m²]
//	η  Efficiency      of each point, 0 < η ≤ 1
//
// Between points the line is straight; outside the first and last point their
// value is held and the estimate says so. Two points or more.
//
// Errors: a [*units.ValueError] that names the point.
//
// Source: [Definition] (linear interpolation).
func NewEfficiencyCurve(points ...EfficiencyPoint) (EfficiencyCurve, error) {
	if len(points) < 2 {
		return EfficiencyCurve{}, &units.ValueError{Field: "efficiency curve",
			Value: fmt.Sprintf("%d points", len(points)),
			Need:  "two points or more, or one constant value", Err: units.ErrOutOfRange}
	}
	for i, p := range points {
		name := fmt.Sprintf("point %d of the efficiency curve: ", i+1)
		if err := units.Positive(name+"current density", p.CurrentDensity); err != nil {
			return EfficiencyCurve{}, err
		}
		if err := units.PositiveFraction(name+"efficiency", p.Efficiency); err != nil {
			return EfficiencyCurve{}, err
		}
		if i > 0 && p.CurrentDensity <= points[i-1].CurrentDensity {
			return EfficiencyCurve{}, &units.ValueError{Field: name + "current density",
				Value: p.CurrentDensity.String(),
				Need:  "a value above that of the point before, " + points[i-1].CurrentDensity.String(),
				Err:   units.ErrInconsistent}
		}
	}
	return EfficiencyCurve{points: append([]EfficiencyPoint(nil), points...)}, nil
}

// IsZero reports whether the curve is not given.
func (c EfficiencyCurve) IsZero() bool { return c.constant == 0 && len(c.points) == 0 }

// Points returns a copy of the measured points, none for a constant.
func (c EfficiencyCurve) Points() []EfficiencyPoint {
	return append([]EfficiencyPoint(nil), c.points...)
}

// At returns the efficiency at a current density, and whether that lies within
// the curve's points. A constant is within everywhere.
func (c EfficiencyCurve) At(j units.CurrentDensity) (eff units.Efficiency, within bool) {
	if len(c.points) == 0 {
		return c.constant, true
	}
	return c.between(j)
}

// between interpolates on a curve with points, and holds the end value outside them. An
// extrapolated line would soon pass 0 or 1.
func (c EfficiencyCurve) between(j units.CurrentDensity) (units.Efficiency, bool) {
	first, last := c.points[0], c.points[len(c.points)-1]
	switch {
	case !(j >= first.CurrentDensity):
		return first.Efficiency, false
	case j >= last.CurrentDensity:
		return last.Efficiency, j == last.CurrentDensity
	}
	for i := 1; ; i++ {
		if q := c.points[i]; j < q.CurrentDensity {
			p := c.points[i-1]
			share := float64(j-p.CurrentDensity) / float64(q.CurrentDensity-p.CurrentDensity)
			return p.Efficiency + units.Efficiency(share*float64(q.Efficiency-p.Efficiency)), true
		}
	}
}
