package job

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"strings"
	"testing"
	"time"

	"example.com/laydown/testdata"
)

// TestPropertyStrayQuote: in a file of many rows a stray quote costs the row that it
// stands in and no other, wherever in the file or in the row it stands, and the error
// names its line. Rows in are rows out, and those that failed are counted.
func TestPropertyStrayQuote(t *testing.T) {
	const few = 2_000
	many := 100_000
	if !testdata.Slow() {
		many = few
	}
	cells := strings.Split("hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x", ",")
	plain := strings.Join(cells, ",") + "\n"
	spoiled := func(cell int, how string) string {
		c := append([]string(nil), cells...)
		switch how {
		case "before":
			c[cell] = `"` + c[cell]
		case "behind":
			c[cell] += `"`
		case "inside":
			c[cell] = c[cell][:1] + `"` + c[cell][1:]
		}
		return strings.Join(c, ",") + "\n"
	}
	for _, c := range []struct {
		name  string
		total int
		rows  []int // from 0
		cell  int
		how   string
	}{
		{"first row", many, []int{0}, 0, "before"},
		{"in the middle", many, []int{many / 2}, 0, "before"},
		{"last row", many, []int{many - 1}, 0, "before"},
		{"in the middle, last cell", few, []int{few / 2}, 11, "before"},
		{"in the middle, behind a cell", few, []int{few / 2}, 4, "behind"},
		{"an inch mark inside", few, []int{few / 2}, 2, "inside"},
		{"two in neighbouring rows, first cell", few, []int{70, 71}, 0, "before"},
		{"two in neighbouring rows, middle cell", few, []int{70, 71}, 5, "before"},
		{"two in neighbouring rows, last cell", few, []int{70, 71}, 11, "before"},
		{"two far apart", few, []int{70, few - 70}, 11, "before"},
	} {
		t.Run(c.name, func(t *testing.T) {
			var in strings.Builder
			in.WriteString(rowHeader + "\n")
			bad := map[int]bool{}
			for _, i := range c.rows {
				bad[i] = true
			}
			for i := range c.total {
				if bad[i] {
					in.WriteString(spoiled(c.cell, c.how))
				} else {
					in.WriteString(plain)
				}
			}
			status, out, said := callRows(t, in.String())
			all, err := csv.NewReader(strings.NewReader(out)).ReadAll()
			if err != nil || len(all) != c.total+1 {
				t.Fatalf("%d rows out of %d: %v; %s", len(all)-1, c.total, err, said)
			}
			for i, row := range all[1:] {
				reason, where := row[len(row)-1], fmt.Sprintf("(line %d)", i+2)
				if (reason != "") != bad[i] || bad[i] && !(strings.Contains(reason, "quote") &&
					strings.HasSuffix(reason, where) && strings.Contains(reason, fmt.Sprintf("cell %d", c.cell+1))) {
					t.Fatalf("row %d: %q", i, reason)
				}
				if (row[len(row)-2] == "") != bad[i] {
					t.Fatalf("row %d: %q", i, row)
				}
			}
			want := fmt.Sprintf("%d of %d rows failed; see the column error; the first stands on line %d\n", len(c.rows),
				c.total, c.rows[0]+2)
			if status != 1 || said != want {
				t.Errorf("status %d, %q; want %q", status, said, want)
			}
		})
	}
}

// TestPropertyQuotePairs: two stray quotes that make a pair over two rows never mix the
// figures of these rows, in whatever cells they stand.
func TestPropertyQuotePairs(t *testing.T) {
	a := strings.Split("one,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x", ",")
	b := strings.Split("two,7,1.25,Ag,1,10.5,0.99,0.8,3,0.5,1.35,y", ",")
	goodRow := "three,1,1,Au,,,1,1,1,1,1,z\n"
	for i := range a {
		for k := range b {
			first, second := append([]string(nil), a...), append([]string(nil), b...)
			first[i], second[k] = `"`+first[i], second[k]+`"`
			text := rowHeader + "\n" + strings.Join(first, ",") + "\n" + strings.Join(second, ",") + "\n" + goodRow
			_, rows, said := rowTable(t, text)
			if len(rows) != 3 || rows[0]["error"] == "" || rows[1]["error"] == "" || rows[2]["error"] != "" ||
				!strings.HasPrefix(said, "2 of 3 rows failed") {
				t.Errorf("cells %d and %d: %s%v", i+1, k+1, said, rows)
			}
		}
	}
}

