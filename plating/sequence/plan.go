package sequence

import (
	"math"
	"slices"

	"example.com/laydown/plating"
	"example.com/laydown/plating/bath"
	"example.com/laydown/units"
)

// Plan proposes the tanks for a piece: clean, activate, strike, underplate,
// plate, rinse, dry, as published practice for the base metal goes
// ([PracticeFor]), and what [Check] has to say about them. Edit what it
// returns as you like and check again.
//
// Thicknesses of underplates are common practice: nickel 5 µm, white bronze
// 2 µm, palladium 0.5 µm; copper over zinc, aluminium, tin 3 µm, or less where its
// mean would pass what the bath is used for. So is the gold
// strike between nickel and gold.
//
// Errors: an [*UnsureError] when base metal or finish is not known; a
// [*RefusedError] when no practice leads there or it must not be done; a
// [*units.ValueError] for a field that cannot be; a [*StopError] when the
// proposal itself must not be run.
func Plan(p Piece) ([]Tank, []Finding, error) {
	if err := p.Check(); err != nil {
		return nil, nil, err
	}
	final, err := bath.Get(p.Finish.BathKey())
	if err != nil {
		return nil, nil, err
	}
	if err := p.refuse(&final); err != nil {
		return nil, nil, err
	}
	pl := planner{piece: p}
	pl.prepare()
	pl.underplates()
	pl.finish(final)
	if pl.err != nil {
		return nil, nil, pl.err
	}
	pl.separate()
	found := Check(pl.tanks, p)
	if err := Approve(found); err != nil {
		return nil, found, err
	}
	return pl.tanks, found, nil
}

// A face is what lies outermost as far as the next coat is concerned.
type face uint8

const (
	faceCopper face = iota // copper and its alloys
	faceSteel
	faceNickel
	faceSilver
	faceGold
	faceBronze // white bronze
	facePalladium
)

// A planner lays tanks one behind the other and keeps the face.
//
// It works from the metal outwards, in three parts that know each other by the face only:
//
//	prepare      stress relief, cleaning, activation and a first strike, by the base metal
//	underplates  what must lie between the face and the finish: barrier, underplate
//	finish       the strike that the finish needs, the finish, final rinse, drying, bake
//
// Each part leaves in face what metal the next coat meets. So the rules for gold on brass
// and for gold on copper-plated zinc are one rule: gold on a face of copper.
type planner struct {
	piece  Piece
	tanks  []Tank
	face   face
	around bool // the coats are given: lay none of its own
	err    error
}

// add appends tanks as they are, without a rinse.
func (pl *planner) add(t ...Tank) { pl.tanks = append(pl.tanks, t...) }

// step adds a tank with a rinse behind it.
func (pl *planner) step(t Tank) { pl.add(t, rinse()) }

// rinse is the water behind each step: two stages in counterflow, enough between cyanide
// and acid (see enough).
func rinse() Tank {
	return Tank{Name: "rinse", Kind: Rinse, Rinse: RinseSet{Stages: 2, Flow: Counterflow}}
}

// acidRinse is the water between the activation of stainless steel and its strike. A trace
// of acid keeps the passive film from growing in the rinse [ASTMB254].
func acidRinse() Tank {
	return Tank{Name: "slightly acid rinse", Kind: Rinse, Rinse: RinseSet{Stages: 2, Flow: Running, Acidified: true}}
}

// dragOut is the still tank behind a precious bath. What it gathers goes back into the
// bath, so it holds deionised water: tap water would bring its salts along. Common
// practice, no source.
func dragOut() Tank {
	return Tank{Name: "drag-out rinse", Kind: DragOut, Rinse: RinseSet{Stages: 1, Flow: Still, Deionised: true}}
}

