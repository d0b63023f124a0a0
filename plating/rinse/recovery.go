package rinse

import (
	"math"

	"example.com/laydown/units"
	"example.com/laydown/units/working"
)

// A Recovery is one or more drag-out tanks behind a bath whose liquid goes
// back into the bath, steadily, as the bath makes room for it.
type Recovery struct {
	Bath    units.MassConcentration // metal in the bath, held there by feeding, > 0
	DragOut Flow                    // carried out of the bath and out of every tank, > 0
	// brought into the bath by work that comes wet from a rinse, ≥ 0; zero means that it comes dry
	DragIn      Flow
	Evaporation Flow // from the bath, ≥ 0
	Tanks       int  // drag-out tanks, run in counterflow; 0 is none
	Return      Flow // sent back to the bath; zero means as much as fits
}

// A Recovered is what becomes of the metal over a time.
type Recovered struct {
	Return  Flow                    // sent back to the bath, and fresh water into the last tank
	Room    Flow                    // that the bath makes: evaporation and drag-out, less drag-in
	Last    units.MassConcentration // content of the last drag-out tank; of the bath when there is none
	Dragged units.Mass              // carried out of the bath: lost without drag-out tanks
	Lost    units.Mass              // carried past the last drag-out tank
	Back    units.Mass              // returned to the bath
	Share   units.Ratio             // Back over Dragged
}

// Over returns where the metal goes in a time, in the long run.
//
//	m₀ = D·C₀·t, m = m₀/(1 + r + ... + r^n), r = B/D, B ≤ E + D - D_in
//
//	C₀  Bath         > 0 [kg/m³]
//	D   DragOut      > 0 [m³/s]
//	D_in  DragIn     ≥ 0 [m³/s]
//	E   Evaporation  ≥ 0 [m³/s]
//	B   Return       what goes back [m³/s]
//	n   Tanks        0 to 20
//	t   t            > 0 [s]
//
// The bath is the limit: it takes back only what evaporation and drag-out have
// taken from it, less what the work brings in. Work from a rinse brings about as
// much as it takes: then there is room for what evaporates and no more, and a
// cold bath takes nothing back. Work that comes dry, or out of the drag-out tank
// itself, leaves room for its drag-out: r = 1 without evaporation, and n tanks
// then keep n/(n+1) of the metal. What builds up
// in the bath with the metal, breakdown products and drag-in of the tank
// before, comes back too: watch it.
//
// Errors: a [*units.ValueError] for a value out of range, or a Return that the
// bath has no room for.
//
// Source: [Derived].
func (r Recovery) Over(t units.Duration) (Recovered, error) {
	if err := first(units.Positive("metal in the bath", r.Bath), units.Positive("drag-out", r.DragOut),
		units.NonNegative("evaporation", r.Evaporation), units.NonNegative("drag-in", r.DragIn),
		whole("drag-out tanks", r.Tanks, 0, mostStages), units.NonNegative("return to the bath", r.Return),
		units.Positive("time", t)); err != nil {
		return Recovered{}, err
	}
	if r.Tanks == 0 && r.Return != 0 {
		return Recovered{}, bad("return to the bath", r.Return.String(), "a drag-out tank to return from, or none",
			units.ErrInconsistent)
	}
	room := max(0, r.Evaporation+r.DragOut-r.DragIn)
	if r.Return > room*(1+1e-12) {
		return Recovered{}, bad("return to the bath", r.Return.String(), "at most "+room.String()+
			", which evaporation and drag-out less drag-in make room for", units.ErrInconsistent)
	}
	out := Recovered{Room: room, Last: r.Bath, Dragged: r.Bath.Of(r.DragOut.Over(t))}
	kept := 0.0
	if r.Tanks > 0 {
		if out.Return = r.Return; out.Return == 0 {
			out.Return = room
		}
		e, _ := excess(float64(out.Return)/float64(r.DragOut), 1, r.Tanks)
		kept = e / (1 + e)
		if math.IsInf(e, 1) {
			kept = 1
		}
		out.Last = units.MassConcentration(float64(r.Bath) / (1 + e))
	}
	out.Share = units.Ratio(kept)
	out.Back = units.Mass(kept * float64(out.Dragged))
	out.Lost = out.Last.Of(r.DragOut.Over(t))
	if !numbers(float64(out.Dragged), float64(out.Back), float64(out.Lost), float64(room)) {
		return Recovered{}, tooFar("recovery")
	}
	return out, nil
}

