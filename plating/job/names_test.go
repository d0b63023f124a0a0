package job_test

import (
	"encoding/csv"
	"encoding/json"
	"fmt"
	"os"
	"strings"
	"testing"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/plating/job"
	"example.com/laydown/plating/ledger"
	"example.com/laydown/plating/sequence"
	"example.com/laydown/units"
)

// A named is a bath's or tank's name with the hazards that it gives away.
type named struct {
	name string
	want plating.Hazard
}

// names reads the table of names that package plating is tested with.
func names(t *testing.T) []named {
	t.Helper()
	f, err := os.Open("../testdata/bathnames.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	rows, err := csv.NewReader(f).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	var list []named
	for _, row := range rows[1:] {
		n := named{name: row[0]}
		for _, w := range strings.Split(row[1], "|") {
			if w = strings.TrimSpace(w); w == "" {
				continue
			}
			h, err := plating.ParseHazard(w)
			if err != nil {
				t.Fatal(err)
			}
			n.want |= h
		}
		list = append(list, n)
	}
	return list
}

// TestPropertyNames: each name gives away the hazards of the table, in every
// package that judges a bath or tank: none knows a danger that another does not.
func TestPropertyNames(t *testing.T) {
	list := names(t)
	if len(list) < 150 {
		t.Errorf("only %d names", len(list))
	}
	gold, err := faraday.NewDeposit("Au", 1)
	if err != nil {
		t.Fatal(err)
	}
	library, err := bath.Get("gold-neutral")
	if err != nil {
		t.Fatal(err)
	}
	for _, n := range list {
		got := map[string]plating.Hazard{
			"the estimate": (&plating.OperatingBath{Name: n.name}).AllHazards(),
			"the names":    plating.NamedHazards(n.name),
		}
		own := library
		own.Name, own.Hazards, own.Salt, own.PH, own.Temperature = n.name, 0, faraday.Formula{}, bath.Range[plating.PH]{},
			bath.Range[units.Temperature]{}
		got["the bath"] = own.AllHazards()
		book := ledger.Account{Name: n.name, Metal: "Au", Equivalent: gold.Equivalent}
		solution := book.Solution()
		got["the book"] = solution.AllHazards()
		tanks := []sequence.Tank{
			{Kind: sequence.Activate, Process: sequence.Process{Chemistry: n.name}},
			{Kind: sequence.Plate, Bath: own, Time: 60, CurrentDensity: 100},
		}
		cards, err := sequence.Cards(tanks, sequence.Piece{Area: units.SquareDecimetre,
			Distribution: plating.Distribution{MinToAverage: 1}})
		if err != nil {
			t.Fatal(err)
		}
		got["the tank"], got["the plating tank"] = cards[0].Hazards, cards[1].Hazards
		if units.CheckPrintable("name", n.name) != nil { // no file may give such a name
			if _, err := job.Read(strings.NewReader(nameText(t, n.name)), nil); err == nil {
				t.Errorf("%q: the job file is read", n.name)
			}
		} else {
			j, sheet := nameJob(t, n.name)
			got["the job file"] = j.Layers[0].Bath.AllHazards()
			got["the sheet"] = sheet.Hazards()
			got["JSON"] = 0
			for _, w := range at(t, tree(t, sheet, job.SheetOptions{}), "tanks", 0, "coat", "hazards").([]any) {
				h, err := plating.ParseHazard(w.(string))
				if err != nil {
					t.Fatal(err)
				}
				got["JSON"] |= h
			}
		}
		for who, h := range got {
			if h != n.want {
				t.Errorf("%q: %s says %s, want %s", n.name, who, h, n.want)
			}
		}
		// A file of the shop's own baths is refused when its list leaves out cyanide or acid.
		left := n.want & (plating.HazardCyanide | plating.HazardAcid)
		if _, err := bath.Read(strings.NewReader(bathFile(t, n.name))); (err != nil) != (left != 0) {
			t.Errorf("%q: the bath file: %v", n.name, err)
		}
	}
}

// A bath whose hazards nobody listed is not written as one that has none: with a finish the
// written job is refused, as the job that was read would be.
func TestPropertySilentHazards(t *testing.T) {
	finish := func(raw string) string {
		return strings.Replace(raw, `"parts"`, `"substrate": "brass", "finish": "soft gold", "parts"`, 1)
	}
	for list, want := range map[string]string{"": "", `, "hazards": []`: "", `, "hazards": ["acid"]`: `"hazards": ["acid"]`} {
		text := strings.Replace(nameText(t, "a bath"), `, "hazards": []`, list, 1)
		j, err := job.Read(strings.NewReader(text), nil)
		if err != nil {
			t.Fatal(err)
		}
		var b strings.Builder
		if err := j.Write(&b); err != nil {
			t.Fatal(err)
		}
		flat := strings.Join(strings.Fields(b.String()), " ")
		if got := strings.Contains(flat, `"hazards"`); got != (want != "") {
			t.Errorf("hazards%s: written as %s", list, flat)
		}
		if _, err := job.Read(strings.NewReader(finish(b.String())), nil); want == "" &&
			(err == nil || !strings.Contains(err.Error(), `field "hazards" is missing`)) {
			t.Errorf("hazards%s: with a finish: %v", list, err)
		}
	}
	// With a finish the empty list is the shop's own word, and stays.
	j, err := job.Read(strings.NewReader(finish(nameText(t, "a bath"))), nil)
	if err != nil {
		t.Fatal(err)
	}
	raw, err := j.MarshalJSON()
	if err != nil || !strings.Contains(string(raw), `"hazards": []`) {
		t.Errorf("%v, %s", err, raw)
	}
}

// nameText writes a job with a bath of a name and an empty list of hazards.
func nameText(t *testing.T, name string) string {
	t.Helper()
	return fmt.Sprintf(`{"format": "laydown job 1", "parts": [{"area": "1 dm²"}], "layers": [{"bath": {"name": %s,
		"metal": "Au", "efficiency": 0.9, "hazards": []},
		"min_to_average": 0.6, "min_thickness": "1 µm", "current_density": "0.5 A/dm²"}]}`, quoted(t, name))
}

// nameJob reads that job and works it out.
func nameJob(t *testing.T, name string) (job.Job, *job.Sheet) {
	t.Helper()
	j, err := job.Read(strings.NewReader(nameText(t, name)), nil)
	if err != nil {
		t.Fatal(err)
	}
	return j, sheetOf(t, j)
}

func bathFile(t *testing.T, name string) string {
	t.Helper()
	return fmt.Sprintf(
		`{"format": "laydown baths 1", "baths": [{"key": "own", "name": %s, "metal": "Au", "use": ["finish"], "hazards": [],
		"density": {"low": "19 g/cm³", "high": "19.3 g/cm³", "seen": "from memory"}, "efficiency": {"low": "90 %%", "high": "95 %%", "seen": "from memory"}}]}`, quoted(t, name))
}

func quoted(t *testing.T, s string) string {
	t.Helper()
	raw, err := json.Marshal(s)
	if err != nil {
		t.Fatal(err)
	}
	return string(raw)
}

// TestPropertyPrecious: a drag-out tank is asked for behind each precious metal,
// and nowhere else: one list.
func TestPropertyPrecious(t *testing.T) {
	for symbol, want := range map[string]bool{"Au": true, "Ag": true, "Pt": true, "Pd": true, "Rh": true, "Ru": true,
		"Ir": true, "Os": true, "Ni": false, "Cu": false, "Sn": false, "": false} {
		if plating.Precious(symbol) != want {
			t.Errorf("%s: %v", symbol, !want)
		}
	}
	own, err := bath.Get("rhodium-sulfate")
	if err != nil {
		t.Fatal(err)
	}
	own.Key, own.Name, own.Metal, own.Valence = "", "ruthenium, acid", "Ru", 3
	p := sequence.Piece{Substrate: sequence.Nickel, Finish: sequence.Rhodium, MinThickness: 0.1 * units.Micrometre,
		Area: units.SquareDecimetre}
	tanks, _, err := sequence.PlanAround(p, []sequence.Tank{{Kind: sequence.Plate, Bath: own, Time: 60}})
	behind := false
	for i := range tanks {
		behind = behind || tanks[i].Kind == sequence.DragOut && i > 0 && tanks[i-1].Bath.Metal == "Ru"
	}
	if !behind {
		t.Errorf("no drag-out tank behind ruthenium: %v", err)
	}
}