// coat adds a library bath as a plating tank, a drag-out tank behind a precious one, and a
// rinse, and sets the face to the metal laid. White bronze is copper and tin by its bath,
// but a face of its own: palladium may lie on it, not on copper.
//
// least is the minimum thickness, 0 for a strike that goes by its usual time. With coats
// given by the caller (around) it adds nothing.
func (pl *planner) coat(kind TankKind, key string, least units.Length) {
	if pl.around {
		return
	}
	b, err := bath.Get(key)
	if err != nil {
		pl.err = err
		return
	}
	pl.add(Tank{Name: b.Name, Kind: kind, Bath: b, MinThickness: least, LiveEntry: b.LiveEntry})
	if plating.Precious(b.Metal) {
		pl.add(dragOut())
	}
	pl.add(rinse())
	switch {
	case key == "bronze-white":
		pl.face = faceBronze
	case b.Metal == "Cu":
		pl.face = faceCopper
	case b.Metal == "Ni":
		pl.face = faceNickel
	case b.Metal == "Ag":
		pl.face = faceSilver
	case b.Metal == "Au":
		pl.face = faceGold
	default:
		pl.face = facePalladium
	}
}

// prepare cleans and activates, and lays the first coat where the base metal needs one of
// its own. The steps are those of [PracticeFor], which names the sources; what decides
// between them:
//
//	stress relief   hard steel that was not relieved, before the first step that makes hydrogen [ASTMB849]
//	soak            always, mild: no base metal minds it
//	electroclean    anodic for steel, so that no hydrogen forms on it; cathodic for copper and nickel, which
//	                would tarnish or turn passive as anodes; none for silver, zinc, aluminium, tin and paint
//	activation      takes the oxide of the metal, and no more of the metal than it must
//	first strike    at once, where the bare metal turns passive or dissolves in the baths that follow
//
// Reasons of the choice between anodic and cathodic: from memory, but for hard steel.
func (pl *planner) prepare() {
	p := &pl.piece
	if p.embrittles() && !p.Relieved {
		pl.add(stressRelief())
	}
	pl.step(soak())
	switch p.Substrate {
	// The film is back within seconds: activation, acid rinse and strike follow each other
	// wet. An acid gold strike serves under gold, and where skin forbids nickel; the nickel
	// chloride strike under the rest ([ASTMB254], second hand).
	case StainlessSteel:
		pl.step(electroclean(Anodic))
		hard := p.embrittles()
		if hard { // no current on a piece that hydrogen cracks: the strike activates by itself
			pl.add(steelDip(), acidRinse())
		} else {
			pl.add(stainlessActivation(), acidRinse())
		}
		if p.SkinContact || p.Finish.gold() && p.Finish != SulfiteGold {
			if hard {
				pl.coat(Strike, "gold-acid-strike-3", 0)
			} else {
				pl.coat(Strike, "gold-acid-strike", 0)
			}
		} else {
			pl.coat(Strike, "nickel-strike-chloride", 0)
		}
	case Copper, Brass, Bronze, NickelSilver:
		pl.step(electroclean(Cathodic))
		pl.step(sulfuricDip())
		pl.face = faceCopper
	// Sulfuric acid would leave lead sulfate: fluoboric acid in its place
	// [LeadedBrassColumn].
	case LeadedBrass:
		pl.step(electroclean(Cathodic))
		pl.step(fluoborateDip())
		pl.face = faceCopper
	case Nickel:
		pl.step(electroclean(Cathodic))
		pl.step(nickelActivation())
		if p.SkinContact {
			pl.coat(Strike, "gold-acid-strike", 0)
		} else {
			pl.coat(Strike, "nickel-strike-chloride", 0)
		}
	// No current: silver blackens as an anode, and needs no more than its tarnish taken
	// (from memory).
	case SterlingSilver, FineSilver:
		pl.step(sulfuricDip())
		pl.face = faceSilver
	case LowCarbonSteel, HighCarbonSteel:
		pl.step(electroclean(Anodic))
		pl.step(steelDip())
		pl.face = faceSteel
	case ZincDieCasting:
		pl.step(zincDip())
		pl.copper()
	// Zinc from the zincate keeps the oxide away until copper covers. The first film is
	// coarse: it is stripped in nitric acid, and the second covers finer (from memory).
	case Aluminium:
		pl.step(aluminiumEtch())
		pl.step(desmut())
		pl.step(zincate("zincate, first", 30, 60))
		pl.step(desmut())
		pl.step(zincate("zincate, second", 15, 30))
		pl.copper()
	// Tin dissolves in acid and in caustic alike: from the soak straight into copper, live.
	case Pewter, SoftSoldered:
		pl.copper()
	case PaintedPlastic:
		if p.Finish != BrightCopper { // which is the same bath
			pl.coat(Underplate, "copper-acid", 10*um)
			pl.slowStart()
		}
	}
}

