// Package price makes a quote for a plating order, in decimal arithmetic from end
// to end.
//
// # What goes in
//
// An [Order] holds what the physics has found, for the whole batch and plated once
// and well: masses of metal, minutes, kilowatt hours; and what the shop knows:
// prices, rates, yield, profit, tax. Physics is done in float64 and money is not,
// so there is one gate between them: [Weigh], [Minutes] and [KilowattHours] turn a
// computed quantity into a decimal of stated places by a stated rule, and refuse
// NaN. From there on no digit is lost.
//
// Metal is priced per troy ounce, pennyweight, gram or kilogram, and the unit has
// to be named. The troy ounce is 31.1034768 g exactly. A price carries its day:
// a [Date], for this package looks at no clock and asks no exchange.
//
// # The price, step by step
//
// Metal in the deposit, metal dragged out, salts, electricity and labour are what
// one plating costs. Set-up is paid once and shared by the pieces of the batch. Of
// all pieces only the yield y passes; the others are stripped and plated again until
// they pass, so that a good piece takes 1/y platings on average and (1-y)/y
// strippings. [Allowance] adds that, and credits the metal that stripping gets back.
//
// # Margin and markup
//
// A [Margin] is a share of the selling price, which is the one before the minimum
// charge, credits and tax, a [Markup] a share of the cost. They are two types, and an
// order takes one of them. A markup of 25 % is a margin of 20 %, a margin of 50 % a
// markup of 100 %, and a margin of 100 % is impossible. No profit is taken on credits:
// they are handed on as they are.
//
// # Minimum, credits, tax
//
// What is short of the minimum charge is a line of its own. Credits come off
// afterwards, but never bring the net below the minimum: those for refined metal
// first, then that for stripped rejects. Refined metal is the customer's, so what is
// left of its credit is CreditLeft, still owed, and printed. Strippings are the shop's
// own metal on rejects that may never come; what is left of that credit lapses. So
// CreditLeft is never more than the refined metal is worth, with what was credited it
// is just that, and an order without refined metal leaves none. The tax is computed on
// the rounded net, or where the law has it so on the price before credits: see [Tax].
//
// # Rounding
//
// Everything is exact until the net is rounded once, by the [Rounding] of the order,
// to the places of the [Currency]: none, two or three. The lines are then made to
// add up: each is rounded down and the missing units go, one each, to the lines with
// the largest remainders, the earlier first among equals. So a line is never off
// by a whole unit, a line of nothing stays nothing, and the column adds up. The tax
// follows by itself, as a tax office does. [Quote.Each] shares the total among
// the pieces in the same spirit; [Distribute] does it for any weights.
//
// # What matters
//
// [Order.Sensitivity] changes each input by one per cent and says what the exact total
// does, the largest first. A price that depends on gold wants a price that is a day
// old, not a month; one that depends on minutes wants a stop-watch.
//
// # Errors
//
// They are [*units.ValueError], with the field in words and what would do: a
// negative price, a margin of one, a yield of zero, a currency without known places,
// a metal without a price. Nothing is guessed. A price of a metal that is no element
// gives a [*faraday.ElementError].
//
// Masses, prices and rates are decimals of at most 36 digits and 30 places, so that
// no number read from a file can make exact arithmetic endless.
package price
