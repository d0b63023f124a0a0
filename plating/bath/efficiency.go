package bath

import (
	"fmt"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// An EfficiencyLine is current efficiency against current density, at one
// temperature and one metal content. Zero temperature or content means that
// the source does not tell them apart. All lines of a bath give the same of
// the two.
type EfficiencyLine struct {
	Temperature units.Temperature
	Content     units.MassConcentration
	Points      []EfficiencyBand
	Source      string
	Seen        origin.Seen
}

// An EfficiencyBand is a band of current efficiency at one current density.
type EfficiencyBand struct {
	CurrentDensity units.CurrentDensity
	Low, High      units.Efficiency
}

// checkLines finds what cannot be interpolated.
func checkLines(lines []EfficiencyLine) error {
	for i, l := range lines {
		name := fmt.Sprintf("efficiency line %d: ", i+1)
		if err := firstError(units.NonNegative(name+"temperature", l.Temperature), units.NonNegative(name+"content",
			l.Content)); err != nil {
			return err
		}
		if len(l.Points) == 0 {
			return &units.ValueError{Field: name + "points", Value: "none", Need: "one point or more",
				Err: units.ErrInconsistent}
		}
		if first := lines[0]; (l.Temperature == 0) != (first.Temperature == 0) || (l.Content == 0) != (first.Content == 0) {
			return &units.ValueError{Field: name + "temperature and content", Value: "not given as in line 1",
				Need: "the same of the two in each line", Err: units.ErrInconsistent}
		}
		for j := range i {
			if lines[j].Temperature == l.Temperature && lines[j].Content == l.Content {
				return &units.ValueError{Field: name + "temperature and content", Value: fmt.Sprintf("those of line %d", j+1),
					Need: "one line for each", Err: units.ErrInconsistent}
			}
		}
		for k, p := range l.Points {
			at := fmt.Sprintf("%spoint %d: ", name, k+1)
			if err := firstError(units.Positive(at+"current density", p.CurrentDensity), units.PositiveFraction(at+
				"low efficiency", p.Low),
				units.PositiveFraction(at+"high efficiency", p.High)); err != nil {
				return err
			}
			if p.Low > p.High {
				return &units.ValueError{Field: at + "efficiency", Value: p.Low.String() + " to " + p.High.String(),
					Need: "the low end first", Err: units.ErrInconsistent}
			}
			if k > 0 && p.CurrentDensity <= l.Points[k-1].CurrentDensity {
				return &units.ValueError{Field: at + "current density", Value: p.CurrentDensity.String(),
					Need: "a value above that of the point before", Err: units.ErrInconsistent}
			}
		}
	}
	return nil
}

// at returns the band at a current density; outside the points the end is held.
func (l EfficiencyLine) at(j units.CurrentDensity) EfficiencyBand {
	// Beyond the last point nothing is known. A straight line drawn on would soon promise more
	// than all of the current, or less than none; the end is held, and the caller is told.
	last := l.Points[len(l.Points)-1]
	if j <= l.Points[0].CurrentDensity {
		return EfficiencyBand{j, l.Points[0].Low, l.Points[0].High}
	}
	for k := 1; k < len(l.Points); k++ {
		if q := l.Points[k]; j < q.CurrentDensity {
			p := l.Points[k-1]
			share := units.Efficiency((j - p.CurrentDensity) / (q.CurrentDensity - p.CurrentDensity))
			return EfficiencyBand{j, p.Low + share*(q.Low-p.Low), p.High + share*(q.High-p.High)}
		}
	}
	return EfficiencyBand{j, last.Low, last.High}
}

// mix returns the line a share of the way from l to m. Both are straight
// between points, so at all their current densities together nothing is lost.
func (l EfficiencyLine) mix(m EfficiencyLine, share float64) EfficiencyLine {
	switch share {
	case 0:
		return l
	case 1:
		return m
	}
	var at []units.CurrentDensity
	// The mixed line has a corner wherever one of the two has one.
	for _, p := range slices.Concat(l.Points, m.Points) {
		at = append(at, p.CurrentDensity)
	}
	slices.Sort(at)
	// A figure between two is known no better than the weaker of them.
	out := EfficiencyLine{Seen: min(l.Seen, m.Seen), Source: l.Source}
	if m.Source != l.Source {
		out.Source += ", " + m.Source
	}
	w := units.Efficiency(share)
	for _, j := range slices.Compact(at) {
		p, q := l.at(j), m.at(j)
		out.Points = append(out.Points, EfficiencyBand{j, p.Low + w*(q.Low-p.Low), p.High + w*(q.High-p.High)})
	}
	return out
}

// line finds the efficiency line at a temperature and content, and a
// [*units.RangeError] when they lie outside the lines: then the end is held.
func (b *Bath) line(t units.Temperature, c units.MassConcentration) (EfficiencyLine, error) {
	var rows []EfficiencyLine // one for each content, already at t
	var contents []float64
	var outside error
	for _, l := range b.Lines {
		if !slices.Contains(contents, float64(l.Content)) {
			contents = append(contents, float64(l.Content))
		}
	}
	slices.Sort(contents)
	// First along the temperature, for each content by itself; then between two contents. Lines
	// that do not tell one of the two apart hold for any value of it.
	for _, have := range contents {
		var same []EfficiencyLine
		for _, l := range b.Lines {
			if float64(l.Content) == have {
				same = append(same, l)
			}
		}
		slices.SortFunc(same, func(x, y EfficiencyLine) int { return compare(x.Temperature, y.Temperature) })
		var heats []float64
		for _, l := range same {
			heats = append(heats, float64(l.Temperature))
		}
		k, share, within := bracket(heats, float64(t))
		if !within {
			outside = &units.RangeError{Field: "temperature", Value: t.String(), Low: same[0].Temperature.String(),
				High: same[len(same)-1].Temperature.String(), Source: same[0].Source}
		}
		rows = append(rows, same[k].mix(same[min(k+1, len(same)-1)], share))
	}
	k, share, within := bracket(contents, float64(c))
	if !within {
		outside = &units.RangeError{Field: "metal content", Value: c.String(),
			Low:  units.MassConcentration(contents[0]).String(),
			High: units.MassConcentration(contents[len(contents)-1]).String(), Source: rows[0].Source}
	}
	return rows[k].mix(rows[min(k+1, len(rows)-1)], share), outside
}

func compare[Q units.Quantity](x, y Q) int {
	switch {
	case x < y:
		return -1
	case x > y:
		return 1
	}
	return 0
}

// bracket finds v between rising values: the one below, the share of the way
// to the next, and whether v is inside. A single zero is "not told apart" and
// holds everything, and so does a v that is not given.
func bracket(values []float64, v float64) (k int, share float64, within bool) {
	last := len(values) - 1
	switch {
	case last == 0:
		return 0, 0, values[0] == 0 || v == 0 || v == values[0]
	case v < values[0]:
		return 0, 0, v == 0
	case v >= values[last]:
		return last, 0, v == values[last]
	}
	for values[k+1] <= v {
		k++
	}
	return k, (v - values[k]) / (values[k+1] - values[k]), true
}

// curve makes a curve of the plating package from one end of the bands, or
// their middle: pick gives the efficiency of a point.
func (l EfficiencyLine) curve(pick func(low, high units.Efficiency) units.Efficiency) (plating.EfficiencyCurve, error) {
	// One point is no curve: it holds at every current density.
	if len(l.Points) == 1 {
		return plating.ConstantEfficiency(pick(l.Points[0].Low, l.Points[0].High)), nil
	}
	points := make([]plating.EfficiencyPoint, len(l.Points))
	for i, p := range l.Points {
		points[i] = plating.EfficiencyPoint{CurrentDensity: p.CurrentDensity, Efficiency: pick(p.Low, p.High)}
	}
	return plating.NewEfficiencyCurve(points...)
}
