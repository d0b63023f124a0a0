package sequence

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// needs returns what must have been done to a bare base metal before its first
// coat, and that in words. A strike of acid that takes the passive film itself
// does it for stainless steel and nickel.
//
// Zinc castings, copper alloys, silver and plain steel need their oxide or tarnish off; tin
// and paint take the coat as they come from the soak.
func (s Substrate) needs() (Effect, string) {
	switch {
	case s == StainlessSteel || s == Nickel:
		return EffectActivate, "an activation, or a strike that activates"
	case s == Titanium:
		return EffectEtch, "an etch in hydrofluoric acid, or a blast"
	case s == Aluminium:
		return EffectZincate, "a zincate film"
	case s.tin() || s == PaintedPlastic || s == SubstrateUnknown || s >= substrateEnd:
		return 0, ""
	}
	return EffectDeoxidise, "an acid dip"
}

// activates reports whether a strike takes a passive film by itself: an acid
// strike that says that its pH lies below 2 (from memory).
func (t *Tank) activates() bool {
	return t.Kind == Strike && t.hazards().Has(plating.HazardAcid) && t.Bath.PH.Given() && t.Bath.PH.Low < 2
}

// keepsActive reports whether a strike covers a face that was activated before the
// film grows again: one that activates, or an acid one up to about pH 4.5 (from memory).
func (t *Tank) keepsActive() bool {
	return t.activates() || t.Kind == Strike && t.hazards().Has(plating.HazardAcid) && t.Bath.PH.Given() &&
		t.Bath.PH.Low < 4.5
}

// after returns what is done to a face once it has been through a tank. A cleaner
// leaves its own film and lets a passive one grow; a dip takes a film of zinc off.
//
// So the order counts: soak, dip, electroclean leaves the film of the electrocleaner, and a
// zincate is gone after the next acid.
func (t *Tank) after(done Effect) Effect {
	switch {
	case t.Kind.cleans():
		done &^= EffectDeoxidise | EffectActivate | EffectEtch | EffectZincate
	case t.Kind == Activate && !t.Process.Effect.Has(EffectZincate):
		done &^= EffectZincate
	}
	if t.Kind.cleans() {
		done |= EffectClean // by its kind
	}
	return done | t.Process.Effect
}

// prepared finds plating over soil, tarnish or a film.
//
// It adds up the effects of the tanks before the first coat (after) and compares them with
// what the base metal needs (needs). Effects stand in for the face: whether grease is
// really gone, only the water break tells. An activation counts for a dip as well, since
// what takes a passive film takes tarnish.
func (r *review) prepared() {
	if len(r.coats) == 0 {
		return
	}
	first := r.coats[0].tank
	var done Effect
	for i := range first {
		done = r.tanks[i].after(done)
	}
	if !done.Has(EffectClean) {
		r.add(CodeNotCleaned, plating.SeverityWarning, practice,
			"nothing cleans the piece before "+r.tanks[first].title(),
			"grease and soil keep the coat from adhering",
			"soak clean first, until water runs off without a break", first)
	}
	need, words := r.piece.Substrate.needs()
	if done.Has(EffectActivate) { // what takes a passive film takes tarnish too
		done |= EffectDeoxidise
	}
	if need == 0 || done.Has(need) || need == EffectActivate && r.tanks[first].activates() {
		return
	}
	r.add(CodeNotActivated, plating.SeverityWarning, r.piece.Substrate.filmSource(), r.piece.Substrate.String()+
		" goes into "+r.tanks[first].title()+" without "+words,
		"a film of oxide, tarnish or cleaner is left between metal and coat", "put "+words+" and a rinse before it",
		first)
}

