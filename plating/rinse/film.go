package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// gravity is the standard acceleration of free fall, exact by definition [m/s²].
const gravity = 9.80665

// filmCoefficient is the number of the film law. The tests find it again by
// integrating the equation of the meniscus.
const filmCoefficient = 0.9458

// A Withdrawal is a flat plate drawn straight up out of a liquid.
type Withdrawal struct {
	Speed     units.Speed    // > 0
	Viscosity Viscosity      // > 0
	Density   units.Density  // > 0
	Tension   SurfaceTension // > 0
}

// A Film is what clings to one face of a plate as it leaves the liquid, before
// it drains.
type Film struct {
	Depth     units.Length
	Capillary units.Ratio // Ca: viscous pull over surface tension
	Reynolds  units.Ratio // inertia over viscosity in the film; the law wants it small
}

// Film returns the depth of liquid that a plate takes along.
//
//	h = 0.9458·Ca^(2/3)·√(σ/(ρ·g)), Ca = μ·U/σ
//
//	μ  Viscosity  > 0 [Pa·s]
//	U  Speed      > 0 [m/s]
//	σ  Tension    > 0 [N/m]
//	ρ  Density    > 0 [kg/m³]
//	g             9.80665 m/s²
//
// The law of slow withdrawal: a clean flat plate, no inertia, Ca far below
// one. Depth grows with speed and viscosity to the power 2/3. In a quick hand
// lift of a watery bath the film's Reynolds number passes one and the law is a
// guide to the order only. The whole volume is depth times both faces.
//
// Errors: a [*units.ValueError] for a value out of range; with the value, a
// [*units.RangeError] for Ca above 0.01, which is where "far below one" is put
// here, from memory.
//
// Source: [FilmLaw]; its number [Derived].
func (w Withdrawal) Film() (Film, error) {
	if err := first(units.Positive("withdrawal speed", w.Speed), units.Positive("viscosity", w.Viscosity),
		units.Positive("density", w.Density), units.Positive("surface tension", w.Tension)); err != nil {
		return Film{}, err
	}
	ca := float64(w.Viscosity) * float64(w.Speed) / float64(w.Tension)
	h := filmCoefficient * math.Pow(ca, 2.0/3) * math.Sqrt(float64(w.Tension)/(float64(w.Density)*gravity))
	re := float64(w.Density) * float64(w.Speed) * h / float64(w.Viscosity)
	f := Film{Depth: units.Length(h), Capillary: units.Ratio(ca), Reynolds: units.Ratio(re)}
	if !numbers(h, ca, re) || h == 0 {
		return Film{}, tooFar("film")
	}
	if ca > 0.01 {
		return f, &units.RangeError{Field: "capillary number", Value: f.Capillary.String(), Low: "0",
			High: "0.01 (from memory)", Source: "FilmLaw"}
	}
	return f, nil
}

// FilmWorking shows how [Withdrawal.Film] computes, with the same errors.
func (w Withdrawal) FilmWorking() ([]working.Step, error) {
	f, err := w.Film()
	if err != nil {
		return nil, err
	}
	mu, u, sigma, rho := working.Of("μ", "viscosity", w.Viscosity), working.Of("U", "withdrawal speed", w.Speed),
		working.Of("σ", "surface tension", w.Tension), working.Of("ρ", "density", w.Density)
	ca := working.Of("Ca", "capillary number", f.Capillary)
	return []working.Step{
		{Formula: "Ca = μ·U/σ", Terms: []working.Term{mu, u, sigma}, Result: ca, Source: "FilmLaw"},
		{Formula: "h = 0.9458·Ca^(2/3)·√(σ/(ρ·g))", Terms: []working.Term{ca, sigma, rho, working.Constant("g", "free fall",
			gravity, "m/s²")},
			Result: working.Of("h", "depth of the film", f.Depth), Source: "FilmLaw", Note: "On one face, before draining."},
	}, nil
}

// A Hanging is a flat plate that hangs upright and drains.
type Hanging struct {
	Height    units.Length   // of the plate, > 0
	Time      units.Duration // since it left the liquid, > 0
	Viscosity Viscosity      // > 0
	Density   units.Density  // > 0
}

// DrainedFilm returns the mean depth of liquid left on one face of a plate
// that drains by its weight.
//
//	h = (2/3)·√(μ·L/(ρ·g·t))
//
//	μ  Viscosity  > 0 [Pa·s]
//	L  Height     > 0 [m]
//	ρ  Density    > 0 [kg/m³]
//	t  Time       > 0 [s]
//	g             9.80665 m/s²
//
// At a distance z below the top edge the film is √(μz/(ρgt)) deep. It holds
// once the plate has forgotten the film it started with, so the lesser of this
// and [Withdrawal.Film] is the better guess. The bead at the lower edge, which
// surface tension holds, comes on top. To halve what is left takes four times
// the time.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [DrainingPlate1930], [Derived].
func (p Hanging) DrainedFilm() (units.Length, error) {
	if err := first(units.Positive("height", p.Height), units.Positive("drain time", p.Time),
		units.Positive("viscosity", p.Viscosity), units.Positive("density", p.Density)); err != nil {
		return 0, err
	}
	h := units.Length(2.0 / 3 * math.Sqrt(float64(p.Viscosity)*float64(p.Height)/(float64(p.Density)*gravity*float64(
		p.Time))))
	if !numbers(h) {
		return 0, tooFar("film")
	}
	return h, nil
}

// DrainedFilmWorking shows how [Hanging.DrainedFilm] computes, with the same errors.
func (p Hanging) DrainedFilmWorking() ([]working.Step, error) {
	h, err := p.DrainedFilm()
	if err != nil {
		return nil, err
	}
	return []working.Step{{Formula: "h = (2/3)·√(μ·L/(ρ·g·t))", Source: "DrainingPlate1930",
		Terms: []working.Term{working.Of("μ", "viscosity", p.Viscosity), working.Of("L", "height", p.Height),
			working.Of("ρ", "density", p.Density),
			working.Constant("g", "free fall", gravity, "m/s²"), working.Of("t", "drain time", p.Time)},
		Result: working.Of("h", "mean depth left on one face", h)}}, nil
}
