package rinse

import (
	"fmt"
	"strings"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// mostStages bounds the rinses in a row.
const mostStages = 20

// A Counterflow is a row of rinses with one stream of water: fresh water enters
// the last tank, each tank runs over into the one before it, and the first
// runs over to the drain or to recovery. The work goes the other way.
type Counterflow struct {
	Stages  int  // 1 to 20
	Water   Flow // fresh water into the last tank, ≥ 0
	DragIn  Flow // bath that the work brings into the first tank, > 0
	DragOut Flow // what the work takes on from every tank; zero means as DragIn
}

// out returns the drag-out, which is the drag-in when it is not given.
func (c Counterflow) out() Flow {
	if c.DragOut == 0 {
		return c.DragIn
	}
	return c.DragOut
}

func (c Counterflow) check() error {
	if err := first(whole("rinse stages", c.Stages, 1, mostStages), units.NonNegative("rinse water", c.Water),
		units.Positive("drag-in", c.DragIn), units.NonNegative("drag-out", c.DragOut)); err != nil {
		return err
	}
	if !numbers(c.Water+c.DragIn+c.out(), c.Water/c.out(), c.out()/c.DragIn, c.DragIn/c.out()) {
		return tooFar("rinse flows")
	}
	if float64(c.Water)+float64(c.DragIn) < float64(c.out())*(1-1e-12) {
		return bad("rinse water", c.Water.String(), "at least "+(c.out()-c.DragIn).String()+
			", or the work carries the first tank empty", units.ErrInconsistent)
	}
	return nil
}

// series returns 1 + r + ... + r^k. All terms are positive, so nothing cancels
// near r = 1, where (r^(k+1) - 1)/(r - 1) would.
func series(r float64, k int) float64 {
	s := 1.0
	for range k {
		s = s*r + 1
	}
	return s
}

// excess returns C₀/C_n - 1 for n stages, r = Q/D and b = D_in/D, and its slope
// along r: r + r² + ... + r^(n-1) + r^n/b.
func excess(r, b float64, n int) (f, slope float64) {
	f, slope = 1/b, 0
	for k := n; k >= 1; k-- { // Horner from the highest power; the constant term is zero
		next := 1.0
		if k == 1 {
			next = 0
		}
		f, slope = f*r+next, slope*r+f
	}
	return f, slope
}

// Ratio returns how many times weaker than the bath the last rinse is, in
// the long run and with complete mixing.
//
//	C₀/C_n = 1 + r + r² + ... + r^(n-1) + r^n·D/D_in, r = Q/D
//
//	n     Stages   1 to 20
//	Q     Water    ≥ 0 [m³/s]
//	D     DragOut  > 0 [m³/s]
//	D_in  DragIn   > 0 [m³/s]
//
// With drag-in equal to drag-out this is the series 1 + r + ... + r^n. The
// common short form r^n leaves out the lower terms: it asks for a little too
// much water, 1.6 % at 1000:1 in two tanks and 5 % in four. A form with "+ 1/n"
// behind the root has the wrong sign, see [WaterFor]. Real mixing is less than
// complete; a tenth to a half more water is common practice, no source.
//
// Errors: a [*units.ValueError] for a value out of range, or when the work
// carries out more than water and drag-in bring, so that the first tank runs dry.
//
// Source: [RinsingLessWater] for one tank; the series and the term with D_in [Derived].
func (c Counterflow) Ratio() (units.Ratio, error) {
	if err := c.check(); err != nil {
		return 0, err
	}
	f, _ := excess(float64(c.Water)/float64(c.out()), float64(c.DragIn)/float64(c.out()), c.Stages)
	if !numbers(f) {
		return 0, tooFar("rinse ratio")
	}
	return units.Ratio(1 + f), nil
}

// Tanks returns the content of every rinse in the long run, the first first.
//
//	C_i = C_n·(1 + r + ... + r^(n-i))
//
// The symbols are those of [Counterflow.Ratio].
//
// Errors: as [Counterflow.Ratio]; a [*units.ValueError] for a content that is
// not above zero.
//
// Source: [Derived].
func (c Counterflow) Tanks(bath units.MassConcentration) ([]units.MassConcentration, error) {
	ratio, err := c.Ratio()
	if err != nil {
		return nil, err
	}
	if err := units.Positive("content of the bath", bath); err != nil {
		return nil, err
	}
	last := float64(bath) / float64(ratio)
	row := make([]units.MassConcentration, c.Stages)
	for i := range row {
		row[i] = units.MassConcentration(last * series(float64(c.Water)/float64(c.out()), c.Stages-1-i))
	}
	return row, nil
}

// Working shows how [Counterflow.Ratio] and the last of [Counterflow.Tanks]
// come about, with the same errors.
func (c Counterflow) Working(bath units.MassConcentration) ([]working.Step, error) {
	row, err := c.Tanks(bath)
	if err != nil {
		return nil, err
	}
	ratio, _ := c.Ratio()
	r := working.Number("r", "water over drag-out", float64(c.Water)/float64(c.out()))
	d, in := working.Of("D", "drag-out of every rinse", c.out()), working.Of("D_in", "drag-in from the bath", c.DragIn)
	result := working.Number("R", "bath over last rinse", float64(ratio))
	return []working.Step{
		{Formula: "r = Q/D", Source: "Definition", Result: r, Terms: []working.Term{working.Of("Q", "fresh water", c.Water),
			d}},
		{Formula: "R = " + seriesText(c.Stages), Source: "Derived", Result: result, Terms: []working.Term{r, d, in}},
		{Formula: "C_n = C₀/R", Source: "Definition", Result: working.Of("C_n", "content of the last rinse",
			row[len(row)-1]), Terms: []working.Term{working.Of("C₀", "content of the bath", bath), result}},
	}, nil
}

// seriesText writes the right side of the ratio for n stages.
func seriesText(n int) string {
	parts := []string{"1"}
	for k := 1; k < n; k++ {
		parts = append(parts, power(k))
	}
	return strings.Join(append(parts, power(n)+"·D/D_in"), " + ")
}

func power(k int) string {
	if k == 1 {
		return "r"
	}
	return fmt.Sprintf("r^%d", k)
}
