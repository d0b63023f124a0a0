package job_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// own returns the hands in a sequence of the shop's own.
func own(t *testing.T) job.Job {
	t.Helper()
	j := shipped(t, "hands")
	planned := made(t, j)
	water := *j.Rinse
	water.Stages = 0 // each tank says its own
	j.Rinse = &water
	j.Steps = planned.Steps()
	return j
}

// TestPropertyOwnSteps: the shop's own steps, taken from a plan, give what the
// plan gives.
func TestPropertyOwnSteps(t *testing.T) {
	planned, mine := made(t, shipped(t, "hands")), made(t, own(t))
	if len(planned.Stops) != len(mine.Stops) || mine.Forbidden() || len(mine.Findings) != len(planned.Findings) {
		t.Fatalf("%d cards and %d findings, planned %d and %d", len(mine.Stops), len(mine.Findings), len(planned.Stops),
			len(planned.Findings))
	}
	for i := range planned.Stops {
		if a, b := planned.Stops[i].Tank.Text(), mine.Stops[i].Tank.Text(); a != b {
			t.Errorf("tank %d:\n%s\nplanned:\n%s", i+1, b, a)
		}
	}
	if !planned.Quote.Total.Equal(mine.Quote.Total) {
		t.Errorf("price %v, planned %v", mine.Quote.Total, planned.Quote.Total)
	}
}

// TestStopFirst: a sequence that must not be run comes back whole, with the
// reason, and says stop.
func TestStopFirst(t *testing.T) {
	for name, spoil := range map[string]func(*job.Job){
		"acid straight into a cyanide bath": func(j *job.Job) {
			j.Layers[1].Bath.Hazards = plating.HazardCyanide
			j.Layers[1].Bath.Name = "gold, neutral cyanide"
			var steps []job.OwnTank
			for _, st := range j.Steps {
				if !(st.Layer == "" && st.Kind == sequence.Rinse) {
					steps = append(steps, st)
				}
			}
			j.Steps = steps
		},
		"bleach in acid": func(j *job.Job) {
			none := plating.Hazard(0)
			j.Steps = append([]job.OwnTank{{Kind: sequence.Activate, Holds: "hydrochloric acid with bleach", Hazards: &none}},
				j.Steps...)
		},
	} {
		j := own(t)
		spoil(&j)
		s, err := j.Sheet()
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !s.Forbidden() || len(s.Stops) == 0 {
			t.Errorf("%s: stop %v with %d tanks", name, s.Forbidden(), len(s.Stops))
		}
	}
	// A bath whose hazards forget the cyanide of its name is taken by its name.
	j := shipped(t, "hands")
	j.Layers[0].Bath.Hazards, j.Layers[1].Bath.Hazards = plating.HazardAcid, plating.HazardAcid
	found := false
	sheet := made(t, j)
	for _, n := range sheet.Cautions() {
		found = found || strings.Contains(n.Line(), "cyanide")
	}
	if !found {
		t.Error("the caution for cyanide is lost with the hazard")
	}
}

// TestWrongSheets: what cannot be is an error that names it.
func TestWrongSheets(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		name, want string
		spoil      func(*job.Job)
	}{
		{"no parts", "parts", func(j *job.Job) { j.Parts = nil }},
		{"no layers and no finish", "layers", func(j *job.Job) { j.Layers, j.Finish = nil, 0 }},
		{"steps without layers", "layers", func(j *job.Job) { j.Layers = nil; j.Steps = []job.OwnTank{{Layer: "1"}} }},
		{"a layer twice", "sequence[2]", func(j *job.Job) { j.Steps = []job.OwnTank{{Layer: "1"}, {Layer: "1"}} }},
		{"layers in the wrong order", "sequence[1]", func(j *job.Job) {
			j.Steps = []job.OwnTank{{Layer: "2"},
				{Layer: "1"}}
		}},
		{"a layer that is not there", "sequence[3]", func(j *job.Job) {
			j.Steps = []job.OwnTank{{Layer: "1"}, {Layer: "2"},
				{Layer: "3"}}
		}},
		{"a layer without a step", "sequence", func(j *job.Job) { j.Steps = []job.OwnTank{{Layer: "1"}} }},
		{"a plating step without a layer", "sequence[1]", func(j *job.Job) {
			j.Steps = []job.OwnTank{{Kind: sequence.Plate}, {Layer: "1"}, {Layer: "2"}}
		}},
		{"a finish that is not known", "layers", func(j *job.Job) { j.Layers, j.Finish = nil, 0 }},
		{"no metal", "metal", func(j *job.Job) { j.Layers[0].Bath.Metal = "" }},
		{"a library bath of another metal", "like",
			func(j *job.Job) { j.Layers[0].Bath.Metal = "Pd" }},
		{"no minimum thickness", "min_thickness", func(j *job.Job) { j.Layers, j.MinThickness = nil, 0 }},
		{"a minimum thickness that is no number", "minimum thickness", func(j *job.Job) {
			j.Layers, j.MinThickness = nil,
				nan
		}},
		{"no ratio", "min_to_average", func(j *job.Job) { j.Layers, j.MinThickness = nil, 1e-6 }},
		{"nickel against the skin", "finish", func(j *job.Job) {
			j.Finish, j.SkinContact = sequence.BrightNickel,
				true
		}},
		{"two drag-outs", "drag_out", func(j *job.Job) {
			j.Rinse = &job.Rinse{Shape: rinse.VerticalWell,
				Measured: 1e-6}
		}},
		{"no drag-out", "drag_out", func(j *job.Job) { j.Rinse = &job.Rinse{} }},
		{"a ratio below one", "ratio", func(j *job.Job) { j.Rinse = &job.Rinse{Measured: 1e-6, Ratio: 0.5} }},
		{"a negative drag-out", "drag-out", func(j *job.Job) { j.Rinse = &job.Rinse{Measured: -1} }},
		{"negative handling", "handling", func(j *job.Job) { p := *j.Price; p.Handling = -1; j.Price = &p }},
		{"a rectifier over one", "rectifier", func(j *job.Job) { p := *j.Price; p.Rectifier = 1.2; j.Price = &p }},
		{"heating that is no number", "heating",
			func(j *job.Job) { p := *j.Price; p.Heating = units.Energy(math.NaN()); j.Price = &p }},
		{"no yield", "yield", func(j *job.Job) {
			p := *j.Price
			p.Allowance.Yield = p.Allowance.Strip.Sub(p.Allowance.Strip)
			j.Price = &p
		}},
	} {
		j := shipped(t, "hands")
		c.spoil(&j)
		_, err := j.Sheet()
		var v *job.Fault
		var r *sequence.RefusedError
		if err == nil || !strings.Contains(err.Error(), c.want) || !(errors.As(err, &v) || errors.As(err, &r)) {
			t.Errorf("%s: %v, want a typed error with %q", c.name, err, c.want)
		}
	}
	j := own(t)
	j.Rinse = &job.Rinse{Measured: 1e-6, Stages: 3}
	var v *job.Fault
	if _, err := j.Sheet(); !errors.As(err, &v) || v.Path != "rinse.stages" {
		t.Errorf("stages beside a sequence of one's own: %v", err)
	}
	j = shipped(t, "hands")
	j.Substrate = "unobtainium"
	if _, err := j.Sheet(); !errors.As(err, &v) || v.Path != "substrate" {
		t.Errorf("an unknown base metal gives %v", err)
	}
}
