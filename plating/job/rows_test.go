package job

import (
	"errors"
	"io"
	"strings"
	"testing"

	"github.com/shopspring/decimal"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

const oneRow = "hand,12,5.06,Au,1,17.3,0.37,0.5,1,0.6,98.50,x\n"

// firstRow reads the first row of a table.
func firstRow(t *testing.T, text string) Row {
	t.Helper()
	table, err := Rows(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	for row, err := range table.All() {
		if err != nil {
			t.Fatal(err)
		}
		return row
	}
	t.Fatal("no row")
	return Row{}
}

// TestPropertyTypedRow: a row holds what its cells say, and Estimate is that of its layer.
func TestPropertyTypedRow(t *testing.T) {
	r := firstRow(t, "\n"+rowHeader+"\n"+oneRow)
	l := &r.Layer
	near := func(got, want float64) bool { return got > want*(1-1e-12) && got < want*(1+1e-12) }
	if r.Line != 3 || r.Part != "hand" || r.Count != 12 || l.Bath.Metal != "Au" || l.Bath.Valence != 1 ||
		!near(float64(l.Area), 12*5.06e-4) || !near(float64(l.MinThickness), 1e-6) || l.Distribution.MinToAverage != 0.6 ||
		!near(float64(l.CurrentDensity), 50) || !near(float64(l.Bath.Deposit.Density), 17300) ||
		r.PricePerGram.String() != "98.5" ||
		len(r.Cells()) != 12 || r.Cells()[11] != "x" {
		t.Errorf("%+v", r)
	}
	e, err := r.Estimate()
	want, err2 := plating.Estimate(l)
	if err != nil || err2 != nil || e.Current != want.Current || e.Time != want.Time ||
		!near(float64(e.Mass), float64(want.Mass)) ||
		e.Cost.String() != "17.24" { // 0.175 g
		t.Errorf("%+v, %v, %v", e, err, err2)
	}
}

// TestPropertyChangedRow: what code changes in a row counts, not what was written.
func TestPropertyChangedRow(t *testing.T) {
	is, err := (&Row{}).Estimate()
	var wrong *RowError
	if !errors.As(err, &wrong) || strings.Contains(err.Error(), "line") || !is.Cost.IsZero() {
		t.Errorf("the empty row: %v", err)
	}
	text := rowHeader + "\n" + oneRow
	was := firstRow(t, text)
	before, _ := was.Estimate()
	for name, change := range map[string]func(*plating.Layer){
		"area":      func(l *plating.Layer) { l.Area *= 2 },
		"thickness": func(l *plating.Layer) { l.MinThickness *= 2 },
		"ratio":     func(l *plating.Layer) { l.Distribution.MinToAverage /= 2 },
		"density":   func(l *plating.Layer) { l.Bath.Deposit.Density *= 1.25 },
		"time":      func(l *plating.Layer) { l.Time = 2 * before.Time },
	} {
		r := firstRow(t, text)
		change(&r.Layer)
		want := "34.48" // 0.350 g
		if name == "density" {
			want = "21.57" // 0.219 g
		}
		if e, err := r.Estimate(); err != nil || e.Cost.String() != want {
			t.Errorf("%s: %v, %v", name, e.Cost, err)
		}
	}
	for _, price := range []decimal.Decimal{decimal.New(-1, 0), decimal.New(1, 13), decimal.New(1, 2_000_000_000),
		decimal.New(1, -41), decimal.New(0, -2_000_000_000), decimal.RequireFromString("1000000000000.01")} {
		was.PricePerGram = price
		if _, err := was.Estimate(); !errors.Is(err, units.ErrOutOfRange) || !strings.Contains(err.Error(), "(line 2)") {
			t.Errorf("a price of %d with exponent %d: %v", price.CoefficientInt64(), price.Exponent(), err)
		}
	}
	for _, price := range []string{"0", "1e12", "0e-40", "1e-40"} {
		was.PricePerGram = decimal.RequireFromString(price)
		if _, err := was.Estimate(); err != nil {
			t.Errorf("a price of %s: %v", price, err)
		}
	}
}

// TestPropertyOnce: a table is read once, and goes on where it was left.
func TestPropertyOnce(t *testing.T) {
	table, err := Rows(strings.NewReader(rowHeader + "\n" + strings.Repeat(oneRow, 3)))
	if err != nil || len(table.Columns()) != 12 || table.Columns()[11] != "customer" {
		t.Fatal(err)
	}
	table.Columns()[0] = "x" // a copy
	var lines []int
	for range 3 {
		for row := range table.All() {
			lines = append(lines, row.Line)
			if len(lines) == 1 {
				break
			}
		}
	}
	if len(lines) != 3 || lines[0] != 2 || lines[2] != 4 || table.Columns()[0] != "part" {
		t.Errorf("lines %v", lines)
	}
}

// TestPropertyNoTable: what is not there is an error, never a panic, and a row that failed
// for a reason of the caller's is counted with it.
func TestPropertyNoTable(t *testing.T) {
	table, err := Rows(strings.NewReader(rowHeader + "\n" + oneRow))
	if err != nil {
		t.Fatal(err)
	}
	var text strings.Builder
	out, err := NewRowWriter(&text, table)
	if err != nil {
		t.Fatal(err)
	}
	for name, try := range map[string]func() error{
		"no reader":   func() error { _, err := Rows(nil); return err },
		"no writer":   func() error { _, err := EstimateRows(nil, strings.NewReader(rowHeader)); return err },
		"no table":    func() error { _, err := NewRowWriter(io.Discard, nil); return err },
		"empty table": func() error { _, err := NewRowWriter(io.Discard, &Table{}); return err },
		"no rows": func() (err error) {
			for _, err = range (&Table{}).All() {
			}
			return err
		},
		"no row writer":    func() error { return (*RowWriter)(nil).Write(&Row{}, &RowEstimate{}, nil) },
		"empty row writer": func() error { return (&RowWriter{}).Flush() },
		"no row":           func() error { return out.Write(nil, &RowEstimate{}, nil) },
		"no estimate":      func() error { return out.Write(&Row{}, nil, nil) },
	} {
		if err := try(); !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
	if out.Count() != (RowCount{}) || out.Count().String() != "0 rows, none failed" {
		t.Errorf("counted %v", out.Count())
	}
	if err := out.Write(&Row{Line: 7}, nil, errors.New("not for\n\xff us")); err != nil {
		t.Fatal(err)
	}
	if err := out.Flush(); err != nil || !strings.HasSuffix(text.String(), ",not for\\n? us (line 7)\n") ||
		out.Count() != (RowCount{1, 1, 7}) {
		t.Errorf("%v, %v, %q", err, out.Count(), text.String())
	}
}
