package bath

import (
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A OperatingPoint is where a bath is run. A field left zero is taken from the middle
// of the bath's range.
type OperatingPoint struct {
	CurrentDensity units.CurrentDensity
	Temperature    units.Temperature
	Content        units.MassConcentration
	Volume         units.Volume // no middle: what depends on it is left out when not given
}

// complete fills what is left zero.
func (p OperatingPoint) complete(b *Bath) OperatingPoint {
	if p.CurrentDensity == 0 {
		p.CurrentDensity = b.CurrentDensity.Point()
	}
	if p.Temperature == 0 {
		p.Temperature = b.Temperature.Point()
	}
	if p.Content == 0 {
		p.Content = b.Content.Point()
	}
	if p.Volume == 0 {
		p.Volume = b.Volume
	}
	return p
}

// check finds what cannot be, then what lies outside the ranges.
func (p OperatingPoint) check(b *Bath) (hard, outside error) {
	hard = firstError(units.NonNegative("current density", p.CurrentDensity), units.NonNegative("temperature",
		p.Temperature),
		units.NonNegative("metal content", p.Content), units.NonNegative("bath volume", p.Volume))
	outside = firstError(b.CurrentDensity.outside("current density", p.CurrentDensity),
		b.Temperature.outside("temperature", p.Temperature),
		b.Content.outside("metal content", p.Content))
	return hard, outside
}

// EfficiencyAt returns the band of current efficiency at a point: from the
// bath's lines where it has some, interpolated straight between current
// densities, temperatures and contents, else its stated range.
//
//	η = η₁ + (η₂ - η₁)·(x - x₁)/(x₂ - x₁)
//
//	η  band of efficiency, each end by itself  0 < η ≤ 1
//	x  current density [A/m²], temperature [K] or content [kg/m³]
//
// Outside the lines or the bath's ranges the end is held and comes together
// with a [*units.RangeError].
//
// Errors: a [*units.ValueError] when the bath or the point cannot be.
//
// Source: [Definition] (linear interpolation).
func (b *Bath) EfficiencyAt(p OperatingPoint) (Range[units.Efficiency], error) {
	if err := b.Check(); err != nil {
		return Range[units.Efficiency]{}, err
	}
	p = p.complete(b)
	hard, outside := p.check(b)
	if hard != nil {
		return Range[units.Efficiency]{}, hard
	}
	if len(b.Lines) == 0 {
		return b.Efficiency, outside
	}
	l, err := b.line(p.Temperature, p.Content)
	if outside == nil {
		outside = err
	}
	at := l.at(p.CurrentDensity)
	if first, last := l.Points[0], l.Points[len(l.Points)-1]; outside == nil && len(l.Points) > 1 &&
		(p.CurrentDensity < first.CurrentDensity || p.CurrentDensity > last.CurrentDensity) {
		outside = &units.RangeError{Field: "current density", Value: p.CurrentDensity.String(),
			Low: first.CurrentDensity.String(), High: last.CurrentDensity.String(), Source: l.Source}
	}
	return Range[units.Efficiency]{Low: at.Low, High: at.High, Source: l.Source, Seen: l.Seen}, outside
}

// At returns the bath at an operating point, for [plating.Estimate]: deposit
// at the middle density, efficiency at the middle of its band (a curve where
// the bath has lines), windows, hazards and a Source that says what is only
// remembered.
//
// A point outside the bath's ranges gives the bath together with a
// [*units.RangeError], so that the caller may decide.
//
// Errors: a [*units.ValueError] when the bath or the point cannot be.
func (b *Bath) At(p OperatingPoint) (plating.OperatingBath, error) {
	if err := b.Check(); err != nil {
		return plating.OperatingBath{}, err
	}
	p = p.complete(b)
	hard, outside := p.check(b)
	if hard != nil {
		return plating.OperatingBath{}, hard
	}
	// The middle of the band, since nothing tells which part of it a shop's bath runs in; the
	// shop's own figure in its place where it is given.
	pick := middle
	if set := b.Efficiency.Set; set != 0 { // the value in use
		pick = func(units.Efficiency, units.Efficiency) units.Efficiency { return set }
	}
	out, err := b.with(p, b.Density.Mid(), pick)
	if err != nil {
		return plating.OperatingBath{}, err
	}
	if _, err := b.EfficiencyAt(p); outside == nil {
		outside = err
	}
	return out, outside
}

func middle(low, high units.Efficiency) units.Efficiency { return low + (high-low)/2 }
func lower(low, _ units.Efficiency) units.Efficiency     { return low }
func upper(_, high units.Efficiency) units.Efficiency    { return high }

// with builds the plating bath at one density of the deposit and one pick of
// efficiency from its band.
func (b *Bath) with(p OperatingPoint, rho units.Density, pick func(low, high units.Efficiency) units.Efficiency) (
	plating.OperatingBath,
	error) {
	d, err := b.deposit(rho)
	if err != nil {
		return plating.OperatingBath{}, err
	}
	out := plating.OperatingBath{Name: b.Name, Metal: b.Metal, Deposit: d, Fine: b.Fine(),
		Window:      plating.CurrentDensityWindow{Low: b.CurrentDensity.Low, High: b.CurrentDensity.High},
		Volts:       plating.VoltageWindow{Low: b.Volts.Low, High: b.Volts.High},
		Temperature: plating.TemperatureWindow{Low: b.Temperature.Low, High: b.Temperature.High, Set: p.Temperature},
		// A range that has only a lower end leaves High zero: plating reads that as "not given".
		Content: p.Content, Volume: p.Volume, MaxThickness: b.MaxThickness.High,
		InsolubleAnode: b.AnodeKind == InsolubleAnode, Hazards: b.Hazards, Source: b.sources(),
		Valence: b.Valence, PH: plating.PHWindow{Low: b.PH.Low, High: b.PH.High}, Salt: b.Salt, Anode: b.Anode.Text,
		Vessel: b.Vessel, DrawLimit: b.DrawLimit}
	// One figure for all current densities, unless the bath has lines: then a curve, at this
	// temperature and content.
	out.Efficiency = plating.ConstantEfficiency(pick(b.Efficiency.Low, b.Efficiency.High))
	if len(b.Lines) != 0 {
		l, _ := b.line(p.Temperature, p.Content)
		if out.Efficiency, err = l.curve(pick); err != nil {
			return plating.OperatingBath{}, err
		}
	}
	return out, out.Check()
}

// sources names the keys behind the bath's figures and says what is only remembered.
func (b *Bath) sources() string {
	// Keys of what was read, and by name what was not: the name tells the shop which figure to
	// measure.
	var keys, weak []string
	for _, u := range b.figures() {
		if u.Seen == origin.FromMemory {
			weak = append(weak, u.Field)
		} else if !contains(keys, u.Source) {
			keys = append(keys, u.Source)
		}
	}
	s := strings.Join(keys, ", ")
	if len(weak) > 0 {
		if s != "" {
			s += "; "
		}
		s += "from memory: " + strings.Join(weak, ", ")
	}
	return s
}

func contains(list []string, s string) bool {
	for _, have := range list {
		if have == s {
			return true
		}
	}
	return false
}