// Working shows how [Recovery.Over] computes, with the same errors.
func (r Recovery) Working(t units.Duration) ([]working.Step, error) {
	o, err := r.Over(t)
	if err != nil {
		return nil, err
	}
	d := working.Of("D", "drag-out", r.DragOut)
	m0 := working.Of("m₀", "carried out of the bath", o.Dragged)
	steps := []working.Step{{Formula: "m₀ = C₀·D·t", Source: "Definition", Result: m0,
		Terms: []working.Term{working.Of("C₀", "metal in the bath", r.Bath), d, working.Of("t", "time", t)}}}
	if r.Tanks == 0 {
		return steps, nil
	}
	ratio := working.Number("r", "return over drag-out", float64(o.Return)/float64(r.DragOut))
	formula := "m = m₀/(1"
	for k := 1; k <= r.Tanks; k++ {
		formula += " + " + power(k)
	}
	return append(steps,
		r.roomStep(o, d),
		working.Step{Formula: "r = B/D", Source: "Definition", Result: ratio, Terms: []working.Term{working.Of("B",
			"returned to the bath", o.Return), d}},
		working.Step{Formula: formula + ")", Source: "Derived", Result: working.Of("m", "lost past the drag-out tanks",
			o.Lost), Terms: []working.Term{m0, ratio}}), nil
}

// roomStep shows how the room comes about.
func (r Recovery) roomStep(o Recovered, d working.Term) working.Step {
	e := working.Of("E", "evaporation", r.Evaporation)
	room := working.Of("B_most", "room in the bath", o.Room)
	if r.DragIn == 0 {
		return working.Step{Formula: "B_most = E + D", Source: "Derived", Result: room, Terms: []working.Term{e, d}}
	}
	return working.Step{Formula: "B_most = max(0, E + D - D_in)", Source: "Derived", Result: room,
		Terms: []working.Term{e, d, working.Of("D_in", "drag-in", r.DragIn)}}
}

// A Batch is one still drag-out tank that is poured back by hand every so many
// loads, as far as the bath has room, and filled up with fresh water.
type Batch struct {
	Bath    units.MassConcentration // metal in the bath, > 0
	Volume  units.Volume            // of the drag-out tank, > 0
	DragOut units.Volume            // carried by a load, > 0
	// brought into the bath by a load that comes wet from a rinse, ≥ 0; zero means that it comes dry
	DragIn      units.Volume
	Evaporation units.Volume // from the bath in the time of a load, ≥ 0
	Loads       int          // between two returns, 1 to 1e6
}

// A BatchCycle is one round of a [Batch], once every round is like the last.
type BatchCycle struct {
	Poured  units.Volume            // from the tank back into the bath
	Full    units.MassConcentration // of the tank before pouring
	Start   units.MassConcentration // of the tank after filling up
	Dragged units.Mass              // carried out of the bath in the round
	Lost    units.Mass              // carried past the drag-out tank in the round
	Back    units.Mass              // poured back
	Share   units.Ratio             // Back over Dragged
}

