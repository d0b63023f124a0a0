// Package rinse computes what the work carries out of a bath and with the
// water that takes it off again.
//
// # Drag-out
//
// A part that leaves a bath is wet. What it carries is lost gold, it spoils the
// next bath, and every rinse has to be sized for it. How much depends on how the
// part hangs far more than on what it is made of: an upright plate, well drained,
// carries about 16 mL/m², a cup that stands upright some fifty times that.
// [Figures] is the published table, and [WetLoad.DragOut] applies it. The table was
// printed for cleaners and names neither drain time nor viscosity; corrections
// for these rest on remembered reference values, and the result says so in its
// field Seen.
//
// Two laws stand behind the figures. A plate that is drawn out slowly takes a film
// with it that grows with speed and viscosity to the power 2/3
// ([Withdrawal.Film]); a plate that hangs drains by its weight, with the root of
// time ([Hanging.DrainedFilm]). So: lift slowly, wait a little; the first seconds
// bring most of what waiting can bring, and to halve what is left takes four times
// the time. For a rack with its hooks and hollows, catch the drips and fit a
// curve ([FitDrips], [DrainCurve]).
//
// # Still and running rinses
//
// A still rinse gets dirtier with each load and tends to the content of the bath:
//
//	C_N = C₀ [1 - (V/(V + d))^N]
//
// [RinseTank] counts loads, with or without fresh water for each. [Running] takes the
// work as a stream and gives the content in the long run and the way there. In the
// long run one running rinse is (Q + D)/D weaker than the bath: 2001:1 takes 2000
// litres of water for each litre of drag-out.
//
// # Counterflow
//
// Two tanks do the same with 44 litres, three with 12, if the water of the last
// runs into the one before. With r = Q/D
//
//	C₀/C_n = 1 + r + r² + ... + r^n
//
// exactly. [Counterflow] has this series, also for work that takes on less than it
// brings; [WaterFor] turns it round. The short form r^n, which most tables use,
// asks for slightly too much water; another, printed with + 1/n behind the root,
// has the wrong sign. [RinseSeries] is for tanks that each have a tap, and [SplitWater]
// shares water among them; counterflow always does better.
//
// All of this supposes that each tank is mixed through while the work hangs in
// it. Air, movement and a double dip bring a rinse near to that.
//
// # The part
//
// [RatioFor], [Limits] and [Criteria] say how far to rinse, [LeftOnPart] what
// dries on the work, [Spray] what a spray does to the film.
//
// # Keeping the gold
//
// Behind a gold bath the first rinse is a drag-out tank, and its liquid goes back
// into the bath. The bath can take back only what evaporation and drag-out took
// from it. [Recovery] assumes a steady return from one or more tanks in
// counterflow, [Batch] with one tank that is poured back by hand, [RinseTank.TimeTo]
// with a tank that fills until it is worth refining. Each gives the gold lost
// with and without.
//
// # Conventions
//
// Contents count one thing that is followed, usually the metal. Drag-in is what
// the work brings, drag-out what it takes on. Volumes are per load, a [Flow] is
// per time, and [NewFlow] leads from the one to the other; ratios do not care which
// is used as long as both are of one kind. Evaporation of rinses is left out, and so
// is what the rinse water itself holds. A depth of liquid is a length: 1 mL/m² is
// 1 µm.
//
// Errors are [*units.ValueError] with the field in words. A value outside the
// range of a formula comes with a [*units.RangeError].
//
// The tests hold each formula against a simulation that moves litres and grams
// from tank to tank, load by load.
package rinse
