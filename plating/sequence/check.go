package sequence

import (
	"errors"
	"sort"
	"strings"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// Check reviews a sequence, proposed or made by hand, for a piece, and returns
// what it finds, in the order of the tanks; nothing when all is well. Each
// finding says what is so, why it matters, what would help and where that is
// known from. It judges only what tanks and piece say of themselves: read the
// package comment for what it does not see.
//
// Check takes any input: a tank that says too little, or a piece of unknown
// metal, is a finding of severity stop.
func Check(tanks []Tank, p Piece) []Finding {
	r := &review{tanks: tanks, piece: p}
	for i := range tanks {
		if t := &tanks[i]; t.Kind.deposits() {
			r.coats = append(r.coats, coat{i, t.Bath.Key, t.Bath.Metal, t.Kind})
		}
	}
	r.unknown()
	r.cyanide()
	r.carry()
	r.prepared()
	r.attack()
	r.first()
	r.adhesion()
	r.thickness()
	r.migration()
	r.drying()
	r.skin()
	r.hydrogen()
	r.waters()
	r.promised()
	sort.SliceStable(r.found, func(i, j int) bool { return r.found[i].first() < r.found[j].first() })
	return r.found
}

// first returns the tank that a finding begins at; the whole comes first.
func (f *Finding) first() int {
	if len(f.Tanks) == 0 {
		return -1
	}
	return f.Tanks[0]
}

// A review gathers findings.
type review struct {
	tanks []Tank
	piece Piece
	coats []coat
	found []Finding
}

// A coat is one deposit with the tank it comes from.
type coat struct {
	tank  int
	key   string
	metal string
	kind  Kind
}

func (r *review) add(code Code, s plating.Severity, source, text, reason, remedy string, tanks ...int) {
	r.found = append(r.found, Finding{Code: code, Severity: s, Tanks: tanks, Text: text, Reason: reason, Remedy: remedy, Source: source})
}

// has reports whether a rule has already spoken about a tank.
func (r *review) has(code Code, tank int) bool {
	for _, f := range r.found {
		for _, i := range f.Tanks {
			if f.Code == code && i == tank {
				return true
			}
		}
	}
	return false
}

// unknown finds what is not said and so cannot be judged.
func (r *review) unknown() {
	stop := plating.SeverityStop
	if len(r.tanks) == 0 {
		r.add(CodeUnknown, stop, "Definition", "no tanks", "there is nothing to judge", "list the tanks, or take a plan")
	}
	if s := r.piece.Substrate; s == SubstrateUnknown || s >= substrateEnd {
		r.add(CodeUnknown, stop, "Definition", "the base metal is not known", "preparation, strike and dangers all hang on it", "find out: "+identify()[0]+"; "+identify()[1])
	}
	for i := range r.tanks {
		t := &r.tanks[i]
		if word := t.unnamed(); word != "" {
			r.add(CodeUnknown, stop, "Definition", t.title()+" is named by "+word+" and its hazards do not say so", "the check for hydrogen cyanide goes by the hazards",
				"add "+word+" to the hazards, or correct the name", i)
		}
		err := t.Check()
		if err == nil {
			continue
		}
		need := "fill it in"
		var v *units.ValueError
		if errors.As(err, &v) {
			need = "give " + v.Need
		}
		r.add(CodeUnknown, stop, "Definition", t.title()+": "+err.Error(), "a tank that does not say what it is cannot be judged, nor what may stand beside it", need, i)
	}
	if len(r.tanks) > 0 && len(r.coats) == 0 {
		r.add(CodeUnknown, stop, "Definition", "no tank plates", "there is nothing to judge the preparation for", "add the strike, underplate or plate")
	}
}

// stages returns how many clean rinse stages a tank is worth between cyanide
// and acid. Still water and the drag-out tank turn into a weak form of what
// they wash off, so they are worth none; nor is a rinse that is itself acid.
func (t *Tank) stages() int {
	if !t.Kind.rinses() || !t.Rinse.Flow.moves() || t.hazards() != 0 {
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

// enough is how many clean rinse stages lie between cyanide and acid.
const enough = 2

// cyanide follows what a piece carries from cyanide to acid and back, also
// across tanks that are neither.
func (r *review) cyanide() {
	const reason = "acid and cyanide meet on the piece or in the tank and give off hydrogen cyanide, which kills"
	const remedy = "two stages of running or counterflow rinse between them, not shared; extraction on"
	const breaks = "below about pH 3 the gold complex breaks down and gives off hydrogen cyanide"
	// Tanks that the piece still carries from, each with the clean stages since.
	// A weaker tank between does not take off what a stronger one left.
	cyan, acid, strong, bound := -1, -1, -1, -1
	afterCyan, afterAcid, afterStrong, afterBound := 0, 0, 0, 0
	for i := range r.tanks {
		t := &r.tanks[i]
		h := t.hazards()
		afterCyan += t.stages()
		afterAcid += t.stages()
		afterStrong += t.moving()
		afterBound += t.moving()
		if t.Kind == Dry || t.Kind == Bake {
			continue // salts dry on: what was carried stays
		}
		switch {
		case h.Has(plating.HazardCyanide) && !h.Has(plating.HazardAcid):
			if acid >= 0 && afterAcid < enough {
				r.add(CodeCyanideAcid, plating.SeverityStop, practice, "acid of "+r.tanks[acid].title()+" is carried into cyanide: "+plural(afterAcid, "clean rinse stage")+" between",
					reason, remedy, acid, i)
			}
			cyan, afterCyan, acid, strong, bound = i, 0, -1, -1, -1
		case h.Has(plating.HazardAcid):
			holds := h.Has(plating.HazardCyanide)
			switch {
			case cyan >= 0 && afterCyan < enough:
				r.add(CodeCyanideAcid, plating.SeverityStop, practice, "cyanide of "+r.tanks[cyan].title()+" is carried into acid: "+plural(afterCyan, "clean rinse stage")+" between",
					reason, remedy, cyan, i)
			case !holds && t.strongAcid() && bound >= 0 && afterBound < 1:
				r.add(CodeCyanideAcid, plating.SeverityStop, "GoldCyanidePatent", "bound cyanide of "+r.tanks[bound].title()+" is carried into strong acid: no clean rinse between",
					breaks, "two stages of running or counterflow rinse between them; extraction on; an acid that is weak says so", bound, i)
			case holds && strong >= 0 && afterStrong < 1:
				r.add(CodeCyanideAcid, plating.SeverityStop, "GoldCyanidePatent", "strong acid of "+r.tanks[strong].title()+" goes into a bath of bound cyanide: no clean rinse between",
					breaks, "rinse between them in running water, and keep the pH meter in the bath; an acid that is weak says so", strong, i)
			case holds && strong >= 0 && afterStrong < enough:
				r.add(CodeCyanideAcid, plating.SeverityCaution, "GoldCyanidePatent", "strong acid of "+r.tanks[strong].title()+" reaches a bath of bound cyanide over "+plural(afterStrong, "rinse stage"),
					"what clings lowers the pH of the bath, and "+breaks, "let it drain, change the rinse water often, watch the pH, extraction on", strong, i)
			}
			acid, afterAcid, cyan = i, 0, -1
			if t.strongAcid() && (!holds || t.Bath.PH.Given()) {
				strong, afterStrong = i, 0
			}
			if holds {
				bound, afterBound = i, 0
			}
		}
	}
	r.shared()
}

// A stand is one use of a rinse station: the tank, and what stands before it.
type stand struct {
	tank              int
	free, bound, acid bool // cyanide, cyanide bound in acid, acid
	strong            bool
}

// clash reports whether what two stands gather in one water gives off hydrogen
// cyanide.
func (a stand) clash(b stand) bool {
	return a.free && (b.acid || b.bound) || a.bound && b.strong
}

// shared finds one rinse that stands behind cyanide and behind acid. Names of
// stations are compared without regard to capitals and blanks.
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
		name := strings.ToLower(strings.Join(strings.Fields(t.Rinse.Station), " "))
		if (!t.Kind.rinses() && t.Kind != DragOut) || name == "" || before < 0 {
			continue
		}
		h := r.tanks[before].hazards()
		cyanide, acid := h.Has(plating.HazardCyanide), h.Has(plating.HazardAcid)
		if uses[name] == nil {
			order = append(order, name)
		}
		uses[name] = append(uses[name], stand{i, cyanide && !acid, cyanide && acid, acid && !cyanide || t.Rinse.Acidified, r.tanks[before].strongAcid()})
	}
	for _, name := range order {
		list := uses[name]
	search:
		for k, b := range list {
			for _, a := range list[:k] {
				if a.clash(b) || b.clash(a) {
					r.add(CodeCyanideAcid, plating.SeverityStop, practice, "the rinse "+r.tanks[b.tank].Rinse.Station+" stands behind cyanide and behind acid",
						"both gather in one water and give off hydrogen cyanide", "a rinse of its own for each", a.tank, b.tank)
					break search
				}
			}
		}
	}
}

// carry finds two solutions with no water between.
func (r *review) carry() {
	prev := -1
	wet := false // some rinse since prev
	for i := range r.tanks {
		t := &r.tanks[i]
		switch {
		case t.Kind.rinses():
			wet = true
		case t.Kind == Dry && prev >= 0 && !wet:
			r.add(CodeNoRinse, plating.SeverityWarning, practice, r.tanks[prev].title()+" dries on the piece", "salts stain and creep, cyanide and acid stay on a piece that is handled",
				"rinse before drying", prev, i)
			prev = -1
		case t.Kind == Dry || t.Kind == Bake:
			prev = -1
		case t.solution():
			if prev >= 0 && !wet && !r.mayFollow(prev, i) && !r.has(CodeCyanideAcid, i) {
				r.add(CodeNoRinse, plating.SeverityWarning, practice, "no rinse between "+r.tanks[prev].title()+" and "+t.title(),
					"what clings is carried over, spoils the next solution and the hold of the coat", "two stages of rinse between", prev, i)
			}
			prev, wet = i, false
		}
	}
}

// mayFollow reports whether one solution may follow another without water:
// two cleaners, or a strike and a bath of the same metal and the same
// chemistry.
func (r *review) mayFollow(i, k int) bool {
	a, b := &r.tanks[i], &r.tanks[k]
	if a.Kind.cleans() && b.Kind.cleans() {
		return !a.hazards().Has(plating.HazardAcid) && !b.hazards().Has(plating.HazardAcid)
	}
	same := plating.HazardCyanide | plating.HazardAcid
	return a.Kind == Strike && b.Kind.deposits() && a.Bath.Metal == b.Bath.Metal && a.Bath.Hazards&same == b.Bath.Hazards&same
}
