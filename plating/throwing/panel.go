package throwing

import (
	"math"

	"example.com/laydown/units"
)

// A Panel is a test cell with a slanted cathode, of the kind after Hull, for
// which the log law was printed. The zero Panel is none.
type Panel uint8

// The two cells whose constants were seen in print. The deep panel of 534 mL is
// left out: its constants were not.
const (
	Panel267  Panel = iota + 1 // 267 mL
	Panel1000                  // 1000 mL
)

// String returns the cell's volume.
func (p Panel) String() string {
	switch p {
	case Panel267:
		return "267 mL cell"
	case Panel1000:
		return "1000 mL cell"
	}
	return "unknown cell"
}

// The log law's range, both ends included.
const (
	panelFirst = 0.25 * units.Inch
	panelLast  = 3.25 * units.Inch
)

// constants returns C1 and C2 for inches and A/ft² per A.
func (p Panel) constants() (c1, c2 float64, err error) {
	switch p {
	case Panel267:
		return 27.7, 48.7, nil
	case Panel1000:
		return 18.8, 28.3, nil
	}
	return 0, 0, &units.ValueError{Field: "test cell", Value: p.String(), Need: "Panel267 or Panel1000",
		Err: units.ErrOutOfRange}
}

// Density returns the current density at a place on the panel.
//
//	j = I (C1 - C2 log10 L)
//
//	j            in A/ft²
//	I  current   of the cell, > 0, in A
//	L  fromHigh  from the end with the high current density, 0.25 to 3.25 inches
//	C1, C2       27.7 and 48.7 for 267 mL, 18.8 and 28.3 for 1000 mL
//
// The law was averaged over several baths, so it describes a panel with the
// polarisation of a usual one; a cyanide bath may depart from it by much. It is
// not the primary distribution of [Trapezoid]. In its range it is positive and
// falls; further on it turns negative, at 94 mm for 267 mL.
//
// Errors: a [*units.ValueError] for an argument out of range or an unknown cell; a
// [*units.RangeError], and no value, outside the stated range.
//
// Source: [TestCell2013] p. 482.
func (p Panel) Density(current units.Current, fromHigh units.Length) (units.CurrentDensity, error) {
	c1, c2, err := p.constants()
	if err != nil {
		return 0, err
	}
	if err := units.Positive("current", current); err != nil {
		return 0, err
	}
	if err := units.Positive("place on the panel", fromHigh); err != nil {
		return 0, err
	}
	const slack = 1e-12 // a quarter inch given as 6.35 mm is one
	if fromHigh < panelFirst*(1-slack) || fromHigh > panelLast*(1+slack) {
		return 0, &units.RangeError{Field: "place on the panel", Value: fromHigh.String(),
			Low: panelFirst.String(), High: panelLast.String(), Source: "TestCell2013"}
	}
	per := c1 - c2*math.Log10(fromHigh.In(units.Inch))
	return finite("current density", units.CurrentDensity(float64(current)*per)*units.AmperePerSquareFoot)
}

// Place returns where on the panel a current density stands: the inverse of
// [Panel.Density].
//
//	log10 L = (C1 - j/I)/C2
//
//	j  density   > 0, in A/ft²
//	I  current   of the cell, > 0, in A
//	L            from the end with the high current density, in inches
//	C1, C2       as for [Panel.Density]
//
// Errors: a [*units.ValueError] for an argument out of range or an unknown cell; a
// [*units.RangeError], and no value, for a current density that no place in the
// stated range has: take another current.
//
// Source: [TestCell2013] p. 482.
func (p Panel) Place(current units.Current, density units.CurrentDensity) (units.Length, error) {
	c1, c2, err := p.constants()
	if err != nil {
		return 0, err
	}
	if err := units.Positive("current density", density); err != nil {
		return 0, err
	}
	high, err := p.Density(current, panelFirst)
	if err != nil {
		return 0, err
	}
	low, err := p.Density(current, panelLast)
	if err != nil {
		return 0, err
	}
	const slack = 1e-12
	if density < low*(1-slack) || density > high*(1+slack) {
		return 0, &units.RangeError{Field: "current density on the panel", Value: density.String(),
			Low: low.String(), High: high.String(), Source: "TestCell2013"}
	}
	per := float64(density/units.AmperePerSquareFoot) / float64(current)
	l := units.Length(math.Pow(10, (c1-per)/c2)) * units.Inch
	return min(max(l, panelFirst), panelLast), nil
}
