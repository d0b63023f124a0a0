package traveller

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/baths"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
)

// tank is the coat's tank as package sequence looks at it.
func (l *Layer) tank(r *plating.LayerResult) (sequence.Tank, error) {
	b, err := l.bath(r)
	if err != nil {
		return sequence.Tank{}, err
	}
	t := sequence.Tank{Name: l.Name, Kind: sequence.Plate, Bath: b, MinThickness: l.MinThickness,
		CurrentDensity: r.Result.CurrentDensity, Time: r.Result.Time, LiveEntry: b.LiveEntry, Vessel: l.Bath.Vessel}
	switch l.Role {
	case plating.RoleStrike:
		t.Kind, t.LiveEntry = sequence.Strike, true // a strike is entered with the current on, see the notes of the estimate
	case plating.RoleUnder:
		t.Kind = sequence.Underplate
	}
	return t, nil
}

// bath is the layer's bath with its ranges: the library's, or the shop's own
// figures over those that a bath of like chemistry lends.
func (l *Layer) bath(r *plating.LayerResult) (baths.Bath, error) {
	if l.Whole {
		b := l.Library
		if !l.Bath.Salt.IsZero() { // the job's own word over the library's: it is reviewed
			b.Salt = l.Bath.Salt
		}
		return b, nil
	}
	own := &l.Bath
	if own.Metal == "" {
		return baths.Bath{}, missing("metal of the bath", "not given", "its symbol; the review of the sequence depends on it")
	}
	e, err := faraday.Lookup(own.Metal)
	if err != nil {
		return baths.Bath{}, err
	}
	b := l.Library
	if b.Name != "" && b.Metal != own.Metal {
		return baths.Bath{}, missing("bath of like chemistry", b.Key+", which deposits "+b.Metal, "one that deposits "+
			own.Metal)
	}
	b.Key, b.Name, b.Metal = "", own.Name, own.Metal
	if b.Name == "" {
		b.Name = "bath of " + title(&l.Layer, 0)
	}
	switch s := own.Solution(); {
	case s.Valence != 0:
		b.Valence = s.Valence
	case b.Valence == 0:
		b.Valence = e.UsualValence()
	}
	b.Use = map[plating.Role]baths.Use{plating.RoleStrike: baths.UseStrike, plating.RoleUnder: baths.UseUnder}[l.Role]
	if b.Use == 0 {
		b.Use = baths.UseFinish
	}
	b.Hazards, b.Insoluble = own.AllHazards(), own.InsolubleAnode
	switch {
	case own.Anode != "" && own.Anode != l.Library.Anode.Text:
		b.Anode = baths.Words{Text: own.Anode, Source: origin.Job, Seen: origin.Given}
	case own.InsolubleAnode != l.Library.Insoluble:
		b.Anode = baths.Words{} // the library's anode is of the other kind
	}
	b.Density = given(own, own.Deposit.Density, own.Deposit.Density)
	b.Efficiency, b.Lines = given(own, r.Result.Efficiency, r.Result.Efficiency), nil
	if !l.Low.IsZero() && !l.High.IsZero() {
		low, _ := l.Low.At(r.Result.CurrentDensity)
		high, _ := l.High.At(r.Result.CurrentDensity)
		b.Efficiency = given(own, low, high)
	}
	b.Content = given(own, own.Content, own.Content)
	b.CurrentDensity = over(b.CurrentDensity, given(own, own.Window.Low, own.Window.High))
	b.Volts = over(b.Volts, given(own, own.Volts.Low, own.Volts.High))
	b.Temperature = over(b.Temperature, given(own, own.Temperature.Low, own.Temperature.High))
	if !l.lentPH {
		b.PH = over(b.PH, given(own, own.PH.Low, own.PH.High))
	}
	b.Salt = own.Salt
	if own.MaxThickness > 0 {
		b.MaxThickness = given(own, 0, own.MaxThickness)
	}
	return b, nil
}

