package main

import (
	"fmt"
	"math/big"
	"strconv"
	"strings"

	"github.com/shopspring/decimal"

	"example.com/laydown/faraday"
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// A row reads the cells of one record and keeps the first error.
type row struct {
	columns map[string]int
	fields  []string
	err     error
}

func (r *row) text(column string) string {
	i, have := r.columns[column]
	if !have {
		return ""
	}
	return strings.TrimSpace(r.fields[i])
}

func (r *row) fail(column, need string) {
	if r.err == nil {
		r.err = fmt.Errorf("%s %q: need %s", column, units.Clip(r.text(column)), need)
	}
}

// maxNumber bounds the characters of a number.
const maxNumber = 100

// number reads a plain decimal number: digits, a point, an exponent.
func (r *row) number(column, need string) float64 {
	s := r.text(column)
	if len(s) > maxNumber {
		r.fail(column, fmt.Sprintf("a number of at most %d characters", maxNumber))
		return 0
	}
	if strings.Trim(s, "0123456789.eE+-") != "" || s == "" {
		r.fail(column, need)
		return 0
	}
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		r.fail(column, need)
		return 0
	}
	return v
}

func (r *row) positive(column string) float64 {
	const need = "a number above 0, with a point as the decimal mark"
	v := r.number(column, need)
	if r.err == nil && v <= 0 {
		r.fail(column, need)
	}
	return v
}

func (r *row) share(column string) float64 {
	const need = "a fraction above 0 and at most 1, such as 0.35"
	v := r.number(column, need)
	if r.err == nil && (v <= 0 || v > 1) {
		r.fail(column, need)
	}
	return v
}

// whole reads a whole number from low to high.
func (r *row) whole(column string, low, high int) int {
	v, err := strconv.Atoi(r.text(column))
	if err != nil || v < low || v > high {
		r.fail(column, fmt.Sprintf("a whole number from %d to %d", low, high))
	}
	return v
}

// estimate computes the added columns of one row.
func estimate(columns map[string]int, fields []string) ([]string, error) {
	r := &row{columns: columns, fields: fields}
	count := r.whole("count", 1, 1_000_000_000)
	area := units.Area(float64(count)*r.positive("area_cm2")) * units.SquareCentimetre
	eff := units.Efficiency(r.share("efficiency"))
	j := units.CurrentDensity(r.positive("current_density_A_dm2")) * units.AmperePerSquareDecimetre
	least := units.Length(r.positive("min_thickness_um")) * units.Micrometre
	ratio := units.Ratio(r.share("min_to_average"))
	deposit := r.deposit()
	price := r.price()
	if r.err != nil {
		return nil, r.err
	}
	res, err := plating.Estimate(&plating.Layer{
		Bath: plating.OperatingBath{Deposit: deposit, Efficiency: plating.ConstantEfficiency(eff)},
		Area: area, Distribution: plating.Distribution{MinToAverage: ratio}, MinThickness: least, CurrentDensity: j,
	})
	if err != nil {
		return nil, err
	}
	grams := digits(r.grams(deposit.Density))
	mass, err := decimal.NewFromString(grams)
	if err != nil {
		return nil, err
	}
	// 1 mg first, then the price: what the scale and the bill show agree.
	cost := mass.RoundBank(3).Mul(price).RoundBank(2)
	return []string{
		digits(res.Current.In(units.Ampere)), digits(res.Time.In(units.Minute)), digits(res.Charge.In(units.AmpereHour)),
		digits(res.Average.In(units.Micrometre)), grams, cost.StringFixed(2), "",
	}, nil
}

// grams returns the mass of the deposit from the numbers as they are written,
// rounded once: half a milligram must not fall to the wrong side because 0.1
// has no float64.
//
//	m = ρ·k·A₁·s_min/r
func (r *row) grams(density units.Density) float64 {
	m := big.NewRat(1, 10_000) // cm² times µm in cm³
	for _, column := range []string{"count", "area_cm2", "min_thickness_um"} {
		m.Mul(m, ratio(r.text(column)))
	}
	rho := r.text("density_g_cm3")
	if rho == "" {
		rho = digits(density.In(units.GramPerCubicCentimetre))
	}
	m.Mul(m, ratio(rho))
	m.Quo(m, ratio(r.text("min_to_average"))) // above zero, checked before
	v, _ := m.Float64()
	return v
}

// ratio reads a number that [row.number] has passed.
func ratio(s string) *big.Rat {
	v, ok := new(big.Rat).SetString(s)
	if !ok {
		return new(big.Rat)
	}
	return v
}

// deposit finds equivalent and density, with the element's own where the cells
// are empty.
func (r *row) deposit() faraday.Deposit {
	symbol := r.text("metal")
	e, err := faraday.Lookup(symbol)
	if err != nil {
		if r.err == nil {
			r.err = fmt.Errorf("metal: %w", err)
		}
		return faraday.Deposit{}
	}
	valence := e.UsualValence()
	if r.text("valence") != "" {
		valence = r.whole("valence", 1, 8)
	} else if valence == 0 {
		r.fail("valence", "a whole number from 1 to 8: "+symbol+" has no usual one here")
	}
	density := e.Density
	if r.text("density_g_cm3") != "" {
		density = units.Density(r.positive("density_g_cm3")) * units.GramPerCubicCentimetre
	} else if density == 0 {
		r.fail("density_g_cm3", "a number above 0: "+symbol+" has no usual one here")
	}
	if r.err != nil {
		return faraday.Deposit{}
	}
	if err := e.CheckValence(valence); err != nil {
		r.err = err
		return faraday.Deposit{}
	}
	if err := faraday.CheckDensity(density, e.Density, symbol); err != nil {
		r.err = err
		return faraday.Deposit{}
	}
	eq, err := faraday.EquivalentOf(e.Weight.Value, valence)
	if err != nil {
		r.err = err
	}
	return faraday.Deposit{Equivalent: eq, Density: density}
}

// price reads the price as the decimal it is written as.
func (r *row) price() decimal.Decimal {
	v := r.number("price_per_g", "a price of 0 or more, with a point as the decimal mark")
	if r.err == nil && (v < 0 || v > 1e12) {
		r.fail("price_per_g", "a price from 0 to 1e12")
	}
	if r.err != nil {
		return decimal.Decimal{}
	}
	if s := r.text("price_per_g"); len(s) <= 40 {
		if d, err := decimal.NewFromString(s); err == nil && d.Exponent() >= -40 {
			return d
		}
	}
	r.fail("price_per_g", "a price of at most 40 characters, in steps of 1e-40 at the finest")
	return decimal.Decimal{}
}

// digits writes a number with up to 15 significant digits. All of them are good
// in the decimal form; the float64 behind has noise in the 16th and 17th.
func digits(v float64) string { return strconv.FormatFloat(v, 'g', 15, 64) }
