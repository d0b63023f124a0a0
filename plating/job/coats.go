package job

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/laydown/alloys"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// tank is the coat's tank as package sequence looks at it.
func (c *Coat) tank() sequence.Tank {
	t := sequence.Tank{Name: c.Layer.Name, Kind: sequence.Plate, Bath: c.reviewed(), MinThickness: c.Ordered,
		CurrentDensity: c.Result.CurrentDensity, Time: c.Result.Time, LiveEntry: c.Bath.LiveEntry,
		Vessel: c.Layer.Bath.Vessel}
	switch c.Layer.Role {
	case plating.RoleStrike:
		// a strike is entered with the current on, see the notes of the estimate
		t.Kind, t.LiveEntry = sequence.Strike, true
	case plating.RoleUnder:
		t.Kind = sequence.Underplate
	}
	return t
}

// reviewed is the bath as the review of the sequence takes it: that of the library as it
// stands, or the shop's own at the efficiency of this coat.
func (c *Coat) reviewed() bath.Bath {
	b := c.Bath
	if b.Library != "" {
		return b
	}
	b.Hazards = c.Layer.Bath.AllHazards()
	// The review judges one figure, not a curve: the efficiency that this coat runs at.
	eff, err := c.own.EfficiencyAt(bath.OperatingPoint{CurrentDensity: c.Result.CurrentDensity})
	var outside *units.RangeError
	if err == nil || errors.As(err, &outside) {
		b.Efficiency, b.Lines = eff, nil
	}
	if c.PHLent { // one of like chemistry says it: judged, and said to be lent
		b.PH = c.own.PH
	}
	return b
}

// spread computes each coat at the ends of what its bath is known in.
func (s *Sheet) spread() error {
	for _, c := range s.Coats() {
		if err := c.spread(); err != nil {
			return fmt.Errorf("%s: %w", units.Clip(c.Name), err)
		}
		s.remark(c)
	}
	return nil
}

// remark adds what the spread says of the minimum thickness, and takes out what does not
// hold for the base metal.
func (s *Sheet) remark(c *Coat) {
	p := &c.Spread
	if low := p.Thinnest.Low; p.Known && c.Timed && c.Ordered > 0 && low+c.Below < c.Ordered*(1-1e-9) &&
		c.Result.Thinnest+c.Below >= c.Ordered*(1-1e-9) {
		c.Notes = append(c.Notes, plating.Note{Severity: plating.SeverityWarning, Source: "Definition",
			Text: fmt.Sprintf("at an efficiency of %s the thinnest spot has %s of the minimum %s",
				p.Efficiency.Low.Percent(0), (low+c.Below).Text(units.Micrometre, 2), c.Ordered.Text(units.Micrometre, 2)),
			Do: fmt.Sprintf("plate %.2f times as long, or weigh a trial piece",
				math.Ceil(100*float64((c.Ordered-c.Below)/low))/100)})
	}
	if s.Sequenced { // the review of the sequence judges what is carried over
		c.Before = slices.DeleteFunc(slices.Clone(c.Before), func(n plating.Note) bool {
			return n.Between || n.Code == plating.CodeLiveEntry
		})
		// so does it with the chemistry
		c.Notes = slices.DeleteFunc(slices.Clone(c.Notes), func(n plating.Note) bool {
			return n.Code != "" && n.Code != plating.CodeUnusual && n.Severity > plating.SeverityInfo
		})
	}
	switch s.Base {
	case sequence.SubstrateUnknown, sequence.LowCarbonSteel, sequence.HighCarbonSteel, sequence.StainlessSteel:
		return
	}
	notes := slices.Clone(c.Notes)
	for k := range notes {
		notes[k].Do = strings.TrimSuffix(notes[k].Do, "; bake hardened steel afterwards")
	}
	c.Notes = notes
}

