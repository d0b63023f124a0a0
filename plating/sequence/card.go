package sequence

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Card is one tank as it hangs at the line: what to set, what to look at,
// what to mind. Figures keep their origin; a zero or empty one is not given.
type Card struct {
	Number      int                           `json:"number"`              // from 1
	Name        string                        `json:"name"`                // of the tank
	Kind        TankKind                      `json:"kind"`                // what the tank is for
	Chemistry   string                        `json:"chemistry"`           // what it holds
	Temperature bath.Range[units.Temperature] `json:"temperature" in:"°C"` // range
	// of the bath, or the range of the process
	Window   bath.Range[units.CurrentDensity] `json:"current_density" in:"A/dm²"`
	Volts    bath.Range[units.Voltage]        `json:"volts" in:"V"` // an expectation, not a setting
	PH       bath.Range[plating.PH]           `json:"pH"`           // range
	Polarity Polarity                         `json:"polarity"`     // of the piece

	Set          units.CurrentDensity      `json:"set" in:"A/dm²"`   // current density the amps are for
	Amps         units.Current             `json:"amps" in:"A"`      // for this load
	AmpsLow      units.Current             `json:"amps_low" in:"A"`  // window of amps for this load
	AmpsTop      units.Current             `json:"amps_high" in:"A"` // the other end of it
	Time         bath.Band[units.Duration] `json:"time" in:"min"`
	TimeBy       string                    `json:"time_by"`   // "min_thickness", "given", "usual immersion time"
	TimeFrom     Seenness                  `json:"time_from"` // how the time is known
	MinThickness units.Length              `json:"min_thickness" in:"µm"`

	Agitation  bath.Words     `json:"agitation"`                        // of piece or solution
	Anode      bath.Words     `json:"anode"`                            // or the other electrode
	AnodeLow   units.Area     `json:"anode_area_low" in:"cm²"`          // for this load
	AnodeHigh  units.Area     `json:"anode_area_high" in:"cm²"`         // 0: one figure, or none
	AnodeRatio Seenness       `json:"anode_ratio"`                      // how the areas are known
	Water      string         `json:"water"`                            // of a rinse
	LiveEntry  bool           `json:"live_entry"`                       // current on before the piece goes in
	Look       []string       `json:"look"`                             // what to look at before going on
	Hazards    plating.Hazard `json:"hazards" with:"keep" rule:"flags"` // of what the tank holds
	Cautions   []plating.Note `json:"cautions"`                         // short lines, the most dangerous first
	Confidence origin.Seen    `json:"confidence" with:"keep"`           // the weakest figure on the card
}

// A Seenness is the origin of a figure that the card shows in another form.
type Seenness struct {
	Source string      `json:"source"`           // key, or common practice, or memory
	Seen   origin.Seen `json:"seen" with:"keep"` // published, second hand, from memory ...
}

// String writes the origin: "published, Guidebook2011", "from memory".
func (s Seenness) String() string {
	return bath.Range[units.Ratio]{Source: s.Source, Seen: s.Seen}.Origin()
}

// Cards writes a card for each tank, for the load of the piece.
//
//	I = j·A
//
//	I  Amps  current for the load [A]
//	j  Set   current density: the tank's, or the middle of the bath's window [A/m²]
//	A  Area  of the load, > 0 [m²]
//
// The time of a tank with a minimum thickness is that of [bath.EstimateRange], with its
// band; else it is the time given, or the usual immersion time. A time in minutes for a
// range of efficiency is a range.
//
// Errors: a [*units.ValueError] when the piece has no area or, where a minimum thickness
// is to be met, no ratio of thinnest to average; a tank that says too little,
// with its number.
//
// Source: [Definition], [OpenStaxChem2e] section 17.7.
func Cards(tanks []Tank, p Piece) ([]Card, error) {
	if err := units.Positive("area", p.Area); err != nil {
		return nil, err
	}
	cards := make([]Card, 0, len(tanks))
	for i := range tanks {
		t := &tanks[i]
		if err := t.Check(); err != nil {
			return nil, fmt.Errorf("tank %d, %s: %w", i+1, units.Clip(t.title()), err)
		}
		c := Card{Number: i + 1, Name: t.title(), Kind: t.Kind, LiveEntry: t.LiveEntry, MinThickness: t.MinThickness,
			Confidence: origin.Published, Hazards: t.hazards(), Cautions: cautions(t)}
		if t.Kind.deposits() {
			if err := c.plated(t, &p); err != nil {
				return nil, fmt.Errorf("tank %d, %s: %w", i+1, units.Clip(t.title()), err)
			}
		} else {
			c.processed(t, &p)
		}
		cards = append(cards, c)
	}
	return cards, nil
}

