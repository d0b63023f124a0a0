// Package traveller puts a whole shop job on one sheet: which tanks in which
// order, what to set at each, what the coat comes to, what leaves with the
// rinses, what the baths need afterwards, and what it costs.
//
// # What goes in
//
// A [Job] names the parts, the base metal and either the finish that is ordered,
// or the shop's own coats ([Layer]), or both. There are three ways to a sequence:
//
//	finish alone         tanks as published practice goes, baths of the library
//	finish and layers    the shop's coats in their order; the tanks around them
//	                     are proposed ([sequence.PlanAround])
//	steps                the shop's own sequence, tank by tank
//
// Whatever the way, [sequence.Check] reviews the result, and a finding of
// severity stop makes [Sheet.Stop] true. Without finish and steps there is no
// sequence: the sheet starts at the first plating tank.
//
// # What comes out
//
// [Make] returns a [Sheet]: cards of all tanks, the estimate of each coat with
// the spread that the bath's ranges allow ([Spread]), drag-out and rinse water
// ([Rinsing]), the baths after the job ([After]), and the price ([price.Quote]).
// Rinsing and price are made when the job says what they need.
//
// # Conventions
//
// Where a bath of the library and the shop's own figures speak of one thing, the
// shop's win: the library then lends what the shop does not say, as kind of
// anode, agitation and what to look at.
//
// Metal that drips off is priced at the upper end of the drag-out table, less
// what the drag-out tank brings back when the job describes one. The electricity
// of the plating current is taken at the upper end of the volts.
//
// Errors are those of the packages below, with the layer or tank named.
// Nothing here reads a clock or a file; package jobfile reads jobs.
package traveller
