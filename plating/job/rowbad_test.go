package job

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"strings"
	"testing"
	"testing/iotest"
)

const rowHeader = "part,count,area_cm2,metal,valence,density_g_cm3,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g,customer"

// good is a row that can be computed, as cells.
func goodRow() []string {
	return []string{"hand", "12", "5.06", "Au", "1", "17.3", "0.37", "0.5", "1", "0.6", "98.50", "clock, \"long\"\ncase"}
}

// wrongCells are rows that cannot be computed: one cell each, and a piece of
// what the error must say.
var wrongCells = []struct{ column, cell, want string }{
	{"count", "", "a whole number from 1"},
	{"count", "0", `count "0": need a whole number from 1`},
	{"count", "-3", "a whole number from 1"},
	{"count", "1.5", "a whole number from 1"},
	{"count", "1e3", "a whole number from 1"},
	{"count", "twelve", "a whole number from 1"},
	{"count", "99999999999999999999", "a whole number from 1"},
	{"area_cm2", "", "a number above 0"},
	{"area_cm2", "0", "a number above 0"},
	{"area_cm2", "-5", "a number above 0"},
	{"area_cm2", "NaN", "a number above 0"},
	{"area_cm2", "Inf", "a number above 0"},
	{"area_cm2", "-Inf", "a number above 0"},
	{"area_cm2", "1e999", "a number above 0"},
	{"area_cm2", "1e-999", "a number above 0"},
	{"area_cm2", "5,06", "a point as the decimal mark"},
	{"area_cm2", "0x1p4", "a number above 0"},
	{"area_cm2", "1_000", "a number above 0"},
	{"area_cm2", "5.06 cm²", "a number above 0"},
	{"area_cm2", "٥", "a number above 0"},
	{"area_cm2", "1e308", "need a finite number"},
	{"area_cm2", strings.Repeat("1", 400), "at most 100 characters"},
	{"metal", "", "element"},
	{"metal", "au", "did you mean Au"},
	{"metal", "gold", "did you mean Au"},
	{"metal", "Xx", "need a symbol such as Au"},
	{"metal", "AuCo", "need a symbol such as Au"},
	{"metal", "Tc", "standard atomic weight"},
	{"valence", "0", "a whole number from 1 to 8"},
	{"valence", "9", "a whole number from 1 to 8"},
	{"valence", "1.0", "a whole number from 1 to 8"},
	{"valence", "I", "a whole number from 1 to 8"},
	{"density_g_cm3", "0", "a number above 0"},
	{"density_g_cm3", "-1", "a number above 0"},
	{"density_g_cm3", "heavy", "a number above 0"},
	{"efficiency", "", "a fraction above 0 and at most 1"},
	{"efficiency", "0", "a fraction above 0 and at most 1"},
	{"efficiency", "1.0000001", "a fraction above 0 and at most 1"},
	{"efficiency", "37", "a fraction above 0 and at most 1"},
	{"efficiency", "37 %", "a fraction above 0 and at most 1"},
	{"efficiency", "-0.1", "a fraction above 0 and at most 1"},
	{"current_density_A_dm2", "0", "a number above 0"},
	{"current_density_A_dm2", "", "a number above 0"},
	{"current_density_A_dm2", "1e-320", "check the unit and the point"},
	{"min_thickness_um", "0", "a number above 0"},
	{"min_thickness_um", "--1", "a number above 0"},
	{"min_to_average", "0", "a fraction above 0 and at most 1"},
	{"min_to_average", "1.5", "a fraction above 0 and at most 1"},
	{"min_to_average", "", "a fraction above 0 and at most 1"},
	{"price_per_g", "", "a price of 0 or more"},
	{"price_per_g", "-1", "a price from 0"},
	{"price_per_g", "1e13", "a price from 0"},
	{"price_per_g", "$98", "a price of 0 or more"},
	{"price_per_g", "NaN", "a price of 0 or more"},
	{"price_per_g", "0e-999999999999", "a price of at most 40 characters"},
	{"price_per_g", "1." + strings.Repeat("0", 50), "a price of at most 40 characters"},
}

