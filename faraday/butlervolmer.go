package faraday

import (
	"math"
	"strconv"

	"example.com/laydown/units"
)

// maxTransfer bounds a transfer coefficient. A single step has 0 to 1, a chain
// of steps up to the number of electrons; a percentage slips in as 50.
const maxTransfer = 10

// ButlerVolmer is an electrode whose current is held back by the transfer of
// charge alone: stirred so well that the solution at its face is that of the
// bulk.
//
// Signs are those of electrochemistry: an anodic current (metal dissolves) and
// the overpotential that drives it are positive, a cathodic one (metal
// deposits) negative. The overpotential is the potential of the electrode less
// its equilibrium potential. Coefficients are without dimension and hold the
// whole dependence on potential: the number of electrons does not stand beside
// them in the exponent.
type ButlerVolmer struct {
	Exchange    units.CurrentDensity // exchange current density, > 0
	Anodic      float64              // anodic transfer coefficient, 0 < αa ≤ 10, often 0.5
	Cathodic    float64              // cathodic transfer coefficient, 0 < αc ≤ 10, often 0.5
	Temperature units.Temperature    // > 0
}

// Check returns a [*units.ValueError] unless all fields are in range.
func (b ButlerVolmer) Check() error {
	if err := units.Positive("exchange current density", b.Exchange); err != nil {
		return err
	}
	if err := checkTransfer("anodic transfer coefficient", b.Anodic); err != nil {
		return err
	}
	if err := checkTransfer("cathodic transfer coefficient", b.Cathodic); err != nil {
		return err
	}
	return units.Positive("temperature", b.Temperature)
}

func checkTransfer(field string, alpha float64) error {
	if alpha > 0 && alpha <= maxTransfer {
		return nil
	}
	e := &units.ValueError{Field: field, Value: strconv.FormatFloat(alpha, 'g', 6, 64),
		Need: "a number above 0 and at most 10, such as 0.5", Err: units.ErrOutOfRange}
	switch {
	case alpha-alpha != 0:
		e.Err = units.ErrNotFinite
	case alpha <= 0:
		e.Err = units.ErrNotPositive
	}
	return e
}

// CurrentDensity returns the current density at an overpotential.
//
//	j = j0·(exp(αa·F·η/(R·T)) - exp(-αc·F·η/(R·T)))
//
//	η   eta            overpotential, anodic positive [V]
//	j0  b.Exchange     exchange current density, > 0 [A/m²]
//	αa  b.Anodic       anodic transfer coefficient
//	αc  b.Cathodic     cathodic transfer coefficient
//	T   b.Temperature  > 0 [K]
//
// Anodic positive, cathodic negative. It holds well below the limiting current
// only; beyond, the solution at the face is poorer than the bulk.
//
// Errors: a [*units.ValueError] for a field out of range, or an overpotential
// that is not finite or so large that the current density has no float64 (some
// 18 V for a coefficient of 1 at 25 °C).
//
// Source: [IUPACKinetics2014].
func (b ButlerVolmer) CurrentDensity(eta units.Voltage) (units.CurrentDensity, error) {
	a, c, err := b.exponents(eta)
	if err != nil {
		return 0, err
	}
	// expm1 keeps the digits next to equilibrium, where both are near 1.
	j := float64(b.Exchange) * (math.Expm1(a) - math.Expm1(-c))
	if j-j != 0 {
		return 0, tooFar(eta)
	}
	return units.CurrentDensity(j), nil
}

// Slope returns how fast the current density grows with the overpotential, in
// siemens per square metre.
//
//	dj/dη = j0·F/(R·T)·(αa·exp(αa·F·η/(R·T)) + αc·exp(-αc·F·η/(R·T)))
//
// with the symbols of [ButlerVolmer.CurrentDensity]. It is above zero on both
// branches. Its inverse is [ButlerVolmer.Resistance].
//
// Errors: those of [ButlerVolmer.CurrentDensity].
//
// Source: [IUPACKinetics2014], its derivative.
func (b ButlerVolmer) Slope(eta units.Voltage) (float64, error) {
	a, c, err := b.exponents(eta)
	if err != nil {
		return 0, err
	}
	s := float64(b.Exchange) / thermalVoltage(b.Temperature) * (b.Anodic*math.Exp(a) + b.Cathodic*math.Exp(-c))
	if s-s != 0 {
		return 0, tooFar(eta)
	}
	return s, nil
}

