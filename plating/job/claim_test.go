package job_test

import (
	"math"
	"strings"
	"testing"

	"example.com/laydown/alloys"
	"example.com/laydown/plating/job"
	"example.com/laydown/testdata"
	"example.com/laydown/units"
)

// claimed makes the sheet of the committed job of clock hands after some edits.
func claimed(t *testing.T, edits ...string) job.Sheet {
	t.Helper()
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	text := string(raw)
	for i := 0; i < len(edits); i += 2 {
		if !strings.Contains(text, edits[i]) {
			t.Fatalf("the job has no %s", edits[i])
		}
		text = strings.Replace(text, edits[i], edits[i+1], 1)
	}
	j, err := job.Read(strings.NewReader(text), nil)
	if err != nil {
		t.Fatal(err)
	}
	s, err := j.Sheet()
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// TestIndependentClaim works the claim of the clock hands out from the masses: the gold
// on a square metre at the thinnest spot, as a layer of fine gold.
func TestIndependentClaim(t *testing.T) {
	s := claimed(t)
	c := s.Claim
	if c == nil || c.Missing != "" || len(c.Coats) != 1 || c.Coats[0] != 1 {
		t.Fatalf("%+v", c)
	}
	lr := s.Coats()[1]
	// Mass of the coat over its area is that of the mean; the thinnest spot has the ratio.
	gold := 0.996 * float64(lr.Result.Mass) / float64(s.Area) * float64(lr.Result.Thinnest/lr.Result.Average) // kg/m²
	if want := gold / 19300; math.Abs(float64(c.Fine)/want-1) > 1e-12 {
		t.Errorf("%v of fine gold, want %v", c.Fine, units.Length(want))
	}
	if math.Abs(float64(c.Karat)-24*0.996) > 1e-12 || math.Abs(float64(c.Fineness)-996) > 1e-9 {
		t.Errorf("%v, %v", c.Karat, c.Fineness)
	}
	if text := strings.Join(c.Lines(), " "); !strings.Contains(text, "23.9 karat (996 ‰)") ||
		!strings.Contains(text, "gold plate (from memory)") || strings.Contains(text, "flashed") {
		t.Error(text)
	}
}

// TestPropertyClaim: nothing is claimed that is not given, a poorer or thinner coat
// claims less, and no figure is rounded up.
func TestPropertyClaim(t *testing.T) {
	names := func(s job.Sheet) string {
		var list []string
		for _, v := range s.Claim.Terms {
			list = append(list, v.Name)
		}
		return strings.Join(list, ", ")
	}
	const gold, cobalt = `"share": "99.6 %"`, `"share": "0.2 %"`
	for _, c := range []struct {
		name, karat, terms string
		edits              []string
	}{
		{"as it is", "23.9 karat", "gold electroplate, gold plate", nil},
		{"thin", "23.9 karat", "gold electroplate", []string{`"min_thickness": "1 µm"`, `"min_thickness": "0.4 µm"`}},
		{"a flash", "23.9 karat", "gold flashed", []string{`"min_thickness": "1 µm"`, `"min_thickness": "0.15 µm"`}},
		{"thick", "23.9 karat", "gold electroplate, heavy gold electroplate, gold plate",
			[]string{`"min_thickness": "1 µm"`, `"min_thickness": "3.2 µm"`}},
		{"below 10 karat", "9.6 karat", "", []string{gold, `"share": "40 %"`, cobalt, `"share": "59.8 %"`,
			`"density": "17.3 g/cm³"`, `"density": "11 g/cm³"`}},
		{"a hair below 23 karat", "22.9 karat", "gold electroplate, gold plate",
			[]string{gold, `"share": "95.79 %"`, cobalt, `"share": "4.01 %"`}},
	} {
		s := claimed(t, c.edits...)
		if got := names(s); got != c.terms || !strings.Contains(s.Claim.Lines()[0], "Gold of "+c.karat) {
			t.Errorf("%s: %q, %q", c.name, got, s.Claim.Lines())
		}
		for _, v := range s.Claim.Terms {
			if short, err := v.Shortfalls(alloys.CoatFacts{Karat: s.Claim.Karat, Fine: s.Claim.Low}); err != nil ||
				len(short) > 0 {
				t.Errorf("%s: %s falls short: %v, %v", c.name, v.Name, short, err)
			}
		}
	}
	raw, err := testdata.Files.ReadFile("jobs/hands.json")
	if err != nil {
		t.Fatal(err)
	}
	from := strings.Index(string(raw), `"constituents"`)
	list := string(raw)[from : from+strings.Index(string(raw)[from:], "],")+2]
	s := claimed(t, list, "")
	if s.Claim == nil || s.Claim.Missing == "" || s.Claim.Karat != 0 || s.Claim.Terms != nil ||
		!strings.Contains(s.Claim.Lines()[0], "No karat can be claimed") {
		t.Errorf("without constituents: %+v", s.Claim)
	}
	f, err := testdata.Files.Open("jobs/finial.json")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	j, err := job.Read(f, nil)
	if err != nil {
		t.Fatal(err)
	}
	if s, err = j.Sheet(); err != nil || s.Claim != nil || s.Claim.Lines() != nil {
		t.Errorf("a coat of silver: %+v, %v", s.Claim, err)
	}
}