// TestBadRows: each bad row says why, has its numbers empty and keeps its
// cells; the rows around it are computed; the order stays.
func TestBadRows(t *testing.T) {
	columns := strings.Split(rowHeader, ",")
	var in bytes.Buffer
	w := csv.NewWriter(&in)
	put := func(cells []string) {
		t.Helper()
		if err := w.Write(cells); err != nil {
			t.Fatal(err)
		}
	}
	put(columns)
	for i, s := range wrongCells {
		row := goodRow()
		row[0] = fmt.Sprintf("good %d", i)
		put(row)
		row[0] = fmt.Sprintf("bad %d", i)
		for k, name := range columns {
			if name == s.column {
				row[k] = s.cell
			}
		}
		put(row)
	}
	put(goodRow())
	w.Flush()
	status, rows, bad := rowTable(t, in.String())
	if want := fmt.Sprintf("%d of %d rows failed", len(wrongCells), 2*len(wrongCells)+1); status != 1 ||
		!strings.Contains(bad, want) {
		t.Errorf("status %d, %q; want 1 and %q", status, bad, want)
	}
	if len(rows) != 2*len(wrongCells)+1 {
		t.Fatalf("%d rows came out", len(rows))
	}
	for i, s := range wrongCells {
		before, row := rows[2*i], rows[2*i+1]
		if before["part"] != fmt.Sprintf("good %d", i) || before["error"] != "" || before["current_A"] == "" {
			t.Errorf("row before %+v: %v", s, before)
		}
		if row["part"] != fmt.Sprintf("bad %d", i) || spreadsheetText(row[s.column]) != s.cell ||
			row["customer"] != goodRow()[11] {
			t.Errorf("%+v: cells were changed or rows changed places: %v", s, row)
		}
		if !strings.Contains(row["error"], s.want) || strings.Contains(row["error"], "\n") || len(row["error"]) > 400 {
			t.Errorf("%+v: error %q", s, row["error"])
		}
		if s.want[0] == 'a' && !strings.HasPrefix(row["error"], s.column) {
			t.Errorf("%+v: error %q does not name the column", s, row["error"])
		}
		for _, name := range figureColumns {
			if row[name] != "" {
				t.Errorf("%+v: %s is %q in a row that failed", s, name, row[name])
			}
		}
	}
	if last := rows[len(rows)-1]; last["error"] != "" || last["metal_cost"] == "" {
		t.Errorf("the last row: %v", last)
	}
}

// TestBadLines: rows that are wrong as CSV.
func TestBadLines(t *testing.T) {
	const g = "hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n"
	for _, c := range []struct {
		name, line, want string
		good             int // rows computed in all
		bad              int
	}{
		{"short", "hand,12\n", "the row has 2 cells, the header 12", 2, 1},
		{"long", strings.TrimSpace(g) + ",more\n", "the row has 13 cells, the header 12", 2, 1},
		{"blank", " \n", "the row has 1 cells", 2, 1},
		{"empty lines", "\n\r\n\n", "", 2, 0},
		{"quote inside", `ha"nd,12` + "\n", "a quote out of place", 2, 1},
		{"quote behind", `"hand"x,12` + "\n", "a quote out of place", 2, 1},
		{"quote not closed", `hand,"12` + "\n", "a quote is not closed", 2, 1},
		{"zero byte", strings.Replace(g, "12", "1\x002", 1), `count "1\x002": need a whole number`, 2, 1},
		{"not UTF-8", strings.Replace(g, "Au", "\xff", 1), "element", 2, 1},
		{"ten million bytes", strings.Replace(g, "x", strings.Repeat("y", 10_000_000), 1), "longer than 1048576 bytes", 2,
			1},
		{"a million bytes over few lines", strings.Replace(g, "x", `"`+strings.Repeat(strings.Repeat("y", 60_000)+"\n", 20)+
			`"`, 1), "", 2, 21},
		{"a note of 51 lines", strings.Replace(g, "x", `"`+strings.Repeat("y\n", 50)+`"`, 1), "", 2, 51},
		{"a note of 50 lines", strings.Replace(g, "x", `"`+strings.Repeat("y\n", 49)+`"`, 1), "", 3, 0},
		{"ten million cells", strings.Repeat(",", 10_000_000) + "\n", "longer than 1048576 bytes", 2, 1},
		{"not closed for many lines", `"` + strings.Repeat("y\n", 50_000), "", 2, 50_000},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, rows, bad := rowTable(t, rowHeader+"\n"+g+c.line+g)
			ok, failed := 0, 0
			for _, row := range rows {
				if row["error"] == "" {
					ok++
					continue
				}
				failed++
				if !strings.Contains(row["error"], c.want) {
					t.Errorf("error %q, want %q", row["error"], c.want)
				}
			}
			if ok != c.good || failed != c.bad {
				t.Errorf("%d rows computed and %d failed, want %d and %d", ok, failed, c.good, c.bad)
			}
			if want := min(1, c.bad); status != want || strings.Contains(bad, fmt.Sprintf("%d of %d rows failed", failed, ok+
				failed)) != (want == 1) {
				t.Errorf("status %d, %q", status, bad)
			}
		})
	}
}