// plated fills the card of a plating tank.
//
//	I = j A,  I_low = j_low A,  I_high = j_high A,  A_anode = r A
//
//	j  of the tank, or the middle of the bath's range [A/m²]
//	A  area of the load [m²]
//	r  anode area over cathode area, of the bath
//
// The time comes from the minimum thickness where there is one. With a time as well, the
// current is the unknown, and Set and Amps are overwritten by what was found. The
// confidence is that of the weakest figure used.
func (c *Card) plated(t *Tank, p *Piece) error {
	b := &t.Bath
	c.Chemistry, c.Temperature, c.Window, c.Volts, c.PH = b.Name, b.Temperature, b.CurrentDensity, b.Volts, b.PH
	c.Polarity, c.Agitation, c.Anode, c.Look = Cathodic, b.Agitation, b.Anode, b.Look
	c.Set = t.density()
	c.Amps, c.AmpsLow, c.AmpsTop = c.Set.Over(p.Area), b.CurrentDensity.Low.Over(p.Area),
		b.CurrentDensity.High.Over(p.Area)
	if b.AnodeRatio.Given() {
		c.AnodeLow, c.AnodeHigh = units.Area(float64(b.AnodeRatio.Low)*float64(p.Area)),
			units.Area(float64(b.AnodeRatio.High)*float64(p.Area))
		c.AnodeRatio = Seenness{b.AnodeRatio.Source, b.AnodeRatio.Seen}
	}
	seen := []origin.Seen{c.Confidence}
	for _, u := range b.Figures() {
		seen = append(seen, u.Seen)
	}
	switch {
	case t.MinThickness > 0:
		c.TimeBy = "min_thickness"
		l := layerOf(t, p)
		s, err := bath.EstimateRange(l, *b, bath.OperatingPoint{CurrentDensity: c.Set})
		if err = notJustOutside(err); err != nil {
			return err
		}
		c.Time, c.TimeFrom = s.Time, Seenness{"", s.Confidence}
		if l.Time > 0 { // minimum thickness and time given: the current is found
			c.Set, c.Amps, c.TimeBy = s.Typical.CurrentDensity, s.Typical.Current, "given"
		}
	case t.Time > 0:
		c.TimeBy, c.Time = "given", bath.Band[units.Duration]{Low: t.Time, Typical: t.Time, High: t.Time}
	default:
		c.TimeBy, c.Time, c.TimeFrom = "usual immersion time", immersionBand(b.Time),
			Seenness{b.Time.Source, b.Time.Seen}
	}
	c.Confidence = origin.Weakest(seen...)
	return nil
}

// immersionBand is a usual time as a band: low end, middle, high end. A range that is open
// above ends at its middle.
func immersionBand(r bath.Range[units.Duration]) bath.Band[units.Duration] {
	b := bath.Band[units.Duration]{Low: r.Low, Typical: r.Mid(), High: r.High}
	if b.High == 0 {
		b.High = b.Typical
	}
	return b
}

// processed fills the card of a tank that does not plate.
func (c *Card) processed(t *Tank, p *Piece) {
	q := &t.Process
	c.Chemistry, c.Temperature, c.Window, c.Volts, c.Polarity = q.Chemistry, q.Temperature, q.CurrentDensity, q.Volts,
		q.Polarity
	c.Agitation, c.Anode, c.Look = q.Agitation, q.Counter, q.Look
	if q.CurrentDensity.Given() {
		c.Set = q.CurrentDensity.Mid()
		c.Amps, c.AmpsLow, c.AmpsTop = c.Set.Over(p.Area), q.CurrentDensity.Low.Over(p.Area),
			q.CurrentDensity.High.Over(p.Area)
	}
	switch {
	case t.Time > 0:
		c.TimeBy, c.Time = "given", bath.Band[units.Duration]{Low: t.Time, Typical: t.Time, High: t.Time}
	case q.Time.Given():
		c.TimeBy, c.Time, c.TimeFrom = "usual immersion time", immersionBand(q.Time),
			Seenness{q.Time.Source, q.Time.Seen}
	}
	if t.Kind.rinses() || t.Kind == DragOut {
		c.Water = t.Rinse.String()
		c.Look = append(c.Look, "drain over the tank before, 5 to 10 s")
	}
	c.Confidence = q.Seen
	if t.solution() {
		c.Confidence = origin.Weakest(q.Seen, q.Temperature.Seen, q.Time.Seen)
	}
}

// String writes the water of a rinse: "2 stages, counterflow, deionised".
func (w RinseSet) String() string {
	s := plural(w.Stages, "stage") + ", " + w.Flow.String()
	if w.Deionised {
		s += ", deionised"
	}
	if w.Acidified {
		s += ", slightly acid"
	}
	if w.Station != "" {
		s += ", " + w.Station
	}
	return s
}

// density returns the current density a plating tank is set to.
func (t *Tank) density() units.CurrentDensity {
	if t.CurrentDensity > 0 {
		return t.CurrentDensity
	}
	return t.Bath.CurrentDensity.Mid()
}

// cautions are the short lines for a tank: what its solution can do.
func cautions(t *Tank) []plating.Note {
	s := t.chemistry()
	if t.acidified() {
		s.Hazards |= plating.HazardAcid
	}
	return s.AtTank()
}
