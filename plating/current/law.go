package current

import (
	"fmt"
	"math"

	"example.com/laydown/faraday"
	"example.com/laydown/units"
)

// A Model names a rate law.
type Model uint8

// The rate laws. Primary has no kinetics: the solution takes the metal's potential.
const (
	Primary Model = iota
	Linear
	Tafel
	ButlerVolmer
)

// String returns the model in words.
func (m Model) String() string {
	switch m {
	case Primary:
		return "primary"
	case Linear:
		return "linear"
	case Tafel:
		return "Tafel"
	case ButlerVolmer:
		return "Butler-Volmer"
	}
	return "unknown model"
}

// A Law is a rate law with its constants. The zero Law is Primary.
type Law struct {
	Model      Model
	Resistance units.AreaResistance // of Linear: dη/dj, > 0

	// Of Tafel and ButlerVolmer.
	Exchange         units.CurrentDensity // exchange current density, > 0
	Anodic, Cathodic float64              // transfer coefficients, 0 < α ≤ 4; Tafel uses the one of its Side
	Temperature      units.Temperature    // > 0
	Side             Side                 // of Tafel
}

// A Side says on which side of equilibrium a Tafel law holds.
type Side uint8

// The two sides.
const (
	CathodicSide Side = iota
	AnodicSide
)

// LinearLaw returns linear polarisation with slope dη/dj.
func LinearLaw(r units.AreaResistance) Law { return Law{Model: Linear, Resistance: r} }

// TafelCathode returns a cathodic Tafel law. Its slope is RT/(αF) for a factor e.
func TafelCathode(exchange units.CurrentDensity, alpha float64, temperature units.Temperature) Law {
	return Law{Model: Tafel, Exchange: exchange, Cathodic: alpha, Temperature: temperature}
}

// Check returns a [*units.ValueError] for the first constant out of range: an
// exchange current density from 1e-30 to 1e12 A/m², a temperature from 100 to
// 2000 K, a resistance from 1e-15 to 1e9 Ω·m², transfer coefficients above 0 and
// at most 4. Within them every result is finite.
func (l Law) Check() error {
	switch l.Model {
	case Primary:
		return nil
	case Linear:
		if err := units.Positive("polarisation resistance", l.Resistance); err != nil {
			return err
		}
		if l.Resistance < 1e-15 || l.Resistance > 1e9 {
			return &units.ValueError{Field: "polarisation resistance", Value: l.Resistance.String(),
				Need: "1e-15 Ω·m² to 1e9 Ω·m²; leave the law out for none", Err: units.ErrOutOfRange}
		}
		return nil
	case Tafel, ButlerVolmer:
		if err := units.Positive("exchange current density", l.Exchange); err != nil {
			return err
		}
		if l.Exchange < 1e-30 || l.Exchange > 1e12 {
			return &units.ValueError{Field: "exchange current density", Value: l.Exchange.String(),
				Need: "1e-30 A/m² to 1e12 A/m²", Err: units.ErrOutOfRange}
		}
		if err := units.Positive("temperature", l.Temperature); err != nil {
			return err
		}
		if l.Temperature < 100 || l.Temperature > 2000 {
			return &units.ValueError{Field: "temperature", Value: l.Temperature.String(), Need: "100 K to 2000 K",
				Err: units.ErrOutOfRange}
		}
		if l.Model == ButlerVolmer || l.Side == AnodicSide {
			if err := coefficient("anodic", l.Anodic); err != nil {
				return err
			}
		}
		if l.Model == ButlerVolmer || l.Side == CathodicSide {
			return coefficient("cathodic", l.Cathodic)
		}
		return nil
	}
	return &units.ValueError{Field: "kinetics", Value: fmt.Sprint(uint8(l.Model)), Need: "a known model",
		Err: units.ErrOutOfRange}
}

// CheckOn returns what keeps a surface of a kind from having the law. The zero Law
// suits every kind.
//
// Errors: those of [Law.Check] with the surface's name; a [*units.ValueError] for a law
// on an insulator, which no current crosses, and for a Tafel law where current may run
// the other way: on the wrong electrode or on floating metal.
func (l Law) CheckOn(k Kind, name string) error {
	if err := k.Check(name); err != nil {
		return err
	}
	no := func(need string) error {
		return &units.ValueError{Field: "rate law of " + units.Clip(name), Value: l.Model.String(), Need: need,
			Err: units.ErrInconsistent}
	}
	if k == Insulator {
		if l != (Law{}) {
			return no("none on an insulator")
		}
		return nil
	}
	if err := l.Check(); err != nil {
		return fmt.Errorf("%s: %w", units.Clip(name), err)
	}
	switch {
	case l.Model != Tafel:
		return nil
	case k == Floating:
		return no("a law of both signs on floating metal, such as Butler-Volmer")
	case (k == Cathode) != (l.Side == CathodicSide):
		return no("a Tafel law of the side that the " + k.String() + " works on, or Butler-Volmer")
	}
	return nil
}