func TestHeaders(t *testing.T) {
	without := func(name string) string {
		return strings.Replace(","+rowHeader, ","+name, "", 1)[1:]
	}
	for _, c := range []struct {
		name, text string
		status     int
		want       string
	}{
		{"empty input", "", 2, "no header row"},
		{"empty lines only", "\n\n", 2, "no header row"},
		{"byte order mark only", "\ufeff", 2, "no header row"},
		{"header only", rowHeader + "\n", 0, ""},
		{"header without line end", rowHeader, 0, ""},
		{"header with byte order mark and quotes", "\ufeff\"part\"" + strings.TrimPrefix(rowHeader, "part") + "\r\n", 0,
			""},
		{"blanks around names", strings.ReplaceAll(rowHeader, ",", " , "), 0, ""},
		{"nameless columns", rowHeader + ",,", 0, ""},
		{"no metal", without("metal"), 2, "the header lacks metal; needed are part, count"},
		{"no price", without("price_per_g"), 2, "the header lacks price_per_g"},
		{"only valence", "valence", 2, "the header lacks part, count"},
		{"valence may be left out", without("valence"), 0, ""},
		{"density may be left out", without("density_g_cm3"), 0, ""},
		{"count twice", rowHeader + ",count", 2, `column "count" stands twice`},
		{"stranger twice", rowHeader + ",customer", 2, `column "customer" stands twice`},
		{"collision", rowHeader + ",time_min", 2, `column "time_min" is one that this program adds`},
		{"collision with error", rowHeader + ",error", 2, `column "error" is one`},
		{"capitals", strings.ToUpper(rowHeader), 2, "the header lacks"},
		{"semicolons", strings.ReplaceAll(rowHeader, ",", ";"), 2, "semicolons"},
		{"tabs", strings.ReplaceAll(rowHeader, ",", "\t"), 2, "separate the columns by commas"},
		{"quote not closed", `"` + rowHeader, 2, "a quote is not closed"},
		{"zero bytes", strings.Join(strings.Split(rowHeader, ""), "\x00"), 2, "a zero byte; need CSV text in UTF-8"},
		{"too long", rowHeader + "," + strings.Repeat("x", 2<<20) + "\n", 2, "longer than"},
	} {
		t.Run(c.name, func(t *testing.T) {
			status, out, bad := callRows(t, c.text)
			if status != c.status || !strings.Contains(bad, c.want) || (status == 0) != (bad == "") {
				t.Errorf("status %d, %q; want %d and %q", status, bad, c.status, c.want)
			}
			if (status == 0) != strings.HasSuffix(out,
				",current_A,time_min,charge_Ah,average_thickness_um,metal_g,metal_cost,error\n") {
				t.Errorf("output %q", out)
			}
		})
	}
}

