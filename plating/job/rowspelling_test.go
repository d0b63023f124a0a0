package job

import (
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// TestSpellings: numbers in every spelling that a spreadsheet writes.
func TestSpellings(t *testing.T) {
	known := elementTexts(t)
	plain := map[string]string{"count": "12", "area_cm2": "10.5", "metal": "Ag", "efficiency": "0.5",
		"current_density_A_dm2": "1", "min_thickness_um": "2",
		"min_to_average": "0.5", "price_per_g": "1.5"}
	want := expectedRow(t, plain, known)
	for _, line := range []string{
		"12,10.5,Ag,0.5,1,2,0.5,1.5", "+12,1.05e1,Ag,5E-1,1.,2.000,.5,1.50", " 12 , 10.5\t,Ag , 0.5,1,2,0.5,1.5",
		`"12","10.5","Ag","0.5","1","2","0.5","1.5"`, "012,010.5,Ag,00.5,01,02,0.5,01.5",
		"12,10500000e-6,Ag,0.5,1e0,2,0.5,15e-1",
	} {
		status, rows, bad := rowTable(t, strings.Join(neededColumns, ",")+"\nx,"+line+"\n")
		if status != 0 || len(rows) != 1 {
			t.Fatalf("%s: status %d, %s %v", line, status, bad, rows)
		}
		for _, name := range figureColumns {
			if !agree(t, rows[0][name], want[name], "1e-13") {
				t.Errorf("%s: %s is %s, want %s", line, name, rows[0][name], want[name].FloatString(10))
			}
		}
	}
}

// TestShippedRows: the demo file of testdata goes through.
func TestShippedRows(t *testing.T) {
	raw, err := testdata.Files.ReadFile("batch/clockworks.csv")
	if err != nil {
		t.Fatal(err)
	}
	status, rows, bad := rowTable(t, string(raw))
	if status != 0 || bad != "" || len(rows) < 4 {
		t.Fatalf("status %d, %d rows, %s", status, len(rows), bad)
	}
	known := elementTexts(t)
	for _, row := range rows {
		for name, want := range expectedRow(t, row, known) {
			if !agree(t, row[name], want, "1e-13") {
				t.Errorf("%s: %s is %s, want %s", row["part"], name, row[name], want.FloatString(10))
			}
		}
	}
}
