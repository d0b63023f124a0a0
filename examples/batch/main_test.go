package main

import (
	"bytes"
	"encoding/csv"
	"errors"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// call runs the program on text.
func call(text string, args ...string) (status int, stdout, stderr string) {
	var out, bad bytes.Buffer
	status = run(args, strings.NewReader(text), &out, &bad)
	return status, out.String(), bad.String()
}

// TestCommandLine: the exit status, and what is said on standard error.
func TestCommandLine(t *testing.T) {
	const header = "part,count,area_cm2,metal,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g"
	for name, c := range map[string]struct {
		text   string
		status int
		want   string
		lines  int // put out
	}{
		"fine": {header + "\nhand,1,10,Au,0.35,0.5,1,0.6,80\n", 0, "", 2},
		"a bad row": {header + "\nhand,0,10,Au,0.35,0.5,1,0.6,80\n\nhand,1,10,Au,0.35,0.5,1,0.6,80\n", 1,
			"batch: 1 of 2 rows failed; see the column error; the first stands on line 2\n", 3},
		"empty":     {"", 2, "batch: no header row: EOF\n", 0},
		"no column": {"part\n", 2, "batch: the header lacks count, area_cm2", 0},
		"hostile":   {"part,\"x\x1b[2K\",\"x\x1b[2K\"\n", 2, "batch: column \"x\\x1b[2K\" stands twice in the header\n", 0},
	} {
		status, out, bad := call(c.text)
		if status != c.status || !strings.HasPrefix(bad, c.want) || (c.want == "") != (bad == "") ||
			strings.Count(out, "\n") != c.lines {
			t.Errorf("%s: status %d, %q\n%s", name, status, bad, out)
		}
	}
	if status, out, bad := call(header, "jobs.csv"); status != 2 ||
		bad != "usage: batch < jobs.csv > estimates.csv\n" || out != "" {
		t.Errorf("with an argument: status %d, %q", status, bad)
	}
	var bad bytes.Buffer
	if status := run(nil, strings.NewReader(header+"\n"), fullDisk{}, &bad); status != 2 ||
		bad.String() != "batch: no space left\n" {
		t.Errorf("on a full disk: status %d, %q", status, bad.String())
	}
}

// fullDisk takes nothing.
type fullDisk struct{}

func (fullDisk) Write([]byte) (int, error) { return 0, errors.New("no space left") }

// TestShippedRows: the demo file of testdata goes through, row by row.
func TestShippedRows(t *testing.T) {
	raw, err := testdata.Files.ReadFile("batch/clockworks.csv")
	if err != nil {
		t.Fatal(err)
	}
	status, out, bad := call(string(raw))
	rows, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if status != 0 || bad != "" || err != nil || len(rows) != strings.Count(string(raw), "\n") {
		t.Fatalf("status %d, %d rows, %v, %s", status, len(rows), err, bad)
	}
}
