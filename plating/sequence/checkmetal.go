package sequence

import (
	"slices"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// leaded finds brass whose lead keeps the coat from holding. Sulfuric acid
// leaves lead sulfate on the face; fluoborate takes the lead off.
//
// Plain brass is a question, for brass for machining goes by that name too [Guidebook2011].
// Any tank with fluoride or fluoborate before the first coat answers it.
func (r *review) leaded() {
	s := r.piece.Substrate
	if s != Brass && s != LeadedBrass || len(r.coats) == 0 {
		return
	}
	for i := range r.coats[0].tank {
		if r.tanks[i].hazards()&(plating.HazardFluoride|plating.HazardFluoborate) != 0 {
			return
		}
	}
	const peels = "machining smears lead over the face, sulfuric acid turns it into insoluble lead sulfate, and the " +
		"coat peels"
	if s == LeadedBrass {
		r.add(CodeLeadedBrass, plating.SeverityWarning, "LeadedBrassColumn",
			"leaded brass without a fluoborate or fluoride dip", peels,
			"dip it in 10 to 30 % fluoboric acid for two minutes at most before the first coat, in plastic, not glass",
			r.coats[0].tank)
		return
	}
	r.add(CodeLeadedBrass, plating.SeverityCaution, "Guidebook2011", "nothing says whether the brass holds lead",
		"brass for machining may hold up to 4 % of it; "+peels,
		"ask what brass it is; if it may hold lead, say leaded brass")
}

// cyanideInLine says in the first lines that a finish free of cyanide is laid in
// a line that holds some.
//
// Who orders sulfite gold often does so because the shop may hold no cyanide. The copper or
// gold strike below it would then be the surprise.
func (r *review) cyanideInLine() {
	if r.piece.Finish != SulfiteGold {
		return
	}
	var names []string
	for i := range r.tanks {
		if t := &r.tanks[i]; t.hazards().Has(plating.HazardCyanide) && !slices.Contains(names, t.title()) {
			names = append(names, t.title())
		}
	}
	if names == nil {
		return
	}
	r.add(CodeCyanideInLine, plating.SeverityCaution, recall, "the finish is free of cyanide, the line is not: "+
		strings.Join(names, "; "), "on this base metal the coat below it is plated from cyanide",
		"do not run this line where no cyanide is allowed; take nickel and palladium below the gold where skin does "+
			"not meet them, or another base metal")
}

// treated judges the heat treatment of titanium, which bonds the nickel.
//
// The practice bonds nickel to titanium at 540 to 800 °C for 1 to 4 h in inert gas
// [ASTMB481]; hot titanium takes up oxygen from air.
func (r *review) treated() {
	if r.piece.Substrate != Titanium {
		return
	}
	for i := range r.tanks {
		t := &r.tanks[i]
		if t.Kind != Bake {
			continue
		}
		low, high := t.Process.Temperature.Low, max(t.Process.Temperature.Low, t.Process.Temperature.High)
		if low < units.Celsius(540)-0.5 || high > units.Celsius(800)+0.5 || t.immersion() < units.Hour ||
			t.immersion() > 4*units.Hour*(1+1e-9) || !inert(t.Process.Chemistry) {
			r.add(CodeTitaniumHeat, plating.SeverityWarning, "ASTMB481", t.title()+" of titanium",
				"the practice bonds the nickel at 540 to 800 °C for 1 to 4 h in inert gas; below that it does not "+
					"bond, in air the metal takes up oxygen",
				"heat it in argon at 540 to 800 °C for 1 to 4 h and say what gas the oven holds", i)
		}
	}
}

// inert reports whether a text names an inert gas, or a vacuum.
func inert(text string) bool {
	text = strings.ToLower(text)
	return strings.Contains(text, "argon") || strings.Contains(text, "helium") || strings.Contains(text, "inert") ||
		strings.Contains(text, "vacuum")
}
