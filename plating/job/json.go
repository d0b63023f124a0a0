package job

import (
	"io"
	"slices"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/plating/electrical"
	"example.com/laydown/plating/internal/strictjson"
	"example.com/laydown/plating/price"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
	"example.com/laydown/units/origin"
	"example.com/laydown/units/working"
)

// ResultFormat is the value of the field "format" of a sheet in JSON.
const ResultFormat = "laydown result 1"

// The form of a sheet in JSON. Quantities are text with a unit and all their digits: each
// reads back to the very value computed; what is zero or not known is left out. Of a job
// that must not be run reasons and names are left, and nothing to set.
type sheetForm struct {
	Format    string               `json:"format" is:"laydown result 1"`
	Job       string               `json:"job" with:"keep"`
	Substrate string               `json:"substrate"`
	Stop      bool                 `json:"stop" with:"keep"` // a note or a finding says not to start
	Reasons   []string             `json:"stop_reasons"`     // in the words of the sheet
	Parts     []partForm           `json:"parts"`
	Area      units.Area           `json:"area" in:"cm²"` // of the load
	Cautions  []plating.Note       `json:"cautions"`
	Tanks     []tankForm           `json:"tanks"`
	Findings  []sequence.Finding   `json:"findings"` // tanks counted from 1
	Practice  string               `json:"practice"`
	Why       []string             `json:"practice_reasons"`
	Metals    []plating.MetalTotal `json:"metals"`
	Time      units.Duration       `json:"plating_time" in:"min"`
	Charge    units.Charge         `json:"charge" in:"A·min"`
	Line      LineTime             `json:"line_time"`
	Oven      LineTime             `json:"oven_time"`
	Hydrogen  *gasForm             `json:"hydrogen"` // of the tank that gives off most
	Claim     *claimForm           `json:"claim"`    // of an outer coat of gold
	Rinsing   *Rinsing             `json:"rinsing"`
	Baths     []afterForm          `json:"baths"`
	Price     *priceForm           `json:"price"`
	Remarks   []plating.Note       `json:"remarks"`  // what could not be computed
	Mended    []string             `json:"mended"`   // what was done to the meshes of parts
	Document  []Section            `json:"document"` // the sheet in words, for a layout of one's own
}

type partForm struct {
	Name   string     `json:"name" with:"keep"`
	Count  int        `json:"count"`
	Area   units.Area `json:"area" in:"cm²"` // plated area of one, what is masked taken off
	Masked units.Area `json:"masked" in:"cm²"`
}

// tankForm is one stop.
type tankForm struct {
	sequence.Card
	Coat *coatForm `json:"coat"`
}

type coatForm struct {
	Name           string                  `json:"name"`
	Role           plating.Role            `json:"role" with:"keep"`
	Bath           string                  `json:"bath" with:"keep"`
	Metal          string                  `json:"metal"`
	Area           units.Area              `json:"area" in:"cm²"`
	CurrentDensity units.CurrentDensity    `json:"current_density" in:"A/dm²"`
	Current        units.Current           `json:"current" in:"A"`
	Time           units.Duration          `json:"time" in:"min"`
	Charge         units.Charge            `json:"charge" in:"A·min"`
	Efficiency     units.Efficiency        `json:"efficiency" in:"%"`
	MinThickness   units.Length            `json:"min_thickness" in:"µm"` // what lies below not taken off
	Average        units.Length            `json:"average_thickness" in:"µm"`
	Thinnest       units.Length            `json:"thinnest" in:"µm"`
	Below          units.Length            `json:"counted_from_below" in:"µm"`
	Mass           units.Mass              `json:"deposit_mass" in:"mg"`
	FineMass       units.Mass              `json:"metal_mass" in:"mg"`
	Fineness       string                  `json:"fineness"`
	Karat          string                  `json:"karat"`
	MetalLeft      units.Mass              `json:"metal_left" in:"g"`
	ContentLeft    units.MassConcentration `json:"content_left" in:"g/L"`
	VoltsLow       units.Voltage           `json:"volts_low" in:"V"`
	VoltsHigh      units.Voltage           `json:"volts_high" in:"V"`
	Temperature    units.Temperature       `json:"temperature" in:"°C"`
	Ratio          units.Ratio             `json:"min_to_average" in:"%"`
	Basis          string                  `json:"min_to_average_basis"`
	Uncertainty    units.Ratio             `json:"min_to_average_uncertainty" in:"%"`
	Spread         *Spread                 `json:"spread"`
	Power          *RectifierPower         `json:"power"`
	Hazards        plating.Hazard          `json:"hazards" with:"keep" rule:"flags"`
	Before         []plating.Note          `json:"before"` // to mind on the way in
	Notes          []plating.Note          `json:"notes"`
	Source         string                  `json:"source"` // of the bath's figures
	Working        []working.Step          `json:"working"`
}

