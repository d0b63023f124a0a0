package coat

import (
	"math"
	"sort"

	"gonum.org/v1/gonum/spatial/r3"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A CoatMap is the coat on one part after some time.
type CoatMap struct {
	Time      units.Duration
	Thickness []units.Length // by patch

	// Over the significant surface.
	Min      units.Length
	MinPatch int
	P05, P95 units.Length // below which 5 and 95 % of its area lie
	Max      units.Length // grows with every refinement at a sharp edge; look at P95
	Area     units.Area   // of the significant surface

	// Over the whole part.
	Average      units.Length
	MinToAverage units.Ratio // Min over Average: what [plating.Distribution] takes
	Current      units.Current
	Mass         units.Mass
	FineMass     units.Mass
	PartArea     units.Area

	// Dissolving is the area where current leaves the metal, as on a part that
	// hangs without contact. Its thickness is counted as zero.
	Dissolving units.Area
	// EfficiencyHeld is the area whose current density lies outside the bath's
	// efficiency curve.
	EfficiencyHeld units.Area
}

// Lay returns the coat that grows on a part in a time.
//
//	s = ε·η(j)·j·t/ρ
//	m = Σ ρ·s·A
//
//	j     Density of each patch          [A/m²]
//	η(j)  efficiency at that density     0 < η ≤ 1
//	A     Area of each patch             [m²]
//	ε, ρ  deposit of the bath            [kg/C], [kg/m³]
//	t     time                           ≥ 0 [s]
//
// The efficiency is taken where the current arrives, so that the thinnest spot
// is the one thinnest in metal. The distribution is taken to stay as it is
// while the coat grows: true while coats are thin beside the part.
//
// Errors: a [*units.ValueError] for a surface, bath or time that cannot be.
//
// Source: [OpenStaxChem2e] section 17.7.
func Lay(s Surface, b *plating.OperatingBath, t units.Duration) (CoatMap, error) {
	if err := s.check(); err != nil {
		return CoatMap{}, err
	}
	if err := b.Check(); err != nil {
		return CoatMap{}, err
	}
	if err := units.NonNegative("time", t); err != nil {
		return CoatMap{}, err
	}
	c := CoatMap{Time: t, Thickness: make([]units.Length, len(s.Patches)), MinPatch: -1}
	for i, p := range s.Patches {
		if p.Density < 0 {
			c.Dissolving += p.Area
		} else if p.Density > 0 {
			eff, within := b.Efficiency.At(p.Density)
			if !within {
				c.EfficiencyHeld += p.Area
			}
			c.Thickness[i] = growth(b.Deposit, p.Density, eff).For(t)
		}
		c.Current += p.Density.Over(p.Area)
		c.PartArea += p.Area
		c.Mass += b.Deposit.Density.Of(c.Thickness[i].Over(p.Area))
		if s.significant(i) {
			c.Area += p.Area
			if c.MinPatch < 0 || c.Thickness[i] < c.Min {
				c.Min, c.MinPatch = c.Thickness[i], i
			}
			c.Max = units.Length(math.Max(float64(c.Max), float64(c.Thickness[i])))
		}
	}
	fine := float64(b.Fine)
	if fine == 0 {
		fine = 1
	}
	c.FineMass = units.Mass(fine * float64(c.Mass))
	c.Average = units.Length(float64(c.Mass) / (float64(b.Deposit.Density) * float64(c.PartArea)))
	if c.Average > 0 {
		c.MinToAverage = units.Ratio(float64(c.Min) / float64(c.Average))
	}
	c.P05, c.P95 = percentile(&s, c.Thickness, 0.05), percentile(&s, c.Thickness, 0.95)
	return c, units.Finite("mass of the coat", c.Mass)
}

func growth(d faraday.Deposit, j units.CurrentDensity, eff units.Efficiency) units.Speed {
	return units.Speed(float64(d.Equivalent) * float64(eff) * float64(j) / float64(d.Density))
}

// percentile returns the thickness below which a share of the significant area lies.
func percentile(s *Surface, thickness []units.Length, share float64) units.Length {
	var order []int
	total := 0.0
	for i := range thickness {
		if s.significant(i) {
			order = append(order, i)
			total += float64(s.Patches[i].Area)
		}
	}
	sort.Slice(order, func(a, b int) bool { return thickness[order[a]] < thickness[order[b]] })
	sum := 0.0
	for _, i := range order {
		if sum += float64(s.Patches[i].Area); sum >= share*total {
			return thickness[i]
		}
	}
	return thickness[order[len(order)-1]]
}

// TimeFor returns how long the part has to hang until its thinnest significant
// spot has a thickness.
//
//	t = s_min·ρ/(ε·η(j)·j)
//
// with the density j of that spot and the symbols of [Lay].
//
// Errors: a [*units.ValueError] for a thickness out of range, and when no
// metal arrives at some significant spot.
//
// Source: [OpenStaxChem2e] section 17.7.
func TimeFor(s Surface, b *plating.OperatingBath, least units.Length) (units.Duration, error) {
	if err := units.Positive("minimum thickness", least); err != nil {
		return 0, err
	}
	one, err := Lay(s, b, 1)
	if err != nil {
		return 0, err
	}
	if one.Min <= 0 {
		p := s.Patches[one.MinPatch]
		return 0, &units.ValueError{Field: "current density at the thinnest spot", Value: p.Density.String(),
			Need: "current that plates there; bring an anode near or take the spot out of the significant surface",
			Err:  units.ErrNotPositive}
	}
	t := units.Duration(float64(least) / float64(one.Min))
	return t, units.Finite("time", t)
}

// Below returns the significant area whose coat is thinner than a thickness.
//
// Errors: a [*units.ValueError] when coat and surface do not belong together.
//
// Source: [Definition].
func (c *CoatMap) Below(s Surface, thickness units.Length) (units.Area, error) {
	if err := c.on(s); err != nil {
		return 0, err
	}
	var a units.Area
	for i, p := range s.Patches {
		if s.significant(i) && c.Thickness[i] < thickness {
			a += p.Area
		}
	}
	return a, nil
}

// GivenAway returns the counted metal that lies above a minimum thickness,
// most of it at edges: what an even coat would have saved.
//
//	m = Σ w·ρ·max(0, s - s_min)·A
//
//	w      b.Fine    share of the counted metal
//	ρ      density   of the deposit [kg/m³]
//	s      thickness of each patch [m]
//	s_min  least   [m]
//	A      Area of each patch [m²]
//
// Errors: a [*units.ValueError] when coat and surface do not belong together.
//
// Source: [Definition].
func (c *CoatMap) GivenAway(s Surface, b *plating.OperatingBath, least units.Length) (units.Mass, error) {
	if err := c.on(s); err != nil {
		return 0, err
	}
	if err := b.Check(); err != nil {
		return 0, err
	}
	fine := float64(b.Fine)
	if fine == 0 {
		fine = 1
	}
	var m units.Mass
	for i, p := range s.Patches {
		if over := c.Thickness[i] - least; over > 0 {
			m += units.Mass(fine * float64(b.Deposit.Density.Of(over.Over(p.Area))))
		}
	}
	return m, units.Finite("metal given away", m)
}

// on refuses a surface that the coat was not laid on: another number of patches, or
// another area in all.
func (c *CoatMap) on(s Surface) error {
	if c == nil {
		return units.Missing("coat", "the coat that was laid on the surface")
	}
	if err := s.check(); err != nil {
		return err
	}
	if len(c.Thickness) != len(s.Patches) {
		return mismatch(len(c.Thickness), len(s.Patches))
	}
	var area units.Area
	for _, p := range s.Patches {
		area += p.Area
	}
	if !(math.Abs(float64(area-c.PartArea)) <= 1e-9*float64(area)) {
		return &units.ValueError{Field: "coat", Value: "on " + c.PartArea.String(),
			Need: "the surface it was laid on, not another of " + area.String(), Err: units.ErrInconsistent}
	}
	return nil
}

func mismatch(coat, surface int) error {
	return &units.ValueError{Field: "coat", Value: units.Ratio(coat).String() + " patches",
		Need: "the surface it was laid on, which has " + units.Ratio(surface).String() + " patches, not another",
		Err:  units.ErrInconsistent}
}

// Assumed is the relative uncertainty that [CoatMap.Distribution] gives to a
// surface whose solution does not estimate its error: one mesh only. The
// library's own choice, no source.
const Assumed units.Ratio = 0.1

// Distribution returns what [plating.Estimate] takes, with where it comes from
// and how sure it is. The uncertainty is that of the solution's numbers alone:
// conductivity, rate law and the place of the anodes are as good as they were
// given. It is [Assumed] where there was no second mesh, and 1 where the least
// density lies on one panel, so that the estimate says not to minimum thickness on it.
//
// Errors: a [*units.ValueError] when no metal arrives at the thinnest spot, and
// when coat and surface do not belong together.
//
// Source: [Definition].
func (c *CoatMap) Distribution(s Surface) (plating.Distribution, error) {
	if err := c.on(s); err != nil {
		return plating.Distribution{}, err
	}
	ratio := units.Ratio(math.Min(1, float64(c.MinToAverage)))
	if err := units.PositiveFraction("ratio of thinnest to average", ratio); err != nil {
		return plating.Distribution{}, err
	}
	d := plating.Distribution{MinToAverage: ratio, Basis: s.Basis, Uncertainty: Assumed}
	switch {
	case s.Unresolved:
		d.Uncertainty, d.Basis = 1, d.Basis+", not resolved at the thinnest spot"
	case s.MinError >= 0:
		d.Uncertainty = units.Ratio(s.MinError)
	default:
		d.Basis += ", one mesh only"
	}
	return d, nil
}

// Where describes a patch's place in words: which third of the part's box it
// lies in along each axis, and the way it faces.
func Where(s Surface, patch int) string {
	if patch < 0 || patch >= len(s.Patches) {
		return "nowhere on the part"
	}
	low, high := s.Patches[0].At, s.Patches[0].At
	for _, p := range s.Patches {
		low = r3.Vec{X: math.Min(low.X, p.At.X), Y: math.Min(low.Y, p.At.Y), Z: math.Min(low.Z, p.At.Z)}
		high = r3.Vec{X: math.Max(high.X, p.At.X), Y: math.Max(high.Y, p.At.Y), Z: math.Max(high.Z, p.At.Z)}
	}
	p := s.Patches[patch]
	words := place(p.At.Z, low.Z, high.Z, "at the bottom", "half way up", "at the top")
	words += place(p.At.X, low.X, high.X, ", left (low x)", ", in the middle of x", ", right (high x)")
	words += place(p.At.Y, low.Y, high.Y, ", front (low y)", ", in the middle of y", ", back (high y)")
	return words + facing(p.Normal)
}

func place(v, low, high float64, a, b, c string) string {
	if high-low <= 1e-12*math.Abs(high) {
		return ""
	}
	switch x := (v - low) / (high - low); {
	case x < 1.0/3:
		return a
	case x > 2.0/3:
		return c
	}
	return b
}

func facing(n r3.Vec) string {
	type way struct {
		v    float64
		word string
	}
	best := way{0.5, ""}
	for _, w := range []way{{n.Z, "up"}, {-n.Z, "down"}, {n.X, "to high x"}, {-n.X, "to low x"}, {n.Y, "to high y"}, {-n.Y,
		"to low y"}} {
		if w.v > best.v {
			best = w
		}
	}
	if best.word == "" {
		return ""
	}
	return ", facing " + best.word
}