// Resistance returns the slope the other way, as the Wagner number wants it:
// how fast the overpotential grows with the current density.
//
//	r = dη/dj = 1/(dj/dη)
//
// with dj/dη of [ButlerVolmer.Slope].
//
// Errors: those of [ButlerVolmer.CurrentDensity].
//
// Source: [IUPACKinetics2014], its derivative.
func (b ButlerVolmer) Resistance(eta units.Voltage) (units.AreaResistance, error) {
	s, err := b.Slope(eta)
	if err != nil {
		return 0, err
	}
	return finite("area resistance", units.AreaResistance(1/s))
}

// PolarisationResistance returns the slope dη/dj next to equilibrium.
//
//	r = R·T / ((αa + αc)·F·j0)
//
// with the symbols of [ButlerVolmer.CurrentDensity]. The straight line η = r·j
// is within 1 % of the curve for |η| up to about 12 mV at 25 °C when both
// coefficients are 0.5; with unequal ones it bends sooner.
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [IUPACKinetics2014], for small η.
func (b ButlerVolmer) PolarisationResistance() (units.AreaResistance, error) {
	if err := b.Check(); err != nil {
		return 0, err
	}
	return finite("polarisation resistance",
		units.AreaResistance(thermalVoltage(b.Temperature)/(b.Anodic+b.Cathodic)/float64(b.Exchange)))
}

// Overpotential returns the overpotential that drives a current density: the
// inverse of [ButlerVolmer.CurrentDensity].
//
//	η = R·T/(α·F)·asinh(j/(2·j0))    for αa = αc = α
//
// with the symbols of [ButlerVolmer.CurrentDensity]. For unequal coefficients
// the equation is solved by Newton steps inside a closing bracket. Within 1e-13
// (relative) in either case.
//
// Errors: a [*units.ValueError] for a field out of range or a current density
// that is not finite.
//
// Source: [IUPACKinetics2014], solved for η.
func (b ButlerVolmer) Overpotential(j units.CurrentDensity) (units.Voltage, error) {
	if err := b.Check(); err != nil {
		return 0, err
	}
	if err := units.Finite("current density", j); err != nil {
		return 0, err
	}
	a, c, sign := b.Anodic, b.Cathodic, 1.0
	if j < 0 { // the cathodic branch is the anodic one with the coefficients exchanged
		a, c, sign = c, a, -1
	}
	x := solveButlerVolmer(a, c, math.Abs(float64(j)), float64(b.Exchange))
	return finite("overpotential", units.Voltage(sign*x*thermalVoltage(b.Temperature)))
}

// solveButlerVolmer solves exp(a·x) - exp(-c·x) = j/j0 for x ≥ 0, where j ≥ 0.
func solveButlerVolmer(a, c, j, j0 float64) float64 {
	y := j / j0
	switch {
	case y == 0 && j > 0: // the quotient underflows; the line next to zero is exact
		return j / (a + c) / j0
	case y > 1e150 || y-y != 0: // the other branch is nothing; the quotient may overflow
		return (math.Log(j) - math.Log(j0)) / a
	case a == c:
		return math.Asinh(y/2) / a
	}
	// f(x) = a·x - ln(y + exp(-c·x)) has its zero where the equation holds,
	// rises everywhere and is nearly straight: Newton takes a few steps.
	// ln(1+y)/a is too large, since exp(a·x) = y + exp(-c·x) < y + 1.
	lo, hi := 0.0, math.Log1p(y)/a
	x := min(hi, y/(a+c))
	for range 100 {
		e := math.Exp(-c * x)
		g := y + math.Expm1(-c*x)
		if c*x > math.Ln2 {
			g = (y - 1) + e // the same with fewer digits lost
		}
		f := a*x - math.Log1p(g)
		step := f / (a + c*e/(y+e))
		if math.Abs(step) <= 2e-16*x {
			return x - step
		}
		if f < 0 {
			lo = x
		} else {
			hi = x
		}
		if x -= step; !(x > lo && x < hi) {
			x = lo + (hi-lo)/2
		}
	}
	return x
}

// exponents checks the fields and eta and returns αa·F·η/(R·T) and αc·F·η/(R·T).
func (b ButlerVolmer) exponents(eta units.Voltage) (a, c float64, err error) {
	if err := b.Check(); err != nil {
		return 0, 0, err
	}
	if err := units.Finite("overpotential", eta); err != nil {
		return 0, 0, err
	}
	x := float64(eta) / thermalVoltage(b.Temperature)
	return b.Anodic * x, b.Cathodic * x, nil
}

// tooFar is the error for an overpotential whose current density overflows.
func tooFar(eta units.Voltage) error {
	return &units.ValueError{Field: "overpotential", Value: eta.String(),
		Need: "one whose current density is a finite number; a few volts at most", Err: units.ErrOutOfRange}
}
