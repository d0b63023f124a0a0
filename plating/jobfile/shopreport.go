package jobfile

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// A TankReport is one tank of the sequence. A coat's own figures stand in the
// layer it names, counted from 1.
type TankReport struct {
	Number      int          `json:"number"`
	Name        string       `json:"name"`
	Kind        string       `json:"kind"`
	Layer       int          `json:"layer,omitempty"`
	Holds       string       `json:"holds,omitempty"`
	Water       string       `json:"water,omitempty"`
	Temperature string       `json:"temperature,omitempty"`
	Polarity    string       `json:"polarity,omitempty"`
	Current     string       `json:"current,omitempty"`
	CurrentLow  string       `json:"current_low,omitempty"`
	CurrentHigh string       `json:"current_high,omitempty"`
	Volts       string       `json:"volts,omitempty"`
	PH          string       `json:"pH,omitempty"`
	PowerLow    string       `json:"power_low,omitempty"`
	PowerHigh   string       `json:"power_high,omitempty"`
	Warms       float64      `json:"warms_K,omitempty"` // the bath, at most
	TimeLow     string       `json:"time_low,omitempty"`
	Time        string       `json:"time,omitempty"`
	TimeHigh    string       `json:"time_high,omitempty"`
	TimeBy      string       `json:"time_by,omitempty"`
	Agitation   string       `json:"agitation,omitempty"`
	Anode       string       `json:"anode,omitempty"`
	AnodeLow    string       `json:"anode_area_low,omitempty"`
	AnodeHigh   string       `json:"anode_area_high,omitempty"`
	LiveEntry   bool         `json:"live_entry"`
	Look        []string     `json:"look"`
	Cautions    []NoteReport `json:"cautions"`
	Confidence  string       `json:"confidence"`
}

// A FindingReport is one finding of the review, its tanks counted from 1.
type FindingReport struct {
	Code     string `json:"code"`
	Severity string `json:"severity"`
	Tanks    []int  `json:"tanks"`
	Text     string `json:"text"`
	Reason   string `json:"reason"`
	Do       string `json:"do"`
	Source   string `json:"source"`
}

// A GasReport is the hydrogen of one tank and the fresh air that keeps it under
// a quarter of the lower flammable limit, were it mixed at once.
type GasReport struct {
	Tank     int     `json:"tank"`
	Hydrogen float64 `json:"hydrogen_m3_per_h"`
	Air      float64 `json:"air_m3_per_h"`
}

// A SpreadReport is how far a layer may be off by what its bath is known in.
type SpreadReport struct {
	EfficiencyLow  string `json:"efficiency_low"`
	EfficiencyHigh string `json:"efficiency_high"`
	TimeLow        string `json:"time_low"`
	TimeHigh       string `json:"time_high"`
	ThinnestLow    string `json:"thinnest_low"`
	ThinnestHigh   string `json:"thinnest_high"`
	MetalLow       string `json:"metal_mass_low"`
	MetalHigh      string `json:"metal_mass_high"`
	Confidence     string `json:"confidence"`
}

// A RinseReport is what leaves with the load.
type RinseReport struct {
	DragOutLow  string          `json:"drag_out_low"`
	DragOutHigh string          `json:"drag_out_high"`
	Source      string          `json:"source"`
	Note        string          `json:"note,omitempty"`
	Ratio       float64         `json:"ratio,omitempty"`
	Stages      int             `json:"stages,omitempty"`
	Water       string          `json:"water_per_rinse,omitempty"`
	Rinses      int             `json:"rinses,omitempty"`
	Single      string          `json:"running_water,omitempty"` // of one running rinse
	Singles     int             `json:"running_rinses,omitempty"`
	Total       string          `json:"water,omitempty"` // of all rinses
	Metals      []DraggedReport `json:"metals"`
}

// A DraggedReport is metal that clings to the load from one bath.
type DraggedReport struct {
	Bath       string `json:"bath"`
	Metal      string `json:"metal"`
	Low        string `json:"low"`
	High       string `json:"high"`
	Back       string `json:"back"`                  // share that the drag-out tank brings back
	Poured     string `json:"poured_back,omitempty"` // from the tank into the bath,
	Loads      int    `json:"after_loads,omitempty"` // so often, for that share,
	Evaporates string `json:"evaporates,omitempty"`  // and from the bath in the time of a load
	Onward     bool   `json:"onward,omitempty"`      // carried into the next bath of the same metal
	Lost       string `json:"lost"`
	LastWater  string `json:"last_water,omitempty"`
}

