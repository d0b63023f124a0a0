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
// [Plan] takes a [Piece] and proposes tanks with baths of package bath. They
// are plain values: change, add, take out. It refuses what must not be done
// ([*RefusedError]) rather than do it quietly.
//
// # 4. Reviewing
//
// [Check] reviews any sequence. Each [Finding] has a severity, the tanks, what
// is so, the reason, a remedy and the source. [Approve] turns findings of
// severity stop into a [*StopError]: what makes hydrogen cyanide or another
// poison gas, and what is not said. A
// warning means that the coat will fail or the owner be cheated; a person may
// have a reason. A caution goes with every such job.
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
// knows nothing of the state of a bath, of hidden metals, of holes that keep solution, of two lines that share a drain or an
// exhaust duct. A sequence without findings is not thereby safe or good; it
// has none of the mistakes that are looked for. It does not replace safety data
// sheets, local law or licensed practice.
package sequence
