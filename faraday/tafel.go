package faraday

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"

	"example.com/laydown/units"
)

// Tafel is one branch of an electrode far from equilibrium, where the reverse
// reaction no longer counts: the overpotential grows by the same step for
// every tenfold current density.
//
// The sign of the slope names the branch. A positive slope is the anodic one
// with positive overpotentials and current densities; a negative slope is the
// cathodic one (deposition) with negative ones. The logarithm is decadic.
type Tafel struct {
	Exchange units.CurrentDensity // where the line meets η = 0, > 0
	Slope    units.Voltage        // per decade; > 0 anodic, < 0 cathodic
}

// Check returns a [*units.ValueError] unless the exchange current density is
// above zero and the slope is not zero.
func (t Tafel) Check() error {
	if err := units.Positive("exchange current density", t.Exchange); err != nil {
		return err
	}
	if err := units.Finite("Tafel slope", t.Slope); err != nil {
		return err
	}
	if t.Slope == 0 {
		return &units.ValueError{Field: "Tafel slope", Value: t.Slope.String(),
			Need: "volts per decade, above zero for an anode and below zero for a cathode", Err: units.ErrOutOfRange}
	}
	return nil
}

// Overpotential returns the overpotential at a current density.
//
//	η = b·log(|j|/j0)
//
//	b   t.Slope     volts per decade, negative for a cathode
//	j   j           current density, of the sign of b [A/m²]
//	j0  t.Exchange  exchange current density, > 0 [A/m²]
//
// When αa + αc = 1 the line is within 1 % of [ButlerVolmer] where |η| is over
// 0.12 V at 25 °C. Below the exchange current density it gives an overpotential
// of the wrong sign, which means nothing.
//
// Errors: a [*units.ValueError] for a field out of range, a current density of
// zero or of the other branch's sign.
//
// Source: [IUPACKinetics2014].
func (t Tafel) Overpotential(j units.CurrentDensity) (units.Voltage, error) {
	if err := t.checkCurrent(j); err != nil {
		return 0, err
	}
	y := math.Abs(float64(j)) / float64(t.Exchange)
	log := math.Log10(y)
	if y == 0 || y > math.MaxFloat64 { // the quotient has no float64, its logarithm has
		log = math.Log10(math.Abs(float64(j))) - math.Log10(float64(t.Exchange))
	}
	return finite("overpotential", units.Voltage(float64(t.Slope)*log))
}

// CurrentDensity returns the current density at an overpotential, of the sign
// of the slope: the inverse of [Tafel.Overpotential].
//
//	|j| = j0·10^(η/b)
//
//	η   eta         overpotential, of the sign of b [V]
//	b   t.Slope     volts per decade, negative for a cathode
//	j0  t.Exchange  exchange current density, > 0 [A/m²]
//
// For where it holds see [Tafel.Overpotential].
//
// Errors: a [*units.ValueError] for a field out of range, or an overpotential
// that is not finite or so large that the current density has no float64.
//
// Source: [IUPACKinetics2014].
func (t Tafel) CurrentDensity(eta units.Voltage) (units.CurrentDensity, error) {
	if err := t.Check(); err != nil {
		return 0, err
	}
	if err := units.Finite("overpotential", eta); err != nil {
		return 0, err
	}
	j := float64(t.Exchange) * math.Pow(10, float64(eta)/float64(t.Slope))
	if j-j != 0 {
		return 0, tooFar(eta)
	}
	return units.CurrentDensity(math.Copysign(j, float64(t.Slope))), nil
}

// Resistance returns how fast the overpotential grows with the current
// density, as the Wagner number wants it.
//
//	r = dη/dj = |b| / (ln 10·|j|)
//
//	b  t.Slope  volts per decade
//	j  j        current density, of the sign of b [A/m²]
//
// Errors: those of [Tafel.Overpotential].
//
// Source: [IUPACKinetics2014], its derivative.
func (t Tafel) Resistance(j units.CurrentDensity) (units.AreaResistance, error) {
	if err := t.checkCurrent(j); err != nil {
		return 0, err
	}
	return finite("area resistance",
		units.AreaResistance(math.Abs(float64(t.Slope))/math.Ln10/math.Abs(float64(j))))
}

func (t Tafel) checkCurrent(j units.CurrentDensity) error {
	if err := t.Check(); err != nil {
		return err
	}
	if err := units.Finite("current density", j); err != nil {
		return err
	}
	if j == 0 || (j > 0) != (t.Slope > 0) {
		return &units.ValueError{Field: "current density", Value: j.String(),
			Need: "one of the sign of the Tafel slope: above zero for an anode, below zero for a cathode",
			Err:  units.ErrOutOfRange}
	}
	return nil
}

// TafelSlope returns the size of the Tafel slope, in volts per decade, that
// belongs to a transfer coefficient. Give it a minus sign for a cathode.
//
//	b = ln 10·R·T / (α·F)
//
//	α  alpha        transfer coefficient, 0 < α ≤ 10
//	T  temperature  > 0 [K]
//	R, F            gas and Faraday constants (exact)
//
// 118.3 mV for α = 0.5 at 25 °C. The number of electrons does not enter.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [IUPACKinetics2014].
func TafelSlope(alpha float64, temperature units.Temperature) (units.Voltage, error) {
	if err := checkTransfer("transfer coefficient", alpha); err != nil {
		return 0, err
	}
	s, err := NernstSlope(temperature)
	if err != nil {
		return 0, err
	}
	return finite("Tafel slope", units.Voltage(float64(s)/alpha))
}

