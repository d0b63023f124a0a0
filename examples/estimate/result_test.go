package main

import (
	"math"

	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/units"
)

// A result is what the tests read of a sheet in JSON.
type result struct {
	Format   string         `json:"format"`
	Stop     bool           `json:"stop"`
	Reasons  []string       `json:"stop_reasons"`
	Tanks    []tankResult   `json:"tanks"`
	Findings []foundResult  `json:"findings"`
	Charge   units.Charge   `json:"charge"`
	Baths    []any          `json:"baths"`
	Price    map[string]any `json:"price"`
	Remarks  []plating.Note `json:"remarks"`
	Document []job.Section  `json:"document"`
}

type tankResult struct {
	Name     string         `json:"name"`
	Cautions []plating.Note `json:"cautions"`
	Coat     *coatResult    `json:"coat"`
}

type coatResult struct {
	Current string         `json:"current"`
	Time    string         `json:"time"`
	Charge  units.Charge   `json:"charge"`
	Before  []plating.Note `json:"before"`
	Notes   []plating.Note `json:"notes"`
}

type foundResult struct {
	Severity plating.Severity `json:"severity"`
	Text     string           `json:"text"`
	Reason   string           `json:"reason"`
	Remedy   string           `json:"remedy"`
	Source   string           `json:"source"`
}

// coats are those of the tanks that plate.
func (r *result) coats() []*coatResult {
	var list []*coatResult
	for i := range r.Tanks {
		if c := r.Tanks[i].Coat; c != nil {
			list = append(list, c)
		}
	}
	return list
}

// digits writes a quantity with three digits and no fewer decimals than least.
func digits[Q interface {
	~float64
	In(Q) float64
	Text(Q, int) string
}](v, unit Q, least int) string {
	return v.Text(unit, max(least, 2-int(math.Floor(math.Log10(v.In(unit))))))
}

// amps writes a current as a sheet must: three digits, milliamperes below a tenth of an
// ampere.
func amps(i units.Current) string {
	if i < 0.1*units.Ampere {
		return digits(i, units.Milliampere, 0)
	}
	return digits(i, units.Ampere, 0)
}

// clock writes a time as a sheet must: whole seconds, the last one begun counted.
func clock(t units.Duration) string {
	if t >= 1 {
		t = units.Duration(math.Ceil(float64(t) - 1e-3))
	}
	switch {
	case t >= 60:
		return t.String()
	case t >= 10:
		return t.Text(units.Second, 0)
	}
	return t.Text(units.Second, 1-int(math.Floor(math.Log10(float64(t)))))
}

// salted writes the mass of a salt as a sheet must.
func salted(m units.Mass) string { return digits(m, units.Gram, 2) }