// A BathReport is a bath after the job.
type BathReport struct {
	Bath     string `json:"bath"`
	Metal    string `json:"metal"`
	Anodes   string `json:"anodes"`
	Before   string `json:"content_before"`
	Now      string `json:"content_now"`
	Coat     string `json:"taken_by_coats"`
	Drips    string `json:"dripped_off"`
	Gained   string `json:"gained,omitempty"` // that came with the load from the bath before
	Drawn    string `json:"drawn"`
	Loads    int    `json:"loads_until_fed,omitempty"`
	Charge   string `json:"charge"`
	Salt     string `json:"salt,omitempty"`
	SaltMass string `json:"salt_mass,omitempty"`
	Metals   string `json:"salt_brings,omitempty"`
	Adding   string `json:"when_adding,omitempty"` // what to mind when the salt is added
}

// A ClaimReport says what may be said of the gold: see [traveller.Claim].
type ClaimReport struct {
	Layers   []int        `json:"layers,omitempty"` // that count, numbered from 1
	Fineness string       `json:"fineness,omitempty"`
	Karat    string       `json:"karat,omitempty"`
	Fine     string       `json:"fine_gold_thinnest,omitempty"`
	Low      string       `json:"fine_gold_thinnest_low,omitempty"`
	Terms    []TermReport `json:"terms_reached,omitempty"` // of the United States guides
	Missing  string       `json:"missing,omitempty"`       // why no karat can be claimed
}

// A TermReport is a word for a gold coating whose figures are reached.
type TermReport struct {
	Name string `json:"name"`
	Seen string `json:"seen"` // how its limits are known
}

// A PriceReport is the quote, with what it is most sensitive to.
type PriceReport struct {
	price.Quote
	Each   string        `json:"each"` // of the total, for a piece
	Swings []SwingReport `json:"swings"`
}

// A SwingReport says what one per cent of an input does to the price.
type SwingReport struct {
	Input  string `json:"input"`
	Step   string `json:"step"`
	Change string `json:"change"`
}

// NewShopReport puts a sheet into the form that JSON gives: [NewReport] with
// sequence, spread, rinsing, baths and price beside it.
//
// Errors: a [*units.ValueError] for no sheet and for one whose lists do not belong
// together, as one made by hand; those of [NewReport] and of
// [price.Quote.Each].
func NewShopReport(s *traveller.Sheet, steps bool) (Report, error) {
	if err := checkSheet(s); err != nil {
		return Report{}, err
	}
	r, err := NewReport(s.Plain(), s.Result, steps)
	if err != nil {
		return Report{}, err
	}
	for i := range s.Spreads {
		if v := &s.Spreads[i]; v.Known {
			r.Layers[i].Spread = spreadReport(v)
		}
	}
	r.Cautions = noteReports(s.Cautions())
	r.Stop = s.Stop()
	r.Mended = s.Job.Mended
	if len(s.Notes) > 0 {
		r.Remarks = noteReports(s.Notes)
	}
	if s.Oven.High > 0 {
		r.OvenLow, r.OvenHigh = s.Oven.Low.Text(units.Minute, -1), s.Oven.High.Text(units.Minute, -1)
	}
	for _, w := range s.Practice.Reasons {
		r.Reasons = append(r.Reasons, w.String())
	}
	if p := &s.Practice; p.Title != "" {
		r.Practice = strings.TrimPrefix(p.Standard+", "+p.Title+" ["+p.Source+"]", ", ")
	}
	r.Claim = claimReport(s.Claim)
	if s.Gas != nil {
		r.Hydrogen = &GasReport{s.Gas.Tank + 1, s.Gas.Flow.Hydrogen.In(electrical.CubicMetrePerHour),
			s.Gas.Flow.Air.In(electrical.CubicMetrePerHour)}
	}
	for i := range s.Cards {
		t := tankReport(&s.Cards[i], s.Coats[i])
		if k := s.Coats[i]; k >= 0 && s.Powers[k].High > 0 {
			p := &s.Powers[k]
			t.PowerLow, t.PowerHigh, t.Warms = p.Low.Text(units.Watt, -1), p.High.Text(units.Watt, -1), float64(p.Warms)
		}
		r.Sequence = append(r.Sequence, t)
	}
	for _, f := range s.Findings {
		tanks := make([]int, len(f.Tanks))
		for i, t := range f.Tanks {
			tanks[i] = t + 1
		}
		r.Findings = append(r.Findings, FindingReport{string(f.Code), f.Severity.String(), tanks, f.Text, f.Reason, f.Remedy,
			f.Source})
	}
	if s.Rinsing != nil {
		r.Rinse = rinseReport(s.Rinsing)
	}
	for i := range s.Baths {
		r.Baths = append(r.Baths, bathReport(&s.Baths[i]))
	}
	if len(s.Tanks) > 0 || s.Quote != nil {
		r.LineTime, r.LineLow, r.LineHigh = s.Line.Typical.Text(units.Minute, -1), s.Line.Low.Text(units.Minute, -1),
			s.Line.High.Text(units.Minute, -1)
	}
	if s.Quote == nil || s.Refused() {
		r.refuse(s)
		return r, nil
	}
	each, err := s.Quote.Each(s.Quote.Total)
	if err != nil {
		return Report{}, err
	}
	r.Price = &PriceReport{Quote: *s.Quote, Each: each.String()}
	for _, c := range s.Swings {
		r.Price.Swings = append(r.Price.Swings, SwingReport{c.Input, c.Step.String(), c.Change.String()})
	}
	r.refuse(s)
	return r, nil
}

