package traveller_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/rinse"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/units"
)

// own returns the hands in a sequence of the shop's own.
func own(t *testing.T) traveller.Job {
	t.Helper()
	j := shipped(t, "hands")
	planned := made(t, j)
	water := *j.Rinse
	water.Stages = 0 // each tank says its own
	j.Rinse = &water
	for i, k := range planned.Coats {
		st := traveller.Step{Tank: planned.Tanks[i]}
		if k >= 0 {
			st = traveller.Step{Layer: k + 1, Tank: sequence.Tank{LiveEntry: planned.Tanks[i].LiveEntry}}
		}
		j.Steps = append(j.Steps, st)
	}
	return j
}

// TestPropertyOwnSteps: the shop's own steps, taken from a plan, give what the
// plan gives.
func TestPropertyOwnSteps(t *testing.T) {
	planned, mine := made(t, shipped(t, "hands")), made(t, own(t))
	if len(planned.Cards) != len(mine.Cards) || mine.Stop() || len(mine.Findings) != len(planned.Findings) {
		t.Fatalf("%d cards and %d findings, planned %d and %d", len(mine.Cards), len(mine.Findings), len(planned.Cards),
			len(planned.Findings))
	}
	for i := range planned.Cards {
		if a, b := planned.Cards[i].Text(), mine.Cards[i].Text(); a != b {
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
	for name, spoil := range map[string]func(*traveller.Job){
		"acid straight into a cyanide bath": func(j *traveller.Job) {
			j.Layers[1].Bath.Hazards = plating.HazardCyanide
			j.Layers[1].Bath.Name = "gold, neutral cyanide"
			var steps []traveller.Step
			for _, st := range j.Steps {
				if !(st.Layer == 0 && st.Tank.Kind == sequence.Rinse) {
					steps = append(steps, st)
				}
			}
			j.Steps = steps
		},
		"a base metal that is not known": func(j *traveller.Job) {
			j.Base, j.Finish = sequence.SubstrateUnknown,
				sequence.FinishUnknown
		},
	} {
		j := own(t)
		spoil(&j)
		s, err := traveller.Make(j)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if !s.Stop() || len(s.Tanks) == 0 {
			t.Errorf("%s: stop %v with %d tanks", name, s.Stop(), len(s.Tanks))
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

// TestWrongJobs: what cannot be is an error that names it.
func TestWrongJobs(t *testing.T) {
	nan := units.Length(math.NaN())
	for _, c := range []struct {
		name, want string
		spoil      func(*traveller.Job)
	}{
		{"no parts", "parts", func(j *traveller.Job) { j.Parts = nil }},
		{"no layers and no finish", "layers and finish", func(j *traveller.Job) { j.Layers, j.Finish = nil, 0 }},
		{"steps without layers", "layers", func(j *traveller.Job) { j.Layers = nil; j.Steps = []traveller.Step{{Layer: 1}} }},
		{"a layer twice", "step 2", func(j *traveller.Job) { j.Steps = []traveller.Step{{Layer: 1}, {Layer: 1}} }},
		{"layers in the wrong order", "step 1", func(j *traveller.Job) {
			j.Steps = []traveller.Step{{Layer: 2},
				{Layer: 1}}
		}},
		{"a layer that is not there", "step 3", func(j *traveller.Job) {
			j.Steps = []traveller.Step{{Layer: 1}, {Layer: 2},
				{Layer: 3}}
		}},
		{"a layer without a step", "steps", func(j *traveller.Job) { j.Steps = []traveller.Step{{Layer: 1}} }},
		{"a plating step without a layer", "step 1", func(j *traveller.Job) {
			j.Steps = []traveller.Step{{Tank: sequence.Tank{Kind: sequence.Plate}}, {Layer: 1}, {Layer: 2}}
		}},
		{"a finish that is not known", "layers and finish", func(j *traveller.Job) { j.Layers, j.Finish = nil, 0 }},
		{"no metal", "metal of the bath", func(j *traveller.Job) { j.Layers[0].Bath.Metal = "" }},
		{"a library bath of another metal", "bath of like chemistry",
			func(j *traveller.Job) { j.Layers[0].Bath.Metal = "Pd" }},
		{"no promise", "minimum thickness", func(j *traveller.Job) { j.Layers, j.MinThickness = nil, 0 }},
		{"a minimum thickness that is no number", "minimum thickness", func(j *traveller.Job) { j.Layers, j.MinThickness = nil, nan }},
		{"no ratio", "thinnest", func(j *traveller.Job) { j.Layers, j.MinThickness = nil, 1e-6 }},
		{"nickel against the skin", "finish", func(j *traveller.Job) {
			j.Finish, j.SkinContact = sequence.BrightNickel,
				true
		}},
		{"two drag-outs", "drag-out", func(j *traveller.Job) {
			j.Rinse = &traveller.Rinse{Shape: rinse.VerticalWell,
				Measured: 1e-6}
		}},
		{"no drag-out", "drag-out", func(j *traveller.Job) { j.Rinse = &traveller.Rinse{} }},
		{"a ratio below one", "ratio", func(j *traveller.Job) { j.Rinse = &traveller.Rinse{Measured: 1e-6, Ratio: 0.5} }},
		{"a negative drag-out", "drag-out", func(j *traveller.Job) { j.Rinse = &traveller.Rinse{Measured: -1} }},
		{"negative handling", "handling", func(j *traveller.Job) { p := *j.Price; p.Handling = -1; j.Price = &p }},
		{"a rectifier over one", "rectifier", func(j *traveller.Job) { p := *j.Price; p.Rectifier = 1.2; j.Price = &p }},
		{"heating that is no number", "heating",
			func(j *traveller.Job) { p := *j.Price; p.Heating = units.Energy(math.NaN()); j.Price = &p }},
		{"no yield", "yield", func(j *traveller.Job) {
			p := *j.Price
			p.Allowance.Yield = p.Allowance.Strip.Sub(p.Allowance.Strip)
			j.Price = &p
		}},
	} {
		j := shipped(t, "hands")
		c.spoil(&j)
		_, err := traveller.Make(j)
		var v *units.ValueError
		var r *sequence.RefusedError
		if err == nil || !strings.Contains(err.Error(), c.want) || !(errors.As(err, &v) || errors.As(err, &r)) {
			t.Errorf("%s: %v, want a typed error with %q", c.name, err, c.want)
		}
	}
	j := own(t)
	j.Rinse = &traveller.Rinse{Measured: 1e-6, Stages: 3}
	var v *units.ValueError
	if _, err := traveller.Make(j); !errors.As(err, &v) || !strings.Contains(err.Error(), "stages") {
		t.Errorf("stages beside a sequence of one's own: %v", err)
	}
	var unsure *sequence.UnsureError
	j = shipped(t, "hands")
	j.Base = sequence.SubstrateUnknown
	if _, err := traveller.Make(j); !errors.As(err, &unsure) {
		t.Errorf("an unknown base metal gives %v", err)
	}
}