// TransferCoefficient returns the transfer coefficient that belongs to a Tafel
// slope: the anodic one for a positive slope, the cathodic one for a negative.
//
//	α = ln 10·R·T / (|b|·F)
//
//	b  slope        volts per decade, not 0
//	T  temperature  > 0 [K]
//	R, F            gas and Faraday constants (exact)
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [IUPACKinetics2014] (the definition of the coefficient).
func TransferCoefficient(slope units.Voltage, temperature units.Temperature) (float64, error) {
	if err := (Tafel{Exchange: 1, Slope: slope}).Check(); err != nil {
		return 0, err
	}
	s, err := NernstSlope(temperature)
	if err != nil {
		return 0, err
	}
	alpha, err := finite("transfer coefficient", units.Ratio(float64(s)/math.Abs(float64(slope))))
	return float64(alpha), err
}

// A TafelPoint is one measured point of a branch: both anodic positive, both
// cathodic negative.
type TafelPoint struct {
	Overpotential  units.Voltage
	CurrentDensity units.CurrentDensity
}

// A TafelLine is a fitted branch with the goodness of the fit.
type TafelLine struct {
	Tafel
	Points   int
	RSquared float64 // share of the variance of log|j| that the line explains; 1 is perfect
	Residual float64 // standard deviation of log|j| about the line, in decades
}

// TafelFit fits a straight line to log|j| over η by least squares and returns
// the branch it stands for.
//
//	log|j| = log j0 + η/b
//
//	η   Overpotential   of each point [V]
//	j   CurrentDensity  of each point [A/m²]
//	b                   Tafel slope, volts per decade
//	j0                  exchange current density [A/m²]
//
// The overpotential is taken as set and the current as measured; all points
// weigh the same. At least three points of one branch, far enough from
// equilibrium (0.12 V, see [Tafel.Overpotential]) and well below the limiting current:
// points outside bend the line while RSquared stays near 1, so look at a plot.
//
// Errors: a [*units.ValueError] for fewer than three points, a value that is
// not finite or is zero, points of both branches, overpotentials that are all
// the same, or a current that does not rise with the overpotential.
//
// Source: [IUPACKinetics2014] (the line); [Definition] (least squares).
func TafelFit(points []TafelPoint) (TafelLine, error) {
	if len(points) < 3 {
		return TafelLine{}, &units.ValueError{Field: "points", Value: fmt.Sprint(len(points)),
			Need: "three or more; a line through two always fits", Err: units.ErrOutOfRange}
	}
	x, y := make([]float64, len(points)), make([]float64, len(points))
	lo, hi := math.Inf(1), math.Inf(-1)
	for i, p := range points {
		if err := checkTafelPoint(i, p, points[0]); err != nil {
			return TafelLine{}, err
		}
		x[i], y[i] = float64(p.Overpotential), math.Log10(math.Abs(float64(p.CurrentDensity)))
		lo, hi = min(lo, x[i]), max(hi, x[i])
	}
	if lo == hi {
		return TafelLine{}, &units.ValueError{Field: "overpotentials", Value: "all " + points[0].Overpotential.String(),
			Need: "two or more different ones", Err: units.ErrInconsistent}
	}
	intercept, slope := stat.LinearRegression(x, y, nil, false)
	fit := TafelLine{Points: len(points),
		Tafel: Tafel{Exchange: units.CurrentDensity(math.Pow(10, intercept)), Slope: units.Voltage(1 / slope)}}
	if !(slope*x[0] > 0) || fit.Tafel.Check() != nil {
		return TafelLine{}, &units.ValueError{Field: "Tafel slope", Value: fit.Slope.String(),
			Need: "points whose current density rises with the overpotential", Err: units.ErrInconsistent}
	}
	fit.RSquared = stat.RSquared(x, y, nil, intercept, slope)
	var sum float64
	for i := range x {
		d := y[i] - intercept - slope*x[i]
		sum += d * d
	}
	fit.Residual = math.Sqrt(sum / float64(len(x)-2))
	if _, err := finite("residual", units.Ratio(fit.Residual+fit.RSquared)); err != nil {
		return TafelLine{}, err
	}
	return fit, nil
}

// checkTafelPoint checks one point; first says which branch it has to be on.
func checkTafelPoint(i int, p, first TafelPoint) error {
	field := numbered("overpotential of point", i)
	if err := units.Finite(field, p.Overpotential); err != nil {
		return err
	}
	need := "one of the sign of the first point, not zero"
	if p.Overpotential == 0 || (p.Overpotential > 0) != (first.Overpotential > 0) {
		return &units.ValueError{Field: field, Value: p.Overpotential.String(), Need: need, Err: units.ErrInconsistent}
	}
	field = numbered("current density of point", i)
	if err := units.Finite(field, p.CurrentDensity); err != nil {
		return err
	}
	if p.CurrentDensity == 0 || (p.CurrentDensity > 0) != (p.Overpotential > 0) {
		return &units.ValueError{Field: field, Value: p.CurrentDensity.String(),
			Need: "one of the sign of its overpotential, not zero", Err: units.ErrInconsistent}
	}
	return nil
}
