package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A RinseTank is one rinse that is counted by loads. Each load brings a volume of
// solution in, mixes with the tank while it hangs there, and takes the same
// volume of rinse water out. With Water zero it is a still rinse or a drag-out
// tank; with Water, that much fresh water comes in with each load and as much
// runs over.
type RinseTank struct {
	Bath    units.MassConcentration // content of what is followed in the bath before, > 0
	Start   units.MassConcentration // content of the tank before the first load, 0 ≤ Start ≤ Bath
	Volume  units.Volume            // > 0
	DragOut units.Volume            // carried in and out by each load, > 0
	Water   units.Volume            // fresh water with each load, ≥ 0
}

const mostLoads = 1_000_000_000

func (t RinseTank) check() error {
	if err := first(units.Positive("content of the bath", t.Bath), units.NonNegative("content of the tank at the start",
		t.Start),
		units.Positive("volume of the tank", t.Volume), units.Positive("drag-out of a load", t.DragOut),
		units.NonNegative("water with each load", t.Water)); err != nil {
		return err
	}
	if t.Start > t.Bath {
		return bad("content of the tank at the start", t.Start.String(), "no more than the bath's "+t.Bath.String(),
			units.ErrInconsistent)
	}
	if !numbers(float64(t.DragOut)+float64(t.Water)+float64(t.Volume), float64(t.Bath)*float64(t.Volume)) ||
		float64(t.DragOut)+float64(t.Water) > 1e9*float64(t.Volume) || float64(t.DragOut) < 1e-15*float64(t.Volume) {
		return tooFar("rinse tank")
	}
	return nil
}

// limit returns the content that the tank tends to.
func (t RinseTank) limit() float64 {
	return float64(t.Bath) * (float64(t.DragOut) / (float64(t.DragOut) + float64(t.Water)))
}

// decay returns ln((V+d+w)/V), so that exp(-N·decay) is what N loads leave of
// the distance to the limit.
func (t RinseTank) decay() float64 {
	return math.Log1p((float64(t.DragOut) + float64(t.Water)) / float64(t.Volume))
}

// After returns the content of the tank after a number of loads, which is also
// that of the film on the last of them.
//
//	C_N = C_L + (C_s - C_L)·(V/(V + d + w))^N, C_L = C₀·d/(d + w)
//
//	C₀   Bath     > 0 [kg/m³]
//	C_s  Start    0 ≤ C_s ≤ C₀ [kg/m³]
//	V    Volume   > 0 [m³]
//	d    DragOut  > 0 [m³]
//	w    Water    ≥ 0 [m³]
//	N    loads    0 to 1e9
//
// For a still rinse that starts clean this is C₀·[1 - (V/(V + d))^N]. Mixing
// is taken to be complete while the load hangs; without moving the work, the
// film keeps more.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func (t RinseTank) After(loads int) (units.MassConcentration, error) {
	if err := first(t.check(), whole("loads", loads, 0, mostLoads)); err != nil {
		return 0, err
	}
	return units.MassConcentration(t.after(loads)), nil
}

func (t RinseTank) after(loads int) float64 {
	grown := -math.Expm1(-float64(loads) * t.decay()) // share of the way to the limit
	if loads == 0 {
		return float64(t.Start)
	}
	return float64(t.Start)*(1-grown) + t.limit()*grown
}

// AfterWorking shows how [RinseTank.After] computes, with the same errors.
func (t RinseTank) AfterWorking(loads int) ([]working.Step, error) {
	c, err := t.After(loads)
	if err != nil {
		return nil, err
	}
	d, w := working.Of("d", "carried by a load", t.DragOut), working.Of("w", "fresh water with each load", t.Water)
	limit := working.Of("C_L", "content it tends to", units.MassConcentration(t.limit()))
	return []working.Step{
		{Formula: "C_L = C₀·d/(d + w)", Source: "Derived", Result: limit, Terms: []working.Term{working.Of("C₀",
			"content of the bath", t.Bath), d, w}},
		{Formula: "C_N = C_s·(V/(V + d + w))^N + C_L·(1 - (V/(V + d + w))^N)", Source: "Derived",
			Terms: []working.Term{limit, working.Of("C_s", "content at the start", t.Start), working.Of("V",
				"volume of the tank", t.Volume), d, w,
				working.Number("N", "loads", float64(loads))},
			Result: working.Of("C_N", "content after the loads", c)},
	}, nil
}

