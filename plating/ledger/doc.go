// Package ledger keeps the book of a plating bath: what went in, what went out,
// what is left and how well that is known, and what to add.
//
// # Why a book
//
// An analysis tells the metal content of one day. Between analyses a bath lives
// by what its loads draw from it, and a bath of gold that is let run low plates
// slowly, burns and changes colour long before anyone looks. The book follows
// every load by Faraday's law and every addition by its weight, and an analysis
// now and then keeps the book honest. It answers four questions: how much metal
// is in the tank, how sure is that, what shall I add, and when next.
//
// # The balance
//
//	metal now = opening + added + from anodes + dragged in
//	            - deposited - dragged out + corrected + analysed
//
// Each term is an account of its own ([Balance]); [Balance.Gap] is what does not
// close, which is rounding. Analysed is the metal that no entry accounts for and an
// analysis found or missed: over a year that account shows whether the efficiency
// in the book is the bath's.
//
// A load ([Load]) counts in this order: what the parts carry in from the rinse,
// the deposit and the anodes, what they carry out. The deposit follows from the
// charge,
//
//	m = w·ε·η·Q
//
// with the share w of the counted metal in the deposit, its equivalent ε and the
// cathode efficiency η, or from the balance when the parts were weighed.
// Drag-out takes solution with its metal, evaporation ([Evaporation]) water
// alone. [Addition] brings metal as salt, as solution or by its mass, with the
// water of crystallisation counted: 100 g of gold cyanide KAu(CN)2 are 68.37 g of
// gold, 100 g of nickel sulfate are 22.33 g of nickel as NiSO4·6H2O and 20.90 g as
// the heptahydrate. A formula whose water is no multiple of H2O, as NiSO4·7H20 with a
// nought, is refused. [Analysis] and [Correction] set the book right.
//
// # A wrong entry
//
// Nothing is ever taken out of the book. A [Void] names the entry that is wrong, by its
// number (the first behind the opening is 1, in line 2 of the file), and the reason. Both lines stay, but the voided
// entry no longer counts, neither for the amounts nor for the order of times: the book is worked out as if it had not
// been written. Enter then what was meant. A year mistyped, 2926 for 2026, would keep out
// every entry of today until it is voided: ask [CheckClock] before you append, and
// [Ledger.Ahead] of a book that is there already.
//
// # Anodes
//
// With insoluble anodes the bath feeds the whole deposit, and what is plated out
// over the opening metal is counted in metal turnovers (State.Turnovers). With
// soluble ones the anodes give back
//
//	m = s·εa·ηa·Q
//
// where s is the share of the current that they carry ([ShareByArea]) and ηa the
// share of that which dissolves metal. In a nickel bath of 95 % at the cathode
// and nearly 100 % at the anode the content creeps up by the difference, in one
// with passive anodes it falls fast. Some insoluble anodes among the soluble ones
// level it: choose s so that [Rates].Net is zero. Metal that dissolves without
// current (copper in acid with air) is not in it; book it as a correction.
//
// # How sure
//
// The book carries a standard uncertainty to its figures. Each error is followed
// to its end in first order, by how far it moves the metal:
//
//   - The efficiency is one unknown for the whole book. If it is 38 % and not the
//     35 % of the book, every load draws too much: the errors add up and do not
//     average out. Its range counts as u = (high - low)/√12.
//   - So are the anode efficiency and the level mark. A mark that is too high adds
//     metal to the opening and thins the content of it not at all; the book knows.
//   - Weighings, additions, drag-out volumes and analyses have errors of their own,
//     which add in squares.
//
// An analysis is averaged with the book, each weighted by one over its squared
// uncertainty ([Combine]); both are kept in the record ([Comparison]), with how far
// they lie apart and the efficiency that would have made them agree. After it the
// uncertainty is smaller than either. What an analysis does not do is change the
// efficiency the book counts with: that is for the finisher, who opens a new
// book with the better value. Volumes are taken as the entries say; what evaporates
// between two entries is not known to the book before it is topped up, so book
// the evaporation with the water.
//
// # What to add
//
// By the meter: [Account.SaltPerCharge] is the setting of a feeder, in grams of salt
// for each ampere-minute, and [Ledger.ByCharge] what is due since the last addition.
// It does not see drag-out. By analysis: [Ledger.ByAnalysis] brings the bath to its
// target with the volume at its mark. [Ledger.Forecast] carries the mean of past
// loads on.
//
//	gold 35 %, insoluble anodes: 0.1225 g of gold an A·min at 100 %
//	0.1225 · 0.35 = 0.0429 g of gold, 0.0627 g of KAu(CN)2 for each A·min
//
// # The file
//
// A book is a text file of JSON lines that only grows. The first line is the
// opening, every further line an entry:
//
//	{"crc":"9f0c2a51","entry":{"seq":3,"when":"2026-03-02T09:30:00Z","load":{"charge":"720 C"}}}
//	{"crc":"41d07be3","entry":{"seq":4,"when":"2026-03-02T10:00:00Z","void":{"entry":3,"reason":"of the other bath"}}}
//
// Quantities are text with units, without loss. The checksum (CRC-32, IEEE) covers the
// text of the entry and the checksum of the line before, so that a changed
// character shows, and a line that was taken out, put in or moved as well. Whole
// lines cut off the end do not show: keep a copy elsewhere. It is a guard against
// accidents, not against forgers. Unknown fields are refused, and
// so is a line of another version: a program from before voids were known opens no book
// that holds one.
//
// Names, notes and reasons are refused where they hold control characters, marks that
// turn the direction of text or others that do not show ([units.CheckPrintable]); a
// note may have line breaks. Books of before that hold such words open all the same:
// print them with [units.Printable].
//
// # Several programs
//
// Any number of programs may read a book. To write a line, [File.Append] makes a lock
// file beside the book, gold.jsonl.lock, with the process and machine that hold it, and
// removes it when the line is on the disk. Others wait for it; after ten seconds they
// say who holds it since when. A lock that is left behind by a power failure is removed
// by hand. A program that opened the book before another one wrote gets [ErrChanged]:
// its entry is not in the book, and it opens the book again. What is told to be entered
// is in the book once, what is told to be refused is not, unless the error wraps
// [ErrUnsure]: then the disk failed twice. Hard links to one book, and programs from
// before the lock, are not kept apart so, but noticed.
//
// A line is written in one go and is on the disk before [File.Append] returns. If
// the machine stops while it is written, the last line is cut short: [Open] and
// [OpenFile] return the book up to there together with a [*TornError] that tells
// the line, the bytes that are whole and the torn tail. The next line takes its
// place. A line that is damaged anywhere else is a [*DamageError] with its number,
// and the book is not opened; the lines before it can be opened by themselves.
//
// # People
//
// A book is opened from a file of the bath in the one form that jobs, cases and files of
// baths take, see package bath, with what only a book has in its member "book":
//
//	{
//	  "name": "gold, acid cyanide, cobalt hardened", "metal": "Au",
//	  "volume": "5 L",                              at the level mark
//	  "content": "8 g/L",                           on opening
//	  "efficiency": {"low": "32 %", "high": "38 %"},
//	  "anode_kind": "insoluble",                    or soluble: never assumed
//	  "salt": "KAu(CN)2", "pH": {"low": 4.2, "high": 4.6}, "hazards": ["cyanide", "acid"],
//	  "book": {
//	    "target": "8 g/L", "low": "7 g/L", "high": "9 g/L",    alarms, and where additions aim
//	    "level": "4.7 L", "due": "200 A·min", "life": 5,
//	    "volume_uncertainty": "50 mL", "content_uncertainty": "0.08 g/L",
//	    "salts": ["KAu(CN)2"],                      where there are several
//	    "anodes": {"share": "90 %", "efficiency": "98 %"}      of soluble ones, needed
//	  }
//	}
//
// [ReadAccount] reads it, [Schema] describes it to other programs, and [FromBath] does the
// same for a bath that a program has: equivalent and fine share follow from the deposit.
//
// An entry is read by [ParseEvent] from a list as "charge=12 A·min, drag_out=4 mL"; [Fields]
// lists the fields with an example each, for a help text or a form. [Enter] does all of an
// entry in a file: open, ask [Ledger.CheckSlip], append, close, and begin anew when another
// program was faster. [Salvage]
// opens a damaged book as far as it is whole. [Ledger.WriteSheet] prints a book for the bench,
// with what to add and what not to.
//
// # Errors
//
// Bad values are [*units.ValueError] that name the field and what would do; the book
// is then as it was. Nothing here panics on outside data. No function reads a clock;
// [File.Append] sleeps while it waits for the lock.
package ledger
