package sequence

import (
	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

const useStrike = bath.UseStrike

// copperBelow reports whether coat k lies on copper or a metal that bears copper: the coat
// before it, or the base metal when it is the first.
func (r *review) copperBelow(k int) bool {
	if k > 0 {
		return r.coats[k-1].metal == "Cu"
	}
	return r.piece.Substrate.copperBearing()
}

// nickelBelow reports whether coat k lies on nickel.
func (r *review) nickelBelow(k int) bool {
	if k > 0 {
		return r.coats[k-1].metal == "Ni"
	}
	return r.piece.Substrate == Nickel
}

// bronze reports whether a coat is white bronze: counted as copper, but a
// coat of its own.
func (c coat) bronze(r *review) bool { return len(r.tanks[c.tank].Bath.Deposit) > 1 && c.metal == "Cu" }

// adhesion judges each coat against the one below.
//
//	silver       plates itself onto every less noble metal before the current does, and does not adhere:
//	             a strike poor in silver, entered live, is the remedy [SilverStrikeThread]
//	gold         on nickel that has turned passive, common practice
//	palladium    takes up copper through the ammonia of its bath [PalladiumFeature]
//	rhodium      takes up copper through its hot acid; 8 ppm darken it [RhodiumProblems]
//
// A first coat that the group first has judged is not judged twice.
func (r *review) adhesion() {
	for k, c := range r.coats {
		t := &r.tanks[c.tank]
		switch {
		case c.metal == "Ag" && c.kind == Strike:
			if !t.LiveEntry {
				r.add(CodeLiveEntry, plating.SeverityWarning, "SilverStrikeThread",
					t.title()+" is entered without current",
					"silver deposits by immersion on any base metal and does not adhere",
					"switch the current on before the piece touches the bath", c.tank)
			}
		case c.metal == "Ag":
			below := r.piece.Substrate.silver()
			if k > 0 {
				below = r.coats[k-1].metal == "Ag"
			}
			if !below && !(k == 0 && r.has(CodeNoStrike, c.tank)) {
				r.add(CodeNoStrike, plating.SeverityWarning, "SilverStrikeThread", t.title()+" without a silver strike",
					"silver deposits by immersion on the metal below and does not adhere",
					"lay a silver strike first, with live entry, and go straight on", c.tank)
			}
		case c.metal == "Au" && c.kind != Strike && t.Bath.Use&useStrike == 0 && r.nickelBelow(k):
			r.add(CodeNoStrike, plating.SeverityCaution, practice,
				t.title()+" straight on nickel, without a gold strike",
				"nickel turns passive within minutes, even when wet, and gold from a bath that is not strongly acid "+
					"does not adhere to it",
				"lay an acid gold strike first, or go straight on from the nickel, wet, with live entry", c.tank)
		case (c.metal == "Pd" || c.metal == "Rh") && r.copperBelow(k) && !(k > 0 && r.coats[k-1].bronze(r)):
			what, key := "ammonia takes up copper and the palladium blackens", "PalladiumFeature"
			if c.metal == "Rh" {
				what, key = "hot acid takes up copper; over 8 ppm of it darkens the rhodium", "RhodiumProblems"
			}
			r.add(CodeAttack, plating.SeverityWarning, key, t.title()+" straight on copper or its alloy", what,
				"lay nickel first, or white bronze under palladium where nickel is not allowed", c.tank)
		}
	}
}

// thickness finds strikes that build and baths that are asked too much. The limit is the
// bath's own, with its source; it is compared with the minimum thickness, so that the mean
// of an uneven coat may pass it unseen. A strike by time may stay for twice its usual time.
func (r *review) thickness() {
	for _, c := range r.coats {
		t := &r.tanks[c.tank]
		most := t.Bath.MaxThickness
		over := most.High > 0 && t.MinThickness > most.High*(1+1e-12)
		const reason = "a strike only covers: built thick, its deposit is brittle or loose, and its efficiency is poor"
		switch {
		case t.Bath.Name == "":
		case c.kind != Strike && t.Bath.Use == useStrike:
			r.add(CodeStrikeBuilds, plating.SeverityWarning, orRecall(most.Source),
				t.title()+" stands where thickness is built",
				reason, "strike thin, and build in a bath made for it", c.tank)
		case c.kind == Strike && over:
			r.add(CodeStrikeBuilds, plating.SeverityWarning, orRecall(most.Source), t.title()+" is to lay "+
				t.MinThickness.Text(units.Micrometre, 2), reason,
				"lay at most "+most.High.Text(units.Micrometre, 2)+" and build in the next bath", c.tank)
		case c.kind == Strike && t.Bath.Time.High > 0 && t.Time > 2*t.Bath.Time.High:
			r.add(CodeStrikeBuilds, plating.SeverityWarning, orRecall(t.Bath.Time.Source),
				t.title()+" lasts "+t.Time.String(),
				reason, "leave it in for at most about "+t.Bath.Time.High.String(), c.tank)
		case over:
			r.add(CodeTooThick, plating.SeverityWarning, orRecall(most.Source), t.title()+" is to lay "+
				t.MinThickness.Text(units.Micrometre, 2),
				"a thicker coat from this bath grows dull, stressed or cracked",
				"lay at most "+most.High.Text(units.Micrometre, 2)+", or take another bath", c.tank)
		}
	}
}

// orRecall names memory as the source of a figure that has none.
func orRecall(source string) string {
	if source == "" {
		return recall
	}
	return source
}

// tooThinToKeep reports whether a coat is so thin that it keeps nothing
// back: less than 1 µm of nickel or white bronze, 0.1 µm of palladium. Common
// practice, no source.
func (r *review) tooThinToKeep(c coat) bool {
	p := r.tanks[c.tank].MinThickness
	switch {
	case p == 0:
		return false
	case c.metal == "Pd":
		return p < 0.1*units.Micrometre
	case c.metal == "Ni" || c.bronze(r):
		return p < 1*units.Micrometre
	}
	return false
}

// migration finds copper, tin or silver that can move into gold.
//
// The metal below diffuses through thin gold, comes out at its face and tarnishes there.
// Nickel and palladium keep copper and tin back, bronze does not [DiffusionBarrier]. The
// walk goes down from the first gold of a stack to the first coat that is thick enough to
// matter; a nickel strike is not. Silver under gold is forbidden for engineering gold
// [MIL45204]; sterling itself under gold, as in vermeil, is a caution only.
func (r *review) migration() {
	for k, c := range r.coats {
		if c.metal != "Au" || k > 0 && r.coats[k-1].metal == "Au" {
			continue
		}
		// What lies under: down to the first coat that is thick enough to keep
		// something back. A strike of nickel is not.
		below, tank := "", -1
		for j := k - 1; j >= 0 && below == ""; j-- {
			if b := r.coats[j]; !(b.kind == Strike && b.metal == "Ni") && !r.tooThinToKeep(b) {
				below, tank = b.metal, b.tank
			}
		}
		s := r.piece.Substrate
		at := []int{c.tank}
		if tank >= 0 {
			at = []int{tank, c.tank}
		}
		gold := r.tanks[c.tank].title()
		switch {
		case below == "Cu" || below == "" && s.copperBearing():
			r.add(CodeNoBarrier, plating.SeverityWarning, "DiffusionBarrier",
				"copper lies under "+gold+" without a barrier",
				"copper diffuses into the gold and tarnishes there; bronze does not stop it",
				"lay a few micrometres of nickel, or palladium, between them", at...)
		case below == "Sn" || below == "" && s.tin():
			r.add(CodeNoBarrier, plating.SeverityWarning, "DiffusionBarrier",
				"tin lies under "+gold+" without a barrier",
				"tin diffuses into the gold", "lay copper and nickel, or palladium, between them", at...)
		case below == "Ag":
			r.add(CodeSilverUnderGold, plating.SeverityWarning, "MIL45204", "a silver coat lies under "+gold,
				"silver diffuses into the gold and tarnishes through it; the practice for engineering gold forbids "+
					"silver as undercoat",
				"lay nickel or palladium between them, or in place of the silver", at...)
		case below == "" && s.silver():
			r.add(CodeSilverUnderGold, plating.SeverityCaution, recall, gold+" lies straight on "+s.String(),
				"silver diffuses into thin gold in time and tarnishes through it",
				"lay palladium between them, or nickel where it does not touch skin", at...)
		}
	}
}

// ordered judges the last coat against the order: its metal, and its minimum thickness. Two
// golds of different hardness count as one metal: the tanks tell which bath it is, and the
// owner of the order decides.
func (r *review) ordered() {
	p := &r.piece
	key := p.Finish.BathKey()
	if key == "" || len(r.coats) == 0 {
		return
	}
	want, err := bath.Get(key)
	last := r.coats[len(r.coats)-1]
	t := &r.tanks[last.tank]
	switch {
	case err != nil:
	case last.metal != want.Metal || len(t.Bath.Deposit) > 1 != (len(want.Deposit) > 1) && want.Metal == "Cu":
		r.add(CodeWrongFinish, plating.SeverityWarning, "Definition", "the last coat is "+t.title()+", which deposits "+
			last.metal+"; ordered is "+p.Finish.String(), "the owner gets another coat than the one ordered",
			"end with "+want.Name, last.tank)
	case t.MinThickness > 0 && t.MinThickness < p.MinThickness*(1-1e-12):
		r.add(CodeWrongFinish, plating.SeverityWarning, "Definition",
			t.title()+" lays "+t.MinThickness.Text(units.Micrometre, 2)+
				", ordered are "+p.MinThickness.Text(units.Micrometre, 2),
			"the coat comes out thinner than ordered", "set the tank's minimum thickness to that of the piece",
			last.tank)
	}
}