// checkSheet refuses a sheet whose lists are not those that traveller.Make returns.
func checkSheet(s *traveller.Sheet) error {
	if s == nil {
		return &units.ValueError{Field: "sheet", Value: "none", Need: "one that traveller.Make returned",
			Err: units.ErrInconsistent}
	}
	layers := len(s.Result.Layers)
	for _, c := range []struct {
		name      string
		have, all int
		none      bool // may be left out
	}{
		{"layers of the job", len(s.Job.Layers), layers, false}, {"spreads", len(s.Spreads), layers, true},
		{"powers", len(s.Powers), layers, true}, {"cards", len(s.Cards), len(s.Tanks), false},
		{"coats of the tanks", len(s.Coats), len(s.Tanks), false},
	} {
		if c.have != c.all && !(c.none && c.have == 0) {
			return &units.ValueError{Field: c.name, Value: strconv.Itoa(c.have),
				Need: fmt.Sprintf("%d, as traveller.Make returns them", c.all), Err: units.ErrInconsistent}
		}
	}
	for i, coat := range s.Coats {
		if coat < -1 || coat >= layers {
			return &units.ValueError{Field: fmt.Sprintf("coat of tank %d", i+1), Value: strconv.Itoa(coat),
				Need: fmt.Sprintf("-1, or one of the %d layers from 0", layers), Err: units.ErrInconsistent}
		}
	}
	return nil
}

func spreadReport(v *traveller.Spread) *SpreadReport {
	return &SpreadReport{EfficiencyLow: v.Efficiency.Low.Percent(-1), EfficiencyHigh: v.Efficiency.High.Percent(-1),
		TimeLow: v.Time.Low.Text(units.Minute, -1), TimeHigh: v.Time.High.Text(units.Minute, -1),
		ThinnestLow: v.Thinnest.Low.Text(units.Micrometre, -1), ThinnestHigh: v.Thinnest.High.Text(units.Micrometre, -1),
		MetalLow: v.FineMass.Low.Text(units.Milligram, -1), MetalHigh: v.FineMass.High.Text(units.Milligram, -1),
		Confidence: v.Confidence.String()}
}

func tankReport(c *sequence.Card, coat int) TankReport {
	t := TankReport{Number: c.Number, Name: c.Name, Kind: c.Kind.String(), Layer: coat + 1, Holds: c.Chemistry,
		Water:     c.Water,
		Agitation: c.Agitation.Text, Anode: c.Anode.Text, LiveEntry: c.LiveEntry, Look: slices.Clone(c.Look),
		Cautions: noteReports(c.Cautions), Confidence: c.Confidence.String()}
	if t.Look == nil {
		t.Look = []string{}
	}
	if c.Temperature.Given() {
		t.Temperature = c.Temperature.Text()
	}
	if c.Volts.Given() {
		t.Volts = c.Volts.Text()
	}
	if c.PH.Given() {
		t.PH = c.PH.Text()
	}
	if c.Set > 0 {
		t.Polarity, t.Current = c.Polarity.String(), c.Amps.Text(units.Ampere, -1)
		if c.AmpsTop > 0 {
			t.CurrentLow, t.CurrentHigh = c.AmpsLow.Text(units.Ampere, -1), c.AmpsTop.Text(units.Ampere, -1)
		}
	}
	if c.Time.Typical > 0 {
		t.TimeLow, t.Time, t.TimeHigh, t.TimeBy = c.Time.Low.Text(units.Minute, -1), c.Time.Typical.Text(units.Minute, -1),
			c.Time.High.Text(units.Minute, -1), c.TimeBy
	}
	if c.AnodeHigh > 0 {
		t.AnodeLow, t.AnodeHigh = c.AnodeLow.Text(units.SquareCentimetre, -1), c.AnodeHigh.Text(units.SquareCentimetre, -1)
	}
	return t
}

