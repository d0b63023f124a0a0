package sequence

import (
	"errors"
	"slices"
	"sort"

	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// Check reviews a sequence, proposed or made by hand, for a piece, and returns what it
// finds, in the order of the tanks; nothing when all is well. Each finding says what is so,
// why it matters, what would help and where that is known from. It judges only what tanks
// and piece say of themselves: read the package comment for what it does not see.
//
// Check takes any input: a tank that says too little, or a piece of unknown metal, is a
// finding of severity stop.
//
// Each group of rules walks the tanks once, from the first to the last, and carries along
// what the piece has on it by then:
//
//	group        carries on the walk                              rests on
//	unknown      nothing: each tank by itself                     what a check must know
//	chemistry    nothing: each solution by itself                 plating.Solution.Review
//	cyanide      cyanide and acid, free and bound, rinse stages   CyanideRinseRule, GoldCyanidePatent
//	clashes      one hazard of a pair, rinse stages               plating.Clashes
//	carry        the last solution, and whether water came since  common practice
//	prepared     what was done to the bare face                   practice of the base metal
//	attack       the bare metal, up to the first coat             CausticMetals, memory
//	first        base metal and first coat                        practice of the base metal
//	adhesion     each coat and the one below it                   SilverStrikeThread and others
//	thickness    nothing: each coat by its bath                   the bath's own figure
//	migration    the stack of coats below each gold               DiffusionBarrier, MIL45204
//	drying       whether the face outside is passive, wet or dry  practice, Guidebook2013
//	skin         nickel anywhere in the stack                     NickelRelease
//	hydrogen     hydrogen in hard steel, hours since the current  ASTMB849, ASTMB850
//	waters       precious metal that clings                       common practice
//	ordered      the last coat                                    the order
//
// The groups know nothing of each other, with one exception: where two would say the same
// of one tank, the graver group comes first and the other is silent (has).
func Check(tanks []Tank, p Piece) []Finding {
	r := newReview(tanks, p)
	r.unknown()
	r.chemistry()
	r.cyanide()
	r.clashes()
	r.carry()
	r.prepared()
	r.attack()
	r.cyanideInLine()
	r.leaded()
	r.treated()
	r.first()
	r.adhesion()
	r.thickness()
	r.migration()
	r.drying()
	r.skin()
	r.hydrogen()
	r.solventHeated()
	r.waters()
	r.ordered()
	sort.SliceStable(r.found, func(i, j int) bool { return r.found[i].first() < r.found[j].first() })
	return r.found
}

// newReview copies the tanks and finds the hazards of each once: they are asked for by
// every group, and reading them from names is the slow part. The caller's tanks are not
// touched.
func newReview(tanks []Tank, p Piece) *review {
	r := &review{tanks: slices.Clone(tanks), piece: p}
	for i := range r.tanks {
		t := &r.tanks[i]
		t.all = nil
		h := t.hazards()
		t.all = &h
		if t.Kind.deposits() {
			r.coats = append(r.coats, coat{i, t.Bath.Key, t.Bath.Metal, t.Kind})
		}
	}
	return r
}

// first returns the tank that a finding begins at; the whole comes first.
func (f *Finding) first() int {
	if len(f.Tanks) == 0 {
		return -1
	}
	return f.Tanks[0]
}

// A review gathers findings. Every rule group is a method that reads tanks, piece and coats
// and adds to found; none changes a tank.
type review struct {
	tanks []Tank
	piece Piece
	coats []coat
	found []Finding
	thin  []int // tanks that cyanide or acid reaches over too few stages
}

// A coat is one deposit with the tank it comes from.
type coat struct {
	tank  int
	key   string
	metal string
	kind  TankKind
}

// add appends a finding: what is so, why it matters, what to do, and the tanks by index.
func (r *review) add(code Code, s plating.Severity, source, text, reason, remedy string, tanks ...int) {
	r.found = append(r.found, Finding{Code: code, Severity: s, Tanks: tanks, Text: text, Reason: reason, Remedy: remedy,
		Source: source})
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
//
// What is not said is a stop, not a guess on the safe side: a name may be short of one word
// that tells cyanide from none. The hazards that a name gives away ([plating.NamedHazards])
// must be on the tank's own list; a list shorter than the name is one that nobody has
// checked.
func (r *review) unknown() {
	stop := plating.SeverityStop
	if len(r.tanks) == 0 {
		r.add(CodeUnknown, stop, "Definition", "no tanks", "there is nothing to review",
			"list the tanks, or take a plan")
	}
	if s := r.piece.Substrate; s == SubstrateUnknown || s >= substrateEnd {
		r.add(CodeUnknown, stop, "Definition", "the base metal is not known",
			"preparation, strike and dangers depend on it",
			"find out: "+identify()[0]+"; "+identify()[1])
	}
	if r.piece.Tensile != 0 {
		if err := CheckTensile(r.piece.Tensile); err != nil {
			r.add(CodeUnknown, stop, recall, err.Error(),
				"no steel has that strength: check the unit and the decimal point", howStrong()[0])
		}
	}
	for i := range r.tanks {
		t := &r.tanks[i]
		if left := plating.Unsaid(t.listed(), t.names()...); left != 0 {
			do := "add " + left.String() + " to the hazards, or correct the name"
			if t.Kind.rinses() || t.Kind == DragOut {
				do = "say that the rinse is acidified, or name it after the tank that it stands behind"
			}
			r.add(CodeUnknown, stop, "Definition",
				"the name of "+t.title()+" says "+left.String()+", its list of hazards does not",
				"the check for hydrogen cyanide goes by the hazards", do, i)
		}
		r.unsaidAcid(i)
		err := t.Check()
		if err == nil {
			continue
		}
		need := "fill it in"
		var v *units.ValueError
		if errors.As(err, &v) {
			need = "give " + v.Need
		}
		r.add(CodeUnknown, stop, "Definition", t.title()+": "+err.Error(),
			"a tank that does not say what it is cannot be judged, and neither can the tanks beside it", need, i)
	}
	if len(r.tanks) > 0 && len(r.coats) == 0 {
		r.add(CodeUnknown, stop, "Definition", "no tank plates", "there is no coat to prepare for",
			"add the strike, underplate or plate")
	}
}

// unsaidAcid asks of a bath in a line with cyanide whether it is acid, where neither pH
// nor hazards tell: most baths without cyanide are (from memory).
func (r *review) unsaidAcid(i int) {
	t := &r.tanks[i]
	known := plating.HazardAcid | plating.HazardCaustic | plating.HazardAmmonia | plating.HazardCyanide |
		plating.HazardSulfite
	if !t.Kind.deposits() || t.hazards()&known != 0 || t.Bath.PH.Given() {
		return
	}
	for k := range r.tanks {
		if r.tanks[k].hazards().Has(plating.HazardCyanide) {
			r.add(CodeUnknown, plating.SeverityStop, recall, "whether "+t.title()+" is acid is not said",
				"there is cyanide in this line. Most baths without cyanide are acid, and acid frees hydrogen cyanide "+
					"from it, which kills",
				"measure the pH and give it, or add acid to the hazards", i)
			return
		}
	}
}

// carry finds two solutions with no water between, and a solution that dries on the piece.
//
// It carries the last tank that held a solution, and whether a rinse came since. Any rinse
// counts here, still or running: how many stages are enough is asked by the groups that
// know what would happen. A drag-out tank is no rinse: it holds the bath, thinned. A
// solvent by itself evaporates and leaves nothing.
func (r *review) carry() {
	prev := -1
	wet := false // some rinse since prev
	for i := range r.tanks {
		t := &r.tanks[i]
		switch {
		case t.Kind.rinses():
			wet = true
		case t.Kind == Dry && prev >= 0 && !wet:
			if r.tanks[prev].hazards() != plating.HazardOrganic { // a solvent leaves nothing that matters
				r.add(CodeNoRinse, plating.SeverityWarning, practice, r.tanks[prev].title()+" dries on the piece",
					"dried salts stain the piece, and cyanide or acid stays on it for whoever handles it",
					"rinse before drying", prev, i)
			}
			prev = -1
		case t.Kind.oven():
			prev = -1
		case t.solution():
			if prev >= 0 && !wet && !r.mayFollow(prev, i) && !r.has(CodeCyanideAcid, i) {
				r.add(CodeNoRinse, plating.SeverityWarning, practice,
					"no rinse between "+r.tanks[prev].title()+" and "+t.title(),
					"drag-out spoils the next solution, and the coat does not adhere",
					"rinse in two stages between them", prev, i)
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
	return a.Kind == Strike && b.Kind.deposits() && a.Bath.Metal == b.Bath.Metal && a.hazards()&same == b.hazards()&same
}
