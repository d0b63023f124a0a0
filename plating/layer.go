package plating

import (
	"math"
	"strconv"

	"example.com/laydown/plating/sense"
	"example.com/laydown/units"
)

// A Role says what a layer is for.
type Role uint8

// The roles. The zero Role is a plain layer.
const (
	RoleFinish Role = iota // the outer coat, whose minimum thickness is specified
	RoleStrike             // a first thin coat for adhesion
	RoleUnder              // a barrier or levelling coat under the finish
)

// String returns the role in words.
func (r Role) String() string {
	switch r {
	case RoleStrike:
		return "strike"
	case RoleUnder:
		return "underplate"
	case RoleFinish:
		return "finish"
	}
	return "unknown"
}

// A Distribution says how unevenly the coat lies.
type Distribution struct {
	// MinToAverage is the thickness at the thinnest significant spot over the
	// mean, above 0 and at most 1. Use 1 only for a coat that is even.
	MinToAverage units.Ratio
	Basis        string // where the ratio comes from: "given", "measured on trial pieces" ...

	// Uncertainty is that of MinToAverage, relative; 0 when it is not known.
	Uncertainty units.Ratio
}

// A Layer is one immersion of a load in one plating bath. Of MinThickness,
// CurrentDensity and Time give two and leave the third zero: [Estimate] finds
// it. Give all three and it checks the minimum thickness.
type Layer struct {
	Name string
	Role Role          // finish, strike or underplate
	Bath OperatingBath // as it is run
	Area units.Area    // plated area of the whole load

	Distribution   Distribution         // how evenly the coat lies
	MinThickness   units.Length         // thickness at the thinnest significant spot
	CurrentDensity units.CurrentDensity // mean over the area
	Time           units.Duration       // current on

	// CountBelow lets layers of the same metal directly below this one count
	// towards its minimum thickness, each with its own thinnest spot. Only [EstimateSystem]
	// looks at it.
	CountBelow bool
}

// A LayerEstimate is what a layer comes to.
type LayerEstimate struct {
	CurrentDensity units.CurrentDensity // mean over the area
	Current        units.Current        // for the whole load
	Time           units.Duration       // current on
	Charge         units.Charge         // current times time
	Efficiency     units.Efficiency     // at that current density

	Average  units.Length // thickness averaged over the area
	Thinnest units.Length // at the thinnest significant spot

	Mass     units.Mass // of the deposit
	FineMass units.Mass // of the counted metal in it

	MetalLeft   units.Mass              // of the counted metal in the bath, when content and volume are given
	ContentLeft units.MassConcentration // the same over the volume
	Drawn       units.Ratio             // share of the bath's metal that went

	Warnings Warnings // what to question; [Notes] puts it into words
}

// Estimate computes one layer: it finds the one of minimum thickness, current density
// and time that is left zero, and what follows from them.
//
//	s = s_min/r
//	t = ρ·s/(ε·η·j)
//	I = j·A
//	Q = I·t
//	m = ρ·s·A
//	m_fine = w·m
//
//	s_min  MinThickness               thickness at the thinnest spot [m]
//	r      Distribution.MinToAverage  thinnest over average, 0 < r ≤ 1
//	s      Average                    thickness averaged over the area [m]
//	ρ, ε   Bath.Deposit               density [kg/m³], equivalent [kg/C]
//	η      Bath.Efficiency at j       0 < η ≤ 1
//	j      CurrentDensity             mean over the area [A/m²]
//	t      Time                       current on [s]
//	A      Area                       of the whole load, > 0 [m²]
//	I, Q   Current, Charge            of the load [A], [C]
//	m      Mass, FineMass             of the deposit, of the counted metal in it [kg]
//	w      Bath.Fine                  share of the counted metal
//
// With time and minimum thickness given, the smallest current density is found at which
// η·j is enough. The arithmetic is exact to a few parts in 1e16; the answer is
// as good as efficiency, ratio and area are known.
//
// The efficiency is taken at the mean current density. Where it falls as the
// current density rises the coat is more even than r says, and the other way
// round.
//
// Estimate allocates nothing unless it returns an error. It does not change l.
//
// Errors: a [*units.ValueError] that names the field, what it held and what
// would do. What a careful finisher would question is not an error but a flag
// in Warnings: see [Notes].
//
// Source: [OpenStaxChem2e] section 17.7.
func Estimate(l *Layer) (res LayerEstimate, err error) {
	if l == nil || !l.sound() {
		if err := l.Check(); err != nil {
			return LayerEstimate{}, err
		}
	}
	b := &l.Bath
	eps, rho, r := float64(b.Deposit.Equivalent), float64(b.Deposit.Density), float64(l.Distribution.MinToAverage)
	j, t := float64(l.CurrentDensity), float64(l.Time)
	mean := float64(l.MinThickness) / r
	warn := Warnings(0)

	eff := b.Efficiency.constant
	if len(b.Efficiency.points) != 0 && j != 0 {
		var within bool
		if eff, within = b.Efficiency.between(units.CurrentDensity(j)); !within {
			warn = WarnEfficiencyHeld
		}
	}
	switch {
	case t == 0: // time for a minimum thickness
		t = rho * mean / (eps * float64(eff) * j)
	case j != 0: // thickness reached
		mean = eps * float64(eff) * j * t / rho
	case len(b.Efficiency.points) == 0: // current for a deadline
		j = rho * mean / (eps * float64(eff) * t)
	default:
		var within bool
		if j, eff, within = b.Efficiency.solve(rho * mean / (eps * t)); !within {
			warn = WarnEfficiencyHeld
		}
	}

	if !(mean <= mostMean) {
		return LayerEstimate{}, &units.ValueError{Field: "average thickness", Value: units.Length(mean).String(),
			Need: "a minimum thickness and a ratio of thinnest to average of a size that can be",
			Err:  units.ErrOutOfRange}
	}
	i := j * float64(l.Area)
	q := i * t
	m := rho * mean * float64(l.Area)
	if !(q > 0 && q <= math.MaxFloat64 && m > 0 && m <= math.MaxFloat64) {
		return LayerEstimate{}, &units.ValueError{Field: "estimate", Value: "charge " + units.Charge(q).String() + ", mass " +
			units.Mass(m).String(),
			Need: "minimum thickness, current density, time and area of a size that can be", Err: units.ErrOutOfRange}
	}
	// Field by field: a literal would be built aside and copied.
	res.CurrentDensity, res.Current, res.Time, res.Charge = units.CurrentDensity(j), units.Current(i),
		units.Duration(t), units.Charge(q)
	res.Efficiency = eff
	res.Average, res.Thinnest = units.Length(mean), units.Length(mean*r)
	res.Mass, res.FineMass = units.Mass(m), units.Mass(m*float64(b.fine()))
	res.Warnings = warn | l.review(&res)
	if !(res.Drawn <= math.MaxFloat64 && res.MetalLeft <= math.MaxFloat64 && res.ContentLeft <= math.MaxFloat64) {
		return LayerEstimate{}, &units.ValueError{Field: "metal in the bath", Value: b.Content.String() +
			" in " + b.Volume.String(), Need: "content and volume of a size that can be", Err: units.ErrOutOfRange}
	}
	return res, nil
}

