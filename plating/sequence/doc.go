// Package sequence says which tanks a piece goes through, in which order, and
// reviews an order that somebody else has made.
//
// # 1. A sequence
//
// Plating begins long before the plating tank. Grease, tarnish or an oxide film
// between metal and coat, and the coat peels; a trace of the last tank in the
// next, and it spoils or, between cyanide and acid, kills. A sequence is a list
// of [Tank] values: clean, rinse, activate, strike, underplate, plate, drag-out
// rinse, final rinse, dry, bake.
//
// # 2. What the base metal asks for
//
// [PracticeFor] tells, for each [Substrate], the published practice by number
// and title, the steps, the reasons, and what to do when unsure. Number and
// title were seen; most steps are from memory, and say so. For a metal that is
// not known there is no plan: an [*UnsureError] lists what would tell. Titanium
// is refused: it wants hydrofluoric acid and an argon furnace.
//
//	passive film   stainless steel, nickel: activate, strike at once, stay wet
//	immersion      silver on base metals, acid copper on zinc and steel: strike first, live
//	migration      copper, tin and silver into gold: nickel or palladium between
//	attack         caustic on zinc and aluminium, acid on zinc and tin, ammonia on copper
//	hydrogen       hard steel: relieve stress first, no cathodic cleaning, bake after the last coat
//	lead           turned brass: fluoboric acid takes it off, most other acids leave smut
//	skin           no nickel where the piece is worn
//
// # 3. Proposing
//
// [Plan] takes a [Piece] and proposes tanks with baths of package bath. It works
// from the metal outwards, and the base metal and the finish decide:
//
//	stress relief   hard steel that was not relieved
//	clean           soak; with current where the metal stands it, anodic for steel
//	activate        acid dip, etch or zincate, by the base metal
//	first strike    on metal that turns passive or dissolves in later baths
//	barrier         between copper or silver and gold, palladium, rhodium
//	finish          over its own strike where it needs one
//	end             deionised water, drying, and the bake of hard steel
//
// Two stages of counterflow rinse stand behind each solution, a drag-out tank first
// behind a precious one, and a second rinse where free cyanide and strong acid are
// neighbours. The tanks are plain values: change, add, take out. Plan refuses what
// must not be done ([*RefusedError]) rather than do it quietly. [PlanAround] puts
// the same preparation and rinses around coats that are decided already.
//
// # 4. Reviewing
//
// [Check] reviews any sequence. It walks the tanks in their order and keeps
// account of what the piece has on it: the metal outside, whether a passive film
// grows on that, what solution it is wet with and over how many rinse stages,
// cyanide and acid among them, and the hydrogen in hard steel. At each tank it
// asks whether what comes and what is there may meet.
//
// Each [Finding] has a [Code], a severity, the tanks, what is so, the reason, a
// remedy and the source. The code names the rule and stays; words may change.
// [Approve] turns findings of severity stop into a [*StopError]: what makes hydrogen
// cyanide or another poison gas, what can catch fire, and what is not said. A
// warning means that the coat will fail, the steel may crack or the owner be
// cheated; a person may have a reason. A caution is for the eye of whoever does
// the job; an info changes nothing, but somebody must be told.
//
// Two clean stages of running, counterflow or spray rinse count as enough
// between cyanide and acid (common practice, no source). Still water and the
// drag-out tank count for nothing there, since they turn into a weak form of
// what they wash off. The rule follows what a piece carries across tanks that
// are neither cyanide nor acid, and looks for one rinse that serves both.
//
// # 5. At the line
//
// [Cards] writes each tank as it hangs there: chemistry, temperature, amps for
// this load and their window, time with its band, agitation, anode and its
// area, what to look at before going on, cautions; as data and as Text. Every
// figure says how it is known. [Layers] hands the plating tanks to
// [plating.EstimateSystem].
//
// # 6. What a check does not see
//
// It believes what tanks say of themselves. A bath whose hazards are not given is
// taken to have none beyond those its name tells ([plating.NamedHazards]). It
// knows nothing of the state of a bath, of hidden metals, of holes that keep
// solution, of two lines that share a drain or an exhaust duct. A sequence without
// findings is not thereby safe or good; it has none of the mistakes that are looked
// for. It does not replace safety data sheets, local law or licensed practice.
package sequence
