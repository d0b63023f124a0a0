package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"io"
	"math/big"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"example.com/laydown/testdata"
)

// runRows estimates a table as examples/batch does: status 0, 1 when a row failed and 2
// when there was an error, with what there is to say on bad.
func runRows(in io.Reader, out, bad io.Writer) (status int) {
	rows, err := EstimateRows(out, in)
	switch {
	case err != nil:
		fmt.Fprintln(bad, err)
		return 2
	case rows.Failed > 0:
		fmt.Fprintln(bad, rows)
		return 1
	}
	return 0
}

// callRows estimates a table that is text.
func callRows(t testing.TB, text string) (status int, stdout, stderr string) {
	t.Helper()
	var out, bad bytes.Buffer
	status = runRows(strings.NewReader(text), &out, &bad)
	return status, out.String(), bad.String()
}

// rowTable estimates a table and returns its rows as maps by column name.
func rowTable(t testing.TB, text string) (status int, rows []map[string]string, stderr string) {
	t.Helper()
	status, out, bad := callRows(t, text)
	all, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil {
		t.Fatalf("the output is not CSV: %v\n%s", err, out)
	}
	if len(all) == 0 {
		return status, nil, bad
	}
	for _, line := range all[1:] {
		row := map[string]string{}
		for i, name := range all[0] {
			row[name] = line[i]
		}
		rows = append(rows, row)
	}
	return status, rows, bad
}

var figureColumns = []string{"current_A", "time_min", "charge_Ah", "average_thickness_um", "metal_g", "metal_cost"}

func ratOf(t testing.TB, s string) *big.Rat {
	t.Helper()
	r, ok := new(big.Rat).SetString(s)
	if !ok {
		t.Fatalf("%q is not a number", s)
	}
	return r
}

func product(f ...*big.Rat) *big.Rat {
	p := big.NewRat(1, 1)
	for _, x := range f {
		p.Mul(p, x)
	}
	return p
}

func quotient(a, b *big.Rat) *big.Rat { return new(big.Rat).Quo(a, b) }

// halfEven rounds to a number of decimals, a tie to the even neighbour.
func halfEven(x *big.Rat, decimals int) *big.Rat {
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(decimals)), nil)
	y := product(x, new(big.Rat).SetInt(scale))
	whole, rest := new(big.Int).QuoRem(y.Num(), y.Denom(), new(big.Int)) // x ≥ 0
	twice := new(big.Int).Lsh(rest, 1)
	if c := twice.Cmp(y.Denom()); c > 0 || (c == 0 && whole.Bit(0) == 1) {
		whole.Add(whole, big.NewInt(1))
	}
	return new(big.Rat).SetFrac(whole, scale)
}

// elements holds molar mass [IUPAC2021], density [CRC95] and usual valence of
// some metals, as text.
type elementText struct{ weight, density, valence string }

