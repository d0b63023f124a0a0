package jobfile

import (
	"fmt"
	"slices"
	"strconv"

	"example.com/laydown/plating"
	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Report is a computed job as JSON gives it. Quantities are text with a unit
// and with all their digits: each reads back to the very value computed.
type Report struct {
	Format    string        `json:"format"`
	Job       string        `json:"job"`
	Substrate string        `json:"substrate,omitempty"`
	Parts     []PartReport  `json:"parts"`
	Area      string        `json:"area"`     // of the load
	Cautions  []NoteReport  `json:"cautions"` // for all its baths
	Time      string        `json:"plating_time"`
	Charge    string        `json:"charge"`
	Layers    []LayerReport `json:"layers"`
	Metals    []MetalReport `json:"metals"`
	Stop      bool          `json:"stop"`            // a note or a finding says not to start
	Stops     []string      `json:"stops,omitempty"` // why, in the words of the sheet; of a job that is refused nothing to set is given

	// Of a job with a sequence, rinsing or a price: see [NewShopReport].
	Sequence []TankReport    `json:"sequence,omitempty"`
	Findings []FindingReport `json:"findings,omitempty"`
	Practice string          `json:"practice,omitempty"` // that the proposed tanks follow
	Reasons  []string        `json:"reasons,omitempty"`  // for its steps
	LineTime string          `json:"line_time,omitempty"`
	LineLow  string          `json:"line_time_low,omitempty"`
	LineHigh string          `json:"line_time_high,omitempty"`
	OvenLow  string          `json:"oven_time_low,omitempty"`
	OvenHigh string          `json:"oven_time_high,omitempty"`
	Claim    *ClaimReport    `json:"claim,omitempty"`    // of an outer coat of gold
	Hydrogen *GasReport      `json:"hydrogen,omitempty"` // of the tank that gives off most
	Rinse    *RinseReport    `json:"rinse,omitempty"`
	Baths    []BathReport    `json:"baths,omitempty"`
	Price    *PriceReport    `json:"price,omitempty"`
	Remarks  []NoteReport    `json:"remarks,omitempty"` // what could not be computed
	Mended   []string        `json:"mended,omitempty"`  // what was done to the meshes of parts
}

// ReportFormat is the value of a report's field "format".
const ReportFormat = "laydown result 1"

// A LayerReport is one layer of a [Report].
type LayerReport struct {
	Name           string         `json:"name"`
	Role           string         `json:"role"`
	Bath           string         `json:"bath"`
	Metal          string         `json:"metal"`
	CurrentDensity string         `json:"current_density"`
	Current        string         `json:"current"`
	Time           string         `json:"time"`
	Charge         string         `json:"charge"`
	Efficiency     string         `json:"efficiency"`
	Average        string         `json:"average_thickness"`
	Thinnest       string         `json:"thinnest"`
	Below          string         `json:"counted_from_below,omitempty"`
	Mass           string         `json:"deposit_mass"`
	FineMass       string         `json:"metal_mass"`
	VoltsLow       string         `json:"volts_low,omitempty"`
	VoltsHigh      string         `json:"volts_high,omitempty"`
	Temperature    string         `json:"temperature,omitempty"`
	MetalLeft      string         `json:"metal_left,omitempty"`
	ContentLeft    string         `json:"content_left,omitempty"`
	Area           string         `json:"area"`
	MinThickness   string         `json:"min_thickness,omitempty"` // what lies below not taken off
	Source         string         `json:"source,omitempty"`        // of the bath's figures
	Distribution   string         `json:"min_to_average"`
	Basis          string         `json:"min_to_average_basis,omitempty"`
	Uncertainty    string         `json:"min_to_average_uncertainty,omitempty"`
	Before         []NoteReport   `json:"before"` // to mind on the way in
	Hazards        plating.Hazard `json:"hazards"`
	Cautions       []NoteReport   `json:"cautions"` // that stand under the name of the tank
	Notes          []NoteReport   `json:"notes"`
	Working        []working.Step `json:"working,omitempty"`
	Spread         *SpreadReport  `json:"spread,omitempty"`
}

// A NoteReport is one [plating.Note].
type NoteReport struct {
	Severity string `json:"severity"`
	Text     string `json:"text"`
	Do       string `json:"do,omitempty"`
	Source   string `json:"source"`
}

// A PartReport is one sort of part of the load.
type PartReport struct {
	Name  string `json:"name"`
	Count int    `json:"count"`
	Area  string `json:"area"` // plated area of one, what is masked taken off

	Masked string `json:"masked,omitempty"` // stopped off on each
}

// A MetalReport sums the layers of one metal.
type MetalReport struct {
	Metal    string `json:"metal"`
	Average  string `json:"average_thickness"`
	Thinnest string `json:"thinnest"`
	Mass     string `json:"deposit_mass"`
	FineMass string `json:"metal_mass"`
}

// NewReport puts a computed job into the form that JSON gives. With steps, the
// working of each layer comes along.
//
// Errors: a [*units.ValueError] for a result that has not the layers of the job; those
// of [plating.Working].
func NewReport(job plating.Job, res plating.JobResult, steps bool) (Report, error) {
	if len(res.Layers) == 0 || len(res.Layers) != len(job.Layers) {
		return Report{}, &units.ValueError{Field: "layers of the result", Value: strconv.Itoa(len(res.Layers)),
			Need: fmt.Sprintf("one for each of the %d of the job, at least one", len(job.Layers)), Err: units.ErrInconsistent}
	}
	r := Report{Format: ReportFormat, Job: job.Name, Substrate: job.Substrate, Area: res.Area.Text(units.SquareCentimetre,
		-1),
		Time: res.Time.Text(units.Minute, -1), Charge: res.Charge.Text(units.AmpereMinute, -1), Metals: []MetalReport{}}
	r.Parts = make([]PartReport, len(job.Parts))
	for i, p := range job.Parts {
		r.Parts[i] = PartReport{Name: p.Name, Count: p.Count, Area: p.Area.Text(units.SquareCentimetre, -1)}
		if p.Masked > 0 {
			r.Parts[i].Masked = p.Masked.Text(units.SquareCentimetre, -1)
		}
	}
	r.Cautions = noteReports(plating.FrontCautions(res.Hazards()))
	for i := range res.Layers {
		lr := &res.Layers[i]
		l, v := &lr.Layer, &lr.Result
		solution := l.Bath.Solution()
		out := LayerReport{
			Name: l.Name, Role: l.Role.String(), Bath: l.Bath.Name, Metal: l.Bath.Metal,
			CurrentDensity: v.CurrentDensity.Text(units.AmperePerSquareDecimetre, -1), Current: v.Current.Text(units.Ampere, -1),
			Time: v.Time.Text(units.Minute, -1), Charge: v.Charge.Text(units.AmpereMinute, -1),
			Efficiency: v.Efficiency.Percent(-1),
			Average:    v.Average.Text(units.Micrometre, -1), Thinnest: v.Thinnest.Text(units.Micrometre, -1),
			Mass: v.Mass.Text(units.Milligram, -1), FineMass: v.FineMass.Text(units.Milligram, -1),
			Distribution: l.Distribution.MinToAverage.Percent(-1), Basis: l.Distribution.Basis, Before: noteReports(lr.Before),
			Notes:   noteReports(lr.Notes),
			Hazards: l.Bath.AllHazards(), Cautions: noteReports(solution.AtTank()),
		}
		if l.Bath.Volts.High > 0 {
			out.VoltsLow, out.VoltsHigh = l.Bath.Volts.Low.Text(units.Volt, -1), l.Bath.Volts.High.Text(units.Volt, -1)
		}
		if l.Bath.Temperature.Set > 0 {
			out.Temperature = l.Bath.Temperature.Set.Text(units.CelsiusScale, -1)
		}
		out.Area, out.Source = l.Area.Text(units.SquareCentimetre, -1), l.Bath.Source
		if p := job.Layers[i].MinThickness; p > 0 {
			out.MinThickness = p.Text(units.Micrometre, -1)
		}
		if u := l.Distribution.Uncertainty; u > 0 {
			out.Uncertainty = u.Percent(-1)
		}
		if lr.Below > 0 {
			out.Below = lr.Below.Text(units.Micrometre, -1)
		}
		if !v.Warnings.Has(plating.WarnMetalUnknown) {
			out.MetalLeft, out.ContentLeft = v.MetalLeft.Text(units.Gram, -1), v.ContentLeft.Text(units.GramPerLitre, -1)
		}
		for _, n := range slices.Concat(lr.Before, lr.Notes) {
			r.Stop = r.Stop || n.Severity == plating.SeverityStop
		}
		if steps {
			var err error
			if out.Working, err = lr.Working(); err != nil {
				return Report{}, fmt.Errorf("%s: %w", units.Clip(l.Name), err)
			}
		}
		r.Layers = append(r.Layers, out)
	}
	for _, m := range res.Metals {
		r.Metals = append(r.Metals, MetalReport{m.Metal, m.Average.Text(units.Micrometre, -1), m.Thinnest.Text(units.Micrometre,
			-1),
			m.Mass.Text(units.Milligram, -1), m.FineMass.Text(units.Milligram, -1)})
	}
	return r, nil
}

func noteReports(notes []plating.Note) []NoteReport {
	list := make([]NoteReport, len(notes))
	for i, n := range notes {
		list[i] = NoteReport{n.Severity.String(), n.Text, n.Do, n.Source}
	}
	return list
}
