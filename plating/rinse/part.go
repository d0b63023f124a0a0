package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"example.com/laydown/units/working"
)

// A Residue is what dries on the work after the last rinse.
type Residue struct {
	Mass    units.Mass        // on the whole load
	PerArea units.MassPerArea // spread evenly; stains gather where the last drops hang
}

// LeftOnPart returns what the film of the last rinse leaves on the work.
//
//	m = C·V, m_A = m/A
//
//	C  content  of the last rinse, ≥ 0 [kg/m³]
//	V  film     volume of rinse water on the load, ≥ 0 [m³]
//	A  area     wetted area, > 0 [m²]
//
// It counts what came from the bath; hard rinse water leaves salts of its own.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Definition].
func LeftOnPart(content units.MassConcentration, film units.Volume, area units.Area) (Residue, error) {
	if err := first(units.NonNegative("content of the last rinse", content), units.NonNegative("water on the load", film),
		units.Positive("area of the load", area)); err != nil {
		return Residue{}, err
	}
	r := Residue{Mass: content.Of(film)}
	r.PerArea = units.MassPerArea(float64(r.Mass) / float64(area))
	if !numbers(float64(r.Mass), float64(r.PerArea)) {
		return Residue{}, tooFar("residue")
	}
	return r, nil
}

// LeftOnPartWorking shows how [LeftOnPart] computes, with the same errors.
func LeftOnPartWorking(content units.MassConcentration, film units.Volume, area units.Area) ([]working.Step, error) {
	r, err := LeftOnPart(content, film, area)
	if err != nil {
		return nil, err
	}
	m := working.Of("m", "left on the load", r.Mass)
	return []working.Step{
		{Formula: "m = C·V", Source: "Definition", Result: m, Terms: []working.Term{working.Of("C",
			"content of the last rinse", content), working.Of("V", "water on the load", film)}},
		{Formula: "m_A = m/A", Source: "Definition", Result: working.Of("m_A", "left on the area", r.PerArea),
			Terms: []working.Term{m, working.Of("A", "area of the load", area)}},
	}, nil
}

// A Spray washes the film on the work with fresh water that runs off at once.
type Spray struct {
	Film   units.Volume // liquid on the load, > 0
	Water  units.Volume // fresh water onto the load, ≥ 0
	Mixing units.Ratio  // share of the water that mixes with the film, above 0 and at most 1: to be measured
}

// Ratio returns how many times weaker the film is after the spray.
//
//	C₀/C = exp(e·w/d)
//
//	e  Mixing  0 < e ≤ 1
//	w  Water   ≥ 0 [m³]
//	d  Film    > 0 [m³]
//
// A film that is mixed through and keeps its volume while water passes. Water
// that runs over the film, beside the work or never into a hollow does not
// count: that is e, which depends on nozzles and parts and must be measured,
// with a conductivity meter on the runoff or on the next rinse. Over the bath,
// no more water may be sprayed than the bath evaporates.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func (s Spray) Ratio() (units.Ratio, error) {
	if err := first(units.Positive("film on the load", s.Film), units.NonNegative("spray water", s.Water),
		units.PositiveFraction("mixing share of the spray", s.Mixing)); err != nil {
		return 0, err
	}
	r := math.Exp(float64(s.Mixing) * float64(s.Water) / float64(s.Film))
	if !numbers(r) {
		return 0, tooFar("rinse ratio of the spray")
	}
	return units.Ratio(r), nil
}

// Working shows how [Spray.Ratio] computes, with the same errors.
func (s Spray) Working() ([]working.Step, error) {
	r, err := s.Ratio()
	if err != nil {
		return nil, err
	}
	return []working.Step{{Formula: "R = exp(e·w/d)", Source: "Derived", Result: working.Number("R",
		"film before over film after", float64(r)),
		Terms: []working.Term{working.Number("e", "share that mixes", float64(s.Mixing)), working.Of("w", "water", s.Water),
			working.Of("d", "film", s.Film)}}}, nil
}

// SprayWaterFor returns the water that a spray needs for a ratio.
//
//	w = d·ln(R)/e
//
//	R  ratio   1 or more
//	d  film    > 0 [m³]
//	e  mixing  0 < e ≤ 1
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func SprayWaterFor(ratio units.Ratio, film units.Volume, mixing units.Ratio) (units.Volume, error) {
	if err := first(units.Positive("rinse ratio", ratio), units.Positive("film on the load", film),
		units.PositiveFraction("mixing share of the spray", mixing)); err != nil {
		return 0, err
	}
	if ratio < 1 {
		return 0, bad("rinse ratio", ratio.String(), "1 or more: content before over content after", units.ErrOutOfRange)
	}
	w := units.Volume(float64(film) * math.Log(float64(ratio)) / float64(mixing))
	return finite("spray water", w)
}

// A LastWaterLimit is a published content that a final rinse should not pass.
type LastWaterLimit struct {
	Of      string // what is counted
	Most    units.MassConcentration
	Printed string
	Seen    origin.Seen
	Source  string
}

// Limits returns the generally accepted contents of a final rinse.
//
// Source: [RinsingLessWater].
func Limits() []LastWaterLimit {
	return []LastWaterLimit{
		{"metal or cyanide", 0.005 * units.OuncePerUSGallon, "0.005 oz/gal", origin.Published, "RinsingLessWater"},
		{"chromium", 0.002 * units.OuncePerUSGallon, "0.002 oz/gal", origin.Published, "RinsingLessWater"},
	}
}

// A Criterion is a published range of rinse ratios behind a process.
type Criterion struct {
	After     string
	Low, High units.Ratio
	Seen      origin.Seen
	Source    string
}

// Criteria returns the rinse ratios that a research report gathered from
// publications and shops. Behind gold none was found; nickel is the nearest.
//
// Source: [RinseCriteria].
func Criteria() []Criterion {
	const key = "RinseCriteria"
	return []Criterion{
		{"hot degreasing", 35, 100, origin.Published, key},
		{"electrolytic degreasing", 100, 200, origin.Published, key},
		{"activating, pickling", 100, 200, origin.Published, key},
		{"pickling of aluminium", 500, 1000, origin.Published, key},
		{"anodising", 2000, 4000, origin.Published, key},
		{"copper, zinc, tin", 1000, 5000, origin.Published, key},
		{"blackening, phosphating, chromating", 2000, 5000, origin.Published, key},
		{"nickel", 3000, 10000, origin.Published, key},
	}
}