func rinseReport(v *traveller.Rinsing) *RinseReport {
	r := &RinseReport{DragOutLow: v.Carried.Low.Text(units.Millilitre, -1),
		DragOutHigh: v.Carried.High.Text(units.Millilitre, -1), Source: v.Carried.Source,
		Note: v.Carried.Note, Ratio: float64(v.Ratio), Metals: []DraggedReport{}}
	if v.Water > 0 {
		r.Stages, r.Water, r.Rinses = v.Stages, v.Water.Text(units.Litre, -1), v.Rinses
		if r.Singles = v.Singles; r.Singles > 0 {
			r.Single = v.Single.Text(units.Litre, -1)
		}
		r.Total = v.Total.Text(units.Litre, -1)
	}
	for _, m := range v.Metals {
		d := DraggedReport{Bath: m.Bath, Metal: m.Metal, Onward: m.Onward, Low: m.Low.Text(units.Milligram, -1),
			High: m.High.Text(units.Milligram, -1),
			Back: m.Back.Percent(-1), Lost: m.Lost.Text(units.Milligram, -1)}
		if m.Poured > 0 {
			d.Evaporates = m.Evaporates.Text(units.Millilitre, -1)
			d.Poured, d.Loads = m.Poured.Text(units.Millilitre, -1), m.Loads
		}
		if m.LastWater > 0 {
			d.LastWater = m.LastWater.Text(units.MilligramPerLitre, -1)
		}
		r.Metals = append(r.Metals, d)
	}
	return r
}

func bathReport(a *traveller.After) BathReport {
	b := BathReport{Bath: a.Bath, Metal: a.Metal, Anodes: "insoluble", Before: a.Before.Text(units.GramPerLitre, -1),
		Now:  a.Now.Text(units.GramPerLitre, -1),
		Coat: a.Coat.Text(units.Milligram, -1), Drips: a.Drips.Text(units.Milligram, -1), Drawn: a.Drawn.Percent(-1),
		Loads: a.Loads, Charge: a.Charge.Text(units.AmpereMinute, -1)}
	if a.Soluble {
		b.Anodes = "soluble"
	}
	if a.Gained > 0 {
		b.Gained = a.Gained.Text(units.Milligram, -1)
	}
	if a.Feed != nil {
		b.Salt, b.SaltMass, b.Metals = a.Feed.Salt.String(), a.Feed.SaltMass.Text(units.Gram, -1),
			a.Feed.Metal.Text(units.Gram, -1)
		if a.Adding.Do != "" {
			b.Adding = a.Adding.Line()
		}
	}
	return b
}

// claimReport puts what may be said of the gold into the form that JSON gives.
func claimReport(c *traveller.Claim) *ClaimReport {
	if c == nil {
		return nil
	}
	if c.Missing != "" {
		return &ClaimReport{Missing: c.Missing}
	}
	r := &ClaimReport{Fineness: c.Fineness.String(), Karat: c.Karat.String(), Fine: c.Fine.Text(units.Micrometre, -1)}
	if c.Low > 0 {
		r.Low = c.Low.Text(units.Micrometre, -1)
	}
	for _, i := range c.Coats {
		r.Layers = append(r.Layers, i+1)
	}
	for _, t := range c.Terms {
		r.Terms = append(r.Terms, TermReport{Name: t.Name, Seen: t.Seen.String()})
	}
	return r
}

// refuse takes out of a report what nobody may set: of a job that must not be
// run, reasons and names are left, and the sheet prints no more either.
func (r *Report) refuse(s *traveller.Sheet) {
	r.Stops = s.Stops()
	if !s.Refused() {
		return
	}
	for i := range r.Layers {
		l := &r.Layers[i]
		before, about := s.CoatNotes(i)
		r.Layers[i] = LayerReport{Name: l.Name, Role: l.Role, Bath: l.Bath, Metal: l.Metal, Before: noteReports(before),
			Notes: noteReports(about), Hazards: l.Hazards, Cautions: l.Cautions, Source: l.Source}
	}
	for i := range r.Sequence {
		t := &r.Sequence[i]
		r.Sequence[i] = TankReport{Number: t.Number, Name: t.Name, Kind: t.Kind, Layer: t.Layer, Holds: t.Holds,
			Look: []string{}, Cautions: t.Cautions, Confidence: t.Confidence}
	}
	r.Time, r.Charge, r.Metals, r.LineTime, r.LineLow, r.LineHigh, r.OvenLow, r.OvenHigh = "", "", []MetalReport{}, "", "",
		"", "", ""
	r.Hydrogen, r.Rinse, r.Baths, r.Price, r.Claim = nil, nil, nil, nil, nil
}