// given is a figure of the shop's own bath.
func given[Q units.Quantity](b *plating.Bath, low, high Q) baths.Range[Q] {
	source := b.Source
	if source == "" {
		source = origin.Job
	}
	return baths.Range[Q]{Low: low, High: high, Source: source, Seen: origin.Given}
}

func over[Q units.Quantity](lent, own baths.Range[Q]) baths.Range[Q] {
	if own.Given() {
		return own
	}
	return lent
}

// spread computes each coat at the ends of what its bath is known in.
func (s *Sheet) spread() error {
	s.Spreads = make([]Spread, len(s.Result.Layers))
	for i := range s.Result.Layers {
		lr := &s.Result.Layers[i]
		var err error
		if s.Spreads[i], err = s.Job.Layers[i].spread(lr); err != nil {
			return fmt.Errorf("%s: %w", units.Clip(title(&lr.Layer, i)), err)
		}
		s.remark(i, lr)
	}
	return nil
}

// remark adds what the spread says of the minimum thickness, and takes out what does not
// hold for the base metal.
func (s *Sheet) remark(i int, lr *plating.LayerResult) {
	l, p := &s.Job.Layers[i], &s.Spreads[i]
	if low := p.Thinnest.Low; p.Known && l.Time > 0 && l.MinThickness > 0 && low+lr.Below < l.MinThickness*(1-1e-9) &&
		lr.Result.Thinnest+lr.Below >= l.MinThickness*(1-1e-9) {
		lr.Notes = append(lr.Notes, plating.Note{Severity: plating.SeverityWarning, Source: "Definition",
			Text: fmt.Sprintf("at an efficiency of %s the thinnest spot has %s of the minimum %s", p.Efficiency.Low.Percent(0),
				(low+lr.Below).Text(units.Micrometre, 2), l.MinThickness.Text(units.Micrometre, 2)),
			Do: fmt.Sprintf("plate %.2f times as long, or weigh a trial piece",
				math.Ceil(100*float64((l.MinThickness-lr.Below)/low))/100)})
	}
	if len(s.Tanks) > 0 { // the review of the sequence judges what is carried over
		lr.Before = slices.DeleteFunc(slices.Clone(lr.Before), func(n plating.Note) bool {
			return n.Between ||
				n.Code == plating.CodeLiveEntry
		})
		// so does it with the chemistry
		lr.Notes = slices.DeleteFunc(slices.Clone(lr.Notes), func(n plating.Note) bool {
			return n.Code != "" && n.Code != plating.CodeUnusual && n.Severity > plating.SeverityInfo
		})
	}
	switch s.Job.Base {
	case sequence.SubstrateUnknown, sequence.LowCarbonSteel, sequence.HighCarbonSteel, sequence.StainlessSteel:
		return
	}
	notes := slices.Clone(lr.Notes)
	for k := range notes {
		notes[k].Do = strings.TrimSuffix(notes[k].Do, "; bake hardened steel afterwards")
	}
	lr.Notes = notes
}

func (l *Layer) spread(lr *plating.LayerResult) (Spread, error) {
	r := &lr.Result
	one := Spread{Efficiency: band(r.Efficiency), Time: band(r.Time), Average: band(r.Average), Thinnest: band(r.Thinnest),
		FineMass: band(r.FineMass), Confidence: origin.Given}
	at := lr.Layer // area filled in, what lies below taken off the minimum thickness
	if l.Time > 0 {
		// Amps and minutes are set as computed: what the bath does with them varies.
		at.CurrentDensity, at.MinThickness = r.CurrentDensity, 0
	}
	switch {
	case l.Whole:
		sp, err := baths.EstimateRange(at, l.Library, baths.Point{CurrentDensity: r.CurrentDensity,
			Temperature: at.Bath.Temperature.Set, Content: at.Bath.Content, Volume: at.Bath.Volume})
		if err != nil && sp.Layer.Bath.Name == "" {
			return Spread{}, err
		}
		return Spread{Known: true, Efficiency: sp.Efficiency, Time: sp.Time, Average: sp.Average, Thinnest: sp.Thinnest,
			FineMass: sp.FineMass, Confidence: sp.Confidence}, nil
	case l.Low.IsZero() || l.High.IsZero():
		return one, nil
	}
	one.Known = true
	for _, curve := range []plating.EfficiencyCurve{l.Low, l.High} {
		end := at
		end.Bath.Efficiency = curve
		v, err := plating.Estimate(&end)
		if err != nil {
			return Spread{}, err
		}
		stretch(&one.Efficiency, v.Efficiency)
		stretch(&one.Time, v.Time)
		stretch(&one.Average, v.Average)
		stretch(&one.Thinnest, v.Thinnest)
		stretch(&one.FineMass, v.FineMass)
	}
	return one, nil
}

