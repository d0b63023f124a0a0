package sequence

import (
	"fmt"
	"strings"
	"unicode"

	"example.com/laydown/plating"
)

// stages returns how many clean rinse stages a tank is worth between cyanide
// and acid. Still water and the drag-out tank turn into a weak form of what
// they wash off, so they are worth none; nor is a rinse that is itself acid.
func (t *Tank) stages() int {
	if !t.Kind.rinses() || !t.Rinse.Flow.moves() || t.hazards()&^plating.HazardHot != 0 {
		return 0
	}
	return t.Rinse.Stages
}

// moving returns how many stages of fresh water a rinse is worth between strong
// acid and bound cyanide: water that is a little acid does not harm there, water
// that stands does.
func (t *Tank) moving() int {
	if !t.Kind.rinses() || !t.Rinse.Flow.moves() || t.Process.Hazards != 0 {
		return 0
	}
	return t.Rinse.Stages
}

// enough is how many clean rinse stages lie between cyanide and acid, and between strong
// acid and free cyanide one more: where one stage is spent, two are left.
//
// The regulation that was read asks for one water rinse tank between them
// [CyanideRinseRule]. Two stages of moving water, and the third, go beyond it: common
// practice, no source.
const (
	enough     = 2
	enoughFree = 3
)

// A carried follows what a piece carries on from a tank: its number, -1 for none, and the
// clean stages since. A solution that clings is thinned by each stage, never gone; it
// counts as gone when the stages are enough.
type carried struct{ tank, stages int }

// any reports whether something is carried.
func (c carried) any() bool { return c.tank >= 0 }