// attack finds cleaners and dips that dissolve the bare base metal, up to the first coat.
//
//	zinc, aluminium   in caustic, hot or long [CausticMetals]; in a zincate it is the purpose
//	tin, solder       in hot caustic over 30 s [CausticMetals], in strong acid
//	zinc              in strong acid
//	copper, silver    in strong nitric acid over 10 s
//	paint             lifts in hot caustic
//
// Times and the acids are from memory. A time that is not given counts as long, caustic
// that is not said to be mild counts as strong when the tank is hot.
func (r *review) attack() {
	s := r.piece.Substrate
	for i := range r.tanks {
		t := &r.tanks[i]
		if t.Kind.deposits() {
			return
		}
		h := t.hazards()
		// what is not said may be long
		long := func(most units.Duration) bool { return t.immersion() == 0 || t.immersion() > most }
		// Caustic that is neither said to be mild nor strong is a question; it counts as strong.
		unsaid := ""
		if !t.Process.Strong && !t.Process.Mild {
			unsaid = "; if it is mild and inhibited for this metal, say that it is mild"
		}
		warm := h.Has(plating.HazardHot) || t.Kind == Electroclean && !t.Process.PH.Given() // run hot as a rule
		hot := h.Has(plating.HazardCaustic) && (t.Process.Strong || !t.Process.Mild && warm)
		switch {
		case !h.Has(plating.HazardCaustic):
		case t.Process.Mild && t.Kind.cleans():
		case hot && t.Kind.cleans() && (s == ZincDieCasting || s == Aluminium):
			r.add(CodeHotCaustic, plating.SeverityWarning, "CausticMetals", s.String()+" in "+t.title(),
				"hot caustic dissolves zinc and aluminium and makes hydrogen", "use a mild, inhibited cleaner"+unsaid,
				i)
		case hot && t.Kind == Activate && (s == ZincDieCasting || s == Aluminium && long(60)):
			r.add(CodeHotCaustic, plating.SeverityWarning, "CausticMetals", s.String()+" in "+t.title()+lasting(t),
				"caustic dissolves the metal for as long as it stays in, and makes hydrogen",
				"use none for zinc; seconds for aluminium", i)
		case (s == ZincDieCasting || s == Aluminium) && !t.Process.Effect.Has(EffectZincate) && long(5*units.Minute):
			r.add(CodeHotCaustic, plating.SeverityWarning, "CausticMetals", s.String()+" in "+t.title()+lasting(t),
				"caustic dissolves zinc and aluminium, cold only more slowly", "use a mild, inhibited cleaner"+unsaid,
				i)
		case hot && s.tin() && long(30):
			r.add(CodeHotCaustic, plating.SeverityWarning, "CausticMetals", s.String()+" in "+t.title()+lasting(t),
				"tin dissolves in hot caustic", "use a mild cleaner, or seconds", i)
		case hot && s == PaintedPlastic:
			r.add(CodeHotCaustic, plating.SeverityWarning, recall, s.String()+" in "+t.title(),
				"hot caustic lifts the paint", "use a cool, mild cleaner", i)
		}
		if h.Has(plating.HazardNitric) && t.Kind == Activate && t.strongAcid() && long(10) && (s.copperBearing() ||
			s.silver()) {
			r.add(CodeStrongAcid, plating.SeverityWarning, recall, s.String()+" in "+t.title()+lasting(t),
				"strong nitric acid dissolves copper, its alloys and silver and gives off poisonous brown fume",
				"use a sulfuric acid dip, or a bright dip of a few seconds", i)
		}
		if t.Kind == Activate && t.strongAcid() && (s.tin() || s == ZincDieCasting) {
			r.add(CodeStrongAcid, plating.SeverityWarning, recall, s.String()+" in "+t.title(),
				"strong acid dissolves tin, solder and zinc and leaves smut",
				"use a weak dip for seconds on zinc, none on tin", i)
		}
	}
}

// lasting says how long a piece stays, for a message.
func lasting(t *Tank) string {
	if t.immersion() == 0 {
		return ", and for how long is not said"
	}
	return " for " + t.immersion().String()
}

// immersion returns the longest time a piece stays in a tank that does not plate.
func (t *Tank) immersion() units.Duration {
	if t.Time > 0 {
		return t.Time
	}
	return max(t.Process.Time.High, t.Process.Time.Low)
}

// thinStrike finds a cyanide copper strike too thin to keep an acid bath from the zinc
// below: less than 2 µm, or two minutes. Printed are 2 to 3.6 µm or more [Guidebook2012].
func (r *review) thinStrike() {
	if len(r.coats) < 2 {
		return
	}
	t, next := &r.tanks[r.coats[0].tank], &r.tanks[r.coats[1].tank]
	thin := t.MinThickness > 0 && t.MinThickness < 2*units.Micrometre || t.MinThickness == 0 && t.Time > 0 &&
		t.Time < 2*units.Minute
	if thin && next.hazards().Has(plating.HazardAcid) {
		r.add(CodeAttack, plating.SeverityWarning, "Guidebook2012", next.title()+" behind a thin "+t.title(),
			"acid reaches the zinc through the pores of a thin copper coat",
			"lay 2 to 3.6 µm of cyanide copper or more first", r.coats[0].tank, r.coats[1].tank)
	}
}