// LoadsTo returns the first load after which the tank holds at least a content:
// how long a recovery tank takes to fill, or how many loads a still rinse may see.
//
//	N = ln((C_L - C_s)/(C_L - C))/ln((V + d + w)/V), rounded up
//
//	C  content  > 0 and below what the tank tends to [kg/m³]
//
// The other symbols are those of [RinseTank.After].
//
// Errors: a [*units.ValueError] for a value out of range, for a content that
// the tank never reaches, and for one that takes more than 1e9 loads.
//
// Source: [Derived].
func (t RinseTank) LoadsTo(content units.MassConcentration) (int, error) {
	if err := first(t.check(), units.Positive("content to reach", content)); err != nil {
		return 0, err
	}
	if content <= t.Start {
		return 0, nil
	}
	limit := t.limit()
	if float64(content) >= limit {
		return 0, bad("content to reach", content.String(), "less than the "+units.MassConcentration(limit).String()+
			" that the tank tends to", units.ErrOutOfRange)
	}
	n := math.Ceil(-math.Log1p(-(float64(content)-float64(t.Start))/(limit-float64(t.Start))) / t.decay())
	if !(n <= mostLoads) {
		return 0, bad("loads to reach "+content.String(), shown(n), "a content that fewer than 1e9 loads reach",
			units.ErrOutOfRange)
	}
	// Rounding may put n one off where the content is met exactly.
	loads := int(n)
	for loads > 0 && t.after(loads-1) >= float64(content) {
		loads--
	}
	for t.after(loads) < float64(content) && loads < mostLoads {
		if loads++; loads > int(n)+2 {
			break
		}
	}
	return loads, nil
}

// TimeTo returns how long the tank takes to reach a content when a load comes
// every so often.
//
//	t = N·T
//
//	N  as of LoadsTo
//	T  every  time from load to load, > 0 [s]
//
// Errors: as [RinseTank.LoadsTo].
//
// Source: [Derived].
func (t RinseTank) TimeTo(content units.MassConcentration, every units.Duration) (units.Duration, error) {
	if err := units.Positive("time from load to load", every); err != nil {
		return 0, err
	}
	n, err := t.LoadsTo(content)
	if err != nil {
		return 0, err
	}
	d := units.Duration(float64(n) * float64(every))
	return finite("time to reach the content", d)
}

// A MetalBalance says where the metal went that loads carried out of the bath.
type MetalBalance struct {
	In       units.Mass // carried into the tank
	Kept     units.Mass // in the tank at the end, less what was there at the start
	OnWork   units.Mass // carried on to the next tank
	Overflow units.Mass // run over with the water
}

// Balance adds up the metal of a number of loads.
//
//	In = N·d·C₀, Kept = V·(C_N - C_s), OnWork = d·ΣC_i, Overflow = w·ΣC_i
//
// The symbols are those of [RinseTank.After]; the sum runs over the content after
// each load. In is Kept, OnWork and Overflow together.
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func (t RinseTank) Balance(loads int) (MetalBalance, error) {
	if err := first(t.check(), whole("loads", loads, 0, mostLoads)); err != nil {
		return MetalBalance{}, err
	}
	sum := t.contents(loads)
	b := MetalBalance{
		In:       units.Mass(float64(loads) * float64(t.DragOut) * float64(t.Bath)),
		Kept:     units.Mass(float64(t.Volume) * (t.after(loads) - float64(t.Start))),
		OnWork:   units.Mass(float64(t.DragOut) * sum),
		Overflow: units.Mass(float64(t.Water) * sum),
	}
	if !numbers(b.In, b.Kept, b.OnWork, b.Overflow) {
		return MetalBalance{}, tooFar("balance")
	}
	return b, nil
}

// contents sums the content after each of the first loads: one by one while
// the closed form would lose digits, by the closed form for many.
func (t RinseTank) contents(loads int) float64 {
	if loads <= 100_000 {
		sum, c := 0.0, float64(t.Start)
		v, d, w := float64(t.Volume), float64(t.DragOut), float64(t.Water)
		for range loads {
			c = (v*c + d*float64(t.Bath)) / (v + d + w)
			sum += c
		}
		return sum
	}
	limit, gone := t.limit(), -math.Expm1(-float64(loads)*t.decay())
	powers := float64(t.Volume) / (float64(t.DragOut) + float64(t.Water)) * gone
	return float64(loads)*limit - (limit-float64(t.Start))*powers
}

// Row returns the contents of still rinses one behind the other after a number
// of loads, the first tank first: each load goes through all of them. Start
// and Water of the tank are not used, all start clean; volumes gives the size
// of each.
//
//	C_k ← (V_k·C_k + d·C_k₋₁)/(V_k + d), load by load and tank by tank
//
// Errors: a [*units.ValueError] for a value out of range, no volumes, more than
// 20, or more than 1e7 loads.
//
// Source: [Derived].
func (t RinseTank) Row(volumes []units.Volume, loads int) ([]units.MassConcentration, error) {
	if err := first(whole("still rinses", len(volumes), 1, mostStages),
		whole("loads", loads, 0, 10_000_000)); err != nil {
		return nil, err
	}
	for _, v := range volumes {
		one := RinseTank{Bath: t.Bath, Volume: v, DragOut: t.DragOut}
		if err := one.check(); err != nil {
			return nil, err
		}
	}
	d := float64(t.DragOut)
	row := make([]units.MassConcentration, len(volumes))
	for range loads {
		film := float64(t.Bath)
		for k, v := range volumes {
			film = (float64(v)*float64(row[k]) + d*film) / (float64(v) + d)
			row[k] = units.MassConcentration(film)
		}
	}
	return row, nil
}
