package sequence

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// mayWait is how long a passive metal may hang in the air, wet, before it is
// covered. Common practice, no source.
const mayWait = 30 * units.Second

// drying finds pieces that dry or wait where they must not.
//
// The walk carries one state of the outer face: passive means that a film grows on it in
// air within seconds and that the next coat would not hold. Nickel has it, and a bare metal
// with such a film once it was activated; a strike on that metal need not be closed, so the
// state goes on below it. An activation restores the face, and so does a strike that
// activates; any other coat covers it.
//
//	dries, passive, nothing restores it   passive-dry
//	dries, not passive                    dry-early: what dried on is a soil
//	waits over 30 s, passive              passive-wait
//
// Before anything was made active or plated, and after the last coat, drying does no harm.
func (r *review) drying() {
	last := -1 // last tank that plates
	if n := len(r.coats); n > 0 {
		last = r.coats[n-1].tank
	}
	passive, done := false, false // done: something was made active or plated
	for i := range r.tanks {
		t := &r.tanks[i]
		switch {
		case t.Kind.deposits():
			passive, done = r.staysPassive(i), true
		case t.Kind == Activate:
			done = true
			passive = passive || r.piece.Substrate.passive() && t.Process.Effect&(EffectActivate|EffectZincate) != 0
		}
		next := r.nextActive(i, passive)
		restored := next >= 0 && (r.tanks[next].Kind == Activate || r.tanks[next].activates())
		switch {
		case i > last || !done:
		case t.Kind.oven():
			if passive && !restored {
				r.add(CodePassiveDry, plating.SeverityWarning, r.passiveSource(i),
					"the piece dries before "+r.tanks[next].title(),
					"a passive film forms as it dries, and the next coat peels",
					"keep it wet and go straight on, or activate again", i)
			} else if !restored {
				r.add(CodeDryEarly, plating.SeverityWarning, practice, "the piece dries before "+r.tanks[next].title(),
					"what has dried on keeps the next coat from adhering", "keep it wet, or clean and activate again",
					i)
			}
		case t.Wait > mayWait && passive && !restored:
			r.add(CodePassiveWait, plating.SeverityWarning, r.passiveSource(i),
				"the piece waits "+t.Wait.String()+" behind "+
					t.title(), "a passive film forms again in air, and the next coat peels",
				"transfer it at once and keep it wet until it is covered", i)
		}
	}
	r.ending(last)
}

// passiveSource is where it is known from that the face at a tank grows passive:
// the practice for stainless steel, the handbook for nickel that has dried.
func (r *review) passiveSource(i int) string {
	for k := len(r.coats) - 1; k >= 0; k-- {
		if r.coats[k].tank <= i && r.coats[k].metal == "Ni" {
			return "Guidebook2013"
		}
	}
	if s := r.piece.Substrate; s == StainlessSteel || s == Nickel {
		return s.filmSource()
	}
	return recall
}

// staysPassive reports whether the face after a coat grows passive: nickel
// does, and a strike on a passive base, which need not be closed.
func (r *review) staysPassive(i int) bool {
	t := &r.tanks[i]
	return t.Bath.Metal == "Ni" || t.Kind == Strike && r.piece.Substrate.passive()
}

// nextActive returns the next tank after i that plates or makes the face fit
// for it, -1 when there is none. A passive face wants more than a dip.
func (r *review) nextActive(i int, passive bool) int {
	for k := i + 1; k < len(r.tanks); k++ {
		if t := &r.tanks[k]; t.Kind.deposits() || t.Kind == Activate &&
			(!passive || t.Process.Effect.Has(EffectActivate)) {
			return k
		}
	}
	return -1
}