func band[Q units.Quantity](v Q) baths.Band[Q] { return baths.Band[Q]{Low: v, Typical: v, High: v} }

func stretch[Q units.Quantity](b *baths.Band[Q], v Q) {
	b.Low, b.High = min(b.Low, v), max(b.High, v)
}

// cards writes the card of each tank, with the amps and minutes of the estimate.
func (s *Sheet) cards() error {
	if len(s.Tanks) == 0 {
		return nil
	}
	timed := make([]sequence.Tank, len(s.Tanks))
	copy(timed, s.Tanks)
	for i := range timed {
		if k := s.Coats[i]; k >= 0 {
			r := &s.Result.Layers[k].Result
			timed[i].MinThickness, timed[i].CurrentDensity, timed[i].Time = 0, r.CurrentDensity, r.Time
			s.Tanks[i].CurrentDensity, s.Tanks[i].Time = r.CurrentDensity, r.Time
		}
	}
	var err error
	if s.Cards, err = sequence.Cards(timed, s.piece()); err != nil {
		if s.Stop() { // a tank that says too little is a finding already
			return nil
		}
		return err
	}
	for i := range s.Cards {
		if k := s.Coats[i]; k >= 0 {
			c := &s.Cards[i]
			c.MinThickness, c.Time = s.Tanks[i].MinThickness, s.Spreads[k].Time
			if own := float64(s.Result.Layers[k].Layer.Area) / float64(s.Area); own != 1 { // the layer's own area
				c.AmpsLow, c.AmpsTop = units.Current(own*float64(c.AmpsLow)), units.Current(own*float64(c.AmpsTop))
				c.AnodeLow, c.AnodeHigh = units.Area(own*float64(c.AnodeLow)), units.Area(own*float64(c.AnodeHigh))
			}
			c.Amps = s.Result.Layers[k].Result.Current // of the layer's own area
			if s.Job.Layers[k].Time == 0 {
				c.TimeBy, c.TimeFrom = "min_thickness", sequence.Seenness{Seen: s.Spreads[k].Confidence}
			}
		}
	}
	return nil
}

// immersion sums the time at the line. A step without a usual immersion time counts as nothing.
func (s *Sheet) immersion() {
	var handling units.Duration
	if s.Job.Price != nil {
		handling = s.Job.Price.Handling
	}
	if len(s.Cards) == 0 {
		for i := range s.Spreads {
			t := s.Spreads[i].Time
			s.Line.Low, s.Line.Typical, s.Line.High = s.Line.Low+t.Low+handling, s.Line.Typical+t.Typical+handling, s.Line.High+
				t.High+handling
		}
		return
	}
	for i := range s.Cards {
		t := s.Cards[i].Time
		if k := s.Cards[i].Kind; k == sequence.Bake || k == sequence.Relieve {
			s.Oven.Low, s.Oven.Typical, s.Oven.High = s.Oven.Low+t.Low, s.Oven.Typical+t.Typical, s.Oven.High+t.High
			t = baths.Band[units.Duration]{}
		}
		s.Line.Low, s.Line.Typical, s.Line.High = s.Line.Low+t.Low+handling, s.Line.Typical+t.Typical+handling, s.Line.High+
			t.High+handling
	}
}