// spread finds how far the coat may be off by what its bath is known in.
func (c *Coat) spread() error {
	r := &c.Result
	c.Spread = Spread{Efficiency: band(r.Efficiency), Time: band(r.Time), Average: band(r.Average),
		Thinnest: band(r.Thinnest), FineMass: band(r.FineMass), Confidence: origin.Given}
	b := &c.own
	eff, err := b.EfficiencyAt(bath.OperatingPoint{CurrentDensity: r.CurrentDensity})
	var outside *units.RangeError
	if err != nil && !errors.As(err, &outside) {
		return err
	}
	// Single figures for efficiency and density leave nothing to vary. The spread stays a point
	// and is not Known, and the sheet says so instead of printing a false accuracy.
	if b.Library == "" && eff.Low == eff.High && b.Density.Low == b.Density.High {
		return nil
	}
	at := c.Layer // area filled in, what lies below taken off the minimum thickness
	if c.Timed {
		// Amps and minutes are set as computed: what the bath does with them varies.
		at.CurrentDensity, at.MinThickness = r.CurrentDensity, 0
	}
	// The coat is computed anew at the corners of efficiency and density. A coat with a minimum
	// thickness answers with a band of times; a timed coat answers with a band of thicknesses.
	sp, err := bath.EstimateRange(at, *b, bath.OperatingPoint{CurrentDensity: r.CurrentDensity,
		Temperature: at.Bath.Temperature.Set, Content: at.Bath.Content, Volume: at.Bath.Volume})
	if err != nil && !errors.As(err, &outside) {
		return err
	}
	c.Spread = Spread{Known: true, Efficiency: sp.Efficiency, Time: sp.Time, Average: sp.Average, Thinnest: sp.Thinnest,
		FineMass: sp.FineMass, Confidence: sp.Confidence}
	return nil
}

func band[Q units.Quantity](v Q) bath.Band[Q] { return bath.Band[Q]{Low: v, Typical: v, High: v} }

// karat finds the fineness of each coat from the constituents of its deposit.
func (s *Sheet) karat() error {
	for _, c := range s.Coats() {
		if fine := c.Layer.Bath.Fine; c.listed && fine > 0 {
			c.Fineness = alloys.NewFineness(fine)
			if c.Layer.Bath.Metal == "Au" {
				c.Karat = c.Fineness.Karat()
			}
		}
	}
	return nil
}

// cards writes the card of each tank, with the amps and minutes of the estimate.
func (s *Sheet) cards() error {
	timed := s.tanks()
	for i := range timed {
		if c := s.Stops[i].Coat; c != nil {
			timed[i].MinThickness, timed[i].CurrentDensity, timed[i].Time = 0, c.Result.CurrentDensity, c.Result.Time
		}
	}
	cards, err := sequence.Cards(timed, s.piece())
	if err != nil {
		if s.Forbidden() { // a tank that says too little is a finding already
			return nil
		}
		return err
	}
	for i := range cards {
		k := &cards[i]
		if c := s.Stops[i].Coat; c != nil {
			k.Name, k.MinThickness, k.Time = s.Stops[i].Tank.Name, s.Stops[i].tank.MinThickness, c.Spread.Time
			// Package sequence knows one area, that of the load. Amps and anode of a coat on part of
			// it are scaled to the coat's own area.
			if own := float64(c.Layer.Area) / float64(s.Area); own != 1 { // the layer's own area
				k.AmpsLow, k.AmpsTop = units.Current(own*float64(k.AmpsLow)), units.Current(own*float64(k.AmpsTop))
				k.AnodeLow, k.AnodeHigh = units.Area(own*float64(k.AnodeLow)), units.Area(own*float64(k.AnodeHigh))
			}
			k.Amps = c.Result.Current // of the layer's own area
			if !c.Timed {
				k.TimeBy, k.TimeFrom = "min_thickness", sequence.Seenness{Seen: c.Spread.Confidence}
			}
		}
		s.Stops[i].Tank = *k
	}
	return nil
}

// immersion sums the time at the line. A step without a usual immersion time counts as
// nothing.
func (s *Sheet) immersion() error {
	var handling units.Duration
	if s.Job.Price != nil {
		handling = s.Job.Price.Handling
	}
	for i := range s.Stops {
		k := &s.Stops[i].Tank
		t := k.Time
		if c := s.Stops[i].Coat; c != nil {
			t = c.Spread.Time
		}
		// Nobody stands by an oven: its time is summed by itself and costs no work at the line,
		// but the handling to it does.
		if k.Kind == sequence.Bake || k.Kind == sequence.Relieve {
			s.Oven.add(t, 0)
			t = bath.Band[units.Duration]{}
		}
		s.Line.add(t, handling)
	}
	return nil
}

// add adds the time of one tank.
func (l *LineTime) add(t bath.Band[units.Duration], handling units.Duration) {
	l.Low, l.Typical, l.High = l.Low+t.Low+handling, l.Typical+t.Typical+handling, l.High+t.High+handling
}