// Cycle returns one round of the tank in the long run.
//
//	C = C₀·(1 - p^N)/(1 - (1 - β)·p^N), p = V/(V + d), β = B/V, B = min(V, N·(E + d - d_in))
//
//	C₀  Bath         > 0 [kg/m³]
//	V   Volume       > 0 [m³]
//	d   DragOut      > 0 [m³]
//	d_in  DragIn     ≥ 0 [m³]
//	E   Evaporation  ≥ 0 [m³]
//	N   Loads
//	C   Full [kg/m³]
//
// Lost is N·d·C₀ less the B·C that goes back. It is best to wait until the bath
// has just room for the whole tank, N·(E + d - d_in) = V: pouring sooner mixes fresh
// water into what is poured next, waiting longer lets the tank fill without
// more of it going back. Such a round beats the steady return of [Recovery].
//
// Errors: a [*units.ValueError] for a value out of range.
//
// Source: [Derived].
func (b Batch) Cycle() (BatchCycle, error) {
	tank := RinseTank{Bath: b.Bath, Volume: b.Volume, DragOut: b.DragOut}
	if err := first(tank.check(), units.NonNegative("evaporation", b.Evaporation), units.NonNegative("drag-in", b.DragIn),
		whole("loads between returns", b.Loads, 1, 1_000_000)); err != nil {
		return BatchCycle{}, err
	}
	n := float64(b.Loads)
	poured := math.Min(float64(b.Volume), n*max(0, float64(b.Evaporation)+float64(b.DragOut)-float64(b.DragIn)))
	grown := -math.Expm1(-n * tank.decay())  // 1 - p^N
	beta := poured / float64(b.Volume)       // share poured back
	full := grown / (grown + beta*(1-grown)) // C/C₀; the same as above, without cancelling
	start := (1 - beta) * full               // content after filling up, over C₀
	tank.Start = units.MassConcentration(math.Min(start, 1) * float64(b.Bath))
	c := BatchCycle{Poured: units.Volume(poured), Full: units.MassConcentration(full * float64(b.Bath)),
		Start: tank.Start, Dragged: units.Mass(n * float64(b.DragOut) * float64(b.Bath)),
		Lost: units.Mass(float64(b.DragOut) * tank.contents(b.Loads))}
	c.Back = c.Full.Of(c.Poured)
	c.Share = units.Ratio(float64(c.Back) / float64(c.Dragged))
	if !numbers(float64(c.Dragged), float64(c.Lost), float64(c.Back), float64(c.Share)) {
		return BatchCycle{}, tooFar("recovery")
	}
	return c, nil
}

// Working shows how the content before pouring of [Batch.Cycle] comes about,
// with the same errors.
func (b Batch) Working() ([]working.Step, error) {
	c, err := b.Cycle()
	if err != nil {
		return nil, err
	}
	v, d, n := working.Of("V", "volume of the drag-out tank", b.Volume), working.Of("d", "carried by a load", b.DragOut),
		working.Number("N", "loads between returns", float64(b.Loads))
	poured, full := working.Of("B", "poured back", c.Poured), working.Of("C", "content before pouring", c.Full)
	return []working.Step{
		b.pouredStep(poured, v, n, d),
		{Formula: "C = C₀·(1 - (V/(V + d))^N)/(1 - (1 - B/V)·(V/(V + d))^N)", Source: "Derived", Result: full,
			Terms: []working.Term{working.Of("C₀", "metal in the bath", b.Bath), v, d, n, poured}},
		{Formula: "m = B·C", Source: "Definition", Result: working.Of("m", "returned to the bath", c.Back),
			Terms: []working.Term{poured, full}},
	}, nil
}

// pouredStep shows how the poured volume comes about.
func (b Batch) pouredStep(poured, v, n, d working.Term) working.Step {
	e := working.Of("E", "evaporation in the time of a load", b.Evaporation)
	if b.DragIn == 0 {
		return working.Step{Formula: "B = min(V, N·(E + d))", Source: "Derived", Result: poured, Terms: []working.Term{v, n,
			d, e}}
	}
	return working.Step{Formula: "B = min(V, N·max(0, E + d - d_in))", Source: "Derived", Result: poured,
		Terms: []working.Term{v, n, d, e, working.Of("d_in", "brought in by a load", b.DragIn)}}
}