// copper lays the cyanide copper that strikes and builds: 3 µm at the thinnest spot,
// less where the mean would come to more than the bath is used for.
//
//	s = min(3 µm, r·s_max), down to a multiple of 0.05 µm, at least 0.05 µm
//
//	r      ratio of thinnest to average thickness of the piece, 0 < r ≤ 1; 3 µm when not given
//	s_max  most that the bath is used for, as a mean [m]
//
// Below 2 µm the acid of a later bath may reach the metal through pores: the card then asks
// for a look with a lens.
func (pl *planner) copper() {
	if pl.around {
		return
	}
	least := 3 * um
	b, err := bath.Get("copper-cyanide-build")
	if err != nil {
		pl.err = err
		return
	}
	if ratio, most := float64(pl.piece.Distribution.MinToAverage), b.MaxThickness.High; ratio > 0 && most > 0 {
		const step = um / 20
		least = min(least, max(step, units.Length(math.Floor(ratio*float64(most/step))*float64(step))))
	}
	pl.coat(Strike, b.Key, least)
	if least < 2*um && pl.err == nil {
		for i := range pl.tanks {
			if t := &pl.tanks[i]; t.Bath.Key == b.Key {
				t.Bath.Look = append([]string{"the deepest spot is covered too, though thinly: look there with a " +
					"lens for bare metal before the next bath; an anode inside helps"}, t.Bath.Look...)
			}
		}
	}
}

// slowStart has the first copper on paint begin with little current: the paint conducts
// poorly, and the full current would flow, and burn, at the contact alone.
func (pl *planner) slowStart() {
	for i := range pl.tanks {
		if t := &pl.tanks[i]; t.Bath.Key == "copper-acid" {
			t.Bath.Look = append([]string{"start at a fifth of the current, raise it as the copper covers; no " +
				"burning at the contact"}, t.Bath.Look...)
			return
		}
	}
}

// underplates lays what must lie between the face and the finish.
//
//	gold on copper or steel         barrier: copper diffuses into gold [DiffusionBarrier]
//	gold on silver                  nickel, palladium where skin is: silver diffuses too (from memory)
//	palladium on copper             nickel, white bronze where skin is: its ammonia takes up copper
//	rhodium on anything             nickel, else barrier or palladium: its hot acid takes up copper
//	acid copper on zinc or tin      nickel, more cyanide copper where skin is: the acid attacks
//	steel under the rest            nickel, against rust through pores
//
// Where the piece meets the skin no nickel is laid [NickelRelease].
func (pl *planner) underplates() {
	p := &pl.piece
	skin := p.SkinContact
	if pl.face == faceSteel && skin {
		pl.copper()
	}
	switch f := p.Finish; {
	case f.gold():
		switch pl.face {
		case faceCopper, faceSteel:
			pl.barrier()
		case faceSilver:
			if skin {
				pl.coat(Underplate, "palladium-sulfamate", 0.5*um)
			} else {
				pl.coat(Underplate, "nickel-watts", 5*um)
			}
		}
	case f == Palladium:
		switch {
		case pl.face == faceCopper && skin:
			pl.coat(Underplate, "bronze-white", 2*um)
		case pl.face == faceCopper, pl.face == faceSteel:
			pl.coat(Underplate, "nickel-watts", 5*um)
		}
	case f == Rhodium:
		switch {
		case !skin:
			pl.coat(Underplate, "nickel-watts", 5*um)
		case pl.face == faceCopper:
			pl.barrier()
		default:
			pl.coat(Underplate, "palladium-sulfamate", 0.5*um)
		}
	case f == BrightCopper && (p.Substrate == ZincDieCasting || p.Substrate == Aluminium || p.Substrate.tin()):
		if skin {
			// more cyanide copper in place of the nickel that skin forbids
			pl.coat(Underplate, "copper-cyanide-build", 5*um)
		} else {
			pl.coat(Underplate, "nickel-watts", 5*um)
		}
	case pl.face == faceSteel && f != BrightNickel:
		pl.coat(Underplate, "nickel-watts", 5*um)
	}
}