// TestOptionalColumns: without the columns valence and density the element's
// own are taken, as with empty cells.
func TestOptionalColumns(t *testing.T) {
	_, with, _ := rowTable(t, rowHeader+"\nx,1,1,Ni,,,1,1,1,1,1,\nx,1,1,Ni,2,8.9,1,1,1,1,1,\n")
	_, without, _ := rowTable(t, strings.Join(neededColumns, ",")+"\nx,1,1,Ni,1,1,1,1,1\n")
	for _, name := range figureColumns {
		if with[0][name] == "" || with[0][name] != with[1][name] || with[0][name] != without[0][name] {
			t.Errorf("%s: %q, %q, %q", name, with[0][name], with[1][name], without[0][name])
		}
	}
	// An element without a usual valence or density says so.
	status, rows, _ := rowTable(t, rowHeader+"\nx,1,1,Ar,,1,1,1,1,1,1,\nx,1,1,Ar,1,,1,1,1,1,1,\n")
	if status != 1 || !strings.Contains(rows[0]["error"], "valence") || !strings.Contains(rows[1]["error"], "density") {
		t.Errorf("status %d, %v", status, rows)
	}
}

var errFullDisk = errors.New("no space left")

type fullDisk struct{ left int }

func (w *fullDisk) Write(p []byte) (int, error) {
	if w.left -= len(p); w.left < 0 {
		return 0, errFullDisk
	}
	return len(p), nil
}

func TestWriteErrors(t *testing.T) {
	text := rowHeader + "\n" + strings.Repeat("hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n", 1000)
	for _, room := range []int{0, 100, 5000, 50_000} {
		var bad bytes.Buffer
		if status := runRows(strings.NewReader(text), &fullDisk{left: room}, &bad); status != 2 ||
			!strings.Contains(bad.String(), errFullDisk.Error()) {
			t.Errorf("room for %d bytes: status %d, %q", room, status, bad.String())
		}
	}
}

// TestReadError: what came before the input broke is still put out.
func TestReadError(t *testing.T) {
	text := rowHeader + "\nhand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n"
	var out, bad bytes.Buffer
	status := runRows(io.MultiReader(strings.NewReader(text), iotest.ErrReader(errFullDisk)), &out, &bad)
	if status != 2 || !strings.Contains(bad.String(), "after row 1: "+errFullDisk.Error()) || strings.Count(out.String(),
		"\n") != 2 {
		t.Errorf("status %d, %q, output %q", status, bad.String(), out.String())
	}
	// Also a row that waits for lines that were read ahead.
	out.Reset()
	ahead := text + "hand,\"a\nhand,\"b\n"
	status = runRows(io.MultiReader(strings.NewReader(ahead), iotest.ErrReader(errFullDisk)), &out, &bad)
	if status != 2 || strings.Count(out.String(), "\n") != 3 {
		t.Errorf("status %d, output %q", status, out.String())
	}
	// However the input comes in pieces, the output is the same.
	_, want, _ := callRows(t, text)
	for name, r := range map[string]io.Reader{"bytes": iotest.OneByteReader(strings.NewReader(text)),
		"halves":            iotest.HalfReader(strings.NewReader(text)),
		"data with the end": iotest.DataErrReader(strings.NewReader(text))} {
		out.Reset()
		if status := runRows(r, &out, &bad); status != 0 || out.String() != want {
			t.Errorf("%s: status %d, %q", name, status, out.String())
		}
	}
}

// TestPropertyNoMetalHasIt: gold of valence 2 or 8, and of a density that no gold
// has, is refused with what would do.
func TestPropertyNoMetalHasIt(t *testing.T) {
	for _, c := range []struct{ valence, density, want string }{
		{"2", "19.3", "need 1 or 3"}, {"8", "19.3", "need 1 or 3"}, {"1", "8", "half to one and a half"}, {"1", "0.00001",
			"half to one and a half"},
		{"3", "19.3", ""}, {"1", "17.3", ""},
	} {
		text := "part,count,area_cm2,metal,valence,density_g_cm3,efficiency,current_density_A_dm2,min_thickness_um,min_to_average,price_per_g\n" +
			"hand,1,10,Au," + c.valence + "," + c.density + ",0.9,0.5,1,0.6,90\n"
		status, rows, _ := rowTable(t, text)
		if bad := c.want != ""; (status != 0) != bad || !strings.Contains(rows[0]["error"], c.want) {
			t.Errorf("valence %s, density %s: status %d, %q", c.valence, c.density, status, rows[0]["error"])
		}
	}
}
