package throwing

import (
	"fmt"

	"example.com/laydown/units"
)

// A HaringBlum is a throwing power after Haring and Blum with the cell that it
// was measured in. It is not a [Heatley] nor a [Field]: the same bath in the same
// cell has three different figures.
type HaringBlum struct {
	Cell  units.Ratio // distances of the cathodes, far over near, > 1
	Power units.Ratio // 0.2 is 20 %
}

// A Heatley is a throwing power after Heatley with the cell that it was measured
// in.
type Heatley struct {
	Cell  units.Ratio // distances of the cathodes, far over near, > 1
	Power units.Ratio // 0.25 is 25 %
}

// A Field is a throwing power after Field with the cell that it was measured in.
type Field struct {
	Cell  units.Ratio // distances of the cathodes, far over near, > 1
	Power units.Ratio // 0.1429 is 14.29 %
}

// NewHaringBlum returns the throwing power after Haring and Blum.
//
//	T = (K - M)/K
//
//	K  cell   distances of the cathodes, far over near, > 1
//	M  metal  masses of the deposits, near over far, > 0
//
// 0 when metal goes by distance alone, (K - 1)/K and not 1 when both cathodes get
// the same, below 0 when metal falls off faster than distance.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [ThrowingZinc1952].
func NewHaringBlum(cell, metal units.Ratio) (HaringBlum, error) {
	if err := checkPair(cell, metal); err != nil {
		return HaringBlum{}, err
	}
	t, err := finite("throwing power", (cell-metal)/cell)
	return HaringBlum{cell, t}, err
}

// NewHeatley returns the throwing power after Heatley.
//
//	T = (K - M)/(K - 1)
//
//	K  cell   distances of the cathodes, far over near, > 1
//	M  metal  masses of the deposits, near over far, > 0
//
// 0 when metal goes by distance alone, 1 when both cathodes get the same, without
// bound below. The form is from memory; no print of it was read.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Practice] (from memory).
func NewHeatley(cell, metal units.Ratio) (Heatley, error) {
	if err := checkPair(cell, metal); err != nil {
		return Heatley{}, err
	}
	t, err := finite("throwing power", (cell-metal)/(cell-1))
	return Heatley{cell, t}, err
}

// NewField returns the throwing power after Field.
//
//	T = (K - M)/(K + M - 2)
//
//	K  cell   distances of the cathodes, far over near, > 1
//	M  metal  masses of the deposits, near over far, > 0, K + M > 2
//
// 0 when metal goes by distance alone, 1 when both cathodes get the same, -1 when
// the far one gets nothing. Above 1, when the far one gets more: rare, but it has
// been measured.
//
// Errors: a [*units.ValueError] for an argument out of range, and for K + M not
// above 2, where the figure means nothing.
//
// Source: [ThrowingField].
func NewField(cell, metal units.Ratio) (Field, error) {
	if err := checkPair(cell, metal); err != nil {
		return Field{}, err
	}
	if !(cell+metal > 2) {
		return Field{}, &units.ValueError{Field: "metal ratio", Value: metal.String(),
			Need: "more than 2 less the distance ratio, " + (2 - cell).String() + ", for a figure after Field",
			Err:  units.ErrOutOfRange}
	}
	t, err := finite("throwing power", (cell-metal)/(cell+metal-2))
	return Field{cell, t}, err
}

// Metal returns the metal ratio, near over far, that a figure stands for.
//
//	M = K (1 - T)
//
//	K  h.Cell   > 1
//	T  h.Power  < 1
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [ThrowingZinc1952], solved for M.
func (h HaringBlum) Metal() (units.Ratio, error) {
	if err := checkFigure("Haring-Blum", h.Cell, h.Power); err != nil {
		return 0, err
	}
	if !(h.Power < 1) {
		return 0, powerError("Haring-Blum", h.Power, "less than 100 %; equal deposits are "+((h.Cell-1)/h.Cell).Percent(-1))
	}
	return positive("metal ratio", h.Cell*(1-h.Power))
}

// Metal returns the metal ratio, near over far, that a figure stands for.
//
//	M = K - T (K - 1)
//
//	K  h.Cell   > 1
//	T  h.Power  < K/(K - 1)
//
// Errors: a [*units.ValueError] for a field out of range.
//
// Source: [Practice] (from memory), solved for M.
func (h Heatley) Metal() (units.Ratio, error) {
	if err := checkFigure("Heatley", h.Cell, h.Power); err != nil {
		return 0, err
	}
	m := h.Cell - units.Ratio(float64(h.Power)*float64(h.Cell-1))
	if !(m > 0) {
		return 0, powerError("Heatley", h.Power, "less than "+(h.Cell/(h.Cell-1)).Percent(-1)+"; equal deposits are 100 %")
	}
	return positive("metal ratio", m)
}

// Metal returns the metal ratio, near over far, that a figure stands for.
//
//	M = (K - T (K - 2))/(1 + T)
//
//	K  f.Cell   > 1
//	T  f.Power  > -1
//
// Errors: a [*units.ValueError] for a field out of range, as -100 %, at which the
// far cathode has nothing.
//
// Source: [ThrowingField], solved for M.
func (f Field) Metal() (units.Ratio, error) {
	if err := checkFigure("Field", f.Cell, f.Power); err != nil {
		return 0, err
	}
	m := (f.Cell - units.Ratio(float64(f.Power)*float64(f.Cell-2))) / (1 + f.Power)
	if !(f.Power > -1) || !(m > 0) {
		return 0, powerError("Field", f.Power,
			"more than -100 % and not so much that no metal is left near; equal deposits are 100 %")
	}
	return positive("metal ratio", m)
}

// String says figure, kind and cell; a figure alone says nothing.
func (h HaringBlum) String() string { return figure("Haring-Blum", h.Cell, h.Power) }

// String says figure, kind and cell.
func (h Heatley) String() string { return figure("Heatley", h.Cell, h.Power) }

// String says figure, kind and cell.
func (f Field) String() string { return figure("Field", f.Cell, f.Power) }

func figure(kind string, cell, power units.Ratio) string {
	return fmt.Sprintf("%s (%s, distances %.4g:1)", power.Percent(1), kind, float64(cell))
}

func powerError(kind string, power units.Ratio, need string) error {
	e := &units.ValueError{Field: "throwing power after " + kind, Value: power.Percent(-1), Need: need,
		Err: units.ErrOutOfRange}
	return e
}

// checkPair checks a distance ratio and a metal ratio.
func checkPair(cell, metal units.Ratio) error {
	if err := checkCell(cell); err != nil {
		return err
	}
	return units.Positive("metal ratio", metal)
}

func checkFigure(kind string, cell, power units.Ratio) error {
	if err := checkCell(cell); err != nil {
		return err
	}
	return units.Finite("throwing power after "+kind, power)
}

func checkCell(cell units.Ratio) error {
	if err := units.Positive("distance ratio", cell); err != nil {
		return err
	}
	if !(cell > 1) {
		return &units.ValueError{Field: "distance ratio", Value: cell.String(), Need: "far over near, above 1, such as 5",
			Err: units.ErrOutOfRange}
	}
	return nil
}

// finite lets a result through when a float64 can hold it.
func finite[Q units.Quantity](field string, v Q) (Q, error) {
	if err := units.Finite(field, v); err != nil {
		return 0, err
	}
	return v, nil
}

// positive lets a result through when it is finite and above zero.
func positive[Q units.Quantity](field string, v Q) (Q, error) {
	if err := units.Positive(field, v); err != nil {
		return 0, err
	}
	return v, nil
}
