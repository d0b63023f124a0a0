package traveller

import (
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// A Sheet is a job worked out.
type Sheet struct {
	Job    Job
	Area   units.Area        // plated
	Wetted units.Area        // with what is masked: it carries solution too
	Result plating.JobResult // of the coats

	// Tanks, Cards and Coats run over the sequence; all are empty without one.
	// Coats holds the number of a tank's coat in Result.Layers, -1 for a tank
	// that does not plate.
	Tanks    []sequence.Tank
	Cards    []sequence.Card
	Coats    []int
	Findings []sequence.Finding
	Practice sequence.Practice // of the base metal; zero without a sequence

	Spreads []Spread // by coat
	Powers  []Power  // by coat
	Line    LineTime // time at the line: immersion times and handling; rinses are not counted
	Oven    LineTime // of a bake, which nobody stands by
	Gas     *Gas     // most hydrogen
	Claim   *Claim   // what may be said of the gold; nil when the last coat is of another metal
	Rinsing *Rinsing
	Baths   []After

	Quote  *price.Quote
	Swings []price.Change // what the price is most sensitive to, the largest first
	Notes  []plating.Note // what the sheet could not compute
}

// A Spread is how far a coat may be off by what its bath is known in. The area,
// the current and the ratio of thinnest to average are not in it.
type Spread struct {
	Known      bool // false: the bath is given in single figures and nothing can be said
	Efficiency baths.Band[units.Efficiency]
	Time       baths.Band[units.Duration]
	Average    baths.Band[units.Length]
	Thinnest   baths.Band[units.Length]
	FineMass   baths.Band[units.Mass]
	Confidence origin.Seen // the weakest figure that went in
}

// A Power is what the rectifier gives to a coat's bath, between the ends of the
// bath's volts; zero where they are not given. All of it ends as heat, or nearly.
type Power struct {
	Low, High units.Power
	Warms     units.TemperatureDifference // at most, in the time of the coat; 0 without a volume
}

// A LineTime is time at the line, with the handling from tank to tank.
type LineTime struct{ Low, Typical, High units.Duration }

// A Rinsing says what the load carries out of each bath and what water it wants.
type Rinsing struct {
	Carried rinse.Carried  // by the load, out of any one bath
	Ratio   units.Ratio    // asked for
	Stages  int            // of a counterflow rinse, the most that one has
	Water   units.Volume   // for one such rinse, at the upper end of Carried; the most that one takes; 0 when no ratio is asked for
	Rinses  int            // that run in counterflow: of the sequence, else one
	Single  units.Volume   // for one running rinse, each of its stages with water of its own; the most that one takes
	Singles int            // running rinses of the sequence; the final rinse is not one
	Total   units.Volume   // of water for all of them
	Metals  []MetalDragged // of the precious baths
	Warning string         // of the drag-out table, "" for none
}

// A MetalDragged is metal that clings to the load from one bath.
type MetalDragged struct {
	Bath      string
	Metal     string
	Content   units.MassConcentration // of the bath: as given, else the middle of the library's range
	Low, High units.Mass
	Back      units.Ratio // share that the drag-out tank brings back; 0 when none is described
	Onward    bool        // carried straight into the next bath of the same metal: nothing is lost
	Lost      units.Mass  // High less what comes back

	// What the share supposes: Poured from the drag-out tank into the bath after
	// every Loads loads, and fresh water into the tank. Zero without one.
	Poured     units.Volume
	Loads      int
	Evaporates units.Volume // from the bath in the time of a load, which makes the room
	Full       bool         // a drag-out tank stands there, but the bath has no room for what is in it

	LastWater units.MassConcentration // of the metal in the last water, at most: at the ratio asked for, behind the drag-out tank where there is one

	coat int
}

// An After is one bath when the job has gone through.
type After struct {
	Bath    string
	Metal   string
	Soluble bool // the anodes replace about what the coat takes
	Before  units.MassConcentration
	Now     units.MassConcentration
	Coat    units.Mass // that the coats took
	Drips   units.Mass // that left with the load, upper end, less what comes back
	Gained  units.Mass // that came with the load from a bath of the same metal right before
	Drawn   units.Ratio
	Loads   int // like this one until the bath must be fed, this one counted; 0 when it never must
	Charge  units.Charge

	Feed   *ledger.Replenishment // to bring the bath back; nil when no salt is known
	Adding plating.Note          // what to mind when it is added; zero when there is nothing to mind

	need ledger.Need
}

// Refused reports whether a finding of the sequence forbids to run it, or the
// chemistry of a bath to use it: what is set in its tanks is then nobody's to set.
func (s *Sheet) Refused() bool {
	if sequence.Worst(s.Findings) == plating.SeverityStop {
		return true
	}
	for i := range s.Result.Layers {
		for _, n := range s.Result.Layers[i].Notes {
			if n.Code != "" && n.Severity == plating.SeverityStop {
				return true
			}
		}
	}
	return false
}

// Stop reports whether a finding or a note forbids to start.
func (s *Sheet) Stop() bool { return len(s.Stops()) > 0 }

// Confidence returns the weakest figure behind the coats.
func (s *Sheet) Confidence() origin.Seen {
	seen := make([]origin.Seen, len(s.Spreads))
	for i := range s.Spreads {
		seen[i] = s.Spreads[i].Confidence
	}
	return origin.Weakest(seen...)
}

// Hazards returns the hazards of all tanks together.
func (s *Sheet) Hazards() plating.Hazard {
	h := s.Result.Hazards()
	for i := range s.Cards {
		h |= s.Cards[i].Hazards
	}
	return h
}

// Cautions returns the few lines that stand in front of the job. What a tank
// brings stands at the tank: [Sheet.AtTank], and the cautions of its card.
func (s *Sheet) Cautions() []plating.Note { return plating.FrontCautions(s.Hazards()) }

// AtTank returns the lines that stand under the name of a coat's tank.
func (s *Sheet) AtTank(coat int) []plating.Note {
	if coat < 0 || coat >= len(s.Result.Layers) {
		return nil
	}
	solution := s.Result.Layers[coat].Layer.Bath.Solution()
	return solution.AtTank()
}

// Beside returns what the review of a job that must not be run says besides its
// stops: findings of the sequence, and notes about the chemistry of coats. Its
// notes hold nothing to set.
func (s *Sheet) Beside() []plating.Note {
	var list []plating.Note
	for _, f := range s.Findings {
		if f.Severity != plating.SeverityStop {
			list = append(list, plating.Note{Code: string(f.Code), Severity: f.Severity, Text: f.Sentence(), Source: f.Source})
		}
	}
	for i := range s.Result.Layers {
		lr := &s.Result.Layers[i]
		for _, n := range chemical(slices.Concat(lr.Before, lr.Notes)) {
			if n.Severity == plating.SeverityCaution || n.Severity == plating.SeverityWarning {
				n.Text, n.Do = title(&lr.Layer, i)+": "+plating.Sentences(n.Text, n.Do)+" ["+n.Source+"]", ""
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

// CoatNotes returns the notes of a coat before it and about it. Of a job that must
// not be run they are those that name nothing to set.
func (s *Sheet) CoatNotes(coat int) (before, about []plating.Note) {
	if coat < 0 || coat >= len(s.Result.Layers) {
		return nil, nil
	}
	lr := &s.Result.Layers[coat]
	if s.Refused() {
		return chemical(lr.Before), chemical(lr.Notes)
	}
	return lr.Before, lr.Notes
}

// Stops returns what forbids to start, in one line each: for text, page and
// JSON alike.
func (s *Sheet) Stops() []string {
	var list []string
	for _, f := range s.Findings {
		if f.Severity == plating.SeverityStop {
			list = append(list, f.Sentence())
		}
	}
	for i := range s.Result.Layers {
		lr := &s.Result.Layers[i]
		for _, n := range slices.Concat(lr.Before, lr.Notes) {
			if n.Severity == plating.SeverityStop {
				list = append(list, title(&lr.Layer, i)+": "+plating.Sentences(n.Text, n.Do)+" ["+n.Source+"]")
			}
		}
	}
	return list
}