type gasForm struct {
	Tank     int     `json:"tank"`
	Hydrogen float64 `json:"hydrogen_m3_per_h"`
	Air      float64 `json:"air_m3_per_h"`
}

type claimForm struct {
	Missing  string       `json:"missing"` // what is not given, so that no claim can be made
	Fineness string       `json:"fineness"`
	Karat    string       `json:"karat"`
	Fine     units.Length `json:"fine_gold_equivalent" in:"µm"` // at the thinnest spot
	Low      units.Length `json:"fine_gold_equivalent_low" in:"µm"`
	Layers   []int        `json:"layers"` // that count, from 1
	Terms    []termForm   `json:"terms"`
}

type termForm struct {
	Name string      `json:"name"`
	Seen origin.Seen `json:"seen" with:"keep"`
}

type afterForm struct {
	After
	Salt     string     `json:"salt"`
	SaltMass units.Mass `json:"salt_mass" in:"g"`
	Metal    units.Mass `json:"salt_metal" in:"g"`
	Adding   string     `json:"adding"`
}

type priceForm struct {
	price.Quote
	Each   string       `json:"each"`
	Swings []changeForm `json:"swings"` // of one per cent more of each
}

type changeForm struct {
	Input  string `json:"input"`
	Step   string `json:"step"`
	Change string `json:"change"`
}

// WriteJSON writes the sheet as JSON, with what [SheetOptions] ask for.
//
// Errors: those of [Sheet.Document]; those of w.
func (s *Sheet) WriteJSON(w io.Writer, o SheetOptions) error {
	if w == nil {
		return units.Missing("writer", "one that takes the JSON")
	}
	f, err := s.form(o)
	if err != nil {
		return err
	}
	raw, err := strictjson.Encode(f)
	if err != nil {
		return err
	}
	_, err = w.Write(raw)
	return err
}

// MarshalJSON writes the sheet as [Sheet.WriteJSON] does.
func (s *Sheet) MarshalJSON() ([]byte, error) {
	f, err := s.form(SheetOptions{})
	if err != nil {
		return nil, err
	}
	return strictjson.Encode(f)
}

// form fills the form from the sheet.
func (s *Sheet) form(o SheetOptions) (*sheetForm, error) {
	// The figures come from the sheet, the words from the document. The working is given as
	// steps with each coat, so the document is made without it.
	doc, err := s.Document(SheetOptions{Remark: o.Remark})
	if err != nil {
		return nil, err
	}
	f := &sheetForm{Job: s.Name, Substrate: s.Substrate, Stop: s.Forbidden(), Reasons: s.Reasons(), Area: s.Area,
		Cautions: s.Cautions(), Remarks: s.Notes, Document: doc.Sections}
	for _, p := range s.Parts {
		f.Parts = append(f.Parts, partForm(p))
	}
	for i := range s.Job.Parts {
		if m := s.Job.Parts[i].Mesh; m != nil {
			f.Mended = append(f.Mended, m.mended...)
		}
	}
	// Findings count tanks from 0 in Go and from 1 on a sheet. The list is copied before it is
	// changed: the sheet may be written again.
	for _, found := range s.Findings {
		found.Tanks = slices.Clone(found.Tanks)
		for i := range found.Tanks {
			found.Tanks[i]++
		}
		f.Findings = append(f.Findings, found)
	}
	for i := range s.Stops {
		t, err := s.tankForm(&s.Stops[i], o)
		if err != nil {
			return nil, err
		}
		f.Tanks = append(f.Tanks, t)
	}
	if p := &s.Practice; p.Title != "" {
		f.Practice = strings.TrimPrefix(p.Standard+", "+p.Title+" ["+p.Source+"]", ", ")
		for _, why := range p.Reasons {
			f.Why = append(f.Why, why.String())
		}
	}
	if s.Refused() {
		return f, nil
	}
	f.Metals, f.Time, f.Charge, f.Line, f.Oven, f.Rinsing = s.Metals, s.Time, s.Charge, s.Line, s.Oven, s.Rinsing
	if g := s.Gas; g != nil {
		f.Hydrogen = &gasForm{g.Tank + 1, g.Flow.Hydrogen.In(electrical.CubicMetrePerHour),
			g.Flow.Air.In(electrical.CubicMetrePerHour)}
	}
	f.Claim = s.Claim.form()
	for i := range s.Baths {
		a := &s.Baths[i]
		out := afterForm{After: *a}
		if feed := a.Feed; feed != nil {
			out.Salt, out.SaltMass, out.Metal = feed.Salt.String(), feed.SaltMass, feed.Metal
			if a.Adding.Do != "" {
				out.Adding = a.Adding.Line()
			}
		}
		f.Baths = append(f.Baths, out)
	}
	if s.Quote != nil {
		each, err := s.Quote.Each(s.Quote.Total)
		if err != nil {
			return nil, err
		}
		f.Price = &priceForm{Quote: *s.Quote, Each: each.String()}
		for _, c := range s.Swings {
			f.Price.Swings = append(f.Price.Swings, changeForm{c.Input, c.Step.String(), c.Change.String()})
		}
	}
	return f, nil
}

