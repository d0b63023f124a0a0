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
type planner struct {
	piece  Piece
	tanks  []Tank
	face   face
	around bool // the coats are given: lay none of its own
	err    error
}

func (pl *planner) add(t ...Tank) { pl.tanks = append(pl.tanks, t...) }

// step adds a tank with a rinse behind it.
func (pl *planner) step(t Tank) { pl.add(t, rinse()) }

func rinse() Tank {
	return Tank{Name: "rinse", Kind: Rinse, Rinse: RinseSet{Stages: 2, Flow: Counterflow}}
}

func acidRinse() Tank {
	return Tank{Name: "slightly acid rinse", Kind: Rinse, Rinse: RinseSet{Stages: 2, Flow: Running, Acidified: true}}
}

func dragOut() Tank {
	return Tank{Name: "drag-out rinse", Kind: DragOut, Rinse: RinseSet{Stages: 1, Flow: Still, Deionised: true}}
}

// coat adds a plating tank with what belongs behind it.
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

// prepare cleans and activates, and lays the first coat where the base metal
// needs one of its own.
func (pl *planner) prepare() {
	p := &pl.piece
	if p.embrittles() && !p.Relieved {
		pl.add(stressRelief())
	}
	pl.step(soak())
	switch p.Substrate {
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
	case Aluminium:
		pl.step(aluminiumEtch())
		pl.step(desmut())
		pl.step(zincate("zincate, first", 30, 60))
		pl.step(desmut())
		pl.step(zincate("zincate, second", 15, 30))
		pl.copper()
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

// slowStart has the first copper on paint begin with little current.
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

// end rinses for good, dries, and bakes what hydrogen may crack.
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
func (pl *planner) separate() {
	thin := thinRinses(pl.tanks, pl.piece)
	for i := len(thin) - 1; i >= 0; i-- {
		pl.tanks = slices.Insert(pl.tanks, thin[i], Tank{Name: "second rinse, fresh water", Kind: Rinse,
			Rinse: RinseSet{Stages: 1, Flow: Running}})
	}
}