func elementTexts(t testing.TB) map[string]elementText {
	t.Helper()
	m := map[string]elementText{}
	for symbol, valence := range map[string]string{"Au": "1", "Ag": "1", "Ni": "2", "Cu": "2", "Zn": "2", "Sn": "2",
		"Co": "2", "Pd": "2", "Rh": "3", "In": "3"} {
		m[symbol] = elementText{valence: valence}
	}
	for file, column := range map[string]string{"iupac2021.csv": "value", "densities.csv": "density_a"} {
		tab, err := testdata.Read(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, row := range tab.Rows {
			e, ok := m[row.Text("symbol")]
			if !ok {
				continue
			}
			if column == "value" {
				e.weight = row.Text(column)
			} else {
				e.density = row.Text(column)
			}
			m[row.Text("symbol")] = e
		}
	}
	for symbol, e := range m {
		if e.weight == "" || e.density == "" {
			t.Fatalf("%s: %+v from the tables", symbol, e)
		}
	}
	return m
}

// expected computes one row from the words of the contract, exactly:
// the mean is the minimum over the ratio; current is current density times
// area; mass is density times mean times area; Faraday's law gives the charge,
// m = M·η·Q/(n·F); time is charge over current; the mass is rounded to 1 mg
// before it is priced, the cost to 2 places, half to even.
func expectedRow(t testing.TB, row map[string]string, known map[string]elementText) map[string]*big.Rat {
	e := known[row["metal"]]
	if row["valence"] != "" {
		e.valence = row["valence"]
	}
	if row["density_g_cm3"] != "" {
		e.density = row["density_g_cm3"]
	}
	f := product(ratOf(t, "1.602176634e-19"), ratOf(t, "6.02214076e23")) // C/mol, [SI2019]
	area := product(ratOf(t, row["count"]), ratOf(t, row["area_cm2"]))
	mean := quotient(ratOf(t, row["min_thickness_um"]), ratOf(t, row["min_to_average"]))
	grams := product(mean, ratOf(t, "1e-4"), area, ratOf(t, e.density))
	current := product(ratOf(t, row["current_density_A_dm2"]), area, ratOf(t, "0.01"))
	coulombs := quotient(product(grams, ratOf(t, e.valence), f), product(ratOf(t, e.weight), ratOf(t, row["efficiency"])))
	return map[string]*big.Rat{
		"current_A":            current,
		"time_min":             quotient(coulombs, product(current, ratOf(t, "60"))),
		"charge_Ah":            quotient(coulombs, ratOf(t, "3600")),
		"average_thickness_um": mean,
		"metal_g":              grams,
		"metal_cost":           halfEven(product(halfEven(grams, 3), ratOf(t, row["price_per_g"])), 2),
	}
}

func agree(t testing.TB, got string, want *big.Rat, relative string) bool {
	diff := new(big.Rat).Sub(ratOf(t, got), want)
	return diff.Abs(diff).Cmp(product(want, ratOf(t, relative))) <= 0
}

// decimalText writes a random number of 1 to 5 significant digits.
func decimalText(rng *rand.Rand, low, high float64) string {
	x := low + (high-low)*rng.Float64()
	return strconv.FormatFloat(x, 'f', rng.IntN(4)+1, 64)
}

func atLeast(s, least string) string {
	if strings.Trim(s, "0.") == "" {
		return least
	}
	return s
}

// TestIndependentContract holds a thousand random rows, columns in random
// order, with columns of strangers in between, against exact arithmetic.
func TestIndependentContract(t *testing.T) {
	rng := rand.New(rand.NewPCG(20, 25))
	known := elementTexts(t)
	symbols := []string{"Au", "Ag", "Ni", "Cu", "Zn", "Sn", "Co", "Pd", "Rh", "In"}
	columns := append(append([]string{"note", "customer, name", "größe"}, neededColumns...), optionalColumns...)
	strange := []string{"", "plain", "with, comma", "with \"quotes\"", "two\nlines", "two\r\nlines", "  blanks  ",
		"µ ° 時計 🕰", "=1+1", "0012", "'", `\`, "\t", "NaN"}
	ties := 0
	for round := range 10 {
		rng.Shuffle(len(columns), func(i, j int) { columns[i], columns[j] = columns[j], columns[i] })
		var in bytes.Buffer
		w := csv.NewWriter(&in)
		w.UseCRLF = false
		if err := w.Write(columns); err != nil {
			t.Fatal(err)
		}
		var rows []map[string]string
		for i := range 100 {
			row := map[string]string{
				"part": fmt.Sprintf("part %d-%d", round, i), "note": strange[rng.IntN(len(strange))],
				"customer, name": strange[rng.IntN(len(strange))],
				"größe":          strange[rng.IntN(len(strange))], "count": strconv.Itoa(1 + rng.IntN(500)),
				"area_cm2": atLeast(decimalText(rng, 0, 200), "0.5"), "metal": symbols[rng.IntN(len(symbols))],
				"efficiency": atLeast(decimalText(rng, 0, 1), "1"), "current_density_A_dm2": atLeast(decimalText(rng, 0, 5),
					"1e-1"),
				"min_thickness_um": atLeast(decimalText(rng, 0, 20), "1"), "min_to_average": atLeast(decimalText(rng, 0, 1),
					"0.5"),
				"price_per_g": decimalText(rng, 0, 200), "valence": "", "density_g_cm3": "",
			}
			if rng.IntN(2) == 0 {
				fits := map[string]string{"Au": "13", "Ag": "1", "Ni": "2", "Cu": "12", "Zn": "2", "Sn": "24", "Co": "23",
					"Pd": "24", "Rh": "3", "In": "31"}[row["metal"]]
				row["valence"] = string(fits[rng.IntN(len(fits))])
			}
			if rng.IntN(2) == 0 {
				usual, err := strconv.ParseFloat(known[row["metal"]].density, 64)
				if err != nil {
					t.Fatal(err)
				}
				row["density_g_cm3"] = strconv.FormatFloat(usual*(0.6+0.65*rng.Float64()), 'f', 1+rng.IntN(6), 64)
			}
			if i%4 == 0 { // masses that end on half a milligram
				row["min_to_average"], row["density_g_cm3"], row["min_thickness_um"], row["count"] = "1", "19.3", "1", "1"
				row["metal"], row["valence"] = "Au", ""
				row["area_cm2"] = strconv.Itoa(50 * (1 + 2*rng.IntN(100)))
				ties++
			}
			rows = append(rows, row)
			line := make([]string, len(columns))
			for k, name := range columns {
				line[k] = row[name]
			}
			if err := w.Write(line); err != nil {
				t.Fatal(err)
			}
		}
		w.Flush()
		text := in.String()
		switch round % 3 {
		case 1:
			text = "\ufeff" + text
		case 2: // CR LF behind each row; those inside quotes are cells
			text = strings.ReplaceAll(strings.ReplaceAll(text, "\r\n", "\x01"), "\n", "\r\n")
			text = strings.ReplaceAll(text, "\x01", "\r\n")
			for _, row := range rows {
				for name, cell := range row {
					row[name] = strings.ReplaceAll(strings.ReplaceAll(cell, "\r\n", "\n"), "\n", "\r\n")
				}
			}
		}
		status, out, bad := callRows(t, text)
		if status != 0 || bad != "" {
			t.Fatalf("round %d: status %d, %s%s", round, status, bad, out)
		}
		// The program's own reader, since that of package csv turns CR LF inside quotes into LF.
		r := newRecords(strings.NewReader(out))
		rowHeader, err := r.next()
		if err != nil {
			t.Fatal(err)
		}
		rowHeader = append([]string(nil), rowHeader...)
		if want := append(append([]string(nil), columns...), addedColumns...); strings.Join(rowHeader,
			"|") != strings.Join(want, "|") {
			t.Fatalf("columns %q, want %q", rowHeader, want)
		}
		for i, row := range rows {
			cells, err := r.next()
			if err != nil || len(cells) != len(rowHeader) {
				t.Fatalf("row %d: %v, %d cells", i, err, len(cells))
			}
			want := expectedRow(t, row, known)
			for k, name := range rowHeader {
				switch {
				case name == "error":
					if cells[k] != "" {
						t.Fatalf("row %v: error %s", row, cells[k])
					}
				case name == "metal_cost":
					if ratOf(t, cells[k]).Cmp(want[name]) != 0 || !strings.Contains(cells[k], ".") ||
						len(cells[k])-strings.Index(cells[k], ".") != 3 {
						t.Errorf("row %v: cost %s, want exactly %s", row, cells[k], want[name].FloatString(2))
					}
				case want[name] != nil:
					if !agree(t, cells[k], want[name], "1e-13") {
						t.Errorf("row %v: %s is %s, want %s", row, name, cells[k], want[name].FloatString(12))
					}
				case cells[k] != row[name]:
					t.Errorf("column %q was %q and came out as %q", name, row[name], cells[k])
				}
			}
		}
		if _, err := r.next(); err == nil {
			t.Error("more rows came out than went in")
		}
	}
	if ties < 200 {
		t.Errorf("%d rows on half a milligram, want 200", ties)
	}
}

// TestIndependentHalfEven: ties of the mass and of the cost go to the even
// neighbour, by hand.
func TestIndependentHalfEven(t *testing.T) {
	for _, c := range []struct{ area, price, grams, cost string }{
		{"50", "1000", "0.0965", "96.00"},   // 96.5 mg: to 96
		{"150", "1000", "0.2895", "290.00"}, // 289.5 mg: to 290
		{"100", "0.025", "0.193", "0.00"},   // 0.004825
		{"1000", "0.5", "1.93", "0.96"},     // 0.965: to 0.96
		{"1000", "0.50000000000000001", "1.93", "0.97"},
		{"3000", "0.5", "5.79", "2.90"}, // 2.895: to 2.90
		{"1000", "0", "1.93", "0.00"},
		{"0.1", "1000", "0.000193", "0.00"}, // below half a milligram
	} {
		status, rows, bad := rowTable(t, strings.Join(neededColumns, ",")+",density_g_cm3\nx,1,"+c.area+",Au,1,1,1,1,"+
			c.price+",19.3\n")
		if status != 0 || len(rows) != 1 {
			t.Fatalf("%+v: status %d, %s", c, status, bad)
		}
		if rows[0]["metal_cost"] != c.cost || rows[0]["metal_g"] != c.grams {
			t.Errorf("%+v: metal_g %s, cost %s", c, rows[0]["metal_g"], rows[0]["metal_cost"])
		}
	}
}