// barrier keeps copper out of what follows: nickel, or white bronze and
// palladium where the skin is.
func (pl *planner) barrier() {
	if pl.piece.SkinContact {
		pl.coat(Underplate, "bronze-white", 2*um)
		pl.coat(Underplate, "palladium-sulfamate", 0.5*um)
		return
	}
	pl.coat(Underplate, "nickel-watts", 5*um)
}

// finish lays the ordered coat and ends the sequence.
//
// Silver goes over a silver strike, since it deposits by immersion on every base metal.
// Gold on nickel goes over a gold strike, since nickel turns passive on the way: but for a
// flash, which is a strike itself, and for sulfite gold, which must not meet cyanide and
// gets a thin palladium.
func (pl *planner) finish(b bath.Bath) {
	if pl.piece.Finish == Silver {
		strike, err := bath.Get("silver-strike")
		if err != nil {
			pl.err = err
			return
		}
		// Straight into the silver bath: both are cyanide, and no time is lost.
		pl.add(Tank{Name: strike.Name, Kind: Strike, Bath: strike, LiveEntry: true})
	}
	if pl.face == faceNickel {
		switch f := pl.piece.Finish; {
		case f == SulfiteGold: // a strike without cyanide
			pl.coat(Underplate, "palladium-sulfamate", 0.2*um)
		case f.gold() && f != FlashGold: // a flash is a strike itself
			pl.coat(Strike, "gold-acid-strike", 0)
		}
	}
	pl.coat(Plate, b.Key, pl.piece.MinThickness)
	if pl.piece.Substrate == PaintedPlastic && pl.piece.Finish == BrightCopper {
		pl.slowStart()
	}
	pl.end()
}

// end rinses in deionised water, dries, and bakes what hydrogen may crack: after the last
// coat, for each coat brings more of it. Hours and heat: [ASTMB850].
func (pl *planner) end() {
	pl.add(
		Tank{Name: "final rinse, deionised", Kind: FinalRinse, Rinse: RinseSet{Stages: 1, Flow: Running,
			Deionised: true}},
		Tank{Name: "dry", Kind: Dry, Process: Process{Chemistry: "warm clean air", Temperature: heat(50, 70),
			Time: mem(5*units.Minute, 15*units.Minute),
			Look: []string{"no water marks, no bleeding from seams"}, Source: practice}})
	if pl.piece.embrittles() {
		pl.add(bake(&pl.piece))
	}
}

// separate puts a second rinse of fresh water between free cyanide and strong acid
// where the plan has one rinse of two stages.
//
// The review finds the places: one rule, used for the plan and for what others have
// planned. From the last to the first, so that an insertion moves none of those still to
// come.
func (pl *planner) separate() {
	thin := thinRinses(pl.tanks, pl.piece)
	for i := len(thin) - 1; i >= 0; i-- {
		pl.tanks = slices.Insert(pl.tanks, thin[i], Tank{Name: "second rinse, fresh water", Kind: Rinse,
			Rinse: RinseSet{Stages: 1, Flow: Running}})
	}
}
