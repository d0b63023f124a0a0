package sequence

import (
	"fmt"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// PlanAround proposes the tanks around coats that are decided already: it
// cleans and activates as published practice for the base metal goes
// ([PracticeFor]), lays the coats in the order given with a drag-out tank behind
// each precious one and rinses between, rinses, dries and bakes. It adds no
// strike or barrier: where one is missing, [Check] says so in the findings.
//
// A silver strike is followed by its silver bath without water between, as in
// [Plan], when both are of one chemistry; everything else is rinsed twice.
//
// Errors: as [Plan]; a [*units.ValueError] for no coats, or a tank among them
// that does not plate. With a [*StopError] the tanks and all findings come
// along, to be looked at and mended.
func PlanAround(p Piece, coats []Tank) ([]Tank, []Finding, error) {
	if err := p.Check(); err != nil {
		return nil, nil, err
	}
	if len(coats) == 0 {
		return nil, nil, &units.ValueError{Field: "coats", Value: "none",
			Need: "one plating tank or more, the first one first", Err: units.ErrNotPositive}
	}
	final, err := bath.Get(p.Finish.BathKey())
	if err != nil {
		return nil, nil, err
	}
	// refuse weighs the order against what the last bath can build.
	if most := coats[len(coats)-1].Bath.MaxThickness; most.Given() { // the shop's own bath wins
		final.MaxThickness = most
	}
	if err := p.refuse(&final); err != nil {
		return nil, nil, err
	}
	pl := planner{piece: p, around: true}
	pl.prepare()
	for i, t := range coats {
		if !t.Kind.deposits() {
			return nil, nil, &units.ValueError{Field: fmt.Sprintf("coat %d", i+1), Value: t.title() +
				" (" + t.Kind.String() + ")", Need: "a strike, underplate or plate", Err: units.ErrInconsistent}
		}
		pl.add(t)
		if t.Kind == Strike && t.Bath.Metal == "Ag" && i+1 < len(coats) && coats[i+1].Bath.Metal == "Ag" && coats[i+
			1].hazards() == t.hazards() {
			continue
		}
		if plating.Precious(t.Bath.Metal) {
			pl.add(dragOut())
		}
		pl.add(rinse())
	}
	pl.end()
	pl.separate()
	found := Check(pl.tanks, p)
	return pl.tanks, found, Approve(found)
}