// sound is the quick form of [Layer.Check]: when true, Check finds nothing. It
// may be false for values that add up beyond the largest float64; then Check
// decides. Every value is held against zero on its own, and all at once against
// infinity by their sum.
func (l *Layer) sound() bool {
	if l == nil {
		return false
	}
	b := &l.Bath
	if len(b.Efficiency.points) == 0 && !(b.Efficiency.constant > 0 && b.Efficiency.constant <= 1) {
		return false
	}
	if !(b.Deposit.Equivalent > 0 && b.Deposit.Density > 0 && b.Deposit.Density <= mostDensity &&
		b.Fine >= 0 && b.Fine <= 1 && b.DrawLimit >= 0 && b.DrawLimit <= 1 &&
		l.Role <= RoleUnder && l.Area >= sense.MinArea && l.Area <= sense.MaxArea &&
		within(l.MinThickness, sense.MinCoat, sense.MaxCoat) &&
		within(l.CurrentDensity, sense.MinDensity, sense.MaxDensity) && within(l.Time, sense.MinTime, sense.MaxTime) &&
		l.Distribution.MinToAverage > 0 && l.Distribution.MinToAverage <= 1 && l.Distribution.Uncertainty >= 0 &&
		b.Window.Low >= 0 && b.Window.Low <= b.Window.High && within(b.Window.High, sense.MinDensity,
		sense.MaxDensity) &&
		b.Volts.Low >= 0 && b.Volts.Low <= b.Volts.High && within(b.Volts.High, sense.MinVolts, sense.MaxVolts) &&
		b.Temperature.Low >= 0 && b.Temperature.Low <= b.Temperature.High && b.Temperature.Set >= 0 &&
		within(b.Temperature.Low, sense.MinSolution, sense.MaxSolution) &&
		within(b.Temperature.Set, sense.MinSolution, sense.MaxSolution) &&
		within(b.Temperature.High, sense.MinSolution, sense.MaxSolution) &&
		within(b.Content, sense.MinContent, sense.MaxContent) && within(b.Volume, sense.MinVolume, sense.MaxVolume) &&
		b.MaxThickness >= 0 && b.Valence >= 0 && b.Valence <= 8 &&
		b.PH.Low >= 0 && b.PH.High >= 0 && b.PH.Low <= 16 && b.PH.High <= 16 && (b.PH.High == 0 ||
		b.PH.Low <= b.PH.High)) {
		return false
	}
	sum := float64(b.Deposit.Equivalent) + float64(b.Window.High) + float64(b.Volts.High) +
		float64(b.Temperature.High) +
		float64(b.Temperature.Set) + float64(b.Content) + float64(b.Volume) + float64(b.MaxThickness) +
		float64(l.Distribution.Uncertainty)
	return sum <= math.MaxFloat64 && l.given() >= 2
}

