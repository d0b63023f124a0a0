package electrical

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// MeanArea returns the area that the current between two unequal electrodes
// has to itself: their logarithmic mean.
//
//	Am = (A₁ - A₂)/ln(A₁/A₂)
//
//	A₁, A₂  first, second  areas of the electrodes that face each other, > 0 [m²]
//
// Equal areas give that area. It is exact where the section grows evenly with
// the distance: between a rod and a cylinder around it, or in a wedge. The
// result lies between the geometric mean (exact from ball to shell) and the
// arithmetic one.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [Derived]: dR = dx/(κ·A(x)) with A(x) straight from A₁ to A₂.
func MeanArea(first, second units.Area) (units.Area, error) {
	if err := units.Positive("area of the first electrode", first); err != nil {
		return 0, err
	}
	if err := units.Positive("area of the second electrode", second); err != nil {
		return 0, err
	}
	return units.Area(logMean(float64(first), float64(second))), nil
}

func logMean(a, b float64) float64 {
	if a < b {
		a, b = b, a
	}
	x := (a - b) / b
	if x == 0 {
		return a
	}
	if math.IsInf(x, 0) { // the areas are far from each other
		return a / (math.Log(a) - math.Log(b))
	}
	return b * (x / math.Log1p(x)) // keeps its digits for areas that are nearly equal
}

// Resistance returns the resistance of the solution between two electrodes.
//
//	R = L/(κ·Am)
//
//	L   gap           from anode to cathode, > 0 [m]
//	κ   conductivity  of the solution at its temperature, > 0 [S/m]
//	Am  [MeanArea]    of the facing areas anode and cathode [m²]
//
// For plates that stand opposite each other and fill the tank's section. Where
// they do not, current also takes the way round and the resistance is lower,
// for a small part far from its anodes by a factor of two and more; shields,
// bags and gas raise it.
//
// Errors: a [*units.ValueError] for an argument out of range.
//
// Source: [NaOHColumn] (R = L/(κ·A)), [Derived] (the mean area).
func Resistance(conductivity units.Conductivity, gap units.Length, anode, cathode units.Area) (units.Resistance,
	error) {
	if err := units.Positive("conductivity", conductivity); err != nil {
		return 0, err
	}
	if err := units.Positive("gap between the electrodes", gap); err != nil {
		return 0, err
	}
	if err := units.Positive("facing area of the anodes", anode); err != nil {
		return 0, err
	}
	if err := units.Positive("facing area of the cathode", cathode); err != nil {
		return 0, err
	}
	return finite("resistance of the solution",
		units.Resistance(float64(gap)/(float64(conductivity)*logMean(float64(anode), float64(cathode)))))
}

// ResistanceWorking shows the calculation of [Resistance].
//
// Errors: as there.
//
// Source: [NaOHColumn], [Derived].
func ResistanceWorking(conductivity units.Conductivity, gap units.Length, anode, cathode units.Area) ([]working.Step,
	error) {
	r, err := Resistance(conductivity, gap, anode, cathode)
	if err != nil {
		return nil, err
	}
	mean := working.Of("Am", "mean area of the current's way", units.Area(logMean(float64(anode), float64(cathode))))
	var steps []working.Step
	// The formula loses its digits next to equal areas, where the mean is either.
	if math.Abs(float64(anode-cathode)) > 1e-2*float64(cathode) {
		steps = append(steps, working.Step{Formula: "Am = (A₁ - A₂)/ln(A₁/A₂)",
			Terms: []working.Term{working.Of("A₁", "facing area of the anodes", anode), working.Of("A₂",
				"facing area of the cathode", cathode)},
			Result: mean, Source: "Derived"})
	}
	return append(steps, working.Step{Formula: "R = L/(κ·Am)",
		Terms: []working.Term{working.Of("L", "gap between the electrodes", gap), working.Of("κ", "conductivity",
			conductivity), mean},
		Result: working.Of("R", "resistance of the solution", r), Source: "NaOHColumn"}), nil
}