func coefficient(which string, a float64) error {
	if a > 0 && a <= 4 {
		return nil
	}
	return &units.ValueError{Field: which + " transfer coefficient", Value: fmt.Sprint(a),
		Need: "a value above 0 and at most 4", Err: units.ErrOutOfRange}
}

// Volt returns RT/F, the scale of the exponents [V].
func (l Law) Volt() float64 {
	return faraday.GasConstant * float64(l.Temperature) / faraday.FaradayConstant
}

// Current returns the anodic current density [A/m²] at an overpotential [V]
// and its slope against the overpotential [S/m²].
//
//	linear         j = η/ρ
//	Tafel          j = -j₀·exp(-α_c·η/v) or j₀·exp(α_a·η/v)
//	Butler-Volmer  j = j₀·(exp(α_a·η/v) - exp(-α_c·η/v))
//
//	ρ  Resistance  [Ω·m²]
//	v              RT/F, 25.69 mV at 25 °C
//
// The law must be one that [Law.Check] accepts, and not Primary, for which the
// slope is infinite: it returns NaN. Beyond exponents of 640 the result is held at
// that of 640, so that it stays finite.
//
// Source: [IUPACKinetics2014].
func (l Law) Current(eta float64) (j, slope float64) {
	switch l.Model {
	case Linear:
		r := float64(l.Resistance)
		return eta / r, 1 / r
	case Tafel:
		v := l.Volt()
		if l.Side == AnodicSide {
			j = float64(l.Exchange) * exp(l.Anodic*eta/v)
			return j, j * l.Anodic / v
		}
		j = float64(l.Exchange) * exp(-l.Cathodic*eta/v)
		return -j, j * l.Cathodic / v
	case ButlerVolmer:
		v := l.Volt()
		up, down := exp(l.Anodic*eta/v), exp(-l.Cathodic*eta/v)
		j0 := float64(l.Exchange)
		j = j0 * (up - down)
		// near equilibrium the difference loses digits
		if a, c := l.Anodic*eta/v, l.Cathodic*eta/v; math.Abs(a)+math.Abs(c) < 1 {
			j = j0 * (math.Expm1(a) - math.Expm1(-c))
		}
		return j, j0 * (l.Anodic*up + l.Cathodic*down) / v
	}
	return math.NaN(), math.NaN()
}

// Overpotential returns the overpotential [V] that drives an anodic current
// density [A/m²], the inverse of [Law.Current]; 0 for Primary.
//
// Errors: a [*units.ValueError] for a current density that is not finite, or
// of the wrong sign for a Tafel law.
//
// Source: [IUPACKinetics2014].
func (l Law) Overpotential(j float64) (float64, error) {
	if err := units.Finite("current density", units.CurrentDensity(j)); err != nil {
		return 0, err
	}
	if err := l.Check(); err != nil {
		return 0, err
	}
	switch l.Model {
	case Linear:
		return j * float64(l.Resistance), nil
	case Tafel:
		sign, alpha := -1.0, l.Cathodic
		if l.Side == AnodicSide {
			sign, alpha = 1, l.Anodic
		}
		if sign*j <= 0 {
			return 0, &units.ValueError{Field: "current density", Value: units.CurrentDensity(j).String(),
				Need: "one of the side that the Tafel law describes", Err: units.ErrOutOfRange}
		}
		return sign * l.Volt() / alpha * math.Log(math.Abs(j)/float64(l.Exchange)), nil
	case ButlerVolmer:
		v, err := faraday.ButlerVolmer{Exchange: l.Exchange, Anodic: l.Anodic, Cathodic: l.Cathodic,
			Temperature: l.Temperature}.
			Overpotential(units.CurrentDensity(j))
		return float64(v), err
	}
	return 0, nil
}

// exp is the exponential, held finite.
func exp(x float64) float64 { return math.Exp(math.Min(x, 640)) }