// within reports whether a value is not given or lies between two ends.
func within[Q units.Quantity](v, least, most Q) bool { return v == 0 || v >= least && v <= most }

// given counts how many of minimum thickness, current density and time are not zero.
func (l *Layer) given() int {
	n := 0
	if l.MinThickness != 0 {
		n++
	}
	if l.CurrentDensity != 0 {
		n++
	}
	if l.Time != 0 {
		n++
	}
	return n
}

// Limits of sense that only this package has; the rest stand in package sense.
const (
	mostDensity = 25 * units.GramPerCubicCentimetre // no metal is denser than 22.6
	mostMean    = 1000                              // m, of what is computed
)

// Check returns a [*units.ValueError] for the first field that [Estimate]
// cannot take, nil when it can take all. Besides what cannot be, it refuses
// what no shop has: the limits of package sense, and a deposit denser than 25 g/cm³.
func (l *Layer) Check() error {
	if l == nil {
		return units.Missing("layer", "the layer to plate")
	}
	if err := l.Bath.Check(); err != nil {
		return err
	}
	if l.Role > RoleUnder {
		return &units.ValueError{Field: "role", Value: strconv.Itoa(int(l.Role)), Need: "finish, strike or underplate",
			Err: units.ErrOutOfRange}
	}
	if err := units.Positive("area", l.Area); err != nil {
		return err
	}
	if err := units.PositiveFraction("ratio of thinnest to average", l.Distribution.MinToAverage); err != nil {
		return err
	}
	if err := units.NonNegative("uncertainty of the ratio of thinnest to average",
		l.Distribution.Uncertainty); err != nil {
		return err
	}
	if err := units.NonNegative("minimum thickness", l.MinThickness); err != nil {
		return err
	}
	if err := units.NonNegative("current density", l.CurrentDensity); err != nil {
		return err
	}
	if err := units.NonNegative("time", l.Time); err != nil {
		return err
	}
	if rho := l.Bath.Deposit.Density; rho > mostDensity {
		return &units.ValueError{Field: "density of the deposit", Value: rho.String(), Need: "at most " +
			mostDensity.String(), Err: units.ErrOutOfRange}
	}
	for _, err := range []error{sense.CurrentDensity().Check(l.CurrentDensity), sense.Time().Check(l.Time),
		sense.Area().Check(l.Area), sense.Coat().CheckAs("minimum thickness", l.MinThickness)} {
		if err != nil {
			return err
		}
	}
	if l.given() < 2 {
		return &units.ValueError{Field: "minimum thickness, current density and time", Value: "fewer than two given",
			Need: "two of the three; the third is computed", Err: units.ErrInconsistent}
	}
	return nil
}

// solve finds the smallest current density at which efficiency times current
// density reaches target. The curve is straight between points, so the product
// is a parabola there and the root is exact.
//
//	η(j)·j = ρ s/(ε t) = target,  η(j) = η₁ + k (j - j₁)
//
//	target  part of the current density that must deposit metal [A/m²]
//	k       slope of the curve between two points [m²/A]
//
// The product may rise and fall again along a curve that drops steeply; the smallest root
// is the one that wastes least current. Outside the points the end values hold, and within
// is false.
func (c EfficiencyCurve) solve(target float64) (j float64, eff units.Efficiency, within bool) {
	first, last := c.points[0], c.points[len(c.points)-1]
	if float64(first.Efficiency)*float64(first.CurrentDensity) >= target {
		j = target / float64(first.Efficiency)
		return j, first.Efficiency, j == float64(first.CurrentDensity)
	}
	for k := 1; k < len(c.points); k++ {
		p, q := c.points[k-1], c.points[k]
		slope := float64(q.Efficiency-p.Efficiency) / float64(q.CurrentDensity-p.CurrentDensity)
		// With x = j - j₁: slope·x² + (η₁ + slope·j₁)·x + η₁·j₁ - target = 0,
		// and the constant term is negative here.
		lin := float64(p.Efficiency) + slope*float64(p.CurrentDensity)
		c0 := float64(p.Efficiency)*float64(p.CurrentDensity) - target
		x, ok := smallestRoot(slope, lin, c0)
		if ok && x <= float64(q.CurrentDensity-p.CurrentDensity) {
			j = float64(p.CurrentDensity) + x
			return j, p.Efficiency + units.Efficiency(slope*x), true
		}
	}
	j = target / float64(last.Efficiency)
	return j, last.Efficiency, j <= float64(last.CurrentDensity)
}

// smallestRoot returns the smallest root x ≥ 0 of a·x² + b·x + c with c ≤ 0,
// in the form that loses no digits.
func smallestRoot(a, b, c float64) (float64, bool) {
	if c == 0 {
		return 0, true
	}
	disc := b*b - 4*a*c
	if disc < 0 {
		return 0, false
	}
	// With c < 0: a > 0 has one positive root, a < 0 has two or none, a = 0 one
	// if b > 0. In each case the smallest is 2c/(-b - √disc) when b + √disc > 0.
	den := b + math.Sqrt(disc)
	if den <= 0 {
		return 0, false
	}
	return -2 * c / den, true
}
