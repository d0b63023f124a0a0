package sequence

import (
	"example.com/laydown/plating"
	"example.com/laydown/units"
)

// needs returns what must have been done to a bare base metal before its first
// coat, and that in words. A strike of acid that takes the passive film itself
// does it for stainless steel and nickel.
func (s Substrate) needs() (Effect, string) {
	switch {
	case s == StainlessSteel || s == Nickel:
		return EffectActivate, "an activation, or a strike that activates"
	case s == Titanium:
		return EffectEtch, "a fluoride etch"
	case s == Aluminium:
		return EffectZincate, "a zincate film"
	case s.tin() || s == PaintedPlastic || s == SubstrateUnknown || s >= substrateEnd:
		return 0, ""
	}
	return EffectDeoxidise, "an acid dip"
}

// source names the practice for a base metal.
func (s Substrate) source() string {
	p, err := PracticeFor(s)
	if err != nil || p.Source == "" {
		return recall
	}
	return p.Source
}

// activates reports whether a strike takes a passive film by itself.
func (t *Tank) activates() bool { return t.Kind == Strike && t.strongAcid() }

// prepared finds plating over soil, tarnish or a film.
func (r *review) prepared() {
	if len(r.coats) == 0 {
		return
	}
	first := r.coats[0].tank
	var done Effect
	for i := range first {
		done |= r.tanks[i].Process.Effect
	}
	if !done.Has(EffectClean) {
		r.add(CodeNotCleaned, plating.SeverityWarning, "ASTMB322", "nothing cleans the piece before "+r.tanks[first].title(), "grease and soil keep the coat from holding",
			"soak clean first, and look for the water break", first)
	}
	need, words := r.piece.Substrate.needs()
	if need == 0 || done.Has(need) || need == EffectActivate && r.tanks[first].activates() {
		return
	}
	r.add(CodeNotActivated, plating.SeverityWarning, r.piece.Substrate.source(), r.piece.Substrate.String()+" goes into "+r.tanks[first].title()+" without "+words,
		"the film of oxide, tarnish or cleaner lies between metal and coat", "put "+words+" and a rinse before it", first)
}

// attack finds cleaners and dips that dissolve the bare base metal, up to the
// first coat.
func (r *review) attack() {
	s := r.piece.Substrate
	for i := range r.tanks {
		t := &r.tanks[i]
		if t.Kind.deposits() {
			return
		}
		h := t.hazards()
		long := t.stay() > 60
		switch {
		case !h.Has(plating.HazardCaustic) || !(t.Process.Strong || h.Has(plating.HazardHot)):
		case t.Kind.cleans() && (s == ZincDieCasting || s == Aluminium):
			r.add(CodeHotCaustic, plating.SeverityWarning, s.source(), s.String()+" in "+t.title(), "hot caustic dissolves zinc and aluminium", "a mild, inhibited cleaner", i)
		case t.Kind == Activate && (s == ZincDieCasting || s == Aluminium && long):
			r.add(CodeHotCaustic, plating.SeverityWarning, s.source(), s.String()+" in "+t.title()+" for "+t.stay().String(), "caustic dissolves the metal while it stays",
				"none for zinc; seconds for aluminium", i)
		case s.tin() && t.stay() > 30:
			r.add(CodeHotCaustic, plating.SeverityWarning, s.source(), s.String()+" in "+t.title()+" for "+t.stay().String(), "tin dissolves in hot caustic", "a mild cleaner, or seconds", i)
		}
		if t.Kind == Activate && h.Has(plating.HazardAcid) && t.Process.Strong && (s.tin() || s == ZincDieCasting) {
			r.add(CodeStrongAcid, plating.SeverityWarning, s.source(), s.String()+" in "+t.title(), "strong acid dissolves tin, solder and zinc and leaves smut",
				"a weak dip for seconds on zinc; none on tin", i)
		}
	}
}

// stay returns the longest time a piece stays in a tank that does not plate.
func (t *Tank) stay() units.Duration {
	if t.Time > 0 {
		return t.Time
	}
	return max(t.Process.Time.High, t.Process.Time.Low)
}

// first judges the first coat against the base metal.
func (r *review) first() {
	if len(r.coats) == 0 {
		return
	}
	c := r.coats[0]
	t := &r.tanks[c.tank]
	s := r.piece.Substrate
	h := t.Bath.Hazards
	acid, cyanide := h.Has(plating.HazardAcid), h.Has(plating.HazardCyanide)
	copperStrike := c.metal == "Cu" && cyanide && !acid && t.Bath.Use.Has(useStrike) && c.kind != Plate
	live := func() {
		if !t.LiveEntry {
			r.add(CodeLiveEntry, plating.SeverityWarning, s.source(), s.String()+" enters "+t.title()+" without current", "in the seconds without current the film grows again, or metal comes down by itself",
				"current on before the piece touches the bath", c.tank)
		}
	}
	noStrike := func(reason, remedy string) {
		r.add(CodeNoStrike, plating.SeverityWarning, s.source(), "the first coat on "+s.String()+" is "+t.title(), reason, remedy, c.tank)
	}
	switch {
	case s == StainlessSteel || s == Nickel:
		if !t.activates() {
			noStrike("the passive film grows again between the activation and a bath that does not take it", "an acid gold strike or a nickel chloride strike first, live")
		} else {
			live()
		}
	case s == Titanium:
		if c.metal != "Ni" && !(c.metal == "Cu" && acid) {
			noStrike("only nickel, acid copper or chromium may go straight on etched titanium", "1 µm of nickel first")
		}
	case (s == ZincDieCasting || s == Aluminium || s.steel()) && c.metal == "Cu" && acid:
		r.add(CodeImmersion, plating.SeverityWarning, s.source(), "acid copper straight on "+s.String(), "copper comes down by itself, loose, while acid takes the metal",
			"a cyanide copper strike first, or nickel on steel", c.tank)
	case s == ZincDieCasting || s == Aluminium:
		switch {
		case acid:
			r.add(CodeAttack, plating.SeverityWarning, s.source(), t.title()+" straight on "+s.String(), "the acid bath dissolves the zinc under the coat", "a complete cyanide copper strike first", c.tank)
		case !copperStrike:
			noStrike("only the cyanide copper strike covers zinc without attack", "a cyanide copper strike first, live")
		default:
			live()
		}
	case s.tin():
		switch {
		case t.strongAcid():
			r.add(CodeStrongAcid, plating.SeverityWarning, s.source(), t.title()+" straight on "+s.String(), "strong acid dissolves tin and solder", "a cyanide copper strike first", c.tank)
		case !copperStrike:
			noStrike("tin wants a cyanide copper strike under everything", "a cyanide copper strike first")
		}
	case s.steel():
		if c.metal != "Ni" && !copperStrike {
			noStrike("this metal comes down on iron by itself, or leaves pores that rust", "nickel, or a cyanide copper strike, first")
		}
	case s == PaintedPlastic:
		if c.metal != "Cu" || cyanide {
			noStrike("paint takes only a cool copper bath from a small current; hot and caustic baths lift it", "acid or pyrophosphate copper first, the current raised slowly")
		}
	}
}