// TestPropertyEndless: of input without end no more is read than tells that it is no
// table.
func TestPropertyEndless(t *testing.T) {
	for piece, want := range map[string]string{"\x00": "longer than", " ": "longer than", "\n": "1000 empty lines",
		"\r\n": "1000 empty lines", `"`: "longer than", "a,": "longer than"} {
		e := &endlessRows{piece: piece}
		var out, bad bytes.Buffer
		done := make(chan int, 1)
		go func() { done <- runRows(e, &out, &bad) }()
		select {
		case status := <-done:
			if status != 2 || !strings.Contains(bad.String(), want) || e.at > 2*maxRow {
				t.Errorf("%q: status %d after %d bytes, %q", piece, status, e.at, bad.String())
			}
		case <-time.After(10 * time.Second):
			t.Fatalf("%q: no end", piece)
		}
	}
}

// TestPropertyNotes: a note with line breaks, commas and quotes is a cell like others, and
// lines are counted as an editor counts them.
func TestPropertyNotes(t *testing.T) {
	text := rowHeader + "\n\n" + `hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,"long ""case"", left,` + "\n\n" +
		`right, top"` + "\n" +
		"hand,0,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n"
	_, rows, said := rowTable(t, text)
	if len(rows) != 2 || rows[0]["error"] != "" || rows[0]["customer"] != "long \"case\", left,\n\nright, top" {
		t.Fatalf("%s%v", said, rows)
	}
	if !strings.HasSuffix(rows[1]["error"], "(line 6)") || !strings.Contains(said, "the first stands on line 6") {
		t.Errorf("%q, %q", rows[1]["error"], said)
	}
}

// TestPropertyNoFormulas: no cell that comes out begins as a formula does, header,
// passed cells and errors alike, numbers stay numbers, and the program reads its own
// output as the same text.
func TestPropertyNoFormulas(t *testing.T) {
	texts := []string{"=1+1", "+1+1", "-1+1", "@SUM(1)", "\t=1", "\r=1", "＝1", "＋1+1", "－1", "＠x", " =1", "'=1", "''=1",
		"-7.45", "+12", "1e-3", "'tis", "plain", ""}
	var in bytes.Buffer
	w := csv.NewWriter(&in)
	columns := append(strings.Split(rowHeader, ","), "=cmd")
	put := func(cells []string) {
		t.Helper()
		if err := w.Write(cells); err != nil {
			t.Fatal(err)
		}
	}
	put(columns)
	for _, s := range texts {
		row := append(goodRow(), s)
		row[0] = s
		put(row)
		row[1] = s // no count
		put(row)
	}
	w.Flush()
	_, out, _ := callRows(t, in.String())
	all, err := csv.NewReader(strings.NewReader(out)).ReadAll()
	if err != nil || len(all) != 2*len(texts)+1 {
		t.Fatalf("%d rows, %v", len(all), err)
	}
	again := newRecords(strings.NewReader(out))
	for i, row := range all {
		for k, cell := range row {
			if strings.ContainsAny(firstSign(cell), "=+-@＝＋－＠\t\r") && cell != "-7.45" && cell != "+12" {
				t.Errorf("row %d, cell %d: %q", i, k, cell)
			}
		}
		cells, err := again.next()
		if err != nil {
			t.Fatal(err)
		}
		want := "=cmd"
		if i > 0 {
			want = strings.ReplaceAll(texts[(i-1)/2], "\r", `\r`) // a return by itself is written visibly
			if want[:min(1, len(want))] == "'" && strings.TrimLeft(want, "'") == "=1" {
				want = want[1:] // the apostrophe in front is not of the text
			}
			if cells[0] != want {
				t.Errorf("row %d: the part %q reads as %q", i, want, cells[0])
			}
		}
		if cells[len(columns)-1] != want {
			t.Errorf("row %d: %q reads as %q", i, want, cells[len(columns)-1])
		}
	}
}

// firstSign is the first character of a cell that is not a blank.
func firstSign(cell string) string {
	for _, r := range strings.TrimLeft(cell, " ") {
		return string(r)
	}
	return ""
}
