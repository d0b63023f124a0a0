package coat

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// Schedule adds solutions of the same part in several positions, each for a
// share of the time, for a bath whose efficiency depends on the current density.
// It returns a surface and a bath of one efficiency that together grow the coat
// that the positions grow one after the other in b.
//
//	η̄ = Σ x·η(j_k)·j_k·A / Σ x·j_k·A
//	j = Σ x·η(j_k)·j_k / η̄
//
//	j_k  Density of each position, 0 where metal dissolves   [A/m²]
//	x    share of the time in it, Σ x = 1 within 1e-6        [1]
//	A    Area of each patch                                  [m²]
//	η    efficiency of b at a density                        0 < η ≤ 1
//
// [Lay] on the two is the sum of Lay on each position for its share of the time,
// patch by patch. Where the efficiency is one number the surface is that of
// [Sum]. The share of each position counts in the time, not in the charge.
//
// Errors: those of [Sum] and of the bath; a [*units.ValueError] when no metal
// arrives in any position.
//
// Source: [Derived].
func Schedule(positions []Surface, shares []units.Ratio, b *plating.OperatingBath) (Surface, plating.OperatingBath, error) {
	out, err := Sum(positions, shares)
	if err != nil {
		return Surface{}, plating.OperatingBath{}, err
	}
	if err := b.Check(); err != nil {
		return Surface{}, plating.OperatingBath{}, err
	}
	grown := make([]float64, len(out.Patches))
	metal, current := 0.0, 0.0
	for k, pos := range positions {
		for i, p := range pos.Patches {
			if p.Density <= 0 {
				continue
			}
			eff, _ := b.Efficiency.At(p.Density)
			part := float64(shares[k]) * float64(p.Density)
			grown[i] += part * float64(eff)
			metal += part * float64(eff) * float64(p.Area)
			current += part * float64(p.Area)
		}
	}
	if current == 0 {
		return Surface{}, plating.OperatingBath{}, &units.ValueError{Field: "positions", Value: fmt.Sprintf("%d without current",
			len(positions)),
			Need: "current towards the part in one of them", Err: units.ErrNotPositive}
	}
	one := *b
	mean := metal / current
	one.Efficiency = plating.ConstantEfficiency(units.Efficiency(mean))
	for i := range out.Patches {
		out.Patches[i].Density = units.CurrentDensity(grown[i] / mean)
	}
	return out, one, nil
}
