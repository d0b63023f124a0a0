package job

import (
	"fmt"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A Row is one row of a table of parts, or one made in code. Of one that is wrong only
// Line is set, and [Row.Estimate] says what is wrong.
type Row struct {
	Line         int    // that it begins on, from 1; 0 for a row of no table
	Part         string // name, which need not be there
	Count        int    // pieces
	Layer        plating.Layer
	PricePerGram decimal.Decimal // of the metal, 0 to 1e12, in steps of 1e-40 at the finest

	cells   []string   // as read, all of them
	wrong   *RowError  // what is wrong with it
	written rowNumbers // that the mass follows from, as they were read
}

// rowNumbers are those that a mass follows from, as text, with the figures they were read as.
// Where Layer has others by now the text does not count.
type rowNumbers struct {
	count, area, thickness, ratio, density string
	figures                                [5]float64
}

// rowFigures are what the mass follows from.
func rowFigures(l *plating.Layer) [5]float64 {
	return [5]float64{float64(l.Area), float64(l.MinThickness), float64(l.Distribution.MinToAverage),
		float64(l.Bath.Deposit.Density), float64(l.Time)}
}

// A RowEstimate is what a row comes to.
type RowEstimate struct {
	plating.LayerEstimate                 // Mass is the float64 of the mass that is priced
	Cost                  decimal.Decimal // of the metal, to 2 places

	grams string // mass as it is written, up to 15 digits
}

// Estimate works out one row.
//
//	m = ρ·A·s_min/r
//	cost = p·m
//
//	ρ      Layer.Bath.Deposit.Density          [kg/m³], written in g/cm³
//	A      Layer.Area                          of all pieces, > 0 [m²], written in cm² a piece
//	s_min  Layer.MinThickness                  [m], written in µm
//	r      Layer.Distribution.MinToAverage     0 < r ≤ 1
//	p      PricePerGram                        0 to 1e12
//
// The other figures are those of [plating.Estimate]. The mass is worked out exactly from
// the numbers as they are written, since half a milligram must not fall to the wrong side
// because 0.1 has no float64. It is rounded to 15 digits, then to 1 mg, priced in decimal
// and rounded to 2 places, both half to even: what the scale and the bill show agree.
//
// Errors: a [*RowError] that says what is wrong with the row, over the
// [*units.ValueError] of the estimate where there is one.
//
// Source: [Definition].
func (r *Row) Estimate() (RowEstimate, error) {
	if r == nil {
		return RowEstimate{}, units.Missing("row", "one of a table, or one made in code")
	}
	if r.wrong != nil {
		return RowEstimate{}, r.wrong
	}
	res, err := plating.Estimate(&r.Layer)
	if err != nil {
		return RowEstimate{}, r.failed(err)
	}
	if err := checkPrice(r.PricePerGram); err != nil {
		return RowEstimate{}, r.failed(err)
	}
	// Up to 15 digits are what is shown, and what is shown is what is priced.
	grams := r.mass(&res)
	e := RowEstimate{LayerEstimate: res, grams: digits(grams)}
	e.Mass = units.Mass(grams) * units.Gram
	mass, err := decimal.NewFromString(e.grams)
	if err != nil {
		return RowEstimate{}, r.failed(err)
	}
	e.Cost = mass.RoundBank(3).Mul(r.PricePerGram).RoundBank(2)
	return e, nil
}

// failed makes an error of the row.
func (r *Row) failed(err error) *RowError {
	return &RowError{Line: r.Line, What: err.Error(), Err: err}
}

// mass returns the mass of the deposit in grams: from the numbers of the table, rounded
// once, or of a row made or changed in code that of its estimate.
func (r *Row) mass(res *plating.LayerEstimate) float64 {
	n := &r.written
	// A row that was changed after it was read must not be priced by the old text.
	if n.figures != rowFigures(&r.Layer) {
		return res.Mass.In(units.Gram)
	}
	m := decimal.New(1, -4) // cm² times µm in cm³
	for _, text := range []string{n.count, n.area, n.thickness, n.density} {
		m = m.Mul(exactly(text))
	}
	v := m.Rat()
	grams, _ := v.Quo(v, exactly(n.ratio).Rat()).Float64() // the ratio is above zero, checked before
	return grams
}

// exactly reads a number that [cellReader.number] has passed.
func exactly(s string) decimal.Decimal {
	v, err := decimal.NewFromString(s)
	if err != nil {
		return decimal.Decimal{}
	}
	return v
}

// checkPrice refuses a price that no table holds, and one with so many digits that exact
// arithmetic would not end.
func checkPrice(p decimal.Decimal) error {
	if p.Exponent() < -40 || !p.IsZero() && (p.IsNegative() || p.Exponent() > 12 ||
		p.GreaterThan(decimal.New(1, 12))) {
		return &units.ValueError{Field: "price of a gram", Value: "out of range",
			Need: "0 to 1e12, in steps of 1e-40 at the finest", Err: units.ErrOutOfRange}
	}
	return nil
}

// row reads the cells of one row; with wrong they are what could be made out.
func (t *Table) row(cells []string, wrong *RowError) Row {
	r := Row{Line: t.in.at, cells: cells, wrong: wrong}
	if wrong != nil { // its cells are only shown
		return r
	}
	c := cellReader{columns: t.columns, cells: cells}
	if len(cells) == len(t.header) {
		c.into(&r)
	} else {
		c.err = fmt.Errorf("the row has %d cells, the header %d", len(cells), len(t.header))
	}
	if c.err != nil {
		return Row{Line: r.Line, cells: cells, wrong: r.failed(c.err)}
	}
	return r
}

// A cellReader reads the cells of one row by the names of their columns and keeps the
// first error.
type cellReader struct {
	columns map[string]int
	cells   []string
	err     error
}

// into reads all cells.
func (c *cellReader) into(r *Row) {
	// In the order of the columns: of several faults the first one is told.
	r.Part = c.text("part")
	r.Count = c.whole("count", 1, 1_000_000_000)
	l := &r.Layer
	l.Area = units.Area(float64(r.Count)*c.positive("area_cm2")) * units.SquareCentimetre
	l.Bath.Efficiency = plating.ConstantEfficiency(units.Efficiency(c.share("efficiency")))
	l.CurrentDensity = units.CurrentDensity(c.positive("current_density_A_dm2")) * units.AmperePerSquareDecimetre
	l.MinThickness = units.Length(c.positive("min_thickness_um")) * units.Micrometre
	l.Distribution.MinToAverage = units.Ratio(c.share("min_to_average"))
	c.deposit(&l.Bath)
	r.PricePerGram = c.price()
	// The text is kept for the mass, which is exact.
	r.written = rowNumbers{count: c.text("count"), area: c.text("area_cm2"), thickness: c.text("min_thickness_um"),
		ratio: c.text("min_to_average"), density: c.text("density_g_cm3"), figures: rowFigures(l)}
	if r.written.density == "" {
		r.written.density = digits(l.Bath.Deposit.Density.In(units.GramPerCubicCentimetre))
	}
}

// text returns a cell without blanks around it, "" where the table lacks the column.
func (c *cellReader) text(column string) string {
	i, have := c.columns[column]
	if !have {
		return ""
	}
	return strings.TrimSpace(c.cells[i])
}

// fail says of a cell what it holds and what would do.
func (c *cellReader) fail(column, need string) {
	if c.err == nil {
		c.err = fmt.Errorf("%s %q: need %s", column, units.Clip(c.text(column)), need)
	}
}

// maxNumber bounds the characters of a number.
const maxNumber = 100

// number reads a plain decimal number: digits, a point, an exponent.
func (c *cellReader) number(column, need string) float64 {
	s := c.text(column)
	if len(s) > maxNumber {
		c.fail(column, fmt.Sprintf("a number of at most %d characters", maxNumber))
		return 0
	}
	// ParseFloat takes hexadecimal, underscores, Inf and NaN as well; a table should not.
	if strings.Trim(s, "0123456789.eE+-") != "" || s == "" {
		c.fail(column, need)
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		c.fail(column, need)
		return 0
	}
	return v
}

// positive reads a number above zero.
func (c *cellReader) positive(column string) float64 {
	const need = "a number above 0, with a point as the decimal mark"
	v := c.number(column, need)
	if c.err == nil && v <= 0 {
		c.fail(column, need)
	}
	return v
}

// share reads a fraction above zero.
func (c *cellReader) share(column string) float64 {
	const need = "a fraction above 0 and at most 1, such as 0.35"
	v := c.number(column, need)
	if c.err == nil && (v <= 0 || v > 1) {
		c.fail(column, need)
	}
	return v
}

// whole reads a whole number from low to high.
func (c *cellReader) whole(column string, low, high int) int {
	v, err := strconv.Atoi(c.text(column))
	if err != nil || v < low || v > high {
		c.fail(column, fmt.Sprintf("a whole number from %d to %d", low, high))
	}
	return v
}

// deposit finds metal, equivalent and density, with the element's own valence and density
// where the cells are empty.
func (c *cellReader) deposit(b *plating.OperatingBath) {
	b.Metal = c.text("metal")
	e, err := faraday.Lookup(b.Metal)
	if err != nil {
		if c.err == nil {
			c.err = fmt.Errorf("metal: %w", err)
		}
		return
	}
	b.Valence = e.UsualValence()
	if c.text("valence") != "" {
		b.Valence = c.whole("valence", 1, 8)
	} else if b.Valence == 0 {
		c.fail("valence", "a whole number from 1 to 8: "+b.Metal+" has no usual one here")
	}
	b.Deposit.Density = e.Density
	if c.text("density_g_cm3") != "" {
		b.Deposit.Density = units.Density(c.positive("density_g_cm3")) * units.GramPerCubicCentimetre
	} else if e.Density == 0 {
		c.fail("density_g_cm3", "a number above 0: "+b.Metal+" has no usual one here")
	}
	// A slip of valence or density would price the wrong metal: each is held against the
	// element's own.
	for _, check := range []func() error{
		func() error { return e.CheckValence(b.Valence) },
		func() error { return faraday.CheckDensity(b.Deposit.Density, e.Density, b.Metal) },
		func() (err error) {
			b.Deposit.Equivalent, err = faraday.NewEquivalent(e.Weight.Value, b.Valence)
			return
		},
	} {
		if c.err == nil {
			c.err = check()
		}
	}
}

// price reads the price as the decimal it is written as.
func (c *cellReader) price() decimal.Decimal {
	v := c.number("price_per_g", "a price of 0 or more, with a point as the decimal mark")
	if c.err == nil && (v < 0 || v > 1e12) {
		c.fail("price_per_g", "a price from 0 to 1e12")
	}
	if c.err != nil {
		return decimal.Decimal{}
	}
	// The decimal is read from the text: 98.10 has no float64.
	if s := c.text("price_per_g"); len(s) <= 40 {
		if d, err := decimal.NewFromString(s); err == nil && d.Exponent() >= -40 {
			return d
		}
	}
	c.fail("price_per_g", "a price of at most 40 characters, in steps of 1e-40 at the finest")
	return decimal.Decimal{}
}