// cyanide follows what a piece carries from cyanide to acid and back, also across tanks
// that are neither.
//
//	CN⁻ + H⁺ → HCN   a gas that kills; see package plating for the pH
//
// The walk carries four films, each with the stages of moving water since:
//
//	free    cyanide that acid turns into gas at once: any bath with cyanide that is not acid
//	bound   gold(I) cyanide in an acid bath: the complex holds down to about pH 3
//	acid    any acid
//	strong  acid below about pH 1, or acid of which nobody says that it is weaker
//
// A tank with free cyanide asks how many stages lie behind acid and strong, a tank with
// acid how many behind free and bound:
//
//	meets                        stop below   caution below
//	free cyanide and acid        2 stages     3 when the acid is strong
//	bound cyanide, strong acid   1            2, from acid into the bath
//
// Stages count only when they are clean: see stages and moving. An oven carries all four
// on, since salts that dry on stay. A weaker tank between does not take off what a stronger
// one left, so a mild dip does not end strong. That water belongs between the two is
// [CyanideRinseRule], the limit of the complex [GoldCyanidePatent]; how many stages is
// common practice.
func (r *review) cyanide() {
	const kills = "acid and cyanide meet on the piece or in the tank and free hydrogen cyanide, which kills"
	const rinse = "rinse in two stages or more of running or counterflow water between them; give each a rinse of " +
		"its own; extraction on"
	breaks := fmt.Sprintf("below about pH %s the gold complex breaks down and frees hydrogen cyanide, which kills",
		plating.LowestGoldCyanidePH)
	none := carried{tank: -1}
	// Tanks that the piece still carries from. A weaker tank between does not
	// take off what a stronger one left.
	free, acid, strong, bound := none, none, none, none
	for i := range r.tanks {
		t := &r.tanks[i]
		h := t.hazards()
		free.stages += t.stages()
		acid.stages += t.stages()
		strong.stages += t.moving()
		bound.stages += t.moving()
		if t.Kind.oven() {
			continue // salts dry on: what was carried stays
		}
		stop := func(source string, from carried, text, reason, remedy string) {
			r.add(CodeCyanideAcid, plating.SeverityStop, source, text, reason, remedy, from.tank, i)
		}
		switch {
		case h.Has(plating.HazardCyanide) && !h.Has(plating.HazardAcid):
			switch {
			case acid.any() && acid.stages < enough:
				stop("CyanideRinseRule", acid, fmt.Sprintf("acid of %s is carried into cyanide: %s between",
					r.tanks[acid.tank].title(), plural(acid.stages, "clean rinse stage")), kills, rinse)
			case acid.any() && acid.stages < enoughFree && r.tanks[acid.tank].strongAcid():
				r.thin = append(r.thin, i)
				r.add(CodeCyanideAcid, plating.SeverityCaution, practice,
					fmt.Sprintf("strong acid of %s reaches free cyanide over %s", r.tanks[acid.tank].title(),
						plural(acid.stages, "clean rinse stage")),
					"one spent stage leaves too little between them; "+kills,
					"put a second rinse of fresh water between them, check the water with pH paper, extraction on",
					acid.tank, i)
			}
			free, acid, strong, bound = carried{tank: i}, none, none, none
		case h.Has(plating.HazardAcid):
			holds := h.Has(plating.HazardCyanide)
			switch {
			case free.any() && free.stages < enough:
				stop("CyanideRinseRule", free, fmt.Sprintf("cyanide of %s is carried into acid: %s between",
					r.tanks[free.tank].title(), plural(free.stages, "clean rinse stage")), kills, rinse)
			case !holds && t.strongAcid() && bound.any() && bound.stages < 1:
				stop("GoldCyanidePatent", bound,
					fmt.Sprintf("gold cyanide of %s is carried into strong acid: no clean rinse between",
						r.tanks[bound.tank].title()),
					breaks,
					"rinse in two stages of running or counterflow water between them; extraction on; if the acid "+
						"is of pH 1 or more, say that it is mild")
			case holds && strong.any() && strong.stages < 1:
				stop("GoldCyanidePatent", strong,
					fmt.Sprintf("strong acid of %s goes into a bath of gold cyanide: no clean rinse between",
						r.tanks[strong.tank].title()), breaks,
					"rinse in running water between them and keep the pH meter in the bath; if the acid is of pH 1 "+
						"or more, say that it is mild")
			case holds && strong.any() && strong.stages < enough:
				r.add(CodeCyanideAcid, plating.SeverityCaution, "GoldCyanidePatent",
					fmt.Sprintf("strong acid of %s reaches a bath of gold cyanide over %s",
						r.tanks[strong.tank].title(), plural(strong.stages, "rinse stage")),
					"what clings lowers the pH of the bath; "+breaks,
					"add a second stage, or let it drain and change the water often; watch the pH; extraction on",
					strong.tank, i)
			case free.any() && free.stages < enoughFree && t.strongAcid() && !holds:
				r.thin = append(r.thin, i)
				r.add(CodeCyanideAcid, plating.SeverityCaution, practice,
					fmt.Sprintf("free cyanide of %s reaches strong acid over %s", r.tanks[free.tank].title(),
						plural(free.stages, "clean rinse stage")),
					"one spent stage leaves too little between them; "+kills,
					"put a second rinse of fresh water between them, extraction on", free.tank, i)
			}
			acid, free = carried{tank: i}, none
			if t.strongAcid() && (!holds || t.Bath.PH.Given()) {
				strong = carried{tank: i}
			}
			if holds {
				bound = carried{tank: i}
			}
		}
	}
	r.shared()
}

// thinRinses returns the tanks that free cyanide or strong acid reaches over too few
// stages, in order.
func thinRinses(tanks []Tank, p Piece) []int {
	r := newReview(tanks, p)
	r.cyanide()
	return r.thin
}

// A stand is one use of a rinse station: the tank, and what stands before it.
type stand struct {
	tank              int
	free, bound, acid bool // cyanide, gold cyanide in acid, acid
	strong            bool
	all               plating.Hazard
}

// clash reports what two stands that gather in one water make, "" for nothing.
func (a stand) clash(b stand) (makes, source string) {
	if a.free && (b.acid || b.bound) || a.bound && b.strong {
		return "hydrogen cyanide, which kills", practice
	}
	for _, c := range plating.Clashes() {
		if a.all.Has(c.A) && b.all.Has(c.B) {
			return c.Makes, c.Source
		}
	}
	return "", ""
}

// station returns the name of a station to compare by: letters and digits alone, so that
// "A-1", "a 1" and "A1" are one.
func station(name string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsLetter(r) || unicode.IsDigit(r) {
			return unicode.ToLower(r)
		}
		return -1
	}, name)
}

