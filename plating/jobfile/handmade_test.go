package jobfile_test

import (
	"bytes"
	"errors"
	"testing"

	"example.com/laydown/plating"
	"example.com/laydown/plating/jobfile"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/plating/traveller"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// TestPropertyHandMadeSheets: a sheet whose lists do not belong together, as one that
// was made or changed by hand, is refused by the name of the list.
func TestPropertyHandMadeSheets(t *testing.T) {
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	sheet := func() *traveller.Sheet {
		job, err := jobfile.ReadShop(bytes.NewReader(raw))
		if err != nil {
			t.Fatal(err)
		}
		s, err := traveller.Make(job)
		if err != nil {
			t.Fatal(err)
		}
		return &s
	}
	if _, err := jobfile.NewShopReport(sheet(), true); err != nil {
		t.Fatal(err)
	}
	for name, change := range map[string]func(s *traveller.Sheet){
		"zero":             func(s *traveller.Sheet) { *s = traveller.Sheet{} },
		"no result":        func(s *traveller.Sheet) { s.Result = plating.JobResult{} },
		"a layer less":     func(s *traveller.Sheet) { s.Result.Layers = s.Result.Layers[1:] },
		"a job's less":     func(s *traveller.Sheet) { s.Job.Layers = s.Job.Layers[1:] },
		"a spread more":    func(s *traveller.Sheet) { s.Spreads = append(s.Spreads, traveller.Spread{Known: true}) },
		"a spread less":    func(s *traveller.Sheet) { s.Spreads = s.Spreads[1:] },
		"a power more":     func(s *traveller.Sheet) { s.Powers = append(s.Powers, traveller.Power{}) },
		"a card more":      func(s *traveller.Sheet) { s.Cards = append(s.Cards, sequence.Card{}) },
		"a card less":      func(s *traveller.Sheet) { s.Cards = s.Cards[1:] },
		"no coats":         func(s *traveller.Sheet) { s.Coats = nil },
		"a coat too far":   func(s *traveller.Sheet) { s.Coats[0] = len(s.Result.Layers) },
		"a coat below -1":  func(s *traveller.Sheet) { s.Coats[0] = -2 },
		"coats and a half": func(s *traveller.Sheet) { s.Coats = append(s.Coats, 0) },
	} {
		s := sheet()
		if len(s.Cards) == 0 || len(s.Spreads) == 0 {
			t.Fatal("the job has no sequence")
		}
		change(s)
		var e *units.ValueError
		if _, err := jobfile.NewShopReport(s, true); !errors.As(err, &e) || e.Field == "" {
			t.Errorf("%s: %v", name, err)
		}
	}
	s := sheet()
	var e *units.ValueError
	if _, err := jobfile.NewReport(plating.Job{}, s.Result, false); !errors.As(err, &e) {
		t.Errorf("another job: %v", err)
	}
	if _, err := jobfile.NewReport(s.Plain(), plating.JobResult{}, false); !errors.As(err, &e) {
		t.Errorf("no result: %v", err)
	}
}
