package coat

import (
	"fmt"
	"sort"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A Way is one arrangement of a part in the bath.
type Way struct {
	Name    string
	Surface Surface
	// Robbed is the current that robbers take beside the part: its metal is
	// spent too.
	Robbed units.Current
}

// An Outcome is what a way comes to when it hangs until the thinnest
// significant spot keeps the minimum thickness.
type Outcome struct {
	Name         string
	Time         units.Duration
	MinToAverage units.Ratio
	FineMass     units.Mass // of the counted metal on the part
	Robbed       units.Mass // of the counted metal on robbers
	GivenAway    units.Mass // on the part, above the minimum thickness
	P95          units.Length

	// Against the first way; positive is less.
	SavedTime units.Duration
	SavedMass units.Mass // part and robbers together

	Unresolved bool
	Err        error // why this way cannot keep the minimum thickness; the figures are then zero
}

// Compare lays the minimum thickness on a part in several ways. The first is the one the
// others are held against; the outcomes come in the order given.
//
//	m = Σ w·ρ·s·A + w·ε·η(j_r)·I_r·t
//
// with the symbols of [Lay]; I_r is the current of the robbers, taken at the
// efficiency η of the part's mean density j_r.
//
// A way that cannot keep the minimum thickness (no current at the spot) has its reason
// in Err and the others go on.
//
// Errors: a [*units.ValueError] for no ways, a bad bath or thickness, or a first
// way that cannot keep the minimum thickness.
//
// Source: [OpenStaxChem2e] section 17.7.
func Compare(ways []Way, b *plating.OperatingBath, least units.Length) ([]Outcome, error) {
	if len(ways) == 0 {
		return nil, &units.ValueError{Field: "ways", Value: "none", Need: "at least one", Err: units.ErrNotPositive}
	}
	out := make([]Outcome, len(ways))
	for i, w := range ways {
		o := Outcome{Name: w.Name}
		o, o.Err = outcome(w, b, least)
		if i == 0 && o.Err != nil {
			return nil, fmt.Errorf("%s: %w", units.Clip(w.Name), o.Err)
		}
		if o.Err == nil {
			o.SavedTime = out[0].Time - o.Time
			o.SavedMass = out[0].FineMass + out[0].Robbed - o.FineMass - o.Robbed
			if i == 0 {
				o.SavedTime, o.SavedMass = 0, 0
			}
		}
		out[i] = o
	}
	return out, nil
}

func outcome(w Way, b *plating.OperatingBath, least units.Length) (Outcome, error) {
	o := Outcome{Name: w.Name, Unresolved: w.Surface.Unresolved}
	if err := units.NonNegative("current of the robbers", w.Robbed); err != nil {
		return o, err
	}
	t, err := TimeFor(w.Surface, b, least)
	if err != nil {
		return o, err
	}
	c, err := Lay(w.Surface, b, t)
	if err != nil {
		return o, err
	}
	o.Time, o.MinToAverage, o.FineMass, o.P95 = t, c.MinToAverage, c.FineMass, c.P95
	o.GivenAway, err = c.GivenAway(w.Surface, b, least)
	if err != nil {
		return o, err
	}
	mean, err := c.Current.PerArea(c.PartArea)
	if err != nil {
		return o, err
	}
	eff, _ := b.Efficiency.At(mean)
	fine := float64(b.Fine)
	if fine == 0 {
		fine = 1
	}
	o.Robbed = units.Mass(fine * float64(eff) * float64(b.Deposit.Equivalent.Of(w.Robbed.For(t))))
	return o, units.Finite("metal on the robbers", o.Robbed)
}

// noticeable is the least saving, as a share, that counts: less than that is
// what a mesh does, not an arrangement.
const noticeable = 5e-3

// Best returns the names of the outcomes that save metal, most first, and of
// those that save time, most first. Ways that fail or rest on one panel are
// left out, and so are savings of less than half a per cent.
func Best(outcomes []Outcome) (metal, time []string) {
	var good []Outcome
	for _, o := range outcomes {
		if o.Err == nil && !o.Unresolved {
			good = append(good, o)
		}
	}
	sort.SliceStable(good, func(i, j int) bool { return good[i].SavedMass > good[j].SavedMass })
	for _, o := range good {
		if o.SavedMass > units.Mass(noticeable*float64(o.FineMass+o.Robbed)) {
			metal = append(metal, o.Name)
		}
	}
	sort.SliceStable(good, func(i, j int) bool { return good[i].SavedTime > good[j].SavedTime })
	for _, o := range good {
		if o.SavedTime > units.Duration(noticeable*float64(o.Time)) {
			time = append(time, o.Name)
		}
	}
	return metal, time
}