// first judges the first coat against the base metal: the one joint where most plating
// fails.
//
//	stainless steel, nickel   a strike acid enough to keep the film away, live
//	titanium                  nickel, acid copper or chromium [ASTMB481]
//	zinc, zincated aluminium  cyanide copper: acid dissolves the zinc, and acid copper plates itself
//	tin, solder               cyanide copper, no strong acid
//	plain steel               nickel or cyanide copper: other metals plate themselves onto iron
//	paint                     cool acid copper, slowly
//
// Copper alloys and silver take any coat here; the group adhesion looks at those. The
// remedies come from the practices; that these metals deposit by immersion is from memory,
// and follows from the order of the potentials.
func (r *review) first() {
	if len(r.coats) == 0 {
		return
	}
	c := r.coats[0]
	t := &r.tanks[c.tank]
	s := r.piece.Substrate
	h := t.hazards()
	acid, cyanide := h.Has(plating.HazardAcid), h.Has(plating.HazardCyanide)
	copperStrike := c.metal == "Cu" && cyanide && !acid && t.Bath.Use.Has(useStrike) && c.kind != Plate
	live := func() {
		if !t.LiveEntry {
			r.add(CodeLiveEntry, plating.SeverityWarning, recall, s.String()+" enters "+t.title()+" without current",
				"in the seconds without current the film forms again, or metal deposits by immersion and does "+
					"not adhere",
				"switch the current on before the piece touches the bath", c.tank)
		}
	}
	noStrike := func(reason, remedy string) {
		key := recall
		if s == Titanium {
			key = "ASTMB481"
		}
		r.add(CodeNoStrike, plating.SeverityWarning, key, "the first coat on "+s.String()+" is "+t.title(),
			reason, remedy, c.tank)
	}
	switch {
	case s == StainlessSteel || s == Nickel:
		if !t.keepsActive() {
			noStrike("the passive film forms again between the activation and a bath that does not remove it",
				"lay an acid gold strike or a nickel chloride strike first, with live entry")
		} else {
			live()
		}
	case s == Titanium:
		if c.metal != "Ni" && !(c.metal == "Cu" && acid) {
			noStrike("only nickel, acid copper or chromium goes straight on etched titanium",
				"lay 1 µm of nickel or more first")
		} else if c.metal == "Ni" && len(r.coats) > 1 && t.MinThickness > 0 && t.MinThickness < 1*um*(1-1e-9) {
			noStrike("nickel under another metal is 1 µm thick or more on titanium", "lay 1 µm of nickel or more")
		}
	case (s == ZincDieCasting || s == Aluminium || s.steel()) && c.metal == "Cu" && acid:
		r.add(CodeImmersion, plating.SeverityWarning, recall, "acid copper straight on "+s.String(),
			"copper deposits by immersion and does not adhere, while the acid dissolves the metal",
			"lay a cyanide copper strike first, or nickel on steel", c.tank)
	case s == ZincDieCasting || s == Aluminium:
		switch {
		case acid:
			r.add(CodeAttack, plating.SeverityWarning, recall, t.title()+" straight on "+s.String(),
				"the acid bath dissolves the zinc under the coat", "lay a complete cyanide copper strike first", c.tank)
		case !copperStrike:
			noStrike("only the cyanide copper strike covers zinc without attack",
				"lay a cyanide copper strike first, with live entry")
		default:
			live()
			r.thinStrike()
		}
	case s.tin():
		switch {
		case t.strongAcid():
			r.add(CodeStrongAcid, plating.SeverityWarning, recall, t.title()+" straight on "+s.String(),
				"strong acid dissolves tin and solder", "lay a cyanide copper strike first", c.tank)
		case !copperStrike:
			noStrike("every coat on tin needs a cyanide copper strike below it", "lay a cyanide copper strike first")
		}
	case s.steel():
		if c.metal != "Ni" && !copperStrike {
			noStrike("this metal deposits on iron by immersion, or leaves pores that rust",
				"lay nickel or a cyanide copper strike first")
		}
	case s == PaintedPlastic:
		if c.metal != "Cu" || cyanide {
			noStrike("paint takes only a cool copper bath that starts at a small current; hot and caustic baths "+
				"lift it", "lay acid or pyrophosphate copper first and raise the current slowly")
		}
	}
}

// filmSource is where the film of a base metal is known from: for stainless steel
// the practice's own abstract, for titanium its excerpt; nothing was read of the others.
func (s Substrate) filmSource() string {
	switch s {
	case StainlessSteel:
		return "ASTMB254"
	case Titanium:
		return "ASTMB481"
	case Nickel:
		return "Guidebook2013"
	}
	return recall
}
