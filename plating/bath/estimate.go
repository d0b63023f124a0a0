package bath

import (
	"errors"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Band is a computed figure with how far it may be off: from the lowest to
// the highest value that the bath's ranges allow, and the one at their middle.
type Band[Q units.Quantity] struct {
	Low     Q `json:"low"`
	Typical Q `json:"typical"`
	High    Q `json:"high"`
}

// String writes "4.2 (3.1 to 6.0)", or one value when the band is a point.
func (b Band[Q]) String() string {
	if b.Low == b.High {
		return b.Typical.String()
	}
	return b.Typical.String() + " (" + b.Low.String() + " to " + b.High.String() + ")"
}

// A Span is an estimate that carries the bath's ranges to its result.
type Span struct {
	Layer   plating.Layer         // as computed at the middle
	Typical plating.LayerEstimate // at the middle of efficiency and density

	Efficiency     Band[units.Efficiency]
	CurrentDensity Band[units.CurrentDensity]
	Current        Band[units.Current]
	Time           Band[units.Duration]
	Average        Band[units.Length] // thickness
	Thinnest       Band[units.Length]
	Mass           Band[units.Mass] // of the deposit
	FineMass       Band[units.Mass] // of the counted metal

	Confidence origin.Seen // the weakest of Used
	Used       []Used      // the figures of the bath that went in
}

// EstimateRange estimates a layer in a bath with everything its ranges allow.
// It computes the layer by [plating.Estimate] at both ends of the efficiency
// and both ends of the deposit's density, and at their middle.
//
//	t = ρ·s/(ε·η·j)
//	s = ε·η·j·t/ρ
//
//	η  efficiency  low, middle and high end of the bath's band, 0 < η ≤ 1
//	ρ  density     low, middle and high end [kg/m³]
//	j  current density [A/m²], t time [s], s average thickness [m], ε equivalent [kg/C]
//
// Time, thickness and mass rise or fall steadily with η and with ρ, so the
// four corners hold the lowest and the highest value. Typical is the middle of
// the bath's ranges, not a measured mean. Uncertainty of area, current and
// thinnest spot is not in the band.
//
// The layer's Bath is filled from b at the point. When fewer than two of
// minimum thickness, current density and time are given, the current density is the
// point's, or the middle of the bath's range; then its range counts towards
// the confidence too.
//
// A point outside the bath's ranges gives the span together with a
// [*units.RangeError].
//
// Errors: a [*units.ValueError] as [Bath.At] and [plating.Estimate].
//
// Source: [OpenStaxChem2e] section 17.7, [Derived].
func EstimateRange(l plating.Layer, b Bath, p OperatingPoint) (Span, error) {
	if err := b.Check(); err != nil {
		return Span{}, err
	}
	// Two of minimum thickness, time and current density fix a layer. With fewer the bath's
	// usual current density steps in; the estimate then rests on that range too, and the list of
	// figures says so.
	fromRange := false
	if l.CurrentDensity == 0 && (l.MinThickness == 0 || l.Time == 0) {
		fromRange = p.CurrentDensity == 0
		l.CurrentDensity = p.complete(&b).CurrentDensity
	}
	if l.CurrentDensity != 0 {
		p.CurrentDensity = l.CurrentDensity
	}
	bath, outside := b.At(p)
	var ranged *units.RangeError
	if outside != nil && !errors.As(outside, &ranged) {
		return Span{}, outside
	}
	l.Bath = bath
	if l.Name == "" {
		l.Name = b.Name
	}
	r, err := plating.Estimate(&l)
	if err != nil {
		return Span{}, err
	}
	s := Span{Layer: l, Typical: r}
	s.start(r)
	full := p.complete(&b)
	// The four corners. Each is a full estimate and no scaling of the middle, so that rules for
	// what lies below, areas and curves hold in each.
	for _, pick := range []func(low, high units.Efficiency) units.Efficiency{lower, upper} {
		for _, rho := range []units.Density{b.Density.Low, b.Density.High} {
			corner := l
			if corner.Bath, err = b.with(full, rho, pick); err != nil {
				return Span{}, err
			}
			if r, err = plating.Estimate(&corner); err != nil {
				return Span{}, err
			}
			s.stretch(r)
		}
	}
	s.Used = b.usedIn(full, fromRange)
	seen := make([]origin.Seen, len(s.Used))
	for i, u := range s.Used {
		seen[i] = u.Seen
	}
	s.Confidence = origin.Weakest(seen...)
	return s, outside
}

// usedIn lists the figures that an estimate takes.
func (b *Bath) usedIn(p OperatingPoint, fromRange bool) []Used {
	eff, _ := b.EfficiencyAt(p)
	all := append(used("current efficiency", eff), used("density of the deposit", b.Density)...)
	if len(b.Deposit) != 0 {
		all = append(all, usedWords("composition of the deposit", b.Composition)...)
	}
	if fromRange {
		all = append(all, used("current density", b.CurrentDensity)...)
	}
	return all
}

func point[Q units.Quantity](v Q) Band[Q] { return Band[Q]{v, v, v} }

// stretch widens a band to hold v; the typical value stays.
func (b *Band[Q]) stretch(v Q) { b.Low, b.High = min(b.Low, v), max(b.High, v) }

// start makes every band a point at the typical estimate, and stretch widens all of them by
// one corner.
func (s *Span) start(r plating.LayerEstimate) {
	s.Efficiency, s.CurrentDensity, s.Current, s.Time = point(r.Efficiency), point(r.CurrentDensity), point(r.Current),
		point(r.Time)
	s.Average, s.Thinnest, s.Mass, s.FineMass = point(r.Average), point(r.Thinnest), point(r.Mass), point(r.FineMass)
}

func (s *Span) stretch(r plating.LayerEstimate) {
	s.Efficiency.stretch(r.Efficiency)
	s.CurrentDensity.stretch(r.CurrentDensity)
	s.Current.stretch(r.Current)
	s.Time.stretch(r.Time)
	s.Average.stretch(r.Average)
	s.Thinnest.stretch(r.Thinnest)
	s.Mass.stretch(r.Mass)
	s.FineMass.stretch(r.FineMass)
}
