package plating_test

import (
	"errors"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// TestPropertyNothingToEstimate: nil where a layer, bath or result belongs is an error
// or a note that stops, never a panic and never an empty list of warnings.
func TestPropertyNothingToEstimate(t *testing.T) {
	_, estimated := plating.Estimate(nil)
	_, shown := plating.Working(nil)
	var layer *plating.Layer
	var bath *plating.OperatingBath
	for name, err := range map[string]error{"estimate": estimated, "working": shown, "layer": layer.Check(),
		"bath": bath.Check()} {
		if !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, notes := range map[string][]plating.Note{"no result": plating.Notes(&plating.Layer{}, nil),
		"no layer": plating.Notes(nil, &plating.LayerEstimate{}), "neither": plating.Notes(nil, nil)} {
		if len(notes) != 1 || notes[0].Severity != plating.SeverityStop {
			t.Errorf("%s: %v", name, notes)
		}
	}
}
