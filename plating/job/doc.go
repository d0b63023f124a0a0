// Package job is a whole shop job: what a job file says ([Job]), and what it comes to
// ([Sheet]): which tanks in which order, what to set at each, what the coat comes to,
// what leaves with the rinses, what the baths need afterwards, and what it costs.
//
//	j, err := job.Read(f, open)
//	s, err := j.Sheet()
//	for _, stop := range s.Stops { ... }    a tank a stop, in order
//	err = s.WriteText(w, job.SheetOptions{})     also WriteHTML and WriteJSON
//
// # What goes in
//
// A [Job] names the parts, the base metal and either the finish that is ordered, or the
// shop's own coats ([OwnCoat]), or both. There are three ways to a sequence:
//
//	finish alone         tanks as published practice goes, baths of the library
//	finish and layers    the shop's coats in their order; the tanks around them
//	                     are proposed ([sequence.PlanAround])
//	steps                the shop's own sequence, tank by tank
//
// Whatever the way, [sequence.Check] reviews the result, and a finding of severity stop
// makes [Sheet.Forbidden] true. Without finish and steps there is no sequence: the stops
// are those of the coats alone.
//
// # What comes out
//
// [Job.Sheet] returns a [Sheet]: a [Stop] for each tank with its card, and its [Coat] where
// it plates: the estimate with the [Spread] that the bath's ranges allow; drag-out and rinse
// water ([Rinsing]), the baths after the job ([After]), and the price ([price.Quote]).
// Rinsing and price are made when the job says what they need. [Sheet.Document] puts it into
// words once; text, page and JSON are written from that.
//
// # Conventions
//
// Where a bath of the library and the shop's own figures speak of one thing, the shop's win:
// the library then lends what the shop does not say, as kind of anode, agitation and what to
// look at.
//
// Metal that drips off is priced at the upper end of the drag-out table, less what the
// drag-out tank brings back when the job describes one. The electricity of the plating
// current is taken at the upper end of the volts.
//
// Nothing here reads a clock, and no file but through the opener that [Read] is given.
//
// # The job file
//
// A job file is one object. Quantities are text with a unit, in any spelling
// that package units reads; plain shares may be numbers. Unknown fields are
// refused, with the line and the known ones.
//
//	{
//	  "format": "laydown job 1",             needed
//	  "job": "24 hands, hard gold",          name for the sheet
//	  "substrate": "stainless steel",        base metal, in words
//	  "parts": [                             needed, one or more
//	    {"name": "hand", "count": 24,        count: 1 when left out
//	     "area": "5.2 cm²"},                 of one piece; or "shape", see below; or
//	    {"name": "figure", "mesh": {"file": "figure.stl", "unit": "mm", "repair": true, "weld": "0.01 mm"}},
//	                                         STL or PLY: its area, see Read; bodies that
//	                                         cross or touch with faces are refused
//	    {"name": "bezel", "shape": {"kind": "torus", ...}, "masked": "2.5 cm²"}
//	  ],
//	  "layers": [ ... ],                     the shop's own coats, the first one first; needed
//	                                         where no finish is planned for
//	  "finish": "hard gold",                 asks for a sequence of tanks: of package sequence
//	  "skin_contact": true,                  worn or handled for long
//	  "high_strength": true,                 hard or highly stressed steel; then its strength is asked for:
//	  "tensile_strength": "1450 MPa",        actual tensile strength of the steel, or
//	  "hardness": "45 HRC",                  its hardness, HRC or HV; stress relief and bake go by it
//	  "stress_relieved": true,               the steel was freed of its stresses before it came
//	  "min_thickness": "1 µm",                     of the finish; these three stand here only
//	  "min_to_average": 0.6, "basis": "given",  when there are no layers
//	  "baths": "our-baths.json",             a file for bath.Read: its keys stand beside those of
//	                                         the library, see Read
//	  "sequence": [ ... ],                   the shop's own tanks instead of proposed ones
//	  "rinse": { ... },                      drag-out and water; left out: not computed
//	  "price": { ... }                       left out: no quote
//	}
//
// With a finish or a sequence the substrate must be one that package sequence
// knows.
//
// A layer:
//
//	{
//	  "name": "hard gold",
//	  "role": "finish",                      or "strike", "underplate"
//	  "bath": { ... },                       needed
//	  "min_to_average": 0.6,                    needed: thinnest spot over average thickness; what
//	                                         examples/thinspot prints fits in here
//	  "basis": "given",                      where that ratio comes from
//	  "uncertainty": "10 %",                 of it, relative
//	  "readings": ["1.3 µm", "0.9 µm", ...], instead of min_to_average: measured on a trial piece, or
//	  "shape_class": "open work",            a rule of thumb: smooth round body; rod or tube, outside;
//	                                         flat sheet; shallow relief; open work; open recess
//	  "min_thickness": "2.5 µm",                   of these three give two:
//	  "current_density": "0.8 A/dm²",        (or "current": "1.4 A" for the load)
//	  "time": "10 min",
//	  "area": "180 cm²",                     when it is not that of the load
//	  "count_below": true                    layers of the same metal below count too
//	}
//
// A bath is that of package bath; a figure may say its own source and how it was seen
// ([bath.Read]):
//
//	{
//	  "name": "gold, acid cyanide, cobalt hardened",   by chemistry
//	  "metal": "Au",                         needed: the metal that is counted
//	  "valence": 1,                          the usual one when left out
//	  "density": "17.3 g/cm³",               of the deposit; the bulk metal's when left out
//	  "constituents": [                      of an alloy deposit, in place of "valence"; without a
//	                                         density that of their mixture, with its uncertainty
//	    {"metal": "Au", "valence": 1, "share": "99.6 %"},
//	    {"metal": "Co", "valence": 2, "share": "0.2 %"},
//	    {"inclusion": true, "share": "0.2 %"}],        built in without charge
//	  "composition": "as assayed",           where the constituents come from
//	  "efficiency": "35 %",                  needed, or {"low": "30 %", "high": "40 %"}, or
//	  "efficiency_lines": [{"points": [      points of a curve; a point may have low and high too
//	      {"current_density": "0.3 A/dm²", "efficiency": "40 %"}, ...]}],
//	  "current_density": {"low": "0.3 A/dm²", "high": "1.2 A/dm²"},   that it is run at
//	  "volts": {"low": "2 V", "high": "3 V"},
//	  "temperature": {"low": "32 °C", "high": "42 °C", "set": "38 °C"},
//	  "content": "8 g/L", "volume": "5 L",   of the metal in the bath
//	  "draw_limit": "10 %",                  of the content, before it is fed
//	  "max_thickness": "5 µm",
//	  "anode_kind": "insoluble",             or "soluble"
//	  "anode": "stainless steel",            of what the anode is made
//	  "vessel": "glass",                     of what the tank is made: glass, plastic, stainless steel, steel, aluminium
//	  "hazards": ["cyanide", "acid"],        words of plating.HazardTable; [] for none.
//	                                         Needed with a finish or a sequence, but for "like"
//	  "pH": 4.4,                             or {"low": 4.2, "high": 4.8}; acid without it counts as strong, and
//	                                         gold cyanide in acid without it is a stop
//	  "source": "demo data",                 where these figures come from
//	  "evaporation": "5 mL",                 in the time of a load, "0 mL" for none; else that of "rinse"
//	  "salt": "KAu(CN)2",                    it is fed with; when left out the usual one of gold,
//	                                         silver or copper from cyanide, none for others
//	  "like": "gold-acid-cobalt"             a bath of package bath of like chemistry: it lends
//	}                                        anode, agitation, what to look at, and for the review of
//	                                         the sequence its hazards and its pH
//
// or a bath of package bath as it stands, run at the middle of its ranges where
// the file does not say:
//
//	{
//	  "library": "gold-acid-cobalt",         its key
//	  "content": "8 g/L", "volume": "5 L", "draw_limit": "10 %",
//	  "temperature": {"set": "30 °C"}, "salt": "KAu(CN)2", "evaporation": "5 mL"
//	}
//
// Its layer may leave out the current density, and a strike the time as well.
//
// A tank of the sequence:
//
//	{"layer": "hard gold", "live_entry": true},                  a coat, by name or number
//	{"kind": "rinse", "stages": 2, "flow": "counterflow"},       also final rinse, drag-out rinse;
//	                                                             deionised, acidified, station
//	{"kind": "activate", "holds": "sulfuric acid, 5 %",          also soak clean, electroclean,
//	 "does": ["activate"], "hazards": ["acid"],                  dry, bake, stress relief;
//	                                                             "mild": true for acid of pH 1 or more
//	                                                             or for inhibited caustic,
//	                                                             "strong": true for much caustic;
//	                                                             "pH", "vessel"
//	 "counter": "lead",                                          the other electrode
//	 "polarity": "cathodic", "current_density": "1 A/dm²", "volts": {"low": "2 V", "high": "6 V"},
//	 "temperature": {"low": "18 °C", "high": "30 °C"}, "time": "30 s"}
//
// "does" lists clean, deoxidise, activate, etch, desmut, zincate. Any tank may
// have a "name" and a "wait", the time in the air before the next one.
//
// Rinse:
//
//	{
//	  "hangs": "vertical, well drained",     a row of the drag-out table of package rinse, or
//	  "drag_out": "1.8 mL",                  measured, of the load
//	  "drain": "10 s", "liquid": "thin",     correct the table; also medium, syrupy
//	  "ratio": 1000, "stages": 2,            how many times weaker the last water must be;
//	                                         stages of the proposed rinses
//	  "drag_out_tank": "3 L", "loads": 10,   poured back every so many loads
//	  "evaporation": "40 mL"                 from the bath, in the time of a load
//	}
//
// Price; every amount and share stands in quotes:
//
//	{
//	  "currency": "EUR", "rounding": "half even",
//	  "metals": [{"metal": "Au", "price": "105.20", "per": "g", "as_of": "2026-11-20"}],
//	                                         per g, kg, oz t or dwt
//	  "line_per_hour": "48", "handling": "20 s",   of the time at the line; for each tank
//	  "labour": [{"task": "rack", "time": "30 min", "per_hour": "42"}],
//	  "salts": [{"name": "cleaner", "mass": "40 g", "price": "6.50", "per": "kg"}],
//	  "refined": [{"metal": "Au", "mass": "0.4 g", "paid": "95 %"}],
//	  "per_kilowatt_hour": "0.31", "heating": "1.2 kWh", "rectifier": "80 %",
//	  "set_up": "25", "shared_by": 24,       pieces of all jobs that share it, these among them
//	  "yield": "96 %", "strip": "1.50", "recovered": "80 %",      yield is needed
//	  "margin": "30 %",                      of the price; or "markup", of the cost
//	  "minimum": "60", "tax": "20 %", "tax_before_credits": false
//	}
//
// A shape has a "kind" and the dimensions of package shape: plate (length,
// width, thickness, faces, holes), disc (diameter, thickness, faces, holes),
// ring (outer, inner, thickness, faces, holes), cylinder (diameter, length,
// open_ends), tube (outer, inner, length, sides, open_ends), cone
// (base_diameter, top_diameter, height, open_base, open_top), sphere
// (diameter), cap (base_diameter or sphere_diameter, height, open_base; its outside:
// for the inside of a bell a second one in a sum), torus
// (centre_diameter, tube_diameter), hexbar (across_flats, length, open_ends),
// wire (diameter, length), thread (diameter, pitch, length), chain (wire_diameter,
// centreline of one link, links, or length and link_pitch), screw head (style: cheese,
// pan or countersunk; diameter, height, shank), sum (of: a list of shapes). "faces" is "both" or "one", "sides" is
// "both", "outside" or "inside"; a hole has diameter, depth, count, blind, bare, faces.
//
// Three files of a clock-restoration workshop stand in testdata/jobs.
package job