// tankForm is one stop; of a job that must not be run its name and what is said of it.
func (s *Sheet) tankForm(stop *Stop, o SheetOptions) (tankForm, error) {
	t := tankForm{Card: stop.Tank}
	c := stop.Coat
	refused := s.Refused()
	if refused {
		t.Card = sequence.Card{Number: stop.Tank.Number, Name: stop.Tank.Name, Kind: stop.Tank.Kind,
			Chemistry: stop.Tank.Chemistry, Hazards: stop.Tank.Hazards, Cautions: stop.Tank.Cautions,
			Confidence: stop.Tank.Confidence}
	}
	if c == nil {
		return t, nil
	}
	b, r := &c.Layer.Bath, &c.Result
	t.Coat = &coatForm{Name: c.Name, Role: c.Layer.Role, Bath: b.Name, Metal: b.Metal, Hazards: b.AllHazards(),
		Before: c.Before, Notes: c.Notes, Source: b.Source}
	if refused {
		t.Coat.Before, t.Coat.Notes = chemical(c.Before), chemical(c.Notes)
		return t, nil
	}
	f := t.Coat
	f.Area, f.CurrentDensity, f.Current, f.Time, f.Charge = c.Layer.Area, r.CurrentDensity, r.Current, r.Time, r.Charge
	f.Efficiency, f.MinThickness, f.Average, f.Thinnest, f.Below = r.Efficiency, c.Ordered, r.Average, r.Thinnest, c.Below
	f.Mass, f.FineMass, f.VoltsLow, f.VoltsHigh, f.Temperature = r.Mass, r.FineMass, b.Volts.Low, b.Volts.High,
		b.Temperature.Set
	d := &c.Layer.Distribution
	f.Ratio, f.Basis, f.Uncertainty = d.MinToAverage, d.Basis, d.Uncertainty
	if c.Fineness > 0 {
		f.Fineness = c.Fineness.String()
	}
	if c.Karat > 0 {
		f.Karat = c.Karat.String()
	}
	if !r.Warnings.Has(plating.WarnMetalUnknown) {
		f.MetalLeft, f.ContentLeft = r.MetalLeft, r.ContentLeft
	}
	// What is not known is left out rather than written as a point or as zero.
	if c.Spread.Known {
		f.Spread = &c.Spread
	}
	if c.Power.High > 0 {
		f.Power = &c.Power
	}
	var err error
	if o.Working {
		f.Working, err = c.Working()
	}
	return t, err
}

// form puts what may be said of the gold into the form that JSON gives.
func (c *Claim) form() *claimForm {
	if c == nil {
		return nil
	}
	if c.Missing != "" {
		return &claimForm{Missing: c.Missing}
	}
	f := &claimForm{Fineness: c.Fineness.String(), Karat: c.Karat.String(), Fine: c.Fine, Low: c.Low}
	for _, i := range c.Coats {
		f.Layers = append(f.Layers, i+1)
	}
	for _, t := range c.Terms {
		f.Terms = append(f.Terms, termForm{t.Name, t.Seen})
	}
	return f
}

// oneWay refuses to write a part of a sheet by itself, or to read one: what comes back
// would be less than what went.
func oneWay(what string) error {
	return &units.ValueError{Field: what + " in JSON", Value: "by itself",
		Need: "the whole sheet: Sheet.WriteJSON, which is written one way", Err: units.ErrInconsistent}
}

// MarshalJSON refuses: a stop is written with its sheet.
func (Stop) MarshalJSON() ([]byte, error) { return nil, oneWay("stop") }

// MarshalJSON refuses: a coat is written with its sheet.
func (Coat) MarshalJSON() ([]byte, error) { return nil, oneWay("coat") }

// MarshalJSON refuses: a spread is written with its sheet.
func (Spread) MarshalJSON() ([]byte, error) { return nil, oneWay("spread") }

// MarshalJSON refuses: the bath afterwards is written with its sheet.
func (After) MarshalJSON() ([]byte, error) { return nil, oneWay("bath afterwards") }

// MarshalJSON refuses: rinsing is written with its sheet.
func (Rinsing) MarshalJSON() ([]byte, error) { return nil, oneWay("rinsing") }

// UnmarshalJSON refuses: a sheet is made by [Job.Sheet].
func (s *Sheet) UnmarshalJSON([]byte) error { return oneWay("sheet") }