// shared finds one rinse that stands behind two tanks that must not meet.
//
// The list of tanks is the path of the piece; a shop may have one rinse where the path has
// two. Station names it. The water of a station gathers what stood before each of its uses,
// in whatever order: stages do not help, since it is one water.
func (r *review) shared() {
	uses := map[string][]stand{}
	var order []string
	before := -1
	for i := range r.tanks {
		t := &r.tanks[i]
		if t.solution() || t.hazards() != 0 && !t.Kind.rinses() && t.Kind != DragOut {
			before = i
			continue
		}
		name := station(t.Rinse.Station)
		if (!t.Kind.rinses() && t.Kind != DragOut) || name == "" || before < 0 {
			continue
		}
		h := r.tanks[before].hazards()
		cyanide, acid := h.Has(plating.HazardCyanide), h.Has(plating.HazardAcid)
		if uses[name] == nil {
			order = append(order, name)
		}
		if t.Rinse.Acidified {
			h |= plating.HazardAcid
		}
		uses[name] = append(uses[name], stand{i, cyanide && !acid, cyanide && acid, acid && !cyanide ||
			t.Rinse.Acidified, r.tanks[before].strongAcid(), h})
	}
	for _, name := range order {
		r.sharedBy(uses[name])
	}
}

// sharedBy finds the first two uses of one station that must not meet.
func (r *review) sharedBy(list []stand) {
	for k, b := range list {
		for _, a := range list[:k] {
			makes, source := a.clash(b)
			if makes == "" {
				makes, source = b.clash(a)
			}
			if makes == "" {
				continue
			}
			code, what := CodeClash, "two solutions that must not meet"
			if a.free || a.bound || b.free || b.bound {
				code, what = CodeCyanideAcid, "cyanide and behind acid"
			}
			r.add(code, plating.SeverityStop, source, "the rinse "+r.tanks[b.tank].Rinse.Station+" stands behind "+what,
				"both collect in the same water and make "+makes, "give each a rinse of its own", a.tank, b.tank)
			return
		}
	}
}

// chemistry judges each solution by itself, by the rules of package plating
// ([plating.Solution.Review]); their codes and sources pass through unchanged.
func (r *review) chemistry() {
	for i := range r.tanks {
		s := r.tanks[i].chemistry()
		for _, n := range s.Review() {
			// A note says what and why in one text, with a colon between.
			what, why, _ := strings.Cut(n.Text, ": ")
			r.add(Code(n.Code), n.Severity, n.Source, r.tanks[i].title()+": "+what, why, n.Do, i)
		}
	}
}

// clashes follows what a piece carries from one solution into another that it
// must not meet: sulfide, sulfite or hypochlorite and acid, nitric acid and
// solvent. Cyanide and acid have a rule of their own.
func (r *review) clashes() {
	for _, c := range plating.Clashes() {
		for _, pair := range [][2]plating.Hazard{{c.A, c.B}, {c.B, c.A}} {
			r.clash(c, pair[0], pair[1])
		}
	}
}

// clash finds a tank with one hazard that is reached from a tank with the other
// over less than two clean stages: none stops, one is a caution.
func (r *review) clash(c plating.Clash, from, to plating.Hazard) {
	since, stages := -1, 0
	for i := range r.tanks {
		t := &r.tanks[i]
		h := t.hazards()
		if t.Kind == Dry && from.Has(plating.HazardOrganic) {
			since = -1 // it has evaporated
		}
		if since >= 0 && h.Has(to) && !h.Has(from) && stages < enough {
			s := plating.SeverityCaution
			if stages == 0 {
				s = plating.SeverityStop
			}
			r.add(CodeClash, s, c.Source, fmt.Sprintf("%s is carried into %s: %s between", r.tanks[since].title(),
				t.title(), plural(stages, "rinse stage")),
				fmt.Sprintf("%s and %s make %s", from, to, c.Makes),
				"rinse in two stages of running water between them", since, i)
		}
		switch { // the piece meets the tank first; only then does its water rinse
		case h.Has(from) && !h.Has(to):
			since, stages = i, 0
		case t.Kind.rinses() && t.Rinse.Flow.moves():
			stages += t.Rinse.Stages
		}
	}
}