// ending judges what comes behind the last coat: a clean last water, and drying after it,
// once. The limit of 0.037 g/L for the last rinse is printed [RinsingLessWater]; the rest
// is common practice.
func (r *review) ending(last int) {
	if last < 0 {
		return
	}
	dry, water, final := -1, -1, -1
	for i := last + 1; i < len(r.tanks); i++ {
		switch t := &r.tanks[i]; {
		case t.Kind == Dry && dry < 0:
			dry = i
		case t.Kind == FinalRinse:
			final, water = i, i
		case t.Kind == Rinse, t.Kind == DragOut:
			water = i
		}
	}
	switch {
	case dry < 0:
		r.add(CodeNotDried, plating.SeverityWarning, practice, "nothing dries the piece at the end",
			"water left to stand leaves marks and creeps from seams", "dry it in warm clean air after the last rinse",
			last)
	case water > dry:
		r.add(CodeDryEarly, plating.SeverityWarning, practice, "the piece is dried before its last water",
			"the piece ends wet, and what dried on the first time stays", "dry it after the last rinse", dry, water)
	}
	switch {
	case final < 0:
		r.add(CodeNoFinalRinse, plating.SeverityWarning, "RinsingLessWater", "no final rinse behind the last coat",
			"what the rinses before it leave dries on; metal or cyanide above 0.037 g/L shows and harms",
			"end with a running rinse in deionised water", last)
	case !r.tanks[final].Rinse.Deionised:
		r.add(CodeFinalWater, plating.SeverityWarning, practice, "the final rinse is not deionised",
			"the salts of tap water stay as spots", "end in deionised water", final)
	case r.tanks[final].Rinse.Flow == Still:
		r.add(CodeFinalWater, plating.SeverityWarning, practice, "the final rinse stands still",
			"still water collects what it should rinse off", "let it run, or spray", final)
	}
}

// waters finds baths of precious metal without a drag-out tank right behind them. A strike
// that goes straight on into its bath needs none: what clings stays in the line.
func (r *review) waters() {
	for _, c := range r.coats {
		if !plating.Precious(c.metal) {
			continue
		}
		t := &r.tanks[c.tank]
		next := c.tank + 1
		if next < len(r.tanks) && (r.tanks[next].Kind == DragOut || r.tanks[next].solution() &&
			r.mayFollow(c.tank, next)) {
			continue
		}
		s := plating.SeverityWarning
		if c.kind == Strike {
			s = plating.SeverityCaution // little metal, little lost
		}
		r.add(CodeNoDragOut, s, practice, "no drag-out tank behind "+t.title(), "what clings carries "+c.metal+
			" down the rinse", "put a still tank of deionised water right behind it, and pour that back into the bath",
			c.tank)
	}
}

// skin finds nickel where skin is. The limit is on release, not on presence
// [NickelRelease]: a closed coat of gold over nickel may keep it, until it is worn through.
// So nickel in the stack is a warning and not a stop, and nickel in the base metal a
// caution. Nickel under vermeil must be disclosed to the buyer, skin or not [FTC23].
func (r *review) skin() {
	p := &r.piece
	nickel := -1
	for _, c := range r.coats {
		if c.metal == "Ni" && nickel < 0 {
			nickel = c.tank
		}
	}
	if nickel >= 0 && p.Substrate.silver() && p.Finish.gold() {
		r.add(CodeDisclose, plating.SeverityInfo, "FTC23", "nickel lies between silver and gold",
			"a base metal under vermeil must be disclosed to the buyer", "say so on the ticket, or take palladium",
			nickel)
	}
	if !p.SkinContact {
		return
	}
	const law = "nickel that reaches skin may give off at most 0.5 µg/cm² in a week, 0.2 in pierced parts, after " +
		"two years of wear"
	if nickel >= 0 {
		r.add(CodeNickelSkin, plating.SeverityWarning, "NickelRelease", "nickel in a coat of a piece that touches skin",
			law, "lay palladium, with white bronze under it, in its place", nickel)
	}
	if n := len(r.coats); n > 0 {
		if t := &r.tanks[r.coats[n-1].tank]; t.Bath.Metal != "Ni" && t.hazards().Has(plating.HazardNickel) {
			r.add(CodeNickelSkin, plating.SeverityWarning, "NickelRelease", "nickel in the last coat, "+t.title(), law,
				"use gold hardened with cobalt", r.coats[n-1].tank)
		}
	}
	if p.Substrate == Nickel || p.Substrate == NickelSilver {
		r.add(CodeNickelSkin, plating.SeverityCaution, "NickelRelease", "the base metal itself holds nickel", law,
			"have the finished piece tested for release after wear")
	}
}

// bakeMost is the heat that what melts or blisters stands.
const bakeMost units.Temperature = 393.15 // 120 °C
