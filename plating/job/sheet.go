package job

import (
	"slices"

	"example.com/laydown/alloys"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Sheet is a job worked out.
type Sheet struct {
	Job       Job
	Name      string
	Substrate string
	Parts     []plating.Item
	Area      units.Area         // plated, of the load
	Wetted    units.Area         // with what is masked: it carries solution too
	Base      sequence.Substrate // of a sequence

	// Stops are the tanks in their order. Without a sequence they are those of the coats
	// alone.
	Stops     []Stop
	Sequenced bool // the stops are a whole sequence, proposed or the shop's own
	Findings  []sequence.Finding
	Practice  sequence.Practice // of the base metal; zero without a sequence
	Metals    []plating.MetalTotal
	Time      units.Duration
	Charge    units.Charge

	Line    LineTime  // time at the line: immersion times and handling; rinses are not counted
	Oven    LineTime  // of a bake, which nobody stands by
	Gas     *Hydrogen // of the tank that gives off most
	Claim   *Claim    // what may be said of the gold; nil when the last coat is of another metal
	Rinsing *Rinsing
	Baths   []After

	Quote  *price.Quote
	Swings []price.Change // what the price is most sensitive to, the largest first
	Notes  []plating.Note // what the sheet could not compute
}

// A Stop is one tank of a piece on its way. Coat is nil in a tank that does not plate.
type Stop struct {
	Tank sequence.Card
	Coat *Coat

	tank sequence.Tank
}

// A Coat is one layer worked out: its figures as computed, with what lies below it, what
// to mind, and how far it may be off.
type Coat struct {
	plating.LayerResult
	Name     string
	Bath     bath.Bath    // with its ranges, and what a bath of like chemistry lends
	Ordered  units.Length // minimum thickness that is asked for; 0: the coat is timed
	Timed    bool         // the time is given
	Spread   Spread
	Power    RectifierPower
	Fineness alloys.Fineness // of the counted metal in the deposit; 0: not known
	Karat    alloys.Karat    // of gold; 0: not known, or another metal
	PHLent   bool            // the pH is that of a bath of like chemistry

	own         bath.Bath // as the estimate takes it
	listed      bool      // the share of the metal in the deposit is given
	evaporation *units.Volume
}

// Coats returns the coats in their order.
func (s *Sheet) Coats() []*Coat {
	if s == nil {
		return nil
	}
	var list []*Coat
	for i := range s.Stops {
		if c := s.Stops[i].Coat; c != nil {
			list = append(list, c)
		}
	}
	return list
}

// A Spread is how far a coat may be off by what its bath is known in. The area,
// the current and the ratio of thinnest to average are not in it.
type Spread struct {
	// false: the bath is given in single figures and nothing can be said
	Known      bool                        `json:"-"`
	Efficiency bath.Band[units.Efficiency] `json:"efficiency" in:"%"`
	Time       bath.Band[units.Duration]   `json:"time" in:"min"`
	Average    bath.Band[units.Length]     `json:"average_thickness" in:"µm"`
	Thinnest   bath.Band[units.Length]     `json:"thinnest" in:"µm"`
	FineMass   bath.Band[units.Mass]       `json:"metal_mass" in:"mg"`
	Confidence origin.Seen                 `json:"confidence" with:"keep"` // the weakest figure that went in
}

// A RectifierPower is what the rectifier gives to a coat's bath, between the ends of the
// bath's volts; zero where they are not given. All of it ends as heat, or nearly.
type RectifierPower struct {
	Low   units.Power                 `json:"low" in:"W"`
	High  units.Power                 `json:"high" in:"W"`
	Warms units.TemperatureDifference `json:"warms" in:"K"` // at most, in the time of the coat; 0 without a volume
}

// A LineTime is time at the line, with the handling from tank to tank.
type LineTime struct {
	Low     units.Duration `json:"low" in:"min"`
	Typical units.Duration `json:"typical" in:"min"`
	High    units.Duration `json:"high" in:"min"`
}

// A Rinsing says what the load carries out of each bath and what water it wants.
type Rinsing struct {
	Carried rinse.Carried `json:",inline"` // by the load, out of any one bath
	Ratio   units.Ratio   `json:"ratio"`   // asked for
	Stages  int           `json:"stages"`  // of a counterflow rinse, the most that one has
	// for one such rinse, at the upper end of Carried; the most that one takes; 0 when no ratio is asked for
	Water  units.Volume `json:"water" in:"mL"`
	Rinses int          `json:"counterflows"` // that run in counterflow: of the sequence, else one
	// for one running rinse, each of its stages with water of its own; the most that one takes
	Single  units.Volume   `json:"running" in:"mL"`
	Singles int            `json:"runnings"`      // running rinses of the sequence; the final rinse is not one
	Total   units.Volume   `json:"total" in:"mL"` // of water for all of them
	Metals  []MetalDragged `json:"metals"`        // of the precious baths
	Warning string         `json:"warning"`       // of the drag-out table, "" for none
}

// A MetalDragged is metal that clings to the load from one bath.
type MetalDragged struct {
	Bath  string `json:"bath"`
	Metal string `json:"metal"`
	// of the bath: as given, else the middle of the library's range
	Content units.MassConcentration `json:"content" in:"g/L"`
	Low     units.Mass              `json:"low" in:"mg"`
	High    units.Mass              `json:"high" in:"mg"`
	// share that the drag-out tank brings back; 0 when none is described
	Back units.Ratio `json:"brought_back" in:"%"`
	// carried straight into the next bath of the same metal: nothing is lost
	Onward bool       `json:"onward"`
	Lost   units.Mass `json:"lost" with:"keep" in:"mg"` // High less what comes back

	// What the share supposes: Poured from the drag-out tank into the bath after
	// every Loads loads, and fresh water into the tank. Zero without one.
	Poured     units.Volume `json:"poured" in:"mL"`
	Loads      int          `json:"loads"`
	Evaporates units.Volume `json:"evaporates" in:"mL"` // from the bath in the time of a load, which makes the room
	// a drag-out tank stands there, but the bath has no room for what is in it
	Full bool `json:"full"`

	// LastWater is the metal in the last water, at most: at the ratio asked for, behind the
	// drag-out tank where there is one.
	LastWater units.MassConcentration `json:"last_water" in:"mg/L"`

	coat *Coat
}

// An After is one bath when the job has gone through.
type After struct {
	Bath    string                  `json:"bath"`
	Metal   string                  `json:"metal"`
	Soluble bool                    `json:"soluble_anodes" with:"keep"` // the anodes replace about what the coat takes
	Before  units.MassConcentration `json:"before" in:"g/L"`
	Now     units.MassConcentration `json:"after" in:"g/L"`
	Coat    units.Mass              `json:"coat" in:"mg"` // that the coats took
	// that left with the load, upper end, less what comes back
	Drips  units.Mass   `json:"drips" with:"keep" in:"mg"`
	Gained units.Mass   `json:"gained" in:"mg"` // that came with the load from a bath of the same metal right before
	Drawn  units.Ratio  `json:"drawn" with:"keep" in:"%"`
	Loads  int          `json:"loads"` // like this one until the bath must be fed, this one counted; 0 when it never must
	Charge units.Charge `json:"charge" in:"A·min"`

	Feed   *ledger.Replenishment `json:"-"` // to bring the bath back; nil when no salt is known
	Adding plating.Note          `json:"-"` // what to mind when it is added; zero when there is nothing to mind

	need ledger.Need
}

// Refused reports whether a finding of the sequence forbids to run it, or the
// chemistry of a bath to use it: what is set in its tanks is then nobody's to set.
func (s *Sheet) Refused() bool {
	if sequence.Worst(s.Findings) == plating.SeverityStop {
		return true
	}
	for _, c := range s.Coats() {
		for _, n := range c.LayerResult.Notes {
			if n.Code != "" && n.Severity == plating.SeverityStop {
				return true
			}
		}
	}
	return false
}

// Forbidden reports whether a finding or a note forbids to start.
func (s *Sheet) Forbidden() bool { return len(s.Reasons()) > 0 }

// Confidence returns the weakest figure behind the coats.
func (s *Sheet) Confidence() origin.Seen {
	var seen []origin.Seen
	for _, c := range s.Coats() {
		seen = append(seen, c.Spread.Confidence)
	}
	return origin.Weakest(seen...)
}

// Hazards returns the hazards of all tanks together.
func (s *Sheet) Hazards() plating.Hazard {
	var h plating.Hazard
	for i := range s.Stops {
		if h |= s.Stops[i].Tank.Hazards; s.Stops[i].Coat != nil {
			h |= s.Stops[i].Coat.Layer.Bath.AllHazards()
		}
	}
	return h
}

// Cautions returns the few lines that stand in front of the job. What a tank
// brings stands at the tank: the cautions of its card.
func (s *Sheet) Cautions() []plating.Note { return plating.FrontCautions(s.Hazards()) }

// Beside returns what the review of a job that must not be run says besides its
// stops: findings of the sequence, and notes about the chemistry of coats. Its
// notes hold nothing to set.
func (s *Sheet) Beside() []plating.Note {
	var list []plating.Note
	for _, f := range s.Findings {
		if f.Severity != plating.SeverityStop {
			list = append(list, plating.Note{Code: string(f.Code), Severity: f.Severity, Text: f.Sentence(),
				Source: f.Source})
		}
	}
	for _, c := range s.Coats() {
		for _, n := range chemical(slices.Concat(c.Before, c.Notes)) {
			if n.Severity == plating.SeverityCaution || n.Severity == plating.SeverityWarning {
				n.Text, n.Do = c.Name+": "+plating.Sentences(n.Text, n.Do)+" ["+n.Source+"]", ""
				list = append(list, n)
			}
		}
	}
	return list
}

// chemical returns the notes that carry a code, and stops: what may be said of a coat
// that nobody may lay.
func chemical(notes []plating.Note) []plating.Note {
	return slices.DeleteFunc(slices.Clone(notes), func(n plating.Note) bool {
		return n.Code == "" && n.Severity != plating.SeverityStop
	})
}

// Reasons returns what forbids to start, in one line each: for text, page and
// JSON alike.
func (s *Sheet) Reasons() []string {
	var list []string
	for _, f := range s.Findings {
		if f.Severity == plating.SeverityStop {
			list = append(list, f.Sentence())
		}
	}
	for _, c := range s.Coats() {
		for _, n := range slices.Concat(c.Before, c.Notes) {
			if n.Severity == plating.SeverityStop {
				list = append(list, c.Name+": "+plating.Sentences(n.Text, n.Do)+" ["+n.Source+"]")
			}
		}
	}
	return list
}
